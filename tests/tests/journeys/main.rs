//! Journeys through the built app in a real browser, one file per noun. How to add one: tests/README.md.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod bath;
mod carried;
mod closing_up;
mod example;
mod first_visit;
mod floor_job;
mod kept;
mod keyboard;
mod language;
mod large_survey;
mod offline;
mod open_box;
mod refused;
mod screens;
mod stopped;
mod supply;
mod update;
mod wiring_job;
mod wiring_sums;
