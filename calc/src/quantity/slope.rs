//! Slopes.

use serde::Serialize;

/// A slope, held as rise over run.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Slope(f64);

impl Slope {
    /// From rise over run.
    pub const fn from_ratio(ratio: f64) -> Self {
        Self(ratio)
    }

    /// In rise over run.
    pub const fn ratio(self) -> f64 {
        self.0
    }

    /// From inches of rise in 4 ft of run.
    pub const fn from_in_per_4ft(in_per_4ft: f64) -> Self {
        Self(in_per_4ft / 48.0)
    }

    /// In inches of rise in 4 ft of run.
    pub const fn in_per_4ft(self) -> f64 {
        self.0 * 48.0
    }
}
