//! Base, shoe and casing against worked examples and by hand.

use calc::finish::trim::{
    Break, BreakKind, Measure, Part, Trim, TrimAsk, TrimRefusal, TrimWall, trim,
};

use crate::rows::expected;

fn doorway(at_in: f64, width_in: f64) -> Break {
    Break {
        at_in,
        width_in,
        kind: BreakKind::Doorway { height_in: 80.0 },
        casing_in: 2.25,
        both_faces: false,
    }
}

fn room(first: Vec<Break>) -> TrimAsk {
    let wall = |length_in, breaks| TrimWall { length_in, breaks };
    TrimAsk {
        walls: vec![
            wall(144.0, first),
            wall(120.0, vec![]),
            wall(144.0, vec![]),
            wall(120.0, vec![]),
        ],
        reveal_in: 0.0,
        extra_in: 0.0,
        allowance_percent: 10.0,
        splice_at_in: None,
    }
}

fn lengths(answer: &Trim, part: Part) -> Vec<f64> {
    let all = answer.base.iter().chain(&answer.shoe).chain(&answer.casing);
    all.filter(|piece| piece.part == part)
        .map(|piece| piece.length_in)
        .collect()
}

#[test]
fn worked_example() {
    let answer = trim(&room(vec![doorway(50.0, 32.0)])).unwrap();
    assert!((answer.base_with_allowance_ft - expected("A15")).abs() < 1e-7);
    // Left of it 50 - 2-1/4, right of it 144 - 82 - 2-1/4.
    assert_eq!(
        lengths(&answer, Part::Base),
        [47.75, 59.75, 120.0, 144.0, 120.0]
    );
    assert_eq!(lengths(&answer, Part::Shoe), lengths(&answer, Part::Base));
}

#[test]
fn casings_by_hand() {
    // Reveal 1/4, casing 2-1/4: leg 80 + 2-1/2, head 30 + 5; a window all round: sides 40 + 5, head and sill 30 + 5.
    let ask = TrimAsk {
        reveal_in: 0.25,
        ..room(vec![
            doorway(20.0, 30.0),
            Break {
                kind: BreakKind::Window { height_in: 40.0 },
                both_faces: true,
                ..doorway(90.0, 30.0)
            },
        ])
    };
    let answer = trim(&ask).unwrap();
    assert_eq!(
        lengths(&answer, Part::CasingLeg),
        [82.5, 82.5, 45.0, 45.0, 45.0, 45.0]
    );
    assert_eq!(
        lengths(&answer, Part::CasingHead),
        [35.0, 35.0, 35.0, 35.0, 35.0]
    );
    // The base passes under the window.
    assert_eq!(lengths(&answer, Part::Base)[..2], [17.5, 144.0 - 52.5]);
}

#[test]
fn shoe_runs_along_a_front_without_a_toe_strip() {
    let tub = |own_toe_strip| Break {
        kind: BreakKind::BuiltIn { own_toe_strip },
        casing_in: 0.0,
        ..doorway(0.0, 60.0)
    };
    let with = trim(&room(vec![tub(true)])).unwrap();
    let without = trim(&room(vec![tub(false)])).unwrap();
    assert_eq!(with.base_ft, 39.0);
    assert_eq!((with.base_ft, with.shoe_ft), (without.base_ft, 39.0));
    assert_eq!(without.shoe_ft, 44.0);
    assert_eq!(lengths(&without, Part::ShoeAtBuiltIn), [60.0]);
}

#[test]
fn long_runs_are_spliced() {
    let ask = TrimAsk {
        splice_at_in: Some(96.0),
        extra_in: 1.0,
        ..room(vec![])
    };
    // 144 = 95 + 49, each an inch longer for fitting; 120 = 95 + 25.
    assert_eq!(
        lengths(&trim(&ask).unwrap(), Part::Base),
        [96.0, 50.0, 96.0, 26.0, 96.0, 50.0, 96.0, 26.0]
    );
}

#[test]
fn refusals() {
    let no = |breaks| trim(&room(breaks)).unwrap_err();
    assert!(matches!(
        no(vec![doorway(0.0, 145.0)]),
        TrimRefusal::WiderThanWall {
            wall: 0,
            index: 0,
            ..
        }
    ));
    assert!(matches!(
        no(vec![doorway(120.0, 32.0)]),
        TrimRefusal::BeyondWall { wall: 0, .. }
    ));
    assert!(matches!(
        no(vec![doorway(10.0, 32.0), doorway(43.0, 32.0)]),
        TrimRefusal::Overlap {
            wall: 0,
            first: 0,
            second: 1,
            ..
        }
    ));
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(matches!(
            no(vec![doorway(bad, 32.0)]),
            TrimRefusal::Measure {
                measure: Measure::At,
                ..
            }
        ));
        assert!(matches!(
            no(vec![doorway(3.0, bad)]),
            TrimRefusal::Measure {
                measure: Measure::Width,
                ..
            }
        ));
        let ask = TrimAsk {
            allowance_percent: bad,
            ..room(vec![])
        };
        assert!(trim(&ask).is_err());
        let ask = TrimAsk {
            splice_at_in: Some(bad),
            ..room(vec![])
        };
        assert!(trim(&ask).is_err());
    }
    // A doorway from corner to corner leaves no base, and is no error.
    assert_eq!(
        lengths(&trim(&room(vec![doorway(0.0, 144.0)])).unwrap(), Part::Base),
        [120.0, 144.0, 120.0]
    );
}
