//! How the types of a saved document are read from JSON and written as JSON.
//!
//! - [`Saved`] a type that can be read and written; the macros [`saved!`] and [`codes!`] say how for a struct and for an
//!   enum, each field and each code once;
//! - [`read`] and [`write()`] from and to text;
//! - [`Fault`] what is wrong, and where;
//! - [`Fields`] and [`Writer`] what the macros and types of another form are made of.
//!
//! A struct keeps the fields that it does not know in its field `rest` and writes them behind its own. One reader and
//! one writer serve all types: code made anew for each type by a derive was a tenth of what a first visit downloads.

use std::fmt::Write as _;

/// A piece of JSON.
pub use serde_json::Value;
use serde_json::{Map, Number};

/// A type that is saved in a document.
pub trait Saved: Sized {
    /// The value that a piece of JSON stands for.
    ///
    /// # Errors
    /// [`Fault`] where a field is missing or of the wrong kind.
    fn read(value: Value) -> Result<Self, Fault>;

    /// Writes the value as JSON.
    fn write(&self, to: &mut Writer);
}

/// Reads a text.
///
/// # Errors
/// [`Fault`]; a text that is not JSON is one at the document's root.
pub fn read<T: Saved>(text: &str) -> Result<T, Fault> {
    match serde_json::from_str(text) {
        Ok(value) => T::read(value),
        Err(_) => Err(Fault::new("not JSON")),
    }
}

/// Writes a value as a text without line breaks or indents.
pub fn write(value: &impl Saved) -> String {
    let mut to = Writer::new(false);
    value.write(&mut to);
    to.finish()
}

/// Writes a value as a text with line breaks and indents of two spaces.
pub fn write_indented(value: &impl Saved) -> String {
    let mut to = Writer::new(true);
    value.write(&mut to);
    to.finish()
}

/// A piece of JSON as a text in one line.
pub fn shown(value: &Value) -> String {
    let mut to = Writer::new(false);
    to.value(value);
    to.finish()
}

/// What is wrong in a document, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    at: String,
    /// What is wrong there, in the terms of the document format.
    pub what: String,
}

impl Fault {
    /// A fault of the value itself.
    pub fn new(what: impl Into<String>) -> Self {
        Self {
            at: String::new(),
            what: what.into(),
        }
    }

    /// The place, like `rooms[0].survey.spots[3].id`; `.` for the whole.
    pub fn at(&self) -> &str {
        if self.at.is_empty() { "." } else { &self.at }
    }

    /// A value of another kind than the one expected.
    #[inline(never)]
    pub fn kind(found: &Value, expected: &str) -> Self {
        let found = match found {
            Value::Null => "null",
            Value::Bool(_) => "a boolean",
            Value::Number(_) => "a number",
            Value::String(_) => "a string",
            Value::Array(_) => "a list",
            Value::Object(_) => "an object",
        };
        Self::new(format!("expected {expected}, found {found}"))
    }

    /// The same fault, seen from the object that holds it as a field, or from the list that has it in a place.
    fn under(mut self, holder: &str) -> Self {
        let join = match self.at.chars().next() {
            None | Some('[') => "",
            Some(_) => ".",
        };
        self.at = format!("{holder}{join}{}", self.at);
        self
    }
}

/// The fields of an object, taken out one by one.
pub struct Fields(Map<String, Value>);

impl Fields {
    /// The fields of a value that must be an object.
    ///
    /// # Errors
    /// [`Fault`] where it is none.
    #[inline(never)]
    pub fn of(value: Value) -> Result<Self, Fault> {
        match value {
            Value::Object(fields) => Ok(Self(fields)),
            other => Err(Fault::kind(&other, "an object")),
        }
    }

    /// A field that every version has written.
    ///
    /// # Errors
    /// [`Fault`] where it is missing or of the wrong kind.
    #[inline(never)]
    pub fn needed<T: Saved>(&mut self, name: &str) -> Result<T, Fault> {
        match self.0.remove(name) {
            Some(value) => T::read(value).map_err(|fault| fault.under(name)),
            None => Err(Fault::new(format!("missing field `{name}`"))),
        }
    }

    /// A field that may be missing.
    ///
    /// # Errors
    /// [`Fault`] where it is of the wrong kind.
    #[inline(never)]
    pub fn or_default<T: Saved + Default>(&mut self, name: &str) -> Result<T, Fault> {
        match self.0.remove(name) {
            Some(value) => T::read(value).map_err(|fault| fault.under(name)),
            None => Ok(T::default()),
        }
    }

    /// What was not taken out.
    pub fn rest(self) -> Map<String, Value> {
        self.0
    }
}

/// Reads and writes a struct whose field `rest` keeps what it does not know: each field, in the order in which
/// they are written, and whether it is `needed` or its type's default serves where it is missing (`or_default`).
#[macro_export]
macro_rules! saved {
    ($name:ty { $($field:ident: $how:ident),* $(,)? }) => {
        impl $crate::saved::Saved for $name {
            #[inline(never)]
            fn read(value: $crate::saved::Value) -> Result<Self, $crate::saved::Fault> {
                let mut fields = $crate::saved::Fields::of(value)?;
                Ok(Self {
                    $($field: fields.$how(stringify!($field))?,)*
                    rest: fields.rest(),
                })
            }

            #[inline(never)]
            fn write(&self, to: &mut $crate::saved::Writer) {
                to.open('{');
                $(to.field(stringify!($field)); self.$field.write(to);)*
                to.fields(&self.rest);
                to.close('}');
            }
        }
    };
}

/// Reads and writes an enum without values by its codes; questions and answers name it by the same.
macro_rules! codes {
    ($name:ident { $($variant:ident = $code:literal),* $(,)? }) => {
        impl $name {
            /// The word by which it is saved.
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code),* }
            }
        }

        impl $crate::saved::Saved for $name {
            fn read(value: serde_json::Value) -> Result<Self, $crate::saved::Fault> {
                let known = [$(Self::$variant),*];
                let at = $crate::saved::code_at(&value, &[$($code),*])?;
                known.get(at).copied().ok_or_else(|| $crate::saved::Fault::kind(&value, "a code"))
            }

            fn write(&self, to: &mut $crate::saved::Writer) {
                to.text(self.code());
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(self.code())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let value = <$crate::saved::Value as serde::Deserialize>::deserialize(from)?;
                <Self as $crate::saved::Saved>::read(value)
                    .map_err(|fault| serde::de::Error::custom(fault.what))
            }
        }
    };
}

pub(crate) use codes;

/// The place of a value among codes.
pub(crate) fn code_at(value: &Value, codes: &[&str]) -> Result<usize, Fault> {
    let Value::String(code) = value else {
        return Err(Fault::kind(value, "a string"));
    };
    codes.iter().position(|known| known == code).ok_or_else(|| {
        Fault::new(format!(
            "unknown code `{code}`, expected one of {}",
            codes.join(", ")
        ))
    })
}

impl Saved for String {
    fn read(value: Value) -> Result<Self, Fault> {
        match value {
            Value::String(text) => Ok(text),
            other => Err(Fault::kind(&other, "a string")),
        }
    }

    fn write(&self, to: &mut Writer) {
        to.text(self);
    }
}

impl Saved for u32 {
    fn read(value: Value) -> Result<Self, Fault> {
        let whole = value.as_u64().and_then(|n| Self::try_from(n).ok());
        whole.ok_or_else(|| match value {
            Value::Number(_) => Fault::new(format!(
                "expected a whole number up to {}, found {}",
                Self::MAX,
                shown(&value)
            )),
            other => Fault::kind(&other, "a whole number"),
        })
    }

    fn write(&self, to: &mut Writer) {
        let _ = write!(to.text, "{self}");
    }
}

impl<T: Saved> Saved for Option<T> {
    fn read(value: Value) -> Result<Self, Fault> {
        match value {
            Value::Null => Ok(None),
            value => T::read(value).map(Some),
        }
    }

    fn write(&self, to: &mut Writer) {
        match self {
            Some(value) => value.write(to),
            None => to.text.push_str("null"),
        }
    }
}

impl<T: Saved> Saved for Vec<T> {
    fn read(value: Value) -> Result<Self, Fault> {
        let Value::Array(values) = value else {
            return Err(Fault::kind(&value, "a list"));
        };
        let mut all = Self::with_capacity(values.len());
        for (n, value) in values.into_iter().enumerate() {
            all.push(T::read(value).map_err(|fault| fault.under(&format!("[{n}]")))?);
        }
        Ok(all)
    }

    fn write(&self, to: &mut Writer) {
        to.open('[');
        for value in self {
            to.item();
            value.write(to);
        }
        to.close(']');
    }
}

/// A JSON text in the making.
pub struct Writer {
    text: String,
    /// Spaces at the start of a line; none: all in one line.
    indent: Option<usize>,
    /// Nothing stands yet in the list or object that was opened last.
    empty: bool,
}

impl Writer {
    fn new(indented: bool) -> Self {
        Self {
            text: String::new(),
            indent: indented.then_some(0),
            empty: true,
        }
    }

    fn finish(self) -> String {
        self.text
    }

    fn line(&mut self) {
        if let Some(indent) = self.indent {
            self.text.push('\n');
            self.text.extend(std::iter::repeat_n(' ', indent));
        }
    }

    /// Opens a list or an object.
    #[inline(never)]
    pub fn open(&mut self, bracket: char) {
        self.text.push(bracket);
        self.indent = self.indent.map(|indent| indent + 2);
        self.empty = true;
    }

    /// Closes what was opened last.
    #[inline(never)]
    pub fn close(&mut self, bracket: char) {
        self.indent = self.indent.map(|indent| indent.saturating_sub(2));
        if !self.empty {
            self.line();
        }
        self.text.push(bracket);
        self.empty = false;
    }

    /// The next value of a list follows.
    pub fn item(&mut self) {
        if !self.empty {
            self.text.push(',');
        }
        self.line();
        self.empty = false;
    }

    /// The value of a field follows.
    #[inline(never)]
    pub fn field(&mut self, name: &str) {
        self.item();
        self.text(name);
        self.text
            .push_str(if self.indent.is_some() { ": " } else { ":" });
    }

    /// Writes fields that are kept as they were read.
    pub fn fields(&mut self, fields: &Map<String, Value>) {
        for (name, value) in fields {
            self.field(name);
            self.value(value);
        }
    }

    /// Writes a piece of JSON.
    pub fn value(&mut self, value: &Value) {
        match value {
            Value::Null => self.text.push_str("null"),
            Value::Bool(true) => self.text.push_str("true"),
            Value::Bool(false) => self.text.push_str("false"),
            Value::Number(number) => self.number(number),
            Value::String(text) => self.text(text),
            Value::Array(values) => {
                self.open('[');
                for value in values {
                    self.item();
                    self.value(value);
                }
                self.close(']');
            }
            Value::Object(fields) => {
                self.open('{');
                self.fields(fields);
                self.close('}');
            }
        }
    }

    /// Writes a number so that it is read as the same again: a whole one without a point, any other with one.
    fn number(&mut self, number: &Number) {
        let _ = match (number.as_u64(), number.as_i64(), number.as_f64()) {
            (Some(whole), ..) => write!(self.text, "{whole}"),
            (None, Some(whole), _) => write!(self.text, "{whole}"),
            (None, None, Some(value)) if value.fract() == 0.0 => write!(self.text, "{value}.0"),
            (None, None, Some(value)) => write!(self.text, "{value}"),
            (None, None, None) => write!(self.text, "null"),
        };
    }

    /// Writes a string, its quotes and control characters escaped (RFC 8259, section 7).
    #[inline(never)]
    pub fn text(&mut self, text: &str) {
        self.text.push('"');
        for c in text.chars() {
            match c {
                '"' => self.text.push_str("\\\""),
                '\\' => self.text.push_str("\\\\"),
                '\n' => self.text.push_str("\\n"),
                '\r' => self.text.push_str("\\r"),
                '\t' => self.text.push_str("\\t"),
                '\u{8}' => self.text.push_str("\\b"),
                '\u{c}' => self.text.push_str("\\f"),
                '\0'..='\u{1f}' => {
                    let _ = write!(self.text, "\\u{:04x}", u32::from(c));
                }
                c => self.text.push(c),
            }
        }
        self.text.push('"');
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn any_json() -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::from),
            any::<i64>().prop_map(Value::from),
            any::<u64>().prop_map(Value::from),
            any::<i32>().prop_map(|n| Value::from(f64::from(n) / 64.0)),
            any::<String>().prop_map(Value::from),
            "[\u{0}-\u{ff}]{0,9}".prop_map(Value::from),
        ];
        leaf.prop_recursive(4, 24, 4, |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
                prop::collection::btree_map(any::<String>(), inner, 0..4)
                    .prop_map(|fields| Value::Object(fields.into_iter().collect())),
            ]
        })
    }

    proptest! {
        /// The general-purpose library writes the same, byte for byte.
        #[test]
        fn json_is_written_as_serde_json_writes_it(value in any_json()) {
            let written = |indented| {
                let mut to = Writer::new(indented);
                to.value(&value);
                to.finish()
            };
            prop_assert_eq!(written(false), serde_json::to_string(&value).unwrap());
            prop_assert_eq!(written(true), serde_json::to_string_pretty(&value).unwrap());
        }

        /// It writes very large and very small numbers with an exponent, and reads them without one as the same.
        #[test]
        fn every_number_is_read_as_it_was(number in prop::num::f64::NORMAL) {
            let value = Value::from(number);
            prop_assert_eq!(serde_json::from_str::<Value>(&shown(&value)).unwrap(), value);
        }
    }

    #[test]
    fn a_fault_says_where() {
        let lists = read::<Vec<Vec<u32>>>("[[1, 2], [3, -4]]").unwrap_err();
        assert_eq!(lists.at(), "[1][1]");
        assert_eq!(
            lists.what,
            "expected a whole number up to 4294967295, found -4"
        );
        let whole = read::<u32>("\"4\"").unwrap_err();
        assert_eq!(
            (whole.at(), whole.what.as_str()),
            (".", "expected a whole number, found a string")
        );
        assert_eq!(
            read::<u32>("4.0").unwrap_err().what,
            "expected a whole number up to 4294967295, found 4.0"
        );
        assert_eq!(read::<Option<u32>>("null"), Ok(None));
        assert_eq!(read::<u32>("{").unwrap_err().what, "not JSON");
    }
}
