//! How the quick sums of the wiring and of closing up are kept into a job, with row ids of the job's own.

use super::{AmpacitySum, DemandUnit, DropSum, DropSystem};
use crate::job::{
    BoxEntry, CircuitEntry, CircuitWiring, Job, LaidEntry, LoadEntry, LoadUnit, Opening,
    OpeningKind, Rest, Room, StretchEntry, Typed,
};

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
        let id = job.fresh_id();
        let laid = self.laid.kept(job);
        job.circuits.push(CircuitEntry {
            laid,
            ..CircuitEntry::new(id, name, job.units)
        });
        id
    }
}

impl DropSum {
    /// Puts the run of the quick sum into the job as that of a new circuit; returns its id, or nothing for a system
    /// or a load that no circuit has: three phases, ohms. A two-wire run is taken as one from hot to neutral unless
    /// its voltage says 208 or more.
    pub fn keep(&self, job: &mut Job, name: impl Into<String>) -> Option<u32> {
        let volts = crate::job::fields::VOLTS.read(&self.volts).ok();
        let wiring = match self.system {
            DropSystem::ThreePhase => return None,
            DropSystem::Multiwire => CircuitWiring::Multiwire,
            DropSystem::TwoWire if volts.is_some_and(|volts| volts >= 208.0) => {
                CircuitWiring::TwoHots
            }
            DropSystem::TwoWire => CircuitWiring::HotNeutral,
        };
        if self.loads.iter().any(|load| load.unit == DemandUnit::Ohms) {
            return None;
        }
        let id = job.fresh_id();
        let mut circuit = CircuitEntry::new(id, name, job.units);
        circuit.wiring = wiring;
        circuit.laid.size = self.size;
        circuit.laid.metal = self.metal;
        // The old id of each stretch beside its new one.
        let ids: Vec<(u32, u32)> = self
            .stretches
            .iter()
            .map(|stretch| (stretch.id, job.fresh_id()))
            .collect();
        circuit.stretches = self
            .stretches
            .iter()
            .zip(&ids)
            .map(|(stretch, (_, id))| StretchEntry {
                id: *id,
                ..stretch.clone()
            })
            .collect();
        circuit.loads = self
            .loads
            .iter()
            .map(|load| LoadEntry {
                id: job.fresh_id(),
                name: load.name.clone(),
                amount: load.amount.clone(),
                unit: if load.unit == DemandUnit::Watts {
                    LoadUnit::Watts
                } else {
                    LoadUnit::Amps
                },
                across: load.across,
                stretch: load
                    .stretch
                    .and_then(|old| ids.iter().find(|(of, _)| *of == old))
                    .map(|(_, new)| *new),
                ..LoadEntry::default()
            })
            .collect();
        job.circuits.push(circuit);
        Some(id)
    }
}

impl Opening {
    /// A doorway with nothing entered.
    pub fn new(id: u32) -> Self {
        Self {
            id,
            name: String::new(),
            kind: OpeningKind::Doorway,
            wall: 0,
            from_start: Typed::default(),
            width: Typed::default(),
            beyond: Default::default(),
            beyond_reading: Typed::default(),
            beyond_spot: None,
            beyond_layers: Vec::new(),
            pour_at_most: Typed::default(),
            ramp_slope: Typed::default(),
            ramp_length: Typed::default(),
            rest: Rest::new(),
        }
    }
}

impl Job {
    /// Takes from a room of the quick sums its outline, doorways and walls into one of this job's, and the part that `take`
    /// names; rows get ids of this job.
    pub fn take_closing(&mut self, to: u32, from: &Room, take: &dyn Fn(&mut Room, &Room)) {
        let Some(at) = self.rooms.iter().position(|room| room.id == to) else {
            return;
        };
        let Some(mut room) = self.rooms.get(at).cloned() else {
            return;
        };
        room.outline = from.outline.clone();
        room.openings = from.openings.clone();
        room.walls = from.walls.clone();
        take(&mut room, from);
        let openings = room.openings.iter_mut().map(|row| &mut row.id);
        let windows = room.walls.windows.iter_mut().map(|row| &mut row.id);
        let built_ins = room.walls.built_ins.iter_mut().map(|row| &mut row.id);
        let obstacles = room.tile.obstacles.iter_mut().map(|row| &mut row.id);
        let patches = room.board.patches.iter_mut().map(|row| &mut row.id);
        for id in openings
            .chain(windows)
            .chain(built_ins)
            .chain(obstacles)
            .chain(patches)
        {
            *id = self.fresh_id();
        }
        if let Some(place) = self.rooms.get_mut(at) {
            *place = room;
        }
    }
}
