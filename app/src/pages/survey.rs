//! The survey: which spots, their readings one after another, and what they say of the old floor.

mod doubts;
mod facts;
mod list;
mod paste;
mod steps;

use calc::floor::Point;
use calc::floor::survey::{Suspect, propose};
use calc::job::questions::survey::place_entries;
use calc::job::{Job, ReadingWay, Spot, fields};
use calc::quantity::Typed;
use leptos::prelude::*;

use crate::entry::{Choice, ChoiceOption, Measured};
use crate::focus;
use crate::markup::view;
use crate::open_job::OpenRoom;
use crate::paths::{self, Stage};
use crate::reactive::{When, derived, memo, say};
use crate::shell::PageHeading;
use crate::words::{refusals, survey as words};
use crate::work::Work;

use doubts::{Again, Trouble};
use facts::Facts;
use list::{List, Own};
use paste::Paste;
use steps::Steps;

/// What the survey page holds open.
#[derive(Clone, Copy)]
struct Walk {
    room: OpenRoom,
    work: Work,
    /// Ids of the spots, in walking order.
    ids: Memo<Vec<u32>>,
    /// The spot being entered.
    now: RwSignal<Option<u32>>,
    /// Readings before they were changed, for undo.
    undo: RwSignal<Vec<(u32, Typed)>>,
    /// Something that was done, said once.
    said: RwSignal<String>,
    /// The readings that disagree with their neighbours.
    suspects: Memo<Vec<Suspect>>,
}

impl Walk {
    fn number(self, id: u32) -> usize {
        self.ids
            .with(|ids| ids.iter().position(|&i| i == id).map_or(0, |i| i + 1))
    }

    /// The number of a spot by its index among the spots that were read.
    fn number_of_read(self, index: usize) -> usize {
        self.work
            .readings
            .with(|r| r.id_of(index))
            .map_or(index + 1, |id| self.number(id))
    }

    fn go(self, to: Option<u32>) {
        self.now.set(to);
        if to.is_none() {
            // Past the last spot: on to what the readings say, by way of the heading.
            focus::heading();
        } else {
            // The same field stays in the page; it only needs the focus, once its value is the new spot's.
            focus::soon("reading");
        }
    }

    fn step(self, by: isize) {
        // A reading that can't be read is mended first; its field says what is wrong.
        let refused = by > 0
            && self.now.get_untracked().is_some_and(|id| {
                self.room.open.job.with_untracked(|job| {
                    job.room(self.room.id)
                        .and_then(|r| r.spot(id))
                        .is_some_and(|s| fields::READING.optional(&s.reading).is_err())
                })
            });
        if refused {
            return;
        }
        let to = self.ids.with_untracked(|ids| {
            let at = self
                .now
                .get_untracked()
                .and_then(|id| ids.iter().position(|&i| i == id));
            at.and_then(|at| at.checked_add_signed(by))
                .and_then(|at| ids.get(at).copied())
        });
        self.go(to);
    }

    /// The user says that a reading is right, though its neighbours disagree.
    fn checked(self, id: u32) {
        self.room.change(|r| {
            if let Some(spot) = r.spot_mut(id) {
                spot.checked.clone_from(&spot.reading.text);
            }
        });
    }

    fn set_reading(self, id: u32, typed: Typed) {
        self.room.change(|r| {
            if let Some(spot) = r.spot_mut(id) {
                spot.reading = typed;
            }
        });
    }
}

/// The survey stage.
#[component]
pub fn SurveyPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let work = Work::of(room);
    let ids = room.part(|r| r.survey.spots.iter().map(|s| s.id).collect::<Vec<_>>());
    // Nothing read yet, or left in mid-word: a page that was closed there opens there.
    let first_open = room.open.job.with_untracked(|job| {
        job.room(room.id).and_then(|r| {
            r.survey
                .spots
                .iter()
                .find(|s| fields::READING.read(&s.reading).is_err())
                .map(|s| s.id)
        })
    });
    let walk = Walk {
        room,
        work,
        ids,
        now: RwSignal::new(first_open),
        undo: RwSignal::new(Vec::new()),
        said: RwSignal::new(String::new()),
        suspects: memo(move || work.readings.with(|r| r.doubted())),
    };
    let has_room = memo(move || work.shape.read().is_ok());
    let has_spots = memo(move || !ids.read().is_empty());
    view! {
        <PageHeading text=Signal::stored(words::heading().to_owned()) />
        <When
            when=move || has_room.get()
            fallback=move || {
                view! {
                    <p class="notice look">{words::no_room_yet()}</p>
                    <a class="button main" href=paths::stage(&room.open.id(), room.id, Stage::Room)>{words::to_room()}</a>
                }
            }
        >
            <When when=move || has_spots.get()>
                <Steps walk />
            </When>
            <p role="status">{walk.said}</p>
            <SetUp walk has_spots />
            <Trouble walk />
            <Again walk />
            <Facts walk />
            <List walk />
            <Own walk />
            <Paste walk />
            <a class="button main wide" href=paths::stage(&room.open.id(), room.id, Stage::Pour)>{words::to_pour()}</a>
        </When>
    }
}

/// How readings are taken, and the proposal of spots.
#[component]
fn SetUp(walk: Walk, has_spots: Memo<bool>) -> impl IntoView {
    let room = walk.room;
    let units = room.open.units();
    let way = room.part(|r| r.survey.way);
    let refused = RwSignal::new(None);
    let propose_spots = move |_| {
        let Some(outline) = walk.work.outline() else {
            return;
        };
        let spacing = room
            .open
            .job
            .with_untracked(|job| job.room(room.id).map(|r| r.survey.spacing.clone()));
        let Ok(spacing_in) = fields::SPACING.read(&spacing.unwrap_or_default()) else {
            let want = refusals::example(&fields::SPACING);
            walk.said.set(format!("{}: {want}", words::spacing_label()));
            return;
        };
        walk.said.set(String::new());
        match propose(&outline, &walk.work.spans(), spacing_in) {
            Err(refusal) => {
                refused.set(Some(words::survey_refusal(&refusal, units.get_untracked())))
            }
            Ok(proposed) => {
                refused.set(None);
                lay_out(
                    walk,
                    &outline,
                    &proposed.iter().map(|p| p.at).collect::<Vec<_>>(),
                );
            }
        }
    };
    view! {
        <details class="set-up" prop:open=move || !has_spots.get()>
            <summary>{words::set_up()}</summary>
            <div class="stack">
                <Choice
                    id="way".to_owned()
                    label=Signal::stored(words::way_label().to_owned())
                    options=Signal::stored(
                        vec![ChoiceOption::new("down", words::way_down()), ChoiceOption::new("up", words::way_up())],
                    )
                    value=derived(move || {
                        if way.get() == ReadingWay::DownFromLine { "down" } else { "up" }.to_owned()
                    })
                    hint=derived(move || {
                        if way.get() == ReadingWay::DownFromLine { words::way_down_hint() } else { words::way_up_hint() }
                            .to_owned()
                    })
                    on_pick=Callback::new(move |code: String| {
                        room.change(|r| {
                            r.survey.way = if code == "up" { ReadingWay::UpFromLow } else { ReadingWay::DownFromLine };
                        })
                    })
                />
                <Measured
                    id="spacing"
                    label=Signal::stored(words::spacing_label().to_owned())
                    hint=Signal::stored(words::propose_why().to_owned())
                    field=fields::SPACING
                    units
                    also=refused
                    value=room.part(|r| r.survey.spacing.clone())
                    on_typed=Callback::new(move |typed| room.change(|r| r.survey.spacing = typed))
                />
                <button type="button" class="button" class:main=move || !has_spots.get() on:click=propose_spots>
                    {say(move || if has_spots.get() { words::propose_again() } else { words::propose() })}
                </button>
            </div>
        </details>
    }
}

/// Puts proposed spots in the document: spots already read stay where they are, unread ones give way.
fn lay_out(walk: Walk, outline: &calc::floor::Outline, proposed: &[Point]) {
    let units = walk.room.open.units().get_untracked();
    let read: Vec<Point> = walk
        .work
        .readings
        .with_untracked(|r| r.places.iter().filter(|p| p.read).map(|p| p.at).collect());
    // Spots of the user's own that are not read yet give way too: they can be put back.
    let room_id = walk.room.id;
    let gone = walk.work.readings.with_untracked(|r| r.unread());
    walk.room.open.take_out(words::spots_unread(gone), |job| {
        let mut next = job.next_id;
        let mut before = None;
        if let Some(room) = job.room_mut(room_id) {
            let mut spots: Vec<Spot> = room
                .survey
                .spots
                .iter()
                .filter(|s| !s.reading.is_blank())
                .cloned()
                .collect();
            for &at in proposed {
                // A spot already read within an inch serves.
                if read.iter().any(|r| r.distance_in(at) < 1.0) {
                    continue;
                }
                let (x, y) = place_entries(outline, at, units);
                spots.push(Spot {
                    id: next,
                    x,
                    y,
                    reading: Typed::default(),
                    checked: String::new(),
                    rest: calc::job::Rest::new(),
                });
                next += 1;
            }
            before = Some(std::mem::replace(&mut room.survey.spots, spots));
        }
        job.next_id = next;
        let before = before.filter(|_| gone > 0)?;
        Some(Box::new(move |job: &mut Job| {
            if let Some(room) = job.room_mut(room_id) {
                room.survey.spots = before;
            }
        }))
    });
    let first = walk.room.open.job.with_untracked(|job| {
        job.room(walk.room.id).and_then(|r| {
            r.survey
                .spots
                .iter()
                .find(|s| s.reading.is_blank())
                .map(|s| s.id)
        })
    });
    walk.go(first);
}
