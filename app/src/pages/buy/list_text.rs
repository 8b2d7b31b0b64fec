//! The buying list as plain text and as a table.

use calc::job::questions::supply::buying::BuyLine;
use calc::job::questions::supply::first_unit;
use calc::quantity::fixed;
use leptos::prelude::*;

use super::own::own_name;
use super::{COUNTERS, to_buy_text};
use crate::supply::Supply;
use crate::words::supply as words;

/// The list as a message: a counter, then a line for each thing; `[x]` is in the cart.
pub fn text(supply: Supply) -> String {
    let list = supply.buying.get_untracked();
    let units = supply.open.units().get_untracked();
    let mut text = String::new();
    let mut say = |line: &str| {
        text.push_str(line);
        text.push('\n');
    };
    for counter in COUNTERS {
        let mine: Vec<&BuyLine> = list
            .lines
            .iter()
            .filter(|line| line.need.kind.counter() == counter)
            .collect();
        if mine.is_empty() {
            continue;
        }
        say(words::counter(counter));
        for line in mine {
            let tick = tick(line.ticked.is_some() && line.grown.is_none());
            let what = words::kind(line.need.kind);
            let room = supply.room_name(line.need.room);
            say(&format!(
                "{tick} {} {what} ({room})",
                to_buy_text(line, units)
            ));
        }
    }
    let own = supply.open.job.with_untracked(|job| job.buying.own.clone());
    if !own.is_empty() {
        say(words::own_heading());
        for own in own {
            let much = match own.quantity.text.trim() {
                "" => "1",
                much => much,
            };
            say(&format!(
                "{} {much} {}",
                tick(own.ticked),
                own_name(&own.words)
            ));
        }
    }
    if list.total > 0.0 {
        say(&format!("{}: {}", words::total(), words::money(list.total)));
    }
    text
}

fn tick(on: bool) -> &'static str {
    if on { "[x]" } else { "[ ]" }
}

/// The list as a table of comma-separated values (RFC 4180).
pub fn csv(supply: Supply) -> String {
    let list = supply.buying.get_untracked();
    let mut table = format!("{}\r\n", words::csv_head());
    let number = |value: f64| fixed(value, 4);
    let may = |value: Option<f64>| value.map(|value| fixed(value, 2)).unwrap_or_default();
    let job = supply.open.job.get_untracked();
    for line in &list.lines {
        let need = &line.need;
        let price = job.buying.row(need.kind, need.room);
        row(
            &mut table,
            &[
                words::counter(need.kind.counter()),
                words::kind(need.kind),
                &supply.room_name(need.room),
                &number(need.exact),
                words::unit(first_unit(need.dimension), false),
                &number(line.to_buy),
                words::unit(line.unit, false),
                &number(line.on_hand),
                price.map_or("", |row| row.price.text.trim()),
                &may(line.cost),
                &may(line.tax),
                &may(line.ticked),
            ],
        );
    }
    for own in &list.own {
        let entry = job.buying.own.iter().find(|entry| entry.id == own.id);
        row(
            &mut table,
            &[
                words::own_heading(),
                &own_name(entry.map_or("", |entry| &entry.words)),
                "",
                "",
                "",
                &may(own.quantity),
                "",
                "",
                entry.map_or("", |entry| entry.price.text.trim()),
                &may(own.cost),
                &may(own.tax),
                &may(own.quantity.filter(|_| own.ticked)),
            ],
        );
    }
    table
}

fn row(table: &mut String, cells: &[&str]) {
    for (at, cell) in cells.iter().enumerate() {
        if at > 0 {
            table.push(',');
        }
        table.push_str(&quoted(cell));
    }
    table.push_str("\r\n");
}

/// A cell in quote marks where it has to be. What a spreadsheet would take for a formula gets an apostrophe in front.
fn quoted(cell: &str) -> String {
    let formula = cell.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let cell = if formula {
        format!("'{cell}")
    } else {
        cell.to_owned()
    };
    if cell.contains(['"', ',', '\n', '\r']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4180, section 2, rules 5 to 7.
    #[test]
    fn cells_are_quoted_where_they_must_be() {
        let mut table = String::new();
        row(&mut table, &["tile, 12\" x 24\"", "plain", "=1+1", ""]);
        assert_eq!(table, "\"tile, 12\"\" x 24\"\"\",plain,'=1+1,\r\n");
    }
}
