//! A job that is deleted, copied, saved to a file, brought in, sent as a link.

use std::fs;
use std::path::PathBuf;

use serde_json::{Value, json};
use tempfile::TempDir;
use tests::browser::{Browser, Screen};
use tests::journey::journey;
use tests::page::{Page, Step};

use crate::bath::{bath_job, start_with};

const FILE: &str = "Bath-house-2026-03-02-roomwright.json";

/// A file to pick.
fn file(folder: &TempDir, name: &str, bytes: &[u8]) -> PathBuf {
    let path = folder.path().join(name);
    fs::write(&path, bytes).unwrap();
    path
}

/// Names of the jobs in the list.
async fn listed(page: &Page) -> Step<Vec<String>> {
    let script =
        "return [...document.querySelectorAll('ul.list a.go strong')].map((e) => e.textContent)";
    Ok(serde_json::from_value(page.script(script, vec![]).await?)?)
}

#[test]
fn a_deleted_job_comes_back_by_undo_and_a_duplicate_is_its_own() {
    journey(|page| async move {
        start_with(&page, &bath_job(), "/").await?;
        page.click("Delete: Bath house").await?;
        page.see("“Bath house” is deleted.").await?;
        assert!(listed(&page).await?.is_empty());
        page.click("Undo").await?;
        page.see_gone("“Bath house” is deleted.").await?;
        assert_eq!(listed(&page).await?, ["Bath house"]);
        page.click("Duplicate: Bath house").await?;
        page.see("Bath house (copy)").await?;
        assert_eq!(listed(&page).await?, ["Bath house (copy)", "Bath house"]);
        page.click("Delete: Bath house").await?;
        page.see("“Bath house” is deleted.").await?;
        page.reload().await?;
        page.up().await?;
        assert_eq!(listed(&page).await?, ["Bath house (copy)"]);
        // Neither a reload nor another page takes the way back.
        page.click("Deleted jobs (1)").await?;
        page.accessible().await?;
        page.click("Put it back: Bath house").await?;
        page.see_gone("Deleted jobs").await?;
        assert_eq!(listed(&page).await?, ["Bath house (copy)", "Bath house"]);
        page.click("Delete: Bath house").await?;
        page.click("Deleted jobs (1)").await?;
        page.click("Delete for good: Bath house").await?;
        page.see_gone("Deleted jobs").await?;
        // The copy has everything that was entered.
        let go = "document.querySelector('ul.list a.go').click()";
        page.script(go, vec![]).await?;
        page.click("Bath").await?;
        page.see("Floor 41.7 ft², 26' 3\" round the walls.").await
    });
}

/// What is taken out of a job in one tap comes back in one.
#[test]
fn a_room_and_its_spots_come_back_by_undo() {
    let mut job = bath_job();
    job.rooms.push(calc::job::Room::new(
        90,
        "Hall",
        calc::job::Units::FeetInches,
    ));
    journey(|page| async move {
        start_with(&page, &job, "/job/bath-1").await?;
        page.click("Take out this room: Bath").await?;
        page.see("“Bath” is deleted.").await?;
        page.accessible().await?;
        page.click("Undo").await?;
        page.see_gone("“Bath” is deleted.").await?;
        page.click("Bath").await?;
        page.click("Next: the survey").await?;
        page.see("Every spot is read.").await?;

        // What becomes of the readings when others are pasted is for the user to say.
        page.click("Paste or bring in readings").await?;
        page.paste_into(
            "One spot a line: right, away, reading",
            "0,0,1\n60,0,1\n60,90,1\n",
        )
        .await?;
        page.click("Take these in place of the 15 read").await?;
        page.see("All spots and readings (3)").await?;
        page.see("The 15 spots before: taken out.").await?;
        page.click("Put it back").await?;
        page.see("All spots and readings (15)").await?;
        page.see_gone("The 15 spots before: taken out.").await?;
        page.click("Add these to them").await?;
        page.see("All spots and readings (18)").await?;
        page.click("All spots and readings (18)").await?;
        for number in [18, 17, 16] {
            page.click(&format!("Take out spot {number}")).await?;
            page.see(&format!("Spot {number}: taken out.")).await?;
        }
        page.accessible().await?;
        page.click("Take out all spots").await?;
        page.see("15 spots: taken out.").await?;
        page.click("Put it back").await?;
        page.see("All spots and readings (15)").await?;

        // One reading, changed in the walk.
        let tap = "const label = [...document.querySelectorAll('.walk svg text')].find((e) => e.textContent.trim() === '1');
            const box = label.getBoundingClientRect();
            label.closest('svg').dispatchEvent(new MouseEvent('click', { bubbles: true, clientX: box.left, clientY: box.bottom }))";
        page.script(tap, vec![]).await?;
        page.see("Spot 1 of 15").await?;
        page.type_into("Reading at spot 1", "9").await?;
        page.within("Survey of the old floor").click("Undo").await?;
        assert_eq!(page.value_of("Reading at spot 1").await?, "1/4");
        // Every one of these is saved: the job is as it was.
        page.reload().await?;
        page.up().await?;
        page.click("Next: the pour").await?;
        page.see_row("Bags", &["7", "4"]).await
    });
}

#[test]
fn the_list_tells_the_time_on_this_device() {
    journey(|page| async move {
        // 08:00 in UTC is 02:00 in Chicago in winter.
        page.command(
            "Emulation.setTimezoneOverride",
            json!({"timezoneId": "America/Chicago"}),
        )
        .await?;
        start_with(&page, &bath_job(), "/").await?;
        page.see("changed 2026-03-02 02:00").await
    });
}

#[test]
fn a_saved_file_is_brought_in_again() {
    journey(|page| async move {
        let job = bath_job();
        start_with(&page, &job, "/job/bath-1").await?;
        page.click("Save a file").await?;
        let text = page.downloaded(FILE).await?;
        assert_eq!(calc::job::file::read(&text), Ok(job.clone()));
        let saved = page.download_path(FILE);
        page.click("Jobs").await?;
        page.click("Delete: Bath house").await?;
        page.pick_file("Bring in a job file", &saved).await?;
        page.see("“Bath house” is here.").await?;
        assert_eq!(listed(&page).await?, ["Bath house"]);
        // The same file again: nothing to do but open it.
        page.pick_file("Bring in a job file", &saved).await?;
        page.see("Keep and carry").await?;
        // Another state of it: the user chooses.
        page.type_into("Notes", "changed since").await?;
        page.click("Jobs").await?;
        page.pick_file("Bring in a job file", &saved).await?;
        page.see("This job is already on this device.").await?;
        page.accessible().await?;
        page.click("Keep both").await?;
        page.see("Bath house (copy)").await?;
        page.click("Jobs").await?;
        assert_eq!(listed(&page).await?.len(), 2);
        page.pick_file("Bring in a job file", &saved).await?;
        page.click("Replace the one here").await?;
        page.see("Keep and carry").await?;
        assert_eq!(page.value_of("Notes").await?, "");
        Ok(())
    });
}

#[test]
fn what_is_no_job_is_refused_with_its_reason() {
    let folder = tempfile::tempdir().unwrap();
    let mut newer: Value = serde_json::from_str(&calc::saved::write(&bath_job())).unwrap();
    newer["format"]["version"] = json!(99);
    let mut damaged: Value = serde_json::from_str(&calc::saved::write(&bath_job())).unwrap();
    damaged["rooms"][0]["survey"]["spots"][3]["id"] = json!("four");
    let good = calc::saved::write(&bath_job());
    let files = [
        (
            "large.json",
            vec![b' '; 6_000_000],
            "The file is 6.0 MB; a job is at most 5 MB.",
        ),
        (
            "list.txt",
            b"tile\ngrout".to_vec(),
            "The file isn't a job: it stops making sense at line 1.",
        ),
        (
            "cut.json",
            good.as_bytes()[..good.len() - 10].to_vec(),
            "The file isn't a job: it stops making sense at line 1.",
        ),
        (
            "picture.txt",
            vec![0x89, 0x50, 0xff, 0xfe],
            "The file isn't text, so it can't be a job.",
        ),
        (
            "foreign.json",
            b"{\"rooms\": 3}".to_vec(),
            "The file isn't a job from this app.",
        ),
        (
            "empty.json",
            Vec::new(),
            "The file isn't a job: it stops making sense at line 1.",
        ),
        (
            "newer.json",
            newer.to_string().into_bytes(),
            "The job was saved by a newer version of this app (format 99; this one reads up to 1). Update, then open it.",
        ),
        (
            "damaged.json",
            damaged.to_string().into_bytes(),
            "The job is damaged at “rooms[0].survey.spots[3].id”.",
        ),
    ];
    journey(|page| async move {
        start_with(&page, &bath_job(), "/").await?;
        for (name, bytes, words) in &files {
            page.pick_file("Bring in a job file", &file(&folder, name, bytes))
                .await?;
            page.see(words).await.map_err(|e| format!("{name}: {e}"))?;
            assert_eq!(listed(&page).await?, ["Bath house"]);
        }
        page.picture("refused-file").await
    });
}

#[test]
fn a_link_carries_the_job_to_another_device() {
    journey(|page| async move {
        let permissions = json!({"origin": page.origin(), "permissions": ["clipboardReadWrite", "clipboardSanitizedWrite"]});
        page.command("Browser.grantPermissions", permissions)
            .await?;
        start_with(&page, &bath_job(), "/job/bath-1").await?;
        page.click("Copy a link that holds the job").await?;
        page.see("The link is on the clipboard.").await?;
        let link = page
            .script_async("return await navigator.clipboard.readText()")
            .await?;
        let link = link.as_str().ok_or("no link")?.to_owned();
        let path = link
            .strip_prefix(page.origin())
            .ok_or("a link to elsewhere")?
            .to_owned();
        assert!(path.starts_with("/#"), "{path}");

        let browser = Browser::start(Screen::Phone).await?;
        let other = page.in_browser(&browser);
        let outcome = receive(&other, &path).await;
        browser.quit().await?;
        outcome?;

        // Where the app is open already, an address put in its place is looked at too.
        page.click("Jobs").await?;
        page.click("Delete: Bath house").await?;
        page.open(&path).await?;
        page.see("This link holds the job “Bath house”.").await?;
        page.click("Leave it").await?;
        page.see_gone("This link holds the job").await?;
        assert!(listed(&page).await?.is_empty());
        Ok(())
    });
}

/// What a person sees who gets the link and was never here.
async fn receive(page: &Page, path: &str) -> Step {
    page.open(path).await?;
    page.up().await?;
    page.see("This link holds the job “Bath house”.").await?;
    page.accessible().await?;
    page.picture("link").await?;
    assert!(listed(page).await?.is_empty(), "nothing is kept unasked");
    page.click("Keep it on this device").await?;
    page.see("“Bath house” is here.").await?;
    assert_eq!(listed(page).await?, ["Bath house"]);
    page.open("/job/bath-1/room/1/pour").await?;
    page.up().await?;
    page.see_row("Bags", &["7", "4"]).await?;
    // Cut short on its way.
    page.open("/sums").await?;
    page.up().await?;
    page.open(&path[..path.len() - 20]).await?;
    page.up().await?;
    page.see("The link is cut short or changed. Ask for it again, or for a file.")
        .await
}
