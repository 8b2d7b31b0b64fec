//! The frame of every page: head, story pole, heading, foot.

use std::time::Duration;

use crate::markup::view;
use crate::reactive::{When, say};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::focus;
use crate::offline::Offline;
use crate::open_job::OpenJob;
use crate::paths::{self, Stage};
use crate::settings::{Light, Settings};
use crate::store::fresh;
use crate::words::{self, Language, common, notices};

/// The mark of the house: a story pole with its marks.
#[component]
pub fn PoleMark() -> impl IntoView {
    view! {
        <svg viewBox="0 0 20 32" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2">
            <path d="M6 1 H14 V31 H6 Z" />
            <path d="M6 8 H10 M6 14 H12 M6 26 H10" />
            <path class="crow" d="M1 16 L6 20 L1 24" stroke="var(--act)" stroke-width="2.5" />
            <path d="M6 20 H14" stroke="var(--act)" stroke-width="2.5" />
        </svg>
    }
}

/// The top of a page: the way home, and where this is.
#[component]
pub fn Head(
    /// Where this is: the job's name; empty on pages outside a job.
    #[prop(into, default = Signal::stored(String::new()))]
    place: Signal<String>,
) -> impl IntoView {
    view! {
        <button type="button" class="skip button main" on:click=|_| focus::heading()>{common::skip_to_main()}</button>
        <header class="head">
            <a class="brand" href=paths::JOBS>
                <PoleMark />
                {common::app_name()}
            </a>
            <span class="where">{place}</span>
            <UpdateNotice />
        </header>
    }
}

/// What stands on top of a printed page: job, place, room and day.
#[component]
pub fn PrintHead(
    /// The room; none: the whole job.
    #[prop(into)]
    room: Option<u32>,
) -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let text = move || {
        open.job.with(|job| {
            let room = room
                .and_then(|id| job.room(id))
                .map_or("", |room| &room.name);
            let day = fresh::now();
            let day = day.split('T').next().unwrap_or_default();
            let parts = [job.name.as_str(), &job.place, room, day];
            let parts: Vec<&str> = parts
                .into_iter()
                .filter(|part| !part.trim().is_empty())
                .collect();
            parts.join(" · ")
        })
    };
    view! { <p class="print-head">{say(text)}</p> }
}

/// Prints the page. What is folded on the screen and belongs on paper is opened before.
#[component]
pub fn PrintButton() -> impl IntoView {
    let print = |_| {
        let folded = document().query_selector_all("details.on-paper").ok();
        for index in 0..folded.as_ref().map_or(0, web_sys::NodeList::length) {
            if let Some(node) = folded.as_ref().and_then(|nodes| nodes.get(index)) {
                node.unchecked_into::<web_sys::HtmlDetailsElement>()
                    .set_open(true);
            }
        }
        // Its rows are drawn once it is open. Without a print window nothing is lost.
        set_timeout(|| drop(window().print()), Duration::from_millis(300));
    };
    view! { <button type="button" class="button wide" on:click=print>{common::print_page()}</button> }
}

/// What a stage is called.
pub fn stage_word(stage: Stage) -> &'static str {
    match stage {
        Stage::Room => words::room::stage(),
        Stage::Survey => words::survey::stage(),
        Stage::Pour => words::pour::stage(),
        Stage::Doorways => words::doorways::stage(),
        Stage::Tile => words::closing::tile::stage(),
        Stage::Board => words::closing::board::stage(),
        Stage::Paint => words::closing::paint::stage(),
        Stage::Trim => words::closing::trim::stage(),
        Stage::Air => words::closing::air::stage(),
        Stage::Panel => words::wiring::panel::stage(),
        Stage::Circuits => words::wiring::circuits::stage(),
        Stage::Boxes => words::wiring::boxes::stage(),
        Stage::OpenBox => words::open_box::stage(),
        Stage::Buy => words::supply::stage(),
        Stage::Quote => words::quote::stage(),
        Stage::Sheet => words::sheet::stage(),
    }
}

/// The story pole: a mark for each stage of the room and the house, filled where something is decided.
#[component]
pub fn Pole(
    /// The job.
    job: String,
    /// The room.
    room: u32,
    /// The stage shown; none on the job's own page.
    #[prop(into)]
    now: Option<Stage>,
    /// Whether something is decided at each stage, in the order of [`Stage::ALL`].
    #[prop(into)]
    decided: Signal<Vec<bool>>,
) -> impl IntoView {
    let marks = Stage::ALL
        .iter()
        .enumerate()
        .map(|(i, &stage)| {
            let here = now == Some(stage);
            let word = stage_word(stage);
            let done = move || decided.with(|d| d.get(i).copied().unwrap_or(false));
            view! {
                <li>
                    <a
                        href=paths::stage(&job, room, stage)
                        aria-current=here.then_some("page")
                        class:done=done
                    >
                        <svg class="mark" viewBox="0 0 22 20" aria-hidden="true">
                            <path d="M2 1 L11 10 L20 1" />
                            <rect class="seat" x="6" y="12" width="10" height="7" />
                        </svg>
                        <span>{word}</span>
                        <span class="visually-hidden">
                            {say(move || if done() { common::stage_decided() } else { common::stage_open() })}
                        </span>
                    </a>
                </li>
            }
        })
        .collect_view();
    focus::show_mark();
    view! {
        <nav class="pole" aria-label=common::stages()>
            <ol>{marks}</ol>
        </nav>
    }
}

/// A page's heading; takes the focus when the page is reached from within the app, so that a screen reader
/// says where it is.
#[component]
pub fn PageHeading(
    /// The heading.
    #[prop(into)]
    text: Signal<String>,
) -> impl IntoView {
    let node = NodeRef::<leptos::html::H1>::new();
    let settings = expect_context::<Settings>();
    Effect::new(move |_| document().set_title(&format!("{} · {}", text.get(), common::app_name())));
    // Not when its text changes: a name that is being typed would lose the focus at its first letter.
    Effect::new(move |_| {
        if let Some(heading) = node.get()
            && settings.moved.get_untracked()
        {
            let _ = heading.focus();
        }
    });
    view! { <h1 tabindex="-1" node_ref=node>{text}</h1> }
}

/// A newer version, offered and never forced: every entry is saved, and the page stays until the user says so.
#[component]
pub fn UpdateNotice() -> impl IntoView {
    let offline = expect_context::<Offline>();
    view! {
        <div role="status" class="update">
            <When when=offline.update_waiting>
                <div class="notice">
                    <p>{notices::update_ready()}</p>
                    <div class="row">
                        <button type="button" class="button main" on:click=move |_| offline.apply_update()>
                            {notices::update_now()}
                        </button>
                        <button type="button" class="button" on:click=move |_| offline.update_waiting.set(false)>
                            {notices::update_later()}
                        </button>
                    </div>
                </div>
            </When>
        </div>
    }
}

/// The foot of every page: other places, language, light.
#[component]
pub fn Foot() -> impl IntoView {
    let settings = expect_context::<Settings>();
    let offline = expect_context::<Offline>();
    let language = move |l: Language, word: &'static str| {
        view! {
            <button
                type="button"
                class="button plain"
                lang=l.tag()
                aria-pressed=(words::language() == l).to_string()
                on:click=move |_| settings.choose_language(l)
            >
                {word}
            </button>
        }
    };
    let light = move |l: Light, word: &'static str| {
        view! {
            <button
                type="button"
                class="button plain"
                aria-pressed=move || (settings.light.get() == l).to_string()
                on:click=move |_| settings.choose_light(l)
            >
                {word}
            </button>
        }
    };
    view! {
        <footer class="foot">
            <nav class="row" aria-label=common::other_places()>
                <a class="button plain" href=paths::JOBS>{common::jobs_short()}</a>
                <a class="button plain" href=paths::SUMS>{common::sums_short()}</a>
            </nav>
            <div class="row" role="group" aria-label=common::language_label()>
                {language(Language::English, common::english())}
                {language(Language::Spanish, common::spanish())}
            </div>
            <div class="row" role="group" aria-label=common::light_label()>
                {light(Light::Auto, common::light_auto())}
                {light(Light::Day, common::light_day())}
                {light(Light::Basement, common::light_basement())}
            </div>
            <p>{common::local_code()}</p>
            <p role="status">{say(move || if offline.ready.get() { notices::ready_offline() } else { "" })}</p>
        </footer>
    }
}
