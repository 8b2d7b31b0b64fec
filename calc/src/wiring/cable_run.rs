//! A run of NM cable through a building: feet to buy, how to cut the rolls, staples, and what to mind in the framing.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::code::Rule;
use super::steps::{figure, step};
use super::tables::FREE_CONDUCTOR_IN;
use super::voltage_drop::MOST_LENGTH_FT;

mod rolls;
mod switches;

pub use rolls::{Roll, cut};
pub use switches::{
    LightAt, MOST_SWITCHES, NeutralNeed, PowerAt, Role, SwitchCable, SwitchFinding, SwitchPlan,
    SwitchRefusal, SwitchSpot, Switching, switch_cables,
};

/// Staples stand no further apart than this, inches: 334.30, 4-1/2 ft, from memory.
pub const STAPLE_SPACING_IN: f64 = 54.0;

/// A staple stands within this of a box that clamps the cable, inches: 334.30, from memory.
pub const STAPLE_FROM_BOX_IN: f64 = 12.0;

/// A staple stands within this of a single-gang nonmetallic box without clamps, inches: 314.17, from memory.
pub const STAPLE_FROM_CLAMPLESS_BOX_IN: f64 = 8.0;

/// A bored hole nearer than this to the edge of the framing wants a plate, inches: 300.4(A)(1), from memory.
pub const HOLE_FROM_EDGE_IN: f64 = 1.25;

/// A cable along the framing nearer than this to its edge wants a plate or more distance, inches: 300.4(D), from memory.
pub const CABLE_FROM_EDGE_IN: f64 = 1.25;

/// The least thickness of a plate, inches: 300.4(A), from memory.
pub const PLATE_IN: f64 = 0.0625;

/// The longest roll taken for a real one, feet.
pub const MOST_ROLL_FT: f64 = 10_000.0;

/// Which way a part of the path goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// Up a wall.
    Up,
    /// Across, level.
    #[default]
    Across,
    /// Down a wall.
    Down,
}

/// How the cable is held on a part of the path.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Held {
    /// Stapled along the framing.
    Stapled {
        /// From the cable to the nearest edge of the framing, inches, where known.
        edge_in: Option<f64>,
    },
    /// Through bored holes no more than 4-1/2 ft apart, which hold it where it goes across, but for a staple at each box
    /// (334.30(A)); up and down a wall it is stapled all the same.
    Bored {
        /// From the edge of the hole to the nearest edge of the framing, inches, where known.
        edge_in: Option<f64>,
    },
    /// Fished through a finished wall or ceiling, where it need not be stapled (334.30(B)(1)).
    Fished,
}

/// A part of the path.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Part {
    /// Which way.
    pub way: Way,
    /// How far, feet.
    pub length_ft: f64,
    /// How it is held.
    pub held: Held,
    /// Whether it is in an accessible attic.
    pub attic: bool,
}

/// Where a piece of cable ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// A box that clamps the cable.
    Box {
        /// Cable kept in the box, inches.
        free_in: f64,
    },
    /// A single-gang nonmetallic box without clamps.
    ClamplessBox {
        /// Cable kept in the box, inches.
        free_in: f64,
    },
    /// The panel.
    Panel {
        /// Cable kept in the panel, inches.
        free_in: f64,
    },
}

impl End {
    const fn free_in(self) -> f64 {
        match self {
            Self::Box { free_in } | Self::ClamplessBox { free_in } | Self::Panel { free_in } => {
                free_in
            }
        }
    }

    const fn staple_in(self) -> f64 {
        match self {
            Self::Box { .. } | Self::Panel { .. } => STAPLE_FROM_BOX_IN,
            Self::ClamplessBox { .. } => STAPLE_FROM_CLAMPLESS_BOX_IN,
        }
    }
}

/// A piece of cable, uncut from end to end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Piece {
    /// Where it starts.
    pub from: End,
    /// Where it ends.
    pub to: End,
    /// Its path.
    pub parts: Vec<Part>,
}

/// A run of cable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CableRun {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// The pieces from box to box.
    pub pieces: Vec<Piece>,
    /// Added to the path for bends, slack and waste, percent.
    pub allowance_percent: f64,
    /// Cable on a roll as sold, feet.
    pub roll_ft: f64,
}

/// What to mind on the way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RunFinding {
    /// A hole so near the edge that it wants a steel plate.
    PlateAtHole {
        /// The piece, from 0.
        piece: usize,
        /// The part of it, from 0.
        part: usize,
        /// What is there, inches.
        edge_in: f64,
        /// What is wanted, inches.
        least_in: f64,
        /// The section.
        section: &'static str,
    },
    /// A cable so near the edge that it wants a plate or another place.
    PlateAlongFraming {
        /// The piece, from 0.
        piece: usize,
        /// The part of it, from 0.
        part: usize,
        /// What is there, inches.
        edge_in: f64,
        /// What is wanted, inches.
        least_in: f64,
        /// The section.
        section: &'static str,
    },
    /// Measure the distance to the edge: it was not given.
    EdgeNotKnown {
        /// The piece, from 0.
        piece: usize,
        /// The part of it, from 0.
        part: usize,
        /// What is wanted, inches.
        least_in: f64,
        /// The section.
        section: &'static str,
    },
    /// Less free conductor at a box than is wanted.
    TooLittleFree {
        /// The piece, from 0.
        piece: usize,
        /// What is kept, inches.
        free_in: f64,
        /// What is wanted, inches.
        least_in: f64,
        /// The section.
        section: &'static str,
    },
    /// Cable in an accessible attic wants guards near the way in, and across joists.
    AtticGuard {
        /// The piece, from 0.
        piece: usize,
        /// The part of it, from 0.
        part: usize,
        /// The section.
        section: &'static str,
    },
    /// A piece that is longer than a roll: it has to be spliced in a box on the way.
    LongerThanRoll {
        /// The piece, from 0.
        piece: usize,
        /// Its length, feet.
        length_ft: f64,
    },
}

/// A piece as it is cut.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PieceLength {
    /// Its path, feet.
    pub path_ft: f64,
    /// Path with allowance, and what is kept at both ends, feet.
    pub cut_ft: f64,
    /// Staples on it.
    pub staples: u32,
}

/// What a run takes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CableTake {
    /// The edition.
    pub edition: CodeEdition,
    /// Each piece.
    pub pieces: Vec<PieceLength>,
    /// The paths together, feet: what the voltage drop is of.
    pub path_ft: f64,
    /// All pieces as cut, feet: what to buy from a reel.
    pub cut_ft: f64,
    /// How the pieces come out of rolls; pieces that are longer than a roll are not among them.
    pub rolls: Vec<Roll>,
    /// Staples.
    pub staples: u32,
    /// What to mind.
    pub findings: Vec<RunFinding>,
    /// The working.
    pub steps: Vec<Step>,
}

/// What a run takes: cable, rolls, staples.
///
/// A piece is its path with the allowance, and what is kept at both ends (at least 6 in free at a box, 300.14). Staples:
/// within 12 in of a box, 8 in of a clampless one, no further than 4-1/2 ft apart (334.30); bored holes of a part that goes
/// across hold the cable between the staples at its boxes (334.30(A)), and fished parts take none (334.30(B)(1)).
///
/// # Errors
/// [`RunRefusal`]: no piece or path, lengths or an allowance that are none or absurd.
///
/// # Example
/// Up 8 ft, across 20 ft, down 4 ft, 8 in kept at both boxes, 10 % allowance: 32 x 1.1 + 16 / 12 = 36.5 ft.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::cable_run::{CableRun, End, Held, Part, Piece, Way, take};
/// let part = |way, length_ft| Part { way, length_ft, held: Held::Stapled { edge_in: Some(1.5) }, attic: false };
/// let end = End::Box { free_in: 8.0 };
/// let run = CableRun {
///     edition: CodeEdition::E2023,
///     pieces: vec![Piece {
///         from: end,
///         to: end,
///         parts: vec![part(Way::Up, 8.0), part(Way::Across, 20.0), part(Way::Down, 4.0)],
///     }],
///     allowance_percent: 10.0,
///     roll_ft: 250.0,
/// };
/// let answer = take(&run).unwrap();
/// assert!((answer.cut_ft - 36.5333).abs() < 1e-3);
/// assert_eq!((answer.rolls.len(), answer.staples), (1, 8));
/// ```
pub fn take(run: &CableRun) -> Result<CableTake, RunRefusal> {
    if run.pieces.is_empty() {
        return Err(RunRefusal::NoPiece);
    }
    if !(0.0..=100.0).contains(&run.allowance_percent) {
        return Err(RunRefusal::Allowance {
            percent: run.allowance_percent,
        });
    }
    if !(run.roll_ft > 0.0 && run.roll_ft <= MOST_ROLL_FT) {
        return Err(RunRefusal::Roll {
            roll_ft: run.roll_ft,
        });
    }
    let (mut pieces, mut findings, mut steps) = (Vec::new(), Vec::new(), Vec::new());
    for (at, piece) in run.pieces.iter().enumerate() {
        let path_ft = piece.check(at)?;
        let free_in = piece.from.free_in() + piece.to.free_in();
        let cut_ft = path_ft * (1.0 + run.allowance_percent / 100.0) + free_in / 12.0;
        let staples = staples(piece);
        steps.push(step(
            "piece_length",
            vec![
                figure("path", path_ft, Unit::Ft),
                figure("allowance", run.allowance_percent, Unit::Percent),
                figure("kept_at_ends", free_in, Unit::In),
            ],
            figure("piece", cut_ft, Unit::Ft),
            Rule::FreeConductor.source(run.edition),
        ));
        steps.push(step(
            "piece_staples",
            vec![figure("spacing", STAPLE_SPACING_IN, Unit::In)],
            figure("staples", f64::from(staples), Unit::Count),
            Rule::Staples.source(run.edition),
        ));
        piece.findings(at, run.edition, &mut findings);
        if cut_ft > run.roll_ft {
            findings.push(RunFinding::LongerThanRoll {
                piece: at,
                length_ft: cut_ft,
            });
        }
        pieces.push(PieceLength {
            path_ft,
            cut_ft,
            staples,
        });
    }
    let path_ft = pieces.iter().map(|piece| piece.path_ft).sum();
    let cut_ft = pieces.iter().map(|piece| piece.cut_ft).sum();
    if cut_ft > MOST_LENGTH_FT {
        return Err(RunRefusal::Total { length_ft: cut_ft });
    }
    let lengths: Vec<f64> = pieces.iter().map(|piece| piece.cut_ft).collect();
    let rolls = cut(&lengths, run.roll_ft);
    steps.push(step(
        "cable_to_buy",
        pieces
            .iter()
            .map(|piece| figure("piece", piece.cut_ft, Unit::Ft))
            .collect(),
        figure("cable", cut_ft, Unit::Ft),
        Source::Arithmetic,
    ));
    Ok(CableTake {
        edition: run.edition,
        staples: pieces.iter().map(|piece| piece.staples).sum(),
        pieces,
        path_ft,
        cut_ft,
        rolls,
        findings,
        steps,
    })
}

impl Piece {
    /// Its path, feet.
    fn check(&self, at: usize) -> Result<f64, RunRefusal> {
        let mut path_ft = 0.0;
        for part in &self.parts {
            if !(part.length_ft > 0.0 && part.length_ft <= MOST_LENGTH_FT) {
                return Err(RunRefusal::Length {
                    piece: at,
                    length_ft: part.length_ft,
                });
            }
            if let Held::Stapled {
                edge_in: Some(edge_in),
            }
            | Held::Bored {
                edge_in: Some(edge_in),
            } = part.held
                && !(0.0..=48.0).contains(&edge_in)
            {
                return Err(RunRefusal::Edge { piece: at, edge_in });
            }
            path_ft += part.length_ft;
        }
        for end in [self.from, self.to] {
            let free_in = end.free_in();
            if !(0.0..=240.0).contains(&free_in) {
                return Err(RunRefusal::Free { piece: at, free_in });
            }
        }
        if path_ft > 0.0 {
            Ok(path_ft)
        } else {
            Err(RunRefusal::NoPath { piece: at })
        }
    }

    fn findings(&self, piece: usize, edition: CodeEdition, found: &mut Vec<RunFinding>) {
        for (part, of) in self.parts.iter().enumerate() {
            let section = Rule::Framing.section(edition);
            match of.held {
                Held::Bored {
                    edge_in: Some(edge_in),
                } if edge_in < HOLE_FROM_EDGE_IN => {
                    let least_in = HOLE_FROM_EDGE_IN;
                    found.push(RunFinding::PlateAtHole {
                        piece,
                        part,
                        edge_in,
                        least_in,
                        section,
                    });
                }
                Held::Stapled {
                    edge_in: Some(edge_in),
                } if edge_in < CABLE_FROM_EDGE_IN => {
                    let least_in = CABLE_FROM_EDGE_IN;
                    found.push(RunFinding::PlateAlongFraming {
                        piece,
                        part,
                        edge_in,
                        least_in,
                        section,
                    });
                }
                Held::Bored { edge_in: None } => {
                    let least_in = HOLE_FROM_EDGE_IN;
                    found.push(RunFinding::EdgeNotKnown {
                        piece,
                        part,
                        least_in,
                        section,
                    });
                }
                Held::Stapled { edge_in: None } => {
                    let least_in = CABLE_FROM_EDGE_IN;
                    found.push(RunFinding::EdgeNotKnown {
                        piece,
                        part,
                        least_in,
                        section,
                    });
                }
                Held::Bored { .. } | Held::Stapled { .. } | Held::Fished => {}
            }
            if of.attic {
                found.push(RunFinding::AtticGuard {
                    piece,
                    part,
                    section: Rule::Attic.section(edition),
                });
            }
        }
        for end in [self.from, self.to] {
            let free_in = end.free_in();
            // 300.14 is about outlets, junctions and switches.
            let is_box = !matches!(end, End::Panel { .. });
            if is_box && free_in < FREE_CONDUCTOR_IN {
                found.push(RunFinding::TooLittleFree {
                    piece,
                    free_in,
                    least_in: FREE_CONDUCTOR_IN,
                    section: Rule::FreeConductor.section(edition),
                });
            }
        }
    }
}

impl Part {
    /// Whether bored holes hold it: across, but not up or down a wall, where they don't keep it from sliding (334.30(A)).
    const fn holes_hold(&self) -> bool {
        matches!((self.held, self.way), (Held::Bored { .. }, Way::Across))
    }

    /// Whether it is stapled along its way.
    const fn is_stapled(&self) -> bool {
        !self.holes_hold() && !matches!(self.held, Held::Fished)
    }
}

/// Staples of a piece: each stretch of stapled parts, one after another, with a first one within reach of a box or of
/// the last hole, and the rest no further apart than the spacing; and one by each box that it leaves through holes.
fn staples(piece: &Piece) -> u32 {
    let mut total = 0;
    let mut stretch_in = 0.0;
    let mut reach_in = piece.from.staple_in();
    for part in &piece.parts {
        if part.is_stapled() {
            stretch_in += part.length_ft * 12.0;
        } else {
            total += on_stretch(stretch_in, reach_in, STAPLE_SPACING_IN);
            stretch_in = 0.0;
            reach_in = STAPLE_SPACING_IN;
        }
    }
    total += on_stretch(stretch_in, reach_in, piece.to.staple_in());
    let ends = [piece.parts.first(), piece.parts.last()];
    let by_box = ends
        .into_iter()
        .flatten()
        .filter(|p| p.holes_hold())
        .count() as u32;
    // So short a piece between two boxes that one staple is near both.
    let path_in: f64 = piece.parts.iter().map(|part| part.length_ft * 12.0).sum();
    let reach_in = piece.from.staple_in() + piece.to.staple_in();
    let held = piece.parts.iter().all(Part::holes_hold);
    total
        + if held && path_in <= reach_in {
            1
        } else {
            by_box
        }
}

/// Staples on a stretch whose first stands within `first_in` of its start and whose last within `last_in` of its end.
fn on_stretch(length_in: f64, first_in: f64, last_in: f64) -> u32 {
    if length_in <= 0.0 {
        return 0;
    }
    let between_in = (length_in - first_in - last_in).max(0.0);
    // A run is 10,000 ft at most: some thousands of staples.
    1 + (between_in / STAPLE_SPACING_IN - 1e-9).ceil().max(0.0) as u32
}

/// Why a run isn't answered.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum RunRefusal {
    /// No piece.
    #[error("no piece")]
    NoPiece,
    /// A piece without a path.
    #[error("piece {piece}: no path")]
    NoPath {
        /// The piece, from 0.
        piece: usize,
    },
    /// A length that is none.
    #[error("piece {piece}: {length_ft} ft")]
    Length {
        /// The piece, from 0.
        piece: usize,
        /// What was given, feet.
        length_ft: f64,
    },
    /// More cable than any house takes.
    #[error("{length_ft} ft in all")]
    Total {
        /// What it came to, feet.
        length_ft: f64,
    },
    /// Cable kept at an end that is negative or absurd.
    #[error("piece {piece}: {free_in} in kept")]
    Free {
        /// The piece, from 0.
        piece: usize,
        /// What was given, inches.
        free_in: f64,
    },
    /// A distance to the edge that is none.
    #[error("piece {piece}: {edge_in} in to the edge")]
    Edge {
        /// The piece, from 0.
        piece: usize,
        /// What was given, inches.
        edge_in: f64,
    },
    /// An allowance that is none.
    #[error("allowance of {percent} %")]
    Allowance {
        /// What was given, percent.
        percent: f64,
    },
    /// A roll that is none.
    #[error("roll of {roll_ft} ft")]
    Roll {
        /// What was given, feet.
        roll_ft: f64,
    },
}
