//! The types of the job document, as they are saved.
//!
//! Every struct keeps the fields it does not know (`rest`), so that a job saved by a later program loses
//! nothing on its way through this one. Every measured entry is a [`Typed`]. Ids come from the job's own
//! counter and are never used twice.

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use super::Typed;

/// Fields this version does not know; kept and written back.
pub type Rest = Map<String, Value>;

/// A whole job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Job {
    /// The document's format; always first in the file.
    pub format: Format,
    /// An identifier, unique on the device and unlikely to clash anywhere.
    pub id: String,
    /// The user's name for the job.
    pub name: String,
    /// Where the job is, in the user's words.
    #[serde(default)]
    pub place: String,
    /// When it was made, RFC 3339.
    pub created: String,
    /// When it was last changed, RFC 3339.
    pub changed: String,
    /// Units in which new fields are read and figures are shown first.
    #[serde(default)]
    pub units: Units,
    /// The edition of NFPA 70 that the electrical answers use.
    #[serde(default)]
    pub code_edition: CodeEdition,
    /// The rooms, in the user's order; never empty in a job made here.
    #[serde(default)]
    pub rooms: Vec<Room>,
    /// Notes in the user's words.
    #[serde(default)]
    pub notes: String,
    /// The next id to give to a row.
    #[serde(default = "first_id")]
    pub next_id: u32,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

fn first_id() -> u32 {
    1
}

/// Name and version of the document format.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Format {
    /// Always [`FORMAT_NAME`].
    pub name: String,
    /// The version; at most [`FORMAT_VERSION`] here.
    pub version: u32,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

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
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Units {
    /// Feet, inches and fractions.
    #[default]
    FeetInches,
    /// Metres and millimetres.
    Metric,
}

/// Editions of NFPA 70 on offer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum CodeEdition {
    /// NFPA 70-2017.
    #[serde(rename = "2017")]
    E2017,
    /// NFPA 70-2020.
    #[serde(rename = "2020")]
    E2020,
    /// NFPA 70-2023.
    #[default]
    #[serde(rename = "2023")]
    E2023,
}

/// A room and the work in it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Room {
    /// Row id.
    pub id: u32,
    /// The user's name for the room.
    pub name: String,
    /// The shape of the floor.
    #[serde(default)]
    pub outline: OutlineEntry,
    /// Doorways and windows.
    #[serde(default)]
    pub openings: Vec<Opening>,
    /// The readings on the old floor.
    #[serde(default)]
    pub survey: Survey,
    /// How the floor is to be poured.
    #[serde(default)]
    pub pour: PourEntry,
    /// What comes on top of the pour, from the bottom up.
    #[serde(default)]
    pub layers: Vec<Layer>,
    /// The finish that the flatness limit is taken for.
    #[serde(default)]
    pub finish: Finish,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// How the outline was entered. The fields of every way are kept, so that changing the way loses nothing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct OutlineEntry {
    /// The way in force.
    #[serde(default)]
    pub shape: Shape,
    /// Rectangle and L: size along x.
    #[serde(default)]
    pub width: Typed,
    /// Rectangle and L: size along y.
    #[serde(default)]
    pub length: Typed,
    /// L: size of the missing corner along x.
    #[serde(default)]
    pub notch_width: Typed,
    /// L: size of the missing corner along y.
    #[serde(default)]
    pub notch_length: Typed,
    /// L: which corner is missing.
    #[serde(default)]
    pub notch_corner: Corner,
    /// Walk: the walls in order, keeping the room on the left hand.
    #[serde(default)]
    pub walls: Vec<WalkWall>,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Ways to enter an outline.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// Four walls, square corners.
    #[default]
    Rectangle,
    /// A rectangle with one corner missing.
    L,
    /// A walk round the walls.
    Walk,
}

/// A corner of the plan, seen with x to the right and y away.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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

/// One wall of a walk: its length, then the turn at its end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WalkWall {
    /// Row id.
    pub id: u32,
    /// Length of the wall.
    #[serde(default)]
    pub length: Typed,
    /// Which way the next wall goes.
    #[serde(default)]
    pub turn: Turn,
    /// The angle turned through in degrees, where it isn't a right angle; blank: 90.
    #[serde(default)]
    pub angle_deg: Typed,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// The turn at the end of a wall, walking with the room on the left hand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// To the left: an inside corner of the room, the usual one.
    #[default]
    Left,
    /// To the right: a corner that stands out into the room.
    Right,
}

/// A doorway, a window or another gap in a wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Opening {
    /// Row id.
    pub id: u32,
    /// The user's name for it ("hall door").
    #[serde(default)]
    pub name: String,
    /// What it is.
    #[serde(default)]
    pub kind: OpeningKind,
    /// The wall it is in: 0 for the first wall of the outline.
    #[serde(default)]
    pub wall: u32,
    /// Distance from the start of that wall to the nearer jamb.
    #[serde(default)]
    pub from_start: Typed,
    /// Width between jambs.
    #[serde(default)]
    pub width: Typed,
    /// How the height of the floor beyond is known.
    #[serde(default)]
    pub beyond: Beyond,
    /// The floor beyond: the top of its subfloor, read like a spot of the survey.
    #[serde(default)]
    pub beyond_reading: Typed,
    /// The floor beyond: the survey spot it is level with.
    #[serde(default)]
    pub beyond_spot: Option<u32>,
    /// Layers on the floor beyond, from the bottom up.
    #[serde(default)]
    pub beyond_layers: Vec<Layer>,
    /// The highest that the pour may stand here, read like a spot of the survey; blank: no limit.
    #[serde(default)]
    pub pour_at_most: Typed,
    /// The slope at which the step is to be ramped (`1:12`, `1/4 in per ft`).
    #[serde(default)]
    pub ramp_slope: Typed,
    /// The length there is for a ramp; blank: as the slope needs.
    #[serde(default)]
    pub ramp_length: Typed,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// What an opening is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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

/// How the height of the floor beyond an opening is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Beyond {
    /// Not known yet.
    #[default]
    Unknown,
    /// Read like a spot.
    Reading,
    /// Level with a spot of the survey.
    Spot,
}

/// One layer of a floor, above the subfloor or above the pour.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Layer {
    /// Row id.
    pub id: u32,
    /// The user's name for it, or a name from the table of layers.
    #[serde(default)]
    pub name: String,
    /// Its thickness when done.
    #[serde(default)]
    pub thickness: Typed,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// The readings on the old floor.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Survey {
    /// How the readings were taken.
    #[serde(default)]
    pub way: ReadingWay,
    /// The widest spacing of the proposed spots.
    #[serde(default)]
    pub spacing: Typed,
    /// The spots, in walking order.
    #[serde(default)]
    pub spots: Vec<Spot>,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// How readings are taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ReadingWay {
    /// Down from a level line: a larger reading is a lower spot.
    #[default]
    DownFromLine,
    /// Up from the lowest spot: a larger reading is a higher spot.
    UpFromLow,
}

/// A spot on the floor and its reading.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Spot {
    /// Row id.
    pub id: u32,
    /// Position to the right of the first corner.
    #[serde(default)]
    pub x: Typed,
    /// Position away from the first corner.
    #[serde(default)]
    pub y: Typed,
    /// The reading; blank while not read.
    #[serde(default)]
    pub reading: Typed,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// How the floor is to be poured.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct PourEntry {
    /// Which of the two answers the user took.
    #[serde(default)]
    pub choice: PourChoice,
    /// The least depth over the highest spot.
    #[serde(default)]
    pub cover: Typed,
    /// The most tilt the flat pour may have; blank: no limit.
    #[serde(default)]
    pub tilt_limit: Typed,
    /// Heights to keep under or to meet at spots.
    #[serde(default)]
    pub height_rules: Vec<HeightRule>,
    /// The deepest single lift.
    #[serde(default)]
    pub lift_limit: Typed,
    /// Volume that one bag makes.
    #[serde(default)]
    pub bag_yield: Typed,
    /// Water for one bag.
    #[serde(default)]
    pub bag_water: Typed,
    /// Added to the volume, in percent.
    #[serde(default)]
    pub allowance_percent: Typed,
    /// Bags mixed at a time.
    #[serde(default)]
    pub bags_per_batch: Typed,
    /// Minutes from opening a bag to an empty bucket.
    #[serde(default)]
    pub minutes_per_batch: Typed,
    /// Minutes in which a poured batch still flows into the next.
    #[serde(default)]
    pub pot_life_minutes: Typed,
    /// Area that a gallon of primer covers.
    #[serde(default)]
    pub primer_coverage: Typed,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Which pour the user took.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PourChoice {
    /// Not decided.
    #[default]
    Open,
    /// The level pour.
    Level,
    /// The flat pour with a tilt.
    Flat,
}

/// A height that the pour must keep at a spot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HeightRule {
    /// Row id.
    pub id: u32,
    /// The survey spot.
    #[serde(default)]
    pub spot: Option<u32>,
    /// Keep under, or meet.
    #[serde(default)]
    pub rule: HeightRuleKind,
    /// The height, read like a spot of the survey.
    #[serde(default)]
    pub reading: Typed,
    /// Fields unknown to this version.
    #[serde(flatten)]
    pub rest: Rest,
}

/// Kinds of height rule.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HeightRuleKind {
    /// The pour stands no higher than this.
    #[default]
    AtMost,
    /// The pour stands exactly at this height.
    Meet,
}

/// Finishes with a published flatness limit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
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
