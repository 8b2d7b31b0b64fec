//! The joint grid: cables across, wires down; a tap puts a wire into a joint.

use calc::job::{GoesKind, MadeAt, MadeEntry, OpenedEntry, SpotEntry, SpotKind};
use calc::job::{OpenedDeviceEntry, OpenedDeviceKind};
use calc::saved::Coded;
use calc::wiring::open_box::description::{Colour, Side, SwitchForm, Terminal};
use leptos::prelude::*;

use super::{Names, Opened};
use crate::entry::{Choice, ChoiceOption};
use crate::markup::{For, view};
use crate::reactive::{derived, draw};
use crate::words::open_box as words;

/// The screws of a device, ground last.
pub fn screws(kind: OpenedDeviceKind) -> Vec<Terminal> {
    let mut all = match kind {
        OpenedDeviceKind::Switch => SwitchForm::SinglePole.terminals(),
        OpenedDeviceKind::ThreeWay => SwitchForm::ThreeWay.terminals(),
        OpenedDeviceKind::FourWay => SwitchForm::FourWay.terminals(),
        OpenedDeviceKind::Receptacle => &[
            Terminal::Hot,
            Terminal::HotLower,
            Terminal::Neutral,
            Terminal::NeutralLower,
        ],
        OpenedDeviceKind::Lampholder => &[Terminal::Hot, Terminal::Neutral],
    }
    .to_vec();
    all.push(Terminal::Ground);
    all
}

/// The grids, one for each box.
#[component]
pub fn Grids(opened: Opened) -> impl IntoView {
    let boxes = opened.rows(|entry| entry.boxes.iter().map(|b| b.id).collect());
    view! {
        <For each=move || boxes.get() key=|id| *id let:in_box>
            <Grid opened in_box />
        </For>
    }
}

/// A column of the grid: its head, and its cells from the top.
struct Column {
    head: String,
    cells: Vec<Cell>,
}

struct Cell {
    spot: SpotEntry,
    /// The letter of its colour; a screw has its name.
    sign: String,
    class: String,
    /// Where it is, short.
    at: String,
    says: String,
}

fn short_at(made: &MadeEntry) -> String {
    match (made.at, made.terminal) {
        (MadeAt::Joint, _) => made.joint.to_string(),
        (MadeAt::Capped, _) => words::cap_short().to_owned(),
        (MadeAt::Screw, Some(terminal)) => words::screw(terminal).to_owned(),
        (MadeAt::Screw, None) | (MadeAt::Loose, _) => words::loose().to_owned(),
    }
}

fn long_at(made: &MadeEntry, names: &Names) -> String {
    match (made.at, made.terminal) {
        (MadeAt::Joint, _) => words::in_joint(made.joint),
        (MadeAt::Capped, _) => words::capped().to_owned(),
        (MadeAt::Screw, Some(terminal)) => names.screw(made.device, terminal),
        (MadeAt::Screw, None) | (MadeAt::Loose, _) => words::loose().to_owned(),
    }
}

fn columns(entry: &OpenedEntry, names: &Names, in_box: u32) -> Vec<Column> {
    let mut all = Vec::new();
    for cable in &entry.cables {
        let side = if cable.in_box == in_box {
            Side::Near
        } else if cable.goes == GoesKind::Box && cable.to_box == Some(in_box) {
            Side::Far
        } else {
            continue;
        };
        let cells = (0_u32..)
            .zip(&cable.conductors)
            .map(|(at, colour)| {
                let spot = SpotEntry::end(cable.id, at, side);
                cell(entry, names, spot, *colour, cable.id, at)
            })
            .collect();
        all.push(Column {
            head: cable.letter.clone(),
            cells,
        });
    }
    all
}

fn cell(
    entry: &OpenedEntry,
    names: &Names,
    spot: SpotEntry,
    colour: Colour,
    cable: u32,
    at: u32,
) -> Cell {
    let made = entry.made_at(&spot);
    let loose = if made.at == MadeAt::Loose {
        " loose"
    } else {
        ""
    };
    Cell {
        sign: words::colour_letter(colour).to_owned(),
        class: format!("cell {}{loose}", words::colour_class(colour)),
        at: short_at(&made),
        says: words::wire_is(&names.wire(cable, at as usize), &long_at(&made, names)),
        spot,
    }
}

/// A device as a column: screws that have a short wire of their own into a joint.
fn device_column(entry: &OpenedEntry, names: &Names, device: &OpenedDeviceEntry) -> Column {
    let cells = screws(device.kind)
        .into_iter()
        .map(|terminal| {
            let spot = SpotEntry {
                what: SpotKind::Screw,
                device: device.id,
                terminal: Some(terminal),
                ..SpotEntry::default()
            };
            let made = entry.made_at(&spot);
            let on: Vec<String> = entry
                .made
                .iter()
                .filter(|made| {
                    made.at == MadeAt::Screw
                        && made.device == device.id
                        && made.terminal == Some(terminal)
                })
                .map(|made| names.wire(made.contact.cable, made.contact.conductor as usize))
                .collect();
            let at = match made.at {
                MadeAt::Joint => made.joint.to_string(),
                _ if !on.is_empty() => on.join(", "),
                _ => "–".to_owned(),
            };
            let name = names.screw(device.id, terminal);
            Cell {
                sign: words::screw(terminal).to_owned(),
                class: "cell screw".to_owned(),
                says: words::wire_is(&name, if at == "–" { words::loose() } else { &at }),
                at,
                spot,
            }
        })
        .collect();
    Column {
        head: names.device(device.id),
        cells,
    }
}

/// Puts a contact where the brush says; `next` steps it through the joints, capped, loose.
fn put(entry: &mut OpenedEntry, in_box: u32, spot: &SpotEntry, brush: &str) {
    let mut made = MadeEntry {
        contact: spot.clone(),
        ..MadeEntry::default()
    };
    let is_end = spot.what == SpotKind::End;
    if let Some(screw) = brush.strip_prefix("screw:") {
        let Some((device, code)) = screw.split_once(':') else {
            return;
        };
        let terminal = Terminal::CODED.iter().find(|(_, c)| *c == code);
        let (Ok(device), Some((terminal, _)), true) = (device.parse(), terminal, is_end) else {
            return;
        };
        made.at = MadeAt::Screw;
        made.device = device;
        made.terminal = Some(*terminal);
    } else if let Ok(joint) = brush.parse::<u32>() {
        made.at = MadeAt::Joint;
        made.joint = joint;
    } else if brush == "capped" && is_end {
        made.at = MadeAt::Capped;
    } else if brush == "next" {
        let now = entry.made_at(spot);
        let last = entry.last_joint(in_box);
        // A joint beyond the last one only if the wire isn't alone in that already.
        let alone = entry
            .made
            .iter()
            .filter(|m| {
                m.at == MadeAt::Joint && m.joint == last && entry.box_of(&m.contact) == Some(in_box)
            })
            .count()
            == 1;
        match now.at {
            MadeAt::Loose | MadeAt::Screw => {
                made.at = MadeAt::Joint;
                made.joint = 1;
            }
            MadeAt::Joint if now.joint < last || (now.joint == last && !alone) => {
                made.at = MadeAt::Joint;
                made.joint = now.joint + 1;
            }
            MadeAt::Joint if is_end => made.at = MadeAt::Capped,
            MadeAt::Joint | MadeAt::Capped => {}
        }
    }
    entry.make(made);
}

#[component]
fn Grid(opened: Opened, in_box: u32) -> impl IntoView {
    let brush = RwSignal::new("next".to_owned());
    let brushes = opened.open.part(move |job| {
        let mut all = vec![("next".to_owned(), words::brush_next().to_owned())];
        let Some(entry) = job.opened_entry(opened.id) else {
            return all;
        };
        let names = Names::of(job, entry);
        for joint in 1..=entry.last_joint(in_box) + 1 {
            all.push((joint.to_string(), words::brush_joint(joint)));
        }
        all.push(("capped".to_owned(), words::capped().to_owned()));
        all.push(("loose".to_owned(), words::loose().to_owned()));
        for device in entry.devices.iter().filter(|d| d.in_box == in_box) {
            for terminal in screws(device.kind) {
                all.push((
                    format!("screw:{}:{}", device.id, terminal.word()),
                    names.screw(device.id, terminal),
                ));
            }
        }
        all
    });
    let options = derived(move || {
        brushes
            .get()
            .into_iter()
            .map(|(value, name)| ChoiceOption::new(value, name))
            .collect::<Vec<_>>()
    });
    let tap = move |spot: SpotEntry| {
        let brush = brush.get_untracked();
        opened.change(move |entry| put(entry, in_box, &spot, &brush));
    };
    let cell_button = move |cell: Cell| {
        let spot = cell.spot;
        view! {
            <button type="button" class=cell.class aria-label=cell.says on:click=move |_| tap(spot.clone())>
                <b data-sign=cell.sign></b>
                <span data-sign=cell.at></span>
            </button>
        }
        .into_any()
    };
    let drawn = move || {
        let names = opened.names.get();
        let column = |column: Column| {
            let cells: Vec<AnyView> = column.cells.into_iter().map(cell_button).collect();
            view! {
                <div class="column" role="group" aria-label=words::cable(&column.head)>
                    <span class="letter">{column.head.clone()}</span>
                    {cells}
                </div>
            }
            .into_any()
        };
        let device = |column: Column| {
            let cells: Vec<AnyView> = column.cells.into_iter().map(cell_button).collect();
            view! {
                <div class="device-screws" role="group" aria-label=column.head.clone()>
                    <span aria-hidden="true">{column.head.clone()}</span>
                    <div>{cells}</div>
                </div>
            }
            .into_any()
        };
        opened.entry.with(|entry| {
            let cables: Vec<AnyView> = columns(entry, &names, in_box)
                .into_iter()
                .map(column)
                .collect();
            let devices: Vec<AnyView> = entry
                .devices
                .iter()
                .filter(|d| d.in_box == in_box)
                .map(|d| device(device_column(entry, &names, d)))
                .collect();
            view! { <div class="joint-grid">{cables}</div> {devices} }.into_any()
        })
    };
    let many = opened.open.part(move |job| {
        job.opened_entry(opened.id)
            .is_some_and(|entry| entry.boxes.len() > 1)
    });
    let heading = derived(move || {
        if many.get() {
            words::grid_of(&opened.names.with(|names| names.box_name(in_box)))
        } else {
            words::grid().to_owned()
        }
    });
    let shorts = move || super::refused::short_lines(opened);
    view! {
        <section class="grid-of" aria-label=move || heading.get()>
            <h3>{heading}</h3>
            <p class="quiet">{words::grid_hint()}</p>
            <Choice
                id=format!("brush-{in_box}")
                label=Signal::stored(words::brush().to_owned())
                options
                value=brush
                on_pick=Callback::new(move |to| brush.set(to))
            />
            {draw(drawn)}
            {draw(shorts)}
        </section>
    }
}
