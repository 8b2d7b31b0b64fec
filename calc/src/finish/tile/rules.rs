//! What published rules say of a tile's joint, offset, lippage and movement joints.
//!
//! They are quoted from public secondary sources; the maker's instructions and the adopted edition govern.

use serde::Serialize;
use thiserror::Error;

use super::ask::Pattern;
use crate::working::{Figure, Source, Step, Unit};

include!("../../../tables/tile_rules.rs");

/// Differences below this are rounding.
const ROUNDING: f64 = 1e-9;

/// A side past this makes a tile large for the rules of running bonds, inches (ANSI A108.02; earlier wording 18 in).
pub const LARGE_SIDE_IN: f64 = 15.0;

/// A joint from this on allows more lippage, inches (ANSI A108.02 4.3.7; from memory).
pub const WIDE_JOINT_IN: f64 = 0.25;

/// How far a row was checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// Two or more public secondary sources agree.
    Verified,
    /// One public secondary source and memory.
    VerifiedOnce,
    /// Not confirmed.
    FromMemory,
    /// A rule of the trade with no single published source.
    CommonPractice,
}

/// The unit of a rule's limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RuleUnit {
    /// Inches.
    In,
    /// Feet each way.
    Ft,
    /// Percent.
    Percent,
    /// A multiple.
    Times,
    /// No number: it must be there.
    Required,
}

/// A rule of the table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct TileRule {
    /// Its stable name.
    pub id: &'static str,
    /// The least, or the low end of a range, in its unit.
    pub low: Option<f64>,
    /// The most, or the high end of a range, in its unit.
    pub high: Option<f64>,
    /// The unit.
    pub unit: RuleUnit,
    /// Where it is from.
    pub source: &'static str,
    /// How far it was checked.
    pub status: Status,
}

/// How exactly a tile is made to size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Make {
    /// Edges ground to size after firing.
    Rectified,
    /// Sorted by size.
    #[default]
    Calibrated,
}

/// Where a floor lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// Inside and dry.
    #[default]
    InteriorDry,
    /// Inside and wet, a shower's floor.
    InteriorWet,
    /// In direct sun, or outside.
    SunOrExterior,
    /// On concrete above ground.
    RaisedConcrete,
}

/// What is held against the rules.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RulesAsk {
    /// A tile's side along its rows, inches.
    pub width_in: f64,
    /// The other side, inches.
    pub height_in: f64,
    /// Joint, inches.
    pub joint_in: f64,
    /// Gap at the walls, inches.
    pub edge_gap_in: f64,
    /// The pattern.
    pub pattern: Pattern,
    /// How exactly the tile is made.
    pub make: Make,
    /// Difference between the largest and the smallest face of the tiles supplied, inches; 0 where not measured.
    pub facial_variation_in: f64,
    /// Warpage of the tile's longest edge, inches; 0 where not measured.
    pub warpage_in: f64,
    /// Where it lies.
    pub place: Place,
    /// The room along x and along y, feet.
    pub room_ft: [f64; 2],
}

/// A rule held against a floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// The rule.
    pub rule: TileRule,
    /// What the floor has, in `limit`'s unit.
    pub found: f64,
    /// What the rule asks, with what must be added to it.
    pub limit: f64,
    /// Whether the floor is within it.
    pub within: bool,
}

/// Movement joints in a field, besides the one at the perimeter.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MovementJoints {
    /// The rule.
    pub rule: TileRule,
    /// Lines across the room's x and y at the widest spacing.
    pub least_lines: [u32; 2],
    /// Lines across the room's x and y at the narrowest spacing.
    pub most_lines: [u32; 2],
}

/// What the rules say.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RulesAnswer {
    /// What was asked.
    pub ask: RulesAsk,
    /// The narrowest joint that the rules allow, inches.
    pub least_joint_in: f64,
    /// How far neighbouring tiles may stand out over each other, inches.
    pub most_lippage_in: f64,
    /// How much of a tile's back the mortar must touch, percent.
    pub least_contact_percent: f64,
    /// Movement joints in the field.
    pub movement: MovementJoints,
    /// Rules held against the joint, the offset and the gap at the walls.
    pub verdicts: Vec<Verdict>,
}

/// An entry that can't be held against the rules.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum RulesRefusal {
    /// A size of nothing or less, or that isn't a number.
    #[error("a size of {given}")]
    NoSize {
        /// What was given.
        given: f64,
    },
    /// A joint, variation or warpage below nothing, an offset not between 0 and 1, or no number.
    #[error("{given} is not an amount")]
    NotAnAmount {
        /// What was given.
        given: f64,
    },
}

/// The rule with a name.
pub fn rule(id: &str) -> Option<&'static TileRule> {
    TILE_RULES.iter().find(|rule| rule.id == id)
}

/// The usual allowance for cuts where tiles are counted by area, percent; common practice.
pub const fn usual_allowance_percent(pattern: Pattern) -> f64 {
    match pattern {
        Pattern::Straight => 10.0,
        Pattern::RunningBond { .. } => 15.0,
        Pattern::Diagonal | Pattern::Herringbone { .. } => 20.0,
    }
}

/// Lines of movement joints across a side: ceil(side / spacing) - 1, both in feet.
pub fn movement_lines(side_ft: f64, spacing_ft: f64) -> u32 {
    let spans = (side_ft / spacing_ft - ROUNDING).ceil();
    (spans - 1.0).max(0.0) as u32
}

/// How far neighbouring tiles may stand out over each other, inches: 1/32 in, from a 1/4 in joint on 1/16 in, and the
/// tile's own warpage (ANSI A108.02 4.3.7).
///
/// ```
/// use calc::finish::tile::rules::most_lippage_in;
/// // 1/8 in joint, tile warped by 1/32 in: 1/32 + 1/32.
/// assert_eq!(most_lippage_in(0.125, 0.03125), 0.0625);
/// ```
pub fn most_lippage_in(joint_in: f64, warpage_in: f64) -> f64 {
    let narrow = joint_in < WIDE_JOINT_IN - ROUNDING;
    let allowed_in = if narrow { 0.03125 } else { 0.0625 };
    allowed_in + warpage_in
}

/// Holds a tile floor against the rules.
///
/// # Errors
/// See [`RulesRefusal`].
///
/// # Example
/// ```
/// use calc::finish::tile::{Pattern, rules::{Make, Place, RulesAsk, hold}};
/// // 12 x 24 in tile at half offset: more than a third.
/// let ask = RulesAsk {
///     width_in: 24.0, height_in: 12.0, joint_in: 0.125, edge_gap_in: 0.25,
///     pattern: Pattern::RunningBond { offset: 0.5 }, make: Make::Rectified,
///     facial_variation_in: 0.03125, warpage_in: 0.0, place: Place::InteriorDry, room_ft: [30.0, 22.0],
/// };
/// let answer = hold(&ask)?;
/// assert_eq!(answer.least_joint_in, 0.125);
/// let offset = answer.verdicts.iter().find(|verdict| verdict.rule.id == "offset_most").unwrap();
/// assert!(!offset.within);
/// assert_eq!(answer.movement.least_lines, [1, 0]); // at 25 ft
/// # Ok::<(), calc::finish::tile::rules::RulesRefusal>(())
/// ```
pub fn hold(ask: &RulesAsk) -> Result<RulesAnswer, RulesRefusal> {
    ask.refuse()?;
    let offset = ask.pattern.offset();
    // A shift by two thirds is one by a third, the other way.
    let overlap = offset.min(1.0 - offset);
    let mut verdicts = Vec::new();
    let mut least_joint_in = 0.0_f64;
    for (id, held, added_in) in ask.joint_rules(overlap) {
        let Some(&rule) = rule(id).filter(|_| held) else {
            continue;
        };
        let low = rule.low.unwrap_or_default();
        let limit = match rule.unit {
            RuleUnit::Times => low * ask.facial_variation_in,
            _ => low + added_in,
        };
        least_joint_in = least_joint_in.max(limit);
        verdicts.push(at_least(rule, ask.joint_in, limit));
    }
    if ask.large_offset(overlap)
        && let Some(&rule) = rule("offset_most")
    {
        let limit = rule.high.unwrap_or_default();
        verdicts.push(Verdict {
            rule,
            found: 100.0 * overlap,
            limit,
            // Written as 33 percent and meant as a third.
            within: overlap <= 1.0 / 3.0 + ROUNDING,
        });
    }
    if let Some(&rule) = rule("perimeter_gap") {
        verdicts.push(at_least(
            rule,
            ask.edge_gap_in,
            rule.low.unwrap_or_default(),
        ));
    }
    let contact = match ask.place {
        Place::InteriorDry | Place::RaisedConcrete => "contact_dry",
        Place::InteriorWet | Place::SunOrExterior => "contact_wet",
    };
    let spacing = match ask.place {
        Place::InteriorDry => &MOVEMENT_INTERIOR,
        Place::InteriorWet | Place::SunOrExterior => &MOVEMENT_SUN_OR_MOISTURE,
        Place::RaisedConcrete => &MOVEMENT_RAISED_CONCRETE,
    };
    let lines = |spacing_ft: Option<f64>| {
        ask.room_ft
            .map(|side_ft| spacing_ft.map_or(0, |spacing_ft| movement_lines(side_ft, spacing_ft)))
    };
    Ok(RulesAnswer {
        ask: *ask,
        least_joint_in,
        most_lippage_in: most_lippage_in(ask.joint_in, ask.warpage_in),
        least_contact_percent: rule(contact).and_then(|rule| rule.low).unwrap_or_default(),
        movement: MovementJoints {
            rule: *spacing,
            least_lines: lines(spacing.high),
            most_lines: lines(spacing.low),
        },
        verdicts,
    })
}

const MOVEMENT_INTERIOR: TileRule = TILE_RULES[9];
const MOVEMENT_SUN_OR_MOISTURE: TileRule = TILE_RULES[10];
const MOVEMENT_RAISED_CONCRETE: TileRule = TILE_RULES[11];

const fn at_least(rule: TileRule, found: f64, limit: f64) -> Verdict {
    Verdict {
        rule,
        found,
        limit,
        within: found >= limit - ROUNDING,
    }
}

impl RulesAsk {
    fn refuse(&self) -> Result<(), RulesRefusal> {
        for given in [
            self.width_in,
            self.height_in,
            self.room_ft[0],
            self.room_ft[1],
        ] {
            if !(given.is_finite() && given > 0.0) {
                return Err(RulesRefusal::NoSize { given });
            }
        }
        let amounts = [
            self.joint_in,
            self.edge_gap_in,
            self.facial_variation_in,
            self.warpage_in,
            self.pattern.offset(),
            1.0 - self.pattern.offset(),
        ];
        for given in amounts {
            if !(given.is_finite() && given >= 0.0) {
                return Err(RulesRefusal::NotAnAmount { given });
            }
        }
        Ok(())
    }

    /// Whether the rules for running bonds of large tile hold: rows are shifted, and a side is long.
    fn large_offset(&self, overlap: f64) -> bool {
        overlap > ROUNDING && self.width_in.max(self.height_in) > LARGE_SIDE_IN + ROUNDING
    }

    /// Rules for the joint: whether each holds here, and what is added to its limit, inches.
    fn joint_rules(&self, overlap: f64) -> [(&'static str, bool, f64); 4] {
        let large = self.large_offset(overlap);
        let warped_in = self.warpage_in;
        [
            ("joint_least", true, 0.0),
            ("joint_variation", self.facial_variation_in > 0.0, 0.0),
            (
                "joint_offset_rectified",
                large && self.make == Make::Rectified,
                warped_in,
            ),
            (
                "joint_offset_calibrated",
                large && self.make == Make::Calibrated,
                warped_in,
            ),
        ]
    }
}

impl RulesAnswer {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let published = |rule: &TileRule| Source::Published(rule.source);
        let mut steps = vec![
            Step {
                formula: "tile_least_joint",
                inputs: vec![
                    figure("facial_variation", self.ask.facial_variation_in, Unit::In),
                    figure("edge_warpage", self.ask.warpage_in, Unit::In),
                ],
                result: figure("least_joint", self.least_joint_in, Unit::In),
                source: Source::Published("ANSI A108.02 4.3.8"),
            },
            Step {
                formula: "tile_lippage",
                inputs: vec![
                    figure("tile_joint", self.ask.joint_in, Unit::In),
                    figure("edge_warpage", self.ask.warpage_in, Unit::In),
                ],
                result: figure("most_lippage", self.most_lippage_in, Unit::In),
                source: Source::Published("ANSI A108.02 4.3.7"),
            },
        ];
        for (side_ft, lines) in self.ask.room_ft.into_iter().zip(self.movement.least_lines) {
            steps.push(Step {
                formula: "movement_lines",
                inputs: vec![
                    figure("room_side", side_ft, Unit::Ft),
                    figure(
                        "movement_spacing",
                        self.movement.rule.high.unwrap_or_default(),
                        Unit::Ft,
                    ),
                ],
                result: figure("movement_lines", f64::from(lines), Unit::Count),
                source: published(&self.movement.rule),
            });
        }
        steps
    }
}
