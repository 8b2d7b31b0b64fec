//! Deleting a job, with undo until it is purged: by hand, or when the room is needed.

use thiserror::Error;

use super::index;
use super::jobs::read_as;
use super::keys;
use super::shelf::{Shelf, ShelfRefusal};

/// Why a deleted job was not brought back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum UndoRefusal {
    /// It was purged, or never deleted.
    #[error("not among the deleted jobs")]
    Gone,
    /// A job with the same id is on the shelf again.
    #[error("a job with this id is there again")]
    InUse,
    /// Storage did not answer.
    #[error(transparent)]
    Shelf(#[from] ShelfRefusal),
}

/// Deletes a job, readable or not, and keeps its text for [`undo`]. False where there was none.
/// A text kept from an earlier deletion of the same job gives way.
///
/// # Errors
/// [`ShelfRefusal`]; the job is then still there. Full: there is no room for undo, [`delete_for_good`] needs none.
pub fn delete(shelf: &dyn Shelf, id: &str) -> Result<bool, ShelfRefusal> {
    let (job, previous) = (keys::job(id), keys::previous(id));
    let Some(text) = shelf.get(&job)? else {
        return Ok(false);
    };
    let before = shelf.get(&previous)?;
    // The copy for undo often needs the room of the previous text, which deletion drops anyway. Where the current text
    // can't be read, the previous one is the better copy, and stays.
    let drop_previous = read_as(id, &text).is_ok();
    if drop_previous {
        shelf.remove(&previous)?;
    }
    if let Err(refusal) = shelf.set(&keys::deleted(id), &text) {
        if let (true, Some(before)) = (drop_previous, before) {
            shelf.set(&previous, &before)?;
        }
        return Err(refusal);
    }
    shelf.remove(&job)?;
    index::take(shelf, id);
    Ok(true)
}

/// Deletes a job at once, without undo.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn delete_for_good(shelf: &dyn Shelf, id: &str) -> Result<(), ShelfRefusal> {
    shelf.remove(&keys::job(id))?;
    index::take(shelf, id);
    purge(shelf, id)
}

/// Brings a deleted job back, exactly as it was.
///
/// # Errors
/// [`UndoRefusal`]; the deleted text stays where it is.
pub fn undo(shelf: &dyn Shelf, id: &str) -> Result<(), UndoRefusal> {
    let text = shelf.get(&keys::deleted(id))?.ok_or(UndoRefusal::Gone)?;
    match shelf.get(&keys::job(id))? {
        Some(here) if here != text => return Err(UndoRefusal::InUse),
        _ => shelf.set(&keys::job(id), &text)?,
    }
    if let Ok(job) = read_as(id, &text) {
        index::put(shelf, &job, &text);
    }
    shelf.remove(&keys::deleted(id))?;
    Ok(())
}

/// The ids of deleted jobs that can still be brought back.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn deleted(shelf: &dyn Shelf) -> Result<Vec<String>, ShelfRefusal> {
    let keys = shelf.keys()?;
    Ok(keys
        .iter()
        .filter_map(|key| keys::deleted_id(key))
        .map(str::to_owned)
        .collect())
}

/// Drops all deleted jobs for good; whether there were any.
pub fn purge_all(shelf: &dyn Shelf) -> bool {
    let mut purged = false;
    for id in deleted(shelf).unwrap_or_default() {
        purged |= purge(shelf, &id).is_ok();
    }
    purged
}

/// The name of a deleted job; empty where its text can't be read.
pub fn name_of(shelf: &dyn Shelf, id: &str) -> String {
    let text = shelf.get(&keys::deleted(id)).ok().flatten();
    text.and_then(|text| read_as(id, &text).ok())
        .map_or(String::new(), |job| job.name)
}

/// Drops a deleted job for good, with what was left of it. A job with this id on the shelf keeps its own texts.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn purge(shelf: &dyn Shelf, id: &str) -> Result<(), ShelfRefusal> {
    shelf.remove(&keys::deleted(id))?;
    if shelf.get(&keys::job(id))?.is_none() {
        shelf.remove(&keys::previous(id))?;
    }
    Ok(())
}
