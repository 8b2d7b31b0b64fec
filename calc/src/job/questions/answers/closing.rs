//! Every answer of closing up a room.

use serde::Serialize;

use super::answered;
use crate::air::load::Load;
use crate::air::{AirRefusal, Exhaust};
use crate::finish::board::{BoardPlan, BoardRefusal};
use crate::finish::compound::{Compound, CompoundRefusal};
use crate::finish::grout::{Grout, GroutRefusal};
use crate::finish::paint::{Paint, PaintRefusal};
use crate::finish::setting_bed::{BedRefusal, Membrane, Mortar};
use crate::finish::tile::rules::{RulesAnswer, RulesRefusal};
use crate::finish::tile::{Layout, TileRefusal, layout};
use crate::finish::trim::stock::{CutList, CutRefusal};
use crate::finish::trim::{Trim, TrimRefusal};
use crate::job::Room;
use crate::job::questions::finish::paint::{PaintKind, paint_of};
use crate::job::questions::finish::trim::{Moulding, cut_list, pieces};
use crate::job::questions::finish::{FinishProblem, air, board, tile};

/// Every answer of closing up a room. What can't be answered says why; saved as `{"refused": ...}`. What rests on an
/// answer that is refused is left out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClosingAnswers {
    /// The room's id.
    pub room: u32,
    /// How the tiles fall.
    #[serde(serialize_with = "answered")]
    pub tile: Result<Layout, FinishProblem<TileRefusal>>,
    /// What the rules say of them.
    #[serde(serialize_with = "answered")]
    pub tile_rules: Result<RulesAnswer, FinishProblem<RulesRefusal>>,
    /// Mortar for the tiled floor.
    #[serde(serialize_with = "answered")]
    pub mortar: Result<Mortar, FinishProblem<BedRefusal>>,
    /// Grout for it.
    #[serde(serialize_with = "answered")]
    pub grout: Result<Grout, FinishProblem<GroutRefusal>>,
    /// Membrane under it; nothing where none was asked for.
    #[serde(serialize_with = "answered")]
    pub membrane: Result<Option<Membrane>, FinishProblem<BedRefusal>>,
    /// Wall board.
    #[serde(serialize_with = "answered")]
    pub board: Result<BoardPlan, FinishProblem<BoardRefusal>>,
    /// What closes its joints.
    #[serde(serialize_with = "answered")]
    pub compound: Result<Compound, FinishProblem<CompoundRefusal>>,
    /// The paints that are used.
    pub paint: Vec<PaintAnswered>,
    /// Pieces of trim.
    #[serde(serialize_with = "answered")]
    pub trim: Result<Trim, FinishProblem<TrimRefusal>>,
    /// Their cutting lists.
    pub cutting: Vec<TrimAnswered>,
    /// The fan and its duct.
    #[serde(serialize_with = "answered")]
    pub air: Result<Exhaust, FinishProblem<AirRefusal>>,
    /// The fan's load.
    #[serde(serialize_with = "answered")]
    pub fan_load: Result<Load, FinishProblem<AirRefusal>>,
}

/// One paint.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PaintAnswered {
    /// Which.
    pub kind: PaintKind,
    /// Its gallons and cans.
    #[serde(serialize_with = "answered")]
    pub answer: Result<Paint, FinishProblem<PaintRefusal>>,
}

/// One moulding.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TrimAnswered {
    /// Which.
    pub moulding: Moulding,
    /// Its cutting list; nothing where it has no piece.
    #[serde(serialize_with = "answered")]
    pub answer: Result<Option<CutList>, FinishProblem<CutRefusal>>,
}

impl ClosingAnswers {
    /// Every answer of closing up a room.
    pub fn of(room: &Room) -> Self {
        let laid = tile::ask(room).and_then(|ask| layout(&ask).map_err(FinishProblem::Refused));
        let area_ft2 = laid
            .as_ref()
            .map_or(0.0, |laid| laid.field_area_in2 / 144.0);
        let no_tile = laid.is_err();
        let plan = board::plan(room);
        let trim = pieces(room);
        Self {
            room: room.id,
            tile_rules: tile::rules(room),
            mortar: after(no_tile, || tile::mortar_for(&room.tile, area_ft2)),
            grout: after(no_tile, || tile::grout_for(&room.tile, area_ft2)),
            membrane: after(no_tile, || tile::membrane_for(room, area_ft2)),
            tile: laid,
            compound: match &plan {
                Ok(plan) => board::closing(&room.board, plan),
                Err(_) => Err(FinishProblem::Before),
            },
            board: plan,
            paint: PaintKind::ALL
                .into_iter()
                .filter(|kind| kind.of(room).used)
                .map(|kind| PaintAnswered {
                    kind,
                    answer: paint_of(room, kind),
                })
                .collect(),
            cutting: Moulding::ALL
                .into_iter()
                .filter(|moulding| moulding.used(&room.trim))
                .map(|moulding| TrimAnswered {
                    moulding,
                    answer: match &trim {
                        Ok(trim) => cut_list(&room.trim, moulding.of(trim)),
                        Err(_) => Err(FinishProblem::Before),
                    },
                })
                .collect(),
            trim,
            air: air::exhaust_of(room),
            fan_load: air::load_of(&room.air),
        }
    }
}

/// An answer that rests on another.
fn after<T, R>(
    missing: bool,
    answer: impl FnOnce() -> Result<T, FinishProblem<R>>,
) -> Result<T, FinishProblem<R>> {
    if missing {
        Err(FinishProblem::Before)
    } else {
        answer()
    }
}
