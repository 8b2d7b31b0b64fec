//! Shared neutrals.

use calc::job::CodeEdition;
use calc::wiring::neutral::{
    Neutral, NeutralFinding, NeutralRefusal, Returning, neutral_current, open_neutral,
};
use calc::wiring::panel::{Breaker, BreakerForm, Half, Leg};
use proptest::prelude::*;

use crate::panel::breaker;
use crate::worked::examples;

fn hot(id: u32, space: u32, current_a: f64) -> Returning {
    Returning::of(
        &breaker(id, space, BreakerForm::Single),
        0,
        0,
        current_a,
        0.0,
    )
    .unwrap()
}

fn neutral(returns: Vec<Returning>) -> Neutral {
    Neutral {
        edition: CodeEdition::E2023,
        returns,
        ampacity_a: Some(20.0),
        runs_with_hots: Some(true),
        pigtailed: Some(true),
    }
}

#[test]
fn worked_open_neutral() {
    for example in examples("open_neutral") {
        let open = open_neutral(
            example.number("source_V"),
            example.number("load_a_W_at_120"),
            example.number("load_b_W_at_120"),
        )
        .unwrap();
        example.check(|key| {
            match key {
                "r_a_ohm" => open.ohm_a,
                "r_b_ohm" => open.ohm_b,
                "current_A" => open.current_a,
                "volts_a" => open.volts_a,
                "volts_b" => open.volts_b,
                other => panic!("{other}"),
            }
            .into()
        });
    }
}

/// A two-pole breaker or a handle tie on opposite legs makes a multiwire circuit; nothing is wrong with it.
#[test]
fn a_multiwire_circuit() {
    let two_pole = breaker(1, 5, BreakerForm::TwoPole);
    let pole = |pole, amps| Returning::of(&two_pole, pole, 0, amps, 0.0).unwrap();
    let answer = neutral_current(&neutral(vec![pole(0, 14.0), pole(1, 9.0)])).unwrap();
    assert_eq!(
        (answer.current_a, answer.most_a, answer.shared),
        (5.0, 14.0, true)
    );
    assert!(answer.findings.is_empty());
    let tied = Breaker {
        tied_to: Some(2),
        ..breaker(1, 1, BreakerForm::Single)
    };
    let tied = Returning::of(&tied, 0, 0, 14.0, 0.0).unwrap();
    assert!(
        neutral_current(&neutral(vec![tied, hot(2, 3, 9.0)]))
            .unwrap()
            .findings
            .is_empty()
    );
    assert_eq!(
        Returning::of(&two_pole, 2, 0, 1.0, 0.0),
        Err(NeutralRefusal::NoPole {
            breaker: 1,
            pole: 2
        })
    );
}

#[test]
fn what_is_wrong_with_sharing() {
    let of = |returns| neutral_current(&neutral(returns)).unwrap();
    // Opposite legs without a tie: 210.4(B).
    assert_eq!(
        of(vec![hot(1, 1, 12.0), hot(2, 3, 12.0)]).findings,
        [NeutralFinding::NoCommonDisconnect {
            breakers: vec![1, 2],
            section: "210.4(B)"
        }]
    );
    // One leg: the currents add, beyond what the neutral carries.
    let same = of(vec![hot(1, 1, 12.0), hot(2, 2, 12.0)]);
    assert_eq!((same.current_a, same.most_a), (24.0, 24.0));
    assert_eq!(
        same.findings,
        [
            NeutralFinding::Overloaded {
                current_a: 24.0,
                ampacity_a: 20.0,
                section: "210.19(A)"
            },
            NeutralFinding::SameLeg {
                leg: Leg::A,
                breakers: vec![1, 2],
                sum_a: 24.0,
                section: "200.4(A)",
                definition: "Article 100"
            },
            NeutralFinding::NoCommonDisconnect {
                breakers: vec![1, 2],
                section: "210.4(B)"
            }
        ]
    );
    // A tandem pair never makes a multiwire pair.
    let half = |id, half| {
        Returning::of(&breaker(id, 16, BreakerForm::Tandem(half)), 0, 0, 5.0, 0.0).unwrap()
    };
    let tandem = of(vec![half(1, Half::A), half(2, Half::B)]).findings;
    assert!(tandem.contains(&NeutralFinding::TandemPair {
        breakers: vec![1, 2],
        section: "Article 100"
    }));
    // Three hots: more than one multiwire circuit.
    let three = of(vec![hot(1, 1, 5.0), hot(2, 3, 5.0), hot(3, 5, 5.0)]);
    assert_eq!(three.current_a, 5.0);
    assert!(three.findings.contains(&NeutralFinding::TooManyCircuits {
        hots: 3,
        section: "200.4(A)"
    }));
    let elsewhere = Returning {
        panel: 1,
        ..hot(2, 3, 5.0)
    };
    assert!(of(vec![hot(1, 1, 5.0), elsewhere]).findings.contains(
        &NeutralFinding::DifferentPanels {
            section: "210.4(A)"
        }
    ));
    // A tie by number to a breaker of another panel opens nothing.
    let other = Returning {
        panel: 1,
        tied_to: Some(1),
        ..hot(2, 3, 5.0)
    };
    assert!(of(vec![hot(1, 1, 5.0), other]).findings.contains(
        &NeutralFinding::NoCommonDisconnect {
            breakers: vec![1, 2],
            section: "210.4(B)"
        }
    ));
    let across = Returning {
        leg_to_leg_loads: true,
        ..hot(1, 1, 5.0)
    };
    assert!(
        of(vec![across, hot(2, 3, 5.0)])
            .findings
            .contains(&NeutralFinding::LegToLegLoads {
                section: "210.4(C)"
            })
    );
    let apart = Neutral {
        runs_with_hots: Some(false),
        pigtailed: Some(false),
        ..neutral(vec![hot(1, 1, 5.0), hot(2, 3, 5.0)])
    };
    let found = neutral_current(&apart).unwrap().findings;
    assert!(found.contains(&NeutralFinding::RunsApart {
        section: "300.3(B)"
    }));
    assert!(found.contains(&NeutralFinding::OpensAtDevice {
        section: "300.13(B)"
    }));
}

/// A handle tie joins single poles of one rating that are neighbors in a column (240.15(B), 210.4(B)); any other that is
/// entered opens nothing.
#[test]
fn a_tie_is_believed_only_where_it_can_be() {
    let of = |space, other: Returning| {
        let tied = Returning {
            tied_to: Some(2),
            ..hot(1, space, 8.0)
        };
        let answer = neutral_current(&neutral(vec![tied, other])).unwrap();
        !answer
            .findings
            .iter()
            .any(|found| matches!(found, NeutralFinding::NoCommonDisconnect { .. }))
    };
    assert!(of(1, hot(2, 3, 8.0)) && of(5, hot(2, 3, 8.0)));
    assert!(!of(1, hot(2, 7, 8.0)) && !of(1, hot(2, 4, 8.0)));
    let larger = Returning {
        rating_a: 30.0,
        ..hot(2, 3, 8.0)
    };
    assert!(!of(1, larger));
    let pole = Returning {
        two_pole: true,
        ..hot(2, 3, 8.0)
    };
    assert!(!of(1, pole));
}

/// Against currents in time: pulses of both legs that meet cancel, pulses that never meet add up as squares.
#[test]
fn electronic_loads() {
    let electronic = |id, space, part| Returning {
        electronic_a: part,
        ..hot(id, space, 10.0)
    };
    let of = |part| {
        let hots = vec![electronic(1, 1, part), electronic(2, 3, part)];
        neutral_current(&neutral(hots)).unwrap()
    };
    let all = of(10.0);
    assert_eq!((all.current_a, all.most_a), (0.0, 10.0));
    // A second's samples of one cycle, each leg a pulse of its own eighth of it: effective values by the mean square.
    let pulse = |at: usize, from: usize| {
        if (from..from + 125).contains(&at) {
            1.0
        } else {
            0.0
        }
    };
    let effective = |of: &dyn Fn(usize) -> f64| {
        ((0..1000).map(|at| of(at) * of(at)).sum::<f64>() / 1000.0).sqrt()
    };
    let one = effective(&|at| pulse(at, 0));
    let apart = effective(&|at| pulse(at, 0) - pulse(at, 500));
    assert!((all.electronic_most_a - 10.0 * apart / one).abs() < 1e-9);
    assert!((all.electronic_most_a - 14.142).abs() < 1e-3);
    assert!(all.findings.contains(&NeutralFinding::ElectronicLoads {
        up_to_a: all.electronic_most_a
    }));
    // 4 A of each are resistive and cancel, 6 A of each make 8.5 A at most: less than one leg alone.
    let some = of(6.0);
    assert_eq!(some.electronic_most_a, 10.0);
    let advised = |of: &[NeutralFinding]| {
        of.iter()
            .any(|found| matches!(found, NeutralFinding::ElectronicLoads { .. }))
    };
    assert!(advised(&all.findings) && !advised(&some.findings) && !advised(&of(0.0).findings));
}

#[test]
fn what_is_refused() {
    let refused = |returns| neutral_current(&neutral(returns)).unwrap_err();
    assert_eq!(refused(Vec::new()), NeutralRefusal::Nothing);
    for current_a in [-1.0, f64::NAN, f64::INFINITY, 1e5] {
        assert!(matches!(
            refused(vec![hot(1, 1, current_a)]),
            NeutralRefusal::Current { breaker: 1, .. }
        ));
    }
    let odd = Returning {
        electronic_a: 11.0,
        ..hot(1, 1, 10.0)
    };
    assert!(matches!(refused(vec![odd]), NeutralRefusal::Current { .. }));
    assert_eq!(
        refused(vec![hot(1, 0, 1.0)]),
        NeutralRefusal::NoSpace { breaker: 1 }
    );
    let wrong = Neutral {
        ampacity_a: Some(0.0),
        ..neutral(vec![hot(1, 1, 1.0)])
    };
    assert_eq!(
        neutral_current(&wrong),
        Err(NeutralRefusal::Ampacity { ampacity_a: 0.0 })
    );
    for (volts, a, b) in [
        (0.0, 1.0, 1.0),
        (240.0, 0.0, 1.0),
        (240.0, 1.0, -1.0),
        (f64::NAN, 1.0, 1.0),
    ] {
        assert!(open_neutral(volts, a, b).is_err());
    }
}

proptest! {
    /// Against samples of the sine waves of each hot over a cycle, the leg of a space told by its row.
    #[test]
    fn legs_add_as_waves(hots in prop::collection::vec((1u32..40, 0.0..20.0f64), 1..6)) {
        let wave = |at: u32| {
            let angle = std::f64::consts::TAU * f64::from(at) / 360.0;
            // Rows take turns: 1 and 2, 5 and 6, 9 and 10 are on one leg; the other leg is half a turn behind.
            hots.iter().map(|&(space, amps)| {
                let behind = if matches!(space % 4, 1 | 2) { 0.0 } else { std::f64::consts::PI };
                amps * 2f64.sqrt() * (angle - behind).sin()
            }).sum::<f64>()
        };
        let effective = ((0..360).map(|at| wave(at) * wave(at)).sum::<f64>() / 360.0).sqrt();
        let returns: Vec<Returning> = hots.iter().enumerate()
            .map(|(id, &(space, amps))| hot(id as u32, space, amps)).collect();
        let answer = neutral_current(&neutral(returns)).unwrap();
        prop_assert!((answer.current_a - effective).abs() < 1e-9);
        prop_assert!(answer.current_a <= answer.most_a + 1e-9 && answer.most_a <= answer.electronic_most_a + 1e-9);
        prop_assert_eq!(answer.shared, hots.len() > 1);
    }

    #[test]
    fn an_open_neutral_shares_the_voltage(across_v in 100.0..260.0f64, a in 1.0..5000.0f64, b in 1.0..5000.0f64) {
        let open = open_neutral(across_v, a, b).unwrap();
        prop_assert!((open.volts_a + open.volts_b - across_v).abs() < 1e-9);
        // The smaller load gets the higher voltage.
        prop_assert_eq!(open.volts_a > open.volts_b, a < b);
    }
}
