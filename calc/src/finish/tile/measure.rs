//! What is left of one tile inside the field.

use serde::Serialize;

use super::field::{Field, ROUNDING_IN};
use super::trapezoid::{Edge, Trapezoid};
use crate::floor::Point;

/// A tile in its place, in the tiles' directions, inches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Placed {
    /// Its corner with the least x and y.
    pub corner: Point,
    /// Its side along x.
    pub width_in: f64,
    /// Its side along y.
    pub height_in: f64,
    /// Whether it lies a quarter turn from the first, as every other one of a herringbone does.
    pub turned: bool,
    /// Whether nothing is cut off.
    pub full: bool,
}

/// How a cut piece looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// A rectangle.
    Rectangle,
    /// Square corners, but some of its bounding box is cut out: an L round a corner, a U, a hole.
    Notched,
    /// Some cut is not along the tile's sides.
    Slanted,
    /// The field takes several separate pieces of this tile.
    InParts,
}

/// A part of a piece between two level lines.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Slice {
    low: f64,
    high: f64,
    left: [f64; 2],
    right: [f64; 2],
}

/// A cut along an edge of the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Touch {
    /// Which edge.
    pub edge: usize,
    /// The piece across it, inches: along the tile's sides the shortest chord, else the depth.
    pub across_in: f64,
    /// The whole tile across it, inches.
    pub of_in: f64,
    /// Length of the cut, inches.
    pub length_in: f64,
}

/// What is left of a tile.
#[derive(Clone, Debug, Default)]
pub(super) struct Piece {
    pub area_in2: f64,
    pub low: Point,
    pub high: Point,
    /// Cuts, one for each edge of the field that bounds the piece and the direction it was seen from.
    pub touches: Vec<Touch>,
    pub slanted: bool,
    slices: Vec<Slice>,
}

/// How a tile fares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fate {
    Outside,
    Full,
    Cut,
}

impl Piece {
    /// Works out what is left of a tile; the piece itself is only told for a cut one.
    pub fn take(&mut self, field: &Field, tile: &Placed) -> Fate {
        self.area_in2 = 0.0;
        self.slanted = false;
        self.touches.clear();
        self.slices.clear();
        let (x0, y0) = (tile.corner.x_in, tile.corner.y_in);
        let (x1, y1) = (x0 + tile.width_in, y0 + tile.height_in);
        for trapezoid in &field.across {
            self.cut_across(field, trapezoid, [x0, x1], [y0, y1], false);
        }
        let whole_in2 = tile.width_in * tile.height_in;
        let slack_in2 = ROUNDING_IN * (tile.width_in + tile.height_in);
        if self.area_in2 <= slack_in2 {
            return Fate::Outside;
        }
        if self.area_in2 >= whole_in2 - slack_in2 {
            return Fate::Full;
        }
        for trapezoid in &field.along {
            self.cut_across(field, trapezoid, [y0, y1], [x0, x1], true);
        }
        self.bound();
        self.deepen(field, tile);
        Fate::Cut
    }

    /// The part of a tile (`span` across, `rise` along) in a trapezoid. Seen with x and y exchanged, only chords are taken.
    fn cut_across(
        &mut self,
        field: &Field,
        trapezoid: &Trapezoid,
        span: [f64; 2],
        rise: [f64; 2],
        exchanged: bool,
    ) {
        let (low, high) = (trapezoid.low.max(rise[0]), trapezoid.high.min(rise[1]));
        if high - low <= ROUNDING_IN {
            return;
        }
        // Where a side of the trapezoid passes a side of the tile, the slice changes its bounds.
        let mut levels = [low, high, high, high, high, high];
        let mut count = 1;
        for bound in [trapezoid.left, trapezoid.right] {
            for at in span {
                if bound.lean != 0.0 {
                    let level = trapezoid.low + (at - bound.at_low) / bound.lean;
                    if level > low && level < high {
                        levels[count] = level;
                        count += 1;
                    }
                }
            }
        }
        // At most four: put in order by hand.
        for end in (2..count).rev() {
            for at in 1..end {
                if levels[at] > levels[at + 1] {
                    levels.swap(at, at + 1);
                }
            }
        }
        for pair in levels.windows(2).take(count) {
            if let [low, high] = *pair
                && high - low > 1e-9
            {
                self.slice(field, trapezoid, span, [low, high], exchanged);
            }
        }
    }

    fn slice(
        &mut self,
        field: &Field,
        trapezoid: &Trapezoid,
        span: [f64; 2],
        [low, high]: [f64; 2],
        exchanged: bool,
    ) {
        let middle = f64::midpoint(low, high);
        let cut_left = trapezoid.left_at(middle) > span[0] + ROUNDING_IN;
        let cut_right = trapezoid.right_at(middle) < span[1] - ROUNDING_IN;
        let left = if cut_left {
            [trapezoid.left_at(low), trapezoid.left_at(high)]
        } else {
            [span[0]; 2]
        };
        let right = if cut_right {
            [trapezoid.right_at(low), trapezoid.right_at(high)]
        } else {
            [span[1]; 2]
        };
        let mean_in = 0.5 * (right[0] - left[0] + right[1] - left[1]);
        if mean_in <= ROUNDING_IN {
            return;
        }
        if !exchanged {
            self.area_in2 += mean_in * (high - low);
            self.slices.push(Slice {
                low,
                high,
                left,
                right,
            });
        }
        for (bound, cut) in [(trapezoid.left, cut_left), (trapezoid.right, cut_right)] {
            let Some(edge) = field.edges.get(bound.edge).filter(|_| cut) else {
                continue;
            };
            let leans = left[0] != left[1] || right[0] != right[1];
            self.slanted |= edge.slanted();
            // Slanted edges are seen from both directions: their length counts once.
            let counted = !(exchanged && edge.slanted());
            self.touches.push(Touch {
                edge: bound.edge,
                // Beside a slanted edge the chord shrinks to nothing: the depth takes its place below.
                across_in: if leans { f64::INFINITY } else { mean_in },
                of_in: span[1] - span[0],
                length_in: if counted {
                    (high - low) * bound.lean.hypot(1.0)
                } else {
                    0.0
                },
            });
        }
    }

    fn bound(&mut self) {
        let (mut low, mut high) = (
            Point::new(f64::INFINITY, f64::INFINITY),
            Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
        );
        for slice in &self.slices {
            low.x_in = low.x_in.min(slice.left[0]).min(slice.left[1]);
            high.x_in = high.x_in.max(slice.right[0]).max(slice.right[1]);
            low.y_in = low.y_in.min(slice.low);
            high.y_in = high.y_in.max(slice.high);
        }
        (self.low, self.high) = (low, high);
    }

    /// Where a chord would shrink to nothing, a cut's measure is how far the piece reaches from it.
    fn deepen(&mut self, field: &Field, tile: &Placed) {
        for touch in &mut self.touches {
            if touch.across_in.is_finite() {
                continue;
            }
            let Some(edge) = field.edges.get(touch.edge) else {
                continue;
            };
            let normal = edge.normal();
            touch.across_in = 0.0;
            for slice in &self.slices {
                for (x, y) in slice.corners() {
                    let off_in = (x - edge.a.x_in) * normal.x_in + (y - edge.a.y_in) * normal.y_in;
                    touch.across_in = touch.across_in.max(off_in.abs());
                }
            }
            touch.of_in = normal.x_in.abs() * tile.width_in + normal.y_in.abs() * tile.height_in;
        }
    }

    pub fn width_in(&self) -> f64 {
        self.high.x_in - self.low.x_in
    }

    pub fn height_in(&self) -> f64 {
        self.high.y_in - self.low.y_in
    }

    pub fn shape(&self) -> Shape {
        let slack_in2 = ROUNDING_IN * (self.width_in() + self.height_in());
        if self.parts() > 1 {
            Shape::InParts
        } else if self.slanted {
            Shape::Slanted
        } else if self.area_in2 < self.width_in() * self.height_in() - slack_in2 {
            Shape::Notched
        } else {
            Shape::Rectangle
        }
    }

    /// How many separate pieces there are.
    fn parts(&self) -> usize {
        let mut part: Vec<usize> = (0..self.slices.len()).collect();
        let mut parts = part.len();
        for (a, first) in self.slices.iter().enumerate() {
            for (b, second) in self.slices.iter().enumerate() {
                let apart = (part[a], part[b]);
                if apart.0 != apart.1 && first.lies_under(second) {
                    for of in &mut part {
                        if *of == apart.1 {
                            *of = apart.0;
                        }
                    }
                    parts -= 1;
                }
            }
        }
        parts
    }

    /// The corners of every slice, left and right at its low and its high line.
    pub fn corners(&self) -> impl Iterator<Item = Point> + '_ {
        self.slices
            .iter()
            .flat_map(Slice::corners)
            .map(|(x, y)| Point::new(x, y))
    }

    /// The cuts, each straight line of the field's edge once: how many there are.
    pub fn saw_cuts(&self, field: &Field) -> u32 {
        let mut lines: Vec<usize> = Vec::new();
        for edge in self.edges(field) {
            if !lines.contains(&edge.line) {
                lines.push(edge.line);
            }
        }
        lines.len() as u32
    }

    /// The edges that cut the piece; one may come more than once.
    pub fn edges<'a>(&'a self, field: &'a Field) -> impl Iterator<Item = &'a Edge> {
        self.touches
            .iter()
            .filter_map(|touch| field.edges.get(touch.edge))
    }
}

impl Slice {
    fn corners(&self) -> [(f64, f64); 4] {
        [
            (self.left[0], self.low),
            (self.right[0], self.low),
            (self.right[1], self.high),
            (self.left[1], self.high),
        ]
    }

    /// Whether another slice stands on this one.
    fn lies_under(&self, other: &Self) -> bool {
        (self.high - other.low).abs() <= ROUNDING_IN
            && self.right[1].min(other.right[0]) - self.left[1].max(other.left[0]) > ROUNDING_IN
    }
}
