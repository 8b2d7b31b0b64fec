//! What closes the joints of wall board: tape, compound, screws and corner bead, by the level of finish.
//!
//! Tape comes from the length of the joints. Compound has only rules of thumb by area, and they disagree: a range is given.

use serde::Serialize;
use thiserror::Error;

use super::steps::{figure, step, up};
use super::trim::stock::{self, CutAsk, CutList, CutRefusal};
use crate::floor::mixing::Usual;
use crate::working::{Source, Step, Unit};

/// Rules of thumb and levels: `calc/tables/compound.rs`, sources in its head.
pub mod usual {
    use super::{LevelRow, SurfaceCode, UseCode, Usual};

    include!("../../tables/compound.rs");
}

/// The most board, square feet.
pub const MOST_FT2: f64 = 1e6;

/// The longest joints in all, and the longest corner, feet.
pub const MOST_FT: f64 = 1e6;

/// The most outside corners.
pub const MOST_CORNERS: usize = 100;

/// What a finished surface is like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SurfaceCode {
    /// As it was hung.
    Untouched,
    /// Tool marks and ridges are acceptable.
    MarksAndRidges,
    /// Free of excess compound; marks are acceptable.
    Marks,
    /// Smooth, without marks or ridges.
    Smooth,
    /// Smooth, with a skim coat all over.
    Skimmed,
}

/// What a level is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum UseCode {
    /// Temporary work, or a finish not yet chosen.
    Temporary,
    /// Plenums, attics and other hidden places; fire taping.
    HiddenPlaces,
    /// A base for tile; garages and storage.
    TileBaseAndStorage,
    /// Heavy texture or heavy wall covering.
    HeavyTexture,
    /// Flat paint, light texture, thin wall covering.
    FlatPaint,
    /// Gloss, semi-gloss or dark paint; strong light from the side.
    GlossOrStrongLight,
}

/// A level of finish.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct LevelRow {
    /// The level, 0 to 5.
    pub level: u8,
    /// Whether tape is set in compound.
    pub taped: bool,
    /// Coats on flat joints, besides the tape's own.
    pub joint_coats: u8,
    /// Coats in angles, besides the tape's own.
    pub angle_coats: u8,
    /// Coats on fasteners.
    pub fastener_coats: u8,
    /// Whether a skim coat or the like covers the whole face.
    pub skim: bool,
    /// What the surface is like.
    pub surface: SurfaceCode,
    /// What it is for.
    pub usual_use: UseCode,
}

/// A level by its number.
pub fn level(number: u8) -> Option<&'static LevelRow> {
    usual::LEVELS.iter().find(|row| row.level == number)
}

/// What is to be finished.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CompoundAsk {
    /// Board, square feet.
    pub board_ft2: f64,
    /// What is taped: flat joints, patches, inside corners; feet.
    pub taped_ft: f64,
    /// Outside corners one by one, feet.
    pub outside_ft: Vec<f64>,
    /// The level, 0 to 5.
    pub level: u8,
    /// Allowance on tape, percent.
    pub allowance_percent: f64,
    /// What a pail of compound holds, US gallons.
    pub pail_gal: f64,
    /// Lengths of corner bead on offer, inches.
    pub bead_in: Vec<f64>,
}

/// From a low to a high, as rules of thumb have it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Range {
    /// The least that a rule gives.
    pub low: f64,
    /// What to plan with.
    pub typical: f64,
    /// The most that a rule gives.
    pub high: f64,
}

/// What it takes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Compound {
    /// What was asked.
    pub ask: CompoundAsk,
    /// The level.
    pub level: LevelRow,
    /// Tape for the joints, with the allowance, feet; nothing at level 0.
    pub tape_ft: f64,
    /// Tape as rules of thumb by area have it, feet; to compare.
    pub tape_by_area_ft: Range,
    /// Compound, US gallons; with the skim coat at level 5. Below level 4 the low and typical ends are the rules' share by
    /// coats of three, the high end is level 4's.
    pub compound_gal: Range,
    /// The part of it that skims, US gallons.
    pub skim_gal: Range,
    /// Pails for the low and the high end.
    pub pails: [u32; 2],
    /// Screws as rules of thumb by area have it; a layout counts them better.
    pub screws_by_area: Range,
    /// Corner bead: the sticks and what is cut from them; nothing at level 0 or without an outside corner.
    pub bead: Option<CutList>,
    /// Bead together, feet.
    pub bead_ft: f64,
    /// Fasteners of the bead, both flanges, at the widest and the closest spacing.
    pub bead_fasteners: [u32; 2],
}

/// A number of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CompoundField {
    /// The board.
    Board,
    /// What is taped.
    Taped,
    /// An outside corner.
    Corner,
    /// The allowance.
    Allowance,
    /// A pail.
    Pail,
}

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum CompoundRefusal {
    /// A number that is none, below nothing, or out of measure.
    #[error("{field:?} of {given}")]
    NotAnAmount {
        /// Which.
        field: CompoundField,
        /// What it held.
        given: f64,
    },
    /// No such level.
    #[error("level {given}")]
    Level {
        /// What was asked for.
        given: u8,
    },
    /// More than [`MOST_CORNERS`].
    #[error("{count} corners")]
    TooManyCorners {
        /// How many.
        count: usize,
    },
    /// The bead can't be cut.
    #[error(transparent)]
    Bead(CutRefusal),
}

/// Tape from joints, compound and screws by area, bead from corners.
///
/// # Errors
/// [`CompoundRefusal`].
///
/// # Example
/// 1000 square feet to level 4: 9 to 13.5 gallons, two or three pails of 4-1/2 gallons.
/// ```
/// use calc::finish::compound::{CompoundAsk, compound};
/// let ask = CompoundAsk {
///     board_ft2: 1000.0, taped_ft: 400.0, outside_ft: vec![8.0], level: 4, allowance_percent: 10.0, pail_gal: 4.5,
///     bead_in: vec![96.0, 120.0],
/// };
/// let answer = compound(&ask)?;
/// assert_eq!((answer.compound_gal.low, answer.compound_gal.high, answer.pails), (9.0, 13.5, [2, 3]));
/// assert!((answer.tape_ft - 440.0).abs() < 1e-9);
/// assert_eq!(answer.bead.map(|bead| bead.stock_in), Some(96.0));
/// # Ok::<(), calc::finish::compound::CompoundRefusal>(())
/// ```
pub fn compound(ask: &CompoundAsk) -> Result<Compound, CompoundRefusal> {
    let row = level(ask.level).ok_or(CompoundRefusal::Level { given: ask.level })?;
    for (field, given, [least, most]) in [
        (CompoundField::Board, ask.board_ft2, [0.0, MOST_FT2]),
        (CompoundField::Taped, ask.taped_ft, [0.0, MOST_FT]),
        (
            CompoundField::Allowance,
            ask.allowance_percent,
            [0.0, 100.0],
        ),
        (CompoundField::Pail, ask.pail_gal, [0.1, 100.0]),
    ] {
        amount(field, given, least, most)?;
    }
    if ask.outside_ft.len() > MOST_CORNERS {
        return Err(CompoundRefusal::TooManyCorners {
            count: ask.outside_ft.len(),
        });
    }
    for &corner_ft in &ask.outside_ft {
        amount(CompoundField::Corner, corner_ft, 0.1, 100.0)?;
    }
    let of_kft2 = ask.board_ft2 / 1000.0;
    let by_area = |rule: &Usual| Range {
        low: rule.low * of_kft2,
        typical: rule.typical * of_kft2,
        high: rule.high * of_kft2,
    };
    let none = Range {
        low: 0.0,
        typical: 0.0,
        high: 0.0,
    };
    let skim_gal = if row.skim {
        by_area(&usual::SKIM_GAL_PER_KFT2)
    } else {
        none
    };
    let compound_gal = if row.taped {
        let share = f64::from(1 + row.joint_coats) / LEVEL_4_COATS;
        let full = by_area(&usual::COMPOUND_GAL_PER_KFT2);
        Range {
            low: full.low * share + skim_gal.low,
            typical: full.typical * share + skim_gal.typical,
            high: full.high + skim_gal.high,
        }
    } else {
        none
    };
    let pails = |gal: f64| up(gal / ask.pail_gal) as u32;
    let bead = if row.taped && !ask.outside_ft.is_empty() {
        Some(bead(ask)?)
    } else {
        None
    };
    let bead_ft = bead.as_ref().map_or(0.0, |list| list.pieces_in / 12.0);
    // A row on each flange, and one at the end of each.
    let fasteners = |apart_in: f64| {
        let corners = ask.outside_ft.iter().filter(|_| bead.is_some());
        let each = corners.map(|corner_ft| 2.0 * (up(corner_ft * 12.0 / apart_in) + 1.0));
        each.sum::<f64>() as u32
    };
    Ok(Compound {
        level: *row,
        tape_ft: if row.taped {
            ask.taped_ft * (1.0 + ask.allowance_percent / 100.0)
        } else {
            0.0
        },
        tape_by_area_ft: Range {
            high: usual::MOST_TAPE_FT_PER_KFT2 * of_kft2,
            ..by_area(&usual::TAPE_FT_PER_KFT2)
        },
        compound_gal,
        skim_gal,
        pails: [pails(compound_gal.low), pails(compound_gal.high)],
        screws_by_area: by_area(&usual::SCREWS_PER_KFT2),
        bead_fasteners: [
            fasteners(usual::BEAD_FASTENERS_APART_IN.high),
            fasteners(usual::BEAD_FASTENERS_APART_IN.low),
        ],
        bead,
        bead_ft,
        ask: ask.clone(),
    })
}

/// Coats on a joint of level 4: the tape's own and two more.
const LEVEL_4_COATS: f64 = 3.0;

/// The bead: a corner longer than the longest stick takes whole ones and the rest.
fn bead(ask: &CompoundAsk) -> Result<CutList, CompoundRefusal> {
    let longest_in = ask.bead_in.iter().copied().fold(0.0, f64::max);
    let mut pieces_in = Vec::new();
    for corner_ft in &ask.outside_ft {
        let mut left_in = corner_ft * 12.0;
        while longest_in >= stock::LEAST_LENGTH_IN && left_in - longest_in >= stock::LEAST_LENGTH_IN
        {
            pieces_in.push(longest_in);
            left_in -= longest_in;
        }
        // A rest of a hair is within the cut.
        pieces_in.push(if left_in > longest_in && longest_in > 0.0 {
            longest_in
        } else {
            left_in
        });
    }
    stock::cut(&CutAsk {
        pieces_in,
        stock_in: ask.bead_in.clone(),
        kerf_in: 0.0,
    })
    .map_err(CompoundRefusal::Bead)
}

fn amount(field: CompoundField, given: f64, least: f64, most: f64) -> Result<(), CompoundRefusal> {
    if given >= least && given <= most {
        Ok(())
    } else {
        Err(CompoundRefusal::NotAnAmount { field, given })
    }
}

impl Compound {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let gal = |name, value| figure(name, value, Unit::Gallons);
        let rate = |name, value| figure(name, value, Unit::GalPerKft2);
        let board = figure("board_area", self.ask.board_ft2, Unit::Ft2);
        let mut steps = Vec::new();
        if !self.level.taped {
            return steps;
        }
        steps.push(step(
            "tape",
            vec![
                figure("taped_length", self.ask.taped_ft, Unit::Ft),
                figure("allowance", self.ask.allowance_percent, Unit::Percent),
            ],
            figure("tape", self.tape_ft, Unit::Ft),
            Source::CommonPractice,
        ));
        let coats = figure(
            "joint_coats",
            f64::from(1 + self.level.joint_coats),
            Unit::Count,
        );
        let rule = usual::COMPOUND_GAL_PER_KFT2;
        for (low, each, all) in [
            (true, rule.low, self.compound_gal.low - self.skim_gal.low),
            (
                false,
                rule.high,
                self.compound_gal.high - self.skim_gal.high,
            ),
        ] {
            let mut inputs = vec![board.clone(), rate("compound_rule", each)];
            if low {
                inputs.push(coats.clone());
            }
            steps.push(step(
                if low { "compound_low" } else { "compound_high" },
                inputs,
                gal(if low { "compound_low" } else { "compound_high" }, all),
                Source::CommonPractice,
            ));
        }
        if self.level.skim {
            let rule = usual::SKIM_GAL_PER_KFT2;
            for (name, each, all) in [
                ("skim_low", rule.low, self.skim_gal.low),
                ("skim_high", rule.high, self.skim_gal.high),
            ] {
                steps.push(step(
                    name,
                    vec![board.clone(), rate("skim_rule", each)],
                    gal(name, all),
                    Source::CommonPractice,
                ));
            }
        }
        if let Some(bead) = &self.bead {
            steps.extend(bead.working());
        }
        steps
    }
}
