//! The frame that every field stands in: label and unit above, a hint where it teaches, the error beneath in
//! plain words, then what was understood.

use crate::markup::view;
use crate::reactive::When;
use leptos::prelude::*;

/// Ids of the parts of a field, from the id of its input.
pub fn described_by(id: &str) -> String {
    format!("{id}-hint {id}-error")
}

/// One field's frame around its input.
#[component]
pub fn Frame(
    /// Id of the input within.
    id: String,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// The unit in which a bare number is read; shown after the label.
    #[prop(into, default = Signal::stored(String::new()))]
    unit: Signal<String>,
    /// One sentence that teaches; empty: none.
    #[prop(into, default = Signal::stored(String::new()))]
    hint: Signal<String>,
    /// What is wrong and what to enter instead; none: nothing is wrong.
    #[prop(into, default = Signal::stored(None))]
    error: Signal<Option<String>>,
    /// What was understood; none: the line is left out.
    #[prop(into, default = Signal::stored(None))]
    echo: Signal<Option<String>>,
    /// The input.
    children: Children,
) -> impl IntoView {
    let hint_id = format!("{id}-hint");
    let error_id = format!("{id}-error");
    view! {
        <div class="field" class:refused=move || error.read().is_some()>
            <label for=id>
                {label}
                <When when=move || !unit.read().is_empty()>
                    <span class="unit">", "{unit}</span>
                </When>
            </label>
            <span class="hint" id=hint_id hidden=move || hint.read().is_empty()>{hint}</span>
            {children()}
            <span class="error" id=error_id hidden=move || error.read().is_none()>
                <span>{error}</span>
            </span>
            <When when=move || echo.read().is_some()>
                <span class="echo">{echo}</span>
            </When>
        </div>
    }
}
