//! Quick sum: what a wire carries where it lies, its largest breaker, and the smallest wire for a load.

use calc::job::fields;
use calc::job::questions::wiring::laid::{LaidRefusal, ampacity_of, smallest_of};
use calc::job::sums::{AmpacityWant, Sums};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::ampacity::{Ampacity, Feeds, SmallestConductor};
use calc::wiring::bundle::BundleCount;
use calc::wiring::conductor::{Covering, Size};
use calc::working::Step;
use leptos::prelude::*;

use super::super::sum_fields::{
    Shown, choice, coded, edition_field, few, field, label, size_pick, size_spot, typed,
};
use super::super::sums::OpenSums;
use super::frame::{Outcome, Part, SumFrame, Told};
use super::keep::{KeepWiring, Keeps};
use super::laid::{Bundle, LaidForm, refused_size};
use crate::markup::view;
use crate::reactive::draw;
use crate::words::common;
use crate::words::wiring::{self as words, ampacity as says, rules};

/// What the sum answers, either way.
struct Answer {
    bundle: BundleCount,
    ampacity: Ampacity,
    /// The smallest conductor, where that is wanted.
    smallest: Option<SmallestConductor>,
}

impl Answer {
    fn steps(&self) -> &[Step] {
        match &self.smallest {
            Some(smallest) => &smallest.steps,
            None => &self.ampacity.steps,
        }
    }
}

/// Ampacity.
#[component]
pub fn SumAmpacityPage() -> impl IntoView {
    let open = OpenSums::load();
    let want = open.part(|sums| sums.ampacity.want);
    let wants = few(&[
        (AmpacityWant::Ampacity.code(), says::want_rating()),
        (AmpacityWant::Conductor.code(), says::want_smallest()),
    ]);
    let of_want = move || match want.get() {
        AmpacityWant::Ampacity => size_pick(
            open,
            "wire-size",
            Size::Awg14,
            size_spot!(ampacity.laid.size),
            refused_size(open),
        ),
        AmpacityWant::Conductor => load_fields(open),
    };
    let feeds = few(&[
        (Feeds::SeveralReceptacles.word(), says::feeds_receptacles()),
        (Feeds::Other.word(), says::feeds_other()),
    ]);
    let fields = view! {
        {edition_field(open)}
        {choice(open, "ampacity-want", label(says::want_label()), "", wants, coded!(AmpacityWant::code; ampacity.want))}
        {draw(of_want)}
        <LaidForm open />
        {choice(open, "feeds", label(says::feeds_label()), "", feeds, coded!(Coded::word; ampacity.feeds))}
        <Bundle open />
    };
    let keep = view! { <KeepWiring open what=Keeps::Ampacity /> };
    view! { <SumFrame open title=says::title() of fields=fields.into_any() after=keep.into_any() /> }
}

fn of(sums: &Sums) -> Outcome {
    let (sum, edition) = (&sums.ampacity, sums.code_edition);
    let asked = match sum.want {
        AmpacityWant::Ampacity => ampacity_of(sum, edition).map(|found| Answer {
            bundle: found.bundle,
            ampacity: found.ampacity,
            smallest: None,
        }),
        AmpacityWant::Conductor => smallest_of(sum, edition).map(|found| Answer {
            bundle: found.bundle,
            ampacity: found.smallest.ampacity.clone(),
            smallest: Some(found.smallest),
        }),
    };
    let refused = |refusal: &LaidRefusal| match refusal {
        LaidRefusal::Ampacity(refusal) => says::refusal(refusal),
        LaidRefusal::Bundle(refusal) => says::bundle_refusal(refusal),
    };
    Outcome::of(asked, refused, |answer| told(&answer))
}

fn load_fields(open: OpenSums) -> AnyView {
    view! {
        <section class="sheet">
            <h2>{says::load_heading()}</h2>
            {field(
                open,
                "continuous",
                label(says::continuous_label()),
                fields::SOME_AMPS,
                Shown::optional(says::continuous_hint()),
                typed!(ampacity.continuous),
            )}
            {field(
                open,
                "other-load",
                label(says::other_label()),
                fields::SOME_AMPS,
                Shown::optional(""),
                typed!(ampacity.other),
            )}
            {field(
                open,
                "breaker",
                label(says::breaker_label()),
                fields::RATING,
                Shown::optional(says::breaker_hint()),
                typed!(ampacity.breaker),
            )}
        </section>
    }
    .into_any()
}

/// The limits that an ampacity comes from, each with its figure.
fn limits(answer: &Answer) -> Vec<(String, String)> {
    let ampacity = &answer.ampacity;
    let amps = |a: f64| format!("{} A", says::amps(a));
    let mut rows = Vec::new();
    if let Some(smallest) = &answer.smallest {
        rows.push((says::load_row().to_owned(), amps(smallest.min_rating_a)));
        rows.push((says::ampacity().to_owned(), amps(ampacity.ampacity_a)));
    }
    if answer.smallest.is_some() {
        let breaker = ampacity.breaker.rating_a;
        rows.push((
            says::breaker_row().to_owned(),
            breaker.map_or_else(|| common::none().to_owned(), amps),
        ));
    }
    rows.extend([
        (says::table_row().to_owned(), amps(ampacity.table_a)),
        (
            says::ambient_row().to_owned(),
            fixed(ampacity.ambient_factor, 2),
        ),
        (
            says::count_row(answer.bundle.carrying),
            fixed(ampacity.count_factor, 2),
        ),
        (says::corrected_row().to_owned(), amps(ampacity.corrected_a)),
        (
            says::terminal_row(words::rating(ampacity.terminal_rating)),
            amps(ampacity.terminal_a),
        ),
    ]);
    rows.extend(
        ampacity
            .cable_a
            .map(|a| (says::cable_row().to_owned(), amps(a))),
    );
    rows.push((
        says::governed_row().to_owned(),
        says::governed(ampacity.governed).to_owned(),
    ));
    rows
}

/// What is remarkable: why the next smaller size won't do, what else must be known of the breaker.
fn notices(answer: &Answer) -> Vec<String> {
    let notes = answer.ampacity.breaker.notes.iter().map(says::note);
    notes.collect()
}

/// The conductor in a sentence, and the edition.
fn rests(answer: &Answer) -> String {
    let ampacity = &answer.ampacity;
    let conductor = ampacity.conductor;
    let wire = says::wire(
        words::size(conductor.size),
        words::metal(conductor.metal),
        words::covering(conductor.covering),
    );
    format!(
        "{wire}. {}",
        words::by_edition(words::edition(ampacity.edition))
    )
}

/// What governed: why no smaller size will do, or which step set the ampacity; then what set the breaker.
fn governs(answer: &Answer) -> String {
    let ampacity = &answer.ampacity;
    let first = match &answer.smallest {
        Some(smallest) => smallest
            .smaller
            .as_ref()
            .map(|(size, why)| says::too_small(words::size(*size), why)),
        None => Some(says::governed_says(ampacity.governed).to_owned()),
    };
    let breaker = says::breaker_governed(&ampacity.breaker).filter(|_| answer.smallest.is_none());
    let sentences: Vec<String> = first
        .into_iter()
        .chain(breaker.map(str::to_owned))
        .collect();
    sentences.join(" ")
}

/// The breaker's figure beside the one that leads.
fn breaker_of(answer: &Answer) -> (&'static str, Option<f64>) {
    match &answer.smallest {
        Some(smallest) => (says::breaker_taken(), Some(smallest.breaker_a)),
        None => (says::breaker_row(), answer.ampacity.breaker.rating_a),
    }
}

/// How the conductors were counted.
fn counted(answer: &Answer) -> Part {
    let lines = answer.bundle.lines.iter();
    Part {
        heading: says::counted_heading(),
        says: says::together(answer.bundle.together),
        rows: lines
            .map(|line| {
                let counted = says::counted_of(line.counted, line.conductors);
                (says::counted_line(line), counted)
            })
            .collect(),
        folded: true,
    }
}

fn told(answer: &Answer) -> Told {
    let bundle = &answer.bundle;
    let (name, value, unit) = match &answer.smallest {
        Some(smallest) => (
            says::smallest(),
            smallest.size.text().to_owned(),
            words::size_unit(smallest.size),
        ),
        None => (
            says::ampacity(),
            says::amps(answer.ampacity.ampacity_a),
            "A",
        ),
    };
    let (breaker, rating_a) = breaker_of(answer);
    let rating = rating_a.map_or_else(
        || common::none().to_owned(),
        |a| format!("{} A", says::amps(a)),
    );
    let cited = bundle.lines.iter().map(|line| line.section);
    let counting = rules::named(cited.chain([bundle.section]), bundle.edition);
    let mut cautions = words::cautions();
    if answer.ampacity.conductor.covering == Covering::NmOld {
        cautions.push(says::caution_old().to_owned());
    }
    Told {
        name,
        value,
        unit,
        beside: (breaker, rating),
        governs: governs(answer),
        rests: rests(answer),
        notices: notices(answer),
        facts: limits(answer),
        parts: vec![counted(answer)],
        steps: answer.steps().to_vec(),
        sections: rules::sections(answer.steps(), &counting, bundle.edition),
        cautions,
        ..Told::default()
    }
}
