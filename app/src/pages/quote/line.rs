//! One line of a quote: what it says, its verdict, what it is for, and its fields to mend.

use calc::job::fields::{self, Field};
use calc::job::{MatchedBy, QuoteLineEntry, Typed, Units};
use calc::saved::Coded;
use calc::supply::check::Verdict;
use calc::supply::need::Kind;
use calc::supply::unit::Unit;
use leptos::prelude::*;

use super::super::sum_fields::numbered;
use super::QuoteIn;
use crate::entry::{ChoiceOption, Measured, Pick, TextEntry};
use crate::markup::view;
use crate::reactive::{derived, memo, say};
use crate::words::{common, quote as words, supply};

const BY_WORDS: &str = "words";
const NOTHING: &str = "nothing";

/// One line.
pub fn row(place: QuoteIn, ids: Memo<Vec<u32>>, id: u32) -> AnyView {
    let entry = place.entry;
    let found = place.found;
    let line = memo(move || entry.with(|entry| entry.line(id).cloned().unwrap_or_default()));
    let answer =
        memo(move || found.with(|found| found.lines.iter().find(|line| line.id == id).cloned()));
    let verdict = move || answer.with(|answer| answer.as_ref().map(|a| a.checked.verdict));
    let class = move || match verdict() {
        Some(Verdict::Over { .. } | Verdict::Under { .. }) => "verdict over",
        _ => "verdict",
    };
    let name = move || {
        line.with(|line| {
            if line.words.trim().is_empty() {
                words::untitled(
                    ids.with(|ids| ids.iter().position(|&of| of == id).unwrap_or(0) + 1),
                )
            } else {
                line.words.clone()
            }
        })
    };
    let says = move || {
        let unit = line.with(|line| line.unit);
        answer.with(|answer| {
            let answer = answer.as_ref()?;
            let mut says = words::verdict(
                answer.checked.verdict,
                answer.checked.range,
                answer.quantity,
                unit,
            );
            if answer.together > 1 {
                says.push(' ');
                says.push_str(&words::together(answer.together));
            }
            Some(says)
        })
    };
    let reasons = move || {
        answer.with(|answer| {
            let reasons = &answer.as_ref()?.checked.reasons;
            let named: Vec<&str> = reasons.iter().map(|&r| words::reason(r)).collect();
            (!named.is_empty()).then(|| words::may_explain(&named.join(", ")))
        })
    };
    let product = move || {
        answer.with(|answer| {
            let answer = answer.as_ref()?;
            let (made, said) = answer.multiplied_otherwise.zip(answer.amount)?;
            Some(words::multiplied(supply::money(made), supply::money(said)))
        })
    };
    let sign = move || verdict().map_or("", words::sign);
    let cost =
        move || answer.with(|answer| answer.as_ref().and_then(|a| a.amount).map(supply::money));
    let take_out = move |_| place.change(&|entry, _| entry.lines.retain(|line| line.id != id));
    let nth = numbered(ids, id, words::untitled);
    view! {
        <li>
            <p class="line-head">
                <strong>{say(name)}</strong>
                <span class="money">{say(cost)}</span>
            </p>
            <p class=class>
                <span class="sign">{say(sign)}</span>
                <span>{say(says)}</span>
            </p>
            <p class="verdict over" hidden=move || product().is_none()>{say(product)}</p>
            <p class="quiet">{say(reasons)}</p>
            {matching(place, ids, id, line)}
            <details class="no-print">
                <summary>{say(move || words::mend(ids.with(|ids| ids.iter().position(|&of| of == id).unwrap_or(0) + 1)))}</summary>
                {fields_of(place, ids, id, line)}
                <button type="button" class="button look plain" on:click=take_out>
                    {common::take_out()}
                    <span class="visually-hidden">" " {nth}</span>
                </button>
            </details>
        </li>
    }
    .into_any()
}

/// What the line is for: as its words suggest, or as the user says.
fn matching(place: QuoteIn, ids: Memo<Vec<u32>>, id: u32, line: Memo<QuoteLineEntry>) -> AnyView {
    let found = place.found;
    let options = derived(move || {
        found.with(|found| {
            let suggested = found
                .lines
                .iter()
                .find(|line| line.id == id)
                .and_then(|line| found.needs.get(line.suggested?));
            let by_words = match suggested {
                Some(need) => words::match_words(supply::kind(need.kind)),
                None => words::match_words_none().to_owned(),
            };
            let mut options = vec![
                ChoiceOption::new(BY_WORDS, by_words),
                ChoiceOption::new(NOTHING, words::match_nothing()),
            ];
            let needs = found.needs.iter();
            options.extend(needs.map(|n| ChoiceOption::new(n.kind.word(), supply::kind(n.kind))));
            options
        })
    });
    let value = memo(move || {
        line.with(|line| match (line.matched, line.chosen) {
            (MatchedBy::Words, _) => BY_WORDS.to_owned(),
            (MatchedBy::User, Some(kind)) => kind.word().to_owned(),
            (MatchedBy::User, None) => NOTHING.to_owned(),
        })
    });
    let on_pick = Callback::new(move |code: String| {
        let kind = Kind::CODED.iter().find(|(_, known)| *known == code);
        place.change(&|entry, _| {
            if let Some(line) = entry.line_mut(id) {
                line.matched = if code == BY_WORDS {
                    MatchedBy::Words
                } else {
                    MatchedBy::User
                };
                line.chosen = kind.map(|(kind, _)| *kind);
            }
        });
    });
    let label = numbered(ids, id, words::match_label);
    view! { <Pick id=format!("match-{id}") label options value on_pick /> }.into_any()
}

fn fields_of(place: QuoteIn, ids: Memo<Vec<u32>>, id: u32, line: Memo<QuoteLineEntry>) -> AnyView {
    let on_text = Callback::new(move |text: String| {
        place.change(&|entry, _| {
            if let Some(line) = entry.line_mut(id) {
                line.words.clone_from(&text);
            }
        });
    });
    let on_unit = Callback::new(move |code: String| {
        let unit = Unit::CODED.iter().find(|(_, known)| *known == code);
        place.change(&|entry, _| {
            if let Some(line) = entry.line_mut(id) {
                line.unit = unit.map(|(unit, _)| *unit);
            }
        });
    });
    let mut units = vec![ChoiceOption::new("", words::no_unit())];
    units.extend(
        Unit::CODED
            .iter()
            .map(|(unit, code)| ChoiceOption::new(*code, supply::unit(*unit, false))),
    );
    let measured = |name: &str,
                    label: fn(usize) -> String,
                    field: Field,
                    part: fn(&mut QuoteLineEntry) -> &mut Typed| {
        let on_typed = Callback::new(move |typed: Typed| {
            place.change(&|entry, _| {
                if let Some(line) = entry.line_mut(id) {
                    *part(line) = typed.clone();
                }
            });
        });
        let value = memo(move || part(&mut line.get()).clone());
        view! {
            <Measured
                id=format!("{name}-{id}")
                label=numbered(ids, id, label)
                field
                units=Signal::stored(Units::FeetInches)
                optional=true
                value
                on_typed
            />
        }
        .into_any()
    };
    view! {
        <TextEntry
            id=format!("words-{id}")
            label=numbered(ids, id, words::words_label)
            value=derived(move || line.with(|line| line.words.clone()))
            on_text
        />
        <div class="pair">
            {measured("quantity", words::quantity_label, fields::QUANTITY, |line| &mut line.quantity)}
            <Pick
                id=format!("unit-{id}")
                label=numbered(ids, id, words::unit_label)
                options=Signal::stored(units)
                value=derived(move || line.with(|line| line.unit.map_or("", Coded::word).to_owned()))
                on_pick=on_unit
            />
            {measured("price", words::price_label, fields::PRICE, |line| &mut line.price)}
            {measured("total", words::total_label, fields::PRICE, |line| &mut line.total)}
        </div>
    }
    .into_any()
}
