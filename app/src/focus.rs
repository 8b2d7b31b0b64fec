//! Where the keyboard's focus goes when what had it is gone, or something new asks for it.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// The element with this id, once it is in the page; an input's text is selected.
pub fn soon(id: &str) {
    let id = id.to_owned();
    let has_it = document()
        .active_element()
        .is_some_and(|active| active.id() == id);
    let put = move || {
        let Some(element) = document().get_element_by_id(&id) else {
            return;
        };
        if let Some(input) = element.dyn_ref::<web_sys::HtmlInputElement>() {
            input.select();
        }
        focus(element);
    };
    if has_it {
        // Before the next key can come: it would be selected, and the one after it typed over it.
        queue_microtask(put);
    } else {
        request_animation_frame(put);
    }
}

/// The heading of the page.
pub fn heading() {
    if let Some(heading) = document().query_selector("main h1").ok().flatten() {
        focus(heading);
    }
}

/// Brings the pole's mark of the page shown into the middle of the pole, once it is there.
pub fn show_mark() {
    request_animation_frame(|| {
        let find = |selectors| document().query_selector(selectors).ok().flatten();
        if let Some(pole) = find(".pole")
            && let Some(mark) = find(".pole [aria-current]")
            && let Some(mark) = mark.dyn_ref::<HtmlElement>()
        {
            pole.set_scroll_left(
                mark.offset_left() - (pole.client_width() - mark.offset_width()) / 2,
            );
        }
    });
}

fn focus(element: web_sys::Element) {
    if let Ok(element) = element.dyn_into::<HtmlElement>() {
        // An element that takes no focus leaves it where it is.
        let _ = element.focus();
    }
}
