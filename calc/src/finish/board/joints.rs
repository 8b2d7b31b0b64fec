//! Where pieces meet.

use serde::Serialize;

use super::{Hung, ROUNDING_IN, SheetSize, Surface};

/// What meets in a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum JointKind {
    /// Two tapered edges.
    Tapered,
    /// Ends, or an edge that was ripped.
    Butt,
}

/// A joint, a straight line on its surface.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Joint {
    /// On which surface, from 0.
    pub surface: usize,
    /// Where it begins, inches.
    pub x_in: f64,
    /// See `x_in`.
    pub y_in: f64,
    /// Where it ends, inches.
    pub to_x_in: f64,
    /// See `to_x_in`.
    pub to_y_in: f64,
    /// What meets.
    pub kind: JointKind,
}

impl Joint {
    /// Its length, inches.
    pub fn length_in(&self) -> f64 {
        (self.to_x_in - self.x_in) + (self.to_y_in - self.y_in)
    }
}

/// A part of an edge that two pieces share: the one before it (below, or to the left) and the one after.
struct Shared {
    before: usize,
    after: usize,
    upright: bool,
    at_in: f64,
    from_in: f64,
    to_in: f64,
}

/// A piece's place: left, bottom, right, top.
pub(super) type Sides = [f64; 4];

fn sides(piece: &Hung) -> Sides {
    [
        piece.x_in,
        piece.y_in,
        piece.x_in + piece.width_in,
        piece.y_in + piece.height_in,
    ]
}

/// The joints of a surface.
pub(super) fn joints(
    place: usize,
    surface: &Surface,
    on: &[Hung],
    sheets: &[SheetSize],
) -> Vec<Joint> {
    let places: Vec<Sides> = on.iter().map(sides).collect();
    let shared = shared(surface, &places);
    // Of a piece with one tapered edge left, that edge is turned to the longer joint.
    let mut along = vec![(0.0, 0.0); on.len()];
    for part in &shared {
        let long_in = part.to_in - part.from_in;
        if let Some(sum) = along.get_mut(part.before)
            && on
                .get(part.before)
                .is_some_and(|piece| piece.flat != part.upright)
        {
            sum.1 += long_in;
        }
        if let Some(sum) = along.get_mut(part.after)
            && on
                .get(part.after)
                .is_some_and(|piece| piece.flat != part.upright)
        {
            sum.0 += long_in;
        }
    }
    let tapered = |which: usize, upright: bool, before: bool| {
        let (Some(piece), Some((ahead, behind))) = (on.get(which), along.get(which)) else {
            return false;
        };
        let wide_in = if piece.flat {
            piece.height_in
        } else {
            piece.width_in
        };
        let sheet_in = sheets.get(piece.sheet).map_or(0.0, |sheet| sheet.width_in);
        let edges = u8::from(piece.across_in <= ROUNDING_IN)
            + u8::from(piece.across_in + wide_in >= sheet_in - ROUNDING_IN);
        match edges {
            _ if piece.flat == upright => false,
            2 => true,
            // Its far side where it is before the joint, else its near one.
            1 if before => behind >= ahead,
            1 => ahead > behind,
            _ => false,
        }
    };
    let joint = |part: &Shared| {
        let both =
            tapered(part.before, part.upright, true) && tapered(part.after, part.upright, false);
        let (x_in, y_in, to_x_in, to_y_in) = if part.upright {
            (part.at_in, part.from_in, part.at_in, part.to_in)
        } else {
            (part.from_in, part.at_in, part.to_in, part.at_in)
        };
        Joint {
            surface: place,
            x_in,
            y_in,
            to_x_in,
            to_y_in,
            kind: if both {
                JointKind::Tapered
            } else {
                JointKind::Butt
            },
        }
    };
    shared.iter().map(joint).collect()
}

/// The length of all joints of a surface, inches.
pub(super) fn length_in(surface: &Surface, places: &[Sides]) -> f64 {
    let all = shared(surface, places);
    all.iter().map(|part| part.to_in - part.from_in).sum()
}

fn shared(surface: &Surface, places: &[Sides]) -> Vec<Shared> {
    let mut found = Vec::new();
    for (before, a) in places.iter().enumerate() {
        for (after, b) in places.iter().enumerate() {
            if before == after {
                continue;
            }
            let ([ax, ay, ar, at], [bx, by, br, bt]) = (*a, *b);
            for (upright, meet, at_in, low, high) in [
                (true, (ar - bx).abs(), bx, ay.max(by), at.min(bt)),
                (false, (at - by).abs(), by, ax.max(bx), ar.min(br)),
            ] {
                if meet > ROUNDING_IN || high - low <= ROUNDING_IN {
                    continue;
                }
                for (from_in, to_in) in boarded(surface, upright, at_in, (low, high)) {
                    found.push(Shared {
                        before,
                        after,
                        upright,
                        at_in,
                        from_in,
                        to_in,
                    });
                }
            }
        }
    }
    found
}

/// The parts of a line that have board on both sides.
fn boarded(surface: &Surface, upright: bool, at_in: f64, part: (f64, f64)) -> Vec<(f64, f64)> {
    let mut parts = vec![part];
    for open in &surface.openings {
        let (across, along) = if upright {
            ((open.x_in, open.width_in), (open.y_in, open.height_in))
        } else {
            ((open.y_in, open.height_in), (open.x_in, open.width_in))
        };
        if at_in < across.0 - ROUNDING_IN || at_in > across.0 + across.1 + ROUNDING_IN {
            continue;
        }
        let (open_from, open_to) = (along.0, along.0 + along.1);
        let mut rest = Vec::new();
        for (from, to) in parts {
            rest.push((from, to.min(open_from)));
            rest.push((from.max(open_to), to));
        }
        rest.retain(|(from, to)| to - from > ROUNDING_IN);
        parts = rest;
    }
    parts
}
