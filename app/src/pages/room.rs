//! The room: its outline, drawn as it is entered, and its openings.

use crate::markup::{For, view};
use crate::reactive::{When, derived, memo, say};
use calc::floor::outline::{CORNER_MARK_IN, SQUARE_ACROSS_IN};
use calc::job::questions::room::{OpeningTrouble, ShapeProblem};
use calc::job::{Corner, Job, NO_WALL, Opening, OpeningKind, Shape, Turn, WalkWall, fields};
use calc::quantity::{Area, AreaUnit, Typed};
use leptos::prelude::*;

use crate::entry::{Choice, ChoiceOption, Measured, Pick, TextEntry};
use crate::focus;
use crate::open_job::OpenRoom;
use crate::paths::{self, Stage};
use crate::pictures::floor_map::{Gap, MapContent};
use crate::pictures::{FloorMap, length_text};
use crate::shell::PageHeading;
use crate::words::room as words;
use crate::work::{Work, opening_letter};

/// The room stage.
#[component]
pub fn RoomPage(
    /// The room.
    room: OpenRoom,
) -> impl IntoView {
    let work = Work::of(room);
    let units = room.open.units();
    let name = room.part(|r| r.name.clone());
    let shape = room.part(|r| r.outline.shape);
    let shape_code = derived(move || shape_code(shape.get()).to_owned());
    let set_shape = Callback::new(move |code: String| {
        room.change(|r| {
            r.outline.shape = match code.as_str() {
                "l" => Shape::L,
                "walk" => Shape::Walk,
                _ => Shape::Rectangle,
            }
        });
        if code == "walk"
            && room
                .open
                .job
                .with_untracked(|j| j.room(room.id).is_some_and(|r| r.outline.walls.is_empty()))
        {
            for _ in 0..4 {
                add_wall(room);
            }
        }
    });
    let options = Signal::stored(vec![
        ChoiceOption::new("rectangle", words::shape_rectangle()),
        ChoiceOption::new("l", words::shape_l()),
        ChoiceOption::new("walk", words::shape_walk()),
    ]);
    let trouble = memo(move || match &*work.shape.read() {
        Err(ShapeProblem::Shape(refusal)) => Some(words::shape_refusal(refusal, units.get())),
        _ => None,
    });
    view! {
        <PageHeading text=derived(move || if name.read().trim().is_empty() { words::stage().to_owned() } else { words::heading(&name.get()) }) />
        <TextEntry
            id="room-name".to_owned()
            label=Signal::stored(words::name_label().to_owned())
            value=name
            on_text=Callback::new(move |text| room.change(|r| r.name = text))
        />
        <Choice
            id="shape".to_owned()
            label=Signal::stored(words::shape_label().to_owned())
            options
            value=shape_code
            on_pick=set_shape
        />
        {move || match shape.get() {
            Shape::Walk => view! { <Walls room /> }.into_any(),
            shape => view! { <Sides room corner_missing=shape == Shape::L /> }.into_any(),
        }}
        <p class="notice look" role="status" hidden=move || trouble.read().is_none()>{trouble}</p>
        <Plan room work />
        <Openings room work />
        <a class="button main wide" href=paths::stage(&room.open.id(), room.id, Stage::Survey)>{words::to_survey()}</a>
    }
}

fn shape_code(shape: Shape) -> &'static str {
    match shape {
        Shape::Rectangle => "rectangle",
        Shape::L => "l",
        Shape::Walk => "walk",
    }
}

/// The sides of a rectangle or an L.
#[component]
fn Sides(room: OpenRoom, corner_missing: bool) -> impl IntoView {
    let units = room.open.units();
    let side = move |id: &'static str,
                     label: &'static str,
                     get: fn(&mut calc::job::OutlineEntry) -> &mut Typed| {
        view! {
            <Measured
                id
                label=Signal::stored(label.to_owned())
                field=fields::SIDE
                units
                value=room.part(move |r| get(&mut r.outline.clone()).clone())
                on_typed=Callback::new(move |typed| room.change(|r| *get(&mut r.outline) = typed))
            />
        }
    };
    let corner = room.part(|r| r.outline.notch_corner);
    let missing = corner_missing.then(|| {
        view! {
            {side("notch-width", words::notch_width_label(), |o| &mut o.notch_width)}
            {side("notch-length", words::notch_length_label(), |o| &mut o.notch_length)}
            <Choice
                id="notch-corner".to_owned()
                label=Signal::stored(words::notch_corner_label().to_owned())
                options=Signal::stored(
                    vec![
                        ChoiceOption::new("far_left", words::far_left()),
                        ChoiceOption::new("far_right", words::far_right()),
                        ChoiceOption::new("near_left", words::near_left()),
                        ChoiceOption::new("near_right", words::near_right()),
                    ],
                )
                value=derived(move || {
                    match corner.get() {
                        Corner::NearLeft => "near_left",
                        Corner::NearRight => "near_right",
                        Corner::FarRight => "far_right",
                        Corner::FarLeft => "far_left",
                    }
                        .to_owned()
                })
                on_pick=Callback::new(move |code: String| {
                    room.change(|r| {
                        r.outline.notch_corner = match code.as_str() {
                            "near_left" => Corner::NearLeft,
                            "near_right" => Corner::NearRight,
                            "far_left" => Corner::FarLeft,
                            _ => Corner::FarRight,
                        }
                    })
                })
            />
        }
    });
    view! {
        <When when=move || units.get() == calc::job::Units::FeetInches>
            <p class="quiet">{words::side_hint()}</p>
        </When>
        <div class="pair">
            {side("width", words::width_label(), |o| &mut o.width)}
            {side("length", words::length_label(), |o| &mut o.length)}
        </div>
        {missing}
    }
}

fn add_wall(room: OpenRoom) {
    room.change_with_id(|r, id| {
        r.outline.walls.push(WalkWall {
            id,
            length: Typed::default(),
            turn: Turn::Left,
            angle_deg: Typed::default(),
            across: Typed::default(),
            rest: calc::job::Rest::new(),
        });
    });
}

fn take_out_wall(room: OpenRoom, id: u32, name: String) {
    room.open.take_out(name, move |job| {
        let taken = job.room_mut(room.id)?.take_out_wall(id)?;
        Some(Box::new(move |job: &mut Job| {
            if let Some(room) = job.room_mut(room.id) {
                room.put_back_wall(taken);
            }
        }))
    });
}

/// The walls of a walk.
#[component]
fn Walls(room: OpenRoom) -> impl IntoView {
    let units = room.open.units();
    let ids = room.part(|r| r.outline.walls.iter().map(|w| w.id).collect::<Vec<_>>());
    let wall = move |id: u32, get: fn(&WalkWall) -> Typed| {
        room.part(move |r| {
            r.outline
                .walls
                .iter()
                .find(|w| w.id == id)
                .map(get)
                .unwrap_or_default()
        })
    };
    let change = move |id: u32, change: &dyn Fn(&mut WalkWall)| {
        room.change(|r| {
            if let Some(wall) = r.outline.walls.iter_mut().find(|w| w.id == id) {
                change(wall);
            }
        });
    };
    let number = move |id: u32| ids.with(|ids| ids.iter().position(|&i| i == id).unwrap_or(0) + 1);
    view! {
        <p class="quiet">{words::shape_walk_hint()}</p>
        <ol class="rows">
            <For each=move || ids.get() key=|id| *id let:id>
                {
                    let not_square = room
                        .open
                        .job
                        .with_untracked(|job| {
                            let walls = job.room(room.id).map(|r| &r.outline.walls);
                            walls.and_then(|walls| walls.iter().find(|w| w.id == id)).is_some_and(|w| {
                                !w.angle_deg.is_blank() || !w.across.is_blank()
                            })
                        });
                    let turn = room
                        .part(move |r| r.outline.walls.iter().any(|w| w.id == id && w.turn == Turn::Right));
                    view! {
                        <li>
                            <Measured
                                id=format!("wall-{id}")
                                label=derived(move || words::wall_length(number(id)))
                                field=fields::SIDE
                                units
                                value=wall(id, |w| w.length.clone())
                                on_typed=Callback::new(move |typed: Typed| change(id, &|w| w.length = typed.clone()))
                            />
                            <Choice
                                id=format!("turn-{id}")
                                label=derived(move || words::turn_label(number(id)))
                                options=Signal::stored(
                                    vec![
                                        ChoiceOption::new("left", words::turn_left()),
                                        ChoiceOption::new("right", words::turn_right()),
                                    ],
                                )
                                value=derived(move || if turn.get() { "right" } else { "left" }.to_owned())
                                on_pick=Callback::new(move |code: String| {
                                    let turn = if code == "right" { Turn::Right } else { Turn::Left };
                                    change(id, &|w| w.turn = turn);
                                })
                            />
                            <details prop:open=not_square>
                                <summary>{say(move || words::not_square(number(id)))}</summary>
                                <div class="stack">
                                    <Measured
                                        id=format!("across-{id}")
                                        label=derived(move || words::across_label(number(id), length_text(CORNER_MARK_IN, units.get())))
                                        hint=derived(move || words::across_hint(length_text(SQUARE_ACROSS_IN, units.get())))
                                        field=fields::CORNER_ACROSS
                                        units
                                        optional=true
                                        value=wall(id, |w| w.across.clone())
                                        on_typed=Callback::new(move |typed: Typed| change(id, &|w| w.across = typed.clone()))
                                    />
                                    <Measured
                                        id=format!("angle-{id}")
                                        label=derived(move || words::angle_label(number(id)))
                                        hint=Signal::stored(words::angle_hint().to_owned())
                                        field=fields::TURN_DEGREES
                                        units
                                        optional=true
                                        value=wall(id, |w| w.angle_deg.clone())
                                        on_typed=Callback::new(move |typed: Typed| change(id, &|w| w.angle_deg = typed.clone()))
                                    />
                                </div>
                            </details>
                            <button
                                type="button"
                                class="button look plain"
                                on:click=move |_| {
                                    take_out_wall(room, id, words::wall(number(id)));
                                    focus::soon("add-wall");
                                }
                            >
                                {say(move || words::take_out_wall(number(id)))}
                            </button>
                        </li>
                    }
                }
            </For>
        </ol>
        <button type="button" class="button" id="add-wall" on:click=move |_| add_wall(room)>{words::add_wall()}</button>
    }
}

/// The plan, as far as it is known.
#[component]
fn Plan(room: OpenRoom, work: Work) -> impl IntoView {
    let units = room.open.units();
    let content = memo(move || plan(work, units.get()));
    let says = derived(move || {
        let (width, length) = content.with(|c| c.sides.clone()).unwrap_or_default();
        words::plan_says(width, length, content.with(|c| c.gaps.len()))
    });
    let facts = move || {
        work.outline().map(|outline| {
            let unit = if units.get() == calc::job::Units::Metric {
                AreaUnit::SquareMeters
            } else {
                AreaUnit::SquareFeet
            };
            words::area_says(
                Area::from_in2(outline.area_in2()).format(unit, 1),
                length_text(outline.perimeter_in(), units.get()),
            )
        })
    };
    let closing = move || {
        work.shape.with(|shape| {
            let walked = shape.as_ref().ok()?.walked.as_ref()?;
            Some(if walked.shared_out {
                words::walls_miss(
                    length_text(walked.miss_in, units.get()),
                    words::share(walked.miss_in, walked.perimeter_in),
                )
            } else {
                words::walls_close().to_owned()
            })
        })
    };
    view! {
        <When
            when=move || work.shape.read().is_ok()
            fallback=|| view! { <p class="quiet">{words::no_plan_yet()}</p> }
        >
            <figure class="picture">
                <FloorMap content says />
                <figcaption>{words::plan_caption()} " " {say(facts)} " " {say(closing)}</figcaption>
            </figure>
        </When>
    }
}

/// The plan's content: walls, openings, sides.
pub fn plan(work: Work, units: calc::job::Units) -> MapContent {
    let Some(outline) = work.outline() else {
        return MapContent::default();
    };
    let corners = outline.corners().to_vec();
    let span = |get: fn(&calc::floor::Point) -> f64| {
        let low = corners.iter().map(get).fold(f64::MAX, f64::min);
        corners.iter().map(get).fold(f64::MIN, f64::max) - low
    };
    MapContent {
        gaps: gaps(work),
        sides: Some((
            length_text(span(|p| p.x_in), units),
            length_text(span(|p| p.y_in), units),
        )),
        wall_numbers: true,
        corners,
        ..MapContent::default()
    }
}

/// The openings as gaps of a map, lettered by their order in the document.
pub fn gaps(work: Work) -> Vec<Gap> {
    work.openings.with(|(placed, _)| {
        placed
            .iter()
            .map(|p| Gap {
                left: p.span.left,
                right: p.span.right,
                label: opening_letter(p.index),
            })
            .collect()
    })
}

/// The openings.
#[component]
fn Openings(room: OpenRoom, work: Work) -> impl IntoView {
    let ids = room.part(|r| r.openings.iter().map(|o| o.id).collect::<Vec<_>>());
    let add = move |_| {
        room.change_with_id(|r, id| {
            let kind = OpeningKind::Doorway;
            r.openings.push(new_opening(id, kind));
        });
    };
    view! {
        <section class="sheet">
            <h2>{words::openings_heading()}</h2>
            <When when=move || ids.read().is_empty()>
                <p class="quiet">{words::openings_none()}</p>
            </When>
            <ol class="rows">
                <For each=move || ids.get() key=|id| *id let:id>
                    <OpeningRow room work ids id />
                </For>
            </ol>
            <button type="button" class="button" id="add-opening" on:click=add>{words::add_opening()}</button>
        </section>
    }
}

/// An opening with nothing entered but its kind.
fn new_opening(id: u32, kind: OpeningKind) -> Opening {
    Opening {
        id,
        name: String::new(),
        kind,
        wall: NO_WALL,
        from_start: Typed::default(),
        width: Typed::default(),
        beyond: calc::job::Beyond::default(),
        beyond_reading: Typed::default(),
        beyond_spot: None,
        beyond_layers: Vec::new(),
        pour_at_most: Typed::default(),
        ramp_slope: Typed::plain("1:12"),
        ramp_length: Typed::default(),
        rest: calc::job::Rest::new(),
    }
}

fn kind_code(kind: OpeningKind) -> &'static str {
    match kind {
        OpeningKind::Doorway => "doorway",
        OpeningKind::Cased => "cased",
        OpeningKind::Exterior => "exterior",
        OpeningKind::Closet => "closet",
    }
}

/// One opening.
#[component]
fn OpeningRow(room: OpenRoom, work: Work, ids: Memo<Vec<u32>>, id: u32) -> impl IntoView {
    let units = room.open.units();
    let number = move || ids.with(|ids| ids.iter().position(|&i| i == id).unwrap_or(0));
    let part = move |get: fn(&Opening) -> Typed| {
        room.part(move |r| r.opening(id).map(get).unwrap_or_default())
    };
    let name = room.part(move |r| r.opening(id).map(|o| o.name.clone()).unwrap_or_default());
    let kind = room.part(move |r| {
        r.opening(id)
            .map(|o| kind_code(o.kind).to_owned())
            .unwrap_or_default()
    });
    let wall = room.part(move |r| {
        r.opening(id)
            .map(|o| o.wall.to_string())
            .unwrap_or_default()
    });
    let change = move |change: &dyn Fn(&mut Opening)| {
        room.change(|r| {
            if let Some(opening) = r.opening_mut(id) {
                change(opening);
            }
        });
    };
    let walls = derived(move || {
        let none = (wall.read().parse() == Ok(NO_WALL))
            .then(|| ChoiceOption::new(NO_WALL.to_string(), words::choose_wall()));
        let mut options: Vec<_> = none.into_iter().collect();
        if let Some(outline) = work.outline() {
            let walls = outline.walls().enumerate().map(|(i, w)| {
                ChoiceOption::new(
                    i.to_string(),
                    words::wall_option(i + 1, length_text(w.length_in(), units.get())),
                )
            });
            options.extend(walls);
        }
        options
    });
    // What only the whole room can see stands beside the width, where it is mended.
    let place = derived(move || {
        work.openings
            .with(|(_, troubles)| misplaced(troubles, id, units.get()))
    });
    let label = derived(move || words::opening_called(&opening_letter(number())));
    view! {
        <li>
            <h3>{label}</h3>
            <TextEntry
                id=format!("opening-{id}-name")
                label=derived(move || words::opening_name(&opening_letter(number())))
                value=name
                on_text=Callback::new(move |text: String| change(&|o| o.name.clone_from(&text)))
            />
            <Pick
                id=format!("opening-{id}-kind")
                label=Signal::stored(words::opening_kind().to_owned())
                options=Signal::stored(
                    vec![
                        ChoiceOption::new("doorway", words::kind_doorway()),
                        ChoiceOption::new("cased", words::kind_cased()),
                        ChoiceOption::new("exterior", words::kind_exterior()),
                        ChoiceOption::new("closet", words::kind_closet()),
                    ],
                )
                value=kind
                on_pick=Callback::new(move |code: String| {
                    let kind = match code.as_str() {
                        "cased" => OpeningKind::Cased,
                        "exterior" => OpeningKind::Exterior,
                        "closet" => OpeningKind::Closet,
                        _ => OpeningKind::Doorway,
                    };
                    change(&|o| o.kind = kind);
                })
            />
            <Pick
                id=format!("opening-{id}-wall")
                label=Signal::stored(words::opening_wall().to_owned())
                options=walls
                value=wall
                on_pick=Callback::new(move |code: String| {
                    if let Ok(wall) = code.parse() {
                        change(&|o| o.wall = wall);
                    }
                })
            />
            <div class="pair">
                <Measured
                    id=format!("opening-{id}-from")
                    label=Signal::stored(words::opening_from().to_owned())
                    hint=Signal::stored(words::opening_from_hint().to_owned())
                    field=fields::ALONG
                    units
                    value=part(|o| o.from_start.clone())
                    on_typed=Callback::new(move |typed: Typed| change(&|o| o.from_start = typed.clone()))
                />
                <Measured
                    id=format!("opening-{id}-width")
                    label=Signal::stored(words::opening_width().to_owned())
                    field=fields::OPENING_WIDTH
                    units
                    also=place
                    value=part(|o| o.width.clone())
                    on_typed=Callback::new(move |typed: Typed| change(&|o| o.width = typed.clone()))
                />
            </div>
            <button
                type="button"
                class="button look plain"
                on:click=move |_| {
                    room.take_out_row(label.get_untracked(), |r| Some(&mut r.openings), |o| o.id == id);
                    focus::soon("add-opening");
                }
            >
                {say(move || words::take_out_opening(&label.get()))}
            </button>
        </li>
    }
}

/// Why an opening has no place, by its id, where its entries are fine.
pub fn misplaced(troubles: &[OpeningTrouble], id: u32, units: calc::job::Units) -> Option<String> {
    troubles.iter().find_map(|t| match t {
        OpeningTrouble::Place { row, what } if *row == id => {
            Some(words::opening_problem(what, units))
        }
        OpeningTrouble::Place { .. } | OpeningTrouble::Entry(_) => None,
    })
}
