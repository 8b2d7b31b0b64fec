//! Screws by framing.

use serde::Serialize;

use super::{BoardPlan, SurfaceKind, usual};
use crate::finish::steps::up;

/// How far apart screws are.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ScrewSpacing {
    /// On what.
    pub on: SurfaceKind,
    /// For framing up to this, on center, inches.
    pub framing_up_to_in: f64,
    /// Inches apart.
    pub apart_in: f64,
}

/// How far apart screws are on a wall or ceiling with its framing so far apart, inches; none where the table has no row.
pub fn apart_in(on: SurfaceKind, framing_in: f64) -> Option<f64> {
    let row = usual::SCREW_SPACING
        .iter()
        .find(|row| row.on == on && framing_in <= row.framing_up_to_in + 1e-9);
    row.map(|row| row.apart_in)
}

/// Screws in a piece: the framing lines it crosses, both edges with them, times the screws on a line, both ends with them.
///
/// ```
/// use calc::finish::board::{SurfaceKind, screws::in_piece};
/// // A sheet of 4 by 8 ft laid flat on studs at 16 in: 7 studs x 4 screws; under joists 7 x 5.
/// assert_eq!(in_piece(SurfaceKind::Wall, 96.0, 48.0, 16.0), Some(28));
/// assert_eq!(in_piece(SurfaceKind::Ceiling, 96.0, 48.0, 16.0), Some(35));
/// ```
pub fn in_piece(
    on: SurfaceKind,
    across_framing_in: f64,
    along_framing_in: f64,
    framing_in: f64,
) -> Option<u32> {
    let apart_in = apart_in(on, framing_in)?;
    if !(framing_in > 0.0 && across_framing_in >= 0.0 && along_framing_in >= 0.0) {
        return None;
    }
    let lines = up(across_framing_in / framing_in) + 1.0;
    let on_line = up(along_framing_in / apart_in) + 1.0;
    Some((lines * on_line).min(f64::from(u32::MAX)) as u32)
}

/// All screws of a layout. Studs stand upright; joists lie across the sheets. A patch counts as a piece of wall.
pub(super) fn of(plan: &BoardPlan) -> u32 {
    let framing_in = plan.ask.framing_in;
    let mut all = 0;
    for piece in &plan.pieces {
        let Some(surface) = plan.ask.surfaces.get(piece.surface) else {
            continue;
        };
        let upright = surface.kind == SurfaceKind::Wall || piece.flat;
        let (across_in, along_in) = if upright {
            (piece.width_in, piece.height_in)
        } else {
            (piece.height_in, piece.width_in)
        };
        all += in_piece(surface.kind, across_in, along_in, framing_in).unwrap_or(0);
    }
    for patch in &plan.ask.patches {
        let (wide, high) = (patch.width_in, patch.height_in);
        all += in_piece(SurfaceKind::Wall, wide, high, framing_in).unwrap_or(0);
    }
    all
}
