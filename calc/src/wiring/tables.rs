//! The tables of the code as data, and how to look in them.
//!
//! The rows stand in `calc/tables/`, each table with its source, edition and status in its head.

use serde::{Deserialize, Serialize};

use crate::job::CodeEdition;

use super::code::Status;
use super::conductor::{Construction, Metal, Rating, Size};

include!("../../tables/ampacity.rs");
include!("../../tables/ambient_correction.rs");
include!("../../tables/count_adjustment.rs");
include!("../../tables/small_conductors.rs");
include!("../../tables/standard_ratings.rs");
include!("../../tables/box_volumes.rs");
include!("../../tables/volume_allowances.rs");
include!("../../tables/resistance.rs");
include!("../../tables/impedance.rs");
include!("../../tables/voltage_ranges.rs");
include!("../../tables/electrical_constants.rs");

/// Amperes below this are rounding: a computed ampacity this close to a standard rating has that rating.
pub const ROUNDING_A: f64 = 1e-9;

/// One size of the ampacity table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct AmpacityRow {
    /// The size.
    pub size: Size,
    /// Copper at 60, 75 and 90 C, amperes.
    pub copper_a: [Option<f64>; 3],
    /// Aluminum and copper-clad aluminum at 60, 75 and 90 C, amperes.
    pub aluminum_a: [Option<f64>; 3],
    /// How far the row was checked.
    pub status: Status,
}

/// The ampacity of the table, amperes: of a size, a metal and a column.
///
/// ```
/// use calc::wiring::conductor::{Metal, Rating, Size};
/// use calc::wiring::tables::ampacity_a;
/// assert_eq!(ampacity_a(Size::Awg12, Metal::Copper, Rating::C60), Some(20.0));
/// assert_eq!(ampacity_a(Size::Awg14, Metal::Aluminum, Rating::C60), None);
/// ```
pub fn ampacity_a(size: Size, metal: Metal, column: Rating) -> Option<f64> {
    let row = AMPACITY.iter().find(|row| row.size == size)?;
    let columns = match metal {
        Metal::Copper => &row.copper_a,
        Metal::Aluminum | Metal::CopperCladAluminum => &row.aluminum_a,
    };
    columns.get(column.column()).copied().flatten()
}

/// One range of ambient temperature.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct AmbientRow {
    /// The hottest of the range, degrees C.
    pub most_c: f64,
    /// The hottest of the range, degrees F.
    pub most_f: f64,
    /// Factors for conductors rated 60, 75 and 90 C.
    pub factor: [Option<f64>; 3],
}

/// A temperature of the air round a conductor, in the unit it was given in: the table prints whole degrees of both.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ambient {
    /// Degrees C.
    Celsius(f64),
    /// Degrees F.
    Fahrenheit(f64),
}

/// The range of the table that an ambient temperature falls in; `None` above the hottest, or for no number.
pub fn ambient_row(ambient: Ambient) -> Option<&'static AmbientRow> {
    AMBIENT_CORRECTION.iter().find(|row| match ambient {
        Ambient::Celsius(degrees) => degrees <= row.most_c,
        Ambient::Fahrenheit(degrees) => degrees <= row.most_f,
    })
}

/// One range of numbers of conductors.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CountRow {
    /// From this number.
    pub least: u32,
    /// To this number; `None`: and above.
    pub most: Option<u32>,
    /// The factor.
    pub factor: f64,
}

/// The factor for a number of current-carrying conductors; 1 for none.
pub fn count_factor(carrying: u32) -> f64 {
    COUNT_ADJUSTMENT
        .iter()
        .rev()
        .find(|row| row.least <= carrying)
        .map_or(1.0, |row| row.factor)
}

/// A cap for a small conductor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SmallConductorRow {
    /// The size.
    pub size: Size,
    /// The metals it holds for.
    pub metals: &'static [Metal],
    /// The largest overcurrent device, amperes.
    pub most_a: f64,
    /// The largest continuous load that the row allows, amperes.
    pub most_continuous_a: Option<f64>,
    /// Its paragraph in NFPA 70-2023.
    pub paragraph_2023: &'static str,
    /// Its paragraph in the 2020 and 2017 editions, where they have one.
    pub paragraph_before: Option<&'static str>,
    /// How far the row was checked.
    pub status: Status,
}

/// The cap of 240.4(D) for a conductor, and its paragraph in an edition.
pub fn small_conductor(
    size: Size,
    metal: Metal,
    edition: CodeEdition,
) -> Option<(&'static SmallConductorRow, &'static str)> {
    let row = SMALL_CONDUCTORS
        .iter()
        .find(|row| row.size == size && row.metals.contains(&metal))?;
    let paragraph = match edition {
        CodeEdition::E2023 => row.paragraph_2023,
        CodeEdition::E2020 | CodeEdition::E2017 => row.paragraph_before?,
    };
    Some((row, paragraph))
}

/// A standard rating.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RatingRow {
    /// The rating, amperes.
    pub rating_a: f64,
    /// Whether it is one for breakers in NFPA 70-2023; for fuses alone where not.
    pub breaker_2023: bool,
    /// The same in the 2020 and 2017 editions.
    pub breaker_before: bool,
    /// How far the row was checked.
    pub status: Status,
}

/// The standard ratings of breakers in an edition, amperes, from the smallest.
pub fn breaker_ratings_a(edition: CodeEdition) -> impl DoubleEndedIterator<Item = f64> {
    STANDARD_RATINGS
        .iter()
        .filter(move |row| match edition {
            CodeEdition::E2023 => row.breaker_2023,
            CodeEdition::E2020 | CodeEdition::E2017 => row.breaker_before,
        })
        .map(|row| row.rating_a)
}

/// The smallest standard breaker of at least so many amperes.
///
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::tables::{breaker_at_least_a, breaker_at_most_a};
/// assert_eq!(breaker_at_least_a(18.5, CodeEdition::E2023), Some(20.0));
/// assert_eq!(breaker_at_most_a(18.5, CodeEdition::E2023), Some(15.0));
/// assert_eq!(breaker_at_most_a(13.5, CodeEdition::E2020), None);
/// ```
pub fn breaker_at_least_a(amps: f64, edition: CodeEdition) -> Option<f64> {
    breaker_ratings_a(edition).find(|rating_a| *rating_a >= amps - ROUNDING_A)
}

/// The largest standard breaker of at most so many amperes.
pub fn breaker_at_most_a(amps: f64, edition: CodeEdition) -> Option<f64> {
    breaker_ratings_a(edition)
        .rev()
        .find(|rating_a| *rating_a <= amps + ROUNDING_A)
}

/// Families of metal boxes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BoxFamily {
    /// Round and octagonal.
    RoundOctagonal,
    /// Square.
    Square,
    /// Device.
    #[default]
    Device,
    /// Masonry.
    Masonry,
    /// FS, single cover.
    FsSingleCover,
    /// FD, single cover.
    FdSingleCover,
    /// FS, multiple cover.
    FsMultipleCover,
    /// FD, multiple cover.
    FdMultipleCover,
}

/// A metal box of the table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BoxRow {
    /// Its family.
    pub family: BoxFamily,
    /// Its trade size, inches.
    pub trade_size_in: &'static str,
    /// Its volume, cubic inches; of each gang where `per_gang`.
    pub volume_in3: f64,
    /// The most conductors of 18, 16, 14, 12, 10, 8 and 6 AWG as printed, with nothing else in the box.
    pub most: [u32; 7],
    /// Whether volume and counts are for each gang.
    pub per_gang: bool,
    /// How far the row was checked.
    pub status: Status,
}

/// The box of a family and trade size.
pub fn box_row(family: BoxFamily, trade_size_in: &str) -> Option<&'static BoxRow> {
    BOX_VOLUMES
        .iter()
        .find(|row| row.family == family && row.trade_size_in == trade_size_in)
}

/// The space for a counted conductor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct AllowanceRow {
    /// The size.
    pub size: Size,
    /// The space, cubic inches.
    pub allowance_in3: f64,
}

/// The space for a counted conductor, cubic inches; `None` above 6 AWG, where 314.28 rules.
pub fn allowance_in3(size: Size) -> Option<f64> {
    VOLUME_ALLOWANCES
        .iter()
        .find(|row| row.size == size)
        .map(|row| row.allowance_in3)
}

/// A conductor of the resistance table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ResistanceRow {
    /// The size.
    pub size: Size,
    /// Solid or stranded.
    pub construction: Construction,
    /// Area, circular mils.
    pub area_cmil: f64,
    /// Number of wires.
    pub strands: u32,
    /// Diameter of each wire of a stranded conductor, inches.
    pub strand_dia_in: Option<f64>,
    /// Diameter over all, inches.
    pub overall_dia_in: f64,
    /// Area over all, square inches.
    pub area_in2: f64,
    /// Bare copper at 75 C, ohms per 1000 ft.
    pub copper_ohm_per_kft: f64,
    /// Coated copper at 75 C, ohms per 1000 ft.
    pub coated_copper_ohm_per_kft: f64,
    /// Aluminum at 75 C, ohms per 1000 ft.
    pub aluminum_ohm_per_kft: f64,
}

/// What a conductor runs in, for its impedance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Conduit {
    /// PVC; stands in for NM cable as well (common practice).
    #[default]
    Pvc,
    /// Aluminum.
    Aluminum,
    /// Steel.
    Steel,
}

impl Conduit {
    pub(super) const fn column(self) -> usize {
        match self {
            Self::Pvc => 0,
            Self::Aluminum => 1,
            Self::Steel => 2,
        }
    }
}

/// A conductor of the impedance table; columns are conduits of PVC, aluminum and steel.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ImpedanceRow {
    /// The size.
    pub size: Size,
    /// Reactance, ohms to neutral per 1000 ft.
    pub reactance_ohm_per_kft: [f64; 3],
    /// Resistance of copper, ohms to neutral per 1000 ft.
    pub copper_ohm_per_kft: [Option<f64>; 3],
    /// Resistance of aluminum, likewise.
    pub aluminum_ohm_per_kft: [Option<f64>; 3],
    /// Effective impedance of copper at a power factor of 0.85 as printed, likewise.
    pub copper_z085_ohm_per_kft: [Option<f64>; 3],
    /// Effective impedance of aluminum, likewise.
    pub aluminum_z085_ohm_per_kft: [Option<f64>; 3],
    /// How far the row was checked.
    pub status: Status,
}

/// Where a voltage is judged.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum VoltagePlace {
    /// At the point of delivery.
    #[default]
    Service,
    /// At the equipment.
    Utilization,
}

/// The two ranges of ANSI C84.1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum VoltageRange {
    /// Normal.
    A,
    /// For a limited time, to be corrected.
    B,
}

/// Editions of ANSI C84.1 that a row holds for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum VoltageEditions {
    /// All.
    All,
    /// Up to 2006.
    To2006,
    /// From 2011 on.
    From2011,
}

/// A range of voltages.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct VoltageRow {
    /// Where it is judged.
    pub place: VoltagePlace,
    /// Which range.
    pub range: VoltageRange,
    /// Which editions.
    pub editions: VoltageEditions,
    /// Least from a leg to the neutral, volts.
    pub least_leg_v: f64,
    /// Most from a leg to the neutral, volts.
    pub most_leg_v: f64,
    /// Least from leg to leg, volts.
    pub least_across_v: f64,
    /// Most from leg to leg, volts.
    pub most_across_v: f64,
    /// How far the row was checked.
    pub status: Status,
}

/// A range of the editions from 2011 on.
pub fn voltage_row(place: VoltagePlace, range: VoltageRange) -> Option<&'static VoltageRow> {
    VOLTAGE_RANGES.iter().find(|row| {
        row.place == place && row.range == range && row.editions != VoltageEditions::To2006
    })
}
