//! What every permitted reading would show in a network: its signature. Two networks whose signatures agree can't be
//! told apart from here.

use super::likelihood::{Expected, View, ohms};
use super::network::{Branch, Network, Part, Scene};
use super::permitted::Permitted;
use super::reading::Probe;
use super::through::{Shortest, Through};

/// From so many standard deviations a single reading tells two networks apart.
pub const TELLS_FROM: f64 = 2.5;

/// What each permitted reading is expected to show, in the order of the list.
pub(super) fn signature(network: &Network, permitted: &[Permitted]) -> Vec<Option<Expected>> {
    let mut all = Vec::new();
    for group in permitted {
        one(network, group, &mut all);
    }
    all
}

/// Whether no permitted reading tells a network from one with that signature.
pub(super) fn is_same(
    network: &Network,
    permitted: &[Permitted],
    other: &[Option<Expected>],
) -> bool {
    let mut rest = other;
    let mut part = Vec::new();
    for group in permitted {
        part.clear();
        one(network, group, &mut part);
        if tell_apart(&part, rest) {
            return false;
        }
        rest = rest.get(part.len()..).unwrap_or_default();
    }
    true
}

fn one(network: &Network, group: &Permitted, all: &mut Vec<Option<Expected>>) {
    if group.situation.everything_off {
        off(network, group, all);
        return;
    }
    // Stray voltage tells nothing apart that something firmer doesn't: left out, a floating part may show anything.
    let mut view = View::of(network, Scene::conducted(network, &group.situation));
    for (_, probe) in &group.probes {
        all.push(view.expect(probe, true));
    }
}

fn off(network: &Network, group: &Permitted, all: &mut Vec<Option<Expected>>) {
    let closed = network.closed(&group.situation);
    let mut metal = network.sets(&closed, Branch::is_metal);
    let mut any = network.sets(&closed, |b| !matches!(b.part, Part::Stray(..)));
    let mut shortest = Shortest::of(network, &closed);
    for (_, probe) in &group.probes {
        let Probe::Ohms { from, to } = *probe else {
            all.push(None);
            continue;
        };
        let (Some(from), Some(to)) = (network.point(from), network.point(to)) else {
            all.push(None);
            continue;
        };
        let through = if metal.find(from) == metal.find(to) {
            shortest.metal(from, to)
        } else if any.find(from) == any.find(to) {
            shortest.loads(from, to)
        } else {
            Through::Open
        };
        all.push(Some(ohms(through)));
    }
}

/// Whether some permitted reading tells two signatures apart.
pub(super) fn tell_apart(one: &[Option<Expected>], other: &[Option<Expected>]) -> bool {
    one.iter().zip(other).any(|pair| match pair {
        (Some(a), Some(b)) => a.apart(b) >= TELLS_FROM,
        _ => false,
    })
}
