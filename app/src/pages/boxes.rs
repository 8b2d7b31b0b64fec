//! The boxes of a job: how full each is, and one box on a page of its own, entered in the form of the quick sum.

use calc::job::questions::wiring::AskProblem;
use calc::job::sums::Sums;
use calc::job::{BoxEntry, Job, Units};
use leptos::prelude::*;

use super::job_fields::{At, text};
use super::sum_fields::label;
use super::sums::{JobRow, OpenSums};
use super::wiring_sums::box_fill::outcome;
use super::wiring_sums::box_form::BoxForm;
use super::wiring_sums::frame::{Answer, Outcome};
use crate::answer::Cautions;
use crate::app::NotHere;
use crate::focus;
use crate::house::{Filled, House, PutBack, TakenOut, box_name, circuit_name};
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::pictures::strip::{StripContent, strip};
use crate::reactive::{When, derived, draw, memo, say};
use crate::router::Place;
use crate::shell::{PageHeading, PrintButton};
use crate::words::wiring::{self as wiring_words, boxes as words, fill};

/// The boxes.
#[component]
pub fn BoxesPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let house = House::here();
    let units = open.units();
    let place = Place::here();
    let rows = move || {
        house.boxes.with(|all| {
            // What is too full stands first.
            let full = all.iter().filter(too_full);
            let rest = all.iter().filter(|row| !too_full(row));
            full.chain(rest)
                .map(|row| box_row(open, house, row, units.get()))
                .collect_view()
        })
    };
    let add = move |_| {
        let mut id = 0;
        open.change(|job| {
            id = job.fresh_id();
            job.boxes.push(BoxEntry::new(id, ""));
        });
        place.go(&paths::row(&open.id(), Stage::Boxes, id));
    };
    let none = memo(move || house.boxes.with(|all| all.is_empty()));
    view! {
        <PageHeading text=label(words::title()) />
        <When when=move || none.get()>
            <p>{words::none_yet()}</p>
        </When>
        <ul class="list">{draw(rows)}</ul>
        <PutBack open house />
        <button type="button" class="button main wide" on:click=add>{words::add_box()}</button>
        <p class="rests-on">{say(move || wiring_words::by_edition(wiring_words::edition(house.edition())))}</p>
        <Cautions lines=Signal::stored(wiring_words::cautions()) />
        <PrintButton />
    }
}

fn too_full(row: &&Filled) -> bool {
    matches!(&row.1, Ok(fill) if !fill.fits)
}

fn box_row(open: OpenJob, house: House, row: &Filled, units: Units) -> AnyView {
    let (id, fill_) = row;
    let text = |in3: f64| fill::volume(in3, units);
    let (class, sign, says) = match fill_ {
        Ok(found) if !found.fits => (
            "verdict over",
            words::too_full(),
            words::over(text(-found.room_in3), text(found.volume_in3)),
        ),
        Ok(found) if found.room_in3 < 1e-6 => (
            "verdict",
            words::fits(),
            words::full(text(found.volume_in3)),
        ),
        Ok(found) => (
            "verdict",
            words::fits(),
            words::room_left(text(found.room_in3), text(found.volume_in3)),
        ),
        Err(AskProblem::Refused(refusal)) => {
            ("verdict", words::open(), fill::refusal(refusal, units))
        }
        Err(AskProblem::Entries(_)) => ("verdict", words::open(), words::not_known().to_owned()),
    };
    let gauge = fill_.as_ref().ok().map(|found| {
        strip(StripContent {
            now: found.required_in3,
            then: found.required_in3,
            limit: found.volume_in3,
        })
    });
    view! {
        <li>
            <a class="go" href=paths::row(&open.id(), Stage::Boxes, *id)>
                <strong>{house.box_name(*id)}</strong>
                <span class=class>
                    <span class="sign">{sign}</span>
                    <span>{says}</span>
                </span>
                {gauge}
            </a>
        </li>
    }
    .into_any()
}

fn take(job: &Job, id: u32, sums: &mut Sums) {
    if let Some(entry) = job.box_entry(id) {
        sums.box_fill = entry.clone();
    }
}

fn put(job: &mut Job, id: u32, sums: Sums) {
    if let Some(entry) = job.box_entry_mut(id) {
        *entry = sums.box_fill;
    }
}

/// One box.
#[component]
pub fn BoxPage(
    /// Its id.
    id: u32,
) -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let known = open.part(move |job| job.box_entry(id).is_some());
    draw(move || {
        if known.get() {
            view! { <OneBox open id /> }.into_any()
        } else {
            view! { <p class="notice">{words::no_such()}</p> <NotHere /> }.into_any()
        }
    })
}

#[component]
fn OneBox(open: OpenJob, id: u32) -> impl IntoView {
    let house = House::here();
    let place = Place::here();
    let units = open.units();
    let name = open.part(move |job| {
        job.box_entry(id)
            .map(|b| b.name.clone())
            .unwrap_or_default()
    });
    let form = OpenSums::of_row(JobRow {
        open,
        id,
        take,
        put,
    });
    let found = memo(move || {
        house
            .boxes
            .with(|all| match all.iter().find(|(of, _)| *of == id) {
                Some((_, found)) => outcome(found, units.get()),
                None => Outcome::Open,
            })
    });
    let refused = move || {
        found.with(|found| match found {
            Outcome::Refused(why) => Some(why.clone()),
            _ => None,
        })
    };
    let told = derived(move || found.with(Outcome::is_told));
    let on = move || {
        let names: Vec<String> = house.wiring.with(|job| {
            let on = job.circuits.iter().filter(|c| c.boxes.contains(&id));
            on.map(|c| circuit_name(&c.name)).collect()
        });
        if names.is_empty() {
            words::on_none().to_owned()
        } else {
            words::on_circuits(&names.join(", "))
        }
    };
    let named = At::new(
        move |job: &Job| {
            job.box_entry(id)
                .map(|b| b.name.clone())
                .unwrap_or_default()
        },
        move |job: &mut Job, text| {
            if let Some(entry) = job.box_entry_mut(id) {
                entry.name = text;
            }
        },
    );
    let out = move |_| {
        place.go(&paths::stage(&open.id(), 0, Stage::Boxes));
        open.change(|job| {
            if let Some(at) = job.boxes.iter().position(|b| b.id == id) {
                house
                    .taken_out
                    .set(Some(TakenOut::Box(at, Box::new(job.boxes.remove(at)))));
            }
        });
        focus::soon("put-back");
    };
    view! {
        <a class="up" href=paths::stage(&open.id(), 0, Stage::Boxes)>{words::all_boxes()}</a>
        <PageHeading text=derived(move || box_name(&name.get())) />
        <div role="status">
            <When when=move || matches!(*found.read(), Outcome::Refused(_))>
                <p class="notice look">{say(refused)}</p>
            </When>
        </div>
        <div class="stack">
            <When when=told>
                <section class="sheet">
                    <h2>{words::answer_heading()}</h2>
                </section>
            </When>
            <Answer outcome=found units />
        </div>
        <p class="quiet">{say(on)}</p>
        {text(open, "box-name", label(words::name_label()), words::name_hint(), named)}
        <BoxForm open=form />
        <When when=move || !told.get()>
            <Cautions lines=Signal::stored(wiring_words::cautions()) />
        </When>
        <button type="button" class="button look plain" on:click=out>{words::take_out_box()}</button>
        <a class="button wide" href=paths::stage(&open.id(), 0, Stage::Boxes)>{words::all_boxes()}</a>
        <PrintButton />
    }
}
