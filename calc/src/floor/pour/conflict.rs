//! What can't be had together, by how much, and the ways out.

use serde::Serialize;

/// Why what is asked can't be had.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Conflict {
    /// Sets of which no pour keeps all: those of one rule and the cover, then those of two rules, each with the tilt
    /// limit where it takes that; where neither exists, one set of more. A set that only shows once these are put right
    /// is not among them.
    pub clashes: Vec<Clash>,
    /// The least change of one rule, or of the tilt limit, that makes everything possible while all else stands; what
    /// can't do it alone is missing.
    pub ways: Vec<Way>,
}

/// Some of what is asked that can't be had together, though it could without any one of them.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Clash {
    /// The rules, the tilt limit if it has a part in it, and the vertices whose cover is in the way: at least two.
    pub causes: Vec<Cause>,
    /// The least change of each rule, or of the tilt limit, that makes these possible: by how much they miss. Under a
    /// vertex's own cover it is against that cover; otherwise against the cover everywhere.
    pub changes: Vec<Way>,
}

/// A part of a conflict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cause {
    /// A height rule.
    Rule {
        /// The rule's id.
        id: u32,
    },
    /// The limit on the tilt.
    TiltLimit,
    /// The cover at a vertex of the surface.
    Cover {
        /// Index of the vertex.
        vertex: usize,
    },
}

/// A way out of a conflict.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// Change a rule's height.
    Height {
        /// The rule.
        id: u32,
        /// To this height, inches above the datum.
        to_in: f64,
        /// That is, by so much, inches; upwards is positive.
        by_in: f64,
        /// The farthest height the same way that still does, inches above the datum; none where there is no end to it.
        far_in: Option<f64>,
    },
    /// Allow more tilt.
    Tilt {
        /// This much, inches per 4 ft.
        to_in_per_4ft: f64,
    },
}

/// The finest step to which a height is rounded where no coarser one leads out, inches.
const FINEST_IN: f64 = 0.001;

impl Way {
    /// The way to a figure that can be read off: a height on to the next whole `height_step_in` (inches), a tilt up to
    /// the next whole `tilt_step_in_per_4ft`. Rounded to the nearest, it would fall short as often as not. A height to
    /// meet has an end on the other side too: where a whole step passes it, a half, a quarter and so on to a thousandth
    /// of an inch is tried, and what even that passes stays as it is.
    ///
    /// ```
    /// use calc::floor::pour::Way;
    /// // 0.27 in more, to 1.02 in: on a tape of sixteenths 1-1/16 in.
    /// let way = Way::Height { id: 1, to_in: 1.02, by_in: 0.27, far_in: None };
    /// let next = Way::Height { id: 1, to_in: 1.0625, by_in: 0.3125, far_in: None };
    /// assert_eq!(way.rounded_on(0.0625, 0.01), next);
    /// ```
    #[must_use]
    pub fn rounded_on(self, height_step_in: f64, tilt_step_in_per_4ft: f64) -> Self {
        match self {
            Self::Height {
                id,
                to_in,
                by_in,
                far_in,
            } => {
                let sign = if by_in < 0.0 { -1.0 } else { 1.0 };
                let mut step_in = height_step_in;
                let mut rounded_in = to_in;
                while step_in >= FINEST_IN {
                    let next_in = sign * up(sign * to_in, step_in);
                    if far_in.is_none_or(|far_in| sign * (far_in - next_in) >= 0.0) {
                        rounded_in = next_in;
                        break;
                    }
                    step_in /= 2.0;
                }
                Self::Height {
                    id,
                    to_in: rounded_in,
                    by_in: by_in + (rounded_in - to_in),
                    far_in,
                }
            }
            Self::Tilt { to_in_per_4ft } => Self::Tilt {
                to_in_per_4ft: up(to_in_per_4ft, tilt_step_in_per_4ft),
            },
        }
    }
}

/// On to the next whole step; a figure that is whole but for rounding stays.
fn up(value: f64, step: f64) -> f64 {
    (value / step - 1e-6).ceil() * step
}

impl Conflict {
    /// The vertices whose cover is in the way, in the order in which they are named, each once.
    pub fn covers(&self) -> Vec<usize> {
        let mut covers = Vec::new();
        for cause in self.clashes.iter().flat_map(|clash| &clash.causes) {
            if let Cause::Cover { vertex } = cause
                && !covers.contains(vertex)
            {
                covers.push(*vertex);
            }
        }
        covers
    }
}
