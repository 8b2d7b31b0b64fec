//! The pour: what it must keep, its bags, its pace.

use super::room::Placed;
use super::survey::Readings;
use super::{EntryProblem, Reader};
use crate::floor::mixing::{BagAsk, PaceAsk};
use crate::floor::pour::{HeightKind, HeightRule, PourAsk};
use crate::floor::survey::height_in;
use crate::job::{HeightRuleKind, PourEntry, Room, fields};
use crate::quantity::{EntryRefusal, Slope, Volume};

/// What the pour must keep: cover, tilt limit, heights at spots, heights along openings.
///
/// A rule goes by its row's id, a height along an opening by the opening's. A rule without a spot is told as a
/// problem, and so is the height at an opening that stands in no wall.
///
/// # Errors
/// Every entry that is missing or refused.
pub fn ask(
    room: &Room,
    openings: &[Placed],
    readings: &Readings,
) -> Result<PourAsk, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let cover_in = reader.need("cover", &fields::COVER, &room.pour.cover);
    let tilt = reader.may("tilt_limit", &fields::TILT, &room.pour.tilt_limit);
    let mut rules = Vec::new();
    for rule in &room.pour.height_rules {
        reader.row(rule.id);
        let reading = reader.need("reading", &fields::READING, &rule.reading);
        let Some(at) = rule.spot.and_then(|spot| readings.place_of(spot)) else {
            reader.refuse("spot", EntryRefusal::Blank);
            continue;
        };
        rules.push(HeightRule {
            points: vec![at],
            kind: match rule.rule {
                HeightRuleKind::AtMost => HeightKind::AtMost,
                HeightRuleKind::Meet => HeightKind::Exactly,
            },
            height_in: height_in(room.survey.way, reading),
            id: rule.id,
        });
    }
    for opening in &room.openings {
        reader.row(opening.id);
        let Some(reading) = reader.may("pour_at_most", &fields::READING, &opening.pour_at_most)
        else {
            continue;
        };
        let Some(placed) = openings.iter().find(|placed| placed.id == opening.id) else {
            reader.refuse("pour_at_most", EntryRefusal::NoPlace);
            continue;
        };
        rules.push(HeightRule {
            points: vec![placed.span.left, placed.span.right],
            kind: HeightKind::AtMost,
            height_in: height_in(room.survey.way, reading),
            id: opening.id,
        });
    }
    reader.finish(PourAsk {
        cover_in,
        tilt_limit_in_per_4ft: tilt.map(|ratio| Slope::from_ratio(ratio).in_per_4ft()),
        rules,
    })
}

/// The deepest single lift, inches; nothing where none was entered.
///
/// # Errors
/// The entry, where it is refused.
pub fn lift_limit_in(entry: &PourEntry) -> Result<Option<f64>, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let limit = reader.may("lift_limit", &fields::LIFT, &entry.lift_limit);
    reader.finish(limit)
}

/// The bags for a volume.
///
/// # Errors
/// Every entry that is missing or refused; the water alone may be blank.
pub fn bag_ask(entry: &PourEntry, volume_ft3: f64) -> Result<BagAsk, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let yield_in3 = reader.need("bag_yield", &fields::BAG_YIELD, &entry.bag_yield);
    let allowance_percent = reader.need(
        "allowance_percent",
        &fields::ALLOWANCE,
        &entry.allowance_percent,
    );
    let water_in3 = reader.may("bag_water", &fields::BAG_WATER, &entry.bag_water);
    reader.finish(BagAsk {
        volume_ft3,
        allowance_percent,
        yield_ft3_per_bag: Volume::from_in3(yield_in3).ft3(),
        water_qt_per_bag: water_in3.map(|in3| Volume::from_in3(in3).qt()),
    })
}

/// The pace of mixing that many bags.
///
/// # Errors
/// Every entry that is missing or refused.
pub fn pace_ask(entry: &PourEntry, bags: u32) -> Result<PaceAsk, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let bags_per_batch = reader.need(
        "bags_per_batch",
        &fields::BAGS_PER_BATCH,
        &entry.bags_per_batch,
    );
    let minutes_per_batch = reader.need(
        "minutes_per_batch",
        &fields::MINUTES,
        &entry.minutes_per_batch,
    );
    let pot_life_minutes = reader.need(
        "pot_life_minutes",
        &fields::MINUTES,
        &entry.pot_life_minutes,
    );
    reader.finish(PaceAsk {
        bags,
        // Whole and from 1 to 100, by its field.
        bags_per_batch: bags_per_batch as u32,
        minutes_per_batch,
        pot_life_minutes,
    })
}

/// The area that a gallon of primer covers, square inches; nothing where none was entered.
///
/// # Errors
/// The entry, where it is refused.
pub fn primer_coverage_in2(entry: &PourEntry) -> Result<Option<f64>, Vec<EntryProblem>> {
    let mut reader = Reader::default();
    let coverage = reader.may(
        "primer_coverage",
        &fields::PRIMER_COVERAGE,
        &entry.primer_coverage,
    );
    reader.finish(coverage)
}
