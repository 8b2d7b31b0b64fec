//! A newer version.

use std::fs;
use std::path::Path;

use tests::browser::Screen;
use tests::journey::journey_on;
use tests::page::{Page, Step};
use tests::server::dist;

use crate::bath::{bath_job, put};

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        if entry.path().is_dir() {
            copy(&entry.path(), &to.join(entry.file_name()));
        } else if entry
            .path()
            .extension()
            .is_none_or(|extension| extension != "br")
        {
            fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
        }
    }
}

/// Puts a newer version on the server and lets the page find it.
async fn deploy(page: &Page, worker: &Path) -> Step {
    let text = fs::read_to_string(worker)?;
    let newer = text.replacen("const version = \"", "const version = \"newer-", 1);
    assert_ne!(text, newer);
    fs::write(worker, newer)?;
    page.script_async("await (await navigator.serviceWorker.ready).update()")
        .await
        .map(drop)
}

/// The newer version is asked for by its button; what was typed by half is there when it is up.
#[test]
fn an_update_by_consent_loses_nothing_that_is_typed() {
    let folder = tempfile::tempdir().unwrap();
    copy(&dist(), folder.path());
    let worker = folder.path().join("sw.js");
    journey_on(Screen::Phone, folder.path(), |page| async move {
        page.open("/").await?;
        page.kept_for_offline().await?;
        put(&page, &bath_job()).await?;
        let survey = "/job/bath-1/room/1/survey";
        page.open(survey).await?;
        page.up().await?;
        page.click("All spots and readings (15)").await?;
        page.type_into("Spot 4 reading", "3 1/").await?;
        let first = page.script_async("return await caches.keys()").await?;
        deploy(&page, &worker).await?;
        page.see("A new version is ready. Everything you typed is saved.")
            .await?;
        page.accessible().await?;
        page.picture("update").await?;
        page.click("Later").await?;
        page.see_gone("A new version is ready.").await?;
        page.reload().await?;
        page.up().await?;
        page.see("A new version is ready.").await?;
        page.script("window.before = true", vec![]).await?;
        page.click("Use it now").await?;
        page.until(
            "the page to load again",
            "return window.before ? null : true",
            vec![],
        )
        .await?;
        page.up().await?;
        page.see("Spot 4 of 15").await?;
        page.see_gone("A new version is ready.").await?;
        assert_eq!(page.path().await?, survey);
        assert_eq!(page.value_of("Reading at spot 4").await?, "3 1/");
        assert_ne!(
            page.script_async("return await caches.keys()").await?,
            first
        );
        Ok(())
    });
}

/// A second deploy waits; the page that asks for it gets it, and one cache is left.
#[test]
fn a_newer_version_waits_until_it_is_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    copy(&dist(), folder.path());
    let worker = folder.path().join("sw.js");
    journey_on(Screen::Phone, folder.path(), |page| async move {
        page.open("/").await?;
        page.kept_for_offline().await?;
        let first = page.script_async("return await caches.keys()").await?;

        deploy(&page, &worker).await?;
        let waiting = "const found = await navigator.serviceWorker.ready;
            while (!found.waiting) await new Promise((r) => setTimeout(r, 20));
            return (await caches.keys()).length";
        assert_eq!(page.script_async(waiting).await?, 2);
        page.reload().await?;
        assert_eq!(
            page.script_async(waiting).await?,
            2,
            "a reload is no consent"
        );

        page.script_async(
            "const changed = new Promise((r) => navigator.serviceWorker.addEventListener('controllerchange', r));
             (await navigator.serviceWorker.ready).waiting.postMessage('skip-waiting');
             await changed;
             while ((await caches.keys()).length > 1) await new Promise((r) => setTimeout(r, 20));",
        )
        .await?;
        let last = page.script_async("return await caches.keys()").await?;
        assert_ne!(first, last);
        page.stop_server();
        page.reload().await?;
        page.up().await.map(drop)
    });
}
