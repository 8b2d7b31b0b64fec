//! What closes the joints of board: the level, compound, tape, bead.

use std::sync::Arc;

use calc::finish::compound::{Compound, CompoundRefusal};
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::finish::board::closing;
use calc::job::{Units, fields};
use calc::quantity::fixed;
use calc::supply::unit::Dimension;
use leptos::prelude::*;

use super::answer::Boarding;
use crate::answer::{Facts, RestsOn, Working};
use crate::markup::view;
use crate::pages::closing::{Missing, need, pair, said};
use crate::pages::job_fields::{at, number};
use crate::pages::sum_fields::{Shown, label};
use crate::pictures::{Figure, length_text};
use crate::reactive::{When, derived, memo};
use crate::words::closing::compound as words;
use crate::words::supply::measured;

/// What it takes, or why that is not known; nothing without a layout.
type Found = Option<Result<Arc<Compound>, FinishProblem<CompoundRefusal>>>;

#[component]
pub fn Joints(boarding: Boarding) -> impl IntoView {
    let room = boarding.room;
    let id = room.id;
    let units = room.open.units();
    let found: Memo<Found> = memo(move || {
        let plan = boarding.plan()?;
        boarding.part.with(|room| {
            let room = room.as_ref()?;
            Some(closing(&room.board, &plan).map(Arc::new))
        })
    });
    let problem = derived(move || {
        found.with(|found| {
            boarding
                .part
                .with(|room| said(found.as_ref()?, room.as_ref(), &words::refusal))
        })
    });
    let answer = memo(move || found.with(|found| found.as_ref()?.as_ref().ok().cloned()));
    view! {
        <section class="sheet">
            <h2>{words::heading()}</h2>
            <Missing text=problem room />
            <CompoundAnswer answer units />
            {number(
                room.open,
                "level",
                label(words::level_label()),
                fields::LEVEL,
                Shown::hint(words::level_hint()),
                at!(room id; board.level),
            )}
            {pair(
                need(room, "pail", words::pail_label(), fields::PAIL, at!(room id; board.pail)),
                need(room, "tape-allowance", words::tape_label(), fields::ALLOWANCE, at!(room id; board.tape_allowance)),
            )}
        </section>
    }
}

/// Compound, tape and bead.
#[component]
pub fn CompoundAnswer(
    /// The answer; none: nothing is shown.
    answer: Memo<Option<Arc<Compound>>>,
    /// The units in force.
    #[prop(into)]
    units: Signal<Units>,
) -> impl IntoView {
    let of = move |text: fn(&Compound, Units) -> String| {
        derived(move || {
            let units = units.get();
            answer.with(|answer| {
                answer
                    .as_ref()
                    .map_or_else(String::new, |of| text(of, units))
            })
        })
    };
    let value = of(|of, units| words::gallons(&of.compound_gal, units));
    let rests = of(|of, _| {
        if of.level.taped {
            words::rests(words::pails_of(of.pails))
        } else {
            words::none_at_level().to_owned()
        }
    });
    let rows = derived(move || {
        let units = units.get();
        answer.with(|answer| answer.as_ref().map_or_else(Vec::new, |of| facts(of, units)))
    });
    let steps = derived(move || {
        answer.with(|answer| answer.as_ref().map_or_else(Vec::new, |of| of.working()))
    });
    view! {
        <When when=move || answer.read().is_some()>
            <div class="answer" role="status">
                <p class="figure-name">{words::title()}</p>
                <Figure value small=true />
                <RestsOn text=rests />
            </div>
            <Facts rows />
            <Working steps units />
        </When>
    }
}

fn facts(of: &Compound, units: Units) -> Vec<(String, String)> {
    let feet = |ft: f64| length_text(ft * 12.0, units);
    // Rules of thumb are no finer than a foot.
    let about = |ft: f64| measured(ft.round(), Dimension::Length, units);
    let level = &of.level;
    let mut rows = vec![(
        words::row_surface(),
        words::surface(level.surface).to_owned(),
    )];
    rows.push((
        words::row_use(),
        words::usual_use(level.usual_use).to_owned(),
    ));
    if level.taped {
        rows.push((words::row_coats(), level.joint_coats.to_string()));
        if of.tape_ft > 0.0 {
            rows.push((words::row_tape(), feet(of.tape_ft)));
        }
        let by_area = &of.tape_by_area_ft;
        rows.push((
            words::row_tape_area(),
            words::between(about(by_area.low), about(by_area.high)),
        ));
    }
    if level.skim {
        rows.push((words::row_skim(), words::gallons(&of.skim_gal, units)));
    }
    if let Some(bead) = &of.bead {
        let sticks: Vec<String> = bead
            .buy
            .iter()
            .map(|stick| words::bead_of(stick.count, length_text(stick.stock_in, units)))
            .collect();
        rows.push((words::row_bead(), sticks.join(", ")));
        let [few, many] = of.bead_fasteners;
        let text = words::between(few.to_string(), many.to_string());
        rows.push((words::row_fasteners(), text));
    }
    rows.push((
        words::row_screws_area(),
        words::between(
            fixed(of.screws_by_area.low, 0),
            fixed(of.screws_by_area.high, 0),
        ),
    ));
    rows.into_iter()
        .map(|(name, text)| (name.to_owned(), text))
        .collect()
}
