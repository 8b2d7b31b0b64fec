//! Reads the data files: `#` lines are notes, the first other line names the columns.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

/// One row, by column.
pub type Row = BTreeMap<String, String>;

/// The rows of a file in `calc/tests/data/`.
pub fn rows(file: &str) -> Vec<Row> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data")
        .join(file);
    let text = fs::read_to_string(&path).unwrap();
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let names = cells(lines.next().unwrap());
    let rows: Vec<Row> = lines
        .map(|line| {
            let cells = cells(line);
            assert_eq!(cells.len(), names.len(), "{file}: {line}");
            names.iter().cloned().zip(cells).collect()
        })
        .collect();
    assert!(!rows.is_empty(), "{file}");
    rows
}

fn cells(line: &str) -> Vec<String> {
    let (mut cells, mut cell, mut quoted) = (Vec::new(), String::new(), false);
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(std::mem::take(&mut cell)),
            _ => cell.push(c),
        }
    }
    cells.push(cell);
    cells
}

/// A number.
#[track_caller]
pub fn number(text: &str) -> f64 {
    text.trim().parse().unwrap()
}

/// The row whose first column, by name, begins with a text.
#[track_caller]
pub fn row<'a>(rows: &'a [Row], column: &str, begins: &str) -> &'a Row {
    let mut found = rows.iter().filter(|row| row[column].starts_with(begins));
    let first = found.next();
    assert!(found.next().is_none(), "{begins} stands twice");
    first.unwrap()
}

/// The expected answer of a worked example.
#[track_caller]
pub fn expected(id: &str) -> f64 {
    let rows = rows("finish/worked_examples.csv");
    number(&row(&rows, "id", id)["expected"])
}
