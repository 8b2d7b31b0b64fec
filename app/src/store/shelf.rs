//! What storage can do, and a shelf that lives in memory.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use thiserror::Error;

/// Named texts. Each call is whole: a `set` that fails leaves the old text.
pub trait Shelf: Send + Sync {
    /// The text under a key.
    ///
    /// # Errors
    /// [`ShelfRefusal::Blocked`].
    fn get(&self, key: &str) -> Result<Option<String>, ShelfRefusal>;

    /// Puts a text under a key.
    ///
    /// # Errors
    /// [`ShelfRefusal`]; the old text stays.
    fn set(&self, key: &str, text: &str) -> Result<(), ShelfRefusal>;

    /// Removes a key; no matter if there is none.
    ///
    /// # Errors
    /// [`ShelfRefusal::Blocked`].
    fn remove(&self, key: &str) -> Result<(), ShelfRefusal>;

    /// The app's own keys, sorted.
    ///
    /// # Errors
    /// [`ShelfRefusal::Blocked`].
    fn keys(&self) -> Result<Vec<String>, ShelfRefusal>;
}

/// Why storage did not answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum ShelfRefusal {
    /// No room left for this text.
    #[error("storage is full")]
    Full,
    /// The browser or its user allows no storage.
    #[error("storage is blocked")]
    Blocked,
}

/// A shelf in memory: for tests, and where the browser blocks storage. Clones share what is on it.
#[derive(Clone, Debug, Default)]
pub struct MemoryShelf {
    texts: Arc<Mutex<BTreeMap<String, String>>>,
    capacity: Option<usize>,
}

impl MemoryShelf {
    /// A shelf that holds at most so many UTF-16 units, keys included: browsers count so.
    pub fn with_capacity(units: usize) -> Self {
        Self {
            capacity: Some(units),
            ..Self::default()
        }
    }

    fn texts(&self) -> MutexGuard<'_, BTreeMap<String, String>> {
        self.texts.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn units(key: &str, text: &str) -> usize {
    key.encode_utf16().count() + text.encode_utf16().count()
}

impl Shelf for MemoryShelf {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfRefusal> {
        Ok(self.texts().get(key).cloned())
    }

    fn set(&self, key: &str, text: &str) -> Result<(), ShelfRefusal> {
        let mut texts = self.texts();
        if let Some(capacity) = self.capacity {
            let others = texts.iter().filter(|(other, _)| *other != key);
            let used: usize = others.map(|(key, text)| units(key, text)).sum();
            if used + units(key, text) > capacity {
                return Err(ShelfRefusal::Full);
            }
        }
        texts.insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), ShelfRefusal> {
        self.texts().remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, ShelfRefusal> {
        Ok(self.texts().keys().cloned().collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_shelf_keeps_the_old_text() {
        let shelf = MemoryShelf::with_capacity(10);
        assert_eq!(shelf.set("ab", "12345678"), Ok(()));
        assert_eq!(shelf.set("ab", "123456789"), Err(ShelfRefusal::Full));
        assert_eq!(shelf.set("c", ""), Err(ShelfRefusal::Full));
        assert_eq!(shelf.get("ab"), Ok(Some("12345678".to_owned())));
        assert_eq!(shelf.set("ab", "🧱345678"), Ok(())); // a brick is two units
        assert_eq!(shelf.clone().keys(), Ok(vec!["ab".to_owned()]));
        assert_eq!(shelf.remove("ab"), Ok(()));
        assert_eq!(shelf.get("ab"), Ok(None));
    }
}
