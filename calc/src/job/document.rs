//! The types of the job document, as they are saved.
//!
//! Every struct keeps the fields it does not know (`rest`), so that a job saved by a later program loses
//! nothing on its way through this one. Every measured entry is a [`Typed`]. Ids come from the job's own
//! counter and are never used twice.

use serde_json::{Map, Value};

use super::Typed;
use crate::saved;
use crate::saved::codes;

pub mod finish;

pub mod supply;

pub mod wiring;

pub mod opened;

pub use finish::{
    AirEntry, BoardEntry, BuiltInEntry, CoatEntry, Covered, ObstacleEntry, PaintEntry, PatchEntry,
    TileEntry, TilePattern, TileStart, TrimEntry, WallsEntry, WindowEntry,
};

pub use supply::{
    BuyRowEntry, BuyingEntry, MatchedBy, OwnLineEntry, QuoteEntry, QuoteLineEntry, SheetEntry,
    SheetPart,
};
pub use wiring::{
    BarrierEntry, BarrierKind, BesideEntry, BoxBy, BoxCableEntry, BoxConductorsEntry, BoxEntry,
    BreakerEntry, CableGround, CableKind, CircuitEntry, CircuitWiring, ConductorUse, DeviceEntry,
    GroupingKind, LaidEntry, LoadEntry, LoadUnit, MainDisconnect, PanelEntry, RingEntry,
    StretchEntry, SupplyEntry, SupplyReadingsEntry, TandemRule, TerminalBlockEntry,
};

pub use opened::{
    FarLoadEntry, GoesKind, HotEntry, LoadOffEntry, MadeAt, MadeEntry, OpenedBoxEntry,
    OpenedBreakerEntry, OpenedCableEntry, OpenedDeviceEntry, OpenedDeviceKind, OpenedEntry,
    ReadingEntry, ReadingKind, ScrewEntry, SpotEntry, SpotKind, SwitchedEntry,
};

/// Fields this version does not know; kept and written back.
pub type Rest = Map<String, Value>;

/// A whole job.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// The document's format; always first in the file.
    pub format: Format,
    /// An identifier, unique on the device and unlikely to clash anywhere.
    pub id: String,
    /// The user's name for the job.
    pub name: String,
    /// Where the job is, in the user's words.
    pub place: String,
    /// When it was made, RFC 3339.
    pub created: String,
    /// When it was last changed, RFC 3339.
    pub changed: String,
    /// Units in which new fields are read and figures are shown first.
    pub units: Units,
    /// The edition of NFPA 70 that the electrical answers use.
    pub code_edition: CodeEdition,
    /// The rooms, in the user's order; never empty in a job made here.
    pub rooms: Vec<Room>,
    /// The panel.
    pub panel: PanelEntry,
    /// The circuits, in the user's order.
    pub circuits: Vec<CircuitEntry>,
    /// The boxes, in the user's order.
    pub boxes: Vec<BoxEntry>,
    /// Opened boxes, in the user's order.
    pub opened: Vec<OpenedEntry>,
    /// What is bought.
    pub buying: BuyingEntry,
    /// The quote that was given.
    pub quote: QuoteEntry,
    /// What is put on the job sheet.
    pub sheet: SheetEntry,
    /// Notes in the user's words.
    pub notes: String,
    /// The next id to give to a row; set after the ids in use when it is read.
    pub next_id: u32,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Job {
    format: needed,
    id: needed,
    name: needed,
    place: or_default,
    created: needed,
    changed: needed,
    units: or_default,
    code_edition: or_default,
    rooms: or_default,
    panel: or_default,
    circuits: or_default,
    boxes: or_default,
    opened: or_default,
    buying: or_default,
    quote: or_default,
    sheet: or_default,
    notes: or_default,
    next_id: or_default,
});

/// Name and version of the document format.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Format {
    /// Always [`FORMAT_NAME`].
    pub name: String,
    /// The version; at most [`FORMAT_VERSION`] here.
    pub version: u32,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Format {
    name: needed,
    version: needed,
});

impl Format {
    /// The format that this program writes.
    pub fn current() -> Self {
        Self {
            name: FORMAT_NAME.to_owned(),
            version: FORMAT_VERSION,
            rest: Rest::new(),
        }
    }
}

/// The name by which a job file is known.
pub const FORMAT_NAME: &str = "roomwright-job";

/// The newest version this program writes and reads.
pub const FORMAT_VERSION: u32 = 1;

/// The system of units that fields are read in and figures are shown in first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Feet, inches and fractions.
    #[default]
    FeetInches,
    /// Metres and millimetres.
    Metric,
}

codes!(Units {
    FeetInches = "feet_inches",
    Metric = "metric",
});

/// Editions of NFPA 70 on offer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CodeEdition {
    /// NFPA 70-2017.
    E2017,
    /// NFPA 70-2020.
    E2020,
    /// NFPA 70-2023.
    #[default]
    E2023,
}

codes!(CodeEdition {
    E2017 = "2017",
    E2020 = "2020",
    E2023 = "2023",
});

/// A room and the work in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// Row id.
    pub id: u32,
    /// The user's name for the room.
    pub name: String,
    /// The shape of the floor.
    pub outline: OutlineEntry,
    /// Doorways and windows.
    pub openings: Vec<Opening>,
    /// The readings on the old floor.
    pub survey: Survey,
    /// How the floor is to be poured.
    pub pour: PourEntry,
    /// What comes on top of the pour, from the bottom up.
    pub layers: Vec<Layer>,
    /// The finish that the flatness limit is taken for.
    pub finish: Finish,
    /// The walls above the floor.
    pub walls: WallsEntry,
    /// The tile.
    pub tile: TileEntry,
    /// Wall board.
    pub board: BoardEntry,
    /// Paint.
    pub paint: PaintEntry,
    /// Base, shoe and casing.
    pub trim: TrimEntry,
    /// Exhaust.
    pub air: AirEntry,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Room {
    id: needed,
    name: needed,
    outline: or_default,
    openings: or_default,
    survey: or_default,
    pour: or_default,
    layers: or_default,
    finish: or_default,
    walls: or_default,
    tile: or_default,
    board: or_default,
    paint: or_default,
    trim: or_default,
    air: or_default,
});

/// How the outline was entered. The fields of every way are kept, so that changing the way loses nothing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OutlineEntry {
    /// The way in force.
    pub shape: Shape,
    /// Rectangle and L: size along x.
    pub width: Typed,
    /// Rectangle and L: size along y.
    pub length: Typed,
    /// L: size of the missing corner along x.
    pub notch_width: Typed,
    /// L: size of the missing corner along y.
    pub notch_length: Typed,
    /// L: which corner is missing.
    pub notch_corner: Corner,
    /// Walk: the walls in order, keeping the room on the left hand.
    pub walls: Vec<WalkWall>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OutlineEntry {
    shape: or_default,
    width: or_default,
    length: or_default,
    notch_width: or_default,
    notch_length: or_default,
    notch_corner: or_default,
    walls: or_default,
});

/// Ways to enter an outline.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shape {
    /// Four walls, square corners.
    #[default]
    Rectangle,
    /// A rectangle with one corner missing.
    L,
    /// A walk round the walls.
    Walk,
}

codes!(Shape {
    Rectangle = "rectangle",
    L = "l",
    Walk = "walk",
});

/// A corner of the plan, seen with x to the right and y away.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Corner {
    /// Near, left.
    NearLeft,
    /// Near, right.
    NearRight,
    /// Far, right.
    #[default]
    FarRight,
    /// Far, left.
    FarLeft,
}

codes!(Corner {
    NearLeft = "near_left",
    NearRight = "near_right",
    FarRight = "far_right",
    FarLeft = "far_left",
});

/// One wall of a walk: its length, then the turn at its end.
#[derive(Clone, Debug, PartialEq)]
pub struct WalkWall {
    /// Row id.
    pub id: u32,
    /// Length of the wall.
    pub length: Typed,
    /// Which way the next wall goes.
    pub turn: Turn,
    /// The angle turned through in degrees, where it isn't a right angle; blank: 90.
    pub angle_deg: Typed,
    /// The same by tape, used where no angle is given: the distance between two marks on the walls, each
    /// [`CORNER_MARK_IN`](crate::floor::outline::CORNER_MARK_IN) from the corner; blank: square.
    pub across: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(WalkWall {
    id: needed,
    length: or_default,
    turn: or_default,
    angle_deg: or_default,
    across: or_default,
});

/// The turn at the end of a wall, walking with the room on the left hand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Turn {
    /// To the left: an inside corner of the room, the usual one.
    #[default]
    Left,
    /// To the right: a corner that stands out into the room.
    Right,
}

codes!(Turn {
    Left = "left",
    Right = "right",
});

/// A doorway, a window or another gap in a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Row id.
    pub id: u32,
    /// The user's name for it ("hall door").
    pub name: String,
    /// What it is.
    pub kind: OpeningKind,
    /// The wall it is in: 0 for the first wall of the outline.
    pub wall: u32,
    /// Distance from the start of that wall to the nearer jamb.
    pub from_start: Typed,
    /// Width between jambs.
    pub width: Typed,
    /// How the height of the floor beyond is known.
    pub beyond: Beyond,
    /// The floor beyond: the top of its subfloor, read like a spot of the survey.
    pub beyond_reading: Typed,
    /// The floor beyond: the survey spot it is level with.
    pub beyond_spot: Option<u32>,
    /// Layers on the floor beyond, from the bottom up.
    pub beyond_layers: Vec<Layer>,
    /// The highest that the pour may stand here, read like a spot of the survey; blank: no limit.
    pub pour_at_most: Typed,
    /// The slope at which the step is to be ramped (`1:12`, `1/4 in per ft`).
    pub ramp_slope: Typed,
    /// The length there is for a ramp; blank: as the slope needs.
    pub ramp_length: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Opening {
    id: needed,
    name: or_default,
    kind: or_default,
    wall: or_default,
    from_start: or_default,
    width: or_default,
    beyond: or_default,
    beyond_reading: or_default,
    beyond_spot: or_default,
    beyond_layers: or_default,
    pour_at_most: or_default,
    ramp_slope: or_default,
    ramp_length: or_default,
});

/// The wall of an opening whose wall was taken out.
pub const NO_WALL: u32 = u32::MAX;

/// What an opening is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum OpeningKind {
    /// A doorway with a door.
    #[default]
    Doorway,
    /// An opening without a door.
    Cased,
    /// A door to the outside.
    Exterior,
    /// A closet front.
    Closet,
}

codes!(OpeningKind {
    Doorway = "doorway",
    Cased = "cased",
    Exterior = "exterior",
    Closet = "closet",
});

/// How the height of the floor beyond an opening is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Beyond {
    /// Not known yet.
    #[default]
    Unknown,
    /// Read like a spot.
    Reading,
    /// Level with a spot of the survey.
    Spot,
}

codes!(Beyond {
    Unknown = "unknown",
    Reading = "reading",
    Spot = "spot",
});

/// One layer of a floor, above the subfloor or above the pour.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// Row id.
    pub id: u32,
    /// The user's name for it, or a name from the table of layers.
    pub name: String,
    /// Its thickness when done.
    pub thickness: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Layer {
    id: needed,
    name: or_default,
    thickness: or_default,
});

/// The readings on the old floor.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    /// How the readings were taken.
    pub way: ReadingWay,
    /// The widest spacing of the proposed spots.
    pub spacing: Typed,
    /// The spots, in walking order.
    pub spots: Vec<Spot>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Survey {
    way: or_default,
    spacing: or_default,
    spots: or_default,
});

/// How readings are taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ReadingWay {
    /// Down from a level line: a larger reading is a lower spot.
    #[default]
    DownFromLine,
    /// Up from the lowest spot: a larger reading is a higher spot.
    UpFromLow,
}

codes!(ReadingWay {
    DownFromLine = "down_from_line",
    UpFromLow = "up_from_low",
});

/// A spot on the floor and its reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Row id.
    pub id: u32,
    /// Position to the right of the first corner.
    pub x: Typed,
    /// Position away from the first corner.
    pub y: Typed,
    /// The reading; blank while not read.
    pub reading: Typed,
    /// The reading's text when the user said that it is right though its neighbours disagree; another text of the
    /// reading is doubted anew.
    pub checked: String,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Spot {
    id: needed,
    x: or_default,
    y: or_default,
    reading: or_default,
    checked: or_default,
});

/// How the floor is to be poured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PourEntry {
    /// Which of the two answers the user took.
    pub choice: PourChoice,
    /// The least depth over the highest spot.
    pub cover: Typed,
    /// The most tilt the flat pour may have; blank: no limit.
    pub tilt_limit: Typed,
    /// Heights to keep under or to meet at spots.
    pub height_rules: Vec<HeightRule>,
    /// The deepest single lift.
    pub lift_limit: Typed,
    /// Volume that one bag makes.
    pub bag_yield: Typed,
    /// Water for one bag.
    pub bag_water: Typed,
    /// Added to the volume, in percent.
    pub allowance_percent: Typed,
    /// Bags mixed at a time.
    pub bags_per_batch: Typed,
    /// Minutes from one batch of a mixer to its next: measure, mix, carry, pour, rinse.
    pub minutes_per_batch: Typed,
    /// Minutes in which a poured batch still flows into the next.
    pub pot_life_minutes: Typed,
    /// Area that a gallon of primer covers.
    pub primer_coverage: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PourEntry {
    choice: or_default,
    cover: or_default,
    tilt_limit: or_default,
    height_rules: or_default,
    lift_limit: or_default,
    bag_yield: or_default,
    bag_water: or_default,
    allowance_percent: or_default,
    bags_per_batch: or_default,
    minutes_per_batch: or_default,
    pot_life_minutes: or_default,
    primer_coverage: or_default,
});

/// Which pour the user took.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PourChoice {
    /// Not decided.
    #[default]
    Open,
    /// The level pour.
    Level,
    /// The flat pour with a tilt.
    Flat,
}

codes!(PourChoice {
    Open = "open",
    Level = "level",
    Flat = "flat",
});

/// A height that the pour must keep at a spot.
#[derive(Clone, Debug, PartialEq)]
pub struct HeightRule {
    /// Row id.
    pub id: u32,
    /// The survey spot.
    pub spot: Option<u32>,
    /// Keep under, or meet.
    pub rule: HeightRuleKind,
    /// The height, read like a spot of the survey.
    pub reading: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(HeightRule {
    id: needed,
    spot: or_default,
    rule: or_default,
    reading: or_default,
});

/// Kinds of height rule.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum HeightRuleKind {
    /// The pour stands no higher than this.
    #[default]
    AtMost,
    /// The pour stands exactly at this height.
    Meet,
}

codes!(HeightRuleKind {
    AtMost = "at_most",
    Meet = "meet",
});

/// Finishes with a published flatness limit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Finish {
    /// Tile, every edge shorter than 15 in.
    #[default]
    TileSmall,
    /// Tile, any edge 15 in or longer.
    TileLarge,
    /// Resilient sheet or tile.
    Resilient,
    /// Wood nailed with fasteners of 1-1/2 in and longer.
    WoodLong,
    /// Wood glued down, or nailed with shorter fasteners.
    WoodShort,
    /// Laminate and floating plank.
    Floating,
}

codes!(Finish {
    TileSmall = "tile_small",
    TileLarge = "tile_large",
    Resilient = "resilient",
    WoodLong = "wood_long",
    WoodShort = "wood_short",
    Floating = "floating",
});
