//! Layers by name, with the thicknesses they are met in.

use serde::Serialize;

use crate::floor::level_change::Status;

include!("../../../tables/stack_heights.rs");

/// What part of a floor a layer is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// A membrane or heating mat.
    Membrane,
    /// A board or plywood.
    Panel,
    /// A bed, a bond coat or a pour.
    Bed,
    /// What is walked on.
    Finish,
}

/// A layer of the table: between what thicknesses it is met.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LayerKind {
    /// A stable name.
    pub id: &'static str,
    /// What part of the floor it is.
    pub part: Part,
    /// The thinnest, inches.
    pub least_in: f64,
    /// What to begin with until it is measured, inches.
    pub typical_in: f64,
    /// The thickest, inches.
    pub most_in: f64,
    /// Where the figures are from.
    pub source: &'static str,
    /// How far they were checked.
    pub status: Status,
}

/// Limits of a bond coat once the tile is beaten in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BedLimits {
    /// A stable name of the mortar's family.
    pub id: &'static str,
    /// The least, inches.
    pub least_in: f64,
    /// The most, inches.
    pub most_in: f64,
    /// Where the figures are from.
    pub source: &'static str,
    /// How far they were checked.
    pub status: Status,
}

/// The layer of that name in the table.
///
/// # Example
/// ```
/// assert_eq!(calc::floor::doorway::layer("plywood_5_8").map(|kind| kind.typical_in), Some(19.0 / 32.0));
/// ```
pub fn layer(id: &str) -> Option<&'static LayerKind> {
    static TABLE: [LayerKind; LAYERS.len()] = LAYERS;
    TABLE.iter().find(|kind| kind.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_layer_is_in_order_and_named_once() {
        for (index, kind) in LAYERS.iter().enumerate() {
            assert!(
                0.0 < kind.least_in && kind.least_in <= kind.typical_in,
                "{}",
                kind.id
            );
            assert!(
                kind.typical_in <= kind.most_in && kind.most_in <= 2.0,
                "{}",
                kind.id
            );
            assert!(!kind.source.is_empty());
            assert!(
                LAYERS[..index].iter().all(|other| other.id != kind.id),
                "{} twice",
                kind.id
            );
            assert_eq!(layer(kind.id), Some(kind));
        }
        assert_eq!(layer("tile"), None);
    }

    #[test]
    fn layers_that_follow_from_a_rule() {
        let typical = |id| layer(id).unwrap().typical_in;
        // Half the notch's depth once beaten in, never under 3/32 in: common practice.
        for (id, notch_in) in [
            ("bond_coat_1_4", 0.25),
            ("bond_coat_3_8", 0.375),
            ("bond_coat_1_2", 0.5),
        ] {
            assert_eq!(typical(id), (notch_in / 2.0f64).max(3.0 / 32.0), "{id}");
            assert!(
                layer(id).unwrap().least_in >= BED_LIMITS[0].least_in,
                "{id}"
            );
        }
        // The categories' own fractions: PS 1, PS 2.
        for (id, in_32nds) in [
            ("plywood_1_2", 15.0),
            ("plywood_5_8", 19.0),
            ("panel_3_4", 23.0),
        ] {
            assert_eq!(typical(id), in_32nds / 32.0, "{id}");
        }
        // Sold by millimetre: 3, and 5.5 to 8; within 1/1000 in.
        for (given_in, mm) in [
            (layer("uncoupling_thin").unwrap().least_in, 3.0),
            (layer("uncoupling_thick").unwrap().least_in, 5.5),
            (layer("uncoupling_thick").unwrap().most_in, 8.0),
        ] {
            assert!(
                (given_in - mm / 25.4f64).abs() < 1e-3,
                "{given_in} in is not {mm} mm"
            );
        }
        // ANSI A108.5 family: 3/32 to 1/4 in; large-and-heavy tile mortar to 1/2 in.
        let limits = BED_LIMITS.map(|limits| (limits.id, limits.least_in, limits.most_in));
        assert_eq!(
            limits,
            [
                ("thin_bed", 0.09375, 0.25),
                ("large_tile_mortar", 0.09375, 0.5)
            ]
        );
    }
}
