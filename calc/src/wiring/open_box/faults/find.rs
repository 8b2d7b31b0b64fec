//! Every fault that a description leaves room for.

use crate::wiring::open_box::description::{Cable, Colour, Contact, Description, End, Fed, Goes};
use crate::wiring::open_box::network::{Edit, GROUND_BAR, NEUTRAL_BAR, Network, Part};
use crate::wiring::open_box::reach::short;
use crate::wiring::open_box::reading::Point;
use crate::wiring::open_box::situation::Situation;

use super::roles::{Held, Role, Roles};
use super::{BEYOND_BOXES, FAULT_WEIGHTS, Fault, FaultKind, POOR_JOINT_OHM, Place, crossed};

/// Two wires that touch where they should not, ohms. Source: common practice, as a joint.
pub(super) const TOUCH_OHM: f64 = 0.002;

/// What is being found.
pub(super) struct Found {
    pub all: Vec<Fault>,
}

impl Found {
    /// Takes a fault; one beyond the boxes weighs less.
    pub fn push(&mut self, kind: FaultKind, places: Vec<Place>, beyond: bool, edits: Vec<Edit>) {
        self.all.push(Fault {
            kind,
            places,
            edits,
            ohm: None,
            weight: if beyond { BEYOND_BOXES } else { 1.0 },
        });
    }
}

/// Every single fault that a description leaves room for, nothing wrong first; a kind's weight is shared by its places.
///
/// Faults that are a dead short are left out: no breaker would hold on them.
pub fn faults(description: &Description, network: &Network) -> Vec<Fault> {
    let mut roles = Roles::of(description, network);
    let mut found = Found { all: Vec::new() };
    let nothing = Fault::nothing();
    found.push(nothing.kind, nothing.places, false, nothing.edits);
    opens(&roles, &mut found);
    for &in_box in &description.boxes {
        touching(&mut roles, in_box, &mut found);
        borrowed(&mut roles, in_box, &mut found);
    }
    touching_beyond(&mut roles, &mut found);
    other_breakers(&roles, &mut found);
    crossed::crossed(&mut roles, &mut found);
    poor_joints(&roles, &mut found);
    supply(description, &mut found);
    let mut all = found.all;
    all.retain(|fault| holds(network, fault));
    share_weights(&mut all);
    all
}

/// Whether a breaker would hold on it.
fn holds(network: &Network, fault: &Fault) -> bool {
    let metal = fault.edits.iter().any(|edit| {
        matches!(
            edit,
            Edit::Join { .. } | Edit::Lead { .. } | Edit::Hold { .. }
        )
    });
    if !metal {
        return true;
    }
    let edited = fault.network(network);
    short(&edited, &edited.closed(&Situation::default())).is_none()
}

/// Shares each kind's weight among its places.
fn share_weights(all: &mut [Fault]) {
    for (kind, weight) in FAULT_WEIGHTS {
        let sum: f64 = all
            .iter()
            .filter(|fault| fault.kind == kind)
            .map(|fault| fault.weight)
            .sum();
        for fault in all.iter_mut().filter(|fault| fault.kind == kind) {
            fault.weight *= weight / sum;
        }
    }
}

fn opens(roles: &Roles, found: &mut Found) {
    for held in &roles.held {
        let kind = match held.role {
            Role::Neutral => FaultKind::NeutralOpen,
            Role::Ground => FaultKind::GroundOpen,
            Role::Hot | Role::Switched => FaultKind::HotOpen,
            Role::Loose => continue,
        };
        let beyond = held.in_box.is_none();
        found.push(kind, vec![held.place], beyond, vec![Edit::Cut(held.part)]);
    }
}

fn touch(found: &mut Found, kind: FaultKind, one: (usize, Place), other: (usize, Place)) {
    let beyond =
        |place: Place| matches!(place, Place::At(Point::End(end)) if end.side == super::Side::Far);
    let edit = Edit::Join {
        from: one.0,
        to: other.0,
        ohm: TOUCH_OHM,
    };
    let is_beyond = beyond(one.1) && beyond(other.1);
    found.push(kind, vec![one.1, other.1], is_beyond, vec![edit]);
}

/// Joints of one box that touch.
fn touching(roles: &mut Roles, in_box: u32, found: &mut Found) {
    let neutrals = roles.pieces(in_box, Role::Neutral);
    let hots = roles.pieces(in_box, Role::Hot);
    let grounds = roles.pieces(in_box, Role::Ground);
    for (at, &one) in neutrals.iter().enumerate() {
        for &other in neutrals.iter().skip(at + 1) {
            touch(found, FaultKind::NeutralsJoined, one, other);
        }
        if let Some(&ground) = grounds.first() {
            touch(found, FaultKind::NeutralToGround, one, ground);
        }
    }
    for (at, &one) in hots.iter().enumerate() {
        for &other in hots.iter().skip(at + 1) {
            if roles.breakers(one.0) != roles.breakers(other.0) {
                touch(found, FaultKind::HotsJoined, one, other);
            }
        }
    }
}

/// Conductors that touch in fixtures, and those whose neutrals are another circuit's.
fn touching_beyond(roles: &mut Roles, found: &mut Found) {
    let mut ends: Vec<(End, usize, Role, usize)> = Vec::new();
    for cable in roles.ending() {
        let mut bare = None;
        let mut white = None;
        for (end, node, role) in roles.landings(cable) {
            let piece = roles
                .network
                .end(end)
                .map_or(node, |contact| roles.piece(contact));
            ends.push((end, node, role, piece));
            let at = (node, Place::At(Point::End(end)));
            match role {
                Role::Neutral => white = white.or(Some(at)),
                Role::Ground => bare = bare.or(Some(at)),
                _ => {}
            }
        }
        if let (Some(white), Some(bare)) = (white, bare) {
            touch(found, FaultKind::NeutralToGround, white, bare);
        }
    }
    for (at, &(end, node, role, piece)) in ends.iter().enumerate() {
        for (place, &(other_end, other, other_role, other_piece)) in ends.iter().enumerate() {
            if role != other_role || piece == other_piece || end.cable == other_end.cable {
                continue;
            }
            let one = (node, Place::At(Point::End(end)));
            let two = (other, Place::At(Point::End(other_end)));
            if role == Role::Neutral {
                let edits = vec![
                    Edit::Cut(Part::Landed(end)),
                    Edit::Join {
                        from: node,
                        to: other,
                        ohm: TOUCH_OHM,
                    },
                ];
                let places = vec![one.1, two.1];
                found.push(FaultKind::NeutralBorrowed, places, true, edits);
            }
            if place > at && role == Role::Neutral {
                touch(found, FaultKind::NeutralsJoined, one, two);
            }
            if place > at && role == Role::Hot && roles.breakers(node) != roles.breakers(other) {
                touch(found, FaultKind::HotsJoined, one, two);
            }
        }
    }
}

/// Neutrals of loads in another circuit's joint.
fn borrowed(roles: &mut Roles, in_box: u32, found: &mut Found) {
    let neutrals = roles.pieces(in_box, Role::Neutral);
    if neutrals.len() < 2 {
        return;
    }
    for held in roles.held.clone() {
        if held.in_box != Some(in_box) || held.role != Role::Neutral || !is_load_side(roles, &held)
        {
            continue;
        }
        let own = roles.piece(held.contact);
        for &(node, place) in &neutrals {
            if roles.piece(node) != own {
                let edit = Edit::Lead {
                    part: held.part,
                    to: node,
                };
                let places = vec![held.place, place];
                found.push(FaultKind::NeutralBorrowed, places, false, vec![edit]);
            }
        }
    }
}

/// Whether nothing leads to the neutral bar from a contact that is taken off.
pub(super) fn is_load_side(roles: &Roles, held: &Held) -> bool {
    let mut sets = roles.network.sets(&roles.network.branches, |branch| {
        branch.is_metal()
            && !matches!(
                branch.part,
                Part::Bond | Part::ServiceNeutral | Part::Supply(_) | Part::Pole { .. }
            )
    });
    // Sets can't be parted again: join all but the one.
    let kept: Vec<_> = roles
        .network
        .branches
        .iter()
        .filter(|branch| branch.part != held.part)
        .copied()
        .collect();
    if sets.find(held.contact) == sets.find(NEUTRAL_BAR) {
        sets = roles.network.sets(&kept, |branch| {
            branch.is_metal()
                && !matches!(
                    branch.part,
                    Part::Bond | Part::ServiceNeutral | Part::Supply(_) | Part::Pole { .. }
                )
        });
    }
    sets.find(held.contact) != sets.find(NEUTRAL_BAR)
}

/// Hots on other breakers than described, and cables whose way is not known on any.
fn other_breakers(roles: &Roles, found: &mut Found) {
    let network = roles.network;
    let on_poles: Vec<(Held, u32, usize)> = roles
        .held
        .iter()
        .filter_map(|held| {
            let pole = network.poles().iter().find(|(.., node)| *node == held.on)?;
            Some((*held, pole.0, pole.1))
        })
        .collect();
    for (at, &(held, breaker, _)) in on_poles.iter().enumerate() {
        for &(other, pole, node) in network.poles() {
            if other != breaker {
                let places = vec![
                    held.place,
                    Place::Pole {
                        breaker: other,
                        pole,
                    },
                ];
                let edit = Edit::Lead {
                    part: held.part,
                    to: node,
                };
                found.push(FaultKind::OtherBreaker, places, false, vec![edit]);
            }
        }
        for &(other, of, _) in on_poles.iter().skip(at + 1) {
            if of != breaker {
                let edits = crossed::exchange(&held, &other);
                found.push(
                    FaultKind::OtherBreaker,
                    vec![held.place, other.place],
                    false,
                    edits,
                );
            }
        }
    }
    for cable in &roles.description.cables {
        if cable.goes == Goes::NotKnown {
            unknown(network, cable, found);
        }
    }
}

fn unknown(network: &Network, cable: &Cable, found: &mut Found) {
    let hot = cable.conductors.iter().position(|c| c.is_hot());
    for &(breaker, pole, node) in network.poles() {
        let mut edits = Vec::new();
        for (conductor, to) in [
            (hot, node),
            (cable.first(Colour::White), NEUTRAL_BAR),
            (cable.first(Colour::Bare), GROUND_BAR),
        ] {
            let end = conductor.and_then(|c| network.end(End::far(cable.id, c)));
            if let Some(from) = end {
                edits.push(Edit::Join {
                    from,
                    to,
                    ohm: TOUCH_OHM,
                });
            }
        }
        if let Some(hot) = hot {
            let places = vec![
                Place::At(Point::End(End::far(cable.id, hot))),
                Place::Pole { breaker, pole },
            ];
            found.push(FaultKind::OtherBreaker, places, false, edits);
        }
    }
}

fn poor_joints(roles: &Roles, found: &mut Found) {
    for held in &roles.held {
        if matches!(held.role, Role::Ground | Role::Loose) || is_unused(held.part) {
            continue;
        }
        for ohm in POOR_JOINT_OHM {
            let edits = vec![Edit::Ohm(held.part, ohm)];
            let beyond = held.in_box.is_none();
            found.push(FaultKind::PoorJoint, vec![held.place], beyond, edits);
            if let Some(last) = found.all.last_mut() {
                last.ohm = Some(ohm);
            }
        }
    }
}

/// Ground screws carry nothing.
fn is_unused(part: Part) -> bool {
    use crate::wiring::open_box::description::Terminal;
    matches!(
        part,
        Part::Joined(Contact::Terminal {
            terminal: Terminal::Ground,
            ..
        })
    )
}

fn supply(description: &Description, found: &mut Found) {
    let cut = |part: Part| vec![Edit::Cut(part)];
    found.push(
        FaultKind::ServiceNeutralLost,
        vec![Place::Supply],
        false,
        cut(Part::ServiceNeutral),
    );
    if description.panel.fed != Fed::Service {
        found.push(
            FaultKind::FeederNeutralLost,
            vec![Place::Supply],
            false,
            cut(Part::FeederNeutral),
        );
    }
}
