//! New rows of the wiring, with the usual entries written in them, and rows found by their ids.

use crate::job::{
    BoxCableEntry, BoxEntry, BreakerEntry, CableKind, CircuitEntry, DeviceEntry, GroupingKind, Job,
    LaidEntry, LoadEntry, PanelEntry, Rest, Typed, Units, fields,
};
use crate::wiring::ampacity::Terminals;
use crate::wiring::conductor::{Covering, Metal, Size};

impl LaidEntry {
    /// Copper NM-B cable of no size yet, by itself, at 86 F or 30 C, the temperature of the table (310.16), terminals
    /// not known.
    pub fn usual(units: Units) -> Self {
        let degrees = match units {
            Units::FeetInches => "86",
            Units::Metric => "30",
        };
        Self {
            size: None,
            metal: Metal::Copper,
            covering: Covering::NmB,
            terminals: Terminals::NotKnown,
            ambient: fields::AMBIENT.keep(degrees, units),
            cable: CableKind::TwoWire,
            beside: Vec::new(),
            grouping: GroupingKind::Apart,
            grouped_length: Typed::default(),
            rest: Rest::new(),
        }
    }
}

impl Default for LaidEntry {
    fn default() -> Self {
        Self::usual(Units::FeetInches)
    }
}

impl CircuitEntry {
    /// A circuit with nothing entered but how its cable usually lies.
    pub fn new(id: u32, name: impl Into<String>, units: Units) -> Self {
        Self {
            id,
            name: name.into(),
            breaker: None,
            wiring: Default::default(),
            full_rating: false,
            purpose: Default::default(),
            receptacles: Typed::default(),
            outlets: Typed::default(),
            laid: LaidEntry::usual(units),
            stretches: Vec::new(),
            loads: Vec::new(),
            planned: Vec::new(),
            neutral_with: Vec::new(),
            neutral_with_hots: None,
            neutral_pigtailed: None,
            boxes: Vec::new(),
            rest: Rest::new(),
        }
    }

    /// The load with this id, there or planned.
    pub fn load(&self, id: u32) -> Option<&LoadEntry> {
        self.loads
            .iter()
            .chain(&self.planned)
            .find(|load| load.id == id)
    }
}

impl BoxEntry {
    /// A box with nothing in it.
    pub fn new(id: u32, name: impl Into<String>) -> Self {
        Self {
            id,
            name: name.into(),
            ..Self::default()
        }
    }
}

impl BoxCableEntry {
    /// A two-wire cable with ground.
    pub fn new(id: u32, size: Option<Size>) -> Self {
        Self {
            id,
            size,
            insulated: Typed::plain("2"),
            ..Self::default()
        }
    }
}

impl DeviceEntry {
    /// A device one gang wide.
    pub fn new(id: u32, size: Option<Size>) -> Self {
        Self {
            id,
            size,
            gangs: Typed::plain("1"),
            ..Self::default()
        }
    }
}

impl PanelEntry {
    /// The breaker with this id.
    pub fn breaker(&self, id: u32) -> Option<&BreakerEntry> {
        self.breakers.iter().find(|breaker| breaker.id == id)
    }

    /// The breaker with this id, to be changed.
    pub fn breaker_mut(&mut self, id: u32) -> Option<&mut BreakerEntry> {
        self.breakers.iter_mut().find(|breaker| breaker.id == id)
    }

    /// Whether nothing was entered.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

impl Job {
    /// The circuit with this id.
    pub fn circuit(&self, id: u32) -> Option<&CircuitEntry> {
        self.circuits.iter().find(|circuit| circuit.id == id)
    }

    /// The circuit with this id, to be changed.
    pub fn circuit_mut(&mut self, id: u32) -> Option<&mut CircuitEntry> {
        self.circuits.iter_mut().find(|circuit| circuit.id == id)
    }

    /// The box with this id.
    pub fn box_entry(&self, id: u32) -> Option<&BoxEntry> {
        self.boxes.iter().find(|found| found.id == id)
    }

    /// The box with this id, to be changed.
    pub fn box_entry_mut(&mut self, id: u32) -> Option<&mut BoxEntry> {
        self.boxes.iter_mut().find(|found| found.id == id)
    }
}
