//! The opened box of the demonstration job: the landing where the hall and stair receptacles part. Both circuits hang
//! on one row of the panel, on one leg, and share one white: it carries the sum of both, and with the hall's breaker off
//! the white is still fed through whatever is plugged in on the stairs. Here the white has come loose in the panel, too.

use crate::job::starting::New;
use crate::job::{Job, ReadingEntry, ReadingKind, SpotEntry, SpotKind, Typed};
use crate::wiring::open_box::description::{Colour, LoadKind};

use Colour::{Bare, Black, Red, White};

/// Opens the landing's box.
pub(super) fn add(job: &mut Job) {
    let on = |label: &str| {
        let found = job.panel.breakers.iter().find(|b| b.label == label);
        found.map(|breaker| breaker.id)
    };
    let (Some(hall), Some(stair)) = (on("Hall receptacles"), on("Stair receptacles")) else {
        return;
    };
    let mut new = New::of(job);
    new.entry.name = "Landing, behind the blank cover".to_owned();
    let one = new.breaker_of_panel(hall);
    let two = new.breaker_of_panel(stair);
    let a = new.fed(
        &[Black, Red, White, Bare],
        &[(0, one, false), (1, two, false)],
    );
    let b = new.lead_to_load(LoadKind::Motor, "900", "Vacuum in the hall");
    let c = new.lead_to_load(LoadKind::Heater, "1100", "Heater on the stairs");
    new.joint(1, &[(a, 0), (b, 0)]);
    new.joint(2, &[(a, 1), (c, 0)]);
    new.joint(3, &[(a, 2), (b, 1), (c, 1)]);
    new.joint(4, &[(a, 3), (b, 2), (c, 2)]);
    let in_box = new.now;
    let mut entry = new.entry;
    let joint = |joint| SpotEntry {
        what: SpotKind::Joint,
        in_box,
        joint,
        ..SpotEntry::default()
    };
    let off = vec![one];
    entry.readings = vec![
        ReadingEntry {
            id: job.fresh_id(),
            breakers_off: off.clone(),
            what: ReadingKind::Volts,
            from: joint(3),
            to: SpotEntry {
                what: SpotKind::GroundBar,
                ..SpotEntry::default()
            },
            shown: Typed::plain("120"),
            ..ReadingEntry::default()
        },
        ReadingEntry {
            id: job.fresh_id(),
            breakers_off: off,
            what: ReadingKind::Amps,
            from: SpotEntry {
                cable: a,
                conductor: 2,
                ..SpotEntry::default()
            },
            shown: Typed::plain("0"),
            ..ReadingEntry::default()
        },
    ];
    job.opened.push(entry);
}
