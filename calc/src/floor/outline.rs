//! Ways to give the outline of a room: a rectangle, an L, a walk round the walls.
//!
//! Rectangle and L lie with their near left corner at the origin; wall 0 is the near wall, and the others follow
//! counter-clockwise. A walk begins at the origin along x.

use serde::Serialize;
use thiserror::Error;

use super::geometry::{Outline, OutlineRefusal, Point};
use crate::job::Corner;

mod walk;

pub use walk::{
    CORNER_MARK_IN, MOST_MISS, MOST_TURNS_OVER_DEG, SQUARE_ACROSS_IN, Walked, WallRun,
    turn_deg_across, walk,
};

/// The shortest wall, inches.
pub const LEAST_WALL_IN: f64 = 1.0;

/// The longest wall, inches: 500 ft.
pub const MOST_WALL_IN: f64 = 6000.0;

/// A rectangular room.
///
/// # Errors
/// [`ShapeRefusal::Size`] where a side is not between [`LEAST_WALL_IN`] and [`MOST_WALL_IN`].
///
/// # Example
/// ```
/// let bath = calc::floor::outline::rectangle(60.0, 96.0).unwrap();
/// assert_eq!(bath.area_in2() / 144.0, 40.0);
/// ```
pub fn rectangle(width_in: f64, length_in: f64) -> Result<Outline, ShapeRefusal> {
    check_size(Part::Width, width_in)?;
    check_size(Part::Length, length_in)?;
    outline(&[
        (0.0, 0.0),
        (width_in, 0.0),
        (width_in, length_in),
        (0.0, length_in),
    ])
}

/// A rectangular room with a smaller rectangle missing at one corner; all sizes in inches, widths along x.
///
/// # Errors
/// [`ShapeRefusal::Size`] as for [`rectangle`]; [`ShapeRefusal::Notch`] where what the notch leaves of a side is
/// shorter than [`LEAST_WALL_IN`].
///
/// # Example
/// ```
/// use calc::{floor::outline::l_shape, job::Corner};
/// let room = l_shape(120.0, 108.0, 48.0, 48.0, Corner::FarRight).unwrap();
/// assert_eq!(room.area_in2() / 144.0, 90.0 - 16.0);
/// ```
pub fn l_shape(
    width_in: f64,
    length_in: f64,
    notch_width_in: f64,
    notch_length_in: f64,
    corner: Corner,
) -> Result<Outline, ShapeRefusal> {
    let sides = [(Part::Width, width_in), (Part::Length, length_in)];
    let notch = [
        (Part::NotchWidth, notch_width_in),
        (Part::NotchLength, notch_length_in),
    ];
    for (part, given_in) in sides.into_iter().chain(notch) {
        check_size(part, given_in)?;
    }
    for ((part, notch_in), (_, side_in)) in notch.into_iter().zip(sides) {
        if side_in - notch_in < LEAST_WALL_IN {
            return Err(ShapeRefusal::Notch {
                part,
                notch_in,
                side_in,
            });
        }
    }
    let (w, l) = (width_in, length_in);
    let (nw, nl) = (notch_width_in, notch_length_in);
    outline(&match corner {
        Corner::NearLeft => [(nw, 0.0), (w, 0.0), (w, l), (0.0, l), (0.0, nl), (nw, nl)],
        Corner::NearRight => [
            (0.0, 0.0),
            (w - nw, 0.0),
            (w - nw, nl),
            (w, nl),
            (w, l),
            (0.0, l),
        ],
        Corner::FarRight => [
            (0.0, 0.0),
            (w, 0.0),
            (w, l - nl),
            (w - nw, l - nl),
            (w - nw, l),
            (0.0, l),
        ],
        Corner::FarLeft => [
            (0.0, 0.0),
            (w, 0.0),
            (w, l),
            (nw, l),
            (nw, l - nl),
            (0.0, l - nl),
        ],
    })
}

/// A size of a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Along x.
    Width,
    /// Along y.
    Length,
    /// The missing corner along x.
    NotchWidth,
    /// The missing corner along y.
    NotchLength,
    /// A wall of a walk, its index from 0.
    Wall(usize),
}

/// Why there is no room.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum ShapeRefusal {
    /// A side that is too short, too long or no number.
    #[error("{part:?} of {given_in} in is not from {least_in} to {most_in} in")]
    Size {
        /// Which.
        part: Part,
        /// What was given, inches.
        given_in: f64,
        /// The least, inches.
        least_in: f64,
        /// The most, inches.
        most_in: f64,
    },
    /// A notch that leaves nothing of its side.
    #[error("{part:?} of {notch_in} in leaves nothing of {side_in} in")]
    Notch {
        /// Which size of the notch.
        part: Part,
        /// That size, inches.
        notch_in: f64,
        /// The room's side along it, inches.
        side_in: f64,
    },
    /// A turn that is not between straight back and straight back.
    #[error("a turn of {given_deg} degrees after wall {wall}")]
    Turn {
        /// The wall before it, its index from 0.
        wall: usize,
        /// What was given, degrees.
        given_deg: f64,
    },
    /// The room was kept on the right hand.
    #[error("the walk has the room on its right")]
    OnTheRight,
    /// The walls close, but the turns together are no full turn: one of them is not as it was said.
    #[error("the turns miss a full turn by {over_deg} degrees, more than {allowed_deg}")]
    TurnsOver {
        /// All turns together less a full turn, degrees.
        over_deg: f64,
        /// What is let pass, degrees.
        allowed_deg: f64,
    },
    /// The corners make no room.
    #[error(transparent)]
    Outline(#[from] OutlineRefusal),
}

fn check_size(part: Part, given_in: f64) -> Result<(), ShapeRefusal> {
    if (LEAST_WALL_IN..=MOST_WALL_IN).contains(&given_in) {
        Ok(())
    } else {
        Err(ShapeRefusal::Size {
            part,
            given_in,
            least_in: LEAST_WALL_IN,
            most_in: MOST_WALL_IN,
        })
    }
}

fn outline(corners: &[(f64, f64)]) -> Result<Outline, ShapeRefusal> {
    Ok(Outline::new(
        corners
            .iter()
            .map(|&(x_in, y_in)| Point::new(x_in, y_in))
            .collect(),
    )?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_corner_can_be_missing() {
        for corner in [
            Corner::NearLeft,
            Corner::NearRight,
            Corner::FarRight,
            Corner::FarLeft,
        ] {
            let room = l_shape(120.0, 108.0, 48.0, 36.0, corner).unwrap();
            // Area and perimeter by hand: a notch takes its area and leaves the perimeter.
            assert_eq!(
                (room.area_in2(), room.perimeter_in()),
                (120.0 * 108.0 - 48.0 * 36.0, 456.0)
            );
            let gone = match corner {
                Corner::NearLeft => Point::new(20.0, 20.0),
                Corner::NearRight => Point::new(100.0, 20.0),
                Corner::FarRight => Point::new(100.0, 90.0),
                Corner::FarLeft => Point::new(20.0, 90.0),
            };
            assert!(!room.contains(gone), "{corner:?}");
            let near = room.wall(0).unwrap();
            assert_eq!((near.start.y_in, near.end.y_in), (0.0, 0.0), "{corner:?}");
        }
    }

    #[test]
    fn sizes_that_make_no_room() {
        let size = |part, given_in| {
            Err(ShapeRefusal::Size {
                part,
                given_in,
                least_in: 1.0,
                most_in: 6000.0,
            })
        };
        assert_eq!(rectangle(0.0, 96.0), size(Part::Width, 0.0));
        assert_eq!(rectangle(96.0, 6000.5), size(Part::Length, 6000.5));
        assert!(rectangle(f64::NAN, 96.0).is_err() && rectangle(96.0, f64::INFINITY).is_err());
        let notch = l_shape(120.0, 96.0, 48.0, 96.0, Corner::FarLeft);
        assert_eq!(
            notch,
            Err(ShapeRefusal::Notch {
                part: Part::NotchLength,
                notch_in: 96.0,
                side_in: 96.0
            })
        );
    }
}
