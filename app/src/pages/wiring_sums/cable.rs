//! Quick sum: cable for a run from box to box, its rolls and staples, and the cables that switches need.

use calc::job::questions::wiring::cable::cable_run_of;
use calc::job::sums::{EndKind, HeldBy, PartEntry, PieceEntry, Sums};
use calc::job::{CodeEdition, Units, fields};
use calc::saved::Coded;
use calc::wiring::cable_run::{CableTake, Roll, RunFinding, Way};
use calc::wiring::code::Rule;
use leptos::prelude::*;

use super::super::sum_fields::{
    CodeSpot, Row, Rows, Shown, Spot, choice, coded, edition_field, few, field, label, list,
    no_yes, pick, rows, take_code, typed, yes_code,
};
use super::super::sums::OpenSums;
use super::frame::{Outcome, SumFrame, Table, Told};
use super::keep::{KeepWiring, Keeps};
use super::switches::Switches;
use crate::markup::view;
use crate::reactive::{When, derived};
use crate::words::wiring::{self as words, cable as says, rules};

/// Cable run.
#[component]
pub fn SumCablePage() -> impl IntoView {
    let open = OpenSums::load();
    let pieces = rows!(cable_run.pieces; says::add_piece(), says::piece_name, |sums, _, id| {
        sums.cable_run.pieces.push(PieceEntry::usual(id));
    });
    let fields = view! {
        <section class="sheet">
            <h2>{says::pieces_heading()}</h2>
            {list(open, "rows", pieces, piece)}
        </section>
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
    };
    let after = view! {
        <KeepWiring open what=Keeps::Cable />
        <Switches open />
    };
    view! { <SumFrame open title=says::title() of fields=fields.into_any() after=after.into_any() /> }
}

fn of(sums: &Sums) -> Outcome {
    let units = sums.units;
    let asked = cable_run_of(&sums.cable_run, sums.code_edition);
    Outcome::of(
        asked,
        |refusal| says::refusal(refusal, units),
        |found| told(&found, units),
    )
}

/// An end of a piece: where it is.
fn end(row: Row, key: &str, words: fn(usize) -> String, spot: CodeSpot) -> AnyView {
    let kinds = few(&[
        (EndKind::Box.code(), says::end_box()),
        (EndKind::ClamplessBox.code(), says::end_clampless()),
        (EndKind::Panel.code(), says::end_panel()),
    ]);
    pick(row.open, row.key(key), row.named(words), kinds, spot)
}

/// A piece of cable: an end, the way, the other end.
fn piece(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    let parts = Rows {
        within: id,
        ids: |sums, id| {
            let mut pieces = sums.cable_run.pieces.iter();
            let piece = pieces.find(|row| row.id == id);
            piece.map_or_else(Vec::new, |row| {
                row.parts.iter().map(|part| part.id).collect()
            })
        },
        add: |sums, piece, id| {
            let mut pieces = sums.cable_run.pieces.iter_mut();
            if let Some(row) = pieces.find(|row| row.id == piece) {
                // Held like the part before it.
                let before = row.parts.last();
                let held = before.map(|part| part.held).unwrap_or_default();
                row.parts.push(PartEntry {
                    id,
                    held,
                    ..PartEntry::default()
                });
            }
        },
        take: |sums, id| {
            for piece in &mut sums.cable_run.pieces {
                piece.parts.retain(|part| part.id != id);
            }
        },
        add_words: says::add_part(),
        name: |_| String::new(),
    };
    view! {
        {end(row, "piece-from", says::from_label, coded!(EndKind::code; cable_run.pieces[id].from))}
        {field(
            open,
            row.key("piece-from-free"),
            row.named(says::from_free),
            fields::FREE_CABLE,
            Shown::default(),
            typed!(cable_run.pieces[id].from_free),
        )}
        {list(open, "parts", parts, part)}
        {end(row, "piece-to", says::to_label, coded!(EndKind::code; cable_run.pieces[id].to))}
        {field(
            open,
            row.key("piece-to-free"),
            row.named(says::to_free),
            fields::FREE_CABLE,
            Shown::hint(says::free_hint()),
            typed!(cable_run.pieces[id].to_free),
        )}
        {row.take_out()}
    }
    .into_any()
}

fn part_of(sums: &Sums, id: u32) -> Option<&PartEntry> {
    let mut parts = sums.cable_run.pieces.iter().flat_map(|piece| &piece.parts);
    parts.find(|part| part.id == id)
}

fn part_mut(sums: &mut Sums, id: u32) -> Option<&mut PartEntry> {
    let pieces = sums.cable_run.pieces.iter_mut();
    let mut parts = pieces.flat_map(|piece| &mut piece.parts);
    parts.find(|part| part.id == id)
}

/// A part of the way: its piece and its place there, both from 1.
fn place_of(sums: &Sums, id: u32) -> (usize, usize) {
    let pieces = sums.cable_run.pieces.iter().enumerate();
    for (piece, row) in pieces {
        if let Some(part) = row.parts.iter().position(|part| part.id == id) {
            return (piece + 1, part + 1);
        }
    }
    (1, 1)
}

/// A part of the way.
fn part(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    let named = move |words: fn(String) -> String| {
        derived(move || {
            let (piece, part) = open.sums.with(|sums| place_of(sums, id));
            words(says::part_of(piece, part))
        })
    };
    let fished = open.part(move |sums| part_of(sums, id).is_some_and(|p| p.held == HeldBy::Fished));
    let ways = few(&[
        (Way::Up.word(), says::way_up()),
        (Way::Across.word(), says::way_across()),
        (Way::Down.word(), says::way_down()),
    ]);
    let held = few(&[
        (HeldBy::Stapled.code(), says::held_stapled()),
        (HeldBy::Bored.code(), says::held_bored()),
        (HeldBy::Fished.code(), says::held_fished()),
    ]);
    let way = CodeSpot {
        row: id,
        read: |sums, id| part_of(sums, id).map_or("", |p| p.way.word()).to_owned(),
        write: |sums, id, code| {
            if let Some(part) = part_mut(sums, id) {
                take_code(&mut part.way, code);
            }
        },
    };
    let held_spot = CodeSpot {
        row: id,
        read: |sums, id| part_of(sums, id).map_or("", |p| p.held.code()).to_owned(),
        write: |sums, id, code| {
            if let Some(part) = part_mut(sums, id) {
                take_code(&mut part.held, code);
            }
        },
    };
    let attic = CodeSpot {
        row: id,
        read: |sums, id| yes_code(part_of(sums, id).is_some_and(|p| p.attic)),
        write: |sums, id, code| {
            if let Some(part) = part_mut(sums, id) {
                part.attic = code == "yes";
            }
        },
    };
    let length = Spot {
        row: id,
        read: |sums, id| part_of(sums, id).map(|p| &p.length),
        write: |sums, id| part_mut(sums, id).map(|p| &mut p.length),
    };
    let edge = Spot {
        row: id,
        read: |sums, id| part_of(sums, id).map(|p| &p.edge),
        write: |sums, id| part_mut(sums, id).map(|p| &mut p.edge),
    };
    view! {
        {choice(open, row.key("part-way"), named(says::part_way), "", ways, way)}
        {field(open, row.key("part-length"), named(says::part_length), fields::ROLL, Shown::default(), length)}
        {pick(open, row.key("part-held"), named(says::part_held), held, held_spot)}
        <When when=move || !fished.get()>
            {field(
                open,
                row.key("part-edge"),
                named(says::part_edge),
                fields::EDGE,
                Shown::optional(says::edge_hint()),
                edge,
            )}
        </When>
        {choice(open, row.key("part-attic"), named(says::part_attic), "", no_yes(), attic)}
        {row.take_out_as(named(says::part_itself))}
    }
    .into_any()
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

/// Each piece as it is cut.
fn pieces_table(found: &CableTake, units: Units) -> Table {
    let rows = found.pieces.iter().enumerate().map(|(at, piece)| {
        vec![
            (at + 1).to_string(),
            words::length(piece.path_ft, units),
            words::length(piece.cut_ft, units),
            piece.staples.to_string(),
        ]
    });
    Table {
        caption: says::pieces_caption(),
        heads: vec![
            (says::head_piece(), true),
            (says::head_path(), true),
            (says::head_cut(), true),
            (says::head_staples(), true),
        ],
        named_by: 0,
        rows: rows.collect(),
    }
}

fn told(found: &CableTake, units: Units) -> Told {
    let rolls = found.rolls.iter().enumerate();
    let mut facts: Vec<_> = rolls.map(|(at, roll)| roll_row(at, roll, units)).collect();
    facts.push((
        says::path_row().to_owned(),
        words::length(found.path_ft, units),
    ));
    let more = finding_rules(&found.findings, found.edition);
    let mut cautions = vec![says::caution_hidden().to_owned()];
    cautions.extend(words::cautions());
    Told {
        name: says::to_buy(),
        value: words::length_up(found.cut_ft, units),
        unit: words::length_unit(units),
        rests: rests(found),
        notices: found
            .findings
            .iter()
            .map(|finding| says::finding(finding, units))
            .collect(),
        table: Some(pieces_table(found, units)),
        facts,
        steps: found.steps.clone(),
        sections: rules::sections(&found.steps, &more, found.edition),
        cautions,
        ..Told::default()
    }
}
