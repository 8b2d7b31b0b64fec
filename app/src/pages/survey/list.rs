//! All spots as a list to correct, and spots of the user's own.

use calc::job::{Spot, Units, fields};
use calc::quantity::Typed;
use leptos::prelude::*;

use super::Walk;
use crate::entry::Measured;
use crate::focus;
use crate::markup::{For, view};
use crate::reactive::{When, derived, memo, say};
use crate::store::drafts;
use crate::words::survey as words;

/// How many spots the list shows at first, and more at each asking.
const ROWS_AT_ONCE: usize = 40;

/// All spots as a list to correct.
#[component]
pub(super) fn List(walk: Walk) -> impl IntoView {
    let room = walk.room;
    let units = room.open.units();
    let open = RwSignal::new(false);
    let shown = RwSignal::new(ROWS_AT_ONCE);
    let ids = memo(move || {
        if open.get() {
            walk.ids
                .with(|ids| ids.iter().copied().take(shown.get()).collect())
        } else {
            Vec::new()
        }
    });
    let clear = move |_| {
        let said = words::spots(walk.ids.with_untracked(Vec::len));
        walk.now.set(None);
        room.replace(said, |r| &mut r.survey.spots, |r| r.survey.spots.clear());
    };
    view! {
        <details class="on-paper" hidden=move || walk.ids.read().is_empty() on:toggle:target=move |ev| open.set(ev.target().open())>
            <summary>{say(move || words::list_heading(walk.ids.read().len()))}</summary>
            <ol class="rows">
                <For each=move || ids.get() key=|id| *id let:id>
                    <SpotRow walk id units />
                </For>
            </ol>
            <When when=move || shown.get() < walk.ids.read().len()>
                <button type="button" class="button" on:click=move |_| shown.update(|n| *n += ROWS_AT_ONCE)>
                    {words::more_spots()}
                </button>
            </When>
            <button type="button" class="button look plain" on:click=clear>{words::take_out_all()}</button>
        </details>
    }
}

/// One spot of the list.
#[component]
pub(super) fn SpotRow(walk: Walk, id: u32, units: Memo<Units>) -> impl IntoView {
    let room = walk.room;
    let part =
        move |get: fn(&Spot) -> Typed| room.part(move |r| r.spot(id).map(get).unwrap_or_default());
    let entry = move |what: &'static str,
                      label: &'static str,
                      field: fields::Field,
                      get: fn(&Spot) -> Typed,
                      set: fn(&mut Spot, Typed)| {
        view! {
            <Measured
                id=format!("spot-{id}-{what}")
                label=derived(move || format!("{} {}", words::spot(walk.number(id)), label.to_lowercase()))
                field
                units
                value=part(get)
                on_typed=Callback::new(move |typed: Typed| {
                    room.change(|r| {
                        if let Some(spot) = r.spot_mut(id) {
                            set(spot, typed);
                        }
                    })
                })
            />
        }
    };
    view! {
        <li>
            <div class="pair">
                {entry("x", words::column_right(), fields::COORDINATE, |s| s.x.clone(), |s, t| s.x = t)}
                {entry("y", words::column_away(), fields::COORDINATE, |s| s.y.clone(), |s, t| s.y = t)}
                {entry("reading", words::column_reading(), fields::READING, |s| s.reading.clone(), |s, t| s.reading = t)}
            </div>
            <button
                type="button"
                class="button look plain"
                on:click=move |_| {
                    if walk.now.get_untracked() == Some(id) {
                        walk.now.set(None);
                    }
                    room.take_out_row(words::spot(walk.number(id)), |r| Some(&mut r.survey.spots), |s| s.id == id);
                    focus::soon("own-x");
                }
            >
                {say(move || words::take_out_spot(walk.number(id)))}
            </button>
        </li>
    }
}

/// A spot of the user's own.
#[component]
pub(super) fn Own(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let x = drafts::draft(&walk.room.key("own-x"));
    let y = drafts::draft(&walk.room.key("own-y"));
    let ready = memo(move || {
        fields::COORDINATE.read(&x.read()).is_ok() && fields::COORDINATE.read(&y.read()).is_ok()
    });
    let add = move |_| {
        let (x_entry, y_entry) = (x.get_untracked(), y.get_untracked());
        let made = RwSignal::new(0);
        walk.room.change_with_id(|r, id| {
            made.set(id);
            r.survey.spots.push(Spot {
                id,
                x: x_entry,
                y: y_entry,
                reading: Typed::default(),
                checked: String::new(),
                rest: calc::job::Rest::new(),
            });
        });
        x.set(Typed::default());
        y.set(Typed::default());
        walk.go(Some(made.get_untracked()));
    };
    view! {
        <details>
            <summary>{words::add_spot()}</summary>
            <div class="stack">
                <div class="pair">
                    <Measured
                        id="own-x"
                        label=Signal::stored(words::own_right().to_owned())
                        field=fields::COORDINATE
                        units
                        value=x
                        on_typed=Callback::new(move |typed| x.set(typed))
                    />
                    <Measured
                        id="own-y"
                        label=Signal::stored(words::own_away().to_owned())
                        field=fields::COORDINATE
                        units
                        value=y
                        on_typed=Callback::new(move |typed| y.set(typed))
                    />
                </div>
                <button type="button" class="button" disabled=move || !ready.get() on:click=add>{words::add_this_spot()}</button>
            </div>
        </details>
    }
}
