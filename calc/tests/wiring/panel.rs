//! Panels and their supply.

use std::fs;
use std::path::PathBuf;

use calc::job::CodeEdition;
use calc::wiring::panel::{
    Bars, Breaker, BreakerForm, Confirmed, FedBy, Half, Leg, Mounting, Panel, PanelFinding,
    PanelRefusal, Place, Protection, TandemSpaces, lay_out, leg_of, place_of, share_leg,
};
use calc::wiring::supply::{
    NeutralEvidence, Standing, Supply, SupplyFinding, SupplyReadings, SupplyRefusal, Urgency, judge,
};
use calc::wiring::tables::VoltagePlace;
use proptest::prelude::*;
use serde_json::Value;

pub fn breaker(id: u32, space: u32, form: BreakerForm) -> Breaker {
    Breaker {
        id,
        space,
        form,
        rating_a: 20.0,
        protection: Protection::Plain,
        tied_to: None,
        label: format!("outlets {id}"),
        confirmed: Confirmed::SwitchedOff,
    }
}

fn panel(breakers: Vec<Breaker>) -> Panel {
    Panel {
        edition: CodeEdition::E2023,
        spaces: 42,
        rating_a: Some(200.0),
        main_a: Some(200.0),
        feeder_device_a: None,
        most_circuits: None,
        mounting: Mounting::Upright,
        fed_by: FedBy::Service,
        bars: Bars::Joined,
        tandems: TandemSpaces::Listed(vec![16, 18]),
        breakers,
    }
}

const SINGLE: BreakerForm = BreakerForm::Single;
const TWO: BreakerForm = BreakerForm::TwoPole;
const HALF_A: BreakerForm = BreakerForm::Tandem(Half::A);
const HALF_B: BreakerForm = BreakerForm::Tandem(Half::B);

/// Common practice: across a row one leg, down a column the legs in turn.
#[test]
fn legs() {
    for space in 1..=82 {
        assert_eq!(share_leg(space, space + 1), space % 2 == 1);
        assert!(!share_leg(space, space + 2));
        assert!(space > 80 || share_leg(space, space + 4));
    }
    assert_eq!(
        (leg_of(16), leg_of(15), leg_of(13)),
        (Leg::B, Leg::B, Leg::A)
    );
    assert_eq!(breaker(1, 2, TWO).legs(), [Leg::A, Leg::B]);
}

#[test]
fn positions() {
    let layout = lay_out(&panel(vec![
        breaker(1, 16, HALF_B),
        breaker(2, 16, HALF_A),
        breaker(3, 1, TWO),
        breaker(4, 42, SINGLE),
    ]))
    .unwrap();
    let numbers: Vec<&str> = layout.positions.iter().map(|p| p.number.as_str()).collect();
    assert_eq!(numbers[..3], ["1-3", "2", "4"]);
    assert!(numbers.windows(2).any(|pair| pair == ["16A", "16B"]));
    assert_eq!((layout.free_spaces, layout.poles, layout.rows), (38, 5, 21));
    assert!(layout.findings.is_empty(), "{:?}", layout.findings);
    let of = |number: &str| {
        layout
            .positions
            .iter()
            .find(|p| p.number == number)
            .unwrap()
    };
    // The halves of a tandem are on one leg, the poles of a two-pole breaker on both.
    assert_eq!(
        (&of("16A").legs, &of("16B").legs),
        (&vec![Leg::B], &vec![Leg::B])
    );
    assert_eq!(of("1-3").legs, [Leg::A, Leg::B]);
    assert_eq!(of("42").places, [Place { column: 1, row: 20 }]);
}

#[test]
fn upside_down_only_the_drawing_changes() {
    let upright = panel(vec![breaker(1, 1, TWO), breaker(2, 6, SINGLE)]);
    let inverted = Panel {
        mounting: Mounting::Inverted,
        ..upright.clone()
    };
    let (up, down) = (lay_out(&upright).unwrap(), lay_out(&inverted).unwrap());
    for (a, b) in up.positions.iter().zip(&down.positions) {
        assert_eq!(
            (&a.number, &a.legs, &a.spaces, a.breaker),
            (&b.number, &b.legs, &b.spaces, b.breaker)
        );
        for (a, b) in a.places.iter().zip(&b.places) {
            assert_eq!((a.column + b.column, a.row + b.row), (1, 20));
        }
    }
    assert_eq!(
        place_of(42, 42, Mounting::Inverted),
        Place { column: 0, row: 0 }
    );
}

#[test]
fn what_is_refused() {
    let refused = |breakers| lay_out(&panel(breakers)).unwrap_err();
    // A two-pole breaker in the last odd space, and in the last even one.
    assert_eq!(
        refused(vec![breaker(1, 41, TWO)]),
        [PanelRefusal::NoSecondSpace { id: 1, space: 41 }]
    );
    assert_eq!(
        refused(vec![breaker(1, 42, TWO)]),
        [PanelRefusal::NoSecondSpace { id: 1, space: 42 }]
    );
    assert_eq!(
        refused(vec![breaker(1, 43, SINGLE)]),
        [PanelRefusal::NoSpace { id: 1, space: 43 }]
    );
    assert_eq!(
        refused(vec![breaker(1, 0, SINGLE)]),
        [PanelRefusal::NoSpace { id: 1, space: 0 }]
    );
    assert_eq!(
        refused(vec![breaker(1, 5, SINGLE), breaker(2, 5, SINGLE)]),
        [PanelRefusal::Taken {
            id: 2,
            other: 1,
            space: 5
        }]
    );
    assert_eq!(
        refused(vec![breaker(1, 5, TWO), breaker(2, 7, SINGLE)]),
        [PanelRefusal::Taken {
            id: 2,
            other: 1,
            space: 7
        }]
    );
    assert_eq!(
        refused(vec![breaker(1, 16, HALF_A), breaker(2, 16, HALF_A)]),
        [PanelRefusal::Taken {
            id: 2,
            other: 1,
            space: 16
        }]
    );
    assert_eq!(
        refused(vec![
            breaker(1, 16, HALF_A),
            breaker(2, 16, HALF_B),
            breaker(3, 16, SINGLE)
        ]),
        [
            PanelRefusal::Taken {
                id: 3,
                other: 1,
                space: 16
            },
            PanelRefusal::Taken {
                id: 3,
                other: 2,
                space: 16
            }
        ]
    );
    assert_eq!(
        refused(vec![breaker(1, 17, HALF_A)]),
        [PanelRefusal::NoTandem { id: 1, space: 17 }]
    );
    assert_eq!(
        refused(vec![breaker(1, 1, SINGLE), breaker(1, 2, SINGLE)]),
        [PanelRefusal::SameId { id: 1 }]
    );
    for rating_a in [0.0, -20.0, f64::INFINITY, 1e5] {
        let wrong = Breaker {
            rating_a,
            ..breaker(1, 1, SINGLE)
        };
        assert_eq!(
            refused(vec![wrong]),
            [PanelRefusal::Rating { id: 1, rating_a }]
        );
    }
    let tied = |tied_to| Breaker {
        tied_to: Some(tied_to),
        ..breaker(1, 1, SINGLE)
    };
    assert_eq!(
        refused(vec![tied(9)]),
        [PanelRefusal::Tie { id: 1, tied_to: 9 }]
    );
    assert_eq!(
        refused(vec![tied(1)]),
        [PanelRefusal::Tie { id: 1, tied_to: 1 }]
    );
    for spaces in [0, 85, u32::MAX] {
        let wrong = Panel {
            spaces,
            ..panel(Vec::new())
        };
        assert_eq!(
            lay_out(&wrong).unwrap_err(),
            [PanelRefusal::Spaces { spaces }]
        );
    }
    let wrong = Panel {
        main_a: Some(-1.0),
        ..panel(Vec::new())
    };
    assert_eq!(
        lay_out(&wrong).unwrap_err(),
        [PanelRefusal::PanelRating { rating_a: -1.0 }]
    );
    // Every problem is listed, not the first alone.
    assert_eq!(
        refused(vec![
            breaker(1, 50, SINGLE),
            breaker(2, 41, TWO),
            breaker(2, u32::MAX, TWO)
        ])
        .len(),
        4
    );
}

#[test]
fn findings() {
    let of = |panel: Panel| lay_out(&panel).unwrap().findings;
    let sub = Panel {
        fed_by: FedBy::Feeder,
        ..panel(Vec::new())
    };
    assert_eq!(
        of(sub.clone()),
        [PanelFinding::JoinedBeyondService {
            section: "250.142(B)"
        }]
    );
    assert!(
        of(Panel {
            bars: Bars::Separate,
            ..sub.clone()
        })
        .is_empty()
    );
    assert_eq!(
        of(Panel {
            bars: Bars::Separate,
            ..panel(Vec::new())
        }),
        [PanelFinding::NotBondedAtService { section: "250.24" }]
    );
    let shed = Panel {
        fed_by: FedBy::FeederFromOtherBuilding,
        bars: Bars::Separate,
        main_a: None,
        feeder_device_a: Some(225.0),
        ..panel(Vec::new())
    };
    assert_eq!(
        of(shed.clone()),
        [
            PanelFinding::AboveRating {
                device_a: 225.0,
                rating_a: 200.0,
                section: "408.36"
            },
            PanelFinding::NoDisconnect { section: "225.31" }
        ]
    );
    assert!(
        of(Panel {
            feeder_device_a: None,
            ..shed
        })
        .contains(&PanelFinding::NoProtectionKnown { section: "408.36" })
    );
    // A two-pole breaker counts two (408.54).
    let full = Panel {
        most_circuits: Some(2),
        ..panel(vec![breaker(1, 1, TWO), breaker(2, 2, SINGLE)])
    };
    assert_eq!(
        of(full),
        [PanelFinding::TooManyPoles {
            poles: 3,
            most: 2,
            section: "408.54"
        }]
    );
    let tandem = Panel {
        tandems: TandemSpaces::NotKnown,
        ..panel(vec![breaker(1, 9, HALF_A)])
    };
    assert_eq!(
        of(tandem),
        [PanelFinding::TandemNotChecked {
            breaker: 1,
            section: "408.54"
        }]
    );
    let labelled = |id, label: &str| Breaker {
        label: label.into(),
        ..breaker(id, id, SINGLE)
    };
    assert_eq!(
        of(panel(vec![
            labelled(1, "Kitchen"),
            labelled(2, " kitchen "),
            labelled(3, " ")
        ])),
        [
            PanelFinding::NoLabel {
                breaker: 3,
                section: "408.4(A)"
            },
            PanelFinding::SameLabel {
                breakers: vec![1, 2],
                section: "408.4(A)"
            }
        ]
    );
    let odd = Breaker {
        rating_a: 22.0,
        confirmed: Confirmed::NotConfirmed,
        ..breaker(1, 1, SINGLE)
    };
    assert_eq!(
        of(panel(vec![odd])),
        [
            PanelFinding::NotStandard {
                breaker: 1,
                rating_a: 22.0,
                section: "Table 240.6(A)"
            },
            PanelFinding::NotConfirmed { breaker: 1 }
        ]
    );
    // A handle tie across a row joins two poles of one leg.
    let tied = Breaker {
        tied_to: Some(2),
        ..breaker(1, 1, SINGLE)
    };
    assert_eq!(
        of(panel(vec![tied.clone(), breaker(2, 2, SINGLE)])),
        [PanelFinding::TieOnOneLeg {
            breaker: 1,
            other: 2,
            section: "Article 100"
        }]
    );
    assert!(of(panel(vec![tied.clone(), breaker(2, 3, SINGLE)])).is_empty());
    // 240.15(B): a tie joins neighbors, single poles of one rating.
    let cannot = [PanelFinding::TieCannotBe {
        breaker: 1,
        other: 2,
        section: "240.15(B)",
    }];
    let larger = Breaker {
        rating_a: 30.0,
        ..breaker(2, 3, SINGLE)
    };
    for other in [
        breaker(2, 7, SINGLE),
        breaker(2, 4, SINGLE),
        breaker(2, 3, TWO),
        larger,
    ] {
        assert_eq!(of(panel(vec![tied.clone(), other])), cannot);
    }
    let unknown = Panel {
        rating_a: None,
        ..panel(Vec::new())
    };
    assert_eq!(
        of(unknown),
        [PanelFinding::RatingNotKnown { section: "408.36" }]
    );
}

/// A breaker that can't be there takes nobody's place.
#[test]
fn a_refused_breaker_pushes_out_no_other() {
    let refused = |breakers| lay_out(&panel(breakers)).unwrap_err();
    // No tandem may be in space 3 of this panel.
    assert_eq!(
        refused(vec![breaker(1, 3, HALF_A), breaker(2, 3, SINGLE)]),
        [PanelRefusal::NoTandem { id: 1, space: 3 }]
    );
    // The two poles clash in space 1, so that space 3 is free.
    let clash = PanelRefusal::Taken {
        id: 2,
        other: 1,
        space: 1,
    };
    assert_eq!(
        refused(vec![
            breaker(1, 1, SINGLE),
            breaker(2, 1, TWO),
            breaker(3, 3, SINGLE)
        ]),
        [clash]
    );
}

fn readings(across_v: f64, a_neutral_v: f64, b_neutral_v: f64) -> SupplyReadings {
    SupplyReadings {
        across_v,
        a_neutral_v,
        b_neutral_v,
        a_ground_v: None,
        b_ground_v: None,
    }
}

fn service(idle: SupplyReadings) -> Supply {
    Supply {
        place: VoltagePlace::Service,
        idle,
        loaded: None,
    }
}

/// ANSI C84.1: service Range A 114 to 126 and 228 to 252, Range B 110 to 127 and 220 to 254; utilization from 108
/// and 104.
#[test]
fn ranges() {
    let of = |place, volts: f64| {
        let supply = Supply {
            place,
            ..service(readings(2.0 * volts, volts, volts))
        };
        judge(&supply)
            .unwrap()
            .judged
            .iter()
            .map(|j| j.standing)
            .collect::<Vec<_>>()
    };
    for (volts, service, utilization) in [
        (120.0, Standing::RangeA, Standing::RangeA),
        (114.0, Standing::RangeA, Standing::RangeA),
        (126.0, Standing::RangeA, Standing::RangeA),
        (113.9, Standing::RangeB, Standing::RangeA),
        (110.0, Standing::RangeB, Standing::RangeA),
        (109.9, Standing::Below, Standing::RangeA),
        (107.9, Standing::Below, Standing::RangeB),
        (103.9, Standing::Below, Standing::Below),
        (126.5, Standing::RangeB, Standing::RangeB),
        (127.1, Standing::Above, Standing::Above),
    ] {
        assert_eq!(of(VoltagePlace::Service, volts), [service; 3], "{volts}");
        assert_eq!(
            of(VoltagePlace::Utilization, volts),
            [utilization; 3],
            "{volts}"
        );
    }
}

/// Kirchhoff's laws, by hand: without any supply all is nothing; a lost leg hangs at the neutral, so that leg to leg is the
/// other leg alone. Neither says anything of the neutral or of the system.
#[test]
fn a_dead_supply_and_a_lost_leg() {
    let of = |idle| judge(&service(idle)).unwrap().findings;
    assert_eq!(
        of(readings(0.0, 0.0, 0.0)),
        [SupplyFinding::Dead { most_v: 0.0 }]
    );
    assert_eq!(
        of(readings(3.1, 1.7, 2.0)),
        [SupplyFinding::Dead { most_v: 3.1 }]
    );
    for (across_v, a_v, b_v, leg, volts) in [
        (121.0, 121.2, 0.3, Leg::B, 0.3),
        (118.0, 6.0, 120.0, Leg::A, 6.0),
    ] {
        assert_eq!(
            of(readings(across_v, a_v, b_v)),
            [SupplyFinding::LegLost { leg, volts }]
        );
    }
    // All of 240 V on one leg is a neutral at the other: that is no lost leg.
    assert!(matches!(
        of(readings(240.0, 236.0, 4.0))[0],
        SupplyFinding::NeutralFailing { .. }
    ));
}

#[test]
fn what_the_supply_says() {
    // Read without a load alone: that stands last in every one.
    let of = |idle| {
        let mut findings = judge(&service(idle)).unwrap().findings;
        let at = findings
            .iter()
            .position(|f| matches!(f, SupplyFinding::NotTestedUnderLoad { .. }));
        let SupplyFinding::NotTestedUnderLoad { nothing_else } = findings.remove(at.unwrap())
        else {
            unreachable!()
        };
        assert_eq!(nothing_else, findings.is_empty());
        findings
    };
    assert!(of(readings(240.2, 120.1, 120.3)).is_empty());
    let failing = of(readings(240.0, 120.0, 100.0));
    assert!(matches!(
        &failing[0],
        SupplyFinding::NeutralFailing { evidence } if evidence.len() == 2
            && matches!(evidence[0], NeutralEvidence::LegsDontAddUp { .. })
            && matches!(evidence[1], NeutralEvidence::LegsApart { .. })
    ));
    assert_eq!(failing[0].urgency(), Urgency::CallNow);
    // Two lines of 208Y/120 V: 1.73 times a leg, and nothing wrong with the neutral.
    assert_eq!(
        of(readings(208.0, 120.0, 120.2)),
        [SupplyFinding::TwoLinesOfWye { across_v: 208.0 }]
    );
    assert_eq!(
        of(readings(0.4, 120.0, 119.8)),
        [SupplyFinding::OneLegOnBoth { across_v: 0.4 }]
    );
    let high = of(readings(256.0, 128.0, 128.0));
    assert_eq!(high.len(), 3);
    assert!(
        high.iter()
            .all(|f| matches!(f, SupplyFinding::OutOfRange(_)))
    );
    assert!(matches!(
        of(readings(230.0, 113.0, 117.0))[..],
        [SupplyFinding::InRangeB(_)]
    ));
    assert!(
        of(readings(240.0, 122.5, 117.5)).contains(&SupplyFinding::LegsUneven { apart_v: 5.0 })
    );
    let off_ground = SupplyReadings {
        a_ground_v: Some(123.0),
        ..readings(240.0, 120.0, 120.0)
    };
    assert_eq!(
        of(off_ground),
        [SupplyFinding::NeutralOffGround {
            leg: Leg::A,
            volts: 3.0
        }]
    );
    // 1500 W on leg A: it falls and the other rises.
    let swing = Supply {
        loaded: Some(readings(239.0, 114.5, 124.5)),
        ..service(readings(240.0, 119.5, 120.5))
    };
    assert!(matches!(
        &judge(&swing).unwrap().findings[0],
        SupplyFinding::NeutralFailing { evidence }
            if evidence.contains(&NeutralEvidence::LegsSwing { rising: Leg::B, rise_v: 4.0, fall_v: 5.0 })
    ));
    // One leg rises and the other hardly falls: the supply itself has changed.
    let risen = Supply {
        loaded: Some(readings(242.5, 123.2, 119.4)),
        ..service(readings(240.0, 120.0, 120.0))
    };
    assert!(judge(&risen).unwrap().findings.is_empty());
    // Both legs sag together: a weak supply, not a failing neutral.
    let sag = Supply {
        loaded: Some(readings(236.0, 118.0, 118.0)),
        ..service(readings(240.0, 120.0, 120.0))
    };
    assert!(judge(&sag).unwrap().findings.is_empty());
    for volts in [-1.0, f64::INFINITY, 1e4] {
        assert_eq!(
            judge(&service(readings(volts, 120.0, 120.0))),
            Err(SupplyRefusal::Volts { volts })
        );
    }
    assert!(judge(&service(readings(240.0, f64::NAN, 120.0))).is_err());
}

/// A circuit simulator's house with a sound service neutral, and with it open but for an earth rod.
#[test]
fn a_lost_neutral_against_a_circuit_simulator() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data/electrical/service_neutral.json");
    let data: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let of = |state: usize| {
        let readings = data["case"]["states"][state]["readings"]
            .as_array()
            .unwrap();
        let volts = |from: &str, to: &str| {
            let reading = readings
                .iter()
                .find(|r| r["from"] == from && r["to"] == to)
                .unwrap();
            reading["volts_rms"].as_f64().unwrap()
        };
        self::readings(volts("L1", "L2"), volts("L1", "M"), volts("L2", "M"))
    };
    let failing = |supply: &Supply| {
        judge(supply)
            .unwrap()
            .findings
            .iter()
            .any(|f| f.urgency() == Urgency::CallNow)
    };
    assert!(!failing(&service(of(0))));
    assert!(failing(&service(of(1))));
}

proptest! {
    #[test]
    fn every_space_is_shown_once(
        spaces in 2u32..=84,
        picks in prop::collection::vec((1u32..=84, prop::sample::select(vec![SINGLE, TWO, HALF_A, HALF_B])), 0..30),
    ) {
        let mut panel = Panel { spaces, tandems: TandemSpaces::All, ..panel(Vec::new()) };
        // Breakers that have no place are left out, as a user would be told to.
        for (id, (space, form)) in picks.into_iter().enumerate() {
            panel.breakers.push(breaker(id as u32, space, form));
            if lay_out(&panel).is_err() {
                panel.breakers.pop();
            }
        }
        let layout = lay_out(&panel).unwrap();
        let mut shown: Vec<u32> = layout.positions.iter().flat_map(|p| p.spaces.clone()).collect();
        shown.sort_unstable();
        shown.dedup();
        prop_assert_eq!(shown, (1..=spaces).collect::<Vec<_>>());
        prop_assert_eq!(layout.positions.iter().filter(|p| p.breaker.is_some()).count(), panel.breakers.len());
        let numbers: std::collections::BTreeSet<_> = layout.positions.iter().map(|p| p.number.clone()).collect();
        prop_assert_eq!(numbers.len(), layout.positions.len());
    }
}
