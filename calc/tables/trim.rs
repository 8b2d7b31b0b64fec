// Planning figures for base, shoe and casing.
//
// Status: common practice of the trade, with no single published source, but where a line says otherwise.

/// Lengths that trim is usually sold in, inches: 8, 10, 12, 14 and 16 ft.
pub const STOCK_IN: [f64; 5] = [96.0, 120.0, 144.0, 168.0, 192.0];

/// Ordering allowance where trim is bought by the foot, percent: a plain room, and many corners or stain grade.
pub const ALLOWANCE_PERCENT: Usual = Usual { low: 10.0, typical: 10.0, high: 15.0 };

/// Extra length for each mitre or stop where trim is bought by the foot, feet.
pub const EXTRA_FT_PER_MITRE: f64 = 1.0;

/// Width of a casing where only the door's width is known, inches.
pub const CASING_IN: f64 = 2.25;

/// Margin left between the jamb's edge and the casing, inches. From memory.
pub const REVEAL_IN: Usual = Usual { low: 0.125, typical: 0.1875, high: 0.25 };

/// What the blade of a mitre saw takes, inches. From memory: 3/32 in for thin blades, 1/8 in for full ones.
pub const KERF_IN: Usual = Usual { low: 0.09375, typical: 0.125, high: 0.125 };
