//! A network in a situation, solved, ready to be measured.

use serde::Serialize;

use crate::wiring::open_box::reading::{Probe, Round};
use crate::wiring::open_box::situation::Situation;
use crate::wiring::open_box::solve::{Complex64, Link, Netlist, Solved, resistance_between, solve};

use super::{Branch, GROUND_BAR, Network, Part, SOURCE_A, SOURCE_B, SOURCE_NEUTRAL, Value};

/// Up to this a branch of metal holds its ends together as far as stray capacitance goes, ohms: its microamperes lose
/// less than a millivolt in it.
const STIFF_OHM: f64 = 10.0;

/// What an ideal instrument would show.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Seen {
    /// Volts; `None`: both probes are on floating parts, nothing decides what is shown.
    Volts(Option<f64>),
    /// Volts to ground at the tip of a tester, which loads nothing; `None`: floating.
    Tester(Option<f64>),
    /// Amperes.
    Amps(f64),
    /// Ohms; `None`: open.
    Ohms(Option<f64>),
}

/// A network in a situation, solved without any meter.
#[derive(Clone, Debug)]
pub struct Scene<'a> {
    /// The network.
    pub network: &'a Network,
    /// The branches that are closed.
    pub closed: Vec<Branch>,
    /// What was solved.
    pub netlist: Netlist,
    /// Its voltages.
    pub solved: Solved,
}

impl<'a> Scene<'a> {
    /// Solves a network in a situation.
    pub fn of(network: &'a Network, situation: &Situation) -> Self {
        Self::solved(network, network.closed(situation))
    }

    /// Solves it without any stray capacitance: what is left has a source behind it.
    pub fn conducted(network: &'a Network, situation: &Situation) -> Self {
        let mut closed = network.closed(situation);
        closed.retain(|branch| matches!(branch.value, Value::Ohm(_)));
        Self::solved(network, closed)
    }

    fn solved(network: &'a Network, closed: Vec<Branch>) -> Self {
        // Stray capacitance between two parts that metal holds to the supply changes nothing: leave it out.
        let mut stiff = network.sets(&closed, |branch| {
            branch.is_metal() && matches!(branch.value, Value::Ohm(ohm) if ohm <= STIFF_OHM)
        });
        let held = [SOURCE_NEUTRAL, SOURCE_A, SOURCE_B].map(|node| stiff.find(node));
        let mut links = Vec::with_capacity(closed.len());
        for branch in &closed {
            let counts = match branch.value {
                Value::Ohm(_) => true,
                Value::Farad(_) => {
                    let (one, other) = (stiff.find(branch.from), stiff.find(branch.to));
                    one != other && !(held.contains(&one) && held.contains(&other))
                }
            };
            if counts {
                links.push(branch.link());
            }
        }
        let netlist = Netlist {
            nodes: network.nodes,
            held: network.held(),
            links,
        };
        let solved = solve(&netlist);
        Self {
            network,
            closed,
            netlist,
            solved,
        }
    }

    /// Volts of a node to the ground bar, with nothing on it; `None`: floating.
    pub fn to_ground(&self, node: usize) -> Option<Complex64> {
        self.solved.between(node, GROUND_BAR)
    }

    /// Volts between two nodes with so many ohms across them; `None`: nothing decides them.
    pub fn across(&self, from: usize, to: usize, ohm: f64) -> Option<f64> {
        let mut netlist = self.netlist.clone();
        netlist.links.push(Link::resistance(from, to, ohm));
        Some(solve(&netlist).between(from, to)?.norm())
    }

    /// The current in a part from its first node to its second, amperes; nothing where it is open or not there.
    pub fn amps(&self, part: Part) -> Complex64 {
        self.closed
            .iter()
            .find(|branch| branch.part == part)
            .map_or(Complex64::ZERO, |branch| self.solved.amps(&branch.link()))
    }

    /// The current in a conductor from its near to its far end, amperes.
    pub fn conductor_amps(&self, cable: u32, conductor: usize) -> Complex64 {
        self.amps(Part::Conductor { cable, conductor })
    }

    /// The net current of a cable from its near to its far end, amperes.
    pub fn net_amps(&self, cable: u32) -> Complex64 {
        let mut net = Complex64::ZERO;
        for branch in &self.closed {
            if matches!(branch.part, Part::Conductor { cable: of, .. } if of == cable) {
                net += self.solved.amps(&branch.link());
            }
        }
        net
    }

    /// The resistance between two nodes, ohms, with the supply away; `None`: open.
    pub fn ohms(&self, from: usize, to: usize) -> Option<f64> {
        resistance_between(self.netlist.nodes, &self.netlist.links, from, to)
    }

    /// What an ideal instrument would show; `None` if the probe names a point that isn't there. Ohms are those of a
    /// situation with everything off: see [`check_probe`](crate::wiring::open_box::reading::check_probe).
    pub fn see(&self, probe: &Probe) -> Option<Seen> {
        let node = |point| self.network.point(point);
        Some(match *probe {
            Probe::Volts { from, to, meter } => {
                Seen::Volts(self.across(node(from)?, node(to)?, meter.ohm()))
            }
            Probe::Tester { at } => {
                Seen::Tester(self.to_ground(node(at)?).map(|volts| volts.norm()))
            }
            Probe::Amps {
                round: Round::Conductor(end),
            } => {
                self.network.end(end)?;
                Seen::Amps(self.conductor_amps(end.cable, end.conductor).norm())
            }
            Probe::Amps {
                round: Round::Cable { cable, .. },
            } => Seen::Amps(self.net_amps(cable).norm()),
            Probe::Ohms { from, to } => Seen::Ohms(self.ohms(node(from)?, node(to)?)),
        })
    }
}
