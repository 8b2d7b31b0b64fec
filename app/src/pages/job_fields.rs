//! Fields of the open job, each bound to its place in the document: read from there, written back at every key.

use std::sync::Arc;

use calc::job::fields::Field;
use calc::job::{Job, Typed};
use leptos::prelude::*;

use super::sum_fields::Shown;
use crate::entry::{Choice, ChoiceOption, Measured, Pick, TextEntry};
use crate::markup::view;
use crate::open_job::OpenJob;

type Reads<T> = Arc<dyn Fn(&Job) -> T + Send + Sync>;
type Writes<T> = Arc<dyn Fn(&mut Job, T) + Send + Sync>;

/// A place in the job: how it is read and how it is written.
#[derive(Clone)]
pub struct At<T: 'static> {
    get: Reads<T>,
    put: Writes<T>,
}

impl<T> At<T> {
    /// A place from its two ways.
    pub fn new(
        get: impl Fn(&Job) -> T + Send + Sync + 'static,
        put: impl Fn(&mut Job, T) + Send + Sync + 'static,
    ) -> Self {
        Self {
            get: Arc::new(get),
            put: Arc::new(put),
        }
    }
}

impl<T: 'static> At<T> {
    /// The place of the same by codes.
    pub fn coded(self, code: fn(T) -> String, of: fn(&str) -> T) -> At<String> {
        let Self { get, put } = self;
        At::new(
            move |job| code(get(job)),
            move |job, text: String| put(job, of(&text)),
        )
    }
}

/// The place of an entry: `at!(panel.rating)`, `at!(room id; tile.width)`, `at!(room id, tile.obstacles[row]; x)`, `at!(circuit id; name)`, or of a row of a circuit:
/// `at!(circuit id, stretches[row]; length)`.
macro_rules! at {
    (room $id:expr; $($part:ident).+) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                job.room($id).map(|room| room.$($part).+.clone()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, value| {
                if let Some(room) = job.room_mut($id) {
                    room.$($part).+ = value;
                }
            },
        )
    };
    (room $id:expr, $($list:ident).+ [$row:expr]; $part:ident) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                let rows = job.room($id).map(|room| &room.$($list).+);
                let row = rows.and_then(|rows| rows.iter().find(|row| row.id == $row));
                row.map(|row| row.$part.clone()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, value| {
                let rows = job.room_mut($id).map(|room| &mut room.$($list).+);
                if let Some(row) = rows.and_then(|rows| rows.iter_mut().find(|row| row.id == $row)) {
                    row.$part = value;
                }
            },
        )
    };
    (panel . $($part:ident).+) => {
        $crate::pages::job_fields::At::new(
            |job: &calc::job::Job| job.panel.$($part).+.clone(),
            |job: &mut calc::job::Job, value| job.panel.$($part).+ = value,
        )
    };
    (circuit $id:expr; $($part:ident).+) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                job.circuit($id).map(|row| row.$($part).+.clone()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, value| {
                if let Some(row) = job.circuit_mut($id) {
                    row.$($part).+ = value;
                }
            },
        )
    };
    (circuit $id:expr, $list:ident [$row:expr]; $part:ident) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                let rows = job.circuit($id).map(|circuit| &circuit.$list);
                let row = rows.and_then(|rows| rows.iter().find(|row| row.id == $row));
                row.map(|row| row.$part.clone()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, value| {
                let rows = job.circuit_mut($id).map(|circuit| &mut circuit.$list);
                if let Some(row) = rows.and_then(|rows| rows.iter_mut().find(|row| row.id == $row)) {
                    row.$part = value;
                }
            },
        )
    };
}

/// The place of a choice by its code; `$code` is the way from the value to its code.
macro_rules! code_at {
    ($code:path; room $id:expr; $($part:ident).+) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                job.room($id).map(|room| $code(room.$($part).+).to_owned()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, code: String| {
                if let Some(room) = job.room_mut($id) {
                    $crate::pages::sum_fields::take_code(&mut room.$($part).+, code);
                }
            },
        )
    };
    ($code:path; panel . $($part:ident).+) => {
        $crate::pages::job_fields::At::new(
            |job: &calc::job::Job| $code(job.panel.$($part).+).to_owned(),
            |job: &mut calc::job::Job, code: String| {
                $crate::pages::sum_fields::take_code(&mut job.panel.$($part).+, code);
            },
        )
    };
    ($code:path; circuit $id:expr; $part:ident) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                job.circuit($id).map(|row| $code(row.$part).to_owned()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, code: String| {
                if let Some(row) = job.circuit_mut($id) {
                    $crate::pages::sum_fields::take_code(&mut row.$part, code);
                }
            },
        )
    };
    ($code:path; circuit $id:expr, $list:ident [$row:expr]; $part:ident) => {
        $crate::pages::job_fields::At::new(
            move |job: &calc::job::Job| {
                let rows = job.circuit($id).map(|circuit| &circuit.$list);
                let row = rows.and_then(|rows| rows.iter().find(|row| row.id == $row));
                row.map(|row| $code(row.$part).to_owned()).unwrap_or_default()
            },
            move |job: &mut calc::job::Job, code: String| {
                let rows = job.circuit_mut($id).map(|circuit| &mut circuit.$list);
                if let Some(row) = rows.and_then(|rows| rows.iter_mut().find(|row| row.id == $row)) {
                    $crate::pages::sum_fields::take_code(&mut row.$part, code);
                }
            },
        )
    };
}

pub(super) use {at, code_at};

impl At<bool> {
    /// The place of the contrary.
    pub fn turned(self) -> Self {
        let Self { get, put } = self;
        Self::new(move |job| !get(job), move |job, value| put(job, !value))
    }
}

/// The place of yes or no, by codes.
pub fn yes_no(at: At<bool>) -> At<String> {
    let At { get, put } = at;
    At::new(
        move |job| if get(job) { "yes" } else { "no" }.to_owned(),
        move |job, code| put(job, code == "yes"),
    )
}

/// The place of yes, no or not known, by codes.
pub fn known(at: At<Option<bool>>) -> At<String> {
    let At { get, put } = at;
    At::new(
        move |job| {
            match get(job) {
                Some(true) => "yes",
                Some(false) => "no",
                None => "",
            }
            .to_owned()
        },
        move |job, code| {
            put(
                job,
                match code.as_str() {
                    "yes" => Some(true),
                    "no" => Some(false),
                    _ => None,
                },
            )
        },
    )
}

/// The place of a row's id that may be none, by its number; empty for none.
pub fn id_code(at: At<Option<u32>>) -> At<String> {
    let At { get, put } = at;
    At::new(
        move |job| get(job).map(|id| id.to_string()).unwrap_or_default(),
        move |job, code| put(job, code.parse().ok()),
    )
}

/// A measured field.
pub fn number(
    open: OpenJob,
    id: impl Into<String>,
    label: Signal<String>,
    field: Field,
    shown: Shown,
    at: At<Typed>,
) -> AnyView {
    let At { get, put } = at;
    let value = open.part(move |job| get(job));
    let on_typed = Callback::new(move |typed| open.change(|job| put(job, typed)));
    let id: String = id.into();
    let hint = Signal::stored(shown.hint.to_owned());
    let units = open.units();
    let also = shown.refused();
    view! { <Measured id label hint field units also optional=shown.optional value on_typed /> }
        .into_any()
}

/// A line of text.
pub fn text(
    open: OpenJob,
    id: impl Into<String>,
    label: Signal<String>,
    hint: &'static str,
    at: At<String>,
) -> AnyView {
    written(open, id.into(), label, hint, at, false)
}

/// Several lines of text.
pub fn text_block(
    open: OpenJob,
    id: &'static str,
    label: Signal<String>,
    hint: &'static str,
    at: At<String>,
) -> AnyView {
    written(open, id.to_owned(), label, hint, at, true)
}

fn written(
    open: OpenJob,
    id: String,
    label: Signal<String>,
    hint: &'static str,
    at: At<String>,
    block: bool,
) -> AnyView {
    let At { get, put } = at;
    let value = open.part(move |job| get(job));
    let on_text = Callback::new(move |text| open.change(|job| put(job, text)));
    let hint = Signal::stored(hint.to_owned());
    view! { <TextEntry id label hint block value on_text /> }.into_any()
}

/// A few options side by side.
pub fn choice(
    open: OpenJob,
    id: impl Into<String>,
    label: Signal<String>,
    hint: &'static str,
    options: Vec<ChoiceOption>,
    at: At<String>,
) -> AnyView {
    let At { get, put } = at;
    let value = open.part(move |job| get(job));
    let on_pick = Callback::new(move |code| open.change(|job| put(job, code)));
    let hint = Signal::stored(hint.to_owned());
    view! { <Choice id=id.into() label hint options=Signal::stored(options) value on_pick /> }
        .into_any()
}

/// One of many, in a list whose options follow the job.
pub fn pick(
    open: OpenJob,
    id: impl Into<String>,
    label: Signal<String>,
    options: impl Into<Signal<Vec<ChoiceOption>>>,
    at: At<String>,
) -> AnyView {
    let At { get, put } = at;
    let value = open.part(move |job| get(job));
    let on_pick = Callback::new(move |code| open.change(|job| put(job, code)));
    let options = options.into();
    view! { <Pick id=id.into() label options value on_pick /> }.into_any()
}
