//! What is bought for a job, and the quote that was given for it, as they are saved.
//!
//! What is needed is worked out and never saved; a row here says what the user knows of a need: what is on hand, what
//! a pack costs, and how many were bought.

use serde::Serialize;

use super::{Rest, Typed};
use crate::saved;
use crate::saved::{coded, codes};
use crate::supply::need::Kind;
use crate::supply::unit::Unit;

/// What is bought.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BuyingEntry {
    /// What is known of each need, by its kind and its room.
    pub rows: Vec<BuyRowEntry>,
    /// The user's own lines.
    pub own: Vec<OwnLineEntry>,
    /// Sales tax, percent; blank: none is counted.
    pub tax_percent: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BuyingEntry {
    rows: or_default,
    own: or_default,
    tax_percent: or_default,
});

/// What is known of a need.
#[derive(Clone, Debug, PartialEq)]
pub struct BuyRowEntry {
    /// What is needed.
    pub kind: Kind,
    /// The room it is for; none: the whole job.
    pub room: Option<u32>,
    /// How much is on hand, in what is bought.
    pub on_hand: Typed,
    /// The price of one of what is bought.
    pub price: Typed,
    /// How much was put into the cart, in what is bought; blank: nothing yet.
    pub ticked: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BuyRowEntry {
    kind: needed,
    room: or_default,
    on_hand: or_default,
    price: or_default,
    ticked: or_default,
});

/// A line of the user's own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OwnLineEntry {
    /// Row id.
    pub id: u32,
    /// What it is, in the user's words.
    pub words: String,
    /// How many or how much; blank: one.
    pub quantity: Typed,
    /// The price of one.
    pub price: Typed,
    /// Whether it is in the cart.
    pub ticked: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OwnLineEntry {
    id: needed,
    words: or_default,
    quantity: or_default,
    price: or_default,
    ticked: or_default,
});

/// A quote as it was given.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct QuoteEntry {
    /// Its lines, in their order.
    pub lines: Vec<QuoteLineEntry>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(QuoteEntry { lines: or_default });

/// A line of a quote.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct QuoteLineEntry {
    /// Row id.
    pub id: u32,
    /// What it says.
    pub words: String,
    /// How much; may be blank.
    pub quantity: Typed,
    /// In what; nothing: it does not say.
    pub unit: Option<Unit>,
    /// The price of one; may be blank.
    pub price: Typed,
    /// The price of the line; may be blank.
    pub total: Typed,
    /// Who says what it is for.
    pub matched: MatchedBy,
    /// What the user chose it to be for; nothing: for nothing that is worked out.
    pub chosen: Option<Kind>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(QuoteLineEntry {
    id: needed,
    words: or_default,
    quantity: or_default,
    unit: or_default,
    price: or_default,
    total: or_default,
    matched: or_default,
    chosen: or_default,
});

/// Who says what a line of a quote is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MatchedBy {
    /// Its words and its unit.
    #[default]
    Words,
    /// The user.
    User,
}

codes!(MatchedBy {
    Words = "words",
    User = "user",
});

/// What is put on the job sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SheetEntry {
    /// The parts that are left out.
    pub left_out: Vec<SheetPart>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(SheetEntry {
    left_out: or_default,
});

/// A part of the job sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SheetPart {
    /// Each room and its pour.
    Floors,
    /// Doorways.
    Doorways,
    /// The panel's directory.
    Panel,
    /// The circuits.
    Circuits,
    /// How full the boxes are.
    Boxes,
    /// What was found in boxes that were opened.
    Opened,
    /// The buying list.
    Buying,
    /// Questions to ask about the quote.
    Quote,
    /// What to watch for.
    Cautions,
}

coded!(SheetPart {
    SheetPart::Floors => "floors",
    SheetPart::Doorways => "doorways",
    SheetPart::Panel => "panel",
    SheetPart::Circuits => "circuits",
    SheetPart::Boxes => "boxes",
    SheetPart::Opened => "opened",
    SheetPart::Buying => "buying",
    SheetPart::Quote => "quote",
    SheetPart::Cautions => "cautions",
});

coded!(Kind {
    Kind::Pour => "pour",
    Kind::PourPrimer => "pour_primer",
    Kind::EdgeStrip => "edge_strip",
    Kind::Dam => "dam",
    Kind::Tile => "tile",
    Kind::TileMortar => "tile_mortar",
    Kind::Grout => "grout",
    Kind::Membrane => "membrane",
    Kind::Board => "board",
    Kind::Compound => "compound",
    Kind::JointTape => "joint_tape",
    Kind::Screws => "screws",
    Kind::CornerBead => "corner_bead",
    Kind::PaintPrimer => "paint_primer",
    Kind::WallPaint => "wall_paint",
    Kind::CeilingPaint => "ceiling_paint",
    Kind::TrimPaint => "trim_paint",
    Kind::Base => "base",
    Kind::Shoe => "shoe",
    Kind::Casing => "casing",
    Kind::Cable => "cable",
    Kind::Staples => "staples",
    Kind::WiringBox => "wiring_box",
    Kind::Fan => "fan",
    Kind::Duct => "duct",
    Kind::Elbow => "elbow",
    Kind::DuctCap => "duct_cap",
});

coded!(Unit {
    Unit::Each => "each",
    Unit::Bag => "bag",
    Unit::Case => "case",
    Unit::Roll => "roll",
    Unit::Sheet => "sheet",
    Unit::Pail => "pail",
    Unit::SquareFoot => "square_foot",
    Unit::SquareYard => "square_yard",
    Unit::Square => "square",
    Unit::SquareMeter => "square_meter",
    Unit::Inch => "inch",
    Unit::Foot => "foot",
    Unit::Yard => "yard",
    Unit::Meter => "meter",
    Unit::CubicFoot => "cubic_foot",
    Unit::CubicYard => "cubic_yard",
    Unit::Gallon => "gallon",
    Unit::Quart => "quart",
    Unit::Liter => "liter",
    Unit::Pound => "pound",
    Unit::Kilogram => "kilogram",
    Unit::Hour => "hour",
    Unit::Day => "day",
    Unit::Lump => "lump",
});

impl BuyingEntry {
    /// What is known of a need; nothing where nothing was said.
    pub fn row(&self, kind: Kind, room: Option<u32>) -> Option<&BuyRowEntry> {
        self.rows
            .iter()
            .find(|row| row.kind == kind && row.room == room)
    }

    /// What is known of a need, to be changed; begun where nothing was said.
    pub fn row_mut(&mut self, kind: Kind, room: Option<u32>) -> &mut BuyRowEntry {
        let found = self
            .rows
            .iter()
            .position(|row| row.kind == kind && row.room == room);
        let at = found.unwrap_or(self.rows.len());
        if found.is_none() {
            self.rows.push(BuyRowEntry {
                kind,
                room,
                on_hand: Typed::default(),
                price: Typed::default(),
                ticked: Typed::default(),
                rest: Rest::new(),
            });
        }
        &mut self.rows[at]
    }
}

impl QuoteEntry {
    /// The line with this id.
    pub fn line(&self, id: u32) -> Option<&QuoteLineEntry> {
        self.lines.iter().find(|line| line.id == id)
    }

    /// The line with this id, to be changed.
    pub fn line_mut(&mut self, id: u32) -> Option<&mut QuoteLineEntry> {
        self.lines.iter_mut().find(|line| line.id == id)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::saved::Coded;

    /// A code that is missing from its list would be saved as an empty word.
    #[test]
    fn codes_are_the_names_that_answers_use() {
        for (kind, code) in Kind::CODED {
            assert_eq!(serde_json::json!(kind), *code);
        }
        for (unit, code) in Unit::CODED {
            assert_eq!(serde_json::json!(unit), *code);
        }
        for (part, code) in SheetPart::CODED {
            assert_eq!(serde_json::json!(part), *code);
        }
        assert_eq!(Kind::CODED.len(), 27);
        assert_eq!(Unit::CODED.len(), 24);
    }

    #[test]
    fn a_row_is_begun_once() {
        let mut buying = BuyingEntry::default();
        buying.row_mut(Kind::Pour, Some(1)).price = Typed::plain("38.50");
        buying.row_mut(Kind::Pour, None).price = Typed::plain("30");
        buying.row_mut(Kind::Pour, Some(1)).on_hand = Typed::plain("2");
        assert_eq!(buying.rows.len(), 2);
        let row = buying.row(Kind::Pour, Some(1)).unwrap();
        assert_eq!(
            (row.price.text.as_str(), row.on_hand.text.as_str()),
            ("38.50", "2")
        );
        assert_eq!(buying.row(Kind::Dam, None), None);
    }
}
