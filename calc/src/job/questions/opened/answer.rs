//! Every answer for an opened box.

use serde::Serialize;

use super::{ReadingTaken, Taken, described, readings};
use crate::job::questions::answers::answered;
use crate::job::questions::wiring::AskProblem;
use crate::job::{Job, OpenedEntry};
use crate::wiring::open_box::description::DescriptionRefusal;
use crate::wiring::open_box::live_map::{LiveMap, MapRefusal, live_map};
use crate::wiring::open_box::neutral_load::{NeutralLoad, neutral_loads};
use crate::wiring::open_box::off_list::{OffList, off_list};
use crate::wiring::open_box::return_check::{ReturnCheck, return_check};
use crate::wiring::open_box::situation::Situation;

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

/// Every answer for boxes that are looked at together; what is measured in is everything on, every switch as drawn.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpenedAnswer {
    /// What was taken because nothing was entered.
    pub taken: Vec<Taken>,
    /// What must be off before each box is opened, in the order of the boxes.
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
    Ok(OpenedAnswer {
        off: description
            .boxes
            .iter()
            .filter_map(|in_box| off_list(description, &[], *in_box, &[]).ok())
            .collect(),
        live: live_map(description, &everything_on),
        returns: return_check(description, &everything_on, job.code_edition),
        neutrals: neutral_loads(description, &everything_on, &[], job.code_edition),
        readings: readings(entry, description),
        taken: found.taken,
    })
}
