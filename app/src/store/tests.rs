//! The store as a whole, on shelves in memory; [`failing`] fails at every write, [`two_tabs`] takes turns.

mod failing;

mod two_tabs;

use calc::job::file::{self, JobRefusal};
use calc::job::{Job, Units};

use super::bin::{self, UndoRefusal};
use super::carry::{self, Here, Keep};
use super::jobs::{self, Loaded, SaveRefusal, Saved, Seen, Unreadable};
use super::shelf::{MemoryShelf, Shelf, ShelfRefusal};
use super::{index, keys};

const NOW: &str = "2026-03-02T08:00:00.000Z";
const LATER: &str = "2026-03-03T08:00:00.000Z";

const WRITTEN: Saved = Saved {
    written: true,
    previous_kept: true,
};

fn job(id: &str, name: &str) -> Job {
    Job::new(id, name, NOW, Units::FeetInches)
}

fn text(name: &str) -> String {
    file::write_compact(&job("a", name))
}

fn at(shelf: &dyn Shelf, key: &str) -> Option<String> {
    shelf.get(key).unwrap()
}

#[track_caller]
fn loaded(shelf: &dyn Shelf, id: &str) -> (Job, Seen) {
    match jobs::load(shelf, id) {
        Ok(Loaded::Job(job, seen)) => (*job, seen),
        other => panic!("{other:?}"),
    }
}

#[track_caller]
fn unreadable(shelf: &dyn Shelf, id: &str) -> Unreadable {
    match jobs::load(shelf, id) {
        Ok(Loaded::Unreadable(unreadable)) => unreadable,
        other => panic!("{other:?}"),
    }
}

/// A shelf with job `a` saved twice: `two` is current, `one` the previous text.
fn shelf_with_two_texts(shelf: &dyn Shelf) -> Seen {
    let mut seen = Seen::nothing();
    jobs::save(shelf, &job("a", "one"), &mut seen).unwrap();
    jobs::save(shelf, &job("a", "two"), &mut seen).unwrap();
    seen
}

#[test]
fn a_saved_job_comes_back_and_the_text_before_is_kept() {
    let shelf = MemoryShelf::default();
    assert_eq!(jobs::load(&shelf, "a"), Ok(Loaded::Missing));
    let mut seen = Seen::nothing();
    assert_eq!(jobs::save(&shelf, &job("a", "one"), &mut seen), Ok(WRITTEN));
    assert_eq!(jobs::previous(&shelf, "a"), Ok(None));
    assert_eq!(jobs::save(&shelf, &job("a", "two"), &mut seen), Ok(WRITTEN));
    let again = jobs::save(&shelf, &job("a", "two"), &mut seen);
    assert_eq!(
        again,
        Ok(Saved {
            written: false,
            ..WRITTEN
        })
    );
    assert_eq!(loaded(&shelf, "a"), (job("a", "two"), seen));
    assert_eq!(jobs::previous(&shelf, "a"), Ok(Some(job("a", "one"))));
}

#[test]
fn a_job_that_would_not_open_again_is_not_saved() {
    let shelf = MemoryShelf::default();
    let mut seen = shelf_with_two_texts(&shelf);
    let mut twice = job("a", "three");
    twice.rooms.push(twice.rooms[0].clone());
    let mut large = job("a", "three");
    large.notes = "x".repeat(file::MOST_BYTES);
    for job in [twice, large, job("a.previous", "three")] {
        let refusal = jobs::save(&shelf, &job, &mut seen);
        assert!(
            matches!(refusal, Err(SaveRefusal::WouldNotOpen(_))),
            "{refusal:?}"
        );
    }
    assert_eq!(at(&shelf, &keys::job("a")), Some(text("two")));
    assert_eq!(at(&shelf, &keys::previous("a")), Some(text("one")));
}

#[test]
fn another_tabs_text_is_a_conflict_until_it_was_shown() {
    let shelf = MemoryShelf::default();
    let mut mine = shelf_with_two_texts(&shelf);
    let (_, mut theirs) = loaded(&shelf.clone(), "a");
    jobs::save(&shelf, &job("a", "theirs"), &mut theirs).unwrap();
    let before = mine.clone();
    let refusal = jobs::save(&shelf, &job("a", "mine"), &mut mine);
    assert_eq!(
        refusal,
        Err(SaveRefusal::Conflict {
            theirs: text("theirs")
        })
    );
    assert_eq!(
        (&mine, at(&shelf, &keys::job("a"))),
        (&before, Some(text("theirs")))
    );
    let mut mine = Seen::text(text("theirs"));
    assert_eq!(
        jobs::save(&shelf, &job("a", "mine"), &mut mine),
        Ok(WRITTEN)
    );
    assert_eq!(at(&shelf, &keys::previous("a")), Some(text("theirs")));
    // A job that is new to this tab but not to the shelf is a conflict too; one deleted elsewhere is told.
    let refusal = jobs::save(&shelf, &job("a", "new"), &mut Seen::nothing());
    assert_eq!(
        refusal,
        Err(SaveRefusal::Conflict {
            theirs: text("mine")
        })
    );
    assert_eq!(bin::delete(&shelf, "a"), Ok(true));
    assert_eq!(
        jobs::save(&shelf, &job("a", "still here"), &mut mine),
        Err(SaveRefusal::Deleted)
    );
    assert_eq!(
        jobs::save(&shelf, &job("a", "still here"), &mut Seen::nothing()),
        Ok(WRITTEN)
    );
}

#[test]
fn a_newer_programs_text_is_put_aside_before_it_is_replaced() {
    let shelf = MemoryShelf::default();
    let mut mine = shelf_with_two_texts(&shelf);
    let newer = text("two").replace("\"version\":1", "\"version\":2");
    shelf.set(&keys::job("a"), &newer).unwrap();
    let refusal = jobs::save(&shelf, &job("a", "mine"), &mut mine);
    assert_eq!(
        refusal,
        Err(SaveRefusal::Conflict {
            theirs: newer.clone()
        })
    );
    jobs::save(&shelf, &job("a", "mine"), &mut Seen::text(newer.clone())).unwrap();
    assert_eq!(jobs::aside(&shelf).unwrap()[0].raw, newer);
    assert_eq!(at(&shelf, &keys::previous("a")), Some(text("one")));
}

#[test]
fn damaged_text_is_put_aside_once_and_the_previous_comes_back() {
    let shelf = MemoryShelf::default();
    shelf_with_two_texts(&shelf);
    let half = &text("two")[..100];
    shelf.set(&keys::job("a"), half).unwrap();
    let found = unreadable(&shelf, "a");
    assert_eq!(found.raw, half);
    assert!(matches!(found.refusal, JobRefusal::NotJson { .. }));
    assert_eq!(found.previous, Some(Box::new(job("a", "one"))));
    assert_eq!(found.kept_as, Some(keys::damaged("a", 1)));
    assert_eq!(unreadable(&shelf, "a"), found); // no second copy
    let (restored, mut seen) = jobs::restore(&shelf, "a").unwrap().unwrap();
    assert_eq!(restored, job("a", "one"));
    assert_eq!(jobs::restore(&shelf, "a"), Ok(None)); // readable now
    jobs::save(&shelf, &job("a", "two again"), &mut seen).unwrap();
    shelf.set(&keys::job("a"), "other").unwrap();
    assert_eq!(unreadable(&shelf, "a").kept_as, Some(keys::damaged("a", 2)));
    let aside = jobs::aside(&shelf).unwrap();
    assert_eq!(
        aside
            .iter()
            .map(|aside| aside.raw.as_str())
            .collect::<Vec<_>>(),
        [half, "other"]
    );
    jobs::forget_aside(&shelf, &keys::job("a")).unwrap();
    jobs::forget_aside(&shelf, &aside[0].key).unwrap();
    assert_eq!(jobs::aside(&shelf).unwrap().len(), 1);
    assert_eq!(at(&shelf, &keys::job("a")).as_deref(), Some("other"));
    // A text under another job's key is not that job.
    shelf.set(&keys::job("b"), &text("two")).unwrap();
    assert!(
        matches!(unreadable(&shelf, "b").refusal, JobRefusal::Damaged { at, .. } if at == "id")
    );
}

#[test]
fn restoring_waits_for_room_to_put_the_damaged_text_aside() {
    let shelf = MemoryShelf::with_capacity(text("one").len() * 2 + 300);
    shelf.set(&keys::previous("a"), &text("one")).unwrap();
    let damaged = "x".repeat(text("one").len());
    shelf.set(&keys::job("a"), &damaged).unwrap();
    assert_eq!(unreadable(&shelf, "a").kept_as, None);
    assert_eq!(jobs::restore(&shelf, "a"), Err(ShelfRefusal::Full));
    assert_eq!(at(&shelf, &keys::job("a")), Some(damaged));
}

#[test]
fn deleting_can_be_undone_until_it_is_purged() {
    let shelf = MemoryShelf::default();
    let seen = shelf_with_two_texts(&shelf);
    assert_eq!(bin::delete(&shelf, "none"), Ok(false));
    assert_eq!(bin::delete(&shelf, "a"), Ok(true));
    assert_eq!(jobs::load(&shelf, "a"), Ok(Loaded::Missing));
    assert_eq!(index::list(&shelf), Ok(Vec::new()));
    assert_eq!(bin::deleted(&shelf), Ok(vec!["a".to_owned()]));
    assert_eq!(bin::undo(&shelf, "a"), Ok(()));
    assert_eq!(loaded(&shelf, "a"), (job("a", "two"), seen));
    assert_eq!(bin::undo(&shelf, "a"), Err(UndoRefusal::Gone));
    bin::delete(&shelf, "a").unwrap();
    jobs::save(&shelf, &job("a", "another"), &mut Seen::nothing()).unwrap();
    assert_eq!(bin::undo(&shelf, "a"), Err(UndoRefusal::InUse));
    bin::purge(&shelf, "a").unwrap();
    assert_eq!(bin::undo(&shelf, "a"), Err(UndoRefusal::Gone));
    assert_eq!(loaded(&shelf, "a").0.name, "another");
    bin::delete_for_good(&shelf, "a").unwrap();
    assert!(shelf.keys().unwrap().iter().all(|key| key == keys::INDEX));
}

#[test]
fn deleted_jobs_stay_until_their_room_is_needed() {
    let shelf = MemoryShelf::with_capacity(text("one").len() * 5 / 2 + 400);
    jobs::save(&shelf, &job("a", "one"), &mut Seen::nothing()).unwrap();
    bin::delete(&shelf, "a").unwrap();
    assert_eq!(bin::name_of(&shelf, "a"), "one");
    let mut seen = Seen::nothing();
    jobs::save(&shelf, &job("b", "two"), &mut seen).unwrap();
    assert_eq!(bin::deleted(&shelf), Ok(vec!["a".to_owned()]));
    // Its copy of the text before is all that keeps a new job out.
    jobs::save(&shelf, &job("c", "three"), &mut Seen::nothing()).unwrap();
    assert_eq!(bin::deleted(&shelf), Ok(Vec::new()));
    assert_eq!(loaded(&shelf, "b").0.name, "two");
    assert_eq!(loaded(&shelf, "c").0.name, "three");
}

#[test]
fn the_list_is_right_whatever_the_index_says() {
    let shelf = MemoryShelf::default();
    shelf_with_two_texts(&shelf);
    let mut second = job("b", "second");
    second.changed = LATER.to_owned();
    jobs::save(&shelf, &second, &mut Seen::nothing()).unwrap();
    let good = at(&shelf, keys::INDEX).unwrap();
    let right = index::list(&shelf).unwrap();
    let names: Vec<_> = right
        .iter()
        .map(|listed| (listed.name.as_str(), listed.rooms))
        .collect();
    assert_eq!(names, [("second", 1), ("two", 1)]);
    let stale = good.replace("second", "first");
    let wrong_print = stale.replace("print\":\"", "print\":\"1");
    for index in [
        "",
        "{}",
        "[]",
        "[{}]",
        &good[..good.len() / 2],
        &wrong_print,
        &good.replace("\"b\"", "\"c\""),
    ] {
        shelf.set(keys::INDEX, index).unwrap();
        assert_eq!(index::list(&shelf), Ok(right.clone()), "{index}");
    }
    shelf.remove(keys::INDEX).unwrap();
    assert_eq!(index::list(&shelf), Ok(right.clone()));
    assert_eq!(index::list(&shelf), Ok(right));
    // A job written past the index, and one damaged.
    shelf
        .set(&keys::job("c"), &file::write(&job("c", "by hand")))
        .unwrap();
    shelf.set(&keys::job("b"), "{").unwrap();
    let list = index::list(&shelf).unwrap();
    let names: Vec<_> = list
        .iter()
        .map(|listed| {
            (
                listed.id.as_str(),
                listed.name.as_str(),
                listed.trouble.is_some(),
            )
        })
        .collect();
    assert_eq!(
        names,
        [
            ("a", "two", false),
            ("c", "by hand", false),
            ("b", "", true)
        ]
    );
}

#[test]
fn a_job_comes_in_beside_or_in_the_place_of_another() {
    let shelf = MemoryShelf::default();
    let (name, exported) = carry::export(&job("a", "from a file"));
    assert_eq!(name, "from-a-file-2026-03-02-roomwright.json");
    let read = carry::read(exported.as_bytes()).unwrap();
    let incoming = carry::meet(&shelf, read).unwrap();
    assert_eq!(incoming.here, Here::Nothing);
    carry::keep(&shelf, incoming.job.clone(), Keep::AsItIs).unwrap();
    assert_eq!(
        carry::meet(&shelf, incoming.job).unwrap().here,
        Here::TheSame
    );
    let other = carry::meet(&shelf, job("a", "another state")).unwrap();
    assert_eq!(other.here, Here::Another);
    let refusal = carry::keep(&shelf, other.job.clone(), Keep::AsItIs);
    assert!(matches!(refusal, Err(SaveRefusal::Conflict { .. })));
    let both = Keep::Both {
        new_id: "b",
        now: LATER,
        name: "copy",
    };
    carry::keep(&shelf, other.job.clone(), both).unwrap();
    assert_eq!(
        (loaded(&shelf, "a").0.name, loaded(&shelf, "b").0.name),
        ("from a file".to_owned(), "copy".to_owned())
    );
    carry::keep(&shelf, other.job.clone(), Keep::Replace).unwrap();
    assert_eq!(loaded(&shelf, "a").0.name, "another state");
    assert_eq!(
        jobs::previous(&shelf, "a").unwrap().unwrap().name,
        "from a file"
    );
    shelf.set(&keys::job("a"), "damaged").unwrap();
    assert_eq!(
        carry::meet(&shelf, other.job.clone()).unwrap().here,
        Here::Another
    );
    carry::keep(&shelf, other.job, Keep::Replace).unwrap();
    assert_eq!(jobs::aside(&shelf).unwrap()[0].raw, "damaged");
    assert_eq!(carry::read(b"{}"), Err(JobRefusal::NotAJob));
}

#[test]
fn a_duplicate_never_takes_an_id_in_use() {
    let shelf = MemoryShelf::default();
    shelf_with_two_texts(&shelf);
    let (copy, seen) = jobs::duplicate(&shelf, &job("a", "two"), "b", LATER, "copy").unwrap();
    assert_eq!(loaded(&shelf, "b"), (copy.clone(), seen));
    let refusal = jobs::duplicate(&shelf, &copy, "a", LATER, "copy");
    assert!(matches!(refusal, Err(SaveRefusal::Conflict { .. })));
}

#[test]
fn on_a_tight_shelf_the_text_before_gives_way() {
    // Room for the job, the index and a little, not for two texts.
    let room = text("one").len() + 300;
    let shelf = MemoryShelf::with_capacity(room);
    let mut seen = Seen::nothing();
    jobs::save(&shelf, &job("a", "one"), &mut seen).unwrap();
    let saved = jobs::save(&shelf, &job("a", "two"), &mut seen).unwrap();
    assert_eq!(
        saved,
        Saved {
            written: true,
            previous_kept: false
        }
    );
    let mut long = job("a", "three");
    long.notes = "x".repeat(400);
    assert_eq!(jobs::save(&shelf, &long, &mut seen), Err(SaveRefusal::Full));
    assert_eq!(loaded(&shelf, "a"), (job("a", "two"), seen));
    assert_eq!(bin::delete(&shelf, "a"), Err(ShelfRefusal::Full));
    assert_eq!(loaded(&shelf, "a").0.name, "two");
    bin::delete_for_good(&shelf, "a").unwrap();
    assert_eq!(jobs::load(&shelf, "a"), Ok(Loaded::Missing));
}
