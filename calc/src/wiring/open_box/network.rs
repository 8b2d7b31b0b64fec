//! The network behind a description: nodes, and branches that know what they are.
//!
//! Built once; a fault is a list of [`Edit`]s, a [`Situation`] decides which branches are open, and [`Scene`] is both,
//! solved, ready to be measured.

use serde::Serialize;

use super::description::{Contact, Description, DescriptionRefusal, End, LoadKind, check};
use super::places::{Places, Sets};
use super::reading::Point;
use super::situation::{Apart, LoadId, Position, Situation, SwitchId};
use super::solve::{Complex64, Link};
use crate::wiring::panel::Leg;

mod build;

mod scene;

pub use scene::{Scene, Seen};

/// The transformer's neutral: the reference, at 0 V.
pub const SOURCE_NEUTRAL: usize = 0;
/// The transformer's leg A.
pub const SOURCE_A: usize = 1;
/// The transformer's leg B.
pub const SOURCE_B: usize = 2;
/// Leg A in the panel.
pub const LEG_A: usize = 3;
/// Leg B in the panel.
pub const LEG_B: usize = 4;
/// The neutral bar of the panel.
pub const NEUTRAL_BAR: usize = 5;
/// The ground bar of the panel.
pub const GROUND_BAR: usize = 6;
/// A pipe bonded at the service.
pub const PIPE: usize = 7;

/// What a branch is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// The supply conductor of a leg, with the main closed.
    Supply(Leg),
    /// The supply's neutral.
    ServiceNeutral,
    /// The bond between neutral and ground at the service.
    Bond,
    /// The way from the ground bar through the earth to the transformer.
    EarthRod,
    /// The bond of the pipe.
    PipeBond,
    /// A leg of the feeder.
    Feeder(Leg),
    /// The feeder's neutral.
    FeederNeutral,
    /// The feeder's ground.
    FeederGround,
    /// A pole of a breaker.
    Pole {
        /// The breaker.
        breaker: u32,
        /// Which pole.
        pole: usize,
    },
    /// A conductor, from its near to its far end.
    Conductor {
        /// The cable.
        cable: u32,
        /// Which conductor.
        conductor: usize,
    },
    /// A contact on its joint or terminal, in a described box.
    Joined(Contact),
    /// A far end on what it lands on beyond the described boxes: a pole, a bar, a terminal of a switch or load.
    Landed(End),
    /// A way through a switch, closed at one position.
    Switch {
        /// The switch.
        switch: SwitchId,
        /// The position in which it is closed.
        closed_at: Position,
        /// Which of the ways that are closed then, from 0.
        way: u8,
    },
    /// A tab of a receptacle.
    Tab {
        /// The device.
        device: u32,
        /// Whether it is the neutral one.
        neutral: bool,
    },
    /// A load.
    Load(LoadId),
    /// Half of the stray capacitance between two conductors of a cable, at one end of it.
    Stray(End, usize),
    /// Put there by an edit.
    Added(usize),
}

/// What a branch has.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// A resistance, ohms.
    Ohm(f64),
    /// A capacitance, farads.
    Farad(f64),
}

/// A branch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Branch {
    /// One node.
    pub from: usize,
    /// The other.
    pub to: usize,
    /// What it has.
    pub value: Value,
    /// What it is.
    pub part: Part,
}

impl Branch {
    /// The branch as an admittance.
    pub const fn link(&self) -> Link {
        match self.value {
            Value::Ohm(ohm) => Link::resistance(self.from, self.to, ohm),
            Value::Farad(farad) => Link::capacitance(self.from, self.to, farad),
        }
    }

    /// Whether it is metal: neither a load nor stray capacitance nor the earth.
    pub const fn is_metal(&self) -> bool {
        !matches!(self.part, Part::Load(_) | Part::Stray(..) | Part::EarthRod)
    }
}

/// A change of a network: faults are lists of them.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Edit {
    /// A part is open.
    Cut(Part),
    /// A part has so many ohms.
    Ohm(Part, f64),
    /// So many ohms between two nodes.
    Join {
        /// One node.
        from: usize,
        /// The other.
        to: usize,
        /// Ohms.
        ohm: f64,
    },
    /// A load of so many ohms between two nodes.
    Load {
        /// The load it is taken for.
        load: LoadId,
        /// One node.
        from: usize,
        /// The other.
        to: usize,
        /// Ohms.
        ohm: f64,
    },
    /// A contact is held by a joint or terminal by which it was not.
    Hold {
        /// The contact.
        contact: Contact,
        /// The node that holds it now.
        to: usize,
        /// Ohms.
        ohm: f64,
    },
    /// A part goes from its first node to another one than it did.
    Lead {
        /// The part.
        part: Part,
        /// Where it goes to now.
        to: usize,
    },
}

/// The network behind a description.
#[derive(Clone, Debug)]
pub struct Network {
    /// How many nodes there are.
    pub nodes: usize,
    /// The branches.
    pub branches: Vec<Branch>,
    /// The transformer's volts on leg A; leg B's stand against it.
    leg_a_v: f64,
    leg_b_v: f64,
    places: Places,
    first_contact: usize,
    /// Box, joint, node.
    joints: Vec<(u32, u32, usize)>,
    /// Far end, the node that it lands on.
    landings: Vec<(End, usize)>,
    /// Breaker, pole, the node behind it.
    poles: Vec<(u32, usize, usize)>,
    added: usize,
    /// What each load is.
    kinds: Vec<(LoadId, LoadKind)>,
    /// Where there may be a load that was not entered: the load it would be, with its two nodes.
    spots: Vec<(LoadId, usize, usize)>,
    /// The cables whose length was not given.
    guessed: Vec<u32>,
}

impl Network {
    /// The network behind a description.
    ///
    /// # Errors
    /// What [`check`] refuses.
    pub fn of(description: &Description) -> Result<Self, Vec<DescriptionRefusal>> {
        check(description)?;
        Ok(Self::of_any(description))
    }

    /// The network behind a description that may hold a short; what doesn't exist in it is left out.
    pub(in crate::wiring) fn of_any(description: &Description) -> Self {
        build::build(description)
    }

    /// The node of a contact.
    pub fn contact(&self, contact: Contact) -> Option<usize> {
        Some(self.first_contact + self.places.contact(contact)?)
    }

    /// The node of an end.
    pub fn end(&self, end: End) -> Option<usize> {
        self.contact(Contact::End(end))
    }

    /// The node that a far end lands on beyond the described boxes.
    pub fn landing(&self, end: End) -> Option<usize> {
        self.landings
            .iter()
            .find(|(e, _)| *e == end)
            .map(|(_, node)| *node)
    }

    /// The node behind a pole of a breaker.
    pub fn pole(&self, breaker: u32, pole: usize) -> Option<usize> {
        self.poles
            .iter()
            .find(|(b, p, _)| (*b, *p) == (breaker, pole))
            .map(|(.., node)| *node)
    }

    /// The breakers' poles: breaker, pole, the node behind it.
    pub fn poles(&self) -> &[(u32, usize, usize)] {
        &self.poles
    }

    /// The node of a joint.
    pub fn joint(&self, in_box: u32, joint: u32) -> Option<usize> {
        self.joints
            .iter()
            .find(|(b, j, _)| (*b, *j) == (in_box, joint))
            .map(|(.., node)| *node)
    }

    /// The joints: box, joint, node.
    pub fn joints(&self) -> &[(u32, u32, usize)] {
        &self.joints
    }

    /// The node that a probe touches.
    pub fn point(&self, point: Point) -> Option<usize> {
        match point {
            Point::End(end) => self.end(end),
            Point::Joint { in_box, joint } => self.joint(in_box, joint),
            Point::Terminal { device, terminal } => {
                self.contact(Contact::Terminal { device, terminal })
            }
            Point::NeutralBar => Some(NEUTRAL_BAR),
            Point::GroundBar => Some(GROUND_BAR),
            Point::Pipe => Some(PIPE),
        }
    }

    /// What a load is.
    pub(super) fn load_kind(&self, load: LoadId) -> LoadKind {
        self.kinds
            .iter()
            .find(|(id, _)| *id == load)
            .map_or(LoadKind::Other, |(_, kind)| *kind)
    }

    /// Where there may be a load that was not entered: at the end of a cable to a fixture for which none was, or to
    /// nobody knows where, in a half of a receptacle, in a lampholder.
    pub(super) fn spots(&self) -> &[(LoadId, usize, usize)] {
        &self.spots
    }

    /// Whether the length of a cable was taken as usual, since none was given.
    pub(super) fn is_guessed(&self, cable: u32) -> bool {
        self.guessed.contains(&cable)
    }

    /// The place of a part among the branches.
    pub fn branch(&self, part: Part) -> Option<usize> {
        self.branches.iter().position(|branch| branch.part == part)
    }

    /// Puts edits in, in their order; one that names a part or node that isn't there changes nothing.
    pub fn edit(&mut self, edits: &[Edit]) {
        for edit in edits {
            match *edit {
                Edit::Cut(part) => self.branches.retain(|branch| branch.part != part),
                Edit::Ohm(part, ohm) => {
                    for branch in self.branches.iter_mut().filter(|b| b.part == part) {
                        branch.value = Value::Ohm(ohm);
                    }
                }
                Edit::Join { from, to, ohm } => {
                    if from < self.nodes && to < self.nodes {
                        let part = Part::Added(self.added);
                        self.added += 1;
                        self.branches.push(Branch {
                            from,
                            to,
                            value: Value::Ohm(ohm),
                            part,
                        });
                    }
                }
                Edit::Load {
                    load,
                    from,
                    to,
                    ohm,
                } => {
                    if from < self.nodes && to < self.nodes {
                        self.branches.push(Branch {
                            from,
                            to,
                            value: Value::Ohm(ohm),
                            part: Part::Load(load),
                        });
                    }
                }
                Edit::Hold { contact, to, ohm } => {
                    if let Some(from) = self.contact(contact).filter(|_| to < self.nodes) {
                        self.branches.push(Branch {
                            from,
                            to,
                            value: Value::Ohm(ohm),
                            part: Part::Joined(contact),
                        });
                    }
                }
                Edit::Lead { part, to } => {
                    for branch in self.branches.iter_mut().filter(|b| b.part == part) {
                        if to < self.nodes {
                            branch.to = to;
                        }
                    }
                }
            }
        }
    }

    /// The network with edits put in.
    pub fn edited(&self, edits: &[Edit]) -> Self {
        let mut edited = self.clone();
        edited.edit(edits);
        edited
    }

    /// Whether a branch is open in a situation.
    pub fn is_open(&self, branch: &Branch, situation: &Situation) -> bool {
        match branch.part {
            Part::Supply(_) => situation.everything_off,
            Part::Pole { breaker, .. } => {
                situation.everything_off || situation.breakers_off.contains(&breaker)
            }
            Part::Switch {
                switch, closed_at, ..
            } => situation.position(switch) != closed_at,
            Part::Load(load) => situation.loads_off.contains(&load),
            Part::Joined(contact) => situation.apart.iter().any(|apart| match *apart {
                Apart::Contact(apart) => apart == contact,
                Apart::Joint { in_box, joint } => self.joint(in_box, joint) == Some(branch.to),
            }),
            _ => false,
        }
    }

    /// The branches that are closed in a situation.
    pub fn closed(&self, situation: &Situation) -> Vec<Branch> {
        self.branches
            .iter()
            .filter(|branch| !self.is_open(branch, situation))
            .copied()
            .collect()
    }

    /// The nodes that are held, with their volts.
    pub fn held(&self) -> Vec<(usize, Complex64)> {
        vec![
            (SOURCE_NEUTRAL, Complex64::ZERO),
            (SOURCE_A, Complex64::new(self.leg_a_v, 0.0)),
            (SOURCE_B, Complex64::new(-self.leg_b_v, 0.0)),
        ]
    }

    /// Which nodes hang together by branches.
    pub(super) fn sets(&self, branches: &[Branch], counts: fn(&Branch) -> bool) -> Sets {
        let mut sets = Sets::new(self.nodes);
        for branch in branches.iter().filter(|branch| counts(branch)) {
            sets.join(branch.from, branch.to);
        }
        sets
    }
}
