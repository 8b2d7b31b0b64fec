// Joints, offsets, lippage, mortar contact, movement joints and cut allowances of tile. Units as each row names them.
//
// Sources: ANSI A108.02 (2017 wording of 4.3.7, 4.3.8 and 4.4) and the TCNA Handbook, EJ171, both as quoted in public secondary
// sources, not read in the standards themselves; the tile's and the mortar's maker and the adopted edition govern.
// EJ171 leaves movement joints to the designer; older editions give 20 to 25 ft inside, a 2018 citation at most 25 ft inside
// and at most 12 ft in sun, moisture or on concrete above ground. `status` says how far each row was checked.

/// The rules.
pub const TILE_RULES: [TileRule; 21] = [
    TileRule { id: "joint_least", low: Some(0.0625), high: None, unit: RuleUnit::In, source: "ANSI A108.02-2017 4.3.8", status: Status::Verified },
    TileRule { id: "joint_variation", low: Some(3.0), high: None, unit: RuleUnit::Times, source: "ANSI A108.02-2017 4.3.8", status: Status::Verified },
    TileRule { id: "joint_offset_rectified", low: Some(0.125), high: None, unit: RuleUnit::In, source: "ANSI A108.02 4.3.8", status: Status::Verified },
    TileRule { id: "joint_offset_calibrated", low: Some(0.1875), high: None, unit: RuleUnit::In, source: "ANSI A108.02 4.3.8", status: Status::Verified },
    TileRule { id: "offset_most", low: Some(0.0), high: Some(33.0), unit: RuleUnit::Percent, source: "ANSI A108.02, running bond and offset patterns", status: Status::Verified },
    TileRule { id: "lippage_narrow_joint", low: None, high: Some(0.03125), unit: RuleUnit::In, source: "ANSI A108.02 4.3.7", status: Status::VerifiedOnce },
    TileRule { id: "lippage_wide_joint", low: None, high: Some(0.0625), unit: RuleUnit::In, source: "ANSI A108.02 4.3.7", status: Status::FromMemory },
    TileRule { id: "contact_dry", low: Some(80.0), high: None, unit: RuleUnit::Percent, source: "ANSI A108 family", status: Status::VerifiedOnce },
    TileRule { id: "contact_wet", low: Some(95.0), high: None, unit: RuleUnit::Percent, source: "ANSI A108 family", status: Status::VerifiedOnce },
    TileRule { id: "movement_interior", low: Some(20.0), high: Some(25.0), unit: RuleUnit::Ft, source: "TCNA Handbook EJ171", status: Status::Verified },
    TileRule { id: "movement_sun_or_moisture", low: Some(8.0), high: Some(12.0), unit: RuleUnit::Ft, source: "TCNA Handbook EJ171", status: Status::Verified },
    TileRule { id: "movement_raised_concrete", low: Some(8.0), high: Some(12.0), unit: RuleUnit::Ft, source: "TCNA Handbook EJ171", status: Status::VerifiedOnce },
    TileRule { id: "movement_perimeter", low: None, high: None, unit: RuleUnit::Required, source: "TCNA Handbook EJ171; ANSI A108.02 4.4", status: Status::Verified },
    TileRule { id: "movement_width_at_8_ft", low: Some(0.375), high: None, unit: RuleUnit::In, source: "TCNA Handbook EJ171", status: Status::VerifiedOnce },
    TileRule { id: "movement_width_at_12_ft", low: Some(0.5), high: None, unit: RuleUnit::In, source: "TCNA Handbook EJ171", status: Status::VerifiedOnce },
    TileRule { id: "movement_width_per_15_f", low: Some(0.0625), high: None, unit: RuleUnit::In, source: "TCNA Handbook EJ171", status: Status::VerifiedOnce },
    TileRule { id: "perimeter_gap", low: Some(0.25), high: None, unit: RuleUnit::In, source: "TCNA Handbook EJ171", status: Status::FromMemory },
    TileRule { id: "allowance_straight", low: Some(10.0), high: None, unit: RuleUnit::Percent, source: "common practice", status: Status::CommonPractice },
    TileRule { id: "allowance_running_bond", low: Some(15.0), high: None, unit: RuleUnit::Percent, source: "common practice", status: Status::CommonPractice },
    TileRule { id: "allowance_diagonal", low: Some(20.0), high: None, unit: RuleUnit::Percent, source: "common practice", status: Status::CommonPractice },
    TileRule { id: "border_cut", low: Some(50.0), high: None, unit: RuleUnit::Percent, source: "common practice", status: Status::CommonPractice },
];
