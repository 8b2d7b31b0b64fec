// Small constants of the wiring questions, each with its source.
//
// Status: confirmed in a second source unless a line says otherwise.

/// Rise of resistance of copper for each degree C, from 75 C. Source: NFPA 70 Chapter 9 Table 8 note.
pub const ALPHA_COPPER_PER_C: f64 = 0.00323;

/// Rise of resistance of aluminum for each degree C, from 75 C. Source: NFPA 70 Chapter 9 Table 8 note.
pub const ALPHA_ALUMINUM_PER_C: f64 = 0.0033;

/// Resistivity of 100 % IACS copper at 20 C, ohm circular mils per foot. Source: NBS Handbook 100.
pub const RHO_COPPER_OHM_CMIL_PER_FT: f64 = 10.371;

/// Resistivity of 61 % IACS aluminum at 20 C, ohm circular mils per foot.
pub const RHO_ALUMINUM_OHM_CMIL_PER_FT: f64 = 17.002;

/// The circular-mil figure for copper at 75 C, ohm circular mils per foot. Source: common practice.
pub const K_COPPER_OHM_CMIL_PER_FT: f64 = 12.9;

/// The circular-mil figure for aluminum at 75 C, ohm circular mils per foot. Source: common practice.
pub const K_ALUMINUM_OHM_CMIL_PER_FT: f64 = 21.2;

/// Recommended most for a branch circuit, percent. Source: NFPA 70 210.19, informational note.
pub const BRANCH_DROP_PERCENT: f64 = 3.0;

/// Recommended most for a feeder, percent. Source: NFPA 70 215.2, informational note.
pub const FEEDER_DROP_PERCENT: f64 = 3.0;

/// Recommended most for feeder and branch circuit together, percent. Source: NFPA 70 210.19 and 215.2, informational
/// notes.
pub const TOTAL_DROP_PERCENT: f64 = 5.0;

/// What a continuous load counts for. Source: NFPA 70 210.19(A), 210.20(A).
pub const CONTINUOUS_FACTOR: f64 = 1.25;

/// What the largest motor counts for in its conductor. Source: NFPA 70 430.22, 430.24, from memory.
pub const MOTOR_FACTOR: f64 = 1.25;

/// An appliance without a motor above this has a device of no more than [`APPLIANCE_FACTOR`] of what it takes, amperes.
/// Source: NFPA 70 422.11(E).
pub const APPLIANCE_SMALL_A: f64 = 13.3;

/// The largest device for an appliance up to [`APPLIANCE_SMALL_A`], amperes. Source: NFPA 70 422.11(E)(2), from memory.
pub const APPLIANCE_SMALL_DEVICE_A: f64 = 20.0;

/// The largest device for a single appliance without a motor, of what it takes. Source: NFPA 70 422.11(E)(3).
pub const APPLIANCE_FACTOR: f64 = 1.5;

/// General lighting load of a dwelling, VA per square foot. Source: NFPA 70-2023 220.41 (section number from memory),
/// 70-2020 220.14(J), 70-2017 Table 220.12.
pub const LIGHTING_VA_PER_FT2: f64 = 3.0;

/// Free conductor at a box, inches. Source: NFPA 70 300.14.
pub const FREE_CONDUCTOR_IN: f64 = 6.0;

/// What must reach outside an opening of less than 8 in, inches. Source: NFPA 70 300.14.
pub const FREE_OUTSIDE_IN: f64 = 3.0;

/// An unbroken loop of at least this length counts twice, inches. Source: NFPA 70 314.16(B)(1), twice the length of
/// 300.14.
pub const LOOP_COUNTS_TWICE_FROM_IN: f64 = 12.0;

/// Cables or conductors together for no more than this are not adjusted, inches. Source: NFPA 70 310.15(C)(1).
pub const SHORT_BUNDLE_IN: f64 = 24.0;

/// A barrier without a marked volume takes this in a metal box, cubic inches. Source: NFPA 70 314.16(A).
pub const METAL_BARRIER_IN3: f64 = 0.5;

/// A barrier without a marked volume takes this in a nonmetallic box, cubic inches. Source: NFPA 70 314.16(A).
pub const NONMETALLIC_BARRIER_IN3: f64 = 1.0;
