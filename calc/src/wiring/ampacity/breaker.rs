//! The largest standard breaker that protects a conductor.

use super::*;

/// Which step set the largest breaker.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BreakerGoverned {
    /// The ampacity is itself a standard rating.
    Equal,
    /// The next standard rating above the ampacity.
    Next,
    /// The standard rating below the ampacity.
    Below,
    /// The cap for small conductors.
    SmallConductor,
}

/// What else must be known of the breaker.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BreakerNote {
    /// The ampacity is below every rating that may feed receptacles.
    NotForReceptacles {
        /// The ampacity, amperes.
        ampacity_a: f64,
    },
    /// A 10 A circuit feeds no receptacles, and little else.
    TenAmpOnly,
    /// No larger continuous load than this, amperes.
    MostContinuous {
        /// The limit, amperes.
        most_a: f64,
    },
}

/// The largest breaker for a conductor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LargestBreaker {
    /// Its rating, amperes; `None` where no standard rating will do.
    pub rating_a: Option<f64>,
    /// What the ampacity alone would allow, amperes.
    pub by_ampacity_a: Option<f64>,
    /// The cap for small conductors, amperes, where there is one.
    pub cap_a: Option<f64>,
    /// The paragraph of the cap.
    pub cap_section: Option<&'static str>,
    /// Which of them it is.
    pub governed: BreakerGoverned,
    /// What else must be known.
    pub notes: Vec<BreakerNote>,
}

/// Rounds as 240.4(B) says, then caps as 240.4(D) says.
pub(super) fn largest(
    conductor: Conductor,
    conditions: Conditions,
    ampacity_a: f64,
    steps: &mut Vec<Step>,
) -> LargestBreaker {
    let edition = conditions.edition;
    let next_a = breaker_at_least_a(ampacity_a, edition).filter(|a| *a <= NEXT_RATING_MOST_A);
    let several = conditions.feeds == Feeds::SeveralReceptacles;
    let mut notes = Vec::new();
    let mut by_ampacity_a = match conditions.feeds {
        Feeds::Other => next_a.or_else(|| breaker_at_most_a(ampacity_a, edition)),
        Feeds::SeveralReceptacles => breaker_at_most_a(ampacity_a, edition),
    };
    // The smallest circuit that feeds receptacles is 15 A (210.18).
    if several && by_ampacity_a.is_none_or(|a| a < 15.0) {
        notes.push(BreakerNote::NotForReceptacles { ampacity_a });
        by_ampacity_a = None;
    }
    let mut governed = match by_ampacity_a {
        Some(a) if (a - ampacity_a).abs() <= ROUNDING_A => BreakerGoverned::Equal,
        Some(a) if a > ampacity_a => BreakerGoverned::Next,
        _ => BreakerGoverned::Below,
    };
    if let Some(a) = by_ampacity_a {
        let rule = if several {
            Rule::AtAmpacity
        } else {
            Rule::NextRating
        };
        steps.push(step(
            if several {
                "breaker_at_most"
            } else {
                "breaker_next"
            },
            vec![figure("ampacity", ampacity_a, Unit::Amps)],
            figure("breaker", a, Unit::Amps),
            rule.source(edition),
        ));
    }
    let cap = small_conductor(conductor.size, conductor.metal, edition);
    let cap_a = cap.map(|(row, _)| row.most_a);
    let rating_a = match (by_ampacity_a, cap_a) {
        (Some(a), Some(cap_a)) if cap_a < a - ROUNDING_A => {
            governed = BreakerGoverned::SmallConductor;
            // A cap is a standard rating itself, but for the odd ones: then the rating below it.
            breaker_at_most_a(cap_a, edition)
        }
        (a, _) => a,
    };
    if let (Some(a), Some(cap_a), Some(rating_a)) = (by_ampacity_a, cap_a, rating_a) {
        steps.push(step(
            "breaker_cap",
            vec![
                figure("breaker", a, Unit::Amps),
                figure("cap", cap_a, Unit::Amps),
            ],
            figure("largest_breaker", rating_a, Unit::Amps),
            Rule::SmallConductors.source(edition),
        ));
    }
    if rating_a == Some(10.0) {
        notes.push(BreakerNote::TenAmpOnly);
    }
    if let Some(most_a) = cap.and_then(|(row, _)| row.most_continuous_a) {
        notes.push(BreakerNote::MostContinuous { most_a });
    }
    LargestBreaker {
        rating_a,
        by_ampacity_a,
        cap_a,
        cap_section: cap.map(|(_, paragraph)| paragraph),
        governed,
        notes,
    }
}
