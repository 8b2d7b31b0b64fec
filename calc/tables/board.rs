// Wall board: sheets on sale, and how it is fastened.
//
// Sheet sizes: products to ASTM C1396, common practice. Fasteners: IRC 2021 Table R702.3.5, checked against a public copy;
// GA-216 and ASTM C840 have the same for a single ply. Fire-rated and shear work follows its own listing.

/// Sheets on sale: width and length, inches.
pub const SHEETS: [SheetSize; 4] = [
    SheetSize { width_in: 48.0, length_in: 96.0 },
    SheetSize { width_in: 48.0, length_in: 120.0 },
    SheetSize { width_in: 48.0, length_in: 144.0 },
    SheetSize { width_in: 54.0, length_in: 144.0 },
];

/// Screws: on what, the widest framing the row is for, and how far apart; inches.
pub const SCREW_SPACING: [ScrewSpacing; 3] = [
    ScrewSpacing { on: SurfaceKind::Wall, framing_up_to_in: 16.0, apart_in: 16.0 },
    ScrewSpacing { on: SurfaceKind::Wall, framing_up_to_in: 24.0, apart_in: 12.0 },
    ScrewSpacing { on: SurfaceKind::Ceiling, framing_up_to_in: 24.0, apart_in: 12.0 },
];

/// Nails on a ceiling and on a wall, inches apart.
pub const NAILS_APART_IN: [(SurfaceKind, f64); 2] = [(SurfaceKind::Ceiling, 7.0), (SurfaceKind::Wall, 8.0)];

/// Least distance of a fastener from the sheet's edge, inches: GA-216.
pub const EDGE_DISTANCE_IN: f64 = 0.375;

/// Least depth of a screw in wood, inches: IRC 2021 R702.3.5.1.
pub const SCREW_IN_WOOD_IN: f64 = 0.625;

/// Waste allowance where board is bought by area, percent: common practice.
pub const ALLOWANCE_PERCENT: Usual = Usual { low: 5.0, typical: 10.0, high: 15.0 };

/// An opening is left out of an area only where it is larger than this, square feet: estimating practice.
pub const LEFT_OUT_ABOVE_FT2: f64 = 32.0;
