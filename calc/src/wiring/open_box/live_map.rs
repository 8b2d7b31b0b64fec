//! What stands behind each contact in the boxes.

use serde::Serialize;

use super::description::{Contact, Description, DescriptionRefusal, Hot, Terminal};
use super::network::{GROUND_BAR, NEUTRAL_BAR, Network, Part, Scene};
use super::reach::{breakers, by_loads, by_metal, short};
use super::reading::{HIGH_IMPEDANCE_OHM, LOW_IMPEDANCE_OHM};
use super::situation::{Situation, SituationRefusal};
use crate::wiring::shock::{Effect, effect_of};

/// The body that a current is given for, ohms. Source: between the 1000 ohm of IEEE Std 80 and the median of dry skin
/// at 125 V in IEC 479-1; an estimate for a population, never a limit for a person.
pub const BODY_OHM: f64 = 1500.0;

/// From this a contact counts as having a voltage of its own, volts to ground.
pub const LEAST_V: f64 = 1.0;

/// From this metal that leads to a bar counts as live all the same, volts to ground: more than a sound neutral drops.
pub const LIFTED_V: f64 = 10.0;

/// What stands behind a contact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Behind {
    /// A closed breaker, through metal alone.
    Live,
    /// A closed breaker, through a load: it lights no lamp, and it kills.
    ThroughLoad,
    /// Stray capacitance alone: a high-impedance meter shows a voltage, a low-impedance one does not.
    Induced,
    /// Nothing.
    Floating,
    /// The neutral or ground bar, with little voltage.
    AtGround,
}

/// A contact and what stands behind it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LiveContact {
    /// The contact.
    pub contact: Contact,
    /// Its box.
    pub in_box: u32,
    /// What stands behind it.
    pub behind: Behind,
    /// The breakers that are behind it, through metal or a load.
    pub breakers: Vec<u32>,
    /// Volts to the ground bar with nothing on it; `None`: nothing decides it, it floats.
    pub to_ground_v: Option<f64>,
    /// What a high-impedance meter shows from it to the ground bar, volts.
    pub high_impedance_v: f64,
    /// What a low-impedance meter shows, volts.
    pub low_impedance_v: f64,
    /// The steady current through [`BODY_OHM`] from it to ground, milliamperes.
    pub body_ma: f64,
    /// The highest published threshold that this reaches.
    pub effect: Effect,
}

/// The boxes in a situation.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LiveMap {
    /// Every contact in a described box, ends by cable and then terminals by device.
    pub contacts: Vec<LiveContact>,
}

/// What stands behind each contact in a situation.
///
/// # Errors
/// [`MapRefusal`]: a description that can't be answered, a situation that isn't there.
pub fn live_map(description: &Description, situation: &Situation) -> Result<LiveMap, MapRefusal> {
    let network = network_in(description, situation)?;
    Ok(live_map_of(description, &network, situation))
}

/// The network of a description, checked for a situation.
pub(super) fn network_in(
    description: &Description,
    situation: &Situation,
) -> Result<Network, MapRefusal> {
    let network = Network::of(description).map_err(MapRefusal::Description)?;
    situation
        .check(description)
        .map_err(MapRefusal::Situation)?;
    match short(&network, &network.closed(situation)) {
        Some((one, other)) => Err(MapRefusal::Short { one, other }),
        None => Ok(network),
    }
}

/// What stands behind each contact in a situation, of a network that was edited after it was built.
pub fn live_map_of(description: &Description, network: &Network, situation: &Situation) -> LiveMap {
    let scene = Scene::of(network, situation);
    let mut metal = by_metal(network, &scene.closed);
    let mut loads = by_loads(network, &scene.closed);
    // To the bars, by metal: neutral and ground are one set through the bond.
    let mut grounded = network.sets(&scene.closed, |branch| {
        branch.is_metal() && !matches!(branch.part, Part::Supply(_) | Part::Pole { .. })
    });
    let mut tied = network.sets(&scene.closed, |branch| {
        !matches!(
            branch.part,
            Part::Supply(_) | Part::Pole { .. } | Part::Stray(..)
        )
    });
    let on = |breaker: u32| !situation.everything_off && !situation.breakers_off.contains(&breaker);
    let mut contacts = Vec::new();
    for (contact, in_box) in contacts_of(description) {
        let Some(node) = network.contact(contact) else {
            continue;
        };
        let direct: Vec<u32> = breakers(network, &mut metal, node)
            .into_iter()
            .filter(|breaker| on(*breaker))
            .collect();
        let through: Vec<u32> = breakers(network, &mut loads, node)
            .into_iter()
            .filter(|breaker| on(*breaker))
            .collect();
        let bars = |sets: &mut super::places::Sets| {
            let set = sets.find(node);
            [NEUTRAL_BAR, GROUND_BAR]
                .into_iter()
                .any(|bar| sets.find(bar) == set)
        };
        let (by_metal, by_load) = (bars(&mut grounded), bars(&mut tied));
        let volts = scene.to_ground(node).map(|volts| volts.norm());
        let reads = |ohm: f64| scene.across(node, GROUND_BAR, ohm).unwrap_or(0.0);
        let high_impedance_v = reads(HIGH_IMPEDANCE_OHM);
        let decided = volts.unwrap_or(0.0);
        let behind = if !direct.is_empty() {
            Behind::Live
        } else if !through.is_empty() && decided >= if by_metal { LIFTED_V } else { LEAST_V } {
            Behind::ThroughLoad
        } else if by_metal || by_load {
            Behind::AtGround
        } else if high_impedance_v >= LEAST_V {
            Behind::Induced
        } else {
            Behind::Floating
        };
        let body_ma = reads(BODY_OHM) / BODY_OHM * 1000.0;
        contacts.push(LiveContact {
            contact,
            in_box,
            behind,
            breakers: if direct.is_empty() { through } else { direct },
            to_ground_v: if behind == Behind::Floating {
                None
            } else {
                volts
            },
            high_impedance_v,
            low_impedance_v: reads(LOW_IMPEDANCE_OHM),
            body_ma,
            effect: effect_of(body_ma),
        });
    }
    LiveMap { contacts }
}

/// Every contact in a described box, with its box: ends by cable, then terminals by device; of ground screws those that
/// something is on.
pub fn contacts_of(description: &Description) -> Vec<(Contact, u32)> {
    let mut all = Vec::new();
    let mut push = |contact: Contact| {
        if let Some(in_box) = description.box_of_contact(contact) {
            all.push((contact, in_box));
        }
    };
    for cable in &description.cables {
        for conductor in 0..cable.conductors.len() {
            let near = super::description::End::near(cable.id, conductor);
            push(Contact::End(near));
            push(Contact::End(near.other()));
        }
    }
    for device in &description.devices {
        for terminal in device.kind.terminals() {
            push(Contact::Terminal {
                device: device.id,
                terminal: *terminal,
            });
        }
        let ground = Contact::Terminal {
            device: device.id,
            terminal: Terminal::Ground,
        };
        let used = description.made.iter().any(|made| {
            made.contact == ground
                || matches!(made.at, super::description::At::Terminal { device: on, terminal: Terminal::Ground } if on == device.id)
        });
        if used {
            push(ground);
        }
    }
    all
}

/// Why there is no answer for a situation.
#[derive(Clone, Debug, PartialEq, Serialize, thiserror::Error)]
#[serde(rename_all = "snake_case")]
pub enum MapRefusal {
    /// The description can't be answered.
    #[error("{0:?}")]
    Description(Vec<DescriptionRefusal>),
    /// The situation names something that isn't there.
    #[error(transparent)]
    Situation(SituationRefusal),
    /// In this situation metal joins two legs, or a leg and a bar: a dead short, which no breaker would hold.
    #[error("short of {one:?} and {other:?}")]
    Short {
        /// One.
        one: Hot,
        /// The other.
        other: Hot,
    },
    /// A planned load between points that aren't there, or with watts or volts that are none.
    #[error("{0:?}")]
    Planned(super::neutral_load::Planned),
}
