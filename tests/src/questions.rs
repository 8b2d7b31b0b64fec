//! What a case may ask: the name of each question and how it is put to `calc`.
//!
//! To add one: a function in `questions/` that reads what it needs from [`Given`] and hands `calc`'s answer on, a line in [`QUESTIONS`],
//! and a line in the table of tests/README.md.

use calc::quantity::{
    AreaUnit, LengthUnit, SlopeUnit, VolumeUnit, parse_area, parse_length, parse_slope,
    parse_volume,
};
use serde_json::json;

use crate::given::{Answer, Given, No, refused};

mod air;
mod closing;
mod finish;
mod flatness;
mod floor;
mod job;
mod mixing;
mod pour;
mod steps;
mod supply;
mod wiring;

/// A question: reads a case's `given` and answers it.
pub type Question = fn(&Given) -> Answer;

/// Every question by name.
pub const QUESTIONS: &[(&str, Question)] = &[
    ("length", length),
    ("area", area),
    ("volume", volume),
    ("slope", slope),
    ("room", floor::room),
    ("walk", floor::walked),
    ("edge-strip", floor::edge_strip),
    ("floor-facts", floor::facts),
    ("floor-reached", floor::reached),
    ("suspects", floor::suspect_readings),
    ("straightedge", flatness::straightedge),
    ("worst-gap", flatness::worst),
    ("limits", flatness::limits),
    ("flatness", flatness::verdicts),
    ("f-numbers", flatness::f_number),
    ("pour-level", pour::level_pour),
    ("pour-flat", pour::flat_pour),
    ("pour-at", pour::at),
    ("pour-along", pour::along),
    ("pour-least-height", pour::least_height),
    ("lifts", pour::in_lifts),
    ("bags", mixing::bag_count),
    ("pace", mixing::mixing_pace),
    ("primer", mixing::primer),
    ("doorway", steps::doorway_steps),
    ("level-change", steps::level_change),
    ("incline", steps::any_two),
    ("ramp", steps::ramp_across),
    ("ramp-slope", steps::ramp_slope),
    ("tile-layout", finish::tile_layout),
    ("tile-rules", finish::tile_rules),
    ("mortar", finish::mortar),
    ("membrane", finish::membrane),
    ("grout", finish::grout),
    ("box-fill", wiring::box_fill),
    ("ampacity", wiring::ampacity),
    ("smallest-conductor", wiring::smallest_conductor),
    ("least-rating", wiring::rating),
    ("lighting-circuits", wiring::lighting_circuits),
    ("most-continuous", wiring::most_continuous),
    ("voltage-drop", wiring::voltage_drop),
    ("longest-run", wiring::longest_run),
    ("size-for-drop", wiring::size_for_drop),
    ("resistance", wiring::resistance),
    ("measured-drop", wiring::measured_drop),
    ("panel", wiring::panel),
    ("supply", wiring::supply),
    ("circuit", wiring::circuit),
    ("neutral", wiring::neutral),
    ("open-neutral", wiring::open_neutral),
    ("cable-run", wiring::cable_run),
    ("switch-cables", wiring::switch_cables),
    ("gfci-trip", wiring::gfci_trip),
    ("body-current", wiring::body_current),
    ("phantom-voltage", wiring::phantom_voltage),
    ("board", closing::layout),
    ("board-by-area", closing::by_area),
    ("board-screws", closing::screws),
    ("compound", closing::joint_treatment),
    ("paint", closing::cans),
    ("paint-spread", closing::spread),
    ("trim", closing::pieces),
    ("cutting-list", closing::cutting_list),
    ("exhaust-rate", air::required),
    ("duct-friction", air::loss),
    ("duct-length", air::allowed),
    ("fan-flow", air::left),
    ("exhaust", air::in_all),
    ("fan-load", air::amps),
    ("quote", supply::quoted),
    ("needs-by-sizes", supply::by_sizes),
    ("room-answers", job::room_answers),
    ("demo", job::demo_answers),
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
