//! Exhaust: rate, duct, fan and load.

use calc::air::duct::{Duct, DuctKind, ELBOW_FT, code_length, friction};
use calc::air::fan::{Curve, RatingPoint, flow_left};
use calc::air::load::{LoadAsk, load};
use calc::air::rate::{ExhaustRoom, RateAsk, rate};
use calc::air::{ExhaustAsk, exhaust};
use serde_json::json;

use crate::given::{Answer, Given, No, answer, refused};

fn count(given: &Given, key: &str) -> Result<u32, No> {
    let number = given.number_or(key, 0.0)?;
    if number.fract() == 0.0 && (0.0..=1e6).contains(&number) {
        Ok(number as u32)
    } else {
        Err(No::Case(format!("given.{key} must be a whole number")))
    }
}

fn room(given: &Given) -> Result<RateAsk, No> {
    let room = match given.text_or("room", "bathroom")? {
        "bathroom" => ExhaustRoom::Bathroom,
        "kitchen" => ExhaustRoom::Kitchen,
        other => return Err(No::Case(format!("given.room: there is no {other:?}"))),
    };
    Ok(RateAsk {
        continuous: count(given, "continuous")? > 0,
        toilets: count(given, "toilets")?,
        showers: count(given, "showers")?,
        tubs: count(given, "tubs")?,
        jetted_tubs: count(given, "jetted_tubs")?,
        ..RateAsk::new(room, given.number("area_ft2")?)
    })
}

fn duct(given: &Given) -> Result<Duct, No> {
    Ok(Duct {
        diameter_in: given.length_in("diameter")?,
        length_ft: given.number("length_ft")?,
        kind: match given.text("duct")? {
            "smooth" => DuctKind::Smooth,
            "flexible" => DuctKind::Flexible,
            other => return Err(No::Case(format!("given.duct: there is no {other:?}"))),
        },
        elbows: count(given, "elbows")?,
        elbow_ft: given.number_or("elbow_ft", ELBOW_FT)?,
        cap_ft: given.number_or("cap_ft", 0.0)?,
    })
}

fn fan(given: &Given) -> Result<Curve, No> {
    let points = given.rows::<2>("ratings")?;
    Ok(Curve {
        points: points
            .into_iter()
            .map(|[static_inwg, cfm]| RatingPoint { static_inwg, cfm })
            .collect(),
        shutoff_inwg: given.optional_number("shutoff_inwg")?,
    })
}

pub fn required(given: &Given) -> Answer {
    answer(rate(&room(given)?).map_err(refused)?)
}

pub fn loss(given: &Given) -> Answer {
    answer(friction(&duct(given)?, given.number("cfm")?).map_err(refused)?)
}

pub fn allowed(given: &Given) -> Answer {
    let most = code_length(&duct(given)?, given.number("rated_cfm")?).map_err(refused)?;
    Ok(json!({"most": most}))
}

pub fn left(given: &Given) -> Answer {
    answer(flow_left(&fan(given)?, &duct(given)?).map_err(refused)?)
}

pub fn in_all(given: &Given) -> Answer {
    let ask = ExhaustAsk {
        rate: room(given)?,
        duct: duct(given)?,
        fan: fan(given)?,
    };
    answer(exhaust(&ask).map_err(refused)?)
}

pub fn amps(given: &Given) -> Answer {
    let ask = LoadAsk {
        volts: given.number("volts")?,
        fan_amps: given.optional_number("fan_amps")?,
        fan_watts: given.number_or("fan_watts", 0.0)?,
        light_watts: given.number_or("light_watts", 0.0)?,
        heater_watts: given.number_or("heater_watts", 0.0)?,
    };
    answer(load(&ask).map_err(refused)?)
}
