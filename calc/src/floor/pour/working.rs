//! The steps behind a pour.

use super::{Pour, PourKind};
use crate::floor::geometry::SAME_PLACE;
use crate::floor::surface::Surface;
use crate::working::{Figure, Source, Step, Unit};

impl Pour {
    /// How the figures come about.
    pub fn working(&self, surface: &Surface) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let facts = surface.facts();
        let middle = surface.outline.centroid();
        let over_middle_in = self.plane.height_in(middle);
        // A rule that says exactly how high lifts a level top above what the cover asks for.
        let is_lifted = self.plane.a_in - facts.highest_in - self.cover_in
            > SAME_PLACE * (1.0 + self.plane.a_in.abs());
        let stands = match self.kind {
            PourKind::Level if is_lifted => Step {
                formula: "level_surface_met",
                inputs: vec![
                    figure("highest", facts.highest_in, Unit::In),
                    figure("cover", self.cover_in, Unit::In),
                ],
                result: figure("height", self.plane.a_in, Unit::In),
                source: Source::Entered,
            },
            PourKind::Level => Step {
                formula: "level_surface",
                inputs: vec![
                    figure("highest", facts.highest_in, Unit::In),
                    figure("cover", self.cover_in, Unit::In),
                ],
                result: figure("height", self.plane.a_in, Unit::In),
                source: Source::Arithmetic,
            },
            PourKind::Flat => Step {
                formula: "flat_surface_over_middle",
                inputs: vec![
                    figure("height_at_origin", self.plane.a_in, Unit::In),
                    figure("rise_x", self.plane.b_in_per_in, Unit::Ratio),
                    figure("middle_x", middle.x_in, Unit::In),
                    figure("rise_y", self.plane.c_in_per_in, Unit::Ratio),
                    figure("middle_y", middle.y_in, Unit::In),
                ],
                result: figure("height_over_middle", over_middle_in, Unit::In),
                source: Source::Arithmetic,
            },
        };
        vec![
            stands,
            Step {
                formula: "mean_depth",
                inputs: vec![
                    figure("height_over_middle", over_middle_in, Unit::In),
                    figure("mean_floor_height", facts.mean_height_in, Unit::In),
                ],
                result: figure("mean_depth", self.mean_depth_in, Unit::In),
                source: Source::Arithmetic,
            },
            Step {
                formula: "volume",
                inputs: vec![
                    figure("area", self.area_in2, Unit::In2),
                    figure("mean_depth", self.mean_depth_in, Unit::In),
                ],
                result: figure("volume", self.volume_in3, Unit::In3),
                source: Source::Arithmetic,
            },
            Step {
                formula: "cubic_feet",
                inputs: vec![figure("volume", self.volume_in3, Unit::In3)],
                result: figure("volume", self.volume_ft3, Unit::Ft3),
                source: Source::Arithmetic,
            },
            Step {
                formula: "tilt",
                inputs: vec![
                    figure("rise_x", self.plane.b_in_per_in, Unit::Ratio),
                    figure("rise_y", self.plane.c_in_per_in, Unit::Ratio),
                ],
                result: figure("tilt", self.tilt_in_per_4ft, Unit::InPer4Ft),
                source: Source::Arithmetic,
            },
        ]
    }
}
