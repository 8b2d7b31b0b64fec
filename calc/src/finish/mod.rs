//! Closing up: what the room is finished with.
//!
//! In the order the work goes:
//! - [`tile`] how tiles fall in a room: full ones, cuts, what to buy, lines to snap; the rules for joints and patterns;
//! - [`setting_bed`] mortar by the trowel's notch, and membrane;
//! - [`grout`] what fills the joints.

pub mod tile;

pub mod setting_bed;

pub mod grout;
