//! Spots from pasted or imported text: x, y and reading, one spot a line.
//!
//! A small reader of our own, where a CSV crate would not do: a spreadsheet's tabs, a notebook's columns and inch
//! marks that aren't quotes all come by the same way, and a crate weighs more than what it would replace.

use crate::quantity::lower;
use serde::Serialize;
use thiserror::Error;

use crate::quantity::{LengthRefusal, LengthUnit, length::parse_length};

mod cells;

use cells::{is_heading, lines, part};

/// The most spots that one text may hold.
pub const MOST_ROWS: usize = 10_000;

/// A cell that is longer is cut at this many characters where a refusal shows it.
pub const MOST_SHOWN: usize = 40;

/// Spots as they were pasted.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PastedSpots {
    /// The spots, in the text's order.
    pub rows: Vec<PastedRow>,
    /// The first line, where it was taken for headings, in the order x, y, reading.
    pub headings: Option<[String; 3]>,
    /// The unit that a heading names for its bare numbers, in the order x, y, reading.
    pub units: [Option<LengthUnit>; 3],
}

/// One spot as it was pasted: texts that each parse as a length.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PastedRow {
    /// The line it stands on, from 1.
    pub line: usize,
    /// Position to the right.
    pub x: String,
    /// Position away.
    pub y: String,
    /// The reading.
    pub reading: String,
}

/// What is wrong, and on which line.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("line {line}: {what}")]
pub struct PasteRefusal {
    /// The line, from 1.
    pub line: usize,
    /// What is wrong there.
    pub what: PasteProblem,
}

/// Reads spots from text. A bare number counts in `bare`, unless its column's heading names a unit.
///
/// - Blank lines and lines that begin with `#` are passed over; a byte order mark and any line ends will do.
/// - A line is parted at its tabs; failing those at its semicolons, its commas, its runs of two or more blanks. A
///   single blank parts only three bare numbers, since `2' 3 1/2"` is one length.
/// - A cell that begins with a quote mark is quoted as in RFC 4180, section 2, within its line; a quote mark further
///   on is an inch mark. Empty cells at a line's end are passed over.
/// - The first line is headings if each of its cells begins with a letter. Headings that begin with x and y put the
///   columns in order; a unit named in them (`x (mm)`, `reading_in`) is told in [`PastedSpots::units`].
///
/// # Errors
/// Every line that is wrong, in order; [`PasteProblem::Empty`] where there are no spots; only
/// [`PasteProblem::TooManyRows`] past [`MOST_ROWS`].
///
/// # Example
/// ```
/// use calc::{floor::paste::read, quantity::LengthUnit};
/// let spots = read("x, y, down\n0, 0, 3 1/8\n2' 3 1/2\", 0, 3.25\n", LengthUnit::Inches).unwrap();
/// assert_eq!(spots.rows.len(), 2);
/// assert_eq!(spots.rows[1].x, "2' 3 1/2\"");
/// ```
pub fn read(text: &str, bare: LengthUnit) -> Result<PastedSpots, Vec<PasteRefusal>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut spots = PastedSpots {
        rows: Vec::new(),
        headings: None,
        units: [None; 3],
    };
    let mut order = [0, 1, 2];
    let mut refusals = Vec::new();
    let mut seen = 0;
    for (line, content) in lines(text) {
        seen += 1;
        if seen > MOST_ROWS + usize::from(spots.headings.is_some()) {
            return Err(vec![PasteRefusal {
                line,
                what: PasteProblem::TooManyRows { most: MOST_ROWS },
            }]);
        }
        let cells = match part(content) {
            Ok(cells) => cells,
            Err(what) => {
                refusals.push(PasteRefusal { line, what });
                continue;
            }
        };
        if seen == 1 && is_headings(&cells) {
            match headings(cells) {
                Ok((texts, columns)) => {
                    spots.units = texts.each_ref().map(|text| unit_named(text));
                    spots.headings = Some(texts);
                    order = columns;
                }
                Err(what) => refusals.push(PasteRefusal { line, what }),
            }
            continue;
        }
        match row(
            line,
            cells,
            order,
            spots.units.map(|unit| unit.unwrap_or(bare)),
        ) {
            Ok(row) => spots.rows.push(row),
            Err(problems) => {
                refusals.extend(problems.into_iter().map(|what| PasteRefusal { line, what }))
            }
        }
    }
    if spots.rows.is_empty() && refusals.is_empty() {
        refusals.push(PasteRefusal {
            line: 1,
            what: PasteProblem::Empty,
        });
    }
    if refusals.is_empty() {
        Ok(spots)
    } else {
        Err(refusals)
    }
}

/// What can be wrong with pasted text.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PasteProblem {
    /// There is no spot in it.
    #[error("no spots")]
    Empty,
    /// More lines than [`MOST_ROWS`].
    #[error("more than {most} spots")]
    TooManyRows {
        /// The most.
        most: usize,
    },
    /// Not three columns.
    #[error("{found} columns, not 3")]
    Columns {
        /// How many there are.
        found: usize,
    },
    /// A cell that still holds what parts other lines: blanks beside commas, say.
    #[error("parted in two ways: {text}")]
    PartedTwice {
        /// The cell.
        text: String,
    },
    /// A quoted cell without its closing mark, or with more behind it.
    #[error("a quote is left open")]
    Quote,
    /// Headings that name x or y where it doesn't belong, without the other.
    #[error("headings in no known order")]
    Headings,
    /// Nothing in a cell.
    #[error("{column:?} is blank")]
    Blank {
        /// Which.
        column: Column,
    },
    /// A cell that is no length.
    #[error("{column:?}: {text}: {why}")]
    Length {
        /// Which.
        column: Column,
        /// What it says.
        text: String,
        /// Why it is no length.
        why: LengthRefusal,
    },
}

/// A column of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Column {
    /// Position to the right.
    X,
    /// Position away.
    Y,
    /// The reading.
    Reading,
}

fn is_headings(cells: &[String]) -> bool {
    !cells.is_empty() && cells.iter().all(|cell| is_heading(cell))
}

/// The headings in the order x, y, reading, and the columns where those are.
fn headings(cells: Vec<String>) -> Result<([String; 3], [usize; 3]), PasteProblem> {
    let cells: [String; 3] = cells
        .try_into()
        .map_err(|cells: Vec<String>| PasteProblem::Columns { found: cells.len() })?;
    let begins = |with: char| cells.iter().position(|cell| lower(cell).starts_with(with));
    let columns = match (begins('x'), begins('y')) {
        (Some(x), Some(y)) => [x, y, 3 - x - y],
        (None, None) | (Some(0), None) | (None, Some(1)) => [0, 1, 2],
        _ => return Err(PasteProblem::Headings),
    };
    let texts = columns.map(|column| cells.get(column).cloned().unwrap_or_default());
    Ok((texts, columns))
}

/// The unit that a heading names as a word of its own.
fn unit_named(heading: &str) -> Option<LengthUnit> {
    let heading = lower(heading);
    heading
        .split(|c: char| !c.is_alphanumeric())
        .find_map(|word| match word {
            "in" | "inch" | "inches" => Some(LengthUnit::Inches),
            "ft" | "foot" | "feet" => Some(LengthUnit::Feet),
            "mm" => Some(LengthUnit::Millimeters),
            "cm" => Some(LengthUnit::Centimeters),
            "m" => Some(LengthUnit::Meters),
            _ => None,
        })
}

fn row(
    line: usize,
    cells: Vec<String>,
    order: [usize; 3],
    bare: [LengthUnit; 3],
) -> Result<PastedRow, Vec<PasteProblem>> {
    let cells: [String; 3] = cells
        .try_into()
        .map_err(|cells: Vec<String>| vec![PasteProblem::Columns { found: cells.len() }])?;
    let [x, y, reading] = order.map(|column| cells.get(column).cloned().unwrap_or_default());
    let checked = [
        (Column::X, &x, bare[0]),
        (Column::Y, &y, bare[1]),
        (Column::Reading, &reading, bare[2]),
    ];
    let problems: Vec<PasteProblem> = checked
        .into_iter()
        .filter_map(|(column, text, bare)| problem(column, text, bare))
        .collect();
    if problems.is_empty() {
        Ok(PastedRow {
            line,
            x,
            y,
            reading,
        })
    } else {
        Err(problems)
    }
}

fn problem(column: Column, text: &str, bare: LengthUnit) -> Option<PasteProblem> {
    if text.is_empty() {
        return Some(PasteProblem::Blank { column });
    }
    let why = parse_length(text, bare).err()?;
    Some(PasteProblem::Length {
        column,
        text: shown(text),
        why,
    })
}

fn shown(text: &str) -> String {
    text.chars().take(MOST_SHOWN).collect()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[track_caller]
    fn check(text: &str, rows: &[[&str; 3]]) -> PastedSpots {
        let spots = read(text, LengthUnit::Inches).unwrap();
        let got: Vec<[&str; 3]> = spots
            .rows
            .iter()
            .map(|row| [&*row.x, &*row.y, &*row.reading])
            .collect();
        assert_eq!(got, rows);
        spots
    }

    #[track_caller]
    fn refused(text: &str, problems: &[(usize, PasteProblem)]) {
        let refusals = read(text, LengthUnit::Inches).unwrap_err();
        let got: Vec<(usize, PasteProblem)> =
            refusals.into_iter().map(|r| (r.line, r.what)).collect();
        assert_eq!(got, problems);
    }

    #[test]
    fn every_way_to_part_a_line() {
        let want = [["0", "24", "3.25"]];
        for text in [
            "0,24,3.25",
            "0; 24 ;3.25",
            "0\t24\t3.25",
            "0   24  3.25",
            "0 24 3.25",
            "\"0\",24,\"3.25\"",
            " 0,24,3.25,,\r\n",
        ] {
            assert_eq!(check(text, &want).headings, None);
        }
        check(
            "2' 3 1/2\"  8'  3 1/8\"",
            &[["2' 3 1/2\"", "8'", "3 1/8\""]],
        );
        check(
            "2' 3 1/2\", 8', 3 1/8\"",
            &[["2' 3 1/2\"", "8'", "3 1/8\""]],
        );
        // RFC 4180, section 2, rule 7: a quote mark inside a quoted cell is doubled.
        check(
            "\"2' 3 1/2\"\"\",\"8'\",\"3 1/8\"\"\"",
            &[["2' 3 1/2\"", "8'", "3 1/8\""]],
        );
        check("2\",4\",\"3\"\"\"", &[["2\"", "4\"", "3\""]]);
        // A decimal comma, as half the world's spreadsheets write it.
        check("1,5;2,5;0,3\n1,5\t2,5\t0,3", &[["1,5", "2,5", "0,3"]; 2]);
    }

    #[test]
    fn lines_that_are_passed_over() {
        let text = "\u{feff}# down from the line\r\n\r\n x_in ; y_in ; reading (mm)\r\n1;2;3\r  # more\n4;5;6";
        let spots = check(text, &[["1", "2", "3"], ["4", "5", "6"]]);
        assert_eq!(
            spots.rows.iter().map(|row| row.line).collect::<Vec<_>>(),
            [4, 6]
        );
        assert_eq!(spots.headings.unwrap()[2], "reading (mm)");
        assert_eq!(
            spots.units,
            [
                Some(LengthUnit::Inches),
                Some(LengthUnit::Inches),
                Some(LengthUnit::Millimeters)
            ]
        );
    }

    #[test]
    fn headings_put_columns_in_order() {
        check("reading,Y,X\n3,2,1", &[["1", "2", "3"]]);
        check("x y reading\n1 2 3", &[["1", "2", "3"]]);
        check("across,away,down\n1,2,3", &[["1", "2", "3"]]);
        refused("y,reading,spot\n1,2,3", &[(1, PasteProblem::Headings)]);
    }

    #[test]
    fn every_wrong_line_is_told() {
        let text = "0,0,3\n1,2\n1,,3\n1,2,x3\n1,2  3,4\n\"1,2,3\n\"1\"2,3,4\n2 3 1/2\n5,5,5";
        let why = parse_length("x3", LengthUnit::Inches).unwrap_err();
        refused(
            text,
            &[
                (2, PasteProblem::Columns { found: 2 }),
                (3, PasteProblem::Blank { column: Column::Y }),
                (
                    4,
                    PasteProblem::Length {
                        column: Column::Reading,
                        text: "x3".into(),
                        why,
                    },
                ),
                (
                    5,
                    PasteProblem::PartedTwice {
                        text: "2  3".into(),
                    },
                ),
                (6, PasteProblem::Quote),
                (7, PasteProblem::Quote),
                (8, PasteProblem::Columns { found: 1 }),
            ],
        );
        refused("", &[(1, PasteProblem::Empty)]);
        refused("x,y,z\n# none", &[(1, PasteProblem::Empty)]);
    }

    #[test]
    fn ten_thousand_and_no_more() {
        let text = "1,2,3\n".repeat(MOST_ROWS);
        assert_eq!(
            read(&text, LengthUnit::Inches).unwrap().rows.len(),
            MOST_ROWS
        );
        let with_headings = format!("x,y,r\n{text}");
        assert_eq!(
            read(&with_headings, LengthUnit::Inches).unwrap().rows.len(),
            MOST_ROWS
        );
        refused(
            &format!("{text}1,2,3"),
            &[(MOST_ROWS + 1, PasteProblem::TooManyRows { most: MOST_ROWS })],
        );
    }

    proptest! {
        #[test]
        fn any_text_gets_an_answer(text in "\\PC*|([0-9xy\"',;# \t\r\n./-]{0,80})") {
            match read(&text, LengthUnit::Inches) {
                Ok(spots) => for row in &spots.rows {
                    for (cell, unit) in [(&row.x, 0), (&row.y, 1), (&row.reading, 2)] {
                        prop_assert!(parse_length(cell, spots.units[unit].unwrap_or_default()).is_ok());
                    }
                },
                Err(refusals) => prop_assert!(!refusals.is_empty()),
            }
        }

        /// Cells that were written by RFC 4180 come back as they were.
        #[test]
        fn quoted_cells_come_back(cells in proptest::collection::vec((0..40u32, 0..12u32, 1..16u32), 3..30)) {
            let texts: Vec<String> = cells.iter().map(|(ft, inch, part)| format!("{ft}' {inch} {part}/16\"")).collect();
            let mut csv = String::new();
            for row in texts.chunks_exact(3) {
                let quoted: Vec<String> = row.iter().map(|cell| format!("\"{}\"", cell.replace('"', "\"\""))).collect();
                csv.push_str(&quoted.join(","));
                csv.push_str("\r\n");
            }
            let spots = read(&csv, LengthUnit::Inches).unwrap();
            let got: Vec<String> = spots.rows.into_iter().flat_map(|row| [row.x, row.y, row.reading]).collect();
            prop_assert_eq!(&got[..], &texts[..got.len()]);
            prop_assert_eq!(got.len() / 3, texts.len() / 3);
        }
    }
}
