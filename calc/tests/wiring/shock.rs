//! Currents through the body, ground-fault trip times, floating conductors.

use calc::wiring::shock::{Floating, body_current_ma, gfci_longest_trip_s, phantom};

use crate::worked::examples;

#[test]
fn worked_trip_times() {
    for example in examples("gfci_max_trip_time") {
        let seconds = gfci_longest_trip_s(example.number("fault_mA")).unwrap();
        example.check(|key| match key {
            "max_trip_s" => seconds.into(),
            other => panic!("{other}"),
        });
    }
    for fault_ma in [5.9, 264.1, -6.0, f64::NAN] {
        assert!(gfci_longest_trip_s(fault_ma).is_err());
    }
}

#[test]
fn worked_phantom_voltages() {
    for example in examples("phantom_voltage") {
        let floating = Floating {
            source_v: example.number("source_V"),
            frequency_hz: example.number("freq_Hz"),
            to_hot_pf_per_ft: example.number("c_to_hot_pF_ft"),
            to_ground_pf_per_ft: example.number("c_to_ground_pF_ft"),
            length_ft: example.number("length_ft"),
            meter_ohm: example.number("meter_ohm"),
            meter_pf: example.number("meter_pF"),
        };
        let answer = phantom(floating).unwrap();
        example.check(|key| match key {
            "reading_V" => answer.reading_v.into(),
            "max_current_uA" => answer.most_current_ua.into(),
            other => panic!("{other}"),
        });
        for meter_ohm in [0.0, -1.0, f64::NAN] {
            assert!(
                phantom(Floating {
                    meter_ohm,
                    ..floating
                })
                .is_err()
            );
        }
        assert!(
            phantom(Floating {
                length_ft: -1.0,
                ..floating
            })
            .is_err()
        );
    }
}

#[test]
fn worked_body_currents() {
    for example in examples("body_current") {
        let amps = body_current_ma(example.number("volts"), example.number("body_ohm")).unwrap();
        example.check(|key| match key {
            "current_mA" => amps.into(),
            other => panic!("{other}"),
        });
    }
    assert!(body_current_ma(120.0, 0.0).is_err() && body_current_ma(f64::NAN, 1000.0).is_err());
}
