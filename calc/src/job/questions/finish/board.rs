//! Wall board: what is covered, and what closes its joints.

use super::walls::walls;
use super::{FinishProblem, Reader, WallsProblem, ground};
use crate::finish::board::{
    BoardAsk, BoardPlan, BoardRefusal, Cutout, Edge, Patch, SheetSize, Surface, SurfaceKind, board,
    usual,
};
use crate::finish::compound::{Compound, CompoundAsk, CompoundRefusal, compound, usual as bead};
use crate::floor::Point;
use crate::floor::geometry::signed_area_in2;
use crate::job::{BoardEntry, Corner, Covered, Room, Shape, fields};

/// The sheets on offer.
pub fn sheets(entry: &BoardEntry) -> Vec<SheetSize> {
    let offered = [
        !entry.no_4_by_8,
        !entry.no_4_by_10,
        !entry.no_4_by_12,
        entry.with_54_in,
    ];
    let all = usual::SHEETS.into_iter().zip(offered);
    all.filter(|(_, on)| *on).map(|(size, _)| size).collect()
}

/// The layout of board: the walls in the order of the outline, then the ceiling, then patches.
///
/// # Errors
/// A missing outline, walls that don't fit, entries that are missing or refused, what can't be laid out.
pub fn plan(room: &Room) -> Result<BoardPlan, FinishProblem<BoardRefusal>> {
    let entry = &room.board;
    let mut reader = Reader::default();
    let framing_in = reader.need("framing", &fields::FRAMING, &entry.framing);
    let patches = entry
        .patches
        .iter()
        .map(|patch| {
            let reader = reader.row(patch.id);
            Patch {
                width_in: reader.need("width", &fields::PATCH, &patch.width),
                height_in: reader.need("height", &fields::PATCH, &patch.height),
            }
        })
        .collect();
    let patches = reader.finish(patches)?;
    let mut surfaces = Vec::new();
    if matches!(entry.on, Covered::Walls | Covered::Both) {
        surfaces = wall_surfaces(room)?;
    }
    if matches!(entry.on, Covered::Ceiling | Covered::Both) {
        surfaces.push(ceiling(room)?);
    }
    board(&BoardAsk {
        surfaces,
        patches,
        sheets: sheets(entry),
        lay_up: entry.lay_up,
        framing_in,
    })
    .map_err(FinishProblem::Refused)
}

fn wall_surfaces(room: &Room) -> Result<Vec<Surface>, FinishProblem<BoardRefusal>> {
    let walls = walls(room, true)?;
    let with_ceiling = room.board.on == Covered::Both;
    let corners = walls.outline.corners();
    Ok(walls
        .outline
        .walls()
        .enumerate()
        .map(|(index, wall)| {
            let length_in = wall.length_in();
            // Passed with the room on the left hand, a wall begins at its right end as seen from inside.
            let openings = walls
                .gaps()
                .filter(|gap| gap.wall == index)
                .map(|gap| Cutout {
                    x_in: (length_in - gap.from_in - gap.width_in).max(0.0),
                    y_in: gap.sill_in,
                    width_in: gap.width_in,
                    height_in: gap.height_in,
                })
                .collect();
            Surface {
                kind: SurfaceKind::Wall,
                length_in,
                height_in: walls.height_in.unwrap_or_default(),
                openings,
                end: corner(corners, index),
                top: if with_ceiling {
                    Edge::Inside
                } else {
                    Edge::Free
                },
            }
        })
        .collect())
}

/// What the corner at a wall's start is, of corners that run counter-clockwise.
fn corner(corners: &[Point], index: usize) -> Edge {
    let count = corners.len();
    let at = |i: usize| corners.get(i % count.max(1)).copied();
    match (at(index + count - 1), at(index), at(index + 1)) {
        (Some(before), Some(here), Some(after))
            if signed_area_in2(&[before, here, after]) < 0.0 =>
        {
            Edge::Outside
        }
        _ => Edge::Inside,
    }
}

/// The ceiling: a rectangle, or one whose corner is missing.
fn ceiling(room: &Room) -> Result<Surface, FinishProblem<BoardRefusal>> {
    let (outline, _) = ground(room)?;
    let (mut width_in, mut length_in) = (0.0_f64, 0.0_f64);
    for corner in outline.corners() {
        width_in = width_in.max(corner.x_in);
        length_in = length_in.max(corner.y_in);
    }
    let mut openings = Vec::new();
    match room.outline.shape {
        Shape::Rectangle => {}
        Shape::L => {
            let mut reader = Reader::default();
            let notch_in = reader.need("notch_width", &fields::SIDE, &room.outline.notch_width);
            let deep_in = reader.need("notch_length", &fields::SIDE, &room.outline.notch_length);
            reader.finish(())?;
            let corner = room.outline.notch_corner;
            openings.push(Cutout {
                x_in: match corner {
                    Corner::NearLeft | Corner::FarLeft => 0.0,
                    Corner::NearRight | Corner::FarRight => width_in - notch_in,
                },
                y_in: match corner {
                    Corner::NearLeft | Corner::NearRight => 0.0,
                    Corner::FarLeft | Corner::FarRight => length_in - deep_in,
                },
                width_in: notch_in,
                height_in: deep_in,
            });
        }
        Shape::Walk => {
            let whole_in2 = width_in * length_in;
            if outline.corners().len() != 4 || (outline.area_in2() - whole_in2).abs() > 1.0 {
                return Err(WallsProblem::CeilingShape.into());
            }
        }
    }
    Ok(Surface {
        kind: SurfaceKind::Ceiling,
        length_in: width_in,
        height_in: length_in,
        openings,
        end: Edge::Free,
        top: if room.board.on == Covered::Both {
            Edge::Free
        } else {
            Edge::Inside
        },
    })
}

/// Tape, compound and bead for a layout.
///
/// # Errors
/// Entries that are missing or refused; what can't be worked with.
pub fn closing(
    entry: &BoardEntry,
    plan: &BoardPlan,
) -> Result<Compound, FinishProblem<CompoundRefusal>> {
    let mut reader = Reader::default();
    let level = reader.count("level", &fields::LEVEL, &entry.level);
    let allowance_percent =
        reader.need("tape_allowance", &fields::ALLOWANCE, &entry.tape_allowance);
    let pail_gal = reader.need("pail", &fields::PAIL, &entry.pail);
    let ask = reader.finish(CompoundAsk {
        board_ft2: plan.covered_ft2,
        taped_ft: plan.taped_ft(),
        outside_ft: plan.outside_ft.clone(),
        level: level as u8,
        allowance_percent,
        pail_gal,
        bead_in: bead::BEAD_IN.to_vec(),
    })?;
    compound(&ask).map_err(FinishProblem::Refused)
}
