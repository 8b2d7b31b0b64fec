//! A job: its own page (name, units, rooms, ways to carry it), and the frame around its rooms' stages.

use crate::markup::view;
use crate::reactive::{When, derived, memo, say};
use calc::job::{CodeEdition, Room, Units};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::jobs::shown_name;
use super::sum_fields::take_code;
use crate::desk::Desk;
use crate::entry::{Choice, ChoiceOption, TextEntry};
use crate::focus;
use crate::house::House;
use crate::open_job::{OpenJob, OpenRoom, SaveState};
use crate::paths::{self, Stage};
use crate::shell::{Foot, Head, PageHeading, stage_word};
use crate::standing;
use crate::store::jobs::{self, Unreadable};
use crate::store::{Loaded, SaveRefusal, carry, files, link};
use crate::words::{common, jobs as words, notices, wiring};

/// Opens the job named in the address and frames its pages.
#[component]
pub fn JobFrame(
    /// The job's id.
    id: String,
    /// The page within.
    children: ChildrenFn,
) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let turn = RwSignal::new(0_u32);
    move || {
        turn.track();
        let id = id.clone();
        let loaded = match desk.held(&id) {
            Some((job, seen, refusal)) => Ok(Ok(OpenJob::unsaved(desk, job, seen, refusal))),
            None => jobs::load(&*desk.shelf(), &id).map(|loaded| match loaded {
                Loaded::Job(job, seen) => Ok(OpenJob::new(desk, *job, seen)),
                other => Err(other),
            }),
        };
        match loaded {
            Ok(Ok(open)) => {
                provide_context(open);
                provide_context(House::of(open));
                // What is not saved is gone when the page closes: the browser asks first.
                let asks = window_event_listener(leptos::ev::beforeunload, move |ev| {
                    if *open.state.read_untracked() != SaveState::Saved {
                        ev.prevent_default();
                    }
                });
                on_cleanup(move || asks.remove());
                // Another tab's save shows here at once.
                Effect::new(move |before: Option<u32>| {
                    let (count, written) = desk.written.get();
                    if before.is_some_and(|b| b != count) && written == open.id() {
                        open.written_elsewhere();
                    }
                    count
                });
                let name = memo(move || open.job.with(|job| shown_name(&job.name)));
                view! {
                    <div class="frame with-pole">
                        <Head place=name />
                        {children()}
                        <Foot />
                    </div>
                }
                .into_any()
            }
            Ok(Err(Loaded::Missing | Loaded::Job(..))) => {
                view! { <Lone><p class="notice look">{words::no_such_job()}</p></Lone> }.into_any()
            }
            Ok(Err(Loaded::Unreadable(unreadable))) => {
                view! { <Lone><Damaged unreadable id turn /></Lone> }.into_any()
            }
            Err(refusal) => {
                view! { <Lone><p class="notice look">{notices::shelf_refusal(&refusal)}</p></Lone> }
                    .into_any()
            }
        }
    }
}

/// A page with no job behind it.
#[component]
fn Lone(children: Children) -> impl IntoView {
    view! {
        <div class="frame">
            <Head />
            <main>
                <PageHeading text=Signal::stored(words::overview().to_owned()) />
                {children()}
                <a class="button main" href=paths::JOBS>{common::to_jobs()}</a>
            </main>
            <Foot />
        </div>
    }
}

/// A stored text that can't be read, and the ways out.
#[component]
fn Damaged(unreadable: Unreadable, id: String, turn: RwSignal<u32>) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let why = notices::job_refusal(&unreadable.refusal);
    let trouble = RwSignal::new(String::new());
    let name = carry::raw_file_name(&id);
    let raw = unreadable.raw.clone();
    let save = move |_| {
        if let Err(refusal) = files::download(&name, &raw) {
            trouble.set(notices::file_refusal(&refusal));
        }
    };
    let restore = unreadable.previous.is_some().then(|| {
        let back = move |_| match jobs::restore(&*desk.shelf(), &id) {
            Ok(_) => turn.update(|n| *n += 1),
            Err(refusal) => trouble.set(notices::shelf_refusal(&refusal).to_owned()),
        };
        view! { <button type="button" class="button main" on:click=back>{words::open_previous()}</button> }
    });
    view! {
        <div class="notice look">
            <p>{words::damaged_here()} " " {why}</p>
            <div class="row">
                {restore}
                <button type="button" class="button" on:click=save>{words::download_damaged()}</button>
            </div>
            <p role="status">{trouble}</p>
        </div>
    }
}

/// What stands between the job and the storage; nothing while all is saved.
#[component]
pub fn SaveNotice() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let actions = move |refusal: &SaveRefusal| {
        match refusal {
        SaveRefusal::Conflict { .. } => view! {
            <button type="button" class="button main" on:click=move |_| open.keep_mine()>{notices::keep_mine()}</button>
            <button type="button" class="button" on:click=move |_| open.take_theirs()>{notices::take_theirs()}</button>
        }
        .into_any(),
        SaveRefusal::Deleted => view! {
            <button type="button" class="button main" on:click=move |_| open.keep_mine()>{notices::put_back()}</button>
        }
        .into_any(),
        SaveRefusal::Full | SaveRefusal::Blocked | SaveRefusal::WouldNotOpen(_) => view! {
            <button type="button" class="button main" on:click=move |_| save_file(open)>{words::save_file()}</button>
            <button type="button" class="button" on:click=move |_| open.save()>{notices::try_again()}</button>
        }
        .into_any(),
    }
    };
    view! {
        <div role="alert">
            {move || match &*open.state.read() {
                SaveState::Saved => ().into_any(),
                SaveState::Refused(refusal) => {
                    view! {
                        <div class="notice look">
                            <p>{notices::save_refusal(refusal)}</p>
                            <div class="row">{actions(refusal)}</div>
                        </div>
                    }
                        .into_any()
                }
            }}
        </div>
    }
}

/// The way back for what was taken out last on the page shown.
#[component]
pub fn PutBack() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let taken = open.taken_out;
    // What was taken out on another page is no longer in view.
    on_cleanup(move || taken.set(None));
    let said = move || taken.with(|taken| Some(common::taken_out(&taken.as_ref()?.said)));
    view! {
        <div role="status" class="put-back">
            <When when=move || taken.read().is_some()>
                <div class="notice">
                    <p>{say(said)}</p>
                    <button type="button" class="button" on:click=move |_| open.put_back()>{common::put_back()}</button>
                </div>
            </When>
        </div>
    }
}

fn save_file(open: OpenJob) {
    let (name, text) = open.job.with_untracked(carry::export);
    // The worst that can come of it is that the browser shows no download.
    let _ = files::download(&name, &text);
}

/// A job's own page.
#[component]
pub fn JobPage() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let id = open.id();
    let name = memo(move || open.job.with(|job| job.name.clone()));
    let shown = derived(move || shown_name(&name.get()));
    let place = memo(move || open.job.with(|job| job.place.clone()));
    let notes = memo(move || open.job.with(|job| job.notes.clone()));
    let units = open.units();
    let edition = open.part(|job| job.code_edition);
    let rooms = memo(move || {
        open.job.with(|job| {
            job.rooms
                .iter()
                .map(|r| (r.id, r.name.clone()))
                .collect::<Vec<_>>()
        })
    });
    let add_room = move |_| {
        open.change(|job| {
            let id = job.fresh_id();
            let units = job.units;
            job.rooms.push(Room::new(id, "", units));
        });
    };
    // The room taken out last and where it stood, for undo.
    let taken_out = RwSignal::new(None::<(usize, Room)>);
    let take_out = move |room: u32| {
        open.change(|job| {
            if let Some(at) = job.rooms.iter().position(|r| r.id == room) {
                taken_out.set(Some((at, job.rooms.remove(at))));
            }
        });
        focus::soon("put-back");
    };
    let put_back = move |_| {
        if let Some((at, room)) = taken_out.get_untracked() {
            open.change(|job| job.rooms.insert(at.min(job.rooms.len()), room));
            taken_out.set(None);
        }
    };
    let taken_name = move || {
        taken_out.with(|taken| {
            taken
                .as_ref()
                .map(|(_, r)| words::deleted(&super::jobs::shown_room(&r.name)))
        })
    };
    let rows = {
        move || {
            let many = rooms.read().len() > 1;
            rooms
                .get()
                .into_iter()
                .map(|(room, name)| {
                    let name = super::jobs::shown_room(&name);
                    let out = many.then(|| {
                        view! {
                            <button
                                type="button"
                                class="button look plain"
                                aria-label=format!("{}: {name}", words::take_out_room())
                                on:click=move |_| take_out(room)
                            >
                                {words::take_out_room()}
                            </button>
                        }
                    });
                    view! {
                        <li>
                            <a class="go" href=paths::stage(&open.id(), room, Stage::Room)>
                                <strong>{name}</strong>
                            </a>
                            <RoomStages room=open.room(room) />
                            {out}
                        </li>
                    }
                })
                .collect_view()
        }
    };
    let first_room = {
        let job = id.clone();
        move || {
            rooms.with(|rooms| {
                rooms
                    .first()
                    .map(|(room, _)| paths::stage(&job, *room, Stage::Room))
            })
        }
    };
    view! {
        <main>
            <PageHeading text=shown />
            <SaveNotice />
            <section class="sheet">
                <h2>{words::rooms_heading()}</h2>
                <ul class="list">{rows}</ul>
                <div role="status">
                    <When when=move || taken_out.read().is_some()>
                        <div class="notice">
                            <p>{say(taken_name)}</p>
                            <button type="button" class="button" id="put-back" on:click=put_back>{common::undo()}</button>
                        </div>
                    </When>
                </div>
                <button type="button" class="button" on:click=add_room>{words::add_room()}</button>
            </section>
            <HouseStages open />
            <TextEntry
                id="job-name".to_owned()
                label=Signal::stored(words::name_label().to_owned())
                value=name
                on_text=Callback::new(move |text| open.change(|job| job.name = text))
            />
            <TextEntry
                id="job-place".to_owned()
                label=Signal::stored(words::place_label().to_owned())
                value=place
                on_text=Callback::new(move |text| open.change(|job| job.place = text))
            />
            <Choice
                id="job-units".to_owned()
                label=Signal::stored(words::units_label().to_owned())
                options=Signal::stored(
                    vec![
                        ChoiceOption::new("feet_inches", common::feet_inches()),
                        ChoiceOption::new("metric", common::metric()),
                    ],
                )
                value=derived(move || {
                    if units.get() == Units::Metric { "metric" } else { "feet_inches" }.to_owned()
                })
                on_pick=Callback::new(move |code: String| {
                    open.change(|job| {
                        job.units = if code == "metric" { Units::Metric } else { Units::FeetInches };
                    })
                })
            />
            <Choice
                id="job-edition".to_owned()
                label=Signal::stored(wiring::edition_label().to_owned())
                hint=Signal::stored(wiring::edition_hint().to_owned())
                options=Signal::stored(
                    [CodeEdition::E2023, CodeEdition::E2020, CodeEdition::E2017]
                        .map(|edition| ChoiceOption::new(edition.code(), wiring::edition(edition)))
                        .to_vec(),
                )
                value=derived(move || edition.get().code().to_owned())
                on_pick=Callback::new(move |code: String| {
                    open.change(|job| take_code(&mut job.code_edition, code))
                })
            />
            <TextEntry
                id="job-notes".to_owned()
                block=true
                label=Signal::stored(words::notes_label().to_owned())
                value=notes
                on_text=Callback::new(move |text| open.change(|job| job.notes = text))
            />
            <a class="button main wide" href=first_room>{words::to_room()}</a>
            <Carry />
        </main>
    }
}

/// The stages of a room, each with its key figure or what is missing.
#[component]
fn RoomStages(room: OpenRoom) -> impl IntoView {
    let rows = Stage::ALL
        .iter()
        .filter(|stage| !stage.is_of_house())
        .map(|&stage| {
            let path = paths::stage(&room.open.id(), room.id, stage);
            stage_line(path, stage, standing::figure(room, stage))
        })
        .collect_view();
    view! { <div class="stages">{rows}</div> }
}

/// The stages of the house, each with its key figure or what is missing.
#[component]
fn HouseStages(open: OpenJob) -> impl IntoView {
    let rows = Stage::ALL
        .iter()
        .filter(|stage| stage.is_of_house())
        .map(|&stage| {
            let path = paths::stage(&open.id(), 0, stage);
            stage_line(path, stage, standing::house_figure(open, stage))
        })
        .collect_view();
    view! {
        <section class="sheet">
            <h2>{words::house_heading()}</h2>
            <div class="stages">{rows}</div>
        </section>
    }
}

fn stage_line(path: String, stage: Stage, figure: Signal<String>) -> AnyView {
    view! {
        <a class="stage" href=path>
            <strong>{stage_word(stage)}</strong> " "
            <span>{figure}</span>
        </a>
    }
    .into_any()
}

/// Ways to keep and carry the job.
#[component]
fn Carry() -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let said = RwSignal::new(String::new());
    let by_hand = RwSignal::new(String::new());
    let copy_link = move |_| {
        let job = open.job.get_untracked();
        spawn_local(async move {
            match link::fragment(&job).await {
                Ok(fragment) => {
                    let base = document().base_uri().ok().flatten().unwrap_or_default();
                    let url = format!(
                        "{base}{}{fragment}",
                        if fragment.starts_with('#') { "" } else { "#" }
                    );
                    let clipboard = window().navigator().clipboard();
                    let copied =
                        wasm_bindgen_futures::JsFuture::from(clipboard.write_text(&url)).await;
                    if copied.is_ok() {
                        by_hand.set(String::new());
                        said.set(words::link_copied().to_owned());
                    } else {
                        said.set(words::link_by_hand().to_owned());
                        by_hand.set(url);
                    }
                }
                Err(refusal) => said.set(notices::link_refusal(&refusal)),
            }
        });
    };
    let send = move |_| {
        let (name, text) = open.job.with_untracked(carry::export);
        spawn_local(async move {
            match files::share_file(&name, &text).await {
                Ok(()) | Err(files::FileRefusal::Dismissed) => {}
                Err(refusal) => said.set(notices::file_refusal(&refusal)),
            }
        });
    };
    view! {
        <section class="sheet">
            <h2>{words::keep_heading()}</h2>
            <p class="quiet">{words::keep_why()}</p>
            <div class="stack-tight">
                <button type="button" class="button" on:click=move |_| save_file(open)>{words::save_file()}</button>
                <button type="button" class="button" on:click=copy_link>{words::share_link()}</button>
                <When when=files::has_share_sheet>
                    <button type="button" class="button" on:click=send>{words::share_sheet()}</button>
                </When>
            </div>
            <p role="status">{said}</p>
            <When when=move || !by_hand.read().is_empty()>
                <TextEntry
                    id="link-by-hand".to_owned()
                    block=true
                    label=Signal::stored(words::link_by_hand().to_owned())
                    value=by_hand
                    on_text=Callback::new(|_| ())
                />
            </When>
        </section>
    }
}
