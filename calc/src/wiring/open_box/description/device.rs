//! Devices in boxes, their terminals, and loads.

use serde::Serialize;

/// A terminal of a device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Terminal {
    /// One screw of a single-pole switch.
    First,
    /// Its other screw.
    Second,
    /// The common (dark) screw of a three-way switch.
    Common,
    /// A traveller of a three-way switch; of a four-way switch the first on one side.
    TravellerOne,
    /// The other traveller; of a four-way switch the second on that side.
    TravellerTwo,
    /// The first traveller on the other side of a four-way switch.
    OnwardOne,
    /// The second traveller on that side.
    OnwardTwo,
    /// The hot screw of the upper half of a receptacle; the centre contact of a lampholder.
    Hot,
    /// The hot screw of the lower half of a receptacle.
    HotLower,
    /// The neutral screw of the upper half of a receptacle; the shell of a lampholder.
    Neutral,
    /// The neutral screw of the lower half of a receptacle.
    NeutralLower,
    /// The ground screw of any device.
    Ground,
}

/// A switch by its form.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SwitchForm {
    /// Opens one conductor.
    #[default]
    SinglePole,
    /// Joins its common to one of two travellers.
    ThreeWay,
    /// Passes two travellers straight or crossed.
    FourWay,
}

impl SwitchForm {
    /// The terminals besides ground.
    pub const fn terminals(self) -> &'static [Terminal] {
        match self {
            Self::SinglePole => &[Terminal::First, Terminal::Second],
            Self::ThreeWay => &[
                Terminal::Common,
                Terminal::TravellerOne,
                Terminal::TravellerTwo,
            ],
            Self::FourWay => &[
                Terminal::TravellerOne,
                Terminal::TravellerTwo,
                Terminal::OnwardOne,
                Terminal::OnwardTwo,
            ],
        }
    }
}

/// What a load is, for how far its resistance may be from V²/W.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadKind {
    /// A lamp with a filament: its cold resistance is a tenth of the hot one or less.
    Filament,
    /// An electronic lamp or supply.
    Electronic,
    /// A heater.
    Heater,
    /// A motor: a fan, a pump, a tool.
    Motor,
    /// Anything else, or not looked at.
    #[default]
    Other,
}

/// A load: R = V²/W at its rated volts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Load {
    /// What it is.
    pub kind: LoadKind,
    /// What it takes at its rated volts, watts.
    pub watts: f64,
    /// Its rated volts.
    pub volts: f64,
}

impl Load {
    /// Its resistance V²/W, ohms.
    ///
    /// ```
    /// use calc::wiring::open_box::description::{Load, LoadKind};
    /// let lamp = Load { kind: LoadKind::Filament, watts: 60.0, volts: 120.0 };
    /// assert_eq!(lamp.ohm(), 240.0);
    /// ```
    pub const fn ohm(&self) -> f64 {
        self.volts * self.volts / self.watts
    }
}

/// A device in a box.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DeviceKind {
    /// A switch.
    Switch(SwitchForm),
    /// A receptacle.
    Receptacle {
        /// Whether the tab between the two hot screws is there.
        hot_tab: bool,
        /// Whether the tab between the two neutral screws is there.
        neutral_tab: bool,
        /// What is plugged into the upper half.
        upper: Option<Load>,
        /// What is plugged into the lower half.
        lower: Option<Load>,
    },
    /// A lampholder, with its lamp where there is one.
    Lampholder(Option<Load>),
}

impl DeviceKind {
    /// The terminals besides ground.
    pub const fn terminals(&self) -> &'static [Terminal] {
        match self {
            Self::Switch(form) => form.terminals(),
            Self::Receptacle { .. } => &[
                Terminal::Hot,
                Terminal::HotLower,
                Terminal::Neutral,
                Terminal::NeutralLower,
            ],
            Self::Lampholder(_) => &[Terminal::Hot, Terminal::Neutral],
        }
    }

    /// Whether it has the terminal.
    pub fn has(&self, terminal: Terminal) -> bool {
        terminal == Terminal::Ground || self.terminals().contains(&terminal)
    }
}

/// A device and the box it is in.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Device {
    /// Its id.
    pub id: u32,
    /// The box.
    pub in_box: u32,
    /// What it is.
    pub kind: DeviceKind,
}
