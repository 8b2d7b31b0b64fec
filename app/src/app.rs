//! The app's root: what all pages share, and which address shows which page.

use crate::markup::view;
use crate::reactive::{When, derived, memo};
use calc::job::Job;
use leptos::prelude::*;
use leptos_router::components::{ParentRoute, Route, Router, Routes};
use leptos_router::hooks::use_params_map;
use leptos_router::path;

use crate::desk::Desk;
use crate::offline::Offline;
use crate::open_job::{OpenJob, OpenRoom};
use crate::pages::{
    DoorwaysPage, GalleryPage, JobFrame, JobPage, JobsPage, PourPage, RoomPage, SumPourPage,
    SumRampPage, SumsPage, SurveyPage,
};
use crate::paths::{self, Stage};
use crate::settings::Settings;
use crate::shell::{Foot, Head, PageHeading, Pole, StageState, WatchMoves};
use crate::words::{common, notices};
use crate::work::Work;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let settings = Settings::load();
    provide_context(settings);
    provide_context(Desk::open());
    // Every change is saved at once, so an update has nothing to wait for.
    provide_context(Offline::register(Callback::new(|()| ())));
    // A change of language draws everything anew; every entry is saved already.
    move || {
        settings.language_turn.track();
        view! { <Pages /> }
    }
}

#[component]
fn Pages() -> impl IntoView {
    let stage = |stage: Stage| move || view! { <StagePage stage /> };
    leptos::view! {
        <Router base=paths::base()>
            <WatchMoves />
            <Routes fallback=|| view! { <Outside><NotHere /></Outside> }>
                <Route path=path!("") view=|| view! { <Outside><JobsPage /></Outside> } />
                <Route path=path!("gallery") view=|| view! { <Outside><GalleryPage /></Outside> } />
                <Route path=path!("sums") view=|| view! { <Outside><SumsPage /></Outside> } />
                <Route path=path!("sums/ramp") view=|| view! { <Outside><SumRampPage /></Outside> } />
                <Route path=path!("sums/pour") view=|| view! { <Outside><SumPourPage /></Outside> } />
                <ParentRoute path=path!("job/:job") view=JobFrame>
                    <Route path=path!("") view=JobPage />
                    <Route path=path!("room/:room/outline") view=stage(Stage::Room) />
                    <Route path=path!("room/:room/survey") view=stage(Stage::Survey) />
                    <Route path=path!("room/:room/pour") view=stage(Stage::Pour) />
                    <Route path=path!("room/:room/doorways") view=stage(Stage::Doorways) />
                    <Route path=path!("*any") view=|| view! { <main><NotHere /></main> } />
                </ParentRoute>
            </Routes>
        </Router>
    }
}

/// The frame of pages outside a job.
#[component]
fn Outside(children: Children) -> impl IntoView {
    let desk = expect_context::<Desk>();
    view! {
        <div class="frame">
            <Head />
            <main>
                <When when=move || desk.blocked>
                    <p class="notice look">{notices::blocked()}</p>
                </When>
                {children()}
            </main>
            <Foot />
        </div>
    }
}

#[component]
fn NotHere() -> impl IntoView {
    view! {
        <PageHeading text=Signal::stored(common::page_not_here().to_owned()) />
        <a class="button main" href=paths::JOBS>{common::to_jobs()}</a>
    }
}

/// A stage of a room: the pole, then the stage's page.
#[component]
fn StagePage(stage: Stage) -> impl IntoView {
    let params = use_params_map();
    let open = expect_context::<OpenJob>();
    let id = memo(move || {
        params
            .read()
            .get("room")
            .and_then(|id| id.parse::<u32>().ok())
    });
    let known = memo(move || {
        id.get()
            .filter(|&id| open.job.with(|job: &Job| job.room(id).is_some()))
    });
    move || match known.get() {
        None => view! { <main><NotHere /></main> }.into_any(),
        Some(id) => {
            let room = open.room(id);
            view! {
                <Pole job=open.id() room=id now=Some(stage) states=states(room) />
                <main>
                    <crate::pages::job::SaveNotice />
                    {match stage {
                        Stage::Room => view! { <RoomPage room /> }.into_any(),
                        Stage::Survey => view! { <SurveyPage room /> }.into_any(),
                        Stage::Pour => view! { <PourPage room /> }.into_any(),
                        Stage::Doorways => view! { <DoorwaysPage room /> }.into_any(),
                    }}
                </main>
            }
            .into_any()
        }
    }
}

/// What each stage of a room has.
fn states(room: OpenRoom) -> Signal<[StageState; 4]> {
    let work = Work::of(room);
    let chosen = room.part(|r| r.pour.choice);
    derived(move || {
        let surveyed = work
            .readings
            .with(|r| r.spots.len() >= 3 && r.unread() == 0 && r.problems.is_empty());
        let doorways = room.part(|r| {
            r.openings
                .iter()
                .all(|o| o.beyond != calc::job::Beyond::Unknown)
        });
        [
            StageState {
                done: work.shape.read().is_ok(),
            },
            StageState { done: surveyed },
            StageState {
                done: chosen.get() != calc::job::PourChoice::Open,
            },
            StageState {
                done: doorways.get() && !work.openings.read().0.is_empty(),
            },
        ]
    })
}
