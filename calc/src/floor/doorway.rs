//! Layers on both sides of an opening, and the step between them at each jamb.

use serde::Serialize;
use thiserror::Error;

use super::level_change::ROUNDING_IN;
use crate::working::{Figure, Source, Step, Unit};

mod layer;

pub use layer::{BED_LIMITS, BedLimits, LAYERS, LayerKind, Part, layer};

/// The thickest that one layer or pour is believed to be, inches.
pub const MOST_THICKNESS_IN: f64 = 24.0;

/// Heights of the subfloor beyond this are a slip of the pen, inches from the datum.
pub const MOST_HEIGHT_IN: f64 = 1200.0;

/// Subfloor, pour and layers on both sides of an opening.
///
/// Left and right are those of someone who stands in this room and looks at the opening.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DoorwayEntry {
    /// Height of the old floor of this room at the left jamb, inches above the datum.
    pub here_left_in: f64,
    /// Height of the old floor of this room at the right jamb, inches above the datum.
    pub here_right_in: f64,
    /// Depth of the pour at the left jamb, inches; 0 without one.
    pub pour_left_in: f64,
    /// Depth of the pour at the right jamb, inches; 0 without one.
    pub pour_right_in: f64,
    /// Thickness of each layer on the pour, from the bottom up, inches.
    pub layers_here_in: Vec<f64>,
    /// Height of the subfloor beyond at the left jamb, inches above the datum.
    pub beyond_left_in: f64,
    /// Height of the subfloor beyond at the right jamb, inches above the datum.
    pub beyond_right_in: f64,
    /// Thickness of each layer beyond, from the bottom up, inches.
    pub layers_beyond_in: Vec<f64>,
}

/// The finished floors at one jamb.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Jamb {
    /// Height of this room's finished floor, inches above the datum.
    pub here_in: f64,
    /// Height of the finished floor beyond, inches above the datum.
    pub beyond_in: f64,
    /// Step, inches: positive goes up into this room.
    pub step_in: f64,
}

/// Which finished floor is the higher.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Higher {
    /// This room's.
    Here,
    /// The one beyond.
    Beyond,
    /// Neither, at both jambs.
    Neither,
    /// This room's at one jamb, the one beyond at the other.
    Changes,
}

/// A side of an opening, seen from inside the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// The left jamb.
    Left,
    /// The right jamb.
    Right,
}

/// A step higher than this is more likely a slip than a step, inches: the tallest riser that the IRC allows (R311.7.5.1,
/// 7-3/4 in).
pub const LIKELY_STEP_IN: f64 = 7.75;

/// Both finished floors at an opening.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Doorway {
    /// What it is made from.
    pub entry: DoorwayEntry,
    /// At the left jamb.
    pub left: Jamb,
    /// At the right jamb.
    pub right: Jamb,
    /// Layers on this room's pour, together, inches.
    pub stack_here_in: f64,
    /// Layers beyond, together, inches.
    pub stack_beyond_in: f64,
    /// The greater of the two steps, inches, without sign.
    pub greatest_step_in: f64,
    /// Where it is; the left jamb where both are alike.
    pub greatest_at: Side,
    /// Which floor is higher.
    pub higher: Higher,
}

/// The step at each jamb of an opening: subfloor + pour + layers here, less subfloor + layers beyond.
///
/// # Errors
/// All that is wrong: a number that isn't one, a layer or pour below zero or over [`MOST_THICKNESS_IN`], a height
/// over [`MOST_HEIGHT_IN`] from the datum.
///
/// # Example
/// Membrane 1/8, its mortar 3/32, bond coat 3/16 and tile 3/8 against strip wood of 3/4 on the same subfloor:
/// 25/32 - 24/32 = 1/32 in up.
/// ```
/// use calc::floor::doorway::{DoorwayEntry, Higher, doorway};
/// let answer = doorway(DoorwayEntry {
///     here_left_in: 0.0, here_right_in: 0.0, pour_left_in: 0.0, pour_right_in: 0.0,
///     layers_here_in: vec![0.125, 0.09375, 0.1875, 0.375],
///     beyond_left_in: 0.0, beyond_right_in: 0.0, layers_beyond_in: vec![0.75],
/// }).unwrap();
/// assert_eq!((answer.left.step_in, answer.higher), (1.0 / 32.0, Higher::Here));
/// ```
pub fn doorway(entry: DoorwayEntry) -> Result<Doorway, Vec<DoorwayRefusal>> {
    let refusals = refusals(&entry);
    if !refusals.is_empty() {
        return Err(refusals);
    }
    // From 0 on: the empty sum of floats is a negative zero.
    let stack_in = |layers_in: &[f64]| {
        layers_in
            .iter()
            .fold(0.0, |sum_in, layer_in| sum_in + layer_in)
    };
    let stack_here_in = stack_in(&entry.layers_here_in);
    let stack_beyond_in = stack_in(&entry.layers_beyond_in);
    let jamb = |here_in: f64, pour_in: f64, beyond_in: f64| {
        let (here_in, beyond_in) = (
            here_in + pour_in + stack_here_in,
            beyond_in + stack_beyond_in,
        );
        Jamb {
            here_in,
            beyond_in,
            step_in: here_in - beyond_in,
        }
    };
    let left = jamb(entry.here_left_in, entry.pour_left_in, entry.beyond_left_in);
    let right = jamb(
        entry.here_right_in,
        entry.pour_right_in,
        entry.beyond_right_in,
    );
    let up = |jamb: Jamb| jamb.step_in > ROUNDING_IN;
    let down = |jamb: Jamb| jamb.step_in < -ROUNDING_IN;
    let higher = match (up(left) || up(right), down(left) || down(right)) {
        (true, true) => Higher::Changes,
        (true, false) => Higher::Here,
        (false, true) => Higher::Beyond,
        (false, false) => Higher::Neither,
    };
    let greatest_at = if right.step_in.abs() > left.step_in.abs() {
        Side::Right
    } else {
        Side::Left
    };
    let greatest_step_in = left.step_in.abs().max(right.step_in.abs());
    Ok(Doorway {
        entry,
        left,
        right,
        stack_here_in,
        stack_beyond_in,
        greatest_step_in,
        greatest_at,
        higher,
    })
}

impl Doorway {
    /// The steps behind it: both stacks of layers, both floors and the step at each jamb.
    pub fn working(&self) -> Vec<Step> {
        let stack = |name, layers: &[f64], total_in| Step {
            formula: "stack_of_layers",
            inputs: layers.iter().map(|&value| figure("layer", value)).collect(),
            result: figure(name, total_in),
            source: Source::Arithmetic,
        };
        let entry = &self.entry;
        let mut steps = vec![
            stack("stack_here", &entry.layers_here_in, self.stack_here_in),
            stack(
                "stack_beyond",
                &entry.layers_beyond_in,
                self.stack_beyond_in,
            ),
        ];
        let jambs = [
            (
                self.left,
                entry.here_left_in,
                entry.pour_left_in,
                entry.beyond_left_in,
                "step_left",
            ),
            (
                self.right,
                entry.here_right_in,
                entry.pour_right_in,
                entry.beyond_right_in,
                "step_right",
            ),
        ];
        for (jamb, here_in, pour_in, beyond_in, name) in jambs {
            let floor = |formula, inputs, result| Step {
                formula,
                inputs,
                result,
                source: Source::Arithmetic,
            };
            let here = figure("floor_here", jamb.here_in);
            let beyond = figure("floor_beyond", jamb.beyond_in);
            let stack_here = figure("stack_here", self.stack_here_in);
            let stack_beyond = figure("stack_beyond", self.stack_beyond_in);
            steps.extend([
                floor(
                    "finished_floor_here",
                    vec![
                        figure("subfloor_here", here_in),
                        figure("pour", pour_in),
                        stack_here,
                    ],
                    here.clone(),
                ),
                floor(
                    "finished_floor_beyond",
                    vec![figure("subfloor_beyond", beyond_in), stack_beyond],
                    beyond.clone(),
                ),
                floor(
                    "step_at_jamb",
                    vec![here, beyond],
                    figure(name, jamb.step_in),
                ),
            ]);
        }
        steps
    }
}

/// Which entry a refusal is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Entry {
    /// This room's old floor.
    SubfloorHere(Side),
    /// The pour.
    Pour(Side),
    /// A layer of this room, its index from 0.
    LayerHere(usize),
    /// The subfloor beyond.
    SubfloorBeyond(Side),
    /// A layer beyond, its index from 0.
    LayerBeyond(usize),
}

/// Why there is no answer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum DoorwayRefusal {
    /// A number that isn't one.
    #[error("{0:?} is not a number")]
    NotANumber(Entry),
    /// A thickness below zero.
    #[error("{entry:?} of {given_in} in is below zero")]
    Negative {
        /// Which.
        entry: Entry,
        /// What was given, inches.
        given_in: f64,
    },
    /// Over [`MOST_THICKNESS_IN`], or over [`MOST_HEIGHT_IN`] from the datum.
    #[error("{entry:?} of {given_in} in is over {most_in} in")]
    TooMuch {
        /// Which.
        entry: Entry,
        /// What was given, inches.
        given_in: f64,
        /// The most, inches.
        most_in: f64,
    },
}

fn refusals(given: &DoorwayEntry) -> Vec<DoorwayRefusal> {
    let height = |entry, given_in: f64| check(entry, given_in, -MOST_HEIGHT_IN, MOST_HEIGHT_IN);
    let thickness = |entry, given_in: f64| check(entry, given_in, 0.0, MOST_THICKNESS_IN);
    let layers_here = given.layers_here_in.iter().enumerate();
    let layers_beyond = given.layers_beyond_in.iter().enumerate();
    [
        height(Entry::SubfloorHere(Side::Left), given.here_left_in),
        height(Entry::SubfloorHere(Side::Right), given.here_right_in),
        thickness(Entry::Pour(Side::Left), given.pour_left_in),
        thickness(Entry::Pour(Side::Right), given.pour_right_in),
        height(Entry::SubfloorBeyond(Side::Left), given.beyond_left_in),
        height(Entry::SubfloorBeyond(Side::Right), given.beyond_right_in),
    ]
    .into_iter()
    .chain(layers_here.map(|(index, &layer_in)| thickness(Entry::LayerHere(index), layer_in)))
    .chain(layers_beyond.map(|(index, &layer_in)| thickness(Entry::LayerBeyond(index), layer_in)))
    .flatten()
    .collect()
}

fn check(entry: Entry, given_in: f64, least_in: f64, most_in: f64) -> Option<DoorwayRefusal> {
    if given_in.is_nan() {
        Some(DoorwayRefusal::NotANumber(entry))
    } else if given_in < least_in && least_in == 0.0 {
        Some(DoorwayRefusal::Negative { entry, given_in })
    } else if given_in < least_in || given_in > most_in {
        Some(DoorwayRefusal::TooMuch {
            entry,
            given_in,
            most_in,
        })
    } else {
        None
    }
}

fn figure(name: &'static str, value: f64) -> Figure {
    Figure {
        name,
        value,
        unit: Unit::In,
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn entry(layers_here_in: &[f64], layers_beyond_in: &[f64]) -> DoorwayEntry {
        DoorwayEntry {
            here_left_in: 0.0,
            here_right_in: 0.0,
            pour_left_in: 0.0,
            pour_right_in: 0.0,
            layers_here_in: layers_here_in.to_vec(),
            beyond_left_in: 0.0,
            beyond_right_in: 0.0,
            layers_beyond_in: layers_beyond_in.to_vec(),
        }
    }

    #[test]
    fn tile_on_a_membrane_against_wood_and_vinyl() {
        // By hand in 32nds: 4 + 3 + 6 + 12 = 25; strip wood is 24, sheet vinyl of 1/16 in is 2.
        let tile = [0.125, 0.09375, 0.1875, 0.375];
        let wood = doorway(entry(&tile, &[0.75])).unwrap();
        assert_eq!(wood.stack_here_in, 25.0 / 32.0);
        assert_eq!(
            (wood.left.step_in, wood.right.step_in),
            (1.0 / 32.0, 1.0 / 32.0)
        );
        let vinyl = doorway(entry(&tile, &[0.0625])).unwrap();
        assert_eq!(
            (vinyl.greatest_step_in, vinyl.higher),
            (0.71875, Higher::Here)
        );
        let steps = vinyl.working();
        assert_eq!(steps.len(), 8);
        assert_eq!(steps[4].result, figure("step_left", 0.71875));
    }

    #[test]
    fn a_tilted_pour_steps_up_and_down() {
        let mut given = entry(&[], &[0.5]);
        given.here_left_in = -0.25;
        given.here_right_in = -0.5;
        given.pour_left_in = 1.0;
        given.pour_right_in = 0.75;
        let got = doorway(given).unwrap();
        assert_eq!((got.left.step_in, got.right.step_in), (0.25, -0.25));
        assert_eq!((got.higher, got.greatest_at), (Higher::Changes, Side::Left));
    }

    #[test]
    fn every_refusal_is_told() {
        let mut given = entry(&[0.25, f64::NAN], &[25.0]);
        given.pour_right_in = -0.125;
        given.beyond_left_in = f64::NEG_INFINITY;
        let pour = DoorwayRefusal::Negative {
            entry: Entry::Pour(Side::Right),
            given_in: -0.125,
        };
        let beyond = DoorwayRefusal::TooMuch {
            entry: Entry::SubfloorBeyond(Side::Left),
            given_in: f64::NEG_INFINITY,
            most_in: MOST_HEIGHT_IN,
        };
        let layer = DoorwayRefusal::NotANumber(Entry::LayerHere(1));
        let thick = DoorwayRefusal::TooMuch {
            entry: Entry::LayerBeyond(0),
            given_in: 25.0,
            most_in: 24.0,
        };
        assert_eq!(doorway(given), Err(vec![pour, beyond, layer, thick]));
    }

    proptest! {
        /// A step doesn't know its datum, and swapping the sides turns its sign.
        #[test]
        fn datum_and_sides(heights in proptest::array::uniform4(-3.0..3.0f64), by in -50.0..50.0f64,
                           here in proptest::collection::vec(0.0..1.0f64, 0..5), beyond in proptest::collection::vec(0.0..1.0f64, 0..5)) {
            let mut given = entry(&here, &beyond);
            [given.here_left_in, given.here_right_in, given.beyond_left_in, given.beyond_right_in] = heights;
            let mut moved = given.clone();
            for height in [&mut moved.here_left_in, &mut moved.here_right_in, &mut moved.beyond_left_in, &mut moved.beyond_right_in] {
                *height += by;
            }
            let mut swapped = entry(&beyond, &here);
            [swapped.beyond_left_in, swapped.beyond_right_in, swapped.here_left_in, swapped.here_right_in] = heights;
            let (given, moved, swapped) = (doorway(given).unwrap(), doorway(moved).unwrap(), doorway(swapped).unwrap());
            prop_assert!((given.left.step_in - moved.left.step_in).abs() < 1e-9);
            prop_assert!((given.right.step_in + swapped.right.step_in).abs() < 1e-9);
        }
    }
}
