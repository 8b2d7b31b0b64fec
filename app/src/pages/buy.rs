//! The buying list: what each need comes to in packs, what is on hand, what it costs, and ticks for the counter.

mod list_text;

mod own;

use calc::job::fields;
use calc::job::questions::supply::buying::BuyLine;
use calc::job::{Job, Typed, Units};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::supply::need::{Counter, Kind};
use leptos::prelude::*;

pub use list_text::{csv, text};
pub use own::own_name;

use super::job_fields::{At, number};
use super::sum_fields::{Shown, label};
use crate::answer::{Facts, RestsOn};
use crate::carry_text::CarryText;
use crate::markup::{For, view};
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::{PageHeading, PrintButton};
use crate::supply::Supply;
use crate::words::supply as words;

/// The counters in the order of a walk through a store.
pub const COUNTERS: [Counter; 6] = [
    Counter::Floor,
    Counter::Board,
    Counter::Paint,
    Counter::Trim,
    Counter::Electrical,
    Counter::Air,
];

/// The buying list.
#[component]
pub fn BuyPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let supply = Supply::of(open);
    let at_counter = RwSignal::new(false);
    let empty = memo(move || {
        supply
            .buying
            .with(|list| list.to_buy == 0 && list.lines.is_empty())
    });
    let done = move || {
        supply
            .buying
            .with(|list| words::of_all(list.ticked, list.to_buy))
    };
    let cost = move || supply.buying.with(|list| words::money(list.total));
    let priced = memo(move || supply.buying.with(|list| list.total > 0.0));
    let counters = COUNTERS
        .iter()
        .map(|&counter| view! { <CounterPart supply counter /> })
        .collect_view();
    view! {
        <PageHeading text=label(words::title()) />
        <div class="lead-row">
            <div>
                <p class="figure">{say(done)}</p>
                <p class="quiet">{words::in_cart()}</p>
            </div>
            <When when=move || priced.get()>
                <div>
                    <p class="figure small">{say(cost)}</p>
                    <p class="quiet">{words::total()}</p>
                </div>
            </When>
        </div>
        <button
            type="button"
            class="button wide"
            aria-pressed=move || at_counter.get().to_string()
            on:click=move |_| at_counter.update(|on| *on = !*on)
        >
            {words::at_counter()}
        </button>
        <When when=move || empty.get()>
            <p>{words::nothing()}</p>
        </When>
        <OpenNeeds supply />
        <div class="buying" class:counter=move || at_counter.get()>
            {counters}
            <own::OwnLines supply />
        </div>
        <div hidden=move || at_counter.get() class="stack">
            <section class="sheet">
                <h2>{words::totals()}</h2>
                <Totals supply />
                {number(
                    open,
                    "tax",
                    label(words::tax_label()),
                    fields::TAX,
                    Shown::optional(words::tax_hint()),
                    At::new(
                        |job: &Job| job.buying.tax_percent.clone(),
                        |job: &mut Job, typed| job.buying.tax_percent = typed,
                    ),
                )}
            </section>
            <RestsOn text=label(words::rests()) />
            <p class="quiet">{words::not_cable()}</p>
            <section class="sheet no-print">
                <h2>{words::share_heading()}</h2>
                <CarryText
                    title=words::title()
                    text=Callback::new(move |()| text(supply))
                    table=Callback::new(move |()| csv(supply))
                    table_name=words::csv_name()
                />
            </section>
            <PrintButton />
        </div>
    }
}

/// What can't be told yet, each with the way to where it can be mended.
#[component]
fn OpenNeeds(supply: Supply) -> impl IntoView {
    let lines = move || {
        supply.needed.with(|needed| {
            needed
                .open
                .iter()
                .map(|need| {
                    let room = supply.room_name(Some(need.room));
                    let says = words::open_need(need.kind, need.why, &room);
                    let path = paths::stage(&supply.open.id(), need.room, stage_of(need.kind));
                    view! {
                        <p class="notice">
                            {says} " "
                            <a href=path>{words::to_the_room()} <span class="visually-hidden">" " {room}</span></a>
                        </p>
                    }
                })
                .collect_view()
        })
    };
    draw(lines)
}

/// What each line is called in the document: its kind's code and its room.
fn key_of(line: &BuyLine) -> String {
    let room = line.need.room.map(|id| id.to_string()).unwrap_or_default();
    format!("{}.{room}", line.need.kind.word())
}

fn of_key(key: &str) -> Option<(Kind, Option<u32>)> {
    let (code, room) = key.split_once('.')?;
    let (kind, _) = Kind::CODED.iter().find(|(_, known)| *known == code)?;
    Some((*kind, room.parse().ok()))
}

/// The lines that one counter sells.
#[component]
fn CounterPart(supply: Supply, counter: Counter) -> impl IntoView {
    let keys = memo(move || {
        supply.buying.with(|list| {
            let lines = list.lines.iter();
            let mine = lines.filter(|line| line.need.kind.counter() == counter);
            mine.map(key_of).collect::<Vec<String>>()
        })
    });
    view! {
        <When when=move || !keys.read().is_empty()>
            <section class="sheet">
                <h2>{words::counter(counter)}</h2>
                <ul class="buy-list">
                    <For each=move || keys.get() key=|key| key.clone() let:key>{row(supply, key)}</For>
                </ul>
            </section>
        </When>
    }
}

/// The stage that a need comes from.
fn stage_of(kind: Kind) -> Stage {
    match kind.counter() {
        Counter::Board => Stage::Board,
        Counter::Paint => Stage::Paint,
        Counter::Trim => Stage::Trim,
        Counter::Air => Stage::Air,
        Counter::Electrical => Stage::Circuits,
        Counter::Floor => match kind {
            Kind::Tile | Kind::TileMortar | Kind::Grout | Kind::Membrane => Stage::Tile,
            _ => Stage::Pour,
        },
    }
}

/// What is to be bought of a line: `12 bags`, or each size where nothing of it is on hand.
pub fn to_buy_text(line: &BuyLine, units: Units) -> String {
    if line.to_buy > 0.0 && line.on_hand == 0.0 && !line.need.mix.is_empty() {
        words::mix(&line.need, units)
    } else if line.to_buy > 0.0 {
        words::amount(line.to_buy, line.unit)
    } else {
        words::enough().to_owned()
    }
}

fn row(supply: Supply, key: String) -> AnyView {
    let Some((kind, room)) = of_key(&key) else {
        return ().into_any();
    };
    let open = supply.open;
    let units = open.units();
    let line = memo(move || supply.line(kind, room));
    let on = memo(move || {
        line.with(|line| {
            line.as_ref()
                .is_some_and(|line| line.ticked.is_some() && line.grown.is_none())
        })
    });
    let amount = move || line.with(|line| line.as_ref().map(|line| to_buy_text(line, units.get())));
    let name = move || format!("{} · {}", words::kind(kind), supply.room_name(room));
    let tick = move |_| {
        let to_buy = line.with_untracked(|line| line.as_ref().map(|line| line.to_buy));
        let was = on.get_untracked();
        open.change(|job| {
            job.buying.row_mut(kind, room).ticked = match to_buy {
                Some(to_buy) if !was => Typed::plain(fixed(to_buy, 2)),
                _ => Typed::default(),
            };
        });
    };
    let grew = memo(move || {
        line.with(|line| {
            let line = line.as_ref()?;
            if let Some(by) = line.grown {
                return Some(words::grew(words::amount(by, line.unit)));
            }
            let more = line.ticked.filter(|ticked| *ticked > line.to_buy + 0.01)?;
            Some(words::more_in_cart(words::amount(more, line.unit)))
        })
    });
    let basis = move || line.with(|line| line.as_ref().map(|line| basis_text(line, units.get())));
    let cost = move || line.with(|line| line.as_ref().and_then(cost_text));
    let path = room.map(|id| paths::stage(&open.id(), id, stage_of(kind)));
    let from = path.map(|path| {
        view! {
            <a class="no-print" href=path>{say(move || words::where_from(&supply.room_name(room)))}</a>
        }
    });
    let unit = line.with_untracked(|line| line.as_ref().map_or("", |l| words::unit(l.unit, true)));
    let units_word =
        line.with_untracked(|line| line.as_ref().map_or("", |l| words::unit(l.unit, false)));
    let what = words::kind(kind);
    let id = format!("tick-{key}");
    view! {
        <li class:in-cart=move || on.get()>
            <label class="tick">
                <input type="checkbox" id=id prop:checked=move || on.get() on:change=tick />
                <span class="much">{say(amount)}</span>
                <span class="what">{say(name)}</span>
            </label>
            <p class="look" role="status" hidden=move || grew.read().is_none()>{say(move || grew.get())}</p>
            <div class="basis">
                <p class="quiet">{say(basis)}</p>
                <p class="money">{say(cost)}</p>
                {from}
                <details class="no-print">
                    <summary>{words::details(what)}</summary>
                    <div class="pair">
                        {number(
                            open,
                            format!("hand-{key}"),
                            Signal::stored(words::on_hand_label(what, units_word)),
                            fields::QUANTITY,
                            Shown::optional(""),
                            At::new(
                                move |job: &Job| {
                                    job.buying.row(kind, room).map(|row| row.on_hand.clone()).unwrap_or_default()
                                },
                                move |job: &mut Job, typed| job.buying.row_mut(kind, room).on_hand = typed,
                            ),
                        )}
                        {number(
                            open,
                            format!("price-{key}"),
                            Signal::stored(words::price_label(what, unit)),
                            fields::PRICE,
                            Shown::optional(""),
                            At::new(
                                move |job: &Job| {
                                    job.buying.row(kind, room).map(|row| row.price.clone()).unwrap_or_default()
                                },
                                move |job: &mut Job, typed| job.buying.row_mut(kind, room).price = typed,
                            ),
                        )}
                    </div>
                </details>
            </div>
        </li>
    }
    .into_any()
}

/// What a line rests on: the exact need, waste, packs, what is on hand.
fn basis_text(line: &BuyLine, units: Units) -> String {
    let need = &line.need;
    let mut parts = vec![words::exact(words::measured(
        need.exact,
        need.dimension,
        units,
    ))];
    if need.usual_percent > 0.0 {
        parts.push(words::with_allowance(
            fixed(need.usual_percent, 1),
            words::measured(line.with_allowance, need.dimension, units),
        ));
    }
    if !need.mix.is_empty() {
        parts.push(words::bought_as(words::mix(need, units)));
    } else if let Some(pack) = need.packs.first() {
        parts.push(words::packs(
            words::amount(line.takes, pack.unit),
            words::measured(pack.holds, need.dimension, units),
        ));
    }
    if line.on_hand > 0.0 {
        parts.push(words::have(words::amount(line.on_hand, line.unit)));
    }
    parts.join(" ")
}

/// What a line costs; nothing without a price.
fn cost_text(line: &BuyLine) -> Option<String> {
    let cost = words::money(line.cost?);
    Some(match line.tax {
        Some(tax) => words::line_cost(cost, words::money(tax)),
        None => cost,
    })
}

#[component]
fn Totals(supply: Supply) -> impl IntoView {
    let rows = derived(move || {
        supply.buying.with(|list| {
            let mut rows = vec![(words::cost().to_owned(), words::money(list.cost))];
            if let Some(tax) = list.tax {
                rows.push((words::tax().to_owned(), words::money(tax)));
            }
            rows.push((words::total().to_owned(), words::money(list.total)));
            rows
        })
    });
    let without = memo(move || supply.buying.with(|list| list.without_price));
    view! {
        <Facts rows />
        <When when=move || without.get() != 0>
            <p class="quiet">{say(move || words::without_price(without.get()))}</p>
        </When>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_names_its_need() {
        assert_eq!(of_key("pour.12"), Some((Kind::Pour, Some(12))));
        assert_eq!(of_key("edge_strip."), Some((Kind::EdgeStrip, None)));
        assert_eq!(of_key("gold.1"), None);
    }
}
