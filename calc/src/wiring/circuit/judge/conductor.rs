//! The conductor: whether a circuit may have it, what it carries, and its breaker.

use super::super::super::ampacity::BreakerGoverned;
use super::super::super::conductor::{ConductorRefusal, Covering, Metal, Size};
use super::*;

pub(super) fn judge(
    circuit: &Circuit,
    ampacity: &Result<Ampacity, AmpacityRefusal>,
    judge: &mut Judge,
) {
    let ampacity = match ampacity {
        Ok(ampacity) => ampacity,
        Err(refusal) => {
            forbidden(circuit.edition, refusal, judge);
            for (check, rule) in [
                (Check::ConductorBefore, Rule::BranchConductors),
                (Check::ConductorAfter, Rule::BranchConductors),
                (Check::BreakerForConductor, Rule::AtAmpacity),
            ] {
                judge.not_judged(check, rule, NotJudged::Ampacity(refusal.clone()));
            }
            return;
        }
    };
    let before_a = ampacity
        .table_a
        .min(ampacity.terminal_a)
        .min(ampacity.cable_a.unwrap_or(f64::INFINITY));
    // Listed for the whole rating, breaker and conductor are both free of the 125 % (210.19(A) and 210.20(A), exceptions).
    let before: fn(&Amounts) -> f64 = if circuit.full_rating {
        |sums| sums.total_a
    } else {
        |sums| sums.min_rating_a
    };
    judge.own_amps(
        Check::ConductorBefore,
        Rule::BranchConductors,
        before_a,
        before,
    );
    judge.own_amps(
        Check::ConductorAfter,
        Rule::BranchConductors,
        ampacity.ampacity_a,
        |sums| sums.total_a,
    );
    if judge.own.all().largest_motor_a > 0.0 {
        let rule = if circuit.loads.len() == 1 {
            Rule::SingleMotor
        } else {
            Rule::MotorConductors
        };
        // Ampacity is what a conductor carries where it lies (Article 100).
        judge.own_amps(Check::MotorConductor, rule, ampacity.ampacity_a, |sums| {
            sums.motor_min_a
        });
    }
    breaker(circuit, ampacity, judge);
}

fn breaker(circuit: &Circuit, ampacity: &Ampacity, judge: &mut Judge) {
    let check = Check::BreakerForConductor;
    let mut all = circuit.all_loads();
    let motors = all.next().is_some() && circuit.all_loads().all(|l| l.kind == LoadKind::Motor);
    if circuit.outlets <= 1 && motors {
        judge.not_judged(check, Rule::EquipmentProtection, NotJudged::MotorAlone);
        return;
    }
    let largest = &ampacity.breaker;
    // Where no standard rating will do, the breaker is held against the ampacity itself.
    let limit_a = largest.rating_a.unwrap_or(ampacity.ampacity_a);
    let mut compared = at_most(circuit.breaker_a, limit_a, Unit::Amps);
    compared.kept &= largest.rating_a.is_some();
    let section = match (largest.governed, largest.cap_section) {
        (BreakerGoverned::SmallConductor, Some(paragraph)) => paragraph,
        (BreakerGoverned::Next, _) => Rule::NextRating.section(circuit.edition),
        _ => Rule::AtAmpacity.section(circuit.edition),
    };
    judge.compared(check, Rule::AtAmpacity, Outcome::Fails, compared, None);
    if let Some(verdict) = judge.verdicts.last_mut() {
        verdict.section = section;
    }
}

/// A conductor that no circuit may have fails by the rule that forbids it; one that a table lacks is not judged.
fn forbidden(edition: CodeEdition, refusal: &AmpacityRefusal, judge: &mut Judge) {
    let (check, rule) = match refusal {
        // NFPA 70-2023 knows 14 AWG copper-clad aluminum on 10 A (240.4(D)(3)).
        AmpacityRefusal::Conductor(ConductorRefusal::BelowLeast {
            size: Size::Awg14,
            metal: Metal::CopperCladAluminum,
            ..
        }) if edition == CodeEdition::E2023 => return,
        AmpacityRefusal::Conductor(ConductorRefusal::BelowLeast { .. }) => {
            (Check::LeastSize, Rule::LeastSize)
        }
        AmpacityRefusal::Conductor(ConductorRefusal::NotMade { covering, .. }) => {
            let uf = *covering == Covering::Uf;
            let rule = if uf { Rule::UfSizes } else { Rule::NmSizes };
            (Check::SizeMade, rule)
        }
        AmpacityRefusal::TooHot { .. } => (Check::TooHot, Rule::AmbientFactor),
        _ => return,
    };
    judge.plain(check, rule, false);
}
