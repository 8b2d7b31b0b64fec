//! Ampacity, breaker and smallest conductor.

use calc::job::CodeEdition;
use calc::wiring::ampacity::{
    Ampacity, AmpacityRefusal, BreakerGoverned, BreakerNote, Conditions, Feeds, Governed, Load,
    Terminals, TooSmall, Wanted, ampacity, min_rating_a, smallest_conductor,
};
use calc::wiring::bundle::{BundleRefusal, CableConductors, Grouping, NeutralUse, Together, count};
use calc::wiring::conductor::{
    Conductor, ConductorRefusal, Construction, Covering, Metal, Rating, Size,
};
use calc::wiring::tables::Ambient;
use calc::working::Source;
use proptest::prelude::*;

use crate::data::size;
use crate::worked::examples;

const PLAIN: Conditions = Conditions {
    edition: CodeEdition::E2023,
    ambient: Ambient::Celsius(30.0),
    carrying: 2,
    terminals: Terminals::NotKnown,
    feeds: Feeds::SeveralReceptacles,
};

fn nm(size: Size) -> Conductor {
    Conductor {
        size,
        metal: Metal::Copper,
        covering: Covering::NmB,
    }
}

#[test]
fn worked_examples() {
    for example in examples("ampacity") {
        let ambient = example.text("ambient");
        let (degrees, unit) = ambient.split_at(ambient.len() - 1);
        let degrees: f64 = degrees.parse().unwrap();
        let rating = match example.text("insulation_c") {
            "60" => Rating::C60,
            "75" => Rating::C75,
            "90" => Rating::C90,
            other => panic!("{other}"),
        };
        let conductor = Conductor {
            size: size(example.text("size")),
            metal: match example.text("material") {
                "cu" => Metal::Copper,
                "al" => Metal::Aluminum,
                other => panic!("{other}"),
            },
            covering: if example.text("nm_cable") == "yes" {
                Covering::NmB
            } else {
                Covering::Rated(rating)
            },
        };
        assert_eq!(conductor.covering.rating(), rating);
        for edition in [CodeEdition::E2017, CodeEdition::E2020, CodeEdition::E2023] {
            let conditions = Conditions {
                edition,
                ambient: match unit {
                    "C" => Ambient::Celsius(degrees),
                    "F" => Ambient::Fahrenheit(degrees),
                    other => panic!("{other}"),
                },
                carrying: example.text("current_carrying").parse().unwrap(),
                terminals: match example.text("termination_c") {
                    "60" => Terminals::C60,
                    "75" => Terminals::C75,
                    other => panic!("{other}"),
                },
                feeds: match example.text("circuit") {
                    "multi_receptacle" => Feeds::SeveralReceptacles,
                    "other" => Feeds::Other,
                    other => panic!("{other}"),
                },
            };
            let answer = ampacity(conductor, conditions).unwrap();
            example.check(|key| {
                match key {
                    "table_A" => answer.table_a,
                    "f_ambient" => answer.ambient_factor,
                    "f_count" => answer.count_factor,
                    "corrected_A" => answer.corrected_a,
                    "termination_limit_A" => answer.terminal_a,
                    "final_A" => answer.ampacity_a,
                    "max_ocpd_A" => answer.breaker.rating_a.unwrap(),
                    other => panic!("{other}"),
                }
                .into()
            });
            assert_eq!(answer.edition, edition);
        }
    }
}

/// Example 1 worked by hand in the reference notes: six 14 AWG 90 C conductors at 40 C.
#[test]
fn both_factors() {
    let wire = Conductor {
        covering: Covering::Thhn,
        ..nm(Size::Awg14)
    };
    let conditions = Conditions {
        ambient: Ambient::Celsius(40.0),
        carrying: 6,
        ..PLAIN
    };
    let answer = ampacity(wire, conditions).unwrap();
    assert!((answer.corrected_a - 18.2).abs() < 1e-9);
    assert_eq!(
        (answer.ampacity_a, answer.governed),
        (15.0, Governed::Terminals)
    );
    assert_eq!(answer.breaker.rating_a, Some(15.0));
}

#[test]
fn which_step_governed() {
    let of = |conductor, conditions| ampacity(conductor, conditions).unwrap().governed;
    let thhn = |size| Conductor {
        covering: Covering::Thhn,
        ..nm(size)
    };
    assert_eq!(
        of(
            Conductor {
                covering: Covering::Tw,
                ..nm(Size::Awg12)
            },
            PLAIN
        ),
        Governed::Table
    );
    assert_eq!(
        of(
            thhn(Size::Awg12),
            Conditions {
                carrying: 9,
                terminals: Terminals::C75,
                ..PLAIN
            }
        ),
        Governed::Count
    );
    assert_eq!(
        of(
            thhn(Size::Awg12),
            Conditions {
                ambient: Ambient::Celsius(70.0),
                ..PLAIN
            }
        ),
        Governed::Ambient
    );
    assert_eq!(
        of(
            thhn(Size::Awg12),
            Conditions {
                ambient: Ambient::Celsius(70.0),
                carrying: 9,
                ..PLAIN
            }
        ),
        Governed::AmbientAndCount
    );
    assert_eq!(
        of(
            nm(Size::Awg6),
            Conditions {
                terminals: Terminals::C75,
                ..PLAIN
            }
        ),
        Governed::Cable
    );
    // Not known: 60 C up to 1 AWG, 75 C above (110.14(C)(1)).
    let terminal = |size| ampacity(thhn(size), PLAIN).unwrap().terminal_rating;
    assert_eq!(
        (terminal(Size::Awg1), terminal(Size::Awg1_0)),
        (Rating::C60, Rating::C75)
    );
}

#[test]
fn every_step_names_its_source() {
    let answer = ampacity(nm(Size::Awg14), PLAIN).unwrap();
    let names: Vec<_> = answer.steps.iter().map(|step| step.formula).collect();
    assert_eq!(
        names,
        [
            "table_ampacity",
            "ambient_factor",
            "count_factor",
            "corrected_ampacity",
            "terminal_limit",
            "cable_limit",
            "ampacity",
            "breaker_at_most",
            "breaker_cap"
        ]
    );
    assert_eq!(
        answer.steps[0].source,
        Source::Published("NFPA 70-2023 Table 310.16")
    );
    assert_eq!(
        answer.steps[5].source,
        Source::Published("NFPA 70-2023 334.80")
    );
    let older = ampacity(
        nm(Size::Awg14),
        Conditions {
            edition: CodeEdition::E2017,
            ..PLAIN
        },
    )
    .unwrap();
    assert_eq!(
        older.steps[0].source,
        Source::Published("NFPA 70-2017 Table 310.15(B)(16)")
    );
}

/// 240.6(A): 10 A is a standard breaker from 2023 on; 210.18: it feeds no receptacles.
#[test]
fn the_ten_ampere_breaker() {
    let hot = Conditions {
        ambient: Ambient::Celsius(60.0),
        carrying: 10,
        ..PLAIN
    };
    // 14 AWG THHN: 25 x 0.71 x 0.5 = 8.875 A.
    let wire = Conductor {
        covering: Covering::Thhn,
        ..nm(Size::Awg14)
    };
    let of = |edition, feeds| {
        ampacity(
            wire,
            Conditions {
                edition,
                feeds,
                ..hot
            },
        )
        .unwrap()
        .breaker
    };
    let lights = of(CodeEdition::E2023, Feeds::Other);
    assert_eq!(
        (lights.rating_a, lights.governed),
        (Some(10.0), BreakerGoverned::Next)
    );
    assert_eq!(lights.notes, [BreakerNote::TenAmpOnly]);
    assert_eq!(of(CodeEdition::E2020, Feeds::Other).rating_a, Some(15.0));
    for edition in [CodeEdition::E2017, CodeEdition::E2020, CodeEdition::E2023] {
        let plugs = of(edition, Feeds::SeveralReceptacles);
        assert_eq!(plugs.rating_a, None);
        assert!(matches!(
            plugs.notes[..],
            [BreakerNote::NotForReceptacles { .. }]
        ));
    }
}

/// 25 x 0.71 x 0.8 = 14.2 A: between 10 and 15 A there is nothing for receptacles, though 10 A is a rating.
#[test]
fn below_fifteen_amperes_for_receptacles() {
    let wire = Conductor {
        covering: Covering::Thhn,
        ..nm(Size::Awg14)
    };
    let hot = Conditions {
        ambient: Ambient::Celsius(60.0),
        carrying: 4,
        ..PLAIN
    };
    let answer = ampacity(wire, hot).unwrap();
    assert!((answer.ampacity_a - 14.2).abs() < 1e-9);
    assert_eq!(answer.breaker.rating_a, None);
    assert!(matches!(
        answer.breaker.notes[..],
        [BreakerNote::NotForReceptacles { .. }]
    ));
    let lights = Conditions {
        feeds: Feeds::Other,
        ..hot
    };
    assert_eq!(ampacity(wire, lights).unwrap().breaker.rating_a, Some(15.0));
}

#[test]
fn counting() {
    let of =
        |cables: &[CableConductors], grouping| count(cables, grouping, CodeEdition::E2023).unwrap();
    let two = CableConductors::TWO_WIRE;
    // 310.15(E): the neutral of a 120/240 V multiwire circuit doesn't count; travellers: one of the pair.
    assert_eq!(CableConductors::MULTIWIRE.carrying(), 2);
    assert_eq!(CableConductors::TRAVELLERS.carrying(), 2);
    let wye = CableConductors {
        neutral: NeutralUse::TwoOfWye,
        ..CableConductors::MULTIWIRE
    };
    assert_eq!(wye.carrying(), 3);
    assert_eq!(
        CableConductors {
            spares: 2,
            grounds: 3,
            ..two
        }
        .carrying(),
        4
    );
    // Two NM cables in a sealed hole count each for itself, three together (334.80); a short bundle never.
    assert_eq!(of(&[two.times(2)], Grouping::SealedHole).carrying, 2);
    assert_eq!(of(&[two.times(3)], Grouping::InInsulation).carrying, 6);
    assert_eq!(
        of(&[two.times(9)], Grouping::Bundled { length_in: 24.0 }).together,
        Together::Short
    );
    let long = of(
        &[two.times(4), CableConductors::MULTIWIRE],
        Grouping::Bundled { length_in: 24.1 },
    );
    assert_eq!((long.carrying, long.all, long.cables), (10, 10, 5));
    assert_eq!(of(&[two.times(4)], Grouping::Apart).carrying, 2);
    assert_eq!(
        of(&[two.times(4)], Grouping::Nipple { length_in: 24.0 }).carrying,
        2
    );
    assert_eq!(of(&[two.times(4)], Grouping::Raceway).carrying, 8);
    let lines = of(&[CableConductors::MULTIWIRE], Grouping::Apart).lines;
    assert_eq!(
        lines
            .iter()
            .map(|l| (l.conductors, l.counted))
            .collect::<Vec<_>>(),
        [(2, 2), (1, 0), (1, 0)]
    );
    assert_eq!(lines[1].section, "310.15(E)");

    let refused = |cables: &[CableConductors], grouping| {
        count(cables, grouping, CodeEdition::E2023).unwrap_err()
    };
    assert_eq!(refused(&[], Grouping::Apart), BundleRefusal::NoCable);
    assert_eq!(
        refused(&[two.times(0)], Grouping::Apart),
        BundleRefusal::NoCable
    );
    assert_eq!(
        refused(&[two.times(500)], Grouping::Apart),
        BundleRefusal::TooMany { cable: Some(0) }
    );
    assert_eq!(
        refused(&[two.times(150), two.times(150)], Grouping::Apart),
        BundleRefusal::TooMany { cable: None }
    );
    for length_in in [0.0, -3.0, 1e9] {
        assert_eq!(
            refused(&[two], Grouping::Bundled { length_in }),
            BundleRefusal::Length { length_in }
        );
    }
    let odd = CableConductors {
        neutral: NeutralUse::UnbalanceOnly,
        ..two
    };
    assert_eq!(
        refused(&[odd], Grouping::Apart),
        BundleRefusal::NotTwoHots { cable: 0, hots: 1 }
    );
}

#[test]
fn what_is_refused() {
    let refused = |conductor, conditions| ampacity(conductor, conditions).unwrap_err();
    assert_eq!(
        Size::parse("13"),
        Err(ConductorRefusal::UnknownSize { text: "13".into() })
    );
    assert_eq!(Size::parse("#12 awg"), Ok(Size::Awg12));
    assert_eq!(Size::parse("250 MCM"), Ok(Size::Kcmil250));
    assert!(
        Size::parse("12 kcmil").is_err()
            && Size::parse("").is_err()
            && Size::parse("1/0 mm").is_err()
    );
    // Aluminum starts at 12 AWG (310.3(A)); NM stops at 2 AWG (334.104).
    let aluminum = Conductor {
        metal: Metal::Aluminum,
        ..nm(Size::Awg14)
    };
    assert!(matches!(
        refused(aluminum, PLAIN),
        AmpacityRefusal::Conductor(ConductorRefusal::BelowLeast {
            least: Size::Awg12,
            ..
        })
    ));
    assert!(matches!(
        refused(nm(Size::Awg1), PLAIN),
        AmpacityRefusal::Conductor(ConductorRefusal::NotMade {
            most: Size::Awg2,
            ..
        })
    ));
    assert!(matches!(
        refused(
            Conductor {
                covering: Covering::Thhn,
                ..nm(Size::Awg16)
            },
            PLAIN
        ),
        AmpacityRefusal::Conductor(ConductorRefusal::BelowLeast { .. })
    ));
    for ambient in [
        Ambient::Celsius(86.0),
        Ambient::Fahrenheit(200.0),
        Ambient::Celsius(-100.0),
        Ambient::Fahrenheit(-100.0),
        Ambient::Celsius(f64::NAN),
        Ambient::Celsius(f64::NEG_INFINITY),
    ] {
        assert!(matches!(
            refused(nm(Size::Awg12), Conditions { ambient, ..PLAIN }),
            AmpacityRefusal::Ambient { .. }
        ));
    }
    let uf = Conductor {
        covering: Covering::Uf,
        ..nm(Size::Awg12)
    };
    assert!(matches!(
        refused(
            uf,
            Conditions {
                ambient: Ambient::Celsius(56.0),
                ..PLAIN
            }
        ),
        AmpacityRefusal::TooHot {
            rating: Rating::C60,
            ..
        }
    ));
    for carrying in [0, 100_000] {
        assert_eq!(
            refused(nm(Size::Awg12), Conditions { carrying, ..PLAIN }),
            AmpacityRefusal::Carrying { carrying }
        );
    }
    for (continuous_a, other_a) in [(0.0, 0.0), (-1.0, 5.0), (f64::NAN, 1.0), (1e9, 0.0)] {
        assert!(
            min_rating_a(Load {
                continuous_a,
                other_a
            })
            .is_err()
        );
    }
}

#[test]
fn the_smallest_conductor() {
    let wanted = Wanted {
        load: Load {
            continuous_a: 0.0,
            other_a: 12.0,
        },
        breaker_a: None,
        metal: Metal::Copper,
        covering: Covering::NmB,
        conditions: PLAIN,
    };
    let of = |wanted| smallest_conductor(wanted).unwrap();
    assert_eq!(of(wanted).size, Size::Awg14);
    // 125 % of 16 A is 20 A: 12 AWG; of 17 A it is 21.25 A: circuits of several
    // receptacles go on at 30 A (210.18), and 240.4(D) asks for 10 AWG; for anything else there is 25 A.
    let continuous = |a| Wanted {
        load: Load {
            continuous_a: a,
            other_a: 0.0,
        },
        ..wanted
    };
    assert_eq!(
        (of(continuous(16.0)).size, of(continuous(16.0)).breaker_a),
        (Size::Awg12, 20.0)
    );
    let seventeen = of(continuous(17.0));
    assert_eq!((seventeen.size, seventeen.breaker_a), (Size::Awg10, 30.0));
    let other = of(Wanted {
        conditions: Conditions {
            feeds: Feeds::Other,
            ..PLAIN
        },
        ..continuous(17.0)
    });
    assert_eq!((other.size, other.breaker_a), (Size::Awg10, 25.0));
    assert!(matches!(
        seventeen.smaller,
        Some((Size::Awg12, TooSmall::BeforeCorrection { .. }))
    ));
    // A 20 A breaker that is there asks for 12 AWG whatever the load.
    let there = of(Wanted {
        breaker_a: Some(20.0),
        ..wanted
    });
    assert_eq!(there.size, Size::Awg12);
    assert_eq!(
        there.smaller,
        Some((
            Size::Awg14,
            TooSmall::Breaker {
                largest_a: Some(15.0),
                breaker_a: 20.0
            }
        ))
    );
    // Nine conductors together, 18 A: 12 AWG THHN carries 30 x 0.7 = 21 A, but on 60 C terminals 20 A.
    let bundled = Wanted {
        load: Load {
            continuous_a: 0.0,
            other_a: 18.0,
        },
        covering: Covering::Thhn,
        conditions: Conditions {
            carrying: 9,
            ..PLAIN
        },
        ..wanted
    };
    assert_eq!(of(bundled).size, Size::Awg12);
    let more = Wanted {
        conditions: Conditions {
            carrying: 21,
            feeds: Feeds::Other,
            ..PLAIN
        },
        ..bundled
    };
    assert_eq!(of(more).size, Size::Awg10);
    assert!(matches!(
        of(more).smaller,
        Some((Size::Awg12, TooSmall::AfterCorrection { .. }))
    ));
    // For receptacles 10 AWG at 40 x 0.45 = 18 A allows no 20 A breaker: 8 AWG.
    let plugs = Wanted {
        conditions: Conditions {
            carrying: 21,
            ..PLAIN
        },
        ..bundled
    };
    assert!(matches!(
        of(plugs).smaller,
        Some((Size::Awg10, TooSmall::Breaker { .. }))
    ));
    let absurd = Wanted {
        covering: Covering::Thhn,
        conditions: Conditions {
            feeds: Feeds::Other,
            ..PLAIN
        },
        ..continuous(900.0)
    };
    assert_eq!(
        smallest_conductor(absurd).unwrap_err(),
        AmpacityRefusal::NoSize { needed_a: 1125.0 }
    );
    let wrong = Wanted {
        breaker_a: Some(-5.0),
        ..wanted
    };
    assert_eq!(
        smallest_conductor(wrong).unwrap_err(),
        AmpacityRefusal::Breaker { breaker_a: -5.0 }
    );
}

/// 210.20(A): the breaker carries 125 % of what is continuous; 210.18: receptacles are on 15, 20, 30, 40 or 50 A; 240.6(A):
/// there is no 22 A. No conductor mends such a breaker.
#[test]
fn a_breaker_that_no_conductor_mends() {
    let of = |breaker_a, continuous_a, feeds| {
        smallest_conductor(Wanted {
            load: Load {
                continuous_a,
                other_a: 1.0,
            },
            breaker_a: Some(breaker_a),
            metal: Metal::Copper,
            covering: Covering::NmB,
            conditions: Conditions { feeds, ..PLAIN },
        })
        .map(|answer| answer.size)
    };
    assert_eq!(
        of(15.0, 12.0, Feeds::Other),
        Err(AmpacityRefusal::BelowLoad {
            breaker_a: 15.0,
            needed_a: 16.0
        })
    );
    assert_eq!(of(20.0, 12.0, Feeds::Other), Ok(Size::Awg12));
    for feeds in [Feeds::Other, Feeds::SeveralReceptacles] {
        assert_eq!(
            of(22.0, 5.0, feeds),
            Err(AmpacityRefusal::Breaker { breaker_a: 22.0 })
        );
    }
    for breaker_a in [10.0, 25.0, 35.0, 60.0] {
        assert_eq!(
            of(breaker_a, 5.0, Feeds::SeveralReceptacles),
            Err(AmpacityRefusal::NotForReceptacles { breaker_a })
        );
    }
    assert_eq!(of(25.0, 5.0, Feeds::Other), Ok(Size::Awg10));
}

/// Common practice: cable up to 10 AWG is solid, larger is stranded; the table has solid wire up to 8 AWG.
#[test]
fn constructions() {
    assert_eq!(Construction::usual(Size::Awg10), Construction::Solid);
    assert_eq!(Construction::usual(Size::Awg8), Construction::Stranded);
    assert!(Size::Awg6.properties(Construction::Solid).is_none());
}

fn any_covering() -> impl Strategy<Value = Covering> {
    prop::sample::select(Covering::NAMED)
}

fn any_conditions() -> impl Strategy<Value = Conditions> {
    (
        -10.0..80.0f64,
        1u32..60,
        prop::sample::select(vec![Terminals::C60, Terminals::C75, Terminals::NotKnown]),
        prop::bool::ANY,
    )
        .prop_map(|(degrees, carrying, terminals, several)| Conditions {
            ambient: Ambient::Celsius(degrees),
            carrying,
            terminals,
            feeds: if several {
                Feeds::SeveralReceptacles
            } else {
                Feeds::Other
            },
            ..PLAIN
        })
}

fn answers(metal: Metal, covering: Covering, conditions: Conditions) -> Vec<Ampacity> {
    Size::ALL
        .iter()
        .filter_map(|&size| {
            ampacity(
                Conductor {
                    size,
                    metal,
                    covering,
                },
                conditions,
            )
            .ok()
        })
        .collect()
}

proptest! {
    #[test]
    fn a_larger_conductor_never_carries_less(
        covering in any_covering(), conditions in any_conditions(), copper in prop::bool::ANY,
    ) {
        let metal = if copper { Metal::Copper } else { Metal::Aluminum };
        for pair in answers(metal, covering, conditions).windows(2) {
            prop_assert!(pair[0].ampacity_a <= pair[1].ampacity_a);
            prop_assert!(pair[0].breaker.rating_a <= pair[1].breaker.rating_a);
        }
    }

    #[test]
    fn hotter_or_fuller_never_carries_more(
        covering in any_covering(), conditions in any_conditions(), more in 0u32..20, warmer in 0.0..20.0f64,
    ) {
        let Ambient::Celsius(degrees) = conditions.ambient else { unreachable!() };
        let worse = Conditions {
            carrying: conditions.carrying + more, ambient: Ambient::Celsius(degrees + warmer), ..conditions
        };
        for answer in answers(Metal::Copper, covering, worse) {
            let before = ampacity(answer.conductor, conditions).unwrap();
            prop_assert!(answer.ampacity_a <= before.ampacity_a);
        }
    }

    #[test]
    fn the_answer_is_the_least_of_its_limits(covering in any_covering(), conditions in any_conditions()) {
        for answer in answers(Metal::Copper, covering, conditions) {
            let limits = [Some(answer.corrected_a), Some(answer.terminal_a), answer.cable_a];
            let least = limits.into_iter().flatten().fold(f64::INFINITY, f64::min);
            prop_assert_eq!(answer.ampacity_a, least);
            if conditions.feeds == Feeds::SeveralReceptacles {
                prop_assert!(answer.breaker.rating_a.is_none_or(|a| a <= answer.ampacity_a));
            }
        }
    }

    #[test]
    fn the_smallest_conductor_carries_its_load(
        covering in any_covering(), conditions in any_conditions(), continuous_a in 0.0..40.0f64, other_a in 0.1..40.0f64,
    ) {
        let load = Load { continuous_a, other_a };
        let wanted = Wanted { load, breaker_a: None, metal: Metal::Copper, covering, conditions };
        if let Ok(answer) = smallest_conductor(wanted) {
            prop_assert!(answer.ampacity.ampacity_a >= load.total_a() - 1e-9);
            prop_assert!(answer.ampacity.breaker.rating_a.unwrap() >= answer.breaker_a);
            prop_assert!(answer.breaker_a >= answer.min_rating_a - 1e-9);
            prop_assert_eq!(answer.smaller.is_some(), answer.size > Size::Awg14);
        }
    }
}

/// 310.15(C)(1): cables that don't lie together count each for itself, so that a fuller neighbor changes nothing.
#[test]
fn a_cable_apart_counts_its_own_conductors() {
    let three_hots = CableConductors {
        hots: 3,
        ..CableConductors::TWO_WIRE
    };
    for grouping in [
        Grouping::Apart,
        Grouping::Bundled { length_in: 24.0 },
        Grouping::SealedHole,
    ] {
        let of = |cables: [CableConductors; 2]| {
            count(&cables, grouping, CodeEdition::E2023)
                .unwrap()
                .carrying
        };
        assert_eq!(of([CableConductors::TWO_WIRE, three_hots]), 2);
        assert_eq!(of([three_hots, CableConductors::TWO_WIRE]), 4);
    }
}
