//! The part of a floor that is tiled, in the tiles' own directions, cut into trapezoids.
//!
//! A tile's sides lie along x and y here, so what is left of it between two level lines of a trapezoid is again a
//! trapezoid, and its area a sum of means times heights: exact, with no clip of one polygon by another, no bridges between
//! separate pieces, and obstacles that overlap cost nothing. A general polygon library (a second sweep, with its own trees
//! and queues) would be many times larger in the download; one checks the areas in the tests.

use super::ask::{Obstacle, TileAsk, TileRefusal};
use super::frame::{Extent, Frame};
use super::trapezoid::{Edge, Side, Trapezoid, trapezoids};
use crate::floor::geometry::{Outline, Point};
use crate::order::Order;

/// Lengths below this are rounding, inches: four orders below a sixty-fourth, six above the digits of a coordinate.
pub(super) const ROUNDING_IN: f64 = 1e-6;

/// The tiled field.
#[derive(Clone, Debug)]
pub(super) struct Field {
    pub frame: Frame,
    /// The box round it on the plan.
    pub plan: Extent,
    /// The box round it in the tiles' directions.
    pub extent: Extent,
    pub edges: Vec<Edge>,
    /// Between level lines, from the lowest.
    pub across: Vec<Trapezoid>,
    /// Likewise with x and y exchanged.
    pub along: Vec<Trapezoid>,
    pub area_in2: f64,
    rings: Vec<Vec<Point>>,
}

impl Field {
    pub fn new(ask: &TileAsk) -> Result<Self, TileRefusal> {
        let frame = Frame {
            turned_deg: ask.pattern.turned_deg(),
        };
        let inner = drawn_in(&ask.outline, ask.edge_gap_in)?;
        let mut rings = vec![inner.corners().to_vec()];
        for (index, obstacle) in ask.obstacles.iter().enumerate() {
            rings.push(grown(index, obstacle, ask.edge_gap_in)?);
        }
        let plan = Extent::of(inner.corners());
        for ring in &mut rings {
            for corner in ring.iter_mut() {
                *corner = frame.from_plan(*corner);
            }
        }
        let extent = Extent::of(rings.first().map_or(&[], Vec::as_slice));
        let mut field = Self {
            frame,
            plan,
            extent,
            edges: Vec::new(),
            across: Vec::new(),
            along: Vec::new(),
            area_in2: 0.0,
            rings,
        };
        field.edges = field.edge_pieces();
        field.across = trapezoids(&field.edges);
        let exchanged = |point: Point| Point::new(point.y_in, point.x_in);
        let turned: Vec<Edge> = field
            .edges
            .iter()
            .map(|edge| Edge {
                a: exchanged(edge.a),
                b: exchanged(edge.b),
                ..*edge
            })
            .collect();
        field.along = trapezoids(&turned);
        field.area_in2 = field.across.iter().map(Trapezoid::area).sum();
        if field.area_in2 <= ROUNDING_IN * ask.outline.size_in() {
            return Err(TileRefusal::NothingLeft);
        }
        for index in 0..ask.obstacles.len() {
            if field.misses(index) {
                return Err(TileRefusal::ObstacleOutside { obstacle: index });
            }
        }
        Ok(field)
    }

    /// Whether a place in the tiles' directions is tiled; on an edge it may be either.
    pub fn contains(&self, place: Point) -> bool {
        let mut rings = self.rings.iter();
        rings.next().is_some_and(|room| winds_round(room, place))
            && !rings.any(|obstacle| winds_round(obstacle, place))
    }

    /// Whether an obstacle takes nothing of the room: no corner or middle of it inside, and no wall across it.
    fn misses(&self, obstacle: usize) -> bool {
        let (Some(room), Some(ring)) = (self.rings.first(), self.rings.get(obstacle + 1)) else {
            return true;
        };
        let middle = Extent::of(ring).middle();
        let inside = ring.iter().any(|corner| winds_round(room, *corner));
        let covers = room.iter().any(|corner| winds_round(ring, *corner));
        let crossed = sides(room).any(|(a, b)| {
            sides(ring).any(|(c, d)| {
                crossing(a, b, c, d).is_some_and(within) && crossing(c, d, a, b).is_some_and(within)
            })
        });
        !(inside || covers || crossed || winds_round(room, middle))
    }

    /// The edge of the field: the sides of the room and of the obstacles, split where they meet, those kept that have the
    /// field on one side only.
    fn edge_pieces(&self) -> Vec<Edge> {
        let mut all: Vec<Edge> = Vec::new();
        for (ring, corners) in self.rings.iter().enumerate() {
            for (index, (a, b)) in sides(corners).enumerate() {
                let side = match ring.checked_sub(1) {
                    None => Side::Wall(index),
                    Some(obstacle) => Side::Obstacle(obstacle),
                };
                let line = all.len();
                all.push(straightened(Edge { a, b, side, line }));
            }
        }
        let mut pieces: Vec<Edge> = Vec::new();
        for edge in &all {
            let places = self.splits(edge, &all);
            for pair in places.windows(2) {
                if let [from, to] = *pair {
                    self.keep_piece(edge, from, to, &mut pieces);
                }
            }
        }
        pieces
    }

    fn keep_piece(&self, edge: &Edge, from: f64, to: f64, pieces: &mut Vec<Edge>) {
        let (a, b) = (between(edge.a, edge.b, from), between(edge.a, edge.b, to));
        if a.distance_in(b) <= ROUNDING_IN {
            return;
        }
        let piece = straightened(Edge { a, b, ..*edge });
        let (middle, normal) = (between(a, b, 0.5), edge.normal());
        let aside = |by: f64| {
            let by = by * 10.0 * ROUNDING_IN;
            self.contains(Point::new(
                middle.x_in + by * normal.x_in,
                middle.y_in + by * normal.y_in,
            ))
        };
        let near = |a: Point, b: Point| a.distance_in(b) <= 10.0 * ROUNDING_IN;
        let known = pieces.iter().any(|other| {
            (near(other.a, a) && near(other.b, b)) || (near(other.a, b) && near(other.b, a))
        });
        if aside(1.0) != aside(-1.0) && !known {
            pieces.push(piece);
        }
    }

    /// Where an edge meets the others, as shares of its length, in order, with its ends.
    fn splits(&self, edge: &Edge, all: &[Edge]) -> Vec<f64> {
        let mut places = vec![0.0, 1.0];
        let length_in = edge.a.distance_in(edge.b);
        let normal = edge.normal();
        for other in all {
            for end in [other.a, other.b] {
                let (dx, dy) = (end.x_in - edge.a.x_in, end.y_in - edge.a.y_in);
                let off_in = dx * normal.x_in + dy * normal.y_in;
                let share = (dx * normal.y_in - dy * normal.x_in) / length_in;
                if off_in.abs() <= ROUNDING_IN && within(share) {
                    places.push(share);
                }
            }
            if let Some(share) = crossing(edge.a, edge.b, other.a, other.b)
                && crossing(other.a, other.b, edge.a, edge.b).is_some_and(within)
                && within(share)
            {
                places.push(share);
            }
        }
        places.order_by(f64::total_cmp);
        places
    }
}

fn within(share: f64) -> bool {
    (0.0..=1.0).contains(&share)
}

fn between(a: Point, b: Point, share: f64) -> Point {
    if share == 1.0 {
        return b;
    }
    Point::new(
        a.x_in + share * (b.x_in - a.x_in),
        a.y_in + share * (b.y_in - a.y_in),
    )
}

/// An edge that is level or upright but for rounding is exactly so.
fn straightened(mut edge: Edge) -> Edge {
    if (edge.a.x_in - edge.b.x_in).abs() <= ROUNDING_IN {
        edge.b.x_in = edge.a.x_in;
    }
    if (edge.a.y_in - edge.b.y_in).abs() <= ROUNDING_IN {
        edge.b.y_in = edge.a.y_in;
    }
    edge
}

pub(super) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    ring.iter()
        .copied()
        .zip(ring.iter().copied().cycle().skip(1))
}

/// Where the line through c and d crosses a to b, as a share of the way from a; none for parallels.
pub(super) fn crossing(a: Point, b: Point, c: Point, d: Point) -> Option<f64> {
    let (ux, uy) = (b.x_in - a.x_in, b.y_in - a.y_in);
    let (vx, vy) = (d.x_in - c.x_in, d.y_in - c.y_in);
    let turn = ux * vy - uy * vx;
    if turn.abs() <= 1e-12 * ux.hypot(uy) * vx.hypot(vy) {
        return None;
    }
    Some(((c.x_in - a.x_in) * vy - (c.y_in - a.y_in) * vx) / turn)
}

fn winds_round(ring: &[Point], place: Point) -> bool {
    let mut inside = false;
    for (a, b) in sides(ring) {
        if (a.y_in > place.y_in) != (b.y_in > place.y_in) {
            let share = (place.y_in - a.y_in) / (b.y_in - a.y_in);
            if place.x_in < a.x_in + share * (b.x_in - a.x_in) {
                inside = !inside;
            }
        }
    }
    inside
}

/// The outline with every wall moved inwards by the gap; walls keep their numbers.
fn drawn_in(outline: &Outline, gap_in: f64) -> Result<Outline, TileRefusal> {
    if gap_in == 0.0 {
        return Ok(outline.clone());
    }
    let too_wide = || TileRefusal::GapTooWide { gap_in };
    let normals: Vec<Point> = outline
        .walls()
        .map(|wall| {
            let length_in = wall.length_in();
            Point::new(
                (wall.start.y_in - wall.end.y_in) / length_in,
                (wall.end.x_in - wall.start.x_in) / length_in,
            )
        })
        .collect();
    let before = normals.iter().cycle().skip(normals.len().saturating_sub(1));
    let mut corners = Vec::with_capacity(normals.len());
    for ((corner, after), before) in outline.corners().iter().zip(&normals).zip(before) {
        let spread = 1.0 + before.x_in * after.x_in + before.y_in * after.y_in;
        if spread <= 1e-6 {
            return Err(too_wide());
        }
        let by = gap_in / spread;
        corners.push(Point::new(
            corner.x_in + by * (before.x_in + after.x_in),
            corner.y_in + by * (before.y_in + after.y_in),
        ));
    }
    let turned_round = sides(&corners).zip(outline.walls()).any(|((a, b), wall)| {
        let along = (b.x_in - a.x_in) * (wall.end.x_in - wall.start.x_in)
            + (b.y_in - a.y_in) * (wall.end.y_in - wall.start.y_in);
        along <= 0.0
    });
    if turned_round {
        return Err(too_wide());
    }
    Outline::new(corners).map_err(|_| too_wide())
}

/// The corners of an obstacle with the gap round it.
fn grown(index: usize, obstacle: &Obstacle, gap_in: f64) -> Result<Vec<Point>, TileRefusal> {
    let Obstacle {
        corner,
        width_in,
        length_in,
    } = *obstacle;
    let farthest_in = crate::floor::geometry::FARTHEST_IN;
    let measured = [corner.x_in, corner.y_in, width_in, length_in]
        .iter()
        .all(|number| number.abs() <= farthest_in);
    if !measured || width_in <= ROUNDING_IN || length_in <= ROUNDING_IN {
        return Err(TileRefusal::ObstacleSize { obstacle: index });
    }
    let (x0, y0) = (corner.x_in - gap_in, corner.y_in - gap_in);
    let (x1, y1) = (
        corner.x_in + width_in + gap_in,
        corner.y_in + length_in + gap_in,
    );
    Ok(vec![
        Point::new(x0, y0),
        Point::new(x1, y0),
        Point::new(x1, y1),
        Point::new(x0, y1),
    ])
}
