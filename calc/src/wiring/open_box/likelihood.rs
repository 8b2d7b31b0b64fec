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
use super::sway::{self, Amps};
use super::through::{self, Through};

/// A reading counts as explained within so many standard deviations of what is expected.
pub const EXPLAINED_WITHIN: f64 = 3.0;

/// A yes or no counts as explained if at least so probable.
pub const EXPLAINED_FROM: f64 = 0.2;

/// The share of readings that are off for a reason nobody knows; loads that are other than described are explanations
/// of their own. Source: an estimate.
const SLIPS: f64 = 0.01;

/// Added to ohms before their logarithm is taken, ohms: what leads and contacts of a meter do.
pub const LEADS_OHM: f64 = 0.3;

/// What leads and contacts of a meter show by themselves, ohms. Source: 0.1 to 0.2 is typical, common practice.
const LEADS_SHOW_OHM: f64 = 0.15;

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
    /// The probability that there is more than that, from a load that nobody entered.
    pub more: f64,
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
            more: 0.0,
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
        (
            self.figure_p(x, spread).max(1e-12).ln(),
            z.abs() <= EXPLAINED_WITHIN && self.yes < 0.9,
        )
    }

    /// The density of a figure on the scale.
    fn figure_p(&self, x: f64, spread: f64) -> f64 {
        let z = (x - self.middle) / spread;
        let bell = (-0.5 * z * z).exp() / (spread * 2.506_628_274_631);
        let above = if self.more > 0.0 && z > 0.0 {
            self.more * (-(x - self.middle) / MORE_A).exp() / MORE_A
        } else {
            0.0
        };
        (1.0 - self.yes) * ((1.0 - SLIPS - self.more) * bell + SLIPS * self.wide + above)
    }

    /// The probability, or its density, of what an instrument would show.
    pub(super) fn p(&self, shows: Shows) -> f64 {
        match shows {
            Shows::Yes => self.yes.max(0.005),
            Shows::No => 1.0 - self.yes,
            Shows::Figure(x) => self.figure_p(x, self.spread).max(1e-12),
        }
    }

    /// What would be shown where this is expected, each with its probability: three figures stand for all.
    pub(super) fn outcomes(&self) -> [(Shows, f64); 4] {
        let rest = 1.0 - self.yes;
        if self.spread == 0.0 {
            return [
                (Shows::Yes, self.yes),
                (Shows::No, rest),
                (Shows::No, 0.0),
                (Shows::No, 0.0),
            ];
        }
        // The points and weights by which Gauss and Hermite integrate a bell.
        let off = 3_f64.sqrt() * self.spread;
        [
            (Shows::Yes, self.yes),
            (Shows::Figure(self.middle), rest * 2.0 / 3.0),
            (Shows::Figure(self.middle - off), rest / 6.0),
            (Shows::Figure(self.middle + off), rest / 6.0),
        ]
    }
}

/// What an instrument shows, on the scale on which it is expected.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Shows {
    /// A tester glows, a meter in ohms is over its limit.
    Yes,
    /// A tester does not glow.
    No,
    /// A figure.
    Figure(f64),
}

/// How often there is a load that nobody entered on a conductor, and what it takes at the mean, amperes. Source: estimates.
const MORE: f64 = 0.02;
const MORE_A: f64 = 4.0;

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
    amps: Amps,
    /// The same with one cable longer, worked out when they are asked for.
    swayed: Option<Vec<(f64, Amps)>>,
}

impl<'a> View<'a> {
    pub fn of(network: &'a Network, scene: Scene<'a>) -> Self {
        let firm = network.sets(&scene.closed, |b| !matches!(b.part, Part::Stray(..)));
        let metal = network.sets(&scene.closed, Branch::is_metal);
        let volts = |at: usize| network.held().get(at).map_or(0.0, |(_, v)| v.norm());
        Self {
            amps: sway::amps(&scene),
            swayed: None,
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
                Some(self.amperes(of, one))
            }
            Probe::Ohms { from, to } => {
                let (from, to) = (network.point(from)?, network.point(to)?);
                let through = if self.metal.find(from) == self.metal.find(to) {
                    let ohm = self.scene.ohms(from, to);
                    ohm.map_or(Through::Open, Through::Metal)
                } else {
                    through::loads(network, &self.scene.closed, from, to)
                };
                Some(ohms(through))
            }
        }
    }

    /// A clamp: 3 % and 40 mA of its own, a fifth since loads were only told, and what the lengths leave open.
    fn amperes(&mut self, of: u32, one: Option<usize>) -> Expected {
        let amps = sum(&self.amps, of, one);
        let mut spread = 0.04_f64.hypot(0.2 * amps);
        let swayed = self
            .swayed
            .get_or_insert_with(|| sway::swayed(&self.scene, &self.amps));
        for (off, other) in swayed {
            spread = spread.hypot(*off * (sum(other, of, one) - amps));
        }
        let mut expected = Expected::figure(amps, spread, AMPS_WIDE);
        expected.more = MORE;
        expected
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
        more: 0.0,
        is_ohms: false,
    }
}

/// The current in one conductor of a cable, or in all of them together.
fn sum(amps: &Amps, of: u32, one: Option<usize>) -> f64 {
    let mut sum = Complex64::ZERO;
    for &(cable, conductor, flows) in amps {
        if cable == of && one.is_none_or(|one| one == conductor) {
            sum += flows;
        }
    }
    sum.norm()
}

/// Ohms through metal rest on lengths, those through loads on what each may show when it is cold.
pub(super) fn ohms(through: Through) -> Expected {
    let (middle, spread, yes) = match through {
        Through::Metal(ohm) => ((ohm + LEADS_SHOW_OHM + LEADS_OHM).ln(), 0.3, 0.01),
        Through::Loads(low, high) => {
            let (low, high) = ((low + LEADS_OHM).ln(), (high + LEADS_OHM).ln());
            // As wide as anything between the two, all alike.
            let spread = 0.4_f64.hypot((high - low) / 12_f64.sqrt());
            let yes = if high > OFTEN_OVER_LN { 0.2 } else { 0.02 };
            (0.5 * (low + high), spread, yes)
        }
        Through::Open => (OPEN_LN.0, OPEN_LN.1, 0.97),
    };
    Expected {
        middle,
        spread,
        yes,
        wide: OHMS_WIDE,
        more: 0.0,
        is_ohms: true,
    }
}

/// From here up a meter in ohms is often over its limit: the logarithm of a megohm.
const OFTEN_OVER_LN: f64 = 13.8;

/// What a reading says of a view: the logarithm of its likelihood, and whether it is explained.
pub(super) fn weigh(view: &mut View, reading: &Reading) -> (f64, bool) {
    view.expect(&reading.probe, false)
        .map_or((0.0, true), |expected| expected.weigh(&reading.outcome))
}
