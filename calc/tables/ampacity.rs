// Ampacities of insulated conductors up to 2000 V, amperes.
//
// Source: NFPA 70-2023 and 70-2020 Table 310.16; the same values in 70-2017, 70-2014 and 70-2011 Table 310.15(B)(16).
// Basis: not more than three current-carrying conductors in a raceway, cable or earth, ambient 30 C (86 F).
// Columns: conductors rated 60, 75 and 90 C; `None` where the table has no value. `aluminum_a` holds for
// copper-clad aluminum as well. Editions up to 2008 differ in several cells.
// Status: 14 AWG to 500 kcmil seen in two further reprints; 18 and 16 AWG in one older copy and from memory.

/// Ampacities by size, from the smallest.
pub const AMPACITY: [AmpacityRow; 20] = [
    AmpacityRow { size: Size::Awg18, copper_a: [None, None, Some(14.0)], aluminum_a: [None, None, None], status: Status::FromMemory },
    AmpacityRow { size: Size::Awg16, copper_a: [None, None, Some(18.0)], aluminum_a: [None, None, None], status: Status::FromMemory },
    AmpacityRow { size: Size::Awg14, copper_a: [Some(15.0), Some(20.0), Some(25.0)], aluminum_a: [None, None, None], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg12, copper_a: [Some(20.0), Some(25.0), Some(30.0)], aluminum_a: [Some(15.0), Some(20.0), Some(25.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg10, copper_a: [Some(30.0), Some(35.0), Some(40.0)], aluminum_a: [Some(25.0), Some(30.0), Some(35.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg8, copper_a: [Some(40.0), Some(50.0), Some(55.0)], aluminum_a: [Some(35.0), Some(40.0), Some(45.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg6, copper_a: [Some(55.0), Some(65.0), Some(75.0)], aluminum_a: [Some(40.0), Some(50.0), Some(55.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg4, copper_a: [Some(70.0), Some(85.0), Some(95.0)], aluminum_a: [Some(55.0), Some(65.0), Some(75.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg3, copper_a: [Some(85.0), Some(100.0), Some(115.0)], aluminum_a: [Some(65.0), Some(75.0), Some(85.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg2, copper_a: [Some(95.0), Some(115.0), Some(130.0)], aluminum_a: [Some(75.0), Some(90.0), Some(100.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg1, copper_a: [Some(110.0), Some(130.0), Some(145.0)], aluminum_a: [Some(85.0), Some(100.0), Some(115.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg1_0, copper_a: [Some(125.0), Some(150.0), Some(170.0)], aluminum_a: [Some(100.0), Some(120.0), Some(135.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg2_0, copper_a: [Some(145.0), Some(175.0), Some(195.0)], aluminum_a: [Some(115.0), Some(135.0), Some(150.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg3_0, copper_a: [Some(165.0), Some(200.0), Some(225.0)], aluminum_a: [Some(130.0), Some(155.0), Some(175.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Awg4_0, copper_a: [Some(195.0), Some(230.0), Some(260.0)], aluminum_a: [Some(150.0), Some(180.0), Some(205.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Kcmil250, copper_a: [Some(215.0), Some(255.0), Some(290.0)], aluminum_a: [Some(170.0), Some(205.0), Some(230.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Kcmil300, copper_a: [Some(240.0), Some(285.0), Some(320.0)], aluminum_a: [Some(195.0), Some(230.0), Some(260.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Kcmil350, copper_a: [Some(260.0), Some(310.0), Some(350.0)], aluminum_a: [Some(210.0), Some(250.0), Some(280.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Kcmil400, copper_a: [Some(280.0), Some(335.0), Some(380.0)], aluminum_a: [Some(225.0), Some(270.0), Some(305.0)], status: Status::Confirmed },
    AmpacityRow { size: Size::Kcmil500, copper_a: [Some(320.0), Some(380.0), Some(430.0)], aluminum_a: [Some(260.0), Some(310.0), Some(350.0)], status: Status::Confirmed },
];
