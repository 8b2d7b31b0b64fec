//! What the whole app shares: the shelf that jobs stand on, and news of what other tabs write.

use std::collections::BTreeMap;
use std::sync::Arc;

use calc::job::Job;
use leptos::prelude::*;

use crate::store::tabs::{Change, Listener};
use crate::store::{SaveRefusal, Seen, Shelf, local};

/// The desk; one for the whole app, by context.
#[derive(Clone, Copy)]
pub struct Desk {
    shelf: StoredValue<Arc<dyn Shelf>>,
    /// Jobs whose last change could not be saved, as they are on screen: another page must not lose them.
    held: StoredValue<BTreeMap<String, (Job, Seen, SaveRefusal)>>,
    /// Storage is blocked: jobs live in memory until the page closes.
    pub blocked: bool,
    /// Counts up when another tab changes the shelf.
    pub turn: RwSignal<u32>,
    /// The id of the job that another tab wrote or deleted last, with a count so that the same id is news again.
    pub written: RwSignal<(u32, String)>,
}

impl Desk {
    /// Opens the browser's storage, or memory where it is blocked, and listens to other tabs.
    pub fn open() -> Self {
        let (shelf, refused) = local::open();
        let this = Self {
            shelf: StoredValue::new(shelf),
            held: StoredValue::new(BTreeMap::new()),
            blocked: refused.is_err(),
            turn: RwSignal::new(0),
            written: RwSignal::new((0, String::new())),
        };
        let listener = Listener::new(move |change| {
            this.turn.update(|n| *n += 1);
            if let Change::Job(id, _) | Change::JobGone(id) = change {
                this.written.update(|(n, known)| {
                    *n += 1;
                    *known = id;
                });
            }
        });
        // Listens as long as the app runs.
        StoredValue::new_local(listener);
        this
    }

    /// Holds a job that could not be saved.
    pub fn hold(self, job: Job, seen: Seen, refusal: SaveRefusal) {
        self.held.update_value(|held| {
            held.insert(job.id.clone(), (job, seen, refusal));
        });
    }

    /// A job is saved: there is nothing to hold.
    pub fn release(self, id: &str) {
        self.held.update_value(|held| {
            held.remove(id);
        });
    }

    /// A job that is held.
    pub fn held(self, id: &str) -> Option<(Job, Seen, SaveRefusal)> {
        self.held.with_value(|held| held.get(id).cloned())
    }

    /// The shelf.
    pub fn shelf(self) -> Arc<dyn Shelf> {
        self.shelf.get_value()
    }
}
