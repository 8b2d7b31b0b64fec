//! Opened boxes: from entries to what is asked.

use calc::job::questions::opened::{Taken, answer, described, reading, usual_load, usual_screws};
use calc::job::questions::wiring::AskProblem;
use calc::job::{
    GoesKind, Job, MadeAt, OpenedEntry, ReadingEntry, ReadingKind, SpotEntry, SpotKind, Typed,
    TypicalBox, Units, demo, file,
};
use calc::wiring::open_box::description::{
    At, Colour, Contact, DescriptionRefusal, End, Goes, SwitchForm, Terminal,
};
use calc::wiring::open_box::live_map::{Behind, live_map};
use calc::wiring::open_box::reading::ReadingRefusal;
use calc::wiring::open_box::situation::Situation;

fn started(typical: TypicalBox) -> (Job, OpenedEntry) {
    let mut job = Job::new("a", "Elm", "2026-03-02T08:00:00Z", Units::FeetInches);
    let id = job.open_box();
    let mut entry = job.opened_entry(id).unwrap().clone();
    entry.start_from(typical, &mut job);
    (job, entry)
}

fn behind(job: &Job, entry: &OpenedEntry, cable: usize, conductor: usize) -> Behind {
    let found = described(job, entry).unwrap();
    let map = live_map(&found.description, &Situation::default()).unwrap();
    let end = Contact::End(End::near(entry.cables[cable].id, conductor));
    map.contacts
        .iter()
        .find(|c| c.contact == end)
        .unwrap()
        .behind
}

#[test]
fn every_typical_box_can_be_answered_and_needs_its_breakers_off() {
    for typical in TypicalBox::ALL {
        let (mut job, entry) = started(typical);
        let found = answer(&job, &entry).unwrap_or_else(|no| panic!("{typical:?}: {no:?}"));
        assert_eq!(found.off.len(), entry.boxes.len());
        let fed = typical != TypicalBox::Mystery;
        for off in &found.off {
            assert_eq!(
                off.breakers.len(),
                if fed { entry.breakers.len() } else { 0 },
                "{typical:?}"
            );
        }
        // What custom wires comes back where it goes out: 300.3(B).
        assert_eq!(found.returns.unwrap().astray, [], "{typical:?}");
        job.opened.push(entry);
        job.opened.remove(0);
        assert_eq!(file::read(&file::write(&job)), Ok(job));
    }
}

#[test]
fn a_mystery_says_that_it_rests_on_cables_that_go_nobody_knows_where() {
    let (job, entry) = started(TypicalBox::Mystery);
    let found = answer(&job, &entry).unwrap();
    assert_eq!(found.off[0].rests_on.len(), 3);
    assert_eq!(behind(&job, &entry, 0, 0), Behind::Floating);
}

#[test]
fn a_switch_loop_has_a_hot_on_its_white() {
    // NFPA 70 200.7(C): the white that is marked is the supply of the switch.
    let (job, entry) = started(TypicalBox::SwitchLoop);
    assert_eq!(behind(&job, &entry, 1, 1), Behind::Live);
    let goes = described(&job, &entry).unwrap().description.cables[1]
        .goes
        .clone();
    let Goes::Switch(switch) = goes else {
        panic!("{goes:?}")
    };
    assert_eq!(switch.on, [(Terminal::Second, 0), (Terminal::First, 1)]);
}

#[test]
fn custom_puts_loads_and_screws() {
    use Colour::{Bare, Black, MarkedWhite, Red, White};
    use Terminal::{Common, First, Second, TravellerOne, TravellerTwo};
    assert_eq!(usual_load(&[Bare, White, Black]), (2, 1));
    assert_eq!(usual_load(&[Black, Red, Bare]), (0, 1));
    assert_eq!(usual_load(&[Black, Red, White, Bare]), (0, 2));
    let usual = |conductors: &[Colour], form, load| usual_screws(conductors, form, load);
    assert_eq!(
        usual(&[Black, White, Bare], SwitchForm::SinglePole, false),
        [(Second, 0), (First, 1)]
    );
    assert_eq!(
        usual(&[Black, White, Bare], SwitchForm::SinglePole, true),
        [(First, 0)]
    );
    assert_eq!(
        usual(
            &[Black, Red, MarkedWhite, Bare],
            SwitchForm::ThreeWay,
            false
        ),
        [(Common, 0), (TravellerOne, 1), (TravellerTwo, 2)]
    );
    assert_eq!(
        usual(&[Black, Red, White, Bare], SwitchForm::ThreeWay, true),
        [(TravellerOne, 0), (TravellerTwo, 1)]
    );
}

#[test]
fn what_is_missing_is_told_by_row_and_field() {
    let (job, mut entry) = started(TypicalBox::Junction);
    let (breaker, cable) = (entry.breakers[0].id, entry.cables[0].id);
    let load = entry.cables[1].loads[0].id;
    entry.breakers[0].rating = Typed::default();
    entry.cables[0].length = Typed::plain("long");
    entry.cables[0].hots.clear();
    entry.cables[1].loads[0].watts = Typed::plain("0");
    entry.cables[2].goes = GoesKind::Box;
    let Err(AskProblem::Entries(problems)) = described(&job, &entry) else {
        panic!("not refused")
    };
    let told: Vec<_> = problems.iter().map(|p| (p.name, p.row)).collect();
    assert_eq!(
        told,
        [
            ("rating", Some(breaker)),
            ("length", Some(cable)),
            ("hots", Some(cable)),
            ("watts", Some(load)),
            ("to_box", Some(entry.cables[2].id)),
        ]
    );
}

#[test]
fn two_legs_in_one_joint_are_refused_as_a_short() {
    let (job, mut entry) = started(TypicalBox::MultiwireRun);
    let red = entry.cables[0].id;
    for made in &mut entry.made {
        if made.contact.cable == red && made.contact.conductor == 1 {
            made.joint = 1;
        }
    }
    let Err(AskProblem::Refused(refusals)) = described(&job, &entry) else {
        panic!("not refused")
    };
    // 120 V on each of two legs 180 degrees apart: 240 V.
    assert!(
        matches!(refusals[..], [DescriptionRefusal::Short { volts, .. }] if volts == 240.0),
        "{refusals:?}"
    );
}

#[test]
fn the_panel_gives_legs_ratings_and_volts() {
    let job = demo::job("k3", "2026-03-02T08:00:00Z");
    let entry = &job.opened[0];
    let found = described(&job, entry).unwrap();
    let legs: Vec<_> = found
        .description
        .breakers
        .iter()
        .map(|b| b.legs.clone())
        .collect();
    // Space 16 is in the eighth row: both halves of a tandem are on its leg.
    assert_eq!(legs[0].len(), 1);
    assert_eq!(legs[0], legs[1]);
    assert_eq!(found.description.breakers[0].rating_a, 15.0);
    assert_eq!(found.description.panel.leg_a_v, 120.9);
    assert!(found.taken.contains(&Taken::Feeder) && !found.taken.contains(&Taken::LegVolts));
    assert_eq!(
        found
            .description
            .at(Contact::End(End::near(entry.cables[0].id, 2))),
        At::Joint(3)
    );
}

#[test]
fn a_white_shared_on_one_leg_carries_the_sum() {
    let job = demo::job("k3", "2026-03-02T08:00:00Z");
    let found = answer(&job, &job.opened[0]).unwrap();
    assert_eq!(found.off[0].breakers.len(), 2);
    let shared = job.opened[0].cables[0].id;
    let neutrals = found.neutrals.unwrap();
    let white = neutrals.iter().find(|n| n.cable == shared).unwrap();
    // 900 W and 1100 W at 120 V: 7.5 A and 9.17 A, on one leg 16.7 A; less what the wire drops.
    assert!(
        (15.7..16.8).contains(&white.planned_a),
        "{}",
        white.planned_a
    );
    // 14 AWG copper NM cable: 15 A, Table 310.16 at 60 C.
    assert_eq!((white.ampacity_a, white.over), (Some(15.0), true));
}

#[test]
fn a_meter_in_ohms_is_refused_while_anything_is_on() {
    let (job, mut entry) = started(TypicalBox::Junction);
    let found = described(&job, &entry).unwrap();
    let in_box = entry.boxes[0].id;
    entry.readings.push(calc::job::ReadingEntry {
        id: 90,
        what: ReadingKind::Ohms,
        from: SpotEntry {
            what: SpotKind::Joint,
            in_box,
            joint: 1,
            ..SpotEntry::default()
        },
        to: SpotEntry {
            what: SpotKind::GroundBar,
            ..SpotEntry::default()
        },
        shown: Typed::plain("0.4"),
        ..Default::default()
    });
    let taken = &mut entry.readings[0];
    assert_eq!(
        reading(taken, &found.description),
        Err(AskProblem::Refused(ReadingRefusal::OhmsNotOff))
    );
    taken.everything_off = true;
    assert!(reading(taken, &found.description).is_ok());
    taken.shown = Typed::plain("OL");
    assert!(matches!(
        reading(taken, &found.description),
        Err(AskProblem::Entries(problems)) if problems[0].name == "shown"
    ));
    taken.open = true;
    assert!(reading(taken, &found.description).is_ok());
}

#[test]
fn a_contact_that_is_not_in_the_grid_is_loose() {
    let (job, mut entry) = started(TypicalBox::Junction);
    entry
        .made
        .retain(|made| made.at != MadeAt::Joint || made.joint != 2);
    let found = described(&job, &entry).unwrap();
    let white = Contact::End(End::near(entry.cables[1].id, 1));
    assert_eq!(found.description.at(white), At::Loose);
}

#[test]
fn the_demo_is_explained_by_a_white_that_is_open() {
    use calc::job::questions::opened::readings;
    use calc::wiring::open_box::diagnosis::diagnose;
    use calc::wiring::open_box::faults::FaultKind;
    use calc::wiring::open_box::next_reading::next_reading;
    let job = demo::job("k3", "2026-03-02T08:00:00Z");
    let entry = &job.opened[0];
    let found = described(&job, entry).unwrap();
    let read: Vec<_> = readings(entry, &found.description)
        .into_iter()
        .map(|of| of.reading.unwrap())
        .collect();
    let diagnosis = diagnose(&found.description, &read).unwrap();
    let first = &diagnosis.answers[0];
    // With the hall off, 120 V on the whites and nothing in the white to the panel: it comes through the heater and
    // has no way back.
    assert!(
        first
            .members
            .iter()
            .all(|m| m.faults.iter().any(|f| f.kind == FaultKind::NeutralOpen)),
        "{first:?}"
    );
    assert_eq!(first.explained, [0, 1]);
    // What is advised next has not been measured yet, and its outcomes mean different things.
    let next = next_reading(&found.description, &read, &diagnosis, entry.boxes[0].id);
    if let Some(next) = next {
        assert!(next.meanings.len() > 1, "{next:?}");
        assert!(
            read.iter()
                .all(|r| r.probe != next.probe || r.situation != next.situation)
        );
    }
}

/// Where several boxes are looked at together each has advice of its own: what is touched or clamped is in that box.
#[test]
fn each_box_has_a_next_reading_of_its_own() {
    use calc::wiring::open_box::reading::Point;
    let (job, mut entry) = started(TypicalBox::ThreeWayPair);
    assert_eq!(entry.boxes.len(), 2);
    let found = described(&job, &entry).unwrap().description;
    let joint = |in_box| (1..9).find(|joint| !found.joint(in_box, *joint).is_empty());
    let first = entry.boxes[0].id;
    entry.readings.push(ReadingEntry {
        id: 90,
        what: ReadingKind::Volts,
        from: SpotEntry {
            what: SpotKind::Joint,
            in_box: first,
            joint: joint(first).unwrap(),
            ..SpotEntry::default()
        },
        to: SpotEntry {
            what: SpotKind::GroundBar,
            ..SpotEntry::default()
        },
        shown: Typed::plain("58"),
        ..ReadingEntry::default()
    });
    let answer = answer(&job, &entry).unwrap();
    assert!(answer.readings[0].reading.is_ok(), "{:?}", answer.readings);
    let boxes: Vec<u32> = answer.next.iter().map(|next| next.in_box).collect();
    assert_eq!(boxes, found.boxes);
    for next in &answer.next {
        let reading = next.reading.as_ref().unwrap();
        let mut here = 0;
        for point in reading.probe.points() {
            let of = match point {
                Point::End(end) => found.box_of(end),
                Point::Joint { in_box, .. } => Some(in_box),
                Point::Terminal { device, .. } => found.device(device).map(|d| d.in_box),
                Point::NeutralBar | Point::GroundBar | Point::Pipe => None,
            };
            assert!(of.is_none_or(|of| of == next.in_box), "{reading:?}");
            here += usize::from(of.is_some());
        }
        assert!(here > 0, "{reading:?}");
    }
}
