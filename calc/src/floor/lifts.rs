//! A deep pour in lifts: how many, where each ends, what each takes.

use serde::Serialize;
use thiserror::Error;

use super::plane::Plane;
use super::pour::{Pour, PourKind};
use super::surface::Surface;
use crate::quantity::IN3_PER_FT3;
use crate::working::{Figure, Source, Step, Unit};

/// The most lifts that a plan may have: more is a slab, not a pour.
pub const MOST_LIFTS: u32 = 50;

/// A depth that passes a whole number of lifts by less than this share of a lift is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// How a deep pour is shared out over its lifts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftShare {
    /// All lifts alike: the last is no thinner than the others, so none is too thin to place.
    Even,
    /// Every lift but the last as thick as allowed; the last takes what is left.
    FullFirst,
}

/// One lift.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Lift {
    /// Its top: level for a level pour, parallel to the finish for a flat one.
    pub top: Plane,
    /// How far its top lies below the finish, inches.
    pub below_finish_in: f64,
    /// How thick it is where it is thickest, inches.
    pub greatest_thickness_in: f64,
    /// What it takes, cubic inches.
    pub volume_in3: f64,
    /// What it takes, cubic feet.
    pub volume_ft3: f64,
    /// The floor that is covered when it is down, square inches: its edge runs where its top meets the old floor.
    pub covered_in2: f64,
}

/// A pour in lifts.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Lifts {
    /// The thickest that one lift may be, inches.
    pub limit_in: f64,
    /// The greatest depth of the pour, inches.
    pub greatest_depth_in: f64,
    /// The pour's kind.
    pub kind: PourKind,
    /// From the lowest up; none when there is nothing to pour.
    pub lifts: Vec<Lift>,
}

/// Why a pour can't be shared out.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum LiftsRefusal {
    /// A limit that isn't a length.
    #[error("a lift of {given_in} in is not a lift")]
    Limit {
        /// What was given, inches.
        given_in: f64,
    },
    /// More than [`MOST_LIFTS`].
    #[error("{needed} lifts are more than {MOST_LIFTS}")]
    TooMany {
        /// How many it would take.
        needed: f64,
    },
}

/// Shares a pour out over lifts no thicker than `limit_in`.
///
/// Their number is the greatest depth over the limit, rounded up. Lifts of a level pour are level, those of a flat
/// pour parallel to its finish; a lift covers the floor that lies lower than its top, and the volumes, exact for the
/// triangles, add up to the pour's.
///
/// # Errors
/// See [`LiftsRefusal`].
///
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface, lifts::{LiftShare, lifts}, pour::{PourAsk, level}};
/// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
/// let spots = corners.map(|at| Spot { at, height_in: at.x_in / 60.0 }); // 1 in across 5 ft
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// let pour = level(&floor, &PourAsk { cover_in: 0.5, tilt_limit_in_per_4ft: None, rules: vec![] })?;
/// // 1-1/2 in at the low wall: two lifts of 3/4 in. The first is a wedge 45 in wide and 96 in long.
/// let plan = lifts(&floor, &pour, 1.0, LiftShare::Even)?;
/// assert_eq!(plan.lifts.len(), 2);
/// assert!((plan.lifts[0].volume_in3 - 0.5 * 0.75 * 45.0 * 96.0).abs() < 1e-9);
/// assert!((plan.lifts[0].covered_in2 - 45.0 * 96.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn lifts(
    surface: &Surface,
    pour: &Pour,
    limit_in: f64,
    share: LiftShare,
) -> Result<Lifts, LiftsRefusal> {
    if !(limit_in.is_finite() && limit_in > 0.0) {
        return Err(LiftsRefusal::Limit { given_in: limit_in });
    }
    let depth_in = pour.greatest_depth_in;
    let mut plan = Lifts {
        limit_in,
        greatest_depth_in: depth_in,
        kind: pour.kind,
        lifts: Vec::new(),
    };
    // A floor poured to its own height with no cover takes nothing.
    if depth_in <= 1e-12 {
        return Ok(plan);
    }
    let needed = (depth_in / limit_in - ROUNDING).ceil().max(1.0);
    if needed > f64::from(MOST_LIFTS) {
        return Err(LiftsRefusal::TooMany { needed });
    }
    let thickness_in = match share {
        LiftShare::Even => depth_in / needed,
        LiftShare::FullFirst => limit_in,
    };
    let (mut filled_in3, mut up_to_in) = (0.0, 0.0);
    let mut number = 1.0;
    while number <= needed {
        let is_last = number == needed;
        let top_in = if is_last {
            depth_in
        } else {
            thickness_in * number
        };
        let below_finish_in = depth_in - top_in;
        let top = if is_last {
            pour.plane
        } else {
            pour.plane.raised(-below_finish_in)
        };
        let filled = surface.filled_to(&top);
        plan.lifts.push(Lift {
            top,
            below_finish_in,
            greatest_thickness_in: top_in - up_to_in,
            volume_in3: filled.volume_in3 - filled_in3,
            volume_ft3: (filled.volume_in3 - filled_in3) / IN3_PER_FT3,
            covered_in2: filled.area_in2,
        });
        (filled_in3, up_to_in) = (filled.volume_in3, top_in);
        number += 1.0;
    }
    Ok(plan)
}

impl Lifts {
    /// How the figures come about: the number of lifts, then what each takes.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let mut steps = vec![Step {
            formula: "lifts",
            inputs: vec![
                figure("greatest_depth", self.greatest_depth_in, Unit::In),
                figure("lift_limit", self.limit_in, Unit::In),
            ],
            result: figure("lifts", self.lifts.len() as f64, Unit::Count),
            source: Source::CommonPractice,
        }];
        steps.extend(self.lifts.iter().map(|lift| Step {
            formula: "lift_volume",
            inputs: vec![
                figure("below_finish", lift.below_finish_in, Unit::In),
                figure("greatest_thickness", lift.greatest_thickness_in, Unit::In),
                figure("covered", lift.covered_in2, Unit::In2),
            ],
            result: figure("volume", lift.volume_ft3, Unit::Ft3),
            source: Source::Arithmetic,
        }));
        steps
    }
}
