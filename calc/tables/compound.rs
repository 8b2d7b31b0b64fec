// Compound, tape and bead, and the levels of finish.
//
// Levels: GA-214 (2007 and 2010 editions seen in public copies; the current edition GA-214-21 from memory) and ASTM C840, as
// codes; status: one public secondary source and memory. Quantities for 1000 square feet are rules of thumb that
// disagree: compound 9, 10, 11 and 13.5 gal were found in public guides, 9.4 is from memory of trade literature and could not be
// confirmed; tape 480 ft in one, 24 ft for a 4 by 8 sheet (750 ft) in another, 370 to 400 from memory and not confirmed. So each
// is a range. Screws: 875 on walls and 1094 on ceilings by computing, one public rule 1125. The rest is common practice.

/// Ready-mixed compound for level 4, US gallons per 1000 square feet.
pub const COMPOUND_GAL_PER_KFT2: Usual = Usual { low: 9.0, typical: 9.4, high: 13.5 };

/// What a skim coat takes beyond that, US gallons per 1000 square feet.
pub const SKIM_GAL_PER_KFT2: Usual = Usual { low: 5.0, typical: 8.0, high: 10.0 };

/// Tape, feet per 1000 square feet.
pub const TAPE_FT_PER_KFT2: Usual = Usual { low: 370.0, typical: 400.0, high: 480.0 };

/// The most tape that a public rule gives, feet per 1000 square feet: 24 ft for a sheet of 4 by 8 ft.
pub const MOST_TAPE_FT_PER_KFT2: f64 = 750.0;

/// Screws per 1000 square feet.
pub const SCREWS_PER_KFT2: Usual = Usual { low: 875.0, typical: 1000.0, high: 1300.0 };

/// Fasteners of corner bead, inches apart.
pub const BEAD_FASTENERS_APART_IN: Usual = Usual { low: 9.0, typical: 12.0, high: 16.0 };

/// Corner bead on sale, inches: 8 and 10 ft. From memory.
pub const BEAD_IN: [f64; 2] = [96.0, 120.0];

/// The levels: coats on joints besides the tape's own, on angles, and on fasteners; whether a skim coat; what the surface is
/// like, and what it is for.
pub const LEVELS: [LevelRow; 6] = [
    LevelRow {
        level: 0, taped: false, joint_coats: 0, angle_coats: 0, fastener_coats: 0, skim: false,
        surface: SurfaceCode::Untouched, usual_use: UseCode::Temporary,
    },
    LevelRow {
        level: 1, taped: true, joint_coats: 0, angle_coats: 0, fastener_coats: 0, skim: false,
        surface: SurfaceCode::MarksAndRidges, usual_use: UseCode::HiddenPlaces,
    },
    LevelRow {
        level: 2, taped: true, joint_coats: 1, angle_coats: 1, fastener_coats: 1, skim: false,
        surface: SurfaceCode::Marks, usual_use: UseCode::TileBaseAndStorage,
    },
    LevelRow {
        level: 3, taped: true, joint_coats: 1, angle_coats: 1, fastener_coats: 2, skim: false,
        surface: SurfaceCode::Smooth, usual_use: UseCode::HeavyTexture,
    },
    LevelRow {
        level: 4, taped: true, joint_coats: 2, angle_coats: 1, fastener_coats: 3, skim: false,
        surface: SurfaceCode::Smooth, usual_use: UseCode::FlatPaint,
    },
    LevelRow {
        level: 5, taped: true, joint_coats: 2, angle_coats: 1, fastener_coats: 3, skim: true,
        surface: SurfaceCode::Skimmed, usual_use: UseCode::GlossOrStrongLight,
    },
];
