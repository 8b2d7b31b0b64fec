//! The old floor as a surface: triangles between the spots, linear on each.

mod facts;
mod index;
mod profile;
mod triangulate;

use crate::order::Order;
use serde::Serialize;
use thiserror::Error;

use super::geometry::{Outline, Point, SAME_PLACE};
use index::Lazy;

pub use facts::{BestFit, Facts, Reached};
pub use profile::ProfilePoint;

/// A spot read on the old floor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Spot {
    /// Where it is.
    pub at: Point,
    /// Its height above the datum, inches; higher is larger.
    pub height_in: f64,
}

/// A corner of the surface's triangles: a spot, or a corner of the room that had no reading of its own.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Vertex {
    /// Where it is.
    pub at: Point,
    /// Its height above the datum, inches.
    pub height_in: f64,
    /// For a corner without a reading: the index of the spot whose height it takes.
    pub assumed_from: Option<usize>,
}

/// The old floor: a constrained Delaunay triangulation of the outline and the spots.
///
/// `vertices` holds the spots in their order, then the corners without a reading in the outline's order.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Surface {
    /// The room.
    pub outline: Outline,
    /// Spots, then added corners.
    pub vertices: Vec<Vertex>,
    /// Indexes into `vertices`, counter-clockwise, the smallest first; in ascending order.
    pub triangles: Vec<[usize; 3]>,
    /// How many of the vertices are spots.
    pub spot_count: usize,
    /// Finds triangles by place; made at the first question that needs it.
    #[serde(skip)]
    index: Lazy,
}

/// The fewest spots that make a surface.
pub const FEWEST_SPOTS: usize = 3;

/// The most spots a survey may have.
pub const MOST_SPOTS: usize = 10_000;

/// The farthest a reading may lie above or below the datum, inches: 10 ft, taller than the staff that reads it.
pub const FARTHEST_HEIGHT_IN: f64 = 120.0;

/// Spots whose band is no wider than this share of its length are in one line: no tilt can be told from them.
pub const ONE_LINE: f64 = 1e-6;

/// Why spots do not make a surface. Spots are numbered from 0 in the order given.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum SurfaceRefusal {
    /// Fewer than [`FEWEST_SPOTS`].
    #[error("a surface needs at least {FEWEST_SPOTS} spots, not {given}")]
    TooFew {
        /// How many were given.
        given: usize,
    },
    /// More than [`MOST_SPOTS`].
    #[error("a survey has at most {MOST_SPOTS} spots, not {given}")]
    TooMany {
        /// How many were given.
        given: usize,
    },
    /// A place or a height that isn't a number.
    #[error("spot {spot} has a place or a height that is not a number")]
    NotANumber {
        /// Index of the spot.
        spot: usize,
    },
    /// A height more than [`FARTHEST_HEIGHT_IN`] from the datum.
    #[error("spot {spot} is {height_in} in from the datum, more than {FARTHEST_HEIGHT_IN} in")]
    TooFarFromDatum {
        /// Index of the spot.
        spot: usize,
        /// Its height, inches.
        height_in: f64,
    },
    /// A spot outside the room.
    #[error("spot {spot} is {by_in} in outside the room")]
    Outside {
        /// Index of the spot.
        spot: usize,
        /// Its distance from the nearest wall, inches.
        by_in: f64,
    },
    /// Two spots at one place, whether their heights agree or not.
    #[error("spots {first} and {second} are at the same place")]
    SamePlace {
        /// Index of the earlier spot.
        first: usize,
        /// Index of the later spot.
        second: usize,
    },
    /// All spots in one line.
    #[error("all spots are in one line, from spot {first} to spot {last}")]
    OneLine {
        /// Index of the spot at one end.
        first: usize,
        /// Index of the spot at the other end.
        last: usize,
    },
    /// Walls and spots so close together that no triangles could be drawn; the spot nearest to a wall without being on it.
    #[error("no triangles can be drawn near spot {spot}")]
    TooTight {
        /// Index of the spot.
        spot: usize,
    },
}

impl Surface {
    /// The surface through the spots of a room.
    ///
    /// A corner of the room without a spot of its own takes the height of the nearest spot (of two equally
    /// near, the earlier). The triangles are the constrained Delaunay triangulation with the walls as
    /// constraints; where four or more vertices lie on one circle, as on every square of a grid, that polygon is
    /// cut as a fan from its vertex with the smallest x, then the smallest y, so that two people who work from
    /// the same spots get the same volume.
    ///
    /// # Errors
    /// See [`SurfaceRefusal`]: every variant but the counts names the spot. Two spots nearer to each other than
    /// a billionth part of the room, roughly, are at one place.
    ///
    /// ```
    /// use calc::floor::{Outline, Point, Spot, Surface};
    /// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
    /// let room = Outline::new(corners.to_vec())?;
    /// // A floor that rises 1/2 in over 5 ft.
    /// let spots = corners.map(|at| Spot { at, height_in: at.x_in / 120.0 });
    /// let floor = Surface::new(&room, &spots)?;
    /// assert_eq!(floor.triangles, [[0, 1, 2], [0, 2, 3]]);
    /// assert_eq!(floor.facts().mean_height_in, 0.25);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(outline: &Outline, spots: &[Spot]) -> Result<Self, SurfaceRefusal> {
        check_numbers(spots)?;
        let walls = Walls::new(outline);
        let on_wall = places_on_walls(outline, &walls, spots)?;
        let apart_in = 4.0 * outline.tolerance_in();
        let mut vertices: Vec<Vertex> = spots
            .iter()
            .map(|spot| Vertex {
                at: tidy(spot.at),
                height_in: spot.height_in,
                assumed_from: None,
            })
            .collect();
        // The vertices along each wall, by their distance from its start.
        let mut chains: Vec<Vec<(f64, usize)>> = vec![Vec::new(); outline.corners().len()];
        let mut corner_vertices = Vec::with_capacity(outline.corners().len());
        for corner in outline.corners() {
            let (spot, distance_in) = nearest_spot(spots, *corner);
            if distance_in <= outline.tolerance_in() {
                corner_vertices.push(spot);
            } else {
                corner_vertices.push(vertices.len());
                let height_in = spots.get(spot).map_or(0.0, |spot| spot.height_in);
                vertices.push(Vertex {
                    at: tidy(*corner),
                    height_in,
                    assumed_from: Some(spot),
                });
            }
        }
        for (spot, place) in on_wall.iter().enumerate() {
            if let Some((wall, along_in)) = place
                && !corner_vertices.contains(&spot)
                && let Some(chain) = chains.get_mut(*wall)
            {
                chain.push((*along_in, spot));
            }
        }
        let mut edges = Vec::new();
        let ends = corner_vertices
            .iter()
            .zip(corner_vertices.iter().cycle().skip(1));
        for (chain, (start, end)) in chains.iter_mut().zip(ends) {
            chain.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            let mut from = *start;
            for to in chain.iter().map(|(_, spot)| *spot).chain([*end]) {
                edges.push([from, to]);
                from = to;
            }
        }

        let places: Vec<Point> = vertices.iter().map(|vertex| vertex.at).collect();
        let size_in = outline.size_in();
        let free = triangulate::free_triangles(&places, &edges, size_in, apart_in);
        if free.is_none() {
            check_places(spots, apart_in)?;
        }
        check_line(spots)?;
        let Some(triangles) = free.or_else(|| triangulate::triangles(&places, &edges, size_in))
        else {
            return Err(SurfaceRefusal::TooTight {
                spot: tightest(outline, spots, &on_wall),
            });
        };
        Ok(Self {
            outline: outline.clone(),
            vertices,
            triangles,
            spot_count: spots.len(),
            index: Lazy::default(),
        })
    }

    /// The three corners of each triangle.
    pub fn corners(&self) -> impl Iterator<Item = [Vertex; 3]> + '_ {
        self.triangles
            .iter()
            .filter_map(|triangle| self.corners_of(triangle))
    }

    /// The three corners of one triangle.
    fn corners_of(&self, [a, b, c]: &[usize; 3]) -> Option<[Vertex; 3]> {
        Some([
            *self.vertices.get(*a)?,
            *self.vertices.get(*b)?,
            *self.vertices.get(*c)?,
        ])
    }
}

/// A wall made ready for many questions.
struct Walls(Vec<(super::geometry::Wall, f64)>);

impl Walls {
    fn new(outline: &Outline) -> Self {
        Self(
            outline
                .walls()
                .map(|wall| (wall, wall.length_in()))
                .collect(),
        )
    }

    /// The wall on which a point lies, and how far along; of two, the nearer, then the first.
    fn place(&self, point: Point, tolerance_in: f64) -> Option<(usize, f64)> {
        let mut nearest: Option<(f64, usize, f64)> = None;
        for (index, (wall, length_in)) in self.0.iter().enumerate() {
            let (dx, dy) = (
                wall.end.x_in - wall.start.x_in,
                wall.end.y_in - wall.start.y_in,
            );
            let (px, py) = (point.x_in - wall.start.x_in, point.y_in - wall.start.y_in);
            let off = (dx * py - dy * px).abs();
            if off > tolerance_in * length_in {
                continue;
            }
            let along_in = (dx * px + dy * py) / length_in;
            if along_in < -tolerance_in || along_in > length_in + tolerance_in {
                continue;
            }
            if nearest.is_none_or(|(least, ..)| off / length_in < least) {
                nearest = Some((off / length_in, index, along_in));
            }
        }
        nearest.map(|(_, wall, along_in)| (wall, along_in))
    }
}

/// Counts and numbers.
fn check_numbers(spots: &[Spot]) -> Result<(), SurfaceRefusal> {
    if spots.len() < FEWEST_SPOTS {
        return Err(SurfaceRefusal::TooFew { given: spots.len() });
    }
    if spots.len() > MOST_SPOTS {
        return Err(SurfaceRefusal::TooMany { given: spots.len() });
    }
    for (spot, Spot { at, height_in }) in spots.iter().enumerate() {
        if !(at.x_in.is_finite() && at.y_in.is_finite() && height_in.is_finite()) {
            return Err(SurfaceRefusal::NotANumber { spot });
        }
        if height_in.abs() > FARTHEST_HEIGHT_IN {
            return Err(SurfaceRefusal::TooFarFromDatum {
                spot,
                height_in: *height_in,
            });
        }
    }
    Ok(())
}

/// For each spot, the wall it is on and how far along, if it is on one.
fn places_on_walls(
    outline: &Outline,
    walls: &Walls,
    spots: &[Spot],
) -> Result<Vec<Option<(usize, f64)>>, SurfaceRefusal> {
    let tolerance_in = outline.tolerance_in();
    let mut places = Vec::with_capacity(spots.len());
    for (spot, Spot { at, .. }) in spots.iter().enumerate() {
        let place = walls.place(*at, tolerance_in);
        if place.is_none() && !outline.contains(*at) {
            return Err(SurfaceRefusal::Outside {
                spot,
                by_in: outline.nearest_wall(*at).distance_in,
            });
        }
        places.push(place);
    }
    Ok(places)
}

/// No two spots at one place.
fn check_places(spots: &[Spot], tolerance_in: f64) -> Result<(), SurfaceRefusal> {
    // Sorted along a direction in which no grid lines up, so that few neighbours in the order are near.
    let along = |point: Point| 0.824_637 * point.x_in + 0.565_657 * point.y_in;
    let mut order: Vec<(f64, usize, Point)> = spots
        .iter()
        .enumerate()
        .map(|(spot, given)| (along(given.at), spot, given.at))
        .collect();
    order.order_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let mut found: Option<(usize, usize)> = None;
    for (rank, (from, spot, at)) in order.iter().enumerate() {
        for (to, other, other_at) in order.iter().skip(rank + 1) {
            if to - from > tolerance_in {
                break;
            }
            if at.distance_in(*other_at) <= tolerance_in {
                let pair = ((*spot).min(*other), (*spot).max(*other));
                if found.is_none_or(|least| (pair.1, pair.0) < (least.1, least.0)) {
                    found = Some(pair);
                }
            }
        }
    }
    found.map_or(Ok(()), |(first, second)| {
        Err(SurfaceRefusal::SamePlace { first, second })
    })
}

/// Not all spots in one line.
fn check_line(spots: &[Spot]) -> Result<(), SurfaceRefusal> {
    let farthest = |from: Point| {
        let (mut far, mut beyond_in2) = ((0, from, 0.0), 0.0);
        for (spot, Spot { at, .. }) in spots.iter().enumerate() {
            if square_in2(from, *at) < beyond_in2 {
                continue;
            }
            let distance_in = from.distance_in(*at);
            if distance_in > far.2 {
                far = (spot, *at, distance_in);
                beyond_in2 = distance_in * distance_in * (1.0 - 1e-12);
            }
        }
        far
    };
    let Some(any) = spots.first() else {
        return Ok(());
    };
    let (first, start, _) = farthest(any.at);
    let (last, end, length_in) = farthest(start);
    let off = |spot: &Spot| super::geometry::cross(start, end, spot.at) / length_in;
    let (low, high) = spots
        .iter()
        .map(off)
        .fold((0.0_f64, 0.0_f64), |(low, high), d| {
            (low.min(d), high.max(d))
        });
    if high - low <= ONE_LINE * length_in {
        return Err(SurfaceRefusal::OneLine {
            first: first.min(last),
            last: first.max(last),
        });
    }
    Ok(())
}

/// The spot nearest to a point and its distance, inches; of two equally near, the earlier.
fn nearest_spot(spots: &[Spot], to: Point) -> (usize, f64) {
    nearest(spots.iter().map(|spot| spot.at), to)
}

/// The place nearest to a point and its distance, inches; of two equally near, the earlier.
pub(super) fn nearest(places: impl Iterator<Item = Point>, to: Point) -> (usize, f64) {
    let (mut nearest, mut within_in2) = ((0, f64::INFINITY), f64::INFINITY);
    for (place, at) in places.enumerate() {
        // The square is quicker than the distance, which decides where they are close.
        if square_in2(at, to) > within_in2 {
            continue;
        }
        let distance_in = at.distance_in(to);
        if distance_in < nearest.1 {
            nearest = (place, distance_in);
            within_in2 = distance_in * distance_in * (1.0 + 1e-12);
        }
    }
    nearest
}

/// The square of the distance between two points.
fn square_in2(a: Point, b: Point) -> f64 {
    let (x, y) = (a.x_in - b.x_in, a.y_in - b.y_in);
    x * x + y * y
}

/// The spot nearest to a wall without being on it: where a triangulation would fail, if anywhere.
fn tightest(outline: &Outline, spots: &[Spot], on_wall: &[Option<(usize, f64)>]) -> usize {
    let mut nearest = (0, f64::INFINITY);
    for (spot, (given, place)) in spots.iter().zip(on_wall).enumerate() {
        let distance_in = outline.nearest_wall(given.at).distance_in;
        if place.is_none() && distance_in < nearest.1 {
            nearest = (spot, distance_in);
        }
    }
    nearest.0
}

/// A coordinate too small to matter is zero: the exact predicates refuse numbers near the end of the range.
fn tidy(at: Point) -> Point {
    let flat = |value: f64| {
        if value.abs() < SAME_PLACE * SAME_PLACE {
            0.0
        } else {
            value
        }
    };
    Point::new(flat(at.x_in), flat(at.y_in))
}

#[cfg(test)]
mod tests;
