//! What must hold for any floor: tried on rooms and spots made at random, and against planes found by trying all.
#![allow(
    clippy::unwrap_used,
    reason = "a test that can't build its case has failed"
)]

use calc::floor::lifts::{LiftShare, lifts};
use calc::floor::plane::Plane;
use calc::floor::pour::{
    Cause, Clash, HeightKind, HeightRule, Pour, PourAsk, PourRefusal, Way, flat, level,
};
use calc::floor::surface::SurfaceRefusal;
use calc::floor::{Outline, Point, Spot, Surface};
use proptest::prelude::*;

/// Rooms of different shapes; the last two have no two walls alike, so no four corners share a circle.
fn room(shape: usize) -> Vec<Point> {
    let corners: &[(f64, f64)] = match shape {
        0 => &[(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)],
        1 => &[
            (0.0, 0.0),
            (120.0, 0.0),
            (120.0, 60.0),
            (72.0, 60.0),
            (72.0, 108.0),
            (0.0, 108.0),
        ],
        2 => &[
            (0.0, 0.0),
            (97.0, 5.0),
            (88.0, 77.0),
            (51.0, 64.0),
            (40.0, 121.0),
            (-13.0, 90.0),
        ],
        _ => &[(0.0, 0.0), (131.0, 11.0), (117.0, 103.0), (-8.0, 84.0)],
    };
    corners.iter().map(|(x, y)| Point::new(*x, *y)).collect()
}

/// A place in the room's box for each pair of shares; those outside are dropped by [`floor`].
fn spots(most: usize) -> impl Strategy<Value = Vec<(f64, f64, i32)>> {
    prop::collection::vec((0.0..1.0f64, 0.0..1.0f64, -16..=16i32), 6..most)
}

/// Spots on the tape's quarter inch when `on_tape`, heights in thirty-seconds; every corner read when asked.
fn floor(
    shape: usize,
    given: &[(f64, f64, i32)],
    on_tape: bool,
    corners_read: bool,
) -> Option<(Outline, Vec<Spot>)> {
    let outline = Outline::new(room(shape)).unwrap();
    let mut spots: Vec<Spot> = Vec::new();
    if corners_read {
        let corners = outline.corners().iter().enumerate();
        spots.extend(corners.map(|(i, at)| Spot {
            at: *at,
            height_in: (i * 7 % 5) as f64 / 32.0,
        }));
    }
    for (x, y, height) in given {
        let mut at = Point::new(-13.0 + 144.0 * x, 121.0 * y);
        if on_tape {
            at = Point::new((4.0 * at.x_in).round() / 4.0, (4.0 * at.y_in).round() / 4.0);
        }
        if outline.contains(at) {
            spots.push(Spot {
                at,
                height_in: f64::from(*height) / 32.0,
            });
        }
    }
    Surface::new(&outline, &spots)
        .ok()
        .map(|_| (outline, spots))
}

fn near(a: f64, b: f64, scale: f64) -> bool {
    (a - b).abs() <= 1e-9 * scale
}

fn plain(cover_in: f64) -> PourAsk {
    PourAsk {
        cover_in,
        tilt_limit_in_per_4ft: None,
        rules: Vec::new(),
    }
}

fn turned(at: Point, turn: f64) -> Point {
    let (sin, cos) = turn.sin_cos();
    Point::new(
        cos * at.x_in - sin * at.y_in + 31.0,
        sin * at.x_in + cos * at.y_in - 17.0,
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn volumes_add_up(shape in 0..4usize, given in spots(60), on_tape: bool, read: bool, eighths in 0..8u8) {
        let Some((outline, spots)) = floor(shape, &given, on_tape, read) else { return Ok(()) };
        let surface = Surface::new(&outline, &spots).unwrap();
        let cover_in = f64::from(eighths) / 8.0;
        let (level, flat) = (level(&surface, &plain(cover_in)).unwrap(), flat(&surface, &plain(cover_in)).unwrap());
        let area_in2 = outline.area_in2();
        for pour in [&level, &flat] {
            prop_assert!(pour.depth_in.iter().all(|depth_in| *depth_in >= cover_in - 1e-12));
            for limit_in in [0.2, pour.greatest_depth_in.max(0.1), pour.greatest_depth_in.max(0.1) / 2.0] {
                for share in [LiftShare::Even, LiftShare::FullFirst] {
                    let plan = lifts(&surface, pour, limit_in, share).unwrap();
                    let sum: f64 = plan.lifts.iter().map(|lift| lift.volume_in3).sum();
                    prop_assert!(near(sum, pour.volume_in3, area_in2));
                    prop_assert!(plan.lifts.iter().all(|l| l.greatest_thickness_in <= limit_in * (1.0 + 1e-8)));
                    prop_assert!(plan.lifts.iter().all(|l| l.volume_in3 >= -1e-9));
                }
            }
        }
        prop_assert!(level.volume_in3 >= flat.volume_in3 - 1e-9 * area_in2);
        let facts = surface.facts();
        // The triangles tile the room: the volume from its area is the volume from its triangles.
        let over_middle_in = flat.plane.height_in(outline.centroid());
        prop_assert!(near(area_in2 * over_middle_in - facts.integral_in3, flat.volume_in3, area_in2));
        let curve = surface.hypsometric_curve(40);
        for pair in curve.windows(2) {
            prop_assert!(pair[0].level_in < pair[1].level_in);
            prop_assert!(pair[0].volume_in3 <= pair[1].volume_in3 && pair[0].area_in2 <= pair[1].area_in2 + 1e-6);
        }
        let full = curve[curve.len() - 1];
        prop_assert!(near(full.volume_in3 + area_in2 * cover_in, level.volume_in3, area_in2));
    }

    #[test]
    fn spots_a_hair_off_the_walls_make_a_floor(
        shape in 0..4usize, turn in -3.2..3.2f64,
        given in prop::collection::vec((0..6usize, 1..64u8, -15..-3i32, any::<bool>()), 4..60),
    ) {
        let corners = room(shape).into_iter().map(|at| turned(at, turn)).collect();
        let outline = Outline::new(corners).unwrap();
        let mut spots: Vec<Spot> = Vec::new();
        for (wall, along, power, outwards) in given {
            let wall = outline.wall(wall % outline.corners().len()).unwrap();
            let at = wall.point_at(f64::from(along) / 64.0 * wall.length_in());
            let off_in = 10.0_f64.powi(power) * if outwards { -1.0 } else { 1.0 } / wall.length_in();
            let (dx, dy) = (wall.end.x_in - wall.start.x_in, wall.end.y_in - wall.start.y_in);
            let at = Point::new(at.x_in - dy * off_in, at.y_in + dx * off_in);
            // One spot at each place along a wall; of those that are outside by more than a hair, none.
            if outline.contains(at) && spots.iter().all(|spot| spot.at.distance_in(at) > 0.1) {
                spots.push(Spot { at, height_in: f64::from(along) / 64.0 });
            }
        }
        match Surface::new(&outline, &spots) {
            Ok(surface) => {
                let tiled_in2: f64 = surface.corners().map(|[a, b, c]| {
                    let (a, b, c) = (a.at, b.at, c.at);
                    let twice = (b.x_in - a.x_in) * (c.y_in - a.y_in) - (b.y_in - a.y_in) * (c.x_in - a.x_in);
                    assert!(twice >= 0.0);
                    twice / 2.0
                }).sum();
                prop_assert!((tiled_in2 / outline.area_in2() - 1.0).abs() < 1e-8, "{tiled_in2}");
                prop_assert!(flat(&surface, &plain(0.125)).is_ok());
            }
            Err(refusal) => {
                let poor = matches!(refusal, SurfaceRefusal::TooFew { .. } | SurfaceRefusal::OneLine { .. });
                prop_assert!(poor, "{refusal}");
            }
        }
    }

    #[test]
    fn a_constant_changes_heights_alone(shape in 0..4usize, given in spots(40), by in -40..40i32) {
        let Some((outline, spots)) = floor(shape, &given, true, false) else { return Ok(()) };
        let by_in = f64::from(by) / 4.0;
        let moved: Vec<Spot> = spots.iter().map(|s| Spot { height_in: s.height_in + by_in, ..*s }).collect();
        let (a, b) = (Surface::new(&outline, &spots).unwrap(), Surface::new(&outline, &moved).unwrap());
        prop_assert_eq!(&a.triangles, &b.triangles);
        for pour in [level, flat] {
            let (a, b) = (pour(&a, &plain(0.25)).unwrap(), pour(&b, &plain(0.25)).unwrap());
            prop_assert!(near(a.volume_in3, b.volume_in3, a.area_in2));
            prop_assert!(near(a.plane.height_in(Point::new(30.0, 30.0)) + by_in, b.plane.height_in(Point::new(30.0, 30.0)), 1.0));
            prop_assert!(a.depth_in.iter().zip(&b.depth_in).all(|(a, b)| near(*a, *b, 1.0)));
        }
    }

    #[test]
    fn turning_the_room_changes_no_volume(
        shape in 2..4usize, given in spots(40), turn in prop_oneof![Just(std::f64::consts::FRAC_PI_2), -3.2..3.2f64],
        limit in prop::option::of(0.0..0.3f64),
    ) {
        let Some((outline, spots)) = floor(shape, &given, false, false) else { return Ok(()) };
        let round = Outline::new(outline.corners().iter().map(|at| turned(*at, turn)).collect()).unwrap();
        let turned_spots: Vec<Spot> = spots.iter().map(|s| Spot { at: turned(s.at, turn), ..*s }).collect();
        let a = Surface::new(&outline, &spots).unwrap();
        let b = Surface::new(&round, &turned_spots).unwrap();
        prop_assert_eq!(&a.triangles, &b.triangles);
        let ask = PourAsk { tilt_limit_in_per_4ft: limit, ..plain(0.125) };
        for pour in [level, flat] {
            let (a, b) = (pour(&a, &ask).unwrap(), pour(&b, &ask).unwrap());
            prop_assert!(near(a.volume_in3, b.volume_in3, a.volume_in3));
            prop_assert!(near(a.tilt_in_per_4ft, b.tilt_in_per_4ft, 100.0));
        }
    }

    #[test]
    fn the_order_of_spots_changes_nothing(shape in 0..4usize, given in spots(40), on_tape: bool, by in 1..39usize) {
        let Some((outline, spots)) = floor(shape, &given, on_tape, true) else { return Ok(()) };
        let mut other = spots.clone();
        other.rotate_left(by % spots.len());
        other.reverse();
        let a = Surface::new(&outline, &spots).unwrap();
        let b = Surface::new(&outline, &other).unwrap();
        let places = |surface: &Surface| {
            let mut all: Vec<[(u64, u64); 3]> = surface
                .corners()
                .map(|corners| {
                    let mut three = corners.map(|c| (c.at.x_in.to_bits(), c.at.y_in.to_bits()));
                    three.sort_unstable();
                    three
                })
                .collect();
            all.sort_unstable();
            all
        };
        prop_assert_eq!(places(&a), places(&b));
        for pour in [level, flat] {
            let (a, b) = (pour(&a, &plain(0.125)).unwrap(), pour(&b, &plain(0.125)).unwrap());
            prop_assert!(near(a.volume_in3, b.volume_in3, a.volume_in3));
        }
    }

    #[test]
    fn no_plane_takes_less(
        shape in 0..4usize, given in spots(14),
        limit in prop::option::of(0.0..0.4f64),
        asked in prop::collection::vec((0.0..1.0f64, 0..6usize, -8..24i32, any::<bool>(), any::<bool>()), 0..3),
    ) {
        let Some((outline, spots)) = floor(shape, &given, true, false) else { return Ok(()) };
        let surface = Surface::new(&outline, &spots).unwrap();
        let rules: Vec<HeightRule> = asked
            .iter()
            .enumerate()
            .map(|(id, (share, wall, height, exactly, both))| {
                let wall = outline.wall(wall % outline.corners().len()).unwrap();
                let at = |share: f64| wall.point_at(share * wall.length_in());
                let points = if *both { vec![at(0.5 * share), at(0.5 + 0.5 * share)] } else { vec![at(*share)] };
                let kind = if *exactly { HeightKind::Exactly } else { HeightKind::AtMost };
                HeightRule { points, kind, height_in: f64::from(*height) / 16.0, id: id as u32 }
            })
            .collect();
        let ask = PourAsk { cover_in: 0.125, tilt_limit_in_per_4ft: limit, rules };
        let best = best_by_trying(&surface, &ask);
        match flat(&surface, &ask) {
            Ok(pour) => {
                prop_assert!(keeps(&surface, &ask, &pour.plane, 1e-9), "{:?} {:?}", pour.plane, ask);
                let over_middle = pour.plane.height_in(outline.centroid());
                let best = best.map_or(f64::INFINITY, |plane| plane.height_in(outline.centroid()));
                prop_assert!(over_middle <= best + 1e-9, "{over_middle}, not {best}: {:?}", ask);
                if limit.is_none() {
                    prop_assert!(over_middle >= best - 1e-9, "{over_middle} under {best}: {:?}", ask);
                }
                prop_assert!(nothing_near_is_better(&surface, &ask, &pour));
            }
            Err(PourRefusal::Conflict(conflict)) => {
                prop_assert!(best.is_none(), "{:?} keeps {:?}", best, ask);
                prop_assert!(!conflict.clashes.is_empty());
                for clash in &conflict.clashes {
                    check_clash(&surface, &ask, clash)?;
                }
                for way in &conflict.ways {
                    prop_assert!(flat(&surface, &changed(&ask, *way, 1e-7)).is_ok(), "{:?} {:?}", way, ask);
                    prop_assert!(flat(&surface, &changed(&ask, *way, -1e-6)).is_err(), "{:?} {:?}", way, ask);
                    // What is read off works as well, unless no tape is fine enough for it.
                    let shown = way.rounded_on(1.0 / 16.0, 0.01);
                    prop_assert!(shown == *way || flat(&surface, &changed(&ask, shown, 0.0)).is_ok(), "{:?} {:?}", shown, ask);
                }
            }
            Err(other) => prop_assert!(false, "{other}"),
        }
    }
}

/// The ask with one way out taken, and a hair further.
fn changed(ask: &PourAsk, way: Way, further: f64) -> PourAsk {
    let mut ask = ask.clone();
    match way {
        Way::Height {
            id, to_in, by_in, ..
        } => {
            let exact = ask.rules[id as usize].kind == HeightKind::Exactly;
            // An upper height may lie past the limit of what can be; an exact one may have no room to.
            let further = if exact && further > 0.0 {
                0.0
            } else {
                further * by_in.signum()
            };
            ask.rules[id as usize].height_in = to_in + further;
        }
        Way::Tilt { to_in_per_4ft } => ask.tilt_limit_in_per_4ft = Some(to_in_per_4ft + further),
    }
    ask
}

/// What a clash names can't be had together, it can without any one of them, and each change makes it possible where
/// a hair less does not; all by [`feasible`], which knows nothing of how the plane is found.
fn check_clash(surface: &Surface, ask: &PourAsk, clash: &Clash) -> Result<(), TestCaseError> {
    prop_assert!(clash.causes.len() >= 2, "{clash:?}");
    let named = |without: Option<usize>, ask: &PourAsk, all_covers: bool, loose_in: f64| {
        let mut rows: Vec<[f64; 4]> = Vec::new();
        let mut limit = None;
        let cover = |vertex: usize| {
            let v = surface.vertices[vertex];
            [
                1.0,
                v.at.x_in,
                v.at.y_in,
                v.height_in + ask.cover_in - loose_in,
            ]
        };
        for (index, cause) in clash.causes.iter().enumerate() {
            if Some(index) == without {
                continue;
            }
            match cause {
                Cause::Rule { id } => {
                    let rule = &ask.rules[*id as usize];
                    for at in &rule.points {
                        rows.push([-1.0, -at.x_in, -at.y_in, -rule.height_in - loose_in]);
                        if rule.kind == HeightKind::Exactly {
                            rows.push([1.0, at.x_in, at.y_in, rule.height_in - loose_in]);
                        }
                    }
                }
                Cause::TiltLimit => limit = ask.tilt_limit_in_per_4ft,
                Cause::Cover { vertex } => rows.push(cover(*vertex)),
            }
        }
        if all_covers {
            rows.extend((0..surface.vertices.len()).map(cover));
        }
        feasible(rows, limit.map(|limit| limit + 48.0 / 60.0 * loose_in))
    };
    prop_assert!(!named(None, ask, false, 1e-7), "{clash:?} {ask:?}");
    for index in 0..clash.causes.len() {
        prop_assert!(
            named(Some(index), ask, false, 1e-7),
            "{index} {clash:?} {ask:?}"
        );
    }
    let by_own_cover = clash.causes.len() == 2
        && matches!(clash.causes[1], Cause::Cover { vertex }
            if ask.rules.iter().any(|rule| Cause::Rule { id: rule.id } == clash.causes[0]
                && rule.points.iter().any(|at| at.distance_in(surface.vertices[vertex].at) < 1e-6)));
    let of_rules = clash
        .causes
        .iter()
        .filter(|cause| matches!(cause, Cause::Rule { .. }))
        .count();
    let told = clash
        .changes
        .iter()
        .filter(|way| matches!(way, Way::Height { .. }))
        .count();
    // A height to meet at two places at once may have no remedy alone.
    let twofold = ask
        .rules
        .iter()
        .any(|rule| rule.kind == HeightKind::Exactly && rule.points.len() > 1);
    prop_assert!(
        told == of_rules || twofold && told < of_rules,
        "{clash:?} {ask:?}"
    );
    for way in &clash.changes {
        let cured = changed(ask, *way, 0.0);
        prop_assert!(
            named(None, &cured, !by_own_cover, 1e-6),
            "{way:?} {clash:?} {ask:?}"
        );
        let less = match *way {
            Way::Height { .. } => changed(ask, *way, -1e-3),
            // More than the 0.06 percent by which the polygon is wider.
            Way::Tilt { to_in_per_4ft } => changed(ask, *way, -2e-3 * to_in_per_4ft.max(1.0)),
        };
        // Tightened by a hair: where the places named lie almost in one line, a plane that turns about it makes much of
        // what is let pass.
        prop_assert!(
            !named(None, &less, !by_own_cover, -1e-7),
            "{way:?} {clash:?} {ask:?}"
        );
        if let Way::Height { id, to_in, .. } = *way {
            // What is shown instead works too.
            if let rounded @ Way::Height {
                to_in: shown_in, ..
            } = way.rounded_on(1.0 / 16.0, 0.01)
            {
                prop_assert!(
                    named(None, &changed(ask, rounded, 0.0), !by_own_cover, 1e-6),
                    "{rounded:?} {clash:?}"
                );
                let at_most = ask.rules[id as usize].kind == HeightKind::AtMost;
                prop_assert!(!at_most || shown_in >= to_in - 1e-6);
            }
        }
    }
    Ok(())
}

/// Whether some plane a + b x + c y meets every row `[one, x, y, least]`: one a + x b + y c >= least. Unknowns are
/// taken out one after another (Fourier and Motzkin), with the tilt held within a polygon of 90 sides round the
/// limit, wider by up to 0.06 percent.
fn feasible(mut rows: Vec<[f64; 4]>, limit_in_per_4ft: Option<f64>) -> bool {
    if let Some(limit) = limit_in_per_4ft {
        for side in 0..90 {
            let (sin, cos) = f64::from(4 * side).to_radians().sin_cos();
            rows.push([0.0, -cos, -sin, -limit / 48.0]);
        }
    }
    // Places in rooms: in some five feet, so that all unknowns are alike.
    for row in &mut rows {
        if row[0] == 0.0 {
            row[3] *= 60.0;
        } else {
            row[1] /= 60.0;
            row[2] /= 60.0;
        }
    }
    for unknown in 0..3 {
        let (mut up, mut down, mut rest) = (Vec::new(), Vec::new(), Vec::new());
        for row in rows {
            let factor: f64 = row[unknown];
            let size = row[..3].iter().fold(0.0, |most: f64, f| most.max(f.abs()));
            // What is left of places in one line is rounding, and a plane as steep as a wall is none.
            if factor.abs() <= 1e-9 * size.max(1.0) {
                rest.push(row);
            } else if factor > 0.0 {
                up.push(row.map(|value| value / factor));
            } else {
                down.push(row.map(|value| value / -factor));
            }
        }
        for a in &up {
            for b in &down {
                rest.push([0, 1, 2, 3].map(|i| {
                    if i <= unknown && i < 3 {
                        0.0
                    } else {
                        a[i] + b[i]
                    }
                }));
            }
        }
        rows = rest;
    }
    rows.iter().all(|row| row[3] <= 1e-9)
}

/// Whether a plane keeps all that is asked.
fn keeps(surface: &Surface, ask: &PourAsk, plane: &Plane, slack: f64) -> bool {
    surface
        .vertices
        .iter()
        .all(|v| plane.height_in(v.at) - v.height_in >= ask.cover_in - slack)
        && ask
            .tilt_limit_in_per_4ft
            .is_none_or(|limit| plane.tilt_in_per_4ft() <= limit + slack)
        && ask.rules.iter().all(|rule| {
            rule.points.iter().all(|at| {
                let over_in = plane.height_in(*at) - rule.height_in;
                over_in <= slack && (rule.kind == HeightKind::AtMost || over_in >= -slack)
            })
        })
}

/// The lowest of all planes through three heights asked for (by the cover or a rule) that keep the rest.
fn best_by_trying(surface: &Surface, ask: &PourAsk) -> Option<Plane> {
    let covers = surface
        .vertices
        .iter()
        .map(|v| (v.at, v.height_in + ask.cover_in));
    let rules = ask
        .rules
        .iter()
        .flat_map(|rule| rule.points.iter().map(|at| (*at, rule.height_in)));
    let heights: Vec<(Point, f64)> = covers.chain(rules).collect();
    let middle = surface.outline.centroid();
    let mut best: Option<Plane> = None;
    let mut offer = |plane: Plane| {
        let lower = best.is_none_or(|best| plane.height_in(middle) < best.height_in(middle));
        if lower && keeps(surface, ask, &plane, 1e-10) {
            best = Some(plane);
        }
    };
    for (i, (p, hp)) in heights.iter().enumerate() {
        offer(Plane::level(*hp));
        for (j, (q, hq)) in heights.iter().enumerate().skip(i + 1) {
            for (r, hr) in heights.iter().skip(j + 1) {
                let (qx, qy, qh) = (q.x_in - p.x_in, q.y_in - p.y_in, hq - hp);
                let (rx, ry, rh) = (r.x_in - p.x_in, r.y_in - p.y_in, hr - hp);
                let det = qx * ry - qy * rx;
                if det.abs() > 1e-6 {
                    offer(Plane::through(
                        *p,
                        *hp,
                        (qh * ry - rh * qy) / det,
                        (qx * rh - rx * qh) / det,
                    ));
                }
            }
        }
    }
    best
}

/// Whether no plane with slopes a little different takes less: a convex problem has no other hiding place.
fn nothing_near_is_better(surface: &Surface, ask: &PourAsk, pour: &Pour) -> bool {
    let middle = surface.outline.centroid();
    let over_middle_in = pour.plane.height_in(middle);
    (0..360).all(|degrees| {
        let (sin, cos) = f64::from(degrees).to_radians().sin_cos();
        [1e-6, 1e-4, 1e-2].iter().all(|by| {
            let (b, c) = (
                pour.plane.b_in_per_in + by * cos,
                pour.plane.c_in_per_in + by * sin,
            );
            let through = |at: Point, height_in: f64| Plane::through(at, height_in, b, c);
            // The lowest plane with these slopes that keeps the cover.
            let lowest = surface
                .vertices
                .iter()
                .map(|v| through(v.at, v.height_in + ask.cover_in))
                .max_by(|a, b| a.a_in.total_cmp(&b.a_in))
                .unwrap();
            let exact = ask
                .rules
                .iter()
                .find(|rule| rule.kind == HeightKind::Exactly);
            let plane = exact.map_or(lowest, |rule| through(rule.points[0], rule.height_in));
            !keeps(surface, ask, &plane, 0.0) || plane.height_in(middle) >= over_middle_in - 1e-9
        })
    })
}

#[test]
fn edge_cases_stand() {
    let corners =
        [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
    let outline = Outline::new(corners.to_vec()).unwrap();
    let with = |height: &dyn Fn(Point) -> f64| {
        let places = corners
            .into_iter()
            .chain([(20.0, 30.0), (40.0, 61.0), (30.0, 0.0)].map(|(x, y)| Point::new(x, y)));
        let spots: Vec<Spot> = places
            .map(|at| Spot {
                at,
                height_in: height(at),
            })
            .collect();
        Surface::new(&outline, &spots).unwrap()
    };
    // All at one height, no cover: nothing to pour, and level and flat agree.
    let dead_level = with(&|_| 0.25);
    for pour in [
        level(&dead_level, &plain(0.0)).unwrap(),
        flat(&dead_level, &plain(0.0)).unwrap(),
    ] {
        assert_eq!(
            (pour.volume_in3, pour.greatest_depth_in, pour.plane),
            (0.0, 0.0, Plane::level(0.25))
        );
        assert_eq!(pour.downhill_degrees, None);
        assert!(
            lifts(&dead_level, &pour, 1.0, LiftShare::Even)
                .unwrap()
                .lifts
                .is_empty()
        );
    }
    // A perfect plane: the flat pour is the cover and nothing else, and it is the only one.
    let slanted = with(&|at| 0.01 * at.x_in - 0.02 * at.y_in);
    let pour = flat(&slanted, &plain(0.125)).unwrap();
    assert!((pour.volume_in3 - 720.0).abs() < 1e-9 && pour.unique);
    // Differences under a millionth of an inch.
    let fine = with(&|at| {
        if at.x_in == 20.0 {
            2e-7
        } else {
            1e-7 * (at.x_in / 60.0)
        }
    });
    let (level_fine, flat_fine) = (
        level(&fine, &plain(0.0)).unwrap(),
        flat(&fine, &plain(0.0)).unwrap(),
    );
    assert!(flat_fine.volume_in3 > 0.0 && flat_fine.volume_in3 < level_fine.volume_in3);
    // A limit of no tilt is a level pour.
    let held = flat(
        &slanted,
        &PourAsk {
            tilt_limit_in_per_4ft: Some(0.0),
            ..plain(0.125)
        },
    )
    .unwrap();
    assert!((held.volume_in3 - level(&slanted, &plain(0.125)).unwrap().volume_in3).abs() < 1e-9);
    // One inch in lifts of one inch is one lift.
    let inch = level(&dead_level, &plain(1.0)).unwrap();
    assert_eq!(
        lifts(&dead_level, &inch, 1.0, LiftShare::FullFirst)
            .unwrap()
            .lifts
            .len(),
        1
    );
    // Three spots in the middle, no corner read.
    let three = [(20.0, 30.0, 0.0), (40.0, 30.0, 0.5), (30.0, 60.0, 0.25)];
    let spots = three.map(|(x, y, height_in)| Spot {
        at: Point::new(x, y),
        height_in,
    });
    let surface = Surface::new(&outline, &spots).unwrap();
    assert!(
        flat(&surface, &plain(0.25)).unwrap().volume_in3
            <= level(&surface, &plain(0.25)).unwrap().volume_in3
    );
}

/// Domes and bowls, where many planes come close: at a door in the corner and in a wall, as low as it goes.
#[test]
fn smooth_floors_settle() {
    let corners =
        [(0.0, 0.0), (400.0, 0.0), (400.0, 300.0), (0.0, 300.0)].map(|(x, y)| Point::new(x, y));
    let outline = Outline::new(corners.to_vec()).unwrap();
    for height in [-1.0, 1.0, 0.0] {
        let mut spots = Vec::new();
        for i in 0..=50 {
            for j in 0..=40 {
                let at = Point::new(8.0 * f64::from(i), 7.5 * f64::from(j));
                let out = at.distance_in(Point::new(180.0, 160.0)) / 250.0;
                spots.push(Spot {
                    at,
                    height_in: height * (1.0 - out * out) + 0.001 * at.x_in,
                });
            }
        }
        let surface = Surface::new(&outline, &spots).unwrap();
        for door in [
            Point::new(0.0, 0.0),
            Point::new(200.0, 0.0),
            Point::new(400.0, 133.0),
            Point::new(200.0, 150.0),
        ] {
            for limit in [None, Some(0.2), Some(0.02)] {
                let rule = HeightRule {
                    points: vec![door],
                    kind: HeightKind::AtMost,
                    height_in: -3.0,
                    id: 0,
                };
                let ask = PourAsk {
                    tilt_limit_in_per_4ft: limit,
                    rules: vec![rule],
                    ..plain(0.125)
                };
                let Err(PourRefusal::Conflict(conflict)) = flat(&surface, &ask) else {
                    unreachable!("nothing is that low")
                };
                let [Way::Height { to_in, .. }, ..] = conflict.ways[..] else {
                    unreachable!("{conflict:?}")
                };
                let at_best = flat(&surface, &changed(&ask, conflict.ways[0], 1e-9)).unwrap();
                assert!((at_best.plane.height_in(door) - to_in).abs() < 1e-8);
                assert!(
                    at_best
                        .depth_in
                        .iter()
                        .all(|depth_in| *depth_in >= 0.125 - 1e-12)
                );
                assert!(at_best.tilt_in_per_4ft <= limit.unwrap_or(f64::INFINITY) + 1e-12);
            }
        }
    }
}

#[test]
fn a_grid_with_spots_on_every_wall_is_cut_the_same_way_everywhere() {
    let corners =
        [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)].map(|(x, y)| Point::new(x, y));
    let outline = Outline::new(corners.to_vec()).unwrap();
    let mut spots = Vec::new();
    for i in 0..=10 {
        for j in 0..=16 {
            let at = Point::new(6.0 * f64::from(i), 6.0 * f64::from(j));
            spots.push(Spot {
                at,
                height_in: f64::from(i * j % 7) / 16.0,
            });
        }
    }
    let surface = Surface::new(&outline, &spots).unwrap();
    assert_eq!(surface.triangles.len(), 2 * 10 * 16);
    // Every square is cut from its lower left corner to its upper right one.
    for corners in surface.corners() {
        let x = corners.map(|c| c.at.x_in);
        let y = corners.map(|c| c.at.y_in);
        let (left, low) = (
            x.into_iter().fold(f64::MAX, f64::min),
            y.into_iter().fold(f64::MAX, f64::min),
        );
        assert!(
            corners
                .iter()
                .any(|c| (c.at.x_in, c.at.y_in) == (left, low))
        );
        assert!(
            corners
                .iter()
                .any(|c| (c.at.x_in, c.at.y_in) == (left + 6.0, low + 6.0))
        );
    }
}
