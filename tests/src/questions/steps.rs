//! Steps at doorways, and ramps.

use calc::floor::doorway::{DoorwayEntry, doorway};
use calc::floor::level_change::{classify, classify_slope};
use calc::floor::ramp::{Fit, Known, RampEntry, incline, ramp};
use serde_json::json;

use crate::given::{Answer, Given, No, answer, refused};

/// A length here at both jambs: `name`, or `name_left` and `name_right`; `otherwise` where none is given.
fn at_jambs(given: &Given, name: &str, otherwise: Option<f64>) -> Result<(f64, f64), No> {
    let both = given.optional_length_in(name)?;
    let jamb = |side: &str| {
        let own = given.optional_length_in(&format!("{name}_{side}"))?;
        own.or(both).or(otherwise).ok_or_else(|| {
            No::Case(format!(
                "given.{name} (or {name}_left and {name}_right) is missing"
            ))
        })
    };
    Ok((jamb("left")?, jamb("right")?))
}

/// The step between two finished floors: `here`, `pour` and `layers_here`; `beyond` and `layers_beyond`.
pub fn doorway_steps(given: &Given) -> Answer {
    let (here_left_in, here_right_in) = at_jambs(given, "here", None)?;
    let (pour_left_in, pour_right_in) = at_jambs(given, "pour", Some(0.0))?;
    let (beyond_left_in, beyond_right_in) = at_jambs(given, "beyond", None)?;
    let entry = DoorwayEntry {
        here_left_in,
        here_right_in,
        pour_left_in,
        pour_right_in,
        layers_here_in: given.lengths_in("layers_here")?,
        beyond_left_in,
        beyond_right_in,
        layers_beyond_in: given.lengths_in("layers_beyond")?,
    };
    answer(doorway(entry).map_err(refused)?)
}

/// Any two of `rise`, `run` and `slope`.
pub fn any_two(given: &Given) -> Answer {
    let (rise_in, run_in) = (
        given.optional_length_in("rise")?,
        given.optional_length_in("run")?,
    );
    let known = match (rise_in, run_in) {
        (Some(rise_in), Some(run_in)) => Known::RiseAndRun { rise_in, run_in },
        (Some(rise_in), None) => Known::RiseAndSlope {
            rise_in,
            slope: given.slope("slope")?,
        },
        (None, Some(run_in)) => Known::RunAndSlope {
            run_in,
            slope: given.slope("slope")?,
        },
        (None, None) => return Err(No::Case("two of rise, run and slope are wanted".into())),
    };
    answer(incline(known).map_err(refused)?)
}

pub fn level_change(given: &Given) -> Answer {
    answer(classify(given.length_in("step")?).map_err(refused)?)
}

pub fn ramp_across(given: &Given) -> Answer {
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

pub fn ramp_slope(given: &Given) -> Answer {
    Ok(json!({"held": classify_slope(given.slope("slope")?).map_err(refused)?}))
}
