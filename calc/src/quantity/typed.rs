//! An entry kept exactly as it was typed.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// What a user typed into a measured field, with the unit that the field had at that moment.
///
/// The text is never rounded, tidied or dropped, not even when it can't be parsed yet. The unit only matters
/// for a bare number: `7' 3 5/8"` says its own units, `87.6` means what the field said when it was typed, so a
/// later change of units changes no meaning.
///
/// Saved as a plain string where no unit is kept, otherwise as `{"typed": "87.6", "unit": "in"}`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Typed {
    /// The text as typed.
    pub text: String,
    /// The field's unit when it was typed (`in`, `mm`, `ft3`, ...); empty: the field's own first unit.
    pub unit: String,
}

impl Typed {
    /// A text typed into a field that reads bare numbers in `unit`.
    pub fn new(text: impl Into<String>, unit: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            unit: unit.into(),
        }
    }

    /// A text that needs no unit beside it.
    pub fn plain(text: impl Into<String>) -> Self {
        Self::new(text, "")
    }

    /// A text typed into a field that reads bare numbers in `unit`; the unit is kept only where the text names
    /// none itself.
    ///
    /// ```
    /// use calc::quantity::Typed;
    /// assert_eq!(Typed::kept("87.6", "in"), Typed::new("87.6", "in"));
    /// assert_eq!(Typed::kept("7' 3 5/8\"", "in"), Typed::plain("7' 3 5/8\""));
    /// ```
    pub fn kept(text: impl Into<String>, unit: &str) -> Self {
        let text = text.into();
        if super::entry::names_its_unit(&text, unit) {
            Self::plain(text)
        } else {
            Self::new(text, unit)
        }
    }

    /// True where nothing but blanks was typed.
    pub fn is_blank(&self) -> bool {
        self.text.trim().is_empty()
    }
}

#[derive(Serialize, Deserialize)]
struct WithUnit {
    typed: String,
    unit: String,
}

#[derive(Deserialize)]
#[serde(untagged)]
enum Saved {
    Text(String),
    WithUnit(WithUnit),
    Number(f64),
}

impl Serialize for Typed {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if self.unit.is_empty() {
            self.text.serialize(serializer)
        } else {
            WithUnit {
                typed: self.text.clone(),
                unit: self.unit.clone(),
            }
            .serialize(serializer)
        }
    }
}

impl<'de> Deserialize<'de> for Typed {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(match Saved::deserialize(deserializer)? {
            Saved::Text(text) => Self::plain(text),
            Saved::WithUnit(w) => Self::new(w.typed, w.unit),
            Saved::Number(n) => Self::plain(n.to_string()),
        })
    }
}
