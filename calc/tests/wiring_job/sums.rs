//! The quick sums.

use calc::job::questions::EntryProblem;
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::boxes::box_fill_of;
use calc::job::questions::wiring::cable::{cable_run_of, switches_of};
use calc::job::questions::wiring::drop::{
    longest_run_of, measured_drop_of, smallest_for_drop_of, voltage_drop_of,
};
use calc::job::questions::wiring::laid::{ampacity_of, smallest_of};
use calc::job::sums::{
    AmpacityWant, DemandUnit, DropLoadEntry, DropMethod, DropSystem, DropWant, PartEntry, Sums,
};
use calc::job::{BoxBy, BoxCableEntry, CodeEdition, Job, StretchEntry, Typed, Units, fields, file};
use calc::saved;
use calc::wiring::ampacity::{Feeds, Terminals};
use calc::wiring::cable_run::Way;
use calc::wiring::conductor::{Construction, Size};
use calc::wiring::voltage_drop::{Across, DropRefusal};

const NOW: &str = "2026-03-02T08:00:00Z";
const EDITION: CodeEdition = CodeEdition::E2023;

fn typed(text: &str) -> Typed {
    Typed::plain(text)
}

fn named<T: std::fmt::Debug, R: std::fmt::Debug>(
    answer: Result<T, AskProblem<R>>,
) -> Vec<(&'static str, Option<u32>)> {
    match answer {
        Err(AskProblem::Entries(problems)) => problems
            .iter()
            .map(|EntryProblem { name, row, .. }| (*name, *row))
            .collect(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn new_sums_say_what_is_missing() {
    let sums = Sums::default();
    assert_eq!(
        named(box_fill_of(&sums.box_fill, EDITION)),
        [("trade_size", None)]
    );
    assert_eq!(
        named(ampacity_of(&sums.ampacity, EDITION)),
        [("size", None)]
    );
    assert_eq!(
        named(smallest_of(&sums.ampacity, EDITION)),
        [("other", None)]
    );
    let drop = &sums.voltage_drop;
    assert_eq!(
        named(voltage_drop_of(drop, EDITION)),
        [("size", None), ("length", Some(1)), ("amount", Some(2))]
    );
    assert_eq!(
        named(longest_run_of(drop, EDITION)),
        [("size", None), ("amount", Some(2))]
    );
    assert_eq!(
        named(smallest_for_drop_of(drop, EDITION)),
        [("amount", Some(2)), ("length", Some(1))]
    );
    assert_eq!(
        named(measured_drop_of(&sums.measured_drop, EDITION)),
        [
            ("load_idle", None),
            ("load_loaded", None),
            ("current", None)
        ]
    );
    assert!(matches!(
        cable_run_of(&sums.cable_run, EDITION),
        Err(AskProblem::Refused(_))
    ));
    assert_eq!(
        switches_of(&sums.switches, EDITION).unwrap().cables.len(),
        3
    );
}

#[test]
fn a_run_worked_by_hand() {
    // 16 A over 75 ft of 12 AWG solid, 1.93 ohm per 1000 ft (NFPA 70 Chapter 9 Table 8): 4.632 V, 3.86 %; the longest
    // run for 3 % is 58.3 ft; 8 AWG is the first with less than 3.6 / (2 x 16 x 75) ohm per foot, 1.5 per 1000 ft: 10 AWG
    // has 1.21 solid.
    let mut sum = Sums::default().voltage_drop;
    sum.size = Some(Size::Awg12);
    sum.stretches[0].length = fields::RUN.keep("75", Units::FeetInches);
    sum.loads[0].amount = typed("16 A");
    let answer = voltage_drop_of(&sum, EDITION).unwrap();
    assert!((answer.drop.worst_v - 4.632).abs() < 1e-9);
    assert_eq!(answer.step_up.unwrap().next, Size::Awg10);
    assert_eq!(answer.profile.len(), 2);
    let longest = longest_run_of(&sum, EDITION).unwrap();
    assert!((longest.length_ft - 58.29).abs() < 0.005);
    assert_eq!(
        smallest_for_drop_of(&sum, EDITION).unwrap().size,
        Size::Awg10
    );
    // The same load in watts and in ohms: 1920 W and 7.5 ohm at 120 V.
    for (unit, amount) in [(DemandUnit::Watts, "1.92 kW"), (DemandUnit::Ohms, "7.5")] {
        sum.loads[0].unit = unit;
        sum.loads[0].amount = typed(amount);
        let same = longest_run_of(&sum, EDITION).unwrap();
        assert!((same.length_ft - longest.length_ft).abs() < 1e-9);
    }
}

/// A resistance takes what the voltage gives it, so that it has neither three phases nor a power factor: refused alike
/// along the run, for the longest run and for the smallest size.
#[test]
fn a_resistance_has_no_three_phases() {
    let mut sum = Sums::default().voltage_drop;
    sum.size = Some(Size::Awg12);
    sum.stretches[0].length = fields::RUN.keep("75", Units::FeetInches);
    (sum.loads[0].unit, sum.loads[0].amount) = (DemandUnit::Ohms, typed("7.5"));
    assert!(longest_run_of(&sum, EDITION).is_ok());
    let mut phases = sum.clone();
    phases.system = DropSystem::ThreePhase;
    let mut factor = sum;
    factor.method = DropMethod::Impedance;
    factor.power_factor = typed("0.85");
    for sum in [phases, factor] {
        let want = AskProblem::Refused(DropRefusal::Ohms { stretch: 0 });
        assert_eq!(voltage_drop_of(&sum, EDITION).unwrap_err(), want);
        assert_eq!(longest_run_of(&sum, EDITION).unwrap_err(), want);
        assert_eq!(smallest_for_drop_of(&sum, EDITION).unwrap_err(), want);
    }
}

/// 15 A on leg A alone: the run of a two-wire circuit, 62.2 ft (Table 8: 1.93 ohm per 1000 ft).
#[test]
fn an_unbalanced_run_keeps_both_legs() {
    let mut sum = Sums::default().voltage_drop;
    (sum.size, sum.system) = (Some(Size::Awg12), DropSystem::Multiwire);
    sum.volts = typed("120");
    sum.loads[0].amount = typed("15 A");
    let longest = longest_run_of(&sum, EDITION).unwrap();
    assert!((longest.length_ft - 62.18).abs() < 0.005);
}

#[test]
fn loads_find_their_stretch() {
    let mut sum = Sums::default().voltage_drop;
    sum.size = Some(Size::Awg12);
    sum.system = DropSystem::Multiwire;
    sum.stretches = [(10, "30'"), (11, "20'")]
        .map(|(id, length)| StretchEntry {
            id,
            length: typed(length),
            ..StretchEntry::default()
        })
        .to_vec();
    let load = |id, stretch, across| DropLoadEntry {
        id,
        amount: typed("5"),
        stretch,
        across,
        ..DropLoadEntry::default()
    };
    sum.loads = vec![
        load(12, Some(10), Across::A),
        load(13, None, Across::B),
        load(14, Some(99), Across::A),
    ];
    assert_eq!(
        named(voltage_drop_of(&sum, EDITION)),
        [("stretch", Some(14))]
    );
    sum.loads.pop();
    let points = voltage_drop_of(&sum, EDITION).unwrap().drop.points;
    assert_eq!(
        (points[0].current_a, points[0].current_b_a),
        (5.0, Some(5.0))
    );
    assert_eq!(
        (points[1].current_a, points[1].current_b_a),
        (0.0, Some(5.0))
    );
}

#[test]
fn a_path_worked_by_hand() {
    // 32 ft and 10 %, 8 in kept at both ends: 36.53 ft.
    let mut sum = Sums::default().cable_run;
    sum.pieces[0].parts = [(20, "8'"), (21, "20'"), (22, "4'")]
        .map(|(id, length)| PartEntry {
            id,
            length: typed(length),
            ..PartEntry::default()
        })
        .to_vec();
    let take = cable_run_of(&sum, EDITION).unwrap();
    assert!((take.cut_ft - 36.5333).abs() < 1e-3);
    sum.pieces[0].parts[1].length = Typed::default();
    assert_eq!(named(cable_run_of(&sum, EDITION)), [("length", Some(21))]);
}

#[test]
fn half_a_measurement_wants_the_other() {
    let mut sum = Sums::default().measured_drop;
    sum.load_idle = typed("121.0");
    sum.load_loaded = typed("119.7 V");
    sum.current = typed("8");
    assert!((measured_drop_of(&sum, EDITION).unwrap().run_ohm - 0.1625).abs() < 1e-9);
    sum.supply_idle = typed("121");
    sum.length = typed("0");
    assert_eq!(
        named(measured_drop_of(&sum, EDITION)),
        [("supply_loaded", None), ("size", None)]
    );
}

#[test]
fn sums_survive_and_are_kept_into_a_job() {
    let mut sums = Sums::default();
    let row = sums.fresh_id();
    assert!(row >= 10 && sums.fresh_id() > row);
    sums.box_fill.by = BoxBy::Marked;
    sums.box_fill.marked = typed("20.3");
    sums.box_fill.cables = vec![
        BoxCableEntry::new(1, Some(Size::Awg14)),
        BoxCableEntry::new(2, Some(Size::Awg14)),
    ];
    sums.voltage_drop.size = Some(Size::Awg12);
    sums.voltage_drop.stretches[0].length = typed("75'");
    sums.voltage_drop.loads[0].amount = typed("16");
    sums.voltage_drop.loads[0].stretch = Some(1);
    sums.box_fill
        .rest
        .insert("later".to_owned(), serde_json::json!([1]));
    assert_eq!(saved::read(&saved::write(&sums)), Ok(sums.clone()));

    let mut job = Job::new("a", "", NOW, Units::FeetInches);
    let found = sums.box_fill.keep(&mut job, "door");
    let circuit = sums.voltage_drop.keep(&mut job, "run").unwrap();
    let laid = sums.ampacity.keep(&mut job, "cable");
    assert_eq!(file::read(&file::write(&job)), Ok(job.clone()));
    assert_eq!(
        box_fill_of(job.box_entry(found).unwrap(), EDITION),
        box_fill_of(&sums.box_fill, EDITION)
    );
    let circuit = job.circuit(circuit).unwrap();
    assert_eq!(circuit.loads[0].stretch, Some(circuit.stretches[0].id));
    assert_eq!(job.circuit(laid).unwrap().laid, sums.ampacity.laid);
    sums.voltage_drop.system = DropSystem::ThreePhase;
    assert_eq!(sums.voltage_drop.keep(&mut job, "run"), None);
}

#[test]
fn sums_are_kept_into_a_circuit_that_is_there() {
    let mut job = Job::new("a", "", NOW, Units::FeetInches);
    let mut sums = Sums::default();
    sums.ampacity.laid.size = Some(Size::Awg12);
    sums.ampacity.laid.ambient = typed("122");
    let circuit = sums.ampacity.keep(&mut job, "lights");

    // 16 A over 75 ft, and the loads of the sum, for the circuit has none yet.
    sums.voltage_drop.size = Some(Size::Awg10);
    sums.voltage_drop.stretches[0].length = typed("75'");
    sums.voltage_drop.loads[0].amount = typed("16");
    assert!(sums.voltage_drop.keep_in(&mut job, circuit));
    let kept = job.circuit(circuit).unwrap();
    assert_eq!(kept.laid.size, Some(Size::Awg10));
    assert_eq!(kept.laid.ambient, typed("122"));
    assert_eq!(kept.stretches[0].length, typed("75'"));
    assert_eq!(kept.loads[0].amount, typed("16"));
    let stretch = kept.stretches[0].id;
    job.circuit_mut(circuit).unwrap().loads[0].stretch = Some(stretch);

    // Up 8, across 20, down 4: by hand 32 ft of path, whatever is kept at the ends.
    let piece = &mut sums.cable_run.pieces[0];
    for (id, way, length) in [
        (51, Way::Up, "8"),
        (52, Way::Across, "20"),
        (53, Way::Down, "4"),
    ] {
        piece.parts.push(PartEntry {
            id,
            way,
            length: typed(length),
            ..PartEntry::default()
        });
    }
    assert!(sums.cable_run.keep_in(&mut job, circuit));
    let kept = job.circuit(circuit).unwrap();
    assert_eq!(kept.stretches.len(), 1);
    assert_eq!(
        fields::RUN.read(&kept.stretches[0].length),
        fields::RUN.read(&typed("32'"))
    );
    // What was at the end of a stretch that is gone is at the far end; its own loads stay.
    assert_eq!(kept.loads.len(), 1);
    assert_eq!(kept.loads[0].stretch, None);

    // A longest run is no run to keep; a size that was found is.
    sums.voltage_drop.want = DropWant::Length;
    assert!(sums.voltage_drop.keep_in(&mut job, circuit));
    assert_eq!(job.circuit(circuit).unwrap().stretches.len(), 1);
    // Worked example V-VD-10: 20 A over 100 ft, stranded, 3 %: 8 AWG.
    sums.voltage_drop.want = DropWant::Size;
    sums.voltage_drop.stretches[0].length = typed("100'");
    sums.voltage_drop.loads[0].amount = typed("20");
    sums.voltage_drop.construction = Some(Construction::Stranded);
    assert!(sums.voltage_drop.keep_in(&mut job, circuit));
    assert_eq!(job.circuit(circuit).unwrap().laid.size, Some(Size::Awg8));
    // Worked example V-BL-02: 18.75 A continuous at 60 C terminals: 10 AWG.
    sums.ampacity.want = AmpacityWant::Conductor;
    sums.ampacity.feeds = Feeds::Other;
    sums.ampacity.laid.ambient = typed("86");
    sums.ampacity.laid.terminals = Terminals::C60;
    sums.ampacity.continuous = typed("18.75");
    assert!(sums.ampacity.keep_in(&mut job, circuit));
    assert_eq!(job.circuit(circuit).unwrap().laid.size, Some(Size::Awg10));
    // Without a size the circuit's own stays.
    sums.ampacity.continuous = typed("");
    assert!(sums.ampacity.keep_in(&mut job, circuit));
    assert_eq!(job.circuit(circuit).unwrap().laid.size, Some(Size::Awg10));

    assert_eq!(file::read(&file::write(&job)), Ok(job.clone()));
    let before = job.clone();
    assert!(!sums.voltage_drop.keep_in(&mut job, 9999));
    assert!(!sums.cable_run.keep_in(&mut job, 9999));
    sums.cable_run.pieces[0].parts[0].length = typed("up");
    assert_eq!(sums.cable_run.keep(&mut job, ""), None);
    assert_eq!(job.circuits, before.circuits);
}
