//! Rooms as they are entered, every answer at once.

use calc::job::questions::answers::{FloorAnswers, answers};
use calc::job::{Room, demo};
use calc::saved;

use crate::given::{Answer, Given, No, answer};

/// Every answer of `room`, a room of the job document.
pub fn room_answers(given: &Given) -> Answer {
    let entered = given
        .get("room")
        .ok_or_else(|| No::Case("given.room is missing".into()))?;
    let room = saved::read::<Room>(&entered.to_string())
        .map_err(|e| No::Case(format!("given.room at {}: {}", e.at(), e.what)))?;
    answer(FloorAnswers::of(&room))
}

/// Every answer of the demonstration job.
pub fn demo_answers(_: &Given) -> Answer {
    answer(answers(&demo::job("demo", "2026-03-02T08:00:00Z")))
}
