//! The room: its outline and its openings.

use serde::Serialize;

use super::survey::Readings;
use super::{EntryProblem, Reader};
use crate::floor::Outline;
use crate::floor::opening::{OpeningProblem, OpeningSpan, Span, place};
use crate::floor::outline::{
    ShapeRefusal, Walked, WallRun, l_shape, rectangle, turn_deg_across, walk,
};
use crate::floor::survey::height_in;
use crate::job::{Beyond, Opening, OutlineEntry, ReadingWay, Shape, Turn, fields};

/// The room's outline, and how a walk round its walls closed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RoomShape {
    /// The outline.
    pub outline: Outline,
    /// For a walk: its closing error and what was shared out.
    pub walked: Option<Walked>,
}

/// Why there is no outline.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ShapeProblem {
    /// Entries that are missing or can't be read.
    Entries(Vec<EntryProblem>),
    /// They can be read but make no room.
    Shape(ShapeRefusal),
}

/// The outline as entered.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps the shape from being a room.
pub fn outline(entry: &OutlineEntry) -> Result<RoomShape, ShapeProblem> {
    let mut reader = Reader::default();
    let plain = |outline| RoomShape {
        outline,
        walked: None,
    };
    match entry.shape {
        Shape::Rectangle => {
            let width = reader.need("width", &fields::SIDE, &entry.width);
            let length = reader.need("length", &fields::SIDE, &entry.length);
            let (width, length) = reader
                .finish((width, length))
                .map_err(ShapeProblem::Entries)?;
            rectangle(width, length)
                .map(plain)
                .map_err(ShapeProblem::Shape)
        }
        Shape::L => {
            let width = reader.need("width", &fields::SIDE, &entry.width);
            let length = reader.need("length", &fields::SIDE, &entry.length);
            let notch_width = reader.need("notch_width", &fields::SIDE, &entry.notch_width);
            let notch_length = reader.need("notch_length", &fields::SIDE, &entry.notch_length);
            reader.finish(()).map_err(ShapeProblem::Entries)?;
            l_shape(width, length, notch_width, notch_length, entry.notch_corner)
                .map(plain)
                .map_err(ShapeProblem::Shape)
        }
        Shape::Walk => {
            let runs: Vec<WallRun> = entry
                .walls
                .iter()
                .map(|wall| {
                    let reader = reader.row(wall.id);
                    let length_in = reader.need("length", &fields::SIDE, &wall.length);
                    let across_in = reader.may("across", &fields::CORNER_ACROSS, &wall.across);
                    let turn = reader
                        .may("angle_deg", &fields::TURN_DEGREES, &wall.angle_deg)
                        .or_else(|| across_in.map(turn_deg_across))
                        .unwrap_or(90.0);
                    let turn_left_deg = if wall.turn == Turn::Left { turn } else { -turn };
                    WallRun {
                        length_in,
                        turn_left_deg,
                    }
                })
                .collect();
            let runs = reader.finish(runs).map_err(ShapeProblem::Entries)?;
            let walked = walk(&runs).map_err(ShapeProblem::Shape)?;
            Ok(RoomShape {
                outline: walked.outline.clone(),
                walked: Some(walked),
            })
        }
    }
}

/// An opening in its place, with its row's id.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Placed {
    /// The opening's id in the document.
    pub id: u32,
    /// Where it is.
    pub span: OpeningSpan,
}

/// What keeps an opening from its place.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum OpeningTrouble {
    /// An entry that is missing or can't be read.
    Entry(EntryProblem),
    /// It can't be where it is said to be.
    Place {
        /// The opening's id.
        row: u32,
        /// What is wrong.
        what: OpeningProblem,
    },
}

impl OpeningTrouble {
    /// The opening's id.
    pub fn row(&self) -> Option<u32> {
        match self {
            Self::Entry(problem) => problem.row,
            Self::Place { row, .. } => Some(*row),
        }
    }
}

/// The openings that stand in their walls, and what keeps the others out.
///
/// One bad opening does not take the others away: the rest of the room can still be worked on.
pub fn openings(outline: &Outline, openings: &[Opening]) -> (Vec<Placed>, Vec<OpeningTrouble>) {
    let mut troubles = Vec::new();
    let mut placed: Vec<Placed> = Vec::new();
    for opening in openings {
        let mut reader = Reader::default();
        reader.row(opening.id);
        let from_in = reader.need("from_start", &fields::ALONG, &opening.from_start);
        let width_in = reader.need("width", &fields::OPENING_WIDTH, &opening.width);
        let span = match reader.finish(Span {
            wall: opening.wall as usize,
            from_in,
            width_in,
        }) {
            Ok(span) => span,
            Err(problems) => {
                troubles.extend(problems.into_iter().map(OpeningTrouble::Entry));
                continue;
            }
        };
        let mut spans: Vec<Span> = placed.iter().map(|p| p.span.span).collect();
        spans.push(span);
        match place(outline, &spans) {
            Ok(all) => placed.extend(all.last().map(|&span| Placed {
                id: opening.id,
                span,
            })),
            Err(refusals) => {
                troubles.extend(refusals.into_iter().map(|refusal| OpeningTrouble::Place {
                    row: opening.id,
                    what: refusal.what,
                }))
            }
        }
    }
    (placed, troubles)
}

/// Height of the subfloor beyond an opening, inches above the datum; nothing where it isn't known or can't be read.
pub fn beyond_height_in(way: ReadingWay, opening: &Opening, readings: &Readings) -> Option<f64> {
    match opening.beyond {
        Beyond::Unknown => None,
        Beyond::Reading => fields::READING
            .read(&opening.beyond_reading)
            .ok()
            .map(|reading| height_in(way, reading)),
        Beyond::Spot => opening
            .beyond_spot
            .and_then(|spot| readings.height_of(spot)),
    }
}
