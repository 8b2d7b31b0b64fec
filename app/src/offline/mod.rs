//! What lets the app live on a device without a signal, and stop with grace.
//!
//! - [`worker`] registers the service worker (`offline/worker.js`), tells of an update that waits and applies it by consent;
//! - [`stop`] turns a panic into the plain notice that stands in `index.html`, and marks a start as done.
//!
//! In the order of a start: [`install_stop_notice`], mount, [`started`], and [`Offline::register`] by the app's root.

pub mod stop;

pub mod worker;

pub use stop::{install_stop_notice, start_without_last_job, started};
pub use worker::Offline;
