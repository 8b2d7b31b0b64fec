//! Quick sum: cable for a run from box to box, its rolls and staples, and the cables that switches need.

use crate::markup::{For, view};
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::cable::{cable_run_of, switches_of};
use calc::job::sums::{EndKind, HeldBy, PartEntry, PieceEntry, Sums};
use calc::job::{CodeEdition, Units, fields};
use calc::saved::Coded;
use calc::wiring::cable_run::{
    CableTake, LightAt, NeutralNeed, PieceLength, PowerAt, Roll, RunFinding, SwitchCable,
    SwitchPlan, Way,
};
use calc::wiring::code::Rule;
use leptos::prelude::*;

use super::sum_fields::{
    Shown, Spot, add, choice, coded, edition_field, field, label, numbered, pick, take_code,
    take_out, typed,
};
use super::sums::{OpenSums, SumFoot};
use crate::answer::{Cautions, CodeSections, Facts, Notices, RestsOn, Working};
use crate::entry::ChoiceOption;
use crate::pictures::switch_chain::{ChainCable, ChainContent};
use crate::pictures::{Figure, SwitchChain};
use crate::reactive::{When, derived, draw, memo};
use crate::shell::PageHeading;
use crate::words::common;
use crate::words::wiring::{self as words, cable as says, rules};

/// Cable run.
#[component]
pub fn SumCablePage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let edition = open.part(|sums| sums.code_edition);
    let entry = open.part(|sums| sums.cable_run.clone());
    let asked = memo(move || entry.with(|entry| cable_run_of(entry, edition.get())));
    let found = memo(move || asked.with(|asked| asked.as_ref().ok().cloned()));
    let refused = memo(move || {
        asked.with(|asked| match asked {
            Err(AskProblem::Refused(refusal)) => Some(says::refusal(refusal, units.get())),
            _ => None,
        })
    });
    view! {
        <PageHeading text=label(says::title()) />
        <Pieces open />
        {field(
            open,
            "cable-allowance",
            label(says::allowance_label()),
            fields::ALLOWANCE,
            Shown::hint(says::allowance_hint()),
            typed!(cable_run.allowance_percent),
        )}
        {field(
            open,
            "roll",
            label(says::roll_label()),
            fields::ROLL,
            Shown::hint(says::roll_hint()),
            typed!(cable_run.roll),
        )}
        {edition_field(open)}
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::say_more()}</p> }>
            <CableAnswer found units />
        </When>
        <Switches open edition />
        <SumFoot open />
    }
}

fn end_options() -> Vec<ChoiceOption> {
    [
        (EndKind::Box, says::end_box()),
        (EndKind::ClamplessBox, says::end_clampless()),
        (EndKind::Panel, says::end_panel()),
    ]
    .into_iter()
    .map(|(kind, words)| ChoiceOption::new(kind.code(), words))
    .collect()
}

#[component]
fn Pieces(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.cable_run
            .pieces
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let row = move |id: u32| {
        view! {
            <li>
                {pick(
                    open,
                    format!("piece-from-{id}"),
                    numbered(ids, id, says::from_label),
                    end_options(),
                    coded!(EndKind::code; cable_run.pieces[id].from),
                )}
                {field(
                    open,
                    format!("piece-from-free-{id}"),
                    numbered(ids, id, says::from_free),
                    fields::FREE_CABLE,
                    Shown::default(),
                    typed!(cable_run.pieces[id].from_free),
                )}
                <Parts open piece=id pieces=ids />
                {pick(
                    open,
                    format!("piece-to-{id}"),
                    numbered(ids, id, says::to_label),
                    end_options(),
                    coded!(EndKind::code; cable_run.pieces[id].to),
                )}
                {field(
                    open,
                    format!("piece-to-free-{id}"),
                    numbered(ids, id, says::to_free),
                    fields::FREE_CABLE,
                    Shown::hint(says::free_hint()),
                    typed!(cable_run.pieces[id].to_free),
                )}
                {take_out(
                    open,
                    numbered(ids, id, says::piece_name),
                    move |sums| sums.cable_run.pieces.retain(|row| row.id != id),
                )}
            </li>
        }
        .into_any()
    };
    view! {
        <section class="sheet">
            <h2>{says::pieces_heading()}</h2>
            <ul class="rows">
                <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
            </ul>
            {add(open, says::add_piece(), |sums, id| sums.cable_run.pieces.push(PieceEntry::usual(id)))}
        </section>
    }
}

fn part(sums: &Sums, id: u32) -> Option<&PartEntry> {
    let mut parts = sums.cable_run.pieces.iter().flat_map(|piece| &piece.parts);
    parts.find(|part| part.id == id)
}

fn change_part(sums: &mut Sums, id: u32, change: &mut dyn FnMut(&mut PartEntry)) {
    let pieces = &mut sums.cable_run.pieces;
    if let Some(part) = pieces
        .iter_mut()
        .flat_map(|piece| &mut piece.parts)
        .find(|part| part.id == id)
    {
        change(part);
    }
}

/// The way so far: the parts of one piece.
#[component]
fn Parts(open: OpenSums, piece: u32, pieces: Memo<Vec<u32>>) -> impl IntoView {
    let ids = open.part(move |sums| {
        let mut found = sums.cable_run.pieces.iter().filter(|row| row.id == piece);
        found.next().map_or_else(Vec::new, |row| {
            row.parts.iter().map(|part| part.id).collect::<Vec<_>>()
        })
    });
    let named = move |id: u32, words: fn(String) -> String| {
        derived(move || {
            let place = |ids: &Vec<u32>, id| ids.iter().position(|&row| row == id).unwrap_or(0) + 1;
            let piece = pieces.with(|pieces| place(pieces, piece));
            let part = ids.with(|ids| place(ids, id));
            words(says::part_of(piece, part))
        })
    };
    let row = move |id: u32| {
        let fished =
            open.part(move |sums| part(sums, id).is_some_and(|p| p.held == HeldBy::Fished));
        let ways = [
            (Way::Up, says::way_up()),
            (Way::Across, says::way_across()),
            (Way::Down, says::way_down()),
        ];
        let ways = ways
            .into_iter()
            .map(|(way, words)| ChoiceOption::new(way.word(), words))
            .collect();
        let held = [
            (HeldBy::Stapled, says::held_stapled()),
            (HeldBy::Bored, says::held_bored()),
            (HeldBy::Fished, says::held_fished()),
        ];
        let held = held
            .into_iter()
            .map(|(held, words)| ChoiceOption::new(held.code(), words))
            .collect();
        let yes_no = vec![
            ChoiceOption::new("no", common::no()),
            ChoiceOption::new("yes", common::yes()),
        ];
        let way_spot = Spot::new(
            move |sums| part(sums, id).map_or("", |p| p.way.word()).to_owned(),
            move |sums, code: String| {
                change_part(sums, id, &mut |p| take_code(&mut p.way, code.clone()));
            },
        );
        let held_spot = Spot::new(
            move |sums| part(sums, id).map_or("", |p| p.held.code()).to_owned(),
            move |sums, code: String| {
                change_part(sums, id, &mut |p| take_code(&mut p.held, code.clone()));
            },
        );
        let attic_spot = Spot::new(
            move |sums| {
                let attic = part(sums, id).is_some_and(|p| p.attic);
                if attic { "yes" } else { "no" }.to_owned()
            },
            move |sums, code: String| change_part(sums, id, &mut |p| p.attic = code == "yes"),
        );
        let length_spot = Spot::new(
            move |sums| part(sums, id).map(|p| p.length.clone()).unwrap_or_default(),
            move |sums, typed: calc::job::Typed| {
                change_part(sums, id, &mut |p| p.length = typed.clone());
            },
        );
        let edge_spot = Spot::new(
            move |sums| part(sums, id).map(|p| p.edge.clone()).unwrap_or_default(),
            move |sums, typed: calc::job::Typed| {
                change_part(sums, id, &mut |p| p.edge = typed.clone());
            },
        );
        view! {
            <li>
                {choice(open, format!("part-way-{id}"), named(id, says::part_way), "", ways, way_spot)}
                {field(
                    open,
                    format!("part-length-{id}"),
                    named(id, says::part_length),
                    fields::ROLL,
                    Shown::default(),
                    length_spot,
                )}
                {pick(open, format!("part-held-{id}"), named(id, says::part_held), held, held_spot)}
                <When when=move || !fished.get()>
                    {field(
                        open,
                        format!("part-edge-{id}"),
                        named(id, says::part_edge),
                        fields::EDGE,
                        Shown::optional(says::edge_hint()),
                        edge_spot.clone(),
                    )}
                </When>
                {choice(open, format!("part-attic-{id}"), named(id, says::part_attic), "", yes_no, attic_spot)}
                {take_out(
                    open,
                    named(id, says::part_itself),
                    move |sums| {
                        for piece in &mut sums.cable_run.pieces {
                            piece.parts.retain(|part| part.id != id);
                        }
                    },
                )}
            </li>
        }
        .into_any()
    };
    view! {
        <ul class="parts">
            <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
        </ul>
        {add(
            open,
            says::add_part(),
            move |sums, id| {
                if let Some(row) = sums.cable_run.pieces.iter_mut().find(|row| row.id == piece) {
                    // Held like the part before it.
                    let before = row.parts.last();
                    let held = before.map(|part| part.held).unwrap_or_default();
                    row.parts.push(PartEntry { id, held, ..PartEntry::default() });
                }
            },
        )}
    }
}

/// The rules that findings rest on, in their order.
fn finding_rules(findings: &[RunFinding], edition: CodeEdition) -> Vec<Rule> {
    let sections = findings.iter().filter_map(|finding| match finding {
        RunFinding::PlateAtHole { section, .. }
        | RunFinding::PlateAlongFraming { section, .. }
        | RunFinding::EdgeNotKnown { section, .. }
        | RunFinding::TooLittleFree { section, .. }
        | RunFinding::AtticGuard { section, .. } => Some(*section),
        RunFinding::LongerThanRoll { .. } => None,
    });
    rules::named(sections, edition)
}

fn piece_row(at: usize, piece: &PieceLength, units: Units) -> AnyView {
    view! {
        <tr>
            <th class="num" scope="row">{at + 1}</th>
            <td class="num">{words::length(piece.path_ft, units)}</td>
            <td class="num">{words::length(piece.cut_ft, units)}</td>
            <td class="num">{piece.staples}</td>
        </tr>
    }
    .into_any()
}

fn roll_row(at: usize, roll: &Roll, units: Units) -> (String, String) {
    let pieces: Vec<String> = roll.pieces.iter().map(|at| (at + 1).to_string()).collect();
    (
        says::roll_row(at + 1),
        says::roll_left(pieces.join(", "), words::length(roll.left_ft, units)),
    )
}

fn rests(found: &CableTake) -> String {
    let (pieces, rolls) = (found.pieces.len(), found.rolls.len());
    let edition = words::by_edition(words::edition(found.edition));
    format!("{} {edition}", says::rests(pieces, rolls, found.staples))
}

#[component]
fn CableAnswer(found: Memo<Option<CableTake>>, units: Memo<Units>) -> impl IntoView {
    let value = derived(move || {
        let units = units.get();
        found.with(|found| {
            found
                .as_ref()
                .map_or_else(String::new, |found| words::length_up(found.cut_ft, units))
        })
    });
    let unit = derived(move || words::length_unit(units.get()).to_owned());
    let rests_text =
        derived(move || found.with(|found| found.as_ref().map(rests).unwrap_or_default()));
    let notices = derived(move || {
        let units = units.get();
        found.with(|found| {
            let findings = found.iter().flat_map(|found| &found.findings);
            findings
                .map(|finding| says::finding(finding, units))
                .collect::<Vec<_>>()
        })
    });
    let table = move || {
        let units = units.get();
        let rows: Vec<AnyView> = found.with(|found| {
            let pieces = found.iter().flat_map(|found| &found.pieces).enumerate();
            pieces
                .map(|(at, piece)| piece_row(at, piece, units))
                .collect()
        });
        view! {
            <table>
                <caption>{says::pieces_caption()}</caption>
                <thead>
                    <tr>
                        <th class="num" scope="col">{says::head_piece()}</th>
                        <th class="num" scope="col">{says::head_path()}</th>
                        <th class="num" scope="col">{says::head_cut()}</th>
                        <th class="num" scope="col">{says::head_staples()}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        }
    };
    let rows = derived(move || {
        let units = units.get();
        found.with(|found| {
            let Some(found) = found else {
                return Vec::new();
            };
            let rolls = found.rolls.iter().enumerate();
            let mut rows: Vec<_> = rolls.map(|(at, roll)| roll_row(at, roll, units)).collect();
            rows.push((
                says::path_row().to_owned(),
                words::length(found.path_ft, units),
            ));
            rows
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
                let more = finding_rules(&found.findings, found.edition);
                rules::sections(&found.steps, &more, found.edition)
            })
        })
    });
    let mut cautions = vec![says::caution_hidden().to_owned()];
    cautions.extend(words::cautions());
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{says::to_buy()}</p>
                <Figure value unit />
                <RestsOn text=rests_text />
                <Notices lines=notices />
            </div>
            {draw(table)}
            <Facts rows />
            <Working steps units />
            <CodeSections rows=sections />
            <Cautions lines=Signal::stored(cautions) />
        </section>
    }
}

#[component]
fn Switches(open: OpenSums, edition: Memo<CodeEdition>) -> impl IntoView {
    let entry = open.part(|sums| sums.switches.clone());
    let plan = memo(move || entry.with(|entry| switches_of(entry, edition.get()).ok()));
    let powers = [
        (PowerAt::FirstSwitch, says::power_switch()),
        (PowerAt::Light, says::power_light()),
    ];
    let lights = [
        (LightAt::LastSwitch, says::light_last()),
        (LightAt::FirstSwitch, says::light_first()),
    ];
    let neutrals = [
        (NeutralNeed::Every, says::neutral_every()),
        (NeutralNeed::One, says::neutral_one()),
        (NeutralNeed::None, says::neutral_none()),
    ];
    let powers = powers.map(|(of, words)| ChoiceOption::new(of.word(), words));
    let lights = lights.map(|(of, words)| ChoiceOption::new(of.word(), words));
    let neutrals = neutrals.map(|(of, words)| ChoiceOption::new(of.word(), words));
    let at_switch = open.part(|sums| sums.switches.power == PowerAt::FirstSwitch);
    view! {
        <section class="sheet">
            <h2>{says::switches_heading()}</h2>
            {field(
                open,
                "switches",
                label(says::switches_label()),
                fields::SWITCHES,
                Shown::hint(says::switches_hint()),
                typed!(switches.switches),
            )}
            {choice(
                open,
                "power-at",
                label(says::power_label()),
                "",
                powers.to_vec(),
                coded!(Coded::word; switches.power),
            )}
            <When when=at_switch>
                {choice(
                    open,
                    "light-at",
                    label(says::light_label()),
                    "",
                    lights.to_vec(),
                    coded!(Coded::word; switches.light),
                )}
            </When>
            {pick(
                open,
                "switch-neutral",
                label(says::neutral_label()),
                neutrals.to_vec(),
                coded!(Coded::word; switches.neutral),
            )}
        </section>
        <When when=move || plan.read().is_some()>
            <SwitchAnswer plan />
        </When>
    }
}

fn roles(cable: &SwitchCable) -> String {
    let roles: Vec<&str> = cable.roles.iter().map(|role| says::role(*role)).collect();
    says::wires(cable.conductors, roles.join(", "))
}

fn chain(plan: &SwitchPlan) -> ChainContent {
    ChainContent {
        cables: plan
            .cables
            .iter()
            .map(|cable| ChainCable {
                from: says::spot(cable.from),
                to: says::spot(cable.to),
                roles: cable.roles.clone(),
            })
            .collect(),
    }
}

#[component]
fn SwitchAnswer(plan: Memo<Option<SwitchPlan>>) -> impl IntoView {
    let content = memo(move || plan.with(|plan| plan.as_ref().map(chain).unwrap_or_default()));
    let rows = derived(move || {
        plan.with(|plan| {
            let cables = plan.iter().flat_map(|plan| &plan.cables);
            cables
                .map(|cable| {
                    let way = says::way_between(says::spot(cable.from), says::spot(cable.to));
                    (way, roles(cable))
                })
                .collect::<Vec<_>>()
        })
    });
    let notices = derived(move || {
        plan.with(|plan| {
            let findings = plan.iter().flat_map(|plan| &plan.findings);
            findings.map(says::switch_finding).collect::<Vec<_>>()
        })
    });
    let sections = derived(move || {
        plan.with(|plan| {
            plan.as_ref().map_or_else(Vec::new, |plan| {
                let rules = [Rule::SwitchHot, Rule::SwitchNeutral, Rule::RunTogether];
                rules::sections(&[], &rules, plan.edition)
            })
        })
    });
    let picture_says = derived(move || {
        rows.with(|rows| {
            let lines: Vec<String> = rows
                .iter()
                .map(|(way, roles)| format!("{way}, {roles}"))
                .collect();
            lines.join("; ")
        })
    });
    view! {
        <figure class="picture">
            <SwitchChain content says=picture_says />
            <figcaption>{says::chain_caption()}</figcaption>
        </figure>
        <section class="sheet" role="status">
            <Notices lines=notices />
            <Facts rows />
            <p class="quiet">{says::plus_ground()}</p>
            <CodeSections rows=sections />
        </section>
    }
}
