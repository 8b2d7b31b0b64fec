//! Short ways to write the steps of a working.

use crate::working::{Figure, Source, Step, Unit};

pub(super) const fn figure(name: &'static str, value: f64, unit: Unit) -> Figure {
    Figure { name, value, unit }
}

pub(super) fn step(
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
