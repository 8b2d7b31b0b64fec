//! A panel as it hangs: two columns of spaces and the bars of both legs between them. Each space is a button.

use crate::markup::view;
use calc::wiring::panel::Leg;
use leptos::prelude::*;

use crate::reactive::draw;
use crate::words::wiring::panel as words;

/// What is in a space, or in half of one.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PanelCell {
    /// What it is picked by: `7`, `16A`.
    pub place: String,
    /// Its number; of two poles that of the upper one.
    pub number: String,
    /// The number of the lower pole, where it has two.
    pub lower: Option<String>,
    /// Its leg or legs, for a screen reader.
    pub leg: String,
    /// Its rating; empty where it is free.
    pub amps: String,
    /// What it feeds.
    pub label: String,
    /// Something is wrong with it.
    pub troubled: bool,
    /// No breaker is in it.
    pub free: bool,
}

/// A row of the drawing, from the left.
#[derive(Clone, Debug, PartialEq)]
pub struct PanelLine {
    /// What stands on the left: nothing beside the lower half of two poles, or a space, or both halves of one.
    pub left: Vec<PanelCell>,
    /// On the right.
    pub right: Vec<PanelCell>,
    /// The leg that the row hangs on.
    pub leg: Leg,
}

/// The panel.
#[component]
pub fn PanelPicture(
    /// Its rows, from the top.
    #[prop(into)]
    lines: Signal<Vec<PanelLine>>,
    /// The place that is picked; empty for none.
    #[prop(into)]
    picked: Signal<String>,
    /// Called with the place that is tapped.
    on_pick: Callback<String>,
    /// What the picture says, in words.
    #[prop(into)]
    says: Signal<String>,
) -> impl IntoView {
    let drawn = move || {
        lines
            .get()
            .into_iter()
            .map(|line| {
                view! {
                    {side(line.left, "left", picked, on_pick)}
                    {bars(line.leg)}
                    {side(line.right, "right", picked, on_pick)}
                }
            })
            .collect_view()
    };
    view! { <div class="panel" role="group" aria-label=move || says.get()>{draw(drawn)}</div> }
}

fn bars(leg: Leg) -> AnyView {
    let class = match leg {
        Leg::A => "leg a",
        Leg::B => "leg b",
    };
    view! { <span class=class aria-hidden="true"><b>{words::leg(leg)}</b></span> }.into_any()
}

fn side(
    cells: Vec<PanelCell>,
    side: &'static str,
    picked: Signal<String>,
    on_pick: Callback<String>,
) -> AnyView {
    if cells.is_empty() {
        return ().into_any();
    }
    let two = cells.first().is_some_and(|cell| cell.lower.is_some());
    let class = if two {
        format!("spot two {side}")
    } else {
        format!("spot {side}")
    };
    let cells = cells
        .into_iter()
        .map(|cell| button(cell, picked, on_pick))
        .collect_view();
    view! { <div class=class>{cells}</div> }.into_any()
}

fn button(cell: PanelCell, picked: Signal<String>, on_pick: Callback<String>) -> AnyView {
    let class = match (cell.free, cell.troubled) {
        (_, true) => "space troubled",
        (true, _) => "space free",
        _ => "space",
    };
    let this = cell.place.clone();
    let pressed = move || picked.with(|picked| *picked == this).to_string();
    let place = cell.place;
    // Read out as one line: "Space 3-5, leg A and B, 20 A, Range".
    let lower = cell.lower.clone();
    let leg = match &cell.lower {
        Some(lower) => format!("-{lower}, {}, ", words::of_leg(&cell.leg)),
        None => format!(", {}, ", words::of_leg(&cell.leg)),
    };
    let handle = (!cell.amps.is_empty()).then(|| {
        view! {
            <span class="handle">{cell.amps}</span>
            <span class="visually-hidden">" A, "</span>
        }
    });
    view! {
        <button
            type="button"
            class=class
            aria-pressed=pressed
            on:click=move |_| on_pick.run(place.clone())
        >
            <span class="stab" data-lower=lower>
                <span class="visually-hidden">{words::space_word()} " "</span>
                <span class="number">{cell.number}</span>
                <span class="visually-hidden">{leg}</span>
                {handle}
            </span>
            <span class="feeds">{cell.label}</span>
        </button>
    }
    .into_any()
}
