//! A cutting list as bars: each stick with its pieces and what is left, to scale.

use std::sync::Arc;

use calc::finish::trim::stock::CutList;
use calc::job::Units;
use leptos::prelude::*;

use super::length_text;
use super::sheet::WIDTH;
use crate::markup::view;
use crate::reactive::draw;
use crate::words::closing::trim as words;

const LEFT: f64 = 8.0;
const BAR: f64 = 30.0;
const STEP: f64 = 58.0;

/// A cutting list as bars.
#[component]
pub fn Bars(
    /// The list; none: nothing is drawn.
    #[prop(into)]
    list: Signal<Option<Arc<CutList>>>,
    /// The units in force.
    #[prop(into)]
    units: Signal<Units>,
) -> impl IntoView {
    draw(move || {
        let units = units.get();
        list.get().map(|list| sheet(&list, units))
    })
}

fn sheet(list: &CutList, units: Units) -> AnyView {
    let longest_in = list.bars.iter().map(|bar| bar.stock_in).fold(1.0, f64::max);
    let scale = (WIDTH - 2.0 * LEFT) / longest_in;
    let bars = list
        .bars
        .iter()
        .enumerate()
        .map(|(row, bar)| {
            let top = 22.0 + row as f64 * STEP;
            let pieces = bar
                .pieces
                .iter()
                .map(|piece| {
                    let (x, width) = (LEFT + piece.at_in * scale, piece.length_in * scale);
                    let text = length_text(piece.length_in, units);
                    // Letters of about 8 units.
                    let fits = width > 8.5 * text.chars().count() as f64;
                    let label = fits.then(|| {
                        view! {
                            <text x=x + width / 2.0 y=top + 20.0 text-anchor="middle">{text}</text>
                        }
                    });
                    view! {
                        <rect class="bar" x=x y=top width=width height=BAR />
                        {label}
                    }
                })
                .collect_view();
            let end = LEFT + bar.stock_in * scale;
            let left = bar.left_in * scale;
            view! {
                <text x=LEFT y=top - 5.0>{format!("{}: {}", row + 1, words::stick(bar.stock_in, units))}</text>
                <rect class="bar left" x=end - left y=top width=left height=BAR />
                {pieces}
            }
        })
        .collect_view();
    let height = 14.0 + list.bars.len() as f64 * STEP;
    view! {
        <svg
            viewBox=format!("0 0 {WIDTH} {height}")
            role="img"
            aria-label=words::picture_says(list.bars.len())
        >
            {bars}
        </svg>
    }
    .into_any()
}
