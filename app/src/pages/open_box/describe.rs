//! What is in the opened box: the box it is most like, breakers, devices.

use calc::job::fields;
use calc::job::{OpenedBreakerEntry, OpenedDeviceEntry, OpenedDeviceKind, TypicalBox};
use calc::quantity::Typed;
use calc::saved::Coded;
use leptos::prelude::*;

use super::names::device_kind;
use super::{Opened, coded_at, typed_at};
use crate::entry::{ChoiceOption, Pick};
use crate::house::number_of;
use crate::markup::{For, view};
use crate::pages::job_fields::{choice, number, pick, text, yes_no};
use crate::pages::panel::amps_text;
use crate::pages::sum_fields::{Shown, label, options};
use crate::reactive::{derived, draw, memo, say};
use crate::words::open_box as words;

/// The boxes to start from.
#[component]
pub fn Start(opened: Opened) -> impl IntoView {
    let start = move |typical: TypicalBox| {
        opened.open.change(|job| {
            let Some(mut entry) = job.opened_entry(opened.id).cloned() else {
                return;
            };
            entry.start_from(typical, job);
            if let Some(there) = job.opened_entry_mut(opened.id) {
                *there = entry;
            }
        });
    };
    let buttons = TypicalBox::ALL
        .into_iter()
        .map(|typical| {
            view! {
                <button type="button" class="button" on:click=move |_| start(typical)>{typical_word(typical)}</button>
            }
        })
        .collect_view();
    view! {
        <section class="sheet">
            <h2>{words::start_heading()}</h2>
            <p class="quiet">{words::start_hint()}</p>
            <div class="typical">{buttons}</div>
            <p class="quiet">{words::start_empty()}</p>
        </section>
    }
}

fn typical_word(typical: TypicalBox) -> &'static str {
    match typical {
        TypicalBox::SingleLight => words::single_light(),
        TypicalBox::SwitchWithNeutral => words::switch_neutral(),
        TypicalBox::SwitchLoop => words::switch_loop(),
        TypicalBox::ThreeWayPair => words::three_way_pair(),
        TypicalBox::SplitReceptacle => words::split_receptacle(),
        TypicalBox::MultiwireRun => words::multiwire_run(),
        TypicalBox::Junction => words::junction(),
        TypicalBox::Mystery => words::mystery(),
    }
}

/// The breakers that may have to do with it.
#[component]
pub fn Breakers(opened: Opened) -> impl IntoView {
    let ids = opened.rows(|entry| entry.breakers.iter().map(|b| b.id).collect());
    // Breakers of the panel that are not here yet.
    let free = opened.open.part(move |job| {
        let here = job.opened_entry(opened.id);
        let taken = |id: u32| {
            here.is_some_and(|entry| entry.breakers.iter().any(|b| b.in_panel == Some(id)))
        };
        let mut all = vec![("".to_owned(), words::choose().to_owned())];
        for of in &job.panel.breakers {
            if of.space > 0 && !taken(of.id) {
                let name = format!("{} · {}", number_of(job, of.id), of.label);
                all.push((of.id.to_string(), name));
            }
        }
        all
    });
    let list = derived(move || {
        free.get()
            .into_iter()
            .map(|(value, name)| ChoiceOption::new(value, name))
            .collect::<Vec<_>>()
    });
    let add = move |in_panel: Option<u32>| {
        opened.change_with_id(|entry, id| {
            entry.breakers.push(OpenedBreakerEntry {
                id,
                in_panel,
                rating: if in_panel.is_none() {
                    Typed::plain("15")
                } else {
                    Typed::default()
                },
                ..OpenedBreakerEntry::default()
            });
        });
    };
    let any_free = memo(move || free.with(|free| free.len() > 1));
    let on_pick = Callback::new(move |code: String| {
        if let Ok(id) = code.parse() {
            add(Some(id));
        }
    });
    let picker = move || {
        any_free.get().then(|| {
            view! {
                <Pick
                    id="breaker-add".to_owned()
                    label=label(words::breaker_from_panel())
                    options=list
                    value=Signal::stored(String::new())
                    on_pick
                />
            }
        })
    };
    let plain = move || {
        if any_free.get() {
            words::add_other_breaker()
        } else {
            words::add_breaker()
        }
    };
    view! {
        <h3>{words::breakers()}</h3>
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{breaker_row(opened, id)}</For>
        </ul>
        {draw(picker)}
        <button type="button" class="button add" on:click=move |_| add(None)>{say(plain)}</button>
    }
}

fn breaker_row(opened: Opened, id: u32) -> AnyView {
    let open = opened.open;
    let name = opened.name(move |names| names.breaker(id));
    let of = move |words: fn(&str) -> String| derived(move || words(&name.get()));
    let key = move |part: &str| format!("breaker-{id}-{part}");
    let own = open.part(move |job| {
        job.opened_entry(opened.id)
            .and_then(|entry| entry.breakers.iter().find(|b| b.id == id))
            .is_some_and(|b| b.in_panel.is_none())
    });
    // What the panel says of it.
    let line = open.part(move |job| {
        let entry = job.opened_entry(opened.id)?;
        let of = entry.breakers.iter().find(|b| b.id == id)?;
        let in_panel = job.panel.breaker(of.in_panel?)?;
        Some(format!(
            "{} · {} · {}",
            number_of(job, in_panel.id),
            in_panel.label,
            amps_text(in_panel)
        ))
    });
    let legs = || {
        vec![
            ChoiceOption::new("a", words::leg_a()),
            ChoiceOption::new("b", words::leg_b()),
        ]
    };
    let poles = || {
        vec![
            ChoiceOption::new("no", words::one_pole()),
            ChoiceOption::new("yes", words::two_pole()),
        ]
    };
    let known = || {
        vec![
            ChoiceOption::new("no", words::known()),
            ChoiceOption::new("yes", words::a_guess()),
        ]
    };
    let fields = move || {
        own.get().then(|| {
            view! {
                {text(open, key("name"), of(words::breaker_name), "", typed_at!(opened, breakers[id].name))}
                <div class="pair">
                    {choice(open, key("leg"), of(words::breaker_leg), "", legs(), coded_at!(Coded::word, opened, breakers[id].leg))}
                    {choice(open, key("poles"), of(words::breaker_poles), "", poles(), yes_no(typed_at!(opened, breakers[id].two_pole)))}
                </div>
                {number(
                    open,
                    key("rating"),
                    of(words::breaker_rating),
                    fields::RATING,
                    Shown::default(),
                    typed_at!(opened, breakers[id].rating),
                )}
            }
        })
    };
    let out = move |_| opened.take_out(name.get_untracked(), |entry| entry.take_out_breaker(id));
    view! {
        <li>
            <strong>{say(move || line.get().unwrap_or_else(|| name.get()))}</strong>
            {draw(fields)}
            {choice(open, key("guessed"), of(words::guessed), "", known(), yes_no(typed_at!(opened, breakers[id].guessed)))}
            <button type="button" class="button look plain" on:click=out>
                {say(move || words::take_out_device(&name.get()))}
            </button>
        </li>
    }
    .into_any()
}

/// The devices in the boxes.
#[component]
pub fn Devices(opened: Opened) -> impl IntoView {
    let ids = opened.rows(|entry| entry.devices.iter().map(|d| d.id).collect());
    let boxes = opened.rows(|entry| entry.boxes.iter().map(|b| b.id).collect());
    let adders = move || {
        boxes
            .get()
            .into_iter()
            .map(|in_box| {
                let name = opened.names.with(|names| names.box_name(in_box));
                let buttons = [
                    OpenedDeviceKind::Switch,
                    OpenedDeviceKind::ThreeWay,
                    OpenedDeviceKind::FourWay,
                    OpenedDeviceKind::Receptacle,
                    OpenedDeviceKind::Lampholder,
                ]
                .map(|kind| {
                    let add = move |_| {
                        opened.change_with_id(|entry, id| {
                            entry.devices.push(OpenedDeviceEntry {
                                id,
                                in_box,
                                kind,
                                ..OpenedDeviceEntry::default()
                            });
                        });
                    };
                    view! { <button type="button" class="button plus" on:click=add>{device_kind(kind)}</button> }
                        .into_any()
                });
                view! {
                    <div class="row" role="group" aria-label=words::device_add_to(&name)>{Vec::from(buttons)}</div>
                }
            })
            .collect_view()
    };
    view! {
        <h3>{words::devices()}</h3>
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{device_row(opened, id)}</For>
        </ul>
        {draw(adders)}
    }
}

fn device_row(opened: Opened, id: u32) -> AnyView {
    let open = opened.open;
    let name = opened.name(move |names| names.device(id));
    let of = move |words: fn(&str) -> String| derived(move || words(&name.get()));
    let key = move |part: &str| format!("device-{id}-{part}");
    let kind = open.part(move |job| {
        let entry = job.opened_entry(opened.id);
        entry
            .and_then(|entry| entry.devices.iter().find(|d| d.id == id))
            .map_or("", |d| d.kind.code())
    });
    let tab = || {
        vec![
            ChoiceOption::new("no", words::tab_there()),
            ChoiceOption::new("yes", words::tab_out()),
        ]
    };
    let fields = move || {
        let receptacle = kind.get() == OpenedDeviceKind::Receptacle.code();
        let lampholder = kind.get() == OpenedDeviceKind::Lampholder.code();
        let tabs = receptacle.then(|| {
            view! {
                {choice(open, key("hot-tab"), of(words::hot_tab), "", tab(), yes_no(typed_at!(opened, devices[id].hot_tab_out)))}
                {choice(
                    open,
                    key("neutral-tab"),
                    of(words::neutral_tab),
                    "",
                    tab(),
                    yes_no(typed_at!(opened, devices[id].neutral_tab_out)),
                )}
            }
        });
        let load = (receptacle || lampholder).then(|| {
            view! {
                {number(
                    open,
                    key("watts"),
                    of(words::plugged),
                    fields::LOAD_WATTS,
                    Shown::optional(""),
                    typed_at!(opened, devices[id].watts),
                )}
                {pick(
                    open,
                    key("load"),
                    of(words::device_load),
                    Signal::stored(options(words::load_kind_word)),
                    coded_at!(Coded::word, opened, devices[id].load),
                )}
            }
        });
        let lower = receptacle.then(|| {
            number(
                open,
                key("lower"),
                of(words::plugged_lower),
                fields::LOAD_WATTS,
                Shown::optional(""),
                typed_at!(opened, devices[id].lower_watts),
            )
        });
        view! { {tabs} {load} {lower} }
    };
    let out = move |_| opened.take_out(name.get_untracked(), |entry| entry.take_out_device(id));
    view! {
        <li>
            <strong>{name}</strong>
            {draw(fields)}
            <button type="button" class="button look plain" on:click=out>
                {say(move || words::take_out_device(&name.get()))}
            </button>
        </li>
    }
    .into_any()
}
