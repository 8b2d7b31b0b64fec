//! What follows from the wiring of the house: each question asked once, and again only when the wiring changes.

use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::boxes::box_fill_of;
use calc::job::questions::wiring::circuit::{CircuitRefused, CircuitView, circuit_of};
use calc::job::questions::wiring::neutral::{NeutralOf, neutrals_of};
use calc::job::questions::wiring::panel::{PanelView, panel_view, supply_of};
use calc::job::{BoxEntry, CircuitEntry, CodeEdition, Job};
use calc::wiring::box_fill::{BoxFill, BoxRefusal};
use calc::wiring::circuit::{Outcome, Verdict};
use calc::wiring::panel::{BreakerForm, PanelRefusal};
use calc::wiring::supply::{SupplyJudgement, SupplyRefusal};
use leptos::prelude::*;

use crate::markup::view;
use crate::open_job::OpenJob;
use crate::reactive::{When, memo, say};
use crate::words::common;
use crate::words::wiring::{boxes, circuits, panel as panel_words};

/// A circuit's id and its judgement, or why there is none.
pub type Judged = (u32, Result<CircuitView, AskProblem<CircuitRefused>>);

/// A box's id and how full it is, or why that is not known.
pub type Filled = (u32, Result<BoxFill, AskProblem<BoxRefusal>>);

/// The supply as judged; nothing where nothing was measured.
pub type Supplied = Option<Result<SupplyJudgement, AskProblem<SupplyRefusal>>>;

/// The wiring's answers. Shared by context on a job's pages.
#[derive(Clone, Copy)]
pub struct House {
    /// The job's wiring alone, so that nothing is asked anew when a room changes.
    pub wiring: Memo<Job>,
    /// The panel as it hangs.
    pub panel: Memo<Result<PanelView, AskProblem<PanelRefusal>>>,
    /// The supply.
    pub supply: Memo<Supplied>,
    /// The circuits, in the job's order.
    pub circuits: Memo<Vec<Judged>>,
    /// The neutrals.
    pub neutrals: Memo<Vec<NeutralOf>>,
    /// The boxes, in the job's order.
    pub boxes: Memo<Vec<Filled>>,
    /// The circuit or box taken out last, for undo.
    pub taken_out: RwSignal<Option<TakenOut>>,
}

/// A row that was taken out, and where it stood.
#[derive(Clone, Debug, PartialEq)]
pub enum TakenOut {
    /// A circuit.
    Circuit(usize, Box<CircuitEntry>),
    /// A box.
    Box(usize, Box<BoxEntry>),
}

impl TakenOut {
    fn words(&self) -> String {
        match self {
            Self::Circuit(_, circuit) => circuits::taken_out(&circuit_name(&circuit.name)),
            Self::Box(_, found) => boxes::taken_out(&box_name(&found.name)),
        }
    }

    fn put_back(self, job: &mut Job) {
        match self {
            Self::Circuit(at, circuit) => job.circuits.insert(at.min(job.circuits.len()), *circuit),
            Self::Box(at, found) => job.boxes.insert(at.min(job.boxes.len()), *found),
        }
    }
}

/// The way back for what was taken out last. What named it still does, so nothing else is lost.
#[component]
pub fn PutBack(
    /// The job.
    open: OpenJob,
    /// Its wiring's answers.
    house: House,
) -> impl IntoView {
    let taken = house.taken_out;
    let put_back = move |_| {
        if let Some(row) = taken.get_untracked() {
            open.change(|job| row.put_back(job));
            taken.set(None);
        }
    };
    view! {
        <div role="status">
            <When when=move || taken.read().is_some()>
                <div class="notice">
                    <p>{say(move || taken.with(|taken| taken.as_ref().map(TakenOut::words)))}</p>
                    <button type="button" class="button" id="put-back" on:click=put_back>{common::undo()}</button>
                </div>
            </When>
        </div>
    }
}

/// The circuits, in the job's order.
pub fn judged(job: &Job) -> Vec<Judged> {
    let all = job.circuits.iter();
    all.map(|c| (c.id, circuit_of(job, c))).collect()
}

/// The boxes, in the job's order.
pub fn filled(job: &Job) -> Vec<Filled> {
    let all = job.boxes.iter();
    all.map(|b| (b.id, box_fill_of(b, job.code_edition)))
        .collect()
}

impl House {
    /// The answers of a job.
    pub fn of(open: OpenJob) -> Self {
        let wiring = memo(move || {
            open.job.with(|job| {
                let mut only = Job::new("", "", "", job.units);
                only.rooms.clear();
                only.code_edition = job.code_edition;
                only.panel = job.panel.clone();
                only.circuits = job.circuits.clone();
                only.boxes = job.boxes.clone();
                only
            })
        });
        Self {
            wiring,
            panel: memo(move || wiring.with(panel_view)),
            supply: memo(move || wiring.with(|job| supply_of(&job.panel))),
            circuits: memo(move || wiring.with(judged)),
            neutrals: memo(move || wiring.with(neutrals_of)),
            boxes: memo(move || wiring.with(filled)),
            taken_out: RwSignal::new(None),
        }
    }

    /// The answers that the open job shares.
    pub fn here() -> Self {
        expect_context()
    }

    /// The edition of the code in force.
    pub fn edition(self) -> CodeEdition {
        self.wiring.with(|job| job.code_edition)
    }

    /// Spaces taken, and all there are; nothing while they are not counted.
    pub fn spaces(self) -> Option<(u32, u32)> {
        self.panel.with(|panel| {
            let view = panel.as_ref().ok()?;
            let spaces = self.wiring.with(|job| job.panel.spaces);
            Some((spaces.saturating_sub(view.layout.free_spaces), spaces))
        })
    }

    /// Whether the panel is drawn, with every breaker in a place of its own.
    pub fn panel_decided(self) -> bool {
        self.panel.with(|panel| {
            panel
                .as_ref()
                .is_ok_and(|view| view.troubles.is_empty() && !view.directory.is_empty())
        })
    }

    /// How many rules fail, in how many circuits, and how many circuits are not judged.
    pub fn failing(self) -> Failing {
        let mut failing = Failing::default();
        self.circuits.with(|all| {
            for (_, judged) in all {
                failing.all += 1;
                match judged {
                    Ok(view) => {
                        let rules = fails(view).len();
                        failing.rules += rules;
                        failing.circuits += usize::from(rules > 0);
                    }
                    Err(_) => failing.open += 1,
                }
            }
        });
        failing
    }

    /// How many boxes are too full, how many are not known, and how many there are.
    pub fn over(self) -> (usize, usize, usize) {
        self.boxes.with(|all| {
            let over = all
                .iter()
                .filter(|(_, fill)| matches!(fill, Ok(fill) if !fill.fits));
            let open = all.iter().filter(|(_, fill)| fill.is_err());
            (over.count(), open.count(), all.len())
        })
    }

    /// The key figure of the panel.
    pub fn panel_figure(self) -> String {
        match self.spaces() {
            Some((taken, spaces)) => panel_words::taken_of(taken, spaces),
            None => panel_words::not_counted().to_owned(),
        }
    }

    /// The key figure of the circuits.
    pub fn circuits_figure(self) -> String {
        let failing = self.failing();
        match (failing.all, failing.rules, failing.open) {
            (0, ..) => circuits::not_entered().to_owned(),
            (_, 1, _) => circuits::one_failing().to_owned(),
            (_, rules, _) if rules > 1 => circuits::failing(rules),
            (all, _, 0) => circuits::none_failing(all),
            (all, _, open) => circuits::still_open(open, all),
        }
    }

    /// The key figure of the boxes.
    pub fn boxes_figure(self) -> String {
        match self.over() {
            (_, _, 0) => boxes::figure_none().to_owned(),
            (1, ..) => boxes::figure_over_one().to_owned(),
            (over, ..) if over > 1 => boxes::figure_over(over),
            (_, 0, all) => boxes::figure_fit(all),
            (_, open, all) => boxes::figure_open(open, all),
        }
    }

    /// The number of a breaker as the directory shows it, from its entry.
    pub fn number(self, breaker: u32) -> String {
        self.wiring.with(|job| number_of(job, breaker))
    }

    /// The name of a circuit.
    pub fn circuit_name(self, id: u32) -> String {
        self.wiring
            .with(|job| circuit_name(job.circuit(id).map_or("", |c| c.name.as_str())))
    }

    /// The name of a box.
    pub fn box_name(self, id: u32) -> String {
        self.wiring
            .with(|job| box_name(job.box_entry(id).map_or("", |b| b.name.as_str())))
    }
}

/// How the circuits stand.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Failing {
    /// Rules that fail.
    pub rules: usize,
    /// In how many circuits.
    pub circuits: usize,
    /// Circuits that are not judged.
    pub open: usize,
    /// Circuits.
    pub all: usize,
}

/// The rules of a circuit that fail, each once, whichever of its legs they fail on.
pub fn fails(view: &CircuitView) -> Vec<&Verdict> {
    let mut found: Vec<&Verdict> = Vec::new();
    for leg in &view.legs {
        for verdict in &leg.answer.verdicts {
            if verdict.outcome == Outcome::Fails && !found.iter().any(|f| f.check == verdict.check)
            {
                found.push(verdict);
            }
        }
    }
    found
}

/// The number of a breaker of a job.
pub fn number_of(job: &Job, breaker: u32) -> String {
    job.panel
        .breaker(breaker)
        .map(|b| panel_words::number(b.space, b.form))
        .unwrap_or_default()
}

/// A circuit's name, or what stands for one.
pub fn circuit_name(name: &str) -> String {
    if name.trim().is_empty() {
        circuits::untitled().to_owned()
    } else {
        name.to_owned()
    }
}

/// A box's name, or what stands for one.
pub fn box_name(name: &str) -> String {
    if name.trim().is_empty() {
        boxes::untitled().to_owned()
    } else {
        name.to_owned()
    }
}

/// Whether a breaker takes this place: the half of a tandem, or the whole of a space that is its first.
pub fn stands_at(form: BreakerForm, half: &str) -> bool {
    match form {
        BreakerForm::Tandem(of) => panel_words::half(of) == half,
        BreakerForm::Single | BreakerForm::TwoPole => half.is_empty(),
    }
}
