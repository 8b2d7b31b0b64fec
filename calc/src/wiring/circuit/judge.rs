//! One verdict for each rule.

use super::super::tables::{BRANCH_DROP_PERCENT, TOTAL_DROP_PERCENT, breaker_ratings_a};
use super::super::voltage_drop::{
    Across, Demand, DropLoad, Run, Stretch, System, VoltageDrop, voltage_drop,
};
use super::*;

/// How a rule comes out; what fails sorts first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// It is broken.
    Fails,
    /// It can't be judged.
    NotJudged,
    /// A recommendation is not kept.
    Advised,
    /// It is kept.
    Passes,
}

/// What is checked.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Check {
    /// The load is no more than the breaker's rating.
    TotalLoad,
    /// What is not continuous and 125 % of what is, against the rating.
    ContinuousLoad,
    /// The largest appliance on a cord and plug: 80 % of the rating.
    PlugLoad,
    /// All that is fastened in place, beside lights or plugs: 50 % of the rating.
    FixedLoad,
    /// What a 10 A circuit feeds.
    TenAmp,
    /// The breaker has a standard rating.
    StandardRating,
    /// A circuit of several outlets has one of its ratings.
    CircuitRating,
    /// A required circuit has its rating.
    RequiredRating,
    /// A required circuit feeds what it may.
    RequiredLoads,
    /// The conductor before correction carries 125 % of what is continuous, and the rest.
    ConductorBefore,
    /// The conductor after correction and adjustment carries the load.
    ConductorAfter,
    /// The breaker is no larger than the conductor allows.
    BreakerForConductor,
    /// The conductor carries 125 % of its largest motor.
    MotorConductor,
    /// The drop at the far end: a recommendation.
    BranchDrop,
    /// The drop with the feeder's: a recommendation.
    TotalDrop,
    /// A box on the way.
    BoxFill {
        /// The box.
        id: u32,
    },
    /// The current in the shared neutral.
    NeutralLoad,
    /// What is wrong with the shared neutral.
    Neutral(NeutralFinding),
}

/// A figure against its limit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Compared {
    /// The figure.
    pub value: f64,
    /// Its limit.
    pub limit: f64,
    /// The unit of both.
    pub unit: Unit,
    /// Whether the rule is kept.
    pub kept: bool,
}

/// Why a rule can't be judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NotJudged {
    /// The conductor.
    Ampacity(AmpacityRefusal),
    /// The run.
    Drop(DropRefusal),
    /// A box.
    Box(BoxRefusal),
    /// The neutral.
    Neutral(NeutralRefusal),
    /// A motor alone on its circuit: its breaker and conductor follow Article 430, which isn't here.
    MotorAlone,
    /// A load at a stretch that the run doesn't have.
    NoStretch {
        /// The load.
        load: u32,
        /// The stretch given.
        stretch: usize,
    },
}

/// A rule, judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// What is checked.
    pub check: Check,
    /// The section.
    pub section: &'static str,
    /// How it comes out, with the additions where there are any.
    pub outcome: Outcome,
    /// As it is now, where it is a figure.
    pub now: Option<Compared>,
    /// With the additions, where there are any and it is a figure.
    pub after: Option<Compared>,
    /// Why it can't be judged.
    pub why_not: Option<NotJudged>,
}

struct Judge<'a> {
    edition: CodeEdition,
    now: &'a Amounts,
    after: Option<&'a Amounts>,
    verdicts: Vec<Verdict>,
}

/// A figure that must not be above its limit.
fn at_most(value: f64, limit: f64, unit: Unit) -> Compared {
    Compared {
        value,
        limit,
        unit,
        kept: value <= limit + ROUNDING_A,
    }
}

impl Judge<'_> {
    /// A limit in amperes on a figure of the loads.
    fn amps(&mut self, check: Check, rule: Rule, limit_a: f64, of: impl Fn(&Amounts) -> f64) {
        let compare = |amounts: &Amounts| at_most(of(amounts), limit_a, Unit::Amps);
        let (now, after) = (compare(self.now), self.after.map(compare));
        self.compared(check, rule, Outcome::Fails, now, after);
    }

    fn compared(
        &mut self,
        check: Check,
        rule: Rule,
        broken: Outcome,
        now: Compared,
        after: Option<Compared>,
    ) {
        let kept = after.unwrap_or(now).kept;
        self.verdicts.push(Verdict {
            check,
            section: rule.section(self.edition),
            outcome: if kept { Outcome::Passes } else { broken },
            now: Some(now),
            after,
            why_not: None,
        });
    }

    fn plain(&mut self, check: Check, rule: Rule, kept: bool) {
        self.verdicts.push(Verdict {
            check,
            section: rule.section(self.edition),
            outcome: if kept {
                Outcome::Passes
            } else {
                Outcome::Fails
            },
            now: None,
            after: None,
            why_not: None,
        });
    }

    fn not_judged(&mut self, check: Check, rule: Rule, why: NotJudged) {
        self.verdicts.push(Verdict {
            check,
            section: rule.section(self.edition),
            outcome: Outcome::NotJudged,
            now: None,
            after: None,
            why_not: Some(why),
        });
    }
}

pub(super) fn verdicts(
    circuit: &Circuit,
    now: &Amounts,
    after: Option<&Amounts>,
    ampacity: &Result<Ampacity, AmpacityRefusal>,
    steps: &mut Vec<Step>,
) -> Vec<Verdict> {
    let mut judge = Judge {
        edition: circuit.edition,
        now,
        after,
        verdicts: Vec::new(),
    };
    loads(circuit, &mut judge);
    ratings(circuit, &mut judge);
    conductor(circuit, ampacity, &mut judge);
    drop(circuit, &mut judge, steps);
    for found in &circuit.boxes {
        let check = Check::BoxFill { id: found.id };
        match box_fill(&found.vessel, &found.contents, circuit.edition) {
            Ok(fill) => {
                let compared = Compared {
                    value: fill.required_in3,
                    limit: fill.volume_in3,
                    unit: Unit::In3,
                    kept: fill.fits,
                };
                judge.compared(check, Rule::BoxFill, Outcome::Fails, compared, None);
                steps.extend(fill.steps);
            }
            Err(refusal) => judge.not_judged(check, Rule::BoxFill, NotJudged::Box(refusal)),
        }
    }
    if let Some(neutral) = &circuit.neutral {
        self::neutral(circuit.edition, neutral, &mut judge, steps);
    }
    judge.verdicts
}

fn loads(circuit: &Circuit, judge: &mut Judge) {
    let rating_a = circuit.breaker_a;
    judge.amps(Check::TotalLoad, Rule::PermissibleLoad, rating_a, |sums| {
        sums.total_a
    });
    let full = circuit.full_rating;
    judge.amps(
        Check::ContinuousLoad,
        Rule::BranchDevice,
        rating_a,
        |sums| {
            if full {
                sums.total_a
            } else {
                sums.min_rating_a
            }
        },
    );
    // A circuit for one outlet may feed whatever its rating carries.
    if circuit.outlets > 1 {
        let small = rating_a == 15.0 || rating_a == 20.0;
        if small || rating_a == 30.0 {
            let rule = if small {
                Rule::PlugLoad
            } else {
                Rule::ReceptacleLoad
            };
            judge.amps(Check::PlugLoad, rule, 0.8 * rating_a, |sums| {
                sums.largest_plug_a
            });
        }
        let shared =
            circuit.receptacles > 0 || circuit.loads.iter().any(|load| !load.kind.is_fixed());
        if small && shared {
            judge.amps(Check::FixedLoad, Rule::FixedLoad, 0.5 * rating_a, |sums| {
                sums.fixed_a
            });
        }
    }
}

fn ratings(circuit: &Circuit, judge: &mut Judge) {
    let (edition, rating_a) = (circuit.edition, circuit.breaker_a);
    let standard = breaker_ratings_a(edition).any(|a| a == rating_a);
    judge.plain(Check::StandardRating, Rule::StandardRatings, standard);
    let ten = rating_a == 10.0;
    if circuit.outlets > 1 {
        let among = [15.0, 20.0, 30.0, 40.0, 50.0].contains(&rating_a)
            || (ten && edition == CodeEdition::E2023);
        judge.plain(Check::CircuitRating, Rule::CircuitRating, among);
    }
    if ten {
        let lights = circuit
            .loads
            .iter()
            .all(|load| matches!(load.kind, LoadKind::Luminaire | LoadKind::ExhaustFan));
        let kept = edition == CodeEdition::E2023 && circuit.receptacles == 0 && lights;
        judge.plain(Check::TenAmp, Rule::TenAmp, kept);
    }
    if circuit.purpose != Purpose::General {
        judge.plain(
            Check::RequiredRating,
            Rule::RequiredCircuits,
            rating_a == 20.0,
        );
        let others = match circuit.purpose {
            Purpose::Bathroom { one_bathroom: true } | Purpose::General => true,
            _ => circuit
                .loads
                .iter()
                .all(|load| load.kind == LoadKind::CordAndPlug),
        };
        judge.plain(Check::RequiredLoads, Rule::RequiredCircuits, others);
    }
}

fn conductor(circuit: &Circuit, ampacity: &Result<Ampacity, AmpacityRefusal>, judge: &mut Judge) {
    let ampacity = match ampacity {
        Ok(ampacity) => ampacity,
        Err(refusal) => {
            for (check, rule) in [
                (Check::ConductorBefore, Rule::BranchConductors),
                (Check::ConductorAfter, Rule::BranchConductors),
                (Check::BreakerForConductor, Rule::AtAmpacity),
            ] {
                judge.not_judged(check, rule, NotJudged::Ampacity(refusal.clone()));
            }
            return;
        }
    };
    let before_a = ampacity
        .table_a
        .min(ampacity.terminal_a)
        .min(ampacity.cable_a.unwrap_or(f64::INFINITY));
    judge.amps(
        Check::ConductorBefore,
        Rule::BranchConductors,
        before_a,
        |sums| sums.min_rating_a,
    );
    judge.amps(
        Check::ConductorAfter,
        Rule::BranchConductors,
        ampacity.ampacity_a,
        |sums| sums.total_a,
    );
    if judge.after.unwrap_or(judge.now).largest_motor_a > 0.0 {
        judge.amps(
            Check::MotorConductor,
            Rule::MotorConductors,
            before_a,
            |sums| sums.min_rating_a + sums.motor_extra_a,
        );
    }
    let motor_alone = circuit.outlets <= 1
        && !circuit.loads.is_empty()
        && circuit
            .loads
            .iter()
            .all(|load| load.kind == LoadKind::Motor);
    if motor_alone {
        let rule = Rule::EquipmentProtection;
        judge.not_judged(Check::BreakerForConductor, rule, NotJudged::MotorAlone);
        return;
    }
    let largest_a = ampacity.breaker.rating_a.unwrap_or(0.0);
    let compared = at_most(circuit.breaker_a, largest_a, Unit::Amps);
    judge.compared(
        Check::BreakerForConductor,
        Rule::AtAmpacity,
        Outcome::Fails,
        compared,
        None,
    );
}

fn drop(circuit: &Circuit, judge: &mut Judge, steps: &mut Vec<Step>) {
    if circuit.stretches_ft.is_empty() {
        return;
    }
    let run = |planned: bool| -> Result<VoltageDrop, NotJudged> {
        let mut stretches: Vec<Stretch> = circuit
            .stretches_ft
            .iter()
            .map(|&length_ft| Stretch {
                length_ft,
                loads: Vec::new(),
            })
            .collect();
        for load in circuit.loads.iter().filter(|load| planned || !load.planned) {
            let no_stretch = NotJudged::NoStretch {
                load: load.id,
                stretch: load.stretch,
            };
            let stretch = stretches.get_mut(load.stretch).ok_or(no_stretch)?;
            stretch.loads.push(DropLoad {
                demand: Demand::Amps(loads::amps(circuit, load)),
                across: Across::A,
            });
        }
        let run = Run {
            edition: circuit.edition,
            system: System::TwoWire {
                volts: circuit.volts,
            },
            source_volts: None,
            source_ohm: 0.0,
            size: circuit.conductor.size,
            wire: Wire {
                metal: circuit.conductor.metal,
                ..circuit.wire
            },
            parallel: 1,
            stretches,
            feeder_percent: circuit.feeder_percent,
        };
        voltage_drop(&run).map_err(NotJudged::Drop)
    };
    let after = judge.after.map(|_| run(true)).transpose();
    match (run(false), after) {
        (Ok(now), Ok(after)) => {
            for (check, rule, limit, of) in [
                (
                    Check::BranchDrop,
                    Rule::BranchDrop,
                    BRANCH_DROP_PERCENT,
                    (|drop| drop.worst_percent) as fn(&VoltageDrop) -> f64,
                ),
                (
                    Check::TotalDrop,
                    Rule::TotalDrop,
                    TOTAL_DROP_PERCENT,
                    |drop| drop.total_percent,
                ),
            ] {
                let compare = |drop: &VoltageDrop| at_most(of(drop), limit, Unit::Percent);
                judge.compared(
                    check,
                    rule,
                    Outcome::Advised,
                    compare(&now),
                    after.as_ref().map(compare),
                );
            }
            steps.extend(after.unwrap_or(now).steps);
        }
        (Err(why), _) | (_, Err(why)) => judge.not_judged(Check::BranchDrop, Rule::BranchDrop, why),
    }
}

fn neutral(edition: CodeEdition, neutral: &Neutral, judge: &mut Judge, steps: &mut Vec<Step>) {
    let answer = match neutral_current(neutral) {
        Ok(answer) => answer,
        Err(refusal) => {
            judge.not_judged(
                Check::NeutralLoad,
                Rule::BranchConductors,
                NotJudged::Neutral(refusal),
            );
            return;
        }
    };
    if let Some(ampacity_a) = neutral.ampacity_a {
        let compared = at_most(answer.most_a, ampacity_a, Unit::Amps);
        judge.compared(
            Check::NeutralLoad,
            Rule::BranchConductors,
            Outcome::Fails,
            compared,
            None,
        );
    }
    for finding in answer.findings {
        let (section, outcome) = match &finding {
            // The verdict on the load says it already.
            NeutralFinding::Overloaded { .. } => continue,
            NeutralFinding::ElectronicLoads { .. } => {
                (Rule::NeutralCount.section(edition), Outcome::Advised)
            }
            NeutralFinding::SameLeg { section, .. }
            | NeutralFinding::TandemPair { section, .. }
            | NeutralFinding::TooManyCircuits { section, .. }
            | NeutralFinding::DifferentPanels { section }
            | NeutralFinding::NoCommonDisconnect { section, .. }
            | NeutralFinding::LegToLegLoads { section }
            | NeutralFinding::RunsApart { section }
            | NeutralFinding::OpensAtDevice { section } => (*section, Outcome::Fails),
        };
        judge.verdicts.push(Verdict {
            check: Check::Neutral(finding),
            section,
            outcome,
            now: None,
            after: None,
            why_not: None,
        });
    }
    steps.extend(answer.steps);
}
