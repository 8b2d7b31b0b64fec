//! Short ways to write the steps of a working.

use crate::working::{Figure, Source, Step, Unit};

pub(crate) const fn figure(name: &'static str, value: f64, unit: Unit) -> Figure {
    Figure { name, value, unit }
}

pub(crate) fn step(
    formula: &'static str,
    inputs: Vec<Figure>,
    result: Figure,
    source: Source,
) -> Step {
    Step {
        formula,
        inputs,
        result,
        source,
    }
}

/// A count as a figure has it.
pub(crate) const fn count(of: usize) -> f64 {
    of as f64
}

/// A count that passes a whole number by less than a billionth is that number: rounding. At least nothing.
pub(crate) fn up(exact: f64) -> f64 {
    let whole = exact.round();
    if (exact - whole).abs() <= 1e-9 * exact.abs().max(1.0) {
        whole.max(0.0)
    } else {
        exact.ceil().max(0.0)
    }
}
