//! What no list can be under.

use super::{Pattern, Problem, fill};

/// The most columns that are generated; what is found by then is a bound all the same.
const COLUMNS: usize = 400;

/// The most steps of one search for a column.
const STEPS: u32 = 30_000;

/// Values below this are rounding; lengths in inches.
const ROUNDING: f64 = 1e-9;

/// The pieces together, with what the saw takes where it must: stick by stick, pieces with one kerf each are at most the
/// stick and one kerf, so the sticks are at least the pieces times the least share of stick in that.
pub(super) fn by_length(problem: &Problem) -> i64 {
    by_length_of(problem, problem.used(&problem.demand))
}

/// The same for pieces that use so much with their kerfs.
pub(super) fn by_length_of(problem: &Problem, used: i64) -> i64 {
    let (Some(&length), Some(&room)) = (problem.stock.last(), problem.room.last()) else {
        return used;
    };
    let (used, length, room) = (i128::from(used), i128::from(length), i128::from(room));
    i64::try_from((used * length + room - 1) / room.max(1)).unwrap_or(i64::MAX)
}

/// What the relaxed problem says, in which a share of a stick may be bought.
pub(super) struct Relaxed {
    /// The bound, millionths of an inch.
    pub(super) least: i64,
    /// What a piece of each size is worth where the bound is highest, millionths of an inch: the pieces of no way to cut are
    /// worth more than its stick.
    pub(super) worth: Vec<i64>,
    /// The ways to cut and how many sticks of each.
    used: Vec<(Pattern, f64)>,
}

/// The bound by columns: at each step the ways in use give each piece a worth; the worth of all pieces, over the most
/// worth to be had from an inch of stick, is a bound, whether or not the steps came to their end.
pub(super) fn by_columns(problem: &Problem) -> Relaxed {
    let mut basis = Basis::new(problem);
    let (mut best, mut best_worth) = (0.0_f64, vec![0.0; problem.sizes.len()]);
    let grid = Grid::new(problem);
    for _ in 0..COLUMNS {
        let worth = basis.worth();
        if let Some(place) = worth.iter().position(|worth| *worth < -ROUNDING) {
            // A piece too many is worth less than nothing: let it be cut and thrown away.
            let mut column = vec![0.0; worth.len()];
            if let Some(cell) = column.get_mut(place) {
                *cell = -1.0;
            }
            if !basis.enter(0.0, &column, None) {
                break;
            }
            continue;
        }
        let (mut most, mut gain, mut column) = (1.0_f64, 1e-7, None);
        let on_grid = grid.as_ref().map(|grid| grid.richest(problem, &worth));
        for stock in 0..problem.stock.len() {
            let length = inches(problem.length(stock));
            let found = match &on_grid {
                Some(on_grid) => on_grid.of(problem, stock),
                None => knapsack(problem, &worth, stock),
            };
            most = most.max(found.at_most / length);
            if found.worth - length > gain {
                gain = found.worth - length;
                column = Some(Pattern {
                    stock,
                    counts: found.counts,
                });
            }
        }
        let all: f64 = worth
            .iter()
            .zip(&problem.demand)
            .map(|(worth, demand)| worth.max(0.0) * f64::from(*demand))
            .sum();
        if all / most > best {
            best = all / most;
            best_worth.clear();
            best_worth.extend(worth.iter().map(|worth| worth.max(0.0) / most));
        }
        let Some(pattern) = column else {
            break;
        };
        let counts: Vec<f64> = pattern.counts.iter().map(|n| f64::from(*n)).collect();
        if !basis.enter(
            inches(problem.length(pattern.stock)),
            &counts,
            Some(pattern),
        ) {
            break;
        }
    }
    Relaxed {
        // Rounding may only lower a bound.
        least: (best * super::MICRO * (1.0 - ROUNDING)).floor() as i64 - 1,
        worth: best_worth
            .iter()
            .map(|worth| (worth * super::MICRO * (1.0 - ROUNDING)).floor() as i64)
            .collect(),
        used: basis.used(),
    }
}

/// Where all sizes are whole numbers of a unit that is not too fine, the richest way is found place by place along the
/// stick, for all sticks at once.
struct Grid {
    unit: i64,
    places: usize,
}

/// The most places along the longest stick.
const PLACES: i64 = 6_000;

impl Grid {
    fn new(problem: &Problem) -> Option<Self> {
        let unit = problem.sizes.iter().copied().fold(0, super::totals::gcd);
        let places = problem.room.first()? / unit.max(1);
        (places <= PLACES).then_some(Self {
            unit: unit.max(1),
            places: places as usize,
        })
    }

    fn richest(&self, problem: &Problem, worth: &[f64]) -> OnGrid {
        let mut best = vec![0.0_f64; self.places + 1];
        let mut taken: Vec<Vec<u16>> = Vec::with_capacity(worth.len());
        for ((&size, &demand), &worth) in problem.sizes.iter().zip(&problem.demand).zip(worth) {
            let size = (size / self.unit) as usize;
            let mut counts = vec![0_u16; self.places + 1];
            if worth > 0.0 {
                for at in (size..=self.places).rev() {
                    let mut most = best.get(at).copied().unwrap_or(0.0);
                    for count in 1..=(at / size).min(demand as usize) {
                        let before = best.get(at - count * size).copied().unwrap_or(0.0);
                        let with = before + worth * count as f64;
                        if with > most {
                            most = with;
                            if let Some(cell) = counts.get_mut(at) {
                                *cell = count as u16;
                            }
                        }
                    }
                    if let Some(cell) = best.get_mut(at) {
                        *cell = most;
                    }
                }
            }
            taken.push(counts);
        }
        OnGrid {
            unit: self.unit,
            best,
            taken,
        }
    }
}

/// The most worth to each place along a stick, and how many of each size that takes.
struct OnGrid {
    unit: i64,
    best: Vec<f64>,
    taken: Vec<Vec<u16>>,
}

impl OnGrid {
    fn of(&self, problem: &Problem, stock: usize) -> Worth {
        let room = problem.room.get(stock).copied().unwrap_or(0);
        let mut at = (room / self.unit) as usize;
        let worth = self.best.get(at).copied().unwrap_or(0.0);
        let mut counts = vec![0; self.taken.len()];
        for ((taken, count), size) in self.taken.iter().zip(&mut counts).zip(&problem.sizes).rev() {
            let these = taken.get(at).copied().unwrap_or(0);
            *count = u32::from(these);
            at = at.saturating_sub(usize::from(these) * (size / self.unit) as usize);
        }
        Worth {
            counts,
            worth,
            at_most: worth,
        }
    }
}

fn inches(length: i64) -> f64 {
    length as f64 / super::MICRO
}

impl Relaxed {
    /// Lists made of it: whole sticks first, then those of which more than a share is wanted, the rest filled up.
    pub(super) fn rounded(&self, problem: &Problem) -> Vec<Vec<Pattern>> {
        let mut lists = Vec::new();
        for share in [1.0, 0.9, 0.7, 0.5, 0.3] {
            for round in 0..3 {
                lists.push(self.rounded_at(problem, share, round));
            }
        }
        lists
    }

    fn rounded_at(&self, problem: &Problem, share: f64, round: usize) -> Vec<Pattern> {
        let (mut left, mut list) = (problem.demand.clone(), Vec::new());
        for (pattern, times) in &self.used {
            let whole = (times + 1.0 - share + 1e-6).floor().max(0.0);
            for _ in 0..(whole.min(f64::from(u16::MAX)) as u32) {
                let mut counts = pattern.counts.clone();
                for (count, left) in counts.iter_mut().zip(&mut left) {
                    *count = (*count).min(*left);
                    *left -= *count;
                }
                if counts.iter().any(|count| *count > 0) {
                    list.push(Pattern {
                        stock: pattern.stock,
                        counts,
                    });
                }
            }
        }
        list.extend(fill::filled_up(problem, &left, round));
        fill::trimmed(problem, &list)
    }
}

/// The ways to cut in use, one for each size, and the inverse of their matrix.
struct Basis {
    size: usize,
    inverse: Vec<Vec<f64>>,
    cost: Vec<f64>,
    times: Vec<f64>,
    pattern: Vec<Option<Pattern>>,
}

impl Basis {
    /// Each size alone in the shortest stick that holds it.
    fn new(problem: &Problem) -> Self {
        let size = problem.sizes.len();
        let mut basis = Self {
            size,
            inverse: vec![vec![0.0; size]; size],
            cost: Vec::new(),
            times: Vec::new(),
            pattern: Vec::new(),
        };
        for (place, (&length, &demand)) in problem.sizes.iter().zip(&problem.demand).enumerate() {
            let stock = problem.shortest(length).unwrap_or(0);
            let room = problem.room.get(stock).copied().unwrap_or(length);
            let count = u32::try_from(room / length).unwrap_or(1).clamp(1, demand);
            let mut counts = vec![0; size];
            if let Some(cell) = counts.get_mut(place) {
                *cell = count;
            }
            if let Some(cell) = basis
                .inverse
                .get_mut(place)
                .and_then(|row| row.get_mut(place))
            {
                *cell = 1.0 / f64::from(count);
            }
            basis.cost.push(inches(problem.length(stock)));
            basis.times.push(f64::from(demand) / f64::from(count));
            basis.pattern.push(Some(Pattern { stock, counts }));
        }
        basis
    }

    /// What a piece of each size is worth, inches of stick.
    fn worth(&self) -> Vec<f64> {
        let mut worth = vec![0.0; self.size];
        for (cost, row) in self.cost.iter().zip(&self.inverse) {
            for (worth, cell) in worth.iter_mut().zip(row) {
                *worth += cost * cell;
            }
        }
        worth
    }

    /// Takes a way to cut in, in place of the one that runs out first; false where none does.
    fn enter(&mut self, cost: f64, column: &[f64], pattern: Option<Pattern>) -> bool {
        let product = |row: &Vec<f64>| row.iter().zip(column).map(|(a, b)| a * b).sum::<f64>();
        let along: Vec<f64> = self.inverse.iter().map(product).collect();
        let mut out: Option<(f64, usize)> = None;
        for (place, (along, times)) in along.iter().zip(&self.times).enumerate() {
            if *along > 1e-9 && out.is_none_or(|(least, _)| times / along < least) {
                out = Some((times / along, place));
            }
        }
        let Some((step, place)) = out else {
            return false;
        };
        let pivot = along.get(place).copied().unwrap_or(1.0);
        let pivot_row: Vec<f64> = match self.inverse.get(place) {
            Some(row) => row.iter().map(|cell| cell / pivot).collect(),
            None => return false,
        };
        for (other, row) in self.inverse.iter_mut().enumerate() {
            let factor = along.get(other).copied().unwrap_or(0.0);
            for (cell, pivoted) in row.iter_mut().zip(&pivot_row) {
                if other == place {
                    *cell = *pivoted;
                } else {
                    *cell -= factor * pivoted;
                }
            }
        }
        for (other, times) in self.times.iter_mut().enumerate() {
            if other == place {
                *times = step;
            } else {
                *times = (*times - step * along.get(other).copied().unwrap_or(0.0)).max(0.0);
            }
        }
        if let (Some(c), Some(p)) = (self.cost.get_mut(place), self.pattern.get_mut(place)) {
            (*c, *p) = (cost, pattern);
        }
        true
    }

    fn used(self) -> Vec<(Pattern, f64)> {
        let both = self.pattern.into_iter().zip(self.times);
        both.filter_map(|(pattern, times)| Some((pattern?, times)))
            .collect()
    }
}

/// The way to cut a stick that is worth most.
struct Worth {
    counts: Vec<u32>,
    worth: f64,
    /// No way is worth more; the worth itself where the search came to its end.
    at_most: f64,
}

fn knapsack(problem: &Problem, worth: &[f64], stock: usize) -> Worth {
    let density = |place: usize| {
        let size = problem.sizes.get(place).copied().unwrap_or(1);
        worth.get(place).copied().unwrap_or(0.0) / inches(size)
    };
    let order = crate::order::ranking(problem.sizes.len(), &|a, b| {
        density(b).total_cmp(&density(a))
    });
    let items = order
        .iter()
        .filter_map(|&place| {
            Some(Item {
                place,
                size: *problem.sizes.get(place)?,
                worth: *worth.get(place)?,
                most: *problem.demand.get(place)?,
            })
        })
        .filter(|item| item.worth > 0.0)
        .collect();
    let mut search = Richest {
        items,
        best: vec![0; problem.sizes.len()],
        worth: 0.0,
        steps: STEPS,
    };
    let room = problem.room.get(stock).copied().unwrap_or(0);
    let at_most = search.bound(0, room);
    let mut counts = vec![0; problem.sizes.len()];
    search.from(0, room, 0.0, &mut counts);
    Worth {
        at_most: if search.steps == 0 {
            at_most
        } else {
            search.worth
        },
        worth: search.worth,
        counts: search.best,
    }
}

struct Item {
    place: usize,
    size: i64,
    worth: f64,
    most: u32,
}

struct Richest {
    items: Vec<Item>,
    best: Vec<u32>,
    worth: f64,
    steps: u32,
}

impl Richest {
    /// What the items from a place on can be worth at most, were the last one cut to fit.
    fn bound(&self, place: usize, mut room: i64) -> f64 {
        let mut worth = 0.0;
        for item in self.items.iter().skip(place) {
            let all = item.size * i64::from(item.most);
            if all <= room {
                worth += item.worth * f64::from(item.most);
                room -= all;
            } else {
                return worth + item.worth * room as f64 / item.size as f64;
            }
        }
        worth
    }

    fn from(&mut self, place: usize, room: i64, worth: f64, counts: &mut Vec<u32>) {
        if worth > self.worth {
            self.worth = worth;
            self.best.clone_from(counts);
        }
        self.steps = self.steps.saturating_sub(1);
        let Some(item) = self.items.get(place) else {
            return;
        };
        if self.steps == 0 || worth + self.bound(place, room) <= self.worth + ROUNDING {
            return;
        }
        let (cell, size, each) = (item.place, item.size, item.worth);
        let most = u32::try_from(room / size).unwrap_or(0).min(item.most);
        for count in (0..=most).rev() {
            if let Some(cell) = counts.get_mut(cell) {
                *cell = count;
            }
            let left = room - size * i64::from(count);
            self.from(place + 1, left, worth + each * f64::from(count), counts);
        }
        if let Some(cell) = counts.get_mut(cell) {
            *cell = 0;
        }
    }
}
