//! What explains the readings, what to measure next, how to put it right.

use calc::quantity::fixed;
use calc::wiring::open_box::diagnosis::{Answer, Diagnosis, DiagnosisRefusal, LoadSlip, diagnose};
use calc::wiring::open_box::next_reading::{NextReading, Outlook, next_reading};
use calc::wiring::open_box::permitted::Risk;
use calc::wiring::open_box::reading::Probe;
use leptos::prelude::*;

use super::measure::entry_of;
use super::remedy::Remedies;
use super::{Names, Opened, good};
use crate::entry::{Choice, ChoiceOption};
use crate::markup::view;
use crate::reactive::{When, derived, draw, memo};
use crate::words::open_box::{explain as words, measure};

/// So many answers are shown; the rest counts as everything else.
const MOST_SHOWN: usize = 6;

/// An answer with less than this share is no answer to be shown.
const LEAST_SHOWN: f64 = 0.01;

/// So many explanations of one answer are named.
const MOST_NAMED: usize = 6;

/// The diagnosis, the next reading, and the remedy.
#[component]
pub fn Explained(opened: Opened) -> impl IntoView {
    // Without a reading the advice is asked for, since a description in the making changes at every tap.
    let first = RwSignal::new(false);
    let chosen = RwSignal::new(0_usize);
    // Which of the boxes, in their order, the advice is for.
    let measured_in = RwSignal::new(0_usize);
    let boxes = derived(move || {
        let boxes = opened.description().map(|found| found.boxes);
        let boxes = boxes.unwrap_or_default();
        opened.names.with(|names| {
            (0_usize..)
                .zip(boxes)
                .map(|(at, id)| ChoiceOption::new(at.to_string(), names.box_name(id)))
                .collect::<Vec<ChoiceOption>>()
        })
    });
    let several = derived(move || boxes.with(|boxes| boxes.len() > 1));
    let in_force = derived(move || measured_in.get().to_string());
    let pick = Callback::new(move |at: String| measured_in.set(at.parse().unwrap_or(0)));
    let next = memo(move || {
        let description = opened.description()?;
        let read = good(&opened.taken.get());
        let boxes = &description.boxes;
        let in_box = *boxes.get(measured_in.get()).or(boxes.first())?;
        let advise = |found: &Diagnosis| next_reading(&description, &read, found, in_box);
        opened.diagnosis.with(|found| match found {
            Some(Ok(found)) => Some(Ok(advise(found))),
            Some(Err(_)) => None,
            None if first.get() => Some(diagnose(&description, &[]).map(|found| advise(&found))),
            None => None,
        })
    });
    let drawn = move || {
        opened.diagnosis.with(|found| match found {
            None => view! { <p class="quiet">{words::say()}</p> }.into_any(),
            Some(Err(refusal)) => {
                view! { <p class="notice look">{refusal_line(refusal)}</p> }.into_any()
            }
            Some(Ok(found)) => opened
                .names
                .with(|names| diagnosis_view(found, names, chosen)),
        })
    };
    let advice = move || {
        let found = next.get();
        match found {
            Some(Ok(Some(next))) => next_view(opened, &next),
            Some(Ok(None)) => view! { <p>{words::next_none()}</p> }.into_any(),
            _ => view! {
                <button type="button" class="button main" on:click=move |_| first.set(true)>
                    {words::next_first()}
                </button>
            }
            .into_any(),
        }
    };
    view! {
        <section class="sheet explained">
            <h2>{words::heading()}</h2>
            <div role="status">{draw(drawn)}</div>
        </section>
        <section class="sheet next-reading">
            <h2>{words::next_heading()}</h2>
            <When when=several>
                <Choice
                    id=format!("opened-{}-next-box", opened.id)
                    label=words::next_box()
                    options=boxes
                    value=in_force
                    on_pick=pick
                />
            </When>
            {draw(advice)}
        </section>
        <Remedies opened chosen />
    }
}

fn refusal_line(refusal: &DiagnosisRefusal) -> String {
    match refusal {
        DiagnosisRefusal::TooMany { readings } => words::too_many(*readings),
        _ => measure::cant().to_owned(),
    }
}

/// A share of the probability, in whole percent; under one percent says so.
fn percent(share: f64) -> String {
    if share < 0.01 {
        "< 1".to_owned()
    } else {
        fixed((share * 100.0).min(99.0), 0)
    }
}

fn readings_in_row(places: &[usize]) -> String {
    let all: Vec<String> = places
        .iter()
        .map(|place| words::reading(place + 1))
        .collect();
    all.join(", ")
}

fn explains_any(found: &Diagnosis, answer: &Answer) -> bool {
    found.readings == 0 || !answer.explained.is_empty()
}

fn diagnosis_view(found: &Diagnosis, names: &Names, chosen: RwSignal<usize>) -> AnyView {
    let mut notices: Vec<String> = found
        .contradicting
        .iter()
        .map(|(one, other)| words::contradict(one + 1, other + 1))
        .collect();
    notices.extend(
        found
            .never_explained
            .iter()
            .map(|place| words::never(place + 1)),
    );
    let notices = notices
        .into_iter()
        .map(|line| view! { <p class="notice look">{line}</p> })
        .collect_view();
    let shown = found
        .answers
        .iter()
        .take(MOST_SHOWN)
        .filter(|answer| answer.share >= LEAST_SHOWN)
        .count();
    let answers = found
        .answers
        .iter()
        .take(shown)
        .enumerate()
        // What explains none of the readings is no explanation.
        .filter(|(_, answer)| explains_any(found, answer))
        .map(|(place, answer)| answer_view(place, answer, found.readings, names, chosen))
        .collect_view();
    let rest: f64 = found.others_share
        + found
            .answers
            .iter()
            .enumerate()
            .filter(|(place, answer)| *place >= shown || !explains_any(found, answer))
            .map(|(_, answer)| answer)
            .map(|answer| answer.share)
            .sum::<f64>();
    view! {
        {notices}
        <ol class="explanations">{answers}</ol>
        {(rest > 0.001).then(|| view! { <p class="quiet">{words::others(percent(rest))}</p> })}
        <p class="rests-on">{words::not_certain()}</p>
    }
    .into_any()
}

fn answer_view(
    place: usize,
    answer: &Answer,
    readings: usize,
    names: &Names,
    chosen: RwSignal<usize>,
) -> AnyView {
    let said = says(answer, names);
    let members = said
        .into_iter()
        .take(MOST_NAMED)
        .map(|line| view! { <li>{line}</li> })
        .collect_view();
    let count = answer.members.len();
    let looks: Vec<String> = answer.look.iter().map(|look| names.look(*look)).collect();
    let is_chosen = move || (chosen.get() == place).to_string();
    view! {
        <li class="explanation">
            <p class="share">
                <b>{words::share(percent(answer.share))}</b>
                " "
                <span>{words::explains(answer.explained.len(), readings)}</span>
            </p>
            {answer.nothing_seen.then(|| view! { <p>{words::nothing_seen()}</p> })}
            <ul>{members}</ul>
            {(count > 1).then(|| view! { <p class="quiet">{words::same_from_here(count)}</p> })}
            {(!looks.is_empty()).then(|| view! { <p>{words::look()} ": " {looks.join(", ")}</p> })}
            {(!answer.unexplained.is_empty())
                .then(|| view! { <p class="quiet">{words::unexplained(&readings_in_row(&answer.unexplained))}</p> })}
            <button type="button" class="button" aria-pressed=is_chosen on:click=move |_| chosen.set(place)>
                {words::right_this()}
            </button>
        </li>
    }
    .into_any()
}

/// Each explanation of an answer, once.
pub fn says(answer: &Answer, names: &Names) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for member in &answer.members {
        let faults: Vec<String> = member
            .faults
            .iter()
            .map(|fault| names.fault(fault))
            .collect();
        let line = faults.join(" + ");
        let line = match member.slip {
            None => line,
            Some(LoadSlip::NotThere(load)) => words::without_load(&line, &names.load(load)),
            Some(LoadSlip::NotEntered { load, watts, .. }) => {
                words::with_load(&line, &names.load(load), &fixed(watts, 0))
            }
        };
        if !all.contains(&line) {
            all.push(line);
        }
    }
    all
}

/// The unit that a probe shows.
pub fn unit(probe: &Probe) -> &'static str {
    match probe {
        Probe::Volts { .. } => "V",
        Probe::Amps { .. } => "A",
        Probe::Ohms { .. } => "Ω",
        Probe::Tester { .. } => "",
    }
}

/// A figure as a meter would show it.
fn figure(value: f64) -> String {
    let digits = if value < 1.0 {
        2
    } else if value < 20.0 {
        1
    } else {
        0
    };
    fixed(value, digits)
}

/// What a reading would show.
pub fn outlook(outlook: &Outlook, probe: &Probe) -> String {
    match outlook {
        Outlook::Between { low, high } => {
            let (low, high) = (figure(*low), figure(*high));
            if low == high {
                measure::about(&low, unit(probe))
            } else {
                measure::between(&low, &high, unit(probe))
            }
        }
        Outlook::OverLimit => measure::open().to_owned(),
        Outlook::Glows(true) => measure::does_glow().to_owned(),
        Outlook::Glows(false) => measure::no_glow().to_owned(),
    }
}

fn next_view(opened: Opened, next: &NextReading) -> AnyView {
    let (situation, probe) = (next.situation.clone(), next.probe);
    let take = move |_| {
        let situation = situation.clone();
        opened.change_with_id(move |entry, id| {
            entry.readings.push(entry_of(id, &situation, &probe));
        });
    };
    let qualified = next.risk == Risk::VoltsApart;
    let rows = opened.names.with(|names| {
        let answers = opened.diagnosis.with(|found| match found {
            Some(Ok(found)) => found.answers.iter().map(|a| says(a, names)).collect(),
            _ => Vec::new(),
        });
        next.meanings
            .iter()
            .map(|meaning| {
                let speaks: Vec<String> = meaning
                    .answers
                    .iter()
                    .take(3)
                    .filter_map(|place| answers.get(*place).and_then(|says| says.first().cloned()))
                    .collect();
                let speaks = speaks.join(&format!("; {} ", words::or()));
                view! {
                    <tr>
                        <th scope="row">{outlook(&meaning.outlook, &next.probe)}</th>
                        <td>{speaks}</td>
                    </tr>
                }
            })
            .collect_view()
    });
    let (what, with) = opened.names.with(|names| {
        (
            names.probe(&next.probe),
            words::next_in(&names.situation(&next.situation)),
        )
    });
    let class = if qualified { "notice look" } else { "rests-on" };
    let known = opened.diagnosis.with(Option::is_some);
    view! {
        <p class="next-what"><strong>{what}</strong></p>
        <p>{with}</p>
        <p class=class>{words::risk(next.risk)}</p>
        {known.then(|| view! {
            <div class="table">
                <table class="compare">
                    <thead>
                        <tr>
                            <th scope="col">{words::next_if()}</th>
                            <th scope="col">{words::next_means()}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
        })}
        <button type="button" class="button main" on:click=take>{words::take_it()}</button>
    }
    .into_any()
}
