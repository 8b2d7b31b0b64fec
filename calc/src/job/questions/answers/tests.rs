use super::*;
use crate::job::questions::room::OpeningTrouble;
use crate::job::{Units, demo};

fn demo_room() -> Room {
    demo::job("demo", "2026-03-02T08:00:00Z").rooms.remove(0)
}

#[test]
fn the_demo_is_answered_throughout() {
    let all = serde_json::to_string(&FloorAnswers::of(&demo_room())).unwrap();
    assert!(!all.contains("refused"), "{all}");
    assert!(!all.contains("\"problems\":[{"));
}

#[test]
fn the_demo_shows_why_a_flat_pour_pays() {
    let found = FloorAnswers::of(&demo_room());
    let (level, flat) = (found.level.unwrap(), found.flat.unwrap());
    let bags = |poured: &Poured| poured.bags.as_ref().unwrap().bags;
    assert!(
        bags(&flat) + 4 <= bags(&level),
        "{} {}",
        bags(&flat),
        bags(&level)
    );
    let lifts = |poured: &Poured| poured.lifts.as_ref().unwrap().as_ref().unwrap().lifts.len();
    assert_eq!((lifts(&level), lifts(&flat)), (2, 1));
    assert!(flat.pour.tilt_limit_binding);
    // Too hollow for large tile as it is.
    assert!(!found.flatness.unwrap().passes);
}

#[test]
fn a_new_room_says_what_is_missing() {
    let found = FloorAnswers::of(&Room::new(1, "", Units::FeetInches));
    assert!(matches!(&found.outline, Err(ShapeProblem::Entries(all)) if all.len() == 2));
    assert_eq!(found.floor, Err(FloorProblem::Outline));
    assert_eq!(found.level, Err(PourProblem::Floor));
    assert_eq!(found.edge_strip_in, None);
    let text = serde_json::to_value(&found).unwrap();
    assert_eq!(text["flat"]["refused"], "floor");
}

#[test]
fn a_bad_part_leaves_the_others_answered() {
    let mut room = demo_room();
    room.openings[1].width = crate::job::Typed::plain("wide");
    room.pour.bag_yield = Default::default();
    let found = FloorAnswers::of(&room);
    assert!(
        matches!(&found.openings[1].place, Err(all) if matches!(all[..], [OpeningTrouble::Entry(_)]))
    );
    let flat = found.flat.unwrap();
    assert!(matches!(&flat.bags, Err(MixingProblem::Entries(all)) if all[0].name == "bag_yield"));
    assert_eq!(flat.pace, Err(MixingProblem::Bags));
    assert_eq!(flat.thresholds.len(), 1);
    assert!(flat.lifts.is_ok());
}

#[test]
fn refusals_name_spots_by_their_ids() {
    let mut room = demo_room();
    let (first, second) = (room.survey.spots[0].id, room.survey.spots[1].id);
    room.survey.spots[1].y = room.survey.spots[0].y.clone();
    let Err(FloorProblem::Spots { spots, .. }) = FloorAnswers::of(&room).floor else {
        panic!("two spots at one place")
    };
    assert_eq!(spots, [first, second]);
}

#[test]
fn a_dam_needs_no_layers_to_be_known() {
    let mut room = demo_room();
    let dams = |room: &Room| FloorAnswers::of(room).level.unwrap().dams;
    let before = dams(&room);
    assert!(before.iter().all(|dam| dam.beyond_known));
    room.layers[0].thickness = Default::default();
    assert_eq!(dams(&room), before);
    // A floor beyond that isn't known counts with the opening's whole width, 30 in.
    room.openings[0].beyond = crate::job::Beyond::Unknown;
    let unknown = dams(&room)[0];
    assert_eq!((unknown.dam_in, unknown.beyond_known), (30.0, false));
}

/// A room of 100 in square read down from a line: its corners and its middle, where it is 3/8 in low.
fn square_room() -> Room {
    let mut room = Room::new(1, "square", Units::FeetInches);
    let typed = |text: &str| crate::job::Typed::new(text, "in");
    room.outline.width = typed("100");
    room.outline.length = typed("100");
    room.pour.cover = typed("1/4");
    let spots = [
        ("0", "0", "36"),
        ("100", "0", "36"),
        ("100", "100", "36"),
        ("0", "100", "36"),
        ("50", "50", "36 3/8"),
    ];
    for (id, (x, y, reading)) in (10..).zip(spots) {
        room.survey.spots.push(crate::job::Spot {
            id,
            x: typed(x),
            y: typed(y),
            reading: typed(reading),
            checked: String::new(),
            rest: crate::job::Rest::new(),
        });
    }
    room
}

#[test]
fn a_spot_a_little_past_the_wall_is_at_the_wall_for_every_question() {
    let mut room = square_room();
    room.survey.spots[1].x = crate::job::Typed::new("100 3/4", "in");
    // The floor at it 1/2 in high, so that the flat pour leans and its top differs from place to place.
    room.survey.spots[1].reading = crate::job::Typed::new("35 1/2", "in");
    room.pour.height_rules.push(crate::job::HeightRule {
        id: 30,
        spot: Some(11),
        rule: crate::job::HeightRuleKind::AtMost,
        reading: crate::job::Typed::new("35", "in"),
        rest: crate::job::Rest::new(),
    });
    let found = FloorAnswers::of(&room);
    let moved: Vec<_> = found.survey.moved.iter().map(|m| (m.spot, m.at)).collect();
    assert_eq!(moved, [(11, crate::floor::Point::new(100.0, 0.0))]);
    // The rule is no longer outside, and the pin's depth and top are of one place.
    for poured in [found.level.unwrap(), found.flat.unwrap()] {
        for spot in &poured.spots {
            let height_in = spot.top_in - spot.depth_in;
            let want_in = match spot.spot {
                11 => -35.5,
                14 => -36.375,
                _ => -36.0,
            };
            assert!((height_in - want_in).abs() < 1e-9, "{spot:?}");
        }
    }
}

#[test]
fn a_blank_allowance_is_missing_not_none() {
    let mut room = demo_room();
    room.pour.allowance_percent = Default::default();
    let bags = FloorAnswers::of(&room).flat.unwrap().bags;
    let Err(MixingProblem::Entries(problems)) = bags else {
        panic!("no allowance was entered")
    };
    assert_eq!(problems[0].name, "allowance_percent");
}

#[test]
fn a_height_at_an_opening_without_a_place_says_so() {
    let mut room = demo_room();
    room.openings[0].from_start = crate::job::Typed::plain("40'");
    room.openings[0].pour_at_most = crate::job::Typed::plain("36\"");
    let Err(PourProblem::Entries(problems)) = FloorAnswers::of(&room).flat else {
        panic!("the opening stands in no wall")
    };
    let told: Vec<_> = problems
        .iter()
        .map(|p| (p.name, p.row, p.refusal.clone()))
        .collect();
    let refusal = crate::quantity::EntryRefusal::NoPlace;
    assert_eq!(told, [("pour_at_most", Some(room.openings[0].id), refusal)]);
}

#[test]
fn nothing_that_is_not_there_is_a_negative_zero() {
    let mut room = square_room();
    let text = serde_json::to_string(&FloorAnswers::of(&room)).unwrap();
    assert!(!text.contains("-0.0,") && !text.contains("-0.0}"), "{text}");
    room.openings = vec![crate::saved::Saved::read(serde_json::json!({
        "id": 9, "wall": 0, "from_start": "12\"", "width": "30\"", "beyond": "reading", "beyond_reading": "36\"",
    })).unwrap()];
    let level = FloorAnswers::of(&room).level.unwrap();
    let doorway = level.thresholds[0].doorway.clone().unwrap();
    assert!(doorway.stack_here_in.is_sign_positive() && doorway.stack_beyond_in.is_sign_positive());
}

/// A walk of 60 in a side whose last corner is measured across: 36 in between marks 36 in off is a turn of 120 degrees.
#[test]
fn a_walk_says_when_its_last_corner_does_not_fit() {
    let walls = |last: serde_json::Value| {
        let wall = |id: u32| serde_json::json!({"id": id, "length": "60\"", "turn": "left"});
        let mut walls = vec![wall(1), wall(2), wall(3), wall(4)];
        for (key, value) in last.as_object().unwrap() {
            walls[3][key] = value.clone();
        }
        let mut room = square_room();
        room.outline.shape = crate::job::Shape::Walk;
        room.outline.walls = walls
            .into_iter()
            .map(|wall| crate::saved::Saved::read(wall).unwrap())
            .collect();
        FloorAnswers::of(&room).outline
    };
    assert!(walls(serde_json::json!({})).is_ok());
    let across = walls(serde_json::json!({"across": "36\""}));
    assert!(
        matches!(across, Err(ShapeProblem::Shape(crate::floor::outline::ShapeRefusal::TurnsOver { over_deg, .. })) if (over_deg - 30.0).abs() < 1e-9),
        "{across:?}"
    );
    // Straight on is a turn of 0.
    let straight = walls(serde_json::json!({"angle_deg": "0"}));
    assert!(
        matches!(straight, Err(ShapeProblem::Shape(_))),
        "{straight:?}"
    );
}

#[test]
fn an_opening_keeps_its_letter_where_one_before_it_has_no_place() {
    let mut room = demo_room();
    room.openings[0].from_start = crate::job::Typed::plain("40'");
    let found = FloorAnswers::of(&room);
    let second = found.openings[1].place.as_ref().unwrap();
    assert_eq!((second.id, second.index), (room.openings[1].id, 1));
}
