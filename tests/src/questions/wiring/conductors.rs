//! Ampacity, the smallest conductor, and loads of branch circuits.

use calc::wiring::ampacity::{
    Conditions, Load, Wanted, ampacity as ampacity_of, min_rating_a, smallest_conductor as smallest,
};
use calc::wiring::circuit::{lighting_circuits as lighting, most_continuous_w};
use calc::wiring::conductor::{Conductor, Covering, Rating};
use calc::wiring::tables::{Ambient, breaker_at_least_a};

use super::*;

pub fn ampacity(given: &Given) -> Answer {
    let conductor = Conductor {
        size: size(given)?,
        metal: word_or(given, "metal", "copper")?,
        covering: covering(given)?,
    };
    answer(ampacity_of(conductor, conditions(given)?).map_err(refused)?)
}

/// `covering`, or the rating printed on a single conductor.
fn covering(given: &Given) -> Result<Covering, No> {
    let Some(rated) = given.optional_number("insulation_c")? else {
        return word(given, "covering");
    };
    [Rating::C60, Rating::C75, Rating::C90]
        .into_iter()
        .find(|rating| rating.celsius() == rated)
        .map(Covering::Rated)
        .ok_or_else(|| No::Case("given.insulation_c must be 60, 75 or 90".into()))
}

fn conditions(given: &Given) -> Result<Conditions, No> {
    let ambient = match given.optional_number("ambient_f")? {
        Some(degrees) => Ambient::Fahrenheit(degrees),
        None => Ambient::Celsius(given.number_or("ambient_c", 30.0)?),
    };
    Ok(Conditions {
        edition: edition(given)?,
        ambient,
        carrying: whole(given, "carrying", 2)?,
        terminals: word_or(given, "terminals", "not_known")?,
        feeds: word_or(given, "feeds", "several_receptacles")?,
    })
}

fn load(given: &Given) -> Result<Load, No> {
    Ok(Load {
        continuous_a: given.number_or("continuous_a", 0.0)?,
        other_a: given.number_or("other_a", 0.0)?,
    })
}

pub fn smallest_conductor(given: &Given) -> Answer {
    let wanted = Wanted {
        load: load(given)?,
        breaker_a: given.optional_number("breaker_a")?,
        metal: word_or(given, "metal", "copper")?,
        covering: covering(given)?,
        conditions: conditions(given)?,
    };
    answer(smallest(wanted).map_err(refused)?)
}

pub fn rating(given: &Given) -> Answer {
    let min_a = min_rating_a(load(given)?).map_err(refused)?;
    Ok(json!({
        "min_rating_a": min_a,
        "breaker_a": breaker_at_least_a(min_a, edition(given)?),
    }))
}

pub fn lighting_circuits(given: &Given) -> Answer {
    let found = lighting(
        given.number("area_ft2")?,
        given.number_or("volts", 120.0)?,
        given.number("rating_a")?,
        edition(given)?,
    );
    answer(found.map_err(refused)?)
}

pub fn most_continuous(given: &Given) -> Answer {
    let watts = most_continuous_w(given.number("volts")?, given.number("rating_a")?);
    Ok(json!({"most_w": watts.map_err(refused)?}))
}
