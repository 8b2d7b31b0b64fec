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
