//! The ramp at an opening: at a slope or in a length, drawn, with its wedge and bags.

use crate::markup::view;
use calc::floor::doorway::Doorway;
use calc::floor::level_change::{ROUNDING_IN, Treatment, classify, classify_slope};
use calc::floor::mixing::{Bags, bags};
use calc::floor::ramp::{Fit, LowSide, Ramp, RampRefusal, ramp};
use calc::job::questions::doorway::ramp_ask;
use calc::job::questions::pour::bag_ask;
use calc::job::{Opening, Typed, Units, fields};
use calc::quantity::{EntryRefusal, Volume, VolumeUnit, fixed};
use leptos::prelude::*;

use super::published::slope_table;
use crate::answer::{Facts, RestsOn, Working};
use crate::entry::Measured;
use crate::open_job::OpenRoom;
use crate::pictures::ramp::{RampContent, exaggeration};
use crate::pictures::{LengthFigure, RampProfile, at_least_in, length_text, thickness_text};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::{common, doorways as words};
use crate::work::Work;

/// The ramp's entries and its answer; nothing where both floors meet.
#[component]
pub fn RampPart(
    /// The room.
    room: OpenRoom,
    /// Its answers.
    work: Work,
    /// The opening's id.
    id: u32,
    /// The floors there.
    known: Memo<Option<Doorway>>,
) -> impl IntoView {
    let units = room.open.units();
    let entries = room.part(move |r| r.opening(id).cloned());
    let width = memo(move || {
        work.openings.with(|(placed, _)| {
            placed
                .iter()
                .find(|p| p.id == id)
                .map(|p| p.span.span.width_in)
        })
    });
    let ask = memo(move || {
        let known = known.get()?;
        entries.with(|o| {
            o.as_ref()
                .map(|o| ramp_ask(o, width.get().unwrap_or(0.0), &known))
        })
    });
    let answer = memo(move || ask.get().and_then(Result::ok).map(ramp));
    // A blank slope is no refusal of its field, but without a length there is no ramp.
    let unasked = memo(move || {
        ask.with(|ask| match ask {
            Some(Err(problems)) => problems
                .iter()
                .any(|p| p.name == "ramp_slope" && p.refusal == EntryRefusal::Blank),
            _ => false,
        })
    });
    let built = memo(move || {
        answer
            .get()
            .and_then(Result::ok)
            .filter(|ramp| ramp.low_side != LowSide::Neither)
    });
    let pour = room.part(|r| r.pour.clone());
    let wedge_bags = memo(move || {
        let ramp = built.get()?;
        pour.with(|pour| bag_ask(pour, ramp.wedge_ft3()))
            .ok()
            .and_then(|ask| bags(&ask).ok())
    });
    let by_length =
        memo(move || entries.with(|o| o.as_ref().is_some_and(|o| !o.ramp_length.is_blank())));
    // What only the whole ramp can see stands beside the field that governs it.
    let refused = memo(move || match answer.get() {
        Some(Err(refusal)) => Some((refusal, words::ramp_refusal(&refusal, units.get()))),
        _ => None,
    });
    let differ = memo(move || {
        refused
            .get()
            .filter(|(refusal, _)| matches!(refusal, RampRefusal::StepsDiffer { .. }))
            .map(|(_, text)| text)
    });
    let beside = move |length: bool| {
        derived(move || {
            if unasked.get() {
                (!length).then(|| words::missing("ramp_slope").to_owned())
            } else if differ.read().is_some() || by_length.get() != length {
                None
            } else {
                refused.get().map(|(_, text)| text)
            }
        })
    };
    let part = move |get: fn(&Opening) -> Typed| {
        room.part(move |r| r.opening(id).map(get).unwrap_or_default())
    };
    let change = move |change: &dyn Fn(&mut Opening)| {
        room.change(|r| {
            if let Some(opening) = r.opening_mut(id) {
                change(opening);
            }
        });
    };
    let wanted =
        memo(move || known.with(|k| k.as_ref().is_some_and(|k| k.greatest_step_in > ROUNDING_IN)));
    // An upright edge that will do needs no ramp; one can still be looked at.
    let due = memo(move || {
        let step_in =
            known.with(|known| known.as_ref().map_or(0.0, |known| known.greatest_step_in));
        !matches!(
            classify(step_in).map(|change| change.treatment),
            Ok(Treatment::Flush | Treatment::Plain)
        )
    });
    let content = memo(move || {
        built
            .get()
            .map(|ramp| profile(&ramp, units.get()))
            .unwrap_or_default()
    });
    let says = derived(move || {
        content.with(|c| words::ramp_says(c.rise.clone(), c.run.clone(), c.slope.clone()))
    });
    let caption = move || {
        let times = content.with(|c| exaggeration(c.rise_in, c.run_in));
        let low = built.get().map(|ramp| match ramp.low_side {
            LowSide::Here => words::ramp_lies_here(),
            LowSide::Beyond => words::ramp_lies_beyond(),
            LowSide::Neither => words::ramp_none(),
        });
        let scale = if times > 1.0 {
            words::ramp_caption_tall(fixed(times, 0))
        } else {
            words::ramp_caption().to_owned()
        };
        view! { {scale} " " {low} }
    };
    let rests = derived(move || {
        built
            .get()
            .map(|ramp| match ramp.entry.fit {
                Fit::Slope(slope) => words::ramp_by_slope(words::one_to(slope)),
                Fit::Length(length_in) => {
                    words::ramp_by_length(length_text(length_in, units.get()))
                }
            })
            .unwrap_or_default()
    });
    let rows = derived(move || {
        built
            .get()
            .map(|ramp| rows(&ramp, wedge_bags.get().as_ref(), units.get()))
            .unwrap_or_default()
    });
    let slopes = move || {
        built
            .get()
            .and_then(|ramp| classify_slope(ramp.steepest).ok())
            .map(|held| slope_table(&held))
    };
    let steps = derived(move || {
        let mut steps = built.get().map(|ramp| ramp.working()).unwrap_or_default();
        steps.extend(
            wedge_bags
                .get()
                .iter()
                .flat_map(|bags| bags.working().into_iter().take(2)),
        );
        steps
    });
    view! {
        <When when=move || wanted.get()>
            <details class="ramp" open=move || due.get()>
            <summary>
                {say(move || if due.get() { words::ramp_heading() } else { words::ramp_anyway() })}
            </summary>
            <div class="stack">
            <div class="pair">
                <Measured
                    id=format!("ramp-{id}-slope")
                    label=Signal::stored(words::ramp_slope_label().to_owned())
                    hint=Signal::stored(words::ramp_slope_hint().to_owned())
                    field=fields::RAMP_SLOPE
                    units
                    also=beside(false)
                    value=part(|o| o.ramp_slope.clone())
                    on_typed=Callback::new(move |typed: Typed| change(&|o| o.ramp_slope = typed.clone()))
                />
                <Measured
                    id=format!("ramp-{id}-length")
                    label=Signal::stored(words::ramp_length_label().to_owned())
                    hint=Signal::stored(words::ramp_length_hint().to_owned())
                    field=fields::RAMP_LENGTH
                    units
                    optional=true
                    also=beside(true)
                    value=part(|o| o.ramp_length.clone())
                    on_typed=Callback::new(move |typed: Typed| change(&|o| o.ramp_length = typed.clone()))
                />
            </div>
            <div role="status">
                <When when=move || differ.read().is_some()>
                    <p class="notice look">{differ}</p>
                </When>
            </div>
            <When when=move || built.read().is_some()>
                <div class="answer">
                    <p class="figure-name">{words::ramp_length()}</p>
                    <LengthFigure
                        inches=derived(move || built.get().map_or(0.0, |ramp| shown_run_in(&ramp, ramp.run_in, units.get())))
                        units
                    />
                    <RestsOn text=rests />
                </div>
                <figure class="picture">
                    <RampProfile content says />
                    <figcaption>{draw(caption)}</figcaption>
                </figure>
                <Facts rows />
                <details>
                    <summary>{words::published_heading()}</summary>
                    <p>{words::reference_only()}</p>
                    {draw(slopes)}
                </details>
                <p class="quiet">
                    {say(move || if wedge_bags.read().is_some() { words::wedge_note() } else { words::bags_missing() })}
                </p>
                <Working steps units />
            </When>
            </div>
            </details>
        </When>
    }
}

/// A run as it is shown, inches: one that a slope needs is at least so long, one that was entered is as it is.
fn shown_run_in(ramp: &Ramp, run_in: f64, units: Units) -> f64 {
    match ramp.entry.fit {
        Fit::Slope(_) => at_least_in(run_in, units),
        Fit::Length(_) => run_in,
    }
}

/// The side view: the higher of the two rises over the length it is built to.
fn profile(ramp: &Ramp, units: Units) -> RampContent {
    let rise_in = ramp.rise_left_in.max(ramp.rise_right_in);
    let (low, high) = if ramp.low_side == LowSide::Here {
        (words::this_room(), words::beyond())
    } else {
        (words::beyond(), words::this_room())
    };
    RampContent {
        rise_in,
        run_in: ramp.run_in,
        rise: thickness_text(rise_in, units),
        run: length_text(shown_run_in(ramp, ramp.run_in, units), units),
        slope: words::one_to(ramp.steepest),
        low: low.to_owned(),
        high: high.to_owned(),
    }
}

fn rows(ramp: &Ramp, bags: Option<&Bags>, units: Units) -> Vec<(String, String)> {
    let text = |run_in: f64| length_text(shown_run_in(ramp, run_in, units), units);
    let row = |name: &str, figure: String| (name.to_owned(), figure);
    let mut rows = vec![
        row(words::run_at_left(), text(ramp.run_left_in)),
        row(words::run_at_right(), text(ramp.run_right_in)),
        row(words::slope_built(), words::one_to(ramp.steepest)),
        row(
            words::angle(),
            format!(
                "{}° · {}",
                fixed(ramp.degrees, 2),
                words::in_per_ft(fixed(ramp.in_per_ft, 3))
            ),
        ),
        row(
            words::wedge(),
            match units {
                Units::Metric => Volume::from_in3(ramp.wedge_in3).format(VolumeUnit::Liters, 2),
                Units::FeetInches => format!(
                    "{} · {}",
                    Volume::from_in3(ramp.wedge_in3).format(VolumeUnit::CubicInches, 0),
                    Volume::from_ft3(ramp.wedge_ft3()).format(VolumeUnit::CubicFeet, 3)
                ),
            },
        ),
    ];
    if let Some(bags) = bags {
        let count = if bags.bags == 1 {
            common::one_bag().to_owned()
        } else {
            common::bag_count(u64::from(bags.bags))
        };
        rows.push(row(words::wedge_bags(), count));
    }
    rows
}
