//! The quick sums: what each is asked, and the volume of a floor of even depth.

use serde::Serialize;

use super::{EntryProblem, Reader};
use crate::floor::mixing::BagAsk;
use crate::floor::ramp::Known;
use crate::job::fields;
use crate::job::sums::{AreaBy, PourSum, RampSum, RampWant};
use crate::quantity::{IN3_PER_FT3, Volume};
use crate::working::{Figure, Source, Step, Unit};

/// The two of rise, run and slope that were entered.
///
/// # Errors
/// Every entry that is missing or refused.
pub fn ramp_known(sum: &RampSum) -> Result<Known, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let known = match sum.want {
        RampWant::Run => Known::RiseAndSlope {
            rise_in: reader.need("rise", &fields::RISE, &sum.rise),
            slope: reader.need("slope", &fields::RAMP_SLOPE, &sum.slope),
        },
        RampWant::Slope => Known::RiseAndRun {
            rise_in: reader.need("rise", &fields::RISE, &sum.rise),
            run_in: reader.need("run", &fields::RAMP_LENGTH, &sum.run),
        },
        RampWant::Rise => Known::RunAndSlope {
            run_in: reader.need("run", &fields::RAMP_LENGTH, &sum.run),
            slope: reader.need("slope", &fields::RAMP_SLOPE, &sum.slope),
        },
    };
    reader.finish(known)
}

/// Area, depth and volume of a pour of even depth.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct EvenPour {
    /// Width and length, inches, where the area is theirs.
    pub sides_in: Option<(f64, f64)>,
    /// Area, square inches.
    pub area_in2: f64,
    /// Mean depth, inches.
    pub depth_in: f64,
    /// Volume, cubic inches.
    pub volume_in3: f64,
    /// Volume, cubic feet.
    pub volume_ft3: f64,
}

/// The volume: area x mean depth.
///
/// # Errors
/// Every entry that is missing or refused.
///
/// # Example
/// 40 square feet at 3/8 in: 40 x 0.375 / 12 = 1.25 cubic feet.
/// ```
/// use calc::job::{Typed, questions::sums::even_pour, sums::{AreaBy, PourSum}};
/// let sum = PourSum { by: AreaBy::Area, area: Typed::plain("40 sq ft"), depth: Typed::plain("3/8\""), ..PourSum::default() };
/// assert_eq!(even_pour(&sum).unwrap().volume_ft3, 1.25);
/// ```
pub fn even_pour(sum: &PourSum) -> Result<EvenPour, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let (sides_in, area_in2) = match sum.by {
        AreaBy::Sides => {
            let width_in = reader.need("width", &fields::SIDE, &sum.width);
            let length_in = reader.need("length", &fields::SIDE, &sum.length);
            (Some((width_in, length_in)), width_in * length_in)
        }
        AreaBy::Area => (None, reader.need("area", &fields::FLOOR_AREA, &sum.area)),
    };
    let depth_in = reader.need("depth", &fields::DEPTH, &sum.depth);
    let volume_in3 = area_in2 * depth_in;
    reader.finish(EvenPour {
        sides_in,
        area_in2,
        depth_in,
        volume_in3,
        volume_ft3: volume_in3 / IN3_PER_FT3,
    })
}

/// The bags for that volume; blank water counts as none.
///
/// # Errors
/// Every entry that is missing or refused.
pub fn bag_ask(sum: &PourSum, pour: &EvenPour) -> Result<BagAsk, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let yield_in3 = reader.need("bag_yield", &fields::BAG_YIELD, &sum.bag_yield);
    let allowance_percent = reader.need(
        "allowance_percent",
        &fields::ALLOWANCE,
        &sum.allowance_percent,
    );
    let water_in3 = reader.may("bag_water", &fields::BAG_WATER, &sum.bag_water);
    reader.finish(BagAsk {
        volume_ft3: pour.volume_ft3,
        allowance_percent,
        yield_ft3_per_bag: Volume::from_in3(yield_in3).ft3(),
        water_qt_per_bag: water_in3.map(|in3| Volume::from_in3(in3).qt()),
    })
}

impl EvenPour {
    /// The steps behind it.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let step = |formula, inputs, result| Step {
            formula,
            inputs,
            result,
            source: Source::Arithmetic,
        };
        let area = figure("area", self.area_in2, Unit::In2);
        let volume = figure("volume", self.volume_in3, Unit::In3);
        let sides = self.sides_in.map(|(width_in, length_in)| {
            let sides = vec![
                figure("width", width_in, Unit::In),
                figure("length", length_in, Unit::In),
            ];
            step("area_of_rectangle", sides, area.clone())
        });
        let depth = figure("mean_depth", self.depth_in, Unit::In);
        sides
            .into_iter()
            .chain([
                step("volume", vec![area.clone(), depth], volume.clone()),
                step(
                    "cubic_feet",
                    vec![volume],
                    figure("volume", self.volume_ft3, Unit::Ft3),
                ),
            ])
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::mixing::bags;
    use crate::floor::ramp::incline;
    use crate::job::Typed;

    fn names(problems: Vec<EntryProblem>) -> Vec<&'static str> {
        problems.into_iter().map(|problem| problem.name).collect()
    }

    #[test]
    fn the_two_that_are_not_wanted_are_asked_for() {
        let typed = Typed::plain;
        let mut sum = RampSum {
            rise: typed("3/4\""),
            run: typed("9\""),
            slope: typed("1:12"),
            ..RampSum::default()
        };
        // Slope conversions, by hand: 3/4 in at 1:12 runs 9 in.
        for want in [RampWant::Run, RampWant::Slope, RampWant::Rise] {
            sum.want = want;
            let got = incline(ramp_known(&sum).unwrap()).unwrap();
            for (got, by_hand) in [
                (got.rise_in, 0.75),
                (got.run_in, 9.0),
                (got.in_per_ft, 1.0),
                (got.in_per_4ft, 4.0),
            ] {
                assert!(
                    (got - by_hand).abs() < 1e-12,
                    "{want:?}: {got} is not {by_hand}"
                );
            }
        }
        let nothing = |want| {
            names(
                ramp_known(&RampSum {
                    want,
                    ..RampSum::default()
                })
                .unwrap_err(),
            )
        };
        assert_eq!(nothing(RampWant::Run), ["rise", "slope"]);
        assert_eq!(nothing(RampWant::Slope), ["rise", "run"]);
        assert_eq!(nothing(RampWant::Rise), ["run", "slope"]);
    }

    #[test]
    fn volume_and_bags_worked_by_hand() {
        // 7 ft 6 in x 10 ft = 75 ft2; at 1/2 in 3.125 ft3; with 10 % 3.4375; in bags of 0.45 ft3 7.64, so 8 bags
        // and 44 qt at 5.5 qt each.
        let sum = PourSum {
            width: Typed::plain("7' 6\""),
            length: Typed::plain("10'"),
            depth: Typed::plain("1/2\""),
            ..PourSum::default()
        };
        let pour = even_pour(&sum).unwrap();
        assert_eq!((pour.area_in2, pour.volume_ft3), (75.0 * 144.0, 3.125));
        let answer = bags(&bag_ask(&sum, &pour).unwrap()).unwrap();
        assert_eq!(answer.bags, 8);
        assert!(answer.water_qt.is_some_and(|qt| (qt - 44.0).abs() < 1e-9));
        assert_eq!(pour.working().len(), 3);
    }

    #[test]
    fn every_missing_entry_is_told() {
        let sum = PourSum {
            bag_yield: Typed::default(),
            allowance_percent: Typed::plain("-1"),
            ..PourSum::default()
        };
        assert_eq!(
            names(even_pour(&sum).unwrap_err()),
            ["width", "length", "depth"]
        );
        let by_area = PourSum {
            by: AreaBy::Area,
            ..sum.clone()
        };
        assert_eq!(names(even_pour(&by_area).unwrap_err()), ["area", "depth"]);
        let pour = EvenPour {
            sides_in: None,
            area_in2: 1.0,
            depth_in: 1.0,
            volume_in3: 1.0,
            volume_ft3: 1.0 / 1728.0,
        };
        assert_eq!(
            names(bag_ask(&sum, &pour).unwrap_err()),
            ["bag_yield", "allowance_percent"]
        );
    }
}
