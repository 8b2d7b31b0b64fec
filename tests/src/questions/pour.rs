//! Level and flat pours, their depths and lifts.

use calc::floor::lifts::{LiftShare, lifts};
use calc::floor::pour::{
    HeightKind, HeightRule, Pour, PourAsk, flat, least_feasible_height_in, level,
};
use calc::floor::{Point, Surface};
use serde_json::json;

use super::floor::surface;
use crate::given::{Answer, Given, No, answer, refused};

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

pub fn level_pour(given: &Given) -> Answer {
    answer(level(&surface(given)?, &pour_ask(given)?).map_err(refused)?)
}

pub fn flat_pour(given: &Given) -> Answer {
    answer(flat(&surface(given)?, &pour_ask(given)?).map_err(refused)?)
}

/// The old floor and the `pour` over it, `level` or `flat`.
fn pour(given: &Given) -> Result<(Surface, Pour), No> {
    let (surface, ask) = (surface(given)?, pour_ask(given)?);
    let pour = match given.text("pour")? {
        "level" => level(&surface, &ask),
        "flat" => flat(&surface, &ask),
        other => {
            return Err(No::Case(format!(
                "given.pour: level or flat, not {other:?}"
            )));
        }
    };
    let pour = pour.map_err(refused)?;
    Ok((surface, pour))
}

/// A place under a key: `[x, y]`, inches.
pub fn place(given: &Given, key: &str) -> Result<Point, No> {
    match given.numbers(key)?[..] {
        [x, y] => Ok(Point::new(x, y)),
        _ => Err(No::Case(format!("given.{key} must be x and y"))),
    }
}

/// A pour at a place, `at_in`.
pub fn at(given: &Given) -> Answer {
    let (surface, pour) = pour(given)?;
    let at = place(given, "at_in")?;
    let depth_in = pour.depth_at_in(&surface, at);
    Ok(json!({"depth_in": depth_in, "top_in": pour.plane.height_in(at)}))
}

/// A pour along an opening between the jambs `left_in` and `right_in`.
pub fn along(given: &Given) -> Answer {
    let (surface, pour) = pour(given)?;
    let jambs = (place(given, "left_in")?, place(given, "right_in")?);
    answer(pour.along(&surface, jambs.0, jambs.1))
}

/// The least height to which a flat pour can be held at `held_at_in`.
pub fn least_height(given: &Given) -> Answer {
    let mut ask = pour_ask(given)?;
    ask.rules.push(HeightRule {
        points: vec![place(given, "held_at_in")?],
        kind: HeightKind::AtMost,
        height_in: 0.0,
        id: u32::MAX,
    });
    let rule = ask.rules.len() - 1;
    let least_in = least_feasible_height_in(&surface(given)?, &ask, rule).map_err(refused)?;
    Ok(json!({"height_in": least_in}))
}

/// A pour in lifts no thicker than `lift_limit`, all alike or `full_first`.
pub fn in_lifts(given: &Given) -> Answer {
    let (surface, pour) = pour(given)?;
    let share = match given.text_or("share", "even")? {
        "even" => LiftShare::Even,
        "full-first" => LiftShare::FullFirst,
        other => {
            return Err(No::Case(format!(
                "given.share: even or full-first, not {other:?}"
            )));
        }
    };
    let limit_in = given.length_in("lift_limit")?;
    answer(lifts(&surface, &pour, limit_in, share).map_err(refused)?)
}
