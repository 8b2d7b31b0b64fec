//! What is at the far end of a cable, with what custom says where nothing was entered.

use super::{hots, load_of};
use crate::job::questions::Reader;
use crate::job::questions::wiring::{ACROSS_VOLTS, LEG_VOLTS};
use crate::job::{FarLoadEntry, OpenedCableEntry};
use crate::wiring::open_box::description::{Across, Colour, FarSwitch, SwitchForm, Terminal};

/// The two conductors that a load lies across where its entry names one twice: the first hot and the first white, else
/// the first two that are not bare.
pub fn usual_load(conductors: &[Colour]) -> (usize, usize) {
    let hots = hots(conductors);
    let white = conductors.iter().position(|c| *c == Colour::White);
    let mut insulated =
        (0..conductors.len()).filter(|at| conductors.get(*at).is_some_and(|c| *c != Colour::Bare));
    match (hots.first(), white, hots.get(1)) {
        (Some(hot), Some(white), _) => (*hot, white),
        (Some(hot), None, Some(other)) => (*hot, *other),
        _ => (insulated.next().unwrap_or(0), insulated.next().unwrap_or(1)),
    }
}

pub(super) fn loads(reader: &mut Reader, entry: &OpenedCableEntry) -> Vec<Across> {
    entry
        .loads
        .iter()
        .map(|load| {
            let (from, to) = across(entry, load);
            let is_hot = |at: usize| entry.conductors.get(at).is_some_and(|c| c.is_hot());
            let volts = if is_hot(from) && is_hot(to) {
                ACROSS_VOLTS
            } else {
                LEG_VOLTS
            };
            Across {
                from,
                to,
                load: load_of(reader, load, volts),
            }
        })
        .collect()
}

fn across(entry: &OpenedCableEntry, load: &FarLoadEntry) -> (usize, usize) {
    if load.from == load.to {
        usual_load(&entry.conductors)
    } else {
        (load.from as usize, load.to as usize)
    }
}

/// The screws of the switch at the far end of a cable, by custom: a switch loop goes down on the white and comes back
/// on the black; of a three-way switch black is on the common and the others are travellers. With a load behind the
/// switch the black comes to it (or two travellers do) and the white goes past it. Source: common practice.
pub fn usual_screws(
    conductors: &[Colour],
    form: SwitchForm,
    with_load: bool,
) -> Vec<(Terminal, usize)> {
    let hots = hots(conductors);
    let whites =
        (0..conductors.len()).filter(|at| conductors.get(*at).is_some_and(|c| *c == Colour::White));
    let mut wires = hots;
    if !with_load {
        wires.extend(whites);
    }
    let screws: &[Terminal] = match (form, with_load) {
        (SwitchForm::SinglePole, true) => &[Terminal::First],
        // The last of the wires is the white or the marked white: the supply of the switch.
        (SwitchForm::SinglePole, false) => &[Terminal::Second, Terminal::First],
        (_, true) => &[Terminal::TravellerOne, Terminal::TravellerTwo],
        (_, false) => &[
            Terminal::Common,
            Terminal::TravellerOne,
            Terminal::TravellerTwo,
        ],
    };
    screws.iter().copied().zip(wires).collect()
}

/// The switch at the far end: the screws that were entered, the others by custom.
pub(super) fn switch(reader: &mut Reader, entry: &OpenedCableEntry) -> FarSwitch {
    let load = entry.loads.first();
    let named: Vec<(Terminal, usize)> = entry
        .screws
        .iter()
        .map(|screw| (screw.terminal, screw.conductor as usize))
        .collect();
    let mut on = named.clone();
    for (terminal, wire) in usual_screws(&entry.conductors, entry.switch, load.is_some()) {
        if !named.iter().any(|(t, w)| *t == terminal || *w == wire) {
            on.push((terminal, wire));
        }
    }
    let white = entry.conductors.iter().position(|c| *c == Colour::White);
    FarSwitch {
        form: entry.switch,
        on,
        load: load.map(|load| {
            let to = if load.from == load.to {
                white.unwrap_or(0)
            } else {
                load.to as usize
            };
            (load_of(reader, load, LEG_VOLTS), to)
        }),
    }
}
