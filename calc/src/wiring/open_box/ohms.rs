//! What the parts of a circuit are taken to have: ohms, farads.

use super::description::LoadKind;
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

/// A contact: one wire in a joint, on a terminal, a tab. Source: common practice, 0.001 to 0.005 ohm a joint.
pub(super) const CONTACT_OHM: f64 = 0.001;

/// A closed switch. Source: common practice.
pub(super) const SWITCH_OHM: f64 = 0.003;

/// A closed breaker. Source: common practice.
pub(super) const BREAKER_OHM: f64 = 0.005;

/// The bond between neutral and ground at the service, and that of a pipe. Source: common practice.
pub(super) const BOND_OHM: f64 = 0.002;

/// The way through a ground rod and the earth: the figure at which one rod is enough (NFPA 70 250.53(A)(2)).
pub(super) const EARTH_OHM: f64 = 25.0;

/// Stray capacitance between two conductors of a cable, farads per foot. Source: 15 to 30 pF is common practice and
/// agrees with the formula of two parallel wires; taken as 20.
pub(super) const STRAY_FARAD_PER_FT: f64 = 20e-12;

/// What a load shows to a meter in ohms, cold, from and to, as shares of V²/W. Source: common practice: a filament is a
/// tenth of what it is when hot or less; an electronic lamp or supply shows whatever its rectifier lets through, up to
/// megohms; a winding shows its copper alone; nobody knows what is behind "anything else".
pub(super) const fn cold_share(kind: LoadKind) -> (f64, f64) {
    match kind {
        LoadKind::Filament => (0.05, 0.15),
        LoadKind::Electronic => (1.0, 30_000.0),
        LoadKind::Heater => (0.85, 1.1),
        LoadKind::Motor => (0.08, 0.5),
        LoadKind::Other => (0.1, 10.0),
    }
}
