//! The end of the search for the worst gap: along the ridges of the gap, seen as a function of the line.

use super::super::super::geometry::Point;
use super::super::walker::Line;
use super::{Found, Search};

/// Lines that are followed to the end of their ridges.
const POLISHED: usize = 2;

/// The most moves of a triangle of lines.
const MOST_MOVES: usize = 60;

impl Search<'_> {
    /// Moves the worst lines found to the end of their ridges: about the vertices nearest to contacts and gap by the
    /// golden section, then turned and shifted at once by the method of Nelder and Mead (1965), which follows a ridge
    /// that runs askew of both.
    pub(super) fn polish(&mut self) {
        let mut begin = std::mem::take(&mut self.found);
        for best in begin.iter_mut().take(POLISHED) {
            let gap = best.gap;
            let places = [gap.gap_at_s_in, gap.contact1_s_in, gap.contact2_s_in];
            for place in places.map(|s_in| best.place(s_in)) {
                if let Some(vertex) = self.nearest_vertex(place, best.start) {
                    self.turn_about(best, vertex);
                }
            }
            self.turn_and_shift(best);
        }
        for found in begin {
            self.keep(found);
        }
    }

    /// The golden section over the turn of a line about a place.
    fn turn_about(&mut self, best: &mut Found, pivot: Point) {
        const GOLDEN: f64 = 0.618_033_988_749_894_9;
        let seen = best.place(best.gap.gap_at_s_in);
        let far = if seen.distance_in(pivot) > 1e-6 {
            seen
        } else {
            best.place(best.gap.contact1_s_in)
        };
        let Some(through) = Line::through(pivot, far) else {
            return;
        };
        let middle_rad = through.angle_rad();
        let (mut low_rad, mut high_rad) = (middle_rad - 0.03, middle_rad + 0.03);
        let mut at = |search: &mut Self, angle_rad: f64| {
            search.improve(best, Line::towards(pivot, angle_rad))
        };
        let mut left_rad = high_rad - GOLDEN * (high_rad - low_rad);
        let mut right_rad = low_rad + GOLDEN * (high_rad - low_rad);
        let (mut left_in, mut right_in) = (at(self, left_rad), at(self, right_rad));
        // A turn of a hundred millionth moves the end of a straightedge by a millionth of an inch.
        while high_rad - low_rad > 1e-8 {
            if left_in >= right_in {
                (high_rad, right_rad, right_in) = (right_rad, left_rad, left_in);
                left_rad = high_rad - GOLDEN * (high_rad - low_rad);
                left_in = at(self, left_rad);
            } else {
                (low_rad, left_rad, left_in) = (left_rad, right_rad, right_in);
                right_rad = low_rad + GOLDEN * (high_rad - low_rad);
                right_in = at(self, right_rad);
            }
        }
    }

    /// Nelder and Mead's triangle over the turn of a line about its gap and its shift sideways.
    fn turn_and_shift(&mut self, best: &mut Found) {
        let (at, line) = (best.place(best.gap.gap_at_s_in), best.line);
        let length_in = self.length_in;
        // Both in inches: the turn as what it moves at the straightedge's end.
        let laid = |[turn_in, shift_in]: [f64; 2]| {
            let at = Point::new(at.x_in - shift_in * line.dy, at.y_in + shift_in * line.dx);
            Line::towards(at, line.angle_rad() + turn_in / length_in)
        };
        let mut value = |search: &mut Self, move_in: [f64; 2]| search.improve(best, laid(move_in));
        let mut corners = [[0.0, 0.0], [0.5, 0.0], [0.0, 0.5]].map(|move_in| (f64::NAN, move_in));
        for corner in &mut corners {
            corner.0 = value(self, corner.1);
        }
        for _ in 0..MOST_MOVES {
            // Largest gap first.
            if corners[1].0 > corners[0].0 {
                corners.swap(0, 1);
            }
            if corners[2].0 > corners[1].0 {
                corners.swap(1, 2);
            }
            if corners[1].0 > corners[0].0 {
                corners.swap(0, 1);
            }
            let [first, second, last] = corners;
            let far_in = |a: [f64; 2], b: [f64; 2]| (a[0] - b[0]).hypot(a[1] - b[1]);
            if far_in(first.1, last.1).max(far_in(first.1, second.1)) < 1e-7 {
                break;
            }
            let along = |share: f64| {
                [0, 1].map(|i| {
                    let middle = f64::midpoint(first.1[i], second.1[i]);
                    middle + share * (last.1[i] - middle)
                })
            };
            let mut tried = |search: &mut Self, share: f64| {
                let move_in = along(share);
                (value(search, move_in), move_in)
            };
            let reflected = tried(self, -1.0);
            if reflected.0 > first.0 {
                let further = tried(self, -2.0);
                corners[2] = if further.0 > reflected.0 {
                    further
                } else {
                    reflected
                };
            } else if reflected.0 > second.0 {
                corners[2] = reflected;
            } else {
                let share = if reflected.0 > last.0 { -0.5 } else { 0.5 };
                let nearer = tried(self, share);
                if nearer.0 > reflected.0.max(last.0) {
                    corners[2] = nearer;
                } else {
                    for corner in corners.iter_mut().skip(1) {
                        let move_in = [0, 1].map(|i| f64::midpoint(first.1[i], corner.1[i]));
                        *corner = (value(self, move_in), move_in);
                    }
                }
            }
        }
    }
}
