//! Closing up: what the room is finished with.
//!
//! In the order the work goes:
//! - [`board`] wall board laid out on walls and ceilings, and what to buy;
//! - [`compound`] what closes its joints, by the level of finish;
//! - [`paint`] by the can;
//! - [`tile`] how tiles fall in a room: full ones, cuts, what to buy, lines to snap; the rules for joints and patterns;
//! - [`setting_bed`] mortar by the trowel's notch, and membrane;
//! - [`grout`] what fills the joints;
//! - [`trim`] base, shoe and casing, and the cutting list.

pub mod board;

pub mod compound;

pub mod paint;

pub mod tile;

pub mod setting_bed;

pub mod grout;

pub mod trim;

pub(crate) mod steps;
