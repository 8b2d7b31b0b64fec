//! One pour of a room with all that hangs on it.

use serde::Serialize;

use super::threshold::{Threshold, thresholds};
use super::{Mark, answered};
use crate::floor::lifts::{LiftShare, Lifts, LiftsRefusal, lifts};
use crate::floor::mixing::{self, Bags, Beyond, MixingRefusal, Pace};
use crate::floor::pour::{DepthAlong, Pour, PourKind, PourRefusal, flat, level};
use crate::floor::survey::reading_in;
use crate::floor::{Point, Surface};
use crate::job::questions::EntryProblem;
use crate::job::questions::pour::{ask, bag_ask, lift_limit_in, pace_ask};
use crate::job::questions::room::{Placed, beyond_height_in};
use crate::job::questions::survey::Readings;
use crate::job::{PourEntry, Room};

/// A pour with its depths, lifts, bags, pace and thresholds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Poured {
    /// The pour.
    pub pour: Pour,
    /// The vertex where it is deepest.
    pub greatest_at: Option<Mark>,
    /// The vertex where it is least deep.
    pub least_at: Option<Mark>,
    /// Depth at each spot that was read, in the document's order.
    pub spots: Vec<SpotDepth>,
    /// Depth along each opening.
    pub along: Vec<AlongOpening>,
    /// Dam at each opening.
    pub dams: Vec<DamAtOpening>,
    /// All dams together, inches; an opening whose floor beyond is not known counts in full.
    pub dam_in: f64,
    /// The lifts; none where no lift limit was entered.
    #[serde(serialize_with = "answered")]
    pub lifts: Result<Option<Lifts>, LiftsProblem>,
    /// Bags and water.
    #[serde(serialize_with = "answered")]
    pub bags: Result<Bags, MixingProblem>,
    /// The pace of mixing.
    #[serde(serialize_with = "answered")]
    pub pace: Result<Pace, MixingProblem>,
    /// The step and the ramp at each opening.
    pub thresholds: Vec<Threshold>,
}

/// Depth at a spot: how high to set the pin.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SpotDepth {
    /// The spot's id.
    pub spot: u32,
    /// Where it is.
    pub at: Point,
    /// Depth of the pour, inches.
    pub depth_in: f64,
    /// The top of the pour, inches above the datum.
    pub top_in: f64,
    /// The top of the pour, read like a spot of the survey, inches.
    pub top_reading_in: f64,
}

/// Depth along an opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct AlongOpening {
    /// The opening's id.
    pub id: u32,
    /// Depth there.
    pub depth: DepthAlong,
    /// The top of the pour at the left jamb, inches above the datum.
    pub top_left_in: f64,
    /// The top of the pour at the right jamb, inches above the datum.
    pub top_right_in: f64,
}

/// Dam at an opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DamAtOpening {
    /// The opening's id.
    pub id: u32,
    /// How much of its width needs a dam, inches: where the pour stands above the subfloor beyond. The whole width
    /// where that is not known.
    pub dam_in: f64,
    /// Whether the floor beyond is known.
    pub beyond_known: bool,
}

/// Why there is no pour.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PourProblem {
    /// There is no floor to pour on.
    Floor,
    /// Entries that are missing or refused.
    Entries(Vec<EntryProblem>),
    /// No such pour can be had.
    Pour {
        /// Why.
        what: PourRefusal,
        /// The vertices whose cover is in the way, each once, in the order in which the conflict names them.
        covers: Vec<Mark>,
    },
}

/// Why lifts are not known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftsProblem {
    /// The limit that was entered is refused.
    Entries(Vec<EntryProblem>),
    /// It can be read but the pour can't be shared out by it.
    Lifts(LiftsRefusal),
}

/// Why bags or pace are not known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum MixingProblem {
    /// Entries that are missing or refused.
    Entries(Vec<EntryProblem>),
    /// They can be read but can't be worked with.
    Mixing(MixingRefusal),
    /// Without bags there is no pace.
    Bags,
}

/// A pour of one kind, with all that hangs on it.
///
/// # Errors
/// See [`PourProblem`]; [`PourProblem::Floor`] is left to who has no surface to ask with.
pub fn poured(
    room: &Room,
    kind: PourKind,
    surface: &Surface,
    openings: &[Placed],
    readings: &Readings,
) -> Result<Poured, PourProblem> {
    let asked = ask(room, openings, readings).map_err(PourProblem::Entries)?;
    let pour = match kind {
        PourKind::Level => level(surface, &asked),
        PourKind::Flat => flat(surface, &asked),
    };
    let pour = pour.map_err(|what| PourProblem::Pour {
        covers: cover_vertices(&what)
            .into_iter()
            .filter_map(|vertex| Mark::of(surface, readings, vertex))
            .collect(),
        what,
    })?;
    let bags = bags(&room.pour, pour.volume_ft3);
    let thresholds = thresholds(room, openings, surface, readings, Some(&pour.plane));
    let dams = dams(room, openings, readings, &pour);
    Ok(Poured {
        greatest_at: Mark::of(surface, readings, pour.greatest_at),
        least_at: Mark::of(surface, readings, pour.least_at),
        spots: spot_depths(room, &pour, readings),
        along: along(surface, &pour, openings),
        dam_in: dams.iter().fold(0.0, |sum_in, dam| sum_in + dam.dam_in),
        dams,
        lifts: in_lifts(&room.pour, surface, &pour),
        pace: match &bags {
            Ok(bags) => pace(&room.pour, bags.bags),
            Err(_) => Err(MixingProblem::Bags),
        },
        bags,
        thresholds,
        pour,
    })
}

/// Bags and water for a volume in cubic feet.
///
/// # Errors
/// See [`MixingProblem`].
pub fn bags(entry: &PourEntry, volume_ft3: f64) -> Result<Bags, MixingProblem> {
    let asked = bag_ask(entry, volume_ft3).map_err(MixingProblem::Entries)?;
    mixing::bags(&asked).map_err(MixingProblem::Mixing)
}

/// The pace of mixing that many bags.
///
/// # Errors
/// See [`MixingProblem`].
pub fn pace(entry: &PourEntry, bags: u32) -> Result<Pace, MixingProblem> {
    let asked = pace_ask(entry, bags).map_err(MixingProblem::Entries)?;
    mixing::pace(&asked).map_err(MixingProblem::Mixing)
}

/// A pour shared out evenly over lifts no thicker than entered; none where no limit was.
///
/// # Errors
/// See [`LiftsProblem`].
pub fn in_lifts(
    entry: &PourEntry,
    surface: &Surface,
    pour: &Pour,
) -> Result<Option<Lifts>, LiftsProblem> {
    lift_limit_in(entry)
        .map_err(LiftsProblem::Entries)?
        .map(|limit_in| lifts(surface, pour, limit_in, LiftShare::Even))
        .transpose()
        .map_err(LiftsProblem::Lifts)
}

/// The dam that a pour needs at each opening in its place; what is laid on the floors later has no part in it.
pub fn dams(
    room: &Room,
    openings: &[Placed],
    readings: &Readings,
    pour: &Pour,
) -> Vec<DamAtOpening> {
    let dam = |placed: &Placed| {
        let beyond_in = room
            .opening(placed.id)
            .and_then(|opening| beyond_height_in(room.survey.way, opening, readings));
        let dam_in = match beyond_in {
            Some(height_in) => mixing::dam_in(
                pour,
                &Beyond {
                    left: placed.span.left,
                    right: placed.span.right,
                    height_in,
                },
            ),
            None => placed.span.span.width_in,
        };
        DamAtOpening {
            id: placed.id,
            dam_in,
            beyond_known: beyond_in.is_some(),
        }
    };
    openings.iter().map(dam).collect()
}

/// Depth at each spot that was read: the surface's first vertices are the spots in their order.
fn spot_depths(room: &Room, pour: &Pour, readings: &Readings) -> Vec<SpotDepth> {
    let spots = readings.ids.iter().zip(&readings.spots);
    spots
        .zip(&pour.depth_in)
        .map(|((&spot, read), &depth_in)| {
            let top_in = pour.plane.height_in(read.at);
            SpotDepth {
                spot,
                at: read.at,
                depth_in,
                top_in,
                top_reading_in: reading_in(room.survey.way, top_in),
            }
        })
        .collect()
}

fn along(surface: &Surface, pour: &Pour, openings: &[Placed]) -> Vec<AlongOpening> {
    openings
        .iter()
        .filter_map(|placed| {
            let span = placed.span;
            Some(AlongOpening {
                id: placed.id,
                depth: pour.along(surface, span.left, span.right)?,
                top_left_in: pour.plane.height_in(span.left),
                top_right_in: pour.plane.height_in(span.right),
            })
        })
        .collect()
}

fn cover_vertices(refusal: &PourRefusal) -> Vec<usize> {
    match refusal {
        PourRefusal::Conflict(conflict) => conflict.covers(),
        _ => Vec::new(),
    }
}
