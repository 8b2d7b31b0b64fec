//! Every address of the app, in one place.
//!
//! Links are relative and resolve through `<base>`, so that the app can be hosted under any folder.

/// The jobs on this device.
pub const JOBS: &str = "./";

/// Quick sums.
pub const SUMS: &str = "sums";

/// Quick sum: pour volume and bags.
pub const SUM_POUR: &str = "sums/pour";

/// Quick sum: slope, rise and run.
pub const SUM_RAMP: &str = "sums/ramp";

/// Quick sum: box fill.
pub const SUM_BOX: &str = "sums/box";

/// Quick sum: ampacity of a wire, and the smallest wire for a load.
pub const SUM_AMPACITY: &str = "sums/ampacity";

/// Quick sum: voltage drop along a run.
pub const SUM_DROP: &str = "sums/drop";

/// Quick sum: what measured voltages say.
pub const SUM_MEASURED: &str = "sums/measured";

/// Quick sum: cable for a run, and the cables that switches need.
pub const SUM_CABLE: &str = "sums/cable";

/// Quick sum: a quote against a room's sizes.
pub const SUM_QUOTE: &str = "sums/quote";

/// Quick sum: joint compound and tape.
pub const SUM_COMPOUND: &str = "sums/compound";

/// Quick sum of a stage of closing up.
pub fn sum_closing(stage: Stage) -> String {
    format!("sums/{}", stage.segment())
}

/// The gallery of widgets and pictures; no page links to it.
pub const GALLERY: &str = "gallery";

/// A job's own page.
pub fn job(job: &str) -> String {
    format!("job/{job}")
}

/// The stages of a job: those of a room, then those of the house.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Outline and openings.
    Room,
    /// The readings on the old floor.
    Survey,
    /// The pour.
    Pour,
    /// Doorways and ramps.
    Doorways,
    /// Tile.
    Tile,
    /// Wall board.
    Board,
    /// Paint.
    Paint,
    /// Base, shoe and casing.
    Trim,
    /// The exhaust fan and its duct.
    Air,
    /// The panel and its supply.
    Panel,
    /// The circuits.
    Circuits,
    /// The boxes.
    Boxes,
    /// Opened boxes.
    OpenBox,
    /// The buying list.
    Buy,
    /// The quote.
    Quote,
    /// The job sheet.
    Sheet,
}

impl Stage {
    /// All stages in the order the work goes.
    pub const ALL: [Self; 16] = [
        Self::Room,
        Self::Survey,
        Self::Pour,
        Self::Doorways,
        Self::Tile,
        Self::Board,
        Self::Paint,
        Self::Trim,
        Self::Air,
        Self::Panel,
        Self::Circuits,
        Self::Boxes,
        Self::OpenBox,
        Self::Buy,
        Self::Quote,
        Self::Sheet,
    ];

    /// The stages of closing up, each also a quick sum.
    pub const CLOSING: [Self; 5] = [Self::Tile, Self::Board, Self::Paint, Self::Trim, Self::Air];

    /// Whether it is a stage of the house and of no one room.
    pub const fn is_of_house(self) -> bool {
        matches!(
            self,
            Self::Panel
                | Self::Circuits
                | Self::Boxes
                | Self::OpenBox
                | Self::Buy
                | Self::Quote
                | Self::Sheet
        )
    }

    /// Whether its rows have pages of their own.
    pub const fn has_rows(self) -> bool {
        matches!(self, Self::Circuits | Self::Boxes | Self::OpenBox)
    }

    /// The last part of the stage's address.
    pub const fn segment(self) -> &'static str {
        match self {
            Self::Room => "outline",
            Self::Survey => "survey",
            Self::Pour => "pour",
            Self::Doorways => "doorways",
            Self::Tile => "tile",
            Self::Board => "board",
            Self::Paint => "paint",
            Self::Trim => "trim",
            Self::Air => "air",
            Self::Panel => "panel",
            Self::Circuits => "circuits",
            Self::Boxes => "boxes",
            Self::OpenBox => "open-box",
            Self::Buy => "buy",
            Self::Quote => "quote",
            Self::Sheet => "sheet",
        }
    }
}

/// A stage of a job; the room counts for a stage of a room alone.
pub fn stage(job: &str, room: u32, stage: Stage) -> String {
    let segment = stage.segment();
    if stage.is_of_house() {
        format!("job/{job}/{segment}")
    } else {
        format!("job/{job}/room/{room}/{segment}")
    }
}

/// One row of a stage of the house: a circuit, a box.
pub fn row(job: &str, stage: Stage, row: u32) -> String {
    format!("job/{job}/{}/{row}", stage.segment())
}

/// The folder the app is hosted under, without a slash at its end.
pub fn base() -> String {
    let uri = leptos::prelude::document()
        .base_uri()
        .ok()
        .flatten()
        .unwrap_or_default();
    let path = uri.split_once("://").map_or(uri.as_str(), |(_, rest)| {
        rest.find('/').map_or("/", |i| &rest[i..])
    });
    path.trim_end_matches('/').to_owned()
}
