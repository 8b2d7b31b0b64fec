//! The worked demonstration job: an invented back bedroom with a floor that sags and leans.

use super::{Job, Units};

/// The demonstration job.
pub fn job(id: impl Into<String>, now: impl Into<String>) -> Job {
    let now = now.into();
    Job::new(id, "", now, Units::FeetInches)
}
