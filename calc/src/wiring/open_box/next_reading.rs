//! What to measure next: of all that may be measured here, what is expected to narrow the answers most for its risk.

use serde::Serialize;

use super::description::Description;
use super::diagnosis::{Answer, Diagnosis};
use super::gain::{Gain, gain};
use super::likelihood::{Expected, LEADS_OHM};
use super::network::Network;
use super::permitted::{Permitted, Risk, permitted};
use super::reading::{Probe, Reading};
use super::signature::{TELLS_FROM, signature};
use super::situation::Situation;
use crate::order::Order;

/// So many of the likeliest answers are held against each other.
const MOST_COMPARED: usize = 40;

/// Less is not worth going for, bits.
pub const LEAST_BITS: f64 = 0.05;

/// What a reading with volts at a joint that was taken apart must bring more than any other, bits.
const APART_BITS: f64 = 0.05;

/// What it counts for, in bits, that the first answer gets sure to be the right one: at first, and once [`SOME_TAKEN`]
/// readings are taken, since few people take more than four or five.
const RIGHT_BITS: (f64, f64) = (2.0, 4.0);

/// See [`RIGHT_BITS`].
const SOME_TAKEN: usize = 3;

/// What an outcome would be.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Outlook {
    /// A figure from one to another, in volts, amperes or ohms.
    Between {
        /// From.
        low: f64,
        /// To.
        high: f64,
    },
    /// Over the limit: open.
    OverLimit,
    /// A tester's yes or no.
    Glows(bool),
}

/// An outcome and what it would mean.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Meaning {
    /// The outcome.
    pub outlook: Outlook,
    /// How likely it is to come.
    pub share: f64,
    /// The answers that it speaks for, by their place in the diagnosis, the likeliest first.
    pub answers: Vec<usize>,
}

/// A reading to take next.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NextReading {
    /// In which situation.
    pub situation: Situation,
    /// Where and with what.
    pub probe: Probe,
    /// Its risk.
    pub risk: Risk,
    /// What it is expected to narrow the answers by, bits.
    pub bits: f64,
    /// What each outcome would mean, the likeliest first.
    pub meanings: Vec<Meaning>,
}

/// What to measure next in a box; `None` where nothing that may be measured there narrows the answers: look where the
/// first answer says.
pub fn next_reading(
    description: &Description,
    readings: &[Reading],
    diagnosis: &Diagnosis,
    in_box: u32,
) -> Option<NextReading> {
    let network = Network::of(description).ok()?;
    let answers: Vec<&Answer> = diagnosis.answers.iter().take(MOST_COMPARED).collect();
    let closed = permitted(description, &[in_box], false);
    if let Some(best) = best_of(&network, readings, &answers, &closed) {
        return Some(best);
    }
    let mut apart = permitted(description, &[in_box], true);
    apart.retain(|group| group.probes.iter().all(|(r, _)| *r == Risk::VoltsApart));
    best_of(&network, readings, &answers, &apart).filter(|best| best.bits >= APART_BITS)
}

fn best_of(
    network: &Network,
    readings: &[Reading],
    answers: &[&Answer],
    permitted: &[Permitted],
) -> Option<NextReading> {
    // Each answer by its likeliest member.
    let expected: Vec<(f64, Vec<Option<Expected>>)> = answers
        .iter()
        .filter_map(|answer| {
            let edits = answer.members.first()?.edits();
            Some((answer.share, signature(&network.edited(&edits), permitted)))
        })
        .collect();
    let right_bits = if readings.len() < SOME_TAKEN {
        RIGHT_BITS.0
    } else {
        RIGHT_BITS.1
    };
    let sum: f64 = expected.iter().map(|(share, _)| share).sum();
    let likeliest = expected
        .iter()
        .map(|(share, _)| share / sum)
        .fold(0.0, f64::max);
    let mut best: Option<(f64, NextReading)> = None;
    let mut place = 0;
    for group in permitted {
        for (risk, probe) in &group.probes {
            let column: Vec<(f64, Option<Expected>)> = expected
                .iter()
                .map(|(share, row)| (share / sum, row.get(place).copied().flatten()))
                .collect();
            place += 1;
            let taken = readings
                .iter()
                .any(|r| r.probe == *probe && r.situation == group.situation);
            if taken {
                continue;
            }
            let Gain { bits, right } = gain(&column, likeliest);
            let worth = (bits + right_bits * right) * liking(*risk) * ease(&group.situation);
            if bits >= LEAST_BITS && best.as_ref().is_none_or(|(most, _)| worth > *most + 1e-9) {
                let next = NextReading {
                    situation: group.situation.clone(),
                    probe: *probe,
                    risk: *risk,
                    bits,
                    meanings: meanings(&column),
                };
                best = Some((worth, next));
            }
        }
    }
    best.map(|(_, next)| next)
}

/// How much of what a reading tells counts for its risk. Source: an order of preference, not a measure of danger.
const fn liking(risk: Risk) -> f64 {
    match risk {
        Risk::NothingOpened => 1.0,
        Risk::EverythingOff => 0.9,
        Risk::VoltsClosed => 0.75,
        Risk::VoltsApart => 0.3,
    }
}

/// A little less for every breaker to go to and every joint to take apart.
fn ease(situation: &Situation) -> f64 {
    let changes =
        situation.breakers_off.len().min(2) + situation.apart.len() + situation.switches.len();
    let changes = if situation.everything_off {
        changes + 1
    } else {
        changes
    };
    0.97_f64.powi(i32::try_from(changes).unwrap_or(4))
}

/// The outcome that an answer speaks for.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Figure,
    Yes,
    No,
}

fn kind(expected: &Expected) -> Kind {
    match (expected.spread == 0.0, expected.yes > 0.5) {
        (_, true) => Kind::Yes,
        (true, false) => Kind::No,
        (false, false) => Kind::Figure,
    }
}

/// Places of a column in the order of what they expect, cut where an outcome tells them apart.
fn clusters(column: &[(f64, Option<Expected>)]) -> Vec<(Kind, Vec<usize>)> {
    let known: Vec<(usize, Expected)> = column
        .iter()
        .enumerate()
        .filter_map(|(at, (_, expected))| Some((at, (*expected)?)))
        .collect();
    let mut clusters: Vec<(Kind, Vec<usize>)> = Vec::new();
    for of in [Kind::Yes, Kind::No] {
        let those: Vec<usize> = known
            .iter()
            .filter(|(_, expected)| kind(expected) == of)
            .map(|(at, _)| *at)
            .collect();
        if !those.is_empty() {
            clusters.push((of, those));
        }
    }
    let mut figures: Vec<(usize, Expected)> = known
        .into_iter()
        .filter(|(_, expected)| kind(expected) == Kind::Figure)
        .collect();
    figures.order_by(|a, b| a.1.middle.total_cmp(&b.1.middle));
    let mut last: Option<Expected> = None;
    for (at, expected) in figures {
        let cut = last.is_none_or(|last| {
            let gap = expected.middle - last.middle;
            gap > 0.8 * TELLS_FROM * expected.spread.hypot(last.spread)
        });
        last = Some(expected);
        match clusters.last_mut() {
            Some((Kind::Figure, list)) if !cut => list.push(at),
            _ => clusters.push((Kind::Figure, vec![at])),
        }
    }
    clusters
}

/// What an outcome has to be where one thing is expected.
pub(super) fn outlook(expected: &Expected) -> Outlook {
    outlook_of(kind(expected), &[*expected])
}

fn outlook_of(kind: Kind, those: &[Expected]) -> Outlook {
    let tester = those.iter().any(|expected| expected.spread == 0.0);
    match kind {
        Kind::Yes if tester => Outlook::Glows(true),
        Kind::Yes => Outlook::OverLimit,
        Kind::No => Outlook::Glows(false),
        Kind::Figure => {
            let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
            for expected in those {
                low = low.min(expected.middle - 2.0 * expected.spread);
                high = high.max(expected.middle + 2.0 * expected.spread);
            }
            let ohms = those.iter().any(|expected| expected.is_ohms);
            let shown = |x: f64| if ohms { x.exp() - LEADS_OHM } else { x };
            Outlook::Between {
                low: shown(low).max(0.0),
                high: shown(high).max(0.0),
            }
        }
    }
}

fn meanings(column: &[(f64, Option<Expected>)]) -> Vec<Meaning> {
    let mut all: Vec<Meaning> = Vec::new();
    for (kind, list) in clusters(column) {
        let share = list
            .iter()
            .filter_map(|at| column.get(*at))
            .map(|(share, _)| share)
            .sum();
        let those: Vec<Expected> = list
            .iter()
            .filter_map(|at| column.get(*at))
            .filter_map(|(_, expected)| *expected)
            .collect();
        let outlook = outlook_of(kind, &those);
        let mut answers = list.clone();
        answers.order();
        all.push(Meaning {
            outlook,
            share,
            answers,
        });
    }
    all.order_by(|a, b| b.share.total_cmp(&a.share));
    all
}
