//! The house as it really is: elements between nodes, built from a wiring, changed by a fault, and measured.

use std::collections::BTreeMap;

use calc::wiring::conductor::Size;
use calc::wiring::open_box::description::{
    At, Colour, Contact, Description, DeviceKind, End, Fed, Goes, Load, LoadKind, SwitchForm,
    Terminal,
};
use calc::wiring::open_box::reading::{Meter, Point, Probe, Round};
use calc::wiring::open_box::situation::{Apart, LoadId, Position, Situation, SwitchId};
use calc::wiring::panel::Leg;

use super::circuit::{C, Link, Resistances, Solution, Value, pieces, resistances, solve};
use super::dice::Dice;

/// A node by what it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Name {
    /// The transformer's neutral, the reference.
    Source,
    /// A leg at the transformer.
    SourceLeg(Leg),
    /// A leg, neutral or ground at the service, where a feeder begins.
    Service(u8),
    /// A leg in the panel.
    Panel(Leg),
    /// The neutral bar.
    NeutralBar,
    /// The ground bar.
    GroundBar,
    /// A pipe.
    Pipe,
    /// Behind a pole of a breaker.
    Pole(u32, usize),
    /// A contact.
    Contact(Contact),
    /// A joint of a box.
    Joint(u32, u32),
    /// What a far end lands on in a fixture or switch.
    Fixture(u32, usize),
    /// A terminal without a conductor in the switch beyond a cable.
    Beyond(u32, Terminal),
}

/// What an element is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum What {
    /// A supply conductor of a leg.
    Supply,
    /// The supply's neutral.
    ServiceNeutral,
    /// A pole.
    Pole(u32),
    /// A conductor of a cable.
    Wire(u32, usize),
    /// A contact held by a joint or terminal of its box.
    Held(Contact),
    /// A far end held by what it lands on.
    Landing(End),
    /// A way through a switch.
    Way(SwitchId, Position),
    /// A load, with its ohms when cold.
    Load(LoadId, f64),
    /// The way through the earth.
    Earth,
    /// Anything else that is always there.
    Fixed,
}

/// An element of the house.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// Its nodes and what it has.
    pub link: Link,
    /// What it is.
    pub what: What,
}

/// The house.
#[derive(Clone, Debug)]
pub struct Truth {
    names: BTreeMap<Name, usize>,
    /// Its elements.
    pub elements: Vec<Element>,
    legs_v: [f64; 2],
}

/// What an instrument without errors shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ideal {
    /// Volts.
    Volts(f64),
    /// Volts to ground at the tip of a tester, and whether metal or loads hold them.
    Tip(f64, bool),
    /// Amperes.
    Amps(f64),
    /// Ohms, and whether metal alone leads through; `None`: open.
    Ohms(Option<(f64, bool)>),
}

/// Ohms per 1000 ft at 75 C, uncoated copper. Source: NFPA 70 Chapter 9 Table 8.
fn ohm_per_kft(size: Size) -> f64 {
    match size {
        Size::Awg14 => 3.07,
        Size::Awg12 => 1.93,
        Size::Awg10 => 1.21,
        Size::Awg6 => 0.491,
        other => panic!("no house has {other:?}"),
    }
}

impl Truth {
    /// The house of a wiring: exactly so, or with chance in its joints and loads.
    pub fn of(wiring: &Description, mut chance: Option<&mut Dice>) -> Self {
        let mut truth = Self {
            names: BTreeMap::new(),
            elements: Vec::new(),
            legs_v: [wiring.panel.leg_a_v, wiring.panel.leg_b_v],
        };
        truth.supply(wiring);
        for breaker in &wiring.breakers {
            for (pole, leg) in breaker.legs.iter().enumerate() {
                let what = What::Pole(breaker.id);
                truth.ohm(Name::Panel(*leg), Name::Pole(breaker.id, pole), 0.005, what);
            }
        }
        for cable in &wiring.cables {
            let feet = cable.length_ft.unwrap_or(30.0);
            for conductor in 0..cable.conductors.len() {
                let [near, far] = [
                    End::near(cable.id, conductor),
                    End::far(cable.id, conductor),
                ];
                truth.ohm(
                    Name::Contact(Contact::End(near)),
                    Name::Contact(Contact::End(far)),
                    ohm_per_kft(cable.size) / 1000.0 * feet,
                    What::Wire(cable.id, conductor),
                );
                for other in 0..conductor {
                    for side in [near.side, far.side] {
                        let end = |conductor| End {
                            cable: cable.id,
                            conductor,
                            side,
                        };
                        let [one, two] =
                            [conductor, other].map(|c| Name::Contact(Contact::End(end(c))));
                        // 20 pF a foot, half of it at each end.
                        truth.put(one, two, Value::Farad(10e-12 * feet), What::Fixed);
                    }
                }
            }
            truth.far(wiring, cable.id, &mut chance);
        }
        for device in &wiring.devices {
            let at = |terminal| {
                Name::Contact(Contact::Terminal {
                    device: device.id,
                    terminal,
                })
            };
            for terminal in device.kind.terminals().iter().chain(&[Terminal::Ground]) {
                truth.node(at(*terminal));
            }
            match device.kind {
                DeviceKind::Switch(form) => {
                    let on: Vec<Name> = form.terminals().iter().map(|t| at(*t)).collect();
                    truth.ways(SwitchId::Device(device.id), form, &on);
                }
                DeviceKind::Receptacle {
                    hot_tab,
                    neutral_tab,
                    upper,
                    lower,
                } => {
                    if hot_tab {
                        truth.ohm(
                            at(Terminal::Hot),
                            at(Terminal::HotLower),
                            0.001,
                            What::Fixed,
                        );
                    }
                    if neutral_tab {
                        truth.ohm(
                            at(Terminal::Neutral),
                            at(Terminal::NeutralLower),
                            0.001,
                            What::Fixed,
                        );
                    }
                    if let Some(load) = upper {
                        let id = LoadId::Device(device.id);
                        truth.load(
                            at(Terminal::Hot),
                            at(Terminal::Neutral),
                            &load,
                            id,
                            &mut chance,
                        );
                    }
                    if let Some(load) = lower {
                        let id = LoadId::Lower(device.id);
                        truth.load(
                            at(Terminal::HotLower),
                            at(Terminal::NeutralLower),
                            &load,
                            id,
                            &mut chance,
                        );
                    }
                }
                DeviceKind::Lampholder(Some(load)) => {
                    let id = LoadId::Device(device.id);
                    truth.load(
                        at(Terminal::Hot),
                        at(Terminal::Neutral),
                        &load,
                        id,
                        &mut chance,
                    );
                }
                DeviceKind::Lampholder(None) => {}
            }
        }
        for made in &wiring.made {
            let in_box = wiring
                .box_of_contact(made.contact)
                .expect("a contact in a box");
            let to = match made.at {
                At::Joint(joint) => Name::Joint(in_box, joint),
                At::Terminal { device, terminal } => {
                    Name::Contact(Contact::Terminal { device, terminal })
                }
                At::Capped | At::Loose => continue,
            };
            let ohm = chance
                .as_deref_mut()
                .map_or(0.001, |dice| dice.between(0.0005, 0.003));
            truth.ohm(
                Name::Contact(made.contact),
                to,
                ohm,
                What::Held(made.contact),
            );
        }
        truth
    }

    /// The node of a name, new if need be.
    pub fn node(&mut self, name: Name) -> usize {
        let next = self.names.len();
        *self.names.entry(name).or_insert(next)
    }

    /// The node of a name that is there.
    pub fn find(&self, name: Name) -> Option<usize> {
        self.names.get(&name).copied()
    }

    fn put(&mut self, from: Name, to: Name, value: Value, what: What) {
        let (from, to) = (self.node(from), self.node(to));
        self.elements.push(Element {
            link: Link { from, to, value },
            what,
        });
    }

    /// Puts ohms between two named nodes.
    pub fn ohm(&mut self, from: Name, to: Name, ohm: f64, what: What) {
        self.put(from, to, Value::Ohm(ohm), what);
    }

    fn load(
        &mut self,
        from: Name,
        to: Name,
        load: &Load,
        id: LoadId,
        chance: &mut Option<&mut Dice>,
    ) {
        let rated = load.volts * load.volts / load.watts;
        let (hot, cold) = match chance {
            None => (rated, rated),
            Some(dice) => {
                let cold = match load.kind {
                    LoadKind::Filament => dice.between(0.06, 0.12),
                    LoadKind::Electronic => 10_f64.powf(dice.between(0.5, 4.0)),
                    LoadKind::Heater => dice.between(0.93, 1.0),
                    LoadKind::Motor => dice.between(0.1, 0.4),
                    LoadKind::Other => dice.between(0.3, 3.0),
                };
                (rated * dice.between(0.92, 1.08), rated * cold)
            }
        };
        self.ohm(from, to, hot, What::Load(id, cold));
    }

    fn supply(&mut self, wiring: &Description) {
        let source = wiring.panel.source_ohm;
        let mut ends = [
            Name::Panel(Leg::A),
            Name::Panel(Leg::B),
            Name::NeutralBar,
            Name::GroundBar,
        ];
        if let Fed::Feeder {
            size,
            ground_size,
            length_ft,
            ..
        } = wiring.panel.fed
        {
            for (at, end) in ends.iter_mut().enumerate() {
                let service = Name::Service(u8::try_from(at).expect("four"));
                let size = if at == 3 { ground_size } else { size };
                self.ohm(
                    service,
                    *end,
                    ohm_per_kft(size) / 1000.0 * length_ft,
                    What::Fixed,
                );
                *end = service;
            }
        }
        let [a, b, neutral, ground] = ends;
        self.ohm(Name::SourceLeg(Leg::A), a, source, What::Supply);
        self.ohm(Name::SourceLeg(Leg::B), b, source, What::Supply);
        self.ohm(neutral, Name::Source, source, What::ServiceNeutral);
        self.ohm(ground, neutral, 0.002, What::Fixed);
        self.ohm(ground, Name::Source, 25.0, What::Earth);
        self.ohm(Name::Pipe, ground, 0.002, What::Fixed);
    }

    fn far(&mut self, wiring: &Description, id: u32, chance: &mut Option<&mut Dice>) {
        let cable = wiring.cable(id).expect("a cable");
        let count = cable.conductors.len();
        let mut land = |truth: &mut Self, conductor: usize, on: Name| {
            let end = End::far(id, conductor);
            let ohm = chance
                .as_deref_mut()
                .map_or(0.001, |dice| dice.between(0.0005, 0.003));
            truth.ohm(
                Name::Contact(Contact::End(end)),
                on,
                ohm,
                What::Landing(end),
            );
        };
        match &cable.goes {
            Goes::Panel(on) => {
                for (conductor, colour) in cable.conductors.iter().enumerate() {
                    let pole = on.iter().find(|o| o.conductor == conductor);
                    match (pole, colour) {
                        (Some(pole), _) => {
                            land(self, conductor, Name::Pole(pole.breaker, pole.pole))
                        }
                        (None, Colour::White) => land(self, conductor, Name::NeutralBar),
                        (None, Colour::Bare) => land(self, conductor, Name::GroundBar),
                        (None, _) => {}
                    }
                }
            }
            Goes::Loads(loads) => {
                for conductor in 0..count {
                    land(self, conductor, Name::Fixture(id, conductor));
                }
                for (place, across) in loads.iter().enumerate() {
                    let [from, to] = [across.from, across.to].map(|c| Name::Fixture(id, c));
                    self.load(
                        from,
                        to,
                        &across.load,
                        LoadId::Beyond {
                            cable: id,
                            load: place,
                        },
                        chance,
                    );
                }
            }
            Goes::Switch(switch) => {
                for conductor in 0..count {
                    land(self, conductor, Name::Fixture(id, conductor));
                }
                let at = |terminal: Terminal| {
                    let on = switch.on.iter().find(|(t, _)| *t == terminal);
                    on.map_or(Name::Beyond(id, terminal), |(_, c)| Name::Fixture(id, *c))
                };
                let terminals: Vec<Name> = switch.form.terminals().iter().map(|t| at(*t)).collect();
                self.ways(SwitchId::Beyond(id), switch.form, &terminals);
                if let Some((load, to)) = &switch.load {
                    let behind = if switch.form == SwitchForm::SinglePole {
                        Terminal::Second
                    } else {
                        Terminal::Common
                    };
                    let load_id = LoadId::Beyond { cable: id, load: 0 };
                    self.load(at(behind), Name::Fixture(id, *to), load, load_id, chance);
                }
            }
            Goes::Box(_) | Goes::NotKnown => {}
        }
    }

    fn ways(&mut self, switch: SwitchId, form: SwitchForm, on: &[Name]) {
        match (form, on) {
            (SwitchForm::SinglePole, [one, other]) => {
                self.ohm(*one, *other, 0.003, What::Way(switch, Position::One));
            }
            (SwitchForm::ThreeWay, [common, one, two]) => {
                self.ohm(*common, *one, 0.003, What::Way(switch, Position::One));
                self.ohm(*common, *two, 0.003, What::Way(switch, Position::Two));
            }
            _ => panic!("no house has {form:?}"),
        }
    }

    /// The place of an element.
    pub fn place(&self, what: What) -> Option<usize> {
        self.elements.iter().position(|e| e.what == what)
    }

    /// The links that are closed in a situation; loads with their ohms when cold if asked for.
    fn closed(&self, situation: &Situation, cold: bool) -> Vec<(Link, What)> {
        let joint = |in_box, joint| self.find(Name::Joint(in_box, joint));
        let off = situation.everything_off;
        self.elements
            .iter()
            .filter(|element| match element.what {
                What::Supply => !off,
                What::Pole(breaker) => !off && !situation.breakers_off.contains(&breaker),
                What::Way(switch, position) => situation.position(switch) == position,
                What::Load(load, _) => !situation.loads_off.contains(&load),
                What::Held(contact) => !situation.apart.iter().any(|apart| match *apart {
                    Apart::Contact(apart) => apart == contact,
                    Apart::Joint { in_box, joint: j } => joint(in_box, j) == Some(element.link.to),
                }),
                _ => true,
            })
            .map(|element| {
                let mut link = element.link;
                if let (What::Load(_, ohm), true) = (element.what, cold) {
                    link.value = Value::Ohm(ohm);
                }
                (link, element.what)
            })
            .collect()
    }

    /// The house in a situation, with the supply at so much of its usual volts.
    pub fn scene(&self, situation: &Situation, supply: f64) -> Scene<'_> {
        self.scene_of(situation, supply, true)
    }

    /// The same without stray capacitance.
    pub fn conducted(&self, situation: &Situation) -> Scene<'_> {
        self.scene_of(situation, 1.0, false)
    }

    fn scene_of(&self, situation: &Situation, supply: f64, strays: bool) -> Scene<'_> {
        let nodes = self.names.len();
        let closed = self.closed(situation, false);
        let links: Vec<Link> = closed
            .iter()
            .map(|(link, _)| *link)
            .filter(|link| strays || matches!(link.value, Value::Ohm(_)))
            .collect();
        let sources: Vec<(usize, C)> = [
            (Name::Source, 0.0),
            (Name::SourceLeg(Leg::A), self.legs_v[0] * supply),
            (Name::SourceLeg(Leg::B), -self.legs_v[1] * supply),
        ]
        .into_iter()
        .map(|(name, volts)| (self.find(name).expect("a supply"), C::new(volts, 0.0)))
        .collect();
        let solid: Vec<Link> = links
            .iter()
            .filter(|l| matches!(l.value, Value::Ohm(_)))
            .copied()
            .collect();
        let by_ohms = pieces(nodes, &solid);
        let fed: Vec<usize> = sources.iter().map(|(node, _)| by_ohms[*node]).collect();
        Scene {
            truth: self,
            solution: solve(nodes, &links, &sources),
            firm: by_ohms.iter().map(|piece| fed.contains(piece)).collect(),
            off: situation.everything_off.then(|| {
                let cold: Vec<(Link, What)> = self.closed(situation, true);
                let links: Vec<Link> = cold.iter().map(|(link, _)| *link).collect();
                let metal: Vec<Link> = cold
                    .iter()
                    .filter(|(l, what)| {
                        matches!(l.value, Value::Ohm(_))
                            && !matches!(what, What::Load(..) | What::Earth)
                    })
                    .map(|(link, _)| *link)
                    .collect();
                (resistances(nodes, &links), pieces(nodes, &metal))
            }),
            closed,
        }
    }

    fn point(&self, point: Point) -> Option<usize> {
        self.find(match point {
            Point::End(end) => Name::Contact(Contact::End(end)),
            Point::Joint { in_box, joint } => Name::Joint(in_box, joint),
            Point::Terminal { device, terminal } => {
                Name::Contact(Contact::Terminal { device, terminal })
            }
            Point::NeutralBar => Name::NeutralBar,
            Point::GroundBar => Name::GroundBar,
            Point::Pipe => Name::Pipe,
        })
    }
}

/// The house in a situation, solved.
#[derive(Clone, Debug)]
pub struct Scene<'a> {
    truth: &'a Truth,
    closed: Vec<(Link, What)>,
    /// Its voltages.
    pub solution: Solution,
    firm: Vec<bool>,
    off: Option<(Resistances, Vec<usize>)>,
}

impl Scene<'_> {
    /// Volts of a named node to the ground bar; `None`: floating, or not there.
    pub fn to_ground(&self, name: Name) -> Option<f64> {
        let ground = self.truth.find(Name::GroundBar)?;
        Some(
            self.solution
                .between(self.truth.find(name)?, ground)?
                .norm(),
        )
    }

    /// The most that flows in a pole of a breaker, amperes.
    pub fn most_pole_a(&self) -> f64 {
        let poles = self
            .closed
            .iter()
            .filter(|(_, what)| matches!(what, What::Pole(_)));
        poles
            .map(|(link, _)| self.solution.amps(link).norm())
            .fold(0.0, f64::max)
    }

    fn wire_amps(&self, counts: impl Fn(u32, usize) -> bool) -> f64 {
        let mut sum = C::new(0.0, 0.0);
        for (link, what) in &self.closed {
            if matches!(what, What::Wire(cable, conductor) if counts(*cable, *conductor)) {
                sum += self.solution.amps(link);
            }
        }
        sum.norm()
    }

    /// What an instrument without errors shows.
    pub fn see(&self, probe: &Probe) -> Ideal {
        let node = |point| self.truth.point(point).expect("a point of the house");
        match *probe {
            Probe::Volts { from, to, meter } => {
                let ohm = match meter {
                    Meter::HighImpedance => 10e6,
                    Meter::LowImpedance => 3000.0,
                };
                Ideal::Volts(self.solution.metered(node(from), node(to), ohm))
            }
            Probe::Tester { at } => {
                let (at, ground) = (node(at), node(Point::GroundBar));
                let volts = self.solution.between(at, ground).map_or(0.0, |v| v.norm());
                Ideal::Tip(volts, self.firm[at] && self.firm[ground])
            }
            Probe::Amps {
                round: Round::Conductor(end),
            } => Ideal::Amps(
                self.wire_amps(|cable, conductor| (cable, conductor) == (end.cable, end.conductor)),
            ),
            Probe::Amps {
                round: Round::Cable { cable: of, .. },
            } => Ideal::Amps(self.wire_amps(|cable, _| cable == of)),
            Probe::Ohms { from, to } => {
                let (resistances, metal) = self.off.as_ref().expect("ohms with everything off");
                let (from, to) = (node(from), node(to));
                let ohm = resistances.between(from, to);
                Ideal::Ohms(ohm.map(|ohm| (ohm, metal[from] == metal[to])))
            }
        }
    }
}
