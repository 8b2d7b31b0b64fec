//! What closing up a room needs: tile and its bed, board and what closes its joints, paint, trim, the fan and its duct.
//!
//! What was not begun needs nothing and is not missing: tile without a size, board on nothing, paint and trim that are not
//! used, a fan without a flow.

use super::{IN_PER_FT, Needed, OpenWhy};
use crate::finish::tile::{Layout, TileAsk, TileRefusal, layout};
use crate::finish::trim::stock::CutList;
use crate::job::questions::finish::paint::{PaintKind, paint_of};
use crate::job::questions::finish::trim::{Moulding, cut_list, pieces};
use crate::job::questions::finish::{air, board, tile};
use crate::job::{Covered, Room};
use crate::supply::need::{Kind, Mixed, Need, Pack};
use crate::supply::unit::{Dimension, Unit};

/// What a layout says of the tiles to buy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tiles {
    /// The floor that is tiled, square feet.
    pub area_ft2: f64,
    /// Tiles to buy, one by one: with a new one for each cut and the allowance.
    pub count: u32,
}

/// The tiles of a room, by its id; none while they are searched for.
pub type CountTiles<'a> = dyn Fn(u32, &TileAsk) -> Option<Result<Tiles, TileRefusal>> + 'a;

impl From<&Layout> for Tiles {
    fn from(laid: &Layout) -> Self {
        Self {
            area_ft2: laid.field_area_in2 / IN2_PER_FT2,
            count: laid.without_offcuts.with_allowance,
        }
    }
}

impl Tiles {
    /// The tiles that a question asks for, however long it takes.
    ///
    /// # Errors
    /// See [`TileRefusal`].
    pub fn of(ask: &TileAsk) -> Result<Self, TileRefusal> {
        layout(ask).map(|laid| Self::from(&laid))
    }
}

impl Needed {
    pub(super) fn of_closing(&mut self, room: &Room, tiles: &CountTiles<'_>) {
        if !room.tile.width.is_blank() {
            self.of_tile(room, tiles);
        }
        if room.board.on != Covered::Nothing || !room.board.patches.is_empty() {
            self.of_board(room);
        }
        self.of_paint(room);
        self.of_trim(room);
        if !room.air.low_flow.is_blank() {
            self.of_air(room);
        }
    }

    fn of_tile(&mut self, room: &Room, tiles: &CountTiles<'_>) {
        let Ok(ask) = tile::ask(room) else {
            return self.not_yet(Kind::Tile, room, OpenWhy::Missing);
        };
        let laid = match tiles(room.id, &ask) {
            Some(Ok(laid)) => laid,
            Some(Err(_)) => return self.not_yet(Kind::Tile, room, OpenWhy::Missing),
            None => return self.not_yet(Kind::Tile, room, OpenWhy::Searching),
        };
        let area_ft2 = laid.area_ft2;
        // A tile with its joints: what it covers.
        let one_ft2 = (ask.width_in + ask.joint_in) * (ask.height_in + ask.joint_in) / IN2_PER_FT2;
        let bought_ft2 = f64::from(laid.count) * one_ft2;
        let per_box = ask.buying.per_box;
        let unit = if per_box > 1 { Unit::Case } else { Unit::Each };
        self.add(
            room,
            Need::new(Kind::Tile, Dimension::Area, area_ft2)
                .with_allowance(more_percent(bought_ft2, area_ft2))
                .sold_by(unit, f64::from(per_box.max(1)) * one_ft2),
        );
        match tile::mortar_for(&room.tile, area_ft2) {
            Ok(mortar) => self.add(
                room,
                Need::new(Kind::TileMortar, Dimension::Area, area_ft2)
                    .with_allowance(mortar.ask.allowance_percent)
                    .sold_by(Unit::Bag, mortar.ask.coverage_ft2_per_bag),
            ),
            Err(_) => self.not_yet(Kind::TileMortar, room, OpenWhy::Missing),
        }
        match tile::grout_for(&room.tile, area_ft2) {
            Ok(grout) => self.add(
                room,
                Need::new(Kind::Grout, Dimension::Weight, grout.powder_lb)
                    .with_allowance(grout.ask.allowance_percent)
                    .sold_by(Unit::Bag, grout.ask.bag_lb),
            ),
            Err(_) => self.not_yet(Kind::Grout, room, OpenWhy::Missing),
        }
        match tile::membrane_for(room, area_ft2) {
            Ok(None) => {}
            Ok(Some(membrane)) => self.add(
                room,
                Need::new(Kind::Membrane, Dimension::Area, membrane.area_ft2)
                    .with_allowance(membrane.ask.allowance_percent)
                    .sold_by(Unit::Roll, membrane.ask.roll_ft2),
            ),
            Err(_) => self.not_yet(Kind::Membrane, room, OpenWhy::Missing),
        }
    }

    fn of_board(&mut self, room: &Room) {
        let Ok(plan) = board::plan(room) else {
            return self.not_yet(Kind::Board, room, OpenWhy::Missing);
        };
        let sheets = plan.buy.iter().map(|of| Mixed {
            count: of.count,
            pack: Pack {
                unit: Unit::Sheet,
                holds: of.size.area_ft2(),
            },
        });
        self.add(
            room,
            Need::new(Kind::Board, Dimension::Area, plan.covered_ft2)
                .with_allowance(more_percent(plan.sheets_ft2, plan.covered_ft2))
                .bought_as(sheets.collect()),
        );
        self.add(
            room,
            Need::new(Kind::Screws, Dimension::Count, f64::from(plan.screws)),
        );
        let Ok(closing) = board::closing(&room.board, &plan) else {
            return self.not_yet(Kind::Compound, room, OpenWhy::Missing);
        };
        // From the low end of the rules of thumb to the high one.
        let gal = &closing.compound_gal;
        self.add(
            room,
            Need {
                generous_percent: more_percent(gal.high, gal.low),
                ..Need::new(Kind::Compound, Dimension::Liquid, gal.low)
                    .with_allowance(more_percent(gal.typical, gal.low))
                    .sold_by(Unit::Pail, closing.ask.pail_gal)
            },
        );
        let taped_ft = if closing.level.taped {
            closing.ask.taped_ft
        } else {
            0.0
        };
        self.add(
            room,
            Need::new(Kind::JointTape, Dimension::Length, taped_ft)
                .with_allowance(closing.ask.allowance_percent),
        );
        if let Some(bead) = &closing.bead {
            self.add_cut(room, Kind::CornerBead, bead);
        }
    }

    fn of_paint(&mut self, room: &Room) {
        for kind in PaintKind::ALL {
            if !kind.of(room).used {
                continue;
            }
            let of = match kind {
                PaintKind::Primer => Kind::PaintPrimer,
                PaintKind::Walls => Kind::WallPaint,
                PaintKind::Ceiling => Kind::CeilingPaint,
                PaintKind::Trim => Kind::TrimPaint,
            };
            let Ok(paint) = paint_of(room, kind) else {
                self.not_yet(of, room, OpenWhy::Missing);
                continue;
            };
            let cans = paint.buy.mix.iter().map(|of| Mixed {
                count: of.count,
                pack: Pack {
                    unit: if of.quarts == 4 {
                        Unit::Gallon
                    } else {
                        Unit::Quart
                    },
                    holds: f64::from(of.quarts) / QT_PER_GAL,
                },
            });
            self.add(
                room,
                Need {
                    mix: cans.collect(),
                    ..Need::new(of, Dimension::Liquid, paint.gal)
                        .with_allowance(paint.ask.allowance_percent)
                },
            );
        }
    }

    fn of_trim(&mut self, room: &Room) {
        let used = Moulding::ALL
            .into_iter()
            .filter(|moulding| moulding.used(&room.trim));
        let found = pieces(room);
        for moulding in used {
            let of = match moulding {
                Moulding::Base => Kind::Base,
                Moulding::Shoe => Kind::Shoe,
                Moulding::Casing => Kind::Casing,
            };
            let list = found
                .as_ref()
                .ok()
                .map(|found| cut_list(&room.trim, moulding.of(found)));
            match list {
                Some(Ok(Some(list))) => self.add_cut(room, of, &list),
                Some(Ok(None)) => {}
                Some(Err(_)) | None => self.not_yet(of, room, OpenWhy::Missing),
            }
        }
    }

    fn of_air(&mut self, room: &Room) {
        let Ok(air) = air::exhaust_of(room) else {
            return self.not_yet(Kind::Fan, room, OpenWhy::Missing);
        };
        let duct = &air.ask.duct;
        self.add(room, Need::new(Kind::Fan, Dimension::Count, 1.0));
        self.add(
            room,
            Need::new(Kind::Duct, Dimension::Length, duct.length_ft),
        );
        self.add(
            room,
            Need::new(Kind::Elbow, Dimension::Count, f64::from(duct.elbows)),
        );
        let cap = if duct.cap_ft > 0.0 { 1.0 } else { 0.0 };
        self.add(room, Need::new(Kind::DuctCap, Dimension::Count, cap));
    }

    /// Sticks as a cutting list has them.
    fn add_cut(&mut self, room: &Room, kind: Kind, list: &CutList) {
        let sticks = list.buy.iter().map(|of| Mixed {
            count: of.count,
            pack: Pack {
                unit: Unit::Each,
                holds: of.stock_in / IN_PER_FT,
            },
        });
        self.add(
            room,
            Need::new(kind, Dimension::Length, list.pieces_in / IN_PER_FT)
                .with_allowance(more_percent(list.stock_in, list.pieces_in))
                .bought_as(sticks.collect()),
        );
    }
}

const IN2_PER_FT2: f64 = 144.0;

const QT_PER_GAL: f64 = 4.0;

/// By how much what is bought is more than what is needed, percent.
fn more_percent(bought: f64, exact: f64) -> f64 {
    if exact > 0.0 {
        (bought / exact - 1.0).max(0.0) * 100.0
    } else {
        0.0
    }
}
