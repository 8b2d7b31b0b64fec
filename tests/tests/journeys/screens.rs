//! Every screen: accessible in light and dark, no wider than a phone, and a picture of each to look at.

use calc::job::sums::{PartEntry, Sums};
use calc::job::{BoxBy, BoxCableEntry, DeviceEntry};
use calc::quantity::Typed;
use calc::wiring::conductor::Size;
use tests::browser::Screen;
use tests::journey::journey_on;
use tests::page::{Page, Step};
use tests::server::dist;

use crate::bath::{bath_job, put};
use crate::closing_up::closed_job;

/// Name and address of every screen.
const SCREENS: [(&str, &str); 47] = [
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
    ("tile", "/job/closed/room/1/tile"),
    ("board", "/job/closed/room/1/board"),
    ("paint", "/job/closed/room/1/paint"),
    ("trim", "/job/closed/room/1/trim"),
    ("air", "/job/closed/room/1/air"),
    ("job-closed", "/job/closed"),
    ("buy-closed", "/job/closed/buy"),
    ("board-empty", "/job/empty/room/1/board"),
    ("air-empty", "/job/empty/room/1/air"),
    ("panel", "/job/wired/panel"),
    ("circuits", "/job/wired/circuits"),
    ("circuit", "/job/wired/circuits/CIRCUIT"),
    ("boxes", "/job/wired/boxes"),
    ("box", "/job/wired/boxes/BOX"),
    ("panel-empty", "/job/empty/panel"),
    ("circuits-empty", "/job/empty/circuits"),
    ("boxes-empty", "/job/empty/boxes"),
    ("buy", "/job/wired/buy"),
    ("quote", "/job/wired/quote"),
    ("sheet", "/job/wired/sheet"),
    ("buy-empty", "/job/empty/buy"),
    ("quote-empty", "/job/empty/quote"),
    ("sheet-empty", "/job/empty/sheet"),
    ("sums", "/sums"),
    ("sum-pour", "/sums/pour"),
    ("sum-ramp", "/sums/ramp"),
    ("sum-box", "/sums/box"),
    ("sum-ampacity", "/sums/ampacity"),
    ("sum-drop", "/sums/drop"),
    ("sum-measured", "/sums/measured"),
    ("sum-cable", "/sums/cable"),
    ("sum-quote", "/sums/quote"),
    ("sum-tile", "/sums/tile"),
    ("sum-board", "/sums/board"),
    ("sum-compound", "/sums/compound"),
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
    let size = Some(Size::Awg12);
    sums.box_fill.by = BoxBy::Marked;
    sums.box_fill.marked = Typed::plain("18");
    sums.box_fill.cables = vec![BoxCableEntry::new(20, size), BoxCableEntry::new(21, size)];
    sums.box_fill.devices = vec![DeviceEntry::new(22, size)];
    sums.box_fill.internal_clamps = true;
    sums.ampacity.laid.size = size;
    sums.ampacity.laid.ambient = Typed::plain("130 F");
    sums.voltage_drop.size = size;
    sums.voltage_drop.stretches[0].length = Typed::plain("75'");
    sums.voltage_drop.loads[0].amount = Typed::plain("16");
    sums.measured_drop.load_idle = Typed::plain("121");
    sums.measured_drop.load_loaded = Typed::plain("119.5");
    sums.measured_drop.current = Typed::plain("8");
    sums.cable_run.pieces[0].parts = vec![PartEntry {
        id: 23,
        length: Typed::plain("32'"),
        ..PartEntry::default()
    }];
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
    let wired = calc::job::demo::job("wired", "2026-03-01T08:00:00Z");
    put(page, &wired).await?;
    put(page, &closed_job()).await?;
    let mut amiss = Vec::new();
    for (name, path) in SCREENS {
        let path = path
            .replace("CIRCUIT", &wired.circuits[0].id.to_string())
            .replace("BOX", &wired.boxes[0].id.to_string());
        page.open(&path).await?;
        page.up().await?;
        page.open_all().await?;
        settle(page).await?;
        // 3/4 in at 1:12 is 9 in; 40 ft2 at 3/8 in with 10 % is 1.375 ft3, 3.06 bags.
        match name {
            "sum-ramp" => page.see("9\"").await?,
            "sum-pour" => page.see("4 ").await?,
            // Worked examples V-BF-02, V-VD-02; 30 A x 0.76 (Tables 310.16, 310.15(B)(1)(1)); 1.5 V / 8 A; 32 ft with
            // 10 % and 16 in.
            "sum-box" => page.see("18 in³").await?,
            "sum-ampacity" => page.see("22.8 A").await?,
            "sum-drop" => page.see("4.63").await?,
            "sum-measured" => page.see("0.188").await?,
            "sum-cable" => page.see("36.6").await?,
            // As the journeys of closing up work them out.
            "board" => page.see("ft²").await?,
            "air" => page.see("50 cfm").await?,
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
