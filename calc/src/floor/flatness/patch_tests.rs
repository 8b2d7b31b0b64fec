use super::*;
use crate::floor::Point;
use crate::floor::flatness::{USUAL_EFFORT, reference, table};

const FINISHES: [Finish; 6] = [
    Finish::TileSmall,
    Finish::TileLarge,
    Finish::Resilient,
    Finish::WoodLong,
    Finish::WoodShort,
    Finish::Floating,
];

#[test]
fn limits_are_met_with_no_more_than_a_level_fill() {
    let mut patched = 0;
    for survey in reference::surveys() {
        let surface = survey.surface();
        for finish in FINISHES {
            let patch = patch_for(&surface, finish, USUAL_EFFORT).unwrap();
            assert_eq!(patch.verdicts.len(), limits_for(finish).len());
            for verdict in &patch.verdicts {
                assert!(verdict.passes, "{} {finish:?}: {verdict:?}", survey.survey);
            }
            assert!(patch.least, "{} {finish:?}", survey.survey);
            assert!(patch.fill_in.iter().all(|&fill_in| fill_in >= 0.0));
            assert!(
                patch.volume_ft3 <= patch.level_fill_ft3,
                "{} {finish:?}: {patch:?}",
                survey.survey
            );
            let by_place: f64 = patch.places.iter().map(|place| place.volume_ft3).sum();
            assert!((by_place - patch.volume_ft3).abs() < 1e-9);
            assert!(
                (integral_in3(&surface, &patch.fill_in) - patch.volume_in3).abs()
                    < 1e-6 * (1.0 + patch.volume_in3)
            );
            let bare = crate::floor::flatness::judge(&surface, Top::OldFloor, finish, USUAL_EFFORT)
                .unwrap();
            assert_eq!(
                patch.volume_in3 == 0.0,
                bare.iter().all(|verdict| verdict.passes)
            );
            patched += usize::from(patch.volume_in3 > 0.0);
        }
    }
    assert!(patched >= 8, "{patched}");
}

/// Integral of a function linear on each triangle, by the triangles of the surface itself.
fn integral_in3(surface: &Surface, values: &[f64]) -> f64 {
    let triangles = surface.triangles.iter();
    triangles
        .map(|t| {
            let [a, b, c] = t.map(|v| surface.vertices[v].at);
            let area = 0.5
                * ((b.x_in - a.x_in) * (c.y_in - a.y_in) - (b.y_in - a.y_in) * (c.x_in - a.x_in));
            area * t.iter().map(|&v| values[v]).sum::<f64>() / 3.0
        })
        .sum()
}

/// A single pit 3/8 in deep, 1/4 in allowed under 10 ft: it is raised by 1/8 in, no more; nothing else is.
#[test]
fn one_pit_is_raised_by_what_is_too_much() {
    let surface = reference::grid(5, 5, 24.0, |x, y| {
        if (x, y) == (48.0, 48.0) { -0.375 } else { 0.0 }
    });
    let limits: Vec<Limit> = table()
        .iter()
        .filter(|row| row.id == "wood_long_10ft")
        .cloned()
        .collect();
    let patch = patch_to(&surface, &limits, USUAL_EFFORT).unwrap();
    for (vertex, &fill_in) in patch.fill_in.iter().enumerate() {
        let expected = if vertex == 12 {
            0.125 + 0.25 * AIM_BELOW
        } else {
            0.0
        };
        assert!((fill_in - expected).abs() < 1e-6, "{vertex}: {fill_in}");
    }
    assert_eq!(patch.places.len(), 1);
    assert_eq!(patch.places[0].vertices, [12]);
    assert_eq!(patch.places[0].deepest_at, Point::new(48.0, 48.0));
    // Four whole squares' worth of triangles less two halves: six triangles of 288 in2.
    assert!((patch.area_ft2 - 12.0).abs() < 1e-9, "{}", patch.area_ft2);
    assert!((patch.volume_in3 - 6.0 * 288.0 / 3.0 * patch.fill_in[12]).abs() < 1e-9);
}

#[test]
fn two_pits_far_apart_are_two_places_and_a_flat_floor_none() {
    let pits = |x: f64, y: f64| {
        if (x, y) == (24.0, 24.0) || (x, y) == (168.0, 72.0) {
            -0.5
        } else {
            0.0
        }
    };
    let patch = patch_for(
        &reference::grid(9, 5, 24.0, pits),
        Finish::TileSmall,
        USUAL_EFFORT,
    )
    .unwrap();
    assert_eq!(patch.places.len(), 2);
    assert!(patch.verdicts.iter().all(|verdict| verdict.passes));
    // A floor 2 in out of level, but straight.
    let tilted = patch_for(
        &reference::grid(5, 5, 24.0, |x, _| x / 48.0),
        Finish::TileLarge,
        USUAL_EFFORT,
    )
    .unwrap();
    assert_eq!(
        (tilted.volume_in3, tilted.places.len(), tilted.least),
        (0.0, 0, true)
    );
}

#[test]
fn patching_for_a_stricter_limit_takes_no_less() {
    for survey in reference::surveys() {
        let surface = survey.surface();
        let volume = |max_gap_in: f64| {
            let limits: Vec<Limit> = table()
                .iter()
                .filter(|row| row.id == "tile_small_10ft")
                .map(|row| Limit {
                    max_gap_in,
                    ..row.clone()
                })
                .collect();
            patch_to(&surface, &limits, USUAL_EFFORT)
                .unwrap()
                .volume_in3
        };
        let volumes = [0.5, 0.25, 0.125, 0.0625].map(volume);
        // Each is the least for its own lines, give or take those that one search tried and the other did not.
        assert!(
            volumes
                .windows(2)
                .all(|pair| pair[0] <= 1.001 * pair[1] + 1e-6),
            "{} {volumes:?}",
            survey.survey
        );
    }
}

#[test]
fn a_search_cut_short_still_meets_the_limits() {
    for survey in reference::surveys() {
        let surface = survey.surface();
        let walker = Walker::new(&surface).unwrap();
        let floor = Floor::new(&surface, &walker, USUAL_EFFORT);
        let straightedges = [(120.0, 0.125), (24.0, 0.0625)];
        let nothing_in = vec![0.0; surface.vertices.len()];
        let raised_in = floor
            .raise_hollows(nothing_in.clone(), &straightedges)
            .unwrap();
        for begin_in in [nothing_in, raised_in] {
            let fill_in = floor.blend(begin_in, &straightedges).unwrap();
            let filled_in = floor.filled_in(&fill_in);
            for (length_in, limit_in) in straightedges {
                let demands = floor.demands(&filled_in, length_in, limit_in).unwrap();
                assert!(demands.is_empty());
            }
            assert!(floor.volume_in3(&fill_in) <= floor.volume_in3(&floor.level_in));
            let least = patch_for(&surface, Finish::TileLarge, USUAL_EFFORT).unwrap();
            assert!(least.volume_in3 <= floor.volume_in3(&fill_in) + 1e-6);
        }
    }
}
