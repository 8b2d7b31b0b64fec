//! Amounts with a unit behind them, and temperatures.

use crate::quantity::entry;
use crate::quantity::number::parse_number;
use crate::quantity::{EntryRefusal, NumberRange, Typed, lower};
use crate::wiring::tables::Ambient;

/// The unit of an amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Symbol {
    /// Amperes.
    Amps,
    /// Volts.
    Volts,
    /// Watts.
    Watts,
    /// Ohms.
    Ohms,
}

impl Symbol {
    /// The symbol as it is printed.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Amps => "A",
            Self::Volts => "V",
            Self::Watts => "W",
            Self::Ohms => "\u{3a9}",
        }
    }

    /// What may stand behind a number, in small letters, and how many of the unit it is.
    const fn written(self) -> &'static [(&'static str, f64)] {
        match self {
            Self::Amps => &[("ma", 0.001), ("amps", 1.0), ("amp", 1.0), ("a", 1.0)],
            Self::Volts => &[("mv", 0.001), ("volts", 1.0), ("volt", 1.0), ("v", 1.0)],
            Self::Watts => &[("kw", 1000.0), ("watts", 1.0), ("watt", 1.0), ("w", 1.0)],
            Self::Ohms => &[
                ("ohms", 1.0),
                ("ohm", 1.0),
                ("\u{3a9}", 1.0),
                ("\u{2126}", 1.0),
            ],
        }
    }
}

/// The code of the unit of a bare temperature.
pub(super) const fn degrees(metric: bool) -> &'static str {
    if metric { "degC" } else { "degF" }
}

/// A number with what stands behind it in the list taken off: the factor that goes with it.
fn split<'a>(text: &'a str, endings: &[(&'static str, f64)]) -> (&'a str, Option<f64>) {
    let text = text.trim_end();
    let small = lower(text);
    for &(ending, factor) in endings {
        // Small letters may have another length in bytes than large ones: both ends must agree.
        if let Some(kept) = small.strip_suffix(ending)
            && let Some(number) = text.get(..kept.len())
        {
            return (number, Some(factor));
        }
    }
    (text, None)
}

/// Reads an amount.
pub(super) fn amount(
    typed: &Typed,
    symbol: Symbol,
    allowed: &NumberRange,
) -> Result<f64, EntryRefusal> {
    let (number, factor) = split(&typed.text, symbol.written());
    let value = parse_number(number)? * factor.unwrap_or(1.0);
    entry::within_number(typed, value, allowed)
}

/// A temperature in the unit it was given in: `122 F`, `50 °C`, a bare number in the unit kept, else in degrees F.
///
/// # Errors
/// A blank, a text that is no number, a kept unit that is none of temperature, or one that [`AMBIENT`](super::AMBIENT)
/// doesn't allow.
///
/// ```
/// use calc::job::{Typed, fields::ambient};
/// use calc::wiring::tables::Ambient;
/// assert_eq!(ambient(&Typed::plain("122 F")), Ok(Ambient::Fahrenheit(122.0)));
/// assert_eq!(ambient(&Typed::new("50", "degC")), Ok(Ambient::Celsius(50.0)));
/// ```
pub fn ambient(typed: &Typed) -> Result<Ambient, EntryRefusal> {
    let given = temperature(typed)?;
    super::AMBIENT.read(typed).map(|_| given)
}

fn temperature(typed: &Typed) -> Result<Ambient, EntryRefusal> {
    const ENDINGS: &[(&str, f64)] = &[
        ("\u{b0}f", 1.0),
        ("degf", 1.0),
        ("f", 1.0),
        ("\u{b0}c", 0.0),
        ("degc", 0.0),
        ("c", 0.0),
    ];
    let (number, own) = split(&typed.text, ENDINGS);
    let value = parse_number(number)?;
    let fahrenheit = match (own, typed.unit.as_str()) {
        (Some(own), _) => own == 1.0,
        (None, "" | "degF") => true,
        (None, "degC") => false,
        (None, unit) => {
            return Err(EntryRefusal::UnknownUnit {
                unit: unit.to_owned(),
            });
        }
    };
    Ok(if fahrenheit {
        Ambient::Fahrenheit(value)
    } else {
        Ambient::Celsius(value)
    })
}

/// Reads a temperature, degrees C.
pub(super) fn celsius(typed: &Typed, allowed: &NumberRange) -> Result<f64, EntryRefusal> {
    let value = match temperature(typed)? {
        Ambient::Celsius(degrees) => degrees,
        // NIST SP 811, appendix B: (F - 32) / 1.8, exactly.
        Ambient::Fahrenheit(degrees) => (degrees - 32.0) / 1.8,
    };
    entry::within_number(&Typed::default(), value, allowed)
}
