//! F-numbers of a long line of readings, as concrete slabs are measured.

use serde::Serialize;
use thiserror::Error;

use crate::working::{Figure, Source, Step, Unit};

/// Spacing of the readings, inches. Source: ASTM E1155.
pub const READING_SPACING_IN: f64 = 12.0;

/// The fewest readings: two differences over 10 ft, so that they have a spread. Source: arithmetic.
pub const FEWEST_READINGS: usize = 12;

/// The constant of the flatness number, inches. Source: ASTM E1155, from memory.
pub const FLATNESS_CONSTANT_IN: f64 = 4.57;

/// The constant of the levelness number, inches. Source: ASTM E1155, from memory.
pub const LEVELNESS_CONSTANT_IN: f64 = 12.5;

/// Where the definitions come from, as workings name it.
pub const FNUMBER_SOURCE: &str =
    "ASTM E1155 (definitions confirmed in public copies; constants and divisor from memory)";

/// Readings between the two of a 10 ft difference.
const TEN_FEET: usize = 10;

/// Roundoff of differences of readings, as a share of the largest reading: a spread below it is none.
const ROUNDOFF: f64 = 1e-12;

/// The F-numbers of one line. Larger is flatter, or more level.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FNumbers {
    /// How many readings.
    pub readings: usize,
    /// How many curvatures over 24 in.
    pub curvature_count: usize,
    /// Mean curvature, inches.
    pub curvature_mean_in: f64,
    /// Sample standard deviation of the curvatures, inches.
    pub curvature_deviation_in: f64,
    /// How many differences over 10 ft.
    pub difference_count: usize,
    /// Mean difference over 10 ft, inches.
    pub difference_mean_in: f64,
    /// Sample standard deviation of the differences, inches.
    pub difference_deviation_in: f64,
    /// Flatness number FF; none where the readings have no curvature at all, so that the number has no bound.
    pub ff: Option<f64>,
    /// Levelness number FL; none where all differences over 10 ft are 0, so that the number has no bound.
    pub fl: Option<f64>,
    /// How it comes about.
    pub steps: Vec<Step>,
}

/// Why readings give no F-numbers.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FNumberRefusal {
    /// Too short a line: F-numbers are for slabs, not for bathrooms.
    #[error("F-numbers need {FEWEST_READINGS} readings or more, not {given}")]
    TooFewReadings {
        /// How many were given.
        given: usize,
    },
    /// A reading that isn't a number.
    #[error("reading {index} is not a number")]
    NotANumber {
        /// Index of the reading, from 0.
        index: usize,
    },
}

/// The F-numbers of heights read every 12 in along one line, inches.
///
/// With q the curvature h\[i\] - 2 h\[i-1\] + h\[i-2\] and z the difference h\[i\] - h\[i-10\]:
/// FF = 4.57 / (3 s_q + |mean q|) and FL = 12.5 / (3 s_z + |mean z|), s being the sample standard deviation.
/// Source: ASTM E1155; the two constants and the divisor n - 1 are from memory.
///
/// # Errors
/// - [`FNumberRefusal::TooFewReadings`] below [`FEWEST_READINGS`];
/// - [`FNumberRefusal::NotANumber`] for a reading that isn't finite.
///
/// # Example
/// A 20 ft line that waves by 1/16 in from foot to foot.
/// ```
/// use calc::floor::flatness::f_numbers;
/// let heights_in: Vec<f64> = (0..21).map(|i| if i % 2 == 0 { 0.0 } else { 0.0625 }).collect();
/// let numbers = f_numbers(&heights_in)?;
/// assert_eq!(numbers.curvature_count, 19);
/// assert!((numbers.ff.unwrap() - 11.68).abs() < 0.01);
/// assert_eq!(numbers.fl, None); // every two spots 10 ft apart stand level
/// # Ok::<(), calc::floor::flatness::FNumberRefusal>(())
/// ```
pub fn f_numbers(heights_in: &[f64]) -> Result<FNumbers, FNumberRefusal> {
    if heights_in.len() < FEWEST_READINGS {
        return Err(FNumberRefusal::TooFewReadings {
            given: heights_in.len(),
        });
    }
    if let Some(index) = heights_in.iter().position(|height| !height.is_finite()) {
        return Err(FNumberRefusal::NotANumber { index });
    }
    let curvatures: Vec<f64> = heights_in
        .windows(3)
        .filter_map(|three| match three {
            [a, b, c] => Some(c - 2.0 * b + a),
            _ => None,
        })
        .collect();
    let differences: Vec<f64> = heights_in
        .iter()
        .skip(TEN_FEET)
        .zip(heights_in)
        .map(|(ahead, behind)| ahead - behind)
        .collect();

    let nothing_in = ROUNDOFF
        * heights_in
            .iter()
            .fold(0.0_f64, |most, height| most.max(height.abs()));
    let (curvature_mean_in, curvature_deviation_in) = mean_and_deviation(&curvatures);
    let (difference_mean_in, difference_deviation_in) = mean_and_deviation(&differences);
    let number = |constant_in: f64, mean_in: f64, deviation_in: f64| {
        let spread_in = 3.0 * deviation_in + mean_in.abs();
        (spread_in > nothing_in).then(|| constant_in / spread_in)
    };
    let ff = number(
        FLATNESS_CONSTANT_IN,
        curvature_mean_in,
        curvature_deviation_in,
    );
    let fl = number(
        LEVELNESS_CONSTANT_IN,
        difference_mean_in,
        difference_deviation_in,
    );

    let step = |formula, constant_in, deviation_in, mean_in, name, value| Step {
        formula,
        inputs: vec![
            Figure {
                name: "constant",
                value: constant_in,
                unit: Unit::In,
            },
            Figure {
                name: "deviation",
                value: deviation_in,
                unit: Unit::In,
            },
            Figure {
                name: "mean",
                value: mean_in,
                unit: Unit::In,
            },
        ],
        result: Figure {
            name,
            value,
            unit: Unit::Ratio,
        },
        source: Source::Published(FNUMBER_SOURCE),
    };
    let steps = [
        ff.map(|ff| {
            step(
                "flatness_number",
                FLATNESS_CONSTANT_IN,
                curvature_deviation_in,
                curvature_mean_in,
                "ff",
                ff,
            )
        }),
        fl.map(|fl| {
            step(
                "levelness_number",
                LEVELNESS_CONSTANT_IN,
                difference_deviation_in,
                difference_mean_in,
                "fl",
                fl,
            )
        }),
    ]
    .into_iter()
    .flatten()
    .collect();

    Ok(FNumbers {
        readings: heights_in.len(),
        curvature_count: curvatures.len(),
        curvature_mean_in,
        curvature_deviation_in,
        difference_count: differences.len(),
        difference_mean_in,
        difference_deviation_in,
        ff,
        fl,
        steps,
    })
}

/// Mean, and standard deviation with the divisor n - 1.
fn mean_and_deviation(values: &[f64]) -> (f64, f64) {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let squares: f64 = values.iter().map(|value| (value - mean).powi(2)).sum();
    (mean, (squares / (count - 1.0)).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 41 readings, invented, in 1/64 in; the expected values were computed apart with numpy.
    const SIXTY_FOURTHS: [i32; 41] = [
        3, 4, 3, 2, 4, 9, 10, 9, 5, 3, 2, 4, 6, 3, 0, -1, 2, 7, 10, 9, 7, 9, 14, 17, 18, 17, 13,
        13, 15, 16, 14, 10, 8, 9, 12, 15, 15, 13, 13, 17, 23,
    ];

    fn near(found: f64, expected: f64) -> bool {
        (found - expected).abs() <= 1e-9 * expected.abs()
    }

    #[test]
    fn the_worked_example() {
        let heights: Vec<f64> = SIXTY_FOURTHS.iter().map(|&n| f64::from(n) / 64.0).collect();
        let found = f_numbers(&heights).unwrap();
        assert_eq!(
            (
                found.readings,
                found.curvature_count,
                found.difference_count
            ),
            (41, 39, 31)
        );
        assert!(near(found.curvature_mean_in, 0.002003205128205));
        assert!(near(found.curvature_deviation_in, 0.04152276728823));
        assert!(near(found.difference_mean_in, 0.04183467741935));
        assert!(near(found.difference_deviation_in, 0.110587556691));
        assert!(near(found.ff.unwrap(), 36.10607243743));
        assert!(near(found.fl.unwrap(), 33.45848166187));
        assert_eq!(found.steps.len(), 2);
    }

    #[test]
    fn a_straight_line_has_no_bound_on_flatness_but_one_on_level() {
        let heights: Vec<f64> = (0..30).map(|i| f64::from(i) * 0.1).collect();
        let found = f_numbers(&heights).unwrap();
        assert_eq!(found.ff, None);
        // 1 in of fall in 10 ft, the same everywhere.
        assert!(near(found.fl.unwrap(), 12.5));
        let level = f_numbers(&[0.7; 12]).unwrap();
        assert_eq!((level.ff, level.fl), (None, None));
    }

    #[test]
    fn refuses_short_lines_and_what_is_no_number() {
        assert_eq!(
            f_numbers(&[0.0; 11]),
            Err(FNumberRefusal::TooFewReadings { given: 11 })
        );
        let mut heights = [0.0; 12];
        heights[4] = f64::NAN;
        assert_eq!(
            f_numbers(&heights),
            Err(FNumberRefusal::NotANumber { index: 4 })
        );
    }
}
