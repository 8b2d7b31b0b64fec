//! The panel itself: its spaces, how it hangs, what feeds it and protects it, and where tandems may go.

use calc::job::{Job, MainDisconnect, TandemRule, fields};
use calc::saved::Coded;
use leptos::prelude::*;

use crate::entry::ChoiceOption;
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::pages::job_fields::{At, at, choice, code_at, number, pick, text, text_block};
use crate::pages::sum_fields::{Shown, label, options};
use crate::reactive::{When, draw};
use crate::words::wiring::panel as words;

/// The number of spaces: even, from 8 to 42; another count that a file has stays.
pub fn spaces_field(open: OpenJob) -> AnyView {
    let known = open.part(|job| job.panel.spaces);
    let counts = crate::reactive::derived(move || {
        let mut counts = vec![ChoiceOption::new("0", words::spaces_open())];
        let usual = (8..=42).step_by(2);
        let other = Some(known.get()).filter(|n| *n > 0 && !usual.clone().any(|u| u == *n));
        let all = usual.chain(other);
        counts.extend(all.map(|n: u32| ChoiceOption::new(n.to_string(), n.to_string())));
        counts
    });
    let count = At::new(
        |job: &Job| job.panel.spaces.to_string(),
        |job: &mut Job, code: String| job.panel.spaces = code.parse().unwrap_or(job.panel.spaces),
    );
    pick(
        open,
        "panel-spaces",
        label(words::spaces_label()),
        counts,
        count,
    )
}

/// The panel itself, once its spaces are counted.
#[component]
pub fn About(
    /// The job.
    open: OpenJob,
    /// How many spaces it has.
    spaces: Memo<u32>,
) -> impl IntoView {
    let main = open.part(|job| job.panel.main);
    let tandems = open.part(|job| job.panel.tandems);
    let mains = vec![
        ChoiceOption::new(MainDisconnect::Lugs.code(), words::main_lugs()),
        ChoiceOption::new(MainDisconnect::Breaker.code(), words::main_breaker()),
    ];
    let rules = [
        TandemRule::NotKnown,
        TandemRule::None,
        TandemRule::All,
        TandemRule::Listed,
    ]
    .map(|rule| ChoiceOption::new(rule.code(), words::tandems(rule)))
    .to_vec();
    view! {
        <section class="sheet no-print">
            <h2>{words::about_heading()}</h2>
            <details>
                <summary>{words::about_summary()}</summary>
                <div class="stack">
            {text(open, "panel-name", label(words::name_label()), "", at!(panel.name))}
            {spaces_field(open)}
            {choice(
                open,
                "panel-mounting",
                label(words::mounting_label()),
                "",
                options(words::mounting),
                code_at!(Coded::word; panel.mounting),
            )}
            {pick(
                open,
                "panel-fed-by",
                label(words::fed_by_label()),
                Signal::stored(options(words::fed_by)),
                code_at!(Coded::word; panel.fed_by),
            )}
            {text(open, "panel-fed-from", label(words::fed_from_label()), words::fed_from_hint(), at!(panel.fed_from))}
            <div class="pair level">
                {number(
                    open,
                    "panel-rating",
                    label(words::panel_rating_label()),
                    fields::RATING,
                    Shown::optional(""),
                    at!(panel.rating),
                )}
                {number(
                    open,
                    "panel-feeder-device",
                    label(words::feeder_device_label()),
                    fields::RATING,
                    Shown::optional(""),
                    at!(panel.feeder_device),
                )}
            </div>
            {choice(open, "panel-main", label(words::main_label()), "", mains, code_at!(MainDisconnect::code; panel.main))}
            <When when=move || main.get() == MainDisconnect::Breaker>
                {number(
                    open,
                    "panel-main-rating",
                    label(words::main_rating_label()),
                    fields::RATING,
                    Shown::default(),
                    at!(panel.main_rating),
                )}
            </When>
            {choice(
                open,
                "panel-bars",
                label(words::bars_label()),
                "",
                options(words::bars),
                code_at!(Coded::word; panel.bars),
            )}
            {number(
                open,
                "panel-most",
                label(words::most_label()),
                fields::MOST_CIRCUITS,
                Shown::optional(""),
                at!(panel.most_circuits),
            )}
            {pick(
                open,
                "panel-tandems",
                label(words::tandems_label()),
                Signal::stored(rules),
                code_at!(TandemRule::code; panel.tandems),
            )}
            <When when=move || tandems.get() == TandemRule::Listed>
                <TandemSpaces open spaces />
            </When>
            {number(
                open,
                "panel-feeder-drop",
                label(words::feeder_drop_label()),
                fields::DROP_PERCENT,
                Shown::optional(words::feeder_drop_hint()),
                at!(panel.feeder_drop),
            )}
            {text_block(open, "panel-notes", label(words::notes_label()), words::notes_hint(), at!(panel.notes))}
                </div>
            </details>
        </section>
    }
}

/// The spaces that take tandems, each a switch.
#[component]
fn TandemSpaces(open: OpenJob, spaces: Memo<u32>) -> impl IntoView {
    let listed = open.part(|job| job.panel.tandem_spaces.clone());
    let turn = move |space: u32| {
        open.change(|job| {
            let list = &mut job.panel.tandem_spaces;
            match list.iter().position(|&s| s == space) {
                Some(at) => drop(list.remove(at)),
                None => {
                    let at = list.iter().position(|&s| s > space).unwrap_or(list.len());
                    list.insert(at, space);
                }
            }
        });
    };
    let keys = move || {
        (1..=spaces.get())
            .map(|space| {
                view! {
                    <button
                        type="button"
                        aria-pressed=move || listed.with(|list| list.contains(&space)).to_string()
                        on:click=move |_| turn(space)
                    >
                        {space.to_string()}
                    </button>
                }
            })
            .collect_view()
    };
    view! {
        <div class="field">
            <span class="label" id="tandem-spaces">{words::tandem_spaces_label()}</span>
            <div class="keys many" role="group" aria-labelledby="tandem-spaces">{draw(keys)}</div>
        </div>
    }
}
