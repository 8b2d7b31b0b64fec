//! The supply as measured at the panel, judged.

use calc::job::questions::wiring::AskProblem;
use calc::job::{SupplyReadingsEntry, Typed, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::supply::{Standing, SupplyFinding, SupplyJudgement, Urgency};
use calc::wiring::tables::VoltagePlace;
use leptos::prelude::*;

use crate::answer::Working;
use crate::entry::ChoiceOption;
use crate::house::House;
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::pages::job_fields::{At, choice, code_at, number};
use crate::pages::sum_fields::{Shown, label};
use crate::reactive::{When, derived, draw, memo};
use crate::words::wiring::supply as words;

type Part = fn(&mut SupplyReadingsEntry) -> &mut Typed;

/// A reading: the end of its field's id, its words, its place, and whether it may be blank.
type ReadingField = (&'static str, fn() -> &'static str, Part, bool);

/// The five readings of a moment.
const READINGS: [ReadingField; 5] = [
    ("across", words::across, |r| &mut r.across, false),
    ("a-neutral", words::a_neutral, |r| &mut r.a_neutral, false),
    ("b-neutral", words::b_neutral, |r| &mut r.b_neutral, false),
    ("a-ground", words::a_ground, |r| &mut r.a_ground, true),
    ("b-ground", words::b_ground, |r| &mut r.b_ground, true),
];

fn readings(open: OpenJob, loaded: bool) -> AnyView {
    let moment = if loaded { "loaded" } else { "idle" };
    let fields = READINGS
        .iter()
        .map(|&(id, words_of, part, optional)| {
            let at = At::new(
                move |job| {
                    let supply = &job.panel.supply;
                    let mut readings = if loaded { &supply.loaded } else { &supply.idle }.clone();
                    part(&mut readings).clone()
                },
                move |job, typed| {
                    let supply = &mut job.panel.supply;
                    let readings = if loaded {
                        &mut supply.loaded
                    } else {
                        &mut supply.idle
                    };
                    *part(readings) = typed;
                },
            );
            let words = words_of();
            let words = if loaded {
                words::loaded(words)
            } else {
                words::idle(words)
            };
            let shown = Shown {
                optional,
                ..Shown::default()
            };
            number(
                open,
                format!("{moment}-{id}"),
                Signal::stored(words),
                fields::MEASURED_VOLTS,
                shown,
                at,
            )
        })
        .collect_view();
    view! { <div class="pair level">{fields}</div> }.into_any()
}

/// The supply.
#[component]
pub fn SupplySheet(
    /// The job.
    open: OpenJob,
    /// The wiring's answers.
    house: House,
) -> impl IntoView {
    let judged = memo(move || {
        house.supply.with(|supply| match supply {
            Some(Ok(judged)) => Some(judged.clone()),
            _ => None,
        })
    });
    let refused = move || {
        house
            .supply
            .with(|supply| matches!(supply, Some(Err(AskProblem::Refused(_)))))
    };
    let places = [VoltagePlace::Service, VoltagePlace::Utilization]
        .map(|place| ChoiceOption::new(place.word(), words::place(place)))
        .to_vec();
    let steps =
        derived(move || judged.with(|j| j.as_ref().map(|j| j.steps.clone()).unwrap_or_default()));
    let units = open.units();
    view! {
        <section class="sheet no-print">
            <h2>{words::heading()}</h2>
            <div role="status">
                {draw(move || judged.with(|judged| judged.as_ref().map(answer)))}
                <When when=refused>
                    <p class="notice look">{words::refused()}</p>
                </When>
            </div>
            <Working steps units />
            <p class="quiet">{words::hint()}</p>
            {choice(
                open,
                "supply-place",
                label(words::place_label()),
                "",
                places,
                code_at!(Coded::word; panel.supply.place),
            )}
            <h3>{words::idle_heading()}</h3>
            {readings(open, false)}
            <details>
                <summary>{words::loaded_heading()}</summary>
                <p class="quiet">{words::loaded_hint()}</p>
                {readings(open, true)}
            </details>
        </section>
    }
}

/// What the readings say: the most urgent first, then each voltage against the ranges.
fn answer(judged: &SupplyJudgement) -> AnyView {
    let findings = judged
        .findings
        .iter()
        .map(|finding| {
            let class = if finding.urgency() == Urgency::CallNow {
                "notice look now"
            } else {
                "notice look"
            };
            view! { <p class=class>{words::finding(finding)}</p> }
        })
        .collect_view();
    let in_order = judged
        .findings
        .is_empty()
        .then(|| view! { <p>{words::all_in_order()}</p> });
    // Leg to leg of another system is not held against the range of this one.
    let another = judged.findings.iter().any(|f| {
        matches!(
            f,
            SupplyFinding::TwoLinesOfWye { .. } | SupplyFinding::OneLegOnBoth { .. }
        )
    });
    let rows = judged
        .judged
        .iter()
        .map(|one| {
            let class = if one.standing == Standing::RangeA {
                ""
            } else {
                "look"
            };
            let across = one.reading == calc::wiring::supply::Reading::Across;
            let stands = if another && across {
                "—"
            } else {
                words::standing(one.standing)
            };
            view! {
                <tr>
                    <th scope="row">{words::reading(one)}</th>
                    <td class="num">{format!("{} V", fixed(one.volts, 1))}</td>
                    <td class=class>{stands}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <div class="answer">
            {findings}
            {in_order}
            <table>
                <caption>{words::table_caption()}</caption>
                <thead>
                    <tr>
                        <th scope="col">{words::head_what()}</th>
                        <th scope="col" class="num">"V"</th>
                        <th scope="col">{words::head_stands()}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}
