//! What it takes to let a circuit come back where it goes out.

use serde::Serialize;

use crate::wiring::conductor::Size;
use crate::wiring::open_box::description::{At, Cable, Colour, Contact, Description, End, Side};
use crate::wiring::open_box::network::{Branch, Network, Part, Scene};
use crate::wiring::open_box::reach::{breakers, by_metal};

use super::{NET_A, Owners};

/// A piece of the work, for a qualified person with everything off and proved dead.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PutRight {
    /// Neutrals of several circuits are in one joint, and each has a white of its own towards the panel: make one joint
    /// of each group.
    Split {
        /// The box.
        in_box: u32,
        /// The joint.
        joint: u32,
        /// What belongs together.
        groups: Vec<Vec<Contact>>,
    },
    /// The cable that brings the hot has a spare or lost white: these belong on it, out of the joint they are in.
    OwnWhite {
        /// The box.
        in_box: u32,
        /// The joint they are in now.
        joint: u32,
        /// The white of the cable that brings the hot.
        white: End,
        /// What belongs with it.
        with: Vec<Contact>,
    },
    /// The cable that brings the hot has no white: a cable that has one is needed in its place.
    NewCable {
        /// The box.
        in_box: u32,
        /// The joint that the return is in now.
        joint: u32,
        /// The cable to replace.
        replaces: u32,
        /// What the new one needs.
        conductors: Vec<Colour>,
        /// Its size.
        size: Size,
        /// What belongs on its white.
        with: Vec<Contact>,
    },
    /// White and bare are in one joint: take them apart.
    PartGround {
        /// The box.
        in_box: u32,
        /// The joint.
        joint: u32,
        /// The bare ones.
        bare: Vec<Contact>,
    },
    /// The hots of two circuits are one piece of metal through this joint: make a joint of each.
    PartHots {
        /// The box.
        in_box: u32,
        /// The joint.
        joint: u32,
        /// The other circuit's breaker.
        from: u32,
    },
    /// Nothing in the described boxes shows where the ways part: follow these cables to their other ends.
    Follow {
        /// The cables.
        cables: Vec<u32>,
    },
}

pub(super) fn put_right(
    description: &Description,
    network: &Network,
    scene: &Scene,
    breaker: u32,
    owners: &[Owners],
) -> Vec<PutRight> {
    let mut all = Vec::new();
    for &(in_box, joint, _) in network.joints() {
        let here = description.joint(in_box, joint);
        let carries = here
            .iter()
            .any(|contact| scene.amps(Part::Joined(*contact)).norm() > NET_A);
        if carries && !is_live(network, scene, breaker, &here) {
            all.extend(at_joint(
                description,
                network,
                scene,
                breaker,
                owners,
                (in_box, joint),
                &here,
            ));
        }
    }
    if all.is_empty() {
        let cables = description
            .cables
            .iter()
            .filter(|cable| scene.net_amps(cable.id).norm() > NET_A)
            .map(|cable| cable.id)
            .collect();
        all.push(PutRight::Follow { cables });
    }
    all
}

/// The joint without which the hots of two breakers are two.
pub(super) fn part_hots(
    network: &Network,
    scene: &Scene,
    one: u32,
    other: u32,
) -> Option<PutRight> {
    let joined = |branches: &[Branch]| {
        let mut metal = by_metal(network, branches);
        let pole = network.poles().iter().find(|(of, ..)| *of == one);
        pole.is_some_and(|(.., node)| breakers(network, &mut metal, *node).contains(&other))
    };
    if !joined(&scene.closed) {
        return None;
    }
    network.joints().iter().find_map(|&(in_box, joint, node)| {
        let without: Vec<Branch> = scene
            .closed
            .iter()
            .filter(|branch| branch.to != node)
            .copied()
            .collect();
        (!joined(&without)).then_some(PutRight::PartHots {
            in_box,
            joint,
            from: other,
        })
    })
}

/// Whether a joint is on the hot side.
fn is_live(network: &Network, scene: &Scene, breaker: u32, here: &[Contact]) -> bool {
    let mut metal = by_metal(network, &scene.closed);
    here.first()
        .and_then(|contact| network.contact(*contact))
        .is_some_and(|node| breakers(network, &mut metal, node).contains(&breaker))
}

fn at_joint(
    description: &Description,
    network: &Network,
    scene: &Scene,
    breaker: u32,
    owners: &[Owners],
    (in_box, joint): (u32, u32),
    here: &[Contact],
) -> Option<PutRight> {
    let bare: Vec<Contact> = here
        .iter()
        .filter(|contact| colour(description, **contact) == Some(Colour::Bare))
        .copied()
        .collect();
    if !bare.is_empty() {
        return (bare.len() < here.len()).then_some(PutRight::PartGround {
            in_box,
            joint,
            bare,
        });
    }
    let groups = groups(here, owners);
    let of_breaker = |contact: &Contact| {
        owner_of(owners, *contact).is_some_and(|breakers| breakers.contains(&breaker))
    };
    let mine = groups.iter().find(|group| group.iter().any(of_breaker))?;
    let feed = feed(description, network, scene, breaker, in_box)?;
    let of_feed = |contact: &Contact| matches!(contact, Contact::End(end) if end.cable == feed.id);
    if mine.iter().any(of_feed) {
        // What the circuit needs is here; others are too.
        return (groups.len() > 1).then(|| PutRight::Split {
            in_box,
            joint,
            groups: groups.clone(),
        });
    }
    let white = feed
        .conductors
        .iter()
        .enumerate()
        .filter(|(_, colour)| **colour == Colour::White)
        .filter_map(|(conductor, _)| end_in(description, feed.id, conductor, in_box))
        .find(|end| !is_live(network, scene, breaker, &[Contact::End(*end)]));
    Some(match white {
        Some(white) if description.at(Contact::End(white)) != At::Joint(joint) => {
            PutRight::OwnWhite {
                in_box,
                joint,
                white,
                with: mine.clone(),
            }
        }
        _ => PutRight::NewCable {
            in_box,
            joint,
            replaces: feed.id,
            conductors: with_white(feed),
            size: feed.size,
            with: mine.clone(),
        },
    })
}

/// The conductors of a cable with a white in place of its second hot, or added.
fn with_white(cable: &Cable) -> Vec<Colour> {
    let mut conductors: Vec<Colour> = cable
        .conductors
        .iter()
        .map(|colour| match colour {
            Colour::MarkedWhite => Colour::Red,
            other => *other,
        })
        .filter(|colour| !matches!(colour, Colour::White))
        .collect();
    conductors.insert(conductors.len().min(1), Colour::White);
    conductors
}

/// Contacts that share a circuit, in groups; those of no circuit are left out.
fn groups(here: &[Contact], owners: &[Owners]) -> Vec<Vec<Contact>> {
    let mut groups: Vec<(Vec<u32>, Vec<Contact>)> = Vec::new();
    for contact in here {
        let Some(of) = owner_of(owners, *contact) else {
            continue;
        };
        if of.is_empty() {
            continue;
        }
        let (mut breakers, mut contacts) = (of.to_vec(), vec![*contact]);
        let mut at = 0;
        while at < groups.len() {
            let shares = groups
                .get(at)
                .is_some_and(|(b, _)| b.iter().any(|one| breakers.contains(one)));
            if shares {
                let (more, mut earlier) = groups.remove(at);
                breakers.extend(more);
                earlier.append(&mut contacts);
                contacts = earlier;
            } else {
                at += 1;
            }
        }
        groups.push((breakers, contacts));
    }
    groups.into_iter().map(|(_, contacts)| contacts).collect()
}

fn owner_of(owners: &[Owners], contact: Contact) -> Option<&[u32]> {
    let Contact::End(end) = contact else {
        return None;
    };
    owners
        .iter()
        .find(|owner| owner.cable == end.cable)
        .map(|owner| owner.breakers.as_slice())
}

fn colour(description: &Description, contact: Contact) -> Option<Colour> {
    let Contact::End(end) = contact else {
        return None;
    };
    description
        .cable(end.cable)?
        .conductors
        .get(end.conductor)
        .copied()
}

/// The end of a conductor in a box.
fn end_in(description: &Description, cable: u32, conductor: usize, in_box: u32) -> Option<End> {
    [Side::Near, Side::Far]
        .into_iter()
        .map(|side| End {
            cable,
            conductor,
            side,
        })
        .find(|end| description.box_of(*end) == Some(in_box))
}

/// The cable by which a circuit's hot comes into a box: the one with the most hot current flowing in.
fn feed<'a>(
    description: &'a Description,
    network: &Network,
    scene: &Scene,
    breaker: u32,
    in_box: u32,
) -> Option<&'a Cable> {
    let mut metal = by_metal(network, &scene.closed);
    let at_pole = network
        .poles()
        .iter()
        .find(|(of, ..)| *of == breaker)
        .and_then(|(.., node)| scene.solved.volts.get(*node).copied().flatten())?;
    let mut best: Option<(&Cable, f64)> = None;
    for cable in &description.cables {
        let mut inward_w = 0.0;
        for conductor in 0..cable.conductors.len() {
            let Some(end) = end_in(description, cable.id, conductor, in_box) else {
                continue;
            };
            let live = network
                .end(end)
                .is_some_and(|node| breakers(network, &mut metal, node).contains(&breaker));
            if live {
                let amps = scene.conductor_amps(cable.id, conductor);
                let inward = if end.side == Side::Near { -amps } else { amps };
                // In phase with the pole: power that comes in, whichever leg it is.
                inward_w += (inward * at_pole.conj()).re;
            }
        }
        if inward_w > 0.0 && best.is_none_or(|(_, most)| inward_w > most) {
            best = Some((cable, inward_w));
        }
    }
    best.map(|(cable, _)| cable)
}
