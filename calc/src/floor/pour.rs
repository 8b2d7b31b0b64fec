//! The pour: level, or flat with a tilt, with at least the cover everywhere.

mod rules;
mod solve;

use serde::Serialize;
use thiserror::Error;

use super::geometry::{Point, SAME_PLACE};
use super::plane::Plane;
use super::surface::{FARTHEST_HEIGHT_IN, Surface};
use crate::working::{Figure, Source, Step, Unit};

/// Cubic inches in a cubic foot.
pub const IN3_PER_FT3: f64 = 1728.0;

/// The most cover that may be asked for, inches: a foot is no longer a pour.
pub const MOST_COVER_IN: f64 = 12.0;

/// What the pour must keep.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PourAsk {
    /// The least depth everywhere, inches.
    pub cover_in: f64,
    /// The most tilt, inches per 4 ft, in whatever direction; a level pour has none.
    pub tilt_limit_in_per_4ft: Option<f64>,
    /// Heights to keep at places.
    pub rules: Vec<HeightRule>,
}

/// A height to keep at a place, or at both jambs of an opening (a plane between them keeps it as well).
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeightRule {
    /// Where.
    pub points: Vec<Point>,
    /// Whether it may be lower.
    pub kind: HeightKind,
    /// The height of the finished pour, inches above the datum.
    pub height_in: f64,
    /// What the asker calls the rule; comes back in a refusal.
    pub id: u32,
}

/// How a height is to be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum HeightKind {
    /// No higher.
    AtMost,
    /// No higher and no lower.
    Exactly,
}

/// Level, or flat with a tilt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PourKind {
    /// Finds its own level.
    Level,
    /// Screeded to pins.
    Flat,
}

/// A pour that can be made.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pour {
    /// Level or flat.
    pub kind: PourKind,
    /// The finished surface.
    pub plane: Plane,
    /// Whether it is the only plane that takes so little; if not, it is the least tilted of them.
    pub unique: bool,
    /// Whether the tilt limit costs material.
    pub tilt_limit_binding: bool,
    /// The cover asked for, inches.
    pub cover_in: f64,
    /// Area of the floor, square inches.
    pub area_in2: f64,
    /// Material, cubic inches.
    pub volume_in3: f64,
    /// Material, cubic feet.
    pub volume_ft3: f64,
    /// Volume over area, inches.
    pub mean_depth_in: f64,
    /// The least depth, inches.
    pub least_depth_in: f64,
    /// The vertex where it is least; of several, the first.
    pub least_at: usize,
    /// The greatest depth, inches.
    pub greatest_depth_in: f64,
    /// The vertex where it is greatest; of several, the first.
    pub greatest_at: usize,
    /// Depth at each vertex of the surface, inches: how high to set the pin there.
    pub depth_in: Vec<f64>,
    /// Tilt, inches per 4 ft.
    pub tilt_in_per_4ft: f64,
    /// Which way it falls, degrees counter-clockwise from x; none when level.
    pub downhill_degrees: Option<f64>,
}

/// The depth of a pour along a line, such as an opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DepthAlong {
    /// At the start, inches.
    pub left_in: f64,
    /// At the end, inches.
    pub right_in: f64,
    /// The greatest on the way, inches.
    pub greatest_in: f64,
    /// The least on the way, inches.
    pub least_in: f64,
}

/// Why there is no pour.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum PourRefusal {
    /// A cover that isn't a number, is negative or passes [`MOST_COVER_IN`].
    #[error("a cover of {given_in} in is not between 0 and {MOST_COVER_IN} in")]
    Cover {
        /// What was given, inches.
        given_in: f64,
    },
    /// A tilt limit that isn't a number or is negative.
    #[error("a tilt limit of {given_in_per_4ft} in per 4 ft is not a limit")]
    TiltLimit {
        /// What was given.
        given_in_per_4ft: f64,
    },
    /// A rule whose height isn't a number or is too far from the datum.
    #[error("the height of rule {id}, {height_in} in, is not within reach of the datum")]
    RuleHeight {
        /// The rule.
        id: u32,
        /// Its height, inches.
        height_in: f64,
    },
    /// A rule that says no place.
    #[error("rule {id} says no place")]
    RuleNowhere {
        /// The rule.
        id: u32,
    },
    /// A rule at a place outside the room.
    #[error("rule {id} is for a place {by_in} in outside the room")]
    RuleOutside {
        /// The rule.
        id: u32,
        /// How far outside, inches.
        by_in: f64,
    },
    /// The surface has no vertices or no area.
    #[error("there is no floor to pour on")]
    NoFloor,
    /// No plane keeps all that is asked.
    #[error("what is asked cannot be had together")]
    Conflict(Conflict),
}

/// What cannot be had together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Conflict {
    /// The rules that conflict, the tilt limit if it has a part in it, and the vertex whose cover is in the way:
    /// at least two. Without any one of these (the cover elsewhere aside) the rest could be had.
    pub causes: Vec<Cause>,
    /// The least change of each rule that makes everything possible while all others stand; a rule that can't do it
    /// alone is missing.
    pub ways: Vec<Way>,
}

/// A part of a conflict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// A height rule.
    Rule {
        /// The rule's id.
        id: u32,
    },
    /// The limit on the tilt.
    TiltLimit,
    /// The cover at a vertex of the surface.
    Cover {
        /// Index of the vertex.
        vertex: usize,
    },
}

/// A way out of a conflict.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// Change a rule's height.
    Height {
        /// The rule.
        id: u32,
        /// To this height, inches above the datum.
        to_in: f64,
        /// That is, by so much, inches; upwards is positive.
        by_in: f64,
    },
    /// Allow more tilt.
    Tilt {
        /// This much, inches per 4 ft.
        to_in_per_4ft: f64,
    },
}

/// The lowest level pour with the cover everywhere.
///
/// Its height is that of the highest vertex plus the cover; a rule with an exact height lifts it there.
///
/// # Errors
/// See [`PourRefusal`].
///
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface, pour::{PourAsk, level}};
/// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
/// let spots = corners.map(|at| Spot { at, height_in: at.x_in / 120.0 }); // 1/2 in across 5 ft
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// let ask = PourAsk { cover_in: 0.125, tilt_limit_in_per_4ft: None, rules: vec![] };
/// let pour = level(&floor, &ask)?;
/// // 40 square feet at a mean of 3/8 in is 1.25 cubic feet.
/// assert_eq!((pour.plane.a_in, pour.mean_depth_in, pour.volume_ft3), (0.625, 0.375, 1.25));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn level(surface: &Surface, ask: &PourAsk) -> Result<Pour, PourRefusal> {
    check(surface, ask)?;
    let mut highest = (0, f64::NEG_INFINITY);
    for (vertex, given) in surface.vertices.iter().enumerate() {
        if given.height_in > highest.1 {
            highest = (vertex, given.height_in);
        }
    }
    let lowest_in = highest.1 + ask.cover_in;
    let exact = ask
        .rules
        .iter()
        .find(|rule| rule.kind == HeightKind::Exactly);
    let height_in = exact.map_or(lowest_in, |rule| rule.height_in);
    let slack_in = SAME_PLACE * (1.0 + height_in.abs());
    let against = |rule: &HeightRule, cause: Cause| {
        let way = Way::Height {
            id: rule.id,
            to_in: height_in,
            by_in: height_in - rule.height_in,
        };
        Err(PourRefusal::Conflict(Conflict {
            causes: vec![Cause::Rule { id: rule.id }, cause],
            ways: vec![way],
        }))
    };
    if let Some(rule) = exact
        && rule.height_in < lowest_in - slack_in
    {
        let causes = vec![
            Cause::Rule { id: rule.id },
            Cause::Cover { vertex: highest.0 },
        ];
        let way = Way::Height {
            id: rule.id,
            to_in: lowest_in,
            by_in: lowest_in - rule.height_in,
        };
        return Err(PourRefusal::Conflict(Conflict {
            causes,
            ways: vec![way],
        }));
    }
    for rule in &ask.rules {
        let kept = match rule.kind {
            HeightKind::AtMost => rule.height_in >= height_in - slack_in,
            HeightKind::Exactly => (rule.height_in - height_in).abs() <= slack_in,
        };
        if !kept {
            return match exact {
                Some(exact) => against(rule, Cause::Rule { id: exact.id }),
                None => against(rule, Cause::Cover { vertex: highest.0 }),
            };
        }
    }
    Ok(Pour::new(
        PourKind::Level,
        surface,
        ask.cover_in,
        Plane::level(height_in.max(lowest_in)),
        true,
        false,
    ))
}

/// The flat pour that takes least, with the cover everywhere: the plane that is lowest over the room's centroid.
///
/// The volume under a plane is the area times its height over the centroid, less what the floor itself takes, so
/// least volume is least height there. Of several planes that take as little it is the least tilted.
///
/// # Errors
/// See [`PourRefusal`]; a conflict names what is in whose way and by how much.
///
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface, pour::{PourAsk, flat}};
/// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
/// let spots = corners.map(|at| Spot { at, height_in: at.x_in / 120.0 }); // 1/2 in across 5 ft
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// // A floor that is flat already needs the cover alone: 40 square feet at 1/8 in.
/// let mut ask = PourAsk { cover_in: 0.125, tilt_limit_in_per_4ft: None, rules: vec![] };
/// let pour = flat(&floor, &ask)?;
/// assert!((pour.volume_ft3 - 40.0 * 0.125 / 12.0).abs() < 1e-12);
/// assert!((pour.tilt_in_per_4ft - 0.4).abs() < 1e-12);
/// // Held to 1/4 in per 4 ft, the low side gets 3/16 in more.
/// ask.tilt_limit_in_per_4ft = Some(0.25);
/// let held = flat(&floor, &ask)?;
/// assert!((held.greatest_depth_in - 0.3125).abs() < 1e-12);
/// assert!(held.tilt_limit_binding);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn flat(surface: &Surface, ask: &PourAsk) -> Result<Pour, PourRefusal> {
    check(surface, ask)?;
    let found = rules::Program::new(surface, ask)
        .best()
        .map_err(PourRefusal::Conflict)?;
    let mut plane = found.plane;
    // Rounding may leave a vertex short by the last digit: the cover comes first.
    for _ in 0..3 {
        let short_in = surface
            .vertices
            .iter()
            .map(|vertex| ask.cover_in - (plane.height_in(vertex.at) - vertex.height_in))
            .fold(0.0, f64::max);
        plane = plane.raised(short_in);
    }
    Ok(Pour::new(
        PourKind::Flat,
        surface,
        ask.cover_in,
        plane,
        found.unique,
        found.tilt_limit_binding,
    ))
}

/// The least height to which rule number `rule` of the ask (from 0) can be held in a flat pour while all else asked
/// holds, inches above the datum; none when there is no such rule, or the rest can't be had by itself.
///
/// # Errors
/// As [`flat`], but for conflicts.
pub fn least_feasible_height_in(
    surface: &Surface,
    ask: &PourAsk,
    rule: usize,
) -> Result<Option<f64>, PourRefusal> {
    check(surface, ask)?;
    Ok(rules::Program::new(surface, ask).least_height_in(rule))
}

/// Whether the ask makes sense by itself.
fn check(surface: &Surface, ask: &PourAsk) -> Result<(), PourRefusal> {
    if surface.vertices.is_empty() || surface.triangles.is_empty() {
        return Err(PourRefusal::NoFloor);
    }
    if !(0.0..=MOST_COVER_IN).contains(&ask.cover_in) {
        return Err(PourRefusal::Cover {
            given_in: ask.cover_in,
        });
    }
    if let Some(limit) = ask.tilt_limit_in_per_4ft
        && !(limit.is_finite() && limit >= 0.0)
    {
        return Err(PourRefusal::TiltLimit {
            given_in_per_4ft: limit,
        });
    }
    // A jamb worked out from a wall may be off it by rounding.
    let slack_in = 1000.0 * surface.outline.tolerance_in();
    for rule in &ask.rules {
        let id = rule.id;
        if !rule.height_in.is_finite() || rule.height_in.abs() > 2.0 * FARTHEST_HEIGHT_IN {
            return Err(PourRefusal::RuleHeight {
                id,
                height_in: rule.height_in,
            });
        }
        if rule.points.is_empty() {
            return Err(PourRefusal::RuleNowhere { id });
        }
        for point in &rule.points {
            let by_in = surface.outline.nearest_wall(*point).distance_in;
            if !(surface.outline.contains(*point) || by_in <= slack_in) {
                return Err(PourRefusal::RuleOutside { id, by_in });
            }
        }
    }
    Ok(())
}

impl Pour {
    fn new(
        kind: PourKind,
        surface: &Surface,
        cover_in: f64,
        plane: Plane,
        unique: bool,
        tilt_limit_binding: bool,
    ) -> Self {
        let depth_in: Vec<f64> = surface
            .vertices
            .iter()
            .map(|vertex| plane.height_in(vertex.at) - vertex.height_in)
            .collect();
        let (mut least, mut greatest) = ((0, f64::INFINITY), (0, f64::NEG_INFINITY));
        for (vertex, depth_in) in depth_in.iter().enumerate() {
            if *depth_in < least.1 {
                least = (vertex, *depth_in);
            }
            if *depth_in > greatest.1 {
                greatest = (vertex, *depth_in);
            }
        }
        let (area_in2, volume_in3) = (surface.outline.area_in2(), surface.volume_under_in3(&plane));
        Self {
            kind,
            plane,
            unique,
            tilt_limit_binding,
            cover_in,
            area_in2,
            volume_in3,
            volume_ft3: volume_in3 / IN3_PER_FT3,
            mean_depth_in: volume_in3 / area_in2,
            least_depth_in: least.1,
            least_at: least.0,
            greatest_depth_in: greatest.1,
            greatest_at: greatest.0,
            depth_in,
            tilt_in_per_4ft: plane.tilt_in_per_4ft(),
            downhill_degrees: plane.downhill_degrees(),
        }
    }

    /// Depth at a place, inches; none outside the room.
    pub fn depth_at_in(&self, surface: &Surface, at: Point) -> Option<f64> {
        Some(self.plane.height_in(at) - surface.height_in(at)?)
    }

    /// Depth along a line between two places in the room, such as the jambs of an opening; none when either end is
    /// outside it.
    pub fn along(&self, surface: &Surface, left: Point, right: Point) -> Option<DepthAlong> {
        let (left_in, right_in) = (
            self.depth_at_in(surface, left)?,
            self.depth_at_in(surface, right)?,
        );
        let length_in = left.distance_in(right);
        let (mut least_in, mut greatest_in) = (left_in.min(right_in), left_in.max(right_in));
        for point in surface.profile(left, right).into_iter().flatten() {
            let share = if length_in > 0.0 {
                point.s_in / length_in
            } else {
                0.0
            };
            let at = Point::new(
                left.x_in + share * (right.x_in - left.x_in),
                left.y_in + share * (right.y_in - left.y_in),
            );
            let depth_in = self.plane.height_in(at) - point.height_in;
            least_in = least_in.min(depth_in);
            greatest_in = greatest_in.max(depth_in);
        }
        Some(DepthAlong {
            left_in,
            right_in,
            greatest_in,
            least_in,
        })
    }

    /// How the figures come about.
    pub fn working(&self, surface: &Surface) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let facts = surface.facts();
        let middle = surface.outline.centroid();
        let over_middle_in = self.plane.height_in(middle);
        let stands = match self.kind {
            PourKind::Level => Step {
                formula: "level_surface",
                inputs: vec![
                    figure("highest", facts.highest_in, Unit::In),
                    figure("cover", self.cover_in, Unit::In),
                ],
                result: figure("height", self.plane.a_in, Unit::In),
                source: Source::Arithmetic,
            },
            PourKind::Flat => Step {
                formula: "flat_surface_over_middle",
                inputs: vec![
                    figure("height_at_origin", self.plane.a_in, Unit::In),
                    figure("rise_x", self.plane.b_in_per_in, Unit::Ratio),
                    figure("middle_x", middle.x_in, Unit::In),
                    figure("rise_y", self.plane.c_in_per_in, Unit::Ratio),
                    figure("middle_y", middle.y_in, Unit::In),
                ],
                result: figure("height_over_middle", over_middle_in, Unit::In),
                source: Source::Arithmetic,
            },
        };
        vec![
            stands,
            Step {
                formula: "mean_depth",
                inputs: vec![
                    figure("height_over_middle", over_middle_in, Unit::In),
                    figure("mean_floor_height", facts.mean_height_in, Unit::In),
                ],
                result: figure("mean_depth", self.mean_depth_in, Unit::In),
                source: Source::Arithmetic,
            },
            Step {
                formula: "volume",
                inputs: vec![
                    figure("area", self.area_in2, Unit::In2),
                    figure("mean_depth", self.mean_depth_in, Unit::In),
                ],
                result: figure("volume", self.volume_in3, Unit::In3),
                source: Source::Arithmetic,
            },
            Step {
                formula: "cubic_feet",
                inputs: vec![figure("volume", self.volume_in3, Unit::In3)],
                result: figure("volume", self.volume_ft3, Unit::Ft3),
                source: Source::Arithmetic,
            },
            Step {
                formula: "tilt",
                inputs: vec![
                    figure("rise_x", self.plane.b_in_per_in, Unit::Ratio),
                    figure("rise_y", self.plane.c_in_per_in, Unit::Ratio),
                ],
                result: figure("tilt", self.tilt_in_per_4ft, Unit::InPer4Ft),
                source: Source::Arithmetic,
            },
        ]
    }
}
