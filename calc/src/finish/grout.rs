//! Grout: the joints' volume, powder and bags.

use serde::Serialize;
use thiserror::Error;

use crate::quantity::{IN2_PER_FT2, IN3_PER_FT3};
use crate::working::{Figure, Source, Step, Unit};

/// The trade's planning figures: `calc/tables/grout.rs`, sources in its head.
pub mod usual {
    include!("../../tables/grout.rs");
}

/// The most bags that an answer may have: a count past this is a slip of the finger.
pub const MOST_BAGS: f64 = 100_000.0;

/// A count that passes a whole number by less than this share is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// What is grouted and with what.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct GroutAsk {
    /// The tiled area, square feet.
    pub area_ft2: f64,
    /// One side of a tile, inches.
    pub length_in: f64,
    /// The other side, inches.
    pub width_in: f64,
    /// Joint, inches.
    pub joint_in: f64,
    /// Depth of the joint, inches: the tile's thickness, less mortar that stands in it.
    pub depth_in: f64,
    /// Dry powder for a cubic foot of joint, pounds.
    pub powder_lb_per_ft3: f64,
    /// Allowance for waste, percent.
    pub allowance_percent: f64,
    /// A bag, pounds.
    pub bag_lb: f64,
}

/// Grout for the joints.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Grout {
    /// What was asked.
    pub ask: GroutAsk,
    /// The joints' volume by the short formula, cubic inches; the bags are by this one, which is never low.
    pub volume_in3: f64,
    /// The same, cubic feet.
    pub volume_ft3: f64,
    /// The joints' volume counted cell by cell, cubic inches: no crossing twice.
    pub exact_in3: f64,
    /// By how much the short formula is over that, as a share; 0 without joints.
    pub over_share: f64,
    /// Dry powder, pounds.
    pub powder_lb: f64,
    /// Dry powder with the allowance, pounds.
    pub with_allowance_lb: f64,
    /// Bags to buy.
    pub bags: u32,
}

/// An entry of a [`GroutAsk`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// The area.
    Area,
    /// A side of the tile.
    Length,
    /// The other side.
    Width,
    /// The joint.
    Joint,
    /// Its depth.
    Depth,
    /// Powder for a cubic foot.
    Powder,
    /// The allowance.
    Allowance,
    /// A bag.
    Bag,
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum GroutRefusal {
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
    /// More than [`MOST_BAGS`].
    #[error("{bags} bags are more than {MOST_BAGS}")]
    TooMany {
        /// How many it would take.
        bags: f64,
    },
}

/// Grout: volume = area x (L + W) / (L x W) x joint x depth; exactly, area x depth x (1 - L W / ((L + J) (W + J))).
///
/// The short formula counts crossings twice and takes the tile for the module: 1 percent over for large tile, 10 for mosaic.
///
/// # Errors
/// See [`GroutRefusal`].
///
/// ```
/// use calc::finish::grout::{GroutAsk, grout};
/// // 100 square feet of 12 x 24 in tile, 1/8 in joints, 3/8 in deep: 84.375 cubic inches, about 5 lb.
/// let ask = GroutAsk {
///     area_ft2: 100.0, length_in: 24.0, width_in: 12.0, joint_in: 0.125, depth_in: 0.375,
///     powder_lb_per_ft3: 100.0, allowance_percent: 10.0, bag_lb: 10.0,
/// };
/// let answer = grout(&ask)?;
/// assert_eq!((answer.volume_in3, answer.bags), (84.375, 1));
/// # Ok::<(), calc::finish::grout::GroutRefusal>(())
/// ```
pub fn grout(ask: &GroutAsk) -> Result<Grout, GroutRefusal> {
    for (field, given) in [
        (Field::Area, ask.area_ft2),
        (Field::Joint, ask.joint_in),
        (Field::Depth, ask.depth_in),
        (Field::Allowance, ask.allowance_percent),
    ] {
        amount(field, given)?;
    }
    for (field, given) in [
        (Field::Length, ask.length_in),
        (Field::Width, ask.width_in),
        (Field::Powder, ask.powder_lb_per_ft3),
        (Field::Bag, ask.bag_lb),
    ] {
        amount(field, given)?;
        if given <= 0.0 {
            return Err(GroutRefusal::Nothing { field, given });
        }
    }
    let (l, w, j) = (ask.length_in, ask.width_in, ask.joint_in);
    let area_in2 = ask.area_ft2 * IN2_PER_FT2;
    let volume_in3 = area_in2 * (l + w) / (l * w) * j * ask.depth_in;
    // 1 - L W / ((L + J) (W + J)), written so that narrow joints lose no digits.
    let exact_in3 = area_in2 * ask.depth_in * (j * (l + w + j) / ((l + j) * (w + j)));
    let volume_ft3 = volume_in3 / IN3_PER_FT3;
    let powder_lb = volume_ft3 * ask.powder_lb_per_ft3;
    let with_allowance_lb = powder_lb * (1.0 + ask.allowance_percent / 100.0);
    let bags = (with_allowance_lb / ask.bag_lb * (1.0 - ROUNDING)).ceil();
    if !bags.is_finite() || bags > MOST_BAGS {
        return Err(GroutRefusal::TooMany { bags });
    }
    Ok(Grout {
        ask: *ask,
        volume_in3,
        volume_ft3,
        exact_in3,
        over_share: if exact_in3 > 0.0 {
            volume_in3 / exact_in3 - 1.0
        } else {
            0.0
        },
        powder_lb,
        with_allowance_lb,
        bags: bags as u32,
    })
}

fn amount(field: Field, given: f64) -> Result<(), GroutRefusal> {
    if given.is_finite() && given >= 0.0 {
        Ok(())
    } else {
        Err(GroutRefusal::NotAnAmount { field, given })
    }
}

impl Grout {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let ask = &self.ask;
        let sizes = || {
            vec![
                figure("area", ask.area_ft2, Unit::Ft2),
                figure("tile_length", ask.length_in, Unit::In),
                figure("tile_width", ask.width_in, Unit::In),
                figure("tile_joint", ask.joint_in, Unit::In),
                figure("joint_depth", ask.depth_in, Unit::In),
            ]
        };
        vec![
            Step {
                formula: "grout_volume",
                inputs: sizes(),
                result: figure("grout_volume", self.volume_in3, Unit::In3),
                source: Source::Arithmetic,
            },
            Step {
                formula: "grout_volume_exact",
                inputs: sizes(),
                result: figure("grout_volume_exact", self.exact_in3, Unit::In3),
                source: Source::Arithmetic,
            },
            Step {
                formula: "grout_powder",
                inputs: vec![
                    figure("grout_volume", self.volume_ft3, Unit::Ft3),
                    figure("powder_per_ft3", ask.powder_lb_per_ft3, Unit::PoundsPerFt3),
                    figure("allowance", ask.allowance_percent, Unit::Percent),
                ],
                result: figure("grout_powder", self.with_allowance_lb, Unit::Pounds),
                source: Source::CommonPractice,
            },
            Step {
                formula: "grout_bags",
                inputs: vec![
                    figure("grout_powder", self.with_allowance_lb, Unit::Pounds),
                    figure("bag_weight", ask.bag_lb, Unit::Pounds),
                ],
                result: figure("bags", f64::from(self.bags), Unit::Bags),
                source: Source::Arithmetic,
            },
        ]
    }
}
