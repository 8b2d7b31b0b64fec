//! The fields of closing up a room.

use super::{Field, inches, over, upto};
use crate::quantity::area::AreaUnit;
use crate::quantity::{Area, AreaRange, NumberRange, WholeRange};

/// The height of a wall: 1 to 40 ft.
pub const WALL_HEIGHT: Field = inches(upto(12.0, 480.0));

/// The height or the width of an opening above the floor.
pub const OPENING_HEIGHT: Field = inches(upto(1.0, 480.0));

/// A height above the floor.
pub const SILL: Field = inches(upto(0.0, 480.0));

/// A side of a tile.
pub const TILE_SIDE: Field = inches(upto(0.25, 240.0));

/// A joint, a gap, a saw cut.
pub const TILE_JOINT: Field = inches(upto(0.0, 4.0));

/// A difference between tiles, a reveal, a kerf.
pub const SMALL_LENGTH: Field = inches(upto(0.0, 1.0));

/// Things in a box.
pub const PER_BOX: Field = Field::Whole(WholeRange::at_least(1).at_most(10_000));

/// What a bag, a roll or a gallon covers.
pub const COVERAGE: Field = Field::Area(
    AreaUnit::SquareFeet,
    AreaUnit::SquareMeters,
    AreaRange::at_least(Area::from_ft2(1.0)).at_most(Area::from_ft2(10_000.0)),
);

/// Pounds of powder for a cubic foot.
pub const POWDER: Field = Field::Number(NumberRange::above(0.0).at_most(500.0));

/// The weight of a bag, pounds.
pub const POUNDS: Field = Field::Number(NumberRange::above(0.0).at_most(1000.0));

/// How high membrane is turned up.
pub const TURN_UP: Field = inches(upto(0.0, 120.0));

/// Framing on center.
pub const FRAMING: Field = inches(upto(4.0, 48.0));

/// A side of a patch.
pub const PATCH: Field = inches(upto(0.5, 600.0));

/// A level of finish.
pub const LEVEL: Field = Field::Whole(WholeRange::at_least(0).at_most(5));

/// A pail, US gallons.
pub const PAIL: Field = Field::Number(NumberRange::above(0.0).at_most(100.0));

/// Coats of paint.
pub const COATS: Field = Field::Whole(WholeRange::at_least(1).at_most(10));

/// The face of trim.
pub const FACE: Field = inches(over(0.0, 48.0));

/// A casing; it may have no width.
pub const CASING: Field = inches(upto(0.0, 24.0));

/// The longest piece of trim.
pub const SPLICE: Field = inches(upto(12.0, 1200.0));

/// A count of fixtures or of elbows.
pub const FIXTURES: Field = Field::Whole(WholeRange::at_least(0).at_most(50));

/// A static pressure, inches of water.
pub const INWG: Field = Field::Number(NumberRange::at_least(0.0).at_most(10.0));

/// A flow, cubic feet per minute.
pub const CFM: Field = Field::Number(NumberRange::at_least(1.0).at_most(10_000.0));

/// The diameter of a duct.
pub const DUCT: Field = inches(upto(2.0, 48.0));
