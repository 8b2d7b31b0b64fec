//! The spots to read, in walking order.

use crate::order::Order;
use serde::Serialize;
use thiserror::Error;

use crate::floor::{geometry::Outline, geometry::Point, opening::OpeningSpan};

/// The closest spacing that is proposed, inches.
pub const LEAST_SPACING_IN: f64 = 6.0;

/// The most spots that a survey may have.
pub const MOST_SPOTS: usize = 10_000;

/// A grid spot this near to a corner or a jamb is left out, inches: it would say the same.
pub const NEAR_IN: f64 = 3.0;

/// A jamb this near to a corner or to another jamb is left out, inches: one pin stands for both.
pub const LEAST_APART_IN: f64 = 1.0;

/// A spot to read.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Proposed {
    /// Where.
    pub at: Point,
    /// Why there.
    pub why: Why,
}

/// Why a spot is proposed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Why {
    /// A corner of the room: without it the surface takes the nearest reading there.
    Corner,
    /// A jamb of an opening: the pour's height there is a step.
    Jamb,
    /// The grid between.
    Grid,
}

/// Proposes spots: every corner, both jambs of each opening, and a grid no wider than `spacing_in`.
///
/// Grid lines run along the walls of a square-cornered room (through its corners' coordinates, where these are not
/// close together) and part what lies between evenly. A crossing of two lines that lies outside, but within a quarter
/// of the spacing of a wall, is moved onto the wall, so that a wall out of square has its spots too. The order goes to
/// and fro in lanes along the room's longer side, beginning at the near left.
///
/// # Errors
/// [`SurveyRefusal`]: a spacing under [`LEAST_SPACING_IN`] or no number; over [`MOST_SPOTS`] spots.
///
/// # Example
/// ```
/// use calc::floor::{outline::rectangle, survey::propose};
/// let spots = propose(&rectangle(60.0, 96.0).unwrap(), &[], 24.0).unwrap();
/// assert_eq!(spots.len(), 4 * 5);
/// ```
pub fn propose(
    outline: &Outline,
    openings: &[OpeningSpan],
    spacing_in: f64,
) -> Result<Vec<Proposed>, SurveyRefusal> {
    let fits = spacing_in.is_finite() && spacing_in >= LEAST_SPACING_IN;
    if !fits {
        return Err(SurveyRefusal::Spacing {
            given_in: spacing_in,
            least_in: LEAST_SPACING_IN,
        });
    }
    let columns = lines(
        outline.corners().iter().map(|corner| corner.x_in),
        spacing_in,
    );
    let rows = lines(
        outline.corners().iter().map(|corner| corner.y_in),
        spacing_in,
    );
    let mut spots: Vec<Proposed> = outline
        .corners()
        .iter()
        .map(|&at| Proposed {
            at,
            why: Why::Corner,
        })
        .collect();
    for at in openings
        .iter()
        .flat_map(|opening| [opening.left, opening.right])
    {
        if !is_near(&spots, at, LEAST_APART_IN) {
            spots.push(Proposed { at, why: Why::Jamb });
        }
    }
    let fixed = spots.len();
    for &y_in in &rows {
        for &x_in in &columns {
            let crossing = Point::new(x_in, y_in);
            let taken = if outline.contains(crossing) {
                (!is_near(spots.get(..fixed).unwrap_or_default(), crossing, NEAR_IN))
                    .then_some(crossing)
            } else {
                let wall = outline.nearest_wall(crossing);
                let moved =
                    wall.distance_in <= spacing_in / 4.0 && !is_near(&spots, wall.at, NEAR_IN);
                moved.then_some(wall.at)
            };
            if let Some(at) = taken {
                spots.push(Proposed { at, why: Why::Grid });
                if spots.len() > MOST_SPOTS {
                    return Err(SurveyRefusal::TooManySpots { most: MOST_SPOTS });
                }
            }
        }
    }
    if spots.len() > MOST_SPOTS {
        return Err(SurveyRefusal::TooManySpots { most: MOST_SPOTS });
    }
    order(&mut spots, &columns, &rows);
    Ok(spots)
}

/// Why no spots are proposed.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum SurveyRefusal {
    /// A spacing that is too close, or no number.
    #[error("a spacing of {given_in} in is under {least_in} in")]
    Spacing {
        /// What was given, inches.
        given_in: f64,
        /// The least, inches.
        least_in: f64,
    },
    /// More spots than a survey may have.
    #[error("more than {most} spots")]
    TooManySpots {
        /// The most.
        most: usize,
    },
}

/// Grid lines through the corners' coordinates, evenly parted to no more than the spacing. Of coordinates closer
/// than a third of the spacing only the outer ones keep their line.
fn lines(corners: impl Iterator<Item = f64>, spacing_in: f64) -> Vec<f64> {
    let mut sorted: Vec<f64> = corners.collect();
    sorted.order_by(f64::total_cmp);
    let (Some(&low), Some(&high)) = (sorted.first(), sorted.last()) else {
        return Vec::new();
    };
    let mut stops = vec![low];
    let mut last = low;
    for at in sorted {
        if at - last >= spacing_in / 3.0 && high - at >= spacing_in / 3.0 {
            stops.push(at);
            last = at;
        }
    }
    stops.push(high);
    let mut lines = vec![low];
    for (from, to) in stops.iter().zip(stops.iter().skip(1)) {
        // A gap of a whole number of spacings, but for rounding, needs no line more.
        let parts = ((to - from) / spacing_in - 1e-9).ceil().max(1.0);
        let mut part = 1.0;
        while part < parts {
            lines.push(from + (to - from) * part / parts);
            part += 1.0;
        }
        lines.push(*to);
    }
    lines
}

fn is_near(spots: &[Proposed], at: Point, within_in: f64) -> bool {
    spots.iter().any(|spot| spot.at.distance_in(at) < within_in)
}

/// Sorts spots into lanes along the longer side, every other lane backwards.
fn order(spots: &mut [Proposed], columns: &[f64], rows: &[f64]) {
    let reach = |lines: &[f64]| lines.last().unwrap_or(&0.0) - lines.first().unwrap_or(&0.0);
    let lanes_along_x = reach(columns) >= reach(rows);
    let lanes = if lanes_along_x { rows } else { columns };
    let key = |spot: &Proposed| {
        let (along, across) = if lanes_along_x {
            (spot.at.x_in, spot.at.y_in)
        } else {
            (spot.at.y_in, spot.at.x_in)
        };
        let lane = nearest(lanes, across);
        (
            lane,
            if lane.is_multiple_of(2) {
                along
            } else {
                -along
            },
            across,
        )
    };
    spots.order_by(|a, b| {
        let ((a_lane, a_along, a_across), (b_lane, b_along, b_across)) = (key(a), key(b));
        a_lane
            .cmp(&b_lane)
            .then(a_along.total_cmp(&b_along))
            .then(a_across.total_cmp(&b_across))
    });
}

/// Index of the line nearest to a coordinate; the lines are sorted.
fn nearest(lines: &[f64], at: f64) -> usize {
    let after = lines.partition_point(|line| *line < at);
    let away = |index: usize| {
        lines
            .get(index)
            .map_or(f64::INFINITY, |line| (line - at).abs())
    };
    if after > 0 && away(after - 1) <= away(after) {
        after - 1
    } else {
        after
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::floor::opening::{Span, place};
    use crate::floor::outline::{WallRun, l_shape, rectangle, walk};
    use crate::job::Corner;

    fn hops(spots: &[Proposed]) -> Vec<f64> {
        spots
            .windows(2)
            .map(|pair| pair[0].at.distance_in(pair[1].at))
            .collect()
    }

    #[test]
    fn a_bathroom_is_walked_to_and_fro() {
        let spots = propose(&rectangle(60.0, 96.0).unwrap(), &[], 24.0).unwrap();
        // 60 in in 3 parts of 20, 96 in in 4 of 24: 4 x 5 spots, lanes along the 96 in side.
        assert_eq!(spots.len(), 20);
        assert_eq!(spots[1].at, Point::new(0.0, 24.0));
        assert_eq!(spots[5].at, Point::new(20.0, 96.0));
        assert_eq!(
            spots.iter().filter(|spot| spot.why == Why::Corner).count(),
            4
        );
        assert!(hops(&spots).iter().all(|&hop| hop <= 24.0));
    }

    #[test]
    fn jambs_take_the_place_of_grid_spots() {
        let room = rectangle(60.0, 96.0).unwrap();
        // Jambs at x = 18 and 48 on the near wall, at y = 0 and 30 on the right one; the grid has x = 20 and 40.
        let spans = [
            Span {
                wall: 0,
                from_in: 18.0,
                width_in: 30.0,
            },
            Span {
                wall: 1,
                from_in: 0.0,
                width_in: 30.0,
            },
        ];
        let spots = propose(&room, &place(&room, &spans).unwrap(), 24.0).unwrap();
        let jambs: Vec<Point> = spots
            .iter()
            .filter(|spot| spot.why == Why::Jamb)
            .map(|spot| spot.at)
            .collect();
        assert_eq!(
            jambs,
            [
                Point::new(18.0, 0.0),
                Point::new(48.0, 0.0),
                Point::new(60.0, 30.0)
            ]
        );
        assert!(!spots.iter().any(|spot| spot.at == Point::new(20.0, 0.0)));
        assert_eq!(spots.len(), 20 + 3 - 1);
    }

    #[test]
    fn every_wall_of_an_l_has_its_spots() {
        let room = l_shape(120.0, 108.0, 48.0, 48.0, Corner::FarRight).unwrap();
        let spots = propose(&room, &[], 24.0).unwrap();
        // The notch's walls stand at x = 72 and y = 60.
        for (x_in, y_in) in [(72.0, 84.0), (96.0, 60.0)] {
            assert!(
                spots
                    .iter()
                    .any(|spot| spot.at.distance_in(Point::new(x_in, y_in)) < 1e-9),
                "{x_in}, {y_in}"
            );
        }
    }

    #[test]
    fn a_wall_out_of_square_has_its_spots() {
        // A tape's slip in one wall leaves the room a little out of square.
        let runs = [120.0, 144.0, 119.5, 144.0].map(|length_in| WallRun {
            length_in,
            turn_left_deg: 90.0,
        });
        let room = walk(&runs).unwrap().outline;
        let spots = propose(&room, &[], 24.0).unwrap();
        for wall in room.walls() {
            let on = spots
                .iter()
                .filter(|spot| wall.distance_in(spot.at) < 1.0)
                .count();
            assert!(on >= 6, "{on} spots on {wall:?}");
        }
    }

    #[test]
    fn too_many_is_refused() {
        let hall = rectangle(6000.0, 6000.0).unwrap();
        assert_eq!(
            propose(&hall, &[], 6.0),
            Err(SurveyRefusal::TooManySpots { most: MOST_SPOTS })
        );
        assert!(propose(&hall, &[], 72.0).is_ok());
        for given_in in [5.9, f64::NAN, f64::INFINITY, -24.0] {
            assert!(matches!(
                propose(&hall, &[], given_in),
                Err(SurveyRefusal::Spacing { .. })
            ));
        }
    }

    proptest! {
        #[test]
        fn spots_lie_inside_and_close_together(
            width in 40.0..300.0f64, length in 40.0..300.0f64, notch in (0.1..0.9f64, 0.1..0.9f64),
            corner in prop::sample::select(vec![Corner::NearLeft, Corner::NearRight, Corner::FarRight, Corner::FarLeft]),
            from_in in 0.0..10.0f64, spacing_in in 8.0..60.0f64,
        ) {
            let room = l_shape(width, length, width * notch.0, length * notch.1, corner).unwrap();
            let door = room.wall(2).unwrap().length_in() - from_in - 1.0;
            let openings = place(&room, &[Span { wall: 2, from_in, width_in: door }]).unwrap_or_default();
            let spots = propose(&room, &openings, spacing_in).unwrap();
            for spot in &spots {
                prop_assert!(room.contains(spot.at), "{:?}", spot);
            }
            for (index, spot) in spots.iter().enumerate() {
                for other in &spots[..index] {
                    prop_assert!(spot.at.distance_in(other.at) >= LEAST_APART_IN);
                }
            }
            for corner in room.corners() {
                prop_assert!(spots.iter().any(|spot| spot.at == *corner && spot.why == Why::Corner));
            }
            // Lines are no wider apart than the spacing, and each crossing in the room has a spot, or one near.
            let xs = lines(room.corners().iter().map(|corner| corner.x_in), spacing_in);
            let ys = lines(room.corners().iter().map(|corner| corner.y_in), spacing_in);
            for gaps in [&xs, &ys] {
                prop_assert!(gaps.windows(2).all(|pair| pair[0] < pair[1] && pair[1] - pair[0] <= spacing_in * (1.0 + 1e-6)));
            }
            for at in xs.iter().flat_map(|&x_in| ys.iter().map(move |&y_in| Point::new(x_in, y_in))) {
                prop_assert!(!room.contains(at) || is_near(&spots, at, NEAR_IN + 1e-9));
            }
            // To and fro beats going back to the start of every lane: at most a lane's change a lane.
            let walked: f64 = hops(&spots).iter().sum();
            let lanes = xs.len().min(ys.len()).max(2) as f64 + 1.0;
            prop_assert!(walked <= lanes * (width + length) , "{walked}");
        }
    }
}
