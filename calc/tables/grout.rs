// Planning figures of cement grout; common practice, the bag's own beat them.

/// Dry powder for a cubic foot of joint, pounds: the low end, and what to plan with.
pub const POWDER_LOW_LB_PER_FT3: f64 = 100.0;

/// Dry powder for a cubic foot of joint, pounds: the high end.
pub const POWDER_HIGH_LB_PER_FT3: f64 = 115.0;

/// Waste, percent.
pub const USUAL_WASTE_PERCENT: f64 = 10.0;
