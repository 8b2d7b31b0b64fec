//! The triangles between places: the only file that knows the Delaunay libraries.
//!
//! Where the walls are edges of the free triangulation of all places, as in most rooms, that is the constrained one
//! as well, and a quick library draws it; what it drew is checked before it counts. Else a slower one draws the
//! triangles round the walls.

use spade::{ConstrainedDelaunayTriangulation, HasPosition, Point2, Triangulation};

use crate::floor::geometry::{Point, cross};

/// How near, as a share of the larger side of the room, a fourth vertex must come to a circle to be on it.
///
/// Between rounding (1e-15) and what a tape can tell (1e-4).
const ON_CIRCLE: f64 = 1e-7;

/// A cross product is positive for certain when it passes this share of its two terms (Shewchuk 1997, orient2d's
/// first bound).
const SURE: f64 = 4e-16;

/// No half-edge, no vertex.
const NONE: usize = usize::MAX;

/// Half-edges: three in a row run counter-clockwise round a triangle, so half-edge `e` belongs to triangle `e / 3`.
struct Mesh {
    /// The vertex where each starts.
    from: Vec<usize>,
    /// Its other half, in the triangle beyond; [`NONE`] on the hull.
    twin: Vec<usize>,
    /// Whether it runs along a wall, in either direction.
    is_wall: Vec<bool>,
}

struct Place(Point);

impl HasPosition for Place {
    type Scalar = f64;

    fn position(&self) -> Point2<f64> {
        Point2::new(self.0.x_in, self.0.y_in)
    }
}

/// The triangles inside the walls, each counter-clockwise with its smallest index first, in ascending order.
///
/// `walls` join indexes of `places` and form the room's boundary, counter-clockwise. None when they are not edges of
/// the free triangulation, when two places are no farther apart than `apart_in`, or when rounding leaves a doubt.
pub(super) fn free_triangles(
    places: &[Point],
    walls: &[[usize; 2]],
    size_in: f64,
    apart_in: f64,
) -> Option<Vec<[usize; 3]>> {
    if walls_are_cut(places, walls) {
        return None;
    }
    let mesh = free_mesh(places, walls)?;
    let inside = mesh.inside();
    if !mesh.is_sound(&inside, places, walls.len(), apart_in) {
        return None;
    }
    finish(&mesh, &inside, places, size_in)
}

/// As [`free_triangles`], drawn round the walls, wherever the places lie. None when the walls cannot all be drawn.
pub(super) fn triangles(
    places: &[Point],
    walls: &[[usize; 2]],
    size_in: f64,
) -> Option<Vec<[usize; 3]>> {
    let mesh = constrained_mesh(places, walls)?;
    finish(&mesh, &mesh.inside(), places, size_in)
}

/// Whether a wall at a corner that points into the room is surely no edge of the free triangulation, which then isn't
/// worth drawing.
fn walls_are_cut(places: &[Point], walls: &[[usize; 2]]) -> bool {
    let mut before = walls.last();
    for wall in walls {
        if let Some(before) = before.replace(wall)
            && cross(places[before[0]], places[before[1]], places[wall[1]]) < 0.0
            && (is_cut(places, before) || is_cut(places, wall))
        {
            return true;
        }
    }
    false
}

/// Whether no circle through the ends of a wall leaves out all places: one on its left and one on its right see it
/// under angles of more than half a turn together.
fn is_cut(places: &[Point], [start, end]: &[usize; 2]) -> bool {
    let (a, b) = (places[*start], places[*end]);
    // The cotangent of the widest angle on each side.
    let mut widest = [f64::INFINITY; 2];
    for p in places {
        let turn = cross(a, b, *p);
        let ahead = (a.x_in - p.x_in) * (b.x_in - p.x_in) + (a.y_in - p.y_in) * (b.y_in - p.y_in);
        let cotangent = ahead / turn.abs();
        let side = &mut widest[usize::from(turn < 0.0)];
        if turn != 0.0 && cotangent < *side {
            *side = cotangent;
        }
    }
    widest[0] + widest[1] < -ON_CIRCLE
}

/// The inside triangles with ties settled, in order. None when one is no Delaunay triangle.
fn finish(mesh: &Mesh, inside: &[bool], places: &[Point], size_in: f64) -> Option<Vec<[usize; 3]>> {
    let mut triangles = fan_out(mesh, inside, places, ON_CIRCLE * size_in)?;
    for triangle in &mut triangles {
        let [a, b, c] = *triangle;
        let least = a.min(b).min(c);
        *triangle = if least == a {
            [a, b, c]
        } else if least == b {
            [b, c, a]
        } else {
            [c, a, b]
        };
    }
    // No two triangles have the same edge, so two corners decide their order.
    for corner in [1, 0] {
        let (_, order) = sorted(places.len(), &triangles, |triangle| triangle[corner]);
        triangles = order.into_iter().map(|rank| triangles[rank]).collect();
    }
    Some(triangles)
}

/// Values in the order of keys below `count`, those with the same key as they were: where each key's begin, and
/// the places of the values.
fn sorted<T>(count: usize, values: &[T], key: impl Fn(&T) -> usize) -> (Vec<usize>, Vec<usize>) {
    let mut starts = vec![0; count + 1];
    for value in values {
        starts[key(value) + 1] += 1;
    }
    for rank in 1..=count {
        starts[rank] += starts[rank - 1];
    }
    let mut next = starts.clone();
    let mut order = vec![0; values.len()];
    for (place, value) in values.iter().enumerate() {
        let rank = &mut next[key(value)];
        order[*rank] = place;
        *rank += 1;
    }
    (starts, order)
}

/// All triangles of the hull, as if there were no walls. None when a wall isn't an edge of theirs.
fn free_mesh(places: &[Point], walls: &[[usize; 2]]) -> Option<Mesh> {
    // The library counts y downwards.
    let mirrored: Vec<delaunator::Point> = places
        .iter()
        .map(|at| delaunator::Point {
            x: at.x_in,
            y: -at.y_in,
        })
        .collect();
    let drawn = delaunator::triangulate(&mirrored);
    Mesh::new(drawn.triangles, drawn.halfedges, places.len(), walls)
}

/// All triangles of the hull, with the walls as constraints.
fn constrained_mesh(places: &[Point], walls: &[[usize; 2]]) -> Option<Mesh> {
    let mut conflicts = 0_usize;
    let vertices: Vec<Place> = places.iter().copied().map(Place).collect();
    let drawn = ConstrainedDelaunayTriangulation::<Place>::try_bulk_load_cdt(
        vertices,
        walls.to_vec(),
        |_| conflicts += 1,
    )
    .ok()?;
    // A wall drawn through a vertex comes back as two.
    if conflicts > 0
        || drawn.num_vertices() != places.len()
        || drawn.num_constraints() != walls.len()
    {
        return None;
    }
    let count = 3 * drawn.num_inner_faces();
    let (mut from, mut twin) = (Vec::with_capacity(count), Vec::with_capacity(count));
    for face in drawn.inner_faces() {
        for edge in face.adjacent_edges() {
            from.push(edge.from().index());
            let rev = edge.rev();
            // The library numbers the outer face 0 and the triangles from 1.
            let beyond = rev.face().as_inner().and_then(|face| {
                let at = face.adjacent_edges().iter().position(|edge| *edge == rev)?;
                Some(3 * face.index().checked_sub(1)? + at)
            });
            twin.push(beyond.unwrap_or(NONE));
        }
    }
    Mesh::new(from, twin, places.len(), walls)
}

/// The half-edge after another in its triangle.
fn next(edge: usize) -> usize {
    if edge % 3 == 2 { edge - 2 } else { edge + 1 }
}

/// The half-edge before another in its triangle.
fn previous(edge: usize) -> usize {
    if edge.is_multiple_of(3) {
        edge + 2
    } else {
        edge - 1
    }
}

impl Mesh {
    /// Finds the walls among the half-edges. None when one is missing.
    fn new(
        from: Vec<usize>,
        twin: Vec<usize>,
        places: usize,
        walls: &[[usize; 2]],
    ) -> Option<Self> {
        let mut along = vec![NONE; places];
        for [start, end] in walls {
            along[*start] = *end;
        }
        let mut found = 0;
        let is_wall = from
            .iter()
            .enumerate()
            .map(|(edge, start)| {
                let end = from[next(edge)];
                let forwards = along[*start] == end;
                found += usize::from(forwards);
                forwards || along[end] == *start
            })
            .collect();
        (found == walls.len()).then_some(Self {
            from,
            twin,
            is_wall,
        })
    }

    fn triangle(&self, triangle: usize) -> [usize; 3] {
        let edge = 3 * triangle;
        [self.from[edge], self.from[edge + 1], self.from[edge + 2]]
    }

    /// Which triangles lie inside: those that can't be reached from beyond the hull without crossing a wall.
    fn inside(&self) -> Vec<bool> {
        let mut inside = vec![true; self.from.len() / 3];
        let mut to_visit: Vec<usize> = (0..self.from.len())
            .filter(|edge| self.twin[*edge] == NONE && !self.is_wall[*edge])
            .map(|edge| edge / 3)
            .collect();
        while let Some(triangle) = to_visit.pop() {
            if std::mem::replace(&mut inside[triangle], false) {
                let open = (3 * triangle..3 * triangle + 3)
                    .filter(|edge| !self.is_wall[*edge] && self.twin[*edge] != NONE);
                to_visit.extend(open.map(|edge| self.twin[edge] / 3));
            }
        }
        inside
    }

    /// Whether the inside triangles cover the room once, with every place a corner of some, and no two places are
    /// nearer than `apart_in`.
    ///
    /// Triangles that all turn the same way and whose open edges go once round a simple polygon cover it once; they
    /// use every place when they are as many as Euler's formula has it. Of all places, the two nearest to each other
    /// are joined by an edge.
    fn is_sound(&self, inside: &[bool], places: &[Point], walls: usize, apart_in: f64) -> bool {
        let count = inside.iter().filter(|inside| **inside).count();
        if count + walls + 2 != 2 * places.len() {
            return false;
        }
        // Each wall was found forwards once: it must be the edge of an inside triangle, and of no second.
        let walls_hold = (0..self.from.len())
            .filter(|edge| self.is_wall[*edge] && inside[*edge / 3])
            .try_fold(0, |held, edge| {
                let twin = self.twin[edge];
                (twin == NONE || !inside[twin / 3]).then_some(held + 1)
            });
        walls_hold == Some(walls)
            && inside.iter().enumerate().all(|(triangle, inside)| {
                let [a, b, c] = self.triangle(triangle).map(|corner| places[corner]);
                let apart = |p: Point, q: Point| {
                    let (x, y) = (p.x_in - q.x_in, p.y_in - q.y_in);
                    x * x + y * y > apart_in * apart_in
                };
                let left = (b.x_in - a.x_in) * (c.y_in - a.y_in);
                let right = (b.y_in - a.y_in) * (c.x_in - a.x_in);
                let turns_left = left - right > SURE * (left.abs() + right.abs());
                (turns_left || !inside) && apart(a, b) && apart(b, c) && apart(c, a)
            })
    }
}

/// The inside triangles, with every polygon whose vertices share a circle cut anew from one vertex.
///
/// None when a vertex lies in the circle round a triangle next to it, past the tolerance.
fn fan_out(
    mesh: &Mesh,
    inside: &[bool],
    places: &[Point],
    tolerance_in: f64,
) -> Option<Vec<[usize; 3]>> {
    let count = inside.len();
    let mut groups = Groups::new(count);
    for (edge, twin) in mesh.twin.iter().enumerate() {
        if *twin == NONE || *twin < edge || mesh.is_wall[edge] || !inside[edge / 3] {
            continue;
        }
        let corners = [edge, next(edge), previous(edge), previous(*twin)];
        match circle(
            corners.map(|corner| places[mesh.from[corner]]),
            tolerance_in,
        ) {
            Circle::On => groups.join(edge / 3, *twin / 3),
            Circle::Inside => return None,
            Circle::Outside => {}
        }
    }
    let members: Vec<(usize, usize)> = (0..count)
        .filter(|triangle| inside[*triangle])
        .map(|triangle| (groups.root(triangle), triangle))
        .collect();
    let mut triangles = Vec::with_capacity(members.len());
    if !groups.any {
        triangles.extend(members.iter().map(|(_, triangle)| mesh.triangle(*triangle)));
        return Some(triangles);
    }
    let (starts, order) = sorted(count, &members, |(root, _)| *root);
    let mut rim = Rim {
        edges: Vec::new(),
        after: vec![NONE; places.len()],
    };
    for group in starts.windows(2) {
        let group: Vec<usize> = order[group[0]..group[1]]
            .iter()
            .map(|rank| members[*rank].1)
            .collect();
        let before = triangles.len();
        // Only vertices that nearly but not quite share a circle can fail; their own triangles stand.
        if group.len() < 2
            || rim
                .fan(
                    mesh,
                    &mut groups,
                    &group,
                    places,
                    tolerance_in,
                    &mut triangles,
                )
                .is_none()
        {
            triangles.truncate(before);
            triangles.extend(group.iter().map(|triangle| mesh.triangle(*triangle)));
        }
    }
    Some(triangles)
}

/// The edge round a group of triangles; used for one group after another.
struct Rim {
    edges: Vec<[usize; 2]>,
    /// For each vertex of the rim, the next.
    after: Vec<usize>,
}

impl Rim {
    /// The polygon of one group, cut as a fan from its vertex with the smallest x, then the smallest y.
    fn fan(
        &mut self,
        mesh: &Mesh,
        groups: &mut Groups,
        group: &[usize],
        places: &[Point],
        tolerance_in: f64,
        triangles: &mut Vec<[usize; 3]>,
    ) -> Option<()> {
        self.edges.clear();
        for triangle in group {
            let root = groups.root(*triangle);
            for edge in 3 * triangle..3 * triangle + 3 {
                let twin = mesh.twin[edge];
                if mesh.is_wall[edge] || twin == NONE || groups.root(twin / 3) != root {
                    self.edges.push([mesh.from[edge], mesh.from[next(edge)]]);
                }
            }
        }
        if self.edges.len() != group.len() + 2 {
            return None;
        }
        let mut least_x_in = f64::INFINITY;
        for [from, to] in &self.edges {
            self.after[*from] = *to;
            least_x_in = least_x_in.min(places[*from].x_in);
        }
        let apex = self
            .edges
            .iter()
            .map(|[from, _]| *from)
            .filter(|vertex| places[*vertex].x_in <= least_x_in + tolerance_in)
            .min_by(|a, b| places[*a].y_in.total_cmp(&places[*b].y_in).then(a.cmp(b)))?;
        let mut from = self.after[apex];
        for _ in group {
            let to = self.after[from];
            if cross(places[apex], places[from], places[to]) <= 0.0 {
                return None;
            }
            triangles.push([apex, from, to]);
            from = to;
        }
        (self.after[from] == apex).then_some(())
    }
}

/// Where a vertex lies.
enum Circle {
    On,
    Inside,
    Outside,
}

/// Where the fourth of four vertices lies to the circle round the other three, which run counter-clockwise, and by
/// that the third to the circle round the other triangle at the edge from the first to the second; on either circle
/// when it misses it by no more than the tolerance.
///
/// The in-circle determinant is twice the area times the difference of the squares of radius and distance, and
/// the product of the sides is four times area and radius: their quotient is the miss, also for a sliver.
fn circle([a, b, c, d]: [Point; 4], tolerance_in: f64) -> Circle {
    let from = |p: Point, q: Point| {
        let (x, y) = (p.x_in - q.x_in, p.y_in - q.y_in);
        (x, y, x * x + y * y)
    };
    let ((ax, ay, aa), (bx, by, bb), (cx, cy, cc)) = (from(a, d), from(b, d), from(c, d));
    let det = aa * (bx * cy - cx * by) - bb * (ax * cy - cx * ay) + cc * (ax * by - bx * ay);
    let sides = from(a, b).2 * (from(b, c).2 * from(c, a).2).max(aa * bb);
    if det * det <= tolerance_in * tolerance_in * sides {
        Circle::On
    } else if det > 0.0 {
        Circle::Inside
    } else {
        Circle::Outside
    }
}

/// Which triangles belong together: a forest whose roots are the smallest members.
struct Groups {
    parent: Vec<usize>,
    any: bool,
}

impl Groups {
    fn new(count: usize) -> Self {
        Self {
            parent: (0..count).collect(),
            any: false,
        }
    }

    fn root(&mut self, member: usize) -> usize {
        let mut at = member;
        while self.parent[at] != at {
            let grandparent = self.parent[self.parent[at]];
            self.parent[at] = grandparent;
            at = grandparent;
        }
        at
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.root(a), self.root(b));
        self.parent[a.max(b)] = a.min(b);
        self.any = true;
    }
}

#[cfg(test)]
mod tests;
