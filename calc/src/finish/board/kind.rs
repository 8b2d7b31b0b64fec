//! Which kind of board a place asks for.

use serde::Serialize;

include!("../../../tables/board_kinds.rs");

/// Kinds of board.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BoardKind {
    /// Plain gypsum board.
    Plain,
    /// Gypsum board that resists moisture.
    WaterResistant,
    /// Cement, fibre-cement or glass-mat board as a backer for tile.
    TileBacker,
    /// Type X, for fire.
    FireRated,
}

/// Places.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// Dry rooms.
    DryRoom,
    /// A bath's walls and ceiling where no water is thrown.
    BathAwayFromSpray,
    /// Walls round a tub or in a shower.
    TubOrShower,
    /// A garage's wall to the house.
    GarageWall,
    /// A garage's ceiling under rooms.
    GarageUnderRooms,
}

/// What a place asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct PlaceRow {
    /// The place.
    pub place: Place,
    /// The least that is asked for there.
    pub kind: BoardKind,
    /// Who says so.
    pub source: &'static str,
}

/// The row of a place.
pub fn board_for(place: Place) -> Option<&'static PlaceRow> {
    BOARD_BY_PLACE.iter().find(|row| row.place == place)
}
