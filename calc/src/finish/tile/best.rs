//! The search for the best start, a step at a time.

use serde::Serialize;

use super::ask::{Pattern, Start, TileAsk, TileRefusal};
use super::field::{Field, ROUNDING_IN};
use super::grid::{Grid, Seen};
use super::layout::{Layout, checked_field, lay, origin_of};
use crate::floor::Point;
use crate::order::Order;

/// The most lines tried along one direction.
const MOST_LINES: usize = 48;

/// Evenly spaced lines tried along one direction where walls are not along the tiles, or tiles not in rows.
const EVEN_LINES: u32 = 8;

/// Shares that differ by less than this are one: rounding.
const SAME_SHARE: f64 = 1e-6;

/// A share that misses what is wanted by less than this does not: rounding.
const ROUNDING: f64 = 1e-9;

/// How a start does.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Score {
    /// Whether no cut leaves less than the share asked for.
    pub wide_enough: bool,
    /// The least share of a tile that a cut leaves; 1 where nothing is cut.
    pub narrowest_share: f64,
    /// Tiles touched, a new one for each cut.
    pub tiles: u32,
    /// Those of them that are cut.
    pub cut_tiles: u32,
}

impl Score {
    /// Whether this beats another: wide enough first, then the fewest tiles, then the fewest cuts, then the widest; where
    /// neither is wide enough, the wider first.
    pub fn beats(&self, other: &Self) -> bool {
        if self.wide_enough != other.wide_enough {
            return self.wide_enough;
        }
        let wider = self.narrowest_share > other.narrowest_share + SAME_SHARE;
        let narrower = self.narrowest_share < other.narrowest_share - SAME_SHARE;
        if !self.wide_enough && (wider || narrower) {
            return wider;
        }
        if self.tiles != other.tiles {
            return self.tiles < other.tiles;
        }
        if self.cut_tiles != other.cut_tiles {
            return self.cut_tiles < other.cut_tiles;
        }
        wider
    }
}

/// How far a search is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Progress {
    /// Starts tried.
    pub tried: usize,
    /// Starts to try in all.
    pub of: usize,
    /// The best so far.
    pub best: Option<Score>,
}

impl Progress {
    /// Whether every start was tried.
    pub const fn done(&self) -> bool {
        self.tried >= self.of
    }
}

/// A search for the best start that can be left at any step.
///
/// A layout only changes for the better where a joint comes to a wall, where a cut comes to the least share, or where two
/// walls have equal cuts: these places are tried in both directions, and with them the corner and the two centred starts,
/// so that none of those is ever better. Where walls run at a slant to the tiles, or in a herringbone, evenly spaced
/// places are tried too.
///
/// ```
/// use calc::finish::tile::{BestStart, Buying, Pattern, Start, TileAsk};
/// let ask = TileAsk {
///     outline: calc::floor::outline::rectangle(60.0, 96.0).unwrap(),
///     obstacles: vec![], openings: vec![],
///     width_in: 12.0, height_in: 12.0, joint_in: 0.125, edge_gap_in: 0.0,
///     pattern: Pattern::Straight, start: Start::Best, least_share: 0.5,
///     buying: Buying { kerf_in: 0.125, may_turn: true, allowance_percent: 10.0, per_box: 10 },
/// };
/// let mut search = BestStart::new(&ask)?;
/// while !search.step().done() {} // a page does a few steps, draws, and comes back
/// // 5 by 8 tiles are the fewest for 60 x 96 in, and every cut is wide.
/// assert_eq!(search.layout()?.tiles_touched, 40);
/// # Ok::<(), calc::finish::tile::TileRefusal>(())
/// ```
#[derive(Debug)]
pub struct BestStart {
    ask: TileAsk,
    field: Field,
    named: Vec<Point>,
    xs: Vec<f64>,
    ys: Vec<f64>,
    tried: usize,
    best: Option<(Score, Point)>,
}

impl BestStart {
    /// Begins a search; the start named in the question is not looked at.
    ///
    /// # Errors
    /// See [`TileRefusal`].
    pub fn new(ask: &TileAsk) -> Result<Self, TileRefusal> {
        let field = checked_field(ask)?;
        let named: Vec<Point> = [Start::Corner, Start::CentredOnTile, Start::CentredOnJoint]
            .into_iter()
            .map(|start| origin_of(ask, &field, start))
            .collect();
        let grid = Grid::new(ask, Point::default());
        let loose = matches!(ask.pattern, Pattern::Herringbone { .. })
            || field.edges.iter().any(super::trapezoid::Edge::slanted);
        let mut walls_x = Vec::new();
        let mut walls_y = Vec::new();
        for edge in &field.edges {
            if edge.upright() {
                walls_x.push(edge.a.x_in);
            }
            if edge.level() {
                walls_y.push(edge.a.y_in);
            }
        }
        let mut xs = Lines::new(ask, ask.width_in, walls_x);
        let mut ys = Lines::new(ask, ask.height_in, walls_y);
        for start in &named {
            xs.add(start.x_in);
            ys.add(start.y_in);
        }
        xs.at_walls(&shifts(&grid));
        ys.at_walls(&[0.0]);
        if loose {
            xs.evenly(named.first().map_or(0.0, |start| start.x_in));
            ys.evenly(named.first().map_or(0.0, |start| start.y_in));
        }
        Ok(Self {
            ask: ask.clone(),
            field,
            named,
            xs: xs.found,
            ys: ys.found,
            tried: 0,
            best: None,
        })
    }

    /// Tries one more start.
    pub fn step(&mut self) -> Progress {
        if let Some(origin) = self.start(self.tried) {
            self.tried += 1;
            if let Some(score) = self.score(origin)
                && self.best.is_none_or(|(best, _)| score.beats(&best))
            {
                self.best = Some((score, origin));
            }
        }
        self.progress()
    }

    /// How far it is.
    pub fn progress(&self) -> Progress {
        Progress {
            tried: self.tried,
            of: self.named.len() + self.xs.len() * self.ys.len(),
            best: self.best.map(|(score, _)| score),
        }
    }

    /// The best start so far, on the plan, as [`Start::At`] takes it.
    pub fn best(&self) -> Option<Start> {
        self.best
            .map(|(_, origin)| Start::At(self.field.frame.to_plan(origin)))
    }

    /// The layout from the best start so far; from the corner where none was tried.
    ///
    /// # Errors
    /// See [`TileRefusal`].
    pub fn layout(&self) -> Result<Layout, TileRefusal> {
        let origin = match (self.best, self.named.first()) {
            (Some((_, origin)), _) | (None, Some(&origin)) => origin,
            (None, None) => return Err(TileRefusal::NothingLeft),
        };
        Ok(lay(&self.ask, &self.field, &Grid::new(&self.ask, origin)))
    }

    fn start(&self, index: usize) -> Option<Point> {
        let Some(index) = index.checked_sub(self.named.len()) else {
            return self.named.get(index).copied();
        };
        let row = index.checked_div(self.xs.len())?;
        Some(Point::new(
            *self.xs.get(index % self.xs.len())?,
            *self.ys.get(row)?,
        ))
    }

    /// How a start does; none where a cut so narrow turns up that it can't be the best.
    fn score(&self, origin: Point) -> Option<Score> {
        let grid = Grid::new(&self.ask, origin);
        let wanted = self.ask.least_share - ROUNDING;
        let bar = match self.best {
            None => 0.0,
            Some((best, _)) if best.wide_enough => wanted,
            Some((best, _)) => best.narrowest_share - SAME_SHARE,
        };
        let (mut tiles, mut cut_tiles, mut share) = (0, 0, 1.0_f64);
        grid.walk(&self.field, &mut |seen| {
            match seen {
                Seen::Full(_, count) => tiles += count,
                Seen::Cut(_, piece) => {
                    tiles += 1;
                    cut_tiles += 1;
                    share = share.min(piece.share(self.ask.joint_in));
                }
            }
            share >= bar
        });
        (share >= bar).then_some(Score {
            wide_enough: share >= wanted,
            narrowest_share: share,
            tiles,
            cut_tiles,
        })
    }
}

/// The different shifts of the rows, inches.
fn shifts(grid: &Grid) -> Vec<f64> {
    let mut shifts: Vec<f64> = vec![0.0];
    for row in 1..8 {
        let shift = grid.shift_in(f64::from(row));
        if shifts
            .iter()
            .all(|known| (known - shift).abs() > ROUNDING_IN)
        {
            shifts.push(shift);
        }
    }
    shifts
}

/// Lines to try along one direction, all within one tile and joint.
struct Lines {
    side_in: f64,
    pitch_in: f64,
    joint_in: f64,
    least_in: f64,
    walls: Vec<f64>,
    found: Vec<f64>,
}

impl Lines {
    fn new(ask: &TileAsk, side_in: f64, mut walls: Vec<f64>) -> Self {
        let pitch_in = side_in + ask.joint_in;
        walls.order_by(f64::total_cmp);
        walls.dedup_by(|a, b| (*a - *b).abs() <= ROUNDING_IN);
        Self {
            side_in,
            pitch_in,
            joint_in: ask.joint_in,
            // A cut with its joint is the share of a tile with its joint.
            least_in: (ask.least_share * pitch_in - ask.joint_in).max(0.0),
            walls,
            found: Vec::new(),
        }
    }

    fn add(&mut self, line: f64) {
        let line = line - (line / self.pitch_in).floor() * self.pitch_in;
        let new = self.found.iter().all(|known| {
            let apart = (known - line).abs();
            apart.min(self.pitch_in - apart) > ROUNDING_IN
        });
        if new && self.found.len() < MOST_LINES {
            self.found.push(line);
        }
    }

    /// Where a joint comes to a wall, where a cut is the least wanted, and where the cuts at two walls are equal, for rows
    /// shifted so far.
    fn at_walls(&mut self, shifts: &[f64]) {
        let walls = std::mem::take(&mut self.walls);
        let (side, least) = (self.side_in, self.least_in);
        for shift in shifts {
            for wall in &walls {
                self.add(wall - shift);
                self.add(wall - side - shift);
                self.add(wall + least - side - shift);
                self.add(wall - least - shift);
            }
        }
        for shift in shifts {
            for (index, first) in walls.iter().enumerate() {
                for second in walls.iter().skip(index + 1) {
                    let middle = f64::midpoint(*first, *second);
                    self.add(middle - 0.5 * side - shift);
                    self.add(middle + 0.5 * self.joint_in - shift);
                }
            }
        }
    }

    fn evenly(&mut self, from: f64) {
        for index in 0..EVEN_LINES {
            self.add(from + f64::from(index) / f64::from(EVEN_LINES) * self.pitch_in);
        }
    }
}
