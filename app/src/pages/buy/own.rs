//! The user's own lines of the buying list.

use calc::job::{Job, OwnLineEntry, Typed, fields};
use leptos::prelude::*;

use super::super::job_fields::{At, number, text};
use super::super::sum_fields::{Shown, numbered};
use crate::markup::{For, view};
use crate::reactive::{memo, say};
use crate::supply::Supply;
use crate::words::{common, supply as words};

fn line(job: &Job, id: u32) -> Option<&OwnLineEntry> {
    job.buying.own.iter().find(|own| own.id == id)
}

fn line_mut(job: &mut Job, id: u32) -> Option<&mut OwnLineEntry> {
    job.buying.own.iter_mut().find(|own| own.id == id)
}

fn typed(
    id: u32,
    get: fn(&OwnLineEntry) -> &Typed,
    put: fn(&mut OwnLineEntry) -> &mut Typed,
) -> At<Typed> {
    At::new(
        move |job: &Job| {
            line(job, id)
                .map(|own| get(own).clone())
                .unwrap_or_default()
        },
        move |job: &mut Job, value| {
            if let Some(own) = line_mut(job, id) {
                *put(own) = value;
            }
        },
    )
}

/// What an own line is called.
pub fn own_name(words_: &str) -> String {
    if words_.trim().is_empty() {
        words::own_untitled().to_owned()
    } else {
        words_.to_owned()
    }
}

/// The user's own lines.
#[component]
pub fn OwnLines(supply: Supply) -> impl IntoView {
    let open = supply.open;
    let ids = open.part(|job| {
        job.buying
            .own
            .iter()
            .map(|own| own.id)
            .collect::<Vec<u32>>()
    });
    let row = move |id: u32| {
        let on = memo(move || {
            open.job
                .with(|job| line(job, id).is_some_and(|own| own.ticked))
        });
        let name = move || {
            open.job
                .with(|job| own_name(line(job, id).map_or("", |own| &own.words)))
        };
        let much = move || {
            open.job.with(|job| {
                line(job, id)
                    .map(|own| own.quantity.text.trim().to_owned())
                    .filter(|text| !text.is_empty())
                    .unwrap_or_else(|| "1".to_owned())
            })
        };
        let cost = move || {
            supply.buying.with(|list| {
                let own = list.own.iter().find(|own| own.id == id)?;
                own.cost.map(words::money)
            })
        };
        let tick = move |_| {
            open.change(|job| {
                if let Some(own) = line_mut(job, id) {
                    own.ticked = !own.ticked;
                }
            });
        };
        let take_out = move |_| open.change(|job| job.buying.own.retain(|own| own.id != id));
        let nth = numbered(ids, id, words::own_name);
        view! {
            <li class:in-cart=move || on.get()>
                <label class="tick">
                    <input type="checkbox" id=format!("tick-own-{id}") prop:checked=move || on.get() on:change=tick />
                    <span class="much">{say(much)}</span>
                    <span class="what">{say(name)}</span>
                </label>
                <div class="basis">
                    <p class="money">{say(cost)}</p>
                    {text(
                        open,
                        format!("own-words-{id}"),
                        numbered(ids, id, words::own_words),
                        "",
                        At::new(
                            move |job: &Job| line(job, id).map(|own| own.words.clone()).unwrap_or_default(),
                            move |job: &mut Job, value| {
                                if let Some(own) = line_mut(job, id) {
                                    own.words = value;
                                }
                            },
                        ),
                    )}
                    <div class="pair">
                        {number(
                            open,
                            format!("own-quantity-{id}"),
                            numbered(ids, id, words::own_quantity),
                            fields::QUANTITY,
                            Shown::optional(""),
                            typed(id, |own| &own.quantity, |own| &mut own.quantity),
                        )}
                        {number(
                            open,
                            format!("own-price-{id}"),
                            numbered(ids, id, words::own_price),
                            fields::PRICE,
                            Shown::optional(""),
                            typed(id, |own| &own.price, |own| &mut own.price),
                        )}
                    </div>
                    <button type="button" class="button look plain" on:click=take_out>
                        {common::take_out()}
                        <span class="visually-hidden">" " {nth}</span>
                    </button>
                </div>
            </li>
        }
        .into_any()
    };
    let add = move |_| {
        open.change(|job| {
            let id = job.fresh_id();
            job.buying.own.push(OwnLineEntry {
                id,
                ..OwnLineEntry::default()
            });
        });
    };
    view! {
        <section class="sheet">
            <h2>{words::own_heading()}</h2>
            <ul class="buy-list">
                <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
            </ul>
            <button type="button" class="button add" on:click=add>{words::add_own()}</button>
        </section>
    }
}
