//! The wiring. Codes are those of the job document: `copper`, `nm_b`, `two_wire`.

use calc::job::CodeEdition;
use calc::job::questions::EntryProblem;
use calc::job::questions::wiring::AskProblem;
use calc::saved::Saved;
use calc::wiring::conductor::Size;
use serde_json::{Map, Value, json};
use std::fmt::Debug;

use crate::given::{Answer, Given, No, answer, refused};

mod boxes;
mod conductors;
mod drop;
mod panel;
mod runs;

pub use boxes::box_fill;
pub use conductors::{ampacity, lighting_circuits, most_continuous, rating, smallest_conductor};
pub use drop::{longest_run, measured_drop, resistance, size_for_drop, voltage_drop};
pub use panel::{circuit, neutral, open_neutral, panel, supply};
pub use runs::{body_current, cable_run, gfci_trip, phantom_voltage, switch_cables};

fn edition(given: &Given) -> Result<CodeEdition, No> {
    word_or(given, "edition", "2023")
}

/// A code of the job document under a key.
fn word<T: Saved>(given: &Given, key: &str) -> Result<T, No> {
    read(key, Value::from(given.text(key)?))
}

fn word_or<T: Saved>(given: &Given, key: &str, otherwise: &'static str) -> Result<T, No> {
    read(key, Value::from(given.text_or(key, otherwise)?))
}

/// A part of the job document.
fn read<T: Saved>(key: &str, value: Value) -> Result<T, No> {
    T::read(value).map_err(|e| No::Case(format!("given.{key} at {}: {}", e.at(), e.what)))
}

/// Keys that are given together as a part of the job document.
fn document<T: Saved>(given: &Given, keys: &[&str]) -> Result<T, No> {
    let fields: Map<String, Value> = keys
        .iter()
        .filter_map(|&key| given.get(key).map(|value| (key.to_owned(), value.clone())))
        .collect();
    read("", Value::Object(fields))
}

/// A size as the trade writes it.
fn size_of(text: &str) -> Result<Size, No> {
    Size::parse(text).map_err(refused)
}

fn size(given: &Given) -> Result<Size, No> {
    size_of(given.text("size")?)
}

fn flag(given: &Given, key: &str) -> Result<Option<bool>, No> {
    match given.get(key) {
        None => Ok(None),
        Some(Value::Bool(value)) => Ok(Some(*value)),
        Some(_) => Err(No::Case(format!("given.{key} must be true or false"))),
    }
}

fn whole(given: &Given, key: &str, otherwise: u32) -> Result<u32, No> {
    let number = given.number_or(key, f64::from(otherwise))?;
    if number.fract() == 0.0 && (0.0..=1e9).contains(&number) {
        Ok(number as u32)
    } else {
        Err(No::Case(format!("given.{key} must be a whole number")))
    }
}

/// A refusal of what was entered: `rating/blank`; one of the arithmetic by its own name.
fn asked<R: Debug>(problem: AskProblem<R>) -> No {
    match problem {
        AskProblem::Entries(problems) => match problems.first() {
            Some(problem) => entry(problem),
            None => No::Refused("nothing".into()),
        },
        AskProblem::Refused(what) => refused(what),
    }
}

fn entry(problem: &EntryProblem) -> No {
    match refused(&problem.refusal) {
        No::Refused(what) => No::Refused(format!("{}/{what}", problem.name)),
        No::Case(what) => No::Case(what),
    }
}
