//! Roomwright's front end. It shows and keeps; it does no arithmetic of the trade.

pub mod paths;

pub mod words;

pub mod settings;

pub mod shell;

pub mod entry;

pub mod pictures;

pub mod store;

use leptos::prelude::*;

/// Mounts the app in the page.
pub fn start() {
    console_error_panic_hook::set_once();
    mount_to_body(|| view! { <p>"Roomwright"</p> });
}
