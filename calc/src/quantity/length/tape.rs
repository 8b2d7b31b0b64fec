//! Setting the fraction of a length with a thumb on a drawn tape, without losing how the rest was typed.

use super::parse::parse_length;
use super::{Length, LengthUnit};

/// Sixteenths that a tape's mark stands at: the part of the length beyond its last whole inch, to the nearest
/// sixteenth below; nothing for a text that is no length. A blank is zero.
///
/// ```
/// use calc::quantity::{LengthUnit, length::tape};
/// assert_eq!(tape::sixteenths("7' 3 5/8\"", LengthUnit::Inches), Some(10));
/// assert_eq!(tape::sixteenths("", LengthUnit::Inches), Some(0));
/// assert_eq!(tape::sixteenths("about 3", LengthUnit::Inches), None);
/// ```
pub fn sixteenths(text: &str, bare: LengthUnit) -> Option<u32> {
    if text.trim().is_empty() {
        return Some(0);
    }
    let inches = parse_length(text, bare).ok()?.inches().abs();
    // Within 0 to 15: the fraction is under one.
    Some(((inches.fract() * 16.0 + 1e-9).floor() as u32).min(15))
}

/// The text with its fraction of an inch replaced; feet stay feet where feet were typed. Nothing where the text
/// is no length.
///
/// ```
/// use calc::quantity::{LengthUnit, length::tape};
/// assert_eq!(tape::with_sixteenths("7' 3", 10, LengthUnit::Inches).as_deref(), Some("7' 3 5/8\""));
/// assert_eq!(tape::with_sixteenths("2", 6, LengthUnit::Inches).as_deref(), Some("2 3/8"));
/// assert_eq!(tape::with_sixteenths("", 8, LengthUnit::Inches).as_deref(), Some("1/2"));
/// assert_eq!(tape::with_sixteenths("2 3/8", 0, LengthUnit::Inches).as_deref(), Some("2"));
/// ```
pub fn with_sixteenths(text: &str, sixteenth: u32, bare: LengthUnit) -> Option<String> {
    let before = if text.trim().is_empty() {
        Length::ZERO
    } else {
        parse_length(text, bare).ok()?
    };
    let inches = before.inches();
    let whole = inches.abs().trunc() + f64::from(sixteenth.min(15)) / 16.0;
    let length = Length::from_inches(if inches < 0.0 { -whole } else { whole });
    let has_feet =
        text.contains(['\'', '\u{2019}', '\u{2032}']) || text.to_ascii_lowercase().contains("ft");
    Some(if has_feet {
        length.format_feet_inches(16)
    } else {
        let inches = length.format_inches(16);
        if bare == LengthUnit::Inches {
            inches.trim_end_matches('"').to_owned()
        } else {
            inches
        }
    })
}
