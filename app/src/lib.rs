//! Roomwright's front end. It shows and keeps; it does no arithmetic of the trade.

pub mod app;

pub mod paths;

pub mod settings;

pub mod desk;

pub mod open_job;

pub mod work;

pub mod shell;

pub mod pages;

pub mod entry;

pub mod pictures;

pub mod words;

pub mod store;

use leptos::prelude::*;

/// Mounts the app in the page.
pub fn start() {
    console_error_panic_hook::set_once();
    mount_to_body(app::App);
}
