//! Pieces cut from sheets, each cut from edge to edge of what it is cut from.

use super::{ROUNDING_IN, SheetSize};
use crate::order::ranking;

/// A rectangle to cut.
#[derive(Clone, Copy, Debug)]
pub(super) struct Item {
    /// Along the sheet, inches.
    pub(super) long_in: f64,
    /// Across it, inches.
    pub(super) wide_in: f64,
    /// It may be cut the other way round.
    pub(super) turns: bool,
}

/// Where an item is cut.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Placed {
    pub(super) sheet: usize,
    pub(super) along_in: f64,
    pub(super) across_in: f64,
    pub(super) turned: bool,
}

/// All of them, in the order of the items.
#[derive(Clone, Debug, Default)]
pub(super) struct Packed {
    pub(super) sheets: Vec<SheetSize>,
    pub(super) placed: Vec<Placed>,
}

impl Packed {
    pub(super) fn area_ft2(&self) -> f64 {
        self.sheets.iter().map(SheetSize::area_ft2).sum()
    }
}

/// What is left of a sheet.
#[derive(Clone, Copy)]
struct Left {
    sheet: usize,
    along: f64,
    across: f64,
    long: f64,
    wide: f64,
}

/// The fewest sheets, of these the least board, of several orders and several sizes to open.
pub(super) fn pack(items: &[Item], sizes: &[SheetSize], thorough: bool) -> Packed {
    let mut best: Option<Packed> = None;
    let orders = if thorough { 4 } else { 2 };
    for order in 0..orders {
        let order = ranking(items.len(), &|a, b| {
            let key = |place: usize| {
                let item = items.get(place);
                let (long, wide) = item.map_or((0.0, 0.0), |item| (item.long_in, item.wide_in));
                match order {
                    0 => (wide, long),
                    1 => (long * wide, long),
                    2 => (long, wide),
                    _ => (long + wide, wide),
                }
            };
            let (a, b) = (key(a), key(b));
            b.0.total_cmp(&a.0).then_with(|| b.1.total_cmp(&a.1))
        });
        // Each size is opened first where it holds the piece; after the last, the smallest that holds it.
        for first in 0..=sizes.len() {
            let packed = pack_in(items, &order, sizes, first);
            let better = best.as_ref().is_none_or(|best| {
                let (count, other) = (packed.sheets.len(), best.sheets.len());
                count < other
                    || (count == other && packed.area_ft2() < best.area_ft2() - ROUNDING_IN)
            });
            if better {
                best = Some(packed);
            }
        }
    }
    best.unwrap_or_default()
}

fn pack_in(items: &[Item], order: &[usize], sizes: &[SheetSize], first: usize) -> Packed {
    let mut packed = Packed {
        sheets: Vec::new(),
        placed: vec![Placed::default(); items.len()],
    };
    let mut left: Vec<Left> = Vec::new();
    for &place in order {
        let Some(item) = items.get(place) else {
            continue;
        };
        let found = match fit(item, &left) {
            Some(found) => Some(found),
            None => {
                if let Some(size) = opened(item, sizes, first) {
                    left.push(Left {
                        sheet: packed.sheets.len(),
                        along: 0.0,
                        across: 0.0,
                        long: size.length_in,
                        wide: size.width_in,
                    });
                    packed.sheets.push(size);
                }
                fit(item, &left)
            }
        };
        let Some((which, turned)) = found else {
            continue;
        };
        let from = left.swap_remove(which);
        if let Some(placed) = packed.placed.get_mut(place) {
            *placed = Placed {
                sheet: from.sheet,
                along_in: from.along,
                across_in: from.across,
                turned,
            };
        }
        split(&from, &sides(item, turned), &mut left);
    }
    smaller(items, sizes, &mut packed);
    packed
}

fn sides(item: &Item, turned: bool) -> (f64, f64) {
    if turned {
        (item.wide_in, item.long_in)
    } else {
        (item.long_in, item.wide_in)
    }
}

/// The rest that an item leaves least of, on its tighter side.
fn fit(item: &Item, left: &[Left]) -> Option<(usize, bool)> {
    let mut best: Option<(f64, usize, bool)> = None;
    for (which, rest) in left.iter().enumerate() {
        for turned in [false, true] {
            if turned && !item.turns {
                continue;
            }
            let (long, wide) = sides(item, turned);
            let (over, beside) = (rest.long - long, rest.wide - wide);
            if over < -ROUNDING_IN || beside < -ROUNDING_IN {
                continue;
            }
            let tight = over.min(beside);
            if best.is_none_or(|(other, ..)| tight < other - ROUNDING_IN) {
                best = Some((tight, which, turned));
            }
        }
    }
    best.map(|(_, which, turned)| (which, turned))
}

fn opened(item: &Item, sizes: &[SheetSize], first: usize) -> Option<SheetSize> {
    let holds = |size: &&SheetSize| {
        [false, item.turns].into_iter().any(|turned| {
            let (long, wide) = sides(item, turned);
            long <= size.length_in + ROUNDING_IN && wide <= size.width_in + ROUNDING_IN
        })
    };
    if let Some(size) = sizes.get(first).filter(holds) {
        return Some(*size);
    }
    let smallest = sizes.iter().filter(holds);
    smallest
        .min_by(|a, b| a.area_ft2().total_cmp(&b.area_ft2()))
        .copied()
}

/// What is left beside and beyond an item, cut so that the larger rest is as large as can be.
fn split(from: &Left, (long, wide): &(f64, f64), left: &mut Vec<Left>) {
    let (over, beside) = (from.long - long, from.wide - wide);
    let cut_across = over * from.wide >= beside * from.long;
    let beyond = Left {
        along: from.along + long,
        long: over,
        wide: if cut_across { from.wide } else { *wide },
        ..*from
    };
    let next = Left {
        across: from.across + wide,
        wide: beside,
        long: if cut_across { *long } else { from.long },
        ..*from
    };
    for rest in [beyond, next] {
        if rest.long > ROUNDING_IN && rest.wide > ROUNDING_IN {
            left.push(rest);
        }
    }
}

/// Each sheet as small as what is cut from it allows.
fn smaller(items: &[Item], sizes: &[SheetSize], packed: &mut Packed) {
    let mut reach = vec![(0.0_f64, 0.0_f64); packed.sheets.len()];
    for (item, placed) in items.iter().zip(&packed.placed) {
        let (long, wide) = sides(item, placed.turned);
        if let Some(reach) = reach.get_mut(placed.sheet) {
            reach.0 = reach.0.max(placed.along_in + long);
            reach.1 = reach.1.max(placed.across_in + wide);
        }
    }
    for (sheet, (long, wide)) in packed.sheets.iter_mut().zip(reach) {
        for size in sizes {
            let holds = long <= size.length_in + ROUNDING_IN && wide <= size.width_in + ROUNDING_IN;
            if holds && size.area_ft2() < sheet.area_ft2() - ROUNDING_IN {
                *sheet = *size;
            }
        }
    }
}
