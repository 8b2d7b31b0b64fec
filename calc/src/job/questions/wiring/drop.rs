//! Voltage drop along a run, the longest run, the smallest size, and what a measured drop implies.

use serde::Serialize;

use super::AskProblem;
use crate::job::questions::{EntryProblem, Reader};
use crate::job::sums::{DemandUnit, DropMethod, DropSum, DropSystem, MeasuredSum};
use crate::job::{CodeEdition, StretchEntry, fields};
use crate::quantity::Typed;
use crate::wiring::conductor::Metal;
use crate::wiring::impedance::{Method, TABLE_C, Wire};
use crate::wiring::measured_drop::{
    GivenRun, Implied, MeasuredDrop, MeasuredRefusal, Readings, implied,
};
use crate::wiring::voltage_drop::{
    Across, Demand, DropLoad, DropRefusal, LongestRun, ProfilePoint, Run, SingleLoad,
    SmallestForDrop, StepUp, Stretch, System, VoltageDrop, longest_run, smallest_for_drop, step_up,
    voltage_drop,
};

/// The drop along a run, its plot, and what a size more would save.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DropAnswer {
    /// The run as asked about.
    pub run: Run,
    /// The drop.
    pub drop: VoltageDrop,
    /// Voltage against distance.
    pub profile: Vec<ProfilePoint>,
    /// What the next size would save; nothing at the largest.
    pub step_up: Option<StepUp>,
}

/// The drop along the run of the quick sum.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps it from being answered.
pub fn voltage_drop_of(
    sum: &DropSum,
    edition: CodeEdition,
) -> Result<DropAnswer, AskProblem<DropRefusal>> {
    answer(drop_run(sum, edition)?).map_err(AskProblem::Refused)
}

pub(super) fn answer(run: Run) -> Result<DropAnswer, DropRefusal> {
    let drop = voltage_drop(&run)?;
    Ok(DropAnswer {
        profile: drop.profile(&run)?,
        step_up: step_up(&run)?,
        drop,
        run,
    })
}

/// The run of the quick sum.
///
/// # Errors
/// Every entry that is missing or refused; a load at a stretch that is gone.
pub fn drop_run(sum: &DropSum, edition: CodeEdition) -> Result<Run, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let system = system(&mut reader, sum);
    let source_volts = reader.may("source_volts", &fields::VOLTS, &sum.source_volts);
    let size = reader.size("size", sum.size);
    let wire = wire(&mut reader, sum);
    let parallel = reader.count_or("parallel", &fields::PARALLEL, &sum.parallel, 1);
    let feeder_percent = feeder_percent(&mut reader, &sum.feeder_drop);
    let mut stretches = stretches(&mut reader, &sum.stretches);
    if stretches.is_empty() {
        reader.no_row().missing("stretches");
    }
    for load in &sum.loads {
        reader.row(load.id);
        let demand = demand(&mut reader, load.unit, &load.amount);
        let across = match system {
            System::Multiwire { .. } => load.across,
            System::TwoWire { .. } | System::ThreePhase { .. } => Across::A,
        };
        match stretch_at(&sum.stretches, load.stretch).and_then(|at| stretches.get_mut(at)) {
            Some(stretch) => stretch.loads.push(DropLoad { demand, across }),
            None => reader.missing("stretch"),
        }
    }
    reader.finish(Run {
        edition,
        system,
        source_volts,
        source_ohm: 0.0,
        size,
        wire,
        parallel,
        stretches,
        feeder_percent,
    })
}

fn system(reader: &mut Reader, sum: &DropSum) -> System {
    let volts = reader.need("volts", &fields::VOLTS, &sum.volts);
    match sum.system {
        DropSystem::TwoWire => System::TwoWire { volts },
        DropSystem::Multiwire => System::Multiwire { leg_volts: volts },
        DropSystem::ThreePhase => System::ThreePhase { volts },
    }
}

fn wire(reader: &mut Reader, sum: &DropSum) -> Wire {
    let conduit = sum.conduit;
    Wire {
        metal: sum.metal,
        method: match sum.method {
            DropMethod::Resistance => Method::Resistance {
                construction: sum.construction,
                coated: false,
            },
            DropMethod::Impedance => Method::Impedance {
                conduit,
                power_factor: reader.need("power_factor", &fields::POWER_FACTOR, &sum.power_factor),
            },
            DropMethod::Printed085 => Method::Printed085 { conduit },
        },
        conductor_c: conductor_c(reader, &sum.conductor_temperature),
    }
}

fn conductor_c(reader: &mut Reader, typed: &Typed) -> f64 {
    reader
        .may(
            "conductor_temperature",
            &fields::CONDUCTOR_TEMPERATURE,
            typed,
        )
        .unwrap_or(TABLE_C)
}

/// What a feeder loses, percent; a blank counts as none.
pub(super) fn feeder_percent(reader: &mut Reader, typed: &Typed) -> f64 {
    reader
        .may("feeder_drop", &fields::DROP_PERCENT, typed)
        .unwrap_or(0.0)
}

/// The stretches of a run, without loads.
pub(super) fn stretches(reader: &mut Reader, entries: &[StretchEntry]) -> Vec<Stretch> {
    entries
        .iter()
        .map(|entry| Stretch {
            length_ft: reader
                .row(entry.id)
                .feet("length", &fields::RUN, &entry.length),
            loads: Vec::new(),
        })
        .collect()
}

/// The place of a load's stretch: the last where the load names none.
pub(super) fn stretch_at(entries: &[StretchEntry], stretch: Option<u32>) -> Option<usize> {
    match stretch {
        None => entries.len().checked_sub(1),
        Some(id) => entries.iter().position(|entry| entry.id == id),
    }
}

fn demand(reader: &mut Reader, unit: DemandUnit, amount: &Typed) -> Demand {
    match unit {
        DemandUnit::Amps => Demand::Amps(reader.need("amount", &fields::LOAD_AMPS, amount)),
        DemandUnit::Watts => Demand::Watts(reader.need("amount", &fields::LOAD_WATTS, amount)),
        DemandUnit::Ohms => Demand::Ohms(reader.need("amount", &fields::LOAD_OHMS, amount)),
    }
}

/// The longest run that keeps the limit, with all loads of the quick sum at its end.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps it from being answered.
pub fn longest_run_of(
    sum: &DropSum,
    edition: CodeEdition,
) -> Result<LongestRun, AskProblem<DropRefusal>> {
    let mut reader = Reader::default();
    let size = reader.size("size", sum.size);
    let load = single_load(&mut reader, sum, edition);
    let load = reader.finish(load)?;
    load.and_then(|load| longest_run(size, &load))
        .map_err(AskProblem::Refused)
}

/// The smallest size that keeps the limit over the run of the quick sum, with all its loads at the end.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps it from being answered.
pub fn smallest_for_drop_of(
    sum: &DropSum,
    edition: CodeEdition,
) -> Result<SmallestForDrop, AskProblem<DropRefusal>> {
    let mut reader = Reader::default();
    let load = single_load(&mut reader, sum, edition);
    let stretches = stretches(&mut reader, &sum.stretches);
    if stretches.is_empty() {
        reader.no_row().missing("stretches");
    }
    let load = reader.finish(load)?;
    let length_ft = stretches.iter().map(|stretch| stretch.length_ft).sum();
    load.and_then(|load| smallest_for_drop(length_ft, &load))
        .map_err(AskProblem::Refused)
}

/// The loads as one at the end, each leg of a multiwire run for itself; or why they can't be one: a resistance takes what
/// the voltage gives it, and has no power factor and no three phases, as along the run.
fn single_load(
    reader: &mut Reader,
    sum: &DropSum,
    edition: CodeEdition,
) -> Result<SingleLoad, DropRefusal> {
    let system = system(reader, sum);
    let wire = wire(reader, sum);
    let limit_percent = reader.need("limit", &fields::DROP_LIMIT, &sum.limit);
    let parallel = reader.count_or("parallel", &fields::PARALLEL, &sum.parallel, 1);
    if sum.loads.is_empty() {
        reader.missing("loads");
    }
    let (mut a, mut b) = (0.0, 0.0);
    let mut refused = None;
    let power_factor = wire.method.power_factor();
    for load in &sum.loads {
        reader.row(load.id);
        let multiwire = matches!(system, System::Multiwire { .. });
        let across = if multiwire { load.across } else { Across::A };
        let volts = match across {
            Across::A | Across::B => system.nominal(),
            Across::Both => 2.0 * system.nominal(),
        };
        let three_phase = matches!(system, System::ThreePhase { .. });
        let phases = if three_phase { 3f64.sqrt() } else { 1.0 };
        let amps = match demand(reader, load.unit, &load.amount) {
            Demand::Amps(amps) => amps,
            Demand::Watts(watts) => watts / (volts * phases * power_factor),
            Demand::Ohms(ohm) => {
                if three_phase || power_factor < 1.0 {
                    let stretch = stretch_at(&sum.stretches, load.stretch).unwrap_or(0);
                    refused = refused.or(Some(DropRefusal::Ohms { stretch }));
                }
                volts / ohm
            }
        };
        if across != Across::B {
            a += amps;
        }
        if across != Across::A {
            b += amps;
        }
    }
    match refused {
        Some(refusal) => Err(refusal),
        None => Ok(SingleLoad {
            edition,
            system,
            current_a: a,
            current_b_a: b,
            wire,
            parallel,
            limit_percent,
        }),
    }
}

/// What the measured voltages of the quick sum imply.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps it from being answered.
pub fn measured_drop_of(
    sum: &MeasuredSum,
    edition: CodeEdition,
) -> Result<Implied, AskProblem<MeasuredRefusal>> {
    implied(&measured(sum, edition)?).map_err(AskProblem::Refused)
}

/// The measured voltages of the quick sum.
///
/// # Errors
/// Every entry that is missing or refused; one of the two at the panel, or a length without a size, wants the other.
pub fn measured(
    sum: &MeasuredSum,
    edition: CodeEdition,
) -> Result<MeasuredDrop, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let mut volts = |name, typed| reader.need(name, &fields::MEASURED_VOLTS, typed);
    let load = Readings {
        idle_v: volts("load_idle", &sum.load_idle),
        loaded_v: volts("load_loaded", &sum.load_loaded),
    };
    let at_panel = !(sum.supply_idle.is_blank() && sum.supply_loaded.is_blank());
    let supply = at_panel.then(|| Readings {
        idle_v: volts("supply_idle", &sum.supply_idle),
        loaded_v: volts("supply_loaded", &sum.supply_loaded),
    });
    let current_a = reader.need("current", &fields::LOAD_AMPS, &sum.current);
    let meter_step_v = reader.need("meter_step", &fields::METER_STEP, &sum.meter_step);
    let known = !sum.length.is_blank();
    let run = known.then(|| GivenRun {
        length_ft: reader.feet("length", &fields::RUN, &sum.length),
        size: reader.size("size", sum.size),
        wire: resistance(
            sum.metal,
            conductor_c(&mut reader, &sum.conductor_temperature),
        ),
    });
    reader.finish(MeasuredDrop {
        edition,
        supply,
        load,
        current_a,
        meter_step_v,
        run,
    })
}

/// A conductor by its direct-current resistance, made as usual.
pub(super) const fn resistance(metal: Metal, conductor_c: f64) -> Wire {
    Wire {
        metal,
        conductor_c,
        ..Wire::COPPER
    }
}
