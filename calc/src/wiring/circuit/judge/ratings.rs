//! The rating of the breaker, and what a circuit of that rating may feed.

use super::super::super::tables::{
    APPLIANCE_FACTOR, APPLIANCE_SMALL_A, APPLIANCE_SMALL_DEVICE_A, breaker_at_least_a,
    breaker_ratings_a,
};
use super::*;

pub(super) fn judge(circuit: &Circuit, judge: &mut Judge) {
    let (edition, rating_a) = (circuit.edition, circuit.breaker_a);
    let standard = breaker_ratings_a(edition).any(|a| a == rating_a);
    judge.plain(Check::StandardRating, Rule::StandardRatings, standard);
    let (several, ten) = (circuit.several(), rating_a == 10.0);
    if several {
        let among = [15.0, 20.0, 30.0, 40.0, 50.0].contains(&rating_a)
            || (ten && edition == CodeEdition::E2023);
        judge.plain(Check::CircuitRating, Rule::CircuitRating, among);
    }
    // For one outlet a 10 A circuit was always allowed; since 2023 not for a receptacle.
    let new = edition == CodeEdition::E2023;
    if ten && (several || (new && circuit.receptacles > 0)) {
        let lights = circuit
            .all_loads()
            .all(|load| matches!(load.kind, LoadKind::Luminaire | LoadKind::ExhaustFan));
        let kept = new && circuit.receptacles == 0 && lights;
        judge.plain(Check::TenAmp, Rule::TenAmp, kept);
    }
    large(circuit, judge);
    receptacles(circuit, judge);
    appliance(circuit, judge);
    if circuit.purpose != Purpose::General {
        judge.plain(
            Check::RequiredRating,
            Rule::RequiredCircuits,
            rating_a == 20.0,
        );
        let others = match circuit.purpose {
            Purpose::Bathroom { one_bathroom: true } | Purpose::General => true,
            _ => circuit
                .all_loads()
                .all(|load| load.kind == LoadKind::CordAndPlug),
        };
        judge.plain(Check::RequiredLoads, Rule::RequiredCircuits, others);
    }
}

/// Above 20 A: no lights of a dwelling, and on 40 and 50 A cooking appliances that are fastened in place alone.
fn large(circuit: &Circuit, judge: &mut Judge) {
    let rating_a = circuit.breaker_a;
    if rating_a <= 20.0 {
        return;
    }
    let lights = circuit
        .all_loads()
        .any(|load| load.kind == LoadKind::Luminaire);
    let cooking = circuit
        .all_loads()
        .all(|load| load.kind == LoadKind::FixedInPlace);
    let (rule, kept) = match circuit.several() {
        true if rating_a <= 30.0 => (Rule::ThirtyAmp, !lights),
        true if rating_a <= 50.0 => (Rule::FiftyAmp, cooking),
        true => (Rule::AboveFifty, !lights),
        false if lights => (Rule::Lampholders, false),
        false => return,
    };
    judge.plain(Check::LargeCircuit, rule, kept);
}

/// The ratings of receptacles are not entered: what they must be is told, and general ones on a large circuit fail.
fn receptacles(circuit: &Circuit, judge: &mut Judge) {
    let (check, least_a) = (Check::ReceptacleRating, circuit.breaker_a);
    let open = NotJudged::ReceptacleRating { least_a };
    match (circuit.several(), circuit.receptacles) {
        (_, 0) => {}
        (false, _) if least_a > 15.0 => judge.not_judged(check, Rule::SingleReceptacle, open),
        (true, 1) if least_a > 20.0 => judge.not_judged(check, Rule::ReceptacleRatings, open),
        (true, _) if least_a > 20.0 && circuit.two_hots => {
            judge.not_judged(check, Rule::ReceptacleRatings, open);
        }
        // Several receptacles of 120 V: those of a dwelling are made for 15 and 20 A.
        (true, _) if least_a > 20.0 => judge.plain(check, Rule::ReceptacleRatings, false),
        _ => {}
    }
}

/// The breaker of a storage water heater alone on its circuit, where its plate marks no maximum.
fn appliance(circuit: &Circuit, judge: &mut Judge) {
    let mut all = circuit.all_loads();
    let (Some(load), None) = (all.next(), all.next()) else {
        return;
    };
    if load.kind != LoadKind::WaterHeater || circuit.several() {
        return;
    }
    let takes_a = loads::amps(circuit, load);
    let (rule, limit_a) = if takes_a > APPLIANCE_SMALL_A {
        let most_a = APPLIANCE_FACTOR * takes_a;
        let next_a = breaker_at_least_a(most_a, circuit.edition);
        (Rule::ApplianceDevice, next_a.unwrap_or(most_a))
    } else {
        (Rule::SmallApplianceDevice, APPLIANCE_SMALL_DEVICE_A)
    };
    let compared = at_most(circuit.breaker_a, limit_a, Unit::Amps);
    judge.compared(
        Check::ApplianceBreaker,
        rule,
        Outcome::Fails,
        compared,
        None,
    );
}
