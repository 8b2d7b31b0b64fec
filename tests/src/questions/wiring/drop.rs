//! Voltage drop, and the resistance behind it.

use calc::wiring::impedance::{Method, TABLE_C, Wire, impedance};
use calc::wiring::measured_drop::{GivenRun, MeasuredDrop, Readings, implied};
use calc::wiring::voltage_drop::{
    Across, Demand, DropLoad, Run, SingleLoad, Stretch, System, longest_run as longest,
    smallest_for_drop, voltage_drop as drop,
};

use super::*;

fn wire(given: &Given) -> Result<Wire, No> {
    let power_factor = given.optional_number("power_factor")?;
    let method = if flag(given, "printed_085")? == Some(true) {
        Method::Printed085 {
            conduit: word(given, "conduit")?,
        }
    } else if let Some(power_factor) = power_factor {
        Method::Impedance {
            conduit: word(given, "conduit")?,
            power_factor,
        }
    } else {
        Method::Resistance {
            construction: match given.get("construction") {
                Some(_) => Some(word(given, "construction")?),
                None => None,
            },
            coated: false,
        }
    };
    Ok(Wire {
        metal: word_or(given, "metal", "copper")?,
        method,
        conductor_c: given.number_or("conductor_c", TABLE_C)?,
    })
}

fn system(given: &Given) -> Result<System, No> {
    let volts = given.number("volts")?;
    match given.text_or("system", "two_wire")? {
        "two_wire" => Ok(System::TwoWire { volts }),
        "multiwire" => Ok(System::Multiwire { leg_volts: volts }),
        "three_phase" => Ok(System::ThreePhase { volts }),
        other => Err(No::Case(format!("given.system: there is no {other:?}"))),
    }
}

/// What is taken at the end of each stretch, by one key: so many numbers as there are lengths.
fn taken(
    given: &Given,
    key: &str,
    across: Across,
    demand: fn(f64) -> Demand,
    stretches: &mut [Stretch],
) -> Result<(), No> {
    if given.get(key).is_none() {
        return Ok(());
    }
    let numbers = given.numbers(key)?;
    if numbers.len() != stretches.len() {
        return Err(No::Case(format!(
            "given.{key} must hold a number for each length"
        )));
    }
    for (stretch, number) in stretches.iter_mut().zip(numbers) {
        if number != 0.0 {
            stretch.loads.push(DropLoad {
                demand: demand(number),
                across,
            });
        }
    }
    Ok(())
}

pub fn voltage_drop(given: &Given) -> Answer {
    let mut stretches: Vec<Stretch> = given
        .numbers("lengths_ft")?
        .into_iter()
        .map(|length_ft| Stretch {
            length_ft,
            loads: Vec::new(),
        })
        .collect();
    for (key, across, demand) in [
        ("amps", Across::A, Demand::Amps as fn(f64) -> Demand),
        ("amps_b", Across::B, Demand::Amps),
        ("amps_both", Across::Both, Demand::Amps),
        ("watts", Across::A, Demand::Watts),
        ("ohms", Across::A, Demand::Ohms),
    ] {
        taken(given, key, across, demand, &mut stretches)?;
    }
    let run = Run {
        edition: edition(given)?,
        system: system(given)?,
        source_volts: given.optional_number("source_volts")?,
        source_ohm: given.number_or("source_ohm", 0.0)?,
        size: size(given)?,
        wire: wire(given)?,
        parallel: whole(given, "parallel", 1)?,
        stretches,
        feeder_percent: given.number_or("feeder_percent", 0.0)?,
    };
    answer(drop(&run).map_err(refused)?)
}

fn single(given: &Given) -> Result<SingleLoad, No> {
    Ok(SingleLoad {
        edition: edition(given)?,
        system: system(given)?,
        current_a: given.number("current_a")?,
        current_b_a: given.number_or("current_b_a", 0.0)?,
        wire: wire(given)?,
        parallel: whole(given, "parallel", 1)?,
        limit_percent: given.number_or("limit_percent", 3.0)?,
    })
}

pub fn longest_run(given: &Given) -> Answer {
    answer(longest(size(given)?, &single(given)?).map_err(refused)?)
}

pub fn size_for_drop(given: &Given) -> Answer {
    let found = smallest_for_drop(given.number("length_ft")?, &single(given)?);
    answer(found.map_err(refused)?)
}

pub fn resistance(given: &Given) -> Answer {
    let wire = wire(given)?;
    answer(impedance(size(given)?, &wire, edition(given)?).map_err(refused)?)
}

pub fn measured_drop(given: &Given) -> Answer {
    let readings = |idle, loaded| -> Result<Readings, No> {
        Ok(Readings {
            idle_v: given.number(idle)?,
            loaded_v: given.number(loaded)?,
        })
    };
    let supply = match given.get("supply_idle_v") {
        Some(_) => Some(readings("supply_idle_v", "supply_loaded_v")?),
        None => None,
    };
    let run = match given.optional_number("length_ft")? {
        Some(length_ft) => Some(GivenRun {
            length_ft,
            size: size(given)?,
            wire: wire(given)?,
        }),
        None => None,
    };
    let measured = MeasuredDrop {
        edition: edition(given)?,
        supply,
        load: readings("load_idle_v", "load_loaded_v")?,
        current_a: given.number("current_a")?,
        meter_step_v: given.number_or("meter_step_v", 0.1)?,
        run,
    };
    answer(implied(&measured).map_err(refused)?)
}
