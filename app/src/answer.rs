//! The parts of an answer: what it rests on, the working behind it, what to watch for.
//!
//! A page puts the figure first ([`crate::pictures::LengthFigure`] or [`crate::pictures::Figure`]), then these.

use crate::markup::view;
use calc::job::Units;
use calc::working::Step;
use leptos::prelude::*;

use crate::reactive::{When, draw, memo};
use crate::words::{common, working as words};

/// What an answer rests on, in one sentence.
#[component]
pub fn RestsOn(
    /// The sentence.
    #[prop(into)]
    text: Signal<String>,
) -> impl IntoView {
    view! { <p class="rests-on">{text}</p> }
}

/// The steps behind an answer, closed until asked for: each formula, its figures, what comes out, the source.
#[component]
pub fn Working(
    /// The steps; none: the disclosure is left out.
    #[prop(into)]
    steps: Signal<Vec<Step>>,
    /// The units in force.
    #[prop(into)]
    units: Signal<Units>,
) -> impl IntoView {
    let any = memo(move || !steps.read().is_empty());
    let rows = move || {
        let units = units.get();
        steps.with(|steps| steps.iter().map(|step| row(step, units)).collect_view())
    };
    view! {
        <When when=move || any.get()>
            <details>
                <summary>{common::working()}</summary>
                <ol class="working">{draw(rows)}</ol>
            </details>
        </When>
    }
}

fn row(step: &Step, units: Units) -> impl IntoView + use<> {
    let inputs = step
        .inputs
        .iter()
        .map(|figure| words::figure_line(figure, units))
        .collect::<Vec<_>>()
        .join(" · ");
    view! {
        <li>
            <span class="formula">{words::formula_line(step.formula)}</span>
            <span class="inputs">{inputs}</span>
            <span class="result">"= " {words::figure_line(&step.result, units)}</span>
            <span class="quiet">{words::source_line(&step.source)}</span>
        </li>
    }
}

/// What can happen and what to do, where work can hurt someone.
#[component]
pub fn Cautions(
    /// One sentence each; none: the block is left out.
    #[prop(into)]
    lines: Signal<Vec<String>>,
) -> impl IntoView {
    view! {
        <When when=move || !lines.read().is_empty()>
            <aside class="caution" aria-label=common::cautions()>
                <p class="caution-head">{common::cautions()}</p>
                <ul>
                    {draw(move || lines.get().into_iter().map(|line| view! { <li>{line}</li> }).collect_view())}
                    <li>{common::local_code()}</li>
                </ul>
            </aside>
        </When>
    }
}

/// Figures by name, one under another.
#[component]
pub fn Facts(
    /// Name and figure of each.
    #[prop(into)]
    rows: Signal<Vec<(String, String)>>,
) -> impl IntoView {
    view! {
        <dl class="facts">
            {draw(move || {
                rows.get()
                    .into_iter()
                    .map(|(name, figure)| view! { <div><dt>{name}</dt><dd>{figure}</dd></div> })
                    .collect_view()
            })}
        </dl>
    }
}

/// Sections of a code, each opening what it says in plain words.
#[component]
pub fn CodeSections(
    /// Each section and what it says; none: the block is left out.
    #[prop(into)]
    rows: Signal<Vec<(String, String)>>,
) -> impl IntoView {
    let drawn = move || {
        rows.get()
            .into_iter()
            .map(|(section, says)| view! { <details><summary>{section}</summary><p>{says}</p></details> })
            .collect_view()
    };
    view! {
        <When when=move || !rows.read().is_empty()>
            <div class="sections">
                <h3>{crate::words::wiring::sections()}</h3>
                {draw(drawn)}
            </div>
        </When>
    }
}

/// What is remarkable about an answer, a sentence each.
#[component]
pub fn Notices(
    /// The sentences; none: nothing is shown.
    #[prop(into)]
    lines: Signal<Vec<String>>,
) -> impl IntoView {
    draw(move || {
        lines
            .get()
            .into_iter()
            .map(|line| view! { <p class="notice look">{line}</p> })
            .collect_view()
    })
}
