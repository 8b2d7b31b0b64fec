//! The survey: how readings become heights, which spots to read, which readings to read again.
//!
//! - [`Proposed`] spots and their walking order;
//! - [`Suspect`] readings that disagree with their neighbours.

mod propose;

mod suspects;

mod local_plane;

mod neighbours;

pub use crate::job::ReadingWay;
pub use propose::{
    LEAST_APART_IN, LEAST_SPACING_IN, MOST_SPOTS, NEAR_IN, Proposed, SurveyRefusal, Why, propose,
};
pub use suspects::{CUT_OFF, LEAST_JUDGED, LEAST_RESIDUAL_IN, NEIGHBOURS, Suspect, suspects};

/// Height above the datum, inches, of a reading in inches.
///
/// Down from a level line the datum is the line and heights are below zero: a larger reading is a lower spot. Up from
/// the lowest spot the datum is that spot.
///
/// # Example
/// ```
/// use calc::floor::survey::{ReadingWay, height_in};
/// assert_eq!(height_in(ReadingWay::DownFromLine, 36.5), -36.5);
/// assert_eq!(height_in(ReadingWay::UpFromLow, 0.5), 0.5);
/// ```
pub fn height_in(way: ReadingWay, reading_in: f64) -> f64 {
    match way {
        ReadingWay::DownFromLine => -reading_in,
        ReadingWay::UpFromLow => reading_in,
    }
}

/// The reading, inches, that a spot at a height would give; undoes [`height_in`].
pub fn reading_in(way: ReadingWay, height_in: f64) -> f64 {
    // The two ways only differ in sign, so each undoes itself.
    self::height_in(way, height_in)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_reading_comes_back() {
        for way in [ReadingWay::DownFromLine, ReadingWay::UpFromLow] {
            assert_eq!(reading_in(way, height_in(way, 36.4375)), 36.4375);
        }
        // A longer reading from the line is a lower floor.
        let down = |reading_in| height_in(ReadingWay::DownFromLine, reading_in);
        assert!(down(37.0) < down(36.0));
    }
}
