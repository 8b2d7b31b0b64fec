//! Slopes: conversions against a table, and what people type.

use super::super::{NumberRefusal, Slope, SlopeRefusal, SlopeUnit, parse_slope};

/// Rise and run in inches, then percent, in/ft, in/4 ft, degrees, and n of 1:n, to the digits of the table.
type Row = (&'static str, f64, f64, f64, f64, f64, f64, f64);

/// Each row's rise over run is from the source it names; the rest was computed outside this project from
/// percent = 100 rise/run, in per ft = 12 rise/run, in per 4 ft = 48 rise/run, degrees = atan(rise/run).
const TABLE: [Row; 11] = [
    // Common practice: straightedge work.
    (
        "1/4 in in 4 ft",
        0.25,
        48.0,
        0.520833,
        0.0625,
        0.25,
        0.298413,
        192.0,
    ),
    (
        "3/4 in in 12 ft",
        0.75,
        144.0,
        0.520833,
        0.0625,
        0.25,
        0.298413,
        192.0,
    ),
    (
        "1/8 in in 4 ft",
        0.125,
        48.0,
        0.260417,
        0.03125,
        0.125,
        0.149207,
        384.0,
    ),
    (
        "1/2 in in 4 ft",
        0.5,
        48.0,
        1.04167,
        0.125,
        0.5,
        0.596809,
        96.0,
    ),
    (
        "1 in in 20 ft",
        1.0,
        240.0,
        0.416667,
        0.05,
        0.2,
        0.238731,
        240.0,
    ),
    // IRC 2021 P2709.1: shower floor, least and greatest.
    (
        "1/4 in per ft",
        0.25,
        12.0,
        2.08333,
        0.25,
        1.0,
        1.19349,
        48.0,
    ),
    ("1/2 in per ft", 0.5, 12.0, 4.16667, 0.5, 2.0, 2.38594, 24.0),
    // 2010 ADA Standards 403.3: walking surface.
    ("1:20", 1.0, 20.0, 5.0, 0.6, 2.4, 2.86241, 20.0),
    // 2010 ADA Standards 405.2: ramp.
    ("1:12", 1.0, 12.0, 8.33333, 1.0, 4.0, 4.76364, 12.0),
    // IRC 2021 R311.8.1: other ramps.
    ("1:8", 1.0, 8.0, 12.5, 1.5, 6.0, 7.12502, 8.0),
    // 2010 ADA Standards 303.3: bevel of a change in level.
    ("1:2", 1.0, 2.0, 50.0, 6.0, 24.0, 26.5651, 2.0),
];

#[test]
fn conversions() {
    let near = |value: f64, expected: f64| {
        assert!(
            (value - expected).abs() <= 5e-6 * expected,
            "{value} != {expected}"
        );
    };
    for (text, rise, run, percent, in_per_ft, in_per_4ft, degrees, one_to) in TABLE {
        let slope = Slope::from_ratio(rise / run);
        near(slope.percent(), percent);
        near(slope.in_per_ft(), in_per_ft);
        near(slope.in_per_4ft(), in_per_4ft);
        near(slope.degrees(), degrees);
        near(slope.mm_per_m(), percent * 10.0);
        near(slope.one_to().unwrap_or_default(), one_to);
        for back in [
            Some(Slope::from_percent(percent)),
            Some(Slope::from_in_per_ft(in_per_ft)),
            Some(Slope::from_in_per_4ft(in_per_4ft)),
            Some(Slope::from_mm_per_m(percent * 10.0)),
            Slope::from_degrees(degrees),
            Slope::from_one_to(one_to),
            parse_slope(text, SlopeUnit::Percent).ok(),
        ] {
            near(back.unwrap_or_default().ratio(), rise / run);
        }
    }
}

#[test]
fn written_many_ways() {
    for (text, ratio) in [
        ("1/4 in per ft", 1.0 / 48.0),
        ("1/4 in per foot", 1.0 / 48.0),
        ("1/4 in. per ft.", 1.0 / 48.0),
        ("1/4\"/ft", 1.0 / 48.0),
        ("1/4\" / 1'", 1.0 / 48.0),
        ("¼″ per ′", 1.0 / 48.0),
        ("1/4 in/ft", 1.0 / 48.0),
        ("1/4 in/4 ft", 1.0 / 192.0),
        ("1/4 in in 4 ft", 1.0 / 192.0),
        ("1/4\" in 4'", 1.0 / 192.0),
        ("3/4\" over 12'", 1.0 / 192.0),
        ("1/4 pulg por pie", 1.0 / 48.0),
        ("1/4 pulg en 4 pies", 1.0 / 192.0),
        ("1 1/2 in per ft", 0.125),
        ("-1/4 in per ft", -1.0 / 48.0),
        ("20 mm/m", 0.02),
        ("20 mm por metro", 0.02),
        ("2 cm en 1 m", 0.02),
        ("2%", 0.02),
        ("2 %", 0.02),
        ("2,5%", 0.025),
        ("2 percent", 0.02),
        ("2 por ciento", 0.02),
        ("1:12", 1.0 / 12.0),
        ("1 : 12", 1.0 / 12.0),
        ("2:12", 1.0 / 6.0),
        ("1 in 12", 1.0 / 12.0),
        ("1 en 12", 1.0 / 12.0),
        ("45 deg", 1.0),
        ("45°", 1.0),
        ("45º", 1.0),
        ("45 grados", 1.0),
    ] {
        for bare in SlopeUnit::ALL {
            match parse_slope(text, bare) {
                Ok(slope) => assert!((slope.ratio() - ratio).abs() < 1e-15, "{text:?}: {slope:?}"),
                Err(refusal) => panic!("{text:?}: {refusal:?}"),
            }
        }
    }
    let bare = |unit| parse_slope("2", unit).map(|s| s.ratio());
    assert_eq!(bare(SlopeUnit::InPer4Ft), Ok(2.0 / 48.0));
    assert_eq!(bare(SlopeUnit::InPerFt), Ok(2.0 / 12.0));
    assert_eq!(bare(SlopeUnit::Percent), Ok(0.02));
    assert_eq!(bare(SlopeUnit::OneTo), Ok(0.5));
    assert_eq!(bare(SlopeUnit::MmPerM), Ok(0.002));
    // tan 2 degrees = 0.0349207694917 (tables of trigonometric functions).
    assert!(bare(SlopeUnit::Degrees).is_ok_and(|r| (r - 0.034_920_769_491_7).abs() < 1e-12));
}

#[test]
fn refusals() {
    let missing = |piece: &str, at| SlopeRefusal::UnitMissing {
        piece: piece.to_owned(),
        at,
    };
    let not_understood = |piece: &str, at| {
        SlopeRefusal::Number(NumberRefusal::NotUnderstood {
            piece: piece.to_owned(),
            at,
        })
    };
    for (text, refusal) in [
        ("", SlopeRefusal::Number(NumberRefusal::Blank)),
        ("1/4 in 4 ft", missing("1", 0)),
        ("1 in 12 ft", missing("1", 0)),
        ("1/4 in 12", missing("1", 0)),
        ("1/4 in per 4", missing("4", 11)),
        ("1/4\" in 4", missing("4", 8)),
        ("1/4 in", SlopeRefusal::RunMissing),
        ("1/4 in per", SlopeRefusal::RunMissing),
        ("1:0", SlopeRefusal::ZeroRun),
        ("1 in per 0 ft", SlopeRefusal::ZeroRun),
        ("90°", SlopeRefusal::PastUpright { degrees: 90.0 }),
        (
            "2 furlongs",
            SlopeRefusal::UnknownUnit {
                piece: "furlongs".to_owned(),
                at: 2,
            },
        ),
        ("1:12:3", not_understood(":", 4)),
        ("2% or so", not_understood("or", 3)),
        ("1:", not_understood(":", 1)),
        ("1/4 in / / ft", not_understood("/", 9)),
        ("10000000:1", SlopeRefusal::Number(NumberRefusal::TooLarge)),
    ] {
        for bare in SlopeUnit::ALL {
            assert_eq!(parse_slope(text, bare), Err(refusal.clone()), "{text:?}");
        }
    }
    assert_eq!(
        parse_slope("1/12", SlopeUnit::OneTo),
        Err(SlopeRefusal::RunBelowOne { run: 1.0 / 12.0 })
    );
    assert_eq!(
        parse_slope("0", SlopeUnit::OneTo),
        Err(SlopeRefusal::ZeroRun)
    );
    assert_eq!(
        parse_slope("95", SlopeUnit::Degrees),
        Err(SlopeRefusal::PastUpright { degrees: 95.0 })
    );
    assert_eq!(Slope::from_degrees(90.0), None);
    assert_eq!(Slope::from_degrees(f64::NAN), None);
    assert_eq!(Slope::from_one_to(0.0), None);
    assert_eq!(Slope::from_ratio(0.0).one_to(), None);
}

#[test]
fn shown() {
    let slope = Slope::from_in_per_ft(0.25);
    let show = |unit, decimals| slope.format(unit, decimals);
    assert_eq!(show(SlopeUnit::InPerFt, 3), "0.25 in/ft");
    assert_eq!(show(SlopeUnit::InPer4Ft, 3), "1 in/4 ft");
    assert_eq!(show(SlopeUnit::Percent, 2), "2.08%");
    assert_eq!(show(SlopeUnit::Degrees, 2), "1.19°");
    assert_eq!(show(SlopeUnit::OneTo, 1), "1:48");
    assert_eq!(show(SlopeUnit::MmPerM, 1), "20.8 mm/m");
    assert_eq!(Slope::from_ratio(0.0).format(SlopeUnit::OneTo, 1), "0%");
    assert_eq!(Slope::from_ratio(-0.5).format(SlopeUnit::OneTo, 1), "-1:2");
    assert_eq!(Slope::from_ratio(-1e-9).to_string(), "0%");
}
