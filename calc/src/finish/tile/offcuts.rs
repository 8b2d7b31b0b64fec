//! How many tiles it takes when offcuts are laid where they fit.
//!
//! A side of a piece that faces a joint must be a side the tile came with, or the edge would show the saw. Pieces are
//! taken from the largest; each is cut from the smallest offcut that will do, else from a new tile, by cuts right across
//! as a wet saw makes them. A piece that is not a rectangle is cut from its bounding box, and only what lies outside the
//! box is kept: the count is never too low. One slanted cut across a tile is told apart: what it leaves is the opposite
//! corner, and two halves of a diagonal come from one tile.

use super::ask::Buying;
use super::field::{Field, ROUNDING_IN};
use super::measure::{Piece, Placed, Shape};
use crate::floor::Point;
use crate::order::Order;

/// Sides in turning order: left, bottom, right, top, each a bit.
type Sides = u8;
const LEFT: Sides = 1;
const BOTTOM: Sides = 2;
const RIGHT: Sides = 4;
const TOP: Sides = 8;
const ALL_SIDES: Sides = LEFT | BOTTOM | RIGHT | TOP;

/// Offcuts narrower than this are waste, inches; common practice.
const LEAST_OFFCUT_IN: f64 = 0.5;

/// Offcuts past so many are thrown away, the smallest first: nobody keeps more, and the search stays short.
const MOST_KEPT: usize = 400;

/// A rectangle and those of its sides that are a tile's own.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Plate {
    width_in: f64,
    height_in: f64,
    own: Sides,
}

/// The corner of a tile that one slanted cut leaves: `turn` quarter turns from left bottom; how far the cut meets the two
/// sides of the corner, along the width and along the height, past the tile's own where it runs out elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Corner {
    turn: u8,
    along_width_in: f64,
    along_height_in: f64,
}

/// A piece that must be cut.
#[derive(Clone, Copy, Debug)]
pub(super) struct Need {
    plate: Plate,
    corner: Option<Corner>,
}

/// Collects what must be cut, and counts.
#[derive(Debug)]
pub(super) struct Cutting {
    tile: Plate,
    buying: Buying,
    needs: Vec<Need>,
}

impl Cutting {
    pub fn new(width_in: f64, height_in: f64, buying: Buying) -> Self {
        Self {
            tile: Plate {
                width_in,
                height_in,
                own: ALL_SIDES,
            },
            buying,
            needs: Vec::new(),
        }
    }

    /// Adds the piece of a cut tile.
    pub fn add(&mut self, field: &Field, tile: &Placed, piece: &Piece, shape: Shape) {
        let (x, y) = (tile.corner.x_in, tile.corner.y_in);
        let mut own = 0;
        for (side, off_in) in [
            (LEFT, piece.low.x_in - x),
            (BOTTOM, piece.low.y_in - y),
            (RIGHT, x + tile.width_in - piece.high.x_in),
            (TOP, y + tile.height_in - piece.high.y_in),
        ] {
            if off_in <= ROUNDING_IN {
                own |= side;
            }
        }
        let mut plate = Plate {
            width_in: piece.width_in(),
            height_in: piece.height_in(),
            own,
        };
        let mut corner = (shape == Shape::Slanted)
            .then(|| kept_corner(field, tile, piece))
            .flatten();
        if tile.turned {
            // Back to how the tile lay before it was turned a quarter: three quarters more.
            plate = plate.turned(3);
            corner = corner.map(|corner| corner.turned(3));
        }
        self.needs.push(Need { plate, corner });
    }

    /// Tiles from which all pieces can be cut.
    pub fn tiles(mut self) -> u32 {
        self.needs
            .order_by(|a, b| b.plate.area().total_cmp(&a.plate.area()));
        let turns: &[u8] = if self.buying.may_turn {
            &[0, 2, 1, 3]
        } else {
            &[0, 2]
        };
        let mut plates: Vec<Plate> = Vec::new();
        let mut corners: Vec<Corner> = Vec::new();
        let mut tiles = 0;
        for need in std::mem::take(&mut self.needs) {
            if let Some(corner) = need.corner
                && let Some(at) = corners
                    .iter()
                    .position(|from| turns.iter().any(|turn| from.yields(corner.turned(*turn))))
            {
                corners.remove(at);
                continue;
            }
            match smallest_fit(&plates, need.plate, turns) {
                Some((at, plate)) => {
                    let from = plates.remove(at);
                    from.keep_rest(plate, self.buying.kerf_in, &mut plates);
                }
                None => {
                    tiles += 1;
                    match need.corner {
                        Some(corner) => {
                            let rest = corner.rest(self.tile, self.buying.kerf_in);
                            // The largest first: the first that serves is then not the best, but one that serves.
                            corners.extend(rest);
                        }
                        None => self
                            .tile
                            .keep_rest(need.plate, self.buying.kerf_in, &mut plates),
                    }
                }
            }
            if plates.len() > MOST_KEPT {
                drop_smallest(&mut plates);
            }
        }
        tiles
    }
}

/// The smallest offcut from which a plate can be cut, and the plate as it lies in it.
fn smallest_fit(plates: &[Plate], need: Plate, turns: &[u8]) -> Option<(usize, Plate)> {
    let mut best: Option<(usize, Plate)> = None;
    let mut least_in2 = f64::INFINITY;
    for (at, plate) in plates.iter().enumerate() {
        if plate.area() >= least_in2 {
            continue;
        }
        for turn in turns {
            let lying = need.turned(*turn);
            if plate.yields(lying) {
                best = Some((at, lying));
                least_in2 = plate.area();
                break;
            }
        }
    }
    best
}

fn drop_smallest(plates: &mut Vec<Plate>) {
    let mut smallest = 0;
    let mut least_in2 = f64::INFINITY;
    for (at, plate) in plates.iter().enumerate() {
        if plate.area() < least_in2 {
            (smallest, least_in2) = (at, plate.area());
        }
    }
    plates.remove(smallest);
}

impl Plate {
    fn area(&self) -> f64 {
        self.width_in * self.height_in
    }

    /// Turned so many quarters counter-clockwise.
    fn turned(self, quarters: u8) -> Self {
        let mut plate = self;
        for _ in 0..quarters {
            plate = Self {
                width_in: plate.height_in,
                height_in: plate.width_in,
                // Left becomes bottom, bottom right, right top, top left.
                own: (plate.own << 1 | plate.own >> 3) & ALL_SIDES,
            };
        }
        plate
    }

    /// Whether a plate, as it lies, can be cut from this one.
    fn yields(&self, need: Self) -> bool {
        let fits = |need_in: f64, have_in: f64, both: Sides| {
            let spare_in = have_in - need_in;
            spare_in >= -ROUNDING_IN && (need.own & both != both || spare_in <= ROUNDING_IN)
        };
        need.own & !self.own == 0
            && fits(need.width_in, self.width_in, LEFT | RIGHT)
            && fits(need.height_in, self.height_in, BOTTOM | TOP)
    }

    /// Cuts a plate out and keeps what is left of this one, as two plates at most.
    fn keep_rest(&self, need: Self, kerf_in: f64, kept: &mut Vec<Self>) {
        let beside_in = self.width_in - need.width_in - kerf_in;
        let above_in = self.height_in - need.height_in - kerf_in;
        let (cut_x, cut_y) = (
            self.width_in - need.width_in > ROUNDING_IN,
            self.height_in - need.height_in > ROUNDING_IN,
        );
        let x_side = self.place(need, LEFT, RIGHT);
        let y_side = self.place(need, BOTTOM, TOP);
        let (x_far, y_far) = ((LEFT | RIGHT) & !x_side, (BOTTOM | TOP) & !y_side);
        // The rest beside the piece loses the side that the piece took; a part that ends at a cut loses that one too.
        let beside = |height_in: f64, whole: bool| Self {
            width_in: beside_in,
            height_in,
            own: self.own & !x_side & if whole { ALL_SIDES } else { !y_far },
        };
        let above = |width_in: f64, whole: bool| Self {
            width_in,
            height_in: above_in,
            own: self.own & !y_side & if whole { ALL_SIDES } else { !x_far },
        };
        let upright_first = [beside(self.height_in, true), above(need.width_in, !cut_x)];
        let level_first = [beside(need.height_in, !cut_y), above(self.width_in, true)];
        let largest = |two: &[Self; 2]| {
            two.iter()
                .map(|plate| if plate.useful() { plate.area() } else { 0.0 })
                .fold(0.0, f64::max)
        };
        let two = if largest(&level_first) > largest(&upright_first) {
            level_first
        } else {
            upright_first
        };
        kept.extend(two.into_iter().filter(Self::useful));
    }

    fn useful(&self) -> bool {
        self.width_in >= LEAST_OFFCUT_IN && self.height_in >= LEAST_OFFCUT_IN
    }

    /// The side at which a piece is cut out: one it needs, else one that is no loss.
    fn place(&self, need: Self, low: Sides, high: Sides) -> Sides {
        if need.own & low != 0 {
            low
        } else if need.own & high != 0 || self.own & high == 0 {
            high
        } else {
            low
        }
    }
}

impl Corner {
    /// Turned so many quarters counter-clockwise.
    fn turned(self, quarters: u8) -> Self {
        let mut corner = self;
        for _ in 0..quarters {
            corner = Self {
                turn: (corner.turn + 1) % 4,
                along_width_in: corner.along_height_in,
                along_height_in: corner.along_width_in,
            };
        }
        corner
    }

    fn yields(&self, need: Self) -> bool {
        self.turn == need.turn
            && need.along_width_in <= self.along_width_in + ROUNDING_IN
            && need.along_height_in <= self.along_height_in + ROUNDING_IN
    }

    /// The opposite corner of the tile, with the saw's kerf taken off.
    fn rest(&self, tile: Plate, kerf_in: f64) -> Option<Self> {
        let (a, b) = (self.along_width_in, self.along_height_in);
        // The cut is x / a + y / b = 1; a kerf farther off it is 1 + kerf x sqrt(1 / a^2 + 1 / b^2).
        let left =
            tile.width_in / a + tile.height_in / b - 1.0 - kerf_in * (1.0 / a).hypot(1.0 / b);
        (left > 0.0 && a * left >= LEAST_OFFCUT_IN && b * left >= LEAST_OFFCUT_IN).then_some(Self {
            turn: (self.turn + 2) % 4,
            along_width_in: a * left,
            along_height_in: b * left,
        })
    }
}

/// The corner that a single slanted cut leaves of a tile; none where there are several cuts.
fn kept_corner(field: &Field, tile: &Placed, piece: &Piece) -> Option<Corner> {
    if piece.saw_cuts(field) != 1 {
        return None;
    }
    let edge = piece.edges(field).next()?;
    let normal = edge.normal();
    let off_in = |point: Point| {
        (point.x_in - edge.a.x_in) * normal.x_in + (point.y_in - edge.a.y_in) * normal.y_in
    };
    // On which side of the cut the piece lies.
    let mut side = 0.0_f64;
    for corner in piece.corners() {
        if off_in(corner).abs() > side.abs() {
            side = off_in(corner);
        }
    }
    let (x0, y0) = (tile.corner.x_in, tile.corner.y_in);
    let (x1, y1) = (x0 + tile.width_in, y0 + tile.height_in);
    let mut found = None;
    let mut depth_in = 0.0;
    for (turn, (x, y)) in [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
        .into_iter()
        .enumerate()
    {
        let depth = off_in(Point::new(x, y)) * side.signum();
        if depth > depth_in {
            depth_in = depth;
            found = Some(Corner {
                turn: turn as u8,
                along_width_in: depth / normal.x_in.abs(),
                along_height_in: depth / normal.y_in.abs(),
            });
        }
    }
    found
}
