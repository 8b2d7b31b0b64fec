//! Roomwright's front end. It shows and keeps; it does no arithmetic of the trade.

pub mod paths;

pub mod words;

pub mod settings;

pub mod shell;

pub mod entry;

pub mod pictures;

pub mod store;

use leptos::prelude::*;

pub mod offline;

/// Mounts the app in the page.
pub fn start() {
    offline::install_stop_notice();
    mount_to_body(App);
    offline::started();
}

/// The app's root.
#[component]
fn App() -> impl IntoView {
    provide_context(offline::Offline::register(Callback::new(|()| ())));
    view! { <main><h1>"Roomwright"</h1></main> }
}
