//! Closing up: what the room is finished with.

pub mod paint;

pub mod trim;

pub(crate) mod steps;
