//! Every answer for an opened box.

use serde::Serialize;

use super::{ReadingTaken, Taken, described, readings};
use crate::job::questions::answers::answered;
use crate::job::questions::wiring::AskProblem;
use crate::job::{Job, OpenedEntry};
use crate::wiring::open_box::description::DescriptionRefusal;
use crate::wiring::open_box::diagnosis::{Diagnosis, diagnose};
use crate::wiring::open_box::live_map::{LiveMap, MapRefusal, live_map};
use crate::wiring::open_box::network::Network;
use crate::wiring::open_box::neutral_load::{NeutralLoad, neutral_loads};
use crate::wiring::open_box::next_reading::{NextReading, next_reading};
use crate::wiring::open_box::off_list::{OffList, off_list};
use crate::wiring::open_box::put_right::{Remedy, put_right};
use crate::wiring::open_box::reading::Reading;
use crate::wiring::open_box::return_check::{ReturnCheck, return_check};
use crate::wiring::open_box::situation::Situation;
use crate::wiring::open_box::unforeseen::{Unforeseen, unforeseen};

/// Opened boxes and their answers.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpenedAnswered {
    /// The row.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// The answers.
    #[serde(serialize_with = "answered")]
    pub answer: Result<OpenedAnswer, AskProblem<Vec<DescriptionRefusal>>>,
}

/// What to measure next in a box.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NextIn {
    /// The box.
    pub in_box: u32,
    /// The reading; nothing where none that may be taken there narrows the answers.
    pub reading: Option<NextReading>,
}

/// Every answer for boxes that are looked at together; what is measured in is everything on, every switch as drawn.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpenedAnswer {
    /// What was taken because nothing was entered.
    pub taken: Vec<Taken>,
    /// What must be off before each box is opened, in the order of the boxes; the first explanation counted in.
    pub off: Vec<OffList>,
    /// What stands behind each contact.
    #[serde(serialize_with = "answered")]
    pub live: Result<LiveMap, MapRefusal>,
    /// Whether each current comes back where it goes out.
    #[serde(serialize_with = "answered")]
    pub returns: Result<ReturnCheck, MapRefusal>,
    /// What each neutral carries.
    #[serde(serialize_with = "answered")]
    pub neutrals: Result<Vec<NeutralLoad>, MapRefusal>,
    /// The readings as they are understood.
    pub readings: Vec<ReadingTaken>,
    /// The readings that can be used and show more than the description has, by their place among those.
    pub unforeseen: Vec<Unforeseen>,
    /// What explains the readings that can be used and were not taken to prove a repair; nothing where there is none.
    pub diagnosis: Option<Diagnosis>,
    /// What to measure next in each box, in the order of the boxes.
    pub next: Vec<NextIn>,
    /// What it takes to put the first explanation right, where something is wrong.
    pub remedy: Option<Remedy>,
}

/// Every answer for an entry.
///
/// # Errors
/// As [`described`].
pub fn answer(
    job: &Job,
    entry: &OpenedEntry,
) -> Result<OpenedAnswer, AskProblem<Vec<DescriptionRefusal>>> {
    let found = described(job, entry)?;
    let description = &found.description;
    let everything_on = Situation::default();
    let taken = readings(entry, description);
    let usable: Vec<Reading> = taken
        .iter()
        .filter(|of| !of.proves)
        .filter_map(|of| of.reading.as_ref().ok().cloned())
        .collect();
    let diagnosis = if usable.is_empty() {
        None
    } else {
        diagnose(description, &usable).ok()
    };
    let mut next = Vec::new();
    for &in_box in &description.boxes {
        if let Some(found) = &diagnosis {
            next.push(NextIn {
                in_box,
                reading: next_reading(description, &usable, found, in_box),
            });
        }
    }
    let first = diagnosis
        .as_ref()
        .and_then(|found| found.answers.first()?.members.first());
    let remedy = first
        .filter(|member| !member.is_nothing())
        .and_then(|member| put_right(description, member, &usable, job.code_edition).ok());
    let edits = first.map(|member| member.edits()).unwrap_or_default();
    let explained: Vec<Network> = Network::of(description)
        .ok()
        .filter(|_| !edits.is_empty())
        .map(|network| network.edited(&edits))
        .into_iter()
        .collect();
    Ok(OpenedAnswer {
        off: description
            .boxes
            .iter()
            .filter_map(|in_box| off_list(description, &explained, *in_box, &[]).ok())
            .collect(),
        live: live_map(description, &everything_on),
        returns: return_check(description, &everything_on, job.code_edition),
        neutrals: neutral_loads(description, &everything_on, &[], job.code_edition),
        readings: taken,
        unforeseen: unforeseen(description, &usable).unwrap_or_default(),
        diagnosis,
        next,
        remedy,
        taken: found.taken,
    })
}
