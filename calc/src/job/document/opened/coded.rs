//! The codes by which the types of [`open_box`](crate::wiring::open_box) are saved.

use crate::saved::coded;
use crate::wiring::open_box::description::{Colour, LoadKind, Side, SwitchForm, Terminal};
use crate::wiring::open_box::reading::Meter;
use crate::wiring::open_box::situation::Position;
use crate::wiring::panel::Leg;

coded!(Colour {
    Colour::Black => "black",
    Colour::Red => "red",
    Colour::White => "white",
    Colour::MarkedWhite => "marked_white",
    Colour::Bare => "bare",
});

coded!(Side {
    Side::Near => "near",
    Side::Far => "far",
});

coded!(SwitchForm {
    SwitchForm::SinglePole => "single_pole",
    SwitchForm::ThreeWay => "three_way",
    SwitchForm::FourWay => "four_way",
});

coded!(Terminal {
    Terminal::First => "first",
    Terminal::Second => "second",
    Terminal::Common => "common",
    Terminal::TravellerOne => "traveller_one",
    Terminal::TravellerTwo => "traveller_two",
    Terminal::OnwardOne => "onward_one",
    Terminal::OnwardTwo => "onward_two",
    Terminal::Hot => "hot",
    Terminal::HotLower => "hot_lower",
    Terminal::Neutral => "neutral",
    Terminal::NeutralLower => "neutral_lower",
    Terminal::Ground => "ground",
});

coded!(LoadKind {
    LoadKind::Filament => "filament",
    LoadKind::Electronic => "electronic",
    LoadKind::Heater => "heater",
    LoadKind::Motor => "motor",
    LoadKind::Other => "other",
});

coded!(Meter {
    Meter::HighImpedance => "high_impedance",
    Meter::LowImpedance => "low_impedance",
});

coded!(Position {
    Position::One => "one",
    Position::Two => "two",
});

coded!(Leg {
    Leg::A => "a",
    Leg::B => "b",
});
