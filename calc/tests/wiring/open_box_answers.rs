//! An opened box against hand calculations by Ohm's law, and against the formula of a floating conductor.

use calc::wiring::open_box::description::{
    At, Colour, Contact, DescriptionRefusal, DeviceKind, End, FarSwitch, Goes, Made, Side,
    SwitchForm, Terminal, check,
};
use calc::wiring::open_box::live_map::{Behind, live_map};
use calc::wiring::open_box::network::{Edit, Network, Part, Scene, Seen};
use calc::wiring::open_box::off_list::{RestsOn, off_list};
use calc::wiring::open_box::reading::{
    Meter, Outcome, Point, Probe, Reading, ReadingRefusal, Round, Shown, check_probe,
};
use calc::wiring::open_box::situation::{Apart, LoadId, Position, Situation, SwitchId};
use calc::wiring::open_box::unforeseen::unforeseen;
use calc::wiring::panel::Leg;
use calc::wiring::shock::{Effect, Floating, phantom};

use crate::open_box_boxes::{B, G, Put, R, W, borrowed_neutral, empty, one_circuit, two_circuits};

/// 14 AWG solid copper, NFPA 70 Chapter 9 Table 8: 3.07 ohm per 1000 ft.
const OHM_PER_FT: f64 = 3.07e-3;

fn close(found: f64, expected: f64) {
    assert!(
        (found - expected).abs() <= expected.abs() * 1e-4 + 1e-9,
        "{found} is not {expected}"
    );
}

fn end(cable: u32, conductor: usize) -> Point {
    Point::End(End::near(cable, conductor))
}

fn volts(from: Point, to: Point) -> Probe {
    Probe::Volts {
        from,
        to,
        meter: Meter::HighImpedance,
    }
}

fn seen(scene: &Scene, probe: Probe) -> f64 {
    match scene.see(&probe).unwrap() {
        Seen::Volts(shown) | Seen::Tester(shown) | Seen::Ohms(shown) => shown.unwrap(),
        Seen::Amps(shown) => shown,
    }
}

fn off(breakers: &[u32]) -> Situation {
    Situation {
        breakers_off: breakers.to_vec(),
        ..Situation::default()
    }
}

/// 1200 W at 120 V is 12 ohm. In the loop: source 0.03 twice, breaker 0.005, 140 ft of 14 AWG, eight contacts of
/// 0.001. The neutral's return through earth, 25 ohm beside 0.03, is a thousandth of the one source resistance.
#[test]
fn one_circuit_by_ohms_law() {
    let d = one_circuit(1200.0);
    let network = Network::of(&d).unwrap();
    let scene = Scene::of(&network, &Situation::default());
    let neutral_ohm = 1.0 / (1.0 / 0.03 + 1.0 / 25.002);
    let loop_ohm = 12.0 + 0.03 + 0.005 + 140.0 * OHM_PER_FT + 8.0 * 0.001 + neutral_ohm;
    let amps = 120.0 / loop_ohm;
    for (cable, conductor) in [(1, 0), (1, 1), (2, 0), (2, 1)] {
        let round = Round::Conductor(End::near(cable, conductor));
        close(seen(&scene, Probe::Amps { round }), amps);
    }
    assert!(scene.net_amps(1).norm() < 1e-9 && scene.net_amps(2).norm() < 1e-9);
    // The white's drop from its joint to the bar: 50 ft, and the contacts at the joint and the bar.
    let drop = amps * (50.0 * OHM_PER_FT + 0.002);
    let joint = Point::Joint {
        in_box: 1,
        joint: 2,
    };
    close(seen(&scene, volts(joint, Point::NeutralBar)), drop);
    close(seen(&scene, volts(joint, end(1, 1))), amps * 0.001);
    // Everything off: from black to white through the heater and 40 ft of cable, on near ends in closed joints.
    let dead = Situation {
        everything_off: true,
        ..Situation::default()
    };
    let scene = Scene::of(&network, &dead);
    let (from, to) = (end(2, 0), end(2, 1));
    let through = 12.0 + 40.0 * OHM_PER_FT + 0.002;
    close(seen(&scene, Probe::Ohms { from, to }), through);
    assert_eq!(scene.see(&volts(from, to)), Some(Seen::Volts(Some(0.0))));
    let apart = Situation {
        apart: vec![Apart::Contact(Contact::End(End::near(2, 1)))],
        ..dead.clone()
    };
    let scene = Scene::of(&network, &apart);
    assert_eq!(
        scene.see(&Probe::Ohms {
            from: end(1, 1),
            to: end(1, 0)
        }),
        Some(Seen::Ohms(None))
    );
    assert_eq!(check_probe(&d, &dead, &Probe::Ohms { from, to }), Ok(()));
    assert_eq!(
        check_probe(&d, &off(&[1]), &Probe::Ohms { from, to }),
        Err(ReadingRefusal::OhmsNotOff)
    );
}

/// The question that the page is for: breaker 2 is off and the white joint is apart, and the heater's white is live.
#[test]
fn a_borrowed_neutral_is_live_through_its_load() {
    let d = borrowed_neutral(true);
    let situation = Situation {
        apart: vec![Apart::Contact(Contact::End(End::near(2, 1)))],
        ..off(&[2])
    };
    let map = live_map(&d, &situation).unwrap();
    let at = |cable, conductor| {
        let contact = Contact::End(End::near(cable, conductor));
        map.contacts.iter().find(|c| c.contact == contact).unwrap()
    };
    // 240 W at 120 V: 60 ohm before the meter.
    let white = at(3, 1);
    assert_eq!(
        (white.behind, &white.breakers),
        (Behind::ThroughLoad, &vec![1])
    );
    close(white.high_impedance_v, 120.0);
    close(
        white.low_impedance_v,
        120.0 * 3000.0 / (3060.0 + 0.03 + 0.005 + 70.0 * OHM_PER_FT + 0.02 + 0.006),
    );
    // 1500 ohm and 60 ohm: 76.9 mA, past 50 mA.
    assert!((white.body_ma - 120_000.0 / 1560.0).abs() < 0.1);
    assert_eq!(white.effect, Effect::BreathingStops);
    assert_eq!(
        (at(1, 0).behind, &at(1, 0).breakers),
        (Behind::Live, &vec![1])
    );
    assert_eq!(at(1, 1).behind, Behind::AtGround);
    assert_eq!(at(2, 1).behind, Behind::AtGround);
    assert_eq!(at(3, 2).behind, Behind::AtGround);
    // Circuit 2's black is off, but hangs through its heater on the same whites.
    assert_eq!(
        (at(2, 0).behind, &at(2, 0).breakers),
        (Behind::ThroughLoad, &vec![1])
    );

    let list = off_list(&d, &[], 1, &[2]).unwrap();
    let ids: Vec<(u32, bool, bool)> = list
        .breakers
        .iter()
        .map(|l| (l.breaker, l.by_metal, l.missing))
        .collect();
    assert_eq!(ids, [(1, true, true), (2, true, false)]);
    let joint = |n| list.joints.iter().find(|j| j.joint == n).unwrap();
    close(joint(4).across_v, 120.0);
    close(joint(1).to_ground_v, 120.0);
    let both = off_list(&d, &[], 1, &[1, 2]).unwrap();
    assert!(
        both.joints
            .iter()
            .all(|j| j.across_v < 1.0 && j.to_ground_v < 1.0)
    );
    assert!(both.breakers.iter().all(|l| !l.missing) && both.every_setting);
}

/// Two circuits as intended: with 1 off, all of its parts are dead though 2 stays on in the same box.
#[test]
fn separate_circuits_stay_apart() {
    let map = live_map(&two_circuits(), &off(&[1])).unwrap();
    for contact in &map.contacts {
        let Contact::End(end) = contact.contact else {
            continue;
        };
        let live = matches!((end.cable, end.conductor), (2 | 4, 0));
        let expected = if live { Behind::Live } else { Behind::AtGround };
        assert_eq!(contact.behind, expected, "{contact:?}");
        assert!(live || (contact.body_ma < 1.0 && contact.effect == Effect::NotFelt));
    }
}

/// A red capped at both ends beside a live black and grounded white and bare: the formula of the floating conductor,
/// with 20 pF per foot to the black and 40 to the two grounded ones.
#[test]
fn a_capped_red_is_induced() {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_home_run(1, 1, &[B, R, W, G], 80.0, 1);
    d.made.push(Made {
        contact: Contact::End(End::near(1, 1)),
        at: At::Capped,
    });
    let map = live_map(&d, &Situation::default()).unwrap();
    let red = map
        .contacts
        .iter()
        .find(|c| c.contact == Contact::End(End::near(1, 1)))
        .unwrap();
    assert_eq!(red.behind, Behind::Induced);
    for (meter_ohm, found) in [
        (10e6, red.high_impedance_v),
        (3000.0, red.low_impedance_v),
        (1500.0, red.body_ma * 1.5),
    ] {
        let expected = phantom(Floating {
            source_v: 120.0,
            frequency_hz: 60.0,
            to_hot_pf_per_ft: 20.0,
            to_ground_pf_per_ft: 40.0,
            length_ft: 80.0,
            meter_ohm,
            meter_pf: 0.0,
        })
        .unwrap();
        close(found, expected.reading_v);
    }
    assert!(red.high_impedance_v > 30.0 && red.low_impedance_v < 1.0);
    let dead = live_map(&d, &off(&[1])).unwrap();
    let red = &dead
        .contacts
        .iter()
        .find(|c| c.contact == red.contact)
        .unwrap();
    assert_eq!((red.behind, red.to_ground_v), (Behind::Floating, None));
}

/// Three-way switches: one in the box, the other at the end of cable 3, the lamp on cable 2. On where both say one, or
/// both say two.
#[test]
fn three_way_switches() {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_home_run(1, 1, &[B, W, G], 30.0, 1);
    d.put_to_load(2, 1, 30.0, 60.0);
    let switch = FarSwitch {
        form: SwitchForm::ThreeWay,
        on: vec![
            (Terminal::Common, 0),
            (Terminal::TravellerOne, 1),
            (Terminal::TravellerTwo, 2),
        ],
        load: None,
    };
    d.put_cable(
        3,
        1,
        &[B, R, Colour::MarkedWhite, G],
        25.0,
        Goes::Switch(switch),
    );
    d.put_device(7, 1, DeviceKind::Switch(SwitchForm::ThreeWay));
    d.put_on((1, 0), 7, Terminal::Common);
    d.put_on((3, 1), 7, Terminal::TravellerOne);
    d.put_on((3, 2), 7, Terminal::TravellerTwo);
    d.put_joint(1, &[(3, 0), (2, 0)]);
    d.put_joint(2, &[(1, 1), (2, 1)]);
    check(&d).unwrap();
    let network = Network::of(&d).unwrap();
    for (here, there) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
        let position = |at| {
            if at == 0 {
                Position::One
            } else {
                Position::Two
            }
        };
        let situation = Situation {
            switches: vec![
                (SwitchId::Device(7), position(here)),
                (SwitchId::Beyond(3), position(there)),
            ],
            ..Situation::default()
        };
        situation.check(&d).unwrap();
        let scene = Scene::of(&network, &situation);
        let amps = scene.conductor_amps(2, 0).norm();
        let expected = if here == there { 0.5 } else { 0.0 };
        assert!((amps - expected).abs() < 0.01, "{here} {there}: {amps}");
    }
    let list = off_list(&d, &[], 1, &[]).unwrap();
    assert_eq!(list.breakers.len(), 1);
    assert!(list.breakers[0].missing && list.breakers[0].by_metal);
}

#[test]
fn faults_are_edits() {
    let d = one_circuit(1200.0);
    let network = Network::of(&d).unwrap();
    let situation = Situation::default();
    let bar = |edits: &[Edit], point| {
        let edited = network.edited(edits);
        seen(
            &Scene::of(&edited, &situation),
            volts(point, Point::GroundBar),
        )
    };
    let white = Part::Joined(Contact::End(End::near(1, 1)));
    // The neutral open: the heater's side of it comes up to the line.
    close(bar(&[Edit::Cut(white)], end(2, 1)), 120.0);
    // 3 ohm in it: 120 V x 3 / 15.5 and the drop of the white.
    let lifted = bar(&[Edit::Ohm(white, 3.0)], end(2, 1));
    assert!((lifted - 120.0 * 3.17 / 15.5).abs() < 0.5, "{lifted}");
    // The service neutral lost: with one load, the bar hangs on the earth rod, 25 ohm against 12.
    let edited = network.edited(&[Edit::Cut(Part::ServiceNeutral)]);
    let scene = Scene::of(&edited, &situation);
    assert!((scene.conductor_amps(1, 0).norm() - 120.0 / 37.5).abs() < 0.02);
    // Led onto another breaker's pole.
    let mut two = two_circuits();
    two.made.retain(|m| m.at != At::Joint(1));
    let network = Network::of(&two).unwrap();
    let pole = network.pole(2, 0).unwrap();
    let led = network.edited(&[Edit::Lead {
        part: Part::Landed(End::far(1, 0)),
        to: pole,
    }]);
    // Nothing else draws, so nothing drops.
    let unloaded = Situation {
        loads_off: vec![LoadId::Beyond { cable: 4, load: 0 }],
        ..off(&[1])
    };
    let dead = Scene::of(&led, &unloaded);
    close(seen(&dead, volts(end(1, 0), Point::GroundBar)), 120.0);
    assert_eq!(network.edited(&[]).branches, network.branches);
}

#[test]
fn what_cannot_be_answered_is_refused() {
    let refused = |change: &dyn Fn(&mut calc::wiring::open_box::description::Description)| {
        let mut d = two_circuits();
        change(&mut d);
        check(&d).unwrap_err()
    };
    assert_eq!(check(&two_circuits()), Ok(()));
    // The blacks of both legs in one joint: 240 V.
    let short = refused(&|d| d.put_joint(1, &[(9, 0)]));
    assert!(matches!(short[0], DescriptionRefusal::NoContact { .. }));
    let short = refused(&|d| {
        for made in &mut d.made {
            if made.at == At::Joint(2) {
                made.at = At::Joint(1);
            }
        }
    });
    assert!(matches!(
        short.as_slice(),
        [DescriptionRefusal::Short { volts: 240.0, .. }]
    ));
    let short = refused(&|d| {
        for made in &mut d.made {
            if made.at == At::Joint(2) {
                made.at = At::Joint(5);
            }
        }
    });
    assert!(
        short
            .iter()
            .all(|s| matches!(s, DescriptionRefusal::Short { volts: 120.0, .. }))
    );
    assert!(matches!(
        refused(&|d| d.cables[3].conductors.clear())[0],
        DescriptionRefusal::Conductors {
            cable: 4,
            conductors: 0
        }
    ));
    assert!(refused(&|d| d.boxes.push(2)).contains(&DescriptionRefusal::EmptyBox { in_box: 2 }));
    assert!(refused(&|d| d.boxes.clear()).contains(&DescriptionRefusal::NoBoxes));
    assert!(refused(&|d| d.panel.leg_a_v = f64::NAN).len() == 1);
    assert!(refused(&|d| d.cables[0].length_ft = Some(f64::INFINITY)).len() == 1);
    assert!(
        refused(&|d| d.put_joint(1, &[(1, 0)])).contains(&DescriptionRefusal::Twice {
            contact: Contact::End(End::near(1, 0))
        })
    );
    let situation = |s: Situation| s.check(&two_circuits()).is_err();
    assert!(situation(off(&[9])));
    assert!(situation(Situation {
        loads_off: vec![LoadId::Device(1)],
        ..Situation::default()
    }));
    assert!(situation(Situation {
        apart: vec![Apart::Joint {
            in_box: 1,
            joint: 8
        }],
        ..Situation::default()
    }));
    let d = two_circuits();
    let nowhere = volts(end(1, 3), Point::Pipe);
    assert!(check_probe(&d, &off(&[]), &nowhere).is_err());
    let same = volts(end(1, 0), end(1, 0));
    assert!(check_probe(&d, &off(&[]), &same).is_err());
    assert!(off_list(&d, &[], 2, &[]).is_err() && off_list(&d, &[], 1, &[7]).is_err());
}

#[test]
fn the_list_says_what_it_rests_on() {
    let mut d = two_circuits();
    d.breakers[0].guessed = true;
    d.breakers[1].tied_to = Some(1);
    d.put_cable(5, 1, &[B, W, G], 30.0, Goes::NotKnown);
    let list = off_list(&d, &[], 1, &[1]).unwrap();
    assert_eq!(
        list.rests_on,
        [
            RestsOn::Guess { breaker: 1 },
            RestsOn::NotKnown { cable: 5 }
        ]
    );
    // Breaker 2 goes off with 1.
    assert!(list.breakers.iter().all(|l| !l.missing));
    // An explanation brings a breaker that the description doesn't.
    let mut d = one_circuit(60.0);
    d.put_breaker(2, Leg::B);
    let network = Network::of(&d).unwrap();
    let black = Part::Landed(End::far(1, 0));
    let pole = network.pole(2, 0).unwrap();
    let explained = network.edited(&[Edit::Lead {
        part: black,
        to: pole,
    }]);
    let list = off_list(&d, &[explained], 1, &[1]).unwrap();
    let ids: Vec<(u32, bool, bool)> = list
        .breakers
        .iter()
        .map(|l| (l.breaker, l.described, l.missing))
        .collect();
    assert_eq!(ids, [(1, true, false), (2, false, true)]);
    assert!(list.joints.iter().any(|j| (j.across_v - 120.0).abs() < 0.1));
}

/// The meter comes first: what it shows where the description has nothing is told, whatever else explains it.
#[test]
fn what_a_meter_shows_beyond_the_description_is_told() {
    let d = one_circuit(600.0);
    let shows = |situation: Situation, probe: Probe, value: f64| Reading {
        situation,
        probe,
        outcome: Outcome::Shows(Shown::Value { value, range: None }),
    };
    let black = volts(end(1, 0), Point::GroundBar);
    let white = Probe::Amps {
        round: Round::Conductor(End {
            cable: 1,
            conductor: 1,
            side: Side::Near,
        }),
    };
    let fits = [
        shows(Situation::default(), black, 119.0),
        shows(off(&[1]), black, 0.4),
        // 600 W at 120 V is 5 A by Ohm's law; more than that is a load that nobody entered, and no surprise while it is on.
        shows(Situation::default(), white, 5.0),
        shows(Situation::default(), white, 20.0),
        shows(off(&[1]), white, 0.03),
    ];
    assert_eq!(unforeseen(&d, &fits), Ok(Vec::new()));
    let beyond = [shows(off(&[1]), black, 120.0), shows(off(&[1]), white, 3.0)];
    let told = unforeseen(&d, &beyond).unwrap();
    assert_eq!(
        told.iter()
            .map(|of| (of.index, of.is_current))
            .collect::<Vec<_>>(),
        [(0, false), (1, true)]
    );
    assert!(told.iter().all(|of| of.expected < 0.1), "{told:?}");
}
