//! Closing up a room: tile, paint, trim. Figures are those of worked examples outside the project, as each step says.

use calc::job::{Job, Opening, Room, Typed, Units, demo};
use tests::journey::journey;

use crate::bath::start_with;

fn inches(text: &str) -> Typed {
    Typed::new(text, "in")
}

/// A rectangular room with one doorway.
fn job(width: &str, length: &str, door: &str) -> Job {
    let mut job = Job::new(
        "close-1",
        "Row house",
        "2026-03-02T08:00:00Z",
        Units::FeetInches,
    );
    let id = job.fresh_id();
    let some = demo::job("d", "").rooms[0].openings[0].clone();
    let room: &mut Room = &mut job.rooms[0];
    room.outline.width = inches(width);
    room.outline.length = inches(length);
    room.openings.push(Opening {
        id,
        wall: 0,
        from_start: inches("20"),
        width: inches(door),
        ..some
    });
    job
}

/// A bath of 5 by 8 ft in 12 in tile with joints of 1/8 in and no gap: counted in exact fractions and confirmed by an
/// independent polygon clip.
#[test]
fn a_bath_is_tiled() {
    journey(|page| async move {
        start_with(&page, &job("60", "96", "30"), "/job/close-1/room/1/tile").await?;
        page.see("Still to be entered, or to be put right: width, height.")
            .await?;
        page.type_into("Side along the rows", "12").await?;
        page.type_into("The other side", "12").await?;
        page.type_into("Joint", "1/8").await?;
        page.type_into("Gap at the walls", "0").await?;
        // 28 full and 12 cut are 40, with 10 percent 44.
        page.see("28 full and 12 cut").await?;
        page.see("40; with the allowance 44").await?;
        page.type_into("Tiles in a box", "10").await?;
        page.see("5 boxes").await?;
        page.click("a tile in the middle").await?;
        page.see("21 full and 24 cut").await?;
        page.click("from the first corner").await?;
        page.choose("Pattern", "running bond, half").await?;
        page.see("28 full and 16 cut").await?;
        page.choose("Pattern", "straight").await?;
        // The best start is searched for by steps, and 40 are the fewest for 60 by 96 in.
        page.click("the best of many").await?;
        page.see("with a new tile for each cut").await?;
        page.see("40; with the allowance 44").await?;
        page.accessible().await?;
        page.whole_picture("closing-tile").await?;
        // A tile larger than the floor is refused in words.
        page.type_into("Side along the rows", "120").await?;
        page.type_into("The other side", "120").await?;
        page.see("One tile is larger than the floor both ways.")
            .await?;
        page.reload().await?;
        page.up().await?;
        page.see("One tile is larger than the floor both ways.")
            .await
    });
}

/// 12 by 14 ft, 9 ft walls, 45 square feet of openings, 350 square feet a gallon: 423 square feet, 2.42 gallons for two
/// coats (a published contractor's example).
#[test]
fn a_room_is_painted() {
    journey(|page| async move {
        let mut job = job("144", "168", "36");
        job.rooms[0].walls.door_height = inches("80");
        start_with(&page, &job, "/job/close-1/room/1/paint").await?;
        page.see("height of the walls").await?;
        page.type_into("Height of the walls", "9'").await?;
        // A door of 36 by 84 in is 21 square feet; a window of 48 by 72 in 24 more.
        page.type_into("Height of the doorways", "84").await?;
        page.click("Add a window").await?;
        page.type_into("From the wall's start", "30").await?;
        page.type_into("From the floor to its sill", "24").await?;
        page.type_into("Width", "48").await?;
        page.type_into("Height", "72").await?;
        page.type_into("To order more, percent", "0").await?;
        page.see("423 ft² to paint").await?;
        page.see("2.42 gal").await?;
        page.see("3 gal").await?;
        page.accessible().await?;
        page.whole_picture("closing-paint").await
    });
}

/// 12 by 10 ft with a door of 32 in in casings of 2-1/4 in: 44 ft less 36-1/2 in of base.
#[test]
fn trim_is_cut() {
    journey(|page| async move {
        start_with(&page, &job("144", "120", "32"), "/job/close-1/room/1/trim").await?;
        page.type_into("Reveal", "0").await?;
        // Legs of 80 + 2-1/4 in, a head of 32 + 4-1/2 in.
        page.see("leg, wall 1: 6' 10 1/4\"").await?;
        page.see("head, wall 1: 3' 1/2\"").await?;
        page.see("Base, wall 3: 12' 0\"").await?;
        page.accessible().await?;
        page.whole_picture("closing-trim").await
    });
}
