//! Volumes.

use std::fmt;

use serde::Serialize;
use thiserror::Error;

use super::number::{NumberRefusal, fixed, signed_number};
use super::scan::Scanner;

/// Cubic inches in a cubic foot, 12 x 12 x 12.
pub const IN3_PER_FT3: f64 = 1728.0;

/// Cubic inches in a litre: one inch is 2.54 cm exactly, so a cubic inch is 16.387064 mL (NIST SP 811,
/// appendix B).
pub const IN3_PER_L: f64 = 1000.0 / 16.387064;

/// Cubic inches in a US gallon, exact (NIST Handbook 44, appendix C).
pub const IN3_PER_GAL: f64 = 231.0;

/// Cubic inches in a US liquid quart, a quarter of a gallon, exact (NIST Handbook 44, appendix C).
pub const IN3_PER_QT: f64 = 57.75;

/// A volume, held in cubic inches.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize)]
#[serde(transparent)]
pub struct Volume(f64);

impl Volume {
    /// From cubic inches.
    pub const fn from_in3(in3: f64) -> Self {
        Self(in3)
    }

    /// In cubic inches.
    pub const fn in3(self) -> f64 {
        self.0
    }

    /// From cubic feet.
    pub const fn from_ft3(ft3: f64) -> Self {
        Self(ft3 * IN3_PER_FT3)
    }

    /// In cubic feet.
    pub const fn ft3(self) -> f64 {
        self.0 / IN3_PER_FT3
    }

    /// From cubic yards.
    pub const fn from_yd3(yd3: f64) -> Self {
        Self(yd3 * 46_656.0)
    }

    /// In cubic yards.
    pub const fn yd3(self) -> f64 {
        self.0 / 46_656.0
    }

    /// From litres.
    pub const fn from_liters(liters: f64) -> Self {
        Self(liters * IN3_PER_L)
    }

    /// In litres.
    pub const fn liters(self) -> f64 {
        self.0 / IN3_PER_L
    }

    /// From cubic metres.
    pub const fn from_m3(m3: f64) -> Self {
        Self::from_liters(m3 * 1000.0)
    }

    /// In cubic metres.
    pub const fn m3(self) -> f64 {
        self.liters() / 1000.0
    }

    /// From US gallons.
    pub const fn from_gal(gal: f64) -> Self {
        Self(gal * IN3_PER_GAL)
    }

    /// In US gallons.
    pub const fn gal(self) -> f64 {
        self.0 / IN3_PER_GAL
    }

    /// From US liquid quarts.
    pub const fn from_qt(qt: f64) -> Self {
        Self(qt * IN3_PER_QT)
    }

    /// In US liquid quarts.
    pub const fn qt(self) -> f64 {
        self.0 / IN3_PER_QT
    }

    /// From so many of a unit.
    pub const fn from_unit(value: f64, unit: VolumeUnit) -> Self {
        Self(value * unit.in3())
    }

    /// In a unit.
    pub const fn in_unit(self, unit: VolumeUnit) -> f64 {
        self.0 / unit.in3()
    }

    /// True for a finite number; every parsed volume is finite.
    pub const fn is_finite(self) -> bool {
        self.0.is_finite()
    }

    /// The number in a unit with its symbol: `4.1 ft³`.
    pub fn format(self, unit: VolumeUnit, decimals: u8) -> String {
        format!("{} {}", fixed(self.in_unit(unit), decimals), unit.symbol())
    }
}

/// In cubic feet, to the hundredth: `4.1 ft³`.
impl fmt::Display for Volume {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.format(VolumeUnit::CubicFeet, 2))
    }
}

/// The unit that a bare number is read in. Gallons and quarts are the US liquid measures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum VolumeUnit {
    /// Cubic inches.
    CubicInches,
    /// Cubic feet.
    #[default]
    CubicFeet,
    /// Cubic yards.
    CubicYards,
    /// Litres.
    Liters,
    /// Cubic metres.
    CubicMeters,
    /// US gallons.
    Gallons,
    /// US liquid quarts.
    Quarts,
}

impl VolumeUnit {
    /// Every unit.
    pub const ALL: [Self; 7] = [
        Self::CubicInches,
        Self::CubicFeet,
        Self::CubicYards,
        Self::Liters,
        Self::CubicMeters,
        Self::Gallons,
        Self::Quarts,
    ];

    /// The code that a job document keeps.
    pub const fn code(self) -> &'static str {
        match self {
            Self::CubicInches => "in3",
            Self::CubicFeet => "ft3",
            Self::CubicYards => "yd3",
            Self::Liters => "L",
            Self::CubicMeters => "m3",
            Self::Gallons => "gal",
            Self::Quarts => "qt",
        }
    }

    /// The unit of a code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|unit| unit.code() == code)
    }

    /// The symbol to show.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::CubicInches => "in³",
            Self::CubicFeet => "ft³",
            Self::CubicYards => "yd³",
            Self::CubicMeters => "m³",
            Self::Liters | Self::Gallons | Self::Quarts => self.code(),
        }
    }

    /// Cubic inches in one.
    const fn in3(self) -> f64 {
        match self {
            Self::CubicInches => 1.0,
            Self::CubicFeet => IN3_PER_FT3,
            Self::CubicYards => 46_656.0,
            Self::Liters => IN3_PER_L,
            Self::CubicMeters => 1000.0 * IN3_PER_L,
            Self::Gallons => IN3_PER_GAL,
            Self::Quarts => IN3_PER_QT,
        }
    }

    /// Units by their English and Spanish words, as [`Scanner::unit_key`] writes them.
    fn from_key(key: &str) -> Option<Self> {
        Some(match key {
            "in3" | "cuin" | "cubicin" | "cubicinch" | "cubicinches" | "pulg3" | "pulgadas3"
            | "pulgadacubica" | "pulgadascubicas" | "pulgadacúbica" | "pulgadascúbicas" => {
                Self::CubicInches
            }
            "ft3" | "cuft" | "cf" | "cubicft" | "cubicfoot" | "cubicfeet" | "pie3" | "pies3"
            | "piecubico" | "piescubicos" | "piecúbico" | "piescúbicos" => Self::CubicFeet,
            "yd3" | "cuyd" | "cuyds" | "cy" | "cubicyd" | "cubicyard" | "cubicyards" | "yarda3"
            | "yardas3" | "yardacubica" | "yardascubicas" | "yardacúbica" | "yardascúbicas" => {
                Self::CubicYards
            }
            "l" | "ℓ" | "lt" | "lts" | "liter" | "liters" | "litre" | "litres" | "litro"
            | "litros" => Self::Liters,
            "m3" | "cum" | "mts3" | "cubicm" | "cubicmeter" | "cubicmeters" | "cubicmetre"
            | "cubicmetres" | "metro3" | "metros3" | "metrocubico" | "metroscubicos"
            | "metrocúbico" | "metroscúbicos" => Self::CubicMeters,
            "gal" | "gals" | "gallon" | "gallons" | "usgal" | "galon" | "galón" | "galones" => {
                Self::Gallons
            }
            "qt" | "qts" | "quart" | "quarts" | "cuarto" | "cuartos" => Self::Quarts,
            _ => return None,
        })
    }
}

/// Why a text is not a volume.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum VolumeRefusal {
    /// The number in it can't be read.
    #[error(transparent)]
    Number(#[from] NumberRefusal),
    /// What follows the number is no unit of volume.
    #[error("{piece:?} at {at} is no unit of volume")]
    UnknownUnit {
        /// The piece as typed.
        piece: String,
        /// Where it begins, in characters from the start.
        at: usize,
    },
}

/// Reads a volume: a number, with or without a unit (`cu ft`, `ft3`, `ft³`, `L`, `litros`, `gal`, `qt`, `cu yd`,
/// `m3`, ...); without one in `bare`.
///
/// # Errors
/// Every [`VolumeRefusal`].
///
/// ```
/// use calc::quantity::volume::{VolumeUnit, parse_volume};
/// let in3 = |text| parse_volume(text, VolumeUnit::CubicFeet).map(|v| v.in3());
/// assert_eq!(in3("0.5"), Ok(864.0));
/// assert_eq!(in3("2 gal"), Ok(462.0));
/// ```
pub fn parse_volume(text: &str, bare: VolumeUnit) -> Result<Volume, VolumeRefusal> {
    Ok(read_volume_text(text, bare)?.0)
}

/// Reads a volume; the flag is true where the text names its unit itself.
pub(crate) fn read_volume_text(
    text: &str,
    bare: VolumeUnit,
) -> Result<(Volume, bool), VolumeRefusal> {
    let mut scanner = Scanner::new(text)?;
    let value = signed_number(&mut scanner)?;
    if scanner.is_done() {
        return Ok((Volume::from_unit(value, bare), false));
    }
    match scanner
        .unit_key()
        .and_then(|key| VolumeUnit::from_key(&key))
    {
        Some(unit) => Ok((Volume::from_unit(value, unit), true)),
        None => {
            let (piece, at) = scanner.remainder();
            Err(VolumeRefusal::UnknownUnit { piece, at })
        }
    }
}
