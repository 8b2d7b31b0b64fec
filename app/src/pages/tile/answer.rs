//! The tiles to buy, the floor from above, the cuts.

use calc::finish::tile::Layout;
use calc::job::{Room, Units};
use calc::quantity::fixed;
use leptos::prelude::*;

use crate::answer::{Facts, RestsOn, Working};
use crate::markup::view;
use crate::pages::closing::{Missing, said};
use crate::pictures::tile::MOST_DRAWN;
use crate::pictures::{Figure, TilePicture, length_text};
use crate::reactive::{When, derived, draw, memo, say};
use crate::tiling::Tiling;
use crate::words::closing::{self as shared, tile as words};
use crate::work::opening_letter;

/// Sizes of cut pieces that are listed.
const MOST_SIZES: usize = 12;

/// The answer, or how far the search is, or what is missing.
#[component]
pub fn Answer(tiling: Tiling) -> impl IntoView {
    let units = tiling.room.open.units();
    let problem = derived(move || {
        tiling.laid.with(|laid| {
            tiling.part.with(|room| {
                said(laid.as_ref()?, room.as_ref(), &|refusal| {
                    words::refusal(refusal, units.get())
                })
            })
        })
    });
    let there = memo(move || tiling.layout().is_some());
    let searching = memo(move || tiling.laid.read().is_none());
    view! {
        <Missing text=problem room=tiling.room />
        <When when=move || searching.get()>
            <div class="notice" role="status">
                <p>
                    {say(move || {
                        let (tried, of) = tiling.tried.get();
                        words::searching(tried as usize, of as usize)
                    })}
                </p>
                <button type="button" class="button" on:click=move |_| tiling.stopped.set(true)>
                    {words::stop_here()}
                </button>
            </div>
        </When>
        <When when=move || there.get()>
            <Laid tiling />
        </When>
    }
}

#[component]
fn Laid(tiling: Tiling) -> impl IntoView {
    let units = tiling.room.open.units();
    let text = move |of: fn(&Layout) -> String| {
        derived(move || tiling.layout().map_or_else(String::new, |laid| of(&laid)))
    };
    let value = text(|laid| bought(laid).to_string());
    let rests = text(|laid| {
        let said = words::rests(laid.full_tiles, laid.cut_tiles);
        if laid.ask.buying.per_box > 1 {
            format!("{said} {}.", words::boxes(laid.without_offcuts.boxes))
        } else {
            said
        }
    });
    let says = text(|laid| words::picture_says(laid.full_tiles, laid.cut_tiles));
    let rows = derived(move || {
        let units = units.get();
        tiling
            .layout()
            .map_or_else(Vec::new, |laid| facts(&laid, units))
    });
    let sides = derived(move || {
        let units = units.get();
        tiling
            .layout()
            .map_or_else(Vec::new, |laid| at_sides(&laid, units))
    });
    let cuts = derived(move || {
        let units = units.get();
        tiling
            .layout()
            .map_or_else(Vec::new, |laid| pieces(&laid, units))
    });
    let lines = derived(move || {
        let units = units.get();
        tiling.part.with(|room| {
            tiling
                .layout()
                .map_or_else(Vec::new, |laid| places(&laid, room.as_ref(), units))
        })
    });
    let drawn = derived(move || {
        tiling
            .layout()
            .filter(|laid| laid.tiles.len() <= MOST_DRAWN)
    });
    let steps = derived(move || tiling.layout().map_or_else(Vec::new, |laid| laid.working()));
    let list = |of: Signal<Vec<String>>| {
        draw(move || {
            of.get()
                .into_iter()
                .map(|line| view! { <li>{line}</li> })
                .collect_view()
        })
    };
    view! {
        <section class="sheet">
            <div class="answer" role="status">
                <p class="figure-name">{words::answer_name()}</p>
                <Figure value unit=Signal::stored(words::tiles_word().to_owned()) />
                <RestsOn text=rests />
                <When when=move || tiling.stopped.get()>
                    <div class="notice look">
                        <p>
                            {say(move || {
                                let (tried, of) = tiling.tried.get();
                                words::stopped(tried as usize, of as usize)
                            })}
                        </p>
                        <button type="button" class="button" on:click=move |_| tiling.search_on()>
                            {words::search_on()}
                        </button>
                    </div>
                </When>
            </div>
            <figure class="picture">
                <TilePicture layout=drawn says />
                <figcaption>
                    {say(move || {
                        if drawn.read().is_some() { words::picture_caption() } else { words::too_many_to_draw() }
                    })}
                </figcaption>
            </figure>
            <ul class="rows">{list(lines)}</ul>
            <Facts rows />
            <h3>{words::sides_heading()}</h3>
            <Facts rows=sides />
            <h3>{words::cuts_heading()}</h3>
            <ul class="rows">{list(cuts)}</ul>
            <Working steps units />
        </section>
    }
}

/// What is bought: with a new tile for each cut and the allowance, never too few.
fn bought(laid: &Layout) -> u32 {
    laid.without_offcuts.with_allowance
}

fn facts(laid: &Layout, units: Units) -> Vec<(String, String)> {
    let mut rows = vec![
        (words::row_full().to_owned(), laid.full_tiles.to_string()),
        (words::row_cut().to_owned(), laid.cut_tiles.to_string()),
    ];
    for (name, buy) in [
        (words::row_new(), &laid.without_offcuts),
        (words::row_reused(), &laid.with_offcuts),
    ] {
        rows.push((
            name.to_owned(),
            words::row_allowed(buy.tiles, buy.with_allowance),
        ));
    }
    if laid.ask.buying.per_box > 1 {
        rows.push((
            words::row_boxes().to_owned(),
            if laid.with_offcuts.boxes == laid.without_offcuts.boxes {
                laid.without_offcuts.boxes.to_string()
            } else {
                words::to_range(laid.with_offcuts.boxes, laid.without_offcuts.boxes)
            },
        ));
    }
    rows.push((
        words::row_by_area().to_owned(),
        words::by_area(laid.by_area_tiles, fixed(laid.by_area_allowance_percent, 0)),
    ));
    if let Some(least_in) = laid.narrowest_cut_in {
        rows.push((
            words::row_narrowest().to_owned(),
            length_text(least_in, units),
        ));
    }
    rows.push((
        words::row_area().to_owned(),
        shared::area(laid.field_area_in2 / 144.0, units),
    ));
    rows.push((
        words::row_saw().to_owned(),
        words::saw(laid.saw_cuts, length_text(laid.saw_length_in, units)),
    ));
    rows
}

fn at_sides(laid: &Layout, units: Units) -> Vec<(String, String)> {
    laid.sides
        .iter()
        .map(|at| {
            (
                words::side(at.side),
                words::narrowest(at.cut_tiles, length_text(at.narrowest_in, units)),
            )
        })
        .collect()
}

fn pieces(laid: &Layout, units: Units) -> Vec<String> {
    let mut lines: Vec<String> = laid
        .cuts
        .iter()
        .take(MOST_SIZES)
        .map(|group| {
            let size = words::size(
                length_text(group.width_in, units),
                length_text(group.height_in, units),
            );
            words::piece(group.count, size, words::shape(group.shape))
        })
        .collect();
    if laid.cuts.len() > MOST_SIZES {
        lines.push(words::more_sizes(laid.cuts.len() - MOST_SIZES));
    }
    lines
}

/// The lines to snap, and what lies in each doorway.
fn places(laid: &Layout, room: Option<&Room>, units: Units) -> Vec<String> {
    let end = |at: &calc::floor::geometry::OnWall| {
        words::on_wall(at.wall + 1, length_text(at.along_in, units))
    };
    let mut lines: Vec<String> = laid
        .snap_lines
        .iter()
        .map(|line| {
            if line.along_rows {
                words::snap_along(end(&line.from), end(&line.to))
            } else {
                words::snap_across(end(&line.from), end(&line.to))
            }
        })
        .collect();
    // Only openings with a place are asked about: their letters are those of the room's list.
    let letters: Vec<usize> = room
        .map(|room| {
            use calc::job::questions::room::{openings, outline};
            let placed = outline(&room.outline)
                .map_or(Vec::new(), |shape| openings(&shape, &room.openings).0);
            placed
                .iter()
                .filter_map(|of| room.openings.iter().position(|row| row.id == of.id))
                .collect()
        })
        .unwrap_or_default();
    for at in &laid.doorways {
        if let Some(&letter) = letters.get(at.opening) {
            lines.push(words::doorway(
                opening_letter(letter),
                length_text(at.left_in, units),
                length_text(at.right_in, units),
            ));
        }
    }
    lines
}
