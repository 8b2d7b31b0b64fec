//! A job as text: reading every version ever released, writing the newest.

use std::collections::BTreeSet;

use serde::Serialize;
use serde_json::Value;
use thiserror::Error;

use super::{FORMAT_NAME, FORMAT_VERSION, Job, Room};
use crate::saved::{self, Saved};

/// The most bytes that a job file may have: a survey of 10,000 spots takes less, indented too, and a browser keeps
/// about 5 million characters for all that a page stores.
pub const MOST_BYTES: usize = 5 * 1024 * 1024;

/// The most characters of a job's id: it becomes a part of a storage key and of an address.
pub const MOST_ID_CHARS: usize = 64;

/// The largest row id that is read. Ids are handed out one by one, so no job comes near it, and the counter
/// above it never runs out.
pub const LARGEST_ROW_ID: u32 = 1_000_000_000;

/// Why a text is not taken as a job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum JobRefusal {
    /// More bytes than [`MOST_BYTES`].
    #[error("{bytes} bytes, at most {most}")]
    TooLarge {
        /// Bytes given; while inflating, the bytes seen so far.
        bytes: usize,
        /// Bytes allowed.
        most: usize,
    },
    /// Not UTF-8 text.
    #[error("not UTF-8 text after {valid_bytes} bytes")]
    NotText {
        /// Bytes before the first that is not text.
        valid_bytes: usize,
    },
    /// Text, but not JSON; a file cut short is one of these.
    #[error("not JSON at line {line}, column {column}")]
    NotJson {
        /// Line of the fault, from 1.
        line: usize,
        /// Column of the fault, from 1; 0 at the start of a line.
        column: usize,
    },
    /// JSON, but it does not say that it is a job.
    #[error("not a job")]
    NotAJob,
    /// Made by a later program.
    #[error("version {given}, known up to {known}")]
    NewerVersion {
        /// The file's version.
        given: u64,
        /// The newest version known here.
        known: u32,
    },
    /// A job with a field missing or of the wrong kind.
    #[error("damaged at {at}: {what}")]
    Damaged {
        /// The place in the document, like `rooms[0].survey.spots[3].id`; `.` for the whole.
        at: String,
        /// What is wrong there, in the terms of the document format.
        what: String,
    },
}

/// Reads a job file's bytes.
///
/// # Errors
/// As [`read`], and [`JobRefusal::NotText`] for bytes that are not UTF-8.
pub fn read_bytes(bytes: &[u8]) -> Result<Job, JobRefusal> {
    refuse_large(bytes.len())?;
    match std::str::from_utf8(bytes) {
        Ok(text) => read(text),
        Err(fault) => Err(JobRefusal::NotText {
            valid_bytes: fault.valid_up_to(),
        }),
    }
}

/// Reads a job from its text, whatever version wrote it. A byte order mark in front is passed over.
///
/// Fields that this version does not know are kept for [`write`]. A counter of row ids that is behind the ids in
/// use is set after them, so that no id is given twice.
///
/// # Errors
/// - [`JobRefusal::TooLarge`] over [`MOST_BYTES`];
/// - [`JobRefusal::NotJson`] with line and column;
/// - [`JobRefusal::NotAJob`] where `format.name` is not ours;
/// - [`JobRefusal::NewerVersion`] above [`FORMAT_VERSION`];
/// - [`JobRefusal::Damaged`] where a field is missing or of the wrong kind, a row id is used twice in a list, or
///   the job's id can't be part of a storage key.
///
/// ```
/// use calc::job::{Job, Units, file};
/// let job = Job::new("k3", "Elm Street bath", "2026-03-02T08:00:00Z", Units::FeetInches);
/// assert_eq!(file::read(&file::write(&job)), Ok(job));
/// assert_eq!(file::read("{}"), Err(file::JobRefusal::NotAJob));
/// ```
pub fn read(text: &str) -> Result<Job, JobRefusal> {
    refuse_large(text.len())?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value: Value = serde_json::from_str(text).map_err(|fault| JobRefusal::NotJson {
        line: fault.line(),
        column: fault.column(),
    })?;
    let version = version_of(&value)?;
    let value = migrate(value, version, MIGRATIONS)?;
    let mut job = Job::read(value).map_err(|fault| damaged(fault.at(), &*fault.what))?;
    job.next_id = job.next_id.max(check(&job)? + 1);
    Ok(job)
}

/// Writes a job as text: indented JSON, `format` first.
pub fn write(job: &Job) -> String {
    saved::write_indented(job)
}

/// Writes a job as text without line breaks or indents, for storage and links, where room is short.
pub fn write_compact(job: &Job) -> String {
    saved::write(job)
}

/// Tells whether a job written as `bytes` bytes would be read again, before anything is overwritten with it.
///
/// # Errors
/// [`JobRefusal::TooLarge`] and [`JobRefusal::Damaged`], as [`read`] would answer.
pub fn would_be_read(job: &Job, bytes: usize) -> Result<(), JobRefusal> {
    refuse_large(bytes)?;
    check(job).map(|_| ())
}

/// True for an id that can be part of a storage key: 1 to [`MOST_ID_CHARS`] ASCII letters, digits, `-` and `_`.
pub fn is_job_id(id: &str) -> bool {
    let good = |c: u8| c.is_ascii_alphanumeric() || c == b'-' || c == b'_';
    (1..=MOST_ID_CHARS).contains(&id.len()) && id.bytes().all(good)
}

/// Brings a document from one version to the next. It may assume that the document is JSON of that version's
/// format name and nothing else; `format.version` is raised for it.
type Migration = fn(Value) -> Result<Value, JobRefusal>;

/// The step at index n brings version n + 1 to version n + 2.
const MIGRATIONS: &[Migration] = &[];

const _: () = assert!(
    MIGRATIONS.len() + 1 == FORMAT_VERSION as usize,
    "one step for each version but the last"
);

fn migrate(mut value: Value, from: usize, steps: &[Migration]) -> Result<Value, JobRefusal> {
    for (done, step) in steps.iter().enumerate().skip(from.saturating_sub(1)) {
        value = step(value)?;
        if let Some(version) = value.pointer_mut("/format/version") {
            *version = Value::from(done + 2);
        }
    }
    Ok(value)
}

fn version_of(value: &Value) -> Result<usize, JobRefusal> {
    if value.pointer("/format/name").and_then(Value::as_str) != Some(FORMAT_NAME) {
        return Err(JobRefusal::NotAJob);
    }
    let at = "format.version";
    match value.pointer("/format/version") {
        None => Err(damaged("format", "missing field `version`")),
        Some(version) => match version.as_u64() {
            None | Some(0) => Err(damaged(
                at,
                format!("expected a version from 1, found {}", saved::shown(version)),
            )),
            Some(given) if given > u64::from(FORMAT_VERSION) => Err(JobRefusal::NewerVersion {
                given,
                known: FORMAT_VERSION,
            }),
            Some(given) => Ok(given as usize),
        },
    }
}

fn refuse_large(bytes: usize) -> Result<(), JobRefusal> {
    if bytes > MOST_BYTES {
        return Err(JobRefusal::TooLarge {
            bytes,
            most: MOST_BYTES,
        });
    }
    Ok(())
}

fn damaged(at: impl Into<String>, what: impl Into<String>) -> JobRefusal {
    JobRefusal::Damaged {
        at: at.into(),
        what: what.into(),
    }
}

/// What the types can't say: an id fit for a key, row ids used once in their list. Returns the largest row id.
fn check(job: &Job) -> Result<u32, JobRefusal> {
    if !is_job_id(&job.id) {
        return Err(damaged(
            "id",
            "expected 1 to 64 letters, digits, `-` and `_`",
        ));
    }
    let mut largest = 0;
    let mut rows = |at: &dyn Fn(usize) -> String, ids: &mut dyn Iterator<Item = u32>| {
        let mut seen = BTreeSet::new();
        for (index, id) in ids.enumerate() {
            if id > LARGEST_ROW_ID {
                return Err(damaged(
                    at(index),
                    format!("expected at most {LARGEST_ROW_ID}, found {id}"),
                ));
            }
            if !seen.insert(id) {
                return Err(damaged(
                    at(index),
                    format!("id {id} is used twice in the list"),
                ));
            }
            largest = largest.max(id);
        }
        Ok(())
    };
    rows(
        &|i| format!("rooms[{i}].id"),
        &mut job.rooms.iter().map(|r| r.id),
    )?;
    // Openings are asked for by their id alone, so theirs are unique over all rooms.
    let place = |(n, room): (usize, &Room)| {
        (0..room.openings.len())
            .map(move |m| (n, m))
            .collect::<Vec<_>>()
    };
    let places: Vec<(usize, usize)> = job.rooms.iter().enumerate().flat_map(place).collect();
    let opening_at = |i: usize| {
        let (n, m) = places.get(i).copied().unwrap_or_default();
        format!("rooms[{n}].openings[{m}].id")
    };
    rows(
        &opening_at,
        &mut job.rooms.iter().flat_map(|r| &r.openings).map(|o| o.id),
    )?;
    for (n, room) in job.rooms.iter().enumerate() {
        let at = |list: &'static str| move |i: usize| format!("rooms[{n}].{list}[{i}].id");
        rows(
            &at("outline.walls"),
            &mut room.outline.walls.iter().map(|w| w.id),
        )?;
        rows(
            &at("survey.spots"),
            &mut room.survey.spots.iter().map(|s| s.id),
        )?;
        // A pour's conflict names height rules and openings by their ids alike.
        let rules = room.pour.height_rules.len();
        let rule_or_opening = |i: usize| match i.checked_sub(rules) {
            None => format!("rooms[{n}].pour.height_rules[{i}].id"),
            Some(m) => format!("rooms[{n}].openings[{m}].id"),
        };
        rows(
            &rule_or_opening,
            &mut (room.pour.height_rules.iter().map(|h| h.id))
                .chain(room.openings.iter().map(|o| o.id)),
        )?;
        rows(&at("layers"), &mut room.layers.iter().map(|l| l.id))?;
        for (m, opening) in room.openings.iter().enumerate() {
            rows(
                &|i| format!("rooms[{n}].openings[{m}].beyond_layers[{i}].id"),
                &mut opening.beyond_layers.iter().map(|l| l.id),
            )?;
        }
    }
    if job.next_id > LARGEST_ROW_ID + 1 {
        return Err(damaged(
            "next_id",
            format!(
                "expected at most {}, found {}",
                LARGEST_ROW_ID + 1,
                job.next_id
            ),
        ));
    }
    Ok(largest)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn renamed(mut value: Value) -> Result<Value, JobRefusal> {
        let title = value
            .get("title")
            .cloned()
            .ok_or_else(|| damaged(".", "missing field `title`"))?;
        value["name"] = title;
        Ok(value)
    }

    fn marked(mut value: Value) -> Result<Value, JobRefusal> {
        let name = value.get("name").cloned().unwrap_or_default();
        value["seen"] = json!([name, value.pointer("/format/version")]);
        Ok(value)
    }

    #[test]
    fn migrations_run_in_order_from_the_files_version() {
        let old = json!({"format": {"name": FORMAT_NAME, "version": 1}, "title": "Elm"});
        let steps: [Migration; 2] = [renamed, marked];
        let new = migrate(old.clone(), 1, &steps).unwrap();
        assert_eq!(new["format"]["version"], 3);
        assert_eq!(new["seen"], json!(["Elm", 2]));
        let new = migrate(
            json!({"format": {"name": FORMAT_NAME, "version": 2}, "name": "Oak"}),
            2,
            &steps,
        )
        .unwrap();
        assert_eq!(new["seen"], json!(["Oak", 2]));
        let newest = json!({"format": {"name": FORMAT_NAME, "version": 3}});
        assert_eq!(migrate(newest.clone(), 3, &steps), Ok(newest));
        assert!(matches!(
            migrate(json!({"format": {"version": 1}}), 1, &steps),
            Err(JobRefusal::Damaged { .. })
        ));
    }

    #[test]
    fn ids_that_could_mix_up_storage_keys_are_no_ids() {
        for good in ["a", "0-_Z", &"x".repeat(MOST_ID_CHARS)] {
            assert!(is_job_id(good), "{good}");
        }
        for bad in [
            "",
            "a.previous",
            "a b",
            "ä",
            "../x",
            &"x".repeat(MOST_ID_CHARS + 1),
        ] {
            assert!(!is_job_id(bad), "{bad}");
        }
    }
}
