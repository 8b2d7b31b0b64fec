//! A panel: spaces, numbers, legs and breakers, and what is wrong with how it is filled.
//!
//! Odd numbers stand on one side, even ones on the other; spaces 1 and 2 make the first row, 3 and 4 the second. The
//! legs take turns by row: two spaces of one row are on one leg, two in a column on opposite legs. Turning the panel
//! upside down changes the drawing alone.

use crate::order::Order;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;

use super::code::Rule;
use super::tables::breaker_ratings_a;

mod check;

pub use check::PanelFinding;

/// The most spaces of a panel.
pub const MOST_SPACES: u32 = 84;

/// The largest panel, amperes.
pub const MOST_PANEL_A: f64 = 1200.0;

/// One of the two ungrounded conductors of a 120/240 V supply.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Leg {
    /// That of the first row.
    #[default]
    A,
    /// The other.
    B,
}

impl Leg {
    /// The other leg.
    pub const fn other(self) -> Self {
        match self {
            Self::A => Self::B,
            Self::B => Self::A,
        }
    }
}

/// How the panel hangs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Mounting {
    /// Space 1 at the top left.
    #[default]
    Upright,
    /// Turned upside down: space 1 at the bottom right.
    Inverted,
}

/// What the panel is fed by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FedBy {
    /// The service: the first disconnect is here.
    #[default]
    Service,
    /// A feeder from another panel of the same building.
    Feeder,
    /// A feeder from another building.
    FeederFromOtherBuilding,
}

/// Where the neutrals and the equipment grounding conductors end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Bars {
    /// On bars that are joined.
    Joined,
    /// On bars that are separate.
    Separate,
    /// Not looked at.
    #[default]
    NotKnown,
}

/// Where tandem breakers may go.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TandemSpaces {
    /// Nowhere.
    None,
    /// In any space.
    All,
    /// In these spaces, as the panel's label says.
    Listed(Vec<u32>),
    /// The label has not been read.
    NotKnown,
}

/// Half of a space, in which one breaker of a tandem pair is: 16A, 16B.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Half {
    /// The upper one, as printed.
    A,
    /// The lower one.
    B,
}

/// The form of a breaker.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BreakerForm {
    /// One pole in one space.
    #[default]
    Single,
    /// Two poles in two spaces of a column, on both legs.
    TwoPole,
    /// One of the two circuits of a tandem breaker, in half a space.
    Tandem(Half),
}

/// What a breaker does besides opening on overcurrent.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Protection {
    /// Nothing.
    #[default]
    Plain,
    /// Arc-fault.
    ArcFault,
    /// Ground-fault.
    GroundFault,
    /// Both.
    ArcAndGroundFault,
}

/// How it was confirmed what a breaker feeds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Confirmed {
    /// It was not: the label alone says so.
    #[default]
    NotConfirmed,
    /// By switching it off and testing at the outlets.
    SwitchedOff,
    /// With a circuit tracer.
    Traced,
    /// By following the cable.
    Followed,
}

/// A breaker.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Breaker {
    /// Its row id.
    pub id: u32,
    /// The space it is in; the lower number for two poles.
    pub space: u32,
    /// Its form.
    pub form: BreakerForm,
    /// Its rating, amperes.
    pub rating_a: f64,
    /// What else it does.
    pub protection: Protection,
    /// The id of the breaker it is tied to by a listed handle tie.
    pub tied_to: Option<u32>,
    /// What the directory says.
    pub label: String,
    /// What was confirmed, and how.
    pub confirmed: Confirmed,
}

/// A panel as found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Panel {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// How many spaces it has.
    pub spaces: u32,
    /// Its rating, amperes, where known.
    pub rating_a: Option<f64>,
    /// The main breaker in it, amperes; `None`: there is none.
    pub main_a: Option<f64>,
    /// What protects its feeder at the other end, amperes, where known.
    pub feeder_device_a: Option<f64>,
    /// The most circuits that its label allows, where known.
    pub most_circuits: Option<u32>,
    /// How it hangs.
    pub mounting: Mounting,
    /// What feeds it.
    pub fed_by: FedBy,
    /// Its bars.
    pub bars: Bars,
    /// Where tandems may go.
    pub tandems: TandemSpaces,
    /// Its breakers.
    pub breakers: Vec<Breaker>,
}

/// Where a space is on the drawing, as the panel hangs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Place {
    /// 0 on the left, 1 on the right.
    pub column: u32,
    /// 0 at the top.
    pub row: u32,
}

/// A position of the panel and what is in it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Position {
    /// Its number as the directory shows it: `7`, `16A`, `2-4`.
    pub number: String,
    /// The spaces that it takes.
    pub spaces: Vec<u32>,
    /// Where each of them is on the drawing.
    pub places: Vec<Place>,
    /// The legs of its poles.
    pub legs: Vec<Leg>,
    /// The breaker's id; `None` for a free space.
    pub breaker: Option<u32>,
}

/// A panel, laid out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanelLayout {
    /// The edition.
    pub edition: CodeEdition,
    /// Every position, free spaces among them, by number.
    pub positions: Vec<Position>,
    /// Rows of the drawing.
    pub rows: u32,
    /// Free spaces.
    pub free_spaces: u32,
    /// Poles, each counted as an overcurrent device (408.54).
    pub poles: u32,
    /// What is remarkable.
    pub findings: Vec<PanelFinding>,
}

/// The leg of a space, from 1.
///
/// ```
/// use calc::wiring::panel::{Leg, leg_of};
/// assert_eq!([1, 2, 3, 4, 5].map(leg_of), [Leg::A, Leg::A, Leg::B, Leg::B, Leg::A]);
/// ```
pub const fn leg_of(space: u32) -> Leg {
    if (space.saturating_sub(1) / 2).is_multiple_of(2) {
        Leg::A
    } else {
        Leg::B
    }
}

/// Whether two spaces are on one leg: across a row always, down a column at every second space.
pub fn share_leg(space: u32, other: u32) -> bool {
    leg_of(space) == leg_of(other)
}

/// Whether a handle tie reaches from one space to the other: they are neighbours in a column (240.15(B), the neighbours by
/// the make of the ties: common practice).
pub const fn tie_reaches(space: u32, other: u32) -> bool {
    space.abs_diff(other) == 2
}

/// Where a space is on the drawing of a panel with so many spaces.
///
/// ```
/// use calc::wiring::panel::{Mounting, Place, place_of};
/// assert_eq!(place_of(1, 8, Mounting::Upright), Place { column: 0, row: 0 });
/// assert_eq!(place_of(1, 8, Mounting::Inverted), Place { column: 1, row: 3 });
/// ```
pub const fn place_of(space: u32, spaces: u32, mounting: Mounting) -> Place {
    let at = space.saturating_sub(1);
    let (column, row) = (at % 2, at / 2);
    match mounting {
        Mounting::Upright => Place { column, row },
        Mounting::Inverted => Place {
            column: 1 - column,
            row: spaces.div_ceil(2).saturating_sub(1).saturating_sub(row),
        },
    }
}

impl Breaker {
    /// The spaces it takes.
    pub fn spaces(&self) -> Vec<u32> {
        match self.form {
            BreakerForm::TwoPole => vec![self.space, self.space.saturating_add(2)],
            BreakerForm::Single | BreakerForm::Tandem(_) => vec![self.space],
        }
    }

    /// The legs of its poles.
    pub fn legs(&self) -> Vec<Leg> {
        self.spaces().into_iter().map(leg_of).collect()
    }

    /// Its number as the directory shows it.
    pub fn number(&self) -> String {
        match self.form {
            BreakerForm::Single => self.space.to_string(),
            BreakerForm::TwoPole => format!("{}-{}", self.space, self.space.saturating_add(2)),
            BreakerForm::Tandem(half) => format!("{}{half:?}", self.space),
        }
    }

    /// Whether a handle tie is entered between this breaker and the other, on either of them.
    pub fn is_tied(&self, other: &Self) -> bool {
        self.id != other.id && (self.tied_to == Some(other.id) || other.tied_to == Some(self.id))
    }

    /// Whether a handle tie can join this breaker and the other: single poles of one rating, neighbours in a column.
    pub fn can_be_tied(&self, other: &Self) -> bool {
        let poles = [self.form, other.form]
            .iter()
            .all(|form| *form != BreakerForm::TwoPole);
        poles && tie_reaches(self.space, other.space) && self.rating_a == other.rating_a
    }

    /// Whether one action opens this breaker and the other: they are one breaker, or a handle tie joins them that can be
    /// there.
    pub fn opens_with(&self, other: &Self) -> bool {
        self.id == other.id || (self.is_tied(other) && self.can_be_tied(other))
    }
}

/// Lays a panel out, and lists what is wrong with it.
///
/// # Errors
/// Every [`PanelRefusal`] there is, in the order of the breakers: a panel can be drawn only if each breaker has a place
/// of its own that exists.
pub fn lay_out(panel: &Panel) -> Result<PanelLayout, Vec<PanelRefusal>> {
    let refusals = check::refusals(panel);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let mut taken: BTreeMap<u32, Vec<&Breaker>> = BTreeMap::new();
    for breaker in &panel.breakers {
        for space in breaker.spaces() {
            taken.entry(space).or_default().push(breaker);
        }
    }
    let place = |space: &u32| place_of(*space, panel.spaces, panel.mounting);
    let mut positions = Vec::new();
    let mut free_spaces = 0;
    for space in 1..=panel.spaces {
        let Some(here) = taken.get_mut(&space) else {
            free_spaces += 1;
            positions.push(Position {
                number: space.to_string(),
                spaces: vec![space],
                places: vec![place(&space)],
                legs: vec![leg_of(space)],
                breaker: None,
            });
            continue;
        };
        here.order_by_key(|breaker| match breaker.form {
            BreakerForm::Tandem(half) => Some(half),
            BreakerForm::Single | BreakerForm::TwoPole => None,
        });
        for breaker in here.iter().filter(|breaker| breaker.space == space) {
            let spaces = breaker.spaces();
            positions.push(Position {
                number: breaker.number(),
                places: spaces.iter().map(place).collect(),
                spaces,
                legs: breaker.legs(),
                breaker: Some(breaker.id),
            });
        }
    }
    Ok(PanelLayout {
        edition: panel.edition,
        positions,
        rows: panel.spaces.div_ceil(2),
        free_spaces,
        poles: check::poles(panel),
        findings: check::findings(panel),
    })
}

/// Why a panel can't be laid out.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum PanelRefusal {
    /// No space, or more than [`MOST_SPACES`].
    #[error("{spaces} spaces")]
    Spaces {
        /// What was given.
        spaces: u32,
    },
    /// A rating that is none: of the panel, its main or what protects its feeder.
    #[error("{rating_a} A")]
    PanelRating {
        /// What was given, amperes.
        rating_a: f64,
    },
    /// A breaker in a space that the panel doesn't have.
    #[error("breaker {id}: no space {space}")]
    NoSpace {
        /// The breaker.
        id: u32,
        /// The space given.
        space: u32,
    },
    /// A two-pole breaker with no space below it in its column.
    #[error("breaker {id}: no space below {space}")]
    NoSecondSpace {
        /// The breaker.
        id: u32,
        /// The space given.
        space: u32,
    },
    /// Two breakers in one place.
    #[error("breakers {id} and {other} in space {space}")]
    Taken {
        /// The breaker.
        id: u32,
        /// The one before it in the list.
        other: u32,
        /// The space both are in.
        space: u32,
    },
    /// Two breakers with one id.
    #[error("two breakers {id}")]
    SameId {
        /// The id.
        id: u32,
    },
    /// A tandem in a space that doesn't take one.
    #[error("breaker {id}: no tandem in space {space}")]
    NoTandem {
        /// The breaker.
        id: u32,
        /// The space.
        space: u32,
    },
    /// A rating that is none.
    #[error("breaker {id}: {rating_a} A")]
    Rating {
        /// The breaker.
        id: u32,
        /// What was given, amperes.
        rating_a: f64,
    },
    /// Tied to a breaker that isn't there, or to itself.
    #[error("breaker {id}: tied to {tied_to}")]
    Tie {
        /// The breaker.
        id: u32,
        /// What it is tied to.
        tied_to: u32,
    },
}
