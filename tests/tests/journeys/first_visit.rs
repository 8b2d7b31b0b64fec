//! The first visit.

use serde_json::json;
use tests::browser::Screen;
use tests::journey::{journey, journey_on};
use tests::server::dist;

/// The app is up and its first screen is gone, without an error, without a request to anywhere else.
#[test]
fn the_app_takes_the_place_of_the_first_screen() {
    journey(|page| async move {
        page.open("/").await?;
        page.up().await?;
        assert_eq!(page.script("return innerWidth", vec![]).await?, json!(360));
        assert_eq!(
            page.script("return document.documentElement.scrollWidth", vec![])
                .await?,
            json!(360)
        );
        page.picture("first-visit").await
    });
}

/// What stands there before the program is.
#[test]
fn the_first_screen_shows_at_once() {
    journey(|page| async move {
        page.command("Network.enable", json!({})).await?;
        page.command("Network.setBlockedURLs", json!({"urls": ["*.wasm"]}))
            .await?;
        page.open("/").await?;
        // The program can't come, so the notice does; take it away to look at what stood there.
        page.see("Roomwright could not start").await?;
        page.script("document.getElementById('stopped').hidden = true; document.querySelectorAll('#first-screen > *').forEach((e) => { e.hidden = false })", vec![])
            .await?;
        page.see("Roomwright").await?;
        page.picture("first-screen").await?;
        page.accessible().await?;
        page.console_errors().await.map(drop)
    });
}

#[test]
fn the_app_can_be_installed() {
    journey(|page| async move {
        page.open("/").await?;
        page.kept_for_offline().await?;
        let errors = page
            .command("Page.getInstallabilityErrors", json!({}))
            .await?;
        assert_eq!(errors["installabilityErrors"], json!([]));
        let manifest = page.command("Page.getAppManifest", json!({})).await?;
        assert_eq!(manifest["errors"], json!([]));
        Ok(())
    });
}

#[test]
fn the_first_page_is_accessible() {
    journey(|page| async move {
        page.open("/").await?;
        page.up().await?;
        page.accessible().await
    });
}

#[test]
fn a_wide_screen_works_too() {
    journey_on(Screen::Desk, &dist(), |page| async move {
        page.open("/").await?;
        page.up().await?;
        page.picture("first-visit-wide").await
    });
}
