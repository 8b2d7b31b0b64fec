//! A section through the floor and the pour along a line; heights drawn larger than lengths, and it says so.

use crate::markup::view;
use leptos::prelude::*;

use super::sheet::{WIDTH, dimension};

/// What a section shows: heights over the distance along the line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SectionContent {
    /// Old floor: distance along the line and height, inches.
    pub floor: Vec<(f64, f64)>,
    /// Top of the pour at the same distances; empty: no pour.
    pub pour: Vec<(f64, f64)>,
    /// A straightedge along the line.
    pub straightedge: Option<Straightedge>,
    /// Depths to write: distance along the line, label.
    pub depths: Vec<(f64, String)>,
    /// Length of the line, written out.
    pub length: String,
    /// Names of the line's two ends.
    pub ends: (String, String),
}

/// A straightedge laid along the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Straightedge {
    /// Where it rests: distance along the line and height, inches.
    pub contacts: [(f64, f64); 2],
    /// Distance along the line of the widest gap, inches.
    pub gap_at: f64,
    /// The gap, written out.
    pub label: String,
}

const MARGIN: f64 = 14.0;
const TOP: f64 = 40.0;
const BODY: f64 = 96.0;
const HEIGHT: f64 = 232.0;

/// Heights are drawn so many times as large as lengths; a round number.
pub fn exaggeration(content: &SectionContent) -> f64 {
    let all = || content.floor.iter().chain(&content.pour);
    let low = all().map(|p| p.1).fold(f64::MAX, f64::min);
    let high = all().map(|p| p.1).fold(f64::MIN, f64::max);
    let run = content.floor.last().map_or(1.0, |p| p.0).max(1.0);
    let most = BODY / (high - low).max(0.05) * run / (WIDTH - 2.0 * MARGIN);
    [
        200.0, 100.0, 50.0, 40.0, 30.0, 20.0, 15.0, 10.0, 8.0, 5.0, 4.0, 3.0, 2.0,
    ]
    .into_iter()
    .find(|&k| k <= most)
    .unwrap_or(1.0)
}

/// The section.
#[component]
pub fn Section(
    /// What to draw.
    #[prop(into)]
    content: Signal<SectionContent>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    view! {
        <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img" aria-label=move || says.get()>
            {move || content.with(draw)}
        </svg>
    }
}

fn draw(c: &SectionContent) -> AnyView {
    let Some(run) = c.floor.last().map(|p| p.0.max(1.0)) else {
        return ().into_any();
    };
    let scale = (WIDTH - 2.0 * MARGIN) / run;
    let tall = scale * exaggeration(c);
    let high = c
        .floor
        .iter()
        .chain(&c.pour)
        .map(|p| p.1)
        .fold(f64::MIN, f64::max);
    let at = move |(s, h): (f64, f64)| (MARGIN + s * scale, TOP + (high - h) * tall);
    let path = |points: &[(f64, f64)]| {
        points
            .iter()
            .map(|&p| at(p))
            .map(|(x, y)| format!("{x:.1},{y:.1} "))
            .collect::<String>()
    };
    let under = HEIGHT - 46.0;
    let ground = format!(
        "{}{:.1},{under} {:.1},{under}",
        path(&c.floor),
        MARGIN + run * scale,
        MARGIN
    );
    let pour = (!c.pour.is_empty()).then(|| {
        let mut back = c.floor.clone();
        back.reverse();
        view! {
            <polygon class="pour" points=format!("{}{}", path(&c.pour), path(&back)) />
            <polyline class="pour-edge" points=path(&c.pour) />
        }
    });
    let height_at = |points: &[(f64, f64)], s: f64| {
        points
            .windows(2)
            .find(|w| s >= w[0].0 && s <= w[1].0)
            .map(|w| {
                if w[1].0 > w[0].0 {
                    w[0].1 + (w[1].1 - w[0].1) * (s - w[0].0) / (w[1].0 - w[0].0)
                } else {
                    w[0].1
                }
            })
    };
    let mut last_x = f64::MIN;
    let depths = c
        .depths
        .iter()
        .filter_map(|(s, label)| {
            let top = height_at(if c.pour.is_empty() { &c.floor } else { &c.pour }, *s)?;
            let (x, y) = at((*s, top));
            if x - last_x < 44.0 {
                return None;
            }
            last_x = x;
            let bottom = at((*s, height_at(&c.floor, *s)?)).1;
            let x_text = x.clamp(MARGIN + 14.0, WIDTH - MARGIN - 14.0);
            Some(view! {
                <line class="thin" x1=x y1=y - 6.0 x2=x y2=bottom />
                <text class="halo" x=x_text y=y - 10.0 text-anchor="middle">{label.clone()}</text>
            })
        })
        .collect_view();
    let hatch = (0..24)
        .map(|i| {
            let x = MARGIN + f64::from(i) * (WIDTH - 2.0 * MARGIN) / 24.0;
            view! { <line class="thin" x1=x y1=under x2=x + 9.0 y2=under - 9.0 /> }
        })
        .collect_view();
    let straightedge = c.straightedge.clone().map(|Straightedge { contacts: [a, b], gap_at: s, label }| {
        let ((x1, y1), (x2, y2)) = (at(a), at(b));
        let chord = a.1 + (b.1 - a.1) * (s - a.0) / (b.0 - a.0).max(1e-9);
        let (gx, gy) = at((s, chord));
        let floor = height_at(&c.floor, s).map_or(gy, |h| at((s, h)).1);
        view! {
            <line class="worst" x1=x1 y1=y1 x2=x2 y2=y2 />
            <line class="slash" x1=gx y1=gy x2=gx y2=floor />
            <text class="halo" x=gx.clamp(40.0, WIDTH - 40.0) y=gy - 10.0 text-anchor="middle">{label}</text>
        }
    });
    view! {
        <polygon class="ground-fill" points=ground />
        {hatch}
        {pour}
        <polyline class="ground-edge" points=path(&c.floor) />
        {depths}
        {straightedge}
        <text x=MARGIN y=HEIGHT - 26.0>{c.ends.0.clone()}</text>
        <text x=WIDTH - MARGIN y=HEIGHT - 26.0 text-anchor="end">{c.ends.1.clone()}</text>
        {dimension(MARGIN, HEIGHT - 12.0, WIDTH - MARGIN, HEIGHT - 12.0, c.length.clone())}
    }
    .into_any()
}
