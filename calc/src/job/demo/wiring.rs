//! The wiring of the demonstration job: a subpanel of 20 spaces, with two tandems whose pair shares a neutral that it
//! may not share, a bedroom circuit that is to take a heater too many, and a switch box that is too small.
//!
//! Labels and names are the invented user's own words.

use crate::job::{BesideEntry, LoadUnit, fields::Field};
use crate::job::{
    BoxBy, BoxCableEntry, BoxEntry, BreakerEntry, CableKind, CircuitEntry, CircuitWiring,
    DeviceEntry, GroupingKind, Job, LoadEntry, StretchEntry, SupplyReadingsEntry, TandemRule,
    Typed, Units, fields,
};
use crate::wiring::circuit::LoadKind;
use crate::wiring::conductor::Size;
use crate::wiring::panel::{Bars, BreakerForm, Confirmed, FedBy, Half, Protection};
use crate::wiring::tables::BoxFamily;
use crate::wiring::voltage_drop::Across;

const TANDEM_A: BreakerForm = BreakerForm::Tandem(Half::A);
const TANDEM_B: BreakerForm = BreakerForm::Tandem(Half::B);

/// The breakers: space, form, amperes, what they do besides, label, how it was confirmed.
const BREAKERS: [(u32, BreakerForm, &str, Protection, &str, Confirmed); 9] = [
    (
        1,
        BreakerForm::Single,
        "15",
        Protection::ArcFault,
        "Back bedroom receptacles",
        Confirmed::SwitchedOff,
    ),
    (
        2,
        BreakerForm::Single,
        "15",
        Protection::Plain,
        "Back bedroom and hall lights",
        Confirmed::Traced,
    ),
    (
        3,
        BreakerForm::TwoPole,
        "20",
        Protection::Plain,
        "Back bedroom baseboard heater",
        Confirmed::SwitchedOff,
    ),
    (
        4,
        BreakerForm::Single,
        "20",
        Protection::ArcFault,
        "Front room receptacles",
        Confirmed::NotConfirmed,
    ),
    (
        6,
        BreakerForm::TwoPole,
        "30",
        Protection::Plain,
        "Clothes dryer, basement",
        Confirmed::Followed,
    ),
    (
        16,
        TANDEM_A,
        "15",
        Protection::Plain,
        "Hall receptacles",
        Confirmed::SwitchedOff,
    ),
    (
        16,
        TANDEM_B,
        "15",
        Protection::Plain,
        "Stair receptacles",
        Confirmed::SwitchedOff,
    ),
    (
        18,
        TANDEM_A,
        "15",
        Protection::Plain,
        "Smoke alarms",
        Confirmed::NotConfirmed,
    ),
    (
        18,
        TANDEM_B,
        "20",
        Protection::GroundFault,
        "Workbench, basement",
        Confirmed::Traced,
    ),
];

fn keep(field: Field, text: &str) -> Typed {
    field.keep(text, Units::FeetInches)
}

/// Puts panel, circuits and boxes into the job.
pub(super) fn add(job: &mut Job) {
    panel(job);
    boxes(job);
    circuits(job);
}

fn panel(job: &mut Job) {
    let breakers = BREAKERS
        .iter()
        .map(
            |&(space, form, rating, protection, label, confirmed)| BreakerEntry {
                id: job.fresh_id(),
                space,
                form,
                rating: keep(fields::RATING, rating),
                protection,
                label: label.to_owned(),
                confirmed,
                ..BreakerEntry::default()
            },
        )
        .collect();
    let readings = |across, a, b| SupplyReadingsEntry {
        across: keep(fields::MEASURED_VOLTS, across),
        a_neutral: keep(fields::MEASURED_VOLTS, a),
        b_neutral: keep(fields::MEASURED_VOLTS, b),
        ..SupplyReadingsEntry::default()
    };
    let panel = &mut job.panel;
    panel.name = "Upstairs subpanel".to_owned();
    panel.spaces = 20;
    panel.rating = keep(fields::RATING, "100");
    panel.fed_by = FedBy::Feeder;
    panel.fed_from = "Main panel, basement, spaces 10 and 12".to_owned();
    panel.feeder_device = keep(fields::RATING, "60");
    panel.feeder_drop = keep(fields::DROP_PERCENT, "0.8");
    panel.bars = Bars::Separate;
    panel.most_circuits = keep(fields::MOST_CIRCUITS, "30");
    panel.tandems = TandemRule::Listed;
    panel.tandem_spaces = (11..=20).collect();
    panel.breakers = breakers;
    panel.notes = "Some covers here hide old splices: open them before the walls close.".to_owned();
    panel.supply.idle = readings("241.2", "120.9", "120.3");
    panel.supply.loaded = readings("239.8", "118.8", "121.0");
}

fn cables(job: &mut Job, count: usize) -> Vec<BoxCableEntry> {
    (0..count)
        .map(|_| BoxCableEntry::new(job.fresh_id(), Some(Size::Awg14)))
        .collect()
}

fn boxes(job: &mut Job) {
    let switch = BoxEntry {
        family: BoxFamily::Device,
        trade_size: "3 x 2 x 2-3/4".to_owned(),
        cables: cables(job, 2),
        devices: vec![DeviceEntry::new(job.fresh_id(), Some(Size::Awg14))],
        internal_clamps: true,
        pigtails: keep(fields::IN_BOX, "1"),
        ..BoxEntry::new(job.fresh_id(), "Switch by the door")
    };
    let ceiling = BoxEntry {
        family: BoxFamily::RoundOctagonal,
        trade_size: "4 x 2-1/8".to_owned(),
        cables: cables(job, 3),
        support_fittings: keep(fields::IN_BOX, "1"),
        ..BoxEntry::new(job.fresh_id(), "Ceiling light")
    };
    let receptacle = BoxEntry {
        by: BoxBy::Marked,
        marked: keep(fields::BOX_VOLUME, "20.3"),
        cables: cables(job, 2),
        devices: vec![DeviceEntry::new(job.fresh_id(), Some(Size::Awg14))],
        ..BoxEntry::new(job.fresh_id(), "Receptacle under the window")
    };
    job.boxes = vec![switch, ceiling, receptacle];
}

/// A load: name, watts, kind, whether continuous, whether electronic.
type Load = (&'static str, &'static str, LoadKind, bool, bool);

fn loads(job: &mut Job, rows: &[Load]) -> Vec<LoadEntry> {
    rows.iter()
        .map(|&(name, watts, kind, continuous, electronic)| LoadEntry {
            id: job.fresh_id(),
            name: name.to_owned(),
            amount: keep(fields::LOAD_WATTS, watts),
            unit: LoadUnit::Watts,
            kind,
            continuous,
            electronic,
            ..LoadEntry::default()
        })
        .collect()
}

/// A circuit on the breaker of that label, with its size, its run in feet, receptacles and outlets.
fn circuit(
    job: &mut Job,
    label: &str,
    size: Size,
    run_ft: &[&str],
    receptacles: &str,
    outlets: &str,
) -> CircuitEntry {
    let mut circuit = CircuitEntry::new(job.fresh_id(), label, Units::FeetInches);
    let on = job.panel.breakers.iter().find(|b| b.label == label);
    circuit.breaker = on.map(|breaker| breaker.id);
    circuit.laid.size = Some(size);
    circuit.receptacles = keep(fields::OUTLETS, receptacles);
    circuit.outlets = keep(fields::OUTLETS, outlets);
    circuit.stretches = run_ft
        .iter()
        .map(|length| StretchEntry {
            id: job.fresh_id(),
            length: keep(fields::RUN, length),
            ..StretchEntry::default()
        })
        .collect();
    circuit
}

fn circuits(job: &mut Job) {
    let box_ids: Vec<u32> = job.boxes.iter().map(|found| found.id).collect();
    let plug = LoadKind::CordAndPlug;

    let label = "Back bedroom receptacles";
    let mut bedroom = circuit(
        job,
        label,
        Size::Awg14,
        &["34'", "12'", "11' 6\""],
        "6",
        "6",
    );
    bedroom.loads = loads(
        job,
        &[
            ("Desk and lamps", "240", plug, false, false),
            ("Television", "150", plug, false, true),
        ],
    );
    bedroom.planned = loads(job, &[("Portable heater", "1500", plug, false, false)]);
    bedroom.boxes = box_ids.iter().skip(2).copied().collect();
    // Through one sealed hole in the top plate with the cable of the lights and the heater's.
    bedroom.laid.grouping = GroupingKind::SealedHole;
    bedroom.laid.beside = vec![BesideEntry {
        id: job.fresh_id(),
        count: keep(fields::CABLES, "2"),
        ..BesideEntry::default()
    }];

    let label = "Back bedroom and hall lights";
    let mut lights = circuit(job, label, Size::Awg14, &["40'", "15'"], "0", "4");
    lights.laid.ambient = keep(fields::AMBIENT, "122");
    lights.loads = loads(
        job,
        &[
            ("Ceiling light", "60", LoadKind::Luminaire, false, true),
            ("Hall lights", "120", LoadKind::Luminaire, false, false),
        ],
    );
    lights.planned = loads(
        job,
        &[("Reading lights", "40", LoadKind::Luminaire, false, true)],
    );
    lights.boxes = box_ids.iter().take(2).copied().collect();

    let label = "Back bedroom baseboard heater";
    let mut heater = circuit(job, label, Size::Awg12, &["45'"], "0", "1");
    heater.wiring = CircuitWiring::TwoHots;
    heater.loads = loads(
        job,
        &[("Baseboard", "1500", LoadKind::SpaceHeating, true, false)],
    );
    heater.planned = loads(
        job,
        &[(
            "Second baseboard",
            "1000",
            LoadKind::SpaceHeating,
            true,
            false,
        )],
    );
    heater.outlets = keep(fields::OUTLETS, "2");

    let label = "Clothes dryer, basement";
    let mut dryer = circuit(job, label, Size::Awg10, &["28'"], "1", "1");
    dryer.wiring = CircuitWiring::Multiwire;
    dryer.laid.cable = CableKind::Multiwire;
    dryer.neutral_with_hots = Some(true);
    dryer.neutral_pigtailed = Some(true);
    dryer.loads = loads(
        job,
        &[
            ("Heating coil", "4800", plug, false, false),
            ("Motor and controls", "500", plug, false, false),
        ],
    );
    if let Some(coil) = dryer.loads.first_mut() {
        coil.across = Across::Both;
    }

    let label = "Hall receptacles";
    let mut hall = circuit(job, label, Size::Awg14, &["22'", "18'"], "3", "3");
    hall.laid.cable = CableKind::Multiwire;
    hall.loads = loads(job, &[("Vacuum cleaner", "1200", plug, false, false)]);
    let label = "Stair receptacles";
    let mut stair = circuit(job, label, Size::Awg14, &["22'", "9'"], "2", "2");
    stair.laid.cable = CableKind::Multiwire;
    stair.loads = loads(job, &[("Dehumidifier", "720", plug, false, false)]);
    // One three-wire cable serves both, from the two halves of one tandem.
    hall.neutral_with = vec![stair.id];
    hall.neutral_with_hots = Some(true);
    hall.neutral_pigtailed = Some(true);

    job.circuits = vec![bedroom, lights, heater, dryer, hall, stair];
}
