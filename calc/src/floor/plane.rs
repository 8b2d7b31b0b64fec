//! A plane over the floor: the top of a pour, or the best fit through the spots.

use serde::Serialize;

use super::geometry::Point;

/// Inches of run in 4 ft, the length over which the trade states a tilt.
pub const RUN_4FT_IN: f64 = 48.0;

/// A plane: `height = a + b x + c y`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Plane {
    /// Height over the plan's origin, inches.
    pub a_in: f64,
    /// Rise per inch to the right.
    pub b_in_per_in: f64,
    /// Rise per inch away.
    pub c_in_per_in: f64,
}

impl Plane {
    /// A level plane at a height, inches.
    pub const fn level(height_in: f64) -> Self {
        Self {
            a_in: height_in,
            b_in_per_in: 0.0,
            c_in_per_in: 0.0,
        }
    }

    /// The plane with a height over `at` (inches) and two rises per inch of run.
    pub fn through(at: Point, height_in: f64, b_in_per_in: f64, c_in_per_in: f64) -> Self {
        let a_in = height_in - b_in_per_in * at.x_in - c_in_per_in * at.y_in;
        Self {
            a_in,
            b_in_per_in,
            c_in_per_in,
        }
    }

    /// Height over a point, inches.
    ///
    /// ```
    /// use calc::floor::{Point, plane::Plane};
    /// // 1/4 in up in 4 ft along x: half of that at 2 ft.
    /// let plane = Plane { a_in: 1.0, b_in_per_in: 0.25 / 48.0, c_in_per_in: 0.0 };
    /// assert_eq!(plane.height_in(Point::new(24.0, 60.0)), 1.125);
    /// assert_eq!(plane.tilt_in_per_4ft(), 0.25);
    /// assert_eq!(plane.downhill_degrees(), Some(180.0));
    /// ```
    pub fn height_in(&self, at: Point) -> f64 {
        self.a_in + self.b_in_per_in * at.x_in + self.c_in_per_in * at.y_in
    }

    /// The plane moved up by so many inches.
    pub fn raised(self, by_in: f64) -> Self {
        Self {
            a_in: self.a_in + by_in,
            ..self
        }
    }

    /// Rise to the right, inches per 4 ft.
    pub fn slope_x_in_per_4ft(&self) -> f64 {
        RUN_4FT_IN * self.b_in_per_in
    }

    /// Rise away, inches per 4 ft.
    pub fn slope_y_in_per_4ft(&self) -> f64 {
        RUN_4FT_IN * self.c_in_per_in
    }

    /// The steepest slope, inches per 4 ft; never negative.
    pub fn tilt_in_per_4ft(&self) -> f64 {
        RUN_4FT_IN * self.b_in_per_in.hypot(self.c_in_per_in)
    }

    /// The steepest slope, percent.
    pub fn tilt_percent(&self) -> f64 {
        100.0 * self.b_in_per_in.hypot(self.c_in_per_in)
    }

    /// Which way it falls, degrees counter-clockwise from x, at least 0 and under 360; none when level.
    pub fn downhill_degrees(&self) -> Option<f64> {
        if self.b_in_per_in == 0.0 && self.c_in_per_in == 0.0 {
            return None;
        }
        let degrees = (-self.c_in_per_in).atan2(-self.b_in_per_in).to_degrees();
        let turned = if degrees < 0.0 {
            degrees + 360.0
        } else {
            degrees
        };
        Some(if turned >= 360.0 { 0.0 } else { turned + 0.0 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_falls_the_way_water_runs() {
        for (b, c, degrees) in [
            (-1.0, 0.0, 0.0),
            (0.0, -1.0, 90.0),
            (1.0, 0.0, 180.0),
            (0.0, 1.0, 270.0),
        ] {
            let plane = Plane {
                a_in: 0.0,
                b_in_per_in: 0.01 * b,
                c_in_per_in: 0.01 * c,
            };
            assert_eq!(plane.downhill_degrees(), Some(degrees));
        }
        assert_eq!(Plane::level(3.0).downhill_degrees(), None);
    }
}
