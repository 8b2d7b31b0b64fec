//! Every answer of a job, put together in one place.
//!
//! - [`Ground`] what the room gives: outline, openings, readings, the old floor;
//! - [`Poured`] one pour with its depths, lifts, bags and pace; [`poured()`] for level or flat;
//! - [`Threshold`] the step and the ramp at each opening;
//! - [`Flatness`] what the finish's limits say of the old floor;
//! - [`FloorAnswers`] all of these for a room;
//! - [`ClosingAnswers`] tile, board, paint, trim and air of a room;
//! - [`WiringAnswers`] panel, supply, circuits, neutrals and boxes; [`JobAnswers`] all of a job.
//!
//! Each part can be asked for by itself, since a keystroke changes only some. [`Flatness`] is the one that searches;
//! the others are quick. The least patching, which takes longest, is never asked here:
//! [`patch_for`](crate::floor::flatness::patch_for) is, where a limit fails and a user wants to know.

use serde::{Serialize, Serializer};

use super::EntryProblem;
use super::pour::primer_coverage_in2;
use super::room::ShapeProblem;
use crate::floor::mixing::{MixingRefusal, primer_gal};
use crate::floor::opening::edge_strip_in;
use crate::floor::pour::PourKind;
use crate::job::{Job, PourChoice, PourEntry, Room};
use crate::quantity::IN2_PER_FT2;

mod ground;

mod flatness;

mod poured;

mod threshold;

mod closing;

mod wiring;

pub use closing::{ClosingAnswers, PaintAnswered, TrimAnswered};
pub use flatness::Flatness;
pub use ground::{
    FloorFacts, FloorProblem, Ground, LEVELS, Mark, OpeningAnswer, OutlineFacts, SurveyFacts,
    SuspectSpot,
};
pub use poured::{
    AlongOpening, DamAtOpening, LiftsProblem, MixingProblem, PourProblem, Poured, SpotDepth, bags,
    dams, in_lifts, pace, poured,
};
pub use threshold::{RampPlan, Threshold, ThresholdProblem, thresholds};
pub use wiring::{BoxAnswered, CircuitAnswered, WiringAnswers};

/// Every answer of a job.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JobAnswers {
    /// The job's id.
    pub job: String,
    /// The floor of each room, in the job's order.
    pub rooms: Vec<FloorAnswers>,
    /// The closing up of each room, in the job's order.
    pub closing: Vec<ClosingAnswers>,
    /// The wiring.
    pub wiring: WiringAnswers,
}

/// Every answer of a room's floor. What can't be answered says why; saved as `{"refused": ...}`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FloorAnswers {
    /// The room's id.
    pub room: u32,
    /// The user's name for it.
    pub name: String,
    /// The outline.
    #[serde(serialize_with = "answered")]
    pub outline: Result<OutlineFacts, ShapeProblem>,
    /// The openings, in the document's order.
    pub openings: Vec<OpeningAnswer>,
    /// The survey.
    pub survey: SurveyFacts,
    /// The old floor.
    #[serde(serialize_with = "answered")]
    pub floor: Result<FloorFacts, FloorProblem>,
    /// How flat the old floor is for the finish.
    #[serde(serialize_with = "answered")]
    pub flatness: Result<Flatness, FloorProblem>,
    /// Foam along the walls: the perimeter less the openings, inches; none without an outline.
    pub edge_strip_in: Option<f64>,
    /// Primer for the floor.
    #[serde(serialize_with = "answered")]
    pub primer: Result<Primer, PrimerProblem>,
    /// The pour that the user took.
    pub choice: PourChoice,
    /// The level pour.
    #[serde(serialize_with = "answered")]
    pub level: Result<Poured, PourProblem>,
    /// The flat pour.
    #[serde(serialize_with = "answered")]
    pub flat: Result<Poured, PourProblem>,
    /// The openings as they would be with no pour at all; none without a floor.
    pub thresholds_without_pour: Vec<Threshold>,
}

/// Primer for a floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Primer {
    /// The floor, square feet.
    pub area_ft2: f64,
    /// What a gallon covers, square feet; none where it was not entered.
    pub coverage_ft2_per_gal: Option<f64>,
    /// US gallons; none where the coverage was not entered.
    pub primer_gal: Option<f64>,
}

/// Why no primer is known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PrimerProblem {
    /// There is no outline.
    Outline,
    /// The coverage that was entered is refused.
    Entries(Vec<EntryProblem>),
    /// It can be read but can't be worked with.
    Mixing(MixingRefusal),
}

/// Every answer of a job: its rooms in their order, and its wiring.
///
/// ```
/// use calc::job::{demo, questions::answers::answers};
/// let all = answers(&demo::job("k3", "2026-03-02T08:00:00Z"));
/// let room = &all.rooms[0];
/// let (level, flat) = (room.level.as_ref().unwrap(), room.flat.as_ref().unwrap());
/// assert!(flat.pour.volume_ft3 < level.pour.volume_ft3);
/// ```
pub fn answers(job: &Job) -> JobAnswers {
    JobAnswers {
        job: job.id.clone(),
        rooms: job.rooms.iter().map(FloorAnswers::of).collect(),
        closing: job.rooms.iter().map(ClosingAnswers::of).collect(),
        wiring: WiringAnswers::of(job),
    }
}

impl FloorAnswers {
    /// Every answer of a room's floor.
    pub fn of(room: &Room) -> Self {
        let ground = Ground::of(room);
        let pour = |kind| match &ground.floor {
            Ok(surface) => poured(room, kind, surface, &ground.openings, &ground.readings),
            Err(_) => Err(PourProblem::Floor),
        };
        let spans: Vec<_> = ground.openings.iter().map(|placed| placed.span).collect();
        Self {
            room: room.id,
            name: room.name.clone(),
            outline: ground.outline_facts(),
            openings: ground.opening_answers(room),
            survey: ground.survey_facts(room.survey.way),
            floor: ground.floor_facts(),
            flatness: match &ground.floor {
                Ok(surface) => Flatness::of(surface, room.finish),
                Err(problem) => Err(problem.clone()),
            },
            edge_strip_in: ground
                .shape
                .as_ref()
                .ok()
                .map(|shape| edge_strip_in(&shape.outline, &spans)),
            primer: match &ground.shape {
                Ok(shape) => primer(&room.pour, shape.outline.area_in2()),
                Err(_) => Err(PrimerProblem::Outline),
            },
            choice: room.pour.choice,
            level: pour(PourKind::Level),
            flat: pour(PourKind::Flat),
            thresholds_without_pour: match &ground.floor {
                Ok(surface) => thresholds(room, &ground.openings, surface, &ground.readings, None),
                Err(_) => Vec::new(),
            },
        }
    }
}

/// Primer for a floor of `area_in2` square inches.
///
/// # Errors
/// See [`PrimerProblem`]; a blank coverage is no error.
pub fn primer(entry: &PourEntry, area_in2: f64) -> Result<Primer, PrimerProblem> {
    let area_ft2 = area_in2 / IN2_PER_FT2;
    let coverage_ft2_per_gal = primer_coverage_in2(entry)
        .map_err(PrimerProblem::Entries)?
        .map(|coverage_in2| coverage_in2 / IN2_PER_FT2);
    let primer_gal = coverage_ft2_per_gal
        .map(|coverage_ft2| primer_gal(area_ft2, coverage_ft2))
        .transpose()
        .map_err(PrimerProblem::Mixing)?;
    Ok(Primer {
        area_ft2,
        coverage_ft2_per_gal,
        primer_gal,
    })
}

/// An answer as itself, a refusal as `{"refused": ...}`.
pub(crate) fn answered<T: Serialize, E: Serialize, S: Serializer>(
    result: &Result<T, E>,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    #[derive(Serialize)]
    struct Refused<'a, E> {
        refused: &'a E,
    }
    match result {
        Ok(answer) => answer.serialize(serializer),
        Err(refused) => Refused { refused }.serialize(serializer),
    }
}

#[cfg(test)]
mod tests;
