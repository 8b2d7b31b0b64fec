use super::*;

fn room(corners: &[(f64, f64)]) -> Outline {
    Outline::new(corners.iter().map(|(x, y)| Point::new(*x, *y)).collect()).unwrap()
}

fn spots(given: &[(f64, f64, f64)]) -> Vec<Spot> {
    given
        .iter()
        .map(|(x, y, height_in)| Spot {
            at: Point::new(*x, *y),
            height_in: *height_in,
        })
        .collect()
}

const BATH: [(f64, f64); 4] = [(0.0, 0.0), (60.0, 0.0), (60.0, 96.0), (0.0, 96.0)];
const L_ROOM: [(f64, f64); 6] = [
    (0.0, 0.0),
    (120.0, 0.0),
    (120.0, 60.0),
    (72.0, 60.0),
    (72.0, 108.0),
    (0.0, 108.0),
];

#[test]
fn what_is_no_surface_is_refused_by_its_spot() {
    use SurfaceRefusal as No;
    let refusal =
        |given: &[(f64, f64, f64)]| Surface::new(&room(&BATH), &spots(given)).unwrap_err();
    assert_eq!(
        refusal(&[(0.0, 0.0, 0.0), (9.0, 0.0, 0.0)]),
        No::TooFew { given: 2 }
    );
    assert_eq!(
        Surface::new(
            &room(&BATH),
            &vec![spots(&[(1.0, 1.0, 0.0)])[0]; MOST_SPOTS + 1]
        )
        .unwrap_err(),
        No::TooMany {
            given: MOST_SPOTS + 1
        }
    );
    assert_eq!(
        refusal(&[(0.0, 0.0, 0.0), (9.0, 0.0, f64::NAN), (9.0, 9.0, 0.0)]),
        No::NotANumber { spot: 1 }
    );
    assert_eq!(
        refusal(&[(0.0, 0.0, 0.0), (9.0, 0.0, 0.0), (9.0, 9.0, -121.0)]),
        No::TooFarFromDatum {
            spot: 2,
            height_in: -121.0
        }
    );
    assert_eq!(
        refusal(&[(0.0, 0.0, 0.0), (63.0, 5.0, 0.0), (9.0, 9.0, 0.0)]),
        No::Outside {
            spot: 1,
            by_in: 3.0
        }
    );
    assert_eq!(
        refusal(&[
            (0.0, 0.0, 0.0),
            (9.0, 5.0, 0.0),
            (20.0, 9.0, 0.0),
            (9.0, 5.0, 0.25)
        ]),
        No::SamePlace {
            first: 1,
            second: 3
        }
    );
    assert_eq!(
        refusal(&[(10.0, 10.0, 0.0), (30.0, 30.0, 0.0), (20.0, 20.0, 0.0)]),
        No::OneLine { first: 0, last: 1 }
    );
}

#[test]
fn a_spot_a_hair_off_a_slanted_wall_is_on_it() {
    let corners = [(0.0, 0.0), (97.0, 31.0), (60.0, 121.0), (-20.0, 70.0)];
    for off in [-3e-12, -1e-14, 0.0, 1e-14, 3e-12, 9e-8] {
        let mut given = vec![(20.0, 50.0, 0.0), (50.0, 60.0, 1.0)];
        for i in 1..40 {
            let share = f64::from(i) / 40.0;
            given.push((
                97.0 * share - 31.0 * off / 102.0,
                31.0 * share + 97.0 * off / 102.0,
                share,
            ));
        }
        let outline = room(&corners);
        let floor = Surface::new(&outline, &spots(&given)).unwrap();
        let area_in2: f64 = floor.corners().map(|c| cross_of(c) / 2.0).sum();
        assert!((area_in2 / outline.area_in2() - 1.0).abs() < 1e-8, "{off}");
        // Each of the 39 spots divides the wall: vertices inside 2, on the rim 43.
        assert_eq!(floor.triangles.len(), 2 * 2 + 43 - 2, "{off}");
    }
}

fn cross_of([a, b, c]: [Vertex; 3]) -> f64 {
    super::super::geometry::cross(a.at, b.at, c.at)
}

#[test]
fn a_corner_without_a_reading_takes_the_nearest() {
    let given = [(10.0, 10.0, 0.5), (50.0, 10.0, 0.25), (30.0, 86.0, 0.125)];
    let floor = Surface::new(&room(&BATH), &spots(&given)).unwrap();
    let added: Vec<_> = floor.vertices[3..]
        .iter()
        .map(|v| (v.height_in, v.assumed_from))
        .collect();
    assert_eq!(
        added,
        [
            (0.5, Some(0)),
            (0.25, Some(1)),
            (0.125, Some(2)),
            (0.125, Some(2))
        ]
    );
}

#[test]
fn a_line_past_the_inner_corner_gives_two_pieces() {
    let given: Vec<_> = L_ROOM.iter().map(|(x, y)| (*x, *y, 0.01 * x)).collect();
    let floor = Surface::new(&room(&L_ROOM), &spots(&given)).unwrap();
    // From the end of one leg to the end of the other: out of the room at the inner corner's side.
    let pieces = floor.profile(Point::new(120.0, 50.0), Point::new(62.0, 108.0));
    assert_eq!(pieces.len(), 2);
    let ends: Vec<_> = pieces
        .iter()
        .map(|piece| (piece[0].s_in, piece[piece.len() - 1].s_in))
        .collect();
    let root2 = 2.0_f64.sqrt();
    for (end, expected) in ends
        .iter()
        .zip([(0.0, 10.0 * root2), (48.0 * root2, 58.0 * root2)])
    {
        assert!(
            (end.0 - expected.0).abs() < 1e-9 && (end.1 - expected.1).abs() < 1e-9,
            "{ends:?}"
        );
    }
    // Along a wall, on through the inner corner, and over to the far wall.
    let pieces = floor.profile(Point::new(120.0, 60.0), Point::new(0.0, 60.0));
    assert_eq!(pieces.len(), 1);
    let piece = &pieces[0];
    assert_eq!((piece[0].s_in, piece[piece.len() - 1].s_in), (0.0, 120.0));
    for point in piece {
        assert!((point.height_in - 0.01 * (120.0 - point.s_in)).abs() < 1e-12);
    }
    assert_eq!(
        floor.profile(Point::new(100.0, 70.0), Point::new(110.0, 100.0)),
        Vec::<Vec<_>>::new()
    );
    assert_eq!(
        floor.profile(Point::new(10.0, 70.0), Point::new(10.0, 70.0)),
        Vec::<Vec<_>>::new()
    );
}

#[test]
fn heights_are_found_everywhere_in_the_room() {
    let mut given = Vec::new();
    for i in 0..21 {
        for j in 0..21 {
            let (x, y) = (f64::from(i) * 6.0, f64::from(j) * 5.4);
            if x <= 72.0 || y <= 60.0 {
                given.push((x, y, 0.003 * x - 0.002 * y));
            }
        }
    }
    let outline = room(&L_ROOM);
    let floor = Surface::new(&outline, &spots(&given)).unwrap();
    for i in 0..=50 {
        for j in 0..=50 {
            let at = Point::new(f64::from(i) * 2.4, f64::from(j) * 2.16);
            match floor.height_in(at) {
                Some(height_in) => {
                    assert!(outline.contains(at));
                    // Corners of the notch off the grid take the nearest reading, half a grid away at most.
                    assert!(
                        (height_in - 0.003 * at.x_in + 0.002 * at.y_in).abs() < 0.02,
                        "{at:?} {height_in}"
                    );
                }
                None => assert!(!outline.contains(at), "{at:?}"),
            }
        }
    }
    assert_eq!(floor.height_in(Point::new(f64::NAN, 0.0)), None);
}
