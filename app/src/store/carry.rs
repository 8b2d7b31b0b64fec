//! A job file coming in or going out.

use calc::job::Job;
use calc::job::file::{self, JobRefusal};

use super::jobs::{self, SaveRefusal, Saved, Seen};
use super::keys;
use super::shelf::{Shelf, ShelfRefusal};

/// A job read from outside, and what the shelf has under its id.
#[derive(Clone, Debug, PartialEq)]
pub struct Incoming {
    /// The job.
    pub job: Job,
    /// What is on the shelf.
    pub here: Here,
}

/// What the shelf has under an incoming job's id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Here {
    /// Nothing: [`Keep::AsItIs`].
    Nothing,
    /// The same job, down to the last field: nothing to do.
    TheSame,
    /// Another state of the job, or a text that can't be read: let the user choose.
    Another,
}

/// How to keep an incoming job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keep<'a> {
    /// Under its own id, which is free.
    AsItIs,
    /// As a copy beside the one that is here.
    Both {
        /// A free id.
        new_id: &'a str,
        /// The time, RFC 3339.
        now: &'a str,
        /// The copy's name.
        name: &'a str,
    },
    /// In the place of the one that is here, which becomes the previous one, or is put aside if it can't be read.
    Replace,
}

/// Reads a job file's bytes.
///
/// # Errors
/// [`JobRefusal`], as [`file::read_bytes`].
pub fn read(bytes: &[u8]) -> Result<Job, JobRefusal> {
    file::read_bytes(bytes)
}

/// Looks what the shelf has under an incoming job's id; writes nothing.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn meet(shelf: &dyn Shelf, job: Job) -> Result<Incoming, ShelfRefusal> {
    let here = match shelf.get(&keys::job(&job.id))? {
        None => Here::Nothing,
        Some(text) => match jobs::read_as(&job.id, &text) {
            Ok(known) if known == job => Here::TheSame,
            _ => Here::Another,
        },
    };
    Ok(Incoming { job, here })
}

/// Keeps an incoming job on the shelf.
///
/// # Errors
/// As [`jobs::save`]: an id that is in use after all is a conflict.
pub fn keep(shelf: &dyn Shelf, job: Job, how: Keep<'_>) -> Result<(Job, Seen, Saved), SaveRefusal> {
    let (job, mut seen) = match how {
        Keep::AsItIs => (job, Seen::nothing()),
        Keep::Both { new_id, now, name } => (job.duplicate(new_id, now, name), Seen::nothing()),
        Keep::Replace => {
            let here = shelf.get(&keys::job(&job.id))?;
            (job, here.map_or_else(Seen::nothing, Seen::text))
        }
    };
    let saved = jobs::save(shelf, &job, &mut seen)?;
    Ok((job, seen, saved))
}

/// A job as a file: its name and its text.
pub fn export(job: &Job) -> (String, String) {
    (file_name(&job.name, &job.changed, "json"), file::write(job))
}

/// A file name for a text that can't be read, to be downloaded as it is.
pub fn raw_file_name(id: &str) -> String {
    file_name(id, "", "txt")
}

/// Letters and digits of the name, the rest as single hyphens, then the day: fit for every file system.
fn file_name(name: &str, changed: &str, extension: &str) -> String {
    const MOST_CHARS: usize = 60;
    let mut stem = String::new();
    for c in name.chars().take(MOST_CHARS) {
        if c.is_alphanumeric() {
            stem.push(c);
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem = stem.trim_end_matches('-');
    let day: String = changed
        .chars()
        .take(10)
        .filter(|c| c.is_ascii_digit() || *c == '-')
        .collect();
    let parts = [stem, day.as_str(), "roomwright"];
    let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    format!("{}.{extension}", parts.join("-"))
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn file_names_are_plain() {
        let day = "2026-03-05T16:30:00Z";
        assert_eq!(
            file_name("Mill Lane, upstairs / bath", day, "json"),
            "Mill-Lane-upstairs-bath-2026-03-05-roomwright.json"
        );
        assert_eq!(
            file_name("..\\../con\u{0}<>", day, "json"),
            "con-2026-03-05-roomwright.json"
        );
        assert_eq!(
            file_name("Baño nº 2", "", "txt"),
            "Baño-nº-2-roomwright.txt"
        );
        assert_eq!(file_name(" / ", "soon", "json"), "roomwright.json");
        assert!(file_name(&"x".repeat(500), day, "json").len() < 100);
    }
}
