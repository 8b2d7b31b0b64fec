//! What other circuits put on a pole of a breaker: they are one branch circuit with the one that is judged.

use super::*;

/// What others put on a pole.
#[derive(Default)]
pub(super) struct Beside {
    pub(super) loads: Vec<CircuitLoad>,
    pub(super) receptacles: u32,
    pub(super) outlets: u32,
    /// Entries of theirs that can't be read.
    pub(super) unread: Vec<EntryProblem>,
    /// Whether anything of theirs is not known.
    pub(super) open: bool,
}

impl Beside {
    /// All circuits on a pole but one.
    pub(super) fn read(job: &Job, circuit: &CircuitEntry, pole: &Pole) -> Self {
        let mut all = Self::default();
        for other in job.circuits.iter().filter(|other| other.id != circuit.id) {
            let here = other.breaker == Some(pole.breaker.id);
            // Only two hots reach beyond their own breaker.
            if !here && other.wiring == CircuitWiring::HotNeutral {
                continue;
            }
            match poles_of(job, other) {
                Ok((_, poles)) if poles.iter().any(|of| of.is(pole)) => all.add(other, pole),
                Err(_) if here => all.open = true,
                Ok(_) | Err(_) => {}
            }
        }
        all
    }

    fn add(&mut self, other: &CircuitEntry, pole: &Pole) {
        let mut reader = Reader::default();
        reader.row(other.id);
        let counted = (
            reader.count("receptacles", &fields::OUTLETS, &other.receptacles),
            reader.count("outlets", &fields::OUTLETS, &other.outlets),
        );
        self.receptacles += counted.0;
        self.outlets += counted.1;
        let multiwire = other.wiring == CircuitWiring::Multiwire;
        let there = other.loads.len();
        for (at, entry) in load_list(other, true).enumerate() {
            if entry.across != Across::Both && !is_on(entry, multiwire, pole.leg()) {
                continue;
            }
            reader.row(entry.id);
            let amps = reader.load_amps(entry, volts_of(other.wiring, entry));
            self.loads.push(load_of(entry, amps, at >= there, 0));
        }
        if let Err(problems) = reader.finish(()) {
            self.open = true;
            self.unread.extend(problems);
        }
    }

    /// All of it, amperes.
    pub(super) fn total_a(&self) -> f64 {
        self.loads
            .iter()
            .map(|load| match load.takes {
                Takes::Amps(amps) => amps,
                Takes::Watts(_) => 0.0,
            })
            .sum()
    }
}

/// Verdicts on the breaker that pass only because a part of what is on it isn't known.
pub(super) fn leave_open(answer: &mut CircuitAnswer) {
    for verdict in &mut answer.verdicts {
        let of_all = matches!(
            verdict.check,
            Check::TotalLoad
                | Check::ContinuousLoad
                | Check::PlugLoad
                | Check::FixedLoad
                | Check::CircuitRating
                | Check::TenAmp
                | Check::LargeCircuit
                | Check::RequiredLoads
        );
        if of_all && verdict.outcome == Outcome::Passes {
            verdict.outcome = Outcome::NotJudged;
            (verdict.now, verdict.after) = (None, None);
        }
    }
}
