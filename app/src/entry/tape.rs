//! The tape strip: one drawn inch. A thumb on a tick sets the fraction; by keyboard and to a screen reader it is
//! a slider with spoken values.

use crate::markup::view;
use crate::reactive::draw;
use leptos::prelude::*;

use crate::words::common;

/// Height of the strip, in CSS pixels; the style sheet has the same.
const HEIGHT: u32 = 84;

/// How far down a tick reaches, by how fine it is.
fn tick_depth(sixteenth: u32) -> u32 {
    match sixteenth {
        0 | 16 => 52,
        8 => 44,
        4 | 12 => 34,
        n if n % 2 == 0 => 25,
        _ => 16,
    }
}

/// A number of sixteenths as the trade says it: 10 is `5/8`.
pub fn spoken(sixteenth: u32) -> String {
    if sixteenth == 0 {
        return "0".to_owned();
    }
    let (mut over, mut under) = (sixteenth, 16);
    while over % 2 == 0 {
        over /= 2;
        under /= 2;
    }
    format!("{over}/{under}")
}

/// One inch of tape.
#[component]
pub fn TapeStrip(
    /// Id of the slider.
    id: String,
    /// What the slider sets, for a screen reader.
    #[prop(into)]
    label: Signal<String>,
    /// Where the mark stands, in sixteenths from 0 to 15; none: the text is not a length yet.
    #[prop(into)]
    sixteenth: Signal<Option<u32>>,
    /// Called with the sixteenths set.
    on_set: Callback<u32>,
    /// Sixteenths between the eighths.
    fine: RwSignal<bool>,
) -> impl IntoView {
    let step = move || if fine.get() { "1" } else { "2" };
    let most = move || if fine.get() { "15" } else { "14" };
    let x = |s: u32| format!("{}%", f64::from(s) * 6.25);
    let ticks = move || {
        (0..=16)
            .step_by(if fine.get() { 1 } else { 2 })
            .map(|s| {
                let label = (s > 0 && s < 16 && s % 2 == 0)
                    .then(|| view! { <text x=x(s) y=tick_depth(s) + 19>{spoken(s)}</text> });
                view! {
                    <line x1=x(s) y1=0 x2=x(s) y2=tick_depth(s) stroke-width=if s % 16 == 0 { 2.5 } else { 1.5 } />
                    {label}
                }
            })
            .collect_view()
    };
    let mark = move || {
        sixteenth.get().map(|s| {
            view! {
                <svg class="set" x=x(s) y=0 overflow="visible">
                    <line x1=0 y1=0 x2=0 y2=HEIGHT stroke-width=3 />
                    <path d=format!("M-9 {HEIGHT} L0 {} L9 {HEIGHT} Z", HEIGHT - 16) />
                </svg>
            }
        })
    };
    view! {
        <div class="tape" class:fine=move || fine.get()>
            <svg aria-hidden="true">{draw(ticks)} {draw(mark)}</svg>
            <input
                id=id
                type="range"
                min="0"
                max=most
                step=step
                aria-label=move || label.get()
                aria-valuetext=move || match sixteenth.get() {
                    Some(s) => format!("{} {}", spoken(s), common::unit_in()),
                    None => common::not_set().to_owned(),
                }
                prop:value=move || sixteenth.get().unwrap_or(0).to_string()
                on:input:target=move |ev| {
                    if let Ok(s) = ev.target().value().parse::<u32>() {
                        on_set.run(s);
                    }
                }
            />
        </div>
    }
}
