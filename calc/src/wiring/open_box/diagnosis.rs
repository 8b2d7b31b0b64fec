//! What may be wrong, by how well it explains what was measured.

use serde::Serialize;
use thiserror::Error;

use super::description::{Description, DescriptionRefusal};
use super::faults::{Fault, FaultKind, Look, faults};
use super::network::{Edit, Network, Part};
use super::reading::{Reading, ReadingRefusal};
use super::situation::LoadId;

mod group;

mod score;

/// The most readings taken.
pub const MOST_READINGS: usize = 60;

/// A slip of the description in a load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadSlip {
    /// A described load is not there, off or used up.
    NotThere(LoadId),
    /// There is a load that was not entered.
    NotEntered {
        /// The load that it would be.
        load: LoadId,
        /// What it takes at 120 V, about, watts.
        watts: f64,
        /// One of its nodes in the network.
        from: usize,
        /// The other.
        to: usize,
    },
}

impl LoadSlip {
    /// Which load.
    pub const fn load(&self) -> LoadId {
        match self {
            Self::NotThere(load) | Self::NotEntered { load, .. } => *load,
        }
    }

    /// What it changes in the network of the description.
    pub fn edit(&self) -> Edit {
        match *self {
            Self::NotThere(load) => Edit::Cut(Part::Load(load)),
            Self::NotEntered {
                load,
                watts,
                from,
                to,
            } => Edit::Load {
                load,
                from,
                to,
                ohm: 120.0 * 120.0 / watts,
            },
        }
    }
}

/// One explanation of the readings: a fault, or two at once.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Explanation {
    /// The fault, or the two.
    pub faults: Vec<Fault>,
    /// A load that seems to be other than described.
    pub slip: Option<LoadSlip>,
    /// Its share of the probability.
    pub share: f64,
    /// The readings that it explains, by their place.
    pub explained: Vec<usize>,
    /// The logarithm of its likelihood times its weight.
    pub score: f64,
}

impl Explanation {
    /// What it changes in the network of the description.
    pub fn edits(&self) -> Vec<Edit> {
        let mut edits = Vec::new();
        for fault in &self.faults {
            edits.extend_from_slice(&fault.edits);
        }
        edits.extend(self.slip.map(|slip| slip.edit()));
        edits
    }

    /// Whether it says that nothing is wrong.
    pub fn is_nothing(&self) -> bool {
        self.faults
            .iter()
            .all(|f| matches!(f.kind, FaultKind::NothingWrong | FaultKind::StrayOnly))
    }
}

/// Explanations that no reading permitted in the opened boxes tells apart: one answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Answer {
    /// The explanations, the likeliest first.
    pub members: Vec<Explanation>,
    /// Their share of the probability together.
    pub share: f64,
    /// The readings that the first explains, by their place.
    pub explained: Vec<usize>,
    /// Those that it doesn't.
    pub unexplained: Vec<usize>,
    /// Whether it says that nothing is seen wrong from here: it is as described, or one of the others is out of sight.
    pub nothing_seen: bool,
    /// Where to look to tell the members apart, the likeliest first.
    pub look: Vec<Look>,
}

/// What may be wrong.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Diagnosis {
    /// The boxes that are open: the answers hold for what can be measured in them.
    pub boxes: Vec<u32>,
    /// How many readings there were.
    pub readings: usize,
    /// The answers, the likeliest first.
    pub answers: Vec<Answer>,
    /// The share of everything else that was tried.
    pub others_share: f64,
    /// How many explanations were tried.
    pub tried: usize,
    /// Pairs of readings that nothing tried explains together, though each of the two is explained by something:
    /// measure both again.
    pub contradicting: Vec<(usize, usize)>,
    /// Readings that nothing tried explains: measure again, or the description is wrong there.
    pub never_explained: Vec<usize>,
}

impl Diagnosis {
    /// The networks of every explanation with at least a share: what an off-list has to hold for as well.
    pub fn networks(&self, described: &Network, least_share: f64) -> Vec<Network> {
        let mut all = Vec::new();
        for answer in &self.answers {
            for member in &answer.members {
                if member.share >= least_share && !member.is_nothing() {
                    all.push(described.edited(&member.edits()));
                }
            }
        }
        all
    }
}

/// What may be wrong, with every described box open.
///
/// # Errors
/// As [`diagnose_in`].
pub fn diagnose(
    description: &Description,
    readings: &[Reading],
) -> Result<Diagnosis, DiagnosisRefusal> {
    diagnose_in(description, readings, &description.boxes)
}

/// What may be wrong, with some of the described boxes open: answers are parted as far as readings taken there can.
///
/// # Errors
/// [`DiagnosisRefusal`]: a description that can't be answered, a reading that can't have been taken, a box that isn't
/// there.
pub fn diagnose_in(
    description: &Description,
    readings: &[Reading],
    boxes: &[u32],
) -> Result<Diagnosis, DiagnosisRefusal> {
    let network = Network::of(description).map_err(DiagnosisRefusal::Description)?;
    for &in_box in boxes {
        if !description.boxes.contains(&in_box) {
            return Err(DiagnosisRefusal::NoBox { in_box });
        }
    }
    if boxes.is_empty() {
        return Err(DiagnosisRefusal::NoBoxes);
    }
    if readings.len() > MOST_READINGS {
        return Err(DiagnosisRefusal::TooMany {
            readings: readings.len(),
        });
    }
    for (place, reading) in readings.iter().enumerate() {
        reading
            .check(description)
            .map_err(|refusal| DiagnosisRefusal::Reading { place, refusal })?;
    }
    let singles = faults(description, &network);
    let scored = score::scored(&network, &singles, readings);
    let (contradicting, never_explained) = score::contradictions(&scored, readings.len());
    let tried = scored.len();
    let (answers, others_share) = group::answers(description, &network, scored, readings, boxes);
    Ok(Diagnosis {
        boxes: boxes.to_vec(),
        readings: readings.len(),
        answers,
        others_share,
        tried,
        contradicting,
        never_explained,
    })
}

/// Why there is no diagnosis.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum DiagnosisRefusal {
    /// The description can't be answered.
    #[error("{0:?}")]
    Description(Vec<DescriptionRefusal>),
    /// A reading can't have been taken so.
    #[error("reading {place}: {refusal}")]
    Reading {
        /// Which, from 0.
        place: usize,
        /// Why.
        refusal: ReadingRefusal,
    },
    /// No box is open.
    #[error("no box is open")]
    NoBoxes,
    /// No such box.
    #[error("no box {in_box}")]
    NoBox {
        /// What was given.
        in_box: u32,
    },
    /// More than [`MOST_READINGS`].
    #[error("{readings} readings")]
    TooMany {
        /// How many were given.
        readings: usize,
    },
}
