//! Quick sum: what a wire carries where it lies, its largest breaker, and the smallest wire for a load.

use crate::markup::{For, view};
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::laid::{LaidRefusal, ampacity_of, smallest_of};
use calc::job::sums::AmpacityWant;
use calc::job::{BesideEntry, CableKind, GroupingKind, Typed, Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::ampacity::{Ampacity, Feeds, SmallestConductor, Terminals};
use calc::wiring::bundle::BundleCount;
use calc::wiring::conductor::{Covering, Metal, Size};
use calc::working::Step;
use leptos::prelude::*;

use super::sum_fields::{
    Shown, add, choice, coded, edition_field, field, label, numbered, options, pick, size_spot,
    sizes, take_out, typed,
};
use super::sums::{OpenSums, SumFoot};
use crate::answer::{Cautions, CodeSections, Facts, Notices, RestsOn, Working};
use crate::entry::ChoiceOption;
use crate::pictures::Figure;
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::PageHeading;
use crate::words::common;
use crate::words::wiring::{self as words, ampacity as says, rules};

/// What the sum answers, either way.
#[derive(Clone, Debug, PartialEq)]
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
    let units = open.units();
    let edition = open.part(|sums| sums.code_edition);
    let want = open.part(|sums| sums.ampacity.want);
    let entry = open.part(|sums| sums.ampacity.clone());
    let asked = memo(move || {
        let edition = edition.get();
        entry.with(|entry| match entry.want {
            AmpacityWant::Ampacity => ampacity_of(entry, edition).map(|found| Answer {
                bundle: found.bundle,
                ampacity: found.ampacity,
                smallest: None,
            }),
            AmpacityWant::Conductor => smallest_of(entry, edition).map(|found| Answer {
                bundle: found.bundle,
                ampacity: found.smallest.ampacity.clone(),
                smallest: Some(found.smallest),
            }),
        })
    });
    let found = memo(move || asked.with(|asked| asked.as_ref().ok().cloned()));
    let refused = memo(move || {
        asked.with(|asked| match asked {
            Err(AskProblem::Refused(LaidRefusal::Ampacity(refusal))) => {
                Some(says::refusal(refusal))
            }
            Err(AskProblem::Refused(LaidRefusal::Bundle(refusal))) => {
                Some(says::bundle_refusal(refusal))
            }
            _ => None,
        })
    });
    let wants = vec![
        ChoiceOption::new(AmpacityWant::Ampacity.code(), says::want_rating()),
        ChoiceOption::new(AmpacityWant::Conductor.code(), says::want_smallest()),
    ];
    let of_want = move || match want.get() {
        AmpacityWant::Ampacity => pick(
            open,
            "wire-size",
            label(words::size_label()),
            sizes(Size::Awg14, Size::Kcmil500),
            size_spot!(ampacity.laid.size),
        ),
        AmpacityWant::Conductor => load_fields(open),
    };
    let feeds = vec![
        ChoiceOption::new(Feeds::SeveralReceptacles.word(), says::feeds_receptacles()),
        ChoiceOption::new(Feeds::Other.word(), says::feeds_other()),
    ];
    view! {
        <PageHeading text=label(says::title()) />
        {edition_field(open)}
        {choice(open, "ampacity-want", label(says::want_label()), "", wants, coded!(AmpacityWant::code; ampacity.want))}
        {draw(of_want)}
        <LaidForm open />
        {choice(open, "feeds", label(says::feeds_label()), "", feeds, coded!(Coded::word; ampacity.feeds))}
        <Bundle open />
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::say_more()}</p> }>
            <AmpacityAnswer found units />
        </When>
        <SumFoot open />
    }
}

/// A conductor's metal and covering, the air round it and its terminals.
#[component]
pub fn LaidForm(
    /// The sums, or a row of a job.
    open: OpenSums,
) -> impl IntoView {
    let terminals = vec![
        ChoiceOption::new(Terminals::C60.word(), says::terminals_60()),
        ChoiceOption::new(Terminals::C75.word(), says::terminals_75()),
        ChoiceOption::new(Terminals::NotKnown.word(), says::terminals_unknown()),
    ];
    view! {
        {pick(
            open,
            "wire-metal",
            label(words::metal_label()),
            options(|metal: Metal| words::metal(metal).to_owned()),
            coded!(Coded::word; ampacity.laid.metal),
        )}
        {pick(
            open,
            "wire-covering",
            label(words::covering_label()),
            options(words::covering),
            coded!(Coded::word; ampacity.laid.covering),
        )}
        {field(
            open,
            "ambient",
            label(says::ambient_label()),
            fields::AMBIENT,
            Shown::hint(says::ambient_hint()),
            typed!(ampacity.laid.ambient),
        )}
        {choice(
            open,
            "terminals",
            label(says::terminals_label()),
            "",
            terminals,
            coded!(Coded::word; ampacity.laid.terminals),
        )}
    }
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

fn kinds() -> Vec<ChoiceOption> {
    [
        (CableKind::TwoWire, says::kind_two()),
        (CableKind::Multiwire, says::kind_multiwire()),
        (CableKind::Travellers, says::kind_travellers()),
        (CableKind::HotAndSwitched, says::kind_switched()),
        (CableKind::TwoOfWye, says::kind_wye()),
    ]
    .into_iter()
    .map(|(kind, words)| ChoiceOption::new(kind.code(), words))
    .collect()
}

/// The cables that a conductor lies with, and how.
#[component]
pub fn Bundle(
    /// The sums, or a row of a job.
    open: OpenSums,
) -> impl IntoView {
    let grouping = open.part(|sums| sums.ampacity.laid.grouping);
    let ids = open.part(|sums| {
        sums.ampacity
            .laid
            .beside
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let ways = [
        (GroupingKind::Apart, says::lie_apart()),
        (GroupingKind::Bundled, says::lie_bundled()),
        (GroupingKind::SealedHole, says::lie_sealed()),
        (GroupingKind::InInsulation, says::lie_insulation()),
        (GroupingKind::Raceway, says::lie_raceway()),
        (GroupingKind::Nipple, says::lie_nipple()),
    ];
    let ways = ways
        .into_iter()
        .map(|(way, words)| ChoiceOption::new(way.code(), words))
        .collect();
    let row = move |id: u32| {
        view! {
            <li>
                {pick(
                    open,
                    format!("beside-{id}"),
                    numbered(ids, id, says::kind_label),
                    kinds(),
                    coded!(CableKind::code; ampacity.laid.beside[id].cable),
                )}
                <div class="pair level">
                    {field(
                        open,
                        format!("beside-count-{id}"),
                        numbered(ids, id, says::many_label),
                        fields::CABLES,
                        Shown::default(),
                        typed!(ampacity.laid.beside[id].count),
                    )}
                    {field(
                        open,
                        format!("beside-spares-{id}"),
                        numbered(ids, id, says::spares_label),
                        fields::CABLES,
                        Shown::optional(""),
                        typed!(ampacity.laid.beside[id].spares),
                    )}
                </div>
                {take_out(
                    open,
                    numbered(ids, id, says::kind_name),
                    move |sums| sums.ampacity.laid.beside.retain(|row| row.id != id),
                )}
            </li>
        }
        .into_any()
    };
    let measured = move || matches!(grouping.get(), GroupingKind::Bundled | GroupingKind::Nipple);
    view! {
        <section class="sheet">
            <h2>{says::bundle_heading()}</h2>
            {pick(open, "own-cable", label(says::own_label()), kinds(), coded!(CableKind::code; ampacity.laid.cable))}
            {pick(open, "grouping", label(says::lie_label()), ways, coded!(GroupingKind::code; ampacity.laid.grouping))}
            <When when=measured>
                {field(
                    open,
                    "grouped-length",
                    label(says::lie_length()),
                    fields::BUNDLE_LENGTH,
                    Shown::hint(says::lie_length_hint()),
                    typed!(ampacity.laid.grouped_length),
                )}
            </When>
            <ul class="rows">
                <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
            </ul>
            {add(
                open,
                says::add_kind(),
                |sums, id| {
                    let count = Typed::plain("1");
                    sums.ampacity.laid.beside.push(BesideEntry { id, count, ..BesideEntry::default() });
                },
            )}
        </section>
    }
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

#[component]
fn AmpacityAnswer(found: Memo<Option<Answer>>, units: Memo<Units>) -> impl IntoView {
    let wanted = move || found.with(|found| found.as_ref().is_some_and(|a| a.smallest.is_some()));
    let name = move || {
        if wanted() {
            says::smallest()
        } else {
            says::ampacity()
        }
    };
    let value = derived(move || {
        found.with(|found| match found {
            Some(Answer {
                smallest: Some(smallest),
                ..
            }) => smallest.size.text().to_owned(),
            Some(answer) => says::amps(answer.ampacity.ampacity_a),
            None => String::new(),
        })
    });
    let unit = derived(move || {
        found.with(|found| {
            match found.as_ref().and_then(|found| found.smallest.as_ref()) {
                Some(smallest) if smallest.size.is_kcmil() => "kcmil",
                Some(_) => "AWG",
                None => "A",
            }
            .to_owned()
        })
    });
    let of = move |part: fn(&Answer) -> Vec<String>| {
        derived(move || found.with(|found| found.as_ref().map(part).unwrap_or_default()))
    };
    let breaker_name = move || found.with(|found| found.as_ref().map_or("", |a| breaker_of(a).0));
    let breaker_text = move || {
        found.with(|found| {
            let breaker = found.as_ref().and_then(|a| breaker_of(a).1);
            breaker.map_or_else(
                || common::none().to_owned(),
                |a| format!("{} A", says::amps(a)),
            )
        })
    };
    let governed = move || found.with(|found| found.as_ref().map(governs));
    let rests = derived(move || found.with(|found| found.as_ref().map(rests).unwrap_or_default()));
    let rows = derived(move || found.with(|found| found.as_ref().map(limits).unwrap_or_default()));
    let counted = derived(move || {
        found.with(|found| {
            let lines = found.iter().flat_map(|found| &found.bundle.lines);
            lines
                .map(|line| {
                    (
                        says::counted_line(line),
                        says::counted_of(line.counted, line.conductors),
                    )
                })
                .collect::<Vec<_>>()
        })
    });
    let together = move || {
        found.with(|found| {
            let bundle = found.as_ref().map(|found| &found.bundle);
            bundle.map_or("", |bundle| says::together(bundle.together))
        })
    };
    let steps = derived(move || {
        found.with(|found| {
            found
                .as_ref()
                .map(|found| found.steps().to_vec())
                .unwrap_or_default()
        })
    });
    let sections = derived(move || {
        found.with(|found| {
            found.as_ref().map_or_else(Vec::new, |found| {
                let counted = rules::named(
                    found
                        .bundle
                        .lines
                        .iter()
                        .map(|line| line.section)
                        .chain([found.bundle.section]),
                    found.bundle.edition,
                );
                rules::sections(found.steps(), &counted, found.bundle.edition)
            })
        })
    });
    let cautions = move || {
        found.with(|found| {
            let mut lines = words::cautions();
            let covering = found.as_ref().map(|a| a.ampacity.conductor.covering);
            if covering == Some(Covering::NmOld) {
                lines.push(says::caution_old().to_owned());
            }
            lines
        })
    };
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{say(name)}</p>
                <Figure value unit />
                <p class="with-figure">
                    {say(breaker_name)}
                    <strong class="figure small">{say(breaker_text)}</strong>
                </p>
                <p class="governs">{say(governed)}</p>
                <RestsOn text=rests />
                <Notices lines=of(notices) />
            </div>
            <Facts rows />
            <details>
                <summary>{says::counted_heading()}</summary>
                <p>{say(together)}</p>
                <Facts rows=counted />
            </details>
            <Working steps units />
            <CodeSections rows=sections />
            <Cautions lines=derived(cautions) />
        </section>
    }
}
