//! The measured supply of a 120/240 V panel: against ANSI C84.1, and for signs of a failing neutral.

use crate::order::Order;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::working::{Source, Step, Unit};

use super::panel::Leg;
use super::steps::{figure, step};
use super::tables::{VoltagePlace, VoltageRange, voltage_row};

/// The source of the ranges.
pub const RANGES_SOURCE: Source = Source::Published("ANSI C84.1 Table 1");

/// Legs that add up to leg to leg within this are in order, volts: two readings of a meter of 1 % and its last digits.
/// Source: common practice.
pub const SUM_WITHIN_V: f64 = 5.0;

/// Legs this far apart point to a failing neutral, volts. Source: common practice.
pub const LEGS_APART_V: f64 = 8.0;

/// Legs this far apart are worth a second look under load, volts. Source: common practice.
pub const LEGS_UNEVEN_V: f64 = 4.0;

/// One leg that rises and the other that falls by this when a load comes on point to a failing neutral, volts. Source:
/// common practice.
pub const SWING_V: f64 = 3.0;

/// Neutral and ground this far apart at a panel are remarkable, volts. Source: common practice.
pub const NEUTRAL_TO_GROUND_V: f64 = 2.0;

/// Below this a reading is no supply: a dead leg shows some volts through what is connected. Source: common practice.
pub const DEAD_V: f64 = 20.0;

/// From this on a leg is no leg of 120 V alone: a failing neutral pulls it up. Source: common practice.
pub const PULLED_UP_V: f64 = 150.0;

/// Voltages of a supply at one moment, volts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SupplyReadings {
    /// Leg to leg.
    pub across_v: f64,
    /// Leg A to the neutral bar.
    pub a_neutral_v: f64,
    /// Leg B to the neutral bar.
    pub b_neutral_v: f64,
    /// Leg A to ground, where it was read.
    pub a_ground_v: Option<f64>,
    /// Leg B to ground, where it was read.
    pub b_ground_v: Option<f64>,
}

/// A supply as measured.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Supply {
    /// Where it was measured: the ranges differ.
    pub place: VoltagePlace,
    /// With little or no load.
    pub idle: SupplyReadings,
    /// With a large 120 V load on one leg, where that was done.
    pub loaded: Option<SupplyReadings>,
}

/// Where a voltage stands in the ranges.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Standing {
    /// In Range A: normal.
    RangeA,
    /// In Range B: for a limited time, to be corrected.
    RangeB,
    /// Below both.
    Below,
    /// Above both.
    Above,
}

/// Which voltage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reading {
    /// Leg to leg.
    Across,
    /// A leg to the neutral.
    LegToNeutral(Leg),
}

/// A voltage, judged.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Judged {
    /// Which voltage.
    pub reading: Reading,
    /// Whether the load was on.
    pub loaded: bool,
    /// The voltage.
    pub volts: f64,
    /// Where it stands.
    pub standing: Standing,
}

/// What points to a failing neutral.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NeutralEvidence {
    /// The legs don't add up to leg to leg.
    LegsDontAddUp {
        /// Both legs together, volts.
        sum_v: f64,
        /// Leg to leg, volts.
        across_v: f64,
    },
    /// The legs are far apart while leg to leg is in order.
    LegsApart {
        /// Leg A, volts.
        a_v: f64,
        /// Leg B, volts.
        b_v: f64,
    },
    /// One leg rises while the other falls when the load comes on.
    LegsSwing {
        /// The leg that rises.
        rising: Leg,
        /// By how much, volts.
        rise_v: f64,
        /// By how much the other falls, volts.
        fall_v: f64,
    },
}

/// How soon to act.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Urgency {
    /// Stop using the supply, unplug what matters, and call the utility or an electrician now.
    CallNow,
    /// Have the utility or an electrician look at it.
    Call,
    /// Measure again.
    Measure,
}

/// What is remarkable about a supply; the most urgent first.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SupplyFinding {
    /// The neutral is failing: voltages swing with the loads, up to destroying what is plugged in, to fire and to shock
    /// at metal parts.
    NeutralFailing {
        /// What points to it.
        evidence: Vec<NeutralEvidence>,
    },
    /// No voltage anywhere: it is off, or the meter is not reading.
    Dead {
        /// The highest of the readings, volts.
        most_v: f64,
    },
    /// One leg is dead, and leg to leg is the other one alone: a fuse, a main or the utility has lost it. Equipment of 240 V
    /// may feed it backwards.
    LegLost {
        /// The leg.
        leg: Leg,
        /// What it shows, volts.
        volts: f64,
    },
    /// Both bars seem to be on one leg: next to nothing from leg to leg.
    OneLegOnBoth {
        /// Leg to leg, volts.
        across_v: f64,
    },
    /// Two lines of a three-phase supply and not the legs of a single-phase one: leg to leg is 1.73 times a leg.
    TwoLinesOfWye {
        /// Leg to leg, volts.
        across_v: f64,
    },
    /// A voltage outside both ranges.
    OutOfRange(Judged),
    /// A voltage in Range B.
    InRangeB(Judged),
    /// The neutral is off ground at the panel.
    NeutralOffGround {
        /// The leg it was seen at.
        leg: Leg,
        /// Leg to ground less leg to neutral, volts.
        volts: f64,
    },
    /// The legs are a little apart: measure again with and without load.
    LegsUneven {
        /// By how much, volts.
        apart_v: f64,
    },
    /// It was not read with a large load on one leg, which is when a failing neutral shows.
    NotTestedUnderLoad {
        /// Whether nothing else was found.
        nothing_else: bool,
    },
}

impl SupplyFinding {
    /// How soon to act.
    pub fn urgency(&self) -> Urgency {
        match self {
            Self::NeutralFailing { .. } => Urgency::CallNow,
            Self::OneLegOnBoth { .. } | Self::OutOfRange(_) | Self::LegLost { .. } => Urgency::Call,
            Self::Dead { .. } | Self::NotTestedUnderLoad { .. } => Urgency::Measure,
            Self::TwoLinesOfWye { .. } | Self::InRangeB(_) => Urgency::Measure,
            Self::NeutralOffGround { .. } => Urgency::Call,
            Self::LegsUneven { .. } => Urgency::Measure,
        }
    }
}

/// A supply, judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SupplyJudgement {
    /// Each voltage against the ranges.
    pub judged: Vec<Judged>,
    /// What is remarkable, the most urgent first.
    pub findings: Vec<SupplyFinding>,
    /// The working.
    pub steps: Vec<Step>,
}

/// Judges a measured supply.
///
/// # Errors
/// [`SupplyRefusal`] for a voltage that is none.
///
/// # Example
/// A neutral that fails: one leg low, the other high, and leg to leg as it should be.
/// ```
/// use calc::wiring::supply::{Supply, SupplyFinding, SupplyReadings, Urgency, judge};
/// use calc::wiring::tables::VoltagePlace;
/// let idle = SupplyReadings {
///     across_v: 239.0, a_neutral_v: 106.5, b_neutral_v: 132.5, a_ground_v: None, b_ground_v: None,
/// };
/// let answer = judge(&Supply { place: VoltagePlace::Service, idle, loaded: None }).unwrap();
/// assert!(matches!(answer.findings[0], SupplyFinding::NeutralFailing { .. }));
/// assert_eq!(answer.findings[0].urgency(), Urgency::CallNow);
/// ```
pub fn judge(supply: &Supply) -> Result<SupplyJudgement, SupplyRefusal> {
    let states = [
        Some((supply.idle, false)),
        supply.loaded.map(|readings| (readings, true)),
    ];
    let (mut judged, mut steps, mut evidence, mut findings) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    // A leg or all of it without voltage: nothing is told of the neutral from that.
    let mut dead = false;
    for (readings, loaded) in states.into_iter().flatten() {
        readings.check()?;
        let SupplyReadings {
            across_v,
            a_neutral_v,
            b_neutral_v,
            ..
        } = readings;
        for (reading, volts) in [
            (Reading::Across, across_v),
            (Reading::LegToNeutral(Leg::A), a_neutral_v),
            (Reading::LegToNeutral(Leg::B), b_neutral_v),
        ] {
            let standing = standing(supply.place, reading, volts);
            judged.push(Judged {
                reading,
                loaded,
                volts,
                standing,
            });
        }
        let sum_v = a_neutral_v + b_neutral_v;
        let apart_v = (a_neutral_v - b_neutral_v).abs();
        steps.push(step(
            "legs_sum",
            vec![
                figure("leg_a", a_neutral_v, Unit::Volts),
                figure("leg_b", b_neutral_v, Unit::Volts),
                figure("across", across_v, Unit::Volts),
            ],
            figure("sum_less_across", sum_v - across_v, Unit::Volts),
            Source::CommonPractice,
        ));
        steps.push(step(
            "legs_apart",
            vec![
                figure("leg_a", a_neutral_v, Unit::Volts),
                figure("leg_b", b_neutral_v, Unit::Volts),
            ],
            figure("apart", apart_v, Unit::Volts),
            Source::CommonPractice,
        ));
        let most_v = a_neutral_v.max(b_neutral_v).max(across_v);
        if most_v < DEAD_V {
            findings.push(SupplyFinding::Dead { most_v });
            dead = true;
            continue;
        }
        if let Some((leg, volts)) = readings.lost_leg() {
            findings.push(SupplyFinding::LegLost { leg, volts });
            dead = true;
            let of_other =
                |j: &&Judged| j.loaded == loaded && j.reading == Reading::LegToNeutral(leg.other());
            findings.extend(judged.iter().filter(of_other).filter_map(standing_finding));
            continue;
        }
        let wye = (across_v - sum_v / 2.0 * 3f64.sqrt()).abs() <= SUM_WITHIN_V;
        let one_leg = across_v < 0.25 * sum_v;
        let two_lines = !one_leg && wye && apart_v < LEGS_APART_V;
        if one_leg {
            findings.push(SupplyFinding::OneLegOnBoth { across_v });
        } else if two_lines {
            findings.push(SupplyFinding::TwoLinesOfWye { across_v });
        } else if (sum_v - across_v).abs() > SUM_WITHIN_V {
            evidence.push(NeutralEvidence::LegsDontAddUp { sum_v, across_v });
        }
        // Leg to leg of another system is not held against the range of this one.
        let of_another = one_leg || two_lines;
        let held =
            |j: &&Judged| j.loaded == loaded && !(of_another && j.reading == Reading::Across);
        findings.extend(judged.iter().filter(held).filter_map(standing_finding));
        if apart_v > LEGS_APART_V {
            evidence.push(NeutralEvidence::LegsApart {
                a_v: a_neutral_v,
                b_v: b_neutral_v,
            });
        } else if apart_v > LEGS_UNEVEN_V {
            findings.push(SupplyFinding::LegsUneven { apart_v });
        }
        for (leg, ground_v, neutral_v) in [
            (Leg::A, readings.a_ground_v, a_neutral_v),
            (Leg::B, readings.b_ground_v, b_neutral_v),
        ] {
            if let Some(volts) = ground_v.map(|ground_v| ground_v - neutral_v)
                && volts.abs() > NEUTRAL_TO_GROUND_V
            {
                findings.push(SupplyFinding::NeutralOffGround { leg, volts });
            }
        }
    }
    if let Some(loaded) = supply.loaded.filter(|_| !dead) {
        let change_a = loaded.a_neutral_v - supply.idle.a_neutral_v;
        let change_b = loaded.b_neutral_v - supply.idle.b_neutral_v;
        let (rising, rise_v, fall_v) = if change_a > change_b {
            (Leg::A, change_a, -change_b)
        } else {
            (Leg::B, change_b, -change_a)
        };
        steps.push(step(
            "legs_swing",
            vec![
                figure("change_a", change_a, Unit::Volts),
                figure("change_b", change_b, Unit::Volts),
            ],
            figure("swing", rise_v.min(fall_v), Unit::Volts),
            Source::CommonPractice,
        ));
        if rise_v >= SWING_V && fall_v >= SWING_V {
            evidence.push(NeutralEvidence::LegsSwing {
                rising,
                rise_v,
                fall_v,
            });
        }
    }
    if !evidence.is_empty() {
        findings.push(SupplyFinding::NeutralFailing { evidence });
    }
    if supply.loaded.is_none() && !dead {
        let nothing_else = findings.is_empty();
        findings.push(SupplyFinding::NotTestedUnderLoad { nothing_else });
    }
    findings.order_by_key(SupplyFinding::urgency);
    steps.extend(judged.iter().map(|judged| {
        let (least, most) = limits(supply.place, judged.reading, VoltageRange::A);
        step(
            "voltage_range",
            vec![
                figure("least", least, Unit::Volts),
                figure("most", most, Unit::Volts),
            ],
            figure("volts", judged.volts, Unit::Volts),
            RANGES_SOURCE,
        )
    }));
    Ok(SupplyJudgement {
        judged,
        findings,
        steps,
    })
}

/// What there is to say of where a voltage stands.
fn standing_finding(judged: &Judged) -> Option<SupplyFinding> {
    match judged.standing {
        Standing::RangeA => None,
        Standing::RangeB => Some(SupplyFinding::InRangeB(*judged)),
        Standing::Below | Standing::Above => Some(SupplyFinding::OutOfRange(*judged)),
    }
}

/// The limits of a range, volts, of the editions of ANSI C84.1 from 2011 on.
fn limits(place: VoltagePlace, reading: Reading, range: VoltageRange) -> (f64, f64) {
    // Both ranges of both places are in the table; nothing is within the limits of a row that is not.
    voltage_row(place, range).map_or((f64::INFINITY, f64::NEG_INFINITY), |row| match reading {
        Reading::Across => (row.least_across_v, row.most_across_v),
        Reading::LegToNeutral(_) => (row.least_leg_v, row.most_leg_v),
    })
}

/// Where a voltage stands.
fn standing(place: VoltagePlace, reading: Reading, volts: f64) -> Standing {
    let within = |range| {
        let (least, most) = limits(place, reading, range);
        volts >= least && volts <= most
    };
    if within(VoltageRange::A) {
        Standing::RangeA
    } else if within(VoltageRange::B) {
        Standing::RangeB
    } else if volts < limits(place, reading, VoltageRange::B).0 {
        Standing::Below
    } else {
        Standing::Above
    }
}

impl SupplyReadings {
    /// The leg without voltage, and what it shows, where leg to leg is no more than the other leg.
    fn lost_leg(&self) -> Option<(Leg, f64)> {
        let (leg, lost_v, left_v) = if self.a_neutral_v < self.b_neutral_v {
            (Leg::A, self.a_neutral_v, self.b_neutral_v)
        } else {
            (Leg::B, self.b_neutral_v, self.a_neutral_v)
        };
        let alone = (self.across_v - left_v).abs() <= lost_v + SUM_WITHIN_V;
        // Where the other leg is pulled up to both, it is the neutral that is gone.
        (lost_v < DEAD_V && left_v < PULLED_UP_V && alone).then_some((leg, lost_v))
    }

    fn check(&self) -> Result<(), SupplyRefusal> {
        let all = [
            Some(self.across_v),
            Some(self.a_neutral_v),
            Some(self.b_neutral_v),
            self.a_ground_v,
            self.b_ground_v,
        ];
        match all
            .into_iter()
            .flatten()
            .find(|volts| !(0.0..=1000.0).contains(volts))
        {
            Some(volts) => Err(SupplyRefusal::Volts { volts }),
            None => Ok(()),
        }
    }
}

/// Why a supply isn't judged.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum SupplyRefusal {
    /// A voltage that is negative, no number or absurd.
    #[error("{volts} V")]
    Volts {
        /// What was given, volts.
        volts: f64,
    },
}
