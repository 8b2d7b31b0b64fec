// Which board goes where, in general words; the board's own listing and the local code govern.
//
// Source: IRC 2021 R702.3.7 (water-resistant gypsum board not where water meets it, nor in continuous high humidity), R702.3.7.1
// and R702.4.2 (backers for tile in tub and shower areas: cement, fibre-cement, glass-mat gypsum or fibre-reinforced gypsum
// by their standards), Table R302.6 (garages: 1/2 in; under habitable rooms 5/8 in type X). Status: from memory.

/// The table.
pub const BOARD_BY_PLACE: [PlaceRow; 5] = [
    PlaceRow { place: Place::DryRoom, kind: BoardKind::Plain, source: "IRC 2021 R702.3" },
    PlaceRow { place: Place::BathAwayFromSpray, kind: BoardKind::WaterResistant, source: "IRC 2021 R702.3.7" },
    PlaceRow { place: Place::TubOrShower, kind: BoardKind::TileBacker, source: "IRC 2021 R702.4.2" },
    PlaceRow { place: Place::GarageWall, kind: BoardKind::Plain, source: "IRC 2021 Table R302.6" },
    PlaceRow { place: Place::GarageUnderRooms, kind: BoardKind::FireRated, source: "IRC 2021 Table R302.6" },
];
