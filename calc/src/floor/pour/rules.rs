//! The rules of a flat pour as rows of a small program.

use super::ask::{HeightKind, HeightRule, PourAsk};
use super::solve::{Goal, Outcome, Row, Unknowns, can_be_kept, rounding, solve};
use crate::floor::geometry::{Point, cross};
use crate::floor::plane::{Plane, RUN_4FT_IN};
use crate::floor::surface::{Surface, nearest};
use crate::order::Order;

/// A least-tilt check that passes the limit by less than this share has met it.
const AT_LIMIT: f64 = 1e-12;

/// The rules for a surface, scaled: places from the centroid by the room's size, heights by their spread.
pub(super) struct Program<'a> {
    surface: &'a Surface,
    ask: &'a PourAsk,
    middle: Point,
    size_in: f64,
    datum_in: f64,
    spread_in: f64,
    /// The cover at each vertex, then the rules.
    rows: Vec<Row>,
    /// For each row after the cover's, its rule's place in the ask.
    rule_of_row: Vec<usize>,
    most_tilt: Option<f64>,
}

/// The best plane found.
pub(super) struct Found {
    pub plane: Plane,
    pub unique: bool,
    pub tilt_limit_binding: bool,
}

/// Rows that no plane keeps together, and whether they could be but for the tilt limit.
pub(super) struct Stuck {
    pub rows: Vec<usize>,
    pub limit_matters: bool,
}

/// The least or greatest height of a rule, and the vertices whose cover settles it.
pub(super) struct Extreme {
    /// Inches above the datum.
    pub height_in: f64,
    pub covers: Vec<usize>,
}

/// What has a part in a conflict: rules by their place in the ask, and vertices.
#[derive(Clone)]
pub(super) struct Needed {
    pub rules: Vec<usize>,
    pub covers: Vec<usize>,
}

/// A best plane, scaled, the rows it rests on and whether the tilt limit holds it back.
enum Held {
    Best {
        plane: Unknowns,
        rests_on: Vec<usize>,
        at_limit: bool,
    },
    Impossible(Stuck),
}

impl<'a> Program<'a> {
    pub fn new(surface: &'a Surface, ask: &'a PourAsk) -> Self {
        let middle = surface.outline.centroid();
        let size_in = surface.outline.size_in();
        let heights = surface
            .vertices
            .iter()
            .map(|vertex| vertex.height_in + ask.cover_in);
        let datum_in = heights.clone().fold(f64::NEG_INFINITY, f64::max);
        let of_rules = ask.rules.iter().map(|rule| rule.height_in);
        let spread_in = heights
            .chain(of_rules)
            .map(|height| (height - datum_in).abs())
            .fold(1e-9, f64::max);
        let mut program = Self {
            surface,
            ask,
            middle,
            size_in,
            datum_in,
            spread_in,
            rows: Vec::with_capacity(surface.vertices.len() + ask.rules.len()),
            rule_of_row: Vec::new(),
            most_tilt: ask
                .tilt_limit_in_per_4ft
                .map(|limit| limit / RUN_4FT_IN * size_in / spread_in),
        };
        for vertex in &surface.vertices {
            let row = Row {
                factors: program.factors(vertex.at),
                reach: program.scaled(vertex.height_in + ask.cover_in),
                exactly: false,
            };
            program.rows.push(row);
        }
        for (index, rule) in ask.rules.iter().enumerate() {
            for row in program.rule_rows(rule) {
                program.rows.push(row);
                program.rule_of_row.push(index);
            }
        }
        program
    }

    /// The plane of least volume that keeps every rule, or rows that no plane keeps.
    pub fn best(&self) -> Result<Found, Stuck> {
        let first = self.three_round(self.middle);
        match self.hold(&self.rows, &first, Goal::Least([1.0, 0.0, 0.0])) {
            Held::Best {
                plane, at_limit, ..
            } => Ok(Found {
                plane: self.unscaled(&plane),
                unique: at_limit || self.is_unique(&plane),
                tilt_limit_binding: at_limit,
            }),
            Held::Impossible(stuck) => Err(stuck),
        }
    }

    /// Rows that no plane keeps together; none where all can be kept.
    pub fn stuck(&self) -> Option<Stuck> {
        let first = self.three_round(self.middle);
        match self.hold(&self.rows, &first, Goal::Least([1.0, 0.0, 0.0])) {
            Held::Best { .. } => None,
            Held::Impossible(stuck) => Some(stuck),
        }
    }

    /// The least tilt that keeps every rule, inches per 4 ft; none where they conflict without a limit.
    pub fn least_tilt_in_per_4ft(&self) -> Option<f64> {
        match solve(&self.rows, &self.holds_up(), Goal::LeastTilt, None) {
            Outcome::Best { plane, .. } => Some(self.unscaled(&plane).tilt_in_per_4ft()),
            Outcome::Impossible { .. } => None,
        }
    }

    /// The least height to which one rule can be held while all others hold; none when the others conflict.
    pub fn least_height(&self, rule: usize) -> Option<Extreme> {
        let (places, others) = self.apart(rule)?;
        let kind = self.ask.rules.get(rule)?.kind;
        let mut least: Option<Extreme> = None;
        // The greatest of several heights is least where one of them is the greatest: each gets its turn.
        for place in &places {
            let mut rows = others.clone();
            for other in places.iter().filter(|other| *other != place) {
                rows.push(level_with(
                    self.factors(*place),
                    self.factors(*other),
                    kind == HeightKind::Exactly,
                ));
            }
            let goal = Goal::Least(self.factors(*place));
            if let Held::Best {
                plane, rests_on, ..
            } = self.hold(&rows, &self.three_round(*place), goal)
            {
                let height_in = self.unscaled(&plane).height_in(*place);
                if least
                    .as_ref()
                    .is_none_or(|least| height_in < least.height_in)
                {
                    least = Some(self.extreme(height_in, rests_on));
                }
            }
        }
        least
    }

    fn extreme(&self, height_in: f64, mut rests_on: Vec<usize>) -> Extreme {
        rests_on.retain(|row| *row < self.surface.vertices.len());
        Extreme {
            height_in,
            covers: rests_on,
        }
    }

    /// The greatest height at which an exact rule can be met while all others hold; none when nothing holds it down.
    pub fn greatest_height(&self, rule: usize) -> Option<Extreme> {
        let (places, mut rows) = self.apart(rule)?;
        let place = *places.first()?;
        let factors = self.factors(place);
        rows.extend(
            places
                .iter()
                .skip(1)
                .map(|other| level_with(factors, self.factors(*other), true)),
        );
        // Far above anything that a rule asks for: what comes out there is held down by nothing.
        let ceiling = 1e4;
        rows.push(Row {
            factors: factors.map(|factor| -factor),
            reach: -ceiling,
            exactly: false,
        });
        let first = [self.three_round(place), vec![rows.len() - 1]].concat();
        match self.hold(&rows, &first, Goal::Least(factors.map(|factor| -factor))) {
            Held::Best {
                plane, rests_on, ..
            } => {
                let height_in = self.unscaled(&plane).height_in(place);
                (self.scaled(height_in) < 0.5 * ceiling).then(|| self.extreme(height_in, rests_on))
            }
            Held::Impossible(_) => None,
        }
    }

    /// The places of one rule, and all rows but its own.
    fn apart(&self, rule: usize) -> Option<(Vec<Point>, Vec<Row>)> {
        let covers = self.surface.vertices.len();
        let own = |row: usize| {
            row.checked_sub(covers)
                .and_then(|row| self.rule_of_row.get(row))
                == Some(&rule)
        };
        let others = self
            .rows
            .iter()
            .enumerate()
            .filter(|(row, _)| !own(*row))
            .map(|(_, row)| *row)
            .collect();
        Some((self.ask.rules.get(rule)?.points.clone(), others))
    }

    /// The best plane without the tilt limit if it meets the limit, else the best within it.
    fn hold(&self, rows: &[Row], first: &[usize], goal: Goal) -> Held {
        let stuck = |rows: Vec<usize>, limit_matters: bool| {
            Held::Impossible(Stuck {
                rows,
                limit_matters,
            })
        };
        let free = solve(rows, first, goal, None);
        let most = match (free, self.most_tilt) {
            (Outcome::Best { plane, rests_on }, most)
                if most.is_none_or(|most| tilt(&plane) <= most * (1.0 + AT_LIMIT)) =>
            {
                return Held::Best {
                    plane,
                    rests_on,
                    at_limit: false,
                };
            }
            (Outcome::Impossible { rows }, _) => return stuck(rows, false),
            (Outcome::Best { .. }, most) => most,
        };
        match solve(rows, &self.holds_up(), Goal::LeastTilt, None) {
            Outcome::Best { plane, rests_on }
                if most.is_none_or(|most| tilt(&plane) <= most * (1.0 + AT_LIMIT)) =>
            {
                let few = [first, &rests_on].concat();
                match solve(rows, &few, goal, most) {
                    Outcome::Best { plane, rests_on } => Held::Best {
                        plane,
                        rests_on,
                        at_limit: true,
                    },
                    // Only the least tilted plane is left within the limit, up to rounding.
                    Outcome::Impossible { .. } => Held::Best {
                        plane,
                        rests_on,
                        at_limit: true,
                    },
                }
            }
            Outcome::Best { rests_on, .. } => stuck(rests_on, true),
            Outcome::Impossible { rows } => stuck(rows, false),
        }
    }

    /// All rows of the rules, and the cover's at some vertices.
    pub fn rows_of_rules_and(&self, covers: &[usize]) -> Vec<usize> {
        let rules = self.surface.vertices.len()..self.rows.len();
        covers.iter().copied().chain(rules).collect()
    }

    /// Of rows that no plane keeps together (within the tilt limit, where it matters), so few that the rest could be
    /// kept without any one of them; none where all can be kept up to rounding.
    pub fn needed(&self, rows: &[usize], limit_matters: bool) -> Option<Needed> {
        let mut all = self.rows.clone();
        let floor = all.len();
        // Holds the plane up, far below everything, so that a few rows have a lowest plane.
        all.push(Row {
            factors: [1.0, 0.0, 0.0],
            reach: -1e4,
            exactly: false,
        });
        let most_tilt = self.most_tilt.filter(|_| limit_matters);
        let kept = |rows: &[usize]| can_be_kept(&all, &[rows, &[floor]].concat(), most_tilt);
        if kept(rows) {
            return None;
        }
        let mut needed = rows.to_vec();
        for row in rows {
            let mut without = needed.clone();
            without.retain(|other| other != row);
            if !kept(&without) {
                needed = without;
            }
        }
        let covers = self.surface.vertices.len();
        let mut found = Needed {
            rules: Vec::new(),
            covers: Vec::new(),
        };
        for row in needed {
            match row.checked_sub(covers) {
                None => found.covers.push(row),
                Some(row) => found.rules.extend(self.rule_of_row.get(row)),
            }
        }
        found.rules.order();
        found.rules.dedup();
        found.covers.order();
        // A rule along an opening has a row at each end: with all of them some of the rest may no longer be needed.
        let rows_of = |found: &Needed| {
            let of_rules = (covers..).zip(&self.rule_of_row);
            let of_rules = of_rules.filter(|(_, rule)| found.rules.contains(rule));
            let mut rows = found.covers.clone();
            rows.extend(of_rules.map(|(row, _)| row));
            rows
        };
        for cover in found.covers.clone() {
            let mut without = found.clone();
            without.covers.retain(|other| *other != cover);
            if !kept(&rows_of(&without)) {
                found = without;
            }
        }
        for rule in found.rules.clone() {
            let mut without = found.clone();
            without.rules.retain(|other| *other != rule);
            if !kept(&rows_of(&without)) {
                found = without;
            }
        }
        Some(found)
    }

    /// Whether no other plane costs as little: the rows on which it rests hold it from every side.
    fn is_unique(&self, plane: &Unknowns) -> bool {
        let near = 100.0 * rounding(plane);
        let mut angles: Vec<f64> = Vec::new();
        for row in self.rows.iter().filter(|row| row.slack(plane) <= near) {
            let [_, x, y] = row.factors;
            if x.hypot(y) > 1e-9 {
                angles.push(y.atan2(x));
                if row.exactly {
                    angles.push((-y).atan2(-x));
                }
            }
        }
        angles.order_by(f64::total_cmp);
        let (Some(first), Some(last)) = (angles.first(), angles.last()) else {
            return false;
        };
        let round = first + std::f64::consts::TAU - last;
        let widest = angles
            .windows(2)
            .map(|pair| pair[1] - pair[0])
            .fold(round, f64::max);
        widest < std::f64::consts::PI - 1e-9
    }

    /// The rows of one rule.
    fn rule_rows(&self, rule: &HeightRule) -> Vec<Row> {
        let reach = self.scaled(rule.height_in);
        let row = |at: &Point| match rule.kind {
            HeightKind::Exactly => Row {
                factors: self.factors(*at),
                reach,
                exactly: true,
            },
            HeightKind::AtMost => Row {
                factors: self.factors(*at).map(|factor| -factor),
                reach: -reach,
                exactly: false,
            },
        };
        rule.points.iter().map(row).collect()
    }

    /// The row that asks most of a level plane: it holds up every other.
    fn holds_up(&self) -> Vec<usize> {
        let covers = self
            .rows
            .iter()
            .take(self.surface.vertices.len())
            .enumerate();
        let highest = covers.max_by(|a, b| a.1.reach.total_cmp(&b.1.reach).then(b.0.cmp(&a.0)));
        highest.map(|(row, _)| row).into_iter().collect()
    }

    /// Three vertices round a place: corners of the room whose triangle holds it, or comes nearest to it.
    fn three_round(&self, place: Point) -> Vec<usize> {
        let hull = hull(self.surface.outline.corners());
        let mut best: Option<(f64, [Point; 3])> = None;
        if let [first, others @ ..] = hull.as_slice() {
            for pair in others.windows(2) {
                let [second, third] = [pair[0], pair[1]];
                let inwards = |a: Point, b: Point| cross(a, b, place) / a.distance_in(b);
                let least = inwards(*first, second)
                    .min(inwards(second, third))
                    .min(inwards(third, *first));
                if best.is_none_or(|(most, _)| least > most) {
                    best = Some((least, [*first, second, third]));
                }
            }
        }
        let places = self.surface.vertices.iter().map(|vertex| vertex.at);
        best.map(|(_, corners)| corners.map(|corner| nearest(places.clone(), corner).0))
            .map(Vec::from)
            .unwrap_or_default()
    }

    fn factors(&self, at: Point) -> [f64; 3] {
        [
            1.0,
            (at.x_in - self.middle.x_in) / self.size_in,
            (at.y_in - self.middle.y_in) / self.size_in,
        ]
    }

    fn scaled(&self, height_in: f64) -> f64 {
        (height_in - self.datum_in) / self.spread_in
    }

    fn unscaled(&self, plane: &Unknowns) -> Plane {
        let [height, b, c] = plane;
        let per_in = self.spread_in / self.size_in;
        Plane::through(
            self.middle,
            self.datum_in + height * self.spread_in,
            b * per_in,
            c * per_in,
        )
    }
}

fn tilt(plane: &Unknowns) -> f64 {
    plane[1].hypot(plane[2])
}

/// The plane is at least as high at one place as at another, or exactly so.
fn level_with(place: [f64; 3], other: [f64; 3], exactly: bool) -> Row {
    Row {
        factors: [
            place[0] - other[0],
            place[1] - other[1],
            place[2] - other[2],
        ],
        reach: 0.0,
        exactly,
    }
}

/// The corners of the convex hull, counter-clockwise.
fn hull(corners: &[Point]) -> Vec<Point> {
    let mut sorted = corners.to_vec();
    sorted.order_by(|a, b| a.x_in.total_cmp(&b.x_in).then(a.y_in.total_cmp(&b.y_in)));
    let half = |points: &mut dyn Iterator<Item = Point>| {
        let mut chain: Vec<Point> = Vec::new();
        for point in points {
            while let [.., a, b] = chain.as_slice()
                && cross(*a, *b, point) <= 0.0
            {
                chain.pop();
            }
            chain.push(point);
        }
        chain.pop();
        chain
    };
    let mut hull = half(&mut sorted.iter().copied());
    hull.extend(half(&mut sorted.iter().rev().copied()));
    hull
}
