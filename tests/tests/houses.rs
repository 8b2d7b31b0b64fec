//! The opened box against simulated houses: the solver against another one, the off-list, and the rates of the diagnosis.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use std::path::PathBuf;

use calc::wiring::open_box::description::{Contact, Description, DeviceKind};
use calc::wiring::open_box::faults::{FaultKind, faults};
use calc::wiring::open_box::network::{Network, Scene, Seen};
use calc::wiring::open_box::off_list::off_list;
use calc::wiring::open_box::situation::{Apart, Situation};
use serde_json::Value as Json;
use tests::houses::circuit::{C, Link, Value, solve};
use tests::houses::dice::Dice;
use tests::houses::drive::{Run, drive, is_planted};
use tests::houses::house::{House, settings};
use tests::houses::tally::{Tally, table};
use tests::houses::truth::{Ideal, Name, Truth, What};
use tests::houses::wirings::random;
use tests::houses::within::{contacts, permitted};

/// Houses of the tests, always the same.
const SEED: u64 = 7_000_000;

/// How many of them the off-list and the diagnosis are tried in.
const HOUSES: u64 = 40;

fn number(value: &Json) -> f64 {
    value.as_f64().unwrap()
}

/// The houses' own solver against an independent circuit simulation: the file that the solver of `calc` is held against.
#[test]
fn the_other_solver_agrees_with_the_independent_simulation() {
    let path =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../calc/tests/wiring/network_a.json");
    let file: Json = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let mut compared = 0;
    for case in file["cases"].as_array().unwrap() {
        let mut names = vec!["N".to_owned()];
        let mut node = |name: &Json| {
            let name = name.as_str().unwrap();
            names.iter().position(|n| n == name).unwrap_or_else(|| {
                names.push(name.to_owned());
                names.len() - 1
            })
        };
        let mut sources = vec![(0, C::new(0.0, 0.0))];
        for source in case["sources"].as_array().unwrap() {
            let volts = C::from_polar(
                number(&source["volts"]),
                number(&source["degrees"]).to_radians(),
            );
            sources.push((node(&source["from"]), volts));
        }
        let elements: Vec<(&Json, Link)> = case["elements"]
            .as_array()
            .unwrap()
            .iter()
            .map(|element| {
                let has = number(&element["value"]);
                let value = if element["kind"] == "C" {
                    Value::Farad(has)
                } else {
                    Value::Ohm(has)
                };
                let link = Link {
                    from: node(&element["from"]),
                    to: node(&element["to"]),
                    value,
                };
                (&element["name"], link)
            })
            .collect();
        for state in case["states"].as_array().unwrap() {
            let open = state["open"].as_array().unwrap();
            let closed: Vec<_> = elements
                .iter()
                .filter(|(name, _)| !open.contains(name))
                .collect();
            let links: Vec<Link> = closed.iter().map(|(_, link)| *link).collect();
            let readings = state["readings"].as_array().unwrap();
            let ends: Vec<(usize, usize)> = readings
                .iter()
                .map(|r| (node(&r["from"]), node(&r["to"])))
                .collect();
            let nodes = 40;
            let solved = solve(nodes, &links, &sources);
            for (reading, (from, to)) in readings.iter().zip(ends) {
                let volts = number(&reading["volts_rms"]);
                let found = solved.metered(from, to, number(&reading["meter_ohm"]));
                // What is printed as 0 may be a part of a millivolt.
                let close = (found - volts).abs() <= 1e-6 * volts + 2e-6;
                assert!(close, "{} {open:?} {reading}: {found}", case["name"]);
                compared += 1;
            }
            for current in state["currents"].as_array().unwrap() {
                let (_, link) = closed
                    .iter()
                    .find(|(name, _)| **name == current["element"])
                    .unwrap();
                let (amps, found) = (number(&current["amps_rms"]), solved.amps(link).norm());
                let close = (found - amps).abs() <= 1e-6 * amps + 1e-7;
                assert!(close, "{} {open:?} {current}: {found}", case["name"]);
                compared += 1;
            }
        }
    }
    assert!(compared > 60, "{compared}");
}

/// How far two ideal readings are apart, and their size; `None`: both open.
fn difference(ours: Ideal, theirs: Seen) -> Option<(f64, f64)> {
    let (a, b) = match (ours, theirs) {
        (Ideal::Volts(a), Seen::Volts(b)) => (a, b.unwrap_or(0.0)),
        (Ideal::Tip(a, _), Seen::Tester(b)) => (a, b.unwrap_or(0.0)),
        (Ideal::Amps(a), Seen::Amps(b)) => (a, b),
        (Ideal::Ohms(None), Seen::Ohms(None)) => return None,
        (Ideal::Ohms(Some((a, _))), Seen::Ohms(Some(b))) => (a, b),
        (a, b) => panic!("{a:?} against {b:?}"),
    };
    Some(((a - b).abs(), a.max(b)))
}

/// The solver of `calc` and the houses' own one, on houses without a fault: every permitted reading within 1e-6 without
/// stray capacitance; with it within a millivolt and a milliampere, since `calc` leaves out what charges conductors that
/// the supply holds anyway.
#[test]
fn both_solvers_agree_on_houses() {
    let mut compared = 0;
    for seed in 0..6 {
        let wiring = random(&mut Dice::new(SEED + seed));
        let d = &wiring.description;
        let truth = Truth::of(d, None);
        let network = Network::of(d).unwrap();
        for in_box in &d.boxes {
            for (situation, probes) in permitted(d, *in_box) {
                let (ours, theirs) = (
                    truth.conducted(&situation),
                    Scene::conducted(&network, &situation),
                );
                let (charged, also) = (
                    truth.scene(&situation, 1.0),
                    Scene::of(&network, &situation),
                );
                for probe in probes {
                    let what = format!("house {seed}: {probe:?} in {situation:?}");
                    if let Some((apart, size)) =
                        difference(ours.see(&probe), theirs.see(&probe).unwrap())
                    {
                        assert!(apart <= 1e-6 * size + 1e-6, "{what}: {apart} of {size}");
                        compared += 1;
                    }
                    if let Some((apart, size)) =
                        difference(charged.see(&probe), also.see(&probe).unwrap())
                    {
                        assert!(
                            apart <= 1e-4 * size + 1e-3,
                            "{what}: {apart} of {size}, with strays"
                        );
                    }
                }
            }
        }
    }
    assert!(compared > 5_000, "{compared}");
}

/// The most volts to ground at any contact of a box, without stray capacitance.
fn most_v(truth: &Truth, d: &Description, in_box: u32, situation: &Situation) -> f64 {
    let scene = truth.conducted(situation);
    let volts = contacts(d, in_box)
        .into_iter()
        .filter_map(|contact| scene.to_ground(Name::Contact(contact)));
    volts.fold(0.0, f64::max)
}

/// A box as it may be opened: as it is, or with one joint or one contact apart.
fn openings(d: &Description, in_box: u32) -> Vec<Vec<Apart>> {
    let mut all = vec![Vec::new()];
    for (situation, _) in permitted(d, in_box) {
        if situation.everything_off {
            all.push(situation.apart);
        }
    }
    all
}

/// Switches in every setting, the box as it is and with each joint apart: the volts left with a list off are at most 1.
fn assert_dead(what: &str, truth: &Truth, d: &Description, in_box: u32, list: &[u32]) -> usize {
    let openings = openings(d, in_box);
    let mut tried = 0;
    for setting in settings(d) {
        for apart in &openings {
            let situation = Situation {
                breakers_off: list.to_vec(),
                apart: apart.clone(),
                ..setting.clone()
            };
            let volts = most_v(truth, d, in_box, &situation);
            assert!(
                volts <= 1.0,
                "{what} box {in_box}: {volts} V in {situation:?}"
            );
            tried += 1;
        }
    }
    tried
}

fn listed(d: &Description, explained: &[Network], in_box: u32) -> Vec<u32> {
    let list = off_list(d, explained, in_box, &[]).unwrap();
    list.breakers.iter().map(|l| l.breaker).collect()
}

/// With the list off nothing in any box of a house has more than 1 V, in any setting of the switches, with any one joint
/// apart, by a solver of its own; and no breaker is listed in vain: with it alone on, the ways back to the bars open,
/// something is live. With the fault of the house explained the list holds for the house with the fault, too.
#[test]
fn the_off_list_is_enough_and_no_more() {
    let (mut tried, mut needed, mut with_fault) = (0, 0, 0);
    for seed in 0..HOUSES {
        let house = House::of(SEED + seed);
        let what = format!("house {seed}");
        let (d, truth) = (&house.wiring.description, &house.healthy);
        let mut cut = truth.clone();
        let bars = [Name::NeutralBar, Name::GroundBar].map(|bar| truth.find(bar).unwrap());
        cut.elements
            .retain(|e| !(matches!(e.what, What::Landing(_)) && bars.contains(&e.link.to)));
        let network = Network::of(d).unwrap();
        let all = faults(d, &network);
        let explained = all.iter().find(|fault| is_planted(fault, &house.planted));
        for in_box in &d.boxes {
            let list = listed(d, &[], *in_box);
            tried += assert_dead(&what, truth, d, *in_box, &list);
            if let Some(fault) = explained {
                let list = listed(d, &[fault.network(&network)], *in_box);
                assert_dead(&what, &house.truth, d, *in_box, &list);
                with_fault += 1;
            }
            for breaker in &list {
                let others: Vec<u32> = d
                    .breakers
                    .iter()
                    .map(|b| b.id)
                    .filter(|id| id != breaker)
                    .collect();
                let live = settings(d).into_iter().any(|setting| {
                    let situation = Situation {
                        breakers_off: others.clone(),
                        ..setting
                    };
                    most_v(&cut, d, *in_box, &situation) > 1.0
                });
                assert!(
                    live,
                    "{what} box {in_box}: breaker {breaker} is listed in vain"
                );
                needed += 1;
            }
        }
    }
    assert!(
        tried > 1000 && needed > 50 && with_fault > 30,
        "{tried} {needed} {with_fault}"
    );
}

/// The houses are what they should be: 2 to 5 cables, 1 to 3 boxes, every kind of device, nothing refused.
#[test]
fn houses_are_of_every_sort() {
    let (mut boxes, mut cables) = ([0; 4], [0; 6]);
    let (mut multiwire, mut three_way, mut receptacle, mut slipped) = (0, 0, 0, 0);
    for seed in 0..100 {
        let house = House::of(SEED + seed);
        let d = &house.entered;
        assert!(
            Network::of(d).is_ok(),
            "house {seed}: {:?}",
            Network::of(d).err()
        );
        boxes[d.boxes.len()] += 1;
        cables[d.cables.len()] += 1;
        multiwire += usize::from(d.cables.first().unwrap().conductors.len() == 4);
        slipped += usize::from(house.slipped);
        let has = |fits: fn(&DeviceKind) -> bool| d.devices.iter().any(|device| fits(&device.kind));
        receptacle += usize::from(has(|kind| matches!(kind, DeviceKind::Receptacle { .. })));
        three_way += usize::from(has(|kind| kind.terminals().len() == 3));
        // A seed is a house.
        if seed < 5 {
            assert_eq!(House::of(SEED + seed).entered, *d);
        }
        for contact in d.made.iter().map(|made| made.contact) {
            assert!(
                matches!(contact, Contact::Terminal { .. }) || d.box_of_contact(contact).is_some()
            );
        }
    }
    assert!(boxes[1..].iter().all(|count| *count > 4), "{boxes:?}");
    assert!(
        cables[2..].iter().all(|count| *count > 4) && cables[..2] == [0, 0],
        "{cables:?}"
    );
    assert!(
        multiwire > 5 && three_way > 5 && receptacle > 20,
        "{multiwire} {three_way} {receptacle}"
    );
    assert!((3..=22).contains(&slipped), "{slipped}");
}

/// The rates of the diagnosis don't fall below what was reached: of the 33 houses whose fault the box shows 28 had it
/// in the first answer, 30 in the first three. Raise them when the diagnosis gets better.
#[test]
fn the_diagnosis_finds_what_it_found() {
    let part = |from: u64| -> Vec<Run> {
        let seeds = (0..HOUSES).filter(|seed| seed % 2 == from);
        seeds
            .map(|seed| drive(&House::of(SEED + seed)).unwrap())
            .collect()
    };
    let runs: Vec<Run> = std::thread::scope(|scope| {
        let other = scope.spawn(|| part(1));
        let mut runs = part(0);
        runs.extend(other.join().expect("no diagnosis panics"));
        runs
    });
    println!("{}", table(&runs));
    let shown = Tally::of(runs.iter().filter(|run| run.tellable));
    assert!(shown.count >= 20, "{}", shown.count);
    assert!(shown.first_percent() >= 84.0, "{shown}");
    assert!(shown.first_three_percent() >= 90.0, "{shown}");
    for run in &runs {
        let answers = run.diagnosis.answers.iter();
        let sum = answers.map(|a| a.share).sum::<f64>() + run.diagnosis.others_share;
        // Answers of next to no share are not listed.
        assert!((0.9..1.0 + 1e-6).contains(&sum), "{:?}: {sum}", run.kind);
        let healthy = matches!(run.kind, FaultKind::NothingWrong | FaultKind::StrayOnly);
        assert!(
            !(healthy && run.tellable),
            "a healthy house can't be told from itself"
        );
    }
}
