//! Changes of an opened box that keep its parts fitting each other: a row that is taken out goes from everywhere.

use super::cable_letter;
use crate::job::{
    FarLoadEntry, GoesKind, HotEntry, MadeAt, MadeEntry, OpenedCableEntry, OpenedEntry, SpotEntry,
    SpotKind, Typed,
};
use crate::wiring::open_box::description::{Colour, LoadKind, Side};

impl SpotEntry {
    /// An end of a conductor.
    pub fn end(cable: u32, conductor: u32, side: Side) -> Self {
        Self {
            what: SpotKind::End,
            cable,
            conductor,
            side,
            ..Self::default()
        }
    }

    /// Whether it is the same place; fields of other kinds than its own don't count.
    pub fn is_same(&self, other: &Self) -> bool {
        self.what == other.what
            && match self.what {
                SpotKind::End => {
                    (self.cable, self.conductor, self.side)
                        == (other.cable, other.conductor, other.side)
                }
                SpotKind::Screw => (self.device, self.terminal) == (other.device, other.terminal),
                SpotKind::Joint => (self.in_box, self.joint) == (other.in_box, other.joint),
                SpotKind::NeutralBar | SpotKind::GroundBar | SpotKind::Pipe => true,
            }
    }
}

impl OpenedEntry {
    /// Adds a cable with the next letter that is free.
    pub fn add_cable(&mut self, id: u32, in_box: u32, conductors: &[Colour]) {
        let mut place = self.cables.len();
        while self.cables.iter().any(|c| c.letter == cable_letter(place)) {
            place += 1;
        }
        self.cables.push(OpenedCableEntry {
            id,
            letter: cable_letter(place),
            in_box,
            conductors: conductors.to_vec(),
            ..OpenedCableEntry::default()
        });
    }

    /// Where a contact is.
    pub fn made_at(&self, contact: &SpotEntry) -> MadeEntry {
        let found = self.made.iter().find(|made| made.contact.is_same(contact));
        found.cloned().unwrap_or_else(|| MadeEntry {
            contact: contact.clone(),
            ..MadeEntry::default()
        })
    }

    /// Puts a contact somewhere, out of where it was.
    pub fn make(&mut self, made: MadeEntry) {
        match self
            .made
            .iter_mut()
            .find(|there| there.contact.is_same(&made.contact))
        {
            Some(there) => *there = made,
            None => self.made.push(made),
        }
        self.made.retain(|made| made.at != MadeAt::Loose);
    }

    /// The highest number of a joint of a box; 0 where there is none.
    pub fn last_joint(&self, in_box: u32) -> u32 {
        let here = self
            .made
            .iter()
            .filter(|made| made.at == MadeAt::Joint && self.box_of(&made.contact) == Some(in_box));
        here.map(|made| made.joint).max().unwrap_or(0)
    }

    /// The box that an end or a screw is in; nothing where it is beyond the boxes.
    pub fn box_of(&self, spot: &SpotEntry) -> Option<u32> {
        match spot.what {
            SpotKind::End => {
                let cable = self.cable(spot.cable)?;
                match spot.side {
                    Side::Near => Some(cable.in_box),
                    Side::Far if cable.goes == GoesKind::Box => cable.to_box,
                    Side::Far => None,
                }
            }
            SpotKind::Screw => {
                let device = self.devices.iter().find(|d| d.id == spot.device)?;
                Some(device.in_box)
            }
            SpotKind::Joint => Some(spot.in_box),
            SpotKind::NeutralBar | SpotKind::GroundBar | SpotKind::Pipe => None,
        }
    }

    /// Sends a cable to a breaker: its first hot is on it, and its second hot on the second pole, or on the next breaker
    /// that feeds nothing yet.
    pub fn feed(&mut self, cable: u32, breaker: u32) {
        let two_pole = self.breakers.iter().any(|b| b.id == breaker && b.two_pole);
        let used = |id: u32| {
            let others = self
                .cables
                .iter()
                .filter(|c| c.id != cable && c.goes == GoesKind::Panel);
            others.flat_map(|c| &c.hots).any(|hot| hot.breaker == id)
        };
        let next = self
            .breakers
            .iter()
            .map(|b| b.id)
            .find(|id| *id != breaker && !used(*id));
        let Some(entry) = self.cable_mut(cable) else {
            return;
        };
        let mut hots = (0_u32..).zip(&entry.conductors).filter(|(_, c)| c.is_hot());
        let mut on = Vec::new();
        if let Some((conductor, _)) = hots.next() {
            on.push(HotEntry {
                conductor,
                breaker,
                ..HotEntry::default()
            });
        }
        let second = if two_pole { Some(breaker) } else { next };
        if let (Some((conductor, _)), Some(breaker)) = (hots.next(), second) {
            on.push(HotEntry {
                conductor,
                breaker,
                second_pole: two_pole,
                ..HotEntry::default()
            });
        }
        entry.goes = GoesKind::Panel;
        entry.hots = on;
    }

    /// Sends a cable to a load, a lamp of 60 W until something else is entered; `row` is the load's id.
    pub fn send_to_load(&mut self, cable: u32, row: u32) {
        if let Some(entry) = self.cable_mut(cable) {
            entry.goes = GoesKind::Loads;
            if entry.loads.is_empty() {
                entry.loads.push(FarLoadEntry {
                    id: row,
                    kind: LoadKind::Filament,
                    watts: Typed::plain("60"),
                    ..FarLoadEntry::default()
                });
            }
        }
    }

    /// Takes a cable out, and what was measured at it.
    pub fn take_out_cable(&mut self, id: u32) {
        self.cables.retain(|cable| cable.id != id);
        let on = |spot: &SpotEntry| spot.what == SpotKind::End && spot.cable == id;
        self.forget(&on);
        for reading in &mut self.readings {
            reading
                .switched
                .retain(|s| s.device.is_some() || s.cable != id);
            reading
                .loads_off
                .retain(|l| l.device.is_some() || l.cable != id);
        }
    }

    /// Takes a device out, with what was on its screws and measured at them.
    pub fn take_out_device(&mut self, id: u32) {
        self.devices.retain(|device| device.id != id);
        self.made
            .retain(|made| made.at != MadeAt::Screw || made.device != id);
        self.forget(&|spot| spot.what == SpotKind::Screw && spot.device == id);
        for reading in &mut self.readings {
            reading.switched.retain(|s| s.device != Some(id));
            reading.loads_off.retain(|l| l.device != Some(id));
        }
    }

    /// Takes a breaker out; what was on it is loose in the panel.
    pub fn take_out_breaker(&mut self, id: u32) {
        self.breakers.retain(|breaker| breaker.id != id);
        for cable in &mut self.cables {
            cable.hots.retain(|hot| hot.breaker != id);
        }
        for reading in &mut self.readings {
            reading.breakers_off.retain(|off| *off != id);
        }
    }

    /// Takes a conductor out of a cable; those after it keep their places.
    pub fn take_out_conductor(&mut self, cable: u32, conductor: u32) {
        self.forget(&|spot| {
            spot.what == SpotKind::End && spot.cable == cable && spot.conductor == conductor
        });
        let after = |at: &mut u32| {
            if *at > conductor {
                *at -= 1;
            }
        };
        let moved = |spot: &mut SpotEntry| {
            if spot.what == SpotKind::End && spot.cable == cable {
                after(&mut spot.conductor);
            }
        };
        for made in &mut self.made {
            moved(&mut made.contact);
        }
        for reading in &mut self.readings {
            moved(&mut reading.from);
            moved(&mut reading.to);
            reading.apart.iter_mut().for_each(moved);
        }
        let Some(entry) = self.cable_mut(cable) else {
            return;
        };
        if (conductor as usize) < entry.conductors.len() {
            entry.conductors.remove(conductor as usize);
        }
        entry.hots.retain(|hot| hot.conductor != conductor);
        entry
            .hots
            .iter_mut()
            .for_each(|hot| after(&mut hot.conductor));
        entry.screws.retain(|screw| screw.conductor != conductor);
        entry
            .screws
            .iter_mut()
            .for_each(|screw| after(&mut screw.conductor));
        for load in &mut entry.loads {
            // A load that lay on it lies as custom has it.
            if load.from == conductor || load.to == conductor {
                (load.from, load.to) = (0, 0);
            }
            after(&mut load.from);
            after(&mut load.to);
        }
    }

    /// Forgets a place: in the grid, and every reading that was taken at it.
    fn forget(&mut self, gone: &dyn Fn(&SpotEntry) -> bool) {
        self.made.retain(|made| !gone(&made.contact));
        self.readings
            .retain(|reading| !gone(&reading.from) && !gone(&reading.to));
        for reading in &mut self.readings {
            reading.apart.retain(|spot| !gone(spot));
        }
    }
}
