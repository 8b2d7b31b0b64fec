//! Quantities as the trade writes them: parse, hold, format.
//!
//! A length is held in inches: feet, inches and binary fractions, the trade's own numbers, are then exact, and
//! a millimetre is within one rounding of f64. Each quantity names its unit at both doors
//! ([`Length::from_mm`], [`Length::inches`]).

pub mod typed;

pub mod length;

pub mod area;

pub mod volume;

pub mod slope;

pub mod number;

pub mod plain;

pub mod limits;

pub mod entry;

mod scan;

#[cfg(test)]
mod tests;

pub use area::{Area, AreaRefusal, AreaUnit, IN2_PER_FT2, parse_area};
pub use entry::{EntryRefusal, Quantity};
pub use length::{FeetInches, Length, LengthRefusal, LengthUnit, parse_length};
pub use limits::{
    AreaRange, End, LengthRange, Limits, NumberRange, SlopeRange, VolumeRange, WholeRange,
};
pub use number::{NumberRefusal, fixed, parse_number, parse_percent, parse_whole};
pub use plain::{decimal, lower};
pub use slope::{Slope, SlopeRefusal, SlopeUnit, parse_slope};
pub use typed::Typed;
pub use volume::{IN3_PER_FT3, Volume, VolumeRefusal, VolumeUnit, parse_volume};
