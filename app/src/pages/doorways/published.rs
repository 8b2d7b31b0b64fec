//! Published figures, each held against what is here: heights of a step, slopes.

use crate::markup::view;
use calc::floor::level_change::{Applies, Held, LevelChange, SlopeHeld, Status};
use calc::job::Units;
use leptos::prelude::*;

use crate::pictures::{length_text, thickness_text};
use crate::words::doorways as words;

/// The published heights that a step is held against.
pub fn step_table(change: &LevelChange, exterior: bool, units: Units) -> impl IntoView + use<> {
    let asked = |held: &&Held| match held.rule.applies {
        Applies::AnyStep | Applies::Doorway => true,
        Applies::ExteriorDoor => exterior,
        Applies::Ramp
        | Applies::Stair
        | Applies::StairDifference
        | Applies::ShowerCurb
        | Applies::ToiletFlange => false,
    };
    let rows = change
        .held
        .iter()
        .filter(asked)
        .map(|held| {
            let verdict = if held.within {
                words::within().to_owned()
            } else {
                words::past_by(thickness_text(held.off_by_in, units))
            };
            let limit = length_text(held.rule.value_in, units);
            row(
                words::step_rule(held.rule.id),
                held.rule.source,
                held.rule.status,
                limit,
                held.within,
                verdict,
            )
        })
        .collect_view();
    table(rows)
}

/// The published slopes that a slope is held against.
pub fn slope_table(held: &[SlopeHeld]) -> impl IntoView + use<> {
    let rows = held
        .iter()
        .map(|held| {
            let verdict = if held.within {
                words::within()
            } else {
                words::steeper()
            };
            let limit = words::one_to(1.0 / held.rule.one_in);
            row(
                words::slope_rule(held.rule.id),
                held.rule.source,
                held.rule.status,
                limit,
                held.within,
                verdict.to_owned(),
            )
        })
        .collect_view();
    table(rows)
}

fn row(
    name: Option<&'static str>,
    source: &'static str,
    status: Status,
    limit: String,
    within: bool,
    verdict: String,
) -> impl IntoView + use<> {
    let told = words::status(status).map(|told| view! { " (" {told} ")" });
    view! {
        <tr>
            <th scope="row">{name} <span class="quiet source">{source} {told}</span></th>
            <td class="num">{limit}</td>
            <td class:look=!within>{verdict}</td>
        </tr>
    }
}

fn table(rows: impl IntoView) -> impl IntoView {
    view! {
        <table class="published">
            <thead>
                <tr>
                    <th scope="col">{words::column_rule()}</th>
                    <th scope="col" class="num">{words::column_limit()}</th>
                    <th scope="col">{words::column_this()}</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
}
