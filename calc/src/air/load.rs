//! What a fan adds to its circuit.

use serde::Serialize;

use super::{AirField, AirRefusal, amount, more};
use crate::finish::steps::{figure, step};
use crate::working::{Source, Step, Unit};

/// The most watts of one part.
pub const MOST_WATTS: f64 = 20_000.0;

/// A fan and what is built in with it, as its label has it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LoadAsk {
    /// Circuit voltage, volts.
    pub volts: f64,
    /// The fan's current, amperes, where the label gives it; then its watts are not used.
    pub fan_amps: Option<f64>,
    /// The fan's power, watts.
    pub fan_watts: f64,
    /// Its light, watts.
    pub light_watts: f64,
    /// Its heater, watts.
    pub heater_watts: f64,
}

/// The load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Load {
    /// What was asked.
    pub ask: LoadAsk,
    /// The fan alone, amperes.
    pub fan_amps: f64,
    /// Light and heater, amperes.
    pub others_amps: f64,
    /// All together, amperes.
    pub amps: f64,
    /// The same, volt-amperes.
    pub volt_amps: f64,
    /// The fan's current was worked out from its watts as if its power factor were 1: a small motor draws more. The label's
    /// amperes are better.
    pub fan_by_watts: bool,
}

/// Amperes = the fan's own, or watts / volts; light and heater by watts / volts.
///
/// # Errors
/// [`AirRefusal`]: numbers that are none.
///
/// # Example
/// ```
/// use calc::air::load::{LoadAsk, load};
/// // A fan marked 0.5 A with a heater of 1300 W on 120 V: 11.33 A.
/// let ask = LoadAsk { volts: 120.0, fan_amps: Some(0.5), fan_watts: 0.0, light_watts: 0.0, heater_watts: 1300.0 };
/// assert!((load(&ask)?.amps - 11.333_333).abs() < 1e-6);
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn load(ask: &LoadAsk) -> Result<Load, AirRefusal> {
    more(AirField::Volts, ask.volts, 1.0, 1_000.0)?;
    for watts in [ask.fan_watts, ask.light_watts, ask.heater_watts] {
        amount(AirField::Watts, watts, MOST_WATTS)?;
    }
    let fan_amps = match ask.fan_amps {
        Some(amps) => {
            amount(AirField::Amps, amps, 200.0)?;
            amps
        }
        None => ask.fan_watts / ask.volts,
    };
    let others_amps = (ask.light_watts + ask.heater_watts) / ask.volts;
    let amps = fan_amps + others_amps;
    Ok(Load {
        ask: *ask,
        fan_amps,
        others_amps,
        amps,
        volt_amps: amps * ask.volts,
        fan_by_watts: ask.fan_amps.is_none() && ask.fan_watts > 0.0,
    })
}

impl Load {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let watts = |name, value| figure(name, value, Unit::Watts);
        let amps = |name, value| figure(name, value, Unit::Amps);
        let volts = figure("volts", self.ask.volts, Unit::Volts);
        let mut steps = Vec::new();
        if self.fan_by_watts {
            steps.push(step(
                "fan_current",
                vec![watts("fan", self.ask.fan_watts), volts.clone()],
                amps("fan_current", self.fan_amps),
                Source::Arithmetic,
            ));
        }
        steps.push(step(
            "fan_load",
            vec![
                amps("fan_current", self.fan_amps),
                watts("light", self.ask.light_watts),
                watts("heater", self.ask.heater_watts),
                volts,
            ],
            amps("load_current", self.amps),
            Source::Entered,
        ));
        steps
    }
}
