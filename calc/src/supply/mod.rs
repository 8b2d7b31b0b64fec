//! What to buy, and what a quote says against it.
//!
//! - [`unit`] the units that a counter sells by and a quote is written in;
//! - [`need`] one thing that a job needs: how much at the least, usually and generously;
//! - [`quote`] a quote's lines as pasted;
//! - [`check`] a quote's lines against the needs.

pub mod unit;

pub mod need;

pub mod quote;

pub mod check;
