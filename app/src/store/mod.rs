//! Jobs in the browser's storage, and every way for a job to come in or go out.
//!
//! Nobody's work is overwritten unseen: a save writes the new text before it drops the old, keeps the text before
//! that, and refuses when another tab wrote meanwhile. A text that can't be read is put aside whole.
//!
//! - [`keys`] every key in storage;
//! - [`shelf`] what storage can do, and a shelf in memory for tests and for browsers that block storage;
//! - [`local`] the browser's own shelf;
//! - [`jobs`] save, load, restore, duplicate; [`index`] the list of jobs; [`bin`] delete, undo, purge;
//!   [`carry`] a job file coming in or going out;
//! - browser only: [`link`] a job in a link, [`files`] download, pick, share; [`tabs`] what another tab writes;
//!   [`persist`] asking that storage be kept; [`fresh`] a new job's id and the time;
//!   [`drafts`] what is typed but belongs to no job yet.
//!
//! Every function answers with a value or a typed refusal; the words for both are in `words`.

pub mod keys;

pub mod shelf;

pub mod local;

pub mod jobs;

pub mod index;

pub mod bin;

pub mod carry;

pub mod base64url;

pub mod link;

pub mod files;

pub mod tabs;

pub mod persist;

pub mod fresh;

pub mod drafts;

#[cfg(test)]
mod tests;

pub use jobs::{Loaded, SaveRefusal, Saved, Seen};
pub use shelf::{MemoryShelf, Shelf, ShelfRefusal};
