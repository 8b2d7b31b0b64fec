//! How large a gap each finish allows, who says so, and what that means for this floor.

use crate::order::Order;
use crate::quantity::decimal;
use std::sync::OnceLock;

use serde::Serialize;

use super::super::surface::Surface;
use super::straightedge::StraightedgeRefusal;
use super::walker::Walker;
use super::worst::{Top, WorstGap, worst_with};
use crate::job::Finish;
use crate::working::{Figure, Source, Step, Unit};

/// A gap larger than the limit by no more than this still passes, inches: it is roundoff. A gap equal to the limit
/// passes.
pub const EQUAL_IN: f64 = 1e-9;

/// A row of the table of flatness limits, `calc/tables/flatness.csv`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Limit {
    /// The row's stable name.
    pub id: &'static str,
    /// The finish that it is judged for; none for rows carried for reference.
    pub finish: Option<Finish>,
    /// What is limited.
    pub measure: Measure,
    /// What it is for.
    pub applies_to: &'static str,
    /// When it holds; empty: always.
    pub condition: &'static str,
    /// Length of the straightedge, or the distance over which heights are compared, inches; none for steps.
    pub straightedge_in: Option<f64>,
    /// The largest gap, step or difference allowed, inches.
    pub max_gap_in: f64,
    /// Who publishes it.
    pub source: &'static str,
    /// How well the figure is confirmed.
    pub status: Status,
    /// What else to know; may be empty.
    pub note: &'static str,
}

/// What a limit limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// The gap under a straightedge.
    Gap,
    /// The step between neighbours.
    Step,
    /// The difference in height of any two points.
    HeightDifference,
    /// The gap that a share of many measurements must keep; not judged here.
    ShareOfGaps,
}

/// How well a figure of a table is confirmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// Found in two or more public secondary sources.
    TwoCopies,
    /// Found in one public secondary source, and from memory.
    OneCopy,
    /// From memory, not confirmed.
    FromMemory,
    /// A rule of the trade without one published source.
    CommonPractice,
}

impl Limit {
    /// The source as a working names it.
    pub fn rule(&self) -> Source {
        match self.status {
            Status::CommonPractice => Source::CommonPractice,
            _ => Source::Published(self.source),
        }
    }
}

/// What a limit says of a floor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// The limit.
    pub limit: Limit,
    /// The worst gap found.
    pub worst: WorstGap,
    /// Whether the worst gap is no larger than the limit.
    pub passes: bool,
    /// How much of the limit is left, inches; negative by as much as the worst gap is too large.
    pub margin_in: f64,
    /// How it comes about.
    pub steps: Vec<Step>,
}

/// The table, every row of it.
///
/// # Example
/// ```
/// use calc::floor::flatness::table;
/// let large = table().iter().find(|row| row.id == "tile_large_10ft").unwrap();
/// assert_eq!((large.straightedge_in, large.max_gap_in), (Some(120.0), 0.125));
/// assert_eq!(large.source, "ANSI A108.02 (2013 and later editions)");
/// ```
pub fn table() -> &'static [Limit] {
    static TABLE: OnceLock<Vec<Limit>> = OnceLock::new();
    TABLE.get_or_init(|| data_lines().filter_map(row).collect())
}

/// The straightedge limits that a finish must meet, longest straightedge first.
///
/// # Example
/// Tile with any edge of 15 in and longer: 1/8 in under 10 ft, and 1/16 in under 2 ft.
/// ```
/// use calc::floor::flatness::limits_for;
/// use calc::job::Finish;
/// let limits: Vec<_> = limits_for(Finish::TileLarge).iter().map(|l| (l.straightedge_in, l.max_gap_in)).collect();
/// assert_eq!(limits, [(Some(120.0), 0.125), (Some(24.0), 0.0625)]);
/// ```
pub fn limits_for(finish: Finish) -> Vec<Limit> {
    let mut limits: Vec<Limit> = table()
        .iter()
        .filter(|row| row.finish == Some(finish) && row.measure == Measure::Gap)
        .cloned()
        .collect();
    limits.order_by(|a, b| {
        b.straightedge_in
            .unwrap_or(0.0)
            .total_cmp(&a.straightedge_in.unwrap_or(0.0))
    });
    limits
}

/// What each limit of a finish says of a floor, or of what lies on it.
///
/// `effort` as for [`worst_gap`](super::worst_gap). A floor passes on the worst gap found among the lines tried: an
/// estimate from the spots read, not a proof. A gap equal to the limit passes.
///
/// # Errors
/// As for [`worst_gap`](super::worst_gap).
///
/// # Example
/// One spot 3/16 in low in a 10 ft by 10 ft room: good for small tile, not for large.
/// ```
/// use calc::floor::{Outline, Point, Spot, Surface};
/// use calc::floor::flatness::{Top, USUAL_EFFORT, judge};
/// use calc::job::Finish;
/// let corners = [(0.0, 0.0), (120.0, 0.0), (120.0, 120.0), (0.0, 120.0)].map(|(x, y)| Point::new(x, y));
/// let mut spots: Vec<Spot> = corners.iter().map(|&at| Spot { at, height_in: 0.0 }).collect();
/// spots.push(Spot { at: Point::new(60.0, 60.0), height_in: -0.1875 });
/// let floor = Surface::new(&Outline::new(corners.to_vec())?, &spots)?;
/// let passes = |finish| -> Result<Vec<bool>, Box<dyn std::error::Error>> {
///     Ok(judge(&floor, Top::OldFloor, finish, USUAL_EFFORT)?.iter().map(|v| v.passes).collect())
/// };
/// assert_eq!(passes(Finish::TileSmall)?, [true, true]);
/// assert_eq!(passes(Finish::TileLarge)?, [false, true]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn judge(
    surface: &Surface,
    top: Top<'_>,
    finish: Finish,
    effort: usize,
) -> Result<Vec<Verdict>, StraightedgeRefusal> {
    judge_limits(surface, top, &limits_for(finish), effort)
}

/// What given straightedge limits say of a floor; rows that are no straightedge limit are passed over.
///
/// # Errors
/// As for [`worst_gap`](super::worst_gap).
pub fn judge_limits(
    surface: &Surface,
    top: Top<'_>,
    limits: &[Limit],
    effort: usize,
) -> Result<Vec<Verdict>, StraightedgeRefusal> {
    let walker = Walker::new(surface).ok_or(StraightedgeRefusal::NoFloor)?;
    let old_in: Vec<f64> = surface
        .vertices
        .iter()
        .map(|vertex| vertex.height_in)
        .collect();
    let (heights_in, lid) = top.heights_and_lid(&old_in);
    limits
        .iter()
        .filter(|limit| limit.measure == Measure::Gap)
        .filter_map(|limit| limit.straightedge_in.map(|length_in| (limit, length_in)))
        .map(|(limit, length_in)| {
            let worst = worst_with(
                &walker,
                surface,
                heights_in,
                lid,
                length_in,
                effort,
                &mut |_| {},
            )?;
            Ok(verdict(limit.clone(), worst))
        })
        .collect()
}

fn verdict(limit: Limit, worst: WorstGap) -> Verdict {
    let margin_in = limit.max_gap_in - worst.gap_in;
    let inches = |name, value| Figure {
        name,
        value,
        unit: Unit::In,
    };
    let steps = vec![
        Step {
            formula: "straightedge_gap",
            inputs: vec![
                inches("straightedge", worst.window_in),
                inches("contact1_height", worst.contact1_height_in),
                inches("contact2_height", worst.contact2_height_in),
                inches("contact1_to_gap", worst.contact1.distance_in(worst.gap_at)),
                inches(
                    "contact1_to_contact2",
                    worst.contact1.distance_in(worst.contact2),
                ),
                inches("floor_height", worst.gap_at_height_in),
            ],
            result: inches("gap", worst.gap_in),
            source: Source::Arithmetic,
        },
        Step {
            formula: "margin_to_limit",
            inputs: vec![
                inches("limit", limit.max_gap_in),
                inches("gap", worst.gap_in),
            ],
            result: inches("margin", margin_in),
            source: limit.rule(),
        },
    ];
    Verdict {
        passes: within(worst.gap_in, limit.max_gap_in),
        limit,
        worst,
        margin_in,
        steps,
    }
}

/// Whether a gap is no larger than a limit, both in inches; equal passes.
pub(super) fn within(gap_in: f64, limit_in: f64) -> bool {
    gap_in <= limit_in + EQUAL_IN
}

/// Rows of the table without its head.
fn data_lines() -> impl Iterator<Item = &'static str> {
    include_str!("../../../tables/flatness.csv")
        .lines()
        .filter(|line| !line.starts_with('#'))
        .skip(1)
}

fn row(line: &'static str) -> Option<Limit> {
    let [
        id,
        finish,
        measure,
        applies_to,
        condition,
        straightedge,
        max_gap,
        source,
        status,
        note,
    ] = cells(line).try_into().ok()?;
    Some(Limit {
        id,
        finish: match finish {
            "" => None,
            "tile_small" => Some(Finish::TileSmall),
            "tile_large" => Some(Finish::TileLarge),
            "resilient" => Some(Finish::Resilient),
            "wood_long" => Some(Finish::WoodLong),
            "wood_short" => Some(Finish::WoodShort),
            "floating" => Some(Finish::Floating),
            _ => return None,
        },
        measure: match measure {
            "gap" => Measure::Gap,
            "step" => Measure::Step,
            "height_difference" => Measure::HeightDifference,
            "share_of_gaps" => Measure::ShareOfGaps,
            _ => return None,
        },
        applies_to,
        condition,
        straightedge_in: if straightedge.is_empty() {
            None
        } else {
            Some(decimal(straightedge)?)
        },
        max_gap_in: decimal(max_gap)?,
        source,
        status: match status {
            "two_copies" => Status::TwoCopies,
            "one_copy" => Status::OneCopy,
            "from_memory" => Status::FromMemory,
            "common_practice" => Status::CommonPractice,
            _ => return None,
        },
        note,
    })
}

/// The cells of a line; a cell with a comma in it stands in quotes, and none holds a quote.
fn cells(line: &str) -> Vec<&str> {
    let mut cells = Vec::new();
    let mut rest = line;
    loop {
        let (cell, after) = match rest
            .strip_prefix('"')
            .and_then(|quoted| quoted.split_once('"'))
        {
            Some((cell, after)) => (cell, after.strip_prefix(',')),
            None => rest
                .split_once(',')
                .map_or((rest, None), |(cell, after)| (cell, Some(after))),
        };
        cells.push(cell);
        match after {
            Some(after) => rest = after,
            None => return cells,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::flatness::{USUAL_EFFORT, reference};

    const FINISHES: [Finish; 6] = [
        Finish::TileSmall,
        Finish::TileLarge,
        Finish::Resilient,
        Finish::WoodLong,
        Finish::WoodShort,
        Finish::Floating,
    ];

    #[test]
    fn every_row_is_read_and_makes_sense() {
        assert_eq!(table().len(), data_lines().count());
        assert_eq!(table().len(), 21);
        for row in table() {
            assert!(row.max_gap_in > 0.0 && row.max_gap_in <= 0.5, "{row:?}");
            assert_eq!(
                row.straightedge_in.is_none(),
                row.measure == Measure::Step,
                "{row:?}"
            );
            if let Some(length_in) = row.straightedge_in {
                assert!((12.0..=240.0).contains(&length_in), "{row:?}");
            }
            assert!(
                !row.source.is_empty() && !row.applies_to.is_empty(),
                "{row:?}"
            );
            assert_eq!(
                row.source == "common practice",
                row.status == Status::CommonPractice,
                "{row:?}"
            );
            assert!(
                row.finish.is_none() || row.measure == Measure::Gap,
                "{row:?}"
            );
            // Figures of the trade are whole thirty-seconds.
            assert_eq!((row.max_gap_in * 32.0).fract(), 0.0, "{row:?}");
            assert_eq!(table().iter().filter(|other| other.id == row.id).count(), 1);
        }
    }

    /// ANSI A108.02, ASTM F710 and the NWFA guidelines as quoted in the table; floating: common practice.
    #[test]
    fn the_limits_of_each_finish() {
        let limits = FINISHES.map(|finish| {
            let limits = limits_for(finish);
            limits
                .iter()
                .map(|l| (l.straightedge_in.unwrap(), l.max_gap_in))
                .collect::<Vec<_>>()
        });
        assert_eq!(limits[0], [(120.0, 0.25), (12.0, 0.0625)]);
        assert_eq!(limits[1], [(120.0, 0.125), (24.0, 0.0625)]);
        assert_eq!(limits[2], [(120.0, 0.1875), (12.0, 0.03125)]);
        assert_eq!(limits[3], [(120.0, 0.25), (72.0, 0.1875)]);
        assert_eq!(limits[4], [(120.0, 0.1875), (72.0, 0.125)]);
        assert_eq!(limits[5], [(120.0, 0.1875)]);
    }

    #[test]
    fn a_shorter_straightedge_has_a_smaller_limit() {
        for finish in FINISHES {
            for pair in limits_for(finish).windows(2) {
                assert!(
                    pair[0].straightedge_in > pair[1].straightedge_in
                        && pair[0].max_gap_in > pair[1].max_gap_in
                );
            }
        }
    }

    /// A pit exactly as deep as the limit for large tile under 10 ft, and one a thousandth deeper.
    #[test]
    fn equal_passes_and_a_hair_more_does_not() {
        for (depth_in, passes) in [(0.125, true), (0.126, false)] {
            let floor = reference::grid(5, 5, 30.0, |x, y| {
                if (x, y) == (60.0, 60.0) {
                    1.0 - depth_in
                } else {
                    1.0
                }
            });
            let verdicts = judge(&floor, Top::OldFloor, Finish::TileLarge, USUAL_EFFORT).unwrap();
            assert_eq!(verdicts[0].passes, passes, "{:?}", verdicts[0]);
            assert!((verdicts[0].margin_in - (0.125 - depth_in)).abs() < 1e-6);
        }
    }

    #[test]
    fn workings_recompute() {
        for survey in reference::surveys() {
            for verdict in judge(
                &survey.surface(),
                Top::OldFloor,
                Finish::WoodShort,
                USUAL_EFFORT,
            )
            .unwrap()
            {
                let [_, z1, z2, to_gap, span, floor] =
                    [0, 1, 2, 3, 4, 5].map(|i| verdict.steps[0].inputs[i].value);
                let gap = z1 + (z2 - z1) * to_gap / span - floor;
                assert!((gap - verdict.worst.gap_in).abs() < 1e-9, "{verdict:?}");
                assert_eq!(
                    verdict.passes,
                    verdict.worst.gap_in <= verdict.limit.max_gap_in
                );
            }
        }
    }
}
