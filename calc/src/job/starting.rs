//! New jobs and rooms, the entries they start from, and rows found by their ids.
//!
//! A field with a usual value starts with that value written in it, so that nothing is assumed out of sight:
//! what an answer rests on stands in a field, and the user can change it.

use std::cmp::Ordering;

use super::{
    AirEntry, BoardEntry, Format, Job, NO_WALL, Opening, PaintEntry, PanelEntry, PourEntry, Rest,
    Room, Spot, Survey, TileEntry, TrimEntry, Typed, Units, WalkWall, WallsEntry,
};

impl Job {
    /// A new job with one room, made at `now` (RFC 3339). The room has no name yet; its pour and survey start
    /// from the usual entries in the job's units ([`PourEntry::usual`], [`Survey::usual`]).
    ///
    /// ```
    /// use calc::job::{Job, Units};
    /// let job = Job::new("k3", "Elm Street bath", "2026-03-02T08:00:00Z", Units::FeetInches);
    /// assert_eq!(job.rooms.len(), 1);
    /// assert_eq!(job.rooms[0].pour.bag_yield.text, "0.45"); // cubic feet from a 50 lb bag
    /// ```
    pub fn new(
        id: impl Into<String>,
        name: impl Into<String>,
        now: impl Into<String>,
        units: Units,
    ) -> Self {
        let now = now.into();
        let mut job = Self {
            format: Format::current(),
            id: id.into(),
            name: name.into(),
            place: String::new(),
            created: now.clone(),
            changed: now,
            units,
            code_edition: Default::default(),
            rooms: Vec::new(),
            panel: PanelEntry::default(),
            circuits: Vec::new(),
            boxes: Vec::new(),
            opened: Vec::new(),
            buying: Default::default(),
            quote: Default::default(),
            sheet: Default::default(),
            notes: String::new(),
            next_id: 1,
            rest: Rest::new(),
        };
        let room = Room::new(job.fresh_id(), "", units);
        job.rooms.push(room);
        job
    }

    /// A copy under another id and name, made at `now` (RFC 3339); everything that was entered is the same.
    pub fn duplicate(
        &self,
        new_id: impl Into<String>,
        now: impl Into<String>,
        name: impl Into<String>,
    ) -> Self {
        let now = now.into();
        Self {
            id: new_id.into(),
            name: name.into(),
            created: now.clone(),
            changed: now,
            ..self.clone()
        }
    }

    /// An id for a new row: never given before in this job, never given again.
    pub fn fresh_id(&mut self) -> u32 {
        let id = self.next_id;
        self.next_id = id.saturating_add(1);
        id
    }

    /// The room with this id.
    pub fn room(&self, id: u32) -> Option<&Room> {
        self.rooms.iter().find(|room| room.id == id)
    }

    /// The room with this id, to be changed.
    pub fn room_mut(&mut self, id: u32) -> Option<&mut Room> {
        self.rooms.iter_mut().find(|room| room.id == id)
    }

    /// The opening with this id, and the room it is in.
    pub fn opening(&self, id: u32) -> Option<(&Room, &Opening)> {
        self.rooms
            .iter()
            .find_map(|room| room.opening(id).map(|opening| (room, opening)))
    }

    /// The opening with this id, to be changed.
    pub fn opening_mut(&mut self, id: u32) -> Option<&mut Opening> {
        self.rooms.iter_mut().find_map(|room| room.opening_mut(id))
    }
}

mod finish;
mod opened;
mod opened_edit;
mod planned;
mod wiring;

pub(in crate::job) use opened::New;
pub use opened::{TypicalBox, cable_letter};
pub use planned::Usual;

/// A wall taken out of a walk, and what its putting back needs.
#[derive(Clone, Debug, PartialEq)]
pub struct WallTakenOut {
    at: usize,
    wall: WalkWall,
    openings: Vec<u32>,
}

impl Room {
    /// A room with nothing measured yet; its pour and survey start from the usual entries.
    pub fn new(id: u32, name: impl Into<String>, units: Units) -> Self {
        Self {
            id,
            name: name.into(),
            outline: Default::default(),
            openings: Vec::new(),
            survey: Survey::usual(units),
            pour: PourEntry::usual(units),
            layers: Vec::new(),
            finish: Default::default(),
            walls: WallsEntry::usual(units),
            tile: TileEntry::usual(units),
            board: BoardEntry::usual(units),
            paint: PaintEntry::usual(units),
            trim: TrimEntry::usual(units),
            air: AirEntry::usual(units),
            rest: Rest::new(),
        }
    }

    /// The opening with this id.
    pub fn opening(&self, id: u32) -> Option<&Opening> {
        self.openings.iter().find(|opening| opening.id == id)
    }

    /// The opening with this id, to be changed.
    pub fn opening_mut(&mut self, id: u32) -> Option<&mut Opening> {
        self.openings.iter_mut().find(|opening| opening.id == id)
    }

    /// Takes a wall out of the walk. Openings in later walls stay in theirs; those that were in it have no wall.
    /// Nothing where there is no such wall.
    pub fn take_out_wall(&mut self, id: u32) -> Option<WallTakenOut> {
        let at = self.outline.walls.iter().position(|wall| wall.id == id)?;
        let wall = self.outline.walls.remove(at);
        let mut openings = Vec::new();
        for opening in &mut self.openings {
            match (opening.wall as usize).cmp(&at) {
                Ordering::Less => {}
                Ordering::Equal => {
                    opening.wall = NO_WALL;
                    openings.push(opening.id);
                }
                Ordering::Greater => {
                    opening.wall = opening
                        .wall
                        .saturating_sub(u32::from(opening.wall != NO_WALL))
                }
            }
        }
        Some(WallTakenOut { at, wall, openings })
    }

    /// Puts a wall back where it was taken out, with the openings that were in it and have no other wall since.
    pub fn put_back_wall(&mut self, taken: WallTakenOut) {
        let at = taken.at.min(self.outline.walls.len());
        self.outline.walls.insert(at, taken.wall);
        let index = u32::try_from(at).unwrap_or(NO_WALL);
        for opening in &mut self.openings {
            if opening.wall == NO_WALL {
                if taken.openings.contains(&opening.id) {
                    opening.wall = index;
                }
            } else if opening.wall >= index {
                opening.wall += 1;
            }
        }
    }

    /// The spot of the survey with this id.
    pub fn spot(&self, id: u32) -> Option<&Spot> {
        self.survey.spots.iter().find(|spot| spot.id == id)
    }

    /// The spot of the survey with this id, to be changed.
    pub fn spot_mut(&mut self, id: u32) -> Option<&mut Spot> {
        self.survey.spots.iter_mut().find(|spot| spot.id == id)
    }
}

impl Survey {
    /// An empty survey, read down from a level line, with spots proposed no wider than 2 ft or 600 mm apart
    /// (source: common practice).
    pub fn usual(units: Units) -> Self {
        Self {
            spacing: match units {
                Units::FeetInches => Typed::plain("2'"),
                Units::Metric => Typed::new("600", "mm"),
            },
            ..Self::default()
        }
    }
}

impl PourEntry {
    /// The usual figures for a self-levelling underlayment. Source: common practice; the bag's own figures beat
    /// every one of them.
    ///
    /// | entry | feet and inches | metric | range of common practice |
    /// | --- | --- | --- | --- |
    /// | cover over the highest spot | 1/4 in | 6 mm | over concrete 0 to 1/4 in, over wood 1/4 to 1/2 in |
    /// | deepest single lift, neat | 1 in | 25 mm | 1 to 2 in |
    /// | yield of a bag (50 lb) | 0.45 ft3 | 12.7 L | 0.4 to 0.5 ft3 |
    /// | water for a bag | 5.5 qt | 5.2 L | 4.5 to 7 qt |
    /// | ordering allowance | 10 % | 10 % | 5 to 15 % |
    /// | bags mixed at a time | 2 | 2 | by crew and buckets |
    /// | minutes for a batch | 5 | 5 | by crew and buckets |
    /// | pot life | 15 min | 15 min | 10 to 20 min |
    /// | area that a gallon of primer covers | 200 ft2 | 18.6 m2 | porous floor: 150 to 300 ft2 |
    ///
    /// The cover is the one figure that a wood subfloor and concrete allow alike: the least that is usual over
    /// wood (3/8 in is typical there) and the most that is usual over concrete (1/8 in is typical).
    pub fn usual(units: Units) -> Self {
        let metric = units == Units::Metric;
        let either = |feet_inches: (&str, &str), in_metric: (&str, &str)| {
            let (text, unit) = if metric { in_metric } else { feet_inches };
            Typed::new(text, unit)
        };
        Self {
            cover: either(("1/4", "in"), ("6", "mm")),
            lift_limit: either(("1", "in"), ("25", "mm")),
            bag_yield: either(("0.45", "ft3"), ("12.7", "L")),
            bag_water: either(("5.5", "qt"), ("5.2", "L")),
            allowance_percent: Typed::plain("10"),
            bags_per_batch: Typed::plain("2"),
            minutes_per_batch: Typed::plain("5"),
            pot_life_minutes: Typed::plain("15"),
            primer_coverage: either(("200", "ft2"), ("18.6", "m2")),
            ..Self::default()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{PourChoice, ReadingWay, fields};

    #[test]
    fn a_new_job_has_one_room_with_the_usual_entries() {
        let job = Job::new("a", "Elm", "2026-03-02T08:00:00Z", Units::FeetInches);
        let room = &job.rooms[0];
        assert_eq!((room.id, job.next_id), (1, 2));
        assert_eq!(job.created, job.changed);
        assert_eq!(room.survey.way, ReadingWay::DownFromLine);
        assert_eq!(room.survey.spacing, Typed::plain("2'"));
        assert_eq!(room.pour.cover, Typed::new("1/4", "in"));
        assert_eq!(room.pour.choice, PourChoice::Open);
        assert!(room.pour.tilt_limit.is_blank() && room.outline.width.is_blank());
    }

    #[test]
    fn every_usual_entry_is_read_by_its_field_and_metric_ones_are_the_same_figures() {
        let (ours, theirs) = (
            PourEntry::usual(Units::FeetInches),
            PourEntry::usual(Units::Metric),
        );
        let (survey, metric_survey) = (
            Survey::usual(Units::FeetInches),
            Survey::usual(Units::Metric),
        );
        // Expected in inches, cubic inches, square inches: 1 US quart is 57.75 in3 (NIST Handbook 44, appendix C).
        for (field, ours, expected, theirs) in [
            (fields::COVER, ours.cover, 0.25, theirs.cover),
            (fields::LIFT, ours.lift_limit, 1.0, theirs.lift_limit),
            (
                fields::BAG_YIELD,
                ours.bag_yield,
                0.45 * 1728.0,
                theirs.bag_yield,
            ),
            (
                fields::BAG_WATER,
                ours.bag_water,
                5.5 * 57.75,
                theirs.bag_water,
            ),
            (
                fields::ALLOWANCE,
                ours.allowance_percent,
                10.0,
                theirs.allowance_percent,
            ),
            (
                fields::BAGS_PER_BATCH,
                ours.bags_per_batch,
                2.0,
                theirs.bags_per_batch,
            ),
            (
                fields::MINUTES,
                ours.minutes_per_batch,
                5.0,
                theirs.minutes_per_batch,
            ),
            (
                fields::MINUTES,
                ours.pot_life_minutes,
                15.0,
                theirs.pot_life_minutes,
            ),
            (
                fields::PRIMER_COVERAGE,
                ours.primer_coverage,
                200.0 * 144.0,
                theirs.primer_coverage,
            ),
            (fields::SPACING, survey.spacing, 24.0, metric_survey.spacing),
        ] {
            let value = field.read(&ours).unwrap();
            assert!((value - expected).abs() < 1e-9, "{ours:?} is {value}");
            let ratio = field.read(&theirs).unwrap() / expected;
            assert!((ratio - 1.0).abs() < 0.06, "{theirs:?} is {ratio} of it");
        }
    }

    #[test]
    fn ids_are_never_given_twice() {
        let mut job = Job::new("a", "Elm", "2026-03-02T08:00:00Z", Units::Metric);
        let second = job.fresh_id();
        job.rooms.push(Room::new(second, "Hall", Units::Metric));
        job.rooms.pop();
        assert_eq!((second, job.fresh_id()), (2, 3));
    }

    #[test]
    fn rows_are_found_by_id() {
        let mut job = Job::new("a", "Elm", "2026-03-02T08:00:00Z", Units::Metric);
        let id = job.fresh_id();
        let opening: Opening =
            crate::saved::Saved::read(serde_json::json!({"id": id, "name": "hall door"})).unwrap();
        job.room_mut(1).unwrap().openings.push(opening);
        let (room, opening) = job.opening(id).unwrap();
        assert_eq!((room.id, opening.name.as_str()), (1, "hall door"));
        job.opening_mut(id).unwrap().name.clear();
        assert_eq!(job.room(1).unwrap().opening(id).unwrap().name, "");
        assert!(
            job.room(id).is_none() && job.opening(1).is_none() && job.rooms[0].spot(1).is_none()
        );
    }

    #[test]
    fn a_duplicate_differs_in_name_id_and_times_alone() {
        let job = Job::new("a", "Elm", "2026-03-02T08:00:00Z", Units::Metric);
        let copy = job.duplicate("b", "2026-03-03T08:00:00Z", "Elm, other half");
        assert_eq!(
            (copy.id.as_str(), copy.name.as_str()),
            ("b", "Elm, other half")
        );
        assert_eq!(
            (copy.created.as_str(), copy.changed.as_str()),
            ("2026-03-03T08:00:00Z", "2026-03-03T08:00:00Z")
        );
        assert_eq!((copy.next_id, &copy.rooms), (job.next_id, &job.rooms));
    }

    #[test]
    fn an_opening_keeps_its_wall_when_another_is_taken_out() {
        let mut room = Room::new(1, "", Units::FeetInches);
        let opening = crate::job::demo::job("d", "").rooms[0].openings[0].clone();
        for id in 10..14 {
            room.outline.walls.push(crate::job::WalkWall {
                id,
                length: Typed::default(),
                turn: Default::default(),
                angle_deg: Typed::default(),
                across: Typed::default(),
                rest: Rest::new(),
            });
        }
        room.openings = (0..4)
            .map(|wall| Opening {
                id: 20 + wall,
                wall,
                ..opening.clone()
            })
            .collect();
        let before = room.clone();
        let taken = room.take_out_wall(11).unwrap();
        assert_eq!(room.take_out_wall(99), None);
        let walls = |room: &Room| room.openings.iter().map(|o| o.wall).collect::<Vec<_>>();
        assert_eq!(walls(&room), [0, NO_WALL, 1, 2]);
        room.take_out_wall(10);
        assert_eq!(walls(&room), [NO_WALL, NO_WALL, 0, 1]);

        let mut again = before.clone();
        let out = again.take_out_wall(11).unwrap();
        assert_eq!(out, taken);
        again.put_back_wall(out);
        assert_eq!(again, before);
    }
}
