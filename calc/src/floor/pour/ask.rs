//! What is asked of a pour, and whether it makes sense by itself.

use serde::Serialize;
use thiserror::Error;

use super::conflict::Conflict;
use crate::floor::geometry::Point;
use crate::floor::surface::{FARTHEST_HEIGHT_IN, Surface};

/// The most cover that may be asked for, inches: a foot is no longer a pour.
pub const MOST_COVER_IN: f64 = 12.0;

/// What the pour must keep.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PourAsk {
    /// The least depth everywhere, inches.
    pub cover_in: f64,
    /// The most tilt, inches per 4 ft, in whatever direction; a level pour has none.
    pub tilt_limit_in_per_4ft: Option<f64>,
    /// Heights to keep at places.
    pub rules: Vec<HeightRule>,
}

/// A height to keep at a place, or at both jambs of an opening (a plane between them keeps it as well).
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeightRule {
    /// Where.
    pub points: Vec<Point>,
    /// Whether it may be lower.
    pub kind: HeightKind,
    /// The height of the finished pour, inches above the datum.
    pub height_in: f64,
    /// What the asker calls the rule; comes back in a refusal.
    pub id: u32,
}

/// How a height is to be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum HeightKind {
    /// No higher.
    AtMost,
    /// No higher and no lower.
    Exactly,
}

/// Why there is no pour.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum PourRefusal {
    /// A cover that isn't a number, is negative or passes [`MOST_COVER_IN`].
    #[error("a cover of {given_in} in is not between 0 and {MOST_COVER_IN} in")]
    Cover {
        /// What was given, inches.
        given_in: f64,
    },
    /// A tilt limit that isn't a number or is negative.
    #[error("a tilt limit of {given_in_per_4ft} in per 4 ft is not a limit")]
    TiltLimit {
        /// What was given.
        given_in_per_4ft: f64,
    },
    /// A rule whose height isn't a number or is too far from the datum.
    #[error("the height of rule {id}, {height_in} in, is not within reach of the datum")]
    RuleHeight {
        /// The rule.
        id: u32,
        /// Its height, inches.
        height_in: f64,
    },
    /// A rule that says no place.
    #[error("rule {id} says no place")]
    RuleNowhere {
        /// The rule.
        id: u32,
    },
    /// A rule at a place outside the room.
    #[error("rule {id} is for a place {by_in} in outside the room")]
    RuleOutside {
        /// The rule.
        id: u32,
        /// How far outside, inches.
        by_in: f64,
    },
    /// The surface has no vertices or no area.
    #[error("there is no floor to pour on")]
    NoFloor,
    /// No plane keeps all that is asked.
    #[error("what is asked cannot be had together")]
    Conflict(Conflict),
}

/// Whether the ask makes sense by itself.
pub(super) fn check(surface: &Surface, ask: &PourAsk) -> Result<(), PourRefusal> {
    if surface.vertices.is_empty() || surface.triangles.is_empty() {
        return Err(PourRefusal::NoFloor);
    }
    if !(0.0..=MOST_COVER_IN).contains(&ask.cover_in) {
        return Err(PourRefusal::Cover {
            given_in: ask.cover_in,
        });
    }
    if let Some(limit) = ask.tilt_limit_in_per_4ft
        && !(limit.is_finite() && limit >= 0.0)
    {
        return Err(PourRefusal::TiltLimit {
            given_in_per_4ft: limit,
        });
    }
    // A jamb worked out from a wall may be off it by rounding.
    let slack_in = 1000.0 * surface.outline.tolerance_in();
    for rule in &ask.rules {
        let id = rule.id;
        if !rule.height_in.is_finite() || rule.height_in.abs() > 2.0 * FARTHEST_HEIGHT_IN {
            return Err(PourRefusal::RuleHeight {
                id,
                height_in: rule.height_in,
            });
        }
        if rule.points.is_empty() {
            return Err(PourRefusal::RuleNowhere { id });
        }
        for point in &rule.points {
            let by_in = surface.outline.nearest_wall(*point).distance_in;
            if !(surface.outline.contains(*point) || by_in <= slack_in) {
                return Err(PourRefusal::RuleOutside { id, by_in });
            }
        }
    }
    Ok(())
}
