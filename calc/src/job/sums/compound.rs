//! Joint compound and tape for so much board, without a room.

use crate::finish::compound::{Compound, CompoundAsk, CompoundRefusal, compound, usual};
use crate::job::questions::Reader;
use crate::job::questions::finish::FinishProblem;
use crate::job::{BoardEntry, Rest, Room, Typed, Units, fields};
use crate::saved;

/// So much board, its joints and its corners.
#[derive(Clone, Debug, PartialEq)]
pub struct CompoundSum {
    /// Board, an area.
    pub board: Typed,
    /// Joints and inside corners together; blank: not known.
    pub taped: Typed,
    /// Outside corners; blank: none.
    pub corners: Typed,
    /// Height of each.
    pub corner: Typed,
    /// The level of finish, 0 to 5.
    pub level: Typed,
    /// Allowance on tape, percent.
    pub tape_allowance: Typed,
    /// What a pail of compound holds, US gallons.
    pub pail: Typed,
    /// Fields unknown to this version.
    pub rest: Rest,
}

saved!(CompoundSum {
    board: or_default,
    taped: or_default,
    corners: or_default,
    corner: or_default,
    level: or_default,
    tape_allowance: or_default,
    pail: or_default,
});

impl Default for CompoundSum {
    /// Nothing measured yet; level, tape and pail as in a new room.
    fn default() -> Self {
        let usual = BoardEntry::usual(Units::FeetInches);
        Self {
            board: Typed::default(),
            taped: Typed::default(),
            corners: Typed::default(),
            corner: Typed::new("8", "ft"),
            level: usual.level,
            tape_allowance: usual.tape_allowance,
            pail: usual.pail,
            rest: Rest::new(),
        }
    }
}

impl CompoundSum {
    /// Tape, compound and bead. Without a length of joints no tape is told but by rules of thumb.
    ///
    /// # Errors
    /// Entries that are missing or refused; what can't be worked with.
    ///
    /// ```
    /// use calc::job::{Typed, sums::CompoundSum};
    /// // 1000 square feet to level 4: 9 to 13.5 gallons.
    /// let sum = CompoundSum { board: Typed::plain("1000"), ..CompoundSum::default() };
    /// assert_eq!(sum.answer().unwrap().compound_gal.high, 13.5);
    /// ```
    pub fn answer(&self) -> Result<Compound, FinishProblem<CompoundRefusal>> {
        let mut reader = Reader::default();
        let board_in2 = reader.need("board", &fields::FLOOR_AREA, &self.board);
        let taped_in = reader.may("taped", &fields::RUN, &self.taped);
        let corners = reader.count_or("corners", &fields::FIXTURES, &self.corners, 0);
        let corner_in = if corners > 0 {
            reader.need("corner", &fields::WALL_HEIGHT, &self.corner)
        } else {
            0.0
        };
        let ask = CompoundAsk {
            board_ft2: board_in2 / IN2_PER_FT2,
            taped_ft: taped_in.unwrap_or(0.0) / IN_PER_FT,
            outside_ft: vec![corner_in / IN_PER_FT; corners as usize],
            level: reader.count("level", &fields::LEVEL, &self.level) as u8,
            allowance_percent: reader.need(
                "tape_allowance",
                &fields::ALLOWANCE,
                &self.tape_allowance,
            ),
            pail_gal: reader.need("pail", &fields::PAIL, &self.pail),
            bead_in: usual::BEAD_IN.to_vec(),
        };
        compound(&reader.finish(ask)?).map_err(FinishProblem::Refused)
    }

    /// Puts level, tape and pail into a room; its board and its joints follow from its walls.
    pub fn keep(&self, room: &mut Room) {
        room.board.level = self.level.clone();
        room.board.tape_allowance = self.tape_allowance.clone();
        room.board.pail = self.pail.clone();
    }
}

const IN_PER_FT: f64 = 12.0;

const IN2_PER_FT2: f64 = 144.0;
