//! The fan: what it moves against the friction of its duct.

use serde::Serialize;

use super::duct::{self, Duct, Friction, MOST_CFM};
use super::{AirField, AirRefusal, amount, liters_per_second, more};
use crate::finish::steps::{figure, step};
use crate::order::Order;
use crate::working::{Source, Step, Unit};

/// The most rating points.
pub const MOST_POINTS: usize = 20;

/// The highest static pressure, inches of water.
pub const MOST_INWG: f64 = 10.0;

/// A fan's rating: so much flow against so much pressure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RatingPoint {
    /// Static pressure, inches of water.
    pub static_inwg: f64,
    /// Flow, cubic feet per minute.
    pub cfm: f64,
}

/// What is known of a fan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Curve {
    /// Its rating points, in any order.
    pub points: Vec<RatingPoint>,
    /// The pressure at which it moves nothing, inches of water, where the maker gives it.
    pub shutoff_inwg: Option<f64>,
}

/// How a flow was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FoundBy {
    /// On the line between two rating points.
    BetweenPoints,
    /// The duct takes less than the lowest rated pressure: at least the flow there.
    BelowFirstPoint,
    /// On the curve from the last rating point to the shutoff: p = shutoff - c q2.
    ToShutoff,
    /// Beyond the last rating point, and no shutoff is known: between the flow at which the duct takes the last rated
    /// pressure and the last rated flow.
    BeyondLastPoint,
}

/// What a duct leaves of a fan's flow.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FlowLeft {
    /// Not less than this, cubic feet per minute; on the straight lines between rating points, that itself.
    pub least_cfm: f64,
    /// Not more than this, cubic feet per minute.
    pub most_cfm: f64,
    /// What to count on: the least, cubic feet per minute.
    pub about_cfm: f64,
    /// The same, litres per second.
    pub about_l_per_s: f64,
    /// How it was found.
    pub found_by: FoundBy,
    /// The flow at the lowest rated pressure, as a catalogue heads it; cubic feet per minute.
    pub rated_cfm: f64,
    /// That pressure, inches of water.
    pub rated_inwg: f64,
    /// The share of that flow which the duct takes, percent.
    pub choked_percent: f64,
    /// The duct at the flow to count on.
    pub friction: Friction,
    /// The duct at the rated flow.
    pub friction_at_rated: Friction,
}

impl Curve {
    /// The points by rising pressure, falling in flow.
    fn sorted(&self) -> Result<Vec<RatingPoint>, AirRefusal> {
        if self.points.is_empty() {
            return Err(AirRefusal::NoRating);
        }
        if self.points.len() > MOST_POINTS {
            return Err(AirRefusal::TooManyPoints {
                count: self.points.len(),
            });
        }
        for point in &self.points {
            amount(AirField::Static, point.static_inwg, MOST_INWG)?;
            more(AirField::Flow, point.cfm, 1.0, MOST_CFM)?;
        }
        let mut points = self.points.clone();
        points.order_by(|a, b| a.static_inwg.total_cmp(&b.static_inwg));
        for pair in points.windows(2) {
            if let [less, more] = pair
                && (more.static_inwg <= less.static_inwg || more.cfm > less.cfm)
            {
                return Err(AirRefusal::NotFalling {
                    less_inwg: less.static_inwg,
                    less_cfm: less.cfm,
                    more_inwg: more.static_inwg,
                    more_cfm: more.cfm,
                });
            }
        }
        if let (Some(shutoff_inwg), Some(last)) = (self.shutoff_inwg, points.last()) {
            more(AirField::Shutoff, shutoff_inwg, 1e-3, MOST_INWG)?;
            if shutoff_inwg <= last.static_inwg {
                return Err(AirRefusal::ShutoffTooLow {
                    shutoff_inwg,
                    static_inwg: last.static_inwg,
                    cfm: last.cfm,
                });
            }
        }
        Ok(points)
    }

    /// The flow at a pressure, on the lines between rating points; none outside them.
    pub fn rated_cfm(&self, static_inwg: f64) -> Option<f64> {
        let points = self.sorted().ok()?;
        let exact = points
            .iter()
            .find(|point| (point.static_inwg - static_inwg).abs() < 1e-9);
        if let Some(point) = exact {
            return Some(point.cfm);
        }
        points.windows(2).find_map(|pair| match pair {
            [low, high] if low.static_inwg < static_inwg && static_inwg < high.static_inwg => {
                let share = (static_inwg - low.static_inwg) / (high.static_inwg - low.static_inwg);
                Some(low.cfm + share * (high.cfm - low.cfm))
            }
            _ => None,
        })
    }
}

/// The flow at which what the fan gives is what the duct takes.
///
/// A fan moves less against more pressure, and a duct takes more for more flow: they meet once. Between rating points the fan is
/// taken as a straight line. Where the duct takes less than the lowest rated pressure, the flow is at least the one there.
/// Beyond the last point it follows p = shutoff - c q2 through that point, if the shutoff is known; if not, only bounds are.
///
/// # Errors
/// [`AirRefusal`].
///
/// # Example
/// A fan known only as 80 cfm at 0.1 in, on 25 ft of flexible 4 in duct with two elbows and a cap: the duct would take
/// 0.51 in at 80 cfm, so it moves less, but no less than the 33 cfm or so at which the duct takes 0.1 in.
/// ```
/// use calc::air::duct::{Duct, DuctKind};
/// use calc::air::fan::{Curve, FoundBy, RatingPoint, flow_left};
/// let fan = Curve { points: vec![RatingPoint { static_inwg: 0.1, cfm: 80.0 }], shutoff_inwg: None };
/// let duct = Duct { diameter_in: 4.0, length_ft: 25.0, kind: DuctKind::Flexible, elbows: 2, elbow_ft: 15.0, cap_ft: 30.0 };
/// let left = flow_left(&fan, &duct)?;
/// assert_eq!((left.found_by, left.most_cfm), (FoundBy::BeyondLastPoint, 80.0));
/// assert!((33.0..35.0).contains(&left.least_cfm));
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn flow_left(fan: &Curve, of: &Duct) -> Result<FlowLeft, AirRefusal> {
    let points = fan.sorted()?;
    duct::check(of)?;
    let takes = |cfm: f64| duct::loss(of, cfm).inwg;
    let (Some(&first), Some(&last)) = (points.first(), points.last()) else {
        return Err(AirRefusal::NoRating);
    };
    // The last point up to whose flow the duct takes at least the point's pressure.
    let after = points
        .iter()
        .position(|point| takes(point.cfm) <= point.static_inwg);
    let (least_cfm, most_cfm, found_by) = match after {
        // At rest already: nothing is lost below the lowest rating.
        Some(0) => (first.cfm, first.cfm, FoundBy::BelowFirstPoint),
        Some(place) => {
            let before = points.get(place - 1).copied().unwrap_or(first);
            let at = points.get(place).copied().unwrap_or(last);
            let gives = |cfm: f64| {
                let run = before.cfm - at.cfm;
                let share = if run > 0.0 {
                    (before.cfm - cfm) / run
                } else {
                    1.0
                };
                before.static_inwg + share * (at.static_inwg - before.static_inwg)
            };
            let cfm = meet(&takes, &gives, at.cfm, before.cfm);
            (cfm, cfm, FoundBy::BetweenPoints)
        }
        None => match fan.shutoff_inwg {
            Some(shutoff_inwg) => {
                let c = (shutoff_inwg - last.static_inwg) / (last.cfm * last.cfm);
                let gives = |cfm: f64| shutoff_inwg - c * cfm * cfm;
                let cfm = meet(&takes, &gives, 0.0, last.cfm);
                (cfm, cfm, FoundBy::ToShutoff)
            }
            None => {
                let gives = |_: f64| last.static_inwg;
                let cfm = meet(&takes, &gives, 0.0, last.cfm);
                (cfm, last.cfm, FoundBy::BeyondLastPoint)
            }
        },
    };
    Ok(FlowLeft {
        least_cfm,
        most_cfm,
        about_cfm: least_cfm,
        about_l_per_s: liters_per_second(least_cfm),
        found_by,
        rated_cfm: first.cfm,
        rated_inwg: first.static_inwg,
        choked_percent: 100.0 * (1.0 - least_cfm / first.cfm),
        friction: duct::loss(of, least_cfm),
        friction_at_rated: duct::loss(of, first.cfm),
    })
}

/// The flow between two at which the duct takes what the fan gives: halved until the two are neighbours. What it takes may jump
/// up where the flow turns turbulent: then the flow just before it.
fn meet(takes: &dyn Fn(f64) -> f64, gives: &dyn Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    let (mut low, mut high) = (low, high);
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if takes(middle) <= gives(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

impl FlowLeft {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let cfm = |name, value| figure(name, value, Unit::Cfm);
        let mut steps = self.friction.working();
        let source = match self.found_by {
            FoundBy::BetweenPoints | FoundBy::BelowFirstPoint => Source::Entered,
            FoundBy::ToShutoff | FoundBy::BeyondLastPoint => Source::CommonPractice,
        };
        steps.push(step(
            "fan_meets_duct",
            vec![
                cfm("rated_flow", self.rated_cfm),
                figure("rated_pressure", self.rated_inwg, Unit::InchesOfWater),
                figure(
                    "duct_loss_at_rated",
                    self.friction_at_rated.inwg,
                    Unit::InchesOfWater,
                ),
                figure("duct_loss", self.friction.inwg, Unit::InchesOfWater),
            ],
            cfm("flow_left", self.about_cfm),
            source,
        ));
        steps.push(step(
            "liters_per_second",
            vec![cfm("flow_left", self.about_cfm)],
            figure("flow_left", self.about_l_per_s, Unit::LitersPerSecond),
            Source::Published("NIST SP 811"),
        ));
        steps
    }
}
