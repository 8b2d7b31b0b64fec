//! One verdict for each rule.

use super::*;

mod conductor;
mod drop;
mod neutral;
mod ratings;
mod shares;

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
    /// What a circuit of more than 20 A feeds.
    LargeCircuit,
    /// The receptacles have a rating that goes with the circuit.
    ReceptacleRating,
    /// The breaker is no larger than a single appliance allows.
    ApplianceBreaker,
    /// The breaker has a standard rating.
    StandardRating,
    /// A circuit of several outlets has one of its ratings.
    CircuitRating,
    /// A required circuit has its rating.
    RequiredRating,
    /// A required circuit feeds what it may.
    RequiredLoads,
    /// The conductor is no smaller than a circuit may have.
    LeastSize,
    /// The cable is made in that size.
    SizeMade,
    /// The insulation stands the air round it.
    TooHot,
    /// The conductor before correction carries 125 % of what is continuous, and the rest.
    ConductorBefore,
    /// The conductor after correction and adjustment carries the load.
    ConductorAfter,
    /// The breaker is no larger than the conductor allows.
    BreakerForConductor,
    /// The conductor where it lies carries 125 % of its largest motor, and the rest.
    MotorConductor,
    /// The drop at the far end: a recommendation.
    BranchDrop,
    /// The drop of the feeder alone: a recommendation.
    FeederDrop,
    /// The drop with the feeder's: a recommendation.
    TotalDrop,
    /// A box on the way.
    BoxFill {
        /// The box.
        id: u32,
    },
    /// The current in the shared neutral.
    NeutralLoad,
    /// Whether the shared neutral runs with its hots.
    NeutralTogether,
    /// Whether taking out a device leaves the shared neutral whole.
    NeutralWhole,
    /// What is wrong with the shared neutral.
    Neutral(NeutralFinding),
    /// Arc-fault protection of what is added.
    ArcFault,
    /// Ground-fault protection of what is added.
    GroundFault,
    /// What a receptacle that replaces another is.
    Replacement,
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
    /// The rating of a receptacle, which is not entered.
    ReceptacleRating {
        /// The least it may have, amperes.
        least_a: f64,
    },
    /// It depends on the room and on what is done there, which are not entered.
    ByTheRoom,
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

/// What is on something, now and with the additions.
struct OnIt {
    now: Amounts,
    after: Option<Amounts>,
}

struct Judge {
    edition: CodeEdition,
    /// On the pole of the breaker.
    pole: OnIt,
    /// On the circuit's own conductor.
    own: OnIt,
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

impl Judge {
    /// A limit in amperes on a figure of all loads on the pole.
    fn amps(&mut self, check: Check, rule: Rule, limit_a: f64, of: fn(&Amounts) -> f64) {
        let (now, after) = self.pole.held(limit_a, of);
        self.compared(check, rule, Outcome::Fails, now, after);
    }

    /// The same on the loads of the circuit's own conductor.
    fn own_amps(&mut self, check: Check, rule: Rule, limit_a: f64, of: fn(&Amounts) -> f64) {
        let (now, after) = self.own.held(limit_a, of);
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

impl OnIt {
    fn held(&self, limit_a: f64, of: fn(&Amounts) -> f64) -> (Compared, Option<Compared>) {
        let compare = |amounts: &Amounts| at_most(of(amounts), limit_a, Unit::Amps);
        (compare(&self.now), self.after.as_ref().map(compare))
    }

    /// With the additions, where there are any.
    fn all(&self) -> &Amounts {
        self.after.as_ref().unwrap_or(&self.now)
    }
}

pub(super) fn verdicts(
    circuit: &Circuit,
    ampacity: &Result<Ampacity, AmpacityRefusal>,
    steps: &mut Vec<Step>,
) -> Vec<Verdict> {
    let planned = circuit.all_loads().any(|load| load.planned);
    let own_planned = circuit.loads.iter().any(|load| load.planned);
    let mut judge = Judge {
        edition: circuit.edition,
        pole: OnIt {
            now: circuit.on_pole(false),
            after: planned.then(|| circuit.on_pole(true)),
        },
        own: OnIt {
            now: circuit.on_conductor(false),
            after: planned.then(|| circuit.on_conductor(true)),
        },
        verdicts: Vec::new(),
    };
    shares::judge(circuit, &mut judge);
    ratings::judge(circuit, &mut judge);
    conductor::judge(circuit, ampacity, &mut judge);
    drop::judge(circuit, &mut judge, steps);
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
    neutral::judge(circuit, &mut judge, steps);
    if own_planned {
        by_the_room(circuit, &mut judge);
    }
    judge.verdicts
}

/// What hangs on the room where something is added: it is named, so that nobody takes silence for leave.
fn by_the_room(circuit: &Circuit, judge: &mut Judge) {
    let mut open = |check, rule| judge.not_judged(check, rule, NotJudged::ByTheRoom);
    // 210.12: 120 V circuits up to 20 A.
    if circuit.volts < 150.0 && circuit.breaker_a <= 20.0 {
        open(Check::ArcFault, Rule::ArcFault);
    }
    open(Check::GroundFault, Rule::GroundFault);
    if circuit.receptacles > 0 {
        open(Check::Replacement, Rule::Replacement);
    }
}
