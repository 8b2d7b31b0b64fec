//! The survey: its spots as places and heights.

use serde::Serialize;

use super::{EntryProblem, Reader};
use crate::floor::survey::height_in;
use crate::floor::{Point, Spot};
use crate::job::{Survey, fields};

/// A spot's place, whether it was read or not.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Place {
    /// The spot's id in the document.
    pub id: u32,
    /// Where it is.
    pub at: Point,
    /// It has a reading that can be read.
    pub read: bool,
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

    /// The place of a spot by its id.
    pub fn place_of(&self, id: u32) -> Option<Point> {
        self.places
            .iter()
            .find(|place| place.id == id)
            .map(|place| place.at)
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

/// The spots of a survey as places and heights.
pub fn readings(survey: &Survey) -> Readings {
    let mut all = Readings::default();
    for spot in &survey.spots {
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
            Ok(at) => {
                all.places.push(Place {
                    id: spot.id,
                    at,
                    read: reading.is_some(),
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
