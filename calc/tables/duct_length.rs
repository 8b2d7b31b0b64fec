// How long an exhaust duct may be, feet, by diameter, kind and the fan's flow as rated at 0.25 in of water.
//
// Source: IRC 2015 Table M1506.2, the same as IRC 2018 and 2021 Table M1504.2; identical in public copies of two states'
// codes and one town's. The table is for no elbows: 15 ft less for each. A diameter of 8 in stands for 8 in and above. A
// duct that is not round has the diameter 4 x area / perimeter. Not for ducts by the maker's design or with measured flow.
// Some states have tables of their own with other deductions: the local table governs.

use MostLength::{Ft, NoLimit as NL, NotAllowed as X};

/// The flows that head the columns, cubic feet per minute.
pub const DUCT_FLOWS_CFM: [f64; 8] = [50.0, 80.0, 100.0, 125.0, 150.0, 200.0, 250.0, 300.0];

/// Feet to take off for each elbow.
pub const ELBOW_DEDUCTION_FT: f64 = 15.0;

/// The table.
pub const DUCT_LENGTHS: [DuctRow; 12] = [
    DuctRow { diameter_in: 3.0, kind: DuctKind::Flexible, most: [X, X, X, X, X, X, X, X] },
    DuctRow { diameter_in: 3.0, kind: DuctKind::Smooth, most: [Ft(5.0), X, X, X, X, X, X, X] },
    DuctRow { diameter_in: 4.0, kind: DuctKind::Flexible, most: [Ft(56.0), Ft(4.0), X, X, X, X, X, X] },
    DuctRow { diameter_in: 4.0, kind: DuctKind::Smooth, most: [Ft(114.0), Ft(31.0), Ft(10.0), X, X, X, X, X] },
    DuctRow { diameter_in: 5.0, kind: DuctKind::Flexible, most: [NL, Ft(81.0), Ft(42.0), Ft(16.0), Ft(2.0), X, X, X] },
    DuctRow { diameter_in: 5.0, kind: DuctKind::Smooth, most: [NL, Ft(152.0), Ft(91.0), Ft(51.0), Ft(28.0), Ft(4.0), X, X] },
    DuctRow { diameter_in: 6.0, kind: DuctKind::Flexible, most: [NL, NL, Ft(158.0), Ft(91.0), Ft(55.0), Ft(18.0), Ft(1.0), X] },
    DuctRow { diameter_in: 6.0, kind: DuctKind::Smooth, most: [NL, NL, NL, Ft(168.0), Ft(112.0), Ft(53.0), Ft(25.0), Ft(9.0)] },
    DuctRow { diameter_in: 7.0, kind: DuctKind::Flexible, most: [NL, NL, NL, NL, Ft(161.0), Ft(78.0), Ft(40.0), Ft(19.0)] },
    DuctRow { diameter_in: 7.0, kind: DuctKind::Smooth, most: [NL, NL, NL, NL, NL, Ft(148.0), Ft(88.0), Ft(54.0)] },
    DuctRow { diameter_in: 8.0, kind: DuctKind::Flexible, most: [NL, NL, NL, NL, NL, Ft(189.0), Ft(111.0), Ft(69.0)] },
    DuctRow { diameter_in: 8.0, kind: DuctKind::Smooth, most: [NL, NL, NL, NL, NL, NL, Ft(198.0), Ft(133.0)] },
];
