//! Faults in which conductors have changed places.

use crate::wiring::open_box::description::{
    Contact, DeviceKind, End, Goes, Side, SwitchForm, Terminal,
};
use crate::wiring::open_box::network::{Edit, Part};
use crate::wiring::open_box::reading::Point;

use super::find::{Found, TOUCH_OHM, is_load_side};
use super::roles::{Held, Role, Roles};
use super::{FaultKind, Place};

/// Two held things on each other's places.
pub(super) fn exchange(one: &Held, other: &Held) -> Vec<Edit> {
    vec![
        Edit::Lead {
            part: one.part,
            to: other.on,
        },
        Edit::Lead {
            part: other.part,
            to: one.on,
        },
    ]
}

pub(super) fn crossed(roles: &mut Roles, found: &mut Found) {
    swapped_cables(roles, found);
    for device in roles.description.devices.clone() {
        match device.kind {
            DeviceKind::Switch(SwitchForm::SinglePole) => {
                let first = roles.on_terminal(device.id, Terminal::First);
                let second = roles.on_terminal(device.id, Terminal::Second);
                let node = |terminal| {
                    let contact = Contact::Terminal {
                        device: device.id,
                        terminal,
                    };
                    roles.network.contact(contact)
                };
                let nodes = node(Terminal::First).zip(node(Terminal::Second));
                if let (Some(first), Some(second), Some(nodes)) = (first, second, nodes) {
                    let ends = [(first, nodes.0), (second, nodes.1)];
                    in_neutral(roles, device.in_box, &ends, found);
                }
            }
            DeviceKind::Switch(form) => travellers(roles, device.id, form, found),
            DeviceKind::Receptacle { .. } | DeviceKind::Lampholder(_) => {
                swapped_terminals(
                    roles,
                    device.id,
                    (Terminal::Hot, Terminal::Neutral),
                    FaultKind::HotNeutralSwapped,
                    found,
                );
            }
        }
    }
    far_switches(roles, found);
}

/// Hot and neutral of a cable, at one of its ends.
fn swapped_cables(roles: &Roles, found: &mut Found) {
    let end_of = |held: &Held| match held.part {
        Part::Joined(Contact::End(end)) | Part::Landed(end) => Some(end),
        _ => None,
    };
    for one in &roles.held {
        let Some(end) = end_of(one) else { continue };
        if !matches!(one.role, Role::Hot | Role::Switched) {
            continue;
        }
        let to_switch = roles
            .description
            .cable(end.cable)
            .is_some_and(|cable| matches!(cable.goes, Goes::Switch(_)));
        if to_switch && end.side == Side::Far {
            continue;
        }
        for other in &roles.held {
            let with = end_of(other).is_some_and(|e| (e.cable, e.side) == (end.cable, end.side));
            if with && other.role == Role::Neutral && one.on != other.on {
                found.push(
                    FaultKind::HotNeutralSwapped,
                    vec![one.place, other.place],
                    false,
                    exchange(one, other),
                );
            }
        }
    }
}

/// Two terminals of a device, whose ends or pigtails have changed places.
fn swapped_terminals(
    roles: &Roles,
    device: u32,
    (first, second): (Terminal, Terminal),
    kind: FaultKind,
    found: &mut Found,
) {
    let (Some(one), Some(other)) = (
        roles.on_terminal(device, first),
        roles.on_terminal(device, second),
    ) else {
        return;
    };
    let terminal_of = |terminal: Terminal| Contact::Terminal { device, terminal };
    let pigtail = |held: &Held, terminal| held.part == Part::Joined(terminal_of(terminal));
    let (is_one, is_other) = (pigtail(&one, first), pigtail(&other, second));
    // Hot and neutral of one cable on the screws are found with its ends.
    let by_cable = matches!((one.part, other.part),
        (Part::Joined(Contact::End(a)), Part::Joined(Contact::End(b))) if a.cable == b.cable);
    if by_cable && kind == FaultKind::HotNeutralSwapped {
        return;
    }
    // An end goes over to the other terminal, and the short wire of that terminal is on the end's own then: both can be
    // taken apart where they are.
    let over = |pigtail: &Held, end: &Held, to: Terminal| {
        vec![
            Edit::Cut(pigtail.part),
            Edit::Lead {
                part: end.part,
                to: pigtail.contact,
            },
            Edit::Hold {
                contact: terminal_of(to),
                to: pigtail.on,
                ohm: TOUCH_OHM,
            },
        ]
    };
    let edits = match (is_one, is_other) {
        (true, false) => over(&one, &other, second),
        (false, true) => over(&other, &one, first),
        _ => exchange(&one, &other),
    };
    let places = [first, second]
        .map(|terminal| Place::At(Point::Terminal { device, terminal }))
        .to_vec();
    found.push(kind, places, false, edits);
}

fn join(from: usize, to: usize) -> Edit {
    Edit::Join {
        from,
        to,
        ohm: TOUCH_OHM,
    }
}

fn travellers(roles: &Roles, device: u32, form: SwitchForm, found: &mut Found) {
    let pairs: &[(Terminal, Terminal)] = match form {
        SwitchForm::ThreeWay => &[
            (Terminal::Common, Terminal::TravellerOne),
            (Terminal::Common, Terminal::TravellerTwo),
        ],
        SwitchForm::FourWay => &[
            (Terminal::TravellerTwo, Terminal::OnwardOne),
            (Terminal::TravellerTwo, Terminal::OnwardTwo),
        ],
        SwitchForm::SinglePole => &[],
    };
    for &pair in pairs {
        swapped_terminals(roles, device, pair, FaultKind::TravellersMisplaced, found);
    }
}

/// A switch, or the cable of a switch, that opens the neutral of a load: its two ends with what they are held by.
fn in_neutral(roles: &mut Roles, in_box: u32, ends: &[(Held, usize); 2], found: &mut Found) {
    let far = |(held, node): &(Held, usize)| {
        if held.on == *node {
            held.contact
        } else {
            held.on
        }
    };
    let [first, second] = ends;
    let (feed, load) = if roles.role(far(first)) == Role::Hot {
        (first, second)
    } else {
        (second, first)
    };
    let (hot, switched) = (far(feed), far(load));
    if roles.role(hot) != Role::Hot || roles.role(switched) != Role::Switched {
        return;
    }
    let piece = roles.piece(switched);
    for held in roles.held.clone() {
        let Part::Joined(Contact::End(end)) = held.part else {
            continue;
        };
        if held.in_box != Some(in_box) || held.role != Role::Neutral || !is_load_side(roles, &held)
        {
            continue;
        }
        let count = roles
            .description
            .cable(end.cable)
            .map_or(0, |cable| cable.conductors.len());
        let with_it = (0..count).any(|conductor| {
            let node = roles.network.end(End { conductor, ..end });
            node.is_some_and(|node| roles.piece(node) == piece)
        });
        if !with_it {
            continue;
        }
        let edits = vec![
            Edit::Cut(feed.0.part),
            Edit::Cut(load.0.part),
            join(hot, switched),
            Edit::Lead {
                part: held.part,
                to: feed.1,
            },
            join(held.on, load.1),
        ];
        let places = vec![feed.0.place, held.place];
        found.push(FaultKind::SwitchInNeutral, places, false, edits);
    }
}

/// Switches beyond the boxes.
fn far_switches(roles: &mut Roles, found: &mut Found) {
    for cable in &roles.description.cables.clone() {
        let Goes::Switch(switch) = &cable.goes else {
            continue;
        };
        let held = |roles: &Roles, part: Part| roles.held.iter().find(|h| h.part == part).copied();
        let on = |terminal: Terminal| {
            let found = switch.on.iter().find(|(t, _)| *t == terminal);
            found.map(|(_, conductor)| *conductor)
        };
        let landed = |conductor: usize| Part::Landed(End::far(cable.id, conductor));
        if switch.form == SwitchForm::SinglePole {
            if let (Some(first), Some((_, to))) = (on(Terminal::First), switch.load) {
                let one = held(roles, landed(first));
                let other = held(roles, landed(to));
                if let (Some(one), Some(other)) = (one, other) {
                    found.push(
                        FaultKind::SwitchInNeutral,
                        vec![one.place, other.place],
                        true,
                        exchange(&one, &other),
                    );
                }
            } else if let (Some(first), Some(second)) = (on(Terminal::First), on(Terminal::Second))
            {
                let near = |conductor: usize| {
                    let end = End::near(cable.id, conductor);
                    held(roles, Part::Joined(Contact::End(end)))
                };
                if let (Some(one), Some(other)) = (near(first), near(second)) {
                    let ends = [(one, one.contact), (other, other.contact)];
                    in_neutral(roles, cable.from_box, &ends, found);
                }
            }
            continue;
        }
        if let Some(common) = on(Terminal::Common) {
            for terminal in [Terminal::TravellerOne, Terminal::TravellerTwo] {
                let pair = held(roles, landed(common))
                    .zip(on(terminal).and_then(|c| held(roles, landed(c))));
                if let Some((one, other)) = pair {
                    found.push(
                        FaultKind::TravellersMisplaced,
                        vec![one.place, other.place],
                        true,
                        exchange(&one, &other),
                    );
                }
            }
        }
    }
}
