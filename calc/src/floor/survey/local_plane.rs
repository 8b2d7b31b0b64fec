//! The plane of a few neighbours, seen from a spot among them.

use super::suspects::AGREEING;

/// A neighbour, seen from the spot: offsets as shares of the farthest one's distance.
#[derive(Clone, Copy)]
pub(super) struct Seen {
    pub(super) dx: f64,
    pub(super) dy: f64,
    pub(super) height_in: f64,
    pub(super) weight: f64,
}

/// Neighbours all along one line say nothing across it: if the spot is on that line their offsets are laid along it
/// (and true is told), if it isn't there is nothing to expect.
pub(super) fn lay_out(seen: Vec<Seen>) -> Option<(Vec<Seen>, bool)> {
    if is_spread(&seen) {
        return Some((seen, false));
    }
    let farthest = seen
        .iter()
        .copied()
        .max_by(|a, b| a.dx.hypot(a.dy).total_cmp(&b.dx.hypot(b.dy)))?;
    let (ux, uy) = (farthest.dx, farthest.dy);
    let off_line = seen
        .iter()
        .any(|one| (one.dx * uy - one.dy * ux).abs() > 0.25);
    let laid = seen
        .into_iter()
        .map(|one| Seen {
            dx: one.dx * ux + one.dy * uy,
            dy: 0.0,
            ..one
        })
        .collect();
    (!off_line).then_some((laid, true))
}

/// Whether points spread in both directions well enough to bear a plane.
pub(super) fn is_spread(seen: &[Seen]) -> bool {
    let count = seen.len() as f64;
    let mean = |of: fn(&Seen) -> f64| seen.iter().map(of).sum::<f64>() / count;
    let (mx, my) = (mean(|one| one.dx), mean(|one| one.dy));
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for one in seen {
        let (x, y) = (one.dx - mx, one.dy - my);
        xx += x * x;
        xy += x * y;
        yy += y * y;
    }
    // The lesser principal moment.
    let least = f64::midpoint(xx, yy) - f64::midpoint(xx, -yy).hypot(xy);
    seen.len() >= 3 && least > 0.02 * count
}

/// The plane of those [`AGREEING`] neighbours that a plane fits best.
pub(super) fn best_agreeing(seen: &[Seen], flat: bool) -> Option<Plane> {
    let mut best: Option<(f64, Plane)> = None;
    let mut chosen = Vec::with_capacity(AGREEING);
    for mask in 0u32..1 << seen.len().min(super::NEIGHBOURS) {
        if mask.count_ones() as usize != AGREEING {
            continue;
        }
        chosen.clear();
        chosen.extend(
            seen.iter()
                .enumerate()
                .filter(|(bit, _)| mask >> bit & 1 == 1)
                .map(|(_, one)| *one),
        );
        if !flat && !is_spread(&chosen) {
            continue;
        }
        let Some(plane) = fit(chosen.iter()) else {
            continue;
        };
        let misfit: f64 = chosen.iter().map(|one| plane.off(one).powi(2)).sum();
        if best.as_ref().is_none_or(|(least, _)| misfit < *least) {
            best = Some((misfit, plane));
        }
    }
    best.map(|(_, plane)| plane)
}

/// A plane about the spot, and its leverage there.
#[derive(Clone, Copy)]
pub(super) struct Plane {
    pub(super) height_in: f64,
    pub(super) along_x: f64,
    pub(super) along_y: f64,
    pub(super) leverage: f64,
}

impl Plane {
    /// Root of the mean square of what is off the plane, inches.
    pub(super) fn misfit_in(&self, seen: &[Seen]) -> f64 {
        let squares: f64 = seen.iter().map(|one| self.off(one).powi(2)).sum();
        (squares / seen.len().max(1) as f64).sqrt()
    }

    pub(super) fn off(&self, one: &Seen) -> f64 {
        one.height_in - self.height_in - self.along_x * one.dx - self.along_y * one.dy
    }
}

/// The weighted plane of least squares. A trace is added to the slopes' own terms, so that points along one line have
/// a plane too.
pub(super) fn fit<'a>(seen: impl Iterator<Item = &'a Seen> + Clone) -> Option<Plane> {
    let (mut w, mut x, mut y, mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
    let (mut h, mut xh, mut yh) = (0.0, 0.0, 0.0);
    // Heights from the first neighbour's, so that a far datum costs no digits.
    let datum_in = seen.clone().next()?.height_in;
    for one in seen.clone() {
        let height_in = one.height_in - datum_in;
        w += one.weight;
        x += one.weight * one.dx;
        y += one.weight * one.dy;
        xx += one.weight * one.dx * one.dx;
        xy += one.weight * one.dx * one.dy;
        yy += one.weight * one.dy * one.dy;
        h += one.weight * height_in;
        xh += one.weight * one.dx * height_in;
        yh += one.weight * one.dy * height_in;
    }
    xx += 1e-12 * w;
    yy += 1e-12 * w;
    // The inverse of the symmetric matrix [[w x y] [x xx xy] [y xy yy]] by its cofactors.
    let (c00, c01, c02) = (xx * yy - xy * xy, xy * y - x * yy, x * xy - xx * y);
    let (c11, c12, c22) = (w * yy - y * y, x * y - w * xy, w * xx - x * x);
    let determinant = w * c00 + x * c01 + y * c02;
    if determinant.is_nan() || determinant <= 0.0 {
        return None;
    }
    let height = (c00 * h + c01 * xh + c02 * yh) / determinant;
    let along_x = (c01 * h + c11 * xh + c12 * yh) / determinant;
    let along_y = (c02 * h + c12 * xh + c22 * yh) / determinant;
    let pull =
        |one: &Seen| (one.weight * (c00 + c01 * one.dx + c02 * one.dy) / determinant).powi(2);
    let leverage = seen.map(pull).sum();
    Some(Plane {
        height_in: height + datum_in,
        along_x,
        along_y,
        leverage,
    })
}
