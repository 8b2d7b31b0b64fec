//! Trim: base, shoe and casing cut from sticks.

use std::sync::Arc;

use calc::finish::trim::stock::{CutList, CutRefusal};
use calc::finish::trim::{Piece, Trim, TrimRefusal};
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::finish::trim::{Moulding, cut_list, pieces};
use calc::job::{Room, Units, fields};
use calc::quantity::fixed;
use leptos::prelude::*;

use super::closing::{Missing, Walls, may, need, pair, said, yes};
use super::job_fields::{At, at, number};
use super::sum_fields::{Shown, label};
use crate::answer::{Cautions, Facts, RestsOn, Working};
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::pictures::{Bars, Figure, length_text};
use crate::reactive::{When, derived, draw, memo};
use crate::shell::PageHeading;
use crate::words::closing::{self as shared, trim as words};
use crate::work::closing_part;

/// The pieces, or why there are none; nothing where the room is gone.
type Found = Option<Result<Trim, FinishProblem<TrimRefusal>>>;

/// The list of a moulding: nothing where it isn't cut or has no piece.
type Cut = Option<Result<Option<Arc<CutList>>, FinishProblem<CutRefusal>>>;

/// The trim stage.
#[component]
pub fn TrimPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let name = room.part(|r| r.name.clone());
    view! {
        <PageHeading text=derived(move || words::heading(&super::jobs::shown_room(&name.get()))) />
        <TrimParts room />
    }
}

/// Whether anything is cut.
fn cut_begun(room: &Room) -> bool {
    Moulding::ALL.into_iter().any(|of| of.used(&room.trim))
}

/// Whether what is cut is worked out.
pub fn trim_known(room: &Room) -> bool {
    cut_begun(room) && pieces(room).is_ok()
}

/// What the stage and the quick sum are made of.
#[component]
pub fn TrimParts(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let units = room.open.units();
    let part = closing_part(room);
    let found: Memo<Found> =
        memo(move || part.with(|room| room.as_ref().filter(|r| cut_begun(r)).map(pieces)));
    let nothing = memo(move || part.with(|room| room.as_ref().is_some_and(|r| !cut_begun(r))));
    let problem = derived(move || {
        found.with(|found| {
            part.with(|room| {
                let refused = |refusal: &TrimRefusal| words::refusal(refusal, units.get());
                said(found.as_ref()?, room.as_ref(), &refused)
            })
        })
    });
    let steps = derived(move || {
        found.with(|found| match found {
            Some(Ok(trim)) => trim.working(),
            _ => Vec::new(),
        })
    });
    let lists = Moulding::ALL
        .into_iter()
        .map(|moulding| view! { <List room part found moulding /> })
        .collect_view();
    view! {
        <When when=move || nothing.get()>
            <p class="notice">{words::nothing()}</p>
        </When>
        <Missing text=problem room />
        {lists}
        <Working steps units />
        <Walls room with_height=false with_built_ins=true />
        <What room />
        <Stock room />
        <Cautions lines=Signal::stored(vec![shared::caution_saw().to_owned(), shared::caution_lead().to_owned()]) />
    }
}

/// The trim's line on the job's page.
pub fn trim_line(room: &Room) -> String {
    match pieces(room) {
        Ok(trim) if cut_begun(room) => words::line(format!("{} ft", fixed(trim.base_ft, 1))),
        _ => words::open().to_owned(),
    }
}

#[component]
fn List(
    room: OpenRoom,
    part: Memo<Option<Room>>,
    found: Memo<Found>,
    moulding: Moulding,
) -> impl IntoView {
    let units = room.open.units();
    let of_it = memo(move || {
        found.with(|found| match found {
            Some(Ok(trim)) => moulding.of(trim).to_vec(),
            _ => Vec::new(),
        })
    });
    let cut: Memo<Cut> = memo(move || {
        let known = found.with(|found| matches!(found, Some(Ok(_))));
        part.with(|room| {
            let entry = &room.as_ref()?.trim;
            if !known || !moulding.used(entry) {
                return None;
            }
            Some(
                of_it
                    .with(|pieces| cut_list(entry, pieces))
                    .map(|list| list.map(Arc::new)),
            )
        })
    });
    let problem = derived(move || {
        cut.with(|cut| {
            part.with(|room| {
                let refused = |refusal: &CutRefusal| words::cut_refusal(refusal, units.get());
                said(cut.as_ref()?, room.as_ref(), &refused)
            })
        })
    });
    let list = memo(move || cut.with(|cut| cut.as_ref()?.as_ref().ok()?.clone()));
    let none = memo(move || cut.with(|cut| matches!(cut, Some(Ok(None)))));
    let value = derived(move || {
        list.with(|list| {
            list.as_ref()
                .map_or_else(String::new, |list| list.bars.len().to_string())
        })
    });
    let rests = derived(move || {
        let units = units.get();
        list.with(|list| {
            list.as_ref().map_or_else(String::new, |list| {
                let end = if list.proven {
                    words::proven().to_owned()
                } else {
                    words::bound(length_text(list.least_in, units))
                };
                format!("{} {end}", words::to_buy(list, units))
            })
        })
    });
    let rows = derived(move || {
        let units = units.get();
        list.with(|list| {
            list.as_ref()
                .map_or_else(Vec::new, |list| facts(list, units))
        })
    });
    let steps = derived(move || {
        list.with(|list| list.as_ref().map_or_else(Vec::new, |list| list.working()))
    });
    let lines = move || {
        let units = units.get();
        of_it.with(|pieces| {
            pieces
                .iter()
                .map(|piece| view! { <li>{line(piece, units)}</li> })
                .collect_view()
        })
    };
    view! {
        <When when=move || cut.read().is_some()>
            <section class="sheet">
                <h2>{words::moulding(moulding)}</h2>
                <Missing text=problem room />
                <When when=move || none.get()>
                    <p>{words::no_pieces()}</p>
                </When>
                <When when=move || list.read().is_some()>
                    <div class="answer" role="status">
                        <Figure value unit=Signal::stored(words::sticks_word().to_owned()) />
                        <RestsOn text=rests />
                    </div>
                    <figure class="picture">
                        <Bars list units />
                        <figcaption>{words::picture_caption()}</figcaption>
                    </figure>
                    <Facts rows />
                    <h3>{words::pieces_heading()}</h3>
                    <ul class="rows">{draw(lines)}</ul>
                    <Working steps units />
                </When>
            </section>
        </When>
    }
}

fn line(piece: &Piece, units: Units) -> String {
    words::piece(
        words::part(piece.part),
        piece.wall + 1,
        length_text(piece.length_in, units),
    )
}

fn facts(list: &CutList, units: Units) -> Vec<(String, String)> {
    let text = |length_in: f64| length_text(length_in, units);
    vec![
        (words::row_stock().to_owned(), text(list.stock_in)),
        (words::row_waste().to_owned(), text(list.left_in)),
        (words::row_first().to_owned(), text(list.first_fit_in)),
    ]
}

#[component]
fn What(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    let ask = move |key: &'static str, words: &'static str, at: At<bool>| {
        yes(room, key, label(words), shared::yes(), shared::no(), at)
    };
    view! {
        <section class="sheet">
            <h2>{words::what_heading()}</h2>
            {ask("cut-base", words::cut_base(), at!(room id; trim.base))}
            {ask("cut-shoe", words::cut_shoe(), at!(room id; trim.shoe))}
            {ask("cut-casing", words::cut_casing(), at!(room id; trim.casing))}
            {need(room, "casing-width", words::casing_label(), fields::CASING, at!(room id; trim.casing_width))}
            {number(
                room.open,
                "reveal",
                label(words::reveal_label()),
                fields::SMALL_LENGTH,
                Shown::hint(words::reveal_hint()),
                at!(room id; trim.reveal),
            )}
            {number(
                room.open,
                "extra",
                label(words::extra_label()),
                fields::TILE_JOINT,
                Shown::hint(words::extra_hint()),
                at!(room id; trim.extra),
            )}
        </section>
    }
}

#[component]
fn Stock(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    let ask = move |feet: u32, at: At<bool>| {
        yes(
            room,
            format!("stock-{feet}"),
            derived(move || words::stock_label(feet)),
            shared::yes(),
            shared::no(),
            // A length is on sale unless it is said not to be.
            at.turned(),
        )
    };
    view! {
        <section class="sheet">
            <h2>{words::stock_heading()}</h2>
            {pair(ask(8, at!(room id; trim.no_8_ft)), ask(10, at!(room id; trim.no_10_ft)))}
            {pair(ask(12, at!(room id; trim.no_12_ft)), ask(14, at!(room id; trim.no_14_ft)))}
            {ask(16, at!(room id; trim.no_16_ft))}
            {may(room, "splice-at", words::splice_label(), words::splice_hint(), fields::SPLICE, at!(room id; trim.splice_at))}
            {need(room, "trim-kerf", words::kerf_label(), fields::SMALL_LENGTH, at!(room id; trim.kerf))}
        </section>
    }
}
