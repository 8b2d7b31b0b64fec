//! One job on the shelf: save, load, restore, duplicate.

use calc::job::Job;
use calc::job::file::{self, JobRefusal};
use thiserror::Error;

use super::keys;
use super::shelf::{Shelf, ShelfRefusal};
use super::{bin, index};

/// What this tab knows to be on the shelf under a job's key: nothing, or the exact text that it last loaded or
/// saved. A save compares it with what is there now, so another tab's text is never overwritten unseen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Seen {
    text: Option<String>,
    /// True for a text that this tab did not read or write as a job: it may be unreadable.
    foreign: bool,
}

impl Seen {
    /// Of a job that is not on the shelf yet.
    pub fn nothing() -> Self {
        Self::default()
    }

    /// After a conflict was shown: the other text is known now. A save that follows takes its place, and the other
    /// text becomes the previous one, or is put aside if it can't be read.
    pub fn text(theirs: impl Into<String>) -> Self {
        Self {
            text: Some(theirs.into()),
            foreign: true,
        }
    }

    fn job_text(text: String) -> Self {
        Self {
            text: Some(text),
            foreign: false,
        }
    }
}

/// What a save did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Saved {
    /// False where the shelf had this text already and nothing was written.
    pub written: bool,
    /// False where there was no room to keep the text before.
    pub previous_kept: bool,
}

/// Why a job was not saved. The shelf still holds the text that it held.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum SaveRefusal {
    /// Another tab wrote this job since it was loaded here.
    #[error("another tab saved this job")]
    Conflict {
        /// The other tab's text.
        theirs: String,
    },
    /// Another tab deleted this job since it was loaded here. A save with [`Seen::nothing`] puts it back.
    #[error("another tab deleted this job")]
    Deleted,
    /// No room; save a file instead.
    #[error("storage is full")]
    Full,
    /// No storage; save a file instead.
    #[error("storage is blocked")]
    Blocked,
    /// The job would not open again as it is.
    #[error("the job would not open again: {0}")]
    WouldNotOpen(JobRefusal),
}

impl From<ShelfRefusal> for SaveRefusal {
    fn from(refusal: ShelfRefusal) -> Self {
        match refusal {
            ShelfRefusal::Full => Self::Full,
            ShelfRefusal::Blocked => Self::Blocked,
        }
    }
}

/// What is on the shelf under an id.
#[derive(Clone, Debug, PartialEq)]
pub enum Loaded {
    /// A job, and what to save it with.
    Job(Box<Job>, Seen),
    /// A text that can't be read: damaged, or of a newer version.
    Unreadable(Unreadable),
    /// Nothing.
    Missing,
}

/// A text that can't be read. It stays where it is; a copy is put aside before anything takes its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Unreadable {
    /// The text itself, to be downloaded.
    pub raw: String,
    /// Why it can't be read.
    pub refusal: JobRefusal,
    /// The key of the copy put aside; none where there was no room for one.
    pub kept_as: Option<String>,
    /// The job as it was before, where that can be read: [`restore`] brings it back.
    pub previous: Option<Box<Job>>,
}

/// Saves a job: writes the new text before the old is dropped, and keeps the old as the previous one.
///
/// Where there is no room for both, the text before the old gives way; where there is none even so, the shelf is left
/// as it was.
///
/// # Errors
/// [`SaveRefusal`]; the current text on the shelf is then what it was, and so is `seen`.
pub fn save(shelf: &dyn Shelf, job: &Job, seen: &mut Seen) -> Result<Saved, SaveRefusal> {
    match save_as_it_is(shelf, job, seen) {
        // Deleted jobs are kept only while there is room for the others.
        Err(SaveRefusal::Full) if bin::purge_all(shelf) => save_as_it_is(shelf, job, seen),
        outcome => outcome,
    }
}

fn save_as_it_is(shelf: &dyn Shelf, job: &Job, seen: &mut Seen) -> Result<Saved, SaveRefusal> {
    let text = file::write_compact(job);
    file::would_be_read(job, text.len()).map_err(SaveRefusal::WouldNotOpen)?;
    let here = shelf.get(&keys::job(&job.id))?;
    if here.as_deref() == Some(text.as_str()) {
        *seen = Seen::job_text(text);
        return Ok(Saved {
            written: false,
            previous_kept: true,
        });
    }
    match (&here, &seen.text) {
        (Some(here), Some(seen)) if here == seen => {}
        (Some(theirs), _) => {
            return Err(SaveRefusal::Conflict {
                theirs: theirs.clone(),
            });
        }
        (None, Some(_)) => return Err(SaveRefusal::Deleted),
        (None, None) => {}
    }
    let unreadable = here
        .as_deref()
        .filter(|here| seen.foreign && read_as(&job.id, here).is_err());
    let previous_kept = if let Some(here) = unreadable {
        put_aside(shelf, &job.id, here)?;
        shelf.set(&keys::job(&job.id), &text)?;
        true
    } else {
        replace(shelf, &job.id, here.as_deref(), &text)?
    };
    index::put(shelf, job, &text);
    *seen = Seen::job_text(text);
    Ok(Saved {
        written: true,
        previous_kept,
    })
}

/// Puts `text` in the place of `old`, and `old` in the place of the one before; tells whether `old` was kept.
fn replace(
    shelf: &dyn Shelf,
    id: &str,
    old: Option<&str>,
    text: &str,
) -> Result<bool, ShelfRefusal> {
    let (job, previous) = (keys::job(id), keys::previous(id));
    let Some(old) = old else {
        return shelf.set(&job, text).map(|()| true);
    };
    let before = shelf.get(&previous)?;
    let kept = match shelf.set(&previous, old) {
        Ok(()) => true,
        Err(ShelfRefusal::Full) => false,
        Err(refusal) => return Err(refusal),
    };
    if kept && shelf.set(&job, text).is_ok() {
        return Ok(true);
    }
    // No room for both: the one before gives way. A failing `set` leaves the old text, so it is never at risk.
    shelf.remove(&previous)?;
    if let Err(refusal) = shelf.set(&job, text) {
        if let Some(before) = before {
            shelf.set(&previous, &before)?; // it was there a moment ago, so there is room
        }
        return Err(refusal);
    }
    Ok(false)
}

/// Loads a job. A text that can't be read is copied aside at once.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn load(shelf: &dyn Shelf, id: &str) -> Result<Loaded, ShelfRefusal> {
    let Some(text) = shelf.get(&keys::job(id))? else {
        return Ok(Loaded::Missing);
    };
    let refusal = match read_as(id, &text) {
        Ok(job) => return Ok(Loaded::Job(Box::new(job), Seen::job_text(text))),
        Err(refusal) => refusal,
    };
    Ok(Loaded::Unreadable(Unreadable {
        kept_as: put_aside(shelf, id, &text).ok(),
        previous: previous(shelf, id)?.map(Box::new),
        raw: text,
        refusal,
    }))
}

/// Reads the text stored under `id`; a job with another id has no business there.
pub(super) fn read_as(id: &str, text: &str) -> Result<Job, JobRefusal> {
    let job = file::read(text)?;
    if job.id != id {
        return Err(JobRefusal::Damaged {
            at: "id".to_owned(),
            what: format!("expected {id}, found {}", job.id),
        });
    }
    Ok(job)
}

/// The job as it was before the last save, where that can be read.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn previous(shelf: &dyn Shelf, id: &str) -> Result<Option<Job>, ShelfRefusal> {
    let text = shelf.get(&keys::previous(id))?;
    Ok(text.and_then(|text| read_as(id, &text).ok()))
}

/// Copies a text aside under the job's first free number, unless it is there already. Returns the key.
pub(super) fn put_aside(shelf: &dyn Shelf, id: &str, text: &str) -> Result<String, ShelfRefusal> {
    let mut n = 1;
    loop {
        let key = keys::damaged(id, n);
        match shelf.get(&key)? {
            Some(other) if other == text => return Ok(key),
            Some(_) => n += 1,
            None => return shelf.set(&key, text).map(|()| key),
        }
    }
}

/// Puts the previous job in the place of a text that can't be read, which stays among those put aside.
/// Returns nothing where the current text can be read after all, or there is no previous one.
///
/// # Errors
/// [`ShelfRefusal`]; the shelf then holds what it held. Full: download the raw text and [`forget_aside`] it first.
pub fn restore(shelf: &dyn Shelf, id: &str) -> Result<Option<(Job, Seen)>, ShelfRefusal> {
    let Some(before) = shelf.get(&keys::previous(id))? else {
        return Ok(None);
    };
    let Ok(job) = read_as(id, &before) else {
        return Ok(None);
    };
    if let Some(text) = shelf.get(&keys::job(id))? {
        if read_as(id, &text).is_ok() {
            return Ok(None);
        }
        put_aside(shelf, id, &text)?;
    }
    shelf.set(&keys::job(id), &before)?;
    index::put(shelf, &job, &before);
    Ok(Some((job, Seen::job_text(before))))
}

/// A text put aside because it could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Its key.
    pub key: String,
    /// The job's id.
    pub id: String,
    /// The text, to be downloaded.
    pub raw: String,
}

/// Every text put aside.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn aside(shelf: &dyn Shelf) -> Result<Vec<Aside>, ShelfRefusal> {
    let mut found = Vec::new();
    for key in shelf.keys()? {
        let Some(id) = keys::damaged_id(&key).map(|(id, _)| id.to_owned()) else {
            continue;
        };
        if let Some(raw) = shelf.get(&key)? {
            found.push(Aside { key, id, raw });
        }
    }
    Ok(found)
}

/// Drops a text put aside, for good; any other key is left alone.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn forget_aside(shelf: &dyn Shelf, key: &str) -> Result<(), ShelfRefusal> {
    match keys::damaged_id(key) {
        Some(_) => shelf.remove(key),
        None => Ok(()),
    }
}

/// Saves a copy of a job under a new id and name, made at `now` (RFC 3339).
///
/// # Errors
/// As [`save`]; an id in use is a conflict.
pub fn duplicate(
    shelf: &dyn Shelf,
    job: &Job,
    new_id: &str,
    now: &str,
    name: &str,
) -> Result<(Job, Seen), SaveRefusal> {
    let copy = job.duplicate(new_id, now, name);
    let mut seen = Seen::nothing();
    save(shelf, &copy, &mut seen)?;
    Ok((copy, seen))
}
