//! Lists by simple rules: first-fit decreasing, and sticks filled as well as can be, one after another.

use super::{Pattern, Problem};

/// How many ways [`best_filled`] knows.
pub(super) const ROUNDS: usize = 24;

/// The most patterns looked at for one stick.
const LOOKS: u32 = 20_000;

/// First-fit decreasing: each piece, the longest first, into the first stick with room; else into a new longest one.
pub(super) fn first_fit(problem: &Problem) -> Vec<Pattern> {
    let room = problem.room.first().copied().unwrap_or(0);
    let mut bars: Vec<(i64, Pattern)> = Vec::new();
    for (place, (&size, &count)) in problem.sizes.iter().zip(&problem.demand).enumerate() {
        for _ in 0..count {
            let open = match bars.iter().position(|(left, _)| *left >= size) {
                Some(open) => open,
                None => {
                    bars.push((
                        room,
                        Pattern {
                            stock: 0,
                            counts: vec![0; problem.sizes.len()],
                        },
                    ));
                    bars.len() - 1
                }
            };
            if let Some((left, bar)) = bars.get_mut(open) {
                *left -= size;
                if let Some(count) = bar.counts.get_mut(place) {
                    *count += 1;
                }
            }
        }
    }
    bars.into_iter().map(|(_, bar)| bar).collect()
}

/// The same sticks, each no longer than its pieces need.
pub(super) fn trimmed(problem: &Problem, list: &[Pattern]) -> Vec<Pattern> {
    let shorter = |bar: &Pattern| Pattern {
        stock: problem
            .shortest(problem.used(&bar.counts))
            .unwrap_or(bar.stock),
        counts: bar.counts.clone(),
    };
    list.iter().map(shorter).collect()
}

/// Stick after stick, the longest piece left in each, filled so that least is wasted. The round chooses how far a
/// longer stick may waste more in its choice, and whether long or short pieces fill first.
pub(super) fn best_filled(problem: &Problem, round: usize) -> Vec<Pattern> {
    filled_up(problem, &problem.demand, round)
}

/// The same for what is left of the demand.
pub(super) fn filled_up(problem: &Problem, demand: &[u32], round: usize) -> Vec<Pattern> {
    let mut left = demand.to_vec();
    let mut list = Vec::new();
    while let Some(first) = left.iter().position(|count| *count > 0) {
        let mut best: Option<(i64, Pattern)> = None;
        for stock in 0..problem.stock.len() {
            // Some rounds leave sticks out: a list of fewer lengths may be the better one.
            let skip = round / 2 % (problem.stock.len() + 1);
            if skip == stock + 1 && problem.stock.len() > 1 && best.is_some() {
                continue;
            }
            let Some(counts) = fullest(problem, &left, first, stock, round) else {
                continue;
            };
            let length = problem.length(stock);
            let used = problem.used(&counts);
            // Waste for each unit of stick, with a small charge that grows with the round for short sticks.
            let waste = (length - used) * 1_000;
            let rank = match round % 3 {
                0 => waste / (length / 1_000).max(1),
                1 => waste,
                _ => waste - used * (round as i64),
            };
            if best.as_ref().is_none_or(|(other, _)| rank < *other) {
                best = Some((rank, Pattern { stock, counts }));
            }
        }
        let Some((_, pattern)) = best else {
            break;
        };
        for (left, count) in left.iter_mut().zip(&pattern.counts) {
            *left = left.saturating_sub(*count);
        }
        list.push(pattern);
    }
    trimmed(problem, &list)
}

/// What fills a stick best, with the first size in it: a subset-sum search that ends at an exact fit.
fn fullest(
    problem: &Problem,
    left: &[u32],
    first: usize,
    stock: usize,
    round: usize,
) -> Option<Vec<u32>> {
    let size = problem.sizes.get(first)?;
    let room = problem.room.get(stock)?.checked_sub(*size)?;
    if room < 0 {
        return None;
    }
    let mut now = vec![0; problem.sizes.len()];
    *now.get_mut(first)? += 1;
    let mut free = left.to_vec();
    *free.get_mut(first)? -= 1;
    let mut look = Look {
        problem,
        free: &free,
        best: now.clone(),
        least: room + 1,
        looks: LOOKS,
        fewest: round / 12 % 2 == 1,
    };
    look.from(first, room, &mut now);
    Some(look.best)
}

struct Look<'a> {
    problem: &'a Problem,
    free: &'a [u32],
    best: Vec<u32>,
    least: i64,
    looks: u32,
    /// Tries few of a size before many.
    fewest: bool,
}

impl Look<'_> {
    fn from(&mut self, place: usize, room: i64, now: &mut Vec<u32>) {
        if room < self.least {
            self.least = room;
            self.best.clone_from(now);
        }
        self.looks = self.looks.saturating_sub(1);
        let (Some(&size), Some(&free)) = (self.problem.sizes.get(place), self.free.get(place))
        else {
            return;
        };
        if self.looks == 0 || self.least <= super::ROUNDING {
            return;
        }
        let most = u32::try_from(room / size).unwrap_or(0).min(free);
        for nth in 0..=most {
            let count = if self.fewest { nth } else { most - nth };
            if let Some(cell) = now.get_mut(place) {
                *cell += count;
            }
            self.from(place + 1, room - size * i64::from(count), now);
            if let Some(cell) = now.get_mut(place) {
                *cell -= count;
            }
        }
    }
}
