//! Faults put into a house: where each kind can be, and what it changes.

use calc::wiring::open_box::description::{
    At, Contact, Description, DeviceKind, End, Goes, Side, SwitchForm, Terminal,
};
use calc::wiring::open_box::faults::{FaultKind, Place};
use calc::wiring::open_box::reading::Point;

use super::circuit::{Link, Value};
use super::dice::Dice;
use super::truth::{Element, Name, Truth, What};
use super::wirings::{Net, Wiring};

/// The kinds that are put into houses.
pub const KINDS: [FaultKind; 14] = [
    FaultKind::NothingWrong,
    FaultKind::StrayOnly,
    FaultKind::NeutralOpen,
    FaultKind::NeutralBorrowed,
    FaultKind::NeutralsJoined,
    FaultKind::HotsJoined,
    FaultKind::OtherBreaker,
    FaultKind::HotNeutralSwapped,
    FaultKind::NeutralToGround,
    FaultKind::GroundOpen,
    FaultKind::SwitchInNeutral,
    FaultKind::TravellersMisplaced,
    FaultKind::PoorJoint,
    FaultKind::ServiceNeutralLost,
];

/// Two wires that touch, ohms.
const TOUCH_OHM: f64 = 0.002;

/// A change of the house.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Change {
    Cut(What),
    Ohm(What, f64),
    Join(usize, usize),
    Lead(What, usize),
    Hold(Contact, usize, usize),
}

/// A fault in a house.
#[derive(Clone, Debug, PartialEq)]
pub struct Planted {
    /// What is wrong.
    pub kind: FaultKind,
    /// The places by which a diagnosis may name it: any one of these sets.
    pub places: Vec<Vec<Place>>,
    changes: Vec<Change>,
}

impl Planted {
    /// Puts it into a house.
    pub fn put(&self, truth: &mut Truth) {
        for change in &self.changes {
            match *change {
                Change::Cut(what) => truth.elements.retain(|e| e.what != what),
                Change::Ohm(what, ohm) => {
                    for element in truth.elements.iter_mut().filter(|e| e.what == what) {
                        element.link.value = Value::Ohm(ohm);
                    }
                }
                Change::Join(from, to) => push(truth, from, to, What::Fixed),
                Change::Hold(contact, from, to) => push(truth, from, to, What::Held(contact)),
                Change::Lead(what, to) => {
                    for element in truth.elements.iter_mut().filter(|e| e.what == what) {
                        element.link.to = to;
                    }
                }
            }
        }
    }
}

fn push(truth: &mut Truth, from: usize, to: usize, what: What) {
    let link = Link {
        from,
        to,
        value: Value::Ohm(TOUCH_OHM),
    };
    truth.elements.push(Element { link, what });
}

/// Something that is held, in a box or beyond.
#[derive(Clone, Copy, Debug)]
struct Held {
    what: What,
    contact: Contact,
    net: Net,
    in_box: Option<u32>,
    from: usize,
    to: usize,
}

impl Held {
    const fn place(&self) -> Place {
        Place::At(point_of(self.contact))
    }

    fn end(&self) -> Option<End> {
        match self.contact {
            Contact::End(end) => Some(end),
            Contact::Terminal { .. } => None,
        }
    }
}

const fn point_of(contact: Contact) -> Point {
    match contact {
        Contact::End(end) => Point::End(end),
        Contact::Terminal { device, terminal } => Point::Terminal { device, terminal },
    }
}

struct Finder<'a> {
    d: &'a Description,
    wiring: &'a Wiring,
    truth: &'a Truth,
    held: Vec<Held>,
    found: Vec<Planted>,
}

/// A fault of a kind somewhere in a house; `None` where it has no room for one.
pub fn plant(kind: FaultKind, wiring: &Wiring, truth: &Truth, dice: &mut Dice) -> Option<Planted> {
    let all = places_for(kind, wiring, truth, dice);
    dice.pick(&all)
}

/// A kind of fault at every place of a house that has room for it; some more than once, since they are so more often.
pub fn places_for(
    kind: FaultKind,
    wiring: &Wiring,
    truth: &Truth,
    dice: &mut Dice,
) -> Vec<Planted> {
    let held = truth.elements.iter().filter_map(|element| {
        let (contact, in_box) = match element.what {
            What::Held(contact) => (contact, wiring.description.box_of_contact(contact)),
            What::Landing(end) => (Contact::End(end), None),
            _ => return None,
        };
        let net = wiring.net(contact)?;
        let Link { from, to, .. } = element.link;
        Some(Held {
            what: element.what,
            contact,
            net,
            in_box,
            from,
            to,
        })
    });
    let mut finder = Finder {
        d: &wiring.description,
        wiring,
        truth,
        held: held.collect(),
        found: Vec::new(),
    };
    finder.find(kind, dice);
    finder.found
}

impl Finder<'_> {
    fn find(&mut self, kind: FaultKind, dice: &mut Dice) {
        match kind {
            FaultKind::NothingWrong | FaultKind::StrayOnly => {
                self.push(kind, vec![Vec::new()], Vec::new())
            }
            FaultKind::NeutralOpen => self.opens(kind, |net| matches!(net, Net::Neutral(_))),
            FaultKind::GroundOpen => self.opens(kind, |net| net == Net::Ground),
            FaultKind::NeutralBorrowed => self.borrowed(),
            FaultKind::NeutralsJoined => self.joined(
                kind,
                |one, other| matches!((one, other), (Net::Neutral(a), Net::Neutral(b)) if a != b),
            ),
            FaultKind::HotsJoined => self.joined(
                kind,
                |one, other| matches!((one, other), (Net::Hot(a), Net::Hot(b)) if a != b),
            ),
            FaultKind::NeutralToGround => self.grounded(),
            FaultKind::OtherBreaker => self.other_breaker(),
            FaultKind::HotNeutralSwapped => self.swapped(),
            FaultKind::SwitchInNeutral => self.switch_in_neutral(),
            FaultKind::TravellersMisplaced => self.travellers(),
            FaultKind::PoorJoint => {
                let ohm = 10_f64.powf(dice.between(-0.3, 1.5));
                for held in self.held.clone() {
                    if !matches!(held.net, Net::Ground | Net::Spare(_)) {
                        self.push(kind, self.names(&held), vec![Change::Ohm(held.what, ohm)]);
                    }
                }
            }
            FaultKind::ServiceNeutralLost => {
                self.push(
                    kind,
                    vec![vec![Place::Supply]],
                    vec![Change::Cut(What::ServiceNeutral)],
                );
            }
            FaultKind::HotOpen | FaultKind::FeederNeutralLost => {}
        }
    }

    fn push(&mut self, kind: FaultKind, places: Vec<Vec<Place>>, changes: Vec<Change>) {
        self.found.push(Planted {
            kind,
            places,
            changes,
        });
    }

    /// The names of a contact that came off: in a joint of two, either is.
    fn names(&self, held: &Held) -> Vec<Vec<Place>> {
        let mut names = vec![vec![held.place()]];
        if let (Some(in_box), At::Joint(joint)) = (held.in_box, self.d.at(held.contact)) {
            let all = self.d.joint(in_box, joint);
            if all.len() == 2 {
                names.extend(
                    all.iter()
                        .filter(|c| **c != held.contact)
                        .map(|c| vec![Place::At(point_of(*c))]),
                );
            }
        }
        names
    }

    fn opens(&mut self, kind: FaultKind, counts: fn(Net) -> bool) {
        for held in self.held.clone() {
            if counts(held.net) {
                self.push(kind, self.names(&held), vec![Change::Cut(held.what)]);
            }
        }
    }

    /// The nets of a box, each with a node and its place: its joint if it has one.
    fn nets_in(&self, in_box: u32) -> Vec<(Net, usize, Place)> {
        let mut nets: Vec<(Net, usize, Place)> = Vec::new();
        for joints in [true, false] {
            for held in self.held.iter().filter(|h| h.in_box == Some(in_box)) {
                let there = nets.iter().any(|(net, ..)| *net == held.net);
                match self.d.at(held.contact) {
                    _ if there => {}
                    At::Joint(joint) if joints => {
                        nets.push((held.net, held.to, Place::At(Point::Joint { in_box, joint })));
                    }
                    At::Terminal { .. } if !joints => {
                        nets.push((held.net, held.from, held.place()))
                    }
                    _ => {}
                }
            }
        }
        nets
    }

    /// Far ends in fixtures: what each lands on.
    fn fixtures(&self) -> Vec<Held> {
        let to_fixture = |held: &&Held| {
            matches!(held.what, What::Landing(end) if matches!(
                self.d.cable(end.cable).map(|c| &c.goes), Some(Goes::Loads(_) | Goes::Switch(_))))
        };
        self.held.iter().filter(to_fixture).copied().collect()
    }

    fn joined(&mut self, kind: FaultKind, fits: fn(Net, Net) -> bool) {
        for &in_box in &self.d.boxes {
            let nets = self.nets_in(in_box);
            for (at, (one, from, place)) in nets.iter().enumerate() {
                for (other, to, with) in nets.iter().skip(at + 1) {
                    if fits(*one, *other) {
                        // In the box more often than out of it.
                        for _ in 0..2 {
                            self.push(
                                kind,
                                vec![vec![*place, *with]],
                                vec![Change::Join(*from, *to)],
                            );
                        }
                    }
                }
            }
        }
        let fixtures = self.fixtures();
        for (at, one) in fixtures.iter().enumerate() {
            for other in fixtures.iter().skip(at + 1) {
                if fits(one.net, other.net) {
                    self.push(
                        kind,
                        vec![vec![one.place(), other.place()]],
                        vec![Change::Join(one.to, other.to)],
                    );
                }
            }
        }
    }

    fn is_load_side(&self, held: &Held) -> bool {
        match held.contact {
            Contact::Terminal { .. } => true,
            Contact::End(end) => {
                let goes = self.d.cable(end.cable).map(|cable| &cable.goes);
                end.side == Side::Near
                    && matches!(goes, Some(Goes::Loads(_) | Goes::Switch(_) | Goes::Box(_)))
            }
        }
    }

    fn borrowed(&mut self) {
        let kind = FaultKind::NeutralBorrowed;
        for held in self.held.clone() {
            let (Some(in_box), Net::Neutral(own)) = (held.in_box, held.net) else {
                continue;
            };
            if !self.is_load_side(&held) {
                continue;
            }
            for (net, node, place) in self.nets_in(in_box) {
                if matches!(net, Net::Neutral(other) if other != own) {
                    for _ in 0..2 {
                        let names = vec![vec![held.place(), place]];
                        self.push(kind, names, vec![Change::Lead(held.what, node)]);
                    }
                }
            }
        }
        let fixtures = self.fixtures();
        for one in &fixtures {
            for other in &fixtures {
                if matches!((one.net, other.net), (Net::Neutral(a), Net::Neutral(b)) if a != b) {
                    let changes = vec![Change::Cut(one.what), Change::Join(one.to, other.to)];
                    self.push(kind, vec![vec![one.place(), other.place()]], changes);
                }
            }
        }
    }

    fn grounded(&mut self) {
        let kind = FaultKind::NeutralToGround;
        for &in_box in &self.d.boxes {
            let nets = self.nets_in(in_box);
            let ground = nets.iter().find(|(net, ..)| *net == Net::Ground).copied();
            for (net, node, place) in nets {
                if let (Net::Neutral(_), Some((_, bare, with))) = (net, ground) {
                    self.push(
                        kind,
                        vec![vec![place, with]],
                        vec![Change::Join(node, bare)],
                    );
                }
            }
        }
        let fixtures = self.fixtures();
        for white in fixtures.iter().filter(|h| matches!(h.net, Net::Neutral(_))) {
            for bare in fixtures.iter().filter(|h| h.net == Net::Ground) {
                if white.end().map(|e| e.cable) == bare.end().map(|e| e.cable) {
                    let names = vec![vec![white.place(), bare.place()]];
                    self.push(kind, names, vec![Change::Join(white.to, bare.to)]);
                }
            }
        }
    }

    fn other_breaker(&mut self) {
        let kind = FaultKind::OtherBreaker;
        let on_poles: Vec<(Held, u32)> = self
            .held
            .iter()
            .filter_map(|held| {
                let end = held.end().filter(|_| held.in_box.is_none())?;
                let Goes::Panel(on) = &self.d.cable(end.cable)?.goes else {
                    return None;
                };
                Some((
                    *held,
                    on.iter().find(|o| o.conductor == end.conductor)?.breaker,
                ))
            })
            .collect();
        for (at, (held, breaker)) in on_poles.iter().enumerate() {
            for other in &self.d.breakers {
                for pole in 0..other.legs.len() {
                    let node = self.truth.find(Name::Pole(other.id, pole)).expect("a pole");
                    if other.id != *breaker {
                        let names = vec![vec![
                            held.place(),
                            Place::Pole {
                                breaker: other.id,
                                pole,
                            },
                        ]];
                        self.push(kind, names, vec![Change::Lead(held.what, node)]);
                    }
                }
            }
            for (with, other) in on_poles.iter().skip(at + 1) {
                if other != breaker {
                    let changes = vec![
                        Change::Lead(held.what, with.to),
                        Change::Lead(with.what, held.to),
                    ];
                    self.push(kind, vec![vec![held.place(), with.place()]], changes);
                }
            }
        }
    }

    /// What is on a terminal: an end, or the terminal's own wire in a joint.
    fn on(&self, device: u32, terminal: Terminal) -> Option<(Held, usize)> {
        let contact = Contact::Terminal { device, terminal };
        let node = self.truth.find(Name::Contact(contact))?;
        let held = self
            .held
            .iter()
            .find(|h| h.contact == contact || h.to == node)?;
        Some((*held, node))
    }

    /// What is on two terminals changes places.
    fn exchanged(
        &self,
        device: u32,
        one: Terminal,
        other: Terminal,
    ) -> Option<(Held, Held, Vec<Change>)> {
        let ((first, at_first), (second, at_second)) =
            (self.on(device, one)?, self.on(device, other)?);
        let own = |held: &Held| held.end().is_none();
        let changes = match (own(&first), own(&second)) {
            (true, true) | (false, false) => {
                vec![
                    Change::Lead(first.what, second.to),
                    Change::Lead(second.what, first.to),
                ]
            }
            (true, false) => vec![
                Change::Cut(first.what),
                Change::Lead(second.what, at_first),
                Change::Hold(second_contact(device, other), at_second, first.to),
            ],
            (false, true) => vec![
                Change::Cut(second.what),
                Change::Lead(first.what, at_second),
                Change::Hold(second_contact(device, one), at_first, second.to),
            ],
        };
        Some((first, second, changes))
    }

    fn swapped(&mut self) {
        let kind = FaultKind::HotNeutralSwapped;
        for hot in self.held.clone() {
            let Some(end) = hot.end() else { continue };
            let goes = self.d.cable(end.cable).map(|c| &c.goes);
            let at_switch = end.side == Side::Far && matches!(goes, Some(Goes::Switch(_)));
            if at_switch || !matches!(hot.net, Net::Hot(_) | Net::Switched(..)) {
                continue;
            }
            for white in self.held.clone() {
                let same = white
                    .end()
                    .is_some_and(|e| (e.cable, e.side) == (end.cable, end.side));
                if same && matches!(white.net, Net::Neutral(_)) {
                    let changes = vec![
                        Change::Lead(hot.what, white.to),
                        Change::Lead(white.what, hot.to),
                    ];
                    self.push(kind, vec![vec![hot.place(), white.place()]], changes);
                }
            }
        }
        for device in &self.d.devices {
            if matches!(device.kind, DeviceKind::Switch(_)) {
                continue;
            }
            if let Some((hot, white, changes)) =
                self.exchanged(device.id, Terminal::Hot, Terminal::Neutral)
            {
                let cables = [hot, white].map(|h| h.end().map(|e| e.cable));
                if cables[0].is_none() || cables[0] != cables[1] {
                    for _ in 0..2 {
                        let names = terminals(device.id, Terminal::Hot, Terminal::Neutral);
                        self.push(kind, vec![names], changes.clone());
                    }
                }
            }
        }
    }

    fn travellers(&mut self) {
        for device in &self.d.devices {
            if device.kind != DeviceKind::Switch(SwitchForm::ThreeWay) {
                continue;
            }
            for traveller in [Terminal::TravellerOne, Terminal::TravellerTwo] {
                if let Some((.., changes)) = self.exchanged(device.id, Terminal::Common, traveller)
                {
                    let names = vec![terminals(device.id, Terminal::Common, traveller)];
                    self.push(FaultKind::TravellersMisplaced, names, changes);
                }
            }
        }
    }

    /// The whites, held in a box, of cables to a load whose hot is switched.
    fn whites_with(&self, in_box: u32, switched: Net) -> Vec<Held> {
        let with = |end: End| {
            self.wiring.nets.iter().any(|(c, net)| {
                *net == switched
                    && matches!(c, Contact::End(e) if (e.cable, e.side) == (end.cable, end.side))
            })
        };
        let fits = |held: &&Held| {
            held.in_box == Some(in_box)
                && matches!(held.net, Net::Neutral(_))
                && held
                    .end()
                    .is_some_and(|end| end.side == Side::Near && with(end))
        };
        self.held.iter().filter(fits).copied().collect()
    }

    fn switch_in_neutral(&mut self) {
        let kind = FaultKind::SwitchInNeutral;
        let mut switches: Vec<(u32, [(Held, usize); 2])> = Vec::new();
        for device in &self.d.devices {
            if device.kind == DeviceKind::Switch(SwitchForm::SinglePole)
                && let Some(first) = self.on(device.id, Terminal::First)
                && let Some(second) = self.on(device.id, Terminal::Second)
            {
                switches.push((device.in_box, [first, second]));
            }
        }
        for cable in &self.d.cables {
            let Goes::Switch(switch) = &cable.goes else {
                continue;
            };
            let held = |end| self.held.iter().find(|h| h.end() == Some(end)).copied();
            match (switch.form, &switch.load, switch.on.as_slice()) {
                (SwitchForm::SinglePole, None, [(_, first), (_, second)]) => {
                    let near =
                        |conductor| held(End::near(cable.id, conductor)).map(|h| (h, h.from));
                    if let (Some(first), Some(second)) = (near(*first), near(*second)) {
                        switches.push((cable.from_box, [first, second]));
                    }
                }
                (SwitchForm::SinglePole, Some((_, to)), [(_, first)]) => {
                    let far = |conductor| held(End::far(cable.id, conductor));
                    if let (Some(one), Some(other)) = (far(*first), far(*to)) {
                        let changes = vec![
                            Change::Lead(one.what, other.to),
                            Change::Lead(other.what, one.to),
                        ];
                        self.found.push(Planted {
                            kind,
                            places: vec![vec![one.place(), other.place()]],
                            changes,
                        });
                    }
                }
                _ => {}
            }
        }
        for (in_box, [(feed, at_feed), (load, at_load)]) in switches {
            let outer = |held: &Held, at: usize| if held.to == at { held.from } else { held.to };
            for white in self.whites_with(in_box, load.net) {
                let changes = vec![
                    Change::Cut(feed.what),
                    Change::Cut(load.what),
                    Change::Join(outer(&feed, at_feed), outer(&load, at_load)),
                    Change::Lead(white.what, at_feed),
                    Change::Join(white.to, at_load),
                ];
                self.push(kind, vec![vec![feed.place(), white.place()]], changes);
            }
        }
    }
}

const fn second_contact(device: u32, terminal: Terminal) -> Contact {
    Contact::Terminal { device, terminal }
}

fn terminals(device: u32, one: Terminal, other: Terminal) -> Vec<Place> {
    [one, other]
        .map(|terminal| Place::At(Point::Terminal { device, terminal }))
        .to_vec()
}
