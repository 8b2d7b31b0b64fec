//! Quick sum: how full a box is, line by line, and what else fits.

use calc::job::Units;
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::boxes::box_fill_of;
use calc::job::sums::Sums;
use calc::quantity::fixed;
use calc::wiring::box_fill::{BoxFill, BoxRefusal, FillItem, FillLine};
use leptos::prelude::*;

use super::super::sum_fields::edition_field;
use super::super::sums::OpenSums;
use super::box_form::BoxForm;
use super::frame::{Outcome, Part, Picture, SumFrame, Table, Told};
use super::keep::{KeepWiring, Keeps};
use crate::markup::view;
use crate::pictures::box_fill::{BoxContent, BoxLayer, Filling};
use crate::words::wiring::{self as words, fill, rules};

/// Box fill.
#[component]
pub fn SumBoxPage() -> impl IntoView {
    let open = OpenSums::load();
    let fields = view! {
        {edition_field(open)}
        <BoxForm open />
    };
    let keep = view! { <KeepWiring open what=Keeps::Box /> };
    view! { <SumFrame open title=fill::title() of fields=fields.into_any() after=keep.into_any() /> }
}

fn of(sums: &Sums) -> Outcome {
    let found = box_fill_of(&sums.box_fill, sums.code_edition);
    outcome(&found, sums.units)
}

/// How a box came out.
pub fn outcome(found: &Result<BoxFill, AskProblem<BoxRefusal>>, units: Units) -> Outcome {
    Outcome::of(
        found.as_ref().map_err(Clone::clone),
        |refusal| fill::refusal(refusal, units),
        |found| told(found, units),
    )
}

const fn filling(item: FillItem) -> Filling {
    match item {
        FillItem::Conductors | FillItem::Passing | FillItem::Looped | FillItem::FixtureWires => {
            Filling::Wires
        }
        FillItem::Grounds | FillItem::IsolatedGrounds => Filling::Grounds,
        FillItem::Device => Filling::Device,
        FillItem::Clamps | FillItem::Supports | FillItem::TerminalBlock | FillItem::Pigtails => {
            Filling::Hardware
        }
    }
}

fn picture(found: &BoxFill, units: Units) -> BoxContent {
    let rest = fill::volume(found.room_in3.abs(), units);
    BoxContent {
        volume: found.volume_in3,
        volume_label: fill::volume(found.volume_in3, units),
        layers: found
            .lines
            .iter()
            .enumerate()
            .map(|(at, line)| BoxLayer {
                number: at + 1,
                space: line.volume_in3,
                label: fill::volume(line.volume_in3, units),
                count: line.count,
                filling: filling(line.item),
            })
            .collect(),
        rest_label: if found.fits {
            fill::room_label(rest)
        } else {
            fill::over_label(rest)
        },
    }
}

fn line_words(line: &FillLine) -> String {
    let item = fill::item(line.item);
    let named = match line.size {
        Some(size) => fill::of_size(item, words::size(size)),
        None => item.to_owned(),
    };
    if line.count > 1 {
        fill::times(named, line.count)
    } else {
        named
    }
}

fn lines(found: &BoxFill, units: Units) -> Table {
    let row = |(at, line): (usize, &FillLine)| {
        vec![
            (at + 1).to_string(),
            line_words(line),
            fixed(line.allowances, 2),
            fill::volume_number(line.volume_in3, units),
        ]
    };
    Table {
        caption: fill::lines_caption(),
        heads: vec![
            ("#", true),
            (fill::head_what(), false),
            (fill::head_counts(), true),
            (fill::volume_unit(units), true),
        ],
        named_by: 1,
        rows: found.lines.iter().enumerate().map(row).collect(),
    }
}

fn told(found: &BoxFill, units: Units) -> Told {
    let text = |in3| fill::volume(in3, units);
    let (required, there) = (text(found.required_in3), text(found.volume_in3));
    let edition = words::by_edition(words::edition(found.edition));
    let more = found.more.iter();
    let smallest = found.smallest.iter();
    Told {
        name: if !found.fits {
            fill::over_by()
        } else if found.room_in3.abs() < 1e-6 {
            fill::full()
        } else {
            fill::room_left()
        },
        value: fill::volume_number(found.room_in3.abs(), units),
        unit: fill::volume_unit(units),
        rests: format!("{} {edition}", fill::rests(required.clone(), there.clone())),
        notices: found
            .findings
            .iter()
            .map(|finding| fill::finding(finding, units))
            .collect(),
        picture: Picture::Box(
            picture(found, units),
            fill::picture_says(required, there),
            fill::picture_caption(),
        ),
        table: Some(lines(found, units)),
        parts: vec![
            Part {
                heading: fill::more_heading(),
                rows: more
                    .map(|more| (fill::cable(&more.cable), more.count.to_string()))
                    .collect(),
                ..Part::default()
            },
            Part {
                heading: fill::smallest_heading(),
                rows: smallest
                    .map(|one| (fill::family(one.family).to_owned(), fill::smallest(one)))
                    .collect(),
                folded: true,
                ..Part::default()
            },
        ],
        steps: found.steps.clone(),
        sections: rules::sections(&found.steps, &[], found.edition),
        cautions: words::cautions(),
        ..Told::default()
    }
}
