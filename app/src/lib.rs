//! Roomwright's front end. It shows and keeps; it does no arithmetic of the trade.

pub mod app;

pub mod reactive;

pub mod markup;

pub mod paths;

pub mod router;

pub mod settings;

pub mod carry_text;

pub mod desk;

pub mod open_job;

pub mod work;

pub mod house;

pub mod standing;

pub mod tiling;

pub mod supply;

pub mod shell;

pub mod answer;

pub mod pages;

pub mod entry;

pub mod focus;

pub mod pictures;

pub mod words;

pub mod store;

pub mod measure;

pub mod offline;

use leptos::prelude::*;

/// Mounts the app in the page.
pub fn start() {
    offline::install_stop_notice();
    mount_to_body(app::App);
    offline::started();
}
