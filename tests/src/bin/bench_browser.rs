//! Measures the built app in a real browser: medians, milliseconds. Part of `make bench`.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::sync::{Arc, Mutex};

use tests::browser::Screen;
use tests::journey::journey_on;
use tests::page::{Page, Step};
use tests::server::dist;

/// Of this many runs the median is taken.
const RUNS: usize = 5;

/// How much slower a phone is taken to be than this machine.
const SLOWER: f64 = 4.0;

fn main() {
    println!(
        "first visit usable, 1.6 Mbit/s, 150 ms, {SLOWER}x slower: {:.0} ms",
        median(first_visit)
    );
    println!(
        "start without a signal, {SLOWER}x slower: {:.0} ms",
        median(offline_start)
    );
}

async fn first_visit(page: Page) -> Step<f64> {
    page.narrow_line(1.6, 150.0).await?;
    page.slow_down(SLOWER).await?;
    page.open("/").await?;
    usable_after(&page).await
}

async fn offline_start(page: Page) -> Step<f64> {
    page.open("/").await?;
    page.kept_for_offline().await?;
    page.stop_server();
    page.slow_down(SLOWER).await?;
    page.reload().await?;
    usable_after(&page).await
}

/// From the navigation's start until the app said that it is up, by the page's own clock.
async fn usable_after(page: &Page) -> Step<f64> {
    page.up().await?;
    let mark = "return performance.getEntriesByName('roomwright-started')[0]?.startTime ?? null";
    let time = page.until("the mark of the start", mark, vec![]).await?;
    Ok(time.as_f64().ok_or("no time")?)
}

fn median<Fut: Future<Output = Step<f64>>>(measure: impl Fn(Page) -> Fut) -> f64 {
    let times = Arc::new(Mutex::new(Vec::new()));
    for _ in 0..RUNS {
        journey_on(Screen::Phone, &dist(), |page| async {
            let time = measure(page).await?;
            times.lock().expect("one at a time").push(time);
            Ok(())
        });
    }
    let mut times = times.lock().expect("one at a time").clone();
    times.sort_by(f64::total_cmp);
    times[RUNS / 2]
}
