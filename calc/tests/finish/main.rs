//! Closing up, against tables and worked examples that were put together apart from this code: see the heads of the files in
//! `calc/tests/data/finish/` for where each value is from and how far it was checked.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that can't read its case has failed"
)]

mod rows;

mod tables;

mod board;

mod compound;

mod paint;

mod trim;

mod stock;
