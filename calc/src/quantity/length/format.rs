//! Writing a length: feet, inches and a fraction, or metric.

use std::fmt;

use serde::Serialize;

use super::Length;
use crate::quantity::number::{NOT_FINITE, fixed};

/// A length rounded to a fraction of an inch, in parts as the tape shows them.
///
/// Displayed with marks only: `7' 3 5/8"`, `4' 0"`, `3 5/8"`, `5/8"`, `0"`, `-1/4"`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct FeetInches {
    /// Below zero; never for a length that rounds to nothing.
    pub negative: bool,
    /// Whole feet.
    pub feet: u32,
    /// Whole inches: below 12 unless the feet were left out.
    pub inches: u32,
    /// Over the bar; 0: no fraction.
    pub numerator: u32,
    /// Under the bar, in lowest terms; 1 where there is no fraction.
    pub denominator: u32,
}

impl fmt::Display for FeetInches {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.negative {
            f.write_str("-")?;
        }
        if self.feet > 0 {
            write!(f, "{}' ", self.feet)?;
        }
        match (self.inches, self.numerator) {
            (inches, 0) => write!(f, "{inches}\""),
            (0, n) if self.feet == 0 => write!(f, "{n}/{}\"", self.denominator),
            (inches, n) => write!(f, "{inches} {n}/{}\"", self.denominator),
        }
    }
}

impl Length {
    /// Feet, inches and a fraction, rounded to the nearest `1/fineness` in (2, 4, 8, 16, 32, 64; any other
    /// divisor up to 1000 works), halves away from zero. Nothing for a length that isn't finite or past 2³² ft,
    /// or for a fineness of 0.
    ///
    /// ```
    /// use calc::quantity::Length;
    /// let text = |inches, fineness| {
    ///     Length::from_inches(inches).feet_inches(fineness).map(|f| f.to_string())
    /// };
    /// assert_eq!(text(87.625, 16).as_deref(), Some("7' 3 5/8\""));
    /// assert_eq!(text(47.0 + 63.0 / 64.0, 16).as_deref(), Some("4' 0\""));
    /// ```
    pub fn feet_inches(self, fineness: u32) -> Option<FeetInches> {
        self.parts(fineness, true)
    }

    /// As [`Length::feet_inches`], with the feet counted in inches: `87 5/8"`.
    pub fn inches_fraction(self, fineness: u32) -> Option<FeetInches> {
        self.parts(fineness, false)
    }

    fn parts(self, fineness: u32, with_feet: bool) -> Option<FeetInches> {
        if !matches!(fineness, 1..=1000) || !self.is_finite() {
            return None;
        }
        let ticks = (self.inches().abs() * f64::from(fineness)).round();
        // Whole numbers up to 2^53 are exact.
        if ticks > 9_007_199_254_740_992.0 {
            return None;
        }
        let ticks = ticks as u64;
        let fineness = u64::from(fineness);
        let (whole, rest) = (ticks / fineness, ticks % fineness);
        let shared = common_divisor(fineness, rest);
        let (feet, inches) = if with_feet {
            (whole / 12, whole % 12)
        } else {
            (0, whole)
        };
        Some(FeetInches {
            negative: self.inches() < 0.0 && ticks > 0,
            feet: u32::try_from(feet).ok()?,
            inches: u32::try_from(inches).ok()?,
            numerator: u32::try_from(rest / shared).ok()?,
            denominator: u32::try_from(fineness / shared).ok()?,
        })
    }

    /// `7' 3 5/8"`, to the nearest `1/fineness` in; [`NOT_FINITE`] where [`Length::feet_inches`] has nothing.
    pub fn format_feet_inches(self, fineness: u32) -> String {
        or_not_finite(self.feet_inches(fineness))
    }

    /// `87 5/8"`, to the nearest `1/fineness` in; [`NOT_FINITE`] where [`Length::inches_fraction`] has nothing.
    pub fn format_inches(self, fineness: u32) -> String {
        or_not_finite(self.inches_fraction(fineness))
    }

    /// The next length up that is whole `step`s, for one that must be at least so long; one that is whole but for
    /// rounding stays.
    ///
    /// ```
    /// use calc::quantity::Length;
    /// // A ramp at 1:12 for 1.1155 in is 13.386 in long: on a tape of sixteenths 13-7/16 in, for 13-3/8 in falls short.
    /// let sixteenth = Length::from_inches(0.0625);
    /// assert_eq!(Length::from_inches(13.386).rounded_up(sixteenth), Length::from_inches(13.4375));
    /// assert_eq!(Length::from_inches(13.386).rounded_down(sixteenth), Length::from_inches(13.375));
    /// ```
    #[must_use]
    pub fn rounded_up(self, step: Self) -> Self {
        let steps = self.inches() / step.inches();
        Self::from_inches((steps - 1e-6).ceil() * step.inches())
    }

    /// The next length down, likewise, for one that must be at most so long.
    #[must_use]
    pub fn rounded_down(self, step: Self) -> Self {
        let steps = self.inches() / step.inches();
        Self::from_inches((steps + 1e-6).floor() * step.inches())
    }

    /// `2226 mm`; below 100 mm with a decimal where there is one: `6.4 mm`.
    ///
    /// ```
    /// use calc::quantity::Length;
    /// assert_eq!(Length::from_inches(87.625).format_mm(), "2226 mm");
    /// assert_eq!(Length::from_inches(0.25).format_mm(), "6.4 mm");
    /// ```
    pub fn format_mm(self) -> String {
        let decimals = u8::from(self.mm().abs() < 100.0);
        format!("{} mm", fixed(self.mm(), decimals))
    }

    /// `2.226 m`, to the millimetre.
    pub fn format_m(self) -> String {
        format!("{} m", fixed(self.m(), 3))
    }
}

/// To the nearest 1/16 in: `7' 3 5/8"`.
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.format_feet_inches(16))
    }
}

/// What was understood, in both systems: `7' 3 5/8" = 2226 mm`.
///
/// The inches are rounded to `1/fineness`; where that isn't exact, `≈` stands before them. `metric_first` puts
/// the millimetres in front: `2226 mm ≈ 7' 3 5/8"`.
///
/// ```
/// use calc::quantity::{Length, length::echo};
/// assert_eq!(echo(Length::from_inches(87.625), 16, false), "7' 3 5/8\" = 2226 mm");
/// assert_eq!(echo(Length::from_mm(2226.0), 16, true), "2226 mm ≈ 7' 3 5/8\"");
/// ```
pub fn echo(length: Length, fineness: u32, metric_first: bool) -> String {
    let ticks = length.inches() * f64::from(fineness);
    // A millionth of a tick is rounding of f64, not of the tape.
    let exact = (ticks - ticks.round()).abs() < 1e-6;
    let (inches, mm) = (length.format_feet_inches(fineness), length.format_mm());
    match (metric_first, exact) {
        (false, true) => format!("{inches} = {mm}"),
        (false, false) => format!("≈ {inches} = {mm}"),
        (true, true) => format!("{mm} = {inches}"),
        (true, false) => format!("{mm} ≈ {inches}"),
    }
}

fn or_not_finite(parts: Option<FeetInches>) -> String {
    parts.map_or_else(|| NOT_FINITE.to_owned(), |p| p.to_string())
}

fn common_divisor(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}
