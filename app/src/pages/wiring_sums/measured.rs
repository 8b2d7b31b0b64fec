//! Quick sum: the resistance that voltages measured with the load off and on imply, and whether the wire explains it.

use calc::job::questions::wiring::drop::measured_drop_of;
use calc::job::sums::Sums;
use calc::job::{Units, fields};
use calc::quantity::fixed;
use calc::saved::Coded;
use calc::wiring::conductor::{Metal, Size};
use calc::wiring::measured_drop::Implied;
use leptos::prelude::*;

use super::super::sum_fields::{
    Shown, coded, edition_field, field, label, options, pick, size_spot, sizes, typed,
};
use super::super::sums::OpenSums;
use super::frame::{Outcome, SumFrame, Told};
use crate::markup::view;
use crate::words::wiring::{self as words, drop as says, rules};

/// Measured volts.
#[component]
pub fn SumMeasuredPage() -> impl IntoView {
    let open = OpenSums::load();
    let fields = view! {
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
    };
    view! { <SumFrame open title=says::measured_title() of fields=fields.into_any() after=().into_any() /> }
}

fn of(sums: &Sums) -> Outcome {
    let asked = measured_drop_of(&sums.measured_drop, sums.code_edition);
    Outcome::of(asked, says::measured_refusal, |found| {
        told(&found, sums.units)
    })
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

fn told(found: &Implied, units: Units) -> Told {
    let mut cautions = vec![says::caution_live().to_owned()];
    cautions.extend(words::cautions());
    Told {
        name: says::measured_run(),
        value: fixed(found.run_ohm, 3),
        unit: "Ω",
        rests: rests(found),
        notices: found.findings.iter().map(says::measured_finding).collect(),
        facts: facts(found, units),
        steps: found.steps.clone(),
        sections: rules::sections(&found.steps, &[], found.edition),
        cautions,
        ..Told::default()
    }
}
