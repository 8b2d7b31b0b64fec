//! When the program stops or can't start.

use serde_json::{Value, json};
use tests::journey::journey;
use tests::page::{Page, Step};

/// Tells the notice what the panic hook would.
async fn stop(page: &Page) -> Step {
    page.up().await?;
    let tell = "dispatchEvent(new CustomEvent('roomwright-stopped', { detail: 'panicked at a/file.rs:1' }))";
    page.script(tell, vec![]).await.map(drop)
}

#[test]
fn the_saved_jobs_can_be_downloaded_without_the_program() {
    journey(|page| async move {
        page.open("/").await?;
        page.keep("roomwright.job.1", "{\"name\": \"Kitchen\"}")
            .await?;
        page.keep("another.thing", "not ours").await?;
        stop(&page).await?;
        page.see("Roomwright has stopped").await?;
        page.picture("stopped").await?;
        page.accessible().await?;
        page.click("Download the saved jobs").await?;
        let saved: Value = serde_json::from_str(&page.downloaded("roomwright-saved.json").await?)?;
        assert_eq!(saved["keys"]["roomwright.job.1"], "{\"name\": \"Kitchen\"}");
        assert!(saved["keys"].get("another.thing").is_none());
        page.click("Reload").await?;
        page.see_gone("Roomwright has stopped").await
    });
}

#[test]
fn the_notice_speaks_the_kept_language() {
    journey(|page| async move {
        page.open("/").await?;
        page.keep("roomwright.lang", "es").await?;
        page.reload().await?;
        stop(&page).await?;
        page.see("Roomwright se detuvo").await?;
        page.see("Descargar los trabajos guardados").await?;
        page.picture("stopped-es").await
    });
}

#[test]
fn a_start_without_its_program_says_so_and_offers_a_way_round() {
    journey(|page| async move {
        page.command("Network.enable", json!({})).await?;
        page.command("Network.setBlockedURLs", json!({"urls": ["*.wasm"]}))
            .await?;
        page.open("/some/job").await?;
        page.see("Roomwright could not start").await?;
        page.picture("could-not-start").await?;
        page.command("Network.setBlockedURLs", json!({"urls": []}))
            .await?;
        page.click("Start without the last job").await?;
        page.up().await?;
        assert_eq!(page.path().await?, "/?fresh");
        let errors = page.console_errors().await?;
        assert!(
            !errors.is_empty()
                && errors
                    .iter()
                    .all(|error| error.contains(".wasm") || error.contains("fetch")),
            "{errors:?}"
        );
        Ok(())
    });
}

/// A real panic: the program finds no body to stand in.
#[test]
fn a_panic_at_the_start_shows_the_notice_with_its_reason() {
    journey(|page| async move {
        let hide = "const real = Object.getOwnPropertyDescriptor(Document.prototype, 'body').get;
            Object.defineProperty(Document.prototype, 'body', {
              get() { return /roomwright-[0-9a-f]+\\.js/.test(new Error().stack) ? null : real.call(this); },
            });";
        let added = page
            .command(
                "Page.addScriptToEvaluateOnNewDocument",
                json!({ "source": hide }),
            )
            .await?;
        page.open("/").await?;
        page.see("Roomwright has stopped").await?;
        page.see("Start without the last job").await?;
        let report = page
            .script(
                "return document.querySelector('#stopped pre').textContent",
                vec![],
            )
            .await?;
        assert!(
            report
                .as_str()
                .is_some_and(|report| report.contains("panicked at")),
            "{report}"
        );
        page.command("Page.removeScriptToEvaluateOnNewDocument", added)
            .await?;
        page.click("Reload").await?;
        page.up().await?;
        page.see_gone("Roomwright has stopped").await?;
        let errors = page.console_errors().await?;
        assert!(
            errors.iter().any(|error| error.contains("panicked at")),
            "{errors:?}"
        );
        Ok(())
    });
}
