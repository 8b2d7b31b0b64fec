//! A quote against needs, and what a room needs by its sizes.

use calc::job::questions::supply::quote::{kept, quote};
use calc::job::questions::supply::sizes::needs_by_sizes;
use calc::job::{QuoteEntry, Typed};
use calc::quantity::fixed;
use calc::saved::{self, Coded, Value};
use calc::supply::need::{Kind, Need};
use calc::supply::quote::read;
use calc::supply::unit::{Dimension, Unit};
use serde_json::{Map, json};

use crate::given::{Answer, Given, No, answer, refused};

const DIMENSIONS: [(&str, Dimension); 6] = [
    ("ft", Dimension::Length),
    ("ft2", Dimension::Area),
    ("ft3", Dimension::Volume),
    ("gal", Dimension::Liquid),
    ("lb", Dimension::Weight),
    ("pieces", Dimension::Count),
];

fn coded<T: Coded>(code: &str) -> Result<T, No> {
    let found = T::CODED.iter().find(|(_, known)| *known == code);
    found
        .map(|(value, _)| *value)
        .ok_or_else(|| No::Case(format!("there is no {code:?}")))
}

/// A need: `kind`, its amount under the unit it is in, and packs by their unit.
fn need(row: &Map<String, Value>) -> Result<Need, No> {
    let wrong = |what: &str| No::Case(format!("a need must have {what}"));
    let kind = row.get("kind").and_then(Value::as_str);
    let kind: Kind = coded(kind.ok_or_else(|| wrong("a kind"))?)?;
    let (exact, dimension) = DIMENSIONS
        .iter()
        .find_map(|(key, dimension)| Some((row.get(*key)?.as_f64()?, *dimension)))
        .ok_or_else(|| wrong("an amount (ft, ft2, ft3, gal, lb, pieces)"))?;
    let mut need = Need::new(kind, dimension, exact);
    if let Some(percent) = row.get("allowance_percent").and_then(Value::as_f64) {
        need = need.with_allowance(percent);
    }
    let packs = row.get("packs").and_then(Value::as_object);
    for (code, holds) in packs.into_iter().flatten() {
        let unit: Unit = coded(code)?;
        need = need.sold_by(
            unit,
            holds.as_f64().ok_or_else(|| wrong("packs that hold"))?,
        );
    }
    Ok(need)
}

fn needs(given: &Given) -> Result<Vec<Need>, No> {
    let rows = given.get("needs").and_then(Value::as_array);
    let rows = rows.ok_or_else(|| No::Case("given.needs must be a list".into()))?;
    let row = |row: &Value| match row.as_object() {
        Some(row) => need(row),
        None => Err(No::Case("each of given.needs must be a table".into())),
    };
    rows.iter().map(row).collect()
}

/// The lines with their verdicts, what is missing by kind, and what was read.
pub fn quoted(given: &Given) -> Answer {
    let pasted = read(given.text("quote")?);
    let entry = QuoteEntry {
        lines: kept(&pasted, 1),
        ..QuoteEntry::default()
    };
    let found = quote(&entry, &needs(given)?);
    let named = |place: usize| found.needs.get(place).map(|need| need.kind.word());
    let mut verdicts = Map::new();
    let mut is_for = Map::new();
    for (line, answered) in entry.lines.iter().zip(&found.lines) {
        let verdict = json!(answered.checked.verdict);
        verdicts.insert(line.words.clone(), verdict);
        is_for.insert(
            line.words.clone(),
            json!(answered.need.and_then(named).unwrap_or("nothing")),
        );
    }
    let missing: Vec<Option<&str>> = found.missing.iter().map(|&at| named(at)).collect();
    answer(json!({
        "layout": pasted.layout,
        "lines": found.lines.len(),
        "passed_over": pasted.passed_over,
        "verdicts": verdicts,
        "is_for": is_for,
        "missing": missing,
        "total": found.total,
        "material_percent": found.material_share.map(|share| share * 100.0),
        "answers": found.lines,
    }))
}

/// The needs of a room by its sizes, by kind: the exact amount.
pub fn by_sizes(given: &Given) -> Answer {
    let mut sum = calc::job::sums::QuoteSum::default();
    for (key, field) in [
        ("width", &mut sum.width),
        ("length", &mut sum.length),
        ("height", &mut sum.height),
        ("doorways", &mut sum.doorways),
        ("depth", &mut sum.depth),
    ] {
        if let Some(inches) = given.optional_length_in(key)? {
            *field = Typed::new(fixed(inches, 9), "in");
        }
    }
    if let Some(ft2) = given.optional_number("openings_ft2")? {
        sum.openings = Typed::new(fixed(ft2, 9), "ft2");
    }
    let work = given.get("work").cloned().unwrap_or_default();
    sum.work = saved::Saved::read(work).map_err(|e| No::Case(format!("given.work: {}", e.what)))?;
    let needs = needs_by_sizes(&sum).map_err(refused)?;
    let exact: Map<String, Value> = needs
        .iter()
        .map(|need| (need.kind.word().to_owned(), json!(need.exact)))
        .collect();
    answer(json!({"exact": exact, "needs": needs}))
}
