//! Base, shoe and casing: the pieces that the walls and openings ask for. [`stock`] makes the cutting list.

use serde::Serialize;
use thiserror::Error;

use super::steps::{count, figure, step};
use crate::floor::mixing::Usual;
use crate::order::Order;
use crate::working::{Source, Step, Unit};

pub mod stock;

/// The trade's planning figures: `calc/tables/trim.rs`, sources in its head.
pub mod usual {
    use super::Usual;

    include!("../../tables/trim.rs");
}

/// The longest wall, inches: 500 ft.
pub const MOST_WALL_IN: f64 = 6_000.0;

/// The most walls, and the most breaks in one.
pub const MOST_COUNT: usize = 100;

/// Gaps and overlaps below this are rounding, inches.
const ROUNDING_IN: f64 = 1e-6;

/// What breaks a wall's trim.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BreakKind {
    /// An opening to the floor: base and shoe end at its casing.
    Doorway {
        /// Its height, inches.
        height_in: f64,
    },
    /// An opening above the floor: base and shoe pass under it; its casing goes all round.
    Window {
        /// Its height, inches.
        height_in: f64,
    },
    /// A cabinet, tub or the like: no base behind it.
    BuiltIn {
        /// It has a toe strip of its own, so that no shoe runs along its front.
        own_toe_strip: bool,
    },
}

/// A break in a wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Break {
    /// Where it begins, inches from the wall's start.
    pub at_in: f64,
    /// How wide it is between its jambs, inches.
    pub width_in: f64,
    /// What it is.
    pub kind: BreakKind,
    /// Width of the casing at each side, inches; nothing where it has none.
    pub casing_in: f64,
    /// Whether the other face of the wall gets its casing in this job too.
    pub both_faces: bool,
}

/// A wall with its breaks.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TrimWall {
    /// Its length, inches.
    pub length_in: f64,
    /// Its breaks, in any order.
    pub breaks: Vec<Break>,
}

/// What is to be trimmed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TrimAsk {
    /// The walls in order.
    pub walls: Vec<TrimWall>,
    /// Margin between the jamb's edge and the casing, inches.
    pub reveal_in: f64,
    /// Added to each piece for cutting to fit, inches.
    pub extra_in: f64,
    /// Allowance for trim bought by the foot, percent.
    pub allowance_percent: f64,
    /// A run longer than this is spliced of pieces no longer than it, inches; nothing to leave every run whole.
    pub splice_at_in: Option<f64>,
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Base.
    Base,
    /// Shoe along a base.
    Shoe,
    /// Shoe along the front of a built-in.
    ShoeAtBuiltIn,
    /// Upright of a casing.
    CasingLeg,
    /// Head of a casing, and sill piece of a window's.
    CasingHead,
}

/// A piece to cut.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Piece {
    /// What it is.
    pub part: Part,
    /// On which wall, from 0.
    pub wall: usize,
    /// Where it begins, inches from the wall's start.
    pub from_in: f64,
    /// Its longest side, with what is added for fitting; inches.
    pub length_in: f64,
}

/// The pieces.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Trim {
    /// What was asked.
    pub ask: TrimAsk,
    /// The base, wall by wall.
    pub base: Vec<Piece>,
    /// The shoe, wall by wall.
    pub shoe: Vec<Piece>,
    /// The casings, wall by wall.
    pub casing: Vec<Piece>,
    /// The walls together, feet.
    pub walls_ft: f64,
    /// Casings and what is between them, and built-ins, feet.
    pub broken_ft: f64,
    /// Base along the walls, feet.
    pub base_ft: f64,
    /// That base with the allowance, feet.
    pub base_with_allowance_ft: f64,
    /// Shoe along walls and built-ins, feet.
    pub shoe_ft: f64,
    /// That shoe with the allowance, feet.
    pub shoe_with_allowance_ft: f64,
    /// The casing pieces together, feet.
    pub casing_ft: f64,
}

/// A measure of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Measure {
    /// A wall's length.
    WallLength,
    /// Where a break begins.
    At,
    /// A break's width.
    Width,
    /// A break's height.
    Height,
    /// A casing's width.
    Casing,
    /// The reveal.
    Reveal,
    /// What is added to a piece.
    Extra,
    /// The allowance, percent.
    Allowance,
    /// The longest piece.
    SpliceAt,
}

/// Why there are no pieces.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum TrimRefusal {
    /// A measure that is no number, below nothing, or too large.
    #[error("{measure:?} of {given} on wall {wall:?}")]
    Measure {
        /// Which.
        measure: Measure,
        /// On which wall, from 0.
        wall: Option<usize>,
        /// What it held, inches or percent.
        given: f64,
    },
    /// More than [`MOST_COUNT`] walls or breaks.
    #[error("{count} walls or breaks")]
    TooMany {
        /// How many.
        count: usize,
    },
    /// A break wider than its wall.
    #[error("break {index} on wall {wall}: {width_in} in on {length_in} in")]
    WiderThanWall {
        /// The wall, from 0.
        wall: usize,
        /// The break, from 0.
        index: usize,
        /// Its width, inches.
        width_in: f64,
        /// The wall's length, inches.
        length_in: f64,
    },
    /// A break that ends beyond its wall.
    #[error("break {index} on wall {wall} ends {over_in} in beyond it")]
    BeyondWall {
        /// The wall, from 0.
        wall: usize,
        /// The break, from 0.
        index: usize,
        /// By how much, inches.
        over_in: f64,
    },
    /// Two breaks to the floor that take the same part of a wall.
    #[error("breaks {first} and {second} on wall {wall} overlap by {by_in} in")]
    Overlap {
        /// The wall, from 0.
        wall: usize,
        /// One, from 0.
        first: usize,
        /// The other, from 0.
        second: usize,
        /// By how much, inches.
        by_in: f64,
    },
}

/// The pieces of base, shoe and casing.
///
/// Base and shoe run from corner to casing, to built-in, to corner; a break's casings stand outside its width, beyond the
/// reveal. A mitred leg is the opening's height, one reveal and one casing long; a head its width and two of each.
///
/// # Errors
/// [`TrimRefusal`].
///
/// # Example
/// A room of 12 by 10 ft with a 32 in door in 2-1/4 in casing: 44 ft - 36-1/2 in = 40.958 ft of base, 45.054 ft with 10 %.
/// ```
/// use calc::finish::trim::{Break, BreakKind, TrimAsk, TrimWall, trim};
/// let door = Break {
///     at_in: 40.0, width_in: 32.0, kind: BreakKind::Doorway { height_in: 80.0 }, casing_in: 2.25, both_faces: false,
/// };
/// let wall = |length_in, breaks| TrimWall { length_in, breaks };
/// let ask = TrimAsk {
///     walls: vec![wall(144.0, vec![door]), wall(120.0, vec![]), wall(144.0, vec![]), wall(120.0, vec![])],
///     reveal_in: 0.0, extra_in: 0.0, allowance_percent: 10.0, splice_at_in: None,
/// };
/// let answer = trim(&ask)?;
/// assert!((answer.base_with_allowance_ft - 45.054_166_67).abs() < 1e-6);
/// assert_eq!(answer.casing.iter().map(|piece| piece.length_in).collect::<Vec<_>>(), [82.25, 82.25, 36.5]);
/// # Ok::<(), calc::finish::trim::TrimRefusal>(())
/// ```
pub fn trim(ask: &TrimAsk) -> Result<Trim, TrimRefusal> {
    check(ask)?;
    let mut answer = Trim {
        ask: ask.clone(),
        base: Vec::new(),
        shoe: Vec::new(),
        casing: Vec::new(),
        walls_ft: 0.0,
        broken_ft: 0.0,
        base_ft: 0.0,
        base_with_allowance_ft: 0.0,
        shoe_ft: 0.0,
        shoe_with_allowance_ft: 0.0,
        casing_ft: 0.0,
    };
    for (wall, of) in ask.walls.iter().enumerate() {
        answer.walls_ft += of.length_in / 12.0;
        let mut at_in = 0.0;
        for (from_in, to_in) in breaks_of(ask, wall, of)? {
            answer.run(wall, at_in, from_in);
            answer.broken_ft += (to_in - from_in) / 12.0;
            at_in = to_in;
        }
        answer.run(wall, at_in, of.length_in);
        for of in &of.breaks {
            answer.round(wall, of);
        }
    }
    let more = 1.0 + ask.allowance_percent / 100.0;
    answer.base_with_allowance_ft = answer.base_ft * more;
    answer.shoe_with_allowance_ft = answer.shoe_ft * more;
    answer.casing_ft = answer
        .casing
        .iter()
        .map(|piece| piece.length_in / 12.0)
        .sum();
    Ok(answer)
}

impl Trim {
    /// Base and shoe along a part of a wall.
    fn run(&mut self, wall: usize, from_in: f64, to_in: f64) {
        if to_in - from_in <= ROUNDING_IN {
            return;
        }
        self.base_ft += (to_in - from_in) / 12.0;
        self.shoe_ft += (to_in - from_in) / 12.0;
        spliced(
            &self.ask,
            Part::Base,
            wall,
            (from_in, to_in),
            &mut self.base,
        );
        spliced(
            &self.ask,
            Part::Shoe,
            wall,
            (from_in, to_in),
            &mut self.shoe,
        );
    }

    /// What goes round a break: its casing, or shoe along its front.
    fn round(&mut self, wall: usize, of: &Break) {
        let (height_in, heads) = match of.kind {
            BreakKind::Doorway { height_in } => (height_in, 1),
            BreakKind::Window { height_in } => (height_in, 2),
            BreakKind::BuiltIn {
                own_toe_strip: true,
            } => return,
            BreakKind::BuiltIn {
                own_toe_strip: false,
            } => {
                self.shoe_ft += of.width_in / 12.0;
                let along = (of.at_in, of.at_in + of.width_in);
                spliced(&self.ask, Part::ShoeAtBuiltIn, wall, along, &mut self.shoe);
                return;
            }
        };
        if of.casing_in <= 0.0 {
            return;
        }
        let beyond_in = of.casing_in + self.ask.reveal_in;
        let leg_in = height_in + f64::from(heads) * beyond_in + self.ask.extra_in;
        let head_in = of.width_in + 2.0 * beyond_in + self.ask.extra_in;
        let piece = |part, from_in, length_in| Piece {
            part,
            wall,
            from_in,
            length_in,
        };
        let left_in = of.at_in - beyond_in;
        for _ in 0..=u8::from(of.both_faces) {
            self.casing.push(piece(Part::CasingLeg, left_in, leg_in));
            let right_in = of.at_in + of.width_in + self.ask.reveal_in;
            self.casing.push(piece(Part::CasingLeg, right_in, leg_in));
            for _ in 0..heads {
                self.casing.push(piece(Part::CasingHead, left_in, head_in));
            }
        }
    }

    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let ft = |name, value| figure(name, value, Unit::Ft);
        let allowance = figure("allowance", self.ask.allowance_percent, Unit::Percent);
        let built_in_ft = self.shoe_ft - self.base_ft;
        let mut steps = vec![
            step(
                "base_length",
                vec![ft("walls", self.walls_ft), ft("broken", self.broken_ft)],
                ft("base", self.base_ft),
                Source::CommonPractice,
            ),
            step(
                "base_with_allowance",
                vec![ft("base", self.base_ft), allowance.clone()],
                ft("base_to_buy", self.base_with_allowance_ft),
                Source::CommonPractice,
            ),
            step(
                "shoe_length",
                vec![ft("base", self.base_ft), ft("built_in_fronts", built_in_ft)],
                ft("shoe", self.shoe_ft),
                Source::CommonPractice,
            ),
            step(
                "shoe_with_allowance",
                vec![ft("shoe", self.shoe_ft), allowance],
                ft("shoe_to_buy", self.shoe_with_allowance_ft),
                Source::CommonPractice,
            ),
        ];
        if !self.casing.is_empty() {
            steps.push(step(
                "casing_length",
                vec![figure(
                    "casing_pieces",
                    count(self.casing.len()),
                    Unit::Count,
                )],
                ft("casing", self.casing_ft),
                Source::Arithmetic,
            ));
        }
        steps
    }
}

/// A run as pieces no longer than the ask allows, as long as they can be, the last of what is left.
fn spliced(
    ask: &TrimAsk,
    part: Part,
    wall: usize,
    (from_in, to_in): (f64, f64),
    into: &mut Vec<Piece>,
) {
    let mut at_in = from_in;
    // Each piece has its extra for fitting: what is left of the longest one covers the wall.
    let most_in = ask.splice_at_in.map(|most_in| most_in - ask.extra_in);
    while to_in - at_in > ROUNDING_IN {
        let left_in = to_in - at_in;
        let long_in = match most_in {
            Some(most_in) if most_in + ROUNDING_IN < left_in => most_in,
            _ => left_in,
        };
        into.push(Piece {
            part,
            wall,
            from_in: at_in,
            length_in: long_in + ask.extra_in,
        });
        at_in += long_in;
    }
}

/// The parts of a wall without base, from its start: with their casings, never beyond the wall.
fn breaks_of(ask: &TrimAsk, wall: usize, of: &TrimWall) -> Result<Vec<(f64, f64)>, TrimRefusal> {
    let mut found: Vec<(f64, f64, usize)> = Vec::new();
    for (index, at) in of.breaks.iter().enumerate() {
        let beyond_in = match at.kind {
            BreakKind::Window { .. } => continue,
            BreakKind::Doorway { .. } if at.casing_in > 0.0 => at.casing_in + ask.reveal_in,
            BreakKind::Doorway { .. } | BreakKind::BuiltIn { .. } => 0.0,
        };
        let from_in = (at.at_in - beyond_in).max(0.0);
        let to_in = (at.at_in + at.width_in + beyond_in).min(of.length_in);
        found.push((from_in, to_in, index));
    }
    found.order_by(|a, b| a.0.total_cmp(&b.0));
    let mut ends: Option<(f64, usize)> = None;
    for (from_in, to_in, index) in &found {
        if let Some((end_in, first)) = ends
            && end_in - from_in > ROUNDING_IN
        {
            return Err(TrimRefusal::Overlap {
                wall,
                first,
                second: *index,
                by_in: end_in.min(*to_in) - from_in,
            });
        }
        ends = Some((*to_in, *index));
    }
    Ok(found.into_iter().map(|(from, to, _)| (from, to)).collect())
}

fn check(ask: &TrimAsk) -> Result<(), TrimRefusal> {
    let measure = |measure, wall, given: f64, least: f64, most: f64| {
        if given >= least && given <= most {
            Ok(())
        } else {
            Err(TrimRefusal::Measure {
                measure,
                wall,
                given,
            })
        }
    };
    let breaks = ask.walls.iter().map(|wall| wall.breaks.len());
    let count = ask.walls.len().max(breaks.max().unwrap_or(0));
    if count > MOST_COUNT {
        return Err(TrimRefusal::TooMany { count });
    }
    measure(Measure::Reveal, None, ask.reveal_in, 0.0, 12.0)?;
    measure(Measure::Extra, None, ask.extra_in, 0.0, 24.0)?;
    measure(Measure::Allowance, None, ask.allowance_percent, 0.0, 100.0)?;
    if let Some(most_in) = ask.splice_at_in {
        measure(
            Measure::SpliceAt,
            None,
            most_in,
            12.0 + ask.extra_in,
            MOST_WALL_IN,
        )?;
    }
    for (wall, of) in ask.walls.iter().enumerate() {
        let on = Some(wall);
        measure(Measure::WallLength, on, of.length_in, 0.25, MOST_WALL_IN)?;
        for (index, at) in of.breaks.iter().enumerate() {
            measure(Measure::At, on, at.at_in, 0.0, MOST_WALL_IN)?;
            measure(Measure::Width, on, at.width_in, 0.25, MOST_WALL_IN)?;
            measure(Measure::Casing, on, at.casing_in, 0.0, 24.0)?;
            if let BreakKind::Doorway { height_in } | BreakKind::Window { height_in } = at.kind {
                measure(Measure::Height, on, height_in, 0.25, MOST_WALL_IN)?;
            }
            if at.width_in > of.length_in + ROUNDING_IN {
                return Err(TrimRefusal::WiderThanWall {
                    wall,
                    index,
                    width_in: at.width_in,
                    length_in: of.length_in,
                });
            }
            let over_in = at.at_in + at.width_in - of.length_in;
            if over_in > ROUNDING_IN {
                return Err(TrimRefusal::BeyondWall {
                    wall,
                    index,
                    over_in,
                });
            }
        }
    }
    Ok(())
}
