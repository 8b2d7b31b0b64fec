//! The longest run of a size, the smallest size for a run, and what a size more would save; for one load at the end.

use super::*;

/// One load at the end of a run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SingleLoad {
    /// The edition of NFPA 70.
    pub edition: CodeEdition,
    /// The system.
    pub system: System,
    /// The current, on a multiwire run that of leg A, amperes.
    pub current_a: f64,
    /// The current of leg B on a multiwire run, amperes; no other run has one.
    pub current_b_a: f64,
    /// Metal, method, temperature.
    pub wire: Wire,
    /// Conductors in parallel for each leg.
    pub parallel: u32,
    /// The most that may be lost, percent of the nominal voltage.
    pub limit_percent: f64,
}

/// The longest run.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LongestRun {
    /// The edition.
    pub edition: CodeEdition,
    /// One way, feet.
    pub length_ft: f64,
    /// What is lost over it, volts.
    pub drop_v: f64,
    /// The working.
    pub steps: Vec<Step>,
}

/// The smallest size, by the drop alone.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SmallestForDrop {
    /// The edition.
    pub edition: CodeEdition,
    /// The size. Its ampacity and its breaker are another question.
    pub size: Size,
    /// The most that a conductor may have, ohms per 1000 ft.
    pub max_ohm_per_kft: f64,
    /// What this size has, ohms per 1000 ft.
    pub ohm_per_kft: f64,
    /// What is lost with it, volts.
    pub drop_v: f64,
    /// The same, percent.
    pub drop_percent: f64,
    /// The working.
    pub steps: Vec<Step>,
}

/// What a size more saves.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct StepUp {
    /// The size as it is.
    pub size: Size,
    /// The next size that the table has.
    pub next: Size,
    /// What is lost with the size, watts.
    pub lost_w: f64,
    /// What is lost with the next, watts.
    pub next_lost_w: f64,
    /// What is saved while the loads run, watts.
    pub saved_w: f64,
    /// The most that is lost with the next size, percent.
    pub next_percent: f64,
}

impl SingleLoad {
    /// Volts lost for each ampere and each ohm of one conductor.
    fn factor(&self) -> f64 {
        match self.system {
            System::TwoWire { .. } => 2.0,
            System::ThreePhase { .. } => 3f64.sqrt(),
            System::Multiwire { .. } => 1.0,
        }
    }

    /// The current that counts, amperes: on a multiwire run the worse leg loses I R in its hot and (I - other) R in the
    /// neutral.
    fn counted_a(&self) -> f64 {
        if matches!(self.system, System::Multiwire { .. }) {
            let (more_a, less_a) = self.legs_a();
            2.0 * more_a - less_a
        } else {
            self.current_a
        }
    }

    /// The leg with more and the one with less, amperes.
    fn legs_a(&self) -> (f64, f64) {
        let (a, b) = (self.current_a, self.current_b_a);
        (a.max(b), a.min(b))
    }

    /// The step that says which current counts.
    fn counted_step(&self) -> Option<Step> {
        let (more_a, less_a) = self.legs_a();
        matches!(self.system, System::Multiwire { .. }).then(|| {
            step(
                "multiwire_current",
                vec![
                    figure("current", more_a, Unit::Amps),
                    figure("other_leg", less_a, Unit::Amps),
                ],
                figure("counted_current", self.counted_a(), Unit::Amps),
                Source::Arithmetic,
            )
        })
    }

    fn check(&self) -> Result<f64, DropRefusal> {
        let volts = self.system.nominal();
        if !(volts > 0.0 && volts <= MOST_VOLTS) {
            return Err(DropRefusal::Volts { volts });
        }
        let multiwire = matches!(self.system, System::Multiwire { .. });
        let good = |a: f64| (0.0..=MOST_CURRENT_A).contains(&a);
        for (amps, none) in [
            (self.current_a, !multiwire),
            (self.current_b_a, multiwire && self.current_a == 0.0),
        ] {
            if !good(amps) || (none && amps == 0.0) {
                let demand = Demand::Amps(amps);
                return Err(DropRefusal::Load { stretch: 0, demand });
            }
        }
        if !multiwire && self.current_b_a > 0.0 {
            let across = Across::B;
            return Err(DropRefusal::Across { stretch: 0, across });
        }
        if !(1..=MOST_PARALLEL).contains(&self.parallel) {
            return Err(DropRefusal::Parallel {
                parallel: self.parallel,
            });
        }
        if !(self.limit_percent > 0.0 && self.limit_percent < 100.0) {
            return Err(DropRefusal::Limit {
                percent: self.limit_percent,
            });
        }
        Ok(volts * self.limit_percent / 100.0)
    }
}

/// The longest run of a size that keeps a limit: Vmax x 1000 / (2 I Z) for two wires, Vmax x 1000 / ((2 I - other) Z) for
/// the worse leg of a multiwire run.
///
/// # Errors
/// [`DropRefusal`], as [`voltage_drop`]; [`DropRefusal::Limit`].
///
/// # Example
/// 16 A on 12 AWG solid copper, 3 % of 120 V: 3.6 x 1000 / (2 x 16 x 1.93) = 58.3 ft.
/// ```
/// use calc::job::CodeEdition;
/// use calc::wiring::conductor::Size;
/// use calc::wiring::impedance::Wire;
/// use calc::wiring::voltage_drop::{SingleLoad, System, longest_run};
/// let load = SingleLoad {
///     edition: CodeEdition::E2023,
///     system: System::TwoWire { volts: 120.0 },
///     current_a: 16.0,
///     current_b_a: 0.0,
///     wire: Wire::COPPER,
///     parallel: 1,
///     limit_percent: 3.0,
/// };
/// assert!((longest_run(Size::Awg12, &load).unwrap().length_ft - 58.29).abs() < 0.005);
/// ```
pub fn longest_run(size: Size, load: &SingleLoad) -> Result<LongestRun, DropRefusal> {
    let limit_v = load.check()?;
    let wire = impedance(size, &load.wire, load.edition)?;
    let ohm_per_kft = wire.effective_ohm_per_kft / f64::from(load.parallel);
    let length_ft = limit_v * 1000.0 / (load.factor() * load.counted_a() * ohm_per_kft);
    let mut steps = wire.steps;
    steps.extend(load.counted_step());
    steps.push(step(
        "longest_run",
        vec![
            figure("limit", limit_v, Unit::Volts),
            figure("factor", load.factor(), Unit::Ratio),
            figure("current", load.counted_a(), Unit::Amps),
            figure("impedance", ohm_per_kft, Unit::OhmsPerKft),
        ],
        figure("length", length_ft, Unit::Ft),
        Rule::BranchDrop.source(load.edition),
    ));
    Ok(LongestRun {
        edition: load.edition,
        length_ft,
        drop_v: limit_v,
        steps,
    })
}

/// The most that one conductor may have, ohms per 1000 ft, to keep a limit over a run of so many feet one way.
///
/// # Errors
/// As [`longest_run`]; [`DropRefusal::Length`].
pub fn max_resistance_ohm_per_kft(length_ft: f64, load: &SingleLoad) -> Result<f64, DropRefusal> {
    let limit_v = load.check()?;
    if !(length_ft > 0.0 && length_ft <= MOST_LENGTH_FT) {
        return Err(DropRefusal::Length { length_ft });
    }
    let parallel = f64::from(load.parallel);
    Ok(limit_v * 1000.0 * parallel / (load.factor() * load.counted_a() * length_ft))
}

/// The smallest size that keeps a limit over a run of so many feet one way, by the drop alone; of the sizes that a circuit
/// may have, and of those that may run in parallel where several do.
///
/// # Errors
/// As [`max_resistance_ohm_per_kft`]; [`DropRefusal::NoSize`].
pub fn smallest_for_drop(
    length_ft: f64,
    load: &SingleLoad,
) -> Result<SmallestForDrop, DropRefusal> {
    let max_ohm_per_kft = max_resistance_ohm_per_kft(length_ft, load)?;
    // No smaller than a circuit may have (310.3(A)), and no smaller than may run in parallel (310.10(G)).
    let least = if load.parallel > 1 {
        LEAST_PARALLEL
    } else {
        load.wire.metal.least_size()
    };
    for &size in Size::ALL.iter().filter(|size| **size >= least) {
        let wire = match impedance(size, &load.wire, load.edition) {
            Ok(wire) => wire,
            // Sizes that the table doesn't have in this metal or construction are passed over.
            Err(ImpedanceRefusal::Conductor(_)) => continue,
            Err(refusal) => return Err(refusal.into()),
        };
        let ohm_per_kft = wire.effective_ohm_per_kft;
        if ohm_per_kft > max_ohm_per_kft * (1.0 + 1e-12) {
            continue;
        }
        let drop_v = load.factor() * load.counted_a() * length_ft * ohm_per_kft
            / 1000.0
            / f64::from(load.parallel);
        let drop_percent = drop_v / load.system.nominal() * 100.0;
        let mut steps: Vec<Step> = load.counted_step().into_iter().collect();
        steps.push(step(
            "max_resistance",
            vec![
                figure("limit", load.limit_percent, Unit::Percent),
                figure("nominal", load.system.nominal(), Unit::Volts),
                figure("factor", load.factor(), Unit::Ratio),
                figure("current", load.counted_a(), Unit::Amps),
                figure("length", length_ft, Unit::Ft),
            ],
            figure("max_resistance", max_ohm_per_kft, Unit::OhmsPerKft),
            Rule::BranchDrop.source(load.edition),
        ));
        steps.extend(wire.steps);
        steps.push(step(
            "drop_single",
            vec![
                figure("factor", load.factor(), Unit::Ratio),
                figure("current", load.counted_a(), Unit::Amps),
                figure("length", length_ft, Unit::Ft),
                figure("impedance", ohm_per_kft, Unit::OhmsPerKft),
            ],
            figure("drop", drop_v, Unit::Volts),
            Source::Arithmetic,
        ));
        return Ok(SmallestForDrop {
            edition: load.edition,
            size,
            max_ohm_per_kft,
            ohm_per_kft,
            drop_v,
            drop_percent,
            steps,
        });
    }
    Err(DropRefusal::NoSize { max_ohm_per_kft })
}

/// What the next size that the table has would save on a run; `None` at the largest.
///
/// # Errors
/// As [`voltage_drop`].
pub fn step_up(run: &Run) -> Result<Option<StepUp>, DropRefusal> {
    let lost_w = voltage_drop(run)?.lost_w;
    let mut next_run = run.clone();
    while let Some(next) = next_run.size.next() {
        next_run.size = next;
        let answer = match voltage_drop(&next_run) {
            Ok(answer) => answer,
            Err(DropRefusal::Impedance(ImpedanceRefusal::Conductor(_))) => continue,
            Err(refusal) => return Err(refusal),
        };
        return Ok(Some(StepUp {
            size: run.size,
            next,
            lost_w,
            next_lost_w: answer.lost_w,
            saved_w: lost_w - answer.lost_w,
            next_percent: answer.worst_percent,
        }));
    }
    Ok(None)
}
