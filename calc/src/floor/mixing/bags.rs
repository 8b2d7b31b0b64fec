//! Bags and water for a volume.

use serde::Serialize;

use super::{Field, MixingRefusal, amount, more_than_nothing, up};
use crate::working::{Figure, Source, Step, Unit};

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
    }
}
