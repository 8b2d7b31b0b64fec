//! Amounts and temperatures as they are typed.

use calc::job::fields::{self, Field, ambient};
use calc::job::{Typed, Units};
use calc::quantity::EntryRefusal;
use calc::wiring::tables::Ambient;
use proptest::prelude::*;

#[track_caller]
fn reads(field: Field, text: &str, expected: f64) {
    let got = field.read(&Typed::plain(text)).unwrap();
    assert!((got - expected).abs() < 1e-9, "{text}: {got}");
}

#[test]
fn an_amount_may_name_its_unit() {
    reads(fields::RATING, "15", 15.0);
    reads(fields::RATING, "15 A", 15.0);
    reads(fields::RATING, "15a", 15.0);
    reads(fields::RATING, " 15 amps ", 15.0);
    reads(fields::LOAD_WATTS, "1.5 kW", 1500.0);
    reads(fields::LOAD_WATTS, "1500W", 1500.0);
    reads(fields::LOAD_AMPS, "12 1/2 A", 12.5);
    reads(fields::LOAD_AMPS, "250 mA", 0.25);
    reads(fields::MEASURED_VOLTS, "120,9 V", 120.9);
    reads(fields::LOAD_OHMS, "9.6 \u{3a9}", 9.6);
    reads(fields::BOX_VOLUME, "20.3", 20.3);
    reads(fields::RUN, "34", 34.0 * 12.0);
}

#[test]
fn another_unit_is_refused() {
    for (field, text) in [
        (fields::RATING, "15 V"),
        (fields::RATING, "A"),
        (fields::LOAD_WATTS, "10 A"),
        (fields::MEASURED_VOLTS, "120 W"),
        (fields::RATING, "15 A A"),
    ] {
        let refusal = field.read(&Typed::plain(text)).unwrap_err();
        assert!(
            matches!(refusal, EntryRefusal::Number(_) | EntryRefusal::Blank),
            "{text}: {refusal:?}"
        );
    }
    assert!(matches!(
        fields::RATING.read(&Typed::new("15", "mm")),
        Err(EntryRefusal::UnknownUnit { .. })
    ));
    assert_eq!(
        fields::RATING.read(&Typed::plain(" ")),
        Err(EntryRefusal::Blank)
    );
}

#[test]
fn a_temperature_keeps_the_unit_of_its_day() {
    let typed = fields::AMBIENT.keep("122", Units::FeetInches);
    assert_eq!(typed, Typed::new("122", "degF"));
    assert_eq!(ambient(&typed), Ok(Ambient::Fahrenheit(122.0)));
    // 122 F is 50 C exactly (NIST SP 811, appendix B).
    assert_eq!(fields::AMBIENT.read(&typed), Ok(50.0));
    let typed = fields::AMBIENT.keep("50", Units::Metric);
    assert_eq!(ambient(&typed), Ok(Ambient::Celsius(50.0)));
    assert_eq!(
        ambient(&Typed::new("122 \u{b0}F", "degC")),
        Ok(Ambient::Fahrenheit(122.0))
    );
    assert_eq!(ambient(&Typed::plain("50 C")), Ok(Ambient::Celsius(50.0)));
    assert!(ambient(&Typed::plain("200 F")).is_err());
    assert!(ambient(&Typed::new("20", "in")).is_err());
}

proptest! {
    #[test]
    fn any_text_is_answered(text in any::<String>(), unit in "(|degC|degF|in)") {
        let typed = Typed::new(text, unit);
        let _ = ambient(&typed);
        for field in [fields::RATING, fields::LOAD_WATTS, fields::LOAD_OHMS, fields::AMBIENT] {
            if let Ok(value) = field.read(&typed) {
                prop_assert!(value.is_finite());
            }
        }
    }
}
