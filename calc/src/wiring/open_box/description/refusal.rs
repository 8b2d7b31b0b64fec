//! Why a description can't be answered.

use serde::Serialize;
use thiserror::Error;

use crate::wiring::conductor::{Metal, Size};
use crate::wiring::panel::Leg;

use super::{At, Contact, Load};

/// A hot, or a bar, that a piece of metal is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Hot {
    /// A pole of a breaker.
    Pole {
        /// The breaker.
        breaker: u32,
        /// Its leg.
        leg: Leg,
    },
    /// The neutral bar.
    NeutralBar,
    /// The ground bar.
    GroundBar,
}

/// Why a description can't be answered.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum DescriptionRefusal {
    /// A leg's volts that are none.
    #[error("{volts} V")]
    LegVolts {
        /// What was given.
        volts: f64,
    },
    /// A source resistance that is none.
    #[error("source {ohm} ohm")]
    SourceOhm {
        /// What was given.
        ohm: f64,
    },
    /// A feeder's length that is none.
    #[error("feeder {length_ft} ft")]
    FeederLength {
        /// What was given, feet.
        length_ft: f64,
    },
    /// A feeder's size that the table doesn't have.
    #[error("feeder {size:?} {metal:?}")]
    FeederSize {
        /// The size.
        size: Size,
        /// The metal.
        metal: Metal,
    },
    /// Two breakers with one id.
    #[error("two breakers {breaker}")]
    SameBreaker {
        /// The id.
        breaker: u32,
    },
    /// Neither one pole nor two on opposite legs.
    #[error("breaker {breaker}: poles")]
    Poles {
        /// The breaker.
        breaker: u32,
    },
    /// A space on the other leg.
    #[error("breaker {breaker}: space {space} is not on {leg:?}")]
    SpaceLeg {
        /// The breaker.
        breaker: u32,
        /// The space.
        space: u32,
        /// The leg given.
        leg: Leg,
    },
    /// A rating that is none.
    #[error("breaker {breaker}: {rating_a} A")]
    Rating {
        /// The breaker.
        breaker: u32,
        /// What was given, amperes.
        rating_a: f64,
    },
    /// No box at all.
    #[error("no box")]
    NoBoxes,
    /// Two boxes with one id.
    #[error("two boxes {in_box}")]
    SameBox {
        /// The id.
        in_box: u32,
    },
    /// A box that no cable enters.
    #[error("no cable enters box {in_box}")]
    EmptyBox {
        /// The box.
        in_box: u32,
    },
    /// No such box.
    #[error("no box {in_box}")]
    NoBox {
        /// What was given.
        in_box: u32,
    },
    /// Two cables with one id.
    #[error("two cables {cable}")]
    SameCable {
        /// The id.
        cable: u32,
    },
    /// A cable with no conductors, or more than [`MOST_CONDUCTORS`](super::MOST_CONDUCTORS).
    #[error("cable {cable}: {conductors} conductors")]
    Conductors {
        /// The cable.
        cable: u32,
        /// How many.
        conductors: usize,
    },
    /// The table has no resistance for that metal in that size.
    #[error("cable {cable}: {size:?} {metal:?}")]
    NoOhms {
        /// The cable.
        cable: u32,
        /// The size.
        size: Size,
        /// The metal.
        metal: Metal,
    },
    /// A length that is none.
    #[error("cable {cable}: {length_ft} ft")]
    Length {
        /// The cable.
        cable: u32,
        /// What was given, feet.
        length_ft: f64,
    },
    /// A conductor that the cable doesn't have.
    #[error("cable {cable}: no conductor {conductor}")]
    NoConductor {
        /// The cable.
        cable: u32,
        /// What was given, from 0.
        conductor: usize,
    },
    /// A conductor that is named twice where the cable goes.
    #[error("cable {cable}: conductor {conductor} twice")]
    ConductorTwice {
        /// The cable.
        cable: u32,
        /// The conductor, from 0.
        conductor: usize,
    },
    /// No such breaker.
    #[error("no breaker {breaker}")]
    NoBreaker {
        /// What was given.
        breaker: u32,
    },
    /// A pole that the breaker doesn't have.
    #[error("breaker {breaker}: no pole {pole}")]
    NoPole {
        /// The breaker.
        breaker: u32,
        /// What was given, from 0.
        pole: usize,
    },
    /// A far switch whose terminals and conductors don't fit its form.
    #[error("cable {cable}: the switch at its end")]
    FarSwitch {
        /// The cable.
        cable: u32,
    },
    /// A cable that goes to the box it comes from.
    #[error("cable {cable} goes to its own box")]
    ToItself {
        /// The cable.
        cable: u32,
    },
    /// Watts or volts that are none.
    #[error("{load:?}")]
    Load {
        /// What was given.
        load: Load,
    },
    /// Two devices with one id.
    #[error("two devices {device}")]
    SameDevice {
        /// The id.
        device: u32,
    },
    /// The grid names a contact that is in no described box.
    #[error("no {contact:?}")]
    NoContact {
        /// What was given.
        contact: Contact,
    },
    /// The grid has a contact twice.
    #[error("{contact:?} twice")]
    Twice {
        /// The contact.
        contact: Contact,
    },
    /// A contact can't be there: a device in another box, a terminal that the device doesn't have, joint 0.
    #[error("{contact:?} at {at:?}")]
    NoPlace {
        /// The contact.
        contact: Contact,
        /// Where the grid has it.
        at: At,
    },
    /// Metal joins two legs, or a leg and a bar: a dead short, which no breaker would hold.
    #[error("{volts} V between {one:?} and {other:?}")]
    Short {
        /// One.
        one: Hot,
        /// The other.
        other: Hot,
        /// The voltage that it shorts.
        volts: f64,
    },
}
