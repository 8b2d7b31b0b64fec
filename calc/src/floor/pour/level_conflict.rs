//! What a level top can't keep together.

use super::ask::{HeightKind, HeightRule};
use super::conflict::{Cause, Clash, Conflict, Way};
use crate::floor::geometry::SAME_PLACE;

/// A level top must stand at `lowest_in` or higher for the cover at vertex `highest`, at every exact height, and no
/// higher than any cap: nothing where it can.
pub(super) fn level_conflict(
    rules: &[HeightRule],
    lowest_in: f64,
    highest: usize,
) -> Option<Conflict> {
    let all = Bounds::of(rules, lowest_in, None);
    if all.fit() {
        return None;
    }
    let mut clashes = Vec::new();
    for rule in rules {
        if !all.fits(lowest_in, rule.height_in) {
            clashes.push(Clash {
                causes: vec![
                    Cause::Rule { id: rule.id },
                    Cause::Cover { vertex: highest },
                ],
                changes: vec![to(rule, lowest_in, None)],
            });
        }
    }
    // Of the heights to meet the greatest is in the way of every lower rule.
    if let Some(top) = all.asks_most.and_then(|index| rules.get(index)) {
        let lower = |rule: &&HeightRule| !all.fits(top.height_in, rule.height_in);
        for rule in rules.iter().filter(lower) {
            let up_to = (rule.kind == HeightKind::Exactly).then_some(top.height_in);
            clashes.push(Clash {
                causes: vec![Cause::Rule { id: top.id }, Cause::Rule { id: rule.id }],
                changes: vec![
                    to(
                        top,
                        rule.height_in,
                        (rule.kind == HeightKind::Exactly).then_some(rule.height_in),
                    ),
                    to(rule, top.height_in, up_to),
                ],
            });
        }
    }
    let way = |(index, rule): (usize, &HeightRule)| {
        let others = Bounds::of(rules, lowest_in, Some(index));
        let (least_in, most_in) = (others.least_in, others.most_in);
        let comes_down = rule.kind == HeightKind::Exactly && rule.height_in > most_in;
        let (to_in, far_in) = if comes_down {
            (most_in.max(least_in), Some(least_in))
        } else {
            let end = rule.kind == HeightKind::Exactly && most_in.is_finite();
            (least_in, end.then_some(most_in.max(least_in)))
        };
        others.fit().then(|| to(rule, to_in, far_in))
    };
    Some(Conflict {
        clashes,
        ways: rules.iter().enumerate().filter_map(way).collect(),
    })
}

fn to(rule: &HeightRule, to_in: f64, far_in: Option<f64>) -> Way {
    Way::Height {
        id: rule.id,
        to_in,
        by_in: to_in - rule.height_in,
        far_in,
    }
}

/// The greatest height that something asks for and the least that something allows.
struct Bounds {
    lowest_in: f64,
    least_in: f64,
    most_in: f64,
    /// The rule that asks for the greatest; none where the cover does.
    asks_most: Option<usize>,
}

impl Bounds {
    /// Of all rules but one.
    fn of(rules: &[HeightRule], lowest_in: f64, without: Option<usize>) -> Self {
        let mut bounds = Self {
            lowest_in,
            least_in: lowest_in,
            most_in: f64::INFINITY,
            asks_most: None,
        };
        let others = rules.iter().enumerate();
        for (index, rule) in others.filter(|(index, _)| Some(*index) != without) {
            if rule.kind == HeightKind::Exactly && rule.height_in > bounds.least_in {
                bounds.least_in = rule.height_in;
                bounds.asks_most = Some(index);
            }
            bounds.most_in = bounds.most_in.min(rule.height_in);
        }
        bounds
    }

    fn fit(&self) -> bool {
        self.fits(self.least_in, self.most_in)
    }

    /// Whether one height is no more than the other, up to rounding.
    fn fits(&self, least_in: f64, most_in: f64) -> bool {
        least_in <= most_in + SAME_PLACE * (1.0 + least_in.abs().max(self.lowest_in.abs()))
    }
}
