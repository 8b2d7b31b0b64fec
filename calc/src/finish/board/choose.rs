//! Which way to hang each surface, so that all of them together take least.

use super::hang::{self, Piece};
use super::pack::{Item, Packed, pack};
use super::{BoardAsk, LayUp, joints};

/// How much comparing may be done: pieces squared, each time the sheets are cut.
const WORK: usize = 12_000_000;

/// A way to hang a surface.
struct Way {
    pieces: Vec<Piece>,
    joints_in: f64,
}

/// The pieces chosen, and the sheets they are cut from; the patches follow the pieces.
pub(super) fn choose(ask: &BoardAsk) -> (Vec<Piece>, Packed) {
    let ways: Vec<Vec<Way>> = (0..ask.surfaces.len())
        .map(|place| ways(ask, place))
        .collect();
    let mut work = WORK;
    // Each surface by itself, then each again among the others.
    let mut chosen: Vec<usize> = Vec::new();
    for own in &ways {
        let mut best: Option<((usize, i64, i64), usize)> = None;
        for (which, way) in own.iter().enumerate() {
            let rank = rank(&way.pieces, ask, way.joints_in, false, false);
            if best.as_ref().is_none_or(|(other, _)| rank < *other) {
                best = Some((rank, which));
            }
        }
        chosen.push(best.map_or(0, |(_, which)| which));
    }
    let together = |chosen: &[usize]| {
        let (mut pieces, mut joints_in) = (Vec::new(), 0.0);
        for (own, which) in ways.iter().zip(chosen) {
            if let Some(way) = own.get(*which) {
                pieces.extend_from_slice(&way.pieces);
                joints_in += way.joints_in;
            }
        }
        (pieces, joints_in)
    };
    let (pieces, joints_in) = together(&chosen);
    let mut best = rank(&pieces, ask, joints_in, true, false);
    let mut changed = true;
    while changed {
        changed = false;
        for (place, own) in ways.iter().enumerate() {
            for which in 0..own.len() {
                let (pieces, _) = together(&chosen);
                let effort = (pieces.len() + ask.patches.len() + 10).pow(2);
                if chosen.get(place) == Some(&which) || work < effort {
                    continue;
                }
                work -= effort;
                let mut other = chosen.clone();
                if let Some(cell) = other.get_mut(place) {
                    *cell = which;
                }
                let (pieces, joints_in) = together(&other);
                let rank = rank(&pieces, ask, joints_in, true, false);
                if rank < best {
                    (best, chosen, changed) = (rank, other, true);
                }
            }
        }
    }
    let (pieces, _) = together(&chosen);
    let packed = pack(&items(&pieces, ask, true), &ask.sheets, true);
    (pieces, packed)
}

/// Sheets, joints in hundredths of an inch, board in hundredths of a square foot.
fn rank(
    pieces: &[Piece],
    ask: &BoardAsk,
    joints_in: f64,
    patches: bool,
    thorough: bool,
) -> (usize, i64, i64) {
    let packed = pack(&items(pieces, ask, patches), &ask.sheets, thorough);
    (
        packed.sheets.len(),
        (joints_in * 100.0).round() as i64,
        (packed.area_ft2() * 100.0).round() as i64,
    )
}

fn items(pieces: &[Piece], ask: &BoardAsk, patches: bool) -> Vec<Item> {
    let mut items: Vec<Item> = pieces
        .iter()
        .map(|piece| {
            let (long_in, wide_in) = if piece.flat {
                (piece.width_in, piece.height_in)
            } else {
                (piece.height_in, piece.width_in)
            };
            Item {
                long_in,
                wide_in,
                turns: false,
            }
        })
        .collect();
    if patches {
        items.extend(ask.patches.iter().map(|patch| Item {
            long_in: patch.width_in,
            wide_in: patch.height_in,
            turns: true,
        }));
    }
    items
}

fn ways(ask: &BoardAsk, place: usize) -> Vec<Way> {
    let Some(surface) = ask.surfaces.get(place) else {
        return Vec::new();
    };
    let turns: &[bool] = match ask.lay_up {
        LayUp::Horizontal => &[true],
        LayUp::Vertical => &[false],
        LayUp::Fewest => &[true, false],
    };
    let mut all = Vec::new();
    for &flat in turns {
        for pieces in hang::ways(place, surface, &ask.sheets, ask.framing_in, flat) {
            let places: Vec<joints::Sides> = pieces
                .iter()
                .map(|piece| {
                    let (right, top) = (piece.x_in + piece.width_in, piece.y_in + piece.height_in);
                    [piece.x_in, piece.y_in, right, top]
                })
                .collect();
            let joints_in = joints::length_in(surface, &places);
            all.push(Way { pieces, joints_in });
        }
    }
    all
}
