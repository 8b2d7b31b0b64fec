//! Pieces cut from rolls: no piece may be spliced outside a box.

use crate::order::Order;
use serde::Serialize;

/// A roll and the pieces that come out of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Roll {
    /// The pieces, by their place in the list.
    pub pieces: Vec<usize>,
    /// What is left, feet.
    pub left_ft: f64,
}

/// Cuts pieces from rolls of one length, feet: the longest first, each from the first roll that still has it.
///
/// Pieces that are longer than a roll are left out. The number of rolls is at most 11/9 of the least there can be, and
/// one (a known bound of this way of packing).
///
/// ```
/// use calc::wiring::cable_run::cut;
/// let rolls = cut(&[60.0, 150.0, 90.0], 250.0);
/// assert_eq!(rolls.len(), 2);
/// assert_eq!(rolls[0].pieces, [1, 2]);
/// ```
pub fn cut(pieces_ft: &[f64], roll_ft: f64) -> Vec<Roll> {
    let mut order: Vec<(usize, f64)> = pieces_ft.iter().copied().enumerate().collect();
    order.order_by(|a, b| b.1.total_cmp(&a.1));
    let mut rolls: Vec<Roll> = Vec::new();
    for (piece, length_ft) in order {
        match rolls.iter_mut().find(|roll| roll.left_ft >= length_ft) {
            Some(roll) => {
                roll.pieces.push(piece);
                roll.left_ft -= length_ft;
            }
            None if length_ft > roll_ft => {}
            None => rolls.push(Roll {
                pieces: vec![piece],
                left_ft: roll_ft - length_ft,
            }),
        }
    }
    rolls
}
