//! A fill sorted into patches: where the work is.

use crate::order::Order;
use serde::Serialize;

use super::super::geometry::Point;
use super::walker::Walker;
use crate::quantity::{IN2_PER_FT2, IN3_PER_FT3};

/// One patch: filled vertices next to each other.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PatchPlace {
    /// The filled vertices.
    pub vertices: Vec<usize>,
    /// Where it is deepest.
    pub deepest_at: Point,
    /// How deep it is there, inches.
    pub deepest_in: f64,
    /// Area of the triangles it touches, square feet.
    pub area_ft2: f64,
    /// Its volume, cubic feet.
    pub volume_ft3: f64,
}

/// Filled vertices that share triangles belong together.
pub(super) fn places(walker: &Walker, cost_in2: &[f64], fill_in: &[f64]) -> Vec<PatchPlace> {
    let mut seen = vec![false; fill_in.len()];
    let mut touched = vec![false; walker.triangles().len()];
    let mut places = Vec::new();
    for first in 0..fill_in.len() {
        if fill_in[first] <= 0.0 || std::mem::replace(&mut seen[first], true) {
            continue;
        }
        let mut vertices = vec![first];
        let mut area = 0.0;
        let mut next = 0;
        while let Some(&vertex) = vertices.get(next) {
            next += 1;
            for &triangle in walker.star(vertex) {
                if std::mem::replace(&mut touched[triangle], true) {
                    continue;
                }
                area += walker.area_in2(triangle);
                for corner in walker.triangles()[triangle] {
                    if fill_in[corner] > 0.0 && !std::mem::replace(&mut seen[corner], true) {
                        vertices.push(corner);
                    }
                }
            }
        }
        vertices.order();
        let deepest = vertices
            .iter()
            .copied()
            .fold(first, |a, b| if fill_in[b] > fill_in[a] { b } else { a });
        let volume_in3: f64 = vertices
            .iter()
            .map(|&vertex| fill_in[vertex] * cost_in2[vertex])
            .sum();
        places.push(PatchPlace {
            deepest_at: walker.points()[deepest],
            deepest_in: fill_in[deepest],
            area_ft2: area / IN2_PER_FT2,
            volume_ft3: volume_in3 / IN3_PER_FT3,
            vertices,
        });
    }
    places.order_by(|a: &PatchPlace, b: &PatchPlace| b.volume_ft3.total_cmp(&a.volume_ft3));
    places
}
