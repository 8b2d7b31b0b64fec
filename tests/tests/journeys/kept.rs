//! Nothing that was typed is lost: reload, full and blocked storage, damaged texts, two tabs.

use serde_json::json;
use tests::journey::journey;
use tests::page::{Page, Step};

use crate::bath::{bath_job, put, start_with};

const KEY: &str = "roomwright.job.bath-1";
const FULL: &str = "The browser's storage is full. The last changes are on screen but not kept";

/// Fills what is left of the storage, to the last character.
async fn fill(page: &Page) -> Step {
    let script = "let size = 1 << 22, kept = localStorage.getItem('filler') || '';
        while (size >= 1) {
          try { localStorage.setItem('filler', kept + 'x'.repeat(size)); kept += 'x'.repeat(size); } catch { size >>= 1; }
        }
        return kept.length";
    let filled = page.script(script, vec![]).await?;
    assert!(filled.as_u64().is_some_and(|n| n > 1_000_000), "{filled}");
    Ok(())
}

/// Runs in every page before its own scripts.
async fn before_every_page(page: &Page, source: &str) -> Step {
    let source = json!({ "source": source });
    page.command("Page.addScriptToEvaluateOnNewDocument", source)
        .await
        .map(drop)
}

#[test]
fn a_half_typed_reading_is_still_there_after_a_reload() {
    journey(|page| async move {
        let survey = "/job/bath-1/room/1/survey";
        start_with(&page, &bath_job(), survey).await?;
        page.click("All spots and readings (15)").await?;
        page.type_into("Spot 4 reading", "3 1/").await?;
        page.reload().await?;
        page.up().await?;
        assert_eq!(page.path().await?, survey);
        // The walk stands where it was left.
        page.see("Spot 4 of 15").await?;
        assert_eq!(page.value_of("Reading at spot 4").await?, "3 1/");
        page.see("1 entry can't be read; it is marked in the list.")
            .await?;
        assert!(!page.refusal_at("Reading at spot 4").await?.is_empty());
        page.type_into("Reading at spot 4", "3 1/8").await?;
        page.see_gone("can't be read").await?;

        // What stands in no job's field yet: a pasted text, and what the sums were given.
        page.click("Paste or bring in readings").await?;
        let lines = "One spot a line: right, away, reading";
        page.paste_into(lines, "0, 0, 3 1/").await?;
        page.reload().await?;
        page.up().await?;
        page.open_all().await?;
        assert_eq!(page.value_of(lines).await?, "0, 0, 3 1/");
        page.open("/sums/ramp").await?;
        page.up().await?;
        page.type_into("Rise", "3/").await?;
        page.reload().await?;
        page.up().await?;
        assert_eq!(page.value_of("Rise").await?, "3/");
        Ok(())
    });
}

#[test]
fn back_forward_and_deep_links_lead_where_they_say() {
    journey(|page| async move {
        let at = |stage: &str| format!("/job/bath-1/room/1/{stage}");
        start_with(&page, &bath_job(), &at("outline")).await?;
        page.see("Room: Bath").await?;
        page.click("Next: the survey").await?;
        page.see("Survey of the old floor").await?;
        page.click("Next: the pour").await?;
        page.see("The pour: level or flat").await?;
        page.click("Next: the doorways").await?;
        page.see("Doorways: Bath").await?;
        page.driver.back().await?;
        page.see("The pour: level or flat").await?;
        page.driver.back().await?;
        page.see("Survey of the old floor").await?;
        assert_eq!(page.path().await?, at("survey"));
        page.driver.forward().await?;
        page.see("The pour: level or flat").await?;
        assert_eq!(page.path().await?, at("pour"));
        page.open(&at("doorways")).await?;
        page.up().await?;
        page.see("Doorways: Bath").await?;
        page.open("/job/bath-1/room/99/pour").await?;
        page.up().await?;
        page.see("There is no page at this address.").await?;
        page.open("/job/none-such").await?;
        page.up().await?;
        page.see("This job is not on this device.").await?;
        page.click("To the jobs").await?;
        page.see("Bath house").await
    });
}

#[test]
fn a_full_storage_says_so_and_keeps_what_is_typed_on_screen() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/job/bath-1").await?;
        fill(&page).await?;
        // The text before gives way first; then there is no room for another letter.
        page.type_into("Place", "up").await?;
        fill(&page).await?;
        page.type_into("Notes", "Ask about the drain").await?;
        page.see(FULL).await?;
        assert_eq!(page.value_of("Notes").await?, "Ask about the drain");
        page.picture("storage-full").await?;
        page.accessible().await?;
        // On the job's other pages too.
        page.click("Bath").await?;
        page.see(FULL).await?;
        // Another page and back: what could not be kept is still on screen.
        page.click("Jobs").await?;
        page.see("Jobs on this device").await?;
        page.script("document.querySelector('ul.list a.go').click()", vec![])
            .await?;
        page.see(FULL).await?;
        assert_eq!(page.value_of("Notes").await?, "Ask about the drain");
        page.click("Try again").await?;
        page.see(FULL).await?;
        page.script("localStorage.removeItem('filler')", vec![])
            .await?;
        page.click("Try again").await?;
        page.see_gone(FULL).await?;
        let kept = page.kept(KEY).await?.unwrap_or_default();
        assert!(kept.contains("Ask about the drain"));
        page.reload().await?;
        page.up().await?;
        assert_eq!(page.value_of("Notes").await?, "Ask about the drain");
        Ok(())
    });
}

/// What the full storage asks for must be possible in it, and must make room.
#[test]
fn deleting_a_job_makes_room_and_can_still_be_undone() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/").await?;
        fill(&page).await?;
        page.click("Delete: Bath house").await?;
        page.see("“Bath house” is deleted.").await?;
        page.click("Undo").await?;
        page.see_gone("“Bath house” is deleted.").await?;
        page.see("Bath house").await?;
        let kept = page.kept(KEY).await?;
        assert_eq!(kept, Some(calc::job::file::write_compact(&bath_job())));
        page.click("Delete: Bath house").await?;
        page.see("“Bath house” is deleted.").await?;
        page.reload().await?;
        page.up().await?;
        let left = page
            .script(
                "return Object.keys(localStorage).filter((key) => key.includes('bath-1'))",
                vec![],
            )
            .await?;
        assert_eq!(left, json!([]));
        page.click("New job").await?;
        page.see("Keep and carry").await
    });
}

#[test]
fn a_full_storage_takes_no_new_job_and_says_why() {
    journey(|page| async move {
        page.open("/").await?;
        page.up().await?;
        fill(&page).await?;
        page.click("New job").await?;
        page.see(FULL).await?;
        assert_eq!(page.path().await?, "/");
        Ok(())
    });
}

#[test]
fn without_storage_the_app_works_in_memory_and_says_so() {
    journey(|page| async move {
        let block = "Object.defineProperty(window, 'localStorage', {
            get() { throw new DOMException('blocked', 'SecurityError') } })";
        before_every_page(&page, block).await?;
        page.open("/").await?;
        page.up().await?;
        page.see("This browser keeps nothing here: storage is blocked")
            .await?;
        page.accessible().await?;
        page.picture("storage-blocked").await?;
        page.click("Open the worked example").await?;
        page.see("Corner house").await?;
        page.type_into("Job name", "Only for now").await?;
        page.click("Back bedroom").await?;
        page.click("Next: the survey").await?;
        page.click("Next: the pour").await?;
        page.see_row("Bags", &["20", "14"]).await?;
        page.click("Jobs").await?;
        page.see("Only for now").await
    });
}

#[test]
fn a_damaged_text_is_shown_kept_and_left_by_two_ways() {
    let job = bath_job();
    let good = calc::job::file::write_compact(&job);
    journey(|page| async move {
        page.open("/sums").await?;
        page.up().await?;
        put(&page, &job).await?;
        page.keep(&format!("{KEY}.previous"), &good).await?;
        let damaged = &good[..good.len() / 2];
        page.keep(KEY, damaged).await?;
        page.open("/").await?;
        page.up().await?;
        page.see("This job's stored text is damaged. Nothing was thrown away.")
            .await?;
        page.accessible().await?;
        page.open("/job/bath-1").await?;
        page.up().await?;
        page.see("it stops making sense at line 1").await?;
        page.picture("damaged-job").await?;
        page.accessible().await?;
        page.click("Save the damaged text").await?;
        assert_eq!(page.downloaded("bath-1-roomwright.txt").await?, damaged);
        assert_eq!(page.kept(KEY).await?.as_deref(), Some(damaged));
        page.click("Open the last good version").await?;
        page.see("Keep and carry").await?;
        assert_eq!(page.value_of("Job name").await?, "Bath house");
        assert_eq!(
            page.kept("roomwright.damaged.bath-1.1").await?.as_deref(),
            Some(damaged)
        );
        Ok(())
    });
}

/// Waits until what another tab wrote is in this tab's storage: browsers carry it over a moment later.
async fn came(page: &Page, text: &str) -> Step {
    let script = "return localStorage.getItem(arguments[0])?.includes(arguments[1]) || null";
    page.until(
        "the other tab's text",
        script,
        vec![KEY.into(), text.into()],
    )
    .await
    .map(drop)
}

/// In two tabs; the second one's news can be kept from the first.
#[test]
fn two_tabs_never_overwrite_each_other_unseen() {
    journey(|page| async move {
        let deaf =
            "addEventListener('storage', (e) => { if (window.deaf) e.stopImmediatePropagation() })";
        before_every_page(&page, deaf).await?;
        start_with(&page, &bath_job(), "/job/bath-1").await?;
        let here = page.driver.window().await?;
        let there = page.driver.new_tab().await?;
        page.driver.switch_to_window(there.clone()).await?;
        page.open("/job/bath-1").await?;
        page.up().await?;

        // With nothing unsaved the other tab's change shows at once.
        page.type_into("Place", "from the other tab").await?;
        page.driver.switch_to_window(here.clone()).await?;
        let value =
            "return document.getElementById('job-place').value === 'from the other tab' || null";
        page.until("the other tab's place", value, vec![]).await?;

        // The news comes late, and both type.
        page.script("window.deaf = true", vec![]).await?;
        page.driver.switch_to_window(there.clone()).await?;
        page.type_into("Notes", "theirs").await?;
        page.driver.switch_to_window(here.clone()).await?;
        came(&page, "\"theirs\"").await?;
        page.type_into("Job name", "Mine").await?;
        page.see("This job was changed in another tab. Nothing is overwritten until you choose.")
            .await?;
        page.picture("two-tabs").await?;
        page.accessible().await?;
        let kept = page.kept(KEY).await?.unwrap_or_default();
        assert!(kept.contains("theirs") && !kept.contains("Mine"), "{kept}");
        page.click("Take the other tab's").await?;
        page.see_gone("Nothing is overwritten until you choose.")
            .await?;
        assert_eq!(page.value_of("Notes").await?, "theirs");
        assert_eq!(page.value_of("Job name").await?, "Bath house");

        page.driver.switch_to_window(there.clone()).await?;
        page.type_into("Notes", "theirs again").await?;
        page.driver.switch_to_window(here.clone()).await?;
        came(&page, "\"theirs again\"").await?;
        page.type_into("Job name", "Mine").await?;
        page.click("Keep what is on this screen").await?;
        page.see_gone("Nothing is overwritten until you choose.")
            .await?;
        let kept = page.kept(KEY).await?.unwrap_or_default();
        assert!(
            kept.contains("\"Mine\"") && !kept.contains("theirs again"),
            "{kept}"
        );
        let previous = page
            .kept(&format!("{KEY}.previous"))
            .await?
            .unwrap_or_default();
        assert!(previous.contains("theirs again"), "{previous}");

        // Deleted in the other tab: it can be put back.
        page.driver.switch_to_window(there).await?;
        page.click("Jobs").await?;
        page.click("Delete: Mine").await?;
        page.see("“Mine” is deleted.").await?;
        page.driver.switch_to_window(here).await?;
        page.until(
            "the deletion",
            "return localStorage.getItem(arguments[0]) === null || null",
            vec![KEY.into()],
        )
        .await?;
        page.type_into("Notes", "still mine").await?;
        page.see("This job was deleted in another tab.").await?;
        page.click("Put it back").await?;
        page.see_gone("This job was deleted in another tab.")
            .await?;
        let kept = page.kept(KEY).await?.unwrap_or_default();
        assert!(kept.contains("still mine"), "{kept}");
        Ok(())
    });
}
