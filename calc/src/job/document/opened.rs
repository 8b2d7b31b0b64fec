//! Opened boxes as they are saved: cables, joints, devices, readings; several boxes where a cable joins them.
//!
//! What has a name in [`open_box`](crate::wiring::open_box) is saved by the code of that name ([`codes`]).

use super::{Rest, Typed};
use crate::saved;
use crate::saved::codes;
use crate::wiring::conductor::{Metal, Size};
use crate::wiring::open_box::description::{Colour, LoadKind, Side, SwitchForm, Terminal};
use crate::wiring::open_box::reading::Meter;
use crate::wiring::open_box::situation::Position;
use crate::wiring::panel::Leg;

mod coded;

/// One or more opened boxes that are looked at together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OpenedEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// The boxes; the first is the one that was opened first.
    pub boxes: Vec<OpenedBoxEntry>,
    /// The breakers that may have to do with it.
    pub breakers: Vec<OpenedBreakerEntry>,
    /// The cables.
    pub cables: Vec<OpenedCableEntry>,
    /// The devices.
    pub devices: Vec<OpenedDeviceEntry>,
    /// The joint grid.
    pub made: Vec<MadeEntry>,
    /// What was measured.
    pub readings: Vec<ReadingEntry>,
    /// What was found and put right, in the user's words.
    pub note: String,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OpenedEntry {
    id: needed,
    name: or_default,
    boxes: or_default,
    breakers: or_default,
    cables: or_default,
    devices: or_default,
    made: or_default,
    readings: or_default,
    note: or_default,
});

/// A box that was opened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OpenedBoxEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// The same box among the job's boxes.
    pub same_as: Option<u32>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OpenedBoxEntry {
    id: needed,
    name: or_default,
    same_as: or_default,
});

/// A breaker that may have to do with an opened box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OpenedBreakerEntry {
    /// Row id.
    pub id: u32,
    /// The breaker of the job's panel that it is; its leg, poles and rating are then the panel's.
    pub in_panel: Option<u32>,
    /// What it is called where it is not in the job's panel.
    pub name: String,
    /// Its leg there; of two poles the first one's.
    pub leg: Leg,
    /// Whether it has two poles.
    pub two_pole: bool,
    /// Its rating, amperes.
    pub rating: Typed,
    /// Whether it is a guess that it feeds this box.
    pub guessed: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OpenedBreakerEntry {
    id: needed,
    in_panel: or_default,
    name: or_default,
    leg: or_default,
    two_pole: or_default,
    rating: or_default,
    guessed: or_default,
});

/// A cable that enters an opened box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OpenedCableEntry {
    /// Row id.
    pub id: u32,
    /// Its letter.
    pub letter: String,
    /// The box that it was entered for.
    pub in_box: u32,
    /// Its conductors.
    pub conductors: Vec<Colour>,
    /// Their size; nothing: 14 AWG copper is taken.
    pub size: Option<Size>,
    /// Their metal.
    pub metal: Metal,
    /// Its length; blank: the usual one.
    pub length: Typed,
    /// Where it seems to go. The fields of every way are kept, so that changing the way loses nothing.
    pub goes: GoesKind,
    /// To the panel: which conductor is on which breaker.
    pub hots: Vec<HotEntry>,
    /// To loads: what is there.
    pub loads: Vec<FarLoadEntry>,
    /// To a switch: its form.
    pub switch: SwitchForm,
    /// To a switch: which conductor is on which terminal, as far as it is not the usual one.
    pub screws: Vec<ScrewEntry>,
    /// To another box: which.
    pub to_box: Option<u32>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OpenedCableEntry {
    id: needed,
    letter: or_default,
    in_box: or_default,
    conductors: or_default,
    size: or_default,
    metal: or_default,
    length: or_default,
    goes: or_default,
    hots: or_default,
    loads: or_default,
    switch: or_default,
    screws: or_default,
    to_box: or_default,
});

/// Where a cable seems to go.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GoesKind {
    /// Not known.
    #[default]
    NotKnown,
    /// To the panel.
    Panel,
    /// To loads.
    Loads,
    /// To a switch.
    Switch,
    /// To another box that is described.
    Box,
}

codes!(GoesKind {
    NotKnown = "not_known",
    Panel = "panel",
    Loads = "loads",
    Switch = "switch",
    Box = "box",
});

/// A conductor on a breaker.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct HotEntry {
    /// Which conductor of the cable, from 0.
    pub conductor: u32,
    /// The breaker among those of the opened box.
    pub breaker: u32,
    /// Whether it is on the second pole.
    pub second_pole: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(HotEntry {
    conductor: or_default,
    breaker: or_default,
    second_pole: or_default,
});

/// A load at the far end of a cable.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FarLoadEntry {
    /// Row id.
    pub id: u32,
    /// The user's name for it.
    pub name: String,
    /// One conductor, from 0.
    pub from: u32,
    /// The other.
    pub to: u32,
    /// What it is.
    pub kind: LoadKind,
    /// What it takes, watts.
    pub watts: Typed,
    /// Its rated volts; blank: by what it is across.
    pub volts: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(FarLoadEntry {
    id: needed,
    name: or_default,
    from: or_default,
    to: or_default,
    kind: or_default,
    watts: or_default,
    volts: or_default,
});

/// A conductor on a screw of the switch at the far end.
#[derive(Clone, Debug, PartialEq)]
pub struct ScrewEntry {
    /// The screw.
    pub terminal: Terminal,
    /// Which conductor of the cable, from 0.
    pub conductor: u32,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(ScrewEntry {
    terminal: needed,
    conductor: or_default,
});

/// A device in an opened box.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OpenedDeviceEntry {
    /// Row id.
    pub id: u32,
    /// The box.
    pub in_box: u32,
    /// What it is.
    pub kind: OpenedDeviceKind,
    /// Receptacle: the tab between the two hot screws is broken out.
    pub hot_tab_out: bool,
    /// Receptacle: the tab between the two neutral screws is broken out.
    pub neutral_tab_out: bool,
    /// What is plugged in or screwed in, watts; blank: nothing. Receptacle: the upper half.
    pub watts: Typed,
    /// What that is.
    pub load: LoadKind,
    /// Receptacle: what is plugged into the lower half, watts.
    pub lower_watts: Typed,
    /// What that is.
    pub lower_load: LoadKind,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(OpenedDeviceEntry {
    id: needed,
    in_box: or_default,
    kind: or_default,
    hot_tab_out: or_default,
    neutral_tab_out: or_default,
    watts: or_default,
    load: or_default,
    lower_watts: or_default,
    lower_load: or_default,
});

/// What a device is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum OpenedDeviceKind {
    /// A switch that opens one conductor.
    #[default]
    Switch,
    /// A three-way switch.
    ThreeWay,
    /// A four-way switch.
    FourWay,
    /// A receptacle.
    Receptacle,
    /// A lampholder.
    Lampholder,
}

codes!(OpenedDeviceKind {
    Switch = "switch",
    ThreeWay = "three_way",
    FourWay = "four_way",
    Receptacle = "receptacle",
    Lampholder = "lampholder",
});

/// A place that a probe can touch or a wire can be: an end of a conductor, a screw of a device, a joint, or a bar.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SpotEntry {
    /// What it is. The fields of every kind are kept.
    pub what: SpotKind,
    /// End: the cable.
    pub cable: u32,
    /// End: which of its conductors, from 0.
    pub conductor: u32,
    /// End: which end of the cable.
    pub side: Side,
    /// Screw: the device.
    pub device: u32,
    /// Screw: which.
    pub terminal: Option<Terminal>,
    /// Joint: the box.
    pub in_box: u32,
    /// Joint: its number in that box, from 1.
    pub joint: u32,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(SpotEntry {
    what: or_default,
    cable: or_default,
    conductor: or_default,
    side: or_default,
    device: or_default,
    terminal: or_default,
    in_box: or_default,
    joint: or_default,
});

/// Kinds of spot.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum SpotKind {
    /// An end of a conductor.
    #[default]
    End,
    /// A screw of a device.
    Screw,
    /// A joint.
    Joint,
    /// The neutral bar of the panel.
    NeutralBar,
    /// The ground bar of the panel.
    GroundBar,
    /// A metal pipe that is bonded.
    Pipe,
}

codes!(SpotKind {
    End = "end",
    Screw = "screw",
    Joint = "joint",
    NeutralBar = "neutral_bar",
    GroundBar = "ground_bar",
    Pipe = "pipe",
});

/// One entry of the joint grid: an end or a screw, and where it is.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MadeEntry {
    /// The end, or the screw of a device that has a short wire of its own.
    pub contact: SpotEntry,
    /// Where it is.
    pub at: MadeAt,
    /// Joint: its number, from 1.
    pub joint: u32,
    /// Screw: the device.
    pub device: u32,
    /// Screw: which.
    pub terminal: Option<Terminal>,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(MadeEntry {
    contact: or_default,
    at: or_default,
    joint: or_default,
    device: or_default,
    terminal: or_default,
});

/// Where a contact is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MadeAt {
    /// Loose.
    #[default]
    Loose,
    /// In a joint.
    Joint,
    /// Capped alone.
    Capped,
    /// On a screw.
    Screw,
}

codes!(MadeAt {
    Loose = "loose",
    Joint = "joint",
    Capped = "capped",
    Screw = "screw",
});

/// A reading in its situation.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ReadingEntry {
    /// Row id.
    pub id: u32,
    /// Whether the main and every breaker was off, and that was proved dead.
    pub everything_off: bool,
    /// The breakers that were off, among those of the opened box.
    pub breakers_off: Vec<u32>,
    /// What was apart: joints, or single ends and screws.
    pub apart: Vec<SpotEntry>,
    /// Switches that were set the other way.
    pub switched: Vec<SwitchedEntry>,
    /// Loads that were off or unplugged.
    pub loads_off: Vec<LoadOffEntry>,
    /// What was measured.
    pub what: ReadingKind,
    /// Where; of two points the first.
    pub from: SpotEntry,
    /// The other point.
    pub to: SpotEntry,
    /// Volts: the meter.
    pub meter: Meter,
    /// Amperes: the clamp went round the whole cable.
    pub whole_cable: bool,
    /// What the meter showed.
    pub shown: Typed,
    /// Ohms: the meter showed that it is open.
    pub open: bool,
    /// The meter's range; blank: not looked at.
    pub range: Typed,
    /// Tester: whether it glowed.
    pub glows: Option<bool>,
    /// Whether it was taken to prove what was put right.
    pub proves: bool,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(ReadingEntry {
    id: needed,
    everything_off: or_default,
    breakers_off: or_default,
    apart: or_default,
    switched: or_default,
    loads_off: or_default,
    what: or_default,
    from: or_default,
    to: or_default,
    meter: or_default,
    whole_cable: or_default,
    shown: or_default,
    open: or_default,
    range: or_default,
    glows: or_default,
    proves: or_default,
});

/// Kinds of reading.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ReadingKind {
    /// Volts between two points.
    #[default]
    Volts,
    /// A non-contact tester at a point.
    Tester,
    /// Amperes by a clamp.
    Amps,
    /// Ohms between two points, with everything off.
    Ohms,
}

codes!(ReadingKind {
    Volts = "volts",
    Tester = "tester",
    Amps = "amps",
    Ohms = "ohms",
});

/// How a switch was set.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SwitchedEntry {
    /// A device in a described box; nothing: the switch at the far end of `cable`.
    pub device: Option<u32>,
    /// The cable.
    pub cable: u32,
    /// At the far end: the four-way switch, where there is one before a three-way switch.
    pub four_way: bool,
    /// How it was set.
    pub position: Position,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(SwitchedEntry {
    device: or_default,
    cable: or_default,
    four_way: or_default,
    position: or_default,
});

/// A load that was off.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadOffEntry {
    /// A device in a described box; nothing: a load at the far end of `cable`.
    pub device: Option<u32>,
    /// Receptacle: the lower half.
    pub lower: bool,
    /// The cable.
    pub cable: u32,
    /// Which of its loads, from 0.
    pub load: u32,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(LoadOffEntry {
    device: or_default,
    lower: or_default,
    cable: or_default,
    load: or_default,
});
