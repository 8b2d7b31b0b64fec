//! What the measures of `make bench` share: one survey, as spots and as a job.

#![allow(clippy::expect_used)]

use calc::floor::outline::rectangle;
use calc::floor::{Outline, Point, Spot};
use calc::job::{Job, Rest, Typed, Units};

/// The room's sides, inches.
pub const SIDES_IN: (f64, f64) = (480.0, 360.0);

/// A room of 40 by 30 ft with so many spots on a shaken grid: a fall, a sag and a reader's scatter. Always the same.
pub fn survey(count: usize) -> (Outline, Vec<Spot>) {
    let (width_in, length_in) = SIDES_IN;
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

/// The same survey as a job's text, read up from the datum.
pub fn survey_job(id: &str, count: usize) -> String {
    let mut job = Job::new(id, "Measure", "2026-01-01T00:00:00Z", Units::FeetInches);
    let room = job.rooms.first_mut().expect("a new job has a room");
    room.outline.width = Typed::plain(SIDES_IN.0.to_string());
    room.outline.length = Typed::plain(SIDES_IN.1.to_string());
    room.survey.way = calc::job::ReadingWay::UpFromLow;
    let entry = |value: f64| Typed::new(format!("{value:.4}"), "in");
    room.survey.spots = (100..)
        .zip(survey(count).1)
        .map(|(id, spot)| calc::job::Spot {
            id,
            x: entry(spot.at.x_in),
            y: entry(spot.at.y_in),
            reading: entry(spot.height_in),
            checked: String::new(),
            rest: Rest::new(),
        })
        .collect();
    job.next_id = 100_000;
    calc::job::file::write(&job)
}
