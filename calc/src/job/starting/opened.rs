//! New opened boxes: eight that are met again and again, and an empty one.
//!
//! Each is how custom wires it; the user changes what is otherwise. What isn't known in it is written as an entry, not
//! assumed out of sight. Source: common practice of house wiring in North America.

use crate::job::{
    FarLoadEntry, GoesKind, HotEntry, Job, MadeAt, MadeEntry, OpenedBoxEntry, OpenedBreakerEntry,
    OpenedCableEntry, OpenedDeviceEntry, OpenedDeviceKind, OpenedEntry, SpotEntry, SpotKind, Typed,
};
use crate::wiring::open_box::description::{Colour, LoadKind, Side, Terminal};
use crate::wiring::panel::Leg;

use Colour::{Bare, Black, MarkedWhite, Red, White};

/// Boxes that are met again and again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TypicalBox {
    /// One cable and a lamp.
    SingleLight,
    /// A switch, its feed and its light, with the neutral in the box.
    SwitchWithNeutral,
    /// A ceiling box with the feed, a lamp, and a cable down to its switch.
    SwitchLoop,
    /// Two boxes with three-way switches and a cable of three wires between them.
    ThreeWayPair,
    /// A receptacle with its hot tab broken out, on two legs.
    SplitReceptacle,
    /// A run of two hots and one neutral that parts here.
    MultiwireRun,
    /// Three cables of one circuit.
    Junction,
    /// Three cables that go nobody knows where.
    Mystery,
}

impl TypicalBox {
    /// All of them, the plainest first.
    pub const ALL: [Self; 8] = [
        Self::SingleLight,
        Self::SwitchWithNeutral,
        Self::SwitchLoop,
        Self::ThreeWayPair,
        Self::SplitReceptacle,
        Self::MultiwireRun,
        Self::Junction,
        Self::Mystery,
    ];
}

/// The letter of a cable by its place: A, B, ... Z, then AA.
pub fn cable_letter(place: usize) -> String {
    let letter = |at: usize| char::from(b'A' + (at % 26) as u8);
    if place < 26 {
        letter(place).to_string()
    } else {
        format!("{}{}", letter(place / 26 - 1), letter(place))
    }
}

impl Job {
    /// The opened boxes with this id.
    pub fn opened_entry(&self, id: u32) -> Option<&OpenedEntry> {
        self.opened.iter().find(|entry| entry.id == id)
    }

    /// The opened boxes with this id, to be changed.
    pub fn opened_entry_mut(&mut self, id: u32) -> Option<&mut OpenedEntry> {
        self.opened.iter_mut().find(|entry| entry.id == id)
    }

    /// Opens a box with nothing in it; its id.
    pub fn open_box(&mut self) -> u32 {
        let new = New::of(self);
        let id = new.entry.id;
        let entry = new.entry;
        self.opened.push(entry);
        id
    }
}

impl OpenedEntry {
    /// Whether nothing of it was described yet.
    pub const fn is_undescribed(&self) -> bool {
        self.cables.is_empty() && self.devices.is_empty()
    }

    /// Puts a typical box in the place of what is described; its name and readings stay.
    pub fn start_from(&mut self, typical: TypicalBox, job: &mut Job) {
        let mut new = New::of(job);
        typical.fill(&mut new);
        let entry = new.entry;
        self.boxes = entry.boxes;
        self.breakers = entry.breakers;
        self.cables = entry.cables;
        self.devices = entry.devices;
        self.made = entry.made;
    }
}

/// An entry in the making.
pub(in crate::job) struct New<'a> {
    job: &'a mut Job,
    /// What was made so far.
    pub entry: OpenedEntry,
    /// The box that is filled now.
    pub now: u32,
}

impl<'a> New<'a> {
    /// One empty box.
    pub fn of(job: &'a mut Job) -> Self {
        let entry = OpenedEntry {
            id: job.fresh_id(),
            ..OpenedEntry::default()
        };
        let mut new = Self { job, entry, now: 0 };
        new.another_box();
        new
    }

    /// A further box, to be filled from now on.
    pub fn another_box(&mut self) -> u32 {
        self.now = self.job.fresh_id();
        self.entry.boxes.push(OpenedBoxEntry {
            id: self.now,
            ..OpenedBoxEntry::default()
        });
        self.now
    }

    /// A breaker that is not in the job's panel.
    pub fn breaker(&mut self, leg: Leg, rating: &str) -> u32 {
        let id = self.job.fresh_id();
        self.entry.breakers.push(OpenedBreakerEntry {
            id,
            leg,
            rating: Typed::plain(rating),
            ..OpenedBreakerEntry::default()
        });
        id
    }

    /// A breaker of the job's panel.
    pub fn breaker_of_panel(&mut self, breaker: u32) -> u32 {
        let id = self.job.fresh_id();
        self.entry.breakers.push(OpenedBreakerEntry {
            id,
            in_panel: Some(breaker),
            ..OpenedBreakerEntry::default()
        });
        id
    }

    /// A cable that enters the box.
    pub fn cable(&mut self, conductors: &[Colour], goes: GoesKind) -> u32 {
        let id = self.job.fresh_id();
        self.entry.cables.push(OpenedCableEntry {
            id,
            letter: cable_letter(self.entry.cables.len()),
            in_box: self.now,
            conductors: conductors.to_vec(),
            goes,
            ..OpenedCableEntry::default()
        });
        id
    }

    /// A cable from breakers, each with its conductor.
    pub fn fed(&mut self, conductors: &[Colour], on: &[(u32, u32, bool)]) -> u32 {
        let id = self.cable(conductors, GoesKind::Panel);
        if let Some(cable) = self.entry.cable_mut(id) {
            cable.hots = on
                .iter()
                .map(|&(conductor, breaker, second_pole)| HotEntry {
                    conductor,
                    breaker,
                    second_pole,
                    ..HotEntry::default()
                })
                .collect();
        }
        id
    }

    /// A cable to a load.
    pub fn lead_to_load(&mut self, kind: LoadKind, watts: &str, name: &str) -> u32 {
        let id = self.cable(&[Black, White, Bare], GoesKind::Loads);
        let load = FarLoadEntry {
            id: self.job.fresh_id(),
            name: name.to_owned(),
            kind,
            watts: Typed::plain(watts),
            ..FarLoadEntry::default()
        };
        if let Some(cable) = self.entry.cable_mut(id) {
            cable.loads.push(load);
        }
        id
    }

    /// A device in the box.
    pub fn device(&mut self, kind: OpenedDeviceKind) -> u32 {
        let id = self.job.fresh_id();
        self.entry.devices.push(OpenedDeviceEntry {
            id,
            in_box: self.now,
            kind,
            ..OpenedDeviceEntry::default()
        });
        id
    }

    /// A lampholder with a lamp.
    fn lamp(&mut self) -> u32 {
        let id = self.device(OpenedDeviceKind::Lampholder);
        for device in &mut self.entry.devices {
            if device.id == id {
                device.watts = Typed::plain("60");
                device.load = LoadKind::Filament;
            }
        }
        id
    }

    fn make(&mut self, (cable, conductor, side): (u32, u32, Side), made: MadeEntry) {
        self.entry.made.push(MadeEntry {
            contact: SpotEntry {
                what: SpotKind::End,
                cable,
                conductor,
                side,
                ..SpotEntry::default()
            },
            ..made
        });
    }

    /// Near ends in a joint.
    pub fn joint(&mut self, joint: u32, ends: &[(u32, u32)]) {
        for &(cable, conductor) in ends {
            self.joint_at(joint, (cable, conductor, Side::Near));
        }
    }

    fn joint_at(&mut self, joint: u32, end: (u32, u32, Side)) {
        self.make(
            end,
            MadeEntry {
                at: MadeAt::Joint,
                joint,
                ..MadeEntry::default()
            },
        );
    }

    fn screw(&mut self, device: u32, terminal: Terminal, end: (u32, u32, Side)) {
        self.make(
            end,
            MadeEntry {
                at: MadeAt::Screw,
                device,
                terminal: Some(terminal),
                ..MadeEntry::default()
            },
        );
    }
}

impl TypicalBox {
    fn fill(self, new: &mut New<'_>) {
        use Side::{Far, Near};
        const THREE: [Colour; 3] = [Black, White, Bare];
        const FOUR: [Colour; 4] = [Black, Red, White, Bare];
        let one = if matches!(self, Self::SplitReceptacle) {
            let id = new.breaker(Leg::A, "20");
            for breaker in &mut new.entry.breakers {
                breaker.two_pole = true;
            }
            id
        } else {
            new.breaker(Leg::A, "15")
        };
        match self {
            Self::SingleLight => {
                let a = new.fed(&THREE, &[(0, one, false)]);
                let lamp = new.lamp();
                new.screw(lamp, Terminal::Hot, (a, 0, Near));
                new.screw(lamp, Terminal::Neutral, (a, 1, Near));
                new.screw(lamp, Terminal::Ground, (a, 2, Near));
            }
            Self::SwitchWithNeutral => {
                let a = new.fed(&THREE, &[(0, one, false)]);
                let b = new.lead_to_load(LoadKind::Filament, "60", "");
                let switch = new.device(OpenedDeviceKind::Switch);
                new.screw(switch, Terminal::First, (a, 0, Near));
                new.screw(switch, Terminal::Second, (b, 0, Near));
                new.joint(1, &[(a, 1), (b, 1)]);
                new.joint(2, &[(a, 2), (b, 2)]);
            }
            Self::SwitchLoop => {
                let a = new.fed(&THREE, &[(0, one, false)]);
                let b = new.cable(&[Black, MarkedWhite, Bare], GoesKind::Switch);
                let lamp = new.lamp();
                new.joint(1, &[(a, 0), (b, 1)]);
                new.screw(lamp, Terminal::Hot, (b, 0, Near));
                new.screw(lamp, Terminal::Neutral, (a, 1, Near));
                new.joint(2, &[(a, 2), (b, 2)]);
            }
            Self::ThreeWayPair => {
                let a = new.fed(&THREE, &[(0, one, false)]);
                let b = new.cable(&FOUR, GoesKind::Box);
                let near = new.device(OpenedDeviceKind::ThreeWay);
                new.screw(near, Terminal::Common, (a, 0, Near));
                new.screw(near, Terminal::TravellerOne, (b, 0, Near));
                new.screw(near, Terminal::TravellerTwo, (b, 1, Near));
                new.joint(1, &[(a, 1), (b, 2)]);
                new.joint(2, &[(a, 2), (b, 3)]);
                let second = new.another_box();
                if let Some(cable) = new.entry.cable_mut(b) {
                    cable.to_box = Some(second);
                }
                let c = new.lead_to_load(LoadKind::Filament, "60", "");
                let far = new.device(OpenedDeviceKind::ThreeWay);
                new.screw(far, Terminal::TravellerOne, (b, 0, Far));
                new.screw(far, Terminal::TravellerTwo, (b, 1, Far));
                new.screw(far, Terminal::Common, (c, 0, Near));
                new.joint_at(1, (b, 2, Far));
                new.joint(1, &[(c, 1)]);
                new.joint_at(2, (b, 3, Far));
                new.joint(2, &[(c, 2)]);
            }
            Self::SplitReceptacle => {
                let a = new.fed(&FOUR, &[(0, one, false), (1, one, true)]);
                let receptacle = new.device(OpenedDeviceKind::Receptacle);
                for device in &mut new.entry.devices {
                    device.hot_tab_out = true;
                }
                new.screw(receptacle, Terminal::Hot, (a, 0, Near));
                new.screw(receptacle, Terminal::HotLower, (a, 1, Near));
                new.screw(receptacle, Terminal::Neutral, (a, 2, Near));
                new.screw(receptacle, Terminal::Ground, (a, 3, Near));
            }
            Self::MultiwireRun => {
                let two = new.breaker(Leg::B, "15");
                let a = new.fed(&FOUR, &[(0, one, false), (1, two, false)]);
                let b = new.lead_to_load(LoadKind::Other, "600", "");
                let c = new.lead_to_load(LoadKind::Other, "600", "");
                new.joint(1, &[(a, 0), (b, 0)]);
                new.joint(2, &[(a, 1), (c, 0)]);
                new.joint(3, &[(a, 2), (b, 1), (c, 1)]);
                new.joint(4, &[(a, 3), (b, 2), (c, 2)]);
            }
            Self::Junction => {
                let a = new.fed(&THREE, &[(0, one, false)]);
                let b = new.lead_to_load(LoadKind::Other, "600", "");
                let c = new.lead_to_load(LoadKind::Filament, "60", "");
                for (joint, conductor) in [(1, 0), (2, 1), (3, 2)] {
                    new.joint(joint, &[(a, conductor), (b, conductor), (c, conductor)]);
                }
            }
            Self::Mystery => {
                for breaker in &mut new.entry.breakers {
                    breaker.guessed = true;
                }
                let all = [(); 3].map(|()| new.cable(&THREE, GoesKind::NotKnown));
                for (joint, conductor) in [(1, 0), (2, 1), (3, 2)] {
                    new.joint(joint, &all.map(|cable| (cable, conductor)));
                }
            }
        }
    }
}
