//! What a field allows: from where to where.

use super::{Area, Length, Slope, Volume};

/// One end of what a field allows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum End<T> {
    /// No end on this side.
    #[default]
    Open,
    /// Up to the value and the value itself.
    With(T),
    /// Up to the value but not the value itself.
    Without(T),
}

/// The values that a field allows.
///
/// ```
/// use calc::quantity::{Length, LengthRange};
/// let range = LengthRange::above(Length::ZERO).at_most(Length::from_feet(100.0));
/// assert!(range.allows(Length::from_inches(0.125)));
/// assert!(!range.allows(Length::ZERO));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Limits<T> {
    /// The low end.
    pub least: End<T>,
    /// The high end.
    pub most: End<T>,
}

/// What a length field allows.
pub type LengthRange = Limits<Length>;

/// What a field of plain numbers allows.
pub type NumberRange = Limits<f64>;

/// What a field of whole numbers allows.
pub type WholeRange = Limits<i64>;

/// What a slope field allows.
pub type SlopeRange = Limits<Slope>;

/// What an area field allows.
pub type AreaRange = Limits<Area>;

/// What a volume field allows.
pub type VolumeRange = Limits<Volume>;

impl<T: Copy + PartialOrd> Limits<T> {
    /// Anything.
    pub const fn any() -> Self {
        Self {
            least: End::Open,
            most: End::Open,
        }
    }

    /// `least` and up.
    pub const fn at_least(least: T) -> Self {
        Self {
            least: End::With(least),
            most: End::Open,
        }
    }

    /// More than `least`.
    pub const fn above(least: T) -> Self {
        Self {
            least: End::Without(least),
            most: End::Open,
        }
    }

    /// The same low end, and at most `most`.
    pub const fn at_most(self, most: T) -> Self {
        Self {
            least: self.least,
            most: End::With(most),
        }
    }

    /// The same low end, and less than `most`.
    pub const fn below(self, most: T) -> Self {
        Self {
            least: self.least,
            most: End::Without(most),
        }
    }

    /// True for a value within both ends; never for NaN where an end is set.
    pub fn allows(&self, value: T) -> bool {
        self.is_high_enough(value) && self.is_low_enough(value)
    }

    pub(crate) fn is_high_enough(&self, value: T) -> bool {
        match self.least {
            End::Open => true,
            End::With(least) => value >= least,
            End::Without(least) => value > least,
        }
    }

    pub(crate) fn is_low_enough(&self, value: T) -> bool {
        match self.most {
            End::Open => true,
            End::With(most) => value <= most,
            End::Without(most) => value < most,
        }
    }
}
