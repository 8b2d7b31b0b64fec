//! Level and flat side by side, always both.

use crate::markup::view;
use crate::reactive::{When, derived, draw, memo, say};
use calc::floor::flatness::{Top, USUAL_EFFORT, Verdict, judge};
use calc::floor::lifts::{LiftShare, lifts};
use calc::floor::pour::{Pour, PourKind};
use calc::job::questions::EntryProblem;
use calc::job::questions::answers::{DamAtOpening, dams as dams_at};
use calc::job::questions::pour as questions;
use calc::job::{PourChoice, Units, fields};
use calc::quantity::{Volume, VolumeUnit};
use leptos::prelude::*;

use super::Plans;
use crate::answer::Working;
use crate::pictures::{Figure, length_text, thickness_text};
use crate::words::pour::{self as words, Naming};
use crate::words::{common, refusals};
use crate::work::opening_letter;

/// A volume in the units in force.
pub fn volume_text(ft3: f64, units: Units) -> String {
    let volume = Volume::from_ft3(ft3);
    match units {
        Units::FeetInches => volume.format(VolumeUnit::CubicFeet, 2),
        Units::Metric => volume.format(VolumeUnit::Liters, 1),
    }
}

/// The two answers, then all their figures in one table.
#[component]
pub fn Compare(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    // Of the pour that is looked at; the other's is a tap away.
    let steps = derived(
        move || match (plans.surface.get(), plans.pour(plans.shown.get())) {
            (Some(surface), Some(pour)) => pour.working(&surface),
            _ => Vec::new(),
        },
    );
    view! {
        <section class="sheet">
            <h2>{words::compare_heading()}</h2>
            <div class="side-by-side">
                <Side plans kind=PourKind::Level />
                <Side plans kind=PourKind::Flat />
            </div>
            <p class="quiet">{common::level()} ": " {words::level_note()} " " {common::flat()} ": " {words::flat_note()}</p>
            <Refusals plans />
            <Table plans />
            <Working steps units />
        </section>
    }
}

/// One answer: bags large, depth and tilt beneath, and the button that takes it.
#[component]
fn Side(plans: Plans, kind: PourKind) -> impl IntoView {
    let units = plans.room.open.units();
    let pour = memo(move || plans.pour(kind));
    let bags = memo(move || plans.bags(kind).and_then(Result::ok).map(|b| b.bags));
    let choice = plans.room.part(|r| r.pour.choice);
    let mine = if kind == PourKind::Level {
        PourChoice::Level
    } else {
        PourChoice::Flat
    };
    let taken = memo(move || choice.get() == mine);
    let take = move |_| {
        plans.looked_at.set(None);
        plans.room.change(|r| r.pour.choice = mine);
    };
    view! {
        <div class:taken=move || taken.get()>
            <h3>{words::kind(kind)}</h3>
            <When
                when=move || pour.read().is_some()
                fallback=|| view! { <p class="quiet">{words::not_possible()}</p> }
            >
                <Figure
                    value=derived(move || bags.get().map_or_else(|| "–".to_owned(), |b| b.to_string()))
                    unit=Signal::stored(common::unit_bags().to_owned())
                />
                {move || {
                    pour.get()
                        .map(|p| {
                            let tilt = if kind == PourKind::Level {
                                words::leans_not().to_owned()
                            } else {
                                words::leans(words::tilt(p.tilt_in_per_4ft, units.get()))
                            };
                            view! {
                                <p>{volume_text(p.volume_ft3, units.get())}</p>
                                <p>{words::deepest(length_text(p.greatest_depth_in, units.get()))}</p>
                                <p>{tilt}</p>
                            }
                        })
                }}
                <button
                    type="button"
                    class="button"
                    class:main=move || taken.get()
                    aria-pressed=move || taken.get().to_string()
                    on:click=take
                >
                    {move || match (taken.get(), kind) {
                        (true, _) => words::taken(),
                        (false, PourKind::Level) => words::take_level(),
                        (false, PourKind::Flat) => words::take_flat(),
                    }}
                </button>
            </When>
        </div>
    }
}

/// Why one of them can't be had.
#[component]
fn Refusals(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let said = memo(move || {
        [PourKind::Level, PourKind::Flat]
            .into_iter()
            .filter_map(|kind| match plans.plan(kind) {
                Some(Err(refusal)) => Some(format!(
                    "{}: {}",
                    words::kind(kind),
                    words::pour_refusal(&refusal, &plans, units.get())
                )),
                _ => None,
            })
            .collect::<Vec<_>>()
    });
    // Each by what it is for: its field may be a long way down.
    let missing = memo(move || {
        plans.ask.with(|ask| {
            let problems = ask.as_ref().err();
            problems.map_or_else(Vec::new, |all| all.iter().map(|p| told(plans, p)).collect())
        })
    });
    view! {
        <div role="status">
            <When when=move || !missing.read().is_empty()>
                <div class="notice look prints">
                    <p>{say(move || match missing.read().len() {
                        1 => words::entry_missing().to_owned(),
                        many => words::entries_missing(many),
                    })}</p>
                    <ul>{move || missing.get().into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ul>
                </div>
            </When>
            {move || said.get().into_iter().map(|words| view! { <p class="notice look prints">{words}</p> }).collect_view()}
        </div>
    }
}

/// An entry that keeps the pour from being asked for: what it is for, and what is wrong.
fn told(plans: Plans, problem: &EntryProblem) -> String {
    let (what, field) = match (problem.name, problem.row) {
        ("cover", _) => (words::cover_label().to_owned(), &fields::COVER),
        ("tilt_limit", _) => (words::tilt_label().to_owned(), &fields::TILT),
        (name, Some(row)) => {
            let called = plans.rule(row);
            if name == "spot" {
                return format!("{called}: {}", words::rule_no_spot());
            }
            (called, &fields::READING)
        }
        (_, None) => return words::entry_missing().to_owned(),
    };
    format!("{what}: {}", refusals::entry(&problem.refusal, field))
}

/// A row of the table: its head, then level and flat.
fn row(head: String, cells: [String; 2]) -> impl IntoView {
    let [level, flat] = cells;
    view! {
        <tr>
            <th scope="row">{head}</th>
            <td>{level}</td>
            <td>{flat}</td>
        </tr>
    }
}

#[component]
fn Table(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let finish = plans.room.part(|r| r.finish);
    // What the finish allows, after each pour: measured on the poured surface, not taken for granted.
    let after = move |kind: PourKind| {
        memo(move || -> Vec<Verdict> {
            let (Some(surface), Some(pour)) = (plans.surface.get(), plans.pour(kind)) else {
                return Vec::new();
            };
            judge(
                &surface,
                Top::Poured(pour.plane),
                finish.get(),
                USUAL_EFFORT,
            )
            .unwrap_or_default()
        })
    };
    let after = [after(PourKind::Level), after(PourKind::Flat)];
    let rows = move || {
        let units = units.get();
        let pours = [plans.pour(PourKind::Level), plans.pour(PourKind::Flat)];
        let each = |get: &dyn Fn(&Pour) -> String| {
            [0, 1].map(|i| {
                pours[i]
                    .as_ref()
                    .map_or_else(|| words::not_possible().to_owned(), |p| get(p))
            })
        };
        let bags = [PourKind::Level, PourKind::Flat].map(|kind| {
            plans
                .bags(kind)
                .and_then(Result::ok)
                .map_or_else(|| "–".to_owned(), |b| b.bags.to_string())
        });
        let limit = plans.entry.with(questions::lift_limit_in).ok().flatten();
        let lifts = plans.surface.get().zip(limit).map(|(surface, limit)| {
            each(&|p| {
                lifts(&surface, p, limit, LiftShare::Even)
                    .map_or_else(|_| "–".to_owned(), |l| l.lifts.len().to_string())
            })
        });
        let openings = plans.work.openings.get().0;
        let doors = openings
            .iter()
            .map(|placed| {
                let name = plans
                    .room
                    .open
                    .job
                    .with(|job| job.opening(placed.id).map(|(_, o)| o.name.clone()))
                    .unwrap_or_default();
                let cells = each(&|p| {
                    let along = plans
                        .surface
                        .get()
                        .and_then(|s| p.along(&s, placed.span.left, placed.span.right));
                    along.map_or_else(
                        || "–".to_owned(),
                        |along| {
                            [along.left_in, along.right_in, along.greatest_in]
                                .map(|depth_in| length_text(depth_in, units))
                                .join(", ")
                        },
                    )
                });
                row(
                    words::row_opening(
                        &opening_letter(placed.index),
                        &if name.is_empty() {
                            name
                        } else {
                            format!(" {name}")
                        },
                    ),
                    cells,
                )
            })
            .collect_view();
        let limits = after[0].with(|level| {
            after[1].with(|flat| {
                let longest = level.len().max(flat.len());
                (0..longest)
                    .filter_map(|i| {
                        let limit = &level.get(i).or(flat.get(i))?.limit;
                        let cell = |verdicts: &[Verdict]| {
                            verdicts.get(i).map_or_else(
                                || words::not_possible().to_owned(),
                                |v| {
                                    let sign = if v.passes {
                                        words::passes()
                                    } else {
                                        words::over()
                                    };
                                    let (gap, _) = words::gap_and_limit(
                                        v.worst.gap_in,
                                        v.limit.max_gap_in,
                                        v.passes,
                                        units,
                                    );
                                    format!("{gap}, {sign}")
                                },
                            )
                        };
                        Some(row(
                            words::row_limit(
                                words::straightedge(limit, units),
                                thickness_text(limit.max_gap_in, units),
                            ),
                            [cell(level), cell(flat)],
                        ))
                    })
                    .collect_view()
            })
        });
        view! {
            {row(words::row_bags().to_owned(), bags)}
            {row(words::row_volume().to_owned(), each(&|p| volume_text(p.volume_ft3, units)))}
            {row(words::row_least().to_owned(), each(&|p| length_text(p.least_depth_in, units)))}
            {row(words::row_mean().to_owned(), each(&|p| length_text(p.mean_depth_in, units)))}
            {row(words::row_greatest().to_owned(), each(&|p| length_text(p.greatest_depth_in, units)))}
            {row(words::row_tilt().to_owned(), each(&|p| words::tilt(p.tilt_in_per_4ft, units)))}
            {row(
                words::row_direction().to_owned(),
                each(&|p| p.downhill_degrees.map_or_else(|| common::none().to_owned(), words::direction)),
            )}
            {lifts.map(|cells| row(words::row_lifts().to_owned(), cells))}
            {doors}
            {limits}
        }
    };
    view! {
        <div class="scroll">
            <table>
                <thead>
                    <tr>
                        <td></td>
                        <th scope="col">{common::level()}</th>
                        <th scope="col">{common::flat()}</th>
                    </tr>
                </thead>
                <tbody>{draw(rows)}</tbody>
            </table>
        </div>
    }
}

/// The dams that a pour needs at the openings.
pub fn dams(plans: Plans, pour: &Pour) -> Vec<DamAtOpening> {
    plans.room.open.job.with(|job| {
        let Some(room) = job.room(plans.room.id) else {
            return Vec::new();
        };
        plans.work.openings.with(|(placed, _)| {
            plans
                .work
                .readings
                .with(|readings| dams_at(room, placed, readings, pour))
        })
    })
}
