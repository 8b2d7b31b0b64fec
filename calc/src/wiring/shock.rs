//! Currents through the body, the trip time of a ground-fault interrupter, and the voltage that a meter shows on a
//! conductor which nothing feeds.
//!
//! Figures for a population, never a limit for one person: nothing here says that a voltage or a current may be touched.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A Class A ground-fault interrupter trips at this current, milliamperes. Source: UL 943.
pub const GFCI_TRIPS_AT_MA: f64 = 6.0;

/// Up to this fault current the longest trip time is given by its curve, milliamperes. Source: UL 943.
pub const GFCI_CURVE_TO_MA: f64 = 264.0;

/// The longest time in which a Class A ground-fault interrupter opens at a fault current, seconds:
/// T = (20 / I)^1.43, I from 6 to 264 mA (UL 943).
///
/// # Errors
/// [`ShockRefusal::Fault`] for a current outside the curve.
///
/// ```
/// assert!((calc::wiring::shock::gfci_longest_trip_s(20.0).unwrap() - 1.0).abs() < 1e-12);
/// ```
pub fn gfci_longest_trip_s(fault_ma: f64) -> Result<f64, ShockRefusal> {
    if !(GFCI_TRIPS_AT_MA..=GFCI_CURVE_TO_MA).contains(&fault_ma) {
        return Err(ShockRefusal::Fault { fault_ma });
    }
    Ok((20.0 / fault_ma).powf(1.43))
}

/// The steady current through a body of so many ohms, milliamperes: an estimate by Ohm's law.
///
/// # Errors
/// [`ShockRefusal::Body`] for a voltage or a resistance that is none.
pub fn body_current_ma(volts: f64, body_ohm: f64) -> Result<f64, ShockRefusal> {
    if !((0.0..=1e6).contains(&volts) && body_ohm > 0.0 && body_ohm.is_finite()) {
        return Err(ShockRefusal::Body { volts, body_ohm });
    }
    Ok(volts / body_ohm * 1000.0)
}

/// What a steady current of 60 Hz through the body was found to do, hand to foot, for one second.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Effect {
    /// Below every threshold: usually not felt.
    NotFelt,
    /// From 1 mA: a faint tingle.
    Tingle,
    /// From 5 mA: a slight shock; most people can let go, and may fall.
    Shock,
    /// From 6 mA in women, 9 mA in men: painful, muscles out of control, some can't let go.
    CannotLetGo,
    /// From 50 mA: extreme pain, breathing stops, death is possible.
    BreathingStops,
    /// From 1000 mA: the heart stops, death is likely.
    HeartStops,
}

/// The least current of each effect, milliamperes. Source: OSHA publication 3075.
pub const EFFECTS_FROM_MA: &[(f64, Effect)] = &[
    (1.0, Effect::Tingle),
    (5.0, Effect::Shock),
    (6.0, Effect::CannotLetGo),
    (50.0, Effect::BreathingStops),
    (1000.0, Effect::HeartStops),
];

/// The effect whose published threshold a current reaches, milliamperes; sources differ, and no person is a population.
///
/// ```
/// use calc::wiring::shock::{Effect, effect_of};
/// // 120 V through 1500 ohm: 80 mA.
/// assert_eq!(effect_of(80.0), Effect::BreathingStops);
/// assert_eq!(effect_of(0.5), Effect::NotFelt);
/// ```
pub fn effect_of(body_ma: f64) -> Effect {
    EFFECTS_FROM_MA
        .iter()
        .rev()
        .find(|(from_ma, _)| body_ma >= *from_ma)
        .map_or(Effect::NotFelt, |(_, effect)| *effect)
}

/// A floating conductor beside a live one, and the meter on it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Floating {
    /// The live conductor, volts to ground.
    pub source_v: f64,
    /// Hertz.
    pub frequency_hz: f64,
    /// Capacitance to the live conductor, picofarads per foot.
    pub to_hot_pf_per_ft: f64,
    /// Capacitance to grounded conductors, picofarads per foot.
    pub to_ground_pf_per_ft: f64,
    /// How far it runs beside them, feet.
    pub length_ft: f64,
    /// The meter's resistance, ohms.
    pub meter_ohm: f64,
    /// The meter's capacitance, picofarads.
    pub meter_pf: f64,
}

/// What a meter shows on a floating conductor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Phantom {
    /// The reading, volts.
    pub reading_v: f64,
    /// The most that can flow out of the conductor, microamperes.
    pub most_current_ua: f64,
}

/// What a meter shows on a floating conductor, by the capacitive divider
/// V = Vs w C1 / sqrt((1 / Rm)^2 + (w (C1 + C2 + Cm))^2). A low reading proves nothing dead.
///
/// # Errors
/// [`ShockRefusal::Floating`] for a value that is none.
pub fn phantom(floating: Floating) -> Result<Phantom, ShockRefusal> {
    let Floating {
        source_v,
        frequency_hz,
        to_hot_pf_per_ft,
        to_ground_pf_per_ft,
        length_ft,
        meter_ohm,
        meter_pf,
    } = floating;
    let parts = [
        source_v,
        frequency_hz,
        to_hot_pf_per_ft,
        to_ground_pf_per_ft,
        length_ft,
        meter_pf,
    ];
    if parts.iter().any(|part| !(0.0..=1e6).contains(part))
        || !(meter_ohm > 0.0 && meter_ohm.is_finite())
    {
        return Err(ShockRefusal::Floating { floating });
    }
    let omega = std::f64::consts::TAU * frequency_hz;
    let c1 = to_hot_pf_per_ft * length_ft * 1e-12;
    let c2 = to_ground_pf_per_ft * length_ft * 1e-12;
    let through = omega * (c1 + c2 + meter_pf * 1e-12);
    Ok(Phantom {
        reading_v: source_v * omega * c1 / (1.0 / meter_ohm).hypot(through),
        most_current_ua: source_v * omega * c1 * 1e6,
    })
}

/// Why there is no figure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum ShockRefusal {
    /// A fault current outside the curve.
    #[error("{fault_ma} mA")]
    Fault {
        /// What was given, milliamperes.
        fault_ma: f64,
    },
    /// A voltage or a resistance that is none.
    #[error("{volts} V, {body_ohm} ohm")]
    Body {
        /// What was given, volts.
        volts: f64,
        /// What was given, ohms.
        body_ohm: f64,
    },
    /// A value that is none.
    #[error("{floating:?}")]
    Floating {
        /// What was given.
        floating: Floating,
    },
}
