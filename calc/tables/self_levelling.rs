// Planning figures for self-levelling underlayment. Every one yields to the bag: they vary by product.
//
// All are common practice of the trade, with no single published source. Test methods behind a bag's own figures:
// ASTM C1708/C1708M (self-leveling mortars containing hydraulic cements); installation under resilient flooring:
// ASTM F2873. Check of the yield: the 40 to 50 square feet at 1/8 in of several public guides are 0.417 to 0.521
// cubic feet; 0.45 cubic feet covers 43.2 square feet at 1/8 in.

/// Yield of a 50 lb bag, cubic feet.
pub const YIELD_FT3_PER_BAG: Usual = Usual { low: 0.4, typical: 0.45, high: 0.5 };

/// Least thickness over concrete, inches: from a feather edge to 1/8 in or more by product.
pub const LEAST_OVER_CONCRETE_IN: Usual = Usual { low: 0.0, typical: 0.125, high: 0.25 };

/// Least thickness over a wood subfloor, inches; many products also want lath or fibre over wood.
pub const LEAST_OVER_WOOD_IN: Usual = Usual { low: 0.25, typical: 0.375, high: 0.5 };

/// Thickest single lift of the neat product, inches.
pub const MOST_LIFT_IN: Usual = Usual { low: 1.0, typical: 1.5, high: 2.0 };

/// Thickest single lift when extended with pea gravel, inches.
pub const MOST_LIFT_WITH_GRAVEL_IN: Usual = Usual { low: 2.0, typical: 3.0, high: 5.0 };

/// Mixing water for a 50 lb bag, US quarts.
pub const WATER_QT_PER_BAG: Usual = Usual { low: 4.5, typical: 5.5, high: 7.0 };

/// How long a batch flows after mixing, minutes.
pub const POT_LIFE_MINUTES: Usual = Usual { low: 10.0, typical: 15.0, high: 20.0 };

/// Until it can be walked on, hours.
pub const WALKABLE_HOURS: Usual = Usual { low: 2.0, typical: 4.0, high: 6.0 };

/// Until it can be tiled, hours.
pub const TILE_READY_HOURS: Usual = Usual { low: 4.0, typical: 16.0, high: 24.0 };

/// Floor that a gallon of diluted primer covers when the floor is porous, square feet.
pub const PRIMER_POROUS_FT2_PER_GAL: Usual = Usual { low: 150.0, typical: 200.0, high: 300.0 };

/// Floor that a gallon of primer covers when the floor is not porous, square feet.
pub const PRIMER_DENSE_FT2_PER_GAL: Usual = Usual { low: 200.0, typical: 300.0, high: 500.0 };

/// Ordering allowance, percent.
pub const ALLOWANCE_PERCENT: Usual = Usual { low: 5.0, typical: 10.0, high: 15.0 };

/// Thickness of the isolation strip along the walls, inches.
pub const EDGE_STRIP_IN: Usual = Usual { low: 0.125, typical: 0.25, high: 0.25 };
