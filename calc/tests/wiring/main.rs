//! The wiring questions against tables and worked examples that were put together apart from this code: see the
//! heads of the files in `calc/tests/data/electrical/` for where each value is from and how far it was checked.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that can't read its case has failed"
)]

mod data;

mod worked;

mod tables;

mod ampacity;

mod box_fill;

mod voltage_drop;

mod panel;

mod neutral;

mod circuit;

mod circuit_rules;

mod cable_run;

mod shock;

mod open_box_boxes;

mod open_box_solve;

mod open_box_answers;

mod open_box_returns;

mod open_box_properties;

mod open_box_diagnosis;

mod open_box_advice;
