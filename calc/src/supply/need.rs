//! One thing that a job needs: how much at the least, usually and generously, and by what packs it is sold.

use serde::Serialize;

use super::unit::{Dimension, Unit};

/// A count that passes a whole number by less than this share is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// What is needed. One kind of one room is one line of the buying list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Self-levelling underlayment.
    Pour,
    /// Primer for the pour.
    PourPrimer,
    /// Foam along the walls.
    EdgeStrip,
    /// Stops at the openings.
    Dam,
    /// Tile.
    Tile,
    /// Mortar that tile is set in.
    TileMortar,
    /// Grout.
    Grout,
    /// Membrane under tile.
    Membrane,
    /// Gypsum board and its kin.
    Board,
    /// Joint compound.
    Compound,
    /// Joint tape.
    JointTape,
    /// Board screws.
    Screws,
    /// Corner bead.
    CornerBead,
    /// Primer for new board.
    PaintPrimer,
    /// Wall paint.
    WallPaint,
    /// Ceiling paint.
    CeilingPaint,
    /// Trim paint.
    TrimPaint,
    /// Baseboard.
    Base,
    /// Shoe moulding.
    Shoe,
    /// Casing.
    Casing,
    /// Cable.
    Cable,
    /// Staples.
    Staples,
    /// Boxes for wiring.
    WiringBox,
    /// Exhaust fan.
    Fan,
    /// Duct.
    Duct,
    /// Elbows of a duct.
    Elbow,
    /// The cap of a duct.
    DuctCap,
}

/// The counter of a store that sells a kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Counter {
    /// Floors and tile.
    Floor,
    /// Electrical.
    Electrical,
    /// Wall board.
    Board,
    /// Paint.
    Paint,
    /// Trim.
    Trim,
    /// Air.
    Air,
}

impl Kind {
    /// The counter that sells it.
    pub const fn counter(self) -> Counter {
        match self {
            Self::Pour | Self::PourPrimer | Self::EdgeStrip | Self::Dam => Counter::Floor,
            Self::Tile | Self::TileMortar | Self::Grout | Self::Membrane => Counter::Floor,
            Self::Board | Self::Compound | Self::JointTape | Self::Screws | Self::CornerBead => {
                Counter::Board
            }
            Self::PaintPrimer | Self::WallPaint | Self::CeilingPaint | Self::TrimPaint => {
                Counter::Paint
            }
            Self::Base | Self::Shoe | Self::Casing => Counter::Trim,
            Self::Cable | Self::Staples | Self::WiringBox => Counter::Electrical,
            Self::Fan | Self::Duct | Self::Elbow | Self::DuctCap => Counter::Air,
        }
    }

    /// Usual and generous allowance for waste, percent: common practice of the trade. A job's own allowance takes the
    /// place of the usual one where it has one.
    pub const fn allowances(self) -> (f64, f64) {
        match self {
            // Plain layouts 10, running bond and many corners 15, diagonals 20.
            Self::Tile => (10.0, 20.0),
            Self::Pour | Self::TileMortar | Self::Grout | Self::Membrane => (10.0, 20.0),
            Self::Board => (10.0, 15.0),
            Self::Compound | Self::JointTape | Self::Screws | Self::CornerBead => (10.0, 25.0),
            Self::PourPrimer
            | Self::PaintPrimer
            | Self::WallPaint
            | Self::CeilingPaint
            | Self::TrimPaint => (10.0, 20.0),
            Self::Base | Self::Shoe | Self::Casing => (10.0, 15.0),
            Self::Cable => (10.0, 20.0),
            Self::EdgeStrip | Self::Dam | Self::Duct => (5.0, 15.0),
            // Counted one by one: none is wasted.
            Self::Staples => (10.0, 50.0),
            Self::WiringBox | Self::Fan | Self::Elbow | Self::DuctCap => (0.0, 0.0),
        }
    }
}

/// A pack: its unit and how much of the need's own unit it holds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Pack {
    /// What it is called.
    pub unit: Unit,
    /// How much it holds, in the first unit of the need's dimension.
    pub holds: f64,
}

/// How much of one thing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Need {
    /// What.
    pub kind: Kind,
    /// The room that it is for; none: the whole job.
    pub room: Option<u32>,
    /// What the amount is in: feet, square feet, cubic feet, gallons, pounds or things.
    pub dimension: Dimension,
    /// The amount without any waste.
    pub exact: f64,
    /// Usual allowance, percent.
    pub usual_percent: f64,
    /// Generous allowance, percent; never under the usual one.
    pub generous_percent: f64,
    /// The packs it is sold by; the first is bought.
    pub packs: Vec<Pack>,
    /// What is bought where it is of several sizes: how many of each; empty: whole packs of the first kind.
    pub mix: Vec<Mixed>,
}

/// So many of one pack among others.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Mixed {
    /// How many.
    pub count: u32,
    /// Of which.
    pub pack: Pack,
}

/// Low, usual and high in one unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Range {
    /// Without any waste: less can't do the job.
    pub low: f64,
    /// With the usual allowance.
    pub usual: f64,
    /// With a generous one.
    pub high: f64,
}

impl Need {
    /// A need with the trade's allowances.
    pub fn new(kind: Kind, dimension: Dimension, exact: f64) -> Self {
        let (usual_percent, generous_percent) = kind.allowances();
        Self {
            kind,
            room: None,
            dimension,
            exact,
            usual_percent,
            generous_percent,
            packs: Vec::new(),
            mix: Vec::new(),
        }
    }

    /// The same need for a room.
    pub fn of_room(mut self, room: u32) -> Self {
        self.room = Some(room);
        self
    }

    /// The same need with the job's own allowance in the place of the usual one.
    pub fn with_allowance(mut self, percent: f64) -> Self {
        self.usual_percent = percent;
        self.generous_percent = self.generous_percent.max(percent);
        self
    }

    /// The same need, also sold by a pack that holds so much. A pack that holds nothing is none.
    pub fn sold_by(mut self, unit: Unit, holds: f64) -> Self {
        if holds > 0.0 && holds.is_finite() {
            self.packs.push(Pack { unit, holds });
        }
        self
    }

    /// The same need as it was cut or mixed: so many of each size. Where all have one unit, the mean of them is the pack that
    /// it is sold by.
    ///
    /// ```
    /// use calc::supply::{need::{Kind, Mixed, Need, Pack}, unit::{Dimension, Unit}};
    /// let sheets = |count, holds| Mixed { count, pack: Pack { unit: Unit::Sheet, holds } };
    /// let board = Need::new(Kind::Board, Dimension::Area, 150.0).bought_as(vec![sheets(3, 32.0), sheets(2, 48.0)]);
    /// assert_eq!((board.packs[0].holds, board.mixed()), (38.4, Some(5.0)));
    /// ```
    pub fn bought_as(mut self, mix: Vec<Mixed>) -> Self {
        let count: f64 = mix.iter().map(|of| f64::from(of.count)).sum();
        let holds: f64 = mix
            .iter()
            .map(|of| f64::from(of.count) * of.pack.holds)
            .sum();
        self.mix = mix;
        match self.mix.first().map(|of| of.pack.unit) {
            Some(unit) if count > 0.0 && self.mix.iter().all(|of| of.pack.unit == unit) => {
                self.sold_by(unit, holds / count)
            }
            _ => self,
        }
    }

    /// What is bought of the sizes together: how many packs, or how much where their units differ; none where no sizes were
    /// told.
    pub fn mixed(&self) -> Option<f64> {
        let one = |of: &Mixed| {
            if self.packs.is_empty() {
                of.pack.holds
            } else {
                1.0
            }
        };
        let sum = self
            .mix
            .iter()
            .map(|of| f64::from(of.count) * one(of))
            .sum();
        (!self.mix.is_empty()).then_some(sum)
    }

    /// What is bought: whole packs of the first kind, with the usual allowance; none where it is sold by the amount.
    ///
    /// ```
    /// use calc::supply::{need::{Kind, Need}, unit::{Dimension, Unit}};
    /// // 40 square feet at 3/8 in is 1.25 cubic feet; with 10 percent, at 0.45 a bag: 3.06 bags, so 4.
    /// let pour = Need::new(Kind::Pour, Dimension::Volume, 1.25).sold_by(Unit::Bag, 0.45);
    /// assert_eq!(pour.packs_to_buy(), Some(4.0));
    /// ```
    pub fn packs_to_buy(&self) -> Option<f64> {
        let pack = self.packs.first()?;
        Some(whole(self.amount(self.usual_percent) / pack.holds))
    }

    /// The amount with an allowance, in the first unit of the dimension.
    pub fn amount(&self, percent: f64) -> f64 {
        self.exact * (1.0 + percent / 100.0)
    }

    /// Low, usual and high in a unit: the need's own dimension, or one of its packs, in whole packs (the least of
    /// a liquid aside). None where the unit is neither.
    ///
    /// ```
    /// use calc::supply::{need::{Kind, Need}, unit::{Dimension, Unit}};
    /// let tile = Need::new(Kind::Tile, Dimension::Area, 90.0);
    /// let range = tile.range_in(Unit::SquareYard).unwrap();
    /// assert!((range.low - 10.0).abs() < 1e-12 && (range.usual - 11.0).abs() < 1e-12);
    /// assert_eq!(tile.range_in(Unit::Bag), None);
    /// ```
    pub fn range_in(&self, unit: Unit) -> Option<Range> {
        let percents = [0.0, self.usual_percent, self.generous_percent];
        let [low, usual, high] = if let Some(pack) = self.packs.iter().find(|p| p.unit == unit) {
            let [low, usual, high] = percents.map(|percent| self.amount(percent) / pack.holds);
            // A can may be shared with a smaller one; a bag may not.
            let least = if unit.dimension() == Dimension::Count {
                whole(low)
            } else {
                low
            };
            [least, whole(usual), whole(high)]
        } else if unit.dimension() == self.dimension
            && (self.dimension != Dimension::Count || self.packs.is_empty())
        {
            percents.map(|percent| self.amount(percent) / unit.factor())
        } else {
            return None;
        };
        Some(Range { low, usual, high })
    }
}

/// Whole things, rounded up.
fn whole(count: f64) -> f64 {
    (count * (1.0 - ROUNDING)).ceil()
}
