//! The quick sums: the list of them, what they keep, and keeping one into a job.

use crate::markup::view;
use calc::job::sums::Sums;
use calc::job::{Job, Room, Units};
use calc::saved;
use leptos::prelude::*;

use super::jobs::shown_name;
use crate::desk::Desk;
use crate::entry::{Choice, ChoiceOption, Pick};
use crate::house::House;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, memo, say};
use crate::router::Place;
use crate::shell::{PageHeading, stage_word};
use crate::store::{self, Seen, Shelf, fresh, index, jobs, keys};
use crate::words::{closing, common, jobs as job_words, notices, quote, sums as words, wiring};

/// What was typed into the sums, kept on the device at every key.
#[derive(Clone, Copy)]
pub struct OpenSums {
    /// The entries.
    pub sums: RwSignal<Sums>,
    desk: Desk,
    trouble: RwSignal<Option<&'static str>>,
    /// Where the entries go instead of the shelf.
    row: Option<JobRow>,
}

/// A row of the open job that is entered in the form of a sum.
#[derive(Clone, Copy)]
pub struct JobRow {
    /// The job.
    pub open: OpenJob,
    /// The row's id.
    pub id: u32,
    /// Puts the row's entries among those of the sums.
    pub take: fn(&Job, u32, &mut Sums),
    /// Puts the sums' entries into the row.
    pub put: fn(&mut Job, u32, Sums),
}

impl OpenSums {
    /// Reads what is kept. A text that can't be read is put aside, never thrown away.
    pub fn load() -> Self {
        let desk = expect_context::<Desk>();
        let (sums, trouble) = match read(&*desk.shelf()) {
            Kept::Sums(sums) => (*sums, None),
            Kept::Nothing => (Sums::default(), None),
            Kept::Damaged => (Sums::default(), Some(words::damaged())),
        };
        Self {
            sums: RwSignal::new(sums),
            desk,
            trouble: RwSignal::new(trouble),
            row: None,
        }
    }

    /// Entries that are a row of the open job: the same form enters it, and each change goes into the job at once.
    pub fn of_row(row: JobRow) -> Self {
        let house = House::here();
        let read = memo(move || {
            house.wiring.with(|job| {
                let mut sums = Sums {
                    units: job.units,
                    code_edition: job.code_edition,
                    // Rows get ids that the job has not given.
                    last_id: row
                        .open
                        .job
                        .with_untracked(|job| job.next_id.saturating_sub(1)),
                    ..Sums::default()
                };
                (row.take)(job, row.id, &mut sums);
                sums
            })
        });
        let sums = RwSignal::new(read.get_untracked());
        // What another tab wrote, or another part of this page, shows here.
        Effect::new(move |_| {
            let read = read.get();
            if *sums.read_untracked() != read {
                sums.set(read);
            }
        });
        Self {
            sums,
            desk: expect_context(),
            trouble: RwSignal::new(None),
            row: Some(row),
        }
    }

    /// Changes the entries and keeps them at once.
    pub fn change(self, change: impl FnOnce(&mut Sums)) {
        if self.row.is_none() {
            // What another tab typed since stays: the change goes on top of it.
            if let Kept::Sums(here) = read(&*self.desk.shelf())
                && *self.sums.read_untracked() != *here
            {
                self.sums.set(*here);
            }
        }
        self.sums.update(change);
        if let Some(row) = self.row {
            let sums = self.sums.get_untracked();
            row.open.change(|job| {
                job.next_id = job.next_id.max(sums.last_id.saturating_add(1));
                (row.put)(job, row.id, sums);
            });
            return;
        }
        let text = self.sums.with_untracked(saved::write);
        let kept = self.desk.shelf().set(keys::SUMS, &text).is_ok();
        let trouble = (!kept).then(words::not_kept);
        if self.trouble.get_untracked() != trouble {
            self.trouble.set(trouble);
        }
    }

    /// A part of the entries that follows them.
    pub fn part<T>(self, part: impl Fn(&Sums) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        memo(move || self.sums.with(&part))
    }

    /// The units in force.
    pub fn units(self) -> Memo<Units> {
        self.part(|sums| sums.units)
    }
}

/// What the shelf has of the sums.
#[derive(Debug, PartialEq)]
enum Kept {
    Nothing,
    Sums(Box<Sums>),
    Damaged,
}

fn read(shelf: &dyn Shelf) -> Kept {
    let Ok(Some(text)) = shelf.get(keys::SUMS) else {
        return Kept::Nothing;
    };
    match saved::read(&text) {
        Ok(sums) => Kept::Sums(Box::new(sums)),
        Err(_) => {
            // Without room for a copy the text stays until the next key is pressed; it is only entries of sums.
            // The first damaged text is the one with the user's entries; a later one takes nothing from it.
            let aside = format!("{}.damaged", keys::SUMS);
            if matches!(shelf.get(&aside), Ok(None)) {
                let _ = shelf.set(&aside, &text);
            }
            Kept::Damaged
        }
    }
}

/// A line of its own at the end of a job's notes.
pub fn add_note(job: &mut Job, line: &str) {
    if !job.notes.trim().is_empty() {
        job.notes.push('\n');
    }
    job.notes.push_str(line);
}

/// The list of sums.
#[component]
pub fn SumsPage() -> impl IntoView {
    let sum = |path: &str, title: &'static str, line: &'static str| {
        view! {
            <li>
                <a class="go" href=path.to_owned()>
                    <strong>{title}</strong>
                    <span class="quiet">{line}</span>
                </a>
            </li>
        }
    };
    let closing_sums = Stage::CLOSING
        .into_iter()
        .map(|stage| {
            let line = match stage {
                Stage::Tile => closing::tile_line(),
                Stage::Board => closing::board_line(),
                Stage::Paint => closing::paint_line(),
                Stage::Trim => closing::trim_line(),
                _ => closing::air_line(),
            };
            sum(&paths::sum_closing(stage), stage_word(stage), line)
        })
        .collect_view();
    view! {
        <PageHeading text=Signal::stored(words::title().to_owned()) />
        <p>{words::title_hint()}</p>
        <ul class="list">
            {sum(paths::SUM_POUR, words::pour_title(), words::pour_line())}
            {sum(paths::SUM_RAMP, words::ramp_title(), words::ramp_line())}
            {sum(paths::SUM_QUOTE, quote::title(), quote::sum_line())}
        </ul>
        <h2>{closing::sums_heading()}</h2>
        <ul class="list">
            {closing_sums}
            {sum(paths::SUM_COMPOUND, closing::compound::title(), closing::compound::sum_line())}
        </ul>
        <h2>{wiring::heading()}</h2>
        <ul class="list">
            {sum(paths::SUM_BOX, wiring::fill::title(), wiring::fill::line())}
            {sum(paths::SUM_AMPACITY, wiring::ampacity::title(), wiring::ampacity::line())}
            {sum(paths::SUM_DROP, wiring::drop::title(), wiring::drop::line())}
            {sum(paths::SUM_MEASURED, wiring::drop::measured_title(), wiring::drop::measured_line())}
            {sum(paths::SUM_CABLE, wiring::cable::title(), wiring::cable::line())}
        </ul>
        <a class="button" href=paths::JOBS>{common::to_jobs()}</a>
    }
}

/// The units of the sums, what could not be kept, and the way back to the list.
#[component]
pub fn SumFoot(
    /// The sums.
    open: OpenSums,
) -> impl IntoView {
    let units = open.units();
    view! {
        <div role="status">
            <When when=move || open.trouble.get().is_some()>
                <p class="notice look">{say(move || open.trouble.get().map(str::to_owned))}</p>
            </When>
        </div>
        <Choice
            id="sum-units".to_owned()
            label=Signal::stored(job_words::units_label().to_owned())
            options=Signal::stored(
                vec![
                    ChoiceOption::new("feet_inches", common::feet_inches()),
                    ChoiceOption::new("metric", common::metric()),
                ],
            )
            value=derived(move || {
                if units.get() == Units::Metric { "metric" } else { "feet_inches" }.to_owned()
            })
            on_pick=Callback::new(move |code: String| {
                open.change(|sums| sums.units = if code == "metric" { Units::Metric } else { Units::FeetInches });
            })
        />
        <a class="button" href=paths::SUMS>{words::all()}</a>
    }
}

/// The jobs that a sum can be kept into, a new one first; `words` names one that is here.
pub fn job_options(desk: Desk, words_of: fn(&str) -> String) -> Vec<ChoiceOption> {
    desk.turn.track();
    let mut options = vec![ChoiceOption::new("", words::keep_new())];
    for listed in index::list(&*desk.shelf()).unwrap_or_default() {
        if listed.trouble.is_none() {
            options.push(ChoiceOption::new(listed.id, words_of(&listed.name)));
        }
    }
    options
}

/// A job that a sum is kept into, and what it is saved with.
pub struct Target {
    /// The job.
    pub job: Job,
    /// What is known to be on the shelf.
    pub seen: Seen,
}

/// The job of an id; a new one where that is empty. Otherwise why there is none, in words.
pub fn target(desk: Desk, id: &str, units: Units) -> Result<Target, String> {
    if id.is_empty() {
        return Ok(Target {
            job: Job::new(fresh::job_id(), "", fresh::now(), units),
            seen: Seen::nothing(),
        });
    }
    match jobs::load(&*desk.shelf(), id) {
        Ok(store::Loaded::Job(job, seen)) => Ok(Target { job: *job, seen }),
        Ok(store::Loaded::Missing | store::Loaded::Unreadable(_)) => {
            Err(job_words::no_such_job().to_owned())
        }
        Err(refusal) => Err(notices::shelf_refusal(&refusal).to_owned()),
    }
}

/// Keeps a sum into a new job or a new room of one that is here.
#[component]
pub fn KeepIntoJob(
    /// The units of a new job.
    units: Memo<Units>,
    /// What is carried and what is not.
    hint: &'static str,
    /// The stage that is opened afterwards.
    stage: Stage,
    /// Puts the entries into the room with that id.
    put: Callback<(Job, u32), Job>,
) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let place = Place::here();
    let into = RwSignal::new(String::new());
    let trouble = RwSignal::new(String::new());
    let options = derived(move || job_options(desk, |name| words::keep_new_room(shown_name(name))));
    let keep = move |_| {
        let shelf = desk.shelf();
        let units = units.get_untracked();
        let id = into.get_untracked();
        let Target { mut job, mut seen } = match target(desk, &id, units) {
            Ok(target) => target,
            Err(why) => {
                trouble.set(why);
                return;
            }
        };
        if !id.is_empty() {
            let (room, units) = (job.fresh_id(), job.units);
            job.rooms.push(Room::new(room, "", units));
            job.changed = fresh::now();
        }
        let Some(room) = job.rooms.last().map(|room| room.id) else {
            return;
        };
        let job = put.run((job, room));
        match jobs::save(&*shelf, &job, &mut seen) {
            Ok(_) => place.go(&paths::stage(&job.id, room, stage)),
            Err(refusal) => trouble.set(notices::save_refusal(&refusal).to_owned()),
        }
    };
    view! {
        <section class="sheet">
            <h2>{words::keep_heading()}</h2>
            <p class="quiet">{hint}</p>
            <Pick
                id="keep-into".to_owned()
                label=Signal::stored(words::keep_into().to_owned())
                options
                value=into
                on_pick=Callback::new(move |id| into.set(id))
            />
            <button type="button" class="button" on:click=keep>{words::keep_button()}</button>
            <p role="status" class="look" hidden=move || trouble.read().is_empty()>{trouble}</p>
        </section>
    }
}

#[cfg(test)]
mod tests {
    use calc::job::Typed;

    use super::*;
    use crate::store::shelf::MemoryShelf;

    #[test]
    fn what_was_typed_is_there_again_and_damage_is_put_aside() {
        let shelf = MemoryShelf::default();
        assert_eq!(read(&shelf), Kept::Nothing);
        let mut sums = Sums::default();
        sums.ramp.rise = Typed::plain("3/4\"");
        shelf.set(keys::SUMS, &saved::write(&sums)).unwrap();
        assert_eq!(read(&shelf), Kept::Sums(Box::new(sums)));
        shelf.set(keys::SUMS, "{\"ramp\": 3}").unwrap();
        assert_eq!(read(&shelf), Kept::Damaged);
        let aside = shelf.get("roomwright.sums.damaged").unwrap();
        assert_eq!(aside.as_deref(), Some("{\"ramp\": 3}"));
    }
}
