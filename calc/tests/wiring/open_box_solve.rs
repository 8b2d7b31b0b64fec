//! The solver against an independent circuit simulation, and against the LU of a general linear algebra library.

use std::fs;
use std::path::PathBuf;

use calc::wiring::open_box::solve::{Complex64, Link, Netlist, resistance_between, solve};
use nalgebra::{DMatrix, DVector};
use proptest::prelude::*;
use serde_json::Value;

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap()
}

/// The number of a node, given on first sight; node N is the reference, 0.
fn node(names: &mut Vec<String>, name: &Value) -> usize {
    let name = text(name);
    names.iter().position(|n| n == name).unwrap_or_else(|| {
        names.push(name.to_owned());
        names.len() - 1
    })
}

/// Every case of the file, in every state: within 1e-6 relative, 1e-3 V where less than 1 V is read, and 1e-6 of the
/// printed figures for currents.
#[test]
fn agrees_with_the_independent_simulation() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/wiring/network_a.json");
    let file: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
    let (mut readings, mut currents) = (0, 0);
    for case in file["cases"].as_array().unwrap() {
        let mut names = vec!["N".to_owned()];
        let mut held = vec![(0, Complex64::ZERO)];
        for source in case["sources"].as_array().unwrap() {
            assert_eq!(source["to"], "N");
            let degrees = number(&source["degrees"]);
            let volts = Complex64::from_polar(number(&source["volts"]), degrees.to_radians());
            held.push((node(&mut names, &source["from"]), volts));
        }
        let elements: Vec<(&str, Link)> = case["elements"]
            .as_array()
            .unwrap()
            .iter()
            .map(|element| {
                let from = node(&mut names, &element["from"]);
                let to = node(&mut names, &element["to"]);
                let value = number(&element["value"]);
                let link = match text(&element["kind"]) {
                    "R" => Link::resistance(from, to, value),
                    "C" => Link::capacitance(from, to, value),
                    other => panic!("{other}"),
                };
                (text(&element["name"]), link)
            })
            .collect();
        for state in case["states"].as_array().unwrap() {
            let open = state["open"].as_array().unwrap();
            let links: Vec<(&str, Link)> = elements
                .iter()
                .filter(|(name, _)| !open.iter().any(|o| o == name))
                .copied()
                .collect();
            let netlist = Netlist {
                nodes: names.len(),
                held: held.clone(),
                links: links.iter().map(|(_, link)| *link).collect(),
            };
            let what = format!("{} {open:?}", case["name"]);
            for reading in state["readings"].as_array().unwrap() {
                let from = node(&mut names.clone(), &reading["from"]);
                let to = node(&mut names.clone(), &reading["to"]);
                let mut metered = netlist.clone();
                let meter_ohm = number(&reading["meter_ohm"]);
                metered.links.push(Link::resistance(from, to, meter_ohm));
                // Both ends on one floating part: the meter is all that is connected, and shows nothing.
                let found = solve(&metered).between(from, to).map_or(0.0, |v| v.norm());
                let expected = number(&reading["volts_rms"]);
                // The file prints six decimals.
                let tolerance = if expected < 1.0 {
                    1e-3
                } else {
                    expected * 1e-6 + 5e-7
                };
                assert!(
                    (found - expected).abs() <= tolerance,
                    "{what} {reading}: {found}"
                );
                readings += 1;
            }
            let solved = solve(&netlist);
            for current in state["currents"].as_array().unwrap() {
                let amps = links
                    .iter()
                    .find(|(name, _)| current["element"] == *name)
                    .map_or(Complex64::ZERO, |(_, link)| solved.amps(link));
                for (found, key) in [
                    (amps.norm(), "amps_rms"),
                    (amps.re, "amps_real"),
                    (amps.im, "amps_imag"),
                ] {
                    let expected = number(&current[key]);
                    assert!(
                        (found - expected).abs() <= expected.abs() * 1e-6 + 1e-6,
                        "{what} {current} {key}: {found}"
                    );
                }
                currents += 1;
            }
        }
    }
    assert!(readings > 20 && currents > 20, "{readings} {currents}");
}

/// The same network by a dense matrix and the library's LU with partial pivoting.
fn by_library(netlist: &Netlist) -> Vec<Option<Complex64>> {
    let held = |node: usize| netlist.held.iter().find(|(n, _)| *n == node).map(|h| h.1);
    let mut seen: Vec<bool> = (0..netlist.nodes).map(|n| held(n).is_some()).collect();
    loop {
        let before = seen.clone();
        for link in &netlist.links {
            let either = seen[link.from] || seen[link.to];
            (seen[link.from], seen[link.to]) = (either, either);
        }
        if before == seen {
            break;
        }
    }
    let free: Vec<usize> = (0..netlist.nodes)
        .filter(|n| seen[*n] && held(*n).is_none())
        .collect();
    let mut matrix = DMatrix::<Complex64>::zeros(free.len(), free.len());
    let mut right = DVector::<Complex64>::zeros(free.len());
    let row = |node: usize| free.iter().position(|n| *n == node);
    for link in &netlist.links {
        for (one, other) in [(link.from, link.to), (link.to, link.from)] {
            let Some(i) = row(one) else { continue };
            if one == other {
                continue;
            }
            matrix[(i, i)] += link.siemens;
            match row(other) {
                Some(j) => matrix[(i, j)] -= link.siemens,
                None => right[i] += link.siemens * held(other).unwrap(),
            }
        }
    }
    // The library takes no empty matrix.
    let volts = if free.is_empty() {
        right
    } else {
        matrix.lu().solve(&right).unwrap()
    };
    (0..netlist.nodes)
        .map(|n| held(n).or_else(|| row(n).map(|i| volts[i])))
        .collect()
}

fn any_netlist(least: f64, most: f64) -> impl Strategy<Value = Netlist> {
    (5_usize..40).prop_flat_map(move |nodes| {
        let link = (0..nodes, 0..nodes, 0.0_f64..1.0, any::<bool>()).prop_map(
            move |(from, to, size, stray)| {
                let ohm = least * (most / least).powf(size);
                if stray {
                    Link::capacitance(from, to, 1e-3 / ohm)
                } else {
                    Link::resistance(from, to, ohm)
                }
            },
        );
        prop::collection::vec(link, 1..120).prop_map(move |links| Netlist {
            nodes,
            held: vec![
                (0, Complex64::ZERO),
                (1, Complex64::new(121.5, 0.0)),
                (2, Complex64::new(-118.0, 0.0)),
            ],
            links,
        })
    })
}

proptest! {
    /// On networks whose admittances are of like size the library's LU loses nothing: both agree.
    #[test]
    fn agrees_with_a_library(netlist in any_netlist(0.1, 100.0)) {
        let (found, expected) = (solve(&netlist), by_library(&netlist));
        for (f, e) in found.volts.iter().zip(&expected) {
            match (f, e) {
                (Some(f), Some(e)) => prop_assert!((f - e).norm() < 1e-7, "{} {}", f, e),
                (f, e) => prop_assert_eq!(f.is_none(), e.is_none()),
            }
        }
    }

    /// Whatever the sizes, from a milliohm to ten megohm: what flows into each node flows out of it, and with
    /// resistances alone no voltage is outside those held.
    #[test]
    fn currents_balance(netlist in any_netlist(1e-3, 1e7)) {
        let solved = solve(&netlist);
        for node in 3..netlist.nodes {
            let (mut sum, mut siemens) = (Complex64::ZERO, 0.0_f64);
            for link in netlist.links.iter().filter(|l| (l.from == node) != (l.to == node)) {
                let amps = solved.amps(link);
                sum += if link.from == node { amps } else { -amps };
                siemens += link.siemens.norm();
            }
            // What the last figures of the voltages, some 1e-15 of 240 V, make of a current.
            prop_assert!(sum.norm() <= siemens * 2e-12, "{} {}", sum, siemens);
        }
        let resistive = Netlist {
            links: netlist.links.iter().filter(|l| l.siemens.im == 0.0).copied().collect(),
            ..netlist
        };
        for volts in solve(&resistive).volts.into_iter().flatten() {
            prop_assert!(volts.re <= 121.5 + 1e-9 && volts.re >= -118.0 - 1e-9 && volts.im == 0.0);
        }
    }
}

/// The pieces that resistances make, each node by the least of its piece, found by spreading until nothing changes.
fn pieces_by_spreading(nodes: usize, links: &[Link]) -> Vec<usize> {
    let mut piece: Vec<usize> = (0..nodes).collect();
    loop {
        let before = piece.clone();
        for link in links.iter().filter(|link| link.siemens.im == 0.0) {
            let least = piece[link.from].min(piece[link.to]);
            piece[link.from] = least;
            piece[link.to] = least;
        }
        if piece == before {
            return piece;
        }
    }
}

proptest! {
    /// Two nodes have a resistance between them if resistances lead from one to the other, and none otherwise, whatever
    /// the sizes; in parallel it is never more than any one of them.
    #[test]
    fn open_is_told_by_structure(netlist in any_netlist(1e-3, 1e7), one in 0_usize..5, other in 0_usize..5) {
        let piece = pieces_by_spreading(netlist.nodes, &netlist.links);
        let found = resistance_between(netlist.nodes, &netlist.links, one, other);
        prop_assert_eq!(found.is_some(), piece[one] == piece[other]);
        if let Some(ohm) = found {
            prop_assert!((0.0..=1.2e9).contains(&ohm), "{}", ohm);
            let direct = netlist.links.iter().filter(|l| l.siemens.im == 0.0)
                .filter(|l| (l.from, l.to) == (one, other) || (l.from, l.to) == (other, one))
                .map(|l| 1.0 / l.siemens.re)
                .fold(f64::INFINITY, f64::min);
            prop_assert!(ohm <= direct * (1.0 + 1e-9), "{} {}", ohm, direct);
        }
    }
}

/// A ring of milliohms beside a lamp of 240 ohm, nothing between them: rounding made 1e14 ohm of it once.
#[test]
fn an_open_way_has_no_ohms() {
    let ring = |at: usize| {
        (0..7).map(move |n| Link::resistance(at + n, at + (n + 1) % 7, 1e-3 * (n + 1) as f64))
    };
    let mut links: Vec<Link> = ring(0).chain(ring(10)).collect();
    links.push(Link::resistance(3, 8, 240.0));
    links.push(Link::capacitance(8, 12, 1e-9));
    for from in 0..7 {
        for to in 10..17 {
            assert_eq!(resistance_between(20, &links, from, to), None);
        }
    }
    assert_eq!(resistance_between(20, &links, 3, 25), None);
    assert!(resistance_between(20, &links, 0, 8).unwrap() > 240.0);
}

/// Why no matrix is stored. A part of three nodes joined by milliohms hangs on ten megohms at two held nodes: by hand
/// each is at (120 x 1 + 0 x 3) / 4 = 30 V with the reference three times as strong; a matrix can't hold 1e-7 beside 1e3.
#[test]
fn keeps_a_meter_beside_a_milliohm() {
    let chain = |last: f64| Netlist {
        nodes: 5,
        held: vec![(0, Complex64::ZERO), (1, Complex64::new(120.0, 0.0))],
        links: vec![
            Link::resistance(1, 2, 3e7),
            Link::resistance(2, 3, 1e-3),
            Link::resistance(3, 4, 1e-3),
            Link::resistance(2, 4, 1e-3),
            Link::resistance(4, 0, last),
        ],
    };
    let off = |volts: &[Option<Complex64>]| (volts[3].unwrap().re - 30.0).abs();
    assert!(off(&solve(&chain(1e7)).volts) < 1e-9);
    assert!(off(&by_library(&chain(1e7))) > 1e-6);
}

#[test]
fn floating_parts_have_no_voltage() {
    let netlist = Netlist {
        nodes: 5,
        held: vec![(0, Complex64::ZERO), (1, Complex64::new(120.0, 0.0))],
        links: vec![
            Link::resistance(1, 2, 100.0),
            Link::resistance(3, 4, 0.1),
            // Nothing that counts: no such node, to itself, no size.
            Link::resistance(3, 9, 0.1),
            Link::resistance(3, 3, 0.1),
            Link::resistance(3, 0, f64::INFINITY),
            Link::resistance(3, 0, f64::NAN),
        ],
    };
    let solved = solve(&netlist);
    assert_eq!(solved.volts[2], Some(Complex64::new(120.0, 0.0)));
    assert_eq!((solved.volts[3], solved.volts[4]), (None, None));
    assert_eq!(solved.between(3, 0), None);
    assert_eq!(resistance_between(5, &netlist.links[..2], 0, 4), None);
    let two = resistance_between(5, &netlist.links[..2], 1, 2).unwrap();
    assert!((two - 100.0).abs() < 1e-9);
}
