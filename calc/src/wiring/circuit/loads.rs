//! What the loads of a circuit add up to.

use super::*;

/// What is on a circuit, amperes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Amounts {
    /// All of it.
    pub total_a: f64,
    /// What counts as continuous: entered so, water heaters and space heating.
    pub continuous_a: f64,
    /// What is fastened in place, luminaires apart.
    pub fixed_a: f64,
    /// The largest single appliance on a cord and plug.
    pub largest_plug_a: f64,
    /// The largest motor.
    pub largest_motor_a: f64,
    /// What the conductor must carry for motors: 125 % of the largest, the others, and the rest of the load with 125 % of
    /// what is continuous (430.22, 430.24); nothing without a motor.
    pub motor_min_a: f64,
    /// The least rating: what is not continuous and 125 % of what is.
    pub min_rating_a: f64,
    /// Of the breaker's rating, percent.
    pub share_percent: f64,
}

/// What a load takes at the voltage of its circuit, amperes.
pub(super) fn amps(circuit: &Circuit, load: &CircuitLoad) -> f64 {
    match load.takes {
        Takes::Amps(amps) => amps,
        Takes::Watts(watts) => watts / circuit.volts,
    }
}

fn is_continuous(load: &CircuitLoad) -> bool {
    load.continuous || matches!(load.kind, LoadKind::WaterHeater | LoadKind::SpaceHeating)
}

/// The sums of a circuit's own loads, and of those beside it on the same pole.
pub(super) fn amounts(circuit: &Circuit, beside: bool, planned: bool) -> Amounts {
    let mut sums = Amounts::default();
    let (mut motors_a, mut rest_a) = (0.0, 0.0);
    let others: &[CircuitLoad] = if beside { &circuit.beside } else { &[] };
    let all = circuit.loads.iter().chain(others);
    for load in all.filter(|load| planned || !load.planned) {
        let a = amps(circuit, load);
        sums.total_a += a;
        if is_continuous(load) {
            sums.continuous_a += a;
        }
        if load.kind.is_fixed() {
            sums.fixed_a += a;
        }
        if load.kind == LoadKind::CordAndPlug {
            sums.largest_plug_a = sums.largest_plug_a.max(a);
        }
        if load.kind == LoadKind::Motor {
            motors_a += a;
            sums.largest_motor_a = sums.largest_motor_a.max(a);
        } else if is_continuous(load) {
            rest_a += CONTINUOUS_FACTOR * a;
        } else {
            rest_a += a;
        }
    }
    if sums.largest_motor_a > 0.0 {
        sums.motor_min_a = motors_a + (MOTOR_FACTOR - 1.0) * sums.largest_motor_a + rest_a;
    }
    sums.min_rating_a = sums.total_a + (CONTINUOUS_FACTOR - 1.0) * sums.continuous_a;
    sums.share_percent = sums.total_a / circuit.breaker_a * 100.0;
    sums
}

/// The loads that count as continuous by their kind, whatever was entered (422.13, 424.4(B)).
fn by_kind(circuit: &Circuit, kind: LoadKind, rule: Rule) -> Option<Step> {
    let loads: Vec<f64> = circuit
        .all_loads()
        .filter(|load| load.kind == kind)
        .map(|load| amps(circuit, load))
        .collect();
    (!loads.is_empty()).then(|| {
        step(
            "counts_as_continuous",
            loads
                .iter()
                .map(|&a| figure("load", a, Unit::Amps))
                .collect(),
            figure("continuous", loads.iter().sum(), Unit::Amps),
            rule.source(circuit.edition),
        )
    })
}

pub(super) fn steps(circuit: &Circuit, sums: &Amounts) -> Vec<Step> {
    let edition = circuit.edition;
    let mut steps = vec![
        step(
            "total_load",
            circuit
                .all_loads()
                .map(|load| figure("load", amps(circuit, load), Unit::Amps))
                .collect(),
            figure("total", sums.total_a, Unit::Amps),
            Rule::PermissibleLoad.source(edition),
        ),
        step(
            "share_of_breaker",
            vec![
                figure("total", sums.total_a, Unit::Amps),
                figure("breaker", circuit.breaker_a, Unit::Amps),
            ],
            figure("share", sums.share_percent, Unit::Percent),
            Source::Arithmetic,
        ),
        step(
            "min_rating",
            vec![
                figure("continuous", sums.continuous_a, Unit::Amps),
                figure("continuous_factor", CONTINUOUS_FACTOR, Unit::Ratio),
                figure("other", sums.total_a - sums.continuous_a, Unit::Amps),
            ],
            figure("min_rating", sums.min_rating_a, Unit::Amps),
            Rule::BranchDevice.source(edition),
        ),
    ];
    steps.extend(by_kind(circuit, LoadKind::WaterHeater, Rule::WaterHeater));
    steps.extend(by_kind(circuit, LoadKind::SpaceHeating, Rule::SpaceHeating));
    steps
}

/// The lighting circuits that a dwelling needs.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LightingCircuits {
    /// The edition.
    pub edition: CodeEdition,
    /// The load, volt-amperes.
    pub load_va: f64,
    /// The same, amperes.
    pub load_a: f64,
    /// Circuits.
    pub circuits: u32,
    /// The working.
    pub steps: Vec<Step>,
}

/// The lighting circuits of a rating that a dwelling of so many square feet needs: 3 VA for each, rounded up
/// (210.11(A)).
///
/// # Errors
/// [`CircuitRefusal`]: an area, voltage or rating that is none.
///
/// # Example
/// 1500 ft2: 4500 VA, 37.5 A at 120 V: three circuits of 15 A.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::circuit::lighting_circuits;
/// let answer = lighting_circuits(1500.0, 120.0, 15.0, CodeEdition::E2023).unwrap();
/// assert_eq!((answer.load_va, answer.load_a, answer.circuits), (4500.0, 37.5, 3));
/// ```
pub fn lighting_circuits(
    area_ft2: f64,
    volts: f64,
    rating_a: f64,
    edition: CodeEdition,
) -> Result<LightingCircuits, CircuitRefusal> {
    if !(area_ft2 > 0.0 && area_ft2 <= 100_000.0) {
        return Err(CircuitRefusal::Area { area_ft2 });
    }
    if !(volts > 0.0 && volts <= MOST_VOLTS) {
        return Err(CircuitRefusal::Volts { volts });
    }
    if !(1.0..=MOST_CURRENT_A).contains(&rating_a) {
        return Err(CircuitRefusal::Breaker { rating_a });
    }
    let load_va = LIGHTING_VA_PER_FT2 * area_ft2;
    let load_a = load_va / volts;
    let circuits = (load_a / rating_a - 1e-9).ceil().max(1.0);
    let steps = vec![
        step(
            "lighting_load",
            vec![
                figure("area", area_ft2, Unit::Ft2),
                figure("va_per_ft2", LIGHTING_VA_PER_FT2, Unit::VoltAmps),
            ],
            figure("load", load_va, Unit::VoltAmps),
            Rule::LightingCircuits.source(edition),
        ),
        step(
            "lighting_circuits",
            vec![
                figure("load", load_a, Unit::Amps),
                figure("rating", rating_a, Unit::Amps),
            ],
            figure("circuits", circuits, Unit::Count),
            Rule::LightingCircuits.source(edition),
        ),
    ];
    // At most 300,000 VA over 1 A and a volt: far within a u32.
    let circuits = circuits as u32;
    Ok(LightingCircuits {
        edition,
        load_va,
        load_a,
        circuits,
        steps,
    })
}

/// The largest continuous load on a rating, watts at unity power factor: 80 % of it (210.20(A)).
///
/// # Errors
/// [`CircuitRefusal`]: a voltage or rating that is none.
pub fn most_continuous_w(volts: f64, rating_a: f64) -> Result<f64, CircuitRefusal> {
    if !(volts > 0.0 && volts <= MOST_VOLTS) {
        return Err(CircuitRefusal::Volts { volts });
    }
    if !(rating_a > 0.0 && rating_a <= MOST_CURRENT_A) {
        return Err(CircuitRefusal::Breaker { rating_a });
    }
    Ok(rating_a / CONTINUOUS_FACTOR * volts)
}
