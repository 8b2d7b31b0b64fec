//! The tile: its layout, the rules, and what it is set in.

use super::{FinishProblem, Reader, ground};
use crate::finish::grout::{Grout, GroutAsk, GroutRefusal, grout};
use crate::finish::setting_bed::{
    BedRefusal, Membrane, MembraneAsk, Mortar, MortarAsk, membrane, mortar,
};
use crate::finish::tile::rules::{RulesAnswer, RulesAsk, RulesRefusal, hold};
use crate::finish::tile::{Buying, Obstacle, Pattern, Start, TileAsk, TileRefusal};
use crate::floor::Point;
use crate::job::{Room, TileEntry, TilePattern, TileStart, fields};

/// What the layout is asked.
///
/// # Errors
/// A missing outline; entries that are missing or refused.
pub fn ask(room: &Room) -> Result<TileAsk, FinishProblem<TileRefusal>> {
    let (outline, placed) = ground(room)?;
    let entry = &room.tile;
    let mut reader = Reader::default();
    let (width_in, height_in, joint_in, edge_gap_in) = sizes(&mut reader, entry);
    let pattern = pattern(&mut reader, entry);
    let best = entry.start == TileStart::Best;
    let least_share = if best {
        reader.need("least_share", &fields::ALLOWANCE, &entry.least_share) / 100.0
    } else {
        0.0
    };
    let buying = Buying {
        kerf_in: reader.need("kerf", &fields::TILE_JOINT, &entry.kerf),
        may_turn: !entry.one_way,
        allowance_percent: reader.need(
            "allowance_percent",
            &fields::ALLOWANCE,
            &entry.allowance_percent,
        ),
        per_box: reader.count_or("per_box", &fields::PER_BOX, &entry.per_box, 1),
    };
    let obstacles = entry
        .obstacles
        .iter()
        .map(|obstacle| {
            let reader = reader.row(obstacle.id);
            let x_in = reader.need("x", &fields::COORDINATE, &obstacle.x);
            let y_in = reader.need("y", &fields::COORDINATE, &obstacle.y);
            Obstacle {
                corner: Point::new(x_in, y_in),
                width_in: reader.need("width", &fields::OPENING_WIDTH, &obstacle.width),
                length_in: reader.need("length", &fields::OPENING_WIDTH, &obstacle.length),
            }
        })
        .collect();
    Ok(reader.finish(TileAsk {
        outline,
        obstacles,
        openings: placed.iter().map(|placed| placed.span).collect(),
        width_in,
        height_in,
        joint_in,
        edge_gap_in,
        pattern,
        start: match entry.start {
            TileStart::Corner => Start::Corner,
            TileStart::Tile => Start::CentredOnTile,
            TileStart::Joint => Start::CentredOnJoint,
            TileStart::Best => Start::Best,
        },
        least_share,
        buying,
    })?)
}

/// Width, height, joint and gap, inches.
fn sizes(reader: &mut Reader, entry: &TileEntry) -> (f64, f64, f64, f64) {
    (
        reader.need("width", &fields::TILE_SIDE, &entry.width),
        reader.need("height", &fields::TILE_SIDE, &entry.height),
        reader.need("joint", &fields::TILE_JOINT, &entry.joint),
        reader.need("edge_gap", &fields::TILE_JOINT, &entry.edge_gap),
    )
}

fn pattern(reader: &mut Reader, entry: &TileEntry) -> Pattern {
    match entry.pattern {
        TilePattern::Straight => Pattern::Straight,
        TilePattern::Half => Pattern::RunningBond { offset: 0.5 },
        TilePattern::Third => Pattern::RunningBond { offset: 1.0 / 3.0 },
        TilePattern::Offset => Pattern::RunningBond {
            offset: reader.need("offset", &fields::DROP_PERCENT, &entry.offset) / 100.0,
        },
        TilePattern::Diagonal => Pattern::Diagonal,
        TilePattern::Herringbone => Pattern::Herringbone { diagonal: false },
        TilePattern::HerringboneDiagonal => Pattern::Herringbone { diagonal: true },
    }
}

/// What the published rules say of the tile as entered.
///
/// # Errors
/// A missing outline; entries that are missing or refused; what the rules can't be held against.
pub fn rules(room: &Room) -> Result<RulesAnswer, FinishProblem<RulesRefusal>> {
    let (outline, _) = ground(room)?;
    let entry = &room.tile;
    let mut reader = Reader::default();
    let (width_in, height_in, joint_in, edge_gap_in) = sizes(&mut reader, entry);
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for corner in outline.corners() {
        for (axis, at) in [corner.x_in, corner.y_in].into_iter().enumerate() {
            low[axis] = low[axis].min(at);
            high[axis] = high[axis].max(at);
        }
    }
    let pattern = pattern(&mut reader, entry);
    let mut may = |name, typed| {
        reader
            .may(name, &fields::SMALL_LENGTH, typed)
            .unwrap_or(0.0)
    };
    let facial_variation_in = may("variation", &entry.variation);
    let warpage_in = may("warpage", &entry.warpage);
    let ask = reader.finish(RulesAsk {
        width_in,
        height_in,
        joint_in,
        edge_gap_in,
        pattern,
        make: entry.make,
        facial_variation_in,
        warpage_in,
        place: entry.place,
        room_ft: [(high[0] - low[0]) / 12.0, (high[1] - low[1]) / 12.0],
    })?;
    hold(&ask).map_err(FinishProblem::Refused)
}

/// Mortar for an area, square feet.
///
/// # Errors
/// Entries that are missing or refused; what can't be worked with.
pub fn mortar_for(entry: &TileEntry, area_ft2: f64) -> Result<Mortar, FinishProblem<BedRefusal>> {
    let mut reader = Reader::default();
    let coverage = reader.need("mortar_coverage", &fields::COVERAGE, &entry.mortar_coverage);
    let allowance_percent = reader.need(
        "mortar_allowance",
        &fields::ALLOWANCE,
        &entry.mortar_allowance,
    );
    let ask = reader.finish(MortarAsk {
        area_ft2,
        coverage_ft2_per_bag: coverage / 144.0,
        allowance_percent,
    })?;
    mortar(&ask).map_err(FinishProblem::Refused)
}

/// Grout for an area, square feet.
///
/// # Errors
/// Entries that are missing or refused; what can't be worked with.
pub fn grout_for(entry: &TileEntry, area_ft2: f64) -> Result<Grout, FinishProblem<GroutRefusal>> {
    let mut reader = Reader::default();
    let (width_in, height_in, joint_in, _) = sizes(&mut reader, entry);
    let ask = GroutAsk {
        area_ft2,
        length_in: width_in,
        width_in: height_in,
        joint_in,
        depth_in: reader.need("joint_depth", &fields::TILE_JOINT, &entry.joint_depth),
        powder_lb_per_ft3: reader.need("powder", &fields::POWDER, &entry.powder),
        allowance_percent: reader.need(
            "grout_allowance",
            &fields::ALLOWANCE,
            &entry.grout_allowance,
        ),
        bag_lb: reader.need("grout_bag", &fields::POUNDS, &entry.grout_bag),
    };
    grout(&reader.finish(ask)?).map_err(FinishProblem::Refused)
}

/// Membrane under the tile and up the walls; nothing where no roll was entered.
///
/// # Errors
/// Entries that are missing or refused; what can't be worked with.
pub fn membrane_for(
    room: &Room,
    area_ft2: f64,
) -> Result<Option<Membrane>, FinishProblem<BedRefusal>> {
    let entry = &room.tile;
    let (outline, placed) = ground(room)?;
    let mut reader = Reader::default();
    let Some(roll_in2) = reader.may("membrane_roll", &fields::COVERAGE, &entry.membrane_roll)
    else {
        reader.finish(())?;
        return Ok(None);
    };
    let doors_in: f64 = placed.iter().map(|placed| placed.span.span.width_in).sum();
    let turn_up_in = reader
        .may(
            "membrane_turn_up",
            &fields::TURN_UP,
            &entry.membrane_turn_up,
        )
        .unwrap_or(0.0);
    let ask = MembraneAsk {
        area_ft2,
        turned_up_ft: if turn_up_in > 0.0 {
            (outline.perimeter_in() - doors_in).max(0.0) / 12.0
        } else {
            0.0
        },
        turn_up_in,
        allowance_percent: reader.need(
            "membrane_allowance",
            &fields::ALLOWANCE,
            &entry.membrane_allowance,
        ),
        roll_ft2: roll_in2 / 144.0,
    };
    let ask = reader.finish(ask)?;
    membrane(&ask).map(Some).map_err(FinishProblem::Refused)
}
