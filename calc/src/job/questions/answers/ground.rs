//! What the room gives before anything is poured: outline, openings, readings, the old floor.

use serde::Serialize;

use super::answered;
use crate::floor::flatness::StraightedgeRefusal;
use crate::floor::surface::{BestFit, Reached, SurfaceRefusal};
use crate::floor::survey::reading_in;
use crate::floor::{Point, Surface};
use crate::job::questions::EntryProblem;
use crate::job::questions::room::{
    OpeningTrouble, Placed, RoomShape, ShapeProblem, openings, outline,
};
use crate::job::questions::survey::{MovedSpot, Readings, readings};
use crate::job::{ReadingWay, Room};
use crate::quantity::IN2_PER_FT2;

/// The outline, the openings, the readings and the old floor of a room.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// The outline.
    pub shape: Result<RoomShape, ShapeProblem>,
    /// The openings that stand in their walls.
    pub openings: Vec<Placed>,
    /// What keeps the others out.
    pub opening_troubles: Vec<OpeningTrouble>,
    /// The survey's spots.
    pub readings: Readings,
    /// The old floor.
    pub floor: Result<Surface, FloorProblem>,
}

/// Why there is no old floor.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FloorProblem {
    /// There is no outline.
    Outline,
    /// No spot was read.
    NothingRead,
    /// The spots make no floor.
    Spots {
        /// Why; spots by their place among those read.
        what: SurfaceRefusal,
        /// The ids of the spots that it names.
        spots: Vec<u32>,
    },
    /// No straightedge could be laid on it.
    Straightedge {
        /// Why.
        what: StraightedgeRefusal,
    },
}

/// The outline's figures.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OutlineFacts {
    /// The corners, counter-clockwise.
    pub corners: Vec<Point>,
    /// The walls, each from its corner to the next, inches.
    pub walls_in: Vec<f64>,
    /// Area, square inches.
    pub area_in2: f64,
    /// Area, square feet.
    pub area_ft2: f64,
    /// Perimeter, inches.
    pub perimeter_in: f64,
    /// For a walk: by how much the walls miss, inches.
    pub miss_in: Option<f64>,
    /// For a walk: by how much they may, inches.
    pub allowed_miss_in: Option<f64>,
}

/// An opening in its place, or what keeps it out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpeningAnswer {
    /// The opening's id.
    pub id: u32,
    /// Its place.
    #[serde(serialize_with = "answered")]
    pub place: Result<Placed, Vec<OpeningTrouble>>,
}

/// What the survey holds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SurveyFacts {
    /// Spots that were read.
    pub read: usize,
    /// Spots with a place but no reading yet.
    pub unread: usize,
    /// Entries that can't be read.
    pub problems: Vec<EntryProblem>,
    /// Readings that disagree with their neighbours.
    pub suspects: Vec<SuspectSpot>,
    /// Spots that were measured a little past a wall and stand at it.
    pub moved: Vec<MovedSpot>,
}

/// A reading to take again.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SuspectSpot {
    /// The spot's id.
    pub spot: u32,
    /// The reading that its neighbours lead to expect, inches.
    pub expected_reading_in: f64,
    /// How much higher the floor is than expected there, inches; negative: lower.
    pub residual_in: f64,
    /// What would have been let pass, inches.
    pub limit_in: f64,
}

/// A vertex of the old floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Mark {
    /// The spot's id; none for a corner of the room without a reading.
    pub spot: Option<u32>,
    /// For such a corner, the spot whose height it takes.
    pub assumed_from: Option<u32>,
    /// Where it is.
    pub at: Point,
    /// Its height above the datum, inches.
    pub height_in: f64,
}

/// The old floor's figures.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FloorFacts {
    /// The highest vertex.
    pub highest: Option<Mark>,
    /// The lowest vertex.
    pub lowest: Option<Mark>,
    /// From the highest down to the lowest, inches.
    pub fall_in: f64,
    /// Mean height of the floor above the datum, inches.
    pub mean_height_in: f64,
    /// The least-squares plane through the spots.
    pub best_fit: BestFit,
    /// Its tilt, inches per 4 ft.
    pub tilt_in_per_4ft: f64,
    /// Which way it falls, degrees counter-clockwise from x; none when level.
    pub downhill_degrees: Option<f64>,
    /// Corners without a reading of their own.
    pub assumed: Vec<Mark>,
    /// Volume and area up to each level of [`LEVELS`] even steps from the lowest to the highest.
    pub levels: Vec<Reached>,
}

/// How many steps from the lowest to the highest the volume is given at.
pub const LEVELS: usize = 8;

impl Ground {
    /// What a room gives.
    pub fn of(room: &Room) -> Self {
        let shape = outline(&room.outline);
        let walls = shape.as_ref().ok().map(|shape| &shape.outline);
        let readings = readings(&room.survey, walls);
        let (openings, opening_troubles) = match &shape {
            Ok(shape) => openings(shape, &room.openings),
            Err(_) => Default::default(),
        };
        let floor = floor(&shape, &readings);
        Self {
            shape,
            openings,
            opening_troubles,
            readings,
            floor,
        }
    }

    /// The outline's figures.
    ///
    /// # Errors
    /// What keeps the outline from being one.
    pub fn outline_facts(&self) -> Result<OutlineFacts, ShapeProblem> {
        let shape = self.shape.as_ref().map_err(Clone::clone)?;
        let outline = &shape.outline;
        Ok(OutlineFacts {
            corners: outline.corners().to_vec(),
            walls_in: outline.walls().map(|wall| wall.length_in()).collect(),
            area_in2: outline.area_in2(),
            area_ft2: outline.area_in2() / IN2_PER_FT2,
            perimeter_in: outline.perimeter_in(),
            miss_in: shape.walked.as_ref().map(|walked| walked.miss_in),
            allowed_miss_in: shape.walked.as_ref().map(|walked| walked.allowed_in),
        })
    }

    /// Each opening in its place, in the document's order; without an outline none has one.
    pub fn opening_answers(&self, room: &Room) -> Vec<OpeningAnswer> {
        let place = |id: u32| match self.openings.iter().find(|placed| placed.id == id) {
            Some(placed) => Ok(*placed),
            None => Err(self
                .opening_troubles
                .iter()
                .filter(|trouble| trouble.row() == Some(id))
                .cloned()
                .collect()),
        };
        let ids = room.openings.iter().map(|opening| opening.id);
        ids.map(|id| OpeningAnswer {
            id,
            place: place(id),
        })
        .collect()
    }

    /// What the survey holds, and which readings to take again.
    pub fn survey_facts(&self, way: ReadingWay) -> SurveyFacts {
        let suspect = |found: crate::floor::survey::Suspect| {
            Some(SuspectSpot {
                spot: self.readings.id_of(found.index)?,
                expected_reading_in: reading_in(way, found.expected_in),
                residual_in: found.residual_in,
                limit_in: found.limit_in,
            })
        };
        SurveyFacts {
            read: self.readings.spots.len(),
            unread: self.readings.unread(),
            problems: self.readings.problems.clone(),
            moved: self.readings.moved(),
            suspects: self
                .readings
                .doubted()
                .into_iter()
                .filter_map(suspect)
                .collect(),
        }
    }

    /// The old floor's figures.
    ///
    /// # Errors
    /// What keeps the floor from being known.
    pub fn floor_facts(&self) -> Result<FloorFacts, FloorProblem> {
        let surface = self.floor.as_ref().map_err(Clone::clone)?;
        let facts = surface.facts();
        let plane = facts.best_fit.plane;
        Ok(FloorFacts {
            highest: Mark::of(surface, &self.readings, facts.highest),
            lowest: Mark::of(surface, &self.readings, facts.lowest),
            fall_in: facts.fall_in,
            mean_height_in: facts.mean_height_in,
            best_fit: facts.best_fit,
            tilt_in_per_4ft: plane.tilt_in_per_4ft(),
            downhill_degrees: plane.downhill_degrees(),
            assumed: (surface.spot_count..surface.vertices.len())
                .filter_map(|vertex| Mark::of(surface, &self.readings, vertex))
                .collect(),
            levels: surface.hypsometric_curve(LEVELS),
        })
    }
}

impl Mark {
    /// A vertex of the surface by its index.
    pub fn of(surface: &Surface, readings: &Readings, vertex: usize) -> Option<Self> {
        let found = surface.vertices.get(vertex)?;
        Some(Self {
            spot: readings.id_of(vertex),
            assumed_from: found.assumed_from.and_then(|spot| readings.id_of(spot)),
            at: found.at,
            height_in: found.height_in,
        })
    }
}

/// The old floor through the spots read.
fn floor(
    shape: &Result<RoomShape, ShapeProblem>,
    readings: &Readings,
) -> Result<Surface, FloorProblem> {
    let shape = shape.as_ref().map_err(|_| FloorProblem::Outline)?;
    if readings.spots.is_empty() {
        return Err(FloorProblem::NothingRead);
    }
    readings.surface(&shape.outline).map_err(|what| {
        let spots = named(&what)
            .into_iter()
            .filter_map(|spot| readings.id_of(spot))
            .collect();
        FloorProblem::Spots { what, spots }
    })
}

/// The spots that a refusal names, by their place among those read.
fn named(refusal: &SurfaceRefusal) -> Vec<usize> {
    use SurfaceRefusal as No;
    match *refusal {
        No::TooFew { .. } | No::TooMany { .. } => Vec::new(),
        No::NotANumber { spot }
        | No::TooFarFromDatum { spot, .. }
        | No::Outside { spot, .. }
        | No::TooTight { spot } => vec![spot],
        No::SamePlace { first, second } => vec![first, second],
        No::OneLine { first, last } => vec![first, last],
    }
}
