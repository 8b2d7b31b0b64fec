//! A house: its wiring as intended, as entered, and as it is.

use calc::wiring::open_box::description::{Description, DeviceKind, End, Goes};
use calc::wiring::open_box::faults::{FaultKind, Look};
use calc::wiring::open_box::situation::{Position, Situation, switches};

use super::dice::Dice;
use super::plant::{KINDS, Planted, plant};
use super::truth::Truth;
use super::wirings::{Wiring, random};

/// More than this in a breaker, and it would not hold, amperes.
const TRIPS_A: f64 = 100.0;

/// A house.
#[derive(Clone, Debug)]
pub struct House {
    /// The seed that it comes from.
    pub seed: u64,
    /// Its wiring as intended, with the lengths that it has.
    pub wiring: Wiring,
    /// As the user enters it.
    pub entered: Description,
    /// Whether a length is off by two and a load is not entered.
    pub slipped: bool,
    /// The house without the fault.
    pub healthy: Truth,
    /// The house.
    pub truth: Truth,
    /// What is wrong.
    pub planted: Planted,
    /// The box that is open.
    pub opened: u32,
    /// Chance, for what is measured.
    pub dice: Dice,
}

impl House {
    /// The house of a seed.
    pub fn of(seed: u64) -> Self {
        // Far apart, so that neighbouring seeds share nothing.
        let mut dice = Dice::new(Dice::new(seed).bits());
        let kind = KINDS[dice.below(KINDS.len())];
        loop {
            if let Some(house) = Self::with(seed, kind, &mut dice) {
                return house;
            }
        }
    }

    fn with(seed: u64, kind: FaultKind, dice: &mut Dice) -> Option<Self> {
        let wiring = random(dice);
        let healthy = Truth::of(&wiring.description, Some(dice));
        let planted = plant(kind, &wiring, &healthy, dice)?;
        let mut truth = healthy.clone();
        planted.put(&mut truth);
        if [&healthy, &truth]
            .iter()
            .any(|house| trips(house, &wiring.description))
        {
            return None;
        }
        let (entered, slipped) = entered(&wiring.description, dice);
        let boxes = &wiring.description.boxes;
        let near = planted.places.first()?.iter().find_map(|place| {
            match place.look(&wiring.description) {
                Look::Box(in_box) => Some(in_box),
                Look::FarEnd(cable) => wiring.description.cable(cable).map(|c| c.from_box),
                Look::Panel => match place {
                    calc::wiring::open_box::faults::Place::At(
                        calc::wiring::open_box::reading::Point::End(end),
                    ) => wiring.description.box_of(End {
                        side: end.side.other(),
                        ..*end
                    }),
                    _ => None,
                },
                Look::Service => None,
            }
        });
        let opened = match near {
            Some(near) if dice.chance(0.8) => near,
            _ => dice.pick(boxes)?,
        };
        let dice = dice.clone();
        Some(Self {
            seed,
            wiring,
            entered,
            slipped,
            healthy,
            truth,
            planted,
            opened,
            dice,
        })
    }
}

/// Every setting of up to six switches, otherwise every switch moved alone.
pub fn settings(description: &Description) -> Vec<Situation> {
    let switches = switches(description);
    let all = 1_usize << switches.len().min(6);
    (0..all)
        .map(|bits| Situation {
            switches: switches
                .iter()
                .enumerate()
                .filter(|(at, _)| bits >> at & 1 == 1)
                .map(|(_, switch)| (*switch, Position::Two))
                .collect(),
            ..Situation::default()
        })
        .collect()
}

fn trips(truth: &Truth, description: &Description) -> bool {
    settings(description)
        .iter()
        .any(|setting| truth.conducted(setting).most_pole_a() > TRIPS_A)
}

/// What the user enters: lengths by eye, some not at all; in a tenth of the houses one off by two and a load unknown.
fn entered(wiring: &Description, dice: &mut Dice) -> (Description, bool) {
    let mut entered = wiring.clone();
    for cable in &mut entered.cables {
        cable.length_ft = if dice.chance(0.15) {
            None
        } else {
            cable
                .length_ft
                .map(|feet| (feet * dice.between(0.9, 1.1)).round())
        };
    }
    let slipped = dice.chance(0.1);
    if slipped {
        let at = dice.below(entered.cables.len());
        let factor = if dice.chance(0.5) { 2.0 } else { 0.5 };
        let true_ft = wiring.cables[at].length_ft.unwrap_or(30.0);
        entered.cables[at].length_ft = Some((true_ft * factor).round());
        lose_a_load(&mut entered, dice);
    }
    (entered, slipped)
}

fn lose_a_load(entered: &mut Description, dice: &mut Dice) {
    let cables = entered.cables.len();
    let places: Vec<usize> = (0..cables)
        .filter(|at| matches!(&entered.cables[*at].goes, Goes::Loads(loads) if !loads.is_empty()))
        .chain(
            (0..entered.devices.len())
                .filter(|at| has_load(&entered.devices[*at].kind))
                .map(|at| cables + at),
        )
        .collect();
    match dice.pick(&places) {
        Some(at) if at < cables => entered.cables[at].goes = Goes::Loads(Vec::new()),
        Some(at) => match &mut entered.devices[at - cables].kind {
            DeviceKind::Receptacle { upper, .. } => *upper = None,
            DeviceKind::Lampholder(lamp) => *lamp = None,
            DeviceKind::Switch(_) => {}
        },
        None => {}
    }
}

const fn has_load(kind: &DeviceKind) -> bool {
    matches!(
        kind,
        DeviceKind::Receptacle { upper: Some(_), .. } | DeviceKind::Lampholder(Some(_))
    )
}
