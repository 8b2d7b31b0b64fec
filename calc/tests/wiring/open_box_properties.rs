//! Random boxes: the off-list, found by reachability, against the solver; and what must hold in any wiring.

use calc::job::CodeEdition;
use calc::wiring::open_box::description::{
    At, Colour, Contact, Description, DeviceKind, End, FarSwitch, Goes, Made, SwitchForm, Terminal,
    check,
};
use calc::wiring::open_box::live_map::{Behind, LEAST_V, MapRefusal, contacts_of, live_map};
use calc::wiring::open_box::network::{Edit, GROUND_BAR, NEUTRAL_BAR, Network, Part, Scene, Value};
use calc::wiring::open_box::off_list::off_list;
use calc::wiring::open_box::reading::Point;
use calc::wiring::open_box::return_check::return_check;
use calc::wiring::open_box::situation::{Apart, Position, Situation, SwitchId, switches};
use calc::wiring::panel::Leg;
use proptest::prelude::*;

use crate::open_box_boxes::{B, G, Put, R, W, empty, load};

/// What a random wiring is made from.
type Seed = (usize, Vec<(u8, u8, u8, u8)>, Vec<(u8, u8)>, Vec<u8>);

fn seed() -> impl Strategy<Value = Seed> {
    (
        1_usize..=3,
        prop::collection::vec(any::<(u8, u8, u8, u8)>(), 2..6),
        prop::collection::vec(any::<(u8, u8)>(), 0..3),
        prop::collection::vec(any::<u8>(), 60),
    )
}

/// Boxes in a chain, cables of every kind, devices, and ends wherever the seed puts them: mostly blacks with blacks and
/// whites with whites.
fn wiring((boxes, cables, devices, places): Seed) -> Description {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_breaker(2, Leg::B);
    d.put_breaker(3, Leg::A);
    let mut id = 0;
    for at in 1..boxes as u32 {
        id += 1;
        d.put_cable(id, at, &[B, R, W, G], 20.0, Goes::Box(at + 1));
    }
    for (at, &(kind, box_at, feet, watts)) in cables.iter().enumerate() {
        id += 1;
        let in_box = 1 + u32::from(box_at) % boxes as u32;
        let feet = 5.0 + f64::from(feet) / 4.0;
        // The first always comes from the panel, and the last box is reached by a cable between boxes.
        match if at == 0 { 0 } else { kind % 8 } {
            0..=2 => d.put_home_run(id, in_box, &[B, W, G], feet, 1 + u32::from(watts) % 3),
            3..=5 => d.put_to_load(id, in_box, feet, 20.0 + 5.0 * f64::from(watts)),
            6 => {
                let switch = FarSwitch {
                    form: SwitchForm::SinglePole,
                    on: vec![(Terminal::First, 0), (Terminal::Second, 1)],
                    load: None,
                };
                let conductors = [B, Colour::MarkedWhite, G];
                d.put_cable(id, in_box, &conductors, feet, Goes::Switch(switch));
            }
            _ => {
                let switch = FarSwitch {
                    form: SwitchForm::FourWay,
                    on: vec![(Terminal::TravellerOne, 0), (Terminal::TravellerTwo, 1)],
                    load: Some((load(60.0), 2)),
                };
                d.put_cable(id, in_box, &[B, R, W, G], feet, Goes::Switch(switch));
            }
        }
    }
    for in_box in 1..=boxes as u32 {
        if !d.boxes.contains(&in_box) {
            d.boxes.push(in_box);
        }
    }
    for (at, &(kind, box_at)) in devices.iter().enumerate() {
        let kind = match kind % 4 {
            0 => DeviceKind::Switch(SwitchForm::SinglePole),
            1 => DeviceKind::Switch(SwitchForm::ThreeWay),
            2 => DeviceKind::Lampholder(Some(load(75.0))),
            _ => DeviceKind::Receptacle {
                hot_tab: true,
                neutral_tab: kind >= 128,
                upper: Some(load(500.0)),
                lower: None,
            },
        };
        d.put_device(at as u32 + 1, 1 + u32::from(box_at) % boxes as u32, kind);
    }
    let mut places = places.into_iter().cycle();
    for (contact, _) in contacts_of(&d) {
        let place = places.next().unwrap();
        let colour = match contact {
            Contact::End(end) => d.cable(end.cable).unwrap().conductors[end.conductor],
            Contact::Terminal { terminal, .. } => match terminal {
                Terminal::Neutral | Terminal::NeutralLower => W,
                _ => B,
            },
        };
        let joint = match colour {
            G => 9,
            W if place % 16 == 0 => 2,
            W => 5 + u32::from(place % 2),
            _ => 1 + u32::from(place % 4),
        };
        let at = if colour != G && place / 16 == 0 {
            At::Capped
        } else {
            At::Joint(joint)
        };
        d.made.push(Made { contact, at });
    }
    d
}

fn wirings() -> impl Strategy<Value = Description> {
    seed()
        .prop_map(wiring)
        .prop_filter("a short", |d| check(d).is_ok())
}

fn settings(d: &Description) -> Vec<Vec<(SwitchId, Position)>> {
    let all = switches(d);
    (0..1_u32 << all.len().min(5))
        .map(|bits| {
            all.iter()
                .enumerate()
                .map(|(at, switch)| match bits >> at & 1 {
                    0 => (*switch, Position::One),
                    _ => (*switch, Position::Two),
                })
                .collect()
        })
        .collect()
}

/// The most volts to ground, and between two, of the contacts in a box.
fn most_v(d: &Description, scene: &Scene, in_box: u32) -> f64 {
    let mut all = vec![scene.to_ground(GROUND_BAR).unwrap()];
    for (contact, of) in contacts_of(d) {
        let node = scene.network.contact(contact).unwrap();
        all.extend(scene.to_ground(node).filter(|_| of == in_box));
    }
    let mut most = 0.0_f64;
    for one in &all {
        for other in &all {
            most = most.max((one - other).norm());
        }
    }
    most
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, max_global_rejects: 100_000, ..ProptestConfig::default() })]

    /// With the list off nothing in the box has more than 1 V, in any setting of the switches, with nothing apart, any
    /// one joint apart, or any one contact off its joint.
    #[test]
    fn with_the_list_off_the_box_is_dead(d in wirings()) {
        let network = Network::of(&d).unwrap();
        let list = off_list(&d, &[], 1, &[]).unwrap();
        let breakers_off: Vec<u32> = list.breakers.iter().map(|l| l.breaker).collect();
        let mut aparts = vec![vec![]];
        for &(in_box, joint, _) in network.joints() {
            aparts.push(vec![Apart::Joint { in_box, joint }]);
        }
        for made in &d.made {
            if matches!(made.at, At::Joint(_)) {
                aparts.push(vec![Apart::Contact(made.contact)]);
            }
        }
        for switches in settings(&d) {
            for apart in &aparts {
                let situation = Situation {
                    breakers_off: breakers_off.clone(),
                    apart: apart.clone(),
                    switches: switches.clone(),
                    ..Situation::default()
                };
                let volts = most_v(&d, &Scene::conducted(&network, &situation), 1);
                prop_assert!(volts <= 1.0, "{} V, {:?}", volts, situation);
                // What stray capacitance brings besides is less than a body feels, 1 mA through 1500 ohm.
                let scene = Scene::of(&network, &situation);
                for (contact, in_box) in contacts_of(&d) {
                    let node = network.contact(contact).unwrap();
                    if in_box == 1 && scene.to_ground(node).is_some_and(|v| v.norm() > 1.0) {
                        prop_assert!(scene.across(node, GROUND_BAR, 1500.0).unwrap() < 1.5);
                    }
                }
            }
        }
    }

    /// Each breaker on the list can bring a voltage into the box: with the others off and the ways back to the bars
    /// open, in some setting of the switches.
    #[test]
    fn no_breaker_is_listed_in_vain(d in wirings()) {
        let mut network = Network::of(&d).unwrap();
        let to_bars: Vec<Edit> = network
            .branches
            .iter()
            .filter(|b| matches!(b.part, Part::Landed(_)) && [NEUTRAL_BAR, GROUND_BAR].contains(&b.to))
            .map(|b| Edit::Cut(b.part))
            .collect();
        network.edit(&to_bars);
        for listed in off_list(&d, &[], 1, &[]).unwrap().breakers {
            let others: Vec<u32> = [1, 2, 3].into_iter().filter(|b| *b != listed.breaker).collect();
            let most = settings(&d)
                .into_iter()
                .map(|switches| {
                    let situation = Situation { breakers_off: others.clone(), switches, ..Situation::default() };
                    most_v(&d, &Scene::of(&network, &situation), 1)
                })
                .fold(0.0, f64::max);
            prop_assert!(most > 100.0, "{:?}: {} V", listed, most);
        }
    }

    /// The live map says of no contact with a voltage that nothing is behind it, and of none without that it is live.
    #[test]
    fn the_map_agrees_with_the_volts(d in wirings(), off in prop::collection::vec(1_u32..=3, 0..3)) {
        let mut breakers_off = off;
        breakers_off.dedup();
        let situation = Situation { breakers_off, ..Situation::default() };
        let map = match live_map(&d, &situation) {
            Err(MapRefusal::Short { .. }) => return Ok(()),
            other => other.unwrap(),
        };
        for contact in map.contacts {
            let volts = contact.high_impedance_v;
            match contact.behind {
                Behind::Live => prop_assert!(volts > 90.0, "{:?}", contact),
                Behind::ThroughLoad => prop_assert!(
                    volts >= LEAST_V * 0.9 && !contact.breakers.is_empty(), "{:?}", contact
                ),
                Behind::Induced => prop_assert!(
                    volts >= LEAST_V && contact.low_impedance_v < 2.0 && contact.body_ma < 1.0, "{:?}", contact
                ),
                Behind::Floating => prop_assert!(volts < LEAST_V && contact.to_ground_v.is_none(), "{:?}", contact),
                Behind::AtGround => prop_assert!(volts < 10.0, "{:?}", contact),
            }
            prop_assert!(contact.low_impedance_v <= volts * (1.0 + 1e-6) + 1e-6, "{:?}", contact);
        }
    }

    /// Stray capacitance that is left out, between parts that metal holds to the supply, changes no voltage that the rest
    /// decides: the whole netlist with every one of them agrees.
    #[test]
    fn nothing_hangs_on_the_strays_left_out(d in wirings()) {
        let network = Network::of(&d).unwrap();
        let scene = Scene::of(&network, &Situation::default());
        let mut whole = scene.netlist.clone();
        whole.links = scene.closed.iter().map(|b| b.link()).collect();
        let solved = calc::wiring::open_box::solve::solve(&whole);
        for (contact, _) in contacts_of(&d) {
            let node = network.contact(contact).unwrap();
            if let Some(volts) = scene.to_ground(node) {
                let with_all = solved.between(node, GROUND_BAR).unwrap();
                prop_assert!((volts - with_all).norm() < 1e-3, "{:?} {} {}", contact, volts, with_all);
            }
        }
        prop_assert!(network.branches.iter().any(|b| matches!(b.value, Value::Farad(_))));
    }

    /// Nothing that is described makes an answer fail, and figures are numbers.
    #[test]
    fn every_wiring_is_answered(d in wirings()) {
        let answer = match return_check(&d, &Situation::default(), CodeEdition::E2023) {
            Err(MapRefusal::Short { .. }) => return Ok(()),
            other => other.unwrap(),
        };
        prop_assert!(answer.cables.iter().all(|c| c.net_a.is_finite() && c.load_a.is_finite()));
        // Named means somebody's current is astray.
        prop_assert!(answer.cables.iter().all(|c| !c.named) || !answer.astray.is_empty());
        let everything_off = Situation { everything_off: true, ..Situation::default() };
        let network = Network::of(&d).unwrap();
        let scene = Scene::of(&network, &everything_off);
        prop_assert!(most_v(&d, &scene, 1) < 1e-9);
        let black = network.point(Point::End(End::near(d.cables[0].id, 0))).unwrap();
        prop_assert!(scene.ohms(black, GROUND_BAR).is_none_or(|ohm| ohm.is_finite() && ohm > 0.0));
    }
}

/// A hundred nodes solve in well under a millisecond, unoptimized too.
#[test]
fn large_wirings_are_quick() {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    let mut id = 0;
    for in_box in 1..=3 {
        for _ in 0..2 {
            id += 1;
            d.put_home_run(id, in_box, &[B, W, G], 50.0, 1);
            id += 1;
            d.put_to_load(id, in_box, 30.0, 100.0);
            d.put_joint(1, &[(id - 1, 0), (id, 0)]);
            d.put_joint(2, &[(id - 1, 1), (id, 1)]);
            d.put_joint(3, &[(id - 1, 2), (id, 2)]);
        }
        if in_box < 3 {
            id += 1;
            d.put_cable(id, in_box, &[B, R, W, G], 30.0, Goes::Box(in_box + 1));
            d.put_joint(2, &[(id, 2)]);
            d.put_joint(3, &[(id, 3)]);
            d.put_far_joint(2, &[(id, 2)]);
        }
    }
    let network = Network::of(&d).unwrap();
    assert!(network.nodes > 100, "{}", network.nodes);
    let start = std::time::Instant::now();
    let rounds = 200;
    for _ in 0..rounds {
        let scene = Scene::of(&network, &Situation::default());
        assert!(scene.net_amps(1).norm().is_finite());
    }
    let each = start.elapsed() / rounds;
    println!("{} nodes, {each:?} each", network.nodes);
    assert!(each.as_micros() < 5000, "{each:?}");
}
