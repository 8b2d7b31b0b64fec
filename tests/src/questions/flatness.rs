//! Gaps under a straightedge, and what limits say of them.

use calc::floor::flatness::{
    Gap, ProfilePoint, Top, USUAL_EFFORT, f_numbers, gap, judge, limits_for, worst_gap,
};
use calc::job::Finish;
use serde::Deserialize;
use serde_json::{Value, json};

use super::floor::surface;
use super::pour::place;
use crate::given::{Answer, Given, No, answer, refused};

/// The largest gap under a straightedge of `straightedge` along a line: from `from_in` to `to_in` over the old floor, or
/// along `profile_in`, rows of distance and height.
pub fn straightedge(given: &Given) -> Answer {
    let length_in = given.length_in("straightedge")?;
    let pieces = if given.get("profile_in").is_some() {
        let points = given.rows::<2>("profile_in")?.into_iter();
        vec![
            points
                .map(|[s_in, height_in]| ProfilePoint { s_in, height_in })
                .collect(),
        ]
    } else {
        let line = (place(given, "from_in")?, place(given, "to_in")?);
        surface(given)?.profile(line.0, line.1)
    };
    let mut worst: Option<Gap> = None;
    for piece in &pieces {
        let found = gap(piece, length_in).map_err(refused)?;
        if worst.is_none_or(|worst| found.gap_in > worst.gap_in) {
            worst = Some(found);
        }
    }
    let worst = worst.ok_or_else(|| No::Case("the line has no floor under it".into()))?;
    answer(worst)
}

/// The worst gap found anywhere under a straightedge of `straightedge`.
pub fn worst(given: &Given) -> Answer {
    let length_in = given.length_in("straightedge")?;
    let found = worst_gap(&surface(given)?, Top::OldFloor, length_in, USUAL_EFFORT);
    answer(found.map_err(refused)?)
}

fn finish(given: &Given) -> Result<Finish, No> {
    let name = given.text("finish")?;
    Finish::deserialize(Value::from(name))
        .map_err(|_| No::Case(format!("given.finish: there is no finish {name:?}")))
}

/// The straightedge limits of a `finish`.
pub fn limits(given: &Given) -> Answer {
    Ok(json!({"limits": limits_for(finish(given)?)}))
}

/// What the limits of a `finish` say of the old floor.
pub fn verdicts(given: &Given) -> Answer {
    let verdicts = judge(
        &surface(given)?,
        Top::OldFloor,
        finish(given)?,
        USUAL_EFFORT,
    );
    Ok(json!({"verdicts": verdicts.map_err(refused)?}))
}

/// F-numbers of `heights_in`, read every 12 in.
pub fn f_number(given: &Given) -> Answer {
    answer(f_numbers(&given.numbers("heights_in")?).map_err(refused)?)
}
