//! Journeys through the built app in a real browser, one file per noun. How to add one: tests/README.md.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod first_visit;
mod offline;
mod stopped;
mod update;
