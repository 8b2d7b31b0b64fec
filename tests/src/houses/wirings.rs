//! Wirings as intended, at random: every conductor has a net, and what is of one net in a box is joined there.

use calc::wiring::conductor::{Metal, Size};
use calc::wiring::open_box::description::{
    Across, At, BoxBreaker, Cable, Colour, Contact, Description, Device, DeviceKind, End,
    FarSwitch, Fed, Goes, Load, LoadKind, Made, OnBreaker, PanelFacts, SwitchForm, Terminal,
};
use calc::wiring::panel::Leg;

use super::dice::Dice;

/// What a conductor or terminal is meant to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Net {
    /// The hot of a circuit.
    Hot(u32),
    /// A neutral.
    Neutral(u32),
    /// The ground.
    Ground,
    /// Behind a switch: which, and of which circuit.
    Switched(u32, u32),
    /// Connected to nothing.
    Spare(u32),
}

/// A wiring as intended.
#[derive(Clone, Debug)]
pub struct Wiring {
    /// As it would be described.
    pub description: Description,
    /// What each contact in a box or fixture is meant to be.
    pub nets: Vec<(Contact, Net)>,
}

impl Wiring {
    /// What a contact is meant to be.
    pub fn net(&self, contact: Contact) -> Option<Net> {
        self.nets
            .iter()
            .find(|(c, _)| *c == contact)
            .map(|(_, net)| *net)
    }
}

/// The most cables.
const MOST_CABLES: usize = 5;

struct Draft<'a> {
    dice: &'a mut Dice,
    wiring: Wiring,
    /// The neutral of each circuit.
    circuits: Vec<u32>,
    /// Hots by box.
    here: Vec<(u32, Net)>,
    /// Switched hots without a load yet.
    pending: Vec<(u32, Net)>,
    loaded: Vec<u32>,
    next_net: u32,
}

/// A wiring of 2 to 5 cables and 1 to 3 boxes.
pub fn random(dice: &mut Dice) -> Wiring {
    let boxes = match dice.unit() {
        u if u < 0.5 => 1,
        u if u < 0.85 => 2,
        _ => 3_u32,
    };
    let mut draft = Draft {
        dice,
        wiring: Wiring {
            description: Description {
                panel: PanelFacts::USUAL,
                breakers: Vec::new(),
                boxes: (1..=boxes).collect(),
                cables: Vec::new(),
                devices: Vec::new(),
                made: Vec::new(),
            },
            nets: Vec::new(),
        },
        circuits: Vec::new(),
        here: Vec::new(),
        pending: Vec::new(),
        loaded: Vec::new(),
        next_net: 0,
    };
    draft.panel();
    draft.home_run(1);
    for in_box in 2..=boxes {
        draft.link(in_box);
    }
    draft.fill(boxes);
    draft.finish(boxes);
    draft.wiring
}

impl Draft<'_> {
    fn d(&mut self) -> &mut Description {
        &mut self.wiring.description
    }

    fn cables(&self) -> usize {
        self.wiring.description.cables.len()
    }

    fn panel(&mut self) {
        let mut panel = PanelFacts::USUAL;
        panel.leg_a_v = (self.dice.between(117.0, 124.0) * 10.0).round() / 10.0;
        panel.leg_b_v = (panel.leg_a_v * 10.0 + self.dice.between(-12.0, 12.0).round()) / 10.0;
        panel.source_ohm = 0.03;
        if self.dice.chance(0.1) {
            panel.fed = Fed::Feeder {
                size: Size::Awg6,
                ground_size: Size::Awg10,
                metal: Metal::Copper,
                length_ft: self.dice.between(30.0, 90.0).round(),
            };
        }
        self.d().panel = panel;
    }

    fn load(&mut self) -> Load {
        let (kind, watts): (LoadKind, &[f64]) = match self.dice.below(10) {
            0..3 => (LoadKind::Filament, &[60.0, 100.0, 150.0, 200.0]),
            3..6 => (LoadKind::Electronic, &[15.0, 30.0, 60.0, 100.0]),
            6..8 => (LoadKind::Heater, &[500.0, 1000.0, 1500.0]),
            8 => (LoadKind::Motor, &[60.0, 120.0, 300.0]),
            _ => (LoadKind::Other, &[40.0, 150.0, 600.0]),
        };
        let watts = self.dice.pick(watts).expect("some");
        Load {
            kind,
            watts,
            volts: 120.0,
        }
    }

    fn breaker(&mut self, legs: Vec<Leg>) -> u32 {
        let id = u32::try_from(self.d().breakers.len()).expect("few") + 1;
        self.d().breakers.push(BoxBreaker {
            id,
            space: None,
            legs,
            rating_a: 20.0,
            guessed: false,
            tied_to: None,
        });
        id
    }

    fn leg(&mut self) -> Leg {
        if self.dice.chance(0.5) {
            Leg::A
        } else {
            Leg::B
        }
    }

    /// A cable whose conductors have nets, at the far end too where it goes to another box.
    fn cable(&mut self, from_box: u32, wires: &[(Colour, Net)], goes: Goes) -> u32 {
        let id = u32::try_from(self.cables()).expect("few") + 1;
        let length = self.dice.between(12.0, 70.0).round();
        let size = if self.dice.chance(0.6) {
            Size::Awg14
        } else {
            Size::Awg12
        };
        for (conductor, (_, net)) in wires.iter().enumerate() {
            self.wiring
                .nets
                .push((Contact::End(End::near(id, conductor)), *net));
            self.wiring
                .nets
                .push((Contact::End(End::far(id, conductor)), *net));
            if matches!(net, Net::Hot(_)) {
                self.here.push((from_box, *net));
                if let Goes::Box(to) = goes {
                    self.here.push((to, *net));
                }
            }
        }
        self.d().cables.push(Cable {
            id,
            letter: char::from(b'A' + u8::try_from(id - 1).expect("few")).to_string(),
            from_box,
            conductors: wires.iter().map(|(colour, _)| *colour).collect(),
            size,
            metal: Metal::Copper,
            length_ft: Some(length),
            goes,
        });
        id
    }

    fn device(&mut self, in_box: u32, kind: DeviceKind, on: &[(Terminal, Net)]) {
        let id = u32::try_from(self.d().devices.len()).expect("few") + 1;
        for (terminal, net) in on.iter().chain(&[(Terminal::Ground, Net::Ground)]) {
            let contact = Contact::Terminal {
                device: id,
                terminal: *terminal,
            };
            self.wiring.nets.push((contact, *net));
        }
        self.d().devices.push(Device { id, in_box, kind });
    }

    fn home_run(&mut self, in_box: u32) {
        let neutral = u32::try_from(self.circuits.len()).expect("few") + 1;
        let white = (Colour::White, Net::Neutral(neutral));
        let bare = (Colour::Bare, Net::Ground);
        let first = u32::try_from(self.circuits.len()).expect("few") + 1;
        if self.dice.chance(0.2) && self.circuits.is_empty() {
            let poles = if self.dice.chance(0.5) {
                let breaker = self.breaker(vec![Leg::A, Leg::B]);
                [(breaker, 0), (breaker, 1)]
            } else {
                [
                    (self.breaker(vec![Leg::A]), 0),
                    (self.breaker(vec![Leg::B]), 0),
                ]
            };
            let on = poles
                .iter()
                .enumerate()
                .map(|(conductor, (breaker, pole))| OnBreaker {
                    conductor,
                    breaker: *breaker,
                    pole: *pole,
                });
            let wires = [
                (Colour::Black, Net::Hot(first)),
                (Colour::Red, Net::Hot(first + 1)),
                white,
                bare,
            ];
            let goes = Goes::Panel(on.collect());
            self.circuits.extend([neutral, neutral]);
            self.cable(in_box, &wires, goes);
        } else {
            let leg = self.leg();
            let breaker = self.breaker(vec![leg]);
            self.circuits.push(neutral);
            let on = OnBreaker {
                conductor: 0,
                breaker,
                pole: 0,
            };
            let wires = [(Colour::Black, Net::Hot(first)), white, bare];
            self.cable(in_box, &wires, Goes::Panel(vec![on]));
        }
    }

    fn neutral_of(&self, circuit: u32) -> Net {
        Net::Neutral(self.circuits[circuit as usize - 1])
    }

    fn switched(&mut self, circuit: u32) -> Net {
        self.next_net += 1;
        Net::Switched(self.next_net, circuit)
    }

    fn hot_in(&mut self, in_box: u32) -> Option<u32> {
        let hots: Vec<u32> = self
            .here
            .iter()
            .filter_map(|(of, net)| match net {
                Net::Hot(circuit) if *of == in_box => Some(*circuit),
                _ => None,
            })
            .collect();
        self.dice.pick(&hots)
    }

    /// The circuit of something live in a box, hot or switched.
    fn circuit_of(net: Net) -> u32 {
        match net {
            Net::Hot(circuit) | Net::Switched(_, circuit) => circuit,
            other => panic!("{other:?} is not hot"),
        }
    }

    /// A cable from a box that has a hot to a new one: plain, a three-way pair, or with both hots of a multiwire circuit.
    fn link(&mut self, to: u32) {
        let from = loop {
            let from = 1 + u32::try_from(self.dice.below(to as usize - 1)).expect("few");
            if self
                .here
                .iter()
                .any(|(of, net)| *of == from && matches!(net, Net::Hot(_)))
            {
                break from;
            }
        };
        let circuit = self.hot_in(from).expect("a hot");
        let neutral = self.neutral_of(circuit);
        let (white, bare) = ((Colour::White, neutral), (Colour::Bare, Net::Ground));
        let twin = self.here.iter().find_map(|(of, net)| match net {
            Net::Hot(other)
                if *of == from && *other != circuit && self.neutral_of(*other) == neutral =>
            {
                Some(*net)
            }
            _ => None,
        });
        if let Some(twin) = twin
            && self.dice.chance(0.5)
        {
            let wires = [
                (Colour::Black, Net::Hot(circuit)),
                (Colour::Red, twin),
                white,
                bare,
            ];
            self.cable(from, &wires, Goes::Box(to));
        } else if self.dice.chance(0.35) {
            let [one, two, lamp] = [
                self.switched(circuit),
                self.switched(circuit),
                self.switched(circuit),
            ];
            let wires = [(Colour::Black, one), (Colour::Red, two), white, bare];
            self.cable(from, &wires, Goes::Box(to));
            let three_way = DeviceKind::Switch(SwitchForm::ThreeWay);
            let travellers = [(Terminal::TravellerOne, one), (Terminal::TravellerTwo, two)];
            let mut on = travellers.to_vec();
            on.push((Terminal::Common, Net::Hot(circuit)));
            self.device(from, three_way.clone(), &on);
            let mut on = travellers.to_vec();
            on.push((Terminal::Common, lamp));
            self.device(to, three_way, &on);
            self.pending.push((to, lamp));
        } else {
            let wires = [(Colour::Black, Net::Hot(circuit)), white, bare];
            self.cable(from, &wires, Goes::Box(to));
        }
    }

    fn fill(&mut self, boxes: u32) {
        let least = 2.max(boxes as usize);
        let count = least + self.dice.below(MOST_CABLES - least + 1);
        while self.cables() < count {
            if !self.pending.is_empty() {
                let (in_box, net) = self.pending.remove(0);
                self.load_cable(in_box, net);
                continue;
            }
            let in_box = 1 + u32::try_from(self.dice.below(boxes as usize)).expect("few");
            if self.dice.chance(0.35) && self.circuits.len() < 3 && self.cables() + 1 < count {
                self.home_run(in_box);
                continue;
            }
            match self.hot_in(in_box) {
                None => self.home_run(in_box),
                Some(circuit) => self.branch(in_box, circuit, count),
            }
        }
    }

    fn load_cable(&mut self, in_box: u32, net: Net) {
        let circuit = Self::circuit_of(net);
        self.loaded.push(circuit);
        let wires = [
            (Colour::Black, net),
            (Colour::White, self.neutral_of(circuit)),
            (Colour::Bare, Net::Ground),
        ];
        let load = self.load();
        self.cable(
            in_box,
            &wires,
            Goes::Loads(vec![Across {
                from: 0,
                to: 1,
                load,
            }]),
        );
    }

    fn branch(&mut self, in_box: u32, circuit: u32, count: usize) {
        let hot = Net::Hot(circuit);
        let neutral = self.neutral_of(circuit);
        let (white, bare) = ((Colour::White, neutral), (Colour::Bare, Net::Ground));
        match self.dice.below(10) {
            0..4 => self.load_cable(in_box, hot),
            4..7 => {
                let net = self.switched(circuit);
                let kind = DeviceKind::Switch(SwitchForm::SinglePole);
                self.device(
                    in_box,
                    kind,
                    &[(Terminal::First, hot), (Terminal::Second, net)],
                );
                self.load_cable(in_box, net);
            }
            7 if self.cables() + 1 < count => {
                let net = self.switched(circuit);
                let wires = [(Colour::MarkedWhite, hot), (Colour::Black, net), bare];
                let on = vec![(Terminal::First, 0), (Terminal::Second, 1)];
                let switch = FarSwitch {
                    form: SwitchForm::SinglePole,
                    on,
                    load: None,
                };
                self.cable(in_box, &wires, Goes::Switch(switch));
                self.load_cable(in_box, net);
            }
            8 => {
                let [one, two] = [self.switched(circuit), self.switched(circuit)];
                let on = [
                    (Terminal::Common, hot),
                    (Terminal::TravellerOne, one),
                    (Terminal::TravellerTwo, two),
                ];
                self.device(in_box, DeviceKind::Switch(SwitchForm::ThreeWay), &on);
                let wires = [(Colour::Black, one), (Colour::Red, two), white, bare];
                let switch = FarSwitch {
                    form: SwitchForm::ThreeWay,
                    on: vec![(Terminal::TravellerOne, 0), (Terminal::TravellerTwo, 1)],
                    load: Some((self.load(), 2)),
                };
                self.loaded.push(circuit);
                self.cable(in_box, &wires, Goes::Switch(switch));
            }
            _ => {
                let on = vec![(Terminal::First, 0)];
                let load = Some((self.load(), 1));
                let switch = FarSwitch {
                    form: SwitchForm::SinglePole,
                    on,
                    load,
                };
                self.loaded.push(circuit);
                let mut wires = vec![(Colour::Black, hot), white, bare];
                if self.dice.chance(0.3) {
                    self.next_net += 1;
                    wires.insert(2, (Colour::Red, Net::Spare(self.next_net)));
                }
                self.cable(in_box, &wires, Goes::Switch(switch));
            }
        }
    }

    fn receptacle(&mut self, in_box: u32, net: Net) {
        let circuit = Self::circuit_of(net);
        let neutral = self.neutral_of(circuit);
        let plugged = self.dice.chance(0.6) || !self.loaded.contains(&circuit);
        let upper = plugged.then(|| self.load());
        if plugged {
            self.loaded.push(circuit);
        }
        let kind = DeviceKind::Receptacle {
            hot_tab: true,
            neutral_tab: true,
            upper,
            lower: None,
        };
        self.device(
            in_box,
            kind,
            &[(Terminal::Hot, net), (Terminal::Neutral, neutral)],
        );
    }

    fn finish(&mut self, boxes: u32) {
        for (in_box, net) in std::mem::take(&mut self.pending) {
            let neutral = self.neutral_of(Self::circuit_of(net));
            let load = self.load();
            let on = [(Terminal::Hot, net), (Terminal::Neutral, neutral)];
            self.device(in_box, DeviceKind::Lampholder(Some(load)), &on);
            self.loaded.push(Self::circuit_of(net));
        }
        for in_box in 1..=boxes {
            if let Some(circuit) = self.hot_in(in_box)
                && self.dice.chance(0.4)
            {
                self.receptacle(in_box, Net::Hot(circuit));
            }
        }
        for circuit in 1..=u32::try_from(self.circuits.len()).expect("few") {
            let at = self
                .here
                .iter()
                .find(|(_, net)| *net == Net::Hot(circuit))
                .map(|(of, _)| *of);
            if let (Some(in_box), false) = (at, self.loaded.contains(&circuit)) {
                self.receptacle(in_box, Net::Hot(circuit));
            }
        }
        if self.wiring.description.breakers.len() == 1 && self.dice.chance(0.6) {
            let leg = self.leg();
            self.breaker(vec![leg]);
        }
        for in_box in 1..=boxes {
            self.join(in_box);
        }
    }

    /// Joins what is of one net in a box: an end straight on a terminal where these are the two, otherwise a joint.
    fn join(&mut self, in_box: u32) {
        let mut groups: Vec<(Net, Vec<Contact>)> = Vec::new();
        for (contact, net) in &self.wiring.nets {
            if self.wiring.description.box_of_contact(*contact) != Some(in_box) {
                continue;
            }
            match groups.iter_mut().find(|(n, _)| n == net) {
                Some((_, list)) => list.push(*contact),
                None => groups.push((*net, vec![*contact])),
            }
        }
        let mut joint = 0;
        for (_, contacts) in groups {
            let mut put =
                |contact: Contact, at: At| self.wiring.description.made.push(Made { contact, at });
            match contacts.as_slice() {
                [Contact::End(end)] => put(Contact::End(*end), At::Capped),
                [Contact::Terminal { .. }] => {}
                [Contact::End(end), Contact::Terminal { device, terminal }] => {
                    let at = At::Terminal {
                        device: *device,
                        terminal: *terminal,
                    };
                    put(Contact::End(*end), at);
                }
                _ => {
                    joint += 1;
                    for contact in contacts {
                        put(contact, At::Joint(joint));
                    }
                }
            }
        }
    }
}
