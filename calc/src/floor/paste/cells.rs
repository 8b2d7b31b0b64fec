//! Lines of text, and lines parted into cells.

use super::PasteProblem;

/// Lines with something on them, numbered from 1.
pub(super) fn lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut rest = text;
    let lines = std::iter::from_fn(move || {
        if rest.is_empty() {
            return None;
        }
        let (line, after) = match rest.find(['\n', '\r']) {
            Some(end) => {
                let (line, tail) = rest.split_at(end);
                let ended = tail
                    .strip_prefix("\r\n")
                    .or_else(|| tail.strip_prefix(['\n', '\r']));
                (line, ended.unwrap_or_default())
            }
            None => (rest, ""),
        };
        rest = after;
        Some(line)
    });
    let numbered = lines.enumerate().map(|(index, line)| (index + 1, line));
    numbered.filter(|(_, line)| !line.trim().is_empty() && !line.trim_start().starts_with('#'))
}

/// A line's cells, trimmed, without the empty ones at its end.
pub(super) fn part(line: &str) -> Result<Vec<String>, PasteProblem> {
    let mark = ['\t', ';', ',']
        .into_iter()
        .find(|&mark| has_outside_quotes(line, mark));
    let mut cells = match mark {
        Some(mark) => part_at(line, mark)?,
        None => part_at_blanks(line)?,
    };
    while cells.last().is_some_and(String::is_empty) {
        cells.pop();
    }
    Ok(cells)
}

/// Whether the line has the mark outside a quoted cell. A quote opens one only where a cell could begin.
fn has_outside_quotes(line: &str, mark: char) -> bool {
    let mut quoted = false;
    let mut could_begin = true;
    for c in line.chars() {
        match c {
            '"' if quoted || could_begin => quoted = !quoted,
            c if c == mark && !quoted => return true,
            _ => {}
        }
        could_begin = matches!(c, '\t' | ';' | ',') || (could_begin && c.is_whitespace());
    }
    false
}

fn part_at(line: &str, mark: char) -> Result<Vec<String>, PasteProblem> {
    let mut cells = Vec::new();
    let mut rest = line;
    loop {
        let blank = |c: char| c.is_whitespace() && c != mark;
        let begun = rest.trim_start_matches(blank);
        let (cell, after) = if let Some(quoted) = begun.strip_prefix('"') {
            let (cell, after) = unquote(quoted)?;
            let after = after.trim_start_matches(blank);
            if !(after.is_empty() || after.starts_with(mark)) {
                return Err(PasteProblem::Quote);
            }
            (cell, after)
        } else {
            let end = begun.find(mark).unwrap_or(begun.len());
            let (cell, after) = begun.split_at(end);
            let cell = cell.trim();
            if blanks_within(cell) {
                return Err(PasteProblem::PartedTwice {
                    text: super::shown(cell),
                });
            }
            (cell.to_owned(), after)
        };
        cells.push(cell);
        match after.strip_prefix(mark) {
            Some(after) => rest = after,
            None => return Ok(cells),
        }
    }
}

/// The rest of a quoted cell, two marks standing for one, and what comes behind its closing mark.
fn unquote(text: &str) -> Result<(String, &str), PasteProblem> {
    let mut cell = String::new();
    let mut rest = text;
    loop {
        let (before, after) = rest.split_once('"').ok_or(PasteProblem::Quote)?;
        cell.push_str(before);
        match after.strip_prefix('"') {
            Some(after) => {
                cell.push('"');
                rest = after;
            }
            None => return Ok((cell.trim().to_owned(), after)),
        }
    }
}

fn blanks_within(cell: &str) -> bool {
    let mut last = false;
    cell.chars().any(|c| {
        let blank = c.is_whitespace();
        std::mem::replace(&mut last, blank) && blank
    })
}

fn part_at_blanks(line: &str) -> Result<Vec<String>, PasteProblem> {
    let line = line.trim();
    if line.starts_with('"') {
        return part_at(line, '\t');
    }
    let words: Vec<&str> = line.split_whitespace().collect();
    let alone = |word: &&str| is_bare_number(word) || is_heading(word);
    if words.len() == 3 && words.iter().all(alone) {
        return Ok(words.into_iter().map(str::to_owned).collect());
    }
    let mut cells: Vec<String> = Vec::new();
    let mut blanks = 2;
    for c in line.chars() {
        if c.is_whitespace() {
            blanks += 1;
            continue;
        }
        match cells.last_mut() {
            Some(cell) if blanks < 2 => {
                if blanks == 1 {
                    cell.push(' ');
                }
                cell.push(c);
            }
            _ => cells.push(c.to_string()),
        }
        blanks = 0;
    }
    Ok(cells)
}

fn is_bare_number(word: &str) -> bool {
    let digits = word.strip_prefix(['-', '+']).unwrap_or(word);
    let mut points = 0;
    let plain = digits.chars().all(|c| {
        points += usize::from(c == '.');
        c == '.' || c.is_ascii_digit()
    });
    plain && points <= 1 && digits.contains(|c: char| c.is_ascii_digit())
}

pub(super) fn is_heading(cell: &str) -> bool {
    cell.starts_with(char::is_alphabetic)
}
