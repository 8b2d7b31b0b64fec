//! The circuit as it is asked about, and its judgement.

use super::*;
use crate::order::Order;

mod beside;
mod run_drop;

use beside::{Beside, leave_open};
use run_drop::add_drop;

use crate::wiring::circuit::{Compared, NotJudged};
use crate::wiring::neutral::Neutral;
use crate::wiring::tables::{BRANCH_DROP_PERCENT, TOTAL_DROP_PERCENT};
use crate::working::Unit;

/// A circuit of the job, judged rule by rule.
///
/// A box or a neighbour on the neutral that can't be read leaves its own verdict open and the others standing.
///
/// # Errors
/// Every entry of the circuit and its breaker that is missing or refused; then what keeps it from being judged.
pub fn circuit_of(
    job: &Job,
    circuit: &CircuitEntry,
) -> Result<CircuitView, AskProblem<CircuitRefused>> {
    let mut problems = Vec::new();
    let mut refused = None;
    let mut told = |problem| match problem {
        AskProblem::Entries(more) => problems.extend(more),
        AskProblem::Refused(what) => refused = refused.or(Some(what)),
    };
    let poles = poles_of(job, circuit).map_err(&mut told).ok();
    let conductor = conductor_of(job, circuit).map_err(&mut told).ok();
    let asked = Asked::read(job, circuit)
        .map_err(|problems| told(AskProblem::Entries(problems)))
        .ok();
    if !problems.is_empty() {
        return Err(AskProblem::Entries(problems));
    }
    let (Some((breaker, poles)), Some(conductor), Some(asked)) = (poles, conductor, asked) else {
        // Without a problem of the entries something was refused; the circuit's own voltage stands in, unreachable.
        let otherwise = CircuitRefused::Circuit(CircuitRefusal::Volts { volts: 0.0 });
        return Err(AskProblem::Refused(refused.unwrap_or(otherwise)));
    };
    asked.judged(job, circuit, (&breaker, &poles), conductor)
}

/// A load in amperes.
struct AskedLoad<'a> {
    entry: &'a LoadEntry,
    amps: f64,
    planned: bool,
    stretch: usize,
}

/// A load as the circuit has it.
fn load_of(entry: &LoadEntry, amps: f64, planned: bool, stretch: usize) -> CircuitLoad {
    CircuitLoad {
        id: entry.id,
        takes: Takes::Amps(amps),
        kind: entry.kind,
        continuous: entry.continuous,
        planned,
        stretch,
    }
}

/// What is read of a circuit besides its breaker and its conductor.
struct Asked<'a> {
    receptacles: u32,
    outlets: u32,
    feeder_percent: f64,
    stretches: Vec<Stretch>,
    loads: Vec<AskedLoad<'a>>,
}

/// The voltage at which a load takes its watts.
fn volts_of(wiring: CircuitWiring, load: &LoadEntry) -> f64 {
    match (wiring, load.across) {
        (CircuitWiring::HotNeutral, _) | (CircuitWiring::Multiwire, Across::A | Across::B) => {
            LEG_VOLTS
        }
        (CircuitWiring::TwoHots, _) | (CircuitWiring::Multiwire, Across::Both) => ACROSS_VOLTS,
    }
}

impl<'a> Asked<'a> {
    fn read(job: &Job, circuit: &'a CircuitEntry) -> Result<Self, Vec<EntryProblem>> {
        let mut reader = Reader::default();
        let feeder_percent = feeder_percent(&mut reader, &job.panel.feeder_drop);
        reader.row(circuit.id);
        // Told already with the conductor.
        let receptacles = fields::OUTLETS
            .read(&circuit.receptacles)
            .map_or(0, |n| n as u32);
        let outlets = reader.count("outlets", &fields::OUTLETS, &circuit.outlets);
        let stretches = stretches(&mut reader, &circuit.stretches);
        let there = circuit.loads.len();
        let mut loads = Vec::new();
        for (at, entry) in load_list(circuit, true).enumerate() {
            reader.row(entry.id);
            let volts = volts_of(circuit.wiring, entry);
            let amps = reader.load_amps(entry, volts);
            let stretch = stretch_at(&circuit.stretches, entry.stretch);
            if stretch.is_none() && entry.stretch.is_some() {
                reader.missing("stretch");
            }
            loads.push(AskedLoad {
                entry,
                amps,
                planned: at >= there,
                stretch: stretch.unwrap_or(0),
            });
        }
        reader.finish(Self {
            receptacles,
            outlets,
            feeder_percent,
            stretches,
            loads,
        })
    }

    fn judged(
        &self,
        job: &Job,
        circuit: &CircuitEntry,
        (breaker, poles): (&Breaker, &[Pole]),
        conductor: CircuitConductor,
    ) -> Result<CircuitView, AskProblem<CircuitRefused>> {
        let mut unread = Vec::new();
        let mut open = Vec::new();
        let boxes = boxes(job, circuit, &mut unread, &mut open);
        let (neutral, neutral_after) = shared_neutral(job, circuit, &mut unread, &mut open);
        let multiwire = circuit.wiring == CircuitWiring::Multiwire;
        // From hot to hot one judgement is enough: that of the pole with more of others on it.
        let mut on_poles: Vec<(Option<Leg>, Beside)> = poles
            .iter()
            .map(|pole| {
                let leg = (circuit.wiring != CircuitWiring::TwoHots).then(|| pole.leg());
                (leg, Beside::read(job, circuit, pole))
            })
            .collect();
        if circuit.wiring == CircuitWiring::TwoHots {
            on_poles.order_by(|a, b| b.1.total_a().total_cmp(&a.1.total_a()));
            let missing = on_poles.iter().any(|(_, beside)| beside.open);
            on_poles.truncate(1);
            on_poles
                .iter_mut()
                .for_each(|(_, beside)| beside.open |= missing);
        }
        let run = (!self.stretches.is_empty()).then(|| self.run(job, circuit, &conductor, true));
        let drop = run.map(|run| voltage_drop(&run));
        let mut judged = Vec::new();
        for (leg, beside) in on_poles {
            let asked = Circuit {
                edition: job.code_edition,
                breaker_a: breaker.rating_a,
                volts: if leg.is_some() {
                    LEG_VOLTS
                } else {
                    ACROSS_VOLTS
                },
                full_rating: circuit.full_rating,
                purpose: circuit.purpose,
                two_hots: circuit.wiring != CircuitWiring::HotNeutral,
                receptacles: self.receptacles + beside.receptacles,
                outlets: self.outlets + beside.outlets,
                conductor: conductor.conductor,
                ambient: conductor.laid.ambient,
                carrying: conductor.bundle.carrying,
                terminals: circuit.laid.terminals,
                wire: resistance(circuit.laid.metal, TABLE_C),
                // The run of two hots and a neutral is another formula: its verdicts are added below.
                stretches_ft: if multiwire {
                    Vec::new()
                } else {
                    self.stretches.iter().map(|s| s.length_ft).collect()
                },
                feeder_percent: self.feeder_percent,
                loads: self.loads_on(circuit, leg),
                beside: beside.loads,
                boxes: boxes.clone(),
                neutral: neutral.clone(),
                neutral_after: neutral_after.clone(),
            };
            let mut answer =
                judge(&asked).map_err(|what| AskProblem::Refused(CircuitRefused::Circuit(what)))?;
            if beside.open {
                leave_open(&mut answer);
            }
            for problem in beside.unread {
                if !unread.contains(&problem) {
                    unread.push(problem);
                }
            }
            answer.verdicts.extend(open.iter().cloned());
            if let (true, Some(after)) = (multiwire, &drop) {
                let now = voltage_drop(&self.run(job, circuit, &conductor, false));
                add_drop(job, &mut answer, &now, after, leg);
            }
            // Stable: within one outcome the rules keep their order.
            answer.verdicts.order_by_key(|verdict| verdict.outcome);
            judged.push(LegJudged { leg, answer });
        }
        Ok(CircuitView {
            id: circuit.id,
            name: circuit.name.clone(),
            number: breaker.number(),
            breaker_a: breaker.rating_a,
            bundle: conductor.bundle,
            legs: judged,
            drop: drop.and_then(Result::ok),
            unread,
        })
    }

    /// The loads that a hot carries: its own, and those from leg to leg.
    fn loads_on(&self, circuit: &CircuitEntry, leg: Option<Leg>) -> Vec<CircuitLoad> {
        let multiwire = circuit.wiring == CircuitWiring::Multiwire;
        self.loads
            .iter()
            .filter(|load| {
                let both = load.entry.across == Across::Both;
                both || leg.is_none_or(|leg| is_on(load.entry, multiwire, leg))
            })
            .map(|load| load_of(load.entry, load.amps, load.planned, load.stretch))
            .collect()
    }

    fn run(
        &self,
        job: &Job,
        circuit: &CircuitEntry,
        conductor: &CircuitConductor,
        planned: bool,
    ) -> Run {
        let mut stretches = self.stretches.clone();
        for load in self.loads.iter().filter(|load| planned || !load.planned) {
            if let Some(stretch) = stretches.get_mut(load.stretch) {
                stretch.loads.push(DropLoad {
                    demand: Demand::Amps(load.amps),
                    across: match circuit.wiring {
                        CircuitWiring::Multiwire => load.entry.across,
                        CircuitWiring::HotNeutral | CircuitWiring::TwoHots => Across::A,
                    },
                });
            }
        }
        Run {
            edition: job.code_edition,
            system: match circuit.wiring {
                CircuitWiring::HotNeutral => System::TwoWire { volts: LEG_VOLTS },
                CircuitWiring::TwoHots => System::TwoWire {
                    volts: ACROSS_VOLTS,
                },
                CircuitWiring::Multiwire => System::Multiwire {
                    leg_volts: LEG_VOLTS,
                },
            },
            source_volts: None,
            source_ohm: 0.0,
            size: conductor.conductor.size,
            wire: resistance(circuit.laid.metal, TABLE_C),
            parallel: 1,
            stretches,
            feeder_percent: self.feeder_percent,
        }
    }
}

/// A verdict that can't be given.
fn not_judged(job: &Job, check: Check, rule: Rule, why_not: Option<NotJudged>) -> Verdict {
    Verdict {
        check,
        section: rule.section(job.code_edition),
        outcome: Outcome::NotJudged,
        now: None,
        after: None,
        why_not,
    }
}

/// The boxes on the way; one that can't be read leaves its verdict open.
fn boxes(
    job: &Job,
    circuit: &CircuitEntry,
    unread: &mut Vec<EntryProblem>,
    open: &mut Vec<Verdict>,
) -> Vec<CircuitBox> {
    let mut boxes = Vec::new();
    for entry in circuit.boxes.iter().filter_map(|&id| job.box_entry(id)) {
        match box_ask(entry) {
            Ok(ask) => boxes.push(CircuitBox {
                id: entry.id,
                vessel: ask.vessel,
                contents: ask.contents,
            }),
            Err(problems) => {
                unread.extend(problems);
                let check = Check::BoxFill { id: entry.id };
                open.push(not_judged(job, check, Rule::BoxFill, None));
            }
        }
    }
    boxes
}

/// The neutral as it is, and with what is planned, where more than one hot returns on it.
fn shared_neutral(
    job: &Job,
    circuit: &CircuitEntry,
    unread: &mut Vec<EntryProblem>,
    open: &mut Vec<Verdict>,
) -> (Option<Neutral>, Option<Neutral>) {
    let circuits = match circuit.wiring {
        CircuitWiring::TwoHots => return (None, None),
        CircuitWiring::HotNeutral | CircuitWiring::Multiwire => sharing(job, circuit),
    };
    if circuits.len() < 2 && circuit.wiring == CircuitWiring::HotNeutral {
        return (None, None);
    }
    let planned = circuits
        .iter()
        .any(|&id| job.circuit(id).is_some_and(|c| !c.planned.is_empty()));
    // What is planned can be read where all of it can.
    match neutral(job, &circuits, true) {
        Ok(all) if planned => (neutral(job, &circuits, false).ok(), Some(all)),
        Ok(all) => (Some(all), None),
        Err(problem) => {
            if let AskProblem::Entries(problems) = problem {
                unread.extend(problems);
            }
            open.push(not_judged(
                job,
                Check::NeutralLoad,
                Rule::BranchConductors,
                None,
            ));
            (None, None)
        }
    }
}
