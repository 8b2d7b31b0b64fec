//! What is often added to a circuit, with the watts that are usual.

use crate::job::{CircuitEntry, LoadEntry, LoadUnit, Typed, fields};
use crate::wiring::circuit::LoadKind;

/// What is often added. Its watts are common practice, for want of a nameplate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Usual {
    /// A bathroom exhaust fan: 50 W.
    Fan,
    /// A heater in the wall, 120 V: 1500 W.
    Heater,
    /// A receptacle: 180 W, what 220.14(I) of NFPA 70 counts for one where nothing is known.
    Receptacle,
    /// A light: 60 W.
    Light,
}

impl Usual {
    /// What it takes, watts.
    pub const fn watts(self) -> &'static str {
        match self {
            Self::Fan => "50",
            Self::Heater => "1500",
            Self::Receptacle => "180",
            Self::Light => "60",
        }
    }

    /// What kind of load it is.
    pub const fn kind(self) -> LoadKind {
        match self {
            Self::Fan => LoadKind::ExhaustFan,
            Self::Heater => LoadKind::SpaceHeating,
            Self::Receptacle => LoadKind::CordAndPlug,
            Self::Light => LoadKind::Luminaire,
        }
    }
}

impl CircuitEntry {
    /// Plans something usual under this row id: its load, and one more outlet, of receptacles one more.
    ///
    /// ```
    /// use calc::job::{CircuitEntry, Typed, Units, Usual};
    /// let mut circuit = CircuitEntry::new(1, "Bath", Units::FeetInches);
    /// circuit.outlets = Typed::plain("4");
    /// circuit.plan(2, Usual::Fan, "Exhaust fan");
    /// assert_eq!(circuit.planned[0].amount.text, "50");
    /// assert_eq!(circuit.outlets.text, "5");
    /// ```
    pub fn plan(&mut self, id: u32, what: Usual, name: impl Into<String>) {
        self.planned.push(LoadEntry {
            id,
            name: name.into(),
            amount: Typed::plain(what.watts()),
            unit: LoadUnit::Watts,
            kind: what.kind(),
            ..LoadEntry::default()
        });
        one_more(&mut self.outlets);
        if what == Usual::Receptacle {
            one_more(&mut self.receptacles);
        }
    }
}

/// One more of a count; what can't be read stays as it was typed.
fn one_more(count: &mut Typed) {
    if count.is_blank() {
        *count = Typed::plain("1");
    } else if let Ok(known) = fields::OUTLETS.read(count) {
        // Whole and no more than some hundreds.
        *count = Typed::plain(((known as u32).saturating_add(1)).to_string());
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Units;

    #[test]
    fn counts_go_up_and_what_cant_be_read_stays() {
        let mut circuit = CircuitEntry::new(1, "", Units::FeetInches);
        circuit.receptacles = Typed::plain("many");
        circuit.plan(2, Usual::Receptacle, "by the bed");
        circuit.plan(3, Usual::Light, "ceiling");
        assert_eq!(circuit.outlets.text, "2");
        assert_eq!(circuit.receptacles.text, "many");
        assert_eq!(circuit.planned[1].kind, LoadKind::Luminaire);
    }
}
