//! What is doubtful in the readings, and what keeps them from being a floor.

use calc::floor::surface::SurfaceRefusal;
use calc::floor::survey::reading_in;
use calc::job::questions::survey::place_entries;
use leptos::prelude::*;

use super::Walk;
use crate::markup::view;
use crate::pictures::reading_text;
use crate::reactive::{When, memo, say};
use crate::words::survey as words;

/// Readings that disagree with their neighbours.
#[component]
pub(super) fn Again(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let way = walk.room.part(|r| r.survey.way);
    let rows = memo(move || {
        let now = walk.now.get();
        walk.work.readings.with(|r| {
            walk.suspects
                .read()
                .iter()
                .filter_map(|s| {
                    let id = r.id_of(s.index).filter(|&id| Some(id) != now)?;
                    let height_in = r.spots.get(s.index)?.height_in;
                    Some((
                        id,
                        reading_in(way.get(), height_in),
                        reading_in(way.get(), s.expected_in),
                    ))
                })
                .collect::<Vec<_>>()
        })
    });
    view! {
        <When when=move || !rows.read().is_empty()>
            <section class="notice look">
                <h2>{words::again_heading()}</h2>
                {move || {
                    rows.get()
                        .into_iter()
                        .map(|(id, reading, expected)| {
                            let number = walk.number(id);
                            view! {
                                <p>
                                    {words::again(
                                        number,
                                        reading_text(reading, units.get()),
                                        reading_text(expected, units.get()),
                                    )}
                                </p>
                                <div class="row">
                                    <button type="button" class="button" on:click=move |_| walk.go(Some(id))>
                                        {words::go_to_spot(number)}
                                    </button>
                                    <button type="button" class="button" on:click=move |_| walk.checked(id)>
                                        {words::checked_spot(number)}
                                    </button>
                                </div>
                            }
                        })
                        .collect_view()
                }}
                <p class="quiet">{words::again_kept()}</p>
            </section>
        </When>
    }
}

/// What keeps the spots from being a floor.
#[component]
pub(super) fn Trouble(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let words = memo(move || {
        let problems = walk.work.readings.with(|r| r.problems.len());
        // A walk under way has its spots in one line for a while.
        let under_way = walk.work.readings.with(|r| r.unread() > 0);
        let refusal = walk.work.floor.with(|floor| match floor {
            Some(Err(SurfaceRefusal::OneLine { .. } | SurfaceRefusal::TooFew { .. }))
                if under_way =>
            {
                None
            }
            Some(Err(SurfaceRefusal::Outside { .. })) => None,
            Some(Err(refusal)) => Some(words::surface_refusal(
                refusal,
                &|index| walk.number_of_read(index),
                units.get(),
            )),
            _ => None,
        });
        let entries = match problems {
            0 => None,
            1 => Some(words::entry_wrong().to_owned()),
            _ => Some(words::entries_wrong(problems)),
        };
        [refusal, entries]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" ")
    });
    // Those past a wall by more than a slip of the tape: to be brought back all at once.
    let outside = memo(move || {
        let outline = walk.work.outline()?;
        let outside = walk.work.readings.with(|r| r.outside(&outline));
        (!outside.is_empty()).then_some(outside)
    });
    let bring_back = move |_| {
        let (Some(outside), Some(outline)) = (outside.get_untracked(), walk.work.outline()) else {
            return;
        };
        let units = units.get_untracked();
        walk.room.change(|r| {
            for (id, at) in outside {
                if let Some(spot) = r.spot_mut(id) {
                    (spot.x, spot.y) = place_entries(&outline, at, units);
                }
            }
        });
    };
    let named = move || {
        let numbers = outside
            .get()?
            .iter()
            .map(|(id, _)| walk.number(*id).to_string())
            .collect::<Vec<_>>();
        Some(words::outside(&numbers.join(", ")))
    };
    view! {
        <p class="notice look" role="status" hidden=move || words.read().is_empty()>{words}</p>
        <When when=move || outside.read().is_some()>
            <div class="notice look">
                <p>{say(named)}</p>
                <button type="button" class="button" on:click=bring_back>{words::bring_to_wall()}</button>
            </div>
        </When>
    }
}
