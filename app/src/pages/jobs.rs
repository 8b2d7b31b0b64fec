//! The jobs on this device: new, open, duplicate, delete with undo, bring in, the worked example.

use crate::markup::{For, view};
use crate::reactive::{When, draw, memo, say};
use calc::job::{Job, Units, demo};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::desk::Desk;
use crate::paths;
use crate::router::Place;
use crate::shell::PageHeading;
use crate::store::carry::{self, Here, Incoming, Keep};
use crate::store::index::{self, Listed};
use crate::store::{self, Seen, ShelfRefusal, bin, files, fresh, jobs, keys, link, persist};
use crate::words::{common, demo as demo_words, jobs as words, notices, room as room_words};

/// What the page has to say after an action.
#[derive(Clone, Debug, PartialEq)]
enum Said {
    Nothing,
    Trouble(String),
    Deleted {
        id: String,
        name: String,
        /// What stood on the shelf; undo falls back to it where there was no room to keep it there.
        text: Option<String>,
    },
    /// A job from a file or a link that meets another state of itself here.
    Meets(Box<Incoming>),
    /// A link's job, not kept yet.
    Linked(Box<Job>),
    Brought(String),
}

/// The jobs.
#[component]
pub fn JobsPage() -> impl IntoView {
    let desk = expect_context::<Desk>();
    let place = Place::here();
    let open = move |id: &str| place.go(&paths::job(id));
    let turn = RwSignal::new(0_u32);
    let said = RwSignal::new(Said::Nothing);
    let listed = memo(move || {
        turn.track();
        desk.turn.track();
        index::list(&*desk.shelf()).map_err(|refusal| notices::shelf_refusal(&refusal).to_owned())
    });
    let again = move || turn.update(|n| *n += 1);

    let keep_new = move |job: Job| match jobs::save(&*desk.shelf(), &job, &mut Seen::nothing()) {
        Ok(_) => {
            spawn_local(async move {
                persist::ask(&*desk.shelf()).await;
            });
            open(&job.id);
        }
        Err(refusal) => said.set(Said::Trouble(notices::save_refusal(&refusal).to_owned())),
    };
    let new_job = move |_| {
        let job = Job::new(fresh::job_id(), "", fresh::now(), Units::FeetInches);
        keep_new(job);
    };
    let open_demo = move |_| {
        let mut job = demo::job(fresh::job_id(), fresh::now());
        job.name = words::demo_name().to_owned();
        job.place = words::demo_place().to_owned();
        if let Some(room) = job.rooms.first_mut() {
            room.name = words::demo_room().to_owned();
            let names = [words::demo_door(), words::demo_closet()];
            for (opening, name) in room.openings.iter_mut().zip(names) {
                opening.name = name.to_owned();
            }
        }
        for name in demo::names(&mut job) {
            *name = demo_words::named(name).to_owned();
        }
        keep_new(job);
    };
    // Whether the job is on the shelf now.
    let bring = move |job: Job| match carry::meet(&*desk.shelf(), job) {
        Ok(Incoming {
            job,
            here: Here::TheSame,
        }) => {
            open(&job.id);
            true
        }
        Ok(Incoming {
            job,
            here: Here::Nothing,
        }) => match carry::keep(&*desk.shelf(), job, Keep::AsItIs) {
            Ok((job, ..)) => {
                said.set(Said::Brought(shown_name(&job.name)));
                again();
                true
            }
            Err(refusal) => {
                said.set(Said::Trouble(notices::save_refusal(&refusal).to_owned()));
                false
            }
        },
        Ok(incoming) => {
            said.set(Said::Meets(Box::new(incoming)));
            false
        }
        Err(refusal) => {
            said.set(Said::Trouble(notices::shelf_refusal(&refusal).to_owned()));
            false
        }
    };
    let picked = move |input: web_sys::HtmlInputElement| {
        let Some(file) = files::picked(&input) else {
            return;
        };
        spawn_local(async move {
            match files::read(&file).await {
                Ok(bytes) => match carry::read(&bytes) {
                    Ok(job) => drop(bring(job)),
                    Err(refusal) => said.set(Said::Trouble(notices::job_refusal(&refusal))),
                },
                Err(refusal) => said.set(Said::Trouble(notices::file_refusal(&refusal))),
            }
        });
    };
    // A job in the address: offered, never kept unasked. Another address can be put there while the page is open.
    let look_at_address = move || {
        let fragment = window().location().hash().unwrap_or_default();
        if link::is_link(&fragment) {
            spawn_local(async move {
                match link::job(&fragment).await {
                    Ok(job) => said.set(Said::Linked(Box::new(job))),
                    Err(refusal) => said.set(Said::Trouble(notices::link_refusal(&refusal))),
                }
            });
        }
    };
    look_at_address();
    let heard = window_event_listener(leptos::ev::hashchange, move |_| look_at_address());
    on_cleanup(move || heard.remove());
    let leave_link = move || {
        clear_address();
        said.set(Said::Nothing);
    };
    let meet = move |how: Option<Keep<'static>>| {
        let Said::Meets(incoming) = said.get_untracked() else {
            return;
        };
        let (new_id, now) = (fresh::job_id(), fresh::now());
        let name = words::copy_of(&shown_name(&incoming.job.name));
        let how = how.unwrap_or(Keep::Both {
            new_id: &new_id,
            now: &now,
            name: &name,
        });
        match carry::keep(&*desk.shelf(), incoming.job, how) {
            Ok((job, ..)) => {
                clear_address();
                open(&job.id);
            }
            Err(refusal) => said.set(Said::Trouble(notices::save_refusal(&refusal).to_owned())),
        }
    };
    let notice = move || {
        match said.get() {
        Said::Nothing => ().into_any(),
        Said::Trouble(words) => view! { <p class="notice look">{words}</p> }.into_any(),
        Said::Brought(name) => view! { <p class="notice">{words::imported(&name)}</p> }.into_any(),
        Said::Deleted { id, name, text } => {
            let undo = move |_| {
                match bin::undo(&*desk.shelf(), &id) {
                    Ok(()) => said.set(Said::Nothing),
                    Err(bin::UndoRefusal::Gone) if text.is_some() => {
                        let text = text.as_deref().unwrap_or_default();
                        match desk.shelf().set(&keys::job(&id), text) {
                            Ok(()) => said.set(Said::Nothing),
                            Err(refusal) => said.set(Said::Trouble(notices::shelf_refusal(&refusal).to_owned())),
                        }
                    }
                    Err(refusal) => said.set(Said::Trouble(undo_refusal(&refusal).to_owned())),
                }
                again();
            };
            view! {
                <div class="notice">
                    <p>{words::deleted(&name)}</p>
                    <button type="button" class="button" on:click=undo>{common::undo()}</button>
                </div>
            }
                .into_any()
        }
        Said::Meets(_) => view! {
            <div class="notice">
                <p>{words::same_id_here()}</p>
                <div class="row">
                    <button type="button" class="button" on:click=move |_| meet(Some(Keep::Replace))>{words::replace()}</button>
                    <button type="button" class="button main" on:click=move |_| meet(None)>{words::keep_both()}</button>
                </div>
            </div>
        }
            .into_any(),
        Said::Linked(job) => {
            let name = shown_name(&job.name);
            // The address keeps the job until it is kept here.
            let keep = move |_| {
                if bring((*job).clone()) {
                    clear_address();
                }
            };
            view! {
                <div class="notice">
                    <p>{words::link_job(&name)}</p>
                    <div class="row">
                        <button type="button" class="button main" on:click=keep>{words::link_keep()}</button>
                        <button type="button" class="button" on:click=move |_| leave_link()>{words::link_leave()}</button>
                    </div>
                </div>
            }
                .into_any()
        }
    }
    };
    let list = move || {
        match listed.get() {
        Err(trouble) => view! { <p class="notice look">{trouble}</p> }.into_any(),
        Ok(all) if all.is_empty() => view! { <p>{words::none_yet()}</p> }.into_any(),
        Ok(all) => view! {
            <ul class="list">
                <For each=move || all.clone() key=|l| (l.id.clone(), l.changed.clone(), l.name.clone()) let:listed>
                    <JobRow listed said turn />
                </For>
            </ul>
        }
            .into_any(),
    }
    };
    view! {
        <PageHeading text=Signal::stored(words::title().to_owned()) />
        <div role="status">{draw(notice)}</div>
        {draw(list)}
        <DeletedJobs said turn />
        <div class="stack-tight">
            <button type="button" class="button main wide" on:click=new_job>{words::new_job()}</button>
            <label class="button wide file">
                {words::bring_in()}
                <input
                    type="file"
                    class="visually-hidden"
                    accept=".json,.txt,application/json,text/plain"
                    on:change:target=move |ev| picked(ev.target())
                />
            </label>
            <button type="button" class="button wide" on:click=open_demo>{words::open_demo()}</button>
            <a class="button wide" href=paths::SUMS>{common::sums_short()}</a>
        </div>
    }
}

/// Takes a job that came as a link out of the address.
fn clear_address() {
    if !window().location().hash().unwrap_or_default().is_empty() {
        let _ = window()
            .history()
            .and_then(|h| h.replace_state_with_url(&wasm_bindgen::JsValue::NULL, "", Some("./")));
    }
}

fn undo_refusal(refusal: &bin::UndoRefusal) -> &'static str {
    match refusal {
        bin::UndoRefusal::Gone => words::no_such_job(),
        bin::UndoRefusal::InUse => words::deleted_in_use(),
        bin::UndoRefusal::Shelf(refusal) => notices::shelf_refusal(refusal),
    }
}

/// Deleted jobs, each to be put back or dropped for good.
#[component]
fn DeletedJobs(said: RwSignal<Said>, turn: RwSignal<u32>) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let rows = memo(move || {
        turn.track();
        desk.turn.track();
        let shelf = desk.shelf();
        let ids = bin::deleted(&*shelf).unwrap_or_default();
        ids.into_iter()
            .map(|id| {
                let name = shown_name(&bin::name_of(&*shelf, &id));
                (id, name)
            })
            .collect::<Vec<_>>()
    });
    let row = move |(id, name): (String, String)| {
        let (kept, label) = (id.clone(), name.clone());
        let put_back = move |_| {
            said.set(match bin::undo(&*desk.shelf(), &kept) {
                Ok(()) => Said::Nothing,
                Err(refusal) => Said::Trouble(undo_refusal(&refusal).to_owned()),
            });
            turn.update(|n| *n += 1);
        };
        let drop_it = move |_| {
            said.set(match bin::purge(&*desk.shelf(), &id) {
                Ok(()) => Said::Nothing,
                Err(refusal) => Said::Trouble(notices::shelf_refusal(&refusal).to_owned()),
            });
            turn.update(|n| *n += 1);
        };
        view! {
            <li>
                <p>{name.clone()}</p>
                <div class="row">
                    <button
                        type="button"
                        class="button"
                        aria-label=format!("{}: {label}", common::put_back())
                        on:click=put_back
                    >
                        {common::put_back()}
                    </button>
                    <button
                        type="button"
                        class="button look plain"
                        aria-label=format!("{}: {label}", words::delete_for_good())
                        on:click=drop_it
                    >
                        {words::delete_for_good()}
                    </button>
                </div>
            </li>
        }
    };
    view! {
        <When when=move || !rows.read().is_empty()>
            <details>
                <summary>{say(move || words::deleted_jobs(rows.read().len()))}</summary>
                <p class="quiet">{words::deleted_hint()}</p>
                <ul class="rows">{draw(move || rows.get().into_iter().map(row).collect_view())}</ul>
            </details>
        </When>
    }
}

/// A job's name, or the words for one without.
pub fn shown_name(name: &str) -> String {
    if name.trim().is_empty() {
        words::untitled().to_owned()
    } else {
        name.to_owned()
    }
}

/// The day and time of an RFC 3339 time on the clock of this device; as it was written where it is none.
fn when(changed: &str) -> String {
    let time = js_sys::Date::new(&changed.into());
    if time.get_time().is_nan() {
        return changed.to_owned();
    }
    format!(
        "{:04}-{:02}-{:02} {:02}:{:02}",
        time.get_full_year(),
        time.get_month() + 1,
        time.get_date(),
        time.get_hours(),
        time.get_minutes()
    )
}

/// One job of the list.
#[component]
fn JobRow(listed: Listed, said: RwSignal<Said>, turn: RwSignal<u32>) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let Listed {
        id,
        name,
        place,
        changed,
        rooms,
        trouble,
    } = listed;
    let name = shown_name(&name);
    let rooms = if rooms == 1 {
        words::room_count_one().to_owned()
    } else {
        words::rooms_count(rooms)
    };
    let delete = {
        let (id, name) = (id.clone(), name.clone());
        move |_| {
            let shelf = desk.shelf();
            let text = shelf.get(&keys::job(&id)).ok().flatten();
            // A full shelf has no room for a copy, and deleting is the way to make some.
            let outcome = match bin::delete(&*shelf, &id) {
                Err(ShelfRefusal::Full) => bin::delete_for_good(&*shelf, &id),
                other => other.map(drop),
            };
            match outcome {
                Ok(()) => said.set(Said::Deleted {
                    id: id.clone(),
                    name: name.clone(),
                    text,
                }),
                Err(refusal) => {
                    said.set(Said::Trouble(notices::shelf_refusal(&refusal).to_owned()))
                }
            }
            turn.update(|n| *n += 1);
        }
    };
    let duplicate = {
        let (id, name) = (id.clone(), name.clone());
        move |_| {
            if let Ok(store::Loaded::Job(job, _)) = jobs::load(&*desk.shelf(), &id) {
                let copy = job.duplicate(fresh::job_id(), fresh::now(), words::copy_of(&name));
                match jobs::save(&*desk.shelf(), &copy, &mut Seen::nothing()) {
                    Ok(_) => said.set(Said::Nothing),
                    Err(refusal) => {
                        said.set(Said::Trouble(notices::save_refusal(&refusal).to_owned()))
                    }
                }
                turn.update(|n| *n += 1);
            }
        }
    };
    let quiet = trouble
        .is_some()
        .then(|| view! { <span class="quiet">{words::damaged_here()}</span> });
    view! {
        <li>
            <a class="go" href=paths::job(&id)>
                <strong>{name.clone()}</strong>
                <span class="quiet">{place} " " {rooms} " · " {words::changed(&when(&changed))}</span>
                {quiet}
            </a>
            <div class="row">
                <button
                    type="button"
                    class="button plain"
                    aria-label=format!("{}: {name}", words::duplicate())
                    on:click=duplicate
                >
                    {words::duplicate()}
                </button>
                <button
                    type="button"
                    class="button look plain"
                    aria-label=format!("{}: {name}", words::delete())
                    on:click=delete
                >
                    {words::delete()}
                </button>
            </div>
        </li>
    }
}

/// The words for a room without a name.
pub fn shown_room(name: &str) -> String {
    if name.trim().is_empty() {
        room_words::stage().to_owned()
    } else {
        name.to_owned()
    }
}
