//! Opened boxes: what is in one, what must be off before it is touched, what is wrong in it, and what to measure next.

use calc::job::questions::opened::{Described, ReadingTaken, described, readings};
use calc::job::questions::wiring::AskProblem;
use calc::job::{Job, OpenedEntry};
use calc::wiring::open_box::description::{Description, DescriptionRefusal};
use calc::wiring::open_box::diagnosis::{Diagnosis, DiagnosisRefusal, diagnose};
use calc::wiring::open_box::off_list::off_list;
use calc::wiring::open_box::reading::Reading;
use leptos::prelude::*;

use super::job_fields::{At, text};
use super::sum_fields::label;
use crate::answer::Cautions;
use crate::app::NotHere;
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, draw, memo};
use crate::router::Place;
use crate::shell::{PageHeading, PrintButton};
use crate::words::open_box as words;

mod answers;

mod cable;

mod describe;

mod explain;

mod grid;

mod measure;

mod names;

mod refused;

mod remedy;

pub use names::Names;

/// What an entry's description came to.
pub type Asked = Result<Described, AskProblem<Vec<DescriptionRefusal>>>;

/// What explains the readings; nothing where there is none.
pub type Diagnosed = Option<Result<Diagnosis, DiagnosisRefusal>>;

/// The readings that can be used, those that prove a repair left out.
pub fn good(taken: &[ReadingTaken]) -> Vec<Reading> {
    taken
        .iter()
        .filter(|of| !of.proves)
        .filter_map(|of| of.reading.as_ref().ok().cloned())
        .collect()
}

/// One row of opened boxes, by its id.
#[derive(Clone, Copy)]
pub struct Opened {
    /// The job.
    pub open: OpenJob,
    /// The row.
    pub id: u32,
    /// What was entered.
    pub entry: Memo<OpenedEntry>,
    /// The description behind it.
    pub asked: Memo<Asked>,
    /// What its parts are called.
    pub names: Memo<Names>,
    /// What was measured.
    pub taken: Memo<Vec<ReadingTaken>>,
    /// What explains it; nothing where nothing was measured.
    pub diagnosis: Memo<Diagnosed>,
}

impl Opened {
    /// Takes a part out of the row, with what hangs on it, and offers it back.
    pub fn take_out(self, said: String, out: impl FnOnce(&mut OpenedEntry)) {
        let id = self.id;
        self.open.take_out_woven(said, move |job| {
            let entry = job.opened_entry_mut(id)?;
            let before = entry.clone();
            out(entry);
            Some(Box::new(move |job: &mut Job| {
                if let Some(entry) = job.opened_entry_mut(id) {
                    *entry = before;
                }
            }))
        });
    }

    /// The row with this id.
    pub fn of(open: OpenJob, id: u32) -> Self {
        let entry = open.part(move |job| job.opened_entry(id).cloned().unwrap_or_default());
        // Made of the job itself, so that none of them lags behind another.
        let asked = open.part(move |job| match job.opened_entry(id) {
            Some(entry) => described(job, entry),
            None => Err(AskProblem::Entries(Vec::new())),
        });
        let names = open.part(move |job| {
            job.opened_entry(id)
                .map(|entry| Names::of(job, entry))
                .unwrap_or_default()
        });
        let taken = open.part(move |job| {
            let Some(entry) = job.opened_entry(id) else {
                return Vec::new();
            };
            described(job, entry)
                .map(|found| readings(entry, &found.description))
                .unwrap_or_default()
        });
        // The one that takes its time: asked anew only when the description or a reading changed.
        let diagnosis = memo(move || {
            let read = good(&taken.get());
            if read.is_empty() {
                return None;
            }
            asked.with(|asked| {
                let found = asked.as_ref().ok()?;
                Some(diagnose(&found.description, &read))
            })
        });
        Self {
            open,
            id,
            entry,
            asked,
            names,
            taken,
            diagnosis,
        }
    }

    /// Changes the row and saves the job at once.
    pub fn change(self, change: impl FnOnce(&mut OpenedEntry)) {
        let change = Box::new(change) as Box<dyn FnOnce(&mut OpenedEntry)>;
        self.open.change(|job| {
            if let Some(entry) = job.opened_entry_mut(self.id) {
                change(entry);
            }
        });
    }

    /// Changes the row with a fresh row id at hand.
    pub fn change_with_id(self, change: impl FnOnce(&mut OpenedEntry, u32)) {
        let change = Box::new(change) as Box<dyn FnOnce(&mut OpenedEntry, u32)>;
        self.open.change(|job| {
            let fresh = job.fresh_id();
            if let Some(entry) = job.opened_entry_mut(self.id) {
                change(entry, fresh);
            }
        });
    }

    /// The description, where it can be answered.
    pub fn description(self) -> Option<Description> {
        self.asked
            .with(|asked| asked.as_ref().ok().map(|found| found.description.clone()))
    }

    /// The place of an entry of this row.
    pub fn at<T: Default + 'static>(
        self,
        get: fn(&OpenedEntry, u32) -> Option<T>,
        put: fn(&mut OpenedEntry, u32, T),
        row: u32,
    ) -> At<T> {
        let id = self.id;
        At::new(
            move |job: &Job| {
                let entry = job.opened_entry(id);
                entry.and_then(|entry| get(entry, row)).unwrap_or_default()
            },
            move |job: &mut Job, value| {
                if let Some(entry) = job.opened_entry_mut(id) {
                    put(entry, row, value);
                }
            },
        )
    }

    /// The ids of rows in it.
    pub fn rows(self, of: fn(&OpenedEntry) -> Vec<u32>) -> Memo<Vec<u32>> {
        self.open
            .part(move |job| job.opened_entry(self.id).map(of).unwrap_or_default())
    }

    /// A name that follows the entries.
    pub fn name(self, of: impl Fn(&Names) -> String + Send + Sync + 'static) -> Signal<String> {
        derived(move || self.names.with(&of))
    }
}

/// A typed entry of a row, by its list and field.
macro_rules! typed_at {
    ($opened:expr, $list:ident [$row:expr] . $field:ident) => {
        $opened.at(
            |entry, row| {
                let found = entry.$list.iter().find(|of| of.id == row);
                found.map(|of| of.$field.clone())
            },
            |entry, row, value| {
                if let Some(of) = entry.$list.iter_mut().find(|of| of.id == row) {
                    of.$field = value;
                }
            },
            $row,
        )
    };
}

/// A choice of a row by its code.
macro_rules! coded_at {
    ($code:expr, $opened:expr, $list:ident [$row:expr] . $field:ident) => {
        $opened.at(
            |entry, row| {
                let found = entry.$list.iter().find(|of| of.id == row);
                found.map(|of| $code(of.$field).to_owned())
            },
            |entry, row, code: String| {
                if let Some(of) = entry.$list.iter_mut().find(|of| of.id == row) {
                    $crate::pages::sum_fields::take_code(&mut of.$field, code);
                }
            },
            $row,
        )
    };
}

use {coded_at, typed_at};

/// The name of a row, or what stands for one.
pub fn opened_name(name: &str) -> String {
    if name.trim().is_empty() {
        words::untitled().to_owned()
    } else {
        name.to_owned()
    }
}

/// The opened boxes of the job.
#[component]
pub fn OpenBoxesPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let place = Place::here();
    let rows = open.part(|job| {
        job.opened
            .iter()
            .map(|entry| (entry.id.to_string(), row_line(job, entry)))
            .collect::<Vec<_>>()
    });
    let names = open.part(|job| {
        job.opened
            .iter()
            .map(|entry| opened_name(&entry.name))
            .collect::<Vec<_>>()
    });
    let add = move |_| {
        let mut id = 0;
        open.change(|job| id = job.open_box());
        place.go(&paths::row(&open.id(), Stage::OpenBox, id));
    };
    let list = move || {
        let names = names.get();
        rows.get()
            .into_iter()
            .zip(names)
            .map(|((id, line), name)| {
                let id = id.parse().unwrap_or(0);
                view! {
                    <li>
                        <a class="go" href=paths::row(&open.id(), Stage::OpenBox, id)>
                            <strong>{name}</strong>
                            <span>{line}</span>
                        </a>
                    </li>
                }
            })
            .collect_view()
    };
    let none = memo(move || rows.with(Vec::is_empty));
    view! {
        <PageHeading text=label(words::title()) />
        <When when=move || none.get()>
            <p>{words::none_yet()}</p>
        </When>
        <ul class="list">{draw(list)}</ul>
        <button type="button" class="button main wide" on:click=add>{words::add()}</button>
        <Cautions lines=Signal::stored(words::cautions()) />
        <PrintButton />
    }
}

/// What must be off before the first box of a row is opened.
fn row_line(job: &Job, entry: &OpenedEntry) -> String {
    let Ok(found) = described(job, entry) else {
        return words::row_open(entry.cables.len());
    };
    let mut ids = Vec::new();
    for in_box in &found.description.boxes {
        if let Ok(list) = off_list(&found.description, &[], *in_box, &[]) {
            for listed in list.breakers {
                if !ids.contains(&listed.breaker) {
                    ids.push(listed.breaker);
                }
            }
        }
    }
    if ids.is_empty() {
        words::row_off_none().to_owned()
    } else {
        words::row_off(&Names::of(job, entry).breakers(&ids))
    }
}

/// One row of opened boxes.
#[component]
pub fn OpenBoxPage(
    /// Its id.
    id: u32,
) -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let known = open.part(move |job| job.opened_entry(id).is_some());
    draw(move || {
        if known.get() {
            view! { <OneOpened open id /> }.into_any()
        } else {
            view! { <p class="notice">{words::no_such()}</p> <NotHere /> }.into_any()
        }
    })
}

#[component]
fn OneOpened(open: OpenJob, id: u32) -> impl IntoView {
    let opened = Opened::of(open, id);
    let place = Place::here();
    let entry = opened.entry;
    let heading = derived(move || entry.with(|entry| opened_name(&entry.name)));
    let named = At::new(
        move |job: &Job| {
            job.opened_entry(id)
                .map(|e| e.name.clone())
                .unwrap_or_default()
        },
        move |job: &mut Job, name| {
            if let Some(entry) = job.opened_entry_mut(id) {
                entry.name = name;
            }
        },
    );
    let out = move |_| {
        place.go(&paths::stage(&open.id(), 0, Stage::OpenBox));
        let said = heading.get_untracked();
        // On the page that comes: this one takes its offers with it.
        let out = move || {
            open.take_out(said, |job| {
                let at = job.opened.iter().position(|entry| entry.id == id)?;
                let entry = job.opened.remove(at);
                Some(Box::new(move |job: &mut Job| {
                    job.opened.insert(at.min(job.opened.len()), entry);
                }))
            });
        };
        set_timeout(out, std::time::Duration::ZERO);
    };
    let empty = memo(move || entry.with(OpenedEntry::is_undescribed));
    let answered = memo(move || opened.asked.with(Result::is_ok));
    view! {
        <a class="up" href=paths::stage(&open.id(), 0, Stage::OpenBox)>{words::all_opened()}</a>
        <PageHeading text=heading />
        <When when=move || empty.get()>
            <describe::Start opened />
        </When>
        <When when=move || !empty.get()>
            <refused::Refused opened />
        </When>
        <When when=move || answered.get()>
            <answers::BeyondDescription opened />
            <answers::OffLists opened />
            <answers::LiveMapCard opened />
        </When>
        <Cautions lines=Signal::stored(words::cautions()) />
        <section class="sheet no-print">
            <h2>{words::what_is_in_it()}</h2>
            {text(open, "opened-name", label(words::name_label()), words::name_hint(), named)}
            <describe::Breakers opened />
            <cable::Cables opened />
            <describe::Devices opened />
            <grid::Grids opened />
        </section>
        <When when=move || answered.get()>
            <measure::Readings opened />
            <explain::Explained opened />
            <answers::Returns opened />
            <answers::Neutrals opened />
            <answers::TakenLines opened />
        </When>
        <remedy::Note opened />
        <button type="button" class="button look plain" on:click=out>{words::take_out()}</button>
        <a class="button wide" href=paths::stage(&open.id(), 0, Stage::OpenBox)>{words::all_opened()}</a>
        <PrintButton />
    }
}
