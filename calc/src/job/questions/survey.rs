//! The survey: its spots as places and heights.

use serde::Serialize;

use super::{EntryProblem, Reader};
use crate::floor::surface::SurfaceRefusal;
use crate::floor::survey::{Suspect, height_in, suspects};
use crate::floor::{Outline, Surface};
use crate::floor::{Point, Spot};
use crate::job::{Survey, Units, fields};
use crate::quantity::{Length, Typed};

/// A spot's place, whether it was read or not.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Place {
    /// The spot's id in the document.
    pub id: u32,
    /// The spot's number on screen: its place in the document's order, from 1.
    pub number: usize,
    /// Where it is: at the wall where it was measured past one by no more than [`PAST_WALL_IN`].
    pub at: Point,
    /// Where it was measured.
    pub measured_at: Point,
    /// It has a reading that can be read.
    pub read: bool,
    /// The user looked at that reading again and says that it is right.
    pub checked: bool,
}

/// A spot that was measured a little past a wall and stands at it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MovedSpot {
    /// The spot's id.
    pub spot: u32,
    /// Where it was measured.
    pub measured_at: Point,
    /// The place on the wall that it stands at.
    pub at: Point,
    /// How far that is, inches.
    pub by_in: f64,
}

/// What the survey gives.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Readings {
    /// The spots that were read, in the document's order.
    pub spots: Vec<Spot>,
    /// The id of each of `spots`.
    pub ids: Vec<u32>,
    /// Every spot whose place is known, read or not, in the document's order.
    pub places: Vec<Place>,
    /// Entries that can't be read; a blank reading is not one of them.
    pub problems: Vec<EntryProblem>,
}

impl Readings {
    /// How many spots have a place but no reading yet.
    pub fn unread(&self) -> usize {
        self.places.iter().filter(|place| !place.read).count()
    }

    /// The id of a spot by its index among `spots`.
    pub fn id_of(&self, index: usize) -> Option<u32> {
        self.ids.get(index).copied()
    }

    /// The number on screen of a spot whose place is known, by its id; from 1.
    pub fn number_of(&self, id: u32) -> Option<usize> {
        self.places
            .iter()
            .find(|place| place.id == id)
            .map(|place| place.number)
    }

    /// The id of the spot with this number, where its place is known.
    pub fn id_by_number(&self, number: usize) -> Option<u32> {
        self.places
            .iter()
            .find(|place| place.number == number)
            .map(|place| place.id)
    }

    /// The place of a spot by its id.
    pub fn place_of(&self, id: u32) -> Option<Point> {
        self.places
            .iter()
            .find(|place| place.id == id)
            .map(|place| place.at)
    }

    /// The spots that were measured past a wall by no more than [`PAST_WALL_IN`] and stand at it.
    pub fn moved(&self) -> Vec<MovedSpot> {
        let mut moved = Vec::new();
        for place in &self.places {
            if place.at != place.measured_at {
                moved.push(MovedSpot {
                    spot: place.id,
                    measured_at: place.measured_at,
                    at: place.at,
                    by_in: place.at.distance_in(place.measured_at),
                });
            }
        }
        moved
    }

    /// The readings that disagree with their neighbours and were not checked.
    pub fn doubted(&self) -> Vec<Suspect> {
        let checked = |index: usize| {
            let id = self.id_of(index);
            self.places
                .iter()
                .any(|place| place.checked && Some(place.id) == id)
        };
        let mut doubted = suspects(&self.spots);
        doubted.retain(|suspect| !checked(suspect.index));
        doubted
    }

    /// The height of a spot that was read, by its id, inches above the datum.
    pub fn height_of(&self, id: u32) -> Option<f64> {
        self.ids
            .iter()
            .position(|&known| known == id)
            .and_then(|i| self.spots.get(i))
            .map(|spot| spot.height_in)
    }
}

/// How far past a wall a spot may lie and still be taken as read at the wall, inches: two measurements of the same room
/// differ by as much. Common practice.
pub const PAST_WALL_IN: f64 = 1.0;

impl Readings {
    /// The old floor through the spots that were read.
    ///
    /// # Errors
    /// [`SurfaceRefusal`], spots by their index among those read.
    pub fn surface(&self, outline: &Outline) -> Result<Surface, SurfaceRefusal> {
        Surface::new(outline, &self.spots)
    }

    /// The spots that lie past a wall by more than [`PAST_WALL_IN`], by their ids, and the place on the wall nearest to each.
    pub fn outside(&self, outline: &Outline) -> Vec<(u32, Point)> {
        let mut outside = Vec::new();
        for place in &self.places {
            let wall = outline.nearest_wall(place.at);
            if !outline.contains(place.at) && wall.distance_in > PAST_WALL_IN {
                outside.push((place.id, wall.at));
            }
        }
        outside
    }
}

/// The spots of a survey as places and heights. A spot past a wall of the room by no more than [`PAST_WALL_IN`] is at
/// the wall, for every question alike; without an outline it is where it was measured.
pub fn readings(survey: &Survey, outline: Option<&Outline>) -> Readings {
    let mut all = Readings::default();
    let in_room = |at: Point| match outline {
        Some(outline) if !outline.contains(at) => {
            let wall = outline.nearest_wall(at);
            if wall.distance_in <= PAST_WALL_IN {
                wall.at
            } else {
                at
            }
        }
        _ => at,
    };
    for (index, spot) in survey.spots.iter().enumerate() {
        let mut reader = Reader::default();
        reader.row(spot.id);
        let x_in = reader.need("x", &fields::COORDINATE, &spot.x);
        let y_in = reader.need("y", &fields::COORDINATE, &spot.y);
        let place = reader.finish(Point::new(x_in, y_in));
        let mut reader = Reader::default();
        reader.row(spot.id);
        let reading = reader.may("reading", &fields::READING, &spot.reading);
        if let Err(problems) = reader.finish(()) {
            all.problems.extend(problems);
        }
        match place {
            Ok(measured_at) => {
                let at = in_room(measured_at);
                all.places.push(Place {
                    id: spot.id,
                    number: index + 1,
                    at,
                    measured_at,
                    read: reading.is_some(),
                    checked: reading.is_some() && spot.checked == spot.reading.text,
                });
                if let Some(reading) = reading {
                    all.spots.push(Spot {
                        at,
                        height_in: height_in(survey.way, reading),
                    });
                    all.ids.push(spot.id);
                }
            }
            Err(problems) => all.problems.extend(problems),
        }
    }
    all
}

/// A proposed spot's place as entries that a person can read.
///
/// Rounded to 1/8 in or 1 mm where the rounded place is still in the room and a place on a wall stays on it;
/// corners and jambs of odd walls keep every digit, since a spot a hair off its corner would be another vertex.
pub fn place_entries(outline: &Outline, at: Point, units: Units) -> (Typed, Typed) {
    let step_in = if units == Units::Metric {
        Length::from_mm(1.0).inches()
    } else {
        0.125
    };
    let round = |value: f64| (value / step_in).round() * step_in;
    let on_wall = |p: Point| {
        outline
            .walls()
            .any(|wall| wall.distance_in(p) <= outline.tolerance_in())
    };
    let is_corner = outline
        .corners()
        .iter()
        .any(|corner| corner.distance_in(at) <= outline.tolerance_in());
    let stays = |p: Point| outline.contains(p) && (!on_wall(at) || on_wall(p));
    let tries = [
        Point::new(round(at.x_in), round(at.y_in)),
        Point::new(at.x_in, round(at.y_in)),
        Point::new(round(at.x_in), at.y_in),
    ];
    let place = tries
        .into_iter()
        .find(|&p| stays(p) && (!is_corner || p.distance_in(at) <= outline.tolerance_in()))
        .unwrap_or(at);
    let text = |inches: f64| {
        let value = if units == Units::Metric {
            Length::from_inches(inches).mm()
        } else {
            inches
        };
        fields::COORDINATE.keep(format!("{value}"), units)
    };
    (text(place.x_in), text(place.y_in))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::outline::rectangle;

    #[test]
    fn a_proposed_place_reads_well_and_a_corner_stays_the_corner() {
        // 7' 3 5/8" by 10' 0 1/3": the far corner keeps every digit, a grid spot is rounded.
        let room = rectangle(87.625, 120.0 + 1.0 / 3.0).unwrap();
        let (x, y) = place_entries(&room, Point::new(29.21, 40.11), Units::FeetInches);
        assert_eq!((x.text.as_str(), y.text.as_str()), ("29.25", "40.125"));
        let corner = room.corners()[2];
        let (x, y) = place_entries(&room, corner, Units::FeetInches);
        let read = |typed| fields::COORDINATE.read(typed).unwrap();
        assert_eq!(Point::new(read(&x), read(&y)), corner);
    }

    #[test]
    fn a_place_on_a_wall_stays_on_it() {
        let room = rectangle(87.63, 120.0).unwrap();
        let (x, y) = place_entries(&room, Point::new(87.63, 40.11), Units::FeetInches);
        let read = |typed| fields::COORDINATE.read(typed).unwrap();
        assert_eq!(Point::new(read(&x), read(&y)), Point::new(87.63, 40.125));
    }

    #[test]
    fn a_checked_reading_is_no_longer_doubted_until_it_changes() {
        let entry = |text: &str| fields::READING.keep(text, Units::FeetInches);
        let mut survey = Survey::default();
        for i in 0..25_u32 {
            survey.spots.push(crate::job::Spot {
                id: i,
                x: entry(&(i % 5 * 24).to_string()),
                y: entry(&(i / 5 * 24).to_string()),
                reading: entry(if i == 12 { "5" } else { "2" }),
                checked: String::new(),
                rest: crate::job::Rest::new(),
            });
        }
        let doubted = |survey: &Survey| {
            let readings = readings(survey, None);
            let ids: Vec<_> = readings
                .doubted()
                .iter()
                .filter_map(|s| readings.id_of(s.index))
                .collect();
            ids
        };
        assert_eq!(doubted(&survey), [12]);
        survey.spots[12].checked = "5".to_owned();
        assert!(doubted(&survey).is_empty());
        survey.spots[12].reading = entry("6");
        assert_eq!(doubted(&survey), [12]);
    }

    #[test]
    fn a_spot_a_hair_past_a_wall_is_at_the_wall_and_a_far_one_is_named() {
        let room = rectangle(100.0, 100.0).unwrap();
        let entry = |text: &str| Typed::plain(text);
        let mut survey = Survey::default();
        for (id, x, y) in [
            (1, "0", "0"),
            (2, "100.5", "0"),
            (3, "50", "101"),
            (4, "0", "100"),
            (5, "50", "50"),
        ] {
            survey.spots.push(crate::job::Spot {
                id,
                x: entry(x),
                y: entry(y),
                reading: entry("1"),
                checked: String::new(),
                rest: crate::job::Rest::new(),
            });
        }
        let read = readings(&survey, Some(&room));
        assert!(read.outside(&room).is_empty());
        let surface = read.surface(&room).unwrap();
        assert_eq!(surface.vertices[1].at, Point::new(100.0, 0.0));
        assert_eq!(surface.vertices[2].at, Point::new(50.0, 100.0));
        // Every question sees them there, and each is told.
        assert_eq!(read.place_of(3), Some(Point::new(50.0, 100.0)));
        let moved: Vec<_> = read.moved().iter().map(|m| (m.spot, m.by_in)).collect();
        assert_eq!(moved, [(2, 0.5), (3, 1.0)]);
        survey.spots[1].x = entry("103");
        let read = readings(&survey, Some(&room));
        assert_eq!(read.outside(&room), [(2, Point::new(100.0, 0.0))]);
        assert!(read.surface(&room).is_err());
    }
}
