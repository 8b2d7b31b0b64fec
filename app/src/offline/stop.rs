//! The notice of a stop. After a panic nothing of the program runs any more (wasm aborts), so the notice is plain HTML and
//! `offline/static/boot.js`; this side only says when.

use std::panic;

use leptos::prelude::{document, window};
use wasm_bindgen::JsValue;
use web_sys::{CustomEvent, CustomEventInit};

/// From now on a panic shows the notice, besides what the console gets.
pub fn install_stop_notice() {
    panic::set_hook(Box::new(|info| {
        console_error_panic_hook::hook(info);
        // boot.js fills in the words; should it be missing, the English ones stand in the page already.
        if let Some(notice) = document().get_element_by_id("stopped") {
            let _ = notice.remove_attribute("hidden");
        }
        tell("roomwright-stopped", &info.to_string());
    }));
}

/// The app's screen is up: takes the first screen away and lets boot.js know that this start went well.
pub fn started() {
    if let Some(first) = document().get_element_by_id("first-screen") {
        first.remove();
    }
    tell("roomwright-started", "");
}

/// True when this start was asked to open nothing by itself, because the last one stopped while it did (`?fresh`).
pub fn start_without_last_job() -> bool {
    window().location().search().is_ok_and(|search| {
        search
            .trim_start_matches('?')
            .split('&')
            .any(|part| part == "fresh")
    })
}

fn tell(event: &str, detail: &str) {
    let init = CustomEventInit::new();
    init.set_detail(&JsValue::from_str(detail));
    if let Ok(event) = CustomEvent::new_with_event_init_dict(event, &init) {
        let _ = window().dispatch_event(&event);
    }
}
