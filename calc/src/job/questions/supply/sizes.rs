//! What a room needs by its sizes alone, for a quote that is checked without a job.
//!
//! Source: common practice of the trade. A can of wall paint states 350 to 400 square feet a gallon, two coats are
//! usual, a primer gets one; board comes in sheets of 4 by 8 ft; what a bag of a pour makes and what its primer covers are
//! the usual entries of a room.

use super::{IN_PER_FT, Needed};
use crate::job::fields;
use crate::job::questions::{EntryProblem, Reader};
use crate::job::sums::{QuoteSum, QuoteWork};
use crate::job::{PourEntry, Units};
use crate::quantity::Volume;
use crate::supply::need::{Kind, Need};
use crate::supply::unit::{Dimension, Unit};

/// What a can covers at the most, usually and at the least, square feet a gallon: less paint than the first asks can't
/// cover.
const SPREAD_FT2_PER_GAL: [f64; 3] = [400.0, 350.0, 300.0];
const COATS: f64 = 2.0;
const SHEET_FT2: f64 = 32.0;
const IN2_PER_FT2: f64 = 144.0;

/// What a rectangular room needs for the work that is quoted.
///
/// # Errors
/// Every entry that is missing or refused.
///
/// ```
/// use calc::job::{Typed, questions::supply::sizes::needs_by_sizes, sums::{QuoteSum, QuoteWork}};
/// let room = QuoteSum { width: Typed::plain("10'"), length: Typed::plain("12'"), work: vec![QuoteWork::Tile], ..QuoteSum::default() };
/// assert_eq!(needs_by_sizes(&room).unwrap()[0].exact, 120.0); // square feet
/// ```
pub fn needs_by_sizes(sum: &QuoteSum) -> Result<Vec<Need>, Vec<EntryProblem>> {
    let does = |work: QuoteWork| sum.work.contains(&work);
    let walls = does(QuoteWork::Board) || does(QuoteWork::Paint);
    let mut reader = Reader::default();
    let width_in = reader.need("width", &fields::SIDE, &sum.width);
    let length_in = reader.need("length", &fields::SIDE, &sum.length);
    let height_in = if walls {
        reader.need("height", &fields::WALL_HEIGHT, &sum.height)
    } else {
        0.0
    };
    let openings_ft2 = reader
        .may("openings", &fields::FLOOR_AREA, &sum.openings)
        .map_or(0.0, |in2| in2 / IN2_PER_FT2);
    let doorways_in = reader
        .may("doorways", &fields::SIDE, &sum.doorways)
        .unwrap_or(0.0);
    let depth_in = if does(QuoteWork::Pour) {
        reader.need("depth", &fields::DEPTH, &sum.depth)
    } else {
        0.0
    };
    let usual = PourEntry::usual(Units::FeetInches);
    let yield_in3 = reader.need("bag_yield", &fields::BAG_YIELD, &usual.bag_yield);
    let primer_in2 = reader.need(
        "primer_coverage",
        &fields::PRIMER_COVERAGE,
        &usual.primer_coverage,
    );

    let floor_ft2 = width_in * length_in / IN2_PER_FT2;
    let round_ft = 2.0 * (width_in + length_in) / IN_PER_FT;
    let between_ft = (round_ft - doorways_in / IN_PER_FT).max(0.0);
    let wall_ft2 = (round_ft * height_in / IN_PER_FT - openings_ft2).max(0.0);
    let mut needed = Needed::default();
    let mut add = |need: Need| {
        if need.exact > 0.0 {
            needed.needs.push(need);
        }
    };
    if does(QuoteWork::Pour) {
        add(Need::new(
            Kind::Pour,
            Dimension::Volume,
            floor_ft2 * depth_in / IN_PER_FT,
        )
        .sold_by(Unit::Bag, Volume::from_in3(yield_in3).ft3()));
        // The reader has refused a coverage of nothing.
        add(Need::new(
            Kind::PourPrimer,
            Dimension::Liquid,
            floor_ft2 * IN2_PER_FT2 / primer_in2.max(1.0),
        ));
        add(Need::new(Kind::EdgeStrip, Dimension::Length, between_ft));
    }
    if does(QuoteWork::Tile) {
        add(Need::new(Kind::Tile, Dimension::Area, floor_ft2));
        add(Need::new(Kind::Membrane, Dimension::Area, floor_ft2));
    }
    if does(QuoteWork::Board) {
        add(
            Need::new(Kind::Board, Dimension::Area, wall_ft2 + floor_ft2)
                .sold_by(Unit::Sheet, SHEET_FT2),
        );
    }
    if does(QuoteWork::Paint) {
        if does(QuoteWork::Board) {
            add(painted(Kind::PaintPrimer, wall_ft2 + floor_ft2, 1.0));
        }
        add(painted(Kind::WallPaint, wall_ft2, COATS));
        add(painted(Kind::CeilingPaint, floor_ft2, COATS));
    }
    if does(QuoteWork::Trim) {
        add(Need::new(Kind::Base, Dimension::Length, between_ft));
    }
    reader.finish(needed.needs)
}

/// Paint by what a can covers: the least at the most it covers, and up from there.
fn painted(kind: Kind, area_ft2: f64, coats: f64) -> Need {
    let [most, usual, least] = SPREAD_FT2_PER_GAL;
    let need = Need::new(kind, Dimension::Liquid, area_ft2 * coats / most);
    let more = |spread: f64, waste: f64| (most / spread * (1.0 + waste / 100.0) - 1.0) * 100.0;
    Need {
        usual_percent: more(usual, need.usual_percent),
        generous_percent: more(least, need.usual_percent),
        ..need
    }
}
