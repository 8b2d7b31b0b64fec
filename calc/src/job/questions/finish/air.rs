//! Air: the fan, its duct, and what it adds to its circuit.

use super::{FinishProblem, Reader, ground};
use crate::air::duct::Duct;
use crate::air::fan::{Curve, RatingPoint};
use crate::air::load::{Load, LoadAsk, load};
use crate::air::rate::{Rate, RateAsk, rate};
use crate::air::{AirRefusal, Exhaust, ExhaustAsk, exhaust};
use crate::job::questions::wiring::LEG_VOLTS;
use crate::job::{AirEntry, Room, fields};

/// What the room needs.
///
/// # Errors
/// A missing outline; entries that are missing or refused.
pub fn need(room: &Room) -> Result<Rate, FinishProblem<AirRefusal>> {
    rate(&rate_ask(room)?).map_err(FinishProblem::Refused)
}

fn rate_ask(room: &Room) -> Result<RateAsk, FinishProblem<AirRefusal>> {
    let (outline, _) = ground(room)?;
    let entry = &room.air;
    let mut reader = Reader::default();
    let mut count = |name, typed| reader.count_or(name, &fields::FIXTURES, typed, 0);
    let toilets = count("toilets", &entry.toilets);
    let showers = count("showers", &entry.showers);
    let tubs = count("tubs", &entry.tubs);
    let jetted_tubs = count("jetted_tubs", &entry.jetted_tubs);
    Ok(reader.finish(RateAsk {
        room: entry.room,
        area_ft2: outline.area_in2() / 144.0,
        continuous: entry.continuous,
        toilets,
        showers,
        tubs,
        jetted_tubs,
    })?)
}

/// The need, and what the fan moves through its duct.
///
/// # Errors
/// A missing outline; entries that are missing or refused; what can't be worked with.
pub fn exhaust_of(room: &Room) -> Result<Exhaust, FinishProblem<AirRefusal>> {
    let rate = rate_ask(room)?;
    let entry = &room.air;
    let mut reader = Reader::default();
    let mut points = vec![RatingPoint {
        static_inwg: reader.need("low_static", &fields::INWG, &entry.low_static),
        cfm: reader.need("low_flow", &fields::CFM, &entry.low_flow),
    }];
    if let Some(cfm) = reader.may("high_flow", &fields::CFM, &entry.high_flow) {
        points.push(RatingPoint {
            static_inwg: reader.need("high_static", &fields::INWG, &entry.high_static),
            cfm,
        });
    }
    let ask = ExhaustAsk {
        rate,
        duct: Duct {
            diameter_in: reader.need("diameter", &fields::DUCT, &entry.diameter),
            length_ft: reader.feet("length", &fields::RUN, &entry.length),
            kind: entry.duct,
            elbows: reader.count_or("elbows", &fields::FIXTURES, &entry.elbows, 0),
            elbow_ft: reader.feet("elbow", &fields::RUN, &entry.elbow),
            cap_ft: reader.feet("cap", &fields::RUN, &entry.cap),
        },
        fan: Curve {
            points,
            shutoff_inwg: reader.may("shutoff", &fields::INWG, &entry.shutoff),
        },
    };
    exhaust(&reader.finish(ask)?).map_err(FinishProblem::Refused)
}

/// What the fan adds to a circuit of 120 V.
///
/// # Errors
/// Entries that are missing or refused: something of the label must be there.
pub fn load_of(entry: &AirEntry) -> Result<Load, FinishProblem<AirRefusal>> {
    let mut reader = Reader::default();
    let fan_amps = reader.may("fan_amps", &fields::SOME_AMPS, &entry.fan_amps);
    let mut watts = |name, typed| reader.may(name, &fields::LOAD_WATTS, typed);
    let fan = watts("fan_watts", &entry.fan_watts);
    let light_watts = watts("light_watts", &entry.light_watts).unwrap_or(0.0);
    let heater_watts = watts("heater_watts", &entry.heater_watts).unwrap_or(0.0);
    if fan_amps.is_none() && fan.is_none() {
        reader.missing("fan_watts");
    }
    let ask = reader.finish(LoadAsk {
        volts: LEG_VOLTS,
        fan_amps,
        fan_watts: fan.unwrap_or(0.0),
        light_watts,
        heater_watts,
    })?;
    load(&ask).map_err(FinishProblem::Refused)
}
