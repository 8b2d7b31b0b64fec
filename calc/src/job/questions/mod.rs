//! From what was entered to what calc is asked.
//!
//! Each function takes a part of the document and gives the question's quantities, or every entry that keeps it
//! from being asked. The app shows those beside their fields; [`EntryProblem::name`] and `row` say which.

use serde::Serialize;
use thiserror::Error;

use super::Typed;
use super::fields::Field;
use crate::quantity::EntryRefusal;

pub mod room;

pub mod survey;

pub mod pour;

pub mod doorway;

pub mod sums;

pub mod wiring;

pub mod finish;

pub mod opened;

pub mod supply;

pub mod answers;

/// An entry that keeps a question from being asked.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[error("{name} of row {row:?}: {refusal}")]
pub struct EntryProblem {
    /// The field's name in the document.
    pub name: &'static str,
    /// The row's id, for fields that stand in rows.
    pub row: Option<u32>,
    /// What is wrong.
    pub refusal: EntryRefusal,
}

/// Reads entries one after another and keeps every refusal, so that all are told and not only the first.
#[derive(Debug, Default)]
pub(crate) struct Reader {
    problems: Vec<EntryProblem>,
    row: Option<u32>,
}

impl Reader {
    /// The row that the next entries stand in.
    pub fn row(&mut self, row: u32) -> &mut Self {
        self.row = Some(row);
        self
    }

    /// Reads an entry that must be there; zero stands in for a refused one until [`Reader::finish`] refuses all.
    pub fn need(&mut self, name: &'static str, field: &Field, typed: &Typed) -> f64 {
        field.read(typed).unwrap_or_else(|refusal| {
            self.refuse(name, refusal);
            0.0
        })
    }

    /// Reads an entry that may be blank.
    pub fn may(&mut self, name: &'static str, field: &Field, typed: &Typed) -> Option<f64> {
        field.optional(typed).unwrap_or_else(|refusal| {
            self.refuse(name, refusal);
            None
        })
    }

    /// The next entries stand in no row.
    pub fn no_row(&mut self) -> &mut Self {
        self.row = None;
        self
    }

    /// Reads a whole number that must be there.
    pub fn count(&mut self, name: &'static str, field: &Field, typed: &Typed) -> u32 {
        // Fields of counts allow 0 to some hundreds.
        self.need(name, field, typed) as u32
    }

    /// Reads a whole number for which a blank stands for `blank`.
    pub fn count_or(
        &mut self,
        name: &'static str,
        field: &Field,
        typed: &Typed,
        blank: u32,
    ) -> u32 {
        self.may(name, field, typed).map_or(blank, |n| n as u32)
    }

    /// Reads a length that must be there, feet.
    pub fn feet(&mut self, name: &'static str, field: &Field, typed: &Typed) -> f64 {
        self.need(name, field, typed) / 12.0
    }

    /// Notes a choice that was not made yet.
    pub fn missing(&mut self, name: &'static str) {
        self.refuse(name, EntryRefusal::Blank);
    }

    /// Notes a refusal.
    pub fn refuse(&mut self, name: &'static str, refusal: EntryRefusal) {
        self.problems.push(EntryProblem {
            name,
            row: self.row,
            refusal,
        });
    }

    /// The value, if nothing was refused on the way.
    pub fn finish<T>(self, value: T) -> Result<T, Vec<EntryProblem>> {
        if self.problems.is_empty() {
            Ok(value)
        } else {
            Err(self.problems)
        }
    }
}
