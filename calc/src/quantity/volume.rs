//! Volumes.

use serde::Serialize;

/// A volume, held in cubic inches.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Volume(f64);

impl Volume {
    /// From cubic inches.
    pub const fn from_in3(in3: f64) -> Self {
        Self(in3)
    }

    /// In cubic inches.
    pub const fn in3(self) -> f64 {
        self.0
    }

    /// From cubic feet.
    pub const fn from_ft3(ft3: f64) -> Self {
        Self(ft3 * 1728.0)
    }

    /// In cubic feet.
    pub const fn ft3(self) -> f64 {
        self.0 / 1728.0
    }
}
