//! What is off, apart and set.

use serde::Serialize;
use thiserror::Error;

use super::description::{At, Contact, Description, DeviceKind, Goes, SwitchForm};

/// A switch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SwitchId {
    /// A device in a described box.
    Device(u32),
    /// The switch at the far end of a cable; with a four-way switch, the three-way switch beyond it.
    Beyond(u32),
    /// The four-way switch at the far end of a cable.
    BeyondFourWay(u32),
}

/// A load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadId {
    /// At the far end of a cable: which of its loads, from 0.
    Beyond {
        /// The cable.
        cable: u32,
        /// Which of its loads.
        load: usize,
    },
    /// A lamp in a lampholder, or what is plugged into the upper half of a receptacle.
    Device(u32),
    /// What is plugged into the lower half of a receptacle.
    Lower(u32),
}

/// How a switch is set. Every switch starts at `One`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Position {
    /// Single-pole: on. Three-way: common to its first traveller. Four-way: straight.
    #[default]
    One,
    /// Single-pole: off. Three-way: common to its second traveller. Four-way: crossed.
    Two,
}

/// Something taken apart, its ends kept off each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Apart {
    /// All that is in a joint.
    Joint {
        /// The box.
        in_box: u32,
        /// The joint.
        joint: u32,
    },
    /// One contact, taken off its joint or terminal.
    Contact(Contact),
}

/// What is off, apart and set; whatever is not named is on, joined, at [`Position::One`].
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Situation {
    /// Whether the main and every breaker is off, and that was proved dead.
    pub everything_off: bool,
    /// The breakers that are off.
    pub breakers_off: Vec<u32>,
    /// What is apart.
    pub apart: Vec<Apart>,
    /// How the switches are set.
    pub switches: Vec<(SwitchId, Position)>,
    /// The loads that are off or unplugged.
    pub loads_off: Vec<LoadId>,
}

impl Situation {
    /// How a switch is set.
    pub fn position(&self, switch: SwitchId) -> Position {
        self.switches
            .iter()
            .find(|(id, _)| *id == switch)
            .map_or(Position::One, |(_, position)| *position)
    }

    /// Checks that everything named exists.
    ///
    /// # Errors
    /// [`SituationRefusal`]: the first thing named that the description doesn't have.
    pub fn check(&self, description: &Description) -> Result<(), SituationRefusal> {
        for &breaker in &self.breakers_off {
            if description.breaker(breaker).is_none() {
                return Err(SituationRefusal::NoBreaker { breaker });
            }
        }
        for &apart in &self.apart {
            let there = match apart {
                Apart::Joint { in_box, joint } => !description.joint(in_box, joint).is_empty(),
                Apart::Contact(contact) => {
                    matches!(description.at(contact), At::Joint(_) | At::Terminal { .. })
                }
            };
            if !there {
                return Err(SituationRefusal::NoJoint { apart });
            }
        }
        let switches = switches(description);
        for &(switch, _) in &self.switches {
            if !switches.contains(&switch) {
                return Err(SituationRefusal::NoSwitch { switch });
            }
        }
        let loads = loads(description);
        for &load in &self.loads_off {
            if !loads.contains(&load) {
                return Err(SituationRefusal::NoLoad { load });
            }
        }
        Ok(())
    }
}

/// Every switch, devices first, then those beyond by cable.
pub fn switches(description: &Description) -> Vec<SwitchId> {
    let mut all = Vec::new();
    for device in &description.devices {
        if matches!(device.kind, DeviceKind::Switch(_)) {
            all.push(SwitchId::Device(device.id));
        }
    }
    for cable in &description.cables {
        if let Goes::Switch(switch) = &cable.goes {
            all.push(SwitchId::Beyond(cable.id));
            if switch.form == SwitchForm::FourWay {
                all.push(SwitchId::BeyondFourWay(cable.id));
            }
        }
    }
    all
}

/// Every load, devices first, then those beyond by cable.
pub fn loads(description: &Description) -> Vec<LoadId> {
    let mut all = Vec::new();
    for device in &description.devices {
        match device.kind {
            DeviceKind::Receptacle { upper, lower, .. } => {
                if upper.is_some() {
                    all.push(LoadId::Device(device.id));
                }
                if lower.is_some() {
                    all.push(LoadId::Lower(device.id));
                }
            }
            DeviceKind::Lampholder(Some(_)) => all.push(LoadId::Device(device.id)),
            DeviceKind::Lampholder(None) | DeviceKind::Switch(_) => {}
        }
    }
    for cable in &description.cables {
        let count = match &cable.goes {
            Goes::Loads(loads) => loads.len(),
            Goes::Switch(switch) if switch.load.is_some() => 1,
            _ => 0,
        };
        for load in 0..count {
            all.push(LoadId::Beyond {
                cable: cable.id,
                load,
            });
        }
    }
    all
}

/// Why a situation is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum SituationRefusal {
    /// No such breaker.
    #[error("no breaker {breaker}")]
    NoBreaker {
        /// What was given.
        breaker: u32,
    },
    /// Nothing there to take apart.
    #[error("nothing at {apart:?}")]
    NoJoint {
        /// What was given.
        apart: Apart,
    },
    /// No such switch.
    #[error("no switch {switch:?}")]
    NoSwitch {
        /// What was given.
        switch: SwitchId,
    },
    /// No such load.
    #[error("no load {load:?}")]
    NoLoad {
        /// What was given.
        load: LoadId,
    },
}
