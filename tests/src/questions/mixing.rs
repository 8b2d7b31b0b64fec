//! Bags, pace and primer.

use calc::floor::mixing::{BagAsk, PaceAsk, bags, pace, primer_gal};
use serde_json::json;

use crate::given::{Answer, Given, No, answer, refused};

pub fn bag_count(given: &Given) -> Answer {
    let ask = BagAsk {
        volume_ft3: given.number("volume_ft3")?,
        allowance_percent: given.number("allowance_percent")?,
        yield_ft3_per_bag: given.number("yield_ft3_per_bag")?,
        water_qt_per_bag: given.optional_number("water_qt_per_bag")?,
    };
    answer(bags(&ask).map_err(refused)?)
}

fn whole(given: &Given, key: &str) -> Result<u32, No> {
    let number = given.number(key)?;
    if number.fract() == 0.0 && (0.0..=1e6).contains(&number) {
        Ok(number as u32)
    } else {
        Err(No::Case(format!("given.{key} must be a whole number")))
    }
}

pub fn mixing_pace(given: &Given) -> Answer {
    let ask = PaceAsk {
        bags: whole(given, "bags")?,
        bags_per_batch: whole(given, "bags_per_batch")?,
        minutes_per_batch: given.number("minutes_per_batch")?,
        pot_life_minutes: given.number("pot_life_minutes")?,
    };
    answer(pace(&ask).map_err(refused)?)
}

pub fn primer(given: &Given) -> Answer {
    let (area_ft2, coverage_ft2) = (
        given.number("area_ft2")?,
        given.number("coverage_ft2_per_gal")?,
    );
    let gal = primer_gal(area_ft2, coverage_ft2).map_err(refused)?;
    Ok(json!({"primer_gal": gal}))
}
