//! Closing up a room: its walls above the floor, tile, board, paint, trim and air, as they are entered.
//!
//! A field with a usual value starts with it; an entry of a job from before these fields starts with them too, in feet
//! and inches.

use super::Rest;
use crate::air::duct::DuctKind;
use crate::air::rate::ExhaustRoom;
use crate::finish::board::LayUp;
use crate::finish::tile::rules::{Make, Place};
use crate::job::Typed;
use crate::saved;
use crate::saved::{coded, codes};

/// What the room's walls are like above the floor.
#[derive(Clone, Debug, PartialEq)]
pub struct WallsEntry {
    /// Height of the walls.
    pub height: Typed,
    /// Height of the doorways.
    pub door_height: Typed,
    /// The windows.
    pub windows: Vec<WindowEntry>,
    /// What stands along the walls: cabinets, a tub.
    pub built_ins: Vec<BuiltInEntry>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(WallsEntry {
    height: or_default,
    door_height: or_default,
    windows: or_default,
    built_ins: or_default,
});

/// A window.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WindowEntry {
    /// Row id.
    pub id: u32,
    /// The wall it is in: 0 for the first wall of the outline.
    pub wall: u32,
    /// Distance from the start of that wall to the nearer jamb.
    pub from_start: Typed,
    /// From the floor to the opening.
    pub sill: Typed,
    /// Width between jambs.
    pub width: Typed,
    /// Height of the opening.
    pub height: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(WindowEntry {
    id: needed,
    wall: or_default,
    from_start: or_default,
    sill: or_default,
    width: or_default,
    height: or_default,
});

/// A cabinet, a tub or the like along a wall.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BuiltInEntry {
    /// Row id.
    pub id: u32,
    /// The wall it stands at: 0 for the first wall of the outline.
    pub wall: u32,
    /// Distance from the start of that wall to it.
    pub from_start: Typed,
    /// Its width along the wall.
    pub width: Typed,
    /// It has a toe strip of its own, so that no shoe runs along its front.
    pub own_toe_strip: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BuiltInEntry {
    id: needed,
    wall: or_default,
    from_start: or_default,
    width: or_default,
    own_toe_strip: or_default,
});

/// How the floor is tiled.
#[derive(Clone, Debug, PartialEq)]
pub struct TileEntry {
    /// Side of a tile along its rows.
    pub width: Typed,
    /// The other side.
    pub height: Typed,
    /// Joint between tiles.
    pub joint: Typed,
    /// Gap left free of tile along walls and obstacles.
    pub edge_gap: Typed,
    /// How the rows lie.
    pub pattern: TilePattern,
    /// Running bond by a share of its own: percent of tile and joint.
    pub offset: Typed,
    /// The line it starts from.
    pub start: TileStart,
    /// The narrowest cut that the best start takes gladly, percent of a tile.
    pub least_share: Typed,
    /// What stands on the floor and is tiled round.
    pub obstacles: Vec<ObstacleEntry>,
    /// What the saw takes.
    pub kerf: Typed,
    /// The tile has a direction in it: offcuts are not turned.
    pub one_way: bool,
    /// Added for breakage and spares, percent.
    pub allowance_percent: Typed,
    /// Tiles in a box; blank: bought one by one.
    pub per_box: Typed,
    /// How exactly the tile is made to size.
    pub make: Make,
    /// Between the largest and the smallest face supplied; blank: not measured.
    pub variation: Typed,
    /// Warpage of the longest edge; blank: not measured.
    pub warpage: Typed,
    /// Where the floor lies.
    pub place: Place,
    /// Area that a bag of mortar covers.
    pub mortar_coverage: Typed,
    /// Allowance on mortar, percent.
    pub mortar_allowance: Typed,
    /// Depth of the joint.
    pub joint_depth: Typed,
    /// Dry grout powder for a cubic foot of joint, pounds.
    pub powder: Typed,
    /// Waste of grout, percent.
    pub grout_allowance: Typed,
    /// A bag of grout, pounds.
    pub grout_bag: Typed,
    /// Area of a roll of membrane; blank: no membrane.
    pub membrane_roll: Typed,
    /// How high membrane is turned up along the walls; blank: not.
    pub membrane_turn_up: Typed,
    /// Allowance for overlaps, percent.
    pub membrane_allowance: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(TileEntry {
    width: or_default,
    height: or_default,
    joint: or_default,
    edge_gap: or_default,
    pattern: or_default,
    offset: or_default,
    start: or_default,
    least_share: or_default,
    obstacles: or_default,
    kerf: or_default,
    one_way: or_default,
    allowance_percent: or_default,
    per_box: or_default,
    make: or_default,
    variation: or_default,
    warpage: or_default,
    place: or_default,
    mortar_coverage: or_default,
    mortar_allowance: or_default,
    joint_depth: or_default,
    powder: or_default,
    grout_allowance: or_default,
    grout_bag: or_default,
    membrane_roll: or_default,
    membrane_turn_up: or_default,
    membrane_allowance: or_default,
});

/// A rectangle that is not tiled, its sides along x and y.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ObstacleEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// Its nearest corner, to the right of the first corner of the room.
    pub x: Typed,
    /// Its nearest corner, away from the first corner of the room.
    pub y: Typed,
    /// Its side along x.
    pub width: Typed,
    /// Its side along y.
    pub length: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(ObstacleEntry {
    id: needed,
    name: or_default,
    x: or_default,
    y: or_default,
    width: or_default,
    length: or_default,
});

/// How rows of tile lie.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TilePattern {
    /// Joints in line both ways.
    #[default]
    Straight,
    /// Each row shifted by half a tile.
    Half,
    /// Each row shifted by a third of a tile.
    Third,
    /// Each row shifted by a share of its own.
    Offset,
    /// Joints in line both ways, turned 45 degrees.
    Diagonal,
    /// Herringbone along the walls.
    Herringbone,
    /// Herringbone at 45 degrees.
    HerringboneDiagonal,
}

codes!(TilePattern {
    Straight = "straight",
    Half = "half",
    Third = "third",
    Offset = "offset",
    Diagonal = "diagonal",
    Herringbone = "herringbone",
    HerringboneDiagonal = "herringbone_diagonal",
});

/// The line that tile starts from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TileStart {
    /// A corner of the room.
    #[default]
    Corner,
    /// A tile in the middle.
    Tile,
    /// A joint in the middle.
    Joint,
    /// The best of many.
    Best,
}

codes!(TileStart {
    Corner = "corner",
    Tile = "centred_on_tile",
    Joint = "centred_on_joint",
    Best = "best",
});

/// How walls and ceiling get board.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardEntry {
    /// What is covered.
    pub on: Covered,
    /// How sheets are hung.
    pub lay_up: LayUp,
    /// Studs and joists, on center.
    pub framing: Typed,
    /// Sheets of 4 by 8 ft are not on offer.
    pub no_4_by_8: bool,
    /// Sheets of 4 by 10 ft are not on offer.
    pub no_4_by_10: bool,
    /// Sheets of 4 by 12 ft are not on offer.
    pub no_4_by_12: bool,
    /// Sheets of 54 in by 12 ft are on offer.
    pub with_54_in: bool,
    /// Patches in old board.
    pub patches: Vec<PatchEntry>,
    /// The level of finish, 0 to 5.
    pub level: Typed,
    /// Allowance on tape, percent.
    pub tape_allowance: Typed,
    /// What a pail of compound holds, US gallons.
    pub pail: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BoardEntry {
    on: or_default,
    lay_up: or_default,
    framing: or_default,
    no_4_by_8: or_default,
    no_4_by_10: or_default,
    no_4_by_12: or_default,
    with_54_in: or_default,
    patches: or_default,
    level: or_default,
    tape_allowance: or_default,
    pail: or_default,
});

/// A patch in old board.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PatchEntry {
    /// Row id.
    pub id: u32,
    /// Its width.
    pub width: Typed,
    /// Its height.
    pub height: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PatchEntry {
    id: needed,
    width: or_default,
    height: or_default,
});

/// What gets board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Covered {
    /// Nothing, or patches alone.
    #[default]
    Nothing,
    /// The walls.
    Walls,
    /// The ceiling.
    Ceiling,
    /// Walls and ceiling.
    Both,
}

codes!(Covered {
    Nothing = "nothing",
    Walls = "walls",
    Ceiling = "ceiling",
    Both = "both",
});

/// How the room is painted.
#[derive(Clone, Debug, PartialEq)]
pub struct PaintEntry {
    /// Primer on new board, on the walls and the ceiling that are painted.
    pub primer: CoatEntry,
    /// The walls.
    pub walls: CoatEntry,
    /// The ceiling.
    pub ceiling: CoatEntry,
    /// The trim.
    pub trim: CoatEntry,
    /// The face of base and casing that is painted.
    pub trim_face: Typed,
    /// Ordering allowance, percent.
    pub allowance_percent: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PaintEntry {
    primer: or_default,
    walls: or_default,
    ceiling: or_default,
    trim: or_default,
    trim_face: or_default,
    allowance_percent: or_default,
});

/// One paint.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CoatEntry {
    /// It is used.
    pub used: bool,
    /// Coats.
    pub coats: Typed,
    /// What a gallon covers in one coat.
    pub spread: Typed,
    /// Price of a gallon; blank: not known.
    pub gallon_price: Typed,
    /// Price of a quart; blank: not known.
    pub quart_price: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(CoatEntry {
    used: or_default,
    coats: or_default,
    spread: or_default,
    gallon_price: or_default,
    quart_price: or_default,
});

/// Base, shoe and casing.
#[derive(Clone, Debug, PartialEq)]
pub struct TrimEntry {
    /// Base is cut.
    pub base: bool,
    /// Shoe is cut.
    pub shoe: bool,
    /// Casing is cut.
    pub casing: bool,
    /// Width of a casing.
    pub casing_width: Typed,
    /// Margin between jamb and casing.
    pub reveal: Typed,
    /// Added to each piece for cutting to fit.
    pub extra: Typed,
    /// A longer run is spliced of pieces no longer than this; blank: as the longest stock needs.
    pub splice_at: Typed,
    /// What the saw takes.
    pub kerf: Typed,
    /// Stock of 8 ft is not on offer.
    pub no_8_ft: bool,
    /// Stock of 10 ft is not on offer.
    pub no_10_ft: bool,
    /// Stock of 12 ft is not on offer.
    pub no_12_ft: bool,
    /// Stock of 14 ft is not on offer.
    pub no_14_ft: bool,
    /// Stock of 16 ft is not on offer.
    pub no_16_ft: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(TrimEntry {
    base: or_default,
    shoe: or_default,
    casing: or_default,
    casing_width: or_default,
    reveal: or_default,
    extra: or_default,
    splice_at: or_default,
    kerf: or_default,
    no_8_ft: or_default,
    no_10_ft: or_default,
    no_12_ft: or_default,
    no_14_ft: or_default,
    no_16_ft: or_default,
});

/// The exhaust fan and its duct.
#[derive(Clone, Debug, PartialEq)]
pub struct AirEntry {
    /// What the room is.
    pub room: ExhaustRoom,
    /// The fan is always on.
    pub continuous: bool,
    /// Toilets; blank: none.
    pub toilets: Typed,
    /// Showers; blank: none.
    pub showers: Typed,
    /// Bath tubs; blank: none.
    pub tubs: Typed,
    /// Jetted tubs; blank: none.
    pub jetted_tubs: Typed,
    /// The fan's rating at low pressure: inches of water.
    pub low_static: Typed,
    /// Its flow there, cubic feet per minute.
    pub low_flow: Typed,
    /// The fan's rating at high pressure: inches of water.
    pub high_static: Typed,
    /// Its flow there, cubic feet per minute; blank: not known.
    pub high_flow: Typed,
    /// The pressure at which it moves nothing; blank: not known.
    pub shutoff: Typed,
    /// What the duct is of.
    pub duct: DuctKind,
    /// Inside diameter of the duct.
    pub diameter: Typed,
    /// Length of its straight parts.
    pub length: Typed,
    /// Elbows; blank: none.
    pub elbows: Typed,
    /// What each elbow is worth in length of duct.
    pub elbow: Typed,
    /// What the cap is worth in length of duct.
    pub cap: Typed,
    /// The fan's current as its label has it; blank: by its watts.
    pub fan_amps: Typed,
    /// The fan's power; blank: none.
    pub fan_watts: Typed,
    /// Its light; blank: none.
    pub light_watts: Typed,
    /// Its heater; blank: none.
    pub heater_watts: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(AirEntry {
    room: or_default,
    continuous: or_default,
    toilets: or_default,
    showers: or_default,
    tubs: or_default,
    jetted_tubs: or_default,
    low_static: or_default,
    low_flow: or_default,
    high_static: or_default,
    high_flow: or_default,
    shutoff: or_default,
    duct: or_default,
    diameter: or_default,
    length: or_default,
    elbows: or_default,
    elbow: or_default,
    cap: or_default,
    fan_amps: or_default,
    fan_watts: or_default,
    light_watts: or_default,
    heater_watts: or_default,
});

coded!(Make {
    Make::Rectified => "rectified",
    Make::Calibrated => "calibrated",
});

coded!(Place {
    Place::InteriorDry => "interior_dry",
    Place::InteriorWet => "interior_wet",
    Place::SunOrExterior => "sun_or_exterior",
    Place::RaisedConcrete => "raised_concrete",
});

coded!(LayUp {
    LayUp::Fewest => "fewest",
    LayUp::Horizontal => "horizontal",
    LayUp::Vertical => "vertical",
});

coded!(DuctKind {
    DuctKind::Smooth => "smooth",
    DuctKind::Flexible => "flexible",
});

coded!(ExhaustRoom {
    ExhaustRoom::Bathroom => "bathroom",
    ExhaustRoom::Kitchen => "kitchen",
});
