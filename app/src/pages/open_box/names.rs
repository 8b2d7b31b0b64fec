//! What things in an opened box are called: cables by their letters, wires by colour and cable, devices by kind.

use calc::job::{Job, OpenedDeviceKind, OpenedEntry};
use calc::wiring::open_box::description::{At, Colour, Contact, End, Hot, Side, Terminal};
use calc::wiring::open_box::faults::{Fault, Look, Place};
use calc::wiring::open_box::reading::{Point, Probe, Round};
use calc::wiring::open_box::situation::{Apart, LoadId, Situation, SwitchId};

use crate::house::number_of;
use crate::words::open_box::{self as words, explain, measure, refusals};
use crate::words::wiring::panel as panel_words;

/// The names of an opened box's parts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Names {
    /// Id, letter, conductors.
    cables: Vec<(u32, String, Vec<Colour>)>,
    devices: Vec<(u32, String)>,
    boxes: Vec<(u32, String)>,
    breakers: Vec<(u32, String)>,
}

fn find(all: &[(u32, String)], id: u32) -> String {
    all.iter()
        .find(|(of, _)| *of == id)
        .map_or_else(|| words::gone().to_owned(), |(_, name)| name.clone())
}

/// A kind of device.
pub fn device_kind(kind: OpenedDeviceKind) -> &'static str {
    match kind {
        OpenedDeviceKind::Switch => words::add_switch(),
        OpenedDeviceKind::ThreeWay => words::add_three_way(),
        OpenedDeviceKind::FourWay => words::add_four_way(),
        OpenedDeviceKind::Receptacle => words::add_receptacle(),
        OpenedDeviceKind::Lampholder => words::add_lampholder(),
    }
}

impl Names {
    /// The names of an entry's parts.
    pub fn of(job: &Job, entry: &OpenedEntry) -> Self {
        let boxes = (1_usize..).zip(&entry.boxes).map(|(n, of)| {
            let name = if of.name.trim().is_empty() {
                words::box_label(n)
            } else {
                of.name.clone()
            };
            (of.id, name)
        });
        let breakers = (1_usize..).zip(&entry.breakers).map(|(n, of)| {
            let in_panel = of.in_panel.map(|id| number_of(job, id));
            let name = match in_panel {
                Some(number) if !number.is_empty() => number,
                _ if !of.name.trim().is_empty() => of.name.clone(),
                _ => words::breaker_n(n),
            };
            (of.id, name)
        });
        let devices = entry.devices.iter().enumerate().map(|(at, of)| {
            let like = |other: &&calc::job::OpenedDeviceEntry| other.kind == of.kind;
            let name = device_kind(of.kind);
            let before = entry.devices.iter().take(at).filter(like).count();
            let name = if entry.devices.iter().filter(like).count() > 1 {
                words::device_numbered(name, before + 1)
            } else {
                name.to_owned()
            };
            (of.id, name)
        });
        Self {
            cables: entry
                .cables
                .iter()
                .map(|c| (c.id, c.letter.clone(), c.conductors.clone()))
                .collect(),
            boxes: boxes.collect(),
            breakers: breakers.collect(),
            devices: devices.collect(),
        }
    }

    /// A cable's letter.
    pub fn letter(&self, cable: u32) -> String {
        let found = self.cables.iter().find(|(id, ..)| *id == cable);
        found.map_or_else(|| "?".to_owned(), |(_, letter, _)| letter.clone())
    }

    /// A breaker.
    pub fn breaker(&self, id: u32) -> String {
        find(&self.breakers, id)
    }

    /// Several breakers.
    pub fn breakers(&self, ids: &[u32]) -> String {
        let names: Vec<String> = ids.iter().map(|id| self.breaker(*id)).collect();
        names.join(", ")
    }

    /// A device.
    pub fn device(&self, id: u32) -> String {
        find(&self.devices, id)
    }

    /// A box.
    pub fn box_name(&self, id: u32) -> String {
        find(&self.boxes, id)
    }

    /// A conductor: its colour and its cable, numbered where the cable has more of that colour.
    pub fn wire(&self, cable: u32, conductor: usize) -> String {
        let found = self.cables.iter().find(|(id, ..)| *id == cable);
        let Some((letter, conductors, colour)) =
            found.and_then(|(_, l, c)| Some((l, c, *c.get(conductor)?)))
        else {
            return words::gone().to_owned();
        };
        let like = |of: &&Colour| **of == colour;
        if conductors.iter().filter(like).count() > 1 {
            let n = conductors.iter().take(conductor + 1).filter(like).count();
            words::wire_n(words::colour(colour), n, letter)
        } else {
            words::wire(words::colour(colour), letter)
        }
    }

    /// An end of a conductor.
    pub fn end(&self, end: End) -> String {
        let wire = self.wire(end.cable, end.conductor);
        match end.side {
            Side::Near => wire,
            Side::Far => words::far_end(&wire),
        }
    }

    /// A screw of a device.
    pub fn screw(&self, device: u32, terminal: Terminal) -> String {
        words::screw_of(words::screw(terminal), &self.device(device))
    }

    /// An end or a screw.
    pub fn contact(&self, contact: Contact) -> String {
        match contact {
            Contact::End(end) => self.end(end),
            Contact::Terminal { device, terminal } => self.screw(device, terminal),
        }
    }

    /// Ends and screws in a row.
    pub fn contacts(&self, contacts: &[Contact]) -> String {
        let names: Vec<String> = contacts.iter().map(|c| self.contact(*c)).collect();
        names.join(", ")
    }

    /// A joint; the box is named where there are several.
    pub fn joint(&self, in_box: u32, joint: u32) -> String {
        if self.boxes.len() > 1 {
            words::joint_of(joint, &self.box_name(in_box))
        } else {
            words::in_joint(joint)
        }
    }

    /// Where a contact is.
    pub fn at(&self, at: At) -> String {
        match at {
            At::Joint(joint) => words::in_joint(joint),
            At::Capped => words::capped().to_owned(),
            At::Loose => words::loose().to_owned(),
            At::Terminal { device, terminal } => self.screw(device, terminal),
        }
    }

    /// A point.
    pub fn point(&self, point: Point) -> String {
        match point {
            Point::End(end) => self.end(end),
            Point::Joint { in_box, joint } => self.joint(in_box, joint),
            Point::Terminal { device, terminal } => self.screw(device, terminal),
            Point::NeutralBar => words::neutral_bar().to_owned(),
            Point::GroundBar => words::ground_bar().to_owned(),
            Point::Pipe => words::pipe().to_owned(),
        }
    }

    /// A hot or a bar.
    pub fn hot(&self, hot: Hot) -> String {
        match hot {
            Hot::Pole { breaker, leg } => {
                refusals::on_leg(&self.breaker(breaker), panel_words::leg(leg))
            }
            Hot::NeutralBar => words::neutral_bar().to_owned(),
            Hot::GroundBar => words::ground_bar().to_owned(),
        }
    }

    /// What a clamp goes round.
    pub fn round(&self, round: Round) -> String {
        match round {
            Round::Conductor(end) => self.end(end),
            Round::Cable { cable, side } => match side {
                Side::Near => measure::round_cable(&self.letter(cable)),
                Side::Far => measure::round_cable_far(&self.letter(cable)),
            },
        }
    }

    /// A switch.
    pub fn switch(&self, switch: SwitchId) -> String {
        match switch {
            SwitchId::Device(id) => self.device(id),
            SwitchId::Beyond(cable) => measure::switch_beyond(&self.letter(cable)),
            SwitchId::BeyondFourWay(cable) => measure::switch_four_way(&self.letter(cable)),
        }
    }

    /// A load.
    pub fn load(&self, load: LoadId) -> String {
        match load {
            LoadId::Device(id) => self.device(id),
            LoadId::Lower(id) => measure::load_lower(&self.device(id)),
            LoadId::Beyond { cable, load } => measure::load_beyond(&self.letter(cable), load + 1),
        }
    }

    /// What was off, apart and set.
    pub fn situation(&self, situation: &Situation) -> String {
        let mut parts = Vec::new();
        if situation.everything_off {
            parts.push(measure::all_off().to_owned());
        } else if situation.breakers_off.is_empty() {
            parts.push(measure::all_on().to_owned());
        } else {
            parts.push(measure::is_off(&self.breakers(&situation.breakers_off)));
        }
        for apart in &situation.apart {
            let name = match *apart {
                Apart::Joint { in_box, joint } => self.joint(in_box, joint),
                Apart::Contact(contact) => self.contact(contact),
            };
            parts.push(measure::is_apart(&name));
        }
        for (switch, position) in &situation.switches {
            if *position != Default::default() {
                parts.push(measure::is_switched(&self.switch(*switch)));
            }
        }
        for load in &situation.loads_off {
            parts.push(measure::is_unplugged(&self.load(*load)));
        }
        parts.join(", ")
    }

    /// Where and with what is measured.
    pub fn probe(&self, probe: &Probe) -> String {
        match *probe {
            Probe::Volts { from, to, meter } => {
                let (from, to) = (self.point(from), self.point(to));
                match meter {
                    calc::wiring::open_box::reading::Meter::HighImpedance => {
                        measure::volts_between(&from, &to)
                    }
                    calc::wiring::open_box::reading::Meter::LowImpedance => {
                        measure::volts_low(&from, &to)
                    }
                }
            }
            Probe::Tester { at } => measure::tester_at(&self.point(at)),
            Probe::Amps { round } => measure::clamp_round(&self.round(round)),
            Probe::Ohms { from, to } => measure::ohms_between(&self.point(from), &self.point(to)),
        }
    }

    /// A place of a fault.
    pub fn place(&self, place: Place) -> String {
        match place {
            Place::At(point) => self.point(point),
            Place::Pole { breaker, .. } => explain::pole(&self.breaker(breaker)),
            Place::Supply => words::the_supply().to_owned(),
        }
    }

    /// A fault and where it is.
    pub fn fault(&self, fault: &Fault) -> String {
        let mut says = explain::fault(fault.kind).to_owned();
        if let Some(ohm) = fault.ohm {
            says = explain::fault_ohms(&says, calc::quantity::fixed(ohm, 1));
        }
        if fault.places.is_empty() {
            return says;
        }
        let places: Vec<String> = fault.places.iter().map(|p| self.place(*p)).collect();
        explain::fault_at(&says, &places.join(&format!(" {} ", explain::and())))
    }

    /// Where to look.
    pub fn look(&self, look: Look) -> String {
        match look {
            Look::Box(id) => explain::look_box(&self.box_name(id)),
            Look::FarEnd(cable) => explain::look_far(&self.letter(cable)),
            Look::Panel => explain::look_panel().to_owned(),
            Look::Service => explain::look_service().to_owned(),
        }
    }
}
