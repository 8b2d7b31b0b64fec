//! A quote's lines against what the job needs.
//!
//! A difference is a question, not an accusation: the answer names by how much, and what could explain it.

use serde::Serialize;

use super::need::{Need, Range};
use super::quote::QuoteLine;
use super::unit::{Dimension, Unit};

/// What a line says against its need. Amounts are in the line's own unit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Between the least and a generous amount.
    Within,
    /// More than a generous amount.
    Over {
        /// By so much more than the usual amount.
        above_usual: f64,
    },
    /// Less than the least.
    Under {
        /// By so much.
        short_by: f64,
    },
    /// Nothing to compare.
    Unchecked(Why),
}

/// Why a line can't be checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Why {
    /// Work, not material.
    Labour,
    /// A lump sum or an allowance.
    Lump,
    /// It has no quantity.
    NoQuantity,
    /// It has no unit that is known.
    NoUnit,
    /// Its unit measures something else than the need.
    OtherUnit {
        /// What the need is in.
        needed: Dimension,
        /// What the line is in.
        quoted: Dimension,
    },
    /// It was matched to nothing that was worked out.
    NoNeed,
}

/// What could explain a difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reason {
    /// Whole packs only.
    WholePacks,
    /// Spare material to be left for repairs.
    Spares,
    /// A pattern or a material that wastes more.
    MoreWaste,
    /// Rooms or surfaces that were not entered here.
    MoreArea,
    /// Material on hand, or bought by the owner.
    OnHand,
    /// Less area, or a part that is left out.
    LessArea,
    /// Another product with another coverage.
    OtherProduct,
}

/// A line with its verdict.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Checked {
    /// Low, usual and high in the line's unit.
    pub range: Option<Range>,
    /// What it says.
    pub verdict: Verdict,
    /// What could explain a difference; empty where there is none.
    pub reasons: Vec<Reason>,
}

/// Checks a line against the need that the user matched it to.
///
/// ```
/// use calc::supply::{check::{Verdict, check}, need::{Kind, Need}, quote, unit::{Dimension, Unit}};
/// let line = &quote::read("Floor tile\t150\tSF\t4.50").lines[0];
/// let need = Need::new(Kind::Tile, Dimension::Area, 100.0); // 100 low, 110 usual, 120 high
/// let checked = check(line, Some(&need));
/// assert!(matches!(checked.verdict, Verdict::Over { above_usual } if (above_usual - 40.0).abs() < 1e-9));
/// ```
pub fn check(line: &QuoteLine, need: Option<&Need>) -> Checked {
    let no = |why| Checked {
        range: None,
        verdict: Verdict::Unchecked(why),
        reasons: Vec::new(),
    };
    match line.unit.map(Unit::dimension) {
        Some(Dimension::Labour) => return no(Why::Labour),
        Some(Dimension::Lump) => return no(Why::Lump),
        _ => {}
    }
    let Some(need) = need else {
        return no(if line.is_labour() {
            Why::Labour
        } else {
            Why::NoNeed
        });
    };
    let Some(quantity) = line.quantity else {
        return no(Why::NoQuantity);
    };
    let Some(unit) = line.unit else {
        return no(Why::NoUnit);
    };
    let Some(range) = need.range_in(unit) else {
        return no(Why::OtherUnit {
            needed: need.dimension,
            quoted: unit.dimension(),
        });
    };
    let (verdict, reasons) = if quantity < range.low * (1.0 - SLACK) {
        let short_by = range.low - quantity;
        (
            Verdict::Under { short_by },
            vec![Reason::OnHand, Reason::LessArea, Reason::OtherProduct],
        )
    } else if quantity > range.high * (1.0 + SLACK) {
        let above_usual = quantity - range.usual;
        (
            Verdict::Over { above_usual },
            vec![
                Reason::WholePacks,
                Reason::Spares,
                Reason::MoreWaste,
                Reason::MoreArea,
            ],
        )
    } else {
        (Verdict::Within, Vec::new())
    };
    Checked {
        range: Some(range),
        verdict,
        reasons,
    }
}

/// Rounding of a quote's own figures: half a percent is no difference.
const SLACK: f64 = 0.005;

/// The need that a line seems to be for, by its words and unit; none where none stands out. The user decides.
pub fn suggest(line: &QuoteLine, needs: &[Need]) -> Option<usize> {
    let fits = |need: &Need| line.unit.is_none_or(|unit| need.range_in(unit).is_some());
    let mut best: Option<(usize, usize)> = None;
    let mut tied = false;
    for (index, need) in needs.iter().enumerate() {
        let score = line.words_of(need.kind);
        if score == 0 || !fits(need) {
            continue;
        }
        match best {
            Some((_, held)) if held > score => {}
            Some((at, held)) if held == score => {
                tied = needs.get(at).is_some_and(|n| n.kind != need.kind)
            }
            _ => {
                best = Some((index, score));
                tied = false;
            }
        }
    }
    best.filter(|_| !tied).map(|(index, _)| index)
}

/// The needs that no line was matched to: questions to ask. `matched` are the needs' places that lines were matched to.
pub fn missing(needs: &[Need], matched: &[usize]) -> Vec<usize> {
    (0..needs.len())
        .filter(|index| !matched.contains(index))
        .collect()
}

/// The share of material in a quote, 0 to 1: the totals of lines that were matched to a need over those of all lines.
/// None where no line has a price.
pub fn material_share(lines: &[QuoteLine], matched: &[bool]) -> Option<f64> {
    let sum = |wanted: &dyn Fn(usize) -> bool| -> f64 {
        lines
            .iter()
            .enumerate()
            .filter(|(index, _)| wanted(*index))
            .filter_map(|(_, line)| line.amount())
            .sum()
    };
    let all = sum(&|_| true);
    let material = sum(&|index| matched.get(index).copied().unwrap_or(false));
    (all > 0.0).then(|| material / all)
}
