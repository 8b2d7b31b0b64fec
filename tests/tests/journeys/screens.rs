//! Every screen: accessible in light and dark, no wider than a phone, and a picture of each to look at.

use calc::job::sums::Sums;
use calc::quantity::Typed;
use tests::browser::Screen;
use tests::journey::journey_on;
use tests::page::{Page, Step};
use tests::server::dist;

use crate::bath::{bath_job, put};

/// Name and address of every screen.
const SCREENS: [(&str, &str); 15] = [
    ("jobs", "/"),
    ("job", "/job/bath-1"),
    ("outline", "/job/bath-1/room/1/outline"),
    ("survey", "/job/bath-1/room/1/survey"),
    ("pour", "/job/bath-1/room/1/pour"),
    ("doorways", "/job/bath-1/room/1/doorways"),
    ("outline-empty", "/job/empty/room/1/outline"),
    ("survey-empty", "/job/empty/room/1/survey"),
    ("pour-empty", "/job/empty/room/1/pour"),
    ("doorways-empty", "/job/empty/room/1/doorways"),
    ("sums", "/sums"),
    ("sum-pour", "/sums/pour"),
    ("sum-ramp", "/sums/ramp"),
    ("gallery", "/gallery"),
    ("not-here", "/no/such/page"),
];

/// What was typed into the sums, so that each has an answer.
fn sums() -> String {
    let mut sums = Sums::default();
    sums.ramp.rise = Typed::plain("3/4\"");
    sums.ramp.slope = Typed::plain("1:12");
    sums.pour.width = Typed::plain("5'");
    sums.pour.length = Typed::plain("8'");
    sums.pour.depth = Typed::plain("3/8\"");
    sums.pour.bag_yield = Typed::plain("0.45 cu ft");
    sums.pour.allowance_percent = Typed::plain("10");
    calc::saved::write(&sums)
}

async fn settle(page: &Page) -> Step {
    // Two frames: what follows from opening the parts is drawn.
    page.script_async(
        "await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)))",
    )
    .await
    .map(drop)
}

/// Walks all screens, with everything open.
async fn walk(page: &Page, language: &str, suffix: &str, wide: i64) -> Step {
    page.open("/").await?;
    page.up().await?;
    page.keep("roomwright.lang", language).await?;
    page.keep("roomwright.sums", &sums()).await?;
    put(page, &bath_job()).await?;
    let mut empty = calc::job::Job::new(
        "empty",
        "",
        "2026-03-01T08:00:00Z",
        calc::job::Units::FeetInches,
    );
    empty.rooms[0].id = 1;
    put(page, &empty).await?;
    let mut amiss = Vec::new();
    for (name, path) in SCREENS {
        page.open(path).await?;
        page.up().await?;
        page.open_all().await?;
        settle(page).await?;
        // 3/4 in at 1:12 is 9 in; 40 ft2 at 3/8 in with 10 % is 1.375 ft3, 3.06 bags.
        match name {
            "sum-ramp" => page.see("9\"").await?,
            "sum-pour" => page.see("4 ").await?,
            _ => {}
        }
        let width = page
            .script("return document.documentElement.scrollWidth", vec![])
            .await?;
        if width.as_i64().is_none_or(|width| width > wide) {
            amiss.push(format!("{name}{suffix}: {width} px wide"));
        }
        if let Err(found) = page.accessible().await {
            amiss.push(format!("{name}{suffix}: {found}"));
        }
        page.whole_picture(&format!("{name}{suffix}")).await?;
        if language == "en" {
            page.dark(true).await?;
            settle(page).await?;
            page.whole_picture(&format!("{name}{suffix}-dark")).await?;
            page.dark(false).await?;
        }
    }
    if amiss.is_empty() {
        Ok(())
    } else {
        Err(amiss.join("\n").into())
    }
}

#[test]
fn every_screen_is_accessible_in_english() {
    journey_on(Screen::Phone, &dist(), |page| async move {
        walk(&page, "en", "", 360).await
    });
}

#[test]
fn every_screen_is_accessible_in_spanish() {
    journey_on(Screen::Phone, &dist(), |page| async move {
        walk(&page, "es", "-es", 360).await
    });
}

#[test]
fn every_screen_is_accessible_on_a_desk() {
    journey_on(Screen::Desk, &dist(), |page| async move {
        walk(&page, "en", "-wide", 1280).await
    });
}
