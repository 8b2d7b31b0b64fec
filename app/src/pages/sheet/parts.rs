//! The parts of the sheet as headings, sentences, rows and lists: on paper and as plain text they are the same.

use calc::floor::doorway::Higher;
use calc::floor::pour::PourKind;
use calc::job::questions::answers::{Ground, Poured, poured};
use calc::job::questions::opened::{described, readings};
use calc::job::questions::supply::quote::quote;
use calc::job::{Job, PourChoice, ReadingEntry, ReadingKind, Room, SheetPart, Units};
use calc::quantity::{Area, AreaUnit, Volume, VolumeUnit, fixed};
use leptos::prelude::*;

use super::super::buy;
use super::super::jobs::shown_room;
use super::super::open_box::Names;
use super::super::quote::questions;
use crate::house::{House, box_name, circuit_name, fails};
use crate::open_job::OpenJob;
use crate::pictures::{length_text, reading_text};
use crate::supply::Supply;
use crate::words::open_box::measure;
use crate::words::wiring::{self, fill, panel as panel_words};
use crate::words::{closing, common, pour as pour_words, sheet as words, supply as supply_words};
use crate::work::opening_letter;

/// A part of the sheet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Block {
    /// Its heading.
    pub heading: String,
    /// Sentences.
    pub lines: Vec<String>,
    /// The heads of its columns.
    pub head: Vec<&'static str>,
    /// Its rows.
    pub rows: Vec<Vec<String>>,
    /// Items one below another.
    pub list: Vec<String>,
}

impl Block {
    fn of(heading: &str) -> Self {
        Self {
            heading: heading.to_owned(),
            ..Self::default()
        }
    }

    /// As plain text.
    pub fn text(&self) -> String {
        let mut text = format!("{}\n", self.heading);
        let mut say = |line: &str| {
            text.push_str(line);
            text.push('\n');
        };
        self.lines.iter().for_each(|line| say(line));
        for row in &self.rows {
            let cells: Vec<String> = self
                .head
                .iter()
                .zip(row)
                .filter(|(_, cell)| !cell.is_empty())
                .map(|(head, cell)| format!("{head}: {cell}"))
                .collect();
            say(&format!("- {}", cells.join("; ")));
        }
        self.list.iter().for_each(|item| say(&format!("- {item}")));
        text
    }
}

/// A part that is no room's.
pub fn block(part: SheetPart, open: OpenJob, house: House, supply: Supply) -> Block {
    match part {
        SheetPart::Doorways => open.job.with(doorways),
        SheetPart::Panel => panel(house),
        SheetPart::Circuits => circuits(house),
        SheetPart::Boxes => boxes(house, open.units().get()),
        SheetPart::Buying => buying(supply),
        SheetPart::Quote => open.job.with(|job| questions_of(job, supply)),
        SheetPart::Cautions => cautions(),
        SheetPart::Opened => open.job.with(opened),
        SheetPart::Floors => Block::default(),
    }
}

/// The pour that was chosen; nothing where none is, or where it can't be worked out.
fn chosen(room: &Room, ground: &Ground) -> Option<Poured> {
    let kind = kind_of(room)?;
    let surface = ground.floor.as_ref().ok()?;
    poured(room, kind, surface, &ground.openings, &ground.readings).ok()
}

fn kind_of(room: &Room) -> Option<PourKind> {
    match room.pour.choice {
        PourChoice::Level => Some(PourKind::Level),
        PourChoice::Flat => Some(PourKind::Flat),
        PourChoice::Open => None,
    }
}

fn said(name: &str, value: String) -> String {
    format!("{name}: {value}")
}

/// A room and its pour, with the pins in the order of the survey.
pub fn floor(job: &Job, id: u32) -> Block {
    let Some(room) = job.room(id) else {
        return Block::default();
    };
    let units = job.units;
    let metric = units == Units::Metric;
    let mut block = Block::of(&shown_room(&room.name));
    let ground = Ground::of(room);
    if let Ok(shape) = &ground.shape {
        let unit = if metric {
            AreaUnit::SquareMeters
        } else {
            AreaUnit::SquareFeet
        };
        let area = Area::from_in2(shape.outline.area_in2()).format(unit, 1);
        block.lines.push(said(words::floor_area(), area));
    }
    let Some(kind) = kind_of(room) else {
        block.lines.push(words::no_pour().to_owned());
        return block;
    };
    let Some(found) = chosen(room, &ground) else {
        block.lines.push(words::pour_missing().to_owned());
        return block;
    };
    let pour = &found.pour;
    let volume = Volume::from_ft3(pour.volume_ft3);
    let volume = if metric {
        volume.format(VolumeUnit::Liters, 1)
    } else {
        volume.format(VolumeUnit::CubicFeet, 2)
    };
    block
        .lines
        .push(said(words::pour(), pour_words::kind(kind).to_owned()));
    block.lines.push(said(words::volume(), volume));
    if let Ok(bags) = &found.bags {
        block.lines.push(said(words::bags(), bags.bags.to_string()));
    }
    block.lines.push(said(
        words::deepest(),
        length_text(pour.greatest_depth_in, units),
    ));
    block.lines.push(said(
        words::shallowest(),
        length_text(pour.least_depth_in, units),
    ));
    block.head = vec![
        words::pin_spot(),
        words::pin_right(),
        words::pin_away(),
        words::pin_depth(),
        words::pin_reading(),
    ];
    block.rows = found
        .spots
        .iter()
        .map(|spot| {
            let number = ground.readings.number_of(spot.spot);
            vec![
                number.map(|n| n.to_string()).unwrap_or_default(),
                length_text(spot.at.x_in, units),
                length_text(spot.at.y_in, units),
                length_text(spot.depth_in, units),
                reading_text(spot.top_reading_in, units),
            ]
        })
        .collect();
    block
}

/// The openings of every room: width, depth of the pour there, the step when all is laid.
fn doorways(job: &Job) -> Block {
    let mut block = Block::of(words::doorways());
    block.head = vec![
        words::opening(),
        words::opening_width(),
        words::depth_there(),
        words::step(),
    ];
    let units = job.units;
    for room in &job.rooms {
        let ground = Ground::of(room);
        let found = chosen(room, &ground);
        for (at, opening) in room.openings.iter().enumerate() {
            let letter = opening_letter(at);
            let name = format!("{} · {letter} {}", shown_room(&room.name), opening.name);
            let placed = ground
                .openings
                .iter()
                .find(|placed| placed.id == opening.id);
            let width = placed.map(|placed| length_text(placed.span.span.width_in, units));
            let along = found
                .as_ref()
                .and_then(|found| found.along.iter().find(|along| along.id == opening.id));
            let depth = along.map(|along| {
                let text = |depth_in| length_text(depth_in, units);
                format!(
                    "{} – {}",
                    text(along.depth.least_in),
                    text(along.depth.greatest_in)
                )
            });
            let threshold = found
                .as_ref()
                .and_then(|found| found.thresholds.iter().find(|t| t.id == opening.id));
            let step = threshold.and_then(|t| t.doorway.as_ref().ok()).map_or_else(
                || words::step_unknown().to_owned(),
                |doorway| {
                    let height = length_text(doorway.greatest_step_in, units);
                    match doorway.higher {
                        Higher::Here => words::step_up(height),
                        Higher::Beyond => words::step_down(height),
                        Higher::Changes => words::step_changes(height),
                        Higher::Neither => words::step_none().to_owned(),
                    }
                },
            );
            block.rows.push(vec![
                name.trim().to_owned(),
                width.unwrap_or_default(),
                depth.unwrap_or_default(),
                step,
            ]);
        }
    }
    if block.rows.is_empty() {
        block.lines.push(words::no_doorways().to_owned());
    }
    block
}

fn panel(house: House) -> Block {
    let mut block = Block::of(words::panel());
    house.panel.with(|panel| match panel {
        Ok(view) => {
            for row in &view.directory {
                let rating = row
                    .rating_a
                    .map_or_else(String::new, wiring::ampacity::amps);
                let label = if row.label.trim().is_empty() {
                    panel_words::no_label()
                } else {
                    &row.label
                };
                block
                    .list
                    .push(format!("{} · {rating} · {label}", row.number));
            }
        }
        Err(_) => block.lines.push(words::no_panel().to_owned()),
    });
    block
}

fn circuits(house: House) -> Block {
    let mut block = Block::of(words::circuits());
    block.head = vec![words::found_on(), words::says()];
    house.circuits.with(|all| {
        for (id, judged) in all {
            let name = house.circuit_name(*id);
            let breaker = house.wiring.with(|job| {
                let breaker = job.circuit(*id).and_then(|c| c.breaker);
                breaker.map(|id| house.number(id)).unwrap_or_default()
            });
            let says = match judged {
                Ok(view) => match fails(view).len() {
                    0 => words::circuit_holds().to_owned(),
                    count => words::circuit_fails(count),
                },
                Err(_) => words::circuit_open().to_owned(),
            };
            let name = if breaker.is_empty() {
                circuit_name(&name)
            } else {
                format!("{breaker} · {name}")
            };
            block.rows.push(vec![name, says]);
        }
    });
    if block.rows.is_empty() {
        block.lines.push(words::no_circuits().to_owned());
    }
    block
}

fn boxes(house: House, units: Units) -> Block {
    let mut block = Block::of(words::boxes());
    block.head = vec![words::found_on(), words::says()];
    house.boxes.with(|all| {
        for (id, fill_) in all {
            let says = match fill_ {
                Ok(found) if found.fits => wiring::boxes::room_left(
                    fill::volume(found.room_in3, units),
                    fill::volume(found.volume_in3, units),
                ),
                Ok(found) => wiring::boxes::over(
                    fill::volume(-found.room_in3, units),
                    fill::volume(found.volume_in3, units),
                ),
                Err(_) => wiring::boxes::not_known().to_owned(),
            };
            block.rows.push(vec![box_name(&house.box_name(*id)), says]);
        }
    });
    if block.rows.is_empty() {
        block.lines.push(words::no_boxes().to_owned());
    }
    block
}

/// What was found and put right in opened boxes, with the readings before and after.
fn opened(job: &Job) -> Block {
    let mut block = Block::of(words::part(SheetPart::Opened));
    block.head = vec![
        words::found_on(),
        words::opened_when(),
        words::opened_what(),
        words::opened_shown(),
    ];
    for entry in &job.opened {
        let name = if entry.name.trim().is_empty() {
            words::opened_untitled()
        } else {
            &entry.name
        };
        let note = entry.note.trim();
        let note = if note.is_empty() {
            name.to_owned()
        } else {
            said(name, note.to_owned())
        };
        block.lines.push(note);
        let names = Names::of(job, entry);
        let Ok(described) = described(job, entry) else {
            continue;
        };
        let taken = readings(entry, &described.description);
        for (taken, row) in taken.iter().zip(&entry.readings) {
            let what = match &taken.reading {
                Ok(reading) => format!(
                    "{} ({})",
                    names.probe(&reading.probe),
                    names.situation(&reading.situation)
                ),
                Err(_) => words::opened_unread().to_owned(),
            };
            let when = if taken.proves {
                words::opened_after()
            } else {
                words::opened_before()
            };
            block
                .rows
                .push(vec![name.to_owned(), when.to_owned(), what, shown(row)]);
        }
    }
    if job.opened.is_empty() {
        block.lines.push(words::no_opened().to_owned());
    }
    block
}

/// What a meter or a tester showed, as it was typed.
fn shown(row: &ReadingEntry) -> String {
    let unit = match row.what {
        ReadingKind::Tester => {
            return match row.glows {
                Some(true) => measure::does_glow().to_owned(),
                Some(false) => measure::no_glow().to_owned(),
                None => String::new(),
            };
        }
        ReadingKind::Ohms if row.open => return measure::open().to_owned(),
        ReadingKind::Volts => "V",
        ReadingKind::Amps => "A",
        ReadingKind::Ohms => "Ω",
    };
    let text = row.shown.text.trim();
    if text.is_empty() || text.ends_with(char::is_alphabetic) || text.ends_with(unit) {
        text.to_owned()
    } else {
        format!("{text} {unit}")
    }
}

fn buying(supply: Supply) -> Block {
    let mut block = Block::of(words::buying());
    block.head = vec![
        words::buy_what(),
        words::buy_much(),
        words::buy_for(),
        words::buy_cost(),
        words::buy_cart(),
    ];
    let list = supply.buying.get();
    let units = supply.open.units().get();
    let cost = |cost: Option<f64>| cost.map(supply_words::money).unwrap_or_default();
    let cart = |on: bool| if on { common::yes() } else { "" }.to_owned();
    for line in &list.lines {
        block.rows.push(vec![
            supply_words::kind(line.need.kind).to_owned(),
            buy::to_buy_text(line, units),
            supply.room_name(line.need.room),
            cost(line.cost),
            cart(line.ticked.is_some() && line.grown.is_none()),
        ]);
    }
    let own = supply.open.job.with(|job| job.buying.own.clone());
    for (entry, line) in own.iter().zip(&list.own) {
        let much = line.quantity.map(|n| fixed(n, 2)).unwrap_or_default();
        block.rows.push(vec![
            buy::own_name(&entry.words),
            much,
            String::new(),
            cost(line.cost),
            cart(line.ticked),
        ]);
    }
    if list.total > 0.0 {
        let total = supply_words::money(list.total);
        block.lines.push(said(supply_words::total(), total));
    }
    if block.rows.is_empty() {
        block.lines.push(words::nothing_to_buy().to_owned());
    }
    block
}

fn questions_of(job: &Job, supply: Supply) -> Block {
    let mut block = Block::of(words::quote());
    if job.quote.lines.is_empty() {
        block.lines.push(words::no_quote().to_owned());
        return block;
    }
    let found = supply
        .needed
        .with(|needed| quote(&job.quote, &needed.needs));
    block.list = questions(&job.quote, &found);
    if block.list.is_empty() {
        block
            .lines
            .push(crate::words::quote::no_questions().to_owned());
    }
    block.lines.push(crate::words::quote::fair().to_owned());
    block
}

fn cautions() -> Block {
    let mut block = Block::of(common::cautions());
    block.list = [
        pour_words::caution_bag(),
        pour_words::caution_prime(),
        pour_words::caution_joists(),
        pour_words::caution_asbestos(),
        pour_words::caution_dust(),
        closing::caution_lead(),
    ]
    .map(str::to_owned)
    .into();
    block.list.extend(wiring::cautions());
    block.list.push(words::caution_licensed().to_owned());
    block
}
