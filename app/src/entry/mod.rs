//! The widgets in which a user enters something.
//!
//! All share one frame (label, hint, error, echo); all keep the text as typed and hand it on at every key.
//! Ids come from the field's name and its row, so that labels, hints and errors find their input.

pub mod frame;

pub mod choice;

pub mod text;

pub mod tape;

pub mod measured;

pub use choice::{Choice, ChoiceOption, Pick};
pub use frame::Frame;
pub use measured::Measured;
pub use text::TextEntry;
