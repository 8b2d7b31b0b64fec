//! What no layout can come of.

use calc::finish::tile::ask::Field;
use calc::finish::tile::{Obstacle, Pattern, Start, TileAsk, TileRefusal, layout};
use calc::floor::Point;

use crate::tile_rows::{outline, plain};

fn refused(change: impl Fn(&mut TileAsk)) -> TileRefusal {
    let mut ask = plain([60.0, 96.0], [12.0, 12.0], 0.125);
    change(&mut ask);
    layout(&ask).unwrap_err()
}

fn field_of(refusal: TileRefusal) -> Field {
    match refusal {
        TileRefusal::OutOfRange { field, .. } => field,
        other => unreachable!("{other:?}"),
    }
}

#[test]
fn entries_out_of_their_ranges() {
    let fields = [
        field_of(refused(|ask| ask.width_in = 0.0)),
        field_of(refused(|ask| ask.height_in = f64::NAN)),
        field_of(refused(|ask| ask.joint_in = -0.125)),
        field_of(refused(|ask| ask.joint_in = f64::INFINITY)),
        field_of(refused(|ask| ask.edge_gap_in = -1.0)),
        field_of(refused(|ask| {
            ask.pattern = Pattern::RunningBond { offset: 1.5 }
        })),
        field_of(refused(|ask| ask.least_share = -0.1)),
        field_of(refused(|ask| ask.buying.kerf_in = f64::NAN)),
        field_of(refused(|ask| ask.buying.allowance_percent = -10.0)),
        field_of(refused(|ask| ask.buying.per_box = 0)),
        field_of(refused(|ask| {
            ask.start = Start::At(Point::new(f64::NAN, 0.0))
        })),
    ];
    let wanted = [
        Field::Width,
        Field::Height,
        Field::Joint,
        Field::Joint,
        Field::EdgeGap,
        Field::Offset,
        Field::LeastShare,
        Field::Kerf,
        Field::Allowance,
        Field::PerBox,
        Field::StartPlace,
    ];
    assert_eq!(fields, wanted);
}

#[test]
fn rooms_that_take_no_tile() {
    let larger = refused(|ask| (ask.width_in, ask.height_in) = (61.0, 97.0));
    assert!(
        matches!(larger, TileRefusal::LargerThanRoom { .. }),
        "{larger:?}"
    );
    // Longer one way only: a narrow room may well take that.
    let mut ask = plain([60.0, 96.0], [61.0, 12.0], 0.125);
    ask.start = Start::CentredOnTile;
    assert_eq!(layout(&ask).unwrap().full_tiles, 0);
    let narrow = refused(|ask| {
        ask.outline = outline(&[[0.0, 0.0], [60.0, 0.0], [60.0, 6.0], [0.0, 6.0]]);
        ask.edge_gap_in = 3.0;
    });
    assert_eq!(narrow, TileRefusal::GapTooWide { gap_in: 3.0 });
    let many = layout(&plain([200.0, 200.0], [0.5, 0.25], 0.0)).map(|answer| answer.tiles_touched);
    assert_eq!(many, Err(TileRefusal::TooMany { about: 320_000.0 }));
    let fewer = layout(&plain([60.0, 96.0], [0.5, 0.25], 0.0)).map(|answer| answer.tiles_touched);
    assert_eq!(fewer, Ok(46_080));
}

#[test]
fn obstacles_that_are_none() {
    let obstacle = |x, y, width_in, length_in| Obstacle {
        corner: Point::new(x, y),
        width_in,
        length_in,
    };
    let with = |it: Obstacle| refused(|ask| ask.obstacles = vec![obstacle(1.0, 1.0, 5.0, 5.0), it]);
    assert_eq!(
        with(obstacle(10.0, 10.0, 0.0, 5.0)),
        TileRefusal::ObstacleSize { obstacle: 1 }
    );
    assert_eq!(
        with(obstacle(f64::NAN, 10.0, 5.0, 5.0)),
        TileRefusal::ObstacleSize { obstacle: 1 }
    );
    assert_eq!(
        with(obstacle(100.0, 10.0, 5.0, 5.0)),
        TileRefusal::ObstacleOutside { obstacle: 1 }
    );
    assert_eq!(
        with(obstacle(-1.0, -1.0, 62.0, 98.0)),
        TileRefusal::NothingLeft
    );
    let many = refused(|ask| ask.obstacles = vec![obstacle(1.0, 1.0, 5.0, 5.0); 33]);
    assert_eq!(many, TileRefusal::TooManyObstacles { given: 33 });
}
