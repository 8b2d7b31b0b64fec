//! Paint and primer: from surfaces to gallons to cans.

use serde::Serialize;
use thiserror::Error;

use super::steps::{figure, step, up};
use crate::floor::mixing::Usual;
use crate::working::{Source, Step, Unit};

mod cans;

pub use cans::{Can, CanMix, Cans, MOST_CANS, MOST_QUARTS};

/// The trade's planning figures: `calc/tables/paint.rs`, sources in its head.
pub mod usual {
    use super::Usual;

    include!("../../tables/paint.rs");
}

/// The largest surface, square feet.
pub const MOST_FT2: f64 = 1e6;

/// The most coats.
pub const MOST_COATS: u32 = 10;

/// The most surfaces under one paint.
pub const MOST_SURFACES: usize = 200;

/// What a surface is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PaintOn {
    /// Walls.
    Walls,
    /// A ceiling.
    Ceiling,
    /// Trim and doors.
    Trim,
}

/// A surface to paint.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PaintSurface {
    /// What it is.
    pub on: PaintOn,
    /// Its area, square feet.
    pub area_ft2: f64,
    /// Openings in it that get no paint, square feet.
    pub openings_ft2: f64,
}

impl PaintSurface {
    /// Walls round a room: its perimeter and their height, inches.
    pub fn walls(perimeter_in: f64, height_in: f64, openings_ft2: f64) -> Self {
        Self {
            on: PaintOn::Walls,
            area_ft2: perimeter_in * height_in / 144.0,
            openings_ft2,
        }
    }

    /// Trim: its length, feet, and the face that is painted, inches.
    ///
    /// ```
    /// // A foot of trim that shows 6 in is half a square foot.
    /// assert_eq!(calc::finish::paint::PaintSurface::trim(1.0, 6.0).area_ft2, 0.5);
    /// ```
    pub fn trim(length_ft: f64, face_in: f64) -> Self {
        Self {
            on: PaintOn::Trim,
            area_ft2: length_ft * face_in / 12.0,
            openings_ft2: 0.0,
        }
    }
}

/// One paint (or primer) and all that it goes on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PaintAsk {
    /// What it goes on.
    pub surfaces: Vec<PaintSurface>,
    /// Coats; 1 for primer on new board.
    pub coats: u32,
    /// What a gallon covers in one coat, from the can; square feet.
    pub spread_ft2_per_gal: f64,
    /// Ordering allowance, percent.
    pub allowance_percent: f64,
    /// The cans on offer.
    pub cans: Vec<Can>,
}

/// Gallons and cans.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Paint {
    /// What was asked.
    pub ask: PaintAsk,
    /// The surfaces together, square feet.
    pub gross_ft2: f64,
    /// The openings together, square feet.
    pub openings_ft2: f64,
    /// What gets paint, square feet.
    pub area_ft2: f64,
    /// One coat, gallons.
    pub gal_per_coat: f64,
    /// All coats, gallons.
    pub gal: f64,
    /// All coats with the allowance, gallons.
    pub with_allowance_gal: f64,
    /// What to buy.
    pub buy: Cans,
}

/// A number of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PaintField {
    /// A surface.
    Area,
    /// Its openings.
    Openings,
    /// Coats.
    Coats,
    /// The spread rate.
    Spread,
    /// The allowance.
    Allowance,
    /// A can's size, quarts.
    CanSize,
    /// The volume solids, percent.
    Solids,
    /// The dry film, thousandths of an inch.
    DryFilm,
}

/// Why there is no paint.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum PaintRefusal {
    /// A number that is none, below nothing, or too large.
    #[error("{field:?} of {given}")]
    NotAnAmount {
        /// Which.
        field: PaintField,
        /// What it held.
        given: f64,
    },
    /// Must be more than nothing.
    #[error("{field:?} is nothing")]
    Nothing {
        /// Which.
        field: PaintField,
    },
    /// Openings larger than what they are in.
    #[error("openings of {openings_ft2} ft2 in {area_ft2} ft2")]
    OpeningsLarger {
        /// Which surface, from 0.
        surface: usize,
        /// The openings, square feet.
        openings_ft2: f64,
        /// The surface, square feet.
        area_ft2: f64,
    },
    /// More than [`MOST_SURFACES`] surfaces or [`MOST_CANS`] cans on offer.
    #[error("{count} surfaces or cans")]
    TooMany {
        /// How many.
        count: usize,
    },
    /// No can on offer.
    #[error("no can on offer")]
    NoCans,
    /// More than [`MOST_QUARTS`].
    #[error("{quarts} quarts")]
    TooMuch {
        /// How much it would take, quarts.
        quarts: f64,
    },
}

/// Gallons = (surfaces - openings) x coats / spread x (1 + allowance), and the cans for them: the cheapest where every can
/// has a price, else the fewest.
///
/// # Errors
/// [`PaintRefusal`].
///
/// # Example
/// A room of 12 by 14 ft with 9 ft walls and 45 square feet of openings, two coats at 350 square feet a gallon: 423 square
/// feet, 2.417 gallons; two gallons and two quarts are four cans, three gallons are fewer.
/// ```
/// use calc::finish::paint::{Can, PaintAsk, PaintSurface, paint};
/// let ask = PaintAsk {
///     surfaces: vec![PaintSurface::walls(624.0, 108.0, 45.0)],
///     coats: 2,
///     spread_ft2_per_gal: 350.0,
///     allowance_percent: 0.0,
///     cans: vec![Can { quarts: 4, price_cents: None }, Can { quarts: 1, price_cents: None }],
/// };
/// let answer = paint(&ask)?;
/// assert_eq!(answer.area_ft2, 423.0);
/// assert!((answer.gal - 2.417_142_857).abs() < 1e-9);
/// assert_eq!((answer.buy.cans, answer.buy.quarts), (3, 12));
/// # Ok::<(), calc::finish::paint::PaintRefusal>(())
/// ```
pub fn paint(ask: &PaintAsk) -> Result<Paint, PaintRefusal> {
    if ask.surfaces.len() > MOST_SURFACES {
        return Err(PaintRefusal::TooMany {
            count: ask.surfaces.len(),
        });
    }
    let (mut gross_ft2, mut openings_ft2) = (0.0, 0.0);
    for (surface, of) in ask.surfaces.iter().enumerate() {
        amount(PaintField::Area, of.area_ft2, MOST_FT2)?;
        amount(PaintField::Openings, of.openings_ft2, MOST_FT2)?;
        if of.openings_ft2 > of.area_ft2 * (1.0 + 1e-9) {
            return Err(PaintRefusal::OpeningsLarger {
                surface,
                openings_ft2: of.openings_ft2,
                area_ft2: of.area_ft2,
            });
        }
        gross_ft2 += of.area_ft2;
        openings_ft2 += of.openings_ft2;
    }
    if ask.coats == 0 {
        return Err(PaintRefusal::Nothing {
            field: PaintField::Coats,
        });
    }
    amount(
        PaintField::Coats,
        f64::from(ask.coats),
        f64::from(MOST_COATS),
    )?;
    more(PaintField::Spread, ask.spread_ft2_per_gal, 1e5)?;
    amount(PaintField::Allowance, ask.allowance_percent, 100.0)?;
    let area_ft2 = (gross_ft2 - openings_ft2).max(0.0);
    let gal_per_coat = area_ft2 / ask.spread_ft2_per_gal;
    let gal = gal_per_coat * f64::from(ask.coats);
    let with_allowance_gal = gal * (1.0 + ask.allowance_percent / 100.0);
    let quarts = up(with_allowance_gal * 4.0);
    if quarts.is_nan() || quarts > f64::from(MOST_QUARTS) {
        return Err(PaintRefusal::TooMuch { quarts });
    }
    let buy = cans::cans(quarts as u32, &ask.cans)?;
    Ok(Paint {
        ask: ask.clone(),
        gross_ft2,
        openings_ft2,
        area_ft2,
        gal_per_coat,
        gal,
        with_allowance_gal,
        buy,
    })
}

/// What a gallon covers by its solids: 1604.17 x solids / dry film in thousandths of an inch; square feet, before any loss.
///
/// # Errors
/// [`PaintRefusal`]: solids or film that are none.
///
/// ```
/// // 35 % solids in a dry film of 2 mils: about 281 square feet.
/// let spread = calc::finish::paint::theoretical_ft2_per_gal(35.0, 2.0)?;
/// assert!((spread - 280.73).abs() < 0.01);
/// # Ok::<(), calc::finish::paint::PaintRefusal>(())
/// ```
pub fn theoretical_ft2_per_gal(
    solids_percent: f64,
    dry_film_mils: f64,
) -> Result<f64, PaintRefusal> {
    more(PaintField::Solids, solids_percent, 100.0)?;
    more(PaintField::DryFilm, dry_film_mils, 1e3)?;
    Ok(usual::SPREAD_AT_ONE_MIL_FT2_PER_GAL * solids_percent / 100.0 / dry_film_mils)
}

fn amount(field: PaintField, given: f64, most: f64) -> Result<(), PaintRefusal> {
    if given >= 0.0 && given <= most {
        Ok(())
    } else {
        Err(PaintRefusal::NotAnAmount { field, given })
    }
}

fn more(field: PaintField, given: f64, most: f64) -> Result<(), PaintRefusal> {
    if given == 0.0 {
        return Err(PaintRefusal::Nothing { field });
    }
    // Below a thousandth, a rate makes numbers out of all measure.
    if given >= 1e-3 {
        amount(field, given, most)
    } else {
        Err(PaintRefusal::NotAnAmount { field, given })
    }
}

impl Paint {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let gal = |name, value| figure(name, value, Unit::Gallons);
        let ft2 = |name, value| figure(name, value, Unit::Ft2);
        vec![
            step(
                "paint_area",
                vec![
                    ft2("surfaces", self.gross_ft2),
                    ft2("openings", self.openings_ft2),
                ],
                ft2("painted_area", self.area_ft2),
                Source::CommonPractice,
            ),
            step(
                "paint_gallons",
                vec![
                    ft2("painted_area", self.area_ft2),
                    figure("coats", f64::from(self.ask.coats), Unit::Count),
                    figure("spread", self.ask.spread_ft2_per_gal, Unit::Ft2PerGal),
                ],
                gal("paint", self.gal),
                Source::CommonPractice,
            ),
            step(
                "paint_with_allowance",
                vec![
                    gal("paint", self.gal),
                    figure("allowance", self.ask.allowance_percent, Unit::Percent),
                ],
                gal("paint_to_buy", self.with_allowance_gal),
                Source::CommonPractice,
            ),
            step(
                "paint_cans",
                vec![gal("paint_to_buy", self.with_allowance_gal)],
                gal("in_cans", f64::from(self.buy.quarts) / 4.0),
                Source::Arithmetic,
            ),
        ]
    }
}
