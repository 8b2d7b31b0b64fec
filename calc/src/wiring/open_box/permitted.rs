//! What may be measured in opened boxes, in the order of its risk. No joint is ever opened live.

use serde::Serialize;

use super::description::{At, Colour, Contact, Description, End, Terminal};
use super::faults::point_of;
use super::live_map::contacts_of;
use super::reading::{Meter, Point, Probe, Round};
use super::situation::{Apart, Position, Situation, switches};

/// The risk of a measurement, the least first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Risk {
    /// A clamp or a tester, nothing opened.
    NothingOpened,
    /// Ohms, with everything off and proved dead.
    EverythingOff,
    /// Volts, with the joints closed.
    VoltsClosed,
    /// Volts with a joint that was taken apart with everything off and proved dead, its ends capped, then energised
    /// again: work for a qualified person, where nothing else tells.
    VoltsApart,
}

/// A situation with what may be measured in it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Permitted {
    pub situation: Situation,
    pub probes: Vec<(Risk, Probe)>,
}

/// Up to so many breakers are tried one by one.
const MOST_BREAKERS: usize = 5;

/// Up to so many switches are tried one by one.
const MOST_SET: usize = 5;

/// What may be measured in the boxes; volts with a joint apart only if asked for.
pub(super) fn permitted(description: &Description, boxes: &[u32], apart: bool) -> Vec<Permitted> {
    let contacts: Vec<(Contact, u32)> = contacts_of(description)
        .into_iter()
        .filter(|(_, in_box)| boxes.contains(in_box))
        .collect();
    let mut all = Vec::new();
    live(description, &contacts, boxes, &mut all);
    off(description, &contacts, boxes, &mut all);
    if apart {
        energised(description, boxes, &mut all);
    }
    all
}

/// Settings in which something is on.
fn live_situations(description: &Description) -> Vec<Situation> {
    let mut all = vec![Situation::default()];
    let breakers = &description.breakers;
    if breakers.len() > 1 {
        for breaker in breakers.iter().take(MOST_BREAKERS) {
            all.push(Situation {
                breakers_off: vec![breaker.id],
                ..Situation::default()
            });
        }
    }
    for switch in switches(description).into_iter().take(MOST_SET) {
        all.push(Situation {
            switches: vec![(switch, Position::Two)],
            ..Situation::default()
        });
    }
    all
}

fn live(
    description: &Description,
    contacts: &[(Contact, u32)],
    boxes: &[u32],
    all: &mut Vec<Permitted>,
) {
    let mut probes = Vec::new();
    for cable in &description.cables {
        let near = End::near(cable.id, 0);
        for end in [near, near.other()] {
            if description.box_of(end).is_some_and(|b| boxes.contains(&b)) {
                let round = Round::Cable {
                    cable: cable.id,
                    side: end.side,
                };
                probes.push((Risk::NothingOpened, Probe::Amps { round }));
            }
        }
    }
    for &(contact, _) in contacts {
        if let Contact::End(end) = contact {
            let round = Round::Conductor(end);
            probes.push((Risk::NothingOpened, Probe::Amps { round }));
            let at = Point::End(end);
            probes.push((Risk::NothingOpened, Probe::Tester { at }));
        }
    }
    let mut holders = probes.clone();
    for &in_box in boxes {
        let points = points(description, contacts, in_box);
        let common = common(description, in_box);
        for (at, &from) in points.iter().enumerate() {
            for &to in common.iter().chain([&Point::GroundBar]) {
                if from != to {
                    probes.push((Risk::VoltsClosed, volts(from, to)));
                }
            }
            for &to in points.iter().skip(at + 1).chain([&Point::GroundBar]) {
                holders.push((Risk::VoltsClosed, volts(from, to)));
            }
        }
    }
    let pairs = joined_pairs(description, boxes);
    for (from, to) in held(description, contacts).into_iter().chain(pairs) {
        holders.push((Risk::VoltsClosed, volts(from, to)));
    }
    for (at, situation) in live_situations(description).into_iter().enumerate() {
        all.push(Permitted {
            situation,
            probes: if at == 0 {
                holders.clone()
            } else {
                probes.clone()
            },
        });
    }
}

const fn volts(from: Point, to: Point) -> Probe {
    Probe::Volts {
        from,
        to,
        meter: Meter::HighImpedance,
    }
}

/// One point for everything in a box that is its own piece: joints, terminals, and ends that are alone.
fn points(description: &Description, contacts: &[(Contact, u32)], in_box: u32) -> Vec<Point> {
    let mut points = Vec::new();
    for &(contact, of) in contacts {
        if of != in_box {
            continue;
        }
        let point = match (description.at(contact), contact) {
            (At::Joint(joint), _) => Point::Joint { in_box, joint },
            (At::Terminal { device, terminal }, _) => Point::Terminal { device, terminal },
            (_, Contact::End(end)) => Point::End(end),
            (
                _,
                Contact::Terminal {
                    terminal: Terminal::Ground,
                    ..
                },
            ) => continue,
            (_, Contact::Terminal { .. }) => point_of(contact),
        };
        if !points.contains(&point) {
            points.push(point);
        }
    }
    points
}

/// Joints of a box with a white or a bare in them: what most is measured against.
fn common(description: &Description, in_box: u32) -> Vec<Point> {
    let mut common = Vec::new();
    for made in &description.made {
        let (At::Joint(joint), Contact::End(end)) = (made.at, made.contact) else {
            continue;
        };
        let colour = description
            .cable(end.cable)
            .and_then(|cable| cable.conductors.get(end.conductor));
        let point = Point::Joint { in_box, joint };
        if matches!(colour, Some(Colour::White | Colour::Bare))
            && description.box_of(end) == Some(in_box)
            && !common.contains(&point)
        {
            common.push(point);
        }
    }
    common
}

/// Each contact with what holds it.
fn held(description: &Description, contacts: &[(Contact, u32)]) -> Vec<(Point, Point)> {
    let mut pairs = Vec::new();
    for &(contact, in_box) in contacts {
        let to = match description.at(contact) {
            At::Joint(joint) => Point::Joint { in_box, joint },
            At::Terminal { device, terminal } => Point::Terminal { device, terminal },
            At::Capped | At::Loose => continue,
        };
        pairs.push((point_of(contact), to));
    }
    pairs
}

/// Every two contacts in one joint: across two places at once where one may be poor or open.
fn joined_pairs(description: &Description, boxes: &[u32]) -> Vec<(Point, Point)> {
    let mut seen: Vec<(u32, u32)> = Vec::new();
    let mut pairs = Vec::new();
    for made in &description.made {
        let (At::Joint(joint), Some(in_box)) = (made.at, description.box_of_contact(made.contact))
        else {
            continue;
        };
        if !boxes.contains(&in_box) || seen.contains(&(in_box, joint)) {
            continue;
        }
        seen.push((in_box, joint));
        let all = description.joint(in_box, joint);
        for (at, &one) in all.iter().enumerate() {
            for &other in all.iter().skip(at + 1) {
                pairs.push((point_of(one), point_of(other)));
            }
        }
    }
    pairs
}

/// Ohms with everything off, first with nothing apart, then with one joint or one contact apart.
fn off(
    description: &Description,
    contacts: &[(Contact, u32)],
    boxes: &[u32],
    all: &mut Vec<Permitted>,
) {
    let everything_off = |apart: Vec<Apart>| Situation {
        everything_off: true,
        apart,
        ..Situation::default()
    };
    let ohms = |from: Point, to: Point| (Risk::EverythingOff, Probe::Ohms { from, to });
    let mut probes: Vec<(Risk, Probe)> = held(description, contacts)
        .into_iter()
        .chain(joined_pairs(description, boxes))
        .map(|(from, to)| ohms(from, to))
        .collect();
    for &in_box in boxes {
        let points = points(description, contacts, in_box);
        for (at, &from) in points.iter().enumerate() {
            let bars = [&Point::NeutralBar, &Point::GroundBar];
            for &to in points.iter().skip(at + 1).chain(bars) {
                probes.push(ohms(from, to));
            }
        }
    }
    all.push(Permitted {
        situation: everything_off(Vec::new()),
        probes,
    });
    for (apart, parts, in_box) in aparts(description, contacts, boxes) {
        let common = common(description, in_box);
        let mut probes = Vec::new();
        for (at, &from) in parts.iter().enumerate() {
            let bars = [&Point::NeutralBar, &Point::GroundBar];
            for &to in parts.iter().skip(at + 1).chain(&common).chain(bars) {
                let whole = matches!((to, apart),
                    (Point::Joint { joint, .. }, Apart::Joint { joint: of, .. }) if joint == of);
                if from != to && !whole {
                    probes.push(ohms(from, to));
                }
            }
        }
        all.push(Permitted {
            situation: everything_off(vec![apart]),
            probes,
        });
    }
}

/// What can be taken apart: joints with their parts, and contacts on terminals.
fn aparts(
    description: &Description,
    contacts: &[(Contact, u32)],
    boxes: &[u32],
) -> Vec<(Apart, Vec<Point>, u32)> {
    let mut all: Vec<(Apart, Vec<Point>, u32)> = Vec::new();
    for &(contact, in_box) in contacts {
        if !boxes.contains(&in_box) {
            continue;
        }
        let (apart, parts) = match description.at(contact) {
            At::Joint(joint) => (
                Apart::Joint { in_box, joint },
                description
                    .joint(in_box, joint)
                    .into_iter()
                    .map(point_of)
                    .collect(),
            ),
            At::Terminal { device, terminal } => (
                Apart::Contact(contact),
                vec![point_of(contact), Point::Terminal { device, terminal }],
            ),
            At::Capped | At::Loose => continue,
        };
        if !all.iter().any(|(a, ..)| *a == apart) {
            all.push((apart, parts, in_box));
        }
    }
    all
}

/// Volts to ground at the parts of one joint that is apart.
fn energised(description: &Description, boxes: &[u32], all: &mut Vec<Permitted>) {
    let contacts: Vec<(Contact, u32)> = contacts_of(description)
        .into_iter()
        .filter(|(_, in_box)| boxes.contains(in_box))
        .collect();
    for (apart, parts, _) in aparts(description, &contacts, boxes) {
        let mut probes = Vec::new();
        for (at, &from) in parts.iter().enumerate() {
            for &to in parts.iter().skip(at + 1).chain([&Point::GroundBar]) {
                probes.push((Risk::VoltsApart, volts(from, to)));
            }
        }
        all.push(Permitted {
            situation: Situation {
                apart: vec![apart],
                ..Situation::default()
            },
            probes,
        });
    }
}
