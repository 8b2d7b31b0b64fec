//! The job document: what a user entered, and nothing that can be worked out from it.
//!
//! - [`document`] the types, as they are saved;
//! - [`starting`] new jobs and rooms, with the entries they start from, and finding rows by their ids;
//! - [`fields`] what each measured field allows, and its unit;
//! - [`questions`] from what was entered to what calc is asked;
//! - [`sums`] what was typed into the quick sums;
//! - [`file`] reading and writing: versions, migrations, refusals;
//! - [`demo`] the worked demonstration job.

pub mod document;

pub mod starting;

pub mod fields;

pub mod questions;

pub mod sums;

pub mod file;

pub mod demo;

pub use crate::quantity::Typed;
pub use document::*;
pub use starting::Usual;
