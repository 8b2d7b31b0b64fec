//! One of a few: a row of ruled options, or a list to pick from where there are many.

use crate::markup::{For, view};
use leptos::prelude::*;

/// One option: what is stored, and what is read.
#[derive(Clone, Debug, PartialEq)]
pub struct ChoiceOption {
    /// The value handed on.
    pub value: String,
    /// The words shown.
    pub words: String,
}

impl ChoiceOption {
    /// An option from its value and its words.
    pub fn new(value: impl Into<String>, words: impl Into<String>) -> Self {
        Self {
            value: value.into(),
            words: words.into(),
        }
    }
}

/// A few options side by side; arrow keys move among them.
#[component]
pub fn Choice(
    /// Id and group name.
    id: String,
    /// The question.
    #[prop(into)]
    label: Signal<String>,
    /// The options.
    #[prop(into)]
    options: Signal<Vec<ChoiceOption>>,
    /// The value in force.
    #[prop(into)]
    value: Signal<String>,
    /// Called with the value chosen.
    on_pick: Callback<String>,
    /// One sentence that teaches; empty: none.
    #[prop(into, default = Signal::stored(String::new()))]
    hint: Signal<String>,
) -> impl IntoView {
    let hint_id = format!("{id}-hint");
    let group = id.clone();
    let described = hint_id.clone();
    view! {
        <fieldset class="field" id=id aria-describedby=described>
            <legend>{label}</legend>
            <span class="hint" id=hint_id hidden=move || hint.read().is_empty()>{hint}</span>
            <div class="choices">
                <For each=move || options.get() key=|o| (o.value.clone(), o.words.clone()) let:option>
                    {
                        let this = option.value.clone();
                        let picked = option.value.clone();
                        view! {
                            <label>
                                <input
                                    type="radio"
                                    name=group.clone()
                                    value=option.value.clone()
                                    prop:checked=move || *value.read() == this
                                    on:change=move |_| on_pick.run(picked.clone())
                                />
                                <span>{option.words.clone()}</span>
                            </label>
                        }
                    }
                </For>
            </div>
        </fieldset>
    }
}

/// One of many, in the browser's own list.
#[component]
pub fn Pick(
    /// Id of the list.
    id: String,
    /// The question.
    #[prop(into)]
    label: Signal<String>,
    /// The options.
    #[prop(into)]
    options: Signal<Vec<ChoiceOption>>,
    /// The value in force.
    #[prop(into)]
    value: Signal<String>,
    /// Called with the value chosen.
    on_pick: Callback<String>,
    /// What is wrong; none: nothing.
    #[prop(into, default = Signal::stored(None))]
    error: Signal<Option<String>>,
    /// One sentence that teaches; empty: none.
    #[prop(into, default = Signal::stored(String::new()))]
    hint: Signal<String>,
) -> impl IntoView {
    let described = super::frame::described_by(&id);
    let input_id = id.clone();
    view! {
        <super::Frame id label error hint>
            <select
                id=input_id
                aria-describedby=described
                aria-invalid=move || error.read().is_some().to_string()
                on:change:target=move |ev| on_pick.run(ev.target().value())
            >
                <For each=move || options.get() key=|o| (o.value.clone(), o.words.clone()) let:option>
                    {
                        let this = option.value.clone();
                        view! {
                            <option value=option.value.clone() prop:selected=move || *value.read() == this>
                                {option.words.clone()}
                            </option>
                        }
                    }
                </For>
            </select>
        </super::Frame>
    }
}
