// Factors for more than three current-carrying conductors.
//
// Source: NFPA 70-2023 and 70-2020 Table 310.15(C)(1); 70-2017 Table 310.15(B)(3)(a).
// The row for 1 to 3 is not printed there; it is the basis of the ampacity table.
// Status: the printed rows confirmed in two published copies.

/// Factors by number of current-carrying conductors.
pub const COUNT_ADJUSTMENT: [CountRow; 7] = [
    CountRow { least: 1, most: Some(3), factor: 1.0 },
    CountRow { least: 4, most: Some(6), factor: 0.8 },
    CountRow { least: 7, most: Some(9), factor: 0.7 },
    CountRow { least: 10, most: Some(20), factor: 0.5 },
    CountRow { least: 21, most: Some(30), factor: 0.45 },
    CountRow { least: 31, most: Some(40), factor: 0.4 },
    CountRow { least: 41, most: None, factor: 0.35 },
];
