//! What no plane keeps together: by one rule, by two, or by more.
//!
//! The cover can always be had by itself, and with a tilt limit too. So each rule is held against the cover at its own
//! vertex, against the cover everywhere, and against that within the tilt limit; then each two rules that got through
//! are held against all that together. Only where every two can be had does it take more.

use super::ask::{HeightKind, HeightRule, PourAsk};
use super::conflict::{Cause, Clash, Conflict, Way};
use super::rules::{Extreme, Needed, Program, Stuck};
use crate::floor::geometry::SAME_PLACE;
use crate::floor::surface::Surface;

/// Past this many rules no two are tried: it would take long, and one set is found without.
const MOST_PAIRED: usize = 40;

/// Why what is asked can't be had; `stuck` are rows that no plane keeps.
pub(super) fn flat_conflict(surface: &Surface, ask: &PourAsk, stuck: &Stuck) -> Conflict {
    let search = Search { surface, ask };
    let clashes = search.clashes(stuck);
    let whole = Program::new(surface, ask);
    let mut ways = Vec::new();
    for (index, rule) in ask.rules.iter().enumerate() {
        let has_part = |clash: &Clash| clash.causes.contains(&Cause::Rule { id: rule.id });
        if clashes.iter().any(has_part) {
            ways.extend(change(&whole, rule, index).map(|(way, _)| way));
        }
    }
    if clashes
        .iter()
        .any(|clash| clash.causes.contains(&Cause::TiltLimit))
    {
        ways.extend(tilt(&whole));
    }
    Conflict { clashes, ways }
}

struct Search<'a> {
    surface: &'a Surface,
    ask: &'a PourAsk,
}

impl Search<'_> {
    fn clashes(&self, stuck: &Stuck) -> Vec<Clash> {
        let mut clashes = Vec::new();
        // Rules that can be had by themselves.
        let mut through: Vec<usize> = Vec::new();
        for (index, rule) in self.ask.rules.iter().enumerate() {
            let own = self.under_own_cover(rule);
            let with_cover = self.clash(&[index], false);
            let covered = own.is_some() || with_cover.is_some();
            let of_its_own = own.as_ref().map_or(f64::NEG_INFINITY, |(_, to_in)| *to_in);
            let asks_more = with_cover.filter(|clash| {
                clash.changes.iter().any(|way| match way {
                    Way::Height { to_in, .. } => *to_in > of_its_own + slack_in(*to_in),
                    Way::Tilt { .. } => false,
                })
            });
            clashes.extend(own.map(|(clash, _)| clash));
            clashes.extend(asks_more);
            if covered {
                continue;
            }
            match self.clash(&[index], true) {
                Some(clash) => clashes.push(clash),
                None => through.push(index),
            }
        }
        if through.len() <= MOST_PAIRED {
            for (at, &first) in through.iter().enumerate() {
                for &second in through.iter().skip(at + 1) {
                    let pair = [first, second];
                    let clash = self.clash(&pair, false).or_else(|| self.clash(&pair, true));
                    clashes.extend(clash);
                }
            }
        }
        if clashes.is_empty() {
            clashes.extend(self.of_many(stuck));
        }
        clashes
    }

    /// A rule that is under the cover at a vertex where it stands: by how much, and the height that is not.
    fn under_own_cover(&self, rule: &HeightRule) -> Option<(Clash, f64)> {
        let near_in = 1000.0 * self.surface.outline.tolerance_in();
        let mut most: Option<(usize, f64)> = None;
        for (vertex, given) in self.surface.vertices.iter().enumerate() {
            let covered_in = given.height_in + self.ask.cover_in;
            if covered_in > rule.height_in + slack_in(covered_in)
                && most.is_none_or(|(_, most_in)| covered_in > most_in)
                && rule
                    .points
                    .iter()
                    .any(|point| point.distance_in(given.at) <= near_in)
            {
                most = Some((vertex, covered_in));
            }
        }
        let (vertex, to_in) = most?;
        let clash = Clash {
            causes: vec![Cause::Rule { id: rule.id }, Cause::Cover { vertex }],
            changes: vec![Way::Height {
                id: rule.id,
                to_in,
                by_in: to_in - rule.height_in,
                far_in: None,
            }],
        };
        Some((clash, to_in))
    }

    /// What some of the rules can't keep with the cover, and within the tilt limit if `limited`; none where they can.
    fn clash(&self, rules: &[usize], limited: bool) -> Option<Clash> {
        if limited && self.ask.tilt_limit_in_per_4ft.is_none() {
            return None;
        }
        let ask = self.part(rules, limited);
        let program = Program::new(self.surface, &ask);
        let stuck = program.stuck()?;
        // The vertices that settle how far the first rule must go, rather than any that are in its way.
        let settling = ask
            .rules
            .first()
            .and_then(|rule| change(&program, rule, 0))
            .and_then(|(_, extreme)| {
                let rows = program.rows_of_rules_and(&extreme.covers);
                program.needed(&rows, stuck.limit_matters)
            });
        let needed = settling.or_else(|| program.needed(&stuck.rows, stuck.limit_matters))?;
        Some(clash(&program, &ask, &needed, stuck.limit_matters))
    }

    /// A set of three rules or more.
    fn of_many(&self, stuck: &Stuck) -> Option<Clash> {
        let whole = Program::new(self.surface, self.ask);
        let needed = whole.needed(&stuck.rows, stuck.limit_matters)?;
        let ask = self.part(&needed.rules, stuck.limit_matters);
        let places = 0..needed.rules.len();
        let needed = Needed {
            rules: places.collect(),
            covers: needed.covers,
        };
        let program = Program::new(self.surface, &ask);
        Some(clash(&program, &ask, &needed, stuck.limit_matters))
    }

    /// The ask with some of its rules, with or without its tilt limit.
    fn part(&self, rules: &[usize], limited: bool) -> PourAsk {
        let rules = rules.iter().filter_map(|rule| self.ask.rules.get(*rule));
        PourAsk {
            cover_in: self.ask.cover_in,
            tilt_limit_in_per_4ft: self.ask.tilt_limit_in_per_4ft.filter(|_| limited),
            rules: rules.cloned().collect(),
        }
    }
}

fn clash(program: &Program<'_>, ask: &PourAsk, needed: &Needed, limit_matters: bool) -> Clash {
    let mut causes = Vec::new();
    let mut changes = Vec::new();
    for index in &needed.rules {
        if let Some(rule) = ask.rules.get(*index) {
            causes.push(Cause::Rule { id: rule.id });
            changes.extend(change(program, rule, *index).map(|(way, _)| way));
        }
    }
    if limit_matters {
        causes.push(Cause::TiltLimit);
        changes.extend(tilt(program));
    }
    causes.extend(needed.covers.iter().map(|&vertex| Cause::Cover { vertex }));
    Clash { causes, changes }
}

/// The least change of one rule's height that makes a program possible, and what settles it.
fn change(program: &Program<'_>, rule: &HeightRule, index: usize) -> Option<(Way, Extreme)> {
    let least = program.least_height(index)?;
    let exactly = rule.kind == HeightKind::Exactly;
    let (to, far_in) = if !exactly {
        (least, None)
    } else if least.height_in > rule.height_in {
        let most = program.greatest_height(index);
        (least, most.map(|most| most.height_in))
    } else {
        (program.greatest_height(index)?, Some(least.height_in))
    };
    let way = Way::Height {
        id: rule.id,
        to_in: to.height_in,
        by_in: to.height_in - rule.height_in,
        far_in,
    };
    Some((way, to))
}

fn tilt(program: &Program<'_>) -> Option<Way> {
    let to_in_per_4ft = program.least_tilt_in_per_4ft()?;
    Some(Way::Tilt { to_in_per_4ft })
}

/// What rounding may amount to at a height, inches.
fn slack_in(height_in: f64) -> f64 {
    SAME_PLACE * (1.0 + height_in.abs())
}
