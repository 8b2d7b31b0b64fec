//! What a conductor may carry where it lies, the largest breaker for it, and the smallest conductor for a load.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::code::Rule;
use super::conductor::{Conductor, ConductorRefusal, Rating, Size};
use super::steps::{figure, step};
use super::tables::{
    Ambient, ROUNDING_A, ambient_row, ampacity_a, breaker_at_least_a, breaker_at_most_a,
    breaker_ratings_a, count_factor, small_conductor,
};

mod breaker;
mod smallest;

pub use breaker::{BreakerGoverned, BreakerNote, LargestBreaker};
pub use smallest::{Load, SmallestConductor, TooSmall, Wanted, min_rating_a, smallest_conductor};

/// The coldest air taken for a real one, degrees C (-76 F).
pub const COLDEST_C: f64 = -60.0;

/// The most current-carrying conductors together.
pub const MOST_CARRYING: u32 = 1000;

/// The next standard rating above the ampacity is allowed up to this, amperes: 240.4(B), the figure from memory.
pub const NEXT_RATING_MOST_A: f64 = 800.0;

/// What the terminals at both ends are rated for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Terminals {
    /// 60 C.
    #[serde(rename = "60")]
    C60,
    /// Marked 75 C.
    #[serde(rename = "75")]
    C75,
    /// Not known: 60 C for 14 to 1 AWG, 75 C for larger conductors (110.14(C)(1)).
    #[default]
    NotKnown,
}

/// What the circuit feeds, for the choice between the rating below and above the ampacity.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Feeds {
    /// More than one receptacle for cord-and-plug loads: the breaker is no larger than the ampacity.
    #[default]
    SeveralReceptacles,
    /// Anything else: the next standard rating is allowed.
    Other,
}

/// A conductor where it lies.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Conditions {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// The air round it.
    pub ambient: Ambient,
    /// Current-carrying conductors that count together: see [`count`](super::bundle::count).
    pub carrying: u32,
    /// The terminals.
    pub terminals: Terminals,
    /// What it feeds.
    pub feeds: Feeds,
}

/// Which step set the ampacity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Governed {
    /// The table, with neither correction nor adjustment.
    Table,
    /// The table with the correction for the ambient temperature.
    Ambient,
    /// The table with the adjustment for the number of conductors.
    Count,
    /// The table with both.
    AmbientAndCount,
    /// The terminals.
    Terminals,
    /// The kind of cable.
    Cable,
}

/// What a conductor may carry.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ampacity {
    /// The edition.
    pub edition: CodeEdition,
    /// The conductor.
    pub conductor: Conductor,
    /// Where it lies.
    pub conditions: Conditions,
    /// The table, in the column of the conductor's own rating, amperes.
    pub table_a: f64,
    /// Factor for the ambient temperature.
    pub ambient_factor: f64,
    /// Factor for the number of conductors.
    pub count_factor: f64,
    /// The table with both factors, amperes.
    pub corrected_a: f64,
    /// The rating of the terminals as taken.
    pub terminal_rating: Rating,
    /// The most that the terminals allow, amperes.
    pub terminal_a: f64,
    /// The most that the kind of cable allows, amperes; `None` where it adds no limit.
    pub cable_a: Option<f64>,
    /// The least of these, amperes.
    pub ampacity_a: f64,
    /// Which of them it is.
    pub governed: Governed,
    /// The largest breaker.
    pub breaker: LargestBreaker,
    /// The working.
    pub steps: Vec<Step>,
}

/// What a conductor may carry where it lies, and the largest standard breaker for it.
///
/// The table value in the column of the conductor's own rating, times the factor for the ambient temperature and the
/// factor for the number of conductors, both of the same column (310.15); no more than the table value at the rating
/// of the terminals (110.14(C)); for NM cable no more than the 60 C column (334.80). The breaker: the standard rating
/// at or above it, below it for several receptacles (240.4(B)), and no more than 240.4(D).
///
/// # Errors
/// [`AmpacityRefusal`]: a conductor that no circuit may have, an ambient temperature outside the table or too hot for
/// the insulation, no or too many conductors.
///
/// # Example
/// A 12-2 NM-B cable in an attic at 122 F: 30 x 0.82 = 24.6 A, but the 60 C column allows 20 A.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::ampacity::{Conditions, Feeds, Governed, Terminals, ampacity};
/// use calc::wiring::conductor::{Conductor, Covering, Metal, Size};
/// use calc::wiring::tables::Ambient;
/// let cable = Conductor { size: Size::Awg12, metal: Metal::Copper, covering: Covering::NmB };
/// let attic = Conditions {
///     edition: CodeEdition::E2023,
///     ambient: Ambient::Fahrenheit(122.0),
///     carrying: 2,
///     terminals: Terminals::C60,
///     feeds: Feeds::SeveralReceptacles,
/// };
/// let answer = ampacity(cable, attic).unwrap();
/// assert!((answer.corrected_a - 24.6).abs() < 1e-9);
/// assert_eq!((answer.ampacity_a, answer.breaker.rating_a), (20.0, Some(20.0)));
/// ```
pub fn ampacity(conductor: Conductor, conditions: Conditions) -> Result<Ampacity, AmpacityRefusal> {
    conductor.check()?;
    let edition = conditions.edition;
    let Conductor {
        size,
        metal,
        covering,
    } = conductor;
    let rating = covering.rating();
    let (degrees, unit, coldest) = match conditions.ambient {
        Ambient::Celsius(degrees) => (degrees, Unit::DegC, COLDEST_C),
        Ambient::Fahrenheit(degrees) => (degrees, Unit::DegF, COLDEST_C * 1.8 + 32.0),
    };
    if !degrees.is_finite() || degrees < coldest {
        return Err(AmpacityRefusal::Ambient {
            ambient: conditions.ambient,
        });
    }
    let row = ambient_row(conditions.ambient).ok_or(AmpacityRefusal::Ambient {
        ambient: conditions.ambient,
    })?;
    let ambient_factor =
        row.factor
            .get(rating.column())
            .copied()
            .flatten()
            .ok_or(AmpacityRefusal::TooHot {
                ambient: conditions.ambient,
                rating,
            })?;
    if conditions.carrying == 0 || conditions.carrying > MOST_CARRYING {
        return Err(AmpacityRefusal::Carrying {
            carrying: conditions.carrying,
        });
    }
    let table = |column: Rating| {
        ampacity_a(size, metal, column).ok_or(ConductorRefusal::NotInTable { size, metal })
    };
    let table_a = table(rating)?;
    let count_factor = count_factor(conditions.carrying);
    let corrected_a = table_a * ambient_factor * count_factor;
    let terminal_rating = match conditions.terminals {
        Terminals::C60 => Rating::C60,
        Terminals::C75 => Rating::C75,
        Terminals::NotKnown if size <= Size::Awg1 => Rating::C60,
        Terminals::NotKnown => Rating::C75,
    };
    let terminal_a = table(terminal_rating)?;
    let cable_a = if covering.is_nm() {
        Some(table(Rating::C60)?)
    } else {
        None
    };

    let governed = if cable_a.is_some_and(|a| a < corrected_a - ROUNDING_A && a < terminal_a) {
        Governed::Cable
    } else if terminal_a < corrected_a - ROUNDING_A {
        Governed::Terminals
    } else {
        match (ambient_factor != 1.0, count_factor != 1.0) {
            (false, false) => Governed::Table,
            (true, false) => Governed::Ambient,
            (false, true) => Governed::Count,
            (true, true) => Governed::AmbientAndCount,
        }
    };
    let ampacity_a = corrected_a
        .min(terminal_a)
        .min(cable_a.unwrap_or(f64::INFINITY));

    let mut steps = vec![
        step(
            "table_ampacity",
            vec![figure("insulation", rating.celsius(), Unit::DegC)],
            figure("table", table_a, Unit::Amps),
            Rule::Ampacities.source(edition),
        ),
        step(
            "ambient_factor",
            vec![
                figure("ambient", degrees, unit),
                figure("insulation", rating.celsius(), Unit::DegC),
            ],
            figure("ambient_factor", ambient_factor, Unit::Ratio),
            Rule::AmbientFactor.source(edition),
        ),
        step(
            "count_factor",
            vec![figure(
                "carrying",
                f64::from(conditions.carrying),
                Unit::Count,
            )],
            figure("count_factor", count_factor, Unit::Ratio),
            Rule::CountFactor.source(edition),
        ),
        step(
            "corrected_ampacity",
            vec![
                figure("table", table_a, Unit::Amps),
                figure("ambient_factor", ambient_factor, Unit::Ratio),
                figure("count_factor", count_factor, Unit::Ratio),
            ],
            figure("corrected", corrected_a, Unit::Amps),
            Source::Arithmetic,
        ),
        step(
            "terminal_limit",
            vec![figure("terminals", terminal_rating.celsius(), Unit::DegC)],
            figure("terminal_limit", terminal_a, Unit::Amps),
            Rule::Terminals.source(edition),
        ),
    ];
    if let Some(cable_a) = cable_a {
        steps.push(step(
            "cable_limit",
            vec![figure("column", Rating::C60.celsius(), Unit::DegC)],
            figure("cable_limit", cable_a, Unit::Amps),
            Rule::NmCable.source(edition),
        ));
    }
    let mut limits = vec![
        figure("corrected", corrected_a, Unit::Amps),
        figure("terminal_limit", terminal_a, Unit::Amps),
    ];
    limits.extend(cable_a.map(|a| figure("cable_limit", a, Unit::Amps)));
    steps.push(step(
        "ampacity",
        limits,
        figure("ampacity", ampacity_a, Unit::Amps),
        Source::Arithmetic,
    ));
    let breaker = breaker::largest(conductor, conditions, ampacity_a, &mut steps);
    Ok(Ampacity {
        edition,
        conductor,
        conditions,
        table_a,
        ambient_factor,
        count_factor,
        corrected_a,
        terminal_rating,
        terminal_a,
        cable_a,
        ampacity_a,
        governed,
        breaker,
        steps,
    })
}

/// Why there is no ampacity.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum AmpacityRefusal {
    /// A conductor that no circuit may have.
    #[error(transparent)]
    Conductor(#[from] ConductorRefusal),
    /// An ambient temperature outside the table, or no temperature.
    #[error("ambient {ambient:?}")]
    Ambient {
        /// What was given.
        ambient: Ambient,
    },
    /// A conductor of this rating may not be used where it is so hot.
    #[error("{ambient:?} is too hot for {rating:?}")]
    TooHot {
        /// What was given.
        ambient: Ambient,
        /// The rating of the conductor.
        rating: Rating,
    },
    /// No conductor that carries current, or more than [`MOST_CARRYING`].
    #[error("{carrying} conductors")]
    Carrying {
        /// What was given.
        carrying: u32,
    },
    /// A load that is none: negative, no number, or nothing.
    #[error("load {continuous_a} A continuous, {other_a} A other")]
    Load {
        /// Continuous, amperes.
        continuous_a: f64,
        /// Other, amperes.
        other_a: f64,
    },
    /// A breaker that is none, or has no standard rating (240.6(A)).
    #[error("breaker of {breaker_a} A")]
    Breaker {
        /// What was given, amperes.
        breaker_a: f64,
    },
    /// A breaker that may not feed several receptacles (210.18; 70-2017: 210.3).
    #[error("not for receptacles: {breaker_a} A")]
    NotForReceptacles {
        /// What was given, amperes.
        breaker_a: f64,
    },
    /// A breaker below the load with 125 % of what is continuous (210.20(A)).
    #[error("breaker of {breaker_a} A for {needed_a} A")]
    BelowLoad {
        /// What was given, amperes.
        breaker_a: f64,
        /// What it must be at least, amperes.
        needed_a: f64,
    },
    /// No size here carries the load.
    #[error("no size carries {needed_a} A")]
    NoSize {
        /// What the conductor must carry, amperes.
        needed_a: f64,
    },
}
