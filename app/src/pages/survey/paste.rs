//! Spots from pasted text or a file.

use calc::floor::paste;
use calc::job::{Job, Spot, Units};
use calc::quantity::{LengthUnit, Typed};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::Walk;
use crate::entry::TextEntry;
use crate::markup::view;
use crate::reactive::{When, derived, memo, say};
use crate::store::{drafts, files};
use crate::words::{notices, survey as words};

/// How many refused lines are shown.
const LINES_SHOWN: usize = 8;

/// Spots from pasted text or a file.
#[component]
pub(super) fn Paste(walk: Walk) -> impl IntoView {
    let units = walk.room.open.units();
    let kept = drafts::draft(&walk.room.key("paste"));
    let text = derived(move || kept.with(|k| k.text.clone()));
    let refused = RwSignal::new(None::<String>);
    // Readings that a paste would take the place of: the user says which.
    let read = memo(move || walk.work.readings.with(|r| r.places.len() - r.unread()));
    let take = move |add: bool| {
        let bare = if units.get_untracked() == Units::Metric {
            LengthUnit::Millimeters
        } else {
            LengthUnit::Inches
        };
        match text.with_untracked(|t| paste::read(t, bare)) {
            Err(refusals) => {
                let mut lines: Vec<String> = refusals
                    .iter()
                    .take(LINES_SHOWN)
                    .map(words::paste_refusal)
                    .collect();
                if refusals.len() > LINES_SHOWN {
                    lines.push(words::paste_more(refusals.len() - LINES_SHOWN));
                }
                refused.set(Some(lines.join(" ")));
            }
            Ok(pasted) => {
                refused.set(None);
                let unit = |column: usize| pasted.units[column].unwrap_or(bare).code();
                let spots = |next: &mut u32| {
                    let spot = |row: &paste::PastedRow| {
                        let id = *next;
                        *next += 1;
                        Spot {
                            id,
                            x: Typed::kept(row.x.clone(), unit(0)),
                            y: Typed::kept(row.y.clone(), unit(1)),
                            reading: Typed::kept(row.reading.clone(), unit(2)),
                            checked: String::new(),
                            rest: calc::job::Rest::new(),
                        }
                    };
                    pasted.rows.iter().map(spot).collect::<Vec<_>>()
                };
                let gave_way = words::paste_gave_way(walk.ids.with_untracked(Vec::len));
                let room_id = walk.room.id;
                walk.room.open.take_out(gave_way, |job| {
                    let mut next = job.next_id;
                    let new = spots(&mut next);
                    job.next_id = next;
                    let room = job.room_mut(room_id)?;
                    if add {
                        room.survey.spots.extend(new);
                        return None;
                    }
                    let before = std::mem::replace(&mut room.survey.spots, new);
                    if before.iter().all(|s| s.reading.is_blank()) {
                        return None;
                    }
                    Some(Box::new(move |job: &mut Job| {
                        if let Some(room) = job.room_mut(room_id) {
                            room.survey.spots = before;
                        }
                    }))
                });
                walk.now.set(None);
                walk.undo.set(Vec::new());
                walk.said.set(match pasted.rows.len() {
                    1 => words::paste_took_one().to_owned(),
                    count => words::paste_took(count),
                });
            }
        }
    };
    let picked = move |input: web_sys::HtmlInputElement| {
        let Some(file) = files::picked(&input) else {
            return;
        };
        spawn_local(async move {
            match files::read(&file).await {
                Ok(bytes) => match String::from_utf8(bytes) {
                    Ok(read_text) => {
                        kept.set(Typed::plain(read_text));
                        // Where readings stand, the user says what becomes of them.
                        if read.get_untracked() == 0 {
                            take(false);
                        }
                    }
                    Err(_) => refused.set(Some(notices::file_not_text().to_owned())),
                },
                Err(refusal) => refused.set(Some(notices::file_refusal(&refusal))),
            }
        });
    };
    view! {
        <details>
            <summary>{words::paste_heading()}</summary>
            <div class="stack">
                <TextEntry
                    id="paste".to_owned()
                    block=true
                    label=Signal::stored(words::paste_label().to_owned())
                    hint=derived(move || {
                        if units.get() == Units::Metric { words::paste_hint_metric() } else { words::paste_hint() }.to_owned()
                    })
                    value=text
                    error=refused
                    on_text=Callback::new(move |t: String| kept.set(Typed::plain(t)))
                />
                <div class="row">
                    <button type="button" class="button" on:click=move |_| take(false)>
                        {say(move || match read.get() {
                            0 => words::paste_take().to_owned(),
                            count => words::paste_instead(count),
                        })}
                    </button>
                    <When when=move || read.get() != 0>
                        <button type="button" class="button" on:click=move |_| take(true)>{words::paste_add()}</button>
                    </When>
                    <label class="button file">
                        {words::paste_file()}
                        <input
                            type="file"
                            class="visually-hidden"
                            accept=".csv,.txt,text/csv,text/plain"
                            on:change:target=move |ev| picked(ev.target())
                        />
                    </label>
                </div>
            </div>
        </details>
    }
}
