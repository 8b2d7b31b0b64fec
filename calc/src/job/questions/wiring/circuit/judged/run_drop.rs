//! The drop on a leg of a multiwire circuit, against what is recommended.

use super::*;

type Drop = Result<VoltageDrop, DropRefusal>;

/// The drop on a leg of a multiwire circuit, against what is recommended.
pub(super) fn add_drop(
    job: &Job,
    answer: &mut CircuitAnswer,
    now: &Drop,
    after: &Drop,
    leg: Option<Leg>,
) {
    let (now, after) = match (now, after) {
        (Ok(now), Ok(after)) => (now, after),
        (Err(why), _) | (_, Err(why)) => {
            let why = Some(NotJudged::Drop(why.clone()));
            answer
                .verdicts
                .push(not_judged(job, Check::BranchDrop, Rule::BranchDrop, why));
            return;
        }
    };
    let worst = |drop: &VoltageDrop| {
        drop.points
            .iter()
            .filter_map(|point| match leg {
                Some(Leg::B) => point.b,
                Some(Leg::A) | None => Some(point.a),
            })
            .map(|left| left.drop_percent)
            .fold(0.0, f64::max)
    };
    // What the feeder loses is in the total alone.
    let feeder = |drop: &VoltageDrop| drop.total_percent - drop.worst_percent;
    let mut add = |check, rule: Rule, limit, now_percent, after_percent| {
        let compare = |value: f64| Compared {
            value,
            limit,
            unit: Unit::Percent,
            kept: value <= limit + 1e-9,
        };
        let (now, after) = (compare(now_percent), compare(after_percent));
        let planned = answer.after.is_some();
        let kept = if planned { after.kept } else { now.kept };
        answer.verdicts.push(Verdict {
            check,
            section: rule.section(job.code_edition),
            outcome: if kept {
                Outcome::Passes
            } else {
                Outcome::Advised
            },
            now: Some(now),
            after: planned.then_some(after),
            why_not: None,
        });
    };
    let (of_now, of_after) = (worst(now), worst(after));
    add(
        Check::BranchDrop,
        Rule::BranchDrop,
        BRANCH_DROP_PERCENT,
        of_now,
        of_after,
    );
    add(
        Check::TotalDrop,
        Rule::TotalDrop,
        TOTAL_DROP_PERCENT,
        of_now + feeder(now),
        of_after + feeder(after),
    );
    answer.steps.extend(after.steps.iter().cloned());
}
