//! The neutral that the circuit shares.

use super::super::super::neutral::NeutralCurrent;
use super::*;

pub(super) fn judge(circuit: &Circuit, judge: &mut Judge, steps: &mut Vec<Step>) {
    let Some(neutral) = &circuit.neutral else {
        return;
    };
    let edition = circuit.edition;
    let after = circuit.neutral_after.as_ref().map(neutral_current);
    let (now, after) = match (neutral_current(neutral), after.transpose()) {
        (Ok(now), Ok(after)) => (now, after),
        (Err(refusal), _) | (_, Err(refusal)) => {
            let why = NotJudged::Neutral(refusal);
            judge.not_judged(Check::NeutralLoad, Rule::BranchConductors, why);
            return;
        }
    };
    let all = after.as_ref().unwrap_or(&now);
    if let Some(ampacity_a) = neutral.ampacity_a {
        // What resistive loads send is certain; what electronic ones add at worst is a bound.
        type Figure = fn(&NeutralCurrent) -> f64;
        let (certain, bound): (Figure, Figure) = (
            |neutral| neutral.most_a,
            |neutral| neutral.electronic_most_a,
        );
        let above = |of: Figure| of(all) > ampacity_a + ROUNDING_A;
        let (rule, outcome, of) = if !above(certain) && above(bound) {
            (Rule::NeutralCount, Outcome::Advised, bound)
        } else {
            (Rule::BranchConductors, Outcome::Fails, certain)
        };
        let compare = |current: &NeutralCurrent| at_most(of(current), ampacity_a, Unit::Amps);
        judge.compared(
            Check::NeutralLoad,
            rule,
            outcome,
            compare(&now),
            after.as_ref().map(compare),
        );
    }
    if all.shared {
        let facts = [
            (
                neutral.runs_with_hots,
                Check::NeutralTogether,
                Rule::RunTogether,
            ),
            (
                neutral.pigtailed,
                Check::NeutralWhole,
                Rule::NeutralContinuity,
            ),
        ];
        for (fact, check, rule) in facts {
            if fact.is_none() {
                judge.verdicts.push(Verdict {
                    check,
                    section: rule.section(edition),
                    outcome: Outcome::NotJudged,
                    now: None,
                    after: None,
                    why_not: None,
                });
            }
        }
    }
    let all = after.unwrap_or(now);
    for finding in all.findings {
        let (section, outcome) = match &finding {
            // The verdict on the load says it already.
            NeutralFinding::Overloaded { .. } => continue,
            NeutralFinding::ElectronicLoads { .. } => {
                (Rule::NeutralCount.section(edition), Outcome::Advised)
            }
            NeutralFinding::SameLeg { section, .. }
            | NeutralFinding::TandemPair { section, .. }
            | NeutralFinding::TooManyCircuits { section, .. }
            | NeutralFinding::DifferentPanels { section }
            | NeutralFinding::NoCommonDisconnect { section, .. }
            | NeutralFinding::LegToLegLoads { section }
            | NeutralFinding::RunsApart { section }
            | NeutralFinding::OpensAtDevice { section } => (*section, Outcome::Fails),
        };
        judge.verdicts.push(Verdict {
            check: Check::Neutral(finding),
            section,
            outcome,
            now: None,
            after: None,
            why_not: None,
        });
    }
    steps.extend(all.steps);
}
