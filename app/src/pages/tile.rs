//! Tile: what is laid and how, the tiles to buy, the floor from above, the rules, the bed.

mod answer;

mod bed;

mod rules;

use calc::finish::tile::TileRefusal;
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::finish::tile::ask;
use calc::job::{ObstacleEntry, Room, TilePattern, TileStart, Units, fields};
use leptos::prelude::*;

use super::closing::{may, need, need_also, pair, rows, yes};
use super::job_fields::{at, choice, code_at, pick};
use super::sum_fields::label;
use crate::answer::Cautions;
use crate::entry::ChoiceOption;
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::pictures::length_text;
use crate::reactive::{When, derived};
use crate::shell::PageHeading;
use crate::tiling::Tiling;
use crate::words::closing::{self as shared, tile as words};

use answer::Answer;
use bed::Bed;
use rules::Rules;

/// The tile stage.
#[component]
pub fn TilePage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let name = room.part(|r| r.name.clone());
    view! {
        <PageHeading text=derived(move || words::heading(&super::jobs::shown_room(&name.get()))) />
        <TileParts room />
    }
}

/// What the stage and the quick sum are made of.
#[component]
pub fn TileParts(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let tiling = Tiling::of(room);
    let cautions = vec![
        shared::caution_dust().to_owned(),
        shared::caution_asbestos().to_owned(),
    ];
    view! {
        <TileForm tiling />
        <Answer tiling />
        <Rules tiling />
        <Bed tiling />
        <Obstacles room />
        <Cutting room />
        <Cautions lines=Signal::stored(cautions) />
    }
}

/// The tile's line on the job's page.
pub fn tile_line(room: &Room, units: Units) -> String {
    match ask(room) {
        Ok(ask) => words::line(
            words::size(
                length_text(ask.width_in, units),
                length_text(ask.height_in, units),
            ),
            words::pattern(room.tile.pattern),
        ),
        Err(_) => words::open().to_owned(),
    }
}

const PATTERNS: [TilePattern; 7] = [
    TilePattern::Straight,
    TilePattern::Half,
    TilePattern::Third,
    TilePattern::Offset,
    TilePattern::Diagonal,
    TilePattern::Herringbone,
    TilePattern::HerringboneDiagonal,
];

const STARTS: [TileStart; 4] = [
    TileStart::Corner,
    TileStart::Tile,
    TileStart::Joint,
    TileStart::Best,
];

#[component]
fn TileForm(tiling: Tiling) -> impl IntoView {
    let room = tiling.room;
    let id = room.id;
    let larger = derived(move || {
        tiling.laid.with(|laid| match laid {
            Some(Err(FinishProblem::Refused(of @ TileRefusal::LargerThanRoom { .. }))) => {
                Some(words::refusal(of, room.open.units().get()))
            }
            _ => None,
        })
    });
    let pattern = room.part(|r| r.tile.pattern);
    let start = room.part(|r| r.tile.start);
    let patterns: Vec<ChoiceOption> = PATTERNS
        .into_iter()
        .map(|of| ChoiceOption::new(of.code(), words::pattern(of)))
        .collect();
    let starts = STARTS
        .into_iter()
        .map(|of| ChoiceOption::new(of.code(), words::start(of)))
        .collect();
    let offset = move || {
        need(
            room,
            "tile-offset",
            words::offset_label(),
            fields::DROP_PERCENT,
            at!(room id; tile.offset),
        )
    };
    let least = move || {
        need(
            room,
            "least-share",
            words::least_label(),
            fields::ALLOWANCE,
            at!(room id; tile.least_share),
        )
    };
    view! {
        <section class="sheet">
            <h2>{words::the_tile()}</h2>
            <p class="quiet">{words::measured_hint()}</p>
            {pair(
                need_also(room, "tile-width", words::width_label(), fields::TILE_SIDE, larger, at!(room id; tile.width)),
                need_also(room, "tile-height", words::height_label(), fields::TILE_SIDE, larger, at!(room id; tile.height)),
            )}
            {pair(
                need(room, "tile-joint", words::joint_label(), fields::TILE_JOINT, at!(room id; tile.joint)),
                need(room, "edge-gap", words::gap_label(), fields::TILE_JOINT, at!(room id; tile.edge_gap)),
            )}
            <p class="quiet">{words::gap_hint()}</p>
            {pick(
                room.open,
                "tile-pattern",
                label(words::pattern_label()),
                Signal::stored(patterns),
                code_at!(TilePattern::code; room id; tile.pattern),
            )}
            <When when=move || pattern.get() == TilePattern::Offset>{offset()}</When>
            {choice(
                room.open,
                "tile-start",
                label(words::start_label()),
                "",
                starts,
                code_at!(TileStart::code; room id; tile.start),
            )}
            <When when=move || start.get() == TileStart::Best>{least()}</When>
        </section>
    }
}

#[component]
fn Obstacles(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    let ids = room.part(|r| {
        r.tile
            .obstacles
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let form = move |row: u32| {
        view! {
            {pair(
                need(room, format!("obstacle-{row}-x"), words::x_label(), fields::COORDINATE, at!(room id, tile.obstacles[row]; x)),
                need(room, format!("obstacle-{row}-y"), words::y_label(), fields::COORDINATE, at!(room id, tile.obstacles[row]; y)),
            )}
            {pair(
                need(room, format!("obstacle-{row}-width"), words::x_size(), fields::OPENING_WIDTH, at!(room id, tile.obstacles[row]; width)),
                need(room, format!("obstacle-{row}-length"), words::y_size(), fields::OPENING_WIDTH, at!(room id, tile.obstacles[row]; length)),
            )}
        }
        .into_any()
    };
    view! {
        <section class="sheet">
            <h2>{words::obstacles()}</h2>
            <p class="quiet">{words::obstacles_hint()}</p>
            {rows(
                ids,
                words::obstacle,
                form,
                Callback::new(move |row| room.change(|r| r.tile.obstacles.retain(|of| of.id != row))),
                (words::add_obstacle(), Callback::new(move |()| room.change_with_id(|r, id| r.tile.obstacles.push(ObstacleEntry::new(id))))),
            )}
        </section>
    }
}

#[component]
fn Cutting(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    view! {
        <section class="sheet">
            <h2>{words::buying()}</h2>
            {pair(
                may(room, "per-box", words::box_label(), "", fields::PER_BOX, at!(room id; tile.per_box)),
                need(room, "tile-allowance", words::allowance_label(), fields::ALLOWANCE, at!(room id; tile.allowance_percent)),
            )}
            {need(room, "tile-kerf", words::kerf_label(), fields::TILE_JOINT, at!(room id; tile.kerf))}
            {yes(
                room,
                "one-way",
                label(words::may_turn()),
                words::turn_no(),
                words::turn_yes(),
                at!(room id; tile.one_way),
            )}
        </section>
    }
}
