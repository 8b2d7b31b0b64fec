//! Bags, water, pace of mixing, primer, edge strip, dam; lifts.

use crate::markup::view;
use crate::reactive::{derived, draw, memo};
use calc::floor::lifts::{Lift, LiftShare, lifts};
use calc::floor::mixing::{pace, primer_gal};
use calc::floor::opening::edge_strip_in;
use calc::job::fields::{self, Field};
use calc::job::questions::pour as questions;
use calc::job::{PourEntry, Units};
use calc::quantity::{Area, Typed, Volume, VolumeUnit, fixed};
use leptos::prelude::*;

use super::Plans;
use super::compare::{dams, volume_text};
use crate::answer::Working;
use crate::entry::Measured;
use crate::pictures::{Figure, at_least_text, length_text};
use crate::words::{common, pour as words};

/// One entry of the pour.
pub fn entry(
    plans: Plans,
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    field: Field,
    get: fn(&mut PourEntry) -> &mut Typed,
) -> impl IntoView {
    let room = plans.room;
    view! {
        <Measured
            id
            label=Signal::stored(label.to_owned())
            hint=Signal::stored(hint.to_owned())
            field
            units=room.open.units()
            value=room.part(move |r| get(&mut r.pour.clone()).clone())
            on_typed=Callback::new(move |typed| room.change(|r| *get(&mut r.pour) = typed))
        />
    }
}

/// Water in the units in force: quarts and gallons, or litres.
fn water_text(qt: f64, units: Units) -> String {
    let water = Volume::from_qt(qt);
    match units {
        Units::Metric => water.format(VolumeUnit::Liters, 1),
        Units::FeetInches => format!(
            "{} ({})",
            water.format(VolumeUnit::Quarts, 1),
            water.format(VolumeUnit::Gallons, 1)
        ),
    }
}

/// Primer in the units in force: US gallons, or litres.
fn primer_text(gal: f64, units: Units) -> String {
    let primer = Volume::from_gal(gal);
    match units {
        Units::Metric => primer.format(VolumeUnit::Liters, 2),
        Units::FeetInches => primer.format(VolumeUnit::Gallons, 2),
    }
}

/// Bags and mixing for the pour that is shown.
#[component]
pub fn BagsAndMixing(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let bags = memo(move || plans.bags(plans.bought.get()));
    let lines = move || {
        let units = units.get();
        match bags.get() {
            None => ().into_any(),
            Some(Err(refusal)) => {
                view! { <p class="notice look">{words::mixing_refusal(&refusal)}</p> }.into_any()
            }
            Some(Ok(bags)) => {
                let paced = plans
                    .entry
                    .with(|entry| questions::pace_ask(entry, bags.bags))
                    .ok()
                    .map(|ask| pace(&ask));
                let outlives = paced
                    .as_ref()
                    .is_some_and(|p| p.as_ref().is_ok_and(|p| p.outlives_pot_life));
                let pace_words = paced.map(|paced| match paced {
                    Ok(p) if p.mixers <= 1 => words::pace_one(
                        p.batches,
                        fixed(p.minutes_between, 1),
                        fixed(p.total_minutes, 0),
                    ),
                    Ok(p) => words::pace(
                        p.mixers,
                        p.batches,
                        fixed(p.minutes_between, 1),
                        fixed(p.total_minutes, 0),
                    ),
                    Err(refusal) => words::mixing_refusal(&refusal),
                });
                view! {
                    <p>
                        {words::bags_rest(
                            volume_text(bags.ask.volume_ft3, units),
                            fixed(bags.ask.allowance_percent, 1),
                            volume_text(bags.ask.yield_ft3_per_bag, units),
                        )}
                    </p>
                    {
                        // A blank is no water that was asked for, not none that is needed.
                        bags.water_qt
                            .map(|water| view! { <p>{words::water(water_text(water, units))}</p> })
                    }
                    <p>{pace_words}</p>
                    {outlives.then(|| view! { <p class="notice look prints">{words::pace_outlives()}</p> })}
                }
                .into_any()
            }
        }
    };
    let around = move || {
        let units = units.get();
        let outline = plans.work.outline()?;
        let spans = plans.work.spans();
        let primer = plans
            .entry
            .with(questions::primer_coverage_in2)
            .ok()
            .flatten()
            .and_then(|covers| {
                primer_gal(
                    Area::from_in2(outline.area_in2()).ft2(),
                    Area::from_in2(covers).ft2(),
                )
                .ok()
            })
            .map(|gal| view! { <p>{words::primer(primer_text(gal, units))}</p> });
        let dam = plans
            .pour(plans.bought.get())
            .map(|p| {
                let dams = dams(plans, &p);
                let all_in: f64 = dams.iter().map(|dam| dam.dam_in).sum();
                (all_in, dams.iter().any(|dam| !dam.beyond_known))
            })
            .filter(|(dam_in, _)| *dam_in > 0.0)
            .map(|(dam_in, some_unknown)| {
                let told = some_unknown.then(words::dam_unknown);
                view! { <p>{words::dam(at_least_text(dam_in, units))} " " {told}</p> }
            });
        Some(view! {
            {primer}
            <p>{words::edge_strip(at_least_text(edge_strip_in(&outline, &spans), units))}</p>
            {dam}
        })
    };
    let steps = derived(move || {
        let Some(Ok(bags)) = bags.get() else {
            return Vec::new();
        };
        let mut steps = bags.working();
        if let Some(pace) = plans
            .entry
            .with(|entry| questions::pace_ask(entry, bags.bags))
            .ok()
            .and_then(|ask| pace(&ask).ok())
        {
            steps.extend(pace.working());
        }
        steps
    });
    view! {
        <section class="sheet">
            <h2>{words::bags_heading()}</h2>
            <Figure
                value=derived(move || {
                    bags.get().and_then(Result::ok).map_or_else(|| "–".to_owned(), |b| b.bags.to_string())
                })
                unit=derived(move || {
                    format!("{}, {}", common::unit_bags(), words::kind(plans.bought.get()).to_lowercase())
                })
            />
            {draw(lines)}
            {draw(around)}
            <Working steps units />
            <div class="pair">
                {entry(plans, "bag-yield", words::bag_yield_label(), words::bag_yield_hint(), fields::BAG_YIELD, |p| &mut p.bag_yield)}
                {entry(plans, "allowance", words::allowance_label(), "", fields::ALLOWANCE, |p| &mut p.allowance_percent)}
                {entry(plans, "bag-water", words::bag_water_label(), "", fields::BAG_WATER, |p| &mut p.bag_water)}
                {entry(plans, "batch", words::batch_label(), "", fields::BAGS_PER_BATCH, |p| &mut p.bags_per_batch)}
                {entry(plans, "minutes", words::minutes_label(), "", fields::MINUTES, |p| &mut p.minutes_per_batch)}
                {entry(plans, "pot-life", words::pot_label(), "", fields::MINUTES, |p| &mut p.pot_life_minutes)}
                {entry(plans, "primer", words::primer_label(), "", fields::PRIMER_COVERAGE, |p| &mut p.primer_coverage)}
            </div>
        </section>
    }
}

/// Bags for a volume, where the bag's figures are known.
fn bags_of(plans: Plans, volume_ft3: f64) -> Option<u32> {
    let ask = plans
        .entry
        .with(|entry| questions::bag_ask(entry, volume_ft3))
        .ok()?;
    Some(calc::floor::mixing::bags(&ask).ok()?.bags)
}

/// A lift's volume, and its bags where the bag's figures are known.
fn lift_volume(plans: Plans, volume_ft3: f64, units: Units) -> String {
    let volume = volume_text(volume_ft3, units);
    match bags_of(plans, volume_ft3) {
        Some(1) => words::lift_bags(volume, common::one_bag().to_owned()),
        Some(bags) => words::lift_bags(volume, common::bag_count(u64::from(bags))),
        None => volume,
    }
}

/// Where lifts in whole bags take more than one pour: how many.
fn more_in_lifts(plans: Plans, lifts: &[Lift], volume_ft3: f64) -> Option<String> {
    let each: Option<Vec<u32>> = lifts
        .iter()
        .map(|lift| bags_of(plans, lift.volume_ft3))
        .collect();
    let (all, one) = (each?.iter().sum::<u32>(), bags_of(plans, volume_ft3)?);
    (all > one).then(|| words::lifts_more(all, one))
}

/// The pour in lifts.
#[component]
pub fn LiftsPart(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let lines = move || {
        let units: Units = units.get();
        let limit = plans.entry.with(questions::lift_limit_in).ok().flatten()?;
        let (surface, pour) = (plans.surface.get()?, plans.pour(plans.bought.get())?);
        Some(match lifts(&surface, &pour, limit, LiftShare::Even) {
            Err(refusal) => view! { <p class="notice look">{words::lifts_refusal(&refusal)}</p> }.into_any(),
            Ok(plan) if plan.lifts.len() <= 1 => {
                view! { <p>{words::lifts_one(length_text(limit, units))}</p> }.into_any()
            }
            Ok(plan) => plan
                .lifts
                .iter()
                .enumerate()
                .map(|(i, lift)| {
                    let (thick, volume) = (length_text(lift.greatest_thickness_in, units), lift_volume(plans, lift.volume_ft3, units));
                    view! {
                        <p>
                            {if i + 1 == plan.lifts.len() {
                                words::lift_last(i + 1, thick, volume)
                            } else {
                                words::lift_line(i + 1, thick, volume, length_text(lift.below_finish_in, units))
                            }}
                        </p>
                    }
                })
                .chain(std::iter::once(view! { <p>{more_in_lifts(plans, &plan.lifts, pour.volume_ft3)}</p> }))
                .chain(std::iter::once(view! { <p>{words::lifts_each().to_owned()}</p> }))
                .collect_view()
                .into_any(),
        })
    };
    let steps = derived(move || {
        let limit = plans.entry.with(questions::lift_limit_in).ok().flatten();
        let plan = match (plans.surface.get(), plans.pour(plans.bought.get()), limit) {
            (Some(surface), Some(pour), Some(limit)) => {
                lifts(&surface, &pour, limit, LiftShare::Even).ok()
            }
            _ => None,
        };
        plan.map(|plan| plan.working()).unwrap_or_default()
    });
    view! {
        <section class="sheet">
            <h2>{words::lifts_heading()}</h2>
            {draw(lines)}
            <Working steps units />
            {entry(plans, "lift", words::lift_label(), "", fields::LIFT, |p| &mut p.lift_limit)}
        </section>
    }
}
