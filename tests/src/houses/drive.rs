//! From a complaint to an answer, by the advice of the diagnosis alone.

use std::time::{Duration, Instant};

use calc::wiring::open_box::diagnosis::{
    Answer, Diagnosis, DiagnosisRefusal, Explanation, diagnose_in,
};
use calc::wiring::open_box::faults::{Fault, FaultKind, Place};
use calc::wiring::open_box::next_reading::next_reading;
use calc::wiring::open_box::permitted::Risk;
use calc::wiring::open_box::reading::{Probe, Reading};
use calc::wiring::open_box::situation::Situation;

use super::house::House;
use super::instruments::{shows, tells};
use super::plant::Planted;
use super::truth::Ideal;
use super::within::{permitted, told_by};

/// Readings taken by advice, at the most.
pub const MOST_ADVISED: usize = 4;

/// How it went in a house.
#[derive(Clone, Debug)]
pub struct Run {
    /// What was wrong.
    pub kind: FaultKind,
    /// Whether some permitted reading in the box tells it from a healthy box.
    pub tellable: bool,
    /// The place, from 0, of the answer that has the fault; `None`: none has it.
    pub rank: Option<usize>,
    /// How many explanations that answer has.
    pub group: usize,
    /// Whether the first answer says that nothing is seen wrong from here.
    pub nothing_first: bool,
    /// Whether the answer that has the fault names where it is to be seen.
    pub looks: bool,
    /// The risks of the advised readings, in their order.
    pub risks: Vec<Risk>,
    /// The readings, the complaint first.
    pub readings: Vec<Reading>,
    /// The last diagnosis.
    pub diagnosis: Diagnosis,
    /// What diagnosing took, the longest.
    pub slowest_diagnosis: Duration,
    /// What all of it took.
    pub took: Duration,
}

impl Run {
    /// Whether the answer that has the fault is among the first so many.
    pub fn within(&self, places: usize) -> bool {
        self.rank.is_some_and(|rank| rank < places)
    }
}

/// Drives a house.
///
/// # Errors
/// What the diagnosis refuses.
pub fn drive(house: &House) -> Result<Run, DiagnosisRefusal> {
    let mut dice = house.dice.clone();
    let told = told_by(
        &house.healthy,
        &house.truth,
        &house.wiring.description,
        house.opened,
    );
    let mut readings = vec![complaint(house, &mut dice)];
    let mut risks = Vec::new();
    let begin = Instant::now();
    let mut slowest = Duration::ZERO;
    let boxes = [house.opened];
    let diagnosis = loop {
        let start = Instant::now();
        let diagnosis = diagnose_in(&house.entered, &readings, &boxes)?;
        slowest = slowest.max(start.elapsed());
        if risks.len() == MOST_ADVISED {
            break diagnosis;
        }
        let Some(next) = next_reading(&house.entered, &readings, &diagnosis, house.opened) else {
            break diagnosis;
        };
        risks.push(next.risk);
        readings.push(take(house, next.situation, next.probe, &mut dice));
    };
    let took = begin.elapsed();
    let place = diagnosis
        .answers
        .iter()
        .position(|a| has(a, &house.planted));
    let answer = place.and_then(|place| diagnosis.answers.get(place));
    Ok(Run {
        kind: house.planted.kind,
        tellable: told.is_some(),
        rank: place,
        group: answer.map_or(0, |a| a.members.len()),
        nothing_first: diagnosis.answers.first().is_some_and(|a| a.nothing_seen),
        looks: answer.is_some_and(|a| names(a, house)),
        risks,
        readings,
        slowest_diagnosis: slowest,
        took,
        diagnosis,
    })
}

/// Whether an explanation is the fault that was planted.
fn is(explanation: &Explanation, planted: &Planted) -> bool {
    if matches!(planted.kind, FaultKind::NothingWrong | FaultKind::StrayOnly) {
        return explanation.is_nothing();
    }
    let [fault] = explanation.faults.as_slice() else {
        return false;
    };
    is_planted(fault, planted)
}

/// Whether a fault is the one that was planted.
pub fn is_planted(fault: &Fault, planted: &Planted) -> bool {
    let same = |places: &Vec<Place>| {
        places.len() == fault.places.len()
            && places.iter().all(|place| fault.places.contains(place))
    };
    fault.kind == planted.kind && planted.places.iter().any(same)
}

/// Whether an answer has the fault that was planted.
pub fn has(answer: &Answer, planted: &Planted) -> bool {
    answer.members.iter().any(|member| is(member, planted))
}

fn names(answer: &Answer, house: &House) -> bool {
    let d = &house.wiring.description;
    let places = house.planted.places.first().into_iter().flatten();
    places
        .map(|place| place.look(d))
        .any(|look| answer.look.contains(&look))
}

/// Takes a reading in the house.
pub fn take(
    house: &House,
    situation: Situation,
    probe: Probe,
    dice: &mut super::dice::Dice,
) -> Reading {
    // The supply is never twice the same.
    let supply = 1.0 + 0.008 * dice.normal();
    let ideal = house.truth.scene(&situation, supply).see(&probe);
    Reading {
        outcome: shows(ideal, dice),
        situation,
        probe,
    }
}

/// What made somebody open the box: volts or a tester, joints closed; one that shows that something is wrong if any does.
fn complaint(house: &House, dice: &mut super::dice::Dice) -> Reading {
    let stray = house.planted.kind == FaultKind::StrayOnly;
    let (mut odd, mut plain) = (Vec::new(), Vec::new());
    for (situation, probes) in permitted(&house.wiring.description, house.opened) {
        if situation.everything_off || situation.breakers_off.len() > 1 {
            continue;
        }
        let (here, well) = (
            house.truth.scene(&situation, 1.0),
            house.healthy.scene(&situation, 1.0),
        );
        for probe in probes {
            if !matches!(probe, Probe::Volts { .. } | Probe::Tester { .. }) {
                continue;
            }
            let ideal = here.see(&probe);
            let is_odd = match ideal {
                Ideal::Volts(volts) if stray => (8.0..100.0).contains(&volts),
                _ => tells(ideal, well.see(&probe)),
            };
            if is_odd { &mut odd } else { &mut plain }.push((situation.clone(), probe));
        }
    }
    let from = if odd.is_empty() { &plain } else { &odd };
    let (situation, probe) = dice.pick(from).expect("volts can be measured in every box");
    take(house, situation, probe, dice)
}
