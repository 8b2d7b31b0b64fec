//! The survey: which spots, their readings one after another, and what they say of the old floor.

use crate::markup::{For, view};
use std::collections::BTreeSet;

use crate::reactive::{When, derived, draw, memo, say};
use calc::floor::surface::SurfaceRefusal;
use calc::floor::survey::{Suspect, propose, reading_in};
use calc::floor::{Point, contour, paste};
use calc::job::questions::answers::LEVELS;
use calc::job::questions::survey::place_entries;
use calc::job::{ReadingWay, Spot, Units, fields};
use calc::quantity::{Area, AreaUnit, LengthUnit, Typed, Volume, VolumeUnit};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::room::gaps;
use crate::entry::{Choice, ChoiceOption, Measured, TextEntry};
use crate::focus;
use crate::open_job::OpenRoom;
use crate::paths::{self, Stage};
use crate::pictures::floor_map::{HeightLine, MapContent, Mark, Pin};
use crate::pictures::{FloorMap, LengthFigure, length_text, reading_text};
use crate::shell::PageHeading;
use crate::store::{drafts, files};
use crate::words::{common, notices, pour as pour_words, refusals, survey as words};
use crate::work::Work;

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
    walk.room.open.change(|job| {
        let mut next = job.next_id;
        if let Some(room) = job.room_mut(walk.room.id) {
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
            room.survey.spots = spots;
        }
        job.next_id = next;
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

/// One spot after another: the map above, one entry, next.
#[component]
fn Steps(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let content = memo(move || map(walk));
    let counts = memo(move || {
        walk.work
            .readings
            .with(|r| (r.places.len() - r.unread(), r.places.len()))
    });
    let says = derived(move || {
        let (read, count) = counts.get();
        words::map_says(read, count)
    });
    let tap = Callback::new(move |index: usize| {
        let id = walk
            .work
            .readings
            .with_untracked(|r| r.places.get(index).map(|p| p.id));
        walk.go(id);
    });
    let value = memo(move || {
        let id = walk.now.get()?;
        walk.room.open.job.with(|job| {
            job.room(walk.room.id)
                .and_then(|r| r.spot(id))
                .map(|s| s.reading.clone())
        })
    });
    let place = move || {
        let id = walk.now.get()?;
        let at = walk.work.readings.with(|r| r.place_of(id))?;
        Some(words::spot_where(
            length_text(at.x_in, units.get()),
            length_text(at.y_in, units.get()),
        ))
    };
    // One undo for each stay at a spot: the reading as it was on arrival.
    let arrived = StoredValue::new((None::<u32>, Typed::default()));
    Effect::new(move |_| {
        let now = walk.now.get();
        let reading = now.and_then(|id| {
            walk.room.open.job.with_untracked(|job| {
                job.room(walk.room.id)
                    .and_then(|r| r.spot(id))
                    .map(|s| s.reading.clone())
            })
        });
        arrived.set_value((now, reading.unwrap_or_default()));
    });
    let typed = Callback::new(move |typed: Typed| {
        let Some(id) = walk.now.get_untracked() else {
            return;
        };
        let (at, before) = arrived.get_value();
        if at == Some(id) && before != typed {
            walk.undo.update(|undo| {
                if undo.last().is_none_or(|(last, _)| *last != id) {
                    undo.push((id, before));
                }
            });
        }
        walk.set_reading(id, typed);
    });
    let undo = move |_| {
        if let Some((id, before)) = walk.undo.try_update(Vec::pop).flatten() {
            walk.set_reading(id, before);
            walk.go(Some(id));
        }
    };
    let status = move || {
        let (read, count) = counts.get();
        if read == count {
            words::all_read().to_owned()
        } else if count - read == 1 {
            words::one_left_to_read().to_owned()
        } else {
            words::left_to_read(count - read)
        }
    };
    view! {
        <section class="walk">
            <figure class="picture">
                <FloorMap content says on_tap=tap tall=230.0 />
                <figcaption>{words::map_caption()}</figcaption>
            </figure>
            <p class="quiet">{say(status)}</p>
            <When when=move || walk.now.read().is_some()>
                <p>
                    <strong>
                        {move || {
                            words::spot_of(walk.now.get().map_or(0, |id| walk.number(id)), walk.ids.read().len())
                        }}
                    </strong> " " <span class="quiet">{say(place)}</span>
                </p>
                <Measured
                    id="reading"
                    label=derived(move || words::reading_label(walk.now.get().map_or(0, |id| walk.number(id))))
                    field=fields::READING
                    units
                    always_open=true
                    value=derived(move || value.get().unwrap_or_default())
                    on_typed=typed
                    on_enter=Callback::new(move |()| walk.step(1))
                />
                <div class="row spread at-hand">
                    <button type="button" class="button" on:click=move |_| walk.step(-1)>{words::previous_spot()}</button>
                    <button type="button" class="button" disabled=move || walk.undo.read().is_empty() on:click=undo>
                        {words::undo_reading()}
                    </button>
                    <button type="button" class="button main grow" on:click=move |_| walk.step(1)>{words::next_spot()}</button>
                </div>
            </When>
        </section>
    }
}

/// The map of the walk: pins by what is read, the spot that is entered now, those to read again.
fn map(walk: Walk) -> MapContent {
    let Some(outline) = walk.work.outline() else {
        return MapContent::default();
    };
    let again = again(walk);
    let now = walk.now.get();
    let pins = walk.work.readings.with(|r| {
        r.places
            .iter()
            .map(|place| Pin {
                at: place.at,
                label: place.number.to_string(),
                mark: match () {
                    () if now == Some(place.id) => Mark::Now,
                    () if again.contains(&place.id) => Mark::Again,
                    () if place.read => Mark::Read,
                    () => Mark::Open,
                },
            })
            .collect()
    });
    MapContent {
        corners: outline.corners().to_vec(),
        gaps: gaps(walk.work),
        pins,
        ..MapContent::default()
    }
}

/// Ids of the readings that disagree with their neighbours, but for the one being entered.
fn again(walk: Walk) -> BTreeSet<u32> {
    let now = walk.now.get();
    walk.work.readings.with(|r| {
        walk.suspects
            .read()
            .iter()
            .filter_map(|s| r.id_of(s.index))
            .filter(|&id| Some(id) != now)
            .collect()
    })
}

/// Readings that disagree with their neighbours.
#[component]
fn Again(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let way = walk.room.part(|r| r.survey.way);
    let rows = memo(move || {
        let now = walk.now.get();
        walk.work.readings.with(|r| {
            walk.suspects
                .read()
                .iter()
                .filter_map(|s| {
                    let id = r.id_of(s.index).filter(|&id| Some(id) != now)?;
                    let height_in = r.spots.get(s.index)?.height_in;
                    Some((
                        id,
                        reading_in(way.get(), height_in),
                        reading_in(way.get(), s.expected_in),
                    ))
                })
                .collect::<Vec<_>>()
        })
    });
    view! {
        <When when=move || !rows.read().is_empty()>
            <section class="notice look">
                <h2>{words::again_heading()}</h2>
                {move || {
                    rows.get()
                        .into_iter()
                        .map(|(id, reading, expected)| {
                            let number = walk.number(id);
                            view! {
                                <p>
                                    {words::again(
                                        number,
                                        reading_text(reading, units.get()),
                                        reading_text(expected, units.get()),
                                    )}
                                </p>
                                <div class="row">
                                    <button type="button" class="button" on:click=move |_| walk.go(Some(id))>
                                        {words::go_to_spot(number)}
                                    </button>
                                    <button type="button" class="button" on:click=move |_| walk.checked(id)>
                                        {words::checked_spot(number)}
                                    </button>
                                </div>
                            }
                        })
                        .collect_view()
                }}
                <p class="quiet">{words::again_kept()}</p>
            </section>
        </When>
    }
}

/// What keeps the spots from being a floor.
#[component]
fn Trouble(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let words = memo(move || {
        let problems = walk.work.readings.with(|r| r.problems.len());
        // A walk under way has its spots in one line for a while.
        let under_way = walk.work.readings.with(|r| r.unread() > 0);
        let refusal = walk.work.floor.with(|floor| match floor {
            Some(Err(SurfaceRefusal::OneLine { .. } | SurfaceRefusal::TooFew { .. }))
                if under_way =>
            {
                None
            }
            Some(Err(SurfaceRefusal::Outside { .. })) => None,
            Some(Err(refusal)) => Some(words::surface_refusal(
                refusal,
                &|index| walk.number_of_read(index),
                units.get(),
            )),
            _ => None,
        });
        let entries = match problems {
            0 => None,
            1 => Some(words::entry_wrong().to_owned()),
            _ => Some(words::entries_wrong(problems)),
        };
        [refusal, entries]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" ")
    });
    // Those past a wall by more than a slip of the tape: to be brought back all at once.
    let outside = memo(move || {
        let outline = walk.work.outline()?;
        let outside = walk.work.readings.with(|r| r.outside(&outline));
        (!outside.is_empty()).then_some(outside)
    });
    let bring_back = move |_| {
        let (Some(outside), Some(outline)) = (outside.get_untracked(), walk.work.outline()) else {
            return;
        };
        let units = units.get_untracked();
        walk.room.change(|r| {
            for (id, at) in outside {
                if let Some(spot) = r.spot_mut(id) {
                    (spot.x, spot.y) = place_entries(&outline, at, units);
                }
            }
        });
    };
    let named = move || {
        let numbers = outside
            .get()?
            .iter()
            .map(|(id, _)| walk.number(*id).to_string())
            .collect::<Vec<_>>();
        Some(words::outside(&numbers.join(", ")))
    };
    view! {
        <p class="notice look" role="status" hidden=move || words.read().is_empty()>{words}</p>
        <When when=move || outside.read().is_some()>
            <div class="notice look">
                <p>{say(named)}</p>
                <button type="button" class="button" on:click=bring_back>{words::bring_to_wall()}</button>
            </div>
        </When>
    }
}

/// What the floor does: fall, tilt, contours, the volume to each level.
#[component]
fn Facts(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let surface = memo(move || walk.work.surface());
    let facts = memo(move || surface.with(|s| s.as_ref().map(|s| s.facts())));
    let way = walk.room.part(|r| r.survey.way);
    let fall = derived(move || facts.with(|f| f.as_ref().map_or(0.0, |f| f.fall_in)));
    let named = move |height_in: f64| reading_text(reading_in(way.get(), height_in), units.get());
    let content = memo(move || contours(walk));
    let lines = move || {
        facts.with(|f| {
            f.as_ref().map(|f| {
                let fit = &f.best_fit;
                let tilt = fit.plane.tilt_in_per_4ft();
                let rms = length_text(fit.rms_in, units.get());
                let leans = if tilt < 1.0 / 64.0 {
                    words::best_fit_level(rms)
                } else {
                    words::best_fit(pour_words::tilt(tilt, units.get()), rms)
                };
                let assumed = surface.with(|s| {
                    s.as_ref().map_or(0, |s| s.vertices.iter().filter(|v| v.assumed_from.is_some()).count())
                });
                view! {
                    <p>{words::fall_rests(named(f.lowest_in), named(f.highest_in))}</p>
                    <p>{leans}</p>
                    {(assumed > 0).then(|| view! { <p class="quiet">{if assumed == 1 { words::one_assumed().to_owned() } else { words::assumed(assumed) }}</p> })}
                }
            })
        })
    };
    let levels = move || {
        let facts = facts.get()?;
        surface.with(|s| {
            let s = s.as_ref()?;
            let metric = units.get() == Units::Metric;
            let rows = s
                .hypsometric_curve(LEVELS)
                .into_iter()
                .rev()
                .map(|reached| {
                    let volume = Volume::from_in3(reached.volume_in3);
                    let area = Area::from_in2(reached.area_in2);
                    view! {
                        <tr>
                            <td>{length_text(facts.highest_in - reached.level_in, units.get())}</td>
                            <td class="num">
                                {if metric { volume.format(VolumeUnit::Liters, 1) } else { volume.format(VolumeUnit::CubicFeet, 2) }}
                            </td>
                            <td class="num">
                                {area.format(if metric { AreaUnit::SquareMeters } else { AreaUnit::SquareFeet }, 1)}
                            </td>
                        </tr>
                    }
                })
                .collect_view();
            Some(rows)
        })
    };
    view! {
        <When when=move || facts.read().is_some()>
            <section class="sheet">
                <h2>{words::facts_heading()}</h2>
                <LengthFigure inches=fall units />
                {draw(lines)}
                <figure class="picture">
                    <FloorMap
                        content=derived(move || content.get().0)
                        says=derived(move || words::contours_says(length_text(fall.get(), units.get())))
                        tall=300.0
                    />
                    <figcaption>{say(move || words::contours_caption(length_text(content.get().1, units.get())))}</figcaption>
                </figure>
                <details>
                    <summary>{words::levels_heading()}</summary>
                    <table>
                        <thead>
                            <tr>
                                <th scope="col">{words::level_column()}</th>
                                <th scope="col" class="num">{words::level_volume()}</th>
                                <th scope="col" class="num">{words::level_area()}</th>
                            </tr>
                        </thead>
                        <tbody>{draw(levels)}</tbody>
                    </table>
                </details>
            </section>
        </When>
    }
}

/// The contour map, and the step between its lines.
fn contours(walk: Walk) -> (MapContent, f64) {
    let units = walk.room.open.units().get();
    let (Some(outline), Some(surface)) = (walk.work.outline(), walk.work.surface()) else {
        return (MapContent::default(), 0.0);
    };
    let facts = surface.facts();
    let levels = contour::levels(0.0, facts.fall_in, 8);
    let step_in = match levels.as_slice() {
        [a, b, ..] => b - a,
        _ => 0.0,
    };
    let lines = levels
        .iter()
        .enumerate()
        .map(|(i, &below_in)| HeightLine {
            label: if i % 2 == 0 {
                length_text(below_in, units)
            } else {
                String::new()
            },
            index: i % 4 == 0,
            pieces: contour::contour(&surface, facts.highest_in - below_in),
        })
        .collect();
    let pin = |index: usize, label: &str| {
        surface.vertices.get(index).map(|v| Pin {
            at: v.at,
            label: label.to_owned(),
            mark: Mark::Read,
        })
    };
    let tilt = facts.best_fit.plane.tilt_in_per_4ft();
    let content = MapContent {
        corners: outline.corners().to_vec(),
        gaps: gaps(walk.work),
        lines,
        pins: [
            pin(facts.highest, words::high()),
            pin(facts.lowest, words::low()),
        ]
        .into_iter()
        .flatten()
        .collect(),
        downhill: facts
            .best_fit
            .plane
            .downhill_degrees()
            .filter(|_| tilt >= 1.0 / 64.0),
        ..MapContent::default()
    };
    (content, step_in)
}

/// How many spots the list shows at first, and more at each asking.
const ROWS_AT_ONCE: usize = 40;

/// All spots as a list to correct.
#[component]
fn List(walk: Walk) -> impl IntoView {
    let room = walk.room;
    let units = room.open.units();
    let open = RwSignal::new(false);
    let shown = RwSignal::new(ROWS_AT_ONCE);
    let ids = memo(move || {
        if open.get() {
            walk.ids
                .with(|ids| ids.iter().copied().take(shown.get()).collect())
        } else {
            Vec::new()
        }
    });
    let cleared = RwSignal::new(None::<Vec<Spot>>);
    let clear = move |_| {
        let before = room
            .open
            .job
            .with_untracked(|job| job.room(room.id).map(|r| r.survey.spots.clone()));
        cleared.set(before);
        walk.now.set(None);
        room.change(|r| r.survey.spots.clear());
    };
    view! {
        // What was taken out can be brought back beneath, so the list itself stays.
        <details class="on-paper" hidden=move || walk.ids.read().is_empty() on:toggle:target=move |ev| open.set(ev.target().open())>
            <summary>{say(move || words::list_heading(walk.ids.read().len()))}</summary>
            <ol class="rows">
                <For each=move || ids.get() key=|id| *id let:id>
                    <SpotRow walk id units />
                </For>
            </ol>
            <When when=move || shown.get() < walk.ids.read().len()>
                <button type="button" class="button" on:click=move |_| shown.update(|n| *n += ROWS_AT_ONCE)>
                    {words::more_spots()}
                </button>
            </When>
            <button type="button" class="button look plain" on:click=clear>{words::take_out_all()}</button>
        </details>
        {move || {
            cleared
                .get()
                .filter(|_| walk.ids.read().is_empty())
                .map(|before| {
                    view! {
                        <div class="notice">
                            <p>{words::taken_out(before.len())}</p>
                            <button
                                type="button"
                                class="button"
                                on:click=move |_| room.change(|r| r.survey.spots.clone_from(&before))
                            >
                                {common::undo()}
                            </button>
                        </div>
                    }
                })
        }}
    }
}

/// One spot of the list.
#[component]
fn SpotRow(walk: Walk, id: u32, units: Memo<Units>) -> impl IntoView {
    let room = walk.room;
    let part =
        move |get: fn(&Spot) -> Typed| room.part(move |r| r.spot(id).map(get).unwrap_or_default());
    let entry = move |what: &'static str,
                      label: &'static str,
                      field: fields::Field,
                      get: fn(&Spot) -> Typed,
                      set: fn(&mut Spot, Typed)| {
        view! {
            <Measured
                id=format!("spot-{id}-{what}")
                label=derived(move || format!("{} {}", words::spot(walk.number(id)), label.to_lowercase()))
                field
                units
                value=part(get)
                on_typed=Callback::new(move |typed: Typed| {
                    room.change(|r| {
                        if let Some(spot) = r.spot_mut(id) {
                            set(spot, typed);
                        }
                    })
                })
            />
        }
    };
    view! {
        <li>
            <div class="pair">
                {entry("x", words::column_right(), fields::COORDINATE, |s| s.x.clone(), |s, t| s.x = t)}
                {entry("y", words::column_away(), fields::COORDINATE, |s| s.y.clone(), |s, t| s.y = t)}
                {entry("reading", words::column_reading(), fields::READING, |s| s.reading.clone(), |s, t| s.reading = t)}
            </div>
            <button
                type="button"
                class="button look plain"
                on:click=move |_| {
                    if walk.now.get_untracked() == Some(id) {
                        walk.now.set(None);
                    }
                    room.change(|r| r.survey.spots.retain(|s| s.id != id));
                    focus::soon("own-x");
                }
            >
                {say(move || words::take_out_spot(walk.number(id)))}
            </button>
        </li>
    }
}

/// A spot of the user's own.
#[component]
fn Own(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let x = drafts::draft(&walk.room.key("own-x"));
    let y = drafts::draft(&walk.room.key("own-y"));
    let ready = memo(move || {
        fields::COORDINATE.read(&x.read()).is_ok() && fields::COORDINATE.read(&y.read()).is_ok()
    });
    let add = move |_| {
        let (x_entry, y_entry) = (x.get_untracked(), y.get_untracked());
        let made = RwSignal::new(0);
        walk.room.change_with_id(|r, id| {
            made.set(id);
            r.survey.spots.push(Spot {
                id,
                x: x_entry,
                y: y_entry,
                reading: Typed::default(),
                checked: String::new(),
                rest: calc::job::Rest::new(),
            });
        });
        x.set(Typed::default());
        y.set(Typed::default());
        walk.go(Some(made.get_untracked()));
    };
    view! {
        <details>
            <summary>{words::add_spot()}</summary>
            <div class="stack">
                <div class="pair">
                    <Measured
                        id="own-x"
                        label=Signal::stored(words::own_right().to_owned())
                        field=fields::COORDINATE
                        units
                        value=x
                        on_typed=Callback::new(move |typed| x.set(typed))
                    />
                    <Measured
                        id="own-y"
                        label=Signal::stored(words::own_away().to_owned())
                        field=fields::COORDINATE
                        units
                        value=y
                        on_typed=Callback::new(move |typed| y.set(typed))
                    />
                </div>
                <button type="button" class="button" disabled=move || !ready.get() on:click=add>{words::add_this_spot()}</button>
            </div>
        </details>
    }
}

/// How many refused lines are shown.
const LINES_SHOWN: usize = 8;

/// Spots from pasted text or a file.
#[component]
fn Paste(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let kept = drafts::draft(&walk.room.key("paste"));
    let text = derived(move || kept.with(|k| k.text.clone()));
    let refused = RwSignal::new(None::<String>);
    // The spots that the last paste took the place of, for undo.
    let before = RwSignal::new(None::<Vec<Spot>>);
    let take = move || {
        let bare = if units.get_untracked() == Units::Metric {
            LengthUnit::Millimeters
        } else {
            LengthUnit::Inches
        };
        match text.with_untracked(|t| paste::read(t, bare)) {
            Err(refusals) => {
                let mut lines: Vec<String> = refusals
                    .iter()
                    .take(LINES_SHOWN)
                    .map(words::paste_refusal)
                    .collect();
                if refusals.len() > LINES_SHOWN {
                    lines.push(words::paste_more(refusals.len() - LINES_SHOWN));
                }
                refused.set(Some(lines.join(" ")));
            }
            Ok(pasted) => {
                refused.set(None);
                let gave_way =
                    walk.room.open.job.with_untracked(|job| {
                        job.room(walk.room.id).map(|r| r.survey.spots.clone())
                    });
                let unit = |column: usize| pasted.units[column].unwrap_or(bare).code();
                walk.room.open.change(|job| {
                    let mut next = job.next_id;
                    if let Some(room) = job.room_mut(walk.room.id) {
                        room.survey.spots = pasted
                            .rows
                            .iter()
                            .map(|row| {
                                let id = next;
                                next += 1;
                                Spot {
                                    id,
                                    x: Typed::kept(row.x.clone(), unit(0)),
                                    y: Typed::kept(row.y.clone(), unit(1)),
                                    reading: Typed::kept(row.reading.clone(), unit(2)),
                                    checked: String::new(),
                                    rest: calc::job::Rest::new(),
                                }
                            })
                            .collect();
                    }
                    job.next_id = next;
                });
                walk.now.set(None);
                walk.undo.set(Vec::new());
                before.set(gave_way.filter(|spots| spots.iter().any(|s| !s.reading.is_blank())));
                walk.said.set(match pasted.rows.len() {
                    1 => words::paste_took_one().to_owned(),
                    count => words::paste_took(count),
                });
            }
        }
    };
    let picked = move |input: web_sys::HtmlInputElement| {
        let Some(file) = files::picked(&input) else {
            return;
        };
        spawn_local(async move {
            match files::read(&file).await {
                Ok(bytes) => match String::from_utf8(bytes) {
                    Ok(read) => {
                        kept.set(Typed::plain(read));
                        take();
                    }
                    Err(_) => refused.set(Some(notices::file_not_text().to_owned())),
                },
                Err(refusal) => refused.set(Some(notices::file_refusal(&refusal))),
            }
        });
    };
    view! {
        <details>
            <summary>{words::paste_heading()}</summary>
            <div class="stack">
                <TextEntry
                    id="paste".to_owned()
                    block=true
                    label=Signal::stored(words::paste_label().to_owned())
                    hint=Signal::stored(words::paste_hint().to_owned())
                    value=text
                    error=refused
                    on_text=Callback::new(move |t: String| kept.set(Typed::plain(t)))
                />
                <div class="row">
                    <button type="button" class="button" on:click=move |_| take()>{words::paste_take()}</button>
                    <label class="button file">
                        {words::paste_file()}
                        <input
                            type="file"
                            class="visually-hidden"
                            accept=".csv,.txt,text/csv,text/plain"
                            on:change:target=move |ev| picked(ev.target())
                        />
                    </label>
                </div>
                <When when=move || before.read().is_some()>
                    <button
                        type="button"
                        class="button"
                        on:click=move |_| {
                            if let Some(spots) = before.get_untracked() {
                                walk.room.change(|r| r.survey.spots = spots);
                                walk.now.set(None);
                                walk.said.set(String::new());
                                before.set(None);
                            }
                        }
                    >
                        {words::paste_undo()}
                    </button>
                </When>
            </div>
        </details>
    }
}
