//! Cable for a run, switches, and currents that nothing feeds.

use calc::job::questions::wiring::cable::{cable_run_of, switches_of};
use calc::job::sums::{CableSum, SwitchSum};
use calc::wiring::shock::{Floating, body_current_ma, gfci_longest_trip_s, phantom};

use super::*;

/// A run as the quick sum keeps it.
pub fn cable_run(given: &Given) -> Answer {
    let sum: CableSum = document(given, &["pieces", "allowance_percent", "roll"])?;
    answer(cable_run_of(&sum, edition(given)?).map_err(asked)?)
}

/// Switches as the quick sum keeps them.
pub fn switch_cables(given: &Given) -> Answer {
    let sum: SwitchSum = document(given, &["switches", "power", "light", "neutral"])?;
    answer(switches_of(&sum, edition(given)?).map_err(asked)?)
}

pub fn gfci_trip(given: &Given) -> Answer {
    let longest_s = gfci_longest_trip_s(given.number("fault_ma")?).map_err(refused)?;
    Ok(json!({"longest_s": longest_s}))
}

pub fn body_current(given: &Given) -> Answer {
    let current_ma = body_current_ma(given.number("volts")?, given.number("body_ohm")?);
    Ok(json!({"current_ma": current_ma.map_err(refused)?}))
}

pub fn phantom_voltage(given: &Given) -> Answer {
    let floating = Floating {
        source_v: given.number("source_v")?,
        frequency_hz: given.number("frequency_hz")?,
        to_hot_pf_per_ft: given.number("to_hot_pf_per_ft")?,
        to_ground_pf_per_ft: given.number("to_ground_pf_per_ft")?,
        length_ft: given.number("length_ft")?,
        meter_ohm: given.number("meter_ohm")?,
        meter_pf: given.number("meter_pf")?,
    };
    answer(phantom(floating).map_err(refused)?)
}
