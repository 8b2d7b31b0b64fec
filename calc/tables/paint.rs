// Planning figures for paint. Every one yields to the can.
//
// Status: common practice, the same in several public guides; the theoretical spread is geometry: a US gallon is 231
// cubic inches (NIST Handbook 44, appendix C), so a film of 0.001 in covers 231 / 0.001 / 144 = 1604.17 square feet.

/// Finish paint on a smooth sealed wall, square feet for a gallon in one coat.
pub const SMOOTH_FT2_PER_GAL: Usual = Usual { low: 350.0, typical: 375.0, high: 400.0 };

/// Finish paint on a textured wall, square feet for a gallon in one coat.
pub const TEXTURED_FT2_PER_GAL: Usual = Usual { low: 250.0, typical: 300.0, high: 350.0 };

/// Primer on new wall board, square feet for a gallon.
pub const PRIMER_FT2_PER_GAL: Usual = Usual { low: 200.0, typical: 250.0, high: 300.0 };

/// What a gallon covers in a film of a thousandth of an inch, square feet.
pub const SPREAD_AT_ONE_MIL_FT2_PER_GAL: f64 = 231.0 / 0.001 / 144.0;

/// A door that is left out, square feet: 3 by 7 ft.
pub const DOOR_FT2: Usual = Usual { low: 20.0, typical: 21.0, high: 21.0 };

/// A window that is left out, square feet: 3 by 5 ft.
pub const WINDOW_FT2: Usual = Usual { low: 12.0, typical: 15.0, high: 15.0 };

/// Coats.
pub const COATS: Usual = Usual { low: 1.0, typical: 2.0, high: 3.0 };

/// Ordering allowance, percent.
pub const ALLOWANCE_PERCENT: Usual = Usual { low: 5.0, typical: 10.0, high: 10.0 };
