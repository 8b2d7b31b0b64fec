//! What the checks share: the case files' runner, the server and the browser.
//!
//! - [`cases`] reads case files and runs them over what they give ([`given`]); [`questions`] is the list of what a case may ask;
//! - [`server`] serves a build as a static host would: `make serve` and the journeys use the same one;
//! - [`browser`] starts Chromium, [`page`] is what a person can do with it, [`journey`] runs one and checks what must hold on
//!   every one of them;
//! - [`houses`] are simulated, with a fault each, to hold the diagnosis of an opened box against.

// What a check can't do without may stop it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

pub mod cases;

pub mod given;

pub mod questions;

pub mod server;

#[cfg(feature = "browser")]
pub mod browser;

#[cfg(feature = "browser")]
pub mod page;

#[cfg(feature = "browser")]
pub mod journey;

pub mod measures;

pub mod houses;
