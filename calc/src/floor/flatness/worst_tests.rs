use super::*;
use crate::floor::flatness::{gap, reference};

/// A small generator, so that the lines tried are the same every time.
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6364136223846793005)
            .wrapping_add(1442695040888963407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
}

#[test]
fn profiles_are_those_of_the_surface() {
    for survey in reference::surveys() {
        let surface = survey.surface();
        let walker = Walker::new(&surface).unwrap();
        let heights: Vec<f64> = surface.vertices.iter().map(|v| v.height_in).collect();
        let (mut crossings, mut profile) = (Vec::new(), Vec::new());
        let mut random = Random(7);
        let mut compared = 0;
        for _ in 0..200 {
            let a = Point::new(random.next() * 130.0, random.next() * 140.0);
            let line = Line::towards(a, random.next() * 7.0);
            let Some(start) = walker.start_near(line, 0) else {
                continue;
            };
            walker.follow(line, start, &mut crossings);
            profile_over(&crossings, &heights, &mut profile);
            let end_in = crossings.last().unwrap().s_in;
            let from_in = crossings[0].s_in;
            let pieces = surface.profile(line.point_at(from_in), line.point_at(end_in));
            let piece = pieces.iter().max_by(|a, b| a.len().cmp(&b.len())).unwrap();
            for length in [12.0, 24.0, 72.0, 120.0] {
                let expected = gap(piece, length).unwrap().gap_in;
                assert!(
                    (gap(&profile, length).unwrap().gap_in - expected).abs() < 1e-6,
                    "{}",
                    survey.survey
                );
            }
            compared += 1;
        }
        assert!(compared > 40, "{compared}");
    }
}

#[test]
fn no_less_than_any_listed_gap_or_any_line_tried_at_random() {
    for survey in reference::surveys() {
        let surface = survey.surface();
        let walker = Walker::new(&surface).unwrap();
        let heights: Vec<f64> = surface.vertices.iter().map(|v| v.height_in).collect();
        for length in [12.0, 24.0, 48.0, 72.0, 96.0, 120.0] {
            let worst = worst_gap(&surface, Top::OldFloor, length, USUAL_EFFORT).unwrap();
            for line in &survey.straightedge {
                for listed in line.gaps.iter().filter(|listed| listed.length_in == length) {
                    assert!(
                        worst.gap_in >= listed.gap_in - 1e-9,
                        "{} {length}: {worst:?} {listed:?}",
                        survey.survey
                    );
                }
            }
            // Not guaranteed, but a search that loses to chance by more than a percent is no good.
            let (mut crossings, mut profile) = (Vec::new(), Vec::new());
            let mut random = Random(11);
            let mut most = 0.0_f64;
            for _ in 0..4000 {
                let a = Point::new(random.next() * 130.0, random.next() * 140.0);
                let line = Line::towards(a, random.next() * 7.0);
                let Some(start) = walker.start_near(line, 0) else {
                    continue;
                };
                walker.follow(line, start, &mut crossings);
                profile_over(&crossings, &heights, &mut profile);
                most = most.max(gap(&profile, length).unwrap().gap_in);
            }
            assert!(
                worst.gap_in >= 0.99 * most,
                "{} {length}: {} {most}",
                survey.survey,
                worst.gap_in
            );
            // The answer bears itself out: the gap from its own three points, and on the surface itself.
            let span = worst.contact1.distance_in(worst.contact2);
            let share = worst.contact1.distance_in(worst.gap_at) / span;
            let chord = worst.contact1_height_in
                + share * (worst.contact2_height_in - worst.contact1_height_in);
            assert!((chord - worst.gap_at_height_in - worst.gap_in).abs() < 1e-6);
            assert!(span <= worst.window_in + 1e-9 && worst.window_in <= length);
            let floor = surface.height_in(worst.gap_at).unwrap();
            assert!((floor - worst.gap_at_height_in).abs() < 1e-6);
        }
    }
}

#[test]
fn never_below_the_walls_diagonals_and_grid_lines() {
    let surface = reference::surveys()[0].surface();
    for length in [12.0, 30.0, 120.0] {
        let worst = worst_gap(&surface, Top::OldFloor, length, 0)
            .unwrap()
            .gap_in;
        let mut lines = vec![((0.0, 0.0), (60.0, 96.0)), ((60.0, 0.0), (0.0, 96.0))];
        lines.extend([0.0, 30.0, 60.0].map(|x| ((x, 0.0), (x, 96.0))));
        lines.extend([0.0, 24.0, 48.0, 72.0, 96.0].map(|y| ((0.0, y), (60.0, y))));
        for (from, to) in lines {
            let pieces = surface.profile(Point::new(from.0, from.1), Point::new(to.0, to.1));
            assert!(
                gap(&pieces[0], length).unwrap().gap_in <= worst + 1e-9,
                "{from:?} {to:?}"
            );
        }
    }
}

#[test]
fn a_trough_with_known_answer() {
    // A parabola k x^2, 1/2 in deep over 120 in, read every 6 in and straight between. Over a breakpoint, contacts
    // u to one side of the even position give k (L^2/4 + 6 u - 2 u^2): most at u = 1.5 in, k (L^2/4 + 4.5). Over the
    // whole width there is no room to shift. Arithmetic.
    let k = 0.5 / 3600.0;
    let surface = reference::grid(21, 11, 6.0, |x, _| k * (x - 60.0).powi(2));
    for (length, expected) in [(120.0, 0.5), (24.0, k * 148.5), (72.0, k * 1300.5)] {
        let found = worst_gap(&surface, Top::OldFloor, length, USUAL_EFFORT)
            .unwrap()
            .gap_in;
        assert!(
            (found - expected).abs() < 1e-9,
            "{length}: {found} {expected}"
        );
    }
}

#[test]
fn a_pit_with_known_answer() {
    // One spot 3/8 in low among level ones 24 in apart. Squares are cut from the near left to the far right, so the
    // sides of the pit are steepest the other way across: 3/8 in over half a diagonal, 24/sqrt(2) in. A straightedge
    // shorter than the pit hangs over its middle by half its length times that slope: arithmetic.
    let surface = reference::grid(7, 6, 24.0, |x, y| {
        if (x, y) == (72.0, 48.0) { -0.375 } else { 0.0 }
    });
    let slope = 0.375 * 2.0_f64.sqrt() / 24.0;
    for (length, expected) in [
        (120.0, 0.375),
        (48.0, 0.375),
        (24.0, 12.0 * slope),
        (12.0, 6.0 * slope),
    ] {
        let found = worst_gap(&surface, Top::OldFloor, length, USUAL_EFFORT).unwrap();
        assert!(
            found.gap_in >= 0.999 * expected && found.gap_in <= expected + 1e-9,
            "{length}: {found:?} {expected}"
        );
        assert!(
            found.gap_at.distance_in(Point::new(72.0, 48.0)) < 1e-6,
            "{found:?}"
        );
    }
}

#[test]
fn a_pour_that_covers_is_flat_and_one_that_does_not_shows_the_floor() {
    let surface = reference::surveys()[0].surface();
    let cover = worst_gap(
        &surface,
        Top::Poured(Plane::level(0.6875)),
        120.0,
        USUAL_EFFORT,
    )
    .unwrap();
    assert_eq!(cover.gap_in, 0.0);
    let bare = worst_gap(&surface, Top::OldFloor, 120.0, USUAL_EFFORT).unwrap();
    let deep_below = worst_gap(
        &surface,
        Top::Poured(Plane::level(-9.0)),
        120.0,
        USUAL_EFFORT,
    )
    .unwrap();
    assert!((deep_below.gap_in - bare.gap_in).abs() < 1e-12);
    // Filled to 1/4 in, only what stands higher is left; with the level at 1/4 in between 0.4375 and 0.5625 on the
    // wall x = 0: less than bare, more than nothing.
    let part = worst_gap(
        &surface,
        Top::Poured(Plane::level(0.25)),
        120.0,
        USUAL_EFFORT,
    )
    .unwrap();
    assert!(
        part.gap_in > 0.05 && part.gap_in < bare.gap_in,
        "{part:?} {bare:?}"
    );
}

#[test]
fn refuses_a_straightedge_without_length_and_heights_that_are_missing() {
    let surface = reference::surveys()[0].surface();
    assert!(worst_gap(&surface, Top::OldFloor, 0.0, 10).is_err());
    assert!(worst_gap(&surface, Top::OldFloor, f64::NAN, 10).is_err());
    assert_eq!(
        worst_gap(&surface, Top::Filled(&[0.0; 3]), 24.0, 10),
        Err(StraightedgeRefusal::OutOfOrder { index: 3 })
    );
}

/// The line found against lines round it tried at random, farther and nearer: none is worse by a millionth of an inch.
#[test]
fn no_line_near_the_worst_is_worse() {
    for survey in reference::surveys() {
        let surface = survey.surface();
        let walker = Walker::new(&surface).unwrap();
        let heights: Vec<f64> = surface.vertices.iter().map(|v| v.height_in).collect();
        let (mut crossings, mut profile) = (Vec::new(), Vec::new());
        let mut random = Random(11);
        for length in [24.0, 72.0, 120.0] {
            let worst = worst_gap(&surface, Top::OldFloor, length, USUAL_EFFORT).unwrap();
            let found = Line::through(worst.contact1, worst.contact2).unwrap();
            let mut best = (worst.gap_in, worst.gap_at, found.angle_rad());
            for _ in 0..3000 {
                let scale = 10.0_f64.powf(-7.0 * random.next());
                let mut by = || scale * (random.next() - 0.5);
                let at = Point::new(best.1.x_in + 4.0 * by(), best.1.y_in + 4.0 * by());
                let angle_rad = best.2 + 0.1 * by();
                let line = Line::towards(at, angle_rad);
                let Some(start) = walker.start_near(line, 0) else {
                    continue;
                };
                walker.follow(line, start, &mut crossings);
                profile_over(&crossings, &heights, &mut profile);
                let gap_in = gap(&profile, length).map_or(0.0, |gap| gap.gap_in);
                if gap_in > best.0 {
                    best = (gap_in, at, angle_rad);
                }
            }
            assert!(
                best.0 - worst.gap_in < 1e-6,
                "{} {length}: {} over {}",
                survey.survey,
                best.0,
                worst.gap_in
            );
        }
    }
}
