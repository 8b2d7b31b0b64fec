//! The border between the job document and the arithmetic: a typed entry becomes a quantity that its field
//! allows, or a refusal that stands beside the field.
//!
//! `read_*` takes the entry, the unit in which the field reads a bare number where the entry kept none, and
//! what the field allows. `optional_*` answers nothing for a blank entry, where `read_*` refuses it.

use serde::Serialize;
use thiserror::Error;

use super::area::{AreaRefusal, AreaUnit, read_area_text};
use super::length::{LengthRefusal, LengthUnit, read_length_text};
use super::limits::{
    AreaRange, End, LengthRange, Limits, NumberRange, SlopeRange, VolumeRange, WholeRange,
};
use super::number::{NumberRefusal, parse_number, parse_percent, parse_whole};
use super::slope::{SlopeRefusal, SlopeUnit, read_slope_text};
use super::volume::{VolumeRefusal, VolumeUnit, read_volume_text};
use super::{Area, Length, Slope, Typed, Volume};

/// A quantity of any kind, with the unit that the field shows it in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// A plain number.
    Number(f64),
    /// A whole number.
    Whole(i64),
    /// A length (saved in inches).
    Length(Length, LengthUnit),
    /// An area (saved in square inches).
    Area(Area, AreaUnit),
    /// A volume (saved in cubic inches).
    Volume(Volume, VolumeUnit),
    /// A slope (saved as rise over run).
    Slope(Slope, SlopeUnit),
}

/// Why an entry is not a quantity that its field allows.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum EntryRefusal {
    /// Nothing was typed.
    #[error("nothing typed")]
    Blank,
    /// It is for something that doesn't stand in its place: that has to be mended first.
    #[error("what it is for has no place")]
    NoPlace,
    /// The text is no length.
    #[error(transparent)]
    Length(LengthRefusal),
    /// The text is no number.
    #[error(transparent)]
    Number(NumberRefusal),
    /// The text is no slope.
    #[error(transparent)]
    Slope(SlopeRefusal),
    /// The text is no area.
    #[error(transparent)]
    Area(AreaRefusal),
    /// The text is no volume.
    #[error(transparent)]
    Volume(VolumeRefusal),
    /// Less than the field allows.
    #[error("less than {least:?}")]
    TooSmall {
        /// The low end.
        least: Quantity,
        /// True where `least` itself is allowed.
        inclusive: bool,
    },
    /// More than the field allows.
    #[error("more than {most:?}")]
    TooLarge {
        /// The high end.
        most: Quantity,
        /// True where `most` itself is allowed.
        inclusive: bool,
    },
    /// A part of one where only whole numbers count.
    #[error("{value} is not whole")]
    NotWhole {
        /// The number.
        value: f64,
    },
    /// A bare number, kept with a unit that its field doesn't know.
    #[error("unknown unit {unit:?}")]
    UnknownUnit {
        /// The unit's code as kept.
        unit: String,
    },
}

impl From<LengthRefusal> for EntryRefusal {
    fn from(refusal: LengthRefusal) -> Self {
        match refusal {
            LengthRefusal::Blank => Self::Blank,
            other => Self::Length(other),
        }
    }
}

impl From<NumberRefusal> for EntryRefusal {
    fn from(refusal: NumberRefusal) -> Self {
        match refusal {
            NumberRefusal::Blank => Self::Blank,
            NumberRefusal::NotWhole { value } => Self::NotWhole { value },
            other => Self::Number(other),
        }
    }
}

impl From<SlopeRefusal> for EntryRefusal {
    fn from(refusal: SlopeRefusal) -> Self {
        match refusal {
            SlopeRefusal::Number(NumberRefusal::Blank) => Self::Blank,
            other => Self::Slope(other),
        }
    }
}

impl From<AreaRefusal> for EntryRefusal {
    fn from(refusal: AreaRefusal) -> Self {
        match refusal {
            AreaRefusal::Number(NumberRefusal::Blank) => Self::Blank,
            other => Self::Area(other),
        }
    }
}

impl From<VolumeRefusal> for EntryRefusal {
    fn from(refusal: VolumeRefusal) -> Self {
        match refusal {
            VolumeRefusal::Number(NumberRefusal::Blank) => Self::Blank,
            other => Self::Volume(other),
        }
    }
}

/// Reads a length.
///
/// # Errors
/// A blank, a text that is no length, a length that the field doesn't allow, or a bare number whose kept unit
/// is no unit of length.
///
/// ```
/// use calc::quantity::{Length, LengthRange, LengthUnit, Typed, entry};
/// let allowed = LengthRange::above(Length::ZERO);
/// let kept = Typed::new("2226", "mm");
/// let length = entry::read_length(&kept, LengthUnit::Inches, &allowed);
/// assert_eq!(length, Ok(Length::from_mm(2226.0)));
/// assert!(entry::read_length(&Typed::plain("-3"), LengthUnit::Inches, &allowed).is_err());
/// ```
pub fn read_length(
    typed: &Typed,
    field: LengthUnit,
    allowed: &LengthRange,
) -> Result<Length, EntryRefusal> {
    let unit = unit_of(typed, field, LengthUnit::from_code);
    let (length, own) = read_length_text(&typed.text, unit.unwrap_or(field))?;
    known(typed, unit, own)?;
    within(length, allowed, |limit| {
        Quantity::Length(limit, unit.unwrap_or(field))
    })
}

/// Reads a length, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_length`], but for the blank.
pub fn optional_length(
    typed: &Typed,
    field: LengthUnit,
    allowed: &LengthRange,
) -> Result<Option<Length>, EntryRefusal> {
    optional(read_length(typed, field, allowed))
}

/// Reads a plain number.
///
/// # Errors
/// A blank, a text that is no number, a number that the field doesn't allow, or any kept unit.
pub fn read_number(typed: &Typed, allowed: &NumberRange) -> Result<f64, EntryRefusal> {
    let value = parse_number(&typed.text)?;
    without_unit(typed)?;
    within(value, allowed, Quantity::Number)
}

/// Reads a plain number, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_number`], but for the blank.
pub fn optional_number(typed: &Typed, allowed: &NumberRange) -> Result<Option<f64>, EntryRefusal> {
    optional(read_number(typed, allowed))
}

/// Reads a percentage, with or without its sign; the result and the limits are in percent.
///
/// # Errors
/// As [`read_number`]; `percent` as the kept unit is allowed.
pub fn read_percent(typed: &Typed, allowed: &NumberRange) -> Result<f64, EntryRefusal> {
    let value = parse_percent(&typed.text)?;
    if typed.unit != "percent" {
        without_unit(typed)?;
    }
    within(value, allowed, Quantity::Number)
}

/// Reads a percentage, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_percent`], but for the blank.
pub fn optional_percent(typed: &Typed, allowed: &NumberRange) -> Result<Option<f64>, EntryRefusal> {
    optional(read_percent(typed, allowed))
}

/// Reads a whole number.
///
/// # Errors
/// As [`read_number`], and a number that isn't whole.
pub fn read_whole(typed: &Typed, allowed: &WholeRange) -> Result<i64, EntryRefusal> {
    let value = parse_whole(&typed.text)?;
    without_unit(typed)?;
    within(value, allowed, Quantity::Whole)
}

/// Reads a whole number, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_whole`], but for the blank.
pub fn optional_whole(typed: &Typed, allowed: &WholeRange) -> Result<Option<i64>, EntryRefusal> {
    optional(read_whole(typed, allowed))
}

/// Reads a slope.
///
/// # Errors
/// A blank, a text that is no slope, a slope that the field doesn't allow, or a bare number whose kept unit is
/// no unit of slope.
pub fn read_slope(
    typed: &Typed,
    field: SlopeUnit,
    allowed: &SlopeRange,
) -> Result<Slope, EntryRefusal> {
    let unit = unit_of(typed, field, SlopeUnit::from_code);
    let (slope, own) = read_slope_text(&typed.text, unit.unwrap_or(field))?;
    known(typed, unit, own)?;
    within(slope, allowed, |limit| {
        Quantity::Slope(limit, unit.unwrap_or(field))
    })
}

/// Reads a slope, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_slope`], but for the blank.
pub fn optional_slope(
    typed: &Typed,
    field: SlopeUnit,
    allowed: &SlopeRange,
) -> Result<Option<Slope>, EntryRefusal> {
    optional(read_slope(typed, field, allowed))
}

/// Reads an area.
///
/// # Errors
/// A blank, a text that is no area, an area that the field doesn't allow, or a bare number whose kept unit is
/// no unit of area.
pub fn read_area(
    typed: &Typed,
    field: AreaUnit,
    allowed: &AreaRange,
) -> Result<Area, EntryRefusal> {
    let unit = unit_of(typed, field, AreaUnit::from_code);
    let (area, own) = read_area_text(&typed.text, unit.unwrap_or(field))?;
    known(typed, unit, own)?;
    within(area, allowed, |limit| {
        Quantity::Area(limit, unit.unwrap_or(field))
    })
}

/// Reads an area, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_area`], but for the blank.
pub fn optional_area(
    typed: &Typed,
    field: AreaUnit,
    allowed: &AreaRange,
) -> Result<Option<Area>, EntryRefusal> {
    optional(read_area(typed, field, allowed))
}

/// Reads a volume.
///
/// # Errors
/// A blank, a text that is no volume, a volume that the field doesn't allow, or a bare number whose kept unit
/// is no unit of volume.
pub fn read_volume(
    typed: &Typed,
    field: VolumeUnit,
    allowed: &VolumeRange,
) -> Result<Volume, EntryRefusal> {
    let unit = unit_of(typed, field, VolumeUnit::from_code);
    let (volume, own) = read_volume_text(&typed.text, unit.unwrap_or(field))?;
    known(typed, unit, own)?;
    within(volume, allowed, |limit| {
        Quantity::Volume(limit, unit.unwrap_or(field))
    })
}

/// Reads a volume, or nothing where nothing was typed.
///
/// # Errors
/// As [`read_volume`], but for the blank.
pub fn optional_volume(
    typed: &Typed,
    field: VolumeUnit,
    allowed: &VolumeRange,
) -> Result<Option<Volume>, EntryRefusal> {
    optional(read_volume(typed, field, allowed))
}

/// A number that was read already, of an entry that keeps no unit.
///
/// # Errors
/// As [`read_number`], but for the text.
pub(crate) fn within_number(
    typed: &Typed,
    value: f64,
    allowed: &NumberRange,
) -> Result<f64, EntryRefusal> {
    without_unit(typed)?;
    within(value, allowed, Quantity::Number)
}

/// True for a text that can be read and says its own unit, so that the field's unit code `unit` adds nothing:
/// `7' 3"` beside `mm`. A bare number and a text that can't be read yet need their unit kept.
pub fn names_its_unit(text: &str, unit: &str) -> bool {
    if let Some(unit) = LengthUnit::from_code(unit) {
        matches!(read_length_text(text, unit), Ok((_, true)))
    } else if let Some(unit) = AreaUnit::from_code(unit) {
        matches!(read_area_text(text, unit), Ok((_, true)))
    } else if let Some(unit) = VolumeUnit::from_code(unit) {
        matches!(read_volume_text(text, unit), Ok((_, true)))
    } else if let Some(unit) = SlopeUnit::from_code(unit) {
        matches!(read_slope_text(text, unit), Ok((_, true)))
    } else {
        false
    }
}

/// The unit to read a bare number in: the kept one, else the field's; nothing for a code that isn't known.
fn unit_of<U>(typed: &Typed, field: U, from_code: fn(&str) -> Option<U>) -> Option<U> {
    if typed.unit.is_empty() {
        Some(field)
    } else {
        from_code(&typed.unit)
    }
}

/// Refuses a bare number with an unknown unit; a text with units of its own doesn't need it.
fn known<U>(typed: &Typed, unit: Option<U>, own: bool) -> Result<(), EntryRefusal> {
    if own || unit.is_some() {
        Ok(())
    } else {
        Err(unknown(typed))
    }
}

fn without_unit(typed: &Typed) -> Result<(), EntryRefusal> {
    if typed.unit.is_empty() {
        Ok(())
    } else {
        Err(unknown(typed))
    }
}

fn unknown(typed: &Typed) -> EntryRefusal {
    EntryRefusal::UnknownUnit {
        unit: typed.unit.clone(),
    }
}

fn within<T: Copy + PartialOrd>(
    value: T,
    allowed: &Limits<T>,
    quantity: impl Fn(T) -> Quantity,
) -> Result<T, EntryRefusal> {
    if !allowed.is_high_enough(value)
        && let End::With(least) | End::Without(least) = allowed.least
    {
        return Err(EntryRefusal::TooSmall {
            least: quantity(least),
            inclusive: matches!(allowed.least, End::With(_)),
        });
    }
    if !allowed.is_low_enough(value)
        && let End::With(most) | End::Without(most) = allowed.most
    {
        return Err(EntryRefusal::TooLarge {
            most: quantity(most),
            inclusive: matches!(allowed.most, End::With(_)),
        });
    }
    Ok(value)
}

fn optional<T>(read: Result<T, EntryRefusal>) -> Result<Option<T>, EntryRefusal> {
    match read {
        Ok(value) => Ok(Some(value)),
        Err(EntryRefusal::Blank) => Ok(None),
        Err(refusal) => Err(refusal),
    }
}
