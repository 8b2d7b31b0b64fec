//! From a description to its network.

use crate::wiring::open_box::description::{
    Across, At, Cable, Colour, Contact, Description, Device, DeviceKind, End, FarSwitch, Fed, Goes,
    Load, Made, SwitchForm, Terminal,
};
use crate::wiring::open_box::ohms::{
    BOND_OHM, BREAKER_OHM, CONTACT_OHM, EARTH_OHM, STRAY_FARAD_PER_FT, SWITCH_OHM, ohm_per_ft,
};
use crate::wiring::open_box::places::Places;
use crate::wiring::open_box::situation::{LoadId, Position, SwitchId};
use crate::wiring::panel::Leg;

use super::{
    Branch, GROUND_BAR, LEG_A, LEG_B, NEUTRAL_BAR, Network, PIPE, Part, SOURCE_A, SOURCE_B,
    SOURCE_NEUTRAL, Value,
};

pub(super) fn build(description: &Description) -> Network {
    let places = Places::of(description);
    let first_contact = PIPE + 1;
    let mut network = Network {
        nodes: first_contact + places.count,
        branches: Vec::new(),
        leg_a_v: description.panel.leg_a_v,
        leg_b_v: description.panel.leg_b_v,
        places,
        first_contact,
        joints: Vec::new(),
        landings: Vec::new(),
        poles: Vec::new(),
        added: 0,
        kinds: Vec::new(),
        spots: Vec::new(),
        guessed: Vec::new(),
    };
    network.supply(description);
    for breaker in &description.breakers {
        for (pole, leg) in breaker.legs.iter().enumerate() {
            let behind = network.node();
            network.poles.push((breaker.id, pole, behind));
            let part = Part::Pole {
                breaker: breaker.id,
                pole,
            };
            let from = if *leg == Leg::A { LEG_A } else { LEG_B };
            network.ohm(from, behind, BREAKER_OHM, part);
        }
    }
    for cable in &description.cables {
        network.conductors(cable);
        network.far(cable);
        if cable.length_ft.is_none() {
            network.guessed.push(cable.id);
        }
    }
    for device in &description.devices {
        network.device(device);
    }
    for made in &description.made {
        network.made(description, made);
    }
    for cable in &description.cables {
        network.strays(cable);
    }
    network
}

impl Network {
    fn node(&mut self) -> usize {
        self.nodes += 1;
        self.nodes - 1
    }

    fn ohm(&mut self, from: usize, to: usize, ohm: f64, part: Part) {
        self.branches.push(Branch {
            from,
            to,
            value: Value::Ohm(ohm),
            part,
        });
    }

    fn load(&mut self, from: usize, to: usize, load: &Load, id: LoadId) {
        self.kinds.push((id, load.kind));
        self.ohm(from, to, load.ohm(), Part::Load(id));
    }

    fn supply(&mut self, description: &Description) {
        let source_ohm = description.panel.source_ohm;
        let feeder = match description.panel.fed {
            Fed::Service => None,
            Fed::Feeder {
                size,
                ground_size,
                metal,
                length_ft,
            } => ohm_per_ft(size, metal)
                .zip(ohm_per_ft(ground_size, metal))
                .map(|(ohm, ground)| (ohm * length_ft, ground * length_ft)),
        };
        let [a, b, neutral, ground] = match feeder {
            None => [LEG_A, LEG_B, NEUTRAL_BAR, GROUND_BAR],
            Some((ohm, ground_ohm)) => {
                let service = [self.node(), self.node(), self.node(), self.node()];
                let [a, b, neutral, ground] = service;
                self.ohm(a, LEG_A, ohm, Part::Feeder(Leg::A));
                self.ohm(b, LEG_B, ohm, Part::Feeder(Leg::B));
                self.ohm(neutral, NEUTRAL_BAR, ohm, Part::FeederNeutral);
                self.ohm(ground, GROUND_BAR, ground_ohm, Part::FeederGround);
                service
            }
        };
        self.ohm(SOURCE_A, a, source_ohm, Part::Supply(Leg::A));
        self.ohm(SOURCE_B, b, source_ohm, Part::Supply(Leg::B));
        self.ohm(neutral, SOURCE_NEUTRAL, source_ohm, Part::ServiceNeutral);
        self.ohm(ground, neutral, BOND_OHM, Part::Bond);
        self.ohm(ground, SOURCE_NEUTRAL, EARTH_OHM, Part::EarthRod);
        self.ohm(PIPE, ground, BOND_OHM, Part::PipeBond);
    }

    fn conductors(&mut self, cable: &Cable) {
        let Some(per_ft) = ohm_per_ft(cable.size, cable.metal) else {
            return;
        };
        let ohm = per_ft * cable.length_or_usual_ft();
        for conductor in 0..cable.conductors.len() {
            let near = self.end(End::near(cable.id, conductor));
            let far = self.end(End::far(cable.id, conductor));
            if let (Some(near), Some(far)) = (near, far) {
                let part = Part::Conductor {
                    cable: cable.id,
                    conductor,
                };
                self.ohm(near, far, ohm, part);
            }
        }
    }

    fn land(&mut self, cable: u32, conductor: usize, on: usize) {
        let end = End::far(cable, conductor);
        if let Some(from) = self.end(end) {
            self.landings.push((end, on));
            self.ohm(from, on, CONTACT_OHM, Part::Landed(end));
        }
    }

    fn far(&mut self, cable: &Cable) {
        match &cable.goes {
            Goes::Panel(on) => {
                for (conductor, colour) in cable.conductors.iter().enumerate() {
                    let node = match (on.iter().find(|o| o.conductor == conductor), colour) {
                        (Some(on), _) => self.pole(on.breaker, on.pole),
                        (None, Colour::White) => Some(NEUTRAL_BAR),
                        (None, Colour::Bare) => Some(GROUND_BAR),
                        (None, _) => None,
                    };
                    if let Some(node) = node {
                        self.land(cable.id, conductor, node);
                    }
                }
            }
            Goes::Loads(loads) => {
                let nodes = self.land_all(cable);
                for (load, across) in loads.iter().enumerate() {
                    self.across(cable.id, load, across, &nodes);
                }
                if loads.is_empty() {
                    self.spot(cable, &nodes);
                }
            }
            Goes::Switch(switch) => {
                let nodes = self.land_all(cable);
                self.far_switch(cable.id, switch, &nodes);
            }
            Goes::NotKnown => {
                let ends: Vec<usize> = (0..cable.conductors.len())
                    .filter_map(|conductor| self.end(End::far(cable.id, conductor)))
                    .collect();
                self.spot(cable, &ends);
            }
            Goes::Box(_) => {}
        }
    }

    /// A load that was not entered may lie between the first hot and the first white.
    fn spot(&mut self, cable: &Cable, nodes: &[usize]) {
        let hot = cable.conductors.iter().position(|c| c.is_hot());
        let white = cable.first(Colour::White);
        let at = |conductor: Option<usize>| conductor.and_then(|c| nodes.get(c).copied());
        if let (Some(from), Some(to)) = (at(hot), at(white)) {
            let id = LoadId::Beyond {
                cable: cable.id,
                load: 0,
            };
            self.spots.push((id, from, to));
        }
    }

    fn land_all(&mut self, cable: &Cable) -> Vec<usize> {
        (0..cable.conductors.len())
            .map(|conductor| {
                let on = self.node();
                self.land(cable.id, conductor, on);
                on
            })
            .collect()
    }

    fn across(&mut self, cable: u32, load: usize, across: &Across, nodes: &[usize]) {
        if let (Some(&from), Some(&to)) = (nodes.get(across.from), nodes.get(across.to)) {
            self.load(from, to, &across.load, LoadId::Beyond { cable, load });
        }
    }

    fn far_switch(&mut self, cable: u32, switch: &FarSwitch, nodes: &[usize]) {
        let terminal = |network: &mut Self, terminal: Terminal| {
            switch
                .on
                .iter()
                .find(|(t, _)| *t == terminal)
                .and_then(|(_, conductor)| nodes.get(*conductor).copied())
                .unwrap_or_else(|| network.node())
        };
        let id = SwitchId::Beyond(cable);
        let behind = match switch.form {
            SwitchForm::SinglePole => {
                let first = terminal(self, Terminal::First);
                let second = terminal(self, Terminal::Second);
                self.ways(id, SwitchForm::SinglePole, &[first, second]);
                second
            }
            SwitchForm::ThreeWay | SwitchForm::FourWay => {
                let common = terminal(self, Terminal::Common);
                let mut one = terminal(self, Terminal::TravellerOne);
                let mut two = terminal(self, Terminal::TravellerTwo);
                if switch.form == SwitchForm::FourWay {
                    let onward = [self.node(), self.node()];
                    let [onward_one, onward_two] = onward;
                    let between = [one, two, onward_one, onward_two];
                    let four_way = SwitchId::BeyondFourWay(cable);
                    self.ways(four_way, SwitchForm::FourWay, &between);
                    [one, two] = onward;
                }
                self.ways(id, SwitchForm::ThreeWay, &[common, one, two]);
                common
            }
        };
        if let Some((load, to)) = &switch.load
            && let Some(&to) = nodes.get(*to)
        {
            self.load(behind, to, load, LoadId::Beyond { cable, load: 0 });
        }
    }

    /// The ways through a switch, its terminals in the order of [`SwitchForm::terminals`].
    fn ways(&mut self, switch: SwitchId, form: SwitchForm, terminals: &[usize]) {
        let mut way = |from: usize, to: usize, closed_at: Position, way: u8| {
            let part = Part::Switch {
                switch,
                closed_at,
                way,
            };
            self.ohm(from, to, SWITCH_OHM, part);
        };
        match (form, terminals) {
            (SwitchForm::SinglePole, [first, second]) => way(*first, *second, Position::One, 0),
            (SwitchForm::ThreeWay, [common, one, two]) => {
                way(*common, *one, Position::One, 0);
                way(*common, *two, Position::Two, 0);
            }
            (SwitchForm::FourWay, [one, two, onward_one, onward_two]) => {
                way(*one, *onward_one, Position::One, 0);
                way(*two, *onward_two, Position::One, 1);
                way(*one, *onward_two, Position::Two, 0);
                way(*two, *onward_one, Position::Two, 1);
            }
            _ => {}
        }
    }

    fn device(&mut self, device: &Device) {
        let id = device.id;
        let at = |network: &Self, terminal: Terminal| {
            network.contact(Contact::Terminal {
                device: id,
                terminal,
            })
        };
        match &device.kind {
            DeviceKind::Switch(form) => {
                let terminals: Vec<usize> = form
                    .terminals()
                    .iter()
                    .filter_map(|terminal| at(self, *terminal))
                    .collect();
                self.ways(SwitchId::Device(id), *form, &terminals);
            }
            DeviceKind::Receptacle {
                hot_tab,
                neutral_tab,
                upper,
                lower,
            } => {
                let hot = at(self, Terminal::Hot).zip(at(self, Terminal::HotLower));
                let neutral = at(self, Terminal::Neutral).zip(at(self, Terminal::NeutralLower));
                let (Some(hot), Some(neutral)) = (hot, neutral) else {
                    return;
                };
                for (there, is_neutral, (from, to)) in
                    [(*hot_tab, false, hot), (*neutral_tab, true, neutral)]
                {
                    if there {
                        let part = Part::Tab {
                            device: id,
                            neutral: is_neutral,
                        };
                        self.ohm(from, to, CONTACT_OHM, part);
                    }
                }
                self.plugged(upper, hot.0, neutral.0, LoadId::Device(id));
                self.plugged(lower, hot.1, neutral.1, LoadId::Lower(id));
            }
            DeviceKind::Lampholder(lamp) => {
                if let (Some(hot), Some(neutral)) =
                    (at(self, Terminal::Hot), at(self, Terminal::Neutral))
                {
                    self.plugged(lamp, hot, neutral, LoadId::Device(id));
                }
            }
        }
    }

    fn plugged(&mut self, load: &Option<Load>, hot: usize, neutral: usize, id: LoadId) {
        match load {
            Some(load) => self.load(hot, neutral, load, id),
            None => self.spots.push((id, hot, neutral)),
        }
    }

    fn made(&mut self, description: &Description, made: &Made) {
        let Some(from) = self.contact(made.contact) else {
            return;
        };
        let to = match made.at {
            At::Joint(joint) => {
                let Some(in_box) = description.box_of_contact(made.contact) else {
                    return;
                };
                self.joint(in_box, joint).unwrap_or_else(|| {
                    let node = self.node();
                    self.joints.push((in_box, joint, node));
                    node
                })
            }
            At::Terminal { device, terminal } => {
                match self.contact(Contact::Terminal { device, terminal }) {
                    Some(node) => node,
                    None => return,
                }
            }
            At::Capped | At::Loose => return,
        };
        self.ohm(from, to, CONTACT_OHM, Part::Joined(made.contact));
    }

    /// Half of the stray capacitance between every two conductors of a cable at each of its ends.
    fn strays(&mut self, cable: &Cable) {
        let farad = STRAY_FARAD_PER_FT * cable.length_or_usual_ft() / 2.0;
        for other in 0..cable.conductors.len() {
            for one in 0..other {
                for end in [End::near(cable.id, one), End::far(cable.id, one)] {
                    let from = self.end(end);
                    let to = self.end(End {
                        conductor: other,
                        ..end
                    });
                    if let (Some(from), Some(to)) = (from, to) {
                        self.branches.push(Branch {
                            from,
                            to,
                            value: Value::Farad(farad),
                            part: Part::Stray(end, other),
                        });
                    }
                }
            }
        }
    }
}
