//! How well what is seen in a network fits what a meter showed.
//!
//! What is expected stands on a scale of its own for each instrument: volts, amperes, the logarithm of ohms, or the
//! probability of a yes. A description slips (a length, a load that nobody knew of), so every scale has wide tails: no
//! reading rules a fault out by itself.

use serde::Serialize;

use super::network::{
    Branch, GROUND_BAR, Network, Part, SOURCE_A, SOURCE_B, SOURCE_NEUTRAL, Scene,
};
use super::places::Sets;
use super::reading::{Meter, Outcome, Probe, Reading, Round, Shown};
use super::solve::Complex64;

/// A reading counts as explained within so many standard deviations of what is expected.
pub const EXPLAINED_WITHIN: f64 = 3.0;

/// A yes or no counts as explained if at least so probable.
pub const EXPLAINED_FROM: f64 = 0.2;

/// The share of readings that are off for a reason nobody knows. Source: an estimate.
const SLIPS: f64 = 0.02;

/// Added to ohms before their logarithm is taken, ohms: what leads and contacts of a meter do.
pub const LEADS_OHM: f64 = 0.3;

/// The logarithm of ohms that an open way shows, if it shows any, and how wide it is spread.
const OPEN_LN: (f64, f64) = (14.0, 3.0);

/// What an instrument is expected to show.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Expected {
    /// The middle: volts, amperes, ln(ohm + [`LEADS_OHM`]).
    pub middle: f64,
    /// The standard deviation, on the same scale.
    pub spread: f64,
    /// The probability that a tester glows, or that a meter in ohms is over its limit.
    pub yes: f64,
    /// One over the width of the scale.
    pub wide: f64,
    /// Whether it is ohms, by their logarithm.
    pub is_ohms: bool,
}

impl Expected {
    const fn figure(middle: f64, spread: f64, wide: f64) -> Self {
        Self {
            middle,
            spread,
            yes: 0.0,
            wide,
            is_ohms: false,
        }
    }

    /// How far apart two expectations are, in standard deviations of what would be shown: a sure yes and a sure no are
    /// as far apart as six.
    pub fn apart(&self, other: &Self) -> f64 {
        let by_yes = 6.0 * (self.yes - other.yes).abs();
        if self.spread == 0.0 {
            return by_yes;
        }
        let spread = self.spread.hypot(other.spread);
        let by_figure = (self.middle - other.middle).abs() / spread;
        let both_show = (1.0 - self.yes) * (1.0 - other.yes);
        by_yes.max(by_figure * both_show)
    }

    /// The logarithm of the likelihood of an outcome, and whether the outcome counts as explained.
    pub fn weigh(&self, outcome: &Outcome) -> (f64, bool) {
        let (value, ohms) = match *outcome {
            Outcome::Glows(yes) => {
                let p = if yes { self.yes } else { 1.0 - self.yes };
                return (p.ln(), p >= EXPLAINED_FROM);
            }
            Outcome::Shows(Shown::OverLimit { .. }) => {
                let p = self.yes.max(0.005);
                return (p.ln(), self.yes >= EXPLAINED_FROM / 2.0);
            }
            Outcome::Shows(Shown::Value { value, .. }) => (value, self.is_ohms),
        };
        let x = if ohms {
            (value + LEADS_OHM).ln()
        } else {
            value
        };
        let range = match *outcome {
            // Half a digit of three and a half on the range.
            Outcome::Shows(Shown::Value {
                range: Some(range), ..
            }) if !ohms => range * 0.001,
            _ => 0.0,
        };
        let spread = self.spread.hypot(range);
        let z = (x - self.middle) / spread;
        let bell = (-0.5 * z * z).exp() / (spread * 2.506_628_274_631);
        let p = (1.0 - self.yes) * ((1.0 - SLIPS) * bell + SLIPS * self.wide);
        (
            p.max(1e-12).ln(),
            z.abs() <= EXPLAINED_WITHIN && self.yes < 0.9,
        )
    }
}

/// One over the width of the scale of volts.
const VOLTS_WIDE: f64 = 1.0 / 250.0;
/// Of amperes.
const AMPS_WIDE: f64 = 1.0 / 20.0;
/// Of the logarithm of ohms.
const OHMS_WIDE: f64 = 1.0 / 18.0;

/// A solved scene with what is known of its stiffness.
pub(super) struct View<'a> {
    pub scene: Scene<'a>,
    /// By metal and loads, stray capacitance left out.
    firm: Sets,
    /// By metal.
    metal: Sets,
    legs: [f64; 2],
    /// Cable, conductor, amperes.
    amps: Vec<(u32, usize, Complex64)>,
}

impl<'a> View<'a> {
    pub fn of(network: &'a Network, scene: Scene<'a>) -> Self {
        let firm = network.sets(&scene.closed, |b| !matches!(b.part, Part::Stray(..)));
        let metal = network.sets(&scene.closed, Branch::is_metal);
        let volts = |at: usize| network.held().get(at).map_or(0.0, |(_, v)| v.norm());
        let mut amps = Vec::new();
        for branch in &scene.closed {
            if let Part::Conductor { cable, conductor } = branch.part {
                amps.push((cable, conductor, scene.solved.amps(&branch.link())));
            }
        }
        Self {
            amps,
            scene,
            firm,
            metal,
            legs: [volts(1), volts(2)],
        }
    }

    /// Whether something other than stray capacitance decides the voltage of a node.
    fn is_firm(&mut self, node: usize) -> bool {
        let set = self.firm.find(node);
        [SOURCE_NEUTRAL, SOURCE_A, SOURCE_B]
            .into_iter()
            .any(|held| self.firm.find(held) == set)
    }

    /// What an instrument is expected to show; `None` if the probe names a point that isn't there. `quick`: stray
    /// capacitance was left out, a floating part may show anything.
    pub fn expect(&mut self, probe: &Probe, quick: bool) -> Option<Expected> {
        let network = self.scene.network;
        match *probe {
            Probe::Volts { from, to, meter } => {
                let (from, to) = (network.point(from)?, network.point(to)?);
                let firm = self.is_firm(from) && self.is_firm(to);
                let high = meter == Meter::HighImpedance;
                if quick && !firm {
                    // A high-impedance meter shows what stray capacitance brings, if it brings any.
                    return Some(if high {
                        Expected::figure(30.0, 25.0, VOLTS_WIDE)
                    } else {
                        Expected::figure(0.0, 2.0, VOLTS_WIDE)
                    });
                }
                let as_is = if high && firm {
                    self.scene.solved.between(from, to).map(|v| v.norm())
                } else {
                    self.scene.across(from, to, meter.ohm())
                };
                Some(self.volts(as_is, firm))
            }
            Probe::Tester { at } => {
                let node = network.point(at)?;
                let firm = self.is_firm(node) && self.is_firm(GROUND_BAR);
                let volts = self.scene.to_ground(node).map(|v| v.norm());
                Some(if quick && !firm {
                    tester(Some(15.0), false)
                } else {
                    tester(volts, firm)
                })
            }
            Probe::Amps { round } => {
                let (of, one) = match round {
                    Round::Conductor(end) => (end.cable, Some(end.conductor)),
                    Round::Cable { cable, .. } => (cable, None),
                };
                let mut amps = Complex64::ZERO;
                for &(cable, conductor, flows) in &self.amps {
                    if cable == of && one.is_none_or(|one| one == conductor) {
                        amps += flows;
                    }
                }
                Some(amperes(amps.norm()))
            }
            Probe::Ohms { from, to } => {
                let (from, to) = (network.point(from)?, network.point(to)?);
                let metal = self.metal.find(from) == self.metal.find(to);
                Some(ohms(self.scene.ohms(from, to), metal))
            }
        }
    }

    /// Volts: 2 % for the supply's own ups and downs, 1.5 % and 0.3 V for the meter, and a third of what lies between
    /// the pure values, since drops and dividers rest on lengths and loads that were only told.
    fn volts(&self, volts: Option<f64>, firm: bool) -> Expected {
        let Some(volts) = volts else {
            return Expected::figure(0.0, 5.0, VOLTS_WIDE);
        };
        if !firm {
            return Expected::figure(volts, 2.0 + 0.5 * volts, VOLTS_WIDE);
        }
        let [a, b] = self.legs;
        let off = [0.0, a, b, a + b]
            .into_iter()
            .map(|pure| (volts - pure).abs())
            .fold(f64::INFINITY, f64::min);
        let spread = 0.3_f64.hypot(0.025 * volts).hypot(0.35 * off);
        Expected::figure(volts, spread, VOLTS_WIDE)
    }
}

/// A tester glows beside what is live; beside stray voltage nobody can tell. Source: common practice.
fn tester(volts: Option<f64>, firm: bool) -> Expected {
    let yes = match (volts, firm) {
        (None, _) => 0.1,
        (Some(v), true) if v >= 60.0 => 0.97,
        (Some(v), true) if v >= 25.0 => 0.5,
        (Some(_), true) => 0.03,
        (Some(v), false) if v >= 15.0 => 0.5,
        (Some(_), false) => 0.08,
    };
    Expected {
        middle: 0.0,
        spread: 0.0,
        yes,
        wide: 1.0,
        is_ohms: false,
    }
}

/// A clamp: 3 % and 40 mA of its own, and a fifth since loads and lengths were only told.
fn amperes(amps: f64) -> Expected {
    Expected::figure(amps, 0.04_f64.hypot(0.2 * amps), AMPS_WIDE)
}

/// Ohms through metal rest on lengths; through a load they are no more than some resistance.
pub(super) fn ohms(ohm: Option<f64>, metal: bool) -> Expected {
    let (middle, spread, yes) = match ohm {
        Some(ohm) if metal => ((ohm + LEADS_OHM).ln(), 0.45, 0.01),
        Some(ohm) => ((0.5 * ohm + LEADS_OHM).ln(), 1.3, 0.15),
        None => (OPEN_LN.0, OPEN_LN.1, 0.97),
    };
    Expected {
        middle,
        spread,
        yes,
        wide: OHMS_WIDE,
        is_ohms: true,
    }
}

/// What a reading says of a view: the logarithm of its likelihood, and whether it is explained.
pub(super) fn weigh(view: &mut View, reading: &Reading) -> (f64, bool) {
    view.expect(&reading.probe, false)
        .map_or((0.0, true), |expected| expected.weigh(&reading.outcome))
}
