//! What the tile is set in: mortar, grout, membrane.

use calc::job::questions::finish::tile::{grout_for, membrane_for, mortar_for};
use calc::job::{Room, Units, fields};
use calc::quantity::fixed;
use calc::working::Step;
use leptos::prelude::*;

use crate::answer::{Facts, Working};
use crate::markup::view;
use crate::pages::closing::{may, need, pair, said};
use crate::pages::job_fields::{at, number};
use crate::pages::sum_fields::{Shown, label};
use crate::reactive::derived;
use crate::tiling::Tiling;
use crate::words::closing::{self as shared, tile as words};

#[component]
pub fn Bed(tiling: Tiling) -> impl IntoView {
    let room = tiling.room;
    let id = room.id;
    let units = room.open.units();
    let area_ft2 = move || tiling.layout().map(|laid| laid.field_area_in2 / 144.0);
    let rows = derived(move || {
        let units = units.get();
        let Some(area_ft2) = area_ft2() else {
            return Vec::new();
        };
        tiling.part.with(|room| {
            room.as_ref()
                .map_or_else(Vec::new, |room| amounts(room, area_ft2, units))
        })
    });
    let steps = derived(move || {
        let Some(area_ft2) = area_ft2() else {
            return Vec::new();
        };
        tiling.part.with(|room| {
            room.as_ref()
                .map_or_else(Vec::new, |room| working(room, area_ft2))
        })
    });
    view! {
        <section class="sheet">
            <h2>{words::bed_heading()}</h2>
            <Facts rows />
            {number(
                room.open,
                "mortar-coverage",
                label(words::coverage_label()),
                fields::COVERAGE,
                Shown::hint(words::coverage_hint()),
                at!(room id; tile.mortar_coverage),
            )}
            {number(
                room.open,
                "joint-depth",
                label(words::depth_label()),
                fields::TILE_JOINT,
                Shown::hint(words::depth_hint()),
                at!(room id; tile.joint_depth),
            )}
            {pair(
                need(room, "grout-powder", words::powder_label(), fields::POWDER, at!(room id; tile.powder)),
                need(room, "grout-bag", words::bag_label(), fields::POUNDS, at!(room id; tile.grout_bag)),
            )}
            {pair(
                may(room, "membrane-roll", words::roll_label(), words::roll_hint(), fields::COVERAGE, at!(room id; tile.membrane_roll)),
                may(room, "membrane-up", words::turn_up_label(), "", fields::TURN_UP, at!(room id; tile.membrane_turn_up)),
            )}
            <Working steps units />
        </section>
    }
}

fn amounts(room: &Room, area_ft2: f64, units: Units) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let mut row = |name: &str, text: Option<String>| {
        if let Some(text) = text {
            rows.push((name.to_owned(), text));
        }
    };
    let mortar = mortar_for(&room.tile, area_ft2);
    let missing = said(&mortar, Some(room), &words::bed_refusal);
    let bags = mortar.ok().map(|mortar| shared::bags_of(mortar.bags));
    row(words::mortar_row(), bags.or(missing));
    let grout = grout_for(&room.tile, area_ft2);
    let missing = said(&grout, Some(room), &words::grout_refusal);
    let bags = grout.ok().map(|grout| {
        words::grout_says(
            shared::bags_of(grout.bags),
            fixed(grout.with_allowance_lb, 1),
        )
    });
    row(words::grout_row(), bags.or(missing));
    let membrane = membrane_for(room, area_ft2);
    let missing = said(&membrane, Some(room), &words::bed_refusal);
    let rolls = membrane.ok().flatten().map(|membrane| {
        let area = shared::area(membrane.with_allowance_ft2, units);
        if membrane.rolls == 1 {
            words::one_roll(area)
        } else {
            words::rolls(membrane.rolls, area)
        }
    });
    row(words::membrane_row(), rolls.or(missing));
    rows
}

fn working(room: &Room, area_ft2: f64) -> Vec<Step> {
    let mut steps = Vec::new();
    if let Ok(mortar) = mortar_for(&room.tile, area_ft2) {
        steps.extend(mortar.working());
    }
    if let Ok(grout) = grout_for(&room.tile, area_ft2) {
        steps.extend(grout.working());
    }
    if let Ok(Some(membrane)) = membrane_for(room, area_ft2) {
        steps.extend(membrane.working());
    }
    steps
}
