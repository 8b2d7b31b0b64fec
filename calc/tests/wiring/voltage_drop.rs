//! Voltage drop: runs with one and several loads, sizes, measured voltages.

use std::fs;
use std::path::PathBuf;

use calc::job::CodeEdition;
use calc::wiring::conductor::{Construction, Metal, Size};
use calc::wiring::impedance::{ImpedanceRefusal, Method, Wire, impedance};
use calc::wiring::measured_drop::{
    GivenRun, MeasuredDrop, MeasuredFinding, MeasuredRefusal, Readings, implied,
};
use calc::wiring::tables::{ALPHA_COPPER_PER_C, Conduit, RESISTANCE};
use calc::wiring::voltage_drop::{
    Across, Demand, DropFinding, DropLoad, DropRefusal, Run, SingleLoad, Stretch, System,
    VoltageDrop, longest_run, max_resistance_ohm_per_kft, smallest_for_drop, step_up, voltage_drop,
};
use proptest::prelude::*;
use serde_json::Value;

use crate::data::size;
use crate::worked::{Example, examples};

fn wire(example: &Example) -> Wire {
    let metal = match example.text("material") {
        "cu" => Metal::Copper,
        "al" => Metal::Aluminum,
        other => panic!("{other}"),
    };
    let conduit = match example.text("conduit") {
        "" | "pvc" => Conduit::Pvc,
        other => panic!("{other}"),
    };
    let method = match example.text("method") {
        "table8_dc" | "" => Method::Resistance {
            construction: Some(construction(example.text("construction"))),
            coated: false,
        },
        "table9_ac" => Method::Impedance {
            conduit,
            power_factor: example.number("pf"),
        },
        "table9_z085_printed" => Method::Printed085 { conduit },
        other => panic!("{other}"),
    };
    Wire {
        metal,
        method,
        conductor_c: 75.0,
    }
}

fn construction(text: &str) -> Construction {
    match text {
        "solid" => Construction::Solid,
        "stranded" => Construction::Stranded,
        other => panic!("{other}"),
    }
}

fn load(demand: Demand, across: Across) -> DropLoad {
    DropLoad { demand, across }
}

fn run(system: System, size: Size, wire: Wire, stretches: Vec<Stretch>) -> Run {
    Run {
        edition: CodeEdition::E2023,
        system,
        source_volts: None,
        source_ohm: 0.0,
        size,
        wire,
        parallel: 1,
        stretches,
        feeder_percent: 0.0,
    }
}

fn one(length_ft: f64, loads: Vec<DropLoad>) -> Vec<Stretch> {
    vec![Stretch { length_ft, loads }]
}

fn amps(amps: f64) -> Vec<DropLoad> {
    vec![load(Demand::Amps(amps), Across::A)]
}

const HOUSE: System = System::TwoWire { volts: 120.0 };

#[test]
fn worked_examples() {
    for example in examples("voltage_drop") {
        assert_eq!(example.text("circuit"), "two_wire");
        let system = System::TwoWire {
            volts: example.number("volts"),
        };
        let stretches = one(
            example.number("one_way_ft"),
            amps(example.number("current_A")),
        );
        let answer = voltage_drop(&run(
            system,
            size(example.text("size")),
            wire(&example),
            stretches,
        ))
        .unwrap();
        example.check(|key| {
            match key {
                "r_ohm_kft" | "ze_ohm_kft" => answer.ohm_per_kft,
                "drop_V" => answer.worst_v,
                "drop_pct" => answer.worst_percent,
                other => panic!("{other}"),
            }
            .into()
        });
    }
}

#[test]
fn worked_multiwire() {
    for example in examples("voltage_drop_multiwire") {
        assert_eq!(example.number("power_factor"), 1.0);
        let method = Method::Resistance {
            construction: Some(construction(example.text("construction"))),
            coated: false,
        };
        let loads = vec![
            load(Demand::Amps(example.number("leg_a_A")), Across::A),
            load(Demand::Amps(example.number("leg_b_A")), Across::B),
        ];
        let answer = voltage_drop(&run(
            System::Multiwire { leg_volts: 120.0 },
            size(example.text("size")),
            Wire {
                method,
                ..Wire::COPPER
            },
            one(example.number("one_way_ft"), loads),
        ))
        .unwrap();
        let point = &answer.points[0];
        example.check(|key| {
            match key {
                "neutral_A" => point.neutral_a.unwrap(),
                "drop_a_V" => point.a.drop_v,
                "drop_b_V" => point.b.unwrap().drop_v,
                other => panic!("{other}"),
            }
            .into()
        });
        let rises = answer
            .findings
            .iter()
            .any(|f| matches!(f, DropFinding::LegRises { .. }));
        assert_eq!(rises, point.b.unwrap().drop_v < -1e-9);
    }
}

#[test]
fn worked_totals() {
    for example in examples("voltage_drop_total") {
        let of = |part: &str| {
            let method = Method::Resistance {
                construction: Some(construction(example.text(&format!("{part}_construction")))),
                coated: false,
            };
            run(
                System::TwoWire {
                    volts: example.number(&format!("{part}_volts")),
                },
                size(example.text(&format!("{part}_size"))),
                Wire {
                    method,
                    ..Wire::COPPER
                },
                one(
                    example.number(&format!("{part}_ft")),
                    amps(example.number(&format!("{part}_A"))),
                ),
            )
        };
        let feeder = voltage_drop(&of("feeder")).unwrap();
        let mut branch = of("branch");
        branch.feeder_percent = feeder.worst_percent;
        let branch = voltage_drop(&branch).unwrap();
        example.check(|key| match key {
            "feeder_pct" => feeder.worst_percent.into(),
            "branch_pct" => branch.worst_percent.into(),
            "total_pct" => branch.total_percent.into(),
            "within_5_pct" => branch.within_total.into(),
            other => panic!("{other}"),
        });
    }
}

fn single(example: &Example) -> SingleLoad {
    SingleLoad {
        edition: CodeEdition::E2023,
        system: System::TwoWire {
            volts: example.number("volts"),
        },
        current_a: example.number("current_A"),
        current_b_a: 0.0,
        wire: wire(example),
        parallel: 1,
        limit_percent: example.number("limit_pct"),
    }
}

#[test]
fn worked_longest_and_smallest() {
    for example in examples("max_length") {
        let answer = longest_run(size(example.text("size")), &single(&example)).unwrap();
        example.check(|key| match key {
            "max_one_way_ft" => answer.length_ft.into(),
            other => panic!("{other}"),
        });
    }
    for example in examples("min_size_for_drop") {
        let answer = smallest_for_drop(example.number("one_way_ft"), &single(&example)).unwrap();
        example.check(|key| match key {
            "max_r_ohm_kft" => answer.max_ohm_per_kft.into(),
            "size" => answer.size.text().into(),
            "drop_V" => answer.drop_v.into(),
            "drop_pct" => answer.drop_percent.into(),
            other => panic!("{other}"),
        });
    }
}

#[test]
fn worked_temperature() {
    for example in examples("temp_resistance") {
        assert_eq!(example.number("alpha"), ALPHA_COPPER_PER_C);
        let row = RESISTANCE
            .iter()
            .find(|row| row.copper_ohm_per_kft == example.number("r_75_ohm_kft"))
            .unwrap();
        let method = Method::Resistance {
            construction: Some(row.construction),
            coated: false,
        };
        let there = Wire {
            method,
            conductor_c: example.number("temp_C"),
            ..Wire::COPPER
        };
        let answer = impedance(row.size, &there, CodeEdition::E2023).unwrap();
        example.check(|key| match key {
            "r_ohm_kft" => answer.effective_ohm_per_kft.into(),
            other => panic!("{other}"),
        });
    }
}

/// Four outlets in a row, against ngspice: volts within 1e-6, amperes to the printed digits.
#[test]
fn multi_drop_against_a_circuit_simulator() {
    let path =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/data/electrical/multi_drop.json");
    let data: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let case = &data["case"];
    let element = |name: &str| {
        let all = case["elements"].as_array().unwrap();
        all.iter().find(|e| e["name"] == name).unwrap()["value"]
            .as_f64()
            .unwrap()
    };
    // 14 AWG solid copper, 3.07 ohm per 1000 ft: the lengths that the resistances were made from.
    let mut lengths_ft = Vec::new();
    for at in 1..=4 {
        assert_eq!(element(&format!("hot{at}")), element(&format!("white{at}")));
        lengths_ft.push(element(&format!("hot{at}")) / 0.00307);
    }
    let with_meter_at = |meter: Option<usize>| {
        let stretches = (1..=4)
            .map(|at| {
                let mut loads = vec![load(Demand::Ohms(element(&format!("load{at}"))), Across::A)];
                if meter == Some(at) {
                    loads.push(load(Demand::Ohms(1e7), Across::A));
                }
                Stretch {
                    length_ft: lengths_ft[at - 1],
                    loads,
                }
            })
            .collect();
        let mut run = run(HOUSE, Size::Awg14, Wire::COPPER, stretches);
        run.source_volts = case["sources"][0]["volts"].as_f64();
        run.source_ohm = element("feeder1") + element("breaker");
        voltage_drop(&run).unwrap()
    };
    let state = &case["states"][0];
    let readings = state["readings"].as_array().unwrap();
    assert_eq!(readings.len(), 4);
    for (at, reading) in readings.iter().enumerate() {
        assert_eq!(reading["from"], format!("h{}", at + 1));
        assert_eq!(reading["meter_ohm"], 1e7);
        let volts = with_meter_at(Some(at + 1)).points[at].a.volts;
        assert!(
            (volts - reading["volts_rms"].as_f64().unwrap()).abs() < 1e-6,
            "{volts} {reading}"
        );
    }
    for current in state["currents"].as_array().unwrap() {
        let at: usize = current["element"].as_str().unwrap()[3..].parse().unwrap();
        let amps = with_meter_at(None).points[at - 1].current_a;
        assert!(
            (amps - current["amps_rms"].as_f64().unwrap()).abs() < 1e-6,
            "{amps} {current}"
        );
    }
}

/// Fixed currents along a run by hand: 14 AWG, 3.07 ohm per 1000 ft; 5 A at 30 ft, 3 A 20 ft further.
#[test]
fn several_loads_by_hand() {
    let stretches = vec![
        Stretch {
            length_ft: 30.0,
            loads: amps(5.0),
        },
        Stretch {
            length_ft: 20.0,
            loads: vec![load(Demand::Watts(360.0), Across::A)],
        },
    ];
    let run = run(HOUSE, Size::Awg14, Wire::COPPER, stretches);
    let answer = voltage_drop(&run).unwrap();
    let first = 2.0 * 8.0 * 30.0 * 3.07 / 1000.0;
    let second = 2.0 * 3.0 * 20.0 * 3.07 / 1000.0;
    assert!((answer.points[0].a.drop_v - first).abs() < 1e-9);
    assert!((answer.points[1].a.drop_v - first - second).abs() < 1e-9);
    assert!((answer.points[1].a.volts - (120.0 - first - second)).abs() < 1e-9);
    let lost = 2.0 * (8.0 * 8.0 * 30.0 + 3.0 * 3.0 * 20.0) * 3.07 / 1000.0;
    assert!((answer.lost_w - lost).abs() < 1e-9);
    let profile = answer.profile(&run).unwrap();
    let at: Vec<_> = profile.iter().map(|p| (p.at_ft, p.volts_a)).collect();
    assert_eq!(
        at,
        [
            (0.0, 120.0),
            (30.0, answer.points[0].a.volts),
            (50.0, answer.points[1].a.volts)
        ]
    );
}

/// Three phase by the formula, and two conductors in parallel as one of half the resistance.
#[test]
fn three_phase_and_parallel() {
    let system = System::ThreePhase { volts: 208.0 };
    let wire = Wire {
        method: Method::Impedance {
            conduit: Conduit::Steel,
            power_factor: 0.9,
        },
        ..Wire::COPPER
    };
    let mut run = run(system, Size::Awg1_0, wire, one(200.0, amps(150.0)));
    let ze = 0.12 * 0.9 + 0.055 * (1.0f64 - 0.81).sqrt();
    let expected = 3f64.sqrt() * 150.0 * 200.0 * ze / 1000.0;
    assert!((voltage_drop(&run).unwrap().worst_v - expected).abs() < 1e-9);
    run.parallel = 2;
    assert!((voltage_drop(&run).unwrap().worst_v - expected / 2.0).abs() < 1e-9);
    run.size = Size::Awg2;
    assert!(
        voltage_drop(&run)
            .unwrap()
            .findings
            .contains(&DropFinding::ParallelTooSmall { size: Size::Awg2 })
    );
}

/// P = 1.732 V I PF, and heat in each of three conductors.
#[test]
fn three_phase_power() {
    let wire = Wire {
        method: Method::Impedance {
            conduit: Conduit::Pvc,
            power_factor: 0.8,
        },
        ..Wire::COPPER
    };
    let watts = 3f64.sqrt() * 208.0 * 50.0 * 0.8;
    let loads = vec![load(Demand::Watts(watts), Across::A)];
    let system = System::ThreePhase { volts: 208.0 };
    let answer = voltage_drop(&run(system, Size::Awg6, wire, one(100.0, loads))).unwrap();
    assert!((answer.points[0].current_a - 50.0).abs() < 1e-9);
    assert!((answer.lost_w - 3.0 * 2500.0 * 0.049).abs() < 1e-9);
}

/// A 240 V load on a multiwire run leaves the neutral alone; a resistance leg to leg is solved with both legs.
#[test]
fn leg_to_leg() {
    let system = System::Multiwire { leg_volts: 120.0 };
    let both = |demand| vec![load(demand, Across::Both)];
    let fixed = voltage_drop(&run(
        system,
        Size::Awg10,
        Wire::COPPER,
        one(100.0, both(Demand::Watts(4800.0))),
    ))
    .unwrap();
    assert_eq!(fixed.points[0].neutral_a, Some(0.0));
    assert!((fixed.points[0].current_a - 20.0).abs() < 1e-9);
    assert!((fixed.points[0].both.unwrap().drop_v - 2.0 * 20.0 * 0.121).abs() < 1e-9);
    // 12 ohm behind 0.242 ohm of loop: 240 x 12 / 12.242.
    let ohmic = voltage_drop(&run(
        system,
        Size::Awg10,
        Wire::COPPER,
        one(100.0, both(Demand::Ohms(12.0))),
    ))
    .unwrap();
    assert!((ohmic.points[0].both.unwrap().volts - 240.0 * 12.0 / 12.242).abs() < 1e-9);
    // Unequal resistances on the legs, against Kirchhoff's laws at the found voltages.
    let loads = vec![
        load(Demand::Ohms(10.0), Across::A),
        load(Demand::Ohms(40.0), Across::B),
        load(Demand::Ohms(24.0), Across::Both),
    ];
    let answer = voltage_drop(&run(system, Size::Awg12, Wire::COPPER, one(100.0, loads))).unwrap();
    let (point, r) = (&answer.points[0], 0.193);
    let (va, vb) = (point.a.volts, point.b.unwrap().volts);
    let (ia, ib) = (va / 10.0 + (va + vb) / 24.0, vb / 40.0 + (va + vb) / 24.0);
    assert!((point.current_a - ia).abs() < 1e-9 && (point.current_b_a.unwrap() - ib).abs() < 1e-9);
    assert!((120.0 - va - ia * r - (ia - ib) * r).abs() < 1e-9);
    assert!((120.0 - vb - ib * r + (ia - ib) * r).abs() < 1e-9);
}

/// Each system's own factor, by solving the run that the formula says is the longest.
#[test]
fn the_longest_run_of_each_system() {
    for (system, loads) in [
        (HOUSE, amps(20.0)),
        (System::ThreePhase { volts: 208.0 }, amps(20.0)),
        (
            System::Multiwire { leg_volts: 120.0 },
            vec![
                load(Demand::Amps(20.0), Across::A),
                load(Demand::Amps(20.0), Across::B),
            ],
        ),
    ] {
        let single = SingleLoad {
            edition: CodeEdition::E2023,
            system,
            current_a: 20.0,
            current_b_a: if matches!(system, System::Multiwire { .. }) {
                20.0
            } else {
                0.0
            },
            wire: Wire::COPPER,
            parallel: 1,
            limit_percent: 3.0,
        };
        let length_ft = longest_run(Size::Awg10, &single).unwrap().length_ft;
        let solved = run(system, Size::Awg10, Wire::COPPER, one(length_ft, loads));
        let answer = voltage_drop(&solved).unwrap();
        assert!((answer.worst_percent - 3.0).abs() < 1e-9, "{system:?}");
        let smallest = smallest_for_drop(length_ft, &single).unwrap();
        assert_eq!(smallest.size, Size::Awg10);
        assert!((smallest.drop_v - answer.worst_v).abs() < 1e-9);
    }
}

/// The worse leg of an unbalanced run, by Kirchhoff's laws: Ia R + (Ia - Ib) R. Table 8: 1.93 ohm per 1000 ft.
#[test]
fn an_unbalanced_multiwire_run_is_sized_by_its_worse_leg() {
    let of = |current_a, current_b_a| SingleLoad {
        edition: CodeEdition::E2023,
        system: System::Multiwire { leg_volts: 120.0 },
        current_a,
        current_b_a,
        wire: Wire::COPPER,
        parallel: 1,
        limit_percent: 3.0,
    };
    let longest = |load: &SingleLoad| longest_run(Size::Awg12, load).unwrap().length_ft;
    // All on one leg it is a two-wire run: 3.6 x 1000 / (2 x 15 x 1.93).
    assert!((longest(&of(15.0, 0.0)) - 62.176).abs() < 1e-3);
    assert!((longest(&of(0.0, 15.0)) - 62.176).abs() < 1e-3);
    assert!((longest(&of(15.0, 15.0)) - 124.352).abs() < 1e-3);
    // V-VD-12: 15 and 5 A lose 3.86 V on leg A over 80 ft.
    let length_ft = longest(&of(15.0, 5.0));
    assert!((length_ft - 80.0 * 3.6 / 3.86).abs() < 1e-6);
    let legs = vec![
        load(Demand::Amps(15.0), Across::A),
        load(Demand::Amps(5.0), Across::B),
    ];
    let multiwire = System::Multiwire { leg_volts: 120.0 };
    let solved = run(multiwire, Size::Awg12, Wire::COPPER, one(length_ft, legs));
    assert!((voltage_drop(&solved).unwrap().worst_percent - 3.0).abs() < 1e-9);
    let smallest = smallest_for_drop(80.0, &of(15.0, 5.0)).unwrap();
    assert_eq!(smallest.size, Size::Awg10);
    assert!(longest_run(Size::Awg12, &of(0.0, 0.0)).is_err());
}

/// 310.3(A): nothing below 14 AWG copper and 12 AWG aluminum; 310.10(G): in parallel nothing below 1/0.
#[test]
fn only_sizes_that_a_circuit_may_have_are_proposed() {
    let of = |metal, parallel| {
        let load = SingleLoad {
            edition: CodeEdition::E2023,
            system: HOUSE,
            current_a: 1.0,
            current_b_a: 0.0,
            wire: Wire {
                metal,
                ..Wire::COPPER
            },
            parallel,
            limit_percent: 3.0,
        };
        smallest_for_drop(10.0, &load).unwrap().size
    };
    assert_eq!(of(Metal::Copper, 1), Size::Awg14);
    assert_eq!(of(Metal::Aluminum, 1), Size::Awg12);
    assert_eq!(of(Metal::Copper, 2), Size::Awg1_0);
    assert_eq!(of(Metal::Aluminum, 4), Size::Awg1_0);
}

/// The working is of the leg that loses more, and its figures give its result.
#[test]
fn the_working_of_a_multiwire_run_adds_up() {
    let legs = vec![
        load(Demand::Amps(3.0), Across::A),
        load(Demand::Amps(15.0), Across::B),
    ];
    let multiwire = System::Multiwire { leg_volts: 120.0 };
    let answer = voltage_drop(&run(multiwire, Size::Awg12, Wire::COPPER, one(80.0, legs))).unwrap();
    let step = answer
        .steps
        .iter()
        .find(|step| step.formula == "drop_multiwire")
        .unwrap();
    let of = |name| step.inputs.iter().find(|f| f.name == name).unwrap().value;
    assert_eq!((of("current"), of("other_leg")), (15.0, 3.0));
    let by_hand = (2.0 * 15.0 - 3.0) * 80.0 * 1.93 / 1000.0;
    assert!((step.result.value - by_hand).abs() < 1e-9);
    assert!((answer.worst_v - by_hand).abs() < 1e-9);
}

#[test]
fn a_size_more() {
    let run = run(HOUSE, Size::Awg14, Wire::COPPER, one(80.0, amps(12.0)));
    let up = step_up(&run).unwrap().unwrap();
    assert_eq!(up.next, Size::Awg12);
    // I^2 R there and back: 144 x 0.16 kft x 3.07 or 1.93 ohm.
    assert!((up.lost_w - 144.0 * 0.16 * 3.07).abs() < 1e-9);
    assert!((up.saved_w - 144.0 * 0.16 * (3.07 - 1.93)).abs() < 1e-9);
    let largest = Run {
        size: Size::Kcmil500,
        ..run
    };
    assert_eq!(step_up(&largest).unwrap(), None);
}

#[test]
fn what_is_refused() {
    let good = run(HOUSE, Size::Awg12, Wire::COPPER, one(50.0, amps(10.0)));
    assert!(voltage_drop(&good).is_ok());
    let refused = |run: &Run| voltage_drop(run).unwrap_err();
    for length_ft in [-1.0, 0.0, f64::NAN, f64::INFINITY, 1e6] {
        assert!(matches!(
            refused(&Run {
                stretches: one(length_ft, amps(1.0)),
                ..good.clone()
            }),
            DropRefusal::Length { .. }
        ));
    }
    for bad in [-1.0, f64::NAN, f64::INFINITY, 1e7] {
        for demand in [Demand::Amps(bad), Demand::Watts(bad * 100.0)] {
            let stretches = one(10.0, vec![load(demand, Across::A)]);
            assert!(matches!(
                refused(&Run {
                    stretches,
                    ..good.clone()
                }),
                DropRefusal::Load { stretch: 0, .. }
            ));
        }
    }
    for ohm in [0.0, -5.0, f64::NAN, f64::INFINITY] {
        let stretches = one(10.0, vec![load(Demand::Ohms(ohm), Across::A)]);
        assert!(matches!(
            refused(&Run {
                stretches,
                ..good.clone()
            }),
            DropRefusal::Load { .. }
        ));
    }
    for volts in [0.0, -120.0, f64::NAN, 1e5] {
        assert!(matches!(
            refused(&Run {
                system: System::TwoWire { volts },
                ..good.clone()
            }),
            DropRefusal::Volts { .. }
        ));
        assert!(matches!(
            refused(&Run {
                source_volts: Some(volts),
                ..good.clone()
            }),
            DropRefusal::Volts { .. }
        ));
    }
    assert_eq!(
        refused(&Run {
            stretches: Vec::new(),
            ..good.clone()
        }),
        DropRefusal::NoStretch
    );
    assert_eq!(
        refused(&Run {
            parallel: 0,
            ..good.clone()
        }),
        DropRefusal::Parallel { parallel: 0 }
    );
    assert!(matches!(
        refused(&Run {
            source_ohm: -1.0,
            ..good.clone()
        }),
        DropRefusal::SourceOhm { .. }
    ));
    assert!(matches!(
        refused(&Run {
            feeder_percent: f64::NAN,
            ..good.clone()
        }),
        DropRefusal::FeederPercent { .. }
    ));
    assert!(matches!(
        refused(&Run {
            stretches: one(10.0, vec![load(Demand::Amps(1.0), Across::B)]),
            ..good.clone()
        }),
        DropRefusal::Across {
            across: Across::B,
            ..
        }
    ));
    assert!(matches!(
        refused(&Run {
            stretches: one(5000.0, amps(100.0)),
            ..good.clone()
        }),
        DropRefusal::NothingLeft { .. }
    ));
    let ac = Wire {
        method: Method::Impedance {
            conduit: Conduit::Pvc,
            power_factor: 0.8,
        },
        ..Wire::COPPER
    };
    let ohms = one(10.0, vec![load(Demand::Ohms(10.0), Across::A)]);
    assert_eq!(
        refused(&Run {
            wire: ac,
            stretches: ohms,
            ..good.clone()
        }),
        DropRefusal::Ohms { stretch: 0 }
    );

    let refused = |size, wire| impedance(size, &wire, CodeEdition::E2023).unwrap_err();
    let with = |method| Wire {
        method,
        ..Wire::COPPER
    };
    let solid = Method::Resistance {
        construction: Some(Construction::Solid),
        coated: false,
    };
    assert!(matches!(
        refused(Size::Awg6, with(solid)),
        ImpedanceRefusal::Conductor(_)
    ));
    assert!(matches!(
        refused(Size::Kcmil250, ac),
        ImpedanceRefusal::Conductor(_)
    ));
    assert!(matches!(
        refused(
            Size::Awg14,
            Wire {
                metal: Metal::Aluminum,
                ..ac
            }
        ),
        ImpedanceRefusal::Conductor(_)
    ));
    let clad = Wire {
        metal: Metal::CopperCladAluminum,
        ..Wire::COPPER
    };
    assert!(matches!(
        refused(Size::Awg12, clad),
        ImpedanceRefusal::Conductor(_)
    ));
    for power_factor in [0.0, -0.5, 1.01, f64::NAN] {
        let method = Method::Impedance {
            conduit: Conduit::Pvc,
            power_factor,
        };
        assert!(matches!(
            refused(Size::Awg12, with(method)),
            ImpedanceRefusal::PowerFactor { .. }
        ));
    }
    for conductor_c in [-100.0, 500.0, f64::NAN] {
        assert!(matches!(
            refused(
                Size::Awg12,
                Wire {
                    conductor_c,
                    ..Wire::COPPER
                }
            ),
            ImpedanceRefusal::Temperature { .. }
        ));
    }
    let printed = with(Method::Printed085 {
        conduit: Conduit::Pvc,
    });
    assert!(matches!(
        refused(
            Size::Awg12,
            Wire {
                conductor_c: 40.0,
                ..printed
            }
        ),
        ImpedanceRefusal::PrintedAt75 { .. }
    ));

    let load = SingleLoad {
        edition: CodeEdition::E2023,
        system: HOUSE,
        current_a: 16.0,
        current_b_a: 0.0,
        wire: Wire::COPPER,
        parallel: 1,
        limit_percent: 3.0,
    };
    for percent in [0.0, -3.0, 100.0, f64::NAN] {
        assert!(matches!(
            longest_run(
                Size::Awg12,
                &SingleLoad {
                    limit_percent: percent,
                    ..load
                }
            ),
            Err(DropRefusal::Limit { .. })
        ));
    }
    assert!(matches!(
        max_resistance_ohm_per_kft(-5.0, &load),
        Err(DropRefusal::Length { .. })
    ));
    assert!(matches!(
        smallest_for_drop(
            9000.0,
            &SingleLoad {
                current_a: 200.0,
                ..load
            }
        ),
        Err(DropRefusal::NoSize { .. })
    ));
}

#[test]
fn measured_voltages() {
    let measured = MeasuredDrop {
        edition: CodeEdition::E2023,
        supply: Some(Readings {
            idle_v: 121.4,
            loaded_v: 120.8,
        }),
        load: Readings {
            idle_v: 121.4,
            loaded_v: 117.2,
        },
        current_a: 12.0,
        meter_step_v: 0.1,
        run: Some(GivenRun {
            length_ft: 40.0,
            size: Size::Awg14,
            wire: Wire::COPPER,
        }),
    };
    // Ohm's law by hand: 0.6 / 12 ahead of the panel, 3.6 / 12 beyond it, of which 2 x 40 x 0.00307 is the run.
    let answer = implied(&measured).unwrap();
    assert!((answer.source_ohm.unwrap() - 0.05).abs() < 1e-9);
    assert!((answer.run_ohm - 0.3).abs() < 1e-9);
    assert!((answer.expected_ohm.unwrap() - 0.2456).abs() < 1e-9);
    assert!((answer.excess_ohm.unwrap() - 0.0544).abs() < 1e-9);
    assert!((answer.excess_run_ft.unwrap() - 0.0544 / 0.00614).abs() < 1e-6);
    assert!((answer.uncertainty_ohm - 0.2 / 12.0).abs() < 1e-9);
    assert!(matches!(
        answer.findings[..],
        [MeasuredFinding::MoreThanTheRun { heat_w, .. }] if (heat_w - 0.0544 * 144.0).abs() < 1e-6
    ));
    let longer = GivenRun {
        length_ft: 80.0,
        size: Size::Awg14,
        wire: Wire::COPPER,
    };
    let less = implied(&MeasuredDrop {
        run: Some(longer),
        ..measured
    })
    .unwrap();
    assert!(matches!(
        less.findings[..],
        [MeasuredFinding::LessThanTheRun { .. }]
    ));
    let rising = MeasuredDrop {
        supply: None,
        run: None,
        load: Readings {
            idle_v: 120.0,
            loaded_v: 128.0,
        },
        ..measured
    };
    let answer = implied(&rising).unwrap();
    assert_eq!(
        answer.findings,
        [MeasuredFinding::RisesUnderLoad { volts: 8.0 }]
    );
    assert_eq!((answer.source_ohm, answer.excess_ohm), (None, None));
    // 15 V of 120 lost at the panel by 12 A: 1.25 ohm, 180 W; nothing on the run. Ohm's law by hand.
    let source = MeasuredDrop {
        supply: Some(Readings {
            idle_v: 120.0,
            loaded_v: 105.0,
        }),
        load: Readings {
            idle_v: 120.0,
            loaded_v: 102.0528,
        },
        ..measured
    };
    let answer = implied(&source).unwrap();
    assert!(
        matches!(answer.findings[..], [MeasuredFinding::HighSource { source_ohm, heat_w }]
            if (source_ohm - 1.25).abs() < 1e-9 && (heat_w - 180.0).abs() < 1e-9),
        "{:?}",
        answer.findings
    );
    // Without a run nobody can say that the wire explains it.
    let unknown = |loaded_v| {
        let load = Readings {
            idle_v: 120.0,
            loaded_v,
        };
        let asked = MeasuredDrop {
            supply: None,
            run: None,
            load,
            ..measured
        };
        implied(&asked).unwrap().findings
    };
    assert!(
        matches!(unknown(114.0)[..], [MeasuredFinding::LostInUnknownRun { percent, heat_w }]
        if (percent - 5.0).abs() < 1e-9 && (heat_w - 72.0).abs() < 1e-9)
    );
    assert!(
        matches!(unknown(119.0)[..], [MeasuredFinding::RunNotKnown { heat_w }]
        if (heat_w - 12.0).abs() < 1e-9)
    );
    let differing = MeasuredDrop {
        supply: Some(Readings {
            idle_v: 119.0,
            loaded_v: 118.4,
        }),
        ..measured
    };
    assert!(matches!(
        implied(&differing).unwrap().findings[0],
        MeasuredFinding::IdleReadingsDiffer { .. }
    ));
    for current_a in [0.0, -2.0, f64::NAN, 1e9] {
        assert!(matches!(
            implied(&MeasuredDrop {
                current_a,
                ..measured
            }),
            Err(MeasuredRefusal::Current { .. })
        ));
    }
    let dead = Readings {
        idle_v: 120.0,
        loaded_v: 0.0,
    };
    assert_eq!(
        implied(&MeasuredDrop {
            load: dead,
            ..measured
        }),
        Err(MeasuredRefusal::Volts { volts: 0.0 })
    );
    let nowhere = GivenRun {
        length_ft: -1.0,
        size: Size::Awg14,
        wire: Wire::COPPER,
    };
    assert_eq!(
        implied(&MeasuredDrop {
            run: Some(nowhere),
            ..measured
        }),
        Err(MeasuredRefusal::Length { length_ft: -1.0 })
    );
}

fn any_method() -> impl Strategy<Value = Method> {
    prop_oneof![
        Just(Method::Resistance {
            construction: None,
            coated: false
        }),
        Just(Method::Resistance {
            construction: None,
            coated: true
        }),
        (0.3..1.0f64).prop_map(|power_factor| Method::Impedance {
            conduit: Conduit::Pvc,
            power_factor
        }),
    ]
}

fn any_stretches() -> impl Strategy<Value = Vec<Stretch>> {
    let demand = prop_oneof![
        (0.0..4.0f64).prop_map(Demand::Amps),
        (0.0..500.0f64).prop_map(Demand::Watts),
    ];
    let across = prop::sample::select(vec![Across::A, Across::B, Across::Both]);
    let loads = prop::collection::vec((demand, across).prop_map(|(d, a)| load(d, a)), 0..3);
    prop::collection::vec(
        (1.0..60.0f64, loads).prop_map(|(length_ft, loads)| Stretch { length_ft, loads }),
        1..5,
    )
}

proptest! {
    #[test]
    fn a_larger_conductor_never_drops_more(
        method in any_method(), length_ft in 1.0..200.0f64, current in 0.1..30.0f64, copper in prop::bool::ANY,
    ) {
        let metal = if copper { Metal::Copper } else { Metal::Aluminum };
        let wire = Wire { metal, method, conductor_c: 75.0 };
        let drops: Vec<VoltageDrop> = Size::ALL[2..]
            .iter()
            .filter_map(|&size| voltage_drop(&run(HOUSE, size, wire, one(length_ft, amps(current)))).ok())
            .collect();
        prop_assert!(drops.len() > 5);
        for pair in drops.windows(2) {
            prop_assert!(pair[1].worst_v <= pair[0].worst_v + 1e-12);
            prop_assert!(pair[1].lost_w <= pair[0].lost_w + 1e-12);
        }
    }

    #[test]
    fn currents_and_power_balance(stretches in any_stretches(), source_ohm in 0.0..0.1f64) {
        let mut run = run(System::Multiwire { leg_volts: 120.0 }, Size::Awg12, Wire::COPPER, stretches);
        run.source_ohm = source_ohm;
        let answer = voltage_drop(&run).unwrap();
        // What goes in at 120 V on each leg is what the loads take, what the run turns into heat and what the source does.
        let first = &answer.points[0];
        let (ia, ib) = (first.current_a, first.current_b_a.unwrap());
        let taken: f64 = run.stretches.iter().zip(&answer.points).map(|(stretch, point)| {
            stretch.loads.iter().map(|load| {
                let (volts, nominal) = match load.across {
                    Across::A => (point.a.volts, 120.0),
                    Across::B => (point.b.unwrap().volts, 120.0),
                    Across::Both => (point.both.unwrap().volts, 240.0),
                };
                match load.demand {
                    Demand::Amps(amps) => amps * volts,
                    Demand::Watts(watts) => watts / nominal * volts,
                    Demand::Ohms(ohm) => volts * volts / ohm,
                }
            }).sum::<f64>()
        }).sum();
        let lost = answer.lost_w + source_ohm * (ia * ia + ib * ib);
        prop_assert!((120.0 * (ia + ib) - taken - lost).abs() < 1e-6);
    }

    #[test]
    fn the_longest_run_just_keeps_its_limit(current_a in 0.5..100.0f64, limit_percent in 0.5..10.0f64, method in any_method()) {
        let wire = Wire { method, ..Wire::COPPER };
        let load = SingleLoad { edition: CodeEdition::E2023, system: HOUSE, current_a, current_b_a: 0.0, wire, parallel: 1, limit_percent };
        let length_ft = longest_run(Size::Awg8, &load).unwrap().length_ft;
        prop_assume!(length_ft < 9000.0);
        let answer = voltage_drop(&run(HOUSE, Size::Awg8, wire, one(length_ft, amps(current_a)))).unwrap();
        prop_assert!((answer.worst_percent - limit_percent).abs() < 1e-9);
        let smallest = smallest_for_drop(length_ft, &load).unwrap();
        prop_assert!(smallest.size <= Size::Awg8 && smallest.drop_percent <= limit_percent + 1e-9);
    }
}
