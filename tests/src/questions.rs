//! What a case may ask: the name of each question and how it is put to `calc`.
//!
//! To add one: a function here that reads what it needs from [`Given`] and hands `calc`'s answer on, a line in [`QUESTIONS`],
//! and a line in the table of tests/README.md.

use calc::floor::level_change::{classify, classify_slope};
use calc::floor::outline::{l_shape, rectangle};
use calc::floor::pour::{HeightKind, HeightRule, PourAsk, flat, level};
use calc::floor::ramp::{Fit, RampEntry, ramp};
use calc::floor::{Outline, Point, Spot, Surface};
use calc::job::Corner;
use calc::quantity::{
    AreaUnit, LengthUnit, SlopeUnit, VolumeUnit, parse_area, parse_length, parse_slope,
    parse_volume,
};
use serde_json::json;

use crate::given::{Answer, Given, No, answer, refused};

/// A question: reads a case's `given` and answers it.
pub type Question = fn(&Given) -> Answer;

/// Every question by name.
pub const QUESTIONS: &[(&str, Question)] = &[
    ("length", length),
    ("area", area),
    ("volume", volume),
    ("slope", slope),
    ("room", room),
    ("floor-facts", floor_facts),
    ("floor-reached", floor_reached),
    ("pour-level", pour_level),
    ("pour-flat", pour_flat),
    ("level-change", level_change),
    ("ramp", ramp_across),
    ("ramp-slope", ramp_slope),
];

fn unit<T>(
    given: &Given,
    default: &'static str,
    from_code: fn(&str) -> Option<T>,
) -> Result<T, No> {
    let code = given.text_or("unit", default)?;
    from_code(code).ok_or_else(|| No::Case(format!("given.unit: there is no unit {code:?}")))
}

fn length(given: &Given) -> Answer {
    let bare = unit(given, "in", LengthUnit::from_code)?;
    let length = parse_length(given.text("typed")?, bare).map_err(refused)?;
    Ok(json!({"in": length.inches(), "ft": length.feet(), "mm": length.mm()}))
}

fn area(given: &Given) -> Answer {
    let bare = unit(given, "ft2", AreaUnit::from_code)?;
    let area = parse_area(given.text("typed")?, bare).map_err(refused)?;
    Ok(json!({"in2": area.in2(), "ft2": area.ft2(), "m2": area.m2()}))
}

fn volume(given: &Given) -> Answer {
    let bare = unit(given, "ft3", VolumeUnit::from_code)?;
    let volume = parse_volume(given.text("typed")?, bare).map_err(refused)?;
    Ok(json!({"in3": volume.in3(), "ft3": volume.ft3(), "m3": volume.m3()}))
}

fn slope(given: &Given) -> Answer {
    let slope = parse_slope(given.text("typed")?, SlopeUnit::default()).map_err(refused)?;
    Ok(json!({"ratio": slope.ratio(), "in_per_4ft": slope.in_per_4ft()}))
}

/// The room: `corners_in`, or `width` and `length`, with `notch_width`, `notch_length` and `notch_at` for an L.
fn outline(given: &Given) -> Result<Outline, No> {
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

fn room(given: &Given) -> Answer {
    let room = outline(given)?;
    let corners: Vec<_> = room
        .corners()
        .iter()
        .map(|corner| [corner.x_in, corner.y_in])
        .collect();
    Ok(json!({
        "area_ft2": room.area_in2() / 144.0,
        "perimeter_in": room.perimeter_in(),
        "corners_in": corners,
    }))
}

/// The old floor: the room and `spots_in`, rows of x, y and height.
fn surface(given: &Given) -> Result<Surface, No> {
    let spots: Vec<Spot> = given
        .rows::<3>("spots_in")?
        .into_iter()
        .map(|[x, y, height_in]| Spot {
            at: Point::new(x, y),
            height_in,
        })
        .collect();
    Surface::new(&outline(given)?, &spots).map_err(refused)
}

fn floor_facts(given: &Given) -> Answer {
    answer(surface(given)?.facts())
}

fn floor_reached(given: &Given) -> Answer {
    answer(surface(given)?.reached(given.length_in("level")?))
}

/// What the pour must keep: `cover`, `tilt_limit_in_per_4ft`, and `at_most_in` and `exactly_in`, rows of x, y and height.
fn pour_ask(given: &Given) -> Result<PourAsk, No> {
    let mut rules = Vec::new();
    for (key, kind) in [
        ("at_most_in", HeightKind::AtMost),
        ("exactly_in", HeightKind::Exactly),
    ] {
        if given.get(key).is_none() {
            continue;
        }
        for [x, y, height_in] in given.rows::<3>(key)? {
            let id = rules.len() as u32;
            rules.push(HeightRule {
                points: vec![Point::new(x, y)],
                kind,
                height_in,
                id,
            });
        }
    }
    let tilt = "tilt_limit_in_per_4ft";
    Ok(PourAsk {
        cover_in: given.length_in("cover")?,
        tilt_limit_in_per_4ft: given.get(tilt).map(|_| given.number(tilt)).transpose()?,
        rules,
    })
}

fn pour_level(given: &Given) -> Answer {
    answer(level(&surface(given)?, &pour_ask(given)?).map_err(refused)?)
}

fn pour_flat(given: &Given) -> Answer {
    answer(flat(&surface(given)?, &pour_ask(given)?).map_err(refused)?)
}

fn level_change(given: &Given) -> Answer {
    answer(classify(given.length_in("step")?).map_err(refused)?)
}

fn ramp_across(given: &Given) -> Answer {
    let fit = match given.optional_length_in("run")? {
        Some(run_in) => Fit::Length(run_in),
        None => Fit::Slope(given.slope("slope")?),
    };
    let ramp = ramp(RampEntry {
        width_in: given.length_in("width")?,
        step_left_in: given.length_in("step_left")?,
        step_right_in: given.length_in("step_right")?,
        fit,
    });
    answer(ramp.map_err(refused)?)
}

fn ramp_slope(given: &Given) -> Answer {
    Ok(json!({"held": classify_slope(given.slope("slope")?).map_err(refused)?}))
}
