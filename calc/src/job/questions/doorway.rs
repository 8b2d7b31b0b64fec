//! The doorways: the floors on both sides of each opening, and the ramp wanted there.

use serde::Serialize;

use super::room::Placed;
use super::survey::Readings;
use super::{EntryProblem, Reader};
use crate::floor::Surface;
use crate::floor::doorway::{Doorway, DoorwayEntry};
use crate::floor::level_change::ROUNDING_IN;
use crate::floor::plane::Plane;
use crate::floor::ramp::{Fit, RampEntry};
use crate::floor::survey::height_in;
use crate::job::{Beyond, Layer, Opening, Room, fields};
use crate::quantity::EntryRefusal;

/// An opening of the room and what is asked of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DoorwayAsk {
    /// The opening's id in the document.
    pub id: u32,
    /// The floors on both sides, or every entry that keeps them from being known.
    pub entry: Result<DoorwayEntry, Vec<EntryProblem>>,
}

/// The question of every opening that stands in its wall, in the document's order.
///
/// `pour` is the top of the pour, inches above the datum; without one the old floor stays as it is. Problems of a
/// layer go by the layer's row, all others by the opening's.
pub fn doorways(
    room: &Room,
    openings: &[Placed],
    surface: &Surface,
    readings: &Readings,
    pour: Option<&Plane>,
) -> Vec<DoorwayAsk> {
    openings
        .iter()
        .filter_map(|placed| room.opening(placed.id).map(|opening| (placed, opening)))
        .map(|(placed, opening)| DoorwayAsk {
            id: opening.id,
            entry: entry(room, placed, opening, surface, readings, pour),
        })
        .collect()
}

fn entry(
    room: &Room,
    placed: &Placed,
    opening: &Opening,
    surface: &Surface,
    readings: &Readings,
    pour: Option<&Plane>,
) -> Result<DoorwayEntry, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    reader.row(opening.id);
    let mut jamb = |at| {
        // Jambs stand on a wall, so there is floor under them but for a wall too short to have any.
        let here_in = surface.height_in(at).unwrap_or_else(|| {
            reader.refuse("place", EntryRefusal::NoPlace);
            0.0
        });
        (
            here_in,
            pour.map_or(0.0, |plane| depth_in(plane.height_in(at) - here_in)),
        )
    };
    let (here_left_in, pour_left_in) = jamb(placed.span.left);
    let (here_right_in, pour_right_in) = jamb(placed.span.right);
    let beyond_in = match opening.beyond {
        Beyond::Unknown => {
            reader.refuse("beyond", EntryRefusal::Blank);
            0.0
        }
        Beyond::Reading => height_in(
            room.survey.way,
            reader.need("beyond_reading", &fields::READING, &opening.beyond_reading),
        ),
        Beyond::Spot => opening
            .beyond_spot
            .and_then(|spot| readings.height_of(spot))
            .unwrap_or_else(|| {
                reader.refuse("beyond_spot", EntryRefusal::Blank);
                0.0
            }),
    };
    let layers_here_in = layers_in(&mut reader, &room.layers);
    let layers_beyond_in = layers_in(&mut reader, &opening.beyond_layers);
    reader.finish(DoorwayEntry {
        here_left_in,
        here_right_in,
        pour_left_in,
        pour_right_in,
        layers_here_in,
        beyond_left_in: beyond_in,
        beyond_right_in: beyond_in,
        layers_beyond_in,
    })
}

/// A depth that is below zero by rounding is none; one that is truly below zero stays, to be refused.
fn depth_in(depth_in: f64) -> f64 {
    if (-ROUNDING_IN..0.0).contains(&depth_in) {
        0.0
    } else {
        depth_in
    }
}

fn layers_in(reader: &mut Reader, layers: &[Layer]) -> Vec<f64> {
    layers
        .iter()
        .map(|layer| {
            reader
                .row(layer.id)
                .need("thickness", &fields::LAYER, &layer.thickness)
        })
        .collect()
}

/// The thickness of layers together, inches.
///
/// # Errors
/// Every thickness that is missing or refused.
pub fn stack_in(layers: &[Layer]) -> Result<f64, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let thicknesses_in = layers_in(&mut reader, layers);
    reader.finish(
        thicknesses_in
            .iter()
            .fold(0.0, |sum_in, layer_in| sum_in + layer_in),
    )
}

/// The ramp wanted at an opening: as long as the length there is, where one was entered, or else at the slope.
///
/// A step within [`ROUNDING_IN`] is none.
///
/// # Errors
/// Every entry that is missing or refused.
pub fn ramp_ask(
    opening: &Opening,
    width_in: f64,
    doorway: &Doorway,
) -> Result<RampEntry, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    reader.row(opening.id);
    let length_in = reader.may("ramp_length", &fields::RAMP_LENGTH, &opening.ramp_length);
    let fit = match length_in {
        Some(length_in) => Fit::Length(length_in),
        // A refused length is told by itself, without asking for a slope too.
        None if !opening.ramp_length.is_blank() => Fit::Length(0.0),
        None => Fit::Slope(reader.need("ramp_slope", &fields::RAMP_SLOPE, &opening.ramp_slope)),
    };
    let step = |step_in: f64| {
        if step_in.abs() <= ROUNDING_IN {
            0.0
        } else {
            step_in
        }
    };
    reader.finish(RampEntry {
        width_in,
        step_left_in: step(doorway.left.step_in),
        step_right_in: step(doorway.right.step_in),
        fit,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::Point;
    use crate::floor::doorway::{Higher, doorway};
    use crate::floor::outline::rectangle;
    use crate::floor::ramp::{LowSide, ramp};
    use crate::job::questions::room::{RoomShape, openings};
    use crate::job::questions::survey::readings;
    use crate::job::{Rest, Spot, Typed, Units};

    fn spot(id: u32, x: &str, y: &str, reading: &str) -> Spot {
        let inches = |text: &str| {
            if text.is_empty() {
                Typed::default()
            } else {
                Typed::new(text, "in")
            }
        };
        Spot {
            id,
            x: inches(x),
            y: inches(y),
            reading: inches(reading),
            checked: String::new(),
            rest: Rest::new(),
        }
    }

    fn layer(id: u32, thickness: &str) -> Layer {
        Layer {
            id,
            name: String::new(),
            thickness: Typed::new(thickness, "in"),
            rest: Rest::new(),
        }
    }

    /// A room of 5 ft by 8 ft whose floor falls 1/2 in from the left wall to the right, read down from a line, with
    /// a doorway of 30 in in the near wall, from 12 in to 42 in along it.
    fn bath() -> Room {
        let mut room = Room::new(1, "bath", Units::FeetInches);
        room.survey.spots = vec![
            spot(2, "0", "0", "36"),
            spot(3, "60", "0", "36 1/2"),
            spot(4, "60", "96", "36 1/2"),
            spot(5, "0", "96", "36"),
            spot(6, "30", "48", ""),
        ];
        let door = serde_json::json!({
            "id": 9, "wall": 0, "from_start": "12\"", "width": "30\"", "ramp_slope": "1:12",
            "beyond": "reading", "beyond_reading": "36 1/4\"",
        });
        room.openings = vec![crate::saved::Saved::read(door).unwrap()];
        room.layers = vec![layer(10, "1/8"), layer(11, "3/16"), layer(12, "3/8")];
        room
    }

    fn ask(room: &Room, pour: Option<&Plane>) -> Result<DoorwayEntry, Vec<EntryProblem>> {
        let outline = rectangle(60.0, 96.0).unwrap();
        let shape = RoomShape {
            outline,
            walked: None,
        };
        let readings = readings(&room.survey, Some(&shape.outline));
        let surface = Surface::new(&shape.outline, &readings.spots).unwrap();
        let placed = openings(&shape, &room.openings).0;
        doorways(room, &placed, &surface, &readings, pour)
            .remove(0)
            .entry
    }

    fn problems(room: &Room) -> Vec<(&'static str, Option<u32>)> {
        ask(room, None)
            .unwrap_err()
            .into_iter()
            .map(|problem| (problem.name, problem.row))
            .collect()
    }

    #[track_caller]
    fn near(got: f64, want: f64) {
        assert!((got - want).abs() < 1e-9, "{got} is not {want}");
    }

    #[test]
    fn floors_at_the_jambs_worked_by_hand() {
        // By hand. Facing the near wall from inside, the left jamb is the far end of the opening: x = 42 in, the
        // right one x = 12 in. The floor falls 1/2 in in 60 in: 36 + 42/120 = 36.35 in and 36 + 12/120 = 36.1 in
        // under the line. Layers 2/16 + 3/16 + 6/16 = 11/16 in here, none beyond; the floor beyond is 36.25 under.
        let got = ask(&bath(), None).unwrap();
        near(got.here_left_in, -36.35);
        near(got.here_right_in, -36.1);
        assert_eq!((got.pour_left_in, got.pour_right_in), (0.0, 0.0));
        assert_eq!((got.beyond_left_in, got.beyond_right_in), (-36.25, -36.25));
        assert_eq!(got.layers_here_in, [0.125, 0.1875, 0.375]);
        let answer = doorway(got).unwrap();
        near(answer.left.step_in, 0.6875 - 0.1);
        near(answer.right.step_in, 0.6875 + 0.15);
        assert_eq!(answer.higher, Higher::Here);
    }

    #[test]
    fn a_level_pour_makes_both_steps_alike() {
        // By hand: 1/4 in over the highest spot stands 35.75 in under the line: 0.6 in at the left jamb, 0.35 at the
        // right, and with 11/16 in of layers 36.25 - 35.75 + 0.6875 = 1.1875 in up at both.
        let got = ask(&bath(), Some(&Plane::level(-35.75))).unwrap();
        near(got.pour_left_in, 0.6);
        near(got.pour_right_in, 0.35);
        let answer = doorway(got).unwrap();
        near(answer.left.step_in, 1.1875);
        near(answer.right.step_in, 1.1875);
    }

    #[test]
    fn level_with_a_spot() {
        let mut room = bath();
        room.openings[0].beyond = Beyond::Spot;
        assert_eq!(problems(&room), [("beyond_spot", Some(9))]);
        room.openings[0].beyond_spot = Some(3);
        assert_eq!(ask(&room, None).unwrap().beyond_left_in, -36.5);
        // A spot that was never read, and one that is gone.
        for missing in [6, 77] {
            room.openings[0].beyond_spot = Some(missing);
            assert_eq!(problems(&room), [("beyond_spot", Some(9))]);
        }
    }

    #[test]
    fn every_missing_entry_is_told() {
        let mut room = bath();
        room.openings[0].beyond = Beyond::Unknown;
        room.openings[0].beyond_layers = vec![layer(20, "1/2"), layer(21, "thick")];
        room.layers[1].thickness = Typed::default();
        let want = [
            ("beyond", Some(9)),
            ("thickness", Some(11)),
            ("thickness", Some(21)),
        ];
        assert_eq!(problems(&room), want);
        assert_eq!(stack_in(&room.layers).unwrap_err().len(), 1);
        room.layers[1].thickness = Typed::plain("3/16\"");
        assert_eq!(stack_in(&room.layers), Ok(0.6875));
    }

    #[test]
    fn a_plane_under_the_floor_is_refused_and_rounding_is_not() {
        let flush = Plane::through(Point::new(0.0, 0.0), -36.0 - 1e-9, -0.5 / 60.0, 0.0);
        let got = ask(&bath(), Some(&flush)).unwrap();
        assert_eq!((got.pour_left_in, got.pour_right_in), (0.0, 0.0));
        let under = ask(&bath(), Some(&Plane::level(-37.0))).unwrap();
        assert!(under.pour_left_in < 0.0 && doorway(under).is_err());
    }

    #[test]
    fn a_length_beats_a_slope() {
        let mut opening = bath().openings.remove(0);
        let answer = doorway(ask(&bath(), Some(&Plane::level(-35.75))).unwrap()).unwrap();
        // 1:12 of 1.1875 in is 14.25 in (1:12 is an inch in a foot).
        let by_slope = ramp(ramp_ask(&opening, 30.0, &answer).unwrap()).unwrap();
        near(by_slope.run_in, 14.25);
        assert_eq!(by_slope.low_side, LowSide::Beyond);
        opening.ramp_length = Typed::plain("19\"");
        let by_length = ramp(ramp_ask(&opening, 30.0, &answer).unwrap()).unwrap();
        near(by_length.steepest, 1.0 / 16.0);
        opening.ramp_length = Typed::plain("long");
        let told = ramp_ask(&opening, 30.0, &answer).unwrap_err();
        assert_eq!(
            told.iter().map(|problem| problem.name).collect::<Vec<_>>(),
            ["ramp_length"]
        );
        opening.ramp_length = Typed::default();
        opening.ramp_slope = Typed::default();
        assert_eq!(
            ramp_ask(&opening, 30.0, &answer).unwrap_err()[0].name,
            "ramp_slope"
        );
    }

    #[test]
    fn a_step_of_rounding_is_none() {
        let mut answer = doorway(ask(&bath(), Some(&Plane::level(-35.75))).unwrap()).unwrap();
        answer.left.step_in = -1e-12;
        let asked = ramp_ask(&bath().openings[0], 30.0, &answer).unwrap();
        assert_eq!(asked.step_left_in, 0.0);
        assert!(ramp(asked).is_ok());
    }
}
