//! What a measured drop says: the resistance of the source, of the run, and of what the run should not have.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Source, Step, Unit};

use super::conductor::Size;
use super::impedance::{ImpedanceRefusal, Wire, impedance};
use super::steps::{figure, step};
use super::tables::BRANCH_DROP_PERCENT;
use super::voltage_drop::{MOST_CURRENT_A, MOST_LENGTH_FT, MOST_VOLTS};

/// A supply of more ohms than this, there and back, has a poor connection or far too small a feeder, ohms: 8 A take 2 % of
/// 120 V. Source: common practice; utilities keep the loop of a service well below it.
pub const HIGH_SOURCE_OHM: f64 = 0.3;

/// Volts at one place, without and with the load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Readings {
    /// With the load off, volts.
    pub idle_v: f64,
    /// With the load on, volts.
    pub loaded_v: f64,
}

/// The run as it was given.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct GivenRun {
    /// One way, feet.
    pub length_ft: f64,
    /// The size.
    pub size: Size,
    /// Metal, method, temperature.
    pub wire: Wire,
}

/// A drop that was measured on a two-wire run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasuredDrop {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// At the panel.
    pub supply: Option<Readings>,
    /// At the load.
    pub load: Readings,
    /// The current of the load, amperes.
    pub current_a: f64,
    /// The last digit that the meter shows, volts: 0.1 for most.
    pub meter_step_v: f64,
    /// The run, where it is known.
    pub run: Option<GivenRun>,
}

/// What is remarkable about a measured drop.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum MeasuredFinding {
    /// The voltage rises when the load comes on: no resistance does that, but a neutral that fails does. Call the
    /// utility or an electrician now.
    RisesUnderLoad {
        /// By how much, volts.
        volts: f64,
    },
    /// Far more is lost ahead of the panel than a sound supply loses: a connection at the service, the meter, the feeder or
    /// the neutral may be failing, and it burns. Call the utility or an electrician now.
    HighSource {
        /// What is ahead of the panel, ohms.
        source_ohm: f64,
        /// Heat if it is in one joint, watts.
        heat_w: f64,
    },
    /// More is lost than the 3 % that is recommended for a branch circuit, and the run is not known: what the wire doesn't
    /// explain is heat in a joint.
    LostInUnknownRun {
        /// Lost, percent of the voltage with the load off.
        percent: f64,
        /// Heat on the way, watts.
        heat_w: f64,
    },
    /// The run is not known, so that nobody can say whether the wire explains what is lost.
    RunNotKnown {
        /// Heat on the way, watts.
        heat_w: f64,
    },
    /// More is lost than the run explains: a poor joint, or a longer run.
    MoreThanTheRun {
        /// The resistance too much, ohms.
        excess_ohm: f64,
        /// Heat if it is in one joint, watts.
        heat_w: f64,
    },
    /// Less is lost than the run would lose: the run is shorter or larger than given, or the current smaller.
    LessThanTheRun {
        /// The resistance missing, ohms.
        missing_ohm: f64,
    },
    /// The voltages with the load off differ by more than the meter's last digits.
    IdleReadingsDiffer {
        /// By how much, volts.
        volts: f64,
    },
}

/// What a measured drop says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Implied {
    /// The edition.
    pub edition: CodeEdition,
    /// Lost on the way from the panel to the load, or from the source where the panel was not read, volts.
    pub lost_v: f64,
    /// Resistance ahead of the panel, ohms; `None` where the panel was not read.
    pub source_ohm: Option<f64>,
    /// Resistance from there to the load and back, ohms.
    pub run_ohm: f64,
    /// How far off the resistances may be by the meter's last digit, ohms.
    pub uncertainty_ohm: f64,
    /// What the run as given has, there and back, ohms.
    pub expected_ohm: Option<f64>,
    /// What the run has too much, ohms; negative where it is too little.
    pub excess_ohm: Option<f64>,
    /// The same as feet of the run's conductor.
    pub excess_conductor_ft: Option<f64>,
    /// The same as feet of run, there and back.
    pub excess_run_ft: Option<f64>,
    /// What is remarkable.
    pub findings: Vec<MeasuredFinding>,
    /// The working.
    pub steps: Vec<Step>,
}

/// The resistances that measured voltages imply.
///
/// The source: what the panel loses when the load comes on, over the current. The run: what the load loses beyond that.
///
/// # Errors
/// [`MeasuredRefusal`]: voltages or currents that are none, a run that is none.
///
/// # Example
/// 1.3 V lost at 8 A where the run should lose nothing: 0.16 ohm, 53 ft of 14 AWG.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::conductor::Size;
/// use calc::wiring::impedance::Wire;
/// use calc::wiring::measured_drop::{GivenRun, MeasuredDrop, Readings, implied};
/// let measured = MeasuredDrop {
///     edition: CodeEdition::E2023,
///     supply: Some(Readings { idle_v: 121.0, loaded_v: 121.0 }),
///     load: Readings { idle_v: 121.0, loaded_v: 119.7 },
///     current_a: 8.0,
///     meter_step_v: 0.1,
///     run: Some(GivenRun { length_ft: 0.0, size: Size::Awg14, wire: Wire::COPPER }),
/// };
/// let answer = implied(&measured).unwrap();
/// assert!((answer.run_ohm - 0.1625).abs() < 1e-9);
/// assert!((answer.excess_conductor_ft.unwrap() - 52.93).abs() < 0.01);
/// ```
pub fn implied(measured: &MeasuredDrop) -> Result<Implied, MeasuredRefusal> {
    let current_a = measured.current_a;
    if !(0.01..=MOST_CURRENT_A).contains(&current_a) {
        return Err(MeasuredRefusal::Current { current_a });
    }
    if !(0.0..=10.0).contains(&measured.meter_step_v) {
        return Err(MeasuredRefusal::Volts {
            volts: measured.meter_step_v,
        });
    }
    let readings = [Some(measured.load), measured.supply];
    for volts in readings
        .into_iter()
        .flatten()
        .flat_map(|r| [r.idle_v, r.loaded_v])
    {
        if !(volts > 0.0 && volts <= MOST_VOLTS) {
            return Err(MeasuredRefusal::Volts { volts });
        }
    }
    let fall_v = |readings: Readings| readings.idle_v - readings.loaded_v;
    let supply_v = measured.supply.map_or(0.0, fall_v);
    let lost_v = fall_v(measured.load) - supply_v;
    let run_ohm = lost_v / current_a;
    let source_ohm = measured.supply.map(|_| supply_v / current_a);
    // Each difference is of readings that may each be half a step off.
    let count = if measured.supply.is_some() { 4.0 } else { 2.0 };
    let uncertainty_ohm = count * 0.5 * measured.meter_step_v / current_a;

    let mut steps = Vec::new();
    if let Some(ohm) = source_ohm {
        steps.push(step(
            "source_resistance",
            vec![
                figure("fall", supply_v, Unit::Volts),
                figure("current", current_a, Unit::Amps),
            ],
            figure("source", ohm, Unit::Ohms),
            Source::Arithmetic,
        ));
    }
    steps.push(step(
        "run_resistance",
        vec![
            figure("lost", lost_v, Unit::Volts),
            figure("current", current_a, Unit::Amps),
        ],
        figure("run", run_ohm, Unit::Ohms),
        Source::Arithmetic,
    ));
    let mut findings = Vec::new();
    let noise_v = 2.0 * measured.meter_step_v;
    let rise_v = (-supply_v).max(-fall_v(measured.load));
    if rise_v > noise_v {
        findings.push(MeasuredFinding::RisesUnderLoad { volts: rise_v });
    }
    if let Some(supply) = measured.supply {
        let differ_v = (supply.idle_v - measured.load.idle_v).abs();
        if differ_v > noise_v {
            findings.push(MeasuredFinding::IdleReadingsDiffer { volts: differ_v });
        }
    }
    // Read at the load alone, source and run are one: it is held against the run below.
    if let Some(ohm) = source_ohm
        && ohm - uncertainty_ohm > HIGH_SOURCE_OHM
    {
        findings.push(MeasuredFinding::HighSource {
            source_ohm: ohm,
            heat_w: ohm * current_a * current_a,
        });
    }
    if measured.run.is_none() && lost_v > 0.0 {
        let percent = lost_v / measured.load.idle_v * 100.0;
        let heat_w = lost_v * current_a;
        findings.push(if percent > BRANCH_DROP_PERCENT {
            MeasuredFinding::LostInUnknownRun { percent, heat_w }
        } else {
            MeasuredFinding::RunNotKnown { heat_w }
        });
    }
    let (mut expected_ohm, mut excess_ohm) = (None, None);
    let (mut excess_conductor_ft, mut excess_run_ft) = (None, None);
    if let Some(run) = measured.run {
        if !(0.0..=MOST_LENGTH_FT).contains(&run.length_ft) {
            return Err(MeasuredRefusal::Length {
                length_ft: run.length_ft,
            });
        }
        let wire = impedance(run.size, &run.wire, measured.edition)?;
        let ohm_per_ft = wire.effective_ohm_per_kft / 1000.0;
        let expected = 2.0 * run.length_ft * ohm_per_ft;
        let excess = run_ohm - expected;
        steps.extend(wire.steps);
        steps.push(step(
            "expected_resistance",
            vec![
                figure("length", run.length_ft, Unit::Ft),
                figure("impedance", wire.effective_ohm_per_kft, Unit::OhmsPerKft),
            ],
            figure("expected", expected, Unit::Ohms),
            Source::Arithmetic,
        ));
        steps.push(step(
            "excess_resistance",
            vec![
                figure("run", run_ohm, Unit::Ohms),
                figure("expected", expected, Unit::Ohms),
            ],
            figure("excess", excess, Unit::Ohms),
            Source::Arithmetic,
        ));
        if excess > uncertainty_ohm {
            findings.push(MeasuredFinding::MoreThanTheRun {
                excess_ohm: excess,
                heat_w: excess * current_a * current_a,
            });
        } else if -excess > uncertainty_ohm {
            findings.push(MeasuredFinding::LessThanTheRun {
                missing_ohm: -excess,
            });
        }
        (expected_ohm, excess_ohm) = (Some(expected), Some(excess));
        excess_conductor_ft = Some(excess / ohm_per_ft);
        excess_run_ft = Some(excess / ohm_per_ft / 2.0);
    }
    Ok(Implied {
        edition: measured.edition,
        lost_v,
        source_ohm,
        run_ohm,
        uncertainty_ohm,
        expected_ohm,
        excess_ohm,
        excess_conductor_ft,
        excess_run_ft,
        findings,
        steps,
    })
}

/// Why measured voltages say nothing.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum MeasuredRefusal {
    /// A voltage that is none.
    #[error("{volts} V")]
    Volts {
        /// What was given, volts.
        volts: f64,
    },
    /// A current that is none, or below 10 mA.
    #[error("{current_a} A")]
    Current {
        /// What was given, amperes.
        current_a: f64,
    },
    /// A length that is none.
    #[error("{length_ft} ft")]
    Length {
        /// What was given, feet.
        length_ft: f64,
    },
    /// The impedance's own refusal.
    #[error(transparent)]
    Impedance(#[from] ImpedanceRefusal),
}
