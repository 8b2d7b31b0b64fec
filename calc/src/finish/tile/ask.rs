//! What is laid, where and from which line.

use serde::Serialize;
use thiserror::Error;

use crate::floor::opening::OpeningSpan;
use crate::floor::{Outline, Point};

/// The smallest side of a tile, inches: below it is a slip of the finger.
pub const LEAST_SIDE_IN: f64 = 0.25;

/// The largest side of a tile, inches: past the largest panels made.
pub const MOST_SIDE_IN: f64 = 240.0;

/// The widest joint, the widest gap at the walls and the widest saw cut, inches.
pub const MOST_JOINT_IN: f64 = 4.0;

/// The most tiles that one layout may have.
pub const MOST_TILES: f64 = 100_000.0;

/// The most obstacles in one room.
pub const MOST_OBSTACLES: usize = 32;

/// The most that may be added for breakage, percent.
pub const MOST_ALLOWANCE_PERCENT: f64 = 200.0;

/// A question to [`layout`](super::layout()).
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TileAsk {
    /// The room.
    pub outline: Outline,
    /// What stands in it and is tiled round.
    pub obstacles: Vec<Obstacle>,
    /// Its doorways.
    pub openings: Vec<OpeningSpan>,
    /// Side of a tile along its rows, inches; in a herringbone, either side may be the longer one.
    pub width_in: f64,
    /// The other side, inches.
    pub height_in: f64,
    /// Joint between tiles, inches.
    pub joint_in: f64,
    /// Gap that is left free of tile along walls and obstacles, inches.
    pub edge_gap_in: f64,
    /// How the rows lie.
    pub pattern: Pattern,
    /// The line it starts from.
    pub start: Start,
    /// The narrowest cut that [`Start::Best`] takes gladly, as a share of the tile, 0 to 1.
    pub least_share: f64,
    /// How it is bought and cut.
    pub buying: Buying,
}

/// The share of a tile below which a border cut is too narrow; common practice.
pub const USUAL_LEAST_SHARE: f64 = 0.5;

/// How tiles are bought and cut.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Buying {
    /// What the saw takes, inches.
    pub kerf_in: f64,
    /// Whether an offcut may be laid a quarter turn round: the tile has no direction in it.
    pub may_turn: bool,
    /// Added for breakage and spares, percent.
    pub allowance_percent: f64,
    /// Tiles in a box.
    pub per_box: u32,
}

/// A rectangle that is not tiled, its sides along x and y: a tub, a cabinet, an island.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Obstacle {
    /// Its corner nearest to the origin.
    pub corner: Point,
    /// Its side along x, inches.
    pub width_in: f64,
    /// Its side along y, inches.
    pub length_in: f64,
}

/// How the rows lie.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Pattern {
    /// Joints in line both ways.
    Straight,
    /// Each row shifted along x against the row before it.
    RunningBond {
        /// By this share of tile and joint, 0 to 1: `0.5` for half, `1.0 / 3.0` for a stair of thirds.
        offset: f64,
    },
    /// Joints in line both ways, turned 45 degrees to x.
    Diagonal,
    /// Tiles at right angles to each other, each end against a side.
    Herringbone {
        /// Whether the tiles lie at 45 degrees to x; else along x and y.
        diagonal: bool,
    },
}

impl Pattern {
    /// How far the tiles are turned from x, degrees counter-clockwise.
    pub const fn turned_deg(self) -> f64 {
        match self {
            Self::Diagonal | Self::Herringbone { diagonal: true } => 45.0,
            Self::Straight | Self::RunningBond { .. } | Self::Herringbone { diagonal: false } => {
                0.0
            }
        }
    }

    /// The share of tile and joint by which each row is shifted against the one before it.
    pub const fn offset(self) -> f64 {
        match self {
            Self::RunningBond { offset } => offset,
            Self::Straight | Self::Diagonal | Self::Herringbone { .. } => 0.0,
        }
    }
}

/// Where the first tile lies.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Start {
    /// A tile's corner in the corner with the least x and y of the tiled field's bounding box.
    Corner,
    /// A tile's middle in the middle of that box.
    CentredOnTile,
    /// The crossing of two joints in the middle of that box.
    CentredOnJoint,
    /// The best of many: see [`BestStart`](super::BestStart).
    Best,
    /// A tile's corner (of the first, its least x and y before any turn) at this place.
    At(Point),
}

/// An entry of a [`TileAsk`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// [`TileAsk::width_in`].
    Width,
    /// [`TileAsk::height_in`].
    Height,
    /// [`TileAsk::joint_in`].
    Joint,
    /// [`TileAsk::edge_gap_in`].
    EdgeGap,
    /// The offset of a running bond.
    Offset,
    /// [`TileAsk::least_share`].
    LeastShare,
    /// [`Buying::kerf_in`].
    Kerf,
    /// [`Buying::allowance_percent`].
    Allowance,
    /// [`Buying::per_box`].
    PerBox,
    /// The place of [`Start::At`].
    StartPlace,
}

/// Why there is no layout.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum TileRefusal {
    /// A number that isn't one, or past what the entry allows.
    #[error("a value of {given} is not between {least} and {most}")]
    OutOfRange {
        /// Which entry.
        field: Field,
        /// What it held.
        given: f64,
        /// The least it may be.
        least: f64,
        /// The most it may be.
        most: f64,
    },
    /// A tile that is larger than the tiled field both ways.
    #[error(
        "a tile of {tile_width_in} by {tile_height_in} in covers {field_width_in} by {field_length_in} in"
    )]
    LargerThanRoom {
        /// The tile along x, inches.
        tile_width_in: f64,
        /// The tile along y, inches.
        tile_height_in: f64,
        /// The field's bounding box along x, inches.
        field_width_in: f64,
        /// The field's bounding box along y, inches.
        field_length_in: f64,
    },
    /// A gap so wide that walls pass each other.
    #[error("a gap of {gap_in} in at the walls leaves no room of this shape")]
    GapTooWide {
        /// The gap, inches.
        gap_in: f64,
    },
    /// More obstacles than [`MOST_OBSTACLES`].
    #[error("{given} obstacles are more than {MOST_OBSTACLES}")]
    TooManyObstacles {
        /// How many there were.
        given: usize,
    },
    /// An obstacle without size, or with a number that isn't one.
    #[error("obstacle {obstacle} has no size")]
    ObstacleSize {
        /// Its index, from 0.
        obstacle: usize,
    },
    /// An obstacle that lies nowhere in the room.
    #[error("obstacle {obstacle} is outside the room")]
    ObstacleOutside {
        /// Its index, from 0.
        obstacle: usize,
    },
    /// Obstacles cover the floor.
    #[error("no floor is left to tile")]
    NothingLeft,
    /// About this many tiles would be needed, more than [`MOST_TILES`].
    #[error("about {about} tiles are more than {MOST_TILES}")]
    TooMany {
        /// How many, by area.
        about: f64,
    },
}

impl TileAsk {
    /// Refuses entries that no layout can come of; the room itself is looked at by the layout.
    pub(super) fn refuse(&self) -> Result<(), TileRefusal> {
        let buying = &self.buying;
        let mut entries = vec![
            (Field::Width, self.width_in, LEAST_SIDE_IN, MOST_SIDE_IN),
            (Field::Height, self.height_in, LEAST_SIDE_IN, MOST_SIDE_IN),
            (Field::Joint, self.joint_in, 0.0, MOST_JOINT_IN),
            (Field::EdgeGap, self.edge_gap_in, 0.0, MOST_JOINT_IN),
            (Field::Offset, self.pattern.offset(), 0.0, 1.0),
            (Field::LeastShare, self.least_share, 0.0, 1.0),
            (Field::Kerf, buying.kerf_in, 0.0, MOST_JOINT_IN),
            (
                Field::Allowance,
                buying.allowance_percent,
                0.0,
                MOST_ALLOWANCE_PERCENT,
            ),
            (Field::PerBox, f64::from(buying.per_box), 1.0, MOST_TILES),
        ];
        if let Start::At(place) = self.start {
            let most = crate::floor::geometry::FARTHEST_IN;
            entries.push((Field::StartPlace, place.x_in, -most, most));
            entries.push((Field::StartPlace, place.y_in, -most, most));
        }
        for (field, given, least, most) in entries {
            // A number that isn't one is in no range.
            if !(least..=most).contains(&given) {
                return Err(TileRefusal::OutOfRange {
                    field,
                    given,
                    least,
                    most,
                });
            }
        }
        if self.obstacles.len() > MOST_OBSTACLES {
            return Err(TileRefusal::TooManyObstacles {
                given: self.obstacles.len(),
            });
        }
        Ok(())
    }
}
