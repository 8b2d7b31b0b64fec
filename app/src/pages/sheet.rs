//! The job sheet: chosen parts of the job on paper, or as plain text in a message.

mod parts;

use calc::job::SheetPart;
use calc::saved::Coded;
use leptos::prelude::*;

use super::panel::directory_table;
use super::pour::pour_map;
use super::sum_fields::label;
use crate::carry_text::CarryText;
use crate::house::House;
use crate::markup::{For, view};
use crate::open_job::OpenJob;
use crate::pictures::FloorMap;
use crate::reactive::{When, draw, memo, say};
use crate::shell::{PageHeading, PrintButton};
use crate::store::fresh;
use crate::supply::Supply;
use crate::words::{common, sheet as words};

use parts::Block;

/// The job sheet.
#[component]
pub fn SheetPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let house = House::here();
    let supply = Supply::of(open);
    let shown = move |part: SheetPart| open.part(move |job| !job.sheet.left_out.contains(&part));
    let text = Callback::new(move |()| plain(open, house, supply));
    let floors = shown(SheetPart::Floors);
    let rooms = open.part(|job| job.rooms.iter().map(|room| room.id).collect::<Vec<u32>>());
    let room = move |id: u32| {
        let room = open.room(id);
        let (content, says) = pour_map(room);
        let poured = memo(move || !content.read().pins.is_empty());
        let blocks = memo(move || open.job.with(|job| parts::floor(job, id)));
        view! {
            <section class="sheet of-paper">
                {draw(move || heading(&blocks.read()))}
                <When when=move || poured.get()>
                    <figure class="picture"><FloorMap content says /></figure>
                </When>
                {draw(move || body(&blocks.read()))}
            </section>
        }
        .into_any()
    };
    let panel = shown(SheetPart::Panel);
    let directory = move || {
        house.panel.with(|panel| {
            let view = panel.as_ref().ok()?;
            Some(house.wiring.with(|job| directory_table(job, view)))
        })
    };
    let has_panel = memo(move || house.panel.with(|panel| panel.is_ok()));
    let part = move |part: SheetPart| {
        let on = shown(part);
        let block = memo(move || parts::block(part, open, house, supply));
        view! {
            <When when=move || on.get()>
                <section class="sheet of-paper">
                    {draw(move || heading(&block.read()))}
                    {draw(move || body(&block.read()))}
                </section>
            </When>
        }
        .into_any()
    };
    view! {
        <PageHeading text=label(words::title()) />
        <p class="quiet">{words::made(&day())}</p>
        <Choose open />
        <PrintButton />
        <CarryText title=words::title() text />
        <When when=move || floors.get()>
            <For each=move || rooms.get() key=|id| *id let:id>{room(id)}</For>
        </When>
        {part(SheetPart::Doorways)}
        <When when=move || panel.get()>
            <section class="sheet of-paper directory-part">
                <h2>{words::panel()}</h2>
                <When when=move || has_panel.get() fallback=|| view! { <p>{words::no_panel()}</p> }>
                    <div class="scroll" tabindex="0" role="group" aria-label=words::panel()>{draw(directory)}</div>
                </When>
            </section>
        </When>
        {part(SheetPart::Circuits)}
        {part(SheetPart::Boxes)}
        {part(SheetPart::Opened)}
        {part(SheetPart::Buying)}
        {part(SheetPart::Quote)}
        {part(SheetPart::Cautions)}
        <When when=move || open.job.with(|job| !job.notes.trim().is_empty())>
            <section class="sheet of-paper">
                <h2>{words::notes()}</h2>
                <p class="notes">{say(move || open.job.with(|job| job.notes.clone()))}</p>
            </section>
        </When>
    }
}

/// The parts on offer: each is left out or put back.
#[component]
fn Choose(open: OpenJob) -> impl IntoView {
    let boxes = OFFERED
        .iter()
        .map(|&part| {
            let on = open.part(move |job| !job.sheet.left_out.contains(&part));
            let turn = move |_| {
                open.change(|job| {
                    let out = &mut job.sheet.left_out;
                    match out.iter().position(|&of| of == part) {
                        Some(at) => drop(out.remove(at)),
                        None => out.push(part),
                    }
                });
            };
            view! {
                <label>
                    <input type="checkbox" id=format!("part-{}", part.word()) prop:checked=move || on.get() on:change=turn />
                    <span>{words::part(part)}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="field">
            <legend>{words::choose()}</legend>
            <div class="choices">{boxes}</div>
        </fieldset>
    }
}

/// The parts that can be chosen today.
const OFFERED: [SheetPart; 9] = [
    SheetPart::Floors,
    SheetPart::Doorways,
    SheetPart::Panel,
    SheetPart::Circuits,
    SheetPart::Boxes,
    SheetPart::Opened,
    SheetPart::Buying,
    SheetPart::Quote,
    SheetPart::Cautions,
];

fn day() -> String {
    let now = fresh::now();
    now.split('T').next().unwrap_or_default().to_owned()
}

fn heading(block: &Block) -> AnyView {
    let text = block.heading.clone();
    view! { <h2>{text}</h2> }.into_any()
}

fn body(block: &Block) -> AnyView {
    let lines = block
        .lines
        .iter()
        .map(|line| view! { <p>{line.clone()}</p> })
        .collect_view();
    let list = (!block.list.is_empty()).then(|| {
        let items = block
            .list
            .iter()
            .map(|item| view! { <li>{item.clone()}</li> })
            .collect_view();
        view! { <ul class="paper-list">{items}</ul> }
    });
    let table = (!block.rows.is_empty()).then(|| {
        let head = block
            .head
            .iter()
            .map(|cell| view! { <th scope="col">{*cell}</th> })
            .collect_view();
        let rows = block
            .rows
            .iter()
            .map(|row| {
                let cells = row
                    .iter()
                    .map(|cell| view! { <td>{cell.clone()}</td> })
                    .collect_view();
                view! { <tr>{cells}</tr> }
            })
            .collect_view();
        view! {
            <div class="scroll" tabindex="0" role="group" aria-label=block.heading.clone()>
                <table>
                    <thead><tr>{head}</tr></thead>
                    <tbody>{rows}</tbody>
                </table>
            </div>
        }
    });
    view! { {lines} {table} {list} }.into_any()
}

/// The chosen parts as plain text.
fn plain(open: OpenJob, house: House, supply: Supply) -> String {
    let job = open.job.get_untracked();
    let mut text = String::new();
    let names = [job.name.as_str(), &job.place];
    let names: Vec<&str> = names.into_iter().filter(|n| !n.trim().is_empty()).collect();
    text.push_str(&names.join(", "));
    text.push('\n');
    text.push_str(&words::made(&day()));
    text.push('\n');
    let mut say = |block: &Block| {
        text.push('\n');
        text.push_str(&block.text());
    };
    for part in OFFERED {
        if job.sheet.left_out.contains(&part) {
            continue;
        }
        match part {
            SheetPart::Floors => {
                for room in &job.rooms {
                    say(&parts::floor(&job, room.id));
                }
            }
            part => say(&parts::block(part, open, house, supply)),
        }
    }
    if !job.notes.trim().is_empty() {
        say(&Block {
            heading: words::notes().to_owned(),
            lines: vec![job.notes.clone()],
            ..Block::default()
        });
    }
    text.push('\n');
    text.push_str(common::local_code());
    text.push('\n');
    text
}
