// Section numbers of NFPA 70, by edition: 2017, 2020, 2023.
//
// A rule keeps its name here while its number moves. Status: `Confirmed` in a public source besides memory;
// `FromMemory`; `CommonPractice` for a reading of the rule. It is about the 2023 number and the substance: of 2017, the
// numbers of 310.15(B)(3)(a)(2), 310.15(B)(5) and (6), 310.106(A), 310.10(H) and 210.3 are from memory. The adopted edition and its amendments govern.

rules! {
    /// Ampacities of insulated conductors.
    Ampacities: "Table 310.15(B)(16)", "Table 310.16", "Table 310.16", Confirmed;
    /// Factors for the ambient temperature.
    AmbientFactor: "Table 310.15(B)(2)(a)", "Table 310.15(B)(1)", "Table 310.15(B)(1)(1)", Confirmed;
    /// Factors for more than three current-carrying conductors.
    CountFactor: "Table 310.15(B)(3)(a)", "Table 310.15(C)(1)", "Table 310.15(C)(1)", Confirmed;
    /// Cables and conductors together for more than 24 in are adjusted, shorter ones are not.
    BundleLength: "310.15(B)(3)(a)", "310.15(C)(1)", "310.15(C)(1)", Confirmed;
    /// A nipple of no more than 24 in is not adjusted.
    Nipple: "310.15(B)(3)(a)(2)", "310.15(C)(1)(b)", "310.15(C)(1)(b)", Confirmed;
    /// A neutral that carries only the unbalance is not counted.
    NeutralCount: "310.15(B)(5)", "310.15(E)", "310.15(E)", Confirmed;
    /// Equipment grounding conductors are not counted.
    GroundCount: "310.15(B)(6)", "310.15(F)", "310.15(F)", Confirmed;
    /// Conductors that can't carry current together are counted once.
    TravellerCount: "310.15(B)(3)(a)", "310.15(C)(1)", "310.15(C)(1)", CommonPractice;
    /// The terminals limit the ampacity.
    Terminals: "110.14(C)(1)", "110.14(C)(1)", "110.14(C)(1)", Confirmed;
    /// NM cable: never above the 60 C column; more than two in a sealed hole or in insulation are adjusted.
    NmCable: "334.80", "334.80", "334.80", Confirmed;
    /// The next standard rating above the ampacity.
    NextRating: "240.4(B)", "240.4(B)", "240.4(B)", Confirmed;
    /// The conductors of a circuit with several receptacles are protected at their ampacity.
    AtAmpacity: "240.4", "240.4", "240.4", Confirmed;
    /// Motors and some other equipment have overcurrent rules of their own.
    EquipmentProtection: "240.4(G)", "240.4(G)", "240.4(G)", Confirmed;
    /// Caps for small conductors.
    SmallConductors: "240.4(D)", "240.4(D)", "240.4(D)", Confirmed;
    /// Standard ratings.
    StandardRatings: "240.6(A)", "240.6(A)", "Table 240.6(A)", Confirmed;
    /// The smallest conductor for general use.
    LeastSize: "310.106(A)", "310.3(A)", "310.3(A)", Confirmed;
    /// Sizes in which NM cable is made.
    NmSizes: "334.104", "334.104", "334.104", FromMemory;
    /// Sizes in which UF cable is made.
    UfSizes: "340.104", "340.104", "340.104", FromMemory;
    /// Conductors in parallel are 1/0 AWG or larger.
    Parallel: "310.10(H)", "310.10(G)", "310.10(G)", FromMemory;
    /// Volume of a box, its rings and barriers.
    BoxVolume: "314.16(A)", "314.16(A)", "314.16(A)", Confirmed;
    /// Volumes of metal boxes.
    BoxTable: "Table 314.16(A)", "Table 314.16(A)", "Table 314.16(A)", Confirmed;
    /// The marked volume of any other box.
    BoxMarked: "314.16(A)(2)", "314.16(A)(2)", "314.16(A)(2)", Confirmed;
    /// Space for each conductor.
    Allowances: "Table 314.16(B)", "Table 314.16(B)", "Table 314.16(B)(1)", Confirmed;
    /// What is in a box, in total.
    BoxFill: "314.16(B)", "314.16(B)", "314.16(B)", Confirmed;
    /// Conductors in a box.
    BoxConductors: "314.16(B)(1)", "314.16(B)(1)", "314.16(B)(1)", Confirmed;
    /// Clamps in a box.
    BoxClamps: "314.16(B)(2)", "314.16(B)(2)", "314.16(B)(2)", Confirmed;
    /// Studs and hickeys in a box.
    BoxSupports: "314.16(B)(3)", "314.16(B)(3)", "314.16(B)(3)", Confirmed;
    /// Devices in a box.
    BoxDevices: "314.16(B)(4)", "314.16(B)(4)", "314.16(B)(4)", Confirmed;
    /// Equipment grounding conductors in a box.
    BoxGrounds: "314.16(B)(5)", "314.16(B)(5)", "314.16(B)(5)", Confirmed;
    /// Terminal blocks in a box; counted since 2023.
    BoxTerminalBlocks: "314.16(B)", "314.16(B)", "314.16(B)(6)", Confirmed;
    /// Resistances.
    Resistance: "Chapter 9 Table 8", "Chapter 9 Table 8", "Chapter 9 Table 8", Confirmed;
    /// Impedances.
    Impedance: "Chapter 9 Table 9", "Chapter 9 Table 9", "Chapter 9 Table 9", Confirmed;
    /// Drop on a branch circuit: a recommendation.
    BranchDrop: "210.19(A) informational note", "210.19(A) informational note", "210.19 informational note", Confirmed;
    /// Drop on a feeder: a recommendation.
    FeederDrop: "215.2(A) informational note", "215.2(A) informational note", "215.2 informational note", Confirmed;
    /// Drop on a feeder and its branch circuit: a recommendation.
    TotalDrop: "215.2(A) informational note", "215.2(A) informational note", "215.2 informational note", Confirmed;
    /// Ratings of circuits with more than one outlet.
    CircuitRating: "210.3", "210.18", "210.18", Confirmed;
    /// Conductors of a branch circuit.
    BranchConductors: "210.19(A)(1)", "210.19(A)(1)", "210.19(A)", Confirmed;
    /// The overcurrent device of a branch circuit.
    BranchDevice: "210.20(A)", "210.20(A)", "210.20(A)", Confirmed;
    /// The load is no more than the rating.
    PermissibleLoad: "210.23", "210.23", "210.23", Confirmed;
    /// One appliance on a cord and plug, not fastened in place.
    PlugLoad: "210.23(A)(1)", "210.23(A)(1)", "210.23(B)(1)", Confirmed;
    /// Equipment fastened in place, on a circuit with lights or plugs as well.
    FixedLoad: "210.23(A)(2)", "210.23(A)(2)", "210.23(B)(2)", Confirmed;
    /// What a 10 A circuit may feed: new in 2023; before, no such circuit of several outlets.
    TenAmp: "210.3", "210.18", "210.23(A)", Confirmed;
    /// What a 30 A circuit of several outlets may feed.
    ThirtyAmp: "210.23(B)", "210.23(B)", "210.23(C)", FromMemory;
    /// What a 40 or 50 A circuit of several outlets may feed.
    FiftyAmp: "210.23(C)", "210.23(C)", "210.23(D)", FromMemory;
    /// What a larger circuit of several outlets may feed.
    AboveFifty: "210.23(D)", "210.23(D)", "210.23(E)", FromMemory;
    /// Lampholders on more than 20 A are of the heavy-duty kind.
    Lampholders: "210.21(A)", "210.21(A)", "210.21(A)", FromMemory;
    /// The rating of a single receptacle on a circuit of its own.
    SingleReceptacle: "210.21(B)(1)", "210.21(B)(1)", "210.21(B)(1)", Confirmed;
    /// The ratings of receptacles on a circuit of several.
    ReceptacleRatings: "Table 210.21(B)(3)", "Table 210.21(B)(3)", "Table 210.21(B)(3)", Confirmed;
    /// A receptacle's most load on a circuit of several.
    ReceptacleLoad: "210.21(B)(2)", "210.21(B)(2)", "210.21(B)(2)", Confirmed;
    /// Number of lighting circuits.
    LightingCircuits: "210.11(A)", "210.11(A)", "210.11(A)", Confirmed;
    /// A storage water heater of 120 gal or less counts as continuous.
    WaterHeater: "422.13", "422.13", "422.13", Confirmed;
    /// The device for a single appliance without a motor, of 13.3 A or less and no marked maximum: 20 A at most.
    SmallApplianceDevice: "422.11(E)(2)", "422.11(E)(2)", "422.11(E)(2)", FromMemory;
    /// The same for one above 13.3 A: 150 % of what it takes, or the next standard rating.
    ApplianceDevice: "422.11(E)(3)", "422.11(E)(3)", "422.11(E)(3)", Confirmed;
    /// Fixed electric space heating counts as continuous.
    SpaceHeating: "424.3(B)", "424.4(B)", "424.4(B)", Confirmed;
    /// Conductors of a single motor.
    SingleMotor: "430.22", "430.22", "430.22", FromMemory;
    /// Conductors of several motors, or of motors with other loads.
    MotorConductors: "430.24", "430.24", "430.24", FromMemory;
    /// The required circuits for small appliances, laundry and bathroom.
    RequiredCircuits: "210.11(C)", "210.11(C)", "210.11(C)", Confirmed;
    /// Arc-fault protection of dwelling outlets, and of wiring that is extended.
    ArcFault: "210.12(A)", "210.12(A)", "210.12(B)", Confirmed;
    /// Ground-fault protection by place.
    GroundFault: "210.8(A)", "210.8(A)", "210.8(A)", Confirmed;
    /// What a receptacle that replaces another is.
    Replacement: "406.4(D)", "406.4(D)", "406.4(D)", Confirmed;
    /// Handle ties between single-pole breakers.
    HandleTie: "240.15(B)", "240.15(B)", "240.15(B)", FromMemory;
    /// One neutral for one circuit.
    OneNeutral: "200.4(A)", "200.4(A)", "200.4(A)", Confirmed;
    /// What a multiwire branch circuit is: a voltage between its hots, and an equal one from each to the neutral.
    MultiwireDefinition: "Article 100", "Article 100", "Article 100", Confirmed;
    /// A multiwire circuit starts in one panelboard.
    MultiwireOrigin: "210.4(A)", "210.4(A)", "210.4(A)", Confirmed;
    /// One action opens every hot of a multiwire circuit.
    MultiwireDisconnect: "210.4(B)", "210.4(B)", "210.4(B)", Confirmed;
    /// A multiwire circuit feeds loads from hot to neutral alone, with exceptions.
    MultiwireLoads: "210.4(C)", "210.4(C)", "210.4(C)", FromMemory;
    /// Taking out a device does not open the neutral of a multiwire circuit.
    NeutralContinuity: "300.13(B)", "300.13(B)", "300.13(B)", FromMemory;
    /// All conductors of a circuit run together.
    RunTogether: "300.3(B)", "300.3(B)", "300.3(B)", Confirmed;
    /// Free conductor at a box.
    FreeConductor: "300.14", "300.14", "300.14", Confirmed;
    /// Protection of a cable in framing.
    Framing: "300.4", "300.4", "300.4", FromMemory;
    /// Securing and supporting NM cable.
    Staples: "334.30", "334.30", "334.30", FromMemory;
    /// NM cable in an accessible attic is guarded as AC cable is.
    Attic: "334.23", "334.23", "334.23", FromMemory;
    /// A neutral at each switch.
    SwitchNeutral: "404.2(C)", "404.2(C)", "404.2(C)", Confirmed;
    /// Switches open the ungrounded conductor.
    SwitchHot: "404.2(A)", "404.2(A)", "404.2(A)", FromMemory;
    /// The circuit directory.
    Directory: "408.4(A)", "408.4(A)", "408.4(A)", Confirmed;
    /// A panelboard is protected at its rating.
    PanelProtection: "408.36", "408.36", "408.36", Confirmed;
    /// No more overcurrent devices than the panel is made for.
    PanelCount: "408.54", "408.54", "408.54", Confirmed;
    /// No joint of neutral and ground beyond the service.
    NeutralBond: "250.142(B)", "250.142(B)", "250.142(B)", Confirmed;
    /// The neutral is bonded at the service.
    ServiceBond: "250.24", "250.24", "250.24", Confirmed;
    /// A building fed from another has a disconnect of its own.
    BuildingDisconnect: "225.31", "225.31", "225.31", Confirmed;
    /// Splices and joints with a device listed for it, made fast.
    Splices: "110.14(B)", "110.14(B)", "110.14(B)", FromMemory;
    /// Wires made fast on terminals.
    TerminalsFast: "110.14(A)", "110.14(A)", "110.14(A)", FromMemory;
    /// No neutral where it reverses the polarity.
    Polarity: "200.11", "200.11", "200.11", FromMemory;
    /// Grounds joined in the box, so that taking out a device does not open them.
    GroundJoints: "250.148", "250.148", "250.148", FromMemory;
    /// Switches do not open the neutral.
    NeutralNotSwitched: "404.2(B)", "404.2(B)", "404.2(B)", FromMemory;
}
