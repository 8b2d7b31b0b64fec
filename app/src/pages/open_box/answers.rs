//! What follows from the description: what must be off, what is live, whether currents come back, what neutrals carry.

use calc::quantity::fixed;
use calc::wiring::open_box::description::Description;
use calc::wiring::open_box::live_map::{Behind, LiveMap, live_map};
use calc::wiring::open_box::network::Network;
use calc::wiring::open_box::neutral_load::neutral_loads;
use calc::wiring::open_box::off_list::{Listed, OffList, RestsOn, off_list};
use calc::wiring::open_box::return_check::{Astray, PutRight, Share, return_check};
use calc::wiring::open_box::situation::{Position, Situation, SwitchId, switches};
use calc::wiring::open_box::unforeseen::unforeseen;
use leptos::prelude::*;

use super::{Names, Opened};
use crate::answer::RestsOn as RestsOnLine;
use crate::markup::{For, view};
use crate::pictures::circuit::content;
use crate::pictures::{CircuitPicture, Figure};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::open_box::{self as box_words, answers as words};
use crate::words::wiring as wiring_words;

/// What a meter showed and the description does not have, above all that follows from the description.
#[component]
pub fn BeyondDescription(opened: Opened) -> impl IntoView {
    let lines = memo(move || {
        let Some(description) = opened.description() else {
            return Vec::new();
        };
        let taken = opened.taken.get();
        let used = taken.iter().enumerate().filter(|(_, of)| !of.proves);
        let (at, read): (Vec<usize>, Vec<_>) = used
            .filter_map(|(at, of)| Some((at, of.reading.as_ref().ok()?.clone())))
            .unzip();
        unforeseen(&description, &read)
            .unwrap_or_default()
            .iter()
            .map(|of| {
                let number = at.get(of.index).map_or(0, |at| at + 1);
                if of.is_current {
                    words::beyond_amps(number, &fixed(of.shown, 1))
                } else {
                    words::beyond_volts(number, &fixed(of.shown, 0))
                }
            })
            .collect()
    });
    view! {
        <div role="alert">
            <When when=move || !lines.read().is_empty()>
                <section class="notice look now beyond">
                    <h2>{words::beyond_heading()}</h2>
                    {draw(move || lines.get().into_iter().map(|line| view! { <p>{line}</p> }).collect_view())}
                    <p>{words::beyond_do()}</p>
                </section>
            </When>
        </div>
    }
}

/// What must be off, a card for each box.
#[component]
pub fn OffLists(opened: Opened) -> impl IntoView {
    let boxes = opened.rows(|entry| entry.boxes.iter().map(|b| b.id).collect());
    view! {
        <For each=move || boxes.get() key=|id| *id let:in_box>
            <OffCard opened in_box />
        </For>
    }
}

/// The networks of the likeliest explanations of the readings: what may be hidden counts for what must be off.
fn hidden(opened: Opened, description: &Description) -> Vec<Network> {
    let Ok(network) = Network::of(description) else {
        return Vec::new();
    };
    opened.diagnosis.with(|found| {
        let Some(Ok(found)) = found else {
            return Vec::new();
        };
        found
            .answers
            .iter()
            .flat_map(|answer| &answer.members)
            .filter(|member| member.share >= LEAST_HIDDEN && !member.is_nothing())
            .take(MOST_HIDDEN)
            .map(|member| network.edited(&member.edits()))
            .collect()
    })
}

/// An explanation with less than this share brings no breaker onto the list.
const LEAST_HIDDEN: f64 = 0.02;

/// So many of the likeliest explanations count.
const MOST_HIDDEN: usize = 8;

#[component]
fn OffCard(opened: Opened, in_box: u32) -> impl IntoView {
    let planned = RwSignal::new(Vec::<u32>::new());
    let list = memo(move || {
        let description = opened.description()?;
        let planned: Vec<u32> = planned
            .get()
            .into_iter()
            .filter(|id| description.breaker(*id).is_some())
            .collect();
        off_list(
            &description,
            &hidden(opened, &description),
            in_box,
            &planned,
        )
        .ok()
    });
    let count = move || list.with(|list| list.as_ref().map_or(0, |list| list.breakers.len()));
    let value = derived(move || count().to_string());
    let unit = derived(move || {
        if count() == 1 {
            words::off_unit_one().to_owned()
        } else {
            words::off_unit().to_owned()
        }
    });
    let many = memo(move || opened.entry.with(|entry| entry.boxes.len() > 1));
    let heading = move || {
        if many.get() {
            let name = opened.names.with(|names| names.box_name(in_box));
            format!("{} · {name}", words::off_name())
        } else {
            words::off_name().to_owned()
        }
    };
    let rows = move || {
        list.with(|list| {
            let list = list.as_ref()?;
            Some(opened.names.with(|names| off_rows(list, names)))
        })
    };
    let rests = move || {
        list.with(|list| {
            let list = list.as_ref()?;
            Some(opened.names.with(|names| off_rests(list, names)))
        })
    };
    let joints = move || list.with(|list| list.as_ref().map(|list| joint_rows(list, planned)));
    let toggles = move || {
        let ids = opened
            .entry
            .with(|entry| entry.breakers.iter().map(|b| b.id).collect::<Vec<_>>());
        opened.names.with(|names| {
            let all = ids.into_iter().map(|id| (id, names.breaker(id))).collect();
            chips(all, planned)
        })
    };
    view! {
        <section class="answer off-list">
            <h2 class="figure-name">{say(heading)}</h2>
            <Figure value unit />
            <ul class="off">{draw(rows)}</ul>
            {draw(rests)}
            <details class="no-print">
                <summary>{words::joints_heading()}</summary>
                <p class="quiet">{words::joints_hint()}</p>
                <div class="choices checks" role="group" aria-label=words::planned_label()>{draw(toggles)}</div>
                {draw(joints)}
            </details>
        </section>
    }
}

fn off_rows(list: &OffList, names: &Names) -> AnyView {
    if list.breakers.is_empty() {
        return view! { <li>{words::off_none()}</li> }.into_any();
    }
    list.breakers
        .iter()
        .map(|listed| view! { <li><b>{names.breaker(listed.breaker)}</b>" "<span>{why(listed)}</span></li> })
        .collect_view()
        .into_any()
}

fn why(listed: &Listed) -> &'static str {
    match (listed.described, listed.by_metal) {
        (false, _) => words::not_described(),
        (true, true) => words::by_metal(),
        (true, false) => words::by_load(),
    }
}

fn off_rests(list: &OffList, names: &Names) -> AnyView {
    let mut lines = Vec::new();
    if !list.tied.is_empty() {
        lines.push(words::tied(&names.breakers(&list.tied)));
    }
    for rests in &list.rests_on {
        lines.push(match rests {
            RestsOn::Guess { breaker } => words::rests_guess(&names.breaker(*breaker)),
            RestsOn::NotKnown { cable } => words::rests_not_known(&names.letter(*cable)),
        });
    }
    lines.push(words::then_prove().to_owned());
    lines
        .into_iter()
        .map(|line| view! { <p class="rests-on">{line}</p> })
        .collect_view()
        .into_any()
}

fn joint_rows(list: &OffList, planned: RwSignal<Vec<u32>>) -> AnyView {
    let rows = list
        .joints
        .iter()
        .map(|joint| {
            let class = if joint.across_v >= 1.0 || joint.to_ground_v >= 1.0 {
                "look"
            } else {
                ""
            };
            view! {
                <tr>
                    <th scope="row">{joint.joint}</th>
                    <td class=class>{words::volts(fixed(joint.across_v, 1))}</td>
                    <td class=class>{words::volts(fixed(joint.to_ground_v, 1))}</td>
                </tr>
            }
        })
        .collect_view();
    let missing = list.breakers.iter().filter(|listed| listed.missing).count();
    let still = match (planned.with(Vec::is_empty), missing) {
        (true, _) | (_, 0) => None,
        (_, 1) => Some(words::still_live_one().to_owned()),
        (_, missing) => Some(words::still_live(missing)),
    };
    view! {
        {still.map(|still| view! { <p class="notice look">{still}</p> })}
        <div class="table">
            <table class="compare">
                <thead>
                    <tr>
                        <th scope="col">{words::joint_col()}</th>
                        <th scope="col">{words::across_col()}</th>
                        <th scope="col">{words::ground_col()}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}

/// Check boxes of which any number may be on.
pub fn chips(all: Vec<(u32, String)>, on: RwSignal<Vec<u32>>) -> AnyView {
    all.into_iter()
        .map(|(id, name)| {
            let turn = move |_| {
                on.update(|on| match on.iter().position(|of| *of == id) {
                    Some(at) => drop(on.remove(at)),
                    None => on.push(id),
                });
            };
            view! {
                <label>
                    <input type="checkbox" prop:checked=move || on.with(|on| on.contains(&id)) on:change=turn />
                    <span>{name}</span>
                </label>
            }
        })
        .collect_view()
        .into_any()
}

/// What is live in a situation that is chosen here: the drawing, and a table for each box.
#[component]
pub fn LiveMapCard(opened: Opened) -> impl IntoView {
    let off = RwSignal::new(Vec::<u32>::new());
    // Switches by their place among all.
    let set = RwSignal::new(Vec::<u32>::new());
    let situation = memo(move || {
        let description = opened.description().unwrap_or_else(empty);
        let all = switches(&description);
        Situation {
            breakers_off: off
                .get()
                .into_iter()
                .filter(|id| description.breaker(*id).is_some())
                .collect(),
            switches: (0_u32..)
                .zip(all)
                .filter(|(at, _)| set.with(|set| set.contains(at)))
                .map(|(_, switch)| (switch, Position::Two))
                .collect(),
            ..Situation::default()
        }
    });
    let map = memo(move || {
        let description = opened.description()?;
        Some(live_map(&description, &situation.get()))
    });
    let breakers = move || {
        let ids = opened
            .entry
            .with(|entry| entry.breakers.iter().map(|b| b.id).collect::<Vec<_>>());
        opened.names.with(|names| {
            chips(
                ids.into_iter().map(|id| (id, names.breaker(id))).collect(),
                off,
            )
        })
    };
    let switches_there = move || {
        let all: Vec<SwitchId> = opened
            .description()
            .map(|d| switches(&d))
            .unwrap_or_default();
        if all.is_empty() {
            return ().into_any();
        }
        let named: Vec<(u32, String)> = (0_u32..)
            .zip(all)
            .map(|(at, switch)| (at, opened.names.with(|names| names.switch(switch))))
            .collect();
        view! {
            <fieldset class="field no-print">
                <legend>{words::map_switches()}</legend>
                <div class="choices checks">{chips(named, set)}</div>
            </fieldset>
        }
        .into_any()
    };
    let line = move || {
        let off = situation.with(|s| s.breakers_off.clone());
        if off.is_empty() {
            words::map_none_off().to_owned()
        } else {
            words::map_off(&opened.names.with(|names| names.breakers(&off)))
        }
    };
    let boxes = opened.rows(|entry| entry.boxes.iter().map(|b| b.id).collect());
    let refused = move || {
        map.with(|map| {
            matches!(map, Some(Err(_))).then(|| {
                view! { <p class="notice look">{box_words::refusals::switched_short()}</p> }
            })
        })
    };
    let drawing = move |in_box: u32| {
        let drawn = memo(move || {
            let description = opened.description()?;
            let map = map.with(|map| map.as_ref().and_then(|map| map.as_ref().ok().cloned()))?;
            let names = opened.names.get();
            Some(content(
                &description,
                in_box,
                &situation.get(),
                &map,
                &|of| names.breaker(of),
                &|of| names.device(of),
                &|of| names.box_name(of),
            ))
        });
        let drawn = derived(move || drawn.get().unwrap_or_default());
        let says = opened.name(move |names| words::picture(&names.box_name(in_box)));
        view! {
            <figure class="picture circuit">
                <div class="scroll" tabindex="0" role="group" aria-label=move || says.get()>
                    <CircuitPicture content=drawn says />
                </div>
                <figcaption>{words::picture_note()}</figcaption>
            </figure>
        }
        .into_any()
    };
    let table = move |in_box: u32| {
        let rows = move || {
            map.with(|map| match map {
                Some(Ok(map)) => opened.names.with(|names| map_rows(map, in_box, names)),
                _ => ().into_any(),
            })
        };
        view! {
            <div class="table">
                <table class="live-map">
                    <thead>
                        <tr>
                            <th scope="col">{words::map_col_end()}</th>
                            <th scope="col">{words::map_col_is()}</th>
                            <th scope="col">{words::map_col_v()}</th>
                        </tr>
                    </thead>
                    <tbody>{draw(rows)}</tbody>
                </table>
            </div>
        }
        .into_any()
    };
    view! {
        <section class="sheet live">
            <h2>{words::map_heading()}</h2>
            <fieldset class="field no-print">
                <legend>{words::map_situation()}</legend>
                <div class="choices checks">{draw(breakers)}</div>
            </fieldset>
            {draw(switches_there)}
            <p class="quiet">{say(line)}</p>
            {draw(refused)}
            <For each=move || boxes.get() key=|id| *id let:in_box>
                {drawing(in_box)}
                {table(in_box)}
            </For>
            <p class="quiet">{words::body_note()}</p>
        </section>
    }
}

fn empty() -> Description {
    Description {
        panel: calc::wiring::open_box::description::PanelFacts::USUAL,
        breakers: Vec::new(),
        boxes: Vec::new(),
        cables: Vec::new(),
        devices: Vec::new(),
        made: Vec::new(),
    }
}

fn map_rows(map: &LiveMap, in_box: u32, names: &Names) -> AnyView {
    map.contacts
        .iter()
        .filter(|contact| contact.in_box == in_box)
        .map(|contact| {
            let (is, _) = box_words::behind(contact.behind);
            let by = match contact.behind {
                Behind::Live | Behind::ThroughLoad => names.breakers(&contact.breakers),
                _ => String::new(),
            };
            let volts = match contact.to_ground_v {
                Some(volts) => words::volts(fixed(volts, 0)),
                None => "–".to_owned(),
            };
            let body = (contact.body_ma >= 1.0).then(|| {
                view! {
                    <span class="quiet">
                        {words::ma(fixed(contact.body_ma, 0))} ": " {words::effect(contact.effect)}
                    </span>
                }
            });
            view! {
                <tr class=behind_class(contact.behind)>
                    <th scope="row">{names.contact(contact.contact)}</th>
                    <td>{crate::pictures::circuit::mark_svg(contact.behind)} " " {is} " " {by}</td>
                    <td>{volts} {body}</td>
                </tr>
            }
        })
        .collect_view()
        .into_any()
}

/// The class of a row by what stands behind it.
const fn behind_class(behind: Behind) -> &'static str {
    match behind {
        Behind::Live => "is-live",
        Behind::ThroughLoad => "is-back",
        Behind::Induced => "is-stray",
        Behind::Floating => "is-floating",
        Behind::AtGround => "is-ground",
    }
}

/// Whether every current comes back where it went out.
#[component]
pub fn Returns(opened: Opened) -> impl IntoView {
    let edition = opened.open.part(|job| job.code_edition);
    let found = memo(move || {
        let description = opened.description()?;
        return_check(&description, &Situation::default(), edition.get()).ok()
    });
    let drawn = move || {
        found.with(|found| {
            let found = found.as_ref()?;
            if found.astray.is_empty() {
                return Some(view! { <p>{words::returns_fine()}</p> }.into_any());
            }
            let rows = opened.names.with(|names| {
                found
                    .astray
                    .iter()
                    .map(|astray| astray_card(astray, names))
                    .collect_view()
            });
            Some(view! { {rows} <p class="rests-on">{words::qualified()}</p> }.into_any())
        })
    };
    let by = move || wiring_words::by_edition(wiring_words::edition(edition.get()));
    view! {
        <section class="sheet">
            <h2>{words::returns_heading()}</h2>
            {draw(drawn)}
            <p class="rests-on">{say(by)}</p>
        </section>
    }
}

fn shares(all: &[Share], names: &Names) -> String {
    let all: Vec<String> = all
        .iter()
        .map(|share| words::share(&names.letter(share.cable), fixed(share.net_a, 2)))
        .collect();
    all.join(", ")
}

fn astray_card(astray: &Astray, names: &Names) -> AnyView {
    let mut who = names.breaker(astray.breaker);
    if let Some(with) = astray.with {
        who = format!("{who} + {}", names.breaker(with));
    }
    let mut facts = Vec::new();
    if !astray.out.is_empty() {
        facts.push(words::astray_out(&shares(&astray.out, names)));
    }
    if !astray.back.is_empty() {
        facts.push(words::astray_back(&shares(&astray.back, names)));
    }
    if astray.bare_a > 0.05 {
        facts.push(words::astray_bare(fixed(astray.bare_a, 2)));
    }
    if !astray.shares_with.is_empty() {
        facts.push(words::astray_shares(&names.breakers(&astray.shares_with)));
    }
    let right = astray
        .put_right
        .iter()
        .map(|put| view! { <li>{put_right_line(put, names)}</li> })
        .collect_view();
    view! {
        <div class="astray">
            <p class="notice look">{words::astray(&who)}</p>
            <p>{facts.join("; ")}</p>
            <ul>{right}</ul>
            <p class="quiet">{words::sections(&astray.sections.join(", "))}</p>
        </div>
    }
    .into_any()
}

fn put_right_line(put: &PutRight, names: &Names) -> String {
    match put {
        PutRight::Split {
            in_box,
            joint,
            groups,
        } => {
            let groups: Vec<String> = groups.iter().map(|g| names.contacts(g)).collect();
            words::right_split(*joint, &names.box_name(*in_box), &groups.join(" | "))
        }
        PutRight::OwnWhite {
            joint, white, with, ..
        } => words::right_own_white(&names.end(*white), &names.contacts(with), *joint),
        PutRight::NewCable {
            replaces,
            conductors,
            size,
            ..
        } => words::right_new_cable(
            &names.letter(*replaces),
            &colours(conductors),
            &wiring_words::size(*size),
        ),
        PutRight::PartGround { joint, bare, .. } => {
            words::right_part_ground(*joint, &names.contacts(bare))
        }
        PutRight::PartHots { joint, from, .. } => {
            words::right_part_hots(*joint, &names.breaker(*from))
        }
        PutRight::Follow { cables } => {
            let letters: Vec<String> = cables.iter().map(|c| names.letter(*c)).collect();
            words::right_follow(&letters.join(", "))
        }
    }
}

/// Colours in a row.
pub fn colours(all: &[calc::wiring::open_box::description::Colour]) -> String {
    let all: Vec<&str> = all.iter().map(|c| box_words::colour(*c)).collect();
    all.join(", ")
}

/// What each neutral carries.
#[component]
pub fn Neutrals(opened: Opened) -> impl IntoView {
    let edition = opened.open.part(|job| job.code_edition);
    let found = memo(move || {
        let description = opened.description()?;
        neutral_loads(&description, &Situation::default(), &[], edition.get()).ok()
    });
    let drawn = move || {
        found.with(|found| {
            let found = found.as_ref()?;
            if found.is_empty() {
                return Some(view! { <p class="quiet">{words::neutrals_none()}</p> }.into_any());
            }
            let rows = opened.names.with(|names| {
                found
                    .iter()
                    .map(|neutral| {
                        let (class, sign) = if neutral.over {
                            ("verdict over", words::neutral_over())
                        } else {
                            ("verdict", words::neutral_fits())
                        };
                        let carries = words::neutral_line(
                            fixed(neutral.found_a, 1),
                            fixed(neutral.planned_a, 1),
                        );
                        let may = neutral.ampacity_a.map(|a| words::neutral_may(fixed(a, 0)));
                        view! {
                            <li>
                                <strong>{names.wire(neutral.cable, neutral.conductor)}</strong>
                                <span class=class>
                                    <span class="sign">{sign}</span>
                                    <span>{carries} "; " {may}</span>
                                </span>
                            </li>
                        }
                    })
                    .collect_view()
            });
            Some(view! { <ul class="list neutrals">{rows}</ul> }.into_any())
        })
    };
    view! {
        <section class="sheet">
            <h2>{words::neutrals_heading()}</h2>
            {draw(drawn)}
        </section>
    }
}

/// What was taken where nothing was entered.
#[component]
pub fn TakenLines(opened: Opened) -> impl IntoView {
    let lines = move || {
        opened.asked.with(|asked| {
            let taken = asked
                .as_ref()
                .map(|found| found.taken.as_slice())
                .unwrap_or_default();
            opened
                .names
                .with(|names| words::taken(taken, &|cable| names.letter(cable)))
        })
    };
    let drawn = move || {
        lines()
            .into_iter()
            .map(|line| view! { <RestsOnLine text=Signal::stored(line) /> })
            .collect_view()
    };
    view! {
        <section class="sheet">
            <h2>{words::taken_heading()}</h2>
            {draw(drawn)}
        </section>
    }
}
