//! How far each stage of a job has come: decided or open, and its key figure.

use calc::job::questions::finish::tile::ask as ask_tile;
use calc::job::{Beyond, PourChoice};
use calc::quantity::{Area, AreaUnit};
use leptos::prelude::*;

use crate::house::House;
use crate::open_job::{OpenJob, OpenRoom};
use crate::pages::air::{air_known, air_line};
use crate::pages::board::{board_begun, board_line};
use crate::pages::paint::{paint_known, paint_line};
use crate::pages::pour::key_figure;
use crate::pages::tile::tile_line;
use crate::pages::trim::{trim_known, trim_line};
use crate::paths::Stage;
use crate::pictures::length_text;
use crate::reactive::derived;
use crate::supply::Supply;
use crate::words::{open_box, pour, quote, sheet, standing as words, survey};
use crate::work::{Work, closing_part};

/// Whether something is decided at each stage, in the order of [`Stage::ALL`].
pub fn decided(room: OpenRoom) -> Signal<Vec<bool>> {
    let work = Work::of(room);
    let open_doorways = room.part(|r| {
        r.openings
            .iter()
            .filter(|o| o.beyond == Beyond::Unknown)
            .count()
    });
    let chosen = room.part(|r| r.pour.choice);
    let house = House::here();
    let closing = closing_part(room);
    let opened = room.open.part(|job| job.opened.len());
    // What is in the cart and what was quoted, without asking what is needed: that would pour every room again.
    let in_cart = room.open.part(|job| {
        job.buying.rows.iter().any(|row| !row.ticked.is_blank())
            || job.buying.own.iter().any(|own| own.ticked)
    });
    let quoted = room.open.part(|job| !job.quote.lines.is_empty());
    derived(move || {
        Stage::ALL
            .iter()
            .map(|stage| match stage {
                Stage::Room => work.shape.read().is_ok(),
                Stage::Survey => work
                    .readings
                    .with(|r| r.spots.len() >= 3 && r.unread() == 0 && r.problems.is_empty()),
                Stage::Pour => chosen.get() != PourChoice::Open,
                Stage::Doorways => open_doorways.get() == 0 && !work.openings.read().0.is_empty(),
                Stage::Tile => closing.with(|r| r.as_ref().is_some_and(|r| ask_tile(r).is_ok())),
                Stage::Paint => closing.with(|r| r.as_ref().is_some_and(paint_known)),
                Stage::Board => closing.with(|r| r.as_ref().is_some_and(board_begun)),
                Stage::Trim => closing.with(|r| r.as_ref().is_some_and(trim_known)),
                Stage::Air => closing.with(|r| r.as_ref().is_some_and(air_known)),
                Stage::Panel => house.panel_decided(),
                Stage::Circuits => {
                    let failing = house.failing();
                    failing.all > 0 && failing.rules == 0 && failing.open == 0
                }
                Stage::Boxes => matches!(house.over(), (0, 0, all) if all > 0),
                Stage::OpenBox => opened.get() > 0,
                Stage::Buy => in_cart.get(),
                Stage::Quote => quoted.get(),
                Stage::Sheet => chosen.get() != PourChoice::Open || house.panel_decided(),
            })
            .collect()
    })
}

/// The key figure of a stage, or what is missing for it.
pub fn figure(room: OpenRoom, stage: Stage) -> Signal<String> {
    let work = Work::of(room);
    let units = room.open.units();
    match stage {
        Stage::Room => derived(move || match work.outline() {
            Some(outline) => {
                let unit = match units.get() {
                    calc::job::Units::Metric => AreaUnit::SquareMeters,
                    calc::job::Units::FeetInches => AreaUnit::SquareFeet,
                };
                Area::from_in2(outline.area_in2()).format(unit, 1)
            }
            None => words::no_walls().to_owned(),
        }),
        Stage::Survey => derived(move || {
            let (read, unread) = work.readings.with(|r| (r.spots.len(), r.unread()));
            match (read, unread) {
                (0, _) => words::nothing_read().to_owned(),
                (_, 1) => survey::one_left_to_read().to_owned(),
                (_, unread) if unread > 1 => survey::left_to_read(unread),
                _ => work.surface().map_or_else(
                    || words::survey_trouble().to_owned(),
                    |surface| words::fall(length_text(surface.facts().fall_in, units.get())),
                ),
            }
        }),
        Stage::Pour => {
            let figure = key_figure(room);
            derived(move || match figure.get() {
                Some((kind, volume, bags)) => words::pour(pour::kind(kind), volume, bags),
                None => words::pour_open().to_owned(),
            })
        }
        Stage::Doorways => {
            let counts = room.part(|r| {
                let open = r.openings.iter().filter(|o| o.beyond == Beyond::Unknown);
                (r.openings.len(), open.count())
            });
            derived(move || match counts.get() {
                (0, _) => words::no_doorways().to_owned(),
                (all, 0) => words::doorways(all),
                (all, open) => words::doorways_open(open, all),
            })
        }
        Stage::Tile | Stage::Board | Stage::Paint | Stage::Trim | Stage::Air => {
            let closing = closing_part(room);
            derived(move || {
                let units = units.get();
                closing.with(|r| {
                    r.as_ref().map_or_else(String::new, |r| match stage {
                        Stage::Tile => tile_line(r, units),
                        Stage::Board => board_line(r),
                        Stage::Paint => paint_line(r, units),
                        Stage::Trim => trim_line(r),
                        _ => air_line(r, units),
                    })
                })
            })
        }
        _ => house_figure(room.open, stage),
    }
}

/// The key figure of a stage of the house; nothing for one of a room.
pub fn house_figure(open: OpenJob, stage: Stage) -> Signal<String> {
    let house = House::here();
    let opened = open.part(|job| job.opened.len());
    match stage {
        Stage::Buy => return Supply::of(open).buying_figure(),
        Stage::Quote => {
            let lines = open.part(|job| job.quote.lines.len());
            return derived(move || match lines.get() {
                0 => quote::figure_none().to_owned(),
                lines => quote::figure_lines(lines),
            });
        }
        Stage::Sheet => return Signal::stored(sheet::figure().to_owned()),
        _ => {}
    }
    derived(move || match stage {
        Stage::Panel => house.panel_figure(),
        Stage::Circuits => house.circuits_figure(),
        Stage::Boxes => house.boxes_figure(),
        Stage::OpenBox => match opened.get() {
            0 => open_box::figure_none().to_owned(),
            1 => open_box::figure_one().to_owned(),
            all => open_box::figure(all),
        },
        _ => String::new(),
    })
}
