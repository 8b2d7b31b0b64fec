//! What published standards say of a step or a slope.
//!
//! A reference, not a verdict: private single-family houses are as a rule not bound by the ADA Standards, and
//! the residential code binds in the edition that was adopted locally.

use serde::Serialize;
use thiserror::Error;

include!("../../tables/level_change.rs");

/// Differences below this are rounding, inches: far below what a rule can read.
pub const ROUNDING_IN: f64 = 1e-6;

/// How a step is treated at its edge, after 2010 ADA Standards 303.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Treatment {
    /// No step at all.
    Flush,
    /// An upright edge will do.
    Plain,
    /// The part above the upright edge is bevelled, no steeper than 1:2.
    Bevel {
        /// What may stay upright, inches.
        upright_in: f64,
        /// What must be bevelled, inches.
        bevel_rise_in: f64,
        /// The least run of the bevel, inches.
        least_run_in: f64,
    },
    /// A ramp, no steeper than 1:12.
    Ramp {
        /// The least run of the ramp, inches.
        least_run_in: f64,
    },
}

/// One rule held against a step.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Held {
    /// The rule.
    pub rule: StepRule,
    /// Whether the step is within it.
    pub within: bool,
    /// By how much it is not, inches; 0 where it is.
    pub off_by_in: f64,
}

/// A step and what is said of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LevelChange {
    /// Height of the step, inches, without sign.
    pub step_in: f64,
    /// How its edge is treated.
    pub treatment: Treatment,
    /// The rules for a step, a doorway's threshold, a ramp's rise and the landing at an exterior door, each held
    /// against it.
    pub held: Vec<Held>,
}

/// Classes a step, up or down, given in inches.
///
/// # Errors
/// [`LevelChangeRefusal::NotANumber`].
///
/// # Example
/// A 1/2 in step keeps a 1/4 in upright and needs 1/2 in of bevel (2010 ADA Standards 303.3).
/// ```
/// use calc::floor::level_change::{Treatment, classify};
/// let step = classify(0.5).unwrap();
/// assert_eq!(step.treatment, Treatment::Bevel { upright_in: 0.25, bevel_rise_in: 0.25, least_run_in: 0.5 });
/// ```
pub fn classify(step_in: f64) -> Result<LevelChange, LevelChangeRefusal> {
    if !step_in.is_finite() {
        return Err(LevelChangeRefusal::NotANumber);
    }
    let step_in = step_in.abs();
    let treatment = if step_in <= ROUNDING_IN {
        Treatment::Flush
    } else if step_in <= PLAIN_MOST_IN + ROUNDING_IN {
        Treatment::Plain
    } else if step_in <= BEVEL_MOST_IN + ROUNDING_IN {
        let bevel_rise_in = step_in - PLAIN_MOST_IN;
        Treatment::Bevel {
            upright_in: PLAIN_MOST_IN,
            bevel_rise_in,
            least_run_in: bevel_rise_in * BEVEL_ONE_IN,
        }
    } else {
        Treatment::Ramp {
            least_run_in: step_in * RAMP_ONE_IN,
        }
    };
    let asked = [
        Applies::AnyStep,
        Applies::Doorway,
        Applies::Ramp,
        Applies::ExteriorDoor,
    ];
    let held = STEP_RULES
        .iter()
        .filter(|rule| asked.contains(&rule.applies))
        .map(|rule| rule.hold(step_in))
        .collect();
    Ok(LevelChange {
        step_in,
        treatment,
        held,
    })
}

/// Every rule of the table that applies to one thing, held against a height in inches: a riser, the difference of
/// two risers, a shower curb above its drain, a toilet flange above the finished floor.
///
/// # Errors
/// [`LevelChangeRefusal::NotANumber`].
pub fn hold(applies: Applies, height_in: f64) -> Result<Vec<Held>, LevelChangeRefusal> {
    if !height_in.is_finite() {
        return Err(LevelChangeRefusal::NotANumber);
    }
    Ok(STEP_RULES
        .iter()
        .filter(|rule| rule.applies == applies)
        .map(|rule| rule.hold(height_in))
        .collect())
}

/// A slope held against one rule.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SlopeHeld {
    /// The rule.
    pub rule: SlopeRule,
    /// Whether the slope is no steeper.
    pub within: bool,
}

/// Holds a slope, rise over run, against every rule for slopes, from the flattest.
///
/// # Errors
/// [`LevelChangeRefusal::NotANumber`].
pub fn classify_slope(slope: f64) -> Result<Vec<SlopeHeld>, LevelChangeRefusal> {
    if !slope.is_finite() {
        return Err(LevelChangeRefusal::NotANumber);
    }
    // A slope that was worked out from lengths may be off in its last digits: a part in a million is let pass.
    let within = |rule: &SlopeRule| slope.abs() * rule.one_in <= 1.0 + 1e-6;
    Ok(SLOPE_RULES
        .iter()
        .map(|rule| SlopeHeld {
            rule: *rule,
            within: within(rule),
        })
        .collect())
}

/// What a rule for heights is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Applies {
    /// Any change of level on a way.
    AnyStep,
    /// The threshold of a doorway.
    Doorway,
    /// The rise of one run of a ramp.
    Ramp,
    /// The landing at a door to the outside, below the top of its threshold.
    ExteriorDoor,
    /// A riser of a stair.
    Stair,
    /// The difference between two risers of one flight.
    StairDifference,
    /// The curb of a shower, above the drain.
    ShowerCurb,
    /// The flange of a toilet, above the finished floor.
    ToiletFlange,
}

/// Which way a rule bounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Bound {
    /// No more than the value.
    AtMost,
    /// No less than the value.
    AtLeast,
}

/// How far a row of a table was checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// Found alike in two or more public copies of the source.
    Verified,
    /// Found in one public copy of the source.
    VerifiedOnce,
    /// Not confirmed against a copy of the source.
    FromMemory,
    /// A rule of the trade with no single published source.
    CommonPractice,
}

/// A published height.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct StepRule {
    /// A stable name.
    pub id: &'static str,
    /// What it is about.
    pub applies: Applies,
    /// Which way it bounds.
    pub bound: Bound,
    /// The height, inches.
    pub value_in: f64,
    /// Where it is published.
    pub source: &'static str,
    /// How far it was checked.
    pub status: Status,
}

impl StepRule {
    fn hold(&self, height_in: f64) -> Held {
        let off_by_in = match self.bound {
            Bound::AtMost => height_in - self.value_in,
            Bound::AtLeast => self.value_in - height_in,
        };
        let within = off_by_in <= ROUNDING_IN;
        Held {
            rule: *self,
            within,
            off_by_in: if within { 0.0 } else { off_by_in },
        }
    }
}

/// A published slope: no steeper than 1:n.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SlopeRule {
    /// A stable name.
    pub id: &'static str,
    /// The n of 1:n.
    pub one_in: f64,
    /// Where it is published.
    pub source: &'static str,
    /// How far it was checked.
    pub status: Status,
}

/// Why nothing is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum LevelChangeRefusal {
    /// A number that isn't one.
    #[error("not a number")]
    NotANumber,
}

// Tied to the rows by a constant index, so that a figure stands in one place; a test holds each to its name.
const PLAIN_MOST_IN: f64 = STEP_RULES[0].value_in;
const BEVEL_MOST_IN: f64 = STEP_RULES[1].value_in;
const RAMP_ONE_IN: f64 = SLOPE_RULES[2].one_in;
const BEVEL_ONE_IN: f64 = SLOPE_RULES[5].one_in;

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The millimetre equivalents that the same sections print beside the inches, from memory: ADA 303.2 (6.4),
    /// 303.3 (13), 404.2.5 (13; 19), 405.6 (760); IRC R311.3.1 (38; 196), R311.7.5.1 (196; 9.5), P2709.1
    /// (51; 229). The standards round them, so each must agree within 1 percent or 1/2 mm, 405.6 within 2 mm.
    const MM: &[(&str, f64, f64)] = &[
        ("plain_step", 6.4, 0.5),
        ("bevelled_step", 13.0, 0.5),
        ("ramp_above", 13.0, 0.5),
        ("doorway_threshold", 13.0, 0.5),
        ("altered_threshold", 19.0, 0.5),
        ("ramp_rise", 760.0, 2.0),
        ("egress_door_landing", 38.0, 0.5),
        ("egress_door_exterior_landing", 196.0, 1.0),
        ("other_exterior_door_landing", 196.0, 1.0),
        ("stair_riser", 196.0, 1.0),
        ("riser_difference", 9.5, 0.5),
        ("shower_curb_least", 51.0, 0.5),
        ("shower_curb_most", 229.0, 0.5),
        ("flange_least", 0.0, 0.0),
        ("flange_most", 6.4, 0.5),
    ];

    #[test]
    fn every_row_agrees_with_its_millimetres() {
        assert_eq!(MM.len(), STEP_RULES.len());
        for (rule, &(id, mm, within)) in STEP_RULES.iter().zip(MM) {
            assert_eq!(rule.id, id);
            assert!(
                (rule.value_in * 25.4 - mm).abs() <= within,
                "{id}: {} in",
                rule.value_in
            );
            assert_eq!(
                rule.source == "common practice",
                rule.status == Status::CommonPractice,
                "{id}"
            );
            let just = |height_in: f64| rule.hold(height_in).within;
            let (inside, outside) = match rule.bound {
                Bound::AtMost => (rule.value_in, rule.value_in + 1.0 / 64.0),
                Bound::AtLeast => (rule.value_in, rule.value_in - 1.0 / 64.0),
            };
            assert!(just(inside) && !just(outside), "{id}");
            let asked = hold(rule.applies, outside).unwrap();
            let held = asked.iter().find(|held| held.rule.id == id).unwrap();
            assert!((held.off_by_in - 1.0 / 64.0).abs() < 1e-12, "{id}");
        }
    }

    #[test]
    fn constants_stand_on_their_rows() {
        assert_eq!(
            (STEP_RULES[0].id, STEP_RULES[1].id),
            ("plain_step", "bevelled_step")
        );
        assert_eq!((SLOPE_RULES[2].id, SLOPE_RULES[5].id), ("ramp", "bevel"));
    }

    /// Percentages of the slopes, computed: 1:48 is 2.08, 1:20 is 5, 1:12 is 8.33, 1:8 is 12.5, 1:2 is 50.
    #[test]
    fn every_slope_row_in_percent() {
        let percent = [2.0833, 5.0, 8.3333, 8.3333, 12.5, 50.0];
        for (rule, percent) in SLOPE_RULES.iter().zip(percent) {
            assert!((100.0 / rule.one_in - percent).abs() < 1e-3, "{}", rule.id);
            let at = |slope: f64| {
                classify_slope(slope)
                    .unwrap()
                    .into_iter()
                    .find(|held| held.rule == *rule)
                    .unwrap()
            };
            assert!(at(1.0 / rule.one_in).within && at(-1.0 / rule.one_in).within);
            assert!(!at(1.001 / rule.one_in).within);
        }
        assert!(SLOPE_RULES.is_sorted_by(|a, b| a.one_in >= b.one_in));
    }

    #[test]
    fn treatments() {
        // Steps of the sections: 1/4 in plain (303.2), over it to 1/2 in bevelled 1:2 (303.3), beyond a ramp
        // (303.4) at 12 in of run per inch (405.2). 23/32 in is tile over a membrane against sheet vinyl.
        let of = |step_in: f64| classify(step_in).unwrap().treatment;
        assert_eq!(of(0.0), Treatment::Flush);
        assert_eq!(of(1.0 / 32.0), Treatment::Plain);
        assert_eq!(of(0.25), Treatment::Plain);
        assert_eq!(of(0.1 + 0.15), Treatment::Plain);
        assert_eq!(
            of(-0.375),
            Treatment::Bevel {
                upright_in: 0.25,
                bevel_rise_in: 0.125,
                least_run_in: 0.25
            }
        );
        assert_eq!(
            of(0.5),
            Treatment::Bevel {
                upright_in: 0.25,
                bevel_rise_in: 0.25,
                least_run_in: 0.5
            }
        );
        assert_eq!(
            of(0.71875),
            Treatment::Ramp {
                least_run_in: 8.625
            }
        );
        assert_eq!(classify(f64::NAN), Err(LevelChangeRefusal::NotANumber));
        assert_eq!(
            hold(Applies::Stair, f64::INFINITY),
            Err(LevelChangeRefusal::NotANumber)
        );
        assert_eq!(
            classify_slope(f64::NAN),
            Err(LevelChangeRefusal::NotANumber)
        );
    }

    #[test]
    fn a_threshold_that_an_alteration_may_keep() {
        let got = classify(0.75).unwrap();
        let within = |id: &str| {
            got.held
                .iter()
                .find(|held| held.rule.id == id)
                .unwrap()
                .within
        };
        assert!(
            !within("doorway_threshold")
                && within("altered_threshold")
                && within("egress_door_landing")
        );
    }

    proptest! {
        #[test]
        fn up_and_down_are_alike(step_in in 0.0..40.0f64) {
            prop_assert_eq!(classify(step_in).unwrap(), classify(-step_in).unwrap());
        }

        #[test]
        fn a_higher_step_is_within_no_more_rules(low in 0.0..10.0f64, more in 0.0..10.0f64) {
            let count = |step_in| classify(step_in).unwrap().held.iter().filter(|held| held.within).count();
            prop_assert!(count(low + more) <= count(low));
        }
    }
}
