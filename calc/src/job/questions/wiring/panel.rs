//! The panel as it hangs: which breaker is in each space, what is wrong with it, its directory, and its supply.

use serde::Serialize;

use super::AskProblem;
use crate::job::questions::{EntryProblem, Reader};
use crate::job::{
    BreakerEntry, CircuitEntry, CodeEdition, Job, MainDisconnect, PanelEntry, SupplyReadingsEntry,
    TandemRule, fields,
};
use crate::wiring::panel::{
    Breaker, BreakerForm, Confirmed, Half, Leg, Panel, PanelFinding, PanelLayout, PanelRefusal,
    Position, Protection, lay_out, leg_of, place_of,
};
use crate::wiring::supply::{
    Supply, SupplyJudgement, SupplyReadings, SupplyRefusal, judge as judge_supply,
};

/// A panel, laid out as it hangs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanelView {
    /// The user's name for it.
    pub name: String,
    /// The rows of the drawing, from the top.
    pub rows: Vec<PanelRow>,
    /// The breakers that have a place, by their numbers, and what is remarkable.
    pub layout: PanelLayout,
    /// What keeps breakers from their places, or their entries from being read.
    pub troubles: Vec<PanelTrouble>,
    /// The directory: each breaker that has a place, by its number.
    pub directory: Vec<DirectoryRow>,
}

/// A row of the drawing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanelRow {
    /// On the left; nothing where an odd number of spaces leaves a gap.
    pub left: Option<PanelSpace>,
    /// On the right.
    pub right: Option<PanelSpace>,
}

/// A space of the panel.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PanelSpace {
    /// Its number.
    pub space: u32,
    /// Its leg.
    pub leg: Leg,
    /// Which breakers are in it: none, one, or the two of a tandem.
    pub occupants: Vec<Occupant>,
}

/// A breaker in a space.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Occupant {
    /// The breaker's id.
    pub breaker: u32,
    /// Its number as the directory shows it: `7`, `16A`, `2-4`.
    pub number: String,
    /// Which half of the space, of a tandem.
    pub half: Option<Half>,
    /// Which of its poles is here, from 0.
    pub pole: usize,
}

/// What keeps a breaker from its place, or an entry from being read.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PanelTrouble {
    /// An entry that is missing or refused.
    Entry(EntryProblem),
    /// A breaker that can't be where it is said to be: it is left out of the drawing.
    Place {
        /// The breaker's id.
        row: u32,
        /// What is wrong.
        what: PanelRefusal,
    },
}

/// A line of the circuit directory.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DirectoryRow {
    /// The breaker's id.
    pub breaker: u32,
    /// Its number.
    pub number: String,
    /// The legs of its poles.
    pub legs: Vec<Leg>,
    /// Its rating, amperes; nothing where it can't be read.
    pub rating_a: Option<f64>,
    /// What it does besides.
    pub protection: Protection,
    /// What the directory says.
    pub label: String,
    /// What was confirmed, and how.
    pub confirmed: Confirmed,
    /// The circuits that are on it.
    pub circuits: Vec<u32>,
}

/// Stands in for a rating that can't be read, so that its breaker is still drawn: neither places nor poles depend on
/// it, it is a standard rating, and no figure of it is shown.
const STAND_IN_A: f64 = 15.0;

/// The panel as it hangs.
///
/// One bad breaker doesn't take the others away: it is told in `troubles`, and left out if it has no place.
///
/// # Errors
/// Without a number of spaces, or with a rating of the panel that is refused, there is no drawing.
pub fn panel_view(job: &Job) -> Result<PanelView, AskProblem<PanelRefusal>> {
    let (mut panel, mut troubles) = read(&job.panel, job.code_edition)?;
    let layout = loop {
        match lay_out(&panel) {
            Ok(layout) => break layout,
            Err(refusals) => {
                let before = panel.breakers.len();
                for what in refusals {
                    let Some(row) = breaker_of(&what) else {
                        return Err(AskProblem::Refused(what));
                    };
                    leave_out(&mut panel, row, &what);
                    let trouble = PanelTrouble::Place { row, what };
                    if !troubles.contains(&trouble) {
                        troubles.push(trouble);
                    }
                }
                // Each round leaves out a breaker or undoes a tie, so the loop ends.
                debug_assert!(panel.breakers.len() <= before);
            }
        }
    };
    Ok(PanelView {
        name: job.panel.name.clone(),
        rows: rows(&panel, &layout),
        directory: directory(job, &layout),
        layout: without_stand_ins(layout, &troubles),
        troubles,
    })
}

/// The breaker that a refusal is about; nothing for one about the panel.
fn breaker_of(refusal: &PanelRefusal) -> Option<u32> {
    match *refusal {
        PanelRefusal::Spaces { .. } | PanelRefusal::PanelRating { .. } => None,
        PanelRefusal::NoSpace { id, .. }
        | PanelRefusal::NoSecondSpace { id, .. }
        | PanelRefusal::Taken { id, .. }
        | PanelRefusal::SameId { id }
        | PanelRefusal::NoTandem { id, .. }
        | PanelRefusal::Rating { id, .. }
        | PanelRefusal::Tie { id, .. } => Some(id),
    }
}

/// Takes the last breaker of that id out, or its tie alone where that is what is wrong.
fn leave_out(panel: &mut Panel, row: u32, refusal: &PanelRefusal) {
    let Some(at) = panel.breakers.iter().rposition(|b| b.id == row) else {
        return;
    };
    match (refusal, panel.breakers.get_mut(at)) {
        (PanelRefusal::Tie { .. }, Some(breaker)) => breaker.tied_to = None,
        _ => {
            panel.breakers.remove(at);
        }
    }
}

/// What is said of a breaker whose entries can't be read is its trouble alone.
fn without_stand_ins(mut layout: PanelLayout, troubles: &[PanelTrouble]) -> PanelLayout {
    layout.findings.retain(|finding| {
        let PanelFinding::NotStandard { breaker, .. } = finding else {
            return true;
        };
        !troubles.iter().any(|trouble| {
            matches!(trouble, PanelTrouble::Entry(problem) if problem.row == Some(*breaker))
        })
    });
    layout
}

/// The panel with the breakers that can be read.
fn read(
    entry: &PanelEntry,
    edition: CodeEdition,
) -> Result<(Panel, Vec<PanelTrouble>), AskProblem<PanelRefusal>> {
    let mut reader = Reader::default();
    if entry.spaces == 0 {
        reader.missing("spaces");
    }
    let rating_a = reader.may("rating", &fields::RATING, &entry.rating);
    let main_a = match entry.main {
        MainDisconnect::Lugs => None,
        MainDisconnect::Breaker => {
            Some(reader.need("main_rating", &fields::RATING, &entry.main_rating))
        }
    };
    let feeder_device_a = reader.may("feeder_device", &fields::RATING, &entry.feeder_device);
    let most_circuits = reader
        .may(
            "most_circuits",
            &fields::MOST_CIRCUITS,
            &entry.most_circuits,
        )
        .map(|most| most as u32);
    reader.finish(())?;
    let mut troubles = Vec::new();
    let breakers = entry
        .breakers
        .iter()
        .filter_map(|entry| drawn(entry, &mut troubles))
        .collect();
    let panel = Panel {
        edition,
        spaces: entry.spaces,
        rating_a,
        main_a,
        feeder_device_a,
        most_circuits,
        mounting: entry.mounting,
        fed_by: entry.fed_by,
        bars: entry.bars,
        tandems: match entry.tandems {
            TandemRule::NotKnown => crate::wiring::panel::TandemSpaces::NotKnown,
            TandemRule::None => crate::wiring::panel::TandemSpaces::None,
            TandemRule::All => crate::wiring::panel::TandemSpaces::All,
            TandemRule::Listed => {
                crate::wiring::panel::TandemSpaces::Listed(entry.tandem_spaces.clone())
            }
        },
        breakers,
    };
    Ok((panel, troubles))
}

/// A breaker for the drawing; nothing where it has no space yet.
fn drawn(entry: &BreakerEntry, troubles: &mut Vec<PanelTrouble>) -> Option<Breaker> {
    let breaker = match breaker(entry) {
        Ok(breaker) => breaker,
        Err(problems) => {
            troubles.extend(problems.into_iter().map(PanelTrouble::Entry));
            with_rating(entry, STAND_IN_A)
        }
    };
    (entry.space > 0).then_some(breaker)
}

/// A breaker as it is asked about.
///
/// # Errors
/// Its space or its rating, missing or refused.
pub fn breaker(entry: &BreakerEntry) -> Result<Breaker, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    reader.row(entry.id);
    if entry.space == 0 {
        reader.missing("space");
    }
    let rating_a = reader.need("rating", &fields::RATING, &entry.rating);
    reader.finish(with_rating(entry, rating_a))
}

fn with_rating(entry: &BreakerEntry, rating_a: f64) -> Breaker {
    Breaker {
        id: entry.id,
        space: entry.space,
        form: entry.form,
        rating_a,
        protection: entry.protection,
        tied_to: entry.tied_to,
        label: entry.label.clone(),
        confirmed: entry.confirmed,
    }
}

/// The rows as the panel hangs, from the top.
fn rows(panel: &Panel, layout: &PanelLayout) -> Vec<PanelRow> {
    let empty = PanelRow {
        left: None,
        right: None,
    };
    let mut rows = vec![empty; layout.rows as usize];
    for space in 1..=panel.spaces {
        let place = place_of(space, panel.spaces, panel.mounting);
        let Some(row) = rows.get_mut(place.row as usize) else {
            continue;
        };
        let side = if place.column == 0 {
            &mut row.left
        } else {
            &mut row.right
        };
        *side = Some(PanelSpace {
            space,
            leg: leg_of(space),
            occupants: occupants(panel, &layout.positions, space),
        });
    }
    rows
}

fn occupants(panel: &Panel, positions: &[Position], space: u32) -> Vec<Occupant> {
    positions
        .iter()
        .filter_map(|position| {
            let pole = position.spaces.iter().position(|&of| of == space)?;
            let id = position.breaker?;
            let form = panel.breakers.iter().find(|b| b.id == id)?.form;
            Some(Occupant {
                breaker: id,
                number: position.number.clone(),
                half: match form {
                    BreakerForm::Tandem(half) => Some(half),
                    BreakerForm::Single | BreakerForm::TwoPole => None,
                },
                pole,
            })
        })
        .collect()
}

fn directory(job: &Job, layout: &PanelLayout) -> Vec<DirectoryRow> {
    layout
        .positions
        .iter()
        .filter_map(|position| {
            let entry = job.panel.breaker(position.breaker?)?;
            Some(DirectoryRow {
                breaker: entry.id,
                number: position.number.clone(),
                legs: position.legs.clone(),
                rating_a: fields::RATING.read(&entry.rating).ok(),
                protection: entry.protection,
                label: entry.label.clone(),
                confirmed: entry.confirmed,
                circuits: on_breaker(job, entry.id).map(|c| c.id).collect(),
            })
        })
        .collect()
}

/// The circuits on a breaker.
pub fn on_breaker(job: &Job, breaker: u32) -> impl Iterator<Item = &CircuitEntry> {
    job.circuits
        .iter()
        .filter(move |circuit| circuit.breaker == Some(breaker))
}

/// The supply that was measured at the panel, judged; nothing where nothing was measured.
pub fn supply_of(panel: &PanelEntry) -> Option<Result<SupplyJudgement, AskProblem<SupplyRefusal>>> {
    let supply = &panel.supply;
    if is_blank(&supply.idle) && is_blank(&supply.loaded) {
        return None;
    }
    let mut reader = Reader::default();
    let idle = readings(&mut reader, &supply.idle, IDLE);
    let loaded = (!is_blank(&supply.loaded)).then(|| readings(&mut reader, &supply.loaded, LOADED));
    let asked = reader.finish(Supply {
        place: supply.place,
        idle,
        loaded,
    });
    Some(match asked {
        Ok(supply) => judge_supply(&supply).map_err(AskProblem::Refused),
        Err(problems) => Err(AskProblem::Entries(problems)),
    })
}

fn is_blank(readings: &SupplyReadingsEntry) -> bool {
    [
        &readings.across,
        &readings.a_neutral,
        &readings.b_neutral,
        &readings.a_ground,
        &readings.b_ground,
    ]
    .iter()
    .all(|typed| typed.is_blank())
}

/// The names of the five readings.
type Names = [&'static str; 5];

const IDLE: Names = [
    "idle.across",
    "idle.a_neutral",
    "idle.b_neutral",
    "idle.a_ground",
    "idle.b_ground",
];

const LOADED: Names = [
    "loaded.across",
    "loaded.a_neutral",
    "loaded.b_neutral",
    "loaded.a_ground",
    "loaded.b_ground",
];

fn readings(reader: &mut Reader, entry: &SupplyReadingsEntry, names: Names) -> SupplyReadings {
    let [across, a_neutral, b_neutral, a_ground, b_ground] = names;
    let field = &fields::MEASURED_VOLTS;
    SupplyReadings {
        across_v: reader.need(across, field, &entry.across),
        a_neutral_v: reader.need(a_neutral, field, &entry.a_neutral),
        b_neutral_v: reader.need(b_neutral, field, &entry.b_neutral),
        a_ground_v: reader.may(a_ground, field, &entry.a_ground),
        b_ground_v: reader.may(b_ground, field, &entry.b_ground),
    }
}
