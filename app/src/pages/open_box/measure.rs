//! Readings: what was measured, where, and what was off, apart and set while it was.

use calc::job::questions::opened::spot;
use calc::job::questions::wiring::AskProblem;
use calc::job::{
    LoadOffEntry, OpenedEntry, ReadingEntry, ReadingKind, SpotEntry, SpotKind, SwitchedEntry,
    Typed, fields,
};
use calc::saved::{self, Coded};
use calc::wiring::open_box::description::{Description, End, Side};
use calc::wiring::open_box::live_map::contacts_of;
use calc::wiring::open_box::reading::{Point, Probe, ReadingRefusal, Round};
use calc::wiring::open_box::situation::{
    Apart, LoadId, Position, Situation, SwitchId, loads, switches,
};
use leptos::prelude::*;

use super::{Names, Opened, typed_at};
use crate::entry::ChoiceOption;
use crate::markup::{For, view};
use crate::pages::job_fields::{At, choice, known, number, pick, yes_no};
use crate::pages::sum_fields::{Shown, numbered};
use crate::reactive::{derived, draw, memo, say};
use crate::words::common;
use crate::words::open_box::measure as words;

/// The readings.
#[component]
pub fn Readings(opened: Opened) -> impl IntoView {
    let ids = opened.rows(|entry| entry.readings.iter().map(|r| r.id).collect());
    let add = move |_| {
        opened.change_with_id(|entry, id| {
            let in_box = entry.boxes.first().map_or(0, |b| b.id);
            entry.readings.push(ReadingEntry {
                id,
                from: SpotEntry {
                    what: SpotKind::Joint,
                    in_box,
                    joint: 1,
                    ..SpotEntry::default()
                },
                to: spot(Point::GroundBar),
                ..ReadingEntry::default()
            });
        });
    };
    let none = memo(move || ids.with(Vec::is_empty));
    let empty = move || {
        none.get()
            .then(|| view! { <p class="quiet">{words::none_yet()}</p> })
    };
    view! {
        <section class="sheet no-print">
            <h2>{words::heading()}</h2>
            {draw(empty)}
            <ul class="rows">
                <For each=move || ids.get() key=|id| *id let:id>{reading_row(opened, ids, id)}</For>
            </ul>
            <button type="button" class="button add" on:click=add>{words::add()}</button>
        </section>
    }
}

/// A part of a reading that follows it.
fn part<T: Default + PartialEq + Send + Sync + 'static>(
    opened: Opened,
    id: u32,
    of: fn(&ReadingEntry) -> T,
) -> Memo<T> {
    opened.open.part(move |job| {
        let entry = job.opened_entry(opened.id);
        entry
            .and_then(|entry| entry.readings.iter().find(|r| r.id == id))
            .map(of)
            .unwrap_or_default()
    })
}

fn change(opened: Opened, id: u32, change: impl FnOnce(&mut ReadingEntry)) {
    let change = Box::new(change) as Box<dyn FnOnce(&mut ReadingEntry)>;
    opened.change(|entry| {
        if let Some(reading) = entry.readings.iter_mut().find(|r| r.id == id) {
            change(reading);
        }
    });
}

/// A place as the code of its choice: its text as it is saved.
fn spot_code(spot: &SpotEntry) -> String {
    saved::write(spot)
}

fn spot_of(code: &str) -> Option<SpotEntry> {
    saved::read(code).ok()
}

/// The places that a probe can touch, as choices.
fn points(description: &Description, names: &Names) -> Vec<(String, String)> {
    let mut all = Vec::new();
    let mut push = |point: Point| {
        all.push((spot_code(&spot(point)), names.point(point)));
    };
    let mut joints: Vec<(u32, u32)> = Vec::new();
    for made in &description.made {
        if let (calc::wiring::open_box::description::At::Joint(joint), Some(in_box)) =
            (made.at, description.box_of_contact(made.contact))
            && !joints.contains(&(in_box, joint))
        {
            joints.push((in_box, joint));
        }
    }
    calc::order::Order::order(joints.as_mut_slice());
    for (in_box, joint) in joints {
        push(Point::Joint { in_box, joint });
    }
    push(Point::GroundBar);
    push(Point::NeutralBar);
    push(Point::Pipe);
    for (contact, _) in contacts_of(description) {
        push(match contact {
            calc::wiring::open_box::description::Contact::End(end) => Point::End(end),
            calc::wiring::open_box::description::Contact::Terminal { device, terminal } => {
                Point::Terminal { device, terminal }
            }
        });
    }
    all
}

/// What a clamp can go round: cables and wires in the boxes.
fn rounds(description: &Description, names: &Names) -> Vec<(String, String)> {
    let mut all = Vec::new();
    for cable in &description.cables {
        for side in [Side::Near, Side::Far] {
            let end = |conductor| End {
                cable: cable.id,
                conductor,
                side,
            };
            if description.box_of(end(0)).is_none() {
                continue;
            }
            let round = Round::Cable {
                cable: cable.id,
                side,
            };
            let code = spot_code(&spot(Point::End(end(0))));
            all.push((format!("all{code}"), names.round(round)));
            for conductor in 0..cable.conductors.len() {
                let end = end(conductor);
                all.push((spot_code(&spot(Point::End(end))), names.end(end)));
            }
        }
    }
    all
}

fn choices(
    opened: Opened,
    of: fn(&Description, &Names) -> Vec<(String, String)>,
) -> Signal<Vec<ChoiceOption>> {
    derived(move || {
        let Some(description) = opened.description() else {
            return Vec::new();
        };
        opened.names.with(|names| {
            of(&description, names)
                .into_iter()
                .map(|(value, name)| ChoiceOption::new(value, name))
                .collect()
        })
    })
}

/// The place of a place.
fn place_at(opened: Opened, id: u32, is_to: bool) -> At<String> {
    let find = move |entry: &OpenedEntry| {
        let reading = entry.readings.iter().find(|r| r.id == id)?;
        Some(match (is_to, reading.what, reading.whole_cable) {
            (true, ..) => spot_code(&reading.to),
            (false, ReadingKind::Amps, true) => format!("all{}", spot_code(&reading.from)),
            _ => spot_code(&reading.from),
        })
    };
    At::new(
        move |job| {
            job.opened_entry(opened.id)
                .and_then(find)
                .unwrap_or_default()
        },
        move |job, code: String| {
            let entry = job.opened_entry_mut(opened.id);
            let reading = entry.and_then(|e| e.readings.iter_mut().find(|r| r.id == id));
            let (whole, code) = match code.strip_prefix("all") {
                Some(code) => (true, code.to_owned()),
                None => (false, code),
            };
            if let (Some(reading), Some(spot)) = (reading, spot_of(&code)) {
                if is_to {
                    reading.to = spot;
                } else {
                    reading.from = spot;
                    reading.whole_cable = whole;
                }
            }
        },
    )
}

fn reading_row(opened: Opened, ids: Memo<Vec<u32>>, id: u32) -> AnyView {
    let open = opened.open;
    let of = move |words: fn(usize) -> String| numbered(ids, id, words);
    let key = move |part: &str| format!("reading-{id}-{part}");
    let what = part(opened, id, |r| r.what.code());
    let kinds = vec![
        ChoiceOption::new(ReadingKind::Volts.code(), words::volts()),
        ChoiceOption::new(ReadingKind::Tester.code(), words::tester()),
        ChoiceOption::new(ReadingKind::Amps.code(), words::amps()),
        ChoiceOption::new(ReadingKind::Ohms.code(), words::ohms()),
    ];
    let kind = At::new(
        move |job| {
            let entry = job.opened_entry(opened.id);
            let reading = entry.and_then(|e| e.readings.iter().find(|r| r.id == id));
            reading
                .map(|r| r.what.code().to_owned())
                .unwrap_or_default()
        },
        move |job, code: String| {
            let first = first_cable(job, opened.id);
            let entry = job.opened_entry_mut(opened.id);
            let Some(reading) = entry.and_then(|e| e.readings.iter_mut().find(|r| r.id == id))
            else {
                return;
            };
            crate::pages::sum_fields::take_code(&mut reading.what, code);
            // A clamp goes round a cable or a wire of it.
            if reading.what == ReadingKind::Amps
                && reading.from.what != SpotKind::End
                && let Some(cable) = first
            {
                reading.from = SpotEntry::end(cable, 0, Side::Near);
                reading.whole_cable = true;
            }
        },
    );
    let fields_of = move || {
        let what = what.get();
        let points = choices(opened, points);
        let shown = |field| {
            number(
                open,
                key("shown"),
                of(words::shown),
                field,
                Shown::default(),
                typed_at!(opened, readings[id].shown),
            )
        };
        if what == ReadingKind::Tester.code() {
            return view! {
                {pick(open, key("from"), of(words::from), points, place_at(opened, id, false))}
                {choice(
                    open,
                    key("glows"),
                    of(words::glows),
                    "",
                    vec![ChoiceOption::new("yes", common::yes()), ChoiceOption::new("no", common::no())],
                    known(typed_at!(opened, readings[id].glows)),
                )}
            }
            .into_any();
        }
        if what == ReadingKind::Amps.code() {
            return view! {
                {pick(open, key("round"), of(words::round), choices(opened, rounds), place_at(opened, id, false))}
                {shown(fields::SOME_AMPS)}
            }
            .into_any();
        }
        let from = pick(
            open,
            key("from"),
            of(words::from),
            points,
            place_at(opened, id, false),
        );
        let to = pick(
            open,
            key("to"),
            of(words::to),
            points,
            place_at(opened, id, true),
        );
        if what == ReadingKind::Ohms.code() {
            let everything = move |_| {
                change(opened, id, |r| r.everything_off = !r.everything_off);
            };
            let is_off = part(opened, id, |r| r.everything_off);
            let is_open = part(opened, id, |r| r.open);
            let turn = move |_| change(opened, id, |r| r.open = !r.open);
            return view! {
                {from}
                {to}
                <div class="choices checks">
                    <label>
                        <input type="checkbox" prop:checked=move || is_off.get() on:change=everything />
                        <span>{of(words::everything_off)}</span>
                    </label>
                    <label>
                        <input type="checkbox" prop:checked=move || is_open.get() on:change=turn />
                        <span>{of(words::open_line)}</span>
                    </label>
                </div>
                {shown(fields::SHOWN_OHMS)}
            }
            .into_any();
        }
        let meters = vec![
            ChoiceOption::new("high_impedance", words::meter_high()),
            ChoiceOption::new("low_impedance", words::meter_low()),
        ];
        view! {
            {from}
            {to}
            {choice(open, key("meter"), of(words::meter), "", meters, super::coded_at!(Coded::word, opened, readings[id].meter))}
            {shown(fields::MEASURED_VOLTS)}
        }
        .into_any()
    };
    let summary = move || {
        opened.taken.with(|taken| {
            let found = taken.iter().find(|of| of.row == id)?;
            opened.names.with(|names| match &found.reading {
                Ok(reading) => Some(names.situation(&reading.situation)),
                Err(_) => None,
            })
        })
    };
    let trouble = move || {
        opened.taken.with(|taken| {
            let found = taken.iter().find(|of| of.row == id)?;
            let line = trouble_line(found.reading.as_ref().err()?)?;
            Some(view! { <p class="field-trouble">{line}</p> })
        })
    };
    let out = move |_| {
        let said = of(words::reading_n).get_untracked();
        opened.take_out(said, |entry| entry.readings.retain(|r| r.id != id));
    };
    view! {
        <li class="reading">
            <strong>{of(words::reading_n)}</strong>
            {choice(open, key("what"), of(words::what), "", kinds, kind)}
            {draw(fields_of)}
            {off_row(opened, ids, id)}
            {draw(trouble)}
            <p class="quiet">{say(move || summary().unwrap_or_default())}</p>
            <details>
                <summary>{of(words::more)}</summary>
                <div class="stack">{more(opened, ids, id)}</div>
            </details>
            <button type="button" class="button look plain" on:click=out>{of(words::take_out)}</button>
        </li>
    }
    .into_any()
}

fn first_cable(job: &calc::job::Job, id: u32) -> Option<u32> {
    job.opened_entry(id)?.cables.first().map(|cable| cable.id)
}

/// Why a reading can't be used; nothing where a field says so itself.
fn trouble_line(problem: &AskProblem<ReadingRefusal>) -> Option<&'static str> {
    Some(match problem {
        AskProblem::Entries(problems) => {
            if problems
                .iter()
                .any(|p| matches!(p.name, "from" | "to" | "apart"))
            {
                words::cant_point()
            } else {
                return None;
            }
        }
        AskProblem::Refused(refusal) => match refusal {
            ReadingRefusal::Situation(_) => words::cant_situation(),
            ReadingRefusal::NoPoint { .. } => words::cant_point(),
            ReadingRefusal::SamePoint { .. } => words::cant_same(),
            ReadingRefusal::OhmsNotOff => words::cant_ohms(),
            ReadingRefusal::WrongOutcome | ReadingRefusal::Figure { .. } => words::cant_figure(),
            ReadingRefusal::OverLimit => words::cant_over(),
        },
    })
}

/// A check box that turns something of a reading.
fn check(on: Memo<bool>, name: String, turn: impl Fn() + Send + Sync + 'static) -> AnyView {
    let turn = Box::new(turn) as Box<dyn Fn() + Send + Sync>;
    view! {
        <label>
            <input type="checkbox" prop:checked=move || on.get() on:change=move |_| turn() />
            <span>{name}</span>
        </label>
    }
    .into_any()
}

/// The breakers that were off.
fn off_row(opened: Opened, ids: Memo<Vec<u32>>, id: u32) -> AnyView {
    let breakers = opened.rows(|entry| entry.breakers.iter().map(|b| b.id).collect());
    let rows = move || {
        breakers
            .get()
            .into_iter()
            .map(|breaker| {
                let on = opened.open.part(move |job| {
                    let entry = job.opened_entry(opened.id);
                    let reading = entry.and_then(|e| e.readings.iter().find(|r| r.id == id));
                    reading.is_some_and(|r| r.breakers_off.contains(&breaker))
                });
                let name = opened.names.with(|names| names.breaker(breaker));
                check(on, name, move || {
                    change(opened, id, |r| {
                        match r.breakers_off.iter().position(|of| *of == breaker) {
                            Some(at) => drop(r.breakers_off.remove(at)),
                            None => r.breakers_off.push(breaker),
                        }
                    });
                })
            })
            .collect_view()
    };
    view! {
        <fieldset class="field">
            <legend>{numbered(ids, id, words::off)}</legend>
            <div class="choices checks">{draw(rows)}</div>
        </fieldset>
    }
    .into_any()
}

/// Switches, loads and joints of its situation; the meter's range.
fn more(opened: Opened, ids: Memo<Vec<u32>>, id: u32) -> AnyView {
    let description = move || opened.description();
    let reading = move |job: &calc::job::Job| {
        let entry = job.opened_entry(opened.id)?;
        entry.readings.iter().find(|r| r.id == id).cloned()
    };
    let switch_rows = move || {
        let Some(description) = description() else {
            return Vec::new();
        };
        opened.names.with(|names| {
            switches(&description)
                .into_iter()
                .map(|switch| {
                    let wanted = switched_entry(switch);
                    let here = wanted.clone();
                    let on = opened.open.part(move |job| {
                        reading(job).is_some_and(|r| {
                            r.switched
                                .iter()
                                .any(|s| same_switch(s, &here) && s.position == Position::Two)
                        })
                    });
                    check(on, names.switch(switch), move || {
                        let wanted = wanted.clone();
                        change(opened, id, move |r| {
                            match r.switched.iter().position(|s| same_switch(s, &wanted)) {
                                Some(at) => drop(r.switched.remove(at)),
                                None => r.switched.push(wanted),
                            }
                        });
                    })
                })
                .collect::<Vec<_>>()
        })
    };
    let load_rows = move || {
        let Some(description) = description() else {
            return Vec::new();
        };
        opened.names.with(|names| {
            loads(&description)
                .into_iter()
                .map(|load| {
                    let wanted = load_entry(load);
                    let here = wanted.clone();
                    let on = opened
                        .open
                        .part(move |job| reading(job).is_some_and(|r| r.loads_off.contains(&here)));
                    check(on, names.load(load), move || {
                        let wanted = wanted.clone();
                        change(opened, id, move |r| {
                            match r.loads_off.iter().position(|l| *l == wanted) {
                                Some(at) => drop(r.loads_off.remove(at)),
                                None => r.loads_off.push(wanted),
                            }
                        });
                    })
                })
                .collect::<Vec<_>>()
        })
    };
    let joint_rows = move || {
        let Some(description) = description() else {
            return Vec::new();
        };
        opened.names.with(|names| {
            points(&description, names)
                .into_iter()
                .filter_map(|(code, name)| Some((spot_of(&code)?, name)))
                .filter(|(spot, _)| spot.what == SpotKind::Joint)
                .map(|(spot, name)| {
                    let here = spot.clone();
                    let on = opened.open.part(move |job| {
                        reading(job).is_some_and(|r| r.apart.iter().any(|s| s.is_same(&here)))
                    });
                    check(on, name, move || {
                        let spot = spot.clone();
                        change(opened, id, move |r| {
                            match r.apart.iter().position(|s| s.is_same(&spot)) {
                                Some(at) => drop(r.apart.remove(at)),
                                None => r.apart.push(spot),
                            }
                        });
                    })
                })
                .collect::<Vec<_>>()
        })
    };
    let what = part(opened, id, |r| r.what.code());
    let range = move || {
        let field = match what.get() {
            code if code == ReadingKind::Tester.code() => return None,
            code if code == ReadingKind::Amps.code() => fields::SOME_AMPS,
            code if code == ReadingKind::Ohms.code() => fields::SHOWN_OHMS,
            _ => fields::MEASURED_VOLTS,
        };
        Some(number(
            opened.open,
            format!("reading-{id}-range"),
            numbered(ids, id, words::range),
            field,
            Shown::optional(""),
            typed_at!(opened, readings[id].range),
        ))
    };
    let group = move |title: fn(usize) -> String,
                      hint: &'static str,
                      rows: Box<dyn FnMut() -> Vec<AnyView> + Send>| {
        view! {
            <fieldset class="field">
                <legend>{numbered(ids, id, title)}</legend>
                <span class="hint" hidden=hint.is_empty()>{hint}</span>
                <div class="choices checks">{draw(rows)}</div>
            </fieldset>
        }
        .into_any()
    };
    let everything = vec![
        ChoiceOption::new("no", common::no()),
        ChoiceOption::new("yes", common::yes()),
    ];
    view! {
        {choice(
            opened.open,
            format!("reading-{id}-everything"),
            numbered(ids, id, words::everything_off),
            "",
            everything,
            yes_no(typed_at!(opened, readings[id].everything_off)),
        )}
        {group(words::switched, "", Box::new(switch_rows))}
        {group(words::loads_off, "", Box::new(load_rows))}
        {group(words::apart, words::apart_hint(), Box::new(joint_rows))}
        {draw(range)}
    }
    .into_any()
}

fn switched_entry(switch: SwitchId) -> SwitchedEntry {
    let of = |cable, device, four_way| SwitchedEntry {
        device,
        cable,
        four_way,
        position: Position::Two,
        ..SwitchedEntry::default()
    };
    match switch {
        SwitchId::Device(device) => of(0, Some(device), false),
        SwitchId::Beyond(cable) => of(cable, None, false),
        SwitchId::BeyondFourWay(cable) => of(cable, None, true),
    }
}

fn same_switch(one: &SwitchedEntry, other: &SwitchedEntry) -> bool {
    match (one.device, other.device) {
        (None, None) => (one.cable, one.four_way) == (other.cable, other.four_way),
        (one, other) => one == other,
    }
}

fn load_entry(load: LoadId) -> LoadOffEntry {
    let of = |device, lower, cable, load| LoadOffEntry {
        device,
        lower,
        cable,
        load,
        ..LoadOffEntry::default()
    };
    match load {
        LoadId::Device(device) => of(Some(device), false, 0, 0),
        LoadId::Lower(device) => of(Some(device), true, 0, 0),
        LoadId::Beyond { cable, load } => of(None, false, cable, u32::try_from(load).unwrap_or(0)),
    }
}

/// The entry of a reading that is to be taken: everything but what it shows.
pub fn entry_of(id: u32, situation: &Situation, probe: &Probe) -> ReadingEntry {
    let mut entry = ReadingEntry {
        id,
        everything_off: situation.everything_off,
        breakers_off: situation.breakers_off.clone(),
        apart: situation
            .apart
            .iter()
            .map(|apart| match *apart {
                Apart::Joint { in_box, joint } => spot(Point::Joint { in_box, joint }),
                Apart::Contact(calc::wiring::open_box::description::Contact::End(end)) => {
                    spot(Point::End(end))
                }
                Apart::Contact(calc::wiring::open_box::description::Contact::Terminal {
                    device,
                    terminal,
                }) => spot(Point::Terminal { device, terminal }),
            })
            .collect(),
        switched: situation
            .switches
            .iter()
            .map(|(switch, position)| SwitchedEntry {
                position: *position,
                ..switched_entry(*switch)
            })
            .collect(),
        loads_off: situation
            .loads_off
            .iter()
            .map(|load| load_entry(*load))
            .collect(),
        shown: Typed::default(),
        ..ReadingEntry::default()
    };
    match *probe {
        Probe::Volts { from, to, meter } => {
            entry.what = ReadingKind::Volts;
            (entry.from, entry.to) = (spot(from), spot(to));
            entry.meter = meter;
        }
        Probe::Ohms { from, to } => {
            entry.what = ReadingKind::Ohms;
            (entry.from, entry.to) = (spot(from), spot(to));
        }
        Probe::Tester { at } => {
            entry.what = ReadingKind::Tester;
            entry.from = spot(at);
        }
        Probe::Amps { round } => {
            entry.what = ReadingKind::Amps;
            match round {
                Round::Conductor(end) => entry.from = spot(Point::End(end)),
                Round::Cable { cable, side } => {
                    entry.whole_cable = true;
                    entry.from = SpotEntry::end(cable, 0, side);
                }
            }
        }
    }
    entry
}
