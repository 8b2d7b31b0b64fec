//! The duct: its friction, and how long the code lets it be.

use serde::Serialize;

use super::{AirField, AirRefusal, amount, more};
use crate::finish::steps::{figure, step};
use crate::floor::mixing::Usual;
use crate::working::{Source, Step, Unit};

include!("../../tables/duct_length.rs");
include!("../../tables/duct_friction.rs");

/// The least and the largest diameter, inches.
pub const DIAMETERS_IN: [f64; 2] = [2.0, 48.0];

/// The longest duct, and the most that a fitting is worth, feet.
pub const MOST_LENGTH_FT: f64 = 1_000.0;

/// The most elbows.
pub const MOST_ELBOWS: u32 = 50;

/// The largest flow, cubic feet per minute.
pub const MOST_CFM: f64 = 10_000.0;

/// Below this Reynolds number the flow is laminar.
pub const LAMINAR_BELOW: f64 = 2_300.0;

/// Kinds of duct.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DuctKind {
    /// Sheet metal or smooth plastic.
    Smooth,
    /// Flexible, fully stretched.
    #[default]
    Flexible,
}

impl DuctKind {
    /// Roughness of its wall, feet.
    pub fn roughness_ft(self) -> f64 {
        let row = ROUGHNESS_FT.iter().find(|(kind, _)| *kind == self);
        row.map_or(0.0, |(_, roughness)| *roughness)
    }
}

/// A duct with its fittings.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Duct {
    /// Inside diameter, inches; for a duct that is not round see [`round_diameter_in`].
    pub diameter_in: f64,
    /// Length of the straight parts, feet.
    pub length_ft: f64,
    /// What it is of.
    pub kind: DuctKind,
    /// Elbows.
    pub elbows: u32,
    /// What each elbow is worth, feet of duct.
    pub elbow_ft: f64,
    /// What the cap or jack at its end is worth, feet of duct.
    pub cap_ft: f64,
}

/// A row of the code's table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DuctRow {
    /// Diameter, inches.
    pub diameter_in: f64,
    /// Kind of duct.
    pub kind: DuctKind,
    /// The most length by flow.
    pub most: [MostLength; 8],
}

/// An elbow of 4 in duct.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ElbowRow {
    /// Radius, inches.
    pub radius_in: f64,
    /// Smooth, or mitred.
    pub smooth: bool,
    /// By how much it turns.
    pub degrees: f64,
    /// What it is worth, feet of duct.
    pub equivalent_ft: f64,
}

/// How long a duct may be.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum MostLength {
    /// Not at all.
    NotAllowed,
    /// So many feet.
    Ft(f64),
    /// As long as may be.
    NoLimit,
}

impl MostLength {
    /// Whether a duct of so many feet is within it.
    pub fn holds(self, length_ft: f64) -> bool {
        match self {
            Self::NotAllowed => false,
            Self::Ft(most_ft) => length_ft <= most_ft + 1e-9,
            Self::NoLimit => true,
        }
    }
}

/// What a flow loses in a duct.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Friction {
    /// The flow, cubic feet per minute.
    pub cfm: f64,
    /// The duct.
    pub duct: Duct,
    /// Its speed, feet per minute.
    pub velocity_fpm: f64,
    /// Its Reynolds number.
    pub reynolds: f64,
    /// The friction factor (Darcy).
    pub factor: f64,
    /// Length with what the fittings are worth, feet.
    pub equivalent_ft: f64,
    /// Loss in 100 ft, inches of water.
    pub inwg_per_100ft: f64,
    /// Loss in all, inches of water.
    pub inwg: f64,
}

/// The loss of a flow: Darcy-Weisbach, f x (L / D) x rho V2 / (2 gc), with f of Colebrook's equation, 64 / Re where laminar.
///
/// # Errors
/// [`AirRefusal`].
///
/// # Example
/// 80 cfm in a smooth 4 in duct lose 0.401 in of water in 100 ft.
/// ```
/// use calc::air::duct::{Duct, DuctKind, friction};
/// let duct = Duct { diameter_in: 4.0, length_ft: 100.0, kind: DuctKind::Smooth, elbows: 0, elbow_ft: 15.0, cap_ft: 0.0 };
/// assert!((friction(&duct, 80.0)?.inwg - 0.400_910_8).abs() < 1e-6);
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn friction(duct: &Duct, cfm: f64) -> Result<Friction, AirRefusal> {
    check(duct)?;
    amount(AirField::Flow, cfm, MOST_CFM)?;
    Ok(loss(duct, cfm))
}

/// The loss in a duct that has been checked.
pub(super) fn loss(duct: &Duct, cfm: f64) -> Friction {
    let diameter_ft = duct.diameter_in / 12.0;
    let area_ft2 = std::f64::consts::PI * diameter_ft * diameter_ft / 4.0;
    let velocity_fpm = cfm / area_ft2;
    let velocity_fps = velocity_fpm / 60.0;
    let reynolds = AIR_LB_PER_FT3 * velocity_fps * diameter_ft / AIR_LB_PER_FT_S;
    let factor = darcy(reynolds, duct.kind.roughness_ft() / diameter_ft);
    let equivalent_ft = duct.equivalent_ft();
    let inwg_per_100ft = if cfm > 0.0 {
        let dynamic = AIR_LB_PER_FT3 * velocity_fps * velocity_fps / (2.0 * GC_LB_FT_PER_LBF_S2);
        factor * 100.0 / diameter_ft * dynamic / LBF_PER_FT2_OF_INWG
    } else {
        0.0
    };
    Friction {
        cfm,
        duct: *duct,
        velocity_fpm,
        reynolds,
        factor,
        equivalent_ft,
        inwg_per_100ft,
        inwg: inwg_per_100ft * equivalent_ft / 100.0,
    }
}

/// The friction factor; nothing for air at rest.
fn darcy(reynolds: f64, relative_roughness: f64) -> f64 {
    if reynolds <= 0.0 {
        return 0.0;
    }
    if reynolds < LAMINAR_BELOW {
        return 64.0 / reynolds;
    }
    // Newton's method on x = 1 / sqrt(f): x + 2 log10(r / 3.7 + 2.51 x / Re) = 0. It is convex: it converges from anywhere above.
    let mut x = 8.0;
    for _ in 0..50 {
        let inner = relative_roughness / 3.7 + 2.51 * x / reynolds;
        let value = x + 2.0 * inner.log10();
        let slope = 1.0 + 2.0 * 2.51 / (reynolds * inner * std::f64::consts::LN_10);
        let next = x - value / slope;
        let done = (next - x).abs() <= 1e-15 * x;
        x = next;
        if done {
            break;
        }
    }
    1.0 / (x * x)
}

impl Duct {
    /// Length with what elbows and cap are worth, feet.
    ///
    /// ```
    /// use calc::air::duct::{Duct, DuctKind};
    /// // 10 ft straight, two elbows at 15 ft, a cap at 30 ft: 70 ft.
    /// let duct = Duct { diameter_in: 4.0, length_ft: 10.0, kind: DuctKind::Smooth, elbows: 2, elbow_ft: 15.0, cap_ft: 30.0 };
    /// assert_eq!(duct.equivalent_ft(), 70.0);
    /// ```
    pub fn equivalent_ft(&self) -> f64 {
        self.length_ft + f64::from(self.elbows) * self.elbow_ft + self.cap_ft
    }
}

pub(super) fn check(duct: &Duct) -> Result<(), AirRefusal> {
    let [least_in, most_in] = DIAMETERS_IN;
    more(AirField::Diameter, duct.diameter_in, least_in, most_in)?;
    amount(AirField::Length, duct.length_ft, MOST_LENGTH_FT)?;
    amount(
        AirField::Elbows,
        f64::from(duct.elbows),
        f64::from(MOST_ELBOWS),
    )?;
    amount(AirField::ElbowLength, duct.elbow_ft, MOST_LENGTH_FT)?;
    amount(AirField::CapLength, duct.cap_ft, MOST_LENGTH_FT)
}

/// The diameter that a rectangular duct counts for: 4 x area / perimeter, inches (IRC 2021 Table M1504.2 note).
///
/// # Errors
/// [`AirRefusal`]: a side that is none.
///
/// ```
/// // 3-1/4 by 10 in: 4 x 32.5 / 26.5 = 4.906 in.
/// assert!((calc::air::duct::round_diameter_in(3.25, 10.0)? - 4.906).abs() < 0.001);
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn round_diameter_in(width_in: f64, height_in: f64) -> Result<f64, AirRefusal> {
    more(AirField::Side, width_in, 0.1, 100.0)?;
    more(AirField::Side, height_in, 0.1, 100.0)?;
    Ok(4.0 * width_in * height_in / (2.0 * (width_in + height_in)))
}

/// How long the code lets a duct be for a fan's flow as rated at 0.25 in of water, its elbows taken off: the row of the
/// next diameter that is not larger, the column of the next flow that is not smaller; none above the largest flow or below the
/// least diameter of the table.
///
/// # Errors
/// [`AirRefusal`].
///
/// ```
/// use calc::air::duct::{Duct, DuctKind, MostLength, code_length};
/// let duct = Duct { diameter_in: 4.0, length_ft: 10.0, kind: DuctKind::Smooth, elbows: 1, elbow_ft: 15.0, cap_ft: 30.0 };
/// assert_eq!(code_length(&duct, 80.0)?, Some(MostLength::Ft(16.0)));
/// # Ok::<(), calc::air::AirRefusal>(())
/// ```
pub fn code_length(duct: &Duct, rated_cfm: f64) -> Result<Option<MostLength>, AirRefusal> {
    check(duct)?;
    more(AirField::Flow, rated_cfm, 1e-3, MOST_CFM)?;
    let fits = |row: &&DuctRow| {
        row.kind == duct.kind && row.diameter_in <= duct.diameter_in * (1.0 + 1e-12)
    };
    let row = DUCT_LENGTHS.iter().rfind(fits);
    let column = DUCT_FLOWS_CFM
        .iter()
        .position(|flow| rated_cfm <= flow * (1.0 + 1e-12));
    let most = row
        .zip(column)
        .and_then(|(row, column)| row.most.get(column).copied());
    Ok(most.map(|most| match most {
        MostLength::Ft(ft) => {
            let left_ft = ft - f64::from(duct.elbows) * ELBOW_DEDUCTION_FT;
            if left_ft < 0.0 {
                MostLength::NotAllowed
            } else {
                MostLength::Ft(left_ft)
            }
        }
        other => other,
    }))
}

impl Friction {
    /// How the figures come about.
    pub fn working(&self) -> Vec<Step> {
        let ft = |name, value| figure(name, value, Unit::Ft);
        vec![
            step(
                "duct_equivalent_length",
                vec![
                    ft("duct_length", self.duct.length_ft),
                    figure("elbows", f64::from(self.duct.elbows), Unit::Count),
                    ft("elbow_length", self.duct.elbow_ft),
                    ft("cap_length", self.duct.cap_ft),
                ],
                ft("equivalent_length", self.equivalent_ft),
                Source::CommonPractice,
            ),
            step(
                "duct_velocity",
                vec![
                    figure("flow", self.cfm, Unit::Cfm),
                    figure("diameter", self.duct.diameter_in, Unit::In),
                ],
                figure("velocity", self.velocity_fpm, Unit::FeetPerMinute),
                Source::Arithmetic,
            ),
            step(
                "duct_friction_factor",
                vec![
                    figure("reynolds", self.reynolds, Unit::Ratio),
                    ft("roughness", self.duct.kind.roughness_ft()),
                ],
                figure("friction_factor", self.factor, Unit::Ratio),
                Source::Published("Colebrook 1939; roughness: ASHRAE Handbook of Fundamentals"),
            ),
            step(
                "duct_friction",
                vec![
                    figure("friction_factor", self.factor, Unit::Ratio),
                    ft("equivalent_length", self.equivalent_ft),
                    figure("velocity", self.velocity_fpm, Unit::FeetPerMinute),
                ],
                figure("duct_loss", self.inwg, Unit::InchesOfWater),
                Source::Published("Darcy-Weisbach"),
            ),
        ]
    }
}
