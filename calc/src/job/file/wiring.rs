//! The row ids of the wiring, and of what is bought and quoted.

use super::{Job, JobRefusal};

/// Checks the ids of a list, given the place of each in the document.
type Rows<'a> = &'a mut dyn FnMut(
    &dyn Fn(usize) -> String,
    &mut dyn Iterator<Item = u32>,
) -> Result<(), JobRefusal>;

/// Each list of rows by itself; the loads of a circuit and what is planned for it are one list.
pub(super) fn rows(job: &Job, check: Rows<'_>) -> Result<(), JobRefusal> {
    check(
        &|i| format!("panel.breakers[{i}].id"),
        &mut job.panel.breakers.iter().map(|b| b.id),
    )?;
    check(
        &|i| format!("circuits[{i}].id"),
        &mut job.circuits.iter().map(|c| c.id),
    )?;
    check(
        &|i| format!("boxes[{i}].id"),
        &mut job.boxes.iter().map(|b| b.id),
    )?;
    check(
        &|i| format!("opened[{i}].id"),
        &mut job.opened.iter().map(|o| o.id),
    )?;
    check(
        &|i| format!("buying.own[{i}].id"),
        &mut job.buying.own.iter().map(|o| o.id),
    )?;
    check(
        &|i| format!("quote.lines[{i}].id"),
        &mut job.quote.lines.iter().map(|l| l.id),
    )?;
    for (n, circuit) in job.circuits.iter().enumerate() {
        let at = |list: &'static str| move |i: usize| format!("circuits[{n}].{list}[{i}].id");
        check(
            &at("stretches"),
            &mut circuit.stretches.iter().map(|s| s.id),
        )?;
        let there = circuit.loads.len();
        let load_at = |i: usize| match i.checked_sub(there) {
            Some(planned) => format!("circuits[{n}].planned[{planned}].id"),
            None => format!("circuits[{n}].loads[{i}].id"),
        };
        let loads = circuit.loads.iter().chain(&circuit.planned);
        check(&load_at, &mut loads.map(|l| l.id))?;
        check(
            &at("laid.beside"),
            &mut circuit.laid.beside.iter().map(|b| b.id),
        )?;
    }
    for (n, found) in job.boxes.iter().enumerate() {
        let at = |list: &'static str| move |i: usize| format!("boxes[{n}].{list}[{i}].id");
        check(&at("rings"), &mut found.rings.iter().map(|r| r.id))?;
        check(&at("barriers"), &mut found.barriers.iter().map(|b| b.id))?;
        check(&at("cables"), &mut found.cables.iter().map(|c| c.id))?;
        check(
            &at("conductors"),
            &mut found.conductors.iter().map(|c| c.id),
        )?;
        check(&at("devices"), &mut found.devices.iter().map(|d| d.id))?;
        check(
            &at("terminal_blocks"),
            &mut found.terminal_blocks.iter().map(|t| t.id),
        )?;
    }
    for (n, opened) in job.opened.iter().enumerate() {
        let at = |list: &'static str| move |i: usize| format!("opened[{n}].{list}[{i}].id");
        check(&at("boxes"), &mut opened.boxes.iter().map(|b| b.id))?;
        check(&at("breakers"), &mut opened.breakers.iter().map(|b| b.id))?;
        check(&at("cables"), &mut opened.cables.iter().map(|c| c.id))?;
        check(&at("devices"), &mut opened.devices.iter().map(|d| d.id))?;
        check(&at("readings"), &mut opened.readings.iter().map(|r| r.id))?;
        for (m, cable) in opened.cables.iter().enumerate() {
            check(
                &|i| format!("opened[{n}].cables[{m}].loads[{i}].id"),
                &mut cable.loads.iter().map(|l| l.id),
            )?;
        }
    }
    Ok(())
}
