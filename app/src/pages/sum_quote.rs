//! Quick sum: a quote against what a room needs by its sizes, or the way to a job's own check.

use calc::job::fields;
use calc::job::questions::supply::sizes::needs_by_sizes;
use calc::job::sums::QuoteWork;
use leptos::prelude::*;

use super::jobs::shown_name;
use super::quote::{QuoteForm, QuoteIn};
use super::sum_fields::{Shown, field, label, typed};
use super::sums::{OpenSums, SumFoot};
use crate::answer::RestsOn;
use crate::desk::Desk;
use crate::markup::view;
use crate::paths::{self, Stage};
use crate::reactive::{When, memo};
use crate::shell::PageHeading;
use crate::store::index;
use crate::words::quote as words;

const WORK: [QuoteWork; 5] = [
    QuoteWork::Pour,
    QuoteWork::Tile,
    QuoteWork::Board,
    QuoteWork::Paint,
    QuoteWork::Trim,
];

fn work_word(work: QuoteWork) -> &'static str {
    match work {
        QuoteWork::Pour => words::work_pour(),
        QuoteWork::Tile => words::work_tile(),
        QuoteWork::Board => words::work_board(),
        QuoteWork::Paint => words::work_paint(),
        QuoteWork::Trim => words::work_trim(),
    }
}

/// A quote without a job.
#[component]
pub fn SumQuotePage() -> impl IntoView {
    let open = OpenSums::load();
    let asked = open.part(|sums| needs_by_sizes(&sums.quote_check).ok());
    let needs = memo(move || asked.with(|asked| asked.clone().unwrap_or_default()));
    let entry = open.part(|sums| sums.quote_check.quote.clone());
    let place = QuoteIn::new(entry, needs, move |change| {
        open.change(|sums| {
            let id = sums.fresh_id();
            change(&mut sums.quote_check.quote, id);
            let lines = &sums.quote_check.quote.lines;
            let most = lines.iter().map(|line| line.id).max();
            sums.last_id = sums.last_id.max(most.unwrap_or(0));
        });
    });
    let does = move |work: QuoteWork| open.part(move |sums| sums.quote_check.work.contains(&work));
    let walls = memo(move || does(QuoteWork::Board).get() || does(QuoteWork::Paint).get());
    let pour = does(QuoteWork::Pour);
    let trim = does(QuoteWork::Trim);
    let edges = memo(move || pour.get() || trim.get());
    view! {
        <PageHeading text=label(words::title()) />
        <p>{words::what_it_does()}</p>
        <OfJobs />
        <section class="sheet no-print">
            <h2>{words::or_by_sizes()}</h2>
            <Work open />
            <div class="pair">
                {field(open, "width", label(words::width_label()), fields::SIDE, Shown::default(), typed!(quote_check.width))}
                {field(open, "length", label(words::length_label()), fields::SIDE, Shown::default(), typed!(quote_check.length))}
            </div>
            <div class="stack" hidden=move || !walls.get()>
                {field(
                    open,
                    "height",
                    label(words::height_label()),
                    fields::WALL_HEIGHT,
                    Shown::default(),
                    typed!(quote_check.height),
                )}
                {field(
                    open,
                    "openings",
                    label(words::openings_label()),
                    fields::FLOOR_AREA,
                    Shown::optional(words::openings_hint()),
                    typed!(quote_check.openings),
                )}
            </div>
            <div hidden=move || !edges.get()>
                {field(
                    open,
                    "doorways",
                    label(words::doorways_label()),
                    fields::SIDE,
                    Shown::optional(words::doorways_hint()),
                    typed!(quote_check.doorways),
                )}
            </div>
            <div hidden=move || !pour.get()>
                {field(open, "depth", label(words::depth_label()), fields::DEPTH, Shown::default(), typed!(quote_check.depth))}
            </div>
            <RestsOn text=label(words::sizes_rest()) />
        </section>
        <When when=move || needs.read().is_empty()>
            <p class="notice">{words::choose_work()}</p>
        </When>
        <QuoteForm place />
        <SumFoot open />
    }
}

/// What is in the quote: several may be.
#[component]
fn Work(open: OpenSums) -> impl IntoView {
    let boxes = WORK
        .iter()
        .map(|&work| {
            let on = open.part(move |sums| sums.quote_check.work.contains(&work));
            let turn = move |_| {
                open.change(|sums| {
                    let all = &mut sums.quote_check.work;
                    match all.iter().position(|&of| of == work) {
                        Some(at) => drop(all.remove(at)),
                        None => all.push(work),
                    }
                });
            };
            view! {
                <label>
                    <input type="checkbox" id=format!("work-{}", work.code()) prop:checked=move || on.get() on:change=turn />
                    {work_word(work)}
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="field">
            <legend class="label">{words::work_label()}</legend>
            <div class="choices">{boxes}</div>
        </fieldset>
    }
}

/// The jobs on this device, each with the way to its own check.
#[component]
fn OfJobs() -> impl IntoView {
    let desk = expect_context::<Desk>();
    let listed = index::list(&*desk.shelf()).unwrap_or_default();
    let rows = listed
        .iter()
        .map(|job| {
            let path = paths::stage(&job.id, 0, Stage::Quote);
            view! { <li><a class="go" href=path>{shown_name(&job.name)}</a></li> }
        })
        .collect_view();
    (!listed.is_empty()).then(|| {
        view! {
            <section class="sheet no-print">
                <h2>{words::of_a_job()}</h2>
                <ul class="list">{rows}</ul>
            </section>
        }
    })
}
