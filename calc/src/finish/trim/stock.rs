//! Which pieces to cut from which stick, so that the least stock is used: one-dimensional cutting stock with kerf.
//!
//! Several stock lengths may be on offer. First-fit decreasing and best-filled sticks give a list; the bound of Gilmore and
//! Gomory (column generation: "A Linear Programming Approach to the Cutting-Stock Problem", Operations Research 9,
//! 1961), taken from any duals as Farley showed (Operations Research 38, 1990) and raised to the next total that sticks on
//! offer can make, tells how far it is from the least; a search that fills stick after stick closes what is left. Where
//! it doesn't end within its budget the answer says so, and gives the bound.

use serde::Serialize;
use thiserror::Error;

use crate::finish::steps::{count, figure, step};
use crate::order::Order;
use crate::working::{Source, Step, Unit};

mod bound;
mod fill;
mod search;
mod totals;

/// The most pieces of one list.
pub const MOST_PIECES: usize = 400;

/// The most stock lengths on offer.
pub const MOST_STOCK: usize = 12;

/// The longest stick or piece, inches: 100 ft.
pub const MOST_LENGTH_IN: f64 = 1_200.0;

/// The shortest stick or piece, inches.
pub const LEAST_LENGTH_IN: f64 = 0.25;

/// The widest kerf, inches.
pub const MOST_KERF_IN: f64 = 1.0;

/// Lengths are counted in millionths of an inch: the sixty-fourth is 15 625 of them.
const MICRO: f64 = 1e6;

/// A stick that is shorter than its pieces by less than this holds them: rounding of millimetres. Millionths of an inch.
const ROUNDING: i64 = 100;

/// What is to be cut, and from what.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CutAsk {
    /// The pieces, inches, in any order.
    pub pieces_in: Vec<f64>,
    /// The lengths that can be bought, inches.
    pub stock_in: Vec<f64>,
    /// What the saw takes at each cut, inches.
    pub kerf_in: f64,
}

/// A piece in its stick.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CutPiece {
    /// Which piece of the ask, from 0.
    pub piece: usize,
    /// Where it begins, inches from the stick's end.
    pub at_in: f64,
    /// How long it is, inches.
    pub length_in: f64,
}

/// A stick and what is cut from it, the longest piece first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Bar {
    /// Its length, inches.
    pub stock_in: f64,
    /// The pieces from end to end.
    pub pieces: Vec<CutPiece>,
    /// What is left over at the far end, after the last cut; inches.
    pub left_in: f64,
}

/// Sticks of one length to buy.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Sticks {
    /// Their length, inches.
    pub stock_in: f64,
    /// How many.
    pub count: u32,
}

/// A cutting list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CutList {
    /// The sticks, the longest first, those cut alike together.
    pub bars: Vec<Bar>,
    /// What to buy, the longest first.
    pub buy: Vec<Sticks>,
    /// The pieces together, inches.
    pub pieces_in: f64,
    /// The sticks together, inches.
    pub stock_in: f64,
    /// What the saw takes, inches.
    pub kerf_in: f64,
    /// What is left over, inches.
    pub left_in: f64,
    /// What first-fit decreasing from the longest stick would use, inches.
    pub first_fit_in: f64,
    /// No list uses less than this, inches.
    pub least_in: f64,
    /// Whether no list uses less than this one.
    pub proven: bool,
}

/// Why there is no cutting list.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum CutRefusal {
    /// Nothing to cut from.
    #[error("no stock on offer")]
    NoStock,
    /// More than [`MOST_PIECES`].
    #[error("{count} pieces")]
    TooManyPieces {
        /// How many.
        count: usize,
    },
    /// More than [`MOST_STOCK`].
    #[error("{count} stock lengths")]
    TooManyStocks {
        /// How many.
        count: usize,
    },
    /// A piece that is none: under [`LEAST_LENGTH_IN`] or over [`MOST_LENGTH_IN`].
    #[error("piece {piece} of {given_in} in")]
    NotAPiece {
        /// Which, from 0.
        piece: usize,
        /// What it held, inches.
        given_in: f64,
    },
    /// A stock length that is none, by the same limits.
    #[error("stock {stock} of {given_in} in")]
    NotAStock {
        /// Which, from 0.
        stock: usize,
        /// What it held, inches.
        given_in: f64,
    },
    /// A kerf below nothing or over [`MOST_KERF_IN`].
    #[error("kerf {given_in} in")]
    Kerf {
        /// What was given, inches.
        given_in: f64,
    },
    /// A piece longer than the longest stock.
    #[error("piece {piece} of {piece_in} in is longer than {longest_in} in")]
    StockTooShort {
        /// Which piece, from 0.
        piece: usize,
        /// How long it is, inches.
        piece_in: f64,
        /// The longest stock, inches.
        longest_in: f64,
    },
}

/// The pieces by length and the sticks, in whole millionths of an inch.
struct Problem {
    /// Piece lengths with one kerf each, falling.
    sizes: Vec<i64>,
    /// How many of each.
    demand: Vec<u32>,
    /// Stick lengths, falling, no two alike.
    stock: Vec<i64>,
    /// What a stick holds, counted with one kerf to each piece: its length, one kerf and [`ROUNDING`].
    room: Vec<i64>,
}

/// One way to cut a stick: which stick, and how many of each size.
#[derive(Clone, Debug, PartialEq)]
struct Pattern {
    stock: usize,
    counts: Vec<u32>,
}

impl Problem {
    fn used(&self, counts: &[u32]) -> i64 {
        let each = self.sizes.iter().zip(counts);
        each.map(|(size, count)| size * i64::from(*count)).sum()
    }

    /// The stick itself, millionths of an inch; nothing for a place that is none.
    fn length(&self, stock: usize) -> i64 {
        self.stock.get(stock).copied().unwrap_or(0)
    }

    fn total(&self, list: &[Pattern]) -> i64 {
        list.iter().map(|bar| self.length(bar.stock)).sum()
    }

    /// The shortest stick that holds so much.
    fn shortest(&self, used: i64) -> Option<usize> {
        self.room.iter().rposition(|room| used <= *room)
    }
}

fn micro(length_in: f64) -> i64 {
    (length_in * MICRO).round() as i64
}

/// The cutting list that uses the least stock; of those, one of few sticks.
///
/// A stick of length L holds n pieces when their lengths and n - 1 kerfs are at most L.
///
/// # Errors
/// [`CutRefusal`]: a piece longer than the longest stock, a length or kerf that is none, too many of either.
///
/// # Example
/// Four pieces of 47-7/8 in with a kerf of 1/8 in fit two sticks of 8 ft: 47-7/8 + 1/8 + 47-7/8 = 95-7/8 in.
/// ```
/// use calc::finish::trim::stock::{CutAsk, cut};
/// let ask = CutAsk { pieces_in: vec![47.875; 4], stock_in: vec![96.0, 144.0], kerf_in: 0.125 };
/// let list = cut(&ask)?;
/// assert_eq!((list.stock_in, list.bars.len(), list.proven), (192.0, 2, true));
/// assert_eq!(list.bars[0].left_in, 0.0); // the last eighth goes to the saw
/// # Ok::<(), calc::finish::trim::stock::CutRefusal>(())
/// ```
pub fn cut(ask: &CutAsk) -> Result<CutList, CutRefusal> {
    let order = checked(ask)?;
    let problem = problem(ask, &order);
    let first_fit = fill::first_fit(&problem);
    let totals = totals::Totals::new(&problem.stock, problem.total(&first_fit));
    let (list, least) = solve(&problem, &totals, &first_fit);
    Ok(written(
        ask,
        &order,
        &problem,
        &list,
        (least, problem.total(&first_fit)),
    ))
}

/// The best list found, and what none can be under.
fn solve(problem: &Problem, totals: &totals::Totals, first_fit: &[Pattern]) -> (Vec<Pattern>, i64) {
    let mut best = fill::trimmed(problem, first_fit);
    let mut least = totals.at_least(bound::by_length(problem));
    let take = |best: &mut Vec<Pattern>, other: Vec<Pattern>| {
        let rank = |list: &[Pattern]| (problem.total(list), list.len());
        if rank(&other) < rank(best) {
            *best = other;
        }
    };
    for rounds in 0..fill::ROUNDS {
        if problem.total(&best) <= least {
            return (best, least);
        }
        take(&mut best, fill::best_filled(problem, rounds));
    }
    let mut worth = vec![0; problem.sizes.len()];
    if problem.total(&best) > least {
        let relaxed = bound::by_columns(problem);
        least = least.max(totals.at_least(relaxed.least));
        for list in relaxed.rounded(problem) {
            take(&mut best, list);
        }
        worth = relaxed.worth;
    }
    // Each total that sticks can make, from the bound up: none of them, or the least.
    let mut budget = search::BUDGET;
    while problem.total(&best) > least {
        match search::within(problem, totals, &worth, least, &mut budget) {
            search::Found::List(list) => take(&mut best, list),
            search::Found::None => least = totals.at_least(least + 1),
            search::Found::OutOfBudget => break,
        }
    }
    // Not told: is there at least a better list, a little above it?
    let mut total = least;
    for _ in 0..search::TRIES {
        total = totals.at_least(total + (problem.total(&best) - total) / 4 + 1);
        if total >= problem.total(&best) {
            break;
        }
        let mut budget = search::BUDGET / search::TRIES;
        if let search::Found::List(list) =
            search::within(problem, totals, &worth, total, &mut budget)
        {
            take(&mut best, list);
        }
    }
    (best, least)
}

/// The places of the pieces, the longest first.
fn checked(ask: &CutAsk) -> Result<Vec<usize>, CutRefusal> {
    let good = |length_in: f64| (LEAST_LENGTH_IN..=MOST_LENGTH_IN).contains(&length_in);
    if ask.pieces_in.len() > MOST_PIECES {
        return Err(CutRefusal::TooManyPieces {
            count: ask.pieces_in.len(),
        });
    }
    if ask.stock_in.len() > MOST_STOCK {
        return Err(CutRefusal::TooManyStocks {
            count: ask.stock_in.len(),
        });
    }
    if !(0.0..=MOST_KERF_IN).contains(&ask.kerf_in) {
        return Err(CutRefusal::Kerf {
            given_in: ask.kerf_in,
        });
    }
    let mut longest_in = 0.0_f64;
    for (stock, &given_in) in ask.stock_in.iter().enumerate() {
        if !good(given_in) {
            return Err(CutRefusal::NotAStock { stock, given_in });
        }
        longest_in = longest_in.max(given_in);
    }
    if ask.stock_in.is_empty() {
        return Err(CutRefusal::NoStock);
    }
    for (piece, &piece_in) in ask.pieces_in.iter().enumerate() {
        if !good(piece_in) {
            return Err(CutRefusal::NotAPiece {
                piece,
                given_in: piece_in,
            });
        }
        if micro(piece_in) > micro(longest_in) + ROUNDING {
            return Err(CutRefusal::StockTooShort {
                piece,
                piece_in,
                longest_in,
            });
        }
    }
    let length = |piece: usize| ask.pieces_in.get(piece).copied().unwrap_or(0.0);
    Ok(crate::order::ranking(ask.pieces_in.len(), &|a, b| {
        length(b).total_cmp(&length(a))
    }))
}

fn problem(ask: &CutAsk, order: &[usize]) -> Problem {
    let kerf = micro(ask.kerf_in);
    let (mut sizes, mut demand): (Vec<i64>, Vec<u32>) = (Vec::new(), Vec::new());
    for &piece in order {
        let size = micro(ask.pieces_in.get(piece).copied().unwrap_or(0.0)) + kerf;
        match (sizes.last(), demand.last_mut()) {
            (Some(last), Some(count)) if *last == size => *count += 1,
            _ => {
                sizes.push(size);
                demand.push(1);
            }
        }
    }
    let mut stock: Vec<i64> = ask.stock_in.iter().map(|length| micro(*length)).collect();
    stock.order_by(|a, b| b.cmp(a));
    stock.dedup();
    let room = stock
        .iter()
        .map(|length| length + kerf + ROUNDING)
        .collect();
    Problem {
        sizes,
        demand,
        stock,
        room,
    }
}

/// The list in inches, with the pieces of the ask in their places.
fn written(
    ask: &CutAsk,
    order: &[usize],
    problem: &Problem,
    list: &[Pattern],
    (least, first_fit): (i64, i64),
) -> CutList {
    let mut list = list.to_vec();
    list.order_by(|a, b| a.stock.cmp(&b.stock).then_with(|| b.counts.cmp(&a.counts)));
    // The pieces of each size, as places in the ask.
    let mut waiting: Vec<std::slice::Iter<usize>> = Vec::new();
    let mut rest = order;
    for &count in &problem.demand {
        let (these, others) = rest.split_at_checked(count as usize).unwrap_or((rest, &[]));
        waiting.push(these.iter());
        rest = others;
    }
    let length_of = |stock: i64| {
        let found = ask.stock_in.iter().find(|length| micro(**length) == stock);
        found.copied().unwrap_or(0.0)
    };
    let (mut bars, mut buy): (Vec<Bar>, Vec<Sticks>) = (Vec::new(), Vec::new());
    let (mut stock_in, mut saw_in, mut left_in) = (0.0, 0.0, 0.0);
    for pattern in &list {
        let long_in = length_of(problem.length(pattern.stock));
        let (mut at_in, mut pieces) = (0.0, Vec::new());
        for (places, &count) in waiting.iter_mut().zip(&pattern.counts) {
            for &piece in places.by_ref().take(count as usize) {
                let length_in = ask.pieces_in.get(piece).copied().unwrap_or(0.0);
                pieces.push(CutPiece {
                    piece,
                    at_in,
                    length_in,
                });
                at_in += length_in + ask.kerf_in;
            }
        }
        // The last cut falls away where the piece ends with the stick.
        let end_in = at_in - ask.kerf_in;
        let bar_left_in = (long_in - at_in).max(0.0);
        let taken_in: f64 = pieces.iter().map(|piece| piece.length_in).sum();
        saw_in += long_in.max(end_in) - bar_left_in - taken_in;
        left_in += bar_left_in;
        stock_in += long_in;
        match buy.last_mut() {
            Some(last) if last.stock_in == long_in => last.count += 1,
            _ => buy.push(Sticks {
                stock_in: long_in,
                count: 1,
            }),
        }
        bars.push(Bar {
            stock_in: long_in,
            pieces,
            left_in: bar_left_in,
        });
    }
    let total = problem.total(&list);
    CutList {
        bars,
        buy,
        pieces_in: ask.pieces_in.iter().sum(),
        stock_in,
        kerf_in: saw_in,
        left_in,
        first_fit_in: first_fit as f64 / MICRO,
        least_in: least.min(total) as f64 / MICRO,
        proven: total <= least,
    }
}

impl CutList {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let mut steps = vec![
            step(
                "cut_least",
                vec![
                    figure("pieces_length", self.pieces_in, Unit::In),
                    figure("first_fit", self.first_fit_in, Unit::In),
                ],
                figure("least_stock", self.least_in, Unit::In),
                Source::Arithmetic,
            ),
            step(
                "cut_stock",
                self.buy
                    .iter()
                    .flat_map(|sticks| {
                        [
                            figure("stick", sticks.stock_in, Unit::In),
                            figure("sticks", count(sticks.count as usize), Unit::Count),
                        ]
                    })
                    .collect(),
                figure("stock", self.stock_in, Unit::In),
                Source::Arithmetic,
            ),
        ];
        if self.stock_in > 0.0 {
            steps.push(step(
                "cut_waste",
                vec![
                    figure("stock", self.stock_in, Unit::In),
                    figure("pieces_length", self.pieces_in, Unit::In),
                ],
                figure(
                    "waste",
                    100.0 * (self.stock_in - self.pieces_in) / self.stock_in,
                    Unit::Percent,
                ),
                Source::Arithmetic,
            ));
        }
        steps
    }
}
