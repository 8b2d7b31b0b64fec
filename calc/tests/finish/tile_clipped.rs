//! Areas of the pieces against a general-purpose polygon library (`geo`, its Boolean operations), in rooms that are no
//! rectangles, with obstacles, in every pattern.

use calc::finish::tile::layout::Placed;
use calc::finish::tile::{Obstacle, Pattern, Start, TileAsk, layout};
use calc::floor::Point;
use geo::{Area, BooleanOps, LineString, MultiPolygon, Polygon};

use crate::tile_rows::{outline, plain};

fn ring(corners: &[Point]) -> MultiPolygon {
    let line: Vec<(f64, f64)> = corners.iter().map(|at| (at.x_in, at.y_in)).collect();
    Polygon::new(LineString::from(line), vec![]).into()
}

fn rectangle(corner: Point, width: f64, length: f64) -> Vec<Point> {
    let Point { x_in, y_in } = corner;
    vec![
        corner,
        Point::new(x_in + width, y_in),
        Point::new(x_in + width, y_in + length),
        Point::new(x_in, y_in + length),
    ]
}

/// Counts and areas as the library has them.
fn clipped(ask: &TileAsk, tiles: &[Placed], turned_deg: f64) -> (u32, u32, f64, f64) {
    let mut field = ring(ask.outline.corners());
    for obstacle in &ask.obstacles {
        let corners = rectangle(obstacle.corner, obstacle.width_in, obstacle.length_in);
        field = field.difference(&ring(&corners));
    }
    let (sine, cosine) = turned_deg.to_radians().sin_cos();
    let (mut full, mut cut, mut face) = (0, 0, 0.0);
    for tile in tiles {
        let corners: Vec<Point> = rectangle(tile.corner, tile.width_in, tile.height_in)
            .iter()
            .map(|at| {
                Point::new(
                    cosine * at.x_in - sine * at.y_in,
                    sine * at.x_in + cosine * at.y_in,
                )
            })
            .collect();
        let area = field.intersection(&ring(&corners)).unsigned_area();
        face += area;
        if area > ask.width_in * ask.height_in - 1e-4 {
            full += 1;
        } else if area > 1e-4 {
            cut += 1;
        }
    }
    (full, cut, face, field.unsigned_area())
}

#[test]
fn pieces_have_the_area_that_a_polygon_library_finds() {
    let l_room = [
        [0.0, 0.0],
        [130.0, 0.0],
        [130.0, 62.0],
        [71.0, 62.0],
        [71.0, 115.0],
        [0.0, 115.0],
    ];
    let crooked = [
        [0.0, 0.0],
        [101.0, 3.0],
        [97.0, 60.0],
        [60.0, 88.0],
        [55.0, 40.0],
        [2.0, 79.0],
    ];
    let cut_corner = [
        [0.0, 0.0],
        [90.0, 0.0],
        [90.0, 50.0],
        [65.0, 75.0],
        [0.0, 75.0],
    ];
    let patterns = [
        Pattern::Straight,
        Pattern::RunningBond { offset: 0.5 },
        Pattern::RunningBond { offset: 1.0 / 3.0 },
        Pattern::Diagonal,
        Pattern::Herringbone { diagonal: false },
        Pattern::Herringbone { diagonal: true },
    ];
    let obstacles = vec![
        Obstacle {
            corner: Point::new(20.0, 11.0),
            width_in: 17.5,
            length_in: 9.25,
        },
        Obstacle {
            corner: Point::new(30.0, 15.0),
            width_in: 14.0,
            length_in: 19.0,
        },
    ];
    for corners in [&l_room[..], &crooked[..], &cut_corner[..]] {
        for pattern in patterns {
            for start in [
                Start::Corner,
                Start::CentredOnTile,
                Start::At(Point::new(1.7, 0.9)),
            ] {
                let mut ask = plain([100.0, 100.0], [11.75, 5.875], 0.1875);
                ask.outline = outline(corners);
                ask.obstacles = obstacles.clone();
                (ask.pattern, ask.start) = (pattern, start);
                let answer = layout(&ask).unwrap();
                let (full, cut, face, field) = clipped(&ask, &answer.tiles, pattern.turned_deg());
                let at = format!("{corners:?} {pattern:?} {start:?}");
                assert_eq!((answer.full_tiles, answer.cut_tiles), (full, cut), "{at}");
                // The library snaps to a grid of its own.
                assert!((answer.tile_face_area_in2 - face).abs() < 1e-3, "{at}");
                assert!((answer.field_area_in2 - field).abs() < 1e-3, "{at}");
                let whole = answer.tiles.iter().filter(|tile| tile.full).count();
                assert_eq!(whole, full as usize, "{at}");
            }
        }
    }
}
