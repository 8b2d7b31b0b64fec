//! What the finish's limits say of the old floor.

use serde::Serialize;

use super::FloorProblem;
use crate::floor::Surface;
use crate::floor::flatness::{StraightedgeRefusal, Top, USUAL_EFFORT, Verdict, judge};
use crate::job::Finish;

/// What each limit of a finish says of the old floor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Flatness {
    /// The finish.
    pub finish: Finish,
    /// Whether every limit is met.
    pub passes: bool,
    /// Each limit, longest straightedge first.
    pub verdicts: Vec<Verdict>,
}

impl Flatness {
    /// What each limit of a finish says of an old floor, with the usual effort of the search.
    ///
    /// # Errors
    /// [`FloorProblem::Straightedge`], which a surface that was made from spots never gives.
    pub fn of(surface: &Surface, finish: Finish) -> Result<Self, FloorProblem> {
        let verdicts = judge(surface, Top::OldFloor, finish, USUAL_EFFORT)
            .map_err(|what: StraightedgeRefusal| FloorProblem::Straightedge { what })?;
        Ok(Self {
            finish,
            passes: verdicts.iter().all(|verdict| verdict.passes),
            verdicts,
        })
    }
}
