//! The plane that does best among all planes that keep a set of rules.
//!
//! A plane is three numbers: its height over the middle of the room and its two slopes, scaled so that all are
//! near one. Each rule is a row that the plane must reach or meet; a limit on the tilt is a circle round no slope.
//! The best plane rests on at most three rows, or on the circle and at most two. So a few rows are kept, the best
//! plane for them is found by trying every such set, and the row that it breaks most joins them, until it breaks
//! none. What the best plane costs (or tilts, at the same cost) can only
//! rise, and a row joins only while broken, so this ends; on surveys of
//! thousands of spots it ends after some ten looks at every row.

/// A plane: height over the middle, rise to the right, rise away; all scaled.
pub(super) type Unknowns = [f64; 3];

/// A rule: the sum of `factors` times the plane's numbers is at least `reach`, or exactly that.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    pub factors: [f64; 3],
    pub reach: f64,
    pub exactly: bool,
}

/// What is wanted, before the least tilt where several planes are as good.
#[derive(Clone, Copy, Debug)]
pub(super) enum Goal {
    /// The least sum of these factors times the plane's numbers.
    Least([f64; 3]),
    /// The least tilt, and of planes tilted alike the lowest over the middle.
    LeastTilt,
}

/// The best plane, or why there is none.
#[derive(Clone, Debug)]
pub(super) enum Outcome {
    /// The best plane and the rows on which it rests.
    Best {
        plane: Unknowns,
        rests_on: Vec<usize>,
    },
    /// Rows that no plane keeps together (within the circle, if there is one).
    Impossible { rows: Vec<usize> },
}

/// How far a row may be broken by rounding, for a plane whose numbers are near one.
const ROUNDING: f64 = 1e-12;

/// Two sums that agree to this are the same cost.
const SAME_COST: f64 = 1e-12;

/// Looks at every row after which none of the few is let go.
const MANY_LOOKS: u32 = 200;

/// How near to its reach a row must be to stay in the few.
const NEAR: f64 = 1e-7;

impl Row {
    /// How far the plane is from keeping the row; nothing or less when it keeps it.
    fn broken_by(&self, plane: &Unknowns) -> f64 {
        let short = self.reach - dot(&self.factors, plane);
        if self.exactly { short.abs() } else { short }
    }

    /// How far the plane is from the row's reach.
    pub fn slack(&self, plane: &Unknowns) -> f64 {
        (dot(&self.factors, plane) - self.reach).abs()
    }
}

/// What rounding may amount to for a plane.
pub(super) fn rounding(plane: &Unknowns) -> f64 {
    ROUNDING * (1.0 + plane.iter().map(|number| number.abs()).sum::<f64>())
}

/// The best plane for all rows, begun with a few of them.
///
/// The first few must hold the goal back from falling without end: three rows round the place whose height is to be
/// least, or one that holds the plane up when tilt is.
pub(super) fn solve(rows: &[Row], first: &[usize], goal: Goal, most_tilt: Option<f64>) -> Outcome {
    let mut few: Vec<usize> = first.to_vec();
    few.sort_unstable();
    few.dedup();
    let mut before = (f64::NEG_INFINITY, f64::NEG_INFINITY);
    for look in 0.. {
        let Some((plane, cost, then)) = best_of_few(rows, &few, goal, most_tilt) else {
            return Outcome::Impossible { rows: few };
        };
        let allowed = 4.0 * rounding(&plane);
        let worst = most_broken(rows, &plane);
        let Some((_, broken)) = worst.filter(|(by, index)| *by > allowed && !few.contains(index))
        else {
            let near = |index: &usize| {
                rows.get(*index)
                    .is_some_and(|row| row.slack(&plane) <= NEAR)
            };
            return Outcome::Best {
                plane,
                rests_on: few.into_iter().filter(near).collect(),
            };
        };
        // Rows on which a dearer plane does not rest can't matter to any plane still to come. Past many looks all
        // stay, so that rounding can't send the search round in a ring.
        let margin = 10.0 * SAME_COST * (1.0 + cost.abs());
        let dearer = cost > before.0 + margin;
        let more_tilted =
            cost >= before.0 - margin && then > before.1 + 10.0 * SAME_COST * (1.0 + then.abs());
        if (dearer || more_tilted) && look < MANY_LOOKS {
            few.retain(|index| {
                rows.get(*index)
                    .is_some_and(|row| row.slack(&plane) <= NEAR)
            });
            before = (cost.max(before.0), then);
        }
        few.push(broken);
    }
    Outcome::Impossible { rows: few }
}

/// By how much the row that a plane breaks most is broken, and which it is; of several, the first.
fn most_broken(rows: &[Row], plane: &Unknowns) -> Option<(f64, usize)> {
    // A stretch of rows at a time: the most alone is found much quicker than the most and its place.
    const STRETCH: usize = 64;
    let mut worst = (f64::NEG_INFINITY, 0);
    for (stretch, rows) in rows.chunks(STRETCH).enumerate() {
        let mut most = f64::NEG_INFINITY;
        for row in rows {
            let broken = row.broken_by(plane);
            most = if broken > most { broken } else { most };
        }
        if most > worst.0 {
            worst = (most, stretch);
        }
    }
    let (most, start) = (worst.0, STRETCH * worst.1);
    let place = rows
        .get(start..)?
        .iter()
        .position(|row| row.broken_by(plane) == most)?;
    Some((most, start + place))
}

/// Whether a few rows can be kept together within the circle.
///
/// One of them must hold the plane up.
pub(super) fn can_be_kept(rows: &[Row], few: &[usize], most_tilt: Option<f64>) -> bool {
    best_of_few(rows, few, Goal::LeastTilt, most_tilt).is_some()
}

/// The best plane for a few rows, by trying every set of them on which it could rest, its cost, and what decides
/// between planes of that cost.
fn best_of_few(
    rows: &[Row],
    few: &[usize],
    goal: Goal,
    most_tilt: Option<f64>,
) -> Option<(Unknowns, f64, f64)> {
    let few: Vec<Row> = few
        .iter()
        .filter_map(|index| rows.get(*index).copied())
        .collect();
    let mut best = Best {
        few: &few,
        goal,
        most_tilt,
        found: None,
    };
    for (i, a) in few.iter().enumerate() {
        best.on_one(a);
        for (j, b) in few.iter().enumerate().skip(i + 1) {
            best.on_two(a, b);
            for c in few.iter().skip(j + 1) {
                best.on_three(a, b, c);
            }
        }
    }
    best.found
}

struct Best<'a> {
    few: &'a [Row],
    goal: Goal,
    most_tilt: Option<f64>,
    found: Option<(Unknowns, f64, f64)>,
}

impl Best<'_> {
    /// Takes a plane if it keeps all rows and is the best so far.
    fn offer(&mut self, plane: Unknowns) {
        let [height, b, c] = plane;
        let tilt = b.hypot(c);
        if !(height.is_finite() && tilt.is_finite())
            || self
                .most_tilt
                .is_some_and(|most| tilt > most * (1.0 + ROUNDING))
        {
            return;
        }
        let allowed = rounding(&plane);
        if self.few.iter().any(|row| row.broken_by(&plane) > allowed) {
            return;
        }
        let (cost, then) = match self.goal {
            Goal::Least(factors) => (dot(&factors, &plane), tilt),
            Goal::LeastTilt => (tilt, height),
        };
        let better = self.found.is_none_or(|(_, best, best_then)| {
            let same = SAME_COST * (1.0 + best.abs());
            cost < best - same || (cost <= best + same && then < best_then)
        });
        if better {
            self.found = Some((plane, cost, then));
        }
    }

    /// Planes that rest on one row: the level one, and the one tilted as far as allowed the way that pays.
    fn on_one(&mut self, row: &Row) {
        let [up, x, y] = row.factors;
        if up == 0.0 {
            return;
        }
        self.offer([row.reach / up, 0.0, 0.0]);
        if let (Some(most), Goal::Least([height, b, c])) = (self.most_tilt, self.goal) {
            let (pay_b, pay_c) = (b - height * x / up, c - height * y / up);
            let length = pay_b.hypot(pay_c);
            if length > 0.0 {
                let (b, c) = (-most * pay_b / length, -most * pay_c / length);
                self.offer(standing_on(row, b, c));
            }
        }
    }

    /// Planes that rest on two rows: the least tilted, and the two tilted as far as allowed.
    fn on_two(&mut self, a: &Row, b: &Row) {
        let (pivot, other) = if b.factors[0].abs() > a.factors[0].abs() {
            (b, a)
        } else {
            (a, b)
        };
        let Some([p, q, sum]) = without_height(pivot, other) else {
            return;
        };
        let length = p.hypot(q);
        if length <= ROUNDING {
            return;
        }
        let (p, q, foot) = (p / length, q / length, sum / length);
        self.offer(standing_on(pivot, foot * p, foot * q));
        if let Some(most) = self.most_tilt
            && foot.abs() < most
        {
            let off = (most - foot).sqrt() * (most + foot).sqrt();
            self.offer(standing_on(pivot, foot * p - off * q, foot * q + off * p));
            self.offer(standing_on(pivot, foot * p + off * q, foot * q - off * p));
        }
    }

    /// The plane that rests on three rows.
    fn on_three(&mut self, a: &Row, b: &Row, c: &Row) {
        let mut rows = [a, b, c];
        rows.sort_by(|a, b| b.factors[0].abs().total_cmp(&a.factors[0].abs()));
        let [pivot, second, third] = rows;
        let (Some([p, q, s]), Some([t, u, v])) =
            (without_height(pivot, second), without_height(pivot, third))
        else {
            return;
        };
        let det = p * u - q * t;
        if det.abs() <= ROUNDING * p.hypot(q) * t.hypot(u) {
            return;
        }
        let cross = |s: f64, v: f64| ((s * u - v * q) / det, (v * p - s * t) / det);
        let (b, c) = cross(s, v);
        // Once more for what rounding left over: three rows may lie nearly in line.
        let (more_b, more_c) = cross(s - p * b - q * c, v - t * b - u * c);
        self.offer(standing_on(pivot, b + more_b, c + more_c));
    }
}

/// The plane with these slopes that meets a row.
fn standing_on(row: &Row, b: f64, c: f64) -> Unknowns {
    let [up, x, y] = row.factors;
    [(row.reach - x * b - y * c) / up, b, c]
}

/// What two rows met together say of the slopes alone: factors of both and their sum.
fn without_height(pivot: &Row, other: &Row) -> Option<[f64; 3]> {
    let [up, x, y] = pivot.factors;
    if up == 0.0 {
        return None;
    }
    let share = other.factors[0] / up;
    Some([
        other.factors[1] - share * x,
        other.factors[2] - share * y,
        other.reach - share * pivot.reach,
    ])
}

fn dot(a: &[f64; 3], b: &[f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}
