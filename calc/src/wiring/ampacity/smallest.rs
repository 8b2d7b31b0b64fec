//! The smallest conductor for a load.

use super::super::conductor::{Covering, Metal};
use super::super::tables::CONTINUOUS_FACTOR;
use super::*;

/// The largest load that is taken for a real one, amperes.
pub const MOST_LOAD_A: f64 = 6000.0;

/// A load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Load {
    /// Expected for 3 hours or more (Article 100), amperes.
    pub continuous_a: f64,
    /// The rest, amperes.
    pub other_a: f64,
}

impl Load {
    /// Both together, amperes.
    pub const fn total_a(&self) -> f64 {
        self.continuous_a + self.other_a
    }

    fn check(&self) -> Result<(), AmpacityRefusal> {
        let good = |a: f64| (0.0..=MOST_LOAD_A).contains(&a);
        if good(self.continuous_a) && good(self.other_a) && self.total_a() > 0.0 {
            return Ok(());
        }
        Err(AmpacityRefusal::Load {
            continuous_a: self.continuous_a,
            other_a: self.other_a,
        })
    }
}

/// The least rating for a load, amperes: all that is not continuous and 125 % of what is (210.19(A), 210.20(A)).
///
/// # Errors
/// [`AmpacityRefusal::Load`] for a load that is none.
///
/// ```
/// use calc::wiring::ampacity::{Load, min_rating_a};
/// assert_eq!(min_rating_a(Load { continuous_a: 10.0, other_a: 6.0 }), Ok(18.5));
/// ```
pub fn min_rating_a(load: Load) -> Result<f64, AmpacityRefusal> {
    load.check()?;
    Ok(load.other_a + CONTINUOUS_FACTOR * load.continuous_a)
}

/// A conductor wanted for a load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wanted {
    /// The load.
    pub load: Load,
    /// The breaker that is there, amperes; `None`: the smallest one for the load, of those that may feed what it feeds.
    pub breaker_a: Option<f64>,
    /// The metal.
    pub metal: Metal,
    /// The kind of cable or insulation.
    pub covering: Covering,
    /// Where it lies.
    pub conditions: Conditions,
}

/// The ratings of circuits with several receptacles, amperes: 210.18 (70-2017: 210.3); 10 A feeds no receptacles.
const RECEPTACLE_CIRCUITS_A: [f64; 5] = [15.0, 20.0, 30.0, 40.0, 50.0];

impl Wanted {
    /// The breakers that may be on it, amperes, from the smallest.
    fn breakers_a(&self) -> impl Iterator<Item = f64> {
        let several = self.conditions.feeds == Feeds::SeveralReceptacles;
        breaker_ratings_a(self.conditions.edition)
            .filter(move |a| !several || RECEPTACLE_CIRCUITS_A.contains(a))
    }

    /// No conductor mends a breaker that is below the load, of no standard rating, or none of a receptacle circuit.
    fn check_breaker(&self, breaker_a: f64, needed_a: f64) -> Result<(), AmpacityRefusal> {
        if !breaker_ratings_a(self.conditions.edition).any(|a| a == breaker_a) {
            return Err(AmpacityRefusal::Breaker { breaker_a });
        }
        if !self.breakers_a().any(|a| a == breaker_a) {
            return Err(AmpacityRefusal::NotForReceptacles { breaker_a });
        }
        if breaker_a < needed_a - ROUNDING_A {
            return Err(AmpacityRefusal::BelowLoad {
                breaker_a,
                needed_a,
            });
        }
        Ok(())
    }
}

/// Why a size is too small.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum TooSmall {
    /// Before correction and adjustment it carries less than the load with 125 % of what is continuous.
    BeforeCorrection {
        /// What it carries at the terminals, amperes.
        allowed_a: f64,
        /// What is needed, amperes.
        needed_a: f64,
    },
    /// After correction and adjustment it carries less than the load.
    AfterCorrection {
        /// What it carries, amperes.
        allowed_a: f64,
        /// What is needed, amperes.
        needed_a: f64,
    },
    /// The breaker is larger than the size allows.
    Breaker {
        /// The largest breaker it allows, amperes.
        largest_a: Option<f64>,
        /// The breaker, amperes.
        breaker_a: f64,
    },
}

/// The smallest conductor for a load.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SmallestConductor {
    /// The edition.
    pub edition: CodeEdition,
    /// The least rating for the load, amperes.
    pub min_rating_a: f64,
    /// The breaker taken, amperes.
    pub breaker_a: f64,
    /// The size.
    pub size: Size,
    /// What it carries.
    pub ampacity: Ampacity,
    /// The next smaller size made, and why it won't do; `None` where there is none.
    pub smaller: Option<(Size, TooSmall)>,
    /// The working.
    pub steps: Vec<Step>,
}

/// The smallest conductor that carries a load where it lies, behind its breaker.
///
/// Before correction it carries what is not continuous and 125 % of what is, at the rating of the terminals; after
/// correction and adjustment it carries the whole load (210.19(A)); and the breaker is no larger than it allows (240.4).
///
/// # Errors
/// As [`ampacity`]; [`AmpacityRefusal::Load`]; [`AmpacityRefusal::Breaker`],
/// [`AmpacityRefusal::NotForReceptacles`], [`AmpacityRefusal::BelowLoad`] for a breaker that no conductor mends;
/// [`AmpacityRefusal::NoSize`] where no size here will do.
///
/// # Example
/// 16 A in NM-B cable at 30 C on a 20 A breaker: 12 AWG copper.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::ampacity::{Conditions, Feeds, Load, Terminals, Wanted, smallest_conductor};
/// use calc::wiring::conductor::{Covering, Metal, Size};
/// use calc::wiring::tables::Ambient;
/// let wanted = Wanted {
///     load: Load { continuous_a: 0.0, other_a: 16.0 },
///     breaker_a: None,
///     metal: Metal::Copper,
///     covering: Covering::NmB,
///     conditions: Conditions {
///         edition: CodeEdition::E2023,
///         ambient: Ambient::Celsius(30.0),
///         carrying: 2,
///         terminals: Terminals::NotKnown,
///         feeds: Feeds::SeveralReceptacles,
///     },
/// };
/// assert_eq!(smallest_conductor(wanted).unwrap().size, Size::Awg12);
/// ```
pub fn smallest_conductor(wanted: Wanted) -> Result<SmallestConductor, AmpacityRefusal> {
    let min_a = min_rating_a(wanted.load)?;
    let edition = wanted.conditions.edition;
    let total_a = wanted.load.total_a();
    let breaker_a = match wanted.breaker_a {
        Some(a) if a.is_finite() && a > 0.0 && a <= MOST_LOAD_A => {
            wanted.check_breaker(a, min_a)?;
            a
        }
        Some(breaker_a) => return Err(AmpacityRefusal::Breaker { breaker_a }),
        None => wanted
            .breakers_a()
            .find(|a| *a >= min_a - ROUNDING_A)
            .ok_or(AmpacityRefusal::NoSize { needed_a: min_a })?,
    };
    let mut smaller = None;
    for &size in Size::ALL {
        let conductor = Conductor {
            size,
            metal: wanted.metal,
            covering: wanted.covering,
        };
        let answer = match ampacity(conductor, wanted.conditions) {
            Ok(answer) => answer,
            Err(AmpacityRefusal::Conductor(_)) => continue,
            Err(refusal) => return Err(refusal),
        };
        // Before correction the terminals, the cable and the insulation itself still bound it.
        let before_a = answer
            .terminal_a
            .min(answer.table_a)
            .min(answer.cable_a.unwrap_or(f64::INFINITY));
        let too_small = if before_a < min_a - ROUNDING_A {
            TooSmall::BeforeCorrection {
                allowed_a: before_a,
                needed_a: min_a,
            }
        } else if answer.ampacity_a < total_a - ROUNDING_A {
            TooSmall::AfterCorrection {
                allowed_a: answer.ampacity_a,
                needed_a: total_a,
            }
        } else if answer
            .breaker
            .rating_a
            .is_none_or(|largest_a| largest_a < breaker_a - ROUNDING_A)
        {
            TooSmall::Breaker {
                largest_a: answer.breaker.rating_a,
                breaker_a,
            }
        } else {
            let mut steps = vec![
                step(
                    "min_rating",
                    vec![
                        figure("continuous", wanted.load.continuous_a, Unit::Amps),
                        figure("continuous_factor", CONTINUOUS_FACTOR, Unit::Ratio),
                        figure("other", wanted.load.other_a, Unit::Amps),
                    ],
                    figure("min_rating", min_a, Unit::Amps),
                    Rule::BranchConductors.source(edition),
                ),
                step(
                    "breaker_for_load",
                    vec![figure("min_rating", min_a, Unit::Amps)],
                    figure("breaker", breaker_a, Unit::Amps),
                    if wanted.breaker_a.is_some() {
                        Source::Entered
                    } else {
                        Rule::StandardRatings.source(edition)
                    },
                ),
            ];
            steps.extend(answer.steps.iter().cloned());
            return Ok(SmallestConductor {
                edition,
                min_rating_a: min_a,
                breaker_a,
                size,
                ampacity: answer,
                smaller,
                steps,
            });
        };
        smaller = Some((size, too_small));
    }
    Err(AmpacityRefusal::NoSize {
        needed_a: min_a.max(total_a),
    })
}
