//! A run as it is entered for its voltage drop: the supply, the stretches, the loads, and what is usually left as it is.

use calc::job::sums::{DemandUnit, DropLoadEntry, DropMethod, DropSystem, DropWant, Sums};
use calc::job::{StretchEntry, Typed, fields};
use calc::saved::Coded;
use calc::wiring::conductor::Construction;
use leptos::prelude::*;

use super::super::sum_fields::{
    CodeSpot, Row, Shown, coded, few, field, label, list, options, pick, pick_from, rows,
    take_code, typed,
};
use super::super::sums::OpenSums;
use crate::entry::ChoiceOption;
use crate::markup::view;
use crate::reactive::{When, derived, draw};
use crate::words::wiring::{self as words, drop as says};

/// The usual nominal voltage of a system: 120 V single phase from hot to neutral, 208 V three phase from line to line.
const fn usual_volts(system: DropSystem) -> &'static str {
    match system {
        DropSystem::TwoWire | DropSystem::Multiwire => "120",
        DropSystem::ThreePhase => "208",
    }
}

/// Takes another system; a voltage that was left as it is usual for the one before follows.
fn take_system(sums: &mut Sums, _: u32, code: String) {
    let sum = &mut sums.voltage_drop;
    let as_usual = sum.volts.text == usual_volts(sum.system);
    take_code(&mut sum.system, code);
    if as_usual {
        sum.volts = Typed::plain(usual_volts(sum.system));
    }
}

/// The system and its voltage.
pub fn supply(open: OpenSums) -> AnyView {
    let systems = few(&[
        (DropSystem::TwoWire.code(), says::system_two_wire()),
        (DropSystem::Multiwire.code(), says::system_multiwire()),
        (DropSystem::ThreePhase.code(), says::system_three_phase()),
    ]);
    let spot = CodeSpot {
        row: 0,
        read: |sums, _| sums.voltage_drop.system.code().to_owned(),
        write: take_system,
    };
    view! {
        {pick(open, "drop-system", label(says::system_label()), systems, spot)}
        {field(
            open,
            "drop-volts",
            label(says::volts_label()),
            fields::VOLTS,
            Shown::hint(says::volts_hint()),
            typed!(voltage_drop.volts),
        )}
    }
    .into_any()
}

fn stretch(row: Row) -> AnyView {
    view! {
        {field(
            row.open,
            row.key("stretch"),
            row.named(says::stretch_length),
            fields::RUN,
            Shown::default(),
            typed!(voltage_drop.stretches[row.id].length),
        )}
        {row.take_out()}
    }
    .into_any()
}

/// The stretches of the run.
#[component]
pub fn Stretches(open: OpenSums) -> impl IntoView {
    let stretches = rows!(voltage_drop.stretches; says::add_stretch(), says::stretch_name, |sums, _, id| {
        sums.voltage_drop.stretches.push(StretchEntry { id, ..StretchEntry::default() });
    });
    view! {
        <section class="sheet">
            <h2>{says::stretches_heading()}</h2>
            {list(open, "layers", stretches, stretch)}
        </section>
    }
}

/// The place of a load's stretch: the far end where it names none.
const fn stretch_spot(row: u32) -> CodeSpot {
    CodeSpot {
        row,
        read: |sums, id| {
            let row = sums.voltage_drop.loads.iter().find(|row| row.id == id);
            row.and_then(|row| row.stretch)
                .map_or_else(String::new, |stretch| stretch.to_string())
        },
        write: |sums, id, code| {
            if let Some(row) = sums.voltage_drop.loads.iter_mut().find(|row| row.id == id) {
                row.stretch = code.parse().ok();
            }
        },
    }
}

/// The stretches that a load may stand at the end of; none where that is not asked: only the drop at each load asks it.
fn places(sums: &Sums) -> Vec<u32> {
    let sum = &sums.voltage_drop;
    if sum.want == DropWant::Drop && sum.stretches.len() > 1 {
        sum.stretches.iter().map(|row| row.id).collect()
    } else {
        Vec::new()
    }
}

fn load(row: Row) -> AnyView {
    let Row { open, id, .. } = row;
    let unit = open.part(move |sums| {
        let row = sums.voltage_drop.loads.iter().find(|row| row.id == id);
        row.map(|row| row.unit).unwrap_or_default()
    });
    let units = few(&[
        (DemandUnit::Amps.code(), says::in_amps()),
        (DemandUnit::Watts.code(), says::in_watts()),
        (DemandUnit::Ohms.code(), says::in_ohms()),
    ]);
    let amount = move || {
        field(
            open,
            row.key("load"),
            row.named(says::load_label),
            match unit.get() {
                DemandUnit::Amps => fields::LOAD_AMPS,
                DemandUnit::Watts => fields::LOAD_WATTS,
                DemandUnit::Ohms => fields::LOAD_OHMS,
            },
            Shown::default(),
            typed!(voltage_drop.loads[id].amount),
        )
    };
    let legs = open.part(|sums| sums.voltage_drop.system == DropSystem::Multiwire);
    let stretches = open.part(places);
    let ends = derived(move || {
        let mut ends = vec![ChoiceOption::new("", says::at_far_end())];
        let all = stretches.get();
        ends.extend(
            all.iter()
                .enumerate()
                .map(|(n, id)| ChoiceOption::new(id.to_string(), says::at_stretch(n + 1))),
        );
        ends
    });
    view! {
        <div class="pair level">
            {draw(amount)}
            {pick(
                open,
                row.key("load-unit"),
                row.named(says::load_in),
                units,
                coded!(DemandUnit::code; voltage_drop.loads[id].unit),
            )}
            <When when=legs>
                {pick(
                    open,
                    row.key("load-across"),
                    row.named(says::load_across),
                    options(|across| says::across(across).to_owned()),
                    coded!(Coded::word; voltage_drop.loads[id].across),
                )}
            </When>
            <When when=move || !stretches.read().is_empty()>
                {pick_from(open, row.key("load-at"), row.named(says::load_at), ends, stretch_spot(id))}
            </When>
        </div>
        {row.take_out()}
    }
    .into_any()
}

/// The loads on it.
#[component]
pub fn Loads(open: OpenSums) -> impl IntoView {
    let loads = rows!(voltage_drop.loads; says::add_load(), says::load_name, |sums, _, id| {
        sums.voltage_drop.loads.push(DropLoadEntry { id, ..DropLoadEntry::default() });
    });
    view! {
        <section class="sheet">
            <h2>{says::loads_heading()}</h2>
            {list(open, "rows", loads, load)}
        </section>
    }
}

fn construction(open: OpenSums) -> AnyView {
    let mut kinds = vec![ChoiceOption::new("", says::construction_usual())];
    kinds.extend(
        [Construction::Solid, Construction::Stranded]
            .map(|of| ChoiceOption::new(of.word(), words::construction(of))),
    );
    let spot = CodeSpot {
        row: 0,
        read: |sums, _| {
            let construction = sums.voltage_drop.construction;
            construction.map_or("", Coded::word).to_owned()
        },
        write: |sums, _, code| {
            let mut all = Construction::CODED.iter();
            let named = all.find(|(_, known)| *known == code);
            sums.voltage_drop.construction = named.map(|(construction, _)| *construction);
        },
    };
    pick(
        open,
        "drop-construction",
        label(says::construction_label()),
        kinds,
        spot,
    )
}

fn conduit(open: OpenSums) -> AnyView {
    pick(
        open,
        "drop-conduit",
        label(says::conduit_label()),
        options(|conduit| words::conduit(conduit).to_owned()),
        coded!(Coded::word; voltage_drop.conduit),
    )
}

fn power_factor(open: OpenSums) -> AnyView {
    field(
        open,
        "power-factor",
        label(says::power_factor_label()),
        fields::POWER_FACTOR,
        Shown::hint(says::power_factor_hint()),
        typed!(voltage_drop.power_factor),
    )
}

/// What is usually left as it is.
#[component]
pub fn Finer(open: OpenSums) -> impl IntoView {
    let want = open.part(|sums| sums.voltage_drop.want);
    let method = open.part(|sums| sums.voltage_drop.method);
    let methods = few(&[
        (DropMethod::Resistance.code(), says::method_dc()),
        (DropMethod::Impedance.code(), says::method_ac()),
        (DropMethod::Printed085.code(), says::method_printed()),
    ]);
    let by_method = move || match method.get() {
        DropMethod::Resistance => construction(open),
        DropMethod::Impedance => view! { {conduit(open)} {power_factor(open)} }.into_any(),
        DropMethod::Printed085 => conduit(open),
    };
    view! {
        {pick(open, "drop-method", label(says::method_label()), methods, coded!(DropMethod::code; voltage_drop.method))}
        {draw(by_method)}
        {field(
            open,
            "conductor-temperature",
            label(says::conductor_label()),
            fields::CONDUCTOR_TEMPERATURE,
            Shown::optional(says::conductor_hint()),
            typed!(voltage_drop.conductor_temperature),
        )}
        {field(
            open,
            "parallel",
            label(says::parallel_label()),
            fields::PARALLEL,
            Shown::optional(""),
            typed!(voltage_drop.parallel),
        )}
        <When when=move || want.get() == DropWant::Drop>
            {field(
                open,
                "source-volts",
                label(says::source_volts_label()),
                fields::VOLTS,
                Shown::optional(says::source_volts_hint()),
                typed!(voltage_drop.source_volts),
            )}
            {field(
                open,
                "feeder-drop",
                label(says::feeder_label()),
                fields::DROP_PERCENT,
                Shown::optional(""),
                typed!(voltage_drop.feeder_drop),
            )}
        </When>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_usual_voltage_follows_its_system() {
        let mut sums = Sums::default();
        take_system(&mut sums, 0, DropSystem::ThreePhase.code().to_owned());
        assert_eq!(sums.voltage_drop.volts.text, "208");
        sums.voltage_drop.volts = Typed::plain("480");
        take_system(&mut sums, 0, DropSystem::TwoWire.code().to_owned());
        assert_eq!(sums.voltage_drop.volts.text, "480");
    }
}
