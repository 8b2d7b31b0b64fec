//! How the figures of a layout come about.

use super::layout::{Layout, ToBuy};
use crate::working::{Figure, Source, Step, Unit};

impl Layout {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let figure = |name, value, unit| Figure { name, value, unit };
        let count = |name, value: u32| figure(name, f64::from(value), Unit::Count);
        let ask = &self.ask;
        let mut steps = vec![
            Step {
                formula: "tile_field",
                inputs: vec![
                    figure("floor_area", ask.outline.area_in2(), Unit::In2),
                    figure("edge_gap", ask.edge_gap_in, Unit::In),
                    figure("obstacles", ask.obstacles.len() as f64, Unit::Count),
                ],
                result: figure("field_area", self.field_area_in2, Unit::In2),
                source: Source::Arithmetic,
            },
            Step {
                formula: "tiles_touched",
                inputs: vec![
                    count("full_tiles", self.full_tiles),
                    count("cut_tiles", self.cut_tiles),
                ],
                result: count("tiles_touched", self.tiles_touched),
                source: Source::Arithmetic,
            },
            Step {
                formula: "joint_area",
                inputs: vec![
                    figure("field_area", self.field_area_in2, Unit::In2),
                    figure("tile_face_area", self.tile_face_area_in2, Unit::In2),
                ],
                result: figure("joint_area", self.joint_area_in2, Unit::In2),
                source: Source::Arithmetic,
            },
        ];
        steps.extend(self.bought(&self.without_offcuts));
        steps.push(Step {
            formula: "offcuts_reused",
            inputs: vec![
                count("tiles_touched", self.tiles_touched),
                figure("saw_kerf", ask.buying.kerf_in, Unit::In),
            ],
            result: count("tiles_with_offcuts", self.with_offcuts.tiles),
            source: Source::Arithmetic,
        });
        steps.extend(self.bought(&self.with_offcuts));
        steps.push(Step {
            formula: "tiles_by_area",
            inputs: vec![
                figure("field_area", self.field_area_in2, Unit::In2),
                figure("tile_width", ask.width_in, Unit::In),
                figure("tile_height", ask.height_in, Unit::In),
                figure("tile_joint", ask.joint_in, Unit::In),
                figure(
                    "cut_allowance",
                    self.by_area_allowance_percent,
                    Unit::Percent,
                ),
            ],
            result: count("tiles_by_area", self.by_area_tiles),
            source: Source::CommonPractice,
        });
        steps
    }

    fn bought(&self, to_buy: &ToBuy) -> [Step; 2] {
        let figure = |name, value, unit| Figure { name, value, unit };
        let count = |name, value: u32| figure(name, f64::from(value), Unit::Count);
        let buying = &self.ask.buying;
        [
            Step {
                formula: "tiles_with_allowance",
                inputs: vec![
                    count("tiles", to_buy.tiles),
                    figure("allowance", buying.allowance_percent, Unit::Percent),
                ],
                result: count("tiles_with_allowance", to_buy.with_allowance),
                source: Source::CommonPractice,
            },
            Step {
                formula: "tile_boxes",
                inputs: vec![
                    count("tiles_with_allowance", to_buy.with_allowance),
                    count("tiles_per_box", buying.per_box),
                ],
                result: count("tile_boxes", to_buy.boxes),
                source: Source::Arithmetic,
            },
        ]
    }
}
