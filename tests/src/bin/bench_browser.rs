//! Measures the built app in a real browser: medians, milliseconds. Part of `make bench`.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::sync::{Arc, Mutex};

use serde_json::json;
use tests::browser::Screen;
use tests::journey::journey_on;
use tests::measures::{SIDES_IN, survey, survey_job, wired_job};
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
    println!(
        "keystroke to new figures, 400 spots, {SLOWER}x slower, 95th percentile: {:.0} ms",
        median(keystroke)
    );
    println!(
        "wiring of 42 circuits and 30 boxes recalculated, in the browser: {:.3} ms",
        median(wiring)
    );
    let wasm_ms = median(whole_plan);
    println!("whole plan of 400 spots, in the browser: {wasm_ms:.3} ms");
    if let Some(native_ms) = std::env::var("ROOMWRIGHT_NATIVE_MS")
        .ok()
        .and_then(|ms| ms.parse::<f64>().ok())
    {
        println!("that is {:.1} times the native time", wasm_ms / native_ms);
    }
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

/// Keys in the cover of a 400-spot job's pour: from each key until its figures are on screen.
async fn keystroke(page: Page) -> Step<f64> {
    page.open("/").await?;
    page.up().await?;
    page.keep("roomwright.job.measure", &survey_job("measure", 400))
        .await?;
    page.open("/job/measure/room/1/pour").await?;
    page.up().await?;
    page.until(
        "the pour",
        "return document.querySelector('#cover') && document.querySelector('.figure') ? 1 : null",
        vec![],
    )
    .await?;
    page.slow_down(SLOWER).await?;
    let times = page
        .script_async(
            "const input = document.querySelector('#cover'), times = [];
             const figures = () => document.querySelector('table').textContent;
             for (let i = 0; i < 40; i++) {
               const before = figures(), start = performance.now();
               input.value = (0.25 + 0.01 * (i + 1)).toFixed(2);
               input.dispatchEvent(new Event('input', { bubbles: true }));
               for (let frame = 0; figures() === before && frame < 120; frame++) await new Promise(requestAnimationFrame);
               if (figures() === before) throw new Error('no new figures');
               await new Promise(requestAnimationFrame);
               times.push(performance.now() - start);
             }
             return times.sort((a, b) => a - b)[Math.floor(times.length * 0.95)];",
        )
        .await?;
    Ok(times.as_f64().ok_or("no time")?)
}

/// Surface, level and flat for 400 spots, by the page's own clock.
async fn whole_plan(page: Page) -> Step<f64> {
    page.open("/").await?;
    page.up().await?;
    let (_, spots) = survey(400);
    let column = |get: fn(&calc::floor::Spot) -> f64| spots.iter().map(get).collect::<Vec<_>>();
    let time = page
        .script(
            "const a = arguments;
             return window.wasmBindings.measure_pour(
               new Float64Array(a[0]), new Float64Array(a[1]), new Float64Array(a[2]), a[3], a[4], 50);",
            vec![
                json!(column(|s| s.at.x_in)),
                json!(column(|s| s.at.y_in)),
                json!(column(|s| s.height_in)),
                json!(SIDES_IN.0),
                json!(SIDES_IN.1),
            ],
        )
        .await?;
    Ok(time.as_f64().ok_or("no time")?)
}

/// Every answer of a job's wiring, by the page's own clock.
async fn wiring(page: Page) -> Step<f64> {
    page.open("/").await?;
    page.up().await?;
    let time = page
        .script(
            "return window.wasmBindings.measure_wiring(arguments[0], 50);",
            vec![wired_job("house", 42, 30).into()],
        )
        .await?;
    Ok(time.as_f64().ok_or("the house is not answered")?)
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
