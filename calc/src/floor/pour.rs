//! The pour: level, or flat with a tilt, with at least the cover everywhere.

mod ask;
mod conflict;
mod depth;
mod flat_conflict;
mod level_conflict;
mod rules;
mod solve;
mod working;

use serde::Serialize;

use super::plane::Plane;
use super::surface::Surface;
use crate::quantity::IN3_PER_FT3;

use ask::check;
pub use ask::{HeightKind, HeightRule, MOST_COVER_IN, PourAsk, PourRefusal};
pub use conflict::{Cause, Clash, Conflict, Way};
pub use depth::DepthAlong;
use flat_conflict::flat_conflict;
use level_conflict::level_conflict;

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
        .map_err(|stuck| PourRefusal::Conflict(flat_conflict(surface, ask, &stuck)))?;
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
    Ok(rules::Program::new(surface, ask)
        .least_height(rule)
        .map(|extreme| extreme.height_in))
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::Point;
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

    fn conflict(rules: &[(HeightKind, f64)]) -> Conflict {
        let Err(PourRefusal::Conflict(found)) = level(&floor(), &ask(rules)) else {
            panic!("{rules:?} can be had")
        };
        found
    }

    /// Each way's rule and height.
    fn heights(ways: &[Way]) -> Vec<(u32, f64)> {
        let height = |way: &Way| match *way {
            Way::Height { id, to_in, .. } => (id, to_in),
            Way::Tilt { .. } => panic!("a level top has no tilt"),
        };
        ways.iter().map(height).collect()
    }

    #[test]
    fn a_way_out_of_a_level_conflict_leads_out_of_it() {
        use HeightKind::{AtMost, Exactly};
        // By hand. One cap under 5/8 in is lifted to it. Of two, neither helps alone.
        let ways = |rules: &[(HeightKind, f64)]| heights(&conflict(rules).ways);
        assert_eq!(ways(&[(AtMost, 0.5)]), [(0, 0.625)]);
        assert_eq!(ways(&[(AtMost, 0.5), (AtMost, 0.4)]), []);
        // A height to meet above a cap: the one comes down or the other goes up.
        assert_eq!(
            ways(&[(Exactly, 1.0), (AtMost, 0.75)]),
            [(0, 0.75), (1, 1.0)]
        );
        // The cap is under the cover as well: bringing the other down to it would not do.
        assert_eq!(ways(&[(Exactly, 1.0), (AtMost, 0.5)]), [(1, 1.0)]);
        assert_eq!(ways(&[(Exactly, 0.5)]), [(0, 0.625)]);
        assert_eq!(
            ways(&[(Exactly, 1.0), (Exactly, 0.75)]),
            [(0, 0.75), (1, 1.0)]
        );
    }

    #[test]
    fn a_level_top_misses_by_pairs() {
        use Cause::{Cover, Rule};
        use HeightKind::{AtMost, Exactly};
        // By hand: against 5/8 in at vertex 1, 1/8 in and 0.225 in short; 1 in against a cap of 1/2 in, 1/2 in.
        let found = conflict(&[(AtMost, 0.5), (AtMost, 0.4)]).clashes;
        let causes: Vec<_> = found.iter().map(|clash| clash.causes.clone()).collect();
        let cover = Cover { vertex: 1 };
        assert_eq!(causes, [[Rule { id: 0 }, cover], [Rule { id: 1 }, cover]]);
        assert_eq!(heights(&found[0].changes), [(0, 0.625)]);
        assert_eq!(heights(&found[1].changes), [(1, 0.625)]);
        let found = conflict(&[(Exactly, 1.0), (AtMost, 0.5)]).clashes;
        assert_eq!(found[0].causes, [Rule { id: 1 }, cover]);
        assert_eq!(found[1].causes, [Rule { id: 0 }, Rule { id: 1 }]);
        assert_eq!(heights(&found[1].changes), [(0, 0.5), (1, 1.0)]);
    }

    /// A room of 100 in square whose corners read 0, 1, 1.5 and 0.2 in up and whose middle reads 0.3 in, 1/4 in of
    /// cover. By hand: at the corner of 1 in the cover stands at 1.25 in, at the corner of 0.2 in at 0.45 in.
    #[test]
    fn two_caps_each_under_their_own_cover() {
        let outline = rectangle(100.0, 100.0).unwrap();
        let spot = |(x, y, height_in)| Spot {
            at: Point::new(x, y),
            height_in,
        };
        let spots = [
            (0.0, 0.0, 0.0),
            (100.0, 0.0, 1.0),
            (100.0, 100.0, 1.5),
            (0.0, 100.0, 0.2),
            (50.0, 50.0, 0.3),
        ]
        .map(spot);
        let surface = Surface::new(&outline, &spots).unwrap();
        let cap = |vertex: usize, height_in| HeightRule {
            points: vec![spots[vertex].at],
            kind: HeightKind::AtMost,
            height_in,
            id: vertex as u32,
        };
        let ask = PourAsk {
            cover_in: 0.25,
            tilt_limit_in_per_4ft: None,
            rules: vec![cap(1, 1.0), cap(3, 0.3)],
        };
        let Err(PourRefusal::Conflict(found)) = flat(&surface, &ask) else {
            panic!("both caps are under their cover")
        };
        assert_eq!(found.clashes.len(), 2);
        for (clash, (vertex, short_in)) in found.clashes.iter().zip([(1, 0.25), (3, 0.15)]) {
            let id = vertex as u32;
            assert_eq!(clash.causes, [Cause::Rule { id }, Cause::Cover { vertex }]);
            let [Way::Height { by_in, .. }] = clash.changes[..] else {
                panic!("{clash:?}")
            };
            assert!((by_in - short_in).abs() < 1e-12, "{by_in}");
        }
        // Neither helps alone.
        assert_eq!(found.ways, []);
    }

    #[test]
    fn a_rounded_way_still_leads_out() {
        // To 5/8 in on a tape of eighths and of quarters; down to 3/4 in on one of halves; a tilt never down.
        let height = |by_in: f64, to_in: f64, far_in: Option<f64>| Way::Height {
            id: 0,
            to_in,
            by_in,
            far_in,
        };
        let rounded = |by_in, to_in, far_in, step_in| {
            let Way::Height { to_in, .. } = height(by_in, to_in, far_in).rounded_on(step_in, 0.01)
            else {
                panic!("a height stays one")
            };
            to_in
        };
        assert_eq!(rounded(0.125, 0.625, None, 0.125), 0.625);
        assert_eq!(rounded(0.125, 0.625, None, 0.25), 0.75);
        assert_eq!(rounded(-0.25, 0.75, None, 0.5), 0.5);
        // A height to meet with an end on the other side: a finer step where a whole one passes it, or none.
        assert_eq!(rounded(0.1, 0.6, Some(0.9), 0.25), 0.75);
        assert_eq!(rounded(0.1, 0.6, Some(0.63), 0.25), 0.625);
        assert_eq!(rounded(-0.1, 0.6, Some(0.56), 0.25), 0.5625);
        assert_eq!(rounded(0.1, 0.61234, Some(0.61234), 0.25), 0.61234);
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
