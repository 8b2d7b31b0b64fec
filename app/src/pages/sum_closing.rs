//! Quick sums of closing up: each stage's own parts over a room that belongs to no job. What is typed is kept.

use calc::job::{Job, Opening, Units, fields};
use leptos::prelude::*;

use super::air::AirParts;
use super::board::BoardParts;
use super::closing::{need, need_also, pair, rows, wall_code, wall_options};
use super::job_fields::{at, pick};
use super::paint::PaintParts;
use super::sum_fields::label;
use super::sums::KeepIntoJob;
use super::tile::TileParts;
use super::trim::TrimParts;
use crate::desk::Desk;
use crate::entry::{Choice, ChoiceOption};
use crate::markup::view;
use crate::open_job::{OpenJob, OpenRoom};
use crate::paths::{self, Stage};
use crate::reactive::{derived, say};
use crate::shell::{PageHeading, stage_word};
use crate::words::closing as words;
use crate::words::{common, jobs as job_words, sums};
use crate::work::Work;

/// A stage of closing up without a job.
#[component]
pub fn SumClosingPage(
    /// Which.
    stage: Stage,
) -> impl IntoView {
    let open = OpenJob::loose(expect_context::<Desk>());
    let room = open.shown_room();
    let units = open.units();
    let parts = match stage {
        Stage::Tile => view! { <TileParts room /> }.into_any(),
        Stage::Board => view! { <BoardParts room /> }.into_any(),
        Stage::Paint => view! { <PaintParts room /> }.into_any(),
        Stage::Trim => view! { <TrimParts room /> }.into_any(),
        _ => view! { <AirParts room /> }.into_any(),
    };
    let put = Callback::new(move |(mut job, to): (Job, u32)| {
        open.job.with_untracked(|from| {
            if let Some(from) = from.room(room.id) {
                job.take_closing(to, from, &|mine, theirs| match stage {
                    Stage::Tile => mine.tile = theirs.tile.clone(),
                    Stage::Board => mine.board = theirs.board.clone(),
                    Stage::Paint => mine.paint = theirs.paint.clone(),
                    Stage::Trim => mine.trim = theirs.trim.clone(),
                    _ => mine.air = theirs.air.clone(),
                });
            }
        });
        job
    });
    let kept = move || {
        let unsaved = *open.state.read() != crate::open_job::SaveState::Saved;
        if unsaved { sums::not_kept() } else { "" }
    };
    view! {
        <PageHeading text=label(stage_word(stage)) />
        <Sizes room doorways=stage != Stage::Air />
        {parts}
        <KeepIntoJob units hint=words::keep_hint() stage put />
        <p class="look" role="status">{say(kept)}</p>
        <Choice
            id="sum-units".to_owned()
            label=label(job_words::units_label())
            options=Signal::stored(
                vec![
                    ChoiceOption::new("feet_inches", common::feet_inches()),
                    ChoiceOption::new("metric", common::metric()),
                ],
            )
            value=derived(move || {
                if units.get() == Units::Metric { "metric" } else { "feet_inches" }.to_owned()
            })
            on_pick=Callback::new(move |code: String| {
                open.change(|job| job.units = if code == "metric" { Units::Metric } else { Units::FeetInches });
            })
        />
        <a class="button" href=paths::SUMS>{sums::all()}</a>
    }
}

/// The room in short: a rectangle and its doorways.
#[component]
fn Sizes(room: OpenRoom, doorways: bool) -> impl IntoView {
    let id = room.id;
    let ids = room.part(|r| r.openings.iter().map(|row| row.id).collect::<Vec<_>>());
    let walls = wall_options(room);
    let work = Work::of(room);
    let units = room.open.units();
    let beside = move |row: u32| {
        derived(move || {
            work.openings
                .with(|(_, troubles)| super::room::misplaced(troubles, row, units.get()))
        })
    };
    let form = move |row: u32| {
        view! {
            {pick(
                room.open,
                format!("door-{row}-wall"),
                label(words::wall_label()),
                walls,
                wall_code(at!(room id, openings[row]; wall)),
            )}
            {pair(
                need(room, format!("door-{row}-from"), words::from_start(), fields::ALONG, at!(room id, openings[row]; from_start)),
                need_also(room, format!("door-{row}-width"), words::width(), fields::OPENING_WIDTH, beside(row), at!(room id, openings[row]; width)),
            )}
        }
        .into_any()
    };
    let doorways = doorways.then(|| {
        view! {
            <h3>{words::doorways()}</h3>
            {rows(
                ids,
                words::doorway,
                form,
                Callback::new(move |row| room.change(|r| r.openings.retain(|of| of.id != row))),
                (words::add_doorway(), Callback::new(move |()| room.change_with_id(|r, id| r.openings.push(Opening::new(id))))),
            )}
        }
    });
    view! {
        <section class="sheet">
            <h2>{words::room_heading()}</h2>
            {pair(
                need(room, "room-width", words::room_width(), fields::SIDE, at!(room id; outline.width)),
                need(room, "room-length", words::room_length(), fields::SIDE, at!(room id; outline.length)),
            )}
            <p class="quiet">{words::room_hint()}</p>
            {doorways}
        </section>
    }
}
