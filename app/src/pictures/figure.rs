//! Figures as the trade reads them: feet, inches, and a fraction set as a fraction.

use crate::markup::view;
use crate::reactive::{When, draw};
use calc::job::Units;
use calc::quantity::Length;
use leptos::prelude::*;

/// A length as text in the units in force, to 1/16 in or to the millimetre.
pub fn length_text(inches: f64, units: Units) -> String {
    length_text_to(inches, units, 16)
}

/// The steps in which a length is shown: 1/16 in; 1 mm, below 100 mm a tenth of one.
fn shown_step(length: Length, units: Units) -> Length {
    match units {
        Units::FeetInches => Length::from_inches(1.0 / 16.0),
        Units::Metric if length.mm().abs() < 99.9 => Length::from_mm(0.1),
        Units::Metric => Length::from_mm(1.0),
    }
}

/// A length that must be at least so long, on to the next that is shown, inches: rounded to the nearest it would fall
/// short as often as not.
pub fn at_least_in(inches: f64, units: Units) -> f64 {
    let length = Length::from_inches(inches);
    length.rounded_up(shown_step(length, units)).inches()
}

/// A length that must be at least so long, as text.
pub fn at_least_text(inches: f64, units: Units) -> String {
    length_text(at_least_in(inches, units), units)
}

/// A length that must be at most so long, as text.
pub fn at_most_text(inches: f64, units: Units) -> String {
    let length = Length::from_inches(inches);
    let down = length.rounded_down(shown_step(length, units));
    length_text(down.inches(), units)
}

/// A thickness as text in the units in force, to 1/32 in or to the tenth of a millimetre: layers are thinner than
/// a tape reads.
pub fn thickness_text(inches: f64, units: Units) -> String {
    length_text_to(inches, units, 32)
}

fn length_text_to(inches: f64, units: Units, fineness: u32) -> String {
    let length = Length::from_inches(inches);
    match units {
        Units::FeetInches if inches.abs() < 24.0 => length.format_inches(fineness),
        Units::FeetInches => length.format_feet_inches(fineness),
        Units::Metric => length.format_mm(),
    }
}

/// A reading as text: inches throughout, as the tape at the line shows them.
pub fn reading_text(inches: f64, units: Units) -> String {
    match units {
        Units::FeetInches => Length::from_inches(inches).format_inches(16),
        Units::Metric => length_text(inches, units),
    }
}

/// The other system's text, for the quiet line beneath.
pub fn other_text(inches: f64, units: Units) -> String {
    match units {
        Units::FeetInches => length_text(inches, Units::Metric),
        Units::Metric => length_text(inches, Units::FeetInches),
    }
}

/// A large figure with its unit.
#[component]
pub fn Figure(
    /// The number, written out.
    #[prop(into)]
    value: Signal<String>,
    /// Its unit.
    #[prop(into, default = Signal::stored(String::new()))]
    unit: Signal<String>,
    /// The smaller of the two sizes.
    #[prop(optional)]
    small: bool,
) -> impl IntoView {
    view! {
        <p class="figure" class:small=small>
            {value}
            <When when=move || !unit.read().is_empty()>" "<span class="unit">{unit}</span></When>
        </p>
    }
}

/// A length as a large figure, its fraction set as a fraction.
#[component]
pub fn LengthFigure(
    /// The length, inches.
    #[prop(into)]
    inches: Signal<f64>,
    /// The units in force.
    #[prop(into)]
    units: Signal<Units>,
    /// The smaller of the two sizes.
    #[prop(optional)]
    small: bool,
    /// Parts of an inch that it is rounded to.
    #[prop(default = 16)]
    fineness: u32,
) -> impl IntoView {
    let drawn = move || {
        let length = Length::from_inches(inches.get());
        if units.get() == Units::Metric {
            let text = length.format_mm();
            let (number, unit) = text.split_once(' ').unwrap_or((&text, ""));
            return view! { {number.to_owned()} " " <span class="unit">{unit.to_owned()}</span> }
                .into_any();
        }
        let parts = if inches.get().abs() < 24.0 {
            length.inches_fraction(fineness)
        } else {
            length.feet_inches(fineness)
        };
        let Some(parts) = parts else {
            return length.format_inches(fineness).into_any();
        };
        let sign = parts.negative.then_some("\u{2212}");
        let feet = (parts.feet > 0).then(|| format!("{}' ", parts.feet));
        let whole = (parts.inches > 0 || parts.numerator == 0).then(|| parts.inches.to_string());
        let fraction = (parts.numerator > 0).then(|| {
            view! {
                <span class="fraction">
                    <span class="over">{parts.numerator}</span>
                    <span>{parts.denominator}</span>
                </span>
            }
        });
        view! {
            <span class="visually-hidden">{length_text_to(inches.get(), units.get(), fineness)}</span>
            <span aria-hidden="true">{sign} {feet} {whole} {fraction} <span class="mark-of-inch">"\""</span></span>
        }
        .into_any()
    };
    view! { <p class="figure" class:small=small>{draw(drawn)}</p> }
}
