//! What a quote comes to: how many lines are as they should be, the questions to ask, the share of material.

use calc::job::QuoteEntry;
use calc::job::questions::supply::first_unit;
use calc::job::questions::supply::quote::QuoteAnswers;
use calc::quantity::fixed;
use calc::supply::check::Verdict;
use leptos::prelude::*;

use super::QuoteIn;
use crate::answer::RestsOn;
use crate::carry_text::CarryText;
use crate::markup::view;
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::{quote as words, supply};

/// How many verdicts there are of each kind: within, over, under.
fn counts(found: &QuoteAnswers) -> [usize; 3] {
    let mut counts = [0; 3];
    for line in &found.lines {
        match line.checked.verdict {
            Verdict::Within => counts[0] += 1,
            Verdict::Over { .. } => counts[1] += 1,
            Verdict::Under { .. } => counts[2] += 1,
            Verdict::Unchecked(_) => {}
        }
    }
    counts
}

/// The lead: how many lines could be checked, and how they stand.
#[component]
pub fn Summary(
    /// The quote.
    place: QuoteIn,
) -> impl IntoView {
    let found = place.found;
    let checked = move || {
        found.with(|found| words::verdict_count(counts(found).iter().sum(), found.lines.len()))
    };
    let rests = derived(move || {
        found.with(|found| {
            let [within, over, under] = counts(found);
            words::verdict_rests(within, over, under)
        })
    });
    view! {
        <section class="sheet">
            <h2>{words::verdicts()}</h2>
            <p class="figure">{say(checked)}</p>
            <RestsOn text=rests />
        </section>
    }
}

/// The questions that follow from a quote, in its order, then what no line names.
pub fn questions(entry: &QuoteEntry, found: &QuoteAnswers) -> Vec<String> {
    let mut asked = Vec::new();
    let mut held = Vec::new();
    for (at, answer) in found.lines.iter().enumerate() {
        let line = entry.line(answer.id);
        let parts = line
            .and_then(|line| line.unit)
            .zip(answer.quantity)
            .zip(answer.checked.range);
        let Some(((unit, quantity), range)) = parts else {
            continue;
        };
        // Lines that are held against a need together ask once.
        if answer.need.is_some_and(|need| held.contains(&need)) {
            continue;
        }
        let name = line.map_or("", |line| line.words.trim());
        let untitled = words::untitled(at + 1);
        let name = if name.is_empty() { &untitled } else { name };
        let quoted = supply::amount(quantity, unit);
        match answer.checked.verdict {
            Verdict::Over { .. } => asked.push(words::ask_over(
                name,
                quoted,
                supply::amount(range.usual, unit),
            )),
            Verdict::Under { .. } => asked.push(words::ask_under(
                name,
                quoted,
                supply::amount(range.low, unit),
            )),
            Verdict::Within | Verdict::Unchecked(_) => continue,
        }
        held.extend(answer.need);
    }
    for need in found.missing.iter().filter_map(|&at| found.needs.get(at)) {
        let usual = match (need.packs.first(), need.packs_to_buy()) {
            (Some(pack), Some(packs)) => supply::amount(packs, pack.unit),
            _ => supply::amount(need.amount(need.usual_percent), first_unit(need.dimension)),
        };
        asked.push(words::ask_missing(supply::kind(need.kind), usual));
    }
    asked
}

/// The questions, and the share of material.
#[component]
pub fn Outcome(
    /// The quote.
    place: QuoteIn,
) -> impl IntoView {
    let QuoteIn { entry, found, .. } = place;
    let asked = memo(move || entry.with(|entry| found.with(|found| questions(entry, found))));
    let list = move || {
        asked
            .get()
            .into_iter()
            .map(|question| view! { <li>{question}</li> })
            .collect_view()
    };
    let share = memo(move || {
        found.with(|found| {
            found
                .material_share
                .map(|share| words::share_of(fixed(share * 100.0, 0)))
        })
    });
    let rests = derived(move || {
        found.with(|found| {
            let matched = found.lines.iter().filter(|line| line.need.is_some());
            words::share_rests(matched.count(), supply::money(found.total))
        })
    });
    let unpriced = memo(move || found.with(|found| found.without_price));
    let as_text = Callback::new(move |()| asked.get_untracked().join("\n"));
    view! {
        <section class="sheet">
            <h2>{words::questions_heading()}</h2>
            <When
                when=move || !asked.read().is_empty()
                fallback=|| view! { <p>{words::no_questions()}</p> }
            >
                <ol class="questions">{draw(list)}</ol>
                <CarryText title=words::questions_heading() text=as_text />
            </When>
            <p class="quiet">{words::fair()}</p>
        </section>
        <When when=move || share.read().is_some()>
            <section class="sheet">
                <h2>{words::share()}</h2>
                <p class="figure small">{say(move || share.get())}</p>
                <RestsOn text=rests />
                <When when=move || unpriced.get() != 0>
                    <p class="quiet">{say(move || words::without_price(unpriced.get()))}</p>
                </When>
            </section>
        </When>
    }
}
