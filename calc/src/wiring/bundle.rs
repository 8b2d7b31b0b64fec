//! How many current-carrying conductors lie together, counted from a description.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;

use super::code::Rule;
use super::tables::SHORT_BUNDLE_IN;

/// What the neutrals of a cable carry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NeutralUse {
    /// There is none.
    None,
    /// All that its hot carries: a two-wire circuit.
    FullReturn,
    /// Only the difference of two hots on opposite legs of a 120/240 V single-phase supply.
    UnbalanceOnly,
    /// The neutral of two hots of a 208Y/120 V supply: it carries about as much as they do.
    TwoOfWye,
}

/// The conductors of one cable, or of one circuit in a raceway.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CableConductors {
    /// Hots that carry current at the same time, a switched hot included.
    pub hots: u32,
    /// Pairs of travellers: of each pair one carries current at a time.
    pub traveller_pairs: u32,
    /// What its neutral carries.
    pub neutral: NeutralUse,
    /// Spare conductors.
    pub spares: u32,
    /// Equipment grounding conductors.
    pub grounds: u32,
    /// How many cables of this kind.
    pub cables: u32,
}

impl CableConductors {
    /// A two-wire cable with ground: hot and neutral, or two hots of one 240 V load.
    pub const TWO_WIRE: Self = Self {
        hots: 1,
        traveller_pairs: 0,
        neutral: NeutralUse::FullReturn,
        spares: 0,
        grounds: 1,
        cables: 1,
    };

    /// A three-wire cable with ground: two hots on opposite legs of 120/240 V and their neutral.
    pub const MULTIWIRE: Self = Self {
        hots: 2,
        neutral: NeutralUse::UnbalanceOnly,
        ..Self::TWO_WIRE
    };

    /// A three-wire cable with ground: a pair of travellers and the neutral.
    pub const TRAVELLERS: Self = Self {
        hots: 0,
        traveller_pairs: 1,
        ..Self::TWO_WIRE
    };

    /// The same cable, several times.
    pub const fn times(self, cables: u32) -> Self {
        Self { cables, ..self }
    }

    /// Current-carrying conductors of one such cable.
    pub const fn carrying(&self) -> u32 {
        let neutral = match self.neutral {
            NeutralUse::None | NeutralUse::UnbalanceOnly => 0,
            NeutralUse::FullReturn | NeutralUse::TwoOfWye => 1,
        };
        self.hots
            .saturating_add(self.traveller_pairs)
            .saturating_add(neutral)
            .saturating_add(self.spares)
    }
}

/// How the cables lie.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grouping {
    /// Spaced, or each on its own.
    Apart,
    /// In one raceway, for its whole length.
    Raceway,
    /// In a nipple of this length, inches.
    Nipple {
        /// Its length, inches.
        length_in: f64,
    },
    /// In contact or bundled, without spacing, for this length, inches.
    Bundled {
        /// How far they lie so, inches.
        length_in: f64,
    },
    /// NM cables through one hole in wood framing that is sealed with insulation, caulk or foam.
    SealedHole,
    /// NM cables in contact with thermal insulation, without spacing.
    InInsulation,
}

/// Why a conductor counts, or not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CountReason {
    /// A hot.
    Hot,
    /// One of each pair of travellers (a reading of the rule: ask the inspector).
    OneTravellerOfPair,
    /// A neutral that carries what its hot carries.
    NeutralReturns,
    /// A neutral that carries the unbalance alone.
    NeutralUnbalance,
    /// The neutral of two hots of a wye.
    NeutralOfWye,
    /// A spare counts.
    Spare,
    /// An equipment grounding conductor.
    Ground,
}

/// A line of the count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CountLine {
    /// Which of the cables described, from 0.
    pub cable: usize,
    /// What the conductors are.
    pub reason: CountReason,
    /// How many there are.
    pub conductors: u32,
    /// How many count.
    pub counted: u32,
    /// The section.
    pub section: &'static str,
}

/// Whether the count leads to an adjustment, and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Together {
    /// All count together.
    All,
    /// Each cable counts for itself: they don't lie together.
    Apart,
    /// Each cable counts for itself: they lie together for 24 in or less.
    Short,
    /// Each cable counts for itself: no more than two NM cables.
    TwoCables,
}

/// How many conductors count.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BundleCount {
    /// The edition.
    pub edition: CodeEdition,
    /// The lines.
    pub lines: Vec<CountLine>,
    /// Cables.
    pub cables: u32,
    /// Current-carrying conductors of all cables.
    pub all: u32,
    /// Current-carrying conductors of the cable with the most.
    pub most_in_one: u32,
    /// Whether they count together.
    pub together: Together,
    /// The rule that says so.
    pub section: &'static str,
    /// The number for the adjustment of the cable asked about, which stands first: all of them, or its own.
    pub carrying: u32,
}

/// The most cables, or conductors of a kind in one cable, that a description may have.
pub const MOST_IN_BUNDLE: u32 = 200;

/// Longest bundle or nipple, inches: 10,000 ft.
pub const MOST_BUNDLE_IN: f64 = 120_000.0;

/// Counts the current-carrying conductors of cables that lie so; the cable asked about stands first.
///
/// Hots, neutrals that return what their hot carries, and spares count; of a pair of travellers one counts, since both
/// can't carry current together (a reading of the rule: ask the inspector); a neutral that carries only the unbalance of a 120/240 V circuit and
/// equipment grounding conductors don't (310.15(E), (F)). Cables together for 24 in or less count each for itself
/// (310.15(C)(1)), but not in a sealed hole or in insulation, where more than two NM cables always count together
/// (334.80).
///
/// # Errors
/// [`BundleRefusal`]: no cable, more than [`MOST_IN_BUNDLE`] of anything, a negative or absurd length, or a neutral
/// that has no two hots to be the unbalance of.
///
/// # Example
/// Three two-wire NM cables through a sealed hole: six.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::bundle::{CableConductors, Grouping, count};
/// let cables = [CableConductors::TWO_WIRE.times(3)];
/// assert_eq!(count(&cables, Grouping::SealedHole, CodeEdition::E2023).unwrap().carrying, 6);
/// let short = Grouping::Bundled { length_in: 24.0 };
/// assert_eq!(count(&cables, short, CodeEdition::E2023).unwrap().carrying, 2);
/// ```
pub fn count(
    cables: &[CableConductors],
    grouping: Grouping,
    edition: CodeEdition,
) -> Result<BundleCount, BundleRefusal> {
    let mut lines = Vec::new();
    let (mut number, mut all, mut most_in_one) = (0u32, 0u32, 0u32);
    let own = cables.first().map_or(0, CableConductors::carrying);
    for (cable, described) in cables.iter().enumerate() {
        described.check(cable)?;
        let times = described.cables;
        let mut add = |reason, of_one: u32, counted_of_one: u32, rule: Rule| {
            if of_one > 0 {
                lines.push(CountLine {
                    cable,
                    reason,
                    conductors: of_one * times,
                    counted: counted_of_one * times,
                    section: rule.section(edition),
                });
            }
        };
        let pairs = described.traveller_pairs;
        add(
            CountReason::Hot,
            described.hots,
            described.hots,
            Rule::CountFactor,
        );
        add(
            CountReason::OneTravellerOfPair,
            pairs * 2,
            pairs,
            Rule::TravellerCount,
        );
        match described.neutral {
            NeutralUse::None => {}
            NeutralUse::FullReturn => add(CountReason::NeutralReturns, 1, 1, Rule::NeutralCount),
            NeutralUse::UnbalanceOnly => {
                add(CountReason::NeutralUnbalance, 1, 0, Rule::NeutralCount)
            }
            NeutralUse::TwoOfWye => add(CountReason::NeutralOfWye, 1, 1, Rule::NeutralCount),
        }
        add(
            CountReason::Spare,
            described.spares,
            described.spares,
            Rule::CountFactor,
        );
        add(CountReason::Ground, described.grounds, 0, Rule::GroundCount);
        number += times;
        if number > MOST_IN_BUNDLE {
            return Err(BundleRefusal::TooMany { cable: None });
        }
        all += described.carrying() * times;
        most_in_one = most_in_one.max(described.carrying());
    }
    if number == 0 {
        return Err(BundleRefusal::NoCable);
    }
    let short = |length_in: f64| {
        if !(length_in > 0.0 && length_in <= MOST_BUNDLE_IN) {
            return Err(BundleRefusal::Length { length_in });
        }
        Ok(length_in <= SHORT_BUNDLE_IN)
    };
    let nm = if number > 2 {
        Together::All
    } else {
        Together::TwoCables
    };
    let (together, rule) = match grouping {
        Grouping::Apart => (Together::Apart, Rule::BundleLength),
        Grouping::Raceway => (Together::All, Rule::CountFactor),
        Grouping::Nipple { length_in } if short(length_in)? => (Together::Short, Rule::Nipple),
        Grouping::Nipple { .. } => (Together::All, Rule::CountFactor),
        Grouping::Bundled { length_in } if short(length_in)? => {
            (Together::Short, Rule::BundleLength)
        }
        Grouping::Bundled { .. } => (Together::All, Rule::BundleLength),
        Grouping::SealedHole | Grouping::InInsulation => (nm, Rule::NmCable),
    };
    let carrying = match (together, grouping) {
        (Together::All, _) => all,
        // A nipple of no more than 24 in is exempt whatever is in it: the basis of the table, three at most.
        (Together::Short, Grouping::Nipple { .. }) => own.min(3),
        _ => own,
    };
    Ok(BundleCount {
        edition,
        lines,
        cables: number,
        all,
        most_in_one,
        together,
        section: rule.section(edition),
        carrying,
    })
}

impl CableConductors {
    fn check(&self, cable: usize) -> Result<(), BundleRefusal> {
        let counts = [
            self.hots,
            self.traveller_pairs,
            self.spares,
            self.grounds,
            self.cables,
        ];
        if counts.iter().any(|&count| count > MOST_IN_BUNDLE) {
            return Err(BundleRefusal::TooMany { cable: Some(cable) });
        }
        let shares = matches!(
            self.neutral,
            NeutralUse::UnbalanceOnly | NeutralUse::TwoOfWye
        );
        if shares && self.hots != 2 {
            return Err(BundleRefusal::NotTwoHots {
                cable,
                hots: self.hots,
            });
        }
        Ok(())
    }
}

/// Why nothing is counted.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum BundleRefusal {
    /// No cable.
    #[error("no cable")]
    NoCable,
    /// More than [`MOST_IN_BUNDLE`]: of one cable described, or in all.
    #[error("too many in cable {cable:?}")]
    TooMany {
        /// Which of the cables described.
        cable: Option<usize>,
    },
    /// A length that is none, or above [`MOST_BUNDLE_IN`].
    #[error("length {length_in} in")]
    Length {
        /// What was given, inches.
        length_in: f64,
    },
    /// A shared neutral without its two hots.
    #[error("{hots} hots share the neutral of cable {cable}")]
    NotTwoHots {
        /// Which of the cables described.
        cable: usize,
        /// How many hots it has.
        hots: u32,
    },
}
