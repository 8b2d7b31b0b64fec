//! What the surface says: high and low, mean, best fit, and the volume to reach each level.

use crate::order::Order;
use serde::Serialize;

use super::Surface;
use crate::floor::geometry::{Point, cross};
use crate::floor::plane::Plane;

/// Facts about the old floor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Facts {
    /// Area of the room, square inches.
    pub area_in2: f64,
    /// Volume between the datum and the floor, cubic inches; below the datum counts as negative.
    pub integral_in3: f64,
    /// Mean height of the surface (not of the readings), inches.
    pub mean_height_in: f64,
    /// Index of the lowest vertex; of several, the first.
    pub lowest: usize,
    /// Height of the lowest vertex, inches.
    pub lowest_in: f64,
    /// Index of the highest vertex; of several, the first.
    pub highest: usize,
    /// Height of the highest vertex, inches.
    pub highest_in: f64,
    /// From the highest down to the lowest, inches.
    pub fall_in: f64,
    /// The plane that fits the spots best.
    pub best_fit: BestFit,
}

/// The least-squares plane through the spots read (corners without a reading have no part in it).
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BestFit {
    /// The plane.
    pub plane: Plane,
    /// Root of the mean square of what is left over, inches.
    pub rms_in: f64,
    /// The farthest a spot lies above the plane, inches; never negative.
    pub greatest_above_in: f64,
    /// The farthest a spot lies below the plane, inches; never negative.
    pub greatest_below_in: f64,
}

/// A step of the hypsometric curve: what it takes to fill the floor to a level.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Reached {
    /// The level, inches above the datum.
    pub level_in: f64,
    /// The volume between the floor and the level, where the floor is lower, cubic inches.
    pub volume_in3: f64,
    /// The area of floor lower than the level, square inches.
    pub area_in2: f64,
}

impl Surface {
    /// Facts about the floor, exact for the triangles.
    pub fn facts(&self) -> Facts {
        let mut integral_in3 = 0.0;
        for corners in self.corners() {
            let heights = corners.map(|corner| corner.height_in);
            integral_in3 += area_of(corners.map(|corner| corner.at)) * mean(heights);
        }
        let area_in2 = self.outline.area_in2();
        let (mut lowest, mut highest) = ((0, f64::INFINITY), (0, f64::NEG_INFINITY));
        for (vertex, given) in self.vertices.iter().enumerate() {
            if given.height_in < lowest.1 {
                lowest = (vertex, given.height_in);
            }
            if given.height_in > highest.1 {
                highest = (vertex, given.height_in);
            }
        }
        Facts {
            area_in2,
            integral_in3,
            mean_height_in: integral_in3 / area_in2,
            lowest: lowest.0,
            lowest_in: lowest.1,
            highest: highest.0,
            highest_in: highest.1,
            fall_in: highest.1 - lowest.1,
            best_fit: self.best_fit(),
        }
    }

    /// The least-squares plane through the spots, and what it leaves over.
    fn best_fit(&self) -> BestFit {
        let spots = || self.vertices.iter().take(self.spot_count);
        let count = self.spot_count as f64;
        let (mut x, mut y, mut h) = (0.0, 0.0, 0.0);
        for spot in spots() {
            x += spot.at.x_in;
            y += spot.at.y_in;
            h += spot.height_in;
        }
        let (middle, middle_height_in) = (Point::new(x / count, y / count), h / count);
        // Normal equations about the middle: two unknowns are left.
        let (mut xx, mut xy, mut yy, mut xh, mut yh) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for spot in spots() {
            let (u, v) = (spot.at.x_in - middle.x_in, spot.at.y_in - middle.y_in);
            let over_in = spot.height_in - middle_height_in;
            xx += u * u;
            xy += u * v;
            yy += v * v;
            xh += u * over_in;
            yh += v * over_in;
        }
        // Never zero: spots in one line are no surface.
        let det = xx * yy - xy * xy;
        let (b, c) = ((xh * yy - yh * xy) / det, (yh * xx - xh * xy) / det);
        let plane = Plane::through(middle, middle_height_in, b, c);
        let (mut squares, mut above, mut below) = (0.0, 0.0_f64, 0.0_f64);
        for spot in spots() {
            let (u, v) = (spot.at.x_in - middle.x_in, spot.at.y_in - middle.y_in);
            let over_in = spot.height_in - middle_height_in - b * u - c * v;
            squares += over_in * over_in;
            above = above.max(over_in);
            below = below.max(-over_in);
        }
        BestFit {
            plane,
            rms_in: (squares / count).sqrt(),
            greatest_above_in: above,
            greatest_below_in: below,
        }
    }

    /// What it takes to fill the floor up to a level (inches above the datum), exact for the triangles.
    ///
    /// ```
    /// use calc::floor::{Outline, Point, Spot, Surface};
    /// let corners = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
    /// let spots = corners.map(|at| Spot { at, height_in: at.x_in / 60.0 });
    /// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
    /// // A wedge 30 in wide, 1/2 in deep at the low wall, 96 in long: 720 cubic inches over half the floor.
    /// let half = floor.reached(0.5);
    /// assert!((half.volume_in3 - 720.0).abs() < 1e-9);
    /// assert!((half.area_in2 - 2880.0).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn reached(&self, level_in: f64) -> Reached {
        let (mut volume_in3, mut area_in2) = (0.0, 0.0);
        for corners in self.corners() {
            let area = area_of(corners.map(|corner| corner.at));
            let part = integral_above_zero(area, corners.map(|corner| level_in - corner.height_in));
            volume_in3 += part.volume_in3;
            area_in2 += part.area_in2;
        }
        Reached {
            level_in,
            volume_in3,
            area_in2,
        }
    }

    /// The hypsometric curve: the volume to reach each of `steps + 1` levels from the lowest vertex to the highest.
    ///
    /// With no step to take (0 steps), or on a floor without any fall, the one level is the highest.
    pub fn hypsometric_curve(&self, steps: usize) -> Vec<Reached> {
        let facts = self.facts();
        if steps == 0 || facts.fall_in <= 0.0 {
            return vec![self.reached(facts.highest_in)];
        }
        let level = |step: usize| {
            if step == steps {
                facts.highest_in
            } else {
                facts.lowest_in + facts.fall_in * step as f64 / steps as f64
            }
        };
        (0..=steps).map(|step| self.reached(level(step))).collect()
    }

    /// The volume over the floor at so much depth over each vertex, inches, linear on each triangle: cubic inches;
    /// depth below zero counts as negative.
    pub(crate) fn volume_at_depths_in3(&self, depth_in: &[f64]) -> f64 {
        let depth = |vertex: usize| depth_in.get(vertex).copied().unwrap_or(0.0);
        let place = |vertex: usize| {
            self.vertices
                .get(vertex)
                .map_or_else(Point::default, |v| v.at)
        };
        self.triangles
            .iter()
            .map(|triangle| area_of(triangle.map(place)) * mean(triangle.map(depth)))
            .sum()
    }

    /// The volume between the floor and a plane where the plane is higher, and the area of floor there.
    pub(crate) fn filled_to(&self, plane: &Plane) -> Filled {
        self.corners().fold(
            Filled {
                volume_in3: 0.0,
                area_in2: 0.0,
            },
            |sum, corners| {
                let depths = corners.map(|corner| plane.height_in(corner.at) - corner.height_in);
                let part = integral_above_zero(area_of(corners.map(|corner| corner.at)), depths);
                Filled {
                    volume_in3: sum.volume_in3 + part.volume_in3,
                    area_in2: sum.area_in2 + part.area_in2,
                }
            },
        )
    }
}

/// A volume and the area it covers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Filled {
    /// Cubic inches.
    pub volume_in3: f64,
    /// Square inches.
    pub area_in2: f64,
}

/// Area of a triangle, square inches.
fn area_of([a, b, c]: [Point; 3]) -> f64 {
    0.5 * cross(a, b, c).abs()
}

/// The mean of three numbers.
fn mean([a, b, c]: [f64; 3]) -> f64 {
    (a + b + c) / 3.0
}

/// The part above zero of a depth that is linear on a triangle, and the area where it is above.
///
/// A depth above zero at one corner only leaves a tetrahedron similar to the whole; below zero at one corner
/// only, the whole with such a tetrahedron added back.
fn integral_above_zero(area_in2: f64, depths_in: [f64; 3]) -> Filled {
    let mut sorted = depths_in;
    sorted.order_by(f64::total_cmp);
    let [low, middle, high] = sorted;
    if low >= 0.0 {
        // A floor that only touches the level is not lower than it.
        let area_in2 = if high > 0.0 { area_in2 } else { 0.0 };
        return Filled {
            volume_in3: area_in2 * mean(sorted),
            area_in2,
        };
    }
    if high <= 0.0 {
        return Filled {
            volume_in3: 0.0,
            area_in2: 0.0,
        };
    }
    if middle <= 0.0 {
        let share = high / (high - low) * (high / (high - middle));
        return Filled {
            volume_in3: area_in2 * share * high / 3.0,
            area_in2: area_in2 * share,
        };
    }
    let share = low / (low - high) * (low / (low - middle));
    Filled {
        volume_in3: area_in2 * (mean(sorted) - share * low / 3.0),
        area_in2: area_in2 * (1.0 - share),
    }
}
