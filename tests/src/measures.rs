//! What the measures of `make bench` share: one survey, as spots and as a job, and the wiring of a house.

#![allow(clippy::expect_used)]

use calc::floor::outline::rectangle;
use calc::floor::{Outline, Point, Spot};
use calc::job::{
    BoxCableEntry, BoxEntry, BreakerEntry, CableKind, CircuitEntry, DeviceEntry, Job, LoadEntry,
    Rest, StretchEntry, Typed, Units,
};
use calc::wiring::conductor::Size;
use calc::wiring::tables::BoxFamily;

/// The room's sides, inches.
pub const SIDES_IN: (f64, f64) = (480.0, 360.0);

/// A room of 40 by 30 ft with so many spots on a shaken grid: a fall, a sag and a reader's scatter. Always the same.
pub fn survey(count: usize) -> (Outline, Vec<Spot>) {
    let (width_in, length_in) = SIDES_IN;
    let columns = ((count as f64 * width_in / length_in).sqrt().ceil()) as usize;
    let rows = count.div_ceil(columns);
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut scatter = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state >> 11) as f64 / (1_u64 << 53) as f64 - 0.5
    };
    let spots = (0..count).map(|i| {
        let x_in = (((i % columns) as f64 + 0.5 + 0.6 * scatter()) / columns as f64) * width_in;
        let y_in = (((i / columns) as f64 + 0.5 + 0.6 * scatter()) / rows as f64) * length_in;
        let sag_in = 0.4 * (x_in / width_in * 3.1).sin() * (y_in / length_in * 3.1).sin();
        Spot {
            at: Point::new(x_in, y_in),
            height_in: x_in / 960.0 - sag_in + 0.03 * scatter(),
        }
    });
    (
        rectangle(width_in, length_in).expect("a room"),
        spots.collect(),
    )
}

/// The same survey as a job's text, read up from the datum.
pub fn survey_job(id: &str, count: usize) -> String {
    let mut job = Job::new(id, "Measure", "2026-01-01T00:00:00Z", Units::FeetInches);
    let room = job.rooms.first_mut().expect("a new job has a room");
    room.outline.width = Typed::plain(SIDES_IN.0.to_string());
    room.outline.length = Typed::plain(SIDES_IN.1.to_string());
    room.survey.way = calc::job::ReadingWay::UpFromLow;
    let entry = |value: f64| Typed::new(format!("{value:.4}"), "in");
    room.survey.spots = (100..)
        .zip(survey(count).1)
        .map(|(id, spot)| calc::job::Spot {
            id,
            x: entry(spot.at.x_in),
            y: entry(spot.at.y_in),
            reading: entry(spot.height_in),
            checked: String::new(),
            rest: Rest::new(),
        })
        .collect();
    job.next_id = 100_000;
    calc::job::file::write(&job)
}

/// A house of so many circuits in a panel of as many spaces, and so many boxes on their way, as a job's text. Each circuit
/// has two stretches, two loads and one that is planned; neighbours in a column share a neutral.
pub fn wired_job(id: &str, circuits: u32, boxes: u32) -> String {
    let mut job = Job::new(id, "Measure", "2026-01-01T00:00:00Z", Units::FeetInches);
    job.panel.spaces = circuits;
    for readings in [&mut job.panel.supply.idle, &mut job.panel.supply.loaded] {
        readings.across = Typed::plain("240");
        readings.a_neutral = Typed::plain("120");
        readings.b_neutral = Typed::plain("120");
    }
    for number in 0..boxes {
        let cables = (0..3).map(|_| BoxCableEntry::new(job.fresh_id(), Some(Size::Awg12)));
        let cables = cables.collect();
        let device = DeviceEntry::new(job.fresh_id(), Some(Size::Awg12));
        let found = BoxEntry {
            family: BoxFamily::Device,
            trade_size: "3 x 2 x 3-1/2".to_owned(),
            cables,
            devices: vec![device],
            ..BoxEntry::new(job.fresh_id(), format!("Box {number}"))
        };
        job.boxes.push(found);
    }
    for space in 1..=circuits {
        let breaker = job.fresh_id();
        job.panel.breakers.push(BreakerEntry {
            id: breaker,
            space,
            rating: Typed::plain("20"),
            label: format!("Circuit {space}"),
            ..BreakerEntry::default()
        });
        let mut circuit = CircuitEntry::new(job.fresh_id(), format!("Circuit {space}"), job.units);
        circuit.breaker = Some(breaker);
        circuit.laid.size = Some(Size::Awg12);
        circuit.laid.cable = CableKind::Multiwire;
        circuit.receptacles = Typed::plain("6");
        circuit.outlets = Typed::plain("8");
        circuit.stretches = (0..2)
            .map(|_| StretchEntry {
                id: job.fresh_id(),
                length: Typed::plain("30"),
                ..StretchEntry::default()
            })
            .collect();
        let mut load = |watts: &str| LoadEntry {
            id: job.fresh_id(),
            name: "Load".to_owned(),
            amount: Typed::plain(watts),
            ..LoadEntry::default()
        };
        circuit.loads = vec![load("600"), load("300")];
        circuit.planned = vec![load("150")];
        if boxes > 0 {
            let at = (space % boxes) as usize;
            circuit.boxes = job
                .boxes
                .get(at)
                .map(|found| found.id)
                .into_iter()
                .collect();
        }
        // 1 with 3, 2 with 4, 5 with 7 and so on: the one above it in its column, on the other leg.
        if space % 4 == 3 || space % 4 == 0 {
            let above = job.circuits.iter().rev().nth(1).map(|above| above.id);
            circuit.neutral_with.extend(above);
        }
        job.circuits.push(circuit);
    }
    calc::job::file::write(&job)
}

#[cfg(test)]
mod tests {
    use calc::job::questions::answers::answers;

    use super::*;

    #[test]
    fn the_house_of_the_measure_is_answered() {
        let job = calc::job::file::read(&wired_job("house", 42, 30)).expect("a job");
        let wiring = answers(&job).wiring;
        assert!(
            wiring
                .panel
                .is_some_and(|panel| panel.is_ok_and(|view| view.troubles.is_empty()))
        );
        assert_eq!(wiring.circuits.len(), 42);
        assert!(wiring.circuits.iter().all(|circuit| circuit.answer.is_ok()));
        assert!(wiring.neutrals.iter().all(|neutral| neutral.answer.is_ok()));
        assert_eq!(wiring.boxes.len(), 30);
        assert!(wiring.boxes.iter().all(|found| found.answer.is_ok()));
    }
}
