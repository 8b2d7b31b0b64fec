// Largest overcurrent device of small conductors, amperes, after every correction and adjustment.
//
// Source: NFPA 70-2023 240.4(D)(1) to (D)(8); 70-2020 and 70-2017 240.4(D)(1) to (D)(7). Does not hold where
// 240.4(E) (taps) or 240.4(G) (specific equipment, such as motors) applies.
// `most_continuous_a`: the largest continuous load the row allows with its device.
// Status: 14, 12 and 10 AWG copper and 12 and 10 AWG aluminum confirmed in three published sources; the rest, and the
// limits of continuous load, from memory or from one text.

/// Caps by size and metal.
pub const SMALL_CONDUCTORS: [SmallConductorRow; 8] = [
    SmallConductorRow { size: Size::Awg18, metals: &[Metal::Copper], most_a: 7.0, most_continuous_a: Some(5.6), paragraph_2023: "240.4(D)(1)", paragraph_before: Some("240.4(D)(1)"), status: Status::FromMemory },
    SmallConductorRow { size: Size::Awg16, metals: &[Metal::Copper], most_a: 10.0, most_continuous_a: Some(8.0), paragraph_2023: "240.4(D)(2)", paragraph_before: Some("240.4(D)(2)"), status: Status::FromMemory },
    SmallConductorRow { size: Size::Awg14, metals: &[Metal::CopperCladAluminum], most_a: 10.0, most_continuous_a: Some(8.0), paragraph_2023: "240.4(D)(3)", paragraph_before: None, status: Status::FromMemory },
    SmallConductorRow { size: Size::Awg14, metals: &[Metal::Copper], most_a: 15.0, most_continuous_a: None, paragraph_2023: "240.4(D)(4)", paragraph_before: Some("240.4(D)(3)"), status: Status::Confirmed },
    SmallConductorRow { size: Size::Awg12, metals: &[Metal::Aluminum, Metal::CopperCladAluminum], most_a: 15.0, most_continuous_a: None, paragraph_2023: "240.4(D)(5)", paragraph_before: Some("240.4(D)(4)"), status: Status::Confirmed },
    SmallConductorRow { size: Size::Awg12, metals: &[Metal::Copper], most_a: 20.0, most_continuous_a: None, paragraph_2023: "240.4(D)(6)", paragraph_before: Some("240.4(D)(5)"), status: Status::Confirmed },
    SmallConductorRow { size: Size::Awg10, metals: &[Metal::Aluminum, Metal::CopperCladAluminum], most_a: 25.0, most_continuous_a: None, paragraph_2023: "240.4(D)(7)", paragraph_before: Some("240.4(D)(6)"), status: Status::Confirmed },
    SmallConductorRow { size: Size::Awg10, metals: &[Metal::Copper], most_a: 30.0, most_continuous_a: None, paragraph_2023: "240.4(D)(8)", paragraph_before: Some("240.4(D)(7)"), status: Status::Confirmed },
];
