//! Plain numbers.

use thiserror::Error;

/// Why a text is not a number.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum NumberRefusal {
    /// Nothing was typed.
    #[error("nothing typed")]
    Blank,
}
