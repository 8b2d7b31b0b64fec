//! The sheets to buy, the walls with their pieces, what is cut from each sheet.

use std::sync::Arc;

use calc::finish::board::{BoardPlan, BoardRefusal, SurfaceKind};
use calc::job::questions::finish::FinishProblem;
use calc::job::questions::finish::board::plan;
use calc::job::{Room, Units};
use calc::quantity::fixed;
use leptos::prelude::*;

use super::board_begun;
use crate::answer::{Facts, RestsOn, Working};
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::pages::closing::{Missing, said};
use crate::pictures::{Figure, board_picture, length_text};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::closing::{self as shared, board as words};
use crate::work::closing_part;

/// The layout, or why there is none; nothing where no board was asked for.
type Found = Option<Result<Arc<BoardPlan>, FinishProblem<BoardRefusal>>>;

/// The board of a room and its answer.
#[derive(Clone, Copy)]
pub struct Boarding {
    /// The room.
    pub room: OpenRoom,
    /// The part of it that closing up rests on.
    pub part: Memo<Option<Room>>,
    found: Memo<Found>,
}

impl Boarding {
    /// The board of a room; follows its entries.
    pub fn of(room: OpenRoom) -> Self {
        let part = closing_part(room);
        let found = memo(move || {
            part.with(|room| {
                let room = room.as_ref().filter(|room| board_begun(room))?;
                Some(plan(room).map(Arc::new))
            })
        });
        Self { room, part, found }
    }

    /// What is said of a patch that is refused, by its row.
    pub fn patch_refused(self, row: u32) -> Signal<Option<String>> {
        let units = self.room.open.units();
        derived(move || {
            self.found.with(|found| {
                let Some(Err(FinishProblem::Refused(of))) = found else {
                    return None;
                };
                let BoardRefusal::PatchLarger { patch, .. } = of else {
                    return None;
                };
                let at = self.part.with(|room| {
                    let rows = &room.as_ref()?.board.patches;
                    rows.iter().position(|of| of.id == row)
                });
                (at == Some(*patch)).then(|| words::refusal(of, units.get()))
            })
        })
    }

    /// The layout, where there is one.
    pub fn plan(self) -> Option<Arc<BoardPlan>> {
        self.found.with(|found| {
            found
                .as_ref()
                .and_then(|found| found.as_ref().ok().cloned())
        })
    }
}

#[component]
pub fn Answer(boarding: Boarding) -> impl IntoView {
    let units = boarding.room.open.units();
    let problem = derived(move || {
        boarding.found.with(|found| {
            boarding.part.with(|room| {
                let refused = |refusal: &BoardRefusal| words::refusal(refusal, units.get());
                said(found.as_ref()?, room.as_ref(), &refused)
            })
        })
    });
    let none = memo(move || boarding.found.read().is_none());
    let there = memo(move || boarding.plan().is_some());
    view! {
        <When when=move || none.get()>
            <p class="notice">{words::nothing()}</p>
        </When>
        <Missing text=problem room=boarding.room />
        <When when=move || there.get()>
            <Laid boarding />
        </When>
    }
}

#[component]
fn Laid(boarding: Boarding) -> impl IntoView {
    let units = boarding.room.open.units();
    let plan = move || boarding.plan();
    let value =
        derived(move || plan().map_or_else(String::new, |plan| plan.sheet_count.to_string()));
    let unit = derived(move || {
        let one = plan().is_some_and(|plan| plan.sheet_count == 1);
        if one {
            words::one_sheet()
        } else {
            words::sheets_word()
        }
        .to_owned()
    });
    let rests = derived(move || {
        plan().map_or_else(String::new, |plan| {
            let least = if plan.fewest_possible == plan.sheet_count {
                words::fewest_known().to_owned()
            } else {
                words::fewest_is(plan.fewest_possible)
            };
            format!("{} {least}", words::to_buy(&plan, units.get()))
        })
    });
    let rows = derived(move || plan().map_or_else(Vec::new, |plan| facts(&plan, units.get())));
    let steps = derived(move || plan().map_or_else(Vec::new, |plan| plan.working()));
    let pictures = move || {
        plan().map(|plan| {
            (0..plan.ask.surfaces.len())
                .map(|at| {
                    view! {
                        <figure class="picture">
                            {board_picture(&plan, at)}
                            <figcaption>{words::surface(&plan, at, units.get())}</figcaption>
                        </figure>
                    }
                })
                .collect_view()
        })
    };
    let sheets = move || {
        plan().map(|plan| {
            cutting(&plan, units.get())
                .into_iter()
                .map(|line| view! { <li>{line}</li> })
                .collect_view()
        })
    };
    let drawn = memo(move || plan().is_some_and(|plan| !plan.ask.surfaces.is_empty()));
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{words::answer_name()}</p>
                <Figure value unit />
                <RestsOn text=rests />
            </div>
            <When when=move || drawn.get()>
                <p class="quiet">{words::picture_caption()}</p>
            </When>
            {draw(pictures)}
            <Facts rows />
            <p class="quiet">{say(words::screws_hint)}</p>
            <details class="on-paper">
                <summary>{words::cutting()}</summary>
                <ul class="rows">{draw(sheets)}</ul>
            </details>
            <Working steps units />
        </section>
    }
}

fn facts(plan: &BoardPlan, units: Units) -> Vec<(String, String)> {
    let feet = |ft: f64| length_text(ft * 12.0, units);
    let mut rows = vec![
        (words::row_covered(), shared::area(plan.covered_ft2, units)),
        (words::row_sheets(), shared::area(plan.sheets_ft2, units)),
        (
            words::row_waste(),
            words::percent(fixed(plan.waste_percent, 1)),
        ),
        (words::row_tapered(), feet(plan.tapered_ft)),
        (words::row_butt(), feet(plan.butt_ft)),
        (words::row_patch(), feet(plan.patch_joints_ft)),
        (words::row_inside(), feet(plan.inside_ft)),
        (words::row_outside(), feet(plan.outside_ft.iter().sum())),
        (words::row_screws(), plan.screws.to_string()),
    ];
    if plan.patches.is_empty() {
        rows.retain(|(name, _)| *name != words::row_patch());
    }
    rows.into_iter()
        .map(|(name, text)| (name.to_owned(), text))
        .collect()
}

/// A line for each sheet: what is cut from it, and for where.
fn cutting(plan: &BoardPlan, units: Units) -> Vec<String> {
    let of_sheet = |sheet: usize| {
        let pieces = plan.pieces.iter().filter(|piece| piece.sheet == sheet);
        let mut parts: Vec<String> = pieces
            .map(|piece| {
                let size = words::sides(piece.width_in, piece.height_in, units);
                let of = plan.ask.surfaces.get(piece.surface).map(|of| of.kind);
                if of == Some(SurfaceKind::Ceiling) {
                    words::on_the_ceiling(size)
                } else {
                    words::on_wall(piece.surface + 1, size)
                }
            })
            .collect();
        let patches = plan.patches.iter().filter(|cut| cut.sheet == sheet);
        parts.extend(patches.filter_map(|cut| {
            let patch = plan.ask.patches.get(cut.patch)?;
            let size = words::sides(patch.width_in, patch.height_in, units);
            Some(words::for_patch(cut.patch + 1, size))
        }));
        parts.join("; ")
    };
    plan.sheets
        .iter()
        .enumerate()
        .map(|(at, size)| words::sheet_line(at + 1, words::sheet_size(size, units), of_sheet(at)))
        .collect()
}
