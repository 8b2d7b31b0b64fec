//! Lengths.

use serde::Serialize;
use thiserror::Error;

/// Millimetres in an inch, exact by definition (NIST SP 811, appendix B).
pub const MM_PER_IN: f64 = 25.4;

/// A length, held in inches.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Length(f64);

impl Length {
    /// From inches.
    pub const fn from_inches(inches: f64) -> Self {
        Self(inches)
    }

    /// In inches.
    pub const fn inches(self) -> f64 {
        self.0
    }

    /// From feet.
    pub const fn from_feet(feet: f64) -> Self {
        Self(feet * 12.0)
    }

    /// In feet.
    pub const fn feet(self) -> f64 {
        self.0 / 12.0
    }

    /// From millimetres.
    pub const fn from_mm(mm: f64) -> Self {
        Self(mm / MM_PER_IN)
    }

    /// In millimetres.
    pub const fn mm(self) -> f64 {
        self.0 * MM_PER_IN
    }
}

/// The unit that a bare number is read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub enum LengthUnit {
    /// Inches.
    #[default]
    Inches,
    /// Feet.
    Feet,
    /// Millimetres.
    Millimeters,
    /// Centimetres.
    Centimeters,
    /// Metres.
    Meters,
}

/// Why a text is not a length.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LengthRefusal {
    /// Nothing was typed.
    #[error("nothing typed")]
    Blank,
}
