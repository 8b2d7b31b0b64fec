//! Points on the plan and the polygon of the room.

use serde::Serialize;
use thiserror::Error;

/// A point on the plan, inches from the first corner: x to the right, y away.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Point {
    /// Inches to the right.
    pub x_in: f64,
    /// Inches away.
    pub y_in: f64,
}

impl Point {
    /// A point from its two coordinates in inches.
    pub const fn new(x_in: f64, y_in: f64) -> Self {
        Self { x_in, y_in }
    }

    /// Straight-line distance to another point, inches.
    pub fn distance_in(self, other: Self) -> f64 {
        (self.x_in - other.x_in).hypot(self.y_in - other.y_in)
    }
}

/// The room's floor: a simple polygon, corners counter-clockwise, closed by itself.
///
/// Made by [`Outline::new`], which refuses anything else, so later code relies on it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outline {
    corners: Vec<Point>,
}

/// The most corners an outline may have.
pub const MOST_CORNERS: usize = 64;

/// The farthest a coordinate may lie from the origin, inches: over a mile, past any room, and small enough
/// that no area or volume overflows or loses the sixteenth of an inch.
pub const FARTHEST_IN: f64 = 100_000.0;

/// Two points of a room are one, and a point is on a wall, within this share of the larger side of its
/// bounding box.
pub const SAME_PLACE: f64 = 1e-9;

/// Why corners do not make a room.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum OutlineRefusal {
    /// Fewer than three corners.
    #[error("an outline has at least three corners, not {given}")]
    TooFewCorners {
        /// How many were given.
        given: usize,
    },
    /// Corners that enclose no area.
    #[error("the corners enclose no area")]
    NoArea,
    /// More corners than [`MOST_CORNERS`].
    #[error("an outline has at most {MOST_CORNERS} corners, not {given}")]
    TooManyCorners {
        /// How many were given.
        given: usize,
    },
    /// A wall without length, or with an end that isn't a number.
    #[error("wall {wall} has no length")]
    NoLength {
        /// Index of the wall, from 0.
        wall: usize,
    },
    /// A corner farther out than [`FARTHEST_IN`].
    #[error("corner {corner} is more than {FARTHEST_IN} in away")]
    TooFar {
        /// Index of the corner, from 0.
        corner: usize,
    },
    /// Two walls cross or touch, or one folds back on the other.
    #[error("walls {first} and {second} cross")]
    Crossing {
        /// Index of the first wall, from 0.
        first: usize,
        /// Index of the second wall, from 0.
        second: usize,
    },
    /// A walk round the walls that does not come back to where it began.
    #[error("the walls miss by {miss_in} in, more than {allowed_in} in")]
    Open {
        /// Distance from the end of the walk to its start, inches.
        miss_in: f64,
        /// What may be shared out, inches.
        allowed_in: f64,
    },
}

/// A wall of the outline: from one corner to the next.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Wall {
    /// Where it starts, walking counter-clockwise.
    pub start: Point,
    /// Where it ends.
    pub end: Point,
}

impl Wall {
    /// Length, inches.
    pub fn length_in(self) -> f64 {
        self.start.distance_in(self.end)
    }

    /// The point `along_in` inches from the start, not held to the wall's length.
    pub fn point_at(self, along_in: f64) -> Point {
        let length_in = self.length_in();
        let share = if length_in > 0.0 {
            along_in / length_in
        } else {
            0.0
        };
        Point::new(
            self.start.x_in + share * (self.end.x_in - self.start.x_in),
            self.start.y_in + share * (self.end.y_in - self.start.y_in),
        )
    }

    /// How far along the wall the place nearest to `point` lies, inches from its start, held to the wall.
    pub fn along_in(self, point: Point) -> f64 {
        let (dx, dy) = (
            self.end.x_in - self.start.x_in,
            self.end.y_in - self.start.y_in,
        );
        let length_in = self.length_in();
        if length_in <= 0.0 {
            return 0.0;
        }
        let along_in =
            ((point.x_in - self.start.x_in) * dx + (point.y_in - self.start.y_in) * dy) / length_in;
        along_in.clamp(0.0, length_in)
    }

    /// Distance from `point` to the nearest place on the wall, inches.
    pub fn distance_in(self, point: Point) -> f64 {
        self.point_at(self.along_in(point)).distance_in(point)
    }
}

/// The place on the walls nearest to a point.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OnWall {
    /// Index of the wall, from 0.
    pub wall: usize,
    /// How far along the wall, inches from its start.
    pub along_in: f64,
    /// The place itself.
    pub at: Point,
    /// Its distance from the point asked about, inches.
    pub distance_in: f64,
}

/// The area that corners enclose, square inches: positive when they run counter-clockwise, negative when clockwise.
///
/// The surveyor's formula, taken about the first corner so that a room far from the origin loses no digits.
///
/// ```
/// use calc::floor::geometry::{Point, signed_area_in2};
/// let square = [Point::new(0.0, 0.0), Point::new(24.0, 0.0), Point::new(24.0, 24.0), Point::new(0.0, 24.0)];
/// assert_eq!(signed_area_in2(&square), 576.0);
/// ```
pub fn signed_area_in2(corners: &[Point]) -> f64 {
    let Some(origin) = corners.first().copied() else {
        return 0.0;
    };
    0.5 * sides(corners)
        .map(|(a, b)| cross(origin, a, b))
        .sum::<f64>()
}

impl Outline {
    /// The outline with these corners, given in either turning; the last joins the first by itself.
    ///
    /// Corners that run clockwise are turned round: corner 0 stays corner 0, and the walls are numbered
    /// counter-clockwise from it, so wall `i` of a clockwise list of `n` becomes wall `n - 1 - i` with its
    /// ends exchanged. A corner in the middle of a straight wall is kept.
    ///
    /// # Errors
    /// Walls and corners are numbered as given.
    /// - [`OutlineRefusal::TooFewCorners`] under three, [`OutlineRefusal::NoArea`] with all of them on one line;
    /// - [`OutlineRefusal::TooManyCorners`] past [`MOST_CORNERS`];
    /// - [`OutlineRefusal::NoLength`] for two equal corners in a row or a number that isn't one;
    /// - [`OutlineRefusal::TooFar`] past [`FARTHEST_IN`];
    /// - [`OutlineRefusal::Crossing`] when walls cross, touch or fold back.
    ///
    /// ```
    /// use calc::floor::{Outline, Point};
    /// let room = Outline::new(vec![
    ///     Point::new(0.0, 0.0), Point::new(60.0, 0.0), Point::new(60.0, 96.0), Point::new(0.0, 96.0),
    /// ])?;
    /// assert_eq!(room.area_in2(), 5760.0); // 5 ft x 8 ft is 40 square feet
    /// assert_eq!(room.perimeter_in(), 312.0); // 26 ft
    /// # Ok::<(), calc::floor::geometry::OutlineRefusal>(())
    /// ```
    pub fn new(corners: Vec<Point>) -> Result<Self, OutlineRefusal> {
        if corners.len() < 3 {
            return Err(OutlineRefusal::TooFewCorners {
                given: corners.len(),
            });
        }
        if corners.len() > MOST_CORNERS {
            return Err(OutlineRefusal::TooManyCorners {
                given: corners.len(),
            });
        }
        for (corner, point) in corners.iter().enumerate() {
            if !(point.x_in.is_finite() && point.y_in.is_finite()) {
                return Err(OutlineRefusal::NoLength { wall: corner });
            }
            if point.x_in.abs() > FARTHEST_IN || point.y_in.abs() > FARTHEST_IN {
                return Err(OutlineRefusal::TooFar { corner });
            }
        }
        let tolerance_in = SAME_PLACE * larger_side_in(&corners);
        let walls: Vec<Wall> = sides(&corners)
            .map(|(start, end)| Wall { start, end })
            .collect();
        if let Some(wall) = walls
            .iter()
            .position(|wall| wall.length_in() <= tolerance_in)
        {
            return Err(OutlineRefusal::NoLength { wall });
        }
        let [first, others @ ..] = corners.as_slice() else {
            return Err(OutlineRefusal::NoArea);
        };
        let far = others
            .iter()
            .copied()
            .max_by(|a, b| first.distance_in(*a).total_cmp(&first.distance_in(*b)));
        let spine = Wall {
            start: *first,
            end: far.unwrap_or(*first),
        };
        if corners.iter().all(|corner| {
            cross(spine.start, spine.end, *corner).abs() <= tolerance_in * spine.length_in()
        }) {
            return Err(OutlineRefusal::NoArea);
        }
        for (first, a) in walls.iter().enumerate() {
            for (second, b) in walls.iter().enumerate().skip(first + 1) {
                let touching = if second == first + 1 {
                    folds_back(*a, *b, tolerance_in)
                } else if first == 0 && second + 1 == walls.len() {
                    folds_back(*b, *a, tolerance_in)
                } else {
                    walls_touch(*a, *b, tolerance_in)
                };
                if touching {
                    return Err(OutlineRefusal::Crossing { first, second });
                }
            }
        }
        let mut corners = corners;
        if signed_area_in2(&corners) < 0.0
            && let [_, others @ ..] = corners.as_mut_slice()
        {
            others.reverse();
        }
        Ok(Self { corners })
    }

    /// The corners, counter-clockwise.
    pub fn corners(&self) -> &[Point] {
        &self.corners
    }

    /// The walls in order: wall `i` runs from corner `i` to the next.
    pub fn walls(&self) -> impl Iterator<Item = Wall> + '_ {
        sides(&self.corners).map(|(start, end)| Wall { start, end })
    }

    /// The wall with this index, if there is one.
    pub fn wall(&self, index: usize) -> Option<Wall> {
        let start = *self.corners.get(index)?;
        let end = self
            .corners
            .get(index + 1)
            .or(self.corners.first())
            .copied()?;
        Some(Wall { start, end })
    }

    /// The floor's area, square inches.
    pub fn area_in2(&self) -> f64 {
        signed_area_in2(&self.corners)
    }

    /// The length of all walls together, inches.
    pub fn perimeter_in(&self) -> f64 {
        self.walls().map(Wall::length_in).sum()
    }

    /// The point on which a card cut to the room's shape would balance.
    pub fn centroid(&self) -> Point {
        let Some(origin) = self.corners.first().copied() else {
            return Point::default();
        };
        let (mut x, mut y, mut twice_area) = (0.0, 0.0, 0.0);
        for (a, b) in sides(&self.corners) {
            let twice = cross(origin, a, b);
            x += twice * (a.x_in + b.x_in - 2.0 * origin.x_in);
            y += twice * (a.y_in + b.y_in - 2.0 * origin.y_in);
            twice_area += twice;
        }
        Point::new(
            origin.x_in + x / (3.0 * twice_area),
            origin.y_in + y / (3.0 * twice_area),
        )
    }

    /// The larger side of the bounding box, inches.
    pub fn size_in(&self) -> f64 {
        larger_side_in(&self.corners)
    }

    /// How near two places must be to count as one, inches: [`SAME_PLACE`] of [`Outline::size_in`].
    pub fn tolerance_in(&self) -> f64 {
        SAME_PLACE * self.size_in()
    }

    /// Whether a point lies in the room; a point on a wall does.
    pub fn contains(&self, point: Point) -> bool {
        self.winds_round(point) || self.nearest_wall(point).distance_in <= self.tolerance_in()
    }

    /// The place on the walls nearest to a point; of walls equally near, the first.
    pub fn nearest_wall(&self, point: Point) -> OnWall {
        let mut nearest = OnWall {
            wall: 0,
            along_in: 0.0,
            at: point,
            distance_in: f64::INFINITY,
        };
        for (wall, side) in self.walls().enumerate() {
            let along_in = side.along_in(point);
            let at = side.point_at(along_in);
            let distance_in = at.distance_in(point);
            if distance_in < nearest.distance_in {
                nearest = OnWall {
                    wall,
                    along_in,
                    at,
                    distance_in,
                };
            }
        }
        nearest
    }

    /// Whether the walls wind round a point: a ray from it to the right crosses them an odd number of times.
    fn winds_round(&self, point: Point) -> bool {
        let mut inside = false;
        for (a, b) in sides(&self.corners) {
            if (a.y_in > point.y_in) != (b.y_in > point.y_in) {
                let left_of = cross(a, b, point) > 0.0;
                if left_of == (b.y_in > a.y_in) {
                    inside = !inside;
                }
            }
        }
        inside
    }
}

/// Twice the area of the triangle a, b, c: positive when it runs counter-clockwise.
pub(crate) fn cross(a: Point, b: Point, c: Point) -> f64 {
    (b.x_in - a.x_in) * (c.y_in - a.y_in) - (b.y_in - a.y_in) * (c.x_in - a.x_in)
}

/// Each corner with the next, the last with the first.
fn sides(corners: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    corners
        .iter()
        .copied()
        .zip(corners.iter().copied().cycle().skip(1))
}

/// The larger side of the bounding box, inches.
fn larger_side_in(points: &[Point]) -> f64 {
    let (mut low, mut high) = (
        Point::new(f64::INFINITY, f64::INFINITY),
        Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    );
    for point in points {
        low = Point::new(low.x_in.min(point.x_in), low.y_in.min(point.y_in));
        high = Point::new(high.x_in.max(point.x_in), high.y_in.max(point.y_in));
    }
    (high.x_in - low.x_in).max(high.y_in - low.y_in).max(0.0)
}

/// Whether the second of two walls in a row comes back over the first.
fn folds_back(a: Wall, b: Wall, tolerance_in: f64) -> bool {
    a.distance_in(b.end) <= tolerance_in || b.distance_in(a.start) <= tolerance_in
}

/// Whether two walls cross or come within the tolerance of each other.
fn walls_touch(a: Wall, b: Wall, tolerance_in: f64) -> bool {
    let astride = |wall: Wall, other: Wall| {
        (cross(wall.start, wall.end, other.start) > 0.0)
            != (cross(wall.start, wall.end, other.end) > 0.0)
    };
    (astride(a, b) && astride(b, a))
        || a.distance_in(b.start) <= tolerance_in
        || a.distance_in(b.end) <= tolerance_in
        || b.distance_in(a.start) <= tolerance_in
        || b.distance_in(a.end) <= tolerance_in
}

#[cfg(test)]
mod tests {
    use super::*;

    fn corners(pairs: &[(f64, f64)]) -> Vec<Point> {
        pairs.iter().map(|(x, y)| Point::new(*x, *y)).collect()
    }

    #[test]
    fn a_room_walked_clockwise_keeps_its_first_corner() {
        let room = Outline::new(corners(&[
            (0.0, 0.0),
            (0.0, 96.0),
            (60.0, 96.0),
            (60.0, 0.0),
        ]))
        .unwrap();
        assert_eq!(
            room.corners(),
            corners(&[(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)])
        );
        assert_eq!(room.area_in2(), 5760.0);
        assert_eq!(room.centroid(), Point::new(30.0, 48.0));
        let last = room.wall(3).unwrap();
        assert_eq!(
            (last.start, last.end),
            (Point::new(0.0, 96.0), Point::new(0.0, 0.0))
        );
        assert_eq!(room.wall(4), None);
    }

    #[test]
    fn what_is_no_room_is_refused_by_its_walls() {
        use OutlineRefusal as No;
        let refusal = |pairs: &[(f64, f64)]| Outline::new(corners(pairs)).unwrap_err();
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 0.0)]),
            No::TooFewCorners { given: 2 }
        );
        assert_eq!(refusal(&[(0.0, 0.0), (9.0, 9.0), (4.0, 4.0)]), No::NoArea);
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 0.0), (9.0, 0.0), (0.0, 9.0)]),
            No::NoLength { wall: 1 }
        );
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 0.0), (9.0, f64::NAN)]),
            No::NoLength { wall: 2 }
        );
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 0.0), (9.0, 1e9)]),
            No::TooFar { corner: 2 }
        );
        // A bow tie.
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 9.0), (9.0, 0.0), (0.0, 9.0)]),
            No::Crossing {
                first: 0,
                second: 2
            }
        );
        // A corner that touches the wall across from it.
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (5.0, 0.0), (0.0, 9.0)]),
            No::Crossing {
                first: 0,
                second: 2
            }
        );
        // A wall that comes back over itself.
        assert_eq!(
            refusal(&[(0.0, 0.0), (9.0, 0.0), (5.0, 0.0), (5.0, 9.0)]),
            No::Crossing {
                first: 0,
                second: 1
            }
        );
        let many = (0..65).map(|i| f64::from(i) / 65.0 * std::f64::consts::TAU);
        let ring: Vec<Point> = many
            .map(|turn| Point::new(90.0 * turn.cos(), 90.0 * turn.sin()))
            .collect();
        assert_eq!(
            Outline::new(ring).unwrap_err(),
            No::TooManyCorners { given: 65 }
        );
    }

    #[test]
    fn the_wall_itself_is_inside() {
        let room = Outline::new(corners(&[
            (0.0, 0.0),
            (120.0, 0.0),
            (120.0, 60.0),
            (72.0, 60.0),
            (72.0, 108.0),
            (0.0, 108.0),
        ]))
        .unwrap();
        for (x, y, inside) in [
            (0.0, 0.0, true),
            (120.0, 30.0, true),
            (72.0, 60.0, true),
            (72.0, 84.0, true),
            (72.0 + 5e-8, 84.0, true),
            (72.001, 84.0, false),
            (100.0, 61.0, false),
            (-0.001, 50.0, false),
            (60.0, 60.0, true),
            (130.0, 60.0, false),
        ] {
            assert_eq!(room.contains(Point::new(x, y)), inside, "{x}, {y}");
        }
        let near = room.nearest_wall(Point::new(80.0, 100.0));
        assert_eq!(
            (near.wall, near.along_in, near.at, near.distance_in),
            (3, 40.0, Point::new(72.0, 100.0), 8.0)
        );
    }
}
