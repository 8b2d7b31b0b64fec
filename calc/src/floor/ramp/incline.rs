//! Rise, run and slope: any two give the third.

use serde::Serialize;
use thiserror::Error;

use crate::working::{Figure, Source, Step, Unit};

/// The longest rise or run that is worked with, inches: 1,000 ft. Longer is a slip of the pen.
pub const MOST_LENGTH_IN: f64 = 12_000.0;

/// The steepest slope that is worked with, rise over run. Past 100 in in 1 in it is a wall.
pub const STEEPEST: f64 = 100.0;

/// Two of rise, run and slope: what is known of an incline.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Known {
    /// Rise and run.
    RiseAndRun {
        /// Height gained, inches.
        rise_in: f64,
        /// Level distance, inches.
        run_in: f64,
    },
    /// Rise and slope.
    RiseAndSlope {
        /// Height gained, inches.
        rise_in: f64,
        /// Rise over run.
        slope: f64,
    },
    /// Run and slope.
    RunAndSlope {
        /// Level distance, inches.
        run_in: f64,
        /// Rise over run.
        slope: f64,
    },
}

/// A straight incline and every way to say how steep it is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Incline {
    /// Height gained, inches.
    pub rise_in: f64,
    /// Level distance, inches.
    pub run_in: f64,
    /// Distance along the incline, inches.
    pub surface_in: f64,
    /// Rise over run.
    pub slope: f64,
    /// 100 x slope.
    pub percent: f64,
    /// Angle above level, degrees.
    pub degrees: f64,
    /// 12 x slope.
    pub in_per_ft: f64,
    /// 48 x slope.
    pub in_per_4ft: f64,
    /// The n of `1:n`; none when level.
    pub one_in: Option<f64>,
}

/// The third of rise, run and slope from the other two.
///
/// # Errors
/// [`RampRefusal`]: a number that isn't one, below zero or beyond [`MOST_LENGTH_IN`] or [`STEEPEST`]; no run;
/// a rise at no slope.
///
/// # Example
/// A 3/4 in step at 1:12 takes 9 in of run.
/// ```
/// use calc::floor::ramp::{Known, incline};
/// let ramp = incline(Known::RiseAndSlope { rise_in: 0.75, slope: 1.0 / 12.0 }).unwrap();
/// assert!((ramp.run_in - 9.0).abs() < 1e-12);
/// assert!((ramp.in_per_ft - 1.0).abs() < 1e-12);
/// ```
pub fn incline(known: Known) -> Result<Incline, RampRefusal> {
    let (rise_in, run_in, slope) = match known {
        Known::RiseAndRun { rise_in, run_in } => {
            check_length(Quantity::Rise, rise_in)?;
            check_run(run_in)?;
            (rise_in, run_in, rise_in / run_in)
        }
        Known::RiseAndSlope { rise_in, slope } => {
            check_length(Quantity::Rise, rise_in)?;
            check_slope(slope)?;
            (rise_in, run_for(rise_in, slope)?, slope)
        }
        Known::RunAndSlope { run_in, slope } => {
            check_run(run_in)?;
            check_slope(slope)?;
            let rise_in = run_in * slope;
            check_length(Quantity::Rise, rise_in)?;
            (rise_in, run_in, slope)
        }
    };
    check_slope(slope)?;
    Ok(Incline {
        rise_in,
        run_in,
        surface_in: rise_in.hypot(run_in),
        slope,
        percent: 100.0 * slope,
        degrees: slope.atan().to_degrees(),
        in_per_ft: 12.0 * slope,
        in_per_4ft: 48.0 * slope,
        one_in: (slope > 0.0).then(|| 1.0 / slope).filter(|n| n.is_finite()),
    })
}

impl Incline {
    /// The steps behind it, from what was known.
    pub fn working(&self, known: Known) -> Vec<Step> {
        let rise = figure("rise", self.rise_in, Unit::In);
        let run = figure("run", self.run_in, Unit::In);
        let slope = figure("slope", self.slope, Unit::Ratio);
        let first = match known {
            Known::RiseAndRun { .. } => {
                step("slope_from_rise_and_run", &[rise, run], slope.clone())
            }
            Known::RiseAndSlope { .. } => {
                step("run_from_rise_and_slope", &[rise, slope.clone()], run)
            }
            Known::RunAndSlope { .. } => {
                step("rise_from_run_and_slope", &[run, slope.clone()], rise)
            }
        };
        let angle = figure("angle", self.degrees, Unit::Degrees);
        vec![first, step("angle_from_slope", &[slope], angle)]
    }
}

/// A quantity that [`RampRefusal`] speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Height gained.
    Rise,
    /// Level distance.
    Run,
    /// Rise over run.
    Slope,
    /// Width between jambs.
    Width,
}

/// Why there is no such incline.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum RampRefusal {
    /// A number that isn't one.
    #[error("{0:?} is not a number")]
    NotANumber(Quantity),
    /// A quantity below zero; every one here is a magnitude.
    #[error("{what:?} is below zero: {given}")]
    Negative {
        /// Which.
        what: Quantity,
        /// What was given, inches or rise over run.
        given: f64,
    },
    /// Longer than [`MOST_LENGTH_IN`], as given or as it comes out.
    #[error("{what:?} of {given_in} in is over {most_in} in")]
    TooLong {
        /// Which.
        what: Quantity,
        /// Its value, inches.
        given_in: f64,
        /// The most, inches.
        most_in: f64,
    },
    /// No run: an upright step, or nothing at all.
    #[error("there is no run")]
    NoRun,
    /// Steeper than [`STEEPEST`].
    #[error("a slope of {slope} is upright")]
    Upright {
        /// Rise over run.
        slope: f64,
    },
    /// A rise at no slope needs a run without end.
    #[error("a level ramp never gains {rise_in} in")]
    NeverRises {
        /// The rise, inches.
        rise_in: f64,
    },
    /// Neither rise nor slope: any run would do.
    #[error("no rise at no slope fits any run")]
    AnyRun,
    /// No width between jambs.
    #[error("the opening has no width")]
    NoWidth,
    /// One jamb steps up and the other down.
    #[error("the steps go opposite ways: {step_left_in} in and {step_right_in} in")]
    StepsDiffer {
        /// Step at the left jamb, inches.
        step_left_in: f64,
        /// Step at the right jamb, inches.
        step_right_in: f64,
    },
}

pub(super) fn check_length(what: Quantity, given_in: f64) -> Result<(), RampRefusal> {
    if given_in.is_nan() {
        Err(RampRefusal::NotANumber(what))
    } else if given_in < 0.0 {
        Err(RampRefusal::Negative {
            what,
            given: given_in,
        })
    } else if given_in > MOST_LENGTH_IN {
        Err(RampRefusal::TooLong {
            what,
            given_in,
            most_in: MOST_LENGTH_IN,
        })
    } else {
        Ok(())
    }
}

pub(super) fn check_run(run_in: f64) -> Result<(), RampRefusal> {
    check_length(Quantity::Run, run_in)?;
    if run_in == 0.0 {
        Err(RampRefusal::NoRun)
    } else {
        Ok(())
    }
}

pub(super) fn check_slope(slope: f64) -> Result<(), RampRefusal> {
    if slope.is_nan() {
        Err(RampRefusal::NotANumber(Quantity::Slope))
    } else if slope < 0.0 {
        Err(RampRefusal::Negative {
            what: Quantity::Slope,
            given: slope,
        })
    } else if slope > STEEPEST {
        Err(RampRefusal::Upright { slope })
    } else {
        Ok(())
    }
}

/// Run that gains `rise_in` at `slope`, both checked.
pub(super) fn run_for(rise_in: f64, slope: f64) -> Result<f64, RampRefusal> {
    match (rise_in > 0.0, slope > 0.0) {
        (true, false) => Err(RampRefusal::NeverRises { rise_in }),
        (false, false) => Err(RampRefusal::AnyRun),
        (_, true) => {
            let run_in = rise_in / slope;
            check_length(Quantity::Run, run_in)?;
            Ok(run_in)
        }
    }
}

pub(super) fn figure(name: &'static str, value: f64, unit: Unit) -> Figure {
    Figure { name, value, unit }
}

pub(super) fn step(formula: &'static str, inputs: &[Figure], result: Figure) -> Step {
    Step {
        formula,
        inputs: inputs.to_vec(),
        result,
        source: Source::Arithmetic,
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

    /// Conversions of slope, computed by hand from slope = rise / run, percent = 100 x slope, degrees =
    /// atan(slope); 1:48, 1:20, 1:12 are the slopes of 2010 ADA Standards 403.3 and 405.2.
    const CONVERSIONS: &[(f64, f64, f64, f64, f64, f64, f64)] = &[
        // rise, run, percent, in per ft, in per 4 ft, degrees, n of 1:n
        (0.25, 48.0, 0.520833, 0.0625, 0.25, 0.298413, 192.0),
        (0.75, 144.0, 0.520833, 0.0625, 0.25, 0.298413, 192.0),
        (0.125, 48.0, 0.260417, 0.03125, 0.125, 0.149207, 384.0),
        (0.5, 48.0, 1.04167, 0.125, 0.5, 0.596809, 96.0),
        (1.0, 240.0, 0.416667, 0.05, 0.2, 0.238731, 240.0),
        (0.25, 12.0, 2.08333, 0.25, 1.0, 1.19349, 48.0),
        (0.5, 12.0, 4.16667, 0.5, 2.0, 2.38594, 24.0),
        (1.0, 20.0, 5.0, 0.6, 2.4, 2.86241, 20.0),
        (1.0, 12.0, 8.33333, 1.0, 4.0, 4.76364, 12.0),
        (1.0, 8.0, 12.5, 1.5, 6.0, 7.12502, 8.0),
        (1.0, 2.0, 50.0, 6.0, 24.0, 26.5651, 2.0),
    ];

    #[test]
    fn slope_conversions() {
        for &(rise_in, run_in, percent, in_per_ft, in_per_4ft, degrees, one_in) in CONVERSIONS {
            let got = incline(Known::RiseAndRun { rise_in, run_in }).unwrap();
            near(got.percent, percent, 5e-6 * percent);
            near(got.in_per_ft, in_per_ft, 1e-12);
            near(got.in_per_4ft, in_per_4ft, 1e-12);
            near(got.degrees, degrees, 5e-6 * degrees);
            near(got.one_in.unwrap(), one_in, 1e-9);
        }
    }

    #[test]
    fn shower_floor_drops_three_quarters_over_36_in() {
        // 1/4 in per ft over a 36 in run to the drain: 3/4 in, by the arithmetic of IRC P2709.1's slope.
        let got = incline(Known::RunAndSlope {
            run_in: 36.0,
            slope: 0.25 / 12.0,
        })
        .unwrap();
        near(got.rise_in, 0.75, 1e-12);
    }

    #[test]
    fn refusals() {
        use Quantity::*;
        let run = |rise_in, run_in| incline(Known::RiseAndRun { rise_in, run_in }).unwrap_err();
        assert_eq!(run(1.0, 0.0), RampRefusal::NoRun);
        assert_eq!(
            run(1.0, -0.5),
            RampRefusal::Negative {
                what: Run,
                given: -0.5
            }
        );
        assert_eq!(
            run(-1.0, 2.0),
            RampRefusal::Negative {
                what: Rise,
                given: -1.0
            }
        );
        assert_eq!(run(f64::NAN, 2.0), RampRefusal::NotANumber(Rise));
        assert_eq!(run(101.0, 1.0), RampRefusal::Upright { slope: 101.0 });
        let at = |rise_in, slope| incline(Known::RiseAndSlope { rise_in, slope });
        assert_eq!(at(1.0, 0.0), Err(RampRefusal::NeverRises { rise_in: 1.0 }));
        assert_eq!(at(0.0, 0.0), Err(RampRefusal::AnyRun));
        assert_eq!(
            at(1.0, f64::INFINITY),
            Err(RampRefusal::Upright {
                slope: f64::INFINITY
            })
        );
        assert!(matches!(
            at(1.0, 1e-9),
            Err(RampRefusal::TooLong { what: Run, .. })
        ));
        assert_eq!(at(0.0, 0.1).unwrap().run_in, 0.0);
    }

    proptest! {
        #[test]
        fn any_two_give_the_third(rise_in in 0.01..60.0f64, run_in in 1.0..2000.0f64) {
            let slope = rise_in / run_in;
            let from_run = incline(Known::RiseAndRun { rise_in, run_in }).unwrap();
            for known in [Known::RiseAndSlope { rise_in, slope }, Known::RunAndSlope { run_in, slope }] {
                let got = incline(known).unwrap();
                near(got.rise_in, from_run.rise_in, 1e-12 * rise_in);
                near(got.run_in, from_run.run_in, 1e-12 * run_in);
                near(got.degrees, from_run.degrees, 1e-12 * from_run.degrees);
                prop_assert_eq!(got.working(known).len(), 2);
            }
        }

        #[test]
        fn no_numbers_make_nonsense(a in proptest::num::f64::ANY, b in proptest::num::f64::ANY) {
            for known in [
                Known::RiseAndRun { rise_in: a, run_in: b },
                Known::RiseAndSlope { rise_in: a, slope: b },
                Known::RunAndSlope { run_in: a, slope: b },
            ] {
                if let Ok(got) = incline(known) {
                    prop_assert!(got.run_in.is_finite() && got.slope.is_finite() && got.surface_in.is_finite());
                }
            }
        }
    }
}
