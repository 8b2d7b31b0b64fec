//! The room and its old floor.

use calc::floor::opening::{Span, edge_strip_in, place};
use calc::floor::outline::{WallRun, l_shape, rectangle, walk};
use calc::floor::survey::suspects;
use calc::floor::{Outline, Point, Spot, Surface};
use calc::job::Corner;
use serde_json::json;

use crate::given::{Answer, Given, No, answer, refused};

/// The room: `corners_in`, or `width` and `length`, with `notch_width`, `notch_length` and `notch_at` for an L.
pub fn outline(given: &Given) -> Result<Outline, No> {
    if given.get("corners_in").is_some() {
        let corners = given.rows::<2>("corners_in")?;
        return Outline::new(corners.into_iter().map(|[x, y]| Point::new(x, y)).collect())
            .map_err(refused);
    }
    let (width, length) = (given.length_in("width")?, given.length_in("length")?);
    let Some(notch_width) = given.optional_length_in("notch_width")? else {
        return rectangle(width, length).map_err(refused);
    };
    let corner = match given.text("notch_at")? {
        "near-left" => Corner::NearLeft,
        "near-right" => Corner::NearRight,
        "far-left" => Corner::FarLeft,
        "far-right" => Corner::FarRight,
        other => {
            return Err(No::Case(format!(
                "given.notch_at: there is no corner {other:?}"
            )));
        }
    };
    l_shape(
        width,
        length,
        notch_width,
        given.length_in("notch_length")?,
        corner,
    )
    .map_err(refused)
}

pub fn room(given: &Given) -> Answer {
    let room = outline(given)?;
    Ok(json!({
        "area_ft2": room.area_in2() / 144.0,
        "perimeter_in": room.perimeter_in(),
        "corners_in": corners_in(&room),
    }))
}

fn corners_in(room: &Outline) -> Vec<[f64; 2]> {
    let corners = room.corners().iter();
    corners.map(|corner| [corner.x_in, corner.y_in]).collect()
}

/// A walk round the walls: `walls`, their lengths, and `turns_left_deg`, the turn at the end of each.
pub fn walked(given: &Given) -> Answer {
    let walls = given.lengths_in("walls")?;
    let turns = given.numbers("turns_left_deg")?;
    if turns.len() != walls.len() {
        return Err(No::Case(
            "given.turns_left_deg: a turn for each wall".into(),
        ));
    }
    let runs: Vec<WallRun> = walls
        .into_iter()
        .zip(turns)
        .map(|(length_in, turn_left_deg)| WallRun {
            length_in,
            turn_left_deg,
        })
        .collect();
    let walked = walk(&runs).map_err(refused)?;
    let mut found = answer(&walked)?;
    found["area_in2"] = json!(walked.outline.area_in2());
    found["corners_in"] = json!(corners_in(&walked.outline));
    Ok(found)
}

/// Foam along the walls of the room less `openings`, rows of wall (from 0), distance from its start and width, inches.
pub fn edge_strip(given: &Given) -> Answer {
    let room = outline(given)?;
    let spans: Vec<Span> = given
        .rows::<3>("openings")?
        .into_iter()
        .map(|[wall, from_in, width_in]| Span {
            wall: wall as usize,
            from_in,
            width_in,
        })
        .collect();
    let placed = place(&room, &spans).map_err(|all| {
        all.first().map_or_else(
            || No::Case("refused without a reason".into()),
            |refusal| refused(refusal.what),
        )
    })?;
    Ok(json!({"edge_strip_in": edge_strip_in(&room, &placed)}))
}

/// The spots of `spots_in`, rows of x, y and height.
fn spots(given: &Given) -> Result<Vec<Spot>, No> {
    let rows = given.rows::<3>("spots_in")?;
    Ok(rows
        .into_iter()
        .map(|[x, y, height_in]| Spot {
            at: Point::new(x, y),
            height_in,
        })
        .collect())
}

/// The old floor: the room and `spots_in`.
pub fn surface(given: &Given) -> Result<Surface, No> {
    Surface::new(&outline(given)?, &spots(given)?).map_err(refused)
}

pub fn facts(given: &Given) -> Answer {
    answer(surface(given)?.facts())
}

pub fn reached(given: &Given) -> Answer {
    answer(surface(given)?.reached(given.length_in("level")?))
}

/// Readings that disagree with their neighbours.
pub fn suspect_readings(given: &Given) -> Answer {
    let found = suspects(&spots(given)?);
    let spots: Vec<usize> = found.iter().map(|suspect| suspect.index).collect();
    Ok(json!({"spots": spots, "suspects": found}))
}
