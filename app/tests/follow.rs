//! What stands in a page follows what it reads, in whatever order it reads it.

#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use app::markup::{self, view};
use app::reactive::{derived, memo, say};
use leptos::mount::mount_to;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// Every way to follow, each reading first what is made of the whole and stays the same, then the whole.
#[wasm_bindgen_test]
async fn all_parts_follow_a_memo_read_after_what_is_made_of_it() {
    let place = document().create_element("div").unwrap();
    document().body().unwrap().append_child(&place).unwrap();
    let source = RwSignal::new(1);
    let whole = memo(move || source.get());
    let sign = memo(move || whole.get() > 0);
    let read = move || format!("{}{}", if sign.get() { "+" } else { "-" }, whole.get());
    let mounted = mount_to(place.clone().unchecked_into(), move || {
        let kept = move || read() + "!";
        view! {
            <p class="closure">{move || read() + "!"}</p>
            <p class="kept">{kept}</p>
            <p class="said">{say(move || read() + "!")}</p>
            <p class="signal">{derived(read)}</p>
            <p class="attribute" title=move || read() + "!"></p>
        }
    });
    let shown = |class: &str| {
        let part = place.query_selector(&format!(".{class}")).unwrap().unwrap();
        part.text_content().unwrap_or_default() + &part.get_attribute("title").unwrap_or_default()
    };
    for value in [1, 2, -3] {
        source.set(value);
        leptos::task::tick().await;
        leptos::task::tick().await;
        let want = format!("{}{value}", if value > 0 { "+" } else { "-" });
        for class in ["closure", "kept", "said", "signal", "attribute"] {
            assert_eq!(shown(class).trim_end_matches('!'), want, "{class}");
        }
    }
    drop(mounted);
}
