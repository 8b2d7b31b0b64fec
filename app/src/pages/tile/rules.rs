//! What published rules say of the tile as entered.

use calc::finish::tile::rules::{Make, Place, RulesAnswer};
use calc::job::questions::finish::tile::rules;
use calc::job::{Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use leptos::prelude::*;

use crate::answer::Working;
use crate::markup::view;
use crate::pages::closing::{Missing, may, pair, said};
use crate::pages::job_fields::{at, code_at, pick};
use crate::pages::sum_fields::{label, options};
use crate::pictures::thickness_text;
use crate::reactive::{derived, draw, memo};
use crate::tiling::Tiling;
use crate::words::closing::tile as words;

#[component]
pub fn Rules(tiling: Tiling) -> impl IntoView {
    let room = tiling.room;
    let id = room.id;
    let units = room.open.units();
    let found = memo(move || tiling.part.with(|room| room.as_ref().map(rules)));
    let problem = derived(move || {
        // What is missing for the layout is said there.
        tiling.layout()?;
        found.with(|found| {
            tiling
                .part
                .with(|room| said(found.as_ref()?, room.as_ref(), &words::rules_refusal))
        })
    });
    let lines = move || {
        let units = units.get();
        found.with(|found| match found {
            Some(Ok(answer)) => Some(verdicts(answer, units)),
            _ => None,
        })
    };
    let steps = derived(move || {
        found.with(|found| match found {
            Some(Ok(answer)) => answer.working(),
            _ => Vec::new(),
        })
    });
    view! {
        <section class="sheet">
            <h2>{words::rules_heading()}</h2>
            {pick(
                room.open,
                "tile-make",
                label(words::make_label()),
                Signal::stored(options(words::make)),
                code_at!(Make::word; room id; tile.make),
            )}
            {pick(
                room.open,
                "tile-place",
                label(words::place_label()),
                Signal::stored(options(words::place)),
                code_at!(Place::word; room id; tile.place),
            )}
            {pair(
                may(room, "tile-variation", words::variation_label(), "", fields::SMALL_LENGTH, at!(room id; tile.variation)),
                may(room, "tile-warpage", words::warpage_label(), "", fields::SMALL_LENGTH, at!(room id; tile.warpage)),
            )}
            <Missing text=problem room />
            {draw(lines)}
            <p class="quiet">{words::rules_note()}</p>
            <Working steps units />
        </section>
    }
}

fn verdicts(answer: &RulesAnswer, units: Units) -> AnyView {
    let held = answer
        .verdicts
        .iter()
        .map(|of| {
            view! {
                <p class="verdict" class:over=!of.within>
                    <span class="sign">{if of.within { words::kept() } else { words::not_kept() }}</span>
                    <span>{words::verdict(of, units)} " " <span class="quiet">{of.rule.source}</span></span>
                </p>
            }
        })
        .collect_view();
    let movement = &answer.movement;
    let range = |axis: usize| {
        let least = movement.least_lines.get(axis).copied().unwrap_or_default();
        let most = movement.most_lines.get(axis).copied().unwrap_or_default();
        if least == most {
            least.to_string()
        } else {
            words::to_range(least, most)
        }
    };
    let feet = |of: Option<f64>| fixed(of.unwrap_or_default(), 0);
    view! {
        {held}
        <ul class="rows">
            <li>{words::lippage(thickness_text(answer.most_lippage_in, units))}</li>
            <li>{words::contact(fixed(answer.least_contact_percent, 0))}</li>
            <li>
                {words::movement(range(0), range(1), feet(movement.rule.low), feet(movement.rule.high))}
            </li>
        </ul>
    }
    .into_any()
}
