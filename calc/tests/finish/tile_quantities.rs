//! Mortar, membrane and grout, against the reference rows and worked examples.

use calc::finish::grout::{Field, GroutAsk, GroutRefusal, grout};
use calc::finish::setting_bed::{BedRefusal, MembraneAsk, MortarAsk, NOTCHES, membrane, mortar};

use crate::tile_rows::{number, rows};

#[test]
fn notches_are_the_reference() {
    let reference = rows("thinset_coverage.csv");
    assert_eq!(NOTCHES.len(), reference.len());
    for (notch, row) in NOTCHES.iter().zip(&reference) {
        let get = |name: &str| number(&row[name]);
        let ours = [
            (notch.depth_in, "depth_in"),
            (notch.width_in, "width_in"),
            (notch.spacing_in, "spacing_in"),
            (notch.low_ft2, "coverage_low_sqft"),
            (notch.high_ft2, "coverage_high_sqft"),
            (notch.ridge_in, "combed_thickness_in"),
            (notch.upright_ft2, "ideal_coverage_sqft_at_half_cuft"),
        ];
        for (value, name) in ours {
            assert_eq!(value, get(name), "{row:?}");
        }
        // Geometry: ridges as wide as the notches, and half a cubic foot spread at their mean.
        let ridge = notch.depth_in * notch.width_in / (notch.width_in + notch.spacing_in);
        assert_eq!(
            (notch.ridge_in, notch.upright_ft2),
            (ridge, 0.5 * 12.0 / ridge)
        );
    }
}

/// A worked example of a trade article: 200 square feet at 65 a bag is 3.08: four bags.
#[test]
fn bags_of_mortar() {
    let ask = |area_ft2, coverage_ft2_per_bag, allowance_percent| MortarAsk {
        area_ft2,
        coverage_ft2_per_bag,
        allowance_percent,
    };
    let answer = mortar(&ask(200.0, 65.0, 0.0)).unwrap();
    assert_eq!(answer.bags, 4);
    assert!((answer.exact_bags - 200.0 / 65.0).abs() < 1e-12);
    // Exactly three are three.
    assert_eq!(mortar(&ask(180.0, 66.0, 10.0)).unwrap().bags, 3);
    assert_eq!(mortar(&ask(0.0, 65.0, 10.0)).unwrap().bags, 0);
    assert!(matches!(
        mortar(&ask(200.0, 0.0, 0.0)),
        Err(BedRefusal::Nothing { .. })
    ));
    assert!(matches!(
        mortar(&ask(-1.0, 65.0, 0.0)),
        Err(BedRefusal::NotAnAmount { .. })
    ));
    assert!(matches!(
        mortar(&ask(1e9, 1.0, 0.0)),
        Err(BedRefusal::TooMany { .. })
    ));
}

/// 5 x 8 ft, turned up 6 in along 26 ft: 40 + 13 square feet, 58.3 with a tenth: two rolls of 54, one of 58.3.
#[test]
fn rolls_of_membrane() {
    let ask = |roll_ft2| MembraneAsk {
        area_ft2: 40.0,
        turned_up_ft: 26.0,
        turn_up_in: 6.0,
        allowance_percent: 10.0,
        roll_ft2,
    };
    assert_eq!(membrane(&ask(54.0)).unwrap().rolls, 2);
    assert_eq!(membrane(&ask(58.3)).unwrap().rolls, 1);
    assert!(membrane(&ask(f64::NAN)).is_err());
}

#[test]
fn grout_is_the_reference() {
    let rows = rows("grout.csv");
    assert_eq!(rows.len(), 8);
    for row in &rows {
        let get = |name: &str| number(&row[name]);
        let ask = |powder_lb_per_ft3| GroutAsk {
            area_ft2: get("area_sqft"),
            length_in: get("tile_L_in"),
            width_in: get("tile_W_in"),
            joint_in: get("joint_in"),
            depth_in: get("depth_in"),
            powder_lb_per_ft3,
            allowance_percent: 10.0,
            bag_lb: 25.0,
        };
        let (low, high) = (grout(&ask(100.0)).unwrap(), grout(&ask(115.0)).unwrap());
        let found = [
            (low.volume_in3, "volume_in3"),
            (low.exact_in3, "exact_in3"),
            (low.over_share, "over_fraction"),
            (low.volume_ft3, "volume_cuft"),
            (low.powder_lb, "powder_lb_at_100"),
            (high.powder_lb, "powder_lb_at_115"),
        ];
        for (value, name) in found {
            // Printed with six digits at the least.
            assert!(
                (value / get(name) - 1.0).abs() < 1e-5,
                "{name} {value} {row:?}"
            );
        }
        assert!((low.with_allowance_lb / low.powder_lb - 1.1).abs() < 1e-12);
        assert_eq!(
            low.bags,
            (get("powder_lb_at_100") * 1.1 / 25.0).ceil() as u32
        );
    }
}

/// The cell formula against a layout: 20 x 20 tiles of 12 in with 1/8 in joints on a field of exactly as many modules.
#[test]
fn grout_fills_the_joints_of_a_layout() {
    let side = 20.0 * 12.125;
    let tiles = crate::tile_rows::plain([side, side], [12.0, 12.0], 0.125);
    let joints_in2 = calc::finish::tile::layout(&tiles).unwrap().joint_area_in2;
    let answer = grout(&GroutAsk {
        area_ft2: side * side / 144.0,
        length_in: 12.0,
        width_in: 12.0,
        joint_in: 0.125,
        depth_in: 0.375,
        powder_lb_per_ft3: 100.0,
        allowance_percent: 0.0,
        bag_lb: 10.0,
    });
    assert!((answer.unwrap().exact_in3 - joints_in2 * 0.375).abs() < 1e-6);
}

#[test]
fn grout_needs_sizes() {
    let ask = GroutAsk {
        area_ft2: 100.0,
        length_in: 12.0,
        width_in: 0.0,
        joint_in: 0.125,
        depth_in: 0.375,
        powder_lb_per_ft3: 100.0,
        allowance_percent: 0.0,
        bag_lb: 10.0,
    };
    let no_width = GroutRefusal::Nothing {
        field: Field::Width,
        given: 0.0,
    };
    assert_eq!(grout(&ask), Err(no_width));
    let joint = grout(&GroutAsk {
        width_in: 12.0,
        joint_in: -0.1,
        ..ask
    });
    assert_eq!(
        joint,
        Err(GroutRefusal::NotAnAmount {
            field: Field::Joint,
            given: -0.1
        })
    );
    // No joint, no grout, and no division by nothing.
    let none = grout(&GroutAsk {
        width_in: 12.0,
        joint_in: 0.0,
        ..ask
    })
    .unwrap();
    assert_eq!((none.bags, none.over_share), (0, 0.0));
}
