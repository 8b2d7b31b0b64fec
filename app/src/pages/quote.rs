//! A quote's lines against what a job needs: pasted, matched, each with its verdict, and the questions that follow.

mod line;

mod outcome;

use std::sync::Arc;

use calc::job::questions::supply::quote::{QuoteAnswers, kept, own_prices, quote};
use calc::job::{QuoteEntry, QuoteLineEntry};
use calc::quantity::fixed;
use calc::supply::need::Need;
use calc::supply::quote::read;
use leptos::prelude::*;

use super::sum_fields::label;
use crate::answer::RestsOn;
use crate::entry::TextEntry;
use crate::markup::{For, view};
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, memo, say};
use crate::shell::{PageHeading, PrintButton};
use crate::supply::Supply;
use crate::words::{common, quote as words, supply::money};

pub use outcome::questions;

/// Where a quote is kept: in a job, or among the quick sums.
#[derive(Clone, Copy)]
pub struct QuoteIn {
    /// The quote.
    pub entry: Memo<QuoteEntry>,
    /// What it is held against.
    pub found: Memo<QuoteAnswers>,
    change: StoredValue<Change>,
}

type Change = Arc<dyn Fn(&dyn Fn(&mut QuoteEntry, u32)) + Send + Sync>;

impl QuoteIn {
    /// A quote that is held against needs.
    pub fn new(
        entry: Memo<QuoteEntry>,
        needs: Memo<Vec<Need>>,
        change: impl Fn(&dyn Fn(&mut QuoteEntry, u32)) + Send + Sync + 'static,
    ) -> Self {
        Self {
            entry,
            found: memo(move || entry.with(|entry| needs.with(|needs| quote(entry, needs)))),
            change: StoredValue::new(Arc::new(change)),
        }
    }

    /// Changes the quote; the number is the first row id that is free.
    pub fn change(self, change: &dyn Fn(&mut QuoteEntry, u32)) {
        (self.change.get_value())(change);
    }
}

/// The quote of a job.
#[component]
pub fn QuotePage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let supply = Supply::of(open);
    let needs = memo(move || supply.needed.with(|needed| needed.needs.clone()));
    let entry = open.part(|job| job.quote.clone());
    let place = QuoteIn::new(entry, needs, move |change| {
        open.change(|job| {
            change(&mut job.quote, job.next_id);
            let most = job.quote.lines.iter().map(|line| line.id).max();
            job.next_id = job.next_id.max(most.unwrap_or(0).saturating_add(1));
        });
    });
    view! {
        <PageHeading text=label(words::title()) />
        <When when=move || needs.read().is_empty()>
            <p class="notice">{words::no_needs()}</p>
        </When>
        <QuoteForm place />
        <OwnPrices supply place />
        <PrintButton />
    }
}

/// The material at the prices of the buying list, as a share of the quote.
#[component]
fn OwnPrices(supply: Supply, place: QuoteIn) -> impl IntoView {
    let own = memo(move || {
        place
            .found
            .with(|found| supply.buying.with(|list| own_prices(list, found)))
    });
    let share = move || {
        own.get()
            .map(|own| words::share_of(fixed(own.share * 100.0, 0)))
    };
    let rests = derived(move || {
        own.get().map_or_else(String::new, |own| {
            words::own_share_rests(money(own.cost), own.without_price)
        })
    });
    let path = paths::stage(&supply.open.id(), 0, Stage::Buy);
    let hint = move || {
        view! { <p class="quiet no-print"><a href=path.clone()>{words::own_share_hint()}</a></p> }
    };
    view! {
        <When when=move || own.read().is_some() fallback=hint>
            <section class="sheet">
                <h2>{words::own_share()}</h2>
                <p class="figure small">{say(share)}</p>
                <RestsOn text=rests />
            </section>
        </When>
    }
}

/// The quote: pasting, verdicts, questions, share of material.
#[component]
pub fn QuoteForm(
    /// Where it is kept.
    place: QuoteIn,
) -> impl IntoView {
    let ids = memo(move || {
        place
            .entry
            .with(|entry| entry.lines.iter().map(|line| line.id).collect::<Vec<u32>>())
    });
    let any = memo(move || !ids.read().is_empty());
    let add = move |_| {
        place.change(&|entry, id| {
            entry.lines.push(QuoteLineEntry {
                id,
                ..QuoteLineEntry::default()
            });
        });
    };
    view! {
        <When when=move || any.get()>
            <outcome::Summary place />
        </When>
        <Paste place />
        <When when=move || any.get()>
            <section class="sheet">
                <h2>{words::lines_heading()}</h2>
                <ol class="quote-lines">
                    <For each=move || ids.get() key=|id| *id let:id>{line::row(place, ids, id)}</For>
                </ol>
            </section>
        </When>
        <button type="button" class="button add" on:click=add>{words::add_line()}</button>
        <When when=move || any.get()>
            <outcome::Outcome place />
        </When>
    }
}

/// A quote pasted as text, and the way back from taking it all out.
#[component]
fn Paste(place: QuoteIn) -> impl IntoView {
    let text = RwSignal::new(String::new());
    let said = RwSignal::new(String::new());
    let taken = RwSignal::new(None::<QuoteEntry>);
    let any = memo(move || !place.entry.read().lines.is_empty());
    let take = move |_| {
        let pasted = read(&text.get_untracked());
        if pasted.lines.is_empty() {
            said.set(words::nothing_read().to_owned());
            return;
        }
        place.change(&|entry, id| entry.lines.extend(kept(&pasted, id)));
        let mut says = vec![words::read_so_many(pasted.lines.len())];
        if !pasted.passed_over.is_empty() {
            let lines: Vec<String> = pasted.passed_over.iter().map(usize::to_string).collect();
            says.push(words::passed_over(&lines.join(", ")));
        }
        if pasted.cut {
            says.push(words::cut().to_owned());
        }
        said.set(says.join(" "));
        text.set(String::new());
        taken.set(None);
    };
    let entry = place.entry;
    let clear = move |_| {
        taken.set(Some(entry.get_untracked()));
        place.change(&|entry, _| entry.lines.clear());
        said.set(String::new());
    };
    let put_back = move |_| {
        if let Some(before) = taken.get_untracked() {
            place.change(&|entry, _| entry.lines.clone_from(&before.lines));
            taken.set(None);
        }
    };
    view! {
        <section class="sheet no-print">
            <TextEntry
                id="quote-lines".to_owned()
                block=true
                label=label(words::paste_label())
                hint=label(words::paste_hint())
                value=text
                on_text=Callback::new(move |pasted| text.set(pasted))
            />
            <button type="button" class="button main" on:click=take>{words::read_lines()}</button>
            <p role="status">{said}</p>
            <div hidden=move || !any.get()>
                <button type="button" class="button plain look" on:click=clear>{words::clear()}</button>
            </div>
            <div role="status" hidden=move || taken.read().is_none()>
                <div class="notice">
                    <p>{words::cleared()}</p>
                    <button type="button" class="button" on:click=put_back>{common::undo()}</button>
                </div>
            </div>
        </section>
    }
}
