//! A circuit judged rule by rule, as it is and with what is planned.

use serde::Serialize;

use super::boxes::box_ask;
use super::drop::{feeder_percent, resistance, stretch_at, stretches};
use super::laid::{self, LaidAsk};
use super::neutral::{is_on, neutral, sharing};
use super::panel::breaker;
use super::{ACROSS_VOLTS, AskProblem, LEG_VOLTS};
use crate::job::questions::{EntryProblem, Reader};
use crate::job::{CircuitEntry, CircuitWiring, Job, LoadEntry, fields};
use crate::wiring::ampacity::{Ampacity, AmpacityRefusal, Feeds, ampacity};
use crate::wiring::bundle::{BundleCount, BundleRefusal};
use crate::wiring::circuit::{
    Check, Circuit, CircuitAnswer, CircuitBox, CircuitLoad, CircuitRefusal, Outcome, Takes,
    Verdict, judge,
};
use crate::wiring::code::Rule;
use crate::wiring::conductor::Conductor;
use crate::wiring::impedance::TABLE_C;
use crate::wiring::panel::{Breaker, BreakerForm, Leg, leg_of, share_leg};
use crate::wiring::voltage_drop::{
    Across, Demand, DropLoad, DropRefusal, Run, Stretch, System, VoltageDrop, voltage_drop,
};

mod judged;

pub use judged::circuit_of;

/// A circuit, judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CircuitView {
    /// The circuit's id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// The breaker's number as the directory shows it.
    pub number: String,
    /// The breaker's rating, amperes.
    pub breaker_a: f64,
    /// How the current-carrying conductors were counted.
    pub bundle: BundleCount,
    /// One judgement; of a multiwire circuit one for each of its hots.
    pub legs: Vec<LegJudged>,
    /// The drop along its run with what is planned; nothing without a run.
    pub drop: Option<VoltageDrop>,
    /// Entries of boxes and of other circuits on its neutral that keep a verdict from being given.
    pub unread: Vec<EntryProblem>,
}

/// A hot of a circuit, judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LegJudged {
    /// The leg; nothing for a load from leg to leg.
    pub leg: Option<Leg>,
    /// One verdict for each rule, what fails first.
    pub answer: CircuitAnswer,
}

impl CircuitView {
    /// Whether any rule fails on any of its hots.
    pub fn fails(&self) -> bool {
        self.legs.iter().any(|leg| leg.answer.fails())
    }
}

/// Why a circuit isn't judged, though its entries can be read.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CircuitRefused {
    /// The cables that its conductor lies with.
    Bundle(BundleRefusal),
    /// A multiwire circuit without a two-pole breaker, or a 240 V one without two poles on opposite legs.
    NeedsTwoPoles {
        /// The breaker.
        breaker: u32,
    },
    /// The circuit itself.
    Circuit(CircuitRefusal),
}

/// The conductor of a circuit and what it may carry.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CircuitConductor {
    /// The conductor.
    pub conductor: Conductor,
    /// How it lies.
    pub laid: LaidAsk,
    /// The count of what it lies with.
    pub bundle: BundleCount,
    /// What it may carry.
    pub ampacity: Result<Ampacity, AmpacityRefusal>,
}

/// The conductor of a circuit, how it lies, and what it may carry.
///
/// # Errors
/// Every entry that is missing or refused, by the circuit's id or the row's; then what can't be counted.
pub fn conductor_of(
    job: &Job,
    circuit: &CircuitEntry,
) -> Result<CircuitConductor, AskProblem<CircuitRefused>> {
    let mut reader = Reader::default();
    reader.row(circuit.id);
    let size = reader.size("size", circuit.laid.size);
    let receptacles = reader.count("receptacles", &fields::OUTLETS, &circuit.receptacles);
    let laid = laid::read(&mut reader, &circuit.laid);
    let laid = reader.finish(laid)?;
    let bundle = laid
        .bundle(job.code_edition)
        .map_err(|refusal| AskProblem::Refused(CircuitRefused::Bundle(refusal)))?;
    let conductor = Conductor {
        size,
        metal: circuit.laid.metal,
        covering: circuit.laid.covering,
    };
    let feeds = if receptacles > 1 {
        Feeds::SeveralReceptacles
    } else {
        Feeds::Other
    };
    let conditions = laid.conditions(&bundle, circuit.laid.terminals, feeds);
    Ok(CircuitConductor {
        conductor,
        ampacity: ampacity(conductor, conditions),
        laid,
        bundle,
    })
}

/// The loads of a circuit, those that are planned among them where they are asked for.
pub(super) fn load_list(circuit: &CircuitEntry, planned: bool) -> impl Iterator<Item = &LoadEntry> {
    let more: &[LoadEntry] = if planned { &circuit.planned } else { &[] };
    circuit.loads.iter().chain(more)
}

/// The breaker of a circuit.
///
/// # Errors
/// Its entries, missing or refused; then a breaker without the poles that the circuit needs.
pub fn breaker_of(
    job: &Job,
    circuit: &CircuitEntry,
) -> Result<Breaker, AskProblem<CircuitRefused>> {
    let mut reader = Reader::default();
    reader.row(circuit.id);
    let Some(entry) = circuit.breaker.and_then(|id| job.panel.breaker(id)) else {
        reader.missing("breaker");
        return Err(AskProblem::Entries(reader.problems));
    };
    let breaker = breaker(entry)?;
    let two_poles = breaker.form == BreakerForm::TwoPole;
    let opposite = |id: u32| {
        job.panel
            .breaker(id)
            .is_some_and(|tied| tied.space > 0 && !share_leg(tied.space, breaker.space))
    };
    let good = match circuit.wiring {
        CircuitWiring::HotNeutral => true,
        CircuitWiring::Multiwire => two_poles,
        CircuitWiring::TwoHots => two_poles || breaker.tied_to.is_some_and(opposite),
    };
    if good {
        Ok(breaker)
    } else {
        Err(AskProblem::Refused(CircuitRefused::NeedsTwoPoles {
            breaker: breaker.id,
        }))
    }
}
