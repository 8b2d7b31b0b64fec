//! Putting an explanation right, and proving it: what goes where, the readings to expect afterwards, the cable to pull.
//!
//! The work is for a qualified person, with everything off and proved dead; what the readings show afterwards decides.

use serde::Serialize;

use super::description::{At, Colour, Contact, Description, DescriptionRefusal, End, Made};
use super::diagnosis::{Explanation, LoadSlip};
use super::faults::{Fault, FaultKind, Look, Place, point_of};
use super::likelihood::View;
use super::network::{Edit, GROUND_BAR, NEUTRAL_BAR, Network, Part, Scene};
use super::next_reading::{Outlook, outlook};
use super::reading::{Meter, Point, Probe, Reading, Round};
use super::return_check::{PutRight, return_check_of};
use super::situation::Situation;
use crate::job::CodeEdition;
use crate::wiring::code::Rule;
use crate::wiring::conductor::Size;

/// A contact of the joint grid: as the explanation has it, and as it belongs.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Moved {
    /// The contact.
    pub contact: Contact,
    /// Its box.
    pub in_box: u32,
    /// Where the explanation has it; `None`: off what it should be on.
    pub found: Option<Point>,
    /// Where it belongs.
    pub right: At,
}

/// A piece of the work besides what is moved in the joint grid.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Work {
    /// Two things that touch: take them apart.
    TakeApart {
        /// One.
        one: Place,
        /// The other.
        other: Place,
    },
    /// A far end, where the cable goes: put it on what it belongs on.
    Land {
        /// The end.
        end: End,
    },
    /// A joint or terminal: cut back, make it anew.
    MakeAnew {
        /// Where.
        place: Place,
    },
    /// A hot that is on another breaker: move it, or correct the directory and this description.
    Breaker {
        /// The hot's end at the panel.
        place: Place,
        /// The breaker it is on, where it is one.
        on: Option<u32>,
    },
    /// The neutral of the supply: everything off, and the supplier of electricity or an electrician at once.
    SupplyNeutral,
}

/// Why a cable would be pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PullIf {
    /// If both ends of the open conductor are found held: then it is broken between.
    BrokenBetween,
    /// The cable that brings the hot has no white that the return could take.
    NoWhite,
}

/// A cable to pull.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pull {
    /// Why.
    pub pull_if: PullIf,
    /// The cable that it takes the place of.
    pub replaces: u32,
    /// Its conductors.
    pub conductors: Vec<Colour>,
    /// Its size.
    pub size: Size,
    /// From.
    pub from: Look,
    /// To.
    pub to: Look,
    /// About so long, feet: as the one it replaces.
    pub length_ft: f64,
}

/// A reading to take afterwards and what it has to show.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Proof {
    /// In which situation.
    pub situation: Situation,
    /// Where and with what.
    pub probe: Probe,
    /// What it has to show.
    pub expect: Outlook,
    /// Whether it was measured before.
    pub measured_before: bool,
}

/// What it takes to put an explanation right.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Remedy {
    /// What is elsewhere in the joint grid than it belongs.
    pub moved: Vec<Moved>,
    /// The joint grid as the explanation has it: what is off its place is loose.
    pub found_grid: Vec<Made>,
    /// The joint grid as it belongs.
    pub right_grid: Vec<Made>,
    /// The rest of the work.
    pub work: Vec<Work>,
    /// Cables to pull.
    pub pulls: Vec<Pull>,
    /// The readings to take afterwards.
    pub proofs: Vec<Proof>,
    /// The sections that it is about.
    pub sections: Vec<&'static str>,
    /// Where to go.
    pub look: Vec<Look>,
}

/// What it takes to put an explanation right, and how to prove it.
///
/// # Errors
/// What [`check`](super::description::check) refuses.
pub fn put_right(
    description: &Description,
    explanation: &Explanation,
    readings: &[Reading],
    edition: CodeEdition,
) -> Result<Remedy, Vec<DescriptionRefusal>> {
    let network = Network::of(description)?;
    // A load that is other than described stays so.
    let loads: Vec<Edit> = explanation.slip.iter().map(LoadSlip::edit).collect();
    let put_right = network.edited(&loads);
    let mut remedy = Remedy {
        moved: Vec::new(),
        found_grid: description.made.clone(),
        right_grid: description.made.clone(),
        work: Vec::new(),
        pulls: Vec::new(),
        proofs: proofs(description, &put_right, readings),
        sections: Vec::new(),
        look: Vec::new(),
    };
    for fault in &explanation.faults {
        for place in &fault.places {
            let look = place.look(description);
            if !remedy.look.contains(&look) {
                remedy.look.push(look);
            }
        }
        for rule in rules(fault.kind) {
            let section = rule.section(edition);
            if !remedy.sections.contains(&section) {
                remedy.sections.push(section);
            }
        }
        one(description, &network, fault, &mut remedy);
    }
    no_white(description, &network, edition, &mut remedy.pulls);
    for moved in &remedy.moved {
        let found = moved.found.and_then(at_of).unwrap_or(At::Loose);
        for made in remedy.found_grid.iter_mut() {
            if made.contact == moved.contact {
                made.at = found;
            }
        }
    }
    Ok(remedy)
}

/// The place in a joint grid that a point stands for.
const fn at_of(point: Point) -> Option<At> {
    match point {
        Point::Joint { joint, .. } => Some(At::Joint(joint)),
        Point::Terminal { device, terminal } => Some(At::Terminal { device, terminal }),
        _ => None,
    }
}

fn one(description: &Description, network: &Network, fault: &Fault, remedy: &mut Remedy) {
    let pair = match fault.places.as_slice() {
        [one, other] => Some((*one, *other)),
        _ => None,
    };
    match fault.kind {
        FaultKind::NothingWrong | FaultKind::StrayOnly => {}
        FaultKind::ServiceNeutralLost | FaultKind::FeederNeutralLost => {
            remedy.work.push(Work::SupplyNeutral);
        }
        FaultKind::PoorJoint => {
            for place in &fault.places {
                remedy.work.push(Work::MakeAnew { place: *place });
            }
        }
        FaultKind::NeutralsJoined | FaultKind::HotsJoined | FaultKind::NeutralToGround => {
            if let Some((one, other)) = pair {
                remedy.work.push(Work::TakeApart { one, other });
            }
        }
        FaultKind::OtherBreaker => {
            let on = fault.places.iter().find_map(|place| match place {
                Place::Pole { breaker, .. } => Some(*breaker),
                _ => None,
            });
            for place in &fault.places {
                if !matches!(place, Place::Pole { .. }) {
                    remedy.work.push(Work::Breaker { place: *place, on });
                }
            }
        }
        _ => moved(description, network, fault, remedy),
    }
    let open = matches!(
        fault.kind,
        FaultKind::NeutralOpen | FaultKind::HotOpen | FaultKind::GroundOpen
    );
    if let (true, Some(Place::At(Point::End(end)))) = (open, fault.places.first())
        && let Some(cable) = description.cable(end.cable)
    {
        let ends = [End::near(cable.id, 0), End::far(cable.id, 0)];
        let [from, to] = ends.map(|end| Place::At(Point::End(end)).look(description));
        remedy.pulls.push(Pull {
            pull_if: PullIf::BrokenBetween,
            replaces: cable.id,
            conductors: cable.conductors.clone(),
            size: cable.size,
            from,
            to,
            length_ft: cable.length_or_usual_ft(),
        });
    }
}

/// Contacts and far ends that are elsewhere than they belong.
fn moved(description: &Description, network: &Network, fault: &Fault, remedy: &mut Remedy) {
    for edit in &fault.edits {
        let (part, to) = match *edit {
            Edit::Cut(part) => (part, None),
            Edit::Lead { part, to } => (part, Some(to)),
            Edit::Hold { contact, to, .. } => (Part::Joined(contact), Some(to)),
            Edit::Ohm(..) | Edit::Join { .. } | Edit::Load { .. } => continue,
        };
        match part {
            Part::Joined(contact) => {
                let Some(in_box) = description.box_of_contact(contact) else {
                    continue;
                };
                let joined = joined_to(fault, network.contact(contact));
                remedy.moved.push(Moved {
                    contact,
                    in_box,
                    found: to
                        .or(joined)
                        .and_then(|node| point_at(description, network, node)),
                    right: description.at(contact),
                });
            }
            Part::Landed(end) => remedy.work.push(Work::Land { end }),
            _ => {}
        }
    }
}

/// The node that an edit joins a node to.
fn joined_to(fault: &Fault, node: Option<usize>) -> Option<usize> {
    fault.edits.iter().find_map(|edit| match *edit {
        Edit::Join { from, to, .. } if Some(from) == node => Some(to),
        Edit::Join { from, to, .. } if Some(to) == node => Some(from),
        _ => None,
    })
}

/// The joint or contact at a node.
fn point_at(description: &Description, network: &Network, node: usize) -> Option<Point> {
    let joint = network.joints().iter().find(|(.., at)| *at == node);
    if let Some(&(in_box, joint, _)) = joint {
        return Some(Point::Joint { in_box, joint });
    }
    super::live_map::contacts_of(description)
        .into_iter()
        .map(|(contact, _)| contact)
        .find(|contact| network.contact(*contact) == Some(node))
        .map(point_of)
}

/// Cables without a white that the return of a circuit could take, by the description itself.
fn no_white(
    description: &Description,
    network: &Network,
    edition: CodeEdition,
    pulls: &mut Vec<Pull>,
) {
    let check = return_check_of(description, network, &Situation::default(), edition);
    for astray in check.astray {
        for work in astray.put_right {
            let PutRight::NewCable {
                replaces,
                conductors,
                size,
                ..
            } = work
            else {
                continue;
            };
            let Some(cable) = description.cable(replaces) else {
                continue;
            };
            let ends = [End::near(replaces, 0), End::far(replaces, 0)];
            let [from, to] = ends.map(|end| Place::At(Point::End(end)).look(description));
            pulls.push(Pull {
                pull_if: PullIf::NoWhite,
                replaces,
                conductors,
                size,
                from,
                to,
                length_ft: cable.length_or_usual_ft(),
            });
        }
    }
}

/// The sections that a kind of fault is about.
const fn rules(kind: FaultKind) -> &'static [Rule] {
    match kind {
        FaultKind::NothingWrong | FaultKind::StrayOnly => &[],
        FaultKind::NeutralOpen | FaultKind::HotOpen => &[Rule::Splices, Rule::TerminalsFast],
        FaultKind::NeutralBorrowed | FaultKind::NeutralsJoined => {
            &[Rule::RunTogether, Rule::OneNeutral]
        }
        FaultKind::HotsJoined => &[Rule::RunTogether],
        FaultKind::OtherBreaker => &[Rule::Directory],
        FaultKind::HotNeutralSwapped => &[Rule::Polarity],
        FaultKind::NeutralToGround => &[Rule::NeutralBond],
        FaultKind::GroundOpen => &[Rule::GroundJoints],
        FaultKind::SwitchInNeutral => &[Rule::NeutralNotSwitched],
        FaultKind::TravellersMisplaced => &[Rule::SwitchHot],
        FaultKind::PoorJoint => &[Rule::Splices, Rule::TerminalsFast],
        FaultKind::ServiceNeutralLost | FaultKind::FeederNeutralLost => &[Rule::ServiceBond],
    }
}

/// The readings to take afterwards: those taken before, then the net current of every cable, hot against neutral and
/// ground of every joint, and every ground against the bar.
fn proofs(description: &Description, network: &Network, readings: &[Reading]) -> Vec<Proof> {
    let mut all = Vec::new();
    for reading in readings {
        push(network, &reading.situation, reading.probe, true, &mut all);
    }
    let on = Situation::default();
    let off = Situation {
        everything_off: true,
        ..Situation::default()
    };
    for cable in &description.cables {
        let round = Round::Cable {
            cable: cable.id,
            side: End::near(cable.id, 0).side,
        };
        push(network, &on, Probe::Amps { round }, false, &mut all);
    }
    let bars = network.sets(&network.branches, |branch| {
        branch.is_metal()
            && !matches!(
                branch.part,
                Part::Bond | Part::Supply(_) | Part::ServiceNeutral | Part::Pole { .. }
            )
    });
    for &in_box in &description.boxes {
        let mut sets = bars.clone();
        let mut on_bar = |bar: usize| {
            let of = network
                .joints()
                .iter()
                .find(|(b, _, node)| *b == in_box && sets.find(*node) == sets.find(bar));
            of.map(|(_, joint, _)| Point::Joint {
                in_box,
                joint: *joint,
            })
        };
        let (neutral, ground) = (on_bar(NEUTRAL_BAR), on_bar(GROUND_BAR));
        for to in [neutral, ground].into_iter().flatten() {
            for &(b, joint, _) in network.joints() {
                let from = Point::Joint { in_box, joint };
                if b == in_box && Some(from) != neutral && Some(from) != ground {
                    let meter = Meter::LowImpedance;
                    let probe = Probe::Volts { from, to, meter };
                    push(network, &on, probe, false, &mut all);
                }
            }
        }
        if let Some(from) = ground {
            let to = Point::GroundBar;
            push(network, &off, Probe::Ohms { from, to }, false, &mut all);
        }
    }
    all
}

fn push(
    network: &Network,
    situation: &Situation,
    probe: Probe,
    measured_before: bool,
    all: &mut Vec<Proof>,
) {
    if all
        .iter()
        .any(|proof| proof.probe == probe && proof.situation == *situation)
    {
        return;
    }
    let mut view = View::of(network, Scene::of(network, situation));
    if let Some(expected) = view.expect(&probe, false) {
        all.push(Proof {
            situation: situation.clone(),
            probe,
            expect: outlook(&expected),
            measured_before,
        });
    }
}
