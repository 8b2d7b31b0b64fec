//! What another tab writes.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{StorageEvent, Window};

use super::keys::{self, PREFIX};

/// A change that another tab made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A job was saved: its id and its new text.
    Job(String, String),
    /// A job was deleted.
    JobGone(String),
    /// Another key of the app: its new text, none if it was removed.
    Other(String, Option<String>),
    /// All of storage was cleared.
    Cleared,
}

/// Sorts a storage event; none where it is not about the app.
fn change_of(key: Option<String>, text: Option<String>) -> Option<Change> {
    let Some(key) = key else {
        return Some(Change::Cleared);
    };
    Some(match (keys::job_id(&key), text) {
        (Some(id), Some(text)) => Change::Job(id.to_owned(), text),
        (Some(id), None) => Change::JobGone(id.to_owned()),
        (None, text) if key.starts_with(PREFIX) => Change::Other(key, text),
        (None, _) => return None,
    })
}

/// Calls back for every change that another tab makes, until it is dropped.
pub struct Listener {
    window: Window,
    closure: Closure<dyn Fn(StorageEvent)>,
}

impl Listener {
    /// Starts to listen; none outside a browser window.
    pub fn new(on_change: impl Fn(Change) + 'static) -> Option<Self> {
        let window = web_sys::window()?;
        let closure = Closure::<dyn Fn(StorageEvent)>::new(move |event: StorageEvent| {
            if let Some(change) = change_of(event.key(), event.new_value()) {
                on_change(change);
            }
        });
        window
            .add_event_listener_with_callback("storage", closure.as_ref().unchecked_ref())
            .ok()?;
        Some(Self { window, closure })
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let callback = self.closure.as_ref().unchecked_ref();
        let _ = self
            .window
            .remove_event_listener_with_callback("storage", callback);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn changes_are_sorted_by_key() {
        let text = || Some("{}".to_owned());
        let of = |key: &str, text| change_of(Some(key.to_owned()), text);
        assert_eq!(
            of(&keys::job("a"), text()),
            Some(Change::Job("a".to_owned(), "{}".to_owned()))
        );
        assert_eq!(
            of(&keys::job("a"), None),
            Some(Change::JobGone("a".to_owned()))
        );
        assert_eq!(
            of(&keys::previous("a"), None),
            Some(Change::Other(keys::previous("a"), None))
        );
        assert_eq!(
            of(keys::LANG, text()),
            Some(Change::Other(keys::LANG.to_owned(), text()))
        );
        assert_eq!(of("another.app", text()), None);
        assert_eq!(change_of(None, None), Some(Change::Cleared));
    }
}
