//! Factors between units against the published ones, and the words that units are typed with.

use super::super::{
    Area, AreaRefusal, AreaUnit, Length, LengthUnit, SlopeUnit, Volume, VolumeRefusal, VolumeUnit,
    parse_area, parse_volume,
};

#[track_caller]
fn near(value: f64, expected: f64) {
    assert!(
        (value - expected).abs() <= 1e-14 * expected.abs(),
        "{value} != {expected}"
    );
}

/// Exact conversion factors as NIST SP 811 (2008), appendix B.8, and NIST Handbook 44, appendix C, print them;
/// carried from memory.
#[test]
fn published_factors() {
    near(Length::from_feet(1.0).m(), 0.3048);
    near(Length::from_inches(1.0).cm(), 2.54);
    near(Area::from_in2(1.0).m2(), 6.4516e-4);
    near(Area::from_ft2(1.0).m2(), 0.092_903_04);
    near(Area::from_yd2(1.0).m2(), 0.836_127_36);
    near(Volume::from_in3(1.0).liters(), 0.016_387_064);
    near(Volume::from_ft3(1.0).liters(), 28.316_846_592);
    near(Volume::from_yd3(1.0).m3(), 0.764_554_857_984);
    near(Volume::from_gal(1.0).liters(), 3.785_411_784);
    near(Volume::from_qt(1.0).liters(), 0.946_352_946);
    near(Volume::from_gal(1.0).in3(), 231.0);
    near(Volume::from_gal(1.0).qt(), 4.0);
    near(Volume::from_m3(1.0).liters(), 1000.0);
}

/// A tape's mark typed in metric is that mark to the last bit, so that a limit of 12 in allows 0.3048 m.
#[test]
fn metric_entries_meet_the_tape_exactly() {
    near(super::super::length::MM_PER_IN, 127.0 / 5.0);
    for tick in 1..20_000_u32 {
        let inches = f64::from(tick) / 64.0;
        // 25.4 mm / 64 = 0.396875 mm: counted in millionths, so that each text is the exact decimal.
        let millionths = u64::from(tick) * 396_875;
        let decimal = |unit: u64| {
            format!(
                "{}.{:0w$}",
                millionths / unit,
                millionths % unit,
                w = unit.ilog10() as usize
            )
        };
        for (unit, name) in [(1_000_000, "mm"), (10_000_000, "cm"), (1_000_000_000, "m")] {
            let text = format!("{} {name}", decimal(unit));
            assert_eq!(
                super::super::parse_length(&text, LengthUnit::Feet),
                Ok(Length::from_inches(inches)),
                "{text}"
            );
        }
    }
}

#[test]
fn named_doors_and_units_agree() {
    for unit in LengthUnit::ALL {
        assert_eq!(LengthUnit::from_code(unit.code()), Some(unit));
        near(Length::from_unit(2.5, unit).in_unit(unit), 2.5);
    }
    for unit in AreaUnit::ALL {
        assert_eq!(AreaUnit::from_code(unit.code()), Some(unit));
        near(Area::from_unit(2.5, unit).in_unit(unit), 2.5);
    }
    for unit in VolumeUnit::ALL {
        assert_eq!(VolumeUnit::from_code(unit.code()), Some(unit));
        near(Volume::from_unit(2.5, unit).in_unit(unit), 2.5);
    }
    for unit in SlopeUnit::ALL {
        assert_eq!(SlopeUnit::from_code(unit.code()), Some(unit));
    }
    near(Area::from_unit(1.0, AreaUnit::SquareMeters).m2(), 1.0);
    near(Area::from_unit(1.0, AreaUnit::SquareYards).yd2(), 1.0);
    near(Volume::from_unit(1.0, VolumeUnit::CubicYards).yd3(), 1.0);
    near(Volume::from_unit(1.0, VolumeUnit::CubicMeters).m3(), 1.0);
    near(Volume::from_unit(1.0, VolumeUnit::Gallons).gal(), 1.0);
    assert_eq!(LengthUnit::from_code("ft2"), None);
    assert_eq!(VolumeUnit::from_code("l"), None);
}

#[test]
fn areas() {
    for (text, ft2) in [
        ("120", 120.0),
        ("120.5", 120.5),
        ("120 1/2", 120.5),
        ("120 sq ft", 120.0),
        ("120 sq. ft.", 120.0),
        ("120 SF", 120.0),
        ("120 ft2", 120.0),
        ("120ft^2", 120.0),
        ("120 ft²", 120.0),
        ("120 square feet", 120.0),
        ("120 pies cuadrados", 120.0),
        ("120 pies²", 120.0),
        ("10 sq yd", 90.0),
        ("10 yd²", 90.0),
        ("144 sq in", 1.0),
        ("9.290304 m2", 100.0),
        ("9,290304 m²", 100.0),
        ("9.290304 metros cuadrados", 100.0),
    ] {
        match parse_area(text, AreaUnit::SquareFeet) {
            Ok(area) => near(area.ft2(), ft2),
            Err(refusal) => panic!("{text:?}: {refusal:?}"),
        }
    }
    for (text, piece, at) in [("12 ft", "ft", 3), ("12'", "'", 2), ("12 ft 2", "ft 2", 3)] {
        assert_eq!(
            parse_area(text, AreaUnit::SquareFeet),
            Err(AreaRefusal::UnknownUnit {
                piece: piece.to_owned(),
                at
            })
        );
    }
    assert_eq!(Area::from_ft2(120.5).to_string(), "120.5 ft²");
}

#[test]
fn volumes() {
    for (text, ft3) in [
        ("0.45", 0.45),
        ("0.45 cu ft", 0.45),
        ("0.45 cu. ft.", 0.45),
        ("0.45 ft3", 0.45),
        ("0.45 ft³", 0.45),
        ("0.45 pies cúbicos", 0.45),
        ("1 cu yd", 27.0),
        ("1 yd3", 27.0),
        ("1728 in³", 1.0),
        ("28.316846592 L", 1.0),
        ("28.316846592 l", 1.0),
        ("28.316846592 litros", 1.0),
        ("0.028316846592 m3", 1.0),
        ("1728 gal", 231.0),
        ("6912 qt", 231.0),
        ("1728 galones", 231.0),
    ] {
        match parse_volume(text, VolumeUnit::CubicFeet) {
            Ok(volume) => near(volume.ft3(), ft3),
            Err(refusal) => panic!("{text:?}: {refusal:?}"),
        }
    }
    assert_eq!(
        parse_volume("5 lb", VolumeUnit::Quarts),
        Err(VolumeRefusal::UnknownUnit {
            piece: "lb".to_owned(),
            at: 2
        })
    );
    assert_eq!(Volume::from_ft3(4.1).to_string(), "4.1 ft³");
    assert_eq!(Volume::from_qt(5.0).format(VolumeUnit::Liters, 1), "4.7 L");
}
