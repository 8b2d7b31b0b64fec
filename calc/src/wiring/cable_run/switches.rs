//! Which cable goes where between power, switches and light.
//!
//! The switches stand in a chain. All conductors of the circuit run together (300.3(B)), the switch is in the hot
//! (404.2(A)), and each switch location that needs it has a neutral (404.2(C)).

use crate::order::Order;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;

use super::super::code::Rule;

/// Where the power comes in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PowerAt {
    /// The first switch of the chain.
    #[default]
    FirstSwitch,
    /// The light.
    Light,
}

/// Where the light is connected.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LightAt {
    /// To the last switch of the chain.
    #[default]
    LastSwitch,
    /// To the first switch of the chain.
    FirstSwitch,
}

/// Whether 404.2(C) asks for a neutral at the switches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NeutralNeed {
    /// At every switch.
    #[default]
    Every,
    /// At one: several switches see the whole of the room that is lit.
    One,
    /// At none: another exception holds, or no such room.
    None,
}

/// A light and its switches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Switching {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// Switches in the chain: 1 single-pole; 2 three-way; more, four-way between two three-way.
    pub switches: u32,
    /// Where the power comes in.
    pub power: PowerAt,
    /// Where the light is connected; with the power at the light the chain starts there.
    pub light: LightAt,
    /// Whether a neutral is needed at the switches.
    pub neutral: NeutralNeed,
}

/// What a conductor is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// The hot that is always on.
    Hot,
    /// The hot that the switches turn on and off.
    SwitchedHot,
    /// The neutral that the light returns on.
    Neutral,
    /// A neutral that ends at a switch, for 404.2(C).
    NeutralForSwitch,
    /// The two travellers.
    Travellers,
}

impl Role {
    /// How many conductors it takes.
    pub const fn conductors(self) -> u32 {
        if matches!(self, Self::Travellers) {
            2
        } else {
            1
        }
    }
}

/// One end of a cable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SwitchSpot {
    /// Where the circuit comes from.
    Supply,
    /// A switch, from 1.
    Switch(u32),
    /// The light.
    Light,
}

/// A cable of the plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SwitchCable {
    /// From.
    pub from: SwitchSpot,
    /// To.
    pub to: SwitchSpot,
    /// What its conductors are for.
    pub roles: Vec<Role>,
    /// Insulated conductors that are needed, the ground apart.
    pub conductors: u32,
}

/// What to mind about a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SwitchFinding {
    /// A cable of four insulated conductors is needed: three-wire cable won't do.
    FourConductors {
        /// The cable, from 0.
        cable: usize,
        /// The section that asks for the neutral.
        section: &'static str,
    },
    /// No neutral at a switch: it rests on an exception.
    NoNeutralAt {
        /// The switch, from 1.
        switch: u32,
        /// The section.
        section: &'static str,
    },
}

/// The cables for a light and its switches.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SwitchPlan {
    /// The edition.
    pub edition: CodeEdition,
    /// The cables, from the supply outwards.
    pub cables: Vec<SwitchCable>,
    /// What to mind.
    pub findings: Vec<SwitchFinding>,
    /// The section that has all conductors run together.
    pub together_section: &'static str,
}

/// The most switches in a chain.
pub const MOST_SWITCHES: u32 = 20;

/// Which cables a light and its switches need.
///
/// # Errors
/// [`SwitchRefusal`]: no switch, or more than [`MOST_SWITCHES`].
///
/// # Example
/// Power at the first of two three-way switches, light at the second: three-wire between them, with the neutral.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::cable_run::{LightAt, NeutralNeed, PowerAt, Role, Switching, switch_cables};
/// let plan = switch_cables(Switching {
///     edition: CodeEdition::E2023,
///     switches: 2,
///     power: PowerAt::FirstSwitch,
///     light: LightAt::LastSwitch,
///     neutral: NeutralNeed::Every,
/// }).unwrap();
/// let wires: Vec<u32> = plan.cables.iter().map(|cable| cable.conductors).collect();
/// assert_eq!(wires, [2, 3, 2]);
/// assert_eq!(plan.cables[1].roles, [Role::Neutral, Role::Travellers]);
/// ```
pub fn switch_cables(switching: Switching) -> Result<SwitchPlan, SwitchRefusal> {
    let Switching {
        edition,
        switches,
        power,
        light,
        neutral,
    } = switching;
    if !(1..=MOST_SWITCHES).contains(&switches) {
        return Err(SwitchRefusal::Switches { switches });
    }
    // With the power at the light the chain is a dead end, and its switched hot comes back to the light.
    let dead_end = power == PowerAt::Light || light == LightAt::FirstSwitch;
    let last = SwitchSpot::Switch(switches);
    let mut cables = Vec::new();
    let mut add = |from, to, mut roles: Vec<Role>| {
        roles.order();
        let conductors = roles.iter().map(|role| role.conductors()).sum();
        cables.push(SwitchCable {
            from,
            to,
            roles,
            conductors,
        });
    };
    let first = SwitchSpot::Switch(1);
    let start = match power {
        PowerAt::FirstSwitch => first,
        PowerAt::Light => SwitchSpot::Light,
    };
    add(SwitchSpot::Supply, start, vec![Role::Hot, Role::Neutral]);
    let mut has_neutral = vec![false; switches as usize + 1];
    let mut mark = |switch: u32| {
        if let Some(has) = has_neutral.get_mut(switch as usize) {
            *has = true;
        }
    };
    if power == PowerAt::Light {
        let mut roles = vec![Role::Hot, Role::SwitchedHot];
        if neutral != NeutralNeed::None {
            roles.push(Role::NeutralForSwitch);
            mark(1);
        }
        add(SwitchSpot::Light, first, roles);
    } else {
        mark(1);
    }
    for switch in 1..switches {
        let mut roles = vec![Role::Travellers];
        if dead_end {
            // The far three-way's common: its hot on the way out or the switched hot on the way back.
            roles.push(Role::SwitchedHot);
            if neutral == NeutralNeed::Every {
                roles.push(Role::NeutralForSwitch);
                mark(switch + 1);
            }
        } else {
            roles.push(Role::Neutral);
            mark(switch + 1);
        }
        add(
            SwitchSpot::Switch(switch),
            SwitchSpot::Switch(switch + 1),
            roles,
        );
    }
    if power == PowerAt::FirstSwitch {
        let from = match light {
            LightAt::LastSwitch => last,
            LightAt::FirstSwitch => first,
        };
        add(
            from,
            SwitchSpot::Light,
            vec![Role::SwitchedHot, Role::Neutral],
        );
    }
    let section = Rule::SwitchNeutral.section(edition);
    let mut findings: Vec<SwitchFinding> = cables
        .iter()
        .enumerate()
        .filter(|(_, cable)| cable.conductors > 3)
        .map(|(cable, _)| SwitchFinding::FourConductors { cable, section })
        .collect();
    findings.extend(
        (1..=switches)
            .filter(|switch| has_neutral.get(*switch as usize) == Some(&false))
            .map(|switch| SwitchFinding::NoNeutralAt { switch, section }),
    );
    Ok(SwitchPlan {
        edition,
        cables,
        findings,
        together_section: Rule::RunTogether.section(edition),
    })
}

/// Why there is no plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum SwitchRefusal {
    /// No switch, or more than [`MOST_SWITCHES`].
    #[error("{switches} switches")]
    Switches {
        /// What was given.
        switches: u32,
    },
}
