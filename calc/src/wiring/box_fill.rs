//! Box fill, line by line (314.16): the volume of a box, what is in it, the room left and what else fits.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::code::Rule;
use super::conductor::Size;
use super::steps::{figure, step};
use super::tables::{
    BoxFamily, BoxRow, METAL_BARRIER_IN3, NONMETALLIC_BARRIER_IN3, allowance_in3, box_row,
};

mod fits;
mod lines;

pub use fits::{CABLES_TO_FIT, MoreFits, SmallestBox, smallest_boxes};
pub use lines::{FillItem, FillLine};

/// The largest volume taken for a real box, ring or cover, cubic inches.
pub const MOST_VOLUME_IN3: f64 = 10_000.0;

/// The most of any one kind of thing in a box.
pub const MOST_COUNT: u32 = 500;

/// The most gangs side by side.
pub const MOST_GANGS: u32 = 20;

/// Cubic inches below this are rounding: a box that is exactly full passes.
pub const ROUNDING_IN3: f64 = 1e-9;

/// Where the volume of a box is from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BoxSize {
    /// A metal box of Table 314.16(A).
    Listed {
        /// Its family.
        family: BoxFamily,
        /// Its trade size as the table prints it: `4 x 1-1/2`.
        trade_size_in: String,
        /// Gangs side by side, for the families given by the gang and for device boxes ganged together.
        gangs: u32,
    },
    /// The volume marked on the box, cubic inches.
    Marked {
        /// The mark.
        volume_in3: f64,
    },
    /// Inside dimensions, measured; for a box with no mark that is not in the table.
    Measured {
        /// Inside width, inches.
        width_in: f64,
        /// Inside height, inches.
        height_in: f64,
        /// Inside depth, inches.
        depth_in: f64,
    },
}

/// A barrier in a box.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Barrier {
    /// Marked with the volume it takes, cubic inches.
    Marked {
        /// The mark.
        volume_in3: f64,
    },
    /// Metal, without a mark: 0.5 in3.
    Metal,
    /// Nonmetallic, without a mark: 1.0 in3.
    Nonmetallic,
}

/// A box as found.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Vessel {
    /// The box itself.
    pub size: BoxSize,
    /// Marked volumes of extension rings, plaster rings and domed covers, cubic inches.
    pub rings_in3: Vec<f64>,
    /// Barriers.
    pub barriers: Vec<Barrier>,
}

impl Vessel {
    /// A box of the table with nothing added.
    pub fn listed(family: BoxFamily, trade_size_in: &str) -> Self {
        Self::plain(BoxSize::Listed {
            family,
            trade_size_in: trade_size_in.to_owned(),
            gangs: 1,
        })
    }

    /// A box marked with its volume, with nothing added.
    pub fn marked(volume_in3: f64) -> Self {
        Self::plain(BoxSize::Marked { volume_in3 })
    }

    fn plain(size: BoxSize) -> Self {
        Self {
            size,
            rings_in3: Vec::new(),
            barriers: Vec::new(),
        }
    }
}

/// Several conductors of one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Conductors {
    /// Their size.
    pub size: Size,
    /// How many.
    pub count: u32,
}

/// A cable that enters a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct EnteringCable {
    /// The size of its insulated conductors.
    pub size: Size,
    /// How many insulated conductors it has.
    pub insulated: u32,
    /// The size of its equipment grounding conductor, where it has one.
    pub ground: Option<Size>,
}

/// A device on its yoke or strap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Yoke {
    /// The largest conductor connected to it.
    pub size: Size,
    /// How many gangs wide it is; 1 for all that fit a single 2 in device box.
    pub gangs: u32,
}

/// What is in a box.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Contents {
    /// Cables that end or are spliced here.
    pub cables: Vec<EnteringCable>,
    /// Single conductors that come from outside and end or are spliced here.
    pub conductors: Vec<Conductors>,
    /// Conductors that pass through unbroken.
    pub passing: Vec<Conductors>,
    /// Conductors that pass through unbroken in a loop or coil of at least 12 in.
    pub looped: Vec<Conductors>,
    /// Fixture wires that are not under a domed canopy.
    pub fixture_wires: Vec<Conductors>,
    /// Fixture wires that come from a domed canopy and end here: up to four smaller than 14 AWG don't count
    /// (314.16(B)(1) exception, under which the canopy's own ground is left out as well).
    pub canopy_wires: Vec<Conductors>,
    /// Equipment grounding conductors and bonding jumpers besides those of the cables.
    pub grounds: Vec<Conductors>,
    /// Isolated equipment grounding conductors (250.146(D)).
    pub isolated_grounds: Vec<Conductors>,
    /// Whether there is any internal clamp.
    pub internal_clamps: bool,
    /// How many kinds of support fitting there are: stud, hickey.
    pub support_fittings: u32,
    /// Devices.
    pub yokes: Vec<Yoke>,
    /// Terminal blocks, by the largest conductor on each.
    pub terminal_blocks: Vec<Size>,
    /// Pigtails and jumpers that start and end in the box; never counted.
    pub pigtails: u32,
}

/// What is remarkable about a box.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BoxFinding {
    /// More in the box than it may hold.
    Overfull {
        /// By how much, cubic inches.
        over_in3: f64,
    },
    /// The volume rests on measured dimensions and not on a table or a mark.
    MeasuredVolume,
    /// Clamps or fittings are counted at the largest conductor, and there is no conductor yet.
    NoConductorYet,
    /// Terminal blocks, which this edition does not count.
    TerminalBlocksNotCounted,
    /// Fixture wires under a canopy that are left out.
    CanopyWiresLeftOut {
        /// How many.
        count: u32,
    },
}

/// A box and how full it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxFill {
    /// The edition.
    pub edition: CodeEdition,
    /// What fills it, line by line.
    pub lines: Vec<FillLine>,
    /// All lines together, cubic inches.
    pub required_in3: f64,
    /// The volume there is, cubic inches.
    pub volume_in3: f64,
    /// What is left, cubic inches; negative where the box is overfull.
    pub room_in3: f64,
    /// Whether it holds what is in it.
    pub fits: bool,
    /// How many more of each usual cable would fit.
    pub more: Vec<MoreFits>,
    /// The smallest box of each family of the table that holds what is in it.
    pub smallest: Vec<SmallestBox>,
    /// What is remarkable.
    pub findings: Vec<BoxFinding>,
    /// The working.
    pub steps: Vec<Step>,
}

/// How full a box is.
///
/// # Errors
/// [`BoxRefusal`]: a box that is not in the table, a volume, measure or count that is none, a conductor above 6 AWG,
/// which 314.28 sizes by other rules.
///
/// # Example
/// Two 14-2 cables with ground under internal clamps and a receptacle: 4 + 1 + 1 + 2 = 8 times 2.00 in3.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::box_fill::{Contents, EnteringCable, Vessel, Yoke, box_fill};
/// use calc::wiring::conductor::Size;
/// use calc::wiring::tables::BoxFamily;
/// let cable = EnteringCable { size: Size::Awg14, insulated: 2, ground: Some(Size::Awg14) };
/// let contents = Contents {
///     cables: vec![cable; 2],
///     internal_clamps: true,
///     yokes: vec![Yoke { size: Size::Awg14, gangs: 1 }],
///     ..Contents::default()
/// };
/// let vessel = Vessel::listed(BoxFamily::Device, "3 x 2 x 3-1/2");
/// let answer = box_fill(&vessel, &contents, CodeEdition::E2023).unwrap();
/// assert_eq!((answer.required_in3, answer.volume_in3, answer.room_in3), (16.0, 18.0, 2.0));
/// ```
pub fn box_fill(
    vessel: &Vessel,
    contents: &Contents,
    edition: CodeEdition,
) -> Result<BoxFill, BoxRefusal> {
    let mut steps = Vec::new();
    let volume_in3 = volume(vessel, edition, &mut steps)?;
    let lines = lines::lines(contents, edition)?;
    let required_in3 = lines::total_in3(&lines);
    steps.extend(lines.iter().map(FillLine::step_of));
    steps.push(step(
        "box_fill",
        lines
            .iter()
            .map(|line| figure(line.item.name(), line.volume_in3, Unit::In3))
            .collect(),
        figure("required", required_in3, Unit::In3),
        Rule::BoxFill.source(edition),
    ));
    let room_in3 = volume_in3 - required_in3;
    let fits = room_in3 >= -ROUNDING_IN3;
    steps.push(step(
        "box_room",
        vec![
            figure("volume", volume_in3, Unit::In3),
            figure("required", required_in3, Unit::In3),
        ],
        figure("room", room_in3, Unit::In3),
        Source::Arithmetic,
    ));

    let mut findings = Vec::new();
    if !fits {
        findings.push(BoxFinding::Overfull {
            over_in3: -room_in3,
        });
    }
    if matches!(vessel.size, BoxSize::Measured { .. }) {
        findings.push(BoxFinding::MeasuredVolume);
    }
    if (contents.internal_clamps || contents.support_fittings > 0)
        && lines::largest_in(contents).is_none()
    {
        findings.push(BoxFinding::NoConductorYet);
    }
    if !contents.terminal_blocks.is_empty() && edition != CodeEdition::E2023 {
        findings.push(BoxFinding::TerminalBlocksNotCounted);
    }
    let left_out = lines::canopy_left_out(contents);
    if left_out > 0 {
        findings.push(BoxFinding::CanopyWiresLeftOut { count: left_out });
    }
    Ok(BoxFill {
        edition,
        required_in3,
        volume_in3,
        room_in3,
        fits,
        more: fits::more(contents, volume_in3, edition)?,
        smallest: smallest_boxes(contents, edition)?,
        lines,
        findings,
        steps,
    })
}

/// The space that the contents of a box need, cubic inches.
///
/// # Errors
/// As [`box_fill`], but for the box.
pub fn required_in3(contents: &Contents, edition: CodeEdition) -> Result<f64, BoxRefusal> {
    Ok(lines::total_in3(&lines::lines(contents, edition)?))
}

/// The volume of a box with its rings, less its barriers, cubic inches.
fn volume(vessel: &Vessel, edition: CodeEdition, steps: &mut Vec<Step>) -> Result<f64, BoxRefusal> {
    let base = match &vessel.size {
        BoxSize::Listed {
            family,
            trade_size_in,
            gangs,
        } => {
            let row = box_row(*family, trade_size_in).ok_or_else(|| BoxRefusal::UnknownBox {
                family: *family,
                trade_size_in: trade_size_in.chars().take(40).collect(),
            })?;
            let gangs = row.gangs(*gangs)?;
            step(
                "listed_volume",
                vec![
                    figure("box", row.volume_in3, Unit::In3),
                    figure("gangs", gangs, Unit::Count),
                ],
                figure("box_volume", row.volume_in3 * gangs, Unit::In3),
                Rule::BoxTable.source(edition),
            )
        }
        BoxSize::Marked { volume_in3 } => step(
            "marked_volume",
            Vec::new(),
            figure("box_volume", good_volume(*volume_in3)?, Unit::In3),
            Rule::BoxMarked.source(edition),
        ),
        BoxSize::Measured {
            width_in,
            height_in,
            depth_in,
        } => {
            let sides = [*width_in, *height_in, *depth_in];
            if let Some(&side_in) = sides.iter().find(|side| !(0.25..=100.0).contains(*side)) {
                return Err(BoxRefusal::Side { side_in });
            }
            step(
                "measured_volume",
                vec![
                    figure("width", *width_in, Unit::In),
                    figure("height", *height_in, Unit::In),
                    figure("depth", *depth_in, Unit::In),
                ],
                figure(
                    "box_volume",
                    good_volume(width_in * height_in * depth_in)?,
                    Unit::In3,
                ),
                Source::Arithmetic,
            )
        }
    };
    let box_in3 = base.result.value;
    steps.push(base);
    let mut rings_in3 = 0.0;
    for &ring in &vessel.rings_in3 {
        rings_in3 += good_volume(ring)?;
    }
    let mut barriers_in3 = 0.0;
    for barrier in &vessel.barriers {
        barriers_in3 += match barrier {
            Barrier::Marked { volume_in3 } => good_volume(*volume_in3)?,
            Barrier::Metal => METAL_BARRIER_IN3,
            Barrier::Nonmetallic => NONMETALLIC_BARRIER_IN3,
        };
    }
    let volume_in3 = box_in3 + rings_in3 - barriers_in3;
    if !(volume_in3 > 0.0 && volume_in3 <= MOST_VOLUME_IN3) {
        return Err(BoxRefusal::Volume { volume_in3 });
    }
    if rings_in3 > 0.0 || barriers_in3 > 0.0 {
        steps.push(step(
            "total_volume",
            vec![
                figure("box_volume", box_in3, Unit::In3),
                figure("rings", rings_in3, Unit::In3),
                figure("barriers", barriers_in3, Unit::In3),
            ],
            figure("volume", volume_in3, Unit::In3),
            Rule::BoxVolume.source(edition),
        ));
    }
    Ok(volume_in3)
}

fn good_volume(volume_in3: f64) -> Result<f64, BoxRefusal> {
    if volume_in3 > 0.0 && volume_in3 <= MOST_VOLUME_IN3 {
        Ok(volume_in3)
    } else {
        Err(BoxRefusal::Volume { volume_in3 })
    }
}

impl BoxRow {
    /// The factor on the volume for boxes ganged side by side.
    fn gangs(&self, gangs: u32) -> Result<f64, BoxRefusal> {
        let can = self.per_gang || self.family == BoxFamily::Device;
        if gangs == 1 || (can && (1..=MOST_GANGS).contains(&gangs)) {
            Ok(f64::from(gangs))
        } else {
            Err(BoxRefusal::Gangs {
                family: self.family,
                gangs,
            })
        }
    }
}

/// Why a box isn't answered.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum BoxRefusal {
    /// No such box in the table.
    #[error("no {family:?} box {trade_size_in:?}")]
    UnknownBox {
        /// The family given.
        family: BoxFamily,
        /// The trade size given.
        trade_size_in: String,
    },
    /// A volume that is none: of a box, a ring, a barrier, or what they leave.
    #[error("volume {volume_in3} in3")]
    Volume {
        /// What it came to, cubic inches.
        volume_in3: f64,
    },
    /// An inside measure that no box has.
    #[error("side {side_in} in")]
    Side {
        /// What was given, inches.
        side_in: f64,
    },
    /// Gangs that the box can't have.
    #[error("{gangs} gangs of {family:?}")]
    Gangs {
        /// The family given.
        family: BoxFamily,
        /// The gangs given.
        gangs: u32,
    },
    /// More than [`MOST_COUNT`] of one kind, a device of no or absurd width, or a cable without conductors.
    #[error("count {count} of {item:?}")]
    Count {
        /// Of what.
        item: FillItem,
        /// What was given.
        count: u32,
    },
    /// A conductor above 6 AWG: 314.28 sizes its box.
    #[error("{size:?} is above 6 AWG")]
    TooLarge {
        /// The size given.
        size: Size,
    },
}
