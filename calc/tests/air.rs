//! Exhaust rates, ducts and fans against tables that were put together apart from this code: see the heads of the files in
//! `calc/tests/data/air/` for where each value is from and how far it was checked.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test that can't read its case has failed"
)]

use calc::air::duct::{self, Duct, DuctKind, MostLength, code_length, friction, round_diameter_in};
use calc::air::fan::{Curve, FoundBy, RatingPoint, flow_left};
use calc::air::load::{LoadAsk, load};
use calc::air::rate::{self, ExhaustRoom, Fixture, Governs, RateAsk};
use calc::air::{AirField, AirRefusal, ExhaustAsk, Verdict, exhaust};
use proptest::prelude::*;
use rows::{expected, number, row, rows};

#[path = "finish/rows.rs"]
mod rows;

fn straight(diameter_in: f64, kind: DuctKind, length_ft: f64) -> Duct {
    Duct {
        diameter_in,
        length_ft,
        kind,
        elbows: 0,
        elbow_ft: duct::ELBOW_FT,
        cap_ft: 0.0,
    }
}

fn fan(points: &[(f64, f64)], shutoff_inwg: Option<f64>) -> Curve {
    Curve {
        points: points
            .iter()
            .map(|(static_inwg, cfm)| RatingPoint {
                static_inwg: *static_inwg,
                cfm: *cfm,
            })
            .collect(),
        shutoff_inwg,
    }
}

fn kind(name: &str) -> DuctKind {
    match name {
        "smooth metal" | "smooth" => DuctKind::Smooth,
        "flexible, stretched" | "flex" => DuctKind::Flexible,
        other => panic!("{other}"),
    }
}

#[test]
fn friction_rows() {
    for row in rows("air/duct_friction.csv") {
        let of = straight(number(&row["diameter_in"]), kind(&row["duct"]), 100.0);
        let found = friction(&of, number(&row["cfm"])).unwrap();
        assert_eq!(of.kind.roughness_ft(), number(&row["roughness_ft"]));
        for (ours, column) in [
            (found.velocity_fpm, "velocity_fpm"),
            (found.reynolds, "reynolds"),
            (found.factor, "friction_factor"),
            (found.inwg_per_100ft, "dp_inwg_per_100ft"),
            (25.0 / found.inwg_per_100ft, "length_for_quarter_inch_ft"),
        ] {
            let theirs = number(&row[column]);
            let digits = if column.starts_with("length") {
                1e-4
            } else {
                1e-7
            };
            assert!(
                (ours / theirs - 1.0).abs() < digits,
                "{column}: {ours} {theirs}"
            );
        }
        assert!((found.inwg - found.inwg_per_100ft).abs() < 1e-12);
        if of.kind == DuctKind::Smooth {
            // The public formula 0.109136 q^1.9 / d^5.02, within 9 %.
            let public = 0.109_136 * found.cfm.powf(1.9) / of.diameter_in.powf(5.02);
            assert!((found.inwg / public - 1.0).abs() < 0.09);
        }
    }
    let a17 = friction(&straight(4.0, DuctKind::Smooth, 100.0), 80.0).unwrap();
    assert!((a17.inwg / expected("A17") - 1.0).abs() < 1e-6);
}

#[test]
fn laminar_flow() {
    // Hagen and Poiseuille: dp = 128 mu L Q / (pi D^4 gc), by hand for 2 cfm in 4 in, 100 ft: Re 783.
    let found = friction(&straight(4.0, DuctKind::Smooth, 100.0), 2.0).unwrap();
    let (mu, q, d) = (1.22e-5, 2.0 / 60.0, 1.0 / 3.0_f64);
    let psf = 128.0 * mu * 100.0 * q / (std::f64::consts::PI * d.powi(4) * 32.174);
    assert!(found.reynolds < 2300.0);
    assert!((found.inwg / (psf / 5.2023) - 1.0).abs() < 1e-12);
    assert_eq!(
        friction(&straight(4.0, DuctKind::Smooth, 100.0), 0.0)
            .unwrap()
            .inwg,
        0.0
    );
}

#[test]
fn code_lengths() {
    let flows = duct::DUCT_FLOWS_CFM;
    let reference = rows("air/duct_max_length.csv");
    assert_eq!(reference.len(), duct::DUCT_LENGTHS.len());
    for (row, ours) in reference.iter().zip(&duct::DUCT_LENGTHS) {
        let (diameter_in, kind) = (number(&row["diameter_in"]), kind(&row["duct"]));
        assert_eq!((ours.diameter_in, ours.kind), (diameter_in, kind));
        for cfm in flows {
            let want = match row[&format!("cfm_{cfm}")].as_str() {
                "NL" => MostLength::NoLimit,
                "X" => MostLength::NotAllowed,
                feet => MostLength::Ft(number(feet)),
            };
            let of = straight(diameter_in, kind, 1.0);
            assert_eq!(code_length(&of, cfm).unwrap(), Some(want));
            // Between two: the next larger flow, the next smaller diameter.
            assert_eq!(code_length(&of, cfm - 1.0).unwrap(), Some(want));
            let wider = straight(diameter_in + 0.5, kind, 1.0);
            assert_eq!(code_length(&wider, cfm).unwrap(), Some(want));
        }
    }
    let of = |elbows, kind| Duct {
        elbows,
        ..straight(4.0, kind, 1.0)
    };
    let at_80 = |elbows, kind| code_length(&of(elbows, kind), 80.0).unwrap().unwrap();
    assert_eq!(at_80(1, DuctKind::Smooth), MostLength::Ft(expected("A13")));
    assert_eq!(at_80(2, DuctKind::Smooth), MostLength::Ft(1.0));
    assert_eq!(at_80(3, DuctKind::Smooth), MostLength::NotAllowed);
    assert_eq!(at_80(1, DuctKind::Flexible), MostLength::NotAllowed);
    // Above the table and below it.
    assert_eq!(code_length(&of(0, DuctKind::Smooth), 301.0).unwrap(), None);
    assert_eq!(
        code_length(&straight(2.5, DuctKind::Smooth, 1.0), 50.0).unwrap(),
        None
    );
    assert_eq!(round_diameter_in(6.0, 6.0).unwrap(), 6.0);
}

#[test]
fn rates() {
    let reference = rows("air/fan_rates.csv");
    let rate_of = |rule: &str, source: &str| {
        let mut found = reference
            .iter()
            .filter(|row| row["rule"] == rule && row["source"].starts_with(source));
        number(
            found.next().unwrap()["value_cfm"]
                .split(' ')
                .next()
                .unwrap(),
        )
    };
    for row in &rate::CODE_RATES {
        let name = match row.room {
            ExhaustRoom::Bathroom => "bathroom",
            ExhaustRoom::Kitchen => "kitchen",
        };
        let of = |way: &str| rate_of(&format!("{name}, {way}"), "IRC 2021");
        assert_eq!(row.intermittent_cfm, of("intermittent"));
        assert_eq!(row.continuous_cfm, of("continuous"));
        let ask = RateAsk {
            continuous: true,
            ..RateAsk::new(row.room, 300.0)
        };
        assert_eq!(rate::rate(&ask).unwrap().required_cfm, of("continuous"));
    }
    assert_eq!(rate_of("bathroom, demand controlled", "ASHRAE"), 50.0);
    for row in &rate::FIXTURE_RATES {
        let name = match row.fixture {
            Fixture::Toilet => "toilet",
            Fixture::Shower => "shower",
            Fixture::Tub => "bath tub",
            Fixture::JettedTub => "jetted tub",
        };
        let rule = format!("HVI practice, over 100 sq ft: {name}");
        assert_eq!(row.cfm, rate_of(&rule, "HVI"));
    }
    assert_eq!(
        rate::AREA_CFM_PER_FT2,
        rate_of("HVI practice, bathroom up to 100 sq ft", "HVI")
    );
    let value = |rule| number(&row(&reference, "rule", rule)["value_cfm"]);
    assert_eq!(rate::RUN_ON_MINUTES, value("run-on"));
    assert_eq!(rate::AIR_CHANGES_PER_HOUR, value("air changes"));
    assert_eq!(rate::WINDOW_FT2, value("window instead"));
    assert_eq!(
        rate::OUTLET_FROM_OPENING_FT,
        value("exhaust outlet from property")
    );
    assert_eq!(
        rate::OUTLET_FROM_INTAKE_FT,
        value("exhaust outlet from mechanical")
    );
}

#[test]
fn rate_examples() {
    let bath = |area| RateAsk::new(ExhaustRoom::Bathroom, area);
    // A01: 40, then 50.
    let small = rate::rate(&bath(40.0)).unwrap();
    assert_eq!(
        (small.area_cfm, small.required_cfm, small.governs),
        (Some(40.0), 50.0, Governs::Code)
    );
    let large = RateAsk {
        tubs: 1,
        showers: 1,
        toilets: 1,
        ..bath(240.0)
    };
    let large = rate::rate(&large).unwrap();
    assert_eq!(
        (large.required_cfm, large.governs),
        (expected("A02"), Governs::Fixtures)
    );
    // Just at 100 square feet by area, just above it by fixture.
    assert_eq!(rate::rate(&bath(100.0)).unwrap().required_cfm, 100.0);
    let above = rate::rate(&bath(100.5)).unwrap();
    assert!(above.no_fixtures_counted);
    assert_eq!(above.required_cfm, 50.0);
    assert!((small.required_l_per_s - 23.597).abs() < 0.001);
}

#[test]
fn equivalent_lengths() {
    let reference = rows("air/elbow_equivalent_length.csv");
    let feet = |fitting: &str| number(&row(&reference, "fitting", fitting)["equivalent_ft"]);
    assert_eq!(duct::ELBOW_FT, feet("any elbow"));
    assert_eq!(duct::ELBOW_DEDUCTION_FT, feet("any elbow"));
    assert_eq!(duct::CAP_FT.typical, feet("wall cap"));
    let range = &row(&reference, "fitting", "wall cap")["source"];
    assert!(range.contains(&format!(
        "range {} to {}",
        duct::CAP_FT.low,
        duct::CAP_FT.high
    )));
    for elbow in &duct::ELBOWS_4IN {
        let made = if elbow.smooth { "smooth" } else { "mitred" };
        let name = format!(
            "{} in radius {made} {} elbow",
            elbow.radius_in, elbow.degrees
        );
        assert!((feet(&name) - elbow.equivalent_ft).abs() < 1e-6, "{name}");
    }
    let a12 = Duct {
        elbows: 2,
        cap_ft: 30.0,
        ..straight(4.0, DuctKind::Smooth, 10.0)
    };
    assert_eq!(a12.equivalent_ft(), expected("A12"));
}

#[test]
fn fan_meets_duct() {
    let of = Duct {
        elbows: 2,
        cap_ft: 30.0,
        ..straight(4.0, DuctKind::Smooth, 10.0)
    };
    // 70 ft: at 80 cfm the duct takes 0.7 x 0.4009 = 0.2806 in, so a fan of 80 at 0.1 and 40 at 0.3 meets it between.
    let two = fan(&[(0.3, 40.0), (0.1, 80.0)], None);
    let left = flow_left(&two, &of).unwrap();
    assert_eq!(left.found_by, FoundBy::BetweenPoints);
    // On both curves at once.
    let gives = 0.1 + 0.2 * (80.0 - left.about_cfm) / 40.0;
    assert!((gives - left.friction.inwg).abs() < 1e-9);
    assert!((left.friction_at_rated.inwg - 0.7 * 0.400_910_8).abs() < 1e-6);
    // Known at one point only: between bounds.
    let one = flow_left(&fan(&[(0.1, 80.0)], None), &of).unwrap();
    assert_eq!(
        (one.found_by, one.most_cfm),
        (FoundBy::BeyondLastPoint, 80.0)
    );
    assert!((friction(&of, one.least_cfm).unwrap().inwg - 0.1).abs() < 1e-9);
    assert!(one.least_cfm < left.about_cfm);
    // With a shutoff, on p = s - c q2.
    let shut = flow_left(&fan(&[(0.1, 80.0)], Some(0.5)), &of).unwrap();
    let gives = 0.5 - 0.4 * (shut.about_cfm / 80.0).powi(2);
    assert!((gives - shut.friction.inwg).abs() < 1e-9);
    assert!((one.least_cfm..80.0).contains(&shut.about_cfm));
    // A short wide duct takes next to nothing.
    let wide = flow_left(&two, &straight(6.0, DuctKind::Smooth, 3.0)).unwrap();
    assert_eq!(
        (wide.found_by, wide.about_cfm, wide.choked_percent),
        (FoundBy::BelowFirstPoint, 80.0, 0.0)
    );
    // Two ratings of the same flow: it holds between them.
    let flat = flow_left(&fan(&[(0.1, 80.0), (0.3, 80.0)], None), &of).unwrap();
    assert!((flat.about_cfm - 80.0).abs() < 1e-9);
}

#[test]
fn a_bath_in_all() {
    let ask = ExhaustAsk {
        rate: RateAsk::new(ExhaustRoom::Bathroom, 40.0),
        duct: Duct {
            elbows: 2,
            cap_ft: 30.0,
            ..straight(4.0, DuctKind::Flexible, 60.0)
        },
        fan: fan(&[(0.1, 80.0)], None),
    };
    // What a catalogue says at 0.1 in says nothing about 0.25 in.
    let one = exhaust(&ask).unwrap();
    assert_eq!(
        (one.verdict, one.rated_at_code_cfm, one.code_length),
        (Verdict::Unknown, None, None)
    );
    let two = ExhaustAsk {
        fan: fan(&[(0.1, 80.0), (0.25, 60.0), (0.4, 10.0)], None),
        ..ask.clone()
    };
    let two = exhaust(&two).unwrap();
    // At 50 cfm the duct of 120 ft in all takes 1.2 x 0.2428 = 0.291 in, and the fan moves 50 at 0.28 in.
    assert_eq!(two.verdict, Verdict::Short);
    assert_eq!(
        (two.rated_at_code_cfm, two.code_length_held),
        (Some(60.0), Some(false))
    );
    assert!(two.short_by_least_cfm > 0.0);
    for step in two.working() {
        assert!(step.result.value.is_finite());
    }
    let good = ExhaustAsk {
        duct: Duct {
            cap_ft: 30.0,
            ..straight(6.0, DuctKind::Smooth, 10.0)
        },
        fan: fan(&[(0.1, 80.0), (0.25, 60.0)], None),
        ..ask
    };
    let good = exhaust(&good).unwrap();
    assert_eq!(
        (good.verdict, good.code_length_held),
        (Verdict::Enough, Some(true))
    );
}

#[test]
fn loads() {
    let ask = LoadAsk {
        volts: 120.0,
        fan_amps: None,
        fan_watts: 30.0,
        light_watts: 9.0,
        heater_watts: 1500.0,
    };
    // By hand: (30 + 9 + 1500) / 120.
    let answer = load(&ask).unwrap();
    assert!((answer.amps - 12.825).abs() < 1e-12 && answer.fan_by_watts);
    assert!((answer.volt_amps - 1539.0).abs() < 1e-9);
    assert_eq!(
        load(&LoadAsk { volts: 0.0, ..ask }),
        Err(AirRefusal::Nothing {
            field: AirField::Volts
        })
    );
    assert!(
        load(&LoadAsk {
            fan_amps: Some(f64::NAN),
            ..ask
        })
        .is_err()
    );
}

#[test]
fn refusals() {
    let of = straight(4.0, DuctKind::Smooth, 10.0);
    let no = |fan: &Curve| flow_left(fan, &of).unwrap_err();
    assert_eq!(no(&fan(&[], None)), AirRefusal::NoRating);
    assert!(matches!(
        no(&fan(&[(0.1, 50.0), (0.2, 60.0)], None)),
        AirRefusal::NotFalling { .. }
    ));
    assert!(matches!(
        no(&fan(&[(0.1, 60.0), (0.1, 50.0)], None)),
        AirRefusal::NotFalling { .. }
    ));
    assert!(matches!(
        no(&fan(&[(0.1, 60.0)], Some(0.1))),
        AirRefusal::ShutoffTooLow { .. }
    ));
    assert!(matches!(
        no(&fan(&[(0.1, 0.0)], None)),
        AirRefusal::Nothing {
            field: AirField::Flow
        }
    ));
    assert!(matches!(
        no(&fan(&[(0.1, 50.0); 21], None)),
        AirRefusal::TooManyPoints { count: 21 }
    ));
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(flow_left(&fan(&[(bad, 50.0)], None), &of).is_err());
        assert!(flow_left(&fan(&[(0.1, bad)], None), &of).is_err());
        assert!(flow_left(&fan(&[(0.1, 50.0)], Some(bad)), &of).is_err());
        assert!(friction(&of, bad).is_err());
        assert!(friction(&straight(bad, DuctKind::Smooth, 1.0), 50.0).is_err());
        assert!(friction(&straight(4.0, DuctKind::Smooth, bad), 50.0).is_err());
        assert!(rate::rate(&RateAsk::new(ExhaustRoom::Bathroom, bad)).is_err());
        assert!(round_diameter_in(bad, 4.0).is_err());
    }
    assert_eq!(
        friction(&straight(0.0, DuctKind::Smooth, 1.0), 50.0),
        Err(AirRefusal::Nothing {
            field: AirField::Diameter
        })
    );
}

proptest! {
    /// More elbows, more length, a narrower or rougher duct never move more air; more flow never takes less.
    #[test]
    fn more_in_the_way_never_moves_more(
        diameter in 3.0..8.0f64, length in 0.0..80.0f64, elbows in 0_u32..6, cap in 0.0..40.0f64,
        flow in 40.0..200.0f64, drops in prop::collection::vec((0.02..0.2f64, 0.0..20.0f64), 0..4),
        shutoff in prop::option::of(0.05..1.0f64),
    ) {
        let mut points = vec![(0.1, flow)];
        for (up, down) in drops {
            let (p, q) = points[points.len() - 1];
            points.push((p + up, (q - down).max(1.0)));
        }
        let last = points[points.len() - 1].0;
        let curve = fan(&points, shutoff.map(|more| last + more));
        let base = Duct { diameter_in: diameter, length_ft: length, kind: DuctKind::Smooth, elbows, elbow_ft: 15.0, cap_ft: cap };
        let free = flow_left(&curve, &base).unwrap();
        prop_assert!(free.least_cfm > 0.0 && free.least_cfm <= free.most_cfm);
        prop_assert!(free.most_cfm <= flow + 1e-9);
        for worse in [
            Duct { elbows: elbows + 1, ..base },
            Duct { length_ft: length + 5.0, ..base },
            Duct { diameter_in: diameter - 0.5, ..base },
            Duct { kind: DuctKind::Flexible, ..base },
            Duct { cap_ft: cap + 10.0, ..base },
        ] {
            let left = flow_left(&curve, &worse).unwrap();
            prop_assert!(left.least_cfm <= free.least_cfm + 1e-9);
            prop_assert!(left.most_cfm <= free.most_cfm + 1e-9);
        }
        let more = friction(&base, flow + 1.0).unwrap();
        prop_assert!(friction(&base, flow).unwrap().inwg <= more.inwg);
    }
}
