//! Slopes.

use std::fmt;

use serde::Serialize;
use thiserror::Error;

use super::length::{self, Length, LengthRefusal, LengthUnit};
use super::number::{NumberRefusal, fixed, signed, within};
use super::scan::{Kind, Scanner};

/// The steepest slope that is read, as rise over run.
pub const STEEPEST_RATIO: f64 = 1e6;

/// A slope, held as rise over run.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Slope(f64);

impl Slope {
    /// From rise over run.
    pub const fn from_ratio(ratio: f64) -> Self {
        Self(ratio)
    }

    /// In rise over run.
    pub const fn ratio(self) -> f64 {
        self.0
    }

    /// From inches of rise in 4 ft of run.
    pub const fn from_in_per_4ft(in_per_4ft: f64) -> Self {
        Self(in_per_4ft / 48.0)
    }

    /// In inches of rise in 4 ft of run.
    pub const fn in_per_4ft(self) -> f64 {
        self.0 * 48.0
    }

    /// From inches of rise in a foot of run.
    pub const fn from_in_per_ft(in_per_ft: f64) -> Self {
        Self(in_per_ft / 12.0)
    }

    /// In inches of rise in a foot of run.
    pub const fn in_per_ft(self) -> f64 {
        self.0 * 12.0
    }

    /// From percent.
    pub const fn from_percent(percent: f64) -> Self {
        Self(percent / 100.0)
    }

    /// In percent.
    pub const fn percent(self) -> f64 {
        self.0 * 100.0
    }

    /// From millimetres of rise in a metre of run.
    pub const fn from_mm_per_m(mm_per_m: f64) -> Self {
        Self(mm_per_m / 1000.0)
    }

    /// In millimetres of rise in a metre of run.
    pub const fn mm_per_m(self) -> f64 {
        self.0 * 1000.0
    }

    /// From degrees above level; nothing at a right angle and beyond.
    pub fn from_degrees(degrees: f64) -> Option<Self> {
        (degrees.abs() < 90.0).then(|| Self(degrees.to_radians().tan()))
    }

    /// In degrees above level.
    pub fn degrees(self) -> f64 {
        self.0.atan().to_degrees()
    }

    /// From the run for a rise of 1 (`12`: 1 in 12); nothing for a run of 0.
    pub fn from_one_to(run: f64) -> Option<Self> {
        (run != 0.0 && run.is_finite()).then(|| Self(1.0 / run))
    }

    /// The run for a rise of 1; nothing for level, which has none.
    pub fn one_to(self) -> Option<f64> {
        let run = 1.0 / self.0;
        run.is_finite().then_some(run)
    }

    /// In a unit; nothing only for level as 1:n.
    pub fn in_unit(self, unit: SlopeUnit) -> Option<f64> {
        Some(match unit {
            SlopeUnit::InPer4Ft => self.in_per_4ft(),
            SlopeUnit::InPerFt => self.in_per_ft(),
            SlopeUnit::Percent => self.percent(),
            SlopeUnit::Degrees => self.degrees(),
            SlopeUnit::MmPerM => self.mm_per_m(),
            SlopeUnit::OneTo => return self.one_to(),
        })
    }

    /// True for a finite ratio; every parsed slope is finite.
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }

    /// The number in a unit with its symbols: `0.25 in/4 ft`, `0.25 in/ft`, `2.08%`, `1.19°`, `1:48`,
    /// `20.8 mm/m`. A slope that has no run to a rise of 1 is written `0%`.
    pub fn format(self, unit: SlopeUnit, decimals: u8) -> String {
        let Some(value) = self.in_unit(unit) else {
            return self.format(SlopeUnit::Percent, decimals);
        };
        let number = fixed(value.abs(), decimals);
        let minus = if value < 0.0 && number != "0" {
            "-"
        } else {
            ""
        };
        match unit {
            SlopeUnit::InPer4Ft => format!("{minus}{number} in/4 ft"),
            SlopeUnit::InPerFt => format!("{minus}{number} in/ft"),
            SlopeUnit::Percent => format!("{minus}{number}%"),
            SlopeUnit::Degrees => format!("{minus}{number}°"),
            SlopeUnit::OneTo => format!("{minus}1:{number}"),
            SlopeUnit::MmPerM => format!("{minus}{number} mm/m"),
        }
    }
}

/// In percent, to the hundredth: `2.08%`.
impl fmt::Display for Slope {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.format(SlopeUnit::Percent, 2))
    }
}

/// The unit that a bare number is read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SlopeUnit {
    /// Inches of rise in 4 ft of run.
    #[default]
    #[serde(rename = "in_per_4ft")]
    InPer4Ft,
    /// Inches of rise in a foot of run.
    InPerFt,
    /// Percent.
    Percent,
    /// Degrees above level.
    Degrees,
    /// The run for a rise of 1.
    OneTo,
    /// Millimetres of rise in a metre of run.
    MmPerM,
}

impl SlopeUnit {
    /// Every unit.
    pub const ALL: [Self; 6] = [
        Self::InPer4Ft,
        Self::InPerFt,
        Self::Percent,
        Self::Degrees,
        Self::OneTo,
        Self::MmPerM,
    ];

    /// The code that a job document keeps.
    pub const fn code(self) -> &'static str {
        match self {
            Self::InPer4Ft => "in_per_4ft",
            Self::InPerFt => "in_per_ft",
            Self::Percent => "percent",
            Self::Degrees => "degrees",
            Self::OneTo => "one_to",
            Self::MmPerM => "mm_per_m",
        }
    }

    /// The unit of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|unit| unit.code() == code)
    }
}

/// Why a text is not a slope.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum SlopeRefusal {
    /// A number in it can't be read.
    #[error(transparent)]
    Number(#[from] NumberRefusal),
    /// A word where a unit should stand.
    #[error("{piece:?} at {at} is no unit")]
    UnknownUnit {
        /// The word as typed.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
    },
    /// A rise or a run without its unit: `1/4 in 4 ft`, `1/4 in per 4`.
    #[error("{piece:?} at {at} has no unit")]
    UnitMissing {
        /// The number without one.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
    },
    /// A rise without a run: `1/4 in`.
    #[error("no run")]
    RunMissing,
    /// A run of zero: `1:0`.
    #[error("run of zero")]
    ZeroRun,
    /// A run below 1 for a rise of 1, which is mostly a ratio without its colon: `1/12` where `1:12` is meant.
    #[error("1:{run} is steeper than 1:1")]
    RunBelowOne {
        /// The number as read.
        run: f64,
    },
    /// A right angle or more.
    #[error("{degrees} degrees")]
    PastUpright {
        /// The angle.
        degrees: f64,
    },
}

impl From<LengthRefusal> for SlopeRefusal {
    fn from(refusal: LengthRefusal) -> Self {
        match refusal {
            LengthRefusal::UnknownUnit { piece, at } => Self::UnknownUnit { piece, at },
            LengthRefusal::UnitMissing { piece, at } => Self::UnitMissing { piece, at },
            LengthRefusal::NotUnderstood { piece, at } => {
                Self::Number(NumberRefusal::NotUnderstood { piece, at })
            }
            // Only the unit after a number is read as a length's, and that has no other refusal.
            _ => Self::RunMissing,
        }
    }
}

/// Reads a slope; a number without a unit is in `bare`.
///
/// - rise and run, each one number with its unit: `1/4 in per ft`, `1/4"/ft`, `1/4 in in 4 ft`, `20 mm/m`,
///   `3/4" over 12'`, `1/4 pulg por pie`, `2 cm en 1 m`; a run without a number is one of its unit;
/// - `1:12`, `2 : 12`, and with whole numbers `1 in 12`, `1 en 12`;
/// - `2%`, `2 percent`, `2 por ciento`; `3°`, `3 deg`, `3 grados`.
///
/// `1/4 in 4 ft` could be a quarter inch or a quarter of something else and is refused. So is a bare number
/// below 1 where the field reads 1:n.
///
/// # Errors
/// Every [`SlopeRefusal`].
///
/// ```
/// use calc::quantity::slope::{SlopeUnit, parse_slope};
/// let in_per_4ft = |text| parse_slope(text, SlopeUnit::InPer4Ft).map(|s| s.in_per_4ft());
/// assert_eq!(in_per_4ft("1/4 in per ft"), Ok(1.0));
/// assert_eq!(in_per_4ft("1:48"), Ok(1.0));
/// assert_eq!(in_per_4ft("1/4"), Ok(0.25));
/// ```
pub fn parse_slope(text: &str, bare: SlopeUnit) -> Result<Slope, SlopeRefusal> {
    Ok(read_slope_text(text, bare)?.0)
}

/// Reads a slope; the flag is true where the text names its unit itself.
pub(crate) fn read_slope_text(text: &str, bare: SlopeUnit) -> Result<(Slope, bool), SlopeRefusal> {
    let mut scanner = Scanner::new(text)?;
    let negative = scanner.sign();
    let rise = scanner.group()?.ok_or_else(|| scanner.refusal())?;
    let value = rise.value;
    if scanner.is_done() {
        return Ok((checked(bare_ratio(value, bare)?, negative)?, false));
    }
    let word = scanner.word().unwrap_or_default();
    let before_number = matches!(scanner.peek_at(1), Some(Kind::Number { .. }));
    let ratio = match (scanner.peek(), word.as_str()) {
        (Some(Kind::Percent), _) | (_, "percent" | "pct") => {
            scanner.advance();
            value / 100.0
        }
        (_, "por") if scanner.peek_at(1) == Some(Kind::Word) => {
            scanner.advance();
            if scanner.word().as_deref() != Some("ciento") {
                return Err(scanner.refusal().into());
            }
            scanner.advance();
            value / 100.0
        }
        (Some(Kind::Degree), _)
        | (_, "deg" | "degs" | "degree" | "degrees" | "grado" | "grados") => {
            scanner.advance();
            bare_ratio(value, SlopeUnit::Degrees)?
        }
        (Some(Kind::Colon), _) => {
            scanner.advance();
            let run = scanner.group()?.ok_or_else(|| scanner.refusal())?;
            over(value, run.value)?
        }
        (_, "in" | "en" | "to") if before_number => {
            scanner.advance();
            let run = scanner.group()?.ok_or_else(|| scanner.refusal())?;
            // `1/4 in 12` and `1 in 12 ft` may leave out "inches".
            if !scanner.is_done() || !rise.is_whole() || !run.is_whole() {
                let (piece, at) = scanner.place_of(&rise);
                return Err(SlopeRefusal::UnitMissing { piece, at });
            }
            over(value, run.value)?
        }
        _ => rise_and_run(&mut scanner, value)?,
    };
    scanner.finish()?;
    Ok((checked(ratio, negative)?, true))
}

/// The rest of `1/4 in per 4 ft` after `1/4`.
fn rise_and_run(scanner: &mut Scanner<'_>, rise: f64) -> Result<f64, SlopeRefusal> {
    let rise = Length::from_unit(rise, unit(scanner)?);
    let per = scanner.word().is_some_and(|word| {
        matches!(
            word.as_str(),
            "per" | "in" | "over" | "to" | "por" | "en" | "a" | "cada"
        )
    });
    match scanner.peek() {
        None => return Err(SlopeRefusal::RunMissing),
        Some(Kind::Slash) => scanner.advance(),
        Some(_) if per => scanner.advance(),
        Some(_) => return Err(scanner.refusal().into()),
    }
    let run = match scanner.group()? {
        Some(run) if scanner.is_done() => {
            let (piece, at) = scanner.place_of(&run);
            return Err(SlopeRefusal::UnitMissing { piece, at });
        }
        Some(run) => run.value,
        None if scanner.is_done() => return Err(SlopeRefusal::RunMissing),
        None => 1.0,
    };
    let run = Length::from_unit(run, unit(scanner)?);
    over(rise.inches(), run.inches())
}

fn unit(scanner: &mut Scanner<'_>) -> Result<LengthUnit, SlopeRefusal> {
    Ok(length::unit_token(scanner)?.ok_or_else(|| scanner.refusal())?)
}

fn over(rise: f64, run: f64) -> Result<f64, SlopeRefusal> {
    if run == 0.0 {
        Err(SlopeRefusal::ZeroRun)
    } else {
        Ok(rise / run)
    }
}

fn bare_ratio(value: f64, unit: SlopeUnit) -> Result<f64, SlopeRefusal> {
    Ok(match unit {
        SlopeUnit::InPer4Ft => Slope::from_in_per_4ft(value).0,
        SlopeUnit::InPerFt => Slope::from_in_per_ft(value).0,
        SlopeUnit::Percent => Slope::from_percent(value).0,
        SlopeUnit::MmPerM => Slope::from_mm_per_m(value).0,
        SlopeUnit::Degrees => {
            Slope::from_degrees(value)
                .ok_or(SlopeRefusal::PastUpright { degrees: value })?
                .0
        }
        SlopeUnit::OneTo if value > 0.0 && value < 1.0 => {
            return Err(SlopeRefusal::RunBelowOne { run: value });
        }
        SlopeUnit::OneTo => over(1.0, value)?,
    })
}

fn checked(ratio: f64, negative: bool) -> Result<Slope, SlopeRefusal> {
    Ok(Slope(within(signed(ratio, negative), STEEPEST_RATIO)?))
}
