//! The floor: from spot readings to a pour that can be made, and what happens at its edges.
//!
//! In the order the work goes:
//! - [`geometry`] points, and the polygon of the room ([`geometry::Outline`]);
//! - [`outline`] ways to give the outline: rectangle, L, a walk round the walls with its closing error;
//! - [`opening`] doorways as spans of a wall;
//! - [`survey`] the spots to read, in walking order; readings that disagree with their neighbours;
//! - [`paste`] spots from pasted or imported text;
//! - [`surface`] the old floor as triangles, and facts about it;
//! - [`contour`] lines of equal height on it;
//! - [`flatness`] the gap under a straightedge, its worst place, the limits by finish, patching the lows only;
//! - [`plane`] and [`pour`] the level and the flat pour;
//! - [`lifts`] a deep pour in lifts; [`mixing`] bags, water and pace;
//! - [`doorway`] layers and steps at the jambs; [`ramp`] slopes, runs and wedges;
//! - [`level_change`] what published standards say of a step.

pub mod geometry;

pub mod outline;

pub mod opening;

pub mod survey;

pub mod paste;

pub mod surface;

pub mod contour;

pub mod flatness;

pub mod plane;

pub mod pour;

pub mod lifts;

pub mod mixing;

pub mod doorway;

pub mod ramp;

pub mod level_change;

pub use geometry::{Outline, Point};
pub use surface::{Spot, Surface};
