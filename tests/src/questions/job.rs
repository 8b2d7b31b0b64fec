//! Rooms as they are entered, every answer at once.

use calc::job::questions::answers::{FloorAnswers, answers};
use calc::job::{Job, Units, demo, file};
use serde_json::{Value, json};

use crate::given::{Answer, Given, No, answer};

/// Every answer of `room`, a room of the job document.
pub fn room_answers(given: &Given) -> Answer {
    let entered = given
        .get("room")
        .ok_or_else(|| No::Case("given.room is missing".into()))?;
    let case = |problem: String| No::Case(format!("given.room: {problem}"));
    // A room is read as it is in practice: as part of a job.
    let around = file::write(&Job::new(
        "case",
        "",
        "2026-01-01T00:00:00Z",
        Units::FeetInches,
    ));
    let mut job: Value = serde_json::from_str(&around).map_err(|e| case(e.to_string()))?;
    job["rooms"] = json!([entered]);
    let job = file::read(&job.to_string()).map_err(|e| case(e.to_string()))?;
    let room = job.rooms.first().ok_or_else(|| case("no room".into()))?;
    answer(FloorAnswers::of(room))
}

/// Every answer of the demonstration job.
pub fn demo_answers(_: &Given) -> Answer {
    answer(answers(&demo::job("demo", "2026-03-02T08:00:00Z")))
}
