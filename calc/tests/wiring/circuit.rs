//! Circuits judged rule by rule.

use calc::job::CodeEdition;
use calc::wiring::ampacity::{Load, Terminals, min_rating_a};
use calc::wiring::box_fill::{Contents, EnteringCable, Vessel};
use calc::wiring::circuit::{
    Check, Circuit, CircuitAnswer, CircuitBox, CircuitLoad, CircuitRefusal, Compared, LoadKind,
    NotJudged, Outcome, Purpose, Takes, Verdict, judge, lighting_circuits, most_continuous_w,
};
use calc::wiring::conductor::{Conductor, Covering, Metal, Size};
use calc::wiring::impedance::Wire;
use calc::wiring::neutral::{Neutral, NeutralFinding, Returning};
use calc::wiring::panel::BreakerForm;
use calc::wiring::tables::{Ambient, breaker_at_least_a};
use calc::working::Unit;
use proptest::prelude::*;

use crate::panel::breaker;
use crate::worked::examples;

pub fn load(id: u32, kind: LoadKind, amps: f64) -> CircuitLoad {
    CircuitLoad {
        id,
        takes: Takes::Amps(amps),
        kind,
        continuous: false,
        planned: false,
        stretch: 0,
    }
}

pub fn circuit(breaker_a: f64, loads: Vec<CircuitLoad>) -> Circuit {
    Circuit {
        edition: CodeEdition::E2023,
        breaker_a,
        volts: 120.0,
        two_hots: false,
        full_rating: false,
        purpose: Purpose::General,
        receptacles: 3,
        outlets: 5,
        conductor: Conductor {
            size: Size::Awg12,
            metal: Metal::Copper,
            covering: Covering::NmB,
        },
        ambient: Ambient::Celsius(30.0),
        carrying: 2,
        terminals: Terminals::NotKnown,
        wire: Wire::COPPER,
        stretches_ft: vec![40.0],
        feeder_percent: 0.0,
        loads,
        beside: Vec::new(),
        boxes: Vec::new(),
        neutral: None,
        neutral_after: None,
    }
}

pub fn verdict(answer: &CircuitAnswer, check: Check) -> &Verdict {
    answer.verdicts.iter().find(|v| v.check == check).unwrap()
}

#[test]
fn worked_examples() {
    for example in examples("branch_load") {
        match example.text("kind") {
            "general_lighting" => {
                assert_eq!(example.number("va_per_ft2"), 3.0);
                let of = |rating_a| {
                    let area_ft2 = example.number("dwelling_area_ft2");
                    lighting_circuits(
                        area_ft2,
                        example.number("volts"),
                        rating_a,
                        CodeEdition::E2023,
                    )
                    .unwrap()
                };
                example.check(|key| match key {
                    "load_VA" => of(15.0).load_va.into(),
                    "load_A" => of(15.0).load_a.into(),
                    "circuits_15A" => f64::from(of(15.0).circuits).into(),
                    "circuits_20A" => f64::from(of(20.0).circuits).into(),
                    other => panic!("{other}"),
                });
            }
            "continuous_sizing" => {
                let load = Load {
                    continuous_a: example.number("continuous_A"),
                    other_a: example.number("noncontinuous_A"),
                };
                let min_a = min_rating_a(load).unwrap();
                // The circuit's own sum says the same.
                let mut continuous = self::load(1, LoadKind::FixedInPlace, load.continuous_a);
                continuous.continuous = true;
                let other = self::load(2, LoadKind::FixedInPlace, load.other_a);
                let sums = judge(&circuit(30.0, vec![continuous, other])).unwrap().now;
                assert!((sums.min_rating_a - min_a).abs() < 1e-9);
                example.check(|key| match key {
                    "min_rating_A" => min_a.into(),
                    "min_standard_ocpd_A" => breaker_at_least_a(min_a, CodeEdition::E2023)
                        .unwrap()
                        .into(),
                    other => panic!("{other}"),
                });
            }
            "permissible_load_210.23" => {
                assert_eq!(example.text("shared"), "yes");
                let fixed = load(
                    1,
                    LoadKind::FixedInPlace,
                    example.number("fixed_in_place_A"),
                );
                let plug = load(
                    2,
                    LoadKind::CordAndPlug,
                    example.number("largest_cord_plug_A"),
                );
                let answer =
                    judge(&circuit(example.number("rating_A"), vec![fixed, plug])).unwrap();
                let of = |check| {
                    let verdict = verdict(&answer, check);
                    (
                        verdict.now.unwrap().limit,
                        verdict.outcome == Outcome::Passes,
                    )
                };
                example.check(|key| match key {
                    "fixed_limit_A" => of(Check::FixedLoad).0.into(),
                    "cord_plug_limit_A" => of(Check::PlugLoad).0.into(),
                    "fixed_ok" => of(Check::FixedLoad).1.into(),
                    "cord_plug_ok" => of(Check::PlugLoad).1.into(),
                    other => panic!("{other}"),
                });
                assert_eq!(verdict(&answer, Check::FixedLoad).section, "210.23(B)(2)");
            }
            "max_continuous_watts" => {
                assert_eq!(example.number("power_factor"), 1.0);
                let watts =
                    most_continuous_w(example.number("volts"), example.number("rating_A")).unwrap();
                example.check(|key| match key {
                    "max_continuous_W" => watts.into(),
                    other => panic!("{other}"),
                });
            }
            other => panic!("{other}"),
        }
    }
}

/// A 1500 W heater is to go on a 15 A circuit with 4 A of lights; the numbers are Ohm's law and the sections' shares.
#[test]
fn before_and_after_an_addition() {
    let lights = CircuitLoad {
        continuous: true,
        ..load(1, LoadKind::Luminaire, 4.0)
    };
    let heater = CircuitLoad {
        takes: Takes::Watts(1500.0),
        planned: true,
        ..load(2, LoadKind::CordAndPlug, 0.0)
    };
    let mut entry = circuit(15.0, vec![lights, heater]);
    entry.conductor.size = Size::Awg14;
    entry.stretches_ft = vec![50.0];
    let answer = judge(&entry).unwrap();
    assert_eq!(
        (answer.now.total_a, answer.after.unwrap().total_a),
        (4.0, 16.5)
    );
    let total = verdict(&answer, Check::TotalLoad);
    assert_eq!(total.outcome, Outcome::Fails);
    assert_eq!(
        total.now,
        Some(Compared {
            value: 4.0,
            limit: 15.0,
            unit: Unit::Amps,
            kept: true
        })
    );
    assert_eq!(
        total.after,
        Some(Compared {
            value: 16.5,
            limit: 15.0,
            unit: Unit::Amps,
            kept: false
        })
    );
    assert_eq!(
        verdict(&answer, Check::ContinuousLoad).after.unwrap().value,
        17.5
    );
    assert_eq!(verdict(&answer, Check::PlugLoad).outcome, Outcome::Fails);
    assert_eq!(
        verdict(&answer, Check::BreakerForConductor).outcome,
        Outcome::Passes
    );
    // 2 x 16.5 x 50 x 3.07 / 1000 = 5.07 V, 4.2 %: a recommendation, no failure.
    let drop = verdict(&answer, Check::BranchDrop);
    assert_eq!(drop.outcome, Outcome::Advised);
    assert!((drop.after.unwrap().value - 2.0 * 16.5 * 0.05 * 3.07 / 1.2).abs() < 1e-9);
    assert_eq!(verdict(&answer, Check::TotalDrop).outcome, Outcome::Passes);
    // What fails stands first.
    assert!(answer.verdicts.is_sorted_by_key(|verdict| verdict.outcome));
    assert!(answer.fails());
    entry.loads.pop();
    let answer = judge(&entry).unwrap();
    assert!(!answer.fails() && answer.after.is_none());
}

#[test]
fn breaker_and_conductor() {
    // 14 AWG behind a 20 A breaker (240.4(D)).
    let mut entry = circuit(20.0, Vec::new());
    entry.conductor.size = Size::Awg14;
    let answer = judge(&entry).unwrap();
    let found = verdict(&answer, Check::BreakerForConductor);
    assert_eq!(
        (found.outcome, found.now.unwrap().limit),
        (Outcome::Fails, 15.0)
    );
    // Nine conductors bundled in an attic at 50 C: 30 x 0.82 x 0.7 = 17.22 A for 12 AWG, 15 A for its breaker.
    let mut attic = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 17.5)]);
    (attic.ambient, attic.carrying) = (Ambient::Celsius(50.0), 9);
    let answer = judge(&attic).unwrap();
    assert_eq!(
        verdict(&answer, Check::BreakerForConductor).outcome,
        Outcome::Fails
    );
    assert_eq!(
        verdict(&answer, Check::ConductorAfter).outcome,
        Outcome::Fails
    );
    assert_eq!(
        verdict(&answer, Check::ConductorBefore).outcome,
        Outcome::Passes
    );
    // A motor of 14 A: 17.5 A of conductor (430.24).
    let motor = judge(&circuit(20.0, vec![load(1, LoadKind::Motor, 14.0)])).unwrap();
    assert_eq!(
        verdict(&motor, Check::MotorConductor).now.unwrap().value,
        17.5
    );
    // Alone on its circuit a motor may have a larger breaker (240.4(G), Article 430): not judged here.
    let mut alone = circuit(40.0, vec![load(1, LoadKind::Motor, 14.0)]);
    (alone.outlets, alone.receptacles) = (1, 0);
    let answer = judge(&alone).unwrap();
    let found = verdict(&answer, Check::BreakerForConductor);
    assert_eq!(
        (found.outcome, found.section, &found.why_not),
        (Outcome::NotJudged, "240.4(G)", &Some(NotJudged::MotorAlone))
    );
    let odd = judge(&circuit(22.0, Vec::new())).unwrap();
    assert_eq!(verdict(&odd, Check::StandardRating).outcome, Outcome::Fails);
    assert_eq!(verdict(&odd, Check::CircuitRating).outcome, Outcome::Fails);
}

#[test]
fn motors_metal_and_full_rating() {
    // A motor that is continuous counts at 125 % once, not twice.
    let motor = CircuitLoad {
        continuous: true,
        ..load(1, LoadKind::Motor, 8.0)
    };
    let answer = judge(&circuit(20.0, vec![motor])).unwrap();
    let found = verdict(&answer, Check::MotorConductor).now.unwrap();
    assert_eq!(found.value, 10.0);
    // 18 A continuous on 20 A: too much, but for a device listed for its whole rating.
    let lights = CircuitLoad {
        continuous: true,
        ..load(1, LoadKind::Luminaire, 18.0)
    };
    let entry = circuit(20.0, vec![lights]);
    let outcome = |entry: &Circuit| {
        let answer = judge(entry).unwrap();
        verdict(&answer, Check::ContinuousLoad).outcome
    };
    assert_eq!(outcome(&entry), Outcome::Fails);
    let listed = Circuit {
        full_rating: true,
        ..entry.clone()
    };
    assert_eq!(outcome(&listed), Outcome::Passes);
    // The drop is of the conductor that is there: 12 AWG solid aluminum, 3.18 ohm per 1000 ft.
    let mut aluminum = entry;
    aluminum.conductor.metal = Metal::Aluminum;
    let answer = judge(&aluminum).unwrap();
    let drop = verdict(&answer, Check::BranchDrop).now.unwrap();
    assert!((drop.value - 2.0 * 18.0 * 0.04 * 3.18 / 1.2).abs() < 1e-9);
}

/// 424.4(B), 422.13: heating and water heaters count as continuous though nobody said so.
#[test]
fn what_counts_as_continuous() {
    for kind in [LoadKind::SpaceHeating, LoadKind::WaterHeater] {
        let mut entry = circuit(
            30.0,
            vec![CircuitLoad {
                takes: Takes::Watts(4500.0),
                ..load(1, kind, 0.0)
            }],
        );
        (entry.volts, entry.outlets, entry.receptacles) = (240.0, 1, 0);
        entry.conductor.size = Size::Awg10;
        let answer = judge(&entry).unwrap();
        assert_eq!(answer.now.min_rating_a, 23.4375);
        assert!(!answer.fails());
        // A circuit for one outlet knows no shares for appliances or fixed equipment.
        assert!(
            !answer
                .verdicts
                .iter()
                .any(|v| matches!(v.check, Check::FixedLoad | Check::PlugLoad))
        );
    }
}

#[test]
fn ten_amperes_and_required_circuits() {
    let mut lights = circuit(10.0, vec![load(1, LoadKind::Luminaire, 6.0)]);
    (lights.receptacles, lights.conductor.size) = (0, Size::Awg14);
    assert!(!judge(&lights).unwrap().fails());
    let with_plug = Circuit {
        receptacles: 1,
        ..lights.clone()
    };
    assert_eq!(
        verdict(&judge(&with_plug).unwrap(), Check::TenAmp).outcome,
        Outcome::Fails
    );
    let older = Circuit {
        edition: CodeEdition::E2020,
        ..lights
    };
    let answer = judge(&older).unwrap();
    assert_eq!(verdict(&answer, Check::TenAmp).outcome, Outcome::Fails);
    assert_eq!(
        verdict(&answer, Check::CircuitRating).outcome,
        Outcome::Fails
    );
    assert_eq!(
        verdict(&answer, Check::StandardRating).outcome,
        Outcome::Fails
    );

    let purpose = |purpose, rating_a, kind| {
        let answer = judge(&Circuit {
            purpose,
            ..circuit(rating_a, vec![load(1, kind, 3.0)])
        })
        .unwrap();
        [Check::RequiredRating, Check::RequiredLoads]
            .map(|check| verdict(&answer, check).outcome == Outcome::Passes)
    };
    let fan = LoadKind::ExhaustFan;
    assert_eq!(
        purpose(Purpose::SmallAppliance, 20.0, LoadKind::CordAndPlug),
        [true, true]
    );
    assert_eq!(
        purpose(Purpose::SmallAppliance, 15.0, LoadKind::Luminaire),
        [false, false]
    );
    assert_eq!(
        purpose(
            Purpose::Bathroom {
                one_bathroom: false
            },
            20.0,
            fan
        ),
        [true, false]
    );
    assert_eq!(
        purpose(Purpose::Bathroom { one_bathroom: true }, 20.0, fan),
        [true, true]
    );
}

#[test]
fn boxes_and_neutral() {
    let cable = EnteringCable {
        size: Size::Awg12,
        insulated: 2,
        ground: Some(Size::Awg12),
    };
    let contents = Contents {
        cables: vec![cable; 6],
        ..Contents::default()
    };
    let mut entry = circuit(20.0, vec![load(1, LoadKind::CordAndPlug, 10.0)]);
    // V-BF-06: six 12-2 cables need 30.375 in3 under the rule for grounds since 2020.
    entry.boxes = vec![CircuitBox {
        id: 7,
        vessel: Vessel::marked(30.3),
        contents: contents.clone(),
    }];
    let hot = |id, space| {
        Returning::of(&breaker(id, space, BreakerForm::Single), 0, 0, 10.0, 0.0).unwrap()
    };
    entry.neutral = Some(Neutral {
        edition: CodeEdition::E2023,
        returns: vec![hot(1, 1), hot(2, 3)],
        ampacity_a: Some(20.0),
        runs_with_hots: None,
        pigtailed: None,
    });
    let answer = judge(&entry).unwrap();
    let failing: Vec<&Verdict> = answer
        .verdicts
        .iter()
        .filter(|v| v.outcome == Outcome::Fails)
        .collect();
    assert_eq!(failing.len(), 2);
    assert_eq!(failing[0].check, Check::BoxFill { id: 7 });
    assert_eq!(failing[0].now.unwrap().value, 30.375);
    assert!(matches!(
        failing[1].check,
        Check::Neutral(NeutralFinding::NoCommonDisconnect { .. })
    ));
    assert_eq!(failing[1].section, "210.4(B)");
    entry.edition = CodeEdition::E2017;
    assert_eq!(
        verdict(&judge(&entry).unwrap(), Check::BoxFill { id: 7 }).outcome,
        Outcome::Passes
    );

    // One bad entry leaves the other verdicts standing.
    entry.boxes[0].vessel = Vessel::marked(-1.0);
    entry.conductor.size = Size::Kcmil500;
    entry.stretches_ft = vec![-5.0];
    entry.neutral.as_mut().unwrap().returns.clear();
    let answer = judge(&entry).unwrap();
    let why = |check| verdict(&answer, check).why_not.clone().unwrap();
    assert!(matches!(why(Check::BoxFill { id: 7 }), NotJudged::Box(_)));
    assert!(matches!(why(Check::ConductorAfter), NotJudged::Ampacity(_)));
    assert!(matches!(why(Check::BranchDrop), NotJudged::Drop(_)));
    assert!(matches!(why(Check::NeutralLoad), NotJudged::Neutral(_)));
    assert_eq!(verdict(&answer, Check::TotalLoad).outcome, Outcome::Passes);
    entry.stretches_ft = vec![5.0];
    entry.loads[0].stretch = 4;
    let answer = judge(&entry).unwrap();
    assert_eq!(
        verdict(&answer, Check::BranchDrop).why_not,
        Some(NotJudged::NoStretch {
            load: 1,
            stretch: 4
        })
    );
}

#[test]
fn what_is_refused() {
    for rating_a in [0.0, -15.0, f64::INFINITY] {
        assert_eq!(
            judge(&circuit(rating_a, Vec::new())),
            Err(CircuitRefusal::Breaker { rating_a })
        );
    }
    assert!(judge(&circuit(f64::NAN, Vec::new())).is_err());
    let silent = Circuit {
        volts: 0.0,
        ..circuit(20.0, Vec::new())
    };
    assert_eq!(judge(&silent), Err(CircuitRefusal::Volts { volts: 0.0 }));
    for amps in [-1.0, f64::NAN, 1e9] {
        let wrong = circuit(20.0, vec![load(3, LoadKind::Motor, amps)]);
        assert!(matches!(
            judge(&wrong),
            Err(CircuitRefusal::Load { id: 3, .. })
        ));
    }
    assert!(lighting_circuits(-1.0, 120.0, 15.0, CodeEdition::E2023).is_err());
    assert!(lighting_circuits(1500.0, 0.0, 15.0, CodeEdition::E2023).is_err());
    assert!(lighting_circuits(1500.0, 120.0, 0.0, CodeEdition::E2023).is_err());
    assert!(most_continuous_w(f64::NAN, 20.0).is_err() && most_continuous_w(240.0, -20.0).is_err());
}

fn any_loads() -> impl Strategy<Value = Vec<CircuitLoad>> {
    let kind = prop::sample::select(vec![
        LoadKind::Luminaire,
        LoadKind::CordAndPlug,
        LoadKind::FixedInPlace,
        LoadKind::WaterHeater,
        LoadKind::Motor,
    ]);
    prop::collection::vec((kind, 0.0..8.0f64, prop::bool::ANY, prop::bool::ANY), 0..6).prop_map(
        |loads| {
            loads
                .into_iter()
                .zip(0..)
                .map(|((kind, amps, continuous, planned), id)| CircuitLoad {
                    continuous,
                    planned,
                    ..load(id, kind, amps)
                })
                .collect()
        },
    )
}

proptest! {
    #[test]
    fn an_addition_never_helps(loads in any_loads()) {
        let answer = judge(&circuit(20.0, loads)).unwrap();
        for verdict in &answer.verdicts {
            if let (Some(now), Some(after)) = (verdict.now, verdict.after) {
                prop_assert!(after.value >= now.value - 1e-9 && after.limit == now.limit);
                prop_assert!(now.kept || !after.kept);
            }
        }
        prop_assert!(answer.verdicts.is_sorted_by_key(|verdict| verdict.outcome));
        prop_assert!(answer.now.min_rating_a >= answer.now.total_a - 1e-9);
    }
}
