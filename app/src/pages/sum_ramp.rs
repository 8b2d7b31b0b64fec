//! Quick sum: any two of rise, run and slope give the third.

use crate::markup::view;
use calc::floor::level_change::{classify, classify_slope};
use calc::floor::ramp::{Incline, Known, incline};
use calc::job::questions::sums::ramp_known;
use calc::job::sums::{RampSum, RampWant};
use calc::job::{Job, Typed, Units, fields};
use calc::quantity::{Slope, SlopeUnit, fixed};
use leptos::prelude::*;

use super::doorways::published::{slope_table, step_table};
use super::sums::{KeepIntoJob, OpenSums, SumFoot, add_note};
use crate::answer::{Cautions, Facts, RestsOn, Working};
use crate::entry::{Choice, ChoiceOption, Measured};
use crate::paths::Stage;
use crate::pictures::ramp::{RampContent, exaggeration};
use crate::pictures::{Figure, LengthFigure, RampProfile, at_least_in, length_text};
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::PageHeading;
use crate::words::{doorways as door_words, sums as words};

/// Rise, run and slope.
#[component]
pub fn SumRampPage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let want = open.part(|sums| sums.ramp.want);
    let entry = open.part(|sums| sums.ramp.clone());
    let known = memo(move || entry.with(ramp_known).ok());
    let answer = memo(move || known.get().map(incline));
    let found = memo(move || answer.get().and_then(Result::ok));
    let refused = memo(move || match answer.get() {
        Some(Err(refusal)) => Some(door_words::ramp_refusal(&refusal, units.get())),
        _ => None,
    });
    let field = move |id: &'static str,
                      label: &'static str,
                      hint: &'static str,
                      field: fields::Field,
                      get: fn(&mut RampSum) -> &mut Typed| {
        view! {
            <Measured
                id
                label=Signal::stored(label.to_owned())
                hint=Signal::stored(hint.to_owned())
                field
                units
                value=open.part(move |sums| get(&mut sums.ramp.clone()).clone())
                on_typed=Callback::new(move |typed| open.change(|sums| *get(&mut sums.ramp) = typed))
            />
        }
    };
    let rise = move || {
        field(
            "rise",
            words::rise_label(),
            words::rise_hint(),
            fields::RISE,
            |r| &mut r.rise,
        )
    };
    let run = move || {
        field(
            "run",
            words::run_label(),
            words::run_hint(),
            fields::RAMP_LENGTH,
            |r| &mut r.run,
        )
    };
    let slope = move || {
        field(
            "slope",
            words::slope_label(),
            words::slope_hint(),
            fields::RAMP_SLOPE,
            |r| &mut r.slope,
        )
    };
    let asked = move || match want.get() {
        RampWant::Run => view! { {rise()} {slope()} }.into_any(),
        RampWant::Slope => view! { {rise()} {run()} }.into_any(),
        RampWant::Rise => view! { {run()} {slope()} }.into_any(),
    };
    let put = Callback::new(move |(mut job, room): (Job, u32)| {
        let id = job.fresh_id();
        let sum = entry.get_untracked();
        if let Some(room) = job.room_mut(room) {
            sum.keep(room, id, words::ramp_name());
        }
        if let Some(found) = found.get_untracked() {
            let text = |inches: f64| length_text(inches, units.get_untracked());
            add_note(
                &mut job,
                &words::note_ramp(
                    text(found.rise_in),
                    text(run_shown_in(
                        &found,
                        want.get_untracked(),
                        units.get_untracked(),
                    )),
                    slope_words(found.slope),
                ),
            );
        }
        job
    });
    view! {
        <PageHeading text=Signal::stored(words::ramp_title().to_owned()) />
        <Choice
            id="want".to_owned()
            label=Signal::stored(words::want_label().to_owned())
            options=Signal::stored(
                vec![
                    ChoiceOption::new("run", words::want_run()),
                    ChoiceOption::new("slope", words::want_slope()),
                    ChoiceOption::new("rise", words::want_rise()),
                ],
            )
            value=derived(move || {
                match want.get() {
                    RampWant::Run => "run",
                    RampWant::Slope => "slope",
                    RampWant::Rise => "rise",
                }
                    .to_owned()
            })
            on_pick=Callback::new(move |code: String| {
                open.change(|sums| {
                    sums.ramp.want = match code.as_str() {
                        "slope" => RampWant::Slope,
                        "rise" => RampWant::Rise,
                        _ => RampWant::Run,
                    };
                });
            })
        />
        <div class="pair">{draw(asked)}</div>
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::enter_both()}</p> }>
            <RampAnswer known found units />
        </When>
        <KeepIntoJob units hint=words::keep_ramp_hint() stage=Stage::Room put />
        <SumFoot open />
    }
}

/// A slope as it is said in a sentence.
fn slope_words(slope: f64) -> String {
    if slope > 0.0 {
        door_words::one_to(slope)
    } else {
        words::level_word().to_owned()
    }
}

/// The run as it is shown, inches: one that was asked for is at least so long, as at a doorway.
fn run_shown_in(found: &Incline, want: RampWant, units: Units) -> f64 {
    match want {
        RampWant::Run => at_least_in(found.run_in, units),
        RampWant::Rise | RampWant::Slope => found.run_in,
    }
}

#[component]
fn RampAnswer(
    known: Memo<Option<Known>>,
    found: Memo<Option<Incline>>,
    units: Memo<Units>,
) -> impl IntoView {
    let asked = memo(move || match known.get() {
        Some(Known::RiseAndRun { .. }) => RampWant::Slope,
        Some(Known::RunAndSlope { .. }) => RampWant::Rise,
        Some(Known::RiseAndSlope { .. }) | None => RampWant::Run,
    });
    let inches = derived(move || {
        found.with(|found| {
            found.map_or(0.0, |found| {
                if asked.get() == RampWant::Rise {
                    found.rise_in
                } else {
                    run_shown_in(&found, asked.get(), units.get())
                }
            })
        })
    });
    let lead = move || {
        match asked.get() {
        RampWant::Slope => {
            let value = derived(move || found.get().map(|found| slope_words(found.slope)).unwrap_or_default());
            view! { <p class="figure-name">{words::answer_slope()}</p> <Figure value /> }.into_any()
        }
        RampWant::Rise => {
            view! { <p class="figure-name">{words::answer_rise()}</p> <LengthFigure inches units /> }.into_any()
        }
        RampWant::Run => {
            view! { <p class="figure-name">{words::answer_run()}</p> <LengthFigure inches units /> }.into_any()
        }
    }
    };
    let rests = derived(move || {
        let text = |inches: f64| length_text(inches, units.get());
        match known.get() {
            Some(Known::RiseAndRun { rise_in, run_in }) => words::from_two(
                words::a_rise_of(text(rise_in)),
                words::a_run_of(text(run_in)),
            ),
            Some(Known::RiseAndSlope { rise_in, slope }) => words::from_two(
                words::a_rise_of(text(rise_in)),
                words::a_slope_of(slope_words(slope)),
            ),
            Some(Known::RunAndSlope { run_in, slope }) => words::from_two(
                words::a_run_of(text(run_in)),
                words::a_slope_of(slope_words(slope)),
            ),
            None => String::new(),
        }
    });
    let content = memo(move || {
        found
            .get()
            .map_or_else(RampContent::default, |found| RampContent {
                rise_in: found.rise_in,
                run_in: found.run_in,
                rise: length_text(found.rise_in, units.get()),
                run: length_text(run_shown_in(&found, asked.get(), units.get()), units.get()),
                slope: slope_words(found.slope),
                ..RampContent::default()
            })
    });
    let says = derived(move || {
        content.with(|c| door_words::ramp_says(c.rise.clone(), c.run.clone(), c.slope.clone()))
    });
    let caption = move || {
        let times = content.with(|c| exaggeration(c.rise_in, c.run_in));
        if times > 1.0 {
            door_words::ramp_caption_tall(fixed(times, 0))
        } else {
            door_words::ramp_caption().to_owned()
        }
    };
    let rows = derived(move || {
        found
            .get()
            .map(|found| ways(&found, units.get()))
            .unwrap_or_default()
    });
    let steps = derived(move || {
        found
            .get()
            .zip(known.get())
            .map(|(f, k)| f.working(k))
            .unwrap_or_default()
    });
    let slopes = move || {
        found
            .get()
            .and_then(|found| classify_slope(found.slope).ok())
            .map(|held| slope_table(&held))
    };
    let step = memo(move || found.get().and_then(|found| classify(found.rise_in).ok()));
    let step_part = move || {
        step.get().map(|change| {
            view! {
                <h3>{words::rise_as_step()}</h3>
                <p>{door_words::treatment(change.treatment, units.get())}</p>
                {step_table(&change, false, units.get())}
            }
        })
    };
    view! {
        <section class="sheet" role="status">
            <div class="answer">{draw(lead)} <RestsOn text=rests /></div>
        </section>
        <figure class="picture">
            <RampProfile content says />
            <figcaption>{say(caption)}</figcaption>
        </figure>
        <section class="sheet">
            <h2>{words::same_slope()}</h2>
            <Facts rows />
            <Working steps units />
            <details>
                <summary>{door_words::published_heading()}</summary>
                <p>{door_words::reference_only()}</p>
                {draw(slopes)}
                {draw(step_part)}
            </details>
            <Cautions lines=Signal::stored(vec![words::caution_ramp().to_owned()]) />
        </section>
    }
}

/// A slope in every way the trade says it.
fn ways(found: &Incline, units: Units) -> Vec<(String, String)> {
    let row = |name: &str, figure: String| (name.to_owned(), figure);
    let per_m = Slope::from_ratio(found.slope).in_unit(SlopeUnit::MmPerM);
    let mut rows = vec![
        row(words::one_to(), slope_words(found.slope)),
        row(words::per_ft(), fixed(found.in_per_ft, 3)),
        row(words::per_4_ft(), fixed(found.in_per_4ft, 3)),
        row(words::percent(), fixed(found.percent, 2)),
        row(words::degrees(), fixed(found.degrees, 2)),
        row(words::along(), length_text(found.surface_in, units)),
    ];
    if let Some(per_m) = per_m {
        rows.insert(3, row(words::mm_per_m(), fixed(per_m, 1)));
    }
    rows
}
