//! The triangles between places: the only file that knows the Delaunay library.

use crate::order::Order;
use spade::{ConstrainedDelaunayTriangulation, HasPosition, Point2, Triangulation};

use crate::floor::geometry::{Point, cross};

/// How near, as a share of the larger side of the room, a fourth vertex must come to a circle to be on it.
///
/// Between rounding (1e-15) and what a tape can tell (1e-4).
const ON_CIRCLE: f64 = 1e-7;

/// A triangle's edge `k` runs from its corner `k` to the next; no neighbour lies beyond the hull.
struct Mesh {
    corners: Vec<[usize; 3]>,
    beyond: Vec<[Option<usize>; 3]>,
    is_wall: Vec<[bool; 3]>,
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
/// `walls` join indexes of `places` and form the room's boundary. None when the walls cannot all be drawn.
pub(super) fn triangles(
    places: &[Point],
    walls: Vec<[usize; 2]>,
    size_in: f64,
) -> Option<Vec<[usize; 3]>> {
    let mesh = mesh(places, walls)?;
    let inside = inside(&mesh);
    let mut triangles = fan_out(&mesh, &inside, places, ON_CIRCLE * size_in)?;
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
    triangles.order();
    Some(triangles)
}

/// All triangles of the hull.
fn mesh(places: &[Point], walls: Vec<[usize; 2]>) -> Option<Mesh> {
    let wall_count = walls.len();
    let mut conflicts = 0_usize;
    let vertices: Vec<Place> = places.iter().copied().map(Place).collect();
    let drawn =
        ConstrainedDelaunayTriangulation::<Place>::try_bulk_load_cdt(vertices, walls, |_| {
            conflicts += 1
        })
        .ok()?;
    // A wall drawn through a vertex comes back as two.
    if conflicts > 0
        || drawn.num_vertices() != places.len()
        || drawn.num_constraints() != wall_count
    {
        return None;
    }
    let count = drawn.num_inner_faces();
    let mut mesh = Mesh {
        corners: Vec::with_capacity(count),
        beyond: Vec::with_capacity(count),
        is_wall: Vec::with_capacity(count),
    };
    // The library numbers the outer face 0 and the triangles from 1.
    for face in drawn.inner_faces() {
        let edges = face.adjacent_edges();
        mesh.corners.push(edges.map(|edge| edge.from().index()));
        mesh.beyond.push(edges.map(|edge| {
            edge.rev()
                .face()
                .as_inner()
                .and_then(|face| face.index().checked_sub(1))
        }));
        mesh.is_wall
            .push(edges.map(|edge| edge.is_constraint_edge()));
    }
    Some(mesh)
}

/// Which triangles lie inside: those that can't be reached from beyond the hull without crossing a wall.
fn inside(mesh: &Mesh) -> Vec<bool> {
    let mut inside = vec![true; mesh.corners.len()];
    let mut to_visit: Vec<usize> = Vec::new();
    for (triangle, (beyond, is_wall)) in mesh.beyond.iter().zip(&mesh.is_wall).enumerate() {
        if beyond
            .iter()
            .zip(is_wall)
            .any(|(beyond, wall)| beyond.is_none() && !wall)
        {
            to_visit.push(triangle);
        }
    }
    while let Some(triangle) = to_visit.pop() {
        match inside.get_mut(triangle) {
            Some(state) if *state => *state = false,
            _ => continue,
        }
        if let (Some(beyond), Some(is_wall)) =
            (mesh.beyond.get(triangle), mesh.is_wall.get(triangle))
        {
            let open = beyond.iter().zip(is_wall).filter(|(_, wall)| !**wall);
            to_visit.extend(open.filter_map(|(beyond, _)| *beyond));
        }
    }
    inside
}

/// The inside triangles, with every polygon whose vertices share a circle cut anew from one vertex.
fn fan_out(
    mesh: &Mesh,
    inside: &[bool],
    places: &[Point],
    tolerance_in: f64,
) -> Option<Vec<[usize; 3]>> {
    let mut groups = Groups::new(mesh.corners.len());
    let is_inside = |triangle: usize| inside.get(triangle).copied().unwrap_or(false);
    for (triangle, corners) in mesh.corners.iter().enumerate() {
        if !is_inside(triangle) {
            continue;
        }
        let (beyond, is_wall) = (mesh.beyond.get(triangle)?, mesh.is_wall.get(triangle)?);
        for (other, wall) in beyond.iter().zip(is_wall) {
            let Some(other) = other.filter(|other| !wall && *other > triangle && is_inside(*other))
            else {
                continue;
            };
            let other_corners = mesh.corners.get(other)?;
            let fourth = other_corners
                .iter()
                .find(|corner| !corners.contains(corner))?;
            let opposite = corners
                .iter()
                .find(|corner| !other_corners.contains(corner))?;
            if is_on_circle(places, *corners, *fourth, tolerance_in)?
                || is_on_circle(places, *other_corners, *opposite, tolerance_in)?
            {
                groups.join(triangle, other);
            }
        }
    }
    let mut members: Vec<(usize, usize)> = (0..mesh.corners.len())
        .filter(|triangle| is_inside(*triangle))
        .map(|t| (groups.root(t), t))
        .collect();
    members.order();
    let mut triangles = Vec::with_capacity(members.len());
    for group in members.chunk_by(|a, b| a.0 == b.0) {
        let as_drawn = group
            .iter()
            .filter_map(|(_, triangle)| mesh.corners.get(*triangle).copied());
        match group {
            [_] => triangles.extend(as_drawn),
            _ => match fan(mesh, &mut groups, group, places, tolerance_in) {
                Some(fan) => triangles.extend(fan),
                // Only vertices that nearly but not quite share a circle can fail; their own triangles stand.
                None => triangles.extend(as_drawn),
            },
        }
    }
    Some(triangles)
}

/// The polygon of one group, cut as a fan from its vertex with the smallest x, then the smallest y.
fn fan(
    mesh: &Mesh,
    groups: &mut Groups,
    group: &[(usize, usize)],
    places: &[Point],
    tolerance_in: f64,
) -> Option<Vec<[usize; 3]>> {
    let mut rim: Vec<(usize, usize)> = Vec::with_capacity(group.len() + 2);
    for (root, triangle) in group {
        let [a, b, c] = *mesh.corners.get(*triangle)?;
        let ends = [(a, b), (b, c), (c, a)];
        for ((other, wall), edge) in mesh
            .beyond
            .get(*triangle)?
            .iter()
            .zip(mesh.is_wall.get(*triangle)?)
            .zip(ends)
        {
            if *wall || other.is_none_or(|other| groups.root(other) != *root) {
                rim.push(edge);
            }
        }
    }
    if rim.len() != group.len() + 2 {
        return None;
    }
    rim.order();
    let mut apex: Option<(usize, Point)> = None;
    for (vertex, _) in &rim {
        let at = *places.get(*vertex)?;
        let first = apex.is_none_or(|(_, best)| {
            at.x_in < best.x_in - tolerance_in
                || ((at.x_in - best.x_in).abs() <= tolerance_in && at.y_in < best.y_in)
        });
        if first {
            apex = Some((*vertex, at));
        }
    }
    let (apex, apex_at) = apex?;
    let after = |vertex: usize| {
        let rank = rim.binary_search_by(|edge| edge.0.cmp(&vertex)).ok()?;
        rim.get(rank).map(|edge| edge.1)
    };
    let mut triangles = Vec::with_capacity(group.len());
    let mut from = after(apex)?;
    for _ in 0..group.len() {
        let to = after(from)?;
        if cross(apex_at, *places.get(from)?, *places.get(to)?) <= 0.0 {
            return None;
        }
        triangles.push([apex, from, to]);
        from = to;
    }
    (after(from)? == apex).then_some(triangles)
}

/// Whether a vertex misses the circle round a triangle by no more than the tolerance.
///
/// The in-circle determinant is twice the area times the difference of the squares of radius and distance, and
/// the product of the sides is four times area and radius: their quotient is the miss, also for a sliver.
fn is_on_circle(
    places: &[Point],
    [a, b, c]: [usize; 3],
    vertex: usize,
    tolerance_in: f64,
) -> Option<bool> {
    let (a, b, c, d) = (
        *places.get(a)?,
        *places.get(b)?,
        *places.get(c)?,
        *places.get(vertex)?,
    );
    let from = |p: Point, q: Point| {
        let (x, y) = (p.x_in - q.x_in, p.y_in - q.y_in);
        (x, y, x * x + y * y)
    };
    let ((ax, ay, aa), (bx, by, bb), (cx, cy, cc)) = (from(a, d), from(b, d), from(c, d));
    let det = aa * (bx * cy - cx * by) - bb * (ax * cy - cx * ay) + cc * (ax * by - bx * ay);
    let sides = (from(a, b).2 * from(b, c).2 * from(c, a).2).sqrt();
    Some(det.abs() <= tolerance_in * sides)
}

/// Which triangles belong together: a forest whose roots are the smallest members.
struct Groups(Vec<usize>);

impl Groups {
    fn new(count: usize) -> Self {
        Self((0..count).collect())
    }

    fn parent(&self, member: usize) -> usize {
        self.0.get(member).copied().unwrap_or(member)
    }

    fn root(&mut self, member: usize) -> usize {
        let mut at = member;
        while self.parent(at) != at {
            let grandparent = self.parent(self.parent(at));
            if let Some(parent) = self.0.get_mut(at) {
                *parent = grandparent;
            }
            at = grandparent;
        }
        at
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.root(a), self.root(b));
        if let Some(parent) = self.0.get_mut(a.max(b)) {
            *parent = a.min(b);
        }
    }
}
