// What the friction of a duct is worked out with, and what fittings are worth in feet of duct.
//
// Air at 0.075 lb/ft3 is the standard air of fan ratings. Roughness: ASHRAE Handbook of Fundamentals, duct design (0.0003 ft
// medium smooth; 0.003 ft medium rough, from memory). Slack flexible duct is much worse than stretched.

/// Density of standard air, lb/ft3.
pub const AIR_LB_PER_FT3: f64 = 0.075;

/// Viscosity of air, lb/(ft s).
pub const AIR_LB_PER_FT_S: f64 = 1.22e-5;

/// Pounds (mass) times feet per second squared in a pound of force.
pub const GC_LB_FT_PER_LBF_S2: f64 = 32.174;

/// An inch of water, lbf/ft2.
pub const LBF_PER_FT2_OF_INWG: f64 = 5.2023;

/// Roughness by kind of duct, feet.
pub const ROUGHNESS_FT: [(DuctKind, f64); 2] = [(DuctKind::Smooth, 0.0003), (DuctKind::Flexible, 0.003)];

/// What an elbow is worth, feet of duct: IRC 2021 Table M1504.2 note c, far above the loss of a smooth one.
pub const ELBOW_FT: f64 = 15.0;

/// What a wall cap or roof jack with its damper is worth, feet of duct: common practice, 20 to 40 ft.
pub const CAP_FT: Usual = Usual { low: 20.0, typical: 30.0, high: 40.0 };

/// Elbows of 4 in duct, feet of duct: IRC 2015 Table M1502.4.5.1, 2021 Table M1502.4.6.1, for dryer ducts.
pub const ELBOWS_4IN: [ElbowRow; 8] = [
    ElbowRow { radius_in: 4.0, smooth: false, degrees: 45.0, equivalent_ft: 2.5 },
    ElbowRow { radius_in: 4.0, smooth: false, degrees: 90.0, equivalent_ft: 5.0 },
    ElbowRow { radius_in: 6.0, smooth: true, degrees: 45.0, equivalent_ft: 1.0 },
    ElbowRow { radius_in: 6.0, smooth: true, degrees: 90.0, equivalent_ft: 1.75 },
    ElbowRow { radius_in: 8.0, smooth: true, degrees: 45.0, equivalent_ft: 1.0 },
    ElbowRow { radius_in: 8.0, smooth: true, degrees: 90.0, equivalent_ft: 19.0 / 12.0 },
    ElbowRow { radius_in: 10.0, smooth: true, degrees: 45.0, equivalent_ft: 0.75 },
    ElbowRow { radius_in: 10.0, smooth: true, degrees: 90.0, equivalent_ft: 1.5 },
];
