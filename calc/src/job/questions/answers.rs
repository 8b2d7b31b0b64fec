//! Questions.
