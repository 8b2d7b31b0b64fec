//! Closing up a room: from its outline, openings and entries to what [`finish`](crate::finish) and [`air`](crate::air) are
//! asked.
//!
//! - [`walls`] the walls above the floor, with what is in them;
//! - [`tile`] the layout, the rules, mortar, grout and membrane;
//! - [`board`] sheets and what closes their joints;
//! - [`paint`] by paint;
//! - [`trim`] base, shoe and casing, and their cutting lists;
//! - [`air`] the exhaust fan, its duct and its load.

use serde::Serialize;

use super::{EntryProblem, Reader};
use crate::floor::Outline;
use crate::job::Room;
use crate::job::questions::room::{Placed, openings, outline};

pub mod walls;

pub mod tile;

pub mod board;

pub mod paint;

pub mod trim;

pub mod air;

/// Why something of closing up isn't answered.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FinishProblem<R> {
    /// There is no outline.
    Outline,
    /// What the room is made of does not fit together.
    Walls(WallsProblem),
    /// Entries that are missing or refused, each by its row and field.
    Entries(Vec<EntryProblem>),
    /// The answer that it rests on is refused.
    Before,
    /// They can be read but can't be answered.
    Refused(R),
}

/// What does not fit in the walls.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WallsProblem {
    /// An opening, by its id, that has no place in a wall yet.
    OpeningUnplaced(u32),
    /// A doorway higher than the walls.
    DoorHigherThanWall,
    /// A window, by its id, that is not within its wall.
    WindowOutside(u32),
    /// A built-in, by its id, that is not within its wall.
    BuiltInOutside(u32),
    /// A ceiling that is neither a rectangle nor one with a corner missing.
    CeilingShape,
}

impl<R> From<Vec<EntryProblem>> for FinishProblem<R> {
    fn from(problems: Vec<EntryProblem>) -> Self {
        Self::Entries(problems)
    }
}

impl<R> From<WallsProblem> for FinishProblem<R> {
    fn from(problem: WallsProblem) -> Self {
        Self::Walls(problem)
    }
}

/// The outline and every opening that has its place.
fn ground<R>(room: &Room) -> Result<(Outline, Vec<Placed>), FinishProblem<R>> {
    let shape = outline(&room.outline).map_err(|_| FinishProblem::Outline)?;
    let (placed, _) = openings(&shape, &room.openings);
    Ok((shape.outline, placed))
}

/// The outline and the openings, all of which must have a place.
fn all_placed<R>(room: &Room) -> Result<(Outline, Vec<Placed>), FinishProblem<R>> {
    let (outline, placed) = ground(room)?;
    let lost = room
        .openings
        .iter()
        .find(|opening| placed.iter().all(|placed| placed.id != opening.id));
    match lost {
        Some(opening) => Err(WallsProblem::OpeningUnplaced(opening.id).into()),
        None => Ok((outline, placed)),
    }
}
