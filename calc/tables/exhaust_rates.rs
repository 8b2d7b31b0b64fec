// Exhaust rates, cubic feet per minute.
//
// Source: IRC 2021 Table M1505.4.4 (2015: Table M1507.4), to be met at a static pressure of 0.25 in of water or more; ASHRAE
// 62.2 has the same two figures for bathrooms. Checked against public copies of two states' 2021 codes. The practice for
// bathrooms by area and by fixture is that of the Home Ventilating Institute's bathroom guidance. The locally adopted
// edition governs.

/// Least rates by room: intermittent (switched), and continuous.
pub const CODE_RATES: [CodeRate; 2] = [
    CodeRate { room: ExhaustRoom::Bathroom, intermittent_cfm: 50.0, continuous_cfm: 20.0 },
    CodeRate { room: ExhaustRoom::Kitchen, intermittent_cfm: 100.0, continuous_cfm: 25.0 },
];

/// The static pressure at which the code's rate is to be met, inches of water.
pub const CODE_STATIC_INWG: f64 = 0.25;

/// Practice for a bathroom up to [`AREA_RULE_MOST_FT2`]: cubic feet per minute for each square foot.
pub const AREA_CFM_PER_FT2: f64 = 1.0;

/// Above this, practice goes by fixture; square feet.
pub const AREA_RULE_MOST_FT2: f64 = 100.0;

/// Practice above that, for each fixture.
pub const FIXTURE_RATES: [FixtureRate; 4] = [
    FixtureRate { fixture: Fixture::Toilet, cfm: 50.0 },
    FixtureRate { fixture: Fixture::Shower, cfm: 50.0 },
    FixtureRate { fixture: Fixture::Tub, cfm: 50.0 },
    FixtureRate { fixture: Fixture::JettedTub, cfm: 100.0 },
];

/// How long a fan should run on after use, minutes.
pub const RUN_ON_MINUTES: f64 = 20.0;

/// Air changes an hour that the area rule comes near; at a ceiling of 8 ft it is 7.5.
pub const AIR_CHANGES_PER_HOUR: f64 = 8.0;

/// Glazing that may take the place of a bathroom's fan, square feet, half of it to open: IRC 2021 R303.3.
pub const WINDOW_FT2: f64 = 3.0;

/// Least distance of the outlet from a property line or an opening, feet: IRC 2021 M1504.3.
pub const OUTLET_FROM_OPENING_FT: f64 = 3.0;

/// Least distance of the outlet from a mechanical intake, feet, unless it is 3 ft or more above it: IRC 2021 M1504.3.
pub const OUTLET_FROM_INTAKE_FT: f64 = 10.0;
