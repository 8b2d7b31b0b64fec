//! What the screens of closing up share: their walls, and what stands where there is no answer.

use calc::job::fields::{self, Field};
use calc::job::questions::finish::{FinishProblem, WallsProblem};
use calc::job::{BuiltInEntry, Room, Typed, WindowEntry};
use leptos::prelude::*;

use super::job_fields::{At, at, choice, number, pick, yes_no};
use super::sum_fields::{Shown, label};
use crate::entry::ChoiceOption;
use crate::markup::{For, view};
use crate::open_job::OpenRoom;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, memo};
use crate::words::{closing as words, common};
use crate::work::{Work, closing_part};

/// Fields side by side.
pub fn pair(one: AnyView, other: AnyView) -> AnyView {
    view! { <div class="pair level">{one}{other}</div> }.into_any()
}

/// A measured field of a room that must be there.
pub fn need(
    room: OpenRoom,
    id: impl Into<String>,
    words: &'static str,
    field: Field,
    at: At<Typed>,
) -> AnyView {
    number(room.open, id, label(words), field, Shown::default(), at)
}

/// One that the whole question may refuse too.
pub fn need_also(
    room: OpenRoom,
    id: impl Into<String>,
    words: &'static str,
    field: Field,
    also: Signal<Option<String>>,
    at: At<Typed>,
) -> AnyView {
    number(room.open, id, label(words), field, Shown::also(also), at)
}

/// One that may stay empty.
pub fn may(
    room: OpenRoom,
    id: impl Into<String>,
    words: &'static str,
    hint: &'static str,
    field: Field,
    at: At<Typed>,
) -> AnyView {
    let shown = Shown::optional(hint);
    number(room.open, id, label(words), field, shown, at)
}

/// Yes or no.
pub fn yes(
    room: OpenRoom,
    id: impl Into<String>,
    words: Signal<String>,
    yes: &'static str,
    no: &'static str,
    at: At<bool>,
) -> AnyView {
    let options = vec![ChoiceOption::new("yes", yes), ChoiceOption::new("no", no)];
    choice(room.open, id, words, "", options, yes_no(at))
}

/// What keeps an answer from being there; nothing where it is.
#[component]
pub fn Missing(
    /// What is said; none: nothing.
    #[prop(into)]
    text: Signal<Option<String>>,
    room: OpenRoom,
) -> impl IntoView {
    let work = Work::of(room);
    let to_room = paths::stage(&room.open.id(), room.id, Stage::Room);
    let no_room = memo(move || !room.open.is_loose() && work.shape.read().is_err());
    view! {
        <div role="status">
            <When when=move || text.read().is_some()>
                <div class="notice">
                    <p>{derived(move || text.get().unwrap_or_default())}</p>
                    <p hidden=move || !no_room.get()>
                        <a class="button" href=to_room.clone()>{words::to_room()}</a>
                    </p>
                </div>
            </When>
        </div>
    }
}

/// What is said of a problem; nothing for an answer.
pub fn said<T, R>(
    answer: &Result<T, FinishProblem<R>>,
    room: Option<&Room>,
    refused: &dyn Fn(&R) -> String,
) -> Option<String> {
    match (answer, room) {
        (Err(problem), Some(room)) => Some(words::problem(problem, room, refused)),
        _ => None,
    }
}

/// A button that takes a row out.
fn take_out(name: Signal<String>, take: Callback<()>) -> AnyView {
    view! {
        <button type="button" class="button look plain" on:click=move |_| take.run(())>
            {common::take_out()}
            <span class="visually-hidden">" "{name}</span>
        </button>
    }
    .into_any()
}

/// Rows that are added and taken out, each with its form.
pub fn rows(
    ids: Memo<Vec<u32>>,
    name: fn(usize) -> String,
    form: impl Fn(u32) -> AnyView + Clone + Send + Sync + 'static,
    take: Callback<u32>,
    add: (&'static str, Callback<()>),
) -> AnyView {
    let (add_words, add) = add;
    view! {
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>
                <li class="stack-tight">
                    <h3>{super::sum_fields::numbered(ids, id, name)}</h3>
                    {form(id)}
                    {take_out(super::sum_fields::numbered(ids, id, name), Callback::new(move |()| take.run(id)))}
                </li>
            </For>
        </ul>
        <button type="button" class="button add" on:click=move |_| add.run(())>{add_words}</button>
    }
    .into_any()
}

/// The walls of a room to pick from, by their numbers from 1.
pub fn wall_options(room: OpenRoom) -> Signal<Vec<ChoiceOption>> {
    let work = Work::of(room);
    derived(move || {
        let count = work.outline().map_or(0, |outline| outline.walls().count());
        (0..count)
            .map(|wall| ChoiceOption::new(wall.to_string(), words::wall_number(wall + 1)))
            .collect()
    })
}

/// The place of a row's wall, by its number.
pub fn wall_code(at: At<u32>) -> At<String> {
    at.coded(
        |wall| wall.to_string(),
        |code| code.parse().unwrap_or_default(),
    )
}

/// The walls above the floor: heights, windows, what stands along them.
#[component]
pub fn Walls(
    room: OpenRoom,
    /// Their height is asked for.
    with_height: bool,
    /// Built-ins are asked for.
    with_built_ins: bool,
) -> impl IntoView {
    let id = room.id;
    let windows = room.part(|r| r.walls.windows.iter().map(|row| row.id).collect::<Vec<_>>());
    let built_ins = room.part(|r| {
        r.walls
            .built_ins
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let walls = wall_options(room);
    let part = closing_part(room);
    let misfit = memo(move || {
        part.with(|room| {
            match calc::job::questions::finish::walls::walls::<()>(room.as_ref()?, with_height) {
                Err(FinishProblem::Walls(what)) => Some(what),
                _ => None,
            }
        })
    });
    // What does not fit is said at the field that it is of.
    let beside = move |of: WallsProblem| {
        derived(move || {
            let what = misfit.get().filter(|what| *what == of)?;
            part.with(|room| Some(words::walls_problem(what, room.as_ref()?)))
        })
    };
    let window = move |row: u32| {
        view! {
            {pick(
                room.open,
                format!("window-{row}-wall"),
                label(words::wall_label()),
                walls,
                wall_code(at!(room id, walls.windows[row]; wall)),
            )}
            {pair(
                need(room, format!("window-{row}-from"), words::from_start(), fields::ALONG, at!(room id, walls.windows[row]; from_start)),
                need(room, format!("window-{row}-sill"), words::sill(), fields::SILL, at!(room id, walls.windows[row]; sill)),
            )}
            {pair(
                need_also(room, format!("window-{row}-width"), words::width(), fields::OPENING_HEIGHT, beside(WallsProblem::WindowOutside(row)), at!(room id, walls.windows[row]; width)),
                need(room, format!("window-{row}-height"), words::height(), fields::OPENING_HEIGHT, at!(room id, walls.windows[row]; height)),
            )}
        }
        .into_any()
    };
    let built_in = move |row: u32| {
        view! {
            {pick(
                room.open,
                format!("built-in-{row}-wall"),
                label(words::wall_label()),
                walls,
                wall_code(at!(room id, walls.built_ins[row]; wall)),
            )}
            {pair(
                need(room, format!("built-in-{row}-from"), words::from_start(), fields::ALONG, at!(room id, walls.built_ins[row]; from_start)),
                need_also(room, format!("built-in-{row}-width"), words::width(), fields::OPENING_WIDTH, beside(WallsProblem::BuiltInOutside(row)), at!(room id, walls.built_ins[row]; width)),
            )}
            {yes(
                room,
                format!("built-in-{row}-strip"),
                label(words::toe_strip()),
                words::yes(),
                words::no(),
                at!(room id, walls.built_ins[row]; own_toe_strip),
            )}
        }
        .into_any()
    };
    let height = with_height.then(|| {
        need(
            room,
            "wall-height",
            words::wall_height(),
            fields::WALL_HEIGHT,
            at!(room id; walls.height),
        )
    });
    let along = with_built_ins.then(|| {
        view! {
            <h3>{words::built_ins()}</h3>
            {rows(
                built_ins,
                words::built_in,
                built_in,
                Callback::new(move |row| room.change(|r| r.walls.built_ins.retain(|of| of.id != row))),
                (words::add_built_in(), Callback::new(move |()| room.change_with_id(|r, id| r.walls.built_ins.push(BuiltInEntry::new(id))))),
            )}
        }
    });
    view! {
        <section class="sheet">
            <h2>{words::walls_heading()}</h2>
            <p class="quiet">{words::walls_hint()}</p>
            {height}
            {need_also(room, "door-height", words::door_height(), fields::OPENING_HEIGHT, beside(WallsProblem::DoorHigherThanWall), at!(room id; walls.door_height))}
            <h3>{words::windows()}</h3>
            {rows(
                windows,
                words::window,
                window,
                Callback::new(move |row| room.change(|r| r.walls.windows.retain(|of| of.id != row))),
                (words::add_window(), Callback::new(move |()| room.change_with_id(|r, id| r.walls.windows.push(WindowEntry::new(id))))),
            )}
            {along}
        </section>
    }
}
