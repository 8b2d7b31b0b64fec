//! Stored job files of every released version open for ever, and lose nothing on the way through.
//!
//! The files lie in `tests/documents/`: `v<version>-<what>.json`. None is ever changed or removed; a new version
//! adds its own.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use std::fs;
use std::path::PathBuf;

use calc::job::file::{self, JobRefusal};
use calc::job::{FORMAT_VERSION, Job};
use proptest::prelude::*;
use serde_json::{Map, Value, json};

/// The stored file that has every field of this version; `v1-full.json` is one of the days before the wiring,
/// `v1-wiring.json` of those before the buying list, closing up and opened boxes, `v1-walked.json` before the first two.
const FULL: &str = "v1-whole.json";

fn folder() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../tests/documents"))
}

fn stored(name: &str) -> String {
    fs::read_to_string(folder().join(name)).unwrap()
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

/// Every value of `old` stands at the same place in `new`, which may have more fields.
#[track_caller]
fn assert_kept(old: &Value, new: &Value, at: &str) {
    match (old, new) {
        (Value::Object(old), Value::Object(new)) => {
            for (key, value) in old {
                let at = format!("{at}.{key}");
                assert_kept(
                    value,
                    new.get(key).unwrap_or_else(|| panic!("{at} is lost")),
                    &at,
                );
            }
        }
        (Value::Array(old), Value::Array(new)) => {
            assert_eq!(old.len(), new.len(), "{at}");
            for (n, (old, new)) in old.iter().zip(new).enumerate() {
                assert_kept(old, new, &format!("{at}[{n}]"));
            }
        }
        _ => assert_eq!(old, new, "{at}"),
    }
}

#[test]
fn every_stored_file_opens_and_is_rewritten_without_loss() {
    let mut versions = Vec::new();
    for entry in fs::read_dir(folder()).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let Some((version, _)) = name.strip_prefix('v').and_then(|n| n.split_once('-')) else {
            panic!("{name}: v<version>-<what>.json");
        };
        let version: u32 = version.parse().unwrap();
        versions.push(version);
        let text = stored(&name);
        let job = file::read(&text).unwrap_or_else(|refusal| panic!("{name}: {refusal}"));
        let rewritten = file::write(&job);
        if version == FORMAT_VERSION {
            assert_kept(&parsed(&text), &parsed(&rewritten), &name);
        }
        assert!(rewritten.starts_with("{\n  \"format\": {"), "{name}");
        assert_eq!(file::read(&rewritten), Ok(job), "{name}");
    }
    for version in 1..=FORMAT_VERSION {
        assert!(
            versions.contains(&version),
            "no stored file of version {version}"
        );
    }
}

#[test]
fn the_full_file_has_every_field_of_this_version() {
    let text = stored(FULL);
    assert_eq!(
        parsed(&text),
        parsed(&file::write(&file::read(&text).unwrap()))
    );
}

#[test]
fn what_is_not_needed_may_be_missing() {
    let job = file::read(&stored("v1-small.json")).unwrap();
    assert_eq!(job.next_id, 8); // after the row ids in use
    assert!(job.rooms[0].survey.spots.is_empty());
    let mut value = parsed(&stored("v1-small.json"));
    value["rooms"] = json!([]);
    assert_eq!(file::read(&value.to_string()).unwrap().rooms, []);
}

#[test]
fn a_file_from_before_the_buying_list_has_nothing_on_it() {
    let job = file::read(&stored("v1-wiring.json")).unwrap();
    assert!(job.buying.rows.is_empty() && job.buying.own.is_empty());
    assert!(job.quote.lines.is_empty() && job.sheet.left_out.is_empty());
}

#[test]
fn a_file_from_before_the_wiring_has_none() {
    let job = file::read(&stored("v1-full.json")).unwrap();
    assert!(job.panel.is_empty() && job.circuits.is_empty() && job.boxes.is_empty());
    // A panel that a later program described in its own way keeps what is not known here.
    let later = file::read(&stored("v1-later-fields.json")).unwrap();
    assert_eq!(later.panel.spaces, 24);
    assert!(later.panel.rest.contains_key("circuits"));
}

fn small_with(path: &str, new: Value) -> String {
    let mut value = parsed(&stored(FULL));
    *value.pointer_mut(path).unwrap() = new;
    value.to_string()
}

#[track_caller]
fn damaged(path: &str, new: Value, expected_at: &str) {
    match file::read(&small_with(path, new)) {
        Err(JobRefusal::Damaged { at, what }) => {
            assert_eq!(at, expected_at);
            assert!(!what.is_empty());
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn damage_is_refused_with_its_place() {
    damaged("/name", json!(4), "name");
    damaged(
        "/rooms/0/openings/1/wall",
        json!("north"),
        "rooms[0].openings[1].wall",
    );
    damaged(
        "/rooms/0/survey/spots/2/reading",
        json!(null),
        "rooms[0].survey.spots[2].reading",
    );
    damaged(
        "/rooms/0/survey/spots/2",
        json!({"x": "1"}),
        "rooms[0].survey.spots[2]",
    );
    damaged("/rooms/1/finish", json!("velvet"), "rooms[1].finish");
    damaged("/rooms/1/id", json!(1), "rooms[1].id");
    damaged(
        "/rooms/0/survey/spots/1/id",
        json!(10),
        "rooms[0].survey.spots[1].id",
    );
    damaged(
        "/rooms/0/survey/spots/1/id",
        json!(-1),
        "rooms[0].survey.spots[1].id",
    );
    damaged(
        "/rooms/0/survey/spots/1/id",
        json!(4_000_000_000_u32),
        "rooms[0].survey.spots[1].id",
    );
    damaged(
        "/rooms/1/openings/0/id",
        json!(2),
        "rooms[1].openings[0].id",
    );
    damaged(
        "/panel/breakers/3/id",
        json!(parsed(&stored(FULL))["panel"]["breakers"][0]["id"]),
        "panel.breakers[3].id",
    );
    damaged(
        "/circuits/0/planned/0/id",
        json!(parsed(&stored(FULL))["circuits"][0]["loads"][0]["id"]),
        "circuits[0].planned[0].id",
    );
    damaged(
        "/circuits/1/laid/size",
        json!("13"),
        "circuits[1].laid.size",
    );
    damaged(
        "/boxes/0/internal_clamps",
        json!(1),
        "boxes[0].internal_clamps",
    );
    damaged("/buying/rows/0/kind", json!("gold"), "buying.rows[0].kind");
    damaged(
        "/quote/lines/1/id",
        json!(parsed(&stored(FULL))["quote"]["lines"][0]["id"]),
        "quote.lines[1].id",
    );
    damaged("/sheet/left_out/0", json!(1), "sheet.left_out[0]");
    damaged("/rooms", json!({}), "rooms");
    damaged("/format/version", json!("1"), "format.version");
    damaged("/format/version", json!(0), "format.version");
    damaged("/id", json!("mill-lane.previous"), "id");
    damaged("/id", json!(""), "id");
    damaged("/next_id", json!(u32::MAX), "next_id");
}

#[test]
fn other_texts_are_refused_by_kind() {
    let newer = JobRefusal::NewerVersion {
        given: 1 << 40,
        known: FORMAT_VERSION,
    };
    assert_eq!(
        file::read(&small_with("/format/version", json!(1_u64 << 40))),
        Err(newer)
    );
    for text in [
        "[]",
        "3",
        "null",
        "{}",
        r#"{"format": "roomwright-job"}"#,
        r#"{"format": {"name": "x", "version": 1}}"#,
    ] {
        assert_eq!(file::read(text), Err(JobRefusal::NotAJob), "{text}");
    }
    assert_eq!(
        file::read("{\n \"a\": ]"),
        Err(JobRefusal::NotJson { line: 2, column: 7 })
    );
    assert_eq!(
        file::read(""),
        Err(JobRefusal::NotJson { line: 1, column: 0 })
    );
    assert_eq!(
        file::read_bytes(b"{\"a\": \"\xff\"}"),
        Err(JobRefusal::NotText { valid_bytes: 7 })
    );
    let most = file::MOST_BYTES;
    assert_eq!(most, 5_242_880); // 5 MiB
    let long = " ".repeat(most + 1);
    let too_large = JobRefusal::TooLarge {
        bytes: most + 1,
        most,
    };
    assert_eq!(file::read(&long), Err(too_large.clone()));
    assert_eq!(file::read_bytes(long.as_bytes()), Err(too_large));
    assert!(matches!(
        file::read(&long[1..]),
        Err(JobRefusal::NotJson { .. })
    ));
    let marked = format!("\u{feff}{}", stored("v1-small.json"));
    assert!(file::read_bytes(marked.as_bytes()).is_ok());
    let deep = "[".repeat(100_000);
    assert!(matches!(file::read(&deep), Err(JobRefusal::NotJson { .. })));
}

/// Calls `change` on every object of the document, the innermost first.
fn each_object(value: &mut Value, change: &mut impl FnMut(&mut Map<String, Value>)) {
    match value {
        Value::Object(fields) => {
            fields
                .values_mut()
                .for_each(|value| each_object(value, change));
            change(fields);
        }
        Value::Array(values) => values
            .iter_mut()
            .for_each(|value| each_object(value, change)),
        _ => {}
    }
}

fn any_json() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        prop::num::f64::NORMAL.prop_map(Value::from),
        any::<String>().prop_map(Value::from),
    ];
    leaf.prop_recursive(3, 12, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
            prop::collection::btree_map(any::<String>(), inner, 0..4)
                .prop_map(|fields| Value::Object(fields.into_iter().collect())),
        ]
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn unknown_fields_at_every_level_survive(
        unknown in prop::collection::vec(("later_.{0,12}", any_json()), 1..6),
    ) {
        let mut value = parsed(&stored(FULL));
        let (mut objects, mut next) = (0, unknown.iter().cycle());
        each_object(&mut value, &mut |fields| {
            objects += 1;
            if let Some((key, unknown)) = next.next() {
                fields.insert(key.clone(), unknown.clone());
            }
        });
        prop_assert!(objects > 40);
        let job = file::read(&value.to_string()).unwrap();
        prop_assert_eq!(parsed(&file::write(&job)), value);
    }

    #[test]
    fn any_texts_survive(texts in prop::collection::vec(any::<String>(), 1..8)) {
        let mut job = file::read(&stored(FULL)).unwrap();
        let mut texts = texts.into_iter().cycle();
        let mut next = || texts.next().unwrap_or_default();
        (job.name, job.place, job.notes) = (next(), next(), next());
        for room in &mut job.rooms {
            room.name = next();
            for spot in &mut room.survey.spots {
                (spot.x.text, spot.y.unit, spot.reading.text) = (next(), next(), next());
            }
        }
        prop_assert_eq!(file::read(&file::write(&job)), Ok(job));
    }

    /// Half a file is never taken for the whole.
    #[test]
    fn a_file_cut_short_is_refused(share in 0.0..1.0_f64) {
        let text = file::write(&file::read(&stored(FULL)).unwrap());
        let cut = (text.len() as f64 * share) as usize;
        let refused = matches!(
            file::read_bytes(&text.as_bytes()[..cut]),
            Err(JobRefusal::NotJson { .. } | JobRefusal::NotText { .. })
        );
        prop_assert!(refused);
    }

    #[test]
    fn any_bytes_are_answered(at in 0_usize..5000, byte: u8) {
        let mut bytes = stored(FULL).into_bytes();
        let at = at % bytes.len();
        bytes[at] = byte;
        if let Ok(job) = file::read_bytes(&bytes) {
            prop_assert_eq!(file::read(&file::write(&job)), Ok::<Job, JobRefusal>(job));
        }
    }
}

#[test]
fn a_survey_of_ten_thousand_spots_fits() {
    let mut job = file::read(&stored(FULL)).unwrap();
    let spot = job.rooms[0].survey.spots[0].clone();
    job.rooms[0].survey.spots = (1000..11_000)
        .map(|id| {
            let mut spot = spot.clone();
            spot.id = id;
            spot.x.text = "32' 10 11/16".to_owned();
            spot.y.text = "41' 7 3/8".to_owned();
            spot.reading.text = "3 15/16".to_owned();
            spot
        })
        .collect();
    let (pretty, compact) = (file::write(&job), file::write_compact(&job));
    assert!(pretty.len() < file::MOST_BYTES, "{}", pretty.len());
    assert!(compact.len() < file::MOST_BYTES / 3, "{}", compact.len());
    assert_eq!(file::read(&pretty), file::read(&compact));
    assert_eq!(file::would_be_read(&job, compact.len()), Ok(()));
}

#[test]
fn what_would_not_be_read_again_is_told_before_it_is_written() {
    let mut job = file::read(&stored(FULL)).unwrap();
    let most = file::MOST_BYTES;
    let bytes = most + 1;
    assert_eq!(
        file::would_be_read(&job, bytes),
        Err(JobRefusal::TooLarge { bytes, most })
    );
    job.rooms[1].id = job.rooms[0].id;
    let refusal = file::would_be_read(&job, 1000).unwrap_err();
    assert_eq!(file::read(&file::write(&job)), Err(refusal));
}
