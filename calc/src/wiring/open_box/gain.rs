//! What a reading is expected to bring, before it is taken.

use super::likelihood::{Expected, Shows};

/// What it brings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gain {
    /// How much less is left open, bits.
    pub bits: f64,
    /// How much likelier it gets that the first answer is the right one.
    pub right: f64,
}

/// An answer with less than this share is not asked what it would show, only how well it fits what others would.
const LEAST_ASKED: f64 = 2e-3;

/// What a reading brings: each answer's share with what it lets expect, and the share of the likeliest.
///
/// Each answer in turn is taken for true, what it would show is held against all of them, and what is left open then is
/// weighed by its share.
pub(super) fn gain(column: &[(f64, Option<Expected>)], likeliest: f64) -> Gain {
    let mut known: Vec<(f64, Expected)> = Vec::with_capacity(column.len());
    for (share, expected) in column {
        if let Some(expected) = expected {
            known.push((*share, *expected));
        }
    }
    // Where all expect the same there is nothing to be told.
    let Some((_, first)) = known.first() else {
        return Gain {
            bits: 0.0,
            right: 0.0,
        };
    };
    if known
        .iter()
        .all(|(_, expected)| expected.apart(first) < 0.3)
    {
        return Gain {
            bits: 0.0,
            right: 0.0,
        };
    }
    let (mut bits, mut right, mut asked) = (0.0, 0.0, 0.0);
    for (share, expected) in &known {
        if *share < LEAST_ASKED {
            continue;
        }
        asked += share;
        for (shows, probability) in expected.outcomes() {
            if probability < 0.01 {
                continue;
            }
            let (sum, most) = together(&known, shows);
            let own = share * expected.p(shows);
            // What is left open, against what was: log of its share then over its share now.
            bits += share * probability * (own / sum / share).log2();
            right += share * probability * most / sum;
        }
    }
    if asked <= 0.0 {
        return Gain {
            bits: 0.0,
            right: 0.0,
        };
    }
    Gain {
        bits: (bits / asked).max(0.0),
        right: (right / asked - likeliest).max(0.0),
    }
}

/// How well all of them fit what is shown, and how well the best of them does, each by its share.
fn together(known: &[(f64, Expected)], shows: Shows) -> (f64, f64) {
    let (mut sum, mut most) = (0.0, 0.0_f64);
    for (share, expected) in known {
        let p = share * expected.p(shows);
        sum += p;
        most = most.max(p);
    }
    (sum, most)
}
