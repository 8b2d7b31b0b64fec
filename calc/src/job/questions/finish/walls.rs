//! The walls above the floor: their height, and what is in them.

use serde::Serialize;

use super::{FinishProblem, Reader, WallsProblem, all_placed};
use crate::floor::Outline;
use crate::job::{Room, fields};

/// Lengths that differ by less than this are alike, inches: rounding of millimetres.
const ROUNDING_IN: f64 = 1e-6;

/// A doorway or a window in a wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Gap {
    /// The wall, its index from 0.
    pub wall: usize,
    /// From the wall's start, inches.
    pub from_in: f64,
    /// Above the floor, inches; 0 for a doorway.
    pub sill_in: f64,
    /// Its width, inches.
    pub width_in: f64,
    /// Its height, inches.
    pub height_in: f64,
}

impl Gap {
    /// Its area, square feet.
    pub fn area_ft2(&self) -> f64 {
        self.width_in * self.height_in / 144.0
    }
}

/// A cabinet or the like along a wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BuiltIn {
    /// The wall, its index from 0.
    pub wall: usize,
    /// From the wall's start, inches.
    pub from_in: f64,
    /// Its width, inches.
    pub width_in: f64,
    /// It has a toe strip of its own.
    pub own_toe_strip: bool,
}

/// The walls of a room.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RoomWalls {
    /// The room.
    pub outline: Outline,
    /// Height of the walls, inches; none where it was not asked for.
    pub height_in: Option<f64>,
    /// The doorways.
    pub doorways: Vec<Gap>,
    /// The windows.
    pub windows: Vec<Gap>,
    /// The built-ins.
    pub built_ins: Vec<BuiltIn>,
}

impl RoomWalls {
    /// Doorways and windows.
    pub fn gaps(&self) -> impl Iterator<Item = &Gap> {
        self.doorways.iter().chain(&self.windows)
    }

    /// Doorways and windows together, square feet.
    pub fn gaps_ft2(&self) -> f64 {
        self.gaps().map(Gap::area_ft2).sum()
    }
}

/// The walls of a room; their height only where `with_height`.
///
/// # Errors
/// A missing outline, entries that are missing or refused, and what does not fit.
pub fn walls<R>(room: &Room, with_height: bool) -> Result<RoomWalls, FinishProblem<R>> {
    let (outline, placed) = all_placed(room)?;
    let entry = &room.walls;
    let mut reader = Reader::default();
    let height_in =
        with_height.then(|| reader.need("wall_height", &fields::WALL_HEIGHT, &entry.height));
    let door_in = if placed.is_empty() {
        0.0
    } else {
        reader.need("door_height", &fields::OPENING_HEIGHT, &entry.door_height)
    };
    let doorways: Vec<Gap> = placed
        .iter()
        .map(|placed| Gap {
            wall: placed.span.span.wall,
            from_in: placed.span.span.from_in,
            sill_in: 0.0,
            width_in: placed.span.span.width_in,
            height_in: door_in,
        })
        .collect();
    let windows: Vec<Gap> = entry
        .windows
        .iter()
        .map(|window| {
            let reader = reader.row(window.id);
            Gap {
                wall: window.wall as usize,
                from_in: reader.need("from_start", &fields::ALONG, &window.from_start),
                sill_in: reader.need("sill", &fields::SILL, &window.sill),
                width_in: reader.need("width", &fields::OPENING_HEIGHT, &window.width),
                height_in: reader.need("height", &fields::OPENING_HEIGHT, &window.height),
            }
        })
        .collect();
    let built_ins: Vec<BuiltIn> = entry
        .built_ins
        .iter()
        .map(|built_in| {
            let reader = reader.row(built_in.id);
            BuiltIn {
                wall: built_in.wall as usize,
                from_in: reader.need("from_start", &fields::ALONG, &built_in.from_start),
                width_in: reader.need("width", &fields::OPENING_WIDTH, &built_in.width),
                own_toe_strip: built_in.own_toe_strip,
            }
        })
        .collect();
    let walls = reader.finish(RoomWalls {
        outline,
        height_in,
        doorways,
        windows,
        built_ins,
    })?;
    walls.fit(room)?;
    Ok(walls)
}

impl RoomWalls {
    fn fit(&self, room: &Room) -> Result<(), WallsProblem> {
        let within = |wall: usize, to_in: f64| {
            let wall = self.outline.wall(wall);
            wall.is_some_and(|wall| to_in <= wall.length_in() + ROUNDING_IN)
        };
        let top_in = self.height_in.unwrap_or(f64::INFINITY) + ROUNDING_IN;
        if self.doorways.iter().any(|door| door.height_in > top_in) {
            return Err(WallsProblem::DoorHigherThanWall);
        }
        for (gap, entry) in self.windows.iter().zip(&room.walls.windows) {
            if !within(gap.wall, gap.from_in + gap.width_in) || gap.sill_in + gap.height_in > top_in
            {
                return Err(WallsProblem::WindowOutside(entry.id));
            }
        }
        for (built_in, entry) in self.built_ins.iter().zip(&room.walls.built_ins) {
            if !within(built_in.wall, built_in.from_in + built_in.width_in) {
                return Err(WallsProblem::BuiltInOutside(entry.id));
            }
        }
        Ok(())
    }
}
