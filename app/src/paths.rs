//! Every address of the app, in one place.
//!
//! Links are relative and resolve through `<base>`, so that the app can be hosted under any folder.

/// The jobs on this device.
pub const JOBS: &str = "./";

/// Quick sums.
pub const SUMS: &str = "sums";

/// Quick sum: pour volume and bags.
pub const SUM_POUR: &str = "sums/pour";

/// Quick sum: slope, rise and run.
pub const SUM_RAMP: &str = "sums/ramp";

/// The gallery of widgets and pictures; no page links to it.
pub const GALLERY: &str = "gallery";

/// A job's own page.
pub fn job(job: &str) -> String {
    format!("job/{job}")
}

/// The stages of a room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Outline and openings.
    Room,
    /// The readings on the old floor.
    Survey,
    /// The pour.
    Pour,
    /// Doorways and ramps.
    Doorways,
}

impl Stage {
    /// All stages in the order the work goes.
    pub const ALL: [Self; 4] = [Self::Room, Self::Survey, Self::Pour, Self::Doorways];

    /// The last part of the stage's address.
    pub const fn segment(self) -> &'static str {
        match self {
            Self::Room => "outline",
            Self::Survey => "survey",
            Self::Pour => "pour",
            Self::Doorways => "doorways",
        }
    }
}

/// A stage of a room of a job.
pub fn stage(job: &str, room: u32, stage: Stage) -> String {
    format!("job/{job}/room/{room}/{}", stage.segment())
}

/// The folder the app is hosted under, without a slash at its end.
pub fn base() -> String {
    let uri = leptos::prelude::document()
        .base_uri()
        .ok()
        .flatten()
        .unwrap_or_default();
    let path = uri.split_once("://").map_or(uri.as_str(), |(_, rest)| {
        rest.find('/').map_or("/", |i| &rest[i..])
    });
    path.trim_end_matches('/').to_owned()
}
