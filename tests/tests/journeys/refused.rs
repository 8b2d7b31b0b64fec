//! What is refused is told beside its field or its part of the page, and nothing that was typed is lost.

use tests::journey::journey;
use tests::page::{Page, Step};

use crate::bath::{bath_job, start_with};

const LIKE: &str = "Enter a length, like 7' 3 5/8\" or 2226 mm.";
const PASTE: &str = "One spot a line: right, away, reading";

/// Pastes readings in the place of those that are there.
async fn take(page: &Page, lines: &str) -> Step {
    page.paste_into(PASTE, lines).await?;
    let read = page.script("return [...document.querySelectorAll('button')].map((b) => b.textContent.trim()).find((t) => t.startsWith('Take these '))", vec![]).await?;
    page.click(read.as_str().ok_or("no way to take the spots")?)
        .await
}

#[test]
fn a_field_says_what_is_wrong_with_what_it_holds() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/job/bath-1/room/1/pour").await?;
        page.see_row("Bags", &["7", "4"]).await?;
        let cover = "Cover over the highest spot";
        for typed in ["NaN", "inf", "infinity", "1e999", "three", "--1", "3 1/"] {
            page.type_into(cover, typed).await?;
            page.see("1 entry below is missing or can't be read")
                .await?;
            page.type_into(cover, typed).await?;
            page.press(thirtyfour::Key::Tab + "").await?;
            let said = page.refusal_at(cover).await?;
            assert!(
                said.ends_with(LIKE) || said.contains("larger than anything in a house"),
                "{typed}: {said}"
            );
            assert_eq!(page.value_of(cover).await?, typed);
            page.see_row("Volume", &["can't be had", "can't be had"])
                .await?;
        }
        page.refused(cover, "-1/4", "Enter 0\" or more.").await?;
        page.refused(cover, "13", "Enter 12\" or less.").await?;
        page.refused(
            cover,
            "1/0",
            &format!("A fraction can't have 0 under its bar. {LIKE}"),
        )
        .await?;
        page.refused(cover, "3/8", "").await?;
        page.see_row("Bags", &["7", "4"]).await?;

        // A bag that makes nothing: the volume stays, the bags go.
        let makes = "One bag makes";
        for (typed, words) in [
            ("0", "Enter 0.01 ft³ or more."),
            ("-1", "Enter 0.01 ft³ or more."),
            (
                "NaN",
                "“NaN” isn't understood here. Enter a volume, like 0.45 cu ft or 12.7 L.",
            ),
        ] {
            page.refused(makes, typed, words).await?;
            page.see_row("Bags", &["–", "–"]).await?;
            page.see_row("Volume", &["2.51 ft³", "1.45 ft³"]).await?;
        }
        page.refused(makes, "0.45", "").await?;
        page.refused("Allowance", "-5", "Enter 0 or more.").await?;
        page.refused("Allowance", "250", "Enter 100 or less.")
            .await?;
        page.refused("Allowance", "10", "").await?;
        page.refused(
            "Bags mixed at a time",
            "1.5",
            "1.5 isn't whole. Enter a whole number.",
        )
        .await?;
        page.refused(
            "Minutes it still flows (pot life)",
            "0",
            "Enter more than 0.",
        )
        .await?;
        page.refused(
            "Most tilt allowed for the flat pour",
            "steep",
            "“steep” isn't understood here. Enter a slope, like 1:12, 1/4 in per ft or 2 %.",
        )
        .await?;
        page.accessible().await?;
        page.picture("refused-fields").await?;
        let text = page.text().await?;
        assert!(!text.contains("NaN") && !text.contains("inf "), "{text}");
        Ok(())
    });
}

#[test]
fn spots_that_make_no_floor_are_named() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/job/bath-1/room/1/survey").await?;
        page.click("Paste or bring in readings").await?;
        let no_floors = [
            (
                "0,0,1\n60,0,1\n60,90,1\n0,0,2\n",
                "Spots 1 and 4 are at the same place. Take one out.",
            ),
            (
                "0,0,1\n60,0,1\n60,90,1\n70,10,2\n",
                "Outside the walls: spot 4.",
            ),
            (
                "0,0,1\n20,20,1\n40,40,2\n",
                "All spots lie in one line, from spot 1 to spot 3. Read one off the line.",
            ),
            (
                "0,0,1\n20,20,1\n",
                "2 spots are read; a floor needs at least 3.",
            ),
        ];
        for (lines, words) in no_floors {
            take(&page, lines).await?;
            page.see(words).await?;
            page.accessible().await?;
        }
        page.click("Next: the pour").await?;
        // The reason stands there too.
        page.see("2 spots are read; a floor needs at least 3.")
            .await?;
        page.click("To the survey").await?;
        page.click("Paste or bring in readings").await?;
        take(&page, "0,0,1\n60,0,1\n60,90,1\n").await?;
        page.see_gone("a floor needs at least 3").await?;
        page.see("3 corners have no reading of their own and take the nearest.")
            .await?;

        // Lines that can't be read: the spots that were there stay.
        let refused = [
            ("0,0,1\n60,0,one\n", "Line 2: Reading “one”"),
            ("0,0,NaN\n", "Line 1: Reading “NaN”"),
            (
                "0,0\n",
                "Line 1: 2 values; a spot has three: right, away, reading.",
            ),
            ("0,,1\n", "Line 1: Away is blank."),
            ("", "there is no spot in the text."),
        ];
        for (lines, words) in refused {
            take(&page, lines).await?;
            page.see(words).await?;
            assert_eq!(page.value_of(PASTE).await?, lines);
            page.see("All spots and readings (3)").await?;
        }
        // One more than a survey may have.
        let mut lines = String::new();
        for i in 0..10_001 {
            lines.push_str(&format!("{},{},1\n", i % 100, i / 100));
        }
        take(&page, &lines).await?;
        page.see("more than 10000 spots.").await?;
        assert_eq!(page.value_of(PASTE).await?.len(), lines.len());
        page.see("All spots and readings (3)").await?;
        // Too many by their spacing.
        page.click("How to survey, and where").await?;
        page.refused("Spots no farther apart than", "0", "Enter 3\" or more.")
            .await
    });
}

#[test]
fn an_opening_past_its_wall_is_told_beside_its_width() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/job/bath-1/room/1/outline").await?;
        let width = "Width between jambs";
        page.refused(
            width,
            "60",
            "It runs 15 1/2\" past the wall's end; the wall is 5' 4 1/2\" long.",
        )
        .await?;
        page.refused(width, "0", "Enter more than 0\".").await?;
        page.refused(width, "28", "").await?;
        page.click("Add an opening").await?;
        let second = page.within("Opening B");
        second
            .choose("In which wall", "Wall 1 (5' 4 1/2\")")
            .await?;
        second
            .type_into("From the wall's start to the opening", "40")
            .await?;
        second
            .refused(width, "20", "It overlaps another opening by 8\".")
            .await?;
        page.accessible().await?;
        page.refused("Width, left to right", "0", "Enter 1\" or more.")
            .await?;
        page.see("Enter the walls and the plan is drawn here.")
            .await?;
        page.refused("Width, left to right", "5' 4 1/2\"", "")
            .await?;
        page.see("Floor 41.7 ft²").await
    });
}

/// Walls one after another; every turn a square inside corner unless said.
async fn walk(page: &Page, walls: &[&str]) -> Step {
    for (i, wall) in walls.iter().enumerate() {
        page.type_into(&format!("Wall {}, length", i + 1), wall)
            .await?;
    }
    Ok(())
}

#[test]
fn a_walk_shares_out_a_small_miss_and_refuses_a_large_one() {
    let mut job = bath_job();
    job.rooms[0].openings.clear();
    job.rooms[0].survey.spots.clear();
    journey(|page| async move {
        start_with(&page, &job, "/job/bath-1/room/1/outline").await?;
        page.click("Walk the walls").await?;
        walk(&page, &["10'", "8'", "10'", "8'"]).await?;
        page.see("The walls close.").await?;
        page.see("Floor 80 ft², 36' 0\" round the walls.").await?;
        // 3/8 in of 432 in is 0.09 %, within 1/2 %: the compass rule shares it out.
        walk(&page, &["10' 0 3/8\""]).await?;
        page.see(
            "The walls miss by 3/8\"; that is 0.09 % of the way round and is shared out over them.",
        )
        .await?;
        page.accessible().await?;
        // 6 in of 438 in is more than 1/2 %, which is 2.19 in.
        walk(&page, &["10' 6\""]).await?;
        page.see("The walls miss each other by 6\"; up to 2 3/16\" would be shared out.")
            .await?;
        page.picture("walk-open").await?;
        assert_eq!(page.value_of("Wall 1, length").await?, "10' 6\"");

        // A figure of eight: the fourth wall crosses the first.
        for _ in 0..2 {
            page.click("Add a wall").await?;
        }
        walk(&page, &["100", "60", "40", "100", "60", "40"]).await?;
        for corner in [4, 5] {
            let turn = page.within(&format!("Corner after wall {corner}"));
            turn.click("Corner stands out").await?;
        }
        page.see("cross. Check their lengths and corners.").await?;
        page.accessible().await?;
        // The room on the right hand.
        Ok(())
    });
}
