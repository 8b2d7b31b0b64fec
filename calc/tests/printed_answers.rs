//! The example `answers`, run as a person runs it.

#![allow(
    clippy::unwrap_used,
    reason = "a test that can't run the program has failed"
)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use calc::job::questions::answers::answers;
use calc::job::{demo, file};
use serde_json::Value;

fn run(paths: &[&Path]) -> Output {
    let mut cargo = Command::new(env!("CARGO"));
    cargo.args(["run", "-q", "-p", "calc", "--example", "answers", "--"]);
    cargo.args(paths).output().unwrap()
}

fn printed(path: &Path) -> Value {
    let output = run(&[path]);
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{}: {errors}", path.display());
    serde_json::from_slice(&output.stdout).unwrap()
}

fn scratch(name: &str, text: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, text).unwrap();
    path
}

#[test]
fn every_document_is_answered() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/documents");
    let mut count = 0;
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let job = file::read_bytes(&fs::read(&path).unwrap()).unwrap();
        let found = printed(&path);
        assert_eq!(found["job"], job.id.as_str());
        let ids: Vec<u64> = found["rooms"]
            .as_array()
            .unwrap()
            .iter()
            .filter_map(|room| room["room"].as_u64())
            .collect();
        let known: Vec<u64> = job.rooms.iter().map(|room| room.id.into()).collect();
        assert_eq!(ids, known, "{}", path.display());
        count += 1;
    }
    assert!(count >= 3, "{count} documents");
}

#[test]
fn what_is_missing_is_said_in_its_place() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/documents");
    let found = printed(&folder.join("v1-small.json"));
    let room = &found["rooms"][0];
    let missing = &room["outline"]["refused"]["entries"];
    assert_eq!(missing[0]["name"], "width");
    assert_eq!(missing[0]["refusal"], "blank");
    assert_eq!(room["floor"]["refused"], "outline");
    assert_eq!(room["level"]["refused"], "floor");
}

#[test]
fn the_demo_prints_what_the_library_answers() {
    let job = demo::job("demo", "2026-03-02T08:00:00Z");
    let found = printed(&scratch("demo.json", &file::write(&job)));
    let text = serde_json::to_string(&answers(&job)).unwrap();
    assert_eq!(found, serde_json::from_str::<Value>(&text).unwrap());
    assert_eq!(
        found["rooms"][0]["flat"]["spots"].as_array().unwrap().len(),
        job.rooms[0].survey.spots.len()
    );
}

#[test]
fn a_bad_file_is_refused_with_its_reason() {
    for (name, text, why) in [
        ("cut.json", "{\"format\":", "not JSON at line 1"),
        ("other.json", "{}", "not a job"),
        (
            "newer.json",
            r#"{"format": {"name": "roomwright-job", "version": 99}}"#,
            "version 99",
        ),
    ] {
        let output = run(&[&scratch(name, text)]);
        assert_eq!(output.status.code(), Some(2), "{name}");
        assert!(output.stdout.is_empty(), "{name}");
        let told = String::from_utf8_lossy(&output.stderr);
        assert!(told.contains(why), "{name}: {told}");
    }
    assert_eq!(
        run(&[Path::new("no-such-file.json")]).status.code(),
        Some(2)
    );
    assert_eq!(run(&[]).status.code(), Some(2));
}
