//! Lines of equal height on the floor, and of equal depth of a pour.

use std::collections::BTreeMap;

use super::geometry::Point;
use super::plane::Plane;
use super::surface::{Surface, Vertex};

/// Steps between contour lines that a tape in inches shows, inches; past the last, that doubled.
pub const STEPS_IN: [f64; 5] = [0.0625, 0.125, 0.25, 0.5, 1.0];

/// Steps that a tape in millimetres shows: 1, 2, 5, 10 and 20 mm, in inches.
pub const METRIC_STEPS_IN: [f64; 5] =
    [1.0 / 25.4, 2.0 / 25.4, 5.0 / 25.4, 10.0 / 25.4, 20.0 / 25.4];

/// A place where a line crosses an edge of the triangles; the edge's ends, the smaller index first.
type Edge = (usize, usize);

/// The lines along which the floor has a height (inches above the datum), each joined as far as it goes.
///
/// A line that closes ends where it began. Where the floor is level at exactly this height, the line runs along the
/// lower side of the level part. The order depends on the surface alone.
///
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface, contour::contour};
/// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
/// let spots = corners.map(|at| Spot { at, height_in: at.x_in / 60.0 });
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// // A floor that rises 1 in across: at 1/4 in one line, 15 in from the low wall.
/// let lines = contour(&floor, 0.25);
/// assert_eq!(lines.len(), 1);
/// assert!(lines[0].iter().all(|point| point.x_in == 15.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn contour(surface: &Surface, height_in: f64) -> Vec<Vec<Point>> {
    lines(surface, height_in, |vertex| vertex.height_in)
}

/// The lines along which a pour whose finish is `plane` has a depth (inches).
pub fn depth_contour(surface: &Surface, plane: &Plane, depth_in: f64) -> Vec<Vec<Point>> {
    lines(surface, depth_in, |vertex| {
        plane.height_in(vertex.at) - vertex.height_in
    })
}

/// Heights for contour lines from `low_in` to `high_in`: whole multiples of the finest of `steps_in` ([`STEPS_IN`] or
/// [`METRIC_STEPS_IN`]) that gives at most `most` lines.
///
/// ```
/// use calc::floor::contour::{METRIC_STEPS_IN, STEPS_IN, levels};
/// assert_eq!(levels(-0.07, 0.57, 10, &STEPS_IN), [0.0, 0.125, 0.25, 0.375, 0.5]);
/// assert_eq!(levels(0.2, 0.2, 10, &STEPS_IN), [0.0; 0]);
/// // 16.3 mm of fall in steps of 5 mm.
/// let metric = levels(0.0, 16.3 / 25.4, 8, &METRIC_STEPS_IN);
/// assert_eq!(metric, [0.0, 5.0 / 25.4, 2.0 * (5.0 / 25.4), 3.0 * (5.0 / 25.4)]);
/// ```
pub fn levels(low_in: f64, high_in: f64, most: usize, steps_in: &[f64; 5]) -> Vec<f64> {
    let sensible = low_in.is_finite() && high_in.is_finite() && high_in - low_in < 1e6;
    if !sensible || most == 0 {
        return Vec::new();
    }
    let mut doubled = steps_in[4];
    let further = std::iter::from_fn(|| {
        doubled *= 2.0;
        Some(doubled)
    });
    for step_in in steps_in.iter().copied().chain(further) {
        let (first, last) = ((low_in / step_in).ceil(), (high_in / step_in).floor());
        if last - first + 1.0 <= most as f64 {
            let mut levels = Vec::new();
            let mut multiple = first;
            while multiple <= last {
                // Adding zero turns -0 into 0.
                levels.push(multiple * step_in + 0.0);
                multiple += 1.0;
            }
            return levels;
        }
    }
    Vec::new()
}

/// The lines along which a value, linear on each triangle, is `level`.
fn lines(surface: &Surface, level: f64, value: impl Fn(&Vertex) -> f64) -> Vec<Vec<Point>> {
    if !level.is_finite() {
        return Vec::new();
    }
    let values: Vec<f64> = surface.vertices.iter().map(value).collect();
    // A vertex exactly at the level counts as above it, so every triangle is crossed on two edges or none.
    let is_above = |vertex: usize| values.get(vertex).is_some_and(|value| *value >= level);
    let mut crossings: BTreeMap<Edge, Vec<Edge>> = BTreeMap::new();
    for [a, b, c] in &surface.triangles {
        let edges = [(*a, *b), (*b, *c), (*c, *a)].into_iter();
        let mut crossed = edges
            .filter(|(from, to)| is_above(*from) != is_above(*to))
            .map(|(from, to)| (from.min(to), from.max(to)));
        if let (Some(first), Some(second)) = (crossed.next(), crossed.next()) {
            crossings.entry(first).or_default().push(second);
            crossings.entry(second).or_default().push(first);
        }
    }
    let place = |(from, to): Edge| {
        let (a, b) = (surface.vertices.get(from)?.at, surface.vertices.get(to)?.at);
        let (low, high) = (*values.get(from)?, *values.get(to)?);
        let share = (level - low) / (high - low);
        Some(Point::new(
            a.x_in + share * (b.x_in - a.x_in),
            a.y_in + share * (b.y_in - a.y_in),
        ))
    };
    // Open lines first, from the walls; what is left closes.
    let ends: Vec<Edge> = crossings
        .iter()
        .filter(|(_, next)| next.len() == 1)
        .map(|(edge, _)| *edge)
        .collect();
    let all: Vec<Edge> = crossings.keys().copied().collect();
    let mut lines = Vec::new();
    for start in ends.into_iter().chain(all) {
        let mut line: Vec<Point> = Vec::new();
        let mut next = Some(start);
        while let Some(edge) = next {
            if let Some(point) = place(edge)
                && line.last() != Some(&point)
            {
                line.push(point);
            }
            next = crossings.get_mut(&edge).and_then(Vec::pop);
            if let Some(back) = next.and_then(|next| crossings.get_mut(&next)) {
                back.retain(|other| *other != edge);
            }
        }
        if line.len() > 1 {
            lines.push(line);
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::{Outline, Spot};

    /// A square of 9 x 9 spots with a cone in the middle.
    fn cone() -> Surface {
        let corners = [(0.0, 0.0), (80.0, 0.0), (80.0, 80.0), (0.0, 80.0)];
        let outline = Outline::new(corners.map(|(x, y)| Point::new(x, y)).to_vec()).unwrap();
        let mut spots = Vec::new();
        for i in 0..9 {
            for j in 0..9 {
                let at = Point::new(10.0 * f64::from(i), 10.0 * f64::from(j));
                spots.push(Spot {
                    at,
                    height_in: at.distance_in(Point::new(40.0, 40.0)) / 40.0,
                });
            }
        }
        Surface::new(&outline, &spots).unwrap()
    }

    #[test]
    fn a_ring_closes_and_a_corner_is_cut_off() {
        let floor = cone();
        let ring = contour(&floor, 0.6);
        assert_eq!(ring.len(), 1);
        assert_eq!(ring[0].first(), ring[0].last());
        for point in &ring[0] {
            assert!((floor.height_in(*point).unwrap() - 0.6).abs() < 1e-12);
        }
        let cut = contour(&floor, 1.2);
        assert_eq!(cut.len(), 4);
        assert!(cut.iter().all(|line| line.first() != line.last()));
    }

    #[test]
    fn a_vertex_at_the_level_neither_breaks_nor_doubles_a_line() {
        // The level of the spots 20 in from the middle along the grid.
        let lines = contour(&cone(), 0.5);
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].first(), lines[0].last());
        let length_in: f64 = lines[0]
            .windows(2)
            .map(|pair| pair[0].distance_in(pair[1]))
            .sum();
        assert!(
            (length_in / (std::f64::consts::TAU * 20.0) - 1.0).abs() < 0.05,
            "{length_in}"
        );
    }

    #[test]
    fn depth_lines_mirror_height_lines() {
        let floor = cone();
        let under_level = depth_contour(&floor, &Plane::level(2.0), 1.4);
        let length = |lines: &[Vec<Point>]| -> f64 {
            lines
                .iter()
                .flat_map(|line| line.windows(2))
                .map(|pair| pair[0].distance_in(pair[1]))
                .sum()
        };
        assert!((length(&under_level) - length(&contour(&floor, 0.6))).abs() < 1e-9);
    }

    #[test]
    fn steps_are_those_of_the_tape() {
        assert_eq!(
            levels(0.0, 0.25, 5, &STEPS_IN),
            [0.0, 0.0625, 0.125, 0.1875, 0.25]
        );
        assert_eq!(levels(0.0, 0.25, 4, &STEPS_IN), [0.0, 0.125, 0.25]);
        assert_eq!(levels(0.1, 9.0, 3, &STEPS_IN), [4.0, 8.0]);
        assert_eq!(levels(f64::NAN, 9.0, 4, &STEPS_IN), [0.0; 0]);
    }
}
