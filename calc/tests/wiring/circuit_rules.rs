//! Circuits: what must not be on one, by the section that says so.

use calc::job::CodeEdition;
use calc::wiring::circuit::{
    Check, Circuit, CircuitAnswer, CircuitLoad, CircuitRefusal, LoadKind, NotJudged, Outcome,
    Takes, judge,
};
use calc::wiring::conductor::{Covering, Metal, Size};
use calc::wiring::neutral::{Neutral, Returning};
use calc::wiring::panel::BreakerForm;
use calc::wiring::tables::Ambient;

use crate::circuit::{circuit, load, verdict};
use crate::panel::breaker;

/// One thing on a circuit of its own.
fn alone(breaker_a: f64, kind: LoadKind, amps: f64) -> Circuit {
    Circuit {
        receptacles: 0,
        outlets: 1,
        ..circuit(breaker_a, vec![load(1, kind, amps)])
    }
}

fn outcome(entry: &Circuit, check: Check) -> Option<Outcome> {
    let answer = judge(entry).unwrap();
    let found = answer.verdicts.iter().find(|v| v.check == check);
    found.map(|verdict| verdict.outcome)
}

fn failing(answer: &CircuitAnswer) -> Vec<(&Check, &'static str)> {
    let fails = answer
        .verdicts
        .iter()
        .filter(|v| v.outcome == Outcome::Fails);
    fails.map(|v| (&v.check, v.section)).collect()
}

/// 210.20(A), 210.23: all that is on the pole is on the breaker; the conductor carries its own loads alone.
#[test]
fn what_another_cable_feeds_is_on_the_breaker_too() {
    let mut entry = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 12.0)]);
    assert!(!judge(&entry).unwrap().fails());
    entry.beside = vec![load(2, LoadKind::CordAndPlug, 12.0)];
    let answer = judge(&entry).unwrap();
    assert_eq!(answer.now.total_a, 24.0);
    assert_eq!(
        failing(&answer),
        [
            (&Check::TotalLoad, "210.23"),
            (&Check::ContinuousLoad, "210.20(A)")
        ]
    );
    let conductor = verdict(&answer, Check::ConductorAfter).now.unwrap();
    assert_eq!(conductor.value, 12.0);
    // What is planned on the other cable comes to the breaker as well.
    entry.beside[0].planned = true;
    let answer = judge(&entry).unwrap();
    assert_eq!(
        (answer.now.total_a, answer.after.unwrap().total_a),
        (12.0, 24.0)
    );
    // 210.23(B)(2): fixed equipment of both together, 6 + 6 A of 10 A.
    let mut fixed = circuit(20.0, vec![load(1, LoadKind::FixedInPlace, 6.0)]);
    fixed.beside = vec![load(2, LoadKind::FixedInPlace, 6.0)];
    assert_eq!(outcome(&fixed, Check::FixedLoad), Some(Outcome::Fails));
}

/// 310.3(A) (2017: 310.106(A)), 334.104, Table 310.15(B)(1)(1): a conductor that no circuit may have fails.
#[test]
fn a_conductor_that_may_not_be_there_fails() {
    let of = |size, metal, covering, ambient| {
        let mut entry = circuit(15.0, vec![load(1, LoadKind::CordAndPlug, 1.0)]);
        entry.conductor.size = size;
        (entry.conductor.metal, entry.conductor.covering) = (metal, covering);
        entry.ambient = Ambient::Fahrenheit(ambient);
        entry
    };
    let cool = 86.0;
    let nm = Covering::NmB;
    for (entry, check, section, before) in [
        (
            of(Size::Awg18, Metal::Copper, Covering::Thhn, cool),
            Check::LeastSize,
            "310.3(A)",
            "310.106(A)",
        ),
        (
            of(Size::Awg16, Metal::Copper, nm, cool),
            Check::LeastSize,
            "310.3(A)",
            "310.106(A)",
        ),
        (
            of(Size::Awg14, Metal::Aluminum, nm, cool),
            Check::LeastSize,
            "310.3(A)",
            "310.106(A)",
        ),
        (
            of(Size::Awg1_0, Metal::Copper, nm, cool),
            Check::SizeMade,
            "334.104",
            "334.104",
        ),
        (
            of(Size::Kcmil250, Metal::Copper, Covering::Uf, cool),
            Check::SizeMade,
            "340.104",
            "340.104",
        ),
        (
            of(Size::Awg14, Metal::Copper, Covering::NmOld, 150.0),
            Check::TooHot,
            "Table 310.15(B)(1)(1)",
            "Table 310.15(B)(2)(a)",
        ),
    ] {
        let answer = judge(&entry).unwrap();
        assert_eq!(failing(&answer), [(&check, section)]);
        let earlier = Circuit {
            edition: CodeEdition::E2017,
            ..entry
        };
        assert_eq!(failing(&judge(&earlier).unwrap()), [(&check, before)]);
    }
    // 240.4(D)(3): NFPA 70-2023 knows 14 AWG copper-clad aluminum, the editions before don't.
    let clad = of(Size::Awg14, Metal::CopperCladAluminum, Covering::Thhn, cool);
    assert_eq!(outcome(&clad, Check::LeastSize), None);
    let earlier = Circuit {
        edition: CodeEdition::E2020,
        ..clad
    };
    assert_eq!(outcome(&earlier, Check::LeastSize), Some(Outcome::Fails));
}

/// 210.23 holds for circuits of two or more outlets, however they are told: outlets, receptacles or loads.
#[test]
fn several_things_are_several_outlets() {
    for (outlets, receptacles, loads) in [(0, 2, 1), (1, 2, 1), (2, 0, 1), (1, 1, 2)] {
        let mut entry = circuit(15.0, vec![load(1, LoadKind::CordAndPlug, 13.0)]);
        entry.conductor.size = Size::Awg14;
        (entry.outlets, entry.receptacles) = (outlets, receptacles);
        if loads > 1 {
            entry.loads.push(load(2, LoadKind::FixedInPlace, 1.0));
        }
        // 80 % of 15 A is 12 A (210.23(B)(1)).
        assert_eq!(outcome(&entry, Check::PlugLoad), Some(Outcome::Fails));
        assert!(outcome(&entry, Check::CircuitRating).is_some());
    }
    let own = Circuit {
        outlets: 1,
        receptacles: 1,
        ..circuit(15.0, vec![load(1, LoadKind::CordAndPlug, 13.0)])
    };
    assert_eq!(outcome(&own, Check::PlugLoad), None);
}

/// 210.23(C), (D), Table 210.21(B)(3), 210.21(A) and (B)(1): no lights and no general receptacles above 20 A.
#[test]
fn large_circuits() {
    let of = |rating_a, kind, receptacles, edition| {
        let mut entry = circuit(rating_a, vec![load(1, kind, 5.0), load(2, kind, 5.0)]);
        entry.conductor.size = Size::Awg6;
        (entry.receptacles, entry.edition) = (receptacles, edition);
        entry
    };
    let (new, old) = (CodeEdition::E2023, CodeEdition::E2017);
    let fixed = LoadKind::FixedInPlace;
    for (rating_a, kind, edition, section) in [
        (30.0, LoadKind::Luminaire, new, "210.23(C)"),
        (30.0, LoadKind::Luminaire, old, "210.23(B)"),
        (40.0, LoadKind::Luminaire, new, "210.23(D)"),
        (50.0, LoadKind::CordAndPlug, new, "210.23(D)"),
        (50.0, LoadKind::WaterHeater, old, "210.23(C)"),
    ] {
        let answer = judge(&of(rating_a, kind, 0, edition)).unwrap();
        let found = verdict(&answer, Check::LargeCircuit);
        assert_eq!((found.outcome, found.section), (Outcome::Fails, section));
    }
    assert_eq!(
        outcome(&of(30.0, fixed, 0, new), Check::LargeCircuit),
        Some(Outcome::Passes)
    );
    assert_eq!(
        outcome(&of(40.0, fixed, 0, new), Check::LargeCircuit),
        Some(Outcome::Passes)
    );
    for rating_a in [30.0, 40.0, 50.0] {
        let answer = judge(&of(rating_a, fixed, 3, new)).unwrap();
        let found = verdict(&answer, Check::ReceptacleRating);
        assert_eq!(
            (found.outcome, found.section),
            (Outcome::Fails, "Table 210.21(B)(3)")
        );
    }
    assert_eq!(
        outcome(&of(20.0, fixed, 3, new), Check::ReceptacleRating),
        None
    );
    // A receptacle alone on its circuit: its rating has to be read from it.
    let mut dryer = alone(30.0, LoadKind::CordAndPlug, 20.0);
    (dryer.receptacles, dryer.volts, dryer.two_hots) = (1, 240.0, true);
    dryer.conductor.size = Size::Awg10;
    let answer = judge(&dryer).unwrap();
    let found = verdict(&answer, Check::ReceptacleRating);
    assert_eq!(
        (found.section, &found.why_not),
        (
            "210.21(B)(1)",
            &Some(NotJudged::ReceptacleRating { least_a: 30.0 })
        )
    );
    assert!(!answer.fails());
    let light = alone(30.0, LoadKind::Luminaire, 2.0);
    let answer = judge(&light).unwrap();
    assert_eq!(verdict(&answer, Check::LargeCircuit).section, "210.21(A)");
}

/// 430.22, 430.24: ampacity is of the conductor where it lies (Article 100). 12 AWG, nine together at 50 C: 17.22 A.
#[test]
fn a_motor_is_held_against_the_conductor_where_it_lies() {
    let mut entry = alone(20.0, LoadKind::Motor, 14.0);
    let answer = judge(&entry).unwrap();
    let found = verdict(&answer, Check::MotorConductor);
    assert_eq!(
        (found.section, found.now.unwrap().value, found.outcome),
        ("430.22", 17.5, Outcome::Passes)
    );
    (entry.ambient, entry.carrying) = (Ambient::Celsius(50.0), 9);
    let answer = judge(&entry).unwrap();
    let found = verdict(&answer, Check::MotorConductor);
    assert!((found.now.unwrap().limit - 17.22).abs() < 1e-9);
    assert_eq!(found.outcome, Outcome::Fails);
    // Several: 125 % of the largest, the other, and the rest with 125 % of what is continuous.
    let lights = CircuitLoad {
        continuous: true,
        ..load(3, LoadKind::Luminaire, 2.0)
    };
    let several = circuit(
        20.0,
        vec![
            load(1, LoadKind::Motor, 4.0),
            load(2, LoadKind::Motor, 6.0),
            lights,
        ],
    );
    let answer = judge(&several).unwrap();
    let found = verdict(&answer, Check::MotorConductor);
    assert_eq!((found.section, found.now.unwrap().value), ("430.24", 14.0));
}

/// 430.6(A)(1): the current of a motor comes from Table 430.248, 16 A for 1 hp at 115 V (from memory); 746 W over 120 V
/// would be 6.2 A.
#[test]
fn a_motor_in_watts_is_refused() {
    let mut entry = alone(20.0, LoadKind::Motor, 0.0);
    entry.loads[0].takes = Takes::Watts(746.0);
    assert_eq!(judge(&entry), Err(CircuitRefusal::MotorWatts { id: 1 }));
}

/// 422.11(E)(2), (3): 4500 W at 240 V take 18.75 A, 150 % are 28.1 A: 30 A is the largest (V-BL-02).
#[test]
fn the_breaker_of_a_water_heater() {
    let of = |rating_a, amps| {
        let mut entry = alone(rating_a, LoadKind::WaterHeater, amps);
        (entry.volts, entry.two_hots, entry.conductor.size) = (240.0, true, Size::Awg6);
        let answer = judge(&entry).unwrap();
        let found = verdict(&answer, Check::ApplianceBreaker).clone();
        (found.outcome, found.section, found.now.unwrap().limit)
    };
    assert_eq!(of(30.0, 18.75), (Outcome::Passes, "422.11(E)(3)", 30.0));
    assert_eq!(of(35.0, 18.75), (Outcome::Fails, "422.11(E)(3)", 30.0));
    assert_eq!(of(25.0, 12.0), (Outcome::Fails, "422.11(E)(2)", 20.0));
}

/// 210.12, 210.8(A), 406.4(D): what hangs on the room is named where something is added, and never passes in silence.
#[test]
fn what_hangs_on_the_room_is_named() {
    let mut entry = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 3.0)]);
    assert_eq!(outcome(&entry, Check::ArcFault), None);
    entry.loads[0].planned = true;
    for (edition, arc) in [
        (CodeEdition::E2017, "210.12(A)"),
        (CodeEdition::E2020, "210.12(A)"),
        (CodeEdition::E2023, "210.12(B)"),
    ] {
        entry.edition = edition;
        let answer = judge(&entry).unwrap();
        for (check, section) in [
            (Check::ArcFault, arc),
            (Check::GroundFault, "210.8(A)"),
            (Check::Replacement, "406.4(D)"),
        ] {
            let found = verdict(&answer, check);
            assert_eq!(
                (found.outcome, found.section, &found.why_not),
                (Outcome::NotJudged, section, &Some(NotJudged::ByTheRoom))
            );
        }
    }
}

/// 210.19(A) and 210.20(A), exceptions: listed for its whole rating, conductor and breaker carry the load at 100 %.
#[test]
fn full_rating_frees_breaker_and_conductor() {
    let lights = CircuitLoad {
        continuous: true,
        ..load(1, LoadKind::Luminaire, 18.0)
    };
    let mut entry = circuit(20.0, vec![lights]);
    let both = [Check::ContinuousLoad, Check::ConductorBefore];
    let of = |entry: &Circuit| both.clone().map(|check| outcome(entry, check).unwrap());
    assert_eq!(of(&entry), [Outcome::Fails; 2]);
    entry.full_rating = true;
    assert_eq!(of(&entry), [Outcome::Passes; 2]);
}

/// The paragraph that governs is the one that is named: 240.4(D)(4) for 14 AWG, 240.4(B) for the next rating.
#[test]
fn the_breaker_is_held_by_the_paragraph_that_governs() {
    let mut entry = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 3.0)]);
    entry.conductor.size = Size::Awg14;
    entry.conductor.covering = Covering::Thhn;
    entry.terminals = calc::wiring::ampacity::Terminals::C75;
    let section = |entry: &Circuit| {
        let answer = judge(entry).unwrap();
        let found = verdict(&answer, Check::BreakerForConductor);
        (found.section, found.now.unwrap().limit, found.outcome)
    };
    assert_eq!(section(&entry), ("240.4(D)(4)", 15.0, Outcome::Fails));
    entry.edition = CodeEdition::E2020;
    assert_eq!(section(&entry).0, "240.4(D)(3)");
    // 6 AWG at 60 C: 55 A, the next standard rating is 60 A.
    let mut range = alone(60.0, LoadKind::SpaceHeating, 40.0);
    (range.volts, range.two_hots, range.conductor.size) = (240.0, true, Size::Awg6);
    assert_eq!(section(&range), ("240.4(B)", 60.0, Outcome::Passes));
    // 25 x 0.5 = 12.5 A: no rating is left for receptacles, and the breaker is held against that.
    let mut hot = circuit(15.0, vec![load(1, LoadKind::CordAndPlug, 3.0)]);
    (hot.conductor.size, hot.carrying) = (Size::Awg14, 20);
    let (_, limit_a, fails) = section(&hot);
    assert_eq!((limit_a, fails), (12.5, Outcome::Fails));
}

/// 210.23(A) is of circuits of several outlets; in 2017 and 2020 a 10 A circuit of one outlet was never forbidden (210.3).
#[test]
fn ten_amperes_for_one_outlet() {
    let entry = alone(10.0, LoadKind::FixedInPlace, 5.0);
    assert_eq!(outcome(&entry, Check::TenAmp), None);
    let plug = Circuit {
        receptacles: 1,
        ..entry
    };
    assert_eq!(outcome(&plug, Check::TenAmp), Some(Outcome::Fails));
}

/// The neutral as it is and as it will be; facts of it that nobody looked at are open.
#[test]
fn the_neutral_now_and_after() {
    let of = |amps| Neutral {
        edition: CodeEdition::E2023,
        returns: [(0, 6.0), (1, amps)]
            .map(|(pole, a)| {
                Returning::of(&breaker(1, 1, BreakerForm::TwoPole), pole, 0, a, 0.0).unwrap()
            })
            .to_vec(),
        ampacity_a: Some(20.0),
        runs_with_hots: Some(true),
        pigtailed: None,
    };
    let mut entry = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 6.0)]);
    (entry.neutral, entry.neutral_after) = (Some(of(4.0)), Some(of(16.0)));
    let answer = judge(&entry).unwrap();
    let found = verdict(&answer, Check::NeutralLoad);
    assert_eq!(
        (found.now.unwrap().value, found.after.unwrap().value),
        (6.0, 16.0)
    );
    assert_eq!(
        verdict(&answer, Check::NeutralWhole).outcome,
        Outcome::NotJudged
    );
    assert!(
        !answer
            .verdicts
            .iter()
            .any(|v| v.check == Check::NeutralTogether)
    );
}

/// What electronic loads add at worst is a bound and no certainty: better not, by 310.15(E). 14 and 14 A that never flow at
/// one time make 19.8 A, by their squares.
#[test]
fn the_bound_of_electronic_loads_is_advice() {
    let of = |ampacity_a| {
        let two = breaker(1, 1, BreakerForm::TwoPole);
        let neutral = Neutral {
            edition: CodeEdition::E2023,
            returns: [0, 1]
                .map(|pole| Returning::of(&two, pole, 0, 14.0, 14.0).unwrap())
                .to_vec(),
            ampacity_a: Some(ampacity_a),
            runs_with_hots: Some(true),
            pigtailed: Some(true),
        };
        let mut entry = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 14.0)]);
        entry.neutral = Some(neutral);
        let answer = judge(&entry).unwrap();
        let found = verdict(&answer, Check::NeutralLoad);
        (found.outcome, found.section, found.now.unwrap().value)
    };
    let (outcome, section, value) = of(15.0);
    assert_eq!((outcome, section), (Outcome::Advised, "310.15(E)"));
    assert!((value - 14.0 * 2f64.sqrt()).abs() < 1e-9);
    assert_eq!(of(20.0), (Outcome::Passes, "210.19(A)", 14.0));
    assert_eq!(of(13.0), (Outcome::Fails, "210.19(A)", 14.0));
}

/// 215.2, informational note: 3 % for a feeder alone.
#[test]
fn the_drop_of_the_feeder() {
    let mut entry = circuit(20.0, Vec::new());
    entry.feeder_percent = 3.5;
    let answer = judge(&entry).unwrap();
    let found = verdict(&answer, Check::FeederDrop);
    assert_eq!(
        (found.outcome, found.section),
        (Outcome::Advised, "215.2 informational note")
    );
    entry.feeder_percent = 3.0;
    assert_eq!(outcome(&entry, Check::FeederDrop), Some(Outcome::Passes));
}
