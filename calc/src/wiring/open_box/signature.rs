//! What every permitted reading would show in a network: its signature. Two networks whose signatures agree can't be
//! told apart from here.

use super::likelihood::{Expected, View, ohms};
use super::network::{Network, Scene};
use super::permitted::Permitted;
use super::reading::Probe;
use super::ways::Ways;

/// From so many standard deviations a single reading tells two networks apart.
pub const TELLS_FROM: f64 = 2.5;

/// What each permitted reading is expected to show, in the order of the list.
pub(super) fn signature(network: &Network, permitted: &[Permitted]) -> Vec<Option<Expected>> {
    let mut all = Vec::new();
    for group in permitted {
        if group.situation.everything_off {
            off(network, group, &mut all);
        } else {
            let mut view = View::of(network, Scene::of(network, &group.situation));
            for (_, probe) in &group.probes {
                all.push(view.expect(probe, true));
            }
        }
    }
    all
}

fn off(network: &Network, group: &Permitted, all: &mut Vec<Option<Expected>>) {
    let ways = Ways::of(network.nodes, &network.closed(&group.situation));
    let mut known: Vec<(usize, Vec<f64>, Vec<f64>)> = Vec::new();
    for (_, probe) in &group.probes {
        let Probe::Ohms { from, to } = *probe else {
            all.push(None);
            continue;
        };
        let (Some(from), Some(to)) = (network.point(from), network.point(to)) else {
            all.push(None);
            continue;
        };
        let at = known.iter().position(|(node, ..)| *node == from);
        let at = at.unwrap_or_else(|| {
            let (metal, any) = ways.from(from);
            known.push((from, metal, any));
            known.len() - 1
        });
        let expected = known.get(at).and_then(|(_, metal, any)| {
            let finite = |list: &Vec<f64>| list.get(to).copied().filter(|ohm| ohm.is_finite());
            Some(match (finite(metal), finite(any)) {
                (Some(ohm), _) => ohms(Some(ohm), true),
                (None, Some(ohm)) => ohms(Some(ohm), false),
                (None, None) => ohms(None, false),
            })
        });
        all.push(expected);
    }
}

/// Whether some permitted reading tells two signatures apart.
pub(super) fn tell_apart(one: &[Option<Expected>], other: &[Option<Expected>]) -> bool {
    one.iter().zip(other).any(|pair| match pair {
        (Some(a), Some(b)) => a.apart(b) >= TELLS_FROM,
        _ => false,
    })
}
