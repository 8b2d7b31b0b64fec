//! The shortest ways by ohms: near enough to the resistances to tell a poor joint from a sound one.

use super::network::Branch;

/// The ways of a network in a situation.
pub(super) struct Ways {
    /// Neighbour and ohms, by node.
    next: Vec<Vec<(usize, f64)>>,
}

impl Ways {
    /// The ways by these branches, with the ohms that each is taken for; `None`: no way.
    pub fn of(nodes: usize, closed: &[Branch], ohm_of: &dyn Fn(&Branch) -> Option<f64>) -> Self {
        let mut next: Vec<Vec<(usize, f64)>> = vec![Vec::new(); nodes];
        for branch in closed {
            let Some(ohm) = ohm_of(branch) else {
                continue;
            };
            for (one, other) in [(branch.from, branch.to), (branch.to, branch.from)] {
                if let Some(list) = next.get_mut(one) {
                    list.push((other, ohm));
                }
            }
        }
        Self { next }
    }

    /// Ohms from a node to every other; infinite where nothing leads.
    pub fn from(&self, node: usize) -> Vec<f64> {
        let mut ohms = vec![f64::INFINITY; self.next.len()];
        if let Some(slot) = ohms.get_mut(node) {
            *slot = 0.0;
        }
        let mut open = vec![node];
        let mut at = 0;
        while let Some(&here) = open.get(at) {
            at += 1;
            let so_far = ohms.get(here).copied().unwrap_or(f64::INFINITY);
            for &(there, ohm) in self.next.get(here).into_iter().flatten() {
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
