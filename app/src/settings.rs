//! What belongs to the device and not to a job: language, light.

use leptos::prelude::*;

use crate::words::{self, Language};

/// The screen's light.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Light {
    /// As the device says.
    #[default]
    Auto,
    /// Paper.
    Day,
    /// Dark.
    Basement,
}

impl Light {
    const fn tag(self) -> &'static str {
        match self {
            Self::Auto => "",
            Self::Day => "day",
            Self::Basement => "basement",
        }
    }
}

const LANGUAGE_KEY: &str = "roomwright.lang";
const LIGHT_KEY: &str = "roomwright.light";
const TAPE_KEY: &str = "roomwright.tape";

/// The device's settings; one for the whole app, by context.
#[derive(Clone, Copy)]
pub struct Settings {
    /// Counts up when the language changes: everything is drawn anew.
    pub language_turn: RwSignal<u32>,
    /// The light in force.
    pub light: RwSignal<Light>,
    /// The user has moved between pages since the start.
    pub moved: RwSignal<bool>,
    /// Sixteenths on the tape strip.
    pub fine_tape: RwSignal<bool>,
    /// Id of the field whose keys and tape are open.
    pub open_tools: RwSignal<String>,
}

impl Settings {
    /// Reads the stored choices; the browser's own where none is stored.
    pub fn load() -> Self {
        let stored = |key| local_storage().and_then(|s| s.get_item(key).ok().flatten());
        let tag = stored(LANGUAGE_KEY)
            .or_else(|| window().navigator().language())
            .unwrap_or_default();
        words::set_language(Language::from_tag(&tag));
        let light = match stored(LIGHT_KEY).as_deref() {
            Some("day") => Light::Day,
            Some("basement") => Light::Basement,
            _ => Light::Auto,
        };
        let this = Self {
            language_turn: RwSignal::new(0),
            light: RwSignal::new(light),
            moved: RwSignal::new(false),
            fine_tape: RwSignal::new(stored(TAPE_KEY).as_deref() == Some("1/16")),
            open_tools: RwSignal::new(String::new()),
        };
        this.show();
        this
    }

    fn show(self) {
        if let Some(root) = document().document_element() {
            let _ = root.set_attribute("lang", words::language().tag());
            let _ = root.set_attribute("data-light", self.light.get_untracked().tag());
        }
    }

    /// Puts a language in force and keeps the choice.
    pub fn choose_language(self, language: Language) {
        words::set_language(language);
        keep(LANGUAGE_KEY, language.tag());
        self.show();
        self.language_turn.update(|n| *n += 1);
    }

    /// Turns the tape's sixteenths on or off and keeps the choice.
    pub fn turn_tape(self) {
        let fine = !self.fine_tape.get_untracked();
        self.fine_tape.set(fine);
        keep(TAPE_KEY, if fine { "1/16" } else { "1/8" });
    }

    /// Puts a light in force and keeps the choice.
    pub fn choose_light(self, light: Light) {
        self.light.set(light);
        keep(LIGHT_KEY, light.tag());
        self.show();
    }
}

/// The browser's storage, where it is not blocked.
fn local_storage() -> Option<web_sys::Storage> {
    window().local_storage().ok().flatten()
}

/// Keeps a choice; a full or blocked storage only means that it is asked again next time.
fn keep(key: &str, value: &str) {
    if let Some(storage) = local_storage() {
        let _ = storage.set_item(key, value);
    }
}
