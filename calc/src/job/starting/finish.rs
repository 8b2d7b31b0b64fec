//! The entries that closing up a room starts from. What is the trade's usual figure is in `calc/tables`, its source in
//! each head; a size, a rating or a price has none and is left to be entered.

use crate::job::{
    AirEntry, BoardEntry, BuiltInEntry, CoatEntry, ObstacleEntry, PaintEntry, PatchEntry, Rest,
    TileEntry, TrimEntry, Typed, Units, WallsEntry, WindowEntry,
};

/// A usual entry, by the units in force.
fn either(units: Units, feet_inches: (&str, &str), metric: (&str, &str)) -> Typed {
    let (text, unit) = match units {
        Units::FeetInches => feet_inches,
        Units::Metric => metric,
    };
    Typed::new(text, unit)
}

impl WallsEntry {
    /// Doorways of 80 in (2032 mm), the stock height of doors; the walls are to be measured.
    pub fn usual(units: Units) -> Self {
        Self {
            height: Typed::default(),
            door_height: either(units, ("80", "in"), ("2032", "mm")),
            windows: Vec::new(),
            built_ins: Vec::new(),
            rest: Rest::new(),
        }
    }
}

impl TileEntry {
    /// Joint 3/16 in, gap 1/4 in, half a tile the narrowest cut, kerf 1/8 in, 10 % for breakage; a bag of mortar covers
    /// 60 ft2 under a notch of 1/4 by 3/8 in (the low end of the guides); joints 5/16 in deep, 100 lb of powder for a cubic
    /// foot, 25 lb bags. Source: common practice and the tile rules' table.
    pub fn usual(units: Units) -> Self {
        let ten = || Typed::plain("10");
        Self {
            width: Typed::default(),
            height: Typed::default(),
            joint: either(units, ("3/16", "in"), ("5", "mm")),
            edge_gap: either(units, ("1/4", "in"), ("6.5", "mm")),
            pattern: Default::default(),
            offset: Typed::plain("33"),
            start: Default::default(),
            least_share: Typed::plain("50"),
            obstacles: Vec::new(),
            kerf: either(units, ("1/8", "in"), ("3", "mm")),
            one_way: false,
            allowance_percent: ten(),
            per_box: Typed::default(),
            make: Default::default(),
            variation: Typed::default(),
            warpage: Typed::default(),
            place: Default::default(),
            mortar_coverage: either(units, ("60", "ft2"), ("5.6", "m2")),
            mortar_allowance: ten(),
            joint_depth: either(units, ("5/16", "in"), ("8", "mm")),
            powder: Typed::plain("100"),
            grout_allowance: ten(),
            grout_bag: Typed::plain("25"),
            membrane_roll: Typed::default(),
            membrane_turn_up: Typed::default(),
            membrane_allowance: ten(),
            rest: Rest::new(),
        }
    }
}

impl BoardEntry {
    /// Framing 16 in on center, level 4, tape with 10 %, pails of 4.5 gal; sheets of 4 by 8, 10 and 12 ft.
    pub fn usual(units: Units) -> Self {
        Self {
            on: Default::default(),
            lay_up: Default::default(),
            framing: either(units, ("16", "in"), ("406", "mm")),
            no_4_by_8: false,
            no_4_by_10: false,
            no_4_by_12: false,
            with_54_in: false,
            patches: Vec::new(),
            level: Typed::plain("4"),
            tape_allowance: Typed::plain("10"),
            pail: Typed::plain("4.5"),
            rest: Rest::new(),
        }
    }
}

impl CoatEntry {
    /// Coats, and what a gallon covers, square feet and square metres.
    fn usual(units: Units, coats: &str, ft2: &str, m2: &str) -> Self {
        Self {
            coats: Typed::plain(coats),
            spread: either(units, (ft2, "ft2"), (m2, "m2")),
            ..Self::default()
        }
    }
}

impl PaintEntry {
    /// Two coats at 350 ft2 a gallon (the low end of the range), primer one coat at 200, 10 % more; the can's own figures
    /// beat them. Nothing is painted until it is said what.
    pub fn usual(units: Units) -> Self {
        let two = || CoatEntry::usual(units, "2", "350", "32.5");
        Self {
            primer: CoatEntry::usual(units, "1", "200", "18.6"),
            walls: two(),
            ceiling: two(),
            trim: two(),
            trim_face: Typed::default(),
            allowance_percent: Typed::plain("10"),
            rest: Rest::new(),
        }
    }
}

impl TrimEntry {
    /// Casing 2-1/4 in, reveal 3/16 in, kerf 1/8 in, nothing added, every stock length on offer:
    /// `calc/tables/trim.rs`. Nothing is cut until it is said what.
    pub fn usual(units: Units) -> Self {
        Self {
            base: false,
            shoe: false,
            casing: false,
            casing_width: either(units, ("2 1/4", "in"), ("57", "mm")),
            reveal: either(units, ("3/16", "in"), ("5", "mm")),
            extra: either(units, ("0", "in"), ("0", "mm")),
            splice_at: Typed::default(),
            kerf: either(units, ("1/8", "in"), ("3", "mm")),
            no_8_ft: false,
            no_10_ft: false,
            no_12_ft: false,
            no_14_ft: false,
            no_16_ft: false,
            rest: Rest::new(),
        }
    }
}

impl AirEntry {
    /// Rating points at 0.1 and 0.25 in of water, a flexible 4 in duct, an elbow worth 15 ft and a cap 30 ft:
    /// `calc/tables/duct_friction.rs`.
    pub fn usual(units: Units) -> Self {
        Self {
            room: Default::default(),
            continuous: false,
            toilets: Typed::default(),
            showers: Typed::default(),
            tubs: Typed::default(),
            jetted_tubs: Typed::default(),
            low_static: Typed::plain("0.1"),
            low_flow: Typed::default(),
            high_static: Typed::plain("0.25"),
            high_flow: Typed::default(),
            shutoff: Typed::default(),
            duct: Default::default(),
            diameter: either(units, ("4", "in"), ("100", "mm")),
            length: Typed::default(),
            elbows: Typed::default(),
            elbow: either(units, ("15", "ft"), ("4.6", "m")),
            cap: either(units, ("30", "ft"), ("9.1", "m")),
            fan_amps: Typed::default(),
            fan_watts: Typed::default(),
            light_watts: Typed::default(),
            heater_watts: Typed::default(),
            rest: Rest::new(),
        }
    }
}

/// What a job from before these entries starts with.
macro_rules! usual_by_default {
    ($($name:ident),*) => {
        $(impl Default for $name {
            fn default() -> Self {
                Self::usual(Units::FeetInches)
            }
        })*
    };
}

usual_by_default!(
    WallsEntry, TileEntry, BoardEntry, PaintEntry, TrimEntry, AirEntry
);

/// A new row with its id and nothing entered.
macro_rules! new_row {
    ($($name:ident),*) => {
        $(impl $name {
            /// A row with nothing entered.
            pub fn new(id: u32) -> Self {
                Self { id, ..Self::default() }
            }
        })*
    };
}

new_row!(WindowEntry, BuiltInEntry, ObstacleEntry, PatchEntry);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fields::{self, Field};

    #[test]
    fn usual_entries_can_be_read_and_are_near_each_other_in_both_units() {
        let all = |units| {
            let (tile, board) = (TileEntry::usual(units), BoardEntry::usual(units));
            let (paint, trim) = (PaintEntry::usual(units), TrimEntry::usual(units));
            let (air, walls) = (AirEntry::usual(units), WallsEntry::usual(units));
            let rows: Vec<(Field, Typed)> = vec![
                (fields::OPENING_HEIGHT, walls.door_height),
                (fields::TILE_JOINT, tile.joint),
                (fields::TILE_JOINT, tile.edge_gap),
                (fields::DROP_PERCENT, tile.offset),
                (fields::ALLOWANCE, tile.least_share),
                (fields::TILE_JOINT, tile.kerf),
                (fields::ALLOWANCE, tile.allowance_percent),
                (fields::COVERAGE, tile.mortar_coverage),
                (fields::TILE_JOINT, tile.joint_depth),
                (fields::POWDER, tile.powder),
                (fields::POUNDS, tile.grout_bag),
                (fields::FRAMING, board.framing),
                (fields::LEVEL, board.level),
                (fields::PAIL, board.pail),
                (fields::COATS, paint.walls.coats),
                (fields::COVERAGE, paint.walls.spread),
                (fields::COVERAGE, paint.primer.spread),
                (fields::CASING, trim.casing_width),
                (fields::SMALL_LENGTH, trim.reveal),
                (fields::SMALL_LENGTH, trim.kerf),
                (fields::DUCT, air.diameter),
                (fields::RUN, air.elbow),
                (fields::RUN, air.cap),
                (fields::INWG, air.low_static),
            ];
            rows
        };
        let ours = all(Units::FeetInches);
        for ((field, ours), (_, theirs)) in ours.iter().zip(all(Units::Metric)) {
            let (ours, theirs) = (field.read(ours).unwrap(), field.read(&theirs).unwrap());
            assert!((theirs / ours - 1.0).abs() < 0.06, "{ours} {theirs}");
        }
        assert_eq!(
            fields::TILE_JOINT.read(&TileEntry::default().joint),
            Ok(0.1875)
        );
    }
}
