// Thickness of the layers between the structural subfloor and the finished surface, inches when done.
//
// Rows marked as common practice vary by product ("read the product", "read the bag", "measure"): the material on
// the job is measured. Plywood: PS 1 and PS 2 performance categories. Backers: nominal thickness of ASTM C1288 and
// C1325. Membranes: ANSI A118.10 and A118.12 products. Bond coats: half the notch's depth once the tile is beaten in,
// never under 3/32 in.

/// Layers, from the subfloor up.
pub const LAYERS: [LayerKind; 27] = [
    LayerKind { id: "membrane_liquid", part: Part::Membrane, least_in: 0.02, typical_in: 0.03, most_in: 0.06, source: "ANSI A118.10 / A118.12 products", status: Status::CommonPractice },
    LayerKind { id: "membrane_sheet", part: Part::Membrane, least_in: 0.008, typical_in: 0.02, most_in: 0.04, source: "ANSI A118.10 / A118.12 products", status: Status::CommonPractice },
    LayerKind { id: "uncoupling_thin", part: Part::Membrane, least_in: 0.118, typical_in: 0.125, most_in: 0.125, source: "3 mm class", status: Status::CommonPractice },
    LayerKind { id: "uncoupling_thick", part: Part::Membrane, least_in: 0.217, typical_in: 0.25, most_in: 0.315, source: "5.5 to 8 mm class", status: Status::CommonPractice },
    LayerKind { id: "heat_mat", part: Part::Membrane, least_in: 0.125, typical_in: 0.1875, most_in: 0.375, source: "read the product", status: Status::CommonPractice },
    LayerKind { id: "backer_1_4", part: Part::Panel, least_in: 0.25, typical_in: 0.25, most_in: 0.25, source: "ASTM C1288 / C1325 nominal", status: Status::CommonPractice },
    LayerKind { id: "backer_1_2", part: Part::Panel, least_in: 0.4375, typical_in: 0.5, most_in: 0.5, source: "ASTM C1325 nominal", status: Status::CommonPractice },
    LayerKind { id: "plywood_1_4", part: Part::Panel, least_in: 0.205, typical_in: 0.25, most_in: 0.25, source: "nominal", status: Status::CommonPractice },
    LayerKind { id: "plywood_1_2", part: Part::Panel, least_in: 0.46875, typical_in: 0.46875, most_in: 0.5, source: "PS 1 performance category", status: Status::FromMemory },
    LayerKind { id: "plywood_5_8", part: Part::Panel, least_in: 0.59375, typical_in: 0.59375, most_in: 0.625, source: "PS 1 performance category", status: Status::FromMemory },
    LayerKind { id: "panel_3_4", part: Part::Panel, least_in: 0.71875, typical_in: 0.71875, most_in: 0.75, source: "PS 1 / PS 2 performance category", status: Status::FromMemory },
    LayerKind { id: "self_levelling", part: Part::Bed, least_in: 0.125, typical_in: 0.25, most_in: 1.5, source: "read the bag", status: Status::CommonPractice },
    LayerKind { id: "mortar_bed", part: Part::Bed, least_in: 0.75, typical_in: 1.25, most_in: 2.0, source: "ANSI A108.1 practice", status: Status::CommonPractice },
    LayerKind { id: "mortar_under_membrane", part: Part::Bed, least_in: 0.0625, typical_in: 0.09375, most_in: 0.125, source: "after beating in", status: Status::CommonPractice },
    LayerKind { id: "bond_coat_1_4", part: Part::Bed, least_in: 0.09375, typical_in: 0.125, most_in: 0.125, source: "rule notch depth x 1/2, never under 3/32", status: Status::CommonPractice },
    LayerKind { id: "bond_coat_3_8", part: Part::Bed, least_in: 0.125, typical_in: 0.1875, most_in: 0.1875, source: "rule notch depth x 1/2", status: Status::CommonPractice },
    LayerKind { id: "bond_coat_1_2", part: Part::Bed, least_in: 0.1875, typical_in: 0.25, most_in: 0.25, source: "rule notch depth x 1/2", status: Status::CommonPractice },
    LayerKind { id: "tile_ceramic_wall", part: Part::Finish, least_in: 0.25, typical_in: 0.3125, most_in: 0.375, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "tile_porcelain_floor", part: Part::Finish, least_in: 0.25, typical_in: 0.375, most_in: 0.5, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "tile_mosaic", part: Part::Finish, least_in: 0.1875, typical_in: 0.25, most_in: 0.375, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "tile_stone", part: Part::Finish, least_in: 0.375, typical_in: 0.5, most_in: 0.75, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "sheet_vinyl", part: Part::Finish, least_in: 0.05, typical_in: 0.08, most_in: 0.2, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "vinyl_plank", part: Part::Finish, least_in: 0.15, typical_in: 0.2, most_in: 0.33, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "laminate_with_pad", part: Part::Finish, least_in: 0.35, typical_in: 0.45, most_in: 0.6, source: "8 to 12 mm plus 2 to 3 mm pad", status: Status::CommonPractice },
    LayerKind { id: "wood_engineered", part: Part::Finish, least_in: 0.375, typical_in: 0.5, most_in: 0.625, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "wood_strip", part: Part::Finish, least_in: 0.75, typical_in: 0.75, most_in: 0.75, source: "measure", status: Status::CommonPractice },
    LayerKind { id: "carpet_and_pad", part: Part::Finish, least_in: 0.375, typical_in: 0.625, most_in: 1.0, source: "measure", status: Status::CommonPractice },
];

/// How thin and how thick a bond coat may be once the tile is beaten in.
pub const BED_LIMITS: [BedLimits; 2] = [
    BedLimits { id: "thin_bed", least_in: 0.09375, most_in: 0.25, source: "ANSI A108.5 family", status: Status::VerifiedOnce },
    BedLimits { id: "large_tile_mortar", least_in: 0.09375, most_in: 0.5, source: "ANSI A108 / A118 large-and-heavy tile mortar", status: Status::VerifiedOnce },
];
