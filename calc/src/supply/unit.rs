//! The units that a counter sells by and a quote is written in.
//!
//! Factors: NIST Handbook 44 (2024), Appendix C, "General Tables of Units of Measurement": 1 ft = 12 in, 1 yd = 3 ft,
//! 1 m = 39.370 08 in (1 in = 25.4 mm exactly), 1 gallon = 231 in^3 = 4 liquid quarts, 1 lb = 0.453 592 37 kg. A roofing and
//! siding square of 100 ft^2 is common practice.

use serde::Serialize;

use crate::quantity::lower;

/// What a unit measures. Amounts are compared only within one of these.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Dimension {
    /// Feet.
    Length,
    /// Square feet.
    Area,
    /// Cubic feet of a bulk material.
    Volume,
    /// US gallons of a liquid.
    Liquid,
    /// Pounds.
    Weight,
    /// Things, in packs or one by one.
    Count,
    /// Hours or days of work.
    Labour,
    /// A price for the whole, without an amount.
    Lump,
}

/// A unit of a quote or of a counter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Inches.
    Inch,
    /// Feet; "linear feet" are the same.
    Foot,
    /// Yards.
    Yard,
    /// Meters.
    Meter,
    /// Square feet.
    SquareFoot,
    /// Square yards.
    SquareYard,
    /// Squares of 100 square feet.
    Square,
    /// Square meters.
    SquareMeter,
    /// Cubic feet.
    CubicFoot,
    /// Cubic yards.
    CubicYard,
    /// US gallons.
    Gallon,
    /// US liquid quarts.
    Quart,
    /// Liters.
    Liter,
    /// Pounds.
    Pound,
    /// Kilograms.
    Kilogram,
    /// One by one.
    Each,
    /// Bags.
    Bag,
    /// Boxes, cases, cartons.
    Case,
    /// Rolls.
    Roll,
    /// Sheets, boards, panels.
    Sheet,
    /// Buckets, pails, cans, tubs.
    Pail,
    /// Hours.
    Hour,
    /// Days.
    Day,
    /// A lump sum, a lot, an allowance.
    Lump,
}

const CM_PER_IN: f64 = 2.54;
const IN_PER_FT: f64 = 12.0;
const IN3_PER_GAL: f64 = 231.0;
const KG_PER_LB: f64 = 0.453_592_37;

impl Unit {
    /// What it measures.
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Inch | Self::Foot | Self::Yard | Self::Meter => Dimension::Length,
            Self::SquareFoot | Self::SquareYard | Self::Square | Self::SquareMeter => {
                Dimension::Area
            }
            Self::CubicFoot | Self::CubicYard => Dimension::Volume,
            Self::Gallon | Self::Quart | Self::Liter => Dimension::Liquid,
            Self::Pound | Self::Kilogram => Dimension::Weight,
            Self::Each | Self::Bag | Self::Case | Self::Roll | Self::Sheet | Self::Pail => {
                Dimension::Count
            }
            Self::Hour | Self::Day => Dimension::Labour,
            Self::Lump => Dimension::Lump,
        }
    }

    /// How many of its dimension's first unit (feet, square feet, cubic feet, gallons, pounds, things, hours) it is.
    ///
    /// ```
    /// use calc::supply::unit::Unit;
    /// assert_eq!(Unit::SquareYard.factor(), 9.0);
    /// assert_eq!(Unit::Square.factor(), 100.0);
    /// ```
    pub fn factor(self) -> f64 {
        let ft_per_m = 100.0 / CM_PER_IN / IN_PER_FT;
        match self {
            Self::Inch => 1.0 / IN_PER_FT,
            Self::Yard => 3.0,
            Self::Meter => ft_per_m,
            Self::SquareYard => 9.0,
            Self::Square => 100.0,
            Self::SquareMeter => ft_per_m * ft_per_m,
            Self::CubicYard => 27.0,
            Self::Quart => 0.25,
            // 1 L = 1000 cm^3.
            Self::Liter => 1000.0 / (CM_PER_IN * CM_PER_IN * CM_PER_IN) / IN3_PER_GAL,
            Self::Kilogram => 1.0 / KG_PER_LB,
            Self::Day => 8.0,
            _ => 1.0,
        }
    }

    /// The unit that a text names, as quotes write it; none where it names none. Dots, blanks and a plural s don't
    /// matter.
    ///
    /// ```
    /// use calc::supply::unit::Unit;
    /// assert_eq!(Unit::named("Sq. Ft."), Some(Unit::SquareFoot));
    /// assert_eq!(Unit::named("bags"), Some(Unit::Bag));
    /// assert_eq!(Unit::named("tile"), None);
    /// ```
    pub fn named(text: &str) -> Option<Self> {
        let plain: String = lower(text)
            .chars()
            .filter(|c| c.is_alphanumeric() || *c == '²' || *c == '³')
            .collect();
        let find = |name: &str| {
            NAMES
                .iter()
                .find(|(_, names)| names.split(' ').any(|known| known == name))
                .map(|(unit, _)| *unit)
        };
        find(&plain).or_else(|| find(plain.strip_suffix('s')?))
    }
}

/// The names by which units are known: English, and Spanish as written on United States job sites. Without dots, blanks
/// and plural s.
const NAMES: &[(Unit, &str)] = &[
    (Unit::Inch, "in inch inche pulg pulgada"),
    (
        Unit::Foot,
        "ft foot feet lf lft lnft linft linearft linearfoot linearfeet linealft linealfoot linealfeet pie piel pielineal pieslineale",
    ),
    (Unit::Yard, "yd yard ly yarda"),
    (Unit::Meter, "m meter metre metro ml"),
    (
        Unit::SquareFoot,
        "sf sft sqft squareft squarefoot squarefeet ft2 ft² pie2 pie² piecuadrado piescuadrado",
    ),
    (
        Unit::SquareYard,
        "sy sqyd squareyd squareyard yd2 yd² yardacuadrada",
    ),
    (Unit::Square, "sq sqr square cuadro"),
    (
        Unit::SquareMeter,
        "sqm sm m2 m² squaremeter squaremetre metrocuadrado metroscuadrado",
    ),
    (
        Unit::CubicFoot,
        "cf cuft cft cubicft cubicfoot cubicfeet ft3 ft³ piecubico piecúbico piescúbico",
    ),
    (
        Unit::CubicYard,
        "cy cuyd cubicyd cubicyard yd3 yd³ yardacúbica",
    ),
    (Unit::Gallon, "gal gallon galon galón galone"),
    (Unit::Quart, "qt quart cuarto"),
    (Unit::Liter, "l lt liter litre litro"),
    (Unit::Pound, "lb pound libra"),
    (Unit::Kilogram, "kg kilo kilogram kilogramo"),
    (
        Unit::Each,
        "ea each pc pce piece unit u und pza pieza unidad count ct",
    ),
    (Unit::Bag, "bag bg sack saco bulto bolsa"),
    (Unit::Case, "box bx boxe case cs carton ctn caja"),
    (Unit::Roll, "roll rl reel rollo"),
    (Unit::Sheet, "sheet sht board panel hoja lámina lamina"),
    (Unit::Pail, "pail bucket tub can cubeta bote lata"),
    (Unit::Hour, "hr hour h hora"),
    (Unit::Day, "day dy día dia"),
    (
        Unit::Lump,
        "ls lump lumpsum lot job allow allowance allw global lote partida",
    ),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST Handbook 44 (2024), Appendix C, tables of equivalents: 1 yd^2 = 9 ft^2 = 0.836 127 36 m^2; 1 ft = 0.3048 m; 1 gal =
    /// 3.785 411 784 L; 1 liquid qt = 0.946 352 946 L; 1 lb = 0.453 592 37 kg; 1 yd^3 = 27 ft^3.
    #[test]
    fn factors_are_those_of_handbook_44() {
        let close =
            |got: f64, want: f64| assert!((got - want).abs() <= 1e-9 * want, "{got} {want}");
        close(1.0 / Unit::Meter.factor(), 0.3048);
        close(
            Unit::SquareYard.factor() / Unit::SquareMeter.factor(),
            0.836_127_36,
        );
        close(1.0 / Unit::Liter.factor(), 3.785_411_784);
        close(Unit::Quart.factor() / Unit::Liter.factor(), 0.946_352_946);
        close(1.0 / Unit::Kilogram.factor(), 0.453_592_37);
        close(Unit::CubicYard.factor(), 27.0);
        close(Unit::Yard.factor() / Unit::Inch.factor(), 36.0);
    }

    #[test]
    fn units_are_known_by_what_quotes_call_them() {
        for (text, unit) in [
            ("SF", Unit::SquareFoot),
            ("sq ft", Unit::SquareFoot),
            ("S.F.", Unit::SquareFoot),
            ("ft²", Unit::SquareFoot),
            ("LF", Unit::Foot),
            ("lin. ft.", Unit::Foot),
            ("pies", Unit::Foot),
            ("SQ", Unit::Square),
            ("squares", Unit::Square),
            ("SY", Unit::SquareYard),
            ("EA", Unit::Each),
            ("pcs", Unit::Each),
            ("Boxes", Unit::Case),
            ("sacos", Unit::Bag),
            ("gal.", Unit::Gallon),
            ("Hrs", Unit::Hour),
            ("LS", Unit::Lump),
            ("m2", Unit::SquareMeter),
        ] {
            assert_eq!(Unit::named(text), Some(unit), "{text}");
        }
        for text in ["", "tile", "12", "grout", "."] {
            assert_eq!(Unit::named(text), None, "{text}");
        }
    }

    #[test]
    fn no_name_stands_for_two_units() {
        let mut all: Vec<&str> = NAMES
            .iter()
            .flat_map(|(_, names)| names.split(' '))
            .collect();
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), count);
    }
}
