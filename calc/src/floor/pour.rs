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
    /// at least two. Each of them has a part in one conflict; another may stand behind it.
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

impl Way {
    /// The way to a figure that can be read off: a height on to the next whole `height_step_in` (inches), a tilt up to
    /// the next whole `tilt_step_in_per_4ft`. Rounded to the nearest, it would fall short as often as not.
    ///
    /// ```
    /// use calc::floor::pour::Way;
    /// // 0.27 in more, to 1.02 in: on a tape of sixteenths 1-1/16 in.
    /// let way = Way::Height { id: 1, to_in: 1.02, by_in: 0.27 };
    /// assert_eq!(way.rounded_on(0.0625, 0.01), Way::Height { id: 1, to_in: 1.0625, by_in: 0.3125 });
    /// ```
    #[must_use]
    pub fn rounded_on(self, height_step_in: f64, tilt_step_in_per_4ft: f64) -> Self {
        // A figure that is whole but for rounding stays.
        let up = |value: f64, step: f64| (value / step - 1e-6).ceil() * step;
        match self {
            Self::Height { id, to_in, by_in } => {
                let rounded_in = if by_in < 0.0 {
                    -up(-to_in, height_step_in)
                } else {
                    up(to_in, height_step_in)
                };
                Self::Height {
                    id,
                    to_in: rounded_in,
                    by_in: by_in + (rounded_in - to_in),
                }
            }
            Self::Tilt { to_in_per_4ft } => Self::Tilt {
                to_in_per_4ft: up(to_in_per_4ft, tilt_step_in_per_4ft),
            },
        }
    }
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
    let height_in = ask
        .rules
        .iter()
        .find(|rule| rule.kind == HeightKind::Exactly)
        .map_or(lowest_in, |rule| rule.height_in);
    if let Some(conflict) = level_conflict(&ask.rules, lowest_in, highest.0) {
        return Err(PourRefusal::Conflict(conflict));
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

/// What a level top can't keep together: it must stand at `lowest_in` or higher for the cover at vertex `highest`, at
/// every exact height, and no higher than any cap.
fn level_conflict(rules: &[HeightRule], lowest_in: f64, highest: usize) -> Option<Conflict> {
    // The greatest height that something asks for and the least that something allows, one rule left out; each with
    // its rule, none for the cover.
    let bounds = |without: Option<usize>| {
        let (mut least, mut most) = ((lowest_in, None), (f64::INFINITY, None));
        let others = rules.iter().enumerate();
        for (index, rule) in others.filter(|(index, _)| Some(*index) != without) {
            if rule.kind == HeightKind::Exactly && rule.height_in > least.0 {
                least = (rule.height_in, Some(index));
            }
            if rule.height_in < most.0 {
                most = (rule.height_in, Some(index));
            }
        }
        (least, most)
    };
    let fits = |least_in: f64, most_in: f64| {
        least_in <= most_in + SAME_PLACE * (1.0 + least_in.abs().max(lowest_in.abs()))
    };
    let (least, most) = bounds(None);
    if fits(least.0, most.0) {
        return None;
    }
    let mut pair: Vec<usize> = [least.1, most.1].into_iter().flatten().collect();
    pair.sort_unstable();
    let of_rules = pair.iter().filter_map(|index| rules.get(*index));
    let mut causes: Vec<Cause> = of_rules.map(|rule| Cause::Rule { id: rule.id }).collect();
    if least.1.is_none() {
        causes.push(Cause::Cover { vertex: highest });
    }
    let way = |(index, rule): (usize, &HeightRule)| {
        let ((least_in, _), (most_in, _)) = bounds(Some(index));
        let to_in = match rule.kind {
            HeightKind::Exactly if rule.height_in > most_in => most_in.max(least_in),
            HeightKind::Exactly | HeightKind::AtMost => least_in,
        };
        fits(least_in, most_in).then_some(Way::Height {
            id: rule.id,
            to_in,
            by_in: to_in - rule.height_in,
        })
    };
    let ways = rules.iter().enumerate().filter_map(way).collect();
    Some(Conflict { causes, ways })
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
        if short_in == 0.0 {
            break;
        }
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
        let area_in2 = surface.outline.area_in2();
        let volume_in3 = surface.volume_at_depths_in3(&depth_in);
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
        // A rule that says exactly how high lifts a level top above what the cover asks for.
        let is_lifted = self.plane.a_in - facts.highest_in - self.cover_in
            > SAME_PLACE * (1.0 + self.plane.a_in.abs());
        let stands = match self.kind {
            PourKind::Level if is_lifted => Step {
                formula: "level_surface_met",
                inputs: vec![
                    figure("highest", facts.highest_in, Unit::In),
                    figure("cover", self.cover_in, Unit::In),
                ],
                result: figure("height", self.plane.a_in, Unit::In),
                source: Source::Entered,
            },
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::outline::rectangle;
    use crate::floor::surface::Spot;

    /// 5 ft by 8 ft, 1/2 in up from left to right; with 1/8 in of cover a level top stands at 5/8 in or higher.
    fn floor() -> Surface {
        let outline = rectangle(60.0, 96.0).unwrap();
        let spots: Vec<Spot> = outline
            .corners()
            .iter()
            .map(|&at| Spot {
                at,
                height_in: at.x_in / 120.0,
            })
            .collect();
        Surface::new(&outline, &spots).unwrap()
    }

    fn ask(rules: &[(HeightKind, f64)]) -> PourAsk {
        let rule = |(index, &(kind, height_in)): (usize, &(HeightKind, f64))| HeightRule {
            points: vec![Point::new(10.0 * index as f64, 0.0)],
            kind,
            height_in,
            id: index as u32,
        };
        PourAsk {
            cover_in: 0.125,
            tilt_limit_in_per_4ft: None,
            rules: rules.iter().enumerate().map(rule).collect(),
        }
    }

    /// Causes, and each way's rule and height.
    fn conflict(rules: &[(HeightKind, f64)]) -> (Vec<Cause>, Vec<(u32, f64)>) {
        let Err(PourRefusal::Conflict(found)) = level(&floor(), &ask(rules)) else {
            panic!("{rules:?} can be had")
        };
        let ways = found.ways.iter().map(|way| match *way {
            Way::Height { id, to_in, .. } => (id, to_in),
            Way::Tilt { .. } => panic!("a level top has no tilt"),
        });
        (found.causes, ways.collect())
    }

    #[test]
    fn a_way_out_of_a_level_conflict_leads_out_of_it() {
        use Cause::{Cover, Rule};
        use HeightKind::{AtMost, Exactly};
        // By hand. One cap under 5/8 in is lifted to it. Of two, neither helps alone.
        let cover = Cover { vertex: 1 };
        assert_eq!(
            conflict(&[(AtMost, 0.5)]),
            (vec![Rule { id: 0 }, cover], vec![(0, 0.625)])
        );
        assert_eq!(
            conflict(&[(AtMost, 0.5), (AtMost, 0.4)]),
            (vec![Rule { id: 1 }, cover], vec![])
        );
        // A height to meet above a cap: the one comes down or the other goes up.
        assert_eq!(
            conflict(&[(Exactly, 1.0), (AtMost, 0.75)]),
            (
                vec![Rule { id: 0 }, Rule { id: 1 }],
                vec![(0, 0.75), (1, 1.0)]
            )
        );
        // The cap is under the cover as well: bringing the other down to it would not do.
        assert_eq!(conflict(&[(Exactly, 1.0), (AtMost, 0.5)]).1, [(1, 1.0)]);
        assert_eq!(conflict(&[(Exactly, 0.5)]).1, [(0, 0.625)]);
        assert_eq!(
            conflict(&[(Exactly, 1.0), (Exactly, 0.75)]).1,
            [(0, 0.75), (1, 1.0)]
        );
    }

    #[test]
    fn a_rounded_way_still_leads_out() {
        // To 5/8 in on a tape of eighths and of quarters; down to 3/4 in on one of halves; a tilt never down.
        let height = |by_in: f64, to_in: f64| Way::Height {
            id: 0,
            to_in,
            by_in,
        };
        assert_eq!(
            height(0.125, 0.625).rounded_on(0.125, 0.01),
            height(0.125, 0.625)
        );
        assert_eq!(
            height(0.125, 0.625).rounded_on(0.25, 0.01),
            height(0.25, 0.75)
        );
        assert_eq!(height(-0.25, 0.75).rounded_on(0.5, 0.01), height(-0.5, 0.5));
        let Way::Tilt { to_in_per_4ft } = (Way::Tilt {
            to_in_per_4ft: 0.1234,
        })
        .rounded_on(0.125, 0.01) else {
            panic!("a tilt stays one")
        };
        assert!((to_in_per_4ft - 0.13).abs() < 1e-12);
    }

    #[test]
    fn the_working_of_a_lifted_level_top_adds_up() {
        let floor = floor();
        let formula = |rules: &[(HeightKind, f64)]| {
            let steps = level(&floor, &ask(rules)).unwrap().working(&floor);
            (steps[0].formula, steps[0].result.value)
        };
        assert_eq!(formula(&[]), ("level_surface", 0.625));
        // Highest spot and cover are 5/8 in, not 1 in: the height that was asked for is.
        assert_eq!(
            formula(&[(HeightKind::Exactly, 1.0)]),
            ("level_surface_met", 1.0)
        );
    }
}
