//! Every row of every table against the reference values.

use calc::job::CodeEdition;
use calc::wiring::code::Rule;
use calc::wiring::conductor::{Construction, Metal, Rating, Size};
use calc::wiring::tables::*;
use serde_json::json;

use crate::data::{number, rows, size};

const RATINGS: [Rating; 3] = [Rating::C60, Rating::C75, Rating::C90];
const EDITIONS: [CodeEdition; 3] = [CodeEdition::E2017, CodeEdition::E2020, CodeEdition::E2023];

/// The name that a value is written by in answers.
fn name(value: impl serde::Serialize) -> String {
    json!(value).as_str().unwrap().to_owned()
}

#[test]
fn ampacities() {
    let reference = rows("ampacity.csv");
    assert_eq!(reference.len(), AMPACITY.len());
    for (row, ours) in reference.iter().zip(&AMPACITY) {
        assert_eq!(size(&row["size"]), ours.size);
        assert_eq!(row["size_unit"] == "kcmil", ours.size.is_kcmil());
        for (rating, column) in RATINGS.into_iter().zip(["60c", "75c", "90c"]) {
            let copper = number(&row[&format!("cu_{column}")]);
            let aluminum = number(&row[&format!("al_{column}")]);
            assert_eq!(ampacity_a(ours.size, Metal::Copper, rating), copper);
            assert_eq!(ampacity_a(ours.size, Metal::Aluminum, rating), aluminum);
            assert_eq!(
                ampacity_a(ours.size, Metal::CopperCladAluminum, rating),
                aluminum
            );
        }
    }
}

#[test]
fn ambient_factors() {
    let reference = rows("ambient_correction.csv");
    assert_eq!(reference.len(), AMBIENT_CORRECTION.len());
    for row in &reference {
        let factors = ["60c", "75c", "90c"].map(|c| number(&row[&format!("factor_{c}")]));
        // Both printed ends of each range, in both units.
        for (unit, of) in [
            ("c", Ambient::Celsius as fn(f64) -> Ambient),
            ("f", Ambient::Fahrenheit),
        ] {
            let most = number(&row[&format!("ambient_{unit}_max")]).unwrap();
            let least = number(&row[&format!("ambient_{unit}_min")]).unwrap_or(most - 1.0);
            for degrees in [least, most] {
                assert_eq!(ambient_row(of(degrees)).unwrap().factor, factors);
            }
        }
        // The formula of the same section, at the top of the range, to the two printed decimals.
        let most_c = number(&row["ambient_c_max"]).unwrap();
        for (rating, factor) in RATINGS.into_iter().zip(factors) {
            let formula = ((rating.celsius() - most_c) / (rating.celsius() - 30.0)).sqrt();
            if let Some(factor) = factor {
                assert!(
                    (formula - factor).abs() <= 0.005 + 1e-9,
                    "{most_c} {formula}"
                );
            }
        }
    }
    assert_eq!(
        ambient_row(Ambient::Celsius(30.0)).unwrap().factor,
        [Some(1.0); 3]
    );
    // Between two printed ranges: the hotter one.
    assert_eq!(
        ambient_row(Ambient::Celsius(30.5)),
        ambient_row(Ambient::Celsius(35.0))
    );
    assert_eq!(ambient_row(Ambient::Celsius(85.1)), None);
    assert_eq!(ambient_row(Ambient::Fahrenheit(185.5)), None);
    assert_eq!(ambient_row(Ambient::Celsius(f64::NAN)), None);
}

#[test]
fn count_factors() {
    let reference = rows("conductor_count_adjustment.csv");
    assert_eq!(reference.len(), COUNT_ADJUSTMENT.len());
    for row in &reference {
        let factor = number(&row["factor"]).unwrap();
        let least: u32 = row["n_min"].parse().unwrap();
        let most: u32 = row["n_max"].parse().unwrap_or(500);
        assert_eq!(count_factor(least), factor);
        assert_eq!(count_factor(most), factor);
    }
    assert_eq!(count_factor(0), 1.0);
}

#[test]
fn small_conductor_caps() {
    let reference = rows("small_conductor_overcurrent.csv");
    assert_eq!(reference.len(), SMALL_CONDUCTORS.len());
    for row in &reference {
        let metals: &[Metal] = match row["material"].as_str() {
            "copper" => &[Metal::Copper],
            "copper-clad aluminium" => &[Metal::CopperCladAluminum],
            "aluminium or copper-clad aluminium" => &[Metal::Aluminum, Metal::CopperCladAluminum],
            other => panic!("{other}"),
        };
        for &metal in metals {
            for edition in EDITIONS {
                let section = match edition {
                    CodeEdition::E2023 => &row["section_2023"],
                    _ => &row["section_2020"],
                };
                match small_conductor(size(&row["awg"]), metal, edition) {
                    Some((ours, paragraph)) => {
                        assert_eq!(Some(ours.most_a), number(&row["max_ocpd_a"]));
                        assert_eq!(paragraph, section);
                        assert_eq!(
                            ours.most_continuous_a.is_some(),
                            !row["condition"].is_empty()
                        );
                        if let Some(most) = ours.most_continuous_a {
                            let says = format!("continuous load not over {most} A");
                            assert!(row["condition"].contains(&says), "{says}");
                        }
                    }
                    None => assert!(section.is_empty()),
                }
            }
        }
    }
    assert_eq!(
        small_conductor(Size::Awg8, Metal::Copper, CodeEdition::E2023),
        None
    );
}

#[test]
fn standard_ratings() {
    let reference = rows("standard_breaker_sizes.csv");
    assert_eq!(reference.len(), STANDARD_RATINGS.len());
    for (row, ours) in reference.iter().zip(&STANDARD_RATINGS) {
        assert_eq!(Some(ours.rating_a), number(&row["rating_a"]));
        assert_eq!(row["kind_2023"] == "breaker_and_fuse", ours.breaker_2023);
        assert_eq!(
            row["kind_2020_2017"] == "breaker_and_fuse",
            ours.breaker_before
        );
        for edition in EDITIONS {
            let kind = &row[if edition == CodeEdition::E2023 {
                "kind_2023"
            } else {
                "kind_2020_2017"
            }];
            let is_one = breaker_at_least_a(ours.rating_a, edition) == Some(ours.rating_a)
                && breaker_at_most_a(ours.rating_a, edition) == Some(ours.rating_a);
            assert_eq!(is_one, kind == "breaker_and_fuse", "{}", ours.rating_a);
        }
    }
}

#[test]
fn boxes() {
    let reference = rows("box_volume.csv");
    assert_eq!(reference.len(), BOX_VOLUMES.len());
    for (row, ours) in reference.iter().zip(&BOX_VOLUMES) {
        assert_eq!(row["family"].to_lowercase(), name(ours.family));
        assert_eq!(row["trade_size_in"], ours.trade_size_in);
        assert_eq!(box_row(ours.family, &row["trade_size_in"]), Some(ours));
        assert_eq!(number(&row["volume_in3"]), Some(ours.volume_in3));
        assert_eq!(row["per_gang"] == "1", ours.per_gang);
        for ((awg, most), allowance) in ["18", "16", "14", "12", "10", "8", "6"]
            .into_iter()
            .zip(ours.most)
            .zip(&VOLUME_ALLOWANCES)
        {
            assert_eq!(number(&row[&format!("max_{awg}")]), Some(f64::from(most)));
            assert_eq!(allowance.size, size(awg));
            // Every count is the volume over the allowance, but for the one odd cell of the print.
            let odd = ours.trade_size_in == "4 x 1-1/4" && ours.volume_in3 == 12.5 && awg == "8";
            let counted = (ours.volume_in3 / allowance.allowance_in3 + 1e-9).floor();
            assert_eq!(
                counted,
                f64::from(most) - f64::from(u8::from(odd)),
                "{awg} {ours:?}"
            );
        }
    }
}

#[test]
fn volume_allowances() {
    let reference = rows("conductor_volume_allowance.csv");
    assert_eq!(reference.len(), VOLUME_ALLOWANCES.len());
    for row in &reference {
        assert_eq!(allowance_in3(size(&row["awg"])), number(&row["volume_in3"]));
    }
    assert_eq!(allowance_in3(Size::Awg4), None);
}

#[test]
fn resistances() {
    let reference = rows("conductor_resistance.csv");
    assert_eq!(reference.len(), RESISTANCE.len());
    let areas = rows("ampacity.csv");
    for (row, ours) in reference.iter().zip(&RESISTANCE) {
        let is =
            |column: &str, value: f64| assert_eq!(number(&row[column]), Some(value), "{row:?}");
        assert_eq!(
            (size(&row["size"]), &row["construction"]),
            (ours.size, &name(ours.construction))
        );
        assert_eq!(number(&row["strand_dia_in"]), ours.strand_dia_in);
        is("cmil", ours.area_cmil);
        is("strands", f64::from(ours.strands));
        is("overall_dia_in", ours.overall_dia_in);
        is("area_in2", ours.area_in2);
        is("cu_uncoated_ohm_kft", ours.copper_ohm_per_kft);
        is("cu_coated_ohm_kft", ours.coated_copper_ohm_per_kft);
        is("al_ohm_kft", ours.aluminum_ohm_per_kft);
        let area = areas
            .iter()
            .find(|area| area["size"] == row["size"])
            .unwrap();
        assert_eq!(number(&area["cmil"]), Some(ours.area_cmil));
        assert_eq!(ours.size.properties(ours.construction), Some(ours));
    }
}

/// The gauge by its definition, d = 0.005 x 92^((36 - n) / 39) in, and resistance by resistivity at 20 C (NBS
/// Handbook 100; 0.00393 and 0.00403 for each degree C) with a lay of 2 % in stranded wire.
#[test]
fn areas_and_resistances_by_formula() {
    for row in &RESISTANCE {
        let text = row.size.text();
        if !row.size.is_kcmil() {
            let gauge = match text.split_once('/') {
                Some((n, _)) => 1.0 - n.parse::<f64>().unwrap(),
                None => text.parse::<f64>().unwrap(),
            };
            let mils = 5.0 * 92f64.powf((36.0 - gauge) / 39.0);
            assert!((mils * mils / row.area_cmil - 1.0).abs() < 0.0027, "{text}");
        }
        let lay = if row.construction == Construction::Stranded {
            1.02
        } else {
            1.0
        };
        for (rho, alpha, table, within) in [
            (
                RHO_COPPER_OHM_CMIL_PER_FT,
                0.00393,
                row.copper_ohm_per_kft,
                0.0051,
            ),
            (
                RHO_ALUMINUM_OHM_CMIL_PER_FT,
                0.00403,
                row.aluminum_ohm_per_kft,
                0.0031,
            ),
        ] {
            let formula = rho * (1.0 + alpha * 55.0) * lay * 1000.0 / row.area_cmil;
            assert!(
                (formula / table - 1.0).abs() < within,
                "{text} {formula} {table}"
            );
        }
        // The circular-mil figures of common practice agree with stranded wire within 0.6 %.
        if row.construction == Construction::Stranded && row.size >= Size::Awg14 {
            let k = row.copper_ohm_per_kft * row.area_cmil / 1000.0;
            assert!(
                (k / K_COPPER_OHM_CMIL_PER_FT - 1.0).abs() < 0.006,
                "{text} {k}"
            );
            let k = row.aluminum_ohm_per_kft * row.area_cmil / 1000.0;
            assert!(
                (k / K_ALUMINUM_OHM_CMIL_PER_FT - 1.0).abs() < 0.006,
                "{text} {k}"
            );
        }
    }
}

#[test]
fn impedances() {
    let reference = rows("conductor_impedance.csv");
    assert_eq!(reference.len(), IMPEDANCE.len());
    for (row, ours) in reference.iter().zip(&IMPEDANCE) {
        assert_eq!(size(&row["size"]), ours.size);
        for (at, conduit) in ["pvc", "al", "steel"].into_iter().enumerate() {
            let cell = |prefix: &str| number(&row[&format!("{prefix}_{conduit}")]);
            let reactance = number(
                &row[if conduit == "steel" {
                    "xl_steel"
                } else {
                    "xl_pvc_al"
                }],
            );
            assert_eq!(reactance, Some(ours.reactance_ohm_per_kft[at]));
            assert_eq!(cell("r_cu"), ours.copper_ohm_per_kft[at]);
            assert_eq!(cell("r_al"), ours.aluminum_ohm_per_kft[at]);
            assert_eq!(cell("z085_cu"), ours.copper_z085_ohm_per_kft[at]);
            assert_eq!(cell("z085_al"), ours.aluminum_z085_ohm_per_kft[at]);
            // The printed effective impedance against note 2, within the rounding of two figures.
            for (r, z) in [
                (
                    ours.copper_ohm_per_kft[at],
                    ours.copper_z085_ohm_per_kft[at],
                ),
                (
                    ours.aluminum_ohm_per_kft[at],
                    ours.aluminum_z085_ohm_per_kft[at],
                ),
            ] {
                if let (Some(r), Some(z)) = (r, z) {
                    let ze = r * 0.85 + ours.reactance_ohm_per_kft[at] * 0.85f64.acos().sin();
                    assert!((ze / z - 1.0).abs() < 0.055, "{row:?} {ze}");
                }
            }
        }
    }
}

#[test]
fn voltages() {
    let reference = rows("nominal_voltage.csv");
    assert_eq!(reference.len(), VOLTAGE_RANGES.len());
    for (row, ours) in reference.iter().zip(&VOLTAGE_RANGES) {
        let editions = match row["edition_group"].as_str() {
            "all" => VoltageEditions::All,
            "to 2006" => VoltageEditions::To2006,
            "2011 on" => VoltageEditions::From2011,
            other => panic!("{other}"),
        };
        assert_eq!(
            (row["quantity"].clone(), row["range"].clone()),
            (name(ours.place), name(ours.range))
        );
        assert_eq!(ours.editions, editions);
        assert_eq!(number(&row["min_120v"]), Some(ours.least_leg_v));
        assert_eq!(number(&row["max_120v"]), Some(ours.most_leg_v));
        assert_eq!(number(&row["min_240v"]), Some(ours.least_across_v));
        assert_eq!(number(&row["max_240v"]), Some(ours.most_across_v));
    }
    let service = voltage_row(VoltagePlace::Service, VoltageRange::A).unwrap();
    assert_eq!((service.least_leg_v, service.most_leg_v), (114.0, 126.0));
    let use_b = voltage_row(VoltagePlace::Utilization, VoltageRange::B).unwrap();
    assert_eq!((use_b.least_leg_v, use_b.most_across_v), (104.0, 254.0));
}

#[test]
fn constants() {
    let ours = [
        ("alpha_cu_75", ALPHA_COPPER_PER_C),
        ("alpha_al_75", ALPHA_ALUMINUM_PER_C),
        ("rho_cu_20", RHO_COPPER_OHM_CMIL_PER_FT),
        ("rho_al_20", RHO_ALUMINUM_OHM_CMIL_PER_FT),
        ("k_cu_75", K_COPPER_OHM_CMIL_PER_FT),
        ("k_al_75", K_ALUMINUM_OHM_CMIL_PER_FT),
        ("vd_branch_recommended_pct", BRANCH_DROP_PERCENT),
        ("vd_feeder_recommended_pct", FEEDER_DROP_PERCENT),
        ("vd_total_recommended_pct", TOTAL_DROP_PERCENT),
        ("continuous_load_factor", CONTINUOUS_FACTOR),
        ("dwelling_lighting_va_per_ft2", LIGHTING_VA_PER_FT2),
        ("free_conductor_length_in", FREE_CONDUCTOR_IN),
        ("loop_counts_double_from_in", LOOP_COUNTS_TWICE_FROM_IN),
    ];
    let given = rows("constants.csv");
    // Each of ours against its row: a row that is missing fails, and so does one of the file that nobody holds.
    for (name, value) in ours {
        let row = given.iter().find(|row| row["name"] == name).unwrap();
        assert_eq!(number(&row["value"]), Some(value), "{name}");
    }
    // The trip limits of ground-fault interrupters belong to the shock questions.
    for row in given.iter().filter(|row| !row["name"].starts_with("gfci")) {
        assert!(ours.iter().any(|(name, _)| *name == row["name"]), "{row:?}");
    }
    // Without a row: sections 300.14, 310.15(C)(1), 314.16(A), 422.11(E), 430.22.
    assert_eq!((FREE_OUTSIDE_IN, SHORT_BUNDLE_IN), (3.0, 24.0));
    assert_eq!((METAL_BARRIER_IN3, NONMETALLIC_BARRIER_IN3), (0.5, 1.0));
    assert_eq!((APPLIANCE_SMALL_A, APPLIANCE_SMALL_DEVICE_A), (13.3, 20.0));
    assert_eq!((APPLIANCE_FACTOR, MOTOR_FACTOR), (1.5, 1.25));
}

/// Sections that moved between the editions, as the heads of the tables say.
#[test]
fn sections_by_edition() {
    let of = |rule: Rule| EDITIONS.map(|edition| rule.section(edition));
    assert_eq!(
        of(Rule::Ampacities),
        ["Table 310.15(B)(16)", "Table 310.16", "Table 310.16"]
    );
    assert_eq!(
        of(Rule::AmbientFactor),
        [
            "Table 310.15(B)(2)(a)",
            "Table 310.15(B)(1)",
            "Table 310.15(B)(1)(1)"
        ]
    );
    assert_eq!(
        of(Rule::CountFactor),
        [
            "Table 310.15(B)(3)(a)",
            "Table 310.15(C)(1)",
            "Table 310.15(C)(1)"
        ]
    );
    assert_eq!(
        of(Rule::FixedLoad),
        ["210.23(A)(2)", "210.23(A)(2)", "210.23(B)(2)"]
    );
    assert_eq!(of(Rule::SpaceHeating), ["424.3(B)", "424.4(B)", "424.4(B)"]);
    assert_eq!(
        of(Rule::Allowances),
        ["Table 314.16(B)", "Table 314.16(B)", "Table 314.16(B)(1)"]
    );
    // 210.23 got a new first paragraph in 2023, and 310.106 moved in 2020 (the older numbers from memory).
    assert_eq!(of(Rule::ThirtyAmp), ["210.23(B)", "210.23(B)", "210.23(C)"]);
    assert_eq!(of(Rule::FiftyAmp), ["210.23(C)", "210.23(C)", "210.23(D)"]);
    assert_eq!(
        of(Rule::PlugLoad),
        ["210.23(A)(1)", "210.23(A)(1)", "210.23(B)(1)"]
    );
    assert_eq!(of(Rule::CircuitRating), ["210.3", "210.18", "210.18"]);
    assert_eq!(of(Rule::LeastSize), ["310.106(A)", "310.3(A)", "310.3(A)"]);
    assert_eq!(of(Rule::ArcFault), ["210.12(A)", "210.12(A)", "210.12(B)"]);
    assert_eq!(
        Rule::LeastSize.citation(EDITIONS[0]),
        "NFPA 70-2017 310.106(A)"
    );
    // A section is of an article that the wiring rests on, and no two rules are the same but for their words.
    for rule in Rule::ALL {
        for edition in EDITIONS {
            let digits = rule
                .section(edition)
                .trim_start_matches(|c: char| !c.is_ascii_digit());
            let article: u32 = digits
                .split(|c: char| !c.is_ascii_digit())
                .next()
                .unwrap()
                .parse()
                .unwrap();
            let known = [
                9, 100, 110, 200, 210, 215, 225, 240, 250, 300, 310, 314, 334, 340, 404, 406, 408,
                422, 424, 430,
            ];
            assert!(known.contains(&article), "{rule:?}");
        }
    }
}
