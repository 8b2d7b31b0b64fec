//! Heights that the pour must keep at spots.

use crate::markup::{For, view};
use crate::reactive::{When, derived, memo, say};
use calc::job::{HeightRule, HeightRuleKind, fields};
use calc::quantity::{Typed, WholeRange};
use leptos::prelude::*;

use super::Plans;
use crate::entry::{Choice, ChoiceOption, Measured};
use crate::focus;
use crate::store::drafts;
use crate::words::pour as words;

/// The heights to keep.
#[component]
pub fn Rules(plans: Plans) -> impl IntoView {
    let room = plans.room;
    let ids = room.part(|r| {
        r.pour
            .height_rules
            .iter()
            .map(|rule| rule.id)
            .collect::<Vec<_>>()
    });
    let add = move |_| {
        room.change_with_id(|r, id| {
            r.pour.height_rules.push(HeightRule {
                id,
                spot: None,
                rule: HeightRuleKind::AtMost,
                reading: Typed::default(),
                rest: calc::job::Rest::new(),
            });
        });
    };
    view! {
        <section class="sheet">
            <h2>{words::rules_heading()}</h2>
            <When when=move || ids.read().is_empty()>
                <p class="quiet">{words::rules_none()}</p>
            </When>
            <ol class="rows">
                <For each=move || ids.get() key=|id| *id let:id>
                    <Rule plans ids id />
                </For>
            </ol>
            <button type="button" class="button" id="add-rule" on:click=add>{words::rule_add()}</button>
        </section>
    }
}

#[component]
fn Rule(plans: Plans, ids: Memo<Vec<u32>>, id: u32) -> impl IntoView {
    let room = plans.room;
    let units = room.open.units();
    let rule = move || {
        room.open.job.with(|job| {
            job.room(room.id).and_then(|r| {
                r.pour
                    .height_rules
                    .iter()
                    .find(|rule| rule.id == id)
                    .cloned()
            })
        })
    };
    let change = move |change: &dyn Fn(&mut HeightRule)| {
        room.change(|r| {
            if let Some(rule) = r.pour.height_rules.iter_mut().find(|rule| rule.id == id) {
                change(rule);
            }
        });
    };
    // The document holds the spot's id; the number is typed here and looked up.
    // What can't be looked up yet is kept beside it.
    let unread = drafts::draft(&room.key(&format!("rule-{id}")));
    let typed_number = memo(move || {
        let unread = unread.get();
        let known = rule()
            .and_then(|r| r.spot)
            .map_or(0, |spot| plans.spot_number(spot));
        if !unread.is_blank() || known == 0 {
            unread
        } else {
            Typed::plain(known.to_string())
        }
    });
    let count = plans.work.readings.with_untracked(|r| {
        i64::try_from(r.places.iter().map(|p| p.number).max().unwrap_or(1)).unwrap_or(1)
    });
    let field = fields::Field::Whole(WholeRange::at_least(1).at_most(count.max(1)));
    let number = move || ids.with(|ids| ids.iter().position(|&i| i == id).unwrap_or(0) + 1);
    view! {
        <li>
            <div class="pair">
                <Measured
                    id=format!("rule-{id}-spot")
                    label=Signal::stored(words::rule_spot().to_owned())
                    field
                    units
                    value=typed_number
                    on_typed=Callback::new(move |typed: Typed| {
                        let spot = field.read(&typed).ok().and_then(|number| plans.spot_by_number(number));
                        unread.set(if spot.is_some() { Typed::default() } else { typed });
                        change(&|rule| rule.spot = spot);
                    })
                />
                <Measured
                    id=format!("rule-{id}-reading")
                    label=Signal::stored(words::rule_reading().to_owned())
                    hint=Signal::stored(words::rule_reading_hint().to_owned())
                    field=fields::READING
                    units
                    value=derived(move || rule().map(|r| r.reading).unwrap_or_default())
                    on_typed=Callback::new(move |typed: Typed| change(&|rule| rule.reading = typed.clone()))
                />
            </div>
            <Choice
                id=format!("rule-{id}-kind")
                label=Signal::stored(words::rule_kind().to_owned())
                options=Signal::stored(
                    vec![
                        ChoiceOption::new("at_most", words::rule_at_most()),
                        ChoiceOption::new("meet", words::rule_meet()),
                    ],
                )
                value=derived(move || {
                    if rule().is_some_and(|r| r.rule == HeightRuleKind::Meet) { "meet" } else { "at_most" }.to_owned()
                })
                on_pick=Callback::new(move |code: String| {
                    let kind = if code == "meet" { HeightRuleKind::Meet } else { HeightRuleKind::AtMost };
                    change(&|rule| rule.rule = kind);
                })
            />
            <button
                type="button"
                class="button look plain"
                on:click=move |_| {
                    room.take_out_row(
                        words::rule_name(number()),
                        |r| Some(&mut r.pour.height_rules),
                        |rule| rule.id == id,
                    );
                    focus::soon("add-rule");
                }
            >
                {say(move || words::rule_take_out(number()))}
            </button>
        </li>
    }
}
