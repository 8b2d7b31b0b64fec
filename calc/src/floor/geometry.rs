//! Points on the plan and the polygon of the room.

use serde::Serialize;
use thiserror::Error;

/// A point on the plan, inches from the first corner: x to the right, y away.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Point {
    /// Inches to the right.
    pub x_in: f64,
    /// Inches away.
    pub y_in: f64,
}

impl Point {
    /// A point from its two coordinates in inches.
    pub const fn new(x_in: f64, y_in: f64) -> Self {
        Self { x_in, y_in }
    }

    /// Straight-line distance to another point, inches.
    pub fn distance_in(self, other: Self) -> f64 {
        (self.x_in - other.x_in).hypot(self.y_in - other.y_in)
    }
}

/// The room's floor: a simple polygon, corners counter-clockwise, closed by itself.
///
/// Made by [`Outline::new`], which refuses anything else, so later code relies on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outline {
    corners: Vec<Point>,
}

/// The most corners an outline may have.
pub const MOST_CORNERS: usize = 64;

/// Why corners do not make a room.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum OutlineRefusal {
    /// Fewer than three corners, or no area.
    #[error("an outline needs at least three corners that enclose an area")]
    NoArea,
    /// More corners than [`MOST_CORNERS`].
    #[error("an outline has at most {MOST_CORNERS} corners, not {given}")]
    TooManyCorners {
        /// How many were given.
        given: usize,
    },
    /// A wall without length, or a number that isn't one.
    #[error("wall {wall} has no length")]
    NoLength {
        /// Index of the wall, from 0.
        wall: usize,
    },
    /// Two walls cross or touch.
    #[error("walls {first} and {second} cross")]
    Crossing {
        /// Index of the first wall, from 0.
        first: usize,
        /// Index of the second wall, from 0.
        second: usize,
    },
    /// A walk round the walls that does not come back to where it began.
    #[error("the walls miss by {miss_in} in, more than {allowed_in} in")]
    Open {
        /// Distance from the end of the walk to its start, inches.
        miss_in: f64,
        /// What may be shared out, inches.
        allowed_in: f64,
    },
}

/// A wall of the outline: from one corner to the next.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Wall {
    /// Where it starts, walking counter-clockwise.
    pub start: Point,
    /// Where it ends.
    pub end: Point,
}

impl Wall {
    /// Length, inches.
    pub fn length_in(self) -> f64 {
        self.start.distance_in(self.end)
    }
}
