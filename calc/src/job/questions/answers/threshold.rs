//! The step and the ramp at each opening, with or without a pour.

use serde::Serialize;

use super::answered;
use super::poured::MixingProblem;
use crate::floor::Surface;
use crate::floor::doorway::{Doorway, DoorwayRefusal, doorway};
use crate::floor::level_change::{LevelChange, SlopeHeld, classify, classify_slope};
use crate::floor::plane::Plane;
use crate::floor::ramp::{Ramp, RampRefusal, ramp};
use crate::job::questions::EntryProblem;
use crate::job::questions::doorway::{doorways, ramp_ask};
use crate::job::questions::room::Placed;
use crate::job::questions::survey::Readings;
use crate::job::{Opening, PourEntry, Room};

/// What happens at an opening.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Threshold {
    /// The opening's id.
    pub id: u32,
    /// The finished floors on both sides.
    #[serde(serialize_with = "answered")]
    pub doorway: Result<Doorway, ThresholdProblem>,
    /// The greater of the two steps held against the published heights.
    pub change: Option<LevelChange>,
    /// The ramp wanted; refused by itself, since a step needs no ramp to be known.
    #[serde(serialize_with = "answered")]
    pub ramp: Result<RampPlan, ThresholdProblem>,
}

/// A ramp and what it takes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RampPlan {
    /// The ramp.
    pub ramp: Ramp,
    /// Its volume, cubic feet.
    pub wedge_ft3: f64,
    /// Bags for it, at the yield and allowance of the pour's bags.
    #[serde(serialize_with = "answered")]
    pub bags: Result<u32, MixingProblem>,
    /// Its slope held against the published slopes.
    pub held: Vec<SlopeHeld>,
}

/// Why nothing is known of a doorway or a ramp.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ThresholdProblem {
    /// Entries that are missing or refused.
    Entries(Vec<EntryProblem>),
    /// They can be read but make no doorway.
    Doorway(Vec<DoorwayRefusal>),
    /// Without the doorway there is no ramp.
    NoDoorway,
    /// The steps can't be ramped as wanted.
    Ramp(RampRefusal),
}

/// What happens at each opening that stands in its wall, with a pour of that top or without one.
pub fn thresholds(
    room: &Room,
    openings: &[Placed],
    surface: &Surface,
    readings: &Readings,
    pour: Option<&Plane>,
) -> Vec<Threshold> {
    doorways(room, openings, surface, readings, pour)
        .into_iter()
        .map(|asked| {
            let doorway = asked
                .entry
                .map_err(ThresholdProblem::Entries)
                .and_then(|entry| doorway(entry).map_err(ThresholdProblem::Doorway));
            let ramp = match (&doorway, room.opening(asked.id)) {
                (Ok(doorway), Some(opening)) => {
                    let placed = openings.iter().find(|placed| placed.id == asked.id);
                    let width_in = placed.map_or(0.0, |placed| placed.span.span.width_in);
                    ramp_plan(opening, width_in, doorway, &room.pour)
                }
                _ => Err(ThresholdProblem::NoDoorway),
            };
            let step_in = doorway.as_ref().ok().map(|d| d.greatest_step_in);
            Threshold {
                id: asked.id,
                change: step_in.and_then(|step_in| classify(step_in).ok()),
                doorway,
                ramp,
            }
        })
        .collect()
}

fn ramp_plan(
    opening: &Opening,
    width_in: f64,
    doorway: &Doorway,
    entry: &PourEntry,
) -> Result<RampPlan, ThresholdProblem> {
    let asked = ramp_ask(opening, width_in, doorway).map_err(ThresholdProblem::Entries)?;
    let ramp = ramp(asked).map_err(ThresholdProblem::Ramp)?;
    let wedge_ft3 = ramp.wedge_ft3();
    Ok(RampPlan {
        ramp,
        wedge_ft3,
        bags: super::poured::bags(entry, wedge_ft3).map(|bags| bags.bags),
        held: classify_slope(ramp.steepest).unwrap_or_default(),
    })
}
