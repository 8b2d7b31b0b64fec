//! Explanations into answers: what no permitted reading tells apart is one.

use crate::order::Order;
use crate::wiring::open_box::description::Description;
use crate::wiring::open_box::faults::{FaultKind, Look};
use crate::wiring::open_box::likelihood::Expected;
use crate::wiring::open_box::network::Network;
use crate::wiring::open_box::permitted::permitted;
use crate::wiring::open_box::reading::Reading;
use crate::wiring::open_box::signature::{is_same, signature, tell_apart};

use super::score::Scored;
use super::{Answer, Explanation};

/// So many explanations are grouped.
const MOST_GROUPED: usize = 48;

/// An explanation with less than this share is left to the others.
const LEAST_SHARE: f64 = 2e-4;

/// Readings taken tell two explanations apart from this difference of their logarithms.
const TOLD_FROM: f64 = 4.0;

type Signature = Vec<Option<Expected>>;

/// The answers, the likeliest first, and the share of what was left out.
pub(super) fn answers(
    description: &Description,
    network: &Network,
    scored: Vec<Scored>,
    readings: &[Reading],
    boxes: &[u32],
) -> (Vec<Answer>, f64) {
    let explanations = shares(merged(scored));
    let all = permitted(description, boxes, false);
    let mut others_share = 0.0;
    let mut groups: Vec<(Signature, f64, Answer)> = Vec::new();
    // What says that nothing is wrong comes first, so that what can't be told from it stands with it.
    let (nothing, wrong): (Vec<_>, Vec<_>) = explanations
        .into_iter()
        .partition(|(explanation, _)| explanation.is_nothing());
    for (taken, (explanation, ln)) in nothing.into_iter().chain(wrong).enumerate() {
        if taken > 0 && (taken >= MOST_GROUPED || explanation.share < LEAST_SHARE) {
            // What can't be seen from here is no less there for being unlikely.
            let hidden = groups
                .iter_mut()
                .find(|(.., answer)| answer.members.iter().any(Explanation::is_nothing));
            match hidden {
                Some((of, likelihood, answer))
                    if explanation.faults.len() == 1
                        && (*likelihood - ln).abs() < TOLD_FROM
                        && is_same(&network.edited(&explanation.edits()), &all, of) =>
                {
                    join(answer, explanation);
                }
                _ => others_share += explanation.share,
            }
            continue;
        }
        let edited = network.edited(&explanation.edits());
        let signature = signature(&edited, &all);
        let with = groups.iter_mut().find(|(of, likelihood, _)| {
            (likelihood - ln).abs() < TOLD_FROM && !tell_apart(of, &signature)
        });
        match with {
            Some((.., answer)) => join(answer, explanation),
            None => groups.push((signature, ln, answer(explanation))),
        }
    }
    let mut answers: Vec<Answer> = groups.into_iter().map(|(.., answer)| answer).collect();
    for answer in &mut answers {
        finish(description, answer, readings.len());
    }
    answers.retain(|answer| answer.share >= LEAST_SHARE);
    answers.order_by(|a, b| b.share.total_cmp(&a.share));
    (answers, others_share)
}

/// One explanation for each fault at its place: a poor joint with the ohms that fit best.
fn merged(scored: Vec<Scored>) -> Vec<(Explanation, f64)> {
    let mut all: Vec<(Explanation, f64)> = Vec::new();
    for scored in scored {
        let ln: f64 = scored.readings.iter().map(|(ln, _)| ln).sum();
        // The best comes first: a poor joint with its ohms, with or without a load.
        let again = scored.slip.is_some() || all.iter().any(|(e, _)| e.slip.is_some());
        let poor = again || scored.faults.iter().any(|f| f.kind == FaultKind::PoorJoint);
        let same = all.iter_mut().find(|(there, _)| {
            poor && there.faults.len() == scored.faults.len()
                && there
                    .faults
                    .iter()
                    .zip(&scored.faults)
                    .all(|(a, b)| a.kind == b.kind && a.places == b.places)
        });
        if let Some((there, _)) = same {
            let (high, low) = (there.score.max(scored.score), there.score.min(scored.score));
            there.score = high + (low - high).exp().ln_1p();
            continue;
        }
        let explained = (0..scored.readings.len())
            .filter(|place| scored.readings.get(*place).is_some_and(|(_, e)| *e))
            .collect();
        let explanation = Explanation {
            faults: scored.faults,
            slip: scored.slip,
            share: 0.0,
            explained,
            score: scored.score,
        };
        all.push((explanation, ln));
    }
    all
}

/// Shares of the probability, the likeliest first.
fn shares(mut all: Vec<(Explanation, f64)>) -> Vec<(Explanation, f64)> {
    let best = all
        .iter()
        .map(|(e, _)| e.score)
        .fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = all.iter().map(|(e, _)| (e.score - best).exp()).sum();
    for (explanation, _) in &mut all {
        explanation.share = (explanation.score - best).exp() / sum;
    }
    all.order_by(|(a, _), (b, _)| b.share.total_cmp(&a.share));
    all
}

/// Takes an explanation into an answer; two faults of which one is there already say nothing more than that one.
fn join(answer: &mut Answer, explanation: Explanation) {
    let part_of = |one: &Explanation| {
        // Beside a load that is other than described, what nobody can see from here says nothing more.
        let by_load = one.is_nothing() && one.slip.is_some() && one.slip == explanation.slip;
        let fewer = one.faults.len() < explanation.faults.len()
            && one.faults.iter().all(|fault| {
                explanation
                    .faults
                    .iter()
                    .any(|f| f.kind == fault.kind && f.places == fault.places)
            });
        by_load || fewer
    };
    match answer.members.iter_mut().find(|member| part_of(member)) {
        Some(member) => member.share += explanation.share,
        None => answer.members.push(explanation),
    }
}

fn answer(explanation: Explanation) -> Answer {
    Answer {
        nothing_seen: explanation.is_nothing() && explanation.slip.is_none(),
        members: vec![explanation],
        share: 0.0,
        explained: Vec::new(),
        unexplained: Vec::new(),
        look: Vec::new(),
    }
}

fn finish(description: &Description, answer: &mut Answer, readings: usize) {
    answer.members.order_by(|a, b| b.share.total_cmp(&a.share));
    answer.share = answer.members.iter().map(|member| member.share).sum();
    if let Some(first) = answer.members.first() {
        answer.explained.clone_from(&first.explained);
    }
    answer.unexplained = (0..readings)
        .filter(|place| !answer.explained.contains(place))
        .collect();
    let mut looks: Vec<(Look, f64)> = Vec::new();
    for member in &answer.members {
        for fault in &member.faults {
            for place in &fault.places {
                let look = place.look(description);
                match looks.iter_mut().find(|(there, _)| *there == look) {
                    Some((_, share)) => *share += member.share,
                    None => looks.push((look, member.share)),
                }
            }
        }
    }
    looks.order_by(|a, b| b.1.total_cmp(&a.1));
    answer.look = looks.into_iter().map(|(look, _)| look).collect();
}
