//! The main job: a room, its openings, the survey, the pour, the doorways.

use tests::journey::journey;
use tests::page::{Page, Step};
use thirtyfour::Key;

use crate::bath::{Case, bath, bath_job, readings, short, sixteenth, start_with, tape};

/// The figure under a heading of the answers that stand side by side, as it is read out.
async fn jamb(page: &Page, name: &str) -> Step<String> {
    let script = "const heading = [...document.querySelectorAll('.answer h3')].find((h) => h.textContent.trim() === arguments[0]);
        return heading?.parentElement.querySelector('.figure .visually-hidden')?.textContent.trim() ?? null";
    let figure = page
        .until(
            &format!("the figure at the {name}"),
            script,
            vec![name.into()],
        )
        .await?;
    Ok(figure.as_str().unwrap_or_default().to_owned())
}

async fn see_jambs(page: &Page, left: &str, right: &str) -> Step {
    for _ in 0..200 {
        if jamb(page, "Left jamb").await? == left && jamb(page, "Right jamb").await? == right {
            return Ok(());
        }
        tokio::time::sleep(std::time::Duration::from_millis(20)).await;
    }
    let (l, r) = (
        jamb(page, "Left jamb").await?,
        jamb(page, "Right jamb").await?,
    );
    Err(format!("steps: wanted {left} and {right}, the page shows {l} and {r}").into())
}

/// A fact of a list of facts, once it is there.
async fn fact(page: &Page, name: &str) -> Step<String> {
    let script = "const name = [...document.querySelectorAll('dl.facts dt')].find((dt) => dt.textContent.trim() === arguments[0]);
        return name?.parentElement.querySelector('dd').textContent.trim() ?? null";
    let shown = page.until(name, script, vec![name.into()]).await?;
    Ok(shown.as_str().unwrap_or_default().to_owned())
}

/// How far the spot now entered is from the first corner, inches: to the right, away.
async fn spot_now(page: &Page, number: usize, count: usize) -> Step<(f64, f64)> {
    page.see(&format!("Spot {number} of {count}")).await?;
    let place = page
        .script(
            "return document.querySelector('.walk p .quiet').textContent",
            vec![],
        )
        .await?;
    let place = place.as_str().unwrap_or_default();
    let inches = |text: &str| {
        let bare = calc::quantity::LengthUnit::Inches;
        calc::quantity::length::parse_length(text.trim(), bare).map(calc::quantity::Length::inches)
    };
    let (right, away) = place
        .split_once(" right, ")
        .ok_or(format!("no place in {place:?}"))?;
    let away = away.trim().trim_end_matches(" away");
    Ok((
        inches(right).map_err(|e| format!("{right:?}: {e}"))?,
        inches(away).map_err(|e| format!("{away:?}: {e}"))?,
    ))
}

/// A 5 ft x 8 ft floor that rises 1/2 in from the left wall to the right one, surveyed spot by spot with thumb and keys. What
/// must come out is solid geometry: tests/cases/floor/pours-by-hand.toml has the same floor.
#[test]
fn a_room_surveyed_spot_by_spot_is_poured_level_or_flat() {
    journey(|page| async move {
        page.open("/").await?;
        page.up().await?;
        page.see("No job here yet.").await?;
        page.click("New job").await?;
        page.see("Job without a name").await?;
        page.type_into("Job name", "Lakeside bath").await?;
        page.type_into("Place", "second floor").await?;
        page.click("Room").await?;

        page.type_into("Room name", "Bath").await?;
        page.see("Room: Bath").await?;
        page.type_into("Width, left to right", "5'").await?;
        page.type_into("Length, near to far", "8'").await?;
        page.see("Floor 40 ft², 26' 0\" round the walls.").await?;
        page.click("Add an opening").await?;
        page.type_into("Opening A, name", "hall").await?;
        page.choose("In which wall", "Wall 1 (5' 0\")").await?;
        page.type_into("From the wall's start to the opening", "15")
            .await?;
        page.type_into("Width between jambs", "30").await?;
        page.picture("job-outline").await?;
        page.click("Next: the survey").await?;

        page.click("Up from the lowest spot").await?;
        page.type_into("Spots no farther apart than", "30").await?;
        page.click("Propose the spots").await?;
        let shown = page
            .until(
                "the first spot",
                "return document.querySelector('.walk p strong')?.textContent || null",
                vec![],
            )
            .await?;
        let count: usize = shown
            .as_str()
            .and_then(|s| s.rsplit(' ').next())
            .ok_or("no count")?
            .parse()?;
        // Four corners, two jambs, a grid of 30 in: more than the corners, no crowd.
        assert!((12..=30).contains(&count), "{count} spots");
        let mut by_tape = 0;
        for number in 1..=count {
            let (right_in, away_in) = spot_now(&page, number, count).await?;
            assert!((0.0..=60.0).contains(&right_in) && (0.0..=96.0).contains(&away_in));
            let label = format!("Reading at spot {number}");
            let eighths = right_in / 15.0;
            assert_eq!(
                eighths.fract(),
                0.0,
                "the grid stands on the floor's own eighths: {right_in}"
            );
            if eighths == 2.0 {
                // A quarter by the tape strip: two ticks of an eighth.
                let strip = page.field(&format!("{label}: fraction of an inch")).await?;
                strip.send_keys(Key::Right + Key::Right).await?;
                assert_eq!(page.value_of(&label).await?, "1/4");
                page.field(&label).await?.send_keys(Key::Enter + "").await?;
                by_tape += 1;
            } else {
                let typed = if eighths == 0.0 {
                    "0".to_owned()
                } else {
                    tape(eighths / 8.0, 8).replace('"', "")
                };
                // The field has the focus already: a thumb types on.
                page.see_focus(&format!("{label}, in")).await?;
                page.press(typed.as_str()).await?;
                assert_eq!(page.value_of(&label).await?, typed);
                page.press(Key::Enter + "").await?;
            }
        }
        assert!(by_tape >= 3, "{by_tape} spots by the tape strip");
        page.see("Every spot is read.").await?;
        page.see("As a whole it leans 0.4 in per 4 ft").await?;
        page.picture("job-survey").await?;
        page.click("Next: the pour").await?;

        page.type_into("Cover over the highest spot", "1/8").await?;
        page.see_row("Volume", &["1.25 ft³", "0.42 ft³"]).await?;
        page.see_row("Least depth", &["1/8\"", "1/8\""]).await?;
        page.see_row("Mean depth", &["3/8\"", "1/8\""]).await?;
        page.see_row("Greatest depth", &["5/8\"", "1/8\""]).await?;
        page.see_row("Tilt", &["0 in per 4 ft", "0.4 in per 4 ft"])
            .await?;
        // 1.25 and 0.4167 ft3 with 10 % at 0.45 ft3 a bag: 3.06 and 1.02, rounded up.
        page.see_row("Bags", &["4", "2"]).await?;
        // The level top stands at 5/8 in; the floor at the jambs, seen into the hall from the room, at 1/8 and 3/8.
        let at_door = page.row("Depth at A hall: left, right, greatest").await?;
        assert_eq!(at_door[1], "1/8\", 1/8\", 1/8\"");
        assert!(
            at_door[0] == "1/2\", 1/4\", 1/2\"" || at_door[0] == "1/4\", 1/2\", 1/2\"",
            "{at_door:?}"
        );
        page.type_into("Most tilt allowed for the flat pour", "1/4 in per 4 ft")
            .await?;
        page.see_row("Volume", &["1.25 ft³", "0.73 ft³"]).await?;
        page.see_row("Greatest depth", &["5/8\"", "5/16\""]).await?;
        page.see_row("Tilt", &["0 in per 4 ft", "0.25 in per 4 ft"])
            .await?;
        page.picture("job-pour").await?;
        page.click("Take level").await?;
        page.see("Taken").await?;

        page.click("Next: the doorways").await?;
        page.within("Opening A: hall")
            .click("Read like a spot")
            .await?;
        page.type_into("Reading on the subfloor beyond", "1/8")
            .await?;
        // No layers: the level top at 5/8 in against 1/8 in beyond.
        see_jambs(&page, "1/2\"", "1/2\"").await?;
        page.see("up into this room").await
    });
}

/// The bath, its readings pasted; every figure against the case file.
#[test]
fn the_figures_of_the_bath_are_those_computed_outside() {
    let case = bath();
    let room = case.room();
    let mut job = bath_job();
    // All that is asked on the doorways' page is entered there.
    job.rooms[0].layers.clear();
    job.rooms[0].survey.spots.clear();
    job.rooms[0].openings[0].beyond_layers.clear();
    job.rooms[0].openings[0].beyond = Default::default();
    job.rooms[0].openings[0].beyond_reading = Default::default();
    job.rooms[0].openings[0].name = "hall".to_owned();
    journey(|page| async move {
        start_with(&page, &job, "/job/bath-1/room/1/survey").await?;
        page.click("Paste or bring in readings").await?;
        page.paste_into("One spot a line: right, away, reading", &readings(&room))
            .await?;
        page.click("Take these spots").await?;
        page.see("15 spots taken.").await?;
        page.see("Every spot is read.").await?;
        let fall = sixteenth(case.number("/floor/fall_in"));
        page.see(&fall).await?;
        page.click("Next: the pour").await?;

        let both = |path: &str, show: &dyn Fn(f64) -> String| {
            ["level", "flat"].map(|kind| show(case.number(&format!("/{kind}/{path}"))))
        };
        let rows = [
            ("Bags", both("bags/bags", &|n| n.to_string())),
            (
                "Volume",
                both("pour/volume_ft3", &|n| format!("{} ft³", short(n, 2))),
            ),
            ("Least depth", both("pour/least_depth_in", &sixteenth)),
            ("Mean depth", both("pour/mean_depth_in", &sixteenth)),
            ("Greatest depth", both("pour/greatest_depth_in", &sixteenth)),
            (
                "Tilt",
                both("pour/tilt_in_per_4ft", &|n| {
                    format!("{} in per 4 ft", short(n, 4))
                }),
            ),
            ("Lifts", ["3".to_owned(), "1".to_owned()]),
        ];
        for (head, cells) in &rows {
            page.see_row(head, &[&cells[0], &cells[1]]).await?;
        }
        let jambs = ["level", "flat"].map(|kind| {
            let at = |side: &str| case.number(&format!("/{kind}/along/0/depth/{side}_in"));
            let (left, right) = (at("left"), at("right"));
            // The one spot between the jambs is shallower than both, so the greatest depth is at a jamb.
            [left, right, left.max(right)].map(sixteenth).join(", ")
        });
        page.see_row(
            "Depth at A hall: left, right, greatest",
            &[&jambs[0], &jambs[1]],
        )
        .await?;
        page.see("Primer: 0.28 gal.").await?;
        page.see("Edge strip along the walls: 23' 11\".").await?;
        assert_eq!(case.number("/edge_strip_in"), 287.0);

        // Every pin of both pours.
        page.click("All pins as a table").await?;
        let mut maps = Vec::new();
        for kind in ["Flat", "Level"] {
            page.within("Show the pins for").click(kind).await?;
            page.see(&format!("above the old floor. {kind}.")).await?;
            for spot in 0..15 {
                let depth = case.number(&format!("/{}/spots/{spot}/depth_in", kind.to_lowercase()));
                let cells = page.row(&format!("Spot {}", spot + 1)).await?;
                // 25.4 mm to the inch, halves of a tenth up.
                let mm = format!("{} mm", short((depth * 254.0).round() / 10.0, 1));
                assert_eq!(
                    cells[2],
                    format!("{} {mm}", sixteenth(depth)),
                    "{kind}, spot {}",
                    spot + 1
                );
                // The map is what a pin is set by. (It leaves out a label that finds no room.)
                if spot == 7 {
                    let drawn = page.script(
                        "return [...document.querySelectorAll('figure svg[aria-label^=Plan]')]
                            .find(svg => svg.closest('section').querySelector('#pins-of')).textContent",
                        vec![],
                    );
                    let drawn = drawn.await?.as_str().unwrap_or_default().to_owned();
                    let label = sixteenth(depth).trim_end_matches('"').to_owned();
                    assert!(drawn.contains(&label), "{kind}: {label} not in {drawn}");
                    maps.push(drawn);
                }
            }
        }
        assert_ne!(maps[0], maps[1], "the map follows the pour");
        page.see("Lift 3: ").await?;

        // A limit on the tilt.
        let limited = Case::of("bath.toml", "tilt-limit");
        page.type_into("Most tilt allowed for the flat pour", "1/8 in per 4 ft")
            .await?;
        let volume = |case: &Case, kind: &str| {
            format!(
                "{} ft³",
                short(case.number(&format!("/{kind}/pour/volume_ft3")), 2)
            )
        };
        page.see_row(
            "Volume",
            &[&volume(&limited, "level"), &volume(&limited, "flat")],
        )
        .await?;
        page.see_row(
            "Bags",
            &["7", &limited.number("/flat/bags/bags").to_string()],
        )
        .await?;
        page.type_into("Most tilt allowed for the flat pour", "")
            .await?;
        page.see_row("Volume", &[&volume(&case, "level"), &volume(&case, "flat")])
            .await?;

        page.click("Next: the doorways").await?;
        page.see("Doorways: Bath").await?;
        let here = page.within("Layers of this room");
        for (number, (layer, thickness)) in [
            ("Liquid membrane", "1/16"),
            ("Bond coat, 3/8 in notch", "3/16"),
            ("Ceramic tile", "5/16"),
        ]
        .iter()
        .enumerate()
        {
            here.choose("Add a layer", layer).await?;
            here.type_into(&format!("{} · {layer}", number + 1), thickness)
                .await?;
        }
        // 1/16 + 3/16 + 5/16
        page.see("Together 9/16\".").await?;
        let hall = page.within("Opening A: hall");
        hall.click("Read like a spot").await?;
        hall.type_into("Reading on the subfloor beyond", "1/8")
            .await?;
        hall.choose("Add a layer", "Strip wood, 3/4 in").await?;
        assert_eq!(hall.value_of("1 · Strip wood, 3/4 in").await?, "3/4\"");
        for kind in ["level", "flat"] {
            let step =
                |side: &str| case.number(&format!("/{kind}/thresholds/0/doorway/{side}/step_in"));
            let (left, right) = (step("left"), step("right"));
            page.click(if kind == "level" {
                "Level pour"
            } else {
                "Flat pour"
            })
            .await?;
            see_jambs(&page, &tape(left, 32), &tape(right, 32)).await?;
            // At 1:12 a ramp is twelve times its rise: at least that, so to the next sixteenth.
            for (name, rise_in) in [
                ("Run the left jamb needs", left),
                ("Run the right jamb needs", right),
            ] {
                assert_eq!(
                    fact(&page, name).await?,
                    sixteenth((12.0 * rise_in * 16.0 - 1e-6).ceil() / 16.0),
                    "{kind}: {name}"
                );
            }
            assert_eq!(fact(&page, "Slope as built").await?, "1:12");
            // A wedge of one length: width x length x (left + right) / 4.
            let wedge_in3 = 28.0 * 12.0 * left.max(right) * (left + right) / 4.0;
            let wedge = fact(&page, "Wedge").await?;
            assert!(
                wedge.starts_with(&format!("{} in³", short(wedge_in3, 0))),
                "{wedge} for {wedge_in3}"
            );
            page.picture(&format!("job-doorways-{kind}")).await?;
        }
        Ok(())
    });
}
