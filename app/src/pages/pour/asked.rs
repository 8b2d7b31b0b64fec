//! What decided the pour, for paper: its fields are not printed.

use crate::markup::view;
use crate::reactive::derived;
use calc::job::fields::{self, Field};
use calc::job::{HeightRuleKind, Opening};
use calc::quantity::{Slope, Typed};
use leptos::prelude::*;

use super::Plans;
use crate::answer::Facts;
use crate::pictures::{length_text, reading_text};
use crate::words::common;
use crate::words::pour::{self as words, Naming};

/// Cover, tilt limit, finish, every height to keep with its spot, kind and reading, and the deepest lift.
#[component]
pub fn Asked(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let rows = derived(move || {
        let units = units.get();
        plans.room.open.job.with(|job| {
            job.room(plans.room.id)
                .map(|room| {
                    let pour = &room.pour;
                    let length = |inches: f64| length_text(inches, units);
                    let reading = |inches: f64| reading_text(inches, units);
                    let tilt =
                        |ratio: f64| words::tilt(Slope::from_ratio(ratio).in_per_4ft(), units);
                    let mut rows = vec![
                        (
                            words::cover_label().to_owned(),
                            entered(&pour.cover, &fields::COVER, &length),
                        ),
                        (
                            words::tilt_label().to_owned(),
                            entered(&pour.tilt_limit, &fields::TILT, &tilt),
                        ),
                        (
                            words::finish_label().to_owned(),
                            words::finish(room.finish).to_owned(),
                        ),
                    ];
                    for rule in &pour.height_rules {
                        let kind = match rule.rule {
                            HeightRuleKind::AtMost => words::rule_at_most(),
                            HeightRuleKind::Meet => words::rule_meet(),
                        };
                        rows.push((
                            plans.rule(rule.id),
                            format!(
                                "{kind} {}",
                                entered(&rule.reading, &fields::READING, &reading)
                            ),
                        ));
                    }
                    let capped = |opening: &&Opening| !opening.pour_at_most.is_blank();
                    for opening in room.openings.iter().filter(capped) {
                        let at = entered(&opening.pour_at_most, &fields::READING, &reading);
                        rows.push((
                            plans.rule(opening.id),
                            format!("{} {at}", words::rule_at_most()),
                        ));
                    }
                    rows.push((
                        words::lift_label().to_owned(),
                        entered(&pour.lift_limit, &fields::LIFT, &length),
                    ));
                    rows
                })
                .unwrap_or_default()
        })
    });
    view! {
        <section class="sheet only-print">
            <h2>{words::asked_heading()}</h2>
            <Facts rows />
        </section>
    }
}

/// An entry in the units in force; one that can't be read as it was typed.
fn entered(typed: &Typed, field: &Field, text: &dyn Fn(f64) -> String) -> String {
    match field.optional(typed) {
        Ok(Some(value)) => text(value),
        Ok(None) => common::none().to_owned(),
        Err(_) => typed.text.clone(),
    }
}
