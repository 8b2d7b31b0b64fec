//! The wiring of a job as it is saved: the panel, its circuits, and the boxes on the way.
//!
//! What has a name in [`wiring`](crate::wiring) is saved by the code of that name ([`codes`]).

use super::{Rest, Typed};
use crate::saved;
use crate::wiring::ampacity::Terminals;
use crate::wiring::circuit::{LoadKind, Purpose};
use crate::wiring::conductor::{Covering, Metal, Size};
use crate::wiring::panel::{Bars, BreakerForm, Confirmed, FedBy, Mounting, Protection};
use crate::wiring::tables::{BoxFamily, VoltagePlace};
use crate::wiring::voltage_drop::Across;

mod choices;
pub mod codes;

pub use choices::{
    BarrierKind, BoxBy, CableGround, CableKind, CircuitWiring, ConductorUse, GroupingKind,
    LoadUnit, MainDisconnect, TandemRule,
};

/// The panel and what was measured at it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PanelEntry {
    /// The user's name for it.
    pub name: String,
    /// How many spaces it has; 0: not counted yet.
    pub spaces: u32,
    /// Its rating, amperes; blank: not known.
    pub rating: Typed,
    /// How it hangs.
    pub mounting: Mounting,
    /// Main panel or subpanel: what feeds it.
    pub fed_by: FedBy,
    /// What feeds it, in the user's words ("main panel in the garage").
    pub fed_from: String,
    /// What protects its feeder at the other end, amperes; blank: not known.
    pub feeder_device: Typed,
    /// What the feeder loses at its load, percent; blank: none is counted.
    pub feeder_drop: Typed,
    /// Whether there is a main disconnect in it.
    pub main: MainDisconnect,
    /// The rating of the main breaker, amperes.
    pub main_rating: Typed,
    /// Its neutral and ground bars.
    pub bars: Bars,
    /// The most circuits that its label allows; blank: not known.
    pub most_circuits: Typed,
    /// Where tandem breakers may go.
    pub tandems: TandemRule,
    /// The spaces that take tandem breakers, where the label lists them.
    pub tandem_spaces: Vec<u32>,
    /// Its breakers.
    pub breakers: Vec<BreakerEntry>,
    /// The voltages that were measured.
    pub supply: SupplyEntry,
    /// Notes in the user's words.
    pub notes: String,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PanelEntry {
    name: or_default,
    spaces: or_default,
    rating: or_default,
    mounting: or_default,
    fed_by: or_default,
    fed_from: or_default,
    feeder_device: or_default,
    feeder_drop: or_default,
    main: or_default,
    main_rating: or_default,
    bars: or_default,
    most_circuits: or_default,
    tandems: or_default,
    tandem_spaces: or_default,
    breakers: or_default,
    supply: or_default,
    notes: or_default,
});

/// A breaker in the panel.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BreakerEntry {
    /// Row id.
    pub id: u32,
    /// The space it is in, the lower number for two poles; 0: none yet.
    pub space: u32,
    /// One pole, two poles, or half of a tandem.
    pub form: BreakerForm,
    /// Its rating, amperes.
    pub rating: Typed,
    /// What it does besides opening on overcurrent.
    pub protection: Protection,
    /// The breaker that a listed handle tie joins it to.
    pub tied_to: Option<u32>,
    /// What the directory says.
    pub label: String,
    /// How it was confirmed what it feeds.
    pub confirmed: Confirmed,
    /// What was found to be on it, in the user's words.
    pub found: String,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BreakerEntry {
    id: needed,
    space: or_default,
    form: or_default,
    rating: or_default,
    protection: or_default,
    tied_to: or_default,
    label: or_default,
    confirmed: or_default,
    found: or_default,
});

/// The supply as measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SupplyEntry {
    /// Where it was measured.
    pub place: VoltagePlace,
    /// With little or no load.
    pub idle: SupplyReadingsEntry,
    /// With a large 120 V load on one leg; blank: that was not done.
    pub loaded: SupplyReadingsEntry,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(SupplyEntry {
    place: or_default,
    idle: or_default,
    loaded: or_default,
});

/// Voltages at one moment, volts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SupplyReadingsEntry {
    /// Leg to leg.
    pub across: Typed,
    /// Leg A to neutral.
    pub a_neutral: Typed,
    /// Leg B to neutral.
    pub b_neutral: Typed,
    /// Leg A to ground; may be blank.
    pub a_ground: Typed,
    /// Leg B to ground; may be blank.
    pub b_ground: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(SupplyReadingsEntry {
    across: or_default,
    a_neutral: or_default,
    b_neutral: or_default,
    a_ground: or_default,
    b_ground: or_default,
});

/// A conductor and how it lies: what its ampacity is asked of.
#[derive(Clone, Debug, PartialEq)]
pub struct LaidEntry {
    /// Its size; nothing: not chosen yet.
    pub size: Option<Size>,
    /// Its metal.
    pub metal: Metal,
    /// The kind of cable or insulation.
    pub covering: Covering,
    /// What its terminals are rated for.
    pub terminals: Terminals,
    /// The temperature of the air round it.
    pub ambient: Typed,
    /// What the conductors of its own cable are for.
    pub cable: CableKind,
    /// The cables that it lies with, its own not among them.
    pub beside: Vec<BesideEntry>,
    /// How it lies with them.
    pub grouping: GroupingKind,
    /// How far it lies so: of a nipple or a bundle.
    pub grouped_length: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(LaidEntry {
    size: or_default,
    metal: or_default,
    covering: or_default,
    terminals: or_default,
    ambient: or_default,
    cable: or_default,
    beside: or_default,
    grouping: or_default,
    grouped_length: or_default,
});

/// Cables of one kind beside a circuit's own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BesideEntry {
    /// Row id.
    pub id: u32,
    /// What the conductors of one such cable are for.
    pub cable: CableKind,
    /// How many of these cables.
    pub count: Typed,
    /// Spare conductors in each; blank: none.
    pub spares: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BesideEntry {
    id: needed,
    cable: or_default,
    count: or_default,
    spares: or_default,
});

/// A circuit.
#[derive(Clone, Debug, PartialEq)]
pub struct CircuitEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// The breaker it is on.
    pub breaker: Option<u32>,
    /// Between which conductors it runs.
    pub wiring: CircuitWiring,
    /// Whether breaker and panel are listed to carry the whole rating continuously.
    pub full_rating: bool,
    /// What it is for.
    pub purpose: Purpose,
    /// Receptacles on it, the planned ones among them.
    pub receptacles: Typed,
    /// Outlets of any kind on it, the planned ones among them.
    pub outlets: Typed,
    /// Its conductor, the smallest one on the way, and how it lies.
    pub laid: LaidEntry,
    /// The stretches of its run, from the panel outwards; none: the drop is not judged.
    pub stretches: Vec<StretchEntry>,
    /// What is on it.
    pub loads: Vec<LoadEntry>,
    /// What is to be added.
    pub planned: Vec<LoadEntry>,
    /// Other circuits that return on its neutral.
    pub neutral_with: Vec<u32>,
    /// Whether the neutral runs with all its hots in one cable or raceway; nothing: not known.
    pub neutral_with_hots: Option<bool>,
    /// Whether the neutral is spliced with pigtails to the devices; nothing: not known.
    pub neutral_pigtailed: Option<bool>,
    /// The boxes on the way.
    pub boxes: Vec<u32>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(CircuitEntry {
    id: needed,
    name: or_default,
    breaker: or_default,
    wiring: or_default,
    full_rating: or_default,
    purpose: or_default,
    receptacles: or_default,
    outlets: or_default,
    laid: or_default,
    stretches: or_default,
    loads: or_default,
    planned: or_default,
    neutral_with: or_default,
    neutral_with_hots: or_default,
    neutral_pigtailed: or_default,
    boxes: or_default,
});

/// A stretch of a run, to a point where there are loads.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StretchEntry {
    /// Row id.
    pub id: u32,
    /// Where it leads, in the user's words.
    pub name: String,
    /// Its length, one way; a bare number is feet or metres.
    pub length: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(StretchEntry {
    id: needed,
    name: or_default,
    length: or_default,
});

/// A load, there or planned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// What it takes.
    pub amount: Typed,
    /// Whether that is watts or amperes.
    pub unit: LoadUnit,
    /// Between which conductors of a multiwire circuit; other circuits have no choice.
    pub across: Across,
    /// What it is: on a cord, a motor, fixed in place, ...
    pub kind: LoadKind,
    /// Expected for 3 hours or more.
    pub continuous: bool,
    /// Electronic: a supply, a dimmer, LED lamps.
    pub electronic: bool,
    /// The stretch at whose end it is; nothing: at the far end.
    pub stretch: Option<u32>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(LoadEntry {
    id: needed,
    name: or_default,
    amount: or_default,
    unit: or_default,
    across: or_default,
    kind: or_default,
    continuous: or_default,
    electronic: or_default,
    stretch: or_default,
});

/// A box as found, and what is in it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BoxEntry {
    /// Row id; 0 in the quick sum.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// How its volume is known. The fields of every way are kept, so that changing the way loses nothing.
    pub by: BoxBy,
    /// Listed: its family.
    pub family: BoxFamily,
    /// Listed: its trade size as the table prints it; empty: not chosen yet.
    pub trade_size: String,
    /// Listed: gangs side by side; blank: one.
    pub gangs: Typed,
    /// Marked: the volume.
    pub marked: Typed,
    /// Measured: inside width.
    pub width: Typed,
    /// Measured: inside height.
    pub height: Typed,
    /// Measured: inside depth.
    pub depth: Typed,
    /// Extension rings, plaster rings and domed covers.
    pub rings: Vec<RingEntry>,
    /// Barriers.
    pub barriers: Vec<BarrierEntry>,
    /// Cables that end or are spliced here.
    pub cables: Vec<BoxCableEntry>,
    /// Conductors that are not of those cables.
    pub conductors: Vec<BoxConductorsEntry>,
    /// Devices.
    pub devices: Vec<DeviceEntry>,
    /// Terminal blocks.
    pub terminal_blocks: Vec<TerminalBlockEntry>,
    /// Whether there is any internal clamp.
    pub internal_clamps: bool,
    /// Kinds of support fitting (stud, hickey); blank: none.
    pub support_fittings: Typed,
    /// Pigtails and jumpers that start and end in the box; blank: none.
    pub pigtails: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BoxEntry {
    id: or_default,
    name: or_default,
    by: or_default,
    family: or_default,
    trade_size: or_default,
    gangs: or_default,
    marked: or_default,
    width: or_default,
    height: or_default,
    depth: or_default,
    rings: or_default,
    barriers: or_default,
    cables: or_default,
    conductors: or_default,
    devices: or_default,
    terminal_blocks: or_default,
    internal_clamps: or_default,
    support_fittings: or_default,
    pigtails: or_default,
});

/// An extension ring, a plaster ring or a domed cover.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RingEntry {
    /// Row id.
    pub id: u32,
    /// Its marked volume.
    pub volume: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(RingEntry {
    id: needed,
    volume: or_default,
});

/// A barrier.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BarrierEntry {
    /// Row id.
    pub id: u32,
    /// What it is.
    pub kind: BarrierKind,
    /// Marked: its volume.
    pub volume: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BarrierEntry {
    id: needed,
    kind: or_default,
    volume: or_default,
});

/// A cable that enters a box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BoxCableEntry {
    /// Row id.
    pub id: u32,
    /// Where it goes, in the user's words.
    pub name: String,
    /// The size of its insulated conductors; nothing: not chosen yet.
    pub size: Option<Size>,
    /// How many insulated conductors it has.
    pub insulated: Typed,
    /// Its equipment grounding conductor.
    pub ground: CableGround,
    /// The size of the ground, where it is another.
    pub ground_size: Option<Size>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BoxCableEntry {
    id: needed,
    name: or_default,
    size: or_default,
    insulated: or_default,
    ground: or_default,
    ground_size: or_default,
});

/// Conductors of one size and use that are not of the cables which end in the box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BoxConductorsEntry {
    /// Row id.
    pub id: u32,
    /// What they are.
    pub what: ConductorUse,
    /// Their size; nothing: not chosen yet.
    pub size: Option<Size>,
    /// How many.
    pub count: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(BoxConductorsEntry {
    id: needed,
    what: or_default,
    size: or_default,
    count: or_default,
});

/// A device in a box, by its yoke.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DeviceEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// The largest conductor connected to it; nothing: not chosen yet.
    pub size: Option<Size>,
    /// How many gangs wide it is; blank: one.
    pub gangs: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(DeviceEntry {
    id: needed,
    name: or_default,
    size: or_default,
    gangs: or_default,
});

/// A terminal block in a box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TerminalBlockEntry {
    /// Row id.
    pub id: u32,
    /// The largest conductor on it; nothing: not chosen yet.
    pub size: Option<Size>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(TerminalBlockEntry {
    id: needed,
    size: or_default,
});
