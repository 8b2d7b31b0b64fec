//! Closing up: what the room is finished with.
//!
//! In the order the work goes:
//! - [`board`] wall board laid out on walls and ceilings, and what to buy;
//! - [`compound`] what closes its joints, by the level of finish;
//! - [`paint`] by the can;
//! - [`trim`] base, shoe and casing, and the cutting list.

pub mod board;

pub mod compound;

pub mod paint;

pub mod trim;

pub(crate) mod steps;
