//! How flat the old floor is, against the finish's limit; filling only the lows.

use crate::markup::view;
use std::sync::Arc;

use crate::reactive::{derived, draw, memo, say};
use calc::floor::flatness::{Patch, Top, USUAL_EFFORT, Verdict, judge, patch_for, worst_gap};
use calc::floor::mixing::bags;
use calc::floor::{Point, Surface};
use calc::job::questions::pour as questions;
use calc::job::{Units, fields};
use calc::quantity::{Area, AreaUnit};
use leptos::prelude::*;

use super::Plans;
use super::compare::volume_text;
use crate::answer::Working;
use crate::entry::Measured;
use crate::pages::room::gaps;
use crate::pictures::floor_map::{MapContent, Mark, Pin};
use crate::pictures::{FloorMap, length_text, thickness_text};
use crate::store::drafts;
use crate::words::pour as words;

/// Patching is a search of its own; past this many spots it takes longer than a person waits.
const MOST_PATCH_SPOTS: usize = 500;

/// The flatness section.
#[component]
pub fn Flatness(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let finish = plans.room.part(|r| r.finish);
    let verdicts = memo(move || -> Vec<Verdict> {
        plans
            .surface
            .get()
            .and_then(|s| judge(&s, Top::OldFloor, finish.get(), USUAL_EFFORT).ok())
            .unwrap_or_default()
    });
    let worst = memo(move || {
        verdicts.with(|v| {
            v.iter()
                .max_by(|a, b| (-a.margin_in).total_cmp(&-b.margin_in))
                .map(|v| v.worst.clone())
        })
    });
    let content = memo(move || {
        let corners = plans
            .work
            .outline()
            .map(|o| o.corners().to_vec())
            .unwrap_or_default();
        worst.with(|worst| MapContent {
            corners,
            gaps: gaps(plans.work),
            worst: worst.as_ref().map(|w| (w.contact1, w.contact2)),
            pins: worst
                .iter()
                .map(|w| Pin {
                    at: w.gap_at,
                    label: thickness_text(w.gap_in, units.get()),
                    mark: Mark::Again,
                })
                .collect(),
            ..MapContent::default()
        })
    });
    let lines = move || {
        verdicts
            .get()
            .into_iter()
            .map(|v| {
                let (gap, limit) =
                    words::gap_and_limit(v.worst.gap_in, v.limit.max_gap_in, v.passes, units.get());
                let said = words::gap_before(words::straightedge(&v.limit, units.get()), gap, limit);
                let status = words::limit_status(v.limit.status).map(|status| format!(" ({status})"));
                view! {
                    <p class="verdict" class:over=!v.passes>
                        <span class="sign">{if v.passes { words::passes() } else { words::over() }}</span>
                        <span>{said} " " <span class="quiet">{words::limit_source(v.limit.source)} {status}</span></span>
                    </p>
                }
            })
            .collect_view()
    };
    let own = drafts::draft(&plans.room.key("straightedge"));
    let own_gap = memo(move || {
        let length_in = fields::STRAIGHTEDGE.optional(&own.read()).ok().flatten()?;
        let surface = plans.surface.get()?;
        worst_gap(&surface, Top::OldFloor, length_in, USUAL_EFFORT).ok()
    });
    view! {
        <section class="sheet">
            <h2>{words::flat_heading()}</h2>
            <p class="quiet">{words::flat_why()}</p>
            {draw(lines)}
            <figure class="picture">
                <FloorMap
                    content
                    tall=260.0
                    says=derived(move || {
                        words::worst_says(worst.with(|w| thickness_text(w.as_ref().map_or(0.0, |w| w.gap_in), units.get())))
                    })
                />
                <figcaption>
                    {say(move || words::worst_caption(worst.with(|w| w.as_ref().map_or(0, |w| w.lines_tried))))}
                </figcaption>
            </figure>
            <Working steps=derived(move || verdicts.get().into_iter().flat_map(|v| v.steps).collect()) units />
            <p>{words::after_pour()}</p>
            <Measured
                id="straightedge"
                label=Signal::stored(words::straightedge_label().to_owned())
                field=fields::STRAIGHTEDGE
                units
                optional=true
                value=own
                on_typed=Callback::new(move |typed| own.set(typed))
            />
            <p role="status">
                {move || {
                    own_gap
                        .get()
                        .map(|w| {
                            words::straightedge_gap(
                                thickness_text(w.gap_in, units.get()),
                                length_text(w.straightedge_in, units.get()),
                            )
                        })
                }}
            </p>
            <Patching plans />
        </section>
    }
}

/// Filling only the lows, on demand.
#[component]
fn Patching(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let finish = plans.room.part(|r| r.finish);
    // No patch: too many spots to wait for one, or a refusal in words.
    let answer = RwSignal::new(None::<(Arc<Surface>, Result<Patch, String>)>);
    // An answer for another floor or finish is no answer.
    Effect::new(move |before: Option<()>| {
        plans.surface.track();
        finish.track();
        if before.is_some() {
            answer.set(None);
        }
    });
    let work_out = move |_| {
        let Some(surface) = plans.surface.get_untracked() else {
            return;
        };
        let patch = if surface.spot_count > MOST_PATCH_SPOTS {
            Err(words::patch_too_many(MOST_PATCH_SPOTS))
        } else {
            patch_for(&surface, finish.get_untracked(), USUAL_EFFORT)
                .map_err(|refusal| words::patch_refusal(&refusal).to_owned())
        };
        answer.set(Some((surface, patch)));
    };
    let area = move |ft2: f64| {
        Area::from_ft2(ft2).format(
            if units.get() == Units::Metric {
                AreaUnit::SquareMeters
            } else {
                AreaUnit::SquareFeet
            },
            1,
        )
    };
    let shown = move || {
        answer.get().map(|(surface, patch)| match patch {
            Err(why) => view! { <p class="notice look">{why}</p> }.into_any(),
            Ok(patch) if patch.places.is_empty() => view! { <p>{words::patch_none()}</p> }.into_any(),
            Ok(patch) => {
                let bags = plans
                    .entry
                    .with(|e| questions::bag_ask(e, patch.volume_ft3))
                    .ok()
                    .and_then(|ask| bags(&ask).ok())
                    .map(|b| words::patch_bags(b.bags.to_string()));
                let said = words::patch_answer(
                    volume_text(patch.volume_ft3, units.get()),
                    patch.places.len(),
                    length_text(patch.deepest_in, units.get()),
                    area(patch.area_ft2),
                );
                let content = patch_map(plans, &surface, &patch);
                view! {
                    <p>{said} " " {bags}</p>
                    <figure class="picture">
                        <FloorMap content=Signal::stored(content) says=Signal::stored(words::patch_says().to_owned()) />
                        <figcaption>{words::patch_estimate()}</figcaption>
                    </figure>
                }
                .into_any()
            }
        })
    };
    view! {
        <button type="button" class="button" on:click=work_out>{words::patch_ask()}</button>
        <div role="status" class="stack-tight">{draw(shown)}</div>
    }
}

fn patch_map(plans: Plans, surface: &Surface, patch: &Patch) -> MapContent {
    let units = plans.room.open.units().get_untracked();
    let fill = |index: usize| patch.fill_in.get(index).copied().unwrap_or(0.0);
    let depth = surface
        .triangles
        .iter()
        .filter_map(|t| {
            let corners: Vec<Point> = t
                .iter()
                .filter_map(|&i| surface.vertices.get(i).map(|v| v.at))
                .collect();
            let mean = t.iter().map(|&i| fill(i)).sum::<f64>() / 3.0;
            let class = (mean / patch.deepest_in.max(1e-9) * 6.0)
                .floor()
                .clamp(0.0, 5.0);
            // Within 0 to 5 by the clamp.
            (mean > 0.0).then_some((corners.try_into().ok()?, class as u8))
        })
        .collect();
    MapContent {
        corners: surface.outline.corners().to_vec(),
        gaps: gaps(plans.work),
        depth,
        pins: surface
            .vertices
            .iter()
            .enumerate()
            .filter(|&(i, _)| fill(i) > 0.0)
            .map(|(i, v)| Pin {
                at: v.at,
                label: length_text(fill(i), units),
                mark: Mark::Read,
            })
            .collect(),
        ..MapContent::default()
    }
}
