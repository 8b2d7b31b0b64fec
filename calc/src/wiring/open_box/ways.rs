//! The shortest ways of a network by ohms: near enough to its resistances to tell metal, load and open apart.

use super::network::{Branch, Part, Value};

/// The ways of a network in a situation.
pub(super) struct Ways {
    /// Neighbour, ohms, whether by metal; by node.
    next: Vec<Vec<(usize, f64, bool)>>,
}

impl Ways {
    /// The ways by these branches.
    pub fn of(nodes: usize, closed: &[Branch]) -> Self {
        let mut next: Vec<Vec<(usize, f64, bool)>> = vec![Vec::new(); nodes];
        for branch in closed {
            let (Value::Ohm(ohm), false) = (branch.value, matches!(branch.part, Part::Stray(..)))
            else {
                continue;
            };
            let metal = branch.is_metal();
            for (one, other) in [(branch.from, branch.to), (branch.to, branch.from)] {
                if let Some(list) = next.get_mut(one) {
                    list.push((other, ohm, metal));
                }
            }
        }
        Self { next }
    }

    /// Ohms from a node to every other, by metal and by anything; infinite where no way leads.
    pub fn from(&self, node: usize) -> (Vec<f64>, Vec<f64>) {
        (self.shortest(node, true), self.shortest(node, false))
    }

    fn shortest(&self, node: usize, by_metal: bool) -> Vec<f64> {
        let mut ohms = vec![f64::INFINITY; self.next.len()];
        if let Some(slot) = ohms.get_mut(node) {
            *slot = 0.0;
        }
        let mut open = vec![node];
        let mut at = 0;
        while let Some(&here) = open.get(at) {
            at += 1;
            let so_far = ohms.get(here).copied().unwrap_or(f64::INFINITY);
            for &(there, ohm, metal) in self.next.get(here).into_iter().flatten() {
                if by_metal && !metal {
                    continue;
                }
                if let Some(slot) = ohms.get_mut(there)
                    && so_far + ohm < *slot - 1e-12
                {
                    *slot = so_far + ohm;
                    open.push(there);
                }
            }
        }
        ohms
    }
}
