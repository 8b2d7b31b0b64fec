//! Whether every cable carries as much current back as out, and what it would take where one doesn't.

use serde::Serialize;

use super::description::{Colour, Contact, Description, End, Side};
use super::live_map::{MapRefusal, network_in};
use super::network::{Network, Scene};
use super::reach::{breakers, by_metal};
use super::situation::Situation;
use crate::job::CodeEdition;
use crate::wiring::code::Rule;

mod put_right;

pub use put_right::PutRight;

/// A net current above this share of a cable's load is named, if it is above [`NET_A`] too.
pub const NET_SHARE: f64 = 0.02;

/// A net current above this is named, amperes. Source: what a clamp in common use tells from nothing.
pub const NET_A: f64 = 0.05;

/// The net current of a cable.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CableNet {
    /// The cable.
    pub cable: u32,
    /// What a clamp round all of it shows, amperes.
    pub net_a: f64,
    /// The most in one of its conductors, amperes.
    pub load_a: f64,
    /// Whether the net current is to be named.
    pub named: bool,
}

/// A share of a circuit's current in a cable.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Share {
    /// The cable.
    pub cable: u32,
    /// Net amperes with this circuit alone on.
    pub net_a: f64,
}

/// A circuit whose current doesn't come back where it goes out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Astray {
    /// The breaker.
    pub breaker: u32,
    /// The breaker that it is astray only together with: their hots are joined, or a load lies between them.
    pub with: Option<u32>,
    /// Cables that it goes out in, with less coming back.
    pub out: Vec<Share>,
    /// Cables that it comes back in, with less going out.
    pub back: Vec<Share>,
    /// The most that a bare conductor carries of it, amperes.
    pub bare_a: f64,
    /// Other breakers whose circuits share a neutral with it.
    pub shares_with: Vec<u32>,
    /// The sections that this breaks.
    pub sections: Vec<&'static str>,
    /// What it would take.
    pub put_right: Vec<PutRight>,
}

/// The cables and circuits of a description in a situation.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReturnCheck {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// Every cable, by its place in the description.
    pub cables: Vec<CableNet>,
    /// Every circuit astray, by its place in the description; each as it would be alone, so that two which hide each
    /// other's net current are found as well.
    pub astray: Vec<Astray>,
}

/// Checks every cable and circuit in a situation.
///
/// # Errors
/// [`MapRefusal`]: a description that can't be answered, a situation that isn't there.
pub fn return_check(
    description: &Description,
    situation: &Situation,
    edition: CodeEdition,
) -> Result<ReturnCheck, MapRefusal> {
    let network = network_in(description, situation)?;
    Ok(return_check_of(description, &network, situation, edition))
}

/// Checks every cable and circuit of a network that was edited after it was built.
pub fn return_check_of(
    description: &Description,
    network: &Network,
    situation: &Situation,
    edition: CodeEdition,
) -> ReturnCheck {
    let all = Scene::of(network, situation);
    let cables: Vec<CableNet> = description
        .cables
        .iter()
        .map(|cable| cable_net(&all, cable.id, cable.conductors.len()))
        .collect();
    let on: Vec<u32> = description
        .breakers
        .iter()
        .map(|breaker| breaker.id)
        .filter(|id| !situation.everything_off && !situation.breakers_off.contains(id))
        .collect();
    let mut astray = Vec::new();
    for &breaker in &on {
        let one = alone(description, situation, &[breaker]);
        let scene = Scene::of(network, &one);
        astray.extend(circuit(
            description,
            network,
            &scene,
            (breaker, None),
            edition,
        ));
    }
    // What no circuit does alone, two may do together.
    let is_astray = |astray: &[Astray], breaker: u32| astray.iter().any(|a| a.breaker == breaker);
    let alone_astray = astray.clone();
    if cables.iter().any(|cable| cable.named) {
        for (at, &one) in on.iter().enumerate() {
            for &other in on.iter().skip(at + 1) {
                if is_astray(&alone_astray, one) || is_astray(&alone_astray, other) {
                    continue;
                }
                let both = alone(description, situation, &[one, other]);
                let scene = Scene::of(network, &both);
                astray.extend(circuit(
                    description,
                    network,
                    &scene,
                    (one, Some(other)),
                    edition,
                ));
            }
        }
    }
    ReturnCheck {
        edition,
        cables,
        astray,
    }
}

/// The situation with every other breaker off.
fn alone(description: &Description, situation: &Situation, on: &[u32]) -> Situation {
    Situation {
        breakers_off: description
            .breakers
            .iter()
            .map(|b| b.id)
            .filter(|id| !on.contains(id))
            .collect(),
        ..situation.clone()
    }
}

fn cable_net(scene: &Scene, cable: u32, conductors: usize) -> CableNet {
    let net_a = scene.net_amps(cable).norm();
    let load_a = (0..conductors)
        .map(|conductor| scene.conductor_amps(cable, conductor).norm())
        .fold(0.0, f64::max);
    CableNet {
        cable,
        net_a,
        load_a,
        named: net_a > NET_A && net_a > NET_SHARE * load_a,
    }
}

/// What one circuit does, alone or with another.
fn circuit(
    description: &Description,
    network: &Network,
    scene: &Scene,
    (breaker, with): (u32, Option<u32>),
    edition: CodeEdition,
) -> Option<Astray> {
    let mut metal = by_metal(network, &scene.closed);
    let (mut out, mut back, mut bare_a) = (Vec::new(), Vec::new(), 0.0_f64);
    for cable in &description.cables {
        let (mut live_a, mut other_a) = (0.0, 0.0);
        for (conductor, colour) in cable.conductors.iter().enumerate() {
            let amps = scene.conductor_amps(cable.id, conductor).norm();
            if *colour == Colour::Bare {
                bare_a = bare_a.max(amps);
            }
            let live = network
                .end(End::near(cable.id, conductor))
                .is_some_and(|node| breakers(network, &mut metal, node).contains(&breaker));
            if live {
                live_a += amps;
            } else {
                other_a += amps;
            }
        }
        let net = cable_net(scene, cable.id, cable.conductors.len());
        if net.named {
            let share = Share {
                cable: cable.id,
                net_a: net.net_a,
            };
            if live_a >= other_a {
                out.push(share);
            } else {
                back.push(share);
            }
        }
    }
    if out.is_empty() && back.is_empty() && bare_a <= NET_A {
        return None;
    }
    let owners = owners(description, network);
    let mut shares_with = Vec::new();
    let backs = back.iter().map(|share| share.cable);
    for cable in backs.filter(|_| with.is_none()) {
        for owner in owners.iter().filter(|o| o.cable == cable) {
            for &other in owner.breakers.iter().filter(|b| **b != breaker) {
                if !shares_with.contains(&other) {
                    shares_with.push(other);
                }
            }
        }
    }
    let mut rules = Vec::new();
    if !out.is_empty() || !back.is_empty() {
        rules.push(Rule::RunTogether);
    }
    if !shares_with.is_empty() {
        rules.push(Rule::OneNeutral);
    }
    if shares_with
        .iter()
        .any(|other| opposite_and_apart(description, breaker, *other))
    {
        rules.push(Rule::MultiwireDisconnect);
    }
    if with.is_some_and(|other| on_opposite_legs(description, breaker, other)) {
        rules.push(Rule::MultiwireLoads);
    }
    if bare_a > NET_A {
        rules.push(Rule::NeutralBond);
    }
    let mut put_right: Vec<PutRight> = description
        .breakers
        .iter()
        .filter(|other| other.id != breaker)
        .filter_map(|other| put_right::part_hots(network, scene, breaker, other.id))
        .collect();
    if put_right.is_empty() {
        put_right = put_right::put_right(description, network, scene, breaker, &owners);
    }
    Some(Astray {
        breaker,
        with,
        out,
        back,
        bare_a,
        shares_with,
        sections: rules.iter().map(|rule| rule.section(edition)).collect(),
        put_right,
    })
}

/// Whether two breakers stand on opposite legs.
fn on_opposite_legs(description: &Description, one: u32, other: u32) -> bool {
    match (description.breaker(one), description.breaker(other)) {
        (Some(a), Some(b)) => a.legs.iter().any(|leg| b.legs.contains(&leg.other())),
        _ => false,
    }
}

/// Whether two breakers stand on opposite legs and no one action opens both.
fn opposite_and_apart(description: &Description, one: u32, other: u32) -> bool {
    let tied = |a: u32, b: u32| {
        description
            .breaker(a)
            .is_some_and(|breaker| breaker.tied_to == Some(b))
    };
    on_opposite_legs(description, one, other) && !tied(one, other) && !tied(other, one)
}

/// The breakers whose hots lie in a cable.
pub(super) struct Owners {
    /// The cable.
    pub cable: u32,
    /// The breakers, with any switch closed in any position.
    pub breakers: Vec<u32>,
}

/// For each cable the breakers whose hots lie in it.
fn owners(description: &Description, network: &Network) -> Vec<Owners> {
    let mut metal = by_metal(network, &network.branches);
    description
        .cables
        .iter()
        .map(|cable| {
            let mut found = Vec::new();
            for conductor in 0..cable.conductors.len() {
                for side in [Side::Near, Side::Far] {
                    let end = End {
                        cable: cable.id,
                        conductor,
                        side,
                    };
                    let Some(node) = network.contact(Contact::End(end)) else {
                        continue;
                    };
                    for breaker in breakers(network, &mut metal, node) {
                        if !found.contains(&breaker) {
                            found.push(breaker);
                        }
                    }
                }
            }
            Owners {
                cable: cable.id,
                breakers: found,
            }
        })
        .collect()
}
