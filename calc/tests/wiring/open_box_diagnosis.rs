//! Diagnosis: faults put into described boxes, read by ideal instruments, have to be found again.

use calc::wiring::open_box::description::{Description, End, Side};
use calc::wiring::open_box::diagnosis::{Diagnosis, diagnose};
use calc::wiring::open_box::faults::{FaultKind, faults};
use calc::wiring::open_box::network::{Network, Scene, Seen};
use calc::wiring::open_box::reading::{Outcome, Point, Probe, Reading, Round, Shown};
use calc::wiring::open_box::situation::Situation;

use crate::open_box_boxes::two_circuits;

/// What an instrument with so many figures shows in a network.
pub fn read(network: &Network, situation: &Situation, probe: Probe) -> Reading {
    let seen = Scene::of(network, situation).see(&probe).unwrap();
    let shows = |value: f64| Outcome::Shows(Shown::Value { value, range: None });
    let outcome = match seen {
        Seen::Volts(volts) => shows((volts.unwrap_or(0.0) * 10.0).round() / 10.0),
        Seen::Amps(amps) => shows((amps * 100.0).round() / 100.0),
        Seen::Tester(volts) => Outcome::Glows(volts.unwrap_or(0.0) > 50.0),
        Seen::Ohms(Some(ohm)) if ohm < 2e6 => shows((ohm * 10.0).round() / 10.0),
        Seen::Ohms(_) => Outcome::Shows(Shown::OverLimit { range: None }),
    };
    Reading {
        situation: situation.clone(),
        probe,
        outcome,
    }
}

fn net(cable: u32) -> Probe {
    Probe::Amps {
        round: Round::Cable {
            cable,
            side: Side::Near,
        },
    }
}

fn kinds(diagnosis: &Diagnosis) -> Vec<FaultKind> {
    diagnosis
        .answers
        .iter()
        .map(|answer| answer.members[0].faults[0].kind)
        .collect()
}

/// The network of a description with its first fault of a kind that a test takes.
fn faulty(
    description: &Description,
    kind: FaultKind,
    takes: impl Fn(&calc::wiring::open_box::faults::Fault) -> bool,
) -> Network {
    let network = Network::of(description).unwrap();
    let all = faults(description, &network);
    let fault = all
        .iter()
        .find(|fault| fault.kind == kind && takes(fault))
        .unwrap();
    fault.network(&network)
}

#[test]
fn a_borrowed_neutral_shows_by_the_net_current_of_two_cables() {
    let d = two_circuits();
    let end = Point::End(End::near(3, 1));
    let network = faulty(&d, FaultKind::NeutralBorrowed, |fault| {
        fault.places.first() == Some(&calc::wiring::open_box::faults::Place::At(end))
    });
    let on = Situation::default();
    let readings = [1, 2, 3, 4].map(|cable| read(&network, &on, net(cable)));
    let diagnosis = diagnose(&d, &readings).unwrap();
    let first = &diagnosis.answers[0];
    assert_eq!(
        kinds(&diagnosis)[0],
        FaultKind::NeutralBorrowed,
        "{first:#?}"
    );
    assert_eq!(first.explained, vec![0, 1, 2, 3]);
}

#[test]
fn nothing_wrong_is_an_answer() {
    let d = two_circuits();
    let network = Network::of(&d).unwrap();
    let on = Situation::default();
    let readings = [1, 2, 3, 4].map(|cable| read(&network, &on, net(cable)));
    let diagnosis = diagnose(&d, &readings).unwrap();
    let nothing = diagnosis.answers.iter().find(|a| a.nothing_seen).unwrap();
    for answer in &diagnosis.answers {
        println!(
            "{:.3} {} {:?}",
            answer.share,
            answer.members.len(),
            answer.members[0]
                .faults
                .iter()
                .map(|f| (f.kind, &f.places))
                .collect::<Vec<_>>()
        );
    }
    assert!(nothing.share > 0.15);
}
