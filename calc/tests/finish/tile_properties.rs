//! What holds for every layout.

use calc::finish::tile::best::Score;
use calc::finish::tile::{Buying, Layout, Obstacle, Pattern, Start, TileAsk, layout};
use calc::floor::Point;
use proptest::prelude::*;

use crate::tile_rows::{BUYING, outline};

fn pattern() -> impl Strategy<Value = Pattern> {
    prop_oneof![
        Just(Pattern::Straight),
        (0.0..1.0f64).prop_map(|offset| Pattern::RunningBond { offset }),
        Just(Pattern::RunningBond { offset: 0.5 }),
        Just(Pattern::Diagonal),
        Just(Pattern::Herringbone { diagonal: false }),
        Just(Pattern::Herringbone { diagonal: true }),
    ]
}

prop_compose! {
    fn question()(
        width in 40.0..150.0f64,
        length in 40.0..150.0f64,
        notch in prop::option::of((0.2..0.7f64, 0.2..0.7f64)),
        slant in 0.0..5.0f64,
        tile in (3.0..24.0f64, 3.0..24.0f64),
        joint_in in prop_oneof![Just(0.0), 0.0625..0.5f64],
        edge_gap_in in prop_oneof![Just(0.0), Just(0.25)],
        pattern in pattern(),
        tub in prop::option::of((0.0..0.6f64, 0.0..0.6f64, 5.0..30.0f64, 5.0..30.0f64)),
        may_turn in any::<bool>(),
    ) -> TileAsk {
        let corners = match notch {
            Some((x, y)) => vec![
                [0.0, 0.0], [width, slant], [width, y * length + slant], [x * width, y * length + slant],
                [x * width, length], [0.0, length],
            ],
            None => vec![[0.0, 0.0], [width, slant], [width, length], [0.0, length]],
        };
        TileAsk {
            outline: outline(&corners),
            obstacles: tub.into_iter().map(|(x, y, width_in, length_in)| Obstacle {
                // Low enough to lie in the room even where a notch is taken out.
                corner: Point::new(x * 0.3 * width, 6.0 + y * 0.2 * length), width_in, length_in,
            }).collect(),
            openings: Vec::new(),
            width_in: tile.0,
            height_in: tile.1,
            joint_in,
            edge_gap_in,
            pattern,
            start: Start::Corner,
            least_share: 0.5,
            buying: Buying { may_turn, ..BUYING },
        }
    }
}

fn score(layout: &Layout) -> Score {
    Score {
        wide_enough: layout.narrowest_share >= layout.ask.least_share - 1e-9,
        narrowest_share: layout.narrowest_share,
        tiles: layout.tiles_touched,
        cut_tiles: layout.cut_tiles,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn tile_and_joint_make_up_the_field(ask in question()) {
        let answer = layout(&ask).unwrap();
        let tile_in2 = ask.width_in * ask.height_in;
        // Whole tiles cover at least what shows of them; each, with half the joint round it, no more than its module.
        prop_assert!(f64::from(answer.tiles_touched) * tile_in2 >= answer.tile_face_area_in2 - 1e-6);
        let module_in2 = (ask.width_in + ask.joint_in) * (ask.height_in + ask.joint_in);
        prop_assert!(f64::from(answer.tiles_touched) * module_in2
            >= answer.field_area_in2 - ask.joint_in * ask.outline.perimeter_in() * 2.0);
        // A tile that misses full by less than rounding along its sides counts as full.
        prop_assert!(
            answer.tile_face_area_in2 <= answer.field_area_in2 + 1e-4,
            "{} {}", answer.tile_face_area_in2, answer.field_area_in2
        );
        let together = answer.tile_face_area_in2 + answer.joint_area_in2;
        prop_assert!((together - answer.field_area_in2).abs() < 1e-4);
        if ask.joint_in == 0.0 {
            prop_assert!(answer.joint_area_in2 < 1e-6 * answer.field_area_in2);
        }
        prop_assert_eq!(answer.tiles.len() as u32, answer.tiles_touched);
        prop_assert_eq!(answer.full_tiles + answer.cut_tiles, answer.tiles_touched);
    }

    #[test]
    fn offcuts_save_no_more_than_there_is(ask in question()) {
        let answer = layout(&ask).unwrap();
        let tile_in2 = ask.width_in * ask.height_in;
        let (with, without) = (answer.with_offcuts.tiles, answer.without_offcuts.tiles);
        prop_assert!(with <= without && with >= answer.full_tiles);
        prop_assert!(f64::from(with) * tile_in2 >= answer.tile_face_area_in2 - 1e-6);
        // A cut piece is smaller than a tile, and every cut is a cut of the saw.
        for cut in &answer.cuts {
            prop_assert!(cut.width_in <= ask.width_in.max(ask.height_in) + 1e-6 && cut.width_in > 0.0);
            prop_assert!(cut.height_in <= ask.width_in.max(ask.height_in) + 1e-6 && cut.height_in > 0.0);
        }
        prop_assert!(answer.saw_cuts >= answer.cut_tiles);
        prop_assert_eq!(answer.narrowest_cut_in.is_none(), answer.cut_tiles == 0);
    }

    #[test]
    fn shifting_the_start_by_a_tile_changes_nothing(mut ask in question(), x in 0.0..20.0f64, y in 0.0..20.0f64) {
        ask.pattern = Pattern::Straight;
        let from = |x, y| {
            let mut ask = ask.clone();
            ask.start = Start::At(Point::new(x, y));
            layout(&ask).unwrap()
        };
        let (one, other) = (from(x, y), from(x + ask.width_in + ask.joint_in, y - ask.height_in - ask.joint_in));
        prop_assert_eq!((one.full_tiles, one.cut_tiles), (other.full_tiles, other.cut_tiles));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn the_best_start_is_never_worse(mut ask in question()) {
        // Coarse, so that a plain build is quick.
        ask.width_in += 6.0;
        ask.height_in += 6.0;
        let mut found = Vec::new();
        for start in [Start::Best, Start::Corner, Start::CentredOnTile, Start::CentredOnJoint, Start::At(Point::new(3.3, 4.4))] {
            ask.start = start;
            found.push(score(&layout(&ask).unwrap()));
        }
        for other in &found[1..4] {
            prop_assert!(!other.beats(&found[0]), "{:?} beats {:?}", other, found[0]);
        }
        // Walls along the tiles: no start at all is better, not even one drawn at random.
        if matches!(ask.pattern, Pattern::Straight) && ask.outline.corners()[1].y_in == 0.0 {
            prop_assert!(!found[4].beats(&found[0]));
        }
    }

    #[test]
    fn no_start_is_better_where_walls_run_with_the_tiles(
        (width, length) in (60.0..120.0f64, 60.0..120.0f64),
        notch in (0.3..0.7f64, 0.3..0.7f64),
        tile in (8.0..24.0f64, 8.0..24.0f64),
        tub in prop::option::of((0.0..0.3f64, 0.0..0.3f64)),
        starts in prop::collection::vec((0.0..30.0f64, 0.0..30.0f64), 20),
    ) {
        let (x, y) = (notch.0 * width, notch.1 * length);
        let mut ask = crate::tile_rows::plain([width, length], [tile.0, tile.1], 0.125);
        ask.outline = outline(&[[0.0, 0.0], [width, 0.0], [width, y], [x, y], [x, length], [0.0, length]]);
        ask.obstacles = tub.into_iter().map(|(x, y)| Obstacle {
            corner: Point::new(x * width, y * length), width_in: 20.0, length_in: 15.0,
        }).collect();
        ask.start = Start::Best;
        let best = score(&layout(&ask).unwrap());
        for (x, y) in starts {
            ask.start = Start::At(Point::new(x, y));
            let other = score(&layout(&ask).unwrap());
            prop_assert!(!other.beats(&best), "{other:?} beats {best:?}");
        }
    }
}
