//! What the parts of a circuit are taken to have: ohms, farads.

use crate::wiring::conductor::{Construction, Metal, Size};

/// Ohms per foot of a conductor at 75 C, made as usual (NFPA 70 Chapter 9 Table 8).
pub(super) fn ohm_per_ft(size: Size, metal: Metal) -> Option<f64> {
    let row = size.properties(Construction::usual(size))?;
    let per_kft = match metal {
        Metal::Copper => row.copper_ohm_per_kft,
        Metal::Aluminum | Metal::CopperCladAluminum => row.aluminum_ohm_per_kft,
    };
    Some(per_kft / 1000.0)
}
