//! A wall or a ceiling with its board, to scale: pieces with the numbers of their sheets, joints by kind, openings.

use calc::finish::board::{BoardPlan, Cutout, JointKind};
use leptos::prelude::*;

use super::sheet::WIDTH;
use crate::markup::view;
use crate::words::closing::board as words;

const MARGIN: f64 = 8.0;

/// The most height on paper.
const MOST_HIGH: f64 = 380.0;

/// One surface of a layout.
pub fn board_picture(plan: &BoardPlan, surface: usize) -> AnyView {
    let Some(of) = plan.ask.surfaces.get(surface) else {
        return ().into_any();
    };
    let wide = (WIDTH - 2.0 * MARGIN) / of.length_in.max(1.0);
    let scale = wide.min(MOST_HIGH / of.height_in.max(1.0));
    let left = (WIDTH - of.length_in * scale) / 2.0;
    let x = move |x_in: f64| left + x_in * scale;
    let y = move |y_in: f64| MARGIN + (of.height_in - y_in) * scale;
    let rect = move |class: &'static str, x_in: f64, y_in: f64, width_in: f64, height_in: f64| {
        view! {
            <rect
                class=class
                x=x(x_in)
                y=y(y_in + height_in)
                width=width_in * scale
                height=height_in * scale
            />
        }
    };
    let mine = || {
        plan.pieces
            .iter()
            .filter(move |piece| piece.surface == surface)
    };
    let pieces = mine()
        .map(|piece| {
            rect(
                "sheet-of",
                piece.x_in,
                piece.y_in,
                piece.width_in,
                piece.height_in,
            )
        })
        .collect_view();
    let openings = of
        .openings
        .iter()
        .map(|gap| {
            let (x1, x2) = (x(gap.x_in), x(gap.x_in + gap.width_in));
            let (y1, y2) = (y(gap.y_in), y(gap.y_in + gap.height_in));
            view! {
                {rect("obstacle", gap.x_in, gap.y_in, gap.width_in, gap.height_in)}
                <path class="thin" d=format!("M{x1:.1} {y1:.1}L{x2:.1} {y2:.1}M{x1:.1} {y2:.1}L{x2:.1} {y1:.1}") />
            }
        })
        .collect_view();
    let (mut tapered, mut butt, mut butts) = (String::new(), String::new(), 0);
    for joint in plan.joints.iter().filter(|joint| joint.surface == surface) {
        let line = format!(
            "M{:.1} {:.1}L{:.1} {:.1}",
            x(joint.x_in),
            y(joint.y_in),
            x(joint.to_x_in),
            y(joint.to_y_in)
        );
        match joint.kind {
            JointKind::Tapered => tapered.push_str(&line),
            JointKind::Butt => {
                butt.push_str(&line);
                butts += 1;
            }
        }
    }
    let numbers = mine()
        .map(|piece| {
            let sides = (piece.x_in, piece.y_in, piece.width_in, piece.height_in);
            let (x_in, y_in) = place(sides, &of.openings);
            view! {
                <text class="halo" x=x(x_in) y=y(y_in) + 5.0 text-anchor="middle">{piece.sheet + 1}</text>
            }
        })
        .collect_view();
    let height = 2.0 * MARGIN + of.height_in * scale;
    view! {
        <svg
            viewBox=format!("0 0 {WIDTH} {height:.0}")
            role="img"
            aria-label=words::picture_says(mine().count(), butts)
        >
            {pieces}
            <path class="joint" d=tapered />
            <path class="joint butt" d=butt />
            {openings}
            {rect("wall", 0.0, 0.0, of.length_in, of.height_in)}
            {numbers}
        </svg>
    }
    .into_any()
}

/// Where a piece's number stands: in its middle, or beside an opening that is there.
fn place(
    (x_in, y_in, width_in, height_in): (f64, f64, f64, f64),
    openings: &[Cutout],
) -> (f64, f64) {
    let free = |(x_in, y_in): &(f64, f64)| {
        openings.iter().all(|gap| {
            *x_in < gap.x_in
                || *x_in > gap.x_in + gap.width_in
                || *y_in < gap.y_in
                || *y_in > gap.y_in + gap.height_in
        })
    };
    let at = |across: f64, up: f64| (x_in + width_in * across, y_in + height_in * up);
    let tried = [
        at(0.5, 0.5),
        at(0.1, 0.5),
        at(0.9, 0.5),
        at(0.5, 0.88),
        at(0.5, 0.12),
    ];
    tried.into_iter().find(free).unwrap_or(at(0.5, 0.5))
}
