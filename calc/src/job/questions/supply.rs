//! What a job needs, what is bought of it, and what a quote says of it.
//!
//! - [`Needed`] every material that the job's answers call for, and what can't be told yet;
//! - [`buying`] the buying list: packs, what is on hand, what is left to buy, what it costs;
//! - [`quote`] the quote's lines against the needs.

use serde::Serialize;

use super::answers::{Ground, poured, primer};
use crate::floor::opening::edge_strip_in;
use crate::floor::pour::PourKind;
use crate::job::{Job, PourChoice, Room};
use crate::supply::need::{Kind, Need};
use crate::supply::unit::{Dimension, Unit};

pub mod buying;

mod closing;

pub mod quote;

pub mod sizes;

pub use closing::{CountTiles, Tiles};

/// What a job needs.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Needed {
    /// One need for each kind and room.
    pub needs: Vec<Need>,
    /// What can't be told yet.
    pub open: Vec<OpenNeed>,
}

/// A need that can't be told yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct OpenNeed {
    /// What it would be.
    pub kind: Kind,
    /// The room it would be for.
    pub room: u32,
    /// Why.
    pub why: OpenWhy,
}

/// Why a need can't be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum OpenWhy {
    /// The floor was surveyed, and no pour is chosen.
    Undecided,
    /// Entries are missing or refused.
    Missing,
    /// The best start of its tile is being searched for.
    Searching,
}

/// What a job needs, in the order of its rooms.
///
/// ```
/// use calc::job::{demo, questions::supply::needs_of};
/// use calc::supply::need::Kind;
/// let needs = needs_of(&demo::job("k3", "2026-03-02T08:00:00Z"));
/// assert_eq!(needs[0].kind, Kind::Pour);
/// ```
pub fn needs_of(job: &Job) -> Vec<Need> {
    Needed::of(job).needs
}

impl Needed {
    /// What a job needs. Cable and wiring boxes are no part of it: a job's circuits and boxes are those that are there,
    /// and it does not say which are new.
    pub fn of(job: &Job) -> Self {
        Self::with_tiles(job, &|_, ask| Some(Tiles::of(ask)))
    }

    /// The same where the tile of a room is asked elsewhere: a search for the best start takes its time. `tiles` has none
    /// while it is under way.
    pub fn with_tiles(job: &Job, tiles: &CountTiles<'_>) -> Self {
        let mut needed = Self::default();
        for room in &job.rooms {
            needed.of_pour(room);
            needed.of_closing(room, tiles);
        }
        needed
    }

    /// What the pour that was chosen needs.
    fn of_pour(&mut self, room: &Room) {
        let kind = match room.pour.choice {
            PourChoice::Level => PourKind::Level,
            PourChoice::Flat => PourKind::Flat,
            PourChoice::Open => {
                if !room.survey.spots.is_empty() {
                    self.not_yet(Kind::Pour, room, OpenWhy::Undecided);
                }
                return;
            }
        };
        let ground = Ground::of(room);
        let (Ok(shape), Ok(surface)) = (&ground.shape, &ground.floor) else {
            return self.not_yet(Kind::Pour, room, OpenWhy::Missing);
        };
        let Ok(pour) = poured(room, kind, surface, &ground.openings, &ground.readings) else {
            return self.not_yet(Kind::Pour, room, OpenWhy::Missing);
        };
        match &pour.bags {
            Ok(bags) => self.add(
                room,
                Need::new(Kind::Pour, Dimension::Volume, pour.pour.volume_ft3)
                    .with_allowance(bags.ask.allowance_percent)
                    .sold_by(Unit::Bag, bags.ask.yield_ft3_per_bag),
            ),
            Err(_) => self.not_yet(Kind::Pour, room, OpenWhy::Missing),
        }
        let primed = primer(&room.pour, shape.outline.area_in2());
        match primed.ok().and_then(|primed| primed.primer_gal) {
            Some(gal) => self.add(room, Need::new(Kind::PourPrimer, Dimension::Liquid, gal)),
            None => self.not_yet(Kind::PourPrimer, room, OpenWhy::Missing),
        }
        let spans: Vec<_> = ground.openings.iter().map(|placed| placed.span).collect();
        let strip_ft = edge_strip_in(&shape.outline, &spans) / IN_PER_FT;
        self.add(
            room,
            Need::new(Kind::EdgeStrip, Dimension::Length, strip_ft),
        );
        self.add(
            room,
            Need::new(Kind::Dam, Dimension::Length, pour.dam_in / IN_PER_FT),
        );
    }

    fn add(&mut self, room: &Room, need: Need) {
        // Nothing is no need.
        if need.exact > 0.0 {
            self.needs.push(need.of_room(room.id));
        }
    }

    fn not_yet(&mut self, kind: Kind, room: &Room, why: OpenWhy) {
        self.open.push(OpenNeed {
            kind,
            room: room.id,
            why,
        });
    }
}

const IN_PER_FT: f64 = 12.0;

/// The first unit of a dimension: what an amount is in.
pub const fn first_unit(dimension: Dimension) -> Unit {
    match dimension {
        Dimension::Length => Unit::Foot,
        Dimension::Area => Unit::SquareFoot,
        Dimension::Volume => Unit::CubicFoot,
        Dimension::Liquid => Unit::Gallon,
        Dimension::Weight => Unit::Pound,
        Dimension::Count => Unit::Each,
        Dimension::Labour => Unit::Hour,
        Dimension::Lump => Unit::Lump,
    }
}
