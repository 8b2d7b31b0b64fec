//! A box as it is entered: the box, then what is in it. The quick sum and a job's boxes share it.

use calc::job::sums::Sums;
use calc::job::{
    BarrierEntry, BarrierKind, BoxBy, BoxCableEntry, BoxConductorsEntry, BoxEntry, CableGround,
    ConductorUse, DeviceEntry, RingEntry, TerminalBlockEntry, Typed, fields,
};
use calc::wiring::conductor::Size;
use calc::wiring::tables::{BOX_VOLUMES, BoxRow};
use leptos::prelude::*;

use super::super::sum_fields::{
    CodeSpot, Row, Shown, add, choice, coded, few, field, label, list, no_yes, pick, rows,
    size_spot, sizes, typed, yes_code,
};
use super::super::sums::OpenSums;
use crate::entry::ChoiceOption;
use crate::markup::view;
use crate::reactive::{When, draw};
use crate::words::wiring::{self as words, fill};

/// A box as it is entered: the box, then what is in it.
#[component]
pub fn BoxForm(
    /// The sums, or a row of a job.
    open: OpenSums,
) -> impl IntoView {
    view! {
        <TheBox open />
        <Inside open />
    }
}

/// The code of a box of the table: its place there.
fn listed_code(entry: &BoxEntry) -> String {
    BOX_VOLUMES
        .iter()
        .position(|row| row.family == entry.family && row.trade_size_in == entry.trade_size)
        .map_or_else(String::new, |at| at.to_string())
}

fn listed_row(code: &str) -> Option<&'static BoxRow> {
    BOX_VOLUMES.get(code.parse::<usize>().ok()?)
}

/// The boxes of the table.
fn listed(open: OpenSums) -> AnyView {
    let mut options = vec![ChoiceOption::new("", words::size_open())];
    options.extend(
        BOX_VOLUMES
            .iter()
            .enumerate()
            .map(|(at, row)| ChoiceOption::new(at.to_string(), fill::listed(row))),
    );
    let spot = CodeSpot {
        row: 0,
        read: |sums, _| listed_code(&sums.box_fill),
        write: |sums, _, code| match listed_row(&code) {
            Some(row) => {
                sums.box_fill.family = row.family;
                sums.box_fill.trade_size = row.trade_size_in.to_owned();
            }
            None => sums.box_fill.trade_size.clear(),
        },
    };
    view! {
        {pick(open, "listed-box", label(fill::listed_label()), options, spot)}
        {field(
            open,
            "box-gangs",
            label(fill::gangs_label()),
            fields::GANGS,
            Shown::optional(fill::gangs_hint()),
            typed!(box_fill.gangs),
        )}
    }
    .into_any()
}

/// The inside of a box, by the rule.
fn measured(open: OpenSums) -> AnyView {
    view! {
        <p class="quiet">{fill::measure_hint()}</p>
        {field(open, "box-width", label(fill::width_label()), fields::BOX_SIDE, Shown::default(), typed!(box_fill.width))}
        {field(open, "box-height", label(fill::height_label()), fields::BOX_SIDE, Shown::default(), typed!(box_fill.height))}
        {field(open, "box-depth", label(fill::depth_label()), fields::BOX_SIDE, Shown::default(), typed!(box_fill.depth))}
    }
    .into_any()
}

#[component]
fn TheBox(open: OpenSums) -> impl IntoView {
    let by = open.part(|sums| sums.box_fill.by);
    let volume = move || match by.get() {
        BoxBy::Listed => listed(open),
        BoxBy::Marked => field(
            open,
            "marked",
            label(fill::marked_label()),
            fields::BOX_VOLUME,
            Shown::hint(fill::marked_hint()),
            typed!(box_fill.marked),
        ),
        BoxBy::Measured => measured(open),
    };
    let ways = few(&[
        (BoxBy::Listed.code(), fill::by_list()),
        (BoxBy::Marked.code(), fill::by_mark()),
        (BoxBy::Measured.code(), fill::by_measure()),
    ]);
    let rings = rows!(box_fill.rings; fill::add_ring(), fill::ring_name, |sums, _, id| {
        sums.box_fill.rings.push(RingEntry { id, ..RingEntry::default() });
    });
    let barriers = rows!(box_fill.barriers; fill::add_barrier(), fill::barrier_name, |sums, _, id| {
        sums.box_fill.barriers.push(BarrierEntry { id, ..BarrierEntry::default() });
    });
    view! {
        <section class="sheet">
            <h2>{fill::box_heading()}</h2>
            {choice(open, "box-by", label(fill::by_label()), "", ways, coded!(BoxBy::code; box_fill.by))}
            {draw(volume)}
            {list(open, "rows", rings, ring)}
            {list(open, "rows", barriers, barrier)}
        </section>
    }
}

fn ring(row: Row) -> AnyView {
    let volume = field(
        row.open,
        row.key("ring"),
        row.named(fill::ring_label),
        fields::BOX_VOLUME,
        Shown::default(),
        typed!(box_fill.rings[row.id].volume),
    );
    view! { {volume} {row.take_out()} }.into_any()
}

fn barrier(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    let marked = open.part(move |sums| {
        let mut rows = sums.box_fill.barriers.iter();
        rows.any(|row| row.id == id && row.kind == BarrierKind::Marked)
    });
    let kinds = few(&[
        (BarrierKind::Metal.code(), fill::barrier_metal()),
        (BarrierKind::Nonmetallic.code(), fill::barrier_plastic()),
        (BarrierKind::Marked.code(), fill::barrier_marked()),
    ]);
    view! {
        {pick(
            open,
            row.key("barrier"),
            row.named(fill::barrier_label),
            kinds,
            coded!(BarrierKind::code; box_fill.barriers[id].kind),
        )}
        <When when=marked>
            {field(
                open,
                row.key("barrier-volume"),
                row.named(fill::barrier_volume),
                fields::BOX_VOLUME,
                Shown::default(),
                typed!(box_fill.barriers[id].volume),
            )}
        </When>
        {row.take_out()}
    }
    .into_any()
}

/// A size in a box: up to 6 AWG, where other rules begin.
fn size_pick(row: Row, key: &str, words: fn(usize) -> String, spot: CodeSpot) -> AnyView {
    pick(
        row.open,
        row.key(key),
        row.named(words),
        sizes(Size::Awg18, Size::Awg6),
        spot,
    )
}

#[component]
fn Inside(open: OpenSums) -> impl IntoView {
    let clamps = CodeSpot {
        row: 0,
        read: |sums, _| yes_code(sums.box_fill.internal_clamps),
        write: |sums, _, code| sums.box_fill.internal_clamps = code == "yes",
    };
    let cables = rows!(box_fill.cables; fill::add_cable(), fill::cable_name, |sums, _, id| {
        let size = sums.box_fill.cables.last().and_then(|row| row.size);
        sums.box_fill.cables.push(BoxCableEntry::new(id, size));
    });
    let devices = rows!(box_fill.devices; fill::add_device(), fill::device_name, |sums, _, id| {
        let here = &sums.box_fill;
        let size = here.devices.last().map_or_else(
            || here.cables.last().and_then(|row| row.size),
            |row| row.size,
        );
        sums.box_fill.devices.push(DeviceEntry::new(id, size));
    });
    let others = rows!(box_fill.conductors; fill::add_other(), fill::other_name, |sums, _, id| {
        let count = Typed::plain("1");
        sums.box_fill.conductors.push(BoxConductorsEntry { id, count, ..BoxConductorsEntry::default() });
    });
    let blocks = rows!(box_fill.terminal_blocks; fill::add_block(), fill::block_name, |sums, _, id| {
        sums.box_fill.terminal_blocks.push(TerminalBlockEntry { id, ..TerminalBlockEntry::default() });
    });
    view! {
        <section class="sheet">
            <h2>{fill::contents_heading()}</h2>
            <h3>{fill::cables_heading()}</h3>
            <p class="quiet">{fill::cable_wires_hint()}</p>
            {list(open, "rows", cables, cable)}
            <h3>{fill::devices_heading()}</h3>
            <p class="quiet">{fill::device_gangs_hint()}</p>
            {list(open, "rows", devices, device)}
            {choice(open, "clamps", label(fill::clamps_label()), fill::clamps_hint(), no_yes(), clamps)}
            <h3>{fill::others_heading()}</h3>
            {list(open, "rows", others, other_wires)}
            {list(open, "rows", blocks, terminal_block)}
            {field(
                open,
                "supports",
                label(fill::supports_label()),
                fields::IN_BOX,
                Shown::optional(""),
                typed!(box_fill.support_fittings),
            )}
            {field(
                open,
                "pigtails",
                label(fill::pigtails_label()),
                fields::IN_BOX,
                Shown::optional(fill::pigtails_hint()),
                typed!(box_fill.pigtails),
            )}
        </section>
    }
}

fn cable(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    let other = open.part(move |sums| {
        let mut rows = sums.box_fill.cables.iter();
        rows.any(|row| row.id == id && row.ground == CableGround::Other)
    });
    let grounds = few(&[
        (CableGround::Same.code(), fill::ground_same()),
        (CableGround::None.code(), fill::ground_none()),
        (CableGround::Other.code(), fill::ground_other()),
    ]);
    view! {
        <div class="pair level">
            {size_pick(row, "cable-size", fill::cable_size, size_spot!(box_fill.cables[id].size))}
            {field(
                open,
                row.key("cable-wires"),
                row.named(fill::cable_wires),
                fields::IN_BOX,
                Shown::default(),
                typed!(box_fill.cables[id].insulated),
            )}
            {pick(
                open,
                row.key("cable-ground"),
                row.named(fill::cable_ground),
                grounds,
                coded!(CableGround::code; box_fill.cables[id].ground),
            )}
            <When when=other>
                {size_pick(
                    row,
                    "cable-ground-size",
                    fill::cable_ground_size,
                    size_spot!(box_fill.cables[id].ground_size),
                )}
            </When>
        </div>
        <div class="row">{add(open, fill::one_more(), id, again)} {row.take_out()}</div>
    }
    .into_any()
}

/// Puts another cable like one that is there beneath it.
fn again(sums: &mut Sums, id: u32, new: u32) {
    let cables = &mut sums.box_fill.cables;
    if let Some(at) = cables.iter().position(|row| row.id == id)
        && let Some(like) = cables.get(at).cloned()
    {
        cables.insert(at + 1, BoxCableEntry { id: new, ..like });
    }
}

fn device(row: Row) -> AnyView {
    view! {
        <div class="pair level">
            {size_pick(row, "device-size", fill::device_size, size_spot!(box_fill.devices[row.id].size))}
            {field(
                row.open,
                row.key("device-gangs"),
                row.named(fill::device_gangs),
                fields::GANGS,
                Shown::default(),
                typed!(box_fill.devices[row.id].gangs),
            )}
        </div>
        {row.take_out()}
    }
    .into_any()
}

fn other_wires(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    let uses = few(&[
        (ConductorUse::Ending.code(), fill::kind_ends()),
        (ConductorUse::Passing.code(), fill::kind_passing()),
        (ConductorUse::Looped.code(), fill::kind_looped()),
        (ConductorUse::Fixture.code(), fill::kind_fixture()),
        (ConductorUse::Canopy.code(), fill::kind_canopy()),
        (ConductorUse::Ground.code(), fill::kind_ground()),
        (ConductorUse::IsolatedGround.code(), fill::kind_isolated()),
    ]);
    view! {
        {pick(
            open,
            row.key("wires-use"),
            row.named(fill::other_kind),
            uses,
            coded!(ConductorUse::code; box_fill.conductors[id].what),
        )}
        <div class="pair level">
            {size_pick(row, "wires-size", fill::other_size, size_spot!(box_fill.conductors[id].size))}
            {field(
                open,
                row.key("wires-count"),
                row.named(fill::other_count),
                fields::IN_BOX,
                Shown::default(),
                typed!(box_fill.conductors[id].count),
            )}
        </div>
        {row.take_out()}
    }
    .into_any()
}

fn terminal_block(row: Row) -> AnyView {
    let size = size_spot!(box_fill.terminal_blocks[row.id].size);
    view! {
        {size_pick(row, "block-size", fill::block_size, size)}
        {row.take_out()}
    }
    .into_any()
}
