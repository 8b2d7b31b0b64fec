//! The drop at the far end, against what is recommended.

use super::super::super::tables::{BRANCH_DROP_PERCENT, FEEDER_DROP_PERCENT, TOTAL_DROP_PERCENT};
use super::super::super::voltage_drop::{
    Across, Demand, DropLoad, Run, Stretch, System, VoltageDrop, voltage_drop,
};
use super::*;

/// What is compared: the check, its rule, the most that is recommended, and the figure.
type Held = (Check, Rule, f64, fn(&VoltageDrop) -> f64);

const HELD: [Held; 2] = [
    (
        Check::BranchDrop,
        Rule::BranchDrop,
        BRANCH_DROP_PERCENT,
        |drop| drop.worst_percent,
    ),
    (
        Check::TotalDrop,
        Rule::TotalDrop,
        TOTAL_DROP_PERCENT,
        |drop| drop.total_percent,
    ),
];

pub(super) fn judge(circuit: &Circuit, judge: &mut Judge, steps: &mut Vec<Step>) {
    if circuit.feeder_percent > 0.0 {
        let compared = at_most(circuit.feeder_percent, FEEDER_DROP_PERCENT, Unit::Percent);
        let (check, rule) = (Check::FeederDrop, Rule::FeederDrop);
        judge.compared(check, rule, Outcome::Advised, compared, None);
    }
    if circuit.stretches_ft.is_empty() {
        return;
    }
    let planned = judge.pole.after.is_some();
    let after = planned.then(|| run(circuit, true)).transpose();
    match (run(circuit, false), after) {
        (Ok(now), Ok(after)) => {
            for (check, rule, limit, of) in HELD {
                let compare = |drop: &VoltageDrop| at_most(of(drop), limit, Unit::Percent);
                judge.compared(
                    check,
                    rule,
                    Outcome::Advised,
                    compare(&now),
                    after.as_ref().map(compare),
                );
            }
            steps.extend(after.unwrap_or(now).steps);
        }
        (Err(why), _) | (_, Err(why)) => judge.not_judged(Check::BranchDrop, Rule::BranchDrop, why),
    }
}

fn run(circuit: &Circuit, planned: bool) -> Result<VoltageDrop, NotJudged> {
    let mut stretches: Vec<Stretch> = circuit
        .stretches_ft
        .iter()
        .map(|&length_ft| Stretch {
            length_ft,
            loads: Vec::new(),
        })
        .collect();
    for load in circuit.loads.iter().filter(|load| planned || !load.planned) {
        let no_stretch = NotJudged::NoStretch {
            load: load.id,
            stretch: load.stretch,
        };
        let stretch = stretches.get_mut(load.stretch).ok_or(no_stretch)?;
        stretch.loads.push(DropLoad {
            demand: Demand::Amps(loads::amps(circuit, load)),
            across: Across::A,
        });
    }
    let run = Run {
        edition: circuit.edition,
        system: System::TwoWire {
            volts: circuit.volts,
        },
        source_volts: None,
        source_ohm: 0.0,
        size: circuit.conductor.size,
        wire: Wire {
            metal: circuit.conductor.metal,
            ..circuit.wire
        },
        parallel: 1,
        stretches,
        feeder_percent: circuit.feeder_percent,
    };
    voltage_drop(&run).map_err(NotJudged::Drop)
}
