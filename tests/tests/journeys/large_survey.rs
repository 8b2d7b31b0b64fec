//! Surveys of many spots.

use calc::job::questions::answers::FloorAnswers;
use calc::job::{Room, Spot};
use calc::quantity::Typed;
use tests::journey::journey;

use crate::bath::{bath_job, short, sixteenth, start_with};

/// A hall of 40 ft by 30 ft with so many spots to a side, whose floor waves and leans; readings in 1/32 in.
fn hall(side: usize) -> (Room, String) {
    let mut job = bath_job();
    let mut room = job.rooms.remove(0);
    room.openings.clear();
    room.outline.width = Typed::plain("40'");
    room.outline.length = Typed::plain("30'");
    room.survey.spots.clear();
    let mut lines = String::new();
    for row in 0..side {
        for column in 0..side {
            let share = |i: usize, most: f64| most * i as f64 / (side - 1) as f64;
            let (x, y) = (share(column, 480.0), share(row, 360.0));
            let height = 1.0 + 0.5 * (x / 70.0).sin() * (y / 50.0).cos() + x / 1000.0;
            let cells = [
                format!("{x:.3}"),
                format!("{y:.3}"),
                format!("{:.5}", (height * 32.0).round() / 32.0),
            ];
            lines.push_str(&format!("{}\n", cells.join(",")));
            let [x, y, reading] = cells.map(Typed::plain);
            let id = room.survey.spots.len() as u32 + 100;
            room.survey.spots.push(Spot {
                id,
                x,
                y,
                reading,
                checked: String::new(),
                rest: Default::default(),
            });
        }
    }
    (room, lines)
}

fn pasted_and_poured(side: usize) {
    let (room, lines) = hall(side);
    // What calc answers here; its own figures are held against scipy in tests/cases/floor/.
    let answers = serde_json::to_value(FloorAnswers::of(&room)).unwrap();
    let number = |path: &str| {
        answers
            .pointer(path)
            .and_then(serde_json::Value::as_f64)
            .unwrap_or_else(|| panic!("no {path}"))
    };
    let both = |path: &str, show: &dyn Fn(f64) -> String| {
        ["level", "flat"].map(|kind| show(number(&format!("/{kind}/{path}"))))
    };
    let rows = [
        (
            "Volume",
            both("pour/volume_ft3", &|n| format!("{} ft³", short(n, 2))),
        ),
        ("Greatest depth", both("pour/greatest_depth_in", &sixteenth)),
        ("Bags", both("bags/bags", &|n| n.to_string())),
    ];
    let mut job = bath_job();
    job.rooms = vec![Room {
        survey: calc::job::Survey {
            spots: Vec::new(),
            ..room.survey.clone()
        },
        ..room
    }];
    journey(|page| async move {
        start_with(&page, &job, "/job/bath-1/room/1/survey").await?;
        page.click("Paste or bring in readings").await?;
        page.paste_into("One spot a line: right, away, reading", &lines)
            .await?;
        page.click("Take these spots").await?;
        let count = side * side;
        page.see(&format!("{count} spots taken.")).await?;
        page.see("Every spot is read.").await?;
        page.picture(&format!("survey-{count}")).await?;
        page.click("Next: the pour").await?;
        for (head, cells) in &rows {
            page.see_row(head, &[&cells[0], &cells[1]]).await?;
        }
        // It still answers: another cover, other figures.
        page.type_into("Cover over the highest spot", "1/2").await?;
        page.see_row("Least depth", &["1/2\"", "1/2\""]).await?;
        page.reload().await?;
        page.up().await?;
        page.see_row("Least depth", &["1/2\"", "1/2\""]).await
    });
}

#[test]
fn a_survey_of_400_spots_is_poured() {
    pasted_and_poured(20);
}

#[test]
fn a_survey_of_10000_spots_is_poured() {
    pasted_and_poured(100);
}
