//! What holds for every length, slope and text.

use proptest::prelude::*;

use super::super::{
    AreaUnit, Length, LengthUnit, Slope, SlopeUnit, VolumeUnit, parse_area, parse_length,
    parse_number, parse_percent, parse_slope, parse_volume, parse_whole,
};

/// Every multiple of 1/64 in up to 1000 ft; below zero and without feet every 7th, which meets every fraction
/// and every inch.
#[test]
fn what_is_written_is_read_back() {
    let check = |text: String, length| {
        assert_eq!(
            parse_length(&text, LengthUnit::Meters),
            Ok(length),
            "{text}"
        );
    };
    for tick in 0..=768_000_u32 {
        let inches = f64::from(tick) / 64.0;
        let length = Length::from_inches(inches);
        check(length.format_feet_inches(64), length);
        if tick % 7 == 0 {
            check(length.format_inches(64), length);
            let below = Length::from_inches(-inches);
            check(below.format_feet_inches(64), below);
            check(below.format_inches(64), below);
        }
    }
}

fn everything_is_finite(text: &str) {
    for unit in LengthUnit::ALL {
        if let Ok(length) = parse_length(text, unit) {
            assert!(length.is_finite());
            assert!(length.feet_inches(16).is_some());
        }
    }
    for unit in AreaUnit::ALL {
        assert!(parse_area(text, unit).map_or(true, |q| q.is_finite()));
    }
    for unit in VolumeUnit::ALL {
        assert!(parse_volume(text, unit).map_or(true, |q| q.is_finite()));
    }
    for unit in SlopeUnit::ALL {
        assert!(parse_slope(text, unit).map_or(true, |q| q.is_finite()));
    }
    if let Ok(value) = parse_number(text) {
        assert!(value.is_finite());
        assert_eq!(parse_percent(text), Ok(value));
    }
    if let Ok(whole) = parse_whole(text) {
        assert_eq!(parse_number(text), Ok(whole as f64));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>()) {
        everything_is_finite(&text);
    }

    /// Texts of the pieces that lengths and slopes are made of, so that most of the grammar is met.
    #[test]
    fn any_sentence_is_read_or_refused(pieces in prop::collection::vec(prop::sample::select(vec![
        "7", "3", "5/8", "0", "1234567", ".", ",", "'", "\"", "''", "-", "−", "+", " ", "\u{a0}", "½", "⅟", "/",
        "⁄", ":", "%", "°", "²", "in", "ft", "mm", "m", "cm", "pies", "per", "por", "e", "NaN", "inf", "ñ", "\u{301}",
        "^", "sq", "L", "12.", "1,234", "9999999999999999999999",
    ]), 0..10)) {
        everything_is_finite(&pieces.concat());
    }

    #[test]
    fn an_own_unit_ignores_the_field(inches in 0.0..1e5_f64) {
        let text = format!("{inches} in");
        prop_assert_eq!(parse_length(&text, LengthUnit::Meters), Ok(Length::from_inches(inches)));
    }

    #[test]
    fn metric_round_trip(mm in -1e7..1e7_f64) {
        prop_assert!((Length::from_mm(mm).mm() - mm).abs() < 1e-8);
        for unit in LengthUnit::ALL {
            let value = Length::from_mm(mm).in_unit(unit);
            let text = format!("{value} {}", unit.code());
            let back = parse_length(&text, LengthUnit::Feet).map(|l| l.mm());
            prop_assert!(back.is_ok_and(|b| (b - mm).abs() <= 1e-9 * mm.abs().max(1.0)), "{}", text);
        }
    }

    #[test]
    fn rounding_is_to_the_nearest(inches in -1e4..1e4_f64, power in 1..=6_u32) {
        let fineness = 2_u32.pow(power);
        let text = Length::from_inches(inches).format_feet_inches(fineness);
        let back = parse_length(&text, LengthUnit::Meters).map(|l| l.inches());
        prop_assert!(back.is_ok_and(|b| (b - inches).abs() <= 0.5 / f64::from(fineness)), "{}", text);
    }

    #[test]
    fn slope_round_trip(ratio in -2.0..2.0_f64) {
        let slope = Slope::from_ratio(ratio);
        for unit in SlopeUnit::ALL {
            let text = slope.format(unit, 12);
            let back = parse_slope(&text, SlopeUnit::Percent).map(|s| s.ratio());
            prop_assert!(back.is_ok_and(|b| (b - ratio).abs() <= 1e-9), "{}", text);
        }
        prop_assert!(Slope::from_degrees(slope.degrees()).is_some_and(|s| (s.ratio() - ratio).abs() < 1e-12));
    }
}
