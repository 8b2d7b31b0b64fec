//! What may be measured in an opened box without energising anything that was taken apart.

use calc::wiring::open_box::description::{At, Contact, Description, End, Terminal};
use calc::wiring::open_box::reading::{Meter, Point, Probe, Round};
use calc::wiring::open_box::situation::{Apart, Position, Situation, switches};

use calc::wiring::open_box::faults::FaultKind;

use super::house::House;
use super::instruments::tells;
use super::plant::{KINDS, Planted, places_for};
use super::truth::{Ideal, Truth};

/// Everything in a box that a probe can touch or a joint hold.
pub fn contacts(d: &Description, in_box: u32) -> Vec<Contact> {
    let mut all = Vec::new();
    for cable in &d.cables {
        for conductor in 0..cable.conductors.len() {
            all.push(Contact::End(End::near(cable.id, conductor)));
            all.push(Contact::End(End::far(cable.id, conductor)));
        }
    }
    for device in &d.devices {
        for terminal in device.kind.terminals().iter().chain(&[Terminal::Ground]) {
            all.push(Contact::Terminal {
                device: device.id,
                terminal: *terminal,
            });
        }
    }
    all.retain(|contact| d.box_of_contact(*contact) == Some(in_box));
    all
}

const fn touched(contact: Contact) -> Point {
    match contact {
        Contact::End(end) => Point::End(end),
        Contact::Terminal { device, terminal } => Point::Terminal { device, terminal },
    }
}

/// What holds a contact.
fn holder(d: &Description, contact: Contact, in_box: u32) -> Option<Point> {
    match d.at(contact) {
        At::Joint(joint) => Some(Point::Joint { in_box, joint }),
        At::Terminal { device, terminal } => Some(Point::Terminal { device, terminal }),
        At::Capped | At::Loose => None,
    }
}

/// Situations in which something is on: all, one breaker off, one alone on, one switch moved.
fn live(d: &Description) -> Vec<Situation> {
    let ids: Vec<u32> = d.breakers.iter().map(|b| b.id).collect();
    let with_off = |breakers_off: Vec<u32>| Situation {
        breakers_off,
        ..Situation::default()
    };
    let mut all = vec![Situation::default()];
    for id in &ids {
        all.push(with_off(vec![*id]));
        if ids.len() > 2 {
            all.push(with_off(
                ids.iter().filter(|other| *other != id).copied().collect(),
            ));
        }
    }
    for switch in switches(d) {
        all.push(Situation {
            switches: vec![(switch, Position::Two)],
            ..Situation::default()
        });
    }
    all
}

/// The situations with what may be measured in each.
pub fn permitted(d: &Description, in_box: u32) -> Vec<(Situation, Vec<Probe>)> {
    let contacts = contacts(d, in_box);
    let mut points: Vec<Point> = Vec::new();
    for contact in &contacts {
        for point in [Some(touched(*contact)), holder(d, *contact, in_box)]
            .into_iter()
            .flatten()
        {
            if !points.contains(&point) {
                points.push(point);
            }
        }
    }
    let mut amps = Vec::new();
    for contact in &contacts {
        if let Contact::End(end) = contact {
            amps.push(Probe::Amps {
                round: Round::Conductor(*end),
            });
            amps.push(Probe::Tester {
                at: Point::End(*end),
            });
            if end.conductor == 0 {
                amps.push(Probe::Amps {
                    round: Round::Cable {
                        cable: end.cable,
                        side: end.side,
                    },
                });
            }
        }
    }
    let mut volts = Vec::new();
    let mut ohms = Vec::new();
    for (at, from) in points.iter().enumerate() {
        for to in points
            .iter()
            .skip(at + 1)
            .chain(&[Point::NeutralBar, Point::GroundBar])
        {
            // The bar is far: a long lead reaches the ground, no more, while something is on.
            if *to != Point::NeutralBar {
                volts.push(Probe::Volts {
                    from: *from,
                    to: *to,
                    meter: Meter::HighImpedance,
                });
            }
            ohms.push(Probe::Ohms {
                from: *from,
                to: *to,
            });
        }
    }
    let mut all: Vec<(Situation, Vec<Probe>)> = live(d)
        .into_iter()
        .map(|situation| (situation, amps.iter().chain(&volts).copied().collect()))
        .collect();
    let mut aparts: Vec<Vec<Apart>> = vec![Vec::new()];
    for contact in &contacts {
        let apart = match d.at(*contact) {
            At::Joint(joint) => Apart::Joint { in_box, joint },
            At::Terminal { .. } => Apart::Contact(*contact),
            At::Capped | At::Loose => continue,
        };
        if !aparts.iter().any(|list| list.as_slice() == [apart]) {
            aparts.push(vec![apart]);
        }
    }
    for apart in aparts {
        let situation = Situation {
            everything_off: true,
            apart,
            ..Situation::default()
        };
        all.push((situation, ohms.clone()));
    }
    all
}

/// The first permitted reading that tells one house from another; `None`: nothing in this box does.
pub fn told_by(
    one: &Truth,
    other: &Truth,
    d: &Description,
    in_box: u32,
) -> Option<(Situation, Probe)> {
    for (situation, probes) in permitted(d, in_box) {
        let (a, b) = (one.scene(&situation, 1.0), other.scene(&situation, 1.0));
        for probe in probes {
            if tells(a.see(&probe), b.see(&probe)) {
                return Some((situation, probe));
            }
        }
    }
    None
}

/// How many faults, at their places, nothing in the box tells from the one that is planted, itself included: the least
/// size of an answer. Shorts are left out; so are faults that touch nothing but the same names.
pub fn least_group(house: &House) -> usize {
    let d = &house.wiring.description;
    let permitted = permitted(d, house.opened);
    let mut dice = house.dice.clone();
    let mut others: Vec<Planted> = Vec::new();
    for kind in KINDS {
        let same = |a: &Planted, b: &Planted| a.kind == b.kind && a.places == b.places;
        for planted in places_for(kind, &house.wiring, &house.healthy, &mut dice) {
            if kind != FaultKind::StrayOnly && !others.iter().any(|o| same(o, &planted)) {
                others.push(planted);
            }
        }
    }
    let mut houses: Vec<Truth> = Vec::new();
    for planted in others
        .iter()
        .filter(|planted| planted.places != house.planted.places)
    {
        let mut truth = house.healthy.clone();
        planted.put(&mut truth);
        if truth.conducted(&Situation::default()).most_pole_a() < 100.0 {
            houses.push(truth);
        }
    }
    for (situation, probes) in permitted {
        let scene = house.truth.scene(&situation, 1.0);
        let ideals: Vec<Ideal> = probes.iter().map(|probe| scene.see(probe)).collect();
        houses.retain(|other| {
            let there = other.scene(&situation, 1.0);
            !probes
                .iter()
                .zip(&ideals)
                .any(|(probe, ideal)| tells(*ideal, there.see(probe)))
        });
    }
    houses.len() + 1
}
