//! The tiles' own directions, and boxes round things in them.

use serde::Serialize;

use crate::floor::Point;

/// A turn between the plan and the tiles' own directions.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Frame {
    /// How far the tiles' x is turned from the plan's, degrees counter-clockwise, about the plan's origin.
    pub turned_deg: f64,
}

impl Frame {
    fn turned(self, sine_sign: f64, point: Point) -> Point {
        if self.turned_deg == 0.0 {
            return point;
        }
        let (sine, cosine) = self.turned_deg.to_radians().sin_cos();
        let sine = sine * sine_sign;
        Point::new(
            cosine * point.x_in - sine * point.y_in,
            sine * point.x_in + cosine * point.y_in,
        )
    }

    /// A place of the plan in the tiles' directions, inches.
    pub fn from_plan(self, point: Point) -> Point {
        self.turned(-1.0, point)
    }

    /// A place in the tiles' directions on the plan, inches.
    pub fn to_plan(self, point: Point) -> Point {
        self.turned(1.0, point)
    }
}

/// The least and the greatest coordinates of some points.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Extent {
    /// Least x and y.
    pub low: Point,
    /// Greatest x and y.
    pub high: Point,
}

impl Extent {
    pub(super) fn of(points: &[Point]) -> Self {
        let mut extent = Self {
            low: Point::new(f64::INFINITY, f64::INFINITY),
            high: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
        };
        for point in points {
            extent.low.x_in = extent.low.x_in.min(point.x_in);
            extent.low.y_in = extent.low.y_in.min(point.y_in);
            extent.high.x_in = extent.high.x_in.max(point.x_in);
            extent.high.y_in = extent.high.y_in.max(point.y_in);
        }
        extent
    }

    /// Size along x, inches.
    pub fn width_in(self) -> f64 {
        self.high.x_in - self.low.x_in
    }

    /// Size along y, inches.
    pub fn length_in(self) -> f64 {
        self.high.y_in - self.low.y_in
    }

    /// The middle.
    pub fn middle(self) -> Point {
        Point::new(
            f64::midpoint(self.low.x_in, self.high.x_in),
            f64::midpoint(self.low.y_in, self.high.y_in),
        )
    }
}
