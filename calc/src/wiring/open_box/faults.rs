//! The faults that may stand between a description and the house: each a few edits of its network.

use serde::Serialize;

use super::description::{Description, Goes, Side};
use super::network::{Edit, Network};
use super::reading::Point;

mod find;

mod crossed;

mod roles;

pub use find::faults;
pub(super) use roles::point_of;

include!("../../../tables/wiring_faults.rs");

/// What is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FaultKind {
    /// Nothing: it is as described.
    NothingWrong,
    /// Nothing, and a voltage that was read is stray: it comes from the conductors beside it.
    StrayOnly,
    /// A neutral is open at its place.
    NeutralOpen,
    /// A load's neutral is in another circuit's joint.
    NeutralBorrowed,
    /// The neutrals of two circuits touch.
    NeutralsJoined,
    /// The hots of two circuits touch.
    HotsJoined,
    /// A hot is open at its place.
    HotOpen,
    /// A hot is on another breaker than the one named.
    OtherBreaker,
    /// Hot and neutral of a cable or device have changed places.
    HotNeutralSwapped,
    /// Neutral and ground touch.
    NeutralToGround,
    /// A ground is open at its place.
    GroundOpen,
    /// A switch opens the neutral, the hot goes on through.
    SwitchInNeutral,
    /// Common and traveller, or two travellers, of a switch have changed places.
    TravellersMisplaced,
    /// A joint or terminal has a resistance.
    PoorJoint,
    /// The neutral of the service is open.
    ServiceNeutralLost,
    /// The neutral of the feeder is open.
    FeederNeutralLost,
}

/// Where a fault is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// At a point: an end or terminal where it is held, the far end of a cable where it lands, a joint.
    At(Point),
    /// On a pole of a breaker.
    Pole {
        /// The breaker.
        breaker: u32,
        /// Which pole.
        pole: usize,
    },
    /// In the supply of the panel.
    Supply,
}

/// Where somebody has to look to see a fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Look {
    /// In a described box.
    Box(u32),
    /// Where a cable goes: its fixture, its switch.
    FarEnd(u32),
    /// In the panel.
    Panel,
    /// At the service.
    Service,
}

impl Place {
    /// Where it is to be seen.
    pub fn look(self, description: &Description) -> Look {
        let end = match self {
            Self::Pole { .. } => return Look::Panel,
            Self::Supply => return Look::Service,
            Self::At(Point::Joint { in_box, .. }) => return Look::Box(in_box),
            Self::At(Point::Terminal { device, .. }) => {
                return description
                    .device(device)
                    .map_or(Look::Panel, |device| Look::Box(device.in_box));
            }
            Self::At(Point::NeutralBar | Point::GroundBar | Point::Pipe) => return Look::Panel,
            Self::At(Point::End(end)) => end,
        };
        match (description.box_of(end), description.cable(end.cable)) {
            (Some(in_box), _) => Look::Box(in_box),
            (None, Some(cable)) if end.side == Side::Far => match cable.goes {
                Goes::Panel(_) => Look::Panel,
                _ => Look::FarEnd(cable.id),
            },
            _ => Look::Panel,
        }
    }
}

/// A fault: what is wrong, where, and what that changes in the network of the description.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fault {
    /// What is wrong.
    pub kind: FaultKind,
    /// Where: one place, or two that touch or have changed places; none where nothing is wrong.
    pub places: Vec<Place>,
    /// What it changes.
    pub edits: Vec<Edit>,
    /// The ohms of a poor joint.
    pub ohm: Option<f64>,
    /// How likely it is before anything is measured, against other faults.
    pub weight: f64,
}

impl Fault {
    /// Nothing wrong.
    pub const fn nothing() -> Self {
        Self {
            kind: FaultKind::NothingWrong,
            places: Vec::new(),
            edits: Vec::new(),
            ohm: None,
            weight: 0.0,
        }
    }

    /// The network with the fault in it.
    pub fn network(&self, described: &Network) -> Network {
        described.edited(&self.edits)
    }
}
