//! Putting right: the grid as found beside the grid as it belongs, the readings that prove it, the note for the sheet.

use calc::job::Job;
use calc::job::questions::opened::proved;
use calc::wiring::open_box::put_right::{Moved, Proof, Remedy, Work, put_right};
use leptos::prelude::*;

use super::answers::colours;
use super::explain::{outlook, says};
use super::measure::entry_of;
use super::{Names, Opened, good};
use crate::entry::TextEntry;
use crate::markup::view;
use crate::reactive::{draw, memo};
use crate::words::open_box::{answers as answer_words, explain as words};
use crate::words::wiring as wiring_words;

/// The remedy of the chosen answer.
#[component]
pub fn Remedies(
    opened: Opened,
    /// Which answer.
    chosen: RwSignal<usize>,
) -> impl IntoView {
    let edition = opened.open.part(|job| job.code_edition);
    let units = opened.open.units();
    let found = memo(move || {
        let description = opened.description()?;
        let read = good(&opened.taken.get());
        let member = opened.diagnosis.with(|found| {
            let found = found.as_ref()?.as_ref().ok()?;
            let answer = found.answers.get(chosen.get()).or(found.answers.first())?;
            answer.members.first().cloned()
        })?;
        if member.is_nothing() {
            return None;
        }
        put_right(&description, &member, &read, edition.get()).ok()
    });
    let drawn = move || {
        found.with(|found| {
            let remedy = found.as_ref()?;
            let title = opened.names.with(|names| {
                opened.diagnosis.with(|found| {
                    let found = found.as_ref()?.as_ref().ok()?;
                    let answer = found.answers.get(chosen.get()).or(found.answers.first())?;
                    says(answer, names).into_iter().next()
                })
            });
            let title = title
                .map(|title| words::right_for(&title))
                .unwrap_or_default();
            Some(
                opened
                    .names
                    .with(|names| remedy_view(opened, remedy, &title, names, units.get())),
            )
        })
    };
    draw(drawn)
}

fn remedy_view(
    opened: Opened,
    remedy: &Remedy,
    title: &str,
    names: &Names,
    units: calc::job::Units,
) -> AnyView {
    let moved = if remedy.moved.is_empty() {
        view! { <p>{words::right_nothing_moves()}</p> }.into_any()
    } else {
        let rows = remedy
            .moved
            .iter()
            .map(|moved| moved_row(moved, names))
            .collect_view();
        view! {
            <h3>{words::right_grid()}</h3>
            <div class="table">
                <table class="compare">
                    <thead>
                        <tr>
                            <th scope="col">{words::right_col_wire()}</th>
                            <th scope="col">{words::right_col_found()}</th>
                            <th scope="col">{words::right_col_right()}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
        }
        .into_any()
    };
    let work = remedy
        .work
        .iter()
        .map(|work| view! { <li>{work_line(work, names)}</li> })
        .collect_view();
    let pulls = remedy
        .pulls
        .iter()
        .map(|pull| {
            let line = words::pull(
                &names.letter(pull.replaces),
                &colours(&pull.conductors),
                &wiring_words::size(pull.size),
                &wiring_words::length(pull.length_ft, units),
            );
            view! { <li>{line}</li> }
        })
        .collect_view();
    let proofs = remedy
        .proofs
        .iter()
        .map(|proof| proof_row(opened, proof, names))
        .collect_view();
    let sections = (!remedy.sections.is_empty()).then(|| {
        view! { <p class="quiet">{answer_words::sections(&remedy.sections.join(", "))}</p> }
    });
    view! {
        <section class="sheet remedy">
            <h2>{words::right_heading()}</h2>
            <p>{title.to_owned()}</p>
            <p class="notice look">{answer_words::qualified()}</p>
            {moved}
            <ul>{work}{pulls}</ul>
            {sections}
            <h3>{words::prove_heading()}</h3>
            <p class="quiet">{words::prove_hint()}</p>
            <ul class="rows">{proofs}</ul>
        </section>
    }
    .into_any()
}

fn moved_row(moved: &Moved, names: &Names) -> AnyView {
    let found = match moved.found {
        Some(point) => names.point(point),
        None => words::right_off().to_owned(),
    };
    view! {
        <tr>
            <th scope="row">{names.contact(moved.contact)}</th>
            <td class="look">{found}</td>
            <td>{names.at(moved.right)}</td>
        </tr>
    }
    .into_any()
}

fn work_line(work: &Work, names: &Names) -> String {
    match *work {
        Work::TakeApart { one, other } => words::work_apart(&names.place(one), &names.place(other)),
        Work::Land { end } => words::work_land(&names.end(end)),
        Work::MakeAnew { place } => words::work_anew(&names.place(place)),
        Work::Breaker { place, on } => match on {
            Some(on) => words::work_breaker(&names.place(place), &names.breaker(on)),
            None => words::work_breaker_open(&names.place(place)),
        },
        Work::SupplyNeutral => words::work_supply().to_owned(),
    }
}

fn proof_row(opened: Opened, proof: &Proof, names: &Names) -> AnyView {
    let what = names.probe(&proof.probe);
    let with = words::next_in(&names.situation(&proof.situation));
    let must = words::prove_must(&what, &outlook(&proof.expect, &proof.probe));
    // The last one that was taken to prove this.
    let taken = opened.taken.with(|taken| {
        let all = taken.iter().filter(|of| of.proves);
        all.filter_map(|of| of.reading.as_ref().ok())
            .rfind(|r| r.probe == proof.probe && r.situation == proof.situation)
            .map(|reading| proved(reading, &proof.expect))
    });
    let verdict = taken.map(|holds| {
        let (class, sign) = if holds {
            ("verdict", words::proved())
        } else {
            ("verdict over", words::not_proved())
        };
        view! { <span class=class><span class="sign">{sign}</span></span> }
    });
    let (situation, probe) = (proof.situation.clone(), proof.probe);
    let take = move |_| {
        let situation = situation.clone();
        opened.change_with_id(move |entry, id| {
            let mut reading = entry_of(id, &situation, &probe);
            reading.proves = true;
            entry.readings.push(reading);
        });
    };
    view! {
        <li>
            <span>{must}</span>
            <span class="quiet">{with}</span>
            {verdict}
            <button type="button" class="button plain no-print" on:click=take>
                {words::take_it()}
                <span class="visually-hidden">": " {what}</span>
            </button>
        </li>
    }
    .into_any()
}

/// The note for the job sheet.
#[component]
pub fn Note(opened: Opened) -> impl IntoView {
    let id = opened.id;
    let value = opened.open.part(move |job: &Job| {
        job.opened_entry(id)
            .map(|entry| entry.note.clone())
            .unwrap_or_default()
    });
    let on_text = Callback::new(move |text: String| opened.change(|entry| entry.note = text));
    view! {
        <TextEntry
            id="opened-note".to_owned()
            label=Signal::stored(words::note_label().to_owned())
            hint=Signal::stored(words::note_hint().to_owned())
            value
            on_text
        />
    }
}
