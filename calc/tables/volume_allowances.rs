// Free space in a box for each counted conductor, cubic inches.
//
// Source: NFPA 70-2023 Table 314.16(B)(1); 70-2020 and 70-2017 Table 314.16(B).
// Status: confirmed in three published copies.

/// Allowances, from the smallest conductor.
pub const VOLUME_ALLOWANCES: [AllowanceRow; 7] = [
    AllowanceRow { size: Size::Awg18, allowance_in3: 1.5 },
    AllowanceRow { size: Size::Awg16, allowance_in3: 1.75 },
    AllowanceRow { size: Size::Awg14, allowance_in3: 2.0 },
    AllowanceRow { size: Size::Awg12, allowance_in3: 2.25 },
    AllowanceRow { size: Size::Awg10, allowance_in3: 2.5 },
    AllowanceRow { size: Size::Awg8, allowance_in3: 3.0 },
    AllowanceRow { size: Size::Awg6, allowance_in3: 5.0 },
];
