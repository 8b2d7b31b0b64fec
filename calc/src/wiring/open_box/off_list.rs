//! Which breakers must be off before a box is opened, and what a joint would show if it were taken apart too early.

use serde::Serialize;

use super::description::{Contact, Description, DescriptionRefusal, Goes};
use super::live_map::contacts_of;
use super::network::{GROUND_BAR, Network, Scene};
use super::reach::{breakers, by_loads, by_metal, closed_in, settings};
use super::situation::{Apart, Position, Situation, SwitchId, switches};
use crate::order::Order;

/// A breaker that must be off.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Listed {
    /// The breaker.
    pub breaker: u32,
    /// Whether metal alone leads from it into the box in some setting of the switches; otherwise only through loads.
    pub by_metal: bool,
    /// Whether the description lists it; otherwise only an explanation of the readings does.
    pub described: bool,
    /// Whether it is not among those planned off.
    pub missing: bool,
}

/// What a joint would show if it were taken apart with only the planned breakers off, what stray capacitance alone
/// brings left out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JointApart {
    /// The joint.
    pub joint: u32,
    /// The most between two of its parts, volts.
    pub across_v: f64,
    /// The most from one of its parts to ground, volts.
    pub to_ground_v: f64,
}

/// What an answer rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RestsOn {
    /// A guess that this breaker feeds what the description says.
    Guess {
        /// The breaker.
        breaker: u32,
    },
    /// A cable that goes nobody knows where, into this box or one that is linked to it: anything may come back on it.
    NotKnown {
        /// The cable.
        cable: u32,
    },
}

/// What must be off before a box is opened. After switching off: prove dead.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OffList {
    /// The box.
    pub in_box: u32,
    /// The breakers, by id.
    pub breakers: Vec<Listed>,
    /// The breakers that a handle tie takes along, not listed themselves, by id.
    pub tied: Vec<u32>,
    /// What each joint of the box would show, by number.
    pub joints: Vec<JointApart>,
    /// What the list rests on besides the description.
    pub rests_on: Vec<RestsOn>,
    /// Whether every setting of the switches was gone through for the joints; otherwise those with one switch moved.
    pub every_setting: bool,
}

/// What must be off before a box is opened, and what its joints would show with only the planned breakers off.
///
/// Of the description and of every explanation of the readings that is given with it.
///
/// # Errors
/// [`OffListRefusal`]: a description that can't be answered, a box or breaker that isn't there.
pub fn off_list(
    description: &Description,
    explanations: &[Network],
    in_box: u32,
    planned_off: &[u32],
) -> Result<OffList, OffListRefusal> {
    let described = Network::of(description).map_err(OffListRefusal::Description)?;
    if !description.boxes.contains(&in_box) {
        return Err(OffListRefusal::NoBox { in_box });
    }
    for &breaker in planned_off {
        if description.breaker(breaker).is_none() {
            return Err(OffListRefusal::NoBreaker { breaker });
        }
    }
    let mut off = planned_off.to_vec();
    off.extend(taken_along(description, planned_off));
    let mut listed: Vec<Listed> = Vec::new();
    for (at, network) in std::iter::once(&described).chain(explanations).enumerate() {
        for (breaker, by_metal) in behind_box(description, network, in_box) {
            match listed.iter_mut().find(|l| l.breaker == breaker) {
                Some(there) => there.by_metal |= by_metal,
                None => listed.push(Listed {
                    breaker,
                    by_metal,
                    described: at == 0,
                    missing: !off.contains(&breaker),
                }),
            }
        }
    }
    listed.order_by_key(|listed| listed.breaker);
    let ids: Vec<u32> = listed.iter().map(|listed| listed.breaker).collect();
    let mut tied = taken_along(description, &ids);
    tied.retain(|breaker| !ids.contains(breaker));
    tied.order();
    let (settings, every_setting) = settings_to_try(description);
    let mut joints: Vec<JointApart> = Vec::new();
    for network in std::iter::once(&described).chain(explanations) {
        joints_apart(description, network, in_box, &off, &settings, &mut joints);
    }
    joints.order_by_key(|joint| joint.joint);
    let mut rests_on = Vec::new();
    for listed in &listed {
        if description
            .breaker(listed.breaker)
            .is_some_and(|b| b.guessed)
        {
            rests_on.push(RestsOn::Guess {
                breaker: listed.breaker,
            });
        }
    }
    for cable in &description.cables {
        if cable.goes == Goes::NotKnown {
            rests_on.push(RestsOn::NotKnown { cable: cable.id });
        }
    }
    Ok(OffList {
        in_box,
        breakers: listed,
        tied,
        joints,
        rests_on,
        every_setting,
    })
}

/// The breakers that lead into a box through conductors, joints, switches in any setting or loads, with whether metal
/// alone leads there; the supply and the bars taken away.
pub fn behind_box(description: &Description, network: &Network, in_box: u32) -> Vec<(u32, bool)> {
    let nodes: Vec<usize> = contacts_of(description)
        .into_iter()
        .filter(|(_, of)| *of == in_box)
        .filter_map(|(contact, _)| network.contact(contact))
        .collect();
    let mut found: Vec<(u32, bool)> = Vec::new();
    let settings = settings(&switches(description)).map_or_else(
        || vec![None],
        |all| all.into_iter().map(Some).collect::<Vec<_>>(),
    );
    for setting in &settings {
        let closed = closed_in(network, setting.as_deref());
        let (mut loads, mut metal) = (by_loads(network, &closed), by_metal(network, &closed));
        for &node in &nodes {
            let direct = breakers(network, &mut metal, node);
            for breaker in breakers(network, &mut loads, node) {
                let is_direct = direct.contains(&breaker);
                match found.iter_mut().find(|(b, _)| *b == breaker) {
                    Some((_, metal)) => *metal |= is_direct,
                    None => found.push((breaker, is_direct)),
                }
            }
        }
    }
    found
}

/// The breakers that handle ties take along.
fn taken_along(description: &Description, off: &[u32]) -> Vec<u32> {
    let mut along = Vec::new();
    for breaker in &description.breakers {
        let tied = off.iter().any(|id| {
            breaker.tied_to == Some(*id)
                || description
                    .breaker(*id)
                    .is_some_and(|b| b.tied_to == Some(breaker.id))
        });
        if tied && !off.contains(&breaker.id) {
            along.push(breaker.id);
        }
    }
    along
}

/// The settings of switches that joints are looked at in, and whether these are all.
fn settings_to_try(description: &Description) -> (Vec<Vec<(SwitchId, Position)>>, bool) {
    let switches = switches(description);
    if switches.len() <= 5
        && let Some(all) = settings(&switches)
    {
        return (all, true);
    }
    let mut some = vec![Vec::new()];
    for switch in switches {
        some.push(vec![(switch, Position::Two)]);
    }
    (some, false)
}

/// What the joints of a box show apart, each the most of what is already there and this network.
fn joints_apart(
    description: &Description,
    network: &Network,
    in_box: u32,
    off: &[u32],
    settings: &[Vec<(SwitchId, Position)>],
    joints: &mut Vec<JointApart>,
) {
    for &(_, joint, _) in network.joints().iter().filter(|(of, ..)| *of == in_box) {
        let contacts: Vec<usize> = description
            .joint(in_box, joint)
            .into_iter()
            .filter_map(|contact: Contact| network.contact(contact))
            .collect();
        let (mut across_v, mut to_ground_v) = (0.0_f64, 0.0_f64);
        for setting in settings {
            let scene = Scene::conducted(
                network,
                &Situation {
                    breakers_off: off.to_vec(),
                    apart: vec![Apart::Joint { in_box, joint }],
                    switches: setting.clone(),
                    ..Situation::default()
                },
            );
            for (at, &one) in contacts.iter().enumerate() {
                let volts = scene.solved.between(one, GROUND_BAR);
                to_ground_v = to_ground_v.max(volts.map_or(0.0, |v| v.norm()));
                for &other in contacts.iter().take(at) {
                    let volts = scene.solved.between(one, other);
                    across_v = across_v.max(volts.map_or(0.0, |v| v.norm()));
                }
            }
        }
        match joints.iter_mut().find(|j| j.joint == joint) {
            Some(there) => {
                there.across_v = there.across_v.max(across_v);
                there.to_ground_v = there.to_ground_v.max(to_ground_v);
            }
            None => joints.push(JointApart {
                joint,
                across_v,
                to_ground_v,
            }),
        }
    }
}

/// Why there is no list.
#[derive(Clone, Debug, PartialEq, Serialize, thiserror::Error)]
#[serde(rename_all = "snake_case")]
pub enum OffListRefusal {
    /// The description can't be answered.
    #[error("{0:?}")]
    Description(Vec<DescriptionRefusal>),
    /// No such box.
    #[error("no box {in_box}")]
    NoBox {
        /// What was given.
        in_box: u32,
    },
    /// No such breaker.
    #[error("no breaker {breaker}")]
    NoBreaker {
        /// What was given.
        breaker: u32,
    },
}
