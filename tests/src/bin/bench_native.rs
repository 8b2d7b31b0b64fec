//! Measures the arithmetic on this machine against general-purpose libraries: medians, milliseconds. Part of `make bench`.
//!
//! `ROOMWRIGHT_PYTHON` names a Python with numpy and scipy; without it only our own times are printed.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::io::Write;
use std::process::{Command, Stdio};
use std::time::Instant;

use calc::floor::outline::rectangle;
use calc::floor::pour::{PourAsk, flat};
use calc::floor::{Outline, Point, Spot, Surface};
use serde_json::{Value, json};

/// Of this many runs the median is taken.
const RUNS: usize = 9;

fn main() {
    println!(
        "{:>7}  {:<26} {:>10} {:>10} {:>7}",
        "spots", "what", "here ms", "scipy ms", "ratio"
    );
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
    }
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

/// A room of 40 by 30 ft with so many spots on a shaken grid: a fall, a sag and a reader's scatter. Always the same.
fn survey(count: usize) -> (Outline, Vec<Spot>) {
    let (width_in, length_in) = (480.0, 360.0);
    let columns = ((count as f64 * width_in / length_in).sqrt().ceil()) as usize;
    let rows = count.div_ceil(columns);
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut scatter = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 11) as f64 / (1_u64 << 53) as f64 - 0.5
    };
    let spots = (0..count).map(|i| {
        let x_in = (((i % columns) as f64 + 0.5 + 0.6 * scatter()) / columns as f64) * width_in;
        let y_in = (((i / columns) as f64 + 0.5 + 0.6 * scatter()) / rows as f64) * length_in;
        let sag_in = 0.4 * (x_in / width_in * 3.1).sin() * (y_in / length_in * 3.1).sin();
        Spot {
            at: Point::new(x_in, y_in),
            height_in: x_in / 960.0 - sag_in + 0.03 * scatter(),
        }
    });
    (
        rectangle(width_in, length_in).expect("a room"),
        spots.collect(),
    )
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
