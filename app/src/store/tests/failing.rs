//! Storage that fails at every possible write.

use std::sync::atomic::{AtomicUsize, Ordering};

use super::*;

/// A shelf whose writes from one on fail, or fail once.
struct Failing {
    shelf: MemoryShelf,
    left: AtomicUsize,
    how: ShelfRefusal,
    for_ever: bool,
}

impl Failing {
    fn fails(&self, removing: bool) -> bool {
        if removing && self.how == ShelfRefusal::Full {
            return false; // removing needs no room
        }
        let left = self.left.load(Ordering::Relaxed);
        if left > 0 {
            self.left.store(left - 1, Ordering::Relaxed);
        } else if !self.for_ever {
            self.left.store(usize::MAX, Ordering::Relaxed);
        }
        left == 0
    }
}

impl Shelf for Failing {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfRefusal> {
        self.shelf.get(key)
    }

    fn set(&self, key: &str, text: &str) -> Result<(), ShelfRefusal> {
        if self.fails(false) {
            Err(self.how)
        } else {
            self.shelf.set(key, text)
        }
    }

    fn remove(&self, key: &str) -> Result<(), ShelfRefusal> {
        if self.fails(true) {
            Err(self.how)
        } else {
            self.shelf.remove(key)
        }
    }

    fn keys(&self) -> Result<Vec<String>, ShelfRefusal> {
        self.shelf.keys()
    }
}

/// Runs `act` on shelves that fail at every possible write; returns how many writes an undisturbed run makes.
fn at_every_failure(act: impl Fn(&Failing, Seen)) -> usize {
    for how in [ShelfRefusal::Full, ShelfRefusal::Blocked] {
        for for_ever in [false, true] {
            for left in 0..12 {
                let shelf = MemoryShelf::default();
                let seen = shelf_with_two_texts(&shelf);
                let left = AtomicUsize::new(left);
                act(
                    &Failing {
                        shelf,
                        left,
                        how,
                        for_ever,
                    },
                    seen,
                );
            }
        }
    }
    let shelf = MemoryShelf::default();
    let seen = shelf_with_two_texts(&shelf);
    let (left, how) = (AtomicUsize::new(1000), ShelfRefusal::Blocked);
    let undisturbed = Failing {
        shelf,
        left,
        how,
        for_ever: true,
    };
    act(&undisturbed, seen);
    1000 - undisturbed.left.load(Ordering::Relaxed)
}

#[test]
fn a_save_that_fails_anywhere_leaves_the_old_text() {
    let writes = at_every_failure(|shelf, mut seen| {
        let before = seen.clone();
        let answer = jobs::save(shelf, &job("a", "three"), &mut seen);
        let (now, previous) = (at(shelf, &keys::job("a")), at(shelf, &keys::previous("a")));
        match answer {
            Ok(saved) => {
                assert_eq!(now, Some(text("three")));
                assert_eq!(previous, saved.previous_kept.then(|| text("two")));
                assert_eq!(loaded(shelf, "a").1, seen);
            }
            Err(refusal) => {
                assert!(matches!(refusal, SaveRefusal::Full | SaveRefusal::Blocked));
                assert_eq!((now, &seen), (Some(text("two")), &before));
            }
        }
        let listed = index::list(shelf).unwrap();
        assert_eq!(listed.len(), 1);
        assert_eq!(listed[0].name, loaded(shelf, "a").0.name);
    });
    assert!((3..12).contains(&writes), "{writes}");
}

#[test]
fn deleting_and_undoing_that_fail_anywhere_lose_no_text() {
    let writes = at_every_failure(|shelf, _| {
        let answer = bin::delete(shelf, "a");
        let (here, gone) = (at(shelf, &keys::job("a")), at(shelf, &keys::deleted("a")));
        match answer {
            Ok(_) => assert_eq!((here, gone), (None, Some(text("two")))),
            Err(_) => assert_eq!(here, Some(text("two"))),
        }
        let undone = bin::undo(shelf, "a");
        let (here, gone) = (at(shelf, &keys::job("a")), at(shelf, &keys::deleted("a")));
        assert!(here.or(gone) == Some(text("two")), "{answer:?} {undone:?}");
        let listed: Vec<_> = index::list(shelf)
            .unwrap()
            .into_iter()
            .map(|listed| listed.name)
            .collect();
        assert_eq!(
            listed.len(),
            usize::from(at(shelf, &keys::job("a")).is_some())
        );
    });
    assert!((6..12).contains(&writes), "{writes}");
}

#[test]
fn restoring_and_replacing_that_fail_anywhere_lose_no_text() {
    let damage = |shelf: &Failing| shelf.shelf.set(&keys::job("a"), "damaged").unwrap();
    let kept = |shelf: &Failing| {
        let texts: Vec<_> = shelf
            .keys()
            .unwrap()
            .iter()
            .filter_map(|key| at(shelf, key))
            .collect();
        texts.iter().any(|text| text == "damaged") && texts.contains(&text("one"))
    };
    at_every_failure(|shelf, _| {
        damage(shelf);
        let _ = jobs::load(shelf, "a");
        assert!(kept(shelf));
        let _ = jobs::restore(shelf, "a");
        assert!(kept(shelf));
    });
    at_every_failure(|shelf, _| {
        damage(shelf);
        let _ = carry::keep(shelf, job("a", "three"), Keep::Replace);
        assert!(kept(shelf));
    });
}
