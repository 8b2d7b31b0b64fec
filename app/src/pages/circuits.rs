//! The circuits of a job: the rules that fail first, in plain words; each circuit on a page of its own.

use calc::job::questions::EntryProblem;
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::circuit::{CircuitRefused, CircuitView, LegJudged};
use calc::job::questions::wiring::neutral::{NeutralOf, NeutralRefused};
use calc::job::{CircuitEntry, CodeEdition, Job, Units};
use calc::quantity::fixed;
use calc::wiring::circuit::{Outcome, Verdict};
use leptos::prelude::*;

use super::panel::amps_text;
use super::sum_fields::label;
use crate::answer::{Cautions, RestsOn};
use crate::entry::{ChoiceOption, Pick};
use crate::house::{House, Judged, PutBack, fails, number_of};
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::pictures::Figure;
use crate::pictures::strip::{StripContent, strip};
use crate::reactive::{When, derived, draw, memo};
use crate::router::Place;
use crate::shell::{PageHeading, PrintButton};
use crate::words::wiring::ampacity::{self, amps};
use crate::words::wiring::{self as wiring_words, circuits as words, panel as panel_words, rules};

mod circuit;

mod form;

mod planned;

pub use circuit::CircuitPage;

/// The circuits.
#[component]
pub fn CircuitsPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let house = House::here();
    let units = open.units();
    let failing = memo(move || house.failing());
    let value = derived(move || failing.get().rules.to_string());
    let unit = derived(move || match failing.get() {
        failing if failing.rules > 0 => words::failing_unit(failing.circuits),
        _ => String::new(),
    });
    let edition = derived(move || wiring_words::by_edition(wiring_words::edition(house.edition())));
    let rows = move || {
        house.circuits.with(|all| {
            // What fails stands first.
            let bad = |row: &&Judged| matches!(&row.1, Ok(view) if view.fails());
            let fail = all.iter().filter(bad);
            let rest = all.iter().filter(|row| !bad(row));
            fail.chain(rest)
                .map(|row| circuit_row(open, house, row, units.get()))
                .collect_view()
        })
    };
    view! {
        <PageHeading text=label(words::title()) />
        <When
            when=move || { failing.get().all > 0 }
            fallback=|| view! { <p>{words::none_yet()}</p> }
        >
            <div class="answer" role="status">
                <p class="figure-name">{words::failing_name()}</p>
                <Figure value unit />
                <RestsOn text=edition />
            </div>
        </When>
        <ul class="list circuits">{draw(rows)}</ul>
        <PutBack open house />
        <AddCircuit open house />
        <Neutrals house />
        <Cautions lines=Signal::stored(cautions()) />
        <a class="button wide" href=paths::stage(&open.id(), 0, Stage::Boxes)>{words::to_boxes()}</a>
        <PrintButton />
    }
}

/// What to do before a wire is touched, and what the rules don't see.
pub fn cautions() -> Vec<String> {
    let mut lines = wiring_words::cautions();
    lines.push(words::caution_adding().to_owned());
    lines
}

/// The breaker of a circuit: its number and its amperes.
fn breaker_line(job: &Job, circuit: u32) -> String {
    let breaker = job.circuit(circuit).and_then(|c| c.breaker);
    match breaker.and_then(|id| job.panel.breaker(id)) {
        Some(entry) => words::on_breaker(&number_of(job, entry.id), amps_text(entry)),
        None => words::no_breaker().to_owned(),
    }
}

/// What a leg carries of its breaker, with what is planned.
fn share_line(view: &CircuitView, judged: &LegJudged) -> String {
    let sums = judged.answer.after.as_ref().unwrap_or(&judged.answer.now);
    let (total, breaker) = (amps(sums.total_a), amps(view.breaker_a));
    let share = fixed(sums.share_percent, 0);
    match judged.leg {
        Some(leg) if view.legs.len() > 1 => {
            words::leg_of_breaker(panel_words::leg(leg), total, breaker, share)
        }
        _ => words::of_breaker(total, breaker, share),
    }
}

/// The same as a strip: what is on the breaker, what is planned, and its rating.
fn share_strip(view: &CircuitView, judged: &LegJudged) -> AnyView {
    let now = judged.answer.now.total_a;
    strip(StripContent {
        now,
        then: judged
            .answer
            .after
            .as_ref()
            .map_or(now, |after| after.total_a),
        limit: view.breaker_a,
    })
}

fn circuit_row(open: OpenJob, house: House, row: &Judged, units: Units) -> AnyView {
    let (id, judged) = row;
    let breaker = house.wiring.with(|job| breaker_line(job, *id));
    let lines = match judged {
        Ok(view) => view.legs.iter().map(|leg| share_line(view, leg)).collect(),
        Err(problem) => vec![problem_line(problem)],
    };
    let strips = match judged {
        Ok(view) => view
            .legs
            .iter()
            .map(|leg| share_strip(view, leg))
            .collect_view(),
        Err(_) => Vec::new(),
    };
    let lines = lines
        .into_iter()
        .map(|line| view! { <span>{line}</span> })
        .collect_view();
    let failing = match judged {
        Ok(view) => fails(view)
            .into_iter()
            .map(|verdict| verdict_row(house, verdict, None, units))
            .collect_view()
            .into_any(),
        Err(_) => ().into_any(),
    };
    view! {
        <li>
            <a class="go" href=paths::row(&open.id(), Stage::Circuits, *id)>
                <strong>{house.circuit_name(*id)}</strong>
                <span class="quiet">{breaker}</span>
                {lines}
                {strips}
            </a>
            {failing}
        </li>
    }
    .into_any()
}

/// Why a circuit isn't judged, in one line.
fn problem_line(problem: &AskProblem<CircuitRefused>) -> String {
    match problem {
        AskProblem::Entries(problems) => {
            format!("{} {}", words::missing(), missing(problems).join(", "))
        }
        AskProblem::Refused(refused) => refused_line(refused),
    }
}

fn refused_line(refused: &CircuitRefused) -> String {
    match refused {
        CircuitRefused::Bundle(refusal) => ampacity::bundle_refusal(refusal),
        CircuitRefused::NeedsTwoPoles { .. } => words::needs_two_poles().to_owned(),
        CircuitRefused::Circuit(_) => words::cant_be().to_owned(),
    }
}

/// What is missing, each thing once.
fn missing(problems: &[EntryProblem]) -> Vec<&'static str> {
    let mut said = Vec::new();
    for problem in problems {
        let words = words::missing_entry(problem.name);
        if !said.contains(&words) {
            said.push(words);
        }
    }
    said
}

/// A rule as it came out: what is checked and its figures; a tap opens what its section says.
fn verdict_row(
    house: House,
    verdict: &Verdict,
    leg: Option<&'static str>,
    units: Units,
) -> AnyView {
    let edition = house.edition();
    let named = |id: u32| house.box_name(id);
    let mut says = words::check(&verdict.check, &named);
    if let Some(leg) = leg {
        says = format!("{says} ({})", words::on_leg(leg));
    }
    let figures = match verdict.outcome {
        Outcome::NotJudged => Some(words::why_not(verdict.why_not.as_ref(), units)),
        _ => words::figures(verdict.now.as_ref(), verdict.after.as_ref(), units),
    };
    let class = match verdict.outcome {
        Outcome::Fails => "rule fails",
        Outcome::NotJudged | Outcome::Advised => "rule open",
        Outcome::Passes => "rule",
    };
    view! {
        <details class=class>
            <summary>
                <span class="sign">{words::outcome(verdict.outcome)}</span>
                <span class="quiet section">{verdict.section}</span>
                <span class="says">
                    <span>{says}</span>
                    {figures.map(|figures| view! { <span class="figures">{figures}</span> })}
                </span>
            </summary>
            {explained(verdict.section, edition)}
        </details>
    }
    .into_any()
}

/// What a section says, with its name in full.
fn explained(section: &'static str, edition: CodeEdition) -> AnyView {
    let rows = rules::sections(&[], &rules::named([section].into_iter(), edition), edition);
    rows.into_iter()
        .map(|(citation, says)| view! { <p>{says} " " <span class="quiet">{citation}</span></p> })
        .collect_view()
        .into_any()
}

/// A new circuit, on a breaker that has none yet.
#[component]
fn AddCircuit(open: OpenJob, house: House) -> impl IntoView {
    let place = Place::here();
    let on = RwSignal::new(String::new());
    let options = derived(move || {
        let mut options = vec![ChoiceOption::new("", words::add_on_none())];
        house.wiring.with(|job| options.extend(breakers(job, true)));
        options
    });
    let add = move |_| {
        let breaker = on.get_untracked().parse::<u32>().ok();
        let mut id = 0;
        open.change(|job| {
            id = job.fresh_id();
            let entry = breaker.and_then(|breaker| job.panel.breaker(breaker));
            let mut circuit =
                CircuitEntry::new(id, entry.map_or("", |b| b.label.as_str()), job.units);
            circuit.breaker = entry.map(|b| b.id);
            job.circuits.push(circuit);
        });
        place.go(&paths::row(&open.id(), Stage::Circuits, id));
    };
    view! {
        <div class="stack-tight no-print">
            <Pick
                id="new-circuit-on".to_owned()
                label=label(words::add_on_label())
                options
                value=on
                on_pick=Callback::new(move |code| on.set(code))
            />
            <button type="button" class="button main wide" on:click=add>{words::add_circuit()}</button>
        </div>
    }
}

/// The breakers of the panel to choose from, by their spaces; those without a circuit alone where `bare`.
fn breakers(job: &Job, bare: bool) -> Vec<ChoiceOption> {
    let mut found: Vec<(u32, ChoiceOption)> = Vec::new();
    for entry in &job.panel.breakers {
        if bare && job.circuits.iter().any(|c| c.breaker == Some(entry.id)) {
            continue;
        }
        let words = words::breaker_option(
            &number_of(job, entry.id),
            &amps_text(entry),
            if entry.label.trim().is_empty() {
                panel_words::no_label()
            } else {
                &entry.label
            },
        );
        let at = found
            .iter()
            .position(|(space, _)| *space > entry.space)
            .unwrap_or(found.len());
        found.insert(
            at,
            (entry.space, ChoiceOption::new(entry.id.to_string(), words)),
        );
    }
    found.into_iter().map(|(_, option)| option).collect()
}

/// The neutrals on which more than one hot returns.
#[component]
fn Neutrals(house: House) -> impl IntoView {
    let shared = memo(move || {
        house.neutrals.with(|all| {
            let shared = all.iter().filter(|neutral| {
                neutral.circuits.len() > 1
                    || matches!(&neutral.answer, Ok(answer) if answer.now.shared)
            });
            shared.cloned().collect::<Vec<_>>()
        })
    });
    view! {
        <When when=move || !shared.read().is_empty()>
            <section class="sheet">
                <h2>{words::neutral_heading()}</h2>
                <ul class="list">
                    {draw(move || {
                        shared.with(|all| all.iter().map(|neutral| neutral_row(house, neutral)).collect_view())
                    })}
                </ul>
            </section>
        </When>
    }
}

/// A neutral: who returns on it, its current, and what is wrong with that.
fn neutral_row(house: House, neutral: &NeutralOf) -> AnyView {
    let names: Vec<String> = neutral
        .circuits
        .iter()
        .map(|id| house.circuit_name(*id))
        .collect();
    let said = match &neutral.answer {
        Ok(answer) => {
            let mut lines = vec![
                words::neutral_now(amps(answer.now.current_a)),
                words::neutral_most(amps(answer.now.most_a)),
            ];
            if let Some(after) = &answer.after {
                lines.push(words::neutral_then(amps(after.current_a)));
            }
            // The circuits themselves tell it where they are judged.
            let told = house.circuits.with(|all| {
                let of = |id: &u32| {
                    all.iter()
                        .any(|(known, judged)| known == id && judged.is_ok())
                };
                neutral.circuits.iter().all(of)
            });
            let found = &answer.after.as_ref().unwrap_or(&answer.now).findings;
            let found = found
                .iter()
                .filter(|_| !told)
                .map(|finding| view! { <p class="notice look">{words::finding(finding)}</p> })
                .collect_view();
            view! {
                <p>{lines.join(" · ")}</p>
                {found}
            }
            .into_any()
        }
        Err(AskProblem::Entries(problems)) => {
            let text = format!("{} {}", words::missing(), missing(problems).join(", "));
            view! { <p class="quiet">{text}</p> }.into_any()
        }
        Err(AskProblem::Refused(NeutralRefused::Circuit(refused))) => {
            view! { <p class="notice look">{refused_line(refused)}</p> }.into_any()
        }
        Err(AskProblem::Refused(NeutralRefused::Neutral(refusal))) => {
            view! { <p class="notice look">{words::neutral_refusal(refusal)}</p> }.into_any()
        }
    };
    view! {
        <li class="neutral">
            <strong>{names.join(" + ")}</strong>
            {said}
        </li>
    }
    .into_any()
}
