//! Which cables a light and its switches need, part of the sum of a cable run.

use calc::job::fields;
use calc::job::questions::wiring::cable::switches_of;
use calc::saved::Coded;
use calc::wiring::cable_run::{LightAt, NeutralNeed, PowerAt, SwitchCable, SwitchPlan};
use calc::wiring::code::Rule;
use leptos::prelude::*;

use super::super::sum_fields::{Shown, choice, coded, few, field, label, pick, typed};
use super::super::sums::OpenSums;
use crate::answer::{CodeSections, Facts, Notices};
use crate::markup::view;
use crate::pictures::SwitchChain;
use crate::pictures::switch_chain::{ChainCable, ChainContent};
use crate::reactive::{When, derived, memo};
use crate::words::wiring::{cable as says, rules};

/// The cables that a chain of switches needs.
#[component]
pub fn Switches(
    /// The sums.
    open: OpenSums,
) -> impl IntoView {
    let plan = open.part(|sums| switches_of(&sums.switches, sums.code_edition).ok());
    let powers = few(&[
        (PowerAt::FirstSwitch.word(), says::power_switch()),
        (PowerAt::Light.word(), says::power_light()),
    ]);
    let lights = [
        (LightAt::LastSwitch.word(), says::light_last()),
        (LightAt::FirstSwitch.word(), says::light_first()),
    ];
    let neutrals = few(&[
        (NeutralNeed::Every.word(), says::neutral_every()),
        (NeutralNeed::One.word(), says::neutral_one()),
        (NeutralNeed::None.word(), says::neutral_none()),
    ]);
    let at_switch = open.part(|sums| sums.switches.power == PowerAt::FirstSwitch);
    view! {
        <section class="sheet">
            <h2>{says::switches_heading()}</h2>
            {field(
                open,
                "switches",
                label(says::switches_label()),
                fields::SWITCHES,
                Shown::hint(says::switches_hint()),
                typed!(switches.switches),
            )}
            {choice(
                open,
                "power-at",
                label(says::power_label()),
                "",
                powers,
                coded!(Coded::word; switches.power),
            )}
            <When when=at_switch>
                {choice(
                    open,
                    "light-at",
                    label(says::light_label()),
                    "",
                    few(&lights),
                    coded!(Coded::word; switches.light),
                )}
            </When>
            {pick(
                open,
                "switch-neutral",
                label(says::neutral_label()),
                neutrals,
                coded!(Coded::word; switches.neutral),
            )}
        </section>
        <When when=move || plan.read().is_some()>
            <SwitchAnswer plan />
        </When>
    }
}

fn roles(cable: &SwitchCable) -> String {
    let roles: Vec<&str> = cable.roles.iter().map(|role| says::role(*role)).collect();
    says::wires(cable.conductors, roles.join(", "))
}

fn chain(plan: &SwitchPlan) -> ChainContent {
    ChainContent {
        cables: plan
            .cables
            .iter()
            .map(|cable| ChainCable {
                from: says::spot(cable.from),
                to: says::spot(cable.to),
                roles: cable.roles.clone(),
            })
            .collect(),
    }
}

#[component]
fn SwitchAnswer(plan: Memo<Option<SwitchPlan>>) -> impl IntoView {
    let content = memo(move || plan.with(|plan| plan.as_ref().map(chain).unwrap_or_default()));
    let rows = derived(move || {
        plan.with(|plan| {
            let cables = plan.iter().flat_map(|plan| &plan.cables);
            cables
                .map(|cable| {
                    let way = says::way_between(says::spot(cable.from), says::spot(cable.to));
                    (way, roles(cable))
                })
                .collect::<Vec<_>>()
        })
    });
    let notices = derived(move || {
        plan.with(|plan| {
            let findings = plan.iter().flat_map(|plan| &plan.findings);
            findings.map(says::switch_finding).collect::<Vec<_>>()
        })
    });
    let sections = derived(move || {
        plan.with(|plan| {
            plan.as_ref().map_or_else(Vec::new, |plan| {
                let rules = [Rule::SwitchHot, Rule::SwitchNeutral, Rule::RunTogether];
                rules::sections(&[], &rules, plan.edition)
            })
        })
    });
    let picture_says = derived(move || {
        rows.with(|rows| {
            let lines: Vec<String> = rows
                .iter()
                .map(|(way, roles)| format!("{way}, {roles}"))
                .collect();
            lines.join("; ")
        })
    });
    view! {
        <figure class="picture">
            <SwitchChain content says=picture_says />
            <figcaption>{says::chain_caption()}</figcaption>
        </figure>
        <section class="sheet" role="status">
            <Notices lines=notices />
            <Facts rows />
            <p class="quiet">{says::plus_ground()}</p>
            <CodeSections rows=sections />
        </section>
    }
}
