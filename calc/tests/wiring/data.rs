//! Reads the data files: `#` lines are notes, the first other line names the columns.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use calc::wiring::conductor::Size;

/// One row, by column.
pub type Row = BTreeMap<String, String>;

/// The rows of a file in `calc/tests/data/electrical/`.
pub fn rows(file: &str) -> Vec<Row> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data/electrical")
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

/// `key=value; key=value` as a map.
pub fn pairs(text: &str) -> Row {
    text.split("; ")
        .map(|pair| {
            let (key, value) = pair.split_once('=').unwrap();
            (key.to_owned(), value.to_owned())
        })
        .collect()
}

/// A number, or nothing for an empty cell.
pub fn number(text: &str) -> Option<f64> {
    (!text.is_empty()).then(|| text.parse().unwrap())
}

/// A size.
pub fn size(text: &str) -> Size {
    Size::parse(text).unwrap()
}
