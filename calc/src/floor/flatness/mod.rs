//! How flat the floor is, which is not how level it is: the gap under a straightedge, and what limits say of it.
//!
//! - [`straightedge`] the gap along one line, from the floor's profile;
//! - `walker` profiles along any line, quickly;
//! - [`worst`] the worst place found in the room;
//! - [`limits`] how large a gap each finish allows, with its source, and the verdict;
//! - [`patch`] filling only the lows;
//! - [`fnumbers`] F-numbers of a long line.

pub mod straightedge;

mod walker;

mod notable;

pub mod worst;

pub mod limits;

pub mod patch;

mod patch_place;

mod least_fill;

pub mod fnumbers;

#[cfg(test)]
mod reference;

pub use fnumbers::{FNumberRefusal, FNumbers, f_numbers};
pub use limits::{Limit, Measure, Status, Verdict, judge, judge_limits, limits_for, table};
pub use patch::{Patch, patch_for, patch_to};
pub use patch_place::PatchPlace;
pub use straightedge::{Gap, ProfilePoint, StraightedgeRefusal, gap};
pub use worst::{Top, USUAL_EFFORT, WorstGap, worst_gap};
