//! Filling only the lows: how much, and where, until the straightedge limits are met.
//!
//! Vertices are raised, none is lowered, and the fill is straight between them. Every straightedge position found
//! to be too hollow demands that the floor under it rise by so much, or its supports by so much less; the least
//! volume that meets all demands is a linear programme. The floor with that fill is searched again, and so on until
//! the search that judges a floor finds nothing above a limit.
//!
//! It is an estimate from the spots read: what lies between them is not known, the fill is shaped by the triangles
//! between the spots and feathers out to nothing at the next spot, and lines that the search did not try may be
//! hollower. The straightedge has the last word.

use crate::order::Order;
use serde::Serialize;

use super::super::surface::Surface;
use super::least_fill::LeastFill;
use super::limits::{Limit, Measure, Verdict, judge_limits, limits_for, within};
use super::patch_place::{PatchPlace, places};
use super::straightedge::{Gap, StraightedgeRefusal};
use super::walker::{Crossing, Walker};
use super::worst::{Laid, Top, worst_with};
use crate::job::Finish;
use crate::quantity::IN3_PER_FT3;
use crate::working::{Figure, Source, Step, Unit};

/// How far below a limit the fill aims, as a share of the limit, so that the search comes to an end.
pub const AIM_BELOW: f64 = 0.005;

/// The most rounds of searching and filling; then hollows are raised one by one.
const MOST_ROUNDS: usize = 60;

/// The most rounds of raising what is hollow, once the rounds of the least fill have run out.
const MOST_RAISES: usize = 80;

/// The most demands taken from one search.
const MOST_DEMANDS: usize = 40;

/// The most demands kept before those met with room to spare are forgotten.
const MOST_KEPT: usize = 300;

/// The most steps of the linear programme in one round.
const MOST_PIVOTS: usize = 4000;

/// The least patching found that meets the limits.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Patch {
    /// How much each vertex of the surface is raised, inches.
    pub fill_in: Vec<f64>,
    /// Volume of the fill, cubic inches.
    pub volume_in3: f64,
    /// Volume of the fill, cubic feet.
    pub volume_ft3: f64,
    /// Area of the triangles that the fill touches, square feet.
    pub area_ft2: f64,
    /// The greatest depth of the fill, inches.
    pub deepest_in: f64,
    /// Each patch by itself, largest volume first; empty where the floor meets the limits as it is.
    pub places: Vec<PatchPlace>,
    /// What the limits say of the floor once filled: all pass.
    pub verdicts: Vec<Verdict>,
    /// Volume of filling the room to its highest spot, for comparison, cubic feet.
    pub level_fill_ft3: f64,
    /// Whether the volume is the least for the lines tried, but for [`AIM_BELOW`]. If not, the search was cut short,
    /// the hollows left were raised each by itself, and if need be a share of the level fill was mixed in: the limits
    /// are met, with more than needed.
    pub least: bool,
    /// How the volume comes about.
    pub steps: Vec<Step>,
}

/// The least patching found that makes a floor flat enough for a finish, without pouring all of it.
///
/// `effort` as for [`worst_gap`](super::worst_gap). See the head of this module for what the estimate rests on.
///
/// # Errors
/// As for [`worst_gap`](super::worst_gap).
///
/// # Example
/// One spot 3/8 in low in a 10 ft by 10 ft room, for small tile: 1/4 in under 10 ft is allowed, so the spot is raised
/// by 1/8 in, and the volume is that of a pyramid 1/8 in high over the room: 600 in3.
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface};
/// use calc::floor::flatness::{USUAL_EFFORT, patch_for};
/// use calc::job::Finish;
/// let corners = [(0.0, 0.0), (120.0, 0.0), (120.0, 120.0), (0.0, 120.0)].map(|(x, y)| Point::new(x, y));
/// let mut spots: Vec<Spot> = corners.iter().map(|&at| Spot { at, height_in: 0.0 }).collect();
/// spots.push(Spot { at: Point::new(60.0, 60.0), height_in: -0.375 });
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// let patch = patch_for(&floor, Finish::TileSmall, USUAL_EFFORT)?;
/// assert!((patch.fill_in[4] - 0.125).abs() < 0.002);
/// assert!((patch.volume_in3 - 600.0).abs() < 10.0);
/// assert!(patch.verdicts.iter().all(|verdict| verdict.passes));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn patch_for(
    surface: &Surface,
    finish: Finish,
    effort: usize,
) -> Result<Patch, StraightedgeRefusal> {
    patch_to(surface, &limits_for(finish), effort)
}

/// The least patching found that meets given straightedge limits; rows that are no straightedge limit are passed over.
///
/// # Errors
/// As for [`worst_gap`](super::worst_gap).
pub fn patch_to(
    surface: &Surface,
    limits: &[Limit],
    effort: usize,
) -> Result<Patch, StraightedgeRefusal> {
    let walker = Walker::new(surface).ok_or(StraightedgeRefusal::NoFloor)?;
    let floor = Floor::new(surface, &walker, effort);
    let straightedges: Vec<(f64, f64)> = limits
        .iter()
        .filter(|limit| limit.measure == Measure::Gap)
        .filter_map(|limit| {
            limit
                .straightedge_in
                .map(|length_in| (length_in, limit.max_gap_in))
        })
        .collect();
    let (mut fill_in, mut least) = floor.least_fill(&straightedges)?;
    if !least {
        fill_in = floor.raise_hollows(fill_in, &straightedges)?;
        fill_in = floor.blend(fill_in, &straightedges)?;
    }
    if floor.volume_in3(&fill_in) > floor.volume_in3(&floor.level_in) {
        (fill_in, least) = (floor.level_in.clone(), false);
    }
    let filled_in = floor.filled_in(&fill_in);
    let verdicts = judge_limits(surface, Top::Filled(&filled_in), limits, effort)?;
    Ok(floor.patch(fill_in, least, verdicts))
}

/// The floor with what every round needs.
struct Floor<'a> {
    surface: &'a Surface,
    walker: &'a Walker,
    effort: usize,
    old_in: Vec<f64>,
    /// What fills each vertex to the height of the highest, inches: then no straightedge finds a gap.
    level_in: Vec<f64>,
    /// Volume of one inch of fill at each vertex: a third of the triangles at it, in2.
    cost_in2: Vec<f64>,
}

/// That the fills, each times its factor, sum to `least` inches or more.
struct Demand {
    /// Vertex and factor.
    factors: Vec<(usize, f64)>,
    least_in: f64,
    /// How far the gap is above the limit, inches.
    excess_in: f64,
    /// The edge that the gap is at.
    gap_at: (usize, usize),
}

impl<'a> Floor<'a> {
    fn new(surface: &'a Surface, walker: &'a Walker, effort: usize) -> Self {
        let old_in: Vec<f64> = surface
            .vertices
            .iter()
            .map(|vertex| vertex.height_in)
            .collect();
        let highest_in = old_in.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let level_in = old_in
            .iter()
            .map(|height_in| highest_in - height_in)
            .collect();
        let cost_in2 = (0..old_in.len())
            .map(|vertex| {
                walker
                    .star(vertex)
                    .iter()
                    .map(|&t| walker.area_in2(t))
                    .sum::<f64>()
                    / 3.0
            })
            .collect();
        Self {
            surface,
            walker,
            effort,
            old_in,
            level_in,
            cost_in2,
        }
    }

    fn filled_in(&self, fill_in: &[f64]) -> Vec<f64> {
        self.old_in
            .iter()
            .zip(fill_in)
            .map(|(old_in, fill_in)| old_in + fill_in)
            .collect()
    }

    fn volume_in3(&self, fill_in: &[f64]) -> f64 {
        fill_in
            .iter()
            .zip(&self.cost_in2)
            .map(|(fill_in, cost_in2)| fill_in * cost_in2)
            .sum()
    }

    /// The least fill, and whether it meets the limits; if not, the rounds ran out.
    fn least_fill(
        &self,
        straightedges: &[(f64, f64)],
    ) -> Result<(Vec<f64>, bool), StraightedgeRefusal> {
        let mut programme = LeastFill::new(self.cost_in2.clone());
        let mut fill_in = vec![0.0; self.old_in.len()];
        for _ in 0..MOST_ROUNDS {
            let filled_in = self.filled_in(&fill_in);
            let mut met = true;
            for &(length_in, limit_in) in straightedges {
                let demands = self.demands(&filled_in, length_in, limit_in)?;
                met &= demands.is_empty();
                for demand in telling(demands) {
                    programme.demand(&demand.factors, demand.least_in);
                }
            }
            if met {
                return Ok((fill_in, true));
            }
            if !programme.solve(MOST_PIVOTS) {
                break;
            }
            fill_in = programme.fills_in();
            if programme.demands() > MOST_KEPT {
                programme.forget_slack();
            }
        }
        Ok((fill_in, false))
    }

    /// What the lines tried on the filled floor demand, worst first.
    fn demands(
        &self,
        filled_in: &[f64],
        length_in: f64,
        limit_in: f64,
    ) -> Result<Vec<Demand>, StraightedgeRefusal> {
        let mut all = Vec::new();
        let mut see = |laid: &Laid<'_>| {
            if !within(laid.gap.gap_in, limit_in) {
                all.extend(self.demand(laid.gap, laid.crossings, limit_in));
            }
        };
        worst_with(
            self.walker,
            self.surface,
            filled_in,
            None,
            length_in,
            self.effort,
            &mut see,
        )?;
        all.order_by(|a: &Demand, b: &Demand| b.excess_in.total_cmp(&a.excess_in));
        Ok(all)
    }

    fn demand(&self, gap: Gap, crossings: &[Crossing], limit_in: f64) -> Option<Demand> {
        let mut factors: Vec<(usize, f64)> = Vec::with_capacity(10);
        let span_in = gap.contact2_s_in - gap.contact1_s_in;
        let share = (gap.gap_at_s_in - gap.contact1_s_in) / span_in;
        let from_in = crossings.first()?.s_in;
        let at = [
            (gap.gap_at_s_in, 1.0),
            (gap.contact1_s_in, share - 1.0),
            (gap.contact2_s_in, -share),
        ];
        for (s_in, weight) in at {
            let s_in = from_in + s_in;
            let after = crossings
                .partition_point(|crossing| crossing.s_in < s_in)
                .clamp(1, crossings.len() - 1);
            let (a, b) = (crossings.get(after - 1)?, crossings.get(after)?);
            let along = ((s_in - a.s_in) / (b.s_in - a.s_in)).clamp(0.0, 1.0);
            for (crossing, part) in [(a, 1.0 - along), (b, along)] {
                factors.push((crossing.from, weight * part * (1.0 - crossing.share)));
                factors.push((crossing.to, weight * part * crossing.share));
            }
        }
        factors.order_by_key(|(vertex, _)| *vertex);
        factors.dedup_by(|next, sum| {
            let same = next.0 == sum.0;
            if same {
                sum.1 += next.1;
            }
            same
        });
        factors.retain(|(_, factor)| factor.abs() > 1e-9);
        let deepest = crossings
            .iter()
            .find(|crossing| crossing.s_in >= from_in + gap.gap_at_s_in - 1e-9)?;
        let old_gap_in: f64 = -factors
            .iter()
            .map(|&(vertex, factor)| factor * self.old_in[vertex])
            .sum::<f64>();
        Some(Demand {
            factors,
            least_in: old_gap_in - limit_in * (1.0 - AIM_BELOW),
            excess_in: gap.gap_in - limit_in,
            gap_at: (
                deepest.from,
                if deepest.share > 1e-9 {
                    deepest.to
                } else {
                    deepest.from
                },
            ),
        })
    }

    /// Raises what is hollow by what is too much, wherever it is found, for as many rounds as it takes: quicker than
    /// the least fill in very large surveys, and fills more.
    fn raise_hollows(
        &self,
        fill_in: Vec<f64>,
        straightedges: &[(f64, f64)],
    ) -> Result<Vec<f64>, StraightedgeRefusal> {
        let mut fill_in = fill_in;
        for _ in 0..MOST_RAISES {
            let filled_in = self.filled_in(&fill_in);
            let mut raise_in = vec![0.0_f64; fill_in.len()];
            for &(length_in, limit_in) in straightedges {
                for demand in self.demands(&filled_in, length_in, limit_in)? {
                    let (from, to) = demand.gap_at;
                    for vertex in [from, to] {
                        raise_in[vertex] =
                            raise_in[vertex].max(demand.excess_in + AIM_BELOW * limit_in);
                    }
                }
            }
            if raise_in.iter().all(|&raise_in| raise_in == 0.0) {
                break;
            }
            for (vertex, fill_in) in fill_in.iter_mut().enumerate() {
                *fill_in = (*fill_in + raise_in[vertex]).min(self.level_in[vertex].max(*fill_in));
            }
        }
        Ok(fill_in)
    }

    /// Mixes in the level fill: a share of it makes every gap smaller by that share.
    fn blend(
        &self,
        fill_in: Vec<f64>,
        straightedges: &[(f64, f64)],
    ) -> Result<Vec<f64>, StraightedgeRefusal> {
        let mut fill_in = fill_in;
        for _ in 0..8 {
            let filled_in = self.filled_in(&fill_in);
            let mut level_share = 0.0_f64;
            for &(length_in, limit_in) in straightedges {
                let worst = worst_with(
                    self.walker,
                    self.surface,
                    &filled_in,
                    None,
                    length_in,
                    self.effort,
                    &mut |_| {},
                )?;
                if !within(worst.gap_in, limit_in) {
                    level_share =
                        level_share.max(1.0 - (1.0 - AIM_BELOW) * limit_in / worst.gap_in);
                }
            }
            if level_share == 0.0 {
                return Ok(fill_in);
            }
            for (fill_in, level_in) in fill_in.iter_mut().zip(&self.level_in) {
                *fill_in += level_share * (level_in - *fill_in).max(0.0);
            }
        }
        Ok(self.level_in.clone())
    }

    fn patch(&self, fill_in: Vec<f64>, least: bool, verdicts: Vec<Verdict>) -> Patch {
        let places = places(self.walker, &self.cost_in2, &fill_in);
        let volume_in3 = self.volume_in3(&fill_in);
        let area_ft2 = places.iter().map(|place| place.area_ft2).sum();
        let figure = |name, value, unit| Figure { name, value, unit };
        let level_fill_ft3 = self.volume_in3(&self.level_in) / IN3_PER_FT3;
        let volume_ft3 = volume_in3 / IN3_PER_FT3;
        let step = |(index, place): (usize, &PatchPlace)| Step {
            formula: "patch_mean_depth",
            inputs: vec![
                figure("patch", (index + 1) as f64, Unit::Count),
                figure("volume", place.volume_ft3, Unit::Ft3),
                figure("area", place.area_ft2, Unit::Ft2),
            ],
            result: figure(
                "mean_depth",
                12.0 * place.volume_ft3 / place.area_ft2,
                Unit::In,
            ),
            source: Source::Arithmetic,
        };
        let mut steps: Vec<Step> = places.iter().enumerate().map(step).collect();
        steps.push(Step {
            formula: "patch_volume",
            inputs: places
                .iter()
                .map(|place| figure("volume", place.volume_ft3, Unit::Ft3))
                .collect(),
            result: figure("volume", volume_ft3, Unit::Ft3),
            source: Source::Arithmetic,
        });
        Patch {
            deepest_in: fill_in.iter().copied().fold(0.0, f64::max),
            fill_in,
            volume_in3,
            volume_ft3,
            area_ft2,
            places,
            verdicts,
            level_fill_ft3,
            least,
            steps,
        }
    }
}

/// The demands worth stating at once: the worst, and of those over one place only a few, which say as much as many.
fn telling(demands: Vec<Demand>) -> Vec<Demand> {
    let mut kept: Vec<Demand> = Vec::new();
    for demand in demands {
        if kept.len() == MOST_DEMANDS {
            break;
        }
        if kept
            .iter()
            .filter(|other| other.gap_at == demand.gap_at)
            .count()
            < 4
        {
            kept.push(demand);
        }
    }
    kept
}

#[cfg(test)]
#[path = "patch_tests.rs"]
mod tests;
