//! How far a current sways with what is known of the lengths: where it has two ways through metal it parts by their ohms.

use super::network::{Branch, Network, Part, Scene, Value};
use super::solve::{Complex64, Netlist, solve};

/// Amperes of each conductor: cable, conductor, from its near to its far end.
pub(super) type Amps = Vec<(u32, usize, Complex64)>;

/// Less than this in a conductor is not asked after, amperes.
const LITTLE_A: f64 = 0.02;

/// A length is tried so much longer.
const LONGER: f64 = 1.3;

/// How far a length may be off, as the logarithm of a factor: one that was given, one that was not. Source: an estimate.
const OFF_LN: (f64, f64) = (0.12, 0.5);

/// The currents in the conductors of a solved scene.
pub(super) fn amps(scene: &Scene) -> Amps {
    let mut amps = Vec::new();
    for branch in &scene.closed {
        if let Part::Conductor { cable, conductor } = branch.part {
            amps.push((cable, conductor, scene.solved.amps(&branch.link())));
        }
    }
    amps
}

/// The currents with one cable longer, for each cable that matters: how much its length is off goes with them.
pub(super) fn swayed(scene: &Scene, amps: &Amps) -> Vec<(f64, Amps)> {
    let ring = ring(scene.network, &scene.closed);
    let mut cables: Vec<u32> = Vec::new();
    for (branch, in_ring) in scene.closed.iter().zip(ring) {
        let Part::Conductor { cable, conductor } = branch.part else {
            continue;
        };
        let flows = amps
            .iter()
            .any(|(of, one, amps)| (*of, *one) == (cable, conductor) && amps.norm() > LITTLE_A);
        if in_ring && flows && !cables.contains(&cable) {
            cables.push(cable);
        }
    }
    let mut all = Vec::with_capacity(cables.len());
    for cable in cables {
        let off_ln = if scene.network.is_guessed(cable) {
            OFF_LN.1
        } else {
            OFF_LN.0
        };
        all.push((off_ln / LONGER.ln(), longer(scene, cable)));
    }
    all
}

fn longer(scene: &Scene, longer: u32) -> Amps {
    let mut closed: Vec<Branch> = Vec::with_capacity(scene.closed.len());
    for branch in &scene.closed {
        let mut branch = *branch;
        match (branch.value, branch.part) {
            (Value::Farad(_), _) => continue,
            (Value::Ohm(ohm), Part::Conductor { cable, .. }) if cable == longer => {
                branch.value = Value::Ohm(ohm * LONGER);
            }
            _ => {}
        }
        closed.push(branch);
    }
    let mut links = Vec::with_capacity(closed.len());
    for branch in &closed {
        links.push(branch.link());
    }
    let solved = solve(&Netlist {
        nodes: scene.network.nodes,
        held: scene.network.held(),
        links,
    });
    let mut amps = Vec::new();
    for branch in &closed {
        if let Part::Conductor { cable, conductor } = branch.part {
            amps.push((cable, conductor, solved.amps(&branch.link())));
        }
    }
    amps
}

/// Which branches are part of a ring of metal, or lie between two: what ends anywhere is taken away until nothing does.
fn ring(network: &Network, closed: &[Branch]) -> Vec<bool> {
    let mut kept: Vec<bool> = closed.iter().map(Branch::is_metal).collect();
    loop {
        let mut ends: Vec<u32> = vec![0; network.nodes];
        for (branch, _) in closed.iter().zip(&kept).filter(|(_, kept)| **kept) {
            for node in [branch.from, branch.to] {
                if let Some(slot) = ends.get_mut(node) {
                    *slot += 1;
                }
            }
        }
        let ends_at = |node: usize| ends.get(node).is_none_or(|count| *count < 2);
        let mut changed = false;
        for (branch, slot) in closed.iter().zip(&mut kept) {
            if *slot && (ends_at(branch.from) || ends_at(branch.to)) {
                *slot = false;
                changed = true;
            }
        }
        if !changed {
            return kept;
        }
    }
}
