//! What a length may look like. The values are arithmetic: 12 in to the foot, 25.4 mm to the inch (NIST SP 811).

use super::super::LengthUnit::{Centimeters, Feet, Inches, Meters, Millimeters};
use super::super::{LengthRefusal, LengthUnit, parse_length};

#[track_caller]
fn reads(text: &str, bare: LengthUnit, inches: f64) {
    match parse_length(text, bare) {
        Ok(length) => assert_eq!(length.inches(), inches, "{text:?}"),
        Err(refusal) => panic!("{text:?}: {refusal:?}"),
    }
}

#[track_caller]
fn reads_mm(text: &str, bare: LengthUnit, mm: f64) {
    match parse_length(text, bare) {
        Ok(length) => assert!((length.mm() - mm).abs() < 1e-9, "{text:?}: {}", length.mm()),
        Err(refusal) => panic!("{text:?}: {refusal:?}"),
    }
}

#[track_caller]
fn refuses(text: &str, refusal: LengthRefusal) {
    for bare in LengthUnit::ALL {
        assert_eq!(parse_length(text, bare), Err(refusal.clone()), "{text:?}");
    }
}

fn not_understood(piece: &str, at: usize) -> LengthRefusal {
    LengthRefusal::NotUnderstood {
        piece: piece.to_owned(),
        at,
    }
}

fn unit_missing(piece: &str, at: usize) -> LengthRefusal {
    LengthRefusal::UnitMissing {
        piece: piece.to_owned(),
        at,
    }
}

#[test]
fn one_length_written_many_ways() {
    for text in [
        "7' 3 5/8\"",
        "7'3 5/8\"",
        "7'3-5/8\"",
        "7'-3 5/8\"",
        "7'-3-5/8\"",
        "7' - 3 5/8\"",
        "7'- 3 5/8\"",
        "7'3-5/8",
        "7' 3 5/8",
        "7 3-5/8",
        "7 3 5/8",
        "7-3-5/8",
        "7-3 5/8",
        "7 3-5/8\"",
        "7 3 5/8 in",
        "7 3⅝",
        "7 ft 3 5/8 in",
        "7ft3 5/8in",
        "7 ft. 3 5/8 in.",
        "7 ft, 3 5/8 in",
        "7 feet 3 5/8 inches",
        "7 FEET 3 5/8 INCHES",
        "7 feet and 3 5/8 inches",
        "7 pies 3 5/8 pulgadas",
        "7 pies con 3 5/8 pulg.",
        "7 pies y 3 5/8 plg",
        "7’ 3 5/8”",
        "7‘ 3 5/8“",
        "7′ 3 5/8″",
        "7′3⅝″",
        "7' 3⅝''",
        "7' 3 5/8''",
        "7’ 3 5⁄8’’",
        "7'\u{a0}3\u{2009}5\u{2044}8\"",
        "7'\u{202f}3 5/8\"",
        "\u{feff} 7' 3 5/8\" \u{200b}",
        "+7' 3 5/8\"",
        "7' 3.625\"",
        "87 5/8\"",
        "87-5/8 in",
        "87⅝\"",
        "87 ⅝''",
        "87.625 in",
        "87.625\"",
    ] {
        for bare in LengthUnit::ALL {
            reads(text, bare, 87.625);
        }
    }
}

#[test]
fn bare_numbers_take_the_unit_of_the_field() {
    reads("87.625", Inches, 87.625);
    reads("87 5/8", Inches, 87.625);
    reads("87-5/8", Inches, 87.625);
    reads("87⅝", Inches, 87.625);
    reads("7 1/2", Feet, 90.0);
    reads("7½", Feet, 90.0);
    reads("3/8", Inches, 0.375);
    reads("9/8", Inches, 1.125);
    reads("⅟16", Inches, 0.0625);
    reads("3⅟16", Inches, 3.0625);
    reads(".5", Inches, 0.5);
    reads("5.", Inches, 5.0);
    reads("2,5", Inches, 2.5);
    reads("0,125", Inches, 0.125);
    reads("1,234.5", Inches, 1234.5);
    reads("1.234,5", Inches, 1234.5);
    reads("0", Inches, 0.0);
    reads_mm("2226", Millimeters, 2226.0);
    reads_mm("222.6", Centimeters, 2226.0);
    reads_mm("2.226", Meters, 2226.0);
    reads_mm("2 1/2", Centimeters, 25.0);
}

#[test]
fn signs() {
    reads("-1/4", Inches, -0.25);
    reads("\u{2212}1/4\"", Inches, -0.25);
    reads("- 1/4", Inches, -0.25);
    reads("–¼", Inches, -0.25);
    reads("-7' 3\"", Inches, -87.0);
    reads("-3 1/2", Inches, -3.5);
    // A zero has no sign.
    assert_eq!(
        parse_length("-0", Inches).map(|l| l.inches().is_sign_negative()),
        Ok(false)
    );
    refuses("--3", not_understood("-", 1));
    refuses("-", not_understood("-", 0));
    // In the middle a hyphen joins; where it looks like a minus it is refused.
    refuses("3 -5/8", not_understood("-", 2));
    refuses("3 - 5/8", not_understood("-", 2));
    refuses("7' -3\"", not_understood("-", 3));
    refuses("2 m - 3 cm", not_understood("-", 4));
}

#[test]
fn units_of_their_own() {
    reads("7'", Millimeters, 84.0);
    reads("3\"", Millimeters, 3.0);
    reads("3''", Millimeters, 3.0);
    reads("0' 3/8\"", Millimeters, 0.375);
    reads("7' 3/8\"", Millimeters, 84.375);
    reads("7 ft 3 in", Inches, 87.0);
    reads("7ft3in", Inches, 87.0);
    reads("7ft3", Inches, 87.0);
    reads("7 feet 3 1/2 inches", Inches, 87.5);
    reads("1 foot 1 inch", Inches, 13.0);
    reads("1 pie 1 pulgada", Inches, 13.0);
    reads("7.5 ft", Inches, 90.0);
    reads("7 1/2'", Inches, 90.0);
    reads("5' 14\"", Inches, 74.0);
    reads_mm("2.226 m", Inches, 2226.0);
    reads_mm("2226 mm", Inches, 2226.0);
    reads_mm("2,226.5 mm", Inches, 2226.5);
    reads_mm("222.6cm", Inches, 2226.0);
    reads_mm("2,5 m", Inches, 2500.0);
    reads_mm("2 m 26 cm", Inches, 2260.0);
    reads_mm("2 m 26 cm 5 mm", Inches, 2265.0);
    reads_mm("2 metros y 5 milímetros", Inches, 2005.0);
}

#[test]
fn two_meanings_are_refused() {
    refuses("7 3", unit_missing("7", 0));
    refuses("7-3", unit_missing("7", 0));
    refuses("7 3\"", unit_missing("7", 0));
    refuses("7 3.5", unit_missing("7", 0));
    refuses("7.5 3 1/2", unit_missing("7.5", 0));
    refuses("7 3 5/8 ft", unit_missing("7", 0));
    refuses("7 3 5/8 mm", unit_missing("7", 0));
    refuses("2 m 50", unit_missing("50", 4));
    refuses("1 234 mm", unit_missing("1", 0));
    refuses("3\" 5/8", unit_missing("5", 3));
    refuses("7 14 5/8", LengthRefusal::InchesPastFoot { inches: 14.625 });
    for text in ["1,234", "1,234 mm", "-1,234"] {
        let at = usize::from(text.starts_with('-'));
        refuses(
            text,
            LengthRefusal::AmbiguousComma {
                piece: "1,234".to_owned(),
                at,
                as_decimal: 1.234,
                as_thousands: 1234.0,
            },
        );
    }
    refuses(
        "7' 3,625\"",
        LengthRefusal::AmbiguousComma {
            piece: "3,625".to_owned(),
            at: 3,
            as_decimal: 3.625,
            as_thousands: 3625.0,
        },
    );
    // 3 in or 0.3 in?
    refuses("7 ft.3 in", not_understood(".", 4));
    refuses("7'.5\"", not_understood(".", 2));
}

#[test]
fn what_makes_no_sense_is_refused() {
    refuses("", LengthRefusal::Blank);
    refuses(" \u{a0}\t\u{200b}", LengthRefusal::Blank);
    refuses("3/0", LengthRefusal::ZeroDenominator);
    refuses("7' 3 5/0\"", LengthRefusal::ZeroDenominator);
    refuses(
        "3 9/8",
        LengthRefusal::FractionPastOne {
            numerator: 9.0,
            denominator: 8.0,
        },
    );
    refuses("7' 3'", LengthRefusal::UnitTwice { unit: Feet });
    refuses(
        "3\" 7'",
        LengthRefusal::WrongOrder {
            smaller: Inches,
            larger: Feet,
        },
    );
    refuses(
        "7 ft 30 mm",
        LengthRefusal::MixedSystems {
            first: Feet,
            second: Millimeters,
        },
    );
    refuses(
        "7.5' 3\"",
        LengthRefusal::PartBeforeSmaller {
            value: 7.5,
            unit: Feet,
        },
    );
    refuses("1000001\"", LengthRefusal::TooLarge);
    refuses("-1000001\"", LengthRefusal::TooLarge);
    refuses(&format!("{}\"", "9".repeat(400)), LengthRefusal::TooLarge);
    let unknown = |piece: &str, at| LengthRefusal::UnknownUnit {
        piece: piece.to_owned(),
        at,
    };
    refuses("1e5", unknown("e", 1));
    refuses("3 yd", unknown("yd", 2));
    refuses("7 x 3", unknown("x", 2));
    refuses("7' 3 plumas", unknown("plumas", 5));
    refuses("NaN", not_understood("NaN", 0));
    refuses("inf", not_understood("inf", 0));
    refuses("in", not_understood("in", 0));
    refuses("abc", not_understood("abc", 0));
    refuses("1.2.3", not_understood("1.2.3", 0));
    refuses("7,", not_understood("7,", 0));
    refuses("1/2/3", not_understood("/", 3));
    refuses("1/2.5", not_understood("/", 1));
    refuses("ñ 7'", not_understood("ñ", 0));
    // The place is counted in characters, not bytes.
    refuses("7′ 3⅝″ ?", not_understood("?", 7));
    refuses("٣", not_understood("٣", 0));
}

/// The fractions that have a character of their own, with the compatibility mappings of the Unicode Character
/// Database (UnicodeData.txt, version 14).
#[test]
fn vulgar_fractions() {
    for (character, mapping) in [
        ("¼", "1/4"),
        ("½", "1/2"),
        ("¾", "3/4"),
        ("⅐", "1/7"),
        ("⅑", "1/9"),
        ("⅒", "1/10"),
        ("⅓", "1/3"),
        ("⅔", "2/3"),
        ("⅕", "1/5"),
        ("⅖", "2/5"),
        ("⅗", "3/5"),
        ("⅘", "4/5"),
        ("⅙", "1/6"),
        ("⅚", "5/6"),
        ("⅛", "1/8"),
        ("⅜", "3/8"),
        ("⅝", "5/8"),
        ("⅞", "7/8"),
        ("↉", "0/3"),
    ] {
        let plain = parse_length(mapping, Inches);
        assert!(plain.is_ok());
        assert_eq!(parse_length(character, Inches), plain);
        assert_eq!(
            parse_length(&format!("2{character}"), Inches),
            parse_length(&format!("2 {mapping}"), Inches)
        );
    }
}
