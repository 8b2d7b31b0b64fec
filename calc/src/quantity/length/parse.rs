//! Reading a length as people write it.

use serde::Serialize;
use thiserror::Error;

use super::{Length, LengthUnit};
use crate::quantity::number::{self, NumberRefusal};
use crate::quantity::scan::{Group, Kind, Scanner};

/// The largest length that is read, about 16 miles, in inches.
pub const LARGEST_IN: f64 = 1e6;

/// Why a text is not a length.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum LengthRefusal {
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
    /// A word where a unit of length should stand.
    #[error("{piece:?} at {at} is no unit of length")]
    UnknownUnit {
        /// The word as typed.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
    },
    /// Two numbers of which one needs its unit: `7 3`, `2 m 50`.
    #[error("{piece:?} at {at} has no unit")]
    UnitMissing {
        /// The number without one.
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
    /// The same unit a second time: `7' 3'`.
    #[error("{unit:?} twice")]
    UnitTwice {
        /// The unit.
        unit: LengthUnit,
    },
    /// A larger unit after a smaller: `3" 7'`.
    #[error("{larger:?} after {smaller:?}")]
    WrongOrder {
        /// The unit that came first.
        smaller: LengthUnit,
        /// The unit that came after it.
        larger: LengthUnit,
    },
    /// Feet or inches together with metric units.
    #[error("{first:?} with {second:?}")]
    MixedSystems {
        /// The unit that came first.
        first: LengthUnit,
        /// The unit that came after it.
        second: LengthUnit,
    },
    /// A part of a unit before a smaller unit: `7.5' 3"`.
    #[error("{value} {unit:?} before a smaller unit")]
    PartBeforeSmaller {
        /// The number.
        value: f64,
        /// Its unit.
        unit: LengthUnit,
    },
    /// Feet and inches without marks, and 12 in or more: `7 14 5/8`.
    #[error("{inches} in after feet without marks")]
    InchesPastFoot {
        /// The inches.
        inches: f64,
    },
    /// Longer than [`LARGEST_IN`].
    #[error("too large")]
    TooLarge,
}

impl From<NumberRefusal> for LengthRefusal {
    fn from(refusal: NumberRefusal) -> Self {
        match refusal {
            NumberRefusal::Blank => Self::Blank,
            NumberRefusal::NotUnderstood { piece, at } => Self::NotUnderstood { piece, at },
            NumberRefusal::ZeroDenominator => Self::ZeroDenominator,
            NumberRefusal::FractionPastOne {
                numerator,
                denominator,
            } => Self::FractionPastOne {
                numerator,
                denominator,
            },
            NumberRefusal::AmbiguousComma {
                piece,
                at,
                as_decimal,
                as_thousands,
            } => Self::AmbiguousComma {
                piece,
                at,
                as_decimal,
                as_thousands,
            },
            NumberRefusal::TooLarge => Self::TooLarge,
            // Never said of a length; kept whole all the same.
            NumberRefusal::NotWhole { value } => Self::NotUnderstood {
                piece: value.to_string(),
                at: 0,
            },
        }
    }
}

/// Reads a length; a number without a unit is in `bare`.
///
/// ```text
/// length    = [sign] ( measures | number | trade )
/// measures  = number unit { [joint] number unit } [ [joint] number ]
/// trade     = feet (blank | hyphen) inches [inch unit]
/// number    = whole | decimal | fraction | whole (blank | hyphen | nothing) fraction
/// unit      = ' " ft foot feet in inch inches mm cm m meters pies pulgadas pulg plg metros ...
/// joint     = "-" after feet | "and" | "y" | "con" | ","
/// ```
///
/// - `87.625`, `3/8`, `87 5/8`, `87-5/8`: one number in `bare`.
/// - `7' 3 5/8"`, `7 ft 3 in`, `2 m 26 cm`: units from large to small, of one system, each once, whole but for
///   the last. The last number after feet may leave its unit out: `7' 3-5/8`.
/// - `7 3-5/8`, `7 3 5/8`, `7-3-5/8`: the trade's short form, feet then inches with a fraction, below 12 in.
///   Whatever `bare` is: it has no other meaning. Without a fraction (`7 3`) it is refused.
/// - What numbers may look like: `½`, `5⁄8`, `2,5` and so on; a comma that could part thousands is refused.
/// - Marks: straight, typographic, primes; two single marks in a row are inches.
///
/// # Errors
/// Every [`LengthRefusal`]. The size is at most [`LARGEST_IN`].
///
/// ```
/// use calc::quantity::length::{LengthRefusal, LengthUnit, parse_length};
/// let inches = |text| parse_length(text, LengthUnit::Inches).map(|l| l.inches());
/// assert_eq!(inches("7' 3 5/8\""), Ok(87.625));
/// assert_eq!(inches("7 3-5/8"), Ok(87.625));
/// assert_eq!(inches("87 5/8"), Ok(87.625));
/// assert_eq!(inches("25.4 mm"), Ok(1.0));
/// assert_eq!(inches("3\" 2 cm"), Err(LengthRefusal::MixedSystems {
///     first: LengthUnit::Inches,
///     second: LengthUnit::Centimeters,
/// }));
/// ```
pub fn parse_length(text: &str, bare: LengthUnit) -> Result<Length, LengthRefusal> {
    Ok(read_length_text(text, bare)?.0)
}

/// Reads a length; the flag is true where the text names its units itself.
pub(crate) fn read_length_text(
    text: &str,
    bare: LengthUnit,
) -> Result<(Length, bool), LengthRefusal> {
    let mut scanner = Scanner::new(text)?;
    let negative = scanner.sign();
    let first = scanner.group()?.ok_or_else(|| scanner.refusal())?;
    let (length, own) = match unit_token(&mut scanner)? {
        Some(unit) if scanner.is_done() => (Length::from_unit(first.value, unit), true),
        Some(unit) => (measures(&mut scanner, first, unit)?, true),
        None if scanner.is_done() => (Length::from_unit(first.value, bare), false),
        None => (trade(&mut scanner, first)?, true),
    };
    let inches = on_mark(number::signed(length.inches(), negative));
    let inches = number::within(inches, LARGEST_IN)?;
    Ok((Length::from_inches(inches), own))
}

/// A mark of the tape where only the rounding of f64 stands between: 0.1778 m is 7 in, not a hair more.
fn on_mark(inches: f64) -> f64 {
    let mark = (inches * 64.0).round() / 64.0;
    if (inches - mark).abs() <= 4.0 * f64::EPSILON * mark.abs() {
        mark
    } else {
        inches
    }
}

/// The rest of `7 ft 3 in` after `7 ft`.
fn measures(
    scanner: &mut Scanner<'_>,
    first: Group,
    first_unit: LengthUnit,
) -> Result<Length, LengthRefusal> {
    let (mut last, mut last_unit) = (first, first_unit);
    // Summed in the small unit of the system, so that 7 ft 3 5/8 in is exact and 2 m 26 cm rounds once.
    let mut sum = first.value * in_small(first_unit);
    while !scanner.is_done() {
        if last_unit == LengthUnit::Feet {
            scanner.joiner();
        }
        if scanner
            .word()
            .is_some_and(|w| matches!(w.as_str(), "and" | "y" | "con"))
        {
            scanner.advance();
        }
        let group = scanner.group()?.ok_or_else(|| scanner.refusal())?;
        let unit = match unit_token(scanner)? {
            Some(unit) => unit,
            None if last_unit == LengthUnit::Feet && scanner.is_done() => LengthUnit::Inches,
            None => return Err(unit_missing(scanner, &group)),
        };
        if unit.is_metric() != last_unit.is_metric() {
            return Err(LengthRefusal::MixedSystems {
                first: last_unit,
                second: unit,
            });
        }
        if unit == last_unit {
            return Err(LengthRefusal::UnitTwice { unit });
        }
        if in_small(unit) > in_small(last_unit) {
            return Err(LengthRefusal::WrongOrder {
                smaller: last_unit,
                larger: unit,
            });
        }
        if !last.is_whole() {
            return Err(LengthRefusal::PartBeforeSmaller {
                value: last.value,
                unit: last_unit,
            });
        }
        sum += group.value * in_small(unit);
        (last, last_unit) = (group, unit);
    }
    Ok(if first_unit.is_metric() {
        Length::from_mm(sum)
    } else {
        Length::from_inches(sum)
    })
}

/// The rest of `7 3-5/8` after `7`.
fn trade(scanner: &mut Scanner<'_>, feet: Group) -> Result<Length, LengthRefusal> {
    scanner.tight_joiner();
    let Some(inches) = scanner.group()? else {
        return Err(scanner.refusal().into());
    };
    let unit = unit_token(scanner)?;
    if !inches.mixed
        || !feet.is_whole()
        || feet.mixed
        || unit.is_some_and(|u| u != LengthUnit::Inches)
    {
        return Err(unit_missing(scanner, &feet));
    }
    scanner.finish()?;
    if inches.value >= 12.0 {
        return Err(LengthRefusal::InchesPastFoot {
            inches: inches.value,
        });
    }
    Ok(Length::from_inches(feet.value * 12.0 + inches.value))
}

fn unit_missing(scanner: &Scanner<'_>, group: &Group) -> LengthRefusal {
    let (piece, at) = scanner.place_of(group);
    LengthRefusal::UnitMissing { piece, at }
}

/// Inches in an inch or a foot, millimetres in a metric unit.
const fn in_small(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inches | LengthUnit::Millimeters => 1.0,
        LengthUnit::Feet => 12.0,
        LengthUnit::Centimeters => 10.0,
        LengthUnit::Meters => 1000.0,
    }
}

/// Reads a unit of length, or nothing where no mark or word stands.
pub(crate) fn unit_token(scanner: &mut Scanner<'_>) -> Result<Option<LengthUnit>, LengthRefusal> {
    let unit = match scanner.peek() {
        Some(Kind::FeetMark) => LengthUnit::Feet,
        Some(Kind::InchMark) => LengthUnit::Inches,
        Some(Kind::Word) => match scanner.word().as_deref().and_then(unit_word) {
            Some(unit) => unit,
            None => {
                let (piece, at) = scanner.here();
                return Err(LengthRefusal::UnknownUnit { piece, at });
            }
        },
        _ => return Ok(None),
    };
    scanner.advance();
    Ok(Some(unit))
}

/// Units of length by their English and Spanish words and symbols, in lower case.
fn unit_word(word: &str) -> Option<LengthUnit> {
    Some(match word {
        "in" | "ins" | "inch" | "inches" | "pulg" | "pulgs" | "plg" | "plgs" | "pulgada"
        | "pulgadas" => LengthUnit::Inches,
        "ft" | "foot" | "feet" | "pie" | "pies" => LengthUnit::Feet,
        "mm" | "millimeter" | "millimeters" | "millimetre" | "millimetres" | "milimetro"
        | "milimetros" | "milímetro" | "milímetros" => LengthUnit::Millimeters,
        "cm" | "cms" | "centimeter" | "centimeters" | "centimetre" | "centimetres"
        | "centimetro" | "centimetros" | "centímetro" | "centímetros" => LengthUnit::Centimeters,
        "m" | "mts" | "meter" | "meters" | "metre" | "metres" | "metro" | "metros" => {
            LengthUnit::Meters
        }
        _ => return None,
    })
}
