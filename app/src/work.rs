//! What follows from a room: each question asked once, and again only when its own part changes.

use std::sync::Arc;

use crate::reactive::memo;
use calc::floor::opening::OpeningSpan;
use calc::floor::surface::SurfaceRefusal;
use calc::floor::{Outline, Surface, contour};
use calc::job::questions::room::{self, OpeningTrouble, Placed, RoomShape, ShapeProblem};
use calc::job::questions::survey::{Readings, readings};
use calc::job::{Room, Units};
use leptos::prelude::*;

use crate::open_job::OpenRoom;

/// The old floor: not enough to make one yet, a refusal, or the surface.
pub type Floor = Option<Result<Arc<Surface>, SurfaceRefusal>>;

/// A room's answers that more than one page needs.
#[derive(Clone, Copy)]
pub struct Work {
    /// The outline.
    pub shape: Memo<Result<RoomShape, ShapeProblem>>,
    /// The openings in their places, and what keeps others out.
    pub openings: Memo<(Vec<Placed>, Vec<OpeningTrouble>)>,
    /// The survey's spots.
    pub readings: Memo<Readings>,
    /// The old floor; none while the outline is missing or nothing was read.
    pub floor: Memo<Floor>,
}

impl Work {
    /// The answers of a room.
    pub fn of(room: OpenRoom) -> Self {
        let entry = room.part(|r| r.outline.clone());
        let shape = memo(move || entry.with(room::outline));
        let entries = room.part(|r| r.openings.clone());
        let openings = memo(move || match &*shape.read() {
            Ok(shape) => entries.with(|entries| room::openings(shape, entries)),
            Err(_) => (Vec::new(), Vec::new()),
        });
        let survey = room.part(|r| r.survey.clone());
        let readings = memo(move || {
            let shape = shape.read();
            let outline = shape.as_ref().ok().map(|shape| &shape.outline);
            survey.with(|survey| readings(survey, outline))
        });
        let floor = memo(move || {
            let shape = shape.read();
            let shape = shape.as_ref().ok()?;
            readings.with(|r| {
                if r.spots.is_empty() {
                    return None;
                }
                Some(r.surface(&shape.outline).map(Arc::new))
            })
        });
        Self {
            shape,
            openings,
            readings,
            floor,
        }
    }

    /// The outline, where there is one.
    pub fn outline(self) -> Option<Outline> {
        self.shape
            .with(|shape| shape.as_ref().ok().map(|shape| shape.outline.clone()))
    }

    /// The openings' places.
    pub fn spans(self) -> Vec<OpeningSpan> {
        self.openings
            .with(|(placed, _)| placed.iter().map(|p| p.span).collect())
    }

    /// The surface, where there is one.
    pub fn surface(self) -> Option<Arc<Surface>> {
        self.floor
            .with(|floor| floor.as_ref().and_then(|f| f.as_ref().ok().cloned()))
    }
}

/// An opening's letter by its id: its place in the document counts, whether it stands in its wall or not.
pub fn letter_of(room: &Room, opening: u32) -> String {
    let at = room.openings.iter().position(|o| o.id == opening);
    opening_letter(at.unwrap_or(0))
}

/// The steps between contour lines in the units in force, inches.
pub fn contour_steps_in(units: Units) -> &'static [f64; 5] {
    match units {
        Units::FeetInches => &contour::STEPS_IN,
        Units::Metric => &contour::METRIC_STEPS_IN,
    }
}

/// An opening's letter, by its place in the document's list: A, B, ... Z, AA.
pub fn opening_letter(index: usize) -> String {
    let letter = |i: usize| char::from(b'A' + u8::try_from(i % 26).unwrap_or(0));
    if index < 26 {
        letter(index).to_string()
    } else {
        format!("{}{}", letter(index / 26 - 1), letter(index))
    }
}

/// The room without what closing up does not rest on, so that nothing of it is asked anew for a reading of the floor.
pub fn closing_part(room: OpenRoom) -> Memo<Option<Room>> {
    room.part(|r| {
        Some(Room {
            survey: Default::default(),
            pour: Default::default(),
            layers: Vec::new(),
            ..r.clone()
        })
    })
}
