//! The job that is open: the one signal that holds it, and its saving at every change.

use std::cell::RefCell;
use std::rc::Rc;

use crate::reactive::memo;
use calc::job::{Covered, Job, Room, Units};
use calc::saved;
use leptos::prelude::*;
use send_wrapper::SendWrapper;

use crate::desk::Desk;
use crate::store::{self, SaveRefusal, Seen, fresh, jobs, keys};

/// How the open job stands with the storage.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum SaveState {
    /// Everything is on the shelf.
    #[default]
    Saved,
    /// The last change could not be kept; why, and what was on the shelf where that matters.
    Refused(SaveRefusal),
}

/// The way back for what was taken out.
pub type WayBack = Box<dyn FnOnce(&mut Job)>;

/// What was taken out of the job last.
#[derive(Clone)]
pub struct TakenOut {
    /// What it was, in words.
    pub said: String,
    back: SendWrapper<Rc<RefCell<Option<WayBack>>>>,
    /// The way back is gone with the next change: it would take that change away too.
    until_changed: bool,
}

/// The open job, by context on a job's pages.
#[derive(Clone, Copy)]
pub struct OpenJob {
    /// The job as it is on screen.
    pub job: RwSignal<Job>,
    /// Whether it is saved.
    pub state: RwSignal<SaveState>,
    /// What was taken out last on the page shown; it can be put back.
    pub taken_out: RwSignal<Option<TakenOut>>,
    desk: Desk,
    seen: StoredValue<Seen>,
    /// The room shown last.
    shown: StoredValue<u32>,
    /// It is no job on the shelf, but the room of the quick sums.
    loose: bool,
}

impl OpenJob {
    /// A job just loaded.
    pub fn new(desk: Desk, job: Job, seen: Seen) -> Self {
        Self {
            job: RwSignal::new(job),
            state: RwSignal::new(SaveState::Saved),
            taken_out: RwSignal::new(None),
            desk,
            seen: StoredValue::new(seen),
            shown: StoredValue::new(0),
            loose: false,
        }
    }

    /// The room of the quick sums of closing up: one for all of them, kept on the device at every key. A text that can't be
    /// read gives way to a new room.
    pub fn loose(desk: Desk) -> Self {
        let kept = desk.shelf().get(keys::SUM_ROOM).ok().flatten();
        let job: Option<Job> = kept.and_then(|text| saved::read(&text).ok());
        let job = job.filter(|job| !job.rooms.is_empty()).unwrap_or_else(|| {
            let mut job = Job::new("sums", "", fresh::now(), Units::default());
            if let Some(room) = job.rooms.first_mut() {
                room.board.on = Covered::Both;
                room.paint.walls.used = true;
                (room.trim.base, room.trim.casing) = (true, true);
            }
            job
        });
        Self {
            loose: true,
            ..Self::new(desk, job, Seen::nothing())
        }
    }

    /// Whether it is the room of the quick sums.
    pub fn is_loose(self) -> bool {
        self.loose
    }

    /// A job that could not be saved before, as it was on screen then.
    pub fn unsaved(desk: Desk, job: Job, seen: Seen, refusal: SaveRefusal) -> Self {
        let this = Self::new(desk, job, seen);
        this.state.set(SaveState::Refused(refusal));
        this
    }

    /// Changes the job and saves it at once.
    pub fn change(self, change: impl FnOnce(&mut Job)) {
        let offered = self
            .taken_out
            .read_untracked()
            .as_ref()
            .is_some_and(|taken| taken.until_changed);
        if offered {
            self.taken_out.set(None);
        }
        self.job.update(|job| {
            change(job);
            job.changed = fresh::now();
        });
        self.save();
    }

    /// Takes something out of the job, and offers the way back; `said` names what is gone.
    ///
    /// `out` gives the way back, or none where there was nothing to take out. The way back puts in again what was taken
    /// out and leaves alone what was changed since.
    pub fn take_out(self, said: String, out: impl FnOnce(&mut Job) -> Option<WayBack>) {
        let mut back = None;
        self.change(|job| back = out(job));
        self.taken_out.set(back.map(|back| TakenOut {
            said,
            back: SendWrapper::new(Rc::new(RefCell::new(Some(back)))),
            until_changed: false,
        }));
    }

    /// The same for what is woven into other entries: it is offered back, with them, until something else changes.
    pub fn take_out_woven(self, said: String, out: impl FnOnce(&mut Job) -> Option<WayBack>) {
        self.take_out(said, out);
        self.taken_out.update(|taken| {
            if let Some(taken) = taken {
                taken.until_changed = true;
            }
        });
    }

    /// Puts back what was taken out last.
    pub fn put_back(self) {
        let taken = self.taken_out.get_untracked();
        self.taken_out.set(None);
        if let Some(back) = taken.and_then(|taken| taken.back.borrow_mut().take()) {
            self.change(back);
        }
    }

    /// Saves the job as it is on screen.
    pub fn save(self) {
        let shelf = self.desk.shelf();
        if self.loose {
            let text = self.job.with_untracked(saved::write);
            return match shelf.set(keys::SUM_ROOM, &text) {
                Ok(()) => self.stand(SaveState::Saved),
                Err(refusal) => self.stand(SaveState::Refused(refusal.into())),
            };
        }
        let mut seen = self.seen.get_value();
        let outcome = self
            .job
            .with_untracked(|job| jobs::save(&*shelf, job, &mut seen));
        self.seen.set_value(seen);
        match outcome {
            Ok(_) => {
                self.desk.release(&self.id());
                self.stand(SaveState::Saved);
            }
            Err(refusal) => self.hold(refusal),
        }
    }

    /// What is on screen is not on the shelf: the desk holds it, whatever page comes next.
    fn hold(self, refusal: SaveRefusal) {
        self.desk.hold(
            self.job.get_untracked(),
            self.seen.get_value(),
            refusal.clone(),
        );
        self.stand(SaveState::Refused(refusal));
    }

    fn stand(self, state: SaveState) {
        if *self.state.read_untracked() != state {
            self.state.set(state);
        }
    }

    /// After a conflict: what is on screen takes the place of the other text, which stays as the previous one.
    pub fn keep_mine(self) {
        if let SaveState::Refused(refusal) = self.state.get_untracked() {
            match refusal {
                SaveRefusal::Conflict { theirs } => self.seen.set_value(Seen::text(theirs)),
                SaveRefusal::Deleted => self.seen.set_value(Seen::nothing()),
                _ => {}
            }
        }
        self.save();
    }

    /// Takes what another tab saved in the place of what is on screen. Where that tab deleted the job, or left a text
    /// that can't be read, what is on screen stays and is held.
    pub fn take_theirs(self) {
        let id = self.id();
        match jobs::load(&*self.desk.shelf(), &id) {
            Ok(store::Loaded::Job(job, seen)) => {
                self.seen.set_value(seen);
                self.desk.release(&id);
                self.job.set(*job);
                self.stand(SaveState::Saved);
            }
            Ok(store::Loaded::Missing) => self.hold(SaveRefusal::Deleted),
            Ok(store::Loaded::Unreadable(text)) => {
                self.hold(SaveRefusal::Conflict { theirs: text.raw });
            }
            Err(refusal) => self.hold(refusal.into()),
        }
    }

    /// Another tab wrote this job's key: takes it over where nothing is unsaved here.
    pub fn written_elsewhere(self) {
        if self.state.get_untracked() == SaveState::Saved {
            self.take_theirs();
        } else {
            self.save();
        }
    }

    /// The units in force.
    pub fn units(self) -> Memo<Units> {
        memo(move || self.job.with(|job| job.units))
    }

    /// The job's id; it never changes while the job is open.
    pub fn id(self) -> String {
        self.job.with_untracked(|job| job.id.clone())
    }

    /// Notes the room that is shown.
    pub fn show_room(self, id: u32) {
        self.shown.set_value(id);
    }

    /// The room shown last; the first where none was, or where it is gone.
    pub fn shown_room(self) -> OpenRoom {
        let shown = self.shown.get_value();
        let id = self.job.with_untracked(|job| {
            let first = job.rooms.first().map_or(0, |room| room.id);
            job.room(shown).map_or(first, |room| room.id)
        });
        self.room(id)
    }

    /// A part of the job that follows it.
    pub fn part<T>(self, part: impl Fn(&Job) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        memo(move || self.job.with(&part))
    }

    /// One room of it.
    pub fn room(self, id: u32) -> OpenRoom {
        OpenRoom { open: self, id }
    }
}

/// One room of the open job.
#[derive(Clone, Copy)]
pub struct OpenRoom {
    /// The job.
    pub open: OpenJob,
    /// The room's id.
    pub id: u32,
}

impl OpenRoom {
    /// A key of this room's own, for what is kept outside the document.
    pub fn key(self, name: &str) -> String {
        format!("{}.{}.{name}", self.open.id(), self.id)
    }

    /// Changes the room and saves the job at once; nothing where the room is gone.
    pub fn change(self, change: impl FnOnce(&mut Room)) {
        self.open.change(|job| {
            if let Some(room) = job.room_mut(self.id) {
                change(room);
            }
        });
    }

    /// Changes the room with a fresh row id at hand.
    pub fn change_with_id(self, change: impl FnOnce(&mut Room, u32)) {
        self.open.change(|job| {
            let id = job.fresh_id();
            if let Some(room) = job.room_mut(self.id) {
                change(room, id);
            }
        });
    }

    /// Takes a row out of one of the room's lists, and offers the way back to its place.
    pub fn take_out_row<T: 'static>(
        self,
        said: String,
        rows: impl Fn(&mut Room) -> Option<&mut Vec<T>> + 'static,
        is: impl Fn(&T) -> bool,
    ) {
        self.open.take_out(said, move |job| {
            let list = rows(job.room_mut(self.id)?)?;
            let at = list.iter().position(is)?;
            let row = list.remove(at);
            Some(Box::new(move |job: &mut Job| {
                if let Some(list) = job.room_mut(self.id).and_then(rows) {
                    list.insert(at.min(list.len()), row);
                }
            }))
        });
    }

    /// Changes a part of the room, and offers it back as it was.
    pub fn replace<T: Clone + 'static>(
        self,
        said: String,
        part: fn(&mut Room) -> &mut T,
        change: impl FnOnce(&mut Room),
    ) {
        self.open.take_out(said, move |job| {
            let room = job.room_mut(self.id)?;
            let before = part(room).clone();
            change(room);
            Some(Box::new(move |job: &mut Job| {
                if let Some(room) = job.room_mut(self.id) {
                    *part(room) = before;
                }
            }))
        });
    }

    /// A part of the room that follows it; the part's default where the room is gone.
    pub fn part<T>(self, part: impl Fn(&Room) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: Default + PartialEq + Send + Sync + 'static,
    {
        memo(move || {
            self.open
                .job
                .with(|job| job.room(self.id).map(&part).unwrap_or_default())
        })
    }
}
