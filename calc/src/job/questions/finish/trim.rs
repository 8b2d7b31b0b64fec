//! Base, shoe and casing: their pieces and their cutting lists.

use serde::Serialize;

use super::walls::walls;
use super::{FinishProblem, Reader};
use crate::finish::trim::stock::{CutAsk, CutList, CutRefusal, cut};
use crate::finish::trim::{Break, BreakKind, Piece, Trim, TrimAsk, TrimRefusal, TrimWall, trim};
use crate::job::{Room, TrimEntry, fields};

/// What is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Moulding {
    /// Base.
    Base,
    /// Shoe.
    Shoe,
    /// Casing.
    Casing,
}

impl Moulding {
    /// All, from the floor up.
    pub const ALL: [Self; 3] = [Self::Base, Self::Shoe, Self::Casing];

    /// Whether it is cut.
    pub const fn used(self, entry: &TrimEntry) -> bool {
        match self {
            Self::Base => entry.base,
            Self::Shoe => entry.shoe,
            Self::Casing => entry.casing,
        }
    }

    /// Its pieces.
    pub fn of(self, trim: &Trim) -> &[Piece] {
        match self {
            Self::Base => &trim.base,
            Self::Shoe => &trim.shoe,
            Self::Casing => &trim.casing,
        }
    }
}

/// The stock lengths on offer, inches.
pub fn stock_in(entry: &TrimEntry) -> Vec<f64> {
    [
        (96.0, entry.no_8_ft),
        (120.0, entry.no_10_ft),
        (144.0, entry.no_12_ft),
        (168.0, entry.no_14_ft),
        (192.0, entry.no_16_ft),
    ]
    .into_iter()
    .filter(|(_, missing)| !missing)
    .map(|(length_in, _)| length_in)
    .collect()
}

/// The pieces that walls and openings ask for. Runs longer than the longest stock are spliced.
///
/// # Errors
/// A missing outline, walls that don't fit, entries that are missing or refused, what can't be worked with.
pub fn pieces(room: &Room) -> Result<Trim, FinishProblem<TrimRefusal>> {
    let walls = walls(room, false)?;
    let entry = &room.trim;
    let mut reader = Reader::default();
    let casing_in = reader.need("casing_width", &fields::CASING, &entry.casing_width);
    let reveal_in = reader.need("reveal", &fields::SMALL_LENGTH, &entry.reveal);
    let extra_in = reader.need("extra", &fields::TILE_JOINT, &entry.extra);
    let splice_in = reader.may("splice_at", &fields::SPLICE, &entry.splice_at);
    reader.finish(())?;
    let longest_in = stock_in(entry).last().copied();
    let splice_at_in = match (splice_in, longest_in) {
        (Some(splice), Some(longest)) => Some(splice.min(longest)),
        (one, other) => one.or(other),
    };
    let broken = |at_in, width_in, kind, casing_in| Break {
        at_in,
        width_in,
        kind,
        casing_in,
        both_faces: false,
    };
    let mut of_walls: Vec<TrimWall> = walls
        .outline
        .walls()
        .map(|wall| TrimWall {
            length_in: wall.length_in(),
            breaks: Vec::new(),
        })
        .collect();
    let mut add = |wall: usize, of: Break| {
        if let Some(wall) = of_walls.get_mut(wall) {
            wall.breaks.push(of);
        }
    };
    for gap in &walls.doorways {
        let height_in = gap.height_in;
        let kind = BreakKind::Doorway { height_in };
        add(gap.wall, broken(gap.from_in, gap.width_in, kind, casing_in));
    }
    for gap in &walls.windows {
        let height_in = gap.height_in;
        let kind = BreakKind::Window { height_in };
        add(gap.wall, broken(gap.from_in, gap.width_in, kind, casing_in));
    }
    for built_in in &walls.built_ins {
        let kind = BreakKind::BuiltIn {
            own_toe_strip: built_in.own_toe_strip,
        };
        add(
            built_in.wall,
            broken(built_in.from_in, built_in.width_in, kind, 0.0),
        );
    }
    trim(&TrimAsk {
        walls: of_walls,
        reveal_in,
        extra_in,
        allowance_percent: 0.0,
        splice_at_in,
    })
    .map_err(FinishProblem::Refused)
}

/// The cutting list of one moulding; nothing where it has no piece.
///
/// # Errors
/// Entries that are missing or refused; what can't be cut.
pub fn cut_list(
    entry: &TrimEntry,
    pieces: &[Piece],
) -> Result<Option<CutList>, FinishProblem<CutRefusal>> {
    let mut reader = Reader::default();
    let kerf_in = reader.need("kerf", &fields::SMALL_LENGTH, &entry.kerf);
    reader.finish(())?;
    if pieces.is_empty() {
        return Ok(None);
    }
    let ask = CutAsk {
        pieces_in: pieces.iter().map(|piece| piece.length_in).collect(),
        stock_in: stock_in(entry),
        kerf_in,
    };
    cut(&ask).map(Some).map_err(FinishProblem::Refused)
}
