// Factors for the ambient temperature, on a base of 30 C (86 F).
//
// Source: NFPA 70-2023 Table 310.15(B)(1)(1); 70-2020 Table 310.15(B)(1); 70-2017 Table 310.15(B)(2)(a).
// Each row holds from just above the row before it up to `most`, so that a reading between two printed ranges goes
// to the hotter one (common practice). Columns: conductors rated 60, 75 and 90 C; `None` where a conductor of that
// rating may not be used so hot.
// Status: confirmed in a published copy of IRC Table E3705.2; every factor agrees with sqrt((Tc - Ta) / (Tc - 30))
// at the top of its range.

/// Factors by ambient temperature, from the coldest.
pub const AMBIENT_CORRECTION: [AmbientRow; 16] = [
    AmbientRow { most_c: 10.0, most_f: 50.0, factor: [Some(1.29), Some(1.2), Some(1.15)] },
    AmbientRow { most_c: 15.0, most_f: 59.0, factor: [Some(1.22), Some(1.15), Some(1.12)] },
    AmbientRow { most_c: 20.0, most_f: 68.0, factor: [Some(1.15), Some(1.11), Some(1.08)] },
    AmbientRow { most_c: 25.0, most_f: 77.0, factor: [Some(1.08), Some(1.05), Some(1.04)] },
    AmbientRow { most_c: 30.0, most_f: 86.0, factor: [Some(1.0), Some(1.0), Some(1.0)] },
    AmbientRow { most_c: 35.0, most_f: 95.0, factor: [Some(0.91), Some(0.94), Some(0.96)] },
    AmbientRow { most_c: 40.0, most_f: 104.0, factor: [Some(0.82), Some(0.88), Some(0.91)] },
    AmbientRow { most_c: 45.0, most_f: 113.0, factor: [Some(0.71), Some(0.82), Some(0.87)] },
    AmbientRow { most_c: 50.0, most_f: 122.0, factor: [Some(0.58), Some(0.75), Some(0.82)] },
    AmbientRow { most_c: 55.0, most_f: 131.0, factor: [Some(0.41), Some(0.67), Some(0.76)] },
    AmbientRow { most_c: 60.0, most_f: 140.0, factor: [None, Some(0.58), Some(0.71)] },
    AmbientRow { most_c: 65.0, most_f: 149.0, factor: [None, Some(0.47), Some(0.65)] },
    AmbientRow { most_c: 70.0, most_f: 158.0, factor: [None, Some(0.33), Some(0.58)] },
    AmbientRow { most_c: 75.0, most_f: 167.0, factor: [None, None, Some(0.5)] },
    AmbientRow { most_c: 80.0, most_f: 176.0, factor: [None, None, Some(0.41)] },
    AmbientRow { most_c: 85.0, most_f: 185.0, factor: [None, None, Some(0.29)] },
];
