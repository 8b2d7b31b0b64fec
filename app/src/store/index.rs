//! The list of jobs: an index that is checked against the jobs at each reading, and rebuilt where it is off.

use calc::job::Job;
use calc::job::file::JobRefusal;
use calc::order::Order;
use calc::saved;

use super::jobs::read_as;
use super::keys;
use super::shelf::{Shelf, ShelfRefusal};

/// A job as the list shows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// The job's id.
    pub id: String,
    /// Its name; blank where the text can't be read.
    pub name: String,
    /// Its place.
    pub place: String,
    /// When it was last changed, RFC 3339.
    pub changed: String,
    /// How many rooms it has.
    pub rooms: usize,
    /// Why its text can't be read, where it can't.
    pub trouble: Option<JobRefusal>,
}

/// What the index keeps of a readable job, with a print of the text that it was taken from.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Entry {
    id: String,
    name: String,
    place: String,
    changed: String,
    rooms: u32,
    print: String,
    /// What a later program keeps beside these.
    rest: calc::job::Rest,
}

calc::saved!(Entry {
    id: needed,
    name: needed,
    place: needed,
    changed: needed,
    rooms: needed,
    print: needed,
});

impl Entry {
    fn of(job: &Job, text: &str) -> Self {
        Self {
            id: job.id.clone(),
            name: job.name.clone(),
            place: job.place.clone(),
            changed: job.changed.clone(),
            rooms: u32::try_from(job.rooms.len()).unwrap_or(u32::MAX),
            print: print_of(text),
            rest: calc::job::Rest::new(),
        }
    }
}

impl From<Entry> for Listed {
    fn from(entry: Entry) -> Self {
        Self {
            id: entry.id,
            name: entry.name,
            place: entry.place,
            changed: entry.changed,
            rooms: entry.rooms as usize,
            trouble: None,
        }
    }
}

/// Length and FNV-1a hash of a text: tells whether an entry was taken from it. Nothing but the list rests on it.
fn print_of(text: &str) -> String {
    let step = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    let hash = text.bytes().fold(0xcbf2_9ce4_8422_2325, step);
    format!("{}-{hash:016x}", text.len())
}

fn stored(shelf: &dyn Shelf) -> Result<Vec<Entry>, ShelfRefusal> {
    let text = shelf.get(keys::INDEX)?;
    Ok(text
        .and_then(|text| saved::read(&text).ok())
        .unwrap_or_default())
}

/// Writes the index; where that fails it is removed, to be rebuilt at the next reading. Never worth a refusal.
fn store(shelf: &dyn Shelf, entries: &Vec<Entry>) {
    if shelf.set(keys::INDEX, &saved::write(entries)).is_err() {
        let _ = shelf.remove(keys::INDEX);
    }
}

/// Puts a job that was just saved as `text` into the index.
pub(super) fn put(shelf: &dyn Shelf, job: &Job, text: &str) {
    let mut entries = stored(shelf).unwrap_or_default();
    entries.retain(|entry| entry.id != job.id);
    entries.push(Entry::of(job, text));
    store(shelf, &entries);
}

/// Takes a job out of the index.
pub(super) fn take(shelf: &dyn Shelf, id: &str) {
    let mut entries = stored(shelf).unwrap_or_default();
    entries.retain(|entry| entry.id != id);
    store(shelf, &entries);
}

/// Every job on the shelf, the one changed last first; those that can't be read come with the reason.
///
/// An entry of the index counts only if its job's text is still the one that it was taken from.
///
/// # Errors
/// [`ShelfRefusal::Blocked`].
pub fn list(shelf: &dyn Shelf) -> Result<Vec<Listed>, ShelfRefusal> {
    let known = stored(shelf)?;
    let (mut entries, mut listed) = (Vec::new(), Vec::new());
    for key in shelf.keys()? {
        let Some(id) = keys::job_id(&key) else {
            continue;
        };
        let Some(text) = shelf.get(&key)? else {
            continue;
        };
        let print = print_of(&text);
        let entry = known
            .iter()
            .find(|entry| entry.id == id && entry.print == print);
        match entry
            .cloned()
            .map_or_else(|| read_as(id, &text).map(|job| Entry::of(&job, &text)), Ok)
        {
            Ok(entry) => {
                entries.push(entry.clone());
                listed.push(Listed::from(entry));
            }
            Err(refusal) => listed.push(Listed {
                id: id.to_owned(),
                name: String::new(),
                place: String::new(),
                changed: String::new(),
                rooms: 0,
                trouble: Some(refusal),
            }),
        }
    }
    let same = entries.len() == known.len() && entries.iter().all(|entry| known.contains(entry));
    if !same {
        store(shelf, &entries);
    }
    listed.order_by(|a, b| b.changed.cmp(&a.changed).then_with(|| a.id.cmp(&b.id)));
    Ok(listed)
}
