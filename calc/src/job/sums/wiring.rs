//! What was typed into the quick sums of the wiring.

use crate::job::{LaidEntry, Rest, StretchEntry, Typed, Units, fields};
use crate::saved;
use crate::saved::codes;
use crate::wiring::ampacity::Feeds;
use crate::wiring::cable_run::{LightAt, NeutralNeed, PowerAt, Way};
use crate::wiring::conductor::{Construction, Metal, Size};
use crate::wiring::tables::Conduit;
use crate::wiring::voltage_drop::Across;

/// What a conductor may carry, or the conductor for a load.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AmpacitySum {
    /// Which one is wanted.
    pub want: AmpacityWant,
    /// The conductor and how it lies; its size counts only where the ampacity is wanted.
    pub laid: LaidEntry,
    /// What the circuit feeds.
    pub feeds: Feeds,
    /// Conductor wanted: the load expected for 3 hours or more, amperes; blank: none.
    pub continuous: Typed,
    /// Conductor wanted: the rest of the load, amperes; blank: none.
    pub other: Typed,
    /// Conductor wanted: the breaker that is there, amperes; blank: the smallest one for the load.
    pub breaker: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(AmpacitySum {
    want: or_default,
    laid: or_default,
    feeds: or_default,
    continuous: or_default,
    other: or_default,
    breaker: or_default,
});

/// Which way ampacity is asked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum AmpacityWant {
    /// What a conductor may carry.
    #[default]
    Ampacity,
    /// The smallest conductor for a load.
    Conductor,
}

codes!(AmpacityWant {
    Ampacity = "ampacity",
    Conductor = "conductor",
});

/// A run and its voltage drop.
#[derive(Clone, Debug, PartialEq)]
pub struct DropSum {
    /// What is wanted.
    pub want: DropWant,
    /// The system.
    pub system: DropSystem,
    /// Its nominal voltage: between two wires, from leg to neutral, from line to line.
    pub volts: Typed,
    /// The voltage at the start, where it was measured; blank: the nominal one.
    pub source_volts: Typed,
    /// The size of the conductors; not asked for where the size is wanted.
    pub size: Option<Size>,
    /// Their metal.
    pub metal: Metal,
    /// How the impedance is found.
    pub method: DropMethod,
    /// Resistance: solid or stranded; nothing: as cable of that size usually is.
    pub construction: Option<Construction>,
    /// Impedance: what the conductors run in.
    pub conduit: Conduit,
    /// Impedance: the power factor.
    pub power_factor: Typed,
    /// The temperature of the conductors; blank: 75 C, that of the tables.
    pub conductor_temperature: Typed,
    /// Conductors in parallel for each leg; blank: one.
    pub parallel: Typed,
    /// What the feeder has lost already, percent; blank: none.
    pub feeder_drop: Typed,
    /// The most that may be lost, percent, where a length or a size is wanted.
    pub limit: Typed,
    /// The stretches, from the source outwards; where a size is wanted, all of them make the run.
    pub stretches: Vec<StretchEntry>,
    /// The loads; where a length or a size is wanted, all of them count at the end.
    pub loads: Vec<DropLoadEntry>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(DropSum {
    want: or_default,
    system: or_default,
    volts: or_default,
    source_volts: or_default,
    size: or_default,
    metal: or_default,
    method: or_default,
    construction: or_default,
    conduit: or_default,
    power_factor: or_default,
    conductor_temperature: or_default,
    parallel: or_default,
    feeder_drop: or_default,
    limit: or_default,
    stretches: or_default,
    loads: or_default,
});

impl Default for DropSum {
    /// A 120 V run of copper, one stretch to one load, held to the 3 % that is recommended (210.19(A), note).
    fn default() -> Self {
        Self {
            want: DropWant::Drop,
            system: DropSystem::TwoWire,
            volts: Typed::plain("120"),
            source_volts: Typed::default(),
            size: None,
            metal: Metal::Copper,
            method: DropMethod::Resistance,
            construction: None,
            conduit: Conduit::default(),
            power_factor: Typed::plain("1"),
            conductor_temperature: Typed::default(),
            parallel: Typed::plain("1"),
            feeder_drop: Typed::default(),
            limit: Typed::plain("3"),
            stretches: vec![StretchEntry {
                id: 1,
                ..StretchEntry::default()
            }],
            loads: vec![DropLoadEntry {
                id: 2,
                ..DropLoadEntry::default()
            }],
            rest: Rest::new(),
        }
    }
}

/// What is wanted of a run.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DropWant {
    /// The drop at each load.
    #[default]
    Drop,
    /// The longest run that keeps the limit.
    Length,
    /// The smallest size that keeps the limit.
    Size,
}

codes!(DropWant {
    Drop = "drop",
    Length = "length",
    Size = "size",
});

/// The system of a run.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DropSystem {
    /// Single phase, two wires.
    #[default]
    TwoWire,
    /// Single phase, two legs and their neutral.
    Multiwire,
    /// Three phase, balanced.
    ThreePhase,
}

codes!(DropSystem {
    TwoWire = "two_wire",
    Multiwire = "multiwire",
    ThreePhase = "three_phase",
});

/// How the impedance of a run is found.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DropMethod {
    /// Direct-current resistance.
    #[default]
    Resistance,
    /// Impedance at a power factor.
    Impedance,
    /// The effective impedance as printed, for a power factor of 0.85.
    Printed085,
}

codes!(DropMethod {
    Resistance = "resistance",
    Impedance = "impedance",
    Printed085 = "printed_085",
});

/// A load on the run of the quick sum.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DropLoadEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// What it takes.
    pub amount: Typed,
    /// What the amount is in.
    pub unit: DemandUnit,
    /// Between which conductors of a multiwire run.
    pub across: Across,
    /// The stretch at whose end it is; nothing: at the far end.
    pub stretch: Option<u32>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(DropLoadEntry {
    id: needed,
    name: or_default,
    amount: or_default,
    unit: or_default,
    across: or_default,
    stretch: or_default,
});

/// What the demand of a load is in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DemandUnit {
    /// Amperes.
    #[default]
    Amps,
    /// Watts.
    Watts,
    /// Ohms.
    Ohms,
}

codes!(DemandUnit {
    Amps = "a",
    Watts = "w",
    Ohms = "ohm",
});

/// A drop that was measured.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredSum {
    /// At the panel with the load off, volts; blank with `supply_loaded`: it was not read.
    pub supply_idle: Typed,
    /// At the panel with the load on, volts.
    pub supply_loaded: Typed,
    /// At the load with the load off, volts.
    pub load_idle: Typed,
    /// At the load with the load on, volts.
    pub load_loaded: Typed,
    /// The current of the load, amperes.
    pub current: Typed,
    /// The last digit that the meter shows, volts.
    pub meter_step: Typed,
    /// The run, one way; blank: not known. A bare number is feet or metres.
    pub length: Typed,
    /// The size of its conductors; nothing: not known.
    pub size: Option<Size>,
    /// Their metal.
    pub metal: Metal,
    /// Their temperature; blank: 75 C, that of the tables.
    pub conductor_temperature: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(MeasuredSum {
    supply_idle: or_default,
    supply_loaded: or_default,
    load_idle: or_default,
    load_loaded: or_default,
    current: or_default,
    meter_step: or_default,
    length: or_default,
    size: or_default,
    metal: or_default,
    conductor_temperature: or_default,
});

impl Default for MeasuredSum {
    /// Nothing measured yet; a meter that shows tenths of a volt.
    fn default() -> Self {
        Self {
            supply_idle: Typed::default(),
            supply_loaded: Typed::default(),
            load_idle: Typed::default(),
            load_loaded: Typed::default(),
            current: Typed::default(),
            meter_step: Typed::plain("0.1"),
            length: Typed::default(),
            size: None,
            metal: Metal::Copper,
            conductor_temperature: Typed::default(),
            rest: Rest::new(),
        }
    }
}

/// A run of cable through the building.
#[derive(Clone, Debug, PartialEq)]
pub struct CableSum {
    /// The pieces from box to box.
    pub pieces: Vec<PieceEntry>,
    /// Added to the path, percent.
    pub allowance_percent: Typed,
    /// Cable on a roll as sold; a bare number is feet or metres.
    pub roll: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(CableSum {
    pieces: or_default,
    allowance_percent: or_default,
    roll: or_default,
});

impl Default for CableSum {
    /// One piece without a path; 10 % more than the path and rolls of 250 ft (source: common practice).
    fn default() -> Self {
        Self {
            pieces: vec![PieceEntry::usual(1)],
            allowance_percent: Typed::plain("10"),
            roll: Typed::new("250", "ft"),
            rest: Rest::new(),
        }
    }
}

/// A piece of cable, uncut from end to end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PieceEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// Where it starts.
    pub from: EndKind,
    /// Cable kept there.
    pub from_free: Typed,
    /// Where it ends.
    pub to: EndKind,
    /// Cable kept there.
    pub to_free: Typed,
    /// Its path.
    pub parts: Vec<PartEntry>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PieceEntry {
    id: needed,
    name: or_default,
    from: or_default,
    from_free: or_default,
    to: or_default,
    to_free: or_default,
    parts: or_default,
});

impl PieceEntry {
    /// A piece from box to box without a path, 8 in kept at each end (6 in free and what is in the clamp; source:
    /// common practice).
    pub fn usual(id: u32) -> Self {
        let free = fields::FREE_CABLE.keep("8\"", Units::FeetInches);
        Self {
            id,
            from_free: free.clone(),
            to_free: free,
            ..Self::default()
        }
    }
}

/// Where a piece of cable ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum EndKind {
    /// A box that clamps the cable.
    #[default]
    Box,
    /// A single-gang nonmetallic box without clamps.
    ClamplessBox,
    /// The panel.
    Panel,
}

codes!(EndKind {
    Box = "box",
    ClamplessBox = "clampless_box",
    Panel = "panel",
});

/// A part of the path.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PartEntry {
    /// Row id.
    pub id: u32,
    /// Which way.
    pub way: Way,
    /// How far.
    pub length: Typed,
    /// How the cable is held.
    pub held: HeldBy,
    /// To the nearest edge of the framing; blank: not known.
    pub edge: Typed,
    /// Whether it is in an accessible attic.
    pub attic: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PartEntry {
    id: needed,
    way: or_default,
    length: or_default,
    held: or_default,
    edge: or_default,
    attic: or_default,
});

/// How a cable is held.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum HeldBy {
    /// Stapled along the framing.
    #[default]
    Stapled,
    /// Through bored holes.
    Bored,
    /// Fished through a finished wall or ceiling.
    Fished,
}

codes!(HeldBy {
    Stapled = "stapled",
    Bored = "bored",
    Fished = "fished",
});

/// A light and its switches.
#[derive(Clone, Debug, PartialEq)]
pub struct SwitchSum {
    /// Switches in the chain.
    pub switches: Typed,
    /// Where the power comes in.
    pub power: PowerAt,
    /// Where the light is connected.
    pub light: LightAt,
    /// Whether a neutral is needed at the switches.
    pub neutral: NeutralNeed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(SwitchSum {
    switches: or_default,
    power: or_default,
    light: or_default,
    neutral: or_default,
});

impl Default for SwitchSum {
    /// Two three-way switches, power at the first, light at the last.
    fn default() -> Self {
        Self {
            switches: Typed::plain("2"),
            power: PowerAt::default(),
            light: LightAt::default(),
            neutral: NeutralNeed::default(),
            rest: Rest::new(),
        }
    }
}
