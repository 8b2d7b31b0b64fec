//! Readings that disagree with their neighbours.

use crate::order::Order;
use std::collections::BTreeSet;

use serde::Serialize;

use super::local_plane::{Plane, Seen, best_agreeing, fit, is_spread, lay_out};
use super::neighbours::Neighbours;
use crate::floor::{geometry::Point, surface::Spot};

/// The neighbours that a reading is held against.
pub const NEIGHBOURS: usize = 8;

/// With fewer spots nothing is judged: among so few no reading can be told from a wrong one.
pub const LEAST_JUDGED: usize = 7;

/// Times the usual residual at which a reading is marked: the modified z-score of 3.5 of Iglewicz and Hoaglin
/// (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17).
pub const CUT_OFF: f64 = 3.5;

/// No residual below this is marked, inches: a rule held by hand on an old floor reads no finer.
pub const LEAST_RESIDUAL_IN: f64 = 0.125;

/// The median of absolute residuals times this estimates their standard deviation, where they are normal.
const MAD_TO_DEVIATION: f64 = 1.4826;

/// Neighbours that must agree before they are believed: a plane takes three, two more bear it out.
pub(super) const AGREEING: usize = 5;

/// A reading to take again.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Suspect {
    /// Index of the spot.
    pub index: usize,
    /// The height that its neighbours lead to expect, inches.
    pub expected_in: f64,
    /// Its height less that, inches.
    pub residual_in: f64,
    /// The residual that would have been let pass there, inches.
    pub limit_in: f64,
}

/// The readings that disagree with their neighbours, by index. They are told, never dropped.
///
/// Each spot is left out in turn and its height expected from the weighted plane of its nearest [`NEIGHBOURS`]. Where
/// these disagree among themselves it is the plane of those that agree with the [`AGREEING`] that a plane fits best
/// (least trimmed squares), so that a wrong neighbour or a step in the floor does not count. A residual is divided by
/// the root of 1 + the plane's leverage at the spot, which allows for how far the neighbours have to reach, and marked
/// over [`CUT_OFF`] times the median of all or what its own neighbours are off their plane, but never under
/// [`LEAST_RESIDUAL_IN`]: on a curved floor a plane is off by the curve. So a small slip on a badly sagged floor goes unmarked.
///
/// # Example
/// ```
/// use calc::floor::{Point, Spot, survey::suspects};
/// let spot = |i: u32| Spot { at: Point::new(f64::from(i % 5) * 24.0, f64::from(i / 5) * 24.0), height_in: 0.25 };
/// let mut spots: Vec<Spot> = (0..25).map(spot).collect();
/// spots[7].height_in = 1.25;
/// let marked = suspects(&spots);
/// assert_eq!(marked.len(), 1);
/// assert_eq!((marked[0].index, marked[0].residual_in.round()), (7, 1.0));
/// ```
pub fn suspects(spots: &[Spot]) -> Vec<Suspect> {
    let counted: Vec<(usize, Spot)> = spots
        .iter()
        .copied()
        .enumerate()
        .filter(|(_, spot)| is_number(*spot))
        .collect();
    if counted.len() < LEAST_JUDGED {
        return Vec::new();
    }
    let points: Vec<Point> = counted.iter().map(|(_, spot)| spot.at).collect();
    let tree = Neighbours::new(&points);
    let around = |place: usize, at: Point, without: &BTreeSet<usize>| {
        let nearest = tree.nearest(place, NEIGHBOURS + without.len().min(NEIGHBOURS));
        let kept = nearest
            .into_iter()
            .filter(|other| !without.contains(other))
            .take(NEIGHBOURS);
        let near: Vec<Spot> = kept
            .filter_map(|other| counted.get(other))
            .map(|(_, spot)| *spot)
            .collect();
        Around::new(&near, at)
    };
    let everyone = BTreeSet::new();
    let all: Vec<(usize, Around)> = points
        .iter()
        .enumerate()
        .filter_map(|(place, &at)| Some((place, around(place, at, &everyone)?)))
        .collect();
    let mut misfits: Vec<f64> = all
        .iter()
        .filter_map(|(_, around)| around.misfit_in())
        .collect();
    let rough_in = median(&mut misfits);
    let judged: Vec<(usize, Residual)> = all
        .iter()
        .filter_map(|(place, around)| {
            let (_, spot) = counted.get(*place)?;
            Some((*place, around.residual(spot.height_in, rough_in)?))
        })
        .collect();
    let mut sizes: Vec<f64> = judged
        .iter()
        .map(|(_, residual)| residual.off_in.abs() / residual.reach)
        .collect();
    let usual_in = CUT_OFF * MAD_TO_DEVIATION * median(&mut sizes);
    let mut doubted: Vec<(usize, Residual)> = judged
        .into_iter()
        .filter(|(_, residual)| residual.times(usual_in) > 1.0)
        .collect();
    doubted.order_by(|(_, a), (_, b)| b.times(usual_in).total_cmp(&a.times(usual_in)));
    // The worst first: a reading that only disagrees with a wrong one is judged again without it, and must disagree
    // with the plane of all its other neighbours too.
    let mut wrong = BTreeSet::new();
    let mut marked = Vec::new();
    for (place, first) in doubted {
        let Some(&(index, spot)) = counted.get(place) else {
            continue;
        };
        let again = around(place, spot.at, &wrong);
        let again = again
            .into_iter()
            .flat_map(|around| around.both(spot.height_in, rough_in))
            .flatten();
        let least = again.min_by(|a, b| a.times(usual_in).total_cmp(&b.times(usual_in)));
        let residual = least.unwrap_or(first);
        if residual.times(usual_in) > 1.0 {
            wrong.insert(place);
            marked.push(Suspect {
                index,
                expected_in: spot.height_in - residual.off_in,
                residual_in: residual.off_in,
                limit_in: residual.limit_in(usual_in),
            });
        }
    }
    marked.order_by_key(|suspect| suspect.index);
    marked
}

fn is_number(spot: Spot) -> bool {
    spot.at.x_in.is_finite() && spot.at.y_in.is_finite() && spot.height_in.is_finite()
}

/// A reading held against the plane of its neighbours.
#[derive(Clone, Copy)]
struct Residual {
    /// Its height less the plane's, inches.
    off_in: f64,
    /// The root of 1 + the plane's leverage at the spot.
    reach: f64,
    /// How far the neighbours that agree are from their plane, the root of their mean square, inches.
    misfit_in: f64,
}

impl Residual {
    /// A height at the spot held against the plane of these neighbours.
    fn of(plane: &Plane, height_in: f64, seen: &[Seen]) -> Self {
        Self {
            off_in: height_in - plane.height_in,
            reach: (1.0 + plane.leverage).sqrt(),
            misfit_in: plane.misfit_in(seen),
        }
    }

    /// What is let pass, where `usual_in` is let pass of a residual at no reach, inches.
    fn limit_in(&self, usual_in: f64) -> f64 {
        usual_in
            .max(CUT_OFF * self.misfit_in)
            .max(LEAST_RESIDUAL_IN)
            * self.reach
    }

    /// The residual as so many times what is let pass.
    fn times(&self, usual_in: f64) -> f64 {
        self.off_in.abs() / self.limit_in(usual_in)
    }
}

/// A spot's neighbours.
struct Around {
    seen: Vec<Seen>,
    /// Whether they lie along one line.
    flat: bool,
}

impl Around {
    fn new(near: &[Spot], at: Point) -> Option<Self> {
        let farthest_in = near
            .iter()
            .map(|spot| spot.at.distance_in(at))
            .fold(0.0, f64::max);
        if near.len() < AGREEING || farthest_in <= 0.0 {
            return None;
        }
        let see = |spot: &Spot| {
            let (dx, dy) = (
                (spot.at.x_in - at.x_in) / farthest_in,
                (spot.at.y_in - at.y_in) / farthest_in,
            );
            Seen {
                dx,
                dy,
                height_in: spot.height_in,
                weight: 1.0 / (0.25 + dx * dx + dy * dy),
            }
        };
        let (seen, flat) = lay_out(near.iter().map(see).collect())?;
        Some(Self { seen, flat })
    }

    /// How far the neighbours are from a plane, all of them taken, inches.
    fn misfit_in(&self) -> Option<f64> {
        Some(fit(self.seen.iter())?.misfit_in(&self.seen))
    }

    /// A height held against a floor on which neighbours are usually `rough_in` from a plane.
    fn residual(&self, height_in: f64, rough_in: f64) -> Option<Residual> {
        let usual_in = LEAST_RESIDUAL_IN.max(4.0 * rough_in);
        let all = fit(self.seen.iter())?;
        if self.seen.iter().all(|one| all.off(one).abs() <= usual_in) {
            return Some(Residual::of(&all, height_in, &self.seen));
        }
        let best = best_agreeing(&self.seen, self.flat)?;
        let mut off: Vec<f64> = self.seen.iter().map(|one| best.off(one).abs()).collect();
        let band_in = usual_in.max(2.5 * MAD_TO_DEVIATION * median(&mut off));
        let agreeing: Vec<Seen> = self
            .seen
            .iter()
            .copied()
            .filter(|one| best.off(one).abs() <= band_in)
            .collect();
        let borne = self.flat || is_spread(&agreeing);
        let plane = if borne {
            fit(agreeing.iter()).unwrap_or(best)
        } else {
            best
        };
        Some(Residual::of(&plane, height_in, &agreeing))
    }

    /// The residual of the neighbours that agree, and that of all of them.
    fn both(&self, height_in: f64, rough_in: f64) -> [Option<Residual>; 2] {
        let all = fit(self.seen.iter()).map(|plane| Residual::of(&plane, height_in, &self.seen));
        [self.residual(height_in, rough_in), all]
    }
}

fn median(values: &mut [f64]) -> f64 {
    values.order_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// A grid of spots with a height at each.
    fn grid(columns: u32, rows: u32, apart_in: f64, height: impl Fn(f64, f64) -> f64) -> Vec<Spot> {
        (0..columns * rows)
            .map(|index| {
                let (x_in, y_in) = (
                    f64::from(index % columns) * apart_in,
                    f64::from(index / columns) * apart_in,
                );
                Spot {
                    at: Point::new(x_in, y_in),
                    height_in: height(x_in, y_in),
                }
            })
            .collect()
    }

    fn marked(spots: &[Spot]) -> Vec<usize> {
        suspects(spots)
            .into_iter()
            .map(|suspect| suspect.index)
            .collect()
    }

    fn to_sixteenths(height_in: f64) -> f64 {
        (height_in * 16.0).round() / 16.0
    }

    /// Floors as they are met, all read right: none may be marked; with a slip, inches, that must be. A room of 10 by 12 ft.
    fn smooth_floors() -> Vec<(&'static str, f64, Vec<Spot>)> {
        let floor =
            |height: fn(f64, f64) -> f64| grid(6, 7, 24.0, move |x, y| to_sixteenths(height(x, y)));
        vec![
            ("level", 1.0, floor(|_, _| 0.0)),
            (
                "tilted 1 in per 4 ft",
                1.0,
                floor(|x, y| 0.02 * x - 0.006 * y),
            ),
            (
                "sagged 1/2 in at mid-span",
                1.0,
                floor(|x, _| -2.0 * x * (120.0 - x) / 14400.0),
            ),
            (
                "sagged 1-1/2 in at mid-span",
                2.5,
                floor(|x, _| -6.0 * x * (120.0 - x) / 14400.0),
            ),
            (
                "dished 1 in",
                1.0,
                floor(|x, y| -(x * (120.0 - x) / 3600.0) * (y * (144.0 - y) / 5184.0)),
            ),
            (
                "a corner settled 1 in",
                1.0,
                floor(|x, y| -(-(x * x + y * y) / 5000.0).exp()),
            ),
            (
                "a hump of 3/4 in",
                1.0,
                floor(|x, y| 0.75 * (-((x - 60.0).powi(2) + (y - 72.0).powi(2)) / 3000.0).exp()),
            ),
            (
                "a ridge over a beam",
                1.0,
                floor(|x, _| -0.01 * (x - 60.0).abs()),
            ),
        ]
    }

    #[test]
    fn smooth_floors_are_not_marked() {
        for (name, _, spots) in smooth_floors() {
            assert_eq!(
                marked(&spots),
                [0usize; 0],
                "{name}: {:?}",
                suspects(&spots)
            );
        }
    }

    #[test]
    fn a_slip_is_marked_alone() {
        for (name, slip_in, spots) in smooth_floors() {
            for index in 0..spots.len() {
                let mut spots = spots.clone();
                spots[index].height_in -= slip_in;
                assert_eq!(marked(&spots), [index], "{name}: {:?}", suspects(&spots));
            }
        }
    }

    #[test]
    fn a_step_is_not_a_slip() {
        // An old wall line: one half of the room stands 3/4 in over the other.
        for along_y in [false, true] {
            let spots = grid(6, 7, 24.0, |x, y| {
                if (if along_y { y } else { x }) > 60.0 {
                    0.75
                } else {
                    0.0
                }
            });
            let marks = marked(&spots);
            assert!(marks.len() <= 2, "{marks:?}");
        }
    }

    #[test]
    fn two_slips_side_by_side_are_both_marked() {
        for (one, other) in [(8, 9), (20, 27), (0, 1), (14, 20)] {
            let mut spots = grid(6, 7, 24.0, |x, y| to_sixteenths(0.01 * x - 0.004 * y));
            spots[one].height_in += 1.0;
            spots[other].height_in -= 0.75;
            assert_eq!(marked(&spots), [one, other]);
        }
    }

    #[test]
    fn spots_along_a_line_are_judged() {
        let mut spots = grid(12, 1, 24.0, |x, _| 0.01 * x);
        assert_eq!(marked(&spots), [0usize; 0]);
        spots[5].height_in += 1.0;
        assert_eq!(marked(&spots), [5]);
    }

    #[test]
    fn nothing_is_judged_among_few() {
        let mut spots = grid(3, 2, 24.0, |_, _| 0.0);
        spots[1].height_in = 5.0;
        assert_eq!(marked(&spots), [0usize; 0]);
        let same = vec![
            Spot {
                at: Point::default(),
                height_in: 1.0
            };
            40
        ];
        assert_eq!(marked(&same), [0usize; 0]);
    }

    proptest! {
        /// Turned, moved and raised, the same readings are marked.
        #[test]
        fn moving_the_room_changes_nothing(
            places in prop::collection::vec((0.0..144.0f64, 0.0..144.0f64, -0.1..0.1f64), 20..60),
            turn in 0.0..6.3f64, by in (-500.0..500.0f64, -500.0..500.0f64, -40.0..40.0f64), wrong in 0..20usize,
        ) {
            let mut spots: Vec<Spot> = places.iter().map(|&(x, y, slip)| Spot { at: Point::new(x, y), height_in: 0.01 * x + slip }).collect();
            spots[wrong].height_in += 2.0;
            let (sin, cos) = turn.sin_cos();
            let moved: Vec<Spot> = spots.iter().map(|spot| Spot {
                at: Point::new(cos * spot.at.x_in - sin * spot.at.y_in + by.0, sin * spot.at.x_in + cos * spot.at.y_in + by.1),
                height_in: spot.height_in + by.2,
            }).collect();
            let (here, there) = (suspects(&spots), suspects(&moved));
            prop_assert_eq!(here.len(), there.len());
            for (a, b) in here.iter().zip(&there) {
                prop_assert_eq!(a.index, b.index);
                prop_assert!((a.residual_in - b.residual_in).abs() < 1e-6 && (a.limit_in - b.limit_in).abs() < 1e-6);
            }
        }

        #[test]
        fn any_numbers_get_an_answer(places in prop::collection::vec((prop::num::f64::ANY, prop::num::f64::ANY, prop::num::f64::ANY), 0..20)) {
            let spots: Vec<Spot> = places.iter().map(|&(x, y, height_in)| Spot { at: Point::new(x, y), height_in }).collect();
            for suspect in suspects(&spots) {
                prop_assert!(suspect.index < spots.len() && !suspect.residual_in.is_nan());
            }
        }
    }
}
