//! The wiring of a job and of the quick sums: from entries to answers.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod codes;
mod entries;
mod jobs;
mod opened;
mod sums;
