//! Heights at a place and along a line.

use crate::order::Order;
use serde::Serialize;

use super::index::Bounds;
use super::{Surface, Vertex};
use crate::floor::geometry::{Point, cross};

/// A point of a profile.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ProfilePoint {
    /// Distance along the line from its start, inches.
    pub s_in: f64,
    /// Height of the floor there, inches.
    pub height_in: f64,
}

/// A stretch of the line within one triangle, as distances along the line and the heights there.
#[derive(Clone, Copy)]
struct Stretch {
    start: ProfilePoint,
    end: ProfilePoint,
}

impl Surface {
    /// The floor's height at a place, inches; none outside the room.
    pub fn height_in(&self, at: Point) -> Option<f64> {
        if !(at.x_in.is_finite() && at.y_in.is_finite()) {
            return None;
        }
        let slack_in = 4.0 * self.outline.tolerance_in();
        let near = self.index.get(self).in_box(Bounds::round(&[at], 0.0));
        let mut best: Option<(f64, f64)> = None;
        for corners in near
            .into_iter()
            .filter_map(|triangle| self.corners_of(self.triangles.get(triangle)?))
        {
            let room_in =
                sides(&corners).map(|(a, b)| cross(a.at, b.at, at) / a.at.distance_in(b.at));
            let room_in = room_in.into_iter().fold(f64::INFINITY, f64::min);
            if room_in >= -slack_in && best.is_none_or(|(most, _)| room_in > most) {
                best = Some((room_in, height_in(&corners, at)));
            }
        }
        best.map(|(_, height_in)| height_in)
    }

    /// The floor along a straight line: its breakpoints, where the line crosses the triangles' edges.
    ///
    /// A line that leaves the room and comes back gives a piece for each stretch inside; one that never enters
    /// gives none. Between two points of a piece the floor is straight. Distances are measured from `from`.
    ///
    /// ```
    /// use calc::floor::{Outline, Point, Spot, Surface};
    /// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
    /// let heights = [0.0, 0.5, 0.25, 0.0];
    /// let spots: Vec<Spot> = corners.iter().zip(heights).map(|(at, height_in)| Spot { at: *at, height_in }).collect();
    /// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
    /// // Across the middle: the ridge between the two triangles is crossed at 30 in, half way up to 1/4 in.
    /// let pieces = floor.profile(Point::new(0.0, 48.0), Point::new(60.0, 48.0));
    /// let points: Vec<(f64, f64)> = pieces[0].iter().map(|point| (point.s_in, point.height_in)).collect();
    /// assert_eq!(points, [(0.0, 0.0), (30.0, 0.125), (60.0, 0.375)]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn profile(&self, from: Point, to: Point) -> Vec<Vec<ProfilePoint>> {
        let length_in = from.distance_in(to);
        let tolerance_in = self.outline.tolerance_in();
        if !length_in.is_finite() || length_in <= tolerance_in {
            return Vec::new();
        }
        let near = self.index.get(self).on_line(from, to, 8.0 * tolerance_in);
        let mut stretches: Vec<Stretch> = near
            .into_iter()
            .filter_map(|triangle| self.corners_of(self.triangles.get(triangle)?))
            .filter_map(|corners| stretch(&corners, from, to, tolerance_in))
            .collect();
        stretches.order_by(|a, b| {
            a.start
                .s_in
                .total_cmp(&b.start.s_in)
                .then(b.end.s_in.total_cmp(&a.end.s_in))
        });
        // Where the line passes a vertex, stretches too short to keep leave gaps; none is as wide as this.
        let gap_in = 100.0 * tolerance_in;
        let mut pieces: Vec<Vec<ProfilePoint>> = Vec::new();
        for stretch in stretches {
            match pieces.last_mut() {
                Some(piece) => match piece.last().copied() {
                    // Along an edge, both triangles give the same stretch.
                    Some(last) if stretch.end.s_in <= last.s_in + tolerance_in => {}
                    Some(last) if stretch.start.s_in <= last.s_in + gap_in => {
                        if stretch.start.s_in > last.s_in + tolerance_in {
                            piece.push(stretch.start);
                        }
                        piece.push(stretch.end);
                    }
                    _ => pieces.push(vec![stretch.start, stretch.end]),
                },
                None => pieces.push(vec![stretch.start, stretch.end]),
            }
        }
        pieces
    }
}

/// A triangle's sides, each from a corner to the next.
fn sides(corners: &[Vertex; 3]) -> [(Vertex, Vertex); 3] {
    let [a, b, c] = *corners;
    [(a, b), (b, c), (c, a)]
}

/// Height of the triangle's plane at a place, inches.
fn height_in(corners: &[Vertex; 3], at: Point) -> f64 {
    let [a, b, c] = corners;
    let whole = cross(a.at, b.at, c.at);
    let (of_b, of_c) = (cross(a.at, at, c.at) / whole, cross(a.at, b.at, at) / whole);
    a.height_in + of_b * (b.height_in - a.height_in) + of_c * (c.height_in - a.height_in)
}

/// The part of a line within a triangle; none when they share no more than a point.
fn stretch(corners: &[Vertex; 3], from: Point, to: Point, tolerance_in: f64) -> Option<Stretch> {
    let length_in = from.distance_in(to);
    let (mut start, mut end) = (0.0_f64, 1.0_f64);
    for (a, b) in sides(corners) {
        let side_in = a.at.distance_in(b.at);
        // Distance inwards from this side; so near to it counts as on it.
        let inwards = |point: Point| {
            let distance_in = cross(a.at, b.at, point) / side_in;
            if distance_in.abs() <= tolerance_in {
                0.0
            } else {
                distance_in
            }
        };
        let (at_start, at_end) = (inwards(from), inwards(to));
        if at_start < 0.0 && at_end <= 0.0 || at_start <= 0.0 && at_end < 0.0 {
            return None;
        }
        if at_start < 0.0 {
            start = start.max(at_start / (at_start - at_end));
        } else if at_end < 0.0 {
            end = end.min(at_start / (at_start - at_end));
        }
    }
    if (end - start) * length_in <= tolerance_in {
        return None;
    }
    let point = |share: f64| {
        let at = Point::new(
            from.x_in + share * (to.x_in - from.x_in),
            from.y_in + share * (to.y_in - from.y_in),
        );
        ProfilePoint {
            s_in: share * length_in,
            height_in: height_in(corners, at),
        }
    };
    Some(Stretch {
        start: point(start),
        end: point(end),
    })
}
