//! Reads the data files: `#` lines are notes, the first other line names the columns. And questions to start from.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;

use calc::finish::tile::{Buying, Pattern, Start, TileAsk};
use calc::floor::{Outline, Point};

/// One row, by column.
pub type Row = BTreeMap<String, String>;

/// The rows of a file in `calc/tests/data/finish/`.
pub fn rows(file: &str) -> Vec<Row> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data/finish")
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

/// A number, also as a fraction: `89/8`.
pub fn number(text: &str) -> f64 {
    match text.split_once('/') {
        Some((over, under)) => number(over) / number(under),
        None => text.parse().unwrap(),
    }
}

/// An outline from rows of x and y.
pub fn outline(corners: &[[f64; 2]]) -> Outline {
    Outline::new(corners.iter().map(|[x, y]| Point::new(*x, *y)).collect()).unwrap()
}

/// The usual way to buy, so that a test names only what it is about.
pub const BUYING: Buying = Buying {
    kerf_in: 0.125,
    may_turn: true,
    allowance_percent: 10.0,
    per_box: 10,
};

/// Tile in a rectangle, straight from a corner.
pub fn plain(room_in: [f64; 2], tile_in: [f64; 2], joint_in: f64) -> TileAsk {
    let [width, length] = room_in;
    TileAsk {
        outline: outline(&[[0.0, 0.0], [width, 0.0], [width, length], [0.0, length]]),
        obstacles: Vec::new(),
        openings: Vec::new(),
        width_in: tile_in[0],
        height_in: tile_in[1],
        joint_in,
        edge_gap_in: 0.0,
        pattern: Pattern::Straight,
        start: Start::Corner,
        least_share: 0.5,
        buying: BUYING,
    }
}
