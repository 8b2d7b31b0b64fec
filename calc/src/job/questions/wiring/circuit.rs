//! A circuit judged rule by rule, as it is and with what is planned.

use serde::Serialize;

use super::boxes::box_ask;
use super::drop::{feeder_percent, resistance, stretch_at, stretches};
use super::laid::{self, LaidAsk};
use super::neutral::{is_on, neutral, sharing};
use super::panel::{breaker, on_breaker};
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
use crate::wiring::panel::{Breaker, Leg, leg_of};
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
    /// Two hots without a two-pole breaker, or two neighbouring single poles of one rating under a handle tie.
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

/// A pole of a breaker, with the breaker it is of.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pole {
    /// The breaker.
    pub breaker: Breaker,
    /// The space of the pole.
    pub space: u32,
}

impl Pole {
    /// The leg.
    pub const fn leg(&self) -> Leg {
        leg_of(self.space)
    }

    fn is(&self, other: &Self) -> bool {
        self.breaker.id == other.breaker.id && self.space == other.space
    }
}

/// The breaker of a circuit and the poles that it is on: two for two hots, of one breaker or of two neighbours under a
/// handle tie (210.4(B)), whichever of the two it is entered on.
///
/// Circuits of one hot on a two-pole breaker take its poles by turns, in the job's order.
///
/// # Errors
/// Its entries, missing or refused; then a breaker without the poles that the circuit needs.
pub fn poles_of(
    job: &Job,
    circuit: &CircuitEntry,
) -> Result<(Breaker, Vec<Pole>), AskProblem<CircuitRefused>> {
    let mut reader = Reader::default();
    reader.row(circuit.id);
    let Some(entry) = circuit.breaker.and_then(|id| job.panel.breaker(id)) else {
        reader.missing("breaker");
        return Err(AskProblem::Entries(reader.problems));
    };
    let breaker = breaker(entry)?;
    let of = |breaker: &Breaker, space| Pole {
        breaker: breaker.clone(),
        space,
    };
    let spaces = breaker.spaces();
    if circuit.wiring == CircuitWiring::HotNeutral {
        let turn = on_breaker(job, breaker.id)
            .filter(|other| other.wiring == CircuitWiring::HotNeutral)
            .position(|other| other.id == circuit.id);
        let at = turn.unwrap_or(0) % spaces.len().max(1);
        let space = spaces.get(at).copied().unwrap_or(breaker.space);
        let pole = of(&breaker, space);
        return Ok((breaker, vec![pole]));
    }
    let mut poles: Vec<Pole> = spaces.into_iter().map(|s| of(&breaker, s)).collect();
    if poles.len() < 2 {
        let mut others = job.panel.breakers.iter().filter(|e| e.id != breaker.id);
        let tied = others.find_map(|entry| {
            let said = entry.tied_to == Some(breaker.id) || breaker.tied_to == Some(entry.id);
            let other = said.then(|| self::breaker(entry).ok()).flatten()?;
            breaker.opens_with(&other).then_some(other)
        });
        let Some(tied) = tied else {
            return Err(AskProblem::Refused(CircuitRefused::NeedsTwoPoles {
                breaker: breaker.id,
            }));
        };
        let at = usize::from(tied.space > breaker.space);
        poles.insert(at, of(&tied, tied.space));
    }
    Ok((breaker, poles))
}
