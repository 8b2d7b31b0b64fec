//! Closing up a room, from its entries to its answers.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use calc::finish::board::Edge;
use calc::finish::tile::{Layout, layout};
use calc::job::questions::answers::ClosingAnswers;
use calc::job::questions::finish::paint::{PaintKind, paint_of};
use calc::job::questions::finish::trim::{cut_list, pieces};
use calc::job::questions::finish::{FinishProblem, WallsProblem, air, board, tile};
use calc::job::{
    BuiltInEntry, Covered, Opening, Room, TilePattern, TileStart, Typed, Units, WindowEntry, demo,
};

fn inches(text: &str) -> Typed {
    Typed::new(text, "in")
}

fn room(width: &str, length: &str) -> Room {
    let mut room = Room::new(1, "Bath", Units::FeetInches);
    room.outline.width = inches(width);
    room.outline.length = inches(length);
    room
}

fn door(id: u32, wall: u32, from: &str, width: &str) -> Opening {
    Opening {
        id,
        wall,
        from_start: inches(from),
        width: inches(width),
        ..demo::job("d", "").rooms[0].openings[0].clone()
    }
}

fn laid(room: &Room) -> Layout {
    layout(&tile::ask(room).unwrap()).unwrap()
}

/// Counts of a layout worked out in exact fractions and confirmed by an independent polygon clip.
#[test]
fn a_bath_of_five_by_eight_is_tiled() {
    let mut room = room("60", "96");
    let tile = &mut room.tile;
    tile.width = inches("12");
    tile.height = inches("12");
    tile.joint = inches("1/8");
    tile.edge_gap = inches("0");
    let counts = |room: &Room| {
        let laid = laid(room);
        (laid.full_tiles, laid.cut_tiles, laid.narrowest_cut_in)
    };
    assert_eq!(counts(&room), (28, 12, Some(11.125)));
    room.tile.start = TileStart::Tile;
    assert_eq!(counts(&room), (21, 24, Some(5.5)));
    room.tile.start = TileStart::Corner;
    room.tile.pattern = TilePattern::Half;
    assert_eq!(counts(&room), (28, 16, Some(5.4375)));
    room.tile.pattern = TilePattern::Third;
    let (full, cut, narrowest) = counts(&room);
    assert_eq!((full, cut), (28, 17));
    assert!((narrowest.unwrap() - 41.0 / 12.0).abs() < 1e-9);
}

#[test]
fn the_bed_and_the_joints_follow_the_tiled_area() {
    // 100 square feet of 12 x 24 in tile, 1/8 in joints, 3/8 in deep: 14400 x 36 / 288 x 0.125 x 0.375 = 84.375 cubic inches.
    let mut room = room("120", "120");
    let tile = &mut room.tile;
    tile.width = inches("24");
    tile.height = inches("12");
    tile.joint = inches("1/8");
    tile.joint_depth = inches("3/8");
    assert_eq!(
        tile::grout_for(&room.tile, 100.0).unwrap().volume_in3,
        84.375
    );
    // 200 square feet at 65 a bag: 3.08, so 4.
    room.tile.mortar_coverage = Typed::new("65", "ft2");
    room.tile.mortar_allowance = Typed::plain("0");
    assert_eq!(tile::mortar_for(&room.tile, 200.0).unwrap().bags, 4);
    // No roll, no membrane; 10 x 10 ft turned up 6 in along 40 ft less a door of 30 in: 100 + 37.5 / 2 = 118.75.
    assert_eq!(tile::membrane_for(&room, 100.0), Ok(None));
    room.openings.push(door(7, 0, "20", "30"));
    room.tile.membrane_roll = Typed::new("54", "ft2");
    room.tile.membrane_turn_up = inches("6");
    let membrane = tile::membrane_for(&room, 100.0).unwrap().unwrap();
    assert!((membrane.area_ft2 - 118.75).abs() < 1e-9);
}

#[test]
fn a_large_tile_at_half_offset_is_past_a_third() {
    let mut room = room("360", "264");
    room.tile.width = inches("24");
    room.tile.height = inches("12");
    room.tile.pattern = TilePattern::Half;
    let rules = tile::rules(&room).unwrap();
    assert!(
        rules
            .verdicts
            .iter()
            .any(|verdict| verdict.rule.id == "offset_most" && !verdict.within)
    );
    // 30 by 22 ft inside, every 25 ft: one line and none.
    assert_eq!(rules.movement.least_lines, [1, 0]);
}

/// 12 by 14 ft, 9 ft walls, 45 square feet of openings, 350 square feet a gallon, two coats: 423 square feet, 2.417 gal.
#[test]
fn a_room_is_painted() {
    let mut room = room("144", "168");
    room.walls.height = inches("108");
    // A door of 3 by 7 ft and two windows, 4 by 3 ft each: 21 + 24 = 45.
    room.openings.push(door(7, 0, "20", "36"));
    room.walls.door_height = inches("84");
    for (id, wall) in [(8, 1), (9, 2)] {
        let mut window = WindowEntry::new(id);
        window.wall = wall;
        window.from_start = inches("30");
        window.sill = inches("36");
        window.width = inches("48");
        window.height = inches("36");
        room.walls.windows.push(window);
    }
    room.paint.allowance_percent = Typed::plain("0");
    let paint = paint_of(&room, PaintKind::Walls).unwrap();
    assert_eq!(paint.area_ft2, 423.0);
    assert!((paint.gal - 2.417_142_857).abs() < 1e-6);
    room.walls.windows[1].width = inches("170");
    assert_eq!(
        paint_of(&room, PaintKind::Walls),
        Err(FinishProblem::Walls(WallsProblem::WindowOutside(9)))
    );
    room.walls.windows.clear();
    room.walls.door_height = inches("110");
    assert_eq!(
        paint_of(&room, PaintKind::Walls),
        Err(FinishProblem::Walls(WallsProblem::DoorHigherThanWall))
    );
    // The ceiling needs no walls: 168 square feet.
    assert_eq!(paint_of(&room, PaintKind::Ceiling).unwrap().area_ft2, 168.0);
    room.openings[0].width = Typed::default();
    assert_eq!(
        paint_of(&room, PaintKind::Walls),
        Err(FinishProblem::Walls(WallsProblem::OpeningUnplaced(7)))
    );
}

/// 12 x 10 ft, one 32 in door with 2-1/4 in casing: 44 - 36.5 / 12 ft of base.
#[test]
fn base_runs_from_corner_to_casing() {
    let mut room = room("144", "120");
    room.openings.push(door(7, 0, "40", "32"));
    room.trim.reveal = inches("0");
    let trim = pieces(&room).unwrap();
    assert!((trim.base_ft * 1.1 - 45.054_166_67).abs() < 1e-6);
    let casing: Vec<f64> = trim.casing.iter().map(|piece| piece.length_in).collect();
    assert_eq!(casing, [82.25, 82.25, 36.5]);
    let list = cut_list(&room.trim, &trim.base).unwrap().unwrap();
    assert!(list.stock_in >= list.least_in && list.stock_in <= list.first_fit_in);
    // A vanity of 36 in with its own toe strip takes 3 ft of base away.
    let mut vanity = BuiltInEntry::new(8);
    vanity.wall = 2;
    vanity.from_start = inches("0");
    vanity.width = inches("36");
    vanity.own_toe_strip = true;
    room.walls.built_ins.push(vanity);
    assert!((trim.base_ft - pieces(&room).unwrap().base_ft - 3.0).abs() < 1e-9);
    // A wall longer than the longest stock is spliced.
    room.trim.no_16_ft = true;
    room.trim.no_14_ft = true;
    room.trim.no_12_ft = true;
    let spliced = pieces(&room).unwrap();
    assert!(spliced.base.iter().all(|piece| piece.length_in <= 120.0));
    assert!(cut_list(&room.trim, &spliced.base).unwrap().is_some());
}

#[test]
fn board_follows_the_walls_as_seen_from_inside() {
    let mut room = room("144", "120");
    room.walls.height = inches("96");
    room.openings.push(door(7, 0, "40", "32"));
    room.board.on = Covered::Both;
    let plan = board::plan(&room).unwrap();
    // Along the wall from its start to its left end: 144 - 40 - 32 = 72 in from the left.
    assert_eq!(plan.ask.surfaces[0].openings[0].x_in, 72.0);
    assert_eq!(plan.ask.surfaces.len(), 5);
    // 44 ft of wall 8 ft high, a ceiling of 120, less the door: 32 x 80 in.
    assert!((plan.covered_ft2 - (352.0 + 120.0 - 32.0 * 80.0 / 144.0)).abs() < 1e-9);
    assert!(plan.sheet_count >= plan.fewest_possible);
    assert!(
        plan.ask
            .surfaces
            .iter()
            .take(4)
            .all(|of| of.end == Edge::Inside)
    );
    let closing = board::closing(&room.board, &plan).unwrap();
    assert!(closing.tape_ft >= plan.taped_ft());
    // The inner corner of an L stands out into the room: one corner for bead, 8 ft.
    room.outline.shape = calc::job::Shape::L;
    room.outline.notch_width = inches("40");
    room.outline.notch_length = inches("40");
    room.openings.clear();
    let plan = board::plan(&room).unwrap();
    assert_eq!(plan.outside_ft, [8.0]);
    let ceiling = plan.ask.surfaces.last().unwrap();
    assert_eq!(
        (ceiling.openings[0].x_in, ceiling.openings[0].y_in),
        (104.0, 80.0)
    );
}

/// A bath of 5 by 8 ft needs 50 cfm; of 20 by 12 ft with tub, shower and toilet 150 (guidance of a fan trade body).
#[test]
fn air_follows_the_floor() {
    let mut small = room("60", "96");
    assert_eq!(air::need(&small).unwrap().required_cfm, 50.0);
    let mut large = room("240", "144");
    for count in [
        &mut large.air.toilets,
        &mut large.air.showers,
        &mut large.air.tubs,
    ] {
        *count = Typed::plain("1");
    }
    assert_eq!(air::need(&large).unwrap().required_cfm, 150.0);
    // 10 ft straight, two elbows at 15, a cap at 30: 70 ft.
    small.air.length = Typed::new("10", "ft");
    small.air.elbows = Typed::plain("2");
    small.air.low_flow = Typed::plain("80");
    small.air.high_flow = Typed::plain("50");
    let exhaust = air::exhaust_of(&small).unwrap();
    assert!((exhaust.flow.friction.equivalent_ft - 70.0).abs() < 1e-9);
    small.air.fan_amps = Typed::plain("0.5");
    small.air.heater_watts = Typed::plain("1300");
    let load = air::load_of(&small.air).unwrap();
    assert!((load.amps - 11.333_333).abs() < 1e-6);
}

#[test]
fn every_entry_that_is_missing_is_told() {
    let empty = Room::new(1, "", Units::Metric);
    assert_eq!(tile::ask(&empty).unwrap_err(), FinishProblem::Outline);
    let bare = room("60", "96");
    let Err(FinishProblem::Entries(missing)) = tile::ask(&bare) else {
        panic!("a tile without a size")
    };
    let names: Vec<_> = missing.iter().map(|problem| problem.name).collect();
    assert_eq!(names, ["width", "height"]);
    let Err(FinishProblem::Entries(missing)) = air::exhaust_of(&bare) else {
        panic!("a fan without a rating")
    };
    let names: Vec<_> = missing.iter().map(|problem| problem.name).collect();
    assert_eq!(names, ["low_flow", "length"]);
    // Nothing is painted or cut until it is said what.
    let printed = serde_json::to_value(ClosingAnswers::of(&bare)).unwrap();
    assert_eq!(printed["paint"], serde_json::json!([]));
    assert_eq!(printed["cutting"], serde_json::json!([]));
    let mut bare = bare;
    bare.paint.walls.used = true;
    let printed = serde_json::to_value(ClosingAnswers::of(&bare)).unwrap();
    assert_eq!(printed["mortar"]["refused"], "before");
    assert_eq!(printed["paint"][0]["kind"], "walls");
    assert_eq!(
        printed["paint"][0]["answer"]["refused"]["entries"][0]["name"],
        "wall_height"
    );
}
