//! Spots through which a straightedge is worth laying.

use super::super::geometry::Point;
use super::walker::Walker;
use crate::order::Order;

/// Vertices worth a line.
pub(super) struct Notable {
    /// Inside the room: lowest below the best-fit plane, and deepest below their neighbours, by turns.
    pub lows: Vec<usize>,
    /// Highest above the plane, and highest above their neighbours, by turns.
    pub highs: Vec<usize>,
}

impl Notable {
    pub fn among(walker: &Walker, heights_in: &[f64]) -> Self {
        let above_in = above_best_fit(walker.points(), heights_in);
        let bump_in: Vec<f64> = (0..above_in.len())
            .map(|vertex| {
                let around = walker
                    .star(vertex)
                    .iter()
                    .flat_map(|&t| walker.triangles()[t]);
                let (sum, count) = around
                    .filter(|&other| other != vertex)
                    .fold((0.0, 0.0), |(sum, count), other| {
                        (sum + above_in[other], count + 1.0)
                    });
                if count > 0.0 {
                    above_in[vertex] - sum / count
                } else {
                    0.0
                }
            })
            .collect();
        let ranked = |values: &[f64], sign: f64, inside: bool| {
            let mut order: Vec<usize> = (0..values.len())
                .filter(|&v| !inside || !walker.on_wall(v))
                .collect();
            order.order_by(|&a, &b| (sign * values[a]).total_cmp(&(sign * values[b])));
            order
        };
        let by_turns = |first: Vec<usize>, second: Vec<usize>| {
            let mut seen = vec![false; above_in.len()];
            let mixed = first.into_iter().zip(second).flat_map(|(a, b)| [a, b]);
            mixed
                .filter(|&vertex| !std::mem::replace(&mut seen[vertex], true))
                .collect()
        };
        Self {
            lows: by_turns(ranked(&above_in, 1.0, true), ranked(&bump_in, 1.0, true)),
            highs: by_turns(
                ranked(&above_in, -1.0, false),
                ranked(&bump_in, -1.0, false),
            ),
        }
    }
}

/// Heights above the least-squares plane through the vertices, inches.
fn above_best_fit(points: &[Point], heights_in: &[f64]) -> Vec<f64> {
    let count = points.len() as f64;
    let mean = |of: &dyn Fn(usize) -> f64| (0..points.len()).map(of).sum::<f64>() / count;
    let (x0, y0) = (mean(&|i| points[i].x_in), mean(&|i| points[i].y_in));
    let z0 = mean(&|i| heights_in[i]);
    let (mut xx, mut xy, mut yy, mut xz, mut yz) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for (point, height_in) in points.iter().zip(heights_in) {
        let (x, y, z) = (point.x_in - x0, point.y_in - y0, height_in - z0);
        xx += x * x;
        xy += x * y;
        yy += y * y;
        xz += x * z;
        yz += y * z;
    }
    let determinant = xx * yy - xy * xy;
    let (b, c) = if determinant > 0.0 {
        (
            (xz * yy - yz * xy) / determinant,
            (yz * xx - xz * xy) / determinant,
        )
    } else {
        (0.0, 0.0)
    };
    let above = |(p, z): (&Point, &f64)| z - z0 - b * (p.x_in - x0) - c * (p.y_in - y0);
    points.iter().zip(heights_in).map(above).collect()
}
