//! A quote that is checked against a room's sizes, without a job.

use crate::job::{QuoteEntry, Rest, Typed};
use crate::saved;
use crate::saved::codes;

/// A rectangular room, what is done in it, and the quote for it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct QuoteSum {
    /// Width of the floor.
    pub width: Typed,
    /// Length of the floor.
    pub length: Typed,
    /// Height of the walls.
    pub height: Typed,
    /// Doors and windows together, an area; blank: none are taken off.
    pub openings: Typed,
    /// Doorways together, their width; blank: none are taken off.
    pub doorways: Typed,
    /// Mean depth of a pour.
    pub depth: Typed,
    /// What is done.
    pub work: Vec<QuoteWork>,
    /// The quote.
    pub quote: QuoteEntry,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(QuoteSum {
    width: or_default,
    length: or_default,
    height: or_default,
    openings: or_default,
    doorways: or_default,
    depth: or_default,
    work: or_default,
    quote: or_default,
});

/// Work that a quote may be for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuoteWork {
    /// The floor is poured level or flat.
    Pour,
    /// The floor is tiled.
    Tile,
    /// Walls and ceiling get new board.
    Board,
    /// Walls and ceiling are painted.
    Paint,
    /// New baseboard.
    Trim,
}

codes!(QuoteWork {
    Pour = "pour",
    Tile = "tile",
    Board = "board",
    Paint = "paint",
    Trim = "trim",
});
