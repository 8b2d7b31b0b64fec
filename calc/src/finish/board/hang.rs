//! The ways to hang one surface: strips of board, cut where sheets end.

use super::{ROUNDING_IN, SheetSize, Surface, SurfaceKind};

/// A piece in its place, not yet cut from a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) surface: usize,
    pub(super) x_in: f64,
    pub(super) y_in: f64,
    pub(super) width_in: f64,
    pub(super) height_in: f64,
    pub(super) flat: bool,
}

/// A rectangle along and across the strips.
#[derive(Clone, Copy)]
struct Span {
    from: f64,
    to: f64,
    near: f64,
    far: f64,
}

/// How to hang.
struct Way<'a> {
    /// Width of each strip but the last, which is what is left.
    widths: &'a [f64],
    /// How long pieces may be.
    run_in: f64,
    /// The first strip begins with its rest.
    rest_first: bool,
}

/// All ways to hang a surface with sheets lying flat or standing.
pub(super) fn ways(
    place: usize,
    surface: &Surface,
    sheets: &[SheetSize],
    framing_in: f64,
    flat: bool,
) -> Vec<Vec<Piece>> {
    let hanging = Hanging {
        place,
        surface,
        sheets,
        framing_in,
        flat,
    };
    let mut runs: Vec<f64> = Vec::new();
    for sheet in sheets {
        if !runs.contains(&sheet.length_in) {
            runs.push(sheet.length_in);
        }
    }
    let mut all: Vec<Vec<Piece>> = Vec::new();
    for widths in hanging.strips() {
        for &run_in in &runs {
            for rest_first in [false, true] {
                let pieces = hanging.hang(&Way {
                    widths: &widths,
                    run_in,
                    rest_first,
                });
                if !all.contains(&pieces) {
                    all.push(pieces);
                }
            }
        }
    }
    all
}

struct Hanging<'a> {
    place: usize,
    surface: &'a Surface,
    sheets: &'a [SheetSize],
    framing_in: f64,
    flat: bool,
}

impl Hanging<'_> {
    /// Along and across the strips, inches.
    fn sides(&self) -> (f64, f64) {
        if self.flat {
            (self.surface.length_in, self.surface.height_in)
        } else {
            (self.surface.height_in, self.surface.length_in)
        }
    }

    fn openings(&self) -> Vec<Span> {
        let height = self.surface.height_in;
        let of = |open: &super::Cutout| {
            let (right, top) = (open.x_in + open.width_in, open.y_in + open.height_in);
            if self.flat {
                // Rows are counted from the top.
                Span {
                    from: open.x_in,
                    to: right,
                    near: height - top,
                    far: height - open.y_in,
                }
            } else {
                Span {
                    from: open.y_in,
                    to: top,
                    near: open.x_in,
                    far: right,
                }
            }
        };
        self.surface.openings.iter().map(of).collect()
    }

    /// How wide a strip of a sheet may be: standing on studs its edges must meet on one.
    fn usable_in(&self, width_in: f64) -> f64 {
        let on_framing = (width_in / self.framing_in + ROUNDING_IN).floor() * self.framing_in;
        if !self.flat && self.surface.kind == SurfaceKind::Wall && on_framing > 0.0 {
            on_framing
        } else {
            width_in
        }
    }

    /// Widths of strips that cover the surface: of one width, and as many as of the widest with some narrower.
    fn strips(&self) -> Vec<Vec<f64>> {
        let (_, across) = self.sides();
        let mut widths: Vec<f64> = Vec::new();
        for sheet in self.sheets {
            let width = self.usable_in(sheet.width_in);
            if !widths.contains(&width) {
                widths.push(width);
            }
        }
        let widest = widths.iter().copied().fold(0.0, f64::max);
        let needed = |width: f64| ((across / width) - ROUNDING_IN).ceil().max(1.0) as usize;
        let mut all: Vec<Vec<f64>> = Vec::new();
        for &width in &widths {
            all.push(vec![width; needed(width)]);
            let count = needed(widest);
            for narrower in 1..count {
                let wide = count - narrower;
                let together = wide as f64 * widest + narrower as f64 * width;
                if width < widest && together >= across - ROUNDING_IN {
                    let mut strips = vec![widest; wide];
                    strips.extend(vec![width; narrower]);
                    all.push(strips);
                }
            }
        }
        all
    }

    fn hang(&self, way: &Way) -> Vec<Piece> {
        let (along, across) = self.sides();
        let openings = self.openings();
        let mut pieces = Vec::new();
        let mut near = 0.0;
        for (row, width) in way.widths.iter().enumerate() {
            let far = (near + width).min(across);
            if far - near <= ROUNDING_IN {
                break;
            }
            let run_in = self.run_in(*width, way.run_in);
            let rest_first = (row % 2 == 1) != way.rest_first;
            for (from, to) in free(&openings, along, (near, far)) {
                for (from, to) in self.cut((from, to), run_in, rest_first) {
                    let span = Span {
                        from,
                        to,
                        near,
                        far,
                    };
                    if let Some(span) = shrunk(span, &openings) {
                        pieces.push(self.placed(&span));
                    }
                }
            }
            near = far;
        }
        pieces
    }

    /// The longest sheet that is wide enough and no longer than wished, else the longest that is wide enough.
    fn run_in(&self, width_in: f64, wished_in: f64) -> f64 {
        let (mut longest, mut within) = (0.0_f64, 0.0_f64);
        for sheet in self.sheets {
            if self.usable_in(sheet.width_in) >= width_in - ROUNDING_IN {
                longest = longest.max(sheet.length_in);
                if sheet.length_in <= wished_in {
                    within = within.max(sheet.length_in);
                }
            }
        }
        if within > 0.0 { within } else { longest }
    }

    /// A part of a strip in pieces no longer than a run, their ends on framing where framing crosses the strip.
    fn cut(&self, (from, to): (f64, f64), run_in: f64, rest_first: bool) -> Vec<(f64, f64)> {
        let on_framing = self.flat || self.surface.kind == SurfaceKind::Ceiling;
        let framing = self.framing_in;
        let (mut low, mut high) = (from, to);
        let mut pieces = Vec::new();
        while high - low > run_in + ROUNDING_IN {
            let mut at = if rest_first {
                high - run_in
            } else {
                low + run_in
            };
            if on_framing {
                let line = if rest_first {
                    (at / framing - ROUNDING_IN).ceil() * framing
                } else {
                    (at / framing + ROUNDING_IN).floor() * framing
                };
                if line > low && line < high {
                    at = line;
                }
                // A rest narrower than a bay holds badly: a bay more for it.
                let next = if rest_first {
                    at + framing
                } else {
                    at - framing
                };
                let rest = if rest_first { at - low } else { high - at };
                if rest < framing - ROUNDING_IN && next > low && next < high {
                    at = next;
                }
            }
            if rest_first {
                pieces.push((at, high));
                high = at;
            } else {
                pieces.push((low, at));
                low = at;
            }
        }
        pieces.push((low, high));
        pieces
    }

    fn placed(&self, span: &Span) -> Piece {
        let (x_in, y_in) = if self.flat {
            (span.from, self.surface.height_in - span.far)
        } else {
            (span.near, span.from)
        };
        let (long, wide) = (span.to - span.from, span.far - span.near);
        Piece {
            surface: self.place,
            x_in,
            y_in,
            width_in: if self.flat { long } else { wide },
            height_in: if self.flat { wide } else { long },
            flat: self.flat,
        }
    }
}

/// The parts of a strip that no opening takes from edge to edge.
fn free(openings: &[Span], along: f64, (near, far): (f64, f64)) -> Vec<(f64, f64)> {
    let mut parts: Vec<(f64, f64)> = vec![(0.0, along)];
    for open in openings {
        if open.near > near + ROUNDING_IN || open.far < far - ROUNDING_IN {
            continue;
        }
        let mut rest = Vec::new();
        for (from, to) in parts {
            rest.push((from, to.min(open.from)));
            rest.push((from.max(open.to), to));
        }
        rest.retain(|(from, to)| to - from > ROUNDING_IN);
        parts = rest;
    }
    parts
}

/// A piece without the sides that lie in openings; nothing where all of it does.
fn shrunk(span: Span, openings: &[Span]) -> Option<Span> {
    let mut span = span;
    loop {
        let before = (span.from, span.to, span.near, span.far);
        for open in openings {
            let all_along =
                open.from <= span.from + ROUNDING_IN && open.to >= span.to - ROUNDING_IN;
            let all_across =
                open.near <= span.near + ROUNDING_IN && open.far >= span.far - ROUNDING_IN;
            if all_along {
                if open.near <= span.near + ROUNDING_IN {
                    span.near = span.near.max(open.far);
                }
                if open.far >= span.far - ROUNDING_IN {
                    span.far = span.far.min(open.near);
                }
            }
            if all_across {
                if open.from <= span.from + ROUNDING_IN {
                    span.from = span.from.max(open.to);
                }
                if open.to >= span.to - ROUNDING_IN {
                    span.to = span.to.min(open.from);
                }
            }
            if span.to - span.from <= ROUNDING_IN || span.far - span.near <= ROUNDING_IN {
                return None;
            }
        }
        if before == (span.from, span.to, span.near, span.far) {
            return Some(span);
        }
    }
}
