//! What was typed into the quick sums, and how a sum is kept into a job.
//!
//! A quick sum needs no job: its entries are kept as typed on the device, and can be carried into a room later.

use super::{BoxEntry, CodeEdition, Opening, Rest, Room, Shape, Typed, Units};
use crate::saved;
use crate::saved::codes;

mod compound;
mod keep;
mod keep_room;
mod quote;
mod wiring;

pub use compound::CompoundSum;
pub use quote::{QuoteSum, QuoteWork};
pub use wiring::{
    AmpacitySum, AmpacityWant, CableSum, DemandUnit, DropLoadEntry, DropMethod, DropSum,
    DropSystem, DropWant, EndKind, HeldBy, MeasuredSum, PartEntry, PieceEntry, SwitchSum,
};

/// The entries of every quick sum.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sums {
    /// Units in which fields are read and figures are shown first.
    pub units: Units,
    /// Rise, run and slope.
    pub ramp: RampSum,
    /// Pour volume and bags.
    pub pour: PourSum,
    /// The edition of NFPA 70 that the electrical sums use.
    pub code_edition: CodeEdition,
    /// How full a box is.
    pub box_fill: BoxEntry,
    /// What a conductor may carry, and the conductor for a load.
    pub ampacity: AmpacitySum,
    /// Voltage drop along a run.
    pub voltage_drop: DropSum,
    /// A drop that was measured.
    pub measured_drop: MeasuredSum,
    /// Cable for a run.
    pub cable_run: CableSum,
    /// Which cables switches need.
    pub switches: SwitchSum,
    /// A quote against a room's sizes.
    pub quote_check: QuoteSum,
    /// Joint compound and tape.
    pub compound: CompoundSum,
    /// The last id given to a row of the sums.
    pub last_id: u32,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(Sums {
    units: or_default,
    ramp: or_default,
    pour: or_default,
    code_edition: or_default,
    box_fill: or_default,
    ampacity: or_default,
    voltage_drop: or_default,
    measured_drop: or_default,
    cable_run: or_default,
    switches: or_default,
    quote_check: or_default,
    compound: or_default,
    last_id: or_default,
});

impl Sums {
    /// An id for a new row of a sum: never given before. The rows that a new sum starts with have ids below 10.
    pub fn fresh_id(&mut self) -> u32 {
        self.last_id = self.last_id.max(9).saturating_add(1);
        self.last_id
    }
}

/// Any two of rise, run and slope.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RampSum {
    /// Which one is wanted.
    pub want: RampWant,
    /// Height gained.
    pub rise: Typed,
    /// Level distance.
    pub run: Typed,
    /// Rise over run.
    pub slope: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(RampSum {
    want: or_default,
    rise: or_default,
    run: or_default,
    slope: or_default,
});

/// The one of rise, run and slope that is worked out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum RampWant {
    /// The run, from rise and slope.
    #[default]
    Run,
    /// The slope, from rise and run.
    Slope,
    /// The rise, from run and slope.
    Rise,
}

codes!(RampWant {
    Run = "run",
    Slope = "slope",
    Rise = "rise",
});

/// A volume from an area and a mean depth, and its bags.
#[derive(Clone, Debug, PartialEq)]
pub struct PourSum {
    /// How the area is known.
    pub by: AreaBy,
    /// Width of the floor.
    pub width: Typed,
    /// Length of the floor.
    pub length: Typed,
    /// Area of the floor.
    pub area: Typed,
    /// Mean depth of the pour.
    pub depth: Typed,
    /// Volume that one bag makes.
    pub bag_yield: Typed,
    /// Water for one bag; blank: none is counted.
    pub bag_water: Typed,
    /// Added to the volume, in percent.
    pub allowance_percent: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(PourSum {
    by: or_default,
    width: or_default,
    length: or_default,
    area: or_default,
    depth: or_default,
    bag_yield: or_default,
    bag_water: or_default,
    allowance_percent: or_default,
});

/// How an area is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum AreaBy {
    /// Width and length of a rectangle.
    #[default]
    Sides,
    /// The area itself.
    Area,
}

codes!(AreaBy {
    Sides = "sides",
    Area = "area",
});

impl Default for PourSum {
    /// Nothing measured yet; bag, water and allowance as in a new room's pour.
    fn default() -> Self {
        let usual = super::PourEntry::usual(Units::FeetInches);
        Self {
            by: AreaBy::Sides,
            width: Typed::default(),
            length: Typed::default(),
            area: Typed::default(),
            depth: Typed::default(),
            bag_yield: usual.bag_yield,
            bag_water: usual.bag_water,
            allowance_percent: usual.allowance_percent,
            rest: Rest::new(),
        }
    }
}

impl RampSum {
    /// Puts what was typed into an opening of the room: the slope, or the run there is where the slope was wanted.
    /// The rise has no place there, for in a room it follows from the floors; the opening is named by `name`.
    pub fn keep(&self, room: &mut Room, id: u32, name: impl Into<String>) {
        let (slope, length) = match self.want {
            RampWant::Run | RampWant::Rise => (self.slope.clone(), Typed::default()),
            RampWant::Slope => (Typed::default(), self.run.clone()),
        };
        room.openings.push(Opening {
            ramp_slope: slope,
            ramp_length: length,
            name: name.into(),
            ..Opening::new(id)
        });
    }
}

impl PourSum {
    /// Puts what was typed into a room: the rectangle where its sides are known, and the bag's figures. The mean
    /// depth has no place there, for in a room it follows from the survey.
    pub fn keep(&self, room: &mut Room) {
        if self.by == AreaBy::Sides {
            room.outline.shape = Shape::Rectangle;
            room.outline.width = self.width.clone();
            room.outline.length = self.length.clone();
        }
        room.pour.bag_yield = self.bag_yield.clone();
        room.pour.bag_water = self.bag_water.clone();
        room.pour.allowance_percent = self.allowance_percent.clone();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_typed_survives() {
        let mut sums = Sums::default();
        sums.ramp.rise = Typed::new("3/4", "in");
        sums.pour.depth = Typed::plain("half an inch");
        sums.rest
            .insert("tile".to_owned(), serde_json::json!({"edge": "12"}));
        let text = saved::write(&sums);
        assert_eq!(saved::read(&text), Ok(sums));
        assert_eq!(saved::read("{}"), Ok(Sums::default()));
    }

    #[test]
    fn a_ramp_goes_to_an_opening() {
        let mut room = Room::new(1, "", Units::FeetInches);
        let mut ramp = RampSum {
            slope: Typed::plain("1:12"),
            run: Typed::plain("9\""),
            ..RampSum::default()
        };
        ramp.keep(&mut room, 2, "hall");
        ramp.want = RampWant::Slope;
        ramp.keep(&mut room, 3, "hall");
        let kept: Vec<_> = room
            .openings
            .iter()
            .map(|o| {
                (
                    o.id,
                    o.ramp_slope.text.as_str(),
                    o.ramp_length.text.as_str(),
                )
            })
            .collect();
        assert_eq!(kept, [(2, "1:12", ""), (3, "", "9\"")]);
    }

    #[test]
    fn a_pour_goes_to_a_rectangle() {
        let mut room = Room::new(1, "", Units::FeetInches);
        let sum = PourSum {
            width: Typed::plain("7'"),
            length: Typed::plain("10'"),
            bag_yield: Typed::new("0.42", "ft3"),
            ..PourSum::default()
        };
        PourSum {
            by: AreaBy::Area,
            ..sum.clone()
        }
        .keep(&mut room);
        assert!(room.outline.width.is_blank());
        sum.keep(&mut room);
        assert_eq!(
            (
                room.outline.width.text.as_str(),
                room.outline.length.text.as_str()
            ),
            ("7'", "10'")
        );
        assert_eq!(room.pour.bag_yield, Typed::new("0.42", "ft3"));
        assert!(crate::job::questions::room::outline(&room.outline).is_ok());
    }
}
