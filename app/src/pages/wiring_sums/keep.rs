//! Keeps a sum of the wiring into a job, new or here: a box into its boxes, a wire or a run into one of its circuits. It
//! says where it went, leads there, and takes it back.

use calc::job::Job;
use calc::job::sums::Sums;
use leptos::prelude::*;

use super::super::jobs::shown_name;
use super::super::sum_fields::label;
use super::super::sums::{OpenSums, Target, job_options, target};
use crate::desk::Desk;
use crate::entry::{ChoiceOption, Pick, TextEntry};
use crate::house::{box_name, circuit_name};
use crate::markup::view;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, draw, memo};
use crate::store::{Loaded, Seen, bin, jobs};
use crate::words::wiring::{boxes, circuits, keep as words};
use crate::words::{common, notices, sums as sum_words};

/// What is kept, and how.
#[derive(Clone, Copy)]
pub enum Keeps {
    /// The box.
    Box,
    /// The wire and how it lies.
    Ampacity,
    /// The run, its wire and its loads.
    Drop,
    /// The way of the cable.
    Cable,
}

impl Keeps {
    const fn stage(self) -> Stage {
        match self {
            Self::Box => Stage::Boxes,
            Self::Ampacity | Self::Drop | Self::Cable => Stage::Circuits,
        }
    }

    fn hint(self) -> &'static str {
        match self {
            Self::Box => words::box_hint(),
            Self::Ampacity => words::ampacity_hint(),
            Self::Drop => words::drop_hint(),
            Self::Cable => words::cable_hint(),
        }
    }

    /// Puts it into a circuit that is there, or under a name of its own; the row that it went into, or why it can't.
    fn put(
        self,
        sums: &Sums,
        job: &mut Job,
        into: Option<u32>,
        name: String,
    ) -> Result<u32, &'static str> {
        let kept = match (self, into) {
            (Self::Box, _) => Some(sums.box_fill.keep(job, name)),
            (Self::Ampacity, None) => Some(sums.ampacity.keep(job, name)),
            (Self::Ampacity, Some(id)) => sums.ampacity.keep_in(job, id).then_some(id),
            (Self::Drop, None) => sums.voltage_drop.keep(job, name),
            (Self::Drop, Some(id)) => sums.voltage_drop.keep_in(job, id).then_some(id),
            (Self::Cable, None) => sums.cable_run.keep(job, name),
            (Self::Cable, Some(id)) => sums.cable_run.keep_in(job, id).then_some(id),
        };
        kept.ok_or_else(|| match self {
            Self::Drop if sums.voltage_drop.circuit_wiring().is_none() => words::drop_cant(),
            Self::Cable => words::cable_cant(),
            Self::Box | Self::Ampacity | Self::Drop => circuits::no_such(),
        })
    }

    /// What the row that it went into is called.
    fn name(self, job: &Job, row: u32) -> String {
        match self {
            Self::Box => box_name(job.box_entry(row).map_or("", |entry| entry.name.as_str())),
            Self::Ampacity | Self::Drop | Self::Cable => {
                circuit_name(job.circuit(row).map_or("", |entry| entry.name.as_str()))
            }
        }
    }
}

/// What was kept last.
#[derive(Clone)]
struct Kept {
    /// The job before; none: it was made for this.
    before: Option<Job>,
    /// The job as it was saved then.
    seen: Seen,
    job: String,
    /// What was kept, and into which job, in words.
    said: String,
    /// Where it is.
    path: String,
}

/// The circuits of a job that is here.
fn circuits_of(desk: Desk, id: &str) -> Vec<ChoiceOption> {
    let mut options = vec![ChoiceOption::new("", words::new_circuit())];
    if let Ok(Loaded::Job(job, _)) = jobs::load(&*desk.shelf(), id) {
        let all = job.circuits.iter();
        options.extend(all.map(|c| ChoiceOption::new(c.id.to_string(), circuit_name(&c.name))));
    }
    options
}

/// Keeps it; what was done, or why not.
fn keep(
    desk: Desk,
    what: Keeps,
    sums: &Sums,
    into: &str,
    circuit: &str,
    name: String,
) -> Result<Kept, String> {
    let Target { mut job, mut seen } = target(desk, into, sums.units)?;
    let before = (!into.is_empty()).then(|| job.clone());
    if before.is_none() {
        job.code_edition = sums.code_edition;
    } else {
        job.changed = crate::store::fresh::now();
    }
    let row = what.put(sums, &mut job, circuit.parse().ok(), name)?;
    jobs::save(&*desk.shelf(), &job, &mut seen)
        .map_err(|r| notices::save_refusal(&r).to_owned())?;
    Ok(Kept {
        before,
        seen,
        said: words::kept(&what.name(&job, row), &shown_name(&job.name)),
        path: paths::row(&job.id, what.stage(), row),
        job: job.id,
    })
}

/// Takes it back, unless the job was changed since; then says so.
fn take_back(desk: Desk, kept: Kept) -> Result<(), String> {
    let shelf = desk.shelf();
    let mut seen = kept.seen;
    match kept.before {
        Some(before) => jobs::save(&*shelf, &before, &mut seen)
            .map(drop)
            .map_err(|refusal| notices::save_refusal(&refusal).to_owned()),
        None => match jobs::load(&*shelf, &kept.job) {
            Ok(Loaded::Job(_, here)) if here == seen => bin::delete(&*shelf, &kept.job)
                .map(drop)
                .map_err(|refusal| notices::shelf_refusal(&refusal).to_owned()),
            _ => Err(words::changed_since().to_owned()),
        },
    }
}

/// Keeps a sum of the wiring into a job.
#[component]
pub fn KeepWiring(
    /// The sums.
    open: OpenSums,
    /// What is kept.
    what: Keeps,
) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let (into, circuit, name) = (
        RwSignal::new(String::new()),
        RwSignal::new(String::new()),
        RwSignal::new(String::new()),
    );
    let trouble = RwSignal::new(String::new());
    let kept = RwSignal::new(None::<Kept>);
    // Counts what was kept or taken back here: another tab's news come by the desk.
    let jobs_here = derived(move || {
        kept.with(|_| ());
        job_options(desk, shown_name)
    });
    let circuits_here = memo(move || {
        desk.turn.track();
        kept.with(|_| ());
        into.with(|id| circuits_of(desk, id))
    });
    let of_circuit = matches!(what.stage(), Stage::Circuits);
    let some_there = move || of_circuit && circuits_here.with(|all| all.len() > 1);
    let anew = move || circuit.with(String::is_empty);
    let press = move |_| {
        let sums = open.sums.get_untracked();
        let done = keep(
            desk,
            what,
            &sums,
            &into.get_untracked(),
            &circuit.get_untracked(),
            name.get_untracked(),
        );
        match done {
            Ok(done) => {
                trouble.set(String::new());
                kept.set(Some(done));
            }
            Err(why) => trouble.set(why),
        }
    };
    let undo = move |_| {
        if let Some(done) = kept.get_untracked() {
            let back = take_back(desk, done);
            kept.set(None);
            trouble.set(back.err().unwrap_or_else(|| words::taken_back().to_owned()));
        }
    };
    let notice = move || {
        kept.with(|kept| {
            let kept = kept.as_ref()?;
            Some(view! {
                <div class="notice">
                    <p>{kept.said.clone()}</p>
                    <div class="row">
                        <a class="button" href=kept.path.clone()>{words::open_there()}</a>
                        <button type="button" class="button" on:click=undo>{common::undo()}</button>
                    </div>
                </div>
            })
        })
    };
    let (name_label, name_hint) = match what {
        Keeps::Box => (boxes::name_label(), boxes::name_hint()),
        Keeps::Ampacity | Keeps::Drop | Keeps::Cable => (circuits::name_label(), ""),
    };
    view! {
        <section class="sheet">
            <h2>{sum_words::keep_heading()}</h2>
            <p class="quiet">{what.hint()}</p>
            <Pick
                id="keep-into".to_owned()
                label=label(sum_words::keep_into())
                options=jobs_here
                value=into
                on_pick=Callback::new(move |id| {
                    into.set(id);
                    circuit.set(String::new());
                })
            />
            <When when=some_there>
                <Pick
                    id="keep-circuit".to_owned()
                    label=label(words::which_circuit())
                    options=circuits_here
                    value=circuit
                    on_pick=Callback::new(move |id| circuit.set(id))
                />
            </When>
            <When when=anew>
                <TextEntry
                    id="keep-name".to_owned()
                    label=label(name_label)
                    hint=label(name_hint)
                    value=name
                    on_text=Callback::new(move |text| name.set(text))
                />
            </When>
            <button type="button" class="button" on:click=press>{sum_words::keep_button()}</button>
            <div role="status">
                {draw(notice)}
                <p class="look" hidden=move || trouble.read().is_empty()>{trouble}</p>
            </div>
        </section>
    }
}
