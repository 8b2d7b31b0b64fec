//! By keys alone.

use tests::browser::Screen;
use tests::journey::{journey, journey_on};
use tests::page::{Page, Step};
use tests::server::dist;
use thirtyfour::Key;

use crate::bath::{bath_job, start_with};

/// Goes to a thing by the tabulator and presses Enter on it.
async fn enter(page: &Page, name: &str) -> Step {
    page.tab_to(name).await?;
    page.press(Key::Enter + "").await
}

/// Goes to a field by the tabulator, which marks all that stands there, and types in its place.
async fn fill(page: &Page, name: &str, text: &str) -> Step {
    page.tab_to(name).await?;
    page.press(text).await
}

#[test]
fn a_short_job_is_done_without_a_pointer() {
    journey_on(Screen::Desk, &dist(), |page| async move {
        page.open("/").await?;
        page.up().await?;
        page.press(Key::Tab + "").await?;
        page.see_focus("Skip to the page").await?;
        page.press(Key::Enter + "").await?;
        page.see_focus("Jobs on this device").await?;
        enter(&page, "New job").await?;
        // Whoever can't see it hears where this is.
        page.see_focus("Job without a name").await?;
        enter(&page, "Room").await?;
        page.see_focus("Room").await?;
        // Among the choices by the arrows.
        page.tab_to("Rectangle").await?;
        page.press(Key::Right + "").await?;
        page.see_focus("L").await?;
        page.see("Which corner is missing").await?;
        page.press(Key::Left + "").await?;
        page.see_gone("Which corner is missing").await?;
        fill(&page, "Width, left to right", "5'").await?;
        fill(&page, "Length, near to far", "8'").await?;
        page.see("Floor 40 ft²").await?;
        enter(&page, "Next: the survey").await?;
        page.see_focus("Survey of the old floor").await?;
        fill(&page, "Spots no farther apart than", "8'").await?;
        enter(&page, "Propose the spots").await?;
        page.see_focus("Reading at spot 1, in").await?;
        page.see("Spot 1 of ").await?;
        let count = page
            .script("return Number(document.querySelector('.walk p strong').textContent.split(' ').at(-1))", vec![])
            .await?
            .as_u64()
            .ok_or("no count")?;
        // The tape strip is a slider: the arrows set its eighths, Home and End its ends.
        page.tab_to("Reading at spot 1: fraction of an inch")
            .await?;
        page.press(Key::Right + Key::Right + Key::Right).await?;
        assert_eq!(page.value_of("Reading at spot 1").await?, "3/8");
        page.press(Key::End + "").await?;
        assert_eq!(page.value_of("Reading at spot 1").await?, "7/8");
        page.press(Key::Home + "").await?;
        page.press(Key::Right + "").await?;
        assert_eq!(page.value_of("Reading at spot 1").await?, "1/8");
        enter(&page, "Next spot").await?;
        for number in 2..=count {
            page.see_focus(&format!("Reading at spot {number}, in"))
                .await?;
            page.press("1/8").await?;
            page.press(Key::Enter + "").await?;
        }
        page.see("Every spot is read.").await?;
        enter(&page, "Next: the pour").await?;
        page.see_focus("The pour: level or flat").await?;
        // A level floor under 1/4 in: 40 ft2 at 1/4 in is 0.83 ft3 either way.
        fill(&page, "Cover over the highest spot", "1/4").await?;
        page.see_row("Volume", &["0.83 ft³", "0.83 ft³"]).await?;
        page.tab_to("All pins as a table").await?;
        page.press(Key::Enter + "").await?;
        assert_eq!(page.row("Spot 1").await?[2], "1/4\" 6.4 mm");
        enter(&page, "Next: the doorways").await?;
        page.see_focus("Doorways: Room").await
    });
}

/// What has the focus shows it and lies under nothing, on every stage.
#[test]
fn the_focus_is_seen() {
    journey(|page| async move {
        for stage in ["outline", "survey", "pour", "doorways"] {
            start_with(&page, &bath_job(), &format!("/job/bath-1/room/1/{stage}")).await?;
            for _ in 0..25 {
                page.press(Key::Tab + "").await?;
                let script = "const on = document.activeElement;
                    if (!on || on === document.body) return [true, ''];
                    const shown = [on, on.nextElementSibling, on.parentElement].filter(Boolean).map((e) => getComputedStyle(e));
                    const seen = shown.some((s) => (s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2) || s.boxShadow !== 'none');
                    return [seen, on.outerHTML.slice(0, 120)]";
                let seen = page.script(script, vec![]).await?;
                assert_eq!(seen[0], true, "{stage}: no focus to be seen at {}", seen[1]);
                let script = "const on = document.activeElement;
                    if (!on || on === document.body) return null;
                    const box = on.getBoundingClientRect();
                    const there = document.elementFromPoint(box.left + box.width / 2, box.top + Math.min(box.height, 40) / 2);
                    const free = there && (on.contains(there) || there.contains(on) || [...(on.labels || [])].some((l) => l.contains(there)));
                    return free ? null : on.outerHTML.slice(0, 120) + ' under ' + (there?.outerHTML.slice(0, 80) ?? 'the edge')";
                let hidden = page.script(script, vec![]).await?;
                assert!(hidden.is_null(), "{stage}: {hidden}");
            }
        }
        Ok(())
    });
}
