//! The working behind an answer: what went in, each step, and where the rule comes from.
//!
//! A step names its formula by [`Formula`]-like identifiers of the module that made it; the app has the words
//! for each. Numbers travel with their unit, so that a page can show them and a test can recompute them.

use serde::Serialize;

/// A number with its unit, as a step of a working shows it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Figure {
    /// What the number is, as a stable name of the field's own (`cover`, `volume`, `yield`).
    pub name: &'static str,
    /// The value in `unit`.
    pub value: f64,
    /// The unit.
    pub unit: Unit,
}

/// Units that appear in workings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Inches.
    In,
    /// Square inches.
    In2,
    /// Square feet.
    Ft2,
    /// Cubic inches.
    In3,
    /// Cubic feet.
    Ft3,
    /// Feet.
    Ft,
    /// Inches of rise per 4 ft of run.
    InPer4Ft,
    /// A plain ratio.
    Ratio,
    /// Percent.
    Percent,
    /// Degrees.
    Degrees,
    /// Bags.
    Bags,
    /// A count of things.
    Count,
    /// Minutes.
    Minutes,
    /// Pounds.
    Pounds,
    /// Pounds for a cubic foot.
    PoundsPerFt3,
    /// US liquid quarts.
    Quarts,
    /// Amperes.
    Amps,
    /// Volts.
    Volts,
    /// Ohms.
    Ohms,
    /// Ohms per 1000 ft.
    OhmsPerKft,
    /// Watts.
    Watts,
    /// Volt-amperes.
    VoltAmps,
    /// Degrees Celsius.
    DegC,
    /// Degrees Fahrenheit.
    DegF,
    /// US gallons.
    Gallons,
    /// Square feet per US gallon.
    Ft2PerGal,
    /// US gallons per 1000 square feet.
    GalPerKft2,
    /// Cubic feet per minute.
    Cfm,
    /// Litres per second.
    LitersPerSecond,
    /// Feet per minute.
    FeetPerMinute,
    /// Inches of water, a pressure.
    InchesOfWater,
}

/// Where a rule or a value comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// Geometry or arithmetic: nothing to look up.
    Arithmetic,
    /// A published standard or code, named with its edition.
    Published(&'static str),
    /// A rule of the trade with no single published source.
    CommonPractice,
    /// The user's own entry.
    Entered,
}

/// One step: the formula's name, the figures that went in, the figure that came out, the source.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// A stable name (`bags`, `level_surface`), for which the app has a formula to show.
    pub formula: &'static str,
    /// What went in.
    pub inputs: Vec<Figure>,
    /// What came out.
    pub result: Figure,
    /// Where the rule comes from.
    pub source: Source,
}
