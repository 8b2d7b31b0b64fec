//! Five surveys against answers computed apart from this project with numpy and scipy: see
//! `tests/cases/floor/surveys/README.md` for how, and for where the spots come from.

#![allow(
    clippy::unwrap_used,
    reason = "a test that can't read its case has failed"
)]

use std::fs;
use std::path::PathBuf;

use calc::floor::pour::{
    Cause, HeightKind, HeightRule, Pour, PourAsk, PourRefusal, Way, flat, least_feasible_height_in,
    level,
};
use calc::floor::{Outline, Point, Spot, Surface};
use serde_json::Value;

const SURVEYS: [&str; 5] = [
    "s01_bath_grid",
    "s02_l_room",
    "s03_sag",
    "s04_tilted",
    "s05_topo",
];

/// What the answers promise.
const RELATIVE: f64 = 1e-6;

struct Survey {
    name: &'static str,
    surface: Surface,
    expected: Value,
}

fn read(name: &str) -> String {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/cases/floor/surveys");
    fs::read_to_string(folder.join(name)).unwrap()
}

/// The rows of a file without its head, the first column left out.
fn rows(name: &str) -> Vec<Vec<f64>> {
    let text = read(name);
    let lines = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines
        .map(|line| {
            line.split(',')
                .skip(1)
                .map(|cell| cell.trim().parse().unwrap())
                .collect()
        })
        .collect()
}

fn surveys() -> Vec<Survey> {
    SURVEYS
        .map(|name| {
            let corners = rows(&format!("{name}_outline.csv"))
                .iter()
                .map(|row| Point::new(row[0], row[1]))
                .collect();
            let spots: Vec<Spot> = rows(&format!("{name}_points.csv"))
                .iter()
                .map(|row| Spot {
                    at: Point::new(row[0], row[1]),
                    height_in: row[2],
                })
                .collect();
            let surface = Surface::new(&Outline::new(corners).unwrap(), &spots).unwrap();
            let expected = serde_json::from_str(&read(&format!("{name}_expected.json"))).unwrap();
            Survey {
                name,
                surface,
                expected,
            }
        })
        .into()
}

#[track_caller]
fn close(name: &str, what: &str, got: f64, expected: &Value) {
    let expected = expected.as_f64().unwrap();
    assert!(
        (got - expected).abs() <= RELATIVE * expected.abs().max(1e-3),
        "{name} {what}: {got}, not {expected}"
    );
}

#[test]
fn triangles_and_facts() {
    for Survey {
        name,
        surface,
        expected,
    } in surveys()
    {
        let mut triangles: Vec<[usize; 3]> =
            serde_json::from_value(expected["triangles_0based"].clone()).unwrap();
        for triangle in &mut triangles {
            while triangle[0] != *triangle.iter().min().unwrap() {
                triangle.rotate_left(1);
            }
        }
        triangles.sort_unstable();
        assert_eq!(surface.triangles, triangles, "{name}");

        let vertices: Vec<[f64; 3]> = serde_json::from_value(expected["vertices"].clone()).unwrap();
        let got: Vec<[f64; 3]> = surface
            .vertices
            .iter()
            .map(|v| [v.at.x_in, v.at.y_in, v.height_in])
            .collect();
        assert_eq!(got, vertices, "{name}");
        assert_eq!(expected["n_survey_points"], surface.spot_count, "{name}");
        for (corner, added) in surface.vertices[surface.spot_count..]
            .iter()
            .zip(expected["added_corners"].as_array().unwrap())
        {
            assert_eq!(
                added["copied_from_point"],
                corner.assumed_from.unwrap() + 1,
                "{name}"
            );
        }

        let facts = surface.facts();
        let about = &expected["surface"];
        close(name, "area", facts.area_in2, &about["area_in2"]);
        close(
            name,
            "centroid x",
            surface.outline.centroid().x_in,
            &about["centroid_x_in"],
        );
        close(
            name,
            "centroid y",
            surface.outline.centroid().y_in,
            &about["centroid_y_in"],
        );
        close(name, "integral", facts.integral_in3, &about["integral_in3"]);
        close(
            name,
            "mean height",
            facts.mean_height_in,
            &about["mean_height_in"],
        );
        close(name, "low", facts.lowest_in, &about["min_point_in"]);
        close(name, "high", facts.highest_in, &about["max_point_in"]);
        close(name, "fall", facts.fall_in, &about["range_in"]);
        let fit = facts.best_fit;
        let about = &expected["least_squares_plane_points_only"];
        close(name, "fit a", fit.plane.a_in, &about["a_in"]);
        close(name, "fit b", fit.plane.b_in_per_in, &about["b_in_per_in"]);
        close(name, "fit c", fit.plane.c_in_per_in, &about["c_in_per_in"]);
        close(name, "fit rms", fit.rms_in, &about["rms_residual_in"]);
        close(
            name,
            "fit above",
            fit.greatest_above_in,
            &about["max_above_in"],
        );
        close(
            name,
            "fit below",
            fit.greatest_below_in,
            &about["max_below_in"],
        );
    }
}

#[test]
fn profiles() {
    for Survey {
        name,
        surface,
        expected,
    } in surveys()
    {
        for line in expected["straightedge"].as_array().unwrap() {
            let end = |key: &str| {
                Point::new(
                    line[key][0].as_f64().unwrap(),
                    line[key][1].as_f64().unwrap(),
                )
            };
            let pieces = surface.profile(end("from_in"), end("to_in"));
            assert_eq!(pieces.len(), 1, "{name} {line}");
            let expected = line["profile_s_z"].as_array().unwrap();
            assert_eq!(
                pieces[0].len(),
                expected.len(),
                "{name}: {:?}, not {expected:?}",
                pieces[0]
            );
            for (point, expected) in pieces[0].iter().zip(expected) {
                close(name, "s", point.s_in, &expected[0]);
                close(name, "z", point.height_in, &expected[1]);
            }
        }
    }
}

/// What a pour should be; a plane that isn't the only one may differ, its volume may not.
fn check_pour(name: &str, what: &str, pour: &Pour, expected: &Value) {
    close(name, what, pour.volume_in3, &expected["volume_in3"]);
    close(name, what, pour.volume_ft3, &expected["volume_ft3"]);
    close(name, what, pour.mean_depth_in, &expected["mean_depth_in"]);
    assert!(
        pour.depth_in
            .iter()
            .all(|depth_in| *depth_in >= pour.cover_in - 1e-12),
        "{name} {what}"
    );
    if let Some(level) = expected.get("level_z_in") {
        close(name, what, pour.plane.a_in, level);
    } else {
        assert!(
            expected
                .get("plane_unique")
                .is_none_or(|unique| unique == pour.unique),
            "{name} {what}"
        );
        close(name, what, pour.plane.a_in, &expected["a_in"]);
        close(name, what, pour.plane.b_in_per_in, &expected["b_in_per_in"]);
        close(name, what, pour.plane.c_in_per_in, &expected["c_in_per_in"]);
        close(
            name,
            what,
            pour.tilt_in_per_4ft,
            &expected["tilt_in_per_4ft"],
        );
        close(
            name,
            what,
            pour.plane.tilt_percent(),
            &expected["tilt_percent"],
        );
        close(
            name,
            what,
            pour.plane.slope_x_in_per_4ft(),
            &expected["slope_x_in_per_4ft"],
        );
        close(
            name,
            what,
            pour.plane.slope_y_in_per_4ft(),
            &expected["slope_y_in_per_4ft"],
        );
    }
    close(
        name,
        what,
        pour.greatest_depth_in,
        &expected["max_depth_in"],
    );
    close(name, what, pour.least_depth_in, &expected["min_depth_in"]);
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

#[test]
fn pours() {
    for Survey {
        name,
        surface,
        expected,
    } in surveys()
    {
        let plain = PourAsk {
            cover_in: number(&expected["t_min_in"]),
            tilt_limit_in_per_4ft: None,
            rules: Vec::new(),
        };
        check_pour(
            name,
            "level",
            &level(&surface, &plain).unwrap(),
            &expected["b_level_pour"],
        );
        check_pour(
            name,
            "tilted",
            &flat(&surface, &plain).unwrap(),
            &expected["c_tilted_pour"],
        );

        let about = &expected["d_tilted_pour_slope_limit"];
        let limited = PourAsk {
            tilt_limit_in_per_4ft: Some(number(&about["limit_in_per_4ft"])),
            ..plain.clone()
        };
        let pour = flat(&surface, &limited).unwrap();
        check_pour(name, "limited", &pour, about);
        assert_eq!(about["limit_binding"], pour.tilt_limit_binding, "{name}");

        for (key, ask) in [
            ("e_tilted_pour_doorway", &plain),
            ("f_tilted_pour_slope_limit_and_doorway", &limited),
        ] {
            let about = &expected[key];
            let door = Point::new(number(&about["door_x_in"]), number(&about["door_y_in"]));
            let height_in = number(&about["door_max_z_in"]);
            let rule = HeightRule {
                points: vec![door],
                kind: HeightKind::AtMost,
                height_in,
                id: 7,
            };
            let ask = PourAsk {
                rules: vec![rule],
                ..ask.clone()
            };
            let least_in = least_feasible_height_in(&surface, &ask, 0)
                .unwrap()
                .unwrap();
            close(name, key, least_in, &about["least_feasible_door_z_in"]);
            match flat(&surface, &ask) {
                Ok(pour) => {
                    assert_eq!(about["feasible"], true, "{name} {key}");
                    check_pour(name, key, &pour, about);
                    close(
                        name,
                        key,
                        pour.plane.height_in(door),
                        &about["plane_z_at_door_in"],
                    );
                }
                Err(PourRefusal::Conflict(conflict)) => {
                    assert_eq!(about["feasible"], false, "{name} {key}");
                    let causes = &conflict.clashes[0].causes;
                    assert_eq!(causes[0], Cause::Rule { id: 7 }, "{name} {key}");
                    assert!(causes.len() >= 2, "{name} {key}");
                    let Way::Height {
                        id: 7,
                        to_in,
                        by_in,
                        ..
                    } = conflict.ways[0]
                    else {
                        unreachable!("{name} {key}: {conflict:?}")
                    };
                    close(name, key, to_in, &about["least_feasible_door_z_in"]);
                    assert!((by_in - (to_in - height_in)).abs() < 1e-12);
                }
                Err(other) => unreachable!("{name} {key}: {other}"),
            }
        }
    }
}
