//! Diagnosis: faults put into described boxes, read by ideal instruments, have to be found again.

use calc::job::CodeEdition;
use calc::wiring::open_box::description::{At, Contact, Description, End, Side};
use calc::wiring::open_box::diagnosis::{Diagnosis, DiagnosisRefusal, diagnose, diagnose_in};
use calc::wiring::open_box::faults::{FaultKind, Look, Place, faults};
use calc::wiring::open_box::network::{Network, Scene, Seen};
use calc::wiring::open_box::next_reading::Outlook;
use calc::wiring::open_box::off_list::off_list;
use calc::wiring::open_box::put_right::{Moved, Proof, put_right};
use calc::wiring::open_box::reading::{
    Meter, Outcome, Point, Probe, Reading, ReadingRefusal, Round, Shown,
};
use calc::wiring::open_box::situation::Situation;
use calc::wiring::panel::Leg;

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
    assert!(nothing.share > 0.15);
}

/// Whether a reading is what a proof asks for.
fn holds(reading: &Reading, proof: &Proof) -> bool {
    match (reading.outcome, proof.expect) {
        (Outcome::Shows(Shown::Value { value, .. }), Outlook::Between { low, high }) => {
            value >= low - 0.05 && value <= high + 0.05
        }
        (Outcome::Shows(Shown::OverLimit { .. }), Outlook::OverLimit) => true,
        (Outcome::Glows(shown), Outlook::Glows(asked)) => shown == asked,
        _ => false,
    }
}

#[test]
fn the_proof_fails_before_the_work_and_holds_after_it() {
    let d = two_circuits();
    let right = Network::of(&d).unwrap();
    let white = Contact::End(End::near(3, 1));
    let wrong = faulty(&d, FaultKind::NeutralBorrowed, |fault| {
        fault.places.first() == Some(&Place::At(Point::End(End::near(3, 1))))
    });
    let on = Situation::default();
    let readings = [1, 2, 3, 4].map(|cable| read(&wrong, &on, net(cable)));
    let diagnosis = diagnose(&d, &readings).unwrap();
    let explanation = &diagnosis.answers[0].members[0];
    let remedy = put_right(&d, explanation, &readings, CodeEdition::E2023).unwrap();
    assert_eq!(
        remedy.moved,
        [Moved {
            contact: white,
            in_box: 1,
            found: Some(Point::Joint {
                in_box: 1,
                joint: 4
            }),
            right: At::Joint(3),
        }]
    );
    assert_eq!(remedy.sections, ["300.3(B)", "200.4(A)"]);
    let found = remedy.found_grid.iter().find(|m| m.contact == white);
    assert_eq!(found.unwrap().at, At::Joint(4));
    assert_eq!(remedy.right_grid, d.made);
    let proved = |network: &Network| {
        remedy
            .proofs
            .iter()
            .filter(|proof| holds(&read(network, &proof.situation, proof.probe), proof))
            .count()
    };
    assert_eq!(proved(&right), remedy.proofs.len());
    assert!(proved(&wrong) < remedy.proofs.len());
}

#[test]
fn an_off_list_holds_for_what_may_be_wrong() {
    let mut d = two_circuits();
    d.breakers[1].legs = vec![Leg::A];
    // With breaker 1 off, only the hots that touch bring breaker 2 to joint 1.
    let network = faulty(&d, FaultKind::HotsJoined, |_| true);
    let off = Situation {
        breakers_off: vec![1],
        ..Situation::default()
    };
    let from = Point::Joint {
        in_box: 1,
        joint: 1,
    };
    let volts = Probe::Volts {
        from,
        to: Point::GroundBar,
        meter: Meter::LowImpedance,
    };
    let amps = Probe::Amps {
        round: Round::Conductor(End::near(1, 0)),
    };
    let readings = [read(&network, &off, volts), read(&network, &off, amps)];
    let diagnosis = diagnose(&d, &readings).unwrap();
    assert_eq!(kinds(&diagnosis)[0], FaultKind::HotsJoined);
    let described = Network::of(&d).unwrap();
    let networks = diagnosis.networks(&described, 0.05);
    let list = off_list(&d, &networks, 1, &[1]).unwrap();
    let joint = list.joints.iter().find(|joint| joint.joint == 1).unwrap();
    assert!(joint.to_ground_v > 100.0, "{joint:?}");
    let without = off_list(&d, &[], 1, &[1]).unwrap();
    let joint = without
        .joints
        .iter()
        .find(|joint| joint.joint == 1)
        .unwrap();
    assert!(joint.to_ground_v < 1.0, "{joint:?}");
}

#[test]
fn readings_that_nothing_explains_together_are_named() {
    let d = two_circuits();
    let network = Network::of(&d).unwrap();
    let on = Situation::default();
    let probe = Probe::Amps {
        round: Round::Conductor(End::near(1, 0)),
    };
    let mut readings = [
        read(&network, &on, probe),
        read(&network, &on, probe),
        read(&network, &on, net(4)),
    ];
    readings[1].outcome = Outcome::Shows(Shown::Value {
        value: 0.0,
        range: None,
    });
    let diagnosis = diagnose(&d, &readings).unwrap();
    assert_eq!(diagnosis.contradicting, [(0, 1)]);
    assert!(diagnosis.never_explained.is_empty());
}

#[test]
fn what_cannot_be_answered_is_refused() {
    let d = two_circuits();
    let network = Network::of(&d).unwrap();
    let on = Situation::default();
    let mut reading = read(&network, &on, net(1));
    assert_eq!(
        diagnose_in(&d, &[], &[7]),
        Err(DiagnosisRefusal::NoBox { in_box: 7 })
    );
    assert_eq!(diagnose_in(&d, &[], &[]), Err(DiagnosisRefusal::NoBoxes));
    reading.probe = Probe::Ohms {
        from: Point::NeutralBar,
        to: Point::GroundBar,
    };
    assert_eq!(
        diagnose(&d, std::slice::from_ref(&reading)),
        Err(DiagnosisRefusal::Reading {
            place: 0,
            refusal: ReadingRefusal::OhmsNotOff
        })
    );
}

#[test]
fn a_lost_service_neutral_is_told_by_two_legs_that_add_up() {
    let d = two_circuits();
    let network = faulty(&d, FaultKind::ServiceNeutralLost, |_| true);
    let on = Situation::default();
    let readings = [1, 2].map(|joint| {
        let from = Point::Joint { in_box: 1, joint };
        let to = Point::Joint {
            in_box: 1,
            joint: joint + 2,
        };
        let meter = Meter::HighImpedance;
        read(&network, &on, Probe::Volts { from, to, meter })
    });
    let diagnosis = diagnose(&d, &readings).unwrap();
    assert_eq!(kinds(&diagnosis)[0], FaultKind::ServiceNeutralLost);
    assert_eq!(diagnosis.answers[0].look, [Look::Service]);
}
