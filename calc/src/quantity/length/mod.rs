//! Lengths.

mod format;
mod parse;
pub mod tape;

use serde::Serialize;

pub use format::{FeetInches, echo};
pub use parse::{LARGEST_IN, LengthRefusal, parse_length};
pub(crate) use parse::{read_length_text, unit_token};

/// Millimetres in an inch, exact by definition (NIST SP 811, appendix B).
pub const MM_PER_IN: f64 = 25.4;

/// A length, held in inches.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Length(f64);

impl Length {
    /// No length.
    pub const ZERO: Self = Self(0.0);

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
        // 127 mm are 5 in: both are exact in f64 and 25.4 isn't, so that 304.8 mm is 12 in to the last bit.
        Self(mm * 5.0 / 127.0)
    }

    /// In millimetres.
    pub const fn mm(self) -> f64 {
        self.0 * 127.0 / 5.0
    }

    /// From centimetres.
    pub const fn from_cm(cm: f64) -> Self {
        Self(cm * 50.0 / 127.0)
    }

    /// In centimetres.
    pub const fn cm(self) -> f64 {
        self.0 * 127.0 / 50.0
    }

    /// From metres.
    pub const fn from_m(m: f64) -> Self {
        Self(m * 5000.0 / 127.0)
    }

    /// In metres.
    pub const fn m(self) -> f64 {
        self.0 * 127.0 / 5000.0
    }

    /// From so many of a unit.
    pub const fn from_unit(value: f64, unit: LengthUnit) -> Self {
        match unit {
            LengthUnit::Inches => Self::from_inches(value),
            LengthUnit::Feet => Self::from_feet(value),
            LengthUnit::Millimeters => Self::from_mm(value),
            LengthUnit::Centimeters => Self::from_cm(value),
            LengthUnit::Meters => Self::from_m(value),
        }
    }

    /// In a unit.
    pub const fn in_unit(self, unit: LengthUnit) -> f64 {
        match unit {
            LengthUnit::Inches => self.inches(),
            LengthUnit::Feet => self.feet(),
            LengthUnit::Millimeters => self.mm(),
            LengthUnit::Centimeters => self.cm(),
            LengthUnit::Meters => self.m(),
        }
    }

    /// True for a finite number of inches; every parsed length is finite.
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }
}

/// The unit that a bare number is read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
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

impl LengthUnit {
    /// Every unit.
    pub const ALL: [Self; 5] = [
        Self::Inches,
        Self::Feet,
        Self::Millimeters,
        Self::Centimeters,
        Self::Meters,
    ];

    /// The code that a job document keeps, which is the unit's symbol too.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Inches => "in",
            Self::Feet => "ft",
            Self::Millimeters => "mm",
            Self::Centimeters => "cm",
            Self::Meters => "m",
        }
    }

    /// The unit of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|unit| unit.code() == code)
    }

    /// True for millimetres, centimetres and metres.
    pub const fn is_metric(self) -> bool {
        matches!(self, Self::Millimeters | Self::Centimeters | Self::Meters)
    }
}
