//! The quick way against the way round the walls: the same triangles, or none.

use super::*;
use crate::floor::Outline;
use proptest::prelude::*;

type Drawn = Option<Vec<[usize; 3]>>;

/// Both ways on a polygon whose corners are the first places, each wall divided by the places that follow on it.
fn both(corners: &[(f64, f64)], divide: usize, others: &[(f64, f64)]) -> (Drawn, Drawn) {
    let point = |(x, y): (f64, f64)| Point::new(x, y);
    let mut places: Vec<Point> = Vec::new();
    for (at, corner) in corners.iter().enumerate() {
        let end = corners[(at + 1) % corners.len()];
        for part in 0..=divide {
            let share = part as f64 / (divide + 1) as f64;
            let along = |from: f64, to: f64| from + share * (to - from);
            places.push(Point::new(along(corner.0, end.0), along(corner.1, end.1)));
        }
    }
    let rim = places.len();
    let walls: Vec<[usize; 2]> = (0..rim).map(|at| [at, (at + 1) % rim]).collect();
    let outline = Outline::new(corners.iter().copied().map(point).collect()).unwrap();
    for other in others.iter().copied().map(point) {
        let apart = places.iter().all(|place| place.distance_in(other) > 1e-3);
        if apart && outline.contains(other) && outline.nearest_wall(other).distance_in > 1e-3 {
            places.push(other);
        }
    }
    let size_in = outline.size_in();
    // A wall said to be cut is one that the free triangulation lacks.
    assert!(!walls_are_cut(&places, &walls) || free_mesh(&places, &walls).is_none());
    (
        free_triangles(&places, &walls, size_in, 4e-9 * size_in),
        triangles(&places, &walls, size_in),
    )
}

const RECTANGLE: &[(f64, f64)] = &[(0.0, 0.0), (120.0, 0.0), (120.0, 96.0), (0.0, 96.0)];
const L_ROOM: &[(f64, f64)] = &[
    (0.0, 0.0),
    (120.0, 0.0),
    (120.0, 48.0),
    (72.0, 48.0),
    (72.0, 96.0),
    (0.0, 96.0),
];
/// Slanted walls, on which rounding leaves no divided wall quite straight.
const SLANTED: &[(f64, f64)] = &[(0.0, 0.0), (97.0, 31.0), (60.0, 121.0), (-20.0, 70.0)];
const BENT: &[(f64, f64)] = &[
    (0.0, 0.0),
    (97.0, 5.0),
    (88.0, 77.0),
    (51.0, 64.0),
    (40.0, 121.0),
    (-13.0, 90.0),
];
const SHAPES: [&[(f64, f64)]; 4] = [RECTANGLE, L_ROOM, SLANTED, BENT];

fn grid(columns: u32, rows: u32, turned: f64) -> Vec<(f64, f64)> {
    let (sin, cos) = turned.sin_cos();
    (0..=columns)
        .flat_map(|i| (0..=rows).map(move |j| (f64::from(i), f64::from(j))))
        .map(|(i, j)| (120.0 * i / f64::from(columns), 120.0 * j / f64::from(rows)))
        .map(|(x, y)| (cos * x - sin * y, sin * x + cos * y))
        .collect()
}

#[test]
fn grids_and_circles_come_out_alike() {
    for shape in SHAPES {
        for divide in [0, 3, 7, 23] {
            for turned in [0.0, 0.3, 1.0] {
                let (quick, slow) = both(shape, divide, &grid(20, 16, turned));
                assert!(
                    quick.is_none() || quick == slow,
                    "{shape:?} {divide} {turned}"
                );
            }
            let round: Vec<(f64, f64)> = (0..48)
                .map(|i| f64::from(i) * std::f64::consts::TAU / 48.0)
                .flat_map(|angle| {
                    [10.0, 25.0].map(|r| (40.0 + r * angle.cos(), 45.0 + r * angle.sin()))
                })
                .collect();
            let (quick, slow) = both(shape, divide, &round);
            assert!(quick.is_none() || quick == slow, "{shape:?} {divide}");
        }
    }
}

#[test]
fn the_quick_way_is_taken_where_walls_are_straight_or_divided_as_the_spots_are() {
    for (shape, divide) in [(RECTANGLE, 0), (RECTANGLE, 23), (L_ROOM, 23), (SLANTED, 0)] {
        let (quick, slow) = both(shape, divide, &grid(20, 16, 0.0));
        assert!(quick.is_some(), "{shape:?} {divide}");
        assert_eq!(quick, slow);
    }
}

#[test]
fn a_wall_between_spots_near_its_middle_is_cut() {
    let places: Vec<Point> = L_ROOM
        .iter()
        .copied()
        .chain(grid(20, 16, 0.0).into_iter().filter(|(x, y)| {
            (1.0..71.0).contains(x) && (1.0..95.0).contains(y)
                || (1.0..119.0).contains(x) && (1.0..47.0).contains(y)
        }))
        .map(|(x, y)| Point::new(x, y))
        .collect();
    let walls: Vec<[usize; 2]> = (0..6).map(|at| [at, (at + 1) % 6]).collect();
    assert!(walls_are_cut(&places, &walls));
    // The corners alone: nothing stands near enough.
    assert!(!walls_are_cut(&places[..6], &walls));
}

#[test]
fn a_polygon_of_many_sides_on_one_circle_is_one_fan() {
    let corners: Vec<(f64, f64)> = (0..60)
        .map(|i| (f64::from(i) * 6.0 + 1.0).to_radians())
        .map(|angle| (100.0 * angle.cos(), 100.0 * angle.sin()))
        .collect();
    let (quick, slow) = both(&corners, 0, &[]);
    assert_eq!(quick, slow);
    assert_eq!(quick.map(|triangles| triangles.len()), Some(58));
}

#[test]
fn places_nearer_than_they_may_be_are_left_to_the_slow_way() {
    for quarter in 0..40 {
        let exponent = -10.0 + f64::from(quarter) / 4.0;
        let off_in = 10_f64.powf(exponent);
        let mut places: Vec<Point> = RECTANGLE.iter().map(|(x, y)| Point::new(*x, *y)).collect();
        let inside = |at: &Point| (1.0..119.0).contains(&at.x_in) && (1.0..95.0).contains(&at.y_in);
        let spots = grid(9, 9, 0.01).into_iter().map(|(x, y)| Point::new(x, y));
        places.extend(spots.filter(inside));
        let twin = places[40];
        places.push(Point::new(
            twin.x_in + 0.6 * off_in,
            twin.y_in - 0.8 * off_in,
        ));
        let walls = [[0, 1], [1, 2], [2, 3], [3, 0]];
        let quick = free_triangles(&places, &walls, 120.0, 4e-9 * 120.0);
        if off_in < 4e-9 * 120.0 {
            assert_eq!(quick, None, "{off_in}");
        } else {
            assert!(
                quick.is_none() || quick == triangles(&places, &walls, 120.0),
                "{off_in}"
            );
        }
    }
}

proptest! {
    #[test]
    fn scattered_spots_come_out_alike(
        shape in 0..SHAPES.len(),
        divide in 0..12_usize,
        on_tape in any::<bool>(),
        given in prop::collection::vec((-20.0..120.0f64, 0.0..121.0f64), 0..160),
    ) {
        let tape = |value: f64| if on_tape { (value / 4.0).round() * 4.0 } else { value };
        let others: Vec<_> = given.iter().map(|(x, y)| (tape(*x), tape(*y))).collect();
        let (quick, slow) = both(SHAPES[shape], divide, &others);
        prop_assert!(slow.is_some());
        prop_assert!(quick.is_none() || quick == slow);
    }
}
