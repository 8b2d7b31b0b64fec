//! Profiles along many lines: a walk from triangle to triangle instead of a search through all of them.
//!
//! A line is followed by the side on which each vertex lies. A vertex on the line counts as lying to its left, so
//! the walk is that of a line shifted to the right by less than anything: it never has to decide what passing
//! through a vertex or along an edge means, and cannot lose its way.

use super::super::geometry::Point;
use super::super::surface::Surface;
use super::straightedge::ProfilePoint;
use crate::order::Order;

/// Beyond the last triangle.
const OUTSIDE: usize = usize::MAX;

/// Breakpoints nearer to each other than this are one, inches.
const SAME_BREAKPOINT_IN: f64 = 1e-9;

/// A directed line on the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Line {
    /// A point of it, where s is 0.
    pub at: Point,
    /// Its direction, of length 1.
    pub dx: f64,
    /// Its direction, of length 1.
    pub dy: f64,
}

impl Line {
    pub fn towards(at: Point, angle_rad: f64) -> Self {
        Self {
            at,
            dx: angle_rad.cos(),
            dy: angle_rad.sin(),
        }
    }

    /// Through two points; none if they are one.
    pub fn through(from: Point, to: Point) -> Option<Self> {
        let length_in = from.distance_in(to);
        (length_in > SAME_BREAKPOINT_IN).then(|| Self {
            at: from,
            dx: (to.x_in - from.x_in) / length_in,
            dy: (to.y_in - from.y_in) / length_in,
        })
    }

    pub fn reversed(self) -> Self {
        Self {
            dx: -self.dx,
            dy: -self.dy,
            ..self
        }
    }

    pub fn point_at(self, s_in: f64) -> Point {
        Point::new(self.at.x_in + s_in * self.dx, self.at.y_in + s_in * self.dy)
    }

    pub fn angle_rad(self) -> f64 {
        self.dy.atan2(self.dx)
    }
}

/// Where a line crosses an edge of the triangles: so far along the line, and that share of the way between two
/// vertices.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Crossing {
    /// Distance from the line's own point, inches.
    pub s_in: f64,
    /// Vertex at the left of the line, or on it.
    pub from: usize,
    /// Vertex at the right of the line.
    pub to: usize,
    /// 0 at `from`, 1 at `to`.
    pub share: f64,
}

impl Crossing {
    pub fn height_in(self, heights_in: &[f64]) -> f64 {
        let (from_in, to_in) = (heights_in[self.from], heights_in[self.to]);
        from_in + self.share * (to_in - from_in)
    }
}

/// The triangles of a surface, each knowing its neighbours.
#[derive(Clone, Debug)]
pub(super) struct Walker {
    points: Vec<Point>,
    triangles: Vec<[usize; 3]>,
    /// Across the edge from corner i to corner i + 1.
    neighbours: Vec<[usize; 3]>,
    /// Triangles at each vertex: `star[star_start[v]..star_start[v + 1]]`.
    star_start: Vec<usize>,
    star: Vec<usize>,
    /// Whether a vertex lies on the outline.
    on_wall: Vec<bool>,
    /// A vertex nearer to a line than this lies on it, inches.
    snap_in: f64,
}

impl Walker {
    /// Learns the neighbours of each triangle; none if the surface has no triangle or one that names no vertex.
    pub fn new(surface: &Surface) -> Option<Self> {
        let points: Vec<Point> = surface.vertices.iter().map(|vertex| vertex.at).collect();
        let triangles = surface.triangles.clone();
        let count = points.len();
        if triangles.is_empty() || triangles.iter().flatten().any(|&vertex| vertex >= count) {
            return None;
        }
        let mut edges: Vec<(usize, usize, usize, usize)> = Vec::with_capacity(3 * triangles.len());
        let mut star_start = vec![0; count + 1];
        for (t, corners) in triangles.iter().enumerate() {
            for edge in 0..3 {
                let (u, v) = (corners[edge], corners[(edge + 1) % 3]);
                edges.push((u.min(v), u.max(v), t, edge));
                star_start[u + 1] += 1;
            }
        }
        edges.order();
        let mut neighbours = vec![[OUTSIDE; 3]; triangles.len()];
        let mut on_wall = vec![false; count];
        let mut rest = &edges[..];
        while let Some((&(u, v, t, edge), after)) = rest.split_first() {
            rest = after;
            match after.first() {
                Some(&(u2, v2, t2, edge2)) if (u, v) == (u2, v2) => {
                    neighbours[t][edge] = t2;
                    neighbours[t2][edge2] = t;
                    rest = &after[1..];
                }
                _ => {
                    on_wall[u] = true;
                    on_wall[v] = true;
                }
            }
        }
        for vertex in 0..count {
            star_start[vertex + 1] += star_start[vertex];
        }
        let mut next = star_start.clone();
        let mut star = vec![0; 3 * triangles.len()];
        for (t, corners) in triangles.iter().enumerate() {
            for &vertex in corners {
                star[next[vertex]] = t;
                next[vertex] += 1;
            }
        }
        let size_in = points
            .iter()
            .fold(1.0_f64, |most, p| most.max(p.x_in.abs()).max(p.y_in.abs()));
        Some(Self {
            points,
            triangles,
            neighbours,
            star_start,
            star,
            on_wall,
            snap_in: 1e-11 * size_in,
        })
    }

    pub fn points(&self) -> &[Point] {
        &self.points
    }

    pub fn triangles(&self) -> &[[usize; 3]] {
        &self.triangles
    }

    pub fn on_wall(&self, vertex: usize) -> bool {
        self.on_wall[vertex]
    }

    /// Triangles at a vertex.
    pub fn star(&self, vertex: usize) -> &[usize] {
        &self.star[self.star_start[vertex]..self.star_start[vertex + 1]]
    }

    /// Area of a triangle, in2.
    pub fn area_in2(&self, triangle: usize) -> f64 {
        let [a, b, c] = self.triangles[triangle].map(|vertex| self.points[vertex]);
        0.5 * ((b.x_in - a.x_in) * (c.y_in - a.y_in) - (b.y_in - a.y_in) * (c.x_in - a.x_in)).abs()
    }

    /// Distance of a vertex to the left of a line; 0 if it lies on it.
    fn left_in(&self, line: Line, vertex: usize) -> f64 {
        let point = self.points[vertex];
        let left_in = (point.y_in - line.at.y_in) * line.dx - (point.x_in - line.at.x_in) * line.dy;
        if left_in.abs() <= self.snap_in {
            0.0
        } else {
            left_in
        }
    }

    /// Whether the line passes through a triangle.
    fn passes(&self, line: Line, triangle: usize) -> bool {
        let left = self.triangles[triangle].map(|vertex| self.left_in(line, vertex) >= 0.0);
        left.contains(&true) && left.contains(&false)
    }

    /// A triangle through which the line passes where it leaves or meets a vertex that lies on it.
    pub fn start_at_vertex(&self, line: Line, vertex: usize) -> Option<usize> {
        self.star(vertex)
            .iter()
            .copied()
            .find(|&triangle| self.passes(line, triangle))
    }

    /// A triangle through which the line passes near its own point, looking from `hint` on.
    pub fn start_near(&self, line: Line, hint: usize) -> Option<usize> {
        let triangle = self.locate(line.at, hint)?;
        if self.passes(line, triangle) {
            return Some(triangle);
        }
        self.triangles[triangle]
            .into_iter()
            .filter(|&vertex| self.left_in(line, vertex) == 0.0)
            .find_map(|vertex| self.start_at_vertex(line, vertex))
    }

    /// The triangle that holds a point, walking towards it; none outside the room.
    pub fn locate(&self, point: Point, hint: usize) -> Option<usize> {
        let mut at = hint.min(self.triangles.len() - 1);
        for _ in 0..self.triangles.len() {
            match self.edge_towards(point, at) {
                None => return Some(at),
                // A corner that stands out into the room may be in the way: then look at every triangle.
                Some(edge) => match self.neighbours[at][edge] {
                    OUTSIDE => break,
                    next => at = next,
                },
            }
        }
        (0..self.triangles.len()).find(|&triangle| self.edge_towards(point, triangle).is_none())
    }

    /// The edge beyond which a point lies farthest; none if the triangle holds it.
    fn edge_towards(&self, point: Point, triangle: usize) -> Option<usize> {
        let corners = self.triangles[triangle];
        let mut farthest = None;
        let mut beyond_in = -self.snap_in;
        for edge in 0..3 {
            let (a, b) = (
                self.points[corners[edge]],
                self.points[corners[(edge + 1) % 3]],
            );
            let across = (b.x_in - a.x_in) * (point.y_in - a.y_in)
                - (b.y_in - a.y_in) * (point.x_in - a.x_in);
            let inside_in = across / a.distance_in(b);
            if inside_in < beyond_in {
                beyond_in = inside_in;
                farthest = Some(edge);
            }
        }
        farthest
    }

    /// Follows a line from a triangle through which it passes to the walls on both sides; the crossings come in
    /// the line's direction.
    pub fn follow(&self, line: Line, start: usize, crossings: &mut Vec<Crossing>) {
        crossings.clear();
        self.follow_one_way(line, start, false, crossings);
        crossings.reverse();
        self.follow_one_way(line, start, true, crossings);
        let mut kept_in = f64::NEG_INFINITY;
        crossings.retain(|crossing| {
            let apart = crossing.s_in - kept_in > SAME_BREAKPOINT_IN;
            if apart {
                kept_in = crossing.s_in;
            }
            apart
        });
    }

    fn follow_one_way(
        &self,
        line: Line,
        start: usize,
        forward: bool,
        crossings: &mut Vec<Crossing>,
    ) {
        let mut triangle = start;
        // Each triangle is passed once; the bound only guards against a surface that isn't one.
        for _ in 0..self.triangles.len() {
            let corners = self.triangles[triangle];
            let left_in = corners.map(|vertex| self.left_in(line, vertex));
            // Corners run counter-clockwise: the line leaves over the edge that goes from its right to its left.
            let Some(edge) = (0..3).find(|&edge| {
                let (here, next) = (left_in[edge] >= 0.0, left_in[(edge + 1) % 3] >= 0.0);
                here != next && next == forward
            }) else {
                return;
            };
            let (mut from, mut to) = (edge, (edge + 1) % 3);
            if left_in[from] < 0.0 {
                (from, to) = (to, from);
            }
            let share = left_in[from] / (left_in[from] - left_in[to]);
            let along_in = |vertex: usize| {
                let point = self.points[vertex];
                (point.x_in - line.at.x_in) * line.dx + (point.y_in - line.at.y_in) * line.dy
            };
            let (from, to) = (corners[from], corners[to]);
            let from_in = along_in(from);
            let s_in = from_in + share * (along_in(to) - from_in);
            crossings.push(Crossing {
                s_in,
                from,
                to,
                share,
            });
            match self.neighbours[triangle][edge] {
                OUTSIDE => return,
                next => triangle = next,
            }
        }
    }
}

/// The profile over crossings: s from 0 at the first.
pub(super) fn profile_over(
    crossings: &[Crossing],
    heights_in: &[f64],
    profile: &mut Vec<ProfilePoint>,
) {
    profile.clear();
    let start_in = crossings.first().map_or(0.0, |crossing| crossing.s_in);
    profile.extend(crossings.iter().map(|crossing| ProfilePoint {
        s_in: crossing.s_in - start_in,
        height_in: crossing.height_in(heights_in),
    }));
}
