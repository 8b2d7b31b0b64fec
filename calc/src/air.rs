//! Air: how much an exhaust fan must move, what its duct leaves of it, and what it adds to a circuit.
//!
//! - [`rate`] by area, by fixture, and the least the code has;
//! - [`duct`] friction of the duct, and how long the code lets it be;
//! - [`fan`] the flow where fan and duct meet;
//! - [`load`] amperes for its circuit.
//!
//! The locally adopted code and the maker's instructions govern.

use serde::Serialize;
use thiserror::Error;

use crate::finish::steps::{figure, step};
use crate::working::{Source, Step, Unit};

pub mod duct;

pub mod fan;

pub mod load;

pub mod rate;

use duct::{Duct, MostLength};
use fan::{Curve, FlowLeft};
use rate::{Rate, RateAsk};

/// Litres per second in a cubic foot per minute: 28.316 846 592 L in a cubic foot (NIST SP 811, appendix B), 60 s.
pub const LITERS_PER_SECOND_PER_CFM: f64 = 28.316_846_592 / 60.0;

/// A flow in litres per second.
///
/// ```
/// assert!((calc::air::liters_per_second(50.0) - 23.597).abs() < 0.001);
/// ```
pub fn liters_per_second(cfm: f64) -> f64 {
    cfm * LITERS_PER_SECOND_PER_CFM
}

/// A number of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum AirField {
    /// Floor area.
    Area,
    /// A count of fixtures.
    Fixtures,
    /// A duct's diameter.
    Diameter,
    /// A duct's length.
    Length,
    /// A count of elbows.
    Elbows,
    /// What an elbow is worth.
    ElbowLength,
    /// What the cap is worth.
    CapLength,
    /// A flow.
    Flow,
    /// A static pressure.
    Static,
    /// The pressure at which a fan moves nothing.
    Shutoff,
    /// A side of a duct that is not round.
    Side,
    /// Watts.
    Watts,
    /// Volts.
    Volts,
    /// Amperes.
    Amps,
}

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum AirRefusal {
    /// A number that is none, below nothing, or out of measure.
    #[error("{field:?} of {given}")]
    NotAnAmount {
        /// Which.
        field: AirField,
        /// What it held.
        given: f64,
    },
    /// Must be more than nothing.
    #[error("{field:?} is nothing")]
    Nothing {
        /// Which.
        field: AirField,
    },
    /// No rating point.
    #[error("no rating point")]
    NoRating,
    /// More rating points than [`fan::MOST_POINTS`].
    #[error("{count} rating points")]
    TooManyPoints {
        /// How many.
        count: usize,
    },
    /// A fan that moves more against more pressure.
    #[error("{more_cfm} cfm at {more_inwg} in is not under {less_cfm} cfm at {less_inwg} in")]
    NotFalling {
        /// The lower static pressure, inches of water.
        less_inwg: f64,
        /// The flow there.
        less_cfm: f64,
        /// The higher static pressure, inches of water.
        more_inwg: f64,
        /// The flow there.
        more_cfm: f64,
    },
    /// A shutoff pressure at or below the pressure of a rating point.
    #[error("shutoff at {shutoff_inwg} in, and {cfm} cfm at {static_inwg} in")]
    ShutoffTooLow {
        /// The shutoff, inches of water.
        shutoff_inwg: f64,
        /// The rating point's pressure, inches of water.
        static_inwg: f64,
        /// Its flow.
        cfm: f64,
    },
}

pub(crate) fn amount(field: AirField, given: f64, most: f64) -> Result<(), AirRefusal> {
    if given >= 0.0 && given <= most {
        Ok(())
    } else {
        Err(AirRefusal::NotAnAmount { field, given })
    }
}

/// As [`amount`], and not nothing; `least` keeps numbers in measure.
pub(crate) fn more(field: AirField, given: f64, least: f64, most: f64) -> Result<(), AirRefusal> {
    if given == 0.0 {
        Err(AirRefusal::Nothing { field })
    } else if given < least {
        Err(AirRefusal::NotAnAmount { field, given })
    } else {
        amount(field, given, most)
    }
}

/// A room, its fan and its duct.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ExhaustAsk {
    /// The room.
    pub rate: RateAsk,
    /// The duct.
    pub duct: Duct,
    /// The fan.
    pub fan: Curve,
}

/// Whether the fan moves enough through its duct.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Exhaust {
    /// What was asked.
    pub ask: ExhaustAsk,
    /// What the room needs.
    pub rate: Rate,
    /// What the duct leaves of the fan's flow.
    pub flow: FlowLeft,
    /// What is needed less what is moved, at least and at most: above nothing where it falls short.
    pub short_by_least_cfm: f64,
    /// See `short_by_least_cfm`.
    pub short_by_most_cfm: f64,
    /// How the flow stands against the need.
    pub verdict: Verdict,
    /// The flow that the fan is rated for at 0.25 in of water or more, if some rating point is; read off the lines between points.
    pub rated_at_code_cfm: Option<f64>,
    /// How long the code lets this duct be, its elbows taken off; none without a rating at 0.25 in, or above its table.
    pub code_length: Option<MostLength>,
    /// Whether the duct is within that.
    pub code_length_held: Option<bool>,
}

/// How a flow stands against the need.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// It is met.
    Enough,
    /// It is not met.
    Short,
    /// The rating points don't tell: it may or may not be met.
    Unknown,
}

/// The need, the flow through the duct, and the code's length for it.
///
/// # Errors
/// [`AirRefusal`].
///
/// # Example
/// A bath of 5 by 8 ft needs 50 cfm. A fan rated 80 cfm at 0.1 in and 50 at 0.25 in, with 10 ft of smooth 4 in duct, one
/// elbow at 15 ft and a cap at 30 ft, moves somewhat less than 70.
/// ```
/// use calc::air::duct::{Duct, DuctKind};
/// use calc::air::fan::{Curve, RatingPoint};
/// use calc::air::rate::{ExhaustRoom, RateAsk};
/// use calc::air::{ExhaustAsk, Verdict, exhaust};
/// let point = |static_inwg, cfm| RatingPoint { static_inwg, cfm };
/// let answer = exhaust(&ExhaustAsk {
///     rate: RateAsk::new(ExhaustRoom::Bathroom, 40.0),
///     duct: Duct { diameter_in: 4.0, length_ft: 10.0, kind: DuctKind::Smooth, elbows: 1, elbow_ft: 15.0, cap_ft: 30.0 },
///     fan: Curve { points: vec![point(0.1, 80.0), point(0.25, 50.0)], shutoff_inwg: None },
/// })?;
/// assert_eq!((answer.rate.required_cfm, answer.verdict), (50.0, Verdict::Enough));
/// assert!((65.0..70.0).contains(&answer.flow.about_cfm));
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn exhaust(ask: &ExhaustAsk) -> Result<Exhaust, AirRefusal> {
    let rate = rate::rate(&ask.rate)?;
    let flow = fan::flow_left(&ask.fan, &ask.duct)?;
    let need = rate.required_cfm;
    let verdict = if flow.least_cfm >= need * (1.0 - 1e-9) {
        Verdict::Enough
    } else if flow.most_cfm < need {
        Verdict::Short
    } else {
        Verdict::Unknown
    };
    let rated_at_code_cfm = ask.fan.rated_cfm(rate::CODE_STATIC_INWG);
    let code_length = match rated_at_code_cfm {
        Some(cfm) => duct::code_length(&ask.duct, cfm)?,
        None => None,
    };
    Ok(Exhaust {
        short_by_least_cfm: need - flow.most_cfm,
        short_by_most_cfm: need - flow.least_cfm,
        verdict,
        rated_at_code_cfm,
        code_length_held: code_length.map(|most| most.holds(ask.duct.length_ft)),
        code_length,
        rate,
        flow,
        ask: ask.clone(),
    })
}

impl Exhaust {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let mut steps = self.rate.working();
        steps.extend(self.flow.working());
        if let (Some(cfm), Some(MostLength::Ft(most_ft))) =
            (self.rated_at_code_cfm, self.code_length)
        {
            steps.push(step(
                "duct_code_length",
                vec![
                    figure("rated_flow", cfm, Unit::Cfm),
                    figure("diameter", self.ask.duct.diameter_in, Unit::In),
                    figure("elbows", f64::from(self.ask.duct.elbows), Unit::Count),
                    figure("elbow_deduction", duct::ELBOW_DEDUCTION_FT, Unit::Ft),
                ],
                figure("duct_length_allowed", most_ft, Unit::Ft),
                Source::Published("IRC 2021 Table M1504.2"),
            ));
        }
        steps
    }
}
