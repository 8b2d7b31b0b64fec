//! The frame of a sum: its fields, then what came out of them. What an answer shows is worked out into words and
//! figures by one plain function a sum; here they are laid out, once for all of them.

use calc::job::Units;
use calc::job::questions::wiring::AskProblem;
use calc::job::sums::Sums;
use calc::working::Step;
use leptos::prelude::*;

use super::super::sum_fields::label;
use super::super::sums::{OpenSums, SumFoot};
use crate::answer::{Cautions, CodeSections, Facts, Notices, RestsOn, Working};
use crate::markup::view;
use crate::pictures::box_fill::BoxContent;
use crate::pictures::drop_plot::DropContent;
use crate::pictures::{BoxPicture, DropPlot, Figure};
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::PageHeading;
use crate::words::wiring as words;

/// How a sum came out.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Outcome {
    /// Something is not entered yet, or refused at its field.
    #[default]
    Open,
    /// The entries can be read but have no answer; why, in words.
    Refused(String),
    /// The answer.
    Told(Box<Told>),
}

impl Outcome {
    /// The outcome of what was asked.
    pub fn of<T, R>(
        asked: Result<T, AskProblem<R>>,
        refused: impl FnOnce(&R) -> String,
        told: impl FnOnce(T) -> Told,
    ) -> Self {
        match asked {
            Ok(found) => Self::Told(Box::new(told(found))),
            Err(AskProblem::Refused(refusal)) => Self::Refused(refused(&refusal)),
            Err(AskProblem::Entries(_)) => Self::Open,
        }
    }

    /// Whether it is an answer.
    pub const fn is_told(&self) -> bool {
        matches!(self, Self::Told(_))
    }
}

/// What an answer shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// What the figure is.
    pub name: &'static str,
    /// The figure.
    pub value: String,
    /// Its unit.
    pub unit: &'static str,
    /// A second figure beside it: what it is, and it with its unit; blank for none.
    pub beside: (&'static str, String),
    /// What governed; blank for nothing to say.
    pub governs: String,
    /// What it rests on.
    pub rests: String,
    /// What is remarkable.
    pub notices: Vec<String>,
    /// The picture.
    pub picture: Picture,
    /// A table.
    pub table: Option<Table>,
    /// Figures by name.
    pub facts: Vec<(String, String)>,
    /// A sentence after them; blank for none.
    pub after: String,
    /// More figures, each under a heading of its own.
    pub parts: Vec<Part>,
    /// The working.
    pub steps: Vec<Step>,
    /// The sections of the code.
    pub sections: Vec<(String, String)>,
    /// What to watch for.
    pub cautions: Vec<String>,
}

/// The picture of an answer.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Picture {
    /// It has none.
    #[default]
    None,
    /// A box, what it says in words, and what stands below it.
    Box(BoxContent, String, &'static str),
    /// Voltage against distance, likewise.
    Drop(DropContent, String, &'static str),
}

impl Picture {
    fn words(&self) -> (&str, &'static str) {
        match self {
            Self::None => ("", ""),
            Self::Box(_, says, caption) | Self::Drop(_, says, caption) => (says, caption),
        }
    }
}

/// A table of an answer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Its caption.
    pub caption: &'static str,
    /// The head of each column, and whether figures stand in it.
    pub heads: Vec<(&'static str, bool)>,
    /// The column that names a row.
    pub named_by: usize,
    /// The cells.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    fn drawn(&self) -> AnyView {
        let class = |number: bool| number.then_some("num");
        let heads = self
            .heads
            .iter()
            .map(|&(head, number)| view! { <th class=class(number) scope="col">{head}</th> })
            .collect_view();
        let cells = |row: &Vec<String>| {
            row.iter()
                .zip(&self.heads)
                .enumerate()
                .map(|(at, (cell, (_, number)))| {
                    let class = class(*number);
                    if at == self.named_by {
                        view! { <th class=class scope="row">{cell.clone()}</th> }
                    } else {
                        view! { <td class=class>{cell.clone()}</td> }
                    }
                })
                .collect_view()
        };
        let rows = self
            .rows
            .iter()
            .map(|row| view! { <tr>{cells(row)}</tr> })
            .collect_view();
        view! {
            <table>
                <caption>{self.caption}</caption>
                <thead>
                    <tr>{heads}</tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        }
        .into_any()
    }
}

/// Figures under a heading.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Part {
    /// The heading.
    pub heading: &'static str,
    /// A sentence before the figures; blank for none.
    pub says: &'static str,
    /// The figures by name.
    pub rows: Vec<(String, String)>,
    /// Closed until it is asked for.
    pub folded: bool,
}

impl Part {
    fn drawn(self) -> AnyView {
        let says = (!self.says.is_empty()).then(|| view! { <p>{self.says}</p> });
        let rows = Signal::stored(self.rows);
        if self.folded {
            view! {
                <details>
                    <summary>{self.heading}</summary>
                    {says}
                    <Facts rows />
                </details>
            }
            .into_any()
        } else {
            view! {
                <h3>{self.heading}</h3>
                {says}
                <Facts rows />
            }
            .into_any()
        }
    }
}

/// A sum's page.
#[component]
pub fn SumFrame(
    /// The sums.
    open: OpenSums,
    /// What it is called.
    title: &'static str,
    /// How it comes out.
    of: fn(&Sums) -> Outcome,
    /// Its fields.
    fields: AnyView,
    /// What follows the answer.
    after: AnyView,
) -> impl IntoView {
    let outcome = open.part(of);
    let refused = move || {
        outcome.with(|outcome| match outcome {
            Outcome::Refused(why) => Some(why.clone()),
            _ => None,
        })
    };
    view! {
        <PageHeading text=label(title) />
        {fields}
        <div role="status">
            <When when=move || matches!(*outcome.read(), Outcome::Refused(_))>
                <p class="notice look">{say(refused)}</p>
            </When>
        </div>
        <Answer outcome units=open.units() />
        {after}
        <SumFoot open />
    }
}

/// An answer, or what it waits for.
#[component]
pub fn Answer(
    /// How it came out.
    outcome: Memo<Outcome>,
    /// The units in force.
    units: Memo<Units>,
) -> impl IntoView {
    view! {
        <When
            when=move || outcome.with(Outcome::is_told)
            fallback=|| view! { <p class="quiet">{words::say_more()}</p> }
        >
            <ToldAnswer outcome units />
        </When>
    }
}

fn told<T: Default>(outcome: Memo<Outcome>, part: fn(&Told) -> T) -> T {
    outcome.with(|outcome| match outcome {
        Outcome::Told(told) => part(told),
        _ => T::default(),
    })
}

#[component]
fn ToldAnswer(outcome: Memo<Outcome>, units: Memo<Units>) -> impl IntoView {
    let text = move |part: fn(&Told) -> String| derived(move || told(outcome, part));
    let rows = move |part: fn(&Told) -> Vec<(String, String)>| derived(move || told(outcome, part));
    let lines = move |part: fn(&Told) -> Vec<String>| derived(move || told(outcome, part));
    let has = move |part: fn(&Told) -> bool| derived(move || told(outcome, part));
    let box_content = memo(move || {
        told(outcome, |told| match &told.picture {
            Picture::Box(content, ..) => content.clone(),
            _ => BoxContent::default(),
        })
    });
    let drop_content = memo(move || {
        told(outcome, |told| match &told.picture {
            Picture::Drop(content, ..) => content.clone(),
            _ => DropContent::default(),
        })
    });
    let says = text(|told| told.picture.words().0.to_owned());
    let caption = text(|told| told.picture.words().1.to_owned());
    let table = move || told(outcome, |told| told.table.as_ref().map(Table::drawn));
    let parts = move || {
        let parts = told(outcome, |told| told.parts.clone());
        parts.into_iter().map(Part::drawn).collect_view()
    };
    let beside = move || {
        let (name, figure) = told(outcome, |told| told.beside.clone());
        (!name.is_empty()).then(|| {
            view! {
                <p class="with-figure">
                    {name}
                    <strong class="figure small">{figure}</strong>
                </p>
            }
        })
    };
    let governs = move || {
        let text = told(outcome, |told| told.governs.clone());
        (!text.is_empty()).then(|| view! { <p class="governs">{text}</p> })
    };
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{text(|told| told.name.to_owned())}</p>
                <Figure value=text(|told| told.value.clone()) unit=text(|told| told.unit.to_owned()) />
                {draw(beside)}
                {draw(governs)}
                <RestsOn text=text(|told| told.rests.clone()) />
                <Notices lines=lines(|told| told.notices.clone()) />
            </div>
        </section>
        <When when=has(|told| told.picture != Picture::None)>
            <figure class="picture">
                <When
                    when=has(|told| matches!(told.picture, Picture::Box(..)))
                    fallback=move || view! { <DropPlot content=drop_content says /> }
                >
                    <BoxPicture content=box_content says />
                </When>
                <figcaption>{caption}</figcaption>
            </figure>
        </When>
        <section class="sheet">
            {draw(table)}
            <When when=has(|told| !told.facts.is_empty())>
                <Facts rows=rows(|told| told.facts.clone()) />
            </When>
            <When when=has(|told| !told.after.is_empty())>
                <p>{text(|told| told.after.clone())}</p>
            </When>
            {draw(parts)}
            <Working steps=derived(move || told(outcome, |told| told.steps.clone())) units />
            <CodeSections rows=rows(|told| told.sections.clone()) />
            <Cautions lines=lines(|told| told.cautions.clone()) />
        </section>
    }
}
