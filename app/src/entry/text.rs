//! Free text: names, places, notes, pasted lists.

use crate::markup::view;
use leptos::prelude::*;

use super::frame::{Frame, described_by};

/// A line or a block of free text.
#[component]
pub fn TextEntry(
    /// Id of the input.
    id: String,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// The text in force.
    #[prop(into)]
    value: Signal<String>,
    /// Called with the text at every key.
    on_text: Callback<String>,
    /// Several lines.
    #[prop(optional)]
    block: bool,
    /// One sentence that teaches; empty: none.
    #[prop(into, default = Signal::stored(String::new()))]
    hint: Signal<String>,
    /// What is wrong; none: nothing.
    #[prop(into, default = Signal::stored(None))]
    error: Signal<Option<String>>,
) -> impl IntoView {
    let described = described_by(&id);
    let input_id = id.clone();
    let invalid = move || error.read().is_some().to_string();
    view! {
        <Frame id label hint error>
            {if block {
                view! {
                    <textarea
                        id=input_id
                        autocomplete="off"
                        aria-describedby=described
                        aria-invalid=invalid
                        prop:value=move || value.get()
                        on:input:target=move |ev| on_text.run(ev.target().value())
                    ></textarea>
                }
                    .into_any()
            } else {
                view! {
                    <input
                        id=input_id
                        type="text"
                        autocomplete="off"
                        aria-describedby=described
                        aria-invalid=invalid
                        prop:value=move || value.get()
                        on:input:target=move |ev| on_text.run(ev.target().value())
                    />
                }
                    .into_any()
            }}
        </Frame>
    }
}
