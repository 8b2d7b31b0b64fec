//! Resistance and impedance of a conductor, ohms per 1000 ft: the table's, at the conductor's temperature.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::job::CodeEdition;
use crate::working::{Step, Unit};

use super::code::Rule;
use super::conductor::{ConductorRefusal, Construction, Metal, Size};
use super::steps::{figure, step};
use super::tables::{ALPHA_ALUMINUM_PER_C, ALPHA_COPPER_PER_C, Conduit, IMPEDANCE};

/// The temperature of the tables, degrees C.
pub const TABLE_C: f64 = 75.0;

/// Temperatures taken for a conductor in use, degrees C.
pub const CONDUCTOR_C: std::ops::RangeInclusive<f64> = -60.0..=150.0;

/// How the impedance is found.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Method {
    /// Direct-current resistance (Chapter 9 Table 8): good for resistive loads on small conductors.
    Resistance {
        /// Solid or stranded; `None`: as cable of that size usually is.
        construction: Option<Construction>,
        /// Coated copper.
        coated: bool,
    },
    /// Alternating-current impedance (Chapter 9 Table 9) at a power factor.
    Impedance {
        /// What it runs in.
        conduit: Conduit,
        /// The power factor of the load, lagging, above 0 up to 1.
        power_factor: f64,
    },
    /// The effective impedance that Table 9 prints for a power factor of 0.85, rounded to two figures.
    Printed085 {
        /// What it runs in.
        conduit: Conduit,
    },
}

impl Method {
    /// The power factor it is for.
    pub const fn power_factor(&self) -> f64 {
        match *self {
            Self::Resistance { .. } => 1.0,
            Self::Impedance { power_factor, .. } => power_factor,
            Self::Printed085 { .. } => 0.85,
        }
    }
}

/// The metal, method and temperature of a run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wire {
    /// The metal.
    pub metal: Metal,
    /// How the impedance is found.
    pub method: Method,
    /// The temperature of the conductor, degrees C; the tables are for 75.
    pub conductor_c: f64,
}

impl Wire {
    /// Copper by its direct-current resistance at 75 C, made as usual.
    pub const COPPER: Self = Self {
        metal: Metal::Copper,
        method: Method::Resistance {
            construction: None,
            coated: false,
        },
        conductor_c: TABLE_C,
    };
}

/// The impedance of one conductor.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Impedance {
    /// What a current at the power factor loses, volts per ampere, ohms per 1000 ft.
    pub effective_ohm_per_kft: f64,
    /// What turns current into heat, ohms per 1000 ft.
    pub resistance_ohm_per_kft: f64,
    /// The working.
    pub steps: Vec<Step>,
}

/// The impedance of a conductor.
///
/// R2 = R1 [1 + a (T2 - 75)] (Chapter 9 Table 8, note); Ze = R x PF + XL x sin(arccos PF) (Table 9, note 2).
///
/// # Errors
/// [`ImpedanceRefusal`]: no row or cell of the table, a power factor or temperature that is none, the printed
/// impedance at another temperature than 75 C.
///
/// # Example
/// 14 AWG solid copper at 40 C: 3.07 x (1 - 0.00323 x 35) = 2.723 ohms per 1000 ft.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::conductor::Size;
/// use calc::wiring::impedance::{Wire, impedance};
/// let wire = Wire { conductor_c: 40.0, ..Wire::COPPER };
/// let ohms = impedance(Size::Awg14, &wire, CodeEdition::E2023).unwrap().effective_ohm_per_kft;
/// assert!((ohms - 2.7229).abs() < 1e-4);
/// ```
pub fn impedance(
    size: Size,
    wire: &Wire,
    edition: CodeEdition,
) -> Result<Impedance, ImpedanceRefusal> {
    let Wire {
        metal,
        method,
        conductor_c,
    } = *wire;
    if !CONDUCTOR_C.contains(&conductor_c) {
        return Err(ImpedanceRefusal::Temperature { conductor_c });
    }
    let none = ConductorRefusal::NotInTable { size, metal };
    let alpha = match metal {
        Metal::Copper => ALPHA_COPPER_PER_C,
        Metal::Aluminum => ALPHA_ALUMINUM_PER_C,
        // The tables hold copper and aluminum alone.
        Metal::CopperCladAluminum => return Err(none.into()),
    };
    let table = IMPEDANCE.iter().find(|row| row.size == size);
    let cell = |copper: [Option<f64>; 3], aluminum: [Option<f64>; 3], conduit: Conduit| {
        let cells = if metal == Metal::Copper {
            copper
        } else {
            aluminum
        };
        cells.get(conduit.column()).copied().flatten()
    };
    let ac = |conduit| {
        table.and_then(|row| cell(row.copper_ohm_per_kft, row.aluminum_ohm_per_kft, conduit))
    };
    let (table_ohm, rule) = match method {
        Method::Resistance {
            construction,
            coated,
        } => {
            let construction = construction.unwrap_or(Construction::usual(size));
            let row = size
                .properties(construction)
                .ok_or(ConductorRefusal::NoConstruction { size, construction })?;
            let ohm = match metal {
                Metal::Copper if coated => row.coated_copper_ohm_per_kft,
                Metal::Copper => row.copper_ohm_per_kft,
                _ => row.aluminum_ohm_per_kft,
            };
            (ohm, Rule::Resistance)
        }
        Method::Impedance { conduit, .. } | Method::Printed085 { conduit } => {
            (ac(conduit).ok_or(none.clone())?, Rule::Impedance)
        }
    };
    let mut steps = vec![step(
        "table_resistance",
        Vec::new(),
        figure("resistance", table_ohm, Unit::OhmsPerKft),
        rule.source(edition),
    )];
    let resistance = table_ohm * (1.0 + alpha * (conductor_c - TABLE_C));
    if conductor_c != TABLE_C {
        if matches!(method, Method::Printed085 { .. }) {
            return Err(ImpedanceRefusal::PrintedAt75 { conductor_c });
        }
        steps.push(step(
            "resistance_at_temperature",
            vec![
                figure("resistance", table_ohm, Unit::OhmsPerKft),
                figure("alpha", alpha, Unit::Ratio),
                figure("conductor", conductor_c, Unit::DegC),
            ],
            figure("resistance_there", resistance, Unit::OhmsPerKft),
            Rule::Resistance.source(edition),
        ));
    }
    let effective = match method {
        Method::Resistance { .. } => resistance,
        Method::Printed085 { conduit } => {
            let printed = table
                .and_then(|row| {
                    cell(
                        row.copper_z085_ohm_per_kft,
                        row.aluminum_z085_ohm_per_kft,
                        conduit,
                    )
                })
                .ok_or(none)?;
            steps.push(step(
                "printed_impedance",
                vec![figure("power_factor", 0.85, Unit::Ratio)],
                figure("impedance", printed, Unit::OhmsPerKft),
                Rule::Impedance.source(edition),
            ));
            printed
        }
        Method::Impedance {
            conduit,
            power_factor,
        } => {
            if !(power_factor > 0.0 && power_factor <= 1.0) {
                return Err(ImpedanceRefusal::PowerFactor { power_factor });
            }
            let reactance = table
                .and_then(|row| row.reactance_ohm_per_kft.get(conduit.column()).copied())
                .ok_or(none)?;
            // sin(arccos PF), without its rounding at 1.
            let sine = (1.0 - power_factor * power_factor).sqrt();
            let effective = resistance * power_factor + reactance * sine;
            steps.push(step(
                "effective_impedance",
                vec![
                    figure("resistance", resistance, Unit::OhmsPerKft),
                    figure("reactance", reactance, Unit::OhmsPerKft),
                    figure("power_factor", power_factor, Unit::Ratio),
                ],
                figure("impedance", effective, Unit::OhmsPerKft),
                Rule::Impedance.source(edition),
            ));
            effective
        }
    };
    Ok(Impedance {
        effective_ohm_per_kft: effective,
        resistance_ohm_per_kft: resistance,
        steps,
    })
}

/// Why there is no impedance.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum ImpedanceRefusal {
    /// The table has no such conductor.
    #[error(transparent)]
    Conductor(#[from] ConductorRefusal),
    /// A power factor that is none.
    #[error("power factor {power_factor}")]
    PowerFactor {
        /// What was given.
        power_factor: f64,
    },
    /// A temperature outside [`CONDUCTOR_C`].
    #[error("conductor at {conductor_c} C")]
    Temperature {
        /// What was given, degrees C.
        conductor_c: f64,
    },
    /// The printed impedance holds at 75 C alone.
    #[error("printed impedance at {conductor_c} C")]
    PrintedAt75 {
        /// What was given, degrees C.
        conductor_c: f64,
    },
}
