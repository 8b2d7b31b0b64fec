//! Open box: what is live in an opened box, what has to be off, and whether every current comes back where it went out.
//!
//! Nothing here says that a part may be touched: a wrong description gives a wrong answer. In the order of the work:
//! - [`description`] the boxes, cables, joints and devices as found, and the panel;
//! - [`situation`] what is off, apart and set while something is measured; [`reading`] what was measured;
//! - [`solve`] voltages of a network of admittances; [`network`] the network behind a description, its faults as edits, and what is seen.

pub mod description;

pub mod situation;

pub mod reading;

pub mod solve;

pub mod network;

mod ohms;

mod places;
