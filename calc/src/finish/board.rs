//! Wall board on walls and ceilings: which piece goes where, from which sheet, and what joints that leaves.
//!
//! Sheets lie flat or stand; each wall has several ways to be hung, and those are taken together that need fewest sheets, of these
//! the least length of joints, of these the least board. Offcuts and patches are cut from sheets that are open already.
//! It is a search by steps, not a proof: [`BoardPlan::fewest_possible`] is what no layout can be under.

use serde::Serialize;
use thiserror::Error;

use super::steps::{count, figure, step, up};
use crate::floor::mixing::Usual;
use crate::working::{Source, Step, Unit};

mod choose;
mod hang;
mod joints;
pub mod kind;
mod pack;
pub mod screws;

pub use joints::{Joint, JointKind};
pub use screws::ScrewSpacing;

/// Sheets on sale and fasteners: `calc/tables/board.rs`, sources in its head.
pub mod usual {
    use super::{ScrewSpacing, SheetSize, SurfaceKind, Usual};

    include!("../../tables/board.rs");
}

/// The largest wall or ceiling, inches: 100 ft.
pub const MOST_SIDE_IN: f64 = 1_200.0;

/// The most walls and ceilings.
pub const MOST_SURFACES: usize = 40;

/// The most openings in one, and the most sheet sizes.
pub const MOST_OPENINGS: usize = 40;

/// The most sheet sizes on offer.
pub const MOST_SIZES: usize = 8;

/// The most patches.
pub const MOST_PATCHES: usize = 200;

/// The most board, in sheets of the smallest size on offer.
pub const MOST_SHEETS: f64 = 500.0;

/// Lengths below this are rounding, inches.
const ROUNDING_IN: f64 = 1e-6;

/// A sheet on offer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SheetSize {
    /// Across, between its tapered edges; inches.
    pub width_in: f64,
    /// Along, inches.
    pub length_in: f64,
}

impl SheetSize {
    /// Its area, square feet.
    pub fn area_ft2(&self) -> f64 {
        self.width_in * self.length_in / 144.0
    }
}

/// What is covered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SurfaceKind {
    /// A wall.
    Wall,
    /// A ceiling.
    Ceiling,
}

/// What a surface meets at an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Edge {
    /// Nothing that is finished here.
    Free,
    /// Another surface, in a corner that is taped.
    Inside,
    /// Another surface, round a corner that gets bead.
    Outside,
}

/// A place without board. It may touch the surface's edge: a door the floor, the missing corner of an L its ceiling's.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Cutout {
    /// From the left, inches.
    pub x_in: f64,
    /// From the bottom (of a ceiling: the near side), inches.
    pub y_in: f64,
    /// Its width, inches.
    pub width_in: f64,
    /// Its height, inches.
    pub height_in: f64,
}

/// A wall or ceiling.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Surface {
    /// Which.
    pub kind: SurfaceKind,
    /// Its length, inches.
    pub length_in: f64,
    /// Its height, or a ceiling's other side; inches.
    pub height_in: f64,
    /// Places without board.
    pub openings: Vec<Cutout>,
    /// The corner at its right end; each corner of a room is so named once. Of a ceiling it counts for nothing.
    pub end: Edge,
    /// The edge at its top; of a ceiling all round, where no wall counts it.
    pub top: Edge,
}

/// A patch in old board.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Patch {
    /// Its width, inches.
    pub width_in: f64,
    /// Its height, inches.
    pub height_in: f64,
}

/// How sheets are hung.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LayUp {
    /// Their length along the surface's length.
    Horizontal,
    /// Their length along its height.
    Vertical,
    /// Whichever needs less, wall by wall.
    #[default]
    Fewest,
}

/// What is to be covered.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoardAsk {
    /// Walls and ceilings.
    pub surfaces: Vec<Surface>,
    /// Patches.
    pub patches: Vec<Patch>,
    /// Sheets on offer.
    pub sheets: Vec<SheetSize>,
    /// How they are hung.
    pub lay_up: LayUp,
    /// Studs and joists, on center, inches; the first at a surface's left end.
    pub framing_in: f64,
}

/// A piece in its place.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Hung {
    /// On which surface, from 0.
    pub surface: usize,
    /// Its left, inches.
    pub x_in: f64,
    /// Its bottom, inches.
    pub y_in: f64,
    /// Its width, inches.
    pub width_in: f64,
    /// Its height, inches.
    pub height_in: f64,
    /// Its sheet's length lies along the surface's length.
    pub flat: bool,
    /// From which sheet, from 0.
    pub sheet: usize,
    /// Where it begins along that sheet, inches.
    pub along_in: f64,
    /// Where it begins across that sheet, inches.
    pub across_in: f64,
}

/// A patch cut from its sheet.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PatchCut {
    /// Which patch, from 0.
    pub patch: usize,
    /// From which sheet, from 0.
    pub sheet: usize,
    /// Where it begins along that sheet, inches.
    pub along_in: f64,
    /// Where it begins across that sheet, inches.
    pub across_in: f64,
    /// Its width lies along the sheet.
    pub flat: bool,
}

/// Sheets of one size to buy.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SheetCount {
    /// The size.
    pub size: SheetSize,
    /// How many.
    pub count: u32,
}

/// The layout.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoardPlan {
    /// What was asked.
    pub ask: BoardAsk,
    /// The pieces, surface by surface.
    pub pieces: Vec<Hung>,
    /// The patches.
    pub patches: Vec<PatchCut>,
    /// The sheets, each with its size.
    pub sheets: Vec<SheetSize>,
    /// What to buy, as the sizes were given; sizes that aren't bought are left out.
    pub buy: Vec<SheetCount>,
    /// How many sheets.
    pub sheet_count: u32,
    /// No layout has fewer: the board over the largest sheet.
    pub fewest_possible: u32,
    /// Walls with their openings, square feet.
    pub walls_ft2: f64,
    /// Ceilings with theirs, square feet.
    pub ceilings_ft2: f64,
    /// The openings, square feet.
    pub openings_ft2: f64,
    /// The patches, square feet.
    pub patches_ft2: f64,
    /// What is covered, square feet.
    pub covered_ft2: f64,
    /// The sheets, square feet.
    pub sheets_ft2: f64,
    /// What is not used of them, percent.
    pub waste_percent: f64,
    /// The joints between pieces.
    pub joints: Vec<Joint>,
    /// Joints with both edges tapered, feet.
    pub tapered_ft: f64,
    /// Joints of ends and of ripped edges, feet.
    pub butt_ft: f64,
    /// Joints round patches, feet.
    pub patch_joints_ft: f64,
    /// Inside corners, feet.
    pub inside_ft: f64,
    /// Outside corners, feet, one by one.
    pub outside_ft: Vec<f64>,
    /// Screws: for each piece the framing lines it crosses times the screws on a line.
    pub screws: u32,
}

/// A number of an ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BoardField {
    /// A surface's length.
    Length,
    /// A surface's height.
    Height,
    /// An opening's place or size.
    Opening,
    /// A patch's side.
    Patch,
    /// A sheet's side.
    Sheet,
    /// The framing.
    Framing,
}

/// Why there is no layout.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum BoardRefusal {
    /// A number that is none, or out of measure.
    #[error("{field:?} {index} of {given_in} in")]
    NotAMeasure {
        /// Which.
        field: BoardField,
        /// Of which surface, patch or sheet, from 0.
        index: usize,
        /// What it held, inches.
        given_in: f64,
    },
    /// No sheet on offer.
    #[error("no sheet on offer")]
    NoSheets,
    /// Nothing to cover.
    #[error("nothing to cover")]
    NothingToCover,
    /// Too many surfaces, openings, patches or sheet sizes.
    #[error("{count} of them")]
    TooMany {
        /// How many.
        count: usize,
    },
    /// More board than [`MOST_SHEETS`].
    #[error("{sheets} sheets")]
    TooMuch {
        /// How many sheets it would take at least.
        sheets: f64,
    },
    /// An opening wider or higher than what it is in.
    #[error("opening {opening} of surface {surface} is {width_in} by {height_in} in")]
    OpeningLarger {
        /// The surface, from 0.
        surface: usize,
        /// The opening, from 0.
        opening: usize,
        /// Its width, inches.
        width_in: f64,
        /// Its height, inches.
        height_in: f64,
    },
    /// An opening that ends beyond what it is in.
    #[error("opening {opening} of surface {surface} ends {over_in} in beyond it")]
    OpeningBeyond {
        /// The surface, from 0.
        surface: usize,
        /// The opening, from 0.
        opening: usize,
        /// By how much, inches.
        over_in: f64,
    },
    /// Two openings that overlap.
    #[error("openings {first} and {second} of surface {surface} overlap")]
    OpeningsOverlap {
        /// The surface, from 0.
        surface: usize,
        /// One, from 0.
        first: usize,
        /// The other, from 0.
        second: usize,
    },
    /// A patch that no sheet on offer holds.
    #[error("patch {patch} of {width_in} by {height_in} in is larger than any sheet")]
    PatchLarger {
        /// Which, from 0.
        patch: usize,
        /// Its width, inches.
        width_in: f64,
        /// Its height, inches.
        height_in: f64,
    },
}

/// The layout of board on walls and ceilings.
///
/// Rows begin at the top, columns at the left; the last is ripped. Ends meet on framing, in the next row elsewhere; pieces are
/// only as large as what they cover, and openings within them are waste.
///
/// # Errors
/// [`BoardRefusal`]: measures that are none, an opening larger than its wall or beyond it, a patch larger than any sheet.
///
/// # Example
/// A wall of 12 by 8 ft is covered by two sheets of 4 by 12 ft with one tapered joint of 12 ft.
/// ```
/// use calc::finish::board::{BoardAsk, Edge, LayUp, Surface, SurfaceKind, board, usual};
/// let wall = Surface {
///     kind: SurfaceKind::Wall, length_in: 144.0, height_in: 96.0, openings: vec![], end: Edge::Inside, top: Edge::Inside,
/// };
/// let ask = BoardAsk {
///     surfaces: vec![wall], patches: vec![], sheets: usual::SHEETS.to_vec(), lay_up: LayUp::Fewest, framing_in: 16.0,
/// };
/// let plan = board(&ask)?;
/// assert_eq!((plan.sheet_count, plan.tapered_ft, plan.butt_ft), (2, 12.0, 0.0));
/// assert_eq!(plan.buy[0].size.length_in, 144.0);
/// # Ok::<(), calc::finish::board::BoardRefusal>(())
/// ```
pub fn board(ask: &BoardAsk) -> Result<BoardPlan, BoardRefusal> {
    check(ask)?;
    let (hung, packed) = choose::choose(ask);
    let mut plan = BoardPlan {
        ask: ask.clone(),
        pieces: Vec::new(),
        patches: Vec::new(),
        sheets: packed.sheets.clone(),
        buy: Vec::new(),
        sheet_count: packed.sheets.len() as u32,
        fewest_possible: 0,
        walls_ft2: 0.0,
        ceilings_ft2: 0.0,
        openings_ft2: 0.0,
        patches_ft2: 0.0,
        covered_ft2: 0.0,
        sheets_ft2: packed.sheets.iter().map(SheetSize::area_ft2).sum(),
        waste_percent: 0.0,
        joints: Vec::new(),
        tapered_ft: 0.0,
        butt_ft: 0.0,
        patch_joints_ft: 0.0,
        inside_ft: 0.0,
        outside_ft: Vec::new(),
        screws: 0,
    };
    for (piece, placed) in hung.iter().zip(&packed.placed) {
        plan.pieces.push(Hung {
            surface: piece.surface,
            x_in: piece.x_in,
            y_in: piece.y_in,
            width_in: piece.width_in,
            height_in: piece.height_in,
            flat: piece.flat,
            sheet: placed.sheet,
            along_in: placed.along_in,
            across_in: placed.across_in,
        });
    }
    for (patch, placed) in packed.placed.iter().skip(hung.len()).enumerate() {
        plan.patches.push(PatchCut {
            patch,
            sheet: placed.sheet,
            along_in: placed.along_in,
            across_in: placed.across_in,
            flat: !placed.turned,
        });
    }
    for size in &ask.sheets {
        let count = packed.sheets.iter().filter(|sheet| *sheet == size).count() as u32;
        if count > 0 && !plan.buy.iter().any(|bought| bought.size == *size) {
            plan.buy.push(SheetCount { size: *size, count });
        }
    }
    plan.areas();
    plan.edges();
    plan.screws = screws::of(&plan);
    Ok(plan)
}

impl BoardPlan {
    fn areas(&mut self) {
        for surface in &self.ask.surfaces {
            let area_ft2 = surface.length_in * surface.height_in / 144.0;
            match surface.kind {
                SurfaceKind::Wall => self.walls_ft2 += area_ft2,
                SurfaceKind::Ceiling => self.ceilings_ft2 += area_ft2,
            }
            let open_in2 = surface
                .openings
                .iter()
                .map(|open| open.width_in * open.height_in);
            self.openings_ft2 += open_in2.sum::<f64>() / 144.0;
        }
        let patches_in2 = self
            .ask
            .patches
            .iter()
            .map(|patch| patch.width_in * patch.height_in);
        self.patches_ft2 = patches_in2.sum::<f64>() / 144.0;
        let gross_ft2 = self.walls_ft2 + self.ceilings_ft2;
        self.covered_ft2 = (gross_ft2 - self.openings_ft2).max(0.0) + self.patches_ft2;
        let sizes = self.ask.sheets.iter().map(SheetSize::area_ft2);
        let largest_ft2 = sizes.fold(0.0, f64::max);
        self.fewest_possible = up(self.covered_ft2 / largest_ft2) as u32;
        if self.sheets_ft2 > 0.0 {
            self.waste_percent = 100.0 * (1.0 - self.covered_ft2 / self.sheets_ft2);
        }
    }

    fn edges(&mut self) {
        for (place, surface) in self.ask.surfaces.iter().enumerate() {
            let on: Vec<Hung> = self
                .pieces
                .iter()
                .filter(|piece| piece.surface == place)
                .copied()
                .collect();
            self.joints
                .extend(joints::joints(place, surface, &on, &self.sheets));
            let mut edge = |edge: Edge, length_in: f64| match edge {
                Edge::Free => {}
                Edge::Inside => self.inside_ft += length_in / 12.0,
                Edge::Outside => self.outside_ft.push(length_in / 12.0),
            };
            if surface.kind == SurfaceKind::Ceiling {
                edge(surface.top, 2.0 * (surface.length_in + surface.height_in));
                continue;
            }
            let (mut end_in, mut top_in) = (surface.height_in, surface.length_in);
            for open in &surface.openings {
                if open.x_in + open.width_in >= surface.length_in - ROUNDING_IN {
                    end_in -= open.height_in;
                }
                if open.y_in + open.height_in >= surface.height_in - ROUNDING_IN {
                    top_in -= open.width_in;
                }
            }
            edge(surface.end, end_in.max(0.0));
            edge(surface.top, top_in.max(0.0));
        }
        for joint in &self.joints {
            match joint.kind {
                JointKind::Tapered => self.tapered_ft += joint.length_in() / 12.0,
                JointKind::Butt => self.butt_ft += joint.length_in() / 12.0,
            }
        }
        let round = |patch: &Patch| 2.0 * (patch.width_in + patch.height_in) / 12.0;
        self.patch_joints_ft = self.ask.patches.iter().map(round).sum();
    }

    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let ft2 = |name, value| figure(name, value, Unit::Ft2);
        let ft = |name, value| figure(name, value, Unit::Ft);
        let sheets = figure("sheets", f64::from(self.sheet_count), Unit::Count);
        vec![
            step(
                "board_area",
                vec![
                    ft2("walls", self.walls_ft2),
                    ft2("ceilings", self.ceilings_ft2),
                    ft2("openings", self.openings_ft2),
                    ft2("patches", self.patches_ft2),
                ],
                ft2("covered_area", self.covered_ft2),
                Source::Arithmetic,
            ),
            step(
                "board_sheets",
                vec![
                    ft2("covered_area", self.covered_ft2),
                    figure(
                        "fewest_sheets_possible",
                        f64::from(self.fewest_possible),
                        Unit::Count,
                    ),
                ],
                sheets.clone(),
                Source::Arithmetic,
            ),
            step(
                "board_waste",
                vec![
                    ft2("sheets_area", self.sheets_ft2),
                    ft2("covered_area", self.covered_ft2),
                ],
                figure("waste", self.waste_percent, Unit::Percent),
                Source::Arithmetic,
            ),
            step(
                "board_joints",
                vec![
                    ft("tapered_joints", self.tapered_ft),
                    ft("butt_joints", self.butt_ft),
                    ft("patch_joints", self.patch_joints_ft),
                    ft("inside_corners", self.inside_ft),
                ],
                ft("taped_length", self.taped_ft()),
                Source::Arithmetic,
            ),
            step(
                "board_screws",
                vec![
                    figure("pieces", count(self.pieces.len()), Unit::Count),
                    figure("framing", self.ask.framing_in, Unit::In),
                ],
                figure("screws", f64::from(self.screws), Unit::Count),
                Source::Published("IRC 2021 Table R702.3.5"),
            ),
        ]
    }

    /// All that is taped: joints, patches and inside corners; feet.
    pub fn taped_ft(&self) -> f64 {
        self.tapered_ft + self.butt_ft + self.patch_joints_ft + self.inside_ft
    }
}

/// Sheets by the trade's area method: area x (1 + waste) / sheet, rounded up.
///
/// # Errors
/// [`BoardRefusal::NotAMeasure`]: an area or waste that is none, a sheet out of measure.
///
/// ```
/// use calc::finish::board::{SheetSize, sheets_by_area};
/// // 135 ft of wall 8 ft high: 1080 / 32 = 33.75, so 34 sheets of 4 by 8 ft.
/// assert_eq!(sheets_by_area(1080.0, 0.0, SheetSize { width_in: 48.0, length_in: 96.0 })?, 34);
/// # Ok::<(), calc::finish::board::BoardRefusal>(())
/// ```
pub fn sheets_by_area(
    area_ft2: f64,
    waste_percent: f64,
    sheet: SheetSize,
) -> Result<u32, BoardRefusal> {
    measure(BoardField::Length, 0, area_ft2, [0.0, 1e6])?;
    measure(BoardField::Length, 0, waste_percent, [0.0, 100.0])?;
    check_sheet(0, &sheet)?;
    Ok(up(area_ft2 * (1.0 + waste_percent / 100.0) / sheet.area_ft2()) as u32)
}

fn measure(
    field: BoardField,
    index: usize,
    given_in: f64,
    [least, most]: [f64; 2],
) -> Result<(), BoardRefusal> {
    if given_in >= least && given_in <= most {
        Ok(())
    } else {
        Err(BoardRefusal::NotAMeasure {
            field,
            index,
            given_in,
        })
    }
}

fn check_sheet(index: usize, sheet: &SheetSize) -> Result<(), BoardRefusal> {
    measure(BoardField::Sheet, index, sheet.width_in, [12.0, 72.0])?;
    measure(BoardField::Sheet, index, sheet.length_in, [24.0, 240.0])?;
    // Its length is its longer side.
    measure(
        BoardField::Sheet,
        index,
        sheet.width_in,
        [12.0, sheet.length_in],
    )
}

fn check(ask: &BoardAsk) -> Result<(), BoardRefusal> {
    let count = ask.surfaces.len();
    if count > MOST_SURFACES {
        return Err(BoardRefusal::TooMany { count });
    }
    if ask.patches.len() > MOST_PATCHES {
        return Err(BoardRefusal::TooMany {
            count: ask.patches.len(),
        });
    }
    if ask.sheets.len() > MOST_SIZES {
        return Err(BoardRefusal::TooMany {
            count: ask.sheets.len(),
        });
    }
    if ask.sheets.is_empty() {
        return Err(BoardRefusal::NoSheets);
    }
    if ask.surfaces.is_empty() && ask.patches.is_empty() {
        return Err(BoardRefusal::NothingToCover);
    }
    measure(BoardField::Framing, 0, ask.framing_in, [8.0, 24.0])?;
    for (index, sheet) in ask.sheets.iter().enumerate() {
        check_sheet(index, sheet)?;
    }
    let mut covered_ft2 = 0.0;
    for (surface, of) in ask.surfaces.iter().enumerate() {
        let most = [1.0, MOST_SIDE_IN];
        measure(BoardField::Length, surface, of.length_in, most)?;
        measure(BoardField::Height, surface, of.height_in, most)?;
        covered_ft2 += of.length_in * of.height_in / 144.0;
        check_openings(surface, of)?;
    }
    for (patch, of) in ask.patches.iter().enumerate() {
        for side_in in [of.width_in, of.height_in] {
            measure(BoardField::Patch, patch, side_in, [0.5, MOST_SIDE_IN])?;
        }
        let (long_in, short_in) = (of.width_in.max(of.height_in), of.width_in.min(of.height_in));
        let held = ask.sheets.iter().any(|sheet| {
            long_in <= sheet.length_in + ROUNDING_IN && short_in <= sheet.width_in + ROUNDING_IN
        });
        if !held {
            return Err(BoardRefusal::PatchLarger {
                patch,
                width_in: of.width_in,
                height_in: of.height_in,
            });
        }
        covered_ft2 += of.width_in * of.height_in / 144.0;
    }
    let sizes = ask.sheets.iter().map(SheetSize::area_ft2);
    let sheets = covered_ft2 / sizes.fold(f64::INFINITY, f64::min);
    if sheets > MOST_SHEETS {
        return Err(BoardRefusal::TooMuch { sheets });
    }
    Ok(())
}

fn check_openings(surface: usize, of: &Surface) -> Result<(), BoardRefusal> {
    if of.openings.len() > MOST_OPENINGS {
        return Err(BoardRefusal::TooMany {
            count: of.openings.len(),
        });
    }
    for (opening, at) in of.openings.iter().enumerate() {
        for (given_in, least) in [
            (at.x_in, 0.0),
            (at.y_in, 0.0),
            (at.width_in, 0.25),
            (at.height_in, 0.25),
        ] {
            measure(
                BoardField::Opening,
                surface,
                given_in,
                [least, MOST_SIDE_IN * 10.0],
            )?;
        }
        if at.width_in > of.length_in + ROUNDING_IN || at.height_in > of.height_in + ROUNDING_IN {
            return Err(BoardRefusal::OpeningLarger {
                surface,
                opening,
                width_in: at.width_in,
                height_in: at.height_in,
            });
        }
        let right_in = at.x_in + at.width_in - of.length_in;
        let over_in = right_in.max(at.y_in + at.height_in - of.height_in);
        if over_in > ROUNDING_IN {
            return Err(BoardRefusal::OpeningBeyond {
                surface,
                opening,
                over_in,
            });
        }
        for (first, other) in of.openings.iter().take(opening).enumerate() {
            let wide =
                (at.x_in + at.width_in).min(other.x_in + other.width_in) - at.x_in.max(other.x_in);
            let high = (at.y_in + at.height_in).min(other.y_in + other.height_in)
                - at.y_in.max(other.y_in);
            if wide > ROUNDING_IN && high > ROUNDING_IN {
                return Err(BoardRefusal::OpeningsOverlap {
                    surface,
                    first,
                    second: opening,
                });
            }
        }
    }
    Ok(())
}
