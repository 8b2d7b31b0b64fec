//! The walk: one spot after another, on the map and in one field.

use std::collections::BTreeSet;

use calc::job::fields;
use calc::quantity::Typed;
use leptos::prelude::*;

use super::Walk;
use crate::entry::Measured;
use crate::markup::view;
use crate::pages::room::gaps;
use crate::pictures::floor_map::{MapContent, Mark, Pin};
use crate::pictures::{FloorMap, length_text};
use crate::reactive::{When, derived, memo, say};
use crate::words::survey as words;

/// One spot after another: the map above, one entry, next.
#[component]
pub(super) fn Steps(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let content = memo(move || map(walk));
    let counts = memo(move || {
        walk.work
            .readings
            .with(|r| (r.places.len() - r.unread(), r.places.len()))
    });
    let says = derived(move || {
        let (read, count) = counts.get();
        words::map_says(read, count)
    });
    let tap = Callback::new(move |index: usize| {
        let id = walk
            .work
            .readings
            .with_untracked(|r| r.places.get(index).map(|p| p.id));
        walk.go(id);
    });
    let value = memo(move || {
        let id = walk.now.get()?;
        walk.room.open.job.with(|job| {
            job.room(walk.room.id)
                .and_then(|r| r.spot(id))
                .map(|s| s.reading.clone())
        })
    });
    let place = move || {
        let id = walk.now.get()?;
        let at = walk.work.readings.with(|r| r.place_of(id))?;
        Some(words::spot_where(
            length_text(at.x_in, units.get()),
            length_text(at.y_in, units.get()),
        ))
    };
    // One undo for each stay at a spot: the reading as it was on arrival.
    let arrived = StoredValue::new((None::<u32>, Typed::default()));
    Effect::new(move |_| {
        let now = walk.now.get();
        let reading = now.and_then(|id| {
            walk.room.open.job.with_untracked(|job| {
                job.room(walk.room.id)
                    .and_then(|r| r.spot(id))
                    .map(|s| s.reading.clone())
            })
        });
        arrived.set_value((now, reading.unwrap_or_default()));
    });
    let typed = Callback::new(move |typed: Typed| {
        let Some(id) = walk.now.get_untracked() else {
            return;
        };
        let (at, before) = arrived.get_value();
        if at == Some(id) && before != typed {
            walk.undo.update(|undo| {
                if undo.last().is_none_or(|(last, _)| *last != id) {
                    undo.push((id, before));
                }
            });
        }
        walk.set_reading(id, typed);
    });
    let undo = move |_| {
        if let Some((id, before)) = walk.undo.try_update(Vec::pop).flatten() {
            walk.set_reading(id, before);
            walk.go(Some(id));
        }
    };
    let status = move || {
        let (read, count) = counts.get();
        if read == count {
            words::all_read().to_owned()
        } else if count - read == 1 {
            words::one_left_to_read().to_owned()
        } else {
            words::left_to_read(count - read)
        }
    };
    view! {
        <section class="walk">
            <figure class="picture">
                <FloorMap content says on_tap=tap tall=230.0 />
                <figcaption>{words::map_caption()}</figcaption>
            </figure>
            <p class="quiet">{say(status)}</p>
            <When when=move || walk.now.read().is_some()>
                <p>
                    <strong>
                        {move || {
                            words::spot_of(walk.now.get().map_or(0, |id| walk.number(id)), walk.ids.read().len())
                        }}
                    </strong> " " <span class="quiet">{say(place)}</span>
                </p>
                <Measured
                    id="reading"
                    label=derived(move || words::reading_label(walk.now.get().map_or(0, |id| walk.number(id))))
                    field=fields::READING
                    units
                    always_open=true
                    value=derived(move || value.get().unwrap_or_default())
                    on_typed=typed
                    on_enter=Callback::new(move |()| walk.step(1))
                />
                <div class="row spread at-hand">
                    <button type="button" class="button" on:click=move |_| walk.step(-1)>{words::previous_spot()}</button>
                    <button type="button" class="button" disabled=move || walk.undo.read().is_empty() on:click=undo>
                        {words::undo_reading()}
                    </button>
                    <button type="button" class="button main grow" on:click=move |_| walk.step(1)>{words::next_spot()}</button>
                </div>
            </When>
        </section>
    }
}

/// The map of the walk: pins by what is read, the spot that is entered now, those to read again.
fn map(walk: Walk) -> MapContent {
    let Some(outline) = walk.work.outline() else {
        return MapContent::default();
    };
    let again = again(walk);
    let now = walk.now.get();
    let pins = walk.work.readings.with(|r| {
        r.places
            .iter()
            .map(|place| Pin {
                at: place.at,
                label: place.number.to_string(),
                mark: match () {
                    () if now == Some(place.id) => Mark::Now,
                    () if again.contains(&place.id) => Mark::Again,
                    () if place.read => Mark::Read,
                    () => Mark::Open,
                },
            })
            .collect()
    });
    MapContent {
        corners: outline.corners().to_vec(),
        gaps: gaps(walk.work),
        pins,
        ..MapContent::default()
    }
}

/// Ids of the readings that disagree with their neighbours, but for the one being entered.
fn again(walk: Walk) -> BTreeSet<u32> {
    let now = walk.now.get();
    walk.work.readings.with(|r| {
        walk.suspects
            .read()
            .iter()
            .filter_map(|s| r.id_of(s.index))
            .filter(|&id| Some(id) != now)
            .collect()
    })
}
