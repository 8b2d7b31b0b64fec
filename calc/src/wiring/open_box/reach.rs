//! What hangs together when the supply and the bars of the panel are taken away.

use super::description::Hot;
use super::network::{Branch, GROUND_BAR, LEG_A, NEUTRAL_BAR, Network, Part, Value};
use super::places::Sets;
use super::situation::{Position, Situation, SwitchId};
use crate::wiring::panel::Leg;

/// Up to so many switches every setting is gone through; with more, the switches count as closed in all positions at
/// once, which can only find more.
pub const MOST_SWITCHES: usize = 8;

/// Whether a branch is neither part of the panel and its supply nor on a bar.
fn beyond_panel(branch: &Branch) -> bool {
    let supply = matches!(
        branch.part,
        Part::Supply(_)
            | Part::ServiceNeutral
            | Part::Bond
            | Part::EarthRod
            | Part::PipeBond
            | Part::Feeder(_)
            | Part::FeederNeutral
            | Part::FeederGround
            | Part::Pole { .. }
    );
    let bar = |node: usize| node == NEUTRAL_BAR || node == GROUND_BAR;
    !supply && !bar(branch.from) && !bar(branch.to) && matches!(branch.value, Value::Ohm(_))
}

/// Metal that joins two legs, or a leg and a bar, in a situation: a dead short, which no breaker would hold.
pub(super) fn short(network: &Network, closed: &[Branch]) -> Option<(Hot, Hot)> {
    let mut sets = network.sets(closed, |branch| {
        branch.is_metal()
            && !matches!(
                branch.part,
                Part::Supply(_) | Part::Feeder(_) | Part::Pole { .. }
            )
    });
    let mut hots: Vec<(usize, Hot)> = vec![
        (sets.find(NEUTRAL_BAR), Hot::NeutralBar),
        (sets.find(GROUND_BAR), Hot::GroundBar),
    ];
    for branch in closed {
        let Part::Pole { breaker, .. } = branch.part else {
            continue;
        };
        let leg = if branch.from == LEG_A { Leg::A } else { Leg::B };
        let hot = Hot::Pole { breaker, leg };
        let set = sets.find(branch.to);
        let clash = hots.iter().find(|(of, other)| {
            *of == set && !matches!(other, Hot::Pole { leg: on, .. } if *on == leg)
        });
        if let Some((_, other)) = clash {
            return Some((*other, hot));
        }
        hots.push((set, hot));
    }
    None
}

/// Sets of nodes that metal joins, away from the panel.
pub(super) fn by_metal(network: &Network, branches: &[Branch]) -> Sets {
    network.sets(branches, |branch| beyond_panel(branch) && branch.is_metal())
}

/// Sets of nodes that metal and loads join, away from the panel.
pub(super) fn by_loads(network: &Network, branches: &[Branch]) -> Sets {
    network.sets(branches, beyond_panel)
}

/// The breakers, once each in the order of their poles, that a set has a pole of.
pub(super) fn breakers(network: &Network, sets: &mut Sets, node: usize) -> Vec<u32> {
    let set = sets.find(node);
    let mut found = Vec::new();
    for &(breaker, _, pole) in network.poles() {
        if sets.find(pole) == set && !found.contains(&breaker) {
            found.push(breaker);
        }
    }
    found
}

/// The settings of switches to go through: every one, or none that is enough with more than [`MOST_SWITCHES`].
pub(super) fn settings(switches: &[SwitchId]) -> Option<Vec<Vec<(SwitchId, Position)>>> {
    if switches.len() > MOST_SWITCHES {
        return None;
    }
    let all = (0..1_u32 << switches.len()).map(|bits| {
        switches
            .iter()
            .enumerate()
            .map(|(at, switch)| {
                let two = bits >> at & 1 == 1;
                (*switch, if two { Position::Two } else { Position::One })
            })
            .collect()
    });
    Some(all.collect())
}

/// The branches that may be closed in some setting, with everything joined and every load on.
pub(super) fn closed_in(
    network: &Network,
    setting: Option<&[(SwitchId, Position)]>,
) -> Vec<Branch> {
    match setting {
        Some(setting) => network.closed(&Situation {
            switches: setting.to_vec(),
            ..Situation::default()
        }),
        None => network.branches.clone(),
    }
}
