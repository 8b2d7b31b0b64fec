//! Areas.

use serde::Serialize;

/// An area, held in square inches.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Area(f64);

impl Area {
    /// From square inches.
    pub const fn from_in2(in2: f64) -> Self {
        Self(in2)
    }

    /// In square inches.
    pub const fn in2(self) -> f64 {
        self.0
    }

    /// From square feet.
    pub const fn from_ft2(ft2: f64) -> Self {
        Self(ft2 * 144.0)
    }

    /// In square feet.
    pub const fn ft2(self) -> f64 {
        self.0 / 144.0
    }
}
