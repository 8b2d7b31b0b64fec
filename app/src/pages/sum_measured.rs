//! Quick sum: the resistance that voltages measured with the load off and on imply, and whether the wire explains it.

use crate::markup::view;
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::drop::measured_drop_of;
use calc::job::{Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::conductor::{Metal, Size};
use calc::wiring::measured_drop::Implied;
use leptos::prelude::*;

use super::sum_fields::{
    Shown, coded, edition_field, field, label, options, pick, size_spot, sizes, typed,
};
use super::sums::{OpenSums, SumFoot};
use crate::answer::{Cautions, CodeSections, Facts, Notices, RestsOn, Working};
use crate::pictures::Figure;
use crate::reactive::{When, derived, memo};
use crate::shell::PageHeading;
use crate::words::wiring::{self as words, drop as says, rules};

/// Measured volts.
#[component]
pub fn SumMeasuredPage() -> impl IntoView {
    let open = OpenSums::load();
    let units = open.units();
    let edition = open.part(|sums| sums.code_edition);
    let entry = open.part(|sums| sums.measured_drop.clone());
    let asked = memo(move || entry.with(|entry| measured_drop_of(entry, edition.get())));
    let found = memo(move || asked.with(|asked| asked.as_ref().ok().cloned()));
    let refused = memo(move || {
        asked.with(|asked| match asked {
            Err(AskProblem::Refused(refusal)) => Some(says::measured_refusal(refusal)),
            _ => None,
        })
    });
    view! {
        <PageHeading text=label(says::measured_title()) />
        <p>{says::measured_hint()}</p>
        <section class="sheet">
            <h2>{says::at_load_heading()}</h2>
            <div class="pair level">
                {field(
                    open,
                    "load-idle",
                    label(says::load_idle_label()),
                    fields::MEASURED_VOLTS,
                    Shown::default(),
                    typed!(measured_drop.load_idle),
                )}
                {field(
                    open,
                    "load-loaded",
                    label(says::load_loaded_label()),
                    fields::MEASURED_VOLTS,
                    Shown::default(),
                    typed!(measured_drop.load_loaded),
                )}
            </div>
            {field(
                open,
                "measured-current",
                label(says::current_label()),
                fields::LOAD_AMPS,
                Shown::default(),
                typed!(measured_drop.current),
            )}
        </section>
        <section class="sheet">
            <h2>{says::at_panel_heading()}</h2>
            <div class="pair level">
                {field(
                    open,
                    "supply-idle",
                    label(says::supply_idle_label()),
                    fields::MEASURED_VOLTS,
                    Shown::optional(""),
                    typed!(measured_drop.supply_idle),
                )}
                {field(
                    open,
                    "supply-loaded",
                    label(says::supply_loaded_label()),
                    fields::MEASURED_VOLTS,
                    Shown::optional(""),
                    typed!(measured_drop.supply_loaded),
                )}
            </div>
            {field(
                open,
                "meter-step",
                label(says::meter_label()),
                fields::METER_STEP,
                Shown::hint(says::meter_hint()),
                typed!(measured_drop.meter_step),
            )}
        </section>
        <section class="sheet">
            <h2>{says::run_known_label()}</h2>
            {field(
                open,
                "measured-length",
                label(says::length_label()),
                fields::RUN,
                Shown::optional(""),
                typed!(measured_drop.length),
            )}
            <div class="pair level">
                {pick(
                    open,
                    "measured-size",
                    label(words::size_label()),
                    sizes(Size::Awg18, Size::Kcmil500),
                    size_spot!(measured_drop.size),
                )}
                {pick(
                    open,
                    "measured-metal",
                    label(words::metal_label()),
                    options(|metal: Metal| words::metal(metal).to_owned()),
                    coded!(Coded::word; measured_drop.metal),
                )}
            </div>
            {field(
                open,
                "measured-temperature",
                label(says::conductor_label()),
                fields::CONDUCTOR_TEMPERATURE,
                Shown::optional(says::conductor_hint()),
                typed!(measured_drop.conductor_temperature),
            )}
        </section>
        {edition_field(open)}
        <div role="status">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || found.read().is_some() fallback=|| view! { <p class="quiet">{words::say_more()}</p> }>
            <MeasuredAnswer found units />
        </When>
        <SumFoot open />
    }
}

fn rests(found: &Implied) -> String {
    let sentence = if found.lost_v < 0.0 {
        says::rests_gained(says::volts(-found.lost_v))
    } else {
        says::rests_measured(says::volts(found.lost_v))
    };
    let explained = found.expected_ohm.is_some() && found.findings.is_empty();
    let edition = words::by_edition(words::edition(found.edition));
    if explained {
        format!("{sentence} {} {edition}", says::found_none())
    } else {
        format!("{sentence} {edition}")
    }
}

fn facts(found: &Implied, units: Units) -> Vec<(String, String)> {
    let ohms = |ohm: f64| format!("{} Ω", fixed(ohm, 4));
    let mut rows = Vec::new();
    let mut row = |name: &str, figure: Option<String>| {
        if let Some(figure) = figure {
            rows.push((name.to_owned(), figure));
        }
    };
    row(says::row_source(), found.source_ohm.map(ohms));
    row(says::row_uncertain(), Some(ohms(found.uncertainty_ohm)));
    row(says::row_expected(), found.expected_ohm.map(ohms));
    row(says::row_excess(), found.excess_ohm.map(ohms));
    let feet = |ft: Option<f64>| {
        let more = ft.filter(|ft| *ft > 0.0);
        more.map(|ft| words::length(ft, units))
    };
    row(says::row_excess_ft(), feet(found.excess_conductor_ft));
    row(says::row_excess_run(), feet(found.excess_run_ft));
    rows
}

#[component]
fn MeasuredAnswer(found: Memo<Option<Implied>>, units: Memo<Units>) -> impl IntoView {
    let value = derived(move || {
        found.with(|found| {
            found
                .as_ref()
                .map(|found| fixed(found.run_ohm, 3))
                .unwrap_or_default()
        })
    });
    let rests_text =
        derived(move || found.with(|found| found.as_ref().map(rests).unwrap_or_default()));
    let notices = derived(move || {
        found.with(|found| {
            let findings = found.iter().flat_map(|found| &found.findings);
            findings.map(says::measured_finding).collect::<Vec<_>>()
        })
    });
    let rows = derived(move || {
        let units = units.get();
        found.with(|found| {
            found
                .as_ref()
                .map(|found| facts(found, units))
                .unwrap_or_default()
        })
    });
    let steps = derived(move || {
        found.with(|found| {
            found
                .as_ref()
                .map(|found| found.steps.clone())
                .unwrap_or_default()
        })
    });
    let sections = derived(move || {
        found.with(|found| {
            found.as_ref().map_or_else(Vec::new, |found| {
                rules::sections(&found.steps, &[], found.edition)
            })
        })
    });
    let mut cautions = vec![says::caution_live().to_owned()];
    cautions.extend(words::cautions());
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{says::measured_run()}</p>
                <Figure value unit=Signal::stored("Ω".to_owned()) />
                <RestsOn text=rests_text />
                <Notices lines=notices />
            </div>
            <Facts rows />
            <Working steps units />
            <CodeSections rows=sections />
            <Cautions lines=Signal::stored(cautions) />
        </section>
    }
}
