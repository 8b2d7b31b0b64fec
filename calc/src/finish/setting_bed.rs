//! The bed under the tile: mortar by the trowel's notch, and membrane.

use serde::Serialize;
use thiserror::Error;

use crate::working::{Figure, Source, Step, Unit};

include!("../../tables/setting_bed.rs");

/// The most bags or rolls that an answer may have: a count past this is a slip of the finger.
pub const MOST_PIECES: f64 = 100_000.0;

/// A count that passes a whole number by less than this share is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// A trowel's notch and what a 50 lb bag covers with it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Notch {
    /// Its stable name.
    pub id: &'static str,
    /// Depth of a notch, inches.
    pub depth_in: f64,
    /// Width of a notch, inches.
    pub width_in: f64,
    /// Between two notches, inches.
    pub spacing_in: f64,
    /// The least that guides say a bag covers, square feet.
    pub low_ft2: f64,
    /// The most, square feet.
    pub high_ft2: f64,
    /// Mean thickness of mortar if ridges stood full height, inches.
    pub ridge_in: f64,
    /// What half a cubic foot covers at that thickness, square feet.
    pub upright_ft2: f64,
}

/// Mortar for an area.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MortarAsk {
    /// The tiled area, square feet.
    pub area_ft2: f64,
    /// What a bag covers with the trowel in hand, square feet: from the bag, or a [`Notch`]'s `low_ft2`.
    pub coverage_ft2_per_bag: f64,
    /// Allowance, percent.
    pub allowance_percent: f64,
}

/// Bags of mortar.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Mortar {
    /// What was asked.
    pub ask: MortarAsk,
    /// The area with the allowance, square feet.
    pub with_allowance_ft2: f64,
    /// Bags before rounding up.
    pub exact_bags: f64,
    /// Bags to buy.
    pub bags: u32,
}

/// Membrane for a floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MembraneAsk {
    /// The floor, square feet.
    pub area_ft2: f64,
    /// Length of wall along which it is turned up, feet.
    pub turned_up_ft: f64,
    /// How high it is turned up, inches.
    pub turn_up_in: f64,
    /// Allowance for overlaps and trimming, percent.
    pub allowance_percent: f64,
    /// What a roll covers, square feet.
    pub roll_ft2: f64,
}

/// Rolls of membrane.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Membrane {
    /// What was asked.
    pub ask: MembraneAsk,
    /// Floor and what is turned up, square feet.
    pub area_ft2: f64,
    /// That with the allowance, square feet.
    pub with_allowance_ft2: f64,
    /// Rolls to buy.
    pub rolls: u32,
}

/// An entry of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// The area.
    Area,
    /// What a bag covers.
    Coverage,
    /// The allowance.
    Allowance,
    /// The length along which membrane is turned up.
    TurnedUp,
    /// The height to which it is.
    TurnUp,
    /// What a roll covers.
    Roll,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum BedRefusal {
    /// Must be a number and not negative.
    #[error("{given} is not an amount")]
    NotAnAmount {
        /// Which entry.
        field: Field,
        /// What it held.
        given: f64,
    },
    /// Must be more than nothing.
    #[error("{given} must be more than nothing")]
    Nothing {
        /// Which entry.
        field: Field,
        /// What it held.
        given: f64,
    },
    /// More than [`MOST_PIECES`].
    #[error("{pieces} bags or rolls are more than {MOST_PIECES}")]
    TooMany {
        /// How many it would take.
        pieces: f64,
    },
}

/// Bags of mortar: area x (1 + allowance) / coverage, rounded up.
///
/// # Errors
/// See [`BedRefusal`].
///
/// ```
/// use calc::finish::setting_bed::{MortarAsk, mortar};
/// // 200 square feet at 65 a bag: 3.08, so 4.
/// let ask = MortarAsk { area_ft2: 200.0, coverage_ft2_per_bag: 65.0, allowance_percent: 0.0 };
/// assert_eq!(mortar(&ask)?.bags, 4);
/// # Ok::<(), calc::finish::setting_bed::BedRefusal>(())
/// ```
pub fn mortar(ask: &MortarAsk) -> Result<Mortar, BedRefusal> {
    amount(Field::Area, ask.area_ft2)?;
    amount(Field::Allowance, ask.allowance_percent)?;
    more_than_nothing(Field::Coverage, ask.coverage_ft2_per_bag)?;
    let with_allowance_ft2 = ask.area_ft2 * (1.0 + ask.allowance_percent / 100.0);
    let exact_bags = with_allowance_ft2 / ask.coverage_ft2_per_bag;
    Ok(Mortar {
        ask: *ask,
        with_allowance_ft2,
        exact_bags,
        bags: pieces(exact_bags)?,
    })
}

/// Rolls of membrane: (floor + turned up) x (1 + allowance) / roll, rounded up.
///
/// # Errors
/// See [`BedRefusal`].
///
/// ```
/// use calc::finish::setting_bed::{MembraneAsk, membrane};
/// // 5 x 8 ft turned up 6 in all round: 40 + 13 square feet; 58.3 with 10 percent; two rolls of 54.
/// let ask = MembraneAsk { area_ft2: 40.0, turned_up_ft: 26.0, turn_up_in: 6.0, allowance_percent: 10.0, roll_ft2: 54.0 };
/// let answer = membrane(&ask)?;
/// assert_eq!((answer.area_ft2, answer.rolls), (53.0, 2));
/// # Ok::<(), calc::finish::setting_bed::BedRefusal>(())
/// ```
pub fn membrane(ask: &MembraneAsk) -> Result<Membrane, BedRefusal> {
    amount(Field::Area, ask.area_ft2)?;
    amount(Field::TurnedUp, ask.turned_up_ft)?;
    amount(Field::TurnUp, ask.turn_up_in)?;
    amount(Field::Allowance, ask.allowance_percent)?;
    more_than_nothing(Field::Roll, ask.roll_ft2)?;
    let area_ft2 = ask.area_ft2 + ask.turned_up_ft * ask.turn_up_in / 12.0;
    let with_allowance_ft2 = area_ft2 * (1.0 + ask.allowance_percent / 100.0);
    Ok(Membrane {
        ask: *ask,
        area_ft2,
        with_allowance_ft2,
        rolls: pieces(with_allowance_ft2 / ask.roll_ft2)?,
    })
}

fn amount(field: Field, given: f64) -> Result<(), BedRefusal> {
    if given.is_finite() && given >= 0.0 {
        Ok(())
    } else {
        Err(BedRefusal::NotAnAmount { field, given })
    }
}

fn more_than_nothing(field: Field, given: f64) -> Result<(), BedRefusal> {
    amount(field, given)?;
    if given > 0.0 {
        Ok(())
    } else {
        Err(BedRefusal::Nothing { field, given })
    }
}

fn pieces(exact: f64) -> Result<u32, BedRefusal> {
    let pieces = (exact * (1.0 - ROUNDING)).ceil();
    if pieces.is_finite() && pieces <= MOST_PIECES {
        Ok(pieces as u32)
    } else {
        Err(BedRefusal::TooMany { pieces })
    }
}

impl Mortar {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        vec![
            Step {
                formula: "area_with_allowance",
                inputs: vec![
                    figure("area", self.ask.area_ft2, Unit::Ft2),
                    figure("allowance", self.ask.allowance_percent, Unit::Percent),
                ],
                result: figure("area_with_allowance", self.with_allowance_ft2, Unit::Ft2),
                source: Source::CommonPractice,
            },
            Step {
                formula: "mortar_bags",
                inputs: vec![
                    figure("area_with_allowance", self.with_allowance_ft2, Unit::Ft2),
                    figure("bag_coverage", self.ask.coverage_ft2_per_bag, Unit::Ft2),
                ],
                result: figure("bags", f64::from(self.bags), Unit::Bags),
                source: Source::Entered,
            },
        ]
    }
}

impl Membrane {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        vec![
            Step {
                formula: "membrane_area",
                inputs: vec![
                    figure("area", self.ask.area_ft2, Unit::Ft2),
                    figure("turned_up_length", self.ask.turned_up_ft, Unit::Ft),
                    figure("turn_up", self.ask.turn_up_in, Unit::In),
                ],
                result: figure("membrane_area", self.area_ft2, Unit::Ft2),
                source: Source::Arithmetic,
            },
            Step {
                formula: "area_with_allowance",
                inputs: vec![
                    figure("membrane_area", self.area_ft2, Unit::Ft2),
                    figure("allowance", self.ask.allowance_percent, Unit::Percent),
                ],
                result: figure("area_with_allowance", self.with_allowance_ft2, Unit::Ft2),
                source: Source::CommonPractice,
            },
            Step {
                formula: "membrane_rolls",
                inputs: vec![
                    figure("area_with_allowance", self.with_allowance_ft2, Unit::Ft2),
                    figure("roll_area", self.ask.roll_ft2, Unit::Ft2),
                ],
                result: figure("membrane_rolls", f64::from(self.rolls), Unit::Count),
                source: Source::Entered,
            },
        ]
    }
}
