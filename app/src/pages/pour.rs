//! The pour: what it must keep, the two answers side by side, pins, section, bags, lifts, flatness.

mod asked;

mod bags;

mod compare;

mod flatness;

mod pins;

mod rules;

use crate::markup::view;
use std::sync::Arc;

use crate::reactive::{When, memo, say};
use calc::floor::Surface;
use calc::floor::mixing::{Bags, MixingRefusal, bags};
use calc::floor::pour::{self, Pour, PourAsk, PourKind, PourRefusal};
use calc::floor::survey::reading_in;
use calc::job::questions::EntryProblem;
use calc::job::questions::pour as questions;
use calc::job::{Finish, PourChoice, PourEntry, fields};
use calc::quantity::Typed;
use leptos::prelude::*;

use crate::entry::{ChoiceOption, Measured, Pick};
use crate::open_job::OpenRoom;
use crate::paths::{self, Stage};
use crate::pictures::floor_map::MapContent;
use crate::pictures::reading_text;
use crate::shell::PageHeading;
use crate::words::{common, pour as words, survey as survey_words};
use crate::work::{Work, letter_of};

/// A pour, or why there is none; nothing while the floor or an entry is missing.
type Plan = Option<Result<Arc<Pour>, PourRefusal>>;

/// What the parts of the page share.
#[derive(Clone, Copy)]
struct Plans {
    room: OpenRoom,
    work: Work,
    surface: Memo<Option<Arc<Surface>>>,
    ask: Memo<Result<PourAsk, Vec<EntryProblem>>>,
    level: Memo<Plan>,
    flat: Memo<Plan>,
    entry: Memo<PourEntry>,
    /// The kind whose pins and section are shown.
    shown: Memo<PourKind>,
    /// The kind that bags and lifts are for: the one taken, else the one shown.
    bought: Memo<PourKind>,
    /// The kind looked at on this page, where it isn't the one taken.
    looked_at: RwSignal<Option<PourKind>>,
}

impl Plans {
    fn of(room: OpenRoom) -> Self {
        let work = Work::of(room);
        let surface = memo(move || work.surface());
        let entry = room.part(|r| r.pour.clone());
        // Only what the ask is made of: a change of bags must not pour anew.
        let asked = room.part(|r| {
            let kept = (
                r.pour.cover.clone(),
                r.pour.tilt_limit.clone(),
                r.pour.height_rules.clone(),
            );
            let openings: Vec<(u32, Typed)> = r
                .openings
                .iter()
                .map(|o| (o.id, o.pour_at_most.clone()))
                .collect();
            (kept, openings, r.survey.way)
        });
        let ask = memo(move || {
            asked.track();
            let placed = work.openings.with(|(placed, _)| placed.clone());
            work.readings.with(|readings| {
                room.open.job.with_untracked(|job| {
                    job.room(room.id)
                        .map_or_else(|| Err(Vec::new()), |r| questions::ask(r, &placed, readings))
                })
            })
        });
        let plan = move |solve: fn(&Surface, &PourAsk) -> Result<Pour, PourRefusal>| {
            memo(move || {
                let surface = surface.get()?;
                ask.with(|ask| {
                    ask.as_ref()
                        .ok()
                        .map(|ask| solve(&surface, ask).map(Arc::new))
                })
            })
        };
        let looked_at = RwSignal::new(None);
        let choice = room.part(|r| r.pour.choice);
        let taken = memo(move || match choice.get() {
            PourChoice::Level => Some(PourKind::Level),
            PourChoice::Flat => Some(PourKind::Flat),
            PourChoice::Open => None,
        });
        let shown = memo(move || looked_at.get().or(taken.get()).unwrap_or(PourKind::Flat));
        let bought = memo(move || taken.get().unwrap_or(shown.get()));
        Self {
            room,
            work,
            surface,
            ask,
            level: plan(pour::level),
            flat: plan(pour::flat),
            entry,
            shown,
            bought,
            looked_at,
        }
    }

    fn plan(self, kind: PourKind) -> Plan {
        match kind {
            PourKind::Level => self.level.get(),
            PourKind::Flat => self.flat.get(),
        }
    }

    /// The pour of a kind, where there is one.
    fn pour(self, kind: PourKind) -> Option<Arc<Pour>> {
        self.plan(kind).and_then(Result::ok)
    }

    /// The bags of a pour; nothing while an entry of the bag is missing.
    fn bags(self, kind: PourKind) -> Option<Result<Bags, MixingRefusal>> {
        let pour = self.pour(kind)?;
        let ask = self
            .entry
            .with(|entry| questions::bag_ask(entry, pour.volume_ft3))
            .ok()?;
        Some(bags(&ask))
    }

    /// The number of a spot by its id, from 1.
    fn spot_number(self, id: u32) -> usize {
        self.work.readings.with(|r| r.number_of(id)).unwrap_or(0)
    }

    /// What a vertex of the surface is called.
    fn vertex_name(self, vertex: usize) -> String {
        match self.work.readings.with(|r| r.id_of(vertex)) {
            Some(id) => survey_words::spot(self.spot_number(id)),
            None => common::corner().to_owned(),
        }
    }

    /// The id of a spot by its number from 1.
    fn spot_by_number(self, number: f64) -> Option<u32> {
        // Whole, by its field.
        self.work.readings.with(|r| r.id_by_number(number as usize))
    }
}

/// The map of the pour taken with its pins, and what it says; nothing to draw while there is none.
pub fn pour_map(room: OpenRoom) -> (Memo<MapContent>, Signal<String>) {
    let plans = Plans::of(room);
    (memo(move || pins::map(plans, None)), pins::map_says(plans))
}

/// The pour taken: its kind, volume and bags; none while none is taken or it can't be had.
pub fn key_figure(room: OpenRoom) -> Memo<Option<(PourKind, String, String)>> {
    let plans = Plans::of(room);
    memo(move || {
        let kind = match plans.entry.read().choice {
            PourChoice::Level => PourKind::Level,
            PourChoice::Flat => PourKind::Flat,
            PourChoice::Open => return None,
        };
        let volume = compare::volume_text(plans.pour(kind)?.volume_ft3, room.open.units().get());
        let bags = match plans.bags(kind)?.ok()?.bags {
            1 => common::one_bag().to_owned(),
            bags => common::bag_count(u64::from(bags)),
        };
        Some((kind, volume, bags))
    })
}

impl words::Naming for Plans {
    fn rule(&self, id: u32) -> String {
        let rule = self.room.open.job.with(|job| {
            let rules = &job.room(self.room.id)?.pour.height_rules;
            let at = rules.iter().position(|rule| rule.id == id)?;
            Some((at + 1, rules.get(at)?.spot))
        });
        match rule {
            Some((number, spot)) => match spot.map_or(0, |spot| self.spot_number(spot)) {
                0 => words::rule_name(number),
                spot => words::rule_called(spot),
            },
            None => {
                let letter =
                    |job: &calc::job::Job| job.room(self.room.id).map(|room| letter_of(room, id));
                words::cap_called(&self.room.open.job.with(letter).unwrap_or_default())
            }
        }
    }

    fn cover(&self, vertex: usize) -> String {
        match self.work.readings.with(|r| r.id_of(vertex)) {
            Some(id) => words::cover_called(self.spot_number(id)),
            None => words::cover_corner_called().to_owned(),
        }
    }

    fn spot(&self, vertex: usize) -> Option<usize> {
        let id = self.work.readings.with(|r| r.id_of(vertex))?;
        Some(self.spot_number(id))
    }

    fn reading(&self, height_in: f64) -> String {
        let way = self
            .room
            .open
            .job
            .with(|job| job.room(self.room.id).map(|r| r.survey.way))
            .unwrap_or_default();
        reading_text(reading_in(way, height_in), self.room.open.units().get())
    }
}

/// The pour stage.
#[component]
pub fn PourPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let plans = Plans::of(room);
    let units = room.open.units();
    let missing = memo(move || plans.surface.read().is_none());
    let unread = memo(move || {
        plans
            .work
            .readings
            .with(calc::job::questions::survey::Readings::unread)
    });
    let moved = memo(move || {
        plans.work.readings.with(|readings| {
            let number = |id: u32| readings.number_of(id).unwrap_or(0).to_string();
            let numbers: Vec<String> = readings
                .moved()
                .iter()
                .map(|moved| number(moved.spot))
                .collect();
            numbers.join(", ")
        })
    });
    let survey = paths::stage(&room.open.id(), room.id, Stage::Survey);
    let trouble = memo(move || {
        plans.work.floor.with(|floor| match floor {
            Some(Err(refusal)) => Some(survey_words::surface_refusal(
                refusal,
                &|index| {
                    plans
                        .work
                        .readings
                        .with(|r| r.id_of(index))
                        .map_or(index + 1, |id| plans.spot_number(id))
                },
                units.get(),
            )),
            _ => None,
        })
    });
    view! {
        <PageHeading text=Signal::stored(words::heading().to_owned()) />
        <When when=move || missing.get()>
            <div class="notice look">
                <p>{say(move || trouble.get().unwrap_or_else(|| words::no_floor_yet().to_owned()))}</p>
                <a class="button main" href=survey.clone()>{words::to_survey()}</a>
            </div>
        </When>
        <When when=move || !missing.get()>
            <When when=move || unread.get() != 0>
                <p class="notice">{say(move || {
                    if unread.get() == 1 { words::one_still_unread().to_owned() } else { words::still_unread(unread.get()) }
                })}</p>
            </When>
            <When when=move || !moved.read().is_empty()>
                <p class="notice">{say(move || words::spots_moved(moved.get()))}</p>
            </When>
            <compare::Compare plans />
            <Keeps plans />
            <asked::Asked plans />
            <pins::Pins plans />
            <bags::BagsAndMixing plans />
            <bags::LiftsPart plans />
            <rules::Rules plans />
            <flatness::Flatness plans />
            <Cautions />
            <a class="button main wide" href=paths::stage(&room.open.id(), room.id, Stage::Doorways)>
                {words::to_doorways()}
            </a>
        </When>
    }
}

/// The entries that the pour rests on first.
#[component]
fn Keeps(plans: Plans) -> impl IntoView {
    let room = plans.room;
    let units = room.open.units();
    let finish = room.part(|r| finish_code(r.finish).to_owned());
    view! {
        <div class="pair">
            <Measured
                id="cover"
                label=Signal::stored(words::cover_label().to_owned())
                hint=Signal::stored(words::cover_hint().to_owned())
                field=fields::COVER
                units
                value=room.part(|r| r.pour.cover.clone())
                on_typed=Callback::new(move |typed| room.change(|r| r.pour.cover = typed))
            />
            <Measured
                id="tilt-limit"
                label=Signal::stored(words::tilt_label().to_owned())
                field=fields::TILT
                units
                optional=true
                value=room.part(|r| r.pour.tilt_limit.clone())
                on_typed=Callback::new(move |typed| room.change(|r| r.pour.tilt_limit = typed))
            />
        </div>
        <Pick
            id="finish".to_owned()
            label=Signal::stored(words::finish_label().to_owned())
            options=Signal::stored(
                FINISHES.iter().map(|&f| ChoiceOption::new(finish_code(f), words::finish(f))).collect(),
            )
            value=finish
            on_pick=Callback::new(move |code: String| {
                if let Some(&finish) = FINISHES.iter().find(|&&f| finish_code(f) == code) {
                    room.change(|r| r.finish = finish);
                }
            })
        />
    }
}

const FINISHES: [Finish; 6] = [
    Finish::TileSmall,
    Finish::TileLarge,
    Finish::Resilient,
    Finish::WoodLong,
    Finish::WoodShort,
    Finish::Floating,
];

fn finish_code(finish: Finish) -> &'static str {
    match finish {
        Finish::TileSmall => "tile_small",
        Finish::TileLarge => "tile_large",
        Finish::Resilient => "resilient",
        Finish::WoodLong => "wood_long",
        Finish::WoodShort => "wood_short",
        Finish::Floating => "floating",
    }
}

/// What can happen, and what to do.
#[component]
fn Cautions() -> impl IntoView {
    view! {
        <section class="caution">
            <h3>{common::cautions()}</h3>
            <ul>
                <li>{words::caution_bag()}</li>
                <li>{words::caution_prime()}</li>
                <li>{words::caution_joists()}</li>
                <li>{words::caution_asbestos()}</li>
                <li>{words::caution_dust()}</li>
            </ul>
        </section>
    }
}
