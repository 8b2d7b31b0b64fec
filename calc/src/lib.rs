//! The trade's arithmetic behind Roomwright.
//!
//! Pure functions of quantities: no browser, no storage, no clock, no words on screen. A question gets a
//! typed answer or a typed refusal; nothing here panics on what a user entered and nothing yields NaN.
//!
//! Conventions
//! - What a person typed is parsed once, at the border, by [`quantity`]; deeper code takes numbers whose
//!   unit stands at the end of the name (`depth_in`, `volume_ft3`).
//! - Heights grow upwards, x to the right and y away from the reader on a plan; corners run counter-clockwise.
//! - Refusals carry values, never sentences: the words are the app's.
//! - Tables are data, each with its source and edition in its head (`calc/tables/`).

pub mod order;

pub mod saved;

pub mod quantity;

pub mod job;

pub mod floor;

pub mod wiring;

pub mod supply;

pub mod finish;

pub mod air;

pub mod working;
