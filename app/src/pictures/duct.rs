//! A fan, its duct with elbows, and the cap outside: a sketch, not to scale.

use calc::air::duct::{Duct, DuctKind};
use leptos::prelude::*;

use super::sheet::WIDTH;
use crate::markup::view;
use crate::words::closing::air as words;

/// Elbows that are drawn; more are told.
const MOST_ELBOWS: u32 = 4;

const HEIGHT: f64 = 216.0;

/// The duct. Texts: its length, its diameter, the flow at the fan and the flow that leaves.
pub fn duct_picture(duct: &Duct, [length, diameter, rated, left]: [String; 4]) -> AnyView {
    let elbows = duct.elbows.min(MOST_ELBOWS);
    let upright = elbows.div_ceil(2);
    let level = elbows + 1 - upright;
    // Level, up, level, up, ...
    let (wide, high) = (216.0, 92.0);
    let (mut x, mut y) = (64.0, if elbows == 0 { 108.0 } else { 154.0 });
    let fan_y = y;
    let mut path = format!("M{x} {y}");
    for run in 0..=elbows {
        if run % 2 == 0 {
            x += wide / f64::from(level);
        } else {
            y -= high / f64::from(upright);
        }
        path.push_str(&format!("L{x:.1} {y:.1}"));
    }
    let ends_up = elbows % 2 == 1;
    let cap = if ends_up {
        format!(
            "M{:.1} {:.1}h36M{:.1} {:.1}l18 -12l18 12",
            x - 18.0,
            y,
            x - 18.0,
            y
        )
    } else {
        format!(
            "M{:.1} {:.1}v36M{:.1} {:.1}l12 18l-12 18",
            x,
            y - 18.0,
            x,
            y - 18.0
        )
    };
    let ribs = (duct.kind == DuctKind::Flexible)
        .then(|| view! { <path class="duct-ribs" d=path.clone() /> });
    let says = words::picture_says(length.clone(), duct.elbows);
    let (out_x, out_y) = if ends_up {
        (x - 26.0, y - 2.0)
    } else {
        (x - 8.0, y - 24.0)
    };
    view! {
        <svg viewBox=format!("0 0 {WIDTH} {HEIGHT}") role="img" aria-label=says>
            <path class="duct-edge" d=path.clone() />
            <path class="duct-in" d=path.clone() />
            {ribs}
            <rect class="wall" x="20" y=fan_y - 22.0 width="44" height="44" />
            <path class="thin" d=format!("M28 {fan_y}h28M42 {}v28", fan_y - 14.0) />
            <path class="wall" d=cap />
            <text x="42" y=fan_y + 42.0 text-anchor="middle">{words::picture_fan()}</text>
            <text x="76" y=fan_y + 30.0>{rated}</text>
            <text class="halo" x=out_x y=out_y text-anchor="end">{left}</text>
            <text x=WIDTH - 8.0 y=HEIGHT - 10.0 text-anchor="end">
                {format!("{length} · {diameter} · {}", words::elbows(duct.elbows))}
            </text>
        </svg>
    }
    .into_any()
}
