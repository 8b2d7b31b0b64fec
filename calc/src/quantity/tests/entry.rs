//! Entries of the job document, with their units and limits.

use super::super::entry::*;
use super::super::{
    Area, AreaRange, AreaUnit, Length, LengthRange, LengthRefusal, LengthUnit, NumberRange, Slope,
    SlopeRange, SlopeUnit, Typed, Volume, VolumeRange, VolumeUnit, WholeRange,
};

#[test]
fn a_bare_number_keeps_the_unit_it_was_typed_in() {
    let any = LengthRange::any();
    let read = |typed: &Typed, field| read_length(typed, field, &any).map(|l| l.inches());
    for field in LengthUnit::ALL {
        assert_eq!(read(&Typed::new("87.6", "in"), field), Ok(87.6));
        assert_eq!(read(&Typed::new("7", "ft"), field), Ok(84.0));
        assert_eq!(read(&Typed::new("25.4", "mm"), field), Ok(1.0));
        // A text with units of its own means the same whatever was kept.
        assert_eq!(read(&Typed::new("7'", "mm"), field), Ok(84.0));
        assert_eq!(read(&Typed::new("7'", "?"), field), Ok(84.0));
        assert_eq!(
            read(&Typed::new("7", "gal"), field),
            Err(EntryRefusal::UnknownUnit {
                unit: "gal".to_owned()
            })
        );
    }
    assert_eq!(read(&Typed::plain("7"), LengthUnit::Feet), Ok(84.0));
}

#[test]
fn kept_units() {
    for (text, unit, kept) in [
        ("87.6", "in", true),
        ("87 5/8", "in", true),
        ("7' 3\"", "in", false),
        ("7 3-5/8", "mm", false),
        ("2226 mm", "in", false),
        ("7' 3 5/", "in", true),
        ("", "in", true),
        ("0.45", "ft3", true),
        ("12 L", "ft3", false),
        ("120", "ft2", true),
        ("120 sf", "m2", false),
        ("1/4", "in_per_4ft", true),
        ("1:12", "in_per_4ft", false),
        ("2%", "percent", false),
        ("12", "", true),
    ] {
        let expected = if kept {
            Typed::new(text, unit)
        } else {
            Typed::plain(text)
        };
        assert_eq!(Typed::kept(text, unit), expected);
    }
}

#[test]
fn blanks() {
    let blank = Typed::new("  ", "in");
    let any = LengthRange::any();
    assert_eq!(
        read_length(&blank, LengthUnit::Inches, &any),
        Err(EntryRefusal::Blank)
    );
    assert_eq!(optional_length(&blank, LengthUnit::Inches, &any), Ok(None));
    // Bad text is never taken for a blank.
    assert_eq!(
        optional_length(&Typed::plain("x"), LengthUnit::Inches, &any),
        Err(EntryRefusal::Length(LengthRefusal::NotUnderstood {
            piece: "x".to_owned(),
            at: 0
        }))
    );
    let blank = Typed::default();
    assert_eq!(
        optional_area(&blank, AreaUnit::SquareFeet, &AreaRange::any()),
        Ok(None)
    );
    assert_eq!(
        optional_volume(&blank, VolumeUnit::CubicFeet, &VolumeRange::any()),
        Ok(None)
    );
    assert_eq!(
        optional_slope(&blank, SlopeUnit::InPer4Ft, &SlopeRange::any()),
        Ok(None)
    );
    assert_eq!(optional_number(&blank, &NumberRange::any()), Ok(None));
    assert_eq!(optional_percent(&blank, &NumberRange::any()), Ok(None));
    assert_eq!(optional_whole(&blank, &WholeRange::any()), Ok(None));
}

#[test]
fn limits_are_told_with_their_unit() {
    let zero = Length::ZERO;
    let most = Length::from_feet(10.0);
    let read = |text: &str, unit: &str, allowed: &LengthRange| {
        read_length(&Typed::new(text, unit), LengthUnit::Inches, allowed)
    };
    let above = LengthRange::above(zero).at_most(most);
    let from = LengthRange::at_least(zero).below(most);
    assert_eq!(
        read("0", "mm", &above),
        Err(EntryRefusal::TooSmall {
            least: Quantity::Length(zero, LengthUnit::Millimeters),
            inclusive: false
        })
    );
    assert_eq!(read("0", "mm", &from), Ok(zero));
    assert_eq!(read("10", "ft", &above), Ok(most));
    assert_eq!(
        read("10", "ft", &from),
        Err(EntryRefusal::TooLarge {
            most: Quantity::Length(most, LengthUnit::Feet),
            inclusive: false
        })
    );
    assert_eq!(
        read("121", "", &above),
        Err(EntryRefusal::TooLarge {
            most: Quantity::Length(most, LengthUnit::Inches),
            inclusive: true
        })
    );
}

#[test]
fn other_quantities() {
    assert_eq!(
        read_volume(
            &Typed::new("2", "gal"),
            VolumeUnit::CubicFeet,
            &VolumeRange::any()
        ),
        Ok(Volume::from_gal(2.0))
    );
    assert_eq!(
        read_area(
            &Typed::new("200", "ft2"),
            AreaUnit::SquareMeters,
            &AreaRange::any()
        ),
        Ok(Area::from_ft2(200.0))
    );
    assert_eq!(
        read_slope(
            &Typed::new("12", "one_to"),
            SlopeUnit::InPer4Ft,
            &SlopeRange::at_least(Slope::from_ratio(0.0))
        ),
        Ok(Slope::from_ratio(1.0 / 12.0))
    );
    let percent = NumberRange::at_least(0.0).at_most(100.0);
    assert_eq!(read_percent(&Typed::plain("10 %"), &percent), Ok(10.0));
    assert_eq!(
        read_percent(&Typed::new("101", "percent"), &percent),
        Err(EntryRefusal::TooLarge {
            most: Quantity::Number(100.0),
            inclusive: true
        })
    );
    assert_eq!(
        read_number(&Typed::new("5", "in"), &NumberRange::any()),
        Err(EntryRefusal::UnknownUnit {
            unit: "in".to_owned()
        })
    );
    let count = WholeRange::at_least(1);
    assert_eq!(read_whole(&Typed::plain("3"), &count), Ok(3));
    assert_eq!(
        read_whole(&Typed::plain("2.5"), &count),
        Err(EntryRefusal::NotWhole { value: 2.5 })
    );
    assert_eq!(
        read_whole(&Typed::plain("0"), &count),
        Err(EntryRefusal::TooSmall {
            least: Quantity::Whole(1),
            inclusive: true
        })
    );
}
