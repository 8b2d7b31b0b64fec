//! What the old floor does: fall, tilt, contours, the volume to each level.

use calc::floor::contour;
use calc::floor::survey::reading_in;
use calc::job::Units;
use calc::job::questions::answers::LEVELS;
use calc::quantity::{Area, AreaUnit, Volume, VolumeUnit};
use leptos::prelude::*;

use super::Walk;
use crate::markup::view;
use crate::pages::room::gaps;
use crate::pictures::floor_map::{HeightLine, MapContent, Mark, Pin};
use crate::pictures::{FloorMap, LengthFigure, length_text, reading_text};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::{pour as pour_words, survey as words};

/// What the floor does: fall, tilt, contours, the volume to each level.
#[component]
pub(super) fn Facts(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let surface = memo(move || walk.work.surface());
    let facts = memo(move || surface.with(|s| s.as_ref().map(|s| s.facts())));
    let way = walk.room.part(|r| r.survey.way);
    let fall = derived(move || facts.with(|f| f.as_ref().map_or(0.0, |f| f.fall_in)));
    let named = move |height_in: f64| reading_text(reading_in(way.get(), height_in), units.get());
    let content = memo(move || contours(walk));
    let lines = move || {
        facts.with(|f| {
            f.as_ref().map(|f| {
                let fit = &f.best_fit;
                let tilt = fit.plane.tilt_in_per_4ft();
                let rms = length_text(fit.rms_in, units.get());
                let leans = if tilt < 1.0 / 64.0 {
                    words::best_fit_level(rms)
                } else {
                    words::best_fit(pour_words::tilt(tilt, units.get()), rms)
                };
                let assumed = surface.with(|s| {
                    s.as_ref().map_or(0, |s| s.vertices.iter().filter(|v| v.assumed_from.is_some()).count())
                });
                view! {
                    <p>{words::fall_rests(named(f.lowest_in), named(f.highest_in))}</p>
                    <p>{leans}</p>
                    {(assumed > 0).then(|| view! { <p class="quiet">{if assumed == 1 { words::one_assumed().to_owned() } else { words::assumed(assumed) }}</p> })}
                }
            })
        })
    };
    let levels = move || {
        let facts = facts.get()?;
        surface.with(|s| {
            let s = s.as_ref()?;
            let metric = units.get() == Units::Metric;
            let rows = s
                .hypsometric_curve(LEVELS)
                .into_iter()
                .rev()
                .map(|reached| {
                    let volume = Volume::from_in3(reached.volume_in3);
                    let area = Area::from_in2(reached.area_in2);
                    view! {
                        <tr>
                            <td>{length_text(facts.highest_in - reached.level_in, units.get())}</td>
                            <td class="num">
                                {if metric { volume.format(VolumeUnit::Liters, 1) } else { volume.format(VolumeUnit::CubicFeet, 2) }}
                            </td>
                            <td class="num">
                                {area.format(if metric { AreaUnit::SquareMeters } else { AreaUnit::SquareFeet }, 1)}
                            </td>
                        </tr>
                    }
                })
                .collect_view();
            Some(rows)
        })
    };
    view! {
        <When when=move || facts.read().is_some()>
            <section class="sheet">
                <h2>{words::facts_heading()}</h2>
                <LengthFigure inches=fall units />
                {draw(lines)}
                <figure class="picture">
                    <FloorMap
                        content=derived(move || content.get().0)
                        says=derived(move || words::contours_says(length_text(fall.get(), units.get())))
                        tall=300.0
                    />
                    <figcaption>{say(move || words::contours_caption(length_text(content.get().1, units.get())))}</figcaption>
                </figure>
                <details>
                    <summary>{words::levels_heading()}</summary>
                    <table>
                        <thead>
                            <tr>
                                <th scope="col">{words::level_column()}</th>
                                <th scope="col" class="num">{words::level_volume()}</th>
                                <th scope="col" class="num">{words::level_area()}</th>
                            </tr>
                        </thead>
                        <tbody>{draw(levels)}</tbody>
                    </table>
                </details>
            </section>
        </When>
    }
}

/// The contour map, and the step between its lines.
fn contours(walk: Walk) -> (MapContent, f64) {
    let units = walk.room.open.units().get();
    let (Some(outline), Some(surface)) = (walk.work.outline(), walk.work.surface()) else {
        return (MapContent::default(), 0.0);
    };
    let facts = surface.facts();
    let levels = contour::levels(0.0, facts.fall_in, 8);
    let step_in = match levels.as_slice() {
        [a, b, ..] => b - a,
        _ => 0.0,
    };
    let lines = levels
        .iter()
        .enumerate()
        .map(|(i, &below_in)| HeightLine {
            label: if i % 2 == 0 {
                length_text(below_in, units)
            } else {
                String::new()
            },
            index: i % 4 == 0,
            pieces: contour::contour(&surface, facts.highest_in - below_in),
        })
        .collect();
    let pin = |index: usize, label: &str| {
        surface.vertices.get(index).map(|v| Pin {
            at: v.at,
            label: label.to_owned(),
            mark: Mark::Read,
        })
    };
    let tilt = facts.best_fit.plane.tilt_in_per_4ft();
    let content = MapContent {
        corners: outline.corners().to_vec(),
        gaps: gaps(walk.work),
        lines,
        pins: [
            pin(facts.highest, words::high()),
            pin(facts.lowest, words::low()),
        ]
        .into_iter()
        .flatten()
        .collect(),
        downhill: facts
            .best_fit
            .plane
            .downhill_degrees()
            .filter(|_| tilt >= 1.0 / 64.0),
        ..MapContent::default()
    };
    (content, step_in)
}
