//! What `make bench` calls from outside the page; nothing in the app does.

use calc::floor::pour::{PourAsk, flat, level};
use calc::floor::{Outline, Point, Spot, Surface};
use calc::job::file;
use calc::job::questions::wiring::neutral::neutrals_of;
use calc::job::questions::wiring::panel::{panel_view, supply_of};
use leptos::prelude::window;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::house::{filled, judged};

/// Milliseconds for a surface, the level and the flat pour over spots in a rectangle: the mean of `runs`; NaN where
/// the spots make no floor or the browser has no clock.
#[wasm_bindgen]
pub fn measure_pour(
    x_in: &[f64],
    y_in: &[f64],
    height_in: &[f64],
    width_in: f64,
    length_in: f64,
    runs: u32,
) -> f64 {
    let corners = [
        (0.0, 0.0),
        (width_in, 0.0),
        (width_in, length_in),
        (0.0, length_in),
    ];
    let room = Outline::new(corners.map(|(x, y)| Point::new(x, y)).to_vec());
    let (Ok(room), Some(clock)) = (room, window().performance()) else {
        return f64::NAN;
    };
    let spots: Vec<Spot> = x_in
        .iter()
        .zip(y_in)
        .zip(height_in)
        .map(|((&x, &y), &height_in)| Spot {
            at: Point::new(x, y),
            height_in,
        })
        .collect();
    let ask = PourAsk {
        cover_in: 0.25,
        tilt_limit_in_per_4ft: None,
        rules: Vec::new(),
    };
    let start = clock.now();
    let mut sum_in3 = 0.0;
    for _ in 0..runs {
        let Ok(surface) = Surface::new(&room, &spots) else {
            return f64::NAN;
        };
        let (Ok(level), Ok(flat)) = (level(&surface, &ask), flat(&surface, &ask)) else {
            return f64::NAN;
        };
        sum_in3 += level.volume_in3 + flat.volume_in3;
    }
    let elapsed = clock.now() - start;
    if sum_in3.is_finite() {
        elapsed / f64::from(runs.max(1))
    } else {
        f64::NAN
    }
}

/// Milliseconds for every answer of the wiring of the job in this text, as a change of it asks them: panel, supply,
/// circuits, neutrals and boxes; the mean of `runs`. NaN where the text is no job, something of it has no answer, or the
/// browser has no clock.
#[wasm_bindgen]
pub fn measure_wiring(text: &str, runs: u32) -> f64 {
    let (Ok(job), Some(clock)) = (file::read(text), window().performance()) else {
        return f64::NAN;
    };
    let start = clock.now();
    for _ in 0..runs {
        let asked = panel_view(&job).is_ok() && matches!(supply_of(&job.panel), Some(Ok(_)));
        let neutrals = neutrals_of(&job)
            .iter()
            .all(|neutral| neutral.answer.is_ok());
        let circuits = judged(&job).iter().all(|(_, judged)| judged.is_ok());
        let boxes = filled(&job).iter().all(|(_, filled)| filled.is_ok());
        if !(asked && neutrals && circuits && boxes) {
            return f64::NAN;
        }
    }
    (clock.now() - start) / f64::from(runs.max(1))
}
