//! What was measured, where and in which situation.

use serde::Serialize;
use thiserror::Error;

use super::description::{Description, End, Side, Terminal};
use super::situation::{Situation, SituationRefusal};

/// The resistance of a digital voltmeter, ohms. Source: typical of what is sold, common practice.
pub const HIGH_IMPEDANCE_OHM: f64 = 10e6;

/// The resistance of a low-impedance voltmeter, ohms. Source: the lowest in use, common practice.
pub const LOW_IMPEDANCE_OHM: f64 = 3000.0;

/// The most that a reading may show: volts, amperes.
pub const MOST_SHOWN: f64 = 1000.0;

/// The most ohms that a reading may show.
pub const MOST_OHM: f64 = 1e9;

/// A point that a probe can touch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Point {
    /// An end of a conductor.
    End(End),
    /// A joint.
    Joint {
        /// The box.
        in_box: u32,
        /// The joint.
        joint: u32,
    },
    /// A terminal of a device.
    Terminal {
        /// The device.
        device: u32,
        /// The terminal.
        terminal: Terminal,
    },
    /// The neutral bar of the panel.
    NeutralBar,
    /// The ground bar of the panel: what "ground" means here.
    GroundBar,
    /// A metal pipe that is bonded at the service.
    Pipe,
}

/// A voltmeter by its resistance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Meter {
    /// [`HIGH_IMPEDANCE_OHM`].
    #[default]
    HighImpedance,
    /// [`LOW_IMPEDANCE_OHM`].
    LowImpedance,
}

impl Meter {
    /// Its resistance, ohms.
    pub const fn ohm(self) -> f64 {
        match self {
            Self::HighImpedance => HIGH_IMPEDANCE_OHM,
            Self::LowImpedance => LOW_IMPEDANCE_OHM,
        }
    }
}

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// A figure.
    Value {
        /// In volts, amperes or ohms.
        value: f64,
        /// The range it was shown on, in the same unit, where known.
        range: Option<f64>,
    },
    /// Over the limit of its range: for ohms, open.
    OverLimit {
        /// The range, where known.
        range: Option<f64>,
    },
}

/// What a clamp goes round.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Round {
    /// One conductor, at one of its ends.
    Conductor(End),
    /// A whole cable, at one of its ends: the net current.
    Cable {
        /// The cable.
        cable: u32,
        /// Where.
        side: Side,
    },
}

/// Where and with what is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Probe {
    /// Volts between two points.
    Volts {
        /// One point.
        from: Point,
        /// The other.
        to: Point,
        /// The meter.
        meter: Meter,
    },
    /// A non-contact tester at a point.
    Tester {
        /// The point.
        at: Point,
    },
    /// Amperes with a clamp, nothing opened.
    Amps {
        /// What it goes round.
        round: Round,
    },
    /// Ohms between two points, with everything off.
    Ohms {
        /// One point.
        from: Point,
        /// The other.
        to: Point,
    },
}

impl Probe {
    /// The points that it touches or is held to.
    pub fn points(&self) -> Vec<Point> {
        match *self {
            Self::Volts { from, to, .. } | Self::Ohms { from, to } => vec![from, to],
            Self::Tester { at } => vec![at],
            Self::Amps {
                round: Round::Conductor(end),
            } => vec![Point::End(end)],
            Self::Amps {
                round: Round::Cable { cable, side },
            } => vec![Point::End(End {
                cable,
                conductor: 0,
                side,
            })],
        }
    }
}

/// The outcome of a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// A meter's figure, in volts, amperes or ohms as the probe says.
    Shows(Shown),
    /// A tester's yes or no.
    Glows(bool),
}

/// A reading.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Reading {
    /// In which situation.
    pub situation: Situation,
    /// Where and with what.
    pub probe: Probe,
    /// What came of it.
    pub outcome: Outcome,
}

impl Reading {
    /// Checks that the reading is one that can be taken.
    ///
    /// # Errors
    /// [`ReadingRefusal`]: a situation or a point that isn't there, ohms where not everything is off, a figure that is none.
    pub fn check(&self, description: &Description) -> Result<(), ReadingRefusal> {
        check_probe(description, &self.situation, &self.probe)?;
        let ohms = matches!(self.probe, Probe::Ohms { .. });
        let most = if ohms { MOST_OHM } else { MOST_SHOWN };
        match (self.outcome, self.probe) {
            (Outcome::Glows(_), Probe::Tester { .. }) => Ok(()),
            (Outcome::Glows(_), _) | (Outcome::Shows(_), Probe::Tester { .. }) => {
                Err(ReadingRefusal::WrongOutcome)
            }
            (Outcome::Shows(Shown::OverLimit { .. }), Probe::Ohms { .. }) => Ok(()),
            (Outcome::Shows(Shown::OverLimit { .. }), _) => Err(ReadingRefusal::OverLimit),
            (Outcome::Shows(Shown::Value { value, range }), _) => {
                let fits = range.is_none_or(|range| range > 0.0 && range <= most && value <= range);
                if (0.0..=most).contains(&value) && fits {
                    Ok(())
                } else {
                    Err(ReadingRefusal::Figure { value, range })
                }
            }
        }
    }
}

/// Checks that something can be measured so in a situation.
///
/// # Errors
/// [`ReadingRefusal`]: a situation or a point that isn't there, the same point twice, ohms where not everything is off.
pub fn check_probe(
    description: &Description,
    situation: &Situation,
    probe: &Probe,
) -> Result<(), ReadingRefusal> {
    situation.check(description)?;
    for point in probe.points() {
        if !point.exists(description) {
            return Err(ReadingRefusal::NoPoint { point });
        }
    }
    match *probe {
        Probe::Volts { from, to, .. } | Probe::Ohms { from, to } if from == to => {
            Err(ReadingRefusal::SamePoint { point: from })
        }
        Probe::Ohms { .. } if !situation.everything_off => Err(ReadingRefusal::OhmsNotOff),
        _ => Ok(()),
    }
}

impl Point {
    /// Whether the description has it.
    pub fn exists(self, description: &Description) -> bool {
        match self {
            Self::End(end) => description.has_end(end),
            Self::Joint { in_box, joint } => !description.joint(in_box, joint).is_empty(),
            Self::Terminal { device, terminal } => description
                .device(device)
                .is_some_and(|device| device.kind.has(terminal)),
            Self::NeutralBar | Self::GroundBar | Self::Pipe => true,
        }
    }
}

/// Why a reading is none.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum ReadingRefusal {
    /// The situation names something that isn't there.
    #[error(transparent)]
    Situation(#[from] SituationRefusal),
    /// No such point.
    #[error("no {point:?}")]
    NoPoint {
        /// What was given.
        point: Point,
    },
    /// From a point to itself.
    #[error("from {point:?} to itself")]
    SamePoint {
        /// The point.
        point: Point,
    },
    /// A meter in ohms is never put on a part that is not off and proved dead.
    #[error("ohms while not everything is off")]
    OhmsNotOff,
    /// A yes or no from a meter, or a figure from a tester.
    #[error("the outcome doesn't fit the instrument")]
    WrongOutcome,
    /// Over the limit in volts or amperes: the range was too small, measure again.
    #[error("over the limit of its range")]
    OverLimit,
    /// A figure that is none: negative, too large, above its range.
    #[error("{value} on {range:?}")]
    Figure {
        /// What was given.
        value: f64,
        /// The range given.
        range: Option<f64>,
    },
}
