//! Lines to snap, and where the pattern meets a doorway.

use serde::Serialize;

use super::ask::TileAsk;
use super::field::{Field, ROUNDING_IN, crossing, sides};
use super::grid::Grid;
use super::measure::Placed;
use super::trapezoid::Side;
use crate::floor::Point;
use crate::floor::geometry::OnWall;
use crate::floor::opening::OpeningSpan;
use crate::order::Order;

/// A chalk line from wall to wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SnapLine {
    /// Whether it runs along the rows; else at right angles to them.
    pub along_rows: bool,
    /// One end, on a wall: which, and how far from the wall's start.
    pub from: OnWall,
    /// The other end.
    pub to: OnWall,
}

/// A part of a doorway's width that one tile takes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DoorwayTile {
    /// From the left jamb, as seen from inside, inches.
    pub from_left_in: f64,
    /// To here, inches from the left jamb.
    pub to_left_in: f64,
    /// Whether the tile is full.
    pub full: bool,
}

/// What lies in the middle of a doorway.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Middle {
    /// A tile.
    Tile,
    /// A joint.
    Joint,
}

/// Where the pattern meets a doorway.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AtDoorway {
    /// The opening, its index from 0.
    pub opening: usize,
    /// The tiles along it, from the left jamb; empty where an obstacle stands in it.
    pub tiles: Vec<DoorwayTile>,
    /// How much of a tile shows at the left jamb, inches.
    pub left_in: f64,
    /// How much of a tile shows at the right jamb, inches.
    pub right_in: f64,
    /// The narrowest cut at the doorway's wall within the doorway, inches; none where no tile is cut there.
    pub narrowest_in: Option<f64>,
    /// What lies in the middle.
    pub middle: Middle,
    /// How far that tile's or joint's own middle is from the doorway's, to the right, inches.
    pub off_middle_in: f64,
}

/// A cut tile and its narrowest place at one side of the field.
#[derive(Clone, Copy, Debug)]
pub(super) struct CutAt {
    pub tile: Placed,
    pub side: Side,
    pub across_in: f64,
}

/// The two lines to snap: the joint lines through the tile corner nearest to the middle of the field, along the rows and
/// across them, each as long as the room lets it.
pub(super) fn snap_lines(ask: &TileAsk, field: &Field, grid: &Grid) -> Vec<SnapLine> {
    let middle = field.extent.middle();
    let (pitch_x, pitch_y) = (grid.pitch_x_in(), grid.pitch_y_in());
    let nearest =
        |middle: f64, origin: f64, pitch: f64| origin + ((middle - origin) / pitch).round() * pitch;
    let y = nearest(middle.y_in, grid.origin.y_in, pitch_y);
    let row = ((y - grid.origin.y_in) / pitch_y).round();
    let x = nearest(middle.x_in, grid.origin.x_in + grid.shift_in(row), pitch_x);
    let at = Point::new(x, y);
    [true, false]
        .into_iter()
        .filter_map(|along_rows| {
            let beyond = if along_rows {
                Point::new(x + 1.0, y)
            } else {
                Point::new(x, y + 1.0)
            };
            let frame = field.frame;
            let (from, to) = chord(ask, frame.to_plan(at), frame.to_plan(beyond))?;
            Some(SnapLine {
                along_rows,
                from: ask.outline.nearest_wall(from),
                to: ask.outline.nearest_wall(to),
            })
        })
        .collect()
}

/// The longest stretch inside the outline of the line through two places.
fn chord(ask: &TileAsk, at: Point, beyond: Point) -> Option<(Point, Point)> {
    let mut meets: Vec<f64> = Vec::new();
    for (a, b) in sides(ask.outline.corners()) {
        if let (Some(along), Some(on_wall)) =
            (crossing(at, beyond, a, b), crossing(a, b, at, beyond))
            && (-1e-9..=1.0 + 1e-9).contains(&on_wall)
        {
            meets.push(along);
        }
    }
    meets.order_by(f64::total_cmp);
    let place = |along: f64| {
        Point::new(
            at.x_in + along * (beyond.x_in - at.x_in),
            at.y_in + along * (beyond.y_in - at.y_in),
        )
    };
    let mut longest: Option<(f64, f64)> = None;
    for pair in meets.windows(2) {
        if let [from, to] = *pair
            && ask.outline.contains(place(f64::midpoint(from, to)))
            && longest.is_none_or(|(a, b)| to - from > b - a + ROUNDING_IN)
        {
            longest = Some((from, to));
        }
    }
    longest.map(|(from, to)| (place(from), place(to)))
}

/// Where the pattern meets an opening.
pub(super) fn at_doorway(
    ask: &TileAsk,
    field: &Field,
    index: usize,
    opening: &OpeningSpan,
    tiles: &[Placed],
    cuts: &[CutAt],
) -> AtDoorway {
    // Just inside the field, or past a joint where a joint lies along the wall.
    let mut seen = Vec::new();
    for off_in in [0.001, ask.joint_in + 0.001] {
        seen = along_opening(ask, field, opening, tiles, off_in);
        if !seen.is_empty() {
            break;
        }
    }
    let width_in = opening.span.width_in;
    let middle_in = 0.5 * width_in;
    let side = Side::Wall(opening.span.wall);
    let mut narrowest_in: Option<f64> = None;
    let mut shown: Vec<DoorwayTile> = Vec::with_capacity(seen.len());
    // Off the middle: of the tile over it, else of the joint between its neighbours.
    let (mut middle, mut off_middle_in) = (Middle::Joint, 0.0);
    let (mut before, mut after) = (None, None);
    for (from, to, tile) in &seen {
        for cut in cuts {
            if cut.side == side && cut.tile.corner == tile.corner {
                narrowest_in =
                    Some(narrowest_in.map_or(cut.across_in, |least| least.min(cut.across_in)));
            }
        }
        if *from <= middle_in && middle_in <= *to {
            middle = Middle::Tile;
            off_middle_in = f64::midpoint(*from, *to) - middle_in;
        } else if *to < middle_in {
            before = Some(*to);
        } else if after.is_none() {
            after = Some(*from);
        }
        shown.push(DoorwayTile {
            from_left_in: from.max(0.0),
            to_left_in: to.min(width_in),
            full: tile.full,
        });
    }
    if let (Middle::Joint, Some(before), Some(after)) = (middle, before, after) {
        off_middle_in = f64::midpoint(before, after) - middle_in;
    }
    let shown_in = |tile: Option<&DoorwayTile>| tile.map_or(0.0, |t| t.to_left_in - t.from_left_in);
    AtDoorway {
        opening: index,
        left_in: shown_in(shown.first()),
        right_in: shown_in(shown.last()),
        tiles: shown,
        narrowest_in,
        middle,
        off_middle_in,
    }
}

/// The tiles on the line along an opening, each with where it begins and ends, inches from the left jamb; the first and the
/// last may reach past the jambs.
fn along_opening<'a>(
    ask: &TileAsk,
    field: &Field,
    opening: &OpeningSpan,
    tiles: &'a [Placed],
    off_in: f64,
) -> Vec<(f64, f64, &'a Placed)> {
    let width_in = opening.span.width_in;
    let (left, right) = (opening.left, opening.right);
    let along = Point::new(
        (right.x_in - left.x_in) / width_in,
        (right.y_in - left.y_in) / width_in,
    );
    // From the left jamb to the right one the room lies on the right hand.
    let off_in = ask.edge_gap_in + off_in;
    let from = Point::new(
        left.x_in + off_in * along.y_in,
        left.y_in - off_in * along.x_in,
    );
    let to = Point::new(
        from.x_in + width_in * along.x_in,
        from.y_in + width_in * along.y_in,
    );
    let (from, to) = (field.frame.from_plan(from), field.frame.from_plan(to));
    let (dx, dy) = (
        (to.x_in - from.x_in) / width_in,
        (to.y_in - from.y_in) / width_in,
    );
    let mut seen: Vec<(f64, f64, &Placed)> = Vec::new();
    for tile in tiles {
        let spans = [
            inside(from.x_in, dx, tile.corner.x_in, tile.width_in),
            inside(from.y_in, dy, tile.corner.y_in, tile.height_in),
        ];
        let (begin, end) = (spans[0].0.max(spans[1].0), spans[0].1.min(spans[1].1));
        let shown_in = end.min(width_in) - begin.max(0.0);
        if shown_in <= ROUNDING_IN {
            continue;
        }
        let middle_in = begin.max(0.0) + 0.5 * shown_in;
        let middle = Point::new(from.x_in + middle_in * dx, from.y_in + middle_in * dy);
        if field.contains(middle) {
            seen.push((begin, end, tile));
        }
    }
    seen.order_by(|a, b| a.0.total_cmp(&b.0));
    seen
}

/// Between which lengths a line that starts at `from` and goes `by` an inch lies in a span.
fn inside(from: f64, by: f64, low: f64, size: f64) -> (f64, f64) {
    if by.abs() < 1e-12 {
        return if from > low && from < low + size {
            (f64::NEG_INFINITY, f64::INFINITY)
        } else {
            (f64::INFINITY, f64::NEG_INFINITY)
        };
    }
    let (a, b) = ((low - from) / by, (low + size - from) / by);
    (a.min(b), a.max(b))
}
