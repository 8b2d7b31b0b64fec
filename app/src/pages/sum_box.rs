//! Quick sum: how full a box is, line by line, and what else fits.

use crate::markup::{For, view};
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::boxes::box_fill_of;
use calc::job::{
    BarrierEntry, BarrierKind, BoxBy, BoxCableEntry, BoxConductorsEntry, BoxEntry, CableGround,
    ConductorUse, DeviceEntry, RingEntry, TerminalBlockEntry, Typed, Units, fields,
};
use calc::quantity::fixed;
use calc::wiring::box_fill::{BoxFill, BoxRefusal, FillItem, FillLine};
use calc::wiring::conductor::Size;
use calc::wiring::tables::{BOX_VOLUMES, BoxRow};
use leptos::prelude::*;

use super::sum_fields::{
    Shown, Spot, add, choice, coded, edition_field, field, label, numbered, pick, size_spot, sizes,
    take_out, typed,
};
use super::sums::{OpenSums, SumFoot};
use crate::answer::{Cautions, CodeSections, Facts, Notices, RestsOn, Working};
use crate::entry::ChoiceOption;
use crate::pictures::box_fill::{BoxContent, BoxLayer, Filling};
use crate::pictures::{BoxPicture, Figure};
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::PageHeading;
use crate::words::wiring::{self as words, fill, rules};

/// Box fill.
#[component]
pub fn SumBoxPage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let edition = open.part(|sums| sums.code_edition);
    let entry = open.part(|sums| sums.box_fill.clone());
    let asked = memo(move || entry.with(|entry| box_fill_of(entry, edition.get())));
    let found = memo(move || asked.with(|asked| asked.as_ref().ok().cloned()));
    let refused = memo(move || {
        asked.with(|asked| match asked {
            Err(AskProblem::Refused(refusal)) => Some(refusal_words(refusal, units.get())),
            _ => None,
        })
    });
    view! {
        <PageHeading text=label(fill::title()) />
        {edition_field(open)}
        <BoxForm open />
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::say_more()}</p> }>
            <BoxAnswer found units />
        </When>
        <SumFoot open />
    }
}

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

/// Why a box isn't answered, in words.
pub fn refusal_words(refusal: &BoxRefusal, units: Units) -> String {
    fill::refusal(refusal, units)
}

/// The code of a box of the table: its family's code and its trade size.
fn listed_code(entry: &BoxEntry) -> String {
    BOX_VOLUMES
        .iter()
        .position(|row| row.family == entry.family && row.trade_size_in == entry.trade_size)
        .map_or_else(String::new, |at| at.to_string())
}

fn listed_row(code: &str) -> Option<&'static BoxRow> {
    BOX_VOLUMES.get(code.parse::<usize>().ok()?)
}

#[component]
fn TheBox(open: OpenSums) -> impl IntoView {
    let by = open.part(|sums| sums.box_fill.by);
    let listed = move || {
        let mut options = vec![ChoiceOption::new("", words::size_open())];
        options.extend(
            BOX_VOLUMES
                .iter()
                .enumerate()
                .map(|(at, row)| ChoiceOption::new(at.to_string(), fill::listed(row))),
        );
        let spot = Spot::new(
            |sums| listed_code(&sums.box_fill),
            |sums, code: String| match listed_row(&code) {
                Some(row) => {
                    sums.box_fill.family = row.family;
                    sums.box_fill.trade_size = row.trade_size_in.to_owned();
                }
                None => sums.box_fill.trade_size.clear(),
            },
        );
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
    };
    let volume = move || {
        match by.get() {
        BoxBy::Listed => listed(),
        BoxBy::Marked => field(
            open,
            "marked",
            label(fill::marked_label()),
            fields::BOX_VOLUME,
            Shown::hint(fill::marked_hint()),
            typed!(box_fill.marked),
        ),
        BoxBy::Measured => view! {
            <p class="quiet">{fill::measure_hint()}</p>
            {field(open, "box-width", label(fill::width_label()), fields::BOX_SIDE, Shown::default(), typed!(box_fill.width))}
            {field(open, "box-height", label(fill::height_label()), fields::BOX_SIDE, Shown::default(), typed!(box_fill.height))}
            {field(open, "box-depth", label(fill::depth_label()), fields::BOX_SIDE, Shown::default(), typed!(box_fill.depth))}
        }
        .into_any(),
    }
    };
    let option = |by: BoxBy, words: &'static str| ChoiceOption::new(by.code(), words);
    let by_options = vec![
        option(BoxBy::Listed, fill::by_list()),
        option(BoxBy::Marked, fill::by_mark()),
        option(BoxBy::Measured, fill::by_measure()),
    ];
    view! {
        <section class="sheet">
            <h2>{fill::box_heading()}</h2>
            {choice(open, "box-by", label(fill::by_label()), "", by_options, coded!(BoxBy::code; box_fill.by))}
            {draw(volume)}
            <Rings open />
            <Barriers open />
        </section>
    }
}

#[component]
fn Rings(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.box_fill
            .rings
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    view! {
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>
                <li>
                    {field(
                        open,
                        format!("ring-{id}"),
                        numbered(ids, id, fill::ring_label),
                        fields::BOX_VOLUME,
                        Shown::default(),
                        typed!(box_fill.rings[id].volume),
                    )}
                    {take_out(
                        open,
                        numbered(ids, id, fill::ring_name),
                        move |sums| sums.box_fill.rings.retain(|row| row.id != id),
                    )}
                </li>
            </For>
        </ul>
        {add(open, fill::add_ring(), |sums, id| sums.box_fill.rings.push(RingEntry { id, ..RingEntry::default() }))}
    }
}

#[component]
fn Barriers(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.box_fill
            .barriers
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let row = move |id: u32| {
        let marked = open.part(move |sums| {
            let mut rows = sums.box_fill.barriers.iter();
            rows.any(|row| row.id == id && row.kind == BarrierKind::Marked)
        });
        let option = |kind: BarrierKind, words: &'static str| ChoiceOption::new(kind.code(), words);
        let kinds = vec![
            option(BarrierKind::Metal, fill::barrier_metal()),
            option(BarrierKind::Nonmetallic, fill::barrier_plastic()),
            option(BarrierKind::Marked, fill::barrier_marked()),
        ];
        view! {
            <li>
                {pick(
                    open,
                    format!("barrier-{id}"),
                    numbered(ids, id, fill::barrier_label),
                    kinds,
                    coded!(BarrierKind::code; box_fill.barriers[id].kind),
                )}
                <When when=marked>
                    {field(
                        open,
                        format!("barrier-volume-{id}"),
                        numbered(ids, id, fill::barrier_volume),
                        fields::BOX_VOLUME,
                        Shown::default(),
                        typed!(box_fill.barriers[id].volume),
                    )}
                </When>
                {take_out(
                    open,
                    numbered(ids, id, fill::barrier_name),
                    move |sums| sums.box_fill.barriers.retain(|row| row.id != id),
                )}
            </li>
        }
        .into_any()
    };
    view! {
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
        </ul>
        {add(
            open,
            fill::add_barrier(),
            |sums, id| sums.box_fill.barriers.push(BarrierEntry { id, ..BarrierEntry::default() }),
        )}
    }
}

/// Sizes that a box may be asked about: up to 6 AWG, where other rules begin.
fn box_sizes() -> Vec<ChoiceOption> {
    sizes(Size::Awg18, Size::Awg6)
}

#[component]
fn Inside(open: OpenSums) -> impl IntoView {
    let clamps = Spot::new(
        |sums| {
            if sums.box_fill.internal_clamps {
                "yes"
            } else {
                "no"
            }
            .to_owned()
        },
        |sums, code: String| sums.box_fill.internal_clamps = code == "yes",
    );
    let yes_no = vec![
        ChoiceOption::new("no", crate::words::common::no()),
        ChoiceOption::new("yes", crate::words::common::yes()),
    ];
    view! {
        <section class="sheet">
            <h2>{fill::contents_heading()}</h2>
            <Cables open />
            <Devices open />
            {choice(open, "clamps", label(fill::clamps_label()), fill::clamps_hint(), yes_no, clamps)}
            <OtherWires open />
            <TerminalBlocks open />
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

#[component]
fn Cables(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.box_fill
            .cables
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let row = move |id: u32| {
        let other = open.part(move |sums| {
            let mut rows = sums.box_fill.cables.iter();
            rows.any(|row| row.id == id && row.ground == CableGround::Other)
        });
        let option = |kind: CableGround, words: &'static str| ChoiceOption::new(kind.code(), words);
        let grounds = vec![
            option(CableGround::Same, fill::ground_same()),
            option(CableGround::None, fill::ground_none()),
            option(CableGround::Other, fill::ground_other()),
        ];
        view! {
            <li>
                <div class="pair level">
                    {pick(
                        open,
                        format!("cable-size-{id}"),
                        numbered(ids, id, fill::cable_size),
                        box_sizes(),
                        size_spot!(box_fill.cables[id].size),
                    )}
                    {field(
                        open,
                        format!("cable-wires-{id}"),
                        numbered(ids, id, fill::cable_wires),
                        fields::IN_BOX,
                        Shown::default(),
                        typed!(box_fill.cables[id].insulated),
                    )}
                    {pick(
                        open,
                        format!("cable-ground-{id}"),
                        numbered(ids, id, fill::cable_ground),
                        grounds,
                        coded!(CableGround::code; box_fill.cables[id].ground),
                    )}
                    <When when=other>
                        {pick(
                            open,
                            format!("cable-ground-size-{id}"),
                            numbered(ids, id, fill::cable_ground_size),
                            box_sizes(),
                            size_spot!(box_fill.cables[id].ground_size),
                        )}
                    </When>
                </div>
                <div class="row">
                    {add(open, fill::one_more(), move |sums, new| again(&mut sums.box_fill.cables, id, new))}
                    {take_out(
                        open,
                        numbered(ids, id, fill::cable_name),
                        move |sums| sums.box_fill.cables.retain(|row| row.id != id),
                    )}
                </div>
            </li>
        }
        .into_any()
    };
    view! {
        <h3>{fill::cables_heading()}</h3>
        <p class="quiet">{fill::cable_wires_hint()}</p>
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
        </ul>
        {add(
            open,
            fill::add_cable(),
            |sums, id| {
                let size = sums.box_fill.cables.last().and_then(|row| row.size);
                sums.box_fill.cables.push(BoxCableEntry::new(id, size));
            },
        )}
    }
}

/// Puts another cable like one that is there beneath it.
fn again(cables: &mut Vec<BoxCableEntry>, id: u32, new: u32) {
    if let Some(at) = cables.iter().position(|row| row.id == id)
        && let Some(like) = cables.get(at).cloned()
    {
        cables.insert(at + 1, BoxCableEntry { id: new, ..like });
    }
}

#[component]
fn Devices(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.box_fill
            .devices
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let row = move |id: u32| {
        view! {
            <li>
                <div class="pair level">
                    {pick(
                        open,
                        format!("device-size-{id}"),
                        numbered(ids, id, fill::device_size),
                        box_sizes(),
                        size_spot!(box_fill.devices[id].size),
                    )}
                    {field(
                        open,
                        format!("device-gangs-{id}"),
                        numbered(ids, id, fill::device_gangs),
                        fields::GANGS,
                        Shown::default(),
                        typed!(box_fill.devices[id].gangs),
                    )}
                </div>
                {take_out(
                    open,
                    numbered(ids, id, fill::device_name),
                    move |sums| sums.box_fill.devices.retain(|row| row.id != id),
                )}
            </li>
        }
        .into_any()
    };
    view! {
        <h3>{fill::devices_heading()}</h3>
        <p class="quiet">{fill::device_gangs_hint()}</p>
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
        </ul>
        {add(
            open,
            fill::add_device(),
            |sums, id| {
                let here = &sums.box_fill;
                let size = here.devices.last().map_or_else(
                    || here.cables.last().and_then(|row| row.size),
                    |row| row.size,
                );
                sums.box_fill.devices.push(DeviceEntry::new(id, size));
            },
        )}
    }
}

#[component]
fn OtherWires(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.box_fill
            .conductors
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let row = move |id: u32| {
        let uses = [
            (ConductorUse::Ending, fill::kind_ends()),
            (ConductorUse::Passing, fill::kind_passing()),
            (ConductorUse::Looped, fill::kind_looped()),
            (ConductorUse::Fixture, fill::kind_fixture()),
            (ConductorUse::Canopy, fill::kind_canopy()),
            (ConductorUse::Ground, fill::kind_ground()),
            (ConductorUse::IsolatedGround, fill::kind_isolated()),
        ];
        let uses = uses
            .into_iter()
            .map(|(kind, words)| ChoiceOption::new(kind.code(), words))
            .collect();
        view! {
            <li>
                {pick(
                    open,
                    format!("wires-use-{id}"),
                    numbered(ids, id, fill::other_kind),
                    uses,
                    coded!(ConductorUse::code; box_fill.conductors[id].what),
                )}
                <div class="pair level">
                    {pick(
                        open,
                        format!("wires-size-{id}"),
                        numbered(ids, id, fill::other_size),
                        box_sizes(),
                        size_spot!(box_fill.conductors[id].size),
                    )}
                    {field(
                        open,
                        format!("wires-count-{id}"),
                        numbered(ids, id, fill::other_count),
                        fields::IN_BOX,
                        Shown::default(),
                        typed!(box_fill.conductors[id].count),
                    )}
                </div>
                {take_out(
                    open,
                    numbered(ids, id, fill::other_name),
                    move |sums| sums.box_fill.conductors.retain(|row| row.id != id),
                )}
            </li>
        }
        .into_any()
    };
    view! {
        <h3>{fill::others_heading()}</h3>
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
        </ul>
        {add(
            open,
            fill::add_other(),
            |sums, id| {
                let count = Typed::plain("1");
                sums.box_fill.conductors.push(BoxConductorsEntry { id, count, ..BoxConductorsEntry::default() });
            },
        )}
    }
}

#[component]
fn TerminalBlocks(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        let rows = &sums.box_fill.terminal_blocks;
        rows.iter().map(|row| row.id).collect::<Vec<_>>()
    });
    view! {
        <ul class="rows">
            <For each=move || ids.get() key=|id| *id let:id>
                <li>
                    {pick(
                        open,
                        format!("block-size-{id}"),
                        numbered(ids, id, fill::block_size),
                        box_sizes(),
                        size_spot!(box_fill.terminal_blocks[id].size),
                    )}
                    {take_out(
                        open,
                        numbered(ids, id, fill::block_name),
                        move |sums| sums.box_fill.terminal_blocks.retain(|row| row.id != id),
                    )}
                </li>
            </For>
        </ul>
        {add(
            open,
            fill::add_block(),
            |sums, id| {
                sums.box_fill.terminal_blocks.push(TerminalBlockEntry { id, ..TerminalBlockEntry::default() });
            },
        )}
    }
}

const fn filling(item: FillItem) -> Filling {
    match item {
        FillItem::Conductors | FillItem::Passing | FillItem::Looped | FillItem::FixtureWires => {
            Filling::Wires
        }
        FillItem::Grounds | FillItem::IsolatedGrounds => Filling::Grounds,
        FillItem::Device => Filling::Device,
        FillItem::Clamps | FillItem::Supports | FillItem::TerminalBlock | FillItem::Pigtails => {
            Filling::Hardware
        }
    }
}

fn picture(found: &BoxFill, units: Units) -> BoxContent {
    let rest = fill::volume(found.room_in3.abs(), units);
    BoxContent {
        volume: found.volume_in3,
        volume_label: fill::volume(found.volume_in3, units),
        layers: found
            .lines
            .iter()
            .enumerate()
            .map(|(at, line)| BoxLayer {
                number: at + 1,
                space: line.volume_in3,
                label: fill::volume(line.volume_in3, units),
                count: line.count,
                filling: filling(line.item),
            })
            .collect(),
        rest_label: if found.fits {
            fill::room_label(rest)
        } else {
            fill::over_label(rest)
        },
    }
}

fn line_words(line: &FillLine) -> String {
    let item = fill::item(line.item);
    let named = match line.size {
        Some(size) => fill::of_size(item, words::size(size)),
        None => item.to_owned(),
    };
    if line.count > 1 {
        fill::times(named, line.count)
    } else {
        named
    }
}

fn line_row(at: usize, line: &FillLine, units: Units) -> AnyView {
    view! {
        <tr>
            <td class="num">{at + 1}</td>
            <th scope="row">{line_words(line)}</th>
            <td class="num">{fixed(line.allowances, 2)}</td>
            <td class="num">{fill::volume_number(line.volume_in3, units)}</td>
        </tr>
    }
    .into_any()
}

/// How full a box is: the figure, the picture, line by line, and what else fits.
#[component]
pub fn BoxAnswer(
    /// The answer; nothing is shown of none.
    found: Memo<Option<BoxFill>>,
    /// The units in force.
    units: Memo<Units>,
) -> impl IntoView {
    let name = move || {
        found.with(|found| match found {
            Some(found) if !found.fits => fill::over_by(),
            Some(found) if found.room_in3.abs() < 1e-6 => fill::full(),
            _ => fill::room_left(),
        })
    };
    let value = derived(move || {
        found.with(|found| {
            let room_in3 = found.as_ref().map_or(0.0, |found| found.room_in3.abs());
            fill::volume_number(room_in3, units.get())
        })
    });
    let unit = derived(move || fill::volume_unit(units.get()).to_owned());
    let rests = derived(move || {
        found.with(|found| {
            found.as_ref().map_or_else(String::new, |found| {
                let text = |in3| fill::volume(in3, units.get());
                let edition = words::by_edition(words::edition(found.edition));
                format!(
                    "{} {edition}",
                    fill::rests(text(found.required_in3), text(found.volume_in3))
                )
            })
        })
    });
    let notices = derived(move || {
        found.with(|found| {
            let findings = found.iter().flat_map(|found| &found.findings);
            findings
                .map(|finding| fill::finding(finding, units.get()))
                .collect::<Vec<_>>()
        })
    });
    let content = memo(move || {
        found.with(|found| {
            found
                .as_ref()
                .map(|found| picture(found, units.get()))
                .unwrap_or_default()
        })
    });
    let says = derived(move || {
        found.with(|found| {
            found.as_ref().map_or_else(String::new, |found| {
                let text = |in3| fill::volume(in3, units.get());
                fill::picture_says(text(found.required_in3), text(found.volume_in3))
            })
        })
    });
    let lines = move || {
        let rows = found.with(|found| {
            let lines = found.iter().flat_map(|found| &found.lines).enumerate();
            lines
                .map(|(at, line)| line_row(at, line, units.get()))
                .collect::<Vec<_>>()
        });
        view! {
            <table>
                <caption>{fill::lines_caption()}</caption>
                <thead>
                    <tr>
                        <th class="num" scope="col">"#"</th>
                        <th scope="col">{fill::head_what()}</th>
                        <th class="num" scope="col">{fill::head_counts()}</th>
                        <th class="num" scope="col">{fill::volume_unit(units.get())}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        }
    };
    let more = derived(move || {
        found.with(|found| {
            let more = found.iter().flat_map(|found| &found.more);
            more.map(|more| (fill::cable(&more.cable), more.count.to_string()))
                .collect::<Vec<_>>()
        })
    });
    let smallest = derived(move || {
        found.with(|found| {
            let smallest = found.iter().flat_map(|found| &found.smallest);
            smallest
                .map(|one| (fill::family(one.family).to_owned(), fill::smallest(one)))
                .collect::<Vec<_>>()
        })
    });
    let steps = derived(move || {
        found.with(|found| {
            found
                .as_ref()
                .map(|found| found.steps.clone())
                .unwrap_or_default()
        })
    });
    let sections = derived(move || {
        found.with(|found| {
            found.as_ref().map_or_else(Vec::new, |found| {
                rules::sections(&found.steps, &[], found.edition)
            })
        })
    });
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{say(name)}</p>
                <Figure value unit />
                <RestsOn text=rests />
                <Notices lines=notices />
            </div>
        </section>
        <figure class="picture">
            <BoxPicture content says />
            <figcaption>{fill::picture_caption()}</figcaption>
        </figure>
        <section class="sheet">
            {draw(lines)}
            <h3>{fill::more_heading()}</h3>
            <Facts rows=more />
            <details>
                <summary>{fill::smallest_heading()}</summary>
                <Facts rows=smallest />
            </details>
            <Working steps units />
            <CodeSections rows=sections />
            <Cautions lines=Signal::stored(words::cautions()) />
        </section>
    }
}
