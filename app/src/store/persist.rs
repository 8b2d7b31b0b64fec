//! Asking the browser not to clear storage by itself.

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::keys;
use super::shelf::Shelf;

/// What the browser answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Persistence {
    /// Storage stays until the user clears it.
    Kept,
    /// The browser may clear storage when the device runs short.
    NotKept,
    /// It was asked before; it is not asked twice.
    AskedBefore,
    /// This browser has no such promise to give.
    Unsupported,
}

/// Asks once, after the first real save: some browsers show a question, which would make no sense earlier.
pub async fn ask(shelf: &dyn Shelf) -> Persistence {
    if shelf.get(keys::PERSIST).ok().flatten().is_some() {
        return Persistence::AskedBefore;
    }
    let Some(promise) = promised() else {
        return Persistence::Unsupported;
    };
    // Marked before the answer: a question left open is a question asked.
    let _ = shelf.set(keys::PERSIST, "asked");
    match JsFuture::from(promise).await {
        Ok(answer) if answer.is_truthy() => Persistence::Kept,
        _ => Persistence::NotKept,
    }
}

/// `navigator.storage.persist()`, asked for by name: it is missing outside secure pages and in older browsers.
fn promised() -> Option<Promise> {
    let get = |of: &JsValue, name: &str| Reflect::get(of, &JsValue::from_str(name)).ok();
    let navigator: JsValue = web_sys::window()?.navigator().into();
    let storage = get(&navigator, "storage").filter(JsValue::is_object)?;
    let persist: Function = get(&storage, "persist")?.dyn_into().ok()?;
    persist.call0(&storage).ok()?.dyn_into().ok()
}
