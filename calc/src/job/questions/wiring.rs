//! The wiring: from what was entered to what [`wiring`](crate::wiring) is asked, and its answers.
//!
//! - [`boxes`] how full a box is;
//! - [`laid`] how a conductor lies: its bundle, its ampacity, the smallest conductor for a load;
//! - [`drop`] voltage drop along a run, its longest run, its smallest size, and what a measured drop implies;
//! - [`cable`] cable for a run, and which cables switches need;
//! - [`panel`] the panel as it hangs, its directory, what is wrong with it, and its supply;
//! - [`neutral`] the currents in the neutrals of a job;
//! - [`circuit`] a circuit judged rule by rule.

use serde::Serialize;

use super::{EntryProblem, Reader};
use crate::job::{LoadEntry, LoadUnit, fields};
use crate::wiring::circuit::LoadKind;
use crate::wiring::conductor::Size;

pub mod boxes;

pub mod laid;

pub mod drop;

pub mod cable;

pub mod panel;

pub mod neutral;

pub mod circuit;

/// Nominal voltage from a leg to the neutral.
pub const LEG_VOLTS: f64 = 120.0;

/// Nominal voltage from leg to leg.
pub const ACROSS_VOLTS: f64 = 240.0;

/// Why something isn't answered.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum AskProblem<R> {
    /// Entries that are missing or refused, each by its row and field.
    Entries(Vec<EntryProblem>),
    /// They can be read but can't be answered.
    Refused(R),
}

impl<R> From<Vec<EntryProblem>> for AskProblem<R> {
    fn from(problems: Vec<EntryProblem>) -> Self {
        Self::Entries(problems)
    }
}

impl Reader {
    /// A size that must have been chosen; the smallest stands in until [`Reader::finish`] refuses all.
    fn size(&mut self, name: &'static str, size: Option<Size>) -> Size {
        size.unwrap_or_else(|| {
            self.missing(name);
            Size::Awg18
        })
    }

    /// What a load takes, amperes at `volts`. Watts of a motor don't tell its current: it is asked for as `motor_amps`
    /// (430.6(A)(1), Table 430.248).
    fn load_amps(&mut self, load: &LoadEntry, volts: f64) -> f64 {
        match load.unit {
            LoadUnit::Amps => self.need("amount", &fields::LOAD_AMPS, &load.amount),
            LoadUnit::Watts => {
                let watts = self.need("amount", &fields::LOAD_WATTS, &load.amount);
                if load.kind == LoadKind::Motor {
                    self.missing("motor_amps");
                }
                watts / volts
            }
        }
    }
}
