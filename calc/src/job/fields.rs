//! The measured fields of the job document: the unit of a bare number and what each allows, in one place.
//!
//! A widget checks its text with the same field that the questions read it by, so a refusal beside a field and
//! a missing answer can never disagree.

use crate::floor::outline::CORNER_MARK_IN;
use crate::quantity::area::AreaUnit;
use crate::quantity::entry::{self, EntryRefusal};
use crate::quantity::slope::SlopeUnit;
use crate::quantity::volume::VolumeUnit;
use crate::quantity::{
    Area, AreaRange, Length, LengthRange, LengthUnit, NumberRange, Slope, SlopeRange, Typed,
    Volume, VolumeRange, WholeRange,
};

use super::Units;

/// What a field measures, with its units (feet and inches, then metric) and what it allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Field {
    /// A length; read in inches.
    Length(LengthUnit, LengthUnit, LengthRange),
    /// An area; read in square inches.
    Area(AreaUnit, AreaUnit, AreaRange),
    /// A volume; read in cubic inches.
    Volume(VolumeUnit, VolumeUnit, VolumeRange),
    /// A slope; read as rise over run.
    Slope(SlopeUnit, SlopeUnit, SlopeRange),
    /// A plain number.
    Number(NumberRange),
    /// A percentage; read in percent.
    Percent(NumberRange),
    /// A whole number.
    Whole(WholeRange),
    /// An amount in one unit, which may stand behind the number: `15 A`, `1.5 kW`; read in that unit.
    Amount(Symbol, NumberRange),
    /// A temperature; read in degrees C, of which the range is.
    Temperature(NumberRange),
}

pub use electric::{Symbol, ambient};

mod electric;

pub use finish::*;

mod finish;

const fn inches(range: LengthRange) -> Field {
    Field::Length(LengthUnit::Inches, LengthUnit::Millimeters, range)
}

const fn upto(least: f64, most: f64) -> LengthRange {
    LengthRange::at_least(Length::from_inches(least)).at_most(Length::from_inches(most))
}

const fn over(least: f64, most: f64) -> LengthRange {
    LengthRange::above(Length::from_inches(least)).at_most(Length::from_inches(most))
}

/// A side of the room: 1 in to 500 ft.
pub const SIDE: Field = inches(upto(1.0, 6000.0));

/// A distance along a wall, from its start.
pub const ALONG: Field = inches(upto(0.0, 6000.0));

/// The width of an opening.
pub const OPENING_WIDTH: Field = inches(over(0.0, 6000.0));

/// The turn at a corner, degrees.
pub const TURN_DEGREES: Field = Field::Number(NumberRange::at_least(0.0).below(180.0));

/// The distance across a corner between marks on its walls; both marks together are the most it can be.
pub const CORNER_ACROSS: Field = inches(over(0.0, 2.0 * CORNER_MARK_IN));

/// The widest spacing of proposed spots: 3 in to 20 ft.
pub const SPACING: Field = inches(upto(3.0, 240.0));

/// A coordinate of a spot.
pub const COORDINATE: Field = inches(upto(-6000.0, 6000.0));

/// A reading on the floor: within 10 ft of the line or the low spot.
pub const READING: Field = inches(upto(-120.0, 120.0));

/// The least depth over the highest spot.
pub const COVER: Field = inches(upto(0.0, 12.0));

/// The most tilt of a flat pour.
pub const TILT: Field = Field::Slope(
    SlopeUnit::InPer4Ft,
    SlopeUnit::MmPerM,
    SlopeRange::at_least(Slope::from_ratio(0.0)).at_most(Slope::from_ratio(0.25)),
);

/// The deepest single lift.
pub const LIFT: Field = inches(over(0.0, 12.0));

/// A straightedge.
pub const STRAIGHTEDGE: Field = inches(upto(6.0, 480.0));

/// The volume that a bag makes.
pub const BAG_YIELD: Field = Field::Volume(
    VolumeUnit::CubicFeet,
    VolumeUnit::Liters,
    VolumeRange::at_least(Volume::from_ft3(0.01)).at_most(Volume::from_ft3(100.0)),
);

/// Water for a bag.
pub const BAG_WATER: Field = Field::Volume(
    VolumeUnit::Quarts,
    VolumeUnit::Liters,
    VolumeRange::at_least(Volume::from_qt(0.0)).at_most(Volume::from_qt(400.0)),
);

/// An allowance in percent.
pub const ALLOWANCE: Field = Field::Percent(NumberRange::at_least(0.0).at_most(100.0));

/// Bags mixed at a time.
pub const BAGS_PER_BATCH: Field = Field::Whole(WholeRange::at_least(1).at_most(100));

/// Minutes for a batch, and of pot life.
pub const MINUTES: Field = Field::Number(NumberRange::above(0.0).at_most(1440.0));

/// The area that a gallon of primer covers.
pub const PRIMER_COVERAGE: Field = Field::Area(
    AreaUnit::SquareFeet,
    AreaUnit::SquareMeters,
    AreaRange::at_least(Area::from_ft2(1.0)).at_most(Area::from_ft2(10_000.0)),
);

/// The thickness of a layer.
pub const LAYER: Field = inches(upto(0.0, 24.0));

/// The slope of a ramp.
pub const RAMP_SLOPE: Field = Field::Slope(
    SlopeUnit::OneTo,
    SlopeUnit::OneTo,
    SlopeRange::above(Slope::from_ratio(0.0)).at_most(Slope::from_ratio(10.0)),
);

/// The length there is for a ramp.
pub const RAMP_LENGTH: Field = inches(over(0.0, 6000.0));

/// A rise, up or down.
pub const RISE: Field = inches(over(0.0, 600.0));

/// A floor area, for the quick sum.
pub const FLOOR_AREA: Field = Field::Area(
    AreaUnit::SquareFeet,
    AreaUnit::SquareMeters,
    AreaRange::above(Area::from_ft2(0.0)).at_most(Area::from_ft2(100_000.0)),
);

/// A depth of pour.
pub const DEPTH: Field = inches(over(0.0, 24.0));

const fn amps(most: f64) -> Field {
    Field::Amount(Symbol::Amps, NumberRange::above(0.0).at_most(most))
}

/// A rating of a breaker or a panel, amperes.
pub const RATING: Field = amps(1200.0);

/// What a load takes, watts.
pub const LOAD_WATTS: Field =
    Field::Amount(Symbol::Watts, NumberRange::above(0.0).at_most(1_000_000.0));

/// What a load takes, amperes.
pub const LOAD_AMPS: Field = amps(6000.0);

/// A part of a load, amperes; it may be none.
pub const SOME_AMPS: Field =
    Field::Amount(Symbol::Amps, NumberRange::at_least(0.0).at_most(6000.0));

/// The resistance of a load, ohms.
pub const LOAD_OHMS: Field =
    Field::Amount(Symbol::Ohms, NumberRange::above(0.0).at_most(1_000_000.0));

/// Ohms as a meter shows them.
pub const SHOWN_OHMS: Field = Field::Amount(Symbol::Ohms, NumberRange::at_least(0.0).at_most(1e9));

/// A voltage as measured.
pub const MEASURED_VOLTS: Field =
    Field::Amount(Symbol::Volts, NumberRange::at_least(0.0).at_most(1000.0));

/// A nominal voltage.
pub const VOLTS: Field = Field::Amount(Symbol::Volts, NumberRange::above(0.0).at_most(1000.0));

/// The last digit that a meter shows, volts.
pub const METER_STEP: Field =
    Field::Amount(Symbol::Volts, NumberRange::at_least(0.0).at_most(10.0));

/// The most circuits of a panel.
pub const MOST_CIRCUITS: Field = Field::Whole(WholeRange::at_least(1).at_most(168));

/// A count of things on a circuit.
pub const OUTLETS: Field = Field::Whole(WholeRange::at_least(0).at_most(500));

/// A count of cables or spares in a bundle.
pub const CABLES: Field = Field::Whole(WholeRange::at_least(0).at_most(200));

/// A count of things in a box.
pub const IN_BOX: Field = Field::Whole(WholeRange::at_least(0).at_most(500));

/// Gangs side by side.
pub const GANGS: Field = Field::Whole(WholeRange::at_least(1).at_most(20));

/// Conductors in parallel.
pub const PARALLEL: Field = Field::Whole(WholeRange::at_least(1).at_most(12));

/// Switches in a chain.
pub const SWITCHES: Field = Field::Whole(WholeRange::at_least(1).at_most(20));

/// The temperature of the air round a conductor: as low as -60 C and as high as the table goes, 85 C.
pub const AMBIENT: Field = Field::Temperature(NumberRange::at_least(-60.0).at_most(85.0));

/// The temperature of a conductor.
pub const CONDUCTOR_TEMPERATURE: Field =
    Field::Temperature(NumberRange::at_least(-60.0).at_most(150.0));

/// A share in percent, of a drop.
pub const DROP_PERCENT: Field = Field::Percent(NumberRange::at_least(0.0).below(100.0));

/// A limit on a drop, percent.
pub const DROP_LIMIT: Field = Field::Percent(NumberRange::above(0.0).below(100.0));

/// A power factor.
pub const POWER_FACTOR: Field = Field::Number(NumberRange::above(0.0).at_most(1.0));

/// A length of cable, one way: a bare number is feet or metres.
pub const RUN: Field = Field::Length(
    LengthUnit::Feet,
    LengthUnit::Meters,
    LengthRange::at_least(Length::ZERO).at_most(Length::from_inches(120_000.0)),
);

/// Cable on a roll.
pub const ROLL: Field = Field::Length(
    LengthUnit::Feet,
    LengthUnit::Meters,
    LengthRange::above(Length::ZERO).at_most(Length::from_inches(120_000.0)),
);

/// Cable kept at its end.
pub const FREE_CABLE: Field = inches(upto(0.0, 240.0));

/// From a cable or a hole to the edge of the framing.
pub const EDGE: Field = inches(upto(0.0, 24.0));

/// How far cables lie together.
pub const BUNDLE_LENGTH: Field = inches(over(0.0, 120_000.0));

/// An inside dimension of a box.
pub const BOX_SIDE: Field = inches(upto(0.25, 100.0));

/// A volume marked on a box, a ring or a barrier.
pub const BOX_VOLUME: Field = Field::Volume(
    VolumeUnit::CubicInches,
    VolumeUnit::CubicInches,
    VolumeRange::above(Volume::from_in3(0.0)).at_most(Volume::from_in3(10_000.0)),
);

/// A price in dollars.
pub const PRICE: Field = Field::Number(NumberRange::at_least(0.0).at_most(10_000_000.0));

/// How much is on hand, was bought or was quoted, in whatever it is counted in.
pub const QUANTITY: Field = Field::Number(NumberRange::at_least(0.0).at_most(10_000_000.0));

/// Sales tax.
pub const TAX: Field = Field::Percent(NumberRange::at_least(0.0).at_most(30.0));

impl Field {
    /// The code of the unit in which the field reads a bare number; empty for plain numbers.
    pub const fn unit_code(&self, units: Units) -> &'static str {
        let metric = matches!(units, Units::Metric);
        match *self {
            Self::Length(a, b, _) => (if metric { b } else { a }).code(),
            Self::Area(a, b, _) => (if metric { b } else { a }).code(),
            Self::Volume(a, b, _) => (if metric { b } else { a }).code(),
            Self::Slope(a, b, _) => (if metric { b } else { a }).code(),
            Self::Temperature(_) => electric::degrees(metric),
            Self::Number(_) | Self::Percent(_) | Self::Whole(_) | Self::Amount(..) => "",
        }
    }

    /// An entry for this field: the text as typed, with the field's unit where the text does not say its own.
    pub fn keep(&self, text: impl Into<String>, units: Units) -> Typed {
        let text = text.into();
        if text.trim().is_empty() {
            Typed::plain(text)
        } else {
            Typed::kept(text, self.unit_code(units))
        }
    }

    /// Reads an entry: inches, square inches, cubic inches, rise over run, a number, percent, the unit of an
    /// amount, or degrees C, by the kind.
    ///
    /// # Errors
    /// A blank, a text that can't be read, or a value that the field doesn't allow.
    pub fn read(&self, typed: &Typed) -> Result<f64, EntryRefusal> {
        match self {
            Self::Length(unit, _, allowed) => {
                entry::read_length(typed, *unit, allowed).map(Length::inches)
            }
            Self::Area(unit, _, allowed) => entry::read_area(typed, *unit, allowed).map(Area::in2),
            Self::Volume(unit, _, allowed) => {
                entry::read_volume(typed, *unit, allowed).map(Volume::in3)
            }
            Self::Slope(unit, _, allowed) => {
                entry::read_slope(typed, *unit, allowed).map(Slope::ratio)
            }
            Self::Number(allowed) => entry::read_number(typed, allowed),
            Self::Percent(allowed) => entry::read_percent(typed, allowed),
            // Exact: whole numbers up to 1e12.
            Self::Whole(allowed) => entry::read_whole(typed, allowed).map(|n| n as f64),
            Self::Amount(symbol, allowed) => electric::amount(typed, *symbol, allowed),
            Self::Temperature(allowed) => electric::celsius(typed, allowed),
        }
    }

    /// Reads an entry, or nothing where nothing was typed.
    ///
    /// # Errors
    /// As [`Field::read`], but for the blank.
    pub fn optional(&self, typed: &Typed) -> Result<Option<f64>, EntryRefusal> {
        match self.read(typed) {
            Ok(value) => Ok(Some(value)),
            Err(EntryRefusal::Blank) => Ok(None),
            Err(refusal) => Err(refusal),
        }
    }
}
