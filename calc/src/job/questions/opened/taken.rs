//! Readings: from what was entered to what was measured, where and in which situation.

use serde::Serialize;

use super::{contact, gone, point};
use crate::job::questions::answers::answered;
use crate::job::questions::wiring::AskProblem;
use crate::job::questions::{EntryProblem, Reader};
use crate::job::{
    LoadOffEntry, OpenedEntry, ReadingEntry, ReadingKind, SpotEntry, SpotKind, SwitchedEntry,
    fields,
};
use crate::wiring::open_box::description::Description;
use crate::wiring::open_box::next_reading::Outlook;
use crate::wiring::open_box::reading::{
    Outcome, Point, Probe, Reading, ReadingRefusal, Round, Shown,
};
use crate::wiring::open_box::situation::{Apart, LoadId, Situation, SwitchId};

/// A reading as entered, by its row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReadingTaken {
    /// The row.
    pub row: u32,
    /// Whether it was taken to prove what was put right.
    pub proves: bool,
    /// The reading, or what keeps it from being one.
    #[serde(serialize_with = "answered")]
    pub reading: Result<Reading, AskProblem<ReadingRefusal>>,
}

/// Every reading of an entry, in its order.
pub fn readings(entry: &OpenedEntry, description: &Description) -> Vec<ReadingTaken> {
    entry
        .readings
        .iter()
        .map(|taken| ReadingTaken {
            row: taken.id,
            proves: taken.proves,
            reading: reading(taken, description),
        })
        .collect()
}

/// One reading.
///
/// # Errors
/// What is missing or refused in it, by its row; else why it can't have been taken.
pub fn reading(
    entry: &ReadingEntry,
    description: &Description,
) -> Result<Reading, AskProblem<ReadingRefusal>> {
    let mut problems: Vec<EntryProblem> = Vec::new();
    let situation = Situation {
        everything_off: entry.everything_off,
        breakers_off: entry.breakers_off.clone(),
        apart: entry
            .apart
            .iter()
            .filter_map(|spot| {
                let found = apart(spot);
                if found.is_none() {
                    problems.push(gone("apart", entry.id));
                }
                found
            })
            .collect(),
        switches: entry
            .switched
            .iter()
            .map(|s| (switch(s), s.position))
            .collect(),
        loads_off: entry.loads_off.iter().map(load).collect(),
    };
    let mut place = |name: &'static str, spot: &SpotEntry| {
        point(spot).unwrap_or_else(|| {
            problems.push(gone(name, entry.id));
            Point::GroundBar
        })
    };
    let probe = match entry.what {
        ReadingKind::Volts => Probe::Volts {
            from: place("from", &entry.from),
            to: place("to", &entry.to),
            meter: entry.meter,
        },
        ReadingKind::Ohms => Probe::Ohms {
            from: place("from", &entry.from),
            to: place("to", &entry.to),
        },
        ReadingKind::Tester => Probe::Tester {
            at: place("from", &entry.from),
        },
        ReadingKind::Amps => Probe::Amps {
            round: match (place("from", &entry.from), entry.whole_cable) {
                (Point::End(end), false) => Round::Conductor(end),
                (_, _) => Round::Cable {
                    cable: entry.from.cable,
                    side: entry.from.side,
                },
            },
        },
    };
    let mut reader = Reader::default();
    reader.row(entry.id);
    let outcome = outcome(&mut reader, entry);
    problems.extend(reader.finish(()).err().unwrap_or_default());
    let Some(outcome) = outcome.filter(|_| problems.is_empty()) else {
        return Err(AskProblem::Entries(problems));
    };
    let reading = Reading {
        situation,
        probe,
        outcome,
    };
    reading.check(description).map_err(AskProblem::Refused)?;
    Ok(reading)
}

fn outcome(reader: &mut Reader, entry: &ReadingEntry) -> Option<Outcome> {
    let field = match entry.what {
        ReadingKind::Tester => {
            let Some(glows) = entry.glows else {
                reader.missing("glows");
                return None;
            };
            return Some(Outcome::Glows(glows));
        }
        ReadingKind::Volts => fields::MEASURED_VOLTS,
        ReadingKind::Amps => fields::SOME_AMPS,
        ReadingKind::Ohms => fields::SHOWN_OHMS,
    };
    let range = reader.may("range", &field, &entry.range);
    if entry.what == ReadingKind::Ohms && entry.open {
        return Some(Outcome::Shows(Shown::OverLimit { range }));
    }
    let value = reader.need("shown", &field, &entry.shown);
    Some(Outcome::Shows(Shown::Value { value, range }))
}

fn apart(spot: &SpotEntry) -> Option<Apart> {
    if spot.what == SpotKind::Joint {
        return Some(Apart::Joint {
            in_box: spot.in_box,
            joint: spot.joint,
        });
    }
    contact(spot).map(Apart::Contact)
}

fn switch(entry: &SwitchedEntry) -> SwitchId {
    match (entry.device, entry.four_way) {
        (Some(device), _) => SwitchId::Device(device),
        (None, true) => SwitchId::BeyondFourWay(entry.cable),
        (None, false) => SwitchId::Beyond(entry.cable),
    }
}

fn load(entry: &LoadOffEntry) -> LoadId {
    match (entry.device, entry.lower) {
        (Some(device), true) => LoadId::Lower(device),
        (Some(device), false) => LoadId::Device(device),
        (None, _) => LoadId::Beyond {
            cable: entry.cable,
            load: entry.load as usize,
        },
    }
}

/// Whether a reading shows what it has to: within what is expected, by as much as its meter may be off (3 % and a little,
/// common practice for meters on a job).
pub fn proved(reading: &Reading, expect: &Outlook) -> bool {
    match (reading.outcome, *expect) {
        (Outcome::Glows(glows), Outlook::Glows(must)) => glows == must,
        (Outcome::Shows(Shown::OverLimit { .. }), Outlook::OverLimit) => true,
        (Outcome::Shows(Shown::Value { value, .. }), Outlook::Between { low, high }) => {
            let little = match reading.probe {
                Probe::Volts { .. } => 1.0,
                Probe::Amps { .. } => 0.05,
                Probe::Ohms { .. } | Probe::Tester { .. } => 0.2,
            };
            (low * 0.97 - little..=high * 1.03 + little).contains(&value)
        }
        _ => false,
    }
}
