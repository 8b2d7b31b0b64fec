//! Whether a description can be answered.

use crate::wiring::open_box::ohms::ohm_per_ft;
use crate::wiring::open_box::places::{Places, metal};
use crate::wiring::panel::{Leg, MOST_PANEL_A, leg_of};

use super::{
    At, Cable, Colour, Contact, Description, DescriptionRefusal, DeviceKind, End, FarSwitch, Fed,
    Goes, Hot, Load, MOST_LENGTH_FT, PanelFacts, SwitchForm, Terminal,
};

/// Volts of a leg that are taken for real ones.
pub const LEG_VOLTS: std::ops::RangeInclusive<f64> = 80.0..=160.0;

/// The most conductors of a cable.
pub const MOST_CONDUCTORS: usize = 12;

/// Checks a description: that everything named exists, once, with figures that are some, and that no joint is a short.
///
/// # Errors
/// Every [`DescriptionRefusal`] there is, in the order of the description; shorts only if there is nothing else.
pub fn check(description: &Description) -> Result<(), Vec<DescriptionRefusal>> {
    let mut refusals = Vec::new();
    panel(&description.panel, &mut refusals);
    breakers(description, &mut refusals);
    boxes(description, &mut refusals);
    for (at, cable) in description.cables.iter().enumerate() {
        if description.cables.iter().take(at).any(|c| c.id == cable.id) {
            refusals.push(DescriptionRefusal::SameCable { cable: cable.id });
        }
        one_cable(description, cable, &mut refusals);
    }
    devices(description, &mut refusals);
    grid(description, &mut refusals);
    if refusals.is_empty() {
        shorts(description, &mut refusals);
    }
    if refusals.is_empty() {
        Ok(())
    } else {
        Err(refusals)
    }
}

fn panel(panel: &PanelFacts, refusals: &mut Vec<DescriptionRefusal>) {
    for volts in [panel.leg_a_v, panel.leg_b_v] {
        if !LEG_VOLTS.contains(&volts) {
            refusals.push(DescriptionRefusal::LegVolts { volts });
        }
    }
    let ohm = panel.source_ohm;
    if !(1e-4..=10.0).contains(&ohm) {
        refusals.push(DescriptionRefusal::SourceOhm { ohm });
    }
    if let Fed::Feeder {
        size,
        ground_size,
        metal,
        length_ft,
    } = panel.fed
    {
        if !(length_ft > 0.0 && length_ft <= MOST_LENGTH_FT) {
            refusals.push(DescriptionRefusal::FeederLength { length_ft });
        }
        for size in [size, ground_size] {
            if ohm_per_ft(size, metal).is_none() {
                refusals.push(DescriptionRefusal::FeederSize { size, metal });
            }
        }
    }
}

fn breakers(description: &Description, refusals: &mut Vec<DescriptionRefusal>) {
    for (at, breaker) in description.breakers.iter().enumerate() {
        let id = breaker.id;
        if description.breakers.iter().take(at).any(|b| b.id == id) {
            refusals.push(DescriptionRefusal::SameBreaker { breaker: id });
        }
        let poles_fit = match breaker.legs.as_slice() {
            [_] => true,
            [one, other] => one != other,
            _ => false,
        };
        if !poles_fit {
            refusals.push(DescriptionRefusal::Poles { breaker: id });
        }
        if let (Some(space), Some(&leg)) = (breaker.space, breaker.legs.first())
            && (space == 0 || leg_of(space) != leg)
        {
            refusals.push(DescriptionRefusal::SpaceLeg {
                breaker: id,
                space,
                leg,
            });
        }
        let rating_a = breaker.rating_a;
        if !(rating_a > 0.0 && rating_a <= MOST_PANEL_A) {
            refusals.push(DescriptionRefusal::Rating {
                breaker: id,
                rating_a,
            });
        }
        if let Some(tied_to) = breaker.tied_to
            && (tied_to == id || description.breaker(tied_to).is_none())
        {
            refusals.push(DescriptionRefusal::NoBreaker { breaker: tied_to });
        }
    }
}

fn boxes(description: &Description, refusals: &mut Vec<DescriptionRefusal>) {
    if description.boxes.is_empty() {
        refusals.push(DescriptionRefusal::NoBoxes);
    }
    for (at, id) in description.boxes.iter().enumerate() {
        if description.boxes.iter().take(at).any(|b| b == id) {
            refusals.push(DescriptionRefusal::SameBox { in_box: *id });
        }
        let enters = |cable: &Cable| {
            cable.from_box == *id || matches!(cable.goes, Goes::Box(to) if to == *id)
        };
        if !description.cables.iter().any(enters) {
            refusals.push(DescriptionRefusal::EmptyBox { in_box: *id });
        }
    }
}

fn one_cable(description: &Description, cable: &Cable, refusals: &mut Vec<DescriptionRefusal>) {
    let id = cable.id;
    let count = cable.conductors.len();
    if count == 0 || count > MOST_CONDUCTORS {
        refusals.push(DescriptionRefusal::Conductors {
            cable: id,
            conductors: count,
        });
    }
    if !description.boxes.contains(&cable.from_box) {
        refusals.push(DescriptionRefusal::NoBox {
            in_box: cable.from_box,
        });
    }
    if ohm_per_ft(cable.size, cable.metal).is_none() {
        refusals.push(DescriptionRefusal::NoOhms {
            cable: id,
            size: cable.size,
            metal: cable.metal,
        });
    }
    if let Some(length_ft) = cable.length_ft
        && !(length_ft > 0.0 && length_ft <= MOST_LENGTH_FT)
    {
        refusals.push(DescriptionRefusal::Length {
            cable: id,
            length_ft,
        });
    }
    let conductor = |conductor: usize, refusals: &mut Vec<DescriptionRefusal>| {
        if conductor >= count {
            refusals.push(DescriptionRefusal::NoConductor {
                cable: id,
                conductor,
            });
        }
    };
    match &cable.goes {
        Goes::Panel(on) => {
            for (at, pole) in on.iter().enumerate() {
                conductor(pole.conductor, refusals);
                if on.iter().take(at).any(|o| o.conductor == pole.conductor) {
                    refusals.push(DescriptionRefusal::ConductorTwice {
                        cable: id,
                        conductor: pole.conductor,
                    });
                }
                match description.breaker(pole.breaker) {
                    None => refusals.push(DescriptionRefusal::NoBreaker {
                        breaker: pole.breaker,
                    }),
                    Some(breaker) if pole.pole >= breaker.legs.len() => {
                        refusals.push(DescriptionRefusal::NoPole {
                            breaker: pole.breaker,
                            pole: pole.pole,
                        });
                    }
                    Some(_) => {}
                }
            }
        }
        Goes::Loads(loads) => {
            for across in loads {
                conductor(across.from, refusals);
                conductor(across.to, refusals);
                if across.from == across.to {
                    refusals.push(DescriptionRefusal::ConductorTwice {
                        cable: id,
                        conductor: across.from,
                    });
                }
                load(&across.load, refusals);
            }
        }
        Goes::Switch(switch) => far_switch(cable, switch, refusals),
        Goes::Box(to) => {
            if !description.boxes.contains(to) {
                refusals.push(DescriptionRefusal::NoBox { in_box: *to });
            }
            if *to == cable.from_box {
                refusals.push(DescriptionRefusal::ToItself { cable: id });
            }
        }
        Goes::NotKnown => {}
    }
}

fn far_switch(cable: &Cable, switch: &FarSwitch, refusals: &mut Vec<DescriptionRefusal>) {
    let terminals: &[Terminal] = match switch.form {
        SwitchForm::SinglePole => SwitchForm::SinglePole.terminals(),
        SwitchForm::ThreeWay | SwitchForm::FourWay => SwitchForm::ThreeWay.terminals(),
    };
    let free = terminals
        .iter()
        .filter(|t| !switch.on.iter().any(|(on, _)| on == *t))
        .count();
    let each_once = switch.on.iter().enumerate().all(|(at, (terminal, wire))| {
        terminals.contains(terminal)
            && *wire < cable.conductors.len()
            && !switch
                .on
                .iter()
                .take(at)
                .any(|(t, w)| t == terminal || w == wire)
    });
    let load_fits = match &switch.load {
        None => free == 0,
        Some((what, to)) => {
            load(what, refusals);
            let behind = if switch.form == SwitchForm::SinglePole {
                Terminal::Second
            } else {
                Terminal::Common
            };
            free == 1
                && !switch.on.iter().any(|(t, w)| *t == behind || w == to)
                && *to < cable.conductors.len()
        }
    };
    if !each_once || !load_fits {
        refusals.push(DescriptionRefusal::FarSwitch { cable: cable.id });
    }
}

fn load(load: &Load, refusals: &mut Vec<DescriptionRefusal>) {
    let fits =
        load.watts > 0.0 && load.watts <= 50_000.0 && load.volts >= 1.0 && load.volts <= 300.0;
    if !fits {
        refusals.push(DescriptionRefusal::Load { load: *load });
    }
}

fn devices(description: &Description, refusals: &mut Vec<DescriptionRefusal>) {
    for (at, device) in description.devices.iter().enumerate() {
        let id = device.id;
        if description.devices.iter().take(at).any(|d| d.id == id) {
            refusals.push(DescriptionRefusal::SameDevice { device: id });
        }
        if !description.boxes.contains(&device.in_box) {
            refusals.push(DescriptionRefusal::NoBox {
                in_box: device.in_box,
            });
        }
        match &device.kind {
            DeviceKind::Receptacle { upper, lower, .. } => {
                for what in [upper, lower].into_iter().flatten() {
                    load(what, refusals);
                }
            }
            DeviceKind::Lampholder(Some(what)) => load(what, refusals),
            DeviceKind::Lampholder(None) | DeviceKind::Switch(_) => {}
        }
    }
}

fn grid(description: &Description, refusals: &mut Vec<DescriptionRefusal>) {
    for (at, made) in description.made.iter().enumerate() {
        let contact = made.contact;
        let exists = match contact {
            Contact::End(end) => description.has_end(end),
            Contact::Terminal { device, terminal } => description
                .device(device)
                .is_some_and(|device| device.kind.has(terminal)),
        };
        let in_box = description.box_of_contact(contact);
        if !exists || in_box.is_none() {
            refusals.push(DescriptionRefusal::NoContact { contact });
            continue;
        }
        if description
            .made
            .iter()
            .take(at)
            .any(|m| m.contact == contact)
        {
            refusals.push(DescriptionRefusal::Twice { contact });
        }
        let fits = match made.at {
            At::Joint(joint) => joint > 0,
            At::Capped | At::Loose => true,
            At::Terminal { device, terminal } => {
                matches!(contact, Contact::End(_))
                    && description.device(device).is_some_and(|device| {
                        Some(device.in_box) == in_box && device.kind.has(terminal)
                    })
            }
        };
        if !fits {
            refusals.push(DescriptionRefusal::NoPlace {
                contact,
                at: made.at,
            });
        }
    }
}

/// Shorts: metal that is on two legs, or on a leg and a bar.
fn shorts(description: &Description, refusals: &mut Vec<DescriptionRefusal>) {
    let places = Places::of(description);
    let mut sets = metal(description, &places);
    let mut hots: Vec<(usize, Hot)> = Vec::new();
    for cable in &description.cables {
        let Goes::Panel(on) = &cable.goes else {
            continue;
        };
        for (conductor, colour) in cable.conductors.iter().enumerate() {
            let pole = on.iter().find(|o| o.conductor == conductor);
            let hot = match (pole, colour) {
                (Some(pole), _) => description
                    .breaker(pole.breaker)
                    .and_then(|breaker| breaker.legs.get(pole.pole))
                    .map(|leg| Hot::Pole {
                        breaker: pole.breaker,
                        leg: *leg,
                    }),
                (None, Colour::White) => Some(Hot::NeutralBar),
                (None, Colour::Bare) => Some(Hot::GroundBar),
                (None, _) => None,
            };
            if let (Some(hot), Some(place)) = (hot, places.end(End::far(cable.id, conductor))) {
                hots.push((sets.find(place), hot));
            }
        }
    }
    for (at, (set, hot)) in hots.iter().enumerate() {
        for (_, other) in hots.iter().take(at).filter(|(s, _)| s == set) {
            let (a, b) = (description.panel.leg_a_v, description.panel.leg_b_v);
            let volts = match (*other, *hot) {
                (Hot::Pole { leg: one, .. }, Hot::Pole { leg: two, .. }) => {
                    (one != two).then_some(a + b)
                }
                (Hot::Pole { leg, .. }, _) | (_, Hot::Pole { leg, .. }) => {
                    Some(if leg == Leg::A { a } else { b })
                }
                _ => None,
            };
            if let Some(volts) = volts {
                refusals.push(DescriptionRefusal::Short {
                    one: *other,
                    other: *hot,
                    volts,
                });
            }
        }
    }
}
