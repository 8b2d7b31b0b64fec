// Changes of level, thresholds, risers and ramps.
//
// Sources: 2010 ADA Standards for Accessible Design; International Residential Code, 2021 edition (the two
// threshold figures are the same in 2018). The locally adopted edition governs. Private single-family houses are
// as a rule not covered by the ADA Standards: there they are a reference for comfort and access.
// Lengths in inches, slopes as rise over run. `status` says how far each row was checked.

/// Heights of steps and thresholds.
pub const STEP_RULES: [StepRule; 15] = [
    StepRule { id: "plain_step", applies: Applies::AnyStep, bound: Bound::AtMost, value_in: 0.25, source: "2010 ADA Standards 303.2", status: Status::Verified },
    StepRule { id: "bevelled_step", applies: Applies::AnyStep, bound: Bound::AtMost, value_in: 0.5, source: "2010 ADA Standards 303.3", status: Status::Verified },
    StepRule { id: "ramp_above", applies: Applies::AnyStep, bound: Bound::AtMost, value_in: 0.5, source: "2010 ADA Standards 303.4", status: Status::Verified },
    StepRule { id: "doorway_threshold", applies: Applies::Doorway, bound: Bound::AtMost, value_in: 0.5, source: "2010 ADA Standards 404.2.5", status: Status::VerifiedOnce },
    StepRule { id: "altered_threshold", applies: Applies::Doorway, bound: Bound::AtMost, value_in: 0.75, source: "2010 ADA Standards 404.2.5 exception", status: Status::FromMemory },
    StepRule { id: "ramp_rise", applies: Applies::Ramp, bound: Bound::AtMost, value_in: 30.0, source: "2010 ADA Standards 405.6", status: Status::VerifiedOnce },
    StepRule { id: "egress_door_landing", applies: Applies::ExteriorDoor, bound: Bound::AtMost, value_in: 1.5, source: "IRC 2021 R311.3.1", status: Status::Verified },
    StepRule { id: "egress_door_exterior_landing", applies: Applies::ExteriorDoor, bound: Bound::AtMost, value_in: 7.75, source: "IRC 2021 R311.3.1 exception", status: Status::Verified },
    StepRule { id: "other_exterior_door_landing", applies: Applies::ExteriorDoor, bound: Bound::AtMost, value_in: 7.75, source: "IRC 2021 R311.3.2", status: Status::Verified },
    StepRule { id: "stair_riser", applies: Applies::Stair, bound: Bound::AtMost, value_in: 7.75, source: "IRC 2021 R311.7.5.1", status: Status::Verified },
    StepRule { id: "riser_difference", applies: Applies::StairDifference, bound: Bound::AtMost, value_in: 0.375, source: "IRC 2021 R311.7.5.1", status: Status::Verified },
    StepRule { id: "shower_curb_least", applies: Applies::ShowerCurb, bound: Bound::AtLeast, value_in: 2.0, source: "IRC 2021 P2709.1", status: Status::VerifiedOnce },
    StepRule { id: "shower_curb_most", applies: Applies::ShowerCurb, bound: Bound::AtMost, value_in: 9.0, source: "IRC 2021 P2709.1", status: Status::VerifiedOnce },
    StepRule { id: "flange_least", applies: Applies::ToiletFlange, bound: Bound::AtLeast, value_in: 0.0, source: "common practice", status: Status::CommonPractice },
    StepRule { id: "flange_most", applies: Applies::ToiletFlange, bound: Bound::AtMost, value_in: 0.25, source: "common practice", status: Status::CommonPractice },
];

/// Slopes, from the flattest to the steepest.
pub const SLOPE_RULES: [SlopeRule; 6] = [
    SlopeRule { id: "cross_slope", one_in: 48.0, source: "2010 ADA Standards 403.3 and 405.3", status: Status::Verified },
    SlopeRule { id: "walking_surface", one_in: 20.0, source: "2010 ADA Standards 403.3", status: Status::Verified },
    SlopeRule { id: "ramp", one_in: 12.0, source: "2010 ADA Standards 405.2", status: Status::Verified },
    SlopeRule { id: "egress_door_ramp", one_in: 12.0, source: "IRC 2021 R311.8.1", status: Status::Verified },
    SlopeRule { id: "other_house_ramp", one_in: 8.0, source: "IRC 2021 R311.8.1", status: Status::Verified },
    SlopeRule { id: "bevel", one_in: 2.0, source: "2010 ADA Standards 303.3", status: Status::Verified },
];
