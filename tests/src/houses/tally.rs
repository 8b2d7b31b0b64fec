//! Rates over many houses, by fault.

use std::fmt;

use calc::wiring::open_box::faults::FaultKind;
use calc::wiring::open_box::permitted::Risk;

use super::drive::Run;
use super::plant::KINDS;

/// Counts of some runs.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tally {
    /// How many.
    pub count: usize,
    /// How many had the fault in the first answer.
    pub first: usize,
    /// In the first three.
    pub first_three: usize,
    /// How many had it in none.
    pub missed: usize,
    /// Of those with the fault in some answer: the sum of that answer's sizes.
    pub group: usize,
    /// How many first answers said that nothing is seen wrong from here.
    pub nothing_first: usize,
    /// How many named where to look.
    pub looks: usize,
    /// Advised readings by risk.
    pub by_risk: [usize; 4],
    /// Milliseconds, all of them together.
    pub ms: f64,
    /// The slowest diagnosis, milliseconds.
    pub slowest_ms: f64,
}

impl Tally {
    /// Of those runs that count.
    pub fn of<'a>(runs: impl IntoIterator<Item = &'a Run>) -> Self {
        let mut tally = Self::default();
        for run in runs {
            tally.count += 1;
            tally.first += usize::from(run.within(1));
            tally.first_three += usize::from(run.within(3));
            tally.missed += usize::from(run.rank.is_none());
            tally.group += run.group;
            tally.nothing_first += usize::from(run.nothing_first);
            tally.looks += usize::from(run.looks);
            for risk in &run.risks {
                tally.by_risk[match risk {
                    Risk::NothingOpened => 0,
                    Risk::EverythingOff => 1,
                    Risk::VoltsClosed => 2,
                    Risk::VoltsApart => 3,
                }] += 1;
            }
            tally.ms += run.took.as_secs_f64() * 1e3;
            tally.slowest_ms = tally
                .slowest_ms
                .max(run.slowest_diagnosis.as_secs_f64() * 1e3);
        }
        tally
    }

    fn per(&self, sum: f64) -> f64 {
        if self.count == 0 {
            0.0
        } else {
            sum / self.count as f64
        }
    }

    /// The share with the fault in the first answer, percent.
    pub fn first_percent(&self) -> f64 {
        100.0 * self.per(self.first as f64)
    }

    /// In the first three, percent.
    pub fn first_three_percent(&self) -> f64 {
        100.0 * self.per(self.first_three as f64)
    }

    /// The mean size of the answer that has the fault.
    pub fn mean_group(&self) -> f64 {
        self.group as f64 / self.count.saturating_sub(self.missed).max(1) as f64
    }
}

/// The head of the table.
pub const HEAD: &str = "                              count  first%  three%  missed  group  nothing%  looks%  clamp+tester  ohms  volts  apart     ms  slowest";

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [clamp, ohms, volts, apart] = self.by_risk.map(|sum| self.per(sum as f64));
        write!(
            f,
            "{:>5} {:>7.1} {:>7.1} {:>7} {:>6.2} {:>9.1} {:>7.1} {:>13.2} {:>5.2} {:>6.2} {:>6.2} {:>6.1} {:>8.1}",
            self.count,
            self.first_percent(),
            self.first_three_percent(),
            self.missed,
            self.mean_group(),
            100.0 * self.per(self.nothing_first as f64),
            100.0 * self.per(self.looks as f64),
            clamp,
            ohms,
            volts,
            apart,
            self.per(self.ms),
            self.slowest_ms,
        )
    }
}

/// The table: by fault, for faults that the box shows and for those that it doesn't.
pub fn table(runs: &[Run]) -> String {
    let mut lines = vec![HEAD.to_owned()];
    let seen = |run: &&Run| run.tellable;
    for kind in KINDS {
        let those = || runs.iter().filter(|run| run.kind == kind);
        lines.push(format!(
            "{:<30}{}",
            name(kind, true),
            Tally::of(those().filter(seen))
        ));
        lines.push(format!(
            "{:<30}{}",
            name(kind, false),
            Tally::of(those().filter(|r| !r.tellable))
        ));
    }
    lines.retain(|line| !line.contains("     0     0.0"));
    lines.push(format!(
        "{:<30}{}",
        "all that the box shows",
        Tally::of(runs.iter().filter(seen))
    ));
    let unseen = Tally::of(runs.iter().filter(|run| !run.tellable));
    lines.push(format!("{:<30}{}", "all that it doesn't show", unseen));
    lines.join("\n")
}

fn name(kind: FaultKind, shown: bool) -> String {
    format!("{kind:?}{}", if shown { "" } else { ", not shown" })
}
