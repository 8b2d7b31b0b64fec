// What a 50 lb bag of thinset covers, by the notch of the trowel. Lengths in inches, areas in square feet.
//
// Source: common practice; several public guides agree within about 20 percent. The bag's own figure beats them all.
// `low_ft2` and `high_ft2`: what the guides give. `ridge_in`: depth x width / (width + spacing), the mean thickness of mortar if
// the ridges stood full height; half a cubic foot of mixed mortar at that thickness covers `upright_ft2`. That is geometry and
// a lower bound: a trowel held at a slant spreads less and covers more.

/// The notches, from the finest.
pub const NOTCHES: [Notch; 3] = [
    Notch { id: "square_1_4", depth_in: 0.25, width_in: 0.25, spacing_in: 0.25, low_ft2: 90.0, high_ft2: 100.0, ridge_in: 0.125, upright_ft2: 48.0 },
    Notch { id: "square_1_4_by_3_8", depth_in: 0.375, width_in: 0.25, spacing_in: 0.25, low_ft2: 60.0, high_ft2: 67.0, ridge_in: 0.1875, upright_ft2: 32.0 },
    Notch { id: "square_1_2", depth_in: 0.5, width_in: 0.5, spacing_in: 0.5, low_ft2: 40.0, high_ft2: 45.0, ridge_in: 0.25, upright_ft2: 24.0 },
];
