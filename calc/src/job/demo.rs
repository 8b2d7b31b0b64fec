//! The worked demonstration job: an invented back bedroom whose floor sags between its bearing walls and leans.
//!
//! Room and job have no names: the app gives them in the user's language, and those of the wiring, which are here in
//! English ([`names`]). Layers go by their names in the table of layers.

use super::fields;
use super::{
    Beyond, Corner, Finish, Job, Layer, Opening, OpeningKind, PourChoice, Rest, Shape, Spot, Typed,
    Units,
};

mod opened;
mod wiring;

/// Place to the right, place away, inches, and how far down from the level line the floor is, inches: read to 1/16 in,
/// in walking order.
const SPOTS: [(&str, &str, &str); 49] = [
    ("0", "0", "2 1/2"),
    ("0", "24", "2 3/4"),
    ("0", "50", "2 13/16"),
    ("0", "72", "2 13/16"),
    ("0", "96", "2 13/16"),
    ("0", "110", "2 3/4"),
    ("0", "120", "2 11/16"),
    ("0", "136", "2 9/16"),
    ("21", "136", "2 11/16"),
    ("21", "120", "2 13/16"),
    ("21", "96", "3"),
    ("21", "72", "3 1/8"),
    ("21", "48", "3 1/16"),
    ("21", "24", "2 7/8"),
    ("20.5", "0", "2 5/8"),
    ("42", "0", "2 13/16"),
    ("50.5", "0", "2 13/16"),
    ("42", "24", "3 1/16"),
    ("42", "48", "3 1/4"),
    ("42", "72", "3 5/16"),
    ("42", "96", "3 1/4"),
    ("42", "120", "3"),
    ("42", "136", "2 13/16"),
    ("63", "136", "2 7/8"),
    ("63", "120", "3 3/16"),
    ("63", "96", "3 7/16"),
    ("63", "72", "3 7/16"),
    ("63", "48", "3 7/16"),
    ("63", "24", "3 1/4"),
    ("63", "0", "2 15/16"),
    ("84", "0", "3 1/16"),
    ("84", "24", "3 5/16"),
    ("84", "48", "3 1/2"),
    ("84", "72", "3 9/16"),
    ("84", "96", "3 7/16"),
    ("84", "120", "3 1/4"),
    ("84", "136", "3 1/16"),
    ("99", "120", "3 5/16"),
    ("99", "96", "3 1/2"),
    ("99", "72", "3 5/8"),
    ("99", "48", "3 9/16"),
    ("99", "24", "3 3/8"),
    ("99", "0", "3 3/16"),
    ("114", "0", "3 1/4"),
    ("114", "24", "3 1/2"),
    ("114", "48", "3 5/8"),
    ("114", "72", "3 9/16"),
    ("114", "96", "3 9/16"),
    ("114", "120", "3 7/16"),
];

/// What comes on the pour, from the bottom up: a name of the table of layers, and the thickness.
const LAYERS: [(&str, &str); 4] = [
    ("uncoupling_thin", "1/8"),
    ("mortar_under_membrane", "3/32"),
    ("bond_coat_1_2", "1/4"),
    ("tile_porcelain_floor", "3/8"),
];

/// What lies in the hall and in the closet.
const STRIP: [(&str, &str); 1] = [("wood_strip", "3/4")];

/// The demonstration job, made at `now` (RFC 3339): a bedroom of 9' 6" by 11' 4" with a chimney in one corner, a
/// door to the hall and a closet, all of it entered, and the subpanel that feeds it.
///
/// ```
/// let job = calc::job::demo::job("k3", "2026-03-02T08:00:00Z");
/// assert_eq!(job.rooms[0].survey.spots[0].reading.text, "2 1/2");
/// ```
pub fn job(id: impl Into<String>, now: impl Into<String>) -> Job {
    let mut job = Job::new(id, "", now, Units::FeetInches);
    let spots = spots(&mut job);
    let hall = Opening {
        wall: 0,
        from_start: fields::ALONG.keep("20 1/2", Units::FeetInches),
        width: fields::OPENING_WIDTH.keep("30", Units::FeetInches),
        beyond: Beyond::Reading,
        beyond_reading: fields::READING.keep("2 3/4", Units::FeetInches),
        pour_at_most: fields::READING.keep("2 1/8", Units::FeetInches),
        ramp_slope: fields::RAMP_SLOPE.keep("1:12", Units::FeetInches),
        ..opening(&mut job, OpeningKind::Doorway)
    };
    let closet = Opening {
        wall: 5,
        from_start: fields::ALONG.keep("26", Units::FeetInches),
        width: fields::OPENING_WIDTH.keep("5'", Units::FeetInches),
        beyond: Beyond::Spot,
        // The floor runs on into the closet: as the jamb that is nearer to the hall.
        beyond_spot: spots.get(2).map(|spot| spot.id),
        ramp_slope: fields::RAMP_SLOPE.keep("1:8", Units::FeetInches),
        ..opening(&mut job, OpeningKind::Closet)
    };
    let layers = layers(&mut job, &LAYERS);
    if let Some(room) = job.rooms.first_mut() {
        let outline = &mut room.outline;
        outline.shape = Shape::L;
        outline.width = fields::SIDE.keep("9' 6\"", Units::FeetInches);
        outline.length = fields::SIDE.keep("11' 4\"", Units::FeetInches);
        outline.notch_width = fields::SIDE.keep("2' 6\"", Units::FeetInches);
        outline.notch_length = fields::SIDE.keep("16", Units::FeetInches);
        outline.notch_corner = Corner::FarRight;
        room.openings = vec![hall, closet];
        room.survey.spots = spots;
        room.pour.choice = PourChoice::Flat;
        room.pour.tilt_limit = fields::TILT.keep("1/4 in per 4 ft", Units::FeetInches);
        room.layers = layers;
        room.finish = Finish::TileLarge;
    }
    wiring::add(&mut job);
    opened::add(&mut job);
    job
}

/// The names that its wiring has in its invented user's own words, in English: of the panel, its breakers and what feeds
/// it, of circuits, loads and boxes. Who makes the job gives them in the user's language.
pub fn names(job: &mut Job) -> Vec<&mut String> {
    let panel = &mut job.panel;
    let mut names = vec![&mut panel.name, &mut panel.fed_from, &mut panel.notes];
    names.extend(panel.breakers.iter_mut().map(|row| &mut row.label));
    for circuit in &mut job.circuits {
        names.push(&mut circuit.name);
        let loads = circuit.loads.iter_mut().chain(&mut circuit.planned);
        names.extend(loads.map(|load| &mut load.name));
    }
    names.extend(job.boxes.iter_mut().map(|row| &mut row.name));
    for opened in &mut job.opened {
        names.push(&mut opened.name);
        let loads = opened.cables.iter_mut().flat_map(|row| &mut row.loads);
        names.extend(loads.map(|load| &mut load.name));
    }
    names
}

fn spots(job: &mut Job) -> Vec<Spot> {
    SPOTS
        .iter()
        .map(|&(x, y, reading)| Spot {
            id: job.fresh_id(),
            x: fields::COORDINATE.keep(x, Units::FeetInches),
            y: fields::COORDINATE.keep(y, Units::FeetInches),
            reading: fields::READING.keep(reading, Units::FeetInches),
            checked: String::new(),
            rest: Rest::new(),
        })
        .collect()
}

fn layers(job: &mut Job, rows: &[(&str, &str)]) -> Vec<Layer> {
    rows.iter()
        .map(|&(name, thickness)| Layer {
            id: job.fresh_id(),
            name: name.to_owned(),
            thickness: fields::LAYER.keep(thickness, Units::FeetInches),
            rest: Rest::new(),
        })
        .collect()
}

/// An opening with the strip floor beyond it and nothing else entered.
fn opening(job: &mut Job, kind: OpeningKind) -> Opening {
    Opening {
        id: job.fresh_id(),
        name: String::new(),
        kind,
        wall: 0,
        from_start: Typed::default(),
        width: Typed::default(),
        beyond: Beyond::default(),
        beyond_reading: Typed::default(),
        beyond_spot: None,
        beyond_layers: layers(job, &STRIP),
        pour_at_most: Typed::default(),
        ramp_slope: Typed::default(),
        ramp_length: Typed::default(),
        rest: Rest::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::doorway::layer;
    use crate::floor::survey::{propose, suspects};
    use crate::job::questions::room::{openings, outline};
    use crate::job::questions::survey::{place_entries, readings};
    use crate::job::{Room, file};

    const NOW: &str = "2026-03-02T08:00:00Z";

    fn room() -> Room {
        job("demo", NOW).rooms.remove(0)
    }

    #[test]
    fn it_is_saved_and_opened_unchanged() {
        let job = job("demo", NOW);
        assert_eq!(file::read(&file::write(&job)), Ok(job.clone()));
        assert_eq!(job, super::job("demo", NOW));
    }

    #[test]
    fn the_spots_are_those_proposed_in_their_order() {
        let room = room();
        let shape = outline(&room.outline).unwrap().outline;
        let (placed, troubles) = openings(&shape, &room.openings);
        assert!(placed.len() == 2 && troubles.is_empty());
        let spans: Vec<_> = placed.iter().map(|placed| placed.span).collect();
        let spacing_in = fields::SPACING.read(&room.survey.spacing).unwrap();
        let proposed: Vec<_> = propose(&shape, &spans, spacing_in)
            .unwrap()
            .into_iter()
            .map(|spot| place_entries(&shape, spot.at, Units::FeetInches))
            .collect();
        let typed: Vec<_> = room
            .survey
            .spots
            .iter()
            .map(|spot| (spot.x.clone(), spot.y.clone()))
            .collect();
        assert_eq!(typed, proposed);
    }

    #[test]
    fn every_reading_is_in_sixteenths_and_none_is_doubted() {
        let readings = readings(&room().survey);
        assert!(readings.problems.is_empty() && readings.unread() == 0);
        for spot in &readings.spots {
            assert_eq!((spot.height_in * 16.0).fract(), 0.0, "{spot:?}");
        }
        assert_eq!(suspects(&readings.spots), []);
    }

    #[test]
    fn the_layers_are_those_of_the_table() {
        let room = room();
        let beyond = room.openings.iter().flat_map(|o| &o.beyond_layers);
        for given in room.layers.iter().chain(beyond) {
            let typical_in = layer(&given.name).unwrap().typical_in;
            assert_eq!(
                fields::LAYER.read(&given.thickness),
                Ok(typical_in),
                "{}",
                given.name
            );
        }
    }
}
