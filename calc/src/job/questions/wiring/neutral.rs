//! The neutrals of a job: which circuits return on each, and the current in it.

use serde::Serialize;

use super::circuit::{CircuitRefused, Pole, conductor_of, load_list, poles_of};
use super::{AskProblem, LEG_VOLTS};
use crate::job::questions::{EntryProblem, Reader};
use crate::job::{CircuitEntry, CircuitWiring, Job, LoadEntry};
use crate::order::Order;
use crate::wiring::neutral::{Neutral, NeutralCurrent, NeutralRefusal, Returning, neutral_current};
use crate::wiring::panel::{BreakerForm, Leg};
use crate::wiring::voltage_drop::Across;

/// A neutral and its current.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SharedNeutral {
    /// The circuits that return on it, in the job's order.
    pub circuits: Vec<u32>,
    /// The current in it as things are.
    pub now: NeutralCurrent,
    /// The current with everything that is planned; nothing where nothing is.
    pub after: Option<NeutralCurrent>,
}

/// The current in each neutral, in the order of the first circuit on it.
///
/// A circuit that names another shares its neutral with it, whichever of the two says so. Circuits from hot to hot
/// have no neutral.
pub fn neutrals_of(job: &Job) -> Vec<NeutralOf> {
    let mut seen: Vec<u32> = Vec::new();
    let mut all = Vec::new();
    for circuit in &job.circuits {
        if circuit.wiring == CircuitWiring::TwoHots || seen.contains(&circuit.id) {
            continue;
        }
        let circuits = sharing(job, circuit);
        seen.extend(&circuits);
        all.push(NeutralOf {
            answer: currents(job, &circuits),
            circuits,
        });
    }
    all
}

/// The circuits on a neutral, and its current or why there is none.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NeutralOf {
    /// The circuits that return on it, in the job's order.
    pub circuits: Vec<u32>,
    /// Its current; what can't be answered says why.
    #[serde(serialize_with = "crate::job::questions::answers::answered")]
    pub answer: Result<SharedNeutral, AskProblem<NeutralRefused>>,
}

/// Why the current in a neutral isn't known.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NeutralRefused {
    /// A circuit on it.
    Circuit(CircuitRefused),
    /// The neutral itself.
    Neutral(NeutralRefusal),
}

/// The circuits on the neutral of a circuit, itself among them, in the job's order.
pub fn sharing(job: &Job, circuit: &CircuitEntry) -> Vec<u32> {
    let mut found = vec![circuit.id];
    let mut at = 0;
    while let Some(&id) = found.get(at) {
        at += 1;
        for other in &job.circuits {
            let named = other.neutral_with.contains(&id)
                || job
                    .circuit(id)
                    .is_some_and(|c| c.neutral_with.contains(&other.id));
            if named && other.wiring != CircuitWiring::TwoHots && !found.contains(&other.id) {
                found.push(other.id);
            }
        }
    }
    found.order_by_key(|id| job.circuits.iter().position(|c| c.id == *id));
    found
}

fn currents(job: &Job, circuits: &[u32]) -> Result<SharedNeutral, AskProblem<NeutralRefused>> {
    let told = |problem| match problem {
        AskProblem::Entries(problems) => AskProblem::Entries(problems),
        AskProblem::Refused(what) => AskProblem::Refused(NeutralRefused::Circuit(what)),
    };
    let current = |neutral: &Neutral| {
        neutral_current(neutral)
            .map_err(|refusal| AskProblem::Refused(NeutralRefused::Neutral(refusal)))
    };
    let mut neutral = neutral(job, circuits, false).map_err(told)?;
    let now = current(&neutral)?;
    let planned = circuits
        .iter()
        .any(|&id| job.circuit(id).is_some_and(|c| !c.planned.is_empty()));
    let after = if planned {
        neutral.returns = returns(job, circuits, true).map_err(told)?;
        Some(current(&neutral)?)
    } else {
        None
    };
    Ok(SharedNeutral {
        circuits: circuits.to_vec(),
        now,
        after,
    })
}

/// The neutral on which circuits return, as it is asked about; its ampacity is the least of theirs that are known.
///
/// # Errors
/// Every entry of those circuits that is missing or refused; then a multiwire circuit without two poles.
pub fn neutral(
    job: &Job,
    circuits: &[u32],
    planned: bool,
) -> Result<Neutral, AskProblem<CircuitRefused>> {
    let returns = returns(job, circuits, planned)?;
    let mut ampacity_a: Option<f64> = None;
    let (mut with_hots, mut pigtailed) = (None, None);
    for circuit in circuits.iter().filter_map(|&id| job.circuit(id)) {
        if let Some(of_this) = conductor_of(job, circuit)
            .ok()
            .and_then(|conductor| conductor.ampacity.ok())
        {
            let of_this_a = of_this.ampacity_a;
            ampacity_a = Some(ampacity_a.map_or(of_this_a, |a: f64| a.min(of_this_a)));
        }
        with_hots = worse(with_hots, circuit.neutral_with_hots);
        pigtailed = worse(pigtailed, circuit.neutral_pigtailed);
    }
    Ok(Neutral {
        edition: job.code_edition,
        returns,
        ampacity_a,
        runs_with_hots: with_hots,
        pigtailed,
    })
}

/// The hots of those circuits.
fn returns(
    job: &Job,
    circuits: &[u32],
    planned: bool,
) -> Result<Vec<Returning>, AskProblem<CircuitRefused>> {
    let mut problems: Vec<EntryProblem> = Vec::new();
    let mut returns = Vec::new();
    for circuit in circuits.iter().filter_map(|&id| job.circuit(id)) {
        match hots(job, circuit, planned) {
            Ok(hots) => hots.into_iter().for_each(|hot| join(&mut returns, hot)),
            Err(AskProblem::Entries(more)) => problems.extend(more),
            Err(refused) => return Err(refused),
        }
    }
    if problems.is_empty() {
        Ok(returns)
    } else {
        Err(AskProblem::Entries(problems))
    }
}

/// Adds a hot; what is on one pole is one circuit, however many cables leave it.
fn join(returns: &mut Vec<Returning>, hot: Returning) {
    let same = |known: &&mut Returning| known.breaker == hot.breaker && known.space == hot.space;
    match returns.iter_mut().find(same) {
        Some(known) => {
            known.current_a += hot.current_a;
            known.electronic_a += hot.electronic_a;
            known.leg_to_leg_loads |= hot.leg_to_leg_loads;
        }
        None => returns.push(hot),
    }
}

/// Of two answers to one question the one that is no, then the one that is known.
const fn worse(a: Option<bool>, b: Option<bool>) -> Option<bool> {
    match (a, b) {
        (Some(false), _) | (_, Some(false)) => Some(false),
        (Some(true), _) | (_, Some(true)) => Some(true),
        (None, None) => None,
    }
}

/// The hots of a circuit, with what returns of each on the neutral.
fn hots(
    job: &Job,
    circuit: &CircuitEntry,
    planned: bool,
) -> Result<Vec<Returning>, AskProblem<CircuitRefused>> {
    let (_, on) = poles_of(job, circuit)?;
    let mut reader = Reader::default();
    let mut poles: Vec<Returning> = Vec::new();
    let across_legs = circuit.wiring == CircuitWiring::Multiwire;
    let mut both = false;
    for pole in &on {
        let (mut current_a, mut electronic_a) = (0.0, 0.0);
        for load in load_list(circuit, planned) {
            if !is_on(load, across_legs, pole.leg()) {
                both |= across_legs && load.across == Across::Both;
                continue;
            }
            reader.row(load.id);
            let amps = reader.load_amps(load, LEG_VOLTS);
            current_a += amps;
            if load.electronic {
                electronic_a += amps;
            }
        }
        poles.push(returning(pole, current_a, electronic_a));
    }
    for pole in &mut poles {
        pole.leg_to_leg_loads = both;
    }
    Ok(reader.finish(poles)?)
}

/// Whether a load goes from this leg to the neutral.
pub(super) fn is_on(load: &LoadEntry, across_legs: bool, leg: Leg) -> bool {
    !across_legs
        || match load.across {
            Across::A => leg == Leg::A,
            Across::B => leg == Leg::B,
            Across::Both => false,
        }
}

fn returning(pole: &Pole, current_a: f64, electronic_a: f64) -> Returning {
    let breaker = &pole.breaker;
    Returning {
        breaker: breaker.id,
        panel: 0,
        space: pole.space,
        tandem: matches!(breaker.form, BreakerForm::Tandem(_)),
        two_pole: breaker.form == BreakerForm::TwoPole,
        tied_to: breaker.tied_to,
        rating_a: breaker.rating_a,
        current_a,
        electronic_a,
        leg_to_leg_loads: false,
    }
}
