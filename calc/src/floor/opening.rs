//! Doorways and other gaps as spans of a wall.

use serde::Serialize;
use thiserror::Error;

use super::geometry::{Outline, Point};

/// Spans that overlap or run past a wall by less than this do not, inches: rounding.
const ROUNDING_IN: f64 = 1e-6;

/// An opening as it is measured.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Span {
    /// The wall, its index in the outline from 0.
    pub wall: usize,
    /// From the wall's start (walking with the room on the left hand) to the nearer jamb, inches.
    pub from_in: f64,
    /// Width between jambs, inches.
    pub width_in: f64,
}

/// An opening in its place.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OpeningSpan {
    /// Where it was measured.
    pub span: Span,
    /// The left jamb, for someone who stands in the room and looks at it.
    pub left: Point,
    /// The right jamb.
    pub right: Point,
}

/// Puts openings in their walls.
///
/// Walking with the room on the left hand, a wall is passed from its right to its left as seen from inside, so the
/// right jamb is the one that comes first.
///
/// # Errors
/// Everything that is wrong, in the openings' order: no such wall, no width, a start before the wall's, an end past
/// the wall's, and an opening that overlaps an earlier one. Two that share a jamb do not overlap.
///
/// # Example
/// ```
/// use calc::floor::{Point, opening::{Span, place}, outline::rectangle};
/// let room = rectangle(60.0, 96.0).unwrap();
/// let door = place(&room, &[Span { wall: 0, from_in: 12.0, width_in: 30.0 }]).unwrap()[0];
/// assert_eq!((door.left, door.right), (Point::new(42.0, 0.0), Point::new(12.0, 0.0)));
/// ```
pub fn place(outline: &Outline, spans: &[Span]) -> Result<Vec<OpeningSpan>, Vec<OpeningRefusal>> {
    place_measured(outline, &[], spans)
}

/// As [`place`], in a room whose walls were measured as `measured_in`, inches, before a closing error was shared out.
///
/// A wall that took its share of the error may be shorter in the outline than on the tape. An opening measured up to its
/// end is not past it: by up to that share the jamb is taken at the wall's end.
///
/// # Errors
/// As [`place`].
pub fn place_measured(
    outline: &Outline,
    measured_in: &[f64],
    spans: &[Span],
) -> Result<Vec<OpeningSpan>, Vec<OpeningRefusal>> {
    let share_in = |wall: usize| {
        let now_in = outline.wall(wall).map(|side| side.length_in());
        let before_in = measured_in.get(wall).copied();
        before_in
            .zip(now_in)
            .map_or(0.0, |(before_in, now_in)| (before_in - now_in).max(0.0))
    };
    let mut placed: Vec<(usize, OpeningSpan)> = Vec::with_capacity(spans.len());
    let mut refusals = Vec::new();
    for (opening, &span) in spans.iter().enumerate() {
        match place_one(outline, share_in(span.wall), span) {
            Ok(place) => {
                let clash = placed.iter().find_map(|(other, earlier)| {
                    let by_in = overlap_in(span, earlier.span);
                    (by_in > ROUNDING_IN).then_some(OpeningProblem::Overlap {
                        other: *other,
                        by_in,
                    })
                });
                match clash {
                    Some(what) => refusals.push(OpeningRefusal { opening, what }),
                    None => placed.push((opening, place)),
                }
            }
            Err(what) => refusals.push(OpeningRefusal { opening, what }),
        }
    }
    if refusals.is_empty() {
        Ok(placed.into_iter().map(|(_, place)| place).collect())
    } else {
        Err(refusals)
    }
}

/// Length of the strip of foam along the walls, inches: the perimeter less the openings.
///
/// # Example
/// ```
/// use calc::floor::{opening::{Span, edge_strip_in, place}, outline::rectangle};
/// let room = rectangle(60.0, 96.0).unwrap();
/// let doors = place(&room, &[Span { wall: 0, from_in: 12.0, width_in: 30.0 }]).unwrap();
/// assert_eq!(edge_strip_in(&room, &doors), 26.0 * 12.0 - 30.0);
/// ```
pub fn edge_strip_in(outline: &Outline, openings: &[OpeningSpan]) -> f64 {
    let open_in: f64 = openings.iter().map(|opening| opening.span.width_in).sum();
    (outline.perimeter_in() - open_in).max(0.0)
}

/// An opening that can't be where it is said to be.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[error("opening {opening}: {what}")]
pub struct OpeningRefusal {
    /// Its index from 0.
    pub opening: usize,
    /// What is wrong.
    pub what: OpeningProblem,
}

/// What can be wrong with an opening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum OpeningProblem {
    /// The outline has no such wall.
    #[error("there is no wall {wall} of {walls}")]
    NoWall {
        /// The index that was given, from 0.
        wall: usize,
        /// How many walls there are.
        walls: usize,
    },
    /// A number that isn't one.
    #[error("not a number")]
    NotANumber,
    /// No width, or less.
    #[error("a width of {width_in} in")]
    NoWidth {
        /// What was given, inches.
        width_in: f64,
    },
    /// It begins before its wall does.
    #[error("it starts {by_in} in before the wall")]
    BeforeStart {
        /// By how much, inches.
        by_in: f64,
    },
    /// It runs past the end of its wall.
    #[error("it runs {by_in} in past a wall of {wall_in} in")]
    PastEnd {
        /// By how much, inches.
        by_in: f64,
        /// Length of the wall, inches.
        wall_in: f64,
    },
    /// It overlaps an opening that was given earlier.
    #[error("it overlaps opening {other} by {by_in} in")]
    Overlap {
        /// The other's index, from 0.
        other: usize,
        /// By how much, inches.
        by_in: f64,
    },
}

fn place_one(outline: &Outline, share_in: f64, span: Span) -> Result<OpeningSpan, OpeningProblem> {
    let Span {
        wall,
        from_in,
        width_in,
    } = span;
    let no_wall = OpeningProblem::NoWall {
        wall,
        walls: outline.corners().len(),
    };
    let side = outline.wall(wall).ok_or(no_wall)?;
    if !(from_in.is_finite() && width_in.is_finite()) {
        return Err(OpeningProblem::NotANumber);
    }
    if width_in <= ROUNDING_IN {
        return Err(OpeningProblem::NoWidth { width_in });
    }
    if from_in < 0.0 {
        return Err(OpeningProblem::BeforeStart { by_in: -from_in });
    }
    let wall_in = side.length_in();
    let by_in = from_in + width_in - wall_in;
    if by_in > share_in + ROUNDING_IN {
        return Err(OpeningProblem::PastEnd { by_in, wall_in });
    }
    let end_in = if by_in > ROUNDING_IN {
        wall_in
    } else {
        from_in + width_in
    };
    let (right, left) = (side.point_at(from_in), side.point_at(end_in));
    Ok(OpeningSpan { span, left, right })
}

/// Length that two spans have in common, inches; below zero where they are apart.
fn overlap_in(a: Span, b: Span) -> f64 {
    if a.wall != b.wall {
        return 0.0;
    }
    (a.from_in + a.width_in).min(b.from_in + b.width_in) - a.from_in.max(b.from_in)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::floor::outline::{WallRun, rectangle, walk};

    fn span(wall: usize, from_in: f64, width_in: f64) -> Span {
        Span {
            wall,
            from_in,
            width_in,
        }
    }

    /// Facing a wall from inside, the left jamb is to the left of the line of sight, on any wall.
    #[test]
    fn left_is_left_from_inside() {
        let room = rectangle(60.0, 96.0).unwrap();
        let inside = Point::new(30.0, 48.0);
        for opening in place(&room, &[0, 1, 2, 3].map(|wall| span(wall, 10.0, 30.0))).unwrap() {
            let (left, right) = (opening.left, opening.right);
            // From inside, turning from the right jamb to the left one is counter-clockwise.
            let turn = (right.x_in - inside.x_in) * (left.y_in - inside.y_in)
                - (right.y_in - inside.y_in) * (left.x_in - inside.x_in);
            assert!(turn > 0.0, "{opening:?}");
            assert_eq!(left.distance_in(right), 30.0);
        }
    }

    #[test]
    fn everything_wrong_is_told() {
        let room = rectangle(60.0, 96.0).unwrap();
        let spans = [
            span(0, 10.0, 30.0),
            span(4, 0.0, 30.0),
            span(1, 70.0, 30.0),
            span(0, 36.0, 12.0),
            span(2, -1.0, 30.0),
            span(2, 1.0, 0.0),
            span(2, f64::NAN, 30.0),
            span(0, 40.0, 20.0),
        ];
        let got: Vec<_> = place(&room, &spans)
            .unwrap_err()
            .into_iter()
            .map(|r| (r.opening, r.what))
            .collect();
        let want = [
            (1, OpeningProblem::NoWall { wall: 4, walls: 4 }),
            (
                2,
                OpeningProblem::PastEnd {
                    by_in: 4.0,
                    wall_in: 96.0,
                },
            ),
            (
                3,
                OpeningProblem::Overlap {
                    other: 0,
                    by_in: 4.0,
                },
            ),
            (4, OpeningProblem::BeforeStart { by_in: 1.0 }),
            (5, OpeningProblem::NoWidth { width_in: 0.0 }),
            (6, OpeningProblem::NotANumber),
        ];
        assert_eq!(got, want);
    }

    /// A room of 100 by 50 in walked with its last wall 1 in short: by the compass rule the second wall of 50 in takes
    /// 50/299 in of that. A door up to its end on the tape stands at its end; one past that by more does not.
    #[test]
    fn a_door_up_to_the_corner_stays_when_the_error_is_shared_out() {
        let runs = [100.0, 50.0, 100.0, 49.0].map(|length_in| WallRun {
            length_in,
            turn_left_deg: 90.0,
        });
        let room = walk(&runs).unwrap();
        let wall_in = room.walls_in[1];
        assert!((wall_in - 50.0).abs() < 50.0 / 299.0 + 1e-9 && wall_in < 50.0 - 0.1);
        let doors =
            |width_in| place_measured(&room.outline, &room.measured_in, &[span(1, 20.0, width_in)]);
        let door = doors(30.0).unwrap()[0];
        assert!(door.left.distance_in(room.outline.corners()[2]) < 1e-9);
        assert!(matches!(
            doors(30.01).unwrap_err()[0].what,
            OpeningProblem::PastEnd { .. }
        ));
        assert!(place(&room.outline, &[span(1, 20.0, 30.0)]).is_err());
    }

    proptest! {
        #[test]
        fn jambs_lie_on_their_wall(wall in 0..4usize, from_in in 0.0..50.0f64, width_in in 1.0..50.0f64) {
            let room = rectangle(60.0, 96.0).unwrap();
            let side = room.wall(wall).unwrap();
            match place(&room, &[span(wall, from_in, width_in)]) {
                Ok(doors) => {
                    prop_assert!(room.contains(doors[0].left) && room.contains(doors[0].right));
                    prop_assert!((side.start.distance_in(doors[0].right) - from_in).abs() < 1e-9);
                    prop_assert!((edge_strip_in(&room, &doors) + width_in - 312.0).abs() < 1e-9);
                }
                Err(_) => prop_assert!(from_in + width_in > side.length_in()),
            }
        }
    }
}
