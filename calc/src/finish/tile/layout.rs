//! The answer: how the tiles fall.

use serde::Serialize;

use super::ask::{MOST_TILES, Pattern, Start, TileAsk, TileRefusal};
use super::best::BestStart;
use super::field::Field;
use super::grid::{Grid, Seen};
use super::measure::Piece;
use super::offcuts::Cutting;
use super::places::{CutAt, at_doorway, snap_lines};
use super::rules::usual_allowance_percent;
use crate::floor::Point;
use crate::order::Order;

pub use super::frame::{Extent, Frame};
pub use super::measure::{Placed, Shape};
pub use super::places::{AtDoorway, DoorwayTile, Middle, SnapLine};
pub use super::trapezoid::Side;

/// Parts of an inch by which cut pieces are told apart.
pub const PARTS_OF_AN_INCH: f64 = 64.0;

/// A count that passes a whole number by less than this share is that number: rounding.
const ROUNDING: f64 = 1e-9;

/// Cut pieces of one size.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CutGroup {
    /// Along the tile's width, inches; of a piece that is not a rectangle, of its bounding box.
    pub width_in: f64,
    /// Along the tile's height, inches.
    pub height_in: f64,
    /// How the pieces look.
    pub shape: Shape,
    /// How many there are.
    pub count: u32,
}

/// The cuts at one wall or obstacle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct AtSide {
    /// Which.
    pub side: Side,
    /// Tiles that are cut there.
    pub cut_tiles: u32,
    /// The narrowest of them, inches across the cut: the shortest chord of the piece along the tile's sides, and at a
    /// slanted cut how far the piece reaches from it.
    pub narrowest_in: f64,
}

/// What to buy.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ToBuy {
    /// Tiles laid, a new one for each cut.
    pub tiles: u32,
    /// Those and the allowance.
    pub with_allowance: u32,
    /// In boxes.
    pub boxes: u32,
}

/// How the tiles fall.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Layout {
    /// What was asked.
    pub ask: TileAsk,
    /// The turn between the plan and the tiles' own directions.
    pub frame: Frame,
    /// The corner with the least x and y of tile 0, in the tiles' directions, inches.
    pub origin: Point,
    /// The field's bounding box in the tiles' directions.
    pub field_box: Extent,
    /// Every tile that shows, in the tiles' directions, from the lowest row and from the left; cut ones whole, for a
    /// drawing that clips them to the field.
    pub tiles: Vec<Placed>,
    /// Tiles that are laid whole.
    pub full_tiles: u32,
    /// Tiles that are cut.
    pub cut_tiles: u32,
    /// Those of them whose piece has square corners but does not fill its bounding box.
    pub notched_tiles: u32,
    /// Full and cut.
    pub tiles_touched: u32,
    /// The narrowest cut of all, inches; none where nothing is cut.
    pub narrowest_cut_in: Option<f64>,
    /// The least share of a tile that a cut leaves, each counted with its joint; 1 where nothing is cut.
    pub narrowest_share: f64,
    /// Area of the field, square inches.
    pub field_area_in2: f64,
    /// Area of tile that shows, square inches.
    pub tile_face_area_in2: f64,
    /// Area of joints, square inches: the field less the tile.
    pub joint_area_in2: f64,
    /// Cut pieces by size, the largest first.
    pub cuts: Vec<CutGroup>,
    /// Cuts at each wall and obstacle that has some.
    pub sides: Vec<AtSide>,
    /// Cuts of the wet saw, each straight cut of each tile once.
    pub saw_cuts: u32,
    /// Their length, inches.
    pub saw_length_in: f64,
    /// To buy with a new tile for each cut.
    pub without_offcuts: ToBuy,
    /// To buy with offcuts laid where they fit.
    pub with_offcuts: ToBuy,
    /// The rule of thumb beside it: the field's area and the usual allowance for cuts, over tile and joint.
    pub by_area_tiles: u32,
    /// The allowance of that rule, percent.
    pub by_area_allowance_percent: f64,
    /// Lines to snap.
    pub snap_lines: Vec<SnapLine>,
    /// Where the pattern meets each doorway.
    pub doorways: Vec<AtDoorway>,
}

/// Lays the tiles.
///
/// Row k has its lower edge at the origin's y and k times height and joint, and is shifted by the fractional part of k
/// times the offset, times width and joint. Each tile is held against the field: full, cut or outside.
///
/// # Errors
/// See [`TileRefusal`].
///
/// # Example
/// A 5 ft x 8 ft bathroom with 12 in tile, 1/8 in joints, from a corner: 4 columns and 7 rows of full tiles.
/// ```
/// use calc::finish::tile::{Buying, Pattern, Start, TileAsk, layout};
/// let ask = TileAsk {
///     outline: calc::floor::outline::rectangle(60.0, 96.0).unwrap(),
///     obstacles: vec![], openings: vec![],
///     width_in: 12.0, height_in: 12.0, joint_in: 0.125, edge_gap_in: 0.0,
///     pattern: Pattern::Straight, start: Start::Corner, least_share: 0.5,
///     buying: Buying { kerf_in: 0.125, may_turn: true, allowance_percent: 10.0, per_box: 10 },
/// };
/// let answer = layout(&ask)?;
/// assert_eq!((answer.full_tiles, answer.cut_tiles, answer.narrowest_cut_in), (28, 12, Some(11.125)));
/// // 40 tiles and 10 percent are 44: five boxes of ten.
/// assert_eq!((answer.without_offcuts.with_allowance, answer.without_offcuts.boxes), (44, 5));
/// # Ok::<(), calc::finish::tile::TileRefusal>(())
/// ```
pub fn layout(ask: &TileAsk) -> Result<Layout, TileRefusal> {
    if ask.start == Start::Best {
        let mut best = BestStart::new(ask)?;
        while !best.step().done() {}
        return best.layout();
    }
    let field = checked_field(ask)?;
    let grid = Grid::new(ask, origin_of(ask, &field, ask.start));
    Ok(lay(ask, &field, &grid))
}

/// The field of a question whose entries are in their ranges and that needs no more tiles than may be.
pub(super) fn checked_field(ask: &TileAsk) -> Result<Field, TileRefusal> {
    ask.refuse()?;
    let field = Field::new(ask)?;
    let (width_in, length_in) = (field.plan.width_in(), field.plan.length_in());
    if ask.width_in > width_in && ask.height_in > length_in {
        return Err(TileRefusal::LargerThanRoom {
            tile_width_in: ask.width_in,
            tile_height_in: ask.height_in,
            field_width_in: width_in,
            field_length_in: length_in,
        });
    }
    // The box round the field, as rows are walked through it whether or not there is floor.
    let about = field.extent.width_in() * field.extent.length_in()
        / ((ask.width_in + ask.joint_in) * (ask.height_in + ask.joint_in));
    if about > MOST_TILES {
        return Err(TileRefusal::TooMany { about });
    }
    Ok(field)
}

/// The corner of tile 0 that a start asks for, in the tiles' directions.
pub(super) fn origin_of(ask: &TileAsk, field: &Field, start: Start) -> Point {
    let corner = field.frame.from_plan(field.plan.low);
    let middle = field.frame.from_plan(field.plan.middle());
    // The first tile of a herringbone lies along x.
    let (mut width_in, mut height_in) = (ask.width_in, ask.height_in);
    if matches!(ask.pattern, Pattern::Herringbone { .. }) && width_in < height_in {
        (width_in, height_in) = (height_in, width_in);
    }
    match start {
        Start::Corner | Start::Best => corner,
        Start::CentredOnTile => {
            Point::new(middle.x_in - 0.5 * width_in, middle.y_in - 0.5 * height_in)
        }
        Start::CentredOnJoint => Point::new(
            middle.x_in + 0.5 * ask.joint_in,
            middle.y_in + 0.5 * ask.joint_in,
        ),
        Start::At(place) => field.frame.from_plan(place),
    }
}

/// The share of a tile that a cut leaves: both with a joint, so that two halves of one tile are halves.
pub(super) fn share_left(across_in: f64, of_in: f64, joint_in: f64) -> f64 {
    let share = (across_in + joint_in) / (of_in + joint_in);
    share.min(1.0)
}

pub(super) fn lay(ask: &TileAsk, field: &Field, grid: &Grid) -> Layout {
    let (mut long_in, mut short_in) = (ask.width_in, ask.height_in);
    if matches!(ask.pattern, Pattern::Herringbone { .. }) && long_in < short_in {
        (long_in, short_in) = (short_in, long_in);
    }
    let mut sum = Sum {
        field,
        joint_in: ask.joint_in,
        tiles: Vec::new(),
        full: 0,
        notched: 0,
        cut_area_in2: 0.0,
        share: 1.0,
        groups: Vec::new(),
        cuts: Vec::new(),
        saw_cuts: 0,
        saw_length_in: 0.0,
        cutting: Cutting::new(long_in, short_in, ask.buying),
    };
    let pitch_in = grid.pitch_x_in();
    grid.walk(field, &mut |seen| {
        match seen {
            Seen::Full(first, count) => sum.full(first, count, pitch_in),
            Seen::Cut(tile, piece) => sum.cut(tile, piece),
        }
        true
    });
    let whole_in2 = ask.width_in * ask.height_in;
    let face_in2 = f64::from(sum.full) * whole_in2 + sum.cut_area_in2;
    let cut_tiles = sum.tiles.len() as u32 - sum.full;
    let touched = sum.full + cut_tiles;
    sum.groups.order_by(|a, b| {
        (b.width_in * b.height_in)
            .total_cmp(&(a.width_in * a.height_in))
            .then(a.shape.cmp(&b.shape))
    });
    let sides = sum.by_side();
    let from_offcuts = sum.full + sum.cutting.tiles();
    let by_area_allowance_percent = usual_allowance_percent(ask.pattern);
    let modules = field.area_in2 / (grid.pitch_x_in() * grid.pitch_y_in());
    Layout {
        frame: field.frame,
        origin: grid.origin,
        field_box: field.extent,
        full_tiles: sum.full,
        cut_tiles,
        notched_tiles: sum.notched,
        tiles_touched: touched,
        narrowest_cut_in: narrowest(&sides),
        narrowest_share: sum.share,
        field_area_in2: field.area_in2,
        tile_face_area_in2: face_in2,
        joint_area_in2: (field.area_in2 - face_in2).max(0.0),
        cuts: sum.groups,
        sides,
        saw_cuts: sum.saw_cuts,
        saw_length_in: sum.saw_length_in,
        without_offcuts: to_buy(ask, touched),
        with_offcuts: to_buy(ask, from_offcuts.min(touched)),
        by_area_tiles: up(modules * (1.0 + by_area_allowance_percent / 100.0)),
        by_area_allowance_percent,
        snap_lines: snap_lines(ask, field, grid),
        doorways: ask
            .openings
            .iter()
            .enumerate()
            .map(|(index, opening)| at_doorway(ask, field, index, opening, &sum.tiles, &sum.cuts))
            .collect(),
        tiles: sum.tiles,
        ask: ask.clone(),
    }
}

/// What is added up while the tiles are walked over.
struct Sum<'a> {
    field: &'a Field,
    joint_in: f64,
    tiles: Vec<Placed>,
    full: u32,
    notched: u32,
    cut_area_in2: f64,
    share: f64,
    groups: Vec<CutGroup>,
    cuts: Vec<CutAt>,
    saw_cuts: u32,
    saw_length_in: f64,
    cutting: Cutting,
}

impl Sum<'_> {
    fn full(&mut self, first: Placed, count: u32, pitch_in: f64) {
        self.full += count;
        for index in 0..count {
            let mut tile = first;
            tile.corner.x_in += f64::from(index) * pitch_in;
            self.tiles.push(tile);
        }
    }

    fn cut(&mut self, tile: Placed, piece: &Piece) {
        self.tiles.push(tile);
        self.cut_area_in2 += piece.area_in2;
        self.saw_cuts += piece.saw_cuts(self.field);
        for touch in &piece.touches {
            self.saw_length_in += touch.length_in;
            if let Some(edge) = self.field.edges.get(touch.edge) {
                self.cuts.push(CutAt {
                    tile,
                    side: edge.side,
                    across_in: touch.across_in,
                });
            }
        }
        self.share = self.share.min(piece.share(self.joint_in));
        let shape = piece.shape();
        let fills = piece.width_in() * piece.height_in() - piece.area_in2 <= 1e-6 * piece.area_in2;
        if !piece.slanted && !fills {
            self.notched += 1;
        }
        let (mut width_in, mut height_in) = (piece.width_in(), piece.height_in());
        if tile.turned {
            (width_in, height_in) = (height_in, width_in);
        }
        self.group(width_in, height_in, shape);
        self.cutting.add(self.field, &tile, piece, shape);
    }

    fn group(&mut self, width_in: f64, height_in: f64, shape: Shape) {
        let parts = |size_in: f64| (size_in * PARTS_OF_AN_INCH).round();
        let known = self.groups.iter_mut().find(|group| {
            group.shape == shape
                && parts(group.width_in) == parts(width_in)
                && parts(group.height_in) == parts(height_in)
        });
        match known {
            Some(group) => group.count += 1,
            None => self.groups.push(CutGroup {
                width_in,
                height_in,
                shape,
                count: 1,
            }),
        }
    }

    /// The cuts gathered by wall and obstacle; a tile that an edge cuts twice counts once.
    fn by_side(&mut self) -> Vec<AtSide> {
        let mut sides: Vec<AtSide> = Vec::new();
        let mut last: Vec<Point> = Vec::new();
        for cut in &self.cuts {
            let corner = cut.tile.corner;
            match sides.iter().position(|known| known.side == cut.side) {
                Some(at) => {
                    let known = &mut sides[at];
                    known.narrowest_in = known.narrowest_in.min(cut.across_in);
                    if last[at] != corner {
                        known.cut_tiles += 1;
                        last[at] = corner;
                    }
                }
                None => {
                    sides.push(AtSide {
                        side: cut.side,
                        cut_tiles: 1,
                        narrowest_in: cut.across_in,
                    });
                    last.push(corner);
                }
            }
        }
        sides.order_by_key(|at| at.side);
        sides
    }
}

impl Piece {
    /// The least share of the tile that any of its cuts leaves.
    pub(super) fn share(&self, joint_in: f64) -> f64 {
        self.touches.iter().fold(1.0, |share, touch| {
            share.min(share_left(touch.across_in, touch.of_in, joint_in))
        })
    }
}

fn narrowest(sides: &[AtSide]) -> Option<f64> {
    sides
        .iter()
        .map(|at| at.narrowest_in)
        .min_by(f64::total_cmp)
}

fn to_buy(ask: &TileAsk, tiles: u32) -> ToBuy {
    let with_allowance = up(f64::from(tiles) * (1.0 + ask.buying.allowance_percent / 100.0));
    ToBuy {
        tiles,
        with_allowance,
        boxes: with_allowance.div_ceil(ask.buying.per_box.max(1)),
    }
}

/// Up to a whole number, but for rounding.
fn up(count: f64) -> u32 {
    (count * (1.0 - ROUNDING)).ceil() as u32
}
