//! Small layouts that can be drawn on squared paper: every figure below was worked out by hand.

use calc::finish::tile::layout::{Middle, Shape, Side};
use calc::finish::tile::{BestStart, Layout, Obstacle, Pattern, Start, TileAsk, layout};
use calc::floor::Point;
use calc::floor::opening::{Span, place};

use crate::tile_rows::{outline, plain};

fn sizes(answer: &Layout) -> Vec<(f64, f64, Shape, u32)> {
    answer
        .cuts
        .iter()
        .map(|cut| (cut.width_in, cut.height_in, cut.shape, cut.count))
        .collect()
}

/// 30 x 26 in, 12 in tile without joints: 2 x 2 full, 6 in strips on the right, 2 in strips at the top, 6 x 2 in the corner.
#[test]
fn a_small_room() {
    let mut ask = plain([30.0, 26.0], [12.0, 12.0], 0.0);
    ask.buying.kerf_in = 0.0;
    let answer = layout(&ask).unwrap();
    assert_eq!((answer.full_tiles, answer.cut_tiles), (4, 5));
    assert_eq!(
        sizes(&answer),
        [
            (6.0, 12.0, Shape::Rectangle, 2),
            (12.0, 2.0, Shape::Rectangle, 2),
            (6.0, 2.0, Shape::Rectangle, 1),
        ]
    );
    let sides: Vec<_> = answer
        .sides
        .iter()
        .map(|at| (at.side, at.narrowest_in, at.cut_tiles))
        .collect();
    assert_eq!(sides, [(Side::Wall(1), 6.0, 3), (Side::Wall(2), 2.0, 3)]);
    // One cut each, two in the corner; two strips of 12, two of 12, and 2 + 6 in the corner.
    assert_eq!((answer.saw_cuts, answer.saw_length_in), (6, 56.0));
    // Two halves from one tile; two strips from the two ends of a second, which leaves no corner of that tile: the corner
    // piece, with two of its sides at joints, takes a third.
    assert_eq!(answer.without_offcuts.tiles, 9);
    assert_eq!(answer.with_offcuts.tiles, 7);
    // 9.9, so 10; 7.7, so 8: a box each.
    assert_eq!(
        (
            answer.without_offcuts.with_allowance,
            answer.with_offcuts.with_allowance
        ),
        (10, 8)
    );
    assert_eq!(
        (answer.without_offcuts.boxes, answer.with_offcuts.boxes),
        (1, 1)
    );
    assert!((answer.joint_area_in2).abs() < 1e-9);
}

/// With a saw that takes 1/8 in, a 6 in half leaves 5-7/8 in: no second half, so each takes a tile of its own. Turned a
/// quarter, a strip comes from the outer side of each rest, with both of its corners; the corner piece takes one tile more.
#[test]
fn the_saw_takes_its_part() {
    let mut ask = plain([30.0, 26.0], [12.0, 12.0], 0.0);
    assert_eq!(layout(&ask).unwrap().with_offcuts.tiles, 7);
    // Unturned, the strips need a tile of 12 in; both come from its two ends.
    ask.buying.may_turn = false;
    assert_eq!(layout(&ask).unwrap().with_offcuts.tiles, 8);
    // 29 in wide: strips of 5 in, two from a tile; and the corner of 5 x 2 in too needs a tile of its own.
    ask.outline = outline(&[[0.0, 0.0], [29.0, 0.0], [29.0, 26.0], [0.0, 26.0]]);
    assert_eq!(layout(&ask).unwrap().with_offcuts.tiles, 7);
}

/// A tub of 30 x 12 in in the corner of a 60 x 36 in room with 12 in tile: it covers 2-1/2 tiles.
#[test]
fn round_a_tub() {
    let mut ask = plain([60.0, 36.0], [12.0, 12.0], 0.0);
    ask.obstacles = vec![Obstacle {
        corner: Point::new(0.0, 0.0),
        width_in: 30.0,
        length_in: 12.0,
    }];
    let answer = layout(&ask).unwrap();
    assert_eq!((answer.full_tiles, answer.cut_tiles), (12, 1));
    assert_eq!(answer.field_area_in2, 60.0 * 36.0 - 360.0);
    assert_eq!(sizes(&answer), [(6.0, 12.0, Shape::Rectangle, 1)]);
    assert_eq!(answer.sides[0].side, Side::Obstacle(0));
    // 18 in deep instead: the third tile of the second row is an L, two more lose half their height.
    ask.obstacles[0].length_in = 18.0;
    let answer = layout(&ask).unwrap();
    assert_eq!(
        sizes(&answer),
        [
            (12.0, 12.0, Shape::Notched, 1),
            (6.0, 12.0, Shape::Rectangle, 1),
            (12.0, 6.0, Shape::Rectangle, 2),
        ]
    );
    assert_eq!(
        (answer.notched_tiles, answer.narrowest_cut_in),
        (1, Some(6.0))
    );
    // The L takes two cuts, the others one each.
    assert_eq!(answer.saw_cuts, 5);
}

/// A gap of 1/4 in at walls and obstacles; obstacles that overlap, reach past the wall and share an edge take no floor twice.
#[test]
fn obstacles_that_overlap() {
    let mut ask = plain([60.0, 48.0], [12.0, 12.0], 0.0);
    ask.edge_gap_in = 0.25;
    let island = |x, y, width_in, length_in| Obstacle {
        corner: Point::new(x, y),
        width_in,
        length_in,
    };
    ask.obstacles = vec![
        island(-5.0, 20.0, 25.0, 10.0),
        island(10.0, 20.0, 20.0, 10.0),
        island(30.5, 20.0, 5.0, 10.0),
    ];
    let answer = layout(&ask).unwrap();
    // 59.5 x 47.5 less 35.5 x 10.5 (0.25 to 35.75 and 19.75 to 30.25).
    assert!((answer.field_area_in2 - (59.5 * 47.5 - 35.5 * 10.5)).abs() < 1e-9);
}

/// A post in the middle of a tile: a hole; a wall of a hand's width across tiles: they fall in two parts.
#[test]
fn a_hole_and_two_parts() {
    let mut ask = plain([36.0, 36.0], [12.0, 12.0], 0.0);
    ask.obstacles = vec![Obstacle {
        corner: Point::new(16.0, 17.0),
        width_in: 3.0,
        length_in: 2.0,
    }];
    let answer = layout(&ask).unwrap();
    assert_eq!(sizes(&answer), [(12.0, 12.0, Shape::Notched, 1)]);
    // Left of the post 4 in are left, right of it 5; below and above 5.
    assert_eq!((answer.narrowest_cut_in, answer.saw_cuts), (Some(4.0), 4));
    ask.obstacles[0] = Obstacle {
        corner: Point::new(16.0, 0.0),
        width_in: 4.0,
        length_in: 24.0,
    };
    let answer = layout(&ask).unwrap();
    assert_eq!(sizes(&answer), [(12.0, 12.0, Shape::InParts, 2)]);
    assert_eq!((answer.full_tiles, answer.with_offcuts.tiles), (7, 9));
}

/// 12 in tile on the diagonal in a room of 2 x 2 diagonals, a joint crossing in the middle: the diagonal of 12 in is 16.97 in.
/// Four tiles round the middle point at the walls' middles... each side of 33.94 in is met by 4 half tiles.
#[test]
fn diagonals_in_a_square() {
    let side = 24.0 * std::f64::consts::SQRT_2;
    let mut ask = plain([side, side], [12.0, 12.0], 0.0);
    ask.pattern = Pattern::Diagonal;
    ask.start = Start::CentredOnJoint;
    ask.buying.kerf_in = 0.0;
    let answer = layout(&ask).unwrap();
    // Area 1152 = 8 tiles: 4 full round the middle, 8 halves along the walls.
    assert_eq!((answer.full_tiles, answer.cut_tiles), (4, 8));
    assert_eq!(sizes(&answer).len(), 1);
    let half = answer.cuts[0];
    assert_eq!((half.shape, half.count), (Shape::Slanted, 8));
    // A half tile reaches half a diagonal into the room.
    assert!((answer.narrowest_cut_in.unwrap() - 6.0 * std::f64::consts::SQRT_2).abs() < 1e-9);
    assert!((answer.narrowest_share - 0.5).abs() < 1e-9);
    // Two halves from each tile, but for the saw.
    assert_eq!(
        (answer.without_offcuts.tiles, answer.with_offcuts.tiles),
        (12, 8)
    );
    assert_eq!(answer.saw_cuts, 8);
    ask.buying.kerf_in = 0.125;
    assert_eq!(layout(&ask).unwrap().with_offcuts.tiles, 12);
}

/// Herringbone of 3 x 6 in without joints: each pair of tiles covers 36 square inches, and none overlaps another.
#[test]
fn a_herringbone_covers_once() {
    for (tile, diagonal) in [([3.0, 6.0], false), ([6.0, 3.0], true), ([7.0, 2.0], false)] {
        let mut ask = plain([60.0, 48.0], tile, 0.0);
        ask.pattern = Pattern::Herringbone { diagonal };
        let answer = layout(&ask).unwrap();
        assert!(
            (answer.tile_face_area_in2 - 2880.0).abs() < 1e-6,
            "{tile:?} {diagonal}"
        );
        let turned = answer.tiles.iter().filter(|tile| tile.turned).count() as f64;
        let share = turned / answer.tiles.len() as f64;
        assert!((share - 0.5).abs() < 0.1, "{share}");
    }
    // With joints, tile is its share of tile and joint; the room is large against the tile, so nearly.
    let mut ask = plain([240.0, 240.0], [3.0, 6.0], 0.125);
    ask.pattern = Pattern::Herringbone { diagonal: true };
    let answer = layout(&ask).unwrap();
    let share = answer.tile_face_area_in2 / answer.field_area_in2;
    let wanted = 18.0 / (3.125 * 6.125);
    assert!((share / wanted - 1.0).abs() < 0.005, "{share} {wanted}");
}

/// A doorway 30 in wide in the near wall of a 60 in room, centred, with the room's middle on a tile and on a joint.
#[test]
fn at_a_doorway() {
    let mut ask = plain([60.0, 96.0], [12.0, 12.0], 0.0);
    let span = Span {
        wall: 0,
        from_in: 15.0,
        width_in: 30.0,
    };
    ask.openings = place(&ask.outline, &[span]).unwrap();
    ask.start = Start::CentredOnTile;
    let answer = layout(&ask).unwrap();
    let door = &answer.doorways[0];
    // Tiles end at 12, 24, 36, 48 in: 9 in of one at each jamb, 12 in in the middle; the cut at the wall is 6 in.
    assert_eq!((door.left_in, door.right_in), (9.0, 9.0));
    assert_eq!((door.middle, door.tiles.len()), (Middle::Tile, 3));
    assert!(door.off_middle_in.abs() < 1e-9);
    assert_eq!(door.narrowest_in, Some(6.0));
    ask.start = Start::At(Point::new(2.0, 0.0));
    let answer = layout(&ask).unwrap();
    let door = &answer.doorways[0];
    // Joints at 26 and 38 in: the tile over the middle (30 in) has its own middle at 32 in, to the left as seen from inside
    // (x grows to the left for someone who looks at the near wall).
    assert!((door.off_middle_in + 2.0).abs() < 1e-9, "{door:?}");
    // From the left jamb at 45 in: 45 to 38, 38 to 26, 26 to 15 in (one joint more at 14).
    assert!((door.left_in - 7.0).abs() < 1e-9 && (door.right_in - 11.0).abs() < 1e-9);
    assert_eq!(door.narrowest_in, None);
}

/// The lines to snap in a 60 x 96 in room with 12 in tile from the corner: joints at 24 or 36 in, and at 48 in.
#[test]
fn lines_to_snap() {
    let answer = layout(&plain([60.0, 96.0], [12.0, 12.0], 0.0)).unwrap();
    let [along, across] = answer.snap_lines.as_slice() else {
        unreachable!("{:?}", answer.snap_lines)
    };
    assert!(along.along_rows && !across.along_rows);
    // On wall 3 (the left, walked downwards) 48 in from its start at the far corner; on wall 1 48 in from the near one.
    assert_eq!((along.from.wall, along.to.wall), (3, 1));
    assert!((along.from.along_in - 48.0).abs() < 1e-9 && (along.to.along_in - 48.0).abs() < 1e-9);
    assert_eq!((across.from.wall, across.to.wall), (0, 2));
    assert!([24.0, 36.0].contains(&across.from.at.x_in));
    // A room with a corner at 45 degrees to it: lines still end on walls.
    let mut ask = plain([60.0, 96.0], [12.0, 12.0], 0.125);
    ask.outline = outline(&[
        [0.0, 0.0],
        [60.0, 0.0],
        [60.0, 70.0],
        [34.0, 96.0],
        [0.0, 96.0],
    ]);
    ask.pattern = Pattern::Diagonal;
    for line in layout(&ask).unwrap().snap_lines {
        assert!(line.from.distance_in < 1e-6 && line.to.distance_in < 1e-6);
        assert!(line.from.at.distance_in(line.to.at) > 40.0);
    }
}

fn best(ask: &TileAsk) -> Layout {
    let mut search = BestStart::new(ask).unwrap();
    let mut tried = 0;
    while !search.step().done() {
        tried += 1;
        assert_eq!(search.progress().tried, tried);
    }
    search.layout().unwrap()
}

/// 60 x 97 in, 12 in tile without joints: from a corner a strip of 1 in at the far wall. Best: 9 rows, since 8 full ones and
/// 1 in are 9 rows too; the two border rows share 13 in, so both can be 6 in or more. 5 columns, all full.
#[test]
fn the_best_start_has_no_strip() {
    let mut ask = plain([60.0, 97.0], [12.0, 12.0], 0.0);
    let corner = layout(&ask).unwrap();
    assert_eq!(
        (corner.narrowest_cut_in, corner.tiles_touched),
        (Some(1.0), 45)
    );
    ask.start = Start::Best;
    let answer = layout(&ask).unwrap();
    assert_eq!(answer, best(&ask));
    assert_eq!(answer.tiles_touched, 45);
    assert!(answer.narrowest_cut_in.unwrap() >= 6.0);
    assert_eq!(answer.full_tiles, 35);
}

/// Every step of the working is a sum that can be done again.
#[test]
fn the_working_can_be_done_again() {
    let mut ask = plain([60.0, 96.0], [12.0, 12.0], 0.125);
    ask.edge_gap_in = 0.25;
    let answer = layout(&ask).unwrap();
    let steps = answer.working();
    let value = |formula: &str, name: &str| {
        let step = steps.iter().find(|step| step.formula == formula).unwrap();
        let all = step.inputs.iter().chain([&step.result]);
        let found = all.clone().find(|figure| figure.name == name);
        found
            .unwrap_or_else(|| unreachable!("{formula} {name}"))
            .value
    };
    assert_eq!(value("tile_field", "field_area"), 59.5 * 95.5);
    assert_eq!(
        value("tiles_touched", "full_tiles") + value("tiles_touched", "cut_tiles"),
        value("tiles_touched", "tiles_touched")
    );
    let joints = value("joint_area", "field_area") - value("joint_area", "tile_face_area");
    assert!((value("joint_area", "joint_area") - joints).abs() < 1e-9);
    let with = value("tiles_with_allowance", "tiles")
        * (1.0 + value("tiles_with_allowance", "allowance") / 100.0);
    assert_eq!(
        value("tiles_with_allowance", "tiles_with_allowance"),
        with.ceil()
    );
    let boxes = value("tile_boxes", "tiles_with_allowance") / value("tile_boxes", "tiles_per_box");
    assert_eq!(value("tile_boxes", "tile_boxes"), boxes.ceil());
    let module_in2 =
        (value("tiles_by_area", "tile_width") + value("tiles_by_area", "tile_joint")).powi(2);
    let by_area = value("tiles_by_area", "field_area") / module_in2
        * (1.0 + value("tiles_by_area", "cut_allowance") / 100.0);
    assert_eq!(value("tiles_by_area", "tiles_by_area"), by_area.ceil());
}
