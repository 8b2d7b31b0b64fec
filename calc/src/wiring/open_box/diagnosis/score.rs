//! How well each fault, and each plausible pair of them, explains the readings.

use crate::order::Order;
use crate::wiring::open_box::diagnosis::LoadSlip;
use crate::wiring::open_box::faults::{
    Fault, FaultKind, LOAD_NOT_ENTERED, LOAD_NOT_THERE, NOT_ENTERED_WATTS, Place, SECOND_FAULT,
};
use crate::wiring::open_box::likelihood::{View, weigh};
use crate::wiring::open_box::network::{Edit, Network, Part, Scene};
use crate::wiring::open_box::reading::{Probe, Reading};
use crate::wiring::open_box::situation::Situation;

/// Of so many of the best single faults pairs are tried.
const PAIRED: usize = 12;

/// An explanation with what became of each reading.
#[derive(Clone, Debug)]
pub(super) struct Scored {
    /// One fault, or two.
    pub faults: Vec<Fault>,
    /// A load that is taken as other than described.
    pub slip: Option<LoadSlip>,
    /// The logarithm of likelihood times weight.
    pub score: f64,
    /// For each reading the logarithm of its likelihood, and whether it is explained.
    pub readings: Vec<(f64, bool)>,
}

/// Every explanation, the best first.
pub(super) fn scored(network: &Network, singles: &[Fault], readings: &[Reading]) -> Vec<Scored> {
    let situations = by_situation(readings);
    let mut all: Vec<Scored> = Vec::with_capacity(singles.len() + PAIRED * PAIRED / 2);
    let mut sound: Vec<(f64, bool)> = Vec::new();
    // The place of a poor joint that no reading noticed at its most ohms: then none does with less.
    let mut unnoticed: Option<&[Place]> = None;
    for fault in singles {
        let weighed = if fault.ohm.is_some() && unnoticed == Some(fault.places.as_slice()) {
            sound.clone()
        } else {
            weigh_all(network, &fault.edits, &situations, readings)
        };
        if fault.places.is_empty() {
            sound.clone_from(&weighed);
        }
        if fault.ohm.is_some() && is_like(&weighed, &sound) {
            unnoticed = Some(&fault.places);
        }
        all.push(Scored {
            score: total(fault.weight, &weighed),
            faults: vec![fault.clone()],
            slip: None,
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
                    slip: None,
                    readings: weighed,
                });
            }
        }
    }
    slipped(network, &mut all, &situations, readings);
    stray(&mut all, readings);
    order(&mut all);
    all
}

/// With so many of the best explanations a load is tried as other than described, to see whether that is what is off.
const SLIPPED: usize = 6;

/// If the readings fit better with some load other than described, every explanation is tried with that.
fn slipped(
    network: &Network,
    all: &mut Vec<Scored>,
    situations: &[(&Situation, Vec<usize>)],
    readings: &[Reading],
) {
    if readings.is_empty() {
        return;
    }
    let slips = slips(network);
    let try_with = |scored: &Scored, slip: LoadSlip, weight: f64| {
        let mut edits = Vec::new();
        let mut likely = weight;
        for fault in &scored.faults {
            edits.extend_from_slice(&fault.edits);
            likely *= fault.weight;
        }
        if scored.faults.len() > 1 {
            likely *= SECOND_FAULT / 10.0;
        }
        edits.push(slip.edit());
        let weighed = weigh_all(network, &edits, situations, readings);
        Scored {
            faults: scored.faults.clone(),
            slip: Some(slip),
            score: total(likely, &weighed),
            readings: weighed,
        }
    };
    order(all);
    let bar = all.first().map_or(0.0, |best| best.score) - 3.0;
    let is_nothing = |scored: &Scored| scored.faults.iter().all(|f| f.places.is_empty());
    let mut best: Option<(f64, LoadSlip, f64)> = None;
    for (at, scored) in all.iter().enumerate() {
        if at >= SLIPPED && !is_nothing(scored) {
            continue;
        }
        for &(slip, weight) in &slips {
            let score = try_with(scored, slip, weight).score;
            if score > bar && score > scored.score && best.is_none_or(|(most, ..)| score > most) {
                best = Some((score, slip, weight));
            }
        }
    }
    if let Some((_, slip, weight)) = best {
        let with: Vec<Scored> = all
            .iter()
            .map(|scored| try_with(scored, slip, weight))
            .collect();
        all.extend(with);
    }
}

/// What may be other than described in a load, with how likely it is.
fn slips(network: &Network) -> Vec<(LoadSlip, f64)> {
    let share = |count: usize| 1.0 / f64::from(u32::try_from(count.max(1)).unwrap_or(u32::MAX));
    let mut all: Vec<(LoadSlip, f64)> = Vec::new();
    for branch in &network.branches {
        if let Part::Load(load) = branch.part {
            all.push((LoadSlip::NotThere(load), LOAD_NOT_THERE));
        }
    }
    let loads = share(all.len());
    for (_, weight) in &mut all {
        *weight *= loads;
    }
    let spots = network.spots();
    let weight = LOAD_NOT_ENTERED * share(spots.len() * NOT_ENTERED_WATTS.len());
    for &(load, from, to) in spots {
        for watts in NOT_ENTERED_WATTS {
            let slip = LoadSlip::NotEntered {
                load,
                watts,
                from,
                to,
            };
            all.push((slip, weight));
        }
    }
    all
}

/// Whether two explanations say the same of every reading, and explain it: what neither explains, one may miss by much
/// and the other by little.
fn is_like(one: &[(f64, bool)], other: &[(f64, bool)]) -> bool {
    one.len() == other.len()
        && one
            .iter()
            .zip(other)
            .all(|((a, fits), (b, also))| *fits && *also && (a - b).abs() < 0.02)
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
        // Stray currents are microamperes: a clamp knows nothing of them.
        let amps_only = places.iter().all(|place| {
            let reading = readings.get(*place);
            reading.is_some_and(|r| matches!(r.probe, Probe::Amps { .. }))
        });
        let scene = if amps_only {
            Scene::conducted(&edited, situation)
        } else {
            Scene::of(&edited, situation)
        };
        let mut view = View::of(&edited, scene);
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
