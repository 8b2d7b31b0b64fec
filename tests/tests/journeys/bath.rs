//! A room to work with: the bath of tests/cases/floor/bath.toml, its entries and what must come out of them.

use std::fs;
use std::path::Path;

use calc::job::{Job, Room, Units};
use serde_json::Value;
use tests::page::{Page, Step};

/// A case of a case file: what is given and what is expected, computed with scipy as its file says.
pub struct Case(Value);

impl Case {
    /// The case of this name in a file of tests/cases/floor/.
    pub fn of(file: &str, name: &str) -> Self {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("cases/floor")
            .join(file);
        let file: Value = toml::from_str(&fs::read_to_string(path).unwrap()).unwrap();
        let cases = file["case"].as_array().unwrap();
        let case = cases.iter().find(|case| case["name"] == name);
        Self(case.unwrap_or_else(|| panic!("no case {name}")).clone())
    }

    /// An expected number by its path, like `/flat/pour/volume_ft3`.
    pub fn number(&self, path: &str) -> f64 {
        let found = self.0["expect"].pointer(path).and_then(Value::as_f64);
        found.unwrap_or_else(|| panic!("the case expects nothing at {path}"))
    }

    /// The given room.
    pub fn room(&self) -> Room {
        calc::saved::read(&self.0["given"]["room"].to_string()).unwrap()
    }
}

/// The bath without limits.
pub fn bath() -> Case {
    Case::of("bath.toml", "no-limits")
}

/// A job of one room, as the app stores it.
pub fn job_of(id: &str, name: &str, room: Room) -> Job {
    let mut job = Job::new(id, name, "2026-03-02T08:00:00Z", Units::FeetInches);
    job.rooms = vec![room];
    // Reading sets the counter of row ids after those in use.
    calc::job::file::read(&calc::job::file::write(&job)).unwrap()
}

/// The bath as a job called "Bath house" under the id `bath-1`.
pub fn bath_job() -> Job {
    job_of("bath-1", "Bath house", bath().room())
}

/// The readings of a room as lines to paste.
pub fn readings(room: &Room) -> String {
    let lines = room
        .survey
        .spots
        .iter()
        .map(|spot| format!("{}\t{}\t{}\n", spot.x.text, spot.y.text, spot.reading.text));
    lines.collect()
}

/// Puts a job on the shelf of a page that has been opened.
pub async fn put(page: &Page, job: &Job) -> Step {
    let key = format!("roomwright.job.{}", job.id);
    page.keep(&key, &calc::job::file::write_compact(job)).await
}

/// Opens the app with a job on its shelf, at an address.
pub async fn start_with(page: &Page, job: &Job, path: &str) -> Step {
    page.open("/sums").await?;
    page.up().await?;
    put(page, job).await?;
    page.open(path).await?;
    page.up().await
}

/// A length as a tape reads it, to the nearest of so many parts of an inch; halves go up.
pub fn tape(inches: f64, parts: u32) -> String {
    let ticks = (inches * f64::from(parts)).round() as u32;
    let (whole, mut over, mut under) = (ticks / parts, ticks % parts, parts);
    while over > 0 && over % 2 == 0 {
        over /= 2;
        under /= 2;
    }
    match (whole, over) {
        (whole, 0) => format!("{whole}\""),
        (0, over) => format!("{over}/{under}\""),
        (whole, over) => format!("{whole} {over}/{under}\""),
    }
}

/// To the nearest sixteenth.
pub fn sixteenth(inches: f64) -> String {
    tape(inches, 16)
}

/// A number to at most so many decimals, halves up, without zeros at its end.
pub fn short(number: f64, decimals: usize) -> String {
    let scale = 10_f64.powi(decimals as i32);
    let text = format!("{:.decimals$}", (number * scale).round() / scale);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}
