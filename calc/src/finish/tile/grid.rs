//! Where the tiles of a pattern lie, and which of them the field touches.

use super::ask::{Pattern, TileAsk};
use super::field::{Field, ROUNDING_IN};
use super::frame::Extent;
use super::measure::{Fate, Piece, Placed};
use super::trapezoid::Edge;
use crate::floor::Point;
use crate::order::Order;

/// A pattern laid from an origin, in the tiles' directions.
#[derive(Clone, Copy, Debug)]
pub(super) struct Grid {
    pub pattern: Pattern,
    pub width_in: f64,
    pub height_in: f64,
    pub joint_in: f64,
    /// The corner with the least x and y of tile 0 in row 0.
    pub origin: Point,
}

/// What a walk over the tiles comes across.
pub(super) enum Seen<'a> {
    /// So many full tiles in a row, the first of them in its place, the next a pitch further along x.
    Full(Placed, u32),
    /// A cut tile.
    Cut(Placed, &'a Piece),
}

/// Looks at what a walk comes across, and says whether to walk on.
type See<'a> = &'a mut dyn FnMut(Seen<'_>) -> bool;

impl Grid {
    pub fn new(ask: &TileAsk, origin: Point) -> Self {
        Self {
            pattern: ask.pattern,
            width_in: ask.width_in,
            height_in: ask.height_in,
            joint_in: ask.joint_in,
            origin,
        }
    }

    pub fn pitch_x_in(&self) -> f64 {
        self.width_in + self.joint_in
    }

    pub fn pitch_y_in(&self) -> f64 {
        self.height_in + self.joint_in
    }

    /// How far row `row` is shifted along x, inches.
    pub fn shift_in(&self, row: f64) -> f64 {
        let turns = row * self.pattern.offset();
        // A third three times over is a whole, but for rounding.
        let share = (turns - turns.floor() + 1e-9) % 1.0;
        (share - 1e-9).max(0.0) * self.pitch_x_in()
    }

    /// Shows every tile that the field touches, from the lowest row and from the left, while it is asked to go on.
    pub fn walk(&self, field: &Field, see: See<'_>) {
        let mut piece = Piece::default();
        match self.pattern {
            Pattern::Herringbone { .. } => self.walk_herringbone(field, &mut piece, see),
            _ => self.walk_rows(field, &mut piece, see),
        }
    }

    fn walk_rows(&self, field: &Field, piece: &mut Piece, see: See<'_>) {
        let Extent { low, high } = field.extent;
        let (pitch_x, pitch_y) = (self.pitch_x_in(), self.pitch_y_in());
        let mut row = ((low.y_in - self.origin.y_in) / pitch_y).floor() - 1.0;
        let mut busy: Vec<[f64; 2]> = Vec::new();
        loop {
            let y = self.origin.y_in + row * pitch_y;
            if y >= high.y_in {
                return;
            }
            busy_spans(field, [y, y + self.height_in], &mut busy);
            let left = self.origin.x_in + self.shift_in(row);
            let mut column = ((low.x_in - left) / pitch_x).floor() - 1.0;
            loop {
                let x = left + column * pitch_x;
                if x >= high.x_in {
                    break;
                }
                let tile = self.tile(Point::new(x, y), false);
                let count = self.clear_run(x, high.x_in, &busy);
                if count == 0.0 {
                    if !fate(field, piece, tile, see) {
                        return;
                    }
                    column += 1.0;
                } else {
                    // No edge of the field comes near: all in or all out.
                    let full = Placed { full: true, ..tile };
                    if field.contains(tile.middle()) && !see(Seen::Full(full, count as u32)) {
                        return;
                    }
                    column += count;
                }
            }
            row += 1.0;
        }
    }

    /// How many tiles from the one at `x` on no busy span touches; those past the field count too.
    fn clear_run(&self, x: f64, end: f64, busy: &[[f64; 2]]) -> f64 {
        let mut free_to = end;
        for [from, to] in busy {
            if *to > x + ROUNDING_IN {
                free_to = *from;
                break;
            }
        }
        // The last tile ends a joint before the pitch does.
        let count = (free_to + ROUNDING_IN - x + self.joint_in) / self.pitch_x_in();
        count.floor().max(0.0)
    }

    /// Steps of short and long tile that repeat a herringbone: (b, b) and (a + b, b - a), a and b the sides with joint.
    fn walk_herringbone(&self, field: &Field, piece: &mut Piece, see: See<'_>) {
        let Extent { low, high } = field.extent;
        let (a, b) = self.herringbone_modules();
        // Place = origin + m (b, b) + n (a + b, b - a): n follows from x - y = n 2a, m from the rest.
        let (ox, oy) = (self.origin.x_in, self.origin.y_in);
        let reach = a + b;
        let (least, most) = (
            (low.x_in - reach) - (high.y_in + reach) - ox + oy,
            (high.x_in + reach) - (low.y_in - reach) - ox + oy,
        );
        let mut n = (least / (2.0 * a)).floor();
        while n <= (most / (2.0 * a)).ceil() {
            let (x, y) = (ox + n * (a + b), oy + n * (b - a));
            let from = (low.x_in - reach - x).max(low.y_in - reach - y) / b;
            let to = (high.x_in + reach - x).min(high.y_in + reach - y) / b;
            let mut m = from.floor();
            while m <= to {
                let (x, y) = (x + m * b, y + m * b);
                let beside = Point::new(x + a, y + b - a);
                let on = fate(field, piece, self.tile(Point::new(x, y), false), see)
                    && fate(field, piece, self.tile(beside, true), see);
                if !on {
                    return;
                }
                m += 1.0;
            }
            n += 1.0;
        }
    }

    /// The longer and the shorter side of a tile, each with its joint, inches.
    pub fn herringbone_modules(&self) -> (f64, f64) {
        let (a, b) = (self.pitch_x_in(), self.pitch_y_in());
        (a.max(b), a.min(b))
    }

    /// The tile with this corner; in a herringbone the first lies along x, the other along y.
    fn tile(&self, corner: Point, turned: bool) -> Placed {
        let (mut width_in, mut height_in) = (self.width_in, self.height_in);
        if matches!(self.pattern, Pattern::Herringbone { .. }) && width_in < height_in {
            (width_in, height_in) = (height_in, width_in);
        }
        if turned {
            (width_in, height_in) = (height_in, width_in);
        }
        Placed {
            corner,
            width_in,
            height_in,
            turned,
            full: false,
        }
    }
}

impl Placed {
    pub(super) fn middle(&self) -> Point {
        Point::new(
            self.corner.x_in + 0.5 * self.width_in,
            self.corner.y_in + 0.5 * self.height_in,
        )
    }

    /// Whether an edge may pass through the tile: both the box round it and its line do.
    fn near(&self, edge: &Edge) -> bool {
        let middle = self.middle();
        let (half_x, half_y) = (0.5 * self.width_in, 0.5 * self.height_in);
        let apart = |a: f64, b: f64, middle: f64, half: f64| {
            a.max(b) < middle - half || a.min(b) > middle + half
        };
        let (a, b) = (edge.a, edge.b);
        if apart(a.x_in, b.x_in, middle.x_in, half_x) || apart(a.y_in, b.y_in, middle.y_in, half_y)
        {
            return false;
        }
        let (dx, dy) = (b.x_in - a.x_in, b.y_in - a.y_in);
        let off = dx * (middle.y_in - a.y_in) - dy * (middle.x_in - a.x_in);
        off.abs() <= dx.abs() * half_y + dy.abs() * half_x
    }
}

/// Shows one tile if the field touches it; whether to go on.
fn fate(field: &Field, piece: &mut Piece, tile: Placed, see: See<'_>) -> bool {
    let (x, y) = (tile.corner.x_in, tile.corner.y_in);
    let Extent { low, high } = field.extent;
    if x >= high.x_in
        || y >= high.y_in
        || x + tile.width_in <= low.x_in
        || y + tile.height_in <= low.y_in
    {
        return true;
    }
    let full = Placed { full: true, ..tile };
    if !field.edges.iter().any(|edge| tile.near(edge)) {
        // All in or all out.
        return !field.contains(tile.middle()) || see(Seen::Full(full, 1));
    }
    match piece.take(field, &tile) {
        Fate::Outside => true,
        Fate::Full => see(Seen::Full(full, 1)),
        Fate::Cut => see(Seen::Cut(tile, piece)),
    }
}

/// The spans of x where an edge of the field passes between two level lines, from the left.
fn busy_spans(field: &Field, [low, high]: [f64; 2], busy: &mut Vec<[f64; 2]>) {
    busy.clear();
    for edge in &field.edges {
        let (bottom, top) = if edge.a.y_in <= edge.b.y_in {
            (edge.a, edge.b)
        } else {
            (edge.b, edge.a)
        };
        if top.y_in <= low + ROUNDING_IN || bottom.y_in >= high - ROUNDING_IN {
            continue;
        }
        let at = |level: f64| {
            let level = level.clamp(bottom.y_in, top.y_in);
            if bottom.y_in == top.y_in {
                return bottom.x_in;
            }
            let share = (level - bottom.y_in) / (top.y_in - bottom.y_in);
            bottom.x_in + share * (top.x_in - bottom.x_in)
        };
        let (from, to) = if edge.level() {
            (bottom.x_in, top.x_in)
        } else {
            (at(low), at(high))
        };
        busy.push([from.min(to), from.max(to)]);
    }
    // Few at most; spans that meet stay apart, which costs nothing.
    busy.order_by(|a, b| a[0].total_cmp(&b[0]));
}
