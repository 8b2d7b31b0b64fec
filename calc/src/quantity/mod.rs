//! Quantities as the trade writes them: parse, hold, format.
//!
//! A length is held in inches: feet, inches and binary fractions, the trade's own numbers, are then exact, and
//! a millimetre is within one rounding of f64. Each quantity names its unit at both doors
//! ([`Length::from_mm`], [`Length::inches`]).

pub mod typed;

mod scan;

pub mod length;

pub mod area;

pub mod volume;

pub mod slope;

pub mod number;

pub mod entry;

pub use area::Area;
pub use length::{Length, LengthRefusal, LengthUnit};
pub use number::NumberRefusal;
pub use slope::Slope;
pub use typed::Typed;
pub use volume::Volume;
