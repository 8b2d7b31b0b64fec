//! Quick sum: joint compound, tape and corner bead for so much board.

use std::sync::Arc;

use calc::job::{Job, Room, Units, fields};
use leptos::prelude::*;

use super::board::CompoundAnswer;
use super::closing::{pair, said};
use super::sum_fields::{Shown, field, label, typed};
use super::sums::{KeepIntoJob, OpenSums, SumFoot};
use crate::answer::Cautions;
use crate::markup::view;
use crate::paths::Stage;
use crate::reactive::{derived, memo, say};
use crate::shell::PageHeading;
use crate::words::closing::{self as shared, compound as words};

/// Joint compound and tape.
#[component]
pub fn SumCompoundPage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let entry = open.part(|sums| sums.compound.clone());
    let found = memo(move || entry.with(|entry| entry.answer().map(Arc::new)));
    let answer = memo(move || found.with(|found| found.as_ref().ok().cloned()));
    let nowhere = Room::new(0, "", Units::FeetInches);
    let problem = derived(move || found.with(|found| said(found, Some(&nowhere), &words::refusal)));
    let need = move |id: &'static str, words: &'static str, of: fields::Field, spot| {
        field(open, id, label(words), of, Shown::default(), spot)
    };
    let put = Callback::new(move |(mut job, room): (Job, u32)| {
        if let Some(room) = job.room_mut(room) {
            entry.with_untracked(|sum| sum.keep(room));
        }
        job
    });
    let cautions = vec![
        words::caution_sand().to_owned(),
        shared::caution_asbestos().to_owned(),
    ];
    view! {
        <PageHeading text=label(words::title()) />
        {need("board", words::board_label(), fields::FLOOR_AREA, typed!(compound.board))}
        {field(
            open,
            "taped",
            label(words::taped_label()),
            fields::RUN,
            Shown::optional(words::taped_hint()),
            typed!(compound.taped),
        )}
        {pair(
            field(open, "corners", label(words::corners_label()), fields::FIXTURES, Shown::optional(""), typed!(compound.corners)),
            need("corner", words::corner_label(), fields::WALL_HEIGHT, typed!(compound.corner)),
        )}
        {field(
            open,
            "level",
            label(words::level_label()),
            fields::LEVEL,
            Shown::hint(words::level_hint()),
            typed!(compound.level),
        )}
        {pair(
            need("pail", words::pail_label(), fields::PAIL, typed!(compound.pail)),
            need("tape-allowance", words::tape_label(), fields::ALLOWANCE, typed!(compound.tape_allowance)),
        )}
        <p class="quiet" role="status">{say(move || problem.get())}</p>
        <section class="sheet">
            <CompoundAnswer answer units />
        </section>
        <Cautions lines=Signal::stored(cautions) />
        <KeepIntoJob units hint=words::keep_hint() stage=Stage::Board put />
        <SumFoot open />
    }
}
