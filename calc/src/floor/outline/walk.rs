//! The outline from a walk round the walls, with its closing error.

use serde::Serialize;

use super::{Part, ShapeRefusal, check_size};
use crate::floor::geometry::{MOST_CORNERS, Outline, OutlineRefusal, Point, signed_area_in2};

/// The closing error that is shared out, as a share of the perimeter: 1/2 percent. A tape in a furnished room does
/// better; past it a wall is wrong.
pub const MOST_MISS: f64 = 0.005;

/// The most by which all turns together may differ from a full turn, degrees: a few corners, each read to a degree or
/// so. Common practice.
pub const MOST_TURNS_OVER_DEG: f64 = 5.0;

/// A closing error below this is rounding, inches.
const ROUNDING_IN: f64 = 1e-9;

/// How far from a corner its two marks are made to measure across it, inches: 3 ft.
pub const CORNER_MARK_IN: f64 = 36.0;

/// What a square corner measures across its marks, inches: the diagonal of a square of that side.
pub const SQUARE_ACROSS_IN: f64 = CORNER_MARK_IN * std::f64::consts::SQRT_2;

/// The turn at a corner in degrees, from the distance in inches between two marks, one on each wall,
/// [`CORNER_MARK_IN`] from the corner: half of it is the sine of half the angle between the walls. Square is
/// 36 in times the root of 2; the longest, both marks together, is no turn at all.
///
/// # Example
/// ```
/// use calc::floor::outline::{SQUARE_ACROSS_IN, turn_deg_across};
/// assert!((turn_deg_across(SQUARE_ACROSS_IN) - 90.0).abs() < 1e-9);
/// // By Pythagoras: 36 and 36 make 50.91, which is 4 ft 2-15/16 in on the tape.
/// assert!((SQUARE_ACROSS_IN - (36.0_f64.powi(2) * 2.0).sqrt()).abs() < 1e-12);
/// // Walls 60 degrees apart and the line between the marks make an equal-sided triangle.
/// assert!((turn_deg_across(36.0) - 120.0).abs() < 1e-9);
/// ```
pub fn turn_deg_across(across_in: f64) -> f64 {
    let half = (across_in / (2.0 * CORNER_MARK_IN)).clamp(0.0, 1.0);
    180.0 - 2.0 * half.asin().to_degrees()
}

/// One wall of a walk, and the turn at its end.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct WallRun {
    /// Its length as measured, inches.
    pub length_in: f64,
    /// The turn at its end, degrees: positive to the left (an inside corner), negative to the right (a corner that
    /// stands out into the room), 0 where the wall goes straight on.
    pub turn_left_deg: f64,
}

/// A room that was walked round, and how well it closed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Walked {
    /// The room, with the closing error shared out; wall `i` of it is wall `i` of the walk.
    pub outline: Outline,
    /// From the start of the walk to its end, inches to the right.
    pub miss_x_in: f64,
    /// From the start of the walk to its end, inches away.
    pub miss_y_in: f64,
    /// Distance between the two, inches.
    pub miss_in: f64,
    /// The most that is shared out, inches.
    pub allowed_in: f64,
    /// All walls as measured, together, inches.
    pub perimeter_in: f64,
    /// Whether there was an error to share out.
    pub shared_out: bool,
    /// All turns together less a full turn, degrees: 0 where the corners fit.
    pub turns_over_deg: f64,
    /// The length of each wall once the error is shared out, inches.
    pub walls_in: Vec<f64>,
    /// The length of each wall as measured, inches.
    pub measured_in: Vec<f64>,
}

/// The room from a walk round its walls with the room on the left hand, the first wall along x.
///
/// The closing error is shared out by the compass rule (Bowditch, 1808): each wall takes as much of it as its length
/// is of the perimeter, up to [`MOST_MISS`]. The turn at the end of the last wall moves no corner: it only counts in
/// [`Walked::turns_over_deg`]. A turn of 0 is let pass: a wall may be measured in two lengths.
///
/// # Errors
/// - [`ShapeRefusal::Size`] or [`ShapeRefusal::Turn`] for a wall whose length or turn can't be one;
/// - [`ShapeRefusal::OnTheRight`] where the room is on the right hand: every turn must be exchanged;
/// - [`ShapeRefusal::TurnsOver`] where the walls close but the turns make no full turn, by more than
///   [`MOST_TURNS_OVER_DEG`];
/// - [`ShapeRefusal::Outline`]: under three walls, over 64, walls that cross, and [`OutlineRefusal::Open`] with the
///   closing error.
///
/// # Example
/// A room of 10 ft by 12 ft, its third wall read 3/8 in short.
/// ```
/// use calc::floor::outline::{WallRun, walk};
/// let walls = [120.0, 144.0, 119.625, 144.0].map(|length_in| WallRun { length_in, turn_left_deg: 90.0 });
/// let room = walk(&walls).unwrap();
/// assert_eq!((room.miss_in, room.shared_out), (0.375, true));
/// ```
pub fn walk(walls: &[WallRun]) -> Result<Walked, ShapeRefusal> {
    if walls.len() > MOST_CORNERS {
        return Err(OutlineRefusal::TooManyCorners { given: walls.len() }.into());
    }
    for (wall, run) in walls.iter().enumerate() {
        check_size(Part::Wall(wall), run.length_in)?;
        // Straight back along the wall is no corner. NaN fails the comparison too.
        let turns = run.turn_left_deg.abs() < 180.0;
        if !turns {
            return Err(ShapeRefusal::Turn {
                wall,
                given_deg: run.turn_left_deg,
            });
        }
    }
    if walls.len() < 3 {
        return Err(OutlineRefusal::TooFewCorners { given: walls.len() }.into());
    }
    let mut heading_deg = 0.0;
    let mut at = Point::default();
    let mut walked_in = 0.0;
    // Where each wall ends as measured, and how far the walk is by then.
    let mut ends = Vec::with_capacity(walls.len());
    for run in walls {
        let (x, y) = direction(heading_deg);
        at = Point::new(at.x_in + run.length_in * x, at.y_in + run.length_in * y);
        walked_in += run.length_in;
        ends.push((at, walked_in));
        heading_deg += run.turn_left_deg;
    }
    let perimeter_in = walked_in;
    let (miss_x_in, miss_y_in) = (at.x_in, at.y_in);
    let miss_in = miss_x_in.hypot(miss_y_in);
    let allowed_in = MOST_MISS * perimeter_in;
    if miss_in > allowed_in {
        return Err(OutlineRefusal::Open {
            miss_in,
            allowed_in,
        }
        .into());
    }
    let shared_out = miss_in > ROUNDING_IN;
    let share = |(end, walked_in): (Point, f64)| {
        let part = if shared_out {
            walked_in / perimeter_in
        } else {
            0.0
        };
        Point::new(end.x_in - part * miss_x_in, end.y_in - part * miss_y_in)
    };
    // The end of the last wall is the start of the first.
    ends.pop();
    let corners: Vec<Point> = std::iter::once(Point::default())
        .chain(ends.into_iter().map(share))
        .collect();
    let on_the_right = signed_area_in2(&corners) < 0.0;
    let outline = Outline::new(corners)?;
    if on_the_right {
        return Err(ShapeRefusal::OnTheRight);
    }
    let walls_in = outline.walls().map(|wall| wall.length_in()).collect();
    let turns_over_deg = heading_deg - 360.0;
    if turns_over_deg.abs() > MOST_TURNS_OVER_DEG {
        return Err(ShapeRefusal::TurnsOver {
            over_deg: turns_over_deg,
            allowed_deg: MOST_TURNS_OVER_DEG,
        });
    }
    Ok(Walked {
        outline,
        miss_x_in,
        miss_y_in,
        miss_in,
        allowed_in,
        perimeter_in,
        shared_out,
        turns_over_deg,
        walls_in,
        measured_in: walls.iter().map(|run| run.length_in).collect(),
    })
}

/// Cosine and sine of a heading, exact for right angles, so that a square room closes exactly.
fn direction(heading_deg: f64) -> (f64, f64) {
    match heading_deg.rem_euclid(360.0) {
        0.0 => (1.0, 0.0),
        90.0 => (0.0, 1.0),
        180.0 => (-1.0, 0.0),
        270.0 => (0.0, -1.0),
        _ => {
            let (sin, cos) = heading_deg.to_radians().sin_cos();
            (cos, sin)
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn runs(walls: &[(f64, f64)]) -> Vec<WallRun> {
        walls
            .iter()
            .map(|&(length_in, turn_left_deg)| WallRun {
                length_in,
                turn_left_deg,
            })
            .collect()
    }

    /// The compass rule by hand, for a room of 100 by 50 in whose last wall reads 1 in short: the walk ends at (0, 1),
    /// the perimeter is 299 in, so the corners come down by 100/299, 150/299 and 250/299 in.
    #[test]
    fn the_compass_rule_by_hand() {
        let room = walk(&runs(&[
            (100.0, 90.0),
            (50.0, 90.0),
            (100.0, 90.0),
            (49.0, 90.0),
        ]))
        .unwrap();
        assert_eq!(
            (room.miss_x_in, room.miss_y_in, room.miss_in),
            (0.0, 1.0, 1.0)
        );
        assert!((room.allowed_in - 1.495).abs() < 1e-12);
        let want = [
            (0.0, 0.0),
            (100.0, -100.0 / 299.0),
            (100.0, 50.0 - 150.0 / 299.0),
            (0.0, 50.0 - 250.0 / 299.0),
        ];
        for (corner, (x_in, y_in)) in room.outline.corners().iter().zip(want) {
            assert!(corner.distance_in(Point::new(x_in, y_in)) < 1e-12);
        }
        assert!((room.walls_in[3] - (50.0 - 250.0 / 299.0)).abs() < 1e-12);
        assert_eq!(room.turns_over_deg, 0.0);
    }

    #[test]
    fn a_room_that_misses_too_far_is_refused() {
        let got = walk(&runs(&[
            (100.0, 90.0),
            (50.0, 90.0),
            (100.0, 90.0),
            (48.0, 90.0),
        ]));
        assert_eq!(
            got,
            Err(OutlineRefusal::Open {
                miss_in: 2.0,
                allowed_in: 0.005 * 298.0
            }
            .into())
        );
    }

    #[test]
    fn walks_that_are_no_room() {
        let square = |turn| runs(&[(60.0, turn); 4]);
        assert_eq!(walk(&square(-90.0)), Err(ShapeRefusal::OnTheRight));
        assert!(matches!(
            walk(&square(180.0)),
            Err(ShapeRefusal::Turn { wall: 0, .. })
        ));
        assert!(matches!(
            walk(&square(f64::NAN)),
            Err(ShapeRefusal::Turn { .. })
        ));
        assert_eq!(
            walk(&runs(&[(60.0, 90.0); 2])),
            Err(OutlineRefusal::TooFewCorners { given: 2 }.into())
        );
        assert_eq!(
            walk(&[]),
            Err(OutlineRefusal::TooFewCorners { given: 0 }.into())
        );
        assert_eq!(
            walk(&runs(&[(60.0, 90.0); 65])),
            Err(OutlineRefusal::TooManyCorners { given: 65 }.into())
        );
        assert!(matches!(
            walk(&runs(&[(60.0, 90.0), (0.5, 90.0)])),
            Err(ShapeRefusal::Size {
                part: Part::Wall(1),
                ..
            })
        ));
        // A figure of eight: out, across itself and back.
        let eight = [
            (60.0, 90.0),
            (30.0, 90.0),
            (30.0, 90.0),
            (60.0, -90.0),
            (30.0, -90.0),
            (30.0, 180.0 - 1e-9),
        ];
        assert!(matches!(
            walk(&runs(&eight)),
            Err(ShapeRefusal::Outline(OutlineRefusal::Crossing { .. }))
        ));
    }

    #[test]
    fn a_bay_of_odd_angles_closes() {
        // A hexagon of 40 in sides: area 3/2 sqrt(3) s^2 (Euclid).
        let room = walk(&runs(&[(40.0, 60.0); 6])).unwrap();
        assert!(!room.shared_out);
        assert!((room.outline.area_in2() - 1.5 * 3.0f64.sqrt() * 1600.0).abs() < 1e-9);
    }

    #[test]
    fn a_last_turn_that_does_not_close_is_told() {
        let square = |last: f64| {
            walk(&runs(&[
                (60.0, 90.0),
                (60.0, 90.0),
                (60.0, 90.0),
                (60.0, last),
            ]))
        };
        assert_eq!(square(92.0).unwrap().turns_over_deg, 2.0);
        for (last, over_deg) in [(60.0, -30.0), (-90.0, -180.0), (96.0, 6.0)] {
            assert_eq!(
                square(last),
                Err(ShapeRefusal::TurnsOver {
                    over_deg,
                    allowed_deg: 5.0
                })
            );
        }
    }

    #[test]
    fn a_wall_in_two_lengths() {
        let room = walk(&runs(&[
            (40.0, 0.0),
            (80.0, 90.0),
            (96.0, 90.0),
            (120.0, 90.0),
            (96.0, 90.0),
        ]))
        .unwrap();
        assert_eq!(room.outline.corners().len(), 5);
        assert_eq!(room.outline.area_in2(), 120.0 * 96.0);
    }

    /// A room under a skyline: a flat near wall, columns of random width and depth away from it.
    fn skyline() -> impl Strategy<Value = Vec<Point>> {
        proptest::collection::vec((8..200u32, 0..12u32), 1..20).prop_map(|columns| {
            let mut corners = Vec::new();
            let mut x_in = 0.0;
            for (index, (width, depth)) in columns.iter().enumerate() {
                // Neighbours differ in parity, so none is as deep as the next.
                let depth_in = f64::from(depth * 2 + u32::try_from(index % 2).unwrap() + 1) * 12.0;
                corners.push(Point::new(-x_in, depth_in));
                x_in += f64::from(*width) / 2.0;
                corners.push(Point::new(-x_in, depth_in));
            }
            let mut room = vec![Point::new(-x_in, 0.0), Point::new(0.0, 0.0)];
            room.append(&mut corners);
            room.iter()
                .map(|corner| Point::new(corner.x_in + x_in, corner.y_in))
                .collect()
        })
    }

    fn walk_of(corners: &[Point]) -> Vec<WallRun> {
        let next = |index: usize| corners[(index + 1) % corners.len()];
        let heading = |index: usize| {
            let (from, to) = (corners[index % corners.len()], next(index % corners.len()));
            (to.y_in - from.y_in)
                .atan2(to.x_in - from.x_in)
                .to_degrees()
        };
        (0..corners.len())
            .map(|index| WallRun {
                length_in: corners[index].distance_in(next(index)),
                turn_left_deg: (heading(index + 1) - heading(index) + 540.0).rem_euclid(360.0)
                    - 180.0,
            })
            .collect()
    }

    proptest! {
        #[test]
        fn a_walk_round_a_room_gives_the_room(corners in skyline()) {
            let room = walk(&walk_of(&corners)).unwrap();
            prop_assert!(!room.shared_out && room.turns_over_deg == 0.0);
            for (got, want) in room.outline.corners().iter().zip(&corners) {
                prop_assert!(got.distance_in(*want) < 1e-9);
            }
        }

        /// With every wall misread a little the room still closes, and no wall changes by more than its share.
        #[test]
        fn what_is_shared_out_is_in_proportion(corners in skyline(), slips in proptest::collection::vec(-0.125..0.125f64, 42)) {
            let mut walls = walk_of(&corners);
            for (wall, slip) in walls.iter_mut().zip(slips) {
                wall.length_in += slip;
            }
            if let Ok(room) = walk(&walls) {
                prop_assert!(room.shared_out);
                let mut sum = Point::default();
                for ((wall, run), now_in) in room.outline.walls().zip(&walls).zip(&room.walls_in) {
                    sum = Point::new(sum.x_in + wall.end.x_in - wall.start.x_in, sum.y_in + wall.end.y_in - wall.start.y_in);
                    let share_in = room.miss_in * run.length_in / room.perimeter_in;
                    prop_assert!((now_in - run.length_in).abs() <= share_in + 1e-9);
                }
                prop_assert!(sum.x_in.hypot(sum.y_in) < 1e-9);
            }
        }

        /// One number of a good walk exchanged for any other: a room that is one, or a refusal that says why.
        #[test]
        fn any_number_gets_an_answer(
            corners in skyline(), at in 0..42usize, of_turn: bool,
            number in prop_oneof![proptest::num::f64::ANY, -200.0..200.0f64, -0.5..0.5f64],
        ) {
            let mut walls = walk_of(&corners);
            let at = at % walls.len();
            if of_turn {
                // A number under one is a slip; others stand in for the turn.
                walls[at].turn_left_deg = if number.abs() < 0.5 { walls[at].turn_left_deg + number } else { number };
            } else {
                walls[at].length_in = if number.abs() < 0.5 { walls[at].length_in + number } else { number };
            }
            match walk(&walls) {
                Ok(room) => {
                    prop_assert!(walls[at].turn_left_deg.abs() < 180.0 && walls[at].length_in >= 1.0);
                    prop_assert!(room.outline.area_in2() > 0.0 && room.miss_in <= room.allowed_in);
                    prop_assert!(room.turns_over_deg.abs() <= MOST_TURNS_OVER_DEG);
                }
                // A slip of less than the walls may miss by is no reason to refuse, but where walls come to cross.
                Err(refusal) => prop_assert!(
                    of_turn || number.is_nan() || number.abs() > 0.1 || matches!(refusal, ShapeRefusal::Outline(OutlineRefusal::Crossing { .. })),
                    "{refusal}"
                ),
            }
        }
    }
}
