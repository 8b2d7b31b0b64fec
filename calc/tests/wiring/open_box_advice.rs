//! Following the advice: a fault is put into a house, and what the advice asks for is measured there, with noise, until
//! four readings are taken or nothing more is asked for.

use std::collections::BTreeMap;
use std::time::{Duration, Instant};

use calc::wiring::open_box::description::{
    Across, Contact, Description, DeviceKind, Goes, OnBreaker, SwitchForm, Terminal,
};
use calc::wiring::open_box::diagnosis::{Diagnosis, diagnose_in};
use calc::wiring::open_box::faults::{Fault, FaultKind, faults};
use calc::wiring::open_box::live_map::contacts_of;
use calc::wiring::open_box::network::{Network, Scene, Seen};
use calc::wiring::open_box::next_reading::next_reading;
use calc::wiring::open_box::reading::{Meter, Outcome, Point, Probe, Reading, Round, Shown};
use calc::wiring::open_box::situation::Situation;
use calc::wiring::panel::Leg;

use crate::open_box_boxes::{B, G, Put, R, W, empty, load, two_circuits};

/// Noise from a sequence that is the same every time: -1 to 1.
pub struct Noise(pub u64);

impl Noise {
    pub fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(self.0 >> 33).unwrap()) / f64::from(1_u32 << 30) - 1.0
    }
}

/// Two boxes: two circuits of one leg and one of the other, a switch, a receptacle, an onward cable.
pub fn switch_and_receptacle() -> Description {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_breaker(2, Leg::A);
    d.put_breaker(3, Leg::B);
    d.put_home_run(1, 1, &[B, W, G], 45.0, 1);
    d.put_home_run(2, 1, &[B, W, G], 60.0, 2);
    d.put_cable(3, 1, &[B, W, G], 25.0, Goes::Box(2));
    d.put_to_load(4, 1, 15.0, 300.0);
    d.put_to_load(5, 1, 22.0, 600.0);
    d.boxes.push(2);
    d.put_to_load(6, 2, 18.0, 450.0);
    d.put_home_run(7, 2, &[B, W, G], 70.0, 3);
    d.put_to_load(8, 2, 12.0, 900.0);
    d.put_device(1, 1, DeviceKind::Switch(SwitchForm::SinglePole));
    d.put_device(
        2,
        2,
        DeviceKind::Receptacle {
            hot_tab: true,
            neutral_tab: true,
            upper: Some(load(200.0)),
            lower: None,
        },
    );
    // Circuit 1: a switched lamp at 4 and on to box 2.
    d.put_joint(1, &[(1, 0), (3, 0)]);
    d.put_pigtail(1, 1, Terminal::First);
    d.put_on((4, 0), 1, Terminal::Second);
    d.put_joint(2, &[(1, 1), (3, 1), (4, 1)]);
    // Circuit 2: a load at 5.
    d.put_joint(3, &[(2, 0), (5, 0)]);
    d.put_joint(4, &[(2, 1), (5, 1)]);
    d.put_joint(5, &[(1, 2), (2, 2), (3, 2), (4, 2), (5, 2)]);
    // Box 2: the load at 6 and the receptacle on circuit 1, the load at 8 on circuit 3.
    d.put_far_joint(1, &[(3, 0)]);
    d.put_joint(1, &[(6, 0)]);
    d.put_pigtail(1, 2, Terminal::Hot);
    d.put_far_joint(2, &[(3, 1)]);
    d.put_joint(2, &[(6, 1)]);
    d.put_pigtail(2, 2, Terminal::Neutral);
    d.put_joint(3, &[(7, 0), (8, 0)]);
    d.put_joint(4, &[(7, 1), (8, 1)]);
    d.put_far_joint(5, &[(3, 2)]);
    d.put_joint(5, &[(6, 2), (7, 2), (8, 2)]);
    d
}

/// A pair of three-way switches, one in each box, and a shared neutral of two legs.
pub fn three_ways() -> Description {
    let mut d = empty();
    d.put_breaker(1, Leg::A);
    d.put_breaker(2, Leg::B);
    let poles = [(0, 1), (1, 2)].map(|(conductor, breaker)| OnBreaker {
        conductor,
        breaker,
        pole: 0,
    });
    d.put_cable(1, 1, &[B, R, W, G], 55.0, Goes::Panel(poles.to_vec()));
    d.put_cable(2, 1, &[B, R, W, G], 30.0, Goes::Box(2));
    d.put_to_load(3, 1, 20.0, 700.0);
    d.boxes.push(2);
    let across = Across {
        from: 0,
        to: 1,
        load: load(240.0),
    };
    d.put_cable(4, 2, &[B, W, G], 16.0, Goes::Loads(vec![across]));
    d.put_device(1, 1, DeviceKind::Switch(SwitchForm::ThreeWay));
    d.put_device(2, 2, DeviceKind::Switch(SwitchForm::ThreeWay));
    d.put_on((1, 0), 1, Terminal::Common);
    d.put_on((2, 0), 1, Terminal::TravellerOne);
    d.put_on((2, 1), 1, Terminal::TravellerTwo);
    d.put_joint(1, &[(1, 1), (3, 0)]);
    d.put_joint(2, &[(1, 2), (2, 2), (3, 1)]);
    d.put_joint(3, &[(1, 3), (2, 3), (3, 2)]);
    d.put_far_on((2, 0), 2, Terminal::TravellerOne);
    d.put_far_on((2, 1), 2, Terminal::TravellerTwo);
    d.put_on((4, 0), 2, Terminal::Common);
    d.put_far_joint(1, &[(2, 2)]);
    d.put_joint(1, &[(4, 1)]);
    d.put_far_joint(2, &[(2, 3)]);
    d.put_joint(2, &[(4, 2)]);
    d
}

/// Three boxes on a row of cables, each with loads, the second and third with circuits of their own.
pub fn three_boxes() -> Description {
    let mut d = switch_and_receptacle();
    d.put_cable(9, 2, &[B, W, G], 20.0, Goes::Box(3));
    d.boxes.push(3);
    d.put_to_load(10, 3, 15.0, 100.0);
    d.put_to_load(11, 3, 15.0, 150.0);
    d.put_breaker(4, Leg::A);
    d.put_home_run(12, 3, &[B, W, G], 80.0, 4);
    d.put_to_load(13, 3, 15.0, 1000.0);
    d.put_device(3, 3, DeviceKind::Switch(SwitchForm::SinglePole));
    d.put_joint(1, &[(9, 0)]);
    d.put_joint(2, &[(9, 1)]);
    d.put_joint(5, &[(9, 2)]);
    d.put_far_joint(1, &[(9, 0)]);
    d.put_joint(1, &[(10, 0)]);
    d.put_pigtail(1, 3, Terminal::First);
    d.put_on((11, 0), 3, Terminal::Second);
    d.put_far_joint(2, &[(9, 1)]);
    d.put_joint(2, &[(10, 1), (11, 1)]);
    d.put_joint(3, &[(12, 0), (13, 0)]);
    d.put_joint(4, &[(12, 1), (13, 1)]);
    d.put_far_joint(5, &[(9, 2)]);
    d.put_joint(5, &[(10, 2), (11, 2), (12, 2), (13, 2)]);
    d
}

#[test]
fn three_boxes_and_six_readings_are_diagnosed() {
    let d = three_boxes();
    let network = Network::of(&d).unwrap();
    let all = faults(&d, &network);
    let fault = all
        .iter()
        .find(|fault| fault.kind == FaultKind::NeutralsJoined)
        .unwrap();
    let house = fault.network(&network);
    let mut noise = Noise(3);
    let on = Situation::default();
    let off = Situation {
        breakers_off: vec![1],
        ..Situation::default()
    };
    let side = calc::wiring::open_box::description::Side::Near;
    let mut readings = Vec::new();
    for (situation, cables) in [(&on, [1, 3, 7]), (&off, [3, 5, 7])] {
        for cable in cables {
            let round = Round::Cable { cable, side };
            let probe = Probe::Amps { round };
            readings.push(read(&house, situation, probe, &mut noise));
        }
    }
    let mut best = Duration::MAX;
    for _ in 0..5 {
        let start = Instant::now();
        let diagnosis = diagnose_in(&d, &readings, &[1]).unwrap();
        best = best.min(start.elapsed());
        let first = &diagnosis.answers[0];
        let members: Vec<_> = first
            .members
            .iter()
            .map(|m| {
                (
                    m.slip,
                    m.faults
                        .iter()
                        .map(|f| (f.kind, &f.places))
                        .collect::<Vec<_>>(),
                )
            })
            .collect();
        assert!(
            is(&first.members[0].faults[0], fault),
            "{readings:?}: {} {members:?}, not {:?}",
            first.share,
            fault.places
        );
        assert_eq!(diagnosis.answers[0].explained.len(), 6);
    }
    println!("{} nodes, {} faults: {best:?}", network.nodes, all.len());
}

/// The description as the house really is: lengths and loads a tenth off.
fn really(d: &Description, noise: &mut Noise) -> Description {
    let mut house = d.clone();
    for cable in &mut house.cables {
        cable.length_ft = Some(cable.length_or_usual_ft() * (1.0 + 0.15 * noise.next()));
        if let Goes::Loads(loads) = &mut cable.goes {
            for across in loads {
                across.load.watts *= 1.0 + 0.1 * noise.next();
            }
        }
    }
    house.panel.leg_a_v *= 1.0 + 0.02 * noise.next();
    house.panel.leg_b_v *= 1.0 + 0.02 * noise.next();
    house
}

/// What an instrument shows, with its noise.
fn read(network: &Network, situation: &Situation, probe: Probe, noise: &mut Noise) -> Reading {
    let seen = Scene::of(network, situation).see(&probe).unwrap();
    let mut shows = |value: f64, share: f64, digit: f64| {
        let noisy = value * (1.0 + share * noise.next()) + digit * noise.next();
        let value = ((noisy / digit).round() * digit).max(0.0);
        Outcome::Shows(Shown::Value { value, range: None })
    };
    let outcome = match seen {
        Seen::Volts(volts) => shows(volts.unwrap_or(0.0), 0.01, 0.1),
        Seen::Amps(amps) => shows(amps, 0.03, 0.03),
        Seen::Tester(volts) => Outcome::Glows(volts.unwrap_or(0.0) > 50.0),
        Seen::Ohms(Some(ohm)) if ohm < 2e6 => shows(ohm + 0.1, 0.02, 0.1),
        Seen::Ohms(_) => Outcome::Shows(Shown::OverLimit { range: None }),
    };
    Reading {
        situation: situation.clone(),
        probe,
        outcome,
    }
}

/// What brought somebody to open the box: one reading of volts or amperes there that is not as it should be, if any is.
fn symptom(d: &Description, house: &Network, in_box: u32, noise: &mut Noise) -> Vec<Reading> {
    let on = Situation::default();
    let intended = Network::of(d).unwrap();
    let (healthy, faulty) = (Scene::of(&intended, &on), Scene::of(house, &on));
    let mut probes = Vec::new();
    for (contact, of) in contacts_of(d) {
        if of != in_box {
            continue;
        }
        let from = match contact {
            Contact::End(end) => {
                let round = Round::Conductor(end);
                probes.push(Probe::Amps { round });
                Point::End(end)
            }
            Contact::Terminal { device, terminal } => Point::Terminal { device, terminal },
        };
        for to in [Point::GroundBar, Point::NeutralBar] {
            let meter = Meter::HighImpedance;
            probes.push(Probe::Volts { from, to, meter });
        }
    }
    probes.retain(|probe| match (healthy.see(probe), faulty.see(probe)) {
        (Some(Seen::Volts(a)), Some(Seen::Volts(b))) => {
            (a.unwrap_or(0.0) - b.unwrap_or(0.0)).abs() > 8.0
        }
        (Some(Seen::Amps(a)), Some(Seen::Amps(b))) => (a - b).abs() > 0.4 + 0.3 * a,
        _ => false,
    });
    let at = (noise.next() + 1.0) / 2.0 * probes.len() as f64;
    let probe = probes.get(at as usize).copied();
    probe
        .map(|probe| read(house, &on, probe, noise))
        .into_iter()
        .collect()
}

/// Follows the advice for at most four readings.
fn follow(
    d: &Description,
    house: &Network,
    in_box: u32,
    noise: &mut Noise,
    spent: &mut [Duration; 3],
) -> (Diagnosis, usize) {
    let mut readings = symptom(d, house, in_box, noise);
    let begun = readings.len();
    loop {
        let start = Instant::now();
        let diagnosis = diagnose_in(d, &readings, &[in_box]).unwrap();
        let took = start.elapsed();
        spent[0] += took;
        spent[1] = spent[1].max(took);
        if readings.len() == begun + 4 {
            return (diagnosis, 4);
        }
        let start = Instant::now();
        let next = next_reading(d, &readings, &diagnosis, in_box);
        spent[2] = spent[2].max(start.elapsed());
        match next {
            None => return (diagnosis, readings.len() - begun),
            Some(next) => {
                readings.push(read(house, &next.situation, next.probe, noise));
            }
        }
    }
}

fn is(one: &Fault, other: &Fault) -> bool {
    one.kind == other.kind && one.places == other.places
}

/// What became of some faults of a kind: tried, first, in the first three, sizes, nothing seen, readings.
type Row = [usize; 6];

/// A fault put into the house of a description, with noise of its own, and the advice followed.
fn one(d: &Description, fault: &Fault, seed: u64, spent: &mut [Duration; 3]) -> Row {
    let mut noise = Noise(seed);
    // The first numbers of neighbouring seeds are alike.
    for _ in 0..8 {
        noise.next();
    }
    let real = really(d, &mut noise);
    let house = fault.network(&Network::of(&real).unwrap());
    let (diagnosis, taken) = follow(d, &house, 1, &mut noise, spent);
    let rank = diagnosis.answers.iter().position(|answer| {
        answer
            .members
            .iter()
            .any(|m| m.faults.len() == 1 && is(&m.faults[0], fault))
    });
    let mut row = [1, 0, 0, 0, 0, taken];
    if let Some(rank) = rank {
        let answer = &diagnosis.answers[rank];
        row[1] = usize::from(rank == 0);
        row[2] = usize::from(rank < 3);
        if answer.nothing_seen {
            row[4] = 1;
        } else {
            row[3] = answer.members.len();
        }
    }
    row
}

/// Every second fault of three houses, well over a hundred; `EVERY=1` tries all.
#[test]
fn the_advice_leads_to_the_fault() {
    let every = std::env::var("EVERY").map_or(2, |text| text.parse().unwrap());
    let houses = [two_circuits(), switch_and_receptacle(), three_ways()];
    let mut cases: Vec<(&Description, Fault)> = Vec::new();
    for d in &houses {
        let network = Network::of(d).unwrap();
        let all = faults(d, &network).into_iter();
        let once = all.filter(|fault| fault.ohm.is_none_or(|ohm| ohm == 5.0));
        cases.extend(once.step_by(every).map(|fault| (d, fault)));
    }
    let part = |from: usize| {
        let mut spent = [Duration::ZERO; 3];
        let mut table: BTreeMap<String, Row> = BTreeMap::new();
        for (at, (d, fault)) in cases.iter().enumerate().skip(from).step_by(2) {
            let row = one(d, fault, 1000 + at as u64, &mut spent);
            let sum = table.entry(format!("{:?}", fault.kind)).or_default();
            for (s, r) in sum.iter_mut().zip(row) {
                *s += r;
            }
        }
        (table, spent)
    };
    let parts = std::thread::scope(|scope| {
        let other = scope.spawn(|| part(1));
        [part(0), other.join().unwrap()]
    });
    let mut table: BTreeMap<String, Row> = BTreeMap::new();
    for (kind, row) in parts.iter().flat_map(|(table, _)| table) {
        for (s, r) in table.entry(kind.clone()).or_default().iter_mut().zip(row) {
            *s += r;
        }
    }
    let mut sum: Row = [0; 6];
    for (kind, row) in &table {
        println!("{kind:22} {row:?}");
        for (s, r) in sum.iter_mut().zip(row) {
            *s += r;
        }
    }
    let spent = parts.map(|(_, spent)| spent);
    println!("all {sum:?}, all, longest diagnosis and longest advice {spent:?}");
    assert!(sum[0] >= 100, "{sum:?}");
    assert!(
        sum[1] * 100 >= sum[0] * 85 && sum[2] * 100 >= sum[0] * 95,
        "{sum:?}"
    );
}
