//! The gap under a straightedge laid along one line of the floor.
//!
//! Along a line the floor is a profile: heights at breakpoints, straight between them. A straightedge of a given
//! length (cut to the line where that is shorter) rests on two contact points and bridges the dip between them.

use serde::Serialize;
use thiserror::Error;

pub use super::super::surface::ProfilePoint;

/// The largest gap under a straightedge along one line, and where it is.
///
/// Contact points need not be unique; the gap is. Where the line has no dip, the gap is 0 and all three places
/// are the start of the line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Gap {
    /// From the straightedge down to the floor, inches.
    pub gap_in: f64,
    /// Where the straightedge rests first, inches along the line.
    pub contact1_s_in: f64,
    /// Where the gap is, inches along the line.
    pub gap_at_s_in: f64,
    /// Where it rests the second time, inches along the line.
    pub contact2_s_in: f64,
    /// The straightedge as it was used: its length, or the line's if that is shorter; inches.
    pub window_in: f64,
}

/// Why a straightedge cannot be laid.
#[derive(Clone, Debug, PartialEq, Serialize, Error)]
#[serde(rename_all = "snake_case")]
pub enum StraightedgeRefusal {
    /// The straightedge has no length, or not a number for one.
    #[error("a straightedge needs a length above zero, not {given_in} in")]
    NoLength {
        /// What was given, inches.
        given_in: f64,
    },
    /// A profile of fewer than two breakpoints.
    #[error("a profile needs at least two points, not {given}")]
    TooFewPoints {
        /// How many were given.
        given: usize,
    },
    /// A breakpoint that isn't a number, or doesn't lie beyond the one before.
    #[error("point {index} of the profile does not follow the one before it")]
    OutOfOrder {
        /// Index of the breakpoint, from 0.
        index: usize,
    },
    /// The surface has no triangles, or no line across it could be followed.
    #[error("there is no floor under the straightedge")]
    NoFloor,
}

/// A gap this small is roundoff, inches: the line counts as having no dip.
pub const NO_GAP_IN: f64 = 1e-9;

/// The largest gap under a straightedge of `length_in` inches laid anywhere along `profile`.
///
/// The straightedge rests at s1 and s2, at most its length apart; the gap at s between them is
/// ((s2 - s) z(s1) + (s - s1) z(s2)) / (s2 - s1) - z(s). The largest one lies at a breakpoint, with both contacts
/// at breakpoints, or with s2 = s1 + length, where the gap is a quadratic in s1 between the positions at which an
/// end passes a breakpoint. Source: arithmetic.
///
/// # Errors
/// - [`StraightedgeRefusal::NoLength`] if the length is not a number above zero;
/// - [`StraightedgeRefusal::TooFewPoints`], [`StraightedgeRefusal::OutOfOrder`] if the profile is no line.
///
/// # Example
/// A floor that falls 1/4 in to the middle of a 10 ft line and rises again; under a 2 ft straightedge the two
/// slopes of 1/4 in in 5 ft leave 1/20 in.
/// ```
/// use calc::floor::flatness::{ProfilePoint, gap};
/// let profile = [(0.0, 0.25), (60.0, 0.0), (120.0, 0.25)]
///     .map(|(s_in, height_in)| ProfilePoint { s_in, height_in });
/// let ten_foot = gap(&profile, 120.0)?;
/// assert_eq!(ten_foot.gap_in, 0.25);
/// assert_eq!(ten_foot.gap_at_s_in, 60.0);
/// assert!((gap(&profile, 24.0)?.gap_in - 0.05).abs() < 1e-12);
/// # Ok::<(), calc::floor::flatness::StraightedgeRefusal>(())
/// ```
pub fn gap(profile: &[ProfilePoint], length_in: f64) -> Result<Gap, StraightedgeRefusal> {
    if !(length_in > 0.0 && length_in.is_finite()) {
        return Err(StraightedgeRefusal::NoLength {
            given_in: length_in,
        });
    }
    if profile.len() < 2 {
        return Err(StraightedgeRefusal::TooFewPoints {
            given: profile.len(),
        });
    }
    let mut before_in = f64::NEG_INFINITY;
    for (index, point) in profile.iter().enumerate() {
        let follows =
            point.s_in.is_finite() && point.height_in.is_finite() && point.s_in > before_in;
        if !follows {
            return Err(StraightedgeRefusal::OutOfOrder { index });
        }
        before_in = point.s_in;
    }
    Ok(gap_along(profile, length_in))
}

/// [`gap`] on a profile known to be in order, with a length known to be above zero.
pub(super) fn gap_along(profile: &[ProfilePoint], length_in: f64) -> Gap {
    let (Some(first), Some(last)) = (profile.first(), profile.last()) else {
        return none_at(0.0, 0.0);
    };
    let line_in = last.s_in - first.s_in;
    let window_in = length_in.min(line_in);
    let mut best = none_at(first.s_in, window_in);
    rest_on_breakpoints(profile, length_in, &mut best);
    if length_in < line_in {
        slide_full_length(profile, length_in, &mut best);
    }
    if best.gap_in <= NO_GAP_IN {
        none_at(first.s_in, window_in)
    } else {
        best
    }
}

fn none_at(s_in: f64, window_in: f64) -> Gap {
    Gap {
        gap_in: 0.0,
        contact1_s_in: s_in,
        gap_at_s_in: s_in,
        contact2_s_in: s_in,
        window_in,
    }
}

/// Both contacts at breakpoints: the edges of the least concave cover of each window that starts at a breakpoint.
///
/// A window that ends where the one before ended lies inside it and has nothing to add.
fn rest_on_breakpoints(profile: &[ProfilePoint], length_in: f64, best: &mut Gap) {
    let mut cover: Vec<usize> = Vec::with_capacity(profile.len());
    let mut end_before = 0;
    for (start, from) in profile.iter().enumerate() {
        let end = profile.partition_point(|point| point.s_in - from.s_in <= length_in);
        if end == end_before {
            continue;
        }
        end_before = end;
        cover.clear();
        for index in start..end {
            while let [.., a, b] = cover[..] {
                if !under(profile, a, b, index) {
                    break;
                }
                cover.pop();
            }
            cover.push(index);
        }
        for edge in cover.windows(2) {
            if let [a, b] = *edge {
                deepest_between(profile, a, b, best);
            }
        }
        if end == profile.len() {
            break;
        }
    }
}

/// Whether breakpoint `b` lies on or under the chord from `a` to `c`.
fn under(profile: &[ProfilePoint], a: usize, b: usize, c: usize) -> bool {
    let (a, b, c) = (profile[a], profile[b], profile[c]);
    (b.height_in - a.height_in) * (c.s_in - a.s_in)
        <= (c.height_in - a.height_in) * (b.s_in - a.s_in)
}

fn deepest_between(profile: &[ProfilePoint], a: usize, b: usize, best: &mut Gap) {
    let (from, to) = (profile[a], profile[b]);
    let rise = (to.height_in - from.height_in) / (to.s_in - from.s_in);
    for point in profile.iter().take(b).skip(a + 1) {
        let gap_in = from.height_in + rise * (point.s_in - from.s_in) - point.height_in;
        if gap_in > best.gap_in {
            best.gap_in = gap_in;
            best.contact1_s_in = from.s_in;
            best.gap_at_s_in = point.s_in;
            best.contact2_s_in = to.s_in;
        }
    }
}

/// Contacts exactly the straightedge's length apart, slid from one end of the line to the other.
///
/// Between two positions at which an end passes a breakpoint, the gap over a given breakpoint is a quadratic in
/// the distance slid. Only breakpoints where the floor turns up can be deepest.
fn slide_full_length(profile: &[ProfilePoint], length_in: f64, best: &mut Gap) {
    let slope = |segment: usize| {
        let (a, b) = (profile[segment], profile[segment + 1]);
        (b.height_in - a.height_in) / (b.s_in - a.s_in)
    };
    let turns_up: Vec<bool> = (0..profile.len())
        .map(|i| i > 0 && i + 1 < profile.len() && slope(i - 1) <= slope(i))
        .collect();
    let last = profile.len() - 1;
    let mut at_in = profile[0].s_in;
    let mut rear = 0; // the segment under the rear end
    let mut front = 0; // the segment under the front end
    while front + 1 < last && profile[front + 1].s_in <= at_in + length_in {
        front += 1;
    }
    loop {
        let to_rear_in = profile[rear + 1].s_in - at_in;
        let to_front_in = profile[front + 1].s_in - (at_in + length_in);
        let span_in = to_rear_in.min(to_front_in).max(0.0);
        let final_span = front + 1 == last && to_front_in <= to_rear_in;

        let (rear_slope, front_slope) = (slope(rear), slope(front));
        let rear_z = profile[rear].height_in + rear_slope * (at_in - profile[rear].s_in);
        let front_z =
            profile[front].height_in + front_slope * (at_in + length_in - profile[front].s_in);
        let square = (rear_slope - front_slope) / length_in;
        for m in rear + 1..=front {
            if !turns_up[m] {
                continue;
            }
            let point = profile[m];
            let ahead_in = point.s_in - at_in;
            let behind_in = length_in - ahead_in;
            let linear =
                (rear_z - front_z + behind_in * rear_slope + ahead_in * front_slope) / length_in;
            let level = (behind_in * rear_z + ahead_in * front_z) / length_in - point.height_in;
            let mut consider = |slid_in: f64| {
                let gap_in = level + slid_in * (linear + slid_in * square);
                if gap_in > best.gap_in {
                    best.gap_in = gap_in;
                    best.contact1_s_in = at_in + slid_in;
                    best.gap_at_s_in = point.s_in;
                    best.contact2_s_in = at_in + slid_in + length_in;
                }
            };
            consider(0.0);
            if square < 0.0 {
                let top_in = -linear / (2.0 * square);
                if top_in > 0.0 && top_in < span_in {
                    consider(top_in);
                }
            }
            if final_span {
                consider(span_in);
            }
        }
        if final_span {
            break;
        }
        at_in += span_in;
        if to_rear_in <= to_front_in {
            rear += 1;
            at_in = profile[rear].s_in;
        }
        if to_front_in <= to_rear_in && front + 1 < last {
            front += 1;
        }
        if rear + 1 > last || rear > front {
            break;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::floor::Point;
    use crate::floor::flatness::reference;
    use proptest::prelude::*;

    fn points(pairs: &[(f64, f64)]) -> Vec<ProfilePoint> {
        pairs
            .iter()
            .map(|&(s_in, height_in)| ProfilePoint { s_in, height_in })
            .collect()
    }

    #[test]
    fn every_reference_gap() {
        let mut checked = 0;
        for survey in reference::surveys() {
            for line in &survey.straightedge {
                let profile = points(&line.profile_s_z);
                for expected in &line.gaps {
                    let found = gap(&profile, expected.length_in).unwrap();
                    assert!(
                        (found.gap_in - expected.gap_in).abs() < 1e-6,
                        "{}: {found:?} {expected:?}",
                        survey.survey
                    );
                    assert!((found.window_in - expected.window_in).abs() < 1e-6);
                    // The contacts need not be the ones listed, but must bear the gap out.
                    let bridged = bridged_in(&profile, &found);
                    assert!((bridged - found.gap_in).abs() < 1e-9, "{found:?} {bridged}");
                    assert!(found.contact2_s_in - found.contact1_s_in <= found.window_in + 1e-9);
                    checked += 1;
                }
            }
        }
        assert!(checked >= 70, "{checked}");
    }

    #[test]
    fn every_reference_gap_from_the_surface_itself() {
        for survey in reference::surveys() {
            let surface = survey.surface();
            for line in &survey.straightedge {
                let ends = [line.from_in, line.to_in].map(|(x, y)| Point::new(x, y));
                let pieces = surface.profile(ends[0], ends[1]);
                assert_eq!(pieces.len(), 1);
                for expected in &line.gaps {
                    let found = gap(&pieces[0], expected.length_in).unwrap();
                    assert!(
                        (found.gap_in - expected.gap_in).abs() < 1e-6,
                        "{}: {found:?} {expected:?}",
                        survey.survey
                    );
                }
            }
        }
    }

    fn height_at(profile: &[ProfilePoint], s_in: f64) -> f64 {
        let after = profile
            .partition_point(|p| p.s_in < s_in)
            .clamp(1, profile.len() - 1);
        let (a, b) = (profile[after - 1], profile[after]);
        a.height_in + (b.height_in - a.height_in) * (s_in - a.s_in) / (b.s_in - a.s_in)
    }

    fn bridged_in(profile: &[ProfilePoint], gap: &Gap) -> f64 {
        if gap.gap_in == 0.0 {
            return 0.0;
        }
        let (z1, z2) = (
            height_at(profile, gap.contact1_s_in),
            height_at(profile, gap.contact2_s_in),
        );
        let share = (gap.gap_at_s_in - gap.contact1_s_in) / (gap.contact2_s_in - gap.contact1_s_in);
        z1 + share * (z2 - z1) - height_at(profile, gap.gap_at_s_in)
    }

    /// The definition itself: a window slid in small steps, its two ends and every breakpoint in it as contacts.
    fn slid_in(profile: &[ProfilePoint], length_in: f64, step_in: f64) -> f64 {
        let last = profile[profile.len() - 1].s_in;
        let window = length_in.min(last);
        let steps = ((last - window) / step_in).floor() as usize;
        let mut worst = 0.0_f64;
        let starts = (0..=steps)
            .map(|step| step as f64 * step_in)
            .chain([last - window]);
        for start in starts {
            let end = (start + window).min(last);
            let mut inside = vec![(start, height_at(profile, start))];
            inside.extend(
                profile
                    .iter()
                    .map(|p| (p.s_in, p.height_in))
                    .filter(|p| p.0 > start && p.0 < end),
            );
            inside.push((end, height_at(profile, end)));
            for i in 0..inside.len() {
                for j in i + 2..inside.len() {
                    for m in i + 1..j {
                        let share = (inside[m].0 - inside[i].0) / (inside[j].0 - inside[i].0);
                        worst = worst
                            .max(inside[i].1 + share * (inside[j].1 - inside[i].1) - inside[m].1);
                    }
                }
            }
        }
        worst
    }

    fn any_profile() -> impl Strategy<Value = Vec<ProfilePoint>> {
        prop::collection::vec((1.0..30.0_f64, -0.5..0.5_f64), 2..12).prop_map(|steps| {
            let mut s_in = 0.0;
            steps
                .iter()
                .enumerate()
                .map(|(i, &(step, height_in))| {
                    s_in += if i == 0 { 0.0 } else { step };
                    ProfilePoint { s_in, height_in }
                })
                .collect()
        })
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn a_constant_or_a_tilt_changes_nothing(profile in any_profile(), up in -9.0..9.0_f64, tilt in -0.1..0.1_f64, length in 1.0..300.0_f64) {
            let moved: Vec<_> = profile.iter().map(|p| ProfilePoint { s_in: p.s_in, height_in: p.height_in + up + tilt * p.s_in }).collect();
            prop_assert!((gap(&profile, length).unwrap().gap_in - gap(&moved, length).unwrap().gap_in).abs() < 1e-9);
        }

        #[test]
        fn walking_the_line_backwards_changes_nothing(profile in any_profile(), length in 1.0..300.0_f64) {
            let end = profile[profile.len() - 1].s_in;
            let back: Vec<_> = profile.iter().rev().map(|p| ProfilePoint { s_in: end - p.s_in, ..*p }).collect();
            prop_assert!((gap(&profile, length).unwrap().gap_in - gap(&back, length).unwrap().gap_in).abs() < 1e-9);
        }

        #[test]
        fn a_shorter_straightedge_finds_no_more(profile in any_profile(), length in 1.0..300.0_f64, share in 0.05..1.0_f64) {
            let long = gap(&profile, length).unwrap().gap_in;
            prop_assert!(gap(&profile, length * share).unwrap().gap_in <= long + 1e-12);
        }

        #[test]
        fn a_crowned_line_has_no_gap(turns in prop::collection::vec((1.0..20.0_f64, 0.0..0.01_f64), 2..12), length in 1.0..300.0_f64) {
            let (mut s_in, mut height_in, mut slope) = (0.0, 0.0, 0.05);
            let mut profile = vec![ProfilePoint { s_in, height_in }];
            for (step, turn) in turns {
                slope -= turn;
                s_in += step;
                height_in += slope * step;
                profile.push(ProfilePoint { s_in, height_in });
            }
            prop_assert_eq!(gap(&profile, length).unwrap().gap_in, 0.0);
        }

        #[test]
        fn never_below_a_slid_window_and_close_to_it(profile in any_profile(), length in 4.0..200.0_f64) {
            let found = gap(&profile, length).unwrap().gap_in;
            let slid = slid_in(&profile, length, 1.0 / 16.0);
            prop_assert!(slid <= found + 1e-9, "slid {} found {}", slid, found);
            // A step of 1/16 in on slopes below 1 in per in misses at most 1/32 in on either contact.
            prop_assert!(found - slid <= 1.0 / 16.0 + 1e-9, "slid {} found {}", slid, found);
            prop_assert!((bridged_in(&profile, &gap(&profile, length).unwrap()) - found).abs() < 1e-9);
        }
    }

    #[test]
    fn refuses_what_is_no_line() {
        let line = points(&[(0.0, 0.0), (10.0, 1.0)]);
        for given_in in [0.0, -1.0, f64::INFINITY] {
            assert_eq!(
                gap(&line, given_in),
                Err(StraightedgeRefusal::NoLength { given_in })
            );
        }
        assert!(gap(&line, f64::NAN).is_err());
        assert_eq!(
            gap(&line[..1], 12.0),
            Err(StraightedgeRefusal::TooFewPoints { given: 1 })
        );
        let stuck = points(&[(0.0, 0.0), (5.0, 1.0), (5.0, 2.0)]);
        assert_eq!(
            gap(&stuck, 12.0),
            Err(StraightedgeRefusal::OutOfOrder { index: 2 })
        );
        let gone = points(&[(0.0, 0.0), (5.0, f64::NAN)]);
        assert_eq!(
            gap(&gone, 12.0),
            Err(StraightedgeRefusal::OutOfOrder { index: 1 })
        );
    }
}
