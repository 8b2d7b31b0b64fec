//! The quick sums of the wiring. Each says what is entered, and how what calc answers is told; [`frame`] lays it out.
//!
//! - [`frame`] the page of a sum, and an answer in words, figures and a picture;
//! - [`box_form`] a box as it is entered, [`box_fill`] how full it is;
//! - [`laid`] a wire as it lies, [`ampacity`] what it carries;
//! - [`drop`] what a run loses, and [`measured`] what measured volts imply;
//! - [`cable`] cable for a run, and [`switches`] the cables between switches;
//! - [`keep`] a sum kept into a job.

pub mod frame;

pub mod box_form;

pub mod box_fill;

pub mod laid;

pub mod ampacity;

mod drop_form;

pub mod drop;

pub mod measured;

pub mod cable;

mod switches;

mod keep;
