//! Areas.

use std::fmt;

use serde::Serialize;
use thiserror::Error;

use super::number::{NumberRefusal, fixed, signed_number};
use super::scan::Scanner;

/// Square inches in a square foot, 12 x 12.
pub const IN2_PER_FT2: f64 = 144.0;

/// Square inches in a square metre: one inch is 0.0254 m exactly (NIST SP 811, appendix B).
pub const IN2_PER_M2: f64 = 1e6 / 645.16;

/// An area, held in square inches.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Area(f64);

impl Area {
    /// From square inches.
    pub const fn from_in2(in2: f64) -> Self {
        Self(in2)
    }

    /// In square inches.
    pub const fn in2(self) -> f64 {
        self.0
    }

    /// From square feet.
    pub const fn from_ft2(ft2: f64) -> Self {
        Self(ft2 * IN2_PER_FT2)
    }

    /// In square feet.
    pub const fn ft2(self) -> f64 {
        self.0 / IN2_PER_FT2
    }

    /// From square yards.
    pub const fn from_yd2(yd2: f64) -> Self {
        Self(yd2 * 1296.0)
    }

    /// In square yards.
    pub const fn yd2(self) -> f64 {
        self.0 / 1296.0
    }

    /// From square metres.
    pub const fn from_m2(m2: f64) -> Self {
        Self(m2 * IN2_PER_M2)
    }

    /// In square metres.
    pub const fn m2(self) -> f64 {
        self.0 / IN2_PER_M2
    }

    /// From so many of a unit.
    pub const fn from_unit(value: f64, unit: AreaUnit) -> Self {
        Self(value * unit.in2())
    }

    /// In a unit.
    pub const fn in_unit(self, unit: AreaUnit) -> f64 {
        self.0 / unit.in2()
    }

    /// True for a finite number; every parsed area is finite.
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }

    /// The number in a unit with its symbol: `120.5 ft²`.
    pub fn format(self, unit: AreaUnit, decimals: u8) -> String {
        format!("{} {}", fixed(self.in_unit(unit), decimals), unit.symbol())
    }
}

/// In square feet, to the hundredth: `120.5 ft²`.
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.format(AreaUnit::SquareFeet, 2))
    }
}

/// The unit that a bare number is read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum AreaUnit {
    /// Square inches.
    SquareInches,
    /// Square feet.
    #[default]
    SquareFeet,
    /// Square yards.
    SquareYards,
    /// Square metres.
    SquareMeters,
}

impl AreaUnit {
    /// Every unit.
    pub const ALL: [Self; 4] = [
        Self::SquareInches,
        Self::SquareFeet,
        Self::SquareYards,
        Self::SquareMeters,
    ];

    /// The code that a job document keeps.
    pub const fn code(self) -> &'static str {
        match self {
            Self::SquareInches => "in2",
            Self::SquareFeet => "ft2",
            Self::SquareYards => "yd2",
            Self::SquareMeters => "m2",
        }
    }

    /// The unit of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|unit| unit.code() == code)
    }

    /// The symbol to show.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::SquareInches => "in²",
            Self::SquareFeet => "ft²",
            Self::SquareYards => "yd²",
            Self::SquareMeters => "m²",
        }
    }

    /// Square inches in one.
    const fn in2(self) -> f64 {
        match self {
            Self::SquareInches => 1.0,
            Self::SquareFeet => IN2_PER_FT2,
            Self::SquareYards => 1296.0,
            Self::SquareMeters => IN2_PER_M2,
        }
    }

    /// Units by their English and Spanish words, as [`Scanner::unit_key`] writes them.
    fn from_key(key: &str) -> Option<Self> {
        Some(match key {
            "in2" | "sqin" | "squarein" | "squareinch" | "squareinches" | "pulg2" | "pulgadas2"
            | "pulgadascuadradas" | "pulgadacuadrada" => Self::SquareInches,
            "ft2" | "sqft" | "sf" | "squareft" | "squarefoot" | "squarefeet" | "pie2" | "pies2"
            | "piecuadrado" | "piescuadrados" => Self::SquareFeet,
            "yd2" | "sqyd" | "sqyds" | "sy" | "squareyd" | "squareyard" | "squareyards"
            | "yarda2" | "yardas2" | "yardacuadrada" | "yardascuadradas" => Self::SquareYards,
            "m2" | "sqm" | "mts2" | "squarem" | "squaremeter" | "squaremeters" | "squaremetre"
            | "squaremetres" | "metro2" | "metros2" | "metrocuadrado" | "metroscuadrados" => {
                Self::SquareMeters
            }
            _ => return None,
        })
    }
}

/// Why a text is not an area.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum AreaRefusal {
    /// The number in it can't be read.
    #[error(transparent)]
    Number(#[from] NumberRefusal),
    /// What follows the number is no unit of area.
    #[error("{piece:?} at {at} is no unit of area")]
    UnknownUnit {
        /// The piece as typed.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
    },
}

/// Reads an area: a number, with or without a unit (`sq ft`, `ft2`, `ft²`, `sf`, `sq in`, `sq yd`, `m2`,
/// `pies cuadrados`, ...); without one in `bare`.
///
/// # Errors
/// Every [`AreaRefusal`].
///
/// ```
/// use calc::quantity::area::{AreaUnit, parse_area};
/// let ft2 = |text| parse_area(text, AreaUnit::SquareFeet).map(|a| a.ft2());
/// assert_eq!(ft2("120 1/2"), Ok(120.5));
/// assert_eq!(ft2("10 sq. yd."), Ok(90.0));
/// ```
pub fn parse_area(text: &str, bare: AreaUnit) -> Result<Area, AreaRefusal> {
    Ok(read_area_text(text, bare)?.0)
}

/// Reads an area; the flag is true where the text names its unit itself.
pub(crate) fn read_area_text(text: &str, bare: AreaUnit) -> Result<(Area, bool), AreaRefusal> {
    let mut scanner = Scanner::new(text)?;
    let value = signed_number(&mut scanner)?;
    if scanner.is_done() {
        return Ok((Area::from_unit(value, bare), false));
    }
    match scanner.unit_key().and_then(|key| AreaUnit::from_key(&key)) {
        Some(unit) => Ok((Area::from_unit(value, unit), true)),
        None => {
            let (piece, at) = scanner.remainder();
            Err(AreaRefusal::UnknownUnit { piece, at })
        }
    }
}
