//! Compound, tape and bead.

use calc::finish::compound::{CompoundAsk, CompoundField, CompoundRefusal, Range, compound};
use calc::finish::trim::stock::CutRefusal;

fn ask(level: u8) -> CompoundAsk {
    CompoundAsk {
        board_ft2: 1000.0,
        taped_ft: 400.0,
        outside_ft: vec![8.0, 9.0, 21.0],
        level,
        allowance_percent: 5.0,
        pail_gal: 4.5,
        bead_in: vec![96.0, 120.0],
    }
}

fn close(range: Range, low: f64, typical: f64, high: f64) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-9;
    near(range.low, low) && near(range.typical, typical) && near(range.high, high)
}

#[test]
fn ranges_by_level() {
    // The rules of thumb for 1000 square feet, 9 to 13.5 gal, as the table has them with their sources.
    let of = |level| compound(&ask(level)).unwrap();
    assert!(close(of(4).compound_gal, 9.0, 9.4, 13.5));
    // Level 5 adds 5 to 10 gal.
    assert!(close(of(5).compound_gal, 14.0, 17.4, 23.5));
    assert!(close(of(5).skim_gal, 5.0, 8.0, 10.0));
    // One coat of three, at most all of level 4's.
    assert!(close(of(1).compound_gal, 3.0, 9.4 / 3.0, 13.5));
    assert!(close(of(3).compound_gal, 6.0, 9.4 * 2.0 / 3.0, 13.5));
    assert!(close(of(0).compound_gal, 0.0, 0.0, 0.0));
    assert_eq!((of(0).tape_ft, of(0).pails), (0.0, [0, 0]));
    assert_eq!(of(4).pails, [2, 3]);
    assert!((of(4).tape_ft - 420.0).abs() < 1e-9);
    assert!(close(of(4).tape_by_area_ft, 370.0, 400.0, 750.0));
    assert!(close(of(4).screws_by_area, 875.0, 1000.0, 1300.0));
    // More work never takes less.
    for level in 1..=5 {
        assert!(of(level).compound_gal.low >= of(level - 1).compound_gal.low);
        assert!(of(level).compound_gal.high >= of(level - 1).compound_gal.high);
    }
    assert!(of(0).working().is_empty());
}

#[test]
fn bead_by_hand() {
    // 8 ft from 8, 9 ft from 10, 21 ft from 10 + 10 + 1: the foot from the 10 that the 9 leaves it in.
    let answer = compound(&ask(4)).unwrap();
    let bead = answer.bead.unwrap();
    assert_eq!((bead.stock_in / 12.0, bead.proven), (38.0, true));
    assert_eq!(answer.bead_ft, 38.0);
    // Two flanges: at 16 in 6 + 1, 6.75 so 7 + 1, 15.75 so 16 + 1; at 9 in 10.67 so 11 + 1, 12 + 1, 28 + 1.
    assert_eq!(answer.bead_fasteners, [64, 108]);
}

#[test]
fn refusals() {
    let no = |ask: CompoundAsk| compound(&ask).unwrap_err();
    assert_eq!(no(ask(6)), CompoundRefusal::Level { given: 6 });
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(matches!(
            no(CompoundAsk {
                board_ft2: bad,
                ..ask(4)
            }),
            CompoundRefusal::NotAnAmount {
                field: CompoundField::Board,
                ..
            }
        ));
        assert!(matches!(
            no(CompoundAsk {
                outside_ft: vec![bad],
                ..ask(4)
            }),
            CompoundRefusal::NotAnAmount {
                field: CompoundField::Corner,
                ..
            }
        ));
    }
    assert!(matches!(
        no(CompoundAsk {
            pail_gal: 0.0,
            ..ask(4)
        }),
        CompoundRefusal::NotAnAmount {
            field: CompoundField::Pail,
            ..
        }
    ));
    assert_eq!(
        no(CompoundAsk {
            bead_in: vec![],
            ..ask(4)
        }),
        CompoundRefusal::Bead(CutRefusal::NoStock)
    );
}
