//! How well each fault, and each plausible pair of them, explains the readings.

use crate::order::Order;
use crate::wiring::open_box::faults::{Fault, FaultKind, SECOND_FAULT};
use crate::wiring::open_box::likelihood::{View, weigh};
use crate::wiring::open_box::network::{Edit, Network, Scene};
use crate::wiring::open_box::reading::{Probe, Reading};
use crate::wiring::open_box::situation::Situation;

/// Of so many of the best single faults pairs are tried.
const PAIRED: usize = 12;

/// An explanation with what became of each reading.
#[derive(Clone, Debug)]
pub(super) struct Scored {
    /// One fault, or two.
    pub faults: Vec<Fault>,
    /// The logarithm of likelihood times weight.
    pub score: f64,
    /// For each reading the logarithm of its likelihood, and whether it is explained.
    pub readings: Vec<(f64, bool)>,
}

/// Every explanation, the best first.
pub(super) fn scored(network: &Network, singles: &[Fault], readings: &[Reading]) -> Vec<Scored> {
    let situations = by_situation(readings);
    let mut all: Vec<Scored> = Vec::with_capacity(singles.len() + PAIRED * PAIRED / 2);
    for fault in singles {
        let weighed = weigh_all(network, &fault.edits, &situations, readings);
        all.push(Scored {
            score: total(fault.weight, &weighed),
            faults: vec![fault.clone()],
            readings: weighed,
        });
    }
    order(&mut all);
    let best: Vec<Scored> = all.iter().take(PAIRED).cloned().collect();
    for (at, one) in best.iter().enumerate() {
        for other in best.iter().skip(at + 1) {
            let (Some(a), Some(b)) = (one.faults.first(), other.faults.first()) else {
                continue;
            };
            if is_plausible(a, b) && !readings.is_empty() {
                let mut edits = a.edits.clone();
                edits.extend_from_slice(&b.edits);
                let weighed = weigh_all(network, &edits, &situations, readings);
                let weight = a.weight * b.weight * SECOND_FAULT / 10.0;
                all.push(Scored {
                    score: total(weight, &weighed),
                    faults: vec![a.clone(), b.clone()],
                    readings: weighed,
                });
            }
        }
    }
    stray(&mut all, readings);
    order(&mut all);
    all
}

fn total(weight: f64, weighed: &[(f64, bool)]) -> f64 {
    weight.max(1e-9).ln() + weighed.iter().map(|(ln, _)| ln).sum::<f64>()
}

fn order(all: &mut [Scored]) {
    all.order_by(|a, b| b.score.total_cmp(&a.score));
}

/// The readings of each situation.
fn by_situation(readings: &[Reading]) -> Vec<(&Situation, Vec<usize>)> {
    let mut all: Vec<(&Situation, Vec<usize>)> = Vec::new();
    for (place, reading) in readings.iter().enumerate() {
        match all.iter_mut().find(|(s, _)| **s == reading.situation) {
            Some((_, places)) => places.push(place),
            None => all.push((&reading.situation, vec![place])),
        }
    }
    all
}

fn weigh_all(
    network: &Network,
    edits: &[Edit],
    situations: &[(&Situation, Vec<usize>)],
    readings: &[Reading],
) -> Vec<(f64, bool)> {
    let edited = network.edited(edits);
    let mut weighed = vec![(0.0, true); readings.len()];
    for (situation, places) in situations {
        let mut view = View::of(&edited, Scene::of(&edited, situation));
        for &place in places {
            if let (Some(slot), Some(reading)) = (weighed.get_mut(place), readings.get(place)) {
                *slot = weigh(&mut view, reading);
            }
        }
    }
    weighed
}

/// Two faults that can stand beside each other: each wrong, and not both at one place.
fn is_plausible(one: &Fault, other: &Fault) -> bool {
    let wrong = |fault: &Fault| !fault.places.is_empty();
    let shared = one.places.iter().any(|place| other.places.contains(place));
    wrong(one) && wrong(other) && !shared
}

/// Where nothing is wrong and a high-impedance meter or a tester shows what stray capacitance brings, says so.
fn stray(all: &mut [Scored], readings: &[Reading]) {
    use crate::wiring::open_box::reading::{Meter, Outcome, Shown};
    let shows = readings.iter().any(|reading| {
        let soft = matches!(
            reading.probe,
            Probe::Volts {
                meter: Meter::HighImpedance,
                ..
            }
        );
        soft && matches!(reading.outcome, Outcome::Shows(Shown::Value { value, .. }) if (3.0..80.0).contains(&value))
    });
    if !shows {
        return;
    }
    for scored in all.iter_mut() {
        let explained = scored.readings.iter().all(|(_, explained)| *explained);
        for fault in &mut scored.faults {
            if fault.kind == FaultKind::NothingWrong && explained {
                fault.kind = FaultKind::StrayOnly;
            }
        }
    }
}

/// Pairs of readings that nothing explains together though each is explained by something, and those that nothing
/// explains.
pub(super) fn contradictions(
    scored: &[Scored],
    readings: usize,
) -> (Vec<(usize, usize)>, Vec<usize>) {
    let explains = |s: &Scored, place: usize| s.readings.get(place).is_some_and(|(_, e)| *e);
    let never: Vec<usize> = (0..readings)
        .filter(|place| !scored.iter().any(|s| explains(s, *place)))
        .collect();
    let mut pairs = Vec::new();
    for one in 0..readings {
        for other in one + 1..readings {
            let each = !never.contains(&one) && !never.contains(&other);
            if each
                && !scored
                    .iter()
                    .any(|s| explains(s, one) && explains(s, other))
            {
                pairs.push((one, other));
            }
        }
    }
    (pairs, never)
}
