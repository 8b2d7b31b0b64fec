//! The current in a neutral that several circuits return on, and what is wrong with sharing it.

use crate::order::Order;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::code::Rule;
use super::panel::{Breaker, BreakerForm, Leg, leg_of, tie_reaches};
use super::steps::{figure, step};
use super::tables::ROUNDING_A;
use super::voltage_drop::{MOST_CURRENT_A, MOST_VOLTS};

/// A hot whose loads return on the neutral.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Returning {
    /// The id of its breaker.
    pub breaker: u32,
    /// Which panel the breaker is in.
    pub panel: u32,
    /// The space of this pole.
    pub space: u32,
    /// Whether the breaker is half of a tandem.
    pub tandem: bool,
    /// Whether the pole is one of a two-pole breaker.
    pub two_pole: bool,
    /// The breaker that a handle tie joins it to.
    pub tied_to: Option<u32>,
    /// The rating of its breaker, amperes.
    pub rating_a: f64,
    /// What its loads from leg to neutral take, amperes.
    pub current_a: f64,
    /// The part of that which electronic loads take (supplies, dimmers, LED lamps), amperes.
    pub electronic_a: f64,
    /// Whether it also feeds loads from leg to leg.
    pub leg_to_leg_loads: bool,
}

impl Returning {
    /// A pole of a breaker: `pole` 0 for its first space, 1 for the second of two poles.
    ///
    /// # Errors
    /// [`NeutralRefusal::NoPole`] for a pole that the breaker doesn't have.
    pub fn of(
        breaker: &Breaker,
        pole: usize,
        panel: u32,
        current_a: f64,
        electronic_a: f64,
    ) -> Result<Self, NeutralRefusal> {
        let space = *breaker.spaces().get(pole).ok_or(NeutralRefusal::NoPole {
            breaker: breaker.id,
            pole,
        })?;
        Ok(Self {
            breaker: breaker.id,
            panel,
            space,
            tandem: matches!(breaker.form, BreakerForm::Tandem(_)),
            two_pole: breaker.form == BreakerForm::TwoPole,
            tied_to: breaker.tied_to,
            rating_a: breaker.rating_a,
            current_a,
            electronic_a,
            leg_to_leg_loads: false,
        })
    }

    /// The leg.
    pub const fn leg(&self) -> Leg {
        leg_of(self.space)
    }

    /// Whether one action opens both: they are of one breaker, or a handle tie joins them that can be there.
    fn opens_with(&self, other: &Self) -> bool {
        let tied = self.tied_to == Some(other.breaker) || other.tied_to == Some(self.breaker);
        let poles = !self.two_pole && !other.two_pole;
        self.panel == other.panel
            && (self.breaker == other.breaker
                || tied
                    && poles
                    && tie_reaches(self.space, other.space)
                    && self.rating_a == other.rating_a)
    }
}

/// A neutral and what returns on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Neutral {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// The hots that return on it.
    pub returns: Vec<Returning>,
    /// What it may carry, amperes, where known.
    pub ampacity_a: Option<f64>,
    /// Whether it runs with all its hots in one cable or raceway; `None`: not known.
    pub runs_with_hots: Option<bool>,
    /// Whether it is spliced with pigtails to the devices, so that taking one out leaves it whole; `None`: not known.
    pub pigtailed: Option<bool>,
}

/// What is remarkable about a neutral; the worst first.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NeutralFinding {
    /// More may flow than it may carry.
    Overloaded {
        /// The most that may flow, amperes.
        current_a: f64,
        /// What it may carry, amperes.
        ampacity_a: f64,
        /// The section.
        section: &'static str,
    },
    /// Two hots on one leg: their currents add in the neutral, and it is no multiwire circuit.
    SameLeg {
        /// The leg.
        leg: Leg,
        /// The breakers.
        breakers: Vec<u32>,
        /// What they add up to, amperes.
        sum_a: f64,
        /// The section that allows one circuit only.
        section: &'static str,
        /// The section that says what a multiwire circuit is.
        definition: &'static str,
    },
    /// The two hots are the halves of a tandem breaker, which are always on one leg.
    TandemPair {
        /// The breakers.
        breakers: Vec<u32>,
        /// The section.
        section: &'static str,
    },
    /// More circuits than one multiwire circuit on one neutral.
    TooManyCircuits {
        /// How many hots.
        hots: usize,
        /// The section.
        section: &'static str,
    },
    /// Hots from different panels.
    DifferentPanels {
        /// The section.
        section: &'static str,
    },
    /// No one action opens all the hots: the neutral stays live when one breaker is off.
    NoCommonDisconnect {
        /// The breakers.
        breakers: Vec<u32>,
        /// The section.
        section: &'static str,
    },
    /// Loads from leg to leg, without a breaker that opens both hots together.
    LegToLegLoads {
        /// The section.
        section: &'static str,
    },
    /// The neutral runs apart from a hot: cables and metal between them carry a net current.
    RunsApart {
        /// The section.
        section: &'static str,
    },
    /// Taking out a device opens the neutral: what is beyond it gets up to the voltage of both legs.
    OpensAtDevice {
        /// The section.
        section: &'static str,
    },
    /// Electronic loads on opposite legs don't cancel fully: up to this may flow.
    ElectronicLoads {
        /// The most that may flow, amperes.
        up_to_a: f64,
    },
}

/// The current in a neutral.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NeutralCurrent {
    /// The edition.
    pub edition: CodeEdition,
    /// What leg A sends, amperes.
    pub leg_a_a: f64,
    /// What leg B sends, amperes.
    pub leg_b_a: f64,
    /// What flows with everything on, resistive loads at 60 Hz, amperes.
    pub current_a: f64,
    /// The most that flows with some of it on, amperes.
    pub most_a: f64,
    /// The most that flows if electronic loads on opposite legs take their currents at different times, amperes.
    pub electronic_most_a: f64,
    /// Whether more than one hot returns on it.
    pub shared: bool,
    /// What is remarkable, the worst first.
    pub findings: Vec<NeutralFinding>,
    /// The working.
    pub steps: Vec<Step>,
}

/// The current in a neutral, and what is wrong with what returns on it.
///
/// Hots on one leg add, hots on opposite legs subtract: |sum A - sum B|; with one leg off, all of the other flows.
///
/// # Errors
/// [`NeutralRefusal`]: nothing returns on it, a current that is none, more electronic current than current.
///
/// # Example
/// 15 A on one leg and 5 A on the other: 10 A with both on, 15 A with one.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::neutral::{Neutral, Returning, neutral_current};
/// let pole = |space, current_a| Returning {
///     breaker: 1, panel: 0, space, tandem: false, two_pole: true, tied_to: None, rating_a: 20.0, current_a,
///     electronic_a: 0.0, leg_to_leg_loads: false,
/// };
/// let neutral = Neutral {
///     edition: CodeEdition::E2023,
///     returns: vec![pole(1, 15.0), pole(3, 5.0)],
///     ampacity_a: Some(20.0),
///     runs_with_hots: Some(true),
///     pigtailed: Some(true),
/// };
/// let answer = neutral_current(&neutral).unwrap();
/// assert_eq!((answer.current_a, answer.most_a), (10.0, 15.0));
/// assert!(answer.findings.is_empty());
/// ```
pub fn neutral_current(neutral: &Neutral) -> Result<NeutralCurrent, NeutralRefusal> {
    let returns = &neutral.returns;
    if returns.is_empty() {
        return Err(NeutralRefusal::Nothing);
    }
    for hot in returns {
        let good = |a: f64| (0.0..=MOST_CURRENT_A).contains(&a);
        if !good(hot.current_a) || !good(hot.electronic_a) || hot.electronic_a > hot.current_a {
            return Err(NeutralRefusal::Current {
                breaker: hot.breaker,
                current_a: hot.current_a,
                electronic_a: hot.electronic_a,
            });
        }
        if hot.space == 0 {
            return Err(NeutralRefusal::NoSpace {
                breaker: hot.breaker,
            });
        }
    }
    if let Some(ampacity_a) = neutral.ampacity_a
        && !(ampacity_a > 0.0 && ampacity_a <= MOST_CURRENT_A)
    {
        return Err(NeutralRefusal::Ampacity { ampacity_a });
    }
    let on = |leg, of: fn(&Returning) -> f64| {
        returns
            .iter()
            .filter(|hot| hot.leg() == leg)
            .map(of)
            .fold(0.0, |sum, a| sum + a)
    };
    let [leg_a_a, leg_b_a] = [Leg::A, Leg::B].map(|leg| on(leg, |hot| hot.current_a));
    let [electronic_a, electronic_b] = [Leg::A, Leg::B].map(|leg| on(leg, |hot| hot.electronic_a));
    let current_a = (leg_a_a - leg_b_a).abs();
    let most_a = leg_a_a.max(leg_b_a);
    // On legs half a turn apart the currents of electronic loads cancel where they flow at one time, and at worst flow at
    // different times: then their squares add up. Resistive loads cancel whatever the others do, so that two bounds hold:
    // the triangle inequality, and the squares of both legs less what the resistive parts cancel.
    let resistive_a = leg_a_a - electronic_a;
    let resistive_b = leg_b_a - electronic_b;
    let triangle_a = (resistive_a - resistive_b).abs() + electronic_a.hypot(electronic_b);
    let squares = leg_a_a * leg_a_a + leg_b_a * leg_b_a - 2.0 * resistive_a * resistive_b;
    let electronic_most_a = triangle_a.min(squares.max(0.0).sqrt()).max(most_a);
    let steps = vec![
        step(
            "neutral_current",
            vec![
                figure("leg_a", leg_a_a, Unit::Amps),
                figure("leg_b", leg_b_a, Unit::Amps),
            ],
            figure("neutral", current_a, Unit::Amps),
            Source::Arithmetic,
        ),
        step(
            "neutral_most",
            vec![
                figure("leg_a", leg_a_a, Unit::Amps),
                figure("leg_b", leg_b_a, Unit::Amps),
            ],
            figure("most", most_a, Unit::Amps),
            Source::Arithmetic,
        ),
        step(
            "neutral_electronic",
            vec![
                figure("resistive_a", resistive_a, Unit::Amps),
                figure("resistive_b", resistive_b, Unit::Amps),
                figure("electronic_a", electronic_a, Unit::Amps),
                figure("electronic_b", electronic_b, Unit::Amps),
            ],
            figure("electronic_most", electronic_most_a, Unit::Amps),
            Source::CommonPractice,
        ),
    ];
    Ok(NeutralCurrent {
        edition: neutral.edition,
        leg_a_a,
        leg_b_a,
        current_a,
        most_a,
        electronic_most_a,
        shared: returns.len() > 1,
        findings: findings(neutral, most_a, electronic_most_a),
        steps,
    })
}

fn findings(neutral: &Neutral, most_a: f64, electronic_most_a: f64) -> Vec<NeutralFinding> {
    let (edition, returns) = (neutral.edition, &neutral.returns);
    let section = |rule: Rule| rule.section(edition);
    let mut found = Vec::new();
    if let Some(ampacity_a) = neutral.ampacity_a
        && most_a > ampacity_a + ROUNDING_A
    {
        found.push(NeutralFinding::Overloaded {
            current_a: most_a,
            ampacity_a,
            section: section(Rule::BranchConductors),
        });
    }
    let breakers_of = |hots: &[&Returning]| {
        let mut ids: Vec<u32> = hots.iter().map(|hot| hot.breaker).collect();
        ids.order();
        ids.dedup();
        ids
    };
    for leg in [Leg::A, Leg::B] {
        let hots: Vec<&Returning> = returns.iter().filter(|hot| hot.leg() == leg).collect();
        if hots.len() < 2 {
            continue;
        }
        found.push(NeutralFinding::SameLeg {
            leg,
            breakers: breakers_of(&hots),
            sum_a: hots.iter().map(|hot| hot.current_a).sum(),
            section: section(Rule::OneNeutral),
            definition: section(Rule::MultiwireDefinition),
        });
        for (at, hot) in hots.iter().enumerate() {
            for other in hots.iter().skip(at + 1) {
                if hot.tandem
                    && other.tandem
                    && hot.space == other.space
                    && hot.panel == other.panel
                {
                    found.push(NeutralFinding::TandemPair {
                        breakers: breakers_of(&[hot, other]),
                        section: section(Rule::MultiwireDefinition),
                    });
                }
            }
        }
    }
    if returns.len() > 2 {
        found.push(NeutralFinding::TooManyCircuits {
            hots: returns.len(),
            section: section(Rule::OneNeutral),
        });
    }
    if let Some((first, rest)) = returns.split_first()
        && !rest.is_empty()
    {
        if rest.iter().any(|hot| hot.panel != first.panel) {
            found.push(NeutralFinding::DifferentPanels {
                section: section(Rule::MultiwireOrigin),
            });
        }
        let apart = returns.iter().any(|hot| {
            returns
                .iter()
                .any(|other| !std::ptr::eq(hot, other) && !hot.opens_with(other))
        });
        if apart {
            found.push(NeutralFinding::NoCommonDisconnect {
                breakers: breakers_of(&returns.iter().collect::<Vec<_>>()),
                section: section(Rule::MultiwireDisconnect),
            });
        }
        if returns.iter().any(|hot| hot.leg_to_leg_loads) && !returns.iter().all(|hot| hot.two_pole)
        {
            found.push(NeutralFinding::LegToLegLoads {
                section: section(Rule::MultiwireLoads),
            });
        }
        if neutral.pigtailed == Some(false) {
            found.push(NeutralFinding::OpensAtDevice {
                section: section(Rule::NeutralContinuity),
            });
        }
    }
    if neutral.runs_with_hots == Some(false) {
        found.push(NeutralFinding::RunsApart {
            section: section(Rule::RunTogether),
        });
    }
    if electronic_most_a > most_a + ROUNDING_A {
        found.push(NeutralFinding::ElectronicLoads {
            up_to_a: electronic_most_a,
        });
    }
    found
}

/// What two resistive loads get when their shared neutral opens.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OpenNeutral {
    /// Resistance of the loads on leg A, ohms.
    pub ohm_a: f64,
    /// Resistance of the loads on leg B, ohms.
    pub ohm_b: f64,
    /// The current through both, amperes.
    pub current_a: f64,
    /// What the loads on leg A get, volts.
    pub volts_a: f64,
    /// What the loads on leg B get, volts.
    pub volts_b: f64,
}

/// Two resistive loads in series across both legs, when their shared neutral opens: I = V / (Ra + Rb).
///
/// `across_v` is leg to leg, the watts are at half of it.
///
/// # Errors
/// [`NeutralRefusal::OpenLoad`] for a voltage or a load that is none.
///
/// # Example
/// 1200 W and 300 W: 12 and 48 ohm, 4 A, 48 V and 192 V.
/// ```
/// use calc::wiring::neutral::open_neutral;
/// let open = open_neutral(240.0, 1200.0, 300.0).unwrap();
/// assert_eq!((open.ohm_a, open.ohm_b), (12.0, 48.0));
/// assert_eq!((open.current_a, open.volts_a, open.volts_b), (4.0, 48.0, 192.0));
/// ```
pub fn open_neutral(
    across_v: f64,
    watts_a: f64,
    watts_b: f64,
) -> Result<OpenNeutral, NeutralRefusal> {
    let good = |value: f64, most: f64| value > 0.0 && value <= most;
    if !good(across_v, MOST_VOLTS) || !good(watts_a, 1e6) || !good(watts_b, 1e6) {
        return Err(NeutralRefusal::OpenLoad {
            across_v,
            watts_a,
            watts_b,
        });
    }
    let leg_v = across_v / 2.0;
    let [ohm_a, ohm_b] = [watts_a, watts_b].map(|watts| leg_v * leg_v / watts);
    let current_a = across_v / (ohm_a + ohm_b);
    Ok(OpenNeutral {
        ohm_a,
        ohm_b,
        current_a,
        volts_a: current_a * ohm_a,
        volts_b: current_a * ohm_b,
    })
}

/// Why a neutral isn't answered.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum NeutralRefusal {
    /// Nothing returns on it.
    #[error("nothing returns")]
    Nothing,
    /// A current that is none, or less than its electronic part.
    #[error("breaker {breaker}: {current_a} A, of which electronic {electronic_a} A")]
    Current {
        /// The breaker.
        breaker: u32,
        /// What was given, amperes.
        current_a: f64,
        /// What was given as its electronic part, amperes.
        electronic_a: f64,
    },
    /// A space below 1.
    #[error("breaker {breaker}: no space")]
    NoSpace {
        /// The breaker.
        breaker: u32,
    },
    /// A pole that the breaker doesn't have.
    #[error("breaker {breaker}: no pole {pole}")]
    NoPole {
        /// The breaker.
        breaker: u32,
        /// The pole, from 0.
        pole: usize,
    },
    /// An ampacity that is none.
    #[error("ampacity {ampacity_a} A")]
    Ampacity {
        /// What was given, amperes.
        ampacity_a: f64,
    },
    /// A voltage or loads that are none.
    #[error("{across_v} V, {watts_a} W, {watts_b} W")]
    OpenLoad {
        /// Leg to leg, volts.
        across_v: f64,
        /// On leg A, watts.
        watts_a: f64,
        /// On leg B, watts.
        watts_b: f64,
    },
}
