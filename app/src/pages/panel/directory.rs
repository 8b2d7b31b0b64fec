//! The circuit directory: one sheet for the panel's door, odd numbers left and even ones right. It is what the panel's
//! page prints.

use calc::job::Job;
use calc::job::questions::wiring::panel::{DirectoryRow, PanelView};
use calc::wiring::panel::leg_of;
use leptos::prelude::*;

use crate::house::House;
use crate::markup::view;
use crate::reactive::{draw, say};
use crate::words::wiring::ampacity::amps;
use crate::words::wiring::panel as words;

/// The directory and the button that prints it.
#[component]
pub fn Directory(
    /// The wiring's answers.
    house: House,
) -> impl IntoView {
    let table = move || {
        house.panel.with(|panel| {
            let view = panel.as_ref().ok()?;
            Some(house.wiring.with(|job| table(job, view)))
        })
    };
    let about = move || house.wiring.with(about);
    let notes = move || house.wiring.with(|job| job.panel.notes.trim().to_owned());
    // Without a print window nothing is lost.
    let print = |_| drop(window().print());
    view! {
        <section class="sheet directory">
            <h2>{words::directory_heading()}</h2>
            <p class="quiet no-print">{words::directory_why()}</p>
            <p class="directory-about">{say(about)}</p>
            {draw(table)}
            <p class="directory-notes">{say(notes)}</p>
            <button type="button" class="button wide" on:click=print>{words::print_directory()}</button>
        </section>
    }
}

/// What feeds and protects the panel, for the head of the directory.
fn about(job: &Job) -> String {
    let panel = &job.panel;
    let mut parts = Vec::new();
    if !panel.fed_from.trim().is_empty() {
        parts.push(words::fed_line(&panel.fed_from));
    }
    if panel.main == calc::job::MainDisconnect::Breaker
        && let Ok(rating) = calc::job::fields::RATING.read(&panel.main_rating)
    {
        parts.push(words::main_line(amps(rating)));
    }
    parts.join(" · ")
}

/// What stands at a space: two poles that began above, or its rows.
enum Stands<'a> {
    Below,
    Rows(Vec<&'a DirectoryRow>),
}

fn at(view: &PanelView, space: u32) -> Stands<'_> {
    let mut rows = Vec::new();
    let positions = view
        .layout
        .positions
        .iter()
        .filter(|position| position.spaces.contains(&space));
    for position in positions {
        if position.spaces.first() != Some(&space) {
            return Stands::Below;
        }
        let row = position
            .breaker
            .and_then(|id| view.directory.iter().find(|row| row.breaker == id));
        rows.extend(row);
    }
    Stands::Rows(rows)
}

/// How many lines of print a row of the panel takes: two where a tandem is in it.
fn lines(view: &PanelView, first: u32) -> usize {
    let of = |space| match at(view, space) {
        Stands::Rows(rows) => rows.len(),
        Stands::Below => 1,
    };
    of(first).max(of(first + 1)).max(1)
}

/// The directory as a table.
pub fn table(job: &Job, view: &PanelView) -> AnyView {
    let spaces = job.panel.spaces;
    let mut rows = Vec::new();
    for first in (1..=spaces).step_by(2) {
        let high = lines(view, first);
        for line in 0..high {
            rows.push(
                view! {
                    <tr>
                        {cells(view, first, line, high, spaces)}
                        {cells(view, first + 1, line, high, spaces)}
                    </tr>
                }
                .into_any(),
            );
        }
    }
    let head = || {
        view! {
            <th scope="col">{words::head_number()}</th>
            <th scope="col">{words::head_feeds()}</th>
            <th scope="col" class="num">{words::head_amps()}</th>
            <th scope="col">{words::head_leg()}</th>
        }
    };
    view! {
        <table>
            <thead><tr>{head()} {head()}</tr></thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}

/// The four cells of a space in a line of print; nothing where those above reach down to it.
fn cells(view: &PanelView, space: u32, line: usize, high: usize, spaces: u32) -> AnyView {
    let leg = words::leg(leg_of(space));
    let rows = match at(view, space) {
        Stands::Below => return ().into_any(),
        Stands::Rows(rows) => rows,
    };
    if space > spaces {
        return if line == 0 {
            view! { <td colspan="4" rowspan=high.to_string()></td> }.into_any()
        } else {
            ().into_any()
        };
    }
    let halves = rows.len() > 1;
    if !halves && line > 0 {
        return ().into_any();
    }
    let Some(row) = rows.get(if halves { line } else { 0 }) else {
        let span = high.to_string();
        return view! {
            <th scope="row" rowspan=span.clone()>{space.to_string()}</th>
            <td rowspan=span.clone() class="quiet">"—"</td>
            <td rowspan=span.clone()></td>
            <td rowspan=span>{leg}</td>
        }
        .into_any();
    };
    let span = if halves {
        1
    } else if row.legs.len() > 1 {
        high + lines(view, space + 2 - (space + 1) % 2)
    } else {
        high
    };
    let span = span.to_string();
    let mark = words::protection_mark(row.protection);
    let unsure = row.confirmed == calc::wiring::panel::Confirmed::NotConfirmed;
    let note = match (mark.is_empty(), unsure) {
        (true, false) => String::new(),
        (false, false) => mark.to_owned(),
        (true, true) => words::not_confirmed_mark().to_owned(),
        (false, true) => format!("{mark}, {}", words::not_confirmed_mark()),
    };
    let label = if row.label.trim().is_empty() {
        words::no_label().to_owned()
    } else {
        row.label.clone()
    };
    view! {
        <th scope="row" rowspan=span.clone()>{row.number.clone()}</th>
        <td rowspan=span.clone()>{label} " " <span class="quiet">{note}</span></td>
        <td rowspan=span.clone() class="num">{row.rating_a.map_or_else(String::new, amps)}</td>
        <td rowspan=span>{row.legs.iter().map(|leg| words::leg(*leg)).collect::<Vec<_>>().join("+")}</td>
    }
    .into_any()
}
