//! Every row of the tables against the reference values.

use calc::finish::board::screws::apart_in;
use calc::finish::board::{SurfaceKind, kind, usual as board};
use calc::finish::compound::{level, usual as compound};
use calc::finish::paint::usual as paint;
use calc::finish::trim::usual as trim;
use calc::floor::mixing::Usual;

use crate::rows::{Row, number, row, rows};

fn usual(row: &Row) -> Usual {
    Usual {
        low: number(&row["low"]),
        typical: number(&row["typical"]),
        high: number(&row["high"]),
    }
}

#[test]
fn board_rows() {
    let reference = rows("finish/gypsum_board.csv");
    let find = |item: &'static str| row(&reference, "item", item);
    let typical = |item: &'static str| number(&find(item)["typical"]);
    for (item, ours) in [
        ("screws per 1000 sq ft", compound::SCREWS_PER_KFT2),
        (
            "joint compound, ready mixed",
            compound::COMPOUND_GAL_PER_KFT2,
        ),
        ("joint tape", compound::TAPE_FT_PER_KFT2),
        ("skim coat", compound::SKIM_GAL_PER_KFT2),
        ("corner bead fasteners", compound::BEAD_FASTENERS_APART_IN),
        ("sheet waste allowance", board::ALLOWANCE_PERCENT),
    ] {
        assert_eq!(usual(find(item)), ours, "{item}");
    }
    // Another public rule for tape stands in the same row's source.
    let source = &find("joint tape")["source"];
    assert!(source.contains(&format!("equals {}", compound::MOST_TAPE_FT_PER_KFT2)));
    let areas = usual(find("area of a 4x8"));
    let ours: Vec<f64> = board::SHEETS.iter().map(|sheet| sheet.area_ft2()).collect();
    assert_eq!(ours[..3], [areas.low, areas.typical, areas.high]);
    let (width, length) = (usual(find("sheet width")), usual(find("sheet length")));
    for sheet in board::SHEETS {
        assert!((width.low..=width.high).contains(&sheet.width_in));
        assert!((length.low..=length.high).contains(&(sheet.length_in / 12.0)));
    }
    for (kind, framing_in, item) in [
        (SurfaceKind::Ceiling, 16.0, "screws, ceiling"),
        (SurfaceKind::Ceiling, 24.0, "screws, ceiling"),
        (SurfaceKind::Wall, 16.0, "screws, wall, framing 16"),
        (SurfaceKind::Wall, 24.0, "screws, wall, framing 24"),
    ] {
        assert_eq!(apart_in(kind, framing_in), Some(typical(item)), "{item}");
    }
    assert_eq!(apart_in(SurfaceKind::Wall, 24.5), None);
    assert_eq!(apart_in(SurfaceKind::Wall, f64::NAN), None);
    for (kind, apart_in) in board::NAILS_APART_IN {
        let item = match kind {
            SurfaceKind::Ceiling => "nails, ceiling",
            SurfaceKind::Wall => "nails, wall",
        };
        assert_eq!(apart_in, typical(item));
    }
    assert_eq!(board::EDGE_DISTANCE_IN, typical("fastener edge distance"));
    assert_eq!(board::SCREW_IN_WOOD_IN, typical("screw penetration"));
    assert_eq!(board::LEFT_OUT_ABOVE_FT2, typical("opening deducted"));
}

#[test]
fn levels() {
    let reference = rows("finish/finish_levels.csv");
    assert_eq!(reference.len(), compound::LEVELS.len());
    for row in &reference {
        let ours = level(row["level"].parse().unwrap()).unwrap();
        let (joints, angles) = (row["joints"].as_str(), row["angles"].as_str());
        assert_eq!(ours.taped, joints != "none");
        let coats = |text: &str| match text {
            "none" | "tape set in compound" => 0,
            "tape set plus a thin coat wiped over the tape" | "tape set plus a thin coat" => 1,
            "tape coat plus one separate coat" | "tape coat plus one coat" => 1,
            "tape coat plus two separate coats" => 2,
            "as level 4" => 99,
            other => panic!("{other}"),
        };
        if ours.level == 5 {
            let four = level(4).unwrap();
            assert_eq!((coats(joints), coats(angles)), (99, 99));
            assert_eq!(ours.joint_coats, four.joint_coats);
            assert_eq!(ours.angle_coats, four.angle_coats);
        } else {
            assert_eq!(ours.joint_coats, coats(joints));
            assert_eq!(ours.angle_coats, coats(angles));
        }
        let fasteners = match row["fasteners"].as_str() {
            "none" | "no coat required" => 0,
            "one coat" => 1,
            "two coats" => 2,
            "three coats" => 3,
            other => panic!("{other}"),
        };
        assert_eq!(ours.fastener_coats, fasteners);
        assert_eq!(ours.skim, row["surface"].contains("skim coat"));
    }
    assert_eq!(level(6), None);
}

#[test]
fn paint_rows() {
    let reference = rows("finish/paint.csv");
    for (item, ours) in [
        ("finish paint", paint::SMOOTH_FT2_PER_GAL),
        ("textured wall", paint::TEXTURED_FT2_PER_GAL),
        ("primer on new", paint::PRIMER_FT2_PER_GAL),
        ("door deduction", paint::DOOR_FT2),
        ("window deduction", paint::WINDOW_FT2),
        ("coats", paint::COATS),
        ("ordering allowance", paint::ALLOWANCE_PERCENT),
    ] {
        assert_eq!(usual(row(&reference, "item", item)), ours, "{item}");
    }
    let theory = number(&row(&reference, "item", "theoretical spread")["typical"]);
    assert!((paint::SPREAD_AT_ONE_MIL_FT2_PER_GAL - theory).abs() < 1e-4);
}

#[test]
fn trim_rows() {
    let reference = rows("finish/baseboard.csv");
    let value = |item| &row(&reference, "item", item)["value"];
    assert_eq!(
        trim::ALLOWANCE_PERCENT.typical,
        number(value("waste, plain"))
    );
    assert_eq!(trim::ALLOWANCE_PERCENT.high, number(value("waste, many")));
    assert_eq!(trim::EXTRA_FT_PER_MITRE, number(value("extra per mitre")));
    assert_eq!(trim::CASING_IN, number(value("casing width")));
    let feet: Vec<f64> = value("stock lengths").split(';').map(number).collect();
    assert_eq!(trim::STOCK_IN.map(|length| length / 12.0).to_vec(), feet);
    // From memory, so only that they are in order.
    for range in [trim::REVEAL_IN, trim::KERF_IN] {
        assert!(0.0 < range.low && range.low <= range.typical && range.typical <= range.high);
    }
}

#[test]
fn kinds_of_board() {
    use kind::{BoardKind, Place, board_for};
    // IRC 2021 R702.3.7: no gypsum board where water meets it, water-resistant or not.
    assert_eq!(
        board_for(Place::TubOrShower).map(|row| row.kind),
        Some(BoardKind::TileBacker)
    );
    for row in &kind::BOARD_BY_PLACE {
        assert_eq!(board_for(row.place), Some(row));
        assert!(row.source.starts_with("IRC 2021 "));
    }
}
