//! Every answer of a job's wiring.

use serde::{Serialize, Serializer};

use super::answered;
use crate::job::questions::opened::{OpenedAnswered, answer};
use crate::job::questions::wiring::AskProblem;
use crate::job::questions::wiring::boxes::box_fill_of;
use crate::job::questions::wiring::circuit::{CircuitRefused, CircuitView, circuit_of};
use crate::job::questions::wiring::neutral::{NeutralOf, neutrals_of};
use crate::job::questions::wiring::panel::{PanelView, panel_view, supply_of};
use crate::job::{CodeEdition, Job};
use crate::wiring::box_fill::{BoxFill, BoxRefusal};
use crate::wiring::panel::PanelRefusal;
use crate::wiring::supply::{SupplyJudgement, SupplyRefusal};

/// Every answer of a job's wiring. What can't be answered says why; saved as `{"refused": ...}`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WiringAnswers {
    /// The edition of NFPA 70.
    pub code_edition: CodeEdition,
    /// The panel as it hangs; nothing where nothing of it was entered.
    #[serde(serialize_with = "maybe_answered")]
    pub panel: Option<Result<PanelView, AskProblem<PanelRefusal>>>,
    /// Its supply; nothing where nothing was measured.
    #[serde(serialize_with = "maybe_answered")]
    pub supply: Option<Result<SupplyJudgement, AskProblem<SupplyRefusal>>>,
    /// The circuits, in the job's order.
    pub circuits: Vec<CircuitAnswered>,
    /// The neutrals, in the order of the first circuit on each.
    pub neutrals: Vec<NeutralOf>,
    /// The boxes, in the job's order.
    pub boxes: Vec<BoxAnswered>,
    /// The opened boxes, in the job's order.
    pub opened: Vec<OpenedAnswered>,
}

/// A circuit and its judgement.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CircuitAnswered {
    /// The circuit's id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// Its judgement.
    #[serde(serialize_with = "answered")]
    pub answer: Result<CircuitView, AskProblem<CircuitRefused>>,
}

/// A box and how full it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxAnswered {
    /// The box's id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// How full it is.
    #[serde(serialize_with = "answered")]
    pub answer: Result<BoxFill, AskProblem<BoxRefusal>>,
}

impl WiringAnswers {
    /// Every answer of a job's wiring.
    pub fn of(job: &Job) -> Self {
        Self {
            code_edition: job.code_edition,
            panel: (!job.panel.is_empty()).then(|| panel_view(job)),
            supply: supply_of(&job.panel),
            circuits: job
                .circuits
                .iter()
                .map(|circuit| CircuitAnswered {
                    id: circuit.id,
                    name: circuit.name.clone(),
                    answer: circuit_of(job, circuit),
                })
                .collect(),
            neutrals: neutrals_of(job),
            boxes: job
                .boxes
                .iter()
                .map(|found| BoxAnswered {
                    id: found.id,
                    name: found.name.clone(),
                    answer: box_fill_of(found, job.code_edition),
                })
                .collect(),
            opened: job
                .opened
                .iter()
                .map(|entry| OpenedAnswered {
                    id: entry.id,
                    name: entry.name.clone(),
                    answer: answer(job, entry),
                })
                .collect(),
        }
    }
}

/// An answer as itself, a refusal as `{"refused": ...}`, `null` where nothing was asked.
fn maybe_answered<T: Serialize, E: Serialize, S: Serializer>(
    asked: &Option<Result<T, E>>,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    match asked {
        Some(result) => answered(result, serializer),
        None => serializer.serialize_none(),
    }
}
