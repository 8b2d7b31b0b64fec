//! The panel: its spaces as they hang, a breaker entered at a tap, its supply as measured, and its directory.

use calc::job::questions::EntryProblem;
use calc::job::questions::wiring::AskProblem;
use calc::job::questions::wiring::panel::{Occupant, PanelSpace, PanelTrouble, PanelView};
use calc::job::{BreakerEntry, Job};
use calc::wiring::panel::{Half, PanelFinding, PanelRefusal};
use leptos::prelude::*;

use crate::answer::{Cautions, CodeSections, Notices, RestsOn};
use crate::house::{House, number_of, stands_at};
use crate::markup::view;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::pictures::panel::{PanelCell, PanelLine};
use crate::pictures::{Figure, PanelPicture};
use crate::reactive::{When, derived, draw, memo, say};
use crate::shell::PageHeading;
use crate::words::wiring::{self as wiring_words, panel as words, rules};

mod about;

mod directory;

mod editor;

mod supply;

use about::About;
use directory::Directory;
pub use directory::table as directory_table;
use editor::Editor;
use supply::SupplySheet;

/// The panel stage.
#[component]
pub fn PanelPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let house = House::here();
    let name = open.part(|job| job.panel.name.clone());
    let spaces = open.part(|job| job.panel.spaces);
    let refused = memo(move || {
        house.panel.with(|panel| match panel {
            Err(AskProblem::Refused(refusal)) => Some(words::refusal(refusal)),
            _ => None,
        })
    });
    let picked = RwSignal::new(String::new());
    view! {
        <PageHeading text=derived(move || name.with(|name| panel_name(name))) />
        <When
            when=move || { spaces.get() > 0 }
            fallback=|| view! { <p class="no-print">{words::start()}</p> }
        >
            <Taken house />
        </When>
        <When when=move || spaces.get() == 0>
            {about::spaces_field(open)}
        </When>
        <div role="status" class="no-print">
            <When when=move || refused.read().is_some()>
                <p class="notice look">{refused}</p>
            </When>
        </div>
        <When when=move || house.panel.with(|panel| panel.is_ok())>
            <Drawing open house picked />
            <Findings house />
        </When>
        <When when=move || { spaces.get() > 0 }>
            <About open spaces />
        </When>
        <When when=move || house.panel.with(|panel| panel.is_ok())>
            <Directory house />
        </When>
        <SupplySheet open house />
        <div class="no-print">
            <Cautions lines=Signal::stored(wiring_words::cautions()) />
        </div>
        <a class="button main wide" href=paths::stage(&open.id(), 0, Stage::Circuits)>{words::to_circuits()}</a>
    }
}

/// A panel's name, or what stands for one.
pub fn panel_name(name: &str) -> String {
    if name.trim().is_empty() {
        words::untitled().to_owned()
    } else {
        name.to_owned()
    }
}

/// The spaces taken, the one figure of the page.
#[component]
fn Taken(house: House) -> impl IntoView {
    let value = derived(move || {
        house
            .spaces()
            .map_or_else(String::new, |(taken, _)| taken.to_string())
    });
    let unit = derived(move || {
        house
            .spaces()
            .map_or_else(String::new, |(_, spaces)| words::of_spaces(spaces))
    });
    let rests = derived(move || {
        house.panel.with(|panel| {
            panel.as_ref().map_or_else(
                |_| String::new(),
                |view| words::rests(view.layout.free_spaces, view.layout.poles),
            )
        })
    });
    view! {
        <When when=move || house.spaces().is_some()>
            <div class="answer no-print">
                <p class="figure-name">{words::taken_name()}</p>
                <Figure value unit />
                <RestsOn text=rests />
            </div>
        </When>
    }
}

/// The drawing, the editor of the space that is picked, and the breakers without a place.
#[component]
fn Drawing(open: OpenJob, house: House, picked: RwSignal<String>) -> impl IntoView {
    let lines = memo(move || {
        house.panel.with(|panel| match panel {
            Ok(view) => house.wiring.with(|job| lines(job, view)),
            Err(_) => Vec::new(),
        })
    });
    let says = derived(move || {
        let (taken, spaces) = house.spaces().unwrap_or_default();
        let name = house.wiring.with(|job| panel_name(&job.panel.name));
        words::drawing_says(&name, taken, spaces)
    });
    let pick_place = Callback::new(move |place: String| {
        picked.set(place);
        crate::focus::soon("space-heading");
    });
    // A breaker that is left out of the drawing is reached from a list.
    let placeless = move || {
        let rows = house.panel.with(|panel| {
            let view = panel.as_ref().ok()?;
            let rows = house.wiring.with(|job| placeless(job, view));
            (!rows.is_empty()).then_some(rows)
        })?;
        let rows = rows
            .into_iter()
            .map(|(place, number, why)| {
                view! {
                    <li>
                        <p class="notice look">{why}</p>
                        <button type="button" class="button" on:click=move |_| pick_place.run(place.clone())>
                            {words::edit_space(&number)}
                        </button>
                    </li>
                }
            })
            .collect_view();
        Some(view! {
            <h3>{words::no_place_heading()}</h3>
            <ul class="rows">{rows}</ul>
        })
    };
    view! {
        <section class="sheet no-print">
            <h2>{words::drawing_heading()}</h2>
            <div class="panel-work">
                <figure class="panel-figure">
                    <PanelPicture lines picked says on_pick=pick_place />
                    <figcaption>{words::drawing_caption()}</figcaption>
                </figure>
                <div class="space-editor">
                    <Editor open house picked />
                    {draw(placeless)}
                </div>
            </div>
        </section>
    }
}

/// The rows of the drawing.
pub fn lines(job: &Job, view: &PanelView) -> Vec<PanelLine> {
    let troubled = troubled(view);
    let mut before: Option<&calc::job::questions::wiring::panel::PanelRow> = None;
    let mut lines = Vec::with_capacity(view.rows.len());
    for (at, row) in view.rows.iter().enumerate() {
        let after = view.rows.get(at + 1);
        let leg = row.left.as_ref().or(row.right.as_ref()).map(|s| s.leg);
        let Some(leg) = leg else { continue };
        lines.push(PanelLine {
            left: cells(
                job,
                &troubled,
                row.left.as_ref(),
                before.and_then(|row| row.left.as_ref()),
                after.and_then(|row| row.left.as_ref()),
            ),
            right: cells(
                job,
                &troubled,
                row.right.as_ref(),
                before.and_then(|row| row.right.as_ref()),
                after.and_then(|row| row.right.as_ref()),
            ),
            leg,
        });
        before = Some(row);
    }
    lines
}

/// The breakers that something is wrong with.
fn troubled(view: &PanelView) -> Vec<u32> {
    let mut ids: Vec<u32> = Vec::new();
    for trouble in &view.troubles {
        match trouble {
            PanelTrouble::Entry(problem) => ids.extend(problem.row),
            PanelTrouble::Place { row, what } => {
                ids.push(*row);
                if let PanelRefusal::Taken { other, .. } = what {
                    ids.push(*other);
                }
            }
        }
    }
    ids
}

/// The breaker of two poles that is in a space.
fn two_pole(space: Option<&PanelSpace>) -> Option<u32> {
    match space?.occupants.as_slice() {
        [one] if one.half.is_none() && one.number.contains('-') => Some(one.breaker),
        _ => None,
    }
}

fn cells(
    job: &Job,
    troubled: &[u32],
    here: Option<&PanelSpace>,
    before: Option<&PanelSpace>,
    after: Option<&PanelSpace>,
) -> Vec<PanelCell> {
    let Some(here) = here else {
        return Vec::new();
    };
    let leg = words::leg(here.leg);
    let free = |place: String| PanelCell {
        number: place.clone(),
        lower: None,
        leg: leg.to_owned(),
        label: words::free().to_owned(),
        free: true,
        troubled: false,
        amps: String::new(),
        place,
    };
    if let Some(both) = two_pole(Some(here)) {
        if two_pole(before) == Some(both) {
            return Vec::new();
        }
        let mut cell = filled(job, troubled, both, words::legs_both());
        let below = after.map_or(here.space, |below| below.space);
        cell.place = here.space.min(below).to_string();
        cell.number = here.space.to_string();
        cell.lower = Some(below.to_string());
        return vec![cell];
    }
    match here.occupants.as_slice() {
        [] => vec![free(here.space.to_string())],
        [one] if one.half.is_none() => {
            let mut cell = filled(job, troubled, one.breaker, leg);
            cell.place = here.space.to_string();
            vec![cell]
        }
        halves => [Half::A, Half::B]
            .into_iter()
            .map(|half| {
                let place = format!("{}{}", here.space, words::half(half));
                let found: Option<&Occupant> = halves.iter().find(|one| one.half == Some(half));
                match found {
                    Some(one) => PanelCell {
                        place,
                        ..filled(job, troubled, one.breaker, leg)
                    },
                    None => free(place),
                }
            })
            .collect(),
    }
}

fn filled(job: &Job, troubled: &[u32], id: u32, leg: &str) -> PanelCell {
    let Some(entry) = job.panel.breaker(id) else {
        return PanelCell::default();
    };
    let number = words::number(entry.space, entry.form);
    let amps = amps_text(entry);
    let label = if entry.label.trim().is_empty() {
        words::no_label().to_owned()
    } else {
        entry.label.clone()
    };
    PanelCell {
        place: String::new(),
        number,
        lower: None,
        leg: leg.to_owned(),
        troubled: troubled.contains(&id),
        free: false,
        amps,
        label,
    }
}

/// A breaker's rating as the drawing shows it.
pub fn amps_text(entry: &BreakerEntry) -> String {
    calc::job::fields::RATING.read(&entry.rating).map_or_else(
        |_| words::amps_unknown().to_owned(),
        wiring_words::ampacity::amps,
    )
}

/// The breakers left out of the drawing: the place to pick, the number, and why.
fn placeless(job: &Job, view: &PanelView) -> Vec<(String, String, String)> {
    let mut rows = Vec::new();
    for trouble in &view.troubles {
        if let PanelTrouble::Place { row, what } = trouble
            && !matches!(what, PanelRefusal::Tie { .. })
            && let Some(entry) = job.panel.breaker(*row)
        {
            let number = number_of(job, *row);
            let place = match entry.form {
                calc::wiring::panel::BreakerForm::Tandem(_) => number.clone(),
                _ => entry.space.to_string(),
            };
            rows.push((place, number, words::refusal(what)));
        }
    }
    rows
}

/// The breaker that a place is entered as: the first that stands at it.
pub fn breaker_at<'a>(job: &'a Job, place: &str) -> Option<&'a BreakerEntry> {
    let (space, half) = split_place(place)?;
    job.panel
        .breakers
        .iter()
        .find(|b| b.space == space && stands_at(b.form, half))
}

/// A place as a space and a half: `16A` is 16 and `A`.
pub fn split_place(place: &str) -> Option<(u32, &str)> {
    let at = place
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(place.len());
    let (space, half) = place.split_at(at);
    Some((space.parse().ok()?, half))
}

/// What is remarkable about the panel.
#[component]
fn Findings(house: House) -> impl IntoView {
    let lines = derived(move || {
        house.panel.with(|panel| {
            let Ok(view) = panel else { return Vec::new() };
            let numbered = |id: u32| house.number(id);
            let mut lines: Vec<String> = view
                .layout
                .findings
                .iter()
                .filter_map(|finding| words::finding(finding, &numbered))
                .collect();
            let not: Vec<String> = view
                .layout
                .findings
                .iter()
                .filter_map(|finding| match finding {
                    PanelFinding::NotConfirmed { breaker } => Some(numbered(*breaker)),
                    _ => None,
                })
                .collect();
            if !not.is_empty() {
                lines.push(words::found_not_confirmed(&not.join(", ")));
            }
            lines
        })
    });
    let sections = derived(move || {
        let edition = house.edition();
        house.panel.with(|panel| {
            let Ok(view) = panel else { return Vec::new() };
            let cited = view
                .layout
                .findings
                .iter()
                .filter_map(words::finding_section);
            rules::sections(&[], &rules::named(cited, edition), edition)
        })
    });
    view! {
        <When when=move || !lines.read().is_empty()>
            <section class="sheet no-print">
                <h2>{words::findings_heading()}</h2>
                <Notices lines />
                <p class="rests-on">{say(move || wiring_words::by_edition(wiring_words::edition(house.edition())))}</p>
                <CodeSections rows=sections />
            </section>
        </When>
    }
}

/// The entries of a breaker that are refused, in words; blank ones are told by their fields.
pub fn trouble_of(view: &PanelView, id: u32) -> Vec<String> {
    view.troubles
        .iter()
        .filter_map(|trouble| match trouble {
            PanelTrouble::Place { row, what } => {
                let other = match what {
                    PanelRefusal::Taken { other, .. } => Some(*other),
                    _ => None,
                };
                (*row == id || other == Some(id)).then(|| words::refusal(what))
            }
            PanelTrouble::Entry(EntryProblem { .. }) => None,
        })
        .collect()
}
