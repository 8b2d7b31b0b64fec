//! The pace of mixing.

use serde::Serialize;

use super::{Field, MixingRefusal, ROUNDING, more_than_nothing, up};
use crate::working::{Figure, Source, Step, Unit};

/// How the mixing goes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PaceAsk {
    /// Bags in all.
    pub bags: u32,
    /// Bags mixed at once in one bucket or drum.
    pub bags_per_batch: u32,
    /// From one batch of a mixer to its next: measure, mix, carry, pour, rinse; minutes.
    pub minutes_per_batch: f64,
    /// How long a batch flows, minutes.
    pub pot_life_minutes: f64,
}

/// A pace that keeps the edge wet.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Pace {
    /// What was asked.
    pub ask: PaceAsk,
    /// Batches in all.
    pub batches: u32,
    /// A mixer's round takes longer than a batch flows: mixed at its start it would set before the round is over, so it
    /// must be on the floor well before.
    pub outlives_pot_life: bool,
    /// Mixers (buckets with a person each) that must take turns, so that a new batch reaches the floor before the
    /// one before it has stopped flowing.
    pub mixers: u32,
    /// From one batch to the next on the floor, minutes; at most the pot life.
    pub minutes_between: f64,
    /// Batches poured within one pot life at that pace.
    pub batches_in_pot_life: u32,
    /// From the first water to the last batch on the floor, minutes.
    pub total_minutes: f64,
}

/// A pace at which the wet edge never outlives the pot life.
///
/// The rule: mixers take turns, so a batch reaches the floor every (minutes per batch / mixers), and that must be at
/// most the pot life. The first batch takes its full time; each further one follows after that interval.
///
/// # Errors
/// See [`MixingRefusal`].
///
/// ```
/// use calc::floor::mixing::{PaceAsk, pace};
/// // Ten bags, two at a time, 20 minutes a round, 15 minutes of flow: two mixers, a batch every 10 minutes.
/// let ask = PaceAsk { bags: 10, bags_per_batch: 2, minutes_per_batch: 20.0, pot_life_minutes: 15.0 };
/// let answer = pace(&ask)?;
/// assert_eq!((answer.batches, answer.mixers, answer.minutes_between), (5, 2, 10.0));
/// assert_eq!(answer.total_minutes, 60.0);
/// # Ok::<(), calc::floor::mixing::MixingRefusal>(())
/// ```
pub fn pace(ask: &PaceAsk) -> Result<Pace, MixingRefusal> {
    if ask.bags_per_batch == 0 {
        return Err(MixingRefusal::Nothing {
            field: Field::BagsPerBatch,
            given: 0.0,
        });
    }
    more_than_nothing(Field::MinutesPerBatch, ask.minutes_per_batch)?;
    more_than_nothing(Field::PotLife, ask.pot_life_minutes)?;
    let batches = ask.bags.div_ceil(ask.bags_per_batch);
    // A single batch has no edge to keep wet.
    let mixers = if batches <= 1 {
        f64::from(batches)
    } else {
        up(ask.minutes_per_batch / ask.pot_life_minutes).max(1.0)
    };
    if mixers > f64::from(batches) {
        return Err(MixingRefusal::TooSlow { mixers, batches });
    }
    let minutes_between = if batches == 0 {
        0.0
    } else {
        ask.minutes_per_batch / mixers
    };
    let total_minutes = if batches == 0 {
        0.0
    } else {
        ask.minutes_per_batch + f64::from(batches - 1) * minutes_between
    };
    let in_pot_life = if batches == 0 {
        0.0
    } else {
        (ask.pot_life_minutes / minutes_between + ROUNDING).floor()
    };
    Ok(Pace {
        ask: *ask,
        batches,
        outlives_pot_life: batches > 0
            && ask.minutes_per_batch > ask.pot_life_minutes * (1.0 + ROUNDING),
        mixers: mixers as u32,
        minutes_between,
        batches_in_pot_life: in_pot_life.min(f64::from(batches)) as u32,
        total_minutes,
    })
}

impl Pace {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        vec![
            Step {
                formula: "batches",
                inputs: vec![
                    figure("bags", f64::from(self.ask.bags), Unit::Bags),
                    figure(
                        "bags_per_batch",
                        f64::from(self.ask.bags_per_batch),
                        Unit::Bags,
                    ),
                ],
                result: figure("batches", f64::from(self.batches), Unit::Count),
                source: Source::Arithmetic,
            },
            Step {
                formula: "mixers",
                inputs: vec![
                    figure(
                        "minutes_per_batch",
                        self.ask.minutes_per_batch,
                        Unit::Minutes,
                    ),
                    figure("pot_life", self.ask.pot_life_minutes, Unit::Minutes),
                ],
                result: figure("mixers", f64::from(self.mixers), Unit::Count),
                source: Source::CommonPractice,
            },
            Step {
                formula: "total_minutes",
                inputs: vec![
                    figure(
                        "minutes_per_batch",
                        self.ask.minutes_per_batch,
                        Unit::Minutes,
                    ),
                    figure("batches", f64::from(self.batches), Unit::Count),
                    figure("minutes_between", self.minutes_between, Unit::Minutes),
                ],
                result: figure("total", self.total_minutes, Unit::Minutes),
                source: Source::Arithmetic,
            },
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_batch_of_no_bags_is_refused() {
        use MixingRefusal as No;
        let ask = PaceAsk {
            bags: 4,
            bags_per_batch: 0,
            minutes_per_batch: 8.0,
            pot_life_minutes: 15.0,
        };
        assert_eq!(
            pace(&ask).unwrap_err(),
            No::Nothing {
                field: Field::BagsPerBatch,
                given: 0.0
            }
        );
    }

    #[test]
    fn the_edge_stays_wet() {
        for (minutes, pot_life, mixers) in [
            (15.0, 15.0, 1),
            (15.1, 15.0, 2),
            (5.0, 15.0, 1),
            (45.0, 15.0, 3),
        ] {
            let ask = PaceAsk {
                bags: 12,
                bags_per_batch: 1,
                minutes_per_batch: minutes,
                pot_life_minutes: pot_life,
            };
            let answer = pace(&ask).unwrap();
            assert_eq!(answer.mixers, mixers, "{minutes}");
            assert!(answer.minutes_between <= pot_life + 1e-9);
            assert_eq!(answer.outlives_pot_life, mixers > 1, "{minutes}");
        }
        let one = PaceAsk {
            bags: 1,
            bags_per_batch: 2,
            minutes_per_batch: 60.0,
            pot_life_minutes: 15.0,
        };
        // One batch has no edge to keep wet, but it sets in its bucket all the same.
        let alone = pace(&one).unwrap();
        assert_eq!((alone.mixers, alone.outlives_pot_life), (1, true));
        let none = PaceAsk { bags: 0, ..one };
        assert_eq!(pace(&none).unwrap().total_minutes, 0.0);
        let slow = PaceAsk { bags: 4, ..one };
        assert_eq!(
            pace(&slow).unwrap_err(),
            MixingRefusal::TooSlow {
                mixers: 4.0,
                batches: 2
            }
        );
    }
}
