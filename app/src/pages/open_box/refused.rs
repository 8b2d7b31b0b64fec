//! Why an opened box can't be answered, in plain words.

use calc::job::OpenedEntry;
use calc::job::questions::EntryProblem;
use calc::job::questions::wiring::AskProblem;
use calc::quantity::fixed;
use calc::wiring::open_box::description::DescriptionRefusal as No;
use leptos::prelude::*;

use super::{Names, Opened};
use crate::markup::view;
use crate::reactive::draw;
use crate::words::open_box::refusals as words;

/// What stands in the way; nothing where it can be answered.
#[component]
pub fn Refused(opened: Opened) -> impl IntoView {
    let drawn = move || {
        let lines = opened.asked.with(|asked| match asked {
            Ok(_) => Vec::new(),
            Err(problem) => opened
                .entry
                .with(|entry| opened.names.with(|names| lines(problem, entry, names))),
        });
        (!lines.is_empty()).then(|| {
            let rows = lines
                .into_iter()
                .map(|line| view! { <li>{line}</li> })
                .collect_view();
            view! {
                <div class="notice look">
                    <strong>{words::heading()}</strong>
                    <ul>{rows}</ul>
                </div>
            }
        })
    };
    view! { <div role="status">{draw(drawn)}</div> }
}

/// The same beside the grid, for shorts alone: their place is there.
pub fn short_lines(opened: Opened) -> Option<AnyView> {
    let lines: Vec<String> = opened.asked.with(|asked| match asked {
        Err(AskProblem::Refused(all)) => all
            .iter()
            .filter(|no| matches!(no, No::Short { .. }))
            .map(|no| opened.names.with(|names| refusal(no, names)))
            .collect(),
        _ => Vec::new(),
    });
    let first = lines.into_iter().next()?;
    Some(view! { <p class="field-trouble">{first}</p> }.into_any())
}

fn lines(problem: &AskProblem<Vec<No>>, entry: &OpenedEntry, names: &Names) -> Vec<String> {
    let mut all = Vec::new();
    match problem {
        AskProblem::Entries(problems) => {
            for problem in problems {
                push(&mut all, entry_problem(problem, entry, names));
            }
        }
        AskProblem::Refused(refusals) => {
            for no in refusals {
                push(&mut all, refusal(no, names));
            }
        }
    }
    all
}

fn push(all: &mut Vec<String>, line: String) {
    if !all.contains(&line) {
        all.push(line);
    }
}

fn entry_problem(problem: &EntryProblem, entry: &OpenedEntry, names: &Names) -> String {
    let row = problem.row.unwrap_or(0);
    let load = entry
        .cables
        .iter()
        .find(|cable| cable.loads.iter().any(|load| load.id == row));
    match (problem.name, load) {
        ("rating", _) => words::breaker(&names.breaker(row)),
        ("in_panel", _) => words::breaker_gone(&names.breaker(row)),
        ("hots", _) => words::hots(&names.letter(row)),
        ("loads", _) => words::loads(&names.letter(row)),
        ("to_box", _) => words::to_box(&names.letter(row)),
        ("length", _) => words::length(&names.letter(row)),
        ("a_neutral" | "b_neutral", _) => words::supply().to_owned(),
        ("watts" | "volts", Some(cable)) => words::loads(&names.letter(cable.id)),
        _ => words::entry().to_owned(),
    }
}

/// Why a description can't be answered.
pub fn refusal(no: &No, names: &Names) -> String {
    match no {
        No::LegVolts { volts } => words::leg_volts(fixed(*volts, 1)),
        No::SourceOhm { .. } | No::FeederLength { .. } | No::FeederSize { .. } => {
            words::supply().to_owned()
        }
        No::SameBreaker { .. }
        | No::SameBox { .. }
        | No::SameCable { .. }
        | No::SameDevice { .. } => words::same().to_owned(),
        No::Poles { breaker } | No::NoPole { breaker, .. } => {
            words::poles(&names.breaker(*breaker))
        }
        No::SpaceLeg { breaker, .. } | No::NoBreaker { breaker } => {
            words::breaker_gone(&names.breaker(*breaker))
        }
        No::Rating { breaker, .. } => words::breaker(&names.breaker(*breaker)),
        No::NoBoxes => words::no_box().to_owned(),
        No::EmptyBox { in_box } | No::NoBox { in_box } => {
            words::empty_box(&names.box_name(*in_box))
        }
        No::Conductors { cable, .. } => words::conductors(&names.letter(*cable)),
        No::NoOhms { cable, .. } => words::no_ohms(&names.letter(*cable)),
        No::Length { cable, .. } => words::length(&names.letter(*cable)),
        No::NoConductor { cable, .. } | No::ConductorTwice { cable, .. } => {
            words::load_across(&names.letter(*cable))
        }
        No::FarSwitch { cable } => words::far_switch(&names.letter(*cable)),
        No::ToItself { cable } => words::to_itself(&names.letter(*cable)),
        No::Load { .. } => words::load_watts().to_owned(),
        No::NoContact { contact } | No::NoPlace { contact, .. } => {
            words::place(&names.contact(*contact))
        }
        No::Twice { contact } => words::twice(&names.contact(*contact)),
        No::Short { one, other, volts } => {
            words::short(&names.hot(*one), &names.hot(*other), fixed(*volts, 0))
        }
    }
}
