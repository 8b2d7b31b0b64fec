//! The worked examples, each with its answer, tolerance and source beside it in the data.

use crate::data::{Row, pairs, rows};

/// One worked example.
pub struct Example {
    /// Its name.
    pub id: String,
    /// What goes in.
    pub inputs: Row,
    expected: Row,
    tolerance: String,
}

/// The topics that some test here works through; a topic without one fails.
const TOPICS: [&str; 13] = [
    "ampacity",
    "body_current",
    "box_fill",
    "branch_load",
    "gfci_max_trip_time",
    "max_length",
    "min_size_for_drop",
    "open_neutral",
    "phantom_voltage",
    "temp_resistance",
    "voltage_drop",
    "voltage_drop_multiwire",
    "voltage_drop_total",
];

/// The examples of a topic.
pub fn examples(topic: &str) -> Vec<Example> {
    assert!(TOPICS.contains(&topic), "{topic}");
    let found: Vec<_> = rows("worked_examples.csv")
        .into_iter()
        .filter(|row| row["topic"] == topic)
        .map(|row| Example {
            inputs: pairs(&row["inputs"]),
            expected: pairs(&row["expected"]),
            tolerance: row["tolerance"].clone(),
            id: row["id"].clone(),
        })
        .collect();
    assert!(!found.is_empty(), "{topic}");
    found
}

impl Example {
    /// The text of an input.
    pub fn text(&self, key: &str) -> &str {
        self.inputs.get(key).map_or("", String::as_str)
    }

    /// The number of an input.
    #[track_caller]
    pub fn number(&self, key: &str) -> f64 {
        self.text(key).parse().unwrap()
    }

    /// Checks every expected value, of which `answer` knows those it was asked for.
    #[track_caller]
    pub fn check(&self, answer: impl Fn(&str) -> Answer) {
        for (key, expected) in &self.expected {
            match answer(key) {
                Answer::Text(text) => assert_eq!(&text, expected, "{} {key}", self.id),
                Answer::Number(value) => {
                    let expected_value: f64 = expected.parse().unwrap();
                    let within = self.within(key, expected);
                    assert!(
                        (value - expected_value).abs() <= within,
                        "{} {key}: {value} is not {expected} within {within}",
                        self.id
                    );
                }
            }
        }
    }

    /// The tolerance of a value: its own, that of its kind, or half of the last digit that is printed.
    fn within(&self, key: &str, expected: &str) -> f64 {
        let printed = expected.split_once('.').map_or(0, |(_, after)| after.len());
        let mut within = 0.5 * 10f64.powi(-i32::try_from(printed).unwrap()) + 1e-9;
        for clause in self.tolerance.split("; ") {
            let words: Vec<&str> = clause.split_whitespace().collect();
            let (subject, rule) = match words.as_slice() {
                ["abs" | "rel", ..] => ("", &words[..]),
                [subject, rule @ ..] => (*subject, rule),
                [] => continue,
            };
            let of_kind = match subject {
                "" => true,
                "rest" => !self
                    .tolerance
                    .split("; ")
                    .any(|clause| clause.starts_with(key)),
                "currents" => key.ends_with("_A") || key.ends_with("_W") || key.ends_with("_VA"),
                "pct" => key.ends_with("_pct"),
                subject => subject == key,
            };
            if !of_kind {
                continue;
            }
            within = match *rule {
                ["abs", value, ..] => value.parse::<f64>().unwrap() + 1e-9,
                ["rel", percent, "%"] => {
                    percent.parse::<f64>().unwrap() / 100.0 * expected.parse::<f64>().unwrap().abs()
                }
                ["exact"]
                    if subject == "rest"
                        && self.tolerance.starts_with("currents")
                        && key.ends_with("_A") =>
                {
                    within
                }
                ["exact"] => 1e-9,
                _ => panic!("{}: {clause}", self.id),
            };
        }
        within
    }
}

/// What was answered.
pub enum Answer {
    /// A number.
    Number(f64),
    /// A word.
    Text(String),
}

impl From<f64> for Answer {
    fn from(value: f64) -> Self {
        Self::Number(value)
    }
}

impl From<bool> for Answer {
    fn from(value: bool) -> Self {
        Self::Text(if value { "yes" } else { "no" }.to_owned())
    }
}

impl From<&str> for Answer {
    fn from(value: &str) -> Self {
        Self::Text(value.to_owned())
    }
}

#[test]
fn every_topic_is_worked_through() {
    for row in rows("worked_examples.csv") {
        assert!(TOPICS.contains(&row["topic"].as_str()), "{}", row["topic"]);
    }
}
