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
