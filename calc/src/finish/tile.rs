//! How tiles fall in a room.
//!
//! - [`ask`] what is laid, where and from which line, and what can be wrong with it;
//! - [`layout`](layout()) the answer: full and cut tiles, their sizes, what to buy, cuts, doorways, lines to snap;
//! - [`best`] the search for the start that avoids narrow cuts and needs the fewest tiles, a step at a time;
//! - [`rules`] what published rules say of joint, offset, lippage and movement joints.

pub mod ask;

pub mod layout;

pub mod best;

pub mod rules;

mod field;
mod frame;
mod grid;
mod measure;
mod offcuts;
mod places;
mod steps;
mod trapezoid;

pub use ask::{Buying, Obstacle, Pattern, Start, TileAsk, TileRefusal};
pub use best::{BestStart, Progress};
pub use layout::{Layout, layout};
