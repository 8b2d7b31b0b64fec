//! Is there a list within a total? Stick after stick, each with the longest piece left.

use super::{Pattern, Problem, totals::Totals};

/// How many steps the search may take in all.
pub(super) const BUDGET: u32 = 1_200_000;

/// How many totals above the bound are tried where the search did not end at it.
pub(super) const TRIES: u32 = 8;

/// What the search says.
pub(super) enum Found {
    /// A list within the total.
    List(Vec<Pattern>),
    /// There is none.
    None,
    /// It did not end.
    OutOfBudget,
}

/// A list whose sticks together are no longer than a total, if there is one.
///
/// The longest piece left must lie in some stick, and that stick may as well be full: a piece that still fits can be moved
/// into it from another without one stick more. So only full ways to cut are tried, those that cost least over the worth of their pieces first, and
/// never one that leaves less total than the pieces left must have.
pub(super) fn within(
    problem: &Problem,
    totals: &Totals,
    worth: &[i64],
    total: i64,
    budget: &mut u32,
) -> Found {
    let mut left = problem.demand.clone();
    let mut list = Vec::new();
    let mut search = Search {
        problem,
        totals,
        worth,
        budget,
    };
    match search.go(total, &mut left, &mut list) {
        Some(true) => Found::List(super::fill::trimmed(problem, &list)),
        Some(false) => Found::None,
        None => Found::OutOfBudget,
    }
}

struct Search<'a> {
    problem: &'a Problem,
    totals: &'a Totals,
    /// What each piece is worth at least, by a bound.
    worth: &'a [i64],
    budget: &'a mut u32,
}

impl Search<'_> {
    fn worth_of(&self, counts: &[u32]) -> i64 {
        let each = self.worth.iter().zip(counts);
        each.map(|(worth, count)| worth * i64::from(*count)).sum()
    }

    /// Whether what is left fits in sticks of a total; nothing where the budget ends first.
    fn go(&mut self, total: i64, left: &mut Vec<u32>, list: &mut Vec<Pattern>) -> Option<bool> {
        let Some(first) = left.iter().position(|count| *count > 0) else {
            return Some(true);
        };
        let needed = super::bound::by_length_of(self.problem, self.problem.used(left));
        let worth: i64 = self.worth_of(left);
        if self.totals.at_least(needed.max(worth)) > total {
            return Some(false);
        }
        // The whole rest in one stick is the end of it.
        let rest = self.problem.used(left);
        if let Some(stock) = self.problem.shortest(rest)
            && self.problem.length(stock) <= total
        {
            list.push(Pattern {
                stock,
                counts: left.clone(),
            });
            left.iter_mut().for_each(|count| *count = 0);
            return Some(true);
        }
        let mut ways: Vec<(i64, Pattern)> = Vec::new();
        for stock in 0..self.problem.stock.len() {
            let length = self.problem.length(stock);
            let room = self.problem.room.get(stock).copied().unwrap_or(0);
            let size = self.problem.sizes.get(first).copied().unwrap_or(i64::MAX);
            if length > total || size > room {
                continue;
            }
            let mut counts = vec![0; left.len()];
            if let (Some(count), Some(of)) = (counts.get_mut(first), left.get_mut(first)) {
                (*count, *of) = (1, *of - 1);
            }
            let mut still: Vec<i64> = vec![0];
            for (size, count) in self.problem.sizes.iter().zip(left.iter()).rev() {
                still.push(still.last().copied().unwrap_or(0) + size * i64::from(*count));
            }
            // The most that may be wasted here: what the total leaves over the pieces.
            let spare = total - needed;
            let mut full = Full {
                problem: self.problem,
                left,
                stock,
                spare: spare + self.problem.room.get(stock).map_or(0, |room| room - length),
                smallest_kept: i64::MAX,
                ways: &mut ways,
                still: &still,
                budget: self.budget,
            };
            let done = full.ways(first, room - size, &mut counts);
            if let Some(of) = left.get_mut(first) {
                *of += 1;
            }
            if !done {
                return None;
            }
        }
        for (rank, pattern) in &mut ways {
            *rank = self.problem.length(pattern.stock) - self.worth_of(&pattern.counts);
        }
        use crate::order::Order;
        ways.order_by_key(|(cost, _)| *cost);
        for (cost, pattern) in ways {
            // What it costs over what its pieces are worth must be within what is left.
            if cost > total - worth {
                break;
            }
            for (left, count) in left.iter_mut().zip(&pattern.counts) {
                *left -= count;
            }
            let length = self.problem.length(pattern.stock);
            let counts = pattern.counts.clone();
            list.push(pattern);
            if self.go(total - length, left, list)? {
                return Some(true);
            }
            list.pop();
            for (left, count) in left.iter_mut().zip(&counts) {
                *left += count;
            }
        }
        Some(false)
    }
}

/// Full ways to cut one stick.
struct Full<'a> {
    problem: &'a Problem,
    left: &'a [u32],
    stock: usize,
    spare: i64,
    /// The smallest size of which one stayed out.
    smallest_kept: i64,
    ways: &'a mut Vec<(i64, Pattern)>,
    /// What the last so many sizes could still fill, all of them.
    still: &'a [i64],
    budget: &'a mut u32,
}

impl Full<'_> {
    /// False where the budget ends.
    fn ways(&mut self, place: usize, room: i64, counts: &mut Vec<u32>) -> bool {
        if *self.budget == 0 {
            return false;
        }
        *self.budget -= 1;
        let last = self.problem.sizes.len().saturating_sub(place);
        if room - self.still.get(last).copied().unwrap_or(0) > self.spare {
            return true;
        }
        let (Some(&size), Some(&left)) = (self.problem.sizes.get(place), self.left.get(place))
        else {
            // Full: nothing that stayed out would fit. Not too wasteful either.
            if room < self.smallest_kept && room <= self.spare {
                self.ways.push((
                    room,
                    Pattern {
                        stock: self.stock,
                        counts: counts.clone(),
                    },
                ));
            }
            return true;
        };
        let most = u32::try_from(room / size).unwrap_or(0).min(left);
        for count in (0..=most).rev() {
            let kept = self.smallest_kept;
            if count < left {
                self.smallest_kept = kept.min(size);
            }
            if let Some(cell) = counts.get_mut(place) {
                *cell += count;
            }
            let done = self.ways(place + 1, room - size * i64::from(count), counts);
            if let Some(cell) = counts.get_mut(place) {
                *cell -= count;
            }
            self.smallest_kept = kept;
            if !done {
                return false;
            }
        }
        true
    }
}
