//! Case files: what is asked, what is given, what must come out, and who says so. The format is in tests/README.md.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;
use serde_json::{Map, Value};

use crate::given::{Given, No};
use crate::questions::QUESTIONS;

/// How far a number may be off where the case does not say: rounding of the arithmetic, relative and absolute.
const ROUNDING: f64 = 1e-9;

/// A case file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    question: Option<String>,
    source: Option<String>,
    /// What every case is given, unless it gives its own.
    #[serde(default)]
    given: Map<String, Value>,
    #[serde(rename = "case", default)]
    cases: Vec<Case>,
}

/// A case.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    name: String,
    question: Option<String>,
    source: Option<String>,
    #[serde(default)]
    given: Map<String, Value>,
    expect: Option<Map<String, Value>>,
    refused: Option<String>,
    #[serde(default)]
    tolerance: Tolerance,
}

/// How far numbers may be off: one for all, or one for each name.
#[derive(Default, Deserialize)]
#[serde(untagged)]
enum Tolerance {
    #[default]
    Rounding,
    All(Off),
    Each(BTreeMap<String, Off>),
}

/// So far: in the number's own unit, or as a part of it (`"0.5%"`), which is never less than rounding.
#[derive(Clone, Deserialize)]
#[serde(untagged)]
enum Off {
    By(f64),
    Percent(String),
}

/// What became of the cases.
#[derive(Default)]
pub struct Tally {
    /// How many came out as expected.
    pub passed: usize,
    /// What did not: file, case and why.
    pub failures: Vec<String>,
    /// JSON files without cases: data that stands beside them.
    pub passed_over: usize,
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for failure in &self.failures {
            writeln!(f, "FAILED {failure}")?;
        }
        if self.passed_over > 0 {
            writeln!(
                f,
                "{} JSON files without a case list passed over",
                self.passed_over
            )?;
        }
        write!(f, "{} passed, {} failed", self.passed, self.failures.len())
    }
}

/// Runs every case in these folders whose file or name contains the filter.
pub fn run(folders: &[PathBuf], filter: &str) -> Tally {
    let mut tally = Tally::default();
    for folder in folders {
        let mut files = Vec::new();
        if let Err(e) = case_files(folder, &mut files) {
            tally.failures.push(format!("{}: {e}", folder.display()));
        } else if files.is_empty() {
            tally.failures.push(format!(
                "{}: no .toml or .json file in it",
                folder.display()
            ));
        }
        files.sort();
        for file in files {
            if let Err(e) = run_file(&file, filter, &mut tally) {
                tally.failures.push(format!("{}: {e}", file.display()));
            }
        }
    }
    tally
}

fn case_files(folder: &Path, found: &mut Vec<PathBuf>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            case_files(&path, found)?;
        } else if path.extension().is_some_and(|e| e == "toml" || e == "json") {
            found.push(path);
        }
    }
    Ok(())
}

fn run_file(path: &Path, filter: &str, tally: &mut Tally) -> Result<(), String> {
    let text = fs::read_to_string(path).map_err(|e| e.to_string())?;
    let file: File = if path.extension().is_some_and(|e| e == "json") {
        let json: Value = serde_json::from_str(&text).map_err(|e| e.to_string())?;
        if json.get("case").is_none() {
            tally.passed_over += 1;
            return Ok(());
        }
        serde_json::from_value(json).map_err(|e| e.to_string())?
    } else {
        toml::from_str(&text).map_err(|e| e.to_string())?
    };
    if file.cases.is_empty() {
        return Err("no [[case]] in it".into());
    }
    let mut names = BTreeSet::new();
    let mut unused: BTreeSet<&str> = file.given.keys().map(String::as_str).collect();
    for case in &file.cases {
        let shown = format!("{} {:?}", path.display(), case.name);
        if !names.insert(case.name.as_str()) {
            tally
                .failures
                .push(format!("{shown}: another case has this name"));
        } else if shown.contains(filter) {
            match run_case(case, &file, &mut unused) {
                Ok(()) => tally.passed += 1,
                Err(e) => tally.failures.push(format!("{shown}: {e}")),
            }
        }
    }
    // Cases that were left out may have used the rest.
    if filter.is_empty() && !unused.is_empty() {
        let unused: Vec<&str> = unused.into_iter().collect();
        return Err(format!("given, but used by no case: {}", unused.join(", ")));
    }
    Ok(())
}

/// Runs a case, and takes what it used of the file's `given` from `unshared`.
fn run_case(case: &Case, file: &File, unshared: &mut BTreeSet<&str>) -> Result<(), String> {
    let source = case.source.as_ref().or(file.source.as_ref());
    if source.is_none_or(|source| source.trim().is_empty()) {
        return Err("no source: who says so?".into());
    }
    let name = case
        .question
        .as_ref()
        .or(file.question.as_ref())
        .ok_or("no question")?;
    let Some((_, question)) = QUESTIONS.iter().find(|(known, _)| known == name) else {
        let known: Vec<&str> = QUESTIONS.iter().map(|(name, _)| *name).collect();
        return Err(format!(
            "no question is called {name:?}, only {}",
            known.join(", ")
        ));
    };
    let mut all = file.given.clone();
    all.extend(case.given.clone());
    let given = Given::new(&all);
    let answer = question(&given);
    if let Err(No::Case(e)) = answer {
        return Err(e);
    }
    // A refusal may come before everything given was read.
    let unused = given.unused();
    unshared.retain(|key| unused.iter().any(|unused| unused == key));
    let unused: Vec<String> = unused
        .into_iter()
        .filter(|key| case.given.contains_key(key))
        .collect();
    if answer.is_ok() && !unused.is_empty() {
        return Err(format!(
            "given, but not a part of the question {name:?}: {}",
            unused.join(", ")
        ));
    }
    match (answer, &case.expect, &case.refused) {
        (_, None, None) => Err("neither expect nor refused".into()),
        (_, Some(_), Some(_)) => Err("either expect or refused, not both".into()),
        (_, Some(expect), None) if expect.is_empty() => Err("expects nothing".into()),
        (Ok(answer), Some(expect), None) => {
            expected(&answer, &Value::Object(expect.clone()), &case.tolerance)
        }
        (Ok(answer), None, Some(refusal)) => {
            Err(format!("expected the refusal {refusal:?}, got {answer}"))
        }
        (Err(No::Refused(got)), None, Some(refusal)) if got == *refusal => Ok(()),
        (Err(No::Refused(got)), _, _) => Err(format!("was refused: {got:?}")),
        (Err(No::Case(e)), _, _) => Err(e),
    }
}

/// Compares what is expected with the answer, and finds tolerances that were meant for nothing.
fn expected(answer: &Value, expect: &Value, tolerance: &Tolerance) -> Result<(), String> {
    let mut wrong = Vec::new();
    let mut used = BTreeSet::new();
    compare("", answer, expect, tolerance, &mut used, &mut wrong);
    if let Tolerance::Each(each) = tolerance {
        let unused = each.keys().filter(|key| !used.contains(*key));
        wrong.extend(
            unused.map(|key| {
                format!("tolerance.{key} is for a number that the case does not expect")
            }),
        );
    }
    if wrong.is_empty() {
        Ok(())
    } else {
        Err(wrong.join("; "))
    }
}

fn compare(
    path: &str,
    got: &Value,
    want: &Value,
    tolerance: &Tolerance,
    used: &mut BTreeSet<String>,
    wrong: &mut Vec<String>,
) {
    match (got, want) {
        (Value::Object(got), Value::Object(want)) => {
            for (key, want) in want {
                let path = if path.is_empty() {
                    key.clone()
                } else {
                    format!("{path}.{key}")
                };
                match got.get(key) {
                    Some(got) => compare(&path, got, want, tolerance, used, wrong),
                    None => {
                        let keys: Vec<&str> = got.keys().map(String::as_str).collect();
                        wrong.push(format!(
                            "the answer has no {path}, only {}",
                            keys.join(", ")
                        ));
                    }
                }
            }
        }
        (Value::Array(got), Value::Array(want)) if got.len() == want.len() => {
            for (index, (got, want)) in got.iter().zip(want).enumerate() {
                compare(
                    &format!("{path}[{index}]"),
                    got,
                    want,
                    tolerance,
                    used,
                    wrong,
                );
            }
        }
        (Value::Number(got), Value::Number(want)) => {
            let (got, want) = (
                got.as_f64().unwrap_or(f64::NAN),
                want.as_f64().unwrap_or(f64::NAN),
            );
            match allowed(path, want, tolerance, used) {
                Ok(off) if (got - want).abs() <= off => {}
                Ok(off) => wrong.push(format!("{path}: expected {want} within {off}, got {got}")),
                Err(e) => wrong.push(e),
            }
        }
        _ if got == want => {}
        _ => wrong.push(format!("{path}: expected {want}, got {got}")),
    }
}

/// How far the number at this path may be off. A tolerance is named by its whole path, or by its last name.
fn allowed(
    path: &str,
    want: f64,
    tolerance: &Tolerance,
    used: &mut BTreeSet<String>,
) -> Result<f64, String> {
    let off = match tolerance {
        Tolerance::Rounding => None,
        Tolerance::All(off) => Some(off),
        Tolerance::Each(each) => {
            let last = path.rsplit('.').next().unwrap_or(path);
            let last = last.split('[').next().unwrap_or(last);
            let found = each
                .get_key_value(path)
                .or_else(|| each.get_key_value(last));
            found.map(|(key, off)| {
                used.insert(key.clone());
                off
            })
        }
    };
    match off {
        None => Ok(ROUNDING * want.abs().max(1.0)),
        Some(Off::By(by)) if *by >= 0.0 => Ok(*by),
        Some(Off::Percent(text)) => text
            .strip_suffix('%')
            .and_then(|number| number.trim().parse::<f64>().ok())
            .filter(|percent| *percent >= 0.0)
            .map(|percent| (want.abs() * percent / 100.0).max(ROUNDING))
            .ok_or(format!("tolerance {text:?} is no percentage")),
        Some(Off::By(by)) => Err(format!("tolerance {by} is less than nothing")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn failure(case: &str) -> String {
        let folder = tempdir(case);
        let tally = run(std::slice::from_ref(&folder), "");
        fs::remove_dir_all(&folder).expect("a folder of our own");
        tally.failures.join("\n")
    }

    fn tempdir(case: &str) -> PathBuf {
        use std::sync::atomic::{AtomicUsize, Ordering};
        static NEXT: AtomicUsize = AtomicUsize::new(0);
        let number = NEXT.fetch_add(1, Ordering::Relaxed);
        let folder =
            std::env::temp_dir().join(format!("roomwright-cases-{}-{number}", std::process::id()));
        fs::create_dir_all(&folder).expect("a folder of our own");
        fs::write(folder.join("a.toml"), case).expect("a file of our own");
        folder
    }

    const HEAD: &str = "question = 'length'\nsource = 'NIST SP 811'\n[[case]]\nname = 'foot'\n";

    #[test]
    fn a_right_case_passes_and_a_wrong_one_fails() {
        assert_eq!(
            failure(&format!(
                "{HEAD}given = {{typed = '1 ft'}}\nexpect = {{mm = 304.8}}"
            )),
            ""
        );
        let wrong = failure(&format!(
            "{HEAD}given = {{typed = '1 ft'}}\nexpect = {{mm = 304.7}}"
        ));
        assert!(
            wrong.contains("a.toml \"foot\": mm: expected 304.7 within"),
            "{wrong}"
        );
        assert_eq!(
            failure(&format!(
                "{HEAD}given = {{typed = '1 ft'}}\nexpect = {{mm = 304.7}}\ntolerance = 0.11"
            )),
            ""
        );
        assert_eq!(
            failure(&format!(
                "{HEAD}given = {{typed = '1 ft'}}\nexpect = {{mm = 304}}\ntolerance = {{mm = '0.3%'}}"
            )),
            ""
        );
    }

    #[test]
    fn what_a_file_gives_is_given_to_each_of_its_cases() {
        let file = "question = 'length'\nsource = 'NIST SP 811'\ngiven = {typed = '1', unit = 'ft'}\n\
            [[case]]\nname = 'foot'\nexpect = {mm = 304.8}\n\
            [[case]]\nname = 'inch'\ngiven = {unit = 'in'}\nexpect = {mm = 25.4}";
        assert_eq!(failure(file), "");
    }

    #[test]
    fn a_case_that_would_test_nothing_fails() {
        for (case, why) in [
            ("given = {typed = '1 ft'}", "neither expect nor refused"),
            ("given = {typed = '1 ft'}\nexpect = {}", "expects nothing"),
            (
                "given = {typed = '1 ft', typo = 1}\nexpect = {mm = 304.8}",
                "not a part of the question \"length\": typo",
            ),
            (
                "given = {typed = '1 ft'}\nexpect = {typo = 304.8}",
                "the answer has no typo, only",
            ),
            (
                "given = {typed = '1 ft'}\nexpect = {mm = 304.8}\ntolerance = {typo = 1}",
                "tolerance.typo",
            ),
            (
                "given = {typed = '1 ft'}\nexpect = {mm = 304.8}\ntypo = 1",
                "unknown field `typo`",
            ),
            (
                "given = {typed = '1 ft'}\nquestion = 'typo'\nexpect = {mm = 304.8}",
                "no question is called \"typo\"",
            ),
            (
                "given = {typed = '1 ft'}\nrefused = 'blank'",
                "expected the refusal \"blank\"",
            ),
            (
                "given = {typed = ''}\nexpect = {mm = 0}",
                "was refused: \"blank\"",
            ),
        ] {
            let failure = failure(&format!("{HEAD}{case}"));
            assert!(failure.contains(why), "{case}: {failure}");
        }
        let shared =
            "question = 'length'\nsource = 'NIST SP 811'\ngiven = {typed = '1 ft', typo = 1}\n";
        assert!(
            failure(&format!(
                "{shared}[[case]]\nname = 'foot'\nexpect = {{mm = 304.8}}"
            ))
            .contains("used by no case: typo")
        );
        assert!(failure("question = 'length'").contains("no [[case]]"));
        assert!(failure("[[case]]\nname = 'a'\nquestion = 'length'\ngiven = {typed = '1'}\nexpect = {in = 1}").contains("no source"));
        let nowhere = run(&[PathBuf::from("/nowhere/at/all")], "");
        assert_eq!(nowhere.failures.len(), 1);
    }
}
