//! Box fill.

use calc::job::CodeEdition;
use calc::wiring::box_fill::{
    Barrier, BoxFill, BoxFinding, BoxRefusal, BoxSize, Conductors, Contents, EnteringCable,
    FillItem, Vessel, Yoke, box_fill,
};
use calc::wiring::conductor::Size;
use calc::wiring::tables::{BOX_VOLUMES, BoxFamily, VOLUME_ALLOWANCES};
use proptest::prelude::*;

use crate::data::size;
use crate::worked::{Example, examples};

const EDITIONS: [CodeEdition; 3] = [CodeEdition::E2017, CodeEdition::E2020, CodeEdition::E2023];

fn fill(vessel: &Vessel, contents: &Contents) -> BoxFill {
    box_fill(vessel, contents, CodeEdition::E2023).unwrap()
}

/// `14:4|12:2` as conductors.
fn conductors(text: &str) -> Vec<Conductors> {
    text.split('|')
        .filter(|part| !part.is_empty())
        .map(|part| {
            let (awg, count) = part.split_once(':').unwrap();
            Conductors {
                size: size(awg),
                count: count.parse().unwrap(),
            }
        })
        .collect()
}

fn contents(example: &Example) -> Contents {
    let number = |key| match example.text(key) {
        "" => 0,
        text => text.parse().unwrap(),
    };
    Contents {
        conductors: conductors(example.text("insulated")),
        looped: conductors(example.text("unbroken_loops")),
        fixture_wires: conductors(example.text("fixture_wires")),
        grounds: conductors(example.text("egc")),
        isolated_grounds: conductors(example.text("isolated_egc")),
        internal_clamps: example.text("internal_clamps") == "1",
        support_fittings: number("support_fitting_types"),
        yokes: example
            .text("yokes_awg_x_gangs")
            .split('|')
            .filter(|part| !part.is_empty())
            .map(|part| {
                let (awg, gangs) = part.split_once('x').unwrap();
                Yoke {
                    size: size(awg),
                    gangs: gangs.parse().unwrap(),
                }
            })
            .collect(),
        pigtails: number("pigtails"),
        ..Contents::default()
    }
}

#[test]
fn worked_examples() {
    for example in examples("box_fill") {
        let edition = match example.text("edition") {
            "2017" => CodeEdition::E2017,
            "2020" => CodeEdition::E2020,
            "2023" => CodeEdition::E2023,
            other => panic!("{other}"),
        };
        let known = [
            "edition",
            "volume_in3",
            "insulated",
            "unbroken_loops",
            "egc",
            "isolated_egc",
            "fixture_wires",
            "internal_clamps",
            "support_fitting_types",
            "yokes_awg_x_gangs",
            "pigtails",
        ];
        assert!(
            example
                .inputs
                .keys()
                .all(|key| known.contains(&key.as_str())),
            "{}",
            example.id
        );
        let vessel = match example.text("volume_in3") {
            "" => Vessel::marked(100.0),
            text => Vessel::marked(text.parse().unwrap()),
        };
        let answer = box_fill(&vessel, &contents(&example), edition).unwrap();
        let smallest = |family| {
            let of = answer
                .smallest
                .iter()
                .find(|of| of.family == family)
                .unwrap();
            of.smallest.unwrap().trade_size_in.into()
        };
        example.check(|key| match key {
            "required_in3" => answer.required_in3.into(),
            "fits" => answer.fits.into(),
            "smallest_round_octagonal" => smallest(BoxFamily::RoundOctagonal),
            "smallest_device" => smallest(BoxFamily::Device),
            "smallest_square" => smallest(BoxFamily::Square),
            other => panic!("{other}"),
        });
        assert_eq!(answer.edition, edition);
    }
}

/// Cables come to the same as their conductors counted one by one (V-BF-08).
#[test]
fn cables_are_their_conductors() {
    let example = examples("box_fill")
        .into_iter()
        .find(|e| e.id == "V-BF-08")
        .unwrap();
    let by_conductor = contents(&example);
    let cable = |size, insulated| EnteringCable {
        size,
        insulated,
        ground: Some(size),
    };
    let by_cable = Contents {
        cables: vec![
            cable(Size::Awg12, 2),
            cable(Size::Awg14, 3),
            cable(Size::Awg12, 2),
        ],
        conductors: Vec::new(),
        grounds: Vec::new(),
        ..by_conductor.clone()
    };
    let vessel = Vessel::marked(34.0);
    assert_eq!(fill(&vessel, &by_cable), fill(&vessel, &by_conductor));
    assert_eq!(fill(&vessel, &by_cable).room_in3, 6.0);
}

/// Seven 12 AWG grounds by hand: 2.25 x (1 + 3 x 0.25) = 3.9375 in3 from 2020, 2.25 in3 in 2017.
#[test]
fn grounds_by_edition() {
    let contents = Contents {
        grounds: conductors("12:7"),
        ..Contents::default()
    };
    let of = |edition| {
        box_fill(&Vessel::marked(20.0), &contents, edition)
            .unwrap()
            .required_in3
    };
    assert_eq!(EDITIONS.map(of), [2.25, 3.9375, 3.9375]);
    let isolated = Contents {
        isolated_grounds: conductors("12:1"),
        ..contents
    };
    let of = |edition| {
        box_fill(&Vessel::marked(20.0), &isolated, edition)
            .unwrap()
            .required_in3
    };
    assert_eq!(EDITIONS.map(of), [4.5, 4.5, 4.5]);
}

/// 314.16(B)(6), new in 2023.
#[test]
fn terminal_blocks_by_edition() {
    let contents = Contents {
        terminal_blocks: vec![Size::Awg12, Size::Awg10],
        ..Contents::default()
    };
    let of = |edition| box_fill(&Vessel::marked(20.0), &contents, edition).unwrap();
    assert_eq!(
        EDITIONS.map(|edition| of(edition).required_in3),
        [0.0, 0.0, 4.75]
    );
    assert_eq!(
        of(CodeEdition::E2020).findings,
        [BoxFinding::TerminalBlocksNotCounted]
    );
    assert_eq!(of(CodeEdition::E2023).lines[0].section, "314.16(B)(6)");
}

/// Every cell of Table 314.16(A): that many conductors fit and one more does not, but for the one odd cell, which the
/// volume does not bear out.
#[test]
fn the_counts_of_the_table() {
    for row in &BOX_VOLUMES {
        for (most, allowance) in row.most.into_iter().zip(&VOLUME_ALLOWANCES) {
            let vessel = Vessel::listed(row.family, row.trade_size_in);
            let with = |count| {
                let contents = Contents {
                    conductors: vec![Conductors {
                        size: allowance.size,
                        count,
                    }],
                    ..Contents::default()
                };
                fill(&vessel, &contents).fits
            };
            let odd = row.volume_in3 == 12.5
                && row.family == BoxFamily::RoundOctagonal
                && allowance.size == Size::Awg8;
            assert_eq!(with(most), !odd, "{row:?} {:?}", allowance.size);
            assert!(!with(most + 1));
        }
    }
}

#[test]
fn volume_of_the_vessel() {
    let of = |vessel: &Vessel| fill(vessel, &Contents::default()).volume_in3;
    let mut square = Vessel::listed(BoxFamily::Square, "4 x 1-1/2");
    square.rings_in3 = vec![6.0, 3.5];
    assert_eq!(of(&square), 30.5);
    square.barriers = vec![
        Barrier::Metal,
        Barrier::Nonmetallic,
        Barrier::Marked { volume_in3: 2.0 },
    ];
    assert_eq!(of(&square), 27.0);
    let mut ganged = Vessel::listed(BoxFamily::Masonry, "3-3/4 x 2 x 3-1/2");
    if let BoxSize::Listed { gangs, .. } = &mut ganged.size {
        *gangs = 3;
    }
    assert_eq!(of(&ganged), 63.0);
    let measured = Vessel {
        size: BoxSize::Measured {
            width_in: 2.0,
            height_in: 3.0,
            depth_in: 2.5,
        },
        rings_in3: Vec::new(),
        barriers: Vec::new(),
    };
    let answer = fill(&measured, &Contents::default());
    assert_eq!(
        (answer.volume_in3, answer.findings),
        (15.0, vec![BoxFinding::MeasuredVolume])
    );
}

#[test]
fn what_more_fits() {
    // 4 x 2-1/8 square, 30.3 in3, one 12-2 with ground on outside connectors: 3 x 2.25 = 6.75. Each further 12-2
    // takes 4.5; grounds stay one allowance up to four: 6.75 + 5 x 4.5 + 2 x 0.5625 = 30.375 is too much, so four.
    let contents = Contents {
        cables: vec![EnteringCable {
            size: Size::Awg12,
            insulated: 2,
            ground: Some(Size::Awg12),
        }],
        ..Contents::default()
    };
    let answer = fill(&Vessel::listed(BoxFamily::Square, "4 x 2-1/8"), &contents);
    let twelve = answer
        .more
        .iter()
        .find(|m| m.cable == contents.cables[0])
        .unwrap();
    assert_eq!(twelve.count, 4);
    let full = fill(&Vessel::marked(5.0), &contents);
    assert!(!full.fits && full.more.iter().all(|m| m.count == 0));
    assert_eq!(full.findings, [BoxFinding::Overfull { over_in3: 1.75 }]);
    // Two devices, 6.75 + 9 = 15.75 in3: no box for one, two device boxes of 10.0 ganged (two of 7.5 are too small), a
    // square one with room for two.
    let two = Contents {
        yokes: vec![
            Yoke {
                size: Size::Awg12,
                gangs: 1
            };
            2
        ],
        ..contents
    };
    let smallest = fill(&Vessel::marked(50.0), &two).smallest;
    let of = |family| {
        smallest
            .iter()
            .find(|of| of.family == family)
            .unwrap()
            .smallest
    };
    assert_eq!(of(BoxFamily::Device).unwrap().trade_size_in, "3 x 2 x 2");
    assert_eq!(of(BoxFamily::FdSingleCover), None);
    assert_eq!(of(BoxFamily::Square).unwrap().trade_size_in, "4 x 1-1/4");
}

#[test]
fn lines_and_findings() {
    let contents = Contents {
        passing: conductors("12:2"),
        looped: conductors("12:1"),
        canopy_wires: conductors("18:3|16:2|14:1"),
        internal_clamps: true,
        support_fittings: 2,
        pigtails: 3,
        ..Contents::default()
    };
    let answer = fill(&Vessel::marked(60.0), &contents);
    let line = |item| {
        answer
            .lines
            .iter()
            .filter(move |l| l.item == item)
            .map(|l| l.volume_in3)
            .collect::<Vec<_>>()
    };
    assert_eq!(line(FillItem::Passing), [4.5]);
    assert_eq!(line(FillItem::Looped), [4.5]);
    // Of five small canopy wires four are left out, both 16 AWG among them: one 18 AWG and the 14 AWG count.
    assert_eq!(line(FillItem::FixtureWires), [1.5, 2.0]);
    assert_eq!(line(FillItem::Clamps), [2.25]);
    assert_eq!(line(FillItem::Supports), [4.5]);
    assert_eq!(line(FillItem::Pigtails), [0.0]);
    assert_eq!(
        answer.findings,
        [BoxFinding::CanopyWiresLeftOut { count: 4 }]
    );
    let empty = Contents {
        internal_clamps: true,
        ..Contents::default()
    };
    let answer = fill(&Vessel::marked(20.0), &empty);
    assert_eq!(
        (answer.required_in3, answer.findings),
        (0.0, vec![BoxFinding::NoConductorYet])
    );
}

/// 314.16(B)(1) exception: only wires smaller than 14 AWG may be left out.
#[test]
fn canopy_wires() {
    let contents = Contents {
        canopy_wires: conductors("18:2|14:2"),
        ..Contents::default()
    };
    let answer = fill(&Vessel::marked(20.0), &contents);
    assert_eq!(answer.required_in3, 4.0);
    assert_eq!(
        answer.findings,
        [BoxFinding::CanopyWiresLeftOut { count: 2 }]
    );
}

#[test]
fn what_is_refused() {
    let none = Contents::default();
    let refused = |vessel: &Vessel, contents: &Contents| {
        box_fill(vessel, contents, CodeEdition::E2023).unwrap_err()
    };
    assert!(matches!(
        refused(&Vessel::listed(BoxFamily::Square, "5 x 2"), &none),
        BoxRefusal::UnknownBox { .. }
    ));
    for volume_in3 in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e6] {
        assert!(matches!(
            refused(&Vessel::marked(volume_in3), &none),
            BoxRefusal::Volume { .. }
        ));
        let mut ringed = Vessel::marked(20.0);
        ringed.rings_in3.push(volume_in3);
        assert!(matches!(refused(&ringed, &none), BoxRefusal::Volume { .. }));
    }
    let mut walled = Vessel::marked(1.0);
    walled.barriers = vec![Barrier::Nonmetallic];
    assert_eq!(
        refused(&walled, &none),
        BoxRefusal::Volume { volume_in3: 0.0 }
    );
    for side_in in [-2.0, 0.0, f64::NAN, 1e4] {
        let size = BoxSize::Measured {
            width_in: 2.0,
            height_in: side_in,
            depth_in: 2.0,
        };
        let vessel = Vessel {
            size,
            rings_in3: Vec::new(),
            barriers: Vec::new(),
        };
        assert!(matches!(refused(&vessel, &none), BoxRefusal::Side { .. }));
    }
    let mut octagonal = Vessel::listed(BoxFamily::RoundOctagonal, "4 x 1-1/2");
    if let BoxSize::Listed { gangs, .. } = &mut octagonal.size {
        *gangs = 2;
    }
    assert!(matches!(
        refused(&octagonal, &none),
        BoxRefusal::Gangs { gangs: 2, .. }
    ));
    let vessel = Vessel::marked(40.0);
    let large = Contents {
        conductors: conductors("4:1"),
        ..none.clone()
    };
    assert_eq!(
        refused(&vessel, &large),
        BoxRefusal::TooLarge { size: Size::Awg4 }
    );
    let many = Contents {
        conductors: conductors("14:501"),
        ..none.clone()
    };
    assert_eq!(
        refused(&vessel, &many),
        BoxRefusal::Count {
            item: FillItem::Conductors,
            count: 501
        }
    );
    let flat = Contents {
        yokes: vec![Yoke {
            size: Size::Awg14,
            gangs: 0,
        }],
        ..none.clone()
    };
    assert_eq!(
        refused(&vessel, &flat),
        BoxRefusal::Count {
            item: FillItem::Device,
            count: 0
        }
    );
    let bare = EnteringCable {
        size: Size::Awg14,
        insulated: 0,
        ground: None,
    };
    let hollow = Contents {
        cables: vec![bare],
        ..none
    };
    assert!(matches!(
        refused(&vessel, &hollow),
        BoxRefusal::Count { .. }
    ));
}

fn any_size() -> impl Strategy<Value = Size> {
    prop::sample::select(&Size::ALL[..7])
}

fn any_conductors() -> impl Strategy<Value = Vec<Conductors>> {
    prop::collection::vec(
        (any_size(), 0u32..6).prop_map(|(size, count)| Conductors { size, count }),
        0..3,
    )
}

fn any_contents() -> impl Strategy<Value = Contents> {
    let wires = (
        any_conductors(),
        any_conductors(),
        any_conductors(),
        any_conductors(),
        any_conductors(),
    );
    let grounds = (any_conductors(), any_conductors());
    let cables = prop::collection::vec(
        (any_size(), 1u32..5, prop::option::of(any_size())).prop_map(
            |(size, insulated, ground)| EnteringCable {
                size,
                insulated,
                ground,
            },
        ),
        0..5,
    );
    let yokes = prop::collection::vec(
        (any_size(), 1u32..3).prop_map(|(size, gangs)| Yoke { size, gangs }),
        0..3,
    );
    let rest = (
        prop::bool::ANY,
        0u32..3,
        prop::collection::vec(any_size(), 0..2),
        0u32..4,
    );
    (wires, grounds, cables, yokes, rest).prop_map(|(wires, grounds, cables, yokes, rest)| {
        Contents {
            cables,
            conductors: wires.0,
            passing: wires.1,
            looped: wires.2,
            fixture_wires: wires.3,
            canopy_wires: wires.4,
            grounds: grounds.0,
            isolated_grounds: grounds.1,
            internal_clamps: rest.0,
            support_fittings: rest.1,
            yokes,
            terminal_blocks: rest.2,
            pigtails: rest.3,
        }
    })
}

/// The same contents with those of another box put in.
fn together(a: &Contents, b: &Contents) -> Contents {
    fn join<T: Clone>(a: &[T], b: &[T]) -> Vec<T> {
        [a, b].concat()
    }
    Contents {
        cables: join(&a.cables, &b.cables),
        conductors: join(&a.conductors, &b.conductors),
        passing: join(&a.passing, &b.passing),
        looped: join(&a.looped, &b.looped),
        fixture_wires: join(&a.fixture_wires, &b.fixture_wires),
        canopy_wires: join(&a.canopy_wires, &b.canopy_wires),
        grounds: join(&a.grounds, &b.grounds),
        isolated_grounds: join(&a.isolated_grounds, &b.isolated_grounds),
        internal_clamps: a.internal_clamps || b.internal_clamps,
        support_fittings: a.support_fittings + b.support_fittings,
        yokes: join(&a.yokes, &b.yokes),
        terminal_blocks: join(&a.terminal_blocks, &b.terminal_blocks),
        pigtails: a.pigtails + b.pigtails,
    }
}

proptest! {
    // What more fits is tried one by one: big boxes take their time in a test build.
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn adding_anything_never_adds_room(a in any_contents(), b in any_contents(), which in 0usize..3) {
        let of = |contents: &Contents| {
            let answer = box_fill(&Vessel::marked(900.0), contents, EDITIONS[which]).unwrap();
            (answer.room_in3, answer.more.iter().map(|m| m.count).collect::<Vec<_>>())
        };
        let (before, after) = (of(&a), of(&together(&a, &b)));
        prop_assert!(after.0 <= before.0 + 1e-9);
        prop_assert!(after.1.iter().zip(&before.1).all(|(after, before)| after <= before));
    }

    #[test]
    fn the_lines_add_up_and_the_smallest_box_holds(a in any_contents(), which in 0usize..3) {
        let answer = box_fill(&Vessel::marked(900.0), &a, EDITIONS[which]).unwrap();
        let sum: f64 = answer.lines.iter().map(|line| line.volume_in3).sum();
        prop_assert!((sum - answer.required_in3).abs() < 1e-9);
        prop_assert!((answer.room_in3 + answer.required_in3 - 900.0).abs() < 1e-9);
        for of in &answer.smallest {
            let Some(row) = of.smallest else { continue };
            let mut vessel = Vessel::listed(row.family, row.trade_size_in);
            if let BoxSize::Listed { gangs, .. } = &mut vessel.size { *gangs = of.gangs; }
            prop_assert!(box_fill(&vessel, &a, EDITIONS[which]).unwrap().fits);
        }
    }

    #[test]
    fn what_is_said_to_fit_fits_and_one_more_does_not(a in any_contents(), volume_in3 in 5.0..200.0f64) {
        let vessel = Vessel::marked(volume_in3);
        let answer = fill(&vessel, &a);
        for more in answer.more {
            let mut with = a.clone();
            with.cables.extend(vec![more.cable; more.count as usize]);
            prop_assert!(more.count == 0 || fill(&vessel, &with).fits);
            with.cables.push(more.cable);
            prop_assert!(!fill(&vessel, &with).fits);
        }
    }
}

/// A large box is answered: 12-2 with ground takes two allowances of 2.25 in3 (Table 314.16(B)), and no more cables are
/// counted than a box is answered for.
#[test]
fn a_large_box_is_answered() {
    let cable = EnteringCable {
        size: Size::Awg12,
        insulated: 2,
        ground: None,
    };
    let contents = Contents {
        cables: vec![cable; 3],
        ..Contents::default()
    };
    for volume_in3 in [2000.0, 10_000.0] {
        let answer = fill(&Vessel::marked(volume_in3), &contents);
        assert!((answer.required_in3 - 13.5).abs() < 1e-9 && answer.fits);
        assert!(answer.more.iter().all(|more| more.count > 100));
    }
}

/// Device boxes of metal are ganged (common practice): two devices of 12 AWG and four 12-2 with ground are 2 x 4.5 + 8 x 2.25
/// + 2.25 = 29.25 in3; two of 18.0 in3 (3 x 2 x 3-1/2) hold that, two of 14.0 don't (Table 314.16(A)).
#[test]
fn the_smallest_device_box_is_ganged() {
    let size = Size::Awg12;
    let contents = Contents {
        cables: vec![
            EnteringCable {
                size,
                insulated: 2,
                ground: Some(size),
            };
            4
        ],
        yokes: vec![Yoke { size, gangs: 1 }; 2],
        ..Contents::default()
    };
    let all = calc::wiring::box_fill::smallest_boxes(&contents, CodeEdition::E2023).unwrap();
    let device = all.iter().find(|b| b.family == BoxFamily::Device).unwrap();
    let row = device.smallest.unwrap();
    assert_eq!((device.gangs, row.volume_in3), (2, 18.0));
}
