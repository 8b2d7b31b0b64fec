//! The run as a ladder of stretches and loads, folded up from its far end and unfolded from its source.
//!
//! With the voltages V = (Va, Vb) from each leg to the neutral and the currents I = (Ia, Ib) out in the legs, a stretch
//! has V' = V - Z I and all beyond a point takes I = Y V + J: Y from resistances, J from fixed currents. Seen from the
//! start of the stretch that is Y (1 + Z Y)^-1 and (1 + Y Z)^-1 J. Two-wire and three-phase runs use the first of the
//! two legs alone.

use super::*;

pub(super) struct Conductor {
    pub(super) effective_ohm_per_ft: f64,
    pub(super) resistance_ohm_per_ft: f64,
}

type Pair = [f64; 2];
type Square = [[f64; 2]; 2];

const ZERO: Square = [[0.0; 2]; 2];

fn times(m: Square, [x, y]: Pair) -> Pair {
    m.map(|[a, b]| a * x + b * y)
}

fn product(m: Square, n: Square) -> Square {
    m.map(|[a, b]| [a * n[0][0] + b * n[1][0], a * n[0][1] + b * n[1][1]])
}

fn sum(m: Square, n: Square) -> Square {
    [
        [m[0][0] + n[0][0], m[0][1] + n[0][1]],
        [m[1][0] + n[1][0], m[1][1] + n[1][1]],
    ]
}

/// (1 + m)^-1: m is a product of impedances and admittances, so that the determinant is at least 1.
fn one_plus_inverse(m: Square) -> Square {
    let [[a, b], [c, d]] = [[1.0 + m[0][0], m[0][1]], [m[1][0], 1.0 + m[1][1]]];
    let det = a * d - b * c;
    [[d / det, -b / det], [-c / det, a / det]]
}

/// The impedance of a stretch whose every conductor has `r` ohms, and of a source with `s` ohms in each hot.
fn stretch_ohm(system: &System, r: f64, s: f64) -> Square {
    match system {
        System::TwoWire { .. } => [[2.0 * r + s, 0.0], [0.0, 0.0]],
        System::ThreePhase { .. } => [[3f64.sqrt() * (r + s), 0.0], [0.0, 0.0]],
        System::Multiwire { .. } => [[2.0 * r + s, -r], [-r, 2.0 * r + s]],
    }
}

/// What the loads of a point take: admittance and fixed current.
fn taken(run: &Run, at: usize, stretch: &Stretch) -> Result<(Square, Pair), DropRefusal> {
    let power_factor = run.wire.method.power_factor();
    let multiwire = matches!(run.system, System::Multiwire { .. });
    let (mut y, mut j) = (ZERO, [0.0; 2]);
    for load in &stretch.loads {
        if !multiwire && load.across != Across::A {
            return Err(DropRefusal::Across {
                stretch: at,
                across: load.across,
            });
        }
        let refused = DropRefusal::Load {
            stretch: at,
            demand: load.demand,
        };
        let good = |value: f64, most: f64| (0.0..=most).contains(&value);
        // Which legs the load hangs on.
        let [on_a, on_b] = match load.across {
            Across::A => [1.0, 0.0],
            Across::B => [0.0, 1.0],
            Across::Both => [1.0, 1.0],
        };
        let amps = match load.demand {
            Demand::Amps(amps) => amps,
            Demand::Watts(watts) => {
                let across = run.system.nominal() * (on_a + on_b);
                let phases = match run.system {
                    System::ThreePhase { .. } => 3f64.sqrt(),
                    _ => 1.0,
                };
                watts / (across * phases * power_factor)
            }
            Demand::Ohms(ohm) => {
                if power_factor < 1.0 || matches!(run.system, System::ThreePhase { .. }) {
                    return Err(DropRefusal::Ohms { stretch: at });
                }
                // A resistance near nothing is a short circuit and no load.
                if !(ohm >= 0.01 && ohm.is_finite()) {
                    return Err(refused);
                }
                let g = 1.0 / ohm;
                y = sum(
                    y,
                    [[g * on_a, g * on_a * on_b], [g * on_a * on_b, g * on_b]],
                );
                continue;
            }
        };
        if !good(amps, MOST_CURRENT_A) {
            return Err(refused);
        }
        j = [j[0] + amps * on_a, j[1] + amps * on_b];
    }
    Ok((y, j))
}

pub(super) fn solve(run: &Run, conductor: &Conductor) -> Result<Vec<DropPoint>, DropRefusal> {
    let nominal = run.system.nominal();
    let source_v = run.source_volts.unwrap_or(nominal);
    let multiwire = matches!(run.system, System::Multiwire { .. });
    let ohm_of = |at: usize, stretch: &Stretch| {
        let r = conductor.effective_ohm_per_ft * stretch.length_ft;
        stretch_ohm(&run.system, r, if at == 0 { run.source_ohm } else { 0.0 })
    };

    // From the far end: what everything beyond the start of each stretch takes, by the voltage there.
    let (mut y, mut j) = (ZERO, [0.0; 2]);
    let mut beyond = Vec::with_capacity(run.stretches.len());
    for (at, stretch) in run.stretches.iter().enumerate().rev() {
        let (own_y, own_j) = taken(run, at, stretch)?;
        y = sum(y, own_y);
        j = [j[0] + own_j[0], j[1] + own_j[1]];
        let z = ohm_of(at, stretch);
        // Both before they change: I = (1 + Y Z)^-1 (Y V + J).
        let fold = one_plus_inverse(product(y, z));
        y = product(fold, y);
        j = times(fold, j);
        beyond.push((stretch, z, y, j));
    }

    // From the source: the current into each stretch, and the voltage at its end.
    let mut v = [source_v, if multiwire { source_v } else { 0.0 }];
    let mut at_ft = 0.0;
    let mut points = Vec::with_capacity(beyond.len());
    for (stretch, z, y, j) in beyond.into_iter().rev() {
        let [ya, yb] = times(y, v);
        let [ia, ib] = [ya + j[0], yb + j[1]];
        let [za, zb] = times(z, [ia, ib]);
        v = [v[0] - za, v[1] - zb];
        at_ft += stretch.length_ft;
        if v[0] <= 0.0 || (multiwire && v[1] <= 0.0) {
            return Err(DropRefusal::NothingLeft { at_ft });
        }
        let left = |volts: f64, source_v: f64, nominal: f64| Left {
            volts,
            drop_v: source_v - volts,
            drop_percent: (source_v - volts) / nominal * 100.0,
        };
        let r = conductor.resistance_ohm_per_ft * stretch.length_ft;
        let neutral = ia - ib;
        let lost_w = match run.system {
            System::TwoWire { .. } => 2.0 * ia * ia * r,
            System::ThreePhase { .. } => 3.0 * ia * ia * r,
            System::Multiwire { .. } => (ia * ia + ib * ib + neutral * neutral) * r,
        };
        points.push(DropPoint {
            at_ft,
            a: left(v[0], source_v, nominal),
            b: multiwire.then(|| left(v[1], source_v, nominal)),
            both: multiwire.then(|| left(v[0] + v[1], 2.0 * source_v, 2.0 * nominal)),
            current_a: ia,
            current_b_a: multiwire.then_some(ib),
            neutral_a: multiwire.then_some(neutral.abs()),
            lost_w,
        });
    }
    Ok(points)
}
