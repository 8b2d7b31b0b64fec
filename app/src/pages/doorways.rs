//! The doorways: this room's layers, and at each opening the step to the floor beyond and the ramp it takes.

use crate::markup::{For, view};
use std::sync::Arc;

use calc::floor::plane::Plane;
use calc::floor::{Surface, pour};
use calc::job::questions::doorway::{DoorwayAsk, doorways, stack_in};
use calc::job::questions::pour as pour_question;
use calc::job::{OpeningKind, PourChoice, Units};
use leptos::prelude::*;

use crate::answer::Cautions;
use crate::entry::{Choice, ChoiceOption};
use crate::open_job::OpenRoom;
use crate::paths::{self, Stage};
use crate::pictures::thickness_text;
use crate::reactive::{When, derived, memo, say};
use crate::shell::PageHeading;
use crate::words::doorways as words;
use crate::work::{Work, opening_letter};

mod layers;

mod opening;

mod ramp;

pub mod published;

use layers::Layers;
use opening::OpeningSheet;

/// The pour that the steps are looked at with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// The old floor as it is.
    Nothing,
    /// The level pour.
    Level,
    /// The flat pour.
    Flat,
}

/// The tops of both pours; none where one can't be made.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Tops {
    level: Option<Plane>,
    flat: Option<Plane>,
}

/// The doorways stage.
#[component]
pub fn DoorwaysPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let work = Work::of(room);
    let name = room.part(|r| r.name.clone());
    let chosen = room
        .open
        .job
        .with_untracked(|job| job.room(room.id).map(|r| r.pour.choice));
    let with = RwSignal::new(match chosen {
        Some(PourChoice::Level) => Shown::Level,
        Some(PourChoice::Flat) => Shown::Flat,
        Some(PourChoice::Open) | None => Shown::Nothing,
    });
    let tops = tops(room, work);
    let top = memo(move || match with.get() {
        Shown::Nothing => None,
        Shown::Level => tops.read().level,
        Shown::Flat => tops.read().flat,
    });
    let no_such_pour = memo(move || with.get() != Shown::Nothing && top.read().is_none());
    let asked = memo(move || {
        // The steps of a pour that can't be had are not those of no pour.
        if no_such_pour.get() {
            return Vec::new();
        }
        let Some(surface) = work.surface() else {
            return Vec::new();
        };
        room.open.job.with(|job| {
            let Some(room) = job.room(room.id) else {
                return Vec::new();
            };
            work.openings.with(|(placed, _)| {
                work.readings
                    .with(|readings| doorways(room, placed, &surface, readings, top.get().as_ref()))
            })
        })
    });
    let ids = memo(move || {
        work.openings
            .with(|(placed, _)| placed.iter().map(|p| p.id).collect::<Vec<_>>())
    });
    let exterior = room.part(|r| {
        r.openings
            .iter()
            .any(|opening| opening.kind == OpeningKind::Exterior)
    });
    let unplaced = memo(move || {
        let all = room.open.job.with(|job| {
            job.room(room.id)
                .map(|r| r.openings.iter().map(|o| o.id).collect::<Vec<_>>())
                .unwrap_or_default()
        });
        let placed = ids.read();
        let letters = all
            .iter()
            .enumerate()
            .filter(|(_, id)| !placed.contains(id));
        letters
            .map(|(index, _)| opening_letter(index))
            .collect::<Vec<_>>()
            .join(", ")
    });
    let has_floor = memo(move || work.floor.with(|floor| matches!(floor, Some(Ok(_)))));
    let job = room.open.id();
    let link = move |stage: Stage, word: &'static str| {
        view! { <a class="button" href=paths::stage(&job, room.id, stage)>{word}</a> }
    };
    let (to_room, to_room_too, to_survey, to_pour) =
        (link.clone(), link.clone(), link.clone(), link);
    let pours = Signal::stored(vec![
        ChoiceOption::new("nothing", words::view_none()),
        ChoiceOption::new("level", words::view_level()),
        ChoiceOption::new("flat", words::view_flat()),
    ]);
    view! {
        <PageHeading text=derived(move || words::heading(&super::jobs::shown_room(&name.get()))) />
        <When when=move || ids.read().is_empty()>
            <div class="notice">
                <p>{words::none_yet()}</p>
                <div class="row">{to_room.clone()(Stage::Room, words::to_room())}</div>
            </div>
        </When>
        <When when=move || !ids.read().is_empty() && !unplaced.read().is_empty()>
            <div class="notice">
                <p>{say(move || words::unplaced(unplaced.get()))}</p>
                <div class="row">{to_room_too.clone()(Stage::Room, words::to_room())}</div>
            </div>
        </When>
        <When when=move || !has_floor.get() && !ids.read().is_empty()>
            <div class="notice">
                <p>{words::no_floor()}</p>
                <div class="row">{to_survey.clone()(Stage::Survey, words::to_survey())}</div>
            </div>
        </When>
        <section class="sheet">
            <h2>{words::layers_here_heading()}</h2>
            <p class="quiet">{words::layers_here_hint()}</p>
            <Layers room owner=None />
            <Together room />
        </section>
        <When when=move || !ids.read().is_empty()>
            <Choice
                id="look-with".to_owned()
                label=Signal::stored(words::view_label().to_owned())
                hint=Signal::stored(words::view_hint().to_owned())
                options=pours
                value=derived(move || {
                    match with.get() {
                        Shown::Nothing => "nothing",
                        Shown::Level => "level",
                        Shown::Flat => "flat",
                    }
                        .to_owned()
                })
                on_pick=Callback::new(move |code: String| {
                    with.set(match code.as_str() {
                        "level" => Shown::Level,
                        "flat" => Shown::Flat,
                        _ => Shown::Nothing,
                    });
                })
            />
        </When>
        <div role="status">
            <When when=move || no_such_pour.get() && has_floor.get()>
                <div class="notice look">
                    <p>{words::no_such_pour()}</p>
                    <div class="row">{to_pour.clone()(Stage::Pour, words::to_pour())}</div>
                </div>
            </When>
        </div>
        <For each=move || ids.get() key=|id| *id let:id>
            <OpeningSheet
                room
                work
                id
                asked=ask_of(asked, id)
                with=derived(move || if top.read().is_some() { with.get() } else { Shown::Nothing })
            />
        </For>
        <When when=move || !ids.read().is_empty()>
            <Cautions lines=derived(move || cautions(exterior.get())) />
        </When>
        <a class="button wide" href=paths::job(&room.open.id())>{words::to_job()}</a>
    }
}

/// What to watch for at doorways, and at a door to the outside where there is one.
fn cautions(exterior: bool) -> Vec<String> {
    [
        Some(words::cautions_threshold()),
        Some(words::cautions_door()),
        exterior.then(words::cautions_exterior),
        Some(words::cautions_old_floor()),
    ]
    .into_iter()
    .flatten()
    .map(str::to_owned)
    .collect()
}

/// One opening's question.
fn ask_of(asked: Memo<Vec<DoorwayAsk>>, id: u32) -> Memo<Option<DoorwayAsk>> {
    memo(move || asked.with(|all| all.iter().find(|ask| ask.id == id).cloned()))
}

/// The tops of both pours of a room.
fn tops(room: OpenRoom, work: Work) -> Memo<Tops> {
    let ask = memo(move || {
        room.open.job.with(|job| {
            let room = job.room(room.id)?;
            work.openings.with(|(placed, _)| {
                work.readings
                    .with(|readings| pour_question::ask(room, placed, readings).ok())
            })
        })
    });
    memo(move || {
        let surface: Option<Arc<Surface>> = work.surface();
        ask.with(|ask| match (surface, ask) {
            (Some(surface), Some(ask)) => Tops {
                level: pour::level(&surface, ask).ok().map(|pour| pour.plane),
                flat: pour::flat(&surface, ask).ok().map(|pour| pour.plane),
            },
            _ => Tops::default(),
        })
    })
}

/// This room's layers together, where every thickness is known.
#[component]
fn Together(room: OpenRoom) -> impl IntoView {
    let units = room.open.units();
    let stack = room.part(|r| {
        if r.layers.is_empty() {
            None
        } else {
            stack_in(&r.layers).ok()
        }
    });
    let text = move |units: Units| {
        stack
            .get()
            .map(|inches| words::together(thickness_text(inches, units)))
    };
    view! { <p hidden=move || stack.read().is_none()>{say(move || text(units.get()))}</p> }
}
