//! Measures the arithmetic on this machine against general-purpose libraries: medians, milliseconds. Part of `make bench`.
//!
//! `ROOMWRIGHT_PYTHON` names a Python with numpy and scipy; without it only our own times are printed.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::io::Write;
use std::process::{Command, Stdio};
use std::time::Instant;

use calc::floor::pour::{PourAsk, flat, level};
use calc::floor::{Spot, Surface};
use serde_json::{Value, json};
use tests::measures::survey;

/// Of this many runs the median is taken.
const RUNS: usize = 25;

fn main() {
    println!(
        "{:>7}  {:<26} {:>10} {:>10} {:>7}",
        "spots", "what", "here ms", "scipy ms", "ratio"
    );
    let mut whole_ms = 0.0;
    for count in [400, 1_000, 10_000] {
        let (room, spots) = survey(count);
        let reference = reference(&spots);
        let surface = Surface::new(&room, &spots).expect("a floor");
        row(
            count,
            "triangulate",
            median_ms(|| {
                Surface::new(&room, &spots)
                    .expect("a floor")
                    .triangles
                    .len()
            }),
            &reference,
        );
        row(
            count,
            "volume to a level",
            median_ms(|| surface.reached(0.25).volume_in3),
            &reference,
        );
        let ask = PourAsk {
            cover_in: 0.25,
            tilt_limit_in_per_4ft: None,
            rules: Vec::new(),
        };
        let plan = || flat(&surface, &ask).expect("a pour").volume_in3;
        row(count, "flat pour", median_ms(plan), &reference);
        row(
            count,
            "facts",
            median_ms(|| surface.facts().mean_height_in),
            &reference,
        );
        let plan_ms = median_ms(|| {
            let surface = Surface::new(&room, &spots).expect("a floor");
            let (level, flat) = (level(&surface, &ask), flat(&surface, &ask));
            level.expect("a pour").volume_in3 + flat.expect("a pour").volume_in3
        });
        row(count, "whole plan", plan_ms, &reference);
        if count == 400 {
            whole_ms = plan_ms;
        }
    }
    // The browser's measure reads this line.
    println!("whole plan of 400 spots, native ms: {whole_ms:.3}");
}

fn row(count: usize, what: &str, here_ms: f64, reference: &Value) {
    match reference[what].as_f64() {
        Some(there_ms) => println!(
            "{count:>7}  {what:<26} {here_ms:>10.3} {there_ms:>10.3} {:>6.1}x",
            there_ms / here_ms
        ),
        None => println!(
            "{count:>7}  {what:<26} {here_ms:>10.3} {:>10} {:>7}",
            "-", "-"
        ),
    }
}

fn median_ms<T>(mut work: impl FnMut() -> T) -> f64 {
    let mut times: Vec<f64> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            std::hint::black_box(work());
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[RUNS / 2]
}

/// The same work in scipy, as `tests/benches/reference.py` does it: milliseconds by what was done.
fn reference(spots: &[Spot]) -> Value {
    let Ok(python) = std::env::var("ROOMWRIGHT_PYTHON") else {
        return Value::Null;
    };
    let rows: Vec<_> = spots
        .iter()
        .map(|s| [s.at.x_in, s.at.y_in, s.height_in])
        .collect();
    let mut process = Command::new(python)
        .arg(concat!(env!("CARGO_MANIFEST_DIR"), "/benches/reference.py"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("Python starts");
    let input = json!({"spots": rows, "level": 0.25, "runs": RUNS}).to_string();
    process
        .stdin
        .take()
        .expect("a pipe")
        .write_all(input.as_bytes())
        .expect("Python reads");
    let output = process.wait_with_output().expect("Python ends");
    assert!(output.status.success(), "benches/reference.py failed");
    serde_json::from_slice(&output.stdout).expect("times")
}
