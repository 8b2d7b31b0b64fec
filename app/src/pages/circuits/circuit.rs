//! One circuit: how it comes out, what is to be added to it, rule by rule, and what was entered.

use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::circuit::{CircuitRefused, CircuitView};
use calc::job::{CodeEdition, Units};
use calc::quantity::fixed;
use calc::wiring::circuit::Outcome;
use calc::working::Step;
use leptos::prelude::*;

use super::form::CircuitForm;
use super::planned::Planned;
use super::{cautions, missing, refused_line, share_line, share_strip, verdict_row};
use crate::answer::{Cautions, CodeSections, RestsOn, Working};
use crate::app::NotHere;
use crate::focus;
use crate::house::{House, TakenOut, circuit_name};
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::pictures::Figure;
use crate::reactive::{derived, draw, memo};
use crate::router::Place;
use crate::shell::{PageHeading, PrintButton};
use crate::words::wiring::ampacity::amps;
use crate::words::wiring::{self as wiring_words, circuits as words, panel as panel_words, rules};

/// One circuit.
#[component]
pub fn CircuitPage(
    /// Its id.
    id: u32,
) -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let known = open.part(move |job| job.circuit(id).is_some());
    draw(move || {
        if known.get() {
            view! { <OneCircuit open id /> }.into_any()
        } else {
            view! { <p class="notice">{words::no_such()}</p> <NotHere /> }.into_any()
        }
    })
}

#[component]
fn OneCircuit(open: OpenJob, id: u32) -> impl IntoView {
    let house = House::here();
    let place = Place::here();
    let units = open.units();
    let name = open.part(move |job| job.circuit(id).map(|c| c.name.clone()).unwrap_or_default());
    let judged = memo(move || {
        house.circuits.with(|all| {
            let (_, judged) = all.iter().find(|(of, _)| *of == id)?;
            judged.as_ref().ok().cloned()
        })
    });
    let problem = move || {
        house.circuits.with(|all| {
            let (_, judged) = all.iter().find(|(of, _)| *of == id)?;
            judged.as_ref().err().map(why_not_judged)
        })
    };
    let steps = derived(move || {
        judged.with(|judged| {
            let legs = judged.iter().flat_map(|view| &view.legs);
            let mut steps: Vec<Step> = Vec::new();
            for step in legs.flat_map(|leg| &leg.answer.steps) {
                if !steps.contains(step) {
                    steps.push(step.clone());
                }
            }
            steps
        })
    });
    let sections =
        derived(move || steps.with(|steps| rules::sections(steps, &[], house.edition())));
    let out = move |_| {
        place.go(&paths::stage(&open.id(), 0, Stage::Circuits));
        open.change(|job| {
            if let Some(at) = job.circuits.iter().position(|c| c.id == id) {
                let taken = TakenOut::Circuit(at, job.circuits.remove(at));
                house.taken_out.set(Some(taken));
            }
        });
        focus::soon("put-back");
    };
    view! {
        <a class="up" href=paths::stage(&open.id(), 0, Stage::Circuits)>{words::all_circuits()}</a>
        <PageHeading text=derived(move || circuit_name(&name.get())) />
        {draw(problem)}
        {draw(move || judged.with(|judged| judged.as_ref().map(|view| answer(house, view))))}
        <Planned open house id judged />
        {draw(move || judged.with(|judged| judged.as_ref().map(|view| by_rule(house, view, units.get()))))}
        <CircuitForm open house id />
        <section class="sheet">
            <Working steps units />
            <CodeSections rows=sections />
            <Cautions lines=Signal::stored(cautions()) />
        </section>
        <button type="button" class="button look plain" on:click=out>{words::take_out_circuit()}</button>
        <a class="button wide" href=paths::stage(&open.id(), 0, Stage::Circuits)>{words::all_circuits()}</a>
        <PrintButton />
    }
}

/// What keeps a circuit from being judged.
fn why_not_judged(problem: &AskProblem<CircuitRefused>) -> AnyView {
    match problem {
        AskProblem::Entries(problems) => {
            let rows = missing(problems)
                .into_iter()
                .map(|words| view! { <li>{words}</li> })
                .collect_view();
            view! {
                <div class="notice" role="status">
                    <p>{words::missing()}</p>
                    <ul class="marked">{rows}</ul>
                </div>
            }
            .into_any()
        }
        AskProblem::Refused(refused) => {
            view! { <p class="notice look" role="status">{refused_line(refused)}</p> }.into_any()
        }
    }
}

/// The share of the breaker, the one figure of the page.
fn answer(house: House, view: &CircuitView) -> AnyView {
    let share = |judged: &calc::job::questions::wiring::circuit::LegJudged| {
        let sums = judged.answer.after.as_ref().unwrap_or(&judged.answer.now);
        sums.share_percent
    };
    let most = view.legs.iter().map(share).fold(0.0, f64::max);
    let planned = view.legs.iter().any(|leg| leg.answer.after.is_some());
    let name = if planned {
        words::share_name()
    } else {
        words::share_name_now()
    };
    let lines: Vec<String> = view.legs.iter().map(|leg| share_line(view, leg)).collect();
    let edition: CodeEdition = house.edition();
    let rests = format!(
        "{}: {}. {}",
        words::on_breaker(&view.number, amps(view.breaker_a)),
        lines.join("; "),
        wiring_words::by_edition(wiring_words::edition(edition))
    );
    let strips = view
        .legs
        .iter()
        .map(|leg| share_strip(view, leg))
        .collect_view();
    let fails = crate::house::fails(view).len();
    let verdict = match fails {
        0 => None,
        1 => Some(words::one_failing().to_owned()),
        many => Some(words::failing(many)),
    };
    view! {
        <div class="answer" role="status">
            <p class="figure-name">{name}</p>
            <Figure
                value=Signal::stored(fixed(most, 0))
                unit=Signal::stored(words::share_unit(amps(view.breaker_a)))
            />
            {strips}
            {verdict.map(|words| view! { <p class="verdict over"><span class="sign">{words}</span></p> })}
            <RestsOn text=Signal::stored(rests) />
        </div>
    }
    .into_any()
}

/// The rules: what fails or is open, each opening its section; what is kept in one list.
fn by_rule(house: House, view: &CircuitView, units: Units) -> AnyView {
    let many = view.legs.len() > 1;
    let mut open = Vec::new();
    let mut kept = Vec::new();
    for outcome in [
        Outcome::Fails,
        Outcome::NotJudged,
        Outcome::Advised,
        Outcome::Passes,
    ] {
        for leg in &view.legs {
            let of = leg.leg.filter(|_| many).map(panel_words::leg);
            for verdict in leg.answer.verdicts.iter().filter(|v| v.outcome == outcome) {
                let row = verdict_row(house, verdict, of, units);
                if outcome == Outcome::Passes {
                    kept.push(row);
                } else {
                    open.push(row);
                }
            }
        }
    }
    let count = kept.len();
    view! {
        <section class="sheet">
            <h2>{words::verdicts_heading()}</h2>
            <div class="rules">{open}</div>
            <details class="kept">
                <summary>{words::kept_count(count)}</summary>
                <div class="rules">{kept}</div>
            </details>
        </section>
    }
    .into_any()
}
