//! Voltage drop along a run with one or several loads: volts, percent and watts at each, and what is left.
//!
//! A run leaves its source with a voltage and passes points one after another, each a length of cable beyond the one
//! before and with loads of its own. A load takes a given current (or the current of its watts at the nominal voltage)
//! whatever the voltage, or it is a resistance, which takes less where the voltage is lower. Both are solved exactly.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::code::Rule;
use super::conductor::Size;
use super::impedance::{ImpedanceRefusal, Wire, impedance};
use super::steps::{figure, step};
use super::tables::{BRANCH_DROP_PERCENT, TOTAL_DROP_PERCENT};

mod ladder;
mod sizing;

pub use sizing::{
    LongestRun, SingleLoad, SmallestForDrop, StepUp, longest_run, max_resistance_ohm_per_kft,
    smallest_for_drop, step_up,
};

/// The longest run taken for a real one, feet.
pub const MOST_LENGTH_FT: f64 = 10_000.0;

/// The largest current taken for a real one, amperes.
pub const MOST_CURRENT_A: f64 = 6000.0;

/// The highest voltage of these questions, volts.
pub const MOST_VOLTS: f64 = 1000.0;

/// The smallest conductor that may run in parallel: 310.10(G), from memory.
pub const LEAST_PARALLEL: Size = Size::Awg1_0;

/// The most conductors in parallel for each leg.
pub const MOST_PARALLEL: u32 = 12;

/// The system a run is wired for, with its nominal voltage.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum System {
    /// Single phase, two wires: hot and neutral, or two hots.
    TwoWire {
        /// Between the two, volts.
        volts: f64,
    },
    /// Single phase, three wires: two legs and their neutral.
    Multiwire {
        /// From each leg to the neutral, volts.
        leg_volts: f64,
    },
    /// Three phase, balanced.
    ThreePhase {
        /// From line to line, volts.
        volts: f64,
    },
}

/// Between which conductors a load is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Across {
    /// All there is on a two-wire or three-phase run; leg A to neutral on a multiwire one.
    #[default]
    A,
    /// Leg B to neutral.
    B,
    /// Leg to leg.
    Both,
}

/// What a load takes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Demand {
    /// A current, amperes.
    Amps(f64),
    /// Power at the nominal voltage, watts; taken as the current that it makes there at the power factor.
    Watts(f64),
    /// A resistance, ohms.
    Ohms(f64),
}

/// A load at a point.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct DropLoad {
    /// What it takes.
    pub demand: Demand,
    /// Where it is connected.
    pub across: Across,
}

/// A length of cable, and the loads at its end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stretch {
    /// One way, feet.
    pub length_ft: f64,
    /// The loads at its end.
    pub loads: Vec<DropLoad>,
}

/// A run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Run {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// The system.
    pub system: System,
    /// The voltage at its start, volts, where it was measured; `None`: the nominal one.
    pub source_volts: Option<f64>,
    /// Resistance ahead of its start, in each hot, ohms: breaker, feeder.
    pub source_ohm: f64,
    /// The size.
    pub size: Size,
    /// Metal, method, temperature.
    pub wire: Wire,
    /// Conductors in parallel for each leg.
    pub parallel: u32,
    /// The stretches, from the source outwards.
    pub stretches: Vec<Stretch>,
    /// What the feeder has lost already, percent.
    pub feeder_percent: f64,
}

/// A voltage and what has been lost of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Left {
    /// What is left, volts.
    pub volts: f64,
    /// What is lost, volts; negative where the unbalance lifts the leg.
    pub drop_v: f64,
    /// The same, percent of the nominal voltage.
    pub drop_percent: f64,
}

/// What is found at the end of a stretch.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DropPoint {
    /// How far from the source, feet one way.
    pub at_ft: f64,
    /// Between the two wires, line to line, or leg A to neutral.
    pub a: Left,
    /// Leg B to neutral, on a multiwire run.
    pub b: Option<Left>,
    /// Leg to leg, on a multiwire run.
    pub both: Option<Left>,
    /// Current in the hot of this stretch, or of its leg A, amperes.
    pub current_a: f64,
    /// Current in leg B of this stretch, on a multiwire run, amperes.
    pub current_b_a: Option<f64>,
    /// Current in the neutral of this stretch, on a multiwire run, amperes.
    pub neutral_a: Option<f64>,
    /// Lost in the conductors of this stretch, watts.
    pub lost_w: f64,
}

/// What is remarkable about a run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DropFinding {
    /// More is lost than the 3 % that is recommended for a branch circuit.
    AboveBranch {
        /// The worst point, percent.
        percent: f64,
    },
    /// More is lost than the 5 % that is recommended for feeder and branch circuit together.
    AboveTotal {
        /// Both together, percent.
        percent: f64,
    },
    /// A leg that rises by unbalance.
    LegRises {
        /// By how much at most, volts.
        volts: f64,
    },
    /// Conductors in parallel that are smaller than 1/0 AWG.
    ParallelTooSmall {
        /// The size.
        size: Size,
    },
}

/// The drop along a run.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct VoltageDrop {
    /// The edition.
    pub edition: CodeEdition,
    /// Impedance of one conductor, ohms per 1000 ft.
    pub ohm_per_kft: f64,
    /// The points, from the source outwards.
    pub points: Vec<DropPoint>,
    /// The most that is lost anywhere: between the two wires, line to line, or from a leg to the neutral, volts.
    pub worst_v: f64,
    /// The same, percent of the nominal voltage.
    pub worst_percent: f64,
    /// The same with what the feeder lost, percent of each one's own nominal voltage added (common practice).
    pub total_percent: f64,
    /// Whether the recommendation of 3 % for a branch circuit is kept.
    pub within_branch: bool,
    /// Whether the recommendation of 5 % in total is kept.
    pub within_total: bool,
    /// Lost in the conductors, watts.
    pub lost_w: f64,
    /// What is remarkable.
    pub findings: Vec<DropFinding>,
    /// The working.
    pub steps: Vec<Step>,
}

/// A point of the plot of voltage against distance; between two of them it falls in a straight line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ProfilePoint {
    /// Feet from the source, one way.
    pub at_ft: f64,
    /// Between the two wires, line to line, or leg A to neutral, volts.
    pub volts_a: f64,
    /// Leg B to neutral, on a multiwire run, volts.
    pub volts_b: Option<f64>,
}

/// The drop along a run.
///
/// Two wires: 2 I L Z / 1000; three phase: 1.732 I L Z / 1000, line to line; multiwire: leg A loses Ia Z + (Ia - Ib) Z,
/// leg B loses Ib Z - (Ia - Ib) Z, with Z of the length one way.
///
/// # Errors
/// [`DropRefusal`]: lengths, voltages, currents that are none or absurd; a load that its system can't have; the
/// impedance's own.
///
/// # Example
/// 16 A over 75 ft of 12 AWG solid copper at 120 V: 2 x 16 x 75 x 1.93 / 1000 = 4.632 V, 3.86 %.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::conductor::Size;
/// use calc::wiring::impedance::Wire;
/// use calc::wiring::voltage_drop::{Across, Demand, DropLoad, Run, Stretch, System, voltage_drop};
/// let run = Run {
///     edition: CodeEdition::E2023,
///     system: System::TwoWire { volts: 120.0 },
///     source_volts: None,
///     source_ohm: 0.0,
///     size: Size::Awg12,
///     wire: Wire::COPPER,
///     parallel: 1,
///     stretches: vec![Stretch {
///         length_ft: 75.0,
///         loads: vec![DropLoad { demand: Demand::Amps(16.0), across: Across::A }],
///     }],
///     feeder_percent: 0.0,
/// };
/// let answer = voltage_drop(&run).unwrap();
/// assert!((answer.worst_v - 4.632).abs() < 1e-9 && (answer.worst_percent - 3.86).abs() < 1e-9);
/// assert!(!answer.within_branch);
/// ```
pub fn voltage_drop(run: &Run) -> Result<VoltageDrop, DropRefusal> {
    run.check()?;
    let wire = impedance(run.size, &run.wire, run.edition)?;
    let parallel = f64::from(run.parallel);
    let conductor = ladder::Conductor {
        effective_ohm_per_ft: wire.effective_ohm_per_kft / 1000.0 / parallel,
        resistance_ohm_per_ft: wire.resistance_ohm_per_kft / 1000.0 / parallel,
    };
    let points = ladder::solve(run, &conductor)?;

    let multiwire = matches!(run.system, System::Multiwire { .. });
    // Leg to leg is the mean of both legs in percent, so that the worst is always found on a leg.
    let drops = || points.iter().flat_map(|p| [Some(p.a), p.b]).flatten();
    let most = |of: fn(&Left) -> f64| drops().map(|left| of(&left)).fold(0.0, f64::max);
    let (worst_v, worst_percent) = (most(|left| left.drop_v), most(|left| left.drop_percent));
    let rises_v = most(|left| -left.drop_v);
    let total_percent = worst_percent + run.feeder_percent;
    let lost_w = points.iter().map(|point| point.lost_w).sum();

    let mut steps = wire.steps;
    let percent_of = |of: fn(&DropPoint) -> Option<Left>| {
        let lost = points.iter().filter_map(of).map(|left| left.drop_percent);
        lost.fold(0.0, f64::max)
    };
    // The working is that of the leg that loses more.
    let on_b = multiwire && percent_of(|p| p.b) > percent_of(|p| Some(p.a));
    let mut before_ft = 0.0;
    let mut before_v = run.source_volts.unwrap_or(run.system.nominal());
    for point in &points {
        let (own, other) = (point.current_a, point.current_b_a);
        let (own, other) = match other {
            Some(b) if on_b => (b, Some(own)),
            other => (own, other),
        };
        let left = point.b.filter(|_| on_b).unwrap_or(point.a);
        let mut inputs = vec![
            figure("length", point.at_ft - before_ft, Unit::Ft),
            figure("current", own, Unit::Amps),
            figure("impedance", wire.effective_ohm_per_kft, Unit::OhmsPerKft),
            figure("parallel", parallel, Unit::Count),
        ];
        inputs.extend(other.map(|a| figure("other_leg", a, Unit::Amps)));
        let formula = match run.system {
            System::TwoWire { .. } => "drop_two_wire",
            System::Multiwire { .. } => "drop_multiwire",
            System::ThreePhase { .. } => "drop_three_phase",
        };
        steps.push(step(
            formula,
            inputs,
            figure("drop", before_v - left.volts, Unit::Volts),
            Source::Arithmetic,
        ));
        (before_ft, before_v) = (point.at_ft, left.volts);
    }
    steps.push(step(
        "drop_percent",
        vec![
            figure("drop", worst_v, Unit::Volts),
            figure("nominal", run.system.nominal(), Unit::Volts),
        ],
        figure("percent", worst_percent, Unit::Percent),
        Rule::BranchDrop.source(run.edition),
    ));
    steps.push(step(
        "drop_total",
        vec![
            figure("percent", worst_percent, Unit::Percent),
            figure("feeder", run.feeder_percent, Unit::Percent),
        ],
        figure("total", total_percent, Unit::Percent),
        Rule::TotalDrop.source(run.edition),
    ));

    let within_branch = worst_percent <= BRANCH_DROP_PERCENT + 1e-9;
    let within_total = total_percent <= TOTAL_DROP_PERCENT + 1e-9;
    let mut findings = Vec::new();
    if !within_branch {
        findings.push(DropFinding::AboveBranch {
            percent: worst_percent,
        });
    }
    if !within_total {
        findings.push(DropFinding::AboveTotal {
            percent: total_percent,
        });
    }
    if multiwire && rises_v > 1e-9 {
        findings.push(DropFinding::LegRises { volts: rises_v });
    }
    if run.parallel > 1 && run.size < LEAST_PARALLEL {
        findings.push(DropFinding::ParallelTooSmall { size: run.size });
    }
    Ok(VoltageDrop {
        edition: run.edition,
        ohm_per_kft: wire.effective_ohm_per_kft,
        points,
        worst_v,
        worst_percent,
        total_percent,
        within_branch,
        within_total,
        lost_w,
        findings,
        steps,
    })
}

impl VoltageDrop {
    /// Voltage against distance, from the start of the cable to its end.
    ///
    /// # Errors
    /// [`DropRefusal`] as the run's own: none for the run that this answers.
    pub fn profile(&self, run: &Run) -> Result<Vec<ProfilePoint>, DropRefusal> {
        // What the source resistance takes is gone before the first foot: the run to a point at no distance.
        let mut start = run.clone();
        if let Some(first) = start.stretches.first_mut() {
            let at_start = Stretch {
                length_ft: 0.0,
                loads: Vec::new(),
            };
            let first = std::mem::replace(first, at_start);
            start.stretches.insert(1, first);
        }
        let mut points = voltage_drop(&start)?.points;
        points.dedup_by(|later, earlier| later.at_ft == earlier.at_ft);
        Ok(points
            .into_iter()
            .map(|point| ProfilePoint {
                at_ft: point.at_ft,
                volts_a: point.a.volts,
                volts_b: point.b.map(|left| left.volts),
            })
            .collect())
    }
}

impl System {
    /// The nominal voltage that percentages are of: between two wires, from leg to neutral, from line to line.
    pub const fn nominal(&self) -> f64 {
        match *self {
            Self::TwoWire { volts } | Self::ThreePhase { volts } => volts,
            Self::Multiwire { leg_volts } => leg_volts,
        }
    }
}

impl Run {
    fn check(&self) -> Result<(), DropRefusal> {
        let volts = self.system.nominal();
        for volts in [Some(volts), self.source_volts].into_iter().flatten() {
            if !(volts > 0.0 && volts <= MOST_VOLTS) {
                return Err(DropRefusal::Volts { volts });
            }
        }
        if !(0.0..=100.0).contains(&self.source_ohm) {
            return Err(DropRefusal::SourceOhm {
                ohm: self.source_ohm,
            });
        }
        if !(0.0..=100.0).contains(&self.feeder_percent) {
            return Err(DropRefusal::FeederPercent {
                percent: self.feeder_percent,
            });
        }
        if !(1..=MOST_PARALLEL).contains(&self.parallel) {
            return Err(DropRefusal::Parallel {
                parallel: self.parallel,
            });
        }
        if self.stretches.is_empty() {
            return Err(DropRefusal::NoStretch);
        }
        let mut all_ft = 0.0;
        for stretch in &self.stretches {
            if !(0.0..=MOST_LENGTH_FT).contains(&stretch.length_ft) {
                return Err(DropRefusal::Length {
                    length_ft: stretch.length_ft,
                });
            }
            all_ft += stretch.length_ft;
        }
        if !(all_ft > 0.0 && all_ft <= MOST_LENGTH_FT) {
            return Err(DropRefusal::Length { length_ft: all_ft });
        }
        Ok(())
    }
}

/// Why a drop isn't answered.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum DropRefusal {
    /// The impedance's own refusal.
    #[error(transparent)]
    Impedance(#[from] ImpedanceRefusal),
    /// A voltage that is none, or above [`MOST_VOLTS`].
    #[error("{volts} V")]
    Volts {
        /// What was given, volts.
        volts: f64,
    },
    /// A length that is negative, nothing in all, or above [`MOST_LENGTH_FT`].
    #[error("{length_ft} ft")]
    Length {
        /// What was given, feet.
        length_ft: f64,
    },
    /// A run without a stretch.
    #[error("no stretch")]
    NoStretch,
    /// A load that is negative, no number or absurd.
    #[error("load {demand:?} at stretch {stretch}")]
    Load {
        /// The stretch it is at the end of, from 0.
        stretch: usize,
        /// What was given.
        demand: Demand,
    },
    /// Leg B or leg to leg on a run without two legs.
    #[error("load across {across:?} at stretch {stretch}")]
    Across {
        /// The stretch it is at the end of, from 0.
        stretch: usize,
        /// What was given.
        across: Across,
    },
    /// A resistance as load with a power factor below 1, or on three phases.
    #[error("resistive load at stretch {stretch}")]
    Ohms {
        /// The stretch it is at the end of, from 0.
        stretch: usize,
    },
    /// A source resistance that is none.
    #[error("source of {ohm} ohm")]
    SourceOhm {
        /// What was given, ohms.
        ohm: f64,
    },
    /// A feeder's loss that is none.
    #[error("feeder loses {percent} %")]
    FeederPercent {
        /// What was given, percent.
        percent: f64,
    },
    /// No conductor, or more than [`MOST_PARALLEL`] in parallel.
    #[error("{parallel} in parallel")]
    Parallel {
        /// What was given.
        parallel: u32,
    },
    /// The loads take more than the run can bring: no voltage is left.
    #[error("no voltage is left at {at_ft} ft")]
    NothingLeft {
        /// The first point without voltage, feet.
        at_ft: f64,
    },
    /// A limit that is none.
    #[error("limit of {percent} %")]
    Limit {
        /// What was given, percent.
        percent: f64,
    },
    /// No size here keeps the limit.
    #[error("no size has {max_ohm_per_kft} ohm per 1000 ft")]
    NoSize {
        /// What it would need, ohms per 1000 ft.
        max_ohm_per_kft: f64,
    },
}
