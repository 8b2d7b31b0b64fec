//! The cables: their wires by tapping colours, where each goes by one choice.

use calc::job::fields;
use calc::job::{GoesKind, HotEntry, OpenedCableEntry, OpenedEntry};
use calc::saved::Coded;
use calc::wiring::conductor::Size;
use calc::wiring::open_box::description::{Colour, SwitchForm};
use leptos::prelude::*;

use super::{Opened, typed_at};
use crate::entry::{ChoiceOption, Pick};
use crate::markup::{For, view};
use crate::pages::job_fields::{At, number, pick, text};
use crate::pages::sum_fields::{Shown, options, size_code, size_of, sizes};
use crate::reactive::{derived, draw};
use crate::words::open_box as words;

const COLOURS: [Colour; 5] = [
    Colour::Black,
    Colour::Red,
    Colour::White,
    Colour::MarkedWhite,
    Colour::Bare,
];

/// The cables.
#[component]
pub fn Cables(opened: Opened) -> impl IntoView {
    let ids = opened.rows(|entry| entry.cables.iter().map(|c| c.id).collect());
    let boxes = opened.rows(|entry| entry.boxes.iter().map(|b| b.id).collect());
    let add = move |in_box: u32, three: bool| {
        use Colour::{Bare, Black, Red, White};
        let conductors: &[Colour] = if three {
            &[Black, Red, White, Bare]
        } else {
            &[Black, White, Bare]
        };
        opened.change_with_id(|entry, id| entry.add_cable(id, in_box, conductors));
    };
    let adders = move || {
        let boxes = boxes.get();
        let many = boxes.len() > 1;
        boxes
            .into_iter()
            .map(|in_box| {
                let name = opened.names.with(|names| names.box_name(in_box));
                let named = |says: &str| {
                    if many {
                        format!("{says} · {name}")
                    } else {
                        says.to_owned()
                    }
                };
                view! {
                    <button type="button" class="button add" on:click=move |_| add(in_box, false)>
                        {named(words::add_two())}
                    </button>
                    <button type="button" class="button add" on:click=move |_| add(in_box, true)>
                        {named(words::add_three())}
                    </button>
                }
            })
            .collect_view()
    };
    view! {
        <h3>{words::cables()}</h3>
        <p class="quiet">{words::conductors_hint()}</p>
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{cable_row(opened, id)}</For>
        </ul>
        {draw(adders)}
    }
}

/// A part of a cable that follows it.
fn part<T: Default + PartialEq + Send + Sync + 'static>(
    opened: Opened,
    id: u32,
    of: fn(&OpenedCableEntry) -> T,
) -> Memo<T> {
    opened.open.part(move |job| {
        let entry = job.opened_entry(opened.id);
        entry
            .and_then(|entry| entry.cable(id))
            .map(of)
            .unwrap_or_default()
    })
}

fn cable_row(opened: Opened, id: u32) -> AnyView {
    let open = opened.open;
    let letter = opened.name(move |names| names.letter(id));
    let of = move |words: fn(&str) -> String| derived(move || words(&letter.get()));
    let key = move |part: &str| format!("cable-{id}-{part}");
    let out = move |_| {
        let said = words::cable(&letter.get_untracked());
        opened.take_out(said, |entry| entry.take_out_cable(id));
    };
    let loads = part(opened, id, |cable| {
        if cable.goes == GoesKind::Loads {
            cable.loads.iter().map(|load| load.id).collect::<Vec<_>>()
        } else {
            Vec::new()
        }
    });
    let size = At::new(
        move |job| {
            let entry = job.opened_entry(opened.id);
            size_code(entry.and_then(|e| e.cable(id)).and_then(|c| c.size)).to_owned()
        },
        move |job, code: String| {
            let entry = job.opened_entry_mut(opened.id);
            if let Some(cable) = entry.and_then(|e| e.cable_mut(id)) {
                cable.size = size_of(&code);
            }
        },
    );
    view! {
        <li class="cable">
            <strong>{of(words::cable)}</strong>
            {wires(opened, id)}
            {goes(opened, id)}
            {hots(opened, id)}
            <For each=move || loads.get() key=|load| *load let:load>{load_row(opened, id, load)}</For>
            <details>
                <summary>{of(words::more_cable)}</summary>
                <div class="stack">
                    {number(
                        open,
                        key("length"),
                        of(words::length),
                        fields::RUN,
                        Shown::optional(words::length_hint()),
                        typed_at!(opened, cables[id].length),
                    )}
                    {pick(open, key("size"), of(words::size), Signal::stored(sizes(Size::Awg14, Size::Awg4)), size)}
                    {text(open, key("letter"), of(words::letter), "", typed_at!(opened, cables[id].letter))}
                </div>
            </details>
            <button type="button" class="button look plain" on:click=out>{of(words::take_out_cable)}</button>
        </li>
    }
    .into_any()
}

/// The wires of a cable, and the colours to add one of.
fn wires(opened: Opened, id: u32) -> AnyView {
    let conductors = part(opened, id, |cable| {
        cable
            .conductors
            .iter()
            .map(|c| c.word().to_owned())
            .collect::<Vec<_>>()
    });
    let drawn = move || {
        let names = opened.names.get();
        let there = conductors
            .get()
            .into_iter()
            .enumerate()
            .filter_map(|(at, code)| {
                let colour = Colour::CODED.iter().find(|(_, c)| *c == code)?.0;
                let out = move |_| {
                    let said = opened.names.with_untracked(|names| names.wire(id, at));
                    opened.take_out(said, |entry| {
                        entry.take_out_conductor(id, u32::try_from(at).unwrap_or(u32::MAX));
                    });
                };
                Some(view! {
                    <button
                        type="button"
                        class=format!("chip {}", words::colour_class(colour))
                        aria-label=words::take_out_wire(&names.wire(id, at))
                        on:click=out
                    >
                        <b data-sign=words::colour_letter(colour)></b>
                    </button>
                })
            })
            .collect_view();
        let letter = names.letter(id);
        let more = COLOURS
            .into_iter()
            .map(|colour| {
                let add = move |_| {
                    opened.change(|entry| {
                        if let Some(cable) = entry.cable_mut(id) {
                            cable.conductors.push(colour);
                        }
                    });
                };
                view! {
                    <button
                        type="button"
                        class="chip add"
                        aria-label=words::add_colour(words::colour(colour), &letter)
                        on:click=add
                    >
                        <b data-sign=format!("+{}", words::colour_letter(colour))></b>
                    </button>
                }
            })
            .collect_view();
        view! {
            <div class="chips" role="group" aria-label=words::conductors_of(&letter)>{there}</div>
            <div class="chips more">{more}</div>
        }
    };
    view! { <div class="stack-tight">{draw(drawn)}</div> }.into_any()
}

/// Where it goes, by one choice.
fn goes(opened: Opened, id: u32) -> AnyView {
    let places = opened.open.part(move |job| {
        let Some(entry) = job.opened_entry(opened.id) else {
            return Vec::new();
        };
        let names = super::Names::of(job, entry);
        let mut all = vec![("not_known".to_owned(), words::goes_not_known().to_owned())];
        for breaker in &entry.breakers {
            let name = words::goes_breaker(&names.breaker(breaker.id));
            all.push((format!("breaker:{}", breaker.id), name));
        }
        all.push(("panel".to_owned(), words::goes_panel().to_owned()));
        all.push(("loads".to_owned(), words::goes_load().to_owned()));
        for form in [
            SwitchForm::SinglePole,
            SwitchForm::ThreeWay,
            SwitchForm::FourWay,
        ] {
            all.push((
                form.word().to_owned(),
                words::goes_to_switch(form).to_owned(),
            ));
        }
        let from = entry.cable(id).map(|cable| cable.in_box);
        for of in entry.boxes.iter().filter(|of| Some(of.id) != from) {
            all.push((format!("box:{}", of.id), names.box_name(of.id)));
        }
        all.push(("new_box".to_owned(), words::add_box().to_owned()));
        all
    });
    let list = derived(move || {
        places
            .get()
            .into_iter()
            .map(|(value, name)| ChoiceOption::new(value, name))
            .collect::<Vec<_>>()
    });
    let value = part(opened, id, |cable| match cable.goes {
        GoesKind::NotKnown => "not_known".to_owned(),
        GoesKind::Panel => match cable.hots.first() {
            Some(hot) => format!("breaker:{}", hot.breaker),
            None => "panel".to_owned(),
        },
        GoesKind::Loads => "loads".to_owned(),
        GoesKind::Switch => cable.switch.word().to_owned(),
        GoesKind::Box => format!("box:{}", cable.to_box.unwrap_or(0)),
    });
    let on_pick = Callback::new(move |code: String| {
        opened.change_with_id(|entry, fresh| send(entry, id, &code, fresh));
    });
    let says = derived(move || words::goes(&opened.names.with(|names| names.letter(id))));
    view! { <Pick id=format!("cable-{id}-goes") label=says options=list value on_pick /> }
        .into_any()
}

/// Sends a cable where a code says.
fn send(entry: &mut OpenedEntry, id: u32, code: &str, fresh: u32) {
    let number = |rest: &str| rest.parse::<u32>().ok();
    if let Some(breaker) = code.strip_prefix("breaker:").and_then(number) {
        entry.feed(id, breaker);
        return;
    }
    if code == "loads" {
        entry.send_to_load(id, fresh);
        return;
    }
    let to_box = if code == "new_box" {
        entry.boxes.push(calc::job::OpenedBoxEntry {
            id: fresh,
            ..Default::default()
        });
        Some(fresh)
    } else {
        code.strip_prefix("box:").and_then(number)
    };
    let form = SwitchForm::CODED.iter().find(|(_, c)| *c == code);
    let Some(cable) = entry.cable_mut(id) else {
        return;
    };
    if let Some(to) = to_box {
        cable.goes = GoesKind::Box;
        cable.to_box = Some(to);
    } else if let Some((form, _)) = form {
        cable.goes = GoesKind::Switch;
        cable.switch = *form;
        // What was a load of its own stands for one behind the switch no longer.
        cable.loads.clear();
    } else if code == "panel" {
        cable.goes = GoesKind::Panel;
        cable.hots.clear();
    } else {
        cable.goes = GoesKind::NotKnown;
    }
}

/// To the panel: each hot and the pole it is on.
fn hots(opened: Opened, id: u32) -> AnyView {
    let all = part(opened, id, |cable| {
        if cable.goes != GoesKind::Panel {
            return Vec::new();
        }
        (0_u32..)
            .zip(&cable.conductors)
            .filter(|(_, colour)| **colour != Colour::Bare)
            // The first hot is chosen with where the cable goes; a white only if it is on a breaker.
            .filter(|(at, colour)| {
                colour.is_hot() || cable.hots.iter().any(|hot| hot.conductor == *at)
            })
            .map(|(at, _)| at)
            .skip(1)
            .collect::<Vec<_>>()
    });
    let row = move |conductor: u32| {
        let poles = opened.open.part(move |job| {
            let mut all = vec![(String::new(), words::on_nothing().to_owned())];
            if let Some(entry) = job.opened_entry(opened.id) {
                let names = super::Names::of(job, entry);
                for breaker in &entry.breakers {
                    let two = breaker.two_pole
                        || breaker
                            .in_panel
                            .and_then(|id| job.panel.breaker(id))
                            .is_some_and(|b| b.form == calc::wiring::panel::BreakerForm::TwoPole);
                    let name = names.breaker(breaker.id);
                    if two {
                        for pole in [0, 1] {
                            all.push((
                                format!("{}:{pole}", breaker.id),
                                words::pole_of(&name, pole + 1),
                            ));
                        }
                    } else {
                        all.push((format!("{}:0", breaker.id), name));
                    }
                }
            }
            all
        });
        let list = derived(move || {
            poles
                .get()
                .into_iter()
                .map(|(value, name)| ChoiceOption::new(value, name))
                .collect::<Vec<_>>()
        });
        let says = opened.name(move |names| words::wire_on(&names.wire(id, conductor as usize)));
        let at = At::new(
            move |job| {
                let cable = job.opened_entry(opened.id).and_then(|e| e.cable(id));
                let hot = cable.and_then(|c| c.hots.iter().find(|h| h.conductor == conductor));
                hot.map(|h| format!("{}:{}", h.breaker, u8::from(h.second_pole)))
                    .unwrap_or_default()
            },
            move |job, code: String| {
                let entry = job.opened_entry_mut(opened.id);
                let Some(cable) = entry.and_then(|e| e.cable_mut(id)) else {
                    return;
                };
                cable.hots.retain(|hot| hot.conductor != conductor);
                if let Some((breaker, pole)) = code.split_once(':')
                    && let Ok(breaker) = breaker.parse()
                {
                    cable.hots.push(HotEntry {
                        conductor,
                        breaker,
                        second_pole: pole == "1",
                        ..HotEntry::default()
                    });
                }
            },
        );
        pick(
            opened.open,
            format!("cable-{id}-hot-{conductor}"),
            says,
            list,
            at,
        )
    };
    view! { <For each=move || all.get() key=|at| *at let:at>{row(at)}</For> }.into_any()
}

/// A load at the far end.
fn load_row(opened: Opened, id: u32, load: u32) -> AnyView {
    let open = opened.open;
    let letter = opened.name(move |names| names.letter(id));
    let of = move |words: fn(&str) -> String| derived(move || words(&letter.get()));
    let watts = At::new(
        move |job| {
            let cable = job.opened_entry(opened.id).and_then(|e| e.cable(id));
            let found = cable.and_then(|c| c.loads.iter().find(|l| l.id == load));
            found.map(|l| l.watts.clone()).unwrap_or_default()
        },
        move |job, typed| {
            let cable = job
                .opened_entry_mut(opened.id)
                .and_then(|e| e.cable_mut(id));
            if let Some(found) = cable.and_then(|c| c.loads.iter_mut().find(|l| l.id == load)) {
                found.watts = typed;
            }
        },
    );
    let kind = At::new(
        move |job| {
            let cable = job.opened_entry(opened.id).and_then(|e| e.cable(id));
            let found = cable.and_then(|c| c.loads.iter().find(|l| l.id == load));
            found.map(|l| l.kind.word().to_owned()).unwrap_or_default()
        },
        move |job, code: String| {
            let cable = job
                .opened_entry_mut(opened.id)
                .and_then(|e| e.cable_mut(id));
            if let Some(found) = cable.and_then(|c| c.loads.iter_mut().find(|l| l.id == load)) {
                crate::pages::sum_fields::take_code(&mut found.kind, code);
            }
        },
    );
    view! {
        <div class="pair">
            {number(
                open,
                format!("load-{load}-watts"),
                of(words::load_watts),
                fields::LOAD_WATTS,
                Shown::default(),
                watts,
            )}
            {pick(open, format!("load-{load}-kind"), of(words::load_kind), Signal::stored(options(words::load_kind_word)), kind)}
        </div>
    }
    .into_any()
}
