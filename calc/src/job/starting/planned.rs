//! What is often added to a circuit, with the watts that are usual.

use crate::job::{AirEntry, CircuitEntry, Job, LoadEntry, LoadUnit, Typed, fields};
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

impl AirEntry {
    /// The loads of the fan, its light and its heater under these names, as they were typed; those that are not there are
    /// left out.
    pub fn loads(&self, [fan, light, heater]: [String; 3]) -> Vec<LoadEntry> {
        let (amount, unit) = if self.fan_amps.is_blank() {
            (&self.fan_watts, LoadUnit::Watts)
        } else {
            (&self.fan_amps, LoadUnit::Amps)
        };
        [
            (fan, amount, unit, LoadKind::ExhaustFan, self.continuous),
            (
                light,
                &self.light_watts,
                LoadUnit::Watts,
                LoadKind::Luminaire,
                false,
            ),
            (
                heater,
                &self.heater_watts,
                LoadUnit::Watts,
                LoadKind::SpaceHeating,
                false,
            ),
        ]
        .into_iter()
        .filter(|(_, amount, ..)| !amount.is_blank())
        .map(|(name, amount, unit, kind, continuous)| LoadEntry {
            name,
            amount: amount.clone(),
            unit,
            kind,
            continuous,
            ..LoadEntry::default()
        })
        .collect()
    }
}

impl Job {
    /// Plans loads on a circuit, one outlet for all of them. Loads of these names that are planned anywhere give way, so
    /// that what is planned twice counts once.
    ///
    /// ```
    /// use calc::job::{AirEntry, CircuitEntry, Job, Typed, Units};
    /// let mut job = Job::new("k3", "", "2026-03-02T08:00:00Z", Units::FeetInches);
    /// job.circuits = vec![CircuitEntry::new(7, "Bath", Units::FeetInches), CircuitEntry::new(8, "Hall", Units::FeetInches)];
    /// let air = AirEntry { fan_amps: Typed::plain("0.5"), heater_watts: Typed::plain("1300"), ..AirEntry::default() };
    /// let names = || ["Fan".to_owned(), "Light".to_owned(), "Heater".to_owned()];
    /// job.plan_loads(8, air.loads(names()));
    /// job.plan_loads(7, air.loads(names()));
    /// let planned = |at: usize| (job.circuits[at].planned.len(), job.circuits[at].outlets.text.as_str());
    /// assert_eq!((planned(0), planned(1)), ((2, "1"), (0, "0")));
    /// ```
    pub fn plan_loads(&mut self, circuit: u32, loads: Vec<LoadEntry>) {
        for of in &mut self.circuits {
            let before = of.planned.len();
            of.planned
                .retain(|known| loads.iter().all(|load| load.name != known.name));
            if of.planned.len() < before {
                by_one(&mut of.outlets, u32::saturating_sub);
            }
        }
        let ids: Vec<u32> = loads.iter().map(|_| self.fresh_id()).collect();
        if let Some(of) = self.circuit_mut(circuit) {
            let rows = loads.into_iter().zip(ids);
            of.planned
                .extend(rows.map(|(load, id)| LoadEntry { id, ..load }));
            one_more(&mut of.outlets);
        }
    }
}

/// One more of a count; what can't be read stays as it was typed.
fn one_more(count: &mut Typed) {
    by_one(count, u32::saturating_add);
}

fn by_one(count: &mut Typed, step: fn(u32, u32) -> u32) {
    if count.is_blank() {
        *count = Typed::plain(step(0, 1).to_string());
    } else if let Ok(known) = fields::OUTLETS.read(count) {
        // Whole and no more than some hundreds.
        *count = Typed::plain(step(known as u32, 1).to_string());
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
