//! The worked example.

use tests::journey::journey;

use crate::bath::{Case, short, sixteenth};

#[test]
fn the_worked_example_shows_its_known_figures() {
    let case = Case::of("demo.toml", "back-bedroom");
    journey(|page| async move {
        page.open("/").await?;
        page.up().await?;
        page.click("Open the worked example").await?;
        page.see("Corner house").await?;
        page.click("Back bedroom").await?;
        page.see("Floor 104.3 ft², 41' 8\" round the walls.")
            .await?;
        assert_eq!(case.number("/rooms/0/outline/perimeter_in"), 500.0);
        page.click("Next: the survey").await?;
        page.see("Every spot is read.").await?;
        page.see(&sixteenth(case.number("/rooms/0/floor/fall_in")))
            .await?;
        page.click("Next: the pour").await?;
        let both = |path: &str, show: &dyn Fn(f64) -> String| {
            ["level", "flat"].map(|kind| show(case.number(&format!("/rooms/0/{kind}/{path}"))))
        };
        for (head, cells) in [
            ("Bags", both("bags/bags", &|n| n.to_string())),
            (
                "Volume",
                both("pour/volume_ft3", &|n| format!("{} ft³", short(n, 2))),
            ),
            ("Greatest depth", both("pour/greatest_depth_in", &sixteenth)),
            ("Mean depth", both("pour/mean_depth_in", &sixteenth)),
            (
                "Tilt",
                both("pour/tilt_in_per_4ft", &|n| {
                    format!("{} in per 4 ft", short(n, 2))
                }),
            ),
        ] {
            page.see_row(head, &[&cells[0], &cells[1]]).await?;
        }
        page.see("Taken").await?;
        page.open_all().await?;
        page.see("Source: ").await?;
        page.click("Next: the doorways").await?;
        page.see("Opening A").await?;
        page.see("Opening B").await
    });
}

/// Each opening of it makes a job of its own: nothing of the first is overwritten.
#[test]
fn the_example_can_be_opened_twice() {
    journey(|page| async move {
        page.open("/").await?;
        page.up().await?;
        page.click("Open the worked example").await?;
        page.see("Keep and carry").await?;
        page.type_into("Job name", "Mine now").await?;
        page.click("Jobs").await?;
        page.click("Open the worked example").await?;
        page.see("Keep and carry").await?;
        page.click("Jobs").await?;
        page.see("Mine now").await?;
        page.see("Corner house").await
    });
}
