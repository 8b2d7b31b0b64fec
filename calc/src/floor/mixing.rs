//! From a volume to bags, water and a pace; primer and dams.

use serde::Serialize;
use thiserror::Error;

mod bags;

mod dam;

mod pace;

pub use bags::{BagAsk, Bags, MOST_BAGS, bags};
pub use dam::{Beyond, dam_in};
pub use pace::{Pace, PaceAsk, pace};

/// What a figure usually is, where the product's own is not at hand.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Usual {
    /// The low end.
    pub low: f64,
    /// What to plan with.
    pub typical: f64,
    /// The high end.
    pub high: f64,
}

/// The trade's planning figures, as a table of constants: `calc/tables/self_levelling.rs`, sources in its head.
pub mod usual {
    use super::Usual;

    include!("../../tables/self_levelling.rs");
}

/// A count that passes a whole number by less than this share is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// Why bags, pace or primer can't be worked out; each carries the field that is wrong and what it held.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum MixingRefusal {
    /// Must be a number and not negative.
    #[error("{field} of {given} is not an amount")]
    NotAnAmount {
        /// Which field.
        field: Field,
        /// What it held.
        given: f64,
    },
    /// Must be more than nothing.
    #[error("{field} must be more than nothing, not {given}")]
    Nothing {
        /// Which field.
        field: Field,
        /// What it held.
        given: f64,
    },
    /// More than [`MOST_BAGS`].
    #[error("{bags} bags are more than {MOST_BAGS}")]
    TooMany {
        /// How many it would take.
        bags: f64,
    },
    /// More mixers than batches: even if every batch were mixed at once, the edge would not stay wet.
    #[error("keeping the edge wet takes {mixers} mixers for {batches} batches")]
    TooSlow {
        /// Mixers that would be needed.
        mixers: f64,
        /// Batches there are.
        batches: u32,
    },
}

/// A field of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// The volume.
    Volume,
    /// The allowance.
    Allowance,
    /// A bag's yield.
    Yield,
    /// A bag's water.
    Water,
    /// Bags in a batch.
    BagsPerBatch,
    /// Minutes for a batch.
    MinutesPerBatch,
    /// The pot life.
    PotLife,
    /// An area.
    Area,
    /// A primer's coverage.
    Coverage,
}

impl std::fmt::Display for Field {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        std::fmt::Debug::fmt(self, f)
    }
}

/// Primer for an area, US gallons: area / coverage.
///
/// # Errors
/// See [`MixingRefusal`].
pub fn primer_gal(area_ft2: f64, coverage_ft2_per_gal: f64) -> Result<f64, MixingRefusal> {
    amount(Field::Area, area_ft2)?;
    more_than_nothing(Field::Coverage, coverage_ft2_per_gal)?;
    Ok(area_ft2 / coverage_ft2_per_gal)
}

/// Rounded up to a whole number; what rounding added to one stays that one.
fn up(exact: f64) -> f64 {
    (exact - ROUNDING * exact.abs().max(1.0)).ceil().max(0.0)
}

fn amount(field: Field, given: f64) -> Result<(), MixingRefusal> {
    if given.is_finite() && given >= 0.0 {
        Ok(())
    } else {
        Err(MixingRefusal::NotAnAmount { field, given })
    }
}

fn more_than_nothing(field: Field, given: f64) -> Result<(), MixingRefusal> {
    if given.is_finite() && given > 0.0 {
        Ok(())
    } else {
        Err(MixingRefusal::Nothing { field, given })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_yield_covers_what_guides_say() {
        // Several public guides: a 50 lb bag covers 40 to 50 square feet at 1/8 in.
        let covers_ft2 = usual::YIELD_FT3_PER_BAG.typical / (0.125 / 12.0);
        assert!((40.0..=50.0).contains(&covers_ft2));
        assert!((covers_ft2 - 43.2).abs() < 1e-9);
    }

    #[test]
    fn primer_without_a_coverage_is_refused() {
        assert!(primer_gal(40.0, 0.0).is_err());
        assert_eq!(primer_gal(40.0, 200.0), Ok(0.2));
    }
}
