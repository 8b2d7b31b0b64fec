//! One opening: the floor beyond, the step at each jamb, what published figures say of it.

use crate::markup::view;
use calc::floor::doorway::{Doorway, DoorwayRefusal, LIKELY_STEP_IN, Part, Side, doorway, layer};
use calc::floor::level_change::{ROUNDING_IN, classify};
use calc::job::questions::EntryProblem;
use calc::job::questions::doorway::DoorwayAsk;
use calc::job::{Beyond, Layer, Opening, OpeningKind, ReadingWay, Typed, Units, fields};
use leptos::prelude::*;

use super::Shown;
use super::layers::Layers;
use super::published::step_table;
use super::ramp::RampPart;
use crate::answer::{RestsOn, Working};
use crate::entry::{Choice, ChoiceOption, Measured, Pick};
use crate::open_job::OpenRoom;
use crate::pictures::floors::{FloorSide, FloorsContent, Material, Stacked};
use crate::pictures::{Floors, LengthFigure, thickness_text};
use crate::reactive::{When, derived, draw, memo, say};
use crate::words::{common, doorways as words, room as room_words};
use crate::work::{Work, opening_letter};

/// The floors at an opening: not asked, entries missing, refused, or known.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Steps {
    /// There is no old floor to ask about.
    #[default]
    NotAsked,
    /// Entries that are missing or refused.
    Missing(Vec<EntryProblem>),
    /// They make no floors.
    Refused(Vec<DoorwayRefusal>),
    /// The floors.
    Known(Box<Doorway>),
}

/// One opening.
#[component]
pub fn OpeningSheet(
    /// The room.
    room: OpenRoom,
    /// Its answers.
    work: Work,
    /// The opening's id.
    id: u32,
    /// Its question.
    asked: Memo<Option<DoorwayAsk>>,
    /// What the steps are looked at with.
    #[prop(into)]
    with: Signal<Shown>,
) -> impl IntoView {
    let units = room.open.units();
    let index = room.part(move |r| r.openings.iter().position(|o| o.id == id).unwrap_or(0));
    let name = room.part(move |r| r.opening(id).map(|o| o.name.clone()).unwrap_or_default());
    let kind = room.part(move |r| {
        r.opening(id)
            .map(|o| o.kind == OpeningKind::Exterior)
            .unwrap_or_default()
    });
    let title = move || {
        let called = room_words::opening_called(&opening_letter(index.get()));
        let name = name.get();
        if name.trim().is_empty() {
            called
        } else {
            format!("{called}: {name}")
        }
    };
    let steps = memo(move || match asked.get() {
        None => Steps::NotAsked,
        Some(DoorwayAsk {
            entry: Err(problems),
            ..
        }) => Steps::Missing(problems),
        Some(DoorwayAsk {
            entry: Ok(entry), ..
        }) => match doorway(entry) {
            Ok(known) => Steps::Known(Box::new(known)),
            Err(refusals) => Steps::Refused(refusals),
        },
    });
    let known = memo(move || match steps.get() {
        Steps::Known(known) => Some(*known),
        _ => None,
    });
    let trouble = move || match &*steps.read() {
        Steps::NotAsked | Steps::Known(_) => ().into_any(),
        Steps::Missing(problems) => {
            let mut lines: Vec<_> = problems
                .iter()
                .map(|problem| words::missing(problem.name))
                .collect();
            lines.dedup();
            view! {
                <div class="notice">
                    <p><strong>{common::still_missing()}</strong></p>
                    <ul>{lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}</ul>
                </div>
            }
            .into_any()
        }
        Steps::Refused(refusals) => {
            let units = units.get();
            let lines = refusals
                .iter()
                .map(|refusal| view! { <p>{words::doorway_refusal(refusal, units)}</p> });
            view! { <div class="notice look">{lines.collect_view()}</div> }.into_any()
        }
    };
    view! {
        <section class="sheet opening-sheet">
            <h2>{say(title)}</h2>
            <FloorBeyond room work id />
            <div role="status">{draw(trouble)}</div>
            <When when=move || known.read().is_some()>
                <StepAnswer room id known with exterior=kind />
                <RampPart room work id known />
            </When>
        </section>
    }
}

/// How the floor beyond is known, its layers, and the cap on the pour here.
#[component]
fn FloorBeyond(room: OpenRoom, work: Work, id: u32) -> impl IntoView {
    let units = room.open.units();
    let beyond = room.part(move |r| r.opening(id).map(|o| o.beyond).unwrap_or_default());
    let spot = room.part(move |r| r.opening(id).and_then(|o| o.beyond_spot));
    let down = room.part(|r| r.survey.way == ReadingWay::DownFromLine);
    let part = move |get: fn(&Opening) -> Typed| {
        room.part(move |r| r.opening(id).map(get).unwrap_or_default())
    };
    let change = move |change: &dyn Fn(&mut Opening)| {
        room.change(|r| {
            if let Some(opening) = r.opening_mut(id) {
                change(opening);
            }
        });
    };
    let reading_hint = derived(move || {
        if down.get() {
            words::reading_down()
        } else {
            words::reading_up()
        }
        .to_owned()
    });
    let read = room.part(|r| {
        r.survey
            .spots
            .iter()
            .enumerate()
            .filter(|(_, spot)| fields::READING.read(&spot.reading).is_ok())
            .map(|(i, spot)| (spot.id, i + 1, spot.reading.text.clone()))
            .collect::<Vec<_>>()
    });
    let spots = derived(move || {
        let known = read.get().into_iter().map(|(id, number, reading)| {
            ChoiceOption::new(id.to_string(), words::spot_option(number, reading))
        });
        std::iter::once(ChoiceOption::new("", words::spot_choose()))
            .chain(known)
            .collect::<Vec<_>>()
    });
    let spot_error = derived(move || {
        let height = spot
            .get()
            .and_then(|spot| work.readings.with(|readings| readings.height_of(spot)));
        height.is_none().then(|| words::spot_missing().to_owned())
    });
    view! {
        <Choice
            id=format!("beyond-{id}")
            label=Signal::stored(words::beyond_label().to_owned())
            options=Signal::stored(
                vec![
                    ChoiceOption::new("reading", words::beyond_reading()),
                    ChoiceOption::new("spot", words::beyond_spot()),
                    ChoiceOption::new("unknown", words::beyond_unknown()),
                ],
            )
            value=derived(move || {
                match beyond.get() {
                    Beyond::Unknown => "unknown",
                    Beyond::Reading => "reading",
                    Beyond::Spot => "spot",
                }
                    .to_owned()
            })
            on_pick=Callback::new(move |code: String| {
                let beyond = match code.as_str() {
                    "reading" => Beyond::Reading,
                    "spot" => Beyond::Spot,
                    _ => Beyond::Unknown,
                };
                change(&|o| o.beyond = beyond);
            })
        />
        <When when=move || beyond.get() == Beyond::Reading>
            <Measured
                id=format!("beyond-{id}-reading")
                label=Signal::stored(words::beyond_reading_label().to_owned())
                hint=reading_hint
                field=fields::READING
                units
                value=part(|o| o.beyond_reading.clone())
                on_typed=Callback::new(move |typed: Typed| change(&|o| o.beyond_reading = typed.clone()))
            />
        </When>
        <When when=move || beyond.get() == Beyond::Spot>
            <Pick
                id=format!("beyond-{id}-spot")
                label=Signal::stored(words::beyond_spot_label().to_owned())
                options=spots
                value=derived(move || spot.get().map(|spot| spot.to_string()).unwrap_or_default())
                error=spot_error
                on_pick=Callback::new(move |code: String| change(&|o| o.beyond_spot = code.parse().ok()))
            />
        </When>
        <When when=move || beyond.get() != Beyond::Unknown>
            <h3>{words::layers_beyond_heading()}</h3>
            <p class="quiet">{words::layers_beyond_hint()}</p>
            <Layers room owner=Some(id) />
        </When>
        <Measured
            id=format!("cap-{id}")
            label=Signal::stored(words::pour_at_most_label().to_owned())
            hint=Signal::stored(words::pour_at_most_hint().to_owned())
            field=fields::READING
            units
            optional=true
            value=part(|o| o.pour_at_most.clone())
            on_typed=Callback::new(move |typed: Typed| change(&|o| o.pour_at_most = typed.clone()))
        />
    }
}

/// The step at each jamb.
#[component]
fn StepAnswer(
    room: OpenRoom,
    id: u32,
    known: Memo<Option<Doorway>>,
    #[prop(into)] with: Signal<Shown>,
    #[prop(into)] exterior: Signal<bool>,
) -> impl IntoView {
    let units = room.open.units();
    let here = room.part(|r| r.layers.clone());
    let beyond = room.part(move |r| {
        r.opening(id)
            .map(|o| o.beyond_layers.clone())
            .unwrap_or_default()
    });
    let step = move |side: Side| {
        derived(move || {
            known.with(|known| {
                let step_in = known.as_ref().map_or(0.0, |known| match side {
                    Side::Left => known.left.step_in,
                    Side::Right => known.right.step_in,
                });
                // Rounding is no step, and no minus sign either.
                if step_in.abs() <= ROUNDING_IN {
                    0.0
                } else {
                    step_in
                }
            })
        })
    };
    let direction = |step_in: f64| {
        if step_in != 0.0 && step_in.abs() < 1.0 / 64.0 {
            words::nearly_flush()
        } else if step_in > 0.0 {
            words::up_into()
        } else if step_in < 0.0 {
            words::down_into()
        } else {
            words::flush()
        }
    };
    let jamb = move |side: Side, name: &'static str| {
        let inches = step(side);
        view! {
            <div>
                <h3>{name}</h3>
                <LengthFigure inches units fineness=32 />
                <p>{say(move || direction(inches.get()))}</p>
            </div>
        }
    };
    let change = memo(move || known.with(|known| classify(known.as_ref()?.greatest_step_in).ok()));
    let doubtful = memo(move || {
        known.with(|known| {
            known
                .as_ref()
                .is_some_and(|known| known.greatest_step_in > LIKELY_STEP_IN)
        })
    });
    let treatment = move || {
        change
            .get()
            .map(|change| words::treatment(change.treatment, units.get()))
    };
    let rests = derived(move || {
        match with.get() {
            Shown::Nothing => words::rests_no_pour(),
            Shown::Level => words::rests_level(),
            Shown::Flat => words::rests_flat(),
        }
        .to_owned()
    });
    let content = memo(move || {
        known.with(|known| {
            let known = known.as_ref()?;
            Some(here.with(|here| beyond.with(|beyond| section(known, here, beyond, units.get()))))
        })
    });
    let drawing = derived(move || {
        content
            .get()
            .map(|(content, _)| content)
            .unwrap_or_default()
    });
    let side = move || {
        known
            .with(|known| words::side(known.as_ref().map_or(Side::Left, |known| known.greatest_at)))
    };
    let says =
        derived(move || words::section_says(side(), drawing.with(|content| content.step.clone())));
    let legend = move || {
        let lines = content.get().map(|(_, lines)| lines).unwrap_or_default();
        let (here, beyond): (Vec<_>, Vec<_>) = lines.into_iter().partition(|line| line.here);
        let column = |title: &'static str, lines: Vec<Line>| {
            let rows = lines
                .into_iter()
                .rev()
                .map(|line| {
                    view! {
                        <li>
                            <span class="balloon">{line.number}</span>
                            <span>{line.name} " " <span class="num">{line.thickness}</span></span>
                        </li>
                    }
                })
                .collect_view();
            view! { <div><h3>{title}</h3><ul class="legend">{rows}</ul></div> }
        };
        view! {
            <div class="side-by-side">{column(words::this_room(), here)} {column(words::beyond(), beyond)}</div>
        }
    };
    view! {
        <div class="answer">
            <h3>{words::step_heading()}</h3>
            <div class="side-by-side">
                {jamb(Side::Left, words::left_jamb())}
                {jamb(Side::Right, words::right_jamb())}
            </div>
            <p><strong>{say(move || known.with(|k| k.as_ref().map(|k| words::higher(k.higher).to_owned())))}</strong></p>
            <When when=move || doubtful.get()>
                <p class="notice look">{words::step_doubtful()}</p>
            </When>
            <p>{say(treatment)}</p>
            <RestsOn text=rests />
            <p class="quiet">{words::seen_from()}</p>
        </div>
        <figure class="picture">
            <Floors content=drawing says />
            <figcaption>{say(move || words::section_caption(side()))}</figcaption>
        </figure>
        {draw(legend)}
        <details>
            <summary>{words::published_heading()}</summary>
            <p>{words::reference_only()}</p>
            {draw(move || change.get().map(|change| step_table(&change, exterior.get(), units.get())))}
        </details>
        <Working steps=derived(move || known.with(|k| k.as_ref().map(Doorway::working).unwrap_or_default())) units />
    }
}

/// One line of the list beside the section.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    here: bool,
    number: usize,
    name: String,
    thickness: String,
}

/// The section at the jamb with the greater step, and the list that its numbers stand for.
fn section(
    known: &Doorway,
    here: &[Layer],
    beyond: &[Layer],
    units: Units,
) -> (FloorsContent, Vec<Line>) {
    let left = known.greatest_at == Side::Left;
    let entry = &known.entry;
    let (jamb, subfloor_in, pour_in, beyond_in) = if left {
        (
            known.left,
            entry.here_left_in,
            entry.pour_left_in,
            entry.beyond_left_in,
        )
    } else {
        (
            known.right,
            entry.here_right_in,
            entry.pour_right_in,
            entry.beyond_right_in,
        )
    };
    let mut lines: Vec<Line> = Vec::new();
    let mut stack = |side_here: bool, name: String, thickness_in: f64, material: Material| {
        let (number, thickness) = (lines.len() + 1, thickness_text(thickness_in, units));
        lines.push(Line {
            here: side_here,
            number,
            name,
            thickness: thickness.clone(),
        });
        Stacked {
            number,
            thickness_in,
            thickness,
            material,
        }
    };
    let mut here_stack = Vec::new();
    if pour_in > 0.0 {
        here_stack.push(stack(
            true,
            words::pour().to_owned(),
            pour_in,
            Material::Pour,
        ));
    }
    for (entered, &thickness_in) in here.iter().zip(&entry.layers_here_in) {
        here_stack.push(stack(
            true,
            words::layer_called(entered),
            thickness_in,
            material(entered),
        ));
    }
    let beyond_stack = beyond
        .iter()
        .zip(&entry.layers_beyond_in)
        .map(|(entered, &thickness_in)| {
            stack(
                false,
                words::layer_called(entered),
                thickness_in,
                material(entered),
            )
        })
        .collect();
    let step = if jamb.step_in.abs() <= ROUNDING_IN {
        String::new()
    } else {
        thickness_text(jamb.step_in.abs(), units)
    };
    let content = FloorsContent {
        here: FloorSide {
            name: words::this_room().to_owned(),
            subfloor_in,
            layers: here_stack,
        },
        beyond: FloorSide {
            name: words::beyond().to_owned(),
            subfloor_in: beyond_in,
            layers: beyond_stack,
        },
        step,
    };
    (content, lines)
}

fn material(entered: &Layer) -> Material {
    match layer(&entered.name).map(|kind| kind.part) {
        Some(Part::Membrane) => Material::Membrane,
        Some(Part::Panel) => Material::Panel,
        Some(Part::Bed) => Material::Bed,
        Some(Part::Finish) => Material::Finish,
        None => Material::Own,
    }
}
