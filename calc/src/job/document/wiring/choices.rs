//! What is chosen from a list in the wiring of a job, where `wiring` has no name for it.

use crate::saved::codes;

/// Whether a panel has a main disconnect.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MainDisconnect {
    /// None: the feeder ends on lugs.
    #[default]
    Lugs,
    /// A main breaker.
    Breaker,
}

codes!(MainDisconnect {
    Lugs = "lugs",
    Breaker = "breaker",
});

/// Where tandem breakers may go.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TandemRule {
    /// The label has not been read.
    #[default]
    NotKnown,
    /// Nowhere.
    None,
    /// In any space.
    All,
    /// In the spaces that the label lists.
    Listed,
}

codes!(TandemRule {
    NotKnown = "not_known",
    None = "none",
    All = "all",
    Listed = "listed",
});

/// Between which conductors a circuit runs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CircuitWiring {
    /// Hot and neutral, 120 V.
    #[default]
    HotNeutral,
    /// Two hots, 240 V.
    TwoHots,
    /// Two hots and their neutral, 120/240 V, on a two-pole breaker.
    Multiwire,
}

codes!(CircuitWiring {
    HotNeutral = "hot_neutral",
    TwoHots = "two_hots",
    Multiwire = "multiwire",
});

/// What the amount of a load is in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LoadUnit {
    /// Watts.
    #[default]
    Watts,
    /// Amperes.
    Amps,
}

codes!(LoadUnit {
    Watts = "w",
    Amps = "a",
});

/// What the conductors of a cable are for; each has a ground besides.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CableKind {
    /// Hot and neutral, or two hots of a 240 V load.
    #[default]
    TwoWire,
    /// Two hots on opposite legs and their neutral.
    Multiwire,
    /// A pair of travellers and the neutral.
    Travellers,
    /// A hot, a switched hot and their neutral.
    HotAndSwitched,
    /// Two hots of a 208Y/120 V supply and their neutral.
    TwoOfWye,
}

codes!(CableKind {
    TwoWire = "two_wire",
    Multiwire = "multiwire",
    Travellers = "travellers",
    HotAndSwitched = "hot_and_switched",
    TwoOfWye = "two_of_wye",
});

/// How cables lie together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GroupingKind {
    /// Spaced, or each on its own.
    #[default]
    Apart,
    /// In contact or bundled.
    Bundled,
    /// Through one hole in wood framing that is sealed.
    SealedHole,
    /// In contact with thermal insulation.
    InInsulation,
    /// In one raceway.
    Raceway,
    /// In a nipple.
    Nipple,
}

codes!(GroupingKind {
    Apart = "apart",
    Bundled = "bundled",
    SealedHole = "sealed_hole",
    InInsulation = "in_insulation",
    Raceway = "raceway",
    Nipple = "nipple",
});

/// How the volume of a box is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BoxBy {
    /// It is a metal box of the table.
    #[default]
    Listed,
    /// It is marked on the box.
    Marked,
    /// From inside dimensions.
    Measured,
}

codes!(BoxBy {
    Listed = "listed",
    Marked = "marked",
    Measured = "measured",
});

/// What a barrier is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BarrierKind {
    /// Metal, without a mark.
    #[default]
    Metal,
    /// Nonmetallic, without a mark.
    Nonmetallic,
    /// Marked with its volume.
    Marked,
}

codes!(BarrierKind {
    Metal = "metal",
    Nonmetallic = "nonmetallic",
    Marked = "marked",
});

/// The equipment grounding conductor of a cable.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CableGround {
    /// As the cable is made: of the size of the others, but 10 AWG with 8 and 6 AWG.
    #[default]
    Same,
    /// None: an old cable.
    None,
    /// Of another size.
    Other,
}

codes!(CableGround {
    Same = "same",
    None = "none",
    Other = "other",
});

/// What conductors in a box are, besides those of the cables that end in it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ConductorUse {
    /// Single conductors from outside that end or are spliced here.
    #[default]
    Ending,
    /// They pass through unbroken.
    Passing,
    /// They pass through unbroken in a loop of 12 in or more.
    Looped,
    /// Fixture wires that are not under a domed canopy.
    Fixture,
    /// Fixture wires from a domed canopy.
    Canopy,
    /// Equipment grounding conductors and bonding jumpers.
    Ground,
    /// Isolated equipment grounding conductors.
    IsolatedGround,
}

codes!(ConductorUse {
    Ending = "ending",
    Passing = "passing",
    Looped = "looped",
    Fixture = "fixture",
    Canopy = "canopy",
    Ground = "ground",
    IsolatedGround = "isolated_ground",
});
