//! A ramp seen from the side, to scale, with its rise, run and slope.

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
}

const MARGIN: f64 = 16.0;
const RIGHT: f64 = 74.0;
const TOP: f64 = 34.0;
const BODY: f64 = 120.0;

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
    let height = move || content.with(|c| geometry(c).3 + 44.0);
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

/// Left, right, top and bottom of the wedge on the sheet.
fn geometry(c: &RampContent) -> (f64, f64, f64, f64) {
    let scale = ((WIDTH - MARGIN - RIGHT) / c.run_in.max(0.01)).min(BODY / c.rise_in.max(0.01));
    let right = MARGIN + c.run_in * scale;
    // The thinnest wedge still has a visible edge; the figures carry the measure.
    let bottom = TOP + (c.rise_in * scale).max(1.5) + 14.0;
    (MARGIN, right, bottom - (c.rise_in * scale).max(1.5), bottom)
}

fn draw(c: &RampContent) -> AnyView {
    if !(c.rise_in > 0.0 && c.run_in > 0.0) {
        return ().into_any();
    }
    let (left, right, top, bottom) = geometry(c);
    view! {
        <polygon class="pour" points=format!("{left},{bottom} {right},{bottom} {right},{top}") />
        <polyline class="pour-edge" points=format!("{left},{bottom} {right},{top}") />
        <line class="ground-edge" x1=4 y1=bottom x2=right y2=bottom />
        <line class="ground-edge" x1=right y1=top x2=WIDTH - 4.0 y2=top />
        <text class="halo" x=f64::midpoint(left, right) y=f64::midpoint(top, bottom) - 12.0 text-anchor="middle">
            {c.slope.clone()}
        </text>
        {dimension(left, bottom + 18.0, right, bottom + 18.0, c.run.clone())}
        <line class="dimension" x1=right + 10.0 y1=bottom x2=right + 10.0 y2=top />
        <line class="dimension" x1=right y1=bottom x2=right + 14.0 y2=bottom />
        <text class="halo" x=right + 18.0 y=bottom - 2.0>{c.rise.clone()}</text>
    }
    .into_any()
}
