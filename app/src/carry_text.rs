//! A text to take along: to the share sheet, the clipboard, or a table as a file.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::entry::TextEntry;
use crate::markup::view;
use crate::reactive::When;
use crate::store::files;
use crate::words::{notices, supply as words};

/// Ways to take a text along. Where neither sheet nor clipboard will have it, it is shown to be copied by hand.
#[component]
pub fn CarryText(
    /// What it is called.
    title: &'static str,
    /// Makes the text.
    text: Callback<(), String>,
    /// Makes the same as a table.
    #[prop(optional)]
    table: Option<Callback<(), String>>,
    /// The table's file name, without its ending.
    #[prop(optional)]
    table_name: &'static str,
) -> impl IntoView {
    let said = RwSignal::new(String::new());
    let by_hand = RwSignal::new(String::new());
    let share = move |_| {
        let text = text.run(());
        spawn_local(async move {
            match files::share_text(title, &text).await {
                Ok(()) | Err(files::FileRefusal::Dismissed) => {}
                Err(refusal) => said.set(notices::file_refusal(&refusal)),
            }
        });
    };
    let copy = move |_| {
        let text = text.run(());
        spawn_local(async move {
            let clipboard = window().navigator().clipboard();
            let copied = wasm_bindgen_futures::JsFuture::from(clipboard.write_text(&text)).await;
            if copied.is_ok() {
                by_hand.set(String::new());
                said.set(words::copied().to_owned());
            } else {
                said.set(words::by_hand().to_owned());
                by_hand.set(text);
            }
        });
    };
    let save = table.map(|table| {
        let save = move |_| {
            let name = format!("{table_name}.csv");
            // A mark in front tells spreadsheets that it is UTF-8.
            let table = format!("\u{feff}{}", table.run(()));
            if let Err(refusal) = files::download_as(&name, &table, "text/csv") {
                said.set(notices::file_refusal(&refusal));
            }
        };
        view! { <button type="button" class="button" on:click=save>{words::save_csv()}</button> }
    });
    view! {
        <div class="stack-tight no-print">
            <When when=files::has_share_sheet>
                <button type="button" class="button" on:click=share>{words::share_text()}</button>
            </When>
            <button type="button" class="button" on:click=copy>{words::copy_text()}</button>
            {save}
            <p role="status">{said}</p>
            <When when=move || !by_hand.read().is_empty()>
                <TextEntry
                    id="text-by-hand".to_owned()
                    block=true
                    label=Signal::stored(words::by_hand().to_owned())
                    value=by_hand
                    on_text=Callback::new(|_| ())
                />
            </When>
        </div>
    }
}
