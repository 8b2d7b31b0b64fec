//! Boxes for the tests, put together by a few words.

use calc::wiring::conductor::{Metal, Size};
use calc::wiring::open_box::description::{
    Across, At, BoxBreaker, Cable, Colour, Contact, Description, Device, DeviceKind, End, Goes,
    Load, LoadKind, Made, OnBreaker, PanelFacts, Terminal,
};
use calc::wiring::panel::Leg;

pub const B: Colour = Colour::Black;
pub const R: Colour = Colour::Red;
pub const W: Colour = Colour::White;
pub const G: Colour = Colour::Bare;

/// A 120 V load.
pub fn load(watts: f64) -> Load {
    Load {
        kind: LoadKind::Heater,
        watts,
        volts: 120.0,
    }
}

/// No box yet.
pub fn empty() -> Description {
    Description {
        panel: PanelFacts::USUAL,
        breakers: Vec::new(),
        boxes: Vec::new(),
        cables: Vec::new(),
        devices: Vec::new(),
        made: Vec::new(),
    }
}

/// Puts a description together.
pub trait Put {
    /// A breaker of 20 A with one pole.
    fn put_breaker(&mut self, id: u32, leg: Leg);
    /// A 14 AWG copper cable, its letter from its id.
    fn put_cable(&mut self, id: u32, from_box: u32, conductors: &[Colour], feet: f64, goes: Goes);
    /// A home run with its first conductor on a breaker.
    fn put_home_run(
        &mut self,
        id: u32,
        from_box: u32,
        conductors: &[Colour],
        feet: f64,
        breaker: u32,
    );
    /// A cable of black, white and bare to a load.
    fn put_to_load(&mut self, id: u32, from_box: u32, feet: f64, watts: f64);
    /// A device.
    fn put_device(&mut self, id: u32, in_box: u32, kind: DeviceKind);
    /// Near ends in a joint: cable and conductor.
    fn put_joint(&mut self, joint: u32, ends: &[(u32, usize)]);
    /// Far ends in a joint.
    fn put_far_joint(&mut self, joint: u32, ends: &[(u32, usize)]);
    /// A near end on a terminal.
    fn put_on(&mut self, end: (u32, usize), device: u32, terminal: Terminal);
    /// A far end on a terminal.
    fn put_far_on(&mut self, end: (u32, usize), device: u32, terminal: Terminal);
    /// A terminal in a joint by a short wire.
    fn put_pigtail(&mut self, joint: u32, device: u32, terminal: Terminal);
}

impl Put for Description {
    fn put_breaker(&mut self, id: u32, leg: Leg) {
        self.breakers.push(BoxBreaker {
            id,
            space: None,
            legs: vec![leg],
            rating_a: 20.0,
            guessed: false,
            tied_to: None,
        });
    }

    fn put_cable(&mut self, id: u32, from_box: u32, conductors: &[Colour], feet: f64, goes: Goes) {
        if !self.boxes.contains(&from_box) {
            self.boxes.push(from_box);
        }
        self.cables.push(Cable {
            id,
            letter: id.to_string(),
            from_box,
            conductors: conductors.to_vec(),
            size: Size::Awg14,
            metal: Metal::Copper,
            length_ft: Some(feet),
            goes,
        });
    }

    fn put_home_run(
        &mut self,
        id: u32,
        from_box: u32,
        conductors: &[Colour],
        feet: f64,
        breaker: u32,
    ) {
        let on = OnBreaker {
            conductor: 0,
            breaker,
            pole: 0,
        };
        self.put_cable(id, from_box, conductors, feet, Goes::Panel(vec![on]));
    }

    fn put_to_load(&mut self, id: u32, from_box: u32, feet: f64, watts: f64) {
        let across = Across {
            from: 0,
            to: 1,
            load: load(watts),
        };
        self.put_cable(id, from_box, &[B, W, G], feet, Goes::Loads(vec![across]));
    }

    fn put_device(&mut self, id: u32, in_box: u32, kind: DeviceKind) {
        self.devices.push(Device { id, in_box, kind });
    }

    fn put_joint(&mut self, joint: u32, ends: &[(u32, usize)]) {
        for &(cable, conductor) in ends {
            self.made.push(Made {
                contact: Contact::End(End::near(cable, conductor)),
                at: At::Joint(joint),
            });
        }
    }

    fn put_far_joint(&mut self, joint: u32, ends: &[(u32, usize)]) {
        for &(cable, conductor) in ends {
            self.made.push(Made {
                contact: Contact::End(End::far(cable, conductor)),
                at: At::Joint(joint),
            });
        }
    }

    fn put_on(&mut self, (cable, conductor): (u32, usize), device: u32, terminal: Terminal) {
        self.made.push(Made {
            contact: Contact::End(End::near(cable, conductor)),
            at: At::Terminal { device, terminal },
        });
    }

    fn put_far_on(&mut self, (cable, conductor): (u32, usize), device: u32, terminal: Terminal) {
        self.made.push(Made {
            contact: Contact::End(End::far(cable, conductor)),
            at: At::Terminal { device, terminal },
        });
    }

    fn put_pigtail(&mut self, joint: u32, device: u32, terminal: Terminal) {
        self.made.push(Made {
            contact: Contact::Terminal { device, terminal },
            at: At::Joint(joint),
        });
    }
}

/// One circuit: a home run of 50 ft on breaker 1, leg A, to a heater at 20 ft.
pub fn one_circuit(watts: f64) -> Description {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_home_run(1, 1, &[B, W, G], 50.0, 1);
    d.put_to_load(2, 1, 20.0, watts);
    d.put_joint(1, &[(1, 0), (2, 0)]);
    d.put_joint(2, &[(1, 1), (2, 1)]);
    d.put_joint(3, &[(1, 2), (2, 2)]);
    d
}

/// Two circuits of leg A and leg B in one box, as intended: home runs 1 and 2, loads of 60 and 50 ohm's worth at 3 and 4.
pub fn two_circuits() -> Description {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_breaker(2, Leg::B);
    d.put_home_run(1, 1, &[B, W, G], 50.0, 1);
    d.put_home_run(2, 1, &[B, W, G], 40.0, 2);
    d.put_to_load(3, 1, 20.0, 240.0);
    d.put_to_load(4, 1, 20.0, 480.0);
    d.put_joint(1, &[(1, 0), (3, 0)]);
    d.put_joint(2, &[(2, 0), (4, 0)]);
    d.put_joint(3, &[(1, 1), (3, 1)]);
    d.put_joint(4, &[(2, 1), (4, 1)]);
    d.put_joint(5, &[(1, 2), (2, 2), (3, 2), (4, 2)]);
    d
}

/// The same with circuit 1 returning on circuit 2's neutral; its own white is capped, or put away if `lost` is false.
pub fn borrowed_neutral(capped: bool) -> Description {
    let mut d = two_circuits();
    d.made.retain(|m| !matches!(m.at, At::Joint(3)));
    if capped {
        d.made.push(Made {
            contact: Contact::End(End::near(1, 1)),
            at: At::Capped,
        });
    }
    d.put_joint(4, &[(3, 1)]);
    d
}
