//! What a meter shows and the description does not have: the meter comes first.

use serde::Serialize;

use super::description::{Description, DescriptionRefusal};
use super::likelihood::View;
use super::network::{Network, Scene};
use super::reading::{Outcome, Probe, Reading, Shown};

/// From this a voltage counts where next to none is expected, volts: above what a sound neutral drops and what stray
/// capacitance leaves on a low-impedance meter. Source: an estimate, on the cautious side of the 50 V of NFPA 70E,
/// section 110.4.
pub const UNFORESEEN_V: f64 = 15.0;

/// From this a current counts where next to none is expected, amperes: above the zero of a common clamp. Source: an
/// estimate.
pub const UNFORESEEN_A: f64 = 0.2;

/// What is shown is more than the description has where it is more than so many times what is expected.
const TIMES: f64 = 3.0;

/// A reading that shows a voltage or a current where the description has next to none: something that was not described
/// feeds the place. What must be off by the description is then not enough.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Unforeseen {
    /// The reading, its index from 0.
    pub index: usize,
    /// Whether it is a current, in amperes; else a voltage, in volts.
    pub is_current: bool,
    /// What was shown, volts or amperes.
    pub shown: f64,
    /// What the description has there in that situation, volts or amperes.
    pub expected: f64,
}

/// The readings that show more than the description has, in their order.
///
/// Volts count in every situation. Amperes count only where something was turned off: with everything on, a load that
/// nobody entered is reason enough.
///
/// # Errors
/// [`DescriptionRefusal`] where the description makes no network.
pub fn unforeseen(
    description: &Description,
    readings: &[Reading],
) -> Result<Vec<Unforeseen>, Vec<DescriptionRefusal>> {
    let network = Network::of(description)?;
    let mut found = Vec::new();
    for (index, reading) in readings.iter().enumerate() {
        let Outcome::Shows(Shown::Value { value: shown, .. }) = reading.outcome else {
            continue;
        };
        let situation = &reading.situation;
        let is_current = match reading.probe {
            Probe::Volts { .. } => false,
            Probe::Amps { .. } if situation.everything_off => true,
            Probe::Amps { .. } if !situation.breakers_off.is_empty() => true,
            _ => continue,
        };
        let mut view = View::of(&network, Scene::of(&network, situation));
        let Some(expected) = view.expect(&reading.probe, true) else {
            continue;
        };
        let expected = expected.middle.abs();
        let least = if is_current {
            UNFORESEEN_A
        } else {
            UNFORESEEN_V
        };
        if shown >= least && shown > TIMES * expected {
            found.push(Unforeseen {
                index,
                is_current,
                shown,
                expected,
            });
        }
    }
    Ok(found)
}
