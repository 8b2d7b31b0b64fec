//! Pin heights on the map, as a table, and in a section along any line.

use crate::markup::view;
use crate::reactive::{When, derived, draw, memo, say};
use calc::floor::pour::{Pour, PourKind};
use calc::floor::{Point, Surface, contour};
use calc::job::{Units, fields};
use calc::quantity::{Length, Typed, WholeRange};
use leptos::prelude::*;

use super::Plans;
use crate::entry::{Choice, ChoiceOption, Measured};
use crate::pages::room::gaps;
use crate::pictures::floor_map::{HeightLine, MapContent, Mark, Pin};
use crate::pictures::section::{SectionContent, exaggeration};
use crate::pictures::{FloorMap, Section, length_text};
use crate::store::drafts;
use crate::words::{pour as words, survey as survey_words};
use crate::work::contour_steps_in;

/// Depth classes of the map: even parts of the greatest depth.
const CLASSES: f64 = 6.0;

/// How many rows of pins the table shows at once.
const ROWS_AT_ONCE: usize = 60;

/// The number of a spot.
fn spot_number_field(plans: Plans) -> fields::Field {
    let count = plans.work.readings.with_untracked(|r| {
        i64::try_from(r.places.iter().map(|p| p.number).max().unwrap_or(1)).unwrap_or(1)
    });
    fields::Field::Whole(WholeRange::at_least(1).at_most(count.max(1)))
}

/// The pins and the section.
#[component]
pub fn Pins(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let from = drafts::draft(&plans.room.key("section-from"));
    let to = drafts::draft(&plans.room.key("section-to"));
    let ends = memo(move || ends(plans, &from.read(), &to.read()));
    let content = memo(move || map(plans, ends.get()));
    let says = map_says(plans);
    // Taps choose the section's ends in turn.
    let second = StoredValue::new(false);
    let tap = Callback::new(move |index: usize| {
        let number = plans
            .work
            .readings
            .with_untracked(|r| r.id_of(index).and_then(|id| r.number_of(id)));
        if let Some(number) = number {
            let typed = Typed::plain(number.to_string());
            if second.get_value() {
                to.set(typed)
            } else {
                from.set(typed)
            }
            second.set_value(!second.get_value());
        }
    });
    let shown = derived(move || {
        if plans.shown.get() == PourKind::Level {
            "level"
        } else {
            "flat"
        }
        .to_owned()
    });
    let field = spot_number_field(plans);
    let section = memo(move || section(plans, ends.get()));
    let why_none = move || {
        match (from.read().is_blank(), to.read().is_blank()) {
            (true, false) | (false, true) => words::section_one(),
            _ => words::section_same(),
        }
        .to_owned()
    };
    let caption = move || {
        section.with(|s| {
            s.as_ref()
                .map(|s| words::section_caption(calc::quantity::fixed(exaggeration(s), 0)))
        })
    };
    let end =
        move |at: usize| ends.with(|e| e.as_ref().map(|e| e.names[at].clone()).unwrap_or_default());
    view! {
        <section class="sheet">
            <h2>{words::pins_heading()}</h2>
            <Choice
                id="pins-of".to_owned()
                label=Signal::stored(words::pins_show().to_owned())
                options=Signal::stored(
                    vec![
                        ChoiceOption::new("level", words::kind(PourKind::Level)),
                        ChoiceOption::new("flat", words::kind(PourKind::Flat)),
                    ],
                )
                value=shown
                on_pick=Callback::new(move |code: String| {
                    plans.looked_at.set(Some(if code == "level" { PourKind::Level } else { PourKind::Flat }));
                })
            />
            <figure class="picture">
                <FloorMap content says on_tap=tap />
                <figcaption>{say(move || words::pins_caption(words::kind(plans.shown.get()).to_owned()))}</figcaption>
            </figure>
            <PinTable plans />
            <h3>{words::section_heading()}</h3>
            <p class="quiet no-print">{words::section_hint()}</p>
            <div class="pair">
                <Measured
                    id="section-from"
                    label=Signal::stored(words::section_from().to_owned())
                    field
                    units
                    value=from
                    optional=true
                    on_typed=Callback::new(move |typed| from.set(typed))
                />
                <Measured
                    id="section-to"
                    label=Signal::stored(words::section_to().to_owned())
                    field
                    units
                    value=to
                    optional=true
                    on_typed=Callback::new(move |typed| to.set(typed))
                />
            </div>
            <When
                when=move || section.read().is_some()
                fallback=move || view! { <p class="quiet no-print">{say(why_none)}</p> }
            >
                <figure class="picture">
                    <Section
                        content=derived(move || section.get().unwrap_or_default())
                        says=derived(move || words::section_says(end(0), end(1)))
                    />
                    <figcaption>{say(caption)}</figcaption>
                </figure>
            </When>
        </section>
    }
}

/// The line of the section.
#[derive(Clone, Debug, PartialEq)]
pub struct Ends {
    from: Point,
    to: Point,
    names: [String; 2],
}

/// The section's ends as entered; where nothing is entered, wall to wall through the deepest place, along the
/// longer side of the room.
fn ends(plans: Plans, from: &Typed, to: &Typed) -> Option<Ends> {
    let surface = plans.surface.get()?;
    if from.is_blank() && to.is_blank() {
        let pour = plans.pour(plans.shown.get())?;
        let deepest = surface.vertices.get(pour.greatest_at)?.at;
        let corners = surface.outline.corners();
        let span = |get: fn(&Point) -> f64| {
            (
                corners.iter().map(get).fold(f64::MAX, f64::min),
                corners.iter().map(get).fold(f64::MIN, f64::max),
            )
        };
        let ((left, right), (near, far)) = (span(|p| p.x_in), span(|p| p.y_in));
        // Along a wall there is nothing to cut: an inch into the room there is.
        let deepest = Point::new(
            deepest
                .x_in
                .clamp(left + 1.0, (right - 1.0).max(left + 1.0)),
            deepest.y_in.clamp(near + 1.0, (far - 1.0).max(near + 1.0)),
        );
        return Some(if far - near >= right - left {
            Ends {
                from: Point::new(deepest.x_in, near),
                to: Point::new(deepest.x_in, far),
                names: [words::end_near().to_owned(), words::end_far().to_owned()],
            }
        } else {
            Ends {
                from: Point::new(left, deepest.y_in),
                to: Point::new(right, deepest.y_in),
                names: [words::end_left().to_owned(), words::end_right().to_owned()],
            }
        });
    }
    let field = spot_number_field(plans);
    let spot = |typed: &Typed| {
        let number = field.read(typed).ok()?;
        let id = plans.spot_by_number(number)?;
        let at = plans.work.readings.with(|r| r.place_of(id))?;
        Some((at, survey_words::spot(plans.spot_number(id))))
    };
    let (from, from_name) = spot(from)?;
    let (to, to_name) = spot(to)?;
    (from != to).then_some(Ends {
        from,
        to,
        names: [from_name, to_name],
    })
}

fn section(plans: Plans, ends: Option<Ends>) -> Option<SectionContent> {
    let (ends, surface) = (ends?, plans.surface.get()?);
    let units = plans.room.open.units().get();
    let pour = plans.pour(plans.shown.get());
    let length_in = ends.from.distance_in(ends.to);
    let point = |s_in: f64| {
        let t = s_in / length_in;
        Point::new(
            ends.from.x_in + t * (ends.to.x_in - ends.from.x_in),
            ends.from.y_in + t * (ends.to.y_in - ends.from.y_in),
        )
    };
    // A line that leaves the room and comes back shows its first stretch inside.
    let piece = surface.profile(ends.from, ends.to).into_iter().next()?;
    let floor: Vec<(f64, f64)> = piece.iter().map(|p| (p.s_in, p.height_in)).collect();
    let top = |s: f64| pour.as_ref().map(|p| p.plane.height_in(point(s)));
    let depths = [0.0, 0.25, 0.5, 0.75, 1.0]
        .into_iter()
        .filter_map(|share| {
            let (first, last) = (floor.first()?.0, floor.last()?.0);
            let s = first + share * (last - first);
            let depth = top(s)? - surface.height_in(point(s))?;
            Some((s, length_text(depth, units)))
        })
        .collect();
    Some(SectionContent {
        pour: floor
            .iter()
            .filter_map(|&(s, _)| Some((s, top(s)?)))
            .collect(),
        floor,
        depths,
        length: length_text(length_in, units),
        ends: (ends.names[0].clone(), ends.names[1].clone()),
        straightedge: None,
    })
}

/// What the map says, in words.
pub fn map_says(plans: Plans) -> Signal<String> {
    let units = plans.room.open.units();
    derived(move || {
        let (least, most) = plans
            .pour(plans.shown.get())
            .map_or((0.0, 0.0), |p| (p.least_depth_in, p.greatest_depth_in));
        words::pins_says(
            words::kind(plans.shown.get()).to_lowercase(),
            length_text(least, units.get()),
            length_text(most, units.get()),
        )
    })
}

/// The map with each triangle's depth and a label at each pin, and a line across where a section is cut.
pub fn map(plans: Plans, ends: Option<Ends>) -> MapContent {
    let units = plans.room.open.units().get();
    let Some(outline) = plans.work.outline() else {
        return MapContent::default();
    };
    let mut content = MapContent {
        corners: outline.corners().to_vec(),
        gaps: gaps(plans.work),
        ..MapContent::default()
    };
    let (Some(surface), Some(pour)) = (plans.surface.get(), plans.pour(plans.shown.get())) else {
        return content;
    };
    content.depth = depth_classes(&surface, &pour);
    content.lines = contour::levels(
        pour.least_depth_in,
        pour.greatest_depth_in,
        6,
        contour_steps_in(units),
    )
    .into_iter()
    .map(|depth_in| HeightLine {
        label: String::new(),
        index: false,
        pieces: contour::depth_contour(&surface, &pour.plane, depth_in),
    })
    .collect();
    content.pins = surface
        .vertices
        .iter()
        .zip(&pour.depth_in)
        .take(surface.spot_count)
        .map(|(vertex, &depth_in)| Pin {
            at: vertex.at,
            label: pin_label(depth_in, units),
            mark: Mark::Read,
        })
        .collect();
    content.first = vec![pour.greatest_at, pour.least_at];
    content.cut = ends.map(|e| (e.from, e.to));
    content.downhill = pour
        .downhill_degrees
        .filter(|_| pour.tilt_in_per_4ft > 1e-9);
    content
}

/// A pin's height as its label has room for it: no unit mark, the caption and the table have it.
fn pin_label(depth_in: f64, units: Units) -> String {
    match units {
        Units::FeetInches => Length::from_inches(depth_in)
            .format_inches(16)
            .trim_end_matches('"')
            .to_owned(),
        Units::Metric => calc::quantity::fixed(Length::from_inches(depth_in).mm(), 0),
    }
}

fn depth_classes(surface: &Surface, pour: &Pour) -> Vec<([Point; 3], u8)> {
    let most = pour.greatest_depth_in.max(1e-9);
    surface
        .corners()
        .map(|corners| {
            let mean = corners
                .iter()
                .map(|v| pour.plane.height_in(v.at) - v.height_in)
                .sum::<f64>()
                / 3.0;
            let class = (mean / most * CLASSES).floor().clamp(0.0, CLASSES - 1.0);
            // Within 0 to 5 by the clamp.
            (corners.map(|v| v.at), class as u8)
        })
        .collect()
}

/// Every pin with its number, place and height in both systems.
#[component]
fn PinTable(plans: Plans) -> impl IntoView {
    let units = plans.room.open.units();
    let open = RwSignal::new(false);
    let shown = RwSignal::new(ROWS_AT_ONCE);
    // On paper the table is open and whole, however the print was asked for.
    let before_print = window_event_listener_untyped("beforeprint", move |_| {
        shown.set(usize::MAX);
        open.set(true);
    });
    on_cleanup(move || before_print.remove());
    let rows = move || {
        if !open.get() {
            return ().into_any();
        }
        let (Some(surface), Some(pour)) = (plans.surface.get(), plans.pour(plans.shown.get()))
        else {
            return ().into_any();
        };
        let metric = units.get() == Units::Metric;
        surface
            .vertices
            .iter()
            .zip(&pour.depth_in)
            .enumerate()
            .take(shown.get())
            .map(|(i, (vertex, &depth_in))| {
                let depth = Length::from_inches(depth_in);
                let (first, other) = if metric {
                    (depth.format_mm(), depth.format_inches(16))
                } else {
                    (depth.format_inches(16), depth.format_mm())
                };
                view! {
                    <tr>
                        <th scope="row">{plans.vertex_name(i)}</th>
                        <td>{length_text(vertex.at.x_in, units.get())}</td>
                        <td>{length_text(vertex.at.y_in, units.get())}</td>
                        <td class="num"><strong>{first}</strong> " " <span class="quiet">{other}</span></td>
                    </tr>
                }
            })
            .collect_view()
            .into_any()
    };
    let more = memo(move || {
        plans
            .surface
            .with(|s| s.as_ref().is_some_and(|s| s.vertices.len() > shown.get()))
    });
    view! {
        <details class="on-paper" open=move || open.get() on:toggle:target=move |ev| open.set(ev.target().open())>
            <summary>{words::pins_table()}</summary>
            <div class="scroll">
                <table>
                    <thead>
                        <tr>
                            <th scope="col">{survey_words::column_spot()}</th>
                            <th scope="col">{survey_words::column_right()}</th>
                            <th scope="col">{survey_words::column_away()}</th>
                            <th scope="col" class="num">{words::pin_height()}</th>
                        </tr>
                    </thead>
                    <tbody>{draw(rows)}</tbody>
                </table>
            </div>
            <When when=move || more.get()>
                <button type="button" class="button" on:click=move |_| shown.update(|n| *n = n.saturating_add(ROWS_AT_ONCE))>
                    {survey_words::more_spots()}
                </button>
            </When>
        </details>
    }
}
