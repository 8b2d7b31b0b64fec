//! Plain numbers: read as people write them, written without noise.

use serde::Serialize;
use thiserror::Error;

use super::scan::{Kind, Scanner};

/// The largest size of a plain number.
pub const LARGEST_NUMBER: f64 = 1e12;

/// What stands in a text where a figure isn't a finite number.
pub const NOT_FINITE: &str = "?";

/// Why a text is not a number.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum NumberRefusal {
    /// Nothing was typed.
    #[error("nothing typed")]
    Blank,
    /// A piece that means nothing here.
    #[error("{piece:?} at {at} not understood")]
    NotUnderstood {
        /// The piece as typed.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
    },
    /// A fraction over zero.
    #[error("denominator of zero")]
    ZeroDenominator,
    /// A mixed number whose fraction is one or more, as in `3 9/8`.
    #[error("fraction {numerator}/{denominator} after a whole number")]
    FractionPastOne {
        /// Over the bar.
        numerator: f64,
        /// Under the bar.
        denominator: f64,
    },
    /// One comma before exactly three digits: decimals or thousands.
    #[error("{piece:?} may be {as_decimal} or {as_thousands}")]
    AmbiguousComma {
        /// The number as typed.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
        /// Its value with a decimal comma.
        as_decimal: f64,
        /// Its value with a comma between thousands.
        as_thousands: f64,
    },
    /// Beyond any use.
    #[error("too large")]
    TooLarge,
    /// A part of one where only whole numbers count.
    #[error("{value} is not whole")]
    NotWhole {
        /// The number.
        value: f64,
    },
}

/// Reads a number: `12`, `87.625`, `2,5`, `1/2`, `1 1/2`, `1-1/2`, `1½`, `-3`, `1,234.5`.
///
/// # Errors
/// Every [`NumberRefusal`] but `NotWhole`; the size is at most [`LARGEST_NUMBER`].
///
/// ```
/// use calc::quantity::number::{NumberRefusal, parse_number};
/// assert_eq!(parse_number("1 1/2"), Ok(1.5));
/// assert_eq!(parse_number("2,5"), Ok(2.5));
/// assert_eq!(parse_number(" "), Err(NumberRefusal::Blank));
/// ```
pub fn parse_number(text: &str) -> Result<f64, NumberRefusal> {
    read(text, false)
}

/// Reads a percentage, with or without its sign: `10`, `10%`, `7 1/2 %`; the result is in percent.
///
/// # Errors
/// As [`parse_number`].
///
/// ```
/// assert_eq!(calc::quantity::number::parse_percent("7,5 %"), Ok(7.5));
/// ```
pub fn parse_percent(text: &str) -> Result<f64, NumberRefusal> {
    read(text, true)
}

/// Reads a whole number; `3.0` is one.
///
/// # Errors
/// As [`parse_number`], and `NotWhole`.
///
/// ```
/// use calc::quantity::number::{NumberRefusal, parse_whole};
/// assert_eq!(parse_whole("12"), Ok(12));
/// assert_eq!(parse_whole("2 1/2"), Err(NumberRefusal::NotWhole { value: 2.5 }));
/// ```
pub fn parse_whole(text: &str) -> Result<i64, NumberRefusal> {
    let value = parse_number(text)?;
    if value.fract() != 0.0 {
        return Err(NumberRefusal::NotWhole { value });
    }
    Ok(value as i64) // exact: whole and at most 1e12
}

fn read(text: &str, percent: bool) -> Result<f64, NumberRefusal> {
    let mut scanner = Scanner::new(text)?;
    let value = signed_number(&mut scanner)?;
    if percent && scanner.peek() == Some(Kind::Percent) {
        scanner.advance();
    }
    scanner.finish()?;
    Ok(value)
}

/// Reads a sign and a number of at most [`LARGEST_NUMBER`], never a negative zero.
pub(crate) fn signed_number(scanner: &mut Scanner<'_>) -> Result<f64, NumberRefusal> {
    let negative = scanner.sign();
    let group = scanner.group()?.ok_or_else(|| scanner.refusal())?;
    within(signed(group.value, negative), LARGEST_NUMBER)
}

/// A value with its sign, never a negative zero.
pub(crate) fn signed(value: f64, negative: bool) -> f64 {
    if negative && value != 0.0 {
        -value
    } else {
        value
    }
}

/// Refuses what isn't finite or is larger than `most`.
pub(crate) fn within(value: f64, most: f64) -> Result<f64, NumberRefusal> {
    // Written so that NaN is refused as well.
    if value.abs() <= most {
        Ok(value)
    } else {
        Err(NumberRefusal::TooLarge)
    }
}

/// Writes a number with at most `decimals` decimals (up to 12), halves away from zero, without trailing zeros
/// and never as `-0`; [`NOT_FINITE`] where it isn't a finite number.
///
/// ```
/// use calc::quantity::number::fixed;
/// assert_eq!(fixed(6.35, 1), "6.4");
/// assert_eq!(fixed(12.0, 2), "12");
/// assert_eq!(fixed(-0.001, 2), "0");
/// ```
pub fn fixed(value: f64, decimals: u8) -> String {
    if !value.is_finite() {
        return NOT_FINITE.to_owned();
    }
    let decimals = usize::from(decimals.min(12));
    let scale = 10_f64.powi(decimals as i32);
    // Scaled first: 6.35 is held just below itself, and 63.5 is what a person would round.
    let scaled = value * scale;
    let rounded = if scaled.abs() < 1e15 {
        scaled.round() / scale
    } else {
        value
    };
    let text = format!("{rounded:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" { "0" } else { text }.to_owned()
}
