//! How the quick sums of closing up are kept into a room of a job, with row ids of the job's own.

use crate::job::{Job, Opening, OpeningKind, Rest, Room, Typed};

impl Opening {
    /// A doorway with nothing entered.
    pub fn new(id: u32) -> Self {
        Self {
            id,
            name: String::new(),
            kind: OpeningKind::Doorway,
            wall: 0,
            from_start: Typed::default(),
            width: Typed::default(),
            beyond: Default::default(),
            beyond_reading: Typed::default(),
            beyond_spot: None,
            beyond_layers: Vec::new(),
            pour_at_most: Typed::default(),
            ramp_slope: Typed::default(),
            ramp_length: Typed::default(),
            rest: Rest::new(),
        }
    }
}

impl Job {
    /// Takes from a room of the quick sums its outline, doorways and walls into one of this job's, and the part that `take`
    /// names; rows get ids of this job.
    pub fn take_closing(&mut self, to: u32, from: &Room, take: &dyn Fn(&mut Room, &Room)) {
        let Some(at) = self.rooms.iter().position(|room| room.id == to) else {
            return;
        };
        let Some(mut room) = self.rooms.get(at).cloned() else {
            return;
        };
        room.outline = from.outline.clone();
        room.openings = from.openings.clone();
        room.walls = from.walls.clone();
        take(&mut room, from);
        let openings = room.openings.iter_mut().map(|row| &mut row.id);
        let windows = room.walls.windows.iter_mut().map(|row| &mut row.id);
        let built_ins = room.walls.built_ins.iter_mut().map(|row| &mut row.id);
        let obstacles = room.tile.obstacles.iter_mut().map(|row| &mut row.id);
        let patches = room.board.patches.iter_mut().map(|row| &mut row.id);
        for id in openings
            .chain(windows)
            .chain(built_ins)
            .chain(obstacles)
            .chain(patches)
        {
            *id = self.fresh_id();
        }
        if let Some(place) = self.rooms.get_mut(at) {
            *place = room;
        }
    }
}
