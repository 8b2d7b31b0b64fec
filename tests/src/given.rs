//! What a case gives to its question, read as a user would type it or as numbers with their unit in the name.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::fmt::Debug;

use calc::quantity::{LengthUnit, SlopeUnit, parse_length, parse_slope};
use serde::Serialize;
use serde_json::{Map, Value};

/// Why a question has no answer.
#[derive(Debug, PartialEq)]
pub enum No {
    /// The arithmetic refuses what it was given: the refusal's name, `too-long`; a case may expect that.
    Refused(String),
    /// The case itself is wrong: something missing, or of the wrong kind.
    Case(String),
}

/// What a question answers: an object whose fields a case may expect.
pub type Answer = Result<Value, No>;

/// An answer of `calc` as an object.
pub fn answer(of: impl Serialize) -> Answer {
    serde_json::to_value(of).map_err(|e| No::Case(e.to_string()))
}

/// A refusal of `calc` by its variant's name: `Length(TwoUnits { .. })` is `length/two-units`. Of several, the first.
pub fn refused(refusal: impl Debug) -> No {
    let shown = format!("{refusal:?}");
    let names = shown
        .trim_start_matches('[')
        .split([' ', '{', ',', ')', ']'])
        .next()
        .unwrap_or_default();
    let names: Vec<String> = names
        .split('(')
        .filter(|name| name.starts_with(char::is_alphabetic))
        .map(kebab)
        .collect();
    No::Refused(names.join("/"))
}

fn kebab(name: &str) -> String {
    let mut kebab = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !kebab.is_empty() {
            kebab.push('-');
        }
        kebab.extend(letter.to_lowercase());
    }
    kebab
}

/// The `given` table of a case. It remembers what was asked for, so that a misspelt key is found.
pub struct Given<'a> {
    values: &'a Map<String, Value>,
    asked: RefCell<BTreeSet<String>>,
}

impl<'a> Given<'a> {
    /// Over the table of a case.
    pub fn new(values: &'a Map<String, Value>) -> Self {
        Self {
            values,
            asked: RefCell::default(),
        }
    }

    /// The keys that no question asked for.
    pub fn unused(&self) -> Vec<String> {
        let asked = self.asked.borrow();
        self.values
            .keys()
            .filter(|key| !asked.contains(*key))
            .cloned()
            .collect()
    }

    /// The value under a key, if it is there.
    pub fn get(&self, key: &str) -> Option<&'a Value> {
        self.asked.borrow_mut().insert(key.to_owned());
        self.values.get(key)
    }

    /// The text under a key.
    pub fn text(&self, key: &str) -> Result<&'a str, No> {
        self.get(key)
            .and_then(Value::as_str)
            .ok_or_else(|| No::Case(format!("given.{key} must be a text")))
    }

    /// The text under a key, or another where the key is missing.
    pub fn text_or(&self, key: &str, otherwise: &'static str) -> Result<&'a str, No> {
        if self.get(key).is_some() {
            self.text(key)
        } else {
            Ok(otherwise)
        }
    }

    /// The number under a key.
    pub fn number(&self, key: &str) -> Result<f64, No> {
        self.get(key)
            .and_then(Value::as_f64)
            .ok_or_else(|| No::Case(format!("given.{key} must be a number")))
    }

    /// The number under a key, or another where the key is missing.
    pub fn number_or(&self, key: &str, otherwise: f64) -> Result<f64, No> {
        if self.get(key).is_some() {
            self.number(key)
        } else {
            Ok(otherwise)
        }
    }

    /// The number under a key; none where the key is missing.
    pub fn optional_number(&self, key: &str) -> Result<Option<f64>, No> {
        match self.get(key) {
            None => Ok(None),
            Some(_) => self.number(key).map(Some),
        }
    }

    /// The list of numbers under a key.
    pub fn numbers(&self, key: &str) -> Result<Vec<f64>, No> {
        let wrong = || No::Case(format!("given.{key} must be a list of numbers"));
        numbers_of(key, self.get(key).ok_or_else(wrong)?)
    }

    /// A length, inches: `name` as typed (a bare number is inches), or a number under `name_in`, `name_ft`, `name_mm`, `name_cm`
    /// or `name_m`.
    pub fn length_in(&self, name: &str) -> Result<f64, No> {
        self.optional_length_in(name)?.ok_or_else(|| {
            No::Case(format!(
                "given.{name}_in (or _ft, _mm, _cm, _m, or {name} as typed) is missing"
            ))
        })
    }

    /// A length as [`Given::length_in`] reads it, where there is one.
    pub fn optional_length_in(&self, name: &str) -> Result<Option<f64>, No> {
        if self.get(name).is_some() {
            return typed_in(self.text(name)?).map(Some);
        }
        for unit in LengthUnit::ALL {
            let key = format!("{name}_{}", unit.code());
            if self.get(&key).is_some() {
                let number = self.number(&key)?;
                return Ok(Some(number * inches_per(unit)));
            }
        }
        Ok(None)
    }

    /// A list of lengths, inches: numbers under `name_in`, or texts as typed under `name`.
    pub fn lengths_in(&self, name: &str) -> Result<Vec<f64>, No> {
        let key = format!("{name}_in");
        if let Some(numbers) = self.get(&key) {
            return numbers_of(&key, numbers);
        }
        let texts = self.get(name).and_then(Value::as_array);
        let texts = texts
            .ok_or_else(|| No::Case(format!("given.{key} (or {name} as typed) must be a list")))?;
        let wrong = || No::Case(format!("given.{name} must be a list of texts"));
        texts
            .iter()
            .map(|text| typed_in(text.as_str().ok_or_else(wrong)?))
            .collect()
    }

    /// Rows of so many numbers: `[[0, 0, 0.25], [48, 0, 0.5]]`.
    pub fn rows<const N: usize>(&self, key: &str) -> Result<Vec<[f64; N]>, No> {
        let wrong = || No::Case(format!("given.{key} must be a list of rows of {N} numbers"));
        let rows = self.get(key).and_then(Value::as_array).ok_or_else(wrong)?;
        rows.iter()
            .map(|row| numbers_of(key, row)?.try_into().map_err(|_| wrong()))
            .collect()
    }

    /// A slope, rise over run: `name` as typed (`1:12`, `2%`, `1/4 in per ft`), or a number under `name_ratio`.
    pub fn slope(&self, name: &str) -> Result<f64, No> {
        if self.get(name).is_some() {
            let slope = parse_slope(self.text(name)?, SlopeUnit::default()).map_err(refused)?;
            return Ok(slope.ratio());
        }
        self.number(&format!("{name}_ratio"))
    }
}

fn typed_in(text: &str) -> Result<f64, No> {
    Ok(parse_length(text, LengthUnit::Inches)
        .map_err(refused)?
        .inches())
}

/// Inches in each unit: the foot is 12 in and the inch 25.4 mm, exactly (NIST SP 811, appendix B).
fn inches_per(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inches => 1.0,
        LengthUnit::Feet => 12.0,
        LengthUnit::Millimeters => 1.0 / 25.4,
        LengthUnit::Centimeters => 10.0 / 25.4,
        LengthUnit::Meters => 1000.0 / 25.4,
    }
}

fn numbers_of(key: &str, list: &Value) -> Result<Vec<f64>, No> {
    let wrong = || No::Case(format!("given.{key} must hold numbers"));
    list.as_array()
        .ok_or_else(wrong)?
        .iter()
        .map(|number| number.as_f64().ok_or_else(wrong))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Debug)]
    #[allow(dead_code)]
    enum Outer {
        TooLong { given_in: f64 },
        Inner(Inner),
        Plain,
    }

    #[derive(Debug)]
    #[allow(dead_code)]
    enum Inner {
        TwoUnits { first: u8 },
    }

    #[test]
    fn names_a_refusal_by_its_variants() {
        let name = |refusal: &dyn Debug| refused(refusal);
        assert_eq!(
            name(&Outer::TooLong { given_in: 1.0 }),
            No::Refused("too-long".into())
        );
        assert_eq!(
            name(&Outer::Inner(Inner::TwoUnits { first: 1 })),
            No::Refused("inner/two-units".into())
        );
        assert_eq!(
            name(&vec![Outer::Plain, Outer::Plain]),
            No::Refused("plain".into())
        );
    }
}
