//! The wiring of a job: from entries to answers.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use calc::job::demo;
use calc::job::questions::answers::WiringAnswers;

#[test]
fn show() {
    let job = demo::job("demo", "2026-03-02T08:00:00Z");
    let a = WiringAnswers::of(&job);
    let mut v = serde_json::to_value(&a).unwrap();
    fn strip(v: &mut serde_json::Value) {
        match v {
            serde_json::Value::Object(o) => {
                o.remove("steps");
                o.values_mut().for_each(strip);
            }
            serde_json::Value::Array(o) => o.iter_mut().for_each(strip),
            _ => {}
        }
    }
    strip(&mut v);
    println!("{}", serde_json::to_string(&v).unwrap());
}
