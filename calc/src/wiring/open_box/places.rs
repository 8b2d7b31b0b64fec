//! A number for every contact of a description, and which of them are one piece of metal.

use super::description::{At, Contact, Description, DeviceKind, End, Side, Terminal};

/// The numbers of the contacts: ends by cable, then terminals by device.
#[derive(Clone, Debug)]
pub(super) struct Places {
    /// Cable, number of its first end, how many conductors.
    cables: Vec<(u32, usize, usize)>,
    /// Device, number of its first terminal, its terminals with ground last.
    devices: Vec<(u32, usize, Vec<Terminal>)>,
    /// How many there are.
    pub count: usize,
}

impl Places {
    /// Numbers the contacts of a description.
    pub fn of(description: &Description) -> Self {
        let mut count = 0;
        let mut cables = Vec::with_capacity(description.cables.len());
        for cable in &description.cables {
            cables.push((cable.id, count, cable.conductors.len()));
            count += 2 * cable.conductors.len();
        }
        let mut devices = Vec::with_capacity(description.devices.len());
        for device in &description.devices {
            let mut terminals = device.kind.terminals().to_vec();
            terminals.push(Terminal::Ground);
            let first = count;
            count += terminals.len();
            devices.push((device.id, first, terminals));
        }
        Self {
            cables,
            devices,
            count,
        }
    }

    /// The number of an end.
    pub fn end(&self, end: End) -> Option<usize> {
        let (_, first, conductors) = self.cables.iter().find(|(id, ..)| *id == end.cable)?;
        (end.conductor < *conductors)
            .then(|| first + 2 * end.conductor + usize::from(end.side == Side::Far))
    }

    /// The number of a terminal.
    pub fn terminal(&self, device: u32, terminal: Terminal) -> Option<usize> {
        let (_, first, terminals) = self.devices.iter().find(|(id, ..)| *id == device)?;
        let at = terminals.iter().position(|t| *t == terminal)?;
        Some(first + at)
    }

    /// The number of a contact.
    pub fn contact(&self, contact: Contact) -> Option<usize> {
        match contact {
            Contact::End(end) => self.end(end),
            Contact::Terminal { device, terminal } => self.terminal(device, terminal),
        }
    }
}

/// Sets of things that hang together.
#[derive(Clone, Debug)]
pub(super) struct Sets(Vec<usize>);

impl Sets {
    /// So many things, each alone.
    pub fn new(count: usize) -> Self {
        Self((0..count).collect())
    }

    /// The least of the set that a thing is in: the set's name.
    pub fn find(&mut self, mut thing: usize) -> usize {
        loop {
            let Some(&up) = self.0.get(thing) else {
                return thing;
            };
            if up == thing {
                return thing;
            }
            // Shorten the way for the next time.
            let further = self.0.get(up).copied().unwrap_or(up);
            if let Some(slot) = self.0.get_mut(thing) {
                *slot = further;
            }
            thing = further;
        }
    }

    /// Makes two sets one.
    pub fn join(&mut self, one: usize, other: usize) {
        let (a, b) = (self.find(one), self.find(other));
        if let Some(slot) = self.0.get_mut(a.max(b)) {
            *slot = a.min(b);
        }
    }
}

/// Which contacts are one piece of metal: through conductors, joints, terminals and the tabs of receptacles; not
/// through switches, loads or the panel.
pub(super) fn metal(description: &Description, places: &Places) -> Sets {
    let mut sets = Sets::new(places.count);
    let mut join = |one: Option<usize>, other: Option<usize>| {
        if let (Some(one), Some(other)) = (one, other) {
            sets.join(one, other);
        }
    };
    for cable in &description.cables {
        for conductor in 0..cable.conductors.len() {
            join(
                places.end(End::near(cable.id, conductor)),
                places.end(End::far(cable.id, conductor)),
            );
        }
    }
    for device in &description.devices {
        if let DeviceKind::Receptacle {
            hot_tab,
            neutral_tab,
            ..
        } = device.kind
        {
            let at = |terminal| places.terminal(device.id, terminal);
            if hot_tab {
                join(at(Terminal::Hot), at(Terminal::HotLower));
            }
            if neutral_tab {
                join(at(Terminal::Neutral), at(Terminal::NeutralLower));
            }
        }
    }
    let mut seen: Vec<((u32, u32), usize)> = Vec::new();
    for made in &description.made {
        let here = places.contact(made.contact);
        match made.at {
            At::Terminal { device, terminal } => join(here, places.terminal(device, terminal)),
            At::Joint(joint) => {
                let (Some(in_box), Some(number)) = (description.box_of_contact(made.contact), here)
                else {
                    continue;
                };
                match seen.iter().find(|(key, _)| *key == (in_box, joint)) {
                    Some((_, first)) => join(here, Some(*first)),
                    None => seen.push(((in_box, joint), number)),
                }
            }
            At::Capped | At::Loose => {}
        }
    }
    sets
}
