//! Runs of cable, and the cables of switches.

use calc::job::CodeEdition;
use calc::wiring::cable_run::{
    CableRun, End, Held, LightAt, NeutralNeed, Part, Piece, PowerAt, Role, RunFinding, RunRefusal,
    SwitchFinding, SwitchSpot, Switching, Way, cut, switch_cables, take,
};
use proptest::prelude::*;

const BOX: End = End::Box { free_in: 8.0 };
const PANEL: End = End::Panel { free_in: 36.0 };

fn part(length_ft: f64, held: Held) -> Part {
    Part {
        way: Way::Across,
        length_ft,
        held,
        attic: false,
    }
}

const STAPLED: Held = Held::Stapled { edge_in: Some(1.5) };
const BORED: Held = Held::Bored {
    edge_in: Some(1.25),
};

fn run(pieces: Vec<Piece>) -> CableRun {
    CableRun {
        edition: CodeEdition::E2023,
        pieces,
        allowance_percent: 10.0,
        roll_ft: 250.0,
    }
}

fn piece(from: End, to: End, parts: Vec<Part>) -> Piece {
    Piece { from, to, parts }
}

#[test]
fn feet_and_rolls() {
    let answer = take(&run(vec![
        piece(PANEL, BOX, vec![part(120.0, STAPLED)]),
        piece(BOX, BOX, vec![part(100.0, STAPLED)]),
        piece(BOX, BOX, vec![part(10.0, STAPLED)]),
    ]))
    .unwrap();
    // 120 x 1.1 + 44 in; 100 x 1.1 + 16 in; 10 x 1.1 + 16 in.
    let cut_ft: Vec<f64> = answer.pieces.iter().map(|p| p.cut_ft).collect();
    for (ours, hand) in
        cut_ft
            .iter()
            .zip([132.0 + 44.0 / 12.0, 110.0 + 16.0 / 12.0, 11.0 + 16.0 / 12.0])
    {
        assert!((ours - hand).abs() < 1e-9);
    }
    assert_eq!(answer.path_ft, 230.0);
    assert!((answer.cut_ft - 259.333_333_333).abs() < 1e-6);
    // 135.67 + 111.33 leave 3 ft of 250; the last piece comes off a second roll.
    assert_eq!(answer.rolls.len(), 2);
    assert_eq!(
        (&answer.rolls[0].pieces, &answer.rolls[1].pieces),
        (&vec![0, 1], &vec![2])
    );
    assert!((answer.rolls[0].left_ft - 3.0).abs() < 1e-9);
    assert!(answer.findings.is_empty());
}

/// 334.30: within 12 in of a box, then every 4-1/2 ft; 314.17: 8 in from a clampless box. 334.30(A): holes hold a cable that
/// goes across, but it is fastened within 12 in of each box; (B)(1): fished cable is not. Counted by hand.
#[test]
fn staples() {
    let of = |from, to, parts| take(&run(vec![piece(from, to, parts)])).unwrap().staples;
    // 2 ft between boxes: one staple in the middle reaches both; 2.1 ft: two.
    assert_eq!(of(BOX, BOX, vec![part(2.0, STAPLED)]), 1);
    assert_eq!(of(BOX, BOX, vec![part(2.1, STAPLED)]), 2);
    // 6.5 ft: at 1 ft and at 5.5 ft; a little more wants a third.
    assert_eq!(of(BOX, BOX, vec![part(6.5, STAPLED)]), 2);
    assert_eq!(of(BOX, BOX, vec![part(6.6, STAPLED)]), 3);
    let clampless = End::ClamplessBox { free_in: 8.0 };
    assert_eq!(of(clampless, BOX, vec![part(6.5, STAPLED)]), 3);
    // Round a corner it is one stretch; holes want a staple at each box, fished parts none.
    assert_eq!(
        of(BOX, BOX, vec![part(3.0, STAPLED), part(3.5, STAPLED)]),
        2
    );
    assert_eq!(of(BOX, BOX, vec![part(20.0, BORED)]), 2);
    assert_eq!(of(BOX, BOX, vec![part(2.0, BORED)]), 1);
    assert_eq!(
        of(BOX, BOX, vec![part(20.0, BORED), part(5.0, Held::Fished)]),
        1
    );
    // Up a wall holes don't hold it: 6.5 ft as if stapled.
    let up = Part {
        way: Way::Up,
        ..part(6.5, BORED)
    };
    assert_eq!(of(BOX, BOX, vec![up]), 2);
    assert_eq!(of(BOX, BOX, vec![part(20.0, Held::Fished)]), 0);
    assert_eq!(
        of(
            BOX,
            BOX,
            vec![part(4.0, STAPLED), part(20.0, BORED), part(4.0, STAPLED)]
        ),
        2
    );
}

#[test]
fn findings() {
    let shallow = Part {
        attic: true,
        ..part(5.0, Held::Bored { edge_in: Some(1.0) })
    };
    let answer = take(&run(vec![piece(
        End::Box { free_in: 5.0 },
        End::Panel { free_in: 0.0 },
        vec![
            shallow,
            part(5.0, Held::Stapled { edge_in: Some(0.5) }),
            part(5.0, Held::Stapled { edge_in: None }),
            part(5.0, Held::Fished),
            part(300.0, BORED),
        ],
    )]))
    .unwrap();
    let (piece, least_in, section) = (0, 1.25, "300.4");
    assert_eq!(
        answer.findings,
        [
            RunFinding::PlateAtHole {
                piece,
                part: 0,
                edge_in: 1.0,
                least_in,
                section
            },
            RunFinding::AtticGuard {
                piece,
                part: 0,
                section: "334.23"
            },
            RunFinding::PlateAlongFraming {
                piece,
                part: 1,
                edge_in: 0.5,
                least_in,
                section
            },
            RunFinding::EdgeNotKnown {
                piece,
                part: 2,
                least_in,
                section
            },
            RunFinding::TooLittleFree {
                piece,
                free_in: 5.0,
                least_in: 6.0,
                section: "300.14"
            },
            RunFinding::LongerThanRoll {
                piece,
                length_ft: answer.cut_ft
            },
        ]
    );
    assert!(answer.rolls.is_empty());
}

#[test]
fn what_is_refused() {
    let good = run(vec![piece(BOX, BOX, vec![part(5.0, STAPLED)])]);
    assert!(take(&good).is_ok());
    assert_eq!(take(&run(Vec::new())), Err(RunRefusal::NoPiece));
    assert_eq!(
        take(&run(vec![piece(BOX, BOX, Vec::new())])),
        Err(RunRefusal::NoPath { piece: 0 })
    );
    for length_ft in [0.0, -3.0, f64::INFINITY, 1e6] {
        let wrong = run(vec![piece(BOX, BOX, vec![part(length_ft, STAPLED)])]);
        assert_eq!(
            take(&wrong),
            Err(RunRefusal::Length {
                piece: 0,
                length_ft
            })
        );
    }
    assert!(take(&run(vec![piece(BOX, BOX, vec![part(f64::NAN, STAPLED)])])).is_err());
    let wrong = run(vec![piece(
        End::Box { free_in: -1.0 },
        BOX,
        vec![part(5.0, STAPLED)],
    )]);
    assert_eq!(
        take(&wrong),
        Err(RunRefusal::Free {
            piece: 0,
            free_in: -1.0
        })
    );
    let wrong = run(vec![piece(
        BOX,
        BOX,
        vec![part(
            5.0,
            Held::Bored {
                edge_in: Some(-1.0),
            },
        )],
    )]);
    assert_eq!(
        take(&wrong),
        Err(RunRefusal::Edge {
            piece: 0,
            edge_in: -1.0
        })
    );
    let wrong = CableRun {
        allowance_percent: -1.0,
        ..good.clone()
    };
    assert_eq!(take(&wrong), Err(RunRefusal::Allowance { percent: -1.0 }));
    let wrong = CableRun {
        roll_ft: 0.0,
        ..good
    };
    assert_eq!(take(&wrong), Err(RunRefusal::Roll { roll_ft: 0.0 }));
    let long = vec![piece(BOX, BOX, vec![part(9000.0, STAPLED)]); 2];
    assert!(matches!(take(&run(long)), Err(RunRefusal::Total { .. })));
}

/// The usual ways to wire a light, by the number of insulated conductors of each cable (common practice).
#[test]
fn switches() {
    let plan = |switches, power, light, neutral| {
        let edition = CodeEdition::E2023;
        switch_cables(Switching {
            edition,
            switches,
            power,
            light,
            neutral,
        })
        .unwrap()
    };
    let wires = |switches, power, light, neutral| {
        plan(switches, power, light, neutral)
            .cables
            .iter()
            .map(|c| c.conductors)
            .collect::<Vec<_>>()
    };
    use LightAt::{FirstSwitch as Near, LastSwitch as Far};
    use NeutralNeed::{Every, None as Never, One};
    use PowerAt::{FirstSwitch, Light};
    // Single pole with the power at the switch: two-wire all the way.
    assert_eq!(wires(1, FirstSwitch, Far, Every), [2, 2]);
    // A switch loop: three-wire, so that there is a neutral; two-wire under an exception.
    assert_eq!(wires(1, Light, Far, Every), [2, 3]);
    assert_eq!(wires(1, Light, Far, Never), [2, 2]);
    // Three-way: power one end, light the other; four-way the same, twice.
    assert_eq!(wires(2, FirstSwitch, Far, Every), [2, 3, 2]);
    assert_eq!(wires(3, FirstSwitch, Far, Every), [2, 3, 3, 2]);
    // Power and light at one three-way: the far one has no neutral on three-wire cable.
    assert_eq!(wires(2, FirstSwitch, Near, One), [2, 3, 2]);
    assert_eq!(wires(2, FirstSwitch, Near, Every), [2, 4, 2]);
    assert_eq!(wires(2, Light, Far, One), [2, 3, 3]);
    assert_eq!(wires(2, Light, Far, Every), [2, 3, 4]);
    let near = plan(2, FirstSwitch, Near, One);
    assert_eq!(
        near.findings,
        [SwitchFinding::NoNeutralAt {
            switch: 2,
            section: "404.2(C)"
        }]
    );
    assert_eq!(near.cables[1].roles, [Role::SwitchedHot, Role::Travellers]);
    assert_eq!(near.cables[2].from, SwitchSpot::Switch(1));
    let every = plan(2, FirstSwitch, Near, Every);
    assert_eq!(
        every.findings,
        [SwitchFinding::FourConductors {
            cable: 1,
            section: "404.2(C)"
        }]
    );
    assert!(plan(4, FirstSwitch, Far, Every).findings.is_empty());
    for switches in [0, 21] {
        let wrong = Switching {
            edition: CodeEdition::E2023,
            switches,
            power: Light,
            light: Far,
            neutral: Every,
        };
        assert!(switch_cables(wrong).is_err());
    }
}

proptest! {
    #[test]
    fn rolls_hold_every_piece_once(pieces in prop::collection::vec(0.1..300.0f64, 0..20)) {
        let rolls = cut(&pieces, 250.0);
        let mut all: Vec<usize> = rolls.iter().flat_map(|roll| roll.pieces.clone()).collect();
        all.sort_unstable();
        let short: Vec<usize> = (0..pieces.len()).filter(|&at| pieces[at] <= 250.0).collect();
        prop_assert_eq!(all, short);
        for roll in &rolls {
            let used: f64 = roll.pieces.iter().map(|&at| pieces[at]).sum();
            prop_assert!((used + roll.left_ft - 250.0).abs() < 1e-9 && roll.left_ft >= -1e-9);
        }
    }

    /// Staples as placed one by one: the first as far as it may stand, each next as far as it may, until the end is in reach.
    #[test]
    fn staples_as_placed(length_ft in 0.1..200.0f64) {
        let (end, mut at, mut placed) = (length_ft * 12.0, 12.0, 1);
        while end - at > 12.0 + 1e-6 {
            at += 54.0;
            placed += 1;
        }
        let answer = take(&run(vec![piece(BOX, BOX, vec![part(length_ft, STAPLED)])])).unwrap();
        prop_assert_eq!(answer.staples, placed);
    }
}
