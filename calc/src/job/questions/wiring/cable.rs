//! Cable for a run, and which cables switches need.

use super::AskProblem;
use crate::job::questions::{EntryProblem, Reader};
use crate::job::sums::{CableSum, EndKind, HeldBy, PartEntry, PieceEntry, SwitchSum};
use crate::job::{CodeEdition, fields};
use crate::quantity::Typed;
use crate::wiring::cable_run::{
    CableRun, CableTake, End, Held, Part, Piece, RunRefusal, SwitchPlan, SwitchRefusal, Switching,
    switch_cables, take,
};

/// What the run of the quick sum takes: cable, rolls, staples.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps it from being answered.
pub fn cable_run_of(
    sum: &CableSum,
    edition: CodeEdition,
) -> Result<CableTake, AskProblem<RunRefusal>> {
    take(&cable_run(sum, edition)?).map_err(AskProblem::Refused)
}

/// The run of the quick sum.
///
/// # Errors
/// Every entry that is missing or refused.
pub fn cable_run(sum: &CableSum, edition: CodeEdition) -> Result<CableRun, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let allowance_percent = reader.need(
        "allowance_percent",
        &fields::ALLOWANCE,
        &sum.allowance_percent,
    );
    let roll_ft = reader.feet("roll", &fields::ROLL, &sum.roll);
    let pieces = sum
        .pieces
        .iter()
        .map(|entry| piece(&mut reader, entry))
        .collect();
    reader.finish(CableRun {
        edition,
        pieces,
        allowance_percent,
        roll_ft,
    })
}

fn piece(reader: &mut Reader, entry: &PieceEntry) -> Piece {
    reader.row(entry.id);
    Piece {
        from: end(reader, "from_free", entry.from, &entry.from_free),
        to: end(reader, "to_free", entry.to, &entry.to_free),
        parts: entry
            .parts
            .iter()
            .map(|entry| part(reader, entry))
            .collect(),
    }
}

fn end(reader: &mut Reader, name: &'static str, kind: EndKind, free: &Typed) -> End {
    let free_in = reader.need(name, &fields::FREE_CABLE, free);
    match kind {
        EndKind::Box => End::Box { free_in },
        EndKind::ClamplessBox => End::ClamplessBox { free_in },
        EndKind::Panel => End::Panel { free_in },
    }
}

fn part(reader: &mut Reader, entry: &PartEntry) -> Part {
    reader.row(entry.id);
    let length_ft = reader.feet("length", &fields::ROLL, &entry.length);
    let held = match entry.held {
        HeldBy::Fished => Held::Fished,
        HeldBy::Stapled => Held::Stapled {
            edge_in: reader.may("edge", &fields::EDGE, &entry.edge),
        },
        HeldBy::Bored => Held::Bored {
            edge_in: reader.may("edge", &fields::EDGE, &entry.edge),
        },
    };
    Part {
        way: entry.way,
        length_ft,
        held,
        attic: entry.attic,
    }
}

/// Which cables the switches of the quick sum need.
///
/// # Errors
/// The number of switches, missing or refused; then what keeps it from being answered.
pub fn switches_of(
    sum: &SwitchSum,
    edition: CodeEdition,
) -> Result<SwitchPlan, AskProblem<SwitchRefusal>> {
    let mut reader = Reader::default();
    let switches = reader.count("switches", &fields::SWITCHES, &sum.switches);
    let switching = reader.finish(Switching {
        edition,
        switches,
        power: sum.power,
        light: sum.light,
        neutral: sum.neutral,
    })?;
    switch_cables(switching).map_err(AskProblem::Refused)
}
