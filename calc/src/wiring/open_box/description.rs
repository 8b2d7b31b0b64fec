//! What is in the opened boxes, and where each cable seems to go.
//!
//! A conductor has two ends: the near one in the box that its cable was entered for, the far one where the cable goes.
//! Everything else hangs on ends: joints, device terminals, and what lies beyond.

use serde::Serialize;

use crate::wiring::conductor::{Metal, Size};
use crate::wiring::panel::Leg;

mod check;

mod device;

mod refusal;

pub use check::{LEG_VOLTS, MOST_CONDUCTORS, check};
pub use device::{Device, DeviceKind, Load, LoadKind, SwitchForm, Terminal};
pub use refusal::{DescriptionRefusal, Hot};

/// Taken for a cable whose length is not given, feet.
pub const USUAL_LENGTH_FT: f64 = 30.0;

/// The longest cable taken, feet.
pub const MOST_LENGTH_FT: f64 = 2000.0;

/// The colour of a conductor as found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Colour {
    /// Black: a hot, by custom.
    Black,
    /// Red: a second hot or a traveller, by custom.
    Red,
    /// White: a neutral, by custom.
    White,
    /// White and marked at its ends: a hot.
    MarkedWhite,
    /// Bare or green: the ground.
    Bare,
}

impl Colour {
    /// Whether the colour says that it is a hot, a traveller or a switched hot.
    pub const fn is_hot(self) -> bool {
        matches!(self, Self::Black | Self::Red | Self::MarkedWhite)
    }
}

/// Which end of a conductor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// In the box that the cable was entered for.
    #[default]
    Near,
    /// Where the cable goes.
    Far,
}

impl Side {
    /// The other end.
    pub const fn other(self) -> Self {
        match self {
            Self::Near => Self::Far,
            Self::Far => Self::Near,
        }
    }
}

/// One end of one conductor of a cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct End {
    /// The cable's id.
    pub cable: u32,
    /// Which of its conductors, from 0.
    pub conductor: usize,
    /// Which end.
    pub side: Side,
}

impl End {
    /// The end in the box that the cable was entered for.
    pub const fn near(cable: u32, conductor: usize) -> Self {
        Self {
            cable,
            conductor,
            side: Side::Near,
        }
    }

    /// The end where the cable goes.
    pub const fn far(cable: u32, conductor: usize) -> Self {
        Self {
            cable,
            conductor,
            side: Side::Far,
        }
    }

    /// The other end of the same conductor.
    pub const fn other(self) -> Self {
        Self {
            side: self.side.other(),
            ..self
        }
    }
}

/// A conductor of a cable on a pole of a breaker.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct OnBreaker {
    /// Which conductor of the cable, from 0.
    pub conductor: usize,
    /// The breaker's id.
    pub breaker: u32,
    /// Which pole: 0, or 1 for the second of two poles.
    pub pole: usize,
}

/// A load across two conductors of a cable, at its far end.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Across {
    /// One conductor, from 0.
    pub from: usize,
    /// The other.
    pub to: usize,
    /// The load.
    pub load: Load,
}

/// A switch at the far end of a cable: which conductor is on which terminal, and what it switches there.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FarSwitch {
    /// Its form. A four-way switch stands between this cable's travellers and a three-way switch beyond it, whose common
    /// is the common here.
    pub form: SwitchForm,
    /// The conductor on each terminal; a single-pole switch has `First`, `Second`, the others `Common`, `TravellerOne`,
    /// `TravellerTwo`.
    pub on: Vec<(Terminal, usize)>,
    /// The load between the terminal that has no conductor (`Second` or `Common`) and a conductor, where the switch
    /// stands before a load of its own.
    pub load: Option<(Load, usize)>,
}

/// Where a cable goes.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Goes {
    /// To the panel: hots on breakers, whites on the neutral bar, bares on the ground bar. A hot that is not listed ends
    /// loose in the panel, a listed white is on its breaker.
    Panel(Vec<OnBreaker>),
    /// To loads.
    Loads(Vec<Across>),
    /// To a switch.
    Switch(FarSwitch),
    /// To another box that is described.
    Box(u32),
    /// Not known: its far ends are taken as connected to nothing, and answers say that they rest on that.
    NotKnown,
}

/// A cable entering a box.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cable {
    /// Its id.
    pub id: u32,
    /// Its letter in the drawing, as the user gave it.
    pub letter: String,
    /// The box that it was entered for.
    pub from_box: u32,
    /// Its conductors.
    pub conductors: Vec<Colour>,
    /// Their size.
    pub size: Size,
    /// Their metal.
    pub metal: Metal,
    /// Its length, feet; `None`: [`USUAL_LENGTH_FT`].
    pub length_ft: Option<f64>,
    /// Where it goes.
    pub goes: Goes,
}

impl Cable {
    /// Its length as taken, feet.
    pub fn length_or_usual_ft(&self) -> f64 {
        self.length_ft.unwrap_or(USUAL_LENGTH_FT)
    }

    /// The first conductor of a colour, from 0.
    pub fn first(&self, colour: Colour) -> Option<usize> {
        self.conductors.iter().position(|c| *c == colour)
    }
}

/// A breaker: known, or guessed to feed a cable.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxBreaker {
    /// Its id.
    pub id: u32,
    /// Its space in the panel, where known.
    pub space: Option<u32>,
    /// The leg of each pole: one, or two for two poles.
    pub legs: Vec<Leg>,
    /// Its rating, amperes.
    pub rating_a: f64,
    /// Whether what it feeds is a guess.
    pub guessed: bool,
    /// The breaker it is tied to, so that both go off together.
    pub tied_to: Option<u32>,
}

/// Something in a box that can be joined to something else there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Contact {
    /// An end of a conductor.
    End(End),
    /// A terminal of a device, on a short wire of its own.
    Terminal {
        /// The device.
        device: u32,
        /// The terminal.
        terminal: Terminal,
    },
}

/// Where a contact is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum At {
    /// In a joint of its box, numbered from 1 in each box.
    Joint(u32),
    /// Capped alone.
    Capped,
    /// On a terminal of a device in the same box.
    Terminal {
        /// The device.
        device: u32,
        /// The terminal.
        terminal: Terminal,
    },
    /// Loose. A contact that is not listed is loose.
    Loose,
}

/// One entry of the joint grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Made {
    /// What.
    pub contact: Contact,
    /// Where it is.
    pub at: At,
}

/// How the panel is fed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Fed {
    /// From the service: its neutral and ground bars are bonded here.
    Service,
    /// By a feeder from the panel where neutral and ground are bonded; its own bars are apart.
    Feeder {
        /// The size of hots and neutral.
        size: Size,
        /// The size of the ground.
        ground_size: Size,
        /// The metal.
        metal: Metal,
        /// Its length, feet.
        length_ft: f64,
    },
}

/// The panel and its supply.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PanelFacts {
    /// Leg A to neutral, measured with little on, volts.
    pub leg_a_v: f64,
    /// Leg B to neutral, volts.
    pub leg_b_v: f64,
    /// The resistance of each of the three supply conductors up to the service, ohms.
    pub source_ohm: f64,
    /// How it is fed.
    pub fed: Fed,
}

impl PanelFacts {
    /// 120 V from each leg behind 0.03 ohm, at the service. Source: nominal voltage (ANSI C84.1); the resistance is
    /// common practice for a house.
    pub const USUAL: Self = Self {
        leg_a_v: 120.0,
        leg_b_v: 120.0,
        source_ohm: 0.03,
        fed: Fed::Service,
    };
}

/// The boxes, the cables and the panel: as intended, as found, or as edited.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Description {
    /// The panel.
    pub panel: PanelFacts,
    /// The breakers that may have to do with it.
    pub breakers: Vec<BoxBreaker>,
    /// The ids of the boxes.
    pub boxes: Vec<u32>,
    /// The cables.
    pub cables: Vec<Cable>,
    /// The devices in the boxes.
    pub devices: Vec<Device>,
    /// The joint grid.
    pub made: Vec<Made>,
}

impl Description {
    /// The cable with an id.
    pub fn cable(&self, id: u32) -> Option<&Cable> {
        self.cables.iter().find(|cable| cable.id == id)
    }

    /// The device with an id.
    pub fn device(&self, id: u32) -> Option<&Device> {
        self.devices.iter().find(|device| device.id == id)
    }

    /// The breaker with an id.
    pub fn breaker(&self, id: u32) -> Option<&BoxBreaker> {
        self.breakers.iter().find(|breaker| breaker.id == id)
    }

    /// Whether the cable of an end has that conductor.
    pub fn has_end(&self, end: End) -> bool {
        self.cable(end.cable)
            .is_some_and(|cable| end.conductor < cable.conductors.len())
    }

    /// The box that an end is in; `None` where it is beyond the described boxes.
    pub fn box_of(&self, end: End) -> Option<u32> {
        let cable = self.cable(end.cable)?;
        match (end.side, &cable.goes) {
            (Side::Near, _) => Some(cable.from_box),
            (Side::Far, Goes::Box(to)) => Some(*to),
            (Side::Far, _) => None,
        }
    }

    /// Where a contact is; loose if the grid doesn't say.
    pub fn at(&self, contact: Contact) -> At {
        self.made
            .iter()
            .find(|made| made.contact == contact)
            .map_or(At::Loose, |made| made.at)
    }

    /// The box that a contact is in.
    pub fn box_of_contact(&self, contact: Contact) -> Option<u32> {
        match contact {
            Contact::End(end) => self.box_of(end),
            Contact::Terminal { device, .. } => self.device(device).map(|d| d.in_box),
        }
    }

    /// What is in a joint of a box, in the order of the grid.
    pub fn joint(&self, in_box: u32, joint: u32) -> Vec<Contact> {
        self.made
            .iter()
            .filter(|made| {
                made.at == At::Joint(joint) && self.box_of_contact(made.contact) == Some(in_box)
            })
            .map(|made| made.contact)
            .collect()
    }
}
