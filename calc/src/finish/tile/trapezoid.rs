//! Edges of a field, and the field between level lines.

use serde::Serialize;

use super::field::ROUNDING_IN;
use crate::floor::Point;
use crate::order::Order;

/// What a field ends at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// A wall of the outline, its index from 0.
    Wall(usize),
    /// An obstacle, its index from 0.
    Obstacle(usize),
}

/// A straight piece of the field's edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Edge {
    pub a: Point,
    pub b: Point,
    pub side: Side,
    /// Pieces of one straight side share this number: they are one cut of the saw.
    pub line: usize,
}

impl Edge {
    pub fn level(&self) -> bool {
        self.a.y_in == self.b.y_in
    }

    pub fn upright(&self) -> bool {
        self.a.x_in == self.b.x_in
    }

    pub fn slanted(&self) -> bool {
        !self.level() && !self.upright()
    }

    /// The line's normal, of length 1.
    pub fn normal(&self) -> Point {
        let length_in = self.a.distance_in(self.b);
        Point::new(
            (self.a.y_in - self.b.y_in) / length_in,
            (self.b.x_in - self.a.x_in) / length_in,
        )
    }
}

/// One side of a trapezoid: where it is at the trapezoid's low line, how it leans, and the edge it is part of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Bound {
    pub at_low: f64,
    pub lean: f64,
    pub edge: usize,
}

/// A part of the field between two level lines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Trapezoid {
    pub low: f64,
    pub high: f64,
    pub left: Bound,
    pub right: Bound,
}

impl Trapezoid {
    pub fn left_at(&self, y: f64) -> f64 {
        self.left.at_low + (y - self.low) * self.left.lean
    }

    pub fn right_at(&self, y: f64) -> f64 {
        self.right.at_low + (y - self.low) * self.right.lean
    }

    pub fn area(&self) -> f64 {
        let width_at = |y| self.right_at(y) - self.left_at(y);
        0.5 * (width_at(self.low) + width_at(self.high)) * (self.high - self.low)
    }
}

/// The field between each two level lines through ends of its edges.
pub(super) fn trapezoids(edges: &[Edge]) -> Vec<Trapezoid> {
    let mut levels: Vec<f64> = edges
        .iter()
        .flat_map(|edge| [edge.a.y_in, edge.b.y_in])
        .collect();
    levels.order_by(f64::total_cmp);
    let mut found = Vec::new();
    let mut low = f64::NEG_INFINITY;
    for high in levels {
        if high - low <= ROUNDING_IN {
            continue;
        }
        if low.is_finite() {
            between_levels(edges, low, high, &mut found);
        }
        low = high;
    }
    found
}

fn between_levels(edges: &[Edge], low: f64, high: f64, found: &mut Vec<Trapezoid>) {
    let middle = f64::midpoint(low, high);
    let mut bounds: Vec<Bound> = Vec::new();
    for (index, edge) in edges.iter().enumerate() {
        let (bottom, top) = if edge.a.y_in < edge.b.y_in {
            (edge.a, edge.b)
        } else {
            (edge.b, edge.a)
        };
        if bottom.y_in < middle && middle < top.y_in {
            let lean = (top.x_in - bottom.x_in) / (top.y_in - bottom.y_in);
            bounds.push(Bound {
                at_low: bottom.x_in + (low - bottom.y_in) * lean,
                lean,
                edge: index,
            });
        }
    }
    let half = middle - low;
    bounds.order_by(|a, b| (a.at_low + half * a.lean).total_cmp(&(b.at_low + half * b.lean)));
    for pair in bounds.chunks_exact(2) {
        if let [left, right] = *pair {
            found.push(Trapezoid {
                low,
                high,
                left,
                right,
            });
        }
    }
}
