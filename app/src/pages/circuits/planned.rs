//! What is to be added to a circuit: usual things at one tap, and what each changes.

use calc::job::questions::wiring::circuit::CircuitView;
use calc::job::{CircuitEntry, Usual};
use calc::quantity::fixed;
use calc::wiring::circuit::{Check, Verdict};
use leptos::prelude::*;

use super::form::load_row;
use crate::house::House;
use crate::markup::{For, view};
use crate::open_job::OpenJob;
use crate::reactive::{When, draw};
use crate::words::wiring::ampacity::amps;
use crate::words::wiring::{circuits as words, panel as panel_words};

/// What is to be added.
#[component]
pub fn Planned(
    /// The job.
    open: OpenJob,
    /// The wiring's answers.
    house: House,
    /// The circuit.
    id: u32,
    /// How it comes out.
    judged: Memo<Option<CircuitView>>,
) -> impl IntoView {
    let usual = [
        (Usual::Fan, words::add_fan(), words::name_fan()),
        (Usual::Heater, words::add_heater(), words::name_heater()),
        (
            Usual::Receptacle,
            words::add_receptacle(),
            words::name_receptacle(),
        ),
        (Usual::Light, words::add_light(), words::name_light()),
    ];
    let buttons = usual
        .into_iter()
        .map(|(what, word, name)| {
            let plan = move |_| {
                open.change(|job| {
                    let row = job.fresh_id();
                    if let Some(circuit) = job.circuit_mut(id) {
                        circuit.plan(row, what, name);
                    }
                });
            };
            view! { <button type="button" class="button plus" on:click=plan>{word}</button> }
        })
        .collect_view();
    let ids = open.part(move |job| {
        job.circuit(id)
            .map(|c| c.planned.iter().map(|load| load.id).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let table = move || {
        judged.with(|judged| {
            let view = judged.as_ref()?;
            house
                .wiring
                .with(|job| job.circuit(id).map(|c| compare(house, view, c)))
        })
    };
    view! {
        <section class="sheet">
            <h2>{words::plan_heading()}</h2>
            <div class="row no-print">{buttons}</div>
            <p class="quiet no-print">{words::plan_hint()}</p>
            <When when=move || !ids.read().is_empty()>{draw(table)}</When>
            <ul class="rows no-print">
                <For each=move || ids.get() key=|row| *row let:row>
                    {load_row(open, house, id, row, true, ids)}
                </For>
            </ul>
        </section>
    }
}

/// A rule's figures before and after, as a row of the table.
fn row(name: &str, unit: &str, verdict: Option<&Verdict>) -> Option<AnyView> {
    let verdict = verdict?;
    let now = verdict.now?;
    let after = verdict.after.unwrap_or(now);
    let digits = if unit == "%" { 1 } else { 2 };
    let text = |value: f64| fixed(value, digits);
    let limit = text(now.limit);
    Some(line(
        words::in_unit(name, unit),
        text(now.value),
        text(after.value),
        limit,
        !after.kept,
    ))
}

fn line(name: String, now: String, then: String, limit: String, look: bool) -> AnyView {
    let class = if look { "num look" } else { "num" };
    view! {
        <tr>
            <th scope="row">{name}</th>
            <td class="num">{now}</td>
            <td class=class>{then}</td>
            <td class="num quiet">{limit}</td>
        </tr>
    }
    .into_any()
}

/// Before and after: the breaker, the wire, the drop, the neutral.
fn compare(house: House, view: &CircuitView, circuit: &CircuitEntry) -> AnyView {
    let many = view.legs.len() > 1;
    let mut rows = Vec::new();
    for leg in &view.legs {
        let named = |name: &str| match leg.leg.filter(|_| many) {
            Some(of) => format!("{name} ({})", words::on_leg(panel_words::leg(of))),
            None => name.to_owned(),
        };
        let find = |check: Check| leg.answer.verdicts.iter().find(|v| v.check == check);
        let after = leg.answer.after.as_ref().unwrap_or(&leg.answer.now);
        rows.extend(row(
            &named(words::row_breaker()),
            "A",
            find(Check::TotalLoad),
        ));
        let percent = |share: f64| fixed(share, 0);
        rows.push(line(
            words::in_unit(&named(words::row_share()), "%"),
            percent(leg.answer.now.share_percent),
            percent(after.share_percent),
            percent(100.0),
            after.share_percent > 100.0 + 1e-6,
        ));
        rows.extend(row(
            &named(words::row_wire()),
            "A",
            find(Check::ConductorAfter),
        ));
        rows.extend(row(&named(words::row_drop()), "%", find(Check::BranchDrop)));
    }
    house.neutrals.with(|all| {
        let neutral = all.iter().find(|n| n.circuits.contains(&circuit.id));
        if let Some(answer) = neutral.and_then(|n| n.answer.as_ref().ok()) {
            let after = answer.after.as_ref().unwrap_or(&answer.now);
            // Every leg is held against the same neutral.
            let limit = view.legs.iter().find_map(|leg| {
                let all = &leg.answer.verdicts;
                let found = all.iter().find(|v| v.check == Check::NeutralLoad)?;
                found.now.map(|compared| compared.limit)
            });
            let limit_text = limit.map_or_else(String::new, amps);
            let text = amps;
            rows.push(line(
                words::in_unit(words::row_neutral(), "A"),
                text(answer.now.current_a),
                text(after.current_a),
                limit_text.clone(),
                limit.is_some_and(|limit| after.current_a > limit + 1e-6),
            ));
            if answer.now.shared {
                rows.push(line(
                    words::in_unit(words::row_neutral_most(), "A"),
                    text(answer.now.most_a),
                    text(after.most_a),
                    limit_text,
                    limit.is_some_and(|limit| after.most_a > limit + 1e-6),
                ));
            }
        }
    });
    view! {
        <table class="compare">
            <caption>{words::compare_caption()}</caption>
            <thead>
                <tr>
                    <td></td>
                    <th scope="col" class="num">{words::head_now()}</th>
                    <th scope="col" class="num">{words::head_then()}</th>
                    <th scope="col" class="num">{words::head_most()}</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}
