//! Currents that don't come back where they went out, and neutrals against their ampacity.

use calc::job::CodeEdition;
use calc::wiring::open_box::description::{At, Contact, End, Goes, OnBreaker};
use calc::wiring::open_box::neutral_load::{Planned, neutral_loads};
use calc::wiring::open_box::reading::Point;
use calc::wiring::open_box::return_check::{PutRight, return_check};
use calc::wiring::open_box::situation::Situation;
use calc::wiring::panel::Leg;

use crate::open_box_boxes::{
    B, G, Put, R, W, borrowed_neutral, empty, load, one_circuit, two_circuits,
};

fn end(cable: u32, conductor: usize) -> Point {
    Point::End(End::near(cable, conductor))
}

/// Circuit 1 goes out in cable 1 and comes back in cable 2; its own white is capped, or there is none.
#[test]
fn a_borrowed_neutral_is_named_with_its_cure() {
    let d = borrowed_neutral(true);
    let answer = return_check(&d, &Situation::default(), CodeEdition::E2023).unwrap();
    let named: Vec<u32> = answer
        .cables
        .iter()
        .filter(|c| c.named)
        .map(|c| c.cable)
        .collect();
    assert_eq!(named, [1, 2]);
    // 120 V on 60 ohm and little wire: 1.98 to 2 A astray.
    assert!((1.9..2.0).contains(&answer.cables[0].net_a));
    let [one] = answer.astray.as_slice() else {
        panic!("{answer:?}")
    };
    assert_eq!(one.breaker, 1);
    assert_eq!(one.out.iter().map(|s| s.cable).collect::<Vec<_>>(), [1]);
    assert_eq!(one.back.iter().map(|s| s.cable).collect::<Vec<_>>(), [2]);
    assert_eq!(one.shares_with, [2]);
    assert_eq!(one.sections, ["300.3(B)", "200.4(A)", "210.4(B)"]);
    let with = vec![Contact::End(End::near(3, 1))];
    assert_eq!(
        one.put_right,
        [PutRight::OwnWhite {
            in_box: 1,
            joint: 4,
            white: End::near(1, 1),
            with: with.clone()
        }]
    );
    // The same where cable 1 has a black and a bare alone.
    let mut d = borrowed_neutral(false);
    d.cables[0].conductors = vec![B, G];
    for made in &mut d.made {
        if made.contact == Contact::End(End::near(1, 2)) {
            made.contact = Contact::End(End::near(1, 1));
        }
    }
    let answer = return_check(&d, &Situation::default(), CodeEdition::E2023).unwrap();
    assert!(matches!(
        answer.astray[0].put_right.as_slice(),
        [PutRight::NewCable { replaces: 1, conductors, with: w, .. }]
            if *conductors == [B, W, G] && *w == with
    ));
}

#[test]
fn joined_neutrals_are_split() {
    let mut d = two_circuits();
    for made in &mut d.made {
        if made.at == At::Joint(4) {
            made.at = At::Joint(3);
        }
    }
    let answer = return_check(&d, &Situation::default(), CodeEdition::E2017).unwrap();
    assert_eq!(answer.astray.len(), 2);
    let near = |cable| Contact::End(End::near(cable, 1));
    for astray in &answer.astray {
        assert_eq!(
            astray.put_right,
            [PutRight::Split {
                in_box: 1,
                joint: 3,
                groups: vec![vec![near(1), near(3)], vec![near(2), near(4)]]
            }]
        );
    }
    let fine = return_check(&two_circuits(), &Situation::default(), CodeEdition::E2017).unwrap();
    assert!(fine.astray.is_empty() && fine.cables.iter().all(|c| !c.named));
}

/// Two breakers of one leg on one heater: the second goes out in its own cable and comes back in the first's.
#[test]
fn joined_hots_are_parted() {
    let mut d = two_circuits();
    d.breakers[1].legs = vec![Leg::A];
    for made in &mut d.made {
        if made.at == At::Joint(2) {
            made.at = At::Joint(1);
        }
    }
    d.made
        .retain(|m| m.contact != Contact::End(End::near(4, 0)));
    let answer = return_check(&d, &Situation::default(), CodeEdition::E2023).unwrap();
    let found: Vec<(u32, Option<u32>)> =
        answer.astray.iter().map(|a| (a.breaker, a.with)).collect();
    assert_eq!(found, [(2, None)]);
    assert_eq!(answer.astray[0].back[0].cable, 1);
    assert_eq!(
        answer.astray[0].put_right,
        [PutRight::PartHots {
            in_box: 1,
            joint: 1,
            from: 1
        }]
    );

    // A heater between two legs, each in a cable of its own: neither draws alone.
    let mut d = two_circuits();
    d.made.retain(|m| matches!(m.at, At::Joint(1 | 2 | 5)));
    d.made
        .retain(|m| m.contact != Contact::End(End::near(4, 0)));
    d.put_joint(2, &[(3, 1)]);
    let answer = return_check(&d, &Situation::default(), CodeEdition::E2023).unwrap();
    let [one] = answer.astray.as_slice() else {
        panic!("{answer:?}")
    };
    assert_eq!((one.breaker, one.with), (1, Some(2)));
    assert_eq!((one.out[0].cable, one.back[0].cable), (1, 2));
    assert_eq!(one.sections, ["300.3(B)", "210.4(C)"]);
    // 240 V on 60 ohm.
    assert!((3.9..4.0).contains(&one.out[0].net_a));
}

/// White and bare in one joint: the bare carries its share of the return.
#[test]
fn white_and_bare_are_parted() {
    let mut d = one_circuit(1200.0);
    for made in &mut d.made {
        if made.at == At::Joint(3) {
            made.at = At::Joint(2);
        }
    }
    let answer = return_check(&d, &Situation::default(), CodeEdition::E2023).unwrap();
    let astray = &answer.astray[0];
    // Two equal ways back to bars that are bonded.
    assert!((4.0..6.0).contains(&astray.bare_a), "{}", astray.bare_a);
    assert_eq!(astray.sections, ["250.142(B)"]);
    let bare = vec![Contact::End(End::near(1, 2)), Contact::End(End::near(2, 2))];
    assert_eq!(
        astray.put_right,
        [PutRight::PartGround {
            in_box: 1,
            joint: 2,
            bare
        }]
    );
}

/// A multiwire circuit: 8 A on leg A less 4 A on leg B; with B off, all 8 A. On one leg they add up past 15 A.
#[test]
fn neutrals_against_their_ampacity() {
    let multiwire = |second: Leg, watts: [f64; 2]| {
        let mut d = empty();
        d.put_breaker(1, Leg::A);
        d.put_breaker(2, second);
        let on = |conductor, breaker| OnBreaker {
            conductor,
            breaker,
            pole: 0,
        };
        d.put_cable(
            1,
            1,
            &[B, R, W, G],
            10.0,
            Goes::Panel(vec![on(0, 1), on(1, 2)]),
        );
        d.put_to_load(2, 1, 1.0, watts[0]);
        d.put_to_load(3, 1, 1.0, watts[1]);
        d.put_joint(1, &[(1, 0), (2, 0)]);
        d.put_joint(2, &[(1, 1), (3, 0)]);
        d.put_joint(3, &[(1, 2), (2, 1), (3, 1)]);
        d
    };
    let shared = |d, planned: &[Planned]| {
        let all = neutral_loads(d, &Situation::default(), planned, CodeEdition::E2023).unwrap();
        all.into_iter().find(|n| n.cable == 1).unwrap()
    };
    let d = multiwire(Leg::B, [960.0, 480.0]);
    let neutral = shared(&d, &[]);
    assert!((neutral.found_a - 4.0).abs() < 0.1 && (neutral.planned_a - 8.0).abs() < 0.2);
    // 14 AWG copper, 60 C column of Table 310.16: 15 A.
    assert_eq!((neutral.ampacity_a, neutral.over), (Some(15.0), false));
    assert_eq!((neutral.conductor, neutral.breakers), (2, vec![1, 2]));
    let d = multiwire(Leg::A, [960.0, 960.0]);
    let neutral = shared(&d, &[]);
    assert!((neutral.found_a - 16.0).abs() < 0.5 && neutral.over);
    let d = multiwire(Leg::A, [960.0, 480.0]);
    let planned = Planned {
        from: end(1, 1),
        to: end(1, 2),
        load: load(600.0),
    };
    assert!(!shared(&d, &[]).over && shared(&d, &[planned]).over);
    assert!(
        return_check(&d, &Situation::default(), CodeEdition::E2023)
            .unwrap()
            .astray
            .is_empty()
    );
}
