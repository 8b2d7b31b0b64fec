//! Wall board: what is covered, the sheets to buy, each wall with its pieces, what closes the joints.

mod answer;

mod closing;

use calc::finish::board::LayUp;
use calc::finish::board::kind::BOARD_BY_PLACE;
use calc::finish::board::usual::SHEETS;
use calc::job::questions::finish::board::plan;
use calc::job::{Covered, PatchEntry, Room, fields};
use calc::saved::Coded;
use leptos::prelude::*;

use super::closing::{Walls, need, need_also, pair, rows, yes};
use super::job_fields::{At, at, choice, code_at, pick};
use super::sum_fields::{label, options};
use crate::answer::{Cautions, Facts};
use crate::entry::ChoiceOption;
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::reactive::derived;
use crate::shell::PageHeading;
use crate::words::closing::{self as shared, board as words, compound};

use answer::{Answer, Boarding};
use closing::Joints;

pub use closing::CompoundAnswer;

/// The board stage.
#[component]
pub fn BoardPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let name = room.part(|r| r.name.clone());
    view! {
        <PageHeading text=derived(move || words::heading(&super::jobs::shown_room(&name.get()))) />
        <BoardParts room />
    }
}

/// What the stage and the quick sum are made of.
#[component]
pub fn BoardParts(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let boarding = Boarding::of(room);
    let cautions = vec![
        words::caution_lift().to_owned(),
        words::caution_hidden().to_owned(),
        compound::caution_sand().to_owned(),
        shared::caution_asbestos().to_owned(),
        shared::caution_ladder().to_owned(),
    ];
    let kinds: Vec<(String, String)> = BOARD_BY_PLACE
        .iter()
        .map(|row| {
            let kind = format!("{} ({})", words::kind(row.kind), row.source);
            (words::place(row.place).to_owned(), kind)
        })
        .collect();
    view! {
        <What room />
        <Answer boarding />
        <Joints boarding />
        <Walls room with_height=true with_built_ins=false />
        <Patches boarding />
        <Stock room />
        <section class="sheet">
            <h2>{words::kinds_heading()}</h2>
            <Facts rows=Signal::stored(kinds) />
            <p class="quiet">{words::kinds_note()}</p>
        </section>
        <Cautions lines=Signal::stored(cautions) />
    }
}

/// Whether anything gets board.
pub fn board_begun(room: &Room) -> bool {
    room.board.on != Covered::Nothing || !room.board.patches.is_empty()
}

/// The board's line on the job's page.
pub fn board_line(room: &Room) -> String {
    match plan(room) {
        Ok(plan) if board_begun(room) => words::line(plan.sheet_count),
        _ => words::open().to_owned(),
    }
}

const COVERED: [Covered; 4] = [
    Covered::Nothing,
    Covered::Walls,
    Covered::Ceiling,
    Covered::Both,
];

#[component]
fn What(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    let on = COVERED
        .into_iter()
        .map(|of| ChoiceOption::new(of.code(), words::covered(of)))
        .collect();
    view! {
        <section class="sheet">
            <h2>{words::what_heading()}</h2>
            {choice(room.open, "board-on", label(words::on_label()), "", on, code_at!(Covered::code; room id; board.on))}
            {pick(
                room.open,
                "lay-up",
                label(words::lay_up_label()),
                Signal::stored(options(words::lay_up)),
                code_at!(LayUp::word; room id; board.lay_up),
            )}
            {need(room, "framing", words::framing_label(), fields::FRAMING, at!(room id; board.framing))}
        </section>
    }
}

#[component]
fn Patches(boarding: Boarding) -> impl IntoView {
    let room = boarding.room;
    let id = room.id;
    let ids = room.part(|r| r.board.patches.iter().map(|row| row.id).collect::<Vec<_>>());
    let form = move |row: u32| {
        pair(
            need_also(
                room,
                format!("patch-{row}-width"),
                shared::width(),
                fields::PATCH,
                boarding.patch_refused(row),
                at!(room id, board.patches[row]; width),
            ),
            need(
                room,
                format!("patch-{row}-height"),
                shared::height(),
                fields::PATCH,
                at!(room id, board.patches[row]; height),
            ),
        )
    };
    view! {
        <section class="sheet">
            <h2>{words::patches()}</h2>
            {rows(
                ids,
                words::patch,
                form,
                Callback::new(move |row| room.change(|r| r.board.patches.retain(|of| of.id != row))),
                (words::add_patch(), Callback::new(move |()| room.change_with_id(|r, id| r.board.patches.push(PatchEntry::new(id))))),
            )}
        </section>
    }
}

#[component]
fn Stock(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    let units = room.open.units();
    let ask = move |size: usize, at: At<bool>| {
        let words = derived(move || {
            let size = SHEETS.get(size);
            words::stock_label(
                size.map_or_else(String::new, |of| words::sheet_size(of, units.get())),
            )
        });
        yes(
            room,
            format!("sheets-{size}"),
            words,
            shared::yes(),
            shared::no(),
            at,
        )
    };
    view! {
        <section class="sheet">
            <h2>{words::stock_heading()}</h2>
            // A size is on sale unless it is said not to be; the widest only where it is said.
            {pair(ask(0, at!(room id; board.no_4_by_8).turned()), ask(1, at!(room id; board.no_4_by_10).turned()))}
            {pair(ask(2, at!(room id; board.no_4_by_12).turned()), ask(3, at!(room id; board.with_54_in)))}
        </section>
    }
}
