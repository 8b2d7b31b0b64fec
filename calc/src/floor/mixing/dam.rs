//! The dam at an opening.

use serde::Serialize;

use super::ROUNDING;
use crate::floor::geometry::Point;
use crate::floor::pour::Pour;

/// An opening and the floor beyond it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Beyond {
    /// The left jamb.
    pub left: Point,
    /// The right jamb.
    pub right: Point,
    /// Height of the floor beyond, inches above the datum.
    pub height_in: f64,
}

/// Dam needed at an opening, inches: the part of its width where the pour stands above the floor beyond.
pub fn dam_in(pour: &Pour, opening: &Beyond) -> f64 {
    let width_in = opening.left.distance_in(opening.right);
    let above = |at: Point| {
        let above_in = pour.plane.height_in(at) - opening.height_in;
        // A pour that is flush, up to rounding, needs no dam.
        if above_in.abs() <= ROUNDING {
            0.0
        } else {
            above_in
        }
    };
    let (left_in, right_in) = (above(opening.left), above(opening.right));
    let (low_in, high_in) = (left_in.min(right_in), left_in.max(right_in));
    if high_in <= 0.0 {
        0.0
    } else if low_in >= 0.0 {
        width_in
    } else {
        width_in * high_in / (high_in - low_in)
    }
}
