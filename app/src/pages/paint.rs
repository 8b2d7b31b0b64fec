//! Paint: each paint with its gallons and its cans.

use calc::finish::paint::{Paint, PaintRefusal};
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::finish::paint::{PaintKind, paint_of};
use calc::job::{CoatEntry, Room, Typed, Units, fields};
use leptos::prelude::*;

use super::closing::{Missing, Walls, may, need, pair, said, yes};
use super::job_fields::{At, at, number};
use super::sum_fields::{Shown, label};
use crate::answer::{Cautions, Facts, RestsOn, Working};
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::pictures::Figure;
use crate::reactive::{When, derived, memo};
use crate::shell::PageHeading;
use crate::words::closing::{self as shared, paint as words};
use crate::work::closing_part;

/// A paint, or why there is none; nothing where the room is gone.
type Found = Option<Result<Paint, FinishProblem<PaintRefusal>>>;

/// The paint stage.
#[component]
pub fn PaintPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let name = room.part(|r| r.name.clone());
    view! {
        <PageHeading text=derived(move || words::heading(&super::jobs::shown_room(&name.get()))) />
        <PaintParts room />
    }
}

/// What the stage and the quick sum are made of.
#[component]
pub fn PaintParts(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let id = room.id;
    let part = closing_part(room);
    let answers = PaintKind::ALL
        .into_iter()
        .map(|kind| view! { <Answer room part kind /> })
        .collect_view();
    let forms = PaintKind::ALL
        .into_iter()
        .map(|kind| view! { <Form room kind /> })
        .collect_view();
    let nothing = memo(move || part.with(|r| r.as_ref().is_some_and(|r| used(r).is_empty())));
    let cautions = vec![
        shared::caution_lead().to_owned(),
        shared::caution_ladder().to_owned(),
        shared::caution_asbestos().to_owned(),
    ];
    view! {
        <When when=move || nothing.get()>
            <p class="notice">{words::nothing()}</p>
        </When>
        {answers}
        <Walls room with_height=true with_built_ins=false />
        <h2>{words::room_heading()}</h2>
        {forms}
        <section class="sheet">
            {need(room, "paint-allowance", words::allowance_label(), fields::ALLOWANCE, at!(room id; paint.allowance_percent))}
        </section>
        <Cautions lines=Signal::stored(cautions) />
    }
}

fn used(room: &Room) -> Vec<PaintKind> {
    let all = PaintKind::ALL.into_iter();
    all.filter(|kind| kind.of(room).used).collect()
}

/// Whether every paint that is used is worked out.
pub fn paint_known(room: &Room) -> bool {
    let used = used(room);
    !used.is_empty() && used.into_iter().all(|kind| paint_of(room, kind).is_ok())
}

/// The paint's line on the job's page.
pub fn paint_line(room: &Room, units: Units) -> String {
    let parts: Vec<String> = used(room)
        .into_iter()
        .filter_map(|kind| {
            let paint = paint_of(room, kind).ok()?;
            let amount = shared::gallons(paint.with_allowance_gal, units);
            Some(words::line(words::kind(kind), amount))
        })
        .collect();
    if parts.is_empty() {
        words::open().to_owned()
    } else {
        parts.join(", ")
    }
}

#[component]
fn Answer(room: OpenRoom, part: Memo<Option<Room>>, kind: PaintKind) -> impl IntoView {
    let units = room.open.units();
    let found: Memo<Found> = memo(move || {
        part.with(|room| {
            let room = room.as_ref()?;
            kind.of(room).used.then(|| paint_of(room, kind))
        })
    });
    let problem = derived(move || {
        found.with(|found| {
            part.with(|room| {
                let refused = |refusal: &PaintRefusal| words::refusal(refusal, units.get());
                said(found.as_ref()?, room.as_ref(), &refused)
            })
        })
    });
    let text = move |of: fn(&Paint, Units) -> String| {
        derived(move || {
            let units = units.get();
            found.with(|found| match found {
                Some(Ok(paint)) => of(paint, units),
                _ => String::new(),
            })
        })
    };
    let value = text(|paint, units| shared::gallons(paint.with_allowance_gal, units));
    let rests = text(|paint, units| {
        words::rests(
            shared::area(paint.area_ft2, units),
            shared::area(paint.gross_ft2, units),
            shared::area(paint.openings_ft2, units),
        )
    });
    let rows = derived(move || {
        let units = units.get();
        found.with(|found| match found {
            Some(Ok(paint)) => facts(paint, units),
            _ => Vec::new(),
        })
    });
    let steps = derived(move || {
        found.with(|found| match found {
            Some(Ok(paint)) => paint.working(),
            _ => Vec::new(),
        })
    });
    let there = memo(move || found.with(|found| matches!(found, Some(Ok(_)))));
    view! {
        <When when=move || found.read().is_some()>
            <section class="sheet">
                <h2>{words::kind(kind)}</h2>
                <Missing text=problem room />
                <When when=move || there.get()>
                    <div class="answer" role="status">
                        <Figure value />
                        <RestsOn text=rests />
                    </div>
                    <Facts rows />
                    <Working steps units />
                </When>
            </section>
        </When>
    }
}

fn facts(paint: &Paint, units: Units) -> Vec<(String, String)> {
    let mut rows = vec![
        (
            words::row_gal().to_owned(),
            shared::gallons(paint.gal, units),
        ),
        (
            words::row_allowed().to_owned(),
            shared::gallons(paint.with_allowance_gal, units),
        ),
        (words::row_cans().to_owned(), words::cans(paint)),
    ];
    let price = words::price(paint).unwrap_or_else(|| words::by_count().to_owned());
    rows.push((words::row_price().to_owned(), price));
    rows
}

/// An entry of a paint.
fn coat(room: OpenRoom, kind: PaintKind, part: fn(&mut CoatEntry) -> &mut Typed) -> At<Typed> {
    let id = room.id;
    At::new(
        move |job| {
            job.room(id)
                .map(|room| part(&mut kind.of(room).clone()).clone())
                .unwrap_or_default()
        },
        move |job, typed| {
            if let Some(room) = job.room_mut(id) {
                *part(of_mut(room, kind)) = typed;
            }
        },
    )
}

fn of_mut(room: &mut Room, kind: PaintKind) -> &mut CoatEntry {
    match kind {
        PaintKind::Primer => &mut room.paint.primer,
        PaintKind::Walls => &mut room.paint.walls,
        PaintKind::Ceiling => &mut room.paint.ceiling,
        PaintKind::Trim => &mut room.paint.trim,
    }
}

#[component]
fn Form(room: OpenRoom, kind: PaintKind) -> impl IntoView {
    let id = room.id;
    let on = room.part(move |r| kind.of(r).used);
    let key = match kind {
        PaintKind::Primer => "primer",
        PaintKind::Walls => "walls",
        PaintKind::Ceiling => "ceiling",
        PaintKind::Trim => "trim",
    };
    let use_it = At::new(
        move |job: &calc::job::Job| job.room(id).is_some_and(|room| kind.of(room).used),
        move |job: &mut calc::job::Job, used| {
            if let Some(room) = job.room_mut(id) {
                of_mut(room, kind).used = used;
            }
        },
    );
    let face = move || {
        (kind == PaintKind::Trim).then(|| {
            need(
                room,
                "trim-face",
                words::face_label(),
                fields::FACE,
                at!(room id; paint.trim_face),
            )
        })
    };
    view! {
        <section class="sheet">
            <h3>{words::kind(kind)}</h3>
            {yes(room, format!("{key}-used"), label(words::used()), shared::yes(), shared::no(), use_it)}
            <When when=move || on.get()>
                {face()}
                {need(room, format!("{key}-coats"), words::coats_label(), fields::COATS, coat(room, kind, |c| &mut c.coats))}
                {number(
                    room.open,
                    format!("{key}-spread"),
                    label(words::spread_label()),
                    fields::COVERAGE,
                    Shown::hint(words::spread_hint()),
                    coat(room, kind, |c| &mut c.spread),
                )}
                {pair(
                    may(room, format!("{key}-gallon"), words::gallon_label(), "", fields::PRICE, coat(room, kind, |c| &mut c.gallon_price)),
                    may(room, format!("{key}-quart"), words::quart_label(), "", fields::PRICE, coat(room, kind, |c| &mut c.quart_price)),
                )}
            </When>
        </section>
    }
}
