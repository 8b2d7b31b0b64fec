//! The fan on its circuit: its current, and planning it in one tap.

use calc::job::questions::finish::air::load_of;
use calc::job::{Job, LoadEntry, fields};
use calc::quantity::fixed;
use leptos::prelude::*;

use crate::answer::Working;
use crate::entry::{ChoiceOption, Pick};
use crate::house::{House, circuit_name, fails};
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::pages::closing::{may, pair};
use crate::pages::job_fields::at;
use crate::pages::jobs::shown_room;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::closing::air as words;

#[component]
pub fn OnCircuit(room: OpenRoom) -> impl IntoView {
    let id = room.id;
    let units = room.open.units();
    let air = room.part(|r| r.air.clone());
    let load = memo(move || air.with(load_of).ok());
    let says = move || {
        load.get()
            .map(|load| words::load_says(fixed(load.amps, 2), fixed(load.volt_amps, 0)))
    };
    let by_watts = memo(move || load.get().is_some_and(|load| load.fan_by_watts));
    let steps = derived(move || load.get().map_or_else(Vec::new, |load| load.working()));
    // A quick sum has no circuits.
    let planning = (!room.open.is_loose()).then(|| {
        let there = memo(move || load.read().is_some());
        view! {
            <When when=move || there.get()>
                <Plan room />
            </When>
        }
    });
    view! {
        <section class="sheet">
            <h2>{words::load_heading()}</h2>
            {may(room, "fan-amps", words::amps_label(), words::amps_hint(), fields::SOME_AMPS, at!(room id; air.fan_amps))}
            {may(room, "fan-watts", words::watts_label(), "", fields::LOAD_WATTS, at!(room id; air.fan_watts))}
            {pair(
                may(room, "light-watts", words::light_label(), "", fields::LOAD_WATTS, at!(room id; air.light_watts)),
                may(room, "heater-watts", words::heater_label(), "", fields::LOAD_WATTS, at!(room id; air.heater_watts)),
            )}
            <p role="status">{say(says)}</p>
            <When when=move || by_watts.get()>
                <p class="quiet">{words::by_watts()}</p>
            </When>
            <Working steps units />
            {planning}
        </section>
    }
}

/// The loads of a room's fan by their names; none where the room is gone.
fn loads(job: &Job, room: u32) -> Vec<LoadEntry> {
    job.room(room).map_or_else(Vec::new, |room| {
        let name = shown_room(&room.name);
        room.air.loads([
            words::name_fan(&name),
            words::name_light(&name),
            words::name_heater(&name),
        ])
    })
}

/// The circuit that a room's fan is planned on, and whether with just these figures.
fn planned(job: &Job, room: u32) -> Option<(u32, bool)> {
    let loads = loads(job, room);
    let fan = loads.first()?;
    let of = |load: &LoadEntry| {
        let found = job.circuits.iter().find_map(|circuit| {
            let mut all = circuit.planned.iter();
            let known = all.find(|known| known.name == load.name)?;
            Some((
                circuit.id,
                known.amount == load.amount && known.unit == load.unit,
            ))
        });
        found.unwrap_or((0, false))
    };
    let (circuit, _) = Some(of(fan)).filter(|(circuit, _)| *circuit != 0)?;
    let same = loads.iter().all(|load| of(load) == (circuit, true));
    Some((circuit, same))
}

#[component]
fn Plan(room: OpenRoom) -> impl IntoView {
    let open = room.open;
    let id = room.id;
    let house = House::here();
    let into = RwSignal::new(String::new());
    let circuits = open.part(|job| {
        job.circuits
            .iter()
            .map(|circuit| (circuit.id, circuit_name(&circuit.name)))
            .collect::<Vec<_>>()
    });
    let on = open.part(move |job| planned(job, id));
    let options = derived(move || {
        circuits
            .get()
            .into_iter()
            .map(|(circuit, name)| ChoiceOption::new(circuit.to_string(), name))
            .collect::<Vec<_>>()
    });
    // What was picked, else where it is planned, else the first.
    let value = derived(move || {
        let picked = into.get();
        if !picked.is_empty() {
            return picked;
        }
        let first = circuits.with(|all| all.first().map(|(circuit, _)| *circuit));
        let now = on.get().map(|(circuit, _)| circuit).or(first);
        now.map(|circuit| circuit.to_string()).unwrap_or_default()
    });
    let put = move |_| {
        if let Ok(circuit) = value.get_untracked().parse() {
            open.change(|job| {
                let loads = loads(job, id);
                job.plan_loads(circuit, loads);
            });
        }
    };
    let none = memo(move || circuits.read().is_empty());
    let outcome = move || {
        let (circuit, same) = on.get()?;
        let name = house.circuit_name(circuit);
        let says = if same {
            words::planned_on(name)
        } else {
            words::planned_other(name)
        };
        let judged = house.circuits.with(|all| {
            let found = all.iter().find(|(of, _)| *of == circuit);
            found.and_then(|(_, judged)| judged.as_ref().ok().map(|view| fails(view).len()))
        });
        let (look, rules) = match judged {
            None => (true, words::not_judged().to_owned()),
            Some(0) => (false, words::rules_hold().to_owned()),
            Some(1) => (true, words::one_rule_fails().to_owned()),
            Some(count) => (true, words::rules_fail(count)),
        };
        Some(view! {
            <p class:look=!same>{says}</p>
            <p class:look=look>{rules}</p>
            <a class="button" href=paths::row(&open.id(), Stage::Circuits, circuit)>{words::see_circuit()}</a>
        })
    };
    let to_circuits = paths::stage(&open.id(), id, Stage::Circuits);
    view! {
        <When when=move || none.get()>
            <p>{words::no_circuits()}</p>
            <a class="button" href=to_circuits.clone()>{words::to_circuits()}</a>
        </When>
        <div class="stack-tight" hidden=move || none.get()>
            <Pick
                id="fan-circuit".to_owned()
                label=Signal::stored(words::circuit_label().to_owned())
                options
                value
                on_pick=Callback::new(move |code| into.set(code))
            />
            <button type="button" class="button main" on:click=put>{words::put_on()}</button>
            <div role="status">{draw(outcome)}</div>
        </div>
    }
}
