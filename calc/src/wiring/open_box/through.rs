//! What a meter in ohms finds between two points: metal, loads, or nothing.

use super::network::{Branch, Network, Part, Value};
use super::ohms::cold_share;
use super::solve::{Link, resistance_between};
use super::ways::Ways;

/// What is between two points with everything off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Through {
    /// Metal, ohms.
    Metal(f64),
    /// Loads: at the least and at the most so many ohms, by what each may show when cold.
    Loads(f64, f64),
    /// Nothing.
    Open,
}

/// The ohms of a branch with its load, if it is one, at the least or at the most; stray capacitance has none.
fn cold(network: &Network, branch: &Branch, most: bool) -> Option<f64> {
    match (branch.value, branch.part) {
        (Value::Farad(_), _) => None,
        (Value::Ohm(ohm), Part::Load(load)) => {
            let (low, high) = cold_share(network.load_kind(load));
            Some(ohm * if most { high } else { low })
        }
        (Value::Ohm(ohm), _) => Some(ohm),
    }
}

/// The ohms between two nodes through loads, by all ways together.
pub(super) fn loads(network: &Network, closed: &[Branch], from: usize, to: usize) -> Through {
    let bound = |most: bool| {
        let mut links = Vec::with_capacity(closed.len());
        for branch in closed {
            if let Some(ohm) = cold(network, branch, most) {
                links.push(Link::resistance(branch.from, branch.to, ohm));
            }
        }
        resistance_between(network.nodes, &links, from, to)
    };
    match (bound(false), bound(true)) {
        (Some(low), Some(high)) => Through::Loads(low, high),
        _ => Through::Open,
    }
}

/// Ohms by the shortest way, from points that are asked for again and again.
pub(super) struct Shortest<'a> {
    network: &'a Network,
    closed: &'a [Branch],
    /// By metal; through loads at the least; at the most.
    ways: [Option<Ways>; 3],
    known: [Vec<(usize, Vec<f64>)>; 3],
}

impl<'a> Shortest<'a> {
    pub fn of(network: &'a Network, closed: &'a [Branch]) -> Self {
        Self {
            network,
            closed,
            ways: [None, None, None],
            known: [Vec::new(), Vec::new(), Vec::new()],
        }
    }

    /// Ohms between two nodes joined by metal.
    pub fn metal(&mut self, from: usize, to: usize) -> Through {
        self.by(0, from, to).map_or(Through::Open, Through::Metal)
    }

    /// Between two nodes joined by loads.
    pub fn loads(&mut self, from: usize, to: usize) -> Through {
        match (self.by(1, from, to), self.by(2, from, to)) {
            (Some(low), Some(high)) => Through::Loads(low, high),
            _ => Through::Open,
        }
    }

    fn by(&mut self, how: usize, from: usize, to: usize) -> Option<f64> {
        let (network, closed) = (self.network, self.closed);
        let known = self.known.get_mut(how)?;
        // From the second point: it is the one that many share.
        if !known.iter().any(|(node, _)| *node == to) {
            let ways = self.ways.get_mut(how)?.get_or_insert_with(|| {
                Ways::of(network.nodes, closed, &|branch| match how {
                    0 if !branch.is_metal() => None,
                    _ => cold(network, branch, how == 2),
                })
            });
            known.push((to, ways.from(to)));
        }
        let (_, list) = known.iter().find(|(node, _)| *node == to)?;
        list.get(from).copied().filter(|ohm| ohm.is_finite())
    }
}
