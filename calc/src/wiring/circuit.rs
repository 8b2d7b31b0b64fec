//! A circuit, rule by rule: what is on it, what is to be added, and whether breaker, conductor, boxes and neutral take it.

use crate::order::Order;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::ampacity::{Ampacity, AmpacityRefusal, Conditions, Feeds, Terminals, ampacity};
use super::box_fill::{BoxRefusal, Contents, Vessel, box_fill};
use super::code::Rule;
use super::conductor::Conductor;
use super::impedance::Wire;
use super::neutral::{Neutral, NeutralFinding, NeutralRefusal, neutral_current};
use super::steps::{figure, step};
use super::tables::{Ambient, CONTINUOUS_FACTOR, LIGHTING_VA_PER_FT2, MOTOR_FACTOR, ROUNDING_A};
use super::voltage_drop::{DropRefusal, MOST_CURRENT_A, MOST_VOLTS};

mod judge;
mod loads;

pub use judge::{Check, Compared, NotJudged, Outcome, Verdict};
pub use loads::{Amounts, LightingCircuits, lighting_circuits, most_continuous_w};

/// What a load is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadKind {
    /// A luminaire.
    Luminaire,
    /// An appliance on a cord and plug that isn't fastened in place.
    #[default]
    CordAndPlug,
    /// Equipment fastened in place that is none of the others.
    FixedInPlace,
    /// A bathroom or laundry exhaust fan, fastened in place.
    ExhaustFan,
    /// A storage water heater of 120 gal or less: counts as continuous.
    WaterHeater,
    /// Fixed electric space heating: counts as continuous.
    SpaceHeating,
    /// A motor, fastened in place.
    Motor,
}

impl LoadKind {
    /// Whether it is fastened in place and no luminaire.
    pub const fn is_fixed(self) -> bool {
        !matches!(self, Self::Luminaire | Self::CordAndPlug)
    }
}

/// What a load takes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Takes {
    /// Amperes.
    Amps(f64),
    /// Watts at the voltage of the circuit; not of a motor.
    Watts(f64),
}

/// A load on the circuit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct CircuitLoad {
    /// Its row id.
    pub id: u32,
    /// What it takes.
    pub takes: Takes,
    /// What it is.
    pub kind: LoadKind,
    /// Expected for 3 hours or more (Article 100).
    pub continuous: bool,
    /// To be added, and not there yet.
    pub planned: bool,
    /// At the end of which stretch of the run it is, from 0.
    pub stretch: usize,
}

/// Circuits that a dwelling must have, with rules of their own.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Purpose {
    /// Any other.
    #[default]
    General,
    /// Small appliances in kitchen and dining rooms.
    SmallAppliance,
    /// Laundry.
    Laundry,
    /// Bathroom receptacles.
    Bathroom {
        /// Whether it feeds one bathroom and nothing else: then other equipment of that bathroom may be on it.
        one_bathroom: bool,
    },
}

/// A box on the way.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CircuitBox {
    /// Its row id.
    pub id: u32,
    /// The box.
    pub vessel: Vessel,
    /// What is in it, the additions among it.
    pub contents: Contents,
}

/// A circuit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Circuit {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// The rating of the breaker, amperes.
    pub breaker_a: f64,
    /// The voltage, volts: 120 or 240.
    pub volts: f64,
    /// Whether two hots run in it, so that it has 240 V.
    pub two_hots: bool,
    /// Listed to carry its whole rating continuously (210.20(A) exception).
    pub full_rating: bool,
    /// What it is for.
    pub purpose: Purpose,
    /// Receptacles on the pole of its breaker, the planned ones among them.
    pub receptacles: u32,
    /// Outlets of any kind on that pole, the planned ones among them.
    pub outlets: u32,
    /// Its conductor; the smallest one on the way.
    pub conductor: Conductor,
    /// The air round the conductor.
    pub ambient: Ambient,
    /// Current-carrying conductors that count together.
    pub carrying: u32,
    /// The terminals.
    pub terminals: Terminals,
    /// Metal, method and temperature, for the drop.
    pub wire: Wire,
    /// The stretches of the run, feet one way; none: the drop is not judged.
    pub stretches_ft: Vec<f64>,
    /// What the feeder loses already, percent.
    pub feeder_percent: f64,
    /// Its loads.
    pub loads: Vec<CircuitLoad>,
    /// Loads on the same pole of the breaker that another conductor feeds: they count for the breaker alone.
    pub beside: Vec<CircuitLoad>,
    /// Boxes on the way.
    pub boxes: Vec<CircuitBox>,
    /// The neutral it returns on, where others do as well.
    pub neutral: Option<Neutral>,
    /// The same with everything that is planned on it; `None` where nothing is.
    pub neutral_after: Option<Neutral>,
}

/// A circuit, judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CircuitAnswer {
    /// The edition.
    pub edition: CodeEdition,
    /// What is on the pole of its breaker now.
    pub now: Amounts,
    /// With the additions; `None` where none is planned.
    pub after: Option<Amounts>,
    /// What its conductor may carry, where that could be told.
    pub ampacity: Option<Ampacity>,
    /// One verdict for each rule; what fails stands first.
    pub verdicts: Vec<Verdict>,
    /// The working.
    pub steps: Vec<Step>,
}

impl CircuitAnswer {
    /// Whether any rule fails.
    pub fn fails(&self) -> bool {
        self.verdicts
            .iter()
            .any(|verdict| verdict.outcome == Outcome::Fails)
    }
}

/// Judges a circuit, as it is and with the planned additions.
///
/// What can't be judged for want of a good entry (a box, the run, the conductor, the neutral) says so in its own verdict
/// and leaves the others standing.
///
/// # Errors
/// [`CircuitRefusal`]: a breaker, voltage or load that is none.
pub fn judge(circuit: &Circuit) -> Result<CircuitAnswer, CircuitRefusal> {
    circuit.check()?;
    let planned = circuit.all_loads().any(|load| load.planned);
    let now = circuit.on_pole(false);
    let after = planned.then(|| circuit.on_pole(true));
    let conditions = Conditions {
        edition: circuit.edition,
        ambient: circuit.ambient,
        carrying: circuit.carrying,
        terminals: circuit.terminals,
        feeds: if circuit.receptacles > 1 {
            Feeds::SeveralReceptacles
        } else {
            Feeds::Other
        },
    };
    let ampacity = ampacity(circuit.conductor, conditions);
    let mut steps = loads::steps(circuit, after.as_ref().unwrap_or(&now));
    if let Ok(ampacity) = &ampacity {
        steps.extend(ampacity.steps.iter().cloned());
    }
    let mut verdicts = judge::verdicts(circuit, &ampacity, &mut steps);
    // Stable: within one outcome the rules keep their order.
    verdicts.order_by_key(|verdict| verdict.outcome);
    Ok(CircuitAnswer {
        edition: circuit.edition,
        now,
        after,
        ampacity: ampacity.ok(),
        verdicts,
        steps,
    })
}

impl Circuit {
    /// Every load on the pole of its breaker.
    fn all_loads(&self) -> impl Iterator<Item = &CircuitLoad> {
        self.loads.iter().chain(&self.beside)
    }

    /// What is on the pole of its breaker.
    fn on_pole(&self, planned: bool) -> Amounts {
        loads::amounts(self, true, planned)
    }

    /// What its own conductor feeds.
    fn on_conductor(&self, planned: bool) -> Amounts {
        loads::amounts(self, false, planned)
    }

    /// Whether it feeds more than one thing: the rules of Article 210 for circuits of two or more outlets hold.
    fn several(&self) -> bool {
        self.outlets > 1 || self.receptacles > 1 || self.all_loads().count() > 1
    }

    fn check(&self) -> Result<(), CircuitRefusal> {
        if !(self.breaker_a > 0.0 && self.breaker_a <= MOST_CURRENT_A) {
            return Err(CircuitRefusal::Breaker {
                rating_a: self.breaker_a,
            });
        }
        if !(self.volts > 0.0 && self.volts <= MOST_VOLTS) {
            return Err(CircuitRefusal::Volts { volts: self.volts });
        }
        for load in self.all_loads() {
            if load.kind == LoadKind::Motor && matches!(load.takes, Takes::Watts(_)) {
                return Err(CircuitRefusal::MotorWatts { id: load.id });
            }
            let amps = loads::amps(self, load);
            if !(0.0..=MOST_CURRENT_A).contains(&amps) {
                return Err(CircuitRefusal::Load {
                    id: load.id,
                    takes: load.takes,
                });
            }
        }
        Ok(())
    }
}

/// Why a circuit isn't judged.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum CircuitRefusal {
    /// A rating that is none.
    #[error("breaker of {rating_a} A")]
    Breaker {
        /// What was given, amperes.
        rating_a: f64,
    },
    /// A voltage that is none.
    #[error("{volts} V")]
    Volts {
        /// What was given, volts.
        volts: f64,
    },
    /// A load that is negative, no number or absurd.
    #[error("load {id}: {takes:?}")]
    Load {
        /// The load.
        id: u32,
        /// What was given.
        takes: Takes,
    },
    /// Watts of a motor: its current is that of the tables for its horsepower (430.6(A)(1), Table 430.248), and watts
    /// over volts fall short of it by power factor and efficiency.
    #[error("motor {id} in watts")]
    MotorWatts {
        /// The load.
        id: u32,
    },
    /// An area that is none.
    #[error("{area_ft2} ft2")]
    Area {
        /// What was given, square feet.
        area_ft2: f64,
    },
}
