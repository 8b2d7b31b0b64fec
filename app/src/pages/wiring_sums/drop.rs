//! Quick sum: what a run loses at each load, the longest run of a wire, the smallest wire for a run.

use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::drop::{
    DropAnswer as DropFound, longest_run_of, smallest_for_drop_of, voltage_drop_of,
};
use calc::job::sums::{DropWant, Sums};
use calc::job::{CodeEdition, Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::conductor::{Metal, Size};
use calc::wiring::impedance::ImpedanceRefusal;
use calc::wiring::tables::BRANCH_DROP_PERCENT;
use calc::wiring::voltage_drop::{DropRefusal, LongestRun, SmallestForDrop};
use calc::working::Step;
use leptos::prelude::*;

use super::super::sum_fields::{
    Shown, choice, coded, edition_field, few, field, label, options, pick, size_pick, size_spot,
    typed,
};
use super::super::sums::OpenSums;
use super::drop_form::{Finer, Loads, Stretches, supply};
use super::frame::{Outcome, Picture, SumFrame, Table, Told};
use super::keep::{KeepWiring, Keeps};
use crate::markup::view;
use crate::pictures::drop_plot::{DropContent, DropLine};
use crate::reactive::{When, derived};
use crate::words::wiring::{self as words, drop as says, rules};

/// What the sum answers, whichever is wanted.
enum Answer {
    Drop(Box<DropFound>),
    Longest(LongestRun),
    Smallest(SmallestForDrop),
}

impl Answer {
    fn asked(sums: &Sums) -> Result<Self, AskProblem<DropRefusal>> {
        let (sum, edition) = (&sums.voltage_drop, sums.code_edition);
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
    let want = open.part(|sums| sums.voltage_drop.want);
    let wants = few(&[
        (DropWant::Drop.code(), says::want_drop()),
        (DropWant::Length.code(), says::want_longest()),
        (DropWant::Size.code(), says::want_smallest()),
    ]);
    let refused = derived(
        move || match open.sums.with(|sums| Answer::asked(sums).err()) {
            Some(AskProblem::Refused(DropRefusal::Impedance(ImpedanceRefusal::Conductor(
                refusal,
            )))) => Some(words::conductor_refusal(&refusal)),
            _ => None,
        },
    );
    let fields = view! {
        {choice(open, "drop-want", label(says::want_label()), "", wants, coded!(DropWant::code; voltage_drop.want))}
        {supply(open)}
        <When when=move || want.get() != DropWant::Size>
            {size_pick(open, "drop-size", Size::Awg18, size_spot!(voltage_drop.size), refused)}
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
    };
    let keep = view! { <KeepWiring open what=Keeps::Drop /> };
    view! { <SumFrame open title=says::title() of fields=fields.into_any() after=keep.into_any() /> }
}

fn of(sums: &Sums) -> Outcome {
    Outcome::of(Answer::asked(sums), says::refusal, |answer| {
        told(&answer, sums.units)
    })
}

/// Feet or meters of the longest run, never rounded up: past it the limit is not kept.
fn longest_number(length_ft: f64, units: Units) -> String {
    let length = words::length_number(length_ft, units);
    fixed((length * 10.0 + 1e-9).floor() / 10.0, 1)
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

/// What is left at each load.
fn point_table(answer: &Answer, units: Units) -> Option<Table> {
    let Answer::Drop(found) = answer else {
        return None;
    };
    let points = &found.drop.points;
    let heads = if points.iter().any(|point| point.b.is_some()) {
        [says::head_leg_a(), says::head_leg_b(), says::head_neutral()]
    } else {
        [says::head_left(), says::head_lost(), "%"]
    };
    let mut all = vec![(says::head_at(), false)];
    all.extend(heads.map(|head| (head, true)));
    let rows = points.iter().map(|point| {
        let at = words::length(point.at_ft, units);
        match &point.b {
            Some(b) => vec![
                at,
                says::volts(point.a.volts),
                says::volts(b.volts),
                point.neutral_a.map_or_else(String::new, |a| fixed(a, 2)),
            ],
            None => vec![
                at,
                says::volts(point.a.volts),
                says::volts(point.a.drop_v),
                says::percent(point.a.drop_percent),
            ],
        }
    });
    Some(Table {
        caption: says::points_caption(),
        heads: all,
        named_by: 0,
        rows: rows.collect(),
    })
}

fn told(answer: &Answer, units: Units) -> Told {
    let (name, value, unit) = match answer {
        Answer::Drop(found) => (says::lost(), says::volts(found.drop.worst_v), "V"),
        Answer::Longest(found) => (
            says::longest(),
            longest_number(found.length_ft, units),
            words::length_unit(units),
        ),
        Answer::Smallest(found) => (
            says::smallest(),
            found.size.text().to_owned(),
            words::size_unit(found.size),
        ),
    };
    let plot = plot_of(answer, units);
    let picture = if plot.lines.is_empty() {
        Picture::None
    } else {
        Picture::Drop(plot, plot_says(answer, units), says::picture_caption())
    };
    Told {
        name,
        value,
        unit,
        rests: rests_of(answer),
        notices: notices_of(answer),
        picture,
        table: point_table(answer, units),
        facts: facts_of(answer),
        after: step_up_of(answer),
        steps: answer.steps().to_vec(),
        sections: rules::sections(answer.steps(), &[], answer.edition()),
        cautions: words::cautions(),
        ..Told::default()
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
}
