//! The app's root: what all pages share, and which address shows which page.

use crate::markup::{For, view};
use crate::reactive::{When, memo};
use calc::job::Job;
use leptos::prelude::*;

use crate::desk::Desk;
use crate::offline::Offline;
use crate::open_job::OpenJob;
use crate::pages::{
    AirPage, BoardPage, BoxPage, BoxesPage, BuyPage, CircuitPage, CircuitsPage, DoorwaysPage,
    GalleryPage, JobFrame, JobPage, JobsPage, OpenBoxPage, OpenBoxesPage, PaintPage, PanelPage,
    PourPage, QuotePage, RoomPage, SheetPage, SumAmpacityPage, SumBoxPage, SumCablePage,
    SumClosingPage, SumCompoundPage, SumDropPage, SumMeasuredPage, SumPourPage, SumQuotePage,
    SumRampPage, SumsPage, SurveyPage, TilePage, TrimPage,
};
use crate::paths::{self, Stage};
use crate::router::{JobPart, Page, Place};
use crate::settings::Settings;
use crate::shell::{Foot, Head, PageHeading, Pole, PrintButton, PrintHead};
use crate::standing::decided;
use crate::words::{common, notices};

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let settings = Settings::load();
    provide_context(settings);
    provide_context(Desk::open());
    // Every change is saved at once, so an update has nothing to wait for.
    provide_context(Offline::register(Callback::new(|()| ())));
    provide_context(Place::open(settings));
    view! { <Pages /> }
}

/// The page that the address names. Each page is drawn from nothing, and so is all at a change of language: every entry
/// is saved already.
#[component]
fn Pages() -> impl IntoView {
    let settings = expect_context::<Settings>();
    let place = Place::here();
    // Within a job the frame stays.
    let frame = memo(move || match place.page() {
        Page::Job(id, _) => Page::Job(id, JobPart::Whole),
        page => page,
    });
    view! {
        <For
            each=move || vec![(settings.language_turn.get(), frame.get())]
            key=|(turn, page)| (*turn, format!("{page:?}"))
            let:shown
        >
            {match shown.1 {
                Page::Jobs => view! { <Outside><JobsPage /></Outside> },
                Page::Gallery => view! { <Outside><GalleryPage /></Outside> },
                Page::Sums => view! { <Outside><SumsPage /></Outside> },
                Page::SumRamp => view! { <Outside><SumRampPage /></Outside> },
                Page::SumPour => view! { <Outside><SumPourPage /></Outside> },
                Page::SumBox => view! { <Outside><SumBoxPage /></Outside> },
                Page::SumAmpacity => view! { <Outside><SumAmpacityPage /></Outside> },
                Page::SumDrop => view! { <Outside><SumDropPage /></Outside> },
                Page::SumMeasured => view! { <Outside><SumMeasuredPage /></Outside> },
                Page::SumCable => view! { <Outside><SumCablePage /></Outside> },
                Page::SumQuote => view! { <Outside><SumQuotePage /></Outside> },
                Page::SumCompound => view! { <Outside><SumCompoundPage /></Outside> },
                Page::SumClosing(stage) => view! { <Outside><SumClosingPage stage /></Outside> },
                Page::Job(id, _) => view! { <JobFrame id><JobPages /></JobFrame> },
                Page::Unknown => view! { <Outside><NotHere /></Outside> },
            }}
        </For>
    }
}

/// The page of a job that the address names.
#[component]
fn JobPages() -> impl IntoView {
    let place = Place::here();
    let part = memo(move || match place.page() {
        Page::Job(_, part) => Some(part),
        _ => None,
    });
    view! {
        <For each=move || part.get().into_iter().collect() key=|part| format!("{part:?}") let:part>
            {match part {
                JobPart::Whole => view! { <JobPage /> },
                JobPart::Stage(id, stage) => view! { <StagePage id stage /> },
                JobPart::House(stage, row) => view! { <HousePage stage row /> },
                JobPart::Unknown => view! { <main><NotHere /></main> },
            }}
        </For>
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

/// What stands where an address leads nowhere.
#[component]
pub fn NotHere() -> impl IntoView {
    view! {
        <PageHeading text=Signal::stored(common::page_not_here().to_owned()) />
        <a class="button main" href=paths::JOBS>{common::to_jobs()}</a>
    }
}

/// A stage of a room: the pole, then the stage's page.
#[component]
fn StagePage(id: u32, stage: Stage) -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let known = memo(move || open.job.with(|job: &Job| job.room(id).map(|_| id)));
    move || match known.get() {
        None => view! { <main><NotHere /></main> }.into_any(),
        Some(id) => {
            let room = open.room(id);
            open.show_room(id);
            view! {
                <Pole job=open.id() room=id now=Some(stage) decided=decided(room) />
                <main>
                    <PrintHead room=Some(id) />
                    <crate::pages::job::SaveNotice />
                    {match stage {
                        Stage::Room => view! { <RoomPage room /> }.into_any(),
                        Stage::Survey => view! { <SurveyPage room /> }.into_any(),
                        Stage::Pour => view! { <PourPage room /> }.into_any(),
                        Stage::Doorways => view! { <DoorwaysPage room /> }.into_any(),
                        Stage::Tile => view! { <TilePage room /> }.into_any(),
                        Stage::Board => view! { <BoardPage room /> }.into_any(),
                        Stage::Paint => view! { <PaintPage room /> }.into_any(),
                        Stage::Trim => view! { <TrimPage room /> }.into_any(),
                        Stage::Air => view! { <AirPage room /> }.into_any(),
                        // Stages of the house have addresses of their own.
                        _ => view! { <NotHere /> }.into_any(),
                    }}
                    <PrintButton />
                    <crate::pages::job::PutBack />
                </main>
            }
            .into_any()
        }
    }
}

/// A stage of the house, or one row of it; its pole leads to the room shown last.
#[component]
fn HousePage(stage: Stage, row: Option<u32>) -> impl IntoView {
    let open = expect_context::<OpenJob>();
    let room = open.shown_room();
    view! {
        <Pole job=open.id() room=room.id now=Some(stage) decided=decided(room) />
        <main class=format!("of-{}", stage.segment())>
            <PrintHead room=None />
            <crate::pages::job::SaveNotice />
            {match (stage, row) {
                (Stage::Circuits, None) => view! { <CircuitsPage /> }.into_any(),
                (Stage::Circuits, Some(id)) => view! { <CircuitPage id /> }.into_any(),
                (Stage::Boxes, None) => view! { <BoxesPage /> }.into_any(),
                (Stage::Boxes, Some(id)) => view! { <BoxPage id /> }.into_any(),
                (Stage::OpenBox, None) => view! { <OpenBoxesPage /> }.into_any(),
                (Stage::OpenBox, Some(id)) => view! { <OpenBoxPage id /> }.into_any(),
                (Stage::Buy, _) => view! { <BuyPage /> }.into_any(),
                (Stage::Quote, _) => view! { <QuotePage /> }.into_any(),
                (Stage::Sheet, _) => view! { <SheetPage /> }.into_any(),
                _ => view! { <PanelPage /> }.into_any(),
            }}
            <crate::pages::job::PutBack />
        </main>
    }
}
