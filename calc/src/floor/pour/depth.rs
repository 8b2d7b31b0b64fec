//! The depth of a pour at a place and along a line.

use serde::Serialize;

use super::Pour;
use crate::floor::geometry::Point;
use crate::floor::surface::Surface;

/// The depth of a pour along a line, such as an opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DepthAlong {
    /// At the start, inches.
    pub left_in: f64,
    /// At the end, inches.
    pub right_in: f64,
    /// The greatest on the way, inches.
    pub greatest_in: f64,
    /// The least on the way, inches.
    pub least_in: f64,
}

impl Pour {
    /// Depth at a place, inches; none outside the room.
    pub fn depth_at_in(&self, surface: &Surface, at: Point) -> Option<f64> {
        Some(self.plane.height_in(at) - surface.height_in(at)?)
    }

    /// Depth along a line between two places in the room, such as the jambs of an opening; none when either end is
    /// outside it.
    pub fn along(&self, surface: &Surface, left: Point, right: Point) -> Option<DepthAlong> {
        let (left_in, right_in) = (
            self.depth_at_in(surface, left)?,
            self.depth_at_in(surface, right)?,
        );
        let length_in = left.distance_in(right);
        let (mut least_in, mut greatest_in) = (left_in.min(right_in), left_in.max(right_in));
        for point in surface.profile(left, right).into_iter().flatten() {
            let share = if length_in > 0.0 {
                point.s_in / length_in
            } else {
                0.0
            };
            let at = Point::new(
                left.x_in + share * (right.x_in - left.x_in),
                left.y_in + share * (right.y_in - left.y_in),
            );
            let depth_in = self.plane.height_in(at) - point.height_in;
            least_in = least_in.min(depth_in);
            greatest_in = greatest_in.max(depth_in);
        }
        Some(DepthAlong {
            left_in,
            right_in,
            greatest_in,
            least_in,
        })
    }
}
