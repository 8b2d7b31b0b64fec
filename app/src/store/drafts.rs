//! What is typed but belongs to no job yet (a pasted list, a spot not added): kept for this tab over a reload.

use calc::quantity::Typed;
use calc::saved;
use leptos::prelude::*;

fn session() -> Option<web_sys::Storage> {
    window().session_storage().ok().flatten()
}

/// An entry that survives a reload of this tab. Where the tab's storage is full or blocked it lives until then.
pub fn draft(key: &str) -> RwSignal<Typed> {
    let key = format!("{}draft.{key}", super::keys::PREFIX);
    let kept = session().and_then(|s| s.get_item(&key).ok().flatten());
    let entry = RwSignal::new(
        kept.and_then(|text| saved::read(&text).ok())
            .unwrap_or_default(),
    );
    Effect::new(move |before: Option<()>| {
        let text = entry.with(saved::write);
        if let (Some(()), Some(session)) = (before, session()) {
            let _ = session.set_item(&key, &text);
        }
    });
    entry
}
