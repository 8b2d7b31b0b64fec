//! What a length is shown as.

use super::super::length::echo;
use super::super::{FeetInches, Length, fixed};

#[track_caller]
fn shows(inches: f64, fineness: u32, text: &str) {
    let length = Length::from_inches(inches);
    assert_eq!(length.format_feet_inches(fineness), text);
}

#[test]
fn feet_inches_and_a_fraction() {
    shows(87.625, 16, "7' 3 5/8\"");
    shows(3.625, 16, "3 5/8\"");
    shows(0.625, 16, "5/8\"");
    shows(0.0, 16, "0\"");
    shows(-0.25, 16, "-1/4\"");
    shows(-87.0, 16, "-7' 3\"");
    shows(84.0, 16, "7' 0\"");
    shows(84.625, 16, "7' 0 5/8\"");
    shows(11.0, 16, "11\"");
}

#[test]
fn rounding_carries() {
    let almost = 47.0 + 63.0 / 64.0;
    shows(almost, 64, "3' 11 63/64\"");
    shows(almost, 32, "4' 0\"");
    shows(almost, 16, "4' 0\"");
    shows(almost, 2, "4' 0\"");
    shows(11.97, 16, "1' 0\"");
    shows(0.99, 8, "1\"");
    // Halves go away from zero, on either side of it.
    shows(1.0 / 32.0, 16, "1/16\"");
    shows(-1.0 / 32.0, 16, "-1/16\"");
    // Rounded to nothing, nothing is left of the sign.
    shows(-0.01, 16, "0\"");
}

#[test]
fn parts_in_lowest_terms() {
    assert_eq!(
        Length::from_inches(-87.5).feet_inches(64),
        Some(FeetInches {
            negative: true,
            feet: 7,
            inches: 3,
            numerator: 1,
            denominator: 2
        })
    );
    assert_eq!(Length::from_inches(87.625).format_inches(16), "87 5/8\"");
    assert_eq!(Length::from_inches(0.75).format_inches(4), "3/4\"");
}

#[test]
fn what_cannot_be_shown_is_marked() {
    for inches in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300] {
        assert_eq!(Length::from_inches(inches).feet_inches(16), None);
        assert_eq!(Length::from_inches(inches).format_feet_inches(16), "?");
    }
    assert_eq!(Length::from_inches(1.0).feet_inches(0), None);
    assert_eq!(Length::from_inches(f64::NAN).format_mm(), "? mm");
}

#[test]
fn metric() {
    let mm = |mm| Length::from_mm(mm).format_mm();
    assert_eq!(mm(2226.0), "2226 mm");
    assert_eq!(mm(2225.675), "2226 mm");
    assert_eq!(mm(12.0), "12 mm");
    assert_eq!(mm(9.5), "9.5 mm");
    assert_eq!(mm(99.96), "100 mm");
    assert_eq!(mm(-6.35), "-6.4 mm");
    assert_eq!(mm(-0.01), "0 mm");
    assert_eq!(Length::from_mm(2226.0).format_m(), "2.226 m");
    assert_eq!(Length::from_mm(2500.0).format_m(), "2.5 m");
}

#[test]
fn echo_names_both_systems() {
    let tape = Length::from_inches(87.625);
    assert_eq!(echo(tape, 16, false), "7' 3 5/8\" = 2226 mm");
    assert_eq!(echo(tape, 16, true), "2226 mm = 7' 3 5/8\"");
    assert_eq!(
        echo(Length::from_inches(87.6), 16, false),
        "≈ 7' 3 5/8\" = 2225 mm"
    );
    assert_eq!(
        echo(Length::from_mm(2226.0), 16, true),
        "2226 mm ≈ 7' 3 5/8\""
    );
    assert_eq!(echo(Length::from_mm(25.4), 16, true), "25.4 mm = 1\"");
}

#[test]
fn fixed_numbers() {
    assert_eq!(fixed(1.005, 2), "1");
    assert_eq!(fixed(1.006, 2), "1.01");
    assert_eq!(fixed(2.5, 0), "3");
    assert_eq!(fixed(-2.5, 0), "-3");
    assert_eq!(fixed(100.0, 0), "100");
    assert_eq!(fixed(100.0, 3), "100");
    assert_eq!(fixed(0.1 + 0.2, 6), "0.3");
    assert_eq!(fixed(-0.0, 1), "0");
    assert_eq!(fixed(-0.4, 0), "0");
    assert_eq!(fixed(1e20, 2), "100000000000000000000");
    assert_eq!(fixed(f64::NAN, 2), "?");
}
