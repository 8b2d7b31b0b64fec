//! How a conductor lies: its bundle, what it may carry, and the smallest conductor for a load.

use serde::Serialize;

use super::AskProblem;
use crate::job::questions::Reader;
use crate::job::sums::AmpacitySum;
use crate::job::{CableKind, CodeEdition, GroupingKind, LaidEntry, fields};
use crate::wiring::ampacity::{
    Ampacity, AmpacityRefusal, Conditions, Feeds, Load, SmallestConductor, Terminals, Wanted,
    ampacity, smallest_conductor,
};
use crate::wiring::bundle::{
    BundleCount, BundleRefusal, CableConductors, Grouping, NeutralUse, count,
};
use crate::wiring::conductor::Conductor;
use crate::wiring::tables::Ambient;

/// How a conductor lies, as it is asked about.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LaidAsk {
    /// The air round it.
    pub ambient: Ambient,
    /// Its own cable, and those it lies with.
    pub cables: Vec<CableConductors>,
    /// How they lie.
    pub grouping: Grouping,
}

/// Why a conductor isn't answered.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LaidRefusal {
    /// The cables that it lies with.
    Bundle(BundleRefusal),
    /// The conductor itself.
    Ampacity(AmpacityRefusal),
}

/// What a conductor may carry, and how its conductors were counted.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LaidAmpacity {
    /// The count.
    pub bundle: BundleCount,
    /// What it may carry.
    pub ampacity: Ampacity,
}

/// The smallest conductor for a load, and how its conductors were counted.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LaidSmallest {
    /// The count.
    pub bundle: BundleCount,
    /// The conductor.
    pub smallest: SmallestConductor,
}

/// The conductors of a kind of cable.
pub const fn conductors_of(kind: CableKind) -> CableConductors {
    match kind {
        CableKind::TwoWire => CableConductors::TWO_WIRE,
        CableKind::Multiwire => CableConductors::MULTIWIRE,
        CableKind::Travellers => CableConductors::TRAVELLERS,
        CableKind::HotAndSwitched => CableConductors {
            hots: 2,
            ..CableConductors::TWO_WIRE
        },
        CableKind::TwoOfWye => CableConductors {
            hots: 2,
            neutral: NeutralUse::TwoOfWye,
            ..CableConductors::TWO_WIRE
        },
    }
}

/// Reads how a conductor lies; its own entries stand in the row that the reader is at.
pub(super) fn read(reader: &mut Reader, laid: &LaidEntry) -> LaidAsk {
    let ambient = fields::ambient(&laid.ambient).unwrap_or_else(|refusal| {
        reader.refuse("ambient", refusal);
        Ambient::Celsius(30.0)
    });
    let mut length_in = || {
        reader.need(
            "grouped_length",
            &fields::BUNDLE_LENGTH,
            &laid.grouped_length,
        )
    };
    let grouping = match laid.grouping {
        GroupingKind::Apart => Grouping::Apart,
        GroupingKind::Raceway => Grouping::Raceway,
        GroupingKind::SealedHole => Grouping::SealedHole,
        GroupingKind::InInsulation => Grouping::InInsulation,
        GroupingKind::Nipple => Grouping::Nipple {
            length_in: length_in(),
        },
        GroupingKind::Bundled => Grouping::Bundled {
            length_in: length_in(),
        },
    };
    let mut cables = vec![conductors_of(laid.cable)];
    for beside in &laid.beside {
        reader.row(beside.id);
        cables.push(CableConductors {
            cables: reader.count("count", &fields::CABLES, &beside.count),
            spares: reader.count_or("spares", &fields::CABLES, &beside.spares, 0),
            ..conductors_of(beside.cable)
        });
    }
    LaidAsk {
        ambient,
        cables,
        grouping,
    }
}

impl LaidAsk {
    /// The count of the current-carrying conductors.
    ///
    /// # Errors
    /// See [`BundleRefusal`].
    pub fn bundle(&self, edition: CodeEdition) -> Result<BundleCount, BundleRefusal> {
        count(&self.cables, self.grouping, edition)
    }

    pub(super) fn conditions(
        &self,
        bundle: &BundleCount,
        terminals: Terminals,
        feeds: Feeds,
    ) -> Conditions {
        Conditions {
            edition: bundle.edition,
            ambient: self.ambient,
            carrying: bundle.carrying,
            terminals,
            feeds,
        }
    }
}

/// The current-carrying conductors round a conductor.
///
/// # Errors
/// Every entry that is missing or refused; then what can't be counted.
pub fn bundle_of(
    laid: &LaidEntry,
    edition: CodeEdition,
) -> Result<BundleCount, AskProblem<BundleRefusal>> {
    let mut reader = Reader::default();
    let ask = read(&mut reader, laid);
    let ask: LaidAsk = reader.finish(ask)?;
    ask.bundle(edition).map_err(AskProblem::Refused)
}

/// What the conductor of the quick sum may carry.
///
/// # Errors
/// Every entry that is missing or refused; then what keeps it from being answered.
pub fn ampacity_of(
    sum: &AmpacitySum,
    edition: CodeEdition,
) -> Result<LaidAmpacity, AskProblem<LaidRefusal>> {
    let mut reader = Reader::default();
    let size = reader.size("size", sum.laid.size);
    let ask = read(&mut reader, &sum.laid);
    let ask = reader.finish(ask)?;
    let bundle = bundle(&ask, edition)?;
    let conductor = Conductor {
        size,
        metal: sum.laid.metal,
        covering: sum.laid.covering,
    };
    let ampacity = ampacity(
        conductor,
        ask.conditions(&bundle, sum.laid.terminals, sum.feeds),
    )
    .map_err(|refusal| AskProblem::Refused(LaidRefusal::Ampacity(refusal)))?;
    Ok(LaidAmpacity { bundle, ampacity })
}

/// The smallest conductor for the load of the quick sum.
///
/// # Errors
/// Every entry that is missing or refused, a load without either part; then what keeps it from being answered.
pub fn smallest_of(
    sum: &AmpacitySum,
    edition: CodeEdition,
) -> Result<LaidSmallest, AskProblem<LaidRefusal>> {
    let mut reader = Reader::default();
    let (load, breaker_a) = wanted(&mut reader, sum);
    let ask = read(&mut reader, &sum.laid);
    let ask = reader.finish(ask)?;
    let bundle = bundle(&ask, edition)?;
    let smallest = smallest_conductor(Wanted {
        load,
        breaker_a,
        metal: sum.laid.metal,
        covering: sum.laid.covering,
        conditions: ask.conditions(&bundle, sum.laid.terminals, sum.feeds),
    })
    .map_err(|refusal| AskProblem::Refused(LaidRefusal::Ampacity(refusal)))?;
    Ok(LaidSmallest { bundle, smallest })
}

fn wanted(reader: &mut Reader, sum: &AmpacitySum) -> (Load, Option<f64>) {
    if sum.continuous.is_blank() && sum.other.is_blank() {
        reader.missing("other");
    }
    let load = Load {
        continuous_a: reader
            .may("continuous", &fields::SOME_AMPS, &sum.continuous)
            .unwrap_or(0.0),
        other_a: reader
            .may("other", &fields::SOME_AMPS, &sum.other)
            .unwrap_or(0.0),
    };
    (load, reader.may("breaker", &fields::RATING, &sum.breaker))
}

fn bundle(ask: &LaidAsk, edition: CodeEdition) -> Result<BundleCount, AskProblem<LaidRefusal>> {
    ask.bundle(edition)
        .map_err(|refusal| AskProblem::Refused(LaidRefusal::Bundle(refusal)))
}
