//! A ramp seen from the side, with its rise, run and slope; to scale, or with heights drawn larger, and then it
//! says so.

use crate::markup::view;
use leptos::prelude::*;

use super::sheet::{WIDTH, dimension};

/// What a ramp profile shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RampContent {
    /// Rise, inches.
    pub rise_in: f64,
    /// Run, inches.
    pub run_in: f64,
    /// Rise, written out.
    pub rise: String,
    /// Run, written out.
    pub run: String,
    /// Slope, written out.
    pub slope: String,
    /// Name of the lower floor, at the foot of the ramp; empty: none.
    pub low: String,
    /// Name of the higher floor; empty: none.
    pub high: String,
}

/// Level floor drawn before the foot and after the top.
const FLOOR: f64 = 40.0;
const RIGHT: f64 = 100.0;
const TOP: f64 = 44.0;
const BODY: f64 = 120.0;
/// A wedge lower than this on the sheet can't be read.
const LEAST_BODY: f64 = 22.0;
const GROUND: f64 = 12.0;

/// The ramp profile.
#[component]
pub fn RampProfile(
    /// What to draw.
    #[prop(into)]
    content: Signal<RampContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    let height =
        move || content.with(|c| Place::of(c).map_or(0.0, |place| place.bottom + GROUND + 46.0));
    view! {
        <svg
            viewBox=move || format!("0 0 {WIDTH} {:.0}", height())
            role="img"
            aria-label=move || says.get()
        >
            {move || content.with(draw)}
        </svg>
    }
}

/// Heights are drawn so many times as large as lengths: once where that can be read, else a round number.
pub fn exaggeration(rise_in: f64, run_in: f64) -> f64 {
    if !(rise_in > 0.0 && run_in > 0.0) {
        return 1.0;
    }
    let drawn = rise_in * scale(rise_in, run_in);
    [
        1.0, 2.0, 4.0, 5.0, 8.0, 10.0, 20.0, 40.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0,
        5000.0,
    ]
    .into_iter()
    .find(|k| drawn * k >= LEAST_BODY)
    .unwrap_or(5000.0)
}

/// Sheet units per inch of run.
fn scale(rise_in: f64, run_in: f64) -> f64 {
    ((WIDTH - FLOOR - RIGHT) / run_in).min(BODY / rise_in)
}

/// The wedge on the sheet.
struct Place {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Place {
    fn of(c: &RampContent) -> Option<Self> {
        if !(c.rise_in > 0.0 && c.run_in > 0.0) {
            return None;
        }
        let scale = scale(c.rise_in, c.run_in);
        let run = c.run_in * scale;
        let rise = (c.rise_in * scale * exaggeration(c.rise_in, c.run_in)).min(BODY);
        // A short ramp stands in the middle of its room.
        let left = FLOOR + (WIDTH - FLOOR - RIGHT - run) / 2.0;
        Some(Self {
            left,
            right: left + run,
            top: TOP,
            bottom: TOP + rise,
        })
    }
}

fn draw(c: &RampContent) -> AnyView {
    let Some(Place {
        left,
        right,
        top,
        bottom,
    }) = Place::of(c)
    else {
        return ().into_any();
    };
    let end = WIDTH - 6.0;
    let under = bottom + GROUND;
    // Material: strokes at 45 degrees, from the foot of the wedge up to its face.
    let face = |x: f64| bottom - (bottom - top) * ((x - left) / (right - left)).clamp(0.0, 1.0);
    let steps = ((right - left) / 9.0).floor().max(1.0);
    let hatch = std::iter::successors(Some(1.0), |n| Some(n + 1.0))
        .take_while(|&n| n < steps)
        .map(|n| {
            let x = left + n * (right - left) / steps;
            // Where a stroke going up and left from the base meets the face.
            let slope = (bottom - top) / (right - left);
            let reach = (x - left) * slope / (1.0 + slope);
            view! { <line class="hatch faint" x1=x y1=bottom x2=x - reach y2=face(x - reach) /> }
        })
        .collect_view();
    let ground = |from: f64, to: f64, y: f64| {
        let count = ((to - from) / 10.0).floor().max(1.0);
        std::iter::successors(Some(0.0), |n| Some(n + 1.0))
            .take_while(|&n| n < count)
            .map(|n| {
                let x = from + n * 10.0;
                view! { <line class="thin" x1=x y1=y + 9.0 x2=x + 8.0 y2=y + 1.0 /> }
            })
            .collect_view()
    };
    let angle = {
        let radius = ((right - left) * 0.45).min(70.0);
        let (dx, dy) = (right - left, bottom - top);
        let long = dx.hypot(dy);
        let (ax, ay) = (left + radius, bottom);
        let (bx, by) = (left + radius * dx / long, bottom - radius * dy / long);
        view! { <path class="thin" d=format!("M{ax:.1} {ay:.1} A{radius:.1} {radius:.1} 0 0 0 {bx:.1} {by:.1}") /> }
    };
    let rise_x = right + 16.0;
    view! {
        <polygon class="pour" points=format!("{left:.1},{bottom:.1} {right:.1},{bottom:.1} {right:.1},{top:.1}") />
        {hatch}
        {ground(6.0, right, bottom)}
        {ground(right, end, top)}
        <polyline class="pour-edge" points=format!("{left:.1},{bottom:.1} {right:.1},{top:.1}") />
        <polyline
            class="ground-edge"
            points=format!("6,{bottom:.1} {right:.1},{bottom:.1} {right:.1},{top:.1} {end:.1},{top:.1}")
        />
        {angle}
        <text class="halo" x=f64::midpoint(left, right) y=top - 12.0 text-anchor="middle">{c.slope.clone()}</text>
        <text class="halo" x=6 y=bottom - 8.0>{c.low.clone()}</text>
        <text class="halo" x=end y=top - 8.0 text-anchor="end">{c.high.clone()}</text>
        {dimension(left, under + 22.0, right, under + 22.0, c.run.clone())}
        <line class="dimension" x1=right + 4.0 y1=bottom x2=rise_x + 8.0 y2=bottom />
        <line class="dimension" x1=rise_x y1=bottom x2=rise_x y2=top />
        <line class="slash" x1=rise_x - 4.0 y1=bottom + 4.0 x2=rise_x + 4.0 y2=bottom - 4.0 />
        <line class="slash" x1=rise_x - 4.0 y1=top + 4.0 x2=rise_x + 4.0 y2=top - 4.0 />
        <text class="halo" x=rise_x + 8.0 y=(f64::midpoint(top, bottom) + 16.0).max(top + 26.0)>{c.rise.clone()}</text>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heights_are_drawn_true_where_they_can_be_read() {
        // A run of 9 in takes 204 units of the sheet: 3 in of rise are 68, to scale; 3/16 in are 4.25, and 8 times
        // that is the first of the round numbers to reach 22.
        assert_eq!(exaggeration(3.0, 9.0), 1.0);
        assert_eq!(exaggeration(0.1875, 9.0), 8.0);
        assert_eq!(exaggeration(0.0, 9.0), 1.0);
        let flat = Place::of(&RampContent {
            rise_in: 0.01,
            run_in: 200.0,
            ..RampContent::default()
        })
        .unwrap();
        assert!(flat.bottom - flat.top >= LEAST_BODY && flat.bottom - flat.top <= BODY);
    }
}
