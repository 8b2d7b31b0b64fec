//! A quote's lines against what is needed.

use serde::Serialize;

use super::buying::Buying;
use crate::job::fields::{self, Field};
use crate::job::{MatchedBy, QuoteEntry, QuoteLineEntry, Typed};
use crate::quantity::{EntryRefusal, fixed};
use crate::supply::check::{Checked, check, material_share, missing, suggest};
use crate::supply::need::Need;
use crate::supply::quote::{PastedQuote, QuoteLine};
use crate::supply::unit::Unit;

/// What a quote says.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct QuoteAnswers {
    /// The needs of all rooms together: what lines are held against.
    pub needs: Vec<Need>,
    /// The lines, in the quote's order.
    pub lines: Vec<QuoteAnswered>,
    /// The needs that no line is for: places among `needs`.
    pub missing: Vec<usize>,
    /// The share of material among what has a price, 0 to 1; none where nothing has.
    pub material_share: Option<f64>,
    /// All lines that have a price, dollars.
    pub total: f64,
    /// Lines without a price.
    pub without_price: usize,
}

/// A line of a quote with its verdict.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct QuoteAnswered {
    /// Row id.
    pub id: u32,
    /// What it is for: a place among the needs.
    pub need: Option<usize>,
    /// What its words and its unit suggest.
    pub suggested: Option<usize>,
    /// The verdict. Lines for the same need are held against it together.
    pub checked: Checked,
    /// How many lines are held against the need together with this one, itself among them; 1 where it is for none.
    pub together: usize,
    /// The quantity of these lines together, in this line's unit.
    pub quantity: Option<f64>,
    /// The price of the line, dollars.
    pub amount: Option<f64>,
    /// What quantity times price makes, where the line's total says something else, dollars.
    pub multiplied_otherwise: Option<f64>,
    /// What was entered and can't be read.
    pub refused: Vec<EntryRefusal>,
}

/// Needs of several rooms together, one for each kind that is measured alike: a quote is for the whole job. Allowances
/// are weighed by the amounts; a pack stays where all are sold by its like, of two sizes as the mean of them.
pub fn whole_job(needs: &[Need]) -> Vec<Need> {
    let mut all: Vec<Need> = Vec::new();
    for need in needs {
        let same = |held: &&mut Need| held.kind == need.kind && held.dimension == need.dimension;
        match all.iter_mut().find(same) {
            None => all.push(Need {
                room: None,
                ..need.clone()
            }),
            Some(held) => {
                let exact = held.exact + need.exact;
                let mean = |a: f64, b: f64| {
                    if exact > 0.0 {
                        (a * held.exact + b * need.exact) / exact
                    } else {
                        a
                    }
                };
                let usual_percent = mean(held.usual_percent, need.usual_percent);
                let generous_percent = mean(held.generous_percent, need.generous_percent);
                held.usual_percent = usual_percent;
                held.generous_percent = generous_percent;
                held.packs.retain_mut(|pack| {
                    let same = need.packs.iter().find(|of| of.unit == pack.unit);
                    same.map(|of| {
                        let count = held.exact / pack.holds + need.exact / of.holds;
                        if of != pack && count > 0.0 {
                            pack.holds = exact / count;
                        }
                    })
                    .is_some()
                });
                held.mix.clear();
                held.exact = exact;
            }
        }
    }
    all
}

/// A quote against needs.
pub fn quote(entry: &QuoteEntry, needs: &[Need]) -> QuoteAnswers {
    let needs = whole_job(needs);
    let read: Vec<(QuoteLine, Vec<EntryRefusal>)> = entry.lines.iter().map(line_of).collect();
    let suggested: Vec<Option<usize>> =
        read.iter().map(|(line, _)| suggest(line, &needs)).collect();
    let matched: Vec<Option<usize>> = entry
        .lines
        .iter()
        .zip(&suggested)
        .map(|(line, suggested)| match line.matched {
            MatchedBy::Words => *suggested,
            MatchedBy::User => needs.iter().position(|need| Some(need.kind) == line.chosen),
        })
        .collect();
    let lines = (0..read.len())
        .filter_map(|at| answered(at, entry, &read, &matched, &suggested, &needs))
        .collect();
    let quoted: Vec<QuoteLine> = read.iter().map(|(line, _)| line.clone()).collect();
    let is_material: Vec<bool> = matched.iter().map(Option::is_some).collect();
    let found: Vec<usize> = matched.iter().copied().flatten().collect();
    let amounts = quoted.iter().map(QuoteLine::amount);
    QuoteAnswers {
        lines,
        missing: missing(&needs, &found),
        material_share: material_share(&quoted, &is_material),
        total: amounts.clone().flatten().sum(),
        without_price: amounts.filter(Option::is_none).count(),
        needs,
    }
}

fn answered(
    at: usize,
    entry: &QuoteEntry,
    read: &[(QuoteLine, Vec<EntryRefusal>)],
    matched: &[Option<usize>],
    suggested: &[Option<usize>],
    needs: &[Need],
) -> Option<QuoteAnswered> {
    let id = entry.lines.get(at)?.id;
    let (line, refused) = read.get(at)?;
    let place = matched.get(at).copied().flatten();
    let need = place.and_then(|place| needs.get(place));
    let mut held = line.clone();
    let mut together = 1;
    if let (Some(need), Some(unit), Some(_)) = (need, line.unit, line.quantity)
        && let Some(one) = holds(need, unit)
    {
        // What all lines for the need come to, in its own dimension.
        let counted: Vec<f64> = read
            .iter()
            .zip(matched)
            .filter(|(_, of)| **of == place)
            .filter_map(|((line, _), _)| Some(line.quantity? * holds(need, line.unit?)?))
            .collect();
        together = counted.len().max(1);
        if together > 1 {
            held.quantity = Some(counted.iter().sum::<f64>() / one);
        }
    }
    Some(QuoteAnswered {
        id,
        need: place,
        suggested: suggested.get(at).copied().flatten(),
        checked: check(&held, need),
        together,
        quantity: held.quantity,
        amount: line.amount(),
        multiplied_otherwise: line.multiplied_otherwise(),
        refused: refused.clone(),
    })
}

/// How much of a need's own dimension one of a unit holds; none where the unit can't measure it.
fn holds(need: &Need, unit: Unit) -> Option<f64> {
    need.range_in(unit)?;
    let pack = need.packs.iter().find(|pack| pack.unit == unit);
    Some(pack.map_or(unit.factor(), |pack| pack.holds))
}

/// A line as it was entered, and what of it can't be read.
fn line_of(entry: &QuoteLineEntry) -> (QuoteLine, Vec<EntryRefusal>) {
    let mut refused = Vec::new();
    let mut read = |field: &Field, typed: &Typed| match field.optional(typed) {
        Ok(value) => value,
        Err(refusal) => {
            refused.push(refusal);
            None
        }
    };
    let line = QuoteLine {
        line: 0,
        words: entry.words.clone(),
        quantity: read(&fields::QUANTITY, &entry.quantity),
        unit: entry.unit,
        price: read(&fields::PRICE, &entry.price),
        total: read(&fields::PRICE, &entry.total),
    };
    (line, refused)
}

/// The material of a job at the user's own prices, beside a quote.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OwnPrices {
    /// What is left to buy, at these prices, dollars.
    pub cost: f64,
    /// Its share of the quote, 0 to 1; it may be over 1.
    pub share: f64,
    /// Needs without a price, which are not counted.
    pub without_price: usize,
}

/// The material at the user's own prices against the quote; none where no need has a price, or no line of the quote.
pub fn own_prices(list: &Buying, quote: &QuoteAnswers) -> Option<OwnPrices> {
    let priced = list.lines.iter().filter_map(|line| line.cost);
    let cost: f64 = priced.clone().sum();
    (cost > 0.0 && quote.total > 0.0).then(|| OwnPrices {
        cost,
        share: cost / quote.total,
        without_price: list.lines.len() - priced.count(),
    })
}

/// Lines as pasted, to be kept; ids from `first_id`.
pub fn kept(pasted: &PastedQuote, first_id: u32) -> Vec<QuoteLineEntry> {
    let text =
        |value: Option<f64>| value.map_or_else(Typed::default, |n| Typed::plain(fixed(n, 4)));
    let ids = first_id..;
    pasted
        .lines
        .iter()
        .zip(ids)
        .map(|(line, id)| QuoteLineEntry {
            id,
            words: line.words.clone(),
            quantity: text(line.quantity),
            unit: line.unit,
            price: text(line.price),
            total: text(line.total),
            ..QuoteLineEntry::default()
        })
        .collect()
}
