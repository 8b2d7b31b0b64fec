//! Plain numbers.

use super::super::NumberRefusal::{self, Blank, NotWhole, TooLarge, ZeroDenominator};
use super::super::{parse_number, parse_percent, parse_whole};

fn not_understood(piece: &str, at: usize) -> NumberRefusal {
    NumberRefusal::NotUnderstood {
        piece: piece.to_owned(),
        at,
    }
}

#[test]
fn numbers() {
    for (text, value) in [
        ("12", 12.0),
        (" 12 ", 12.0),
        ("-12", -12.0),
        ("0.45", 0.45),
        (".45", 0.45),
        ("0,45", 0.45),
        ("0,450", 0.45),
        ("2,5", 2.5),
        ("1234,567", 1234.567),
        ("1/2", 0.5),
        ("1 1/2", 1.5),
        ("1-1/2", 1.5),
        ("1½", 1.5),
        ("1,234.5", 1234.5),
        ("1.234,5", 1234.5),
        ("1,234,567", 1_234_567.0),
        ("1.234.567", 1_234_567.0),
        ("1.234", 1.234),
    ] {
        assert_eq!(parse_number(text), Ok(value), "{text:?}");
    }
}

#[test]
fn refusals() {
    for (text, refusal) in [
        ("", Blank),
        ("1/0", ZeroDenominator),
        ("1e3", not_understood("e", 1)),
        ("12 in", not_understood("in", 3)),
        ("10%", not_understood("%", 2)),
        ("1,23,4", not_understood("1,23,4", 0)),
        ("1,234.", not_understood("1,234.", 0)),
        ("0,123,456", not_understood("0,123,456", 0)),
        ("12,34.5", not_understood("12,34.5", 0)),
        ("1..2", not_understood("1..2", 0)),
        ("1.2,3,4", not_understood("1.2,3,4", 0)),
        (".", not_understood(".", 0)),
        ("1 2", not_understood("2", 2)),
        ("½½", not_understood("½", 1)),
        ("1000000000001", TooLarge),
        (
            "12,345",
            NumberRefusal::AmbiguousComma {
                piece: "12,345".to_owned(),
                at: 0,
                as_decimal: 12.345,
                as_thousands: 12_345.0,
            },
        ),
    ] {
        assert_eq!(parse_number(text), Err(refusal), "{text:?}");
    }
}

#[test]
fn percentages_and_whole_numbers() {
    assert_eq!(parse_percent("10"), Ok(10.0));
    assert_eq!(parse_percent("10%"), Ok(10.0));
    assert_eq!(parse_percent("7 1/2 %"), Ok(7.5));
    assert_eq!(parse_percent("10%%"), Err(not_understood("%", 3)));
    assert_eq!(parse_whole("12"), Ok(12));
    assert_eq!(parse_whole("-3"), Ok(-3));
    assert_eq!(parse_whole("3.0"), Ok(3));
    assert_eq!(parse_whole("4/2"), Ok(2));
    assert_eq!(parse_whole("2.5"), Err(NotWhole { value: 2.5 }));
}
