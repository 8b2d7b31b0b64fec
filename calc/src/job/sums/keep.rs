//! How the quick sums of the wiring are kept into a job, with row ids of the job's own.

use super::{AmpacitySum, AmpacityWant, CableSum, DemandUnit, DropSum, DropSystem, DropWant};
use crate::job::questions::wiring::cable::cable_run_of;
use crate::job::questions::wiring::drop::smallest_for_drop_of;
use crate::job::questions::wiring::laid::smallest_of;
use crate::job::{
    BoxEntry, CircuitEntry, CircuitWiring, CodeEdition, Job, LaidEntry, LoadEntry, LoadUnit,
    StretchEntry, Typed, Units, fields,
};
use crate::quantity::{Length, fixed};

impl BoxEntry {
    /// Puts the box of the quick sum into the job under a name; returns its id.
    pub fn keep(&self, job: &mut Job, name: impl Into<String>) -> u32 {
        let mut kept = self.clone();
        kept.id = job.fresh_id();
        kept.name = name.into();
        let rings = kept.rings.iter_mut().map(|row| &mut row.id);
        let barriers = kept.barriers.iter_mut().map(|row| &mut row.id);
        let cables = kept.cables.iter_mut().map(|row| &mut row.id);
        let conductors = kept.conductors.iter_mut().map(|row| &mut row.id);
        let devices = kept.devices.iter_mut().map(|row| &mut row.id);
        let blocks = kept.terminal_blocks.iter_mut().map(|row| &mut row.id);
        for id in rings
            .chain(barriers)
            .chain(cables)
            .chain(conductors)
            .chain(devices)
            .chain(blocks)
        {
            *id = job.fresh_id();
        }
        let id = kept.id;
        job.boxes.push(kept);
        id
    }
}

impl LaidEntry {
    /// The same with row ids of the job.
    fn kept(&self, job: &mut Job) -> Self {
        let mut kept = self.clone();
        for row in &mut kept.beside {
            row.id = job.fresh_id();
        }
        kept
    }
}

impl AmpacitySum {
    /// Puts the conductor of the quick sum into the job as that of a new circuit; returns its id. A load has no
    /// place there, for in a job it follows from the circuit's own loads.
    pub fn keep(&self, job: &mut Job, name: impl Into<String>) -> u32 {
        let id = new_circuit(job, name.into());
        self.keep_in(job, id);
        id
    }

    /// Puts the conductor of the quick sum, and how it lies, in the place of a circuit's; false where the job has no
    /// such circuit. Where the smallest conductor was asked for, it is the one that was found. Without a size the
    /// circuit's own stays.
    pub fn keep_in(&self, job: &mut Job, circuit: u32) -> bool {
        let mut laid = self.laid.kept(job);
        if self.want == AmpacityWant::Conductor {
            let found = smallest_of(self, job.code_edition);
            laid.size = found.ok().map(|found| found.smallest.size);
        }
        let Some(circuit) = job.circuit_mut(circuit) else {
            return false;
        };
        laid.size = laid.size.or(circuit.laid.size);
        circuit.laid = laid;
        true
    }
}

impl DropSum {
    /// Puts the run of the quick sum into the job as that of a new circuit; returns its id, or nothing for a system
    /// or a load that no circuit has: three phases, ohms. A two-wire run is taken as one from hot to neutral unless
    /// its voltage says 208 or more.
    pub fn keep(&self, job: &mut Job, name: impl Into<String>) -> Option<u32> {
        let wiring = self.circuit_wiring()?;
        let id = new_circuit(job, name.into());
        if let Some(circuit) = job.circuit_mut(id) {
            circuit.wiring = wiring;
        }
        self.keep_in(job, id).then_some(id)
    }

    /// Between which conductors a circuit of this run goes; nothing for a system or a load that no circuit has.
    pub fn circuit_wiring(&self) -> Option<CircuitWiring> {
        let volts = fields::VOLTS.read(&self.volts).ok();
        if self.loads.iter().any(|load| load.unit == DemandUnit::Ohms) {
            return None;
        }
        match self.system {
            DropSystem::ThreePhase => None,
            DropSystem::Multiwire => Some(CircuitWiring::Multiwire),
            DropSystem::TwoWire if volts.is_some_and(|volts| volts >= 208.0) => {
                Some(CircuitWiring::TwoHots)
            }
            DropSystem::TwoWire => Some(CircuitWiring::HotNeutral),
        }
    }

    /// Puts the run and its wire in the place of a circuit's; false where the job has no such circuit, or for a system
    /// or a load that no circuit has. Loads of the circuit's own stay, at the far end of the new run; those of the sum
    /// are taken where it has none. Where the smallest wire was asked for, it is the one that was found; where the
    /// longest run was, there is no run to keep and the circuit's own stays.
    pub fn keep_in(&self, job: &mut Job, circuit: u32) -> bool {
        if self.circuit_wiring().is_none() || job.circuit(circuit).is_none() {
            return false;
        }
        let size = match self.want {
            DropWant::Drop | DropWant::Length => self.size,
            DropWant::Size => smallest_for_drop_of(self, job.code_edition)
                .ok()
                .map(|found| found.size),
        };
        let run: &[StretchEntry] = match self.want {
            DropWant::Drop | DropWant::Size => &self.stretches,
            DropWant::Length => &[],
        };
        // The old id of each stretch beside its new one.
        let ids: Vec<(u32, u32)> = run
            .iter()
            .map(|stretch| (stretch.id, job.fresh_id()))
            .collect();
        let stretches = run.iter().zip(&ids).map(|(stretch, (_, id))| StretchEntry {
            id: *id,
            ..stretch.clone()
        });
        let stretches: Vec<StretchEntry> = stretches.collect();
        let at = |old: u32| ids.iter().find(|(of, _)| *of == old).map(|(_, new)| *new);
        let mut loads = Vec::with_capacity(self.loads.len());
        for load in &self.loads {
            loads.push(LoadEntry {
                id: job.fresh_id(),
                name: load.name.clone(),
                amount: load.amount.clone(),
                unit: if load.unit == DemandUnit::Watts {
                    LoadUnit::Watts
                } else {
                    LoadUnit::Amps
                },
                across: load.across,
                // Where a size was asked for, all of them count at the end.
                stretch: load
                    .stretch
                    .filter(|_| self.want == DropWant::Drop)
                    .and_then(at),
                ..LoadEntry::default()
            });
        }
        let Some(circuit) = job.circuit_mut(circuit) else {
            return false;
        };
        if let Some(size) = size {
            circuit.laid.size = Some(size);
            circuit.laid.metal = self.metal;
        }
        if !stretches.is_empty() {
            circuit.take_run(stretches);
        }
        if circuit.loads.is_empty() {
            circuit.loads = loads;
        }
        true
    }
}

impl CableSum {
    /// Puts the way of the cable into the job as the run of a new circuit; returns its id, or nothing where the sum
    /// has no answer.
    pub fn keep(&self, job: &mut Job, name: impl Into<String>) -> Option<u32> {
        self.run(job.code_edition, job.units)?;
        let id = new_circuit(job, name.into());
        self.keep_in(job, id).then_some(id)
    }

    /// Puts the way of the cable in the place of a circuit's run, a stretch for each piece; false where the job has no
    /// such circuit or the sum no answer. A stretch is as long as the path of its piece: what is kept at its ends and
    /// the allowance are cable to buy, not wire that the current goes through twice.
    pub fn keep_in(&self, job: &mut Job, circuit: u32) -> bool {
        let Some(lengths) = self.run(job.code_edition, job.units) else {
            return false;
        };
        if job.circuit(circuit).is_none() {
            return false;
        }
        let mut stretches = Vec::with_capacity(lengths.len());
        for (piece, length) in self.pieces.iter().zip(lengths) {
            stretches.push(StretchEntry {
                id: job.fresh_id(),
                name: piece.name.clone(),
                length,
                ..StretchEntry::default()
            });
        }
        if let Some(circuit) = job.circuit_mut(circuit) {
            circuit.take_run(stretches);
        }
        true
    }

    /// The path of each piece, as it is typed; nothing where the sum has no answer.
    fn run(&self, edition: CodeEdition, units: Units) -> Option<Vec<Typed>> {
        let found = cable_run_of(self, edition).ok()?;
        let lengths = found.pieces.iter().map(|piece| {
            let length = match units {
                Units::FeetInches => piece.path_ft,
                Units::Metric => Length::from_feet(piece.path_ft).m(),
            };
            fields::RUN.keep(fixed(length, 3), units)
        });
        Some(lengths.collect())
    }
}

impl CircuitEntry {
    /// Takes another run. What was at the end of a stretch of the one before is at the far end now.
    fn take_run(&mut self, stretches: Vec<StretchEntry>) {
        self.stretches = stretches;
        for load in self.loads.iter_mut().chain(&mut self.planned) {
            load.stretch = None;
        }
    }
}

/// A new circuit with nothing entered but how its cable usually lies; its id.
fn new_circuit(job: &mut Job, name: String) -> u32 {
    let id = job.fresh_id();
    let circuit = CircuitEntry::new(id, name, job.units);
    job.circuits.push(circuit);
    id
}
