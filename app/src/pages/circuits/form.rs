//! What is entered of a circuit: its breaker, its wire, its run, its loads, its neutral and its boxes.

use calc::job::sums::Sums;
use calc::job::{CircuitWiring, Job, LoadEntry, LoadUnit, StretchEntry, fields};
use calc::saved::Coded;
use calc::wiring::conductor::Size;
use leptos::prelude::*;

use super::breakers;
use crate::entry::ChoiceOption;
use crate::house::{House, circuit_name};
use crate::markup::{For, view};
use crate::open_job::OpenJob;
use crate::pages::job_fields::{
    At, at, choice, code_at, id_code, known, number, pick, text, yes_no,
};
use crate::pages::sum_fields::{self, Shown, label, numbered, options, size_spot};
use crate::pages::sums::{JobRow, OpenSums};
use crate::pages::wiring_sums::laid::{Bundle, LaidForm, refused_size};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::wiring::circuits as words;
use crate::words::{common, wiring::circuits};

fn yes_or_no() -> Vec<ChoiceOption> {
    vec![
        ChoiceOption::new("no", common::no()),
        ChoiceOption::new("yes", common::yes()),
    ]
}

fn take(job: &Job, id: u32, sums: &mut Sums) {
    if let Some(circuit) = job.circuit(id) {
        sums.ampacity.laid = circuit.laid.clone();
    }
}

fn put(job: &mut Job, id: u32, sums: Sums) {
    if let Some(circuit) = job.circuit_mut(id) {
        circuit.laid = sums.ampacity.laid;
    }
}

/// What is entered of a circuit.
#[component]
pub fn CircuitForm(
    /// The job.
    open: OpenJob,
    /// The wiring's answers.
    house: House,
    /// The circuit.
    id: u32,
) -> impl IntoView {
    let breakers = derived(move || {
        let mut options = vec![ChoiceOption::new("", words::add_on_none())];
        house
            .wiring
            .with(|job| options.extend(breakers(job, false)));
        options
    });
    let wirings = [
        CircuitWiring::HotNeutral,
        CircuitWiring::TwoHots,
        CircuitWiring::Multiwire,
    ]
    .map(|wiring| ChoiceOption::new(wiring.code(), words::wiring(wiring)))
    .to_vec();
    let laid = OpenSums::of_row(JobRow {
        open,
        id,
        take,
        put,
    });
    view! {
        <section class="sheet no-print">
            <h2>{words::circuit_heading()}</h2>
            {text(open, "circuit-name", label(words::name_label()), "", at!(circuit id; name))}
            {pick(open, "circuit-breaker", label(words::breaker_label()), breakers, id_code(at!(circuit id; breaker)))}
            {choice(
                open,
                "circuit-wiring",
                label(words::wiring_label()),
                "",
                wirings,
                code_at!(CircuitWiring::code; circuit id; wiring),
            )}
            {pick(
                open,
                "circuit-purpose",
                label(words::purpose_label()),
                Signal::stored(options(words::purpose)),
                code_at!(Coded::word; circuit id; purpose),
            )}
            <div class="pair level">
                {number(
                    open,
                    "circuit-receptacles",
                    label(words::receptacles_label()),
                    fields::OUTLETS,
                    Shown::default(),
                    at!(circuit id; receptacles),
                )}
                {number(
                    open,
                    "circuit-outlets",
                    label(words::outlets_label()),
                    fields::OUTLETS,
                    Shown::default(),
                    at!(circuit id; outlets),
                )}
            </div>
            <p class="quiet">{words::outlets_hint()}</p>
        </section>
        <Loads open house id />
        <section class="sheet no-print">
            <h2>{words::wire_heading()}</h2>
            {sum_fields::size_pick(
                laid,
                "circuit-size",
                Size::Awg14,
                size_spot!(ampacity.laid.size),
                refused_size(laid),
            )}
            <LaidForm open=laid />
            {choice(
                open,
                "circuit-full",
                label(words::full_label()),
                "",
                yes_or_no(),
                yes_no(at!(circuit id; full_rating)),
            )}
            <Bundle open=laid />
        </section>
        <Run open id />
        <NeutralForm open house id />
        <Boxes open house id />
    }
}

/// What is on it.
#[component]
fn Loads(open: OpenJob, house: House, id: u32) -> impl IntoView {
    let ids = open.part(move |job| {
        job.circuit(id)
            .map(|c| c.loads.iter().map(|load| load.id).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let add = move |_| {
        open.change(|job| {
            let row = job.fresh_id();
            if let Some(circuit) = job.circuit_mut(id) {
                circuit.loads.push(LoadEntry {
                    id: row,
                    ..LoadEntry::default()
                });
            }
        });
    };
    view! {
        <section class="sheet no-print">
            <h2>{words::loads_heading()}</h2>
            <When when=move || ids.read().is_empty()>
                <p class="quiet">{words::loads_none()}</p>
            </When>
            <ul class="rows">
                <For each=move || ids.get() key=|row| *row let:row>{load_row(open, house, id, row, false, ids)}</For>
            </ul>
            <button type="button" class="button add" on:click=add>{words::add_load()}</button>
        </section>
    }
}

/// A load, there or planned: its name, what it takes, and more about it.
pub fn load_row(
    open: OpenJob,
    house: House,
    id: u32,
    row: u32,
    planned: bool,
    ids: Memo<Vec<u32>>,
) -> AnyView {
    let number_of = if planned {
        words::plan_label
    } else {
        words::load_label
    };
    let known_name = open.part(move |job| {
        let load = job.circuit(id).and_then(|c| c.load(row));
        load.map(|load| load.name.clone()).unwrap_or_default()
    });
    let numbered = numbered(ids, row, number_of);
    let named = derived(move || {
        known_name.with(|name| {
            if name.trim().is_empty() {
                numbered.get()
            } else {
                name.clone()
            }
        })
    });
    let of = move |words: fn(&str) -> String| derived(move || words(&named.get()));
    let watts = open.part(move |job| {
        let load = job.circuit(id).and_then(|c| c.load(row));
        load.is_none_or(|load| load.unit == LoadUnit::Watts)
    });
    let key = move |name: &str| format!("load-{row}-{name}");
    let amount = move || {
        let field = if watts.get() {
            fields::LOAD_WATTS
        } else {
            fields::LOAD_AMPS
        };
        number(
            open,
            key("amount"),
            of(words::amount_of),
            field,
            Shown::default(),
            load_at(
                id,
                row,
                |load| load.amount.clone(),
                |load, typed| load.amount = typed,
            ),
        )
    };
    let coded = move |get: fn(&LoadEntry) -> &'static str, put: fn(&mut LoadEntry, String)| {
        load_at(id, row, move |load| get(load).to_owned(), put)
    };
    let multiwire = open.part(move |job| {
        job.circuit(id)
            .is_some_and(|c| c.wiring == CircuitWiring::Multiwire)
    });
    let units = vec![
        ChoiceOption::new(LoadUnit::Watts.code(), words::watts()),
        ChoiceOption::new(LoadUnit::Amps.code(), words::amperes()),
    ];
    let stretches = derived(move || {
        let mut ends = vec![ChoiceOption::new("", words::far_end())];
        house.wiring.with(|job| {
            let all = job.circuit(id).map(|c| c.stretches.as_slice());
            for (at, stretch) in all.unwrap_or_default().iter().enumerate() {
                let name = if stretch.name.trim().is_empty() {
                    words::stretch_name(at + 1)
                } else {
                    stretch.name.clone()
                };
                ends.push(ChoiceOption::new(stretch.id.to_string(), name));
            }
        });
        ends
    });
    let out = move |_| {
        open.change(|job| {
            if let Some(circuit) = job.circuit_mut(id) {
                circuit.loads.retain(|load| load.id != row);
                circuit.planned.retain(|load| load.id != row);
            }
        });
    };
    view! {
        <li>
            <div class="pair level of-load">
                {text(
                    open,
                    key("name"),
                    numbered,
                    "",
                    load_at(id, row, |load| load.name.clone(), |load, name| load.name = name),
                )}
                {draw(amount)}
            </div>
            <details>
                <summary>{say(move || words::more_of(&named.get()))}</summary>
                <div class="stack">
                    {pick(
                        open,
                        key("kind"),
                        of(words::kind_of),
                        Signal::stored(options(words::kind)),
                        coded(|load| load.kind.word(), |load, code| sum_fields::take_code(&mut load.kind, code)),
                    )}
                    {choice(
                        open,
                        key("unit"),
                        of(words::unit_of),
                        "",
                        units,
                        coded(|load| load.unit.code(), |load, code| sum_fields::take_code(&mut load.unit, code)),
                    )}
                    {choice(
                        open,
                        key("continuous"),
                        of(words::continuous_of),
                        "",
                        yes_or_no(),
                        yes_no(load_at(id, row, |load| load.continuous, |load, on| load.continuous = on)),
                    )}
                    {choice(
                        open,
                        key("electronic"),
                        of(words::electronic_of),
                        words::electronic_hint(),
                        yes_or_no(),
                        yes_no(load_at(id, row, |load| load.electronic, |load, on| load.electronic = on)),
                    )}
                    {move || {
                        multiwire
                            .get()
                            .then(|| pick(
                                open,
                                key("across"),
                                of(words::across_of),
                                Signal::stored(options(circuits::across)),
                                coded(
                                    |load| load.across.word(),
                                    |load, code| sum_fields::take_code(&mut load.across, code),
                                ),
                            ))
                    }}
                    {pick(
                        open,
                        key("stretch"),
                        of(words::stretch_of),
                        stretches,
                        id_code(load_at(id, row, |load| load.stretch, |load, at| load.stretch = at)),
                    )}
                </div>
            </details>
            <button type="button" class="button look plain" on:click=out>
                {common::take_out()}
                <span class="visually-hidden">" " {named}</span>
            </button>
        </li>
    }
    .into_any()
}

/// The place of a part of a load, there or planned.
fn load_at<T: Default>(
    id: u32,
    row: u32,
    get: impl Fn(&LoadEntry) -> T + Send + Sync + 'static,
    put: fn(&mut LoadEntry, T),
) -> At<T> {
    At::new(
        move |job: &Job| {
            let load = job.circuit(id).and_then(|c| c.load(row));
            load.map(&get).unwrap_or_default()
        },
        move |job: &mut Job, value| {
            let Some(circuit) = job.circuit_mut(id) else {
                return;
            };
            let mut all = circuit.loads.iter_mut().chain(&mut circuit.planned);
            if let Some(load) = all.find(|load| load.id == row) {
                put(load, value);
            }
        },
    )
}

/// The stretches of its run.
#[component]
fn Run(open: OpenJob, id: u32) -> impl IntoView {
    let ids = open.part(move |job| {
        job.circuit(id)
            .map(|c| c.stretches.iter().map(|s| s.id).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let add = move |_| {
        open.change(|job| {
            let row = job.fresh_id();
            if let Some(circuit) = job.circuit_mut(id) {
                circuit.stretches.push(StretchEntry {
                    id: row,
                    ..StretchEntry::default()
                });
            }
        });
    };
    let row = move |row: u32| {
        let out = move |_| {
            open.change(|job| {
                let Some(circuit) = job.circuit_mut(id) else {
                    return;
                };
                circuit.stretches.retain(|s| s.id != row);
                // What was at its end is at the far end now.
                let all = circuit.loads.iter_mut().chain(&mut circuit.planned);
                for load in all.filter(|load| load.stretch == Some(row)) {
                    load.stretch = None;
                }
            });
        };
        let name = numbered(ids, row, words::stretch_name);
        view! {
            <li>
                <div class="pair level">
                    {number(
                        open,
                        format!("stretch-{row}"),
                        numbered(ids, row, words::stretch_label),
                        fields::RUN,
                        Shown::default(),
                        at!(circuit id, stretches[row]; length),
                    )}
                    {text(
                        open,
                        format!("stretch-name-{row}"),
                        numbered(ids, row, words::stretch_name_label),
                        "",
                        at!(circuit id, stretches[row]; name),
                    )}
                </div>
                <button type="button" class="button look plain" on:click=out>
                    {common::take_out()}
                    <span class="visually-hidden">" " {name}</span>
                </button>
            </li>
        }
        .into_any()
    };
    view! {
        <section class="sheet no-print">
            <h2>{words::run_heading()}</h2>
            <p class="quiet">{words::run_hint()}</p>
            <ul class="rows">
                <For each=move || ids.get() key=|row| *row let:at>{row(at)}</For>
            </ul>
            <button type="button" class="button add" on:click=add>{words::add_stretch()}</button>
        </section>
    }
}

/// Whom it shares its neutral with, and how that neutral runs.
#[component]
fn NeutralForm(open: OpenJob, house: House, id: u32) -> impl IntoView {
    let others = derived(move || {
        house.wiring.with(|job| {
            let all = job.circuits.iter();
            let all = all.filter(|c| c.id != id && c.wiring != CircuitWiring::TwoHots);
            all.map(|c| (c.id, circuit_name(&c.name)))
                .map(|(id, name)| ChoiceOption::new(id.to_string(), name))
                .collect::<Vec<_>>()
        })
    });
    // Named from either side.
    let shared = memo(move || {
        house.wiring.with(|job| {
            let own = job.circuit(id).map(|c| c.neutral_with.clone());
            let mut shared = own.unwrap_or_default();
            for other in &job.circuits {
                if other.neutral_with.contains(&id) && !shared.contains(&other.id) {
                    shared.push(other.id);
                }
            }
            shared
        })
    });
    let turn = move |other: u32| {
        let on = shared.with_untracked(|shared| shared.contains(&other));
        open.change(|job| {
            if on {
                for (of, with) in [(id, other), (other, id)] {
                    if let Some(circuit) = job.circuit_mut(of) {
                        circuit.neutral_with.retain(|named| *named != with);
                    }
                }
            } else if let Some(circuit) = job.circuit_mut(id) {
                circuit.neutral_with.push(other);
            }
        });
    };
    let three = || {
        vec![
            ChoiceOption::new("yes", common::yes()),
            ChoiceOption::new("no", common::no()),
            ChoiceOption::new("", words::unknown()),
        ]
    };
    let list = move || {
        others.with(|others| switches(others, shared, Callback::new(turn), words::shared_none()))
    };
    let two_hots = open.part(move |job| {
        job.circuit(id)
            .is_some_and(|c| c.wiring == CircuitWiring::TwoHots)
    });
    view! {
        <When when=move || !two_hots.get()>
            <section class="sheet no-print">
                <h2>{words::neutral_form_heading()}</h2>
                <fieldset class="field">
                    <legend>{words::shared_label()}</legend>
                    {draw(list)}
                </fieldset>
                {choice(
                    open,
                    "neutral-with-hots",
                    label(words::with_hots_label()),
                    "",
                    three(),
                    known(at!(circuit id; neutral_with_hots)),
                )}
                {choice(
                    open,
                    "neutral-pigtailed",
                    label(words::pigtailed_label()),
                    "",
                    three(),
                    known(at!(circuit id; neutral_pigtailed)),
                )}
            </section>
        </When>
    }
}

/// A list of which any number may be on, each a check box.
fn switches(
    options: &[ChoiceOption],
    on: Memo<Vec<u32>>,
    turn: Callback<u32>,
    none: &'static str,
) -> AnyView {
    if options.is_empty() {
        return view! { <p class="quiet">{none}</p> }.into_any();
    }
    let rows = options
        .iter()
        .map(|option| {
            let id: u32 = option.value.parse().unwrap_or(0);
            view! {
                <label>
                    <input
                        type="checkbox"
                        prop:checked=move || on.with(|on| on.contains(&id))
                        on:change=move |_| turn.run(id)
                    />
                    <span>{option.words.clone()}</span>
                </label>
            }
        })
        .collect_view();
    view! { <div class="choices checks">{rows}</div> }.into_any()
}

/// The boxes on its way.
#[component]
fn Boxes(open: OpenJob, house: House, id: u32) -> impl IntoView {
    let all = derived(move || {
        house.wiring.with(|job| {
            let all = job.boxes.iter();
            all.map(|b| ChoiceOption::new(b.id.to_string(), crate::house::box_name(&b.name)))
                .collect::<Vec<_>>()
        })
    });
    let on = open.part(move |job| job.circuit(id).map(|c| c.boxes.clone()).unwrap_or_default());
    let turn = move |of: u32| {
        open.change(|job| {
            if let Some(circuit) = job.circuit_mut(id) {
                match circuit.boxes.iter().position(|b| *b == of) {
                    Some(at) => drop(circuit.boxes.remove(at)),
                    None => circuit.boxes.push(of),
                }
            }
        });
    };
    let list = move || all.with(|all| switches(all, on, Callback::new(turn), words::boxes_none()));
    view! {
        <section class="sheet no-print">
            <fieldset class="field">
                <legend>{words::boxes_heading()}</legend>
                {draw(list)}
            </fieldset>
        </section>
    }
}
