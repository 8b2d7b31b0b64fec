//! Every word a user reads, in English and in Spanish as spoken on United States job sites.
//!
//! One file per area of the app. A word is one entry of [`words!`]: its name, its arguments, the English and
//! the Spanish; leave one out and the build fails. Names that stand in braces are the arguments.
//!
//! ```text
//! words! {
//!     jobs_title => "Jobs on this device" | "Trabajos en este aparato";
//!     bags(count: u32) => "{count} bags" | "{count} sacos";
//! }
//! ```

use std::sync::atomic::{AtomicU8, Ordering};

/// Makes one function per word; see the module's head.
macro_rules! words {
    ($($name:ident $(($($arg:ident: $ty:ty),+))? => $en:literal | $es:literal;)*) => {
        $(word! { $name $(($($arg: $ty),+))? => $en | $es })*
    };
}

macro_rules! word {
    ($name:ident => $en:literal | $es:literal) => {
        #[doc = $en]
        pub fn $name() -> &'static str {
            match $crate::words::language() {
                $crate::words::Language::English => $en,
                $crate::words::Language::Spanish => $es,
            }
        }
    };
    ($name:ident($($arg:ident: $ty:ty),+) => $en:literal | $es:literal) => {
        #[doc = $en]
        pub fn $name($($arg: $ty),+) -> String {
            match $crate::words::language() {
                $crate::words::Language::English => format!($en),
                $crate::words::Language::Spanish => format!($es),
            }
        }
    };
}

/// Makes a function from a stable name of calc's (a layer, a formula, a rule) to its words; nothing for a name
/// without words, which a test beside each keeps from happening.
macro_rules! named {
    ($(#[$doc:meta])* $function:ident { $($name:literal => $en:literal | $es:literal;)+ }) => {
        $(#[$doc])*
        pub fn $function(name: &str) -> Option<&'static str> {
            let (english, spanish) = match name {
                $($name => ($en, $es),)+
                _ => return None,
            };
            Some(match $crate::words::language() {
                $crate::words::Language::English => english,
                $crate::words::Language::Spanish => spanish,
            })
        }
    };
}

pub mod common;

pub mod entry;

pub mod gallery;

pub mod jobs;

pub mod demo;

pub mod standing;

pub mod room;

pub mod survey;

pub mod pour;

pub mod doorways;

pub mod closing;

pub mod sums;

pub mod wiring;

pub mod open_box;
pub mod supply;

pub mod quote;

pub mod sheet;

pub mod pictures;

pub mod notices;

pub mod refusals;

pub mod working;

/// The languages on offer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// English.
    English,
    /// Spanish.
    Spanish,
}

impl Language {
    /// The language's tag, as `<html lang>` and the stored choice have it.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
        }
    }

    /// The language for a tag such as `es-MX`; English where it is neither.
    pub fn from_tag(tag: &str) -> Self {
        if tag.to_ascii_lowercase().starts_with("es") {
            Self::Spanish
        } else {
            Self::English
        }
    }
}

static LANGUAGE: AtomicU8 = AtomicU8::new(0);

/// The language in force. The whole page is drawn anew when it changes, so words need not be reactive.
pub fn language() -> Language {
    if LANGUAGE.load(Ordering::Relaxed) == 1 {
        Language::Spanish
    } else {
        Language::English
    }
}

/// The one of two that is in the language in force.
pub fn either(english: &'static str, spanish: &'static str) -> &'static str {
    match language() {
        Language::English => english,
        Language::Spanish => spanish,
    }
}

/// Puts a language in force; the caller redraws.
pub fn set_language(language: Language) {
    LANGUAGE.store(u8::from(language == Language::Spanish), Ordering::Relaxed);
}
