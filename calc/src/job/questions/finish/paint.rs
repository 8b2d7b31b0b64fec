//! Paint: each paint with what it goes on.

use serde::Serialize;

use super::walls::walls;
use super::{FinishProblem, Reader, trim};
use crate::finish::paint::{Can, Paint, PaintAsk, PaintOn, PaintRefusal, PaintSurface, paint};
use crate::job::{CoatEntry, Room, fields};

/// The paints of a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PaintKind {
    /// Primer on new board.
    Primer,
    /// Paint on the walls.
    Walls,
    /// Paint on the ceiling.
    Ceiling,
    /// Paint on the trim.
    Trim,
}

impl PaintKind {
    /// All, in the order they are put on.
    pub const ALL: [Self; 4] = [Self::Primer, Self::Ceiling, Self::Walls, Self::Trim];

    /// Its entries.
    pub const fn of(self, room: &Room) -> &CoatEntry {
        match self {
            Self::Primer => &room.paint.primer,
            Self::Walls => &room.paint.walls,
            Self::Ceiling => &room.paint.ceiling,
            Self::Trim => &room.paint.trim,
        }
    }
}

/// One paint: gallons and cans.
///
/// # Errors
/// A missing outline, walls that don't fit, entries that are missing or refused, what can't be worked with.
pub fn paint_of(room: &Room, kind: PaintKind) -> Result<Paint, FinishProblem<PaintRefusal>> {
    let surfaces = surfaces(room, kind)?;
    let coat = kind.of(room);
    let mut reader = Reader::default();
    let cents = |price: Option<f64>| price.map(|dollars| (dollars * 100.0).round() as u32);
    let coats = reader.count("coats", &fields::COATS, &coat.coats);
    let spread_in2 = reader.need("spread", &fields::COVERAGE, &coat.spread);
    let allowance_percent = reader.need(
        "allowance_percent",
        &fields::ALLOWANCE,
        &room.paint.allowance_percent,
    );
    let gallon = cents(reader.may("gallon_price", &fields::PRICE, &coat.gallon_price));
    let quart = cents(reader.may("quart_price", &fields::PRICE, &coat.quart_price));
    let ask = reader.finish(PaintAsk {
        surfaces,
        coats,
        spread_ft2_per_gal: spread_in2 / 144.0,
        allowance_percent,
        cans: vec![
            Can {
                quarts: 4,
                price_cents: gallon,
            },
            Can {
                quarts: 1,
                price_cents: quart,
            },
        ],
    })?;
    paint(&ask).map_err(FinishProblem::Refused)
}

fn surfaces(
    room: &Room,
    kind: PaintKind,
) -> Result<Vec<PaintSurface>, FinishProblem<PaintRefusal>> {
    let mut surfaces = Vec::new();
    let primer = kind == PaintKind::Primer;
    if kind == PaintKind::Walls || primer && room.paint.walls.used {
        let walls = walls(room, true)?;
        surfaces.push(PaintSurface::walls(
            walls.outline.perimeter_in(),
            walls.height_in.unwrap_or_default(),
            walls.gaps_ft2(),
        ));
    }
    if kind == PaintKind::Ceiling || primer && room.paint.ceiling.used {
        let (outline, _) = super::ground(room)?;
        surfaces.push(PaintSurface {
            on: PaintOn::Ceiling,
            area_ft2: outline.area_in2() / 144.0,
            openings_ft2: 0.0,
        });
    }
    if kind == PaintKind::Trim {
        let mut reader = Reader::default();
        let face_in = reader.need("trim_face", &fields::FACE, &room.paint.trim_face);
        reader.finish(())?;
        let lengths = trim::pieces(room).map_err(|problem| match problem {
            FinishProblem::Outline => FinishProblem::Outline,
            FinishProblem::Walls(walls) => FinishProblem::Walls(walls),
            FinishProblem::Entries(entries) => FinishProblem::Entries(entries),
            // Said where the trim is cut.
            FinishProblem::Before | FinishProblem::Refused(_) => FinishProblem::Before,
        })?;
        surfaces.push(PaintSurface::trim(
            lengths.base_ft + lengths.casing_ft,
            face_in,
        ));
    }
    Ok(surfaces)
}
