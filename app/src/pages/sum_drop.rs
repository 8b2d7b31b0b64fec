//! Quick sum: what a run loses at each load, the longest run of a wire, the smallest wire for a run.

use crate::markup::{For, view};
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::drop::{
    DropAnswer as DropFound, longest_run_of, smallest_for_drop_of, voltage_drop_of,
};
use calc::job::sums::{DemandUnit, DropLoadEntry, DropMethod, DropSum, DropSystem, DropWant, Sums};
use calc::job::{CodeEdition, StretchEntry, Typed, Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::conductor::{Construction, Metal, Size};
use calc::wiring::tables::BRANCH_DROP_PERCENT;
use calc::wiring::voltage_drop::{DropPoint, DropRefusal, LongestRun, SmallestForDrop};
use calc::working::Step;
use leptos::prelude::*;

use super::sum_fields::{
    Shown, Spot, add, choice, coded, edition_field, field, label, numbered, options, pick,
    size_spot, sizes, take_out, typed,
};
use super::sums::{OpenSums, SumFoot};
use crate::answer::{Cautions, CodeSections, Facts, Notices, RestsOn, Working};
use crate::entry::ChoiceOption;
use crate::pictures::drop_plot::{DropContent, DropLine};
use crate::pictures::{DropPlot, Figure};
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::PageHeading;
use crate::words::wiring::{self as words, drop as says, rules};

/// What the sum answers, whichever is wanted.
#[derive(Clone, Debug, PartialEq)]
enum Answer {
    Drop(Box<DropFound>),
    Longest(LongestRun),
    Smallest(SmallestForDrop),
}

impl Answer {
    fn of(sum: &DropSum, edition: CodeEdition) -> Result<Self, AskProblem<DropRefusal>> {
        Ok(match sum.want {
            DropWant::Drop => Self::Drop(Box::new(voltage_drop_of(sum, edition)?)),
            DropWant::Length => Self::Longest(longest_run_of(sum, edition)?),
            DropWant::Size => Self::Smallest(smallest_for_drop_of(sum, edition)?),
        })
    }

    fn steps(&self) -> &[Step] {
        match self {
            Self::Drop(found) => &found.drop.steps,
            Self::Longest(found) => &found.steps,
            Self::Smallest(found) => &found.steps,
        }
    }

    const fn edition(&self) -> CodeEdition {
        match self {
            Self::Drop(found) => found.drop.edition,
            Self::Longest(found) => found.edition,
            Self::Smallest(found) => found.edition,
        }
    }
}

/// Voltage drop.
#[component]
pub fn SumDropPage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let edition = open.part(|sums| sums.code_edition);
    let want = open.part(|sums| sums.voltage_drop.want);
    let entry = open.part(|sums| sums.voltage_drop.clone());
    let asked = memo(move || entry.with(|entry| Answer::of(entry, edition.get())));
    let found = memo(move || asked.with(|asked| asked.as_ref().ok().cloned()));
    let refused = memo(move || {
        asked.with(|asked| match asked {
            Err(AskProblem::Refused(refusal)) => Some(says::refusal(refusal)),
            _ => None,
        })
    });
    let wants = vec![
        ChoiceOption::new(DropWant::Drop.code(), says::want_drop()),
        ChoiceOption::new(DropWant::Length.code(), says::want_longest()),
        ChoiceOption::new(DropWant::Size.code(), says::want_smallest()),
    ];
    view! {
        <PageHeading text=label(says::title()) />
        {choice(open, "drop-want", label(says::want_label()), "", wants, coded!(DropWant::code; voltage_drop.want))}
        <Supply open />
        <When when=move || want.get() != DropWant::Size>
            {pick(
                open,
                "drop-size",
                label(words::size_label()),
                sizes(Size::Awg18, Size::Kcmil500),
                size_spot!(voltage_drop.size),
            )}
        </When>
        {pick(
            open,
            "drop-metal",
            label(words::metal_label()),
            options(|metal: Metal| words::metal(metal).to_owned()),
            coded!(Coded::word; voltage_drop.metal),
        )}
        <When when=move || want.get() != DropWant::Drop>
            {field(
                open,
                "drop-limit",
                label(says::limit_label()),
                fields::DROP_LIMIT,
                Shown::hint(says::limit_hint()),
                typed!(voltage_drop.limit),
            )}
        </When>
        <When when=move || want.get() != DropWant::Length>
            <Stretches open />
        </When>
        <Loads open />
        <details>
            <summary>{says::more_heading()}</summary>
            <div class="stack"><Finer open /></div>
        </details>
        {edition_field(open)}
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::say_more()}</p> }>
            <DropAnswer found units />
        </When>
        <SumFoot open />
    }
}

/// The usual nominal voltage of a system: 120 V single phase from hot to neutral, 208 V three phase from line to line.
const fn usual_volts(system: DropSystem) -> &'static str {
    match system {
        DropSystem::TwoWire | DropSystem::Multiwire => "120",
        DropSystem::ThreePhase => "208",
    }
}

/// Takes another system; a voltage that was left as it is usual for the one before follows.
fn take_system(sums: &mut Sums, code: String) {
    let sum = &mut sums.voltage_drop;
    let as_usual = sum.volts.text == usual_volts(sum.system);
    super::sum_fields::take_code(&mut sum.system, code);
    if as_usual {
        sum.volts = Typed::plain(usual_volts(sum.system));
    }
}

#[component]
fn Supply(open: OpenSums) -> impl IntoView {
    let option = |system: DropSystem, words: &'static str| ChoiceOption::new(system.code(), words);
    let systems = vec![
        option(DropSystem::TwoWire, says::system_two_wire()),
        option(DropSystem::Multiwire, says::system_multiwire()),
        option(DropSystem::ThreePhase, says::system_three_phase()),
    ];
    let spot = Spot::new(
        |sums| sums.voltage_drop.system.code().to_owned(),
        take_system,
    );
    view! {
        {pick(open, "drop-system", label(says::system_label()), systems, spot)}
        {field(
            open,
            "drop-volts",
            label(says::volts_label()),
            fields::VOLTS,
            Shown::hint(says::volts_hint()),
            typed!(voltage_drop.volts),
        )}
    }
}

#[component]
fn Stretches(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.voltage_drop
            .stretches
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    view! {
        <section class="sheet">
            <h2>{says::stretches_heading()}</h2>
            <ul class="layers">
                <For each=move || ids.get() key=|id| *id let:id>
                    <li>
                        {field(
                            open,
                            format!("stretch-{id}"),
                            numbered(ids, id, says::stretch_length),
                            fields::RUN,
                            Shown::default(),
                            typed!(voltage_drop.stretches[id].length),
                        )}
                        {take_out(
                            open,
                            numbered(ids, id, says::stretch_name),
                            move |sums| sums.voltage_drop.stretches.retain(|row| row.id != id),
                        )}
                    </li>
                </For>
            </ul>
            {add(
                open,
                says::add_stretch(),
                |sums, id| sums.voltage_drop.stretches.push(StretchEntry { id, ..StretchEntry::default() }),
            )}
        </section>
    }
}

/// The place of a load's stretch: the far end where it names none.
fn stretch_spot(id: u32) -> Spot<String> {
    Spot::new(
        move |sums| {
            let row = sums.voltage_drop.loads.iter().find(|row| row.id == id);
            row.and_then(|row| row.stretch)
                .map_or_else(String::new, |stretch| stretch.to_string())
        },
        move |sums, code: String| {
            if let Some(row) = sums.voltage_drop.loads.iter_mut().find(|row| row.id == id) {
                row.stretch = code.parse().ok();
            }
        },
    )
}

#[component]
fn Loads(open: OpenSums) -> impl IntoView {
    let ids = open.part(|sums| {
        sums.voltage_drop
            .loads
            .iter()
            .map(|row| row.id)
            .collect::<Vec<_>>()
    });
    let stretches = open.part(|sums| {
        let sum = &sums.voltage_drop;
        // Only the drop at each load asks where the loads are.
        if sum.want == DropWant::Drop && sum.stretches.len() > 1 {
            sum.stretches.iter().map(|row| row.id).collect::<Vec<_>>()
        } else {
            Vec::new()
        }
    });
    let legs = open.part(|sums| sums.voltage_drop.system == DropSystem::Multiwire);
    let row = move |id: u32| {
        let unit = open.part(move |sums| {
            let row = sums.voltage_drop.loads.iter().find(|row| row.id == id);
            row.map(|row| row.unit).unwrap_or_default()
        });
        let option = |unit: DemandUnit, words: &'static str| ChoiceOption::new(unit.code(), words);
        let units = vec![
            option(DemandUnit::Amps, says::in_amps()),
            option(DemandUnit::Watts, says::in_watts()),
            option(DemandUnit::Ohms, says::in_ohms()),
        ];
        let amount = move || {
            field(
                open,
                format!("load-{id}"),
                numbered(ids, id, says::load_label),
                match unit.get() {
                    DemandUnit::Amps => fields::LOAD_AMPS,
                    DemandUnit::Watts => fields::LOAD_WATTS,
                    DemandUnit::Ohms => fields::LOAD_OHMS,
                },
                Shown::default(),
                typed!(voltage_drop.loads[id].amount),
            )
        };
        let at = move || {
            let mut places = vec![ChoiceOption::new("", says::at_far_end())];
            places.extend(
                stretches
                    .get()
                    .iter()
                    .enumerate()
                    .map(|(n, id)| ChoiceOption::new(id.to_string(), says::at_stretch(n + 1))),
            );
            pick(
                open,
                format!("load-at-{id}"),
                numbered(ids, id, says::load_at),
                places,
                stretch_spot(id),
            )
        };
        view! {
            <li>
                <div class="pair level">
                    {draw(amount)}
                    {pick(
                        open,
                        format!("load-unit-{id}"),
                        numbered(ids, id, says::load_in),
                        units,
                        coded!(DemandUnit::code; voltage_drop.loads[id].unit),
                    )}
                    <When when=legs>
                        {pick(
                            open,
                            format!("load-across-{id}"),
                            numbered(ids, id, says::load_across),
                            options(|across| says::across(across).to_owned()),
                            coded!(Coded::word; voltage_drop.loads[id].across),
                        )}
                    </When>
                    <When when=move || !stretches.read().is_empty()>{draw(at)}</When>
                </div>
                {take_out(
                    open,
                    numbered(ids, id, says::load_name),
                    move |sums| sums.voltage_drop.loads.retain(|row| row.id != id),
                )}
            </li>
        }
        .into_any()
    };
    view! {
        <section class="sheet">
            <h2>{says::loads_heading()}</h2>
            <ul class="rows">
                <For each=move || ids.get() key=|id| *id let:id>{row(id)}</For>
            </ul>
            {add(
                open,
                says::add_load(),
                |sums, id| sums.voltage_drop.loads.push(DropLoadEntry { id, ..DropLoadEntry::default() }),
            )}
        </section>
    }
}

/// What is usually left as it is.
#[component]
fn Finer(open: OpenSums) -> impl IntoView {
    let want = open.part(|sums| sums.voltage_drop.want);
    let method = open.part(|sums| sums.voltage_drop.method);
    let option = |method: DropMethod, words: &'static str| ChoiceOption::new(method.code(), words);
    let methods = vec![
        option(DropMethod::Resistance, says::method_dc()),
        option(DropMethod::Impedance, says::method_ac()),
        option(DropMethod::Printed085, says::method_printed()),
    ];
    let construction = move || {
        let option = |of: Construction| ChoiceOption::new(of.word(), words::construction(of));
        let mut kinds = vec![ChoiceOption::new("", says::construction_usual())];
        kinds.extend([Construction::Solid, Construction::Stranded].map(option));
        let spot = Spot::new(
            |sums| {
                sums.voltage_drop
                    .construction
                    .map_or("", Coded::word)
                    .to_owned()
            },
            |sums, code: String| {
                let mut all = Construction::CODED.iter();
                let named = all.find(|(_, known)| *known == code);
                sums.voltage_drop.construction = named.map(|(construction, _)| *construction);
            },
        );
        pick(
            open,
            "drop-construction",
            label(says::construction_label()),
            kinds,
            spot,
        )
    };
    let conduit = move || {
        pick(
            open,
            "drop-conduit",
            label(says::conduit_label()),
            options(|conduit| words::conduit(conduit).to_owned()),
            coded!(Coded::word; voltage_drop.conduit),
        )
    };
    let power_factor = move || {
        field(
            open,
            "power-factor",
            label(says::power_factor_label()),
            fields::POWER_FACTOR,
            Shown::hint(says::power_factor_hint()),
            typed!(voltage_drop.power_factor),
        )
    };
    let by_method = move || match method.get() {
        DropMethod::Resistance => construction(),
        DropMethod::Impedance => view! { {conduit()} {power_factor()} }.into_any(),
        DropMethod::Printed085 => conduit(),
    };
    view! {
        {pick(open, "drop-method", label(says::method_label()), methods, coded!(DropMethod::code; voltage_drop.method))}
        {draw(by_method)}
        {field(
            open,
            "conductor-temperature",
            label(says::conductor_label()),
            fields::CONDUCTOR_TEMPERATURE,
            Shown::optional(says::conductor_hint()),
            typed!(voltage_drop.conductor_temperature),
        )}
        {field(
            open,
            "parallel",
            label(says::parallel_label()),
            fields::PARALLEL,
            Shown::optional(""),
            typed!(voltage_drop.parallel),
        )}
        <When when=move || want.get() == DropWant::Drop>
            {field(
                open,
                "source-volts",
                label(says::source_volts_label()),
                fields::VOLTS,
                Shown::optional(says::source_volts_hint()),
                typed!(voltage_drop.source_volts),
            )}
            {field(
                open,
                "feeder-drop",
                label(says::feeder_label()),
                fields::DROP_PERCENT,
                Shown::optional(""),
                typed!(voltage_drop.feeder_drop),
            )}
        </When>
    }
}

/// Feet or meters of the longest run, never rounded up: past it the limit is not kept.
fn longest_number(length_ft: f64, units: Units) -> String {
    let length = words::length_number(length_ft, units);
    fixed((length * 10.0 + 1e-9).floor() / 10.0, 1)
}

fn name_of(answer: &Answer) -> &'static str {
    match answer {
        Answer::Drop(_) => says::lost(),
        Answer::Longest(_) => says::longest(),
        Answer::Smallest(_) => says::smallest(),
    }
}

fn figure_of(answer: &Answer, units: Units) -> (String, &'static str) {
    match answer {
        Answer::Drop(found) => (says::volts(found.drop.worst_v), "V"),
        Answer::Longest(found) => (
            longest_number(found.length_ft, units),
            words::length_unit(units),
        ),
        Answer::Smallest(found) => (
            found.size.text().to_owned(),
            if found.size.is_kcmil() {
                "kcmil"
            } else {
                "AWG"
            },
        ),
    }
}

fn rests_of(answer: &Answer) -> String {
    let sentence = match answer {
        Answer::Drop(found) => {
            let rests = says::rests_drop(says::percent(found.drop.worst_percent));
            if found.drop.within_branch {
                format!("{rests} {}", says::keeps_branch())
            } else {
                rests
            }
        }
        Answer::Longest(found) => says::rests_longest(says::volts(found.drop_v)),
        Answer::Smallest(found) => {
            says::rests_smallest(says::volts(found.drop_v), says::percent(found.drop_percent))
        }
    };
    format!(
        "{sentence} {}",
        words::by_edition(words::edition(answer.edition()))
    )
}

fn notices_of(answer: &Answer) -> Vec<String> {
    match answer {
        Answer::Drop(found) => found.drop.findings.iter().map(says::finding).collect(),
        Answer::Longest(_) | Answer::Smallest(_) => Vec::new(),
    }
}

fn facts_of(answer: &Answer) -> Vec<(String, String)> {
    let row = |name: &str, figure: String| (name.to_owned(), figure);
    let ohms = |ohm: f64| format!("{} Ω", fixed(ohm, 4));
    match answer {
        Answer::Drop(found) => {
            let mut rows = vec![
                row(says::row_impedance(), ohms(found.drop.ohm_per_kft)),
                row(
                    says::row_heat(),
                    format!("{} W", fixed(found.drop.lost_w, 1)),
                ),
            ];
            if found.run.feeder_percent > 0.0 {
                rows.push(row(
                    says::row_total(),
                    format!("{} %", says::percent(found.drop.total_percent)),
                ));
            }
            rows
        }
        Answer::Longest(_) => Vec::new(),
        Answer::Smallest(found) => vec![
            row(says::row_most(), ohms(found.max_ohm_per_kft)),
            row(says::row_impedance(), ohms(found.ohm_per_kft)),
        ],
    }
}

fn step_up_of(answer: &Answer) -> String {
    match answer {
        Answer::Drop(found) => found.step_up.map_or_else(String::new, |up| {
            says::step_up_says(
                words::size(up.next),
                fixed(up.saved_w, 1),
                says::percent(up.next_percent),
            )
        }),
        Answer::Longest(_) | Answer::Smallest(_) => String::new(),
    }
}

/// The plot of a drop; blank for what has none.
fn plot_of(answer: &Answer, units: Units) -> DropContent {
    let Answer::Drop(found) = answer else {
        return DropContent::default();
    };
    let nominal_v = found.run.system.nominal();
    let limit_v = nominal_v * (1.0 - BRANCH_DROP_PERCENT / 100.0);
    let profile = &found.profile;
    let leg_b: Vec<(f64, f64)> = profile
        .iter()
        .filter_map(|p| Some((p.at_ft, p.volts_b?)))
        .collect();
    let letter = |letter: &str| {
        if leg_b.is_empty() {
            String::new()
        } else {
            letter.to_owned()
        }
    };
    let mut lines = vec![DropLine {
        letter: letter("A"),
        points: profile.iter().map(|p| (p.at_ft, p.volts_a)).collect(),
    }];
    if !leg_b.is_empty() {
        lines.push(DropLine {
            letter: letter("B"),
            points: leg_b,
        });
    }
    DropContent {
        lines,
        nominal_v,
        nominal: format!("{} V", fixed(nominal_v, 1)),
        limit_v,
        limit: says::picture_limit(says::volts(limit_v)),
        length: profile
            .last()
            .map_or_else(String::new, |end| words::length(end.at_ft, units)),
    }
}

fn plot_says(answer: &Answer, units: Units) -> String {
    let Answer::Drop(found) = answer else {
        return String::new();
    };
    let (Some(first), Some(last)) = (found.profile.first(), found.profile.last()) else {
        return String::new();
    };
    says::picture_says(
        says::volts(first.volts_a),
        says::volts(last.volts_a),
        words::length(last.at_ft, units),
    )
}

fn point_row(point: &DropPoint, units: Units) -> AnyView {
    let at = words::length(point.at_ft, units);
    let cells = match (&point.b, point.neutral_a) {
        (Some(b), neutral_a) => vec![
            says::volts(point.a.volts),
            says::volts(b.volts),
            neutral_a.map_or_else(String::new, |a| fixed(a, 2)),
        ],
        (None, _) => vec![
            says::volts(point.a.volts),
            says::volts(point.a.drop_v),
            says::percent(point.a.drop_percent),
        ],
    };
    let cells = cells
        .into_iter()
        .map(|cell| view! { <td class="num">{cell}</td> })
        .collect_view();
    view! { <tr><th scope="row">{at}</th>{cells}</tr> }.into_any()
}

fn point_table(answer: &Answer, units: Units) -> Option<AnyView> {
    let Answer::Drop(found) = answer else {
        return None;
    };
    let points = &found.drop.points;
    let heads = if points.iter().any(|point| point.b.is_some()) {
        [says::head_leg_a(), says::head_leg_b(), says::head_neutral()]
    } else {
        [says::head_left(), says::head_lost(), "%"]
    };
    let heads = heads
        .map(|head| view! { <th class="num" scope="col">{head}</th> })
        .into_iter()
        .collect_view();
    let rows: Vec<AnyView> = points.iter().map(|point| point_row(point, units)).collect();
    Some(
        view! {
            <table>
                <caption>{says::points_caption()}</caption>
                <thead><tr><th scope="col">{says::head_at()}</th>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        }
        .into_any(),
    )
}

#[component]
fn DropAnswer(found: Memo<Option<Answer>>, units: Memo<Units>) -> impl IntoView {
    let text = move |of: fn(&Answer) -> String| {
        derived(move || found.with(|found| found.as_ref().map(of).unwrap_or_default()))
    };
    let name = move || found.with(|found| found.as_ref().map_or("", name_of));
    let value = derived(move || {
        let units = units.get();
        found.with(|found| {
            found
                .as_ref()
                .map(|found| figure_of(found, units).0)
                .unwrap_or_default()
        })
    });
    let unit = derived(move || {
        let units = units.get();
        found.with(|found| {
            found
                .as_ref()
                .map_or("", |found| figure_of(found, units).1)
                .to_owned()
        })
    });
    let notices =
        derived(move || found.with(|found| found.as_ref().map(notices_of).unwrap_or_default()));
    let rows =
        derived(move || found.with(|found| found.as_ref().map(facts_of).unwrap_or_default()));
    let content = memo(move || {
        let units = units.get();
        found.with(|found| {
            found
                .as_ref()
                .map(|found| plot_of(found, units))
                .unwrap_or_default()
        })
    });
    let picture_says = derived(move || {
        let units = units.get();
        found.with(|found| {
            found
                .as_ref()
                .map(|found| plot_says(found, units))
                .unwrap_or_default()
        })
    });
    let table = move || {
        let units = units.get();
        found.with(|found| found.as_ref().and_then(|found| point_table(found, units)))
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
                rules::sections(found.steps(), &[], found.edition())
            })
        })
    });
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{say(name)}</p>
                <Figure value unit />
                <RestsOn text=text(rests_of) />
                <Notices lines=notices />
            </div>
        </section>
        <When when=move || !content.read().lines.is_empty()>
            <figure class="picture">
                <DropPlot content says=picture_says />
                <figcaption>{says::picture_caption()}</figcaption>
            </figure>
        </When>
        <section class="sheet">
            {draw(table)}
            <Facts rows />
            <p>{text(step_up_of)}</p>
            <Working steps units />
            <CodeSections rows=sections />
            <Cautions lines=Signal::stored(words::cautions()) />
        </section>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_longest_run_is_never_rounded_up() {
        // 58.29 ft, and 58.29 x 0.3048 = 17.767 m.
        assert_eq!(longest_number(58.29, Units::FeetInches), "58.2");
        assert_eq!(longest_number(58.29, Units::Metric), "17.7");
        assert_eq!(longest_number(100.0, Units::FeetInches), "100");
    }

    #[test]
    fn a_usual_voltage_follows_its_system() {
        let mut sums = Sums::default();
        take_system(&mut sums, DropSystem::ThreePhase.code().to_owned());
        assert_eq!(sums.voltage_drop.volts.text, "208");
        sums.voltage_drop.volts = Typed::plain("480");
        take_system(&mut sums, DropSystem::TwoWire.code().to_owned());
        assert_eq!(sums.voltage_drop.volts.text, "480");
    }
}
