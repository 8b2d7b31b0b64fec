//! Slopes, runs and the wedge of a ramp.
//!
//! Slope is rise over run. All lengths here are magnitudes: which way a ramp goes up is told by
//! [`Ramp::low_side`], made from the signed steps of a doorway.

use serde::Serialize;

use crate::quantity::IN3_PER_FT3;
use crate::working::{Step, Unit};

mod incline;

pub use incline::{Incline, Known, MOST_LENGTH_IN, Quantity, RampRefusal, STEEPEST, incline};
use incline::{check_length, check_run, check_slope, figure, run_for, step};

/// What settles how long a ramp is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Fit {
    /// No steeper than this, rise over run.
    Slope(f64),
    /// As long as this, inches.
    Length(f64),
}

/// A ramp wanted across an opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RampEntry {
    /// Width between jambs, inches.
    pub width_in: f64,
    /// Step at the left jamb, inches; positive goes up into this room.
    pub step_left_in: f64,
    /// Step at the right jamb, inches; positive goes up into this room.
    pub step_right_in: f64,
    /// A slope to keep, or a length to fill.
    pub fit: Fit,
}

/// Where the lower floor is, and so the ramp.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LowSide {
    /// In this room.
    Here,
    /// Beyond the opening.
    Beyond,
    /// Both floors meet: there is nothing to ramp.
    Neither,
}

/// A ramp across an opening, as it is built: of one length from jamb to jamb.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Ramp {
    /// What was wanted.
    pub entry: RampEntry,
    /// The side on which it lies.
    pub low_side: LowSide,
    /// Rise at the left jamb, inches.
    pub rise_left_in: f64,
    /// Rise at the right jamb, inches.
    pub rise_right_in: f64,
    /// Run that the left jamb needs at the slope wanted, inches; the length given, where that was wanted.
    pub run_left_in: f64,
    /// Run that the right jamb needs, likewise, inches.
    pub run_right_in: f64,
    /// The length it is built to, inches: the longer of the two.
    pub run_in: f64,
    /// Slope at the left jamb as built, rise over run.
    pub slope_left: f64,
    /// Slope at the right jamb as built, rise over run.
    pub slope_right: f64,
    /// The steeper of the two.
    pub steepest: f64,
    /// The steeper of the two, degrees.
    pub degrees: f64,
    /// The steeper of the two, inches per foot.
    pub in_per_ft: f64,
    /// Volume as built, cubic inches.
    pub wedge_in3: f64,
    /// Volume if each part of the width were only as long as the steepest slope needs, cubic inches.
    pub wedge_at_one_slope_in3: f64,
}

/// The ramp across an opening whose steps at the two jambs may differ.
///
/// The rise is taken to vary evenly from jamb to jamb: r(t) = l + (r - l) t. Every upright section along the run
/// is a triangle, so
/// - built to one length L: the section is r(t) L / 2, the volume W L (l + r) / 4;
/// - built to one slope s: the section is r(t)^2 / (2 s), the volume W (l^2 + l r + r^2) / (6 s).
///
/// # Errors
/// [`RampRefusal`]: as [`incline`]; [`RampRefusal::StepsDiffer`] when one jamb steps up and the other down, since
/// one ramp then can't lie on one side.
///
/// # Example
/// A 36 in doorway, 1/2 in up at both jambs, at 1:12: 6 in long, 36 x 6 x 1 / 4 = 54 in3.
/// ```
/// use calc::floor::ramp::{Fit, LowSide, RampEntry, ramp};
/// let entry = RampEntry { width_in: 36.0, step_left_in: 0.5, step_right_in: 0.5, fit: Fit::Slope(1.0 / 12.0) };
/// let ramp = ramp(entry).unwrap();
/// assert_eq!(ramp.low_side, LowSide::Beyond);
/// assert!((ramp.run_in - 6.0).abs() < 1e-12 && (ramp.wedge_in3 - 54.0).abs() < 1e-9);
/// ```
pub fn ramp(entry: RampEntry) -> Result<Ramp, RampRefusal> {
    let RampEntry {
        width_in,
        step_left_in,
        step_right_in,
        fit,
    } = entry;
    check_length(Quantity::Width, width_in)?;
    if width_in == 0.0 {
        return Err(RampRefusal::NoWidth);
    }
    let (rise_left_in, rise_right_in) = (step_left_in.abs(), step_right_in.abs());
    check_length(Quantity::Rise, rise_left_in)?;
    check_length(Quantity::Rise, rise_right_in)?;
    let low_side = match (step_left_in, step_right_in) {
        (l, r) if l == 0.0 && r == 0.0 => LowSide::Neither,
        (l, r) if l >= 0.0 && r >= 0.0 => LowSide::Beyond,
        (l, r) if l <= 0.0 && r <= 0.0 => LowSide::Here,
        _ => {
            return Err(RampRefusal::StepsDiffer {
                step_left_in,
                step_right_in,
            });
        }
    };
    let (run_left_in, run_right_in) = match fit {
        Fit::Slope(slope) => {
            check_slope(slope)?;
            if low_side == LowSide::Neither {
                (0.0, 0.0)
            } else {
                (
                    run_for(rise_left_in, slope)?,
                    run_for(rise_right_in, slope)?,
                )
            }
        }
        Fit::Length(length_in) => {
            check_run(length_in)?;
            // Floors that meet have nothing to ramp, however long.
            if low_side == LowSide::Neither {
                (0.0, 0.0)
            } else {
                (length_in, length_in)
            }
        }
    };
    let run_in = run_left_in.max(run_right_in);
    let slope_of = |rise_in: f64| if run_in > 0.0 { rise_in / run_in } else { 0.0 };
    let (slope_left, slope_right) = (slope_of(rise_left_in), slope_of(rise_right_in));
    let steepest = slope_left.max(slope_right);
    check_slope(steepest)?;
    let squares = rise_left_in.powi(2) + rise_left_in * rise_right_in + rise_right_in.powi(2);
    Ok(Ramp {
        entry,
        low_side,
        rise_left_in,
        rise_right_in,
        run_left_in,
        run_right_in,
        run_in,
        slope_left,
        slope_right,
        steepest,
        degrees: steepest.atan().to_degrees(),
        in_per_ft: 12.0 * steepest,
        wedge_in3: width_in * run_in * (rise_left_in + rise_right_in) / 4.0,
        wedge_at_one_slope_in3: if steepest > 0.0 {
            width_in * squares / (6.0 * steepest)
        } else {
            0.0
        },
    })
}

impl Ramp {
    /// Volume as built, cubic feet.
    pub fn wedge_ft3(&self) -> f64 {
        self.wedge_in3 / IN3_PER_FT3
    }

    /// The steps behind it: the run at each jamb, the one that governs, the slope, the volume.
    pub fn working(&self) -> Vec<Step> {
        let rises = [
            figure("rise_left", self.rise_left_in, Unit::In),
            figure("rise_right", self.rise_right_in, Unit::In),
        ];
        let length = figure("length", self.run_in, Unit::In);
        let mut steps = Vec::with_capacity(6);
        if let Fit::Slope(slope) = self.entry.fit {
            let slope = figure("slope", slope, Unit::Ratio);
            let runs = [
                figure("run_left", self.run_left_in, Unit::In),
                figure("run_right", self.run_right_in, Unit::In),
            ];
            for (rise, run) in rises.iter().zip(&runs) {
                steps.push(step(
                    "run_from_rise_and_slope",
                    &[rise.clone(), slope.clone()],
                    run.clone(),
                ));
            }
            steps.push(step("longer_run_governs", &runs, length.clone()));
        }
        let steepest = figure("steepest", self.steepest, Unit::Ratio);
        let rise = figure("rise", self.rise_left_in.max(self.rise_right_in), Unit::In);
        steps.push(step(
            "slope_from_rise_and_run",
            &[rise, length.clone()],
            steepest.clone(),
        ));
        steps.push(step(
            "angle_from_slope",
            &[steepest],
            figure("angle", self.degrees, Unit::Degrees),
        ));
        let [left, right] = rises;
        steps.push(step(
            "wedge_of_one_length",
            &[
                figure("width", self.entry.width_in, Unit::In),
                length,
                left,
                right,
            ],
            figure("wedge", self.wedge_in3, Unit::In3),
        ));
        steps
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[track_caller]
    fn near(got: f64, want: f64, within: f64) {
        assert!((got - want).abs() <= within, "{got} is not {want}");
    }

    fn entry(step_left_in: f64, step_right_in: f64, fit: Fit) -> RampEntry {
        RampEntry {
            width_in: 32.0,
            step_left_in,
            step_right_in,
            fit,
        }
    }

    #[test]
    fn the_longer_run_governs() {
        // 1:12 is 12 in of run for each inch of rise (2010 ADA Standards 405.2): 3/4 in takes 9 in, 1/2 in 6 in.
        let got = ramp(entry(-0.5, -0.75, Fit::Slope(1.0 / 12.0))).unwrap();
        assert_eq!(got.low_side, LowSide::Here);
        near(got.run_left_in, 6.0, 1e-12);
        near(got.run_right_in, 9.0, 1e-12);
        near(got.run_in, 9.0, 1e-12);
        near(got.slope_left, 1.0 / 18.0, 1e-12);
        near(got.steepest, 1.0 / 12.0, 1e-12);
        near(got.wedge_in3, 32.0 * 9.0 * 1.25 / 4.0, 1e-9);
        let steps = got.working();
        assert_eq!(steps.len(), 6);
        assert_eq!(steps[5].result.value, got.wedge_in3);
    }

    #[test]
    fn a_length_gives_the_slope() {
        let got = ramp(entry(0.5, 0.25, Fit::Length(10.0))).unwrap();
        near(got.steepest, 0.05, 1e-15);
        near(got.in_per_ft, 0.6, 1e-12);
        near(got.degrees, 2.86241, 1e-5);
    }

    #[test]
    fn steps_that_go_opposite_ways_are_refused() {
        let got = ramp(entry(0.5, -0.25, Fit::Length(10.0)));
        assert_eq!(
            got,
            Err(RampRefusal::StepsDiffer {
                step_left_in: 0.5,
                step_right_in: -0.25
            })
        );
        let none = ramp(entry(0.0, 0.0, Fit::Slope(0.0))).unwrap();
        assert_eq!(
            (none.run_in, none.wedge_in3, none.low_side),
            (0.0, 0.0, LowSide::Neither)
        );
        let none = ramp(entry(0.0, 0.0, Fit::Length(10.0))).unwrap();
        assert_eq!(
            (none.run_in, none.wedge_in3, none.low_side),
            (0.0, 0.0, LowSide::Neither)
        );
        assert!(matches!(
            ramp(entry(0.5, 0.5, Fit::Slope(0.0))),
            Err(RampRefusal::NeverRises { .. })
        ));
    }

    #[test]
    fn a_wedge_in_cubic_feet() {
        // 36 x 48 x (2 + 2) / 4 = 1,728 in3 is 1 ft3.
        let made = RampEntry {
            width_in: 36.0,
            step_left_in: 2.0,
            step_right_in: 2.0,
            fit: Fit::Length(48.0),
        };
        near(ramp(made).unwrap().wedge_ft3(), 1.0, 1e-12);
    }

    proptest! {
        /// The wedge against its sections added up by the trapezoid rule (one length) and Simpson's rule, exact
        /// for the squares of one slope.
        #[test]
        fn the_wedge_is_the_sum_of_its_sections(
            left in 0.0..3.0f64, right in 0.01..3.0f64, width_in in 1.0..120.0f64, slope in 0.01..1.0f64,
        ) {
            let made = RampEntry { width_in, step_left_in: left, step_right_in: right, fit: Fit::Slope(slope) };
            let got = ramp(made).unwrap();
            let middle = f64::midpoint(left, right);
            let one_length = width_in * f64::midpoint(left * got.run_in / 2.0, right * got.run_in / 2.0);
            let section = |rise: f64| rise * (rise / got.steepest) / 2.0;
            let one_slope = width_in * (section(left) + 4.0 * section(middle) + section(right)) / 6.0;
            near(got.wedge_in3, one_length, 1e-9 * one_length);
            near(got.wedge_at_one_slope_in3, one_slope, 1e-9 * one_slope);
            prop_assert!(got.wedge_at_one_slope_in3 <= got.wedge_in3 * (1.0 + 1e-12));
        }

        #[test]
        fn no_numbers_make_nonsense(
            a in proptest::num::f64::ANY, b in proptest::num::f64::ANY, c in proptest::num::f64::ANY, d in proptest::num::f64::ANY,
        ) {
            for fit in [Fit::Slope(d), Fit::Length(d)] {
                if let Ok(got) = ramp(RampEntry { width_in: a, step_left_in: b, step_right_in: c, fit }) {
                    prop_assert!(got.wedge_in3.is_finite() && got.wedge_at_one_slope_in3.is_finite());
                }
            }
        }
    }
}
