//! The browser's own shelf.

use calc::order::Order;
use std::sync::Arc;

use js_sys::Reflect;
use wasm_bindgen::JsValue;
use web_sys::Storage;

use super::keys::PREFIX;
use super::shelf::{MemoryShelf, Shelf, ShelfRefusal};

/// `window.localStorage`, asked for anew at each call: a browser may block it at any time.
#[derive(Clone, Copy, Debug)]
pub struct LocalShelf;

/// The shelf to work with, and whether it is the browser's. Where storage is blocked, jobs live in memory until the
/// page closes: show a notice, offer the file.
pub fn open() -> (Arc<dyn Shelf>, Result<(), ShelfRefusal>) {
    match LocalShelf.keys() {
        Ok(_) => (Arc::new(LocalShelf), Ok(())),
        Err(refusal) => (Arc::new(MemoryShelf::default()), Err(refusal)),
    }
}

fn storage() -> Result<Storage, ShelfRefusal> {
    let window = web_sys::window().ok_or(ShelfRefusal::Blocked)?;
    window
        .local_storage()
        .ok()
        .flatten()
        .ok_or(ShelfRefusal::Blocked)
}

fn blocked<T>(_: T) -> ShelfRefusal {
    ShelfRefusal::Blocked
}

/// A full storage throws a `QuotaExceededError`; older browsers of one family use a name of their own for it.
fn refusal_of(thrown: &JsValue) -> ShelfRefusal {
    let name = Reflect::get(thrown, &JsValue::from_str("name"))
        .ok()
        .and_then(|name| name.as_string());
    match name.as_deref() {
        Some("QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED") => ShelfRefusal::Full,
        _ => ShelfRefusal::Blocked,
    }
}

impl Shelf for LocalShelf {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfRefusal> {
        storage()?.get_item(key).map_err(blocked)
    }

    fn set(&self, key: &str, text: &str) -> Result<(), ShelfRefusal> {
        storage()?
            .set_item(key, text)
            .map_err(|thrown| refusal_of(&thrown))
    }

    fn remove(&self, key: &str) -> Result<(), ShelfRefusal> {
        storage()?.remove_item(key).map_err(blocked)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfRefusal> {
        let storage = storage()?;
        let mut keys = Vec::new();
        for n in 0..storage.length().map_err(blocked)? {
            if let Some(key) = storage.key(n).map_err(blocked)?
                && key.starts_with(PREFIX)
            {
                keys.push(key);
            }
        }
        keys.order();
        Ok(keys)
    }
}
