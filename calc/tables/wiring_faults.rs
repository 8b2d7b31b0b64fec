// How often each kind of fault is behind trouble in an opened box, as weights against each other.
//
// Source: common practice, none of it counted: loose and lost neutrals and poor joints lead what is found; a lost
// service neutral is rare and is named early because of what it does. Status: estimates; a factor of two either way
// changes an order of answers only where the readings hardly tell.

/// Weight of each kind; a kind's weight is shared by its places.
pub const FAULT_WEIGHTS: [(FaultKind, f64); 16] = [
    (FaultKind::NothingWrong, 12.0),
    (FaultKind::StrayOnly, 6.0),
    (FaultKind::NeutralOpen, 14.0),
    (FaultKind::NeutralBorrowed, 7.0),
    (FaultKind::NeutralsJoined, 8.0),
    (FaultKind::HotsJoined, 3.0),
    (FaultKind::HotOpen, 3.0),
    (FaultKind::OtherBreaker, 8.0),
    (FaultKind::HotNeutralSwapped, 7.0),
    (FaultKind::NeutralToGround, 6.0),
    (FaultKind::GroundOpen, 8.0),
    (FaultKind::SwitchInNeutral, 5.0),
    (FaultKind::TravellersMisplaced, 6.0),
    (FaultKind::PoorJoint, 10.0),
    (FaultKind::ServiceNeutralLost, 2.0),
    (FaultKind::FeederNeutralLost, 2.0),
];

/// Of two faults at once, against one of them: by chance, not by cause.
pub const SECOND_FAULT: f64 = 0.05;

/// How often a described load is not there, off or used up, shared by the loads.
pub const LOAD_NOT_THERE: f64 = 0.08;

/// How often there is a load that was not entered, shared by the places where one may be.
pub const LOAD_NOT_ENTERED: f64 = 0.08;

/// Watts at 120 V that a load that was not entered is tried with.
pub const NOT_ENTERED_WATTS: [f64; 6] = [25.0, 60.0, 150.0, 350.0, 750.0, 1500.0];

/// Against a fault of the same kind in a box, one beyond the boxes, in a joint nobody has described.
pub const BEYOND_BOXES: f64 = 0.4;

/// Ohms that a poor joint is tried with, from one that hardly holds to a warm one.
pub const POOR_JOINT_OHM: [f64; 5] = [100.0, 20.0, 5.0, 1.5, 0.5];
