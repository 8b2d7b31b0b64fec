//! What each node of the described network is: hot, neutral, ground, and of which circuit.

use crate::wiring::open_box::description::{Contact, Description, End, Goes, Terminal};
use crate::wiring::open_box::live_map::contacts_of;
use crate::wiring::open_box::network::{Branch, GROUND_BAR, NEUTRAL_BAR, Network, Part};
use crate::wiring::open_box::places::Sets;
use crate::wiring::open_box::reach::{breakers, by_metal};
use crate::wiring::open_box::reading::Point;

use super::Place;

/// What a node is meant to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    /// On a pole, through metal alone.
    Hot,
    /// On the neutral bar.
    Neutral,
    /// On the ground bar.
    Ground,
    /// Behind a switch.
    Switched,
    /// None of them.
    Loose,
}

/// A way on which something hangs that can come off: a contact on its joint or terminal, a far end where it lands.
#[derive(Clone, Copy, Debug)]
pub(super) struct Held {
    pub part: Part,
    /// The node of the contact.
    pub contact: usize,
    /// What it is held by.
    pub on: usize,
    pub place: Place,
    /// The box; `None`: beyond.
    pub in_box: Option<u32>,
    pub role: Role,
}

/// The described network with what each node is.
pub(super) struct Roles<'a> {
    pub description: &'a Description,
    pub network: &'a Network,
    /// By metal, switches open, poles and bond apart.
    direct: Sets,
    /// By metal, every switch closed in every position, away from the panel.
    switched: Sets,
    /// By metal, switches open, away from the panel.
    away: Sets,
    pub held: Vec<Held>,
}

impl<'a> Roles<'a> {
    pub fn of(description: &'a Description, network: &'a Network) -> Self {
        let still: Vec<Branch> = network
            .branches
            .iter()
            .filter(|branch| !matches!(branch.part, Part::Switch { .. }))
            .copied()
            .collect();
        let direct = network.sets(&still, |branch| {
            branch.is_metal()
                && !matches!(
                    branch.part,
                    Part::Supply(_)
                        | Part::ServiceNeutral
                        | Part::Bond
                        | Part::PipeBond
                        | Part::Feeder(_)
                        | Part::FeederNeutral
                        | Part::FeederGround
                        | Part::Pole { .. }
                )
        });
        let mut roles = Self {
            description,
            network,
            direct,
            switched: by_metal(network, &network.branches),
            away: by_metal(network, &still),
            held: Vec::new(),
        };
        roles.hold();
        roles
    }

    fn hold(&mut self) {
        for branch in &self.network.branches {
            let (place, in_box) = match branch.part {
                Part::Joined(contact) => (
                    Place::At(point_of(contact)),
                    self.description.box_of_contact(contact),
                ),
                Part::Landed(end) => (Place::At(Point::End(end)), None),
                _ => continue,
            };
            let role = self.role(branch.from);
            self.held.push(Held {
                part: branch.part,
                contact: branch.from,
                on: branch.to,
                place,
                in_box,
                role,
            });
        }
    }

    /// What a node is meant to be.
    pub fn role(&mut self, node: usize) -> Role {
        let set = self.direct.find(node);
        if set == self.direct.find(NEUTRAL_BAR) {
            return Role::Neutral;
        }
        if set == self.direct.find(GROUND_BAR) {
            return Role::Ground;
        }
        let network = self.network;
        if !breakers(network, &mut self.direct, node).is_empty() {
            Role::Hot
        } else if !breakers(network, &mut self.switched, node).is_empty() {
            Role::Switched
        } else {
            Role::Loose
        }
    }

    /// The piece of metal that a node is of, switches open and the panel away.
    pub fn piece(&mut self, node: usize) -> usize {
        self.away.find(node)
    }

    /// The breakers behind a node by metal, switches closed.
    pub fn breakers(&mut self, node: usize) -> Vec<u32> {
        breakers(self.network, &mut self.switched, node)
    }

    /// One node and place for each piece of metal of a role in a box, its joint if it has one.
    pub fn pieces(&mut self, in_box: u32, role: Role) -> Vec<(usize, Place)> {
        let mut found: Vec<(usize, usize, Place)> = Vec::new();
        for &(of, joint, node) in self.network.joints() {
            if of == in_box && self.role(node) == role {
                let piece = self.piece(node);
                if !found.iter().any(|(p, ..)| *p == piece) {
                    found.push((piece, node, Place::At(Point::Joint { in_box, joint })));
                }
            }
        }
        for (contact, of) in contacts_of(self.description) {
            if let Some(node) = self.network.contact(contact)
                && of == in_box
                && self.role(node) == role
            {
                let piece = self.piece(node);
                if !found.iter().any(|(p, ..)| *p == piece) {
                    found.push((piece, node, Place::At(point_of(contact))));
                }
            }
        }
        found
            .into_iter()
            .map(|(_, node, place)| (node, place))
            .collect()
    }

    /// Far ends of cables to loads and switches: the node that each conductor lands on, with its role.
    pub fn landings(&mut self, cable: u32) -> Vec<(End, usize, Role)> {
        let held: Vec<Held> = self.held.clone();
        held.iter()
            .filter_map(|held| match held.part {
                Part::Landed(end) if end.cable == cable => Some((end, held.on, held.role)),
                _ => None,
            })
            .collect()
    }

    /// Cables to loads or switches.
    pub fn ending(&self) -> Vec<u32> {
        self.description
            .cables
            .iter()
            .filter(|cable| matches!(cable.goes, Goes::Loads(_) | Goes::Switch(_)))
            .map(|cable| cable.id)
            .collect()
    }

    /// What is held on a terminal of a device, or holds the terminal in a joint.
    pub fn on_terminal(&self, device: u32, terminal: Terminal) -> Option<Held> {
        let contact = Contact::Terminal { device, terminal };
        let node = self.network.contact(contact)?;
        self.held
            .iter()
            .find(|held| held.part == Part::Joined(contact) || held.on == node)
            .copied()
    }
}

/// The point of a contact.
pub(in crate::wiring::open_box) const fn point_of(contact: Contact) -> Point {
    match contact {
        Contact::End(end) => Point::End(end),
        Contact::Terminal { device, terminal } => Point::Terminal { device, terminal },
    }
}
