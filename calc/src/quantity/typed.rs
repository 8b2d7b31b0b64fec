//! An entry kept exactly as it was typed.

use serde_json::{Map, Value};

use crate::saved::{self, Fault, Saved, Writer};

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
    /// Fields that a later version keeps beside these; written back as they were.
    pub rest: Map<String, Value>,
}

impl Typed {
    /// A text typed into a field that reads bare numbers in `unit`.
    pub fn new(text: impl Into<String>, unit: impl Into<String>) -> Self {
        Self {
            text: text.into(),
            unit: unit.into(),
            rest: Map::new(),
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

impl Saved for Typed {
    fn read(value: Value) -> Result<Self, Fault> {
        let mut fields = match value {
            Value::String(text) => return Ok(Self::plain(text)),
            Value::Number(_) => return Ok(Self::plain(saved::shown(&value))),
            Value::Object(fields) => fields,
            other => {
                return Err(Fault::kind(
                    &other,
                    "an entry: a string, a number or an object",
                ));
            }
        };
        let text = match fields.remove("typed") {
            Some(Value::String(text)) => text,
            Some(number @ Value::Number(_)) => saved::shown(&number),
            Some(_) => return Err(Fault::new("expected a string in `typed`")),
            None => return Err(Fault::new("missing field `typed`")),
        };
        let unit = match fields.remove("unit") {
            Some(Value::String(unit)) => unit,
            Some(_) => return Err(Fault::new("expected a string in `unit`")),
            None => String::new(),
        };
        Ok(Self {
            text,
            unit,
            rest: fields,
        })
    }

    fn write(&self, to: &mut Writer) {
        if self.unit.is_empty() && self.rest.is_empty() {
            return to.text(&self.text);
        }
        to.open('{');
        to.field("typed");
        to.text(&self.text);
        if !self.unit.is_empty() {
            to.field("unit");
            to.text(&self.unit);
        }
        to.fields(&self.rest);
        to.close('}');
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(json: &str, expected: Typed, written: &str) {
        let typed: Typed = saved::read(json).unwrap();
        assert_eq!(typed, expected);
        assert_eq!(saved::write(&typed), written);
    }

    #[test]
    fn the_text_is_kept_as_typed() {
        reads(
            r#"" 7' 3 5/8\" ""#,
            Typed::plain(" 7' 3 5/8\" "),
            r#"" 7' 3 5/8\" ""#,
        );
        reads(
            r#"{"unit":"in","typed":"87.6"}"#,
            Typed::new("87.6", "in"),
            r#"{"typed":"87.6","unit":"in"}"#,
        );
        reads("87.60", Typed::plain("87.6"), r#""87.6""#);
    }

    #[test]
    fn unknown_fields_are_kept() {
        let mut expected = Typed::plain("3");
        expected
            .rest
            .insert("read_at".to_owned(), Value::from("noon"));
        reads(
            r#"{"typed":"3","read_at":"noon"}"#,
            expected,
            r#"{"typed":"3","read_at":"noon"}"#,
        );
    }

    #[test]
    fn what_is_no_entry_is_refused() {
        for json in [
            "null",
            "[]",
            "{}",
            "true",
            r#"{"typed":null}"#,
            r#"{"typed":"1","unit":2}"#,
        ] {
            assert!(saved::read::<Typed>(json).is_err(), "{json}");
        }
    }
}
