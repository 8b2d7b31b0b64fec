//! What each neutral carries, as found and with what is planned, against what it may carry.

use serde::Serialize;

use super::description::{Colour, Description, End, Load};
use super::live_map::{MapRefusal, network_in};
use super::network::{Edit, NEUTRAL_BAR, Part, Scene};
use super::reach::{breakers, by_loads, by_metal};
use super::reading::Point;
use super::situation::Situation;
use crate::job::CodeEdition;
use crate::wiring::ampacity::{Conditions, Feeds, Terminals, ampacity};
use crate::wiring::conductor::{Conductor, Covering};
use crate::wiring::panel::Leg;
use crate::wiring::tables::Ambient;

/// A load that is planned between two points.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Planned {
    /// The hot point.
    pub from: Point,
    /// The neutral point.
    pub to: Point,
    /// The load.
    pub load: Load,
}

/// A neutral and its current.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NeutralLoad {
    /// The cable.
    pub cable: u32,
    /// Which conductor of it.
    pub conductor: usize,
    /// The breakers whose loads can return on it.
    pub breakers: Vec<u32>,
    /// What it carries as found, in the situation, amperes.
    pub found_a: f64,
    /// The most with every load on, those planned among them, and any leg off, amperes.
    pub planned_a: f64,
    /// What it may carry as NM cable in a room, by the 60 C column, amperes; `None`: the table has no value.
    pub ampacity_a: Option<f64>,
    /// Whether the planned current is above that.
    pub over: bool,
}

/// What each neutral carries: conductors, not bare, that metal leads to the neutral bar or that are white and on no
/// breaker.
///
/// # Errors
/// [`MapRefusal`]: a description that can't be answered, a situation that isn't there.
pub fn neutral_loads(
    description: &Description,
    situation: &Situation,
    planned: &[Planned],
    edition: CodeEdition,
) -> Result<Vec<NeutralLoad>, MapRefusal> {
    let network = network_in(description, situation)?;
    let mut edits = Vec::new();
    for planned in planned {
        match (network.point(planned.from), network.point(planned.to)) {
            (Some(from), Some(to)) => edits.push(Edit::Join {
                from,
                to,
                ohm: planned.load.ohm(),
            }),
            _ => return Err(MapRefusal::Planned(*planned)),
        }
        let Load { watts, volts, .. } = planned.load;
        if !(watts > 0.0 && watts <= 50_000.0 && (1.0..=300.0).contains(&volts)) {
            return Err(MapRefusal::Planned(*planned));
        }
    }
    let loaded = network.edited(&edits);
    let leg_off = |leg: Leg| Situation {
        breakers_off: description
            .breakers
            .iter()
            .filter(|breaker| breaker.legs == [leg])
            .map(|breaker| breaker.id)
            .collect(),
        ..all_on(situation)
    };
    let found = Scene::of(&network, situation);
    let scenes = [all_on(situation), leg_off(Leg::A), leg_off(Leg::B)]
        .map(|situation| Scene::of(&loaded, &situation));
    let mut metal = by_metal(&network, &network.branches);
    let mut loads = by_loads(&loaded, &loaded.branches);
    let mut grounded = network.sets(&network.branches, |branch| {
        branch.is_metal() && !matches!(branch.part, Part::Supply(_) | Part::Pole { .. })
    });
    let mut all = Vec::new();
    for cable in &description.cables {
        for (conductor, colour) in cable.conductors.iter().enumerate() {
            let Some(node) = network.end(End::near(cable.id, conductor)) else {
                continue;
            };
            let on_bar = grounded.find(node) == grounded.find(NEUTRAL_BAR);
            let is_neutral = *colour != Colour::Bare
                && breakers(&network, &mut metal, node).is_empty()
                && (on_bar || *colour == Colour::White);
            if !is_neutral {
                continue;
            }
            let planned_a = scenes
                .iter()
                .map(|scene| scene.conductor_amps(cable.id, conductor).norm())
                .fold(0.0, f64::max);
            let ampacity_a = may_carry_a(cable, edition);
            all.push(NeutralLoad {
                cable: cable.id,
                conductor,
                breakers: breakers(&loaded, &mut loads, node),
                found_a: found.conductor_amps(cable.id, conductor).norm(),
                planned_a,
                ampacity_a,
                over: ampacity_a.is_some_and(|most| planned_a > most),
            });
        }
    }
    Ok(all)
}

/// The situation with every breaker and load on.
fn all_on(situation: &Situation) -> Situation {
    Situation {
        everything_off: false,
        breakers_off: Vec::new(),
        loads_off: Vec::new(),
        ..situation.clone()
    }
}

/// What a conductor of the cable may carry as NM cable in a room of 30 C, amperes.
fn may_carry_a(cable: &super::description::Cable, edition: CodeEdition) -> Option<f64> {
    let insulated = cable
        .conductors
        .iter()
        .filter(|colour| **colour != Colour::Bare)
        .count();
    let conductor = Conductor {
        size: cable.size,
        metal: cable.metal,
        covering: Covering::NmB,
    };
    let conditions = Conditions {
        edition,
        ambient: Ambient::Celsius(30.0),
        carrying: u32::try_from(insulated.max(1)).ok()?,
        terminals: Terminals::NotKnown,
        feeds: Feeds::Other,
    };
    Some(ampacity(conductor, conditions).ok()?.ampacity_a)
}
