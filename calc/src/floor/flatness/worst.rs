//! The worst place found for a straightedge in the whole room.
//!
//! There is no end to the lines in a room; this is a search, not a proof. It lays the straightedge
//! - along every wall, from corner to corner across the room, and along lines of the survey's grid both ways;
//! - through the low spots in many directions, and through pairs of notable spots;
//! - then turns and shifts the worst lines found, by less and less, as long as that makes them worse;
//! - and follows the worst of them to the end of the ridges of the gap, to about a millionth of an inch.
//!
//! The answer is never less than the gap on any line of the first kind. The same question gets the same answer.

mod ridge;

use crate::order::Order;
use serde::Serialize;

use super::super::geometry::Point;
use super::super::plane::Plane;
use super::super::surface::Surface;
use super::notable::Notable;
use super::straightedge::{Gap, NO_GAP_IN, ProfilePoint, StraightedgeRefusal, gap_along};
use super::walker::{Crossing, Line, Walker, profile_over};

/// Lines tried by default, beyond those that are always checked.
pub const USUAL_EFFORT: usize = 600;

/// The most lines of the survey's grid that are checked each way.
const MOST_GRID_LINES: usize = 24;

/// Lines that are turned and shifted at the end.
const REFINED: usize = 6;

/// What lies on the old floor while the straightedge is laid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Top<'a> {
    /// Nothing: the old floor itself.
    OldFloor,
    /// The old floor with its vertices at these heights instead, inches, one for each vertex.
    Filled(&'a [f64]),
    /// A pour with this top, where it stands above the old floor. Where it covers every vertex, its top is a
    /// plane and the gap is 0 by geometry, whatever the old floor is like; how flat a real pour cures is up to
    /// the material and the hand.
    Poured(Plane),
}

impl<'a> Top<'a> {
    /// Heights of the vertices, and the plane over them.
    pub(super) fn heights_and_lid(self, old_in: &'a [f64]) -> (&'a [f64], Option<Plane>) {
        match self {
            Self::OldFloor => (old_in, None),
            Self::Filled(filled_in) => (filled_in, None),
            Self::Poured(plane) => (old_in, Some(plane)),
        }
    }
}

/// The worst gap found, and where it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WorstGap {
    /// From the straightedge down to the floor, inches; 0 if no line tried has a dip.
    pub gap_in: f64,
    /// The straightedge's length, inches.
    pub straightedge_in: f64,
    /// The length of it in use: cut to the line where that is shorter, inches.
    pub window_in: f64,
    /// Where the line begins, at a wall.
    pub from: Point,
    /// Where it ends, at a wall.
    pub to: Point,
    /// Where the straightedge rests first.
    pub contact1: Point,
    /// Where the gap is.
    pub gap_at: Point,
    /// Where it rests the second time.
    pub contact2: Point,
    /// Height at the first contact, inches.
    pub contact1_height_in: f64,
    /// Height of the floor in the gap, inches.
    pub gap_at_height_in: f64,
    /// Height at the second contact, inches.
    pub contact2_height_in: f64,
    /// How many lines were tried.
    pub lines_tried: usize,
}

/// The worst gap found under a straightedge of `length_in` inches laid anywhere in the room.
///
/// `effort` is roughly the number of lines tried beyond those always checked; [`USUAL_EFFORT`] serves. The gap is
/// exact for the line it is on; another line may be worse, by little on floors as they are surveyed.
///
/// # Errors
/// - [`StraightedgeRefusal::NoLength`] if the length is not a number above zero;
/// - [`StraightedgeRefusal::OutOfOrder`] if `top` doesn't give every vertex a height that is a number;
/// - [`StraightedgeRefusal::NoFloor`] if the surface has no triangles.
///
/// # Example
/// A 10 ft by 10 ft floor with one spot in the middle 3/8 in low.
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface};
/// use calc::floor::flatness::{Top, USUAL_EFFORT, worst_gap};
/// let corners = [(0.0, 0.0), (120.0, 0.0), (120.0, 120.0), (0.0, 120.0)].map(|(x, y)| Point::new(x, y));
/// let mut spots: Vec<Spot> = corners.iter().map(|&at| Spot { at, height_in: 0.0 }).collect();
/// spots.push(Spot { at: Point::new(60.0, 60.0), height_in: -0.375 });
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// let worst = worst_gap(&floor, Top::OldFloor, 120.0, USUAL_EFFORT)?;
/// assert!((worst.gap_in - 0.375).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn worst_gap(
    surface: &Surface,
    top: Top<'_>,
    length_in: f64,
    effort: usize,
) -> Result<WorstGap, StraightedgeRefusal> {
    let walker = Walker::new(surface).ok_or(StraightedgeRefusal::NoFloor)?;
    let old_in: Vec<f64> = surface
        .vertices
        .iter()
        .map(|vertex| vertex.height_in)
        .collect();
    let (heights_in, lid) = top.heights_and_lid(&old_in);
    worst_with(
        &walker,
        surface,
        heights_in,
        lid,
        length_in,
        effort,
        &mut |_| {},
    )
}

/// A line laid on the floor with the gap on it.
pub(super) struct Laid<'a> {
    pub gap: Gap,
    pub crossings: &'a [Crossing],
}

/// [`worst_gap`] with a walker at hand; every line tried is shown to `see`.
pub(super) fn worst_with(
    walker: &Walker,
    surface: &Surface,
    heights_in: &[f64],
    lid: Option<Plane>,
    length_in: f64,
    effort: usize,
    see: &mut dyn FnMut(&Laid<'_>),
) -> Result<WorstGap, StraightedgeRefusal> {
    if !(length_in > 0.0 && length_in.is_finite()) {
        return Err(StraightedgeRefusal::NoLength {
            given_in: length_in,
        });
    }
    let points = walker.points();
    if let Some(index) =
        (0..points.len()).find(|&v| !heights_in.get(v).is_some_and(|height| height.is_finite()))
    {
        return Err(StraightedgeRefusal::OutOfOrder { index });
    }
    let mut search = Search {
        walker,
        heights_in,
        lid,
        length_in,
        crossings: Vec::new(),
        profile: Vec::new(),
        under_lid: Vec::new(),
        found: Vec::new(),
        near_in: (surface.outline.area_in2() / points.len() as f64).sqrt(),
        tried: 0,
        see,
    };
    search.along_walls_and_diagonals(surface);
    let covered = lid.is_some_and(|plane| {
        points
            .iter()
            .zip(heights_in)
            .all(|(&at, &height)| plane.height_in(at) >= height)
    });
    if !covered {
        search.along_grid_lines();
        let notable = Notable::among(walker, heights_in);
        search.through_lows(&notable, effort * 2 / 5);
        search.through_pairs(&notable, effort / 5);
        search.refine(effort * 2 / 5);
        search.polish();
    }
    search.answer().ok_or(StraightedgeRefusal::NoFloor)
}

/// A line with the worst gap on it.
#[derive(Clone, Copy, Debug)]
struct Found {
    line: Line,
    /// A triangle the line passes.
    start: usize,
    /// Where the line enters and leaves the room, in its own s, inches.
    from_in: f64,
    to_in: f64,
    /// Distances in it are measured from `from_in`.
    gap: Gap,
    /// Heights at the first contact, in the gap, at the second contact, inches.
    heights_in: [f64; 3],
}

impl Found {
    fn place(&self, s_in: f64) -> Point {
        self.line.point_at(self.from_in + s_in)
    }
}

struct Search<'a> {
    walker: &'a Walker,
    heights_in: &'a [f64],
    lid: Option<Plane>,
    length_in: f64,
    crossings: Vec<Crossing>,
    profile: Vec<ProfilePoint>,
    under_lid: Vec<ProfilePoint>,
    /// The worst lines, worst first, no two nearly the same.
    found: Vec<Found>,
    /// Usual distance between spots, inches.
    near_in: f64,
    tried: usize,
    see: &'a mut dyn FnMut(&Laid<'_>),
}

impl Search<'_> {
    /// Lays the straightedge along a line that passes the triangle `start`.
    fn lay(&mut self, line: Line, start: usize) -> Option<Found> {
        self.walker.follow(line, start, &mut self.crossings);
        if self.crossings.len() < 2 {
            return None;
        }
        self.tried += 1;
        profile_over(&self.crossings, self.heights_in, &mut self.profile);
        let from_in = self.crossings.first()?.s_in;
        if let Some(plane) = self.lid {
            let along_in = |s_in: f64| plane.height_in(line.point_at(from_in + s_in));
            cover_with(&self.profile, along_in, &mut self.under_lid);
            std::mem::swap(&mut self.profile, &mut self.under_lid);
        }
        let gap = gap_along(&self.profile, self.length_in);
        (self.see)(&Laid {
            gap,
            crossings: &self.crossings,
        });
        Some(Found {
            line,
            start,
            from_in,
            to_in: self.crossings.last()?.s_in,
            gap,
            heights_in: [gap.contact1_s_in, gap.gap_at_s_in, gap.contact2_s_in]
                .map(|s_in| height_at(&self.profile, s_in)),
        })
    }

    fn lay_and_keep(&mut self, line: Line, start: usize) -> Option<Found> {
        let found = self.lay(line, start)?;
        self.keep(found);
        Some(found)
    }

    /// Through a vertex, on the side on which the line passes triangles.
    fn lay_through(&mut self, line: Line, vertex: usize) -> Option<Found> {
        let ahead = self
            .walker
            .start_at_vertex(line, vertex)
            .map(|start| (line, start));
        let back = || {
            let line = line.reversed();
            self.walker
                .start_at_vertex(line, vertex)
                .map(|start| (line, start))
        };
        let (line, start) = ahead.or_else(back)?;
        self.lay_and_keep(line, start)
    }

    /// Keeps the worst lines, of those that are nearly the same only the worst.
    fn keep(&mut self, new: Found) {
        let alike = |old: &Found| {
            let turn = (old.line.dx * new.line.dy - old.line.dy * new.line.dx).abs();
            let apart_in = old
                .place(old.gap.gap_at_s_in)
                .distance_in(new.place(new.gap.gap_at_s_in));
            turn < 0.3 && apart_in < 0.75 * self.near_in
        };
        if let Some(at) = self.found.iter().position(alike) {
            if self.found[at].gap.gap_in >= new.gap.gap_in {
                return;
            }
            self.found.remove(at);
        }
        let rank = self
            .found
            .partition_point(|old| old.gap.gap_in >= new.gap.gap_in);
        self.found.insert(rank, new);
        self.found.truncate(REFINED);
    }

    fn along_walls_and_diagonals(&mut self, surface: &Surface) {
        let corners = surface.outline.corners();
        let vertex_at = |corner: Point| {
            let nearest = surface.vertices.iter().enumerate();
            nearest
                .map(|(vertex, v)| (v.at.distance_in(corner), vertex))
                .min_by(|a, b| a.0.total_cmp(&b.0))
                .map(|(_, vertex)| vertex)
        };
        let vertices: Vec<usize> = corners
            .iter()
            .filter_map(|&corner| vertex_at(corner))
            .collect();
        let points = self.walker.points();
        let count = vertices.len();
        for (i, &a) in vertices.iter().enumerate() {
            // In a room of many corners, only across it.
            let others = if count <= 8 {
                i + 1..count
            } else {
                i + count / 2..(i + count / 2 + 1).min(count)
            };
            let next = vertices.get((i + 1) % count).copied();
            let across = others.filter_map(|j| vertices.get(j).copied());
            for b in next.into_iter().chain(across.filter(|&b| Some(b) != next)) {
                // Against the sense of the walls, so that the room is on the line's right: see `walker`.
                if let Some(line) = Line::through(points[b], points[a]) {
                    self.lay_through(line, b);
                    // Beyond a corner that stands out into the room, the line from the other end is another one.
                    if count > 4 {
                        self.lay_through(
                            Line {
                                at: points[a],
                                ..line
                            }
                            .reversed(),
                            a,
                        );
                    }
                }
            }
        }
    }

    /// Lines parallel to the plan's sides through the survey's spots: all rows and columns of a small grid, evenly
    /// chosen ones otherwise.
    fn along_grid_lines(&mut self) {
        let points = self.walker.points();
        for upright in [false, true] {
            let split = |p: Point| {
                if upright {
                    (p.x_in, p.y_in)
                } else {
                    (p.y_in, p.x_in)
                }
            };
            let mut order: Vec<usize> = (0..points.len()).collect();
            order.order_by(|&a, &b| {
                let ((a0, a1), (b0, b1)) = (split(points[a]), split(points[b]));
                a0.total_cmp(&b0).then(a1.total_cmp(&b1))
            });
            let rows: Vec<&[usize]> = order
                .chunk_by(|&a, &b| split(points[b]).0 - split(points[a]).0 < NO_GAP_IN)
                .collect();
            let step = rows.len().div_ceil(MOST_GRID_LINES).max(1);
            for row in rows.iter().step_by(step) {
                let mut done_to = f64::NEG_INFINITY;
                for &vertex in *row {
                    let along = split(points[vertex]).1;
                    if along < done_to {
                        continue; // on the piece of this line laid already
                    }
                    let (dx, dy) = if upright { (0.0, 1.0) } else { (1.0, 0.0) };
                    let laid = self.lay_through(
                        Line {
                            at: points[vertex],
                            dx,
                            dy,
                        },
                        vertex,
                    );
                    if let Some(found) = laid {
                        let ends = [found.place(0.0), found.line.point_at(found.to_in)]
                            .map(|end| split(end).1);
                        done_to = ends[0].max(ends[1]) - NO_GAP_IN;
                    }
                }
            }
        }
    }

    fn through_lows(&mut self, notable: &Notable, lines: usize) {
        if notable.lows.is_empty() {
            return;
        }
        // At least 12 directions through each of the lowest; more where there are few.
        let lows = notable.lows.len().min((lines / 12).max(1));
        let directions = (lines / lows).clamp(12, 36);
        for &vertex in &notable.lows[..lows] {
            for k in 0..directions {
                let angle_rad = std::f64::consts::PI * (k as f64 + 0.25) / directions as f64;
                self.lay_through(
                    Line::towards(self.walker.points()[vertex], angle_rad),
                    vertex,
                );
            }
        }
    }

    /// Through pairs of vertices: all of them where they are few, otherwise the high ones with each other and with
    /// the low ones.
    fn through_pairs(&mut self, notable: &Notable, lines: usize) {
        let points = self.walker.points();
        let count = points.len();
        let pairs: Vec<(usize, usize)> = if count * (count - 1) / 2 <= lines.max(200) {
            (0..count)
                .flat_map(|a| (a + 1..count).map(move |b| (a, b)))
                .collect()
        } else {
            let side = (lines as f64 / 2.0).sqrt() as usize;
            let highs = &notable.highs[..side.min(notable.highs.len())];
            let lows = &notable.lows[..side.min(notable.lows.len())];
            let high_pairs = highs
                .iter()
                .enumerate()
                .flat_map(|(i, &a)| highs[i + 1..].iter().map(move |&b| (a, b)));
            let low_pairs = lows
                .iter()
                .flat_map(|&a| highs.iter().map(move |&b| (a, b)));
            high_pairs.chain(low_pairs).collect()
        };
        for (a, b) in pairs {
            if let Some(line) = Line::through(points[a], points[b]) {
                self.lay_through(line, a);
            }
        }
    }

    /// Turns and shifts the worst lines found while that makes them worse, then by half as much.
    fn refine(&mut self, lines: usize) {
        let begin = std::mem::take(&mut self.found);
        let share = lines / begin.len().max(1);
        let mut refined = Vec::with_capacity(begin.len());
        for mut best in begin {
            let stop = self.tried + share;
            self.snap(&mut best);
            let (mut turn_rad, mut shift_in) = (0.12, 0.4 * self.near_in);
            while self.tried < stop && turn_rad > 1e-5 {
                let before_in = best.gap.gap_in;
                for mv in 0..8 {
                    let sign = if mv % 2 == 0 { 1.0 } else { -1.0 };
                    let gap = best.gap;
                    let line =
                        match [gap.gap_at_s_in, gap.contact1_s_in, gap.contact2_s_in].get(mv / 2) {
                            Some(&pivot_in) => Line::towards(
                                best.place(pivot_in),
                                best.line.angle_rad() + sign * turn_rad,
                            ),
                            None => {
                                let at = best.place(gap.gap_at_s_in);
                                let by_in = sign * shift_in;
                                let at = Point::new(
                                    at.x_in - by_in * best.line.dy,
                                    at.y_in + by_in * best.line.dx,
                                );
                                Line { at, ..best.line }
                            }
                        };
                    self.improve(&mut best, line);
                }
                if best.gap.gap_in <= before_in + 1e-9 {
                    turn_rad *= 0.4;
                    shift_in *= 0.4;
                }
            }
            refined.push(best);
        }
        for found in refined {
            self.keep(found);
        }
    }

    /// Tries the lines through the vertices nearest to the contacts and the gap: ridges of the gap, seen as a
    /// function of the line, run through them.
    fn snap(&mut self, best: &mut Found) {
        let places = [
            best.gap.contact1_s_in,
            best.gap.gap_at_s_in,
            best.gap.contact2_s_in,
        ]
        .map(|s| best.place(s));
        let vertices = places.map(|place| self.nearest_vertex(place, best.start));
        for (a, b) in [(0, 1), (1, 2), (0, 2)] {
            if let (Some(a), Some(b)) = (vertices[a], vertices[b])
                && let Some(line) = Line::through(a, b)
            {
                self.improve(best, line);
            }
        }
    }

    fn nearest_vertex(&self, place: Point, hint: usize) -> Option<Point> {
        let triangle = self.walker.locate(place, hint)?;
        let corners = self.walker.triangles()[triangle].map(|vertex| self.walker.points()[vertex]);
        corners
            .into_iter()
            .min_by(|a, b| a.distance_in(place).total_cmp(&b.distance_in(place)))
    }

    /// The gap on a line, which becomes the best where it is worse; nothing less than any gap off the floor.
    fn improve(&mut self, best: &mut Found, line: Line) -> f64 {
        let Some(start) = self.walker.start_near(line, best.start) else {
            return -1.0;
        };
        let Some(found) = self.lay(line, start) else {
            return -1.0;
        };
        if found.gap.gap_in > best.gap.gap_in {
            *best = found;
        }
        found.gap.gap_in
    }

    fn answer(&self) -> Option<WorstGap> {
        let worst = self.found.first()?;
        let [contact1_height_in, gap_at_height_in, contact2_height_in] = worst.heights_in;
        Some(WorstGap {
            gap_in: worst.gap.gap_in,
            straightedge_in: self.length_in,
            window_in: worst.gap.window_in,
            from: worst.place(0.0),
            to: worst.line.point_at(worst.to_in),
            contact1: worst.place(worst.gap.contact1_s_in),
            gap_at: worst.place(worst.gap.gap_at_s_in),
            contact2: worst.place(worst.gap.contact2_s_in),
            contact1_height_in,
            gap_at_height_in,
            contact2_height_in,
            lines_tried: self.tried,
        })
    }
}

/// The floor's height at a distance along a profile, inches.
fn height_at(profile: &[ProfilePoint], s_in: f64) -> f64 {
    let after = profile
        .partition_point(|point| point.s_in < s_in)
        .clamp(1, profile.len() - 1);
    let (a, b) = (profile[after - 1], profile[after]);
    a.height_in + (b.height_in - a.height_in) * (s_in - a.s_in) / (b.s_in - a.s_in)
}

/// The higher of the floor and the top of a pour, with a breakpoint where they cross.
fn cover_with(
    floor: &[ProfilePoint],
    top_in: impl Fn(f64) -> f64,
    covered: &mut Vec<ProfilePoint>,
) {
    covered.clear();
    let mut before: Option<(f64, f64)> = None;
    for point in floor {
        let over_in = top_in(point.s_in) - point.height_in;
        if let Some((s_in, before_over_in)) = before
            && before_over_in * over_in < 0.0
        {
            let crossing_in =
                s_in + (point.s_in - s_in) * before_over_in / (before_over_in - over_in);
            if crossing_in > s_in + NO_GAP_IN && crossing_in < point.s_in - NO_GAP_IN {
                covered.push(ProfilePoint {
                    s_in: crossing_in,
                    height_in: top_in(crossing_in),
                });
            }
        }
        covered.push(ProfilePoint {
            s_in: point.s_in,
            height_in: point.height_in + over_in.max(0.0),
        });
        before = Some((point.s_in, over_in));
    }
}

#[cfg(test)]
#[path = "worst_tests.rs"]
mod tests;
