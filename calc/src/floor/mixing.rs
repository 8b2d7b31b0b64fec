//! From a volume to bags, water and a pace; primer, edge strip and dams.

use serde::Serialize;
use thiserror::Error;

use super::geometry::{Outline, Point};
use super::pour::Pour;
use crate::working::{Figure, Source, Step, Unit};

/// What a figure usually is, where the product's own is not at hand.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Usual {
    /// The low end.
    pub low: f64,
    /// What to plan with.
    pub typical: f64,
    /// The high end.
    pub high: f64,
}

/// The trade's planning figures, as a table of constants: `calc/tables/self_levelling.rs`, sources in its head.
pub mod usual {
    use super::Usual;

    include!("../../tables/self_levelling.rs");
}

/// A count that passes a whole number by less than this share is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// The most bags that a plan may have: a count past this is a slip of the finger.
pub const MOST_BAGS: f64 = 100_000.0;

/// US quarts in a gallon.
const QT_PER_GAL: f64 = 4.0;

/// What the bags are for and what one gives.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BagAsk {
    /// Material needed, cubic feet.
    pub volume_ft3: f64,
    /// Allowance for what sticks to the bucket and fills the unseen, percent.
    pub allowance_percent: f64,
    /// What a bag gives, cubic feet.
    pub yield_ft3_per_bag: f64,
    /// Water for a bag, US quarts; none: not said.
    pub water_qt_per_bag: Option<f64>,
}

/// Bags and water.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Bags {
    /// What was asked.
    pub ask: BagAsk,
    /// Volume with the allowance, cubic feet.
    pub with_allowance_ft3: f64,
    /// That volume in bags, before rounding up.
    pub exact_bags: f64,
    /// Bags to buy.
    pub bags: u32,
    /// Water for all of them, US quarts; none where that of a bag was not said.
    pub water_qt: Option<f64>,
    /// Water for all of them, US gallons.
    pub water_gal: Option<f64>,
    /// What the bags give past the volume without allowance, cubic feet.
    pub to_spare_ft3: f64,
}

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

/// Why bags, pace or primer can't be worked out; each carries the field that is wrong and what it held.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum MixingRefusal {
    /// Must be a number and not negative.
    #[error("{field} of {given} is not an amount")]
    NotAnAmount {
        /// Which field.
        field: Field,
        /// What it held.
        given: f64,
    },
    /// Must be more than nothing.
    #[error("{field} must be more than nothing, not {given}")]
    Nothing {
        /// Which field.
        field: Field,
        /// What it held.
        given: f64,
    },
    /// More than [`MOST_BAGS`].
    #[error("{bags} bags are more than {MOST_BAGS}")]
    TooMany {
        /// How many it would take.
        bags: f64,
    },
    /// More mixers than batches: even if every batch were mixed at once, the edge would not stay wet.
    #[error("keeping the edge wet takes {mixers} mixers for {batches} batches")]
    TooSlow {
        /// Mixers that would be needed.
        mixers: f64,
        /// Batches there are.
        batches: u32,
    },
}

/// A field of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// The volume.
    Volume,
    /// The allowance.
    Allowance,
    /// A bag's yield.
    Yield,
    /// A bag's water.
    Water,
    /// Bags in a batch.
    BagsPerBatch,
    /// Minutes for a batch.
    MinutesPerBatch,
    /// The pot life.
    PotLife,
    /// An area.
    Area,
    /// A primer's coverage.
    Coverage,
}

impl std::fmt::Display for Field {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        std::fmt::Debug::fmt(self, f)
    }
}

/// Bags and water for a volume: bags = volume x (1 + allowance) / yield, rounded up.
///
/// # Errors
/// See [`MixingRefusal`].
///
/// ```
/// use calc::floor::mixing::{BagAsk, bags};
/// // 40 square feet at a mean of 3/8 in is 1.25 cubic feet; 1.375 with 10 %; 3.06 bags.
/// let ask = BagAsk { volume_ft3: 1.25, allowance_percent: 10.0, yield_ft3_per_bag: 0.45, water_qt_per_bag: Some(5.5) };
/// let answer = bags(&ask)?;
/// assert_eq!((answer.bags, answer.water_qt), (4, Some(22.0)));
/// # Ok::<(), calc::floor::mixing::MixingRefusal>(())
/// ```
pub fn bags(ask: &BagAsk) -> Result<Bags, MixingRefusal> {
    amount(Field::Volume, ask.volume_ft3)?;
    amount(Field::Allowance, ask.allowance_percent)?;
    more_than_nothing(Field::Yield, ask.yield_ft3_per_bag)?;
    amount(Field::Water, ask.water_qt_per_bag.unwrap_or(0.0))?;
    let with_allowance_ft3 = ask.volume_ft3 * (1.0 + ask.allowance_percent / 100.0);
    let exact_bags = with_allowance_ft3 / ask.yield_ft3_per_bag;
    let whole = up(exact_bags);
    if !whole.is_finite() || whole > MOST_BAGS {
        return Err(MixingRefusal::TooMany { bags: whole });
    }
    let water_qt = ask.water_qt_per_bag.map(|per_bag| whole * per_bag);
    Ok(Bags {
        ask: *ask,
        with_allowance_ft3,
        exact_bags,
        bags: whole as u32,
        water_qt,
        water_gal: water_qt.map(|qt| qt / QT_PER_GAL),
        to_spare_ft3: whole * ask.yield_ft3_per_bag - ask.volume_ft3,
    })
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
        mixers: mixers as u32,
        minutes_between,
        batches_in_pot_life: in_pot_life.min(f64::from(batches)) as u32,
        total_minutes,
    })
}

/// Primer for an area, US gallons: area / coverage.
///
/// # Errors
/// See [`MixingRefusal`].
pub fn primer_gal(area_ft2: f64, coverage_ft2_per_gal: f64) -> Result<f64, MixingRefusal> {
    amount(Field::Area, area_ft2)?;
    more_than_nothing(Field::Coverage, coverage_ft2_per_gal)?;
    Ok(area_ft2 / coverage_ft2_per_gal)
}

/// Isolation strip along the walls, inches: the perimeter less the openings (their widths in inches); never negative.
pub fn edge_strip_in(outline: &Outline, opening_widths_in: &[f64]) -> f64 {
    (outline.perimeter_in() - opening_widths_in.iter().sum::<f64>()).max(0.0)
}

/// An opening and the floor beyond it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Beyond {
    /// The left jamb.
    pub left: Point,
    /// The right jamb.
    pub right: Point,
    /// Height of the floor beyond, inches above the datum.
    pub height_in: f64,
}

/// Dam needed at an opening, inches: the part of its width where the pour stands above the floor beyond.
pub fn dam_in(pour: &Pour, opening: &Beyond) -> f64 {
    let width_in = opening.left.distance_in(opening.right);
    let above = |at: Point| {
        let above_in = pour.plane.height_in(at) - opening.height_in;
        // A pour that is flush, up to rounding, needs no dam.
        if above_in.abs() <= ROUNDING {
            0.0
        } else {
            above_in
        }
    };
    let (left_in, right_in) = (above(opening.left), above(opening.right));
    let (low_in, high_in) = (left_in.min(right_in), left_in.max(right_in));
    if high_in <= 0.0 {
        0.0
    } else if low_in >= 0.0 {
        width_in
    } else {
        width_in * high_in / (high_in - low_in)
    }
}

impl Bags {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let mut steps = vec![
            Step {
                formula: "with_allowance",
                inputs: vec![
                    figure("volume", self.ask.volume_ft3, Unit::Ft3),
                    figure("allowance", self.ask.allowance_percent, Unit::Percent),
                ],
                result: figure("with_allowance", self.with_allowance_ft3, Unit::Ft3),
                source: Source::CommonPractice,
            },
            Step {
                formula: "bags",
                inputs: vec![
                    figure("with_allowance", self.with_allowance_ft3, Unit::Ft3),
                    figure("yield", self.ask.yield_ft3_per_bag, Unit::Ft3),
                ],
                result: figure("bags", f64::from(self.bags), Unit::Bags),
                source: Source::CommonPractice,
            },
        ];
        if let Some((per_bag, water)) = self.ask.water_qt_per_bag.zip(self.water_qt) {
            steps.push(Step {
                formula: "water",
                inputs: vec![
                    figure("bags", f64::from(self.bags), Unit::Bags),
                    figure("water_per_bag", per_bag, Unit::Quarts),
                ],
                result: figure("water", water, Unit::Quarts),
                source: Source::Entered,
            });
        }
        steps
    }
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

/// Rounded up to a whole number; what rounding added to one stays that one.
fn up(exact: f64) -> f64 {
    (exact - ROUNDING * exact.abs().max(1.0)).ceil().max(0.0)
}

fn amount(field: Field, given: f64) -> Result<(), MixingRefusal> {
    if given.is_finite() && given >= 0.0 {
        Ok(())
    } else {
        Err(MixingRefusal::NotAnAmount { field, given })
    }
}

fn more_than_nothing(field: Field, given: f64) -> Result<(), MixingRefusal> {
    if given.is_finite() && given > 0.0 {
        Ok(())
    } else {
        Err(MixingRefusal::Nothing { field, given })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ASK: BagAsk = BagAsk {
        volume_ft3: 1.25,
        allowance_percent: 0.0,
        yield_ft3_per_bag: 0.45,
        water_qt_per_bag: Some(5.5),
    };

    #[test]
    fn a_whole_number_of_bags_is_not_rounded_past() {
        for count in 1..=300 {
            // 1.1 and 0.45 have no exact double: the quotient may come out a hair over.
            let volume_ft3 = f64::from(count) * 0.45 / 1.1;
            let ask = BagAsk {
                volume_ft3,
                allowance_percent: 10.0,
                ..ASK
            };
            assert_eq!(bags(&ask).unwrap().bags, count as u32);
        }
        assert_eq!(
            bags(&BagAsk {
                volume_ft3: 0.0,
                ..ASK
            })
            .unwrap()
            .bags,
            0
        );
        assert_eq!(
            bags(&BagAsk {
                volume_ft3: 0.001,
                ..ASK
            })
            .unwrap()
            .bags,
            1
        );
    }

    #[test]
    fn what_is_no_amount_is_refused_by_its_field() {
        use MixingRefusal as No;
        let refusal = |ask: BagAsk| bags(&ask).unwrap_err();
        assert_eq!(
            refusal(BagAsk {
                yield_ft3_per_bag: 0.0,
                ..ASK
            }),
            No::Nothing {
                field: Field::Yield,
                given: 0.0
            }
        );
        assert_eq!(
            refusal(BagAsk {
                volume_ft3: -1.0,
                ..ASK
            }),
            No::NotAnAmount {
                field: Field::Volume,
                given: -1.0
            }
        );
        assert!(matches!(
            refusal(BagAsk {
                allowance_percent: f64::NAN,
                ..ASK
            }),
            No::NotAnAmount { .. }
        ));
        assert!(matches!(
            refusal(BagAsk {
                yield_ft3_per_bag: 1e-300,
                ..ASK
            }),
            No::TooMany { .. }
        ));
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
        assert!(primer_gal(40.0, 0.0).is_err());
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
        }
        let one = PaceAsk {
            bags: 1,
            bags_per_batch: 2,
            minutes_per_batch: 60.0,
            pot_life_minutes: 15.0,
        };
        assert_eq!(pace(&one).unwrap().mixers, 1);
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

    #[test]
    fn the_usual_yield_covers_what_guides_say() {
        // Several public guides: a 50 lb bag covers 40 to 50 square feet at 1/8 in.
        let covers_ft2 = usual::YIELD_FT3_PER_BAG.typical / (0.125 / 12.0);
        assert!((40.0..=50.0).contains(&covers_ft2));
        assert!((covers_ft2 - 43.2).abs() < 1e-9);
    }
}
