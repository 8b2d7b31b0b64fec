//! Two tabs on one shelf, taking turns.

use proptest::prelude::*;

use super::*;

/// What a tab does next.
#[derive(Clone, Copy, Debug)]
enum Act {
    Edit,
    Save,
    Load,
    KeepMine,
    Delete,
    Undo,
    List,
}

fn any_act() -> impl Strategy<Value = (bool, Act)> {
    let act = prop_oneof![
        4 => Just(Act::Edit),
        6 => Just(Act::Save),
        2 => Just(Act::Load),
        1 => Just(Act::KeepMine),
        1 => Just(Act::Delete),
        1 => Just(Act::Undo),
        1 => Just(Act::List),
    ];
    (any::<bool>(), act)
}

/// One tab: the job it shows, what it saves with, and the texts that it showed to its user.
struct Tab {
    job: Job,
    seen: Seen,
    shown: Vec<String>,
    conflict: Option<String>,
}

proptest! {
    /// However two tabs take turns, and however small the shelf: a text that leaves the current place was shown in
    /// the tab that replaced it, and is the previous one unless the answer says that there was no room; a refused
    /// save changes no current text; a deleted text is kept.
    #[test]
    fn two_tabs_lose_no_text(
        acts in prop::collection::vec(any_act(), 1..60),
        capacity in prop_oneof![Just(usize::MAX), 1200_usize..6000],
    ) {
        let shelf = MemoryShelf::with_capacity(capacity);
        let tab = || Tab { job: job("a", "start"), seen: Seen::nothing(), shown: Vec::new(), conflict: None };
        let mut tabs = [tab(), tab()];
        for (n, (second, act)) in acts.into_iter().enumerate() {
            let tab = &mut tabs[usize::from(second)];
            let before = at(&shelf, &keys::job("a"));
            let now = || at(&shelf, &keys::job("a"));
            match act {
                Act::Edit => {
                    tab.job.name = format!("edit {n}");
                    tab.job.notes = "x".repeat(n % 5 * 100);
                }
                Act::Save | Act::KeepMine => {
                    if let (Act::KeepMine, Some(theirs)) = (act, tab.conflict.take()) {
                        tab.seen = Seen::text(theirs);
                    }
                    let text = file::write_compact(&tab.job);
                    match jobs::save(&shelf, &tab.job, &mut tab.seen) {
                        Ok(saved) => {
                            prop_assert_eq!(now(), Some(text.clone()));
                            if let (true, Some(before)) = (saved.written, before) {
                                prop_assert!(tab.shown.contains(&before), "replaced unseen: {}", before);
                                if saved.previous_kept {
                                    prop_assert_eq!(at(&shelf, &keys::previous("a")), Some(before));
                                }
                            }
                            tab.shown.push(text);
                        }
                        Err(refusal) => {
                            prop_assert_eq!(now(), before.clone());
                            match refusal {
                                SaveRefusal::Conflict { theirs } => {
                                    prop_assert_eq!(Some(&theirs), before.as_ref());
                                    tab.shown.push(theirs.clone());
                                    tab.conflict = Some(theirs);
                                }
                                SaveRefusal::Deleted => {
                                    prop_assert_eq!(before, None);
                                    tab.seen = Seen::nothing();
                                }
                                SaveRefusal::Full => prop_assert!(capacity < usize::MAX),
                                other => prop_assert!(false, "{:?}", other),
                            }
                        }
                    }
                }
                Act::Load => {
                    if let Ok(Loaded::Job(job, seen)) = jobs::load(&shelf, "a") {
                        tab.shown.extend(before.clone());
                        (tab.job, tab.seen) = (*job, seen);
                    }
                    prop_assert_eq!(now(), before);
                }
                Act::Delete => match bin::delete(&shelf, "a") {
                    Ok(true) => prop_assert_eq!(at(&shelf, &keys::deleted("a")), before),
                    Ok(false) => prop_assert_eq!(before, None),
                    Err(_) => prop_assert_eq!(now(), before),
                },
                Act::Undo => {
                    let gone = at(&shelf, &keys::deleted("a"));
                    match bin::undo(&shelf, "a") {
                        Ok(()) => prop_assert_eq!(now(), gone),
                        Err(_) => prop_assert_eq!((now(), at(&shelf, &keys::deleted("a"))), (before, gone)),
                    }
                }
                Act::List => {
                    let listed = index::list(&shelf).unwrap();
                    let names: Vec<_> = listed.into_iter().map(|listed| listed.name).collect();
                    let expected = before.map(|text| file::read(&text).unwrap().name);
                    prop_assert_eq!(names, Vec::from_iter(expected));
                }
            }
        }
    }
}
